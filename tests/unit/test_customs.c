/* customs.md and cohorts.md: what they say and every fault at its exact place; days and
 * terms. */
#include "model_bench.h"
#include "model/when.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define WAIVER "- **untaught-skill, SM-25, fab.plan:** taught at the bench by the aide; " \
    "department chair; until fall-2027\n"

static struct bench customs(const char *text)
{
	struct file_text one = { "customs.md", text };

	return bench_bind(&one, 1);
}

/* The words of the first custom in the list, its finding, and a safety finding. */
static const struct finding_info *first_of(enum finding_class class)
{
	for (uint32_t k = 0; k < FINDING_COUNT; k++)
		if (finding_info(k)->class == class)
			return finding_info(k);
	return NULL;
}

static void waivers_are_read(void **state)
{
	struct bench t = customs("# Customs\n\n## Waivers\n\n" WAIVER
	    "- **never-taught, gtaw.alum:** a; dean; until 2027-09-01\n"
	    "- **Untaught skill, sm-25:** x; y; until Fall 2027\n");
	const struct waiver *w = t.m->waivers;

	(void)state;
	expect_none(&t);
	assert_int_equal(t.m->nwaivers, 3);
	assert_int_equal(w->name, FINDING_UNTAUGHT_SKILL);
	expect_str(w->assignment, "SM-25");
	expect_str(w->skill, "fab.plan");
	expect_str(w->reason, "taught at the bench by the aide");
	expect_str(w->role, "department chair");
	expect_str(w->until, "fall-2027");
	assert_int_equal(w->pos.line, 5);
	assert_int_equal(w->pos.col, 5);
	assert_int_equal(w->until_pos.col, 97);
	expect_str(w[1].assignment, "");
	expect_str(w[1].skill, "gtaw.alum");
	w += 2;
	expect_str(w->assignment, "SM-25");
	expect_str(w->skill, "");
	expect_str(w->until, "Fall 2027");
	bench_free(&t);
}

static void a_reason_may_hold_semicolons(void **state)
{
	struct bench t = customs("# Customs\n\n## Waivers\n\n"
	    "- **untaught-skill, SM-25:** a; b; c; dean; until 2027-09-01\n");

	(void)state;
	expect_none(&t);
	expect_str(t.m->waivers[0].reason, "a; b; c");
	expect_str(t.m->waivers[0].role, "dean");
	bench_free(&t);
}

static void faults_of_waivers(void **state)
{
	static const struct {
		const char *line;
		enum finding_name name;
		uint32_t col;
		const char *message, *repair;
	} rows[] = {
		{ "- **untaught-skil, SM-25:** a; b; until fall-2027\n", FINDING_UNKNOWN_WORD, 5,
		    "untaught-skil", "\"untaught-skill\"" },
		{ "- **untaught-skill, SM 25:** a; b; until fall-2027\n", FINDING_NOT_UNDERSTOOD,
		    21, "SM 25", "SM-25, fab.plan" },
		{ "- **untaught-skill, SM-25, a.b, c.d:** a; b; until fall-2027\n",
		    FINDING_NOT_UNDERSTOOD, 33, "c.d", "at most one skill" },
		{ "- **untaught-skill, SM-25:** a; b; fall-2027\n", FINDING_MISSING_FACT, 5,
		    "until when", "until fall-2027" },
		{ "- **untaught-skill, SM-25:** a; b; until\n", FINDING_MISSING_FACT, 5,
		    "until when", "" },
		{ "- **untaught-skill, SM-25:** a; until fall-2027\n", FINDING_MISSING_FACT, 5,
		    "the reason", "role responsible" },
		{ "- **untaught-skill, SM-25:** a; ; until fall-2027\n", FINDING_MISSING_FACT, 5,
		    "whose role", "" },
		{ "- **untaught-skill, SM-25:** until fall-2027\n", FINDING_MISSING_FACT, 5,
		    "whose role", "" },
		{ "- **untaught-skill, SM-25:**\n", FINDING_MISSING_FACT, 5, "until when", "" },
		{ "- **untaught-skill, SM-25:** a; b; until soon\n", FINDING_UNKNOWN_WORD, 42,
		    "\"soon\"", "2027-09-01" },
		{ "- **untaught-skill, SM-25:** a; b; until 2027-02-29\n", FINDING_UNKNOWN_WORD,
		    42, "2027-02-29", "" },
		{ "- only words\n", FINDING_NOT_UNDERSTOOD, 3, "bullet", "Waivers" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char text[200];
		struct bench t;
		bool endless;

		snprintf(text, sizeof text, "# Customs\n\n## Waivers\n\n%s", rows[i].line);
		t = customs(text);
		/* A bullet without a key lacks the column of one. */
		expect_one(&t, rows[i].name, 5, rows[i].col, rows[i].message, i + 1 == COUNT(rows)
		    ? "untaught-skill" : rows[i].repair);
		/* A name that is nearly one is read as it; one without an end is kept, to be
		 * told with what it means to cover. */
		endless = str_has(t.f->v[0].message, "until when") ||
		    str_has(t.f->v[0].message, "neither a day");
		assert_int_equal(t.m->nwaivers, i == 0 || endless);
		assert_true(!t.m->nwaivers || t.m->waivers[0].endless == endless);
		assert_int_equal(t.f->v[0].scope, SCOPE_ASSIGNMENTS);
		bench_free(&t);
	}
}

static void safety_is_never_waived(void **state)
{
	const struct finding_info *safety = first_of(CLASS_SAFETY);
	char text[200];
	struct bench t;

	(void)state;
	assert_non_null(safety);
	snprintf(text, sizeof text, "# Customs\n\n## Waivers\n\n"
	    "- **%s, SM-25:** a; b; until fall-2027\n", safety->name);
	t = customs(text);
	expect_one(&t, FINDING_SAFETY_WAIVER, 5, 5, safety->name, "mend");
	assert_int_equal(t.m->nwaivers, 0);
	bench_free(&t);
}

static void what_is_no_custom_stays_on(void **state)
{
	static const enum finding_class classes[] = { CLASS_FIRM, CLASS_SAFETY };
	struct bench t;

	(void)state;
	for (size_t i = 0; i < COUNT(classes); i++) {
		char text[200];

		snprintf(text, sizeof text, "# Customs\n\n## Off\n\n- **%s:** why\n",
		    first_of(classes[i])->name);
		t = customs(text);
		expect_one(&t, FINDING_FIRM_RULE_OFF, 5, 5, first_of(classes[i])->name, "mend");
		assert_int_equal(t.m->ncustoms_off, 0);
		bench_free(&t);
	}
	t = customs("# Customs\n\n## Off\n\n- **zzz before qqq:** why\n");
	expect_one(&t, FINDING_UNKNOWN_WORD, 5, 5, "zzz before qqq", "");
	bench_free(&t);
}

static void customs_are_read(void **state)
{
	const struct finding_info *custom = first_of(CLASS_CUSTOM);
	char text[400];
	struct bench t;

	(void)state;
	assert_non_null(custom);
	snprintf(text, sizeof text, "# Customs\n\n## Off\n\n- **%s:** employers ask for it\n",
	    custom->custom);
	t = customs(text);
	expect_none(&t);
	assert_int_equal(t.m->ncustoms_off, 1);
	expect_str(t.m->customs_off[0].custom, custom->custom);
	expect_str(t.m->customs_off[0].reason, "employers ask for it");
	bench_free(&t);
	snprintf(text, sizeof text, "# Customs\n\n## Off\n\n- **%s:** a\n- **%s:** b\n",
	    custom->custom, custom->custom);
	t = customs(text);
	expect_one(&t, FINDING_DUPLICATE_KEY, 6, 5, "twice", "delete");
	bench_free(&t);
	snprintf(text, sizeof text, "# Customs\n\n## Off\n\n- **%s:**\n", custom->custom);
	t = customs(text);
	expect_one(&t, FINDING_MISSING_FACT, 5, 5, "stays on", "reason");
	assert_int_equal(t.m->ncustoms_off, 0);
	bench_free(&t);
	/* The finding's name where the words of the custom are owed. */
	snprintf(text, sizeof text, "# Customs\n\n## Off\n\n- **%s:** a\n", custom->name);
	t = customs(text);
	expect_one(&t, FINDING_UNKNOWN_WORD, 5, 5, custom->name, custom->custom);
	bench_free(&t);
	/* One letter lost. */
	snprintf(text, sizeof text, "# Customs\n\n## Off\n\n- **%s:** a\n", custom->custom + 1);
	t = customs(text);
	expect_one(&t, FINDING_UNKNOWN_WORD, 5, 5, custom->custom + 1, custom->custom);
	bench_free(&t);
}

static void faults_of_customs_headings(void **state)
{
	static const struct {
		const char *text;
		enum finding_name name;
		uint32_t line, col;
		const char *message, *repair;
	} rows[] = {
		{ "# Customs\n\n## Waiver\n\n" WAIVER, FINDING_UNKNOWN_SECTION, 3, 4, "Waiver",
		    "\"Waivers\"" },
		{ "# Customs\n\n## Off\n\n## Off\n", FINDING_DUPLICATE_SECTION, 5, 4, "Off", "" },
		{ "# Customs\n\nWords.\n", FINDING_NOT_UNDERSTOOD, 3, 1, "paragraph", "## Off" },
		{ "# Customs\n\n# Again\n", FINDING_UNKNOWN_SECTION, 3, 3, "second title", "" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = customs(rows[i].text);

		expect_one(&t, rows[i].name, rows[i].line, rows[i].col, rows[i].message,
		    rows[i].repair);
		bench_free(&t);
	}
}

static const char program[] = "# A: B\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n"
    "## Quarter 2\n\n## Quarter 3\n";
static const char shop[] = "# Shop\n\n## Section day\n\n- **Open:** 16 h a week\n";

static struct bench cohorts(const char *text)
{
	const struct file_text files[] = { { "cohorts.md", text }, { "program.md", program },
		{ "shop.md", shop } };

	return bench_bind(files, COUNT(files));
}

#define DAY "## Day 2025\n\n- **Entered:** fall-2025, quarter 1\n" \
    "- **Finished:** quarter 3\n- **Students:** 13\n- **Section:** day\n"

static void cohorts_are_read(void **state)
{
	struct bench t = cohorts("# Cohorts\n\n" DAY "\n## Evening\n\n"
	    "- **Entered:** spring-2026, quarter 3\n- **Finished:** none\n"
	    "- **Students:** 7\n");
	const struct cohort *c = t.m->cohorts;

	(void)state;
	expect_none(&t);
	assert_int_equal(t.m->ncohorts, 2);
	expect_str(c->name, "Day 2025");
	expect_str(c->entered, "fall-2025");
	assert_int_equal(c->entry_quarter, 1);
	assert_int_equal(c->finished, 3);
	assert_int_equal(c->students, 13);
	assert_int_equal(c->section, 0);
	assert_int_equal(c->pos.line, 3);
	assert_int_equal(c[1].entry_quarter, 3);
	assert_int_equal(c[1].finished, 0);
	assert_int_equal(c[1].section, NONE);
	bench_free(&t);
}

/* Entered on line 5, Finished 6, Students 7, Section 8. */
#define BY(entered, finished, students, section) "# Cohorts\n\n## Day\n\n" \
    "- **Entered:** " entered "\n- **Finished:** " finished "\n- **Students:** " students \
    "\n- **Section:** " section "\n"

static void faults_of_cohorts(void **state)
{
	static const struct {
		const char *text;
		enum finding_name name;
		uint32_t line, col;
		const char *message, *repair;
	} rows[] = {
		{ BY("soon, quarter 1", "none", "3", "day"), FINDING_UNKNOWN_WORD, 5, 16, "soon",
		    "fall-2025" },
		{ BY("fall-2025", "none", "3", "day"), FINDING_MISSING_FACT, 5, 16,
		    "which quarter", "fall-2025, quarter 1" },
		{ BY("fall-2025, quarter 4", "none", "3", "day"), FINDING_BAD_ENTRY, 5, 27,
		    "quarter 4", "1 to 3" },
		{ BY("fall-2025, first", "none", "3", "day"), FINDING_UNKNOWN_WORD, 5, 27, "first",
		    "quarter 1" },
		{ BY("fall-2025, quarter 1, late", "none", "3", "day"), FINDING_NOT_UNDERSTOOD, 5,
		    38, "late", "" },
		{ BY("fall-2025, quarter 1", "quarter 0", "3", "day"), FINDING_BAD_ENTRY, 6, 17,
		    "quarter 0", "" },
		{ BY("fall-2025, quarter 1", "none", "none", "day"), FINDING_BAD_QUANTITY, 7, 17,
		    "none", "" },
		{ BY("fall-2025, quarter 1", "none", "3", "dya"), FINDING_UNKNOWN_WORD, 8, 16,
		    "dya", "\"day\"" },
		{ "# Cohorts\n\n" DAY "\n## day 2025\n", FINDING_DUPLICATE_ID, 10, 4, "twice", "" },
		{ "# Cohorts\n\nWords.\n", FINDING_NOT_UNDERSTOOD, 3, 1, "paragraph", "## Day" },
		{ "# Cohorts\n\n## Day\n\n- **Entered:** fall-2025, quarter 1\n"
		    "- **Finished:** none\n", FINDING_MISSING_FACT, 3, 4, "\"Students\"",
		    "how many" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = cohorts(rows[i].text);

		expect_one(&t, rows[i].name, rows[i].line, rows[i].col, rows[i].message,
		    rows[i].repair);
		bench_free(&t);
	}
}

/* A section by another name is one finding at the first line that has it; a near one is
 * read as the one that is meant, another leaves its cohort out of the loads. */
static void an_unknown_section_is_one_finding(void **state)
{
	static const struct { const char *section; bool near; } rows[] = {
		{ "days", true }, { "morning", false },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char shop_text[400];
		const struct file_text files[] = { { "cohorts.md", "# Cohorts\n\n" DAY },
			{ "program.md", program }, { "shop.md", shop_text } };
		struct bench t;
		const struct finding *d;

		snprintf(shop_text, sizeof shop_text, "# Shop\n\n## Section %s\n\n"
		    "- **Open:** 16 h a week\n\n## Section evening\n\n"
		    "- **Open:** 9 h a week\n\n## Station a\n\n- **Places:** 1\n- **Sections:** day"
		    "\n\n## Station b\n\n- **Places:** 1\n- **Sections:** evening, day\n",
		    rows[i].section);
		t = bench_bind(files, COUNT(files));
		assert_int_equal(t.f->n, 1);
		d = &t.f->v[0];
		assert_int_equal(d->name, FINDING_UNKNOWN_WORD);
		assert_int_equal(d->nrelated, 2);
		assert_int_equal(d->related[0].pos.line, 19);
		assert_int_equal(d->related[1].pos.line, 8);
		assert_true(str_has(d->repair, rows[i].near ? "\"days\"" : "## Section day"));
		assert_int_equal(t.m->cohorts[0].section, rows[i].near ? 0 : NONE);
		assert_int_equal(t.m->cohorts[0].astray, !rows[i].near);
		expect_str(t.m->stations[1].sections, rows[i].near ? "evening, days"
		    : "evening, day");
		bench_free(&t);
	}
}

static void days_and_terms(void **state)
{
	static const struct { const char *text; uint32_t first, last; } rows[] = {
		{ "2027-09-01", 20270901, 20270901 }, { "2028-02-29", 20280229, 20280229 },
		{ "2000-02-29", 20000229, 20000229 }, { "fall-2027", 20270901, 20271231 },
		{ "Winter 2028", 20280101, 20280331 }, { "spring-2028", 20280401, 20280630 },
		{ "SUMMER-2028", 20280701, 20280831 }, { "autumn-2027", 20270901, 20271231 },
	};
	static const char *const bad[] = { "2027-02-29", "2100-02-29", "2027-13-01",
		"2027-00-01", "2027-04-31", "2027-4-30", "1899-01-01", "fall", "fall-27",
		"fall2027", "fall--2027", "fell-2027", "2027-fall", "", "fall-2027x" };
	struct when w;

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		assert_true(when_parse(str_of(rows[i].text), &w));
		assert_int_equal(w.first, rows[i].first);
		assert_int_equal(w.last, rows[i].last);
	}
	for (size_t i = 0; i < COUNT(bad); i++)
		if (when_parse(str_of(bad[i]), &w))
			fail_msg("%s is no date", bad[i]);
}

static void terms_compare_within_a_year(void **state)
{
	static const struct { const char *until, *date; bool over; } rows[] = {
		{ "fall-2027", "fall-2027", false }, { "fall-2027", "2027-12-31", false },
		{ "fall-2027", "2028-01-01", true }, { "fall-2027", "winter-2028", true },
		{ "fall-2027", "summer-2027", false }, { "winter-2027", "spring-2027", true },
		{ "winter-2027", "fall-2026", false }, { "2027-09-01", "2027-09-01", false },
		{ "2027-09-01", "2027-09-02", true }, { "2027-09-01", "fall-2027", false },
		{ "2027-08-31", "fall-2027", true },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct when until, date;

		assert_true(when_parse(str_of(rows[i].until), &until));
		assert_true(when_parse(str_of(rows[i].date), &date));
		if (when_over(until, date) != rows[i].over)
			fail_msg("%s by %s", rows[i].until, rows[i].date);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(waivers_are_read),
		cmocka_unit_test(a_reason_may_hold_semicolons),
		cmocka_unit_test(faults_of_waivers),
		cmocka_unit_test(safety_is_never_waived),
		cmocka_unit_test(what_is_no_custom_stays_on),
		cmocka_unit_test(customs_are_read),
		cmocka_unit_test(faults_of_customs_headings),
		cmocka_unit_test(cohorts_are_read),
		cmocka_unit_test(faults_of_cohorts),
		cmocka_unit_test(an_unknown_section_is_one_finding),
		cmocka_unit_test(days_and_terms),
		cmocka_unit_test(terms_compare_within_a_year),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
