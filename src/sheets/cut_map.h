/* sheets/cut_map.h - where the test pieces of a weld are cut, from its Acceptance.
 *
 * Bend, nick-break and tensile lines give strips of butts; a macro and a fillet break of
 * one fillet give its ends and its middle. Widths: bends and tensiles as in
 * reckon/strips.h, side bends 3/8 in, nick-breaks 1 in (from memory), or as the line says:
 * "strips 3/4 in wide". Places: shared out evenly on a plate, from 1:30 on round a pipe a
 * quarter apart for two (from memory, the code's figure decides), or as the line says:
 * "at 1:00 and 7:00", "at 2-1/2 in and 4 in" (middles, from the left end). */
#ifndef SHEETS_CUT_MAP_H
#define SHEETS_CUT_MAP_H

#include "draw/fig_cut.h"
#include "model/model.h"

struct edition; /* sheets/edition.h; null: the usual one */

/* The map of weld `weld` (NONE: the assignment has no welds, only drawings) as block j
 * draws it. False: nothing is cut, or it is not known where, or it does not fit. */
bool cut_map(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j,
    uint32_t weld, struct fig_cut *out);

/* Whether two maps differ in nothing but their notes. */
bool cut_maps_alike(const struct fig_cut *a, const struct fig_cut *b);

#endif
