/* reckon/fold.h - flat length of a bent part. Geometry with the neutral line at K t
 * from the inside face. mm and degrees; the angle is that through which the metal is
 * bent (90 for a square corner). */
#ifndef RECKON_FOLD_H
#define RECKON_FOLD_H

#include <stddef.h>

/* Bend allowance: pi / 180 A (R + K t). */
double fold_allowance_mm(double radius_mm, double thickness_mm, double angle_deg,
    double k);
/* Published constants: (0.0173 R + 0.0078 t) A, NAVEDTRA aviation structural;
 * (0.01743 R + 0.0078 t) A, FAA-H-8083-31. Within 0.5 percent of K = 0.447. */
double fold_allowance_navy_mm(double radius_mm, double thickness_mm, double angle_deg);
double fold_allowance_faa_mm(double radius_mm, double thickness_mm, double angle_deg);
/* K by radius, from memory: 0.33 to R = t, 0.40 to 3 t, 0.50 above. */
double fold_k(double radius_mm, double thickness_mm);

/* Setback: tan(A / 2) (R + t). FAA-H-8083-31. Less than 180 degrees. */
double fold_setback_mm(double radius_mm, double thickness_mm, double angle_deg);
/* Bend deduction: 2 setback - allowance. */
double fold_deduction_mm(double radius_mm, double thickness_mm, double angle_deg,
    double k);
/* Blank: the outside flanges less a deduction for each bend between them. All bends
 * alike; n flanges have n - 1 bends. */
double fold_blank_mm(const double *flanges_mm, size_t n, double radius_mm,
    double thickness_mm, double angle_deg, double k);
/* What is left flat of flange i: the flange less a setback for each bend at it. */
double fold_flat_mm(const double *flanges_mm, size_t n, size_t i, double setback_mm);

#endif
