#include "check/check.h"

#include "check/faults.h"
#include "check/knot.h"
#include "check/rule_path.h"
#include "check/rules.h"
#include "check/skills.h"
#include "check/tell.h"

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

/* Needs and loops over all orders. Loops do not depend on the path by which students
 * come, so they are looked for once, in the order of program.md. */
static void check_order(struct arena *scratch, struct graph *g,
    const struct order *const *orders, size_t n, const struct words *w,
    struct findings *f)
{
	struct view **views = arena_array(scratch, n, sizeof *views);
	struct verdict *d;
	struct knots *ks = NULL;

	for (size_t i = 0; i < n; i++)
		views[i] = view_new(scratch, g, orders[i]);
	paths_widen(scratch, views, n, f);
	d = verdict_new(scratch, views, n);
	/* An order in which every need is met proves that its lines form no circle. */
	if (d->faults.n || orders[0]->nwalk < g->nassignments) {
		ks = knots_find(scratch, views[0], g);
		knots_report(scratch, ks, f);
	}
	verdict_merge(scratch, d, ks ? ks->on_loop : NULL);
	tell_verdict(scratch, d, ks, w, f);
	rules_run(scratch, orders[0]->model, views, n, f);
}

/* Unknown words are rare: the graph is laid a second time, with what they mean, only
 * when there are some. */
void check_orders(struct arena *scratch, const struct order *const *orders, size_t n,
    struct findings *f)
{
	const struct model *m = orders[0]->model;
	struct graph *g = graph_new(scratch, m, NULL);
	struct words *w = NULL;

	if (g->nunknown || brings_unknown(m)) {
		w = words_check(scratch, orders[0], f);
		g = graph_new(scratch, m, w);
	}
	check_order(scratch, g, orders, n, w, f);
	skills_check(scratch, g, f);
	evidence_check(scratch, m, f);
}

void check_program(struct arena *scratch, const struct model *m, struct findings *f)
{
	const struct order **orders = arena_array(scratch, m->nentries + 1,
	    sizeof *orders);
	size_t n = 0;

	orders[n++] = order_of_program(scratch, m);
	for (size_t i = 0; i < m->nentries; i++)
		if (!is_plain(m, &m->entries[i]))
			orders[n++] = order_of_entry(scratch, m, &m->entries[i]);
	check_orders(scratch, orders, n, f);
}
