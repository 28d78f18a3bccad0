/* model/parts.h - the files beside the assignments. */
#ifndef MODEL_PARTS_H
#define MODEL_PARTS_H

#include "model/fields.h"

/* Each reads a whole file into b->model. */
void skills_read(struct binder *b, const struct record_file *file);
void shop_read(struct binder *b, const struct record_file *file);
void customs_read(struct binder *b, const struct record_file *file);
/* After the assignments: lines of courses refer to them. */
void program_read(struct binder *b, const struct record_file *file);
/* After program.md and shop.md, whose quarters and sections it names. */
void cohorts_read(struct binder *b, const struct record_file *file);

/* One numbered line of the course read last. seen[assignment] is the slot + 1. */
void slot_read(struct binder *b, const struct block *v, uint32_t *seen);
/* The fact Entry, after all quarters are known. */
void entries_read(struct binder *b, const struct block *fact);

/* Reports further level-1 headings and whatever stands right under the first. */
void complain_second_title(struct binder *b, const struct block *v);

#endif
