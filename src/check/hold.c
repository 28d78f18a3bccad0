#include "check/move.h"

/* Teachers times needers of a cell that are compared one by one; past this a move
 * that may turn a loop is refused. */
enum { COMPARED_MOST = 20000 };

void loops_mark(struct repairs *r)
{
	const struct graph *g = r->graph;

	r->live = arena_array(r->arena, g->ncells, sizeof *r->live);
	for (uint32_t n = 0; n < g->nneeds; n++)
		for (uint32_t i = g->alt_at[n]; r->knots->lead[n] != NONE &&
		    i < g->alt_at[n + 1]; i++)
			if (g->alts[i] < g->ncells)
				r->live[g->alts[i]] |= g->alt_at[n + 1] - g->alt_at[n] > 1
				    ? LIVE_ONE_OF : LIVE_ALONE;
}

static const struct place *place_of(const struct knots *ks, uint32_t assignment)
{
	return &ks->view->order->places[assignment];
}

/* Whether a cell's first two teachers surely stay when w goes to p. Only two are
 * known, so a move that may pass an unknown third is not sure. */
static bool firsts_hold(const struct knots *ks, uint32_t cell, uint32_t w,
    const struct place *p)
{
	const uint32_t *two = ks->first[cell];
	bool first = two[0] != NONE && ks->unit[two[0]] == ks->unit[w];
	bool second = two[1] != NONE && ks->unit[two[1]] == ks->unit[w];
	const struct place *next;

	if (place_cmp(place_of(ks, w), p) < 0) {
		if (!first)
			return !second;
		next = two[1] == NONE ? NULL : place_of(ks, two[1]);
		return !next || next->slot == NONE || place_cmp(p, next) < 0;
	}
	if (first || two[0] == NONE)
		return true;
	next = place_of(ks, second || two[1] == NONE ? two[0] : two[1]);
	return place_cmp(next, p) < 0;
}

/* Whether a is ahead of b once the unit stands at p. */
static bool ahead_then(const struct knots *ks, uint32_t a, uint32_t b, uint32_t unit,
    const struct place *p)
{
	const struct place *x = ks->unit[a] == unit ? p : place_of(ks, a);
	const struct place *y = ks->unit[b] == unit ? p : place_of(ks, b);

	if (ks->unit[a] == ks->unit[b] || x->slot == NONE || y->slot == NONE)
		return ks->turn[a] < ks->turn[b];
	return place_cmp(x, y) < 0;
}

/* Whether a need still leads to the same teacher when the unit goes to p. */
static bool lead_holds(const struct repairs *r, uint32_t need, uint32_t unit,
    const struct place *p)
{
	const struct knots *ks = r->knots;
	const struct graph *g = r->graph;
	uint32_t w = g->owner[need], now = ks->lead[need];

	for (uint32_t i = g->alt_at[need]; now != NONE && i < g->alt_at[need + 1]; i++) {
		uint32_t skill = g->alts[i] < g->ncells ? cell_skill(g->alts[i]) : NONE;
		uint32_t k = skill == NONE ? 0 : r->teacher_at[skill];
		uint32_t end = skill == NONE ? 0 : r->teacher_at[skill + 1];

		for (; k < end; k++) {
			uint32_t t = r->teachers[k];
			bool other = ks->unit[t] != ks->unit[w] && t != now;

			if (other && graph_teaches(g, t, g->alts[i]) &&
			    ahead_then(ks, t, now, unit, p))
				return false;
		}
	}
	return true;
}

/* The quick test settles nearly every cell; the exact one walks needers and teachers. */
static bool cell_holds(const struct repairs *r, uint32_t cell, uint32_t w,
    const struct place *p)
{
	const struct knots *ks = r->knots;
	const struct graph *g = r->graph;
	uint64_t needers = g->needer_at[cell + 1] - g->needer_at[cell];
	uint32_t skill = cell_skill(cell);

	if (!r->live[cell] ||
	    (r->live[cell] == LIVE_ALONE && firsts_hold(ks, cell, w, p)))
		return true;
	if (needers * (r->teacher_at[skill + 1] - r->teacher_at[skill]) > COMPARED_MOST)
		return false;
	for (uint32_t i = g->needer_at[cell]; i < g->needer_at[cell + 1]; i++)
		if (!lead_holds(r, g->needers[i], ks->unit[w], p))
			return false;
	return true;
}

bool loops_hold(const struct repairs *r, uint32_t unit, const struct place *p)
{
	const struct knots *ks = r->knots;
	const struct graph *g = r->graph;
	uint32_t n;
	const uint32_t *w = unit_members(r, unit, &n);

	for (uint32_t i = 0; ks && i < n; i++) {
		if (!ks->left[w[i]])
			continue;
		for (uint32_t t = g->teach_at[w[i]]; t < g->teach_at[w[i] + 1]; t++) {
			uint32_t c = cell_base(g->teach[t]);

			for (; !(g->teach[t] & CELL_MISSPELT) && c <= g->teach[t]; c++)
				if (!cell_holds(r, c, w[i], p))
					return false;
		}
	}
	return true;
}
