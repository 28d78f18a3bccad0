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

/* Stations against what the cohorts ask of them, and the bender. */
void judge_loads(struct rule_context *x, const struct stints *s);
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
