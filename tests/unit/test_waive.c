/* Waivers against findings: what they cover, when they are over, when they are idle. */
#include "model_bench.h"

#include "check/check.h"
#include "check/waive.h"
#include "order/order.h"
#include "sheets/hold.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define WORK(id, rest) "# " id ": Work\n\n- **Kind:** written\n- **Hours:** 1\n\n" rest "\n"
#define NEEDS "## Needs\n\n- fab.plan practiced\n"
#define TEACHES "## Teaches\n\n- fab.plan assessed by Quiz\n\n## Acceptance\n\n- **Quiz:** 80 %\n"

/* SM-24 and SM-25 need what PR-02 teaches a quarter later. */
static const char work[] = WORK("PR-02", TEACHES) WORK("SM-24", NEEDS) WORK("SM-25", NEEDS);
static const char program[] = "# A: B\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n"
    "### ORW 101: One\n\n- **Lab hours:** 44\n\n1. SM-24, week 1\n2. SM-25, week 2\n\n## Quarter 2\n\n"
    "### ORW 102: Two\n\n- **Lab hours:** 44\n\n1. PR-02, week 1\n";
static const char skills[] = "# Skills\n\n## PO1: Plans\n\n- **fab.plan:** Plan a job\n"
    "- **fab.lost:** Nobody teaches this\n";

static struct bench judge_work(const char *more, const char *waivers, const char *date)
{
	static char text[600], all[2000]; /* Findings keep slices until the next call. */
	struct file_text files[] = { { "assignments/all.md", all }, { "customs.md", text },
		{ "program.md", program }, { "skills.md", skills } };
	struct bench t;
	struct arena *scratch = arena_new(NULL, NULL);
	struct when when;

	snprintf(all, sizeof all, "%s%s", work, more);
	snprintf(text, sizeof text, "# Customs\n\n## Waivers\n\n%s", waivers);
	t = bench_bind(files, COUNT(files));
	check_program(scratch, t.m, t.f);
	if (date)
		assert_true(when_parse(str_of(date), &when));
	waive_apply(scratch, t.m, date ? &when : NULL, t.f);
	arena_free(scratch);
	findings_sort(t.f);
	return t;
}

static struct bench judge(const char *waivers, const char *date)
{
	return judge_work("", waivers, date);
}

static size_t count(const struct bench *t, enum finding_name name, bool waived)
{
	size_t n = 0;

	for (size_t i = 0; i < t->f->n; i++)
		n += t->f->v[i].name == name && !t->f->v[i].waived == !waived;
	return n;
}

/* Number i of the findings with this name. */
static const struct finding *nth(const struct bench *t, enum finding_name name, size_t i)
{
	for (size_t k = 0; k < t->f->n; k++)
		if (t->f->v[k].name == name && !i--)
			return &t->f->v[k];
	fail_msg("no %s", finding_info(name)->name);
	return NULL;
}

static const struct finding *find(const struct bench *t, enum finding_name name)
{
	return nth(t, name, 0);
}

#define BOTH "- **untaught-skill, SM-24, fab.plan:** a; dean; until fall-2027\n" \
    "- **untaught-skill, SM-25:** b; chair; until fall-2027\n"
#define ONE "- **untaught-skill, SM-25, fab.plan:** why; chair; until fall-2027\n"

static void without_waivers_faults_are_one_finding(void **state)
{
	struct bench t = judge("", NULL);

	(void)state;
	assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, false), 1);
	assert_int_equal(find(&t, FINDING_UNTAUGHT_SKILL)->nrelated, 1);
	assert_int_equal(findings_count(t.f, LEVEL_ERROR), 1);
	assert_int_equal(findings_count_waived(t.f), 0);
	bench_free(&t);
}

/* The waived fault leaves the merged finding; the other stands alone. */
static void a_waiver_covers_only_what_it_names(void **state)
{
	struct bench t = judge(ONE, NULL);
	const struct finding *d;

	(void)state;
	assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, true), 1);
	assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, false), 1);
	d = find(&t, FINDING_UNTAUGHT_SKILL);
	expect_str(d->assignment, "SM-24");
	assert_int_equal(d->nrelated, 0);
	assert_null(d->waived);
	d = nth(&t, FINDING_UNTAUGHT_SKILL, 1);
	expect_str(d->assignment, "SM-25");
	expect_str(d->waived->reason, "why");
	expect_str(d->waived->role, "chair");
	expect_str(d->waived->until, "fall-2027");
	assert_int_equal(findings_count(t.f, LEVEL_ERROR), 1);
	assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), 0);
	bench_free(&t);
}

/* The need for the arc card is accepted; that there is no card before the arc is not. */
static void a_waived_need_hides_no_safety(void **state)
{
	static const char *const customs[] = { "# Customs\n", "# Customs\n\n## Waivers\n\n"
	    "- **untaught-skill, SM-01, saf.arc:** why; chair; until fall-2027\n" };

	(void)state;
	for (size_t i = 0; i < COUNT(customs); i++) {
		struct file_text files[] = { { "assignments/all.md",
		    "# SM-01: Pad\n\n- **Kind:** drill\n- **Hours:** 1\n- **Process:** SMAW\n"
		    "- **Joint:** surfacing\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n"
		    "- **Position:** flat\n\n## Needs\n\n- saf.arc assessed\n"
		    "# SF-02: Card\n\n- **Kind:** safety\n- **Hours:** 1\n\n## Teaches\n\n"
		    "- saf.arc assessed by Quiz\n\n## Acceptance\n\n- **Quiz:** 80 %\n" },
			{ "customs.md", customs[i] }, { "program.md", "# A: B\n\n"
		    "- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n### ORW 101: One\n\n"
		    "- **Lab hours:** 44\n\n1. SM-01, week 1\n2. SF-02, week 2\n" },
			{ "skills.md", "# Skills\n\n## PO1: Works safely\n\n"
		    "- **saf.arc:** Arc\n" } };
		struct bench t = bench_bind(files, COUNT(files));
		struct arena *scratch = arena_new(NULL, NULL);

		check_program(scratch, t.m, t.f);
		waive_apply(scratch, t.m, NULL, t.f);
		arena_free(scratch);
		assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, i), 1);
		/* One card is one finding: that of the shop speaks for the arc. */
		assert_int_equal(count(&t, FINDING_WORK_BEFORE_SHOP_SAFETY, false), i);
		bench_free(&t);
	}
}

#define TEE(id, more) "# " id ": Work\n\n- **Kind:** coupon\n- **Hours:** 1\n- **Process:** SMAW\n" \
    "- **Joint:** tee\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** 2F\n\n" more

/* Three coupons before the fit-up drill are one finding; the waived one stands apart,
 * whether it is the first of them or another. */
static void a_waiver_takes_its_own_out_of_a_rule(void **state)
{
	static const struct { const char *waived, *first; size_t related; } rows[] = {
		{ "SM-02", "SM-01", 1 }, { "SM-01", "SM-02", 1 }, { "SM-09", "SM-01", 2 },
	};
	char customs[200];

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct file_text files[] = { { "assignments/all.md", TEE("SM-01", "")
		    TEE("SM-02", "") TEE("SM-03", "") "# SM-04: Drill\n\n- **Kind:** drill\n"
		    "- **Hours:** 1\n\n## Acceptance\n\n- **Fit-up:** tight\n" },
			{ "customs.md", customs }, { "program.md", "# A: B\n\n"
		    "- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n### ORW 101: One\n\n"
		    "- **Lab hours:** 44\n\n1. SM-01, week 1\n2. SM-02, week 2\n3. SM-03, week 3\n"
		    "4. SM-04, week 4\n" }, { "skills.md", skills } };
		struct arena *scratch = arena_new(NULL, NULL);
		struct bench t;
		size_t waived;

		snprintf(customs, sizeof customs, "# Customs\n\n## Waivers\n\n"
		    "- **welded-before-fit-up, %s:** why; chair; until fall-2027\n", rows[i].waived);
		t = bench_bind(files, COUNT(files));
		check_program(scratch, t.m, t.f);
		waive_apply(scratch, t.m, NULL, t.f);
		arena_free(scratch);
		findings_sort(t.f);
		waived = count(&t, FINDING_WELDED_BEFORE_FIT_UP, true);
		assert_int_equal(waived, i < 2);
		assert_int_equal(count(&t, FINDING_WELDED_BEFORE_FIT_UP, false), 1);
		for (size_t k = 0; k < t.f->n; k++)
			if (t.f->v[k].name == FINDING_WELDED_BEFORE_FIT_UP && !t.f->v[k].waived) {
				expect_str(t.f->v[k].assignment, rows[i].first);
				assert_int_equal(t.f->v[k].nrelated, rows[i].related);
			}
		bench_free(&t);
	}
}

static void waived_findings_hold_nothing_back(void **state)
{
	struct bench t = judge(ONE, NULL);
	uint32_t sm24 = map_find(t.m->assignment_by_id, STR("SM-24"));
	uint32_t sm25 = map_find(t.m->assignment_by_id, STR("SM-25"));

	(void)state;
	assert_non_null(hold_find(t.m, t.f, &sm24, 1, 0, NULL));
	assert_null(hold_find(t.m, t.f, &sm25, 1, 0, NULL));
	bench_free(&t);
	t = judge(BOTH, NULL);
	assert_int_equal(findings_count(t.f, LEVEL_ERROR), 0);
	assert_int_equal(findings_count_waived(t.f), 2);
	assert_null(hold_find(t.m, t.f, &sm24, 1, 0, NULL));
	bench_free(&t);
}

static void a_waiver_is_over_after_its_term(void **state)
{
	static const struct { const char *date; bool over; } rows[] = {
		{ NULL, false }, { "2027-12-31", false }, { "fall-2027", false },
		{ "2028-01-01", true }, { "winter-2028", true },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = judge(ONE, rows[i].date);

		assert_int_equal(count(&t, FINDING_LAPSED_WAIVER, false), rows[i].over);
		assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, true), !rows[i].over);
		assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), 0);
		if (rows[i].over) {
			const struct finding *d = find(&t, FINDING_LAPSED_WAIVER);

			assert_int_equal(d->level, LEVEL_ERROR);
			assert_int_equal(d->pos.file, 1);
			assert_int_equal(d->pos.line, 5);
			assert_int_equal(d->pos.col, 58);
			assert_true(str_has(d->cause, "stands again"));
		}
		bench_free(&t);
	}
}

static void idle_waivers_say_why(void **state)
{
	static const struct { const char *text, *cause; } rows[] = {
		{ "- **untaught-skill, SM-99:** a; b; until fall-2027\n", "no assignment" },
		{ "- **untaught-skill, SM-25, fab.paln:** a; b; until fall-2027\n",
		    "skills.md does not list" },
		{ "- **untaught-skill:** a; b; until fall-2027\n", "does not name" },
		{ "- **untaught-skill, PR-02:** a; b; until fall-2027\n", "nothing of that name" },
		{ "- **untaught-skill, SM-25, fab.lost:** a; b; until fall-2027\n",
		    "nothing of that name" },
		{ "- **idle-waiver:** a; b; until fall-2027\n", "customs.md itself" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = judge(rows[i].text, NULL);
		const struct finding *d = find(&t, FINDING_IDLE_WAIVER);

		assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, true), 0);
		assert_int_equal(count(&t, FINDING_IDLE_WAIVER, true), 0);
		assert_int_equal(d->level, LEVEL_WARNING);
		assert_int_equal(d->pos.line, 5);
		if (!str_has(d->cause, rows[i].cause))
			fail_msg("%.*s", STR_ARG(d->cause));
		bench_free(&t);
	}
}

/* PR-03 stands in no course: a waiver of a rule of order is idle for that, one of what its
 * own file says is not. */
static void a_waiver_of_unlisted_work_is_told_with_it(void **state)
{
	static const struct { const char *text; size_t idle; } rows[] = {
		{ "- **overhead-before-vertical, PR-03:** a; b; until fall-2027\n", 0 },
		{ "- **overhead-before-vertical, PR-02:** a; b; until fall-2027\n", 1 },
		{ "- **size-said-twice, PR-03:** a; b; until fall-2027\n", 1 },
		{ "", 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct file_text files[] = { { "assignments/all.md", WORK("PR-02", "")
			WORK("PR-03", "") }, { "customs.md", NULL }, { "program.md", "# A: B\n\n"
			"- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n### ORW 101: One\n\n"
			"1. PR-02, week 1\n" }, { "skills.md", skills } };
		char text[200];
		struct arena *scratch = arena_new(NULL, NULL);
		struct bench t;

		snprintf(text, sizeof text, "# Customs\n\n## Waivers\n\n%s", rows[i].text);
		files[1].text = text;
		t = bench_bind(files, COUNT(files));
		check_program(scratch, t.m, t.f);
		waive_apply(scratch, t.m, NULL, t.f);
		arena_free(scratch);
		assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), rows[i].idle);
		assert_int_equal(find(&t, FINDING_NOT_LISTED)->nrelated, i == 0);
		bench_free(&t);
	}
}

/* Findings that concern no assignment are covered by name and skill, or by name. */
static void program_findings_are_covered(void **state)
{
	static const char *const texts[] = {
		"- **never-taught, fab.lost:** a; b; until fall-2027\n",
		"- **never-taught:** a; b; until fall-2027\n",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(texts); i++) {
		struct bench t = judge(texts[i], NULL);

		assert_int_equal(count(&t, FINDING_NEVER_TAUGHT, true), 1);
		assert_int_equal(count(&t, FINDING_NEVER_TAUGHT, false), 0);
		assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), 0);
		bench_free(&t);
	}
}

/* SM-24 is an hour of work in a course of 44 lab hours, PR-02 in another: a waiver that
 * names the one course leaves the other. */
static void a_course_is_covered_by_its_id(void **state)
{
	static const struct { const char *waiver; size_t waived, idle; } rows[] = {
		{ "- **hours-under, orw101:** a; b; until fall-2027\n", 1, 0 },
		{ "- **hours-under, ORW 102:** a; b; until fall-2027\n", 1, 0 },
		{ "- **hours-under:** a; b; until fall-2027\n", 2, 0 },
		{ "- **hours-under, quarter 1:** a; b; until fall-2027\n", 0, 1 },
		{ "- **hours-under, SM-24:** a; b; until fall-2027\n", 0, 1 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = judge(rows[i].waiver, NULL);

		assert_int_equal(count(&t, FINDING_HOURS_UNDER, true), rows[i].waived);
		assert_int_equal(count(&t, FINDING_HOURS_UNDER, false), 2 - rows[i].waived);
		assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), rows[i].idle);
		bench_free(&t);
	}
}

/* Warnings are told with what is wrong with the end, errors stand; without the waiver
 * there are two findings hours-under and one untaught-skill of two needs. */
static void a_waiver_without_an_end_explains_warnings(void **state)
{
	static const struct { const char *waiver; size_t hours, needs, related; } rows[] = {
		{ "- **hours-under, ORW 102:** a; b; until soon\n", 1, 1, 1 },
		{ "- **hours-under:** a; b\n", 0, 1, 2 },
		{ "- **untaught-skill:** a; b; until\n", 2, 1, 0 },
		{ "- **never-assessed:** a; b; until soon\n", 2, 1, 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = judge(rows[i].waiver, "2026-09-01");
		size_t n = count(&t, FINDING_UNKNOWN_WORD, false);
		const struct finding *d = nth(&t, n ? FINDING_UNKNOWN_WORD
		    : FINDING_MISSING_FACT, 0);

		assert_int_equal(n + count(&t, FINDING_MISSING_FACT, false), 1);
		assert_int_equal(d->level, LEVEL_ERROR);
		assert_int_equal(d->nrelated, rows[i].related);
		assert_int_equal(count(&t, FINDING_HOURS_UNDER, false), rows[i].hours);
		assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, false), rows[i].needs);
		assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), 0);
		for (size_t k = 0; k < t.f->n; k++)
			assert_true(t.f->v[k].name < FINDING_COUNT && !t.f->v[k].waived);
		bench_free(&t);
	}
}

/* An id near the only one that the waiver can mean takes its warning in; others do not. */
static void a_waiver_of_a_misspelt_id_explains_one_warning(void **state)
{
	static const struct { const char *waiver; bool taken; } rows[] = {
		{ "- **not-listed, GM-08:** a; b; until fall-2027\n", true },
		{ "- **not-listed, XX-77:** a; b; until fall-2027\n", false },
		/* An assignment that is there, and a finding that is an error. */
		{ "- **not-listed, SM-24:** a; b; until fall-2027\n", false },
		{ "- **untaught-skill, SM-26:** a; b; until fall-2027\n", false },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = judge_work(WORK("GM-09", ""), rows[i].waiver, NULL);
		const struct finding *d = find(&t, FINDING_IDLE_WAIVER);

		assert_int_equal(count(&t, FINDING_NOT_LISTED, false), !rows[i].taken);
		assert_int_equal(count(&t, FINDING_UNTAUGHT_SKILL, false), 1);
		assert_int_equal(d->nrelated, rows[i].taken);
		assert_int_equal(str_has(d->repair, "GM-09"), rows[i].taken);
		bench_free(&t);
	}
}

/* Of two waivers of one finding the first counts and the second is idle. */
static void the_first_waiver_counts(void **state)
{
	struct bench t = judge("- **untaught-skill, SM-25:** wide; b; until fall-2027\n" ONE,
	    NULL);

	(void)state;
	expect_str(nth(&t, FINDING_UNTAUGHT_SKILL, 1)->waived->reason, "wide");
	assert_int_equal(count(&t, FINDING_IDLE_WAIVER, false), 1);
	assert_int_equal(find(&t, FINDING_IDLE_WAIVER)->pos.line, 6);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(without_waivers_faults_are_one_finding),
		cmocka_unit_test(a_waiver_covers_only_what_it_names),
		cmocka_unit_test(a_waived_need_hides_no_safety),
		cmocka_unit_test(a_waiver_takes_its_own_out_of_a_rule),
		cmocka_unit_test(waived_findings_hold_nothing_back),
		cmocka_unit_test(a_waiver_is_over_after_its_term),
		cmocka_unit_test(idle_waivers_say_why),
		cmocka_unit_test(a_waiver_of_unlisted_work_is_told_with_it),
		cmocka_unit_test(program_findings_are_covered),
		cmocka_unit_test(a_course_is_covered_by_its_id),
		cmocka_unit_test(a_waiver_without_an_end_explains_warnings),
		cmocka_unit_test(a_waiver_of_a_misspelt_id_explains_one_warning),
		cmocka_unit_test(the_first_waiver_counts),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
