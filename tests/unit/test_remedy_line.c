/* Lines and headings that are lost, optional or in a wrong place are one finding: single
 * slips of a program without a finding, then two slips, which stay two. */
#include "slip_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

enum { SHEETS, PROGRAM, SHOP, SKILLS, FILES };

#define REST \
	"## Drawing\n\n```joint\nleg: 1/4 in\nlength: 8 in\n```\n\n" \
	"## Procedure\n\n1. Tack both ends.\n2. Weld.\n3. Let it cool.\n\n" \
	"## Acceptance\n\n- **Visual:** D1.1-2020 welder test\n- **Leg size:** 1/4 in\n\n" \
	"## Grading\n\n- **Visual:** 60, must pass\n- **Leg size:** 40\n" \
	"- **Pass mark:** 70\n\n" \
	"## Cautions\n\n- Hot metal and fume: hood, gloves and extraction.\n\n"

static const struct file_text program[FILES] = {
	[SHEETS] = { "assignments/all.md",
	    "# SF-01: Walk\n\n- **Kind:** safety\n- **Hours:** 4\n- **Station:** booth\n"
	    "- **Machines:** saw, grinder\n\n## Teaches\n\n- saf.shop assessed by Quiz\n\n"
	    "## Acceptance\n\n- **Quiz:** 80 % or better\n\n"
	    COUPON("SM-01", "Tee", "tee", "1F", "saw, grinder")
	    "## Needs\n\n- saf.shop assessed\n\n## Teaches\n\n- smaw.1f assessed by Visual\n\n"
	    REST
	    COUPON("SM-02", "Tee on edge", "tee", "2F", "saw, grinder")
	    "## Needs\n\n- smaw.1f assessed\n\n## Teaches\n\n- smaw.2f assessed by Visual\n\n"
	    REST
	    COUPON("SM-03", "Lap on edge", "lap", "2F", "saw, grinder")
	    "## Needs\n\n- saf.shop assessed\n- smaw.2f assessed\n\n"
	    REST },
	[PROGRAM] = { "program.md",
	    "# Valley: Welding\n\n- **Weeks in a quarter:** 11\n"
	    "- **Terms:** Fall, Winter\n- **Entry:** quarter 1 in Fall\n\n"
	    "## Quarter 1\n\n### ORW 101: Stick\n\n- **Lab hours:** 14\n\n"
	    "1. SF-01, week 1\n2. SM-01, week 4 (Tee)\n\n"
	    "## Quarter 2\n\n### ORW 102: More stick\n\n- **Lab hours:** 20\n\n"
	    "1. SM-02, week 2 (Tee on edge)\n2. SM-03, week 5 (Lap on edge)\n" },
	[SHOP] = { "shop.md", SHOP_TEXT },
	[SKILLS] = { "skills.md", SKILLS_TEXT },
};

static void the_program_is_clean(void **state)
{
	(void)state;
	slip_check_clean(program, FILES);
}

static void one_slip_is_one_finding(void **state)
{
	static const struct slip_told rows[] = {
		{ { PROGRAM, "1. SF-01, week 1\n", "" }, 1, FINDING_NOT_LISTED, "before SM-01" },
		{ { PROGRAM, "SM-01, week 4", "SM-01, week 4, optional" }, 1,
		  FINDING_OPTIONAL_TEACHER, "take \"optional\" off" },
		{ { PROGRAM, "1. SM-02, week 2 (Tee on edge)", "1. SM-03, week 2 (Tee on edge)" }, 3,
		  FINDING_LISTED_TWICE, "write SM-02 in place of SM-03 in line 22" },
		{ { PROGRAM, "2. SM-03, week 5", "2. SM-02, week 5" }, 2,
		  FINDING_LISTED_TWICE, "write SM-03 in place of SM-02 in line 23" },
		{ { PROGRAM, "## Quarter 1\n\n", "" }, 3, FINDING_NOT_UNDERSTOOD,
		  "write \"## Quarter 1\" above this line" },
		{ { PROGRAM, "quarter 1 in Fall", "quarter 2 in Fall" }, 2,
		  FINDING_UNTAUGHT_SKILL, "let \"quarter 2 in Fall\" begin in quarter 1" },
		/* One below the other they are one finding by themselves. */
		{ { SHEETS, "## Procedure\n\n", "" }, 1, FINDING_NOT_UNDERSTOOD, "" },
		{ { SHEETS, "## Drawing\n\n", "" }, 2, FINDING_NOT_UNDERSTOOD,
		  "write \"## Drawing\" above" },
		{ { SHEETS, "## Grading\n\n", "" }, 2, FINDING_DUPLICATE_KEY,
		  "write \"## Grading\" above" },
		{ { SHEETS, "## Teaches\n\n- smaw", "- smaw" }, 2, FINDING_NOT_UNDERSTOOD,
		  "write \"## Teaches\" above" },
		{ { SHEETS, "- **Visual:** 60, must pass\n", "" }, 3, FINDING_TEST_WITHOUT_GRADE,
		  "add \"- **Visual:** 60\" under Grading" },
		{ { SHEETS, "- **Leg size:** 40\n", "" }, 2, FINDING_WEIGHTS_NOT_100, "add 40" },
		{ { SHEETS, "- **Machines:** saw, grinder\n", "" }, 2,
		  FINDING_MACHINE_BEFORE_SIGN_OFF, "add \"- **Machines:** grinder, saw\" to" },
		{ { SHOP, "## Machine saw\n\n", "" }, 2, FINDING_UNKNOWN_KEY,
		  "write \"## Machine saw\" above" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		slip_check(program, FILES, &rows[i]);
}

/* ORW 102 falls into quarter 1 when the heading above it is lost. */
static void a_quarter_that_is_missed_is_one_finding(void **state)
{
	static const struct slip_made v[] = {
		{ PROGRAM, "## Quarter 2\n\n", "" },
		{ PROGRAM, "- **Lab hours:** 20", "- **Lab hours:** 10" },
		{ PROGRAM, "2. SM-03, week 5", "\n## Quarter 3\n\n### ORW 103: Laps\n\n"
		    "1. SM-03, week 5" },
	};
	size_t before;
	struct bench t = slip_bench(program, FILES, v, COUNT(v), &before);
	const struct finding *d;

	(void)state;
	assert_true(before > 1);
	d = expect_one(&t, FINDING_MISSING_FACT, 22, 4, "quarter 3 follows quarter 1",
	    "write \"## Quarter 2\" above ORW 102");
	assert_int_equal(d->level, LEVEL_ERROR);
	bench_free(&t);
}

/* Two faults that have nothing to do with one another. */
static void two_slips_are_two_findings(void **state)
{
	static const struct slip_made pairs[][2] = {
		{ { PROGRAM, "1. SF-01, week 1\n", "" }, { SHEETS, "## Grading\n\n", "" } },
		{ { PROGRAM, "2. SM-03, week 5", "2. SM-02, week 5" },
		  { SHEETS, "- **Visual:** 60, must pass\n", "" } },
		{ { PROGRAM, "quarter 1 in Fall", "quarter 2 in Fall" },
		  { SHEETS, "## Drawing\n\n", "" } },
		{ { PROGRAM, "SM-01, week 4", "SM-01, week 4, optional" },
		  { SHOP, "## Machine saw\n\n", "" } },
		{ { SHEETS, "## Teaches\n\n- smaw", "- smaw" },
		  { SHEETS, "- **Leg size:** 40\n", "" } },
	};

	(void)state;
	slip_check_pairs(program, FILES, pairs, COUNT(pairs));
}

/* What two members of one assignment hung on may have been one; another is apart. */
static void members_of_one_assignment_float_together(void **state)
{
	size_t before;
	struct bench t = slip_bench(program, FILES, NULL, 0, &before);
	struct pos pos = { SHEETS, 40, 1 };

	(void)state;
	for (uint32_t i = 0; i < 3; i++, pos.line++)
		finding_add(t.f, FINDING_FLOATING_PART, pos, "a part touches nothing")->assignment =
		    i < 2 ? STR("SM-01") : STR("SM-02");
	findings_settle(t.arena, t.m, t.f);
	assert_int_equal(t.f->n, 2);
	assert_int_equal(t.f->v[0].nrelated, 1);
	assert_int_equal(t.f->v[0].related[0].pos.line, 41);
	assert_int_equal(t.f->v[1].nrelated, 0);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_program_is_clean),
		cmocka_unit_test(one_slip_is_one_finding),
		cmocka_unit_test(a_quarter_that_is_missed_is_one_finding),
		cmocka_unit_test(two_slips_are_two_findings),
		cmocka_unit_test(members_of_one_assignment_float_together),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
