/* Blanks seen flat: outline with notches, holes, slots, bends and cuts. Each feature is
 * placed by its distances from the left and lower edges; where the labels would crowd,
 * features are numbered and a table beside the drawing tells their sizes. */
#include "draw/fig_section.h"

#include "base/buf.h"
#include "draw/dim.h"
#include "draw/geom.h"

#include <assert.h>
#include <math.h>

#define SAME_MM 1e-6
#define NOTCHES 15
/* Leaders to more features than a few cross each other; to more than most, never. */
#define FEW 4
#define MOST_LABELED 14
#define TABLE_PT DIM_TYPE_PT
#define TABLE_ROW_PT 16.0
#define TABLE_GAP_PT 8.0
#define CURVE_CIRCLE 0.5522847498 /* 4/3 (sqrt 2 - 1): a quarter circle by one cubic */

struct plate_view {
	const struct fig_plate *plate;
	bool numbered, chained;
};

/* A notch as one edge of the blank sees it: along the edge from s0 to s1, that deep.
 * Edges run counterclockwise: 0 bottom, 1 right, 2 top, 3 left. */
struct bite { double s0, s1, depth; };

static double edge_length(const struct fig_plate *p, int edge)
{
	return edge % 2 == 0 ? p->length_mm : p->width_mm;
}

static bool same(double a, double b)
{
	return fabs(a - b) < SAME_MM;
}

/* Whether the notch opens to that edge. */
static bool bite_of(const struct fig_plate *p, const struct fig_feature *n, int edge,
    struct bite *b)
{
	double l = p->length_mm, w = p->width_mm, right = n->x_mm + n->w_mm;
	double high = n->y_mm + n->h_mm;
	const struct bite at[4] = { { n->x_mm, right, n->h_mm },
		{ n->y_mm, high, n->w_mm }, { l - right, l - n->x_mm, n->h_mm },
		{ w - high, w - n->y_mm, n->w_mm } };
	const bool opens[4] = { same(n->y_mm, 0), same(right, l), same(high, w),
	    same(n->x_mm, 0) };

	*b = at[edge];
	return n->mark == FIG_NOTCH && opens[edge];
}

static void edge_corner(struct section_member *m, const struct fig_plate *p, int edge,
    double s, double depth)
{
	double l = p->length_mm, w = p->width_mm;
	const pt at[4] = { { s, depth }, { l - depth, s }, { l - s, w - depth },
	    { depth, w - s } };

	section_corner(m, at[edge].x, at[edge].y);
}

/* The next notch along an edge that begins at or after `from`, corners left out. */
static bool next_bite(const struct fig_plate *p, int edge, double from, struct bite *out)
{
	struct bite b;
	bool found = false;

	*out = (struct bite){ 0, 0, 0 };
	for (size_t i = 0; i < p->nfeatures; i++) {
		if (!bite_of(p, &p->features[i], edge, &b) || b.s0 < from - SAME_MM ||
		    same(b.s0, 0) || same(b.s1, edge_length(p, edge)))
			continue;
		if (!found || b.s0 < out->s0)
			*out = b;
		found = true;
	}
	return found;
}

/* The corner at the end of an edge, or the notch that takes it away. */
static void end_corner(struct section_member *m, const struct fig_plate *p, int edge)
{
	int next = (edge + 1) % 4;
	struct bite b, c;

	for (size_t i = 0; i < p->nfeatures; i++) {
		if (!bite_of(p, &p->features[i], edge, &b) ||
		    !bite_of(p, &p->features[i], next, &c))
			continue;
		if (!same(b.s1, edge_length(p, edge)))
			continue;
		edge_corner(m, p, edge, b.s0, 0);
		edge_corner(m, p, edge, b.s0, b.depth);
		edge_corner(m, p, next, c.s1, 0);
		return;
	}
	edge_corner(m, p, next, 0, 0);
}

static void add_outline(struct section *s, const struct fig_plate *p)
{
	struct section_member *m = section_plate(s, NAN);
	struct bite b;

	for (int edge = 0; edge < 4; edge++) {
		double from = 0;

		while (next_bite(p, edge, from, &b)) {
			edge_corner(m, p, edge, b.s0, 0);
			edge_corner(m, p, edge, b.s0, b.depth);
			edge_corner(m, p, edge, b.s1, b.depth);
			edge_corner(m, p, edge, b.s1, 0);
			from = b.s1;
		}
		end_corner(m, p, edge);
	}
}

/* A circle, or a slot with round ends. */
void plate_opening(struct section *s, const struct fig_feature *h)
{
	double w = h->w_mm, t = h->mark == FIG_HOLE ? w : h->h_mm, r = fmin(w, t) / 2;
	double k = r * CURVE_CIRCLE;
	struct section_bead *b = section_bead(s);

	for (int i = 0; i < 4; i++) {
		/* Corner i of the box, counterclockwise from the lower right. */
		double sx = i == 0 || i == 1 ? 1 : -1, sy = i == 1 || i == 2 ? 1 : -1;
		pt o = { h->x_mm + sx * (w / 2 - r), h->y_mm + sy * (t / 2 - r) };
		pt along = pt_polar(1, 90 * i), out = pt_polar(1, 90 * i - 90);
		pt from = pt_add(o, pt_mul(out, r)), to = pt_add(o, pt_mul(along, r));
		struct seg g = { SEG_CURVE, { pt_add(from, pt_mul(along, k)),
		    pt_add(to, pt_mul(out, k)), to } };

		if (i == 0)
			section_move(b, from);
		else
			section_line(b, from);
		b->s[b->n++] = g;
	}
	section_close(b);
}

static bool is_line(const struct fig_feature *g)
{
	return g->mark == FIG_BEND || g->mark == FIG_CUT;
}

/* Where a leader or a number points at a feature. */
static pt feature_spot(const struct fig_feature *g)
{
	if (g->mark == FIG_NOTCH)
		return (pt){ g->x_mm + g->w_mm / 2, g->y_mm + g->h_mm / 2 };
	if (is_line(g))
		return (pt){ g->x_mm + g->w_mm * 0.7, g->y_mm + g->h_mm * 0.7 };
	return (pt){ g->x_mm, g->y_mm };
}

/* One end of a feature: where it is along an axis, and the label of that. */
struct ordinate { double mm; str label; };

static struct ordinate ordinate_of(const struct fig_feature *g, int end, bool x)
{
	double mm = x ? g->x_mm : g->y_mm, far = x ? g->w_mm : g->h_mm;

	if (end == 0)
		return (struct ordinate){ mm, x ? g->label_x : g->label_y };
	return (struct ordinate){ mm + far, x ? g->label_far_x : g->label_far_y };
}

/* Ordinates in one place with one label are told once; those of an edge not at all. */
static bool told_before(const struct fig_plate *p, size_t i, int end, bool x)
{
	struct ordinate mine = ordinate_of(&p->features[i], end, x);

	if (same(mine.mm, 0) || same(mine.mm, x ? p->length_mm : p->width_mm))
		return true;
	for (size_t k = 0; k < 2 * i + (size_t)end; k++) {
		struct ordinate o = ordinate_of(&p->features[k / 2], (int)(k % 2), x);

		if (same(o.mm, mine.mm) && str_eq(o.label, mine.label))
			return true;
	}
	return false;
}

static void label_ordinates(struct section *s, const struct fig_plate *p, size_t i, int end)
{
	const struct fig_feature *g = &p->features[i];
	struct ordinate x = ordinate_of(g, end, true), y = ordinate_of(g, end, false);

	if (!told_before(p, i, end, true))
		section_dim(s, (struct section_dim){ .kind = SECTION_ORDINATE_X,
		    .side = SECTION_BOTTOM, .a = { x.mm, y.mm }, .label = x.label });
	if (!told_before(p, i, end, false))
		section_dim(s, (struct section_dim){ .kind = SECTION_ORDINATE_Y,
		    .side = SECTION_LEFT, .a = { x.mm, y.mm }, .label = y.label });
}

static void label_feature(struct section *s, const struct fig_plate *p, size_t i,
    bool chained)
{
	const struct fig_feature *g = &p->features[i];
	pt rim = feature_spot(g);

	if (g->mark == FIG_HOLE)
		rim = pt_add(rim, pt_polar(g->w_mm / 2, 30));
	else if (g->mark == FIG_SLOT || g->mark == FIG_NOTCH)
		rim.x += g->w_mm / 2;
	for (int end = 0; end < 2 && !chained; end++)
		label_ordinates(s, p, i, end);
	if (!g->like_another)
		section_pointer(s, SECTION_RIGHT, rim, rim,
		    g->label_all.n ? g->label_all : g->label_size);
}

/* The ring stands beside the feature, not on it. */
static void number_feature(struct section *s, const struct fig_feature *g,
    struct section_frame f)
{
	double off = (SECTION_SPOT_PT + 1.5) * f.mm_pt;
	pt at = feature_spot(g);

	assert(s->nspots < SECTION_SPOTS);
	if (g->mark == FIG_HOLE || g->mark == FIG_SLOT)
		at.x += g->w_mm / 2 + off;
	else
		at = pt_add(
		    at, pt_polar(off * 1.45, 45)); /* clear of a level or upright line */
	s->spot_number[s->nspots] = (unsigned)s->nspots + 1;
	s->spot[s->nspots++] = at;
}

static void build_plate(struct section *s, const void *data, struct section_frame f)
{
	const struct plate_view *v = data;
	const struct fig_plate *p = v->plate;
	double l = p->length_mm, w = p->width_mm;

	add_outline(s, p);
	for (size_t i = 0; i < p->nfeatures; i++) {
		const struct fig_feature *g = &p->features[i];

		if (g->mark == FIG_HOLE || g->mark == FIG_SLOT)
			plate_opening(s, g);
		if (is_line(g))
			section_rule(s, (pt){ g->x_mm, g->y_mm },
			    (pt){ g->x_mm + g->w_mm, g->y_mm + g->h_mm },
			    g->mark == FIG_BEND);
		if (p->torch && (g->mark == FIG_HOLE || g->mark == FIG_SLOT))
			plate_cut_opening(s, g, f.mm_pt);
		if (p->torch && g->mark == FIG_CUT)
			plate_cut_line(s, g, f.mm_pt);
		if (v->numbered)
			number_feature(s, g, f);
		else
			label_feature(s, p, i, v->chained);
	}
	if (v->chained)
		plate_chains(s, p);
	s->spots_apart = v->numbered;
	section_level(s, SECTION_TOP, (pt){ 0, w }, (pt){ l, w }, p->label_length);
	/* Leaders at the right would cross a dimension line there. */
	if (v->chained)
		section_upright(s, SECTION_LEFT, (pt){ 0, 0 }, (pt){ 0, w }, SECTION_UP,
		    p->label_width);
	else if (p->nfeatures > 0 && !v->numbered)
		section_dim(s, (struct section_dim){ .kind = SECTION_ORDINATE_Y,
		    .side = SECTION_LEFT, .a = { 0, w }, .label = p->label_width });
	else
		section_upright(s, SECTION_RIGHT, (pt){ l, 0 }, (pt){ l, w }, SECTION_UP,
		    p->label_width);
}

static str notch_fault(const struct fig_plate *p, const struct fig_feature *g)
{
	struct bite b;
	int open = 0;

	for (int edge = 0; edge < 4; edge++)
		open += bite_of(p, g, edge, &b) ? 1 : 0;
	if (open == 0)
		return WORD("a notch opens to no edge");
	if (g->w_mm >= p->length_mm - SAME_MM || g->h_mm >= p->width_mm - SAME_MM)
		return WORD("a notch cuts the blank in two");
	return STR("");
}

static rect feature_box(const struct fig_feature *g)
{
	double h = g->mark == FIG_HOLE ? g->w_mm : g->h_mm;
	rect r = { g->x_mm, g->y_mm, 0, 0 };

	if (g->mark == FIG_NOTCH || is_line(g))
		return rect_grow(r, (pt){ g->x_mm + g->w_mm, g->y_mm + h });
	return (rect){ g->x_mm - g->w_mm / 2, g->y_mm - h / 2, g->w_mm, h };
}

static str feature_fault(const struct fig_plate *p, const struct fig_feature *g)
{
	rect blank = { -SAME_MM, -SAME_MM, p->length_mm + 2 * SAME_MM,
	    p->width_mm + 2 * SAME_MM };
	bool sized = is_line(g) ? g->w_mm != 0 || g->h_mm != 0
	    : g->w_mm > 0 && (g->mark == FIG_HOLE || g->h_mm > 0);

	if (!sized || !isfinite(g->x_mm + g->y_mm + g->w_mm) ||
	    (g->mark != FIG_HOLE && !isfinite(g->h_mm)))
		return WORD("a hole, slot, notch or line has no size");
	if (!rect_holds(blank, feature_box(g)))
		return WORD("a hole, slot, notch or line runs over the edge");
	return g->mark == FIG_NOTCH ? notch_fault(p, g) : STR("");
}

static bool notches_meet(const struct fig_plate *p)
{
	size_t n = 0;

	for (size_t i = 0; i < p->nfeatures; i++) {
		if (p->features[i].mark != FIG_NOTCH)
			continue;
		n++;
		for (size_t k = 0; k < i; k++)
			if (p->features[k].mark == FIG_NOTCH &&
			    !rect_apart(feature_box(&p->features[i]),
			        feature_box(&p->features[k])))
				return true;
	}
	return n > NOTCHES;
}

str fig_plate_fault(const struct fig_plate *p)
{
	if (!fig_given(p->length_mm) || !fig_given(p->width_mm) ||
	    !isfinite(p->length_mm + p->width_mm))
		return WORD("the length or the width is not given");
	if (p->nfeatures > FIG_FEATURES)
		return WORD("more than 40 holes, slots, notches and lines");
	for (size_t i = 0; i < p->nfeatures; i++) {
		str why = feature_fault(p, &p->features[i]);

		if (why.n > 0)
			return why;
	}
	if (notches_meet(p))
		return WORD("notches overlap, or there are more than 15");
	return STR("");
}

/* Cell of the table; row 0 is the head. */
static str cell_text(const struct fig_plate *p, size_t row, int col)
{
	static const str head[4] = { WORD("No."), WORD("Size"), WORD("From left"),
		WORD("From bottom") };
	const struct fig_feature *g = row > 0 ? &p->features[row - 1] : NULL;

	if (g == NULL)
		return word_str(p->language, head[col]);
	return col == 1 ? g->label_size : col == 2 ? g->label_x : col == 3 ? g->label_y
	    : fig_number((unsigned)row);
}

static void table_widths(const struct faces *f, const struct fig_plate *p, double w[4])
{
	for (int col = 0; col < 4; col++) {
		w[col] = 0;
		for (size_t row = 0; row <= p->nfeatures; row++)
			w[col] = fmax(w[col],
			    face_width_pt(f, row == 0 ? FACE_SANS_BOLD : FACE_SANS,
			        TABLE_PT, cell_text(p, row, col)));
		w[col] += TABLE_GAP_PT;
	}
}

/* The table in blocks side by side, all of the same height. */
struct table {
	const struct fig_plate *plate;
	double w[4], wide;       /* of the columns, of a block */
	size_t blocks, rows;     /* features in a block */
};

static void draw_block(struct canvas *c, pt at, const struct table *t, size_t first)
{
	for (size_t k = 0; k <= t->rows && first + k <= t->plate->nfeatures; k++) {
		rect cell = { at.x, at.y + TABLE_ROW_PT * (double)k, 0, TABLE_ROW_PT };

		for (int col = 0; col < 4; col++) {
			str text = cell_text(t->plate, k == 0 ? 0 : first + k, col);

			cell.w = t->w[col];
			canvas_box_begin(c, cell, STR("label"));
			if (text.n > 0)
				canvas_text(c, (pt){ cell.x + TABLE_GAP_PT / 2,
				    cell.y + TABLE_ROW_PT - 3.5 },
				    k == 0 ? FACE_SANS_BOLD : FACE_SANS, TABLE_PT, text);
			canvas_box_end(c);
			cell.x += t->w[col];
		}
		canvas_line(c, (pt){ at.x + 1, cell.y + TABLE_ROW_PT },
		    (pt){ cell.x - 1, cell.y + TABLE_ROW_PT }, k == 0 ? 1 : DIM_THIN_PT);
	}
}

/* The drawing in what a table at the right, or below, leaves free. */
static bool draw_numbered(struct canvas *c, const struct faces *f, rect area,
    struct table t, const struct fig_fit *fit, bool below)
{
	rect free = area, table = area;
	double high;

	t.blocks =
	    below ? (size_t)((area.w + TABLE_GAP_PT) / (t.wide + TABLE_GAP_PT)) : 1;
	if (t.blocks == 0)
		return false;
	t.rows = (t.plate->nfeatures + t.blocks - 1) / t.blocks;
	high = TABLE_ROW_PT * (double)(t.rows + 1) + 1;
	if (below) {
		free.h -= high + TABLE_GAP_PT;
		table.y = area.y + area.h - high;
	} else {
		free.w -= t.wide + TABLE_GAP_PT;
		table.x = area.x + area.w - t.wide;
	}
	if (high > area.h || free.w < 60 || free.h < 60 || !fig_fit_draw(c, f, free, fit))
		return false;
	for (size_t i = 0; i < t.blocks; i++)
		draw_block(c,
		    (pt){ table.x + (double)i * (t.wide + TABLE_GAP_PT), table.y }, &t,
		    i * t.rows);
	return true;
}

/* Features that have a label of their own beside the drawing. */
static size_t count_labels(const struct fig_plate *p)
{
	size_t n = 0;

	for (size_t i = 0; i < p->nfeatures; i++)
		n += !p->features[i].like_another;
	return n;
}

bool fig_plate_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_plate *p)
{
	str why = fig_plate_fault(p);
	bool chain = p->chain_x.n + p->chain_y.n > 0;
	struct plate_view view = { p, false, chain };
	struct fig_fit fit = { .build = build_plate, .data = &view,
	    .position = p->label_thickness, .language = p->language };
	struct table t = { .plate = p };
	bool flat = p->length_mm > p->width_mm * 1.6;

	if (why.n > 0)
		return fig_refuse(c, f, area, p->language, why);
	if (count_labels(p) <= FEW && fig_fit_draw(c, f, area, &fit))
		return true;
	view.chained = false;
	if (chain && count_labels(p) <= FEW && fig_fit_draw(c, f, area, &fit))
		return true;
	table_widths(f, p, t.w);
	t.wide = t.w[0] + t.w[1] + t.w[2] + t.w[3];
	view.numbered = true;
	if (draw_numbered(c, f, area, t, &fit, flat) ||
	    draw_numbered(c, f, area, t, &fit, !flat))
		return true;
	view.numbered = false;
	if (count_labels(p) > FEW && count_labels(p) <= MOST_LABELED &&
	    fig_fit_draw(c, f, area, &fit))
		return true;
	return fig_refuse(c, f, area, p->language, FIG_NO_ROOM);
}

static void add_place(struct buf *b, const struct language *l, str x, str y)
{
	if (x.n > 0)
		word_addf(b, l, ", %.*s from the left", STR_ARG(x));
	if (y.n > 0)
		word_addf(b, l, ", %.*s from the bottom", STR_ARG(y));
}

str fig_plate_words(struct arena *a, const struct fig_plate *p)
{
	static const str name[] = { WORD("hole"), WORD("slot"), WORD("notch"),
		WORD("bend line"), WORD("cut line") };
	const struct language *l = p->language;
	struct buf b = { .arena = a };
	str why = fig_plate_fault(p);

	if (why.n > 0)
		return word_format(a, l, "No drawing: %.*s.", STR_ARG(word_str(l, why)));
	word_addf(&b, l, "Blank seen flat, %.*s by %.*s", STR_ARG(p->label_length),
	    STR_ARG(p->label_width));
	if (p->label_thickness.n > 0)
		buf_addf(&b, ", %.*s", STR_ARG(p->label_thickness));
	if (p->label_kerf.n > 0)
		buf_addf(&b, ", %.*s", STR_ARG(p->label_kerf));
	buf_adds(&b, ".");
	if (p->nfeatures > 0)
		buf_add(&b, word(l, " With "));
	for (size_t i = 0; i < p->nfeatures; i++) {
		const struct fig_feature *g = &p->features[i];

		buf_adds(&b, i == 0 ? "" : "; ");
		/* The size of a slot names it; lines have none of their own. */
		if (g->mark != FIG_SLOT)
			buf_add(&b, word_str(l, name[g->mark]));
		if (g->mark != FIG_BEND && g->mark != FIG_CUT)
			buf_addf(&b, "%s%.*s", g->mark != FIG_SLOT ? " " : "",
			    STR_ARG(g->label_size));
		add_place(&b, l, g->label_x, g->label_y);
		if (g->label_far_x.n > 0)
			buf_add(&b, word(l, ", to a point"));
		add_place(&b, l, g->label_far_x, g->label_far_y);
		if (g->label_kerf.n > 0)
			buf_addf(&b, ", %.*s", STR_ARG(g->label_kerf));
	}
	if (p->nfeatures > 0)
		buf_adds(&b, ".");
	plate_chain_words(&b, p);
	return buf_str(&b);
}
