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

/* The repair in words for one merged finding of nature NATURE_LATER, in arena `out`. */
str repair_words(struct repairs *r, const struct merged *g, struct arena *out);

#endif
