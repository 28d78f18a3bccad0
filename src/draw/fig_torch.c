/* Sections of thermal cuts: the kept piece at the left, the kerf beside its edge, the line
 * of the torch. A bevel is measured from square (AWS A3.0, bevel angle); that the kerf lies
 * wholly in the waste is common practice, no source. */
#include "draw/fig_section.h"

#include "draw/geom.h"

#include <math.h>

#define TICK_PT 6.0              /* on the side of the kerf: signs, not to scale */
#define TICK_APART_PT 16.0
#define TICKS_MOST 8
#define WAY_PT 8.0               /* of the open arrow that tells the way of the torch */
#define WAY_AT 0.35              /* of the line; a leader may stand at 0.7 */

static double kerf_of(const struct fig_joint *j)
{
	return fig_given(j->kerf_mm) ? j->kerf_mm : 0;
}

/* The middle of the jet from the lower edge of the cut to above the plate. */
static void add_torch(struct section *s, const struct fig_joint *j, struct section_frame f,
    pt low, pt high)
{
	pt up = pt_unit(pt_sub(high, low)), end = pt_add(high, pt_mul(up, f.arm_mm * 0.8));

	section_axis(s, low, end, f.mm_pt);
	section_pointer(s, SECTION_RIGHT, pt_between(high, end, 0.75), end,
	    word(j->language, "torch"));
}

void section_cut_edge(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double t = j->t1_mm, kerf = kerf_of(j), left;
	bool broken;

	left = -section_reach(j->width1_mm, 0, f.arm_mm * 1.6, &broken);
	section_box(section_plate(s, 45), left, 0, 0, t, broken, false);
	section_upright(
	    s, SECTION_LEFT, (pt){ left, 0 }, (pt){ left, t }, SECTION_UP, j->label_t1);
	add_torch(s, j, f, (pt){ kerf / 2, 0 }, (pt){ kerf / 2, t });
	if (!(kerf > 0))
		return;
	section_box(section_plate(s, NAN), kerf, 0, kerf + f.arm_mm, t, false, true);
	section_level(s, SECTION_BOTTOM, (pt){ 0, 0 }, (pt){ kerf, 0 }, j->label_kerf);
	section_pointer(s, SECTION_RIGHT, (pt){ kerf + f.arm_mm * 0.5, t * 0.4 },
	    (pt){ kerf + f.arm_mm, t * 0.2 }, word(j->language, "drop"));
}

/* What the plate was before the cut, and the far side of the kerf where metal is left
 * beyond it. */
static void add_taken(struct section *s, const struct fig_joint *j, double run)
{
	double t = j->t1_mm, land = fig_given(j->land_mm) ? j->land_mm : 0, deg;
	double wide;

	deg = j->bevel_angle_deg;
	wide = kerf_of(j) / geom_cos(deg);
	section_rule(s, (pt){ -run, t }, (pt){ 0, t }, true);
	section_rule(s, (pt){ 0, land }, (pt){ 0, t }, true);
	if (!(wide > 0) || wide >= run)
		return;
	section_rule(s, (pt){ wide - run, t }, (pt){ 0, t - (run - wide) / geom_tan(deg) }, false);
	s->rule[s->nrules - 1].thin = true;
}

void section_bevel_cut(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double t = j->t1_mm, land = fig_given(j->land_mm) ? j->land_mm : 0, left, half;
	double deg = j->bevel_angle_deg, run = (t - land) * geom_tan(deg);
	struct section_member *m = section_plate(s, 45);
	bool broken;

	left = -section_reach(j->width1_mm, run, f.arm_mm * 1.6, &broken);
	section_corner(m, left, 0);
	section_corner(m, 0, 0);
	if (land > 0)
		section_corner(m, 0, land);
	section_corner(m, -run, t);
	section_corner(m, left, t);
	if (broken)
		section_break(m);
	add_taken(s, j, run);
	section_upright(
	    s, SECTION_LEFT, (pt){ left, 0 }, (pt){ left, t }, SECTION_UP, j->label_t1);
	if (land > 0)
		section_upright(s, SECTION_RIGHT, (pt){ 0, 0 }, (pt){ 0, land }, SECTION_DOWN,
		    j->label_land);
	section_dim(s, (struct section_dim){ .kind = SECTION_ANGLE, .side = SECTION_TOP,
	    .a = { 0, t }, .b = { -run, t }, .apex = { 0, land }, .label = j->label_bevel });
	/* From where the jet leaves the plate, in the middle of the kerf. */
	half = kerf_of(j) / 2 / geom_cos(deg);
	add_torch(s, j, f, (pt){ half, land }, (pt){ half - run, t });
	section_pointer(s, SECTION_RIGHT, pt_between((pt){ half, land }, (pt){ half - run, t }, 0.6),
	    (pt){ half, land }, j->label_kerf);
}

/* ---- on the plate, from above ---- */

static void thin_rule(struct section *s, pt a, pt b)
{
	section_rule(s, a, b, false);
	s->rule[s->nrules - 1].thin = true;
}

static void add_way(struct section *s, pt at, pt along, double mm_pt)
{
	pt side = { -along.y, along.x };
	pt tip = pt_add(at, pt_mul(along, WAY_PT / 2 * mm_pt));
	pt back = pt_sub(tip, pt_mul(along, WAY_PT * mm_pt));

	for (int i = -1; i < 2; i += 2)
		section_rule(s, pt_add(back, pt_mul(side, i * WAY_PT / 3 * mm_pt)), tip, false);
}

/* Short slanted strokes from a line to one side of it. */
static void add_ticks(struct section *s, pt from, pt to, pt side, double mm_pt)
{
	double length = pt_length(pt_sub(to, from)) / mm_pt / TICK_APART_PT;
	int n = length < 2 ? 2 : length > TICKS_MOST ? TICKS_MOST : (int)length;
	pt along = pt_unit(pt_sub(to, from));
	pt tick = pt_mul(pt_add(side, pt_mul(along, 0.6)), TICK_PT * mm_pt);

	for (int i = 0; i < n; i++) {
		pt at = pt_between(from, to, (i + 0.5) / n);

		thin_rule(s, at, pt_add(at, tick));
	}
}

void plate_cut_line(struct section *s, const struct fig_feature *g, double mm_pt)
{
	pt from = { g->x_mm, g->y_mm }, to = { g->x_mm + g->w_mm, g->y_mm + g->h_mm };
	pt along = pt_unit(pt_sub(to, from)), side = { -along.y, along.x };
	double toward = side.x * g->kerf_x + side.y * g->kerf_y;

	add_way(s, pt_between(from, to, WAY_AT), along, mm_pt);
	if (fabs(toward) > 1e-9)
		add_ticks(s, from, to, pt_mul(side, toward > 0 ? 1 : -1), mm_pt);
}

void plate_cut_opening(struct section *s, const struct fig_feature *g, double mm_pt)
{
	double w = g->w_mm, h = g->mark == FIG_HOLE ? w : g->h_mm, r = fmin(w, h) / 2;
	double tick = fmin(TICK_PT * mm_pt, r * 0.6);

	for (int i = 0; i < TICKS_MOST; i++) {
		pt out = pt_polar(1, 22.5 + 45 * i);
		pt middle = { g->x_mm + (w / 2 - r) * (out.x > 0 ? 1 : -1),
			g->y_mm + (h / 2 - r) * (out.y > 0 ? 1 : -1) };

		thin_rule(s, pt_add(middle, pt_mul(out, r)),
		    pt_add(middle, pt_mul(out, r - tick)));
	}
}
