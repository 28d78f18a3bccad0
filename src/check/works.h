/* check/works.h - which assignments work in which process, joint, position, kind and
 * on which machine, in the order under judgement.
 *
 * What an assignment does is kept as bits and never changes; the lists are made once
 * an order. All of it is linear in the source. */
#ifndef CHECK_WORKS_H
#define CHECK_WORKS_H

#include "check/view.h"

/* What one assignment works in, by its facts and by its welds; bit k is enum value k. */
struct work {
	uint32_t processes, joints, positions;
	const uint32_t *machines; /* indices in model->machines, as the fact lists them */
	uint32_t nmachines;
};

/* Assignments in walk order; those without a place are left out. */
struct work_list {
	const uint32_t *v;
	uint32_t n;
};

struct work_lists {
	struct work_list kind[KIND_COUNT], process[PROCESS_COUNT], joint[JOINT_COUNT],
	    position[POSITION_COUNT];
	struct work_list *machine; /* by index in model->machines */
};

/* Of one assignment, its machines left out. */
struct work work_bits(const struct assignment *as);
/* By assignment, from the model alone. */
struct work *works_new(struct arena *a, const struct model *m);

void work_lists_fill(struct arena *a, struct work_lists *l, const struct work *w,
    const struct order *o);

#endif
