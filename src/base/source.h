/* base/source.h - one input file: its name, its bytes, and places in it.
 *
 * A place is file, line, column; lines from 1, columns from 1 counted in
 * characters (code points), as editors do. line 0: the file as a whole;
 * file POS_NOWHERE: no file at all (the folder, or a derived order). */
#ifndef BASE_SOURCE_H
#define BASE_SOURCE_H

#include "base/str.h"

#define POS_NOWHERE UINT32_MAX

struct pos {
	uint32_t file;           /* index in the list of sources */
	uint32_t line, col;
};

struct source {
	str path;                /* relative to the program folder, '/' between parts */
	str text;                /* whole content; BOM removed */
};

/* All files of one run in byte order of their paths, so that comparing file
 * indices compares paths. */
struct sources {
	struct source *v;
	size_t n;
};

/* By file, line, column: <0, 0, >0. */
int pos_cmp(struct pos a, struct pos b);

#endif
