/* reckon/answer.h - one piece of shop arithmetic worked out: what was given, formula,
 * steps, figures with their units, sources and conditions. Text lives in the arena.
 *
 * Figures keep full precision; they are rounded where they are printed. Formula and steps
 * are worked in one system, US customary or metric; figures print in both. */
#ifndef RECKON_ANSWER_H
#define RECKON_ANSWER_H

#include "base/buf.h"
#include "reckon/source.h"

/* What a figure measures: its base unit here, and how it prints (answer.c). */
enum measure {
	MEASURE_LENGTH,          /* mm; fraction of an inch when it is one */
	MEASURE_FINE,            /* mm; decimal inches */
	MEASURE_AREA,            /* mm2 */
	MEASURE_WEIGHT,          /* lb */
	MEASURE_PER_FOOT,        /* lb/ft, two places */
	MEASURE_DEPOSIT,         /* lb/ft, three places */
	MEASURE_PER_AREA,        /* lb/ft2 */
	MEASURE_HEAT,            /* kJ/in */
	MEASURE_HOURS, MEASURE_MINUTES, MEASURE_FLOW, MEASURE_VOLUME, MEASURE_TEMPERATURE,
	MEASURE_TONS, MEASURE_TONS_PER_FOOT, MEASURE_PRESSURE, MEASURE_SPEED,
	MEASURE_RUN,             /* mm; feet, meters */
	MEASURE_RATE,            /* lb/h */
	MEASURE_DENSITY,         /* lb/in3 */
	MEASURE_STRENGTH,        /* ksi */
	MEASURE_PERCENT, MEASURE_ANGLE, MEASURE_NUMBER, MEASURE_COUNT,
	MEASURE_WORDS,           /* no number */
	MEASURES
};

struct figure {
	const char *name;
	enum measure measure;
	double value, high;      /* base unit; high above value makes a range */
	str words;               /* MEASURE_WORDS; else a remark after the figure */
	enum seen seen;
};

struct answer_input {
	const char *key;
	str text;                /* as the sheet would print it */
	bool assumed;            /* not given: the topic's own value */
};

struct answer {
	struct arena *arena;
	bool metric;             /* formula and steps; set before the work begins */
	struct answer_input *inputs;
	size_t ninputs, inputs_cap;
	str *steps;
	size_t nsteps, steps_cap;
	struct figure *figures;
	size_t nfigures, figures_cap;
	str *sources;
	size_t nsources, sources_cap;
	str *notes;
	size_t nnotes, notes_cap;
	const char *formula;
	str fault;               /* why there is no answer; then the rest is void */
};

void answer_figure(struct answer *an, const char *name, enum measure measure,
    double value,
    enum seen seen);
void answer_range(struct answer *an, const char *name, enum measure measure, double value,
    double high, enum seen seen);
void answer_words(struct answer *an, const char *name, enum seen seen, const char *format,
    ...) __attribute__((format(printf, 4, 5)));
/* A remark after the figure added last. */
void answer_remark(struct answer *an, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
void answer_step(struct answer *an, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
void answer_note(struct answer *an, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* A source that is there already is not added again. */
void answer_source(struct answer *an, const char *source);
/* Gives up: the first reason stays. */
void answer_refuse(struct answer *an, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* Whether a figure was not seen in a copy of its source. */
bool answer_has_dagger(const struct answer *an);

/* A zero-ended text in the arena. */
const char *answer_say(struct answer *an, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* For steps: a number to at most four places; a figure of a measure in the system of the
 * answer, to the places of a reckoning, without its unit and with it. */
const char *answer_number(struct answer *an, double x);
const char *answer_bare(struct answer *an, enum measure m, double base);
const char *answer_value(struct answer *an, enum measure m, double base);

/* The figure in both units without its name: "45.24 kJ/in [1.78 kJ/mm]"; metric first:
 * "1.78 kJ/mm [45.24 kJ/in]". */
void figure_text(struct buf *b, const struct figure *f, bool metric_first);
/* The value in its US or metric unit, and the unit's name; "" when there is none.
 * MEASURE_WORDS has neither. */
double measure_us(enum measure m, double base);
double measure_metric(enum measure m, double base);
const char *measure_us_unit(enum measure m);
const char *measure_metric_unit(enum measure m);
/* "weights to 0.01 lb": how a measure is rounded in print. */
const char *measure_rounding(enum measure m);

#endif
