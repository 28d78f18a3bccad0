/* draw/look.h - a canvas that digests what it shows, for the revision mark.
 *
 * Taken: page sizes, texts, paths, pixels and what figures say (alt). Left out: everything
 * between fleeting_begin and fleeting_end, tags, links, places, boxes, outlines and
 * labels. Places count to a hundredth of a point. Allocates nothing. */
#ifndef DRAW_LOOK_H
#define DRAW_LOOK_H

#include "base/blend.h"
#include "draw/canvas.h"

struct look {
	struct canvas canvas;    /* draw on this */
	struct blend sum;
};

/* The struct must not move from then on. */
void look_begin(struct look *l);
/* Feeds the digest of all that was drawn into h. */
void look_end(const struct look *l, struct sha256 *h);

#endif
