/* check/repair.h - the least single move that cures a finding and breaks nothing.
 *
 * A move puts one line of program.md at the end of another week. It cures when every
 * need of the finding is met afterwards in each order that showed it, and breaks
 * nothing when no need that stands becomes an error in any order. Only the needs and
 * dependents of the moved line are looked at, never the whole program. */
#ifndef CHECK_REPAIR_H
#define CHECK_REPAIR_H

#include "check/faults.h"
#include "check/knot.h"

struct repairs;

/* ks may be null when there are no loops. */
struct repairs *repairs_new(struct arena *a, const struct verdict *d,
    const struct knots *ks);

/* The repair in words for one merged finding of nature NATURE_LATER, in arena `out`;
 * *wrong is the move that it proposes first, null when it proposes none. */
str repair_words(struct repairs *r, const struct merged *g, struct arena *out,
    const struct standing_wrong **wrong);

/* Which of two lines may move. */
enum movable { MOVABLE_FIRST = 1, MOVABLE_SECOND, MOVABLE_EITHER };

/* Where two assignments stand that should be the other way round. */
struct standing_wrong *repair_pair(struct repairs *r, uint32_t first, uint32_t second,
    struct arena *out);
/* The same for a rule: the moves, in the order of views[view], that put w->first before
 * w->second; those that are told are noted in *w. Empty when none is free. */
str repair_pair_words(struct repairs *r, uint32_t view, struct standing_wrong *w,
    enum movable which, struct arena *out);
/* The nearest week of its quarter, from lo to hi, to whose end an assignment may move;
 * 0 when there is none. */
uint32_t repair_week(struct repairs *r, uint32_t assignment, uint32_t lo, uint32_t hi);

#endif
