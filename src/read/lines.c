#include "read/lines.h"

#include "read/md.h"

#include <string.h>

/* Findings of one nature in one file; more would bury the rest of the report. */
enum { TOLD_MOST = 20 };

/* The Markdown reader takes time by the square of the brackets in one passage, and by
 * lines times depth of lists: tried with cmark 0.30.2, 160,000 brackets take minutes. */
enum { BRACKETS_MOST = 1000, SIGNS_MOST = 100 };

/* Bytes looked at in one step where most need no closer look. */
enum { STEP = 64 };

/* One past the end of the line that begins at i. */
static size_t line_end(str text, size_t i, bool returns)
{
	size_t lf = str_find_char(text, '\n', i), cr;

	if (!returns)
		return lf + 1;
	cr = str_find_char(str_sub(text, 0, lf), '\r', i);
	return cr + 1 < lf ? cr + 1 : lf + 1;
}

struct lines lines_split(struct arena *a, str text, uint32_t file)
{
	struct lines l = { .file = file, .text = text };
	bool returns = str_find_char(text, '\r', 0) < text.n;
	size_t cap = 0;

	l.starts = arena_grow(a, NULL, 0, text.n / 16 + 2, &cap, sizeof *l.starts);
	for (size_t i = 0, end; i < text.n; i = end) {
		if (l.n + 2 > cap)
			l.starts = arena_grow(a, l.starts, l.n, l.n + 2, &cap, sizeof *l.starts);
		end = line_end(text, i, returns);
		l.starts[l.n++] = (uint32_t)i;
		if (end - i > l.longest)
			l.longest = end - i;
	}
	l.starts[l.n] = (uint32_t)text.n;
	return l;
}

size_t lines_filled(const struct lines *l, size_t first, size_t end)
{
	size_t n = 0;

	for (size_t line = first; line < end; line++)
		n += l->starts[line] - l->starts[line - 1] > 1;
	return n;
}

struct pos lines_pos(const struct lines *l, size_t line, size_t byte)
{
	str s = lines_at(l, line);

	return (struct pos){ l->file, (uint32_t)line,
		(uint32_t)str_chars(str_sub(s, 0, byte)) + 1 };
}

struct pos lines_pos_at(const struct lines *l, size_t offset)
{
	size_t lo = 0, hi = l->n;

	while (hi - lo > 1) {
		size_t mid = lo + (hi - lo) / 2;

		if (l->starts[mid] <= offset)
			lo = mid;
		else
			hi = mid;
	}
	return lines_pos(l, lo + 1, offset - l->starts[lo]);
}

/* Length of the well-formed UTF-8 sequence at s (RFC 3629), 0 if there is none. */
static size_t utf8_length(const unsigned char *s, size_t n)
{
	static const struct { unsigned char lo, hi, second_lo, second_hi, length; } rows[] = {
		{ 0x00, 0x7F, 0, 0, 1 },          { 0xC2, 0xDF, 0x80, 0xBF, 2 },
		{ 0xE0, 0xE0, 0xA0, 0xBF, 3 },    { 0xE1, 0xEC, 0x80, 0xBF, 3 },
		{ 0xED, 0xED, 0x80, 0x9F, 3 },    { 0xEE, 0xEF, 0x80, 0xBF, 3 },
		{ 0xF0, 0xF0, 0x90, 0xBF, 4 },    { 0xF1, 0xF3, 0x80, 0xBF, 4 },
		{ 0xF4, 0xF4, 0x80, 0x8F, 4 },
	};

	for (size_t r = 0; r < sizeof rows / sizeof *rows; r++) {
		size_t length = rows[r].length;

		if (s[0] < rows[r].lo || s[0] > rows[r].hi)
			continue;
		if (length > n)
			return 0;
		if (length > 1 && (s[1] < rows[r].second_lo || s[1] > rows[r].second_hi))
			return 0;
		for (size_t i = 2; i < length; i++)
			if ((s[i] & 0xC0) != 0x80)
				return 0;
		return length;
	}
	return 0;
}

/* Whether STEP bytes are printing ASCII characters and line ends. Without a branch, so
 * that the compiler can look at many at once. */
static bool is_printing(const char *p)
{
	unsigned char odd = 0;

	for (size_t i = 0; i < STEP; i++) {
		unsigned char c = (unsigned char)p[i];

		odd = (unsigned char)(odd | ((c < 0x20) & (c != '\n')) | (c >= 0x7F));
	}
	return !odd;
}

/* The first place at or after i that is not surely a printing ASCII character or a line
 * end: most of a text needs no closer look. */
static size_t skip_printing(str text, size_t i)
{
	while (i + STEP <= text.n && is_printing(text.p + i))
		i += STEP;
	while (i < text.n && ((text.p[i] >= 0x20 && text.p[i] < 0x7F) || text.p[i] == '\n'))
		i++;
	return i;
}

size_t lines_control(str text, size_t at)
{
	unsigned char c = (unsigned char)text.p[at];
	unsigned char next = at + 1 < text.n ? (unsigned char)text.p[at + 1] : 0;

	if (c == 0xC2 && next >= 0x80 && next <= 0x9F)
		return 2;
	return (c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0x7F;
}

/* The first byte that is not UTF-8; *control is the first control character before it. Each
 * is text.n when there is none. */
static size_t scan_odd(str text, size_t *control)
{
	const unsigned char *s = (const unsigned char *)text.p;

	*control = text.n;
	for (size_t i = 0; (i = skip_printing(text, i)) < text.n;) {
		size_t n = utf8_length(s + i, text.n - i);

		if (!n)
			return i;
		if (*control == text.n && lines_control(text, i))
			*control = i;
		i += n;
	}
	return text.n;
}

size_t lines_bad_byte(str text)
{
	size_t control;

	return scan_odd(text, &control);
}

/* The text as our own copy, made at the first change. */
static char *own_text(struct arena *a, struct lines *l, char **copy)
{
	if (!*copy) {
		*copy = arena_copy(a, l->text.p, l->text.n);
		l->text.p = *copy;
	}
	return *copy;
}

static void report_control(struct findings *f, const struct lines *l, size_t at, size_t n,
    bool last)
{
	struct finding *d = finding_add(f, FINDING_CONTROL_CHARACTER, lines_pos_at(l, at),
	    "a control character (code %u) stands here; it is read as a blank%s",
	    (unsigned)(unsigned char)l->text.p[at + n - 1], last ? "; further ones are not listed" : "");

	finding_repair(f, d, "delete it, or save the file as plain text");
}

/* From byte `from` on. */
static void blank_controls(struct arena *a, struct lines *l, size_t from, struct findings *f,
    char **copy)
{
	size_t told = 0;

	for (size_t i = from, n; (i = skip_printing(l->text, i)) < l->text.n; i++) {
		n = lines_control(l->text, i);
		if (!n)
			continue;
		if (told++ < TOLD_MOST)
			report_control(f, l, i, n, told == TOLD_MOST);
		/* One of two bytes becomes a no-break space, so that columns stay. */
		own_text(a, l, copy)[i + n - 1] = n == 2 ? '\xA0' : ' ';
	}
}

static void blank_line(struct arena *a, struct lines *l, size_t line, char **copy)
{
	memset(own_text(a, l, copy) + l->starts[line - 1], ' ', lines_at(l, line).n);
}

/* With its line end; enough to pass over the many short lines. */
static size_t line_bytes(const struct lines *l, size_t line)
{
	return l->starts[line] - l->starts[line - 1];
}

static void blank_long_lines(struct arena *a, struct lines *l, struct findings *f,
    char **copy)
{
	for (size_t line = 1; line <= l->n; line++) {
		struct finding *d;

		if (line_bytes(l, line) <= MD_LINE_MOST || lines_at(l, line).n <= MD_LINE_MOST)
			continue;
		d = finding_add(f, FINDING_OVER_LIMIT, lines_pos(l, line, 0),
		    "this line is longer than 64 KiB; it is left out");
		finding_repair(f, d, "break the line");
		blank_line(a, l, line, copy);
	}
}

/* Length of the blank, quote sign or list sign at s[i]; 0 when none is there. */
static size_t sign_length(str s, size_t i)
{
	size_t end = i;

	if (i >= s.n)
		return 0;
	if (s.p[i] == ' ' || s.p[i] == '\t' || s.p[i] == '>')
		return 1;
	while (end < s.n && s.p[end] >= '0' && s.p[end] <= '9')
		end++;
	if (end == s.n || !strchr(end > i ? ".)" : "-+*", s.p[end]))
		return 0;
	end++;
	return end == s.n || s.p[end] == ' ' || s.p[end] == '\t' ? end - i : 0;
}

static size_t signs_length(str s)
{
	size_t i = 0;

	for (size_t n; (n = sign_length(s, i));)
		i += n;
	return i;
}

static void blank_deep_lines(struct arena *a, struct lines *l, struct findings *f,
    char **copy)
{
	size_t told = 0;

	for (size_t line = 1; line <= l->n; line++) {
		str s = line_bytes(l, line) > SIGNS_MOST ? lines_at(l, line) : (str){ 0 };
		struct finding *d;

		if (s.n <= SIGNS_MOST || !str_trim(s).n || signs_length(s) <= SIGNS_MOST)
			continue;
		if (told++ < TOLD_MOST) {
			d = finding_add(f, FINDING_OVER_LIMIT, lines_pos(l, line, 0),
			    "this line begins with more than 100 blanks and list signs; it is "
			    "left out%s", told == TOLD_MOST ? "; further ones are not listed" : "");
			finding_repair(f, d, "write it further to the left");
		}
		blank_line(a, l, line, copy);
	}
}

/* A line that cannot go on with the paragraph above it: empty, or a heading or an item
 * near its left edge. What only may begin something new goes on. */
static bool begins_passage(str s)
{
	str t = str_trim_left(s);
	size_t marks = 0;

	if (!t.n)
		return true;
	if (s.n - t.n > 3)
		return false;
	if (strchr("-+*", t.p[0]))
		return sign_length(t, 0) && str_trim(str_sub(t, 1, t.n)).n;
	while (marks < t.n && t.p[marks] == '#')
		marks++;
	return marks && marks <= 6 && (marks == t.n || t.p[marks] == ' ' || t.p[marks] == '\t');
}

static void blank_passage(struct arena *a, struct lines *l, size_t first, size_t last,
    struct findings *f, char **copy)
{
	struct finding *d = finding_add(f, FINDING_OVER_LIMIT, lines_pos(l, first, 0),
	    "more than 1,000 square brackets stand in this passage; it is left out");

	finding_repair(f, d, "break it up with empty lines");
	for (size_t line = first; line <= last; line++)
		blank_line(a, l, line, copy);
}

static bool few_brackets(str text)
{
	size_t n = 0;

	for (size_t at = 0; (at = str_find_char(text, '[', at)) < text.n; at++)
		if (++n > BRACKETS_MOST)
			return false;
	return true;
}

static void blank_brackets(struct arena *a, struct lines *l, struct findings *f,
    char **copy)
{
	size_t first = 1, n = 0;

	if (few_brackets(l->text))
		return;
	for (size_t line = 1; line <= l->n + 1; line++) {
		str s = lines_at(l, line);

		if (line > l->n || begins_passage(s)) {
			if (n > BRACKETS_MOST)
				blank_passage(a, l, first, line - 1, f, copy);
			first = str_trim(s).n ? line : line + 1;
			n = 0;
		}
		for (size_t at = 0; (at = str_find_char(s, '[', at)) < s.n; at++)
			n++;
	}
}

bool lines_clean(struct arena *a, struct lines *l, struct findings *f)
{
	size_t control, bad = scan_odd(l->text, &control);
	char *copy = NULL;

	if (bad < l->text.n) {
		struct finding *d = finding_add(f, FINDING_NOT_UTF8, lines_pos_at(l, bad),
		    "this file is not UTF-8 from here on; nothing in it was read");

		finding_repair(f, d, "save it again with the encoding UTF-8");
		return false;
	}
	blank_controls(a, l, control, f, &copy);
	if (l->longest > MD_LINE_MOST)
		blank_long_lines(a, l, f, &copy);
	if (l->longest > SIGNS_MOST)
		blank_deep_lines(a, l, f, &copy);
	blank_brackets(a, l, f, &copy);
	return true;
}
