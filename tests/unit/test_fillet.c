/* Least legs: AWS D1.1 Table 5.8 (2010), 5.7 (2015), 7.7 (2020) with notes a, b, c.
 * Undersize: Table 6.1 (to 2015), 8.1 (2020) item 6. Lap edges: 4.4.2.9 (2020) and
 * AISC 360 J2.2b. Throats: geometry, with angles whose cosines are known. */
#include "reckon/fillet.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void check_in(double mm, double in)
{
	if (fabs(mm - in * 25.4) > 1e-9)
		print_error("%.6f in, not %.6f\n", mm / 25.4, in);
	assert_true(fabs(mm - in * 25.4) <= 1e-9);
}

static double least_mm(double thin_in, double thick_in, bool low_hydrogen, bool cyclic)
{
	return fillet_least_leg(thin_in * 25.4, thick_in * 25.4, low_hydrogen, cyclic).mm;
}

static void least_legs_by_band(void **state)
{
	(void)state;
	check_in(least_mm(0.25, 0.25, true, false), 1.0 / 8);
	check_in(least_mm(0.2501, 0.2501, true, false), 3.0 / 16);
	check_in(least_mm(0.5, 0.5, true, false), 3.0 / 16);
	check_in(least_mm(0.5001, 0.5001, true, false), 1.0 / 4);
	check_in(least_mm(0.75, 0.75, true, false), 1.0 / 4);
	check_in(least_mm(0.7501, 0.7501, true, false), 5.0 / 16);
	check_in(least_mm(2, 2, true, false), 5.0 / 16);
}

static void the_thinner_part_governs_with_low_hydrogen(void **state)
{
	(void)state;
	check_in(least_mm(0.25, 1, true, false), 1.0 / 8);
	check_in(least_mm(0.375, 1, false, false), 5.0 / 16);
	/* No more than the thinner part. */
	check_in(least_mm(0.25, 1, false, false), 1.0 / 4);
	check_in(least_mm(0.0747, 1, true, false), 0.0747);
}

static void cyclic_loading_has_a_floor(void **state)
{
	(void)state;
	check_in(least_mm(0.25, 0.25, true, true), 3.0 / 16);
	check_in(least_mm(1, 1, true, true), 5.0 / 16);
	assert_int_equal(fillet_least_leg(6.35, 6.35, true, true).seen, SEEN_PAGE);
}

static void largest_leg_on_a_lap_edge(void **state)
{
	(void)state;
	check_in(fillet_largest_lap_leg(0.1875 * 25.4).mm, 0.1875);
	check_in(fillet_largest_lap_leg(0.25 * 25.4).mm, 0.1875);
	check_in(fillet_largest_lap_leg(0.375 * 25.4).mm, 0.3125);
	assert_int_equal(fillet_largest_lap_leg(9.525).seen, SEEN_MEMORY);
}

static void undersize_by_leg(void **state)
{
	(void)state;
	check_in(fillet_undersize(0.125 * 25.4).mm, 1.0 / 16);
	check_in(fillet_undersize(0.1875 * 25.4).mm, 1.0 / 16);
	/* Between the rows of 3/16 and 1/4 the smaller allowance. */
	check_in(fillet_undersize(0.21875 * 25.4).mm, 1.0 / 16);
	check_in(fillet_undersize(0.25 * 25.4).mm, 3.0 / 32);
	check_in(fillet_undersize(0.3125 * 25.4).mm, 1.0 / 8);
	check_in(fillet_undersize(25.4).mm, 1.0 / 8);
}

static void throats(void **state)
{
	(void)state;
	/* A leg of 1/4 in has a throat of 0.1768 in; skewed to 60 degrees, 0.2165 in. */
	assert_true(fabs(fillet_throat_mm(6.35) / 25.4 - 0.1768) <= 0.0001);
	assert_true(fabs(fillet_throat_skew_mm(6.35, 60) / 25.4 - 0.2165) <= 0.0001);
	/* cos 60 is one half; 3-4-5. */
	assert_true(fabs(fillet_throat_skew_mm(10, 120) - 5) < 1e-9);
	assert_true(fabs(fillet_throat_unequal_mm(3, 4, 90) - 2.4) < 1e-12);
	assert_true(fabs(fillet_throat_skew_mm(8, 90) - fillet_throat_mm(8)) < 1e-9);
	assert_true(fabs(fillet_throat_unequal_mm(8, 8, 90) - fillet_throat_mm(8)) < 1e-9);
	assert_true(fillet_throat_unequal_mm(0, 0, 90) == 0);
}

/* Least distance from the root to the flat face, sought along the face in small steps:
 * unequal legs between skewed parts too. */
static void throats_by_search(void **state)
{
	static const struct { double a, b, deg; } rows[] = {
		{ 3, 4, 90 }, { 6, 9, 60 }, { 6, 9, 120 }, { 5, 5, 75 }, { 3, 9, 60 },
		{ 9, 3, 45 }, { 8, 7, 135 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double a = rows[i].a, b = rows[i].b, rad = rows[i].deg * acos(-1) / 180;
		double least = a;

		for (int k = 0; k <= 200000; k++) {
			double s = k / 200000.0;
			double x = a + s * (b * cos(rad) - a), y = s * b * sin(rad);

			least = fmin(least, hypot(x, y));
		}
		assert_true(fabs(fillet_throat_unequal_mm(a, b, rows[i].deg) - least) < 1e-8);
	}
	assert_true(fabs(fillet_throat_unequal_mm(5, 5, 75) -
	    fillet_throat_skew_mm(5, 75)) < 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(least_legs_by_band),
		cmocka_unit_test(the_thinner_part_governs_with_low_hydrogen),
		cmocka_unit_test(cyclic_loading_has_a_floor),
		cmocka_unit_test(largest_leg_on_a_lap_edge),
		cmocka_unit_test(undersize_by_leg),
		cmocka_unit_test(throats),
		cmocka_unit_test(throats_by_search),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
