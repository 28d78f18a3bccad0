/* Places on a blank told from one to the next: a row of arrows end to end below it and one
 * up its left side. The link from the last place to the far end is left out, since the
 * overall size gives it: common practice, no source. */
#include "draw/fig_layout.h"

#include "base/buf.h"
#include "draw/geom.h"

#include <math.h>

#define SAME_MM 0.01
#define ROW_PT 12.0
#define PAST_PT 3.0
#define GAP_PT 2.0
#define LABEL_PT 4.5
#define BETWEEN_PT 6.0
#define LEAST_LINK_PT 5.0
#define LEAST_ARROWS_PT (2 * DIM_ARROW_PT + 1)
#define SLANT_PT 2.5
#define MOST_OFF_PT 40.0

/* The spot of a place that is nearest to the edge along which the chain runs. */
static pt nearest_spot(const struct fig_plate *p, double mm, bool x)
{
	double best = INFINITY;

	for (size_t i = 0; i < 2 * p->nfeatures; i++) {
		const struct fig_feature *g = &p->features[i / 2];
		bool far = i % 2 == 1 && (g->mark == FIG_CUT || g->mark == FIG_BEND);
		double along = (x ? g->x_mm : g->y_mm) + (!far ? 0 : x ? g->w_mm : g->h_mm);
		double off = (x ? g->y_mm : g->x_mm) + (!far ? 0 : x ? g->h_mm : g->w_mm);

		if (fabs(along - mm) < SAME_MM)
			best = fmin(best, off);
	}
	if (!isfinite(best))
		best = 0;
	return x ? (pt){ mm, best } : (pt){ best, mm };
}

static void add_chain(struct section *s, const struct fig_plate *p,
    const struct fig_chain *k, bool x)
{
	for (size_t i = 0; i < k->n; i++) {
		double from = k->v[i].from_mm;

		section_dim(s, (struct section_dim){
		    .kind = x ? SECTION_CHAIN_X : SECTION_CHAIN_Y,
		    .side = x ? SECTION_BOTTOM : SECTION_LEFT, .first = i == 0,
		    .a = x ? (pt){ from, 0 } : (pt){ 0, from },
		    .b = nearest_spot(p, k->v[i].to_mm, x), .label = k->v[i].label });
	}
}

void plate_chains(struct section *s, const struct fig_plate *p)
{
	add_chain(s, p, &p->chain_x, true);
	add_chain(s, p, &p->chain_y, false);
}

static void say_chain(struct buf *b, const struct language *l, str head,
    const struct fig_chain *k)
{
	if (k->n == 0)
		return;
	buf_adds(b, " ");
	buf_add(b, word_str(l, head));
	for (size_t i = 0; i < k->n; i++)
		buf_addf(b, "%s%.*s", i == 0 ? " " : ", ", STR_ARG(k->v[i].label));
	buf_adds(b, ".");
}

void plate_chain_words(struct buf *b, const struct fig_plate *p)
{
	say_chain(b, p->language, WORD("Along the bottom, each from the last:"), &p->chain_x);
	say_chain(b, p->language, WORD("Up the left side, each from the last:"), &p->chain_y);
}

/* An arrow at `tip` that points along `dir`, on a stem where no other link carries it. */
static void outer_arrow(struct layout *l, pt tip, pt dir)
{
	layout_arrow(l, tip, dir);
	layout_thin(l, pt_sub(tip, pt_mul(dir, STEM_PT)), tip);
}

/* Arrows of link i between the ends at[i] and at[i + 1]. One that is too short for them
 * has the arrows of its neighbors, whose tips meet it from outside; between two that are
 * too short stands a stroke. */
static void link_arrows(struct layout *l, const pt *at, size_t n, size_t i)
{
	pt u = pt_unit(pt_sub(at[i + 1], at[i])), back = pt_mul(u, -1);
	pt slant = pt_mul((pt){ u.x - u.y, u.y + u.x }, SLANT_PT);
	double next = i + 1 < n ? pt_length(pt_sub(at[i + 2], at[i + 1])) : 0;

	if (pt_length(pt_sub(at[i + 1], at[i])) >= LEAST_ARROWS_PT) {
		layout_arrow(l, at[i], back);
		layout_arrow(l, at[i + 1], u);
		return;
	}
	if (i == 0)
		outer_arrow(l, at[i], u);
	if (i + 1 == n)
		outer_arrow(l, at[i + 1], back);
	else if (next < LEAST_ARROWS_PT)
		layout_thin(l, pt_sub(at[i + 1], slant), pt_add(at[i + 1], slant));
}

void layout_links(struct layout *l, enum section_dim_kind kind, double line)
{
	pt at[SECTION_DIMS + 1];
	size_t n = 0;

	for (size_t i = 0; i < l->s->ndims; i++) {
		const struct section_dim *d = &l->s->dim[i];
		pt a = layout_point(l, d->a), b = layout_point(l, d->b);

		if (d->kind != kind)
			continue;
		at[n] = kind == SECTION_CHAIN_X ? (pt){ a.x, line } : (pt){ line, a.y };
		at[++n] = kind == SECTION_CHAIN_X ? (pt){ b.x, line } : (pt){ line, b.y };
	}
	for (size_t i = 0; i < n; i++) {
		l->failed |= pt_length(pt_sub(at[i + 1], at[i])) < LEAST_LINK_PT;
		layout_thin(l, at[i], at[i + 1]);
		link_arrows(l, at, n, i);
	}
}

/* One link of the row below; its label stands right under it or a row lower. */
struct link { struct layout_label *label; double from, to, middle; bool low; };

static size_t draw_links(struct layout *l, struct link *v, double y)
{
	size_t n = 0;

	for (size_t i = 0; i < l->s->ndims; i++) {
		const struct section_dim *d = &l->s->dim[i];
		pt a = layout_point(l, d->a), b = layout_point(l, d->b);

		if (d->kind != SECTION_CHAIN_X)
			continue;
		if (d->first)
			layout_thin(l, (pt){ a.x, a.y + GAP_PT }, (pt){ a.x, y + PAST_PT });
		layout_thin(l, (pt){ b.x, b.y + GAP_PT }, (pt){ b.x, y + PAST_PT });
		v[n++] = (struct link){ layout_label(l, d->label, DIM_CENTER, l->lines), a.x, b.x,
			(a.x + b.x) / 2, false };
	}
	return n;
}

/* Whether one row of lower labels does, none far from its link: lower than two rows. */
static bool one_row_does(const struct link *v, size_t n)
{
	double want[SECTION_DIMS], size[SECTION_DIMS], middle[SECTION_DIMS];
	double off = 0;

	for (size_t i = 0; i < n; i++) {
		want[i] = v[i].middle;
		size[i] = v[i].label->r.w + BETWEEN_PT;
	}
	geom_spread(want, size, n, middle);
	for (size_t i = 0; i < n; i++)
		off = fmax(off, fabs(middle[i] - want[i]));
	return off < MOST_OFF_PT;
}

/* Labels that do not fit between their ends take turns below; the line down to a lower one
 * passes between its neighbors. */
static void choose_rows(struct link *v, size_t n)
{
	double free = -INFINITY;
	bool all = true, one;

	for (size_t i = 0; i < n; i++)
		all = all && v[i].label->r.w + BETWEEN_PT < v[i].to - v[i].from;
	one = !all && one_row_does(v, n);
	for (size_t i = 0; i < n; i++) {
		double half = v[i].label->r.w / 2, next = i + 1 < n ? v[i + 1].middle : INFINITY;

		v[i].low = one || v[i].middle - half < free ||
		    v[i].middle + half > next - GAP_PT;
		free = v[i].low ? v[i].middle + GAP_PT : v[i].middle + half + BETWEEN_PT;
	}
}

static void place_low(struct layout *l, const struct link *v, size_t n, double y, double top)
{
	double want[SECTION_DIMS], size[SECTION_DIMS], middle[SECTION_DIMS];
	size_t m = 0;

	for (size_t i = 0; i < n; i++) {
		if (!v[i].low)
			continue;
		want[m] = v[i].middle;
		size[m++] = v[i].label->r.w + BETWEEN_PT;
	}
	geom_spread(want, size, m, middle);
	for (size_t i = n; i-- > 0;) {
		rect *r = &v[i].label->r;
		pt knee = { v[i].middle, top - ROW_PT / 2 };

		if (!v[i].low)
			continue;
		m--;
		r->x = middle[m] - r->w / 2;
		r->y = top;
		l->bottom = fmax(l->bottom, top + r->h);
		layout_thin(l, (pt){ v[i].middle, y }, knee);
		layout_thin(l, knee, (pt){ middle[m], top - 1.5 });
	}
}

void layout_chain_row(struct layout *l)
{
	struct link v[SECTION_DIMS];
	double y = l->bottom + ROW_PT, top;
	size_t n = draw_links(l, v, y);

	if (n == 0)
		return;
	layout_links(l, SECTION_CHAIN_X, y);
	choose_rows(v, n);
	l->bottom = y + PAST_PT;
	for (size_t i = 0; i < n; i++) {
		rect *r = &v[i].label->r;

		if (v[i].low)
			continue;
		r->x = v[i].middle - r->w / 2;
		r->y = y + LABEL_PT;
		l->bottom = fmax(l->bottom, r->y + r->h);
	}
	top = l->bottom + ROW_PT * 0.75;
	place_low(l, v, n, y, top);
}
