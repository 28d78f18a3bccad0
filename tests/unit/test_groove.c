/* Groove sections against slices added up, and against the weight-per-foot table of a
 * filler metal data book (consumption chapter). */
#include "reckon/groove.h"
#include "reckon/stock.h"
#include "reckon/weight.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void check(double got, double want, double within)
{
	if (!(fabs(got - want) <= within))
		print_error("%.10f, not %.10f\n", got, want);
	assert_true(fabs(got - want) <= within);
}

/* One arc side by slices: at height y above the land the wall stands at sqrt(r^2 -
 * (r - y)^2), up to where its slope is the groove's, then on the straight. */
static double side_by_slices(double r, double deg, double depth)
{
	const double b = deg * acos(-1) / 180;
	const int n = 400000;
	double sum = 0;

	for (int i = 0; i < n; i++) {
		double y = (i + 0.5) * depth / n, top = r - r * sin(b);

		sum += y < top ? sqrt(r * r - (r - y) * (r - y))
		               : r * cos(b) + (y - top) * sin(b) / cos(b);
	}
	return sum * depth / n;
}

static void arcs_against_slices(void **state)
{
	static const struct { double t, land, r, side_deg; } cases[] = {
		{ 25.4, 3.175, 6.35, 20 }, { 50.8, 0, 8, 10 }, { 12, 2, 3, 0 }, { 30, 1,
		    6, 45 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		double depth = cases[i].t - cases[i].land;
		double one = side_by_slices(cases[i].r, cases[i].side_deg, depth);
		struct groove g = { .shape = GROOVE_J, .thickness_mm = cases[i].t,
		    .gap_mm = 3,
			.land_mm = cases[i].land, .angle_deg = cases[i].side_deg,
			.radius_mm = cases[i].r };

		assert_null(groove_fault(&g));
		check(groove_mm2(&g), 3 * cases[i].t + one, 1e-4 * one);
		g.shape = GROOVE_U;
		g.angle_deg *= 2;
		check(groove_mm2(&g), 3 * cases[i].t + 2 * one, 1e-4 * one);
	}
}

/* Rows 8 to 10 of the data book's elements: .212 + 2 x .245 and so on, lb/ft. */
static void published_weights(void **state)
{
	static const struct { double t_in, deg, gap_in, cap_w, cap_h, lb_ft,
	    within; } rows[] = {
		{ 0.5, 60, 0.125, 0, 0, 0.702, 0.002 },
		{ 1, 45, 0.25, 0, 0, 2.255, 0.003 },
		{ 0.375, 60, 0.125, 0.5, 0.0625, 0.506, 0.002 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct groove g = { .shape = GROOVE_V,
		    .thickness_mm = rows[i].t_in * 25.4,
			.gap_mm = rows[i].gap_in * 25.4, .angle_deg = rows[i].deg };
		double mm2 = groove_mm2(&g) + cap_mm2(rows[i].cap_w * 25.4,
		    rows[i].cap_h * 25.4);

		check(stock_lb_ft(mm2, 0.283), rows[i].lb_ft, rows[i].within);
	}
}

/* By hand: 3 x 19 + 17^2 tan 30; + 17^2 / 2. */
static void by_hand(void **state)
{
	struct groove g = { .shape = GROOVE_V, .thickness_mm = 19, .gap_mm = 3,
	    .land_mm = 2,
		.angle_deg = 60 };

	(void)state;
	check(groove_mm2(&g), 57 + 289 * 0.5773502691896, 1e-9);
	g.shape = GROOVE_BEVEL;
	g.angle_deg = 45;
	check(groove_mm2(&g), 57 + 144.5, 1e-9);
	g.shape = GROOVE_SQUARE;
	check(groove_mm2(&g), 57, 1e-9);
}

/* Double V of 1 in with 1/8 in gap, 60 degrees, front 2/3: 1/8 + 2 x 2/3 tan 30 = 0.8948
 * in at the front, 1/8 + 2 x 1/3 tan 30 = 0.5099 in at the back; a single form has its gap
 * there. */
static void widths_of_both_faces(void **state)
{
	struct groove g = { .shape = GROOVE_V, .both = true, .thickness_mm = 25.4,
		.gap_mm = 3.175, .angle_deg = 60, .front_mm = 25.4 * 2 / 3 };

	(void)state;
	check(groove_width_mm(&g) / 25.4, 0.89480035893, 1e-9);
	check(groove_back_width_mm(&g) / 25.4, 0.50990017946, 1e-9);
	g.both = false;
	check(groove_back_width_mm(&g), 3.175, 1e-12);
}

/* Two half-depth Vs of 10 mm each side of 20 mm at 60 degrees: 2 x 100 tan 30. */
static void double_forms(void **state)
{
	struct groove g = { .shape = GROOVE_V, .both = true, .thickness_mm = 20,
		.angle_deg = 60 };

	(void)state;
	check(groove_mm2(&g), 200 * 0.57735026919, 1e-6);
	check(groove_width_mm(&g), 20 * 0.57735026919, 1e-6);
	g.front_mm = 15; /* (225 + 25) tan 30 */
	check(groove_mm2(&g), 250 * 0.57735026919, 1e-6);
	g.front_mm = 20;
	assert_non_null(groove_fault(&g));
	/* 90 degrees at the back: 100 tan 30 + 100 tan 45, 2 x 10 tan 45 wide. */
	g.front_mm = 10;
	g.back_deg = 90;
	assert_null(groove_fault(&g));
	check(groove_mm2(&g), 157.735026919, 1e-6);
	check(groove_back_width_mm(&g), 20, 1e-9);
	check(groove_width_mm(&g), 20 * 0.57735026919, 1e-6);
	g.back_deg = 180;
	assert_non_null(groove_fault(&g));
	/* An arc of its own at the back has to fit there. */
	g = (struct groove){ .shape = GROOVE_U, .both = true, .thickness_mm = 20,
		.angle_deg = 20, .radius_mm = 3, .back_radius_mm = 13 };
	assert_non_null(groove_fault(&g));
}

static void faults(void **state)
{
	struct groove g = { .shape = GROOVE_V, .thickness_mm = 10, .angle_deg = 60 };

	(void)state;
	assert_null(groove_fault(&g));
	g.angle_deg = 180;
	assert_non_null(groove_fault(&g));
	g.angle_deg = NAN;
	assert_non_null(groove_fault(&g));
	g.angle_deg = 60;
	g.land_mm = 10;
	assert_non_null(groove_fault(&g));
	g.land_mm = 0;
	g.thickness_mm = 0;
	assert_non_null(groove_fault(&g));
	g = (struct groove){ .shape = GROOVE_U, .thickness_mm = 10, .angle_deg = 20,
		.radius_mm = 20 };
	assert_non_null(groove_fault(&g));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(arcs_against_slices),
		cmocka_unit_test(published_weights),
		cmocka_unit_test(by_hand),
		cmocka_unit_test(widths_of_both_faces),
		cmocka_unit_test(double_forms),
		cmocka_unit_test(faults),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
