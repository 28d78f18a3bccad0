/* The coupon from above, x along the weld; for pipe the end view with the clock. Ripples
 * stand for a weld, crosses for tacks (common practice, no source). */
#include "draw/fig_prep.h"
#include "draw/fig_section.h"

#include "draw/geom.h"

#include <math.h>

#define RIPPLE_DEG 90
#define CIRCLE_STEPS 72
#define TACKS 12

/* What lies where across the weld, y up: each band from its lower edge up. */
struct plan {
	double half;             /* of the length */
	double weld_lo, weld_hi; /* of the bead */
	double tack_y;
};

static void add_band(struct section *s, const struct plan *p, double lo, double hi,
    double hatch_deg)
{
	struct section_member *m = section_plate(s, hatch_deg);

	section_corner(m, -p->half, lo);
	section_corner(m, p->half, lo);
	section_corner(m, p->half, hi);
	section_corner(m, -p->half, hi);
}

/* A plate whose near edge is fixed. The far one is its own; a break along the weld when
 * its width is not given. */
static double add_wing(struct section *s, const struct plan *p, double edge, double way,
    double width, double arm)
{
	bool broken = !fig_given(width);
	double far = edge + way * (broken ? arm : width);
	struct section_member *m = section_plate(s, NAN);

	section_corner(m, -p->half, edge);
	section_corner(m, -p->half, far);
	if (broken)
		section_break(m);
	section_corner(m, p->half, far);
	section_corner(m, p->half, edge);
	return far;
}

static void across_dim(struct section *s, const struct plan *p, double lo, double hi,
    enum section_side side, str label)
{
	double x = side == SECTION_LEFT ? -p->half : p->half;

	section_upright(s, side, (pt){ x, lo }, (pt){ x, hi }, SECTION_UP, label);
}

static void plan_tee(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	double half = j->t1_mm / 2, other = half, reach = j->width2_mm / 2;
	double leg = fig_given(j->leg_mm) ? fig_leg2_mm(j) : 0;
	bool both = j->both_sides || prep_kind(prep_of(j))->doubled;

	if (fig_given(reach)) {
		add_band(s, p, -reach, reach, NAN);
		across_dim(s, p, -reach, reach, SECTION_RIGHT, j->label_width2);
	} else {
		other += both ? leg : 0;
		add_wing(s, p, other, 1, NAN, arm);
		add_wing(s, p, -half - leg, -1, NAN, arm);
	}
	add_band(s, p, -half, half, NAN);
	p->weld_hi = -half;
	p->weld_lo = -half - leg;
	if (both && leg > 0)
		add_band(s, p, half, half + leg, RIPPLE_DEG);
	p->tack_y = half;
	across_dim(s, p, -half, half, SECTION_LEFT, j->label_t1);
}

static void plan_lap(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	double overlap = fig_given(j->overlap_mm) ? j->overlap_mm
	    : 5 * fmin(j->t1_mm, fig_t2_mm(j));
	double high;

	high = add_wing(s, p, 0, 1, j->width1_mm, overlap + arm);
	add_wing(s, p, 0, -1, fig_given(j->width2_mm) ? j->width2_mm - overlap : 0,
	    fig_leg2_mm(j) + arm);
	section_rule(s, (pt){ -p->half, overlap }, (pt){ p->half, overlap }, true);
	p->weld_hi = 0;
	p->weld_lo = -fig_leg2_mm(j);
	p->tack_y = overlap;
	if (fig_given(j->width1_mm))
		across_dim(s, p, 0, high, SECTION_RIGHT, j->label_width1);
	across_dim(s, p, 0, overlap, SECTION_LEFT, j->label_overlap);
}

/* Width of the bead of a butt at the face. */
static double face_width(const struct fig_joint *j)
{
	double wide = fig_gap_middle_mm(j);
	enum fig_prep p = prep_of(j);
	struct prep_edge edge[2];

	prep_edges(j, edge);
	if (j->shape == FIG_BUTT_TEST)
		wide += 2 * j->t1_mm * geom_tan(fig_included_deg(j) / 2);
	else if (prep_kind(p)->flare)
		wide += j->radius_mm * (prep_kind(p)->both ? 2 : 1);
	else
		wide += edge[0].front.run_mm + edge[1].front.run_mm;
	return fmax(wide, fig_given(j->reinforcement_mm) ? 4 * j->reinforcement_mm
	                                                 : j->t1_mm);
}

static void plan_butt(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	double half = face_width(j) / 2, edge = fig_gap_middle_mm(j) / 2, low, high;
	double width2 = fig_given(j->width2_mm) ? j->width2_mm : j->width1_mm;

	p->weld_lo = -half;
	p->weld_hi = half;
	p->tack_y = 0;
	high = add_wing(s, p, half, 1, j->width1_mm - half + edge, arm);
	low = add_wing(s, p, -half, -1, width2 - half + edge, arm);
	if (fig_given(j->width1_mm) && high > half)
		across_dim(s, p, edge, high, SECTION_RIGHT, j->label_width1);
	if (fig_given(width2))
		across_dim(s, p, low, -edge, SECTION_RIGHT, j->label_width2);
}

/* The standing plate shows its edge. */
static void plan_corner(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	bool flare = prep_kind(prep_of(j))->flare;
	double edge = fig_gap_middle_mm(j) / 2, high;
	struct prep_edge e[2];

	prep_edges(j, e);
	p->weld_hi = edge + (flare ? j->radius_mm : e[0].front.run_mm);
	p->weld_lo = -edge - e[1].front.run_mm;
	p->tack_y = 0;
	add_band(s, p, -edge - fig_t2_mm(j), p->weld_lo, NAN);
	high = add_wing(s, p, p->weld_hi, 1, j->width1_mm + edge - p->weld_hi, arm);
	if (fig_given(j->width1_mm))
		across_dim(s, p, edge, high, SECTION_RIGHT, j->label_width1);
}

static void plan_edge(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	double t2 = fig_t2_mm(j), gap = fig_gap_low_mm(j), high;

	if (j->shape == FIG_EDGE || j->shape == FIG_EDGE_GROOVE) {
		p->weld_lo = -t2 - gap;
		p->weld_hi = j->t1_mm;
		p->tack_y = 0;
		return;
	}
	p->weld_lo = -t2 - gap;
	p->weld_hi = 0;
	p->tack_y = 0;
	high = add_wing(s, p, 0, 1, j->width1_mm, arm);
	if (fig_given(j->width1_mm))
		across_dim(s, p, 0, high, SECTION_RIGHT, j->label_width1);
}

/* The bead lies under the part, so it is told by dashed lines. */
static void plan_hidden(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	bool round = j->shape == FIG_FLARE_BEVEL;
	double at = round ? 0 : fig_t2_mm(j), high;

	if (round) {
		high = j->od_mm / 2;
		add_band(s, p, -high - arm / 2, high + arm / 2, NAN);
		add_band(s, p, -high, high, NAN);
		section_axis(s, (pt){ -p->half, 0 }, (pt){ p->half, 0 }, p->half / 60);
	} else {
		high = add_wing(s, p, 0, 1, j->width1_mm, at + j->leg_mm + arm);
		section_rule(s, (pt){ -p->half, at }, (pt){ p->half, at }, true);
		if (fig_given(j->width1_mm))
			across_dim(s, p, 0, high, SECTION_RIGHT, j->label_width1);
	}
	section_rule(s, (pt){ -p->half, at + j->leg_mm }, (pt){ p->half, at + j->leg_mm },
	    true);
	if (round && j->both_sides)
		section_rule(
		    s, (pt){ -p->half, -j->leg_mm }, (pt){ p->half, -j->leg_mm }, true);
	p->weld_lo = p->weld_hi = at + j->leg_mm / 2;
	p->tack_y = at;
}

static void plan_surface(struct section *s, const struct fig_joint *j, struct plan *p,
    double arm)
{
	double half, span;

	if (j->shape == FIG_U_GROOVE) {
		p->weld_hi = fig_gouge_width_mm(j) / 2;
		half = fig_given(j->width1_mm) ? j->width1_mm / 2 : p->weld_hi + arm;
		add_band(s, p, -half, half, NAN);
		section_rule(
		    s, (pt){ -p->half, p->weld_hi }, (pt){ p->half, p->weld_hi }, false);
		section_rule(s, (pt){ -p->half, -p->weld_hi },
		    (pt){ p->half, -p->weld_hi }, false);
		p->weld_hi = p->weld_lo = 0;
	} else {
		half = j->width1_mm / 2;
		span = fig_given(j->groove_width_mm) ? j->groove_width_mm / 2 : half;
		add_band(s, p, -half, half, NAN);
		for (unsigned i = 0; i <= j->passes; i++) {
			double y = -span + 2 * span * i / j->passes;

			section_rule(s, (pt){ -p->half * 0.97, y },
			    (pt){ p->half * 0.97, y }, false);
		}
	}
	if (fig_given(j->width1_mm))
		across_dim(s, p, -half, half, SECTION_RIGHT, j->label_width1);
}

static void add_tacks(struct section *s, const struct fig_joint *j, const struct plan *p,
    double mm_pt)
{
	double r = 3.5 * mm_pt;

	for (unsigned i = 0; i < j->tacks; i++) {
		pt at = { p->half * (2 * (i + 0.5) / j->tacks - 1), p->tack_y };

		section_rule(
		    s, (pt){ at.x - r, at.y - r }, (pt){ at.x + r, at.y + r }, false);
		section_rule(
		    s, (pt){ at.x - r, at.y + r }, (pt){ at.x + r, at.y - r }, false);
		if (i == 0)
			section_dim(s,
			    (struct section_dim){ .kind = SECTION_DROP,
			        .a = { at.x, at.y - r },
			        .label = word(j->language, "tack") });
	}
}

static void add_restart(
    struct section *s, const struct fig_joint *j, const struct plan *p, double mm_pt)
{
	double over = 3 * mm_pt, x = j->restart_mm;

	if (!j->restart)
		return;
	section_rule(
	    s, (pt){ x, p->weld_lo - over }, (pt){ x, p->weld_hi + over }, false);
	section_dim(s, (struct section_dim){ .kind = SECTION_DROP,
	    .a = { x, p->weld_lo - over }, .label = word(j->language, "stop and restart here") });
}

static void add_circle(struct section *s, double r, double hatch_deg)
{
	struct section_member *m = section_plate(s, hatch_deg);

	for (int i = 0; i < CIRCLE_STEPS; i++) {
		pt p = pt_polar(r, 360.0 * i / CIRCLE_STEPS);

		section_corner(m, p.x, p.y);
	}
}

/* The end of the pipe as on a clock, tacks midway between each other from 12 on. */
static void plan_pipe(
    struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double r = j->od_mm / 2, bore = r - j->t1_mm, tick = 5 * f.mm_pt;

	add_circle(s, r, NAN);
	add_circle(s, bore, NAN);
	for (int i = 0; i < 4; i++) {
		pt u = pt_polar(1, 90 * i);

		section_rule(s, pt_mul(u, r), pt_mul(u, r + tick), false);
	}
	for (unsigned i = 0; i < j->tacks; i++) {
		pt u = pt_polar(1, 90 - 360 * (i + 0.5) / j->tacks);

		section_rule(s, pt_mul(u, bore), pt_mul(u, r + tick / 2), false);
	}
	s->clock_mm = r + tick;
	pt high = pt_polar(r, 35), inside = pt_polar(r - j->t1_mm / 2, 155);
	section_pointer(s, SECTION_RIGHT, high, (pt){ r, r * 0.9 }, j->label_od);
	section_pointer(s, SECTION_LEFT, inside, (pt){ -r, r * 0.9 }, j->label_t1);
}

/* A row of plugs, slots or spots through the upper plate, in the middle of the length and
 * of the overlap. */
static void plan_row(struct section *s, const struct fig_joint *j, struct plan *p, double arm)
{
	double over = fig_given(j->overlap_mm) ? j->overlap_mm / 2 : 0, first;
	bool slot = fig_given(j->hole_length_mm);
	unsigned n = j->holes > 0 ? j->holes : 1;
	struct fig_feature h = { .mark = slot ? FIG_SLOT : FIG_HOLE, .w_mm = j->groove_width_mm,
		.h_mm = j->hole_length_mm };
	double high;

	if (slot && !j->slots_across) {
		h.w_mm = j->hole_length_mm;
		h.h_mm = j->groove_width_mm;
	}
	high = (slot ? h.h_mm : h.w_mm) / 2;
	if (over > 0) {
		add_wing(s, p, -over, 1, NAN, 2 * over + arm);
		add_wing(s, p, -over, -1, NAN, arm);
		section_rule(s, (pt){ -p->half, over }, (pt){ p->half, over }, true);
		across_dim(s, p, -over, over, SECTION_LEFT, j->label_overlap);
	} else {
		add_wing(s, p, -high - arm, 1, NAN, 2 * (high + arm));
		/* The edge from the last corner to the first is one too. */
		section_break(&s->member[0]);
	}
	first = (n - 1) * j->spacing_mm / -2;
	for (unsigned i = 0; i < n; i++) {
		h.x_mm = n > 1 ? first + i * j->spacing_mm : 0;
		plate_opening(s, &h);
	}
	if (n > 1)
		section_level(s, SECTION_BOTTOM, (pt){ first, 0 }, (pt){ first + j->spacing_mm, 0 },
		    j->label_spacing);
	section_pointer(s, SECTION_RIGHT, (pt){ h.x_mm + (slot ? 0 : high * 0.866),
	    slot ? high : high / 2 }, (pt){ p->half, high }, j->label_places);
}

typedef void plan_shape(
    struct section *, const struct fig_joint *, struct plan *, double);

static plan_shape *const plan_shapes[] = {
	[FIG_TEE] = plan_tee, [FIG_LAP] = plan_lap, [FIG_CORNER_OPEN] = plan_edge,
	[FIG_CORNER_CLOSED] = plan_hidden, [FIG_EDGE] = plan_edge,
	[FIG_SQUARE_BUTT] = plan_butt, [FIG_SINGLE_V] = plan_butt,
	[FIG_SINGLE_BEVEL] = plan_butt, [FIG_BUTT_TEST] = plan_butt,
	[FIG_PAD] = plan_surface, [FIG_U_GROOVE] = plan_surface,
	[FIG_FLARE_BEVEL] = plan_hidden, [FIG_PLUG] = plan_row, [FIG_SPOT] = plan_row,
	[FIG_BUTT_GROOVE] = plan_butt, [FIG_CORNER_GROOVE] = plan_corner,
	[FIG_TEE_GROOVE] = plan_tee, [FIG_EDGE_GROOVE] = plan_edge,
};

/* Of bent members two lie in one plane, or one against a standing plate. */
static plan_shape *plan_of(const struct fig_joint *j)
{
	if (j->shape != FIG_EDGE_GROOVE || !prep_kind(prep_of(j))->flare)
		return plan_shapes[j->shape];
	return prep_kind(prep_of(j))->both ? plan_butt : plan_corner;
}

static void build_plan(struct section *s, const void *data, struct section_frame f)
{
	const struct fig_joint *j = data;
	struct plan p = { .half = j->length_mm / 2 };

	if (j->shape == FIG_PIPE_BUTT || j->shape == FIG_BRANCH) {
		plan_pipe(s, j, f);
		return;
	}
	plan_of(j)(s, j, &p, f.arm_mm);
	if (p.weld_hi > p.weld_lo)
		add_band(s, &p, p.weld_lo, p.weld_hi, RIPPLE_DEG);
	add_tacks(s, j, &p, f.mm_pt);
	add_restart(s, j, &p, f.mm_pt);
	section_level(s, SECTION_TOP, (pt){ -p.half, p.weld_hi },
	    (pt){ p.half, p.weld_hi }, j->label_length);
}

bool fig_plan_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_joint *j)
{
	str why = fig_joint_fault(j);

	/* Rows are long; their openings show at small scales too. */
	bool row = j->shape == FIG_PLUG || j->shape == FIG_SPOT;
	struct fig_fit fit = { build_plan, j, 0, 0, j->letter, j->position, j->language,
		row, NULL, row };
	bool pipe = j->shape == FIG_PIPE_BUTT || j->shape == FIG_BRANCH;

	if (why.n == 0 && pipe && !fig_given(j->od_mm))
		why = WORD("the outside diameter is not given");
	if (why.n == 0 && !pipe && !fig_given(j->length_mm))
		why = WORD("the length is not given");
	if (why.n == 0 && !pipe && !plan_of(j))
		why = WORD("no view from above of this joint");
	if (why.n == 0 && j->holes > 1 && !fig_given(j->spacing_mm))
		why = WORD("the spacing is not given");
	if (why.n == 0 && j->tacks > TACKS)
		why = WORD("more than 12 tacks");
	if (why.n == 0 && fig_fit_draw(c, f, area, &fit))
		return true;
	return fig_refuse(c, f, area, j->language, why.n > 0 ? why : FIG_NO_ROOM);
}
