/* Jigs of ASME IX 2010 QW-466.1 (two copies) as printed, AWS D1.1 (from memory) and API
 * 1104 (3-1/2 in plunger seen, the rest from memory). */
#include "reckon/jig.h"

#include "reckon/bend.h"

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

static void printed_rows(void **state)
{
	static const struct {
		const char *code, *group;
		double yield_ksi, t_in, a_in, c_in, percent;
	} rows[] = {
		{ "ASME IX", "others", 0, 0.375, 1.5, 2.375, 20.0 },
		{ "ASME IX", "P23", 0, 0.125, 2.0625, 2.375, 5.7 },
		{ "ASME IX", "P11", 0, 0.375, 2.5, 3.375, 13.0 },
		{ "ASME IX", "P51", 0, 0.375, 3, 3.875, 11.1 },
		{ "ASME IX", "P52", 0, 0.375, 3.75, 4.625, 9.1 },
		{ "AWS D1.1", "", 50, 0.375, 1.5, 2.375, 20.0 },
		{ "AWS D1.1", "", 50.1, 0.375, 2, 2.875, 15.8 },
		{ "AWS D1.1", "", 89.9, 0.375, 2, 2.875, 15.8 },
		{ "AWS D1.1", "", 90, 0.375, 2.5, 3.375, 13.0 },
		{ "AWS D1.1", "", 35, 0.280, 1.5, 2.375, 15.7 }, /* the same plunger */
		{ "API 1104", "", 0, 0.5, 3.5, 4.625, 12.5 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct jig j;

		assert_true(jig_find(str_of(rows[i].code), str_of(rows[i].group),
		    rows[i].yield_ksi, rows[i].t_in * 25.4, &j));
		check(j.plunger_mm / 25.4, rows[i].a_in, 1e-6);
		check(j.die_mm / 25.4, rows[i].c_in, 1e-6);
		check(bend_strain_percent(j.plunger_mm, rows[i].t_in * 25.4),
		    rows[i].percent, 0.05);
	}
}

/* QW-466.1: A = 4 t, C = A + 2 t + 1/8 in. */
static void all_others(void **state)
{
	struct jig j;

	(void)state;
	for (double t = 2; t < 9.5; t += 0.7) {
		assert_true(jig_find(STR("ASME IX"), STR("others"), 0, t, &j));
		check(j.plunger_mm, 4 * t, 1e-9);
		check(j.die_mm, 6 * t + 3.175, 1e-9);
		assert_int_equal(j.seen, SEEN_PAGE);
	}
}

/* The code prints 345 and 620 MPa beside 50 and 90 ksi: such a steel is of the row of
 * the round figure, one a little stronger is not. */
static void metric_yields_on_the_edges(void **state)
{
	static const struct { double mpa, a_in; } rows[] = {
		{ 345, 1.5 }, { 346, 2 }, { 619, 2 }, { 620, 2.5 }, { 344, 1.5 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct jig j;

		assert_true(jig_find(STR("AWS D1.1"), STR("others"),
		    rows[i].mpa / 6.894757293168362, 9.525, &j));
		check(j.plunger_mm / 25.4, rows[i].a_in, 1e-9);
	}
}

/* Aluminum by alloy: 4 t low-magnesium, 6-2/3 t high-magnesium, 16-1/2 t on 1/8 in for
 * 6xxx and 4xxx filler; D1.1 judges no aluminum, D1.2 no steel. */
static void jigs_by_alloy(void **state)
{
	static const struct { const char *code, *metal, *filler; double t_in, a_in; } rows[] = {
		{ "D1.2", "5052-H32 plate", "ER5356", 0.375, 1.5 },
		{ "AWS D1.2", "5083 plate", "ER5356", 0.375, 2.5 },
		{ "D1.2", "6061-T6 plate", "ER5356", 0.125, 2.0625 },
		{ "D1.2", "5052-H32 sheet", "ER4043", 0.125, 2.0625 },
		{ "IX", "6061-T6 plate", "ER4043", 0.375, 2.0625 },
		{ "IX", "5086 plate", "", 0.375, 2.5 },
		{ "IX", "304L plate", "ER308L", 0.375, 1.5 },
		{ "D1.1", "6061-T6 plate", "ER4043", 0.375, 0 },
		{ "D1.2", "A36 plate", "E7018", 0.375, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double t = rows[i].t_in * 25.4;
		struct jig j = { 0 };
		bool known = jig_of_metal(jig_code(str_of(rows[i].code)), str_of(rows[i].metal),
		    36, str_of(rows[i].filler), &t, &j);

		assert_int_equal(known, rows[i].a_in > 0);
		if (known)
			check(j.plunger_mm / 25.4, rows[i].a_in, 1e-6);
		if (known && str_starts(str_of(rows[i].code), STR("D1.2")))
			assert_int_equal(j.seen, SEEN_MEMORY);
	}
}

static void verdicts(void **state)
{
	struct jig j;

	(void)state;
	assert_true(jig_find(STR("AWS D1.1"), STR(""), 36, 9.525, &j));
	assert_int_equal(j.seen, SEEN_MEMORY);
	assert_int_equal(jig_judge(&j, 38.1), JIG_AS_ASKED);
	assert_int_equal(jig_judge(&j, 25.4), JIG_HARDER);
	assert_int_equal(jig_judge(&j, 50.8), JIG_MILDER);
	assert_false(jig_find(STR("AWS D9"), STR(""), 36, 9, &j));
	assert_false(jig_find(STR("ASME IX"), STR("P99"), 36, 9, &j));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(printed_rows),
		cmocka_unit_test(all_others),
		cmocka_unit_test(metric_yields_on_the_edges),
		cmocka_unit_test(jigs_by_alloy),
		cmocka_unit_test(verdicts),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
