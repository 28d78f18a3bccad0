/* What sheets give and ask, read once for all orders. */
#include "check/rule_trade.h"

#include <assert.h>

struct trade_reads {
	struct arena *arena;
	const struct trade_read *first;
};

struct trade_reads *trade_reads_new(struct arena *a)
{
	struct trade_reads *r = arena_alloc(a, sizeof *r);

	r->arena = a;
	return r;
}

static struct trade_keys read_keys(struct arena *a, const struct trade *t,
    uint32_t (*keys)(const struct trade *t, uint32_t assignment, uint32_t *v))
{
	size_t nkeys = 0, cap = 0, n = t->x.m->nassignments;
	struct trade_keys k = { arena_array(a, n + 1, sizeof *k.at), NULL };
	uint32_t v[RULE_KEYS_MOST];

	for (uint32_t w = 0; w < n; w++) {
		uint32_t count = keys ? keys(t, w, v) : 0;

		assert(count <= RULE_KEYS_MOST);
		for (uint32_t i = 0; i < count; i++)
			*ARENA_PUSH(a, k.v, nkeys, cap) = v[i];
		k.at[w + 1] = (uint32_t)nkeys;
	}
	return k;
}

static const struct trade_read *find_read(const struct trade_reads *all,
    const struct trade_rule *rule)
{
	const struct trade_read *r = all->first;

	while (r && r->rule != rule)
		r = r->next;
	return r;
}

void trade_read_sheets(struct trade *t)
{
	struct trade_reads *all = t->x.reads;
	const struct trade_rule *rule = t->rule;
	const struct trade_read *read = rule->varies ? NULL : find_read(all, rule);
	struct trade_read *fresh;

	if (!read) {
		if (rule->prepare) {
			t->marks = arena_array(all->arena, t->x.m->nassignments,
			    sizeof *t->marks);
			rule->prepare(t);
		}
		read = fresh = arena_alloc(all->arena, sizeof *fresh);
		*fresh = (struct trade_read){ rule, t->marks, read_keys(all->arena, t,
		    rule->gives), read_keys(all->arena, t, rule->asks), all->first };
		if (!rule->varies)
			all->first = fresh;
	}
	t->marks = read->marks;
	t->gives = read->gives;
	t->asks = read->asks;
}
