/* sheets/band.h - what stands around the body on every page: the band on top, with the
 * id in the largest type, and the foot. One look for all documents. */
#ifndef SHEETS_BAND_H
#define SHEETS_BAND_H

#include "order/order.h"
#include "page/flow.h"
#include "sheets/edition.h"

struct band {
	str big;                 /* the id, or the name of the document */
	double big_pt;           /* its size when that is more than the usual */
	str line;                /* course, quarter, week, kind, hours */
	str mark;                /* ten characters, or empty */
	str said_mark;           /* of a translation: "es" and ten characters, or empty */
	str foot;                /* the program */
	bool draft;
};

/* Margins that leave room for band and foot, for a page of the edition's paper. */
struct flow_spec band_flow_spec(const struct edition *e);
/* What a name of that size adds to the margin on top. */
double band_drop_pt(const struct edition *e, double big_pt);
void band_draw(const struct setter *s, const struct edition *e, struct canvas *c,
    const struct page_place *p, const struct band *b);

/* "ORW 115, quarter 1, week 7; coupon; 16 hours" */
str band_facts(struct arena *a, const struct edition *e, const struct model *m,
    const struct order *o, uint32_t assignment);

#endif
