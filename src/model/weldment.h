/* model/weldment.h - the members of a plate block: what stands where when all is welded.
 *
 * Lengths mm; x from left to right, y from front to back, z up. What a member line leaves
 * out is taken from the piece of its name. A member that was not understood was reported
 * and is left out. */
#ifndef MODEL_WELDMENT_H
#define MODEL_WELDMENT_H

#include "model/model.h"

enum member_shape {
	MEMBER_SOLID,            /* plate, bar: a box or an outline */
	MEMBER_TUBE, MEMBER_ANGLE, MEMBER_PIPE, MEMBER_ROUND
};

enum member_axis { AXIS_X, AXIS_Y, AXIS_Z, AXIS_NONE };

enum { CORNERS_MOST = 16 };

/* Where one of a kind stands, as written. */
struct member_place {
	struct quantity v[3];
	struct pos pos;
};

struct member {
	str name;                /* "rail" */
	uint32_t piece;          /* in the pieces of the assignment, NONE */
	enum member_shape shape;
	enum member_axis along;  /* the length; of an outline its thickness */
	double size_mm[3];       /* of the box; of an outline only along `along` */
	struct quantity size[3]; /* as written, from nsize on not given */
	uint32_t nsize;
	struct pipe_size pipe;   /* of a pipe; its length is size_mm[along] */
	double corners_mm[2 * CORNERS_MOST]; /* on the two axes across, pair by pair */
	uint32_t ncorners;
	double wall_mm;
	bool heel_far[2];        /* angle: its heel is at the far side on those two axes */
	double turn_deg;
	enum member_axis about;
	const struct member_place *at; /* at least one */
	size_t nat;
	struct pos pos;          /* of the name */
};

struct weldment {
	const struct member *v;
	size_t n;
	bool from_left;          /* how it is seen; else from the right */
	struct pos pos;
};

#endif
