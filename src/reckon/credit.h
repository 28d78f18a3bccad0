/* reckon/credit.h - work behind a credit hour. 34 CFR 600.2 (read in a published
 * policy): about one hour taught and at least two outside, each week, for about 15 weeks
 * (semester) or 10 to 12 (quarter), or as much work in a lab. 34 CFR 668.8(l), since
 * 2021, from a secondary page: 30 clock hours a semester credit, 20 a quarter credit. */
#ifndef RECKON_CREDIT_H
#define RECKON_CREDIT_H

#include <stdbool.h>

/* Three hours of work a week for each credit. */
double credit_work_h(double credits, double weeks);
/* Clock hours taught over those that 668.8(l) asks for one credit. */
double credit_of_clock_hours(double taught_h, bool quarter);

#endif
