/* sheets/tolerance.h - what a set of dimensional tolerances gives for a size that a
 * drawing shows: "Cut length: within 1/16 in where length <= 48 in". */
#ifndef SHEETS_TOLERANCE_H
#define SHEETS_TOLERANCE_H

#include "model/standard.h"

struct tolerance {
	const struct standard *set;
	const struct standard_limit *limit;
	struct quantity q;       /* no value of its own; of kind length or angle */
};

/* The limit of the set that a line of x names for dimensions whose name begins with
 * `feature` and which holds for sizes z. False when there is none, or no figure comes
 * out of it. */
bool tolerance_of(const struct assignment *x, str feature, const struct limit_sizes *z,
    struct tolerance *out);

/* Whether a limit by its name belongs to a drawn size, so that it is a row with two ends
 * and not one that is judged. */
bool is_toleranced(str name);

#endif
