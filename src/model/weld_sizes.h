/* model/weld_sizes.h - the sizes of a weld that acceptance limits go by. */
#ifndef MODEL_WELD_SIZES_H
#define MODEL_WELD_SIZES_H

#include "model/standard.h"

/* Whether fillet limits are for such a weld; all others are grooves. A branch that is
 * set on has a fillet round it. */
bool weld_is_fillet(enum joint j);

/* What is known of weld i of x from its line, its drawing and the facts. A size of
 * nothing is not known. Its metal is for the caller to look up. */
struct limit_sizes weld_sizes(const struct assignment *x, size_t i);

/* What is known of the parts of x that dimensional limits go by: thickness, the longest
 * side of what is drawn or cut, and how it is cut. */
struct limit_sizes part_sizes(const struct assignment *x);

#endif
