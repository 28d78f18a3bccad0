#include "check/units.h"

/* Of one skill within the choice that is being read. */
struct lesson_seen {
	uint32_t stamp;          /* of the choice; another one: not seen in this one */
	uint32_t branches;       /* how many, counted without a gap from the first */
	enum skill_level least;  /* over the branches before the present one */
	enum skill_level now;    /* in the present branch */
};

struct units *units_new(struct arena *a, const struct order *o)
{
	const struct model *m = o->model;
	struct units *us = arena_alloc(a, sizeof *us);

	us->order = o;
	us->of = arena_array(a, m->nassignments, sizeof *us->of);
	us->at = arena_array(a, o->nwalk + 1, sizeof *us->at);
	us->optional = arena_array(a, o->nwalk, sizeof *us->optional);
	for (size_t i = 0; i < m->nassignments; i++)
		us->of[i] = NONE;
	for (size_t i = 0; i < o->nwalk; i++) {
		const struct place *p = &o->places[o->walk[i]];

		if (!i || place_cmp(&o->places[o->walk[i - 1]], p)) {
			us->optional[us->n] = m->slots[p->slot].optional;
			us->at[us->n++] = (uint32_t)i;
		}
		us->of[o->walk[i]] = us->n - 1;
	}
	us->at[us->n] = (uint32_t)o->nwalk;
	return us;
}

struct lessons *lessons_new(struct arena *a, const struct graph *g)
{
	struct lessons *l = arena_alloc(a, sizeof *l);

	l->arena = a;
	l->nskills = g->model->nskills;
	return l;
}

static void add(struct lessons *l, uint32_t cell, enum standing s, uint32_t assignment)
{
	*ARENA_PUSH(l->arena, l->v, l->n, l->cap) =
	    (struct lesson){ cell & ~CELL_MISSPELT, s, assignment };
}

/* Notes what branch number `branch` (from 0) of the choice teaches. */
static void read_branch(const struct graph *g, uint32_t assignment, uint32_t branch,
    struct lessons *l)
{
	for (uint32_t i = g->teach_at[assignment]; i < g->teach_at[assignment + 1]; i++) {
		struct lesson_seen *s = &l->seen[cell_skill(g->teach[i])];
		enum skill_level level = cell_level(g->teach[i]);

		if (g->teach[i] & CELL_MISSPELT)
			continue;
		if (s->stamp != l->stamp)
			*s = (struct lesson_seen){ l->stamp, 0, SKILL_ASSESSED, level };
		if (s->branches == branch + 1) {
			s->now = level > s->now ? level : s->now;
		} else if (s->branches == branch) {
			if (branch && s->now < s->least)
				s->least = s->now;
			s->now = level;
			s->branches++;
		}
	}
}

/* The level at which all branches teach a skill, 0 when not all do. */
static enum skill_level common_level(const struct lesson_seen *s, uint32_t branches)
{
	if (s->branches != branches)
		return 0;
	return s->now < s->least ? s->now : s->least;
}

/* A level beyond the common one still counts as that of one branch, so each branch is
 * listed in full after what all share. */
static void teach_choice(const struct units *us, const struct graph *g, uint32_t u,
    struct lessons *l)
{
	const uint32_t *walk = us->order->walk;
	uint32_t from = us->at[u], end = us->at[u + 1], n = end - from,
	    first = walk[from];
	enum standing common = us->optional[u] ? STANDING_OPTIONAL : STANDING_COUNTS;

	if (!l->seen)
		l->seen = arena_array(l->arena, l->nskills, sizeof *l->seen);
	l->stamp++;
	for (uint32_t b = 0; b < n; b++)
		read_branch(g, walk[from + b], b, l);
	for (uint32_t i = g->teach_at[first]; i < g->teach_at[first + 1]; i++) {
		uint32_t skill = cell_skill(g->teach[i]);
		enum skill_level level = common_level(&l->seen[skill], n);

		if (level && !(g->teach[i] & CELL_MISSPELT))
			add(l, cell_of(skill, level), common, first);
	}
	for (uint32_t b = from; b < end; b++)
		for (uint32_t i = g->teach_at[walk[b]]; i < g->teach_at[walk[b] + 1]; i++)
			add(l, g->teach[i], g->teach[i] & CELL_MISSPELT
			    ? STANDING_MISSPELT : STANDING_BRANCH, walk[b]);
}

void units_teach(const struct units *us, const struct graph *g, uint32_t u,
    struct lessons *l)
{
	uint32_t a = us->order->walk[us->at[u]];

	l->n = 0;
	if (us->at[u + 1] - us->at[u] > 1) {
		teach_choice(us, g, u, l);
		return;
	}
	for (uint32_t i = g->teach_at[a]; i < g->teach_at[a + 1]; i++)
		add(l, g->teach[i], g->teach[i] & CELL_MISSPELT ? STANDING_MISSPELT
		    : us->optional[u] ? STANDING_OPTIONAL : STANDING_COUNTS, a);
}

static bool teaches_one_of(const struct graph *g, uint32_t assignment, uint32_t need)
{
	for (uint32_t i = g->alt_at[need]; i < g->alt_at[need + 1]; i++)
		if (g->alts[i] < g->ncells && graph_teaches(g, assignment, g->alts[i]))
			return true;
	return false;
}

bool unit_meets(const struct units *us, const struct graph *g, uint32_t u, uint32_t need)
{
	for (uint32_t b = us->at[u]; b < us->at[u + 1]; b++)
		if (!teaches_one_of(g, us->order->walk[b], need))
			return false;
	return true;
}

uint32_t units_behind_lost(const struct units *us, uint32_t *slot)
{
	const struct order *o = us->order;
	const struct model *m = o->model;
	struct place first = { .slot = NONE };

	for (uint32_t i = 0; i < m->nslots; i++) {
		const struct slot *s = &m->slots[i];
		struct place p;

		if (s->assignment != NONE)
			continue;
		p = (struct place){ order_turn(o, m->courses[s->course].quarter),
			m->courses[s->course].quarter, s->week, s->line, i };
		if (p.rank_quarter && (first.slot == NONE || place_cmp(&p, &first) < 0))
			first = p;
	}
	*slot = first.slot;
	for (uint32_t u = 0; first.slot != NONE && u < us->n; u++)
		if (place_cmp(&o->places[o->walk[us->at[u]]], &first) > 0)
			return u;
	return NONE;
}
