#include "reckon/source.h"

#include <stddef.h>
#include <string.h>

static const char *const doubts[] = {
	"memory", "summary", "secondary", "recall", "LOW CONFIDENCE", "UNCONFIRMED",
	"inferred", "partial",
};

enum seen seen_of(const char *verified)
{
	for (size_t i = 0; i < sizeof doubts / sizeof *doubts; i++)
		if (strstr(verified, doubts[i]))
			return SEEN_MEMORY;
	return strncmp(verified, "page", 4) ? SEEN_MEMORY : SEEN_PAGE;
}

bool band_holds(double x, double lo, bool lo_open, double hi, bool hi_open)
{
	const double noise = 1e-6;

	if (lo_open ? x <= lo + noise : x < lo - noise)
		return false;
	if (hi == 0)
		return true;
	return hi_open ? x < hi - noise : x <= hi + noise;
}
