/* reckon/source.h - how far a figure can be trusted, and which row of a table holds.
 *
 * Every row of a table keeps the words of its csv column `verified`. A figure that
 * was not itself read in a copy of the source prints with a dagger and "confirm
 * against your edition", and never fails a build by itself. */
#ifndef RECKON_SOURCE_H
#define RECKON_SOURCE_H

#include <stdbool.h>

enum seen {
	SEEN_PAGE,               /* read in a copy of the named source, or computed */
	SEEN_MEMORY              /* recalled, restated by others, or uncertain */
};

/* From the words of a `verified` column: page unless they tell of memory, a summary,
 * a secondary source, low confidence, an inference or no confirmation. */
enum seen seen_of(const char *verified);

/* Whether x lies in a row's band. hi 0 means no upper end; an open end is left out.
 * A millionth of an inch absorbs binary noise, so that 6.35 mm is 1/4 in. */
bool band_holds(double x, double lo, bool lo_open, double hi, bool hi_open);

#endif
