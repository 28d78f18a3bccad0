#include "read/plain.h"

#include <string.h>

/* Bytes looked at in one step. */
enum { STEP = 64 };

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
	return ends_bold(before, after) && plain_words(str_sub(t, 2, end)) &&
	    plain_words(str_sub(t, end + 2, t.n));
}

/* A line whose text begins at l.at, or PLAIN_NOT. */
static struct plain_line words(struct plain_line l, str s)
{
	bool plain;

	l.text = str_trim(str_sub(s, l.at, s.n));
	if (!l.text.n || s.p[l.at] == ' ')
		plain = false;
	else if (str_starts(l.text, STR("**")))
		plain = begins_bold(&l);
	else
		plain = alnum(l.text.p[0]) && !begins_list(l.text) && plain_words(l.text);
	return plain ? l : (struct plain_line){ .kind = PLAIN_NOT };
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
		l.kind = PLAIN_BULLET;
		l.at = 2;
		return words(l, s);
	}
	n = digits(s);
	if (n && n < 9 && n + 2 < s.n && s.p[n] == '.' && s.p[n + 1] == ' ' &&
	    str_to_u32(str_sub(s, 0, n), &l.number)) {
		l.kind = PLAIN_STEP;
		l.at = n + 2;
		return words(l, s);
	}
	if (!str_trim(s).n)
		return l;
	l.kind = PLAIN_PARA;
	return words(l, s);
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
