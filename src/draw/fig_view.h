/* draw/fig_view.h - a part seen from the side or from above, or laid out flat: plain
 * lines with sizes at them, to scale.
 *
 * Coordinates in mm, x right, y up. The rules of draw/fig.h hold: labels are written by
 * the caller and drawn within boxes named "label", nothing is clamped, and too little
 * room gives false with "no drawing: <why>" in the area. Scales go down to 1:200. */
#ifndef DRAW_FIG_VIEW_H
#define DRAW_FIG_VIEW_H

#include "draw/fig.h"

#define FIG_VIEW_OUTLINES 6      /* closed, or open with more than two points */
#define FIG_VIEW_STROKES 72      /* of two points; more are thinned out evenly */
#define FIG_VIEW_SIZES 24

enum fig_stroke { FIG_EDGE_LINE, FIG_FOLD_LINE, FIG_THIN_LINE, FIG_AXIS_LINE };

struct fig_path {
	enum fig_stroke stroke;  /* outlines are FIG_EDGE_LINE */
	const pt *v;             /* long ones are drawn through fewer points */
	size_t n;
	bool closed;
};

enum fig_size_kind {
	FIG_SIZE_ABOVE, FIG_SIZE_BELOW, FIG_SIZE_LEFT, FIG_SIZE_RIGHT, /* from a to b */
	FIG_SIZE_AT_LEFT, FIG_SIZE_AT_RIGHT /* a leader to a */
};

struct fig_size {
	enum fig_size_kind kind;
	pt a, b;
	str label;               /* empty: left out */
};

struct fig_view {
	const struct fig_path *path;
	size_t npaths;
	const struct fig_size *size;
	size_t nsizes;
	str note;                /* at the left of the strip with the scale */
	const struct language *language; /* of labels and words; null: English */
};

bool fig_view_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_view *v);

#endif
