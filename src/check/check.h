/* check/check.h - judges a model and an order; reports, never repairs. */
#ifndef CHECK_CHECK_H
#define CHECK_CHECK_H

#include "base/finding.h"
#include "order/order.h"

/* How far moves are worked out for what rules find wrong: not at all; which lines stand
 * wrong, as a trial wants, of which only what is found counts; or in words. */
enum check_moves { MOVES_NONE, MOVES_PLACED, MOVES_TOLD };

/* Runs every rule over the order of program.md and over each entry path. scratch
 * is for working memory that may be dropped afterwards. */
void check_program(struct arena *scratch, const struct model *m, struct findings *f);

/* The same over orders that the caller made, as a trial does: orders[0] is that of
 * program.md, the rest are entry paths; n is at least 1. A fault that stands in
 * several orders is one finding. */
void check_orders(struct arena *scratch, const struct order *const *orders, size_t n,
    struct findings *f);

/* The same in steps, for those who do all but the first at the same time: each with
 * working memory of its own, needs with the findings of the first step, the rest with
 * others. Translations are then checked apart (check/translation.h).
 * What check_begin makes lives in its scratch. */
struct check;
struct check *check_begin(struct arena *scratch, const struct order *const *orders, size_t n,
    struct findings *f);
struct check *check_begin_program(struct arena *scratch, const struct model *m,
    struct findings *f);
void check_needs(struct arena *scratch, struct check *c, struct findings *f);
void check_rules(struct arena *scratch, const struct check *c, enum check_moves how,
    struct findings *f);
/* The sheets from one assignment to before another, each by itself: what is found of one
 * depends on it and on shop.md, standards and customs.md alone. */
void check_sheets(struct arena *scratch, const struct check *c, uint32_t from, uint32_t to,
    struct findings *f);

#endif
