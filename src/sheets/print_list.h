/* sheets/print_list.h - what to print, how many, on which paper, bound how.
 *
 * For the office: one line a document, then the sheets of paper in all. Copies follow
 * cohorts.md; where it puts nobody, and in large print, which few ask for, they are a
 * blank to fill in, and the sheets are those of one copy. */
#ifndef SHEETS_PRINT_LIST_H
#define SHEETS_PRINT_LIST_H

#include "draw/face.h"
#include "model/model.h"
#include "sheets/choice.h"

struct print_item {
	str file, part;          /* "shop/labels.pdf", "pages 1 to 6, quarter 1" or empty */
	unsigned pages, copies;  /* copies 0: a blank */
	bool one_sided;
	str binding, paper;
	bool held;               /* waits for an error to be mended */
};

struct print_list_spec {
	const struct model *model;
	const struct faces *faces;
	const struct print_item *items;
	size_t n;
	struct edition_choice edition;
	bool draft;
};

struct print_list;

/* Students of the cohorts whose next quarter is this one; 0: none. A cohort's quarters
 * are those of the entry path that begins as it did, or all of them in turn. */
unsigned print_list_students(const struct model *m, uint32_t quarter);
/* With spares: 5 % more, rounded up (common practice, no source). */
unsigned print_list_copies(unsigned students);
/* Sheets of paper for an item: two pages on a sheet, or one. */
size_t print_list_sheets(const struct print_item *item);

/* Laid out in a; spec and items are copied. */
struct print_list *print_list_new(struct arena *a, const struct print_list_spec *spec);
unsigned print_list_pages(const struct print_list *p);
unsigned print_list_overfull(const struct print_list *p);
void print_list_emit(const struct print_list *p, struct canvas *c);

#endif
