/* reckon/fillet.h - fillet weld sizes. AWS D1.1 (clauses by edition in the source
 * text) and plain geometry; generated from templates/tables/fillet.csv. Lengths mm. */
#ifndef RECKON_FILLET_H
#define RECKON_FILLET_H

#include "reckon/source.h"

#include <stdbool.h>

struct fillet_limit {
	double mm;               /* exact from the inch figure */
	const char *source;
	enum seen seen;
};

/* Least leg: AWS D1.1 Table 7.7 (2020). The band is that of the thinner part with a
 * low-hydrogen process, else of the thicker part, single pass; never more than the
 * thinner part; 3/16 in at least under cyclic loading. */
struct fillet_limit fillet_least_leg(double thin_mm, double thick_mm,
    bool low_hydrogen, bool cyclic);
/* Largest leg along a lap edge: all of an edge under 1/4 in, else 1/16 in less
 * (D1.1:2020 4.4.2.9, AISC 360 J2.2b). */
struct fillet_limit fillet_largest_lap_leg(double edge_mm);
/* How far a leg may fall short for up to 10 % of the weld: 1/16, 3/32, 1/8 in for
 * legs to 3/16, 1/4, from 5/16 in (D1.1 Table 8.1 (2020) item 6). A leg between rows
 * takes the smaller allowance. */
struct fillet_limit fillet_undersize(double leg_mm);

/* Theoretical throat, flat face: from the root square to the face. Equal legs: leg cos 45;
 * skewed: leg cos(psi / 2), psi the angle between the plates in degrees, legs equal along
 * the plates; unequal: a b sin psi / c, c^2 = a^2 + b^2 - 2 a b cos psi the face, or the
 * shorter leg where the face leans beyond it. Geometry. */
double fillet_throat_mm(double leg_mm);
double fillet_throat_unequal_mm(double leg1_mm, double leg2_mm, double psi_deg);
double fillet_throat_skew_mm(double leg_mm, double psi_deg);

#endif
