/* The program's own acceptance sets, how lines choose among sets, and faults. */
#include "standard_bench.h"

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
	    OWN "\n## Visual\n\n- **Undercut:** at most min(1/16 in, 0.1 t); undercut "
	    "gauge, mm; "
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
			expect_one(&t, FINDING_MISSING_FACT, 7, 24, "no dagger",
			    "by department");
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
		{ "D1.6-2017", "D1.6-2017 welder test" },
		{ "D1.2", "D1.2-2014 welder test" },
		{ "ASME IX", "ASME IX-2023 welder test" },
		{ "asme ix-2010 welder test", "ASME IX-2010 welder test" },
		{ "ISO 5817 C", "ISO 5817-2014 C" }, { "ISO 5817-2014 B",
		    "ISO 5817-2014 B" },
		{ "ISO 5817 level d, both sides", "ISO 5817-2014 D" },
		{ "iso 5817:2014-b", "ISO 5817-2014 B" },
		{ "ISO 5817 quality level C on weld B", "ISO 5817-2014 C" },
		{ "no code at all", NULL }, { "as form F2.1 says", NULL },
		    { "smooth to the touch, static", NULL },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, HEAD "- **Visual:** %s\n", rows[i].text);
		struct bench t = bind_two(arena_copy(a, text.p, text.n), NULL);
		const struct standard *s = chosen(&t);

		if (!s != !rows[i].set || (s && !str_eq(s->name, str_of(rows[i].set))))
			print_error("%s: %.*s\n", rows[i].text, STR_ARG(s ?
			    s->name : STR("-")));
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
		{ "D1.6-2017 cyclic", "\"D1.6-2017 cyclic\"", "\"D1.6-2017 welder test\"" },
		{ "D9.9-1990", "\"D9.9-1990\"", "# D9.9-1990" },
		{ "API 1104-2013 welder test", "\"API 1104-2013 welder test\"",
		    "standards" },
		{ "ISO 5817-2003 C", "\"ISO 5817-2003 C\"", "\"ISO 5817-2014 C\"" },
		{ "ISO 5817", "\"ISO 5817\"", "ISO 5817" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, HEAD "- **Visual:** by %s\n", rows[i].text);
		struct bench t = bind_two(arena_copy(a, text.p, text.n), NULL);

		expect_one(&t, FINDING_UNKNOWN_STANDARD, 8, 18, rows[i].message,
		    rows[i].repair);
		assert_int_equal(t.f->v[0].level, LEVEL_WARNING);
		assert_null(chosen(&t));
		bench_free(&t);
		arena_free(a);
	}
}

/* D1.1 has no nick-breaks and D1.2 static no bends; both have visual limits. */
static void tests_without_limits_are_told(void **state)
{
	static const struct { const char *line, *message; } rows[] = {
		{ "- **Nick break:** 2, D1.1-2020\n", "no limits for Nick break" },
		{ "- **Root bend:** 1, D1.2-2014 static\n", "\"D1.2-2014 static\" has no" },
		{ "- **Root bend:** 1, D1.1-2020\n", NULL },
		{ "- **Nick break:** 2, no pore over 1/16 in\n", NULL },
		{ "- **Nick break:** 2, D1.1-2020; no pore over 1/16 in\n", NULL },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, HEAD "%s", rows[i].line);
		struct bench t = bind_two(arena_copy(a, text.p, text.n), NULL);

		shipped_read(t.arena, t.m, &t.sources, t.f);
		if (rows[i].message)
			expect_one(&t, FINDING_UNKNOWN_STANDARD, 8, 5, rows[i].message,
			    "what passes");
		else
			expect_none(&t);
		bench_free(&t);
		arena_free(a);
	}
}

static void sets_of_a_name_of_their_own(void **state)
{
	static const char set[] = "# Shop sheet limits\n\n- **Source:** advisory "
	    "committee\n\n"
	    "## Visual fillet\n\n- **Undercut:** at most 0.02 in; undercut gauge; page "
	    "1; seen\n";
	struct bench t = bind_two(HEAD "- **Visual:** shop sheet limits, all sides\n",
	    set);
	struct bench other = bind_two(HEAD "- **Visual:** sheet limits of the shop\n",
	    set);

	(void)state;
	assert_int_equal(t.f->n, 0);
	expect_str(chosen(&t)->name, "Shop sheet limits");
	assert_null(chosen(&other));
	bench_free(&t);
	bench_free(&other);
}

static const struct {
	const char *line; enum finding_name name; uint32_t col;
	const char *message, *repair;
	size_t kept;
} set_faults[] = {
	{ "- **A:** at most 1/16 in + 2 deg; g; c; seen", FINDING_BAD_LIMIT, 26,
	    "cannot be added", "", 0 },
	{ "- **A:** at most 0.1 tt; g; c; seen", FINDING_BAD_LIMIT, 22,
	    "is no size", "", 0 },
	{ "- **A:** at most 1 in where t; g; c; seen", FINDING_BAD_LIMIT, 29,
	    "a condition is owed", "", 0 },
	{ "- **A:** at most 0.1 throt; g; c; seen", FINDING_BAD_LIMIT, 22,
	    "is no size",
	    "throat", 0 },
	{ "- **A:** at most 1/16 in - 1/8 in; g; c; seen", FINDING_BAD_LIMIT, 18,
	    "comes out below zero", "", 0 },
	{ "- **A:** at most 1/32; g; c; seen", FINDING_MISSING_UNIT, 18,
	    "no unit",
	    "1/32 in", 0 },
	{ "- **A:** at most 1 in per foo; g; c; seen", FINDING_BAD_QUANTITY, 27,
	    "", "", 0 },
	{ "- **A:** at most 0.1 t [1 mm]; g; c; seen", FINDING_NOT_UNDERSTOOD, 25,
	    "every size", "delete", 1 },
	{ "- **A:** none; g; seen", FINDING_MISSING_FACT, 5, "does not end with",
	    "undercut gauge; 6.10.1; seen", 0 },
	{ "- **A:** none; g; c; sene", FINDING_UNKNOWN_WORD, 22, "sene", "seen",
	    1 },
	{ "- **A:** none; 2; 3; 4; 5; 6; 7; 8; 9; 10; 11; 12; seen",
	    FINDING_OVER_LIMIT, 5,
	    "too many parts", "", 0 },
	{ "- **A:** at most t - 1/4 in; g; c; seen", FINDING_LIMIT_FAILS, 18,
	    "comes out below zero where t is 1/32 in [0.8 mm]", "where", 1 },
	{ "- **A:** at most 1 in / (leg - 1/4 in) x 1 in where leg >= 1/4 in; g; c; "
	    "seen", FINDING_LIMIT_FAILS, 23,
	    "divides by zero where leg is 1/4 in [6.4 mm]", "where", 1 },
	{ "- **A:** at most 1 in where t / (t - 1/2 in) > 2; g; c; seen",
	    FINDING_LIMIT_FAILS, 29, "divides by zero where t is 1/2 in", "where",
	    1 },
	{ "- **A:** at most 1 mm / 0; g; c; seen", FINDING_BAD_LIMIT, 23,
	    "divides by zero", "", 0 },
	{ "- **A:** at most 1/32 in [10 mm]; g; c; seen", FINDING_FACTS_DISAGREE, 27,
	    "not near 1/32 in", "delete", 1 },
	{ "- **A:** at most 1/32 in [1 mm] [2 mm]; g; c; seen",
	    FINDING_NOT_UNDERSTOOD, 27, "more than one bracket", "delete", 1 },
	{ "- **A:** at most 1 per 0 in; g; c; seen", FINDING_BAD_QUANTITY, 24,
	    "more than 0", "", 0 },
	{ "- **A:** 1/8 in; g; c; seen", FINDING_BAD_LIMIT, 10,
	    "does not say which way", "at most", 0 },
	{ "- **A:** at most 0.1 thickness; g; c; seen", FINDING_BAD_LIMIT, 22,
	    "is no size", "\"t\"", 0 },
	{ "- **A:** at most 1 in where t == 1 in; g; c; seen", FINDING_BAD_LIMIT, 31,
	    "no meaning", "\"=\"", 0 },
	{ "- a bullet", FINDING_NOT_UNDERSTOOD, 3, "no meaning", "Undercut", 0 },
};

static void faults_of_a_set_have_places(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(set_faults); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str set = str_format(a, OWN "\n## Visual\n\n%s\n", set_faults[i].line);
		struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020\n",
		    arena_copy(a, set.p, set.n));

		expect_one(&t, set_faults[i].name, 10, set_faults[i].col, set_faults[i].message,
		    set_faults[i].repair);
		assert_int_equal(chosen(&t)->n, set_faults[i].kept);
		bench_free(&t);
		arena_free(a);
	}
}

/* Limits that hold at every size they are for are not told. */
static void ends_keep_limits_sound(void **state)
{
	static const struct { const char *limit; enum limit_form form; } rows[] = {
		{ "at most max(0 in, t - 1/4 in)", LIMIT_AT_MOST },
		{ "at most t - 1/4 in where t >= 1/4 in", LIMIT_AT_MOST },
		{ "at most 1/16 in where t / leg > 2", LIMIT_AT_MOST },
		{ "<= 1/8 in", LIMIT_AT_MOST }, { "\xE2\x89\xA4" "1/8 in", LIMIT_AT_MOST },
		{ "up to 1/8 in", LIMIT_AT_MOST }, { "no less than leg", LIMIT_AT_LEAST },
		{ ">= leg", LIMIT_AT_LEAST }, { "within 1/16 in", LIMIT_WITHIN },
		{ "\xC2\xB1" "1/16 in", LIMIT_WITHIN }, { "none", LIMIT_NONE },
		{ "upright to the eye", LIMIT_WORDS },
		{ "at least 0.95 base strength", LIMIT_AT_LEAST },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str set = str_format(a, OWN "\n## Visual\n\n- **A:** %s; g; c; seen\n",
		    rows[i].limit);
		struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020\n",
		    arena_copy(a, set.p, set.n));

		if (t.f->n)
			print_findings(&t);
		assert_int_equal(t.f->n, 0);
		assert_int_equal(chosen(&t)->v[0].form, rows[i].form);
		bench_free(&t);
		arena_free(a);
	}
}

/* A weld at the very size is an error at the limit, told with the line that asks. */
static void failing_where_it_is_used(void **state)
{
	static const char weld[] = "# SM-01: Tee\n\n- **Kind:** coupon\n- **Hours:** 2\n"
	    "- **Process:** SMAW\n- **Joint:** tee\n- **Position:** 2F\n"
	    "- **Material:** A36 plate\n- **Thickness:** 3/8 in\n\n## Acceptance\n\n"
	    "- **Visual:** D1.1-2020\n";
	struct bench t = bind_two(weld, OWN "\n## Visual\n\n- **A:** at most 1 in / "
	    "(t - 3/8 in) x 1 in where t >= 3/8 in; g; c; seen\n");
	const struct finding *d = NULL;

	(void)state;
	standard_judge(t.arena, t.m, t.f);
	for (size_t i = 0; i < t.f->n; i++)
		if (t.f->v[i].name == FINDING_LIMIT_FAILS_HERE)
			d = &t.f->v[i];
	assert_non_null(d);
	assert_int_equal(d->pos.line, 10);
	assert_int_equal(d->pos.col, 18);
	assert_int_equal(d->nrelated, 1);
	assert_int_equal(d->related[0].pos.line, 13);
	expect_str(d->assignment, "SM-01");
	bench_free(&t);
}

/* "ISO 5817" is never given a level by guess. */
static void a_level_is_owed(void **state)
{
	static const char *const lines[] = { "ISO 5817", "ISO 5817-2014", "1, ISO 5817" };

	(void)state;
	for (size_t i = 0; i < COUNT(lines); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, HEAD "- **Visual:** %s\n", lines[i]);
		struct bench t = bind_two(arena_copy(a, text.p, text.n), NULL);

		expect_one(&t, FINDING_UNKNOWN_STANDARD, 8, i == 2 ? 18 : 15,
		    "names none", "\"ISO 5817-2014 C\", or B");
		bench_free(&t);
		arena_free(a);
	}
}

static void facts_and_sections_of_a_set(void **state)
{
	static const struct {
		const char *set; enum finding_name name; uint32_t line;
		    const char *message;
	} rows[] = {
		{ "# D1.1-2020 static\n\n- **Code:** AWS D1.1\n", FINDING_MISSING_FACT,
		    1, "where its" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Edition:** 2015\n",
		    FINDING_FACTS_DISAGREE, 4, "2020" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Loading:** cyclic\n",
		    FINDING_FACTS_DISAGREE, 4, "static" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Code:** AWS D1.2\n",
		    FINDING_FACTS_DISAGREE, 4, "D1.1" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n- **Yaer:** 2020\n",
		    FINDING_UNKNOWN_KEY, 4, "Yaer" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n\n## Visaul\n",
		    FINDING_UNKNOWN_SECTION,
		    5, "Visaul" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n\n## Bend\n\n## Bend\n",
		    FINDING_DUPLICATE_SECTION, 7, "twice" },
		{ "# D1.1-2020 static\n\n- **Source:** s\n\n# More\n",
		    FINDING_UNKNOWN_SECTION, 5,
		    "second title" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind_two(HEAD "- **Visual:** free\n", rows[i].set);

		expect_one(&t, rows[i].name, rows[i].line, rows[i].line == 1 ?
		    3 : t.f->v[0].pos.col,
		    rows[i].message, "");
		bench_free(&t);
	}
}

static void two_sets_of_one_name(void **state)
{
	struct file_text files[] = { { "standards/a.md", OWN }, { "standards/b.md",
	    OWN } };
	struct bench t = bench_bind(files, 2);

	(void)state;
	expect_one(&t, FINDING_DUPLICATE_ID, 1, 3, "two sets", "");
	assert_int_equal(t.f->v[0].pos.file, 1);
	assert_int_equal(t.m->nstandards, 1);
	bench_free(&t);
}

static void only_named_sets_are_read(void **state)
{
	struct bench t = bind_two(HEAD "- **Visual:** D1.1-2020 static\n- **Macro:** "
	    "ASME IX\n",
	    NULL);
	size_t before = t.sources.n, filled = 0;

	(void)state;
	shipped_read(t.arena, t.m, &t.sources, t.f);
	for (size_t i = 0; i < t.m->nshipped; i++)
		filled += t.m->shipped[i].n > 0;
	assert_int_equal(filled, 2);
	assert_int_equal(t.sources.n, before + 2);
	expect_str(t.sources.v[before].path,
	    "templates/standards/asme-ix-2023-welder-test.md");
	assert_int_equal(chosen(&t)->pos.file, before + 1);
	assert_int_equal(t.f->n, 0);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(an_own_set_replaces_the_shipped_one),
		cmocka_unit_test(checked_against_clears_daggers),
		cmocka_unit_test(names_choose_sets),
		cmocka_unit_test(other_lines_choose_none),
		cmocka_unit_test(unknown_sets_are_told),
		cmocka_unit_test(tests_without_limits_are_told),
		cmocka_unit_test(sets_of_a_name_of_their_own),
		cmocka_unit_test(faults_of_a_set_have_places),
		cmocka_unit_test(ends_keep_limits_sound),
		cmocka_unit_test(failing_where_it_is_used),
		cmocka_unit_test(a_level_is_owed),
		cmocka_unit_test(facts_and_sections_of_a_set),
		cmocka_unit_test(two_sets_of_one_name),
		cmocka_unit_test(only_named_sets_are_read),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
