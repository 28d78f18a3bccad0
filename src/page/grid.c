#include "page/grid.h"

#include "page/grid_set.h"

#include <assert.h>

/* A row taller than this may be cut between its lines, if nothing else will do; heads
 * taller than this together are not repeated, since they would leave no room. */
static const double row_cut_pt = 240;

struct raw_row {
	const struct grid_cell *cells;
	size_t ncells;
	double min_pt;
};

struct grid {
	struct setter s;
	struct grid_spec spec;
	struct raw_row *rows;
	size_t nrows, rows_cap;
};

static double max_pt(double a, double b)
{
	return a > b ? a : b;
}

/* ---- collecting ---- */

struct grid *grid_begin(const struct setter *s, const struct grid_spec *spec)
{
	struct grid *g = arena_alloc(s->arena, sizeof *g);
	struct grid_column *columns =
	    arena_array(s->arena, spec->ncolumns, sizeof *columns);

	assert(spec->ncolumns > 0 && spec->ncolumns <= GRID_COLUMNS);
	for (size_t i = 0; i < spec->ncolumns; i++)
		columns[i] = spec->columns[i];
	g->s = *s;
	g->spec = *spec;
	g->spec.columns = columns;
	if (!(g->spec.pad_pt > 0))
		g->spec.pad_pt = 4;
	if (g->spec.rule_pt == 0)
		g->spec.rule_pt = RULE_PT;
	if (!(g->spec.caption_type.size_pt > 0)) {
		g->spec.caption_type = spec->type;
		g->spec.caption_type.style |= SPAN_BOLD;
	}
	return g;
}

void grid_row(struct grid *g, const struct grid_cell *cells, size_t n)
{
	struct grid_cell *copy =
	    arena_array(g->s.arena, g->spec.ncolumns, sizeof *copy);
	struct raw_row *row = ARENA_PUSH(g->s.arena, g->rows, g->nrows, g->rows_cap);
	size_t column = 0, k = 0;

	for (; column < g->spec.ncolumns; k++) {
		size_t left = g->spec.ncolumns - column;

		if (k < n)
			copy[k] = cells[k];
		if (copy[k].columns == 0)
			copy[k].columns = 1;
		if (copy[k].columns > left)
			copy[k].columns = (uint32_t)left;
		column += copy[k].columns;
	}
	row->cells = copy;
	row->ncells = k;
	row->min_pt = g->nrows > g->spec.heads ? g->spec.row_min_pt : 0;
}

void grid_row_plain(struct grid *g, const str *texts, size_t n)
{
	struct grid_cell cells[GRID_COLUMNS] = { 0 };

	if (n > g->spec.ncolumns)
		n = g->spec.ncolumns;
	for (size_t i = 0; i < n; i++)
		cells[i].text = texts[i];
	grid_row(g, cells, n);
}

void grid_row_min(struct grid *g, double height_pt)
{
	if (g->nrows > 0)
		g->rows[g->nrows - 1].min_pt = height_pt;
}

/* ---- widths ---- */

static struct type cell_type(const struct grid *g, size_t row, const struct grid_cell *c,
    enum align align)
{
	struct type type = g->spec.type;

	type.style |= c->style;
	if (row < g->spec.heads || c->head)
		type.style |= SPAN_BOLD;
	type.align = align;
	return type;
}

static const struct span *cell_spans(const struct grid_cell *c, struct span *plain,
    size_t *n)
{
	*plain = (struct span){ .text = c->text };
	*n = c->spans ? c->nspans : c->text.n > 0;
	return c->spans ? c->spans : plain;
}

static struct column_wish cell_wish(const struct grid *g, size_t row,
    const struct grid_cell *c)
{
	struct type type = cell_type(g, row, c, ALIGN_LEFT);
	struct span plain;
	size_t n;
	const struct span *spans = cell_spans(c, &plain, &n);
	double pads_pt = 2 * g->spec.pad_pt;

	if (c->block)
		return (struct column_wish){ c->block->width_pt + pads_pt,
		    c->block->width_pt + pads_pt };
	struct text_widths w = para_widths(&g->s, spans, n, &type);

	return (struct column_wish){ w.natural_pt + pads_pt, w.least_pt + pads_pt };
}

/* Cells over several columns wish nothing: who covers also takes what there is. */
static void wish_of_row(const struct grid *g, size_t row, struct column_wish *wish)
{
	const struct raw_row *r = &g->rows[row];
	size_t column = 0;

	for (size_t i = 0; i < r->ncells; column += r->cells[i].columns, i++) {
		if (r->cells[i].columns > 1 ||
		    g->spec.columns[column].how == COLUMN_FIXED)
			continue;
		struct column_wish w = cell_wish(g, row, &r->cells[i]);

		wish[column].natural_pt = max_pt(wish[column].natural_pt, w.natural_pt);
		wish[column].least_pt = max_pt(wish[column].least_pt, w.least_pt);
	}
}

static double *column_edges(struct grid *g)
{
	struct column_wish wish[GRID_COLUMNS] = { 0 };
	double width_pt[GRID_COLUMNS] = { 0 };
	double *edges_pt =
	    arena_array(g->s.arena, g->spec.ncolumns + 1, sizeof *edges_pt);

	for (size_t row = 0; row < g->nrows; row++)
		wish_of_row(g, row, wish);
	for (size_t i = 0; i < g->spec.ncolumns; i++) {
		if (g->spec.columns[i].how != COLUMN_NATURAL)
			continue;
		wish[i].natural_pt = max_pt(wish[i].natural_pt, g->spec.columns[i].size);
		wish[i].least_pt = max_pt(wish[i].least_pt, g->spec.columns[i].size);
	}
	grid_solve_widths(&g->spec, wish, width_pt);
	for (size_t i = 0; i < g->spec.ncolumns; i++)
		edges_pt[i + 1] = edges_pt[i] + max_pt(width_pt[i], 0);
	return edges_pt;
}

/* ---- rows ---- */

static struct set_cell set_cell(const struct grid *g, size_t row,
    const struct grid_cell *c, size_t column, const double *edges_pt)
{
	enum align align = c->own_align ? c->align : g->spec.columns[column].align;
	struct set_cell cell = {
		.block = c->block,
		.left_pt = edges_pt[column],
		.width_pt = edges_pt[column + c->columns] - edges_pt[column],
		.align = align,
		.middle = c->middle,
		.head = c->head || row < g->spec.heads,
	};
	struct type type = cell_type(g, row, c, align);
	struct span plain;
	size_t n;
	const struct span *spans = cell_spans(c, &plain, &n);

	if (!c->block && n > 0)
		cell.lines = para_break(&g->s, spans, n, &type,
		    max_pt(cell.width_pt - 2 * g->spec.pad_pt, 0));
	return cell;
}

static double cell_height_pt(const struct set_cell *c)
{
	if (c->block)
		return c->block->height_pt;
	return c->lines ? para_height_pt(c->lines) : 0;
}

static void set_row(struct grid *g, struct grid_block *t, size_t row)
{
	const struct raw_row *raw = &g->rows[row];
	struct set_row *r = &t->rows[row];
	size_t column = 0, most_lines = 1;
	double line_pt = para_lead_pt(&g->s, &g->spec.type);

	r->cells = arena_array(g->s.arena, raw->ncells, sizeof *r->cells);
	r->ncells = raw->ncells;
	r->head = row < g->spec.heads;
	r->height_pt = max_pt(raw->min_pt, line_pt + g->spec.pad_pt);
	for (size_t i = 0; i < raw->ncells; i++) {
		struct set_cell *c = &r->cells[i];

		*c = set_cell(g, row, &raw->cells[i], column, t->edges_pt);
		column += raw->cells[i].columns;
		t->spanning = t->spanning || raw->cells[i].columns > 1;
		r->height_pt = max_pt(r->height_pt, cell_height_pt(c) + g->spec.pad_pt);
		if (c->lines && c->lines->n > most_lines)
			most_lines = c->lines->n;
	}
	r->nstrips = r->height_pt > row_cut_pt ? most_lines : 1;
}

static double row_lead_pt(const struct set_row *r)
{
	for (size_t i = 0; i < r->ncells; i++)
		if (r->cells[i].lines)
			return r->cells[i].lines->lead_pt;
	return 0;
}

/* One strip for each row, or for each line of a row that may be cut: then the padding
 * goes with the first and all that is left with the last. */
static void set_row_strips(const struct grid_block *t, const struct set_row *r,
    enum hold after, struct strip *v)
{
	double lead_pt = row_lead_pt(r), left_pt = r->height_pt;

	for (size_t i = 0; i < r->nstrips; i++) {
		bool last = i + 1 == r->nstrips;
		double h_pt = lead_pt + (i == 0 ? t->pad_pt / 2 : 0);

		h_pt = last ? left_pt : h_pt;
		left_pt -= h_pt;
		v[i].height_pt = (float)h_pt;
		v[i].hold = (uint8_t)(last ? after : HOLD_STRONG);
	}
}

static void set_caption_strips(const struct grid_block *t, struct strip *v)
{
	for (size_t i = 0; i < t->first_strip; i++) {
		bool last = i + 1 == t->first_strip;
		double h_pt = t->caption->lead_pt + (last ? t->pad_pt : 0);

		v[i] = (struct strip){ (float)h_pt, HOLD_NEVER };
	}
}

/* Height of the heads, when they are to be repeated. */
static void set_repeat(struct grid_block *t)
{
	for (size_t i = 0; i < t->heads; i++)
		t->b.repeat_pt += t->rows[i].height_pt;
	if (t->b.repeat_pt <= row_cut_pt)
		return;
	t->b.repeat_pt = 0;
	t->heads = 0;
}

/* A table is not cut under its heads nor under a row of one cell, which names the rows after
 * it, and its first and last rows seldom stand alone. */
static enum hold row_hold(const struct grid_block *t, size_t i)
{
	if (t->rows[i].head)
		return HOLD_NEVER;
	if (t->rows[i].ncells == 1 && t->ncolumns > 1)
		return HOLD_STRONG;
	size_t body = t->nrows - t->heads;

	return (body > 2 && i == t->heads) || (body > 3 && i + 2 == t->nrows)
	    ? HOLD_AVOID : HOLD_FREE;
}

static void set_strips(struct grid *g, struct grid_block *t)
{
	size_t n = t->first_strip;

	for (size_t i = 0; i < t->nrows; i++) {
		t->rows[i].strip = n;
		n += t->rows[i].nstrips;
	}
	struct strip *v = arena_array(g->s.arena, n, sizeof *v);

	set_caption_strips(t, v);
	set_repeat(t);
	if (t->caption)
		t->b.height_pt += para_height_pt(t->caption) + t->pad_pt;
	for (size_t i = 0; i < t->nrows; i++) {
		const struct set_row *r = &t->rows[i];

		set_row_strips(t, r, row_hold(t, i), v + r->strip);
		t->b.height_pt += r->height_pt;
	}
	t->b.strips = v;
	t->b.nstrips = (uint32_t)n;
}

struct block *grid_end(struct grid *g)
{
	struct grid_block *t = block_make(&g->s, sizeof *t, grid_draw, 0, 0);

	t->pad_pt = g->spec.pad_pt;
	t->rule_pt = max_pt(g->spec.rule_pt, 0);
	t->ncolumns = g->spec.ncolumns;
	t->edges_pt = column_edges(g);
	t->b.width_pt = t->edges_pt[t->ncolumns];
	t->b.keep_whole = g->spec.keep_whole;
	t->heads = g->spec.heads < g->nrows ? g->spec.heads : g->nrows;
	t->nrows = g->nrows;
	t->rows = arena_array(g->s.arena, g->nrows, sizeof *t->rows);
	for (size_t i = 0; i < g->nrows; i++)
		set_row(g, t, i);
	if (g->spec.caption.n > 0 && g->nrows > 0) {
		t->caption = para_break_plain(&g->s, g->spec.caption,
		    &g->spec.caption_type, g->spec.width_pt);
		t->first_strip = t->caption->n;
	}
	set_strips(g, t);
	return &t->b;
}
