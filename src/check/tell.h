/* check/tell.h - the sentences that the order findings share. */
#ifndef CHECK_TELL_H
#define CHECK_TELL_H

#include "base/buf.h"
#include "check/faults.h"
#include "check/knot.h"

/* Likely words and repairs are worked out for this many findings. */
enum { TELL_MOST = 200 };

/* Adds a further place to a finding. */
void tell_relate(struct findings *f, struct finding *d, struct pos pos, str assignment,
    str skill, str label);

/* "quarter 3, week 1", or "in no course". */
void tell_place(struct buf *b, const struct order *o, uint32_t assignment);

/* "fit.tack practiced" of a cell. */
void tell_cell(struct buf *b, const struct model *m, uint32_t cell);

/* " (assignments/PR-01.md:12:3)": where an assignment teaches a cell, or its heading
 * when it teaches less. Nothing when the place is in no file. */
void tell_teaching(struct buf *b, const struct graph *g, uint32_t assignment,
    uint32_t cell);

struct repairs; /* check/repair.h */

/* Reports the merged faults of a verdict, with the repairs of the first 200 that a
 * move may cure; r may be null when there are none. The needs that only a misspelt
 * teaching would meet are listed under its word. */
void tell_verdict(struct arena *scratch, const struct verdict *d,
    struct repairs *r, const struct words *w, struct findings *f);

#endif
