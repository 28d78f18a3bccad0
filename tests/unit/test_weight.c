/* Weights per foot as printed by a filler metal data book (fillets, bevel triangles,
 * root rectangles, caps; 0.283 lb/in3) and Iowa DOT IM 569 (490 lb/ft3, 1.5 times). */
#include "reckon/groove.h"
#include "reckon/weight.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Pounds per foot of weld of an area in mm2. */
static double lb_ft(double mm2, double density)
{
	return weight_lb(mm2 * 12 * 25.4, density);
}

static double square_mm2(double t_mm, double gap_mm)
{
	struct groove g = { .shape = GROOVE_SQUARE, .thickness_mm = t_mm, .gap_mm = gap_mm };

	return groove_mm2(&g);
}

static double sloped_mm2(enum groove_shape shape, double t_mm, double gap_mm,
    double land_mm, double deg)
{
	struct groove g = { .shape = shape, .thickness_mm = t_mm, .gap_mm = gap_mm,
		.land_mm = land_mm, .angle_deg = deg };

	return groove_mm2(&g);
}

static void check(double got, double want, double within)
{
	if (fabs(got - want) > within)
		print_error("%.5f, not %.5f\n", got, want);
	assert_true(fabs(got - want) <= within);
}

static void fillets(void **state)
{
	static const struct { double leg_in, lb; } rows[] = {
		{ 1.0 / 8, 0.027 }, { 3.0 / 16, 0.060 }, { 1.0 / 4, 0.106 },
		{ 5.0 / 16, 0.166 }, { 3.0 / 8, 0.239 }, { 7.0 / 16, 0.325 },
		{ 1.0 / 2, 0.425 }, { 5.0 / 8, 0.664 }, { 3.0 / 4, 0.956 },
		{ 7.0 / 8, 1.300 }, { 1, 1.698 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double leg = rows[i].leg_in * 25.4;

		check(lb_ft(fillet_mm2(leg, leg), DENSITY_STEEL_WELD_LB_IN3), rows[i].lb, 0.001);
	}
	/* Iowa DOT IM 569: 1/4 and 1/2 in with half again for overweld. */
	check(1.5 * lb_ft(fillet_mm2(6.35, 6.35), DENSITY_STEEL_LB_IN3), 0.16, 0.005);
	check(1.5 * lb_ft(fillet_mm2(12.7, 12.7), DENSITY_STEEL_LB_IN3), 0.64, 0.005);
}

static void grooves(void **state)
{
	const double in = 25.4;

	(void)state;
	/* T 1/2, 60 V, gap 1/8: .212 + 2 x .245. T 1, 45 V, gap 1/4: .849 + 2 x .703. */
	check(lb_ft(sloped_mm2(GROOVE_V, in / 2, in / 8, 0, 60), DENSITY_STEEL_WELD_LB_IN3), 0.702,
	    0.002);
	check(lb_ft(sloped_mm2(GROOVE_V, in, in / 4, 0, 45), DENSITY_STEEL_WELD_LB_IN3), 2.255,
	    0.003);
	/* T 3/8, 60 V, gap 1/8, cap 1/2 x 1/16: .159 + 2 x .138 + .071. */
	check(lb_ft(sloped_mm2(GROOVE_V, 3 * in / 8, in / 8, 0, 60) + cap_mm2(in / 2, in / 16),
	    DENSITY_STEEL_WELD_LB_IN3), 0.506, 0.002);
	/* One bevel triangle: T 3/4 at 22.5 .396, at 30 .552; T 1 at 15 .456. */
	check(lb_ft(sloped_mm2(GROOVE_BEVEL, 3 * in / 4, 0, 0, 22.5), DENSITY_STEEL_WELD_LB_IN3),
	    0.396, 0.0025);
	check(lb_ft(sloped_mm2(GROOVE_BEVEL, 3 * in / 4, 0, 0, 30), DENSITY_STEEL_WELD_LB_IN3),
	    0.552, 0.0025);
	check(lb_ft(sloped_mm2(GROOVE_BEVEL, in, 0, 0, 15), DENSITY_STEEL_WELD_LB_IN3), 0.456,
	    0.0025);
	/* Root rectangles: T 3/4, gap 1/8 .318; T 1/2, gap 1/4 .425. */
	check(lb_ft(square_mm2(3 * in / 4, in / 8), DENSITY_STEEL_WELD_LB_IN3),
	    0.318, 0.001);
	check(lb_ft(square_mm2(in / 2, in / 4), DENSITY_STEEL_WELD_LB_IN3), 0.425,
	    0.001);
	check(lb_ft(cap_mm2(in, in / 8), DENSITY_STEEL_WELD_LB_IN3), 0.283, 0.001);
}

static void lands_shorten_the_slope(void **state)
{
	(void)state;
	/* 90 included: the slope is as wide as it is deep, 8 x 8 = 64; plus 10 x 3. */
	check(sloped_mm2(GROOVE_V, 10, 3, 2, 90), 94, 1e-9);
	/* One side of 45 degrees: half of that slope. */
	check(sloped_mm2(GROOVE_BEVEL, 10, 3, 2, 45), 62, 1e-9);
}

static void plates(void **state)
{
	(void)state;
	/* A cubic foot of steel is 490 lb by the structural convention. */
	check(weight_lb(304.8 * 304.8 * 304.8, DENSITY_STEEL_LB_IN3), 490, 1e-6);
}

static void efficiencies(void **state)
{
	(void)state;
	check(efficiency_find(STR("SMAW"), (str){ 0 }, 0)->percent, 62, 0);
	check(efficiency_find(STR("SMAW"), (str){ 0 }, 14 * 25.4)->percent, 62, 0);
	check(efficiency_find(STR("SMAW"), (str){ 0 }, 12 * 25.4)->percent, 59, 0);
	check(efficiency_find(STR("SMAW"), (str){ 0 }, 18 * 25.4)->percent, 66, 0);
	check(efficiency_find(STR("GMAW-S"), STR("CO2"), 0)->percent, 93, 0);
	check(efficiency_find(STR("GMAW"), STR("75Ar-25CO2"), 0)->percent, 96, 0);
	check(efficiency_find(STR("GMAW"), (str){ 0 }, 0)->percent, 93, 0);
	check(efficiency_find(STR("FCAW-G"), (str){ 0 }, 0)->percent, 86, 0);
	check(efficiency_find(STR("FCAW-S"), (str){ 0 }, 0)->percent, 78, 0);
	check(efficiency_find(STR("GTAW"), (str){ 0 }, 0)->percent, 94, 0);
	assert_null(efficiency_find(STR("OFC"), (str){ 0 }, 0));
	assert_null(efficiency_find(STR("GMAW"), STR("helium"), 0));
}

static void filler_to_buy(void **state)
{
	(void)state;
	/* 0.106 lb/ft for 20 ft at 62 %: 3.42 lb. 3 lb of weld from 4 lb is 75 %. */
	check(filler_bought_lb(0.106 * 20, 62), 3.42, 0.005);
	check(filler_bought_lb(3, 75), 4, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(fillets),
		cmocka_unit_test(grooves),
		cmocka_unit_test(lands_shorten_the_slope),
		cmocka_unit_test(plates),
		cmocka_unit_test(efficiencies),
		cmocka_unit_test(filler_to_buy),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
