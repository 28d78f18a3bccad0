/* sheets/picture.h - pictures of the folder pictures on paper.
 *
 * A picture prints as large as the body is wide, at most PICTURE_SHARE of its height, its
 * sides in their own ratio. */
#ifndef SHEETS_PICTURE_H
#define SHEETS_PICTURE_H

#include "sheets/sheet.h"

#define PICTURE_SHARE 0.45

/* The pixels that a drawing shows; null when they are missing or cannot be read. */
const struct pixels *picture_of(const struct drawing *d);

/* Draws p in the middle of area, as large as its ratio allows. */
void picture_draw(struct canvas *c, const struct pixels *p, rect area);

/* The picture on the flow under its title, or room for a sketch. */
void sheet_picture(struct sheet *sh, const struct drawing *d, unsigned style);

/* Reports a picture that cannot be read, is too coarse for its size, or copies badly. */
void picture_review(struct findings *f, const struct assignment *x, const struct drawing *d);

#endif
