/* Metals by the words of a sheet. */
#include "reckon/metal.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static void check_name(const char *words, const char *name)
{
	const struct metal *m = metal_find(str_of(words));

	if (!name) {
		assert_null(m);
		return;
	}
	assert_non_null(m);
	assert_string_equal(m->name, name);
}

static void by_words(void **state)
{
	(void)state;
	check_name("A36", "A36");
	check_name("A36 plate", "A36");
	check_name(" a36 sheet", "A36");
	check_name("A363", NULL);
	check_name("304L sheet", "304L");
	check_name("304 stainless", "304");
	check_name("stainless steel", "304");
	check_name("steel", "mild steel");
	check_name("aluminum", "aluminum");
	check_name("6061-T6 plate", "6061-T6");
	check_name("A572 gr 50", "A572-50");
	check_name("", NULL);
	check_name("wood", NULL);
}

static void figures_are_sane(void **state)
{
	size_t n = 0;

	(void)state;
	for (const struct metal *m; (m = metal_at(n)); n++) {
		assert_true(m->density_lb_in3 > 0.09 && m->density_lb_in3 < 0.33);
		assert_true(strlen(m->verified) > 0 && strlen(m->density_verified) > 0);
		assert_ptr_equal(metal_find(str_of(m->name)), m);
	}
	assert_true(n > 10);
	/* 490 lb/ft3, Iowa DOT IM 569. */
	assert_true(fabs(metal_find(STR("A36"))->density_lb_in3 * 1728 - 490) < 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(by_words),
		cmocka_unit_test(figures_are_sane),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
