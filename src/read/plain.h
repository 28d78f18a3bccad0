/* read/plain.h - the short way through files that hold nothing but headings, facts and
 * list items of plain words on lines of their own. Only for read/md.c.
 *
 * Most of a large program is such lines, and for them the block list follows from the
 * line alone. Whatever is not surely plain goes through cmark; a test holds both ways
 * against each other. */
#ifndef READ_PLAIN_H
#define READ_PLAIN_H

#include "base/str.h"

enum plain_kind {
	PLAIN_NOT,               /* not surely plain: ask cmark */
	PLAIN_BLANK, PLAIN_HEADING, PLAIN_BULLET, PLAIN_STEP
};

struct plain_line {
	enum plain_kind kind;
	unsigned level;          /* of a heading */
	uint32_t number;         /* as written before a step */
	size_t at;               /* byte where the text begins */
	str text;                /* trimmed */
	bool bold_key;           /* "**Key:** value" or "**Key**: value" */
	size_t key_end;          /* in text, where the closing '**' stands */
};

/* What line s is, taken by itself. */
struct plain_line plain_line(str s);

/* Whether a text may be cut before each line that begins with "# ": no link
 * definition, no HTML, no indented fence. Such things reach over the cut. */
bool plain_cuttable(str text);
/* The end of the stretch that begins at `from`: the next line that begins with "# " and
 * is not inside a fence, or the end of the text. */
size_t plain_next_cut(str text, size_t from);

#endif
