/* draw/solid.h - plates, bars, tubes, angles and rounds in space, and what of them is
 * seen from one side without perspective.
 *
 * Millimeters; x right, y away from the reader, z up. A solid is a set of convex parts,
 * which hide and touch, and of edges, which are drawn. Hiding is exact: an edge is cut
 * where it passes behind a part (a linear program in two unknowns for each pair), so no
 * order of painting is needed and parts may hide each other in a circle. Rounds are
 * prisms of SOLID_ROUND sides. All memory comes from the arena given. */
#ifndef DRAW_SOLID_H
#define DRAW_SOLID_H

#include "base/arena.h"
#include "draw/fig_iso.h"
#include "draw/fig_space.h"

#define SOLID_ROUND 32

/* Points x with normal . x <= distance. */
struct solid_plane { vec normal; double distance; };

/* A convex polygon drawn out straight: v[0..n) at one end, v[n..2n) at the other. */
struct solid_part {
	vec *v;
	size_t n;
	struct solid_plane *plane; /* n sides, then the two ends */
	bool box;                /* upright and square to the axes: lo and hi say it all */
	vec lo, hi;              /* the upright box around it */
	rect paper;              /* the one around its picture; set by solid_project */
};

enum solid_edge_kind {
	SOLID_SHARP,             /* between two flat faces */
	SOLID_SMOOTH,            /* between facets of a round: seen as a contour only */
	SOLID_INNER              /* of a bore or a corner that is turned inward */
};

struct solid_edge {
	enum solid_edge_kind kind;
	vec a, b;
	vec left, right;         /* normals of the faces at both sides */
};

struct solid {
	vec lo, hi;              /* the upright box around it */
	struct solid_part *part;
	size_t nparts, parts_cap;
	struct solid_edge *edge;
	size_t nedges, edges_cap;
};

/* The solid that m describes; fig_iso_fault tells whether it can be made. */
struct solid solid_of(struct arena *a, const struct fig_member *m);

/* How far the nearest surfaces of two parts are apart, at most what it really is, along
 * the direction in which they are farthest; negative: how deep one is in the other. */
double solid_gap_mm(const struct solid_part *a, const struct solid_part *b);
/* The same for all parts of two solids: the least. Beyond SOLID_FAR_MM that of the boxes
 * around them. */
#define SOLID_FAR_MM 25.0
double solids_gap_mm(const struct solid *a, const struct solid *b);

/* A stretch from a + (b - a) from to a + (b - a) to. */
struct solid_span { double from, to; };

/* Where the part hides the line from a to b from an eye far off in direction to_eye;
 * what lies less than SOLID_SKIN_MM under its surface counts as seen. False: nowhere. */
#define SOLID_SKIN_MM 0.4
bool solid_hides(const struct solid_part *p, vec a, vec b, vec to_eye,
    struct solid_span *hidden);

/* Before what follows: where the parts lie in that view. */
void solid_project(struct solid *s, const struct space_view *w);

/* What is seen of the line past all parts of n solids; returns how many stretches, in
 * order. Of more than SOLID_SPANS stretches that are hidden the rest count as seen. */
#define SOLID_SPANS 2048
size_t solids_seen(const struct solid *v, size_t n, vec a, vec b,
    const struct space_view *w, struct solid_span *out, size_t cap);
/* Whether some part hides the point. */
bool solids_hide(const struct solid *v, size_t n, vec at, const struct space_view *w);

#endif
