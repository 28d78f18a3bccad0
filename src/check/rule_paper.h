/* check/rule_paper.h - the parts of the rules about what stands on the sheets. */
#ifndef CHECK_RULE_PAPER_H
#define CHECK_RULE_PAPER_H

#include "check/rules.h"

/* Whether a line by this name is a test of the weld: visual, a bend, a break, macro. */
bool is_weld_test(str name);

void rule_paper(struct rule_context *x, uint32_t w);
/* Assignments that are alike: in title, or in all that they test. */
void rule_paper_twice(struct rule_context *x);

#endif
