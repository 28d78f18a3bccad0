/* draw/fig_position_side.h - the words beside the sketch of a position.
 *
 * Private to the figures of draw. */
#ifndef DRAW_FIG_POSITION_SIDE_H
#define DRAW_FIG_POSITION_SIDE_H

#include "draw/fig_position.h"

/* Label, plain words and letters of ISO 6947 under one another, in the middle of the
 * height of r. False, and nothing drawn: they are larger than r. */
bool position_texts(struct canvas *c, const struct faces *f, rect r,
    const struct fig_position *p);

#endif
