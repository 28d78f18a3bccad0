/* units/limit_op.h - an expression of limit_expr.h in the order of working out. Private
 * to units. */
#ifndef UNITS_LIMIT_OP_H
#define UNITS_LIMIT_OP_H

#include "units/limit_expr.h"

enum { OPS_MOST = 128 };

enum op {
	OP_NUMBER, OP_NAME, OP_TIMES, OP_OVER, OP_PLUS, OP_MINUS, OP_LESS, OP_AT_MOST,
	OP_MORE, OP_AT_LEAST, OP_EQUAL, OP_AND, OP_OR, OP_MIN, OP_MAX, OP_OPEN
};

struct limit_op {
	enum op op;
	unsigned n;              /* OP_NAME: which; OP_MIN, OP_MAX: how many */
	bool keep;               /* a comparison whose right side is compared again */
	double value;
	size_t at;               /* of OP_OVER, in the text */
};

#endif
