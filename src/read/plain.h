/* read/plain.h - the short way through passages that hold nothing but headings, facts,
 * list items and paragraphs of plain words, each on a line of its own, and fences. Only
 * for read/md.c.
 *
 * Most of a large program is such lines, and for them the block list follows from the
 * line alone. Whatever is not surely plain goes through cmark; a test holds both ways
 * against each other. */
#ifndef READ_PLAIN_H
#define READ_PLAIN_H

#include "read/lines.h"

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

/* Blocks of a text in the making. */
struct blocks {
	struct arena *arena;
	const struct lines *lines;
	struct block *v; size_t n, cap;
};

/* Reads lines [first, end) of a text that cuts_find accepts, which begin with a heading
 * and end with the text or before another. False: some line is not surely plain, and
 * nothing was kept. */
bool plain_read(struct blocks *b, size_t first, size_t end);

/* "**Key:** value" and "**Key**: value": the key, and where the value begins; an empty
 * key: the bullet is no fact. */
str fact_key(str text, size_t *value);
/* Notes the lines of the text of fence b, the first of which is `line`, in m. */
void fence_lines(struct arena *a, const struct lines *l, const struct block *b,
    struct block_more *m, size_t line);

#endif
