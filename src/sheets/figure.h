/* sheets/figure.h - from the facts of an assignment to its drawings. */
#ifndef SHEETS_FIGURE_H
#define SHEETS_FIGURE_H

#include "sheets/sheet.h"

/* The drawing that joint block j asks for, labels in both units. */
struct fig_joint;
void figure_joint(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_joint *out);

/* How the numbers of its beads are to be read; empty when none are drawn. */
str figure_bead_note(const struct edition *e, const struct assignment *x,
    const struct joint_block *j, const struct fig_joint *f);

/* The blank that plate block p describes. */
struct fig_plate;
struct fig_plate figure_plate(struct arena *a, const struct edition *e,
    const struct plate_block *p);

/* All drawings of an assignment onto the flow, each at least a third of a page high. */
void sheet_figures(struct sheet *sh, const struct assignment *x);

/* Whether a joint without fault, when its sizes lie far apart, finds room on a sheet at a
 * true scale. Sizes of a kind always do and are not tried. */
bool figure_has_room(const struct faces *faces, const struct fig_joint *f);

/* Why fitup cannot draw a block, in a few words; empty when it can. */
str figure_fault(struct arena *a, const struct assignment *x, const struct drawing *d);

#endif
