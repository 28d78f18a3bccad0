/* check/cause.h - which line of program.md stands wrong when needs are unmet.
 *
 * A line that stands too late fails all who need what it teaches; one that stands too
 * early fails in each of its own needs; one left out fails as much. Each unmet need
 * points at the lines that would explain it, and is put down to the one that explains
 * most, so that one mistake becomes one finding. */
#ifndef CHECK_CAUSE_H
#define CHECK_CAUSE_H

#include "check/repair.h"

/* What an unmet need is put down to. */
struct cause {
	enum cause_kind {
		CAUSE_NEED,      /* the need itself, with others like it */
		CAUSE_TEACHER,   /* a line that teaches it too late */
		CAUSE_ASKER,     /* the line that needs it stands too early */
		CAUSE_UNLISTED,  /* an assignment in no course teaches it */
		CAUSE_LOST       /* a line of program.md that no file defines may have */
	} kind;
	uint32_t who;            /* an assignment of that line; of CAUSE_LOST the slot; NONE
	                          * for CAUSE_NEED */
};

/* By fault. `told` (by need; may be null) marks those that a loop tells. */
struct cause *causes_find(struct arena *a, const struct verdict *d,
    struct repairs *r, const bool *told);

#endif
