/* draw/fig_symbol_plan.h - strokes and labels of a symbol before they are inked.
 *
 * Points on paper, y down, from the junction of arrow and reference line. Private to the
 * figures of draw. */
#ifndef DRAW_FIG_SYMBOL_PLAN_H
#define DRAW_FIG_SYMBOL_PLAN_H

#include "draw/fig_symbol.h"

#define SYMBOL_STROKES 40
#define SYMBOL_SEGS 10
#define SYMBOL_LABELS 24
#define SYMBOL_PARTS 5

struct symbol_stroke {
	struct seg s[SYMBOL_SEGS];
	size_t n;
	struct ink ink;
};

/* A line of text made of parts that follow one another, in its box. */
struct symbol_label {
	str part[SYMBOL_PARTS];
	size_t n;
	rect r;
};

struct symbol_plan {
	const struct faces *faces;
	double size_pt;          /* of type */
	double u;                /* height of a capital letter */
	double ascent, descent;
	struct symbol_stroke stroke[SYMBOL_STROKES];
	struct symbol_label label[SYMBOL_LABELS];
	size_t nstrokes, nlabels;
	pt arrow_tip, arrow_dir;
	rect ink;
};

/* Where a figure stands: x of its leg or middle, y of its line, and which way is away
 * from the line: 1 down, -1 up. */
struct symbol_place { double x, y, way; };

/* Extents of a figure from its x, how far it reaches from the line, and where a root
 * opening stands in it: middle and nearest depth of its capitals. */
struct symbol_figure { double left, right, depth, root_x, root_depth, reach; };

/* root_w: width of the root opening's text, 0 without one. */
struct symbol_figure symbol_figure_of(enum fig_weld w, double u, double root_w);
void symbol_figure_add(struct symbol_plan *p, enum fig_weld w,
    const struct symbol_figure *g, struct symbol_place at);
/* The contour mark with its middle that far from the line; along the slope of a fillet
 * whose legs are g->depth. */
void symbol_contour_add(struct symbol_plan *p, enum fig_contour kind, double x,
    double depth, bool slope, struct symbol_place at);

/* A new stroke with that ink; move and line add to it. */
struct symbol_stroke *symbol_stroke_new(struct symbol_plan *p, struct ink ink);
void symbol_move(struct symbol_plan *p, struct symbol_stroke *k, pt at);
void symbol_line(struct symbol_plan *p, struct symbol_stroke *k, pt to);
void symbol_close(struct symbol_stroke *k);
/* A circular arc about center from one angle to another, degrees from +x towards +y, at
 * most 180 of them. Begins the stroke when it is empty. */
void symbol_arc(struct symbol_plan *p, struct symbol_stroke *k, pt center, double r,
    double from_deg, double to_deg);

double symbol_text_width(const struct symbol_plan *p, const str *part, size_t n);
/* A label with its left edge at x and its baseline at y. */
void symbol_text(struct symbol_plan *p, const str *part, size_t n, double x, double y);

/* The outline of the members with the joint at tip, reached from the upper right. */
void symbol_joint_add(struct symbol_plan *p, enum fig_shape joint, pt tip);

#endif
