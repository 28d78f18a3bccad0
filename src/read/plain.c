#include "read/plain.h"

#include <string.h>

enum plain_kind {
	PLAIN_NOT,               /* not surely plain: ask cmark */
	PLAIN_BLANK, PLAIN_HEADING, PLAIN_BULLET, PLAIN_STEP,
	PLAIN_FENCE,             /* opens one: three backticks and a word, which is the text */
	PLAIN_PARA               /* when a blank line or a heading stands before it, and a
	                          * blank line or the end of the stretch behind it */
};

struct plain_line {
	enum plain_kind kind;
	unsigned level;          /* of a heading */
	uint32_t number;         /* as written before a step */
	size_t at;               /* byte where the text begins */
	str text;                /* trimmed */
	bool bold_key;           /* a bullet "**Key:** value" or "**Key**: value" */
	size_t key_end;          /* of such a bullet: where in text the closing stars stand */
};

static bool alnum(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

/* What a byte can mean inside a line: something by itself, or something behind another
 * byte, whose first bit stands SECOND places lower. */
enum { ALONE = 1, BLANK = 2, BRACKET = 4, SECOND = 2 };

/* No byte that CommonMark gives a meaning inside a line, and no doubled blank. Brackets
 * have none without a parenthesis behind them: the text defines no links. */
static bool plain_words(str s)
{
	static const unsigned char means[256] = {
		['\\'] = ALONE, ['`'] = ALONE, ['*'] = ALONE, ['_'] = ALONE, ['<'] = ALONE,
		['>'] = ALONE, ['&'] = ALONE, ['\t'] = ALONE, ['\r'] = ALONE, ['\n'] = ALONE,
		[' '] = BLANK | BLANK << SECOND, [']'] = BRACKET, ['('] = BRACKET << SECOND,
	};
	unsigned before = 0, alone = 0, pair = 0;

	/* Nearly all lines are plain, so none is left early. */
	for (size_t i = 0; i < s.n; i++) {
		unsigned now = means[(unsigned char)s.p[i]];

		alone |= now & ALONE;
		pair |= before << SECOND & now;
		before = now;
	}
	return !(alone | pair);
}

/* Bytes before the first one that is not a digit. */
static size_t digits(str s)
{
	size_t n = 0;

	while (n < s.n && digit(s.p[n]))
		n++;
	return n;
}

/* "3. " would begin a list inside the item. */
static bool begins_list(str s)
{
	size_t n = digits(s);

	return n && n < s.n && (s.p[n] == '.' || s.p[n] == ')');
}

/* Whether stars between two bytes end bold words: a sign before them wants a blank behind. */
static bool ends_bold(char before, char after)
{
	return alnum(before) || (strchr(":.,;!?)", before) && after == ' ');
}

/* "**Words:** words": bold at the start of the line and nowhere else. Sets the key of a
 * bullet. */
static bool begins_bold(struct plain_line *l)
{
	str t = l->text;
	size_t end = str_find(t, STR("**"), 2);
	char before, after;

	if (t.n < 5 || end == t.n || end < 3 || !alnum(t.p[2]))
		return false;
	before = t.p[end - 1];
	after = end + 2 < t.n ? t.p[end + 2] : ' ';
	l->bold_key = l->kind == PLAIN_BULLET && (before == ':' || after == ':');
	l->key_end = end;
	return ends_bold(before, after) && plain_words(str_sub(t, 2, end)) &&
	    plain_words(str_sub(t, end + 2, t.n));
}

/* Whether line s, whose text begins at l->at, is plain; its text. */
static bool words(struct plain_line *l, str s)
{
	l->text = str_trim(str_sub(s, l->at, s.n));
	if (!l->text.n || s.p[l->at] == ' ')
		return false;
	if (str_starts(l->text, STR("**")))
		return begins_bold(l);
	return alnum(l->text.p[0]) && !begins_list(l->text) && plain_words(l->text);
}

static struct plain_line heading(str s)
{
	struct plain_line l = { .kind = PLAIN_HEADING };

	while (l.level < s.n && s.p[l.level] == '#')
		l.level++;
	l.at = l.level + 1;
	l.text = str_trim(str_sub(s, l.at, s.n));
	if (l.level > 6 || l.at >= s.n || s.p[l.level] != ' ' || !l.text.n || s.p[l.at] == ' ' ||
	    l.text.p[l.text.n - 1] == '#' || !plain_words(l.text))
		l.kind = PLAIN_NOT;
	return l;
}

/* "```joint" */
static struct plain_line fence(str s)
{
	struct plain_line l = { .kind = PLAIN_FENCE, .at = 3, .text = str_sub(s, 3, s.n) };

	for (size_t i = 0; i < l.text.n; i++)
		if (!alnum(l.text.p[i]))
			l.kind = PLAIN_NOT;
	return l;
}

/* The kind of line s by its beginning, and where its text begins. */
static void begins(struct plain_line *l, str s)
{
	size_t n;

	if (s.p[0] == '-' && s.n > 2 && s.p[1] == ' ') {
		l->kind = PLAIN_BULLET;
		l->at = 2;
		return;
	}
	l->kind = PLAIN_PARA;
	n = digits(s);
	if (n && n < 9 && n + 2 < s.n && s.p[n] == '.' && s.p[n + 1] == ' ' &&
	    str_to_u32(str_sub(s, 0, n), &l->number)) {
		l->kind = PLAIN_STEP;
		l->at = n + 2;
	}
}

/* What line s, which is not empty, is by itself. */
static struct plain_line plain_line(str s)
{
	struct plain_line l = { .kind = PLAIN_BLANK };

	if (s.p[0] == '#')
		return heading(s);
	if (str_starts(s, STR("```")))
		return fence(s);
	begins(&l, s);
	if (!words(&l, s))
		l.kind = l.kind == PLAIN_PARA && !l.text.n ? PLAIN_BLANK : PLAIN_NOT;
	return l;
}

static bool is_fence(str line)
{
	return str_starts(line, STR("```")) || str_starts(line, STR("~~~"));
}

/* A fence that is open: its bytes and how many; c 0: none is. */
struct fence {
	char c;
	size_t count;
};

/* An info string with backticks opens no fence. */
static struct fence open_fence(str line)
{
	struct fence f = { line.p[0], 0 };

	while (f.count < line.n && line.p[f.count] == f.c)
		f.count++;
	if (f.c == '`' && str_find_char(line, '`', f.count) < line.n)
		f.c = 0;
	return f;
}

/* A closing fence has the same bytes, at least as many, and nothing after them. */
static bool closes(const struct fence *f, str line)
{
	size_t n = 0;

	while (n < line.n && line.p[n] == f->c)
		n++;
	return n >= f->count && !str_trim(str_sub(line, n, line.n)).n;
}

static bool is_heading(str line)
{
	size_t n = 0;

	while (n < line.n && line.p[n] == '#')
		n++;
	return n && n <= 6 && n < line.n && line.p[n] == ' ';
}

/* HTML, or a fence that is not at the left edge. */
static bool reaches_over(str line)
{
	str inner = str_trim_left(line);

	return inner.n && (inner.p[0] == '<' || (inner.p != line.p && is_fence(inner)));
}

static bool scan_cuts(struct arena *a, const struct lines *l, struct plain_cuts *out)
{
	static const bool may_matter[256] = {
		['#'] = true, ['`'] = true, ['~'] = true, ['<'] = true, [' '] = true, ['\t'] = true,
	};
	struct fence fence = { 0, 0 };
	size_t cap = 0;

	for (size_t line = 1; line <= l->n; line++) {
		str s;

		/* Nearly all lines begin with something else. */
		if (!may_matter[(unsigned char)l->text.p[l->starts[line - 1]]])
			continue;
		s = lines_at(l, line);
		if (reaches_over(s))
			return false;
		if (fence.c) {
			if (closes(&fence, s))
				fence.c = 0;
		} else if (is_fence(s)) {
			fence = open_fence(s);
		} else if (is_heading(s)) {
			*ARENA_PUSH(a, out->v, out->n, cap) = (uint32_t)line;
		}
	}
	return true;
}

/* Bytes looked at before a bracket and a colon, so that none is looked at too often. */
enum { LOOK_BACK = 200 };

/* Whether the bracket that closes at `at` surely ends no label of a link: it opens in the
 * same line, behind a word. A label begins its paragraph and has no bracket within. */
static bool is_no_label(str text, size_t at)
{
	size_t least = at > LOOK_BACK ? at - LOOK_BACK : 0, open = at;

	while (open > least && text.p[open] != '[' && text.p[open] != '\n')
		open--;
	if (text.p[open] != '[' || open == least || text.p[open - 1] == '\\')
		return false;
	for (size_t i = open; i > least && text.p[i - 1] != '\n'; i--)
		if (alnum(text.p[i - 1]) && !digit(text.p[i - 1]))
			return true;
	return false;
}

static bool defines_links(str text)
{
	size_t at = str_find(text, STR("]:"), 0);

	while (at < text.n && is_no_label(text, at))
		at = str_find(text, STR("]:"), at + 1);
	return at < text.n;
}

bool cuts_find(struct arena *a, const struct lines *l, struct plain_cuts *out)
{
	*out = (struct plain_cuts){ 0 };
	return !defines_links(l->text) && str_find_char(l->text, '\r', 0) == l->text.n &&
	    scan_cuts(a, l, out);
}

/* ---- blocks ---- */

/* The key as fact_key gives it, of a text of which the closing stars stand at `end`. */
static str key_before(str t, size_t end, size_t *value)
{
	str key = str_trim(str_sub(t, 2, end));

	*value = end + 2;
	if (str_ends(key, STR(":")))
		key.n--;
	else if (*value == t.n || t.p[*value] != ':')
		return (str){ 0 };
	if (*value < t.n && t.p[*value] == ':')
		++*value;
	*value = t.n - str_trim_left(str_sub(t, *value, t.n)).n;
	return str_trim(key);
}

str fact_key(str t, size_t *value)
{
	size_t end = str_starts(t, STR("**")) ? str_find(t, STR("**"), 2) : t.n;

	return end < t.n ? key_before(t, end, value) : (str){ 0 };
}

void fence_lines(struct arena *a, const struct lines *l, const struct block *b,
    struct block_more *m, size_t line)
{
	size_t cap = 0;
	struct text_line *v = NULL;
	str rest = b->text, part;

	for (; b->text.n && str_next(&rest, '\n', &part); line++) {
		str source = lines_at(l, line);
		size_t indent = source.n > part.n ? source.n - part.n : 0;

		v = arena_grow(a, v, m->nlines, m->nlines + 1u, &cap, sizeof *v);
		v[m->nlines++] = (struct text_line){ (uint32_t)(part.p - b->text.p),
			lines_pos(l, line, indent) };
	}
	m->lines = v;
}

static void add_block(struct blocks *r, const struct plain_line *l, size_t line,
    uint32_t number)
{
	static const enum block_kind kinds[] = {
		[PLAIN_HEADING] = BLOCK_HEADING, [PLAIN_BULLET] = BLOCK_BULLET,
		[PLAIN_STEP] = BLOCK_STEP, [PLAIN_PARA] = BLOCK_PARA,
	};
	struct block *b = ARENA_PUSH(r->arena, r->v, r->n, r->cap);
	size_t value;

	b->kind = kinds[l->kind];
	b->level = l->kind == PLAIN_HEADING ? l->level : l->kind != PLAIN_PARA;
	b->number = l->kind == PLAIN_STEP ? number : 0;
	b->pos = (struct pos){ r->lines->file, (uint32_t)line, (uint32_t)l->at + 1 };
	b->text = l->text;
	if (!l->bold_key)
		return;
	b->kind = BLOCK_FACT;
	b->key = key_before(l->text, l->key_end, &value);
	b->text = str_sub(l->text, value, l->text.n);
}

/* A paragraph goes on in the next line and takes up the one before it, unless a blank one
 * stands between or the line before is a heading. */
static bool runs_on(enum plain_kind before, enum plain_kind kind)
{
	if (before == PLAIN_PARA)
		return kind != PLAIN_BLANK;
	return kind == PLAIN_PARA && before != PLAIN_BLANK && before != PLAIN_HEADING &&
	    before != PLAIN_FENCE;
}

/* A fence that l opens in `line`. Returns the line that closes it, or 0 when none of those
 * before end surely does. */
static size_t add_fence(struct blocks *r, const struct plain_line *l, size_t line, size_t end)
{
	const uint32_t *starts = r->lines->starts;
	size_t last = line + 1;
	struct block_more *m;
	struct block *b;

	while (last < end && !str_starts(str_trim_left(lines_at(r->lines, last)), STR("```")))
		last++;
	if (last == end || !str_eq(lines_at(r->lines, last), STR("```")))
		return 0;
	b = ARENA_PUSH(r->arena, r->v, r->n, r->cap);
	m = arena_alloc(r->arena, sizeof *m);
	b->kind = BLOCK_FENCE;
	b->pos = m->key_pos = (struct pos){ r->lines->file, (uint32_t)line, 1 };
	b->key = l->text;
	b->text = (str){ r->lines->text.p + starts[line], starts[last - 1] - starts[line] };
	b->text.n -= b->text.n > 0;
	b->more = m;
	fence_lines(r->arena, r->lines, b, m, line + 1);
	return last;
}

static bool give_up(struct blocks *r, size_t kept)
{
	while (r->n > kept)
		r->v[--r->n] = (struct block){ 0 };
	return false;
}

/* A list goes on over blank lines, so its count does too. */
bool plain_read(struct blocks *r, size_t first, size_t end)
{
	size_t kept = r->n;
	enum plain_kind before = PLAIN_BLANK;
	bool counting = false;
	uint32_t number = 0;

	for (size_t line = first; line < end; line++) {
		str s = lines_at(r->lines, line);
		struct plain_line l;

		if (!s.n) {
			before = PLAIN_BLANK;
			continue;
		}
		l = plain_line(s);
		if (l.kind == PLAIN_NOT || runs_on(before, l.kind))
			return give_up(r, kept);
		before = l.kind;
		if (l.kind == PLAIN_BLANK)
			continue;
		if (l.kind == PLAIN_STEP)
			number = counting ? number + 1 : l.number;
		counting = l.kind == PLAIN_STEP;
		if (l.kind != PLAIN_FENCE)
			add_block(r, &l, line, number);
		else if (!(line = add_fence(r, &l, line, end)))
			return give_up(r, kept);
	}
	return true;
}
