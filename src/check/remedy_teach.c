/* Teaching of one skill that was lost, or goes less far than it did. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Skills tried of one finding: more of them are seldom the one. */
enum { SKILLS_MOST = 6 };

str seek_teaches(const struct seeker *s, const bool *skills)
{
	struct buf b = { .arena = s->arena };

	for (size_t i = 0; i < s->m->nskills; i++)
		if (skills[i])
			buf_addf(&b, "%s- %.*s assessed", b.n ? "\n" : "",
			    STR_ARG(s->m->skills[i].id));
	return buf_str(&b);
}

/* Above its first line of Teaches, else under that heading, else under a new one. */
struct remedy *seek_taught(struct seeker *s, uint32_t who, const bool *skills)
{
	const struct assignment *a = &s->m->assignments[who];
	struct edit e = { EDIT_ADD, a->pos.file, 0, seek_teaches(s, skills), 0 };
	uint32_t heading;

	if (a->nteaches) {
		e.line = a->teaches[0].pos.line - 1;
		return seek_add(s, &e, 1);
	}
	heading = seek_section(s, a, STR("Teaches"));
	e.text = str_format(s->arena, "\n%s%.*s", heading ? "" : "## Teaches\n\n",
	    STR_ARG(e.text));
	e.line = heading ? heading : seek_last_line(s, a);
	return seek_add(s, &e, 1);
}

static const struct skill_at *teaches(const struct model *m, const struct slot *k,
    uint32_t skill)
{
	const struct assignment *a = &m->assignments[k->assignment];

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill == skill)
			return &a->teaches[i];
	return NULL;
}

/* The last line of program.md before one that asks, in its course (NONE: in any), that
 * teaches the skill (NONE: any). Neither optional work nor a choice will do. */
static const struct slot *line_before(const struct model *m, const struct slot *asker,
    uint32_t course, uint32_t skill)
{
	const struct slot *best = NULL;

	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *k = &m->slots[i];

		if (k->assignment == NONE || k->group || k->optional ||
		    (course != NONE && k->course != course) ||
		    (asker && !seek_before(m, k, asker)) ||
		    (skill != NONE && !teaches(m, k, skill)))
			continue;
		if (!best || seek_before(m, best, k))
			best = k;
	}
	return best;
}

static str say_teach(const struct seeker *s, const struct slot *asker,
    const struct slot *low, uint32_t skill)
{
	struct buf b = { .arena = s->arena };
	str level = skill_level_word(s->asked[skill].level);

	if (low)
		buf_addf(&b, "let %.*s teach ",
		    STR_ARG(s->m->assignments[low->assignment].id));
	else
		buf_addf(&b, "let an assignment before %.*s teach ",
		    STR_ARG(s->m->assignments[asker->assignment].id));
	buf_addf(&b, "%.*s %.*s", STR_ARG(s->m->skills[skill].id), STR_ARG(level));
	if (low && asker)
		buf_addf(&b, ", or another assignment before %.*s",
		    STR_ARG(s->m->assignments[asker->assignment].id));
	return buf_str(&b);
}

/* One skill taught before whoever asks for it first: where it is taught less far, in the
 * course of that work, or right before it. */
static void try_skill(struct seeker *s, uint32_t skill)
{
	const struct slot *asker = seek_asked(s)[skill].first;
	const struct slot *low = line_before(s->m, asker, NONE, skill);
	const struct slot *tried[3] = { low };
	bool *skills = arena_array(s->arena, s->m->nskills, sizeof *skills);

	skills[skill] = true;
	if (asker) {
		tried[1] = line_before(s->m, asker, asker->course, NONE);
		tried[2] = line_before(s->m, asker, NONE, NONE);
	}
	for (int i = 0; i < 3; i++)
		if (tried[i] && (!i || (tried[i] != tried[i - 1] && tried[i] != low)))
			seek_taught(s, tried[i]->assignment, skills)->say =
			    say_teach(s, asker, low, skill);
}

/* Each skill that the finding is about. */
static void seek_skills(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	uint32_t seen[SKILLS_MOST], n = 0;

	for (size_t i = 0; i <= d->nrelated && n < SKILLS_MOST; i++) {
		uint32_t skill = seek_skill(s, i ? d->related[i - 1].skill : d->skill), k = 0;

		while (k < n && seen[k] != skill)
			k++;
		if (skill == MAP_NONE || k < n)
			continue;
		seen[n++] = skill;
		try_skill(s, skill);
	}
}

/* A need that nothing meets tells more of what was lost than one that a move would meet, and
 * than a circle: where either may stand for all, it is tried first. */
void seek_teaching(struct seeker *s)
{
	const struct finding *d = seek_finding(s);

	if (!seek_is_teaching(d) || !s->m->sources)
		return;
	if (d->name == FINDING_NEEDS_LOOP || d->wrong)
		s->turn += SKILLS_MOST;
	seek_hosts(s);
	seek_other_skills(s);
	seek_skills(s);
}
