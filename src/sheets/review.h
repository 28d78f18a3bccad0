/* sheets/review.h - faults that only printing would show, told before it.
 *
 * Characters that no face has, drawings that fitup cannot make, and pictures that cannot
 * be shown. */
#ifndef SHEETS_REVIEW_H
#define SHEETS_REVIEW_H

#include "base/finding.h"
#include "draw/face.h"
#include "model/model.h"

/* Sheets of which a datum was left out, so that a drawing may lack it: that is told where
 * it is written, and the drawing is not told again. By assignment. */
const bool *sheets_told(struct arena *a, const struct model *m, const struct findings *f);

/* told: as above, from the findings of reading. */
void sheets_review(struct arena *a, const struct model *m, const struct faces *faces,
    const bool *told, struct findings *f);
/* The same in parts: what covers, charts, lists and translations say, and one sheet. */
void program_review(struct arena *a, const struct model *m, const struct faces *faces,
    struct findings *f);
void sheet_review(struct arena *a, const struct model *m, const struct faces *faces,
    const bool *told, uint32_t assignment, struct findings *f);
/* What is wrong with the pictures alone, once their pixels are read; of all, or of one. */
void pictures_review(const struct model *m, struct findings *f);
void sheet_pictures_review(const struct model *m, uint32_t assignment, struct findings *f);

#endif
