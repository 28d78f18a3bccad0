/* sheets/figure.h - the drawings of an assignment on its sheet. */
#ifndef SHEETS_FIGURE_H
#define SHEETS_FIGURE_H

#include "sheets/figure_data.h"
#include "sheets/sheet.h"

/* All drawings of an assignment onto the flow, each at least a third of a page high. */
void sheet_figures(struct sheet *sh, const struct assignment *x);

#endif
