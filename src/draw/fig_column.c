/* Labels at the left and right of a section: each as near as can be to the height it
 * wants, none over another. */
#include "draw/fig_layout.h"

#include "draw/geom.h"

#include <math.h>

#define LANE_FIRST_PT 12.0
#define LANE_PT 15.0
#define SPAN_EXTRA_PT 16.0
#define COLUMN_GAP_PT 5.0
#define POINTER_COLUMN_PT 12.0
#define BETWEEN_PT 4.0
#define BESIDE_PT 5.0
#define LANES 4

/* One label of a column. */
struct stand {
	const struct section_dim *d;
	struct layout_label *label;
	pt attach;               /* where its leader starts; POINTER: the target */
	double want, y;          /* middle of the label */
	bool leader;             /* drawn even when the label stands where it wants */
};

struct column {
	struct stand v[SECTION_DIMS];
	size_t n;
	double way, edge;        /* -1 left, 1 right; where the body ends */
	size_t lanes;
	bool outer;              /* beyond a column of links */
};

static bool upright(const struct stand *t)
{
	return t->d->kind == SECTION_UPRIGHT || t->d->kind == SECTION_CHAIN_Y;
}

/* The heights that an upright dimension takes up, stems included. */
static void span_of(const struct layout *l, const struct section_dim *d, double *lo,
    double *hi)
{
	double a = layout_point(l, d->a).y, b = layout_point(l, d->b).y;
	double extra = fabs(a - b) < INSIDE_PT ? SPAN_EXTRA_PT : -1;

	*lo = fmin(a, b) - extra;
	*hi = fmax(a, b) + extra;
}

/* The first lane in which d meets no dimension placed before. */
static size_t find_lane(
    const struct layout *l, const struct column *k, const size_t *lane, size_t which)
{
	double lo, hi, lo2, hi2;

	span_of(l, k->v[which].d, &lo, &hi);
	for (size_t try = 0; try < LANES; try++) {
		bool taken = false;

		for (size_t i = 0; i < which; i++) {
			if (!upright(&k->v[i]) || lane[i] != try)
				continue;
			span_of(l, k->v[i].d, &lo2, &hi2);
			taken = taken || (lo < hi2 && lo2 < hi);
		}
		if (!taken)
			return try;
	}
	return LANES;
}

/* The line out to a dimension begins beyond any label that it would run through. */
static void add_extension(struct layout *l, const struct column *k, pt from, double x)
{
	pt to = { x + k->way * 3, from.y };

	from.x += k->way * 2;
	for (size_t i = 0; i < l->nlabels; i++) {
		rect r = rect_inset(l->label[i].r, -1);
		double far = k->way < 0 ? r.x : r.x + r.w;

		if (k->outer && rect_crossed(r, from, to) && (to.x - far) * k->way > 0)
			from.x = far;
	}
	layout_thin(l, from, to);
}

/* Draws an upright dimension in its lane; its label wants its middle, or the end of a
 * stem when further lanes lie between. */
static void place_upright(
    struct layout *l, struct column *k, struct stand *t, size_t lane)
{
	double x = k->edge + k->way * (LANE_FIRST_PT + LANE_PT * (double)lane);
	pt a = layout_point(l, t->d->a), b = layout_point(l, t->d->b);
	pt low = { x, fmax(a.y, b.y) }, high = { x, fmin(a.y, b.y) };
	bool last = lane + 1 == k->lanes, inside, chain = t->d->kind == SECTION_CHAIN_Y;

	if (!chain || t->d->first)
		add_extension(l, k, a, x);
	add_extension(l, k, b, x);
	inside = chain || layout_arrows(l, high, low);
	if (chain && t->d->first)
		layout_links(l, SECTION_CHAIN_Y, x);
	t->attach = (pt){ x, (low.y + high.y) / 2 };
	t->want = t->attach.y;
	if (!inside && t->d->exit == SECTION_UP)
		t->attach.y = high.y - STEM_PT;
	if (!inside && t->d->exit == SECTION_DOWN)
		t->attach.y = low.y + STEM_PT;
	if (!last || !inside)
		t->want = t->attach.y;
	t->leader = !last;
}

static void sort_stands(struct column *k)
{
	for (size_t i = 1; i < k->n; i++) {
		struct stand t = k->v[i];
		size_t at = i;

		for (; at > 0 && k->v[at - 1].want > t.want; at--)
			k->v[at] = k->v[at - 1];
		k->v[at] = t;
	}
}

static void spread_stands(struct column *k)
{
	double want[SECTION_DIMS], size[SECTION_DIMS], middle[SECTION_DIMS];

	for (size_t i = 0; i < k->n; i++) {
		want[i] = k->v[i].want;
		size[i] = k->v[i].label->r.h + BETWEEN_PT;
	}
	geom_spread(want, size, k->n, middle);
	for (size_t i = 0; i < k->n; i++)
		k->v[i].y = middle[i];
}

static void draw_leader(struct layout *l, const struct column *k, const struct stand *t,
    double x)
{
	pt end = { x - k->way * 1.5, t->y };

	if (t->d->kind == SECTION_ORDINATE_Y) {
		layout_thin(l, t->attach, end);
	} else if (!upright(t)) {
		layout_thin(l, end, t->attach);
		layout_arrow(l, t->attach, pt_unit(pt_sub(t->attach, end)));
	} else if (t->leader || fabs(t->y - t->want) > BESIDE_PT) {
		layout_thin(l, t->attach, end);
	}
}

/* Links of a chain have a column of their own, nearer to the part. */
static bool in_column(const struct section_dim *d, bool chain)
{
	if (chain)
		return d->kind == SECTION_CHAIN_Y;
	return d->kind == SECTION_UPRIGHT || d->kind == SECTION_POINTER ||
	    d->kind == SECTION_ORDINATE_Y;
}

/* The line from a feature to just outside the part. */
static void place_ordinate(struct layout *l, struct column *k, struct stand *t)
{
	pt a = layout_point(l, t->d->a);

	t->attach = (pt){ k->edge + k->way * 4, a.y };
	t->want = a.y;
	layout_thin(l, (pt){ a.x + k->way * 2, a.y }, t->attach);
}

static void fill_column(struct layout *l, struct column *k, enum section_side side,
    bool chain)
{
	size_t lane[SECTION_DIMS];
	enum dim_align align = side == SECTION_LEFT ? DIM_RIGHT : DIM_LEFT;

	for (size_t i = 0; i < l->s->ndims; i++) {
		const struct section_dim *d = &l->s->dim[i];

		if (d->side != side || !in_column(d, chain))
			continue;
		k->v[k->n] =
		    (struct stand){ .d = d, .label = layout_label(l, d->label, align,
		        l->column_lines) };
		if (upright(&k->v[k->n])) {
			lane[k->n] = chain ? 0 : find_lane(l, k, lane, k->n);
			k->lanes = lane[k->n] + 1 > k->lanes ? lane[k->n] + 1 : k->lanes;
		}
		k->n++;
	}
	for (size_t i = 0; i < k->n; i++) {
		struct stand *t = &k->v[i];

		if (upright(t)) {
			place_upright(l, k, t, lane[i]);
		} else if (t->d->kind == SECTION_ORDINATE_Y) {
			place_ordinate(l, k, t);
		} else {
			t->attach = layout_point(l, t->d->a);
			t->want = layout_point(l, t->d->b).y;
		}
	}
}

/* Begins at `edge`; returns where it ends. */
static double place_column(struct layout *l, enum section_side side, double edge, bool chain)
{
	struct column k;
	double x, end = edge;

	/* Its stands are written as they come: there is room for many more than come. */
	k.n = k.lanes = 0;
	k.way = side == SECTION_LEFT ? -1 : 1;
	k.edge = edge;
	k.outer = side == SECTION_LEFT && edge < l->body.x;
	fill_column(l, &k, side, chain);
	x = k.edge + k.way * POINTER_COLUMN_PT;
	if (k.lanes > 0)
		x = k.edge + k.way * (LANE_FIRST_PT + LANE_PT * (double)(k.lanes - 1) +
		    COLUMN_GAP_PT + (k.lanes > 1 ? 4 : 0));
	sort_stands(&k);
	spread_stands(&k);
	for (size_t i = 0; i < k.n; i++) {
		rect *r = &k.v[i].label->r;

		r->x = side == SECTION_LEFT ? x - r->w : x;
		r->y = k.v[i].y - r->h / 2;
		draw_leader(l, &k, &k.v[i], x);
		end = side == SECTION_LEFT ? fmin(end, r->x) : fmax(end, r->x + r->w);
	}
	return end;
}

void layout_columns(struct layout *l)
{
	double left = place_column(l, SECTION_LEFT, l->body.x, true);

	place_column(l, SECTION_LEFT, left, false);
	place_column(l, SECTION_RIGHT, l->body.x + l->body.w, false);
}
