#include "read/plain.h"

static bool alnum(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

/* No byte that CommonMark gives a meaning inside a line, and no doubled blank. */
static bool plain_words(str s)
{
	static const bool special[256] = {
		['\\'] = true, ['`'] = true, ['*'] = true, ['_'] = true, ['['] = true, [']'] = true,
		['<'] = true, ['>'] = true, ['&'] = true, ['\t'] = true, ['\r'] = true, ['\n'] = true,
	};
	char before = 0;

	for (size_t i = 0; i < s.n; i++) {
		char c = s.p[i];

		if (special[(unsigned char)c] || (c == ' ' && before == ' '))
			return false;
		before = c;
	}
	return true;
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

/* "**Key:** value": the flanking rules hold when letters stand inside the stars, and a
 * blank, a colon or the end behind them. */
static bool bold_key(struct plain_line *l)
{
	str t = l->text;
	size_t end = str_find(t, STR("**"), 2);
	char before, after;

	if (t.n < 5 || end == t.n || end < 3 || !alnum(t.p[2]))
		return false;
	before = t.p[end - 1];
	after = end + 2 < t.n ? t.p[end + 2] : ' ';
	if (!(before == ':' ? after == ' ' : alnum(before) && after == ':'))
		return false;
	l->bold_key = true;
	l->key_end = end;
	return plain_words(str_sub(t, 2, end)) && plain_words(str_sub(t, end + 2, t.n));
}

static struct plain_line item(struct plain_line l, str s, enum plain_kind kind)
{
	l.text = str_trim(str_sub(s, l.at, s.n));
	if (!l.text.n || s.p[l.at] == ' ')
		return (struct plain_line){ .kind = PLAIN_NOT };
	l.kind = kind;
	if (str_starts(l.text, STR("**")))
		return kind == PLAIN_BULLET && bold_key(&l) ? l : (struct plain_line){ .kind = PLAIN_NOT };
	if (!alnum(l.text.p[0]) || begins_list(l.text) || !plain_words(l.text))
		return (struct plain_line){ .kind = PLAIN_NOT };
	return l;
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

struct plain_line plain_line(str s)
{
	struct plain_line l = { .kind = PLAIN_BLANK };
	size_t n;

	if (!s.n)
		return l;
	if (s.p[0] == '#')
		return heading(s);
	if (s.p[0] == '-' && s.n > 2 && s.p[1] == ' ') {
		l.at = 2;
		return item(l, s, PLAIN_BULLET);
	}
	n = digits(s);
	if (n && n < 9 && n + 2 < s.n && s.p[n] == '.' && s.p[n + 1] == ' ' &&
	    str_to_u32(str_sub(s, 0, n), &l.number)) {
		l.at = n + 2;
		return item(l, s, PLAIN_STEP);
	}
	if (str_trim(s).n)
		l.kind = PLAIN_NOT;
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

bool cuts_find(struct arena *a, const struct lines *l, struct plain_cuts *out)
{
	*out = (struct plain_cuts){ 0 };
	return str_find(l->text, STR("]:"), 0) == l->text.n &&
	    str_find_char(l->text, '\r', 0) == l->text.n && scan_cuts(a, l, out);
}
