/* read/lines.h - the lines of one source text, and faults of the raw bytes. */
#ifndef READ_LINES_H
#define READ_LINES_H

#include "base/finding.h"
#include "read/record.h"

struct lines {
	uint32_t file;
	str text;                /* what the parser sees; see lines_clean */
	uint32_t *starts;        /* offset of each line; starts[n] is the end */
	size_t n;
	size_t longest;          /* bytes of the longest line with its end */
};

/* Splits at LF, CR LF and lone CR. */
struct lines lines_split(struct arena *a, str text, uint32_t file);
/* Lines [first, end) that hold more than a line end: they have no more blocks. */
size_t lines_filled(const struct lines *l, size_t first, size_t end);
/* The place of byte `byte` (from 0) of a line, in characters. */
struct pos lines_pos(const struct lines *l, size_t line, size_t byte);
/* The place of an offset in the whole text. */
struct pos lines_pos_at(const struct lines *l, size_t offset);

/* Offset of the first byte that is not UTF-8, or text.n. */
size_t lines_bad_byte(str text);
/* Bytes of the control character at `at` of well-formed text, 0 when it is none. Tab, LF
 * and CR are none; those above ASCII (U+0080 to U+009F) are. */
size_t lines_control(str text, size_t at);

/* Reports encoding, control characters and over-long lines. False: the text is
 * not UTF-8 and nothing of it can be read. Otherwise l->text has blanks in place of
 * each control character and of each line that is too long, too deep in lists or in a
 * passage with too many brackets; all offsets are kept. */
bool lines_clean(struct arena *a, struct lines *l, struct findings *f);

/* Line `line` (from 1) without its line end. */
static inline str lines_at(const struct lines *l, size_t line)
{
	str s;

	if (line < 1 || line > l->n)
		return (str){ 0 };
	s = (str){ l->text.p + l->starts[line - 1], l->starts[line] - l->starts[line - 1] };
	while (s.n && (s.p[s.n - 1] == '\n' || s.p[s.n - 1] == '\r'))
		s.n--;
	return s;
}

#endif
