/* model/standard.h - acceptance sets: what a weld or a specimen may show and still pass.
 *
 * One set a code, edition and loading, from templates/standards (shipped) or the
 * program's own standards folder. Shipped ones are known by their headings and read only
 * when a line of Acceptance names one: model_bind marks them, standard_fill reads them.
 * Sets live as long as the model; a criterion points at its set. */
#ifndef MODEL_STANDARD_H
#define MODEL_STANDARD_H

#include "model/model.h"
#include "units/limit_expr.h"

enum standard_test {
	TEST_VISUAL, TEST_BEND, TEST_FILLET_BREAK, TEST_MACRO, TEST_TENSILE,
	TEST_NICK_BREAK, TEST_DIMENSIONS, TEST_COUNT
};

/* Which welds a limit is for; WELD_PART: parts without a weld too. */
enum { WELD_FILLET = 1, WELD_GROOVE = 2, WELD_ANY = 3, WELD_PART = 4 };

enum limit_form {
	LIMIT_AT_MOST, LIMIT_AT_LEAST, /* `most` is the end */
	LIMIT_WITHIN,            /* `most` to either side of the size given */
	LIMIT_NONE,              /* none allowed */
	LIMIT_WORDS              /* `words` say it: "filled to the size of the weld" */
};

/* How far a figure was verified. LIMIT_CUSTOM: of no code, a habit of the trade or the
 * program's own value. Anything but LIMIT_SEEN prints with a mark. */
enum limit_seen { LIMIT_SEEN, LIMIT_SUMMARY, LIMIT_MEMORY, LIMIT_CUSTOM };

struct standard_limit {
	str name;                /* "Undercut" */
	enum standard_test test;
	unsigned welds;
	enum limit_form form;
	struct limit_expr most;
	str most_text;           /* as written: "min(1/16 in, 0.1 t)" */
	str per;                 /* "12 in"; may be empty */
	str metric;              /* what the code itself prints: "1 mm"; may be empty */
	struct limit_expr where; /* v null: always */
	str where_text;
	str words, more;         /* of LIMIT_WORDS; and what else is said, or empty */
	str tool;
	str unit;                /* of the gauge: "in", "mm"; for lengths only */
	str clause;
	enum limit_seen seen;
	struct pos pos, most_pos, where_pos, tool_pos, clause_pos, seen_pos;
};

struct standard {
	str name;                /* of the heading: "D1.1-2020 welder test" */
	str code;                /* as criteria name it: "D1.1"; empty for an own name */
	uint32_t edition;        /* 0: none */
	str loading;             /* "static", "cyclic", "welder test", "B", "C", "D" */
	str source;
	str checked;             /* what it was compared with, by whom, when; or empty */
	uint32_t shipped;        /* number of its file (base/standards.h) or NONE */
	bool wanted;             /* of shipped ones: a line of Acceptance names it */
	struct pos pos;          /* of the heading; of shipped ones once filled */
	struct standard_limit *v;
	size_t n, cap;
};

/* The test that a line of Acceptance is by its name ("Root bend" is a bend), or false. */
bool criterion_test(str name, enum standard_test *out);

/* Fills a wanted shipped set of m from its file. */
void standard_fill(struct arena *a, struct model *m, struct standard *s,
    const struct record_file *file, struct findings *f);

/* Tells the lines of Acceptance whose set has no limit for their test: the sheet would
 * ask for it without saying what passes; and limits that make no sense at the size of a
 * weld that is judged by them. Once all wanted sets are filled. */
void standard_judge(struct arena *a, struct model *m, struct findings *f);

/* Whether the figure prints with "confirm against your edition"; or with "common
 * practice", a custom that nobody has checked for this program. */
bool limit_is_doubtful(const struct standard *s, const struct standard_limit *l);
bool limit_is_custom(const struct standard *s, const struct standard_limit *l);

#endif
