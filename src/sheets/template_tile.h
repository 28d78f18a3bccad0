/* sheets/template_tile.h - one outline shared out among pages, and the part of it that
 * one page shows. Points on paper, y down. Private to sheets. */
#ifndef SHEETS_TEMPLATE_TILE_H
#define SHEETS_TEMPLATE_TILE_H

#include "draw/canvas.h"
#include "reckon/pattern.h"

#define TILE_OVERLAP_PT 36.0     /* 1/2 in shared by neighbors */
#define TILE_COLUMNS 40

struct tiling {
	const struct flat *flat;
	bool turned;             /* a quarter, when that takes fewer pages */
	unsigned columns, rows;
	double w, h;             /* of the window of one page */
	double left, top;        /* of the outline, from the corner of all windows */
	double number_pt;        /* type of the numbers of division lines, which are smaller
	                          * where the lines stand close; 0: 10 pt */
};

struct tiling tiling_new(const struct flat *f, double window_w, double window_h);
/* Where a point of the outline lies, from the corner of all windows. */
pt tiling_point(const struct tiling *t, struct flat_point p);
/* Whether any line of the outline shows on that page. */
bool tiling_shows(const struct tiling *t, unsigned column, unsigned row);
/* Draws what shows in the window, whose upper left corner is at `at`, with the numbers
 * of division lines and the crosses that neighbors share. */
void tiling_draw(const struct tiling *t, struct arena *a, struct canvas *c, pt at,
    unsigned column, unsigned row);

#endif
