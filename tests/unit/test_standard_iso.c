/* The shipped levels of ISO 5817 against the table of ISO 5817:2003 and 2007, by reference
 * number of ISO 6520, in its own notation. */
#include "standard_bench.h"

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
	    { "short: h<=0.2*t max 2", "short: h<=0.1*t max 1",
	    "short: h<=0.05*t max 0.5" } },
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
	    { "short: h<=0.25*t max 2", "short: h<=0.1*t max 1",
	    "short: h<=0.05*t max 0.5" } },
	{ "Burn-through", "no. 510", TEST_VISUAL, WELD_ANY, ALL,
	    { "none", "none", "none" } },
	{ "Difference of legs", "no. 512", TEST_VISUAL, WELD_FILLET, ALL,
	    { "h<=2+0.2*a", "h<=2+0.15*a", "h<=1.5+0.15*a" } },
	{ "Hollow root", "no. 515", TEST_VISUAL, WELD_GROOVE, THIN,
	    { "h<=0.2+0.1*t", "short: h<=0.1*t", "none" } },
	{ "Hollow root", "no. 515", TEST_VISUAL, WELD_GROOVE, THICK,
	    { "short: h<=0.2*t max 2", "short: h<=0.1*t max 1",
	    "short: h<=0.05*t max 0.5" } },
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
	const char *p = strstr(text, "<=") ? strstr(text, "<=") + 2 : strstr(text,
	    ">=") + 2;
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

static void expect_iso(const struct standard *s, const struct iso_row *r,
    const char *want,
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
		print_error("%.*s %s at %g: %g\n", STR_ARG(s->name), r->name, w.t_mm,
		    got);
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
				expect_iso(set_named(t.m, sets[level]), r,
				    r->levels[level],
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

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(iso_levels),
		cmocka_unit_test(iso_has_no_other_lines),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
