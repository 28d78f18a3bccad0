/* check/knot.h - assignments that need each other in a circle.
 *
 * From what students bring, each assignment is released whose every need has a
 * released teacher other than itself; needs that nobody else teaches are granted,
 * for they are told as untaught. What is never released falls into knots. */
#ifndef CHECK_KNOT_H
#define CHECK_KNOT_H

#include "check/view.h"

/* Marks of struct knots.live. */
enum { LIVE_ALONE = 1, LIVE_ONE_OF = 2 };

struct knot {
	uint32_t *members;       /* assignments, no order */
	size_t n;
};

struct knots {
	const struct view *view;
	bool *left;              /* by assignment: never released */
	bool *unmet;             /* by need: of one that was never released */
	bool *on_loop;           /* by need: told by a loop */
	uint8_t *live;           /* by cell: how unmet needs ask for it */
	uint32_t *turn;          /* by assignment: its turn in the order, then by id */
	uint32_t *unit;          /* by assignment: equal for branches of one choice */
	uint32_t (*first)[2];    /* by cell: first teachers in turn, of distinct units */
	struct knot *v;
	size_t n, cap;
};

/* Finds the knots; one that others rest on comes before them. v is the order of
 * program.md. */
struct knots *knots_find(struct arena *a, const struct view *v, struct graph *g);

/* The assignment that an unmet need of `assignment` leads to: its first teacher. Also
 * which alternative that one teaches. NONE for a need that is met or granted. */
uint32_t knots_lead(const struct knots *ks, uint32_t assignment, uint32_t need,
    uint32_t *alt);

/* The first teacher of a cell in turn that does not stand in the unit; NONE. */
uint32_t knots_first(const struct knots *ks, uint32_t cell, uint32_t unit);

/* Reports one loop of each knot and marks the needs on it. */
void knots_report(struct arena *scratch, struct knots *ks, struct findings *f);

#endif
