#include "check/check.h"

#include "check/cause.h"
#include "check/knot.h"
#include "check/rule_path.h"
#include "check/rules.h"
#include "check/skills.h"
#include "check/tell.h"
#include "check/translation.h"

/* Whether a path is that of program.md itself: all quarters in turn, nothing brought. */
static bool is_plain(const struct model *m, const struct entry *e)
{
	if (e->nwith || e->nquarters != m->nquarters)
		return false;
	for (size_t i = 0; i < e->nquarters; i++)
		if (e->quarters[i] != i + 1)
			return false;
	return true;
}

/* Whether skills.md lists every word that the entry skills use. */
static bool brings_unknown(const struct model *m)
{
	for (size_t i = 0; i < m->nentry_skills; i++)
		if (m->entry_skills[i].skill == NONE)
			return true;
	for (size_t i = 0; i < m->nentries; i++)
		for (size_t k = 0; k < m->entries[i].nwith; k++)
			if (m->entries[i].with[k].skill == NONE)
				return true;
	return false;
}

struct check {
	const struct model *model;
	struct graph *graph;
	const struct words *words; /* null: every word is known */
	struct view **views;
	size_t n;
};

/* Unknown words are rare: the graph is laid a second time, with what they mean, only
 * when there are some. */
struct check *check_begin(struct arena *scratch, const struct order *const *orders, size_t n,
    struct findings *f)
{
	struct check *c = arena_alloc(scratch, sizeof *c);

	c->model = orders[0]->model;
	c->graph = graph_new(scratch, c->model, NULL);
	if (c->graph->nunknown || brings_unknown(c->model)) {
		c->words = words_check(scratch, orders[0], f);
		c->graph = graph_new(scratch, c->model, c->words);
	}
	c->n = n;
	c->views = arena_array(scratch, n, sizeof *c->views);
	for (size_t i = 0; i < n; i++)
		c->views[i] = view_new(scratch, c->graph, orders[i]);
	paths_widen(scratch, c->views, n, f);
	/* Both halves of the check read it, so neither may make it. */
	for (size_t i = 0; i < n; i++)
		view_detail(scratch, c->views[i]);
	return c;
}

/* Loops do not depend on the path by which students come, so they are looked for once,
 * in the order of program.md. */
void check_needs(struct arena *scratch, struct check *c, struct findings *f)
{
	struct graph *g = c->graph;
	struct verdict *d = verdict_new(scratch, c->views, c->n);
	struct knots *ks = NULL;
	struct repairs *r = NULL;

	/* An order in which every need is met proves that its lines form no circle. */
	if (d->faults.n || c->views[0]->order->nwalk < g->nassignments) {
		ks = knots_find(scratch, c->views[0], g);
		knots_report(scratch, ks, f);
	}
	if (d->faults.n) {
		r = repairs_new(scratch, d, ks);
		verdict_merge(scratch, d, ks->on_loop, causes_find(scratch, d, r,
		    ks->on_loop));
	}
	tell_verdict(scratch, d, r, c->words, f);
	skills_check(scratch, d, f);
}

void check_rules(struct arena *scratch, const struct check *c, enum check_moves how,
    struct findings *f)
{
	rules_run(scratch, c->model, c->views, c->n, how, f);
}

void check_sheets(struct arena *scratch, const struct check *c, uint32_t from, uint32_t to,
    struct findings *f)
{
	rules_run_sheets(scratch, c->model, from, to, f);
	evidence_check(scratch, c->model, from, to, f);
}

static void check_all(struct arena *scratch, struct check *c, struct findings *f)
{
	check_needs(scratch, c, f);
	check_rules(scratch, c, MOVES_TOLD, f);
	check_sheets(scratch, c, 0, (uint32_t)c->model->nassignments, f);
	translations_check(scratch, c->model, f);
}

void check_orders(struct arena *scratch, const struct order *const *orders, size_t n,
    struct findings *f)
{
	check_all(scratch, check_begin(scratch, orders, n, f), f);
}

/* The order of program.md, then those of its entry paths. */
static const struct order **make_orders(struct arena *scratch, const struct model *m,
    size_t *n)
{
	const struct order **orders = arena_array(scratch, m->nentries + 1,
	    sizeof *orders);

	*n = 0;
	orders[(*n)++] = order_of_program(scratch, m);
	for (size_t i = 0; i < m->nentries; i++)
		if (!is_plain(m, &m->entries[i]))
			orders[(*n)++] = order_of_entry(scratch, m, &m->entries[i]);
	return orders;
}

struct check *check_begin_program(struct arena *scratch, const struct model *m,
    struct findings *f)
{
	size_t n;
	const struct order **orders = make_orders(scratch, m, &n);

	return check_begin(scratch, orders, n, f);
}

void check_program(struct arena *scratch, const struct model *m, struct findings *f)
{
	check_all(scratch, check_begin_program(scratch, m, f), f);
}
