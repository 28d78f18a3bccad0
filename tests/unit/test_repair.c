#include "check/check.h"

#include "brute.h"
#include "random_model.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

enum { PROGRAMS = 20000, ORDERS_MOST = 8 };

/* A move as the repair's words give it. */
struct said_move {
	uint32_t assignment, quarter, week, far_quarter, far_week;
};

struct orders {
	const struct order *v[ORDERS_MOST];
	size_t n;
};

/* Counts of what the random run met, so that it cannot pass by meeting nothing. */
struct tally {
	size_t moves, none, tied, least;
};

static struct orders orders_of(struct arena *a, const struct model *m)
{
	struct orders o = { .n = 0 };

	o.v[o.n++] = order_of_program(a, m);
	for (size_t i = 0; i < m->nentries; i++)
		o.v[o.n++] = order_of_entry(a, m, &m->entries[i]);
	return o;
}

static struct orders moved(struct arena *a, const struct orders *o, uint32_t w,
    uint32_t q,
    uint32_t week)
{
	struct orders r = { .n = o->n };

	for (size_t i = 0; i < o->n; i++)
		r.v[i] = order_moved(a, o->v[i], w, q, week);
	return r;
}

static bool take(str *s, const char *word)
{
	if (!str_starts(*s, str_of(word)))
		return false;
	*s = str_sub(*s, strlen(word), s->n);
	return true;
}

static uint32_t take_number(str *s)
{
	uint32_t v = 0;

	while (s->n && s->p[0] >= '0' && s->p[0] <= '9') {
		v = v * 10 + (uint32_t)(s->p[0] - '0');
		*s = str_sub(*s, 1, s->n);
	}
	return v;
}

static void take_spot(str *s, uint32_t *quarter, uint32_t *week)
{
	assert_true(take(s, "quarter "));
	*quarter = take_number(s);
	assert_true(take(s, ", week "));
	*week = take_number(s);
}

/* Reads the next "move SM-01 to ..." of a repair; false when there is none. */
static bool read_move(const struct model *m, str *s, struct said_move *r)
{
	size_t at = str_find(*s, STR("move "), 0);
	size_t id;

	if (at == s->n)
		return false;
	*s = str_sub(*s, at + 5, s->n);
	id = str_find_char(*s, ' ', 0);
	r->assignment = map_find(m->assignment_by_id, str_sub(*s, 0, id));
	assert_int_not_equal(r->assignment, MAP_NONE);
	*s = str_sub(*s, id, s->n);
	assert_true(take(s, " to "));
	take(s, "the end of ");
	take_spot(s, &r->quarter, &r->week);
	r->far_quarter = r->quarter;
	r->far_week = r->week;
	if (take(s, " or later")) {
		r->far_quarter = (uint32_t)m->nquarters;
		r->far_week = m->weeks;
	} else if (take(s, " or earlier")) {
		r->far_quarter = r->far_week = 1;
	} else if (take(s, " (or as far as ")) {
		take_spot(s, &r->far_quarter, &r->far_week);
	}
	return true;
}

static const struct need *need_at(const struct model *m, struct pos pos)
{
	return &m->assignments[pos.file].needs[pos.line - FAKE_NEED_LINE];
}

static bool met_everywhere(const struct orders *now, const struct orders *before,
    struct pos pos)
{
	const struct model *m = now->v[0]->model;

	for (size_t k = 0; k < now->n; k++) {
		if (brute_need(before->v[k], pos.file, need_at(m, pos)) != BRUTE_ERROR)
			continue;
		if (!brute_placed(now->v[k], pos.file) ||
		    brute_need(now->v[k], pos.file, need_at(m, pos)) != BRUTE_MET)
			return false;
	}
	return true;
}

/* Whether the finding's needs are all met in the orders that showed them. */
static bool is_cured(const struct orders *now, const struct orders *before,
    const struct finding *d)
{
	bool cured = met_everywhere(now, before, d->pos);

	for (size_t i = 0; i < d->nrelated; i++)
		cured &= met_everywhere(now, before, d->related[i].pos);
	return cured;
}

/* Whether no need became an error and no circle changed. */
static bool is_harmless(const struct orders *now, const struct orders *before)
{
	const struct model *m = now->v[0]->model;
	struct brute_knots was, is;

	for (size_t k = 0; k < now->n; k++)
		for (uint32_t w = 0; w < m->nassignments; w++)
			for (size_t i = 0; i < m->assignments[w].nneeds; i++) {
				const struct need *n = &m->assignments[w].needs[i];

				if (brute_need(now->v[k], w, n) == BRUTE_ERROR &&
				    brute_need(before->v[k], w, n) != BRUTE_ERROR)
					return false;
			}
	brute_knots(before->v[0], &was);
	brute_knots(now->v[0], &is);
	return !memcmp(&was, &is, sizeof was);
}

static uint32_t spot_of(const struct model *m, uint32_t quarter, uint32_t week)
{
	return (quarter - 1) * m->weeks + week - 1;
}

static uint32_t distance(const struct orders *o, uint32_t w, uint32_t spot)
{
	const struct place *p = &o->v[0]->places[w];
	uint32_t now = spot_of(o->v[0]->model, p->quarter, p->week);

	return spot > now ? spot - now : now - spot;
}

/* Every week that the words offer cures and harms nothing. */
static void assert_range(struct arena *a, const struct orders *o, const struct finding *d,
    const struct said_move *r)
{
	const struct model *m = o->v[0]->model;
	uint32_t from = spot_of(m, r->quarter, r->week);
	uint32_t to = spot_of(m, r->far_quarter, r->far_week);
	uint32_t low = from < to ? from : to, high = from < to ? to : from;

	for (uint32_t s = low; s <= high; s++) {
		struct orders now = moved(a, o, r->assignment, s / m->weeks + 1,
		    s % m->weeks + 1);

		assert_true(is_cured(&now, o, d));
		assert_true(is_harmless(&now, o));
	}
}

/* Whether a finding of error level of this name tells of a need at pos. */
static bool tells(const struct findings *f, enum finding_name name, struct pos pos)
{
	for (size_t i = 0; i < f->n; i++) {
		bool hit = !pos_cmp(f->v[i].pos, pos);

		for (size_t k = 0; k < f->v[i].nrelated; k++)
			hit |= !pos_cmp(f->v[i].related[k].pos, pos);
		if (hit && f->v[i].name == name)
			return true;
	}
	return false;
}

/* The check itself, run on the moved orders, no longer tells the finding's needs, and
 * no need that it did not tell before. */
static void assert_nothing_new(struct arena *a, const struct orders *o,
    const struct finding *d, const struct said_move *r)
{
	struct orders now = moved(a, o, r->assignment, r->quarter, r->week);
	struct findings *was = findings_new(a), *is = findings_new(a);

	check_orders(a, o->v, o->n, was);
	check_orders(a, now.v, now.n, is);
	assert_false(tells(is, FINDING_UNTAUGHT_SKILL, d->pos));
	for (size_t i = 0; i < is->n; i++) {
		const struct finding *e = &is->v[i];

		/* A misspelt word may come to explain a need that was untaught before. */
		if (e->level != LEVEL_ERROR || e->name == FINDING_UNKNOWN_SKILL)
			continue;
		assert_true(tells(was, e->name, e->pos));
		for (size_t k = 0; k < e->nrelated; k++)
			assert_true(tells(was, e->name, e->related[k].pos));
	}
}

/* No move of any assignment over fewer weeks cures and harms nothing, nor one of a
 * later assignment over as many. */
static void assert_least(struct arena *a, const struct orders *o, const struct finding *d,
    uint32_t best, uint32_t chosen)
{
	const struct model *m = o->v[0]->model;

	for (uint32_t w = 0; w < m->nassignments; w++)
		for (uint32_t s = 0; s < m->nquarters * m->weeks; s++) {
			struct orders now;
			uint32_t far;

			if (!brute_placed(o->v[0], w))
				continue;
			far = distance(o, w, s);
			if (far > best || (far == best && !brute_earlier(o->v[0], chosen,
			    w)))
				continue;
			now = moved(a, o, w, s / m->weeks + 1, s % m->weeks + 1);
			assert_false(is_cured(&now, o, d) && is_harmless(&now, o));
		}
}

static void try_finding(struct arena *a, const struct orders *o, const struct finding *d,
    bool thorough, struct tally *t)
{
	const struct model *m = o->v[0]->model;
	uint32_t best = UINT32_MAX, chosen = NONE, far;
	struct said_move r;
	str rest = d->repair;

	if (str_starts(rest, STR("no single move"))) {
		if (str_find(rest, STR("circle"), 0) < rest.n) {
			t->tied++;
			return;
		}
		t->none++;
	} else if (str_find(rest, STR("move "), 0) == rest.n) {
		return;
	}
	for (bool first = true; !str_starts(d->repair, STR("no single")) &&
	    read_move(m, &rest, &r); first = false) {
		far = distance(o, r.assignment, spot_of(m, r.quarter, r.week));
		assert_range(a, o, d, &r);
		assert_nothing_new(a, o, d, &r);
		assert_true(first || far >= best);
		best = first ? far : best;
		chosen = first ? r.assignment : chosen;
		t->moves++;
	}
	if (thorough) {
		assert_least(a, o, d, best, chosen);
		t->least++;
	}
}

static void test_repairs_hold(void **state)
{
	struct tally t = { 0 };
	uint64_t x = 31;

	(void)state;
	for (size_t i = 0; i < PROGRAMS; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct model *m = random_model(a, &x);
		struct orders o = orders_of(a, m);
		struct findings *f = findings_new(a);

		check_orders(a, o.v, o.n, f);
		for (size_t k = 0; k < f->n; k++)
			if (f->v[k].name == FINDING_UNTAUGHT_SKILL)
				try_finding(a, &o, &f->v[k], i % 2 == 0, &t);
		arena_free(a);
	}
	assert_true(t.moves > 5000);
	assert_true(t.none > 1000);
	assert_true(t.least > 1000);
	assert_true(t.tied < t.none);
}

/* A repair that would break a later need is not offered; the words say why. */
static void test_says_what_stands_in_the_way(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct fake *k = fake_new(a, 2, 11);
	struct findings *f = findings_new(a);

	(void)state;
	fake_skills(k, "a b c d");
	fake_work(k, "SM-01", "", "d3");
	fake_work(k, "SM-02", "a1", "b3");
	fake_work(k, "SM-03", "b1", "c3");
	fake_work(k, "SM-04", "d1", "a3");
	fake_at(k, 1, 1, "SM-02");
	fake_at(k, 1, 2, "SM-03");
	fake_at(k, 1, 3, "SM-01");
	fake_at(k, 1, 4, "SM-04");
	check_program(a, fake_done(k), f);
	assert_int_equal(f->v[0].name, FINDING_UNTAUGHT_SKILL);
	assert_string_equal(arena_copy(a, f->v[0].repair.p, f->v[0].repair.n),
	    "no single move repairs this; SM-02 must stay before SM-03 (quarter 1, week "
	    "2), which needs what it teaches; SM-04 must stay after SM-01 (quarter 1, "
	    "week 3), whose teaching it needs");
	arena_free(a);
}

/* Of two moves over as many weeks the later assignment's is told first. */
static void test_tie_goes_to_the_later_assignment(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct fake *k = fake_new(a, 1, 11);
	struct findings *f = findings_new(a);

	(void)state;
	fake_skills(k, "a b");
	fake_work(k, "SM-01", "", "a3");
	fake_work(k, "SM-02", "a1", "");
	fake_work(k, "SM-03", "", "b3");
	fake_at(k, 1, 3, "SM-02");
	fake_at(k, 1, 4, "SM-03");
	fake_at(k, 1, 4, "SM-01");
	check_program(a, fake_done(k), f);
	/* One week for SM-02 to the end of week 4; two for SM-01 to week 2. */
	assert_string_equal(arena_copy(a, f->v[0].repair.p, f->v[0].repair.n),
	    "move SM-02 to the end of quarter 1, week 4 or later; or move SM-01 to "
	    "quarter 1, week 2 or earlier");
	arena_free(a);
}

/* A teacher past the last week of a quarter: the next quarter is the nearest place. */
static void test_week_outside_the_quarter(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct fake *k = fake_new(a, 3, 11);
	struct findings *f = findings_new(a);

	(void)state;
	fake_skills(k, "a");
	fake_work(k, "SM-01", "", "a3");
	fake_work(k, "SM-02", "a1", "");
	fake_at(k, 1, 1, "SM-02");
	fake_at(k, 1, 14, "SM-01");
	check_program(a, fake_done(k), f);
	assert_string_equal(arena_copy(a, f->v[0].repair.p, f->v[0].repair.n),
	    "move SM-02 to quarter 2, week 1 or later");
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_repairs_hold),
		cmocka_unit_test(test_says_what_stands_in_the_way),
		cmocka_unit_test(test_tie_goes_to_the_later_assignment),
		cmocka_unit_test(test_week_outside_the_quarter),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
