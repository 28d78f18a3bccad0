/* read/plain.h - the short way through passages that hold nothing but headings, facts,
 * list items and paragraphs of plain words, each on a line of its own. Only for read/md.c.
 *
 * Most of a large program is such lines, and for them the block list follows from the
 * line alone. Whatever is not surely plain goes through cmark; a test holds both ways
 * against each other. */
#ifndef READ_PLAIN_H
#define READ_PLAIN_H

#include "read/lines.h"

enum plain_kind {
	PLAIN_NOT,               /* not surely plain: ask cmark */
	PLAIN_BLANK, PLAIN_HEADING, PLAIN_BULLET, PLAIN_STEP,
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
};

/* What line s is, taken by itself, in a text that cuts_find accepts. */
struct plain_line plain_line(str s);

/* The lines, from 1, at which a text may be cut so that each stretch reads as it does in
 * its place. */
struct plain_cuts {
	uint32_t *v;
	size_t n;
};

/* Cuts before each heading written with '#' that is not inside a fence: nothing goes on
 * over such a line but what these texts do not have. False, and no cuts: the text has
 * link definitions, HTML, an indented fence or carriage returns. */
bool cuts_find(struct arena *a, const struct lines *l, struct plain_cuts *out);

#endif
