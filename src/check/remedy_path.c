/* Entry paths that begin in another quarter than is meant. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Whether a finding is about those who come by that path. */
static bool is_of_path(const struct finding *d, const struct entry *e)
{
	str mark = STR("those who come by ");
	size_t at = str_find(d->message, mark, 0);
	str rest = str_sub(d->message, at + mark.n, d->message.n);

	return at < d->message.n && str_find(rest, e->text, 0) < rest.n;
}

/* Of all that are, the first: one trial serves them all. */
static bool is_first(struct seeker *s, const struct entry *e)
{
	const struct finding *own = seek_finding(s);

	if (own->name == FINDING_PATH_NEEDS_ENTRY)
		return true;
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (d == own || d->waived || !is_of_path(d, e))
			continue;
		if (d->name == FINDING_PATH_NEEDS_ENTRY || seek_compare(s, d, own) < 0)
			return false;
	}
	return true;
}

/* The line with another first quarter in it. */
static str begin_in(const struct seeker *s, const struct entry *e, uint32_t quarter)
{
	str line = seek_line(s, e->pos), mark = STR("quarter ");
	size_t at = str_find(line, mark, seek_byte(line, e->pos.col)) + mark.n;
	size_t end = at + seek_digits(line, at).n;

	if (end == at || end > line.n)
		return (str){ 0 };
	return str_format(s->arena, "%.*s%u%.*s", STR_ARG(str_sub(line, 0, at)), quarter,
	    STR_ARG(str_sub(line, end, line.n)));
}

static void add_quarter(struct seeker *s, const struct entry *e, uint32_t quarter)
{
	struct edit edit = { EDIT_REPLACE, e->pos.file, e->pos.line,
		begin_in(s, e, quarter), 0 };
	bool named = seek_finding(s)->name == FINDING_PATH_NEEDS_ENTRY;
	struct remedy *r;

	if (!edit.text.n)
		return;
	r = seek_add(s, &edit, 1);
	r->names_cause = named;
	r->say = named ? str_format(s->arena, "%.*s; or let \"%.*s\" begin in quarter %u",
	    STR_ARG(seek_finding(s)->repair), STR_ARG(e->text), quarter)
	    : str_format(s->arena, "let \"%.*s\" begin in quarter %u, or name at Entry what "
	    "those who come by it bring", STR_ARG(e->text), quarter);
}

void seek_paths(struct seeker *s)
{
	for (size_t i = 0; i < s->m->nentries; i++) {
		const struct entry *e = &s->m->entries[i];

		if (!e->nquarters || !is_of_path(seek_finding(s), e) || !is_first(s, e))
			continue;
		for (uint32_t q = 1; q <= s->m->nquarters; q++)
			if (q != e->quarters[0])
				add_quarter(s, e, q);
	}
}
