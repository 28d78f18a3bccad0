/* reckon/bend.h - strain of a guided bend. ASME IX 2010 QW-466.1 note b. mm. Plungers and
 * dies are those of reckon/jig.h. */
#ifndef RECKON_BEND_H
#define RECKON_BEND_H

#define BEND_SOURCE "ASME IX QW-466.1 (2010)"

/* Strain of the outer fiber in percent: 100 t / (A + t). */
double bend_strain_percent(double plunger_mm, double thickness_mm);

#endif
