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

/* Finds the row of "AWS D1.1" (by yield strength, ksi), "ASME IX" (by group: others,
 * P23, P11, P51, P52) or "API 1104". False when the table has none. */
bool jig_find(str code, str group, double yield_ksi, double thickness_mm,
    struct jig *out);

/* A plunger stands to the edition's own as: smaller bends harder (more strain). */
enum jig_verdict { JIG_AS_ASKED, JIG_HARDER, JIG_MILDER };
enum jig_verdict jig_judge(const struct jig *j, double plunger_mm);

#endif
