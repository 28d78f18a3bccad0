/* ASME IX 2010 QW-466.1: the printed jig for 3/8 in specimens (A 1-1/2, C 2-3/8), the
 * formulas A = 4 t and C = 6 t + 1/8, and note b, strain = 100 t / (A + t). */
#include "reckon/bend.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void the_printed_jig(void **state)
{
	double t = 0.375 * 25.4;

	(void)state;
	assert_true(fabs(bend_plunger_mm(t) - 1.5 * 25.4) < 1e-9);
	assert_true(fabs(bend_die_mm(1.5 * 25.4, t) - 2.375 * 25.4) < 1e-9);
	/* Other rows of the table, for t = 3/8: A 2-1/2, 3, 3-3/4 in. */
	assert_true(fabs(bend_die_mm(2.5 * 25.4, t) - 3.375 * 25.4) < 1e-9);
	assert_true(fabs(bend_die_mm(3 * 25.4, t) - 3.875 * 25.4) < 1e-9);
	assert_true(fabs(bend_die_mm(3.75 * 25.4, t) - 4.625 * 25.4) < 1e-9);
}

static void thinner_specimens(void **state)
{
	double t = 0.25 * 25.4;

	(void)state;
	assert_true(fabs(bend_plunger_mm(t) - 25.4) < 1e-9);
	assert_true(fabs(bend_die_mm(bend_plunger_mm(t), t) - (6 * 0.25 + 0.125) * 25.4) <
	    1e-9);
}

static void strains(void **state)
{
	static const struct { double a_in, t_in, percent, within; } cases[] = {
		{ 1.5, 0.375, 20.0, 0.01 },      /* QW-466.1 note b: 4t gives 20 % */
		{ 2.5, 0.375, 13.04, 0.01 },
		{ 2.0625, 0.125, 5.71, 0.01 },
		{ 2.0, 0.375, 15.8, 0.05 },
		{ 3.75, 0.375, 9.1, 0.05 },
		{ 1.5, 0.280, 15.7, 0.05 },      /* NPS 6 schedule 40 wall on a 1-1/2 plunger */
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		assert_true(fabs(bend_strain_percent(cases[i].a_in * 25.4,
		    cases[i].t_in * 25.4) - cases[i].percent) <= cases[i].within);
}

static void thickness_for_a_strain(void **state)
{
	(void)state;
	assert_true(fabs(bend_thickness_mm(1.5 * 25.4, 20) - 0.375 * 25.4) < 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_printed_jig),
		cmocka_unit_test(thinner_specimens),
		cmocka_unit_test(strains),
		cmocka_unit_test(thickness_for_a_strain),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
