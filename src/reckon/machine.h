/* reckon/machine.h - shear, punch and plate roll. Estimates from memory where the
 * maker's plate gives no figure for the metal; the plate always wins. mm, tons of
 * 2000 lb. */
#ifndef RECKON_MACHINE_H
#define RECKON_MACHINE_H

#include "reckon/metal.h"

/* Thickness over that rated for mild steel: the metal's row, else 60 / uts, never over
 * 1 for steel. 0 when the metal has neither. */
double shear_factor(const struct metal *m);
double shear_most_mm(double rated_mm, const struct metal *m);

/* Tons to punch: cut edge x thickness x shear strength / 2000; the edge of a round hole
 * is pi d. Definition of shear stress. */
double punch_tons(double edge_mm, double thickness_mm, double strength_ksi);
double punch_round_tons(double diameter_mm, double thickness_mm, double strength_ksi);
/* Largest round hole for a machine of so many tons. */
double punch_most_mm(double tons, double thickness_mm, double strength_ksi);

/* Thickness a roll takes at another width and strength: rated sqrt(w0 / w x 60 / uts),
 * from the bending moment w t^2 uts; never more than rated at full width. An estimate. */
double roll_most_mm(double rated_mm, double rated_width_mm, double width_mm,
    double uts_ksi);
/* Least diameter, about 1.5 times the top roll; from memory. */
double roll_least_diameter_mm(double top_roll_mm);

#endif
