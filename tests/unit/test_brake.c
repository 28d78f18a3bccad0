/* Press brake: a published example in tons, one in newtons, and the choice of a die. */
#include "reckon/brake.h"

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

static void published(void **state)
{
	(void)state;
	/* Press-brake guide: 1/8 in, V 1 in, 4 ft of mild steel, 36 tons. */
	check(brake_tons_ft(3.175, 25.4) * 4, 36, 0.1);
	/* Worked example: UTS 450 MPa, 1 m, 3 mm, V 24 mm: 270 kN, by another constant
	 * (1.6, where 575 for 60 ksi is 1.597); 1 MPa = 0.1450377 ksi, 1 ton =
	 * 8.896443 kN. */
	check(brake_tons_ft(3, 24) * (1000 / 304.8) * (450 * 0.1450377 / 60) * 8.896443,
	    270, 270 * 0.005);
}

static void factors(void **state)
{
	(void)state;
	check(brake_factor(metal_find(STR("A36"))), 1, 0);
	check(brake_factor(metal_find(STR("304"))), 1.5, 0);
	check(brake_factor(metal_find(STR("6061-T6"))), 0.75, 0);
	check(brake_factor(metal_find(STR("A572-50"))), 65.0 / 60, 1e-12);
	check(brake_factor(metal_find(STR("copper"))), 0, 0);
}

static void openings(void **state)
{
	const double owned[] = { 0.5 * 25.4, 25.4, 1.5 * 25.4, 2 * 25.4 };

	(void)state;
	check(brake_opening_mm(12.7), 8 * 12.7, 1e-9);
	check(brake_opening_mm(12.8), 128, 1e-9);
	check(brake_flange_mm(25.4), 17.78, 1e-9);
	assert_int_equal(brake_choose(owned, 4, 3.175), 1);  /* 1/8: 1 in */
	assert_int_equal(brake_choose(owned, 4, 6.35), 3);   /* 1/4: 2 in */
	assert_int_equal(brake_choose(owned, 4, 1.5), 0);    /* 8 t is 12 mm */
	assert_int_equal(brake_choose(owned, 4, 12.7), 4);   /* 6 t is 3 in: none */
	assert_int_equal(brake_choose(owned, 0, 3), 0);
	/* 8 and 12.5 lie alike by ratio about 10 mm: the wider. */
	assert_int_equal(brake_choose((const double[]){ 8, 12.5 }, 2, 1.25), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(published),
		cmocka_unit_test(factors),
		cmocka_unit_test(openings),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
