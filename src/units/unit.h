/* units/unit.h - the one table of units. Private to units. */
#ifndef UNITS_UNIT_H
#define UNITS_UNIT_H

#include "units/quantity.h"

/* base = (n mul + add div) / div, so that one division of whole numbers converts. */
struct unit {
	str name;
	enum quantity_kind kind;
	const char *print;
	double mul, div, add;
	enum quantity_form form; /* FORM_FRACTION stands for any US customary unit */
};

/* By name without regard to case, or null. */
const struct unit *unit_find(str name);
/* The unit a sheet would use for a kind: in, deg, A ... null for none. */
const struct unit *unit_usual(enum quantity_kind kind);
/* The unit most likely meant by a misspelt one, of that kind (or any). */
str unit_likely(str wrong, enum quantity_kind kind);

/* Finds the unit written at `at` (past blanks; a hyphen before letters is passed
 * over, as in 16-gauge). *end is where it ends and *start where it begins; both are
 * `at` when no word or sign stands there. Null for a word that is no unit. */
const struct unit *unit_read(str s, size_t at, size_t *start, size_t *end);

#endif
