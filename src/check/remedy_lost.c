/* A file of an assignment that is missing: another one in its place, which teaches what is
 * asked for. Its kind and work nobody knows; as with any word that cannot be read, rules
 * of order are silent behind it. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* The bracket of a line in program.md, without its ends. */
static str bracket(str line)
{
	size_t open = str_find_char(line, '(', 0), end = line.n;

	while (end > open && line.p[end - 1] != ')')
		end--;
	return end > open ? str_sub(line, open + 1, end - 1) : (str){ 0 };
}

/* Whether a line of program.md stands wrong within its quarter, by what is found wrong: a
 * slip of its own. */
static bool is_plain_move(const struct seeker *s, const struct finding *d)
{
	const struct standing_wrong *w = d->wrong;
	const struct slot *k = w && w->mover != NONE && d->name == FINDING_UNTAUGHT_SKILL
	    ? seek_slot(s, s->m->assignments[w->mover].id) : NULL;
	uint32_t quarter;

	if (!k || !s->m->weeks)
		return false;
	quarter = s->m->courses[k->course].quarter;
	return w->week / s->m->weeks + 1 == quarter || w->end / s->m->weeks + 1 == quarter;
}

/* What findings ask for, and what nobody assesses: of that nothing is found before the
 * line of the file gives something. */
static bool *skills_asked(const struct seeker *s)
{
	const struct model *m = s->m;
	bool *skills = arena_array(s->arena, m->nskills + 1, sizeof *skills);

	for (size_t i = 0; i < m->nskills; i++)
		skills[i] = true;
	for (size_t i = 0; i < m->nassignments; i++)
		for (size_t k = 0; k < m->assignments[i].nteaches; k++) {
			const struct skill_at *t = &m->assignments[i].teaches[k];

			if (t->skill != NONE && t->level == SKILL_ASSESSED)
				skills[t->skill] = false;
		}
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (d->waived || is_plain_move(s, d) || (!seek_is_teaching(d->name) &&
		    d->name != FINDING_UNKNOWN_ASSIGNMENT))
			continue;
		for (size_t k = 0; k <= d->nrelated; k++) {
			uint32_t skill = seek_skill(s, k ? d->related[k - 1].skill : d->skill);

			if (skill != MAP_NONE)
				skills[skill] = true;
		}
	}
	return skills;
}

static void add_pictures(struct buf *b, const struct model *m)
{
	for (size_t i = 0; i < m->npictures; i++)
		if (!m->pictures[i].uses)
			buf_addf(b, "\n![as it was](../%.*s)\n", STR_ARG(m->pictures[i].path));
}

/* What a translation of the file says is dropped, but for its heading: there is nothing
 * that it could agree with. Their number, at most n. */
static size_t drop_translation(const struct seeker *s, struct pos pos, struct edit *v,
    size_t n)
{
	str text = s->m->sources->v[pos.file].text;
	size_t lines = text_count_lines(text), k = 0;

	for (pos.line++; pos.line <= lines && k < n; pos.line++) {
		if (str_starts(seek_line(s, pos), STR("# ")))
			break;
		v[k++] = (struct edit){ EDIT_DROP, pos.file, pos.line, { 0 }, 0 };
	}
	return k;
}

enum { DROPPED_MOST = 1000 };

void seek_lost(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct model *m = s->m;
	struct edit *v;
	struct buf b = { .arena = s->arena };
	size_t n = 0;
	str title;

	if (d->name != FINDING_UNKNOWN_ASSIGNMENT || !d->assignment.n || !m->nassignments ||
	    !m->sources)
		return;
	v = arena_array(s->arena, DROPPED_MOST + 1, sizeof *v);
	title = bracket(seek_line(s, d->pos));
	buf_addf(&b, "\n# %.*s: %.*s\n\n- **Kind:** as it was\n\n## Teaches\n\n%.*s\n\n## Drawing\n",
	    STR_ARG(d->assignment), STR_ARG(title.n ? title : d->assignment),
	    STR_ARG(seek_teaches(s, skills_asked(s))));
	add_pictures(&b, m);
	v[n] = (struct edit){ EDIT_ADD, m->assignments[0].pos.file, 0, buf_str(&b), 0 };
	v[n++].line = (uint32_t)text_count_lines(m->sources->v[v->file].text);
	for (size_t i = 0; i < d->nrelated; i++)
		if (d->related[i].listed && d->related[i].name == FINDING_UNKNOWN_TRANSLATION)
			n += drop_translation(s, d->related[i].pos, v + n, DROPPED_MOST + 1 - n);
	seek_add(s, v, n)->names_cause = true;
}
