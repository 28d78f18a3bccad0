/* sheets/quarter_map.h - where the boxes and lines of a quarter's map stand.
 *
 * Pure layout: numbers in, numbers out. Boxes come in the order of the quarter; each
 * line goes from an earlier box to a later one. Boxes stand in ranks by week, from left
 * to right, or from the top down when there are too many ranks for that. A line that
 * passes a rank has a lane there, between the boxes, so that no line crosses a box;
 * lines of one box share a lane. Points, y down, from the corner of the area.
 *
 * A map over several pages is one strip from the top down, cut between ranks every
 * height_pt: a line that goes on ends there and starts again at the same place. */
#ifndef SHEETS_QUARTER_MAP_H
#define SHEETS_QUARTER_MAP_H

#include "base/arena.h"
#include "draw/geom.h"

enum { MAP_BOXES = 48 }; /* most boxes; a full page holds fewer */

struct map_line {
	uint32_t from, to;       /* boxes; from < to. No line twice */
};

struct quarter_map_spec {
	const uint32_t *weeks;   /* of each box, never falling */
	size_t n;
	const struct map_line *lines;
	size_t nlines;
	double width_pt, height_pt;
	double zoom;             /* of boxes, for large type; 0 counts as 1 */
	bool paged;              /* over as many pages as it takes */
};

/* A cubic from p[0] to p[3]; a straight line where the controls lie on it. */
struct map_curve {
	pt p[4];
	bool head;               /* p[3] is at a box: an arrow ends there. Else it is at a
	                          * lane, or goes on overleaf */
};

struct map_rank {
	uint32_t first_week, last_week;
	rect label;              /* where its weeks are named */
};

struct quarter_map {
	bool fits;               /* else there is too much for the page, and no more here */
	bool downward;           /* ranks from the top down */
	bool thinned;            /* lines that others imply are left out */
	rect *boxes;
	struct map_line *lines;  /* those drawn */
	size_t nlines;
	struct map_curve *curves;
	size_t ncurves, curves_cap;
	struct map_rank *ranks;
	size_t nranks;
	size_t pages;            /* each height_pt of the spec high */
};

/* Lives in a. */
struct quarter_map *quarter_map_new(struct arena *a, const struct quarter_map_spec *spec);

#endif
