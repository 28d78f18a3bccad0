/* reckon/source.h - how far a figure can be trusted.
 *
 * Every row of a table keeps the words of its csv column `verified`. A figure that
 * was not itself read in a copy of the source prints with a dagger and "confirm
 * against your edition", and never fails a build by itself. */
#ifndef RECKON_SOURCE_H
#define RECKON_SOURCE_H

enum seen {
	SEEN_PAGE,               /* read in a copy of the named source, or computed */
	SEEN_MEMORY              /* recalled, restated by others, or uncertain */
};

/* From the words of a `verified` column: page unless they tell of memory, a summary,
 * low confidence, an inference or no confirmation. */
enum seen seen_of(const char *verified);

#endif
