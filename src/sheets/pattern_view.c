/* Pattern blocks as students see them: the finished part, from the given sizes only. */
#include "sheets/pattern_sheet.h"

#include "draw/geom.h"
#include "sheets/sheet.h"

#include <math.h>

enum { RING = 48, PATHS = 40, CORNERS_MOST = 24 };

struct viewer {
	struct arena *arena;
	const struct edition *e;
	const struct pattern_block *b;
	struct pattern_part p;
	struct fig_path *path;
	struct fig_size *size;
	size_t npaths, nsizes;
};

static void add_path(struct viewer *w, enum fig_stroke stroke, const pt *v, size_t n,
    bool closed)
{
	pt *copy = arena_array(w->arena, n, sizeof *copy);

	if (w->npaths == PATHS)
		return;
	for (size_t i = 0; i < n; i++)
		copy[i] = v[i];
	w->path[w->npaths++] = (struct fig_path){ stroke, copy, n, closed };
}

static void add_stroke(struct viewer *w, enum fig_stroke stroke, pt a, pt b)
{
	const pt v[2] = { a, b };

	add_path(w, stroke, v, 2, false);
}

static void add_size(struct viewer *w, enum fig_size_kind kind, pt a, pt b, str label)
{
	if (w->nsizes < FIG_VIEW_SIZES)
		w->size[w->nsizes++] = (struct fig_size){ kind, a, b, label };
}

static void add_ring(struct viewer *w, pt middle, double r)
{
	pt v[RING];

	for (int i = 0; i < RING; i++)
		v[i] = pt_add(middle, pt_polar(r, 360.0 * i / RING));
	add_path(w, FIG_EDGE_LINE, v, RING, true);
}

/* what: looked up. */
static str label_of(struct viewer *w, const struct quantity *q, str what)
{
	return str_format(w->arena, "%.*s %.*s", STR_ARG(quantity_text(w->arena, w->e, q)),
	    STR_ARG(edition_word(w->e, what)));
}

static str side_of(const struct pattern_block *b)
{
	return b->sizes == SIDE_INSIDE ? WORD("inside") : WORD("outside");
}

/* ---- brake ---- */

struct profile {
	pt low[FLANGES_MOST * 8], high[FLANGES_MOST * 8]; /* both faces */
	size_t n;
	pt from[FLANGES_MOST], to[FLANGES_MOST]; /* flange i between its mold lines */
	pt bend[FLANGES_MOST];   /* on the face outside bend i */
};

static void profile_to(struct profile *f, pt low, pt high)
{
	f->low[f->n] = low;
	f->high[f->n++] = high;
}

/* Sizes lie on the outer face of each bend; a flange between bends of both ways is
 * measured along the face of its second one. */
static double back_mm(const struct viewer *w, uint32_t i)
{
	return brake_setback_mm(w->p.bend_deg[i], w->p.radius_mm,
	    w->p.given == LINE_INSIDE ? 0 : w->p.thickness_mm);
}

/* Round bend i from pt `at` on the lower face, along unit vector u. */
static pt walk_bend(struct viewer *w, struct profile *f, uint32_t i, pt at, pt *u)
{
	double t = w->p.thickness_mm, r = w->p.radius_mm, deg = w->p.bend_deg[i];
	bool down = w->b->down[i];
	pt n = { -u->y, u->x };
	pt center = pt_add(at, pt_mul(n, down ? -r : r + t));
	int steps = w->p.nflanges > 6 ? 1 : 5;
	double start = atan2(u->y, u->x) * 180 / GEOM_PI;

	for (int k = 1; k <= steps; k++) {
		double turned = start + (down ? -1 : 1) * deg * k / steps;
		pt out = pt_polar(1, turned + (down ? 90 : -90)); /* from the center */

		profile_to(f, pt_add(center, pt_mul(out, down ? r : r + t)),
		    pt_add(center, pt_mul(out, down ? r + t : r)));
		if (k == (steps + 1) / 2)
			f->bend[i] = down ? f->high[f->n - 1] : f->low[f->n - 1];
	}
	*u = pt_polar(1, start + (down ? -deg : deg));
	return f->low[f->n - 1];
}

static void walk_profile(struct viewer *w, struct profile *f)
{
	double t = w->p.thickness_mm;
	pt at = { 0, 0 }, u = { 1, 0 };

	profile_to(f, at, (pt){ 0, t });
	for (uint32_t i = 0; i < w->p.nflanges; i++) {
		bool last = i + 1 == w->p.nflanges;
		double before = i ? back_mm(w, i - 1) : 0, after = last ? 0 : back_mm(w,
		    i);
		bool high = last ? i && w->b->down[i - 1] : w->b->down[i];
		pt n = { -u.y, u.x }, face = high ? pt_mul(n, t) : (pt){ 0, 0 };

		f->from[i] = pt_add(pt_sub(at, pt_mul(u, before)), face);
		f->to[i] = pt_add(f->from[i], pt_mul(u, w->p.flange_mm[i]));
		at = pt_add(at, pt_mul(u, w->p.flange_mm[i] - before - after));
		profile_to(f, at, pt_add(at, pt_mul(n, t)));
		if (!last)
			at = walk_bend(w, f, i, at, &u);
	}
}

static pt profile_middle(const struct profile *f)
{
	rect r = rect_at(f->low[0]);

	for (size_t i = 0; i < f->n; i++)
		r = rect_grow(rect_grow(r, f->low[i]), f->high[i]);
	return (pt){ r.x + r.w / 2, r.y + r.h / 2 };
}

/* A level or upright flange has a dimension, any other a leader, on the side of the
 * part where the flange lies. */
static void size_flange(struct viewer *w, const struct profile *f, uint32_t i, pt middle)
{
	pt a = f->from[i], b = f->to[i], at = pt_between(a, b, 0.5);
	str label = quantity_text(w->arena, w->e, &w->b->flanges[i]);
	bool few = w->p.nflanges <= 5;

	if (few && fabs(a.y - b.y) < 1e-6)
		add_size(w, at.y > middle.y ? FIG_SIZE_ABOVE : FIG_SIZE_BELOW, a, b,
		    label);
	else if (few && fabs(a.x - b.x) < 1e-6)
		add_size(w, at.x > middle.x ? FIG_SIZE_RIGHT : FIG_SIZE_LEFT, a, b,
		    label);
	else
		add_size(w, at.x > middle.x ? FIG_SIZE_AT_RIGHT : FIG_SIZE_AT_LEFT, at,
		    at,
		    label);
}

static bool bends_alike(const struct pattern_block *b)
{
	for (uint32_t i = 1; i < b->nbends; i++)
		if (b->bends[i].lo != b->bends[0].lo || b->bends[i].hi != b->bends[0].hi)
			return false;
	return true;
}

static void view_brake(struct viewer *w)
{
	struct profile *f = arena_alloc(w->arena, sizeof *f);
	pt edge[FLANGES_MOST * 16];
	size_t n = 0;

	walk_profile(w, f);
	for (size_t i = 0; i < f->n; i++)
		edge[n++] = f->low[i];
	for (size_t i = f->n; i-- > 0;)
		edge[n++] = f->high[i];
	add_path(w, FIG_EDGE_LINE, edge, n, true);
	for (uint32_t i = 0; i < w->p.nflanges; i++)
		size_flange(w, f, i, profile_middle(f));
	for (uint32_t i = 0; i + 1 < w->p.nflanges && !bends_alike(w->b); i++)
		add_size(w, i % 2 ? FIG_SIZE_AT_LEFT : FIG_SIZE_AT_RIGHT, f->bend[i],
		    f->bend[i], word_format(w->arena,
		    edition_language(w->e), "bend %.*s",
		    STR_ARG(quantity_text(w->arena, w->e, &w->b->bends[i]))));
}

/* ---- round parts ---- */

/* Half the outside and the inside diameter; inside 0 when no thickness is known. */
static void radii(const struct viewer *w, double *outer, double *inner)
{
	double r = w->p.diameter_mm / 2, t = w->p.thickness_mm;

	*outer = w->p.given == LINE_INSIDE ? r + t : r;
	*inner = w->p.given == LINE_INSIDE ? r : r - t;
}

static void view_cylinder(struct viewer *w)
{
	double outer, inner, h = w->p.height_mm, r = w->p.diameter_mm / 2;

	radii(w, &outer, &inner);
	const pt v[4] = { { -outer, 0 }, { outer, 0 }, { outer, h }, { -outer, h } };
	add_path(w, FIG_EDGE_LINE, v, 4, true);
	if (w->p.given == LINE_INSIDE) {
		add_stroke(w, FIG_FOLD_LINE, (pt){ -inner, 0 }, (pt){ -inner, h });
		add_stroke(w, FIG_FOLD_LINE, (pt){ inner, 0 }, (pt){ inner, h });
	}
	add_stroke(w, FIG_AXIS_LINE, (pt){ 0, 0 }, (pt){ 0, h });
	add_size(w, FIG_SIZE_ABOVE, (pt){ -r, h }, (pt){ r, h },
	    label_of(w, &w->b->diameter, w->p.given == LINE_INSIDE ? WORD("inside diameter")
	    : WORD("outside diameter")));
	add_size(w, FIG_SIZE_RIGHT, v[1], v[2], quantity_text(w->arena, w->e, &w->b->height));
}

/* The elbow stands on its first open end and turns to the right. */
static void view_elbow(struct viewer *w)
{
	double r, inner, half, tip, heading = 90;
	pt left[32], right[32], edge[64], at = { 0, 0 };
	unsigned n = w->p.pieces;

	radii(w, &r, &inner);
	if (n < 2 || n > 30)
		return;
	half = w->p.angle_deg / (2 * (n - 1));
	tip = w->p.height_mm > 0 ? w->p.height_mm : w->p.radius_mm * geom_tan(half);
	left[0] = (pt){ -r, 0 };
	right[0] = (pt){ r, 0 };
	for (unsigned i = 1; i <= n; i++) {
		bool end = i == 1 || i == n;
		pt across;

		at = pt_add(at, pt_polar(end ? tip : 2 * w->p.radius_mm * geom_tan(half),
		    heading));
		across = i < n ? pt_polar(r / geom_cos(half), heading - half + 90)
		    : pt_polar(r, heading + 90);
		left[i] = pt_add(at, across);
		right[i] = pt_sub(at, across);
		if (i < n)
			add_stroke(w, FIG_EDGE_LINE, left[i], right[i]);
		if (i == 1)
			add_size(w, FIG_SIZE_LEFT, (pt){ 0, 0 }, at,
			    quantity_text(w->arena, w->e, &w->b->height));
		heading -= 2 * half * (i < n);
	}
	for (unsigned i = 0; i <= n; i++) {
		edge[i] = left[i];
		edge[2 * n + 1 - i] = right[i];
	}
	add_path(w, FIG_EDGE_LINE, edge, 2 * n + 2, true);
	add_stroke(w, FIG_AXIS_LINE, (pt){ 0, 0 }, pt_between(left[1], right[1], 0.5));
	add_size(w, FIG_SIZE_BELOW, left[0], right[0], label_of(w, &w->b->diameter,
	    w->b->pipe ? STR("") : w->p.given == LINE_INSIDE ? WORD("inside diameter")
	    : WORD("outside diameter")));
	add_size(w, FIG_SIZE_AT_LEFT, left[1], left[1], word_format(w->arena,
	    edition_language(w->e), "turns %.*s",
	    STR_ARG(quantity_text(w->arena, w->e, &w->b->angle))));
}

/* what: looked up. */
static str pipe_label(struct viewer *w, str what, const struct pipe_size *p,
    const struct quantity *q)
{
	what = edition_word(w->e, what);
	if (q->kind == QUANTITY_PIPE)
		return str_format(w->arena, "%.*s %.*s", STR_ARG(what), STR_ARG(p->text));
	return word_format(w->arena, edition_language(w->e), "%.*s %.*s outside diameter",
	    STR_ARG(what), STR_ARG(quantity_text(w->arena, w->e, q)));
}

/* From the side: the run lies level, the branch leans to the right. The curve in which
 * they meet is what the student finds, so it is not drawn. */
static void view_saddle(struct viewer *w)
{
	double r = w->p.diameter_mm / 2, run = w->p.run_mm / 2, deg = w->p.angle_deg;
	double near_s = (run - r * geom_cos(deg)) / geom_sin(deg);
	double far_s = (run + r * geom_cos(deg)) / geom_sin(deg);
	double end = w->p.height_mm > 0 ? w->p.height_mm : far_s + 2.4 * r;
	double half = fmax(2 * run, fabs(far_s * geom_cos(deg)) + 2 * r);
	pt u = pt_polar(1, deg), side = pt_polar(r, deg + 90), middle = pt_mul(u, end);
	const pt body[4] = { { -half, -run }, { half, -run }, { half, run },
		{ -half, run } };
	const pt branch[4] = { pt_add(pt_mul(u, near_s), side), pt_add(middle, side),
		pt_sub(middle, side), pt_sub(pt_mul(u, far_s), side) };

	add_path(w, FIG_EDGE_LINE, body, 4, true);
	add_path(w, FIG_EDGE_LINE, branch, 4, false);
	add_stroke(w, FIG_AXIS_LINE, (pt){ -half, 0 }, (pt){ half, 0 });
	add_stroke(w, FIG_AXIS_LINE, (pt){ 0, 0 }, middle);
	add_size(w, FIG_SIZE_AT_LEFT, pt_between(branch[0], branch[1], 0.6), middle,
	    pipe_label(w, WORD("branch"), &w->b->branch, &w->b->branch_size));
	add_size(w, FIG_SIZE_AT_LEFT, (pt){ -half, run / 2 }, middle,
	    pipe_label(w, WORD("run"), &w->b->run, &w->b->run_size));
	add_size(w, FIG_SIZE_AT_RIGHT, pt_between(branch[2], branch[3], 0.5), middle,
	    pattern_angle(w->arena, w->e, w->b));
}

/* ---- tapered parts ---- */

/* How far the corners of an odd box reach on the side that has no flat, against half
 * its size. */
static double odd_reach(const struct pattern_block *b)
{
	return b->shape == SHAPE_BOX && b->sides % 2 ? 1 / geom_cos(180.0 / b->sides) : 1;
}

/* Side view, the base level at the bottom and its middle at 0. */
static void view_taper(struct viewer *w, double base, double top, double shift)
{
	double a = base / 2, b = top / 2, h = w->p.height_mm, odd = odd_reach(w->b);
	const pt v[4] = { { -a, 0 }, { a, 0 }, { shift + b, h }, { shift - b, h } };
	const pt edge[4] = { { -a * odd, 0 }, v[1], v[2], { shift - b * odd, h } };
	bool level = w->b->sizes != SIDE_NONE;
	str where = level ? edition_word(w->e, side_of(w->b)) : STR("");
	str round = edition_word(w->e, odd > 1 ? WORD("twice from middle to flat")
	    : w->b->shape == SHAPE_BOX ? WORD("across flats") : WORD("diameter"));
	str under = w->b->shape == SHAPE_SQUARE ? STR("") : round;

	add_path(w, FIG_EDGE_LINE, edge, top > 0 ? 4 : 3, true);
	add_size(w, FIG_SIZE_BELOW, v[0], v[1], str_format(w->arena, "%.*s %.*s%s%.*s",
	    STR_ARG(quantity_text(w->arena, w->e, &w->b->base)), STR_ARG(under),
	    where.n ? " " : "", STR_ARG(where)));
	if (top > 0)
		add_size(w, FIG_SIZE_ABOVE, v[3], v[2], str_format(w->arena,
		    "%.*s %.*s%s%.*s", STR_ARG(quantity_text(w->arena, w->e, &w->b->top)),
		    STR_ARG(round), where.n ? " " : "", STR_ARG(where)));
	add_size(w, FIG_SIZE_LEFT, edge[0], (pt){ edge[0].x, h },
	    quantity_text(w->arena, w->e, &w->b->height));
}

static void view_cone(struct viewer *w)
{
	view_taper(w, w->p.base_mm, w->p.top_mm, 0);
	add_stroke(w, FIG_AXIS_LINE, (pt){ 0, 0 }, (pt){ 0, w->p.height_mm });
}

static void add_polygon(struct viewer *w, pt middle, double across)
{
	pt v[CORNERS_MOST];
	unsigned n = w->p.sides;

	for (unsigned i = 0; i < n; i++)
		v[i] = pt_add(middle, pt_polar(across / 2 / geom_cos(180.0 / n),
		    360.0 * (i + 0.5) / n));
	add_path(w, FIG_EDGE_LINE, v, n, true);
}

/* Side view across two flats, and the plan beside it. */
static void view_box(struct viewer *w)
{
	double base = w->p.base_mm, top = w->p.top_mm, h = w->p.height_mm;
	unsigned n = w->p.sides;
	pt plan = { fmax(base, top) * (0.8 + 0.5 * odd_reach(w->b)), h / 2 };

	if (n < 3 || n > CORNERS_MOST)
		return;
	view_taper(w, base, top, 0);
	for (unsigned i = 0; i < n; i++) {
		double deg = 360.0 * (i + 0.5) / n,
		    out = geom_cos(deg) / geom_cos(180.0 / n);

		if (deg > 180 && fabs(out) < 1)
			add_stroke(w, FIG_FOLD_LINE, (pt){ base / 2 * out, 0 },
			    (pt){ top / 2 * out, h });
	}
	add_polygon(w, plan, base);
	if (top > 0)
		add_polygon(w, plan, top);
	for (unsigned i = 0; i < n; i++) {
		pt out = pt_polar(0.5 / geom_cos(180.0 / n), 360.0 * (i + 0.5) / n);

		add_stroke(w, FIG_FOLD_LINE, pt_add(plan, pt_mul(out, base)),
		    pt_add(plan, pt_mul(out, top)));
	}
}

/* Side view, and the plan beside it: the base with the round in it. */
static void view_square(struct viewer *w)
{
	double a = w->p.base_mm, b = w->p.base2_mm > 0 ? w->p.base2_mm : a;
	double x = w->p.offset_x_mm, y = w->p.offset_y_mm;
	double wide = fmax(a, w->p.top_mm) / 2;
	pt plan = { fmax(a / 2, w->p.top_mm / 2 + fabs(x)) + wide * 1.5,
		w->p.height_mm / 2 };
	const pt v[4] = { { plan.x - a / 2, plan.y - b / 2 }, { plan.x + a / 2,
		plan.y - b / 2 }, { plan.x + a / 2, plan.y + b / 2 }, { plan.x - a / 2,
		plan.y + b / 2 } };
	pt middle = { plan.x + x, plan.y + y };

	view_taper(w, a, w->p.top_mm, x);
	add_path(w, FIG_EDGE_LINE, v, 4, true);
	add_ring(w, middle, w->p.top_mm / 2);
	add_stroke(w, FIG_AXIS_LINE, (pt){ v[0].x, middle.y }, (pt){ v[1].x, middle.y });
	add_stroke(w, FIG_AXIS_LINE, (pt){ middle.x, v[0].y }, (pt){ middle.x, v[2].y });
	add_size(w, FIG_SIZE_RIGHT, v[1], v[2], quantity_text(w->arena, w->e,
	    w->p.base2_mm > 0 ? &w->b->base2 : &w->b->base));
	if (x > 0)
		add_size(w, FIG_SIZE_BELOW, (pt){ plan.x, v[0].y }, (pt){ middle.x,
		    v[0].y },
		    label_of(w, &w->b->offset_x, WORD("off center")));
	if (y > 0)
		add_size(w, FIG_SIZE_RIGHT, (pt){ v[1].x, plan.y }, (pt){ v[1].x,
		    middle.y },
		    label_of(w, &w->b->offset_y, WORD("off center")));
}

static void (*const views[SHAPE_COUNT])(struct viewer *w) = {
	[SHAPE_BRAKE] = view_brake, [SHAPE_CYLINDER] = view_cylinder,
	[SHAPE_ELBOW] = view_elbow, [SHAPE_SADDLE] = view_saddle,
	[SHAPE_CONE] = view_cone, [SHAPE_BOX] = view_box, [SHAPE_SQUARE] = view_square,
};

struct fig_view pattern_view(struct arena *a, const struct edition *e,
    const struct pattern_block *b)
{
	struct viewer w = { .arena = a, .e = e, .b = b, .p = pattern_part_of(b) };

	w.path = arena_array(a, PATHS, sizeof *w.path);
	w.size = arena_array(a, FIG_VIEW_SIZES, sizeof *w.size);
	views[b->shape](&w);
	return (struct fig_view){ .path = w.path, .npaths = w.npaths, .size = w.size,
		.nsizes = w.nsizes, .language = edition_language(e) };
}
