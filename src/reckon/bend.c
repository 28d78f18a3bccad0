#include "reckon/bend.h"

double bend_strain_percent(double plunger_mm, double thickness_mm)
{
	return 100 * thickness_mm / (plunger_mm + thickness_mm);
}
