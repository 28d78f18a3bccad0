/* units/format.h - quantities in ink: US customary first, metric in brackets; or, where a
 * format asks for it, the other way round.
 *
 * Fractions of an inch carry millimeters to one place; decimal inches, gauges and
 * pipe walls to two. Inches of a gauge have four places, of a pipe wall three. All
 * rounding of the program happens here, once, half away from zero. Text is appended to
 * b and is UTF-8 (± and °). */
#ifndef UNITS_FORMAT_H
#define UNITS_FORMAT_H

#include "base/buf.h"
#include "units/quantity.h"

/* How quantities print. A null format stands for all zero. */
struct format {
	bool metric_first;       /* "9.5 mm [3/8 in]" */
};

/* Any quantity as written: "3/8 in [9.5 mm]", "11 ga (0.1196 in) [3.04 mm]",
 * "0 to 1/16 in [0 to 1.6 mm]", "±1/32 in [±0.8 mm]", "22-1/2°", "110-140 A",
 * "20 cfh [9.4 L/min]". A length goes through format_length. */
void format_quantity(struct buf *b, const struct quantity *q);
void format_length(struct buf *b, const struct quantity *q);

/* One half of format_length without a unit, for a column whose head gives it:
 * "3/8" and "9.5". */
void format_length_in(struct buf *b, const struct quantity *q);
void format_length_mm(struct buf *b, const struct quantity *q);

/* A computed length. A tolerance of 1/32 in or finer gives 32nds, any other 16ths;
 * a value farther than 0.002 in from such a fraction prints as a decimal to three
 * places. tolerance_mm 0: 16ths. "6-3/8 in [161.9 mm]" */
void format_computed(struct buf *b, double mm, double tolerance_mm);
/* Its inch half without the unit. */
void format_computed_in(struct buf *b, double mm, double tolerance_mm);
/* A worked-out answer, closer than it is cut: three places and the nearest 64th, unless
 * it is one. "8.544 (8-35/64) in [217.02 mm]", "6-1/2 in [165.1 mm]" */
void format_answer(struct buf *b, double mm);
/* Millimeters alone, at most `decimals` places, no unit. */
void format_mm(struct buf *b, double mm, int decimals);

/* The same as a format asks: "9.5 mm [3/8 in]", "3.04 mm [11 ga (0.1196 in)]",
 * "DN 150 schedule 40 [NPS 6]", "9.4 L/min [20 cfh]", "6.4 m/min [250 in/min]",
 * "177 °C [350 °F]". What has no metric kin prints as it does without. */
void format_quantity_as(struct buf *b, const struct format *f, const struct quantity *q);
void format_computed_as(struct buf *b, const struct format *f, double mm,
    double tolerance_mm);
void format_answer_as(struct buf *b, const struct format *f, double mm);

/* The same in running words: whole feet with meters to one place, "35 ft [10.7 m]". */
void format_words(struct buf *b, const struct format *f, const struct quantity *q);

/* "58 ksi [400 MPa]" of a strength in psi. */
void format_strength(struct buf *b, const struct format *f, double psi);

/* "5.10 lb [2.31 kg]" of a weight in lb that was worked out, to `places` of both; under a
 * tenth to three, and grams: "0.027 lb [12 g]". */
void format_weight(struct buf *b, const struct format *f, double lb, int places);

/* "22-1/2°": halves and quarters as fractions, else at most two places. */
void format_angle(struct buf *b, double deg);

#endif
