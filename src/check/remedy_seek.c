/* What all that look for remedies ask of the sources and of the program. */
#include "check/remedy_seek.h"

#include "base/buf.h"

const struct finding *seek_finding(const struct seeker *s)
{
	return &s->f->v[s->finding];
}

struct remedy *seek_add(struct seeker *s, const struct edit *v, size_t n)
{
	struct remedy *r = ARENA_PUSH(s->arena, s->out->v, s->out->n, s->out->cap);

	*r = (struct remedy){ .finding = s->finding, .turn = s->turn++,
		.edits = arena_array_of(s->arena, v, n, sizeof *v), .nedits = n };
	return r;
}

str seek_line(const struct seeker *s, struct pos pos)
{
	const struct sources *all = s->m->sources;

	return all && pos.file < all->n ? text_line_at(all->v[pos.file].text, pos.line)
	    : (str){ 0 };
}

size_t seek_byte(str line, uint32_t col)
{
	size_t at = 0;

	/* Columns count characters. */
	for (uint32_t i = 1; i < col && at < line.n; i++) {
		at++;
		while (at < line.n && ((unsigned char)line.p[at] & 0xc0) == 0x80)
			at++;
	}
	return at;
}

/* The line with that word changed; empty when it does not stand there. */
static str replaced(const struct seeker *s, struct pos pos, str wrong, str right)
{
	str line = seek_line(s, pos);
	size_t at = str_find(line, wrong, seek_byte(line, pos.col));

	if (!wrong.n || !right.n || at >= line.n)
		return (str){ 0 };
	return str_format(s->arena, "%.*s%.*s%.*s", STR_ARG(str_sub(line, 0, at)),
	    STR_ARG(right), STR_ARG(str_sub(line, at + wrong.n, line.n)));
}

struct remedy *seek_replace(struct seeker *s, struct pos pos, str wrong, str right)
{
	struct edit e = { EDIT_REPLACE, pos.file, pos.line,
		replaced(s, pos, wrong, right), 0 };
	struct remedy *r = e.text.n ? seek_add(s, &e, 1) : NULL;

	if (r)
		r->names_cause = true;
	return r;
}

str seek_digits(str line, size_t from)
{
	size_t to = from;

	while (to < line.n && line.p[to] >= '0' && line.p[to] <= '9')
		to++;
	return str_sub(line, from, to);
}

bool seek_is_in(const struct seeker *s, struct pos pos, const char *path)
{
	const struct sources *all = s->m->sources;

	return all && pos.file < all->n && str_starts(all->v[pos.file].path, str_of(path));
}

uint32_t seek_skill(const struct seeker *s, str id)
{
	return id.n ? map_find(s->m->skill_by_id, id) : MAP_NONE;
}

static const struct slot **slots_by_assignment(const struct seeker *s)
{
	const struct model *m = s->m;
	const struct slot **v = arena_array(s->arena, m->nassignments + 1, sizeof *v);

	for (size_t i = m->nslots; i-- > 0; )
		if (m->slots[i].assignment != NONE)
			v[m->slots[i].assignment] = &m->slots[i];
	return v;
}

const struct slot *seek_slot_of(struct seeker *s, uint32_t who)
{
	if (!s->slots)
		s->slots = slots_by_assignment(s);
	return who < s->m->nassignments ? s->slots[who] : NULL;
}

const struct slot *seek_slot(struct seeker *s, str id)
{
	return seek_slot_of(s, id.n ? map_find(s->m->assignment_by_id, id) : NONE);
}

bool seek_before(const struct model *m, const struct slot *a, const struct slot *b)
{
	uint32_t qa = m->courses[a->course].quarter, qb = m->courses[b->course].quarter;

	if (qa != qb)
		return qa < qb;
	return a->week != b->week ? a->week < b->week : a < b;
}

const struct assignment *seek_assignment(const struct seeker *s)
{
	str id = seek_finding(s)->assignment;
	uint32_t at = id.n ? map_find(s->m->assignment_by_id, id) : MAP_NONE;

	return at == MAP_NONE ? NULL : &s->m->assignments[at];
}

uint32_t seek_last_line(const struct seeker *s, const struct assignment *a)
{
	uint32_t last = (uint32_t)text_count_lines(s->m->sources->v[a->pos.file].text);

	for (size_t i = 0; i < s->m->nassignments; i++) {
		struct pos pos = s->m->assignments[i].pos;

		if (pos.file == a->pos.file && pos.line > a->pos.line && pos.line <= last)
			last = pos.line - 1;
	}
	return last;
}

str seek_sheet(const struct seeker *s, const struct assignment *a)
{
	return text_lines(s->m->sources->v[a->pos.file].text, a->pos.line,
	    seek_last_line(s, a));
}

uint32_t seek_section(const struct seeker *s, const struct assignment *a, str name)
{
	str sheet = seek_sheet(s, a), text;
	uint32_t line = a->pos.line;
	bool fence = false;

	for (; str_next(&sheet, '\n', &text); line++) {
		fence ^= str_starts(text, STR("```"));
		if (!fence && str_starts(text, STR("## ")) &&
		    str_eq_nocase(str_trim(str_sub(text, 3, text.n)), name))
			return line;
	}
	return 0;
}

str seek_said(const struct seeker *s, const struct assignment *a, str key)
{
	struct pos pos = assignment_fact_pos(a, key);
	str line = seek_line(s, pos);

	return pos.line == a->pos.line ? (str){ 0 }
	    : str_trim(str_sub(line, seek_byte(line, pos.col), line.n));
}

uint32_t seek_total(const struct assignment *a)
{
	uint32_t total = 0;

	for (size_t i = 0; i < a->ngrades; i++)
		total += a->grades[i].weight;
	return total;
}
