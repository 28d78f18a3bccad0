/* Layout of bend strips: widths as told of AWS D1.1 Fig. 6.8 (2020) in a code forum, the
 * rest by counting inches. */
#include "reckon/strips.h"

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

static void widths(void **state)
{
	(void)state;
	check(strip_width_mm(STRIP_FACE_ROOT, 0), 38.1, 1e-9);
	check(strip_width_mm(STRIP_FACE_ROOT, 4 * 25.4), 25.4, 1e-9);
	check(strip_width_mm(STRIP_FACE_ROOT, 4.5 * 25.4), 38.1, 1e-9);
	check(strip_width_mm(STRIP_SIDE, 0), 9.525, 1e-9);
	check(strip_width_mm(STRIP_NICK, 8.625 * 25.4), 25.4, 1e-9);
}

/* 8 in of weld, 1 in off each end, two strips of 1-1/2: 3 in left, an inch before,
 * between and after them. */
static void plate(void **state)
{
	const double in = 25.4;
	struct strip s;

	(void)state;
	check(strips_length_mm(2, 1.5 * in, in, 0.125 * in), 5.375 * in, 1e-9);
	s = strip_on_plate(0, 2, 8 * in, 1.5 * in, in);
	check(s.from_mm, 2 * in, 1e-9);
	check(s.to_mm, 3.5 * in, 1e-9);
	s = strip_on_plate(1, 2, 8 * in, 1.5 * in, in);
	check(s.from_mm, 4.5 * in, 1e-9);
	check(s.to_mm, 6 * in, 1e-9);
}

/* Strips of 1-1/2, 1 and 1/2 in on 9 in: 4 in left, an inch beside each; and alike ones as
 * one by one. */
static void plate_of_several_widths(void **state)
{
	const double in = 25.4, width[3] = { 1.5 * in, in, 0.5 * in };
	const double alike[3] = { 20, 20, 20 };
	struct strip s[3];

	(void)state;
	strips_on_plate(width, 3, 9 * in, in, s);
	check(s[0].from_mm, 2 * in, 1e-9);
	check(s[1].from_mm, 4.5 * in, 1e-9);
	check(s[2].from_mm, 6.5 * in, 1e-9);
	check(s[2].to_mm, 7 * in, 1e-9);
	strips_on_plate(alike, 3, 200, 25, s);
	for (size_t i = 0; i < 3; i++)
		check(s[i].from_mm, strip_on_plate(i, 3, 200, 20, 25).from_mm, 1e-9);
}

static void strips_never_overlap(void **state)
{
	(void)state;
	for (size_t n = 1; n < 8; n++) {
		double length = strips_length_mm(n, 38.1, 25.4, 3.2), end = 25.4;

		for (size_t i = 0; i < n; i++) {
			struct strip s = strip_on_plate(i, n, length, 38.1, 25.4);

			assert_true(s.from_mm >= end + 3.2 - 1e-9);
			end = s.to_mm;
		}
		assert_true(end + 3.2 <= length - 25.4 + 1e-9);
	}
}

static void pipe(void **state)
{
	struct strip s = strip_on_pipe(1, 4, 100, 20, 45);

	(void)state;
	check(s.center_deg, 135, 1e-9);
	check((s.from_mm + s.to_mm) / 2, 0.375 * 314.159265, 1e-5);
	check(s.to_mm - s.from_mm, 20, 1e-9);
	check(strips_round_mm(4, 38.1, 3.2), 165.2, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(widths),
		cmocka_unit_test(plate),
		cmocka_unit_test(plate_of_several_widths),
		cmocka_unit_test(strips_never_overlap),
		cmocka_unit_test(pipe),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
