/* 29 CFR 1910.133(a)(5), filter lenses for protection against radiant energy: least
 * shade by operation and arc current or plate thickness. At an end shared by two rows
 * the darker one is asked for. */
#include "reckon/shade.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

struct by_current { const char *process; double amps; int least; };

static void least_shades(void **state)
{
	static const struct by_current cases[] = {
		{ "SMAW", 59.9, 7 }, { "SMAW", 60, 8 }, { "SMAW", 140, 8 },
		{ "SMAW", 159.9, 8 }, { "SMAW", 160, 10 }, { "SMAW", 249, 10 },
		{ "SMAW", 250, 11 }, { "SMAW", 550, 11 },
		{ "GMAW", 59, 7 }, { "GMAW", 60, 10 }, { "GMAW-S", 130, 10 },
		{ "GMAW spray", 200, 10 }, { "FCAW-G", 250, 10 }, { "FCAW-S", 500, 10 },
		{ "GTAW", 49, 8 }, { "GTAW", 50, 8 }, { "GTAW", 149, 8 }, { "GTAW", 150, 10 },
		{ "GTAW", 500, 10 },
		{ "CAC-A", 499, 10 }, { "CAC-A", 500, 11 }, { "CAC-A", 1000, 11 },
		{ "PAW", 19, 6 }, { "PAW", 20, 8 }, { "PAW", 100, 10 }, { "PAW", 400, 11 },
		{ "PAC", 299, 8 }, { "PAC", 300, 9 }, { "PAC", 400, 10 }, { "PAC", 800, 10 },
		{ "TB", 0, 3 }, { "TS", 0, 2 }, { "CAW", 0, 14 }, { "smaw", 140, 8 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct shade *s = shade_by_current(str_of(cases[i].process),
		    cases[i].amps);

		assert_non_null(s);
		if (s->least != cases[i].least)
			print_error("%s %g\n", cases[i].process, cases[i].amps);
		assert_int_equal(s->least, cases[i].least);
	}
}

static void past_the_last_row_is_the_darkest(void **state)
{
	const struct shade *s = shade_by_current(STR("SMAW"), 700);

	(void)state;
	assert_int_equal(s->least, 11);
	assert_true(700 > s->hi);
}

static void torch_work_by_thickness(void **state)
{
	static const struct { const char *process; double in; int least; } cases[] = {
		{ "OFW", 0.1, 4 }, { "OFW", 0.125, 5 }, { "OFW", 0.4, 5 }, { "OFW", 0.5, 6 },
		{ "OFW", 2, 6 }, { "OFC", 0.375, 3 }, { "OFC", 0.99, 3 }, { "OFC", 1, 4 },
		{ "OFC", 5.9, 4 }, { "OFC", 6, 5 }, { "OFC", 12, 5 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		assert_int_equal(shade_by_thickness(str_of(cases[i].process),
		    cases[i].in * 25.4)->least, cases[i].least);
	assert_true(shade_is_by_thickness(STR("OFC")));
	assert_false(shade_is_by_thickness(STR("SMAW")));
}

static void no_row(void **state)
{
	(void)state;
	assert_null(shade_by_current(STR("grinding"), 100));
	assert_null(shade_by_current(STR("OFC"), 100));
	assert_null(shade_by_thickness(STR("SMAW"), 10));
	assert_null(shade_by_current(STR(""), 100));
	assert_null(shade_by_current(STR("TBX"), 100));
}

static void suggested_shades_are_recalled(void **state)
{
	(void)state;
	assert_int_equal(seen_of(shade_by_current(STR("SMAW"), 100)->verified),
	    SEEN_MEMORY);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(least_shades),
		cmocka_unit_test(past_the_last_row_is_the_darkest),
		cmocka_unit_test(torch_work_by_thickness),
		cmocka_unit_test(no_row),
		cmocka_unit_test(suggested_shades_are_recalled),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
