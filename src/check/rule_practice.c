/* R6: a practice test before each qualification test, weld by weld; C20: with a week
 * between, and tests away from the edges of a quarter.
 *
 * Tests that ask for the same coupon share a key; a practice test gives the keys of all
 * coupons that it covers, found through process, joint and position. */
#include "check/rule_practice.h"

#include "check/waive.h"

struct practice {
	struct trade t;          /* first, for gives */
	struct coupon *v;        /* by key */
	uint32_t *next;          /* by key: the next of the same process and so on */
	size_t n, cap, next_n, next_cap;
	struct map *by_coupon;   /* all fields as text -> key */
	struct map *by_place;    /* process, joint, position as text -> first key */
	uint32_t searched;       /* findings for which a nearest test was looked for */
};

static str place_text(struct arena *a, const struct coupon *c)
{
	return str_format(a, "%u %u %u", (unsigned)c->process, (unsigned)c->joint,
	    (unsigned)c->position);
}

static uint32_t coupon_key(struct practice *p, const struct coupon *c)
{
	struct arena *a = p->t.x.scratch;
	str place = place_text(a, c);
	str all = str_format(a, "%.*s %u %u %u %u %u %u", STR_ARG(place),
	    (unsigned)c->progression, (unsigned)c->root, c->thickness, c->size,
	    (unsigned)c->metal, c->tests);
	uint32_t fresh = (uint32_t)p->n, key = map_add(p->by_coupon, all, fresh), first;

	if (key != fresh)
		return key;
	*ARENA_PUSH(a, p->v, p->n, p->cap) = *c;
	*ARENA_PUSH(a, p->next, p->next_n, p->next_cap) = NONE;
	first = map_add(p->by_place, place, fresh);
	if (first != fresh) {
		p->next[fresh] = p->next[first];
		p->next[first] = fresh;
	}
	return key;
}

uint32_t practice_add_key(uint32_t *v, uint32_t n, uint32_t key)
{
	for (uint32_t i = 0; i < n; i++)
		if (v[i] == key)
			return n;
	if (n < RULE_KEYS_MOST)
		v[n++] = key;
	return n;
}

/* The coupons that a practice test covers. Differences within one process, joint and
 * position are few; the bound keeps a hostile program linear. */
enum { NEIGHBORS_MOST = 256 };

/* One whose position nobody knows may be that of any test. */
static uint32_t gives_anywhere(const struct practice *p, const struct coupon *c,
    uint32_t *v, uint32_t n)
{
	for (uint32_t key = 0; key < p->n && key < NEIGHBORS_MOST; key++)
		if (!coupon_differs(c, &p->v[key]))
			n = practice_add_key(v, n, key);
	return n;
}

static uint32_t gives_practice(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct practice *p = (const struct practice *)t;
	const struct assignment *a = &t->x.m->assignments[assignment];
	uint32_t n = 0;

	for (size_t i = 0; a->kind == KIND_PRACTICE_TEST && i < a->nwelds; i++) {
		struct coupon c = coupon_of(a, &a->welds[i]);
		uint32_t key = map_find(p->by_place, place_text(t->x.scratch, &c));

		if (c.position == POSITION_COUNT)
			n = gives_anywhere(p, &c, v, n);
		for (uint32_t k = 0; key != NONE && k < NEIGHBORS_MOST; k++) {
			if (!coupon_differs(&c, &p->v[key]))
				n = practice_add_key(v, n, key);
			key = p->next[key];
		}
	}
	return n;
}

/* The practice test before asker that differs least, the latest of equals. */
struct nearest {
	uint32_t who, fields;    /* NONE: there is none */
	struct coupon coupon;
};

/* Practice tests looked at, the latest first, and findings that they are looked at for. */
enum { NEAREST_MOST = 200 };

/* How far apart two coupons are: another process, joint or position is other work, the
 * rest is the same work done otherwise. Common practice, no source. */
static uint32_t distance_of(uint32_t fields)
{
	static const uint32_t steps[FIELD_COUNT] = { [FIELD_PROCESS] = 4, [FIELD_JOINT] = 4,
		[FIELD_ROOT] = 1, [FIELD_POSITION] = 3, [FIELD_PROGRESSION] = 1,
		[FIELD_THICKNESS] = 1, [FIELD_SIZE] = 1, [FIELD_METAL] = 2,
		[FIELD_TESTS] = 1 };
	uint32_t n = 0;

	for (uint32_t k = 0; k < FIELD_COUNT; k++)
		n += work_has(fields, k) ? steps[k] : 0;
	return n;
}

/* Practice tests before asker in the list of them, which is in order. */
static uint32_t tests_before(const struct practice *p, uint32_t asker)
{
	const struct work_list *l = &p->t.x.lists.kind[KIND_PRACTICE_TEST];
	uint32_t lo = 0, hi = l->n;

	while (lo < hi) {
		uint32_t mid = lo + (hi - lo) / 2;

		if (rule_earlier(&p->t.x, l->v[mid], asker))
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo;
}

static struct nearest find_nearest(const struct practice *p, uint32_t asker,
    const struct coupon *test)
{
	const struct work_list *l = &p->t.x.lists.kind[KIND_PRACTICE_TEST];
	struct nearest best = { NONE, UINT32_MAX, { 0 } };
	uint32_t end = tests_before(p, asker);

	for (uint32_t i = end; i-- > 0 && end - i <= NEAREST_MOST;) {
		const struct assignment *a = &p->t.x.m->assignments[l->v[i]];

		for (size_t w = 0; w < a->nwelds; w++) {
			struct coupon c = coupon_of(a, &a->welds[w]);
			uint32_t fields = coupon_differs(&c, test);

			if (best.who == NONE || distance_of(fields) <
			    distance_of(best.fields))
				best = (struct nearest){ l->v[i], fields, c };
		}
	}
	return best;
}

static void explain_never(struct practice *p, struct finding *d, uint32_t asker,
    const struct coupon *test)
{
	struct findings *f = p->t.x.f;
	struct nearest near = { .who = NONE };
	str id = p->t.x.m->assignments[asker].id, other;

	if (p->searched++ < NEAREST_MOST)
		near = find_nearest(p, asker, test);
	if (near.who == NONE) {
		finding_cause(f, d, "no practice test for it comes before it");
		finding_repair(f, d, "put a practice test with the same joint, position, "
		    "thickness and tests before %.*s", STR_ARG(id));
		return;
	}
	other = p->t.x.m->assignments[near.who].id;
	finding_cause(f, d, "the nearest practice test, %.*s, differs in %.*s",
	    STR_ARG(other), STR_ARG(coupon_say_differences(f->arena, &near.coupon, test,
	    near.fields)));
	finding_repair(f, d, "make both the same, or add a practice test before %.*s",
	    STR_ARG(id));
}

static void explain(struct practice *p, struct finding *d, uint32_t asker,
    uint32_t key, enum met met)
{
	const struct assignment *all = p->t.x.m->assignments;
	uint32_t who = rule_named(p->t.firsts[key], met);

	if (met == MET_NEVER) {
		explain_never(p, d, asker, &p->v[key]);
		return;
	}
	finding_cause(p->t.x.f, d, "%.*s practices it in %.*s%s", STR_ARG(all[who].id),
	    STR_ARG(rule_place(&p->t.x, who)), met == MET_OPTIONAL ? ", which is optional"
	    : met == MET_BRANCH ? ", one branch of a choice" : "");
	if (met == MET_LATER) {
		d->repair = rule_move_before(&p->t.x, d, who, asker, MOVABLE_EITHER);
		return;
	}
	finding_repair(p->t.x.f, d, "let everyone do %.*s before %.*s",
	    STR_ARG(all[who].id), STR_ARG(all[asker].id));
	d->level = LEVEL_WARNING;
}

static enum met how_practiced(const struct practice *p, uint32_t asker, uint32_t key)
{
	if (p->t.brought && p->t.brought[key])
		return MET;
	return rule_met(&p->t.x, p->t.firsts[key], asker);
}

/* One finding a test: its first weld that lacks practice, the others beside it. */
static bool judge_test(struct practice *p, uint32_t asker)
{
	const struct assignment *a = &p->t.x.m->assignments[asker];
	struct finding *d = NULL;

	for (size_t i = 0; i < a->nwelds; i++) {
		struct coupon c = coupon_of(a, &a->welds[i]);
		uint32_t key = coupon_key(p, &c);
		enum met met = how_practiced(p, asker, key);
		str weld = weld_say(&p->t.x, &a->welds[i]);

		if (met == MET || c.position == POSITION_COUNT ||
		    trade_need_tells(&p->t, asker, key, trade_gives))
			continue;
		if (d) {
			finding_relate(p->t.x.f, d, a->welds[i].pos)->label =
			    str_format(p->t.x.f->arena, "the same for %.*s",
			    STR_ARG(weld));
			continue;
		}
		d = rule_report(&p->t.x, FINDING_NO_PRACTICE_TEST, a->welds[i].pos, asker,
		    "%.*s (%.*s) tests %.*s without a practice test like it before",
		    STR_ARG(a->id), STR_ARG(rule_place(&p->t.x, asker)), STR_ARG(weld));
		explain(p, d, asker, key, met);
	}
	return d != NULL;
}

/* C20 */

static void judge_week(struct rule_context *x, uint32_t asker)
{
	const struct assignment *a = &x->m->assignments[asker];
	uint32_t week = x->o->places[asker].week, to;
	struct finding *d;

	if (x->m->weeks < 3 || (week != 1 && week != x->m->weeks))
		return;
	d = rule_report(x, FINDING_TEST_IN_EDGE_WEEK, a->pos, asker,
	    "%.*s (%.*s) is a qualification test in the %s week of the quarter",
	    STR_ARG(a->id), STR_ARG(rule_place(x, asker)), week == 1 ? "first" : "last");
	finding_cause(x->f, d, week == 1 ? "hands are out of practice after the break"
	    : "no week is left for a second try");
	to = x->m->weeks > 2 ? rule_move_week(x, d, asker, 2, x->m->weeks - 1) : 0;
	finding_repair(x->f, d, to ? "move %.*s to the end of week %u, or list \"%s\" under "
	    "Off in customs.md with the reason" : "move %.*s to a week between with what "
	    "it needs (week 2 to %u), or list \"%s\" under Off in customs.md with the "
	    "reason", STR_ARG(a->id), (unsigned)(to ? to : x->m->weeks - 1),
	    finding_info(FINDING_TEST_IN_EDGE_WEEK)->custom);
}

/* The test a week on, or the practice test a week earlier, or both apart in some way. */
static void repair_gap(struct rule_context *x, struct finding *d, uint32_t who,
    uint32_t asker)
{
	const struct assignment *all = x->m->assignments;
	uint32_t week = x->o->places[asker].week, moved = asker;
	uint32_t to = week < x->m->weeks ? rule_move_week(x, d, asker, week + 1,
	    x->m->weeks) : 0;

	if (!to && week > 1) {
		to = rule_move_week(x, d, who, 1, week - 1);
		moved = who;
	}
	if (to)
		finding_repair(x->f, d, "move %.*s to the end of week %u, or list \"%s\" "
		    "under Off in customs.md with the reason", STR_ARG(all[moved].id),
		    (unsigned)to, finding_info(FINDING_PRACTICE_TOO_CLOSE)->custom);
	else
		finding_repair(x->f, d, "put a week between %.*s and %.*s, or list \"%s\" "
		    "under Off in customs.md with the reason", STR_ARG(all[who].id),
		    STR_ARG(all[asker].id),
		    finding_info(FINDING_PRACTICE_TOO_CLOSE)->custom);
}

static void judge_gap(struct practice *p, uint32_t asker)
{
	const struct assignment *all = p->t.x.m->assignments;
	const struct place *at = p->t.x.o->places;

	for (size_t i = 0; i < all[asker].nwelds; i++) {
		struct coupon c = coupon_of(&all[asker], &all[asker].welds[i]);
		uint32_t who = p->t.firsts[coupon_key(p, &c)].sure;
		struct finding *d;

		if (!rule_earlier(&p->t.x, who, asker) ||
		    at[who].rank_quarter != at[asker].rank_quarter ||
		    at[who].week != at[asker].week)
			continue;
		d = rule_report(&p->t.x, FINDING_PRACTICE_TOO_CLOSE, all[asker].pos,
		    asker, "%.*s (%.*s) comes in the same week as its practice test, "
		    "%.*s", STR_ARG(all[asker].id), STR_ARG(rule_place(&p->t.x, asker)),
		    STR_ARG(all[who].id));
		finding_cause(p->t.x.f, d, "what practice shows cannot be mended in "
		    "time");
		repair_gap(&p->t.x, d, who, asker);
		return;
	}
}

static void collect(struct practice *p, const struct work_list *tests)
{
	p->by_coupon = map_new(p->t.x.scratch, false);
	p->by_place = map_new(p->t.x.scratch, false);
	for (uint32_t i = 0; i < tests->n; i++) {
		const struct assignment *a = &p->t.x.m->assignments[tests->v[i]];

		for (size_t w = 0; w < a->nwelds; w++) {
			struct coupon c = coupon_of(a, &a->welds[w]);

			coupon_key(p, &c);
		}
	}
}

void rule_practice(struct rule_context *x)
{
	const struct work_list *tests = &x->lists.kind[KIND_QUALIFICATION_TEST];
	struct practice p = { .t = { .x = *x } };
	struct trade_rule rule = { .name = FINDING_NO_PRACTICE_TEST,
		.gives = gives_practice, .varies = true };
	bool *told;

	if (!tests->n)
		return;
	collect(&p, tests);
	rule.nkeys = (uint32_t)p.n;
	told = arena_array(x->scratch, x->m->nassignments, sizeof *told);
	if (p.n && trade_begin(x, &rule, &p.t)) {
		/* Somebody accepts that a skill is taught elsewhere, not that a test comes
		 * without practice. */
		p.t.waivers = waivers_new(x->scratch, x->m);
		p.t.apart = true;
		for (uint32_t i = 0; i < tests->n; i++) {
			if (!trade_brings_own(&p.t, tests->v[i], SKILL_PRACTICED))
				told[tests->v[i]] = judge_test(&p, tests->v[i]);
			judge_gap(&p, tests->v[i]);
		}
	}
	for (uint32_t i = 0; i < tests->n; i++)
		judge_week(x, tests->v[i]);
	practice_easier(x, told);
}
