/* sheets/tensile.h - the record of tensile specimens on a grading sheet. */
#ifndef SHEETS_TENSILE_H
#define SHEETS_TENSILE_H

#include "sheets/sheet.h"

/* The table for specimens, its head filled: width, thickness, area, load, stress. */
struct grid *tensile_begin(struct sheet *sh);

/* For each tensile line with a least stress, the load that it comes to on its specimen:
 * load = stress x width x thickness, as wide as the line says its strips are, else for
 * each inch of width. Nothing where stress or thickness is not known. */
void tensile_loads(struct sheet *sh, const struct assignment *x);

#endif
