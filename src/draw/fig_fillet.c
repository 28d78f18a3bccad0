/* Sections of fillet, corner and edge joints. Shapes: AWS A3.0 joint types, drawn from
 * the definitions (shared corner, faying surfaces); the slight bulge of a weld face is
 * for looks (common practice, no source) and its legs are true. */
#include "draw/fig_section.h"

#include "draw/geom.h"

#include <math.h>

#define BULGE 0.06

/* A fillet at root with its legs u, along the base, then v. */
static void add_fillet(struct section *s, pt root, pt u, pt v, bool back)
{
	struct section_bead *b = section_bead(s);
	struct section_region *r = section_region(s, back);
	pt a = pt_add(root, u), e = pt_add(root, v);
	pt out = pt_add(u, v), face = pt_sub(e, a);
	double leg = fmin(pt_length(u), pt_length(v));
	/* The bulge goes away from the root whichever way round the legs are given. */
	double left = -face.y * out.x + face.x * out.y > 0 ? 1 : -1;

	section_move(b, root);
	section_line(b, a);
	section_face(b, a, e, left * leg * BULGE);
	section_close(b);
	r->a[r->na++] = r->b[r->nb++] = root;
	r->a[r->na++] = a;
	r->b[r->nb++] = e;
	r->rise = leg * BULGE;
}

/* A standing plate; its upper or lower end may be a break. */
static void add_post(struct section_member *m, double x0, double y0, double x1, double y1,
    bool low_broken, bool high_broken)
{
	section_corner(m, x0, y0);
	if (low_broken)
		section_break(m);
	section_corner(m, x1, y0);
	section_corner(m, x1, y1);
	if (high_broken)
		section_break(m);
	section_corner(m, x0, y1);
}

static void tee_dims(struct section *s, const struct fig_joint *j, pt left, pt right,
    double top, bool full)
{
	double half = j->t1_mm / 2, leg = j->leg_mm, leg2 = fig_leg2_mm(j);
	double t2 = fig_t2_mm(j), low = fig_gap_low_mm(j);
	bool alike = !fig_given(j->leg2_mm);

	section_upright(s, SECTION_LEFT, (pt){ left.x, -t2 }, (pt){ left.x, 0 },
	    SECTION_DOWN, j->label_t2);
	section_level(s, SECTION_TOP, (pt){ -half, top }, (pt){ half, top }, j->label_t1);
	section_upright(s, SECTION_RIGHT, (pt){ right.x, 0 }, (pt){ half, leg },
	    SECTION_UP, j->label_leg);
	section_level(s, SECTION_BOTTOM, (pt){ half, 0 }, (pt){ half + leg2, 0 },
	    !alike ? j->label_leg2 : full ? j->label_leg : STR(""));
	section_pointer(s, SECTION_LEFT, (pt){ -half, low / 2 },
	    (pt){ -half, fmax(leg, low) * 1.2 }, j->label_gap);
	section_pointer(s, SECTION_RIGHT, (pt){ half + leg2 * 0.3, leg * 0.72 },
	    (pt){ right.x, fmax(top, leg * 2) }, j->label_answer);
}

void section_tee(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double half = j->t1_mm / 2, leg = j->leg_mm, leg2 = fig_leg2_mm(j);
	double t2 = fig_t2_mm(j), gap = fig_gap_low_mm(j), top, reach;
	bool high_broken, wide_broken;

	top = gap + section_reach(j->width1_mm, leg * 1.3, f.arm_mm * 0.8, &high_broken);
	reach = section_reach(j->width2_mm / 2, half + leg2, f.arm_mm, &wide_broken);
	section_box(section_plate(s, 135), -reach, -t2, reach, 0, wide_broken, wide_broken);
	add_post(section_plate(s, 45), -half, gap, half, top, false, high_broken);
	add_fillet(s, (pt){ half, 0 }, (pt){ leg2, 0 }, (pt){ 0, leg }, false);
	if (j->both_sides)
		add_fillet(s, (pt){ -half, 0 }, (pt){ -leg2, 0 }, (pt){ 0, leg }, true);
	tee_dims(s, j, (pt){ -reach, 0 }, (pt){ reach, 0 }, top,
	    j->label_leg.n == 0 || section_full(s, f));
}

static void lap_dims(struct section *s, const struct fig_joint *j, double left,
    double right, double overlap, bool full)
{
	double t2 = fig_t2_mm(j), gap = fig_gap_low_mm(j), leg2 = fig_leg2_mm(j);

	section_upright(s, SECTION_LEFT, (pt){ left, -t2 }, (pt){ left, 0 }, SECTION_DOWN,
	    j->label_t2);
	/* Short of room, the leg is told at its face instead of between lines. */
	section_dim(s, (struct section_dim){
	    .kind = full ? SECTION_UPRIGHT : SECTION_POINTER, .side = SECTION_LEFT,
	    .a = { full ? left : -j->leg_mm * 0.55, full ? 0 : j->leg_mm * 0.52 },
	    .b = { 0, full ? j->leg_mm : gap + j->t1_mm + t2 }, .exit = SECTION_UP,
	    .label = j->label_leg });
	section_level(
	    s, SECTION_BOTTOM, (pt){ -leg2, 0 }, (pt){ 0, -t2 }, j->label_leg2);
	section_upright(s, SECTION_RIGHT, (pt){ right, gap },
	    (pt){ right, gap + j->t1_mm }, SECTION_UP, j->label_t1);
	section_level(
	    s, SECTION_BOTTOM, (pt){ 0, 0 }, (pt){ overlap, -t2 }, j->label_overlap);
	section_pointer(s, SECTION_RIGHT, (pt){ overlap, gap / 2 }, (pt){ overlap, -t2 },
	    j->label_gap);
	section_pointer(s, SECTION_LEFT, (pt){ -leg2 * 0.72, j->leg_mm * 0.3 },
	    (pt){ left, gap + (j->t1_mm + t2) * 2 }, j->label_answer);
}

void section_lap(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double t1 = j->t1_mm, t2 = fig_t2_mm(j), leg = j->leg_mm, gap = fig_gap_low_mm(j);
	double leg2 = fig_leg2_mm(j);
	/* Not given: five times the thinner part, the least lap of thin parts. */
	double overlap = fig_given(j->overlap_mm) ? j->overlap_mm : 5 * fmin(t1, t2);
	double left, right;
	bool left_broken, right_broken;

	left =
	    overlap - section_reach(j->width2_mm, overlap + leg2, f.arm_mm, &left_broken);
	right = section_reach(j->width1_mm, overlap + leg2, f.arm_mm, &right_broken);
	section_box(section_plate(s, 45), 0, gap, right, gap + t1, false, right_broken);
	section_box(section_plate(s, 135), left, -t2, overlap, 0, left_broken, false);
	add_fillet(s, (pt){ 0, 0 }, (pt){ -leg2, 0 }, (pt){ 0, leg }, false);
	if (j->both_sides)
		add_fillet(s, (pt){ overlap, gap }, (pt){ leg2, 0 }, (pt){ 0, -leg }, true);
	lap_dims(s, j, left, right, overlap,
	    fig_given(j->leg2_mm) || section_full(s, f));
}

void section_corner_open(struct section *s, const struct fig_joint *j,
    struct section_frame f)
{
	double t1 = j->t1_mm, t2 = fig_t2_mm(j), gap = fig_gap_low_mm(j), left, low;
	bool left_broken, low_broken;
	struct section_region *r;
	struct section_bead *b;
	pt high = { 0, t1 }, out = { gap + t2, 0 };

	left = -section_reach(j->width1_mm, 0, f.arm_mm * 1.6, &left_broken);
	low = -section_reach(j->width2_mm, 0, f.arm_mm * 1.2, &low_broken);
	section_box(section_plate(s, 45), left, 0, 0, t1, left_broken, false);
	add_post(section_plate(s, 135), gap, low, gap + t2, 0, low_broken, false);
	b = section_bead(s);
	section_move(b, (pt){ 0, 0 });
	section_line(b, (pt){ gap, 0 });
	section_line(b, out);
	section_face(b, out, high, -pt_length(pt_sub(out, high)) * 0.12);
	section_close(b);
	r = section_region(s, false);
	r->a[r->na++] = (pt){ 0, 0 };
	r->a[r->na++] = high;
	r->b[r->nb++] = (pt){ gap, 0 };
	r->b[r->nb++] = out;
	r->rise = pt_length(pt_sub(out, high)) * 0.12;
	section_upright(
	    s, SECTION_LEFT, (pt){ left, 0 }, (pt){ left, t1 }, SECTION_UP, j->label_t1);
	section_level(
	    s, SECTION_BOTTOM, (pt){ gap, low }, (pt){ gap + t2, low }, j->label_t2);
	section_pointer(
	    s, SECTION_LEFT, (pt){ gap / 2, 0 }, (pt){ 0, low / 2 }, j->label_gap);
	section_pointer(s, SECTION_RIGHT,
	    pt_add(pt_between(high, out, 0.5),
	        pt_mul(
	            pt_unit((pt){ t1, gap + t2 }), pt_length(pt_sub(out, high)) * 0.12)),
	    high, j->label_leg);
}

void section_corner_closed(struct section *s, const struct fig_joint *j,
    struct section_frame f)
{
	double t1 = j->t1_mm, t2 = fig_t2_mm(j), leg = j->leg_mm, left, low;
	double gap = fig_gap_low_mm(j), leg2 = fig_leg2_mm(j);
	bool left_broken, low_broken;

	left = -section_reach(j->width1_mm - t2, leg, f.arm_mm, &left_broken);
	low = -gap - section_reach(j->width2_mm, leg2, f.arm_mm * 0.8, &low_broken);
	section_box(section_plate(s, 45), left, 0, t2, t1, left_broken, false);
	add_post(section_plate(s, 135), 0, low, t2, -gap, low_broken, false);
	add_fillet(s, (pt){ 0, 0 }, (pt){ -leg, 0 }, (pt){ 0, -leg2 }, false);
	section_upright(
	    s, SECTION_LEFT, (pt){ left, 0 }, (pt){ left, t1 }, SECTION_UP, j->label_t1);
	section_upright(s, SECTION_LEFT, (pt){ left, 0 }, (pt){ 0, -leg2 }, SECTION_DOWN,
	    fig_given(j->leg2_mm) ? j->label_leg2 : j->label_leg);
	if (fig_given(j->leg2_mm))
		section_level(
		    s, SECTION_BOTTOM, (pt){ -leg, 0 }, (pt){ 0, low }, j->label_leg);
	section_level(s, SECTION_BOTTOM, (pt){ 0, low }, (pt){ t2, low }, j->label_t2);
	section_pointer(
	    s, SECTION_RIGHT, (pt){ t2, -gap / 2 }, (pt){ t2, -gap - leg2 }, j->label_gap);
}

void section_edge(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double t1 = j->t1_mm, t2 = fig_t2_mm(j), gap = fig_gap_low_mm(j), rise, low;
	bool low_broken, same;
	struct section_region *r;
	struct section_bead *b;
	pt from = { gap + t2, 0 }, to = { -t1, 0 };

	/* Not given: a bead one third as high as the thinner part, for looks. */
	rise = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : fmin(t1, t2) / 3;
	low = -section_reach(j->width1_mm, 0, f.arm_mm * 1.8, &low_broken);
	add_post(section_plate(s, 45), -t1, low, 0, 0, low_broken, false);
	low = -section_reach(j->width2_mm, 0, f.arm_mm * 1.8, &same);
	add_post(section_plate(s, 135), gap, low, gap + t2, 0, same, false);
	b = section_bead(s);
	section_move(b, to);
	section_line(b, from);
	section_face(b, from, to, -rise);
	section_close(b);
	r = section_region(s, false);
	r->a[r->na++] = to;
	r->b[r->nb++] = from;
	r->rise = rise;
	section_beside(s, SECTION_LEFT, (pt){ -t1, low }, (pt){ 0, low }, j->label_t1);
	section_beside(
	    s, SECTION_RIGHT, (pt){ gap, low }, (pt){ gap + t2, low }, j->label_t2);
	section_pointer(s, SECTION_RIGHT,
	    (pt){ (gap + t2 - t1) / 2 + (t1 + t2) / 8, rise * 0.98 }, (pt){ 0, rise },
	    j->label_reinforcement);
	section_pointer(
	    s, SECTION_LEFT, (pt){ gap / 2, low / 2 }, (pt){ 0, low / 2 }, j->label_gap);
}
