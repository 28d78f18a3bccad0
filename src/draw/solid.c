#include "draw/solid.h"

#include "draw/geom.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Planes are let out by so much, so that a line in the common face of two parts of one
 * solid does not slip through. */
#define PLANE_SLACK_MM 1e-6
/* Shorter stretches, as a share of their edge, are dust of rounding. */
#define SPAN_LEAST 1e-9
#define CLIP_CORNERS (SOLID_ROUND + 8)

static vec vec_sub(vec a, vec b)
{
	return vec_add(a, vec_mul(b, -1));
}

/* ---- how far apart ---- */

struct reach { double lo, hi; };

static struct reach reach_along(const struct solid_part *p, vec axis)
{
	struct reach r = { INFINITY, -INFINITY };

	for (size_t i = 0; i < 2 * p->n; i++) {
		double d = vec_dot(p->v[i], axis);

		r.lo = d < r.lo ? d : r.lo;
		r.hi = d > r.hi ? d : r.hi;
	}
	return r;
}

/* Raises *gap to the gap seen along an axis of any length. */
static void widen_gap(const struct solid_part *a, const struct solid_part *b, vec axis,
    double *gap)
{
	double length = sqrt(vec_dot(axis, axis));
	struct reach x, y;

	if (length < 1e-9)
		return;
	axis = vec_mul(axis, 1 / length);
	x = reach_along(a, axis);
	y = reach_along(b, axis);
	*gap = fmax(*gap, fmax(x.lo - y.hi, y.lo - x.hi));
}

static double box_gap(vec alo, vec ahi, vec blo, vec bhi)
{
	double x = fmax(alo.x - bhi.x, blo.x - ahi.x);
	double y = fmax(alo.y - bhi.y, blo.y - ahi.y);
	double z = fmax(alo.z - bhi.z, blo.z - ahi.z);

	return fmax(x, fmax(y, z));
}

/* Directions of the edges: those of the polygon, then the one it is drawn out along. */
static vec edge_dir(const struct solid_part *p, size_t i)
{
	if (i == p->n)
		return vec_sub(p->v[p->n], p->v[0]);
	return vec_sub(p->v[(i + 1) % p->n], p->v[i]);
}

/* Two convex bodies are apart along a face of either or across an edge of each. */
double solid_gap_mm(const struct solid_part *a, const struct solid_part *b)
{
	double gap = box_gap(a->lo, a->hi, b->lo, b->hi);

	if (gap > 0 || (a->box && b->box))
		return gap;
	for (size_t i = 0; i < a->n + 2; i++)
		widen_gap(a, b, a->plane[i].normal, &gap);
	for (size_t i = 0; i < b->n + 2; i++)
		widen_gap(a, b, b->plane[i].normal, &gap);
	for (size_t i = 0; i <= a->n; i++)
		for (size_t k = 0; k <= b->n; k++)
			widen_gap(a, b, vec_cross(edge_dir(a, i), edge_dir(b, k)), &gap);
	return gap;
}

double solids_gap_mm(const struct solid *a, const struct solid *b)
{
	double gap = box_gap(a->lo, a->hi, b->lo, b->hi);

	if (gap > SOLID_FAR_MM)
		return gap;
	gap = INFINITY;
	for (size_t i = 0; i < a->nparts; i++)
		for (size_t k = 0; k < b->nparts; k++)
			gap = fmin(gap, solid_gap_mm(&a->part[i], &b->part[k]));
	return gap;
}

/* ---- what is hidden ---- */

/* A polygon in the plane of t along a line and s towards the eye. */
struct clip {
	pt v[CLIP_CORNERS];
	size_t n;
};

static double side_of(pt p, double kt, double ks, double c)
{
	return kt * p.x + ks * p.y + c;
}

/* Keeps where kt t + ks s + c <= 0. A corner on the line stays one corner. */
static void clip_half(struct clip *g, double kt, double ks, double c)
{
	struct clip out = { .n = 0 };

	for (size_t i = 0; i < g->n; i++) {
		pt p = g->v[i], q = g->v[(i + 1) % g->n];
		double a = side_of(p, kt, ks, c), b = side_of(q, kt, ks, c);

		if (a <= 0 && out.n < CLIP_CORNERS)
			out.v[out.n++] = p;
		if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
			if (out.n < CLIP_CORNERS)
				out.v[out.n++] = pt_between(p, q, a / (a - b));
		}
	}
	*g = out;
}

bool solid_hides(const struct solid_part *p, vec a, vec b, vec to_eye,
    struct solid_span *hidden)
{
	vec d = vec_sub(b, a);
	double near = reach_along(p, to_eye).hi;
	double far = near - fmin(vec_dot(a, to_eye), vec_dot(b, to_eye)) + 1;
	struct clip g = { { { 0, SOLID_SKIN_MM }, { 1, SOLID_SKIN_MM }, { 1, far },
	    { 0, far } }, 4 };

	if (far <= SOLID_SKIN_MM)
		return false;
	for (size_t i = 0; i < p->n + 2 && g.n > 0; i++) {
		const struct solid_plane *k = &p->plane[i];

		clip_half(&g, vec_dot(k->normal, d), vec_dot(k->normal, to_eye),
		    vec_dot(k->normal, a) - k->distance - PLANE_SLACK_MM);
	}
	*hidden = (struct solid_span){ 1, 0 };
	for (size_t i = 0; i < g.n; i++) {
		hidden->from = fmin(hidden->from, g.v[i].x);
		hidden->to = fmax(hidden->to, g.v[i].x);
	}
	return hidden->to - hidden->from > SPAN_LEAST;
}

static int by_from(const void *x, const void *y)
{
	const struct solid_span *a = x, *b = y;

	return (a->from > b->from) - (a->from < b->from);
}

void solid_project(struct solid *s, const struct space_view *w)
{
	for (size_t k = 0; k < s->nparts; k++) {
		struct solid_part *p = &s->part[k];

		p->paper = rect_at(space_point(w, p->v[0]));
		for (size_t i = 1; i < 2 * p->n; i++)
			p->paper = rect_grow(p->paper, space_point(w, p->v[i]));
	}
}

/* The gaps that sorted spans leave between 0 and 1. */
static size_t gaps_between(const struct solid_span *v, size_t n, struct solid_span *out,
    size_t cap)
{
	double at = 0;
	size_t count = 0;

	for (size_t i = 0; i < n; i++) {
		if (v[i].from > at + SPAN_LEAST && count < cap)
			out[count++] = (struct solid_span){ at, v[i].from };
		at = fmax(at, v[i].to);
	}
	if (at < 1 - SPAN_LEAST && count < cap)
		out[count++] = (struct solid_span){ at, 1 };
	return count;
}

static bool may_hide(const struct solid_part *p, rect line)
{
	return !rect_apart(rect_inset(line, -1e-6), p->paper);
}

size_t solids_seen(const struct solid *solids, size_t n, vec a, vec b,
    const struct space_view *w, struct solid_span *out, size_t cap)
{
	rect line = rect_grow(rect_at(space_point(w, a)), space_point(w, b));
	struct solid_span v[SOLID_SPANS];
	size_t nv = 0;

	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; k < solids[i].nparts && nv < SOLID_SPANS; k++)
			if (may_hide(&solids[i].part[k], line) &&
			    solid_hides(&solids[i].part[k], a, b, w->to_eye, &v[nv]))
				nv++;
	if (nv > 1)
		qsort(v, nv, sizeof *v, by_from);
	return gaps_between(v, nv, out, cap);
}

bool solids_hide(const struct solid *solids, size_t n, vec at, const struct space_view *w)
{
	rect point = rect_at(space_point(w, at));
	struct solid_span whole;

	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; k < solids[i].nparts; k++)
			if (may_hide(&solids[i].part[k], point) &&
			    solid_hides(&solids[i].part[k], at, at, w->to_eye, &whole))
				return true;
	return false;
}
