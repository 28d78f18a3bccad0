/* draw/fig_position_solids.h - the plates of a test position as solids in space.
 *
 * The attitude comes from the weld's face (AWS A3.0 and D1.1, from memory: the rotation is
 * told by a line square to the theoretical face): flat when that line points up, horizontal
 * when it points sideways, overhead when it points down. The face of a fillet lies at 45
 * degrees to both plates; that of a groove is flush with the surface of the member that
 * is prepared, so that a fillet over it is no part of its position. Private to draw. */
#ifndef DRAW_FIG_POSITION_SOLIDS_H
#define DRAW_FIG_POSITION_SOLIDS_H

#include "draw/fig_position.h"
#include "draw/fig_space.h"

#define POSITION_PRISMS 4
#define POSITION_HALF 1.5        /* of the weld's length */

struct position_solids {
	struct space_frame frame;
	struct space_prism prism[POSITION_PRISMS];
	size_t n;
	double face;             /* from the root to the face of the weld */
	double roll_deg;         /* from face up, about the axis, towards the reader */
	bool upright;            /* the weld axis is vertical */
	bool weld_last;          /* the weld lies over its neighbors' round sides */
};

/* Whether these members are plates, bars or tubes with such a weld in such a place. */
bool position_has_solids(enum fig_members m, enum fig_place place);
/* Units of their own: only proportions count. p can be drawn and is not of pipe. */
void position_solids(struct position_solids *s, const struct fig_position *p);
/* From the back to the front, as seen from there. */
void position_sort(struct position_solids *s, const struct space_view *view);
/* How plates are set for it, in English; empty: the place says enough. */
str position_set_up(const struct fig_position *p);

#endif
