/* page/grid.h - tables.
 *
 * Begin a grid, add rows, end it: the result is a block whose strips are rows. Head rows
 * are repeated when the table goes on to another page. A row is cut only when it is
 * taller than a page. A row of one cell over all columns keeps with the next. A caption keeps with the first row. */
#ifndef PAGE_GRID_H
#define PAGE_GRID_H

#include "page/block.h"

enum { GRID_COLUMNS = 64 }; /* most columns of a table */

enum column_width {
	COLUMN_NATURAL,          /* by content, at least `size` points */
	COLUMN_FIXED,            /* `size` points, padding counted */
	COLUMN_SHARE             /* `size` parts of what is left (0 counts as 1) */
};

struct grid_column {
	enum column_width how;
	double size;
	enum align align;        /* of cells that do not say otherwise */
};

/* A cell holds spans, or a plain text, or a block laid out before, or nothing (a blank
 * to write in). */
struct grid_cell {
	str text;                /* used when spans is null */
	const struct span *spans;
	size_t nspans;
	struct block *block;     /* used first when not null */
	unsigned style;          /* SPAN_BOLD and so on, for the whole cell */
	enum align align;        /* counts when own_align is set */
	bool own_align;
	bool middle;             /* in the middle of the row's height, else at its top */
	bool head;               /* a head cell in a body row (first column) */
	uint32_t columns;        /* columns covered; 0 counts as 1 */
};

struct grid_spec {
	const struct grid_column *columns;
	size_t ncolumns;
	double width_pt;         /* of the whole table, never exceeded. Without a shared
	                          * column the table may come out narrower */
	struct type type;        /* of cells; head rows add SPAN_BOLD */
	struct type caption_type; /* size 0: as type, bold */
	str caption;             /* may be empty */
	double pad_pt;           /* inside a cell, left and right; 0: 4 pt. Half of it
	                          * above and below */
	double rule_pt;          /* 0: RULE_PT; negative: no rules */
	double row_min_pt;       /* least height of body rows: GLOVE_PT to write in */
	size_t heads;            /* the first rows that are head rows */
	bool keep_whole;         /* not cut when the table fits on a page */
};

struct grid;

/* The spec and its columns are copied. */
struct grid *grid_begin(const struct setter *s, const struct grid_spec *spec);
/* Cells are copied, their texts borrowed. Fewer cells than columns: the rest are blank.
 * More: the rest are dropped. */
void grid_row(struct grid *g, const struct grid_cell *cells, size_t n);
/* The same for plain texts, one a column. */
void grid_row_plain(struct grid *g, const str *texts, size_t n);
/* Least height of the row added last. */
void grid_row_min(struct grid *g, double height_pt);
/* Lays the table out. The grid is not to be used afterwards. */
struct block *grid_end(struct grid *g);

#endif
