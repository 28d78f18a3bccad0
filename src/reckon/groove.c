#include "reckon/groove.h"

#include <math.h>
#include <stddef.h>

static const double pi = 3.14159265358979323846;

static bool has_arc(const struct groove *g)
{
	return g->shape == GROOVE_J || g->shape == GROOVE_U;
}

static int sides(const struct groove *g)
{
	static const int n[] = {
		[GROOVE_SQUARE] = 0, [GROOVE_BEVEL] = 1, [GROOVE_V] = 2, [GROOVE_J] = 1,
		[GROOVE_U] = 2,
	};

	return n[g->shape];
}

/* Angle of one side from the vertical, in radians. */
static double side_angle(const struct groove *g)
{
	return g->angle_deg * pi / 180 / (sides(g) == 2 ? 2 : 1);
}

static double arc_depth(const struct groove *g)
{
	return has_arc(g) ? g->radius_mm * (1 - sin(side_angle(g))) : 0;
}

static double front_depth(const struct groove *g)
{
	double depth = g->thickness_mm - g->land_mm;

	if (!g->both)
		return depth;
	return g->front_mm > 0 ? g->front_mm : depth / 2;
}

static double back_depth(const struct groove *g)
{
	return g->thickness_mm - g->land_mm - front_depth(g);
}

/* The section as its back sees it. */
static struct groove back_of(const struct groove *g)
{
	struct groove b = *g;

	if (g->back_deg > 0)
		b.angle_deg = g->back_deg;
	if (g->back_radius_mm > 0)
		b.radius_mm = g->back_radius_mm;
	return b;
}

const char *groove_fault(const struct groove *g)
{
	double most_deg = sides(g) == 2 ? 180 : 90;
	const struct groove back = back_of(g);

	if (!(g->thickness_mm > 0))
		return "the thickness must be more than 0";
	if (!sides(g))
		return NULL;
	if (!(g->angle_deg < most_deg) || !(back.angle_deg < most_deg))
		return sides(g) == 2 ? "the included angle must be under 180°"
		                     : "the angle of the one side must be under 90°";
	if (g->land_mm >= g->thickness_mm)
		return "the land must be thinner than the part";
	if (g->both && back_depth(g) <= 0)
		return "the front depth and the land leave nothing for the back";
	if (has_arc(g) && arc_depth(g) > front_depth(g))
		return "the radius does not fit the depth of the groove";
	if (has_arc(g) && g->both && arc_depth(&back) > back_depth(g))
		return "the radius does not fit the depth at the back";
	return NULL;
}

static double side_mm2(const struct groove *g, double depth_mm)
{
	double b = side_angle(g), r = g->radius_mm, above = depth_mm - arc_depth(g);

	if (!has_arc(g))
		return depth_mm * depth_mm * tan(b) / 2;
	return r * r * ((pi / 2 - b) / 2 - sin(2 * b) / 4) + above * r * cos(b) +
	    above * above * tan(b) / 2;
}

double groove_mm2(const struct groove *g)
{
	double area = g->gap_mm * g->thickness_mm + sides(g) * side_mm2(g,
	    front_depth(g));
	const struct groove back = back_of(g);

	return g->both ? area + sides(g) * side_mm2(&back, back_depth(g)) : area;
}

static double width_mm(const struct groove *g, double depth_mm)
{
	double b = side_angle(g), above = depth_mm - arc_depth(g);
	double run = (has_arc(g) ? g->radius_mm * cos(b) : 0) + above * tan(b);

	return g->gap_mm + sides(g) * run;
}

double groove_width_mm(const struct groove *g)
{
	return width_mm(g, front_depth(g));
}

double groove_back_width_mm(const struct groove *g)
{
	const struct groove back = back_of(g);

	return g->both ? width_mm(&back, back_depth(g)) : g->gap_mm;
}
