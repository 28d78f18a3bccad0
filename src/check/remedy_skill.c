/* A skill under Needs or Teaches in place of the one that is meant. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Needs looked at of one finding. */
enum { NEEDS_MOST = 6 };

/* A test that assesses what nobody taught, where another skill of such a name is asked for. */
static void seek_meant(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct asked *asked = seek_asked(s);
	str *ids = arena_array(s->arena, s->m->nskills + 1, sizeof *ids), near;
	struct remedy *r;
	size_t n = 0;

	for (size_t i = 0; i < s->m->nskills; i++)
		if (asked[i].open && !str_eq(s->m->skills[i].id, d->skill))
			ids[n++] = s->m->skills[i].id;
	near = likely_word(d->skill, ids, n);
	r = seek_replace(s, d->pos, d->skill, near);
	if (!r)
		return;
	r->names_cause = false;
	r->say = str_format(s->arena, "write %.*s if that is what %.*s assesses",
	    STR_ARG(near), STR_ARG(d->assignment));
}

/* Whether something else is found wrong with a line. */
static bool has_other(const struct seeker *s, struct pos pos)
{
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (!d->waived && !seek_is_teaching(d) && d->pos.file == pos.file &&
		    d->pos.line == pos.line)
			return true;
	}
	return false;
}

/* A need that is wrong by more than that nothing meets it: without it. Which skill is
 * meant nobody knows, so that the finding's own repair stands. */
static void seek_needless(struct seeker *s)
{
	const struct finding *d = seek_finding(s);

	for (size_t i = 0; i <= d->nrelated && i <= NEEDS_MOST; i++) {
		struct pos pos = i ? d->related[i - 1].pos : d->pos;
		struct edit e = { EDIT_DROP, pos.file, pos.line, { 0 }, 0 };

		/* A circle lists its first need too. */
		if (pos.line && (!i || pos_cmp(pos, d->pos)) && has_other(s, pos))
			seek_add(s, &e, 1);
	}
}

void seek_other_skills(struct seeker *s)
{
	enum finding_name name = seek_finding(s)->name;

	if (name == FINDING_ASSESSED_TOO_EARLY)
		seek_meant(s);
	else if (name == FINDING_UNTAUGHT_SKILL || name == FINDING_NEEDS_LOOP)
		seek_needless(s);
}
