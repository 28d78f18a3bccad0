/* Sections of stock by geometry; pipe by both weight rules against printed weights. */
#include "reckon/stock.h"

#include "reckon/pipe.h"
#include "reckon/weight.h"

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

static void sections(void **state)
{
	(void)state;
	check(stock_round_mm2(2), 3.14159265358979, 1e-12);
	check(stock_rectangle_mm2(3, 4), 12, 0);
	/* A hexagon is six triangles of side s / sqrt(3): 6 sqrt(3)/4 s^2/3. */
	check(stock_hexagon_mm2(10), 6 * sqrt(3) / 4 * 100 / 3, 1e-9);
	/* Outside less inside. */
	check(stock_round_tube_mm2(10, 1), stock_round_mm2(10) - stock_round_mm2(8),
	    1e-9);
	check(stock_square_tube_mm2(10, 8, 1), 10 * 8 - 8 * 6, 1e-12);
	check(stock_angle_mm2(10, 8, 1), 10 * 8 - 9 * 7, 1e-12);
}

/* 490 lb/ft3: a square foot of 1 in weighs 40.83 lb; 2 x 1/4 in flat 1.70 lb/ft. */
static void weights(void **state)
{
	(void)state;
	check(stock_lb_ft(stock_rectangle_mm2(304.8, 25.4), DENSITY_STEEL_LB_IN3),
	    490.0 / 12, 1e-9);
	check(stock_lb_ft(stock_rectangle_mm2(50.8, 6.35), DENSITY_STEEL_LB_IN3), 1.7014,
	    5e-5);
	/* Data book: 1/2 in fillet 0.424; Iowa DOT IM 569 with half again: 0.16, 0.64. */
	check(stock_lb_ft(fillet_mm2(12.7, 12.7), 0.283), 0.424, 0.001);
	check(1.5 * stock_lb_ft(fillet_mm2(6.35, 6.35), DENSITY_STEEL_LB_IN3), 0.16,
	    0.005);
	check(1.5 * stock_lb_ft(fillet_mm2(12.7, 12.7), DENSITY_STEEL_LB_IN3), 0.64,
	    0.005);
}

/* Shop charts, 10.68 rule: NPS 6 sch 40 18.97, NPS 8 sch 40 28.55, sch 80 43.39, NPS 3
 * 7.58 lb/ft. Three thousandths is the rounding of the charts and of NPS 6. */
static void old_pipe_rule(void **state)
{
	static const struct { double od_in, wall_in, lb_ft; } rows[] = {
		{ 6.625, 0.280, 18.97 }, { 8.625, 0.322, 28.55 }, { 8.625, 0.500, 43.39 },
		{ 3.5, 0.216, 7.58 }, { 2.375, 0.154, 3.65 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double od_mm = rows[i].od_in * 25.4, wall_mm = rows[i].wall_in * 25.4;

		check(stock_pipe_old_lb_ft(od_mm, wall_mm), rows[i].lb_ft, 0.0051);
		/* The newer rule weighs 10.69/10.68 of it. */
		check(pipe_weight_lb_ft(od_mm, wall_mm),
		    stock_pipe_old_lb_ft(od_mm, wall_mm) * 10.69 / 10.68, 1e-9);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sections),
		cmocka_unit_test(weights),
		cmocka_unit_test(old_pipe_rule),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
