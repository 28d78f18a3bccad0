/* units/reading.h - the grammar of a quantity, before units are shared out.
 *
 * Private to units. A reader walks one text; the first thing wrong fills its fault
 * and every function then returns false. */
#ifndef UNITS_READING_H
#define UNITS_READING_H

#include "units/quantity.h"
#include "units/scan.h"
#include "units/unit.h"

/* One number with the unit written after it, if any. */
struct amount {
	struct number n;
	bool negative;
	const struct unit *unit;
	size_t at;               /* of the number */
	size_t unit_at;
};

/* A quantity as read, before units are shared out. */
struct reading {
	struct amount lo, hi, plus, minus;
	bool range, tolerance, no_value;
	bool plus_minus;         /* one figure for both: ± */
	const struct pipe_row *pipe;
	bool scheduled;
	size_t at, end;
};

struct reader {
	str s;
	size_t at;
	enum quantity_kind want;
	enum sheet_metal metal;
	bool product;            /* a pipe without a schedule is welcome */
	struct quantity_fault *fault;
};

/* Fills the fault and returns false. at is clamped to the text. */
bool reader_fail(struct reader *r, enum quantity_result result, size_t at,
    const char *reason);
/* The same with the unit most likely meant by `wrong`, which may be empty. */
bool reader_fail_unit(struct reader *r, enum quantity_result result, size_t at,
    const char *reason, str wrong);

/* Reads one quantity at r->at and moves r->at past it. */
bool reader_read(struct reader *r, struct reading *out);
/* The letters at `at`. */
str reader_word(const struct reader *r, size_t at);

#endif
