#include "check/check.h"
#include "check/knot.h"

#include "brute.h"
#include "random_model.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

enum { PROGRAMS = 24000, NEEDS_MOST = 8 };

/* What a run of the check says of each need. */
struct said {
	bool untaught[BRUTE_MOST][NEEDS_MOST], lighter[BRUTE_MOST][NEEDS_MOST];
	bool slip[BRUTE_MOST][NEEDS_MOST], loop[BRUTE_MOST][NEEDS_MOST];
};

/* All orders that the check looks at. */
struct orders {
	const struct order *v[8];
	size_t n;
};

static struct orders orders_of(struct arena *a, const struct model *m)
{
	struct orders o = { .n = 0 };

	o.v[o.n++] = order_of_program(a, m);
	for (size_t i = 0; i < m->nentries; i++)
		o.v[o.n++] = order_of_entry(a, m, &m->entries[i]);
	return o;
}

static void mark(bool set[BRUTE_MOST][NEEDS_MOST], struct pos pos)
{
	if (pos.file < BRUTE_MOST && pos.line >= FAKE_NEED_LINE &&
	    pos.line < FAKE_TEACH_LINE)
		set[pos.file][pos.line - FAKE_NEED_LINE] = true;
}

static void hear(struct said *s, const struct findings *f)
{
	memset(s, 0, sizeof *s);
	for (size_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];
		bool (*set)[NEEDS_MOST] = d->name == FINDING_UNTAUGHT_SKILL ? s->untaught
		    : d->name == FINDING_NEEDS_LOOP ? s->loop
		    : d->name == FINDING_OPTIONAL_TEACHER ||
		    d->name == FINDING_ONE_BRANCH_TEACHER ? s->lighter : NULL;

		if (set)
			mark(set, d->pos);
		for (size_t k = 0; k < d->nrelated; k++) {
			bool slip = d->name == FINDING_UNKNOWN_SKILL &&
			    str_starts(d->related[k].label, STR("would be met"));

			if (set || slip)
				mark(set ? set : s->slip, d->related[k].pos);
		}
	}
}

/* Whether any order leaves the need in this state. */
static bool any_state(const struct orders *o, uint32_t w, const struct need *n,
    enum brute_state state)
{
	for (size_t k = 0; k < o->n; k++)
		if (brute_need(o->v[k], w, n) == state)
			return true;
	return false;
}

static void compare_needs(const struct model *m, const struct orders *o,
    const struct said *s)
{
	for (uint32_t w = 0; w < m->nassignments; w++)
		for (size_t i = 0; i < m->assignments[w].nneeds; i++) {
			const struct need *n = &m->assignments[w].needs[i];

			assert_int_equal(s->untaught[w][i], any_state(o, w, n,
			    BRUTE_ERROR) &&
			    !s->loop[w][i]);
			assert_int_equal(s->lighter[w][i], any_state(o, w, n,
			    BRUTE_WARNING));
			assert_int_equal(s->slip[w][i], any_state(o, w, n, BRUTE_SLIP));
		}
}

static void test_needs_agree_with_brute(void **state)
{
	uint64_t x = 20261125;
	size_t bad = 0;

	(void)state;
	for (size_t i = 0; i < PROGRAMS; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct model *m = random_model(a, &x);
		struct findings *f = findings_new(a);
		struct orders o = orders_of(a, m);
		struct said s;

		check_program(a, m, f);
		hear(&s, f);
		compare_needs(m, &o, &s);
		bad += findings_count(f, LEVEL_ERROR) > 0;
		arena_free(a);
	}
	/* The generator must give both sound and faulty programs. */
	assert_true(bad > PROGRAMS / 10 && bad < PROGRAMS);
}

/* Every member list is one whole class of mutual reach, and no knot rests on one that
 * is told after it. */
static size_t compare_knots(const struct model *m, const struct knots *ks,
    const struct brute_knots *b)
{
	uint32_t part[BRUTE_MOST] = { 0 };

	for (size_t k = 0; k < ks->n; k++)
		for (size_t i = 0; i < ks->v[k].n; i++)
			part[ks->v[k].members[i]] = (uint32_t)k + 1;
	for (uint32_t w = 0; w < m->nassignments; w++) {
		assert_int_equal(ks->left[w], b->left[w]);
		assert_int_equal(part[w] != 0, b->reach[w][w]);
		for (uint32_t t = 0; t < m->nassignments; t++) {
			if (part[w] && part[t])
				assert_int_equal(part[w] == part[t], brute_same_knot(b, w,
				    t));
			if (part[w] && part[w] < part[t])
				assert_false(b->reach[w][t]);
		}
	}
	return ks->n;
}

/* Each loop told starts at the smallest id of its knot and is as short as can be. */
static void compare_loops(const struct model *m, const struct findings *f,
    const struct brute_knots *b)
{
	for (size_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];
		uint32_t start = d->pos.file;

		if (d->name != FINDING_NEEDS_LOOP)
			continue;
		for (uint32_t w = 0; w < start; w++)
			assert_false(brute_same_knot(b, w, start));
		assert_int_equal(d->nrelated, b->far[start][start]);
		for (size_t k = 0; k < d->nrelated; k++) {
			uint32_t from = d->related[k].pos.file;
			uint32_t to = d->related[(k + 1) % d->nrelated].pos.file;

			assert_int_equal(b->far[from][to], 1);
			assert_true(str_eq(d->related[k].assignment,
			    m->assignments[from].id));
		}
	}
}

static void test_knots_agree_with_brute(void **state)
{
	uint64_t x = 777;
	size_t knots = 0;

	(void)state;
	for (size_t i = 0; i < PROGRAMS; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct model *m = random_model(a, &x);
		struct findings *f = findings_new(a), *loops = findings_new(a);
		const struct order *o = order_of_program(a, m);
		struct words *w = words_check(a, o, f);
		struct graph *g = graph_new(a, m, w);
		struct knots *ks = knots_find(a, view_new(a, g, o), g);
		struct brute_knots b;

		brute_knots(o, &b);
		knots += compare_knots(m, ks, &b);
		knots_report(a, ks, loops);
		assert_int_equal(loops->n, ks->n);
		compare_loops(m, loops, &b);
		arena_free(a);
	}
	assert_true(knots > 1000);
}

static void test_same_input_same_findings(void **state)
{
	uint64_t x = 5, y = 5;

	(void)state;
	for (size_t i = 0; i < 500; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct findings *f = findings_new(a), *g = findings_new(a);

		check_program(a, random_model(a, &x), f);
		check_program(a, random_model(a, &y), g);
		assert_int_equal(f->n, g->n);
		for (size_t k = 0; k < f->n; k++) {
			assert_true(str_eq(f->v[k].message, g->v[k].message));
			assert_true(str_eq(f->v[k].cause, g->v[k].cause));
			assert_true(str_eq(f->v[k].repair, g->v[k].repair));
		}
		arena_free(a);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_needs_agree_with_brute),
		cmocka_unit_test(test_knots_agree_with_brute),
		cmocka_unit_test(test_same_input_same_findings),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
