/* sheets/figure_key.h - letters in place of long labels, for a drawing that is too crowded
 * for large type: "a" at the dimension, "a: 3/8 in [9.5 mm]" under the drawing. */
#ifndef SHEETS_FIGURE_KEY_H
#define SHEETS_FIGURE_KEY_H

#include "base/arena.h"
#include "draw/fig.h"
#include "draw/fig_cut.h"
#include "draw/fig_view.h"

enum { FIGURE_KEYS = 26 };

/* What the letters a, b, c ... stand for. */
struct figure_key {
	struct arena *arena;
	str v[FIGURE_KEYS];
	size_t n;
};

/* Each replaces the labels of a figure; equal ones share a letter, and what is as short as
 * a letter stays. Arrays of the figure are copied into the arena first. */
void figure_key_joint(struct figure_key *k, struct fig_joint *f);
void figure_key_plate(struct figure_key *k, struct fig_plate *f);
void figure_key_cut(struct figure_key *k, struct fig_cut *f);
void figure_key_view(struct figure_key *k, struct fig_view *f);

#endif
