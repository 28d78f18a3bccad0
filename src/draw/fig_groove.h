/* draw/fig_groove.h - a groove between two prepared edges, as sections share it.
 *
 * Millimeters, x right, y up, origin at the middle of the root on the lower surface.
 * Private to the figures of draw. */
#ifndef DRAW_FIG_GROOVE_H
#define DRAW_FIG_GROOVE_H

#include "draw/fig_prep.h"
#include "draw/fig_section.h"

/* [0] left, [1] right. */
struct groove {
	struct prep_edge edge[2];
	double reach[2];         /* how far each member runs on from its root face */
	bool broken[2];
	double gap;              /* root opening */
};

/* Corners of an edge from the back surface at `root` up to the front surface; way -1: the
 * member lies to the left. */
void groove_edge(struct section_member *m, const struct prep_edge *e, pt root, double way);

/* Where the face of the weld meets the front surface; where the root face begins. */
pt groove_toe(const struct groove *g, int side);
pt groove_root(const struct groove *g, int side);

/* The weld from the front, or from the back of a double preparation, with its cap. It
 * reaches to the middle of the lands across an open root; closed lands stay as they are.
 * Adds the region for its beads. */
void groove_weld(struct section *s, const struct groove *g, bool back, double crown);
/* A bead over the root from behind. */
void groove_back_weld(struct section *s, pt right, pt left, double crown);
/* A cap of that height from one corner of the groove to the other and a bit over; up -1:
 * it hangs below. */
void groove_cap(struct section_bead *b, pt right, pt left, double rise, double up);
/* How far a cap laps onto the plates, so that it is never a spike. */
double groove_lap(double half_width, double rise);

/* Whether land or depths are told at that side. */
bool groove_has_heights(const struct groove *g, int side, const struct fig_joint *j);
void groove_height_dims(struct section *s, const struct fig_joint *j, const struct groove *g,
    int side);
/* Included angle over the groove, bevel and root radius at its left edge. */
void groove_angle_dims(struct section *s, const struct fig_joint *j, const struct groove *g);

/* Two bent members, or one and a flat one. */
void section_flare_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f);

#endif
