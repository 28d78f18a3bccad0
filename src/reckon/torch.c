#include "reckon/torch.h"

#include <math.h>
#include <stddef.h>

static const struct torch_setting rows[] = {
#include "reckon/torch.inc"
};

const struct torch_setting *torch_find(double thickness_mm)
{
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (band_holds(thickness_mm / 25.4, rows[i].lo_in, true, rows[i].hi_in,
		    false))
			return &rows[i];
	return NULL;
}

double acetylene_most_cfh(double capacity_ft3, bool continuous)
{
	return capacity_ft3 / (continuous ? 15 : 10);
}

double acetylene_older_cfh(double capacity_ft3)
{
	return capacity_ft3 / 7;
}

unsigned acetylene_cylinders(double flow_cfh, double most_cfh)
{
	return (unsigned)ceil(flow_cfh / most_cfh - 1e-9);
}
