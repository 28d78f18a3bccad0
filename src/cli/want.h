/* cli/want.h - which documents the words after `print` name. */
#ifndef CLI_WANT_H
#define CLI_WANT_H

#include "cli/run.h"
#include "sheets/bundle.h"

/* One packet with what goes with it, to be printed or held back. */
struct want {
	str folder;              /* "q1", "orw-130", "sm-20" */
	str name;                /* "Quarter 1", "ORW 130", "SM-20" */
	uint32_t quarter;        /* 0: not a whole quarter */
	uint32_t *assignments;   /* in printing order */
	size_t n;
	bool parts[BUNDLE_PARTS];
};

/* Documents of the whole program. */
enum book {
	BOOK_KEYS, BOOK_TEMPLATES, BOOK_LABELS,
	BOOK_SAID_LABELS,        /* those in the language of translations */
	BOOK_PRINT_LIST, BOOK_COUNT
};

struct wants {
	struct want *v;
	size_t n, cap;
	bool books[BOOK_COUNT];
};

/* From `Q3`, `ORW 130`, `SM-20` and the words of documents (`packets`, `labels`); no words:
 * all of every quarter. False: a word names nothing here, and stderr was told. */
bool want_read(const struct run *r, const struct options *o, const struct order *order,
    struct wants *out);

#endif
