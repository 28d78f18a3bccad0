#include "draw/geom.h"

#include <assert.h>
#include <math.h>

double pt_length(pt a)
{
	return hypot(a.x, a.y);
}

pt pt_unit(pt a)
{
	double n = pt_length(a);

	return n > 0 ? pt_mul(a, 1 / n) : (pt){ 1, 0 };
}

pt pt_polar(double r, double deg)
{
	return (pt){ r * geom_cos(deg), r * geom_sin(deg) };
}

pt pt_between(pt a, pt b, double share)
{
	return pt_add(a, pt_mul(pt_sub(b, a), share));
}

double geom_tan(double deg)
{
	return tan(deg * GEOM_PI / 180);
}

double geom_sin(double deg)
{
	return sin(deg * GEOM_PI / 180);
}

double geom_cos(double deg)
{
	return cos(deg * GEOM_PI / 180);
}

static double cross(pt a, pt b)
{
	return a.x * b.y - a.y * b.x;
}

bool geom_meet(pt a, pt u, pt b, pt v, pt *out)
{
	double d = cross(u, v);

	if (fabs(d) < 1e-12)
		return false;
	*out = pt_add(a, pt_mul(u, cross(pt_sub(b, a), v) / d));
	return true;
}

bool rect_holds(rect outer, rect inner)
{
	return inner.x >= outer.x && inner.y >= outer.y &&
	    inner.x + inner.w <= outer.x + outer.w &&
	    inner.y + inner.h <= outer.y + outer.h;
}

/* Narrows [*t0, *t1] to where from + t * step lies strictly between lo and hi. */
static bool clip_axis(double from, double step, double lo, double hi, double *t0,
    double *t1)
{
	double a, b;

	if (fabs(step) < 1e-12)
		return from > lo && from < hi;
	a = (lo - from) / step;
	b = (hi - from) / step;
	*t0 = fmax(*t0, fmin(a, b));
	*t1 = fmin(*t1, fmax(a, b));
	return *t0 < *t1;
}

bool rect_crossed(rect r, pt a, pt b)
{
	double t0 = 0, t1 = 1;

	/* Most lie clear of it. */
	if ((a.x < r.x && b.x < r.x) || (a.y < r.y && b.y < r.y) ||
	    (a.x > r.x + r.w && b.x > r.x + r.w) || (a.y > r.y + r.h && b.y > r.y + r.h))
		return false;
	return clip_axis(a.x, b.x - a.x, r.x, r.x + r.w, &t0, &t1) &&
	    clip_axis(a.y, b.y - a.y, r.y, r.y + r.h, &t0, &t1);
}

/* Puts x into the sorted v of n. */
static void insert_sorted(double *v, size_t n, double x)
{
	while (n > 0 && v[n - 1] > x) {
		v[n] = v[n - 1];
		n--;
	}
	v[n] = x;
}

size_t geom_cut(const pt *v, size_t n, pt at, pt dir, double *along, size_t cap)
{
	size_t count = 0;

	for (size_t i = 0; i < n && count < cap; i++) {
		pt a = pt_sub(v[i], at), b = pt_sub(v[(i + 1) % n], at);
		double sa = cross(dir, a), sb = cross(dir, b);

		/* Half-open, so that a corner on the line counts once. */
		if ((sa < 0) == (sb < 0))
			continue;
		pt hit = pt_between(a, b, sa / (sa - sb));
		insert_sorted(along, count++, hit.x * dir.x + hit.y * dir.y);
	}
	return count;
}

/* Stretches pushed together; start is the mean of where its members want it. */
struct block {
	size_t first;
	double size, sum, start;
};

void geom_spread(const double *want, const double *size, size_t n, double *middle)
{
	struct block v[GEOM_SPREAD];
	size_t nblocks = 0;

	assert(n <= GEOM_SPREAD);
	for (size_t i = 0; i < n; i++) {
		double start = want[i] - size[i] / 2;

		v[nblocks++] = (struct block){ i, size[i], start, start };
		while (nblocks > 1 &&
		    v[nblocks - 2].start + v[nblocks - 2].size > v[nblocks - 1].start) {
			struct block *up = &v[nblocks - 2], *low = &v[nblocks - 1];

			up->sum += low->sum - (double)(i + 1 - low->first) * up->size;
			up->size += low->size;
			up->start = up->sum / (double)(i + 1 - up->first);
			nblocks--;
		}
	}
	for (size_t b = 0; b < nblocks; b++) {
		double at = v[b].start;
		size_t end = b + 1 < nblocks ? v[b + 1].first : n;

		for (size_t i = v[b].first; i < end; i++) {
			middle[i] = at + size[i] / 2;
			at += size[i];
		}
	}
}
