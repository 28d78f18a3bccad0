#include "check/walk.h"

#include <string.h>

/* What has been taught so far, by skill: the highest level. */
struct taught {
	uint8_t *sure;           /* to every student */
	uint8_t *perhaps;        /* to those as well who did the optional work */
};

/* Whether what has been taught meets a need. Unjudged needs count as met. */
static bool is_met(const struct graph *g, uint32_t need, const uint8_t *levels)
{
	bool judged = false;

	for (uint32_t i = g->alt_at[need]; i < g->alt_at[need + 1]; i++) {
		uint32_t cell = g->alts[i];

		if (cell == CELL_GRANTED)
			return true;
		if (cell == CELL_UNKNOWN)
			continue;
		judged = true;
		if (levels[cell_skill(cell)] >= cell_level(cell))
			return true;
	}
	return !judged;
}

/* Whether the branches of one earlier choice meet a "one of" need between them. */
static bool choice_meets(struct view *v, struct arena *a, uint32_t need, uint32_t unit)
{
	const struct graph *g = v->graph;

	if (g->alt_at[need + 1] - g->alt_at[need] < 2)
		return false;
	view_detail(a, v);
	return view_meeting(v, need, unit, v->units->optional[unit]) < unit;
}

/* A choice is tried only for what the levels do not settle. */
static void check_needs(struct view *v, struct faults *fs, uint32_t unit, uint32_t w,
    const uint8_t *levels)
{
	const struct graph *g = v->graph;

	for (uint32_t n = g->need_at[w]; n < g->need_at[w + 1]; n++)
		if (!is_met(g, n, levels) && !choice_meets(v, fs->arena, n, unit))
			*ARENA_PUSH(fs->arena, fs->v, fs->n, fs->cap) =
			    (struct fault){ .assignment = w, .need = n };
}

static void raise(uint8_t *levels, uint32_t cell)
{
	uint8_t level = (uint8_t)cell_level(cell);

	if (levels[cell_skill(cell)] < level)
		levels[cell_skill(cell)] = level;
}

/* The common case, an assignment on its own. */
static void teach_one(const struct graph *g, uint32_t w, uint8_t *levels)
{
	for (uint32_t t = g->teach_at[w]; t < g->teach_at[w + 1]; t++)
		if (!(g->teach[t] & CELL_MISSPELT))
			raise(levels, g->teach[t]);
}

static void teach_unit(const struct view *v, uint32_t unit, struct lessons *l,
    struct taught *t)
{
	if (!unit_is_choice(v->units, unit)) {
		uint32_t w = v->order->walk[v->units->at[unit]];

		teach_one(v->graph, w, t->perhaps);
		if (!v->units->optional[unit])
			teach_one(v->graph, w, t->sure);
		return;
	}
	units_teach(v->units, v->graph, unit, l);
	for (size_t i = 0; i < l->n; i++) {
		if (l->v[i].standing > STANDING_OPTIONAL)
			continue;
		raise(t->perhaps, l->v[i].cell);
		if (l->v[i].standing == STANDING_COUNTS)
			raise(t->sure, l->v[i].cell);
	}
}

/* Branches of a choice are judged before any of them teaches. */
void walk_order(struct view *v, struct faults *fs)
{
	const struct units *us = v->units;
	size_t nskills = v->graph->model->nskills;
	struct lessons *l = lessons_new(fs->arena, v->graph);
	struct taught t = { arena_array(fs->arena, nskills, 1),
	    arena_array(fs->arena, nskills, 1) };

	if (nskills) {
		memcpy(t.sure, v->brought, nskills);
		memcpy(t.perhaps, v->brought, nskills);
	}
	for (uint32_t u = 0; u < us->n; u++) {
		const uint8_t *levels = us->optional[u] ? t.perhaps : t.sure;

		for (uint32_t i = us->at[u]; i < us->at[u + 1]; i++)
			check_needs(v, fs, u, v->order->walk[i], levels);
		teach_unit(v, u, l, &t);
	}
}

bool nature_is_error(enum nature n)
{
	return n >= NATURE_LATER;
}

/* Another branch of the same choice that teaches the cell; NONE. */
static uint32_t sibling(const struct view *v, uint32_t assignment, uint32_t cell)
{
	uint32_t unit = v->units->of[assignment];

	for (uint32_t i = v->units->at[unit]; i < v->units->at[unit + 1]; i++) {
		uint32_t w = v->order->walk[i];

		if (w != assignment && graph_teaches(v->graph, w, cell))
			return w;
	}
	return NONE;
}

/* The first teacher in whatever standing, those that count before the others. */
static uint32_t first_of_any(const struct view *v, uint32_t cell, uint32_t unit)
{
	uint32_t hit = NONE;

	for (uint32_t s = 0; hit == NONE && s < STANDINGS; s++)
		hit = view_first(v, cell, s, unit);
	return hit;
}

/* A teacher that stands earlier than unit, for natures that name earlier work. */
static bool is_earlier(const struct view *v, uint32_t teacher, uint32_t unit)
{
	return teacher != NONE && v->units->of[teacher] < unit;
}

/* A slip of the pen explains a need best; then whichever of optional work and a single
 * branch came first. */
static void judge_earlier(const struct view *v, uint32_t cell, uint32_t unit,
    struct fault *d)
{
	uint32_t slip = view_first(v, cell, STANDING_MISSPELT, unit);
	uint32_t extra = view_first(v, cell, STANDING_OPTIONAL, unit);
	uint32_t branch = view_first(v, cell, STANDING_BRANCH, unit);

	if (is_earlier(v, slip, unit)) {
		d->nature = NATURE_MISSPELT;
		d->teacher = slip;
	} else if (is_earlier(v, extra, unit) && (branch == NONE ||
	    v->units->of[extra] <= v->units->of[branch])) {
		d->nature = NATURE_OPTIONAL;
		d->teacher = extra;
	} else if (is_earlier(v, branch, unit)) {
		d->nature = NATURE_BRANCH;
		d->teacher = branch;
	}
}

/* One alternative on its own: natures are tried from the lightest to the gravest, so
 * that a skill taught later is never told as never taught. */
static struct fault judge_cell(const struct view *v, const struct fault *d, uint32_t cell)
{
	uint32_t unit = v->units->of[d->assignment];
	struct fault r = *d;

	r.nature = NATURE_NEVER;
	r.teacher = NONE;
	judge_earlier(v, cell, unit, &r);
	if (r.nature != NATURE_NEVER)
		return r;
	r.nature = NATURE_LATER;
	r.teacher = first_of_any(v, cell, unit);
	if (r.teacher != NONE)
		return r;
	r.nature = NATURE_SIBLING;
	r.teacher = sibling(v, d->assignment, cell);
	if (r.teacher != NONE)
		return r;
	r.nature = NATURE_TOO_LOW;
	for (uint32_t c = cell; r.teacher == NONE && c-- > cell_base(cell);)
		r.teacher = first_of_any(v, c, unit);
	if (r.teacher != NONE)
		return r;
	r.nature = NATURE_NEVER;
	if (graph_teaches(v->graph, d->assignment, cell_base(cell)))
		r.nature = NATURE_ITSELF;
	return r;
}

/* Whether a says less against the program than b: a lighter nature, or the same with
 * an earlier teacher. */
static bool is_lighter(const struct view *v, const struct fault *a, const struct fault *b)
{
	if (a->nature != b->nature || a->teacher == NONE)
		return a->nature < b->nature;
	return v->units->of[a->teacher] < v->units->of[b->teacher];
}

/* Of several alternatives the one closest to being met is spoken of. */
void fault_judge(const struct view *v, struct fault *d)
{
	const struct graph *g = v->graph;
	bool some = false;

	for (uint32_t i = g->alt_at[d->need]; i < g->alt_at[d->need + 1]; i++) {
		struct fault r;

		if (g->alts[i] >= g->ncells)
			continue;
		r = judge_cell(v, d, g->alts[i]);
		r.alt = i;
		if (!some || is_lighter(v, &r, d))
			*d = r;
		some = true;
	}
}
