/* reckon/weight.h - weights of metal and filler. Geometry, with densities and
 * deposition efficiencies from templates/tables/deposit.csv. Lengths and areas in mm
 * and mm2, weights in lb, densities in lb/in3. */
#ifndef RECKON_WEIGHT_H
#define RECKON_WEIGHT_H

#include "base/str.h"
#include "reckon/metal.h"
#include "reckon/source.h"

/* Weld metal, steel: 0.283 lb/in3 (filler metal data book, consumption chapter). */
#define DENSITY_STEEL_WELD_LB_IN3 0.283
/* Steel, structural convention: 490 lb/ft3 (Iowa DOT IM 569). */
#define DENSITY_STEEL_LB_IN3 (490.0 / 1728.0)

/* Weld metal by the family of the parts: steel from the data book; stainless 308 and
 * aluminum 4043 and 5356 from memory. Null for other families. */
struct weld_metal {
	enum metal_family family;
	const char *word;        /* "steel" */
	double density_lb_in3;
	enum seen seen;
	const char *source;      /* of the weight of a section */
};
const struct weld_metal *weld_metal_of(enum metal_family family);

double weight_lb(double volume_mm3, double density_lb_in3);

/* Cap as a parabola: 2/3 width x height (the rule of the data book's table). */
double cap_mm2(double width_mm, double height_mm);
/* Fillet, flat face, 90 degrees: leg1 leg2 / 2. */
double fillet_mm2(double leg1_mm, double leg2_mm);

struct efficiency {
	const char *process, *condition;
	double percent;          /* weld metal from filler bought */
	const char *source, *verified;
};

/* The row for SMAW (by electrode length in mm, 0: 14 in), GMAW (by gas: "75Ar-25CO2",
 * empty: the least of its rows), FCAW-G, FCAW-S, SAW; null when none. GTAW: 94, the
 * low end of a published range. */
const struct efficiency *efficiency_find(str process, str gas, double electrode_mm);
/* Filler to buy for a deposit: deposit / efficiency. */
double filler_bought_lb(double deposited_lb, double efficiency_percent);

#endif
