/* reckon/bend.h - guided-bend plunger, die opening and strain. ASME IX 2010
 * QW-466.1 (all other materials with elongation of 20 % or more) and note b. mm. */
#ifndef RECKON_BEND_H
#define RECKON_BEND_H

#define BEND_SOURCE "ASME IX QW-466.1 (2010)"

/* Plunger width A = 4 t for specimens to 3/8 in. */
double bend_plunger_mm(double thickness_mm);
/* Die opening C = A + 2 t + 1/8 in: with A = 4 t that is 6 t + 1/8 in. */
double bend_die_mm(double plunger_mm, double thickness_mm);
/* Strain of the outer fiber in percent: 100 t / (A + t). */
double bend_strain_percent(double plunger_mm, double thickness_mm);
/* Thickness that gives a wanted strain: t = A e / (100 - e). */
double bend_thickness_mm(double plunger_mm, double strain_percent);

#endif
