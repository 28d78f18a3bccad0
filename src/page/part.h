/* page/part.h - what the makers of blocks share; for this room only.
 *
 * A stack is blocks under one another. Its strips are those of its blocks, with the
 * space between two blocks added to the first strip of the lower one. */
#ifndef PAGE_PART_H
#define PAGE_PART_H

#include "page/block.h"

typedef void draw_part(const struct block *b, const struct pen *pen, pt at,
    struct part part);

/* Zeroed memory of `size` bytes whose first member is a block of one strip. */
void *block_make(const struct setter *s, size_t size, draw_part *draw, double width_pt,
    double height_pt);

/* Gives b one strip for each line and their height; two lines stay on each side. */
void block_set_lines(const struct setter *s, struct block *b, const struct lines *l,
    bool whole);

/* Draws a part, as fleeting content if b is fleeting. A list is opened before the first
 * of neighboring items and closed before what is no item: *list_open remembers. */
void block_draw_part(const struct block *b, const struct pen *pen, pt at,
    struct part part, bool *list_open);
void list_close(const struct pen *pen, bool *list_open);

static inline bool part_is_first(struct part part)
{
	return part.from == 0;
}

static inline bool part_is_last(const struct block *b, struct part part)
{
	return part.to == b->nstrips;
}

/* Height and hold of a strip. The hold of the last strip is that of the block. */
double block_strip_pt(const struct block *b, size_t i);
enum hold block_strip_hold(const struct block *b, size_t i);

struct stack {
	struct block *const *v;
	size_t n;
	double top_pt, bottom_pt; /* padding in the first and the last strip */
};

/* Space between block i and the one above it. */
double stack_gap_pt(const struct stack *k, size_t i);
double stack_height_pt(const struct stack *k);
/* Draws strips [from, to) with the corner of the first at `at`. */
void stack_draw(const struct stack *k, const struct pen *pen, pt at, size_t from,
    size_t to);

#endif
