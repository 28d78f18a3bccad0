/* Every expected value is the written one times 25.4 mm, or follows from the rules of
 * writing quantities; none was taken from the program's own output. */
#include "units/quantity.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define LENGTH(text, mm) check_value(text, QUANTITY_LENGTH, METAL_NONE, mm, mm)
#define COUNT(v) (sizeof(v) / sizeof *(v))

static struct quantity read_ok(const char *text, enum quantity_kind want,
    enum sheet_metal metal)
{
	struct quantity q;
	struct quantity_fault f;
	enum quantity_result result = quantity_parse(str_of(text), want, metal, &q, &f);

	if (result != QUANTITY_OK)
		print_error("%s: %s at %zu\n", text, f.reason, f.offset);
	assert_int_equal(result, QUANTITY_OK);
	assert_int_equal(f.result, QUANTITY_OK);
	return q;
}

static struct quantity check_value(const char *text, enum quantity_kind want,
    enum sheet_metal metal, double lo, double hi)
{
	struct quantity q = read_ok(text, want, metal);

	if (fabs(q.lo - lo) > 1e-9 || fabs(q.hi - hi) > 1e-9)
		print_error("%s: %.12g to %.12g\n", text, q.lo, q.hi);
	assert_true(fabs(q.lo - lo) <= 1e-9);
	assert_true(fabs(q.hi - hi) <= 1e-9);
	assert_int_equal(q.range, lo != hi);
	return q;
}

static struct quantity_fault check_fault(const char *text, enum quantity_kind want,
    enum quantity_result result, size_t offset)
{
	struct quantity q;
	struct quantity_fault f;
	enum quantity_result got = quantity_parse(str_of(text), want, METAL_NONE, &q, &f);

	if (got != result || f.offset != offset)
		print_error("%s: result %d at %zu (%s)\n", text, (int)got, f.offset, f.reason);
	assert_int_equal(got, result);
	assert_int_equal(f.result, result);
	assert_int_equal(f.offset, offset);
	assert_non_null(f.reason);
	assert_true(f.reason[0] != 0);
	assert_true(q.kind == QUANTITY_ANY && q.lo == 0);
	return f;
}

static void inches_in_all_spellings(void **state)
{
	static const char *const three_eighths[] = {
		"3/8 in", "3/8 in.", "3/8\"", "3/8 inch", "3/8 inches", "  3/8  in ", "3/8in",
		"⅜\"", "⅜ in", "3⁄8 in", "3/8″", "3/8”", "3/8\xC2\xA0in", "3/8-in", "3/8 IN",
		"0.375 in", ".375 in", "3/8''", "6/16 in",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(three_eighths); i++)
		LENGTH(three_eighths[i], 9.525);
}

static void mixed_numbers(void **state)
{
	static const char *const forms[] = {
		"1-1/2 in", "1 1/2 in", "1½ in", "1 ½ in", "1-½ in", "1–1/2 in", "1‑1/2″",
		"1-1/2\"",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(forms); i++)
		LENGTH(forms[i], 38.1);
	assert_int_equal(LENGTH("12-3/16 in", 12.1875 * 25.4).denominator, 16);
}

static void feet_and_inches(void **state)
{
	static const char *const forms[] = {
		"6'-4\"", "6' 4\"", "6'4\"", "6 ft 4 in", "6’-4”", "6 ft-4 in",
		"6 feet 4 inches",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(forms); i++)
		LENGTH(forms[i], 76 * 25.4);
	assert_int_equal(LENGTH("6'-4-1/2\"", 76.5 * 25.4).form, FORM_FEET);
	LENGTH("10 ft", 3048);
	check_value("6 ft - 8 ft", QUANTITY_LENGTH, METAL_NONE, 6 * 304.8, 8 * 304.8);
	check_fault("6'-14\"", QUANTITY_LENGTH, QUANTITY_BAD, 5);
}

static void decimals_and_metric(void **state)
{
	struct quantity q = LENGTH("0.280 in", 7.112);

	(void)state;
	assert_int_equal(q.form, FORM_DECIMAL);
	assert_int_equal(q.decimals, 3);
	LENGTH(".035 in", 0.889);
	LENGTH("9.5 mm", 9.5);
	LENGTH("95 cm", 950);
	LENGTH("1.2 m", 1200);
	assert_int_equal(read_ok("9.5 mm", QUANTITY_LENGTH, METAL_NONE).form, FORM_METRIC);
}

/* Each value must be the double nearest to the exact one: one division, no more. */
static void inches_convert_with_one_rounding(void **state)
{
	static const struct { const char *text; double mm; } rows[] = {
		{ "0.1 in", 2.54 }, { "0.3 in", 7.62 }, { "1/64 in", 0.396875 },
		{ "1/16 in", 1.5875 }, { "1/8 in", 3.175 }, { "3/16 in", 4.7625 },
		{ "0.1196 in", 3.03784 }, { "7/32 in", 5.55625 }, { "0.035 in", 0.889 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct quantity q = read_ok(rows[i].text, QUANTITY_LENGTH, METAL_NONE);

		assert_true(q.lo == rows[i].mm);
	}
}

static void ranges(void **state)
{
	(void)state;
	check_value("110-140 A", QUANTITY_CURRENT, METAL_NONE, 110, 140);
	check_value("110 to 140 A", QUANTITY_CURRENT, METAL_NONE, 110, 140);
	check_value("110–140 amps", QUANTITY_CURRENT, METAL_NONE, 110, 140);
	check_value("110 - 140 amperes", QUANTITY_ANY, METAL_NONE, 110, 140);
	check_value("110 A to 140 A", QUANTITY_CURRENT, METAL_NONE, 110, 140);
	check_value("0 to 1/16 in", QUANTITY_LENGTH, METAL_NONE, 0, 1.5875);
	check_value("1-1/2 to 2 in", QUANTITY_LENGTH, METAL_NONE, 38.1, 50.8);
	check_value("1-2 in", QUANTITY_LENGTH, METAL_NONE, 25.4, 50.8);
	check_value("1.5-2.5 mm", QUANTITY_LENGTH, METAL_NONE, 1.5, 2.5);
	check_value("18.5-19.5 V", QUANTITY_VOLTAGE, METAL_NONE, 18.5, 19.5);
}

static void other_kinds(void **state)
{
	(void)state;
	check_value("22-1/2 deg", QUANTITY_ANGLE, METAL_NONE, 22.5, 22.5);
	check_value("22.5°", QUANTITY_ANGLE, METAL_NONE, 22.5, 22.5);
	check_value("30 degrees", QUANTITY_ANGLE, METAL_NONE, 30, 30);
	check_value("20 cfh", QUANTITY_FLOW, METAL_NONE, 20, 20);
	check_value("4 h", QUANTITY_TIME, METAL_NONE, 4, 4);
	check_value("4 hours", QUANTITY_TIME, METAL_NONE, 4, 4);
	check_value("30 min", QUANTITY_TIME, METAL_NONE, 0.5, 0.5);
	check_value("150 degF", QUANTITY_TEMPERATURE, METAL_NONE, 150, 150);
	check_value("150 °F", QUANTITY_TEMPERATURE, METAL_NONE, 150, 150);
	check_value("150°F", QUANTITY_TEMPERATURE, METAL_NONE, 150, 150);
	check_value("150 deg F", QUANTITY_TEMPERATURE, METAL_NONE, 150, 150);
	/* Fixed points of the two scales. */
	check_value("100 °C", QUANTITY_TEMPERATURE, METAL_NONE, 212, 212);
	check_value("-40 degC", QUANTITY_TEMPERATURE, METAL_NONE, -40, -40);
	check_value("60 %", QUANTITY_PERCENT, METAL_NONE, 60, 60);
	check_value("12 lb", QUANTITY_MASS, METAL_NONE, 12, 12);
	check_value("12 lbf", QUANTITY_MASS, METAL_NONE, 12, 12);
	check_value("8 oz", QUANTITY_MASS, METAL_NONE, 0.5, 0.5);
	check_value("12 in/min", QUANTITY_SPEED, METAL_NONE, 12, 12);
	check_value("12 ipm", QUANTITY_SPEED, METAL_NONE, 12, 12);
	check_value("3", QUANTITY_COUNT, METAL_NONE, 3, 3);
	check_value("5 psi", QUANTITY_PRESSURE, METAL_NONE, 5, 5);
	/* Commas between thousands, before psi and pounds only; elsewhere they part a list. */
	check_value("60,000 psi", QUANTITY_PRESSURE, METAL_NONE, 60000, 60000);
	check_value("58,000-80,000 psi", QUANTITY_PRESSURE, METAL_NONE, 58000, 80000);
	check_value("1,250,000 psi", QUANTITY_PRESSURE, METAL_NONE, 1250000, 1250000);
	check_value("21,000 lb", QUANTITY_MASS, METAL_NONE, 21000, 21000);
	check_fault("60,00 psi", QUANTITY_PRESSURE, QUANTITY_BAD, 2);
	check_fault("6000,000 psi", QUANTITY_PRESSURE, QUANTITY_BAD, 4);
	check_fault("100,120 A", QUANTITY_CURRENT, QUANTITY_BAD, 3);
}

static void gauges(void **state)
{
	struct quantity q;

	(void)state;
	/* Manufacturers Standard Gauge 11: 0.1196 in; U.S. Standard 10: 0.1406 in. */
	q = check_value("11 ga", QUANTITY_LENGTH, METAL_STEEL, 0.1196 * 25.4, 0.1196 * 25.4);
	assert_int_equal(q.form, FORM_GAUGE);
	assert_int_equal(q.gauge_lo, 11);
	check_value("10 gauge", QUANTITY_LENGTH, METAL_STAINLESS, 3.57124, 3.57124);
	check_value("16-gauge", QUANTITY_LENGTH, METAL_STEEL, 0.0598 * 25.4, 0.0598 * 25.4);
	q = check_value("11 to 16 ga", QUANTITY_LENGTH, METAL_STEEL, 0.0598 * 25.4,
	    0.1196 * 25.4);
	assert_int_equal(q.gauge_lo, 16);
	assert_int_equal(q.gauge_hi, 11);
	check_fault("11 ga", QUANTITY_LENGTH, QUANTITY_NO_METAL, 0);
}

static void gauges_that_are_none(void **state)
{
	struct quantity q;
	struct quantity_fault f;

	(void)state;
	assert_int_equal(quantity_parse(STR("40 ga"), QUANTITY_LENGTH, METAL_STEEL, &q, &f),
	    QUANTITY_BAD);
	/* The galvanized table begins at 8. */
	assert_int_equal(quantity_parse(STR("7 ga"), QUANTITY_LENGTH, METAL_GALVANIZED, &q,
	    &f), QUANTITY_BAD);
	assert_int_equal(quantity_parse(STR("11.5 ga"), QUANTITY_LENGTH, METAL_STEEL, &q,
	    &f), QUANTITY_BAD);
	assert_int_equal(f.offset, 0);
}

static void pipe_sizes(void **state)
{
	static const char *const forms[] = {
		"NPS 6 schedule 40", "NPS 6 sch 40", "nps 6 sch. 40", "NPS 6 STD",
		"NPS 6, schedule std", "NPS 6 schedule STD",
	};
	struct quantity q;

	(void)state;
	for (size_t i = 0; i < COUNT(forms); i++) {
		/* ASME B36.10M: 6.625 in outside, 0.280 in wall. */
		LENGTH(forms[i], 7.112);
		q = check_value(forms[i], QUANTITY_PIPE, METAL_NONE, 168.275, 168.275);
		assert_true(q.scheduled);
	}
	q = check_value("NPS 1-1/2", QUANTITY_PIPE, METAL_NONE, 48.26, 48.26);
	assert_false(q.scheduled);
	LENGTH("NPS 8 schedule XXS", 22.225);
	LENGTH("NPS 12 xs", 12.7);
	LENGTH("NPS ½ sch 80", 0.147 * 25.4);
}

static void pipe_faults(void **state)
{
	(void)state;
	check_fault("NPS 7", QUANTITY_PIPE, QUANTITY_BAD, 4);
	check_fault("NPS 6 schedule 41", QUANTITY_PIPE, QUANTITY_BAD, 15);
	check_fault("NPS 6 schedule", QUANTITY_PIPE, QUANTITY_BAD, 14);
	check_fault("NPS 6", QUANTITY_LENGTH, QUANTITY_BAD, 0);
	check_fault("6 in", QUANTITY_PIPE, QUANTITY_UNKNOWN_UNIT, 2);
	check_fault("NPS 6", QUANTITY_CURRENT, QUANTITY_BAD, 0);
	/* No schedule 160 is made at 3-1/2 (ASME B36.10M). */
	check_fault("NPS 3-1/2 sch 160", QUANTITY_PIPE, QUANTITY_BAD, 14);
}

static void check_tolerance(const char *text, double lo, double plus, double minus)
{
	struct quantity q = read_ok(text, QUANTITY_LENGTH, METAL_NONE);

	assert_true(q.tolerance);
	assert_int_equal(q.no_value, lo == 0);
	assert_true(fabs(q.lo - lo) < 1e-9);
	assert_true(fabs(q.plus - plus) < 1e-9);
	assert_true(fabs(q.minus - minus) < 1e-9);
}

static void tolerances(void **state)
{
	(void)state;
	check_tolerance("±1/32 in", 0, 0.79375, 0.79375);
	check_tolerance("+/- 1/32 in", 0, 0.79375, 0.79375);
	check_tolerance("+1/16 -0 in", 0, 1.5875, 0);
	check_tolerance("+1/16, -0 in", 0, 1.5875, 0);
	check_tolerance("+1 -1/16 in", 0, 25.4, 1.5875);
	check_tolerance("-1/16 +1/8 in", 0, 3.175, 1.5875);
	check_tolerance("3 in ±1/32 in", 76.2, 0.79375, 0.79375);
	check_tolerance("3 ±1/32 in", 76.2, 0.79375, 0.79375);
	check_tolerance("3 in ±1/32", 76.2, 0.79375, 0.79375);
	check_tolerance("3 in +1/16 -0", 76.2, 1.5875, 0);
	check_fault("+1/16 in", QUANTITY_LENGTH, QUANTITY_BAD, 0);
	check_fault("±in", QUANTITY_LENGTH, QUANTITY_BAD, 0);
	check_fault("+1/16 +1/8 in", QUANTITY_LENGTH, QUANTITY_BAD, 6);
}

/* A size below zero is no half tolerance to the one who wrote it. */
static void sizes_below_zero(void **state)
{
	struct quantity_fault fault;
	struct quantity q;

	(void)state;
	assert_int_equal(quantity_parse(STR("-1/4 in"), QUANTITY_LENGTH, METAL_NONE, &q,
	    &fault), QUANTITY_BAD);
	assert_string_equal(fault.reason,
	    "it is below zero, or a tolerance without its other side");
	assert_int_equal(quantity_parse(STR("+1/4 in"), QUANTITY_LENGTH, METAL_NONE, &q,
	    &fault), QUANTITY_BAD);
	assert_string_equal(fault.reason, "a tolerance needs its other side too");
}

static void bad_quantities(void **state)
{
	static const struct { const char *text; size_t at; } rows[] = {
		{ "", 0 }, { "   ", 3 }, { "wide", 0 }, { "1/0 in", 1 }, { "3/8/2 in", 3 },
		{ "3/ in", 1 }, { "1.2.3 in", 3 }, { "1.5/2 in", 3 }, { "1/2-3/4 in", 3 },
		{ "1-1/2-2 in", 5 }, { "1 - 1/2 in", 1 }, { "1-3/2 in", 2 }, { "1 3/2 in", 2 },
		{ "1-2/2 in", 2 }, { "1 2/2 in", 2 }, { "2-1 in", 2 }, { "99999999 in", 7 }, { "0.1234567 in", 8 },
		{ "1/99999 in", 6 }, { "3/8 in thick 4", 7 }, { "4 in 5", 5 }, { "3/8 1/2 in", 4 },
		{ "½/2 in", 2 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		check_fault(rows[i].text, QUANTITY_LENGTH, QUANTITY_BAD, rows[i].at);
	check_fault("110-140-150 A", QUANTITY_CURRENT, QUANTITY_BAD, 7);
	check_fault("1/0 in", QUANTITY_ANY, QUANTITY_BAD, 1);
}

static void numbers_without_a_unit(void **state)
{
	struct quantity_fault f;

	(void)state;
	f = check_fault("3/8", QUANTITY_LENGTH, QUANTITY_NO_UNIT, 0);
	assert_true(str_eq(f.likely, STR("in")));
	f = check_fault(" 110-140", QUANTITY_CURRENT, QUANTITY_NO_UNIT, 1);
	assert_true(str_eq(f.likely, STR("A")));
	check_fault("3 in to 4", QUANTITY_LENGTH, QUANTITY_NO_UNIT, 8);
	check_fault("6'-4", QUANTITY_LENGTH, QUANTITY_NO_UNIT, 3);
	check_fault("0", QUANTITY_LENGTH, QUANTITY_NO_UNIT, 0);
}

static void units_that_are_none(void **state)
{
	struct quantity_fault f;

	(void)state;
	f = check_fault("3/8 inhc", QUANTITY_LENGTH, QUANTITY_UNKNOWN_UNIT, 4);
	assert_true(str_eq(f.likely, STR("inch")));
	f = check_fault("20 chf", QUANTITY_FLOW, QUANTITY_UNKNOWN_UNIT, 3);
	assert_true(str_eq(f.likely, STR("cfh")));
	f = check_fault("22-1/2 degs", QUANTITY_ANGLE, QUANTITY_UNKNOWN_UNIT, 7);
	assert_true(str_eq(f.likely, STR("deg")));
	/* A right unit in the wrong place. */
	f = check_fault("3/8 in", QUANTITY_CURRENT, QUANTITY_UNKNOWN_UNIT, 4);
	assert_true(str_eq(f.likely, STR("A")));
	check_fault("3 in to 4 lb", QUANTITY_ANY, QUANTITY_UNKNOWN_UNIT, 10);
	check_fault("350°", QUANTITY_TEMPERATURE, QUANTITY_UNKNOWN_UNIT, 3);
}

static void check_prefix(const char *text, enum quantity_kind want, double lo,
    size_t used)
{
	struct quantity q;
	struct quantity_fault f;
	size_t n;

	assert_int_equal(quantity_prefix(str_of(text), want, METAL_STEEL, &q, &n, &f),
	    QUANTITY_OK);
	assert_true(fabs(q.lo - lo) < 1e-9);
	assert_int_equal(n, used);
}

static void words_after_a_quantity(void **state)
{
	struct quantity q;
	struct quantity_fault f;
	size_t used = 9;

	(void)state;
	check_prefix("8 in long", QUANTITY_LENGTH, 203.2, 4);
	check_prefix("3/8 in to suit", QUANTITY_LENGTH, 9.525, 6);
	check_prefix("20 cfh, purge argon 15 cfh", QUANTITY_FLOW, 20, 6);
	check_prefix("NPS 6 schedule 40 pipe", QUANTITY_PIPE, 168.275, 17);
	check_prefix("2 of C at 2G", QUANTITY_COUNT, 2, 1);
	check_prefix("11 ga sheet", QUANTITY_LENGTH, 0.1196 * 25.4, 5);
	assert_int_equal(quantity_prefix(STR("3 of those plates"), QUANTITY_LENGTH,
	    METAL_NONE, &q, &used, &f), QUANTITY_NO_UNIT);
	assert_int_equal(used, 0);
}

struct list_case { const char *text; size_t n; double v[4]; };

static void check_list(struct quantity_list l, const struct list_case *c)
{
	if (l.n != c->n)
		print_error("%s: %zu\n", c->text, l.n);
	assert_int_equal(l.n, c->n);
	for (size_t i = 0; i < l.n; i++) {
		if (fabs(l.v[i].lo - c->v[i]) > 1e-9)
			print_error("%s: item %zu is %g\n", c->text, i, l.v[i].lo);
		assert_true(fabs(l.v[i].lo - c->v[i]) <= 1e-9);
	}
}

static void lists(void **state)
{
	static const struct list_case cases[] = {
		{ "1/2, 7/8, 1-1/8, 1-1/2 in", 4, { 12.7, 22.225, 28.575, 38.1 } },
		{ "1/2 in, 10 mm, 7/8 in", 3, { 12.7, 10, 22.225 } },
		{ "1/2, 10 mm; 7/8 in", 3, { 12.7, 10, 22.225 } },
		{ "1/2, 7/8 and 1 in", 3, { 12.7, 22.225, 25.4 } },
		{ "1/2, and 1 in", 2, { 12.7, 25.4 } },
		{ "3/8 in", 1, { 9.525 } },
		{ "16, 11 ga", 2, { 0.0598 * 25.4, 0.1196 * 25.4 } },
		{ "NPS 6 schedule 40, NPS 4 schedule 80", 2, { 7.112, 0.337 * 25.4 } },
	};
	struct arena *a = arena_new(NULL, NULL);
	struct quantity_list l;
	struct quantity_fault f;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		assert_int_equal(quantity_list_parse(a, str_of(cases[i].text), QUANTITY_LENGTH,
		    METAL_STEEL, &l, &f), QUANTITY_OK);
		check_list(l, &cases[i]);
	}
	assert_int_equal(quantity_list_parse(a, STR("1/2, 7/8"), QUANTITY_LENGTH,
	    METAL_NONE, &l, &f), QUANTITY_NO_UNIT);
	assert_int_equal(f.offset, 0);
	assert_int_equal(l.n, 0);
	assert_int_equal(quantity_list_parse(a, STR("1/2 in, 7/8"), QUANTITY_LENGTH,
	    METAL_NONE, &l, &f), QUANTITY_NO_UNIT);
	assert_int_equal(f.offset, 8);
	assert_int_equal(quantity_list_parse(a, STR("1/2, in"), QUANTITY_LENGTH,
	    METAL_NONE, &l, &f), QUANTITY_BAD);
	assert_int_equal(f.offset, 5);
	arena_free(a);
}

static void products(void **state)
{
	static const struct list_case cases[] = {
		{ "1/4 x 1 x 9 in", 3, { 6.35, 25.4, 228.6 } },
		{ "3/8 x 3 x 8 in", 3, { 9.525, 76.2, 203.2 } },
		{ "3/8 × 3 × 8 in", 3, { 9.525, 76.2, 203.2 } },
		{ "3/8x3x8 in", 3, { 9.525, 76.2, 203.2 } },
		{ "3/8 X 3 by 8 inches", 3, { 9.525, 76.2, 203.2 } },
		{ "3/8\" x 3\" x 8\"", 3, { 9.525, 76.2, 203.2 } },
		{ "3/8 in x 2 ft x 8 in", 3, { 9.525, 609.6, 203.2 } },
		{ "11 ga x 3 x 8 in", 3, { 0.1196 * 25.4, 76.2, 203.2 } },
		{ "NPS 6 schedule 40 x 3 in", 2, { 168.275, 76.2 } },
		{ "NPS 6 x 3 in", 2, { 168.275, 76.2 } },
		{ "1 x 1-1/2 x 2 in", 3, { 25.4, 38.1, 50.8 } },
	};
	struct arena *a = arena_new(NULL, NULL);
	struct quantity_list l;
	struct quantity_fault f;
	size_t used;

	(void)state;
	for (size_t i = 0; i < COUNT(cases); i++) {
		assert_int_equal(quantity_product_parse(a, str_of(cases[i].text), METAL_STEEL,
		    &l, NULL, &f), QUANTITY_OK);
		check_list(l, &cases[i]);
	}
	assert_int_equal(quantity_product_parse(a, STR("3/8 x 3 x 8 in A36 plate"),
	    METAL_NONE, &l, &used, &f), QUANTITY_OK);
	assert_int_equal(l.n, 3);
	assert_int_equal(used, 14);
	/* A gauge serves nobody, and neither does nothing. */
	assert_int_equal(quantity_product_parse(a, STR("3 x 4 x 11 ga"), METAL_STEEL, &l,
	    NULL, &f), QUANTITY_NO_UNIT);
	assert_int_equal(f.offset, 0);
	assert_int_equal(quantity_product_parse(a, STR("11 ga x 3 x 8"), METAL_STEEL, &l,
	    NULL, &f), QUANTITY_NO_UNIT);
	assert_int_equal(f.offset, 8);
	assert_int_equal(quantity_product_parse(a, STR("3/8 x 3 x wide in"), METAL_STEEL,
	    &l, NULL, &f), QUANTITY_BAD);
	assert_int_equal(f.offset, 10);
	arena_free(a);
}

/* No text may read past its end or leave the fault outside it. */
static void every_prefix_of_every_form_is_safe(void **state)
{
	static const char *const texts[] = {
		"NPS 1-1/2 schedule XXS x 3-1/16 in", "6'-4-1/2\" ±1/32 in", "1½ to ⅞ in",
		"+1/16, -0 in", "110–140 A", "150 ° F", "0.280 in, 9.5 mm and 1 in",
		"20 ft3/h", "-40 degC to 22.5 degF",
	};
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t i = 0; i < COUNT(texts); i++)
		for (size_t n = 0; n <= str_of(texts[i]).n; n++) {
			/* A copy of the exact size lets a checker see any overrun. */
			str s = { test_malloc(n ? n : 1), n };
			struct quantity_list l;
			struct quantity_fault f;

			for (size_t k = 0; k < n; k++)
				((char *)(uintptr_t)s.p)[k] = texts[i][k];
			for (int want = 0; want < QUANTITY_KINDS; want++) {
				(void)quantity_list_parse(a, s, (enum quantity_kind)want, METAL_STEEL,
				    &l, &f);
				assert_true(f.offset <= n);
				assert_int_equal(f.result == QUANTITY_OK, l.n > 0);
			}
			(void)quantity_product_parse(a, s, METAL_STEEL, &l, NULL, &f);
			assert_true(f.offset <= n);
			test_free((void *)(uintptr_t)s.p);
		}
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(inches_in_all_spellings),
		cmocka_unit_test(mixed_numbers),
		cmocka_unit_test(feet_and_inches),
		cmocka_unit_test(decimals_and_metric),
		cmocka_unit_test(inches_convert_with_one_rounding),
		cmocka_unit_test(ranges),
		cmocka_unit_test(other_kinds),
		cmocka_unit_test(gauges),
		cmocka_unit_test(gauges_that_are_none),
		cmocka_unit_test(pipe_sizes),
		cmocka_unit_test(pipe_faults),
		cmocka_unit_test(tolerances),
		cmocka_unit_test(sizes_below_zero),
		cmocka_unit_test(bad_quantities),
		cmocka_unit_test(numbers_without_a_unit),
		cmocka_unit_test(units_that_are_none),
		cmocka_unit_test(words_after_a_quantity),
		cmocka_unit_test(lists),
		cmocka_unit_test(products),
		cmocka_unit_test(every_prefix_of_every_form_is_safe),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
