/* Sections of corner, tee and edge joints with prepared edges (joint types and grooves of
 * AWS A3.0; proportions common practice, no source). */
#include "draw/fig_groove.h"

#include "draw/geom.h"

#include <math.h>

static double crown_of(const struct fig_joint *j)
{
	return fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
}

static double leg_of(const struct fig_joint *j)
{
	return fig_given(j->leg_mm) ? j->leg_mm : 0;
}

static void add_fillet(struct section *s, pt root, pt along, pt up, double leg)
{
	struct section_bead *b = section_bead(s);
	pt a = pt_add(root, pt_mul(along, leg)), e = pt_add(root, pt_mul(up, leg));

	section_move(b, root);
	section_line(b, a);
	section_face(b, a, e, 0);
	section_close(b);
}

static void add_strip(struct section *s, rect r, pt at, enum section_side side, str label)
{
	struct section_member *m = section_plate(s, 75);

	section_corner(m, r.x, r.y);
	section_corner(m, r.x + r.w, r.y);
	section_corner(m, r.x + r.w, r.y + r.h);
	section_corner(m, r.x, r.y + r.h);
	section_pointer(s, side, at, at, label);
}

/* ---- corner ---- */

/* The standing plate at the right, its top edge flush with the flat one. */
static void corner_post(struct section *s, const struct fig_joint *j, const struct groove *g,
    double low, bool broken)
{
	struct section_member *m = section_plate(s, 135);
	double x = g->gap / 2, t2 = fig_t2_mm(j), top = j->t1_mm;
	const struct prep_face *f = &g->edge[1].front;
	pt line[PREP_POINTS];
	size_t n = prep_line(f, line);

	section_corner(m, x + t2, low);
	section_corner(m, x + t2, top);
	if (f->depth_mm > 0)
		for (size_t i = n; i-- > 0;)
			section_corner(m, x + line[i].x, top - f->depth_mm + line[i].y);
	else
		section_corner(m, x, top);
	section_corner(m, x, low);
	if (broken)
		section_break(m);
}

static void corner_dims(struct section *s, const struct fig_joint *j, const struct groove *g,
    double low, pt far)
{
	double leg = leg_of(j), crown = crown_of(j), t2 = fig_t2_mm(j), x = g->gap / 2;
	pt toe = groove_toe(g, 1);

	section_upright(
	    s, SECTION_LEFT, far, (pt){ far.x, j->t1_mm }, SECTION_UP, j->label_t1);
	groove_height_dims(s, j, g, 0);
	section_level(s, SECTION_BOTTOM, (pt){ x, low }, (pt){ x + t2, low }, j->label_t2);
	section_pointer(s, SECTION_LEFT, (pt){ 0, g->edge[0].back.depth_mm },
	    (pt){ 0, low * 0.7 }, j->label_gap);
	if (leg > 0)
		section_upright(s, SECTION_LEFT, (pt){ x - leg, 0 }, (pt){ x, -leg },
		    SECTION_DOWN, j->label_leg);
	section_pointer(s, SECTION_RIGHT, (pt){ toe.x * 0.5, toe.y + crown * 0.8 },
	    (pt){ toe.x, toe.y + crown * 2 }, j->label_reinforcement);
	section_pointer(s, SECTION_RIGHT, (pt){ toe.x * 0.9, toe.y },
	    (pt){ toe.x, (toe.y + crown) * 2 }, j->label_answer);
	groove_angle_dims(s, j, g);
}

void section_corner_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f)
{
	struct groove g = { .gap = fig_gap_middle_mm(j) };
	double back = fig_given(j->backing_t_mm) ? j->backing_t_mm : 0, leg = leg_of(j), low;
	struct section_member *m;
	bool low_broken;
	pt far;

	if (prep_kind(prep_of(j))->flare) {
		section_flare_groove(s, j, f);
		return;
	}
	prep_edges(j, g.edge);
	g.edge[1].thick_mm = j->t1_mm;
	g.reach[0] = section_reach(j->width1_mm, fmax(fmax(leg, j->backing_width_mm),
	    fmax(g.edge[0].front.run_mm, g.edge[0].back.run_mm)), f.arm_mm, &g.broken[0]);
	low = -section_reach(j->width2_mm - j->t1_mm, fmax(leg, back), f.arm_mm, &low_broken);
	far = (pt){ -g.gap / 2 - g.reach[0], 0 };
	m = section_plate(s, 45);
	groove_edge(m, &g.edge[0], (pt){ -g.gap / 2, 0 }, -1);
	section_corner(m, far.x, j->t1_mm);
	if (g.broken[0])
		section_break(m);
	section_corner(m, far.x, 0);
	corner_post(s, j, &g, low, low_broken);
	groove_weld(s, &g, false, crown_of(j));
	if (g.edge[0].back.depth_mm > 0)
		groove_weld(s, &g, true, 0);
	if (leg > 0)
		add_fillet(s, (pt){ g.gap / 2, 0 }, (pt){ -1, 0 }, (pt){ 0, -1 }, leg);
	if (back > 0)
		add_strip(s, (rect){ g.gap / 2 - j->backing_width_mm, -back,
		    j->backing_width_mm, back }, (pt){ g.gap / 2 - j->backing_width_mm + back / 3,
		    -back / 2 }, SECTION_LEFT, j->label_backing);
	corner_dims(s, j, &g, low, far);
}

/* ---- edge ---- */

static void edge_post(struct section *s, const struct groove *g, int side, double low,
    bool broken)
{
	struct section_member *m = section_plate(s, side == 0 ? 45 : 135);
	const struct prep_face *f = &g->edge[side].front;
	double way = side == 0 ? -1 : 1, face = way * g->gap / 2, top = g->edge[0].thick_mm;
	double outer = face + way * g->reach[side];
	pt line[PREP_POINTS];
	size_t n = prep_line(f, line);

	section_corner(m, outer, low);
	section_corner(m, outer, top);
	if (f->depth_mm > 0)
		for (size_t i = n; i-- > 0;)
			section_corner(m, face + way * line[i].x, line[i].y);
	else
		section_corner(m, face, top);
	section_corner(m, face, low);
	if (broken)
		section_break(m);
}

static void edge_dims(struct section *s, const struct fig_joint *j, const struct groove *g,
    double low)
{
	double left = -g->gap / 2 - g->reach[0], right = g->gap / 2 + g->reach[1];
	double top = g->edge[0].thick_mm, crown = crown_of(j);

	section_beside(
	    s, SECTION_LEFT, (pt){ left, low }, (pt){ -g->gap / 2, low }, j->label_t1);
	section_beside(
	    s, SECTION_RIGHT, (pt){ g->gap / 2, low }, (pt){ right, low }, j->label_t2);
	section_upright(s, SECTION_RIGHT, (pt){ g->gap / 2, 0 }, (pt){ right, top },
	    SECTION_DOWN, j->label_depth);
	section_pointer(
	    s, SECTION_LEFT, (pt){ 0, low / 2 }, (pt){ 0, low / 2 }, j->label_gap);
	section_pointer(s, SECTION_RIGHT, (pt){ groove_toe(g, 1).x * 0.5, top + crown * 0.8 },
	    (pt){ right, top + crown * 2 }, j->label_reinforcement);
	section_pointer(s, SECTION_RIGHT, (pt){ groove_toe(g, 1).x * 0.9, top },
	    (pt){ right, (top + crown) * 2 }, j->label_answer);
	groove_angle_dims(s, j, g);
}

void section_edge_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f)
{
	struct groove g = { .gap = fig_gap_low_mm(j) };
	bool broken, same;
	double low, low2;

	if (prep_kind(prep_of(j))->flare) {
		section_flare_groove(s, j, f);
		return;
	}
	if (prep_of(j) == FIG_PREP_SQUARE) {
		section_edge(s, j, f);
		return;
	}
	prep_edges(j, g.edge);
	g.reach[0] = g.edge[0].thick_mm;
	g.reach[1] = g.edge[1].thick_mm;
	/* Along the plates only the depth of the groove counts. */
	g.edge[0].thick_mm = g.edge[1].thick_mm = j->depth_mm;
	low = -section_reach(j->width1_mm - j->depth_mm, 0, f.arm_mm, &broken);
	low2 = -section_reach(j->width2_mm - j->depth_mm, 0, f.arm_mm, &same);
	edge_post(s, &g, 0, low, broken);
	edge_post(s, &g, 1, low2, same);
	groove_weld(s, &g, false, crown_of(j));
	edge_dims(s, j, &g, low);
}

/* ---- tee ---- */

/* Across the web from its back, height over the base: onto the section. */
static pt tee_point(const struct fig_joint *j, double gap, double across, double up)
{
	return (pt){ across - j->t1_mm / 2, gap + up };
}

static void tee_web(struct section *s, const struct fig_joint *j, const struct prep_edge *e,
    double gap, double top, bool broken)
{
	struct section_member *m = section_plate(s, 45);
	double back = e->back.depth_mm, face = back + e->land_mm, half = j->t1_mm / 2;
	pt line[PREP_POINTS], p;
	size_t n = prep_line(&e->back, line);

	for (size_t i = n; i-- > 0 && back > 0;) {
		p = tee_point(j, gap, back - line[i].y, line[i].x);
		section_corner(m, p.x, p.y);
	}
	if (!(back > 0))
		section_corner(m, -half, gap);
	n = prep_line(&e->front, line);
	for (size_t i = e->land_mm > 0 ? 0 : 1; i < n; i++) {
		p = tee_point(j, gap, i + 1 < n ? face + line[i].y : j->t1_mm, line[i].x);
		section_corner(m, p.x, p.y);
	}
	section_corner(m, half, top);
	if (broken)
		section_break(m);
	section_corner(m, -half, top);
}

/* The weld of one side: walls along the base and up the web; way 1: at the right. */
static void tee_weld(struct section *s, const struct fig_joint *j, const struct prep_edge *e,
    double gap, double way)
{
	const struct prep_face *f = way > 0 ? &e->front : &e->back;
	struct section_region *r = section_region(s, way < 0);
	struct section_bead *b = section_bead(s);
	double half = j->t1_mm / 2, leg = leg_of(j), land = e->land_mm;
	double closed = way > 0 ? half - f->depth_mm : f->depth_mm - half, from = closed;
	pt line[PREP_POINTS];
	size_t n = prep_line(f, line);

	if (gap > 0)
		from -= way * (e->back.depth_mm > 0 ? land / 2 : land);
	r->a[r->na++] = (pt){ from, 0 };
	r->a[r->na++] = (pt){ way * (half + leg), 0 };
	if (gap > 0)
		r->b[r->nb++] = (pt){ from, gap };
	for (size_t i = gap > 0 && fabs(from - closed) < 1e-9 ? 1 : 0; i < n; i++)
		r->b[r->nb++] = (pt){ closed + way * line[i].y, gap + line[i].x };
	if (leg > gap + f->run_mm)
		r->b[r->nb++] = (pt){ way * half, leg };
	section_move(b, r->a[0]);
	section_line(b, r->a[1]);
	pt top = r->b[r->nb - 1];
	section_face(b, r->a[1], top, -way * pt_length(pt_sub(top, r->a[1])) * 0.06);
	for (size_t i = r->nb - 1; i-- > 0;)
		section_line(b, r->b[i]);
	section_close(b);
	r->rise = pt_length(pt_sub(top, r->a[1])) * 0.06;
}

static void tee_dims(struct section *s, const struct fig_joint *j, const struct prep_edge *e,
    double gap, double reach, double top)
{
	double half = j->t1_mm / 2, back = e->back.depth_mm, leg = leg_of(j);
	double face = back + e->land_mm - half, t2 = fig_t2_mm(j);

	section_level(s, SECTION_TOP, (pt){ -half, top }, (pt){ half, top }, j->label_t1);
	section_upright(s, SECTION_LEFT, (pt){ -reach, -t2 }, (pt){ -reach, 0 },
	    SECTION_DOWN, j->label_t2);
	section_upright(s, SECTION_LEFT, (pt){ back - half, 0 }, (pt){ back - half, gap },
	    SECTION_UP, gap > 0 ? j->label_gap : STR(""));
	if (leg > 0)
		section_beside(
		    s, SECTION_RIGHT, (pt){ half, 0 }, (pt){ half + leg, 0 }, j->label_leg);
	if (e->land_mm > 0)
		section_beside(s, SECTION_LEFT, (pt){ back - half, gap }, (pt){ face, gap },
		    j->label_land);
	section_beside(
	    s, SECTION_RIGHT, (pt){ face, gap }, (pt){ half, gap }, j->label_depth);
	if (back > 0)
		section_beside(s, SECTION_LEFT, (pt){ -half, gap }, (pt){ back - half, gap },
		    j->label_depth_back);
	section_pointer(s, SECTION_RIGHT, (pt){ half - e->front.depth_mm * 0.25,
	    gap + e->front.run_mm - e->front.depth_mm * 0.25 * geom_tan(e->front.deg) },
	    (pt){ half, fmax(gap + e->front.run_mm, leg) * 1.3 },
	    j->label_bevel.n ? j->label_bevel : j->label_angle);
	section_pointer(s, SECTION_RIGHT, (pt){ half + leg * 0.3, fmax(leg * 0.72, gap) },
	    (pt){ half, top }, j->label_answer);
	if (back > 0)
		section_pointer(s, SECTION_LEFT, (pt){ back * 0.25 - half, gap + e->back.run_mm -
		    back * 0.25 * geom_tan(e->back.deg) }, (pt){ -half,
		    fmax(gap + e->back.run_mm, leg) * 1.3 }, j->label_angle_back);
	if (back > 0 && e->back.radius_mm > 0)
		section_pointer(s, SECTION_LEFT, (pt){ back - half - e->back.radius_mm * 0.707,
		    gap + e->back.radius_mm * 0.293 }, (pt){ -half, gap + e->back.run_mm * 2 },
		    j->label_radius_back);
	if (e->front.radius_mm > 0)
		section_pointer(s, SECTION_LEFT, (pt){ face + e->front.radius_mm * 0.707,
		    gap + e->front.radius_mm * 0.293 }, (pt){ face, gap + e->front.run_mm * 2 },
		    j->label_radius);
}

void section_tee_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f)
{
	double half = j->t1_mm / 2, t2 = fig_t2_mm(j), gap = fig_gap_middle_mm(j);
	double strip = fig_given(j->backing_t_mm) ? j->backing_t_mm : 0, top, reach, used;
	struct section_member *m = section_plate(s, 135);
	bool high_broken, wide_broken;
	struct prep_edge e[2];

	prep_edges(j, e);
	used = gap + fmax(fmax(e[0].front.run_mm, e[0].back.run_mm), leg_of(j));
	top = gap + section_reach(j->width1_mm, used + (strip > 0 ? j->backing_width_mm : 0),
	    f.arm_mm * 0.8, &high_broken);
	reach = section_reach(
	    j->width2_mm / 2, half + fmax(leg_of(j), strip), f.arm_mm, &wide_broken);
	section_corner(m, -reach, -t2);
	section_corner(m, reach, -t2);
	if (wide_broken)
		section_break(m);
	section_corner(m, reach, 0);
	section_corner(m, -reach, 0);
	if (wide_broken)
		section_break(m);
	tee_web(s, j, &e[0], gap, top, high_broken);
	tee_weld(s, j, &e[0], gap, 1);
	if (e[0].back.depth_mm > 0)
		tee_weld(s, j, &e[0], gap, -1);
	if (strip > 0)
		add_strip(s, (rect){ -half - strip, 0, strip, j->backing_width_mm },
		    (pt){ -half - strip / 2, j->backing_width_mm * 0.8 }, SECTION_LEFT,
		    j->label_backing);
	tee_dims(s, j, &e[0], gap, reach, top);
}
