/* Which skills are asked for by what is found, and by whom. */
#include "check/remedy_seek.h"

bool seek_is_teaching(const struct finding *d)
{
	return !d->waived && (d->name == FINDING_UNTAUGHT_SKILL ||
	    d->name == FINDING_NEEDS_LOOP || d->name == FINDING_NEVER_TAUGHT ||
	    d->name == FINDING_NEVER_ASSESSED || d->name == FINDING_OUTCOME_UNASSESSED ||
	    d->name == FINDING_OPTIONAL_TEACHER || d->name == FINDING_ONE_BRANCH_TEACHER ||
	    d->name == FINDING_ASSESSED_TOO_EARLY);
}

/* Whether a move of a line within its quarter mends a need, as after a slip in
 * program.md. */
static bool is_plain_move(struct seeker *s, const struct finding *d)
{
	const struct standing_wrong *w = d->wrong;
	const struct slot *k = w && d->name == FINDING_UNTAUGHT_SKILL
	    ? seek_slot_of(s, w->mover) : NULL;
	uint32_t quarter = k ? s->m->courses[k->course].quarter : 0, weeks = s->m->weeks;

	return k && weeks && (w->week / weeks + 1 == quarter || w->end / weeks + 1 == quarter);
}

/* How far the need at a place asks for a skill; 0: it does not. */
static uint32_t level_at(const struct model *m, uint32_t who, struct pos pos, uint32_t skill)
{
	const struct assignment *a = &m->assignments[who];
	uint32_t most = 0;

	for (size_t i = 0; i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n && !pos_cmp(a->needs[i].pos, pos); k++)
			if (a->needs[i].v[k].skill == skill && a->needs[i].v[k].level > most)
				most = a->needs[i].v[k].level;
	return most;
}

/* One place that a finding names. */
static void note(struct seeker *s, const struct finding *d, const struct related *r,
    bool open)
{
	uint32_t at = seek_skill(s, r ? r->skill : d->skill), level;
	const struct slot *k = seek_slot(s, r ? r->assignment : d->assignment);
	struct asked *a;

	if (at == MAP_NONE)
		return;
	a = &s->asked[at];
	a->named |= d->name != FINDING_NEEDS_LOOP && !r;
	a->open |= open;
	if (d->name == FINDING_NEVER_ASSESSED || d->name == FINDING_OUTCOME_UNASSESSED)
		level = SKILL_ASSESSED;
	else
		level = k ? level_at(s->m, k->assignment, r ? r->pos : d->pos, at) : 0;
	if (level > a->level)
		a->level = (enum skill_level)level;
	if (k && (!a->first || seek_before(s->m, k, a->first)))
		a->first = k;
}

const struct asked *seek_asked(struct seeker *s)
{
	if (s->asked)
		return s->asked;
	s->asked = arena_array(s->arena, s->m->nskills + 1, sizeof *s->asked);
	for (size_t i = 0; i < s->m->nskills; i++)
		s->asked[i].level = SKILL_INTRODUCED;
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];
		bool open = !is_plain_move(s, d);

		if (!seek_is_teaching(d))
			continue;
		note(s, d, NULL, open);
		for (size_t k = 0; k < d->nrelated; k++)
			note(s, d, &d->related[k], open);
	}
	return s->asked;
}
