/* sheets/bundle.h - one packet with its grading sheets, booth cards and wall chart, laid
 * out together.
 *
 * All are laid out from the same facts, and the revision mark of an assignment is taken
 * over the drawn content of three: its packet section, its grading sheet and its card,
 * without mark, page number, course, quarter, week, catalog year and date. So the three
 * always show the same mark, and moving a course reprints nothing. The chart names
 * assignments and prints their marks; it is no part of one. An edition has marks of its
 * own: the mark is that of the content as printed.
 *
 * A bundle in another language is packet, grading sheets and cards, beside the English
 * ones: its sheets show the mark of their originals and below a second one that is taken
 * over the translation. */
#ifndef SHEETS_BUNDLE_H
#define SHEETS_BUNDLE_H

#include "draw/face.h"
#include "order/order.h"
#include "sheets/choice.h"

enum bundle_part {
	BUNDLE_PACKET, BUNDLE_GRADING, BUNDLE_CARDS,
	BUNDLE_MARKED,           /* the parts before it make the marks */
	BUNDLE_CHART = BUNDLE_MARKED, BUNDLE_PARTS
};

struct bundle_spec {
	const struct model *model;
	const struct order *order;
	const struct faces *faces;
	const uint32_t *assignments; /* in printing order */
	size_t n;
	str name;                /* "Quarter 1", "ORW 130", "SM-20" */
	uint32_t quarter;        /* when it is a whole quarter, else 0 */
	bool front;              /* cover, use, safety, list and index */
	struct edition_choice edition;
	const struct language *beside; /* second language of the chart; null: none */
	bool draft[BUNDLE_PARTS]; /* DRAFT on every page */
	const str *originals;    /* marks of the same assignments in English, for an edition in
	                          * another language; else null */
};

struct bundle;

/* Whether a part is made in the language of an edition. */
bool bundle_has(const struct edition_choice *edition, enum bundle_part part);

/* Lays all documents out in a; spec is copied. */
struct bundle *bundle_new(struct arena *a, const struct bundle_spec *spec);
unsigned bundle_pages(const struct bundle *b, enum bundle_part part);
str bundle_title(const struct bundle *b, enum bundle_part part);
/* The mark of the i-th assignment, ten characters. */
str bundle_mark(const struct bundle *b, size_t i);
/* All of them, copied into a: what remains when the bundle goes. */
const str *bundle_marks(const struct bundle *b, struct arena *a);
/* That of its translation; empty in English. */
str bundle_said_mark(const struct bundle *b, size_t i);
/* Parts that stick out of their page; 0 in a sound program. */
unsigned bundle_overfull(const struct bundle *b, enum bundle_part part);
void bundle_emit(const struct bundle *b, enum bundle_part part, struct canvas *c);

#endif
