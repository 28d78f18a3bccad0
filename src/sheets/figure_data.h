/* sheets/figure_data.h - from the facts of an assignment to the plain data of its drawings.
 *
 * Labels in both units, made in the arena. e null: as usual, in English. */
#ifndef SHEETS_FIGURE_DATA_H
#define SHEETS_FIGURE_DATA_H

#include "draw/fig.h"
#include "model/model.h"

struct edition;

/* The drawing that joint block j asks for, labels in both units. */
void figure_joint(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_joint *out);

/* Whether a drawing marks the stop and restart, and how far to the right of mid-length: its
 * words have to name a place. */
bool figure_restart(const struct joint_block *j, double *right_mm);

/* Whether it is shown from above or from its end too. */
bool figure_has_plan(const struct fig_joint *f, const struct joint_block *j);

/* How the numbers of its beads are to be read; empty when none are drawn. */
str figure_bead_note(const struct edition *e, const struct assignment *x,
    const struct joint_block *j, const struct fig_joint *f);

/* Of torch cuts what their signs mean; empty of others. */
str figure_plate_signs(struct arena *a, const struct edition *e, const struct plate_block *p);
/* The line above a blank: from where its sizes count, and its signs. */
str figure_plate_head(struct arena *a, const struct edition *e, const struct plate_block *p);
/* The blank that plate block p describes. */
struct fig_plate figure_plate(struct arena *a, const struct edition *e,
    const struct plate_block *p);

/* Whether a joint without fault, when its sizes lie far apart, finds room on a sheet at a
 * true scale. Sizes of a kind always do and are not tried. */
bool figure_has_room(const struct faces *faces, const struct fig_joint *f);

/* Why fitup cannot draw a block, in a few words; empty when it can. */
str figure_fault(struct arena *a, const struct assignment *x, const struct drawing *d);

#endif
