#include "read/lines.h"

#include "read/md.h"

#include <string.h>

/* Findings of one nature in one file; more would bury the rest of the report. */
enum { TOLD_MOST = 20 };

struct lines lines_split(struct arena *a, str text, uint32_t file)
{
	struct lines l = { .file = file, .text = text };
	size_t cap = 0;

	l.starts = arena_grow(a, NULL, 0, text.n / 32 + 2, &cap, sizeof *l.starts);
	for (size_t i = 0; i < text.n; l.n++) {
		size_t lf = str_find_char(text, '\n', i), cr = str_find_char(str_sub(text, 0, lf), '\r', i);

		l.starts = arena_grow(a, l.starts, l.n, l.n + 2, &cap, sizeof *l.starts);
		l.starts[l.n] = (uint32_t)i;
		i = cr + 1 < lf ? cr + 1 : lf + 1;
	}
	l.starts[l.n] = (uint32_t)text.n;
	return l;
}

str lines_at(const struct lines *l, size_t line)
{
	str s;

	if (line < 1 || line > l->n)
		return (str){ 0 };
	s = str_sub(l->text, l->starts[line - 1], l->starts[line]);
	while (s.n && (s.p[s.n - 1] == '\n' || s.p[s.n - 1] == '\r'))
		s.n--;
	return s;
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

/* Offset of the first byte that is not UTF-8, or text.n. */
static size_t first_bad_byte(str text)
{
	const unsigned char *s = (const unsigned char *)text.p;

	for (size_t i = 0; i < text.n;) {
		size_t n;

		if (s[i] < 0x80) {
			i++;
			continue;
		}
		n = utf8_length(s + i, text.n - i);
		if (!n)
			return i;
		i += n;
	}
	return text.n;
}

static bool is_control(unsigned char c)
{
	return (c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0x7F;
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

static void report_control(struct findings *f, const struct lines *l, size_t at, bool last)
{
	struct finding *d = finding_add(f, FINDING_CONTROL_CHARACTER, lines_pos_at(l, at),
	    "a control character (code %u) stands here; it is read as a blank%s",
	    (unsigned)(unsigned char)l->text.p[at], last ? "; further ones are not listed" : "");

	finding_repair(f, d, "delete it, or save the file as plain text");
}

static void blank_controls(struct arena *a, struct lines *l, struct findings *f, char **copy)
{
	size_t told = 0;

	for (size_t i = 0; i < l->text.n; i++) {
		if (!is_control((unsigned char)l->text.p[i]))
			continue;
		if (told++ < TOLD_MOST)
			report_control(f, l, i, told == TOLD_MOST);
		own_text(a, l, copy)[i] = ' ';
	}
}

static void blank_long_lines(struct arena *a, struct lines *l, struct findings *f, char **copy)
{
	for (size_t line = 1; line <= l->n; line++) {
		str s = lines_at(l, line);
		struct finding *d;

		if (s.n <= MD_LINE_MOST)
			continue;
		d = finding_add(f, FINDING_OVER_LIMIT, lines_pos(l, line, 0),
		    "this line is longer than 64 KiB; it is left out");
		finding_repair(f, d, "break the line");
		memset(own_text(a, l, copy) + l->starts[line - 1], ' ', s.n);
	}
}

bool lines_clean(struct arena *a, struct lines *l, struct findings *f)
{
	size_t bad = first_bad_byte(l->text);
	char *copy = NULL;

	if (bad < l->text.n) {
		struct finding *d = finding_add(f, FINDING_NOT_UTF8, lines_pos_at(l, bad),
		    "this file is not UTF-8 from here on; nothing in it was read");

		finding_repair(f, d, "save it again with the encoding UTF-8");
		return false;
	}
	blank_controls(a, l, f, &copy);
	blank_long_lines(a, l, f, &copy);
	return true;
}
