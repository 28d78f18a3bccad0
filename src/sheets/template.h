/* sheets/template.h - flat patterns at full size, for the bench.
 *
 * Each outline of each pattern block is laid over as many pages as it needs, A1, A2 to
 * the right, B1 below; neighbors share a strip with the same ringed crosses on both.
 * Every page has bars of 100 mm and 4 in both ways and asks for printing without
 * scaling: give pdf_meta.actual_size when the canvas is a PDF. A plain rectangle is
 * left out unless one page holds it.
 *
 * An outline is an answer: never draw this into a student's document. */
#ifndef SHEETS_TEMPLATE_H
#define SHEETS_TEMPLATE_H

#include "draw/face.h"
#include "model/model.h"
#include "sheets/choice.h"

struct template_spec {
	const struct model *model;
	const struct faces *faces;
	const uint32_t *assignments; /* in printing order */
	size_t n;
	const str *marks;        /* revision marks, one for each; null: none printed */
	struct edition_choice edition;
	bool draft;              /* DRAFT on every page */
};

struct template_doc;

/* Works out and places everything in a; what spec points at is borrowed. */
struct template_doc *template_new(struct arena *a, const struct template_spec *spec);
/* 0 when no assignment has a pattern that can be made. */
unsigned template_pages(const struct template_doc *t);
void template_emit(const struct template_doc *t, struct canvas *c);

#endif
