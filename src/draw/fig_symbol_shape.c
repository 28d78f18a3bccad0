/* The figures of the welding symbol, built for the side below the line and turned over
 * for the side above: depth counts away from the line, vertical legs stay at the left. */
#include "draw/fig_symbol_plan.h"

#include "draw/dim.h"
#include "draw/geom.h"

#include <assert.h>
#include <math.h>

#define PAD_PT 2.4
#define CONTOUR_HALF_U 0.9
#define CONTOUR_RISE_U 0.35

/* ---- strokes ---- */

struct symbol_stroke *symbol_stroke_new(struct symbol_plan *p, struct ink ink)
{
	assert(p->nstrokes < SYMBOL_STROKES);
	struct symbol_stroke *k = &p->stroke[p->nstrokes++];

	k->n = 0;
	k->ink = ink;
	return k;
}

static void add_seg(struct symbol_plan *p, struct symbol_stroke *k, struct seg s)
{
	assert(k->n < SYMBOL_SEGS);
	for (int i = 0; i < (s.op == SEG_CURVE ? 3 : 1); i++)
		p->ink = rect_grow(p->ink, s.p[i]);
	k->s[k->n++] = s;
}

void symbol_move(struct symbol_plan *p, struct symbol_stroke *k, pt at)
{
	add_seg(p, k, (struct seg){ SEG_MOVE, { at } });
}

void symbol_line(struct symbol_plan *p, struct symbol_stroke *k, pt to)
{
	add_seg(p, k, (struct seg){ SEG_LINE, { to } });
}

void symbol_close(struct symbol_stroke *k)
{
	assert(k->n < SYMBOL_SEGS);
	k->s[k->n++] = (struct seg){ .op = SEG_CLOSE };
}

void symbol_arc(struct symbol_plan *p, struct symbol_stroke *k, pt center, double r,
    double from_deg, double to_deg)
{
	int steps = fabs(to_deg - from_deg) > 90 ? 2 : 1;
	double step = (to_deg - from_deg) / steps;
	double reach = 4.0 / 3 * geom_tan(step / 4) * r;

	for (int i = 0; i < steps; i++) {
		double a = from_deg + i * step, b = a + step;
		pt from = pt_add(center, pt_polar(r, a)), to = pt_add(center, pt_polar(r, b));

		if (k->n == 0)
			symbol_move(p, k, from);
		add_seg(p, k, (struct seg){ SEG_CURVE,
		    { pt_add(from, pt_polar(reach, a + 90)),
		        pt_add(to, pt_polar(-reach, b + 90)), to } });
	}
}

/* ---- sizes ---- */

static struct symbol_figure size_fillet(double u, double w)
{
	(void)w;
	return (struct symbol_figure){ 0, 2 * u, 2 * u, 0, 0, 0 };
}

static struct symbol_figure size_square(double u, double w)
{
	double half = fmax(0.35 * u, w > 0 ? w / 2 + PAD_PT : 0);

	return (struct symbol_figure){ half, half, 2 * u, 0, 0.7 * u, half };
}

/* A text fits where the flanks have run apart by its width; the flanks follow it. */
static struct symbol_figure size_v(double u, double w)
{
	double near = w / 2 + PAD_PT, h = w > 0 ? fmax(2 * u, near + u) : 2 * u;

	return (struct symbol_figure){ h, h, h, 0, near, h };
}

static struct symbol_figure size_bevel(double u, double w)
{
	double near = w + 2 * PAD_PT, h = w > 0 ? fmax(2 * u, near + u) : 2 * u;

	return (struct symbol_figure){ 0, h, h, w / 2 + PAD_PT, near, h };
}

static struct symbol_figure size_u(double u, double w)
{
	double r = w > 0 ? fmax(u, hypot(w / 2 + PAD_PT, u + PAD_PT)) : u;

	return (struct symbol_figure){ r, r, u + r, 0, r, r };
}

static struct symbol_figure size_j(double u, double w)
{
	double r = w > 0 ? fmax(u, hypot(w + 2 * PAD_PT, u + PAD_PT)) : u;

	return (struct symbol_figure){ 0, r, u + r, w / 2 + PAD_PT, r, r };
}

#define FLARE_GAP_U 0.3

/* Depth at which a quarter circle of radius r, upright at the line, has run out by x;
 * just beyond its mouth when it never does. */
static double flare_depth(double r, double x)
{
	double rest = r - fmax(x, 0);

	return rest > 0 ? sqrt(r * r - rest * rest) : r + PAD_PT;
}

static struct symbol_figure size_flare_v(double u, double w)
{
	double r = 2 * u, a = FLARE_GAP_U * u;
	double near = w > 0 ? flare_depth(r, w / 2 + PAD_PT - a) : 0;

	return (struct symbol_figure){ a + r, a + r, r, 0, near, r };
}

static struct symbol_figure size_flare_bevel(double u, double w)
{
	double r = 2 * u, a = FLARE_GAP_U * u;
	double near = w > 0 ? flare_depth(r, w + 2 * PAD_PT - 2 * a) : 0;

	return (struct symbol_figure){ 0, 2 * a + r, r, w / 2 + PAD_PT, near, r };
}

static struct symbol_figure size_surfacing(double u, double w)
{
	(void)w;
	return (struct symbol_figure){ 1.6 * u, 1.6 * u, 0.8 * u, 0, 0, 0.8 * u };
}

static struct symbol_figure size_round(double u, double w)
{
	(void)w;
	return (struct symbol_figure){ 1.2 * u, 1.2 * u, 1.2 * u, 0, 0, 1.2 * u };
}

static struct symbol_figure size_strip(double u, double w)
{
	(void)w;
	return (struct symbol_figure){ 1.4 * u, 1.4 * u, 1.1 * u, 0, 0, 0 };
}

/* A rectangle wide enough for the depth of filling in it. */
static struct symbol_figure size_plug(double u, double w)
{
	double half = fmax(1.4 * u, w > 0 ? w / 2 + PAD_PT : 0), high = w > 0 ? 1.9 * u : 1.1 * u;

	return (struct symbol_figure){ half, half, high, 0, 0.45 * u, 0 };
}

static struct symbol_figure size_spot(double u, double w)
{
	(void)w;
	return (struct symbol_figure){ 0.8 * u, 0.8 * u, 1.6 * u, 0, 0, 0.8 * u };
}

/* ---- figures ---- */

static pt at_depth(struct symbol_place at, double x, double depth)
{
	return (pt){ at.x + x, at.y + at.way * depth };
}

static struct symbol_stroke *outline(struct symbol_plan *p)
{
	return symbol_stroke_new(p, (struct ink){ .stroke_pt = DIM_OUTLINE_PT });
}

static void add_line(struct symbol_plan *p, struct symbol_place at, double x1, double d1,
    double x2, double d2)
{
	struct symbol_stroke *k = outline(p);

	symbol_move(p, k, at_depth(at, x1, d1));
	symbol_line(p, k, at_depth(at, x2, d2));
}

static void add_arc(struct symbol_plan *p, struct symbol_place at, double x, double depth,
    double r, double from_deg, double to_deg)
{
	symbol_arc(p, outline(p), at_depth(at, x, depth), r, at.way * from_deg,
	    at.way * to_deg);
}

static void draw_fillet(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	struct symbol_stroke *k = outline(p);

	symbol_move(p, k, at_depth(at, 0, 0));
	symbol_line(p, k, at_depth(at, 0, g->depth));
	symbol_line(p, k, at_depth(at, g->right, 0));
}

static void draw_square(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_line(p, at, -g->left, 0, -g->left, g->depth);
	add_line(p, at, g->right, 0, g->right, g->depth);
}

static void draw_v(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	struct symbol_stroke *k = outline(p);

	symbol_move(p, k, at_depth(at, -g->depth, g->depth));
	symbol_line(p, k, at_depth(at, 0, 0));
	symbol_line(p, k, at_depth(at, g->depth, g->depth));
}

static void draw_bevel(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_line(p, at, 0, 0, 0, g->depth);
	add_line(p, at, 0, 0, g->depth, g->depth);
}

static void draw_u(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_line(p, at, 0, 0, 0, g->depth - g->reach);
	add_arc(p, at, 0, g->depth, g->reach, -180, 0);
}

static void draw_j(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_line(p, at, 0, 0, 0, g->depth);
	add_arc(p, at, 0, g->depth, g->reach, -90, 0);
}

static void draw_flare_v(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_arc(p, at, -g->left, 0, g->reach, 0, 90);
	add_arc(p, at, g->right, 0, g->reach, 180, 90);
}

static void draw_flare_bevel(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_line(p, at, 0, 0, 0, g->depth);
	add_arc(p, at, g->right, 0, g->reach, 180, 90);
}

static void draw_surfacing(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_arc(p, at, -g->reach, 0, g->reach, 180, 0);
	add_arc(p, at, g->reach, 0, g->reach, 180, 0);
}

static void draw_back(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	add_arc(p, at, 0, 0, g->reach, 180, 0);
}

static void draw_melt(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	struct symbol_stroke *k = symbol_stroke_new(p, (struct ink){ .fill = true });

	symbol_arc(p, k, at_depth(at, 0, 0), g->reach, at.way * 180, 0);
	symbol_close(k);
}

static void draw_strip(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	struct symbol_stroke *k = outline(p);

	symbol_move(p, k, at_depth(at, -g->left, 0));
	symbol_line(p, k, at_depth(at, -g->left, g->depth));
	symbol_line(p, k, at_depth(at, g->right, g->depth));
	symbol_line(p, k, at_depth(at, g->right, 0));
}

/* Tangent to the line: a spot on that side (AWS A2.4, from memory). */
static void draw_spot(struct symbol_plan *p, const struct symbol_figure *g,
    struct symbol_place at)
{
	struct symbol_stroke *k = outline(p);

	symbol_arc(p, k, at_depth(at, 0, g->reach), g->reach, 0, 180);
	symbol_arc(p, k, at_depth(at, 0, g->reach), g->reach, 180, 360);
	symbol_close(k);
}

static const struct {
	struct symbol_figure (*size)(double u, double root_w);
	void (*draw)(struct symbol_plan *p, const struct symbol_figure *g,
	    struct symbol_place at);
} figures[FIG_WELD_COUNT] = {
	[FIG_WELD_FILLET] = { size_fillet, draw_fillet },
	[FIG_WELD_SQUARE] = { size_square, draw_square },
	[FIG_WELD_V] = { size_v, draw_v },
	[FIG_WELD_BEVEL] = { size_bevel, draw_bevel },
	[FIG_WELD_U] = { size_u, draw_u },
	[FIG_WELD_J] = { size_j, draw_j },
	[FIG_WELD_FLARE_V] = { size_flare_v, draw_flare_v },
	[FIG_WELD_FLARE_BEVEL] = { size_flare_bevel, draw_flare_bevel },
	[FIG_WELD_SURFACING] = { size_surfacing, draw_surfacing },
	[FIG_WELD_BACK] = { size_round, draw_back },
	[FIG_WELD_MELT_THROUGH] = { size_round, draw_melt },
	[FIG_WELD_STRIP] = { size_strip, draw_strip },
	[FIG_WELD_PLUG] = { size_plug, draw_strip },
	[FIG_WELD_SPOT] = { size_spot, draw_spot },
};

struct symbol_figure symbol_figure_of(enum fig_weld w, double u, double root_w)
{
	return w == FIG_WELD_NONE ? (struct symbol_figure){ 0 } : figures[w].size(u, root_w);
}

void symbol_figure_add(struct symbol_plan *p, enum fig_weld w,
    const struct symbol_figure *g, struct symbol_place at)
{
	if (w != FIG_WELD_NONE)
		figures[w].draw(p, g, at);
}

/* A bar, or an arc over it as chord, bulging away from the line or towards it. */
void symbol_contour_add(struct symbol_plan *p, enum fig_contour kind, double x,
    double depth, bool slope, struct symbol_place at)
{
	double half = CONTOUR_HALF_U * p->u, rise = CONTOUR_RISE_U * p->u, turn;
	double r = (half * half + rise * rise) / (2 * rise);
	double wide = atan2(half, r - rise) * 180 / GEOM_PI;
	/* Away from the line, or square to the slope, which falls by 45 degrees. */
	double away = slope ? 45 : 90;
	pt middle = { x, depth }, u = pt_polar(1, away), along = { -u.y, u.x };

	if (kind == FIG_FLUSH) {
		pt a = pt_add(middle, pt_mul(along, half)), b = pt_sub(middle, pt_mul(along, half));

		add_line(p, at, a.x, a.y, b.x, b.y);
		return;
	}
	turn = kind == FIG_CONVEX ? 1 : -1;
	middle = pt_sub(middle, pt_mul(u, turn * (r - rise / 2)));
	away = kind == FIG_CONVEX ? away : away + 180;
	add_arc(p, at, middle.x, middle.y, r, away - wide, away + wide);
}

/* ---- members at the arrowhead ---- */

/* Rectangles in u from the tip, x right, y down: x, y, w, h. */
#define JOINT_BOXES 2
static const rect boxes[FIG_SHAPE_COUNT][JOINT_BOXES] = {
	[FIG_TEE] = { { -4.6, 0, 7.6, 1.4 }, { -1.4, -3.4, 1.4, 3.4 } },
	[FIG_LAP] = { { -5, -1.4, 5, 1.4 }, { -2.6, 0, 5.6, 1.4 } },
	[FIG_CORNER_CLOSED] = { { -1.4, 0, 4.6, 1.4 }, { -1.4, -3.4, 1.4, 3.4 } },
	[FIG_SQUARE_BUTT] = { { -3.7, 0, 3.5, 1.4 }, { 0.2, 0, 3.5, 1.4 } },
	[FIG_SINGLE_V] = { { -3.7, 0, 3.5, 1.4 }, { 0.2, 0, 3.5, 1.4 } },
	[FIG_SINGLE_BEVEL] = { { -3.7, 0, 3.5, 1.4 }, { 0.2, 0, 3.5, 1.4 } },
	[FIG_PIPE_BUTT] = { { -3.7, 0, 3.5, 1.4 }, { 0.2, 0, 3.5, 1.4 } },
	[FIG_PAD] = { { -3.7, 0, 7.4, 1.4 } },
	[FIG_CORNER_OPEN] = { { -4.6, -1.4, 4.6, 1.4 }, { 0, 0, 1.4, 3.2 } },
	[FIG_FLARE_BEVEL] = { { -6, 0, 8, 1.4 } },
	[FIG_BRANCH] = { { -4.6, 0, 7.6, 1.4 }, { -2.2, -3.4, 2.2, 3.4 } },
	[FIG_PLUG] = { { -5, -1.4, 7, 1.4 }, { -3, 0, 7, 1.4 } },
	[FIG_SPOT] = { { -5, -1.4, 7, 1.4 }, { -3, 0, 7, 1.4 } },
	[FIG_BUTT_GROOVE] = { { -3.7, 0, 3.5, 1.4 }, { 0.2, 0, 3.5, 1.4 } },
	[FIG_CORNER_GROOVE] = { { -4.2, 0, 4, 1.4 }, { 0.2, 0, 1.4, 4.2 } },
	[FIG_TEE_GROOVE] = { { -4.6, 0, 7.6, 1.4 }, { -1.4, -3.4, 1.4, 3.4 } },
	[FIG_EDGE_GROOVE] = { { -1.4, 0, 1.4, 4.2 }, { 0, 0, 1.4, 4.2 } },
};

bool fig_symbol_outlines(enum fig_shape joint)
{
	return boxes[joint][0].w > 0;
}

/* The round of a flare-bevel lies on the plate, the arrow beside where they touch. */
#define ROUND_U 2.4

static void add_round(struct symbol_plan *p, pt tip)
{
	struct symbol_stroke *k = symbol_stroke_new(p, (struct ink){ .stroke_pt = 1 });
	pt center = pt_add(tip, pt_mul((pt){ -ROUND_U * 1.1, -ROUND_U }, p->u));

	symbol_arc(p, k, center, ROUND_U * p->u, 0, 180);
	symbol_arc(p, k, center, ROUND_U * p->u, 180, 360);
	symbol_close(k);
}

void symbol_joint_add(struct symbol_plan *p, enum fig_shape joint, pt tip)
{
	if (joint == FIG_FLARE_BEVEL)
		add_round(p, tip);
	for (size_t i = 0; i < JOINT_BOXES && boxes[joint][i].w > 0; i++) {
		const rect *b = &boxes[joint][i];
		pt at = pt_add(tip, pt_mul((pt){ b->x, b->y }, p->u));
		double w = b->w * p->u, h = b->h * p->u;
		struct symbol_stroke *k = symbol_stroke_new(p, (struct ink){ .stroke_pt = 1 });

		symbol_move(p, k, at);
		symbol_line(p, k, (pt){ at.x + w, at.y });
		symbol_line(p, k, (pt){ at.x + w, at.y + h });
		symbol_line(p, k, (pt){ at.x, at.y + h });
		symbol_close(k);
	}
}
