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

/* What findings behind the line ask for, and what nobody assesses: of that nothing is found
 * before the line of the file gives something. */
static bool *skills_asked(struct seeker *s, const struct slot *lost)
{
	const struct model *m = s->m;
	const struct finding *d = seek_finding(s);
	bool *skills = arena_array(s->arena, m->nskills + 1, sizeof *skills);

	for (size_t i = 0; i < m->nskills; i++)
		skills[i] = true;
	for (size_t i = 0; i < m->nassignments; i++)
		for (size_t k = 0; k < m->assignments[i].nteaches; k++) {
			const struct skill_at *t = &m->assignments[i].teaches[k];

			if (t->skill != NONE && t->level == SKILL_ASSESSED)
				skills[t->skill] = false;
		}
	for (size_t i = 0; i < m->nskills; i++) {
		const struct asked *k = &seek_asked(s)[i];

		skills[i] |= k->open && (!k->first || seek_before(m, lost, k->first));
	}
	for (size_t k = 0; k < d->nrelated; k++) {
		uint32_t skill = seek_skill(s, d->related[k].skill);

		if (skill != MAP_NONE)
			skills[skill] = true;
	}
	return skills;
}

static void add_pictures(struct buf *b, const struct model *m)
{
	for (size_t i = 0; i < m->npictures; i++)
		if (!m->pictures[i].uses)
			buf_addf(b, "\n![as it was](../%.*s)\n", STR_ARG(m->pictures[i].path));
}

enum { DROPPED_MOST = 1000 };

/* Edits in the making; drops past the room for them are left out. */
struct draft {
	struct edit v[DROPPED_MOST + 1];
	size_t n;
};

/* Drops the lines of a source behind a place, to the next heading of an assignment. */
static void drop_below(const struct seeker *s, struct pos pos, struct draft *d)
{
	str text = s->m->sources->v[pos.file].text, line;

	text = text_lines(text, ++pos.line, UINT32_MAX - 1);
	for (; text.n && d->n < DROPPED_MOST; pos.line++) {
		str_next(&text, '\n', &line);
		if (str_starts(line, STR("# ")))
			return;
		d->v[d->n++] = (struct edit){ EDIT_DROP, pos.file, pos.line, { 0 }, 0 };
	}
}

/* The slot of a line of program.md at a place; null: there is none. */
static const struct slot *slot_at(const struct model *m, struct pos pos)
{
	for (size_t i = 0; i < m->nslots; i++)
		if (!pos_cmp(m->slots[i].pos, pos))
			return &m->slots[i];
	return NULL;
}

/* The line of program.md that gives nothing, by a finding of it or one that lists it. */
static bool find_line(const struct finding *d, str *id, struct pos *pos)
{
	*id = d->assignment;
	*pos = d->pos;
	if (d->name == FINDING_UNKNOWN_ASSIGNMENT)
		return true;
	for (size_t i = 0; i < d->nrelated; i++)
		if (d->related[i].listed && d->related[i].name == FINDING_UNKNOWN_ASSIGNMENT) {
			*id = d->related[i].assignment;
			*pos = d->related[i].pos;
			return true;
		}
	return false;
}

static str new_sheet(struct seeker *s, const struct slot *lost, str heading)
{
	struct buf b = { .arena = s->arena };

	buf_addf(&b, "\n%.*s\n\n- **Kind:** as it was\n\n## Teaches\n\n%.*s\n\n## Drawing\n",
	    STR_ARG(heading), STR_ARG(seek_teaches(s, skills_asked(s, lost))));
	add_pictures(&b, s->m);
	return buf_str(&b);
}

/* As the bracket in program.md has it, so that this is not found stale. */
static str heading_of(const struct seeker *s, str id, struct pos pos)
{
	str title = bracket(seek_line(s, pos));

	return str_format(s->arena, "# %.*s: %.*s", STR_ARG(id),
	    STR_ARG(title.n ? title : STR("As it was")));
}

/* Of a translation only the heading is left: there is nothing that it could agree with. */
static void drop_translation(const struct seeker *s, struct pos pos, str heading,
    struct draft *d)
{
	if (d->n == DROPPED_MOST)
		return;
	d->v[d->n++] = (struct edit){ EDIT_REPLACE, pos.file, pos.line, heading, 0 };
	drop_below(s, pos, d);
}

/* It comes behind another sheet, or in the place of one that cannot be read. */
void seek_lost(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct model *m = s->m;
	struct draft *v;
	struct edit e = { .kind = EDIT_ADD };
	const struct slot *lost;
	struct pos pos;
	str id, heading;

	if (!m->nassignments || !m->sources || !find_line(d, &id, &pos) || !id.n ||
	    d->pos.file >= m->sources->n)
		return;
	lost = slot_at(m, pos);
	if (!lost)
		return;
	v = arena_alloc(s->arena, sizeof *v);
	e.file = m->assignments[0].pos.file;
	if (d->name != FINDING_UNKNOWN_ASSIGNMENT) {
		e.file = d->pos.file;
		drop_below(s, (struct pos){ e.file, 0, 1 }, v);
	}
	e.line = (uint32_t)text_count_lines(m->sources->v[e.file].text);
	heading = heading_of(s, id, pos);
	e.text = new_sheet(s, lost, heading);
	for (size_t i = 0; i < d->nrelated; i++)
		if (d->related[i].listed && d->related[i].name == FINDING_UNKNOWN_TRANSLATION)
			drop_translation(s, d->related[i].pos, heading, v);
	v->v[v->n++] = e;
	seek_add(s, v->v, v->n)->names_cause = true;
}
