/* model/joint_key.h - one key of a joint block and how its value is read.
 *
 * Private to the readers of drawing blocks. */
#ifndef MODEL_JOINT_KEY_H
#define MODEL_JOINT_KEY_H

#include "model/drawing.h"

struct joint_reading {
	struct binder *b;
	struct joint_block *j;
	struct pos *at;          /* of each key's value, by row; line 0: not there */
	bool lost;               /* the weld that it draws is not there (reported) */
};

struct joint_key {
	str key;
	size_t offset;           /* in struct joint_block; alike: one thing, two keys */
	enum quantity_kind kind;
	void (*read)(struct joint_reading *r, const struct joint_key *row, struct said value);
	uint32_t member;         /* whose gauge table counts */
	const struct words *words; /* of a key whose value is a word, into a uint32_t */
};

/* A word of row->words. */
void key_word(struct joint_reading *r, const struct joint_key *row, struct said value);
/* "1, 2 / back 1, 1": beads of each layer, in the order laid. */
void key_layers(struct joint_reading *r, const struct joint_key *row, struct said value);
/* "2 in at 6 in, staggered" */
void key_increments(struct joint_reading *r, const struct joint_key *row,
    struct said value);
/* "3/4 in" of a plug or spot, "3/4 x 1-1/2 in" of a slot; the row's member says which. */
void key_hole(struct joint_reading *r, const struct joint_key *row, struct said value);
/* Height of a melt-through, which is then what the back has. */
void key_melt(struct joint_reading *r, const struct joint_key *row, struct said value);
/* "near mid-length", "3 in from the left end", or any other words. */
void key_restart(struct joint_reading *r, const struct joint_key *row, struct said value);

#endif
