/* sheets/piece_weight.h - what one piece of an assignment weighs as bought. */
#ifndef SHEETS_PIECE_WEIGHT_H
#define SHEETS_PIECE_WEIGHT_H

#include "model/model.h"

struct piece_weight {
	double lb;               /* of one */
	str steps;               /* "0.3750 in2 x 8.000 in x 0.2836 lb/in3" */
	const char *source;
	bool dagger;             /* the density was not seen in its source */
};

/* Plate, sheet, flat bar; pipe with a schedule; a round tube as outside diameter x wall x
 * length; a square tube or angle with its wall among its sizes, else that of the facts of
 * x (piece_wall_mm). False for any other piece
 * and for a metal that is not known. Holes and cut corners are not taken off. The steps
 * are worked in metric where asked. */
bool piece_weigh(struct arena *a, const struct assignment *x, const struct piece *p,
    bool metric, struct piece_weight *out);

#endif
