/* reckon/tensile.h - load and stress of a flat tensile specimen. */
#ifndef RECKON_TENSILE_H
#define RECKON_TENSILE_H

/* Load = stress x area: the pull on a section width x thickness at a stress. QW-152:
 * strength is the greatest load over the least section measured before it. */
double tensile_load_lbf(double stress_psi, double width_mm, double thickness_mm);

#endif
