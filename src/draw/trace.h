/* draw/trace.h - everything drawn, as text: the golden format of drawings and pages.
 *
 * One line an operation, numbers with two decimals, strings last on the line with
 * control characters and '\' written as \n or \xHH:
 *
 *   page 612.00 792.00
 *   tag figure tee joint, seen from the end
 *   text 72.00 90.50 sans 12.00 Hello
 *   path stroke 0.75 gray 0.00 dash 4.00 2.00 M 1.00 2.00 L 3.00 4.00 Z
 *   path fill 0.00 M 0.00 0.00 C 1.00 1.00 2.00 2.00 3.00 3.00
 *   image 72.00 80.00 200.00 150.00 640x480 1f0e2d3c
 *   box 72.00 80.00 200.00 14.00 title
 *   end box | end tag | end fleeting | end page
 *   fleeting
 *   dest 72.00 80.00 SM-04
 *   link 72.00 80.00 40.00 14.00 SM-04
 *   outline 1 SM-04 Tee fillet -> SM-04
 *   label decimal 1 Q3- */
#ifndef DRAW_TRACE_H
#define DRAW_TRACE_H

#include "base/buf.h"
#include "draw/canvas.h"

struct trace {
	struct canvas canvas;    /* draw on this */
	struct buf *out;         /* lines are added here */
};

/* Sets up t to write to out, which the caller keeps. Nothing to release. */
void trace_init(struct trace *t, struct buf *out);

/* How a face is called in traces: "sans-bold". */
str face_name(enum face_id face);
/* How a tag is called in traces: "head-cell". */
str tag_name(enum tag tag);

#endif
