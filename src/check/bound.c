#include "check/move.h"

const uint32_t *unit_members(const struct repairs *r, uint32_t unit, uint32_t *n)
{
	const struct view *v = r->verdict->views[0];

	*n = v->units->at[unit + 1] - v->units->at[unit];
	return &v->order->walk[v->units->at[unit]];
}

uint32_t unit_leader(const struct view *v, uint32_t unit)
{
	return v->order->walk[v->units->at[unit]];
}

uint32_t outer_of(const struct view *v, uint32_t a, uint32_t b, bool earlier)
{
	if (a == NONE || b == NONE)
		return a == NONE ? b : a;
	return (v->units->of[a] < v->units->of[b]) == earlier ? a : b;
}

/* What assignment w itself needs: it must stay behind whoever keeps each need that
 * is no error now from being one. */
static void bound_by_needs(const struct view *v, uint32_t w, struct bound *b)
{
	const struct graph *g = v->graph;
	uint32_t unit = v->units->of[w];

	for (uint32_t n = g->need_at[w]; n < g->need_at[w + 1]; n++) {
		uint32_t ease;

		if (!view_asks(v, n))
			continue;
		ease = view_easing(v, n, unit);
		if (ease == NONE && unit == NONE)
			b->barred = true;
		else if (ease != NONE && (unit == NONE || ease < unit))
			b->after = outer_of(v, b->after, unit_leader(v, ease), false);
	}
}

/* Those who need a cell that `unit` teaches and have no one else before them. */
static void bound_by_needers(const struct view *v, uint32_t cell, uint32_t unit,
    struct bound *b)
{
	const struct graph *g = v->graph;

	for (uint32_t i = g->needer_at[cell]; i < g->needer_at[cell + 1]; i++) {
		uint32_t need = g->needers[i], who = v->units->of[g->owner[need]];

		if (who == NONE || who <= unit || !view_asks(v, need) ||
		    view_easing(v, need, unit) < who)
			continue;
		b->before = outer_of(v, b->before, g->owner[need], true);
	}
}

/* Those who need what assignment w teaches, at its level and below: a need for a
 * lower level is met by the same line. */
static void bound_by_teaching(const struct view *v, uint32_t w, struct bound *b)
{
	const struct graph *g = v->graph;
	uint32_t unit = v->units->of[w];

	if (unit == NONE)
		return;
	for (uint32_t t = g->teach_at[w]; t < g->teach_at[w + 1]; t++) {
		uint32_t top = g->teach[t] & ~CELL_MISSPELT;

		for (uint32_t c = cell_base(top); c <= top; c++)
			bound_by_needers(v, c, unit, b);
	}
}

/* A choice moves as one line, so the bounds of all its branches count together. */
struct bound *bounds_of(struct repairs *r, uint32_t unit)
{
	const struct verdict *d = r->verdict;
	uint32_t n;
	const uint32_t *w = unit_members(r, unit, &n);

	if (r->bounds[unit])
		return r->bounds[unit];
	r->bounds[unit] = arena_array(r->arena, d->nviews, sizeof *r->bounds[unit]);
	for (size_t k = 0; k < d->nviews; k++) {
		struct bound *b = &r->bounds[unit][k];

		b->after = b->before = NONE;
		for (uint32_t i = 0; i < n; i++) {
			bound_by_needs(d->views[k], w[i], b);
			bound_by_teaching(d->views[k], w[i], b);
		}
	}
	return r->bounds[unit];
}
