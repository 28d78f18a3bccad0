/* 34 CFR 600.2: 3 h a week, 15 weeks or 10 to 12: 45 h a semester credit, 30 to 36 a
 * quarter credit. 34 CFR 668.8(l): 30 and 20 clock hours. */
#include "reckon/credit.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void hours(void **state)
{
	(void)state;
	assert_true(fabs(credit_work_h(1, 15) - 45) < 1e-12);
	assert_true(fabs(credit_work_h(1, 10) - 30) < 1e-12);
	assert_true(fabs(credit_work_h(5, 12) - 180) < 1e-12);
	assert_true(fabs(credit_of_clock_hours(900, false) - 30) < 1e-12);
	assert_true(fabs(credit_of_clock_hours(100, true) - 5) < 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hours),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
