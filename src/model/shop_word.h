/* model/shop_word.h - names of shop.md that sheets use. */
#ifndef MODEL_SHOP_WORD_H
#define MODEL_SHOP_WORD_H

#include "model/said.h"

enum shop_sort { SHOP_STATION, SHOP_MACHINE, SHOP_SORTS };

/* Notes a name of b->a that shop.md does not give to anything of a sort. */
void shop_word_note(struct binder *b, struct said t, enum shop_sort sort);
/* Once all sheets are read: UNKNOWN_WORD for each name that the n parts of them noted, on
 * whatever sheets it stands. Where shop.md has just one thing that no sheet names, that
 * is offered as what was renamed. */
void shop_words_settle(struct binder *b, const struct binder *const *parts, size_t n);

#endif
