/* reckon/preheat.h - least preheat and interpass temperature. AWS D1.1 Table 5.8
 * (2020), 3.3 (2015), 3.2 (2000-2010), by the thicker part at the weld; generated from
 * templates/tables/preheat.csv, preheat_steel.csv and interpass.csv. Degrees F. */
#ifndef RECKON_PREHEAT_H
#define RECKON_PREHEAT_H

#include "base/str.h"
#include "reckon/metal.h"
#include "reckon/source.h"

#define PREHEAT_SOURCE \
	"AWS D1.1 Table 5.8 (2020), 3.3 (2015), 3.2 (2000-2010), prequalified preheat"

struct preheat {
	const char *category;    /* A, B, C, D */
	double lo_in, hi_in;     /* of the thicker part; hi 0: no upper end */
	double least_f, printed_c;
	const char *verified;
};

/* The row, or null: an unknown category, or a part under 1/8 in. */
const struct preheat *preheat_find(str category, double thickest_mm);

/* The category of a steel with ordinary or low-hydrogen filler: "" when the table
 * does not list the steel so; null for a steel not known here. */
const char *preheat_category(str steel, bool low_hydrogen, const char **verified);

/* What the table asks of a steel by its words on a sheet, "A36 plate": the words of the
 * form may follow its name. False when it does not list the steel so, or the part is
 * under 1/8 in. */
struct preheat_wanted {
	const struct preheat *row;
	str steel;               /* "A36" */
	enum seen seen;          /* of the steel's category and the row together */
};
bool preheat_wanted(str material, bool low_hydrogen, double thickest_mm,
    struct preheat_wanted *out);

/* Carbon equivalent of the IIW: C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15, all in
 * percent by weight. Published pages. */
double carbon_equivalent(double c, double mn, double cr, double mo, double v, double ni,
    double cu);

struct interpass {
	enum metal_family family;
	double most_f;           /* 0: no figure */
	const char *words, *source, *verified;
};

/* Null for a family without a row. */
const struct interpass *interpass_find(enum metal_family family);

#endif
