/* Thickness in inches and the millimeters that charts print: Manufacturers Standard
 * Gauge (steel), American or Brown & Sharpe (aluminum), U.S. Standard (stainless),
 * galvanized sheet gauge (inches only). */
#include "reckon/gauge.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

struct both { double in, mm; };

static const struct {
	unsigned gauge;
	struct both steel, aluminum, stainless;
	double galvanized_in;
} rows[] = {
	{ 7, { 0.1793, 4.554 }, { 0.1443, 3.665 }, { 0.1875, 4.762 }, 0 },
	{ 8, { 0.1644, 4.176 }, { 0.1285, 3.264 }, { 0.1719, 4.366 }, 0.168 },
	{ 9, { 0.1495, 3.797 }, { 0.1144, 2.906 }, { 0.1563, 3.970 }, 0.153 },
	{ 10, { 0.1345, 3.416 }, { 0.1019, 2.588 }, { 0.1406, 3.571 }, 0.138 },
	{ 11, { 0.1196, 3.038 }, { 0.0907, 2.304 }, { 0.1250, 3.175 }, 0.123 },
	{ 12, { 0.1046, 2.657 }, { 0.0808, 2.052 }, { 0.1094, 2.779 }, 0.108 },
	{ 13, { 0.0897, 2.278 }, { 0.0720, 1.829 }, { 0.0938, 2.383 }, 0.093 },
	{ 14, { 0.0747, 1.897 }, { 0.0641, 1.628 }, { 0.0781, 1.984 }, 0.079 },
	{ 15, { 0.0673, 1.709 }, { 0.0571, 1.450 }, { 0.0703, 1.786 }, 0.071 },
	{ 16, { 0.0598, 1.519 }, { 0.0508, 1.290 }, { 0.0625, 1.587 }, 0.064 },
	{ 17, { 0.0538, 1.367 }, { 0.0453, 1.151 }, { 0.0563, 1.430 }, 0.058 },
	{ 18, { 0.0478, 1.214 }, { 0.0403, 1.024 }, { 0.0500, 1.270 }, 0.052 },
	{ 19, { 0.0418, 1.062 }, { 0.0359, 0.912 }, { 0.0438, 1.113 }, 0.046 },
	{ 20, { 0.0359, 0.912 }, { 0.0320, 0.813 }, { 0.0375, 0.952 }, 0.040 },
	{ 21, { 0.0329, 0.836 }, { 0.0285, 0.724 }, { 0.0344, 0.874 }, 0.037 },
	{ 22, { 0.0299, 0.759 }, { 0.0253, 0.643 }, { 0.0313, 0.795 }, 0.034 },
	{ 23, { 0.0269, 0.683 }, { 0.0226, 0.574 }, { 0.0281, 0.714 }, 0.031 },
	{ 24, { 0.0239, 0.607 }, { 0.0201, 0.511 }, { 0.0250, 0.635 }, 0.028 },
	{ 25, { 0.0209, 0.531 }, { 0.0179, 0.455 }, { 0.0219, 0.556 }, 0.025 },
	{ 26, { 0.0179, 0.455 }, { 0.0159, 0.404 }, { 0.0188, 0.478 }, 0.022 },
	{ 27, { 0.0164, 0.417 }, { 0.0142, 0.361 }, { 0.0172, 0.437 }, 0.020 },
	{ 28, { 0.0149, 0.378 }, { 0.0126, 0.320 }, { 0.0156, 0.396 }, 0.019 },
};

static void check(enum sheet_metal metal, unsigned gauge, struct both want)
{
	assert_true(gauge_thickness_in(metal, gauge) == want.in);
	assert_true(fabs(gauge_thickness_mm(metal, gauge) - want.mm) <= 0.00101);
}

static void every_row(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		unsigned g = rows[i].gauge;

		check(METAL_STEEL, g, rows[i].steel);
		check(METAL_ALUMINUM, g, rows[i].aluminum);
		check(METAL_STAINLESS, g, rows[i].stainless);
		assert_true(gauge_thickness_in(METAL_GALVANIZED, g) ==
		    rows[i].galvanized_in);
	}
}

/* Each gauge of the American gauge is thinner than the last by the 39th root of 92,
 * and gauge 36 is 0.0050 in; the standard's own closed form. */
static void american_gauge_formula(void **state)
{
	(void)state;
	for (unsigned g = 7; g <= 28; g++) {
		double in = 0.005 * pow(92, (36.0 - g) / 39);

		assert_true(fabs(gauge_thickness_in(METAL_ALUMINUM, g) - in) <= 0.00006);
	}
}

/* The steel gauge is a weight: 41.82 lb/ft2 for an inch, and 10 ga is 5.625 lb/ft2. */
static void steel_gauge_is_a_weight(void **state)
{
	(void)state;
	assert_true(fabs(41.82 * gauge_thickness_in(METAL_STEEL, 10) - 5.625) <= 0.001);
}

static void none_such(void **state)
{
	(void)state;
	assert_true(gauge_thickness_in(METAL_STEEL, 6) == 0);
	assert_true(gauge_thickness_in(METAL_STEEL, 29) == 0);
	assert_true(gauge_thickness_in(METAL_NONE, 11) == 0);
	assert_true(gauge_thickness_mm(METAL_GALVANIZED, 7) == 0);
	assert_string_equal(gauge_source(METAL_STEEL), "Manufacturers Standard Gauge");
}

static void metals_by_their_words(void **state)
{
	static const struct { const char *words; enum sheet_metal metal; } cases[] = {
		{ "A36 plate", METAL_STEEL }, { "mild steel", METAL_STEEL },
		{ "stainless steel", METAL_STAINLESS }, { "304 sheet", METAL_STAINLESS },
		{ "304L stainless", METAL_STAINLESS }, { "5052-H32", METAL_ALUMINUM },
		{ "6061-T6 aluminum", METAL_ALUMINUM }, { "Aluminium", METAL_ALUMINUM },
		{ "galvanized steel", METAL_GALVANIZED }, { "sheet", METAL_NONE },
		{ "", METAL_NONE }, { "A53 pipe", METAL_STEEL }, { "copper", METAL_NONE },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		assert_int_equal(sheet_metal_of(str_of(cases[i].words)), cases[i].metal);
	assert_string_equal(sheet_metal_word(METAL_STAINLESS), "stainless");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_row),
		cmocka_unit_test(american_gauge_formula),
		cmocka_unit_test(steel_gauge_is_a_weight),
		cmocka_unit_test(none_such),
		cmocka_unit_test(metals_by_their_words),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
