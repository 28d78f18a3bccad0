/* check/walk.h - the one walk through an order that finds every unmet need. */
#ifndef CHECK_WALK_H
#define CHECK_WALK_H

#include "check/view.h"

/* How a need is not met, the lightest first. */
enum nature {
	NATURE_MISSPELT,         /* only a misspelt teaching would meet it */
	NATURE_OPTIONAL,         /* only optional work teaches it by then */
	NATURE_BRANCH,           /* only one branch of a choice teaches it by then */
	NATURE_LATER,            /* taught later */
	NATURE_SIBLING,          /* taught in another branch of the same choice */
	NATURE_TOO_LOW,          /* never taught that far */
	NATURE_ITSELF,           /* only the assignment itself teaches it */
	NATURE_NEVER
};

/* One unmet need. */
struct fault {
	uint32_t assignment, need; /* need in the numbering of the graph */
	uint32_t alt;            /* the alternative that the finding speaks of */
	enum nature nature;
	uint32_t teacher;        /* the first teacher meant by the nature; NONE */
	uint32_t view;           /* which order shows it first */
	uint32_t paths;          /* which orders show it: see faults.h */
};

struct faults {
	struct arena *arena;
	struct fault *v;
	size_t n, cap;
};

/* Appends the unmet needs of v's order to fs, in walk order, natures not yet told. */
void walk_order(struct view *v, struct faults *fs);

/* Fills alt, nature and teacher of a fault that stands in v. */
void fault_judge(const struct view *v, struct fault *d);

/* Whether a nature leaves students without the skill for certain. */
bool nature_is_error(enum nature n);

#endif
