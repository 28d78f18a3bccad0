/* Sections of pads, flare-bevel welds, gouged grooves and set-on branches. */
#include "draw/fig_section.h"

#include "draw/geom.h"

#include <math.h>

/* Beads overlap by about a third of their width (common practice, no source). */
#define BEAD_OVERLAP 0.35
#define PLAN_GAP_PT 14.0
#define PLAN_HEIGHT_PT 58.0

/* The pad from above, under its section: one line where each bead meets the next. */
static void pad_plan(struct section *s, const struct fig_joint *j, double from,
    double pitch, struct section_frame f)
{
	double half = j->width1_mm / 2, high = -j->t1_mm - PLAN_GAP_PT * f.mm_pt, low;
	bool broken;
	struct section_member *m = section_plate(s, NAN);

	low = high - section_reach(j->length_mm, 0, PLAN_HEIGHT_PT * f.mm_pt, &broken);
	section_corner(m, -half, low);
	if (broken)
		section_break(m);
	section_corner(m, half, low);
	section_corner(m, half, high);
	section_corner(m, -half, high);
	double end = fmin(2 * f.mm_pt, (high - low) * 0.1);
	for (unsigned i = 0; i <= j->passes; i++) {
		double x = from + pitch * i;

		section_rule(s, (pt){ x, high - end }, (pt){ x, low + end * 2 }, false);
	}
}

void section_pad(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double half = j->width1_mm / 2, t = j->t1_mm;
	double span = fig_given(j->groove_width_mm) ? j->groove_width_mm : j->width1_mm;
	double pitch = span / j->passes, wide = pitch * BEAD_OVERLAP;
	double rise = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : pitch * 0.3;
	struct section_member *m = section_plate(s, 45);

	section_corner(m, -half, -t);
	section_corner(m, half, -t);
	section_corner(m, half, 0);
	section_corner(m, -half, 0);
	for (unsigned i = 0; i < j->passes; i++) {
		struct section_bead *b = section_bead(s);
		double x0 = -span / 2 + pitch * i, x1 = x0 + pitch;
		pt from = { x1, i + 1 < j->passes ? rise * wide / pitch : 0 },
		   to = { x0, 0 };

		section_move(b, from);
		section_face(b, from, to, -rise + from.y / 2);
	}
	section_upright(s, SECTION_LEFT, (pt){ -half, -t }, (pt){ -half, 0 },
	    SECTION_DOWN, j->label_t1);
	section_pointer(s, SECTION_RIGHT, (pt){ span / 2 - pitch / 2, rise * 0.98 },
	    (pt){ half, rise * 2 }, j->label_reinforcement);
	section_level(s, SECTION_TOP, (pt){ -span / 2, 0 }, (pt){ span / 2, 0 },
	    j->label_groove_width);
	if (s->ndims == 0 || section_full(s, f))
		pad_plan(s, j, -span / 2, pitch, f);
}

/* The wall of a round that lies on y = 0, from -deg to deg about its lowest point. */
static void add_round(struct section *s, double r, double wall, double deg)
{
	struct section_member *m = section_plate(s, 45);
	const int steps = 36;

	for (int i = 0; i <= steps; i++) {
		pt p = pt_polar(r, -90 - deg + 2 * deg * i / steps);

		section_corner(m, p.x, p.y + r);
	}
	section_break(m);
	for (int i = steps; i >= 0; i--) {
		pt p = pt_polar(r - wall, -90 - deg + 2 * deg * i / steps);

		section_corner(m, p.x, p.y + r);
	}
	section_break(m);
}

/* Walls along the plate and up the round. */
static void round_walls(struct section_region *w, double r, double leg, double way)
{
	double deg = asin(leg / r) * 180 / GEOM_PI;

	w->a[w->na++] = (pt){ 0, 0 };
	w->a[w->na++] = (pt){ way * leg, 0 };
	for (int i = 0; i < SECTION_WALL; i++) {
		double at = deg * i / (SECTION_WALL - 1);

		w->b[w->nb++] = (pt){ way * r * geom_sin(at), r - r * geom_cos(at) };
	}
	w->rise = (r - r * geom_cos(deg)) * 0.08;
}

static void flare_bead(struct section *s, double r, double leg, double way)
{
	struct section_bead *b = section_bead(s);
	double deg = asin(leg / r) * 180 / GEOM_PI;
	pt toe = { way * leg, 0 }, top = { way * leg, r - r * geom_cos(deg) };

	round_walls(section_region(s, way < 0), r, leg, way);
	section_move(b, (pt){ 0, 0 });
	section_line(b, toe);
	section_face(b, toe, top, -way * pt_length(pt_sub(top, toe)) * 0.08);
	for (int i = 24; i-- > 0;)
		section_line(b, (pt){ way * r * geom_sin(deg * i / 24),
		    r - r * geom_cos(deg * i / 24) });
	section_close(b);
}

void section_flare(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double r = j->od_mm / 2, t2 = fig_t2_mm(j), leg = j->leg_mm, reach, deg;
	struct section_member *m;
	pt high;

	deg = fmin(80, asin(leg / r) * 180 / GEOM_PI + 14);
	high = pt_polar(r, -90 + deg);
	reach = fmax(high.x, leg) + f.arm_mm * 0.5;
	m = section_plate(s, 135);
	section_corner(m, -reach, -t2);
	section_corner(m, reach, -t2);
	section_break(m);
	section_corner(m, reach, 0);
	section_corner(m, -reach, 0);
	section_break(m);
	add_round(s, r, j->t1_mm, deg);
	flare_bead(s, r, leg, 1);
	if (j->both_sides)
		flare_bead(s, r, leg, -1);
	section_upright(s, SECTION_LEFT, (pt){ -reach, -t2 }, (pt){ -reach, 0 },
	    SECTION_DOWN, j->label_t2);
	section_level(s, SECTION_BOTTOM, (pt){ 0, 0 }, (pt){ leg, 0 }, j->label_leg);
	pt inside = pt_polar(r - j->t1_mm / 2, -90 - deg * 0.85);
	pt outside = pt_polar(r, -90 + deg * 0.9);
	section_pointer(s, SECTION_LEFT, (pt){ inside.x, inside.y + r },
	    (pt){ -reach, r + high.y }, j->label_t1);
	section_pointer(s, SECTION_RIGHT, (pt){ outside.x, outside.y + r },
	    (pt){ reach, r + high.y }, j->label_od);
}

/* Corners of the groove from its right edge down and up to its left: straight sides at
 * half the included angle, tangent to the root arc; or the arc alone. */
static void gouge_corners(struct section_member *m, const struct fig_joint *j)
{
	double w = fig_gouge_width_mm(j), r = fig_gouge_radius_mm(j), d = j->depth_mm;
	double t = j->t1_mm, half = j->angle_deg > 0 ? j->angle_deg / 2 : 0, from;
	const int steps = 30;

	/* The arc starts where it is tangent to the side, or at the surface. */
	from = d >= r * (1 - geom_sin(half)) - 1e-9 ? half
	    : asin((r - d) / r) * 180 / GEOM_PI;
	section_corner(m, w / 2, t);
	for (int i = 0; i <= steps; i++) {
		pt p = pt_polar(r, -from - (180 - 2 * from) * i / steps);

		section_corner(m, p.x, t - d + r + p.y);
	}
	section_corner(m, -w / 2, t);
}

void section_gouge(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double t = j->t1_mm, half = fig_gouge_width_mm(j) / 2, reach;
	double r = fig_gouge_radius_mm(j), low = t - j->depth_mm;
	struct section_member *m = section_plate(s, 45);
	bool broken;

	reach = section_reach(j->width1_mm / 2, half, f.arm_mm, &broken);
	section_corner(m, reach, 0);
	if (broken)
		section_break(m);
	section_corner(m, reach, t);
	gouge_corners(m, j);
	section_corner(m, -reach, t);
	if (broken)
		section_break(m);
	section_corner(m, -reach, 0);
	section_upright(s, SECTION_LEFT, (pt){ -reach, 0 }, (pt){ -reach, t },
	    SECTION_DOWN, j->label_t1);
	section_upright(s, SECTION_RIGHT, (pt){ 0, low }, (pt){ reach, t }, SECTION_UP,
	    j->label_depth);
	section_level(
	    s, SECTION_TOP, (pt){ -half, t }, (pt){ half, t }, j->label_groove_width);
	/* The leader comes in through the open groove, just over its left edge. */
	pt arc = pt_polar(r, -35), edge = { -half, t + 5 * f.mm_pt };
	double column = -reach - 20 * f.mm_pt;
	arc.y = fmin(arc.y + low + r, t - j->depth_mm * 0.3);
	arc.x = sqrt(fmax(0, r * r - (arc.y - low - r) * (arc.y - low - r)));
	section_pointer(s, SECTION_LEFT, arc,
	    (pt){
	        column, arc.y + (edge.y - arc.y) * (arc.x - column) / (arc.x - edge.x) },
	    j->label_radius);
}

static void branch_dims(struct section *s, const struct fig_joint *j, double right,
    double top)
{
	double t1 = j->t1_mm, t2 = fig_t2_mm(j), gap = fig_gap_middle_mm(j);
	double land = fig_given(j->land_mm) ? j->land_mm : 0;
	double rise = gap + (t1 - land) * geom_tan(j->bevel_angle_deg);

	section_upright(
	    s, SECTION_LEFT, (pt){ 0, 0 }, (pt){ 0, gap }, SECTION_UP, j->label_gap);
	section_level(s, SECTION_TOP, (pt){ 0, top }, (pt){ t1, top }, j->label_t1);
	section_upright(s, SECTION_RIGHT, (pt){ right, -t2 }, (pt){ right, 0 },
	    SECTION_DOWN, j->label_t2);
	section_beside(s, SECTION_LEFT, (pt){ 0, gap }, (pt){ land, gap },
	    land > 0 ? j->label_land : STR(""));
	section_level(s, SECTION_BOTTOM, (pt){ t1, 0 }, (pt){ t1 + j->leg_mm, 0 },
	    fig_given(j->leg_mm) ? j->label_leg : STR(""));
	section_pointer(s, SECTION_RIGHT,
	    pt_between((pt){ land, gap }, (pt){ t1, rise }, 0.8),
	    (pt){ t1, (rise + top) / 2 }, j->label_bevel);
	section_pointer(s, SECTION_RIGHT, (pt){ t1, top - (top - rise) * 0.25 },
	    (pt){ t1, top }, j->label_od);
}

void section_branch(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double t1 = j->t1_mm, t2 = fig_t2_mm(j), gap = fig_gap_middle_mm(j);
	double land = fig_given(j->land_mm) ? j->land_mm : 0;
	double leg = fig_given(j->leg_mm) ? j->leg_mm : 0;
	double rise = gap + (t1 - land) * geom_tan(j->bevel_angle_deg);
	double right = t1 + leg + f.arm_mm, top = fmax(rise, leg) + f.arm_mm * 0.7;
	struct section_member *m = section_plate(s, 135);
	pt toe = { t1 + leg, 0 }, high = { t1, fmax(rise, leg) };

	section_corner(m, 0, -t2);
	section_corner(m, right, -t2);
	section_break(m);
	section_corner(m, right, 0);
	section_corner(m, 0, 0);
	m = section_plate(s, 45);
	section_corner(m, 0, gap);
	if (land > 0)
		section_corner(m, land, gap);
	section_corner(m, t1, rise);
	section_corner(m, t1, top);
	section_break(m);
	section_corner(m, 0, top);
	struct section_bead *b = section_bead(s);
	section_move(b, (pt){ 0, 0 });
	section_line(b, toe);
	section_face(b, toe, high, -pt_length(pt_sub(high, toe)) * 0.06);
	section_line(b, (pt){ t1, rise });
	section_line(b, (pt){ land, gap });
	section_line(b, (pt){ 0, gap });
	section_close(b);
	struct section_region *w = section_region(s, false);
	w->a[w->na++] = (pt){ 0, 0 };
	w->a[w->na++] = toe;
	w->b[w->nb++] = (pt){ 0, gap };
	w->b[w->nb++] = (pt){ land, gap };
	w->b[w->nb++] = (pt){ t1, rise };
	w->b[w->nb++] = high;
	w->rise = pt_length(pt_sub(high, toe)) * 0.06;
	/* The bore of the branch lies to the left: a stretch of its center line. */
	section_axis(s, (pt){ -26 * f.mm_pt, -t2 - 5 * f.mm_pt },
	    (pt){ -26 * f.mm_pt, top + 5 * f.mm_pt }, f.mm_pt);
	branch_dims(s, j, right, top);
}
