/* reckon/gas.h - flow of shielding gas to start with. The cost worksheet of a filler
 * metal data book for wires, from memory for tungsten; generated from
 * templates/tables/gas_flow.csv. cfh. */
#ifndef RECKON_GAS_H
#define RECKON_GAS_H

#include "reckon/metal.h"
#include "reckon/source.h"

struct gas_flow {
	const char *process;
	enum metal_family family;/* FAMILY_OTHER: any */
	double dia_lo_in, dia_hi_in; /* above the first, to the second; 0: no end */
	double lo_cfh, hi_cfh;
	const char *source, *verified;
};

/* By process (GMAW-S and "GMAW spray" are GMAW here), metal and wire; null for a process
 * that takes none. "GTAW purge" is the gas behind a root. */
const struct gas_flow *gas_flow_find(str process, enum metal_family family,
    double dia_mm);

#endif
