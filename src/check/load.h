/* check/load.h - how many hours each student works where and when, and how many hours
 * a station is asked for by the cohorts of cohorts.md.
 *
 * Reckoned from the order of program.md; nothing is judged here. Hours are those of the
 * program, whatever their minutes. The work of an assignment is spread evenly from its
 * week to the week before the next start in its course, or to the last week. */
#ifndef CHECK_LOAD_H
#define CHECK_LOAD_H

#include "order/order.h"

/* One assignment as work in one quarter. */
struct stint {
	uint32_t assignment, course, station; /* station NONE: none named */
	uint32_t first, last;    /* weeks, both included */
	double hours;            /* of one student */
	uint32_t team;           /* students who share a place; 1 or more */
	uint32_t bends;          /* bend specimens of one attempt, as far as written */
	bool optional;
	bool longest;            /* of a choice: no branch at its station is longer, nor
	                          * as long and before it; else true */
	bool longest_of_all;     /* the same over all branches, wherever they stand */
};

struct stints {
	const struct model *m;
	struct stint *v;          /* in the order of the walk */
	uint32_t *at;            /* by quarter from 1: first index; nquarters + 2 */
};

struct stints *stints_new(struct arena *a, const struct order *o);

/* Hours of the assignments of each course, by course. Optional work is apart; a choice
 * counts its longest branch. */
struct course_load {
	double must_h, optional_h;
	uint32_t lines;          /* assignments that have a place in it */
};
struct course_load *course_loads(struct arena *a, const struct stints *s);

/* Hours that one student works in a quarter, optional work left out. */
double quarter_hours(const struct stints *s, uint32_t quarter);

/* Place hours that n students ask of a station in a quarter: a team counts as one. */
double place_hours(const struct stints *s, uint32_t quarter, uint32_t station, uint32_t n,
    bool optional);

/* One cohort in one quarter, in a term. Terms are numbered in time; quarters follow each
 * other without a pause. */
struct sitting {
	uint32_t term, section, cohort, quarter;
};

/* What one station is asked for in one term. */
struct load_row {
	uint32_t term, section, station; /* section NONE: of all sections together */
	uint32_t from, end;      /* in struct load.sittings */
	double must_h, optional_h; /* place hours asked */
	double open_h;           /* place hours offered in the term; 0: not known */
	bool closed;             /* shop.md does not open the station to the section */
	double *week_h;          /* asked without optional work, by week from 1 */
};

struct load {
	const struct stints *stints;
	struct sitting *sittings; size_t nsittings, sittings_cap; /* by term, section */
	struct load_row *v; size_t n, cap; /* by term, section, station */
	str *terms; size_t nterms; /* "Fall 2026", by number */
	size_t near;             /* terms of the first year; later counts are guesses */
};

/* Everything that the cohorts ask for from their next quarter to their last. Nothing
 * without cohorts, or when the program has no weeks. */
struct load *load_new(struct arena *a, const struct stints *s);

/* Fills week_h, by week from 1, with what a row is asked for without optional work, where
 * s is the program or a trial of it with the same quarters. */
void load_weeks(const struct load *l, const struct load_row *r, const struct stints *s,
    double *week_h);

/* Hours in a week that one place of a station is open to a section (NONE: to all of
 * them together); 0 when shop.md does not say. */
double station_week_h(const struct model *m, uint32_t station, uint32_t section);
/* Whether shop.md opens the station to the section. */
bool station_serves(const struct model *m, uint32_t station, uint32_t section);

/* Bend specimens that "2 of C at 2G, 2 at 5G, D1.1-2020" asks for; 0 when no count is
 * written. */
uint32_t bends_asked(str text);
/* The 2 of "2 students, each welds one horse"; 1 when it begins with no number. */
uint32_t team_size(const struct assignment *a);

#endif
