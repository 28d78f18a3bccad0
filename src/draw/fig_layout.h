/* draw/fig_layout.h - dimensions placed round a section, and the section inked.
 *
 * Points on paper, y down, relative to the root of the joint until emitted. Private to
 * the figures of draw. */
#ifndef DRAW_FIG_LAYOUT_H
#define DRAW_FIG_LAYOUT_H

#include "draw/dim.h"
#include "draw/fig_section.h"

#define LAYOUT_THIN 320
#define LAYOUT_ARROWS 120
#define LAYOUT_LABELS 80
#define LAYOUT_ARCS 8

/* Arrows stand inside from this length on; else outside, on stems. */
#define INSIDE_PT 22.0
#define STEM_PT 13.0

struct layout_label {
	struct dim_label text;
	rect r;
	enum dim_align align;
};

/* A label as it was broken before: each scale and each length of arms asks again. */
struct layout_known {
	str text;
	struct dim_label label;
	bool breaks;             /* as asked */
};

/* The arc of an angle, whose stretches have their places in `thin` but come last: most
 * layouts are too large before that. */
struct layout_arc {
	pt apex;
	double r, from_deg, to_deg;
	size_t thin;
};

struct layout {
	const struct section *s;
	const struct faces *faces;
	double zoom;             /* of the canvas */
	double pt_mm;            /* points of the canvas for a millimeter of steel */
	double size_pt;
	bool mixed;              /* the two below need not be alike */
	enum dim_lines lines, column_lines; /* above and below; at the sides */
	struct seg thin[LAYOUT_THIN];
	struct { pt tip, dir; } arrow[LAYOUT_ARROWS];
	struct layout_label label[LAYOUT_LABELS];
	struct layout_known known[DIM_LINES_COUNT][LAYOUT_LABELS]; /* by place in label */
	struct layout_arc arc[LAYOUT_ARCS];
	size_t nthin, narrows, nlabels, narcs;
	rect body;               /* members, welds and rules */
	rect ink;                /* with dimensions */
	double top, bottom;      /* how far rows of dimensions have grown */
	bool failed;             /* a label does not break as asked */
	double needs;            /* the least height with which a layout that failed might
	                          * not have; INFINITY: none */
};

/* Where a point of the section comes to lie. */
pt layout_point(const struct layout *l, pt mm);
/* Body of s at that many points a millimeter. */
rect layout_body(const struct section *s, double pt_mm);
/* Places everything round body, that of s. faces, s, pt_mm, size_pt and both lines are set
 * by the caller. False when labels meet each other or lines, or the whole is larger than
 * w x h. */
bool layout_place(struct layout *l, rect body, double w, double h);
/* Draws it with its ink centered in area. */
void layout_emit(const struct layout *l, struct canvas *c, rect area);

/* For placing: a thin stretch, an arrowhead, a label with its upper left corner. */
void layout_thin(struct layout *l, pt a, pt b);
void layout_arrow(struct layout *l, pt tip, pt dir);
struct layout_label *layout_label(struct layout *l, str text, enum dim_align align,
    enum dim_lines lines);
/* Arrows between a and b, from outside with stems when they are near each other.
 * Returns whether they stand inside. */
bool layout_arrows(struct layout *l, pt a, pt b);

/* All links of a chain in one line at that height or, upright, that far out; the layout
 * fails where one is hardly to be seen. The row of links below the part, with its labels. */
void layout_links(struct layout *l, enum section_dim_kind kind, double line);
void layout_chain_row(struct layout *l);

/* Dimensions, drops and ordinates above and below the part; then the arcs among them. */
void layout_rows(struct layout *l);
void layout_arcs(struct layout *l);
/* Upright dimensions and pointers with their labels in columns at both sides. */
void layout_columns(struct layout *l);

#endif
