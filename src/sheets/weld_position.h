/* sheets/weld_position.h - from the facts of a weld to the sketch of its position.
 *
 * Nothing is drawn rather than a wrong attitude; the sheet then says so. */
#ifndef SHEETS_WELD_POSITION_H
#define SHEETS_WELD_POSITION_H

#include "draw/fig_position.h"
#include "model/model.h"

struct edition; /* sheets/edition.h; null: the usual one */
struct sheet;

/* False: no such position, or nothing is drawn for that joint in it. */
bool weld_position(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, uint32_t weld, struct fig_position *out);

/* Why weld_position draws none of a weld that has a position, where it does not, in
 * English; empty when there is nothing to say. */
str weld_position_fault(const struct assignment *x, const struct joint_block *j,
    uint32_t weld);

/* A line on the sheet for each weld of the block whose position is not drawn, or that is
 * turned over for its other side. */
void add_position_notes(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j);

#endif
