/* model/pattern_block.h - a part to be laid out flat, as a pattern block gives it.
 *
 * Given sizes only; what follows from them is worked out where it is printed. A
 * quantity of kind QUANTITY_ANY (zeroed) is not given. */
#ifndef MODEL_PATTERN_BLOCK_H
#define MODEL_PATTERN_BLOCK_H

#include "model/model.h"

enum flat_shape {
	SHAPE_BRAKE, SHAPE_CYLINDER, SHAPE_ELBOW, SHAPE_SADDLE, SHAPE_CONE, SHAPE_BOX,
	SHAPE_SQUARE, SHAPE_COUNT
};

/* Where in the thickness something is measured or worked out. */
enum flat_side { SIDE_NONE, SIDE_OUTSIDE, SIDE_MEAN, SIDE_INSIDE, SIDE_MOLD };

enum { FLANGES_MOST = 16 };

struct pattern_block {
	str name;                /* after the word pattern: "saddle"; may be empty */
	enum flat_shape shape;   /* SHAPE_COUNT: not given (reported) */
	struct quantity thickness, radius, allowance, width, diameter, height, angle,
	    base,
	    base2, top, offset_x, offset_y, tolerance;
	struct quantity flanges[FLANGES_MOST], bends[FLANGES_MOST];
	bool down[FLANGES_MOST]; /* of each bend */
	uint32_t nflanges, nbends, ndirections;
	struct pipe_size run, branch;
	struct quantity run_size, branch_size; /* as written, for the sheet */
	bool pipe;               /* the diameter is that of a pipe */
	double k;
	enum flat_side sizes, line, stretch;
	uint32_t pieces, sides, divisions; /* 0: not given */
	struct pos pos;
};

/* "cone", "square to round", as the block says it. */
str flat_shape_word(enum flat_shape s);

#endif
