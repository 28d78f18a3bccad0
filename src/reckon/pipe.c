#include "reckon/pipe.h"

double pipe_od_mm(const struct pipe_row *p)
{
	return p->od_in * 25.4;
}

double pipe_wall_mm(const struct pipe_row *p)
{
	return p->wall_in * 25.4;
}

double pipe_round_mm(double od_mm)
{
	return 3.14159265358979323846 * od_mm;
}

double pipe_mean_round_mm(double od_mm, double wall_mm)
{
	return pipe_round_mm(od_mm - wall_mm);
}

double pipe_weight_lb_ft(double od_mm, double wall_mm)
{
	double od_in = od_mm / 25.4, wall_in = wall_mm / 25.4;

	/* ASME B36.10M: W = 10.69 (D - t) t. */
	return 10.69 * (od_in - wall_in) * wall_in;
}
