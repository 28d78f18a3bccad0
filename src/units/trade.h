/* units/trade.h - sizes that the trade names instead of measuring: sheet gauge and
 * pipe by nominal size and schedule.
 *
 * Tables are generated from templates/tables/gauge.csv and pipe.csv, which name
 * their sources (Manufacturers Standard Gauge, Brown & Sharpe, U.S. Standard,
 * galvanized sheet gauge; ASME B36.10M). Rows are static and never change. */
#ifndef UNITS_TRADE_H
#define UNITS_TRADE_H

#include "base/str.h"

enum sheet_metal {
	METAL_NONE,              /* not known: a gauge has no thickness yet */
	METAL_STEEL, METAL_STAINLESS, METAL_ALUMINUM, METAL_GALVANIZED,
	METAL_COUNT
};

/* The metal that a material's words name ("A36 plate", "304 sheet", "5052-H32",
 * "galvanized steel"), or METAL_NONE. Bare "sheet" names none. */
enum sheet_metal sheet_metal_of(str words);
const char *sheet_metal_word(enum sheet_metal metal);

/* Thickness in inches of a gauge, or 0 when the table has no such gauge. */
double gauge_thickness_in(enum sheet_metal metal, unsigned gauge);

struct pipe_row {
	const char *nps;         /* "1-1/2" */
	const char *schedule;    /* "40", "STD", "XXS" */
	const char *ident;       /* second name of the wall: "STD", "XS", "XXS" or "" */
	int dn;                  /* nominal diameter, metric */
	double od_in, wall_in;
	double lb_ft;            /* printed plain-end weight, 10.69 rule */
	const char *verified;
};

/* The row for nps ("6", "1-1/2") and schedule ("40", "std"), or null. An empty
 * schedule finds the first row of that size, good for od_in and dn only. */
const struct pipe_row *pipe_find(str nps, str schedule);
/* All rows, in order of size then schedule. */
const struct pipe_row *pipe_rows(size_t *n);

#endif
