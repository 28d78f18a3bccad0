/* model/when.h - a day or a term, as "2027-09-01" or "fall-2027".
 *
 * Nothing here knows today's date. A term is a stretch of months of one calendar year,
 * Winter before Spring before Summer before Fall: January to March, April to June, July
 * and August, September to December (common practice of quarter calendars, no source). */
#ifndef MODEL_WHEN_H
#define MODEL_WHEN_H

#include "base/str.h"

/* The first and the last day meant, each as year * 10000 + month * 100 + day. */
struct when {
	uint32_t first, last;
};

/* False when s is neither a day that the calendar has, in years 1900 to 2999, nor a
 * term and its year with a hyphen or a blank between; case plays no part. */
bool when_parse(str s, struct when *out);

/* Whether `until` is over by `date`: its last day lies before the first of date, so
 * that a named day or term is itself still within. */
bool when_over(struct when until, struct when date);

#endif
