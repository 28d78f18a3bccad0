#include "reckon/tensile.h"

double tensile_load_lbf(double stress_psi, double width_mm, double thickness_mm)
{
	return stress_psi * (width_mm / 25.4) * (thickness_mm / 25.4);
}
