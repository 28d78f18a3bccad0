/* The frame around the rules of the trade: what a rule may ask and how it reports. */
#include "check/rules.h"

#include "fake_model.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* By id: A 0, B 1, C 2, D 3, E 4, F 5. Walk: C; D or E; B, optional; A; F in no course. */
static struct model *program(struct arena *a, bool path)
{
	struct fake *k = fake_new(a, 2, 11);
	struct model *m = k->m;

	fake_skills(k, "cut set tack");
	fake_brought(k, "tack1");
	fake_work(k, "AA-1", "", "tack3");
	fake_work(k, "BB-1", "", "set2");
	fake_work(k, "CC-1", "", "cut1");
	fake_work(k, "DD-1", "", "cut2 set1");
	fake_work(k, "EE-1", "", "cut3");
	fake_work(k, "FF-1", "", "set3");
	fake_at(k, 1, 1, "CC-1");
	fake_at(k, 1, 2, "DD-1 EE-1");
	fake_optional(k, 1, 3, "BB-1");
	fake_at(k, 2, 1, "AA-1");
	if (path)
		fake_path(k, "2 1", "");
	fake_done(k);
	for (size_t i = 0; i < m->nassignments; i++)
		m->assignments[i].kind = i == 2 ? KIND_SAFETY : KIND_COUPON;
	return m;
}

enum { A, B, C, D, E, F };


static struct findings *run(struct arena *a, const struct model *m,
    void (*rule)(struct rule_context *), enum rule_when when)
{
	const struct rule table[] = { { rule, when }, { NULL, RULE_ONCE } };
	struct findings *f = findings_new(a);
	struct graph *g = graph_new(a, m, NULL);
	struct view *views[4];
	size_t n = 0;

	views[n++] = view_new(a, g, order_of_program(a, m));
	for (size_t i = 0; i < m->nentries; i++)
		views[n++] = view_new(a, g, order_of_entry(a, m, &m->entries[i]));
	rules_run_table(table, a, m, views, n, MOVES_TOLD, f);
	return f;
}

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

static bool is_number(const struct rule_context *x, uint32_t assignment, const void *with)
{
	const uint32_t *set = with;

	(void)x;
	return *set >> assignment & 1;
}

static void expect_first(struct first f, uint32_t sure, uint32_t optional, uint32_t branch)
{
	assert_int_equal(f.sure, sure);
	assert_int_equal(f.optional, optional);
	assert_int_equal(f.branch, branch);
}

static struct first first_of(const struct rule_context *x, uint32_t set)
{
	return rule_first(x, is_number, &set);
}

static void ask_firsts(struct rule_context *x)
{
	expect_first(first_of(x, 1 << A | 1 << C), C, NONE, NONE);
	expect_first(first_of(x, 1 << B | 1 << A), A, B, NONE);
	expect_first(first_of(x, 1 << D | 1 << E), D, NONE, NONE);
	expect_first(first_of(x, 1 << E | 1 << A), A, NONE, E);
	expect_first(first_of(x, 1 << F), NONE, NONE, NONE);
	expect_first(first_of(x, 0), NONE, NONE, NONE);
}

static void test_first_places(void **state)
{
	run(*state, program(*state, false), ask_firsts, RULE_EACH);
}

/* Keys: 0 for all but the safety card, 1 for D and E, 2 for E and A. */
static uint32_t keys_of(const struct rule_context *x, uint32_t assignment, uint32_t *v,
    uint32_t most)
{
	uint32_t n = 0;

	(void)x;
	assert_int_equal(most, RULE_KEYS_MOST);
	if (assignment != C)
		v[n++] = 0;
	if (assignment == D || assignment == E)
		v[n++] = 1;
	if (assignment == E || assignment == A)
		v[n++] = 2;
	return n;
}

static void ask_by_key(struct rule_context *x)
{
	const struct first *f = rule_firsts(x, 4, keys_of);

	expect_first(f[0], D, B, NONE);
	expect_first(f[1], D, NONE, NONE);
	expect_first(f[2], A, NONE, E);
	expect_first(f[3], NONE, NONE, NONE);
}

static void test_first_places_by_key(void **state)
{
	run(*state, program(*state, false), ask_by_key, RULE_EACH);
}

static void ask_taught(struct rule_context *x)
{
	/* Both branches teach "cut" practiced, one of them assessed. */
	expect_first(rule_taught(x, 0, SKILL_INTRODUCED), C, NONE, D);
	assert_int_equal(rule_taught(x, 0, SKILL_PRACTICED).sure, D);
	expect_first(rule_taught(x, 0, SKILL_ASSESSED), NONE, NONE, E);
	expect_first(rule_taught(x, 1, SKILL_PRACTICED), NONE, B, NONE);
	assert_true(rule_brought(x, 2, SKILL_INTRODUCED));
	assert_false(rule_brought(x, 2, SKILL_PRACTICED));
	assert_false(rule_brought(x, 0, SKILL_INTRODUCED));
}

static void test_taught(void **state)
{
	run(*state, program(*state, false), ask_taught, RULE_EACH);
}

static void ask_met(struct rule_context *x)
{
	const struct first never = { NONE, NONE, NONE };
	const struct first sure = { D, NONE, NONE }, optional = { NONE, B, NONE },
	    branch = { A, NONE, E };

	assert_int_equal(rule_met(x, sure, A), MET);
	assert_int_equal(rule_met(x, sure, C), MET_LATER);
	/* Branches of one choice share a place. */
	assert_int_equal(rule_met(x, sure, E), MET_LATER);
	assert_int_equal(rule_met(x, sure, D), MET_LATER);
	assert_int_equal(rule_met(x, optional, A), MET_OPTIONAL);
	assert_int_equal(rule_met(x, optional, B), MET_LATER);
	assert_int_equal(rule_met(x, branch, B), MET_BRANCH);
	assert_int_equal(rule_met(x, never, A), MET_NEVER);
	/* An asker in no course comes after nothing. */
	assert_int_equal(rule_met(x, sure, F), MET_LATER);
	assert_int_equal(rule_named(sure, MET), D);
	assert_int_equal(rule_named(branch, MET_BRANCH), E);
	assert_int_equal(rule_named(branch, MET_LATER), A);
	assert_int_equal(rule_named(optional, MET_LATER), B);
	assert_int_equal(rule_named(never, MET_NEVER), NONE);
	assert_true(rule_earlier(x, C, D));
	assert_false(rule_earlier(x, D, E));
	assert_false(rule_earlier(x, A, F));
	assert_false(rule_is_placed(x, F));
	assert_true(str_eq(rule_place(x, B), STR("quarter 1, week 3")));
}

static void test_met(void **state)
{
	run(*state, program(*state, false), ask_met, RULE_EACH);
}

/* An optional asker may rely on earlier optional work. */
static void ask_optional(struct rule_context *x)
{
	const struct first optional = { NONE, A, NONE };

	assert_int_equal(rule_met(x, optional, B), MET);
}

static void test_optional_asker(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);

	fake_skills(k, "cut");
	fake_work(k, "AA-1", "", "");
	fake_work(k, "BB-1", "", "");
	fake_optional(k, 1, 1, "AA-1");
	fake_optional(k, 1, 2, "BB-1");
	run(*state, fake_done(k), ask_optional, RULE_EACH);
}

static void expect_list(struct work_list l, uint32_t n, uint32_t first, uint32_t last)
{
	assert_int_equal(l.n, n);
	if (n) {
		assert_int_equal(l.v[0], first);
		assert_int_equal(l.v[n - 1], last);
	}
}

static void ask_lists(struct rule_context *x)
{
	const struct work_lists *l = &x->lists;

	expect_list(l->kind[KIND_SAFETY], 1, C, C);
	expect_list(l->kind[KIND_COUPON], 4, D, A);
	expect_list(l->kind[KIND_PROJECT], 0, 0, 0);
	expect_list(l->process[PROCESS_SMAW], 2, C, A);
	expect_list(l->process[PROCESS_TS], 1, B, B);
	expect_list(l->process[PROCESS_GTAW], 0, 0, 0);
	expect_list(l->joint[JOINT_BUTT], 1, A, A);
	expect_list(l->position[POSITION_1F_ROLLED], 1, A, A);
	expect_list(l->machine[0], 0, 0, 0);
	expect_list(l->machine[1], 2, E, A);
	/* F is in no course, but its work is known. */
	assert_true(work_has(x->work[F].processes, PROCESS_GTAW));
	assert_int_equal(x->work[A].nmachines, 1);
}

static void test_work_lists(void **state)
{
	static enum process smaw[] = { PROCESS_SMAW }, ts[] = { PROCESS_TS },
	    gtaw[] = { PROCESS_GTAW };
	static struct weld weld = { .process = PROCESS_SMAW, .joint = JOINT_BUTT,
		.at = { .position = POSITION_1F_ROLLED } };
	static struct plain_fact machines = { .key = { "Machines", 8 },
		.text = { "Shear, saw, shear", 17 } };
	static struct machine shop[] = { { .name = { "brake", 5 } },
		{ .name = { "shear", 5 } } };
	struct model *m = program(*state, false);

	m->machines = shop;
	m->nmachines = 2;
	m->assignments[C].processes = smaw;
	m->assignments[C].nprocesses = 1;
	m->assignments[B].processes = ts;
	m->assignments[B].nprocesses = 1;
	m->assignments[F].processes = gtaw;
	m->assignments[F].nprocesses = 1;
	m->assignments[A].welds = &weld;
	m->assignments[A].nwelds = 1;
	m->assignments[A].facts = m->assignments[E].facts = &machines;
	m->assignments[A].nfacts = m->assignments[E].nfacts = 1;
	run(*state, m, ask_lists, RULE_EACH);
}

static void report_a(struct rule_context *x)
{
	struct finding *d = rule_report(x, FINDING_NEVER_TAUGHT, x->m->assignments[A].pos, A,
	    "fault of %s", "AA-1");

	finding_cause(x->f, d, "because");
}

/* One fault in two orders is one finding; what runs once is told once. */
static void test_one_fault_one_finding(void **state)
{
	struct model *m = program(*state, true);
	struct findings *f = run(*state, m, report_a, RULE_EACH);

	assert_int_equal(f->n, 1);
	assert_true(str_eq(f->v[0].message, STR("fault of AA-1")));
	assert_true(str_starts(f->v[0].cause, STR("because; the same for those who come by ")));
	assert_true(str_eq(f->v[0].assignment, STR("AA-1")));
	assert_int_equal(f->v[0].scope, SCOPE_FILE);
	f = run(*state, m, report_a, RULE_ONCE);
	assert_int_equal(f->n, 1);
	assert_true(str_eq(f->v[0].cause, STR("because")));
}

static void report_on_path(struct rule_context *x)
{
	if (x->o->entry)
		report_a(x);
}

static void test_fault_of_a_path_alone(void **state)
{
	struct findings *f = run(*state, program(*state, true), report_on_path, RULE_EACH);

	assert_int_equal(f->n, 1);
	assert_true(str_starts(f->v[0].message,
	    STR("fault of AA-1, for those who come by \"")));
	assert_true(str_eq(f->v[0].cause, STR("because")));
}

static void report_twice(struct rule_context *x)
{
	struct pos pos = x->m->assignments[A].pos;

	rule_report(x, FINDING_NEVER_TAUGHT, pos, A, "one");
	rule_report(x, FINDING_NEVER_TAUGHT, pos, A, "two");
	rule_report(x, FINDING_NEVER_TAUGHT, pos, A, "two");
	rule_report(x, FINDING_NEVER_ASSESSED, pos, NONE, "of all");
}

/* Two faults at one place are told apart by their words; a repeat is told once. */
static void test_two_faults_at_one_place(void **state)
{
	struct findings *f = run(*state, program(*state, true), report_twice, RULE_EACH);

	assert_int_equal(f->n, 3);
	assert_true(str_eq(f->v[1].message, STR("two")));
	assert_int_equal(f->v[2].scope, SCOPE_PROGRAM);
	assert_int_equal(f->v[2].assignment.n, 0);
}

static enum finding_name a_custom(void)
{
	uint32_t k = 0;

	while (k < FINDING_COUNT && finding_info(k)->class != CLASS_CUSTOM)
		k++;
	assert_true(k < FINDING_COUNT);
	return (enum finding_name)k;
}

static void report_custom(struct rule_context *x)
{
	struct finding *d = rule_report(x, a_custom(), x->m->assignments[A].pos, A, "habit");

	finding_cause(x->f, d, "because");
	finding_repair(x->f, d, "turn it round");
	finding_relate(x->f, d, x->m->assignments[C].pos)->label = STR("first");
	report_a(x);
}

static void test_a_custom_switched_off(void **state)
{
	struct model *m = program(*state, false);
	struct custom_off off = { .custom = str_of(finding_info(a_custom())->custom) };
	struct findings *f = run(*state, m, report_custom, RULE_EACH);

	assert_int_equal(f->n, 2);
	assert_int_equal(f->v[0].nrelated, 1);
	m->customs_off = &off;
	m->ncustoms_off = 1;
	f = run(*state, m, report_custom, RULE_EACH);
	assert_int_equal(f->n, 1);
	assert_int_equal(f->v[0].name, FINDING_NEVER_TAUGHT);
	assert_int_equal(f->v[0].nrelated, 0);
}

#define TEST(f) cmocka_unit_test_setup_teardown(f, set_up, tear_down)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(test_first_places), TEST(test_first_places_by_key), TEST(test_taught),
		TEST(test_met), TEST(test_optional_asker), TEST(test_work_lists),
		TEST(test_one_fault_one_finding), TEST(test_fault_of_a_path_alone),
		TEST(test_two_faults_at_one_place), TEST(test_a_custom_switched_off),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
