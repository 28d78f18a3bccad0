/* units/limit_expr.h - the small arithmetic of acceptance limits.
 *
 * "1/32 in", "min(1/16 in, 0.1 t)", "1 in < t <= 2 in and open root". Binding as in
 * school, tightest first:
 *
 *   ( )  min(a, b)  max(a, b)
 *   x  *  /  from the left; a bare number right before a name or a bracket multiplies
 *   +  -     from the left
 *   <  <=  >  >=  =     a < b <= c means both
 *   and
 *   or
 *
 * A number is read as everywhere: 1/32, 1-1/16 (no blanks: a mixed number), 0.01. It may
 * carry a unit of length, angle, percent or strength. Lengths are mm, angles degrees,
 * strengths psi; each literal is turned into its base unit by one division of whole
 * numbers, so 1/32 in is exactly 0.79375 mm. Kinds are checked while reading: inches and degrees do not add.
 *
 * Reading does not recurse: nesting, length and operands have fixed bounds, and a text
 * beyond them is a fault like any other. */
#ifndef UNITS_LIMIT_EXPR_H
#define UNITS_LIMIT_EXPR_H

#include "base/arena.h"
#include "base/str.h"

#include <stdint.h>

enum limit_kind {
	LIMIT_NUMBER, LIMIT_LENGTH, LIMIT_ANGLE, LIMIT_PERCENT, LIMIT_STRENGTH, LIMIT_TRUTH,
	LIMIT_KINDS
};

/* What an expression may go by. */
enum limit_name {
	SIZE_T,                  /* thickness of the thinner member */
	SIZE_LEG, SIZE_THROAT,   /* of a fillet */
	SIZE_WIDTH,              /* of the face of the weld */
	SIZE_ROOT_OPENING, SIZE_ROOT_WIDTH,
	SIZE_LENGTH,             /* of the side that is measured, or the longest one */
	SIZE_DIAMETER,           /* of a hole */
	SIZE_BASE_STRENGTH,      /* least tensile strength of the base metal, psi */
	SIZE_OPEN_ROOT,          /* truth: a groove without backing */
	SIZE_FLAME_CUT,          /* truth: cut by oxy-fuel, plasma or carbon arc */
	SIZE_COLD_CUT,           /* truth: sawn, sheared or punched */
	SIZES
};

/* Sizes of one weld or part in mm, the strength in psi, truths 1 or 0. */
struct limit_sizes {
	double v[SIZES];
	bool known[SIZES];
};

/* Sets a size; one of nothing or less is not known. */
void limit_size_set(struct limit_sizes *z, enum limit_name name, double mm);
/* Leg (the shorter), throat and face width of a flat fillet in a square corner: face
 * sqrt(a a + b b), throat a b / face (geometry). leg2_mm 0: both legs alike. */
void limit_sizes_fillet(struct limit_sizes *z, double leg_mm, double leg2_mm);

struct limit_op;

struct limit_expr {
	const struct limit_op *v; /* in the order of working out; null: none read */
	size_t n;
	enum limit_kind kind;
	unsigned names;          /* bit 1 << enum limit_name of each that it goes by */
	const char *unit;        /* print name of the first unit written, or null */
	bool may_fail;           /* it subtracts or divides */
};

struct limit_fault {
	size_t offset;           /* byte in the text given, at most its length */
	const char *reason;      /* a few words, no full stop */
	str likely;              /* the name most likely meant, or empty */
};

/* Reads all of s as a size, or as a condition. On a fault returns false, zeroes *out
 * and fills *fault. The result lives in a. */
bool limit_expr_size(struct arena *a, str s, struct limit_expr *out,
    struct limit_fault *fault);
bool limit_expr_condition(struct arena *a, str s, struct limit_expr *out,
    struct limit_fault *fault);

enum limit_state {
	LIMIT_KNOWN,
	LIMIT_UNKNOWN,           /* a size that matters is not known */
	LIMIT_BY_ZERO,           /* something is divided by zero */
	LIMIT_ENDLESS            /* too large to be a number */
};

struct limit_outcome {
	enum limit_state state;
	double value;            /* 0 unless known */
	size_t at;               /* LIMIT_BY_ZERO: byte of the sign in the text read */
};

/* Works e out in base units, a truth as 1 or 0. A millionth of an inch absorbs binary
 * noise in comparisons, so that 25.4 mm is not below 1 in, and as much less in what
 * divides. */
struct limit_outcome limit_expr_work(const struct limit_expr *e,
    const struct limit_sizes *sizes);
/* The same for who wants a value or nothing: false unless it is known. */
bool limit_expr_value(const struct limit_expr *e, const struct limit_sizes *sizes,
    double *out);

/* The word of a name, "root opening", and what kind of thing it is. */
str limit_name_word(enum limit_name n);
enum limit_kind limit_name_kind(enum limit_name n);

#endif
