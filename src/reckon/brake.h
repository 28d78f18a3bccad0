/* reckon/brake.h - air bending on a press brake. Press-brake tooling articles (four
 * pages), metric in mm, tons of 2000 lb. The machine's plate and the tool maker's
 * limit for each foot always win. */
#ifndef RECKON_BRAKE_H
#define RECKON_BRAKE_H

#include "reckon/metal.h"

/* Tons a foot in mild steel of 60 ksi: 575 t^2 / V, t and V in inches. */
double brake_tons_ft(double thickness_mm, double opening_mm);
/* What the metal asks over mild steel: its row, else uts / 60; 0: neither is known. */
double brake_factor(const struct metal *m);

/* The opening to look for: 8 t to 1/2 in thick, 10 t above (from memory). */
double brake_opening_mm(double thickness_mm);
/* Index of the owned opening nearest by ratio to the one looked for, from 6 t to 12 t;
 * the wider of two alike. n when none lies there. */
size_t brake_choose(const double *openings_mm, size_t n, double thickness_mm);
/* Least flange 0.7 V, from memory. */
double brake_flange_mm(double opening_mm);

#endif
