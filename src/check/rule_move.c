/* Moves that a rule proposes: they break no need, or they are not proposed. */
#include "check/rules.h"

#include "check/tell.h"

/* Made when the first move is asked for, with a graph of its own: needs may be judged at
 * the same time, by others. */
struct rule_moves {
	struct arena *arena;
	const struct model *model;
	struct view **views;     /* of the rules */
	size_t nviews;
	struct repairs *repairs; /* null: not made yet */
	enum check_moves how;
	size_t asked;
};

struct rule_moves *rule_moves_new(struct arena *a, const struct model *m,
    struct view **views, size_t nviews, enum check_moves how)
{
	struct rule_moves *s = arena_alloc(a, sizeof *s);

	*s = (struct rule_moves){ .arena = a, .model = m, .views = views,
		.nviews = nviews, .how = how };
	return s;
}

static struct repairs *repairs_of(struct rule_moves *s)
{
	struct graph *g;
	struct view **views;

	if (s->repairs)
		return s->repairs;
	g = graph_new(s->arena, s->model, NULL);
	graph_index_needers(s->arena, g);
	views = arena_array(s->arena, s->nviews, sizeof *views);
	for (size_t i = 0; i < s->nviews; i++) {
		views[i] = view_new(s->arena, g, s->views[i]->order);
		/* What the check of entry paths lets students bring counts here too. */
		views[i]->brought = s->views[i]->brought;
		view_detail(s->arena, views[i]);
	}
	s->repairs = repairs_new(s->arena, verdict_new(s->arena, views, s->nviews), NULL);
	return s->repairs;
}

/* Repairs are worked out for the first findings only, as for needs. */
static bool may_ask(struct rule_context *x, const struct finding *d)
{
	return x->moves->how != MOVES_NONE && x->f->n && d == &x->f->v[x->f->n - 1] &&
	    x->moves->asked++ < TELL_MOST;
}

static uint32_t view_index(const struct rule_context *x)
{
	uint32_t i = 0;

	while (i + 1 < x->moves->nviews && x->moves->views[i] != x->view)
		i++;
	return i;
}

str rule_move_before(struct rule_context *x, const struct finding *d, uint32_t first,
    uint32_t second, enum movable which)
{
	const struct assignment *all = x->m->assignments;
	struct standing_wrong *w = NULL;
	bool asks = may_ask(x, d);
	str words = { 0 };

	if (asks) {
		w = repair_pair(repairs_of(x->moves), first, second, x->f->arena);
		x->f->v[x->f->n - 1].wrong = w;
	}
	if (!asks || x->moves->how == MOVES_PLACED)
		return str_format(x->f->arena, "move %.*s before %.*s",
		    STR_ARG(all[first].id), STR_ARG(all[second].id));
	if (w)
		words = repair_pair_words(repairs_of(x->moves), view_index(x), w, which,
		    x->f->arena);
	return words.n ? words : str_format(x->f->arena, "put %.*s before %.*s, with what it "
	    "needs; no single move does that", STR_ARG(all[first].id),
	    STR_ARG(all[second].id));
}

uint32_t rule_move_week(struct rule_context *x, const struct finding *d,
    uint32_t assignment, uint32_t lo, uint32_t hi)
{
	return may_ask(x, d) && x->moves->how == MOVES_TOLD
	    ? repair_week(repairs_of(x->moves), assignment, lo, hi) : 0;
}
