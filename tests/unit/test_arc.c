/* Heat input and filler against published worked examples, named in each row. */
#include "reckon/arc.h"

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

static void heat_inputs(void **state)
{
	static const struct { double v, i, in_min, kj_in, within; } rows[] = {
		{ 29, 325, 12.5, 45.24, 0.01 },
		    /* welding inspection forum: 25 in in 2 min */
		{ 39, 425, 8.75, 113.65, 0.02 }, /* physics tutorial: 35 in in 4 min */
		{ 24, 120, 10, 17.280, 0.0005 }, /* trades maths study guide,
		    17280 J/in */
		/* Welding engineering tutorial, 2400 J/mm at 2.5 mm/s. */
		{ 20, 300, 2.5 * 60 / 25.4, 2.400 * 25.4, 0.0005 * 25.4 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		check(heat_input_kj_in(rows[i].v, rows[i].i, rows[i].in_min, 1),
		    rows[i].kj_in, rows[i].within);
	check(heat_input_kj_in(24, 120, 10, 0.8), 13.824, 1e-9);
}

static void times(void **state)
{
	(void)state;
	check(arc_hours_by_length(120 * 25.4, 12, 3), 0.5, 1e-12); /* 10 min x 3 */
	check(arc_hours_by_weight(5.1, 10.2), 0.5, 1e-12);
	check(clock_hours(0.5, 25), 2, 1e-12);
}

/* Data book: efficiency with stub = (length - stub) x bare / length. From the 14 in row
 * of 62 % the bare one is 72.33 %; a 3 in stub leaves 11/14 of it. */
static void stubs(void **state)
{
	(void)state;
	check(efficiency_at_stub(62, 14 * 25.4, 2 * 25.4), 62, 1e-9);
	check(efficiency_at_stub(62, 14 * 25.4, 3 * 25.4), 62 * 14.0 / 12 * 11 / 14,
	    1e-9);
	check(efficiency_after_spatter(80, 10), 72, 1e-12);
	/* Electrode need: .106 lb/ft x 20 ft at 62 %. */
	check(filler_bought_lb(0.106 * 20, 62), 3.42, 0.005);
}

/* NPS 6 schedule 40 bore, 3 ft: pi/4 (6.065/12)^2 x 3 = .6019 ft3 (bc). */
static void gases(void **state)
{
	(void)state;
	check(gas_ft3(35, 2), 70, 1e-12);
	check(purge_minutes(6.065 * 25.4, 36 * 25.4, 6, 20), 10.8338, 0.0005);
}

/* pi/4 0.035^2 x 300 in/min x 60 x 0.283 x 96 % (bc): 4.70496 lb/h. */
static void deposits(void **state)
{
	(void)state;
	check(wire_deposit_lb_h(0.035 * 25.4, 300, 0.283, 96), 4.70496, 0.00001);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(deposits),
		cmocka_unit_test(heat_inputs),
		cmocka_unit_test(times),
		cmocka_unit_test(stubs),
		cmocka_unit_test(gases),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
