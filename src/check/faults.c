#include "check/faults.h"

#include "check/cause.h"
#include "check/waive.h"

/* A need may be a warning in one order and an error in another: each kind of fault
 * is kept apart. */
enum { KIND_SLIP, KIND_LIGHT, KIND_FIRM, KINDS };

static unsigned kind_of(enum nature n)
{
	if (n == NATURE_MISSPELT)
		return KIND_SLIP;
	return nature_is_error(n) ? KIND_FIRM : KIND_LIGHT;
}

/* The set that holds the orders of `set` and `view`, made once. */
static uint32_t set_grow(struct arena *a, struct verdict *d, uint32_t set, uint32_t view)
{
	if (d->sets[set].grown_by != view) {
		struct path_set *fresh = ARENA_PUSH(a, d->sets, d->nsets, d->sets_cap);

		*fresh = (struct path_set){ set, view, 0, NONE };
		d->sets[set].grown = (uint32_t)(d->nsets - 1);
		d->sets[set].grown_by = view;
	}
	return d->sets[set].grown;
}

/* Joins the faults from index `from` on, all of view k, with those of the orders
 * before it. known: by need and kind, the fault's index + 1. */
static void join_view(struct arena *a, struct verdict *d, size_t from, uint32_t k,
    uint32_t *known)
{
	size_t kept = from;

	for (size_t i = from; i < d->faults.n; i++) {
		struct fault f = d->faults.v[i];
		uint32_t *at;

		fault_judge(d->views[k], &f);
		f.view = k;
		at = known ? &known[f.need * KINDS + kind_of(f.nature)] : NULL;
		if (at && *at) {
			uint32_t *paths = &d->faults.v[*at - 1].paths;

			*paths = set_grow(a, d, *paths, k);
			continue;
		}
		f.paths = set_grow(a, d, 0, k);
		d->faults.v[kept++] = f;
		if (at)
			*at = (uint32_t)kept;
	}
	d->faults.n = kept;
}

/* The order of program.md comes first, so that a fault which stands in it speaks of it
 * even when paths show the same fault. */
struct verdict *verdict_new(struct arena *a, struct view **views, size_t nviews)
{
	struct verdict *d = arena_alloc(a, sizeof *d);
	const struct graph *g = views[0]->graph;
	uint32_t *known = NULL;

	d->views = views;
	d->nviews = nviews;
	d->faults.arena = a;
	*ARENA_PUSH(a, d->sets, d->nsets, d->sets_cap) =
	    (struct path_set){ NONE, NONE, 0, NONE };
	if (nviews > 1)
		known = arena_array(a, (size_t)g->nneeds * KINDS, sizeof *known);
	for (size_t k = 0; k < nviews; k++) {
		size_t from = d->faults.n;

		walk_order(views[k], &d->faults);
		if (d->faults.n > from)
			view_detail(a, views[k]);
		join_view(a, d, from, (uint32_t)k, known);
	}
	return d;
}

enum finding_name nature_finding(enum nature n)
{
	return n == NATURE_OPTIONAL ? FINDING_OPTIONAL_TEACHER
	    : n == NATURE_BRANCH ? FINDING_ONE_BRANCH_TEACHER : FINDING_UNTAUGHT_SKILL;
}

/* The waiver that covers a fault, NONE when none does. */
static uint32_t waiver_of(const struct waivers *ws, const struct graph *g,
    const struct fault *f)
{
	const struct model *m = g->model;

	if (!ws)
		return NONE;
	return waivers_find(ws, nature_finding(f->nature),
	    graph_need(g, f->assignment, f->need)->pos, m->assignments[f->assignment].id,
	    m->skills[cell_skill(g->alts[f->alt])].id);
}

/* What must agree for faults to be one finding. One without a cause of its own goes by
 * skill and teacher. */
struct merge_key {
	uint32_t kind, who, skill, nature, paths, waiver;
};

static struct merge_key key_of(const struct verdict *d, const struct waivers *ws,
    const struct fault *f, const struct cause *c)
{
	const struct graph *g = d->views[0]->graph;
	struct merge_key k = { (uint32_t)c->kind, f->teacher, NONE, (uint32_t)f->nature,
		f->paths, waiver_of(ws, g, f) };

	if (c->kind == CAUSE_NEED || c->kind == CAUSE_LOST)
		k.skill = cell_skill(g->alts[f->alt]);
	else
		k.who = c->who;
	if (c->kind == CAUSE_TEACHER && f->nature == NATURE_LATER)
		k.who = d->views[0]->units->of[c->who];
	if (c->kind == CAUSE_UNLISTED)
		k.nature = k.paths = 0;
	return k;
}

/* Faults arrive in walk order, so the first of each finding is the first need in
 * order. */
void verdict_merge(struct arena *a, struct verdict *d, const bool *told,
    const struct cause *causes)
{
	struct map *known = map_new(a, false);
	struct merge_key *keys = arena_array(a, d->faults.n, sizeof *keys);
	const struct waivers *ws = waivers_new(a, d->views[0]->graph->model);

	d->causes = causes;
	d->waivers = ws;
	d->next = arena_array(a, d->faults.n, sizeof *d->next);
	d->in = arena_array(a, d->faults.n, sizeof *d->in);
	for (size_t i = 0; i < d->faults.n; i++) {
		const struct fault *f = &d->faults.v[i];
		uint32_t at, fault = (uint32_t)i;

		d->next[i] = d->in[i] = NONE;
		if (f->nature == NATURE_MISSPELT ||
		    (told && told[f->need] && nature_is_error(f->nature)))
			continue;
		keys[i] = key_of(d, ws, f, &causes[i]);
		at = map_add(known, (str){ (const char *)&keys[i], sizeof keys[i] },
		    (uint32_t)d->nmerged);
		d->in[i] = at;
		if (at == d->nmerged) {
			*ARENA_PUSH(a, d->merged, d->nmerged, d->merged_cap) =
			    (struct merged){ fault, fault, 1, keys[i].waiver };
			continue;
		}
		d->next[d->merged[at].last] = fault;
		d->merged[at].last = fault;
		d->merged[at].n++;
	}
}

void verdict_mark_skills(const struct verdict *d, bool *never, bool *low)
{
	const struct graph *g = d->views[0]->graph;

	for (size_t i = 0; i < d->nmerged; i++) {
		uint32_t k = d->merged[i].waiver == NONE ? d->merged[i].first : NONE;

		for (; k != NONE; k = d->next[k]) {
			const struct fault *f = &d->faults.v[k];
			uint32_t cell = g->alts[f->alt];

			never[cell_skill(cell)] |= f->nature == NATURE_NEVER;
			low[cell_skill(cell)] |= f->nature == NATURE_TOO_LOW &&
			    cell_level(cell) == SKILL_ASSESSED;
		}
	}
}
