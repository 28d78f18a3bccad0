#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/geom.h"

#include <math.h>

static void near(double got, double want)
{
	if (!(fabs(got - want) < 1e-9))
		fail_msg("got %.12f, want %.12f", got, want);
}

static void test_points(void **state)
{
	(void)state;
	near(pt_length((pt){ 3, -4 }), 5);
	near(pt_unit((pt){ 0, 0 }).x, 1);
	near(pt_polar(2, 90).x, 0);
	near(pt_polar(2, 90).y, 2);
	near(pt_between((pt){ 1, 1 }, (pt){ 3, 5 }, 0.25).y, 2);
	near(geom_tan(45), 1);
}

static void test_meet(void **state)
{
	pt p;

	(void)state;
	assert_true(geom_meet((pt){ 0, 0 }, (pt){ 1, 1 }, (pt){ 4, 0 }, (pt){ -1, 1 }, &p));
	near(p.x, 2);
	near(p.y, 2);
	assert_false(geom_meet((pt){ 0, 0 }, (pt){ 1, 2 }, (pt){ 4, 0 }, (pt){ 2, 4 }, &p));
}

static void test_rectangles(void **state)
{
	rect a = { 0, 0, 10, 5 };

	(void)state;
	assert_true(rect_apart(a, (rect){ 10, 0, 5, 5 }));
	assert_false(rect_apart(a, (rect){ 9.9, 4.9, 5, 5 }));
	assert_true(rect_holds(a, (rect){ 0, 0, 10, 5 }));
	assert_false(rect_holds(a, (rect){ 0, 0, 10, 5.1 }));
	near(rect_grow(a, (pt){ -2, 7 }).w, 12);
	near(rect_grow(a, (pt){ -2, 7 }).h, 7);
	assert_true(rect_crossed(a, (pt){ -5, -5 }, (pt){ 15, 10 }));
	assert_false(rect_crossed(a, (pt){ -5, 5 }, (pt){ 15, 5 }));
	assert_false(rect_crossed(a, (pt){ -5, 2 }, (pt){ -0.1, 2 }));
	assert_true(rect_crossed(a, (pt){ 4, 2 }, (pt){ 4, 3 }));
}

static void test_cut(void **state)
{
	/* An L: the line at height 3 crosses one arm, at height 1 the whole foot. */
	const pt v[] = { { 0, 0 }, { 6, 0 }, { 6, 2 }, { 2, 2 }, { 2, 5 }, { 0, 5 } };
	double at[8];

	(void)state;
	assert_int_equal(geom_cut(v, 6, (pt){ 0, 3 }, (pt){ 1, 0 }, at, 8), 2);
	near(at[0], 0);
	near(at[1], 2);
	assert_int_equal(geom_cut(v, 6, (pt){ 0, 1 }, (pt){ 1, 0 }, at, 8), 2);
	near(at[1], 6);
	assert_int_equal(geom_cut(v, 6, (pt){ 0, 9 }, (pt){ 1, 0 }, at, 8), 0);
}

static void test_spread(void **state)
{
	const double want[] = { 10, 11, 40, 41 }, size[] = { 4, 4, 2, 2 };
	double got[4];

	(void)state;
	geom_spread(want, size, 4, got);
	/* Each pair is pushed apart evenly about its mean. */
	near(got[0], 8.5);
	near(got[1], 12.5);
	near(got[2], 39.5);
	near(got[3], 41.5);
	geom_spread((const double[]){ 5, 50 }, size, 2, got);
	near(got[0], 5);
	near(got[1], 50);
}

static void test_spread_chain(void **state)
{
	const double want[] = { 0, 0, 0, 7 }, size[] = { 4, 4, 4, 4 };
	double got[4];

	(void)state;
	geom_spread(want, size, 4, got);
	/* Three at 0 reach to 6 and meet the fourth: one block whose mean shift is nil. */
	for (int i = 1; i < 4; i++)
		near(got[i] - got[i - 1], 4);
	near(got[0] + got[1] + got[2] + got[3], 7);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_points), cmocka_unit_test(test_meet),
		cmocka_unit_test(test_rectangles), cmocka_unit_test(test_cut),
		cmocka_unit_test(test_spread), cmocka_unit_test(test_spread_chain),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
