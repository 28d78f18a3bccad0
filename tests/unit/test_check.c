#include "check/check.h"

#include "fake_model.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static int set_up(void **state)
{
	*state = arena_new(NULL, NULL);
	return 0;
}

static int tear_down(void **state)
{
	arena_free(*state);
	return 0;
}

static struct findings *judge(struct fake *k)
{
	struct findings *f = findings_new(k->a);

	check_program(k->a, fake_done(k), f);
	return f;
}

static size_t count(const struct findings *f, enum finding_name name)
{
	size_t n = 0;

	for (size_t i = 0; i < f->n; i++)
		n += f->v[i].name == name;
	return n;
}

/* Number i of the findings with this name. */
static const struct finding *nth(const struct findings *f, enum finding_name name,
    size_t i)
{
	for (size_t k = 0; k < f->n; k++)
		if (f->v[k].name == name && !i--)
			return &f->v[k];
	fail_msg("no such finding");
	return NULL;
}

static const char *z(struct arena *a, str s)
{
	return arena_copy(a, s.p ? s.p : "", s.n);
}

#define IS(k, s, expected) assert_string_equal(z((k)->a, (s)), (expected))

/* None of the findings of order level: what a sound program gives. */
static void assert_sound(const struct findings *f)
{
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 0);
	assert_int_equal(count(f, FINDING_OPTIONAL_TEACHER), 0);
	assert_int_equal(count(f, FINDING_ONE_BRANCH_TEACHER), 0);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 0);
	assert_int_equal(count(f, FINDING_UNKNOWN_SKILL), 0);
}

static struct fake *pair(struct arena *a, const char *needs, const char *teaches)
{
	struct fake *k = fake_new(a, 3, 11);

	fake_skills(k, "fit.tack smaw.2f meas.rule");
	fake_work(k, "FB-04", needs, "smaw.2f3");
	fake_work(k, "PR-01", "", teaches);
	return k;
}

static void test_taught_earlier_is_met(void **state)
{
	struct fake *k = pair(*state, "fit.tack2", "fit.tack2");

	fake_at(k, 1, 1, "PR-01");
	fake_at(k, 1, 2, "FB-04");
	assert_sound(judge(k));
}

static void test_taught_later(void **state)
{
	struct fake *k = pair(*state, "fit.tack2", "fit.tack3");
	const struct finding *d;

	fake_at(k, 2, 8, "FB-04");
	fake_at(k, 3, 1, "PR-01");
	d = nth(judge(k), FINDING_UNTAUGHT_SKILL, 0);
	IS(k, d->message, "FB-04 (quarter 2, week 8) needs fit.tack practiced, which is "
	    "taught later");
	IS(k, d->cause, "first taught by PR-01 in quarter 3, week 1 "
	    "(assignments/PR-01.md:40:3)");
	/* Four weeks for FB-04, five for PR-01. */
	IS(k, d->repair, "move FB-04 to the end of quarter 3, week 1 or later; or move "
	    "PR-01 to quarter 2, week 7 or earlier");
	IS(k, d->assignment, "FB-04");
	IS(k, d->skill, "fit.tack");
	assert_int_equal(d->scope, SCOPE_ASSIGNMENTS);
	assert_int_equal(d->level, LEVEL_ERROR);
	assert_int_equal(d->pos.file, 0);
	assert_int_equal(d->pos.line, 10);
	assert_int_equal(d->nrelated, 0);
}

static void test_same_week_counts_in_line_order(void **state)
{
	struct fake *k = pair(*state, "fit.tack2", "fit.tack2");
	struct fake *l = pair(*state, "fit.tack2", "fit.tack2");
	const struct finding *d;

	fake_at(k, 1, 1, "PR-01");
	fake_at(k, 1, 1, "FB-04");
	assert_sound(judge(k));
	fake_at(l, 1, 1, "FB-04");
	fake_at(l, 1, 1, "PR-01");
	d = nth(judge(l), FINDING_UNTAUGHT_SKILL, 0);
	IS(l, d->repair, "move FB-04 to the end of quarter 1, week 1 or later");
}

static void test_level_equal_and_one_below(void **state)
{
	struct fake *k = pair(*state, "fit.tack3", "fit.tack3");
	struct fake *l = pair(*state, "fit.tack3", "fit.tack2");
	const struct finding *d;

	fake_at(k, 1, 1, "PR-01");
	fake_at(k, 1, 2, "FB-04");
	assert_sound(judge(k));
	fake_at(l, 1, 1, "PR-01");
	fake_at(l, 1, 2, "FB-04");
	d = nth(judge(l), FINDING_UNTAUGHT_SKILL, 0);
	IS(l, d->message, "FB-04 (quarter 1, week 2) needs fit.tack assessed, which is "
	    "never taught that far");
	IS(l, d->cause, "taught less far by PR-01 in quarter 1, week 1 "
	    "(assignments/PR-01.md:40:3)");
	IS(l, d->repair, "let an assignment before FB-04 teach fit.tack assessed, or ask "
	    "for a lower level");
}

static void test_two_levels_below(void **state)
{
	struct fake *k = pair(*state, "fit.tack3", "fit.tack1");

	fake_at(k, 1, 1, "PR-01");
	fake_at(k, 1, 2, "FB-04");
	IS(k, nth(judge(k), FINDING_UNTAUGHT_SKILL, 0)->cause,
	    "taught less far by PR-01 in "
	    "quarter 1, week 1 (assignments/PR-01.md:40:3)");
}

static void test_never_taught(void **state)
{
	struct fake *k = pair(*state, "fit.tack1", "meas.rule3");
	struct findings *f;
	const struct finding *d;

	fake_at(k, 1, 1, "PR-01");
	fake_at(k, 1, 2, "FB-04");
	f = judge(k);
	d = nth(f, FINDING_UNTAUGHT_SKILL, 0);
	IS(k, d->message, "FB-04 (quarter 1, week 2) needs fit.tack introduced, which no "
	    "assignment teaches");
	IS(k, d->cause, "no assignment teaches it");
	IS(k, d->repair, "add a line to Teaches of an earlier assignment, or list it under "
	    "Entry skills in skills.md");
	/* The same gap is not told of skills.md as well. */
	assert_int_equal(count(f, FINDING_NEVER_TAUGHT), 0);
}

static void test_never_taught_and_not_needed(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "x y");
	fake_work(k, "SM-01", "", "x3");
	fake_at(k, 1, 1, "SM-01");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEVER_TAUGHT), 1);
	IS(k, nth(f, FINDING_NEVER_TAUGHT, 0)->skill, "y");
}

/* A skill that is asked for assessed and never is, is one finding; a skill that is only
 * practiced and asked for as such is another. */
static void test_never_assessed_goes_with_its_need(void **state)
{
	for (unsigned asked = 2; asked <= 3; asked++) {
		struct fake *k = fake_new(*state, 1, 11);
		struct findings *f;

		fake_skills(k, "x");
		fake_work(k, "SM-01", "", "x2");
		fake_work(k, "SM-02", asked == 2 ? "x2" : "x3", "");
		fake_at(k, 1, 1, "SM-01");
		fake_at(k, 1, 2, "SM-02");
		f = judge(k);
		assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), asked == 3);
		assert_int_equal(count(f, FINDING_NEVER_ASSESSED), asked == 2);
	}
}

static void test_taught_only_in_no_course(void **state)
{
	struct fake *k = pair(*state, "fit.tack1", "fit.tack3");
	const struct finding *d;

	fake_at(k, 1, 2, "FB-04");
	d = nth(judge(k), FINDING_UNTAUGHT_SKILL, 0);
	IS(k, d->cause, "PR-01 teaches it but stands in no course");
	IS(k, d->repair, "give PR-01 a line in program.md before FB-04");
}

/* The test that also teaches its own need: the practice sheet fell out of its course. */
static void test_own_teacher_and_one_in_no_course(void **state)
{
	struct fake *k = fake_new(*state, 3, 11);

	fake_skills(k, "fit.tack");
	fake_work(k, "FB-04", "fit.tack1", "fit.tack3");
	fake_work(k, "PR-01", "", "fit.tack2");
	fake_at(k, 1, 2, "FB-04");
	IS(k, nth(judge(k), FINDING_UNTAUGHT_SKILL, 0)->cause,
	    "PR-01 teaches it but stands in no course");
}

static void test_unlisted_needs_are_not_walked(void **state)
{
	struct fake *k = pair(*state, "fit.tack1", "meas.rule3");

	fake_at(k, 1, 1, "PR-01");
	assert_sound(judge(k));
}

static void test_entry_skill_meets_up_to_its_level(void **state)
{
	struct fake *k = pair(*state, "fit.tack1", "meas.rule1");
	struct fake *l = pair(*state, "fit.tack2", "meas.rule1");

	fake_brought(k, "fit.tack1");
	fake_at(k, 1, 1, "FB-04");
	assert_sound(judge(k));
	fake_brought(l, "fit.tack1");
	fake_at(l, 1, 1, "FB-04");
	assert_int_equal(count(judge(l), FINDING_UNTAUGHT_SKILL), 1);
}

static void test_only_itself(void **state)
{
	struct fake *k = pair(*state, "smaw.2f1", "meas.rule3");
	struct findings *f;

	fake_at(k, 1, 1, "FB-04");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 0);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
	IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->cause, "only FB-04 itself teaches it");
}

static void test_optional_does_not_count_for_others(void **state)
{
	struct fake *k = pair(*state, "fit.tack2", "fit.tack2");
	struct findings *f;
	const struct finding *d;

	fake_optional(k, 1, 1, "PR-01");
	fake_at(k, 1, 2, "FB-04");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 0);
	d = nth(f, FINDING_OPTIONAL_TEACHER, 0);
	assert_int_equal(d->level, LEVEL_WARNING);
	IS(k, d->message, "FB-04 (quarter 1, week 2) needs fit.tack practiced, which "
	    "only optional work teaches by then");
	IS(k, d->cause, "taught by PR-01 in quarter 1, week 1 "
	    "(assignments/PR-01.md:40:3), which is optional");
}

/* Who skips a safety card works without it. */
static void test_optional_safety_card(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);

	fake_skills(k, "x");
	fake_work(k, "SF-01", "", "x3");
	fake_work(k, "SM-10", "x3", "");
	fake_optional(k, 1, 1, "SF-01");
	fake_at(k, 1, 2, "SM-10");
	assert_int_equal(nth(judge(k), FINDING_OPTIONAL_TEACHER, 0)->level, LEVEL_ERROR);
}

static void test_optional_relies_on_earlier_optional(void **state)
{
	struct fake *k = pair(*state, "fit.tack2", "fit.tack2");
	struct fake *l = pair(*state, "fit.tack2", "fit.tack2");

	fake_optional(k, 1, 1, "PR-01");
	fake_optional(k, 1, 2, "FB-04");
	assert_sound(judge(k));
	fake_optional(l, 1, 1, "FB-04");
	fake_optional(l, 1, 2, "PR-01");
	assert_int_equal(count(judge(l), FINDING_UNTAUGHT_SKILL), 1);
}

static struct fake *choice(struct arena *a, const char *needs, const char *left,
    const char *right)
{
	struct fake *k = fake_new(a, 1, 11);

	fake_skills(k, "x y z");
	fake_work(k, "GM-06", "", left);
	fake_work(k, "GM-07", "", right);
	fake_work(k, "SM-10", needs, "z3");
	fake_at(k, 1, 9, "GM-06 GM-07");
	fake_at(k, 1, 10, "SM-10");
	return k;
}

static void test_choice_counts_what_every_branch_teaches(void **state)
{
	struct fake *k = choice(*state, "x2 y1", "x3 y1", "y3 x2");
	struct fake *l = choice(*state, "x3", "x3 y1", "y3 x2");
	const struct finding *d;

	assert_sound(judge(k));
	d = nth(judge(l), FINDING_ONE_BRANCH_TEACHER, 0);
	assert_int_equal(d->level, LEVEL_WARNING);
	IS(l, d->message, "SM-10 (quarter 1, week 10) needs x assessed, which only one "
	    "branch of a choice teaches by then");
	IS(l, d->cause, "taught by GM-06 in quarter 1, week 9 "
	    "(assignments/GM-06.md:40:3), one branch of a choice");
}

/* When both optional work and one branch teach it, the earlier of them is named. */
static void test_earlier_of_optional_and_branch(void **state)
{
	struct fake *k = choice(*state, "x3", "x3", "y1");
	struct fake *l = choice(*state, "x3", "x3", "y1");
	struct findings *f;

	fake_work(k, "SM-05", "", "x3");
	fake_optional(k, 1, 8, "SM-05");
	f = judge(k);
	assert_int_equal(count(f, FINDING_OPTIONAL_TEACHER), 1);
	assert_int_equal(count(f, FINDING_ONE_BRANCH_TEACHER), 0);
	fake_work(l, "SM-05", "", "x3");
	fake_optional(l, 1, 9, "SM-05");
	f = judge(l);
	assert_int_equal(count(f, FINDING_OPTIONAL_TEACHER), 0);
	assert_int_equal(count(f, FINDING_ONE_BRANCH_TEACHER), 1);
}

static void test_one_of_is_met_branch_by_branch(void **state)
{
	struct fake *k = choice(*state, "x2|y2", "x2", "y2");
	struct fake *l = choice(*state, "x2|y2", "x2", "y1");

	assert_sound(judge(k));
	assert_int_equal(count(judge(l), FINDING_ONE_BRANCH_TEACHER), 1);
}

static void test_one_of_is_met_by_any_alternative(void **state)
{
	struct fake *k = choice(*state, "z1|y2", "y2", "y3");

	assert_sound(judge(k));
}

static void test_one_of_unmet(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;
	const struct finding *d;

	fake_skills(k, "x y z");
	fake_work(k, "SM-10", "x2|y1", "z3");
	fake_work(k, "SM-11", "", "y3");
	fake_at(k, 1, 3, "SM-10");
	fake_at(k, 1, 5, "SM-11");
	f = judge(k);
	d = nth(f, FINDING_UNTAUGHT_SKILL, 0);
	IS(k, d->message, "SM-10 (quarter 1, week 3) needs one of x practiced, y "
	    "introduced, none of which is taught by then");
	IS(k, d->skill, "y");
}

static void test_branches_never_teach_each_other(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "x");
	fake_work(k, "GM-06", "", "x3");
	fake_work(k, "GM-07", "x1", "");
	fake_at(k, 1, 9, "GM-06 GM-07");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 0);
	IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->message,
	    "GM-07 (quarter 1, week 9) needs x introduced, which only another branch of "
	    "the same choice teaches");
}

static void test_unmet_still_teaches(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);

	fake_skills(k, "x y");
	fake_work(k, "SM-01", "x1", "y3");
	fake_work(k, "SM-02", "y3", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	assert_int_equal(count(judge(k), FINDING_UNTAUGHT_SKILL), 1);
}

static void test_one_late_teacher_is_one_finding(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;
	const struct finding *d;

	fake_skills(k, "x y");
	fake_work(k, "SM-01", "x2", "");
	fake_work(k, "SM-02", "y1 x1", "");
	fake_work(k, "SM-03", "", "x2 y3");
	fake_at(k, 1, 3, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	fake_at(k, 1, 4, "SM-03");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
	d = nth(f, FINDING_UNTAUGHT_SKILL, 0);
	IS(k, d->message, "SM-02 (quarter 1, week 2) needs y introduced, which is taught "
	    "later; the same for x (2 more needs)");
	assert_int_equal(d->nrelated, 2);
	IS(k, d->related[0].skill, "x");
	IS(k, d->related[0].label, "SM-02 needs x introduced");
	IS(k, d->related[1].assignment, "SM-01");
	IS(k, d->related[1].label, "SM-01 needs x practiced");
	assert_int_equal(d->related[1].pos.line, 10);
	IS(k, d->repair, "move SM-03 to quarter 1, week 1");
}

/* What one line needs of several later ones is one finding when that line may go behind
 * them all, and one of each when it may not. */
static void test_one_early_line_is_one_finding(void **state)
{
	for (unsigned held = 0; held < 2; held++) {
		struct fake *k = fake_new(*state, 1, 11);
		struct findings *f;

		fake_skills(k, "x y z");
		fake_work(k, "SM-01", "x1 y1", "z1");
		fake_work(k, "SM-02", "", "x1");
		fake_work(k, "SM-03", "", "y1");
		fake_work(k, "SM-04", held ? "z1" : "", "");
		fake_at(k, 1, 2, "SM-01");
		fake_at(k, 1, 3, "SM-04");
		fake_at(k, 1, 4, "SM-02");
		fake_at(k, 1, 5, "SM-03");
		f = judge(k);
		assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), held ? 2 : 1);
		if (held)
			continue;
		IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->message, "SM-01 (quarter 1, "
		    "week 2) needs x introduced, which is taught later; the same for y");
		IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->cause, "first taught by SM-02 in "
		    "quarter 1, week 4 (assignments/SM-02.md:40:3), the last of them by "
		    "SM-03 in quarter 1, week 5");
		IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->repair, "move SM-01 to the end of "
		    "quarter 1, week 5 or later");
	}
}

static void test_other_first_teacher_is_another_finding(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "x");
	fake_work(k, "SM-01", "x1", "");
	fake_work(k, "SM-02", "x3", "");
	fake_work(k, "SM-03", "", "x1");
	fake_work(k, "SM-04", "x1", "x3");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	fake_at(k, 1, 3, "SM-03");
	fake_at(k, 1, 4, "SM-04");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 2);
	IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 1)->cause,
	    "first taught by SM-04 in quarter 1, "
	    "week 4 (assignments/SM-04.md:40:3)");
}

static void test_unknown_word_once(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;
	const struct finding *d;

	fake_skills(k, "fit.tack");
	fake_work(k, "SM-01", "Fit.Tak1", "");
	fake_work(k, "SM-02", "fit.tak2", "");
	fake_work(k, "SM-03", "zzzzzzzz2", "");
	fake_at(k, 1, 2, "SM-01");
	fake_at(k, 1, 1, "SM-02");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 0);
	assert_int_equal(count(f, FINDING_UNKNOWN_SKILL), 2);
	d = nth(f, FINDING_UNKNOWN_SKILL, 0);
	IS(k, d->message, "\"fit.tak\" is not a skill that skills.md lists");
	IS(k, d->repair, "write fit.tack, or list fit.tak in skills.md");
	IS(k, d->assignment, "SM-02");
	assert_int_equal(d->nrelated, 1);
	IS(k, d->related[0].assignment, "SM-01");
	IS(k, nth(f, FINDING_UNKNOWN_SKILL, 1)->repair,
	    "list it in skills.md, or write a skill that stands there");
}

static void test_misspelt_teacher_takes_its_needs(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;
	const struct finding *d;

	fake_skills(k, "fit.tack");
	fake_work(k, "SM-01", "", "fit.tak3");
	fake_work(k, "SM-02", "fit.tack2", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 0);
	assert_int_equal(count(f, FINDING_NEVER_TAUGHT), 0);
	d = nth(f, FINDING_UNKNOWN_SKILL, 0);
	assert_int_equal(d->nrelated, 1);
	IS(k, d->related[0].assignment, "SM-02");
	IS(k, d->related[0].skill, "fit.tack");
	assert_int_equal(d->related[0].pos.line, 10);
}

/* "pipe.6g" is one letter from both: the one that waits for its teacher is meant. */
static void test_of_two_likely_skills_the_idle_one_is_meant(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "pipe.1g pipe.6gg");
	fake_work(k, "SM-01", "", "pipe.1g3");
	fake_work(k, "SM-02", "", "pipe.6g3");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEVER_TAUGHT), 0);
	IS(k, nth(f, FINDING_UNKNOWN_SKILL, 0)->repair,
	    "write pipe.6gg, or list pipe.6g in skills.md");
}

static void test_misspelt_teacher_too_late_is_no_excuse(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "fit.tack");
	fake_work(k, "SM-01", "", "fit.tak3");
	fake_work(k, "SM-02", "fit.tack2", "");
	fake_at(k, 1, 1, "SM-02");
	fake_at(k, 1, 2, "SM-01");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
	assert_int_equal(nth(f, FINDING_UNKNOWN_SKILL, 0)->nrelated, 0);
}

static void test_unknown_alternative_never_meets(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "fit.tack meas.rule");
	fake_work(k, "SM-01", "", "qqqqqqqqq3");
	fake_work(k, "SM-02", "qqqqqqqqq1|meas.rule1", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
	assert_int_equal(count(f, FINDING_UNKNOWN_SKILL), 1);
}

static void test_missing_level_is_not_judged(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);

	fake_skills(k, "x y");
	fake_work(k, "SM-01", "x0", "y0");
	fake_work(k, "SM-02", "y3", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	assert_sound(judge(k));
}

static struct fake *path_pair(struct arena *a, const char *quarters, const char *with)
{
	struct fake *k = fake_new(a, 3, 11);

	fake_skills(k, "x");
	fake_work(k, "SM-01", "", "x3");
	fake_work(k, "SM-02", "x3", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 3, 1, "SM-02");
	fake_path(k, quarters, with);
	return k;
}

static void test_path_is_its_own_order(void **state)
{
	struct fake *k = path_pair(*state, "3 1 2", "");
	struct findings *f = judge(k);
	const struct finding *d = nth(f, FINDING_UNTAUGHT_SKILL, 0);

	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
	IS(k, d->message, "SM-02 (quarter 3, week 1) needs x assessed, which is taught "
	    "later, for those who come by \"3 1 2\"");
	IS(k, d->cause, "first taught by SM-01 in quarter 1, week 1 "
	    "(assignments/SM-01.md:40:3)");
	assert_sound(judge(path_pair(*state, "1 2 3", "")));
	assert_sound(judge(path_pair(*state, "3 1 2", "x3")));
	assert_int_equal(count(judge(path_pair(*state, "3 1 2", "x2")),
	    FINDING_UNTAUGHT_SKILL), 1);
	assert_sound(judge(path_pair(*state, "1 2", "")));
}

static void test_fault_on_several_paths_is_one_finding(void **state)
{
	struct fake *k = fake_new(*state, 3, 11);
	struct findings *f;

	fake_skills(k, "x y");
	fake_work(k, "SM-01", "", "x3 y3");
	fake_work(k, "SM-02", "x3", "");
	fake_work(k, "SM-03", "y3", "");
	fake_at(k, 1, 2, "SM-01");
	fake_at(k, 3, 1, "SM-02");
	fake_at(k, 1, 1, "SM-03");
	fake_path(k, "1 2 3", "");
	fake_path(k, "3 1 2", "");
	fake_path(k, "3 2 1", "");
	f = judge(k);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 2);
	IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->cause,
	    "first taught by SM-01 in quarter 1, week 2 (assignments/SM-01.md:41:3); the "
	    "same for those who come by \"3 1 2\", \"3 2 1\"");
	IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 1)->message,
	    "SM-02 (quarter 3, week 1) needs x assessed, which is taught later, for "
	    "those who come by \"3 1 2\", \"3 2 1\"");
}

static void test_loop(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;
	const struct finding *d;

	fake_skills(k, "x y z");
	fake_work(k, "SM-20", "x1", "y3");
	fake_work(k, "SM-21", "y1", "x3 z3");
	fake_work(k, "SM-22", "z1", "");
	fake_at(k, 1, 1, "SM-21");
	fake_at(k, 1, 2, "SM-20");
	fake_at(k, 1, 3, "SM-22");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 1);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 0);
	d = nth(f, FINDING_NEEDS_LOOP, 0);
	IS(k, d->message, "SM-20 and SM-21 need each other in a circle, so none of them "
	    "can come first");
	IS(k, d->cause, "SM-20 needs x introduced, which SM-21 teaches; SM-21 needs y "
	    "introduced, which SM-20 teaches");
	IS(k, d->assignment, "SM-20");
	assert_int_equal(d->scope, SCOPE_ASSIGNMENTS);
	assert_int_equal(d->nrelated, 2);
	IS(k, d->related[0].label, "SM-20 needs x introduced, which SM-21 teaches");
	IS(k, d->related[1].assignment, "SM-21");
}

static void test_another_teacher_unties_the_loop(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "x y");
	fake_work(k, "SM-20", "x1", "y3");
	fake_work(k, "SM-21", "y1", "x3");
	fake_work(k, "SM-22", "", "x1");
	fake_at(k, 1, 1, "SM-21");
	fake_at(k, 1, 2, "SM-20");
	fake_at(k, 1, 3, "SM-22");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 0);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
}

static void test_missing_teacher_is_no_loop(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "x y z");
	fake_work(k, "SM-20", "z1 z2", "y3");
	fake_work(k, "SM-21", "y1", "x3");
	fake_at(k, 1, 1, "SM-20");
	fake_at(k, 1, 2, "SM-21");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 0);
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
}

static void test_knot_counts_the_rest(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "a b c d");
	fake_work(k, "SM-20", "b1", "a3");
	fake_work(k, "SM-21", "a1 d1", "b3");
	fake_work(k, "SM-22", "b1", "c3");
	fake_work(k, "SM-23", "c1", "d3");
	fake_at(k, 1, 1, "SM-20");
	fake_at(k, 1, 2, "SM-21");
	fake_at(k, 1, 3, "SM-22");
	fake_at(k, 1, 4, "SM-23");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEEDS_LOOP), 1);
	IS(k, nth(f, FINDING_NEEDS_LOOP, 0)->cause, "SM-20 needs b introduced, which "
	    "SM-21 teaches; SM-21 needs a introduced, which SM-20 teaches; 2 more "
	    "assignments are caught in the same knot");
	assert_int_equal(count(f, FINDING_UNTAUGHT_SKILL), 1);
	IS(k, nth(f, FINDING_UNTAUGHT_SKILL, 0)->skill, "d");
}

static void test_knot_before_those_that_rest_on_it(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "a b c d");
	fake_work(k, "SM-01", "b1 c1", "a3");
	fake_work(k, "SM-02", "a1", "b3");
	fake_work(k, "SM-08", "d1", "c3");
	fake_work(k, "SM-09", "c1", "d3");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	fake_at(k, 1, 3, "SM-08");
	fake_at(k, 1, 4, "SM-09");
	f = judge(k);
	IS(k, nth(f, FINDING_NEEDS_LOOP, 0)->assignment, "SM-08");
	IS(k, nth(f, FINDING_NEEDS_LOOP, 1)->assignment, "SM-01");
	/* So they are printed too, though SM-01 stands before SM-08. */
	findings_sort(f);
	IS(k, nth(f, FINDING_NEEDS_LOOP, 0)->assignment, "SM-08");
	IS(k, nth(f, FINDING_NEEDS_LOOP, 1)->assignment, "SM-01");
}

/* SM-01 rests on the knot of SM-08 by way of SM-05, which is in none; that of SM-03
 * rests on nothing and keeps its place among those. */
static void test_knots_are_printed_by_what_they_rest_on(void **state)
{
	static const char *const told[] = { "SM-03", "SM-08", "SM-01" };
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "a b c d e f g");
	fake_work(k, "SM-01", "b1 e1", "a3");
	fake_work(k, "SM-02", "a1", "b3");
	fake_work(k, "SM-03", "g1", "f3");
	fake_work(k, "SM-04", "f1", "g3");
	fake_work(k, "SM-05", "c1", "e3");
	fake_work(k, "SM-08", "d1", "c3");
	fake_work(k, "SM-09", "c1", "d3");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 2, "SM-02");
	fake_at(k, 1, 3, "SM-03");
	fake_at(k, 1, 4, "SM-04");
	fake_at(k, 1, 5, "SM-05");
	fake_at(k, 1, 6, "SM-08");
	fake_at(k, 1, 7, "SM-09");
	f = judge(k);
	findings_sort(f);
	for (size_t i = 0; i < 3; i++)
		IS(k, nth(f, FINDING_NEEDS_LOOP, i)->assignment, told[i]);
}

static void test_never_assessed(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f;

	fake_skills(k, "a b c d e");
	fake_brought(k, "c1 d1");
	fake_work(k, "SM-01", "", "a2 b3 d2");
	fake_at(k, 1, 1, "SM-01");
	f = judge(k);
	assert_int_equal(count(f, FINDING_NEVER_ASSESSED), 2);
	assert_int_equal(count(f, FINDING_NEVER_TAUGHT), 1);
	IS(k, nth(f, FINDING_NEVER_ASSESSED, 0)->skill, "a");
	IS(k, nth(f, FINDING_NEVER_ASSESSED, 1)->skill, "d");
	IS(k, nth(f, FINDING_NEVER_TAUGHT, 0)->skill, "e");
	assert_int_equal(nth(f, FINDING_NEVER_TAUGHT, 0)->pos.line, 5);
	assert_int_equal(nth(f, FINDING_NEVER_TAUGHT, 0)->level, LEVEL_WARNING);
}

static struct findings *evidence(struct fake *k, const char *text, enum skill_level level)
{
	struct findings *f = findings_new(k->a);
	struct assignment *as;
	struct criterion *c = arena_array(k->a, 1, sizeof *c);
	struct grade *g = arena_array(k->a, 1, sizeof *g);

	fake_skills(k, "x");
	fake_work(k, "SM-01", "", "x3");
	fake_at(k, 1, 1, "SM-01");
	as = &((struct model *)fake_done(k))->assignments[0];
	c->name = STR("Visual");
	g->name = STR("Fillet break");
	as->criteria = c;
	as->ncriteria = 1;
	as->grades = g;
	as->ngrades = 1;
	as->teaches[0].level = level;
	as->teaches[0].evidence = str_of(text);
	check_program(k->a, k->m, f);
	return f;
}

static void test_evidence(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	struct findings *f = evidence(k, "visual , FILLET BREAK", SKILL_ASSESSED);

	assert_int_equal(count(f, FINDING_NO_EVIDENCE), 0);
	f = evidence(fake_new(*state, 1, 11), "", SKILL_PRACTICED);
	assert_int_equal(count(f, FINDING_NO_EVIDENCE), 0);
	f = evidence(fake_new(*state, 1, 11), "", SKILL_ASSESSED);
	IS(k, nth(f, FINDING_NO_EVIDENCE, 0)->message,
	    "SM-01 assesses x without naming its evidence");
	f = evidence(fake_new(*state, 1, 11), "Visual, Fillet brake, Oven log",
	    SKILL_ASSESSED);
	assert_int_equal(count(f, FINDING_NO_EVIDENCE), 2);
	IS(k, nth(f, FINDING_NO_EVIDENCE, 0)->message, "SM-01 names \"Fillet brake\" as "
	    "evidence of x, but has no such Acceptance or Grading line");
	IS(k, nth(f, FINDING_NO_EVIDENCE, 0)->repair, "write Fillet break");
	IS(k, nth(f, FINDING_NO_EVIDENCE, 1)->repair, "name one of its Acceptance or "
	    "Grading lines, or add Oven log");
}

static void test_empty_program(void **state)
{
	struct fake *k = fake_new(*state, 0, 0);

	assert_int_equal(judge(k)->n, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_taught_earlier_is_met),
		cmocka_unit_test(test_taught_later),
		cmocka_unit_test(test_same_week_counts_in_line_order),
		cmocka_unit_test(test_level_equal_and_one_below),
		cmocka_unit_test(test_two_levels_below),
		cmocka_unit_test(test_never_taught),
		cmocka_unit_test(test_never_taught_and_not_needed),
		cmocka_unit_test(test_never_assessed_goes_with_its_need),
		cmocka_unit_test(test_taught_only_in_no_course),
		cmocka_unit_test(test_own_teacher_and_one_in_no_course),
		cmocka_unit_test(test_unlisted_needs_are_not_walked),
		cmocka_unit_test(test_entry_skill_meets_up_to_its_level),
		cmocka_unit_test(test_only_itself),
		cmocka_unit_test(test_optional_does_not_count_for_others),
		cmocka_unit_test(test_optional_safety_card),
		cmocka_unit_test(test_optional_relies_on_earlier_optional),
		cmocka_unit_test(test_choice_counts_what_every_branch_teaches),
		cmocka_unit_test(test_earlier_of_optional_and_branch),
		cmocka_unit_test(test_one_of_is_met_branch_by_branch),
		cmocka_unit_test(test_one_of_is_met_by_any_alternative),
		cmocka_unit_test(test_one_of_unmet),
		cmocka_unit_test(test_branches_never_teach_each_other),
		cmocka_unit_test(test_unmet_still_teaches),
		cmocka_unit_test(test_one_late_teacher_is_one_finding),
		cmocka_unit_test(test_one_early_line_is_one_finding),
		cmocka_unit_test(test_other_first_teacher_is_another_finding),
		cmocka_unit_test(test_unknown_word_once),
		cmocka_unit_test(test_misspelt_teacher_takes_its_needs),
		cmocka_unit_test(test_of_two_likely_skills_the_idle_one_is_meant),
		cmocka_unit_test(test_misspelt_teacher_too_late_is_no_excuse),
		cmocka_unit_test(test_unknown_alternative_never_meets),
		cmocka_unit_test(test_missing_level_is_not_judged),
		cmocka_unit_test(test_path_is_its_own_order),
		cmocka_unit_test(test_fault_on_several_paths_is_one_finding),
		cmocka_unit_test(test_loop),
		cmocka_unit_test(test_another_teacher_unties_the_loop),
		cmocka_unit_test(test_missing_teacher_is_no_loop),
		cmocka_unit_test(test_knot_counts_the_rest),
		cmocka_unit_test(test_knot_before_those_that_rest_on_it),
		cmocka_unit_test(test_knots_are_printed_by_what_they_rest_on),
		cmocka_unit_test(test_never_assessed),
		cmocka_unit_test(test_evidence),
		cmocka_unit_test(test_empty_program),
	};

	return cmocka_run_group_tests(tests, set_up, tear_down);
}
