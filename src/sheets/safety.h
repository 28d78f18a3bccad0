/* sheets/safety.h - cautions that a sheet owes for the work it asks for.
 *
 * Lines by process, material and kind: usual cautions of the trade, deferring to the
 * maker's plate, the named code edition, local codes and licensed persons. */
#ifndef SHEETS_SAFETY_H
#define SHEETS_SAFETY_H

#include "model/model.h"

struct edition; /* sheets/edition.h; null: the usual one */

/* Most lines that safety_lines writes. */
enum { SAFETY_LINES_MOST = 16 };

/* The least-shade line of each process on the sheet, then the cautions. Returns how
 * many of out[SAFETY_LINES_MOST] were filled; 0 for work without hazard. */
size_t safety_lines(struct arena *a, const struct edition *e, const struct assignment *x,
    str *out);

/* The same for a card on the wall: the least-shade lines as they are, each caution in a
 * few words. */
size_t safety_card_lines(struct arena *a, const struct edition *e, const struct assignment *x,
    str *out);

/* The short cautions of the work's main hazards in each language but that of the edition,
 * "Español: ...", so that who reads only that has the worst of it. Returns how many of
 * out[SAFETY_LINES_MOST]; 0 for work without hazard. */
size_t safety_other_lines(struct arena *a, const struct edition *e,
    const struct assignment *x, str *out);

/* Who decides when a sheet and the shop disagree. */
str safety_deference(const struct edition *e);
/* What a coupon is and is not; for a qualification test also what makes it count. */
str safety_record_line(const struct edition *e, const struct assignment *x);

/* The shop safety page of a packet, in English, for edition_word. */
extern const str safety_page[];
extern const size_t safety_page_lines;

#endif
