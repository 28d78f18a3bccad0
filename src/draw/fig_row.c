/* Rows of dimensions above and below a section, each outside the one before. */
#include "draw/fig_layout.h"

#include "draw/geom.h"

#include <assert.h>
#include <math.h>

#define ROW_FIRST_PT 12.0
#define ROW_BESIDE_PT 11.0
#define EXTENSION_GAP_PT 2.0
#define EXTENSION_PAST_PT 3.0
#define LABEL_GAP_PT 3.0
#define DROP_PT 12.0
#define BETWEEN_PT 6.0
#define BETWEEN_WORDS_PT 13.0 /* words read on over a narrower gap */
#define ARC_STEPS 16

/* The line from a point of the part, with a small gap, to just past the dimension. */
static void add_extension(struct layout *l, pt from, pt to)
{
	pt u = pt_unit(pt_sub(to, from));

	layout_thin(l, pt_add(from, pt_mul(u, EXTENSION_GAP_PT)),
	    pt_add(to, pt_mul(u, EXTENSION_PAST_PT)));
}

/* The line up to a dimension begins beyond any label that it would run through. */
static void add_clear_extension(struct layout *l, pt from, pt to)
{
	double way = to.y < from.y ? -1 : 1;

	for (size_t i = 0; i < l->nlabels; i++) {
		rect r = rect_inset(l->label[i].r, -1);
		double far = way < 0 ? r.y : r.y + r.h;

		if (rect_crossed(r, from, to) && (far - to.y) * way < 0)
			from.y = far;
	}
	add_extension(l, from, to);
}

static void place_level(struct layout *l, const struct section_dim *d)
{
	bool above = d->side == SECTION_TOP;
	double from = d->near ? layout_point(l, d->a).y : above ? l->top : l->bottom;
	double y = from + (above ? -ROW_FIRST_PT : ROW_FIRST_PT);
	pt a = layout_point(l, d->a), b = layout_point(l, d->b);
	struct layout_label *t;

	add_clear_extension(l, a, (pt){ a.x, y });
	add_clear_extension(l, b, (pt){ b.x, y });
	layout_arrows(l, (pt){ a.x, y }, (pt){ b.x, y });
	t = layout_label(l, d->label, DIM_CENTER, l->lines);
	t->r.x = (a.x + b.x - t->r.w) / 2;
	if (above) {
		t->r.y = y - LABEL_GAP_PT - t->r.h;
		l->top = t->r.y;
	} else {
		t->r.y = y + LABEL_GAP_PT;
		l->bottom = fmax(l->bottom, t->r.y + t->r.h);
	}
}

/* The label stands at the end of the dimension line, drawn out by a stem. */
static void place_beside(struct layout *l, const struct section_dim *d)
{
	bool above = d->side == SECTION_TOP;
	struct layout_label *t = layout_label(l, d->label,
	    d->end == SECTION_LEFT ? DIM_RIGHT : DIM_LEFT, l->lines);
	/* Labels of one end stand under one another. */
	double step = d->repeated ? t->r.h + 1 : ROW_BESIDE_PT;
	double y = above ? l->top - step : l->bottom + step;
	pt a = layout_point(l, d->a), b = layout_point(l, d->b);
	pt from = { fmin(a.x, b.x), y }, to = { fmax(a.x, b.x), y };

	add_extension(l, a, (pt){ a.x, y });
	add_extension(l, b, (pt){ b.x, y });
	if (layout_arrows(l, from, to))
		layout_thin(l, d->end == SECTION_LEFT ? from : to,
		    (pt){
		        d->end == SECTION_LEFT ? from.x - STEM_PT : to.x + STEM_PT, y });
	t->r.y = y - t->r.h / 2;
	t->r.x = d->end == SECTION_LEFT ? from.x - STEM_PT - LABEL_GAP_PT - t->r.w
	    : to.x + STEM_PT + LABEL_GAP_PT;
	l->top = above ? y : l->top;
	l->bottom = above ? l->bottom : y;
}

/* Arrowheads at the ends of an arc lie along chords of their own length. */
static void arc_arrows(struct layout *l, pt apex, double r, double from, double to)
{
	double turn = DIM_ARROW_PT / r * 180 / GEOM_PI;
	bool inside = (to - from) * GEOM_PI / 180 * r >= INSIDE_PT;
	const double end[2] = { from, to };

	for (int i = 0; i < 2; i++) {
		double way = (i == 0) == inside ? 1 : -1;
		pt tip = pt_add(apex, pt_polar(r, -end[i]));
		pt back = pt_add(apex, pt_polar(r, -end[i] - way * turn));

		layout_arrow(l, tip, pt_unit(pt_sub(tip, back)));
		if (!inside)
			layout_thin(l, tip, pt_add(apex,
			    pt_polar(r, -end[i] - way * turn * 1.7)));
	}
}

static void place_angle(struct layout *l, const struct section_dim *d)
{
	pt apex = layout_point(l, d->apex), a = layout_point(l, d->a);
	pt b = layout_point(l, d->b);
	double from = atan2(apex.y - a.y, a.x - apex.x) * 180 / GEOM_PI;
	double to = atan2(apex.y - b.y, b.x - apex.x) * 180 / GEOM_PI;
	double low = fmin(geom_sin(from), geom_sin(to));
	double r = (apex.y - l->top + 7) / low;
	struct layout_label *t = layout_label(l, d->label, DIM_CENTER, l->lines);
	pt mid = pt_add(apex, pt_polar(r, -(from + to) / 2));
	pt at = pt_add(apex, pt_polar(r, -from));
	double high = apex.y - r * (from < 90 && to > 90 ? 1
	    : fmax(geom_sin(from), geom_sin(to)));

	add_extension(l, a, at);
	add_extension(l, b, pt_add(apex, pt_polar(r, -to)));
	arc_arrows(l, apex, r, from, to);
	assert(l->narcs < LAYOUT_ARCS && l->nthin + 2 * ARC_STEPS <= LAYOUT_THIN);
	l->arc[l->narcs++] = (struct layout_arc){ apex, r, from, to, l->nthin };
	l->nthin += 2 * ARC_STEPS;
	pt u = pt_polar(1, -(from + to) / 2);
	pt middle = pt_add(mid, pt_mul(u, LABEL_GAP_PT + EXTENSION_PAST_PT +
	    fabs(u.x) * t->r.w / 2 + fabs(u.y) * t->r.h / 2));
	t->r.x = middle.x - t->r.w / 2;
	t->r.y = middle.y - t->r.h / 2;
	l->top = fmin(high - EXTENSION_PAST_PT, t->r.y);
}

/* A place of a feature below which a label stands. */
struct hang {
	const struct section_dim *d;
	struct layout_label *label;
	pt at;
};

/* Picks the dimensions of a kind, sorted from left to right. */
static size_t pick_hanging(struct layout *l, enum section_dim_kind kind, struct hang *v)
{
	size_t n = 0;

	for (size_t i = 0; i < l->s->ndims; i++) {
		const struct section_dim *d = &l->s->dim[i];
		struct hang h = { d, NULL, layout_point(l, d->a) };
		size_t at = n;

		if (d->kind != kind)
			continue;
		h.label = layout_label(l, d->label, DIM_CENTER, l->lines);
		for (; at > 0 && v[at - 1].at.x > h.at.x; at--)
			v[at] = v[at - 1];
		v[at] = h;
		n++;
	}
	return n;
}

/* Labels in one row below the part, as near as can be to what they belong to. */
static void place_hanging(struct layout *l, enum section_dim_kind kind)
{
	struct hang v[SECTION_DIMS];
	double want[SECTION_DIMS], size[SECTION_DIMS], middle[SECTION_DIMS], low;
	size_t n = pick_hanging(l, kind, v);

	if (n == 0)
		return;
	for (size_t i = 0; i < n; i++) {
		want[i] = v[i].at.x;
		size[i] = v[i].label->r.w +
		    (kind == SECTION_DROP ? BETWEEN_WORDS_PT : BETWEEN_PT);
	}
	geom_spread(want, size, n, middle);
	low = l->bottom;
	for (size_t i = 0; i < n; i++) {
		rect *r = &v[i].label->r;
		pt knee = { v[i].at.x, low + 3 }, end = { middle[i], low + DROP_PT };

		r->x = middle[i] - r->w / 2;
		r->y = end.y + 2;
		l->bottom = fmax(l->bottom, r->y + r->h);
		if (kind == SECTION_DROP) {
			layout_thin(l, end, v[i].at);
			layout_arrow(l, v[i].at, pt_unit(pt_sub(v[i].at, end)));
			continue;
		}
		layout_thin(l, (pt){ v[i].at.x, v[i].at.y + EXTENSION_GAP_PT }, knee);
		layout_thin(l, knee, end);
	}
}

static void add_arc(struct layout *l, const struct layout_arc *k)
{
	pt at = pt_add(k->apex, pt_polar(k->r, -k->from_deg));
	size_t end = l->nthin;

	l->nthin = k->thin;
	for (int i = 0; i < ARC_STEPS; i++) {
		double deg = -k->from_deg - (k->to_deg - k->from_deg) * (i + 1) / ARC_STEPS;
		pt next = pt_add(k->apex, pt_polar(k->r, deg));

		layout_thin(l, at, next);
		at = next;
	}
	l->nthin = end;
}

void layout_arcs(struct layout *l)
{
	for (size_t i = 0; i < l->narcs; i++)
		add_arc(l, &l->arc[i]);
}

void layout_rows(struct layout *l)
{
	place_hanging(l, SECTION_DROP);
	place_hanging(l, SECTION_ORDINATE_X);
	layout_chain_row(l);
	for (size_t i = 0; i < l->s->ndims; i++) {
		const struct section_dim *d = &l->s->dim[i];

		if (d->kind == SECTION_ANGLE)
			place_angle(l, d);
		else if (d->kind == SECTION_LEVEL)
			place_level(l, d);
		else if (d->kind == SECTION_LEVEL_BESIDE)
			place_beside(l, d);
	}
}
