/* check/units.h - the lines of an order that stand at one place.
 *
 * A unit is one assignment, or all branches of a "one of" line: they share a place
 * and never teach each other. Units are numbered by their turn in the walk, from 0;
 * assignments without a place have the unit NONE. */
#ifndef CHECK_UNITS_H
#define CHECK_UNITS_H

#include "check/graph.h"

/* What a student who comes by has been given for certain. */
enum standing {
	STANDING_COUNTS,         /* every student does it */
	STANDING_OPTIONAL,       /* some skip it */
	STANDING_BRANCH,         /* only those who chose this branch do it */
	STANDING_MISSPELT,       /* taught under a word that skills.md does not list */
	STANDINGS
};

struct units {
	const struct order *order;
	uint32_t n;
	uint32_t *of;            /* by assignment */
	uint32_t *at;            /* by unit: first index in order->walk, n + 1 of them */
	bool *optional;          /* by unit */
};

/* What one unit teaches, one entry a cell of the highest level. */
struct lesson {
	uint32_t cell;
	enum standing standing;
	uint32_t assignment;     /* which branch; the first one for what all teach */
};

/* Working memory for units_teach, one for a whole pass. */
struct lessons {
	struct lesson *v;
	size_t n, cap;
	struct arena *arena;
	struct lesson_seen *seen;       /* by skill; made for the first choice */
	size_t nskills;
	uint32_t stamp;
};

struct units *units_new(struct arena *a, const struct order *o);
struct lessons *lessons_new(struct arena *a, const struct graph *g);

/* Fills l with what unit u teaches: for a choice, first what every branch teaches,
 * then what is beyond that in each branch. */
void units_teach(const struct units *us, const struct graph *g, uint32_t u,
    struct lessons *l);

static inline bool unit_is_choice(const struct units *us, uint32_t u)
{
	return us->at[u + 1] - us->at[u] > 1;
}

/* The first unit behind the first line of program.md whose assignment no file defines
 * (reported), and that line's slot: what is missing from there on may be in it. NONE when
 * there is no such line or nothing behind it. */
uint32_t units_behind_lost(const struct units *us, uint32_t *slot);

/* Whether unit u gives every student who does it one of the alternatives of a need. */
bool unit_meets(const struct units *us, const struct graph *g, uint32_t u, uint32_t need);

#endif
