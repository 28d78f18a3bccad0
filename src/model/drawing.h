/* model/drawing.h - how one block of a drawing is read, line by line. */
#ifndef MODEL_DRAWING_H
#define MODEL_DRAWING_H

#include "model/assignment.h"

/* One "key: value" line. */
struct drawing_line {
	struct said key, value;
};

/* The next line that is not blank; one without a colon is reported and passed over.
 * *i counts lines. False at the end. */
bool drawing_next(struct binder *b, const struct block *v, uint32_t *i,
    struct drawing_line *out);
/* UNKNOWN_KEY or DUPLICATE_KEY at the key. */
void drawing_complain(struct binder *b, enum finding_name name, struct said key,
    const char *block, const str *keys, size_t n);

/* BAD_DRAWING for a block of a weld that the sheet does not have. */
void drawing_lost_weld(struct binder *b, const struct block *v, str letter);

/* "![words](../pictures/vise.png)". */
void read_picture_block(struct binder *b, const struct block *v, struct drawing *out);
void read_joint_block(struct binder *b, const struct block *v, struct joint_block *out);
void read_plate_block(struct binder *b, const struct block *v, struct drawing *out);
/* False when it names no shape: the block is left out. */
struct pattern_block;
bool read_pattern_block(struct binder *b, const struct block *v,
    struct pattern_block *out);

/* The metal whose gauge numbers count for member 0 or 1. */
enum sheet_metal member_metal(const struct assignment *a, uint32_t member);

#endif
