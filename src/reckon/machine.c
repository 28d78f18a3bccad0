#include "reckon/machine.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double shear_factor(const struct metal *m)
{
	if (m->shear_factor > 0)
		return m->shear_factor;
	return m->uts_ksi > 0 ? fmin(60 / m->uts_ksi, 1) : 0;
}

double shear_most_mm(double rated_mm, const struct metal *m)
{
	return rated_mm * shear_factor(m);
}

double punch_tons(double edge_mm, double thickness_mm, double strength_ksi)
{
	return edge_mm / 25.4 * (thickness_mm / 25.4) * strength_ksi * 1000 / 2000;
}

double punch_round_tons(double diameter_mm, double thickness_mm, double strength_ksi)
{
	return punch_tons(pi * diameter_mm, thickness_mm, strength_ksi);
}

double punch_most_mm(double tons, double thickness_mm, double strength_ksi)
{
	return tons / punch_round_tons(1, thickness_mm, strength_ksi);
}

double roll_most_mm(double rated_mm, double rated_width_mm, double width_mm,
    double uts_ksi)
{
	double factor = rated_width_mm / width_mm * 60 / uts_ksi;

	/* A narrow piece does not make the frame stronger than its plate says. */
	return rated_mm * sqrt(fmin(factor, 1));
}

double roll_least_diameter_mm(double top_roll_mm)
{
	return 1.5 * top_roll_mm;
}
