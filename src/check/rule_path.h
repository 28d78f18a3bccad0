/* check/rule_path.h - entry paths that ask for much more than their students bring, and
 * what outcomes and credentials claim. */
#ifndef CHECK_RULE_PATH_H
#define CHECK_RULE_PATH_H

#include "check/rules.h"

/* A path on which more needs than this are unmet is told as one finding. */
enum { PATH_NEEDS_MOST = 10 };

/* Before needs are judged: reports each entry path with more unmet needs than
 * PATH_NEEDS_MOST that the order of program.md (views[0]) meets, with the entry skills
 * that would cure it. From then on the view counts these as brought, so that all other
 * checks speak only of what is left. */
void paths_widen(struct arena *scratch, struct view **views, size_t n,
    struct findings *f);

/* Team work whose result assesses a welding skill. */
void rule_path_team(struct rule_context *x, uint32_t w);
/* Outcomes that nothing assesses; credentials that claim what their quarters do not
 * assess, or what is not there. */
void rule_path_claim(struct rule_context *x);

#endif
