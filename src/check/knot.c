#include "check/knot.h"

/* The state of the release. A cell needs to know its first released teacher, and
 * whether there is one of another unit: that one serves the first unit's needs. */
struct release {
	const struct graph *g;
	struct knots *ks;
	uint32_t *open;          /* by assignment: needs not met yet */
	uint32_t *by;            /* by cell: unit of the first released teacher */
	bool *twice;             /* by cell: another unit was released too */
	uint32_t *queue;
	size_t nqueue;
};

/* Placed assignments take their turn in the order, the others follow by id. Units of
 * the latter must not collide with those of the order. */
static void set_turns(struct arena *a, struct knots *ks)
{
	const struct view *v = ks->view;
	uint32_t n = v->graph->nassignments, turn = (uint32_t)v->order->nwalk;

	ks->turn = arena_array(a, n, sizeof *ks->turn);
	ks->unit = arena_array(a, n, sizeof *ks->unit);
	for (size_t i = 0; i < v->order->nwalk; i++)
		ks->turn[v->order->walk[i]] = (uint32_t)i;
	for (uint32_t i = 0; i < n; i++) {
		if (v->units->of[i] == NONE)
			ks->turn[i] = turn++;
		ks->unit[i] = v->units->of[i] == NONE ? ks->turn[i] : v->units->of[i];
	}
}

/* Teachers come in turn: keeps the first, and the first of another unit. */
static void note_first(struct knots *ks, uint32_t *two, uint32_t w)
{
	if (two[0] == NONE)
		two[0] = w;
	else if (two[1] == NONE && ks->unit[two[0]] != ks->unit[w])
		two[1] = w;
}

/* Misspelt teachings may release a need, but no loop is told through one. */
static void set_firsts(struct arena *a, struct knots *ks)
{
	const struct graph *g = ks->view->graph;
	uint32_t *by_turn = arena_array(a, g->nassignments, sizeof *by_turn);

	ks->first = arena_array(a, g->ncells, sizeof *ks->first);
	for (uint32_t c = 0; c < g->ncells; c++)
		ks->first[c][0] = ks->first[c][1] = NONE;
	for (uint32_t w = 0; w < g->nassignments; w++)
		by_turn[ks->turn[w]] = w;
	for (uint32_t i = 0; i < g->nassignments; i++) {
		uint32_t w = by_turn[i];

		for (uint32_t t = g->teach_at[w]; t < g->teach_at[w + 1]; t++) {
			if (g->teach[t] & CELL_MISSPELT)
				continue;
			for (uint32_t c = cell_base(g->teach[t]); c <= g->teach[t]; c++)
				note_first(ks, ks->first[c], w);
		}
	}
}

/* The first teacher of a cell, in turn, that does not stand in the unit. */
static uint32_t first_other(const struct knots *ks, uint32_t cell, uint32_t unit)
{
	const uint32_t *two = ks->first[cell];

	return two[0] != NONE && ks->unit[two[0]] == unit ? two[1] : two[0];
}

/* The first teacher of any alternative, and which one that is. */
static uint32_t first_of_all(const struct knots *ks, uint32_t w, uint32_t need,
    uint32_t *alt)
{
	const struct graph *g = ks->view->graph;
	uint32_t best = NONE;

	for (uint32_t i = g->alt_at[need]; i < g->alt_at[need + 1]; i++) {
		uint32_t t = g->alts[i] < g->ncells
		    ? first_other(ks, g->alts[i], ks->unit[w]) : NONE;

		if (t != NONE && (best == NONE || ks->turn[t] < ks->turn[best])) {
			best = t;
			*alt = i;
		}
	}
	return best;
}

uint32_t knots_alt(const struct knots *ks, uint32_t assignment, uint32_t need)
{
	uint32_t alt = ks->view->graph->alt_at[need];

	first_of_all(ks, assignment, need, &alt);
	return alt;
}

static void enqueue(struct release *r, uint32_t w)
{
	r->ks->left[w] = false;
	r->queue[r->nqueue++] = w;
}

/* Opens the needs that must wait for a teacher: judged, not brought, and taught by
 * someone else at all. */
static void open_needs(struct release *r)
{
	const struct graph *g = r->g;

	for (uint32_t w = 0; w < g->nassignments; w++) {
		for (uint32_t n = g->need_at[w]; n < g->need_at[w + 1]; n++) {
			uint32_t alt;

			r->ks->lead[n] = view_asks(r->ks->view, n)
			    ? first_of_all(r->ks, w, n, &alt) : NONE;
			r->open[w] += r->ks->lead[n] != NONE;
		}
		r->ks->left[w] = true;
		if (!r->open[w])
			enqueue(r, w);
	}
}

/* Meets the needs that ask for a cell: with only == NONE those of every unit but
 * `but`, otherwise those of the unit `only`. */
static void meet(struct release *r, uint32_t cell, uint32_t but, uint32_t only)
{
	const struct graph *g = r->g;

	for (uint32_t i = g->needer_at[cell]; i < g->needer_at[cell + 1]; i++) {
		uint32_t need = g->needers[i], w = g->owner[need], unit = r->ks->unit[w];

		if (r->ks->lead[need] == NONE || unit == but ||
		    (only != NONE && unit != only))
			continue;
		r->ks->lead[need] = NONE;
		if (!--r->open[w])
			enqueue(r, w);
	}
}

/* The first release serves every unit but its own; one of another unit serves that
 * one. After these two, further releases change nothing. */
static void release_cell(struct release *r, uint32_t cell, uint32_t unit)
{
	if (r->by[cell] == NONE) {
		r->by[cell] = unit;
		meet(r, cell, unit, NONE);
	} else if (!r->twice[cell] && r->by[cell] != unit) {
		r->twice[cell] = true;
		meet(r, cell, unit, r->by[cell]);
	}
}

/* The queue grows while it is read: each assignment enters it once, each need is met
 * once, each cell is walked twice at most. */
static void release_all(struct arena *a, struct knots *ks, const struct graph *g)
{
	struct release r = { .g = g, .ks = ks };

	r.open = arena_array(a, g->nassignments, sizeof *r.open);
	r.by = arena_array(a, g->ncells, sizeof *r.by);
	r.twice = arena_array(a, g->ncells, sizeof *r.twice);
	r.queue = arena_array(a, g->nassignments, sizeof *r.queue);
	for (uint32_t c = 0; c < g->ncells; c++)
		r.by[c] = NONE;
	open_needs(&r);
	for (size_t i = 0; i < r.nqueue; i++) {
		uint32_t w = r.queue[i];

		for (uint32_t t = g->teach_at[w]; t < g->teach_at[w + 1]; t++) {
			uint32_t top = g->teach[t] & ~CELL_MISSPELT;

			for (uint32_t c = cell_base(top); c <= top; c++)
				release_cell(&r, c, ks->unit[w]);
		}
	}
}

/* Of one assignment in the search. */
struct visit {
	uint32_t number;         /* when first met, from 1; 0 not yet */
	uint32_t low;            /* the earliest number it leads back to */
	uint32_t cursor;         /* the next need to follow */
	uint32_t depth;          /* of a closed part: knots on the way down, its own too */
	bool waiting;            /* its part is not closed yet */
};

/* Tarjan's search for strongly connected parts, on a stack of its own. */
struct search {
	struct knots *ks;
	struct arena *arena;
	struct visit *visits;    /* by assignment */
	uint32_t *path, *open;   /* the way here; met but not closed */
	size_t npath, nopen;
	uint32_t count;
};

static void step_into(struct search *s, uint32_t w)
{
	struct visit *v = &s->visits[w];

	v->number = v->low = ++s->count;
	v->cursor = s->ks->view->graph->need_at[w];
	v->waiting = true;
	s->path[s->npath++] = w;
	s->open[s->nopen++] = w;
}

/* How deep the parts lie that the members open[from..] of a part lead to. */
static uint32_t depth_below(const struct search *s, size_t from)
{
	const struct graph *g = s->ks->view->graph;
	uint32_t depth = 0;

	for (size_t i = from; i < s->nopen; i++)
		for (uint32_t n = g->need_at[s->open[i]]; n < g->need_at[s->open[i] + 1];
		    n++) {
			uint32_t to = s->ks->lead[n];

			/* A member of this part has no depth yet. */
			if (to != NONE && s->visits[to].depth > depth)
				depth = s->visits[to].depth;
		}
	return depth;
}

/* Closes the part whose first met member is w; one of two or more is a knot. */
static void close_part(struct search *s, uint32_t w)
{
	size_t from = s->nopen;
	uint32_t depth;

	do
		s->visits[s->open[--from]].waiting = false;
	while (s->open[from] != w);
	depth = depth_below(s, from) + (s->nopen - from > 1);
	for (size_t i = from; i < s->nopen; i++)
		s->visits[s->open[i]].depth = depth;
	if (s->nopen - from > 1) {
		struct knots *ks = s->ks;
		struct knot *k = ARENA_PUSH(s->arena, ks->v, ks->n, ks->cap);

		k->n = s->nopen - from;
		k->depth = depth;
		k->members = arena_array(s->arena, k->n, sizeof *k->members);
		for (size_t i = 0; i < k->n; i++)
			k->members[i] = s->open[from + i];
	}
	s->nopen = from;
}

static void lower(struct visit *v, uint32_t to)
{
	if (to < v->low)
		v->low = to;
}

/* Leaves an assignment whose needs are all followed; what it leads back to counts for
 * the one it was reached from. */
static void step_back(struct search *s)
{
	uint32_t w = s->path[--s->npath];

	if (s->visits[w].low == s->visits[w].number)
		close_part(s, w);
	if (s->npath)
		lower(&s->visits[s->path[s->npath - 1]], s->visits[w].low);
}

/* Parts close only after those they lead to: a knot comes before those that rest on
 * it. */
static void search_from(struct search *s, uint32_t root)
{
	const struct graph *g = s->ks->view->graph;

	step_into(s, root);
	while (s->npath) {
		uint32_t w = s->path[s->npath - 1], to;
		struct visit *v = &s->visits[w];

		if (v->cursor == g->need_at[w + 1]) {
			step_back(s);
			continue;
		}
		to = s->ks->lead[v->cursor++];
		if (to == NONE)
			continue;
		if (!s->visits[to].number)
			step_into(s, to);
		else if (s->visits[to].waiting)
			lower(v, s->visits[to].number);
	}
}

static void find_parts(struct arena *a, struct knots *ks, uint32_t n)
{
	struct search s = { .ks = ks, .arena = a };

	s.visits = arena_array(a, n, sizeof *s.visits);
	s.path = arena_array(a, n, sizeof *s.path);
	s.open = arena_array(a, n, sizeof *s.open);
	for (uint32_t w = 0; w < n; w++)
		if (ks->left[w] && !s.visits[w].number)
			search_from(&s, w);
}

struct knots *knots_find(struct arena *a, const struct view *v, struct graph *g)
{
	struct knots *ks = arena_alloc(a, sizeof *ks);

	graph_index_needers(a, g);
	ks->view = v;
	ks->left = arena_array(a, g->nassignments, sizeof *ks->left);
	ks->lead = arena_array(a, g->nneeds, sizeof *ks->lead);
	set_turns(a, ks);
	set_firsts(a, ks);
	release_all(a, ks, g);
	find_parts(a, ks, g->nassignments);
	if (ks->n)
		ks->on_loop = arena_array(a, g->nneeds, sizeof *ks->on_loop);
	return ks;
}
