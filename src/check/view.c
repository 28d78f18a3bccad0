#include "check/view.h"

/* Choices looked at for one alternative of a "one of" need. Programs have a few dozen;
 * the bound keeps a hostile one from costing needs times choices. */
enum { CHOICES_MOST = 1000 };

/* A level left out was reported; taking the highest keeps needs from failing on it. */
static void bring(struct view *v, const struct skill_at *s, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		uint8_t level = (uint8_t)(s[i].level ? s[i].level : SKILL_ASSESSED);

		if (s[i].skill != NONE && v->brought[s[i].skill] < level)
			v->brought[s[i].skill] = level;
	}
}

struct view *view_new(struct arena *a, const struct graph *g, const struct order *o)
{
	const struct model *m = o->model;
	struct view *v = arena_alloc(a, sizeof *v);

	v->graph = g;
	v->order = o;
	v->units = units_new(a, o);
	v->brought = arena_array(a, m->nskills, 1);
	bring(v, m->entry_skills, m->nentry_skills);
	if (o->entry)
		bring(v, o->entry->with, o->entry->nwith);
	return v;
}

/* Keeps the first teacher, and the first at another place. */
static void note_teacher(const struct units *us, uint32_t *two, uint32_t assignment)
{
	if (two[0] == NONE)
		two[0] = assignment;
	else if (two[1] == NONE && us->of[two[0]] != us->of[assignment])
		two[1] = assignment;
}

/* A lesson teaches its level and those below. */
static void note_lesson(struct view *v, const struct lesson *l)
{
	for (uint32_t c = cell_base(l->cell); c <= l->cell; c++)
		note_teacher(v->units, v->firsts[c].assignment[l->standing],
		    l->assignment);
}

static void find_firsts(struct arena *a, struct view *v)
{
	const struct graph *g = v->graph;
	struct lessons *l = lessons_new(a, g);

	v->firsts = arena_array(a, g->ncells, sizeof *v->firsts);
	for (uint32_t c = 0; c < g->ncells; c++)
		for (uint32_t s = 0; s < STANDINGS; s++)
			for (uint32_t i = 0; i < 2; i++)
				v->firsts[c].assignment[s][i] = NONE;
	for (uint32_t u = 0; u < v->units->n; u++) {
		units_teach(v->units, g, u, l);
		for (size_t i = 0; i < l->n; i++)
			note_lesson(v, &l->v[i]);
	}
}

/* Counts in at[skill + 2], or with `list` lists at at[skill + 1], the choices whose
 * first branch teaches the skill. */
static size_t pass_choices(struct view *v, uint32_t *at, bool list)
{
	const struct graph *g = v->graph;
	const struct units *us = v->units;
	size_t n = 0;

	for (uint32_t u = 0; u < us->n; u++) {
		uint32_t w = v->order->walk[us->at[u]];

		if (!unit_is_choice(us, u))
			continue;
		for (uint32_t t = g->teach_at[w]; t < g->teach_at[w + 1]; t++, n++)
			if (list)
				v->choices[at[cell_skill(g->teach[t]) + 1]++] = u;
			else
				at[cell_skill(g->teach[t]) + 2]++;
	}
	return n;
}

/* A choice that meets a need teaches one of its alternatives in the first branch, and
 * is listed under that skill. */
static void index_choices(struct arena *a, struct view *v)
{
	size_t nskills = v->graph->model->nskills;
	uint32_t *at = arena_array(a, nskills + 2, sizeof *at);
	size_t n = pass_choices(v, at, false);

	for (size_t s = 0; s < nskills; s++)
		at[s + 2] += at[s + 1];
	v->choices = arena_array(a, n, sizeof *v->choices);
	pass_choices(v, at, true);
	v->choice_at = at;
}

void view_detail(struct arena *a, struct view *v)
{
	if (v->firsts)
		return;
	find_firsts(a, v);
	index_choices(a, v);
}

bool view_asks(const struct view *v, uint32_t need)
{
	const struct graph *g = v->graph;
	bool known = false;

	for (uint32_t i = g->alt_at[need]; i < g->alt_at[need + 1]; i++) {
		uint32_t cell = g->alts[i];

		if (cell == CELL_GRANTED)
			return false;
		if (cell == CELL_UNKNOWN)
			continue;
		known = true;
		if (v->brought[cell_skill(cell)] >= cell_level(cell))
			return false;
	}
	return known;
}

uint32_t view_first(const struct view *v, uint32_t cell, enum standing s, uint32_t unit)
{
	const uint32_t *two = v->firsts[cell].assignment[s];

	if (two[0] == NONE || v->units->of[two[0]] != unit)
		return two[0];
	return two[1];
}

/* The earlier of a unit and the unit of an assignment, either of them NONE. */
static uint32_t earlier(const struct view *v, uint32_t unit, uint32_t assignment)
{
	if (assignment == NONE)
		return unit;
	return v->units->of[assignment] < unit ? v->units->of[assignment] : unit;
}

/* The first choice listed under a cell's skill that meets the need in full. */
static uint32_t meeting_choice(const struct view *v, uint32_t cell, uint32_t need,
    uint32_t unit, bool optional)
{
	uint32_t from = v->choice_at[cell_skill(cell)];
	uint32_t end = v->choice_at[cell_skill(cell) + 1];

	for (uint32_t i = from; i < end && i - from < CHOICES_MOST; i++) {
		uint32_t u = v->choices[i];

		if (u != unit && (optional || !v->units->optional[u]) &&
		    unit_meets(v->units, v->graph, u, need))
			return u;
	}
	return NONE;
}

/* A single need asks each standing that counts; a "one of" may also be met by a choice
 * whose branches teach different alternatives. */
uint32_t view_meeting(const struct view *v, uint32_t need, uint32_t unit, bool optional)
{
	const struct graph *g = v->graph;
	uint32_t from = g->alt_at[need], end = g->alt_at[need + 1], best = NONE;

	for (uint32_t i = from; i < end; i++) {
		uint32_t cell = g->alts[i], choice = NONE;
		uint32_t last = optional ? STANDING_OPTIONAL : STANDING_COUNTS;

		for (uint32_t s = STANDING_COUNTS; cell < g->ncells && s <= last; s++)
			best = earlier(v, best, view_first(v, cell, s, unit));
		if (cell >= g->ncells)
			continue;
		if (end - from > 1)
			choice = meeting_choice(v, cell, need, unit, optional);
		best = choice < best ? choice : best;
	}
	return best;
}

/* Optional work, one branch, even a misspelt word: each makes it less than an error. */
uint32_t view_easing(const struct view *v, uint32_t need, uint32_t unit)
{
	const struct graph *g = v->graph;
	uint32_t best = NONE;

	for (uint32_t i = g->alt_at[need]; i < g->alt_at[need + 1]; i++)
		for (uint32_t s = 0; g->alts[i] < g->ncells && s < STANDINGS; s++)
			best = earlier(v, best, view_first(v, g->alts[i], s, unit));
	return best;
}
