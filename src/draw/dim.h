/* draw/dim.h - the pen strokes of a drawing office: arrowheads, hatching, break lines,
 * and labels that break into lines.
 *
 * All sizes in points on paper. A line survives repeated copying at 0.35 mm, which is
 * 0.992 pt, or more, and is read at arm's length at 12 pt (common practice, no source):
 * nothing in a figure is thinner or smaller. Outlines and welds stand out by more. */
#ifndef DRAW_DIM_H
#define DRAW_DIM_H

#include "draw/canvas.h"
#include "draw/face.h"

#define DIM_OUTLINE_PT 1.5
#define DIM_WELD_PT 2.0
#define DIM_THIN_PT 1.0
#define DIM_TYPE_PT 12.0
#define DIM_ARROW_PT 8.0
#define DIM_ARROW_HALF_PT 1.7
#define DIM_LABEL_LINES 5

/* A slim filled head with its tip at `tip`, pointing along unit vector dir. */
void dim_arrow(struct canvas *c, pt tip, pt dir);

/* Section lines at deg within the polygon. */
void dim_hatch(struct canvas *c, const pt *v, size_t n, double deg, double apart_pt);

/* Points of a freehand break from a to b, both ends included; at most DIM_BREAK_POINTS,
 * returns how many. */
#define DIM_BREAK_POINTS 17
size_t dim_break(pt a, pt b, pt *out);

enum dim_lines { DIM_ONE_LINE, DIM_TWO_LINES, DIM_MEDIUM, DIM_NARROW, DIM_LINES_COUNT };
enum dim_align { DIM_LEFT, DIM_CENTER, DIM_RIGHT };

/* A label broken into lines; the parts borrow from the text. */
struct dim_label {
	str line[DIM_LABEL_LINES];
	size_t n;
	double size_pt, w, h;
};

/* Breaks text: not at all, before '[', or also at blanks to stay narrow. False when
 * it needs more lines than there are. */
bool dim_label_set(struct dim_label *l, const struct faces *f, double size_pt, str text,
    enum dim_lines lines);
/* Draws it with its box at r, which has the size of the label. */
void dim_label_draw(struct canvas *c, const struct faces *f, const struct dim_label *l,
    rect r, enum dim_align align);

#endif
