/* sheets/band.h - what stands around the body on every page: the band on top, with the
 * id in the largest type, and the foot. One look for all documents. */
#ifndef SHEETS_BAND_H
#define SHEETS_BAND_H

#include "order/order.h"
#include "page/flow.h"

struct band {
	str big;                 /* the id, or the name of the document */
	double big_pt;           /* its size; 0: 24 */
	str line;                /* course, quarter, week, kind, hours */
	str mark;                /* ten characters, or empty */
	str foot;                /* the program */
	bool draft;
};

/* Margins that leave room for band and foot, for a page of the given paper. */
struct flow_spec band_flow_spec(bool a4);
/* What a name of that size adds to the margin on top. */
double band_drop_pt(double big_pt);
void band_draw(const struct setter *s, struct canvas *c, const struct page_place *p,
    const struct band *b);

/* "ORW 115, quarter 1, week 7; coupon; 16 hours" */
str band_facts(struct arena *a, const struct model *m, const struct order *o,
    uint32_t assignment);

#endif
