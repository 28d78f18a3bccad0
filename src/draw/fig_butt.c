/* Sections of butt joints in plate and pipe. A bevel runs (t - land) * tan(bevel) back
 * from the root face (plane geometry; the same line stands in AWS A3.0 groove terms). */
#include "draw/fig_section.h"

#include "draw/geom.h"

#include <math.h>

/* A finished butt hides its preparation; these sizes only place the dashed fusion lines
 * (common practice, no source). */
#define TEST_INCLUDED_DEG 60
#define TEST_OPENING_PART 0.25

/* One side of the groove; [0] left, [1] right. */
struct groove {
	double t[2], bevel_deg[2], land[2], reach[2];
	double gap;
	bool broken[2];
};

static double bevel_run(const struct groove *g, int side)
{
	return (g->t[side] - g->land[side]) * geom_tan(g->bevel_deg[side]);
}

static struct groove groove_of(const struct fig_joint *j, struct section_frame f)
{
	struct groove g = { .t = { j->t1_mm, fig_t2_mm(j) } };
	double half = fig_included_deg(j) / 2;

	g.gap = fig_gap_middle_mm(j);
	if (j->shape == FIG_SINGLE_V || j->shape == FIG_PIPE_BUTT)
		g.bevel_deg[0] = g.bevel_deg[1] = half;
	if (j->shape == FIG_SINGLE_BEVEL)
		g.bevel_deg[0] = j->bevel_angle_deg;
	if (j->shape == FIG_BUTT_TEST) {
		g.bevel_deg[0] = g.bevel_deg[1] = half > 0 ? half : TEST_INCLUDED_DEG / 2;
		if (!(g.gap > 0))
			g.gap = j->t1_mm * TEST_OPENING_PART;
	}
	for (int i = 0; i < 2; i++) {
		double width =
		    i == 0 || !fig_given(j->width2_mm) ? j->width1_mm : j->width2_mm;

		if (g.bevel_deg[i] > 0)
			g.land[i] = fig_given(j->land_mm) ? j->land_mm : 0;
		g.reach[i] =
		    section_reach(width, bevel_run(&g, i), f.arm_mm, &g.broken[i]);
	}
	return g;
}

/* The plate on one side, drawn from its root corner up over the bevel and back. */
static void add_side(struct section *s, const struct groove *g, int i)
{
	struct section_member *m = section_plate(s, i == 0 ? 45 : 135);
	double way = i == 0 ? -1 : 1, root = way * g->gap / 2;
	double far = root + way * g->reach[i];

	section_corner(m, root, 0);
	if (g->land[i] > 0)
		section_corner(m, root, g->land[i]);
	section_corner(m, root + way * bevel_run(g, i), g->t[i]);
	section_corner(m, far, g->t[i]);
	if (g->broken[i])
		section_break(m);
	section_corner(m, far, 0);
}

/* A finished butt is one piece: plate right through, the fusion lines dashed. */
static void add_sound_plate(struct section *s, const struct groove *g)
{
	struct section_member *m = section_plate(s, 45);
	double left = -g->gap / 2 - g->reach[0], right = g->gap / 2 + g->reach[1];

	section_corner(m, left, 0);
	section_corner(m, right, 0);
	if (g->broken[1])
		section_break(m);
	section_corner(m, right, g->t[1]);
	section_corner(m, left, g->t[0]);
	if (g->broken[0])
		section_break(m);
	section_rule(s, (pt){ -g->gap / 2, 0 },
	    (pt){ -g->gap / 2 - bevel_run(g, 0), g->t[0] }, true);
	section_rule(s, (pt){ g->gap / 2, 0 },
	    (pt){ g->gap / 2 + bevel_run(g, 1), g->t[1] }, true);
}

/* How far a cap laps onto the plates, so that it is never a spike: at least four times
 * as wide as high (common practice, no source). */
static double cap_lap(double half_width, double rise)
{
	return fmax(0, 2 * rise - half_width);
}

/* A cap of that height from one corner of the groove to the other and a bit over. */
static void add_cap(struct section_bead *b, pt right, pt left, double rise, double up)
{
	double lap = cap_lap((right.x - left.x) / 2, rise);
	pt from = { right.x + lap, right.y }, to = { left.x - lap, left.y };

	bool alone = b->n == 0;

	if (alone)
		section_move(b, from);
	else if (lap > 0)
		section_line(b, from);
	section_face(b, from, to, -rise * up);
	if (lap > 0 && !alone)
		section_line(b, left);
}

/* The outline of the weld: root, sides, cap. */
static void add_weld(struct section *s, const struct fig_joint *j, const struct groove *g)
{
	struct section_bead *b = section_bead(s);
	double crown = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	pt low[2] = { { -g->gap / 2, 0 }, { g->gap / 2, 0 } };
	pt high[2] = { { low[0].x - bevel_run(g, 0), g->t[0] },
	    { low[1].x + bevel_run(g, 1), g->t[1] } };

	if (j->shape == FIG_BUTT_TEST) {
		add_cap(b, high[1], high[0], crown, 1);
		if (j->both_sides)
			add_cap(section_bead(s), low[1], low[0], crown, -1);
		return;
	}
	section_move(b, low[1]);
	if (g->land[1] > 0)
		section_line(b, (pt){ low[1].x, g->land[1] });
	section_line(b, high[1]);
	add_cap(b, high[1], high[0], crown, 1);
	if (g->land[0] > 0)
		section_line(b, (pt){ low[0].x, g->land[0] });
	section_line(b, low[0]);
	section_close(b);
	if (j->both_sides && crown > 0)
		add_cap(section_bead(s), low[1], low[0], crown, -1);
}

static void add_backing(struct section *s, const struct fig_joint *j)
{
	struct section_member *m;
	double half = j->backing_width_mm / 2, t = j->backing_t_mm;

	if (!fig_given(t))
		return;
	m = section_plate(s, 75);
	section_corner(m, -half, -t);
	section_corner(m, half, -t);
	section_corner(m, half, 0);
	section_corner(m, -half, 0);
	section_pointer(s, SECTION_RIGHT, (pt){ half - t / 3, -t / 2 }, (pt){ half, -t },
	    j->label_backing);
}

/* The side and the lower half of a pipe below its wall: the bore dashed in the part that
 * is seen from outside, the height between shortened. */
static void add_bore(struct section *s, const struct groove *g, double wall, double mm_pt)
{
	double left = -g->gap / 2 - g->reach[0], right = g->gap / 2 + g->reach[1];
	double axis = -50 * mm_pt, low = axis - 12 * mm_pt - wall;
	struct section_member *m = section_plate(s, NAN);

	section_axis(
	    s, (pt){ left - 8 * mm_pt, axis }, (pt){ right + 8 * mm_pt, axis }, mm_pt);
	section_corner(m, left, axis);
	section_break(m);
	section_corner(m, left, low);
	section_corner(m, right, low);
	section_break(m);
	section_corner(m, right, axis);
	m->open = true;
	section_rule(s, (pt){ left, low + wall }, (pt){ right, low + wall }, true);
}

static void angle_dim(
    struct section *s, const struct fig_joint *j, const struct groove *g)
{
	struct section_dim d = { .kind = SECTION_ANGLE, .side = SECTION_TOP,
	    .label = j->label_angle };
	pt left = { -g->gap / 2 - bevel_run(g, 0), g->t[0] };
	pt right = { g->gap / 2 + bevel_run(g, 1), g->t[1] };
	pt u = pt_polar(1, 90 + g->bevel_deg[0]), v = pt_polar(1, 90 - g->bevel_deg[1]);

	if (j->shape == FIG_SINGLE_BEVEL && d.label.n == 0)
		d.label = j->label_bevel;
	d.a = right;
	d.b = left;
	if (geom_meet(left, u, right, v, &d.apex))
		section_dim(s, d);
	if (j->shape == FIG_SINGLE_V || j->shape == FIG_PIPE_BUTT)
		section_pointer(s, SECTION_LEFT,
		    pt_between(left, (pt){ -g->gap / 2, g->land[0] }, 0.15),
		    (pt){ left.x, g->t[0] * 2 }, j->label_bevel);
}

static void butt_dims(
    struct section *s, const struct fig_joint *j, const struct groove *g, bool full)
{
	double left = -g->gap / 2 - g->reach[0], right = g->gap / 2 + g->reach[1];
	double crown = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	double half = g->gap / 2 + bevel_run(g, 1);
	int side = g->land[1] > 0 ? 1 : 0;
	double way = side == 1 ? 1 : -1;

	/* A land at the left takes the place of the thickness, which is the same at the
	 * right when the plates are alike. */
	if (side == 0 && g->land[0] > 0 && g->t[0] == g->t[1] && j->label_t2.n == 0)
		section_upright(s, SECTION_RIGHT, (pt){ right, 0 },
		    (pt){ right, g->t[1] }, SECTION_DOWN, j->label_t1);
	else
		section_upright(s, SECTION_LEFT, (pt){ left, 0 }, (pt){ left, g->t[0] },
		    SECTION_DOWN, j->label_t1);
	if (g->land[side] > 0)
		section_upright(s, side == 1 ? SECTION_RIGHT : SECTION_LEFT,
		    (pt){ way * g->gap / 2, 0 }, (pt){ way * g->gap / 2, g->land[side] },
		    SECTION_UP, j->label_land);
	section_upright(s, SECTION_RIGHT, (pt){ right, 0 }, (pt){ right, g->t[1] },
	    SECTION_UP, j->label_t2);
	if (j->shape != FIG_BUTT_TEST)
		section_dim(s,
		    (struct section_dim){ .kind = SECTION_LEVEL,
		        .side = SECTION_BOTTOM,
		        .a = { -g->gap / 2, 0 },
		        .b = { g->gap / 2, 0 },
		        .near = j->shape == FIG_PIPE_BUTT && !fig_given(j->backing_t_mm),
		        .label = j->label_gap });
	section_pointer(s, SECTION_RIGHT,
	    (pt){ (half + cap_lap(half, crown)) * 0.6, g->t[1] + crown * 0.66 },
	    (pt){ right, g->t[1] + crown }, j->label_reinforcement);
	section_pointer(s, SECTION_RIGHT, (pt){ half * 0.9, g->t[1] },
	    (pt){ right, (g->t[1] + crown) * 2 }, j->label_answer);
	section_pointer(s, SECTION_LEFT, (pt){ left * 0.8 - g->gap * 0.1, g->t[0] },
	    (pt){ left, g->t[0] * 1.6 }, full ? j->label_od : STR(""));
}

void section_butt(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	struct groove g = groove_of(j, f);
	double flare = geom_tan(g.bevel_deg[0]) + geom_tan(g.bevel_deg[1]);
	double land = fmin(g.land[0], g.land[1]);

	if (j->shape == FIG_BUTT_TEST) {
		add_sound_plate(s, &g);
	} else {
		add_side(s, &g, 0);
		add_side(s, &g, 1);
	}
	add_weld(s, j, &g);
	add_backing(s, j);
	section_number_groove(s, fmin(g.t[0], g.t[1]),
	    -g.gap / 2 + land * geom_tan(g.bevel_deg[0]), geom_tan(g.bevel_deg[0]),
	    g.gap - land * flare, flare, j->passes, SECTION_SPOT_PT * f.mm_pt);
	butt_dims(s, j, &g, f.full);
	if (j->shape != FIG_BUTT_TEST && j->shape != FIG_SQUARE_BUTT)
		angle_dim(s, j, &g);
	if (j->shape == FIG_PIPE_BUTT && f.full)
		add_bore(s, &g, j->t1_mm, f.mm_pt);
	if (j->shape == FIG_PIPE_BUTT && f.full)
		s->text = (struct section_text){ { -g.gap / 2 - g.reach[0] + 5 * f.mm_pt,
		    -18 * f.mm_pt }, word(j->language, "inside of pipe") };
}
