/* sheets/weldment.h - from the members of a plate block to the picture of the weldment. */
#ifndef SHEETS_WELDMENT_H
#define SHEETS_WELDMENT_H

#include "draw/fig_iso.h"
#include "sheets/sheet.h"

/* The figure that w asks for, labels as the edition has them. Works in a. */
struct fig_iso weldment_figure(struct arena *a, const struct edition *e,
    const struct assignment *x, const struct weldment *w);
/* Why it cannot be drawn, in a few words; empty when it can. */
str weldment_fault(struct arena *a, const struct weldment *w);
/* Reports members without size, in each other or touching nothing, each at its line, and a
 * weldment that has no room on a sheet. */
void weldment_review(struct arena *a, const struct faces *faces, struct findings *f,
    const struct assignment *x, const struct weldment *w);

#endif
