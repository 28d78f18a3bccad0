/* Shear, punch and roll: estimates from memory checked by hand, and what they must keep
 * to. */
#include "reckon/machine.h"

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

static void shear(void **state)
{
	(void)state;
	check(shear_most_mm(6.35, metal_find(STR("mild steel"))), 6.35, 1e-12);
	check(shear_most_mm(6.35, metal_find(STR("304"))), 6.35 * 0.67, 1e-12);
	check(shear_most_mm(6.35, metal_find(STR("aluminum"))), 6.35 * 1.25, 1e-12);
	check(shear_factor(metal_find(STR("A572-50"))), 60.0 / 65, 1e-12);
	check(shear_factor(metal_find(STR("copper"))), 0, 0);
}

/* 1 in through 1/4 in at 50 ksi: pi x 1 x .25 x 25 tons/in2 = 19.635 tons. */
static void punch(void **state)
{
	(void)state;
	check(punch_round_tons(25.4, 6.35, 50), 19.634954, 1e-5);
	check(punch_tons(4 * 25.4, 6.35, 50), 25, 1e-9);
	check(punch_most_mm(19.634954, 6.35, 50), 25.4, 1e-4);
}

static void roll(void **state)
{
	(void)state;
	check(roll_most_mm(6.35, 1219.2, 1219.2, 60), 6.35, 1e-12);
	check(roll_most_mm(6.35, 1219.2, 609.6, 60), 6.35,
	    1e-12);   /* never over rated */
	check(roll_most_mm(6.35, 1219.2, 1219.2, 240), 3.175,
	    1e-12); /* 4 x strength: half */
	check(roll_least_diameter_mm(100), 150, 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(shear),
		cmocka_unit_test(punch),
		cmocka_unit_test(roll),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
