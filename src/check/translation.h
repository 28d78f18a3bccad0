/* check/translation.h - whether what assignments/es says is what the originals say: the
 * same figures, steps and hold points, nothing of safety left out. */
#ifndef CHECK_TRANSLATION_H
#define CHECK_TRANSLATION_H

#include "base/finding.h"
#include "model/translation.h"

void translations_check(struct arena *scratch, const struct model *m, struct findings *f);

#endif
