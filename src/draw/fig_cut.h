/* draw/fig_cut.h - where test pieces are cut from a coupon: a plate from above or the
 * end of a pipe with the hours of a clock, to scale.
 *
 * The caller places the strips (reckon/strips.h) and writes all labels; the rules of
 * draw/fig.h hold. Strips that overlap, leave the coupon or reach into what is cut off
 * at the ends are refused: false, and "no drawing: <why>" in the area. */
#ifndef DRAW_FIG_CUT_H
#define DRAW_FIG_CUT_H

#include "draw/fig.h"

#define FIG_CUT_STRIPS 8

struct fig_strip {
	double from_mm, to_mm;   /* along the weld from the left end; round the pipe from its
	                          * top, clockwise, on the outside */
	str label;               /* "face bend, 2 to 3-1/2 in" */
	str label_width;         /* plate: above the strip; may be empty */
};

struct fig_cut {
	double length_mm;        /* of the weld on a plate */
	double discard_mm;       /* cut off at each end; 0: nothing */
	double od_mm, wall_mm;   /* pipe, when od_mm is given */
	const struct fig_strip *strips; /* from the left, or from the top round */
	size_t nstrips;          /* 1 to FIG_CUT_STRIPS */
	str label_length, label_discard;
	str label_ends;          /* the end pieces are used: what they are; else empty */
	bool restart;            /* plate: stop and restart, restart_mm right of mid-length */
	double restart_mm;
	str label_restart;       /* where it is; in words only */
	str note;                /* weld, position, pipe: at the left below */
	const struct language *language; /* of labels and words; null: English */
};

str fig_cut_fault(const struct fig_cut *k);
bool fig_cut_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_cut *k);
str fig_cut_words(struct arena *a, const struct fig_cut *k);

#endif
