/* ASME IX 2010 QW-466.1 note b: strain = 100 t / (A + t). */
#include "reckon/bend.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

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

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(strains),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
