#include "read/record.h"

static bool is_title(const struct block *b)
{
	return b->kind == BLOCK_HEADING && b->level == 1;
}

struct record_file record_file_of(struct arena *a, uint32_t file, const struct block *v,
    size_t n)
{
	size_t ntitles = 0;
	struct record_title *titles;

	for (size_t i = 0; i < n; i++)
		ntitles += is_title(&v[i]);
	titles = arena_array(a, ntitles, sizeof *titles);
	for (size_t i = 0, k = 0; k < ntitles; i++)
		if (is_title(&v[i]))
			titles[k++] = (struct record_title){ (uint32_t)i, v[i].pos, v[i].text };
	return (struct record_file){ file, v, n, titles, ntitles };
}

/* Where the line of a plain block begins: the place of a fact is that of the two stars
 * before its key. */
static const char *line_start(const struct block *b)
{
	return b->key.n ? b->key.p - 2 : b->text.p;
}

/* The place of byte p of the line of a plain block. */
static struct pos plain_pos(const struct block *b, const char *p)
{
	const char *start = line_start(b);
	struct pos pos = b->pos;

	pos.col += (uint32_t)str_chars((str){ start, (size_t)(p - start) });
	return pos;
}

struct pos block_pos(const struct block *b, size_t offset)
{
	const struct block_more *m = b->more;
	uint32_t i;
	struct pos p;

	if (!m)
		return plain_pos(b, b->text.p + offset);
	if (!m->nlines)
		return b->pos;
	for (i = m->nlines - 1; i && m->lines[i].offset > offset;)
		i--;
	p = m->lines[i].pos;
	p.col += (uint32_t)str_chars(str_sub(b->text, m->lines[i].offset, offset));
	return p;
}

struct pos block_key_pos(const struct block *b)
{
	return b->more ? b->more->key_pos : plain_pos(b, line_start(b) + 2);
}

struct spans block_spans(struct arena *a, const struct block *b)
{
	struct span *v;
	str whole;
	size_t end;

	if (b->more)
		return (struct spans){ b->more->spans, b->more->nspans };
	v = arena_array(a, 2, sizeof *v);
	whole = (str){ line_start(b), (size_t)(b->text.p + b->text.n - line_start(b)) };
	if (!str_starts(whole, STR("**"))) {
		v[0].text = whole;
		return (struct spans){ v, 1 };
	}
	end = str_find(whole, STR("**"), 2);
	v[0] = (struct span){ str_sub(whole, 2, end), SPAN_BOLD };
	v[1].text = str_sub(whole, end + 2, whole.n);
	return (struct spans){ v, 1 + (v[1].text.n > 0) };
}
