/* Sections of butt joints in plate and pipe. A bevel runs (t - land) * tan(bevel) back
 * from the root face (plane geometry; the same line stands in AWS A3.0 groove terms). */
#include "draw/fig_groove.h"

#include "draw/geom.h"

#include <math.h>

/* A finished butt hides its preparation; these sizes only place the dashed fusion lines
 * (common practice, no source). */
#define TEST_INCLUDED_DEG 60
#define TEST_OPENING_PART 0.25

static struct groove groove_of(const struct fig_joint *j, struct section_frame f)
{
	struct groove g = { .gap = fig_gap_middle_mm(j) };

	prep_edges(j, g.edge);
	if (j->shape == FIG_BUTT_TEST) {
		double half = fig_included_deg(j) / 2;

		if (!(g.gap > 0))
			g.gap = j->t1_mm * TEST_OPENING_PART;
		for (int i = 0; i < 2; i++)
			g.edge[i].front.run_mm = g.edge[i].thick_mm *
			    geom_tan(half > 0 ? half : TEST_INCLUDED_DEG / 2);
	}
	for (int i = 0; i < 2; i++) {
		double width =
		    i == 0 || !fig_given(j->width2_mm) ? j->width1_mm : j->width2_mm;

		g.reach[i] = section_reach(width,
		    fmax(g.edge[i].front.run_mm, g.edge[i].back.run_mm), f.arm_mm,
		    &g.broken[i]);
	}
	return g;
}

/* The plate on one side, drawn from its root corner up over the edge and back. */
static void add_side(struct section *s, const struct groove *g, int i)
{
	struct section_member *m = section_plate(s, i == 0 ? 45 : 135);
	double way = i == 0 ? -1 : 1, far = way * (g->gap / 2 + g->reach[i]);

	groove_edge(m, &g->edge[i], (pt){ way * g->gap / 2, 0 }, way);
	section_corner(m, far, g->edge[i].thick_mm);
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
	section_corner(m, right, g->edge[1].thick_mm);
	section_corner(m, left, g->edge[0].thick_mm);
	if (g->broken[0])
		section_break(m);
	section_rule(s, (pt){ -g->gap / 2, 0 }, groove_toe(g, 0), true);
	section_rule(s, (pt){ g->gap / 2, 0 }, groove_toe(g, 1), true);
}

/* The outline of the weld: root, sides, cap. */
static void add_weld(struct section *s, const struct fig_joint *j, const struct groove *g)
{
	double crown = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	pt low[2] = { { -g->gap / 2, 0 }, { g->gap / 2, 0 } };

	if (j->shape == FIG_BUTT_TEST) {
		groove_cap(section_bead(s), groove_toe(g, 1), groove_toe(g, 0), crown, 1);
		if (j->both_sides)
			groove_cap(section_bead(s), low[1], low[0], crown, -1);
		return;
	}
	groove_weld(s, g, false, crown);
	if (g->edge[0].back.depth_mm > 0)
		groove_weld(s, g, true, crown);
	else if (j->both_sides && crown > 0)
		groove_back_weld(s, low[1], low[0], crown);
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
static void add_bore(struct section *s, const struct fig_joint *j, const struct groove *g,
    double mm_pt)
{
	double left = -g->gap / 2 - g->reach[0], right = g->gap / 2 + g->reach[1];
	double ring = fig_given(j->backing_t_mm) ? j->backing_t_mm : 0;
	double axis = -50 * mm_pt - ring, low = axis - 12 * mm_pt - j->t1_mm;
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
	section_rule(s, (pt){ left, low + j->t1_mm }, (pt){ right, low + j->t1_mm }, true);
	s->text = (struct section_text){ { left + 5 * mm_pt, -18 * mm_pt - ring },
		word(j->language, "inside of pipe") };
}

static void butt_dims(
    struct section *s, const struct fig_joint *j, const struct groove *g, bool full)
{
	double left = -g->gap / 2 - g->reach[0], right = g->gap / 2 + g->reach[1];
	double crown = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	pt toe = groove_toe(g, 1);
	int side = g->edge[1].land_mm > 0 ? 1 : 0;

	/* Heights at the left take the place of the thickness, which is the same at the
	 * right when the plates are alike. */
	if (side == 0 && groove_has_heights(g, 0, j) && j->label_t2.n == 0)
		section_upright(s, SECTION_RIGHT, (pt){ right, 0 },
		    (pt){ right, g->edge[1].thick_mm }, SECTION_DOWN, j->label_t1);
	else
		section_upright(s, SECTION_LEFT, (pt){ left, 0 },
		    (pt){ left, g->edge[0].thick_mm }, SECTION_DOWN, j->label_t1);
	groove_height_dims(s, j, g, side);
	section_upright(s, SECTION_RIGHT, (pt){ right, 0 },
	    (pt){ right, g->edge[1].thick_mm }, SECTION_UP, j->label_t2);
	if (j->shape != FIG_BUTT_TEST)
		section_dim(s,
		    (struct section_dim){ .kind = SECTION_LEVEL,
		        .side = SECTION_BOTTOM,
		        .a = groove_root(g, 0),
		        .b = groove_root(g, 1),
		        .near = j->shape == FIG_PIPE_BUTT && !fig_given(j->backing_t_mm),
		        .label = j->label_gap });
	section_pointer(s, SECTION_RIGHT,
	    (pt){ (toe.x + groove_lap(toe.x, crown)) * 0.6, toe.y + crown * 0.66 },
	    (pt){ right, toe.y + crown }, j->label_reinforcement);
	section_pointer(s, SECTION_RIGHT, (pt){ toe.x * 0.9, toe.y },
	    (pt){ right, (toe.y + crown) * 2 }, j->label_answer);
	section_pointer(s, SECTION_LEFT,
	    (pt){ left * 0.8 - g->gap * 0.1, g->edge[0].thick_mm },
	    (pt){ left, g->edge[0].thick_mm * 1.6 }, full ? j->label_od : STR(""));
}

void section_butt(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	struct groove g = groove_of(j, f);

	if (prep_kind(prep_of(j))->flare) {
		section_flare_groove(s, j, f);
		return;
	}
	if (j->shape == FIG_BUTT_TEST) {
		add_sound_plate(s, &g);
	} else {
		add_side(s, &g, 0);
		add_side(s, &g, 1);
	}
	add_weld(s, j, &g);
	add_backing(s, j);
	butt_dims(s, j, &g, j->label_od.n == 0 || section_full(s, f));
	groove_angle_dims(s, j, &g);
	if (j->shape == FIG_PIPE_BUTT && !j->beads_only && section_full(s, f))
		add_bore(s, j, &g, f.mm_pt);
}
