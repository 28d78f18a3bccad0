/* The order rules once more, written plainly from their definitions: every question
 * is answered by looking at every assignment. Only for the tests; shares no code with
 * src/check. */
#ifndef TESTS_BRUTE_H
#define TESTS_BRUTE_H

#include "order/order.h"

#include <string.h>

enum brute_state { BRUTE_MET, BRUTE_SLIP, BRUTE_WARNING, BRUTE_ERROR };

enum { BRUTE_MOST = 32 };

/* The level at which an assignment teaches a skill, 0 when it does not. With slips,
 * only the teachings under a misspelt word that most likely means the skill. */
static inline unsigned brute_teaches(const struct model *m, uint32_t w, uint32_t skill,
    bool slips)
{
	const struct assignment *as = &m->assignments[w];
	unsigned best = 0;
	str ids[64];

	for (size_t i = 0; i < m->nskills; i++)
		ids[i] = m->skills[i].id;
	for (size_t i = 0; i < as->nteaches; i++) {
		const struct skill_at *s = &as->teaches[i];
		unsigned level = s->level ? s->level : SKILL_ASSESSED;
		uint32_t meant = s->skill;

		if (slips != (s->skill == NONE))
			continue;
		if (slips) {
			str near = likely_word(s->written, ids, m->nskills);

			meant = near.n ? map_find(m->skill_by_id, near) : NONE;
		}
		if (meant == skill && level > best)
			best = level;
	}
	return best;
}

static inline bool brute_placed(const struct order *o, uint32_t w)
{
	return o->places[w].slot != NONE;
}

static inline bool brute_same_line(const struct order *o, uint32_t a, uint32_t b)
{
	return a == b || (brute_placed(o, a) && brute_placed(o, b) &&
	    !place_cmp(&o->places[a], &o->places[b]));
}

static inline bool brute_earlier(const struct order *o, uint32_t a, uint32_t b)
{
	return brute_placed(o, a) && brute_placed(o, b) &&
	    place_cmp(&o->places[a], &o->places[b]) < 0;
}

static inline bool brute_optional(const struct order *o, uint32_t w)
{
	return o->model->slots[o->places[w].slot].optional;
}

/* Whether w teaches one of the alternatives far enough. */
static inline bool brute_gives(const struct model *m, uint32_t w, const struct need *n,
    bool slips)
{
	for (size_t i = 0; i < n->n; i++)
		if (n->v[i].skill != NONE &&
		    brute_teaches(m, w, n->v[i].skill, slips) >= n->v[i].level)
			return true;
	return false;
}

static inline bool brute_brought_in(const struct skill_at *v, size_t nv,
    const struct need *n)
{
	for (size_t i = 0; i < n->n; i++)
		for (size_t k = 0; k < nv; k++)
			if (v[k].skill != NONE && v[k].skill == n->v[i].skill &&
			    (!v[k].level || v[k].level >= n->v[i].level))
				return true;
	return false;
}

/* A need that is not judged: without a level, or of unknown skills only. */
static inline bool brute_unjudged(const struct need *n)
{
	bool known = false;

	for (size_t i = 0; i < n->n; i++) {
		if (!n->v[i].level)
			return true;
		known |= n->v[i].skill != NONE;
	}
	return !known;
}

static inline enum brute_state brute_need(const struct order *o, uint32_t w,
    const struct need *n)
{
	const struct model *m = o->model;
	bool slip = false, some = false;

	if (!brute_placed(o, w) || brute_unjudged(n) ||
	    brute_brought_in(m->entry_skills, m->nentry_skills, n) ||
	    (o->entry && brute_brought_in(o->entry->with, o->entry->nwith, n)))
		return BRUTE_MET;
	for (uint32_t t = 0; t < m->nassignments; t++) {
		bool all = true;

		if (!brute_earlier(o, t, w))
			continue;
		slip |= brute_gives(m, t, n, true);
		some |= brute_gives(m, t, n, false);
		for (uint32_t b = 0; b < m->nassignments; b++)
			if (brute_same_line(o, t, b) && !brute_gives(m, b, n, false))
				all = false;
		if (all && (!brute_optional(o, t) || brute_optional(o, w)))
			return BRUTE_MET;
	}
	return slip ? BRUTE_SLIP : some ? BRUTE_WARNING : BRUTE_ERROR;
}

/* Who needs whom among those that no order can serve. */
struct brute_knots {
	bool left[BRUTE_MOST];
	bool reach[BRUTE_MOST][BRUTE_MOST]; /* in one step or more */
	uint32_t far[BRUTE_MOST][BRUTE_MOST]; /* fewest steps, 0 unreachable */
};

/* The turn of an assignment: by place, and by id after those when it has none. */
static inline bool brute_before(const struct order *o, uint32_t a, uint32_t b)
{
	if (brute_placed(o, a) != brute_placed(o, b))
		return brute_placed(o, a);
	if (!brute_placed(o, a) || brute_same_line(o, a, b))
		return brute_placed(o, a) ? o->places[a].slot < o->places[b].slot : a < b;
	return brute_earlier(o, a, b);
}

/* The first teacher of a need beyond w's own line; NONE. */
static inline uint32_t brute_teacher(const struct order *o, uint32_t w,
    const struct need *n)
{
	uint32_t best = NONE;

	for (uint32_t t = 0; t < o->model->nassignments; t++)
		if (!brute_same_line(o, t, w) && brute_gives(o->model, t, n, false) &&
		    (best == NONE || brute_before(o, t, best)))
			best = t;
	return best;
}

/* Whether a need still waits while `left` are not released. */
static inline bool brute_waits(const struct order *o, uint32_t w, const struct need *n,
    const bool *left)
{
	const struct model *m = o->model;

	if (brute_unjudged(n) || brute_brought_in(m->entry_skills, m->nentry_skills, n) ||
	    brute_teacher(o, w, n) == NONE)
		return false;
	for (uint32_t t = 0; t < m->nassignments; t++)
		if (!left[t] && !brute_same_line(o, t, w) &&
		    (brute_gives(m, t, n, false) || brute_gives(m, t, n, true)))
			return false;
	return true;
}

static inline void brute_release(const struct order *o, bool *left)
{
	const struct model *m = o->model;
	bool again = true;

	for (uint32_t w = 0; w < m->nassignments; w++)
		left[w] = true;
	while (again) {
		again = false;
		for (uint32_t w = 0; w < m->nassignments; w++) {
			bool waits = false;

			for (size_t i = 0; left[w] && i < m->assignments[w].nneeds; i++)
				waits |= brute_waits(o, w, &m->assignments[w].needs[i],
				    left);
			if (left[w] && !waits) {
				left[w] = false;
				again = true;
			}
		}
	}
}

static inline void brute_knots(const struct order *o, struct brute_knots *k)
{
	const struct model *m = o->model;
	size_t n = m->nassignments;

	memset(k, 0, sizeof *k);
	brute_release(o, k->left);
	for (uint32_t w = 0; w < n; w++)
		for (size_t i = 0; k->left[w] && i < m->assignments[w].nneeds; i++)
			if (brute_waits(o, w, &m->assignments[w].needs[i], k->left))
				k->far[w][brute_teacher(o, w,
				    &m->assignments[w].needs[i])] = 1;
	for (size_t x = 0; x < n; x++)
		for (size_t i = 0; i < n; i++)
			for (size_t j = 0; j < n; j++)
				if (k->far[i][x] && k->far[x][j] && (!k->far[i][j] ||
				    k->far[i][x] + k->far[x][j] < k->far[i][j]))
					k->far[i][j] = k->far[i][x] + k->far[x][j];
	for (size_t i = 0; i < n; i++)
		for (size_t j = 0; j < n; j++)
			k->reach[i][j] = k->far[i][j] != 0;
}

static inline bool brute_same_knot(const struct brute_knots *k, uint32_t a, uint32_t b)
{
	return k->reach[a][b] && k->reach[b][a];
}

#endif
