/* order/order.h - where each assignment stands, apart from the model.
 *
 * A place is (quarter, week, line in program.md). An order is made from
 * program.md, from an entry path, or by trial moves; it never judges. Assignments
 * in no course have no place. All branches of a "one of" share one place. */
#ifndef ORDER_ORDER_H
#define ORDER_ORDER_H

#include "model/model.h"

struct place {
	uint32_t rank_quarter;   /* position of the quarter in this order, from 1 */
	uint32_t quarter;        /* the catalog quarter printed to people */
	uint32_t week, line;
	uint32_t slot;           /* index in model slots, NONE: not placed */
};

struct order {
	const struct model *model;
	struct place *places;    /* by assignment index */
	uint32_t *walk;          /* assignments, earliest first; placed ones only */
	size_t nwalk;
	const struct entry *entry; /* null for the order of program.md itself */
};

struct order *order_of_program(struct arena *a, const struct model *m);
struct order *order_of_entry(struct arena *a, const struct model *m,
    const struct entry *e);

/* A copy in which one assignment stands at (quarter, week), after every line of
 * that week. The whole line of program.md moves: with one branch of a "one of" go
 * the others. An assignment in no course has no line, and the copy equals o. On an
 * entry path that does not meet the quarter, the line has no place afterwards. */
struct order *order_moved(struct arena *a, const struct order *o, uint32_t assignment,
    uint32_t quarter, uint32_t week);

/* The turn of a catalog quarter in this order, from 1; 0 when its path does not meet
 * it. */
uint32_t order_turn(const struct order *o, uint32_t quarter);

/* Earlier, same place, later: <0, 0, >0. */
int place_cmp(const struct place *a, const struct place *b);

#endif
