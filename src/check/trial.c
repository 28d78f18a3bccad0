#include "check/trial.h"

#include "base/buf.h"
#include "check/rules.h"
#include "check/waive.h"

/* Assignments walked in all trials together: some hundred moves in a real program, none
 * in one of tens of thousands. */
enum { WALKED_MOST = 20000 };

struct trial {
	struct arena *arena;
	struct view **views;
	size_t nviews;
	const struct rule_base *base; /* null: not made yet */
	struct map *known;       /* what the order rules find without a move */
	struct waivers *waivers;
	uint64_t walked;
};

struct trial *trial_new(struct arena *a, struct view **views, size_t nviews)
{
	struct trial *t = arena_alloc(a, sizeof *t);

	*t = (struct trial){ .arena = a, .views = views, .nviews = nviews };
	return t;
}

static str key_of(struct trial *t, enum finding_name name, str assignment)
{
	return str_format(t->arena, "%u %.*s", (unsigned)name, STR_ARG(assignment));
}

static void note_all(struct trial *t, const struct findings *f)
{
	t->known = map_new(t->arena, false);
	for (size_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];

		map_add(t->known, key_of(t, d->name, d->assignment), 0);
		for (size_t k = 0; k < d->nrelated; k++)
			map_add(t->known, key_of(t, d->name, d->related[k].assignment), 0);
	}
}

static bool may_try(struct trial *t)
{
	const struct order *o = t->views[0]->order;

	t->walked += o->nwalk * t->nviews;
	if (t->walked > WALKED_MOST)
		return false;
	if (!t->base) {
		struct findings *f = findings_new(t->arena);

		t->base = rule_base_new(t->arena, o->model);
		t->waivers = waivers_new(t->arena, o->model);
		rules_run_order(t->arena, t->base, t->views, t->nviews, f);
		note_all(t, f);
	}
	return true;
}

/* What a waiver accepts already is nothing new. */
static bool is_new(struct trial *t, const struct finding *d)
{
	return map_find(t->known, key_of(t, d->name, d->assignment)) == MAP_NONE &&
	    waivers_find(t->waivers, d->name, d->pos, d->assignment, d->skill) == NONE;
}

const char *trial_brings(struct trial *t, uint32_t assignment, uint32_t quarter,
    uint32_t week)
{
	struct view **moved;
	struct findings *f;

	if (!may_try(t))
		return NULL;
	moved = arena_array(t->arena, t->nviews, sizeof *moved);
	f = findings_new(t->arena);
	for (size_t i = 0; i < t->nviews; i++) {
		moved[i] = view_new(t->arena, t->views[i]->graph, order_moved(t->arena,
		    t->views[i]->order, assignment, quarter, week));
		moved[i]->brought = t->views[i]->brought;
		view_detail(t->arena, moved[i]);
	}
	rules_run_order(t->arena, t->base, moved, t->nviews, f);
	for (size_t i = 0; i < f->n; i++)
		if (is_new(t, &f->v[i]))
			return finding_info(f->v[i].name)->name;
	return NULL;
}
