/* The Navy and FAA constants against the exact rule: K of 0.0078 x 180 / pi = 0.447. The
 * Navy's 0.0173 for pi/180 is 0.9 percent short on the radius, the FAA's 0.01743 0.2. */
#include "reckon/fold.h"
#include "reckon/pattern.h"

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

static void constants(void **state)
{
	(void)state;
	/* By hand: (.0173 x .125 + .0078 x .125) x 90, (.01743 x .16 + .0078 x .04) x
	 * 90. */
	check(fold_allowance_navy_mm(3.175, 3.175, 90) / 25.4, 0.282375, 1e-9);
	check(fold_allowance_faa_mm(0.16 * 25.4, 0.04 * 25.4, 90) / 25.4, 0.279072, 1e-9);
	for (double r = 1; r < 20; r *= 1.7) {
		double exact = brake_allowance_mm(90, r, 0.4469, 3);

		check(fold_allowance_navy_mm(r, 3, 90) / exact, 1, 0.009);
		check(fold_allowance_faa_mm(r, 3, 90) / exact, 1, 0.002);
	}
}

/* FAA-H-8083-31 chapter 4, U-channel: setback .20, allowance .28 in (the latter from
 * memory, with the neutral line in the middle). */
static void u_channel(void **state)
{
	(void)state;
	check(brake_setback_mm(90, 0.16 * 25.4, 0.04 * 25.4) / 25.4, 0.2, 0.0005);
	check(brake_allowance_mm(90, 0.16 * 25.4, 0.5, 0.04 * 25.4) / 25.4, 0.28, 0.005);
}

static void k_by_radius(void **state)
{
	(void)state;
	check(fold_k(3, 3), 0.33, 0);
	check(fold_k(3.1, 3), 0.40, 0);
	check(fold_k(9, 3), 0.40, 0);
	check(fold_k(9.1, 3), 0.50, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(constants),
		cmocka_unit_test(u_channel),
		cmocka_unit_test(k_by_radius),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
