/* sheets/start.h - what a table gives to start with where the facts are silent: torch,
 * preheat and interpass, volts and gas flow. Each from reckon, once for sheet, card and
 * grading sheet. */
#ifndef SHEETS_START_H
#define SHEETS_START_H

#include "model/model.h"
#include "reckon/current.h"

struct edition; /* sheets/edition.h; null: the usual one */

/* "Oxygen", "25-30 psi [172-207 kPa]", from memory. */
struct start {
	str name, set;
	bool dagger;
};
enum { STARTS_MOST = 16 };

/* Tip, oxygen, acetylene and speed of an oxy-fuel cut for each thickness on the sheet;
 * 0 for other work and for stainless and aluminum. */
size_t start_torch(struct arena *a, const struct edition *e, const struct assignment *x,
    struct start *v);
/* Why the figures above are only a start. */
str start_torch_words(struct arena *a, const struct edition *e);

/* The least preheat of the table for steel, thickness and filler on the sheet: the
 * highest of all welds. False when the table lacks one of them. */
struct start_heat {
	double least_f, printed_c; /* as the table prints both */
	const char *source;
	bool dagger;
};
bool start_preheat(const struct assignment *x, struct start_heat *out);
/* "50 °F [10 °C] at least". */
str start_heat_text(struct arena *a, const struct edition *e, const struct start_heat *h);
/* The highest interpass temperature that the table has for a metal of the sheet. */
bool start_interpass(struct arena *a, const struct edition *e, const struct assignment *x,
    struct start *out);

/* What handbooks give for current i of the sheet. */
bool start_range(const struct assignment *x, size_t i, struct current_range *out);
/* The same for a pass, by the filler that its words name. */
bool start_pass_range(const struct assignment *x, const struct pass *p,
    struct current_range *out);
/* "110-160 A", "200 A and more"; "16-22 V"; a dagger when from memory. */
str start_amps_text(struct arena *a, const struct edition *e, const struct current_range *r);
str start_volts_text(struct arena *a, const struct edition *e, const struct current_range *r);

/* Usual flow of shielding gas, or of purge gas, for the sheet's first process that
 * takes one; empty when there is none. */
str start_flow_text(struct arena *a, const struct edition *e, const struct assignment *x,
    bool purge, bool *dagger, const char **source);

bool start_is_wire(const struct assignment *x);

#endif
