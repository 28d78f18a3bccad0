#include "check/graph.h"

/* Arrays that grow while the model is read: counting first would fetch every
 * assignment from memory twice. */
struct room {
	size_t needs, alts, teach;
};

/* Room for four needs and two teachings an assignment; more is added as it shows. */
static void reserve(struct arena *a, struct graph *g, struct room *room)
{
	size_t n = g->nassignments;

	room->needs = room->alts = 4 * n + 8;
	room->teach = 2 * n + 8;
	g->need_at = arena_array(a, n + 1, sizeof *g->need_at);
	g->teach_at = arena_array(a, n + 1, sizeof *g->teach_at);
	g->alt_at = arena_array(a, room->needs, sizeof *g->alt_at);
	g->alts = arena_array(a, room->alts, sizeof *g->alts);
	g->teach = arena_array(a, room->teach, sizeof *g->teach);
}

/* Each need keeps its number even when it is not judged, so that a need of the graph
 * is a need of the model. */
static void add_needs(struct arena *a, struct graph *g, const struct assignment *as,
    struct room *room)
{
	uint32_t nalts = g->alt_at[g->nneeds];

	g->alt_at = arena_grow(a, g->alt_at, g->nneeds + 1, g->nneeds + 1 + as->nneeds,
	    &room->needs, sizeof *g->alt_at);
	for (size_t i = 0; i < as->nneeds; i++) {
		const struct need *n = &as->needs[i];

		if (nalts + n->n > room->alts)
			g->alts = arena_grow(a, g->alts, nalts, nalts + n->n, &room->alts,
			    sizeof *g->alts);
		for (size_t k = 0; k < n->n; k++) {
			const struct skill_at *s = &n->v[k];

			g->nunknown += s->skill == NONE;
			g->alts[nalts++] = !s->level ? CELL_GRANTED : s->skill == NONE
			    ? CELL_UNKNOWN : cell_of(s->skill, s->level);
		}
		g->alt_at[++g->nneeds] = nalts;
	}
}

/* A teaching without a level was reported; taking it for the highest keeps the
 * needs that rest on it from being reported as well. */
static uint32_t add_teaches(struct arena *a, struct graph *g, const struct assignment *as,
    const struct words *w, uint32_t nteach, struct room *room)
{
	g->teach = arena_grow(a, g->teach, nteach, nteach + as->nteaches, &room->teach,
	    sizeof *g->teach);
	for (size_t i = 0; i < as->nteaches; i++) {
		const struct skill_at *s = &as->teaches[i];
		enum skill_level level = s->level ? s->level : SKILL_ASSESSED;
		uint32_t meant;

		if (s->skill != NONE) {
			g->teach[nteach++] = cell_of(s->skill, level);
			continue;
		}
		g->nunknown++;
		meant = w ? words_meant(w, s->written) : NONE;
		if (meant != NONE)
			g->teach[nteach++] = cell_of(meant, level) | CELL_MISSPELT;
	}
	return nteach;
}

struct graph *graph_new(struct arena *a, const struct model *m, const struct words *w)
{
	struct graph *g = arena_alloc(a, sizeof *g);
	struct room room;
	uint32_t nteach = 0;

	g->model = m;
	g->nassignments = (uint32_t)m->nassignments;
	g->ncells = (uint32_t)m->nskills * 3;
	reserve(a, g, &room);
	for (uint32_t i = 0; i < g->nassignments; i++) {
		add_needs(a, g, &m->assignments[i], &room);
		nteach = add_teaches(a, g, &m->assignments[i], w, nteach, &room);
		g->need_at[i + 1] = g->nneeds;
		g->teach_at[i + 1] = nteach;
	}
	return g;
}

/* Counted two places ahead, so that filling turns starts into ends and leaves at[c]
 * the start of cell c. */
void graph_index_needers(struct arena *a, struct graph *g)
{
	uint32_t *at = arena_array(a, (size_t)g->ncells + 2, sizeof *at);
	uint32_t nalts = g->alt_at[g->nneeds];

	if (g->needer_at)
		return;
	g->owner = arena_array(a, g->nneeds, sizeof *g->owner);
	g->needers = arena_array(a, nalts, sizeof *g->needers);
	for (uint32_t i = 0; i < nalts; i++)
		if (g->alts[i] < g->ncells)
			at[g->alts[i] + 2]++;
	for (uint32_t c = 0; c < g->ncells; c++)
		at[c + 2] += at[c + 1];
	for (uint32_t w = 0; w < g->nassignments; w++)
		for (uint32_t n = g->need_at[w]; n < g->need_at[w + 1]; n++)
			g->owner[n] = w;
	for (uint32_t n = 0; n < g->nneeds; n++)
		for (uint32_t i = g->alt_at[n]; i < g->alt_at[n + 1]; i++)
			if (g->alts[i] < g->ncells)
				g->needers[at[g->alts[i] + 1]++] = n;
	g->needer_at = at;
}

bool graph_teaches(const struct graph *g, uint32_t assignment, uint32_t cell)
{
	for (uint32_t t = g->teach_at[assignment]; t < g->teach_at[assignment + 1]; t++)
		if (!(g->teach[t] & CELL_MISSPELT) && g->teach[t] >= cell &&
		    cell_base(g->teach[t]) == cell_base(cell))
			return true;
	return false;
}

const struct need *graph_need(const struct graph *g, uint32_t assignment, uint32_t need)
{
	return &g->model->assignments[assignment].needs[need - g->need_at[assignment]];
}
