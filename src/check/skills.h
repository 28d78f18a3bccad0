/* check/skills.h - skills that nobody teaches or assesses, and evidence that no line
 * of the assignment bears out. */
#ifndef CHECK_SKILLS_H
#define CHECK_SKILLS_H

#include "check/faults.h"

/* Warns of listed skills that no assignment teaches, unless students bring them, and
 * of those that are taught but never assessed. */
void skills_check(struct arena *scratch, const struct verdict *d, struct findings *f);

/* Warns where a skill is assessed without naming its evidence, and where a named
 * evidence is neither an Acceptance nor a Grading line of the assignment, among those
 * from `from` to `to`. */
void evidence_check(struct arena *scratch, const struct model *m, uint32_t from,
    uint32_t to, struct findings *f);

#endif
