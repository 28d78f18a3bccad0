#include "page/block.h"

#include "page/part.h"

/* One labelled blank where it stands in its block. */
struct placed_blank {
	const struct lines *label, *unit;
	double left_pt, line_pt; /* left edge; length of the line to write on */
	double top_pt, height_pt; /* of its row */
};

struct blanks_block {
	struct block b;
	struct placed_blank *v;
	size_t n;
};

/* Between label, line and unit; between neighbors; least line (an initials blank of
 * 30 mm; common practice, no source). */
static const double part_gap_pt = 4, blank_gap_pt = 12, line_least_pt = MM_PT(30);

static double label_room_pt(const struct placed_blank *p)
{
	return p->label->n ? p->label->width_pt + part_gap_pt : 0;
}

static double unit_room_pt(const struct placed_blank *p)
{
	return p->unit->n ? p->unit->width_pt + part_gap_pt : 0;
}

static void draw_blank(const struct placed_blank *p, const struct pen *pen, pt at)
{
	double bottom = at.y + p->top_pt + p->height_pt;
	double left = at.x + p->left_pt + label_room_pt(p);
	double rule_y = bottom - (p->label->lead_pt - p->label->rise_pt);

	para_draw(p->label, pen,
	    (pt){ at.x + p->left_pt, bottom - para_height_pt(p->label) });
	canvas_tag_begin(pen->canvas, TAG_ARTIFACT, STR(""));
	canvas_line(pen->canvas, (pt){ left, rule_y }, (pt){ left + p->line_pt, rule_y },
	    RULE_PT);
	canvas_tag_end(pen->canvas);
	para_draw(p->unit, pen,
	    (pt){ left + p->line_pt + part_gap_pt, bottom - para_height_pt(p->unit) });
}

static void draw_blanks(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	const struct blanks_block *t = (const struct blanks_block *)b;

	(void)part;
	canvas_tag_begin(pen->canvas, TAG_P, STR(""));
	for (size_t i = 0; i < t->n; i++)
		draw_blank(&t->v[i], pen, at);
	canvas_tag_end(pen->canvas);
}

static const struct lines *short_text(const struct setter *s, str text,
    const struct type *type, double most_pt)
{
	struct type left = *type;
	double w_pt = plain_width_pt(s, text, type);

	left.align = ALIGN_LEFT;
	return para_break_plain(s, text, &left, w_pt < most_pt ? w_pt : most_pt);
}

static double max_pt(double a, double b)
{
	return a > b ? a : b;
}

static struct placed_blank blank_measure(const struct setter *s, const struct blank *v,
    const struct type *type, double width_pt)
{
	struct placed_blank p = {
		.label = short_text(s, v->label, type, width_pt * 0.5),
		.unit = short_text(s, v->unit, type, width_pt * 0.2),
		.line_pt = v->width_pt > 0 ? v->width_pt : line_least_pt,
	};
	double room_pt = max_pt(width_pt - label_room_pt(&p) - unit_room_pt(&p), 0);

	p.line_pt = p.line_pt < room_pt ? p.line_pt : room_pt;
	return p;
}

static double blank_width_pt(const struct placed_blank *p)
{
	return label_room_pt(p) + p->line_pt + unit_room_pt(p);
}

/* How many of the blanks from `first` on fit on one row; *used is what they take. */
static size_t row_count(const struct placed_blank *v, size_t n, double width_pt,
    double *used_pt)
{
	size_t i = 1;

	*used_pt = blank_width_pt(&v[0]);
	for (; i < n; i++) {
		double more_pt = *used_pt + blank_gap_pt + blank_width_pt(&v[i]);

		if (more_pt > width_pt + 0.01)
			break;
		*used_pt = more_pt;
	}
	return i;
}

/* Gives what is left over to the blanks without a width of their own, and places all. */
static void place_row(struct placed_blank *v, const struct blank *given, size_t n,
    double spare_pt, double top_pt, double height_pt)
{
	size_t sharing = 0;
	double x = 0;

	for (size_t i = 0; i < n; i++)
		sharing += given[i].width_pt <= 0;
	for (size_t i = 0; i < n; i++) {
		if (given[i].width_pt <= 0)
			v[i].line_pt += max_pt(spare_pt, 0) / (double)sharing;
		v[i].left_pt = x;
		v[i].top_pt = top_pt;
		v[i].height_pt = height_pt;
		x += blank_width_pt(&v[i]) + blank_gap_pt;
	}
}

static double row_height_pt(const struct placed_blank *v, size_t n, double least_pt)
{
	for (size_t i = 0; i < n; i++) {
		least_pt = max_pt(least_pt, para_height_pt(v[i].label));
		least_pt = max_pt(least_pt, para_height_pt(v[i].unit));
	}
	return least_pt;
}

struct block *block_blanks(const struct setter *s, const struct blank *v, size_t n,
    const struct type *type, double row_pt, double width_pt)
{
	struct blanks_block *t = block_make(s, sizeof *t, draw_blanks, width_pt, 0);
	double top_pt = 0, used_pt;

	t->v = arena_array(s->arena, n, sizeof *t->v);
	t->n = n;
	for (size_t i = 0; i < n; i++)
		t->v[i] = blank_measure(s, &v[i], type, width_pt);
	for (size_t i = 0, k; i < n; i += k) {
		k = row_count(t->v + i, n - i, width_pt, &used_pt);
		double h_pt = row_height_pt(t->v + i, k, row_pt > 0 ? row_pt : GLOVE_PT);

		place_row(t->v + i, v + i, k, width_pt - used_pt, top_pt, h_pt);
		top_pt += h_pt;
	}
	t->b.height_pt = top_pt;
	return &t->b;
}

/* ---- ruled lines ---- */

static void draw_ruled(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	/* A hair of slack, so that whole multiples of the pitch keep their last line. */
	size_t n = (size_t)((part.height_pt + 0.01) / GLOVE_PT);

	canvas_tag_begin(pen->canvas, TAG_ARTIFACT, STR(""));
	for (size_t i = 1; i <= n; i++) {
		double y = at.y + (double)i * GLOVE_PT - RULE_PT / 2;

		canvas_line(pen->canvas, (pt){ at.x, y }, (pt){ at.x + b->width_pt, y },
		    RULE_PT);
	}
	canvas_tag_end(pen->canvas);
}

struct block *block_ruled(const struct setter *s, double height_pt, bool fill,
    double width_pt)
{
	struct block *b = block_make(s, sizeof *b, draw_ruled, width_pt, height_pt);

	b->fill = fill;
	return b;
}
