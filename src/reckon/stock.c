#include "reckon/stock.h"

#include "reckon/weight.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double stock_round_mm2(double diameter_mm)
{
	return pi / 4 * diameter_mm * diameter_mm;
}

double stock_rectangle_mm2(double width_mm, double thickness_mm)
{
	return width_mm * thickness_mm;
}

double stock_hexagon_mm2(double flats_mm)
{
	return sqrt(3) / 2 * flats_mm * flats_mm;
}

double stock_round_tube_mm2(double od_mm, double wall_mm)
{
	return pi * (od_mm - wall_mm) * wall_mm;
}

double stock_square_tube_mm2(double side1_mm, double side2_mm, double wall_mm)
{
	return 2 * wall_mm * (side1_mm + side2_mm - 2 * wall_mm);
}

double stock_angle_mm2(double leg1_mm, double leg2_mm, double thickness_mm)
{
	return thickness_mm * (leg1_mm + leg2_mm - thickness_mm);
}

double stock_lb_ft(double mm2, double density_lb_in3)
{
	return weight_lb(mm2 * 304.8, density_lb_in3);
}

double stock_pipe_old_lb_ft(double od_mm, double wall_mm)
{
	return 10.68 * (od_mm / 25.4 - wall_mm / 25.4) * (wall_mm / 25.4);
}
