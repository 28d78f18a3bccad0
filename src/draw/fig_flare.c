/* Sections of flare grooves between bent members: in the plane, at a corner or edge to
 * edge. The bend begins at the root and ends flush with the other member. */
#include "draw/fig_groove.h"

#include "draw/geom.h"

#include <math.h>

#define BEND_STEPS 16

/* A member that comes from the side and is bent down to the root; way -1: at the left. */
static void add_bend(struct section *s, double root, double way, double r, double t,
    double reach, double low)
{
	struct section_member *m = section_plate(s, way < 0 ? 45 : 135);
	double inner = fmax(r - t, 0), far = root + way * (r + reach), middle = root + way * r;

	section_corner(m, root, low);
	for (int i = 0; i <= BEND_STEPS; i++) {
		pt p = pt_polar(r, 90.0 * i / BEND_STEPS);

		section_corner(m, middle - way * p.x, p.y);
	}
	section_corner(m, far, r);
	section_break(m);
	section_corner(m, far, r - t);
	for (int i = BEND_STEPS; i >= 0; i--) {
		pt p = pt_polar(inner, 90.0 * i / BEND_STEPS);

		/* Without an inner radius the corner is one point. */
		if (inner > 0 || i == 0)
			section_corner(m, middle - way * p.x,
			    inner > 0 ? p.y : r - t);
	}
	section_corner(m, root + way * t, low);
	section_break(m);
}

/* The flat member at the right: a plate in the plane, or one that stands. */
static void add_flat(struct section *s, const struct fig_joint *j, double x, double reach,
    double low)
{
	struct section_member *m = section_plate(s, 135);
	double t2 = fig_t2_mm(j), r = j->radius_mm;
	bool stands = j->shape != FIG_BUTT_GROOVE;
	double right = stands ? x + t2 : x + r + reach;

	section_corner(m, x, stands ? low : r - t2);
	if (stands)
		section_break(m);
	section_corner(m, right, stands ? low : r - t2);
	if (!stands)
		section_break(m);
	section_corner(m, right, r);
	section_corner(m, x, r);
}

static void add_weld(struct section *s, const struct fig_joint *j, double gap)
{
	struct section_region *w = section_region(s, false);
	struct section_bead *b = section_bead(s);
	double r = j->radius_mm;
	bool both = prep_of(j) == FIG_PREP_FLARE_V;

	for (int i = 0; i < SECTION_WALL; i++) {
		pt p = pt_polar(r, 90.0 * i / (SECTION_WALL - 1));

		w->a[w->na++] = (pt){ -gap / 2 - r + p.x, p.y };
		if (both)
			w->b[w->nb++] = (pt){ gap / 2 + r - p.x, p.y };
	}
	if (!both) {
		w->b[w->nb++] = (pt){ gap / 2, 0 };
		w->b[w->nb++] = (pt){ gap / 2, r };
	}
	w->rise = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	section_move(b, w->b[0]);
	for (size_t i = 1; i < w->nb; i++)
		section_line(b, w->b[i]);
	section_face(b, w->b[w->nb - 1], w->a[w->na - 1], -w->rise);
	for (size_t i = w->na - 1; i-- > 0;)
		section_line(b, w->a[i]);
	section_close(b);
}

static void flare_dims(struct section *s, const struct fig_joint *j, double gap, double reach,
    double low)
{
	double r = j->radius_mm, left = -gap / 2 - r - reach, t2 = fig_t2_mm(j);
	double crown = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	bool both = prep_of(j) == FIG_PREP_FLARE_V;
	double right = both || j->shape == FIG_BUTT_GROOVE ? gap / 2 + r + reach
	                                                   : gap / 2 + t2;
	pt arc = pt_polar(r, 62);

	section_upright(s, SECTION_LEFT, (pt){ left, r - j->t1_mm }, (pt){ left, r },
	    SECTION_DOWN, j->label_t1);
	if (both || j->shape == FIG_BUTT_GROOVE)
		section_upright(s, SECTION_RIGHT, (pt){ right, r - t2 }, (pt){ right, r },
		    SECTION_DOWN, j->label_t2);
	else
		section_level(
		    s, SECTION_BOTTOM, (pt){ gap / 2, low }, (pt){ right, low }, j->label_t2);
	section_pointer(s, SECTION_LEFT, (pt){ -gap / 2 - r + arc.x, arc.y },
	    (pt){ left, r * 2 }, j->label_radius);
	section_pointer(s, SECTION_LEFT, (pt){ 0, low / 2 }, (pt){ 0, low }, j->label_gap);
	section_pointer(s, SECTION_RIGHT, (pt){ both ? r * 0.3 : 0, r + crown * 0.9 },
	    (pt){ right, r + crown * 2 }, j->label_reinforcement);
}

void section_flare_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f)
{
	double gap = fig_gap_low_mm(j), reach = f.arm_mm * 0.8, low = -f.arm_mm * 0.8;
	double r = j->radius_mm;

	add_bend(s, -gap / 2, -1, r, j->t1_mm, reach, low);
	if (prep_of(j) == FIG_PREP_FLARE_V)
		add_bend(s, gap / 2, 1, r, fig_t2_mm(j), reach, low);
	else
		add_flat(s, j, gap / 2, reach, low);
	add_weld(s, j, gap);
	flare_dims(s, j, gap, reach, low);
}
