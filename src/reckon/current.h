/* reckon/current.h - handbook welding current by process, electrode and diameter.
 *
 * Guidance from handbooks (each row names its source), not a code limit; the maker's
 * label always wins. Generated from templates/tables/current.csv. */
#ifndef RECKON_CURRENT_H
#define RECKON_CURRENT_H

#include "base/str.h"
#include "reckon/source.h"

struct current_row {
	const char *process;     /* SMAW, GMAW-S, GMAW spray, FCAW-G, FCAW-S, GTAW */
	const char *electrode, *dia;      /* as the source words them */
	double dia_in;
	double amps_lo, amps_hi;          /* amps_hi 0: only a lower end is given */
	double volts_lo, volts_hi;        /* 0 when the source gives none */
	const char *polarity, *positions; /* "DCEP AC"; "" when not given */
	const char *source, *verified;
};

/* The row, or null. process as above, without regard to case. electrode is an AWS
 * class (E7018-H4R finds E7018, ER70S-6 finds ER70S, ER4043 finds aluminum) or, for
 * GTAW, the tungsten class (EWLa-2). Diameters agree within 0.001 in. polarity
 * (DCEP or DC+, DCEN or DC-, AC, AC balanced) may be empty: then the first row. AC
 * alone finds the unbalanced row of a tungsten. */
const struct current_row *current_find(str process, str electrode, double dia_mm,
    str polarity);
/* Least spray-transfer current of a solid wire in amperes, or null. */
const struct current_row *current_spray_least(str electrode, double dia_mm);

/* What the handbooks together give. */
struct current_range {
	double amps_lo, amps_hi; /* amps_hi 0: no upper end */
	double volts_lo, volts_hi; /* 0: none given */
	const char *source;      /* of the first row */
	enum seen seen;          /* of the first row */
};

/* As current_find. Two published tables of tungsten on DC- differ, so that the wider
 * band counts; a spray wire without a row of its own has at least its lower end. False
 * when no table has it. */
bool current_range_find(str process, str electrode, double dia_mm, str polarity,
    struct current_range *out);

#endif
