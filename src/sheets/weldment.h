/* sheets/weldment.h - from the members of a plate block to the picture of the weldment. */
#ifndef SHEETS_WELDMENT_H
#define SHEETS_WELDMENT_H

#include "draw/fig_iso.h"
#include "sheets/sheet.h"

/* The figure that w asks for, labels as the edition has them. Works in a. */
struct fig_iso weldment_figure(struct arena *a, const struct edition *e,
    const struct assignment *x, const struct weldment *w);
/* A figure for the sheets of one bundle: what is seen takes long to work out. */
struct weldment_made {
	const struct weldment *of;
	struct fig_iso figure;
	struct weldment_made *next;
};
/* The same for a sheet; made once when the sheet shares its figures. */
struct fig_iso sheet_weldment(struct sheet *sh, const struct assignment *x,
    const struct weldment *w);
/* Why it cannot be drawn, in a few words; empty when it can. */
str weldment_fault(struct arena *a, const struct weldment *w);
/* Reports members without size, in each other or touching nothing, each at its line, and a
 * weldment that has no room on a sheet. */
void weldment_review(struct arena *a, const struct faces *faces, struct findings *f,
    const struct assignment *x, const struct weldment *w);

#endif
