/* model/fields.h - the tables of keys and of section headings, and the one way in
 * which they are read.
 *
 * A row is a name, a reader and a line for `explain`. Rows are read in the order of
 * the table, not of the file, so that a thickness finds its material. */
#ifndef MODEL_FIELDS_H
#define MODEL_FIELDS_H

#include "model/said.h"

enum { FIELDS_MOST = 64 };

struct field {
	str key;
	void (*read)(struct binder *b, const struct field *row, const struct block *in);
	const char *help;
	const struct words *words; /* of a value chosen from a list */
	enum quantity_kind kind; /* of a value that is one quantity */
	bool many;               /* may stand more than once */
};

struct field_table {
	const struct field *v;
	size_t n;
	const char *where;       /* for messages: "an assignment" */
};

struct section_row {
	str name;
	void (*read)(struct binder *b, const struct block *heading, const struct block *v,
	    size_t n);
	const char *help;
};

/* Reads facts from v[0..n), which holds no heading. found[row] becomes the block of
 * each key that was there. */
void fields_read(struct binder *b, const struct field_table *t, const struct block *v,
    size_t n, const struct block **found);

/* Blocks from i that belong to the heading v[i - 1]: up to the next heading of that
 * level or above. */
size_t blocks_until(const struct block *v, size_t n, size_t i, unsigned level);

/* The facts and the sections of an assignment and the facts of a cohort, for `explain` and
 * the manual. */
extern const struct field_table fields_assignment, fields_cohort;
extern const struct section_row sections_assignment[];
extern const size_t nsections_assignment;

/* Whether the key is known among the facts of an assignment, and its row. */
uint32_t fields_find(const struct field_table *t, str key);

#endif
