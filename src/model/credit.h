/* model/credit.h - the program's own rule of what makes a credit:
 * "1 credit = 11 lecture hours or 22 lab hours". */
#ifndef MODEL_CREDIT_H
#define MODEL_CREDIT_H

#include "base/str.h"

/* Hours in a quarter that make one credit, 0: the rule does not say. */
struct credit_rule {
	double lecture_h, lab_h;
};

/* False when s is no such rule; *out is then zeroed. Either kind of hours may be left
 * out, and either may come first. */
bool credit_rule_parse(str s, struct credit_rule *out);

#endif
