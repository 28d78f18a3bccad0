/* model/shop_word.h - names of shop.md that sheets use. */
#ifndef MODEL_SHOP_WORD_H
#define MODEL_SHOP_WORD_H

#include "model/said.h"

enum shop_sort { SHOP_STATION, SHOP_MACHINE, SHOP_SORTS };

/* UNKNOWN_WORD for a name that shop.md does not give to anything of a sort; the same
 * name on further sheets is added to the first finding. */
void shop_word_complain(struct binder *b, struct said t, enum shop_sort sort);
/* Once all sheets are read: where shop.md has just one thing that no sheet names, that
 * is offered as what was renamed. */
void shop_words_settle(struct binder *b);

#endif
