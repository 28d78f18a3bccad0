/* model/member_line.h - one "member:" line of a plate block. */
#ifndef MODEL_MEMBER_LINE_H
#define MODEL_MEMBER_LINE_H

#include "model/said.h"
#include "model/weldment.h"

/* Reads the value of the line; false when it was reported and is to be left out. */
bool member_read(struct binder *b, struct said value, struct member *out);

#endif
