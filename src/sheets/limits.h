/* sheets/limits.h - what decides on the bench: limits worked out for one assignment. */
#ifndef SHEETS_LIMITS_H
#define SHEETS_LIMITS_H

#include "model/standard.h"
#include "sheets/signs.h"

struct edition; /* sheets/edition.h; null: the usual one */
struct sheet;   /* sheets/sheet.h */
struct grid;    /* page/grid.h */

/* What stands behind a figure, as bits: not seen in a copy of the source, so confirm it;
 * or a habit of the trade that no code gives. */
enum limit_sign { SIGN_NONE, SIGN_CONFIRM, SIGN_CUSTOM };

/* One line of a table of limits. */
struct limit {
	str feature, rule, tool; /* "Undercut", "at most 1/32 in [1 mm] (6.10.1)", "rule" */
	enum limit_sign sign;
	bool english_feature, english_rule; /* without a translation on a translated sheet */
};

/* What leads the rows of a line: its words up to what stands behind a semicolon, which
 * has a row of its own, in both units. */
str limits_head(struct arena *a, const struct edition *e, const struct criterion *c);

struct limits {
	struct limit *v;
	size_t n, cap;
};

/* The limits of one acceptance line: those of the set it names (model/standard.h),
 * worked out for this assignment's sizes with the clause behind each, or the line's own
 * words as a single limit when there is no set or nothing in it for this test. */
struct limits limits_of(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct criterion *c);

/* The sizes of weld i of x and the least strength of its weaker metal; without a weld
 * the strength of what the facts name. */
struct limit_sizes limit_sizes_of(const struct assignment *x, size_t i);

/* The limit on short legs in the set that the welds of x are looked at by, with its
 * figure for sizes z; null when the sheet names no such set or no figure comes out. */
const struct standard_limit *limit_leg_short(const struct assignment *x,
    const struct limit_sizes *z, double *short_mm);

/* A feature with a nominal and two ends. */
struct measure {
	str feature, nominal, low, high, tool;
	enum limit_sign sign;
	bool english;            /* the feature, as in struct limit */
};

struct measures {
	struct measure *v;
	size_t n, cap;
};

/* Everything on the sheet that is measured against two ends: root opening, land, leg,
 * angle, blanks and pieces under a dimensional tolerance. Ends are computed from the
 * source; where it gives none they are blank. */
struct measures measures_of(struct arena *a, const struct edition *e,
    const struct assignment *x);

/* Whether an acceptance line gives a size and a tolerance, so that it is one row of
 * measures_of: "Leg size: 5/16 in, +1/16 -0 in". */
bool is_measured(const struct criterion *c);

/* Whether such a line gives the ends of what a drawing shows too, so that one row is
 * enough: "Leg size" is the fillet leg, "Root opening" the gap. word: how its name
 * begins. */
bool has_measured(const struct assignment *x, str word);

/* Whether an acceptance line is a destructive test by its name. */
bool is_destructive(str name);

enum limit_sign limit_sign_of(const struct standard *s, const struct standard_limit *l);
/* The sign itself, or nothing. */
const char *sign_text(enum limit_sign sign);
/* Adds the row of a limit: feature, rule with sign and tool; blanks follow. In large print
 * the feature has a row of its own over all columns, because it leaves the rule no room. */
void sheet_limit_row(struct sheet *sh, struct grid *g, const struct limit *k, size_t columns);
/* A line for each of the signs, as bits, that a table has used. */
void sheet_signs(struct sheet *sh, unsigned signs);

/* What the sign means on paper. */
str dagger_words(struct arena *a, const struct edition *e);

#endif
