/* reckon/metal.h - what the shop tables need to know of a metal. Each figure keeps
 * the words that tell how far it was verified; generated from
 * templates/tables/metal.csv, which names the sources. */
#ifndef RECKON_METAL_H
#define RECKON_METAL_H

#include "base/str.h"

enum metal_family { FAMILY_STEEL, FAMILY_STAINLESS, FAMILY_ALUMINUM, FAMILY_OTHER };

struct metal {
	const char *name, *also; /* also: other names, parted by semicolons */
	enum metal_family family;
	double density_lb_in3;
	const char *density_verified;
	double uts_ksi, yield_ksi, elong_percent; /* least; 0 when not given */
	const char *verified;
	double brake_factor;     /* tonnage over mild steel; 0: uts / 60 */
	const char *brake_verified;
	double radius_per_v;     /* inside radius of an air bend over the die opening */
	const char *radius_verified;
	double shear_factor;     /* thickness over that of mild steel; 0: 60 / uts */
	const char *shear_verified;
	double punch_ksi;        /* shear strength for punching; 0 when not given */
	const char *punch_verified;
};

/* The metal that words name ("A36 plate", "stainless", "6061-T6"), or null. */
const struct metal *metal_find(str words);
/* The names for messages: "mild steel, A36, ..." by index; null past the end. */
const struct metal *metal_at(size_t i);

#endif
