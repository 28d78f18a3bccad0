/* sheets/key.h - what one assignment's key works out: a few figures with their formula,
 * each from reckon, so that a key is right whenever the sheet is. */
#ifndef SHEETS_KEY_H
#define SHEETS_KEY_H

#include "model/model.h"

struct edition; /* sheets/edition.h */

/* One worked line: "Throat", "0.707 x 5/16 in", "0.221 in [5.61 mm]", source. */
struct worked {
	str name, steps, result, source;
	bool dagger;
	uint32_t drawing;        /* whose weld it is worked out for; NONE */
	bool at_drawing;         /* an answer that stands beside the drawing too */
	bool asked;              /* by the author: name is the call, a line of result each
	                          * figure; it stands below the table */
};

struct workings {
	struct worked *v;
	size_t n, cap;
};

/* For each drawn weld throat, least and largest leg, groove, weld metal, filler, arc
 * time, gas and heat; plunger, die opening and strain of each bend line; weights of the
 * pieces; what the author asks for. Lines that lack a size are left out. Steps are worked
 * in the units that e puts first; null: US customary. */
struct workings workings_of(struct arena *a, const struct assignment *x,
    const struct edition *e);

#endif
