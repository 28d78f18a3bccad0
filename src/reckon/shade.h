/* reckon/shade.h - least filter-lens shade. 29 CFR 1910.133(a)(5), the same figures
 * as 29 CFR 1915.153 Table I-1; generated from templates/tables/shade.csv.
 *
 * Neighboring rows share an end value; an input on it takes the darker row. Past the
 * last row the darkest row is given: compare with hi. The least shade was read in the
 * regulation in every row; the suggested one is mostly recalled from ANSI Z49.1, so
 * that seen_of(verified) speaks of it alone. */
#ifndef RECKON_SHADE_H
#define RECKON_SHADE_H

#include "base/str.h"
#include "reckon/source.h"

struct shade {
	const char *process, *grade;      /* grade: light, medium, heavy, or "" */
	double lo, hi;           /* unit below; hi 0 means no upper end */
	const char *unit;        /* "A", "in" of plate, or "" */
	int least;               /* lighter than this is not allowed */
	const char *suggested;   /* a comfort shade such as "10" or "4-5", or "" */
	const char *verified;
};

#define SHADE_SOURCE "29 CFR 1910.133(a)(5)"

/* The row for a process by its letters, with or without a variant (SMAW, GMAW-S,
 * FCAW-G, GTAW, CAC-A, PAW, PAC, CAW, TB torch brazing, TS torch soldering) at the
 * highest amperes on the sheet; null for a process not in the table or one that
 * goes by thickness. */
const struct shade *shade_by_current(str process, double highest_amps);
/* The same for OFW and OFC by the thickest plate. */
const struct shade *shade_by_thickness(str process, double thickness_mm);
/* Whether the table goes by thickness of plate for this process (OFW, OFC). */
bool shade_is_by_thickness(str process);

#endif
