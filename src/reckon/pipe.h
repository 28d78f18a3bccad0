/* reckon/pipe.h - pipe by nominal size and schedule.
 *
 * Outside diameter and wall come from ASME B36.10M through pipe_find (units/trade.h),
 * in inches; exact millimeters are those times 25.4. */
#ifndef RECKON_PIPE_H
#define RECKON_PIPE_H

#include "units/trade.h"

double pipe_od_mm(const struct pipe_row *p);
double pipe_wall_mm(const struct pipe_row *p);
/* Round a pipe: on its outside, and on the middle of its wall. pi d. */
double pipe_round_mm(double od_mm);
double pipe_mean_round_mm(double od_mm, double wall_mm);
/* Plain-end weight in lb/ft: W = 10.69 (D - t) t, D and t in inches
 * (ASME B36.10M since 2000; older charts use 10.68). */
double pipe_weight_lb_ft(double od_mm, double wall_mm);

#endif
