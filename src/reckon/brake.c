#include "reckon/brake.h"

#include <math.h>

double brake_tons_ft(double thickness_mm, double opening_mm)
{
	double t_in = thickness_mm / 25.4, v_in = opening_mm / 25.4;

	return 575 * t_in * t_in / v_in;
}

double brake_factor(const struct metal *m)
{
	return m->brake_factor > 0 ? m->brake_factor : m->uts_ksi / 60;
}

double brake_opening_mm(double thickness_mm)
{
	return thickness_mm <= 12.7 + 1e-6 ? 8 * thickness_mm : 10 * thickness_mm;
}

size_t brake_choose(const double *openings_mm, size_t n, double thickness_mm)
{
	double wanted_mm = brake_opening_mm(thickness_mm), least = 0;
	size_t best = n;

	for (size_t i = 0; i < n; i++) {
		double v_mm = openings_mm[i], off = fabs(log(v_mm / wanted_mm));

		if (v_mm < 6 * thickness_mm - 1e-6 || v_mm > 12 * thickness_mm + 1e-6)
			continue;
		if (best == n || off < least - 1e-9 ||
		    (off <= least + 1e-9 && v_mm > openings_mm[best])) {
			best = i;
			least = off;
		}
	}
	return best;
}

double brake_flange_mm(double opening_mm)
{
	return 0.7 * opening_mm;
}
