/* draw/geom.h - points, rectangles and lines in the plane.
 *
 * Plain values in, plain values out. Angles are in degrees from +x towards +y; the
 * unit and the sense of y are the caller's. */
#ifndef DRAW_GEOM_H
#define DRAW_GEOM_H

#include "draw/canvas.h"

#define GEOM_PI 3.14159265358979323846

double pt_length(pt a);
/* a at length 1; (1, 0) for a of length 0. */
pt pt_unit(pt a);
/* The point at that distance and direction from the origin. */
pt pt_polar(double r, double deg);
pt pt_between(pt a, pt b, double share);
double geom_tan(double deg);
double geom_sin(double deg);
double geom_cos(double deg);
/* Where the lines through a along u and through b along v meet; false if parallel. */
bool geom_meet(pt a, pt u, pt b, pt v, pt *out);

bool rect_holds(rect outer, rect inner);
/* Whether the stretch from a to b passes through the interior of r. */
bool rect_crossed(rect r, pt a, pt b);

/* Cuts the line through `at` along unit vector dir with the polygon v; writes the
 * distances along dir in rising order and returns how many, at most cap. */
size_t geom_cut(const pt *v, size_t n, pt at, pt dir, double *along, size_t cap);

/* Puts n stretches, in order, as near as can be to the middles they want, none over
 * another: those that meet share the shift, as one block. n at most GEOM_SPREAD. */
#define GEOM_SPREAD 60
void geom_spread(const double *want, const double *size, size_t n, double *middle);

/* What follows is done a million times while figures look for their scale. */

static inline pt pt_add(pt a, pt b)
{
	return (pt){ a.x + b.x, a.y + b.y };
}

static inline pt pt_sub(pt a, pt b)
{
	return (pt){ a.x - b.x, a.y - b.y };
}

static inline pt pt_mul(pt a, double k)
{
	return (pt){ a.x * k, a.y * k };
}

/* Empty, at p. */
static inline rect rect_at(pt p)
{
	return (rect){ p.x, p.y, 0, 0 };
}

/* The least rectangle that holds both. */
static inline rect rect_join(rect a, rect b)
{
	double x = a.x < b.x ? a.x : b.x, y = a.y < b.y ? a.y : b.y;
	double right_a = a.x + a.w, right_b = b.x + b.w, low_a = a.y + a.h, low_b = b.y + b.h;

	return (rect){ x, y, (right_a > right_b ? right_a : right_b) - x,
	    (low_a > low_b ? low_a : low_b) - y };
}

static inline rect rect_grow(rect r, pt p)
{
	return rect_join(r, rect_at(p));
}

static inline rect rect_inset(rect r, double d)
{
	return (rect){ r.x + d, r.y + d, r.w - 2 * d, r.h - 2 * d };
}

/* No common interior. */
static inline bool rect_apart(rect a, rect b)
{
	return a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y ||
	    b.y + b.h <= a.y;
}

#endif
