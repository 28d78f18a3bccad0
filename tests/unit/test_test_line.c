/* Counts and strips of acceptance lines. Expected values are read off the lines. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "model/test_line.h"

#include "model/standard.h"

#define COUNT(v) (sizeof(v) / sizeof *(v))

static const struct standard shop = { .name = { "shop set 3", 10 } };

static struct test_counts counts(const char *text, const char *code, bool own)
{
	struct criterion c = { .text = str_of(text), .code = str_of(code),
		.standard = own ? &shop : NULL };

	return test_counts_of(&c);
}

static void counts_stand_before_the_set(void **state)
{
	static const struct { const char *text, *code; uint32_t total, a, b, c; } rows[] = {
		{ "2, D1.1-2020, plunger 1-1/2 in", "D1.1", 2, 0, 0, 0 },
		{ "2 of A, 1 of B, D1.1-2020", "D1.1", 3, 2, 1, 0 },
		{ "3, one of A and two of B, ASME IX-2023", "ASME IX", 3, 1, 2, 0 },
		{ "2 of C at 2G, 2 at 5G", "", 4, 0, 0, 4 },
		{ "2, at 60,000 psi or more; strips 1 in wide", "", 2, 0, 0, 0 },
		{ "1, at 58 ksi or more", "", 1, 0, 0, 0 },
		{ "2; shop limits, pores 2 % of the face", "", 2, 0, 0, 0 },
		{ "1, ISO 5817-2014 C", "ISO 5817", 1, 0, 0, 0 },
		{ "four, D1.1-2020", "D1.1", 4, 0, 0, 0 },
		{ "D1.1-2020", "D1.1", 0, 0, 0, 0 },
		{ "", "", 0, 0, 0, 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct test_counts t = counts(rows[i].text, rows[i].code, false);

		assert_int_equal(t.total, rows[i].total);
		assert_int_equal(t.of[0], rows[i].a);
		assert_int_equal(t.of[1], rows[i].b);
		assert_int_equal(t.of[2], rows[i].c);
		assert_int_equal(t.lettered, rows[i].a + rows[i].b + rows[i].c > 0);
	}
	assert_int_equal(counts("2, shop set 3", "", true).total, 2);
}

static struct test_strips strips(const char *text, bool pipe, size_t most)
{
	struct criterion c = { .text = str_of(text) };

	return test_strips_of(&c, pipe, most);
}

static void strips_say_width_and_places(void **state)
{
	struct test_strips t = strips("2; strips 3/4 in wide at 1:30 and 7:00", true, 8);

	(void)state;
	assert_true(t.width_mm == 19.05);
	assert_int_equal(t.nplaces, 2);
	assert_true(t.place[0] == 45 && t.place[1] == 210);
	t = strips("2; strips at 12:00, 3:00 and 6:00; no crack", true, 2);
	assert_true(t.width_mm == 0 && t.nplaces == 2 && t.place[0] == 0 &&
	    t.place[1] == 90);
	t = strips("2; strips 1 in wide at 2-1/2 in and 4 in", false, 8);
	assert_true(t.width_mm == 25.4 && t.nplaces == 2 && t.place[0] == 63.5 &&
	    t.place[1] == 101.6);
	t = strips("3; strips 3/4 in wide", true, 8);
	assert_true(t.width_mm == 19.05 && t.nplaces == 0);
	t = strips("2; two narrow ones at 13:00", true, 8);
	assert_true(t.width_mm == 0 && t.nplaces == 0);
	t = strips("2; strips at 13:00", true, 8);
	assert_true(t.nplaces == 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(counts_stand_before_the_set),
		cmocka_unit_test(strips_say_width_and_places),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
