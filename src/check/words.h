/* check/words.h - skill words that skills.md does not list.
 *
 * Every such word is one finding, wherever and however often it is written. When
 * a misspelt word stands under Teaches, the skill it most likely means lets the
 * check tell a slip of the pen from a skill that nobody teaches. */
#ifndef CHECK_WORDS_H
#define CHECK_WORDS_H

#include "order/order.h"

struct words;

/* Reports each unknown word once, its further places as related; the places are
 * in the order of o, assignments without a place last. Likely words are worked
 * out for the first 200. Lives in arena a; findings are borrowed by words_relate
 * until the next finding is added by anyone else. */
struct words *words_check(struct arena *a, const struct order *o, struct findings *f);

/* The skill that an unknown word most likely means, or NONE. */
uint32_t words_meant(const struct words *w, str written);

/* Lists a need under the finding of the misspelt word that would have met it. */
void words_relate(const struct words *w, struct findings *f, str written,
    struct pos pos, str assignment, str skill);

#endif
