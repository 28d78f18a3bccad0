/* draw/canvas.h - where ink goes, whatever catches it.
 *
 * A canvas is a device behind a table of functions: the PDF writer, the trace
 * (golden text), the bounds measurer, the list that records for later. Callers
 * use the canvas_* wrappers only; these keep page, box, tag and fleeting nesting
 * balanced (assert) and skip operations that a device leaves null.
 *
 * Coordinates are points (1/72 in) from the top left corner of the page, y down.
 * Text stands on its baseline. Ink is black unless gray says otherwise. */
#ifndef DRAW_CANVAS_H
#define DRAW_CANVAS_H

#include "base/pixels.h"
#include "base/str.h"

enum face_id {
	FACE_SANS, FACE_SANS_BOLD, FACE_SANS_ITALIC, FACE_SANS_BOLD_ITALIC,
	FACE_MONO, FACE_MONO_BOLD, FACE_COUNT
};

typedef struct { double x, y; } pt;
typedef struct { double x, y, w, h; } rect;

/* A path is a list of segments: move, line, cubic curve, close. */
enum seg_op { SEG_MOVE, SEG_LINE, SEG_CURVE, SEG_CLOSE };

struct seg {
	enum seg_op op;
	pt p[3];                 /* CURVE: two controls and the end; MOVE, LINE: p[0] */
};

struct ink {
	double stroke_pt;        /* line width; 0: not stroked */
	double dash_on_pt, dash_off_pt; /* both 0: solid. Whole points */
	bool fill;               /* filled, nonzero rule, before stroking */
	double fill_gray;        /* 0 black .. 1 white; only for fill */
	double stroke_gray;
};

/* What a stretch of content is, for readers that cannot see it (tagged PDF). */
enum tag {
	TAG_DOCUMENT, TAG_SECTION, TAG_H1, TAG_H2, TAG_H3, TAG_P, TAG_LIST, TAG_ITEM,
	TAG_TABLE, TAG_ROW, TAG_HEAD_CELL, TAG_CELL, TAG_FIGURE,
	TAG_SPAN,                /* words within a paragraph */
	TAG_ARTIFACT             /* furniture: header, footer, rules */
};

enum label_style { LABEL_DECIMAL, LABEL_ROMAN };

struct canvas_ops {
	void (*page_begin)(void *self, double width_pt, double height_pt);
	void (*page_end)(void *self);
	void (*text)(void *self, pt baseline, enum face_id face, double size_pt, str utf8);
	void (*path)(void *self, const struct seg *segs, size_t n, const struct ink *ink);
	/* A picture without fault, filling r; its sides keep their ratio if r has it. */
	void (*image)(void *self, rect r, const struct pixels *p);
	/* Text drawn until box_end lies within r; name says whose box (for tests). */
	void (*box_begin)(void *self, rect r, str name);
	void (*box_end)(void *self);
	/* alt: what a FIGURE shows, in words; empty otherwise. */
	void (*tag_begin)(void *self, enum tag tag, str alt);
	void (*tag_end)(void *self);
	/* What was begun last is in the other language of the document. */
	void (*tag_other)(void *self);
	/* Content between is not part of the revision mark (page numbers, weeks). */
	void (*fleeting_begin)(void *self);
	void (*fleeting_end)(void *self);
	void (*dest)(void *self, str name, pt at);       /* a place that links can name */
	void (*link)(void *self, rect r, str dest_name);
	void (*outline)(void *self, int depth, str title, str dest_name); /* depth 0.. */
	void (*label)(void *self, enum label_style style, str prefix, unsigned first);
};

struct canvas {
	const struct canvas_ops *ops;
	void *self;
	int pages, boxes, tags, fleeting; /* nesting, kept by the wrappers */
	double zoom;             /* see canvas_zoom; 0 stands for 1 */
};

/* Points on paper for one point of this canvas; 1 but on a zoom (draw/zoom.h). */
double canvas_zoom(const struct canvas *c);

void canvas_page_begin(struct canvas *c, double width_pt, double height_pt);
void canvas_page_end(struct canvas *c);
void canvas_text(struct canvas *c, pt baseline, enum face_id face, double size_pt, str utf8);
void canvas_path(struct canvas *c, const struct seg *segs, size_t n, const struct ink *ink);
/* Borrows p, which must outlive the canvas. */
void canvas_image(struct canvas *c, rect r, const struct pixels *p);
void canvas_box_begin(struct canvas *c, rect r, str name);
void canvas_box_end(struct canvas *c);
void canvas_tag_begin(struct canvas *c, enum tag tag, str alt);
void canvas_tag_end(struct canvas *c);
void canvas_tag_other(struct canvas *c);
void canvas_fleeting_begin(struct canvas *c);
void canvas_fleeting_end(struct canvas *c);
void canvas_dest(struct canvas *c, str name, pt at);
void canvas_link(struct canvas *c, rect r, str dest_name);
void canvas_outline(struct canvas *c, int depth, str title, str dest_name);
void canvas_label(struct canvas *c, enum label_style style, str prefix, unsigned first);

/* Shorthands over canvas_path. */
void canvas_line(struct canvas *c, pt a, pt b, double stroke_pt);
void canvas_rect(struct canvas *c, rect r, const struct ink *ink);
void canvas_polygon(struct canvas *c, const pt *v, size_t n, const struct ink *ink);
void canvas_circle(struct canvas *c, pt center, double radius_pt, const struct ink *ink);

#endif
