/* Millimeters are inches times 25.4, rounded by hand to the places a sheet gives. */
#include "units/format.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define COUNT(v) (sizeof(v) / sizeof *(v))

typedef void form(struct buf *b, const struct quantity *q);

struct print_case { const char *written; enum quantity_kind want; const char *printed; };

static void check(const struct print_case *c, form *print)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };
	struct quantity q;
	struct quantity_fault f;

	if (quantity_parse(str_of(c->written), c->want, METAL_STEEL, &q, &f) != QUANTITY_OK)
		print_error("%s: %s at %zu\n", c->written, f.reason, f.offset);
	assert_int_equal(f.result, QUANTITY_OK);
	print(&b, &q);
	assert_string_equal(buf_z(&b), c->printed);
	arena_free(a);
}

static void lengths(void **state)
{
	static const struct print_case cases[] = {
		{ "3/8 in", QUANTITY_LENGTH, "3/8 in [9.5 mm]" },
		{ "⅜\"", QUANTITY_LENGTH, "3/8 in [9.5 mm]" },
		{ "1-1/2 in", QUANTITY_LENGTH, "1-1/2 in [38.1 mm]" },
		{ "6 in", QUANTITY_LENGTH, "6 in [152.4 mm]" },
		{ "5 in", QUANTITY_LENGTH, "5 in [127 mm]" },
		{ "1/8 in", QUANTITY_LENGTH, "1/8 in [3.2 mm]" },
		{ "5/8 in", QUANTITY_LENGTH, "5/8 in [15.9 mm]" },
		{ "6/16 in", QUANTITY_LENGTH, "3/8 in [9.5 mm]" },
		{ "1/3 to 1/2 in", QUANTITY_LENGTH, "1/3 to 1/2 in [8.5 to 12.7 mm]" },
		{ "0.280 in", QUANTITY_LENGTH, "0.280 in [7.11 mm]" },
		{ ".035 in", QUANTITY_LENGTH, "0.035 in [0.89 mm]" },
		{ "0.5 in", QUANTITY_LENGTH, "0.5 in [12.70 mm]" },
		{ "⅜ to 22.5 in", QUANTITY_LENGTH, "3/8 to 22.5 in [9.53 to 571.50 mm]" },
		{ "1/2 in to 22.5 mm", QUANTITY_LENGTH,
		    "0.5 to 0.886 in [12.70 to 22.50 mm]" },
		{ "11 ga", QUANTITY_LENGTH, "11 ga (0.1196 in) [3.04 mm]" },
		{ "16 to 11 ga", QUANTITY_LENGTH,
		    "16 to 11 ga (0.0598 to 0.1196 in) [1.52 to 3.04 mm]" },
		{ "NPS 6 sch 40", QUANTITY_LENGTH, "NPS 6 schedule 40 (0.280 in) [7.11 mm]" },
		{ "NPS 6 sch 40", QUANTITY_PIPE, "NPS 6 schedule 40 [DN 150]" },
		{ "NPS 1-1/2", QUANTITY_PIPE, "NPS 1-1/2 [DN 40]" },
		{ "0 to 1/16 in", QUANTITY_LENGTH, "0 to 1/16 in [0 to 1.6 mm]" },
		{ "1-2 in", QUANTITY_LENGTH, "1 to 2 in [25.4 to 50.8 mm]" },
		{ "±1/32 in", QUANTITY_LENGTH, "±1/32 in [±0.8 mm]" },
		{ "+1/16 -0 in", QUANTITY_LENGTH, "+1/16 -0 in [+1.6 -0 mm]" },
		{ "3 ±1/32 in", QUANTITY_LENGTH, "3 ±1/32 in [76.2 ±0.8 mm]" },
		{ "6'-4\"", QUANTITY_LENGTH, "6 ft 4 in [1930.4 mm]" },
		{ "10 ft", QUANTITY_LENGTH, "10 ft [3048 mm]" },
		{ "6' 4 1/2\"", QUANTITY_LENGTH, "6 ft 4-1/2 in [1943.1 mm]" },
		{ "9.5 mm", QUANTITY_LENGTH, "0.374 in [9.5 mm]" },
		{ "50 mm", QUANTITY_LENGTH, "1.969 in [50 mm]" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++)
		check(&cases[i], format_quantity);
}

static void other_kinds(void **state)
{
	static const struct print_case cases[] = {
		{ "22-1/2 deg", QUANTITY_ANGLE, "22-1/2°" },
		{ "22.5°", QUANTITY_ANGLE, "22-1/2°" },
		{ "37.25 deg", QUANTITY_ANGLE, "37-1/4°" },
		{ "12.3 deg", QUANTITY_ANGLE, "12.3°" },
		{ "55 to 65 deg", QUANTITY_ANGLE, "55-65°" },
		{ "60 ±5 deg", QUANTITY_ANGLE, "60 ±5°" },
		{ "110-140 A", QUANTITY_CURRENT, "110-140 A" },
		{ "110 to 140 amps", QUANTITY_CURRENT, "110-140 A" },
		{ "18.5-19.5 V", QUANTITY_VOLTAGE, "18.5 to 19.5 V" },
		{ "20 cfh", QUANTITY_FLOW, "20 cfh [9.4 L/min]" },
		{ "4 h", QUANTITY_TIME, "4 h" },
		{ "30 min", QUANTITY_TIME, "30 min" },
		{ "1-1/2 h", QUANTITY_TIME, "1-1/2 h" },
		{ "150 degF", QUANTITY_TEMPERATURE, "150 °F [66 °C]" },
		{ "0 to 70 °F", QUANTITY_TEMPERATURE, "0 to 70 °F [-18 to 21 °C]" },
		{ "5 psi", QUANTITY_PRESSURE, "5 psi [34 kPa]" },
		/* 60,000 x 4.4482216152605 / 645.16 = 413.685 MPa. */
		{ "60 ksi", QUANTITY_PRESSURE, "60 ksi [414 MPa]" },
		{ "10 lb", QUANTITY_MASS, "10 lb [4.54 kg]" },
		{ "60 %", QUANTITY_PERCENT, "60 %" },
		{ "3", QUANTITY_COUNT, "3" },
		{ "12 in/min", QUANTITY_SPEED, "12 in/min [5.1 mm/s]" },
		{ "250 in/min", QUANTITY_SPEED, "250 in/min [6.4 m/min]" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++)
		check(&cases[i], format_quantity);
}

static void metric(struct buf *b, const struct quantity *q)
{
	format_quantity_as(b, &(struct format){ .metric_first = true }, q);
}

static void usual(struct buf *b, const struct quantity *q)
{
	format_quantity_as(b, NULL, q);
}

/* The same figures as above change places. 250 in/min are 250 x 0.0254 m/min, 350 degF
 * (350 - 32) x 5 / 9 degC. */
static void metric_first(void **state)
{
	static const struct print_case cases[] = {
		{ "3/8 in", QUANTITY_LENGTH, "9.5 mm [3/8 in]" },
		{ "0 to 1/16 in", QUANTITY_LENGTH, "0 to 1.6 mm [0 to 1/16 in]" },
		{ "+1/16 -0 in", QUANTITY_LENGTH, "+1.6 -0 mm [+1/16 -0 in]" },
		{ "11 ga", QUANTITY_LENGTH, "3.04 mm [11 ga (0.1196 in)]" },
		{ "6'-4\"", QUANTITY_LENGTH, "1930.4 mm [6 ft 4 in]" },
		{ "9.5 mm", QUANTITY_LENGTH, "9.5 mm [0.374 in]" },
		{ "NPS 6 sch 40", QUANTITY_PIPE, "DN 150 schedule 40 [NPS 6]" },
		{ "NPS 6 sch 40", QUANTITY_LENGTH,
		    "DN 150 schedule 40 (7.11 mm) [NPS 6, 0.280 in]" },
		{ "20 cfh", QUANTITY_FLOW, "9.4 L/min [20 cfh]" },
		{ "250 in/min", QUANTITY_SPEED, "6.4 m/min [250 in/min]" },
		{ "12 in/min", QUANTITY_SPEED, "5.1 mm/s [12 in/min]" },
		{ "350 degF", QUANTITY_TEMPERATURE, "177 °C [350 °F]" },
		{ "15 psi", QUANTITY_PRESSURE, "103 kPa [15 psi]" },
		{ "60 ksi", QUANTITY_PRESSURE, "414 MPa [60 ksi]" },
		{ "2 lb", QUANTITY_MASS, "0.91 kg [2 lb]" },
		{ "110-140 A", QUANTITY_CURRENT, "110-140 A" },
		{ "22-1/2 deg", QUANTITY_ANGLE, "22-1/2°" },
	};
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++)
		check(&cases[i], metric);
	check(&(struct print_case){ "3/8 in", QUANTITY_LENGTH, "3/8 in [9.5 mm]" }, usual);
	format_computed_as(&b, &(struct format){ .metric_first = true }, 161.925, 0);
	buf_adds(&b, "; ");
	format_answer_as(&b, &(struct format){ .metric_first = true }, -217.0176);
	assert_string_equal(buf_z(&b), "161.9 mm [6-3/8 in]; -217.02 mm [-8.544 (8-35/64) in]");
	arena_free(a);
}

static void narrow_columns(void **state)
{
	static const struct print_case inches[] = {
		{ "3/8 in", QUANTITY_LENGTH, "3/8" },
		{ "0.280 in", QUANTITY_LENGTH, "0.280" },
		{ "11 ga", QUANTITY_LENGTH, "0.1196" },
		{ "0 to 1/16 in", QUANTITY_LENGTH, "0 to 1/16" },
	};
	static const struct print_case mm[] = {
		{ "3/8 in", QUANTITY_LENGTH, "9.5" },
		{ "0.280 in", QUANTITY_LENGTH, "7.11" },
		{ "11 ga", QUANTITY_LENGTH, "3.04" },
		{ "±1/32 in", QUANTITY_LENGTH, "±0.8" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(inches); i++)
		check(&inches[i], format_length_in);
	for (size_t i = 0; i < COUNT(mm); i++)
		check(&mm[i], format_length_mm);
}

static void check_computed(double in, double tolerance_in, const char *printed)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };

	format_computed(&b, in * 25.4, tolerance_in * 25.4);
	assert_string_equal(buf_z(&b), printed);
	arena_free(a);
}

static void computed_lengths(void **state)
{
	(void)state;
	check_computed(6.375, 0, "6-3/8 in [161.9 mm]");
	check_computed(6.375, 1.0 / 16, "6-3/8 in [161.9 mm]");
	/* 1/32 belongs to no sixteenth. */
	check_computed(3.03125, 1.0 / 16, "3.031 in [76.99 mm]");
	check_computed(3.03125, 1.0 / 32, "3-1/32 in [77 mm]");
	check_computed(3.03125, 1.0 / 64, "3-1/32 in [77 mm]");
	/* No 64ths: 3-1/64 is a decimal. */
	check_computed(3.015625, 1.0 / 64, "3.016 in [76.60 mm]");
	/* Two thousandths are near, three are not. */
	check_computed(2.252, 0, "2-1/4 in [57.2 mm]");
	check_computed(2.253, 0, "2.253 in [57.23 mm]");
	check_computed(2.248, 0, "2-1/4 in [57.1 mm]");
	check_computed(0.9995, 0, "1 in [25.4 mm]");
	check_computed(0, 0, "0 in [0 mm]");
	check_computed(-0.5, 0, "-1/2 in [-12.7 mm]");
}

static void angles(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };

	(void)state;
	format_angle(&b, 37.5);
	format_angle(&b, 126.41);
	format_angle(&b, 90);
	assert_string_equal(buf_z(&b), "37-1/2°126.41°90°");
	arena_free(a);
}

/* Printing and reading again gives the same value for every 32nd to 4 in. */
static void fractions_come_back(void **state)
{
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (int n = 1; n <= 128; n++) {
		struct buf b = { .arena = a };
		struct quantity q;
		struct quantity_fault f;

		format_computed_in(&b, n * 25.4 / 32, 25.4 / 32);
		buf_adds(&b, " in");
		assert_int_equal(quantity_parse(buf_str(&b), QUANTITY_LENGTH, METAL_NONE, &q,
		    &f), QUANTITY_OK);
		assert_true(fabs(q.lo - n * 25.4 / 32) < 1e-9);
		assert_true(32 % q.denominator == 0);
	}
	arena_free(a);
}

/* 2.552 x 0.45359237 = 1.158; 0.027 lb is 12.2 g; 0.013 lb 5.9 g. */
static void weights(void **state)
{
	static const struct { double lb; int places; bool metric; const char *text; } cases[] = {
		{ 2.552, 2, false, "2.55 lb [1.16 kg]" }, { 2.552, 2, true, "1.16 kg [2.55 lb]" },
		{ 11.5, 1, false, "11.5 lb [5.2 kg]" }, { 0.027, 2, false, "0.027 lb [12 g]" },
		{ 0.013, 2, true, "5.9 g [0.013 lb]" }, { 0.19, 2, false, "0.19 lb [86 g]" },
	};
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct format f = { .metric_first = cases[i].metric };
		struct buf b = { .arena = a };

		format_weight(&b, &f, cases[i].lb, cases[i].places);
		assert_string_equal(buf_z(&b), cases[i].text);
	}
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lengths),
		cmocka_unit_test(other_kinds),
		cmocka_unit_test(metric_first),
		cmocka_unit_test(narrow_columns),
		cmocka_unit_test(computed_lengths),
		cmocka_unit_test(angles),
		cmocka_unit_test(weights),
		cmocka_unit_test(fractions_come_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
