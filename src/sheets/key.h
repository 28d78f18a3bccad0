/* sheets/key.h - what one assignment's key works out: a few figures with their formula,
 * each from reckon, so that a key is right whenever the sheet is. */
#ifndef SHEETS_KEY_H
#define SHEETS_KEY_H

#include "model/model.h"

/* One worked line: "Throat", "0.707 x 5/16 in", "0.221 in [5.61 mm]", source. */
struct worked {
	str name, steps, result, source;
	bool dagger;
};

struct workings {
	struct worked *v;
	size_t n, cap;
};

/* Throats, weld metal and filler of each drawn weld, plunger, die opening and strain of
 * each bend line, preheat for heavy plate. Lines that lack a size are left out. */
struct workings workings_of(struct arena *a, const struct assignment *x);

#endif
