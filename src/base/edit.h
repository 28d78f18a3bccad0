/* base/edit.h - lines of a source changed on trial, so that it can be read again.
 *
 * Nothing is written to a file: an edit makes another text in memory, and says for each
 * of its lines which line of the first text it was, so that what is found in both can be
 * compared. */
#ifndef BASE_EDIT_H
#define BASE_EDIT_H

#include "base/arena.h"
#include "base/source.h"

enum edit_kind {
	EDIT_REPLACE,            /* the line reads `text` */
	EDIT_DROP,               /* the line goes */
	EDIT_ADD                 /* `text` comes behind the line; line 0: before the first */
};

struct edit {
	enum edit_kind kind;
	uint32_t file;           /* index in the list of sources */
	uint32_t line;           /* from 1 */
	str text;                /* one line or several, without the last line end */
	uint32_t origin;         /* of EDIT_ADD: the line that moves here; 0: a new one */
};

/* A text after its edits. */
struct edited {
	uint32_t file;
	str text;
	uint32_t *origin;        /* by line from 1: its line in the text before; 0: new */
	size_t nlines;
};

/* The text of s, which is source `file`, after those edits that concern it, in arena a.
 * Several behind the same line come in turn. */
struct edited edits_apply(struct arena *a, const struct source *s, uint32_t file,
    const struct edit *v, size_t n);

/* A line of a text, from 1, without its line end; empty for line 0, which is the file as a
 * whole, and past the last. */
str text_line_at(str text, uint32_t line);
size_t text_count_lines(str text);
/* Lines from .. to of a text, from 1, with their line ends. */
str text_lines(str text, uint32_t from, uint32_t to);

#endif
