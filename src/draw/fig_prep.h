/* draw/fig_prep.h - prepared edges: depths, land, angle and root radius worked out.
 *
 * Terms and shapes of AWS A3.0: depth of preparation, root face (land), bevel angle, root
 * radius. Millimeters and degrees. Private to the figures of draw. */
#ifndef DRAW_FIG_PREP_H
#define DRAW_FIG_PREP_H

#include "draw/fig.h"

/* One side of an edge; depth 0: this side is not prepared. */
struct prep_face {
	double depth_mm;         /* from the surface to the root face */
	double deg;              /* bevel angle, off square */
	double radius_mm;        /* of the root; 0: a straight bevel */
	double run_mm;           /* how far back the surface begins */
};

struct prep_edge {
	struct prep_face front, back;
	double land_mm;          /* root face between them */
	double thick_mm;
};

struct prep_kind {
	bool both, curved, doubled, flare; /* members; root; sides; bent members */
	str name;                /* "double-V groove" */
};
const struct prep_kind *prep_kind(enum fig_prep p);

/* What j says, or what its shape means by itself; NONE for shapes without edges. */
enum fig_prep prep_of(const struct fig_joint *j);

/* Why the edges cannot be prepared like that, in English; empty when they can. */
str prep_fault(const struct fig_joint *j);

/* The edges of both members; j is without fault. */
void prep_edges(const struct fig_joint *j, struct prep_edge out[2]);

/* Points of a face from the root face to the surface: x back from the root face, y up.
 * Returns how many, at most PREP_POINTS. */
#define PREP_POINTS 12
size_t prep_line(const struct prep_face *f, pt *out);

#endif
