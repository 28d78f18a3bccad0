/* reckon/torch.h - oxy-acetylene: a starting setting for cutting, and how fast
 * acetylene may leave its cylinder. All from memory but the 15 psig limit. */
#ifndef RECKON_TORCH_H
#define RECKON_TORCH_H

#include "reckon/source.h"

/* 29 CFR 1910.253(a)(2): acetylene is not used above 15 psi gauge. */
#define ACETYLENE_MOST_PSIG 15.0

struct torch_setting {
	double lo_in, hi_in;     /* thickness above lo to hi */
	const char *tip;         /* size in one maker's series; sizes are no standard */
	double oxygen_lo_psig, oxygen_hi_psig, fuel_lo_psig, fuel_hi_psig;
	double speed_lo_ipm, speed_hi_ipm;
	const char *verified;
};

/* Carbon steel to 4 in; null above. Generated from templates/tables/torch.csv. */
const struct torch_setting *torch_find(double thickness_mm);

/* Most cubic feet an hour from one cylinder: a tenth of its capacity for work with
 * pauses, a fifteenth without (CGA G-1, 2003 on, from memory); older handbooks say a
 * seventh. */
double acetylene_most_cfh(double capacity_ft3, bool continuous);
double acetylene_older_cfh(double capacity_ft3);
/* Cylinders joined by a manifold so that none gives more than that. */
unsigned acetylene_cylinders(double flow_cfh, double most_cfh);

#endif
