/* page/grid_set.h - a table once it is laid out; for this room only. */
#ifndef PAGE_GRID_SET_H
#define PAGE_GRID_SET_H

#include "page/grid.h"
#include "page/part.h"

struct set_cell {
	const struct lines *lines; /* null: none */
	const struct block *block; /* null: none */
	double left_pt, width_pt; /* of the whole cell, padding counted */
	enum align align;
	bool middle, head;
};

struct set_row {
	struct set_cell *cells;
	size_t ncells;
	double height_pt;
	size_t strip, nstrips;   /* its first strip in the table; a row that may be cut
	                          * has one for each line of text */
	bool head;
};

struct grid_block {
	struct block b;
	struct set_row *rows;
	size_t nrows, heads;
	size_t first_strip;      /* behind those of the caption, one for each line */
	const struct lines *caption; /* null: none */
	const double *edges_pt;  /* ncolumns + 1 positions from the left edge */
	size_t ncolumns;
	double pad_pt, rule_pt;
	bool spanning;           /* some cell covers several columns */
};

/* Wanted and least widths of columns in, widths out: see enum column_width. */
struct column_wish { double natural_pt, least_pt; };
void grid_solve_widths(const struct grid_spec *spec, const struct column_wish *wish,
    double *width_pt);

void grid_draw(const struct block *b, const struct pen *pen, pt at, struct part part);

#endif
