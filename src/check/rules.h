/* check/rules.h - the rules of the trade: how they are run and what each may ask.
 *
 * A rule is one function and one row in rules.def. It looks at the order in its
 * context, earliest first, or at one sheet, and reports; it never repairs and never adds a
 * need. The same fault in several orders becomes one finding that names the entry paths. */
#ifndef CHECK_RULES_H
#define CHECK_RULES_H

#include "check/check.h"
#include "check/repair.h"
#include "check/works.h"

struct rule_told;
struct rule_moves;
struct trade_reads;
struct limit_faults;
struct settings;
struct test_lines;
struct claims;

struct rule_context {
	const struct model *m;
	const struct order *o;   /* the order under judgement */
	struct findings *f;      /* for finding_cause, finding_repair, finding_relate */
	struct arena *scratch;   /* dropped after the check */
	const struct work *work; /* by assignment */
	const bool *off;         /* by finding name: its custom is switched off */
	uint32_t unread;         /* the first unit of which a word was left out, or behind work
	                          * that no file defines; NONE */
	struct rule_told *told;
	/* Only for rules of the whole program. */
	struct work_lists lists;
	struct view *view;
	struct rule_moves *moves;
	struct trade_reads *reads; /* check/rule_trade.h */
	struct limit_faults *limits; /* check/rule_machine.h; null elsewhere */
	/* Only for rules of a sheet, and of the one under judgement. */
	const struct settings *settings; /* check/rule_metal.h */
	const struct test_lines *tests; /* check/rule_test.h */
	struct claims *claims;   /* check/rule_text.h: kept from sheet to sheet */
};

struct rule {
	void (*run)(struct rule_context *x);
	enum rule_when { RULE_ONCE, RULE_EACH } when;
};

/* A rule that looks at one sheet and the shop, and at nothing of the order. */
typedef void rule_judge(struct rule_context *x, uint32_t assignment);
struct sheet_rule {
	rule_judge *judge;
	enum sheet_which { SHEETS_ALL, SHEETS_WORKED, SHEETS_WELDED } which;
};

/* Paper work without metal, tests or machines, which has nothing for most rules of a
 * sheet; a large program is mostly that. */
bool assignment_is_bare(const struct assignment *a);

/* The first place where something is done, by how sure it is that a student does it.
 * Assignments, NONE when there is none. */
struct first {
	uint32_t sure;           /* every student does it there; of a choice every branch */
	uint32_t optional;       /* only those who take optional work */
	uint32_t branch;         /* only those who choose that branch */
};

/* How a student who comes to an assignment stands to something done first. */
enum met {
	MET, MET_OPTIONAL, MET_BRANCH, /* strictly earlier; the last two not by everyone */
	MET_LATER,               /* at the same place or later, or in another branch */
	MET_NEVER
};

/* Whether a finding's custom is switched off; a costly rule may ask first. */
static inline bool rule_is_off(const struct rule_context *x, enum finding_name name)
{
	return x->off[name];
}

/* Reports a fault of an assignment (NONE: of the whole program) and returns the
 * finding to be filled further; never null. When the custom is off, or another order
 * showed the same fault at the same place, what is returned is seen by nobody. The
 * pointer is good until the next report. Scope is the assignment's. */
struct finding *rule_report(struct rule_context *x, enum finding_name name,
    struct pos pos, uint32_t assignment, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

/* The first place at which `is` holds. One pass of the order: for a few questions,
 * not for one a line. */
struct first rule_first(const struct rule_context *x,
    bool (*is)(const struct rule_context *x, uint32_t assignment, const void *with),
    const void *with);

/* For one question a line: the first places by key, in one pass. `keys` writes the
 * keys (below nkeys, each once) of an assignment to v, at most `most`, and returns
 * how many. */
enum { RULE_KEYS_MOST = 64 };
struct first *rule_firsts(const struct rule_context *x, uint32_t nkeys,
    uint32_t (*keys)(const struct rule_context *x, uint32_t assignment, uint32_t *v,
    uint32_t most));

/* The first place at which a skill is taught at a level or higher. */
struct first rule_taught(struct rule_context *x, uint32_t skill, enum skill_level level);
/* Whether students bring a skill at a level: it then meets what a rule expects. */
bool rule_brought(const struct rule_context *x, uint32_t skill, enum skill_level level);

/* How the work `first` stands before `asker`. Optional work meets an optional asker. */
enum met rule_met(const struct rule_context *x, struct first first, uint32_t asker);
/* The assignment that a message names: the one meant by `met`, or the first of any. */
uint32_t rule_named(struct first first, enum met met);

/* Whether a stands strictly before b in the order; false when either has no place. */
bool rule_earlier(const struct rule_context *x, uint32_t a, uint32_t b);
bool rule_is_placed(const struct rule_context *x, uint32_t assignment);
/* "quarter 3, week 1" of an assignment, in the arena of the findings. */
str rule_place(const struct rule_context *x, uint32_t assignment);

/* The repair that puts `first` before `second`, which stands too early: the nearest moves
 * of those that may move that break no need. d is the finding
 * reported last; nothing is worked out for one that nobody sees. */
str rule_move_before(struct rule_context *x, const struct finding *d, uint32_t first,
    uint32_t second, enum movable which);
/* The nearest week from lo to hi of its quarter to whose end an assignment may move
 * without breaking a need; 0: none, or enough were worked out. */
uint32_t rule_move_week(struct rule_context *x, const struct finding *d,
    uint32_t assignment, uint32_t lo, uint32_t hi);
struct rule_moves *rule_moves_new(struct arena *a, const struct model *m,
    struct view **views, size_t nviews, enum check_moves how);

static inline bool work_has(uint32_t bits, unsigned value)
{
	return bits >> value & 1;
}

/* What the rules of the program ask of a model whatever the order; made once for several
 * runs. */
struct rule_base {
	const struct model *m;
	const struct work *work;
	const bool *off;
	struct trade_reads *reads; /* filled by the runs as they come to it */
};
struct rule_base *rule_base_new(struct arena *a, const struct model *m);

/* Only the rules that go by the order, without proposing moves. */
void rules_run_order(struct arena *scratch, const struct rule_base *base,
    struct view **views, size_t nviews, struct findings *f);
/* Runs every rule of the program over the orders; views[0] is that of program.md. */
void rules_run(struct arena *scratch, const struct model *m, struct view **views,
    size_t nviews, enum check_moves how, struct findings *f);
/* Runs every rule of a sheet over the assignments from `from` to `to`, each by all rules
 * in turn: a large program is read from memory once, not once a rule. */
void rules_run_sheets(struct arena *scratch, const struct model *m, uint32_t from,
    uint32_t to, struct findings *f);
/* Those of the program by a table that ends with a null function. */
void rules_run_table(const struct rule *table, struct arena *scratch,
    const struct model *m, struct view **views, size_t nviews, enum check_moves how,
    struct findings *f);

#endif
