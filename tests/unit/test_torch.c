/* Torch settings (all from memory): rows in order, and what every one must keep to. */
#include "reckon/torch.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void rows_hold(void **state)
{
	double before_ipm = 1e9;

	(void)state;
	for (double t_in = 0.0625; t_in <= 4; t_in += 0.0625) {
		const struct torch_setting *s = torch_find(t_in * 25.4);

		assert_non_null(s);
		assert_true(t_in > s->lo_in - 1e-9 && t_in <= s->hi_in + 1e-9);
		/* 29 CFR 1910.253(a)(2). */
		assert_true(s->fuel_hi_psig <= ACETYLENE_MOST_PSIG);
		assert_true(s->oxygen_lo_psig < s->oxygen_hi_psig);
		assert_true(s->speed_hi_ipm <= before_ipm);
		assert_int_equal(seen_of(s->verified), SEEN_MEMORY);
		before_ipm = s->speed_hi_ipm;
	}
	assert_null(torch_find(4.01 * 25.4));
	assert_string_equal(torch_find(12.7)->tip, "0");
	assert_string_equal(torch_find(12.8)->tip, "1");
}

static void withdrawal(void **state)
{
	(void)state;
	assert_true(fabs(acetylene_most_cfh(150, false) - 15) < 1e-12);
	assert_true(fabs(acetylene_most_cfh(150, true) - 10) < 1e-12);
	assert_true(fabs(acetylene_older_cfh(140) - 20) < 1e-12);
	assert_int_equal(acetylene_cylinders(15, 15), 1);
	assert_int_equal(acetylene_cylinders(15.1, 15), 2);
	assert_int_equal(acetylene_cylinders(45, 15), 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(rows_hold),
		cmocka_unit_test(withdrawal),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
