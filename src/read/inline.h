/* read/inline.h - the running text of one cmark node. Only for read/md.c. */
#ifndef READ_INLINE_H
#define READ_INLINE_H

#include "base/finding.h"
#include "read/record.h"

#include <cmark.h>

struct flat {
	struct spans spans;
	str plain;               /* all text without style */
};

/* Flattens the inlines of a paragraph or heading. `raw` is its source text: where
 * it is plain, spans are slices of it. Raw HTML and pictures are reported at pos. For a
 * picture itself: its words. */
struct flat inline_flatten(struct arena *a, cmark_node *node, str raw, struct pos pos,
    struct findings *f);

#endif
