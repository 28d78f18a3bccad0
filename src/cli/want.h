/* cli/want.h - which documents the words after `print` name. */
#ifndef CLI_WANT_H
#define CLI_WANT_H

#include "cli/run.h"
#include "sheets/bundle.h"

/* One packet with its grading sheets, to be printed or held back. */
struct want {
	str folder;              /* "q1", "orw-130", "sm-20" */
	str name;                /* "Quarter 1", "ORW 130", "SM-20" */
	uint32_t quarter;        /* 0: not a whole quarter */
	uint32_t *assignments;   /* in printing order */
	size_t n;
	bool parts[BUNDLE_PARTS];
};

struct wants {
	struct want *v;
	size_t n, cap;
	bool keys, templates;    /* the instructor's documents */
};

/* From `Q3`, `ORW 130`, `SM-20`, `packets`, `grading`, `keys`, `templates`; no words: all of
 * every quarter. False:
 * a word names nothing here, and stderr was told. */
bool want_read(const struct run *r, const struct options *o, const struct order *order,
    struct wants *out);

#endif
