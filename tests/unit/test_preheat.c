/* AWS D1.1 prequalified preheat (three copies, one of them US Army TI 809-26 Table 3-1),
 * at and beyond each boundary; IIW carbon equivalent against two published pages. */
#include "reckon/preheat.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void check_row(const char *category, double t_in, double f, double c)
{
	const struct preheat *r = preheat_find(str_of(category), t_in * 25.4);

	assert_non_null(r);
	assert_true(r->least_f == f && r->printed_c == c);
}

static void rows(void **state)
{
	(void)state;
	check_row("A", 0.125, 32, 0);
	check_row("A", 0.75, 32, 0);
	check_row("A", 0.751, 150, 65);
	check_row("A", 1.5, 150, 65);
	check_row("A", 1.501, 225, 110);
	check_row("A", 2.5, 225, 110);
	check_row("A", 2.501, 300, 150);
	check_row("B", 1, 50, 10);       /* A36, 1 in, low hydrogen: 50 F, not 150 */
	check_row("B", 2, 150, 65);
	check_row("B", 12, 225, 110);
	check_row("C", 0.5, 50, 10);
	check_row("C", 3, 300, 150);
	check_row("D", 3, 32, 0);
	assert_null(preheat_find(STR("A"), 0.124 * 25.4));
	assert_null(preheat_find(STR("E"), 25.4));
}

static void categories(void **state)
{
	const char *verified = NULL;

	(void)state;
	assert_string_equal(preheat_category(STR("A36"), false, &verified), "A");
	assert_string_equal(preheat_category(STR("a53 b"), true, &verified), "B");
	assert_string_equal(preheat_category(STR("A572-50"), false, &verified), "");
	assert_string_equal(preheat_category(STR("A572-65"), true, &verified), "C");
	assert_null(preheat_category(STR("A514"), true, &verified));
}

static void between_passes(void **state)
{
	(void)state;
	assert_true(interpass_find(FAMILY_STAINLESS)->most_f == 350);
	assert_true(interpass_find(FAMILY_STEEL)->most_f == 0);
	assert_null(interpass_find(FAMILY_ALUMINUM));
}

static void carbon(void **state)
{
	(void)state;
	/* Steel weldability page, A572-50: 0.431; carbon-equivalent tutorial: 0.447. */
	assert_true(fabs(carbon_equivalent(.15, 1.20, .10, .05, .02, .50,
	    .20) - .431) < .0005);
	assert_true(fabs(carbon_equivalent(.18, 1.2, .2, .05, 0, .1,
	    .15) - .447) < .0005);
}

/* What a sheet writes: the form behind the steel's name. */
static void steels_by_their_words(void **state)
{
	struct preheat_wanted p;

	(void)state;
	assert_true(preheat_wanted(STR("A36 hot-rolled plate"), true, 25.4, &p));
	assert_true(p.row->least_f == 50 && str_eq(p.steel, STR("A36")));
	assert_int_equal(p.seen, SEEN_PAGE);
	assert_true(preheat_wanted(STR("A53 B pipe"), false, 25.4, &p));
	assert_true(p.row->least_f == 150 && str_eq(p.steel, STR("A53 B")));
	assert_true(preheat_wanted(STR("A572-50"), true, 25.4, &p));
	assert_int_equal(p.seen, SEEN_MEMORY);
	assert_false(preheat_wanted(STR("A572-50"), false, 25.4, &p));
	assert_false(preheat_wanted(STR("A106 pipe"), true, 25.4, &p));
	assert_false(preheat_wanted(STR("304L plate"), true, 25.4, &p));
	assert_false(preheat_wanted(STR("A36 plate"), true, 2, &p));
	assert_false(preheat_wanted(STR(""), true, 25.4, &p));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(steels_by_their_words),
		cmocka_unit_test(rows),
		cmocka_unit_test(categories),
		cmocka_unit_test(between_passes),
		cmocka_unit_test(carbon),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
