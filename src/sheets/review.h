/* sheets/review.h - faults that only printing would show, told before it.
 *
 * Characters that no face has, and drawings that fitup cannot make. */
#ifndef SHEETS_REVIEW_H
#define SHEETS_REVIEW_H

#include "base/finding.h"
#include "draw/face.h"
#include "model/model.h"

void sheets_review(struct arena *a, const struct model *m, const struct faces *faces,
    struct findings *f);

#endif
