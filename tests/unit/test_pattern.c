/* Flat patterns against the answer keys of the demo program (computed when the program
 * was planned, apart from this code) and against published worked examples, named where
 * they stand. Inches in the sources. */
#include "reckon/pattern.h"

#include "units/trade.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define IN 25.4
#define PI 3.14159265358979323846

static int setup(void **state)
{
	*state = arena_new(NULL, NULL);
	return 0;
}

static int teardown(void **state)
{
	arena_free(*state);
	return 0;
}

static void near_to(double got, double want, double within)
{
	if (!(fabs(got - want) <= within))
		fail_msg("got %.9f, want %.9f within %g", got, want, within);
}

/* An answer in inches, within half of the last printed place. */
static void has_in(const struct pattern *p, str name, double want, double within)
{
	assert_int_equal(p->fault.n, 0);
	near_to(pattern_find(p, name) / IN, want, within);
}

static void has_deg(const struct pattern *p, str name, double want, double within)
{
	assert_int_equal(p->fault.n, 0);
	near_to(pattern_find(p, name), want, within);
}

/* ---- the demo's answer keys ---- */

static struct pattern_part three_bends(void)
{
	return (struct pattern_part){ .shape = PATTERN_BRAKE, .radius_mm = 0.125 * IN,
		.thickness_mm = gauge_thickness_in(METAL_STEEL, 11) * IN, .k = 0.42,
		.nflanges = 4, .flange_mm = { IN, 2 * IN, 2 * IN, IN },
		.bend_deg = { 90, 90, 90 } };
}

static void three_bend_blank(void **state)
{
	struct pattern_part p = three_bends();
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Bend allowance"), 0.275, 5e-4);
	has_in(o, STR("Setback"), 0.245, 5e-4);
	has_in(o, STR("Bend deduction"), 0.214, 5e-4);
	has_in(o, STR("Blank length"), 5.358, 5e-4);
	has_in(o, STR("Bend line 1 from the first edge"), 0.893, 5e-4);
	has_in(o, STR("Bend line 2 from the first edge"), 2.679, 5e-4);
	has_in(o, STR("Bend line 3 from the first edge"), 4.465, 5e-4);
}

static void rolled_ring(void **state)
{
	struct pattern_part p = { .shape = PATTERN_CYLINDER, .given = LINE_INSIDE,
		.wrap = LINE_MEAN, .diameter_mm = 36 * IN, .thickness_mm = 3 * IN / 16,
		.height_mm = 12 * IN };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Diameter of the stretch-out"), 36.1875, 1e-9);
	has_in(o, STR("Stretch-out"), 113.686, 5e-4);
	near_to(o->flat[0].height_mm, 12 * IN, 1e-9);
}

static void two_piece_elbow(void **state)
{
	/* Every 30 deg from the heel; 16 ga carbon steel is 0.0598. */
	static const double want[] = { 9.000, 8.598, 7.500, 6.000, 4.500, 3.402, 3.000 };
	struct pattern_part p = { .shape = PATTERN_ELBOW, .wrap = LINE_MEAN, .pieces = 2,
		.diameter_mm = 6 * IN, .height_mm = 6 * IN, .angle_deg = 90,
		.thickness_mm = gauge_thickness_in(METAL_STEEL, 16) * IN };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Stretch-out"), 18.662, 5e-4);
	has_in(o, STR("One division"), 1.555, 5e-4);
	has_deg(o, STR("Miter angle of each joint"), 45, 1e-12);
	assert_int_equal(o->table[0].n, 13);
	for (size_t i = 0; i < 7; i++) {
		near_to(o->table[0].v[6 - i].v_mm[0] / IN, want[i], 5e-4);
		near_to(o->table[0].v[6 + i].v_mm[0] / IN, want[i], 5e-4);
	}
}

static void frustum(void **state)
{
	struct pattern_part p = { .shape = PATTERN_CONE, .base_mm = 12 * IN,
		.top_mm = 6 * IN, .height_mm = 8 * IN };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Slant height"), 8.544, 5e-4);
	has_in(o, STR("Outer radius"), 17.088, 5e-4);
	has_in(o, STR("Inner radius"), 8.544, 5e-4);
	has_deg(o, STR("Sector angle"), 126.40, 5e-3);
	has_in(o, STR("Outer arc"), 12 * PI, 1e-9);
	has_in(o, STR("Inner arc"), 6 * PI, 1e-9);
	/* Twice the radius times the sine of half the sector. */
	has_in(o, STR("Chord across the outer ends"),
	    2 * 17.0880074906 * sin(126.4045 / 2 * PI / 180), 1e-4);
	/* A sector of less than half a circle is as wide as its chord. */
	near_to(o->flat[0].width_mm, pattern_find(o, STR("Chord across the outer ends")),
	    1e-9);
}

static void duct(void **state)
{
	static const double want[] = { 12.369, 11.469, 11.136, 11.469, 12.369 };
	struct pattern_part p = { .shape = PATTERN_SQUARE, .base_mm = 14 * IN,
		.top_mm = 10 * IN, .height_mm = 10 * IN, .divisions = 16, .pieces = 2 };
	const struct pattern *o = pattern_reckon(*state, &p);

	assert_int_equal(o->fault.n, 0);
	assert_int_equal(o->ntables, 1);
	assert_int_equal(o->table[0].n, 5);
	for (size_t i = 0; i < 5; i++)
		near_to(o->table[0].v[i].v_mm[0] / IN, want[i], 5e-4);
	has_in(o, STR("One division along the round"), 1.963, 5e-4);
	has_in(o, STR("One division, straight across"), 1.951, 5e-4);
	has_in(o, STR("Round to the flat side, square to it, right"), 10.198, 5e-4);
	assert_true(isnan(pattern_find(o,
	    STR("Round to the flat side, square to it, left"))));
	assert_int_equal(o->nflats, 1);
	assert_int_equal(o->flat[0].count, 2);
}

static void hopper(void **state)
{
	struct pattern_part p = { .shape = PATTERN_BOX, .sides = 6, .base_mm = 24 * IN,
		.top_mm = 8 * IN, .height_mm = 14 * IN, .pieces = 2 };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Slant height of a face"), 16.125, 5e-4);
	has_in(o, STR("Edge of a face at the base"), 13.856, 5e-4);
	has_in(o, STR("Edge of a face at the top"), 4.619, 5e-4);
	has_in(o, STR("Corner seam"), 16.773, 5e-4);
	has_deg(o, STR("Slope of a face"), 60.26, 5e-3);
	has_deg(o, STR("Angle between faces"), 128.54, 5e-3);
	has_deg(o, STR("Brake through"), 51.46, 5e-3);
}

static void pipe_saddle(void **state)
{
	static const double want[] = { 0, 0.080, 0.249, 0.339 };
	struct pattern_part p = { .shape = PATTERN_SADDLE, .diameter_mm = 2.375 * IN,
		.run_mm = 4.5 * IN, .angle_deg = 90 };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Wrap length"), 7.461, 5e-4);
	for (size_t i = 0; i < 4; i++)
		near_to(o->table[0].v[i].v_mm[0] / IN, want[i], 5e-4);
	near_to(o->table[0].v[12].v_mm[0], 0, 1e-9);
}

/* ---- published and recorded worked examples ---- */

/* Repair-man problem of a geometry course page: ends 5 and 8, 4 high. */
static void published_frustum(void **state)
{
	struct pattern_part p = { .shape = PATTERN_CONE, .base_mm = 5 * IN,
		.top_mm = 8 * IN, .height_mm = 4 * IN };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Inner radius"), 7.12, 5e-3);
	has_in(o, STR("Outer radius"), 11.39, 5e-3);
	has_deg(o, STR("Sector angle"), 126.4, 5e-2);
}

/* A blacksmiths' mathematics page: a whole cone of 90 deg included angle. */
static void published_cone(void **state)
{
	struct pattern_part p = { .shape = PATTERN_CONE, .base_mm = 100,
	    .height_mm = 50 };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_deg(o, STR("Sector angle"), 254.6, 5e-2);
	has_in(o, STR("Inner radius"), 0, 0);
}

/* FAA-H-8083-31 chapter 4, U-channel 1.00 x 2.00 x 1.00, R .16, t .04. The handbook's
 * setback .20 is printed; allowance .28 and flat 3.76 are recalled from it. */
static void published_channel(void **state)
{
	struct pattern_part p = { .shape = PATTERN_BRAKE, .radius_mm = 0.16 * IN,
		.thickness_mm = 0.04 * IN, .k = 0.5, .nflanges = 3,
		.flange_mm = { IN, 2 * IN, IN }, .bend_deg = { 90, 90 } };
	const struct pattern *o = pattern_reckon(*state, &p);

	near_to(brake_setback_mm(90, 0.16 * IN, 0.04 * IN) / IN, 0.20, 5e-4);
	has_in(o, STR("Bend allowance"), 0.28, 5e-3);
	has_in(o, STR("Blank length"), 3.76, 1e-2);
	/* Recorded: R 1/8, t 1/8, K 0.407 gives 0.2763. */
	near_to(brake_allowance_mm(90, 0.125 * IN, 0.407, 0.125 * IN) / IN, 0.2763, 5e-4);
}

/* Recorded: y = r tan(alpha) (1 - cos theta), every 30 deg from the throat. */
static void recorded_miters(void **state)
{
	static const struct { double od, turn, want[7]; } rows[] = {
		{ 6.625, 45, { 0, 0.1838, 0.6860, 1.3721, 2.0581, 2.5603, 2.7442 } },
		{ 4.5, 90, { 0, 0.3014, 1.1250, 2.2500, 3.3750, 4.1986, 4.5000 } },
	};

	for (size_t r = 0; r < 2; r++) {
		struct pattern_part p = { .shape = PATTERN_ELBOW, .pieces = 2,
			.diameter_mm = rows[r].od * IN, .height_mm = 10 * IN,
			.angle_deg = rows[r].turn };
		const struct pattern *o = pattern_reckon(*state, &p);

		has_in(o, STR("Stretch-out"), PI * rows[r].od, 1e-9);
		for (size_t i = 0; i < 7; i++)
			near_to(o->table[0].v[i].v_mm[1] / IN, rows[r].want[i], 5e-4);
	}
}

/* Recorded: y = R - sqrt(R^2 - (r sin theta)^2), every 15 deg from the run's axis. */
static void recorded_saddles(void **state)
{
	static const struct { double run, branch, wall; enum pattern_line line;
		double want[7]; } rows[] = {
		{ 6.625, 4.5, 0, LINE_OUTSIDE,
		    { 0, 0.0516, 0.1969, 0.4071, 0.6337, 0.8126, 0.8814 } },
		{ 4.5, 4.5, 0, LINE_OUTSIDE,
		    { 0, 0.0767, 0.3014, 0.6590, 1.1250, 1.6677, 2.2500 } },
		{ 6.625, 4.5, 0.237, LINE_INSIDE,
		    { 0, 0.0412, 0.1566, 0.3214, 0.4958, 0.6307, 0.6818 } },
	};

	for (size_t r = 0; r < 3; r++) {
		struct pattern_part p = { .shape = PATTERN_SADDLE, .angle_deg = 90,
			.run_mm = rows[r].run * IN, .diameter_mm = rows[r].branch * IN,
			.thickness_mm = rows[r].wall * IN, .line = rows[r].line,
			.divisions = 24 };
		const struct pattern *o = pattern_reckon(*state, &p);

		assert_int_equal(o->fault.n, 0);
		for (size_t i = 0; i < 7; i++)
			near_to(o->table[0].v[i].v_mm[0] / IN, rows[r].want[i], 5e-4);
		near_to(pattern_find(o, STR("Depth of the cut")) / IN, rows[r].want[6],
		    5e-4);
	}
}

/* Recorded: base 12 x 12, top 6 x 6, 8 high: face slant 8.544, corner edge 9.055. */
static void recorded_pyramid(void **state)
{
	struct pattern_part p = { .shape = PATTERN_BOX, .sides = 4, .base_mm = 12 * IN,
		.top_mm = 6 * IN, .height_mm = 8 * IN };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_in(o, STR("Slant height of a face"), 8.544, 1e-3);
	has_in(o, STR("Corner seam"), 9.055, 1e-3);
}

/* Recorded: square 12, round 6, 8 high: from a corner to the nearest quarter 10.440. */
static void recorded_transition(void **state)
{
	struct pattern_part p = { .shape = PATTERN_SQUARE, .base_mm = 12 * IN,
		.top_mm = 6 * IN, .height_mm = 8 * IN };
	const struct pattern *o = pattern_reckon(*state, &p);

	assert_int_equal(o->fault.n, 0);
	near_to(o->table[0].v[0].v_mm[0] / IN, 10.440, 1e-3);
}

/* ---- places where formulas meet ---- */

/* A lateral of 90 deg is a saddle; one of 45 deg is longer on its long side by
 * d / tan 45. */
static void laterals(void **state)
{
	struct pattern_part p = { .shape = PATTERN_SADDLE, .diameter_mm = 60,
	    .run_mm = 110,
		.angle_deg = 45 };
	const struct pattern *o = pattern_reckon(*state, &p);

	assert_int_equal(o->fault.n, 0);
	near_to(o->table[0].v[0].v_mm[1], 0, 1e-9);
	near_to(o->table[0].v[6].v_mm[1], 60, 1e-9);
	near_to(o->table[0].v[6].v_mm[0], 0, 1e-9);
	p.angle_deg = 90 - 1e-9;
	o = pattern_reckon(*state, &p);
	near_to(o->table[0].v[3].v_mm[0], 55 - sqrt(55 * 55 - 30 * 30), 1e-6);
}

/* Many narrow sides come to the cone that they enclose. */
static void box_nears_cone(void **state)
{
	struct pattern_part box = { .shape = PATTERN_BOX, .sides = 24, .base_mm = 300,
		.top_mm = 100, .height_mm = 200 };
	struct pattern_part cone = { .shape = PATTERN_CONE, .base_mm = 300, .top_mm = 100,
		.height_mm = 200 };

	near_to(pattern_find(pattern_reckon(*state, &box), STR("Slant height of a face")),
	    pattern_find(pattern_reckon(*state, &cone), STR("Slant height")), 1e-9);
}

/* An upright box turns at each seam by the angle of the plain polygon. */
static void upright_box(void **state)
{
	struct pattern_part p = { .shape = PATTERN_BOX, .sides = 5, .base_mm = 100,
		.top_mm = 100, .height_mm = 60 };

	has_deg(pattern_reckon(*state, &p), STR("Brake through"), 72, 1e-9);
	has_deg(pattern_reckon(*state, &p), STR("Slope of a face"), 90, 1e-9);
}

/* Three pieces: the middle one is two end pieces without their straight part. */
static void three_pieces(void **state)
{
	struct pattern_part p = { .shape = PATTERN_ELBOW, .pieces = 3, .diameter_mm = 100,
		.radius_mm = 150, .angle_deg = 90 };
	const struct pattern *o = pattern_reckon(*state, &p);

	has_deg(o, STR("Miter angle of each joint"), 22.5, 1e-12);
	assert_int_equal(o->ntables, 2);
	assert_int_equal(o->flat[1].count, 1);
	for (size_t i = 0; i < 13; i++)
		near_to(o->table[1].v[i].v_mm[0], 2 * o->table[0].v[i].v_mm[0], 1e-9);
	near_to(pattern_find(o, STR("End piece at the throat")),
	    100 * tan(22.5 * PI / 180), 1e-9);
}

/* Thickness moves an opening sideways by its secant: 3-4-5 cone, t 4: 4 x 5/4 = 5. */
static void thickness_on_a_slope(void **state)
{
	struct pattern_part p = { .shape = PATTERN_CONE, .base_mm = 200, .top_mm = 80,
		.height_mm = 80, .thickness_mm = 4, .line = LINE_INSIDE };
	const struct pattern *o = pattern_reckon(*state, &p);

	/* Half-difference 60, height 80: slant 100, secant 1.25, sine 0.6. */
	near_to(pattern_find(o, STR("Outer radius")), (100 - 5) / 0.6, 1e-9);
	near_to(pattern_find(o, STR("Inner radius")), (40 - 5) / 0.6, 1e-9);
	near_to(pattern_find(o, STR("Slant height")), 100, 1e-9);
	p.line = LINE_MEAN;
	o = pattern_reckon(*state, &p);
	near_to(pattern_find(o, STR("Outer radius")), (100 - 2.5) / 0.6, 1e-9);
}

/* Off center in both directions, no two corners are alike. */
static void off_center(void **state)
{
	struct pattern_part p = { .shape = PATTERN_SQUARE, .base_mm = 300,
	    .base2_mm = 260,
		.top_mm = 150, .height_mm = 200, .offset_x_mm = 40, .offset_y_mm = 25,
		.pieces = 2 };
	const struct pattern *o = pattern_reckon(*state, &p);

	assert_int_equal(o->fault.n, 0);
	assert_int_equal(o->ntables, 4);
	assert_int_equal(o->nflats, 2);
	/* Right rear corner 150, 130 to the point at 0 deg: 40 + 75, 25. */
	near_to(o->table[0].v[0].v_mm[0], sqrt(35 * 35 + 105 * 105 + 200 * 200), 1e-9);
	p.offset_y_mm = 0;
	o = pattern_reckon(*state, &p);
	assert_int_equal(o->ntables, 2);
	assert_int_equal(o->nflats, 1);
}

/* ---- what no part can be ---- */

static void fault_is(void **state, struct pattern_part p, const char *want)
{
	const struct pattern *o = pattern_reckon(*state, &p);

	if (!str_eq(o->fault, str_of(want)))
		fail_msg("said \"%.*s\", not \"%s\"", STR_ARG(o->fault), want);
	assert_int_equal(o->nanswers, 0);
	assert_int_equal(o->ntables, 0);
	assert_int_equal(o->nflats, 0);
}

static void impossible_rounds(void **state)
{
	struct pattern_part p = { .shape = PATTERN_CYLINDER, .diameter_mm = 100,
		.height_mm = 50 };

	p.height_mm = 0;
	fault_is(state, p, "the height is not given");
	p.height_mm = -1;
	fault_is(state, p, "a size is below zero or beyond reason");
	p.height_mm = NAN;
	fault_is(state, p, "a size is below zero or beyond reason");
	p.height_mm = 50;
	p.wrap = LINE_MEAN;
	fault_is(state, p, "the thickness is not given, so no line inside it is known");
	p.thickness_mm = 50;
	fault_is(state, p, "the wall fills the whole round");
	p.thickness_mm = 49.9;
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
	p = (struct pattern_part){ .shape = PATTERN_CONE, .base_mm = 100, .top_mm = 100,
		.height_mm = 50 };
	fault_is(state, p, "a cone with two equal ends is a cylinder");
	p.top_mm = 100.001;
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
}

static void impossible_elbows(void **state)
{
	struct pattern_part p = { .shape = PATTERN_ELBOW, .pieces = 1, .diameter_mm = 100,
		.angle_deg = 90, .radius_mm = 150 };

	fault_is(state, p, "an elbow has 2 to 30 pieces");
	p.pieces = 4;
	p.radius_mm = 50;
	fault_is(state, p, "the throat has no length left: the elbow is too tight");
	p.radius_mm = 50.01;
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
	p.angle_deg = 180;
	fault_is(state, p, "an elbow turns through more than 0 and less than 180 deg");
	p.angle_deg = 90;
	p.radius_mm = 0;
	fault_is(state, p, "the radius of the center line is not given");
	p.pieces = 2;
	fault_is(state, p,
	    "neither the height of an end piece nor the radius of the center "
	    "line is given");
	p.height_mm = 50; /* As far as the throat reaches at 45 deg. */
	fault_is(state, p, "the throat has no length left: the elbow is too tight");
}

static void impossible_saddles(void **state)
{
	struct pattern_part p = { .shape = PATTERN_SADDLE, .diameter_mm = 100,
		.run_mm = 100, .angle_deg = 90 };

	/* Alike is the limit, and a branch may be no larger. */
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
	p.diameter_mm = 100.01;
	fault_is(state, p, "the branch is larger than its run");
	p.diameter_mm = 80;
	p.offset_x_mm = 10.01;
	fault_is(state, p, "the branch stands out beside the run");
	p.offset_x_mm = 10;
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
	p.angle_deg = 0;
	fault_is(state, p, "center lines meet at more than 0 and at most 90 deg");
	p.angle_deg = 90.5;
	fault_is(state, p, "center lines meet at more than 0 and at most 90 deg");
	p.angle_deg = 90;
	p.height_mm = 40;
	fault_is(state, p, "the branch is too short to reach out of the run");
	p.run_mm = 0;
	fault_is(state, p, "the diameter of the run is not given");
	p.run_mm = 200;
	p.angle_deg = 1e-9;
	p.height_mm = 0;
	fault_is(state, p, "the pattern would have no end");
}

static void impossible_boxes(void **state)
{
	struct pattern_part p = { .shape = PATTERN_BOX, .sides = 2, .base_mm = 100,
		.top_mm = 50, .height_mm = 80 };

	fault_is(state, p, "a box has at least three sides");
	p.sides = 6;
	p.pieces = 4;
	fault_is(state, p, "the sides do not share out evenly among the pieces");
	p.pieces = 3;
	p.base_mm = 0;
	fault_is(state, p, "the base is not given");
	p = (struct pattern_part){ .shape = PATTERN_SQUARE, .base_mm = 100, .top_mm = 50,
		.height_mm = 80, .divisions = 18 };
	fault_is(state, p, "the round is divided into a multiple of four parts");
	p.divisions = 3;
	fault_is(state, p, "the circle is divided into 4 to 360 parts");
	p.divisions = 16;
	p.offset_x_mm = 50;
	fault_is(state, p, "the round is off center by half the base or more");
	p.offset_x_mm = 0;
	p.pieces = 3;
	fault_is(state, p, "a square to round is made of one piece or two halves");
}

static void impossible_bends(void **state)
{
	struct pattern_part p = three_bends();

	p.flange_mm[0] = brake_setback_mm(90, p.radius_mm, p.thickness_mm);
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
	p.flange_mm[0] -= 0.001;
	fault_is(state, p, "a flange is shorter than its setback");
	p.flange_mm[0] = IN;
	p.bend_deg[1] = 180;
	fault_is(state, p, "a bend turns through more than 0 and less than 180 deg");
	p.bend_deg[1] = 90;
	p.k = 0;
	fault_is(state, p, "neither K nor a bend allowance is given");
	p.k = 0.51;
	fault_is(state, p, "the neutral line lies at 0.5 of the thickness at most: K is too "
	    "large");
	p.allowance_mm = 0.275 * IN;
	assert_int_equal(pattern_reckon(*state, &p)->fault.n, 0);
	p.k = 1;
	fault_is(state, p, "K lies between 0 and 1");
	p.k = 0.4;
	p.thickness_mm = 0;
	fault_is(state, p, "the thickness is not given");
	p = three_bends();
	p.nflanges = 1;
	fault_is(state, p, "a braked part has at least two flanges");
}

/* Inside flanges and their setback give the same blank as the outside ones. */
static void inside_flanges(void **state)
{
	struct pattern_part out = three_bends(), in = three_bends();

	in.given = LINE_INSIDE;
	for (size_t i = 0; i < 4; i++)
		in.flange_mm[i] -= out.thickness_mm * (i == 0 || i == 3 ? 1 : 2);
	near_to(pattern_find(pattern_reckon(*state, &in), STR("Blank length")),
	    pattern_find(pattern_reckon(*state, &out), STR("Blank length")), 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(three_bend_blank), cmocka_unit_test(rolled_ring),
		cmocka_unit_test(two_piece_elbow), cmocka_unit_test(frustum),
		cmocka_unit_test(duct), cmocka_unit_test(hopper),
		cmocka_unit_test(pipe_saddle), cmocka_unit_test(published_frustum),
		cmocka_unit_test(published_cone), cmocka_unit_test(published_channel),
		cmocka_unit_test(recorded_miters), cmocka_unit_test(recorded_saddles),
		cmocka_unit_test(recorded_pyramid), cmocka_unit_test(recorded_transition),
		cmocka_unit_test(laterals), cmocka_unit_test(box_nears_cone),
		cmocka_unit_test(upright_box), cmocka_unit_test(three_pieces),
		cmocka_unit_test(thickness_on_a_slope), cmocka_unit_test(off_center),
		cmocka_unit_test(impossible_rounds), cmocka_unit_test(impossible_elbows),
		cmocka_unit_test(impossible_saddles), cmocka_unit_test(impossible_boxes),
		cmocka_unit_test(impossible_bends), cmocka_unit_test(inside_flanges),
	};

	return cmocka_run_group_tests(tests, setup, teardown);
}
