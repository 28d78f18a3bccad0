/* model/twice.h - two assignments that claim one id: which of them is meant to be
 * another one that program.md lists. */
#ifndef MODEL_TWICE_H
#define MODEL_TWICE_H

#include "model/said.h"

/* One level-1 heading of an assignment file. */
struct found {
	str id, title;
	struct pos pos;          /* of the heading */
	const struct block *v;
	size_t n;                /* blocks up to the next such heading */
	bool left_out;           /* the id is another's; reported */
};

/* v is sorted by id, then by place; the blocks of program.md may be null. Where an id
 * stands twice, one heading is given the id that program.md lists beside its title and
 * no file defines, or the only such id that there is; else all but the first are left
 * out. Each is reported, and v is sorted again. */
void twice_settle(struct binder *b, struct found *v, size_t n,
    const struct record_file *program);
int compare_found(const void *x, const void *y);

#endif
