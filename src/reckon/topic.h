/* reckon/topic.h - the topics of `fitup reckon`, and the reader of what is given.
 *
 * A topic is a row of topics.c: its word, one line, its inputs and its function. The
 * words of a command line are read as KEY VALUE KEY VALUE ..., where a key is a word of
 * the topic and a value is everything up to the next key. Wrong input gives a reason,
 * never a number. */
#ifndef RECKON_TOPIC_H
#define RECKON_TOPIC_H

#include "reckon/answer.h"
#include "units/quantity.h"

enum input_kind {
	INPUT_LENGTH, INPUT_LENGTHS, INPUT_ANGLE, INPUT_AMPS, INPUT_VOLTS, INPUT_HOURS,
	INPUT_WEIGHT, INPUT_TONS, INPUT_FLOW, INPUT_PRESSURE, INPUT_STRENGTH, INPUT_SPEED,
	INPUT_PERCENT, INPUT_COUNT,
	INPUT_NUMBER,            /* no unit */
	INPUT_RATE,              /* lb/h, kg/h; held in lb/h */
	INPUT_VOLUME,            /* ft3, L, m3; held in ft3 */
	INPUT_CHOICE,            /* one of the words of `hint`, parted by | */
	INPUT_WORDS,             /* free words */
	INPUT_KINDS
};

enum input_need {
	NEED_OWED,               /* must be given */
	NEED_MAY                 /* may be left out; `otherwise` then stands for it */
};

struct input {
	const char *key;
	enum input_kind kind;
	enum input_need need;
	const char *otherwise;   /* of NEED_MAY: the value taken, or null for none */
	const char *hint;        /* what it is; of a choice: its words */
	bool zero_ok;            /* 0 is a sound value; below it none is */
	bool range_ok;           /* of a range the high end is taken */
};

enum { TOPIC_INPUTS = 14 };

struct given;

struct topic {
	const char *word, *does; /* "heat-input", one line for the list */
	const char *example;     /* a call that works, without "fitup reckon" */
	void (*work)(const struct given *g, struct answer *an);
	struct input inputs[TOPIC_INPUTS];
};

/* All topics in the order of the list. */
const struct topic *topic_rows(size_t *n);
/* By word without regard to case, or null; *likely is then the word meant, or empty. */
const struct topic *topic_find(str word, str *likely);
/* What the topic does, a line for each input with its kind and hint, and an example. */
void topic_usage(struct buf *b, const struct topic *t);

/* Reads the words after the topic and works the answer out in a, by metric formula and
 * steps where asked. A fault is in answer->fault, naming the input. */
struct answer *topic_reckon(struct arena *a, const struct topic *t, str *words, size_t n,
    bool metric);

/* A whole call, "punch diameter 13/16 in thickness 1/4 in": topic and inputs. The answer
 * of an unknown topic is only a fault. *topic may come out null. */
struct answer *topic_call(struct arena *a, str call, bool metric, const struct topic **topic);

/* What a topic's function asks for, by key. A key that the topic has not is our bug. */
bool given_has(const struct given *g, const char *key);
/* Base unit of the kind (mm, deg, A, V, h, lb, cfh, psi, in/min, %); tons and ksi for
 * INPUT_TONS and INPUT_STRENGTH. 0 when it was not given. */
double given_real(const struct given *g, const char *key);
/* The text, trimmed; of a choice the word as the topic spells it. */
str given_words(const struct given *g, const char *key);
bool given_is(const struct given *g, const char *key, const char *word);
/* INPUT_LENGTHS, mm. */
const double *given_list(const struct given *g, const char *key, size_t *n);

/* Figures of the topics of stock: of one piece, and of all where a count is given. */
#define WEIGHT_OF_ONE "Weight"
#define WEIGHT_OF_ALL "Weight of all"

/* Each file of topics shares its functions with the table here. */
#define TOPIC_WORK(name) void work_##name(const struct given *g, struct answer *an)
TOPIC_WORK(fillet);
TOPIC_WORK(lap_edge);
TOPIC_WORK(throat);
TOPIC_WORK(leg);
TOPIC_WORK(groove);
TOPIC_WORK(weld_metal);
TOPIC_WORK(filler);
TOPIC_WORK(arc_time);
TOPIC_WORK(gas);
TOPIC_WORK(purge);
TOPIC_WORK(heat_input);
TOPIC_WORK(preheat);
TOPIC_WORK(interpass);
TOPIC_WORK(carbon);
TOPIC_WORK(bend);
TOPIC_WORK(strips);
TOPIC_WORK(qualify);
TOPIC_WORK(pipe);
TOPIC_WORK(plate);
TOPIC_WORK(bar);
TOPIC_WORK(tube);
TOPIC_WORK(angle);
TOPIC_WORK(gauge);
TOPIC_WORK(brake);
TOPIC_WORK(shear);
TOPIC_WORK(punch);
TOPIC_WORK(roll);
TOPIC_WORK(allowance);
TOPIC_WORK(setback);
TOPIC_WORK(blank);
TOPIC_WORK(cylinder);
TOPIC_WORK(elbow);
TOPIC_WORK(saddle);
TOPIC_WORK(cone);
TOPIC_WORK(box);
TOPIC_WORK(square_round);
TOPIC_WORK(torch);
TOPIC_WORK(shade);
TOPIC_WORK(acetylene);
TOPIC_WORK(credit_hours);

#endif
