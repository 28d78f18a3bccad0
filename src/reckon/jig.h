/* reckon/jig.h - the guided-bend jig that a code asks for. Generated from
 * templates/tables/bend_jig.csv, where each row names code, edition and figure. mm. */
#ifndef RECKON_JIG_H
#define RECKON_JIG_H

#include "base/str.h"
#include "reckon/source.h"

struct jig {
	double plunger_mm, die_mm;
	double most_thickness_mm;/* thickest specimen that the row serves */
	const char *words;       /* what the row holds for */
	const char *source;
	enum seen seen;
};

/* The code whose table this holds, as find spells it ("D1.2" is AWS D1.2), or null. API
 * 1104 is found by that name alone: its plunger is fixed. */
const char *jig_code(str words);
/* The group of ASME IX and AWS D1.2 by the words of the base metal and the filler's class;
 * alloys by P- and M-numbers from memory. */
str jig_group(str material, str filler);
/* Finds the row of "AWS D1.1" (by yield strength, ksi; 345 and 620 MPa lie on its edges),
 * "ASME IX" (by group: others, P23, P11, P51, P52), "AWS D1.2" (others, P23, P11; aluminum
 * only) or "API 1104". False when the table has none. */
bool jig_find(str code, str group, double yield_ksi, double thickness_mm,
    struct jig *out);

/* The jig that a code (as jig_code spells it; null: none) asks for in a metal with a
 * filler. *thickness_mm of the specimen is cut to the thickest that the row serves. False
 * where the code does not judge that metal: D1.1 steel, D1.2 aluminum. */
bool jig_of_metal(const char *code, str material, double yield_ksi, str filler,
    double *thickness_mm, struct jig *out);

/* A plunger stands to the edition's own as: smaller bends harder (more strain). */
enum jig_verdict { JIG_AS_ASKED, JIG_HARDER, JIG_MILDER };
enum jig_verdict jig_judge(const struct jig *j, double plunger_mm);

#endif
