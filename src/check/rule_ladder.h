/* check/rule_ladder.h - the steps by which a shop is used to climb, C1 to C16, C21, C22.
 *
 * A step is something done for the first time: 2F fillets, an open root, pipe. Steps are
 * taken in each craft for itself; what is done in one says nothing about another. Only
 * rungs that are both climbed in an order are compared: what a program leaves out is its
 * own affair. Rungs form partial orders; nothing follows from two of them. */
#ifndef CHECK_RULE_LADDER_H
#define CHECK_RULE_LADDER_H

#include "check/rule_trade.h"

enum climb {
	/* Fillets and grooves in plate. */
	STEP_1F, STEP_2F, STEP_3F, STEP_3F_UP, STEP_3F_DOWN, STEP_4F,
	STEP_1G, STEP_3G_UP, STEP_3G_DOWN, STEP_2G, STEP_4G,
	STEP_GROOVE_RAISED,      /* 2G, 3G or 4G */
	/* Pipe; 1G is rolled. */
	STEP_PIPE_2, STEP_PIPE_1_OR_2, STEP_PIPE_5, STEP_PIPE_5_UP, STEP_PIPE_5_DOWN,
	STEP_PIPE_6, STEP_PIPE_6_UP, STEP_PIPE_6_DOWN,
	STEP_FILLET, STEP_GROOVE, STEP_PLATE, STEP_PIPE, STEP_BACKED, STEP_OPEN,
	STEP_THIN, STEP_THICK,   /* plate under 1 in; 1 in and over */
	STEP_STEEL, STEP_STAINLESS, STEP_ALUMINUM,
	STEP_STEEL_GROOVE, STEP_STAINLESS_GROOVE, STEP_ALUMINUM_GROOVE,
	STEP_STEEL_BREAK, STEP_STAINLESS_BREAK, STEP_ALUMINUM_BREAK,
	STEP_SQUARE_CUT, STEP_BEVEL_CUT,
	/* Of no craft: written under CRAFT_COUNT. */
	STEP_USES_STICK, STEP_USES_WIRE, STEP_USES_SOLID, STEP_USES_CORED,
	STEP_USES_GAS_WELD, STEP_USES_TUNGSTEN, STEP_HAND_CUT, STEP_MACHINE_CUT,
	STEP_HAND_LAYOUT, STEP_TABLE, STEP_WRITTEN, STEP_MACHINE,
	STEP_PARALLEL, STEP_RADIAL, STEP_TRIANGLES,
	STEP_COUNT
};
_Static_assert(STEP_COUNT <= 64, "a step is one bit");

enum { STEP_KEYS = (CRAFT_COUNT + 1) * STEP_COUNT };

static inline uint32_t step_key(enum craft craft, enum climb step)
{
	return (uint32_t)craft * STEP_COUNT + (uint32_t)step;
}

/* Keys of the steps that an assignment takes, at most RULE_KEYS_MOST. */
uint32_t steps_of(const struct trade *t, uint32_t assignment, uint32_t *v);

void rule_ladder(struct rule_context *x);

#endif
