/* read/record.h - what a Markdown file says, before anyone knows what it means.
 *
 * A file becomes one flat list of blocks in source order. Headings carry their
 * level; what follows a heading belongs to it until the next one. Facts, bullets,
 * steps, paragraphs and fences keep the place of every character that a finding
 * may have to point at. Blocks live in the arena given to the reader; texts are
 * slices of the source where they stand on one line there. */
#ifndef READ_RECORD_H
#define READ_RECORD_H

#include "base/arena.h"
#include "base/text.h"

enum block_kind {
	BLOCK_HEADING,           /* level, text */
	BLOCK_FACT,              /* "- **Key:** value": key, text = value */
	BLOCK_BULLET,            /* any other bullet: text, spans */
	BLOCK_STEP,              /* ordered item: number, text, spans */
	BLOCK_PARA,              /* paragraph: text, spans */
	BLOCK_FENCE,             /* fenced or indented code: key = info string, lines */
	BLOCK_PICTURE            /* a picture alone in its paragraph: key = address, text =
	                          * its words, spans = its title if it has one */
};

/* One source line of a text or of a fence. */
struct text_line {
	uint32_t offset;         /* in text, where this line's part begins */
	struct pos pos;          /* of its first character */
};

/* What a block has that is not one line of plain words. */
struct block_more {
	const struct text_line *lines; /* at least one, unless text is empty */
	uint32_t nlines;
	struct pos key_pos;
	const struct span *spans; /* none for fences */
	size_t nspans;
};

/* A large program is a million of these, nearly all of them one line of plain words:
 * what can be told from the place and the text is not kept. */
struct block {
	enum block_kind kind;
	unsigned level;          /* heading 1..6; list depth from 1 for items */
	uint32_t number;         /* of a step, as counted in its list, from 1 */
	struct pos pos;          /* heading: first character of its text; item: first
	                          * character after the marker; fence: opening fence */
	str key;                 /* fact key without '**' and ':', trimmed; fence info */
	str text;                /* trimmed source text; lines joined by one space, for a
	                          * fence by one LF */
	const struct block_more *more; /* null: one line of plain words, of which those between
	                          * two stars at its start are bold, as the key of a fact;
	                          * key and text are slices of that line */
};

/* A level-1 heading, apart from its block: a large program is taken stock of by these. */
struct record_title {
	uint32_t at;             /* index of its block */
	struct pos pos;
	str text;
};

struct record_file {
	uint32_t file;           /* index in the list of sources */
	const struct block *v;
	size_t n;
	const struct record_title *titles;
	size_t ntitles;
};

struct spans {
	const struct span *v;
	size_t n;
};

/* A file of n blocks, its titles listed in arena a. */
struct record_file record_file_of(struct arena *a, uint32_t file, const struct block *v,
    size_t n);

/* The place of byte `offset` of b->text, and of the first byte of b->key. */
struct pos block_pos(const struct block *b, size_t offset);
struct pos block_key_pos(const struct block *b);

/* The text as CommonMark means it, in arena a or where the block has it; for a fact the
 * whole item with its bold key, so that prose may hold such bullets. */
struct spans block_spans(struct arena *a, const struct block *b);

#endif
