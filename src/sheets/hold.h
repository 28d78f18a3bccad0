/* sheets/hold.h - which documents wait until an error is mended.
 *
 * A document is held back only when an error concerns something printed in it. */
#ifndef SHEETS_HOLD_H
#define SHEETS_HOLD_H

#include "base/finding.h"
#include "base/language.h"
#include "order/order.h"

/* The first error that holds back a document of these assignments (quarter: the quarter
 * it is printed for, 0 when it is not a whole one), or null. What is wrong in a
 * translation holds back the documents in that language alone; null: English. */
const struct finding *hold_find(const struct model *m, const struct findings *f,
    const uint32_t *assignments, size_t n, uint32_t quarter,
    const struct language *language);

#endif
