/* sheets/label.h - coupon tags and bench labels, to be cut apart.
 *
 * Ten on a page (large print: three), dashed lines to cut along. By quarter: one tag for each planned attempt
 * of each assignment with welds, then one bench label for each assignment with pieces.
 * Each shows the mark of the sheets it belongs to. In another language there are those of
 * the quarters that have a translation, under the same marks. */
#ifndef SHEETS_LABEL_H
#define SHEETS_LABEL_H

#include "draw/face.h"
#include "order/order.h"
#include "sheets/choice.h"

struct label_spec {
	const struct model *model;
	const struct order *order;
	const struct faces *faces;
	const str *marks;        /* by assignment index */
	struct edition_choice edition;
	bool draft;
};

struct labels;

/* Lays the tags of all placed assignments out in a; spec is copied. */
struct labels *labels_new(struct arena *a, const struct label_spec *spec);
str labels_title(const struct labels *l);
unsigned labels_pages(const struct labels *l);
unsigned labels_overfull(const struct labels *l);
/* The pages of one quarter; 0 and 0 when it has none. */
void labels_quarter_pages(const struct labels *l, uint32_t quarter, unsigned *first,
    unsigned *last);
void labels_emit(const struct labels *l, struct canvas *c);

#endif
