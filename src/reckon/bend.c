#include "reckon/bend.h"

double bend_plunger_mm(double thickness_mm)
{
	return 4 * thickness_mm;
}

double bend_die_mm(double plunger_mm, double thickness_mm)
{
	/* 3.175 mm is the 1/8 in of clearance that QW-466.1 adds. */
	return plunger_mm + 2 * thickness_mm + 3.175;
}

double bend_strain_percent(double plunger_mm, double thickness_mm)
{
	return 100 * thickness_mm / (plunger_mm + thickness_mm);
}

double bend_thickness_mm(double plunger_mm, double strain_percent)
{
	return plunger_mm * strain_percent / (100 - strain_percent);
}
