/* check/rule_metal.h - what an electrode's class says of itself, what a gas is made of,
 * and which settings an assignment welds with. */
#ifndef CHECK_RULE_METAL_H
#define CHECK_RULE_METAL_H

#include "check/rule_joint.h"
#include "reckon/current.h"

enum rod_sort {
	ROD_UNKNOWN, ROD_COVERED, ROD_CORED,
	ROD_SOLID                /* bare wire or rod, metal-cored wire too */
};
enum rod_metal { ROD_STEEL, ROD_STAINLESS, ROD_ALUMINUM };
enum rod_shield { SHIELD_UNTOLD, SHIELD_GAS, SHIELD_SELF };

/* A class by its own letters and figures: AWS A5.1, A5.4, A5.9, A5.10, A5.18, A5.20
 * (the designations as restated in trade pages; confirm against your edition). */
struct rod {
	enum rod_sort sort;
	enum rod_metal metal;
	int position;            /* figure for positions: 0, 1, 2, 4; -1 not told */
	int coating;             /* covered: last two figures, 18; stainless -16: 16 */
	int usability;           /* cored: 11 of E71T-11; -1 not told */
	enum rod_shield shield;  /* of a cored wire */
};

struct rod rod_read(str class);
/* "DC+", "DC-", "AC" that a rod or wire runs on, blanks between; "" when not told.
 * *seen: whether the figure was read in a copy of the source. */
const char *rod_polarity(const struct rod *r, const char **source, bool *seen);

/* A shielding gas by volume; known: the words were understood. */
struct gas {
	bool known;
	double argon, co2, oxygen, helium; /* percent */
};

struct gas gas_read(str text);

/* One line of settings, from the facts or from "## Passes". */
struct setting {
	enum process process;    /* PROCESS_COUNT: not told */
	str class;               /* of the filler; may be empty */
	struct rod rod;
	double dia_mm;           /* 0: not given */
	str polarity;            /* may be empty */
	struct quantity amps;    /* kind QUANTITY_ANY: not given */
	struct pos filler_pos, current_pos;
};

struct settings {
	struct setting *v;
	size_t n, cap;
};

/* Settings of the facts first, then of each pass that names a filler. Lists of Process,
 * Filler and Current pair in order; one entry serves all. */
struct settings settings_of(struct arena *a, const struct assignment *as);

/* Whether weld w is made with a setting: by its process, unless all welds share one. */
bool setting_makes(const struct assignment *a, const struct setting *s,
    const struct weld *w);

/* What handbooks give for a setting, or false. */
bool setting_range(const struct assignment *a, const struct setting *s,
    struct current_range *out);

/* The transfer that the fact names, or that GMAW-S means: "spray"; "" not told. */
str transfer_of(const struct assignment *a, enum process p);
/* The text of a fact, empty when it is not there. */
str fact_said(const struct assignment *a, const char *key);
/* False for "none", "no", "open" and nothing at all. */
bool is_stated(str text);
bool assignment_has_process(const struct assignment *a, enum process p);

/* The rules: filler, polarity, current; gas, transfer, flame, fume; volts, gas flow,
 * preheat, heat input. */
void rule_metal(struct rule_context *x, uint32_t w);
void rule_metal_gas(struct rule_context *x, uint32_t w);
void rule_metal_start(struct rule_context *x, uint32_t w);
/* Classes and gases that are one slip from one that is known. */
void rule_metal_word(struct rule_context *x, uint32_t w);
/* What Instructor only asks the key to reckon. */
void rule_asked(struct rule_context *x, uint32_t w);

#endif
