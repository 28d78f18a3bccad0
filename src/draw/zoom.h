/* draw/zoom.h - a canvas on which everything comes out larger, type and strokes included.
 *
 * For figures in large print: a figure is given a smaller area and drawn through a zoom,
 * so that labels, lines and arrows grow alike. A figure that tells its scale asks the
 * canvas (canvas_zoom), so that the note stays true. */
#ifndef DRAW_ZOOM_H
#define DRAW_ZOOM_H

#include "base/arena.h"
#include "draw/canvas.h"

struct zoom {
	struct canvas canvas;    /* draw on this; its page is already open */
	struct canvas *to;
	struct arena *arena;     /* for long paths */
	double factor;
};

/* Within an open page of `to`. Place (0, 0) stays where it is. z must outlive drawing. */
void zoom_init(struct zoom *z, struct canvas *to, double factor, struct arena *a);

#endif
