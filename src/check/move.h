/* check/move.h - a line of program.md and where it may go.
 *
 * The bounds of a line come from its own needs and from those that need it, in each
 * order; they are worked out once a line. The least move is then found among the few
 * weeks where something changes. */
#ifndef CHECK_MOVE_H
#define CHECK_MOVE_H

#include "check/faults.h"
#include "check/knot.h"

/* Marks of struct repairs.live: by a need of its own, in a "one of". */
enum { LIVE_ALONE = 1, LIVE_ONE_OF = 2 };

/* Between what a line may move in one order without breaking anything. */
struct bound {
	uint32_t after;          /* assignment that must stay before it; NONE */
	uint32_t before;         /* assignment that must stay behind it; NONE */
	bool barred;             /* it would find one of its needs taught nowhere */
};

struct repairs {
	struct arena *arena;
	const struct verdict *verdict;
	const struct knots *knots; /* null when nothing is caught in a loop */
	uint8_t *live;           /* by cell: how the needs caught in loops ask for it */
	const struct graph *graph;
	struct bound **bounds;   /* by unit of views[0]: one a view; made when asked */
	uint32_t *teacher_at;    /* by skill, one more than there are */
	uint32_t *teachers;      /* assignments, in id order within a skill */
	uint64_t weeks, spots;   /* in a quarter; in the program */
	struct trial *trial;     /* what the order rules say of a move */
	bool tied;               /* a loop forbade a move of the present finding */
};

/* A line that may move, and what a cure asks of its new place in each order. */
struct mover {
	uint32_t unit;           /* of views[0] */
	struct bound *bound;     /* by view */
	struct bound *cure;      /* by view: after and before only */
	uint32_t paths;          /* the orders that must be cured */
};

struct move {
	uint32_t unit;           /* NONE: no move */
	uint64_t spot, end, distance; /* end: the farthest spot that serves as well */
	bool late;               /* only the end of the week serves */
	bool later;              /* towards the end of the program */
	const char *brings;      /* the finding of an order rule that comes of it, or null */
};

/* Makes the bounds of a line, by view. */
struct bound *bounds_of(struct repairs *r, uint32_t unit);

/* The assignments of a unit of views[0]. */
const uint32_t *unit_members(const struct repairs *r, uint32_t unit, uint32_t *n);

/* The first assignment of a unit. */
uint32_t unit_leader(const struct view *v, uint32_t unit);

/* The later, or with earlier set the earlier, of two assignments; NONE loses. */
uint32_t outer_of(const struct view *v, uint32_t a, uint32_t b, bool earlier);

/* Marks the cells whose first teachers shape the loops. */
void loops_mark(struct repairs *r);

/* Whether the loops stay as they are when the unit goes to p. */
bool loops_hold(const struct repairs *r, uint32_t unit, const struct place *p);

/* Whether the end of a week, counted from the first of the program, serves. */
bool move_serves(struct repairs *r, const struct mover *m, uint64_t spot);

/* The nearest week that serves, of two equally near ones the later; unit NONE when
 * there is none. Sets tied when a loop forbade one. */
struct move move_least(struct repairs *r, const struct mover *m);

#endif
