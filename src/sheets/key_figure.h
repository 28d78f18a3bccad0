/* sheets/key_figure.h - the drawn welds of a key with their answers. */
#ifndef SHEETS_KEY_FIGURE_H
#define SHEETS_KEY_FIGURE_H

#include "sheets/key.h"
#include "sheets/sheet.h"

/* Each joint drawing that has answers, its section at the left with throat or groove face
 * at the weld, all its answers beside it. */
void sheet_key_figures(struct sheet *sh, const struct assignment *x, const struct workings *w);

#endif
