/* check/knot.h - assignments that need each other in a circle.
 *
 * From what students bring, each assignment is released whose every need has a
 * released teacher other than itself; needs that nobody else teaches are granted,
 * for they are told as untaught. What is never released falls into knots. */
#ifndef CHECK_KNOT_H
#define CHECK_KNOT_H

#include "check/view.h"

struct knot {
	uint32_t *members;       /* assignments, no order */
	size_t n;
	uint32_t depth;          /* 1, or one more than that of a knot it rests on */
};

struct knots {
	const struct view *view;
	bool *left;              /* by assignment: never released */
	uint32_t *lead;          /* by need: the first teacher it waits for; NONE when it
	                          * is met or granted */
	bool *on_loop;           /* by need: told by a loop; null without knots */
	uint32_t *turn;          /* by assignment: its turn in the order, then by id */
	uint32_t *unit;          /* by assignment: equal for branches of one choice */
	uint32_t (*first)[2];    /* by cell: first teachers in turn, of distinct units */
	struct knot *v;
	size_t n, cap;
};

/* Finds the knots; one that others rest on comes before them. v is the order of
 * program.md. */
struct knots *knots_find(struct arena *a, const struct view *v, struct graph *g);

/* Which alternative of a need its lead teaches first. */
uint32_t knots_alt(const struct knots *ks, uint32_t assignment, uint32_t need);

/* Reports one loop of each knot and marks the needs on it. */
void knots_report(struct arena *scratch, struct knots *ks, struct findings *f);

#endif
