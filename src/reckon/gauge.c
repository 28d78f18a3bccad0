#include "reckon/gauge.h"

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

const char *gauge_source(enum sheet_metal metal)
{
	return sources[metal];
}
