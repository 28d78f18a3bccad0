#include "page/grid_set.h"

/* Rules of one part of a table, drawn together. */
struct rules {
	struct canvas *canvas;
	struct ink ink;
	struct seg v[128];
	size_t n;
};

static void rules_flush(struct rules *r)
{
	if (r->n == 0)
		return;
	canvas_tag_begin(r->canvas, TAG_ARTIFACT, STR(""));
	canvas_path(r->canvas, r->v, r->n, &r->ink);
	canvas_tag_end(r->canvas);
	r->n = 0;
}

static void rules_add(struct rules *r, pt a, pt b)
{
	if (r->ink.stroke_pt <= 0)
		return;
	if (r->n + 2 > sizeof r->v / sizeof *r->v)
		rules_flush(r);
	r->v[r->n++] = (struct seg){ .op = SEG_MOVE, .p = { a } };
	r->v[r->n++] = (struct seg){ .op = SEG_LINE, .p = { b } };
}

/* Rules of a row between two heights: below it, and beside its cells. */
static void rules_of_row(struct rules *r, const struct grid_block *t,
    const struct set_row *row, pt at, double height_pt)
{
	double bottom = at.y + height_pt;

	rules_add(r, (pt){ at.x, bottom }, (pt){ at.x + t->b.width_pt, bottom });
	for (size_t i = 0; t->spanning && i < row->ncells; i++) {
		double x = at.x + row->cells[i].left_pt;

		rules_add(r, (pt){ x, at.y }, (pt){ x, bottom });
	}
	if (t->spanning)
		rules_add(r, (pt){ at.x + t->b.width_pt, at.y },
		    (pt){ at.x + t->b.width_pt, bottom });
}

/* Sides that go through the whole part, and its top. */
static void rules_of_part(struct rules *r, const struct grid_block *t, pt at,
    double bottom)
{
	rules_add(r, at, (pt){ at.x + t->b.width_pt, at.y });
	for (size_t i = 0; !t->spanning && i <= t->ncolumns; i++) {
		double x = at.x + t->edges_pt[i];

		rules_add(r, (pt){ x, at.y }, (pt){ x, bottom });
	}
}

static double aligned(double room_pt, double used_pt, enum align align)
{
	if (align == ALIGN_LEFT || used_pt >= room_pt)
		return 0;
	return align == ALIGN_RIGHT ? room_pt - used_pt : (room_pt - used_pt) / 2;
}

static double cell_drop_pt(const struct grid_block *t, const struct set_cell *c,
    double row_pt, double content_pt)
{
	double spare_pt = row_pt - t->pad_pt - content_pt;

	return t->pad_pt / 2 + (c->middle && spare_pt > 0 ? spare_pt / 2 : 0);
}

static void draw_cell(const struct grid_block *t, const struct set_cell *c,
    const struct set_row *row, const struct pen *pen, pt at, size_t from, size_t to)
{
	bool whole = to - from == row->nstrips;
	double x = at.x + c->left_pt + t->pad_pt, y = at.y;

	if (c->block && from == 0) {
		x += aligned(c->width_pt - 2 * t->pad_pt, c->block->width_pt, c->align);
		y += cell_drop_pt(t, c, row->height_pt, c->block->height_pt);
		block_draw(c->block, pen, (pt){ x, y });
	} else if (c->lines && whole) {
		y += cell_drop_pt(t, c, row->height_pt, para_height_pt(c->lines));
		para_draw(c->lines, pen, (pt){ x, y });
	} else if (c->lines) {
		y += from == 0 ? t->pad_pt / 2 : 0;
		para_draw_part(c->lines, pen, (pt){ x, y }, from,
		    to < c->lines->n ? to : c->lines->n);
	}
}

static enum tag cell_tag(const struct set_cell *c)
{
	return c->head ? TAG_HEAD_CELL : TAG_CELL;
}

/* Draws strips [from, to) of a row; returns their height. */
static double draw_row(const struct grid_block *t, const struct set_row *row,
    const struct pen *pen, pt at, size_t from, size_t to, bool tagged)
{
	double h_pt = 0;

	if (tagged)
		canvas_tag_begin(pen->canvas, TAG_ROW, STR(""));
	for (size_t i = 0; i < row->ncells; i++) {
		const struct set_cell *c = &row->cells[i];

		struct pen in = *pen;

		if (tagged && c->lines)
			in = para_tag_begin(c->lines, pen, cell_tag(c), true);
		else if (tagged)
			canvas_tag_begin(pen->canvas, cell_tag(c), STR(""));
		draw_cell(t, c, row, &in, at, from, to);
		if (tagged)
			canvas_tag_end(pen->canvas);
	}
	if (tagged)
		canvas_tag_end(pen->canvas);
	for (size_t i = from; i < to; i++)
		h_pt += (double)t->b.strips[row->strip + i].height_pt;
	return h_pt;
}

/* The head once more, on top of a later part; to readers the table just goes on. */
static double draw_heads(const struct grid_block *t, const struct pen *pen, pt at,
    struct rules *rules)
{
	double top = at.y;

	if (t->heads == 0)
		return 0;
	canvas_tag_begin(pen->canvas, TAG_ARTIFACT, STR(""));
	for (size_t i = 0; i < t->heads; i++) {
		const struct set_row *row = &t->rows[i];

		at.y += draw_row(t, row, pen, at, 0, row->nstrips, false);
	}
	canvas_tag_end(pen->canvas);
	at.y = top;
	for (size_t i = 0; i < t->heads; i++) {
		rules_of_row(rules, t, &t->rows[i], at, t->rows[i].height_pt);
		at.y += t->rows[i].height_pt;
	}
	return at.y - top;
}

/* The lines of the caption that are in the part; returns their height. */
static double draw_caption(const struct grid_block *t, const struct pen *pen, pt at,
    struct part part)
{
	size_t to = part.to < t->first_strip ? part.to : t->first_strip;
	double h_pt = 0;

	if (part.from >= to)
		return 0;
	struct pen in = para_tag_begin(t->caption, pen, TAG_P, true);

	para_draw_part(t->caption, &in, at, part.from, to);
	canvas_tag_end(pen->canvas);
	for (size_t i = part.from; i < to; i++)
		h_pt += (double)t->b.strips[i].height_pt;
	return h_pt;
}

/* The row that strip i belongs to. */
static size_t find_row(const struct grid_block *t, size_t strip)
{
	size_t lo = 0, hi = t->nrows;

	while (lo + 1 < hi) {
		size_t mid = lo + (hi - lo) / 2;

		if (t->rows[mid].strip <= strip)
			lo = mid;
		else
			hi = mid;
	}
	return lo;
}

static double draw_rows(const struct grid_block *t, const struct pen *pen, pt at,
    struct part part, struct rules *rules)
{
	size_t strip = part.from > t->first_strip ? part.from : t->first_strip;
	double top = at.y;

	for (size_t i = find_row(t, strip); i < t->nrows && strip < part.to; i++) {
		const struct set_row *row = &t->rows[i];
		size_t end = row->strip + row->nstrips;
		size_t to = end < part.to ? end : part.to;
		double h_pt = draw_row(t, row, pen, at, strip - row->strip,
		    to - row->strip, true);

		rules_of_row(rules, t, row, at, h_pt);
		at.y += h_pt;
		strip = to;
	}
	return at.y - top;
}

void grid_draw(const struct block *b, const struct pen *pen, pt at, struct part part)
{
	const struct grid_block *t = (const struct grid_block *)b;
	struct rules rules = { .canvas = pen->canvas,
		.ink = { .stroke_pt = t->rule_pt } };

	at.y += draw_caption(t, pen, at, part);
	if (part_is_first(part))
		canvas_tag_begin(pen->canvas, TAG_TABLE, STR(""));
	pt top = at;

	if (!part_is_first(part))
		at.y += draw_heads(t, pen, at, &rules);
	at.y += draw_rows(t, pen, at, part, &rules);
	if (at.y > top.y)
		rules_of_part(&rules, t, top, at.y);
	rules_flush(&rules);
	if (part_is_last(b, part))
		canvas_tag_end(pen->canvas);
}
