/* check/settle.h - what one move of a line mends is one finding. */
#ifndef CHECK_SETTLE_H
#define CHECK_SETTLE_H

#include "model/model.h"

/* After all checks, before waivers are marked: where an unmet need proposes a move, what
 * rules of order find of the same line and the same move mends is listed with the need,
 * and so are the hours of the courses that the line belongs in and stands in. Safety
 * findings and those that a waiver names stand on their own. */
void findings_settle(struct arena *scratch, const struct model *m, struct findings *f);

#endif
