/* The shipped acceptance sets against published values.
 *
 * AWS D1.1 Table 6.1 (to 2015) and 8.1 (2020) by item; profile figures of Fig 5.4 and
 * Tables 7.8 and 7.9; bends 4.9.3.3 and fillet breaks 4.22.4.1 of 2015; AWS D1.6:2017
 * Table 8.1; ASME IX 2010 QW-163, QW-182 and QW-184; ISO 5817:2003 and 2007 by reference
 * number of ISO 6520. D1.2 and what is marked memory in the sets: from memory. */
#include "model_bench.h"

#include "base/standards.h"
#include "cli/shipped.h"
#include "model/standard.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(v) (sizeof(v) / sizeof *(v))

struct wanted { double t_mm, leg_mm, width_mm; bool open_root; };

static struct limit_sizes sizes_for(struct wanted w)
{
	struct limit_sizes z = { .v = { [SIZE_T] = w.t_mm, [SIZE_LEG] = w.leg_mm,
	    [SIZE_THROAT] = w.leg_mm / sqrt(2), [SIZE_WIDTH] = w.width_mm ? w.width_mm
	    : w.leg_mm * sqrt(2), [SIZE_ROOT_WIDTH] = w.width_mm,
	    [SIZE_OPEN_ROOT] = w.open_root } };

	for (int i = 0; i < SIZES; i++)
		z.known[i] = z.v[i] > 0 || i == SIZE_OPEN_ROOT;
	return z;
}

/* All sets read, whichever are named. */
static struct bench all_sets(void)
{
	struct file_text one = { "skills.md", "# Skills\n" };
	struct bench t = bench_bind(&one, 1);

	for (size_t i = 0; i < t.m->nshipped; i++)
		t.m->shipped[i].wanted = true;
	shipped_read(t.arena, t.m, &t.sources, t.f);
	return t;
}

static const struct standard *set_named(const struct model *m, const char *name)
{
	for (size_t i = 0; i < m->nshipped; i++)
		if (str_eq(m->shipped[i].name, str_of(name)))
			return &m->shipped[i];
	print_error("no set %s\n", name);
	return NULL;
}

/* The one limit of that name which holds for the sizes; null when there is none. */
static const struct standard_limit *find(const struct standard *s, enum standard_test test,
    unsigned welds, const struct limit_sizes *z, const char *name)
{
	const struct standard_limit *found = NULL;

	for (size_t i = 0; i < s->n; i++) {
		const struct standard_limit *l = &s->v[i];
		double holds = 1;

		if (l->test != test || !(l->welds & welds) || !str_eq(l->name, str_of(name)))
			continue;
		if (l->where.v)
			assert_true(limit_expr_value(&l->where, z, &holds));
		if (holds == 0)
			continue;
		if (found)
			print_error("%s twice\n", name);
		assert_null(found);
		found = l;
	}
	return found;
}

static void expect_in(const struct standard *s, enum standard_test test, unsigned welds,
    struct wanted w, const char *name, double in, const char *clause)
{
	struct limit_sizes z = sizes_for(w);
	const struct standard_limit *l = find(s, test, welds, &z, name);
	double mm;

	if (!l)
		print_error("%.*s: no %s\n", STR_ARG(s->name), name);
	assert_non_null(l);
	assert_int_equal(l->form, LIMIT_AT_MOST);
	assert_true(limit_expr_value(&l->most, &z, &mm));
	if (fabs(mm - in * 25.4) > 1e-12)
		print_error("%.*s %s: %g in, not %g\n", STR_ARG(s->name), name, mm / 25.4, in);
	assert_true(fabs(mm - in * 25.4) <= 1e-12);
	if (clause)
		assert_true(str_eq(l->clause, str_of(clause)));
}

static void expect_absent(const struct standard *s, enum standard_test test, unsigned welds,
    struct wanted w, const char *name)
{
	struct limit_sizes z = sizes_for(w);

	assert_null(find(s, test, welds, &z, name));
}

static void every_set_is_sound(void **state)
{
	struct bench t = all_sets();

	(void)state;
	if (t.f->n)
		print_findings(&t);
	assert_int_equal(t.f->n, 0);
	assert_int_equal(t.m->nshipped, STANDARDS_SHIPPED);
	for (size_t i = 0; i < t.m->nshipped; i++) {
		const struct standard *s = &t.m->shipped[i];

		assert_true(s->n > 2 && s->code.n && s->edition && s->loading.n && s->source.n);
		assert_int_equal(s->checked.n, 0);
		assert_true(!i || str_cmp(standard_shipped(i - 1).path,
		    standard_shipped(i).path) < 0);
		for (size_t k = 0; k < i; k++)
			assert_false(str_eq(s->name, t.m->shipped[k].name));
	}
	bench_free(&t);
}

static void welder_test_of_a_fillet(void **state)
{
	struct bench t = all_sets();
	const struct standard *s = set_named(t.m, "D1.1-2020 welder test");
	struct wanted w = { 9.525, 7.9375, 0, false };
	struct limit_sizes z = sizes_for(w);

	(void)state;
	assert_int_equal(find(s, TEST_VISUAL, WELD_FILLET, &z, "Cracks")->form, LIMIT_NONE);
	assert_int_equal(find(s, TEST_VISUAL, WELD_FILLET, &z, "Craters")->form, LIMIT_WORDS);
	assert_int_equal(find(s, TEST_VISUAL, WELD_FILLET, &z, "Fusion")->form, LIMIT_WORDS);
	expect_str(find(s, TEST_VISUAL, WELD_FILLET, &z, "Fusion")->more, "no overlap");
	expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Undercut", 1.0 / 32, "6.10.1");
	expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Leg short of size", 1.0 / 8,
	    "Table 8.1 item 6");
	/* The face of a 5/16 leg is 0.442 in wide. */
	expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Convexity", 1.0 / 8, "Tables 7.8 and 7.9");
	expect_absent(s, TEST_VISUAL, WELD_FILLET, w, "Reinforcement");
	expect_absent(s, TEST_VISUAL, WELD_FILLET, w, "Undercut, short lengths");
	expect_str(find(s, TEST_VISUAL, WELD_FILLET, &z, "Undercut")->tool, "undercut gauge");
	expect_str(find(s, TEST_VISUAL, WELD_FILLET, &z, "Undercut")->metric, "1 mm");
	expect_str(find(s, TEST_VISUAL, WELD_FILLET, &z, "Undercut")->unit, "in");
	assert_int_equal(find(s, TEST_VISUAL, WELD_FILLET, &z, "Undercut")->seen, LIMIT_MEMORY);
	assert_int_equal(find(s, TEST_VISUAL, WELD_GROOVE, &z, "Undercut")->seen, LIMIT_SEEN);
	bench_free(&t);
}

static void static_welds(void **state)
{
	struct bench t = all_sets();
	const struct standard *s = set_named(t.m, "D1.1-2020 static");
	struct wanted thin = { 25.39, 7.9375, 0, false }, inch = { 25.4, 7.9375, 0, false };
	struct limit_sizes z = sizes_for(thin);

	(void)state;
	expect_in(s, TEST_VISUAL, WELD_FILLET, thin, "Undercut", 1.0 / 32, "Table 8.1 item 7A");
	expect_in(s, TEST_VISUAL, WELD_FILLET, thin, "Undercut, short lengths", 1.0 / 16,
	    "Table 8.1 item 7A");
	expect_in(s, TEST_VISUAL, WELD_FILLET, inch, "Undercut", 1.0 / 16, "Table 8.1 item 7A");
	expect_absent(s, TEST_VISUAL, WELD_FILLET, inch, "Undercut, short lengths");
	assert_int_equal(find(s, TEST_VISUAL, WELD_GROOVE, &z, "Piping porosity")->form,
	    LIMIT_NONE);
	for (unsigned welds = WELD_FILLET; welds <= WELD_GROOVE; welds++) {
		double found[2] = { 0 };
		size_t n = 0;

		for (size_t i = 0; i < s->n; i++)
			if (str_eq(s->v[i].name, STR("Piping porosity, sum of widths")) &&
			    s->v[i].welds == welds) {
				assert_true(n < 2);
				expect_str(s->v[i].per, n ? "12 in" : "1 in");
				assert_int_equal(s->v[i].seen, LIMIT_SUMMARY);
				limit_expr_value(&s->v[i].most, &z, &found[n++]);
			}
		assert_int_equal(n, 2);
		assert_true(found[0] == 9.525 && found[1] == 19.05);
	}
	bench_free(&t);
}

static void cyclic_welds(void **state)
{
	struct bench t = all_sets();
	const struct standard *s = set_named(t.m, "D1.1-2020 cyclic");
	struct wanted w = { 9.525, 7.9375, 0, false };
	struct limit_sizes z = sizes_for(w);
	const struct standard_limit *pores = find(s, TEST_VISUAL, WELD_FILLET, &z, "Piping pores");
	double count;

	(void)state;
	expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Undercut across the pull", 0.01,
	    "Table 8.1 item 7B");
	expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Undercut", 1.0 / 32, "Table 8.1 item 7B");
	expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Piping pore, width", 3.0 / 32,
	    "Table 8.1 item 8B");
	assert_true(limit_expr_value(&pores->most, &z, &count) && count == 1);
	expect_str(pores->per, "4 in");
	assert_int_equal(find(s, TEST_VISUAL, WELD_FILLET, &z,
	    "Undercut across the pull")->seen, LIMIT_SUMMARY);
	assert_int_equal(find(s, TEST_VISUAL, WELD_GROOVE, &z, "Piping porosity")->form,
	    LIMIT_NONE);
	bench_free(&t);
}

static void legs_and_faces(void **state)
{
	static const struct { double leg_in, under, convex; } cases[] = {
		/* Faces: 0.177, 0.265, 0.354, 0.442, 0.707, 1.061 in. */
		{ 1.0 / 8, 1.0 / 16, 1.0 / 16 }, { 3.0 / 16, 1.0 / 16, 1.0 / 16 },
		{ 1.0 / 4, 3.0 / 32, 1.0 / 8 }, { 5.0 / 16, 1.0 / 8, 1.0 / 8 },
		{ 1.0 / 2, 1.0 / 8, 1.0 / 8 }, { 3.0 / 4, 1.0 / 8, 3.0 / 16 },
	};
	static const char *const sets[] = { "D1.1-2000 static", "D1.1-2000 cyclic",
		"D1.1-2000 welder test", "D1.1-2020 static", "D1.1-2020 cyclic",
		"D1.1-2020 welder test" };
	struct bench t = all_sets();

	(void)state;
	for (size_t k = 0; k < COUNT(sets); k++)
		for (size_t i = 0; i < COUNT(cases); i++) {
			const struct standard *s = set_named(t.m, sets[k]);
			struct wanted w = { 12.7, cases[i].leg_in * 25.4, 0, false };

			expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Leg short of size",
			    cases[i].under, NULL);
			expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Convexity",
			    cases[i].convex, NULL);
		}
	bench_free(&t);
}

static void faces_at_their_bounds(void **state)
{
	static const struct { double width_in, convex; } rows[] = {
		{ 5.0 / 16, 1.0 / 16 }, { 0.3126, 1.0 / 8 }, { 0.9999, 1.0 / 8 },
		{ 1, 3.0 / 16 },
	};
	struct bench t = all_sets();
	const struct standard *s = set_named(t.m, "D1.1-2015 static");

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct wanted w = { 12.7, 6.35, rows[i].width_in * 25.4, false };

		expect_in(s, TEST_VISUAL, WELD_FILLET, w, "Convexity", rows[i].convex, NULL);
	}
	bench_free(&t);
}

static void groove_reinforcement_by_edition(void **state)
{
	static const struct { const char *set; double t_in, limit; const char *clause; } rows[] = {
		{ "D1.1-2000 static", 1.5, 1.0 / 8, "5.24.4.1" },
		{ "D1.1-2000 cyclic", 2.5, 1.0 / 8, "5.24.4.1" },
		{ "D1.1-2015 static", 1, 1.0 / 8, "Tables 5.8 and 5.9" },
		{ "D1.1-2010 static", 1.001, 3.0 / 16, "Fig 5.4" },
		{ "D1.1-2015 static", 2, 3.0 / 16, "Tables 5.8 and 5.9" },
		{ "D1.1-2020 cyclic", 2.001, 1.0 / 4, "Tables 7.8 and 7.9" },
		/* The welder test keeps 1/8 whatever the thickness. */
		{ "D1.1-2000 welder test", 1.5, 1.0 / 8, "4.8.1" },
		{ "D1.1-2020 welder test", 2.5, 1.0 / 8, "6.10.1" },
	};
	struct bench t = all_sets();

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct wanted w = { rows[i].t_in * 25.4, 0, 0, false };
		const struct standard *s = set_named(t.m, rows[i].set);
		struct limit_sizes z = sizes_for(w);
		const struct standard_limit *l;

		expect_in(s, TEST_VISUAL, WELD_GROOVE, w, "Reinforcement", rows[i].limit,
		    rows[i].clause);
		l = find(s, TEST_VISUAL, WELD_GROOVE, &z, "Reinforcement");
		assert_true(limit_is_doubtful(s, l));
		assert_int_equal(find(s, TEST_VISUAL, WELD_GROOVE, &z, "Underfill")->form,
		    LIMIT_NONE);
	}
	bench_free(&t);
}

static void open_roots(void **state)
{
	struct bench t = all_sets();
	const struct standard *s = set_named(t.m, "D1.1-2015 welder test");
	struct wanted open = { 9.525, 0, 0, true }, backed = { 9.525, 0, 0, false };

	(void)state;
	expect_in(s, TEST_VISUAL, WELD_GROOVE, open, "Hollow root", 1.0 / 16, "4.9.1.3");
	expect_in(s, TEST_VISUAL, WELD_GROOVE, open, "Melt-through", 1.0 / 8, "4.9.1.3");
	expect_in(s, TEST_VISUAL, WELD_GROOVE, open, "Undercut", 1.0 / 32, "4.9.1.1(5)");
	expect_absent(s, TEST_VISUAL, WELD_GROOVE, backed, "Hollow root");
	expect_absent(s, TEST_VISUAL, WELD_GROOVE, backed, "Melt-through");
	bench_free(&t);
}

static void other_codes(void **state)
{
	struct bench t = all_sets();
	const struct standard *stainless = set_named(t.m, "D1.6-2017 static");
	const struct standard *aluminum = set_named(t.m, "D1.2-2014 static");
	struct wanted thin = { 3.175, 3.175, 0, false }, edge = { 4.7625, 3.175, 0, false };
	struct wanted inch = { 25.4, 6.35, 0, false }, nine = { 9.525, 0, 0, false };

	(void)state;
	expect_in(stainless, TEST_VISUAL, WELD_FILLET, thin, "Undercut", 0.01,
	    "Table 8.1 item 7A");
	expect_in(stainless, TEST_VISUAL, WELD_FILLET, edge, "Undercut", 1.0 / 32, NULL);
	expect_in(stainless, TEST_VISUAL, WELD_FILLET, edge, "Undercut, short lengths",
	    1.0 / 16, NULL);
	expect_absent(stainless, TEST_VISUAL, WELD_FILLET, thin, "Undercut, short lengths");
	expect_absent(stainless, TEST_VISUAL, WELD_FILLET, inch, "Undercut");
	expect_in(stainless, TEST_VISUAL, WELD_FILLET, thin, "Leg short of size", 1.0 / 16,
	    "Table 8.1 item 6");
	expect_in(aluminum, TEST_VISUAL, WELD_FILLET, thin, "Undercut", 1.0 / 32, NULL);
	expect_in(aluminum, TEST_VISUAL, WELD_FILLET, thin, "Leg short of size", 1.0 / 16, NULL);
	expect_in(aluminum, TEST_VISUAL, WELD_GROOVE, nine, "Reinforcement", 3.0 / 32, NULL);
	expect_absent(aluminum, TEST_VISUAL, WELD_GROOVE, inch, "Reinforcement");
	expect_in(set_named(t.m, "D1.2-2014 cyclic"), TEST_VISUAL, WELD_FILLET, thin,
	    "Undercut across the pull", 0.01, NULL);
	for (size_t i = 0; i < aluminum->n; i++)
		assert_true(limit_is_doubtful(aluminum, &aluminum->v[i]));
	bench_free(&t);
}

static void specimens(void **state)
{
	static const struct {
		const char *set; enum standard_test test; const char *name; double in;
		const char *clause; enum limit_seen seen;
	} rows[] = {
		{ "D1.1-2015 welder test", TEST_BEND, "Any one opening", 1.0 / 8, "4.9.3.3",
		    LIMIT_SEEN },
		{ "D1.1-2015 welder test", TEST_BEND, "Sum of openings", 3.0 / 8, "4.9.3.3",
		    LIMIT_SEEN },
		{ "D1.1-2015 welder test", TEST_BEND, "Corner crack", 1.0 / 4, "4.9.3.3",
		    LIMIT_SEEN },
		{ "D1.1-2000 welder test", TEST_BEND, "Any one opening", 1.0 / 8, "4.8.3.3",
		    LIMIT_SEEN },
		{ "D1.1-2020 welder test", TEST_BEND, "Sum of openings", 3.0 / 8, "6.10.3.3",
		    LIMIT_SEEN },
		{ "D1.1-2020 welder test", TEST_FILLET_BREAK, "Any one pore or inclusion",
		    3.0 / 32, "6.23.4.1", LIMIT_SEEN },
		{ "D1.1-2020 welder test", TEST_FILLET_BREAK, "Sum of pores and inclusions",
		    3.0 / 8, "6.23.4.1", LIMIT_SEEN },
		{ "D1.1-2020 welder test", TEST_MACRO, "Undercut", 1.0 / 32, "6.23.2",
		    LIMIT_MEMORY },
		{ "ASME IX-2010 welder test", TEST_BEND, "Any one opening", 1.0 / 8, "QW-163",
		    LIMIT_SEEN },
		{ "ASME IX-2023 welder test", TEST_BEND, "Any one opening", 1.0 / 8, "QW-163",
		    LIMIT_SEEN },
		{ "ASME IX-2010 welder test", TEST_FILLET_BREAK, "Sum of pores and inclusions",
		    3.0 / 8, "QW-182", LIMIT_SUMMARY },
		{ "ASME IX-2010 welder test", TEST_MACRO, "Difference of legs", 1.0 / 8,
		    "QW-184", LIMIT_MEMORY },
		{ "ASME IX-2010 welder test", TEST_MACRO, "Concavity or convexity", 1.0 / 16,
		    "QW-184", LIMIT_MEMORY },
		{ "ASME IX-2010 welder test", TEST_MACRO, "Line at the root", 1.0 / 32,
		    "QW-184", LIMIT_MEMORY },
	};
	struct bench t = all_sets();
	struct wanted w = { 9.525, 7.9375, 0, false };
	struct limit_sizes z = sizes_for(w);
	const struct standard_limit *legs;
	double mm;

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		const struct standard *s = set_named(t.m, rows[i].set);

		expect_in(s, rows[i].test, WELD_FILLET, w, rows[i].name, rows[i].in,
		    rows[i].clause);
		assert_int_equal(find(s, rows[i].test, WELD_FILLET, &z, rows[i].name)->seen,
		    rows[i].seen);
	}
	legs = find(set_named(t.m, "D1.1-2020 welder test"), TEST_MACRO, WELD_FILLET, &z, "Legs");
	assert_int_equal(legs->form, LIMIT_AT_LEAST);
	assert_true(limit_expr_value(&legs->most, &z, &mm) && mm == 7.9375);
	bench_free(&t);
}

/* ---- ISO 5817 ---- */

enum band { ALL, THIN, THICK };

/* By ISO 6520 number, plate to 3 mm and over it, levels D, C, B, in the notation of the
 * table: t wall, s = t, a throat, b width; "max 3" caps; "short:" only short lengths. */
static const struct iso_row {
	const char *name, *clause;
	enum standard_test test;
	unsigned welds;
	enum band band;
	const char *levels[3];
} iso_rows[] = {
	{ "Cracks", "no. 100", TEST_VISUAL, WELD_ANY, ALL,
	    { "none", "none", "none" } },
	{ "Crater cracks", "no. 104", TEST_VISUAL, WELD_ANY, ALL,
	    { "none", "none", "none" } },
	{ "Surface pore", "no. 2017", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "d<=0.3*s", "none", "none" } },
	{ "Surface pore", "no. 2017", TEST_VISUAL, WELD_FILLET, THIN,
	    { "d<=0.3*a", "none", "none" } },
	{ "Surface pore", "no. 2017", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "d<=0.3*s max 3", "d<=0.2*s max 2", "none" } },
	{ "Surface pore", "no. 2017", TEST_VISUAL, WELD_FILLET, THICK,
	    { "d<=0.3*a max 3", "d<=0.2*a max 2", "none" } },
	{ "Crater pipe", "no. 2025", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "h<=0.2*t", "none", "none" } },
	{ "Crater pipe", "no. 2025", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "h<=0.2*t max 2", "h<=0.1*t max 1", "none" } },
	{ "Lack of fusion", "no. 401", TEST_VISUAL, WELD_ANY, ALL,
	    { "none", "none", "none" } },
	{ "Missing penetration", "no. 4021", TEST_VISUAL, WELD_GROOVE, ALL,
	    { "short: h<=0.2*t max 2", "none", "none" } },
	{ "Undercut", "no. 5011", TEST_VISUAL, WELD_ANY, THIN,
	    { "short: h<=0.2*t", "short: h<=0.1*t", "none" } },
	{ "Undercut", "no. 5011", TEST_VISUAL, WELD_ANY, THICK,
	    { "h<=0.2*t max 1", "h<=0.1*t max 0.5", "h<=0.05*t max 0.5" } },
	{ "Root undercut", "no. 5013", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "short: h<=0.2+0.1*t", "short: h<=0.1*t", "none" } },
	{ "Root undercut", "no. 5013", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "short: h<=0.2*t max 2", "short: h<=0.1*t max 1", "short: h<=0.05*t max 0.5" } },
	{ "Reinforcement", "no. 502", TEST_VISUAL, WELD_GROOVE, ALL,
	    { "h<=1+0.25*b max 10", "h<=1+0.15*b max 7", "h<=1+0.1*b max 5" } },
	{ "Convexity", "no. 503", TEST_VISUAL, WELD_FILLET, ALL,
	    { "h<=1+0.25*b max 5", "h<=1+0.15*b max 4", "h<=1+0.1*b max 3" } },
	{ "Melt-through", "no. 504", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "h<=1+0.6*b", "h<=1+0.3*b", "h<=1+0.1*b" } },
	{ "Melt-through", "no. 504", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "h<=1+1.0*b max 5", "h<=1+0.6*b max 4", "h<=1+0.2*b max 3" } },
	{ "Toe angle", "no. 505", TEST_VISUAL, WELD_GROOVE, ALL,
	    { "alpha>=90", "alpha>=110", "alpha>=150" } },
	{ "Toe angle", "no. 505", TEST_VISUAL, WELD_FILLET, ALL,
	    { "alpha>=90", "alpha>=100", "alpha>=110" } },
	{ "Overlap", "no. 506", TEST_VISUAL, WELD_ANY, ALL,
	    { "h<=0.2*b", "none", "none" } },
	{ "Underfill", "no. 511", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "short: h<=0.25*t", "short: h<=0.1*t", "none" } },
	{ "Underfill", "no. 511", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "short: h<=0.25*t max 2", "short: h<=0.1*t max 1", "short: h<=0.05*t max 0.5" } },
	{ "Burn-through", "no. 510", TEST_VISUAL, WELD_ANY, ALL,
	    { "none", "none", "none" } },
	{ "Difference of legs", "no. 512", TEST_VISUAL, WELD_FILLET, ALL,
	    { "h<=2+0.2*a", "h<=2+0.15*a", "h<=1.5+0.15*a" } },
	{ "Hollow root", "no. 515", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "h<=0.2+0.1*t", "short: h<=0.1*t", "none" } },
	{ "Hollow root", "no. 515", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "short: h<=0.2*t max 2", "short: h<=0.1*t max 1", "short: h<=0.05*t max 0.5" } },
	{ "Root porosity", "no. 516", TEST_VISUAL, WELD_GROOVE, ALL,
	    { "words", "none", "none" } },
	{ "Poor restart", "no. 517", TEST_VISUAL, WELD_ANY, THIN,
	    { "words", "none", "none" } },
	{ "Throat too thin", "no. 5213", TEST_VISUAL, WELD_FILLET, THIN,
	    { "short: h<=0.2+0.1*a", "short: h<=0.2", "none" } },
	{ "Throat too thin", "no. 5213", TEST_VISUAL, WELD_FILLET, THICK,
	    { "short: h<=0.3+0.1*a max 2", "short: h<=0.3+0.1*a max 1", "none" } },
	{ "Throat too thick", "no. 5214", TEST_VISUAL, WELD_FILLET, ALL,
	    { "words", "h<=1+0.2*a max 4", "h<=1+0.15*a max 3" } },
	{ "Stray arc", "no. 601", TEST_VISUAL, WELD_ANY, ALL,
	    { "words", "none", "none" } },
	{ "Any one pore", "no. 2011", TEST_MACRO, WELD_GROOVE, ALL,
	    { "d<=0.4*s max 5", "d<=0.3*s max 4", "d<=0.2*s max 3" } },
	{ "Any one pore", "no. 2011", TEST_MACRO, WELD_FILLET, ALL,
	    { "d<=0.4*a max 5", "d<=0.3*a max 4", "d<=0.2*a max 3" } },
	{ "Slag or other inclusion, height", "no. 301", TEST_MACRO, WELD_GROOVE, ALL,
	    { "h<=0.4*s max 4", "h<=0.3*s max 3", "h<=0.2*s max 2" } },
	{ "Slag or other inclusion, length", "no. 301", TEST_MACRO, WELD_GROOVE, ALL,
	    { "l<=s max 75", "l<=s max 50", "l<=s max 25" } },
	{ "Lack of fusion inside", "no. 401", TEST_MACRO, WELD_GROOVE, ALL,
	    { "short: h<=0.4*s max 4", "none", "none" } },
	{ "Lack of fusion inside", "no. 401", TEST_MACRO, WELD_FILLET, ALL,
	    { "short: h<=0.4*a", "none", "none" } },
	{ "Missing root penetration", "no. 402", TEST_MACRO, WELD_FILLET, ALL,
	    { "short: h<=0.2*a max 2", "none", "none" } },
	{ "Misalignment of plates", "no. 507", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "h<=0.2+0.25*t", "h<=0.2+0.15*t", "h<=0.2+0.1*t" } },
	{ "Misalignment of plates", "no. 507", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "h<=0.25*t max 5", "h<=0.15*t max 4", "h<=0.1*t max 3" } },
	{ "Misalignment of pipes", "no. 5072", TEST_VISUAL, WELD_GROOVE, ALL,
	    { "h<=0.5*t max 4", "h<=0.5*t max 3", "h<=0.5*t max 2" } },
	{ "Gap at the root", "no. 617", TEST_VISUAL, WELD_FILLET, THIN,
	    { "h<=0.5+0.1*a", "h<=0.3+0.1*a", "h<=0.2+0.1*a" } },
	{ "Gap at the root", "no. 617", TEST_VISUAL, WELD_FILLET, THICK,
	    { "h<=1+0.3*a max 4", "h<=0.5+0.2*a max 3", "h<=0.5+0.1*a max 2" } },
	{ "Heights of all flaws added", "no. 4.1", TEST_MACRO, WELD_GROOVE, THICK,
	    { "h<=0.4*t", "h<=0.3*t", "h<=0.2*t" } },
	{ "Heights of all flaws added", "no. 4.1", TEST_MACRO, WELD_FILLET, THICK,
	    { "h<=0.25*a", "h<=0.2*a", "h<=0.15*a" } },
	{ "Heights of all flaws added", "no. 4.1", TEST_MACRO, WELD_GROOVE, THIN,
	    { "none", "none", "none" } },
	{ "Heights of all flaws added", "no. 4.1", TEST_MACRO, WELD_FILLET, THIN,
	    { "none", "none", "none" } },
};

/* "h<=1+0.25*b max 10" by itself: constant, factor and cap. */
static double iso_value(const char *text, const struct limit_sizes *z)
{
	const char *p = strstr(text, "<=") ? strstr(text, "<=") + 2 : strstr(text, ">=") + 2;
	const char *cap = strstr(text, " max ");
	double sum = 0;

	for (;;) {
		char *end = (char *)p;
		double factor = *p >= '0' && *p <= '9' ? strtod(p, &end) : 1;

		p = *end == '*' ? end + 1 : end;
		if (*p == 't' || *p == 's')
			factor *= z->v[SIZE_T];
		if (*p == 'a')
			factor *= z->v[SIZE_THROAT];
		if (*p == 'b')
			factor *= z->v[SIZE_WIDTH];
		sum += factor;
		p = strchr(p, '+');
		if (!p)
			break;
		p++;
	}
	return cap && strtod(cap + 5, NULL) < sum ? strtod(cap + 5, NULL) : sum;
}

static void expect_iso(const struct standard *s, const struct iso_row *r, const char *want,
    struct wanted w)
{
	struct limit_sizes z = sizes_for(w);
	unsigned welds = r->welds == WELD_ANY ? WELD_FILLET : r->welds;
	const struct standard_limit *l = find(s, r->test, welds, &z, r->name);
	double got;

	if (!l)
		print_error("%.*s: no %s at %g\n", STR_ARG(s->name), r->name, w.t_mm);
	assert_non_null(l);
	assert_true(str_eq(l->clause, str_of(r->clause)));
	assert_int_equal(l->welds, r->welds);
	assert_int_equal(l->form == LIMIT_NONE, !strcmp(want, "none"));
	assert_int_equal(l->form == LIMIT_WORDS, !strcmp(want, "words"));
	if (l->form == LIMIT_NONE || l->form == LIMIT_WORDS)
		return;
	assert_int_equal(l->form == LIMIT_AT_LEAST, strstr(want, ">=") != NULL);
	assert_int_equal(str_starts(l->more, STR("in short lengths only")),
	    !strncmp(want, "short:", 6));
	assert_true(limit_expr_value(&l->most, &z, &got));
	if (fabs(got - iso_value(want, &z)) > 1e-12)
		print_error("%.*s %s at %g: %g\n", STR_ARG(s->name), r->name, w.t_mm, got);
	assert_true(fabs(got - iso_value(want, &z)) <= 1e-12);
	if (l->most.kind == LIMIT_LENGTH)
		assert_true(str_eq(l->unit, STR("mm")));
}

static void iso_levels(void **state)
{
	static const char *const sets[] = { "ISO 5817-2014 D", "ISO 5817-2014 C",
		"ISO 5817-2014 B" };
	static const double walls[] = { 0.5, 1, 2.5, 3, 3.001, 5, 9.525, 12, 25.4, 100 };
	struct bench t = all_sets();
	size_t compared = 0;

	(void)state;
	for (size_t i = 0; i < COUNT(iso_rows); i++)
		for (size_t k = 0; k < COUNT(walls); k++) {
			const struct iso_row *r = &iso_rows[i];
			double mm = walls[k];

			if ((r->band == THIN && mm > 3) || (r->band == THICK && mm <= 3))
				continue;
			for (size_t level = 0; level < 3; level++, compared++)
				expect_iso(set_named(t.m, sets[level]), r, r->levels[level],
				    (struct wanted){ mm, mm, 1.7 * mm, true });
		}
	assert_int_equal(COUNT(iso_rows), 49);
	assert_true(compared > 900);
	bench_free(&t);
}

/* Each line of a level is one of the rows above, but for spatter, which has no figure. */
static void iso_has_no_other_lines(void **state)
{
	struct bench t = all_sets();
	const struct standard *s = set_named(t.m, "ISO 5817-2014 C");

	(void)state;
	assert_int_equal(s->n, COUNT(iso_rows) + 1);
	bench_free(&t);
}

/* ---- the program's own sets ---- */

#define HEAD "# SM-01: Tee\n\n- **Kind:** coupon\n- **Hours:** 2\n\n## Acceptance\n\n"
#define OWN "# D1.1-2020 welder test\n\n- **Code:** AWS D1.1\n- **Edition:** 2020\n" \
	"- **Loading:** welder test\n- **Source:** shop\n"

static struct bench bind_two(const char *acceptance, const char *set)
{
	struct file_text files[] = { { "assignments/a.md", acceptance },
		{ "standards/a.md", set } };
	struct bench t = bench_bind(files, set ? 2 : 1);

	return t;
}

static const struct standard *chosen(const struct bench *t)
{
	for (size_t i = 0; i < t->m->nassignments; i++)
		if (t->m->assignments[i].ncriteria)
			return t->m->assignments[i].criteria[0].standard;
	return NULL;
}

static void an_own_set_replaces_the_shipped_one(void **state)
{
	struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020 welder test\n",
	    OWN "\n## Visual\n\n- **Undercut:** at most min(1/16 in, 0.1 t); undercut gauge, mm; "
	    "shop 4; memory\n");
	const struct standard *s = chosen(&t);
	struct limit_sizes z = sizes_for((struct wanted){ 10, 0, 0, false });
	double mm;

	(void)state;
	assert_int_equal(t.f->n, 0);
	assert_non_null(s);
	assert_int_equal(s->shipped, NONE);
	assert_int_equal(s->n, 1);
	assert_true(limit_expr_value(&s->v[0].most, &z, &mm) && mm == 1);
	expect_str(s->v[0].unit, "mm");
	expect_str(s->v[0].tool, "undercut gauge");
	expect_str(s->v[0].most_text, "min(1/16 in, 0.1 t)");
	assert_int_equal(s->v[0].most_pos.line, 10);
	assert_int_equal(s->v[0].most_pos.col, 25);
	assert_int_equal(s->v[0].clause_pos.col, 66);
	assert_int_equal(s->v[0].seen_pos.col, 74);
	assert_true(limit_is_doubtful(s, &s->v[0]));
	for (size_t i = 0; i < t.m->nshipped; i++)
		assert_false(t.m->shipped[i].wanted);
	bench_free(&t);
}

static void checked_against_clears_daggers(void **state)
{
	static const struct { const char *value; bool clears; } rows[] = {
		{ "D1.1:2020, by department chair, 2026-08-14", true },
		{ "D1.1:2020 printing 2, by the lead instructor, August 2026", true },
		{ "D1.1:2020, 2026-08-14", false }, { "by chair, 2026, D1.1", false },
		{ "yes", false },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str set = str_format(a, OWN "- **Checked against:** %s\n\n## Visual\n\n"
		    "- **Undercut:** at most 1/32 in; undercut gauge; 6.10.1; memory\n"
		    "- **Cracks:** none; eye; 6.10.1; summary\n", rows[i].value);
		struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020\n",
		    arena_copy(a, set.p, set.n));
		const struct standard *s = chosen(&t);

		assert_int_equal(s->n, 2);
		for (size_t k = 0; k < 2; k++)
			assert_int_equal(limit_is_doubtful(s, &s->v[k]), !rows[i].clears);
		assert_int_equal(t.f->n, !rows[i].clears);
		if (!rows[i].clears)
			expect_one(&t, FINDING_MISSING_FACT, 7, 24, "no dagger", "by department");
		bench_free(&t);
		arena_free(a);
	}
}

static void names_choose_sets(void **state)
{
	static const struct { const char *text, *set; } rows[] = {
		{ "D1.1-2020 welder test", "D1.1-2020 welder test" },
		{ "D1.1:2000, static", "D1.1-2000 static" },
		{ "AWS D1.1-2020, statically loaded", "D1.1-2020 static" },
		{ "D1.1-2015 cyclic", "D1.1-2015 cyclic" },
		{ "AWS D1.1/D1.1M:2015 static", "D1.1-2015 static" },
		{ "D1.1-2020", "D1.1-2020 welder test" },
		{ "D1.1", "D1.1-2020 welder test" },
		{ "D1.6-2017", "D1.6-2017 static" },
		{ "D1.2", "D1.2-2014 static" },
		{ "ASME IX", "ASME IX-2023 welder test" },
		{ "asme ix-2010 welder test", "ASME IX-2010 welder test" },
		{ "ISO 5817 C", "ISO 5817-2014 C" }, { "ISO 5817-2014 B", "ISO 5817-2014 B" },
		{ "ISO 5817 level d, both sides", "ISO 5817-2014 D" },
		{ "iso 5817:2014-b", "ISO 5817-2014 B" },
		{ "ISO 5817 quality level C on weld B", "ISO 5817-2014 C" },
		{ "no code at all", NULL }, { "as form F2.1 says", NULL }, { "smooth to the touch, static", NULL },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, HEAD "- **Visual:** %s\n", rows[i].text);
		struct bench t = bind_two(arena_copy(a, text.p, text.n), NULL);
		const struct standard *s = chosen(&t);

		if (!s != !rows[i].set || (s && !str_eq(s->name, str_of(rows[i].set))))
			print_error("%s: %.*s\n", rows[i].text, STR_ARG(s ? s->name : STR("-")));
		assert_int_equal(t.f->n, 0);
		assert_int_equal(s != NULL, rows[i].set != NULL);
		assert_true(!s || (str_eq(s->name, str_of(rows[i].set)) && s->wanted));
		bench_free(&t);
		arena_free(a);
	}
}

/* Only lines that limits can be for choose a set. */
static void other_lines_choose_none(void **state)
{
	struct bench t = bind_two(HEAD "- **Fit-up:** as D9.9-1990 says\n", NULL);

	(void)state;
	assert_int_equal(t.f->n, 0);
	assert_null(chosen(&t));
	bench_free(&t);
}

static void unknown_sets_are_told(void **state)
{
	static const struct { const char *text, *message, *repair; } rows[] = {
		{ "D1.1-2009 static", "\"D1.1-2009 static\"", "\"D1.1-2000 static\"" },
		{ "D1.6-2017 cyclic", "\"D1.6-2017 cyclic\"", "\"D1.6-2017 static\"" },
		{ "D9.9-1990", "\"D9.9-1990\"", "# D9.9-1990" },
		{ "API 1104-2013 welder test", "\"API 1104-2013 welder test\"", "standards" },
		{ "ISO 5817-2003 C", "\"ISO 5817-2003 C\"", "\"ISO 5817-2014 C\"" },
		{ "ISO 5817", "\"ISO 5817\"", "ISO 5817" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, HEAD "- **Visual:** by %s\n", rows[i].text);
		struct bench t = bind_two(arena_copy(a, text.p, text.n), NULL);

		expect_one(&t, FINDING_UNKNOWN_STANDARD, 8, 18, rows[i].message, rows[i].repair);
		assert_int_equal(t.f->v[0].level, LEVEL_WARNING);
		assert_null(chosen(&t));
		bench_free(&t);
		arena_free(a);
	}
}

static void sets_of_a_name_of_their_own(void **state)
{
	static const char set[] = "# Shop sheet limits\n\n- **Source:** advisory committee\n\n"
	    "## Visual fillet\n\n- **Undercut:** at most 0.02 in; undercut gauge; page 1; seen\n";
	struct bench t = bind_two(HEAD "- **Visual:** shop sheet limits, all sides\n", set);
	struct bench other = bind_two(HEAD "- **Visual:** sheet limits of the shop\n", set);

	(void)state;
	assert_int_equal(t.f->n, 0);
	expect_str(chosen(&t)->name, "Shop sheet limits");
	assert_null(chosen(&other));
	bench_free(&t);
	bench_free(&other);
}

static void faults_of_a_set_have_places(void **state)
{
	static const struct {
		const char *line; enum finding_name name; uint32_t col;
		const char *message, *repair;
		size_t kept;
	} rows[] = {
		{ "- **A:** at most 1/16 in + 2 deg; g; c; seen", FINDING_BAD_LIMIT, 26,
		    "cannot be added", "", 0 },
		{ "- **A:** at most 0.1 tt; g; c; seen", FINDING_BAD_LIMIT, 22, "a size is", "", 0 },
		{ "- **A:** at most 1 in where t; g; c; seen", FINDING_BAD_LIMIT, 29,
		    "a condition is owed", "", 0 },
		{ "- **A:** at most 0.1 throt; g; c; seen", FINDING_BAD_LIMIT, 22, "a size is",
		    "throat", 0 },
		{ "- **A:** at most 1/32; g; c; seen", FINDING_MISSING_UNIT, 18, "no unit",
		    "1/32 in", 0 },
		{ "- **A:** at most 1 in per foo; g; c; seen", FINDING_BAD_QUANTITY, 27, "", "", 0 },
		{ "- **A:** at most 0.1 t [1 mm]; g; c; seen", FINDING_NOT_UNDERSTOOD, 25,
		    "every size", "delete", 1 },
		{ "- **A:** none; g; seen", FINDING_MISSING_FACT, 5, "does not end with",
		    "undercut gauge; 6.10.1; seen", 0 },
		{ "- **A:** none; g; c; sene", FINDING_UNKNOWN_WORD, 22, "sene", "seen", 1 },
		{ "- **A:** none; 2; 3; 4; 5; 6; 7; 8; 9; 10; 11; 12; seen", FINDING_OVER_LIMIT, 5,
		    "too many parts", "", 0 },
		{ "- a bullet", FINDING_NOT_UNDERSTOOD, 3, "no meaning", "Undercut", 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str set = str_format(a, OWN "\n## Visual\n\n%s\n", rows[i].line);
		struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020\n",
		    arena_copy(a, set.p, set.n));

		expect_one(&t, rows[i].name, 10, rows[i].col, rows[i].message, rows[i].repair);
		assert_int_equal(chosen(&t)->n, rows[i].kept);
		bench_free(&t);
		arena_free(a);
	}
}

static void facts_and_sections_of_a_set(void **state)
{
	static const struct {
		const char *set; enum finding_name name; uint32_t line; const char *message;
	} rows[] = {
		{ "# D1.1-2020 static\n\n- **Code:** AWS D1.1\n", FINDING_MISSING_FACT, 1, "where its" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Edition:** 2015\n",
		    FINDING_FACTS_DISAGREE, 4, "2020" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Loading:** cyclic\n",
		    FINDING_FACTS_DISAGREE, 4, "static" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Code:** AWS D1.2\n",
		    FINDING_FACTS_DISAGREE, 4, "D1.1" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Yaer:** 2020\n",
		    FINDING_UNKNOWN_KEY, 4, "Yaer" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n\n## Visaul\n", FINDING_UNKNOWN_SECTION,
		    5, "Visaul" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n\n## Bend\n\n## Bend\n",
		    FINDING_DUPLICATE_SECTION, 7, "twice" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n\n# More\n", FINDING_UNKNOWN_SECTION, 5,
		    "second title" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind_two(HEAD "- **Visual:** free\n", rows[i].set);

		expect_one(&t, rows[i].name, rows[i].line, rows[i].line == 1 ? 3 : t.f->v[0].pos.col,
		    rows[i].message, "");
		bench_free(&t);
	}
}

static void two_sets_of_one_name(void **state)
{
	struct file_text files[] = { { "standards/a.md", OWN }, { "standards/b.md", OWN } };
	struct bench t = bench_bind(files, 2);

	(void)state;
	expect_one(&t, FINDING_DUPLICATE_ID, 1, 3, "two sets", "");
	assert_int_equal(t.f->v[0].pos.file, 1);
	assert_int_equal(t.m->nstandards, 1);
	bench_free(&t);
}

static void only_named_sets_are_read(void **state)
{
	struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020 static\n- **Macro:** ASME IX\n",
	    NULL);
	size_t before = t.sources.n, filled = 0;

	(void)state;
	shipped_read(t.arena, t.m, &t.sources, t.f);
	for (size_t i = 0; i < t.m->nshipped; i++)
		filled += t.m->shipped[i].n > 0;
	assert_int_equal(filled, 2);
	assert_int_equal(t.sources.n, before + 2);
	expect_str(t.sources.v[before].path, "templates/standards/asme-ix-2023-welder-test.md");
	assert_int_equal(chosen(&t)->pos.file, before + 1);
	assert_int_equal(t.f->n, 0);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_set_is_sound),
		cmocka_unit_test(welder_test_of_a_fillet),
		cmocka_unit_test(static_welds),
		cmocka_unit_test(cyclic_welds),
		cmocka_unit_test(legs_and_faces),
		cmocka_unit_test(faces_at_their_bounds),
		cmocka_unit_test(groove_reinforcement_by_edition),
		cmocka_unit_test(open_roots),
		cmocka_unit_test(other_codes),
		cmocka_unit_test(specimens),
		cmocka_unit_test(iso_levels),
		cmocka_unit_test(iso_has_no_other_lines),
		cmocka_unit_test(an_own_set_replaces_the_shipped_one),
		cmocka_unit_test(checked_against_clears_daggers),
		cmocka_unit_test(names_choose_sets),
		cmocka_unit_test(other_lines_choose_none),
		cmocka_unit_test(unknown_sets_are_told),
		cmocka_unit_test(sets_of_a_name_of_their_own),
		cmocka_unit_test(faults_of_a_set_have_places),
		cmocka_unit_test(facts_and_sections_of_a_set),
		cmocka_unit_test(two_sets_of_one_name),
		cmocka_unit_test(only_named_sets_are_read),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
