/* draw/bounds.h - the smallest upright rectangle that holds all ink.
 *
 * Text counts from ascent to descent of its face and over its full width; a path
 * counts its points and control points, widened by half the stroke. Pages are
 * laid on top of each other. A picture counts whole. Links, boxes and places are not ink. */
#ifndef DRAW_BOUNDS_H
#define DRAW_BOUNDS_H

#include "draw/canvas.h"
#include "draw/face.h"

struct bounds {
	struct canvas canvas;    /* draw on this */
	const struct faces *faces;
	bool any;                /* some ink was seen */
	double left, top, right, bottom; /* points; meaningful when any */
};

/* Sets up b; faces are borrowed. Nothing to release. */
void bounds_init(struct bounds *b, const struct faces *faces);
/* The rectangle so far; all zero when there is no ink. */
rect bounds_rect(const struct bounds *b);

#endif
