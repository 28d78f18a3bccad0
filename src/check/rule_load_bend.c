/* Bend specimens that fall due in one week against what the bender takes. */
#include "check/rule_time.h"

#include "base/buf.h"
#include "model/words.h"

/* The machine whose limits give "Specimens a week", and that number. */
static const struct machine *find_bender(const struct model *m, uint32_t *most)
{
	for (size_t i = 0; i < m->nmachines; i++) {
		const struct machine *v = &m->machines[i];

		for (size_t k = 0; k < v->nlimits; k++)
			if (words_same(v->limits[k].key, STR("Specimens a week")) &&
			    str_to_u32(str_trim(v->limits[k].text), most))
				return v;
	}
	return NULL;
}

/* What each week of one term brings: all sections share the one machine. A coupon is due
 * in the last week of its work. */
struct due {
	uint64_t *n;             /* by week from 1 */
	uint32_t *most_of, *who; /* by week: the largest part, and its assignment */
};

static void add_due(struct due *d, const struct stints *s, const struct sitting *t)
{
	uint32_t students = s->m->cohorts[t->cohort].students;

	for (uint32_t i = s->at[t->quarter]; i < s->at[t->quarter + 1]; i++) {
		const struct stint *p = &s->v[i];
		uint32_t n = p->bends * ((students + p->team - 1) / p->team);

		if (p->optional || !p->longest_of_all || !n)
			continue;
		d->n[p->last] += n;
		if (n > d->most_of[p->last]) {
			d->most_of[p->last] = n;
			d->who[p->last] = p->assignment;
		}
	}
}

/* What the weeks of all terms have told so far. */
struct bender {
	const struct machine *m;
	uint32_t most;           /* specimens that it takes in a week */
	size_t finding;          /* index and one; 0: no week is too full */
};

/* One machine is one finding: its first week, the others beside it. */
static void judge_week(struct rule_context *x, const struct load *l, uint32_t term,
    const struct due *d, uint32_t w, struct bender *b)
{
	const struct assignment *a = &x->m->assignments[d->who[w]];
	struct finding *f;

	if (b->finding) {
		finding_relate(x->f, &x->f->v[b->finding - 1], a->pos)->label = str_format(
		    x->f->arena, "%u in week %u of %.*s, most of them of %.*s",
		    (unsigned)d->n[w], (unsigned)w, STR_ARG(l->terms[term]),
		    STR_ARG(a->id));
		return;
	}
	f = rule_report(x, FINDING_BENDER_OVER, b->m->pos, NONE,
	    "%u bend specimens fall due in week %u of %.*s, and %.*s takes %u a week",
	    (unsigned)d->n[w], (unsigned)w, STR_ARG(l->terms[term]), STR_ARG(b->m->name),
	    (unsigned)b->most);
	b->finding = x->f->n;
	keep_aside(f);
	finding_cause(x->f, f, "one attempt each, in the last week of the work; most of "
	    "them, %u, are of %.*s", (unsigned)d->most_of[w], STR_ARG(a->id));
	finding_repair(x->f, f, "bend over %u weeks, or let %.*s end in another week",
	    (unsigned)((d->n[w] + b->most - 1) / (b->most ? b->most : 1)),
	    STR_ARG(a->id));
}

void judge_bender(struct rule_context *x, const struct load *l)
{
	uint32_t weeks = x->m->weeks + 1;
	struct bender b = { 0 };

	b.m = find_bender(x->m, &b.most);
	for (size_t i = 0, end; b.m && i < l->nsittings &&
	    l->sittings[i].term < l->near; i = end) {
		struct due d = { arena_array(x->scratch, weeks, sizeof *d.n),
			arena_array(x->scratch, weeks, sizeof *d.most_of),
			arena_array(x->scratch, weeks, sizeof *d.who) };

		for (end = i; end < l->nsittings &&
		    l->sittings[end].term == l->sittings[i].term; end++)
			add_due(&d, l->stints, &l->sittings[end]);
		for (uint32_t w = 1; w <= x->m->weeks; w++)
			if (d.n[w] > b.most)
				judge_week(x, l, l->sittings[i].term, &d, w, &b);
	}
}
