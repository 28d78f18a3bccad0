/* reckon/visual.h - what a weld may show and still pass: visual, guided bend, fillet
 * break and macro.
 *
 * Figures only, generated from templates/tables/visual.csv and accept.csv; each row
 * names code, edition, clause. A figure not read in a copy of the code has seen
 * SEEN_MEMORY and must print with a dagger; one read in any edition counts as seen,
 * and the clause numbers of the other editions are from memory. */
#ifndef RECKON_VISUAL_H
#define RECKON_VISUAL_H

#include "base/str.h"
#include "reckon/source.h"

enum accept_loading { LOADING_STATIC, LOADING_CYCLIC, LOADING_WELDER_TEST };
enum accept_weld { WELD_FILLET, WELD_GROOVE };
enum accept_test { TEST_BEND, TEST_FILLET_BREAK, TEST_MACRO };
enum accept_form {
	ACCEPT_AT_MOST,          /* limit is the most allowed */
	ACCEPT_NONE,             /* none allowed */
	ACCEPT_WORDS             /* `words` say it: "filled to the size of the weld" */
};

struct accept {
	const char *feature;     /* "Undercut", "Craters" */
	enum accept_form form;
	double limit;            /* in `unit` */
	const char *unit;        /* "in", "%", "in per 12 in", or "" */
	const char *metric;      /* what the code itself prints in metric, or "" */
	const char *words;       /* condition or rule in our words, or "" */
	const char *tool;        /* what measures it: "undercut gauge", "fillet gauge" */
	const char *code;        /* "AWS D1.1" */
	int edition;             /* the year asked for */
	const char *clause;      /* "Table 8.1 item 7A", of that edition; may be "" */
	const char *verified;
	enum seen seen;
};

struct visual_query {
	str code;                /* "D1.1", "D1.2", "D1.6" */
	int edition;             /* year; 0 means the newest in the table */
	enum accept_loading loading;
	enum accept_weld weld;
	double thickness_mm;     /* of the thinner part; 0 when not known */
	double leg_mm;           /* of a fillet; 0 when not known */
	bool open_root;          /* groove without backing: the root is looked at too */
};

/* Writes at most cap limits in the order an inspector looks and returns how many
 * there are in all; 0 when the code or edition is not in the table. A limit that
 * goes by a size not known is left out. */
size_t visual_limits(const struct visual_query *q, struct accept *out, size_t cap);
/* Likewise for specimens; thickness plays no part. */
size_t test_limits(str code, int edition, enum accept_test test, struct accept *out,
    size_t cap);

#endif
