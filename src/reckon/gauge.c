#include "reckon/gauge.h"

#include <math.h>

static const char *const sources[METAL_COUNT] = {
	[METAL_NONE] = "",
	[METAL_STEEL] = "Manufacturers Standard Gauge",
	[METAL_STAINLESS] = "U.S. Standard Gauge",
	[METAL_ALUMINUM] = "American (Brown & Sharpe) gauge",
	[METAL_GALVANIZED] = "galvanized sheet gauge, coating included",
};

double gauge_thickness_mm(enum sheet_metal metal, unsigned gauge)
{
	return gauge_thickness_in(metal, gauge) * 25.4;
}

unsigned gauge_nearest(enum sheet_metal metal, double thickness_mm)
{
	unsigned best = 0;
	double least = 0.0005 + 1e-9;

	for (unsigned g = 1; g <= 40; g++) {
		double in = gauge_thickness_in(metal, g);
		double off = fabs(in - thickness_mm / 25.4);

		if (in > 0 && off <= least) {
			least = off;
			best = g;
		}
	}
	return best;
}

const char *gauge_source(enum sheet_metal metal)
{
	return sources[metal];
}
