/* Figures in both units: conversions by definition (NIST SP 811) and what print does. */
#include "reckon/answer.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void check_text(enum measure m, double lo, double hi, const char *want)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };
	struct figure f = { .measure = m, .value = lo, .high = hi };

	figure_text(&b, &f, false);
	assert_string_equal(buf_z(&b), want);
	arena_free(a);
}

static void prints(void **state)
{
	(void)state;
	check_text(MEASURE_LENGTH, 9.525, 9.525, "3/8 in [9.5 mm]");
	check_text(MEASURE_LENGTH, 3.175, 19.05, "1/8 to 3/4 in [3.2 to 19.1 mm]");
	check_text(MEASURE_FINE, 25.4, 25.4, "1.0000 in [25.40 mm]");
	check_text(MEASURE_HEAT, 45.24, 45.24, "45.24 kJ/in [1.78 kJ/mm]");
	check_text(MEASURE_TEMPERATURE, 50, 50, "50 °F [10 °C]");
	check_text(MEASURE_TEMPERATURE, 32, 32, "32 °F [0 °C]");
	check_text(MEASURE_PRESSURE, 20, 25, "20 to 25 psig [138 to 172 kPa]");
	check_text(MEASURE_WEIGHT, 1, 1, "1.00 lb [0.45 kg]");
	check_text(MEASURE_PER_FOOT, 18.97, 18.97, "18.97 lb/ft [28.23 kg/m]");
	check_text(MEASURE_ANGLE, 45, 45, "45.00°");
	check_text(MEASURE_COUNT, 8, 8, "8");
	check_text(MEASURE_TONS, 10, 10, "10 tons [89 kN]");
	check_text(MEASURE_FLOW, 20, 20, "20 cfh [9.4 L/min]");
	check_text(MEASURE_HOURS, 0.5, 0.5, "0.50 h [30 min]");
}

static void converts(void **state)
{
	(void)state;
	assert_true(fabs(measure_metric(MEASURE_PER_FOOT,
	    1) - 1.4881639435695539) < 1e-12);
	assert_true(fabs(measure_metric(MEASURE_PRESSURE,
	    1) - 6.8947572931683609) < 1e-9);
	assert_true(fabs(measure_metric(MEASURE_TONS, 1) - 8.896443230521) < 1e-12);
	assert_true(fabs(measure_us(MEASURE_AREA, 645.16) - 1) < 1e-12);
	assert_true(fabs(measure_metric(MEASURE_SPEED, 60) - 25.4) < 1e-12);
}

static void collects(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct answer an = { .arena = a };

	(void)state;
	answer_figure(&an, "Leg", MEASURE_LENGTH, 1, SEEN_PAGE);
	assert_false(answer_has_dagger(&an));
	answer_words(&an, "Fit", SEEN_MEMORY, "%d of %s", 2, "C");
	assert_true(answer_has_dagger(&an));
	assert_true(str_eq(an.figures[1].words, STR("2 of C")));
	answer_source(&an, "geometry");
	answer_source(&an, "geometry");
	assert_int_equal(an.nsources, 1);
	answer_refuse(&an, "first %d", 1);
	answer_refuse(&an, "second");
	assert_true(str_eq(an.fault, STR("first 1")));
	assert_string_equal(answer_number(&an, 45.24), "45.24");
	assert_string_equal(answer_number(&an, 0.106125), "0.10613");
	assert_string_equal(answer_bare(&an, MEASURE_FINE, 9.525), "0.375");
	assert_string_equal(answer_value(&an, MEASURE_WEIGHT, 2.1225), "2.1225 lb");
	an.metric = true;
	assert_string_equal(answer_bare(&an, MEASURE_FINE, 9.525), "9.525");
	assert_string_equal(answer_value(&an, MEASURE_WEIGHT, 2), "0.9072 kg");
	arena_free(a);
}

/* 45.24 / 25.4 = 1.781; hours have no metric. */
static void prints_metric_first(void **state)
{
	static const struct { enum measure m; double v; const char *text; } cases[] = {
		{ MEASURE_HEAT, 45.24, "1.78 kJ/mm [45.24 kJ/in]" },
		{ MEASURE_LENGTH, 9.525, "9.5 mm [3/8 in]" },
		{ MEASURE_HOURS, 0.5, "0.50 h [30 min]" }, { MEASURE_COUNT, 3, "3" },
	};
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct figure f = { "x", cases[i].m, cases[i].v, cases[i].v, { 0 },
			SEEN_PAGE };
		struct buf b = { .arena = a };

		figure_text(&b, &f, true);
		assert_string_equal(buf_z(&b), cases[i].text);
	}
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(prints),
		cmocka_unit_test(converts),
		cmocka_unit_test(collects),
		cmocka_unit_test(prints_metric_first),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
