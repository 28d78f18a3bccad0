#include "base/edit.h"

#include "base/buf.h"

size_t text_count_lines(str text)
{
	size_t n = 0;

	for (size_t at = 0; at < text.n; at = str_find_char(text, '\n', at) + 1)
		n++;
	return n;
}

/* Where a line begins. */
static size_t line_start(str text, uint32_t line)
{
	size_t at = 0;

	for (uint32_t i = 1; i < line && at < text.n; i++)
		at = str_find_char(text, '\n', at) + 1;
	return at;
}

str text_lines(str text, uint32_t from, uint32_t to)
{
	size_t at = line_start(text, from);
	str rest = str_sub(text, at, text.n);

	return from > to ? (str){ 0 } : str_sub(rest, 0, line_start(rest, to - from + 2));
}

str text_line_at(str text, uint32_t line)
{
	size_t at = line_start(text, line), end;

	if (!line)
		return (str){ 0 };
	end = str_find_char(text, '\n', at);
	if (end > at && end <= text.n && text.p[end - 1] == '\r')
		end--;
	return str_sub(text, at, end);
}

/* A text in the making. */
struct draft {
	struct buf text;
	struct edited *out;
	size_t cap;
};

static void put(struct draft *d, str lines, uint32_t origin)
{
	str line;

	do {
		size_t end = str_find_char(lines, '\n', 0);

		line = str_sub(lines, 0, end);
		buf_add(&d->text, line);
		buf_addc(&d->text, '\n');
		*ARENA_PUSH(d->text.arena, d->out->origin, d->out->nlines, d->cap) = origin;
		lines = str_sub(lines, end + 1, lines.n);
	} while (lines.n);
}

static void put_added(struct draft *d, uint32_t file, uint32_t line, const struct edit *v,
    size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == EDIT_ADD && v[i].file == file && v[i].line == line)
			put(d, v[i].text, v[i].origin);
}

/* What becomes of a line itself; null: it stays. */
static const struct edit *edit_of(uint32_t file, uint32_t line, const struct edit *v,
    size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (v[i].kind != EDIT_ADD && v[i].file == file && v[i].line == line)
			return &v[i];
	return NULL;
}

struct edited edits_apply(struct arena *a, const struct source *s, uint32_t file,
    const struct edit *v, size_t n)
{
	struct edited out = { .file = file };
	struct draft d = { .text = { .arena = a }, .out = &out };
	uint32_t line = 0;

	put_added(&d, file, 0, v, n);
	for (size_t at = 0, end; at < s->text.n; at = end + 1) {
		const struct edit *e = edit_of(file, ++line, v, n);

		end = str_find_char(s->text, '\n', at);
		if (!e)
			put(&d, str_sub(s->text, at, end), line);
		else if (e->kind == EDIT_REPLACE)
			put(&d, e->text, line);
		put_added(&d, file, line, v, n);
	}
	out.text = buf_str(&d.text);
	return out;
}
