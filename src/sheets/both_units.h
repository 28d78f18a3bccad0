/* sheets/both_units.h - free words of a fact with their quantities as a sheet prints
 * them: US customary first, metric in brackets, or as the edition has it. */
#ifndef SHEETS_BOTH_UNITS_H
#define SHEETS_BOTH_UNITS_H

#include "units/quantity.h"

struct edition; /* sheets/edition.h; null: the usual one */

/* "50 degF least" to "50 °F [10 °C] least", "steel strip 1/4 x 1 in" to "steel strip
 * 1/4 x 1 in [6.4 x 25.4 mm]". A list under one unit ("1/2, 7/8 in") and a quantity that
 * has its bracket already stay as they are. A range may be in words of the edition's
 * language: "1/16 a 1/8 in". */
str both_units(struct arena *a, const struct edition *e, str text);

/* One value or, where hi is above lo, a range: "25-30 psi [172-207 kPa]". */
str value_text(struct arena *a, const struct edition *e, enum quantity_kind kind, double lo,
    double hi);

#endif
