/* The arithmetic of limits. Values are worked by hand; 1 in is 25.4 mm by definition,
 * so 1/32 in is 0.79375 mm. */
#include "units/limit_expr.h"

#include "base/buf.h"
#include "reckon/fillet.h"

#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* t 10 mm, leg 8, throat 5, width 12, root opening 3; root width not known; open root. */
static const struct limit_sizes sizes = {
	.v = { [SIZE_T] = 10, [SIZE_LEG] = 8, [SIZE_THROAT] = 5, [SIZE_WIDTH] = 12,
	    [SIZE_ROOT_OPENING] = 3, [SIZE_OPEN_ROOT] = 1 },
	.known = { [SIZE_T] = true, [SIZE_LEG] = true, [SIZE_THROAT] = true,
	    [SIZE_WIDTH] = true, [SIZE_ROOT_OPENING] = true, [SIZE_OPEN_ROOT] = true },
};

static void want_value(const char *text, enum limit_kind kind, double want)
{
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr e;
	struct limit_fault fault;
	double got = -1;
	bool ok = kind == LIMIT_TRUTH ? limit_expr_condition(a, str_of(text), &e, &fault)
	    : limit_expr_size(a, str_of(text), &e, &fault);

	if (!ok)
		print_error("%s: %zu: %s\n", text, fault.offset, fault.reason);
	assert_true(ok);
	assert_int_equal(e.kind, kind);
	assert_true(limit_expr_value(&e, &sizes, &got));
	if (fabs(got - want) > 1e-12)
		print_error("%s: %.17g, not %.17g\n", text, got, want);
	assert_true(fabs(got - want) <= 1e-12);
	arena_free(a);
}

static void want_fault(const char *text, bool condition, size_t offset,
    const char *reason)
{
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr e;
	struct limit_fault fault;
	bool ok = condition ? limit_expr_condition(a, str_of(text), &e, &fault)
	    : limit_expr_size(a, str_of(text), &e, &fault);

	assert_false(ok);
	if (fault.offset != offset || !strstr(fault.reason, reason))
		print_error("%s: %zu: %s\n", text, fault.offset, fault.reason);
	assert_int_equal(fault.offset, offset);
	assert_non_null(strstr(fault.reason, reason));
	assert_null(e.v);
	arena_free(a);
}

static void numbers_are_exact(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr e;
	struct limit_fault fault;
	double got;

	(void)state;
	assert_true(limit_expr_size(a, STR("1/32 in"), &e, &fault));
	assert_true(limit_expr_value(&e, &sizes, &got));
	assert_true(got == 0.79375);
	assert_string_equal(e.unit, "in");
	assert_int_equal(e.names, 0);
	want_value("1-1/16 in", LIMIT_LENGTH, 26.9875);
	want_value("0.01 in", LIMIT_LENGTH, 0.254);
	want_value("\xE2\x85\x9C in", LIMIT_LENGTH, 9.525);
	want_value("2.5 mm", LIMIT_LENGTH, 2.5);
	want_value("110 deg", LIMIT_ANGLE, 110);
	want_value("110\xC2\xB0", LIMIT_ANGLE, 110);
	want_value("10 %", LIMIT_PERCENT, 10);
	want_value("3", LIMIT_NUMBER, 3);
	arena_free(a);
}

static struct limit_outcome outcome(const char *text, bool truth, struct limit_sizes z)
{
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr e;
	struct limit_fault fault;
	struct limit_outcome o;

	assert_true(truth ? limit_expr_condition(a, str_of(text), &e, &fault)
	    : limit_expr_size(a, str_of(text), &e, &fault));
	o = limit_expr_work(&e, &z);
	arena_free(a);
	return o;
}

/* 3/8 in is 9.525 mm by the definition of the inch. */
static void what_fails_says_how(void **state)
{
	static const struct {
		const char *text; bool truth; double t_mm; enum limit_state state;
		double value; size_t at;
	} rows[] = {
		{ "1 in / (t - 3/8 in) x 1 in", false, 9.525, LIMIT_BY_ZERO, 0, 5 },
		{ "1 mm / (t - 3/8 in) x 1 mm", false, 10.525, LIMIT_KNOWN, 1, 0 },
		{ "2 mm + t / 0", false, 5, LIMIT_BY_ZERO, 0, 9 },
		{ "max(1 mm, t / 0)", false, 5, LIMIT_BY_ZERO, 0, 12 },
		{ "t / 0 + leg", false, 5, LIMIT_BY_ZERO, 0, 2 },
		{ "leg / t", false, 0, LIMIT_UNKNOWN, 0, 0 },
		{ "t - 1/2 in", false, 9.525, LIMIT_KNOWN, -3.175, 0 },
		{ "1 mm / (t - t) x 1 mm > 3 mm", true, 5, LIMIT_BY_ZERO, 0, 5 },
		{ "t > 3 mm or t / 0 > 1 mm", true, 5, LIMIT_KNOWN, 1, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct limit_sizes z = { 0 };
		struct limit_outcome o;

		limit_size_set(&z, SIZE_T, rows[i].t_mm);
		o = outcome(rows[i].text, rows[i].truth, z);
		assert_int_equal(o.state, rows[i].state);
		assert_true(fabs(o.value - rows[i].value) < 1e-9);
		if (o.state == LIMIT_BY_ZERO)
			assert_int_equal(o.at, rows[i].at);
	}
}

/* 45 factors of nearly 1e7 pass the largest double, about 1.8e308. */
static void too_large_is_no_number(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };
	struct limit_sizes z = { 0 };

	(void)state;
	limit_size_set(&z, SIZE_T, 1);
	buf_adds(&b, "t");
	for (int i = 0; i < 45; i++)
		buf_adds(&b, " x 9999999");
	assert_int_equal(outcome(buf_z(&b), false, z).state, LIMIT_ENDLESS);
	arena_free(a);
}

static void strengths_and_parts(void **state)
{
	struct limit_sizes z = { 0 };

	(void)state;
	limit_size_set(&z, SIZE_BASE_STRENGTH, 58000);
	limit_size_set(&z, SIZE_LENGTH, 254);
	limit_size_set(&z, SIZE_DIAMETER, 20);
	z.known[SIZE_FLAME_CUT] = z.known[SIZE_COLD_CUT] = true;
	z.v[SIZE_FLAME_CUT] = 1;
	assert_true(outcome("0.95 base strength", false, z).value == 55100);
	assert_true(outcome("24 ksi", false, z).value == 24000);
	/* 6894.757 Pa to the psi (NIST SP 811): 400 MPa is 58,015 psi. */
	assert_true(fabs(outcome("400 MPa", false, z).value - 58015.1) < 0.1);
	assert_true(outcome("base strength >= 58 ksi", true, z).value == 1);
	assert_true(outcome("0.001 length + 0.1 diameter", false, z).value == 2.254);
	assert_true(outcome("flame cut and length > 9 in", true, z).value == 1);
	assert_true(outcome("cold cut or length > 11 in", true, z).value == 0);
}

/* The fillet's throat is told in two rooms; they agree. */
static void fillet_sizes_agree(void **state)
{
	struct limit_sizes z = { 0 };

	(void)state;
	limit_sizes_fillet(&z, 7.9375, 0);
	assert_true(fabs(z.v[SIZE_THROAT] / fillet_throat_mm(7.9375) - 1) < 1e-12);
	assert_true(fabs(z.v[SIZE_WIDTH] - 11.2253) < 1e-4);
	/* A triangle of 3, 4 and 5: throat 3 x 4 / 5. */
	limit_sizes_fillet(&z, 4, 3);
	assert_true(fabs(z.v[SIZE_THROAT] - 2.4) < 1e-12 && fabs(z.v[SIZE_WIDTH] - 5) < 1e-12);
	assert_true(z.v[SIZE_LEG] == 3);
	limit_sizes_fillet(&z, 0, 0);
	assert_false(z.known[SIZE_LEG] || z.known[SIZE_THROAT] || z.known[SIZE_WIDTH]);
}

static void precedence_is_that_of_school(void **state)
{
	(void)state;
	want_value("2 mm + 3 x 4 mm", LIMIT_LENGTH, 14);
	want_value("(2 mm + 3 mm) x 4", LIMIT_LENGTH, 20);
	want_value("20 mm - 3 mm - 2 mm", LIMIT_LENGTH, 15);
	want_value("20 mm / 4 / 5", LIMIT_LENGTH, 1);
	want_value("20 mm / 4 x 5", LIMIT_LENGTH, 25);
	want_value("12 - 2 x 3 + 4 / 2", LIMIT_NUMBER, 8);
	want_value("0.1 t + 1 mm", LIMIT_LENGTH, 2);
	want_value("2(1 mm + t)", LIMIT_LENGTH, 22);
	want_value("1/2 t", LIMIT_LENGTH, 5);
	want_value("t/4", LIMIT_LENGTH, 2.5);
	want_value("t - 1/16 in", LIMIT_LENGTH, 8.4125);
	want_value("t\xC3\x97" "2", LIMIT_LENGTH, 20);
	want_value("0.5 * leg", LIMIT_LENGTH, 4);
	want_value("t / leg", LIMIT_NUMBER, 1.25);
	want_value("throat + root opening + width", LIMIT_LENGTH, 20);
}

static void least_and_greatest(void **state)
{
	(void)state;
	want_value("min(1/16 in, 0.1 t)", LIMIT_LENGTH, 1);
	want_value("min(1/32 in, 0.1 t)", LIMIT_LENGTH, 0.79375);
	want_value("max(3 mm, t/4, leg/2)", LIMIT_LENGTH, 4);
	want_value("1 mm + 2 min(t, leg)", LIMIT_LENGTH, 17);
	want_value("0.5 min(t, leg)", LIMIT_LENGTH, 4);
	want_value("MIN ( max(t, leg) , 9 mm )", LIMIT_LENGTH, 9);
	want_value("min((t + leg) / 3, 2 in)", LIMIT_LENGTH, 6);
}

static void conditions(void **state)
{
	(void)state;
	want_value("t < 1 in", LIMIT_TRUTH, 1);
	want_value("t > 1 in", LIMIT_TRUTH, 0);
	want_value("3 mm < t <= 10 mm", LIMIT_TRUTH, 1);
	want_value("3 mm < t < 10 mm", LIMIT_TRUTH, 0);
	want_value("11 mm < t <= 12 mm", LIMIT_TRUTH, 0);
	want_value("t \xE2\x89\xA4 10 mm", LIMIT_TRUTH, 1);
	want_value("t \xE2\x89\xA5 10.1 mm", LIMIT_TRUTH, 0);
	want_value("t = 10 mm", LIMIT_TRUTH, 1);
	want_value("2 leg > t + 5 mm", LIMIT_TRUTH, 1);
	want_value("open root", LIMIT_TRUTH, 1);
	want_value("t > 3 mm and open root", LIMIT_TRUTH, 1);
	/* `and` binds tighter than `or`: true or (true and false). */
	want_value("t > 3 mm or t > 4 mm and t > 99 mm", LIMIT_TRUTH, 1);
	want_value("(t > 3 mm or t > 4 mm) and t > 99 mm", LIMIT_TRUTH, 0);
	want_value("1 mm < t < 20 mm and 9 mm < leg < 10 mm", LIMIT_TRUTH, 0);
	want_value("9 mm < leg < 10 mm or 1 mm < t < 20 mm", LIMIT_TRUTH, 1);
	want_value("t / leg >= 1.25", LIMIT_TRUTH, 1);
}

static void at_the_limit(void **state)
{
	static const struct { double t_mm; double below, at_most; } rows[] = {
		{ 25.39, 1, 1 }, { 25.4, 0, 1 }, { 25.41, 0, 0 },
		/* One inch by way of thirds is still one inch. */
		{ 25.4 / 3 * 3, 0, 1 }, { 0.1 * 254, 0, 1 },
	};
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr below, at_most;
	struct limit_fault fault;

	(void)state;
	assert_true(limit_expr_condition(a, STR("t < 1 in"), &below, &fault));
	assert_true(limit_expr_condition(a, STR("t <= 1 in"), &at_most, &fault));
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct limit_sizes z = { .v = { rows[i].t_mm }, .known = { true } };
		double got;

		assert_true(limit_expr_value(&below, &z, &got) && got == rows[i].below);
		assert_true(limit_expr_value(&at_most, &z, &got) &&
		    got == rows[i].at_most);
	}
	arena_free(a);
}

static void what_is_not_known_stays_open(void **state)
{
	static const struct { const char *text; bool truth, known; double value;
	    } rows[] = {
		{ "0.6 root width", false, false, 0 },
		{ "min(root width, 3 mm)", false, false, 0 },
		{ "t / (leg - leg)", false, false, 0 }, { "t / 0", false, false, 0 },
		{ "root width > 1 mm", true, false, 0 },
		{ "root width > 1 mm and t > 99 mm", true, true, 0 },
		{ "root width > 1 mm and t > 9 mm", true, false, 0 },
		{ "t > 9 mm or root width > 1 mm", true, true, 1 },
		{ "t > 99 mm or root width > 1 mm", true, false, 0 },
	};
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct limit_expr e;
		struct limit_fault fault;
		double got = 7;
		bool (*read)(struct arena *, str, struct limit_expr *,
		    struct limit_fault *) =
		    rows[i].truth ? limit_expr_condition : limit_expr_size;

		assert_true(read(a, str_of(rows[i].text), &e, &fault));
		if (limit_expr_value(&e, &sizes, &got) != rows[i].known)
			print_error("%s\n", rows[i].text);
		assert_int_equal(limit_expr_value(&e, &sizes, &got), rows[i].known);
		assert_true(got == rows[i].value);
	}
	arena_free(a);
}

static void kinds_do_not_mix(void **state)
{
	(void)state;
	want_fault("1/16 in + 2 deg", false, 8, "a length and an angle cannot be added");
	want_fault("t - 10 %", false, 2, "a length and a percentage cannot be "
	    "subtracted");
	want_fault("t + 1", false, 2, "a length and a bare number cannot be added");
	want_fault("t x leg", false, 2, "a length and a length cannot be multiplied");
	want_fault("2 / t", false, 2, "a bare number and a length cannot be divided");
	want_fault("10 % / 1 in", false, 5, "cannot be divided");
	want_fault("t < 10 deg", true, 2, "a length and an angle cannot be compared");
	want_fault("min(t, 10 deg)", false, 7,
	    "a length and an angle cannot be compared");
	want_fault("t > 1 in and leg", true, 9, "a condition and a length");
	want_fault("min(t < 1 in, open root)", true, 4, "cannot be compared");
	want_fault("open root + t", false, 10, "cannot be added");
	want_fault("t < open root", true, 2, "cannot be compared");
	want_fault("t", true, 0, "a condition is owed");
	want_fault(" t < 1 in", false, 1, "a size is owed");
	want_fault("open root", false, 0, "a size is owed");
}

static void faults_have_places(void **state)
{
	(void)state;
	want_fault("", false, 0, "missing at the end");
	want_fault("   ", false, 3, "missing at the end");
	want_fault("1/16 in +", false, 9, "missing at the end");
	want_fault("1/16 in + x", false, 10, "is no size");
	want_fault("(t + 1 mm", false, 0, "not closed");
	want_fault("t + 1 mm)", false, 8, "not opened");
	want_fault("min(t)", false, 0, "two values");
	want_fault("min(t,)", false, 6, "is owed here");
	want_fault("min()", false, 4, "is owed here");
	want_fault("t, leg", false, 1, "a comma");
	want_fault("(t, leg)", false, 2, "a comma");
	want_fault("t leg", false, 2, "an operator is owed");
	want_fault("1/16 in 2", false, 8, "an operator is owed");
	want_fault("1 mm t", false, 5, "an operator is owed");
	want_fault("-t", false, 0, "is owed here");
	want_fault("t + * 2", false, 4, "is owed here");
	want_fault("t ? 2", false, 2, "an operator is owed");
	want_fault("0.1 thick", false, 4, "is no size");
	want_fault("1/0 in", false, 1, "divided by zero");
	want_fault("12345678 in", false, 7, "too many figures");
	want_fault("3 A", false, 2, "a limit is");
	want_fault("16 ga", false, 3, "a limit is");
	want_fault("root t", false, 0, "is no size");
	want_fault("1 mm < t < 2 mm < leg", true, 16, "two sides");
	want_fault("\xFF\xC2", false, 0, "is owed here");
	want_fault("t \xE2\x82\xAC 2", false, 2, "an operator is owed");
}

static void likely_names(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr e;
	struct limit_fault fault;

	(void)state;
	assert_false(limit_expr_size(a, STR("0.1 throt"), &e, &fault));
	assert_true(str_eq(fault.likely, STR("throat")));
	assert_false(limit_expr_size(a, STR("0.1 zzzzzz"), &e, &fault));
	assert_int_equal(fault.likely.n, 0);
	arena_free(a);
}

/* n brackets, or a sum of n terms. */
static bool reads(const char *open, const char *core, const char *close, size_t n)
{
	size_t size = n * (strlen(open) + strlen(close)) + strlen(core) + 1;
	char *text = calloc(1, size);
	struct arena *a = arena_new(NULL, NULL);
	struct limit_expr e;
	struct limit_fault fault;
	double got;
	bool ok;

	assert_non_null(text);
	for (size_t i = 0; i < n; i++)
		strcat(text, open);
	strcat(text, core);
	for (size_t i = 0; i < n; i++)
		strcat(text, close);
	ok = limit_expr_size(a, str_of(text), &e, &fault);
	assert_true(!ok || limit_expr_value(&e, &sizes, &got));
	assert_true(ok || strstr(fault.reason, "deep") || strstr(fault.reason, "long"));
	arena_free(a);
	free(text);
	return ok;
}

static void depth_and_length_have_bounds(void **state)
{
	(void)state;
	assert_true(reads("(", "t", ")", 32));
	assert_false(reads("(", "t", ")", 33));
	assert_false(reads("(", "t", ")", 3000));
	assert_false(reads("1 mm + (", "t", ")", 17));
	assert_true(reads("1 mm + (", "t", ")", 16));
	/* 64 numbers and 63 signs are 127 steps. */
	assert_true(reads("", "t", " + t", 63));
	assert_false(reads("", "t", " + t", 64));
	assert_false(reads("", "t", " + t", 5000));
	assert_true(reads("min(t, ", "t", ")", 32));
	assert_false(reads("min(t, ", "t", ")", 33));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(numbers_are_exact),
		cmocka_unit_test(what_fails_says_how),
		cmocka_unit_test(too_large_is_no_number),
		cmocka_unit_test(strengths_and_parts),
		cmocka_unit_test(fillet_sizes_agree),
		cmocka_unit_test(precedence_is_that_of_school),
		cmocka_unit_test(least_and_greatest),
		cmocka_unit_test(conditions),
		cmocka_unit_test(at_the_limit),
		cmocka_unit_test(what_is_not_known_stays_open),
		cmocka_unit_test(kinds_do_not_mix),
		cmocka_unit_test(faults_have_places),
		cmocka_unit_test(likely_names),
		cmocka_unit_test(depth_and_length_have_bounds),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
