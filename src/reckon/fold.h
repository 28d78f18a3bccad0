/* reckon/fold.h - rules for the length of a bend beside the exact one, which is
 * brake_allowance_mm of reckon/pattern.h. mm and degrees; the angle is that through
 * which the metal is bent (90 for a square corner). */
#ifndef RECKON_FOLD_H
#define RECKON_FOLD_H

/* Published constants: (0.0173 R + 0.0078 t) A, NAVEDTRA aviation structural;
 * (0.01743 R + 0.0078 t) A, FAA-H-8083-31. 0.0078 stands for K = 0.447; both lie
 * within 1 percent of the exact rule with that K. */
double fold_allowance_navy_mm(double radius_mm, double thickness_mm, double angle_deg);
double fold_allowance_faa_mm(double radius_mm, double thickness_mm, double angle_deg);
/* K by radius, from memory: 0.33 to R = t, 0.40 to 3 t, 0.50 above. */
double fold_k(double radius_mm, double thickness_mm);

#endif
