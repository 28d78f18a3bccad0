/* out/tags.h - the structure tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8).
 *
 * Records which piece of which page belongs to which element while pages are drawn;
 * writes the elements once the numbers of all objects are known. */
#ifndef OUT_TAGS_H
#define OUT_TAGS_H

#include "base/buf.h"
#include "draw/canvas.h"

#define TAGS_NONE UINT32_MAX     /* furniture, or no element */

struct tags;

/* Object numbers, known at the end. Element i is object first_elem + i. */
struct tag_ids {
	uint32_t root, first_elem;
	uint32_t first_page, page_step; /* page i is object first_page + i * page_step */
	uint32_t first_link;            /* annotation i is object first_link + i */
};

/* other: tag of the language of elements that are not in the document's; may be empty. */
struct tags *tags_new(struct arena *a, str other);
void tags_begin(struct tags *t, enum tag tag, str alt);
void tags_end(struct tags *t);
/* The element begun last is in that language. */
void tags_other(struct tags *t);
/* The element that ink belongs to now, TAGS_NONE for furniture. */
uint32_t tags_current(const struct tags *t);
/* The structure type of an element: "P". */
const char *tags_type(const struct tags *t, uint32_t elem);
/* Pages are told of in order. */
void tags_page_begin(struct tags *t);
/* A further piece of elem on the current page; returns its number there. */
unsigned tags_mark(struct tags *t, uint32_t elem);
/* Hangs annotation `link` into the tree; false where all is furniture. */
bool tags_link(struct tags *t, uint32_t link);

uint32_t tags_count(const struct tags *t);
/* Whether a page has pieces of the tree. */
bool tags_page_marked(const struct tags *t, uint32_t page);
/* The entries of element i. */
void tags_write_elem(const struct tags *t, uint32_t i, const struct tag_ids *ids,
    struct buf *b);
/* The entries of the tree's root but for /ParentTree. */
void tags_write_root(const struct tags *t, const struct tag_ids *ids, struct buf *b);
/* The entries of the parent tree: page i has key i, annotation i key npages + i. */
void tags_write_parents(const struct tags *t, const struct tag_ids *ids, struct buf *b);

#endif
