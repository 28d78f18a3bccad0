/* sheets/weld_symbol.h - from the facts of a weld to its symbol.
 *
 * A symbol is made only when everything that it would claim is known; else there is
 * none. Sizes on it are those of the joint block. */
#ifndef SHEETS_WELD_SYMBOL_H
#define SHEETS_WELD_SYMBOL_H

#include "draw/fig_symbol.h"
#include "model/model.h"

struct edition; /* sheets/edition.h; null: the usual one */

/* The welds that a joint block stands for: the one that it names, or all of its joint.
 * *n may be 0; v has room for x->nwelds. */
void welds_of_block(const struct assignment *x, const struct joint_block *j, uint32_t *v,
    size_t *n);

/* False: not enough is known for a symbol, or the joint has none here. */
bool weld_symbol(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_symbol *out);

/* The same, but for what the figure itself may find wrong. */
bool weld_symbol_make(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_symbol *out);
/* Double V, bevel, U or J. */
bool preparation_is_double(uint32_t preparation);
/* A square groove from one side, thicker than is melted through without a depth. */
bool weld_is_thick_square(const struct joint_block *j);
/* What a sheet says in place of a symbol that is left out for doubt; else empty. */
str weld_symbol_note(const struct edition *e, const struct joint_block *j);

/* Why the marks that the block asks for cannot be shown, in English; empty when they can,
 * or when it asks for none. */
str weld_symbol_fault(struct arena *a, const struct assignment *x,
    const struct joint_block *j);

#endif
