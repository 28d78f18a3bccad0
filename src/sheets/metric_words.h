/* sheets/metric_words.h - the author's own words, and the fixed ones, metric first.
 *
 * "1/2 in [13 mm]" becomes "13 mm [1/2 in]", with the author's own rounding; so do lists
 * and products whose bracket has as many figures ("2, 4 and 6 in [51, 102 and 152 mm]").
 * A figure alone gets its metric when its unit cannot be a word: pressures, degrees,
 * pounds, feet, cubic feet an hour, and inches with a fraction ("1/8 in", never "3 in").
 * What is reckoned in the open ("= 0.225 in", "0.6 x 3/8 in") stays in its system. */
#ifndef SHEETS_METRIC_WORDS_H
#define SHEETS_METRIC_WORDS_H

#include "model/model.h"

struct edition; /* sheets/edition.h; null: the usual one */

/* The text as an edition prints it: itself unless metric comes first. */
str units_text(struct arena *a, const struct edition *e, str text);
/* m with all prose so; m itself unless metric comes first. Made in a, borrows m. */
struct model units_view(struct arena *a, const struct edition *e, const struct model *m);

#endif
