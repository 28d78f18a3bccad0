/* AWS D1.1 Table 6.1 (to 2015) and 8.1 (2020) by item; profile figures of Fig 5.4,
 * Tables 7.8 and 7.9; bends 4.9.3.3 (2015); fillet break 4.22.4.1 (2015); AWS D1.6:2017
 * Table 8.1. Figures in inches as the tables print them. */
#include "reckon/visual.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

enum { MOST = 24 };

struct limits { struct accept v[MOST]; size_t n; };

static struct limits ask(struct visual_query q)
{
	struct limits l;

	l.n = visual_limits(&q, l.v, MOST);
	assert_true(l.n <= MOST);
	return l;
}

static const struct accept *find(const struct limits *l, const char *feature)
{
	for (size_t i = 0; i < l->n; i++)
		if (str_eq(str_of(l->v[i].feature), str_of(feature)))
			return &l->v[i];
	return NULL;
}

static void check(const struct limits *l, const char *feature, double limit,
    const char *clause)
{
	const struct accept *a = find(l, feature);

	if (!a || a->limit != limit)
		print_error("%s\n", feature);
	assert_non_null(a);
	assert_int_equal(a->form, ACCEPT_AT_MOST);
	assert_true(a->limit == limit);
	if (clause)
		assert_string_equal(a->clause, clause);
}

static struct visual_query fillet_query(enum accept_loading loading)
{
	return (struct visual_query){ .code = STR("D1.1"), .edition = 2020,
		.loading = loading, .weld = WELD_FILLET, .thickness_mm = 9.525,
		.leg_mm = 7.9375 };
}

static void welder_test_fillet(void **state)
{
	struct limits l = ask(fillet_query(LOADING_WELDER_TEST));

	(void)state;
	assert_int_equal(find(&l, "Cracks")->form, ACCEPT_NONE);
	assert_int_equal(find(&l, "Craters")->form, ACCEPT_WORDS);
	assert_int_equal(find(&l, "Fusion")->form, ACCEPT_WORDS);
	check(&l, "Undercut", 1.0 / 32, "6.10.1");
	check(&l, "Leg short of size", 1.0 / 8, "Table 8.1 item 6");
	/* The face of a 5/16 leg is 0.442 in wide. */
	check(&l, "Convexity", 1.0 / 8, "Tables 7.8 and 7.9");
	assert_null(find(&l, "Reinforcement"));
	assert_null(find(&l, "Undercut, short lengths"));
	assert_string_equal(find(&l, "Undercut")->tool, "undercut gauge");
	assert_string_equal(find(&l, "Undercut")->code, "AWS D1.1");
	assert_int_equal(find(&l, "Undercut")->edition, 2020);
}

static void static_fillet(void **state)
{
	struct limits l = ask(fillet_query(LOADING_STATIC));

	(void)state;
	check(&l, "Undercut", 1.0 / 32, "Table 8.1 item 7A");
	check(&l, "Undercut, short lengths", 1.0 / 16, "Table 8.1 item 7A");
	check(&l, "Piping porosity, sum of widths", 3.0 / 8, "Table 8.1 item 8A");
	assert_string_equal(find(&l, "Piping porosity, sum of widths")->unit,
	    "in per 1 in");
}

static void undercut_changes_at_one_inch(void **state)
{
	struct visual_query q = fillet_query(LOADING_STATIC);
	struct limits l;

	(void)state;
	q.thickness_mm = 25.39;
	l = ask(q);
	check(&l, "Undercut", 1.0 / 32, NULL);
	q.thickness_mm = 25.4;
	l = ask(q);
	check(&l, "Undercut", 1.0 / 16, NULL);
	assert_null(find(&l, "Undercut, short lengths"));
}

static void cyclic_undercut_has_two_limits(void **state)
{
	struct limits l = ask(fillet_query(LOADING_CYCLIC));

	(void)state;
	check(&l, "Undercut across the pull", 0.01, "Table 8.1 item 7B");
	check(&l, "Undercut", 1.0 / 32, "Table 8.1 item 7B");
	assert_int_equal(find(&l, "Undercut across the pull")->seen, SEEN_MEMORY);
}

static void legs_and_faces(void **state)
{
	static const struct { double leg_in, under, convex; } cases[] = {
		/* Faces: 0.177, 0.265, 0.354, 0.442, 0.707, 1.061 in. */
		{ 1.0 / 8, 1.0 / 16, 1.0 / 16 }, { 3.0 / 16, 1.0 / 16, 1.0 / 16 },
		{ 1.0 / 4, 3.0 / 32, 1.0 / 8 }, { 5.0 / 16, 1.0 / 8, 1.0 / 8 },
		{ 1.0 / 2, 1.0 / 8, 1.0 / 8 }, { 3.0 / 4, 1.0 / 8, 3.0 / 16 },
	};
	struct visual_query q = fillet_query(LOADING_STATIC);

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct limits l;

		q.leg_mm = cases[i].leg_in * 25.4;
		l = ask(q);
		check(&l, "Leg short of size", cases[i].under, NULL);
		check(&l, "Convexity", cases[i].convex, NULL);
	}
}

static void sizes_not_known_are_left_out(void **state)
{
	struct visual_query q = fillet_query(LOADING_STATIC);
	struct limits l;

	(void)state;
	q.leg_mm = 0;
	q.thickness_mm = 0;
	l = ask(q);
	assert_null(find(&l, "Leg short of size"));
	assert_null(find(&l, "Convexity"));
	assert_null(find(&l, "Undercut"));
	assert_non_null(find(&l, "Cracks"));
}

static struct visual_query groove_query(int edition, enum accept_loading loading,
    double in)
{
	return (struct visual_query){ .code = STR("AWS D1.1"), .edition = edition,
		.loading = loading, .weld = WELD_GROOVE, .thickness_mm = in * 25.4,
		.open_root = true };
}

static void groove_reinforcement_by_edition(void **state)
{
	struct limits l;

	(void)state;
	l = ask(groove_query(2008, LOADING_STATIC, 1.5));
	check(&l, "Reinforcement", 1.0 / 8, "5.24.4.1");
	l = ask(groove_query(2015, LOADING_STATIC, 1));
	check(&l, "Reinforcement", 1.0 / 8, "Tables 5.8 and 5.9");
	l = ask(groove_query(2015, LOADING_STATIC, 1.5));
	check(&l, "Reinforcement", 3.0 / 16, NULL);
	l = ask(groove_query(2020, LOADING_STATIC, 2.5));
	check(&l, "Reinforcement", 1.0 / 4, NULL);
	/* The welder test keeps 1/8 whatever the thickness. */
	l = ask(groove_query(2020, LOADING_WELDER_TEST, 1.5));
	check(&l, "Reinforcement", 1.0 / 8, "6.10.1");
	assert_int_equal(find(&l, "Reinforcement")->seen, SEEN_MEMORY);
}

static void open_roots(void **state)
{
	struct visual_query q = groove_query(2015, LOADING_WELDER_TEST, 0.375);
	struct limits l = ask(q);

	(void)state;
	check(&l, "Hollow root", 1.0 / 16, "4.9.1.3");
	check(&l, "Melt-through", 1.0 / 8, "4.9.1.3");
	check(&l, "Undercut", 1.0 / 32, "4.9.1.1(5)");
	assert_int_equal(find(&l, "Undercut")->seen, SEEN_PAGE);
	q.open_root = false;
	l = ask(q);
	assert_null(find(&l, "Hollow root"));
}

static void editions_move_the_table(void **state)
{
	struct visual_query q = fillet_query(LOADING_STATIC);
	struct limits l;

	(void)state;
	q.edition = 2015;
	l = ask(q);
	check(&l, "Undercut", 1.0 / 32, "Table 6.1 item 7A");
	q.edition = 0;
	l = ask(q);
	assert_int_equal(l.v[0].edition, 2025);
	q.edition = 1990;
	assert_int_equal(ask(q).n, 0);
	q.code = STR("D9.1");
	q.edition = 0;
	assert_int_equal(ask(q).n, 0);
}

static void stainless_sheet(void **state)
{
	struct visual_query q = { .code = STR("D1.6"), .edition = 2017,
		.loading = LOADING_STATIC, .weld = WELD_FILLET, .thickness_mm = 3.175,
		.leg_mm = 3.175 };
	struct limits l = ask(q);

	(void)state;
	check(&l, "Undercut", 0.01, "Table 8.1 item 7A");
	q.thickness_mm = 4.7625;
	l = ask(q);
	check(&l, "Undercut", 1.0 / 32, NULL);
	check(&l, "Undercut, short lengths", 1.0 / 16, NULL);
}

static void a_short_array_still_counts(void **state)
{
	struct visual_query q = fillet_query(LOADING_STATIC);
	struct accept one[1];

	(void)state;
	assert_int_equal(visual_limits(&q, one, 1), ask(q).n);
	assert_string_equal(one[0].feature, "Cracks");
	assert_int_equal(visual_limits(&q, NULL, 0), ask(q).n);
}

static void specimens(void **state)
{
	struct limits l;

	(void)state;
	l.n = test_limits(STR("D1.1"), 2015, TEST_BEND, l.v, MOST);
	assert_int_equal(l.n, 3);
	check(&l, "Any one opening", 1.0 / 8, "4.9.3.3");
	check(&l, "Sum of openings", 3.0 / 8, "4.9.3.3");
	check(&l, "Corner crack", 1.0 / 4, "4.9.3.3");
	l.n = test_limits(STR("D1.1"), 2020, TEST_FILLET_BREAK, l.v, MOST);
	check(&l, "Any one pore or inclusion", 3.0 / 32, "6.23.4.1");
	check(&l, "Sum of pores and inclusions", 3.0 / 8, "6.23.4.1");
	assert_string_equal(find(&l, "Sum of pores and inclusions")->unit, "in per 6 in");
	l.n = test_limits(STR("ASME IX"), 2010, TEST_BEND, l.v, MOST);
	check(&l, "Any one opening", 1.0 / 8, "QW-163");
	l.n = test_limits(STR("D1.1"), 2020, TEST_MACRO, l.v, MOST);
	check(&l, "Undercut", 1.0 / 32, NULL);
	assert_int_equal(find(&l, "Cracks")->seen, SEEN_MEMORY);
	assert_int_equal(test_limits(STR("D1.2"), 2014, TEST_BEND, l.v, MOST), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(welder_test_fillet),
		cmocka_unit_test(static_fillet),
		cmocka_unit_test(undercut_changes_at_one_inch),
		cmocka_unit_test(cyclic_undercut_has_two_limits),
		cmocka_unit_test(legs_and_faces),
		cmocka_unit_test(sizes_not_known_are_left_out),
		cmocka_unit_test(groove_reinforcement_by_edition),
		cmocka_unit_test(open_roots),
		cmocka_unit_test(editions_move_the_table),
		cmocka_unit_test(stainless_sheet),
		cmocka_unit_test(a_short_array_still_counts),
		cmocka_unit_test(specimens),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
