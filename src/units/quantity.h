/* units/quantity.h - a measured value as written in an assignment.
 *
 * Base units: length mm, angle deg, current A, voltage V, time h, mass lb, flow
 * cfh, temperature degF, pressure psi, speed in/min, percent, count. 1 in is 25.4
 * mm exactly. A value is turned into its base unit once, by one division of whole
 * numbers, and is rounded again only when printed (units/format.h).
 *
 * Reading never fails the run: a result says what is wrong and a fault says where.
 * No locale plays a part. */
#ifndef UNITS_QUANTITY_H
#define UNITS_QUANTITY_H

#include "base/arena.h"
#include "units/trade.h"

enum quantity_kind {
	QUANTITY_ANY,            /* wished: the unit decides; zeroed: not given */
	QUANTITY_LENGTH, QUANTITY_ANGLE, QUANTITY_CURRENT, QUANTITY_VOLTAGE,
	QUANTITY_TIME, QUANTITY_MASS, QUANTITY_FLOW, QUANTITY_TEMPERATURE,
	QUANTITY_PRESSURE, QUANTITY_SPEED, QUANTITY_PERCENT, QUANTITY_COUNT,
	QUANTITY_PIPE,
	QUANTITY_KINDS
};

/* How it was written, so that it is printed again as the trade writes it. */
enum quantity_form {
	FORM_FRACTION,           /* whole or fraction: 3/8 in, 6 in, 22-1/2 deg */
	FORM_DECIMAL,            /* 0.280 in */
	FORM_METRIC,             /* 9.5 mm, and every other metric unit */
	FORM_FEET,               /* 6'-4", 10 ft */
	FORM_GAUGE, FORM_PIPE
};

struct quantity {
	enum quantity_kind kind;
	enum quantity_form form;
	double lo, hi;           /* base units; equal unless `range` */
	double plus, minus;      /* tolerance, base units, both >= 0 */
	bool range;
	bool tolerance;          /* plus and minus were written */
	bool no_value;           /* a tolerance alone: ±1/32 in; lo and hi are 0 */
	unsigned denominator;    /* of a fraction or feet: the finest written, or 1 */
	int decimals;            /* FORM_DECIMAL, FORM_METRIC: most places written */
	const char *unit;        /* print name of the unit written: "in", "ft", "min" */
	enum sheet_metal metal;  /* FORM_GAUGE */
	unsigned gauge_lo, gauge_hi;      /* numbers belonging to lo and hi */
	/* FORM_PIPE. Wished as a length, lo and hi are the wall, and a schedule is
	 * owed; as a pipe or as anything, they are the outside diameter. */
	const struct pipe_row *pipe;
	bool scheduled;          /* a schedule was written, so pipe->wall_in counts */
};

enum quantity_result {
	QUANTITY_OK,
	QUANTITY_BAD,            /* not a quantity */
	QUANTITY_NO_UNIT,        /* a bare number where a unit is owed */
	QUANTITY_NO_METAL,       /* a gauge without a material */
	QUANTITY_UNKNOWN_UNIT    /* a word that is no unit, or a unit of something else */
};

struct quantity_fault {
	enum quantity_result result;
	size_t offset;           /* byte in the text given, at most its length */
	const char *reason;      /* a few words, no full stop; static */
	str likely;              /* of NO_UNIT, UNKNOWN_UNIT: the unit meant, or empty */
	enum quantity_kind want; /* what was asked for */
};

struct quantity_list {
	struct quantity *v;
	size_t n;
};

/* Reads one quantity, a range or a tolerance; all of s must belong to it. On a
 * fault *out is zeroed. fault may not be null; it is filled on every call. */
enum quantity_result quantity_parse(str s, enum quantity_kind want,
    enum sheet_metal metal, struct quantity *out, struct quantity_fault *fault);
/* The same, but words may follow: *used is the length of the quantity.
 * "8 in long" reads 8 in and uses 4 bytes. */
enum quantity_result quantity_prefix(str s, enum quantity_kind want,
    enum sheet_metal metal, struct quantity *out, size_t *used,
    struct quantity_fault *fault);

/* "1/2, 7/8, 1-1/8 in": the unit of the last serves those that have none. */
enum quantity_result quantity_list_parse(struct arena *a, str s,
    enum quantity_kind want, enum sheet_metal metal, struct quantity_list *out,
    struct quantity_fault *fault);
/* "3/8 x 3 x 8 in", "11 ga x 3 x 8 in", "NPS 6 schedule 40 x 3 in": lengths joined
 * by x; a pipe comes as kind QUANTITY_PIPE. With used not null, words may follow:
 * "3/8 x 3 x 8 in A36 plate". One length alone is a product of one. */
enum quantity_result quantity_product_parse(struct arena *a, str s,
    enum sheet_metal metal, struct quantity_list *out, size_t *used,
    struct quantity_fault *fault);

#endif
