/* base/finding.h - what is wrong, where, since when, and the least repair.
 *
 * Every stage reports into one list and carries on; nothing is printed here.
 * Findings are collected in any order and sorted once at the end by place (circles of
 * needs by what they rest on), so
 * that the report is the same on every machine. All strings live in the arena
 * of the list or outlive it. */
#ifndef BASE_FINDING_H
#define BASE_FINDING_H

#include "base/arena.h"
#include "base/source.h"

#include <stdarg.h>

enum finding_level { LEVEL_NOTE, LEVEL_WARNING, LEVEL_ERROR };

enum finding_name {
#define FINDING(symbol, level, name, help) FINDING_##symbol,
#include "base/finding.def"
#undef FINDING
#define RULE(symbol, level, class, name, custom, help, example) FINDING_##symbol,
#include "base/rule.def"
#undef RULE
	FINDING_COUNT
};

/* Who may silence a finding, and how. */
enum finding_class {
	CLASS_SAFETY,            /* nobody */
	CLASS_FIRM,              /* a waiver with reason, role and end */
	CLASS_CUSTOM             /* a waiver, or customs.md switches the custom off */
};

struct finding_info {
	const char *name;        /* as on screen: "untaught-skill" */
	enum finding_level level;
	const char *help;        /* what is wrong, and for a rule why */
	enum finding_class class;
	const char *custom;      /* the habit in words: "stick before wire-feed"; or "" */
	const char *example;     /* one case in words */
	const char *repair;      /* in general; "" for a rule, whose findings say it */
};

/* A further place that the same cause affects. */
struct related {
	struct pos pos;
	str assignment, skill;   /* either may be empty */
	str label;               /* in a few words */
	bool listed;             /* a finding of its own name that another explains */
	enum finding_name name;  /* of a listed one */
};

/* What on paper a finding concerns; decides which documents are held back. */
enum finding_scope {
	SCOPE_FILE,              /* the assignment named, or else the whole program */
	SCOPE_ASSIGNMENTS,       /* the assignment named and those of `related` */
	SCOPE_QUARTER,           /* one quarter */
	SCOPE_PROGRAM            /* everything */
};

/* Why a finding is accepted on purpose. */
struct waived {
	str reason, role, until;
};

/* How two lines of program.md stand to one another, or one to its place. Assignments
 * are indices of the model, weeks are counted from the first of the program. */
struct standing_wrong {
	uint32_t first, second;  /* first should come before second; equal: no such two */
	uint64_t first_week, second_week;
	/* The first move that is proposed, to a week's end; of optional-teacher the optional
	 * work, of a rule of order that nothing listed meets the work in no course that
	 * would, and no week. */
	uint32_t mover;
	uint64_t week, end;      /* end: the farthest week that serves as well */
	/* Of two lines, where they were worked out: the moves that the repair names. */
	struct { uint32_t mover; uint64_t week; } told[2];
	uint32_t ntold;
};

/* A word of the source, and what may be meant in its place. Both stand on one line. */
struct slip {
	struct pos pos;          /* of the word, or of what stands before it on its line */
	str wrong, right;        /* right: empty where nothing is likely */
	str say;                 /* the repair in words; empty: as the finding says it */
	bool read;               /* it is not what is meant, but it was not left out either */
	bool guess;              /* it does not look like what is written */
	struct slip *next;       /* a less likely one, or null */
};

struct finding {
	enum finding_name name;
	enum finding_level level;
	struct pos pos;
	enum finding_scope scope;
	uint32_t quarter;        /* for SCOPE_QUARTER, from 1 */
	str assignment, skill;   /* ids concerned; may be empty */
	str message;             /* one sentence, no full stop at the end */
	str cause;               /* may be empty */
	str repair;              /* may be empty; imperative, no full stop */
	struct related *related;
	size_t nrelated, related_cap;
	const struct waived *waived; /* null: it stands */
	const struct standing_wrong *wrong; /* null: not about the order, or no move */
	struct slip *slips;      /* null: none is likely */
	/* From 1: of those that have a depth, a lesser one is told first, wherever it
	 * stands; 0: by place alone. */
	uint32_t depth;
};

struct findings {
	struct arena *arena;
	struct finding *v;
	size_t n, cap;
};

struct findings *findings_new(struct arena *a);

/* Adds a finding at its own level and returns it to be filled further. The pointer
 * is good until the next add. */
struct finding *finding_add(struct findings *f, enum finding_name name, struct pos pos,
    const char *format, ...) __attribute__((format(printf, 4, 5)));
/* The same for a list of arguments already begun. */
struct finding *finding_addv(struct findings *f, enum finding_name name, struct pos pos,
    const char *format, va_list *ap);

/* Texts for a finding just added. */
void finding_cause(struct findings *f, struct finding *d, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void finding_repair(struct findings *f, struct finding *d, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* Notes what a word of its line likely should be, after those noted before: `offer` makes
 * it the repair, for `slip` the repair says it in words of its own, `guess` is one of
 * several that are worth a trial. */
void finding_offer(struct findings *f, struct finding *d, struct pos pos, str wrong,
    str right);
struct slip *finding_slip(struct findings *f, struct finding *d, struct pos pos, str wrong,
    str right);
void finding_guess(struct findings *f, struct finding *d, struct pos pos, str wrong,
    str right);
struct related *finding_relate(struct findings *f, struct finding *d, struct pos pos);

/* Lists a finding, of whatever list, and what it lists itself under the one that explains
 * it; its texts must live as long as f. */
void finding_list(struct findings *f, struct finding *to, const struct finding *d);
/* The same for one of f itself, which then goes at the next findings_sweep: until that its
 * name is FINDING_COUNT, and every other finding keeps its index. The one that explains it
 * is as grave, and holds back what it held. */
void finding_take(struct findings *f, struct finding *to, struct finding *d);
void findings_sweep(struct findings *f);

/* Appends a finding of another list, whose texts must live as long as f. What either list
 * adds to it later is its own. */
void finding_copy(struct findings *f, const struct finding *d);
/* Appends what another list holds, in the same way. */
void findings_join(struct findings *f, const struct findings *more);

/* The most likely word for a misspelt one among n candidates, or an empty str
 * when none is near: at most a third of its letters wrong. Ties: first in list. */
str likely_word(str wrong, const str *words, size_t n);

/* By path, line, column, then name, then message. Stable; drops exact repeats. */
void findings_sort(struct findings *f);
/* Those that stand; waived ones are counted apart. */
size_t findings_count(const struct findings *f, enum finding_level level);
size_t findings_count_waived(const struct findings *f);

const struct finding_info *finding_info(enum finding_name name);
/* Whether it is a rule about what comes before what: a stretch of rows in rule.def. */
bool finding_is_of_order(enum finding_name name);
const char *level_word(enum finding_level level);

#endif
