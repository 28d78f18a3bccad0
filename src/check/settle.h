/* check/settle.h - what one move of a line mends, and what one slip shows in two places,
 * is one finding. */
#ifndef CHECK_SETTLE_H
#define CHECK_SETTLE_H

#include "model/model.h"

/* After all checks, before waivers are marked: where an unmet need proposes a move, what
 * rules of order find of the same line and the same move mends is listed with the need,
 * and so are the hours of the courses that the line belongs in and stands in. Work in no
 * course is told with the course that lacks its hours, the needs that this leaves, and what nothing else shows. Safety
 * findings and those that a waiver names stand on their own. Optional
 * work that must not be so is told with the hours of its course. A file that cannot be read
 * bears its line of program.md; what a translation has still, or right, is listed with what
 * its original lost or has wrong; lab hours that neither credits nor assignments want are
 * told once, a picture that is not there once for all sheets that show it, and a test that
 * Acceptance and Grading name differently as one line. With a current out of its range
 * stand the steps that name another, with a week out of its quarter what another week of
 * that quarter may mend. What is taken in stands among the related of what takes it. */
void findings_settle(struct arena *scratch, const struct model *m, struct findings *f);

#endif
