#include "reckon/fold.h"

#include <math.h>

static const double radian = 3.14159265358979323846 / 180;

double fold_allowance_mm(double radius_mm, double thickness_mm, double angle_deg,
    double k)
{
	return radian * angle_deg * (radius_mm + k * thickness_mm);
}

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

double fold_setback_mm(double radius_mm, double thickness_mm, double angle_deg)
{
	return tan(angle_deg * radian / 2) * (radius_mm + thickness_mm);
}

double fold_deduction_mm(double radius_mm, double thickness_mm, double angle_deg,
    double k)
{
	return 2 * fold_setback_mm(radius_mm, thickness_mm, angle_deg) -
	    fold_allowance_mm(radius_mm, thickness_mm, angle_deg, k);
}

double fold_blank_mm(const double *flanges_mm, size_t n, double radius_mm,
    double thickness_mm, double angle_deg, double k)
{
	double sum_mm = 0;

	for (size_t i = 0; i < n; i++)
		sum_mm += flanges_mm[i];
	return sum_mm -
	    (double)(n - 1) * fold_deduction_mm(radius_mm, thickness_mm, angle_deg, k);
}

double fold_flat_mm(const double *flanges_mm, size_t n, size_t i, double setback_mm)
{
	int bends = (i > 0) + (i + 1 < n);

	return flanges_mm[i] - bends * setback_mm;
}
