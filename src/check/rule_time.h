/* check/rule_time.h - the parts of the rules about time and place. */
#ifndef CHECK_RULE_TIME_H
#define CHECK_RULE_TIME_H

#include "check/load.h"
#include "check/rules.h"

/* "152", "7.5": hours for a sentence, in the arena of the findings. */
str say_hours(const struct rule_context *x, double h);
/* a over b in whole percent, rounded away from 100 so that 100.4 % is never told as
 * 100 %. */
unsigned percent_of(double a, double b);
/* Whether a is more than b by more than arithmetic leaves behind. */
static inline bool is_more_h(double a, double b)
{
	return a > b + 1e-6;
}

void rule_time(struct rule_context *x);

/* Courses whose assignments take more than their lab hours: the one cause of quarters
 * and stations that are full only because of them. By course. */
struct overfull {
	bool any;
	double *over_h;          /* 0: it fits, or is waived by name */
	size_t *finding;         /* index of its finding */
	/* By section: quarters too long for it, told together, and the hours a week that
	 * they want; 0: none is. */
	double *week_h;
	size_t *long_finding;
	const bool **too_long;   /* by quarter */
	uint32_t crowd;          /* cohort too large for several stations, told; NONE */
};

struct overfull *overfull_new(struct rule_context *x);
/* Takes the course of the finding reported last. */
void overfull_note(struct rule_context *x, struct overfull *o, uint32_t course,
    double over_h);
/* Whether what a row lacks is told already, by a course that is too full or a section
 * that is not open long enough: the row is then listed there. A row that fits, but with
 * hours of such a course or section, is told too: how tight it is is not known. */
bool overfull_explains(struct rule_context *x, const struct overfull *o,
    const struct load *l, const struct load_row *r);

/* Finds and tells a cohort too large for several stations, and whether that explains a
 * row. Not asked where a waiver covers a station. */
void crowd_find(struct rule_context *x, const struct load *l, struct overfull *o);
bool crowd_explains(const struct overfull *o, const struct load *l,
    const struct load_row *r);

/* The sitting that asks most of the station. */
const struct sitting *heaviest_sitting(const struct load *l, const struct load_row *r);
/* How many students of that sitting leave the row within `limit_h`; NONE when not even
 * their absence does. */
uint32_t students_that_fit(const struct load *l, const struct load_row *r,
    const struct sitting *t, double limit_h);
/* Places that bring the row within `share` of what is open, beyond those there are. */
uint32_t places_to_add(const struct load_row *r, uint32_t places, double share);

/* Stations against what the cohorts ask of them, and the bender. */
void judge_loads(struct rule_context *x, const struct stints *s, struct overfull *o);
/* Quarters against the hours of sections, one finding a section. */
void judge_quarters(struct rule_context *x, const struct stints *s, struct overfull *o);
void judge_sittings(struct rule_context *x, const struct load *l, struct overfull *o);
void judge_bender(struct rule_context *x, const struct load *l);

/* A queue of more than a week at a station in a term that fits. Moves are
 * tried for the repair until *budget lines of program.md have been read again. */
enum { TRIED_MOST = 2000000 };
void judge_peak(struct rule_context *x, const struct load *l, const struct load_row *r,
    size_t *budget);

/* "Day 2026 (13 in quarter 1)": the cohorts that ask for a row. */
str name_cohorts(const struct rule_context *x, const struct load *l,
    const struct load_row *r);
/* ", section day", or nothing where there is but one. */
str name_section(const struct rule_context *x, const struct load_row *r);

/* Keeps a finding from holding back paper: no packet prints it. */
static inline void keep_aside(struct finding *d)
{
	d->scope = SCOPE_ASSIGNMENTS;
}

#endif
