/* Words of facts with their quantities in both units. Conversions by hand: (50 - 32)
 * 5/9 = 10, 25 cfh x 28.3168 / 60 = 11.8 L/min, 25 psi x 6.894757 = 172 kPa. */
#include "sheets/both_units.h"

#include "sheets/edition.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void words_keep_their_order(void **state)
{
	static const struct { const char *in, *out; } cases[] = {
		{ "50 degF least", "50 \xC2\xB0" "F [10 \xC2\xB0" "C] least" },
		{ "none above 32 degF; plate colder than that is warmed to 70 degF",
		    "none above 32 \xC2\xB0" "F [0 \xC2\xB0" "C]; plate colder than that is "
		    "warmed to 70 \xC2\xB0" "F [21 \xC2\xB0" "C]" },
		{ "75/25 argon/CO2 25 cfh", "75/25 argon/CO2 25 cfh [11.8 L/min]" },
		{ "steel strip 1/4 x 1 in", "steel strip 1/4 x 1 in [6.4 x 25.4 mm]" },
		{ "SMAW, E6010 1/8 in, DC+ 75-95 A, up, deposit 0.125 in",
		    "SMAW, E6010 1/8 in [3.2 mm], DC+ 75-95 A, up, deposit 0.125 in [3.18 mm]" },
		{ "3-1/2 h from first arc", "3-1/2 h from first arc" },
		{ "250-300 degF, 4 h out",
		    "250 to 300 \xC2\xB0" "F [121 to 149 \xC2\xB0" "C], 4 h out" },
		{ "1/2, 7/8, 1-1/8 in", "1/2, 7/8, 1-1/8 in" },
		{ "1/4 in [6.4 mm] and up", "1/4 in [6.4 mm] and up" },
		{ "none", "none" },
		{ "2 of 3", "2 of 3" },
		{ "", "" },
		{ "EWLa-2, 3/32 in", "EWLa-2, 3/32 in [2.4 mm]" },
		{ "10 mm", "0.394 in [10 mm]" },
		{ "3/16 in, +1/16 -0 in, gauge",
		    "3/16 in [4.8 mm], +1/16 -0 in [+1.6 -0 mm], gauge" },
		{ "C+2", "C+2" },
		{ "nothing within 35 ft, 5 ft high", "nothing within 35 ft [10.7 m], 5 ft [1.5 m] high" },
	};
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		str out = both_units(a, NULL, str_of(cases[i].in));

		if (!str_eq(out, str_of(cases[i].out)))
			fail_msg("\"%s\" became \"%.*s\"", cases[i].in, STR_ARG(out));
	}
	arena_free(a);
}

/* The Spanish "a" between two figures is no ampere: 1/16 in is 1.6 mm, 1/8 in 3.2 mm. */
static void ranges_of_another_language(void **state)
{
	static const struct { const char *in, *out; } cases[] = {
		{ "1/16 a 1/8 in, galga", "1/16 a 1/8 in [1.6 a 3.2 mm], galga" },
		{ "pasos 1 a 12 en orden", "pasos 1 a 12 en orden" },
		{ "de 115 A a 140 A", "de 115 A a 140 A" },
		{ "a no más de 1/32 in", "a no más de 1/32 in [0.8 mm]" },
	};
	struct edition e = { .choice.language = language_find(STR("es")) };
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		str out = both_units(a, &e, str_of(cases[i].in));

		if (!str_eq(out, str_of(cases[i].out)))
			fail_msg("\"%s\" became \"%.*s\"", cases[i].in, STR_ARG(out));
	}
	arena_free(a);
}

static void values(void **state)
{
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	assert_true(str_eq(value_text(a, NULL, QUANTITY_PRESSURE, 25, 30),
	    STR("25-30 psi [172-207 kPa]")));
	assert_true(str_eq(value_text(a, NULL, QUANTITY_FLOW, 35, 35), STR("35 cfh [16.5 L/min]")));
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(words_keep_their_order),
		cmocka_unit_test(ranges_of_another_language),
		cmocka_unit_test(values),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
