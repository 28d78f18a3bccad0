/* check/trial.h - what a move of one line would bring that no need tells: an order rule
 * of the trade that finds fault only then. */
#ifndef CHECK_TRIAL_H
#define CHECK_TRIAL_H

#include "check/view.h"

struct trial;

/* Nothing is worked out before the first question. views[0] is that of program.md; what
 * they let students bring counts in the trials too. */
struct trial *trial_new(struct arena *a, struct view **views, size_t nviews);

/* The first finding that putting an assignment's line at the end of a week would bring
 * ("pipe-before-plate"), null when there is none. Only so much is tried: past that, and
 * for programs too large for it, null. */
const char *trial_brings(struct trial *t, uint32_t assignment, uint32_t quarter,
    uint32_t week);

#endif
