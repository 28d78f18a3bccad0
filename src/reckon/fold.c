#include "reckon/fold.h"

double fold_allowance_navy_mm(double radius_mm, double thickness_mm, double angle_deg)
{
	return (0.0173 * radius_mm + 0.0078 * thickness_mm) * angle_deg;
}

double fold_allowance_faa_mm(double radius_mm, double thickness_mm, double angle_deg)
{
	return (0.01743 * radius_mm + 0.0078 * thickness_mm) * angle_deg;
}

double fold_k(double radius_mm, double thickness_mm)
{
	const double noise = 1e-6;

	if (radius_mm <= thickness_mm + noise)
		return 0.33;
	return radius_mm <= 3 * thickness_mm + noise ? 0.40 : 0.50;
}
