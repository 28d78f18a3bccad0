/* sheets/keybook.h - the instructor's keys: worked answers, expected measurements,
 * patterns and remarks of every assignment, in the order of the program.
 *
 * For the instructor only. Nothing here is drawn on a student sheet, and nothing here
 * is part of a revision mark; each key shows the mark of the sheets it belongs to. */
#ifndef SHEETS_KEYBOOK_H
#define SHEETS_KEYBOOK_H

#include "draw/face.h"
#include "order/order.h"
#include "sheets/choice.h"

struct keybook_spec {
	const struct model *model;
	const struct order *order;
	const struct faces *faces;
	const str *marks;        /* by assignment index; empty: not printed */
	struct edition_choice edition;
	bool draft;
};

struct keybook;

/* Lays the keys of all placed assignments out in a; spec is copied. */
struct keybook *keybook_new(struct arena *a, const struct keybook_spec *spec);
unsigned keybook_pages(const struct keybook *k);
unsigned keybook_overfull(const struct keybook *k);
void keybook_emit(const struct keybook *k, struct canvas *c);

#endif
