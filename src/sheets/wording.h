/* sheets/wording.h - quantities, hours, pieces, materials and welds in the words of an
 * edition. Texts live in the arena; e may be null: English, US customary first. */
#ifndef SHEETS_WORDING_H
#define SHEETS_WORDING_H

#include "model/model.h"

struct edition; /* sheets/edition.h; null: the usual one */

str quantity_text(struct arena *a, const struct edition *e, const struct quantity *q);
/* A text that is made of figures and a few words, each of which is looked up where it
 * stands: a range, a clause, an expression. */
str words_within(struct arena *a, const struct edition *e, str text, const str *words,
    size_t n);
/* That of quantities: "0 to 1/16 in", "NPS 6 schedule 40". */
str quantity_words(struct arena *a, const struct edition *e, str text);
/* A pipe by its nominal size; metric first also by that in mm. */
str pipe_text(struct arena *a, const struct edition *e, str text);
str hours_text(struct arena *a, const struct edition *e, double hours);
bool given(const struct quantity *q);

/* "3/8 x 3 x 8 in [9.5 x 76.2 x 203.2 mm]" and what a weld is, in words. */
str piece_size(struct arena *a, const struct edition *e, const struct piece *p);
str legs_text(struct arena *a, const struct edition *e, const struct quantity *leg,
    const struct quantity *leg2);
str weld_text(struct arena *a, const struct edition *e, const struct weld *w);
/* Whether a text on a translated sheet is the original's, in English; never on an English
 * sheet. */
bool stays_english(const struct edition *e, str shown, str original);
/* "3G up". */
str position_text(struct arena *a, const struct edition *e, const struct position_at *at);
/* "A36 plate". */
str material_text(struct arena *a, const struct edition *e, str material);

#endif
