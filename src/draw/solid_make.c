/* From sizes to solids. Outlines lie on the two axes across the one that they are drawn
 * out along, in their order; corners run counterclockwise as seen from its end. */
#include "draw/solid.h"

#include "draw/geom.h"

#include <math.h>
#include <string.h>

/* A member on its way: where its own axes point. */
struct maker {
	struct arena *arena;
	struct solid *out;
	const struct fig_member *m;
	enum fig_axis along;     /* of the outline being drawn out */
};

static const enum fig_axis across[3][2] = { { FIG_Y, FIG_Z }, { FIG_X, FIG_Z },
	{ FIG_X, FIG_Y } };

static void set_axis(vec *v, enum fig_axis axis, double mm)
{
	*(axis == FIG_X ? &v->x : axis == FIG_Y ? &v->y : &v->z) = mm;
}

static double axis_of(vec v, enum fig_axis axis)
{
	return axis == FIG_X ? v.x : axis == FIG_Y ? v.y : v.z;
}

static vec turn_vec(const struct fig_member *m, vec v)
{
	double c = geom_cos(m->turn_deg), s = geom_sin(m->turn_deg);
	enum fig_axis first = across[m->about][0], second = across[m->about][1];
	double p = axis_of(v, first), q = axis_of(v, second);

	/* x, z is the one pair that runs clockwise from the end of the axis across. */
	if (m->about == FIG_Y)
		s = -s;
	set_axis(&v, first, c * p - s * q);
	set_axis(&v, second, s * p + c * q);
	return v;
}

/* A direction on the outline, and a point of it at height s. */
static vec outline_dir(const struct maker *k, pt p, double s)
{
	vec v = { 0, 0, 0 };

	set_axis(&v, across[k->along][0], p.x);
	set_axis(&v, across[k->along][1], p.y);
	set_axis(&v, k->along, s);
	return k->m->turn_deg != 0 ? turn_vec(k->m, v) : v;
}

static vec outline_point(const struct maker *k, pt p, double s)
{
	return vec_add(outline_dir(k, p, s),
	    (vec){ k->m->at_mm[0], k->m->at_mm[1], k->m->at_mm[2] });
}

static double area_of(const pt *v, size_t n)
{
	double sum = 0;

	for (size_t i = 0; i < n; i++)
		sum += v[i].x * v[(i + 1) % n].y - v[(i + 1) % n].x * v[i].y;
	return sum / 2;
}

/* Unit normal of the side from a to b of a counterclockwise outline, outward. */
static pt side_out(pt a, pt b)
{
	return pt_unit((pt){ b.y - a.y, a.x - b.x });
}

static double turn_at(pt a, pt b, pt c)
{
	return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

/* ---- convex parts ---- */

static void set_plane(struct solid_plane *p, vec normal, vec on)
{
	*p = (struct solid_plane){ normal, vec_dot(normal, on) };
}

static void bound_part(struct solid_part *p)
{
	p->lo = p->hi = p->v[0];
	for (size_t i = 1; i < 2 * p->n; i++) {
		p->lo.x = fmin(p->lo.x, p->v[i].x);
		p->lo.y = fmin(p->lo.y, p->v[i].y);
		p->lo.z = fmin(p->lo.z, p->v[i].z);
		p->hi.x = fmax(p->hi.x, p->v[i].x);
		p->hi.y = fmax(p->hi.y, p->v[i].y);
		p->hi.z = fmax(p->hi.z, p->v[i].z);
	}
}

static void add_part(struct maker *k, const pt *v, size_t n, double s0, double s1)
{
	struct solid *o = k->out;
	struct solid_part *p = ARENA_PUSH(k->arena, o->part, o->nparts, o->parts_cap);

	p->n = n;
	p->v = arena_array(k->arena, 2 * n, sizeof *p->v);
	p->plane = arena_array(k->arena, n + 2, sizeof *p->plane);
	for (size_t i = 0; i < n; i++) {
		p->v[i] = outline_point(k, v[i], s0);
		p->v[n + i] = outline_point(k, v[i], s1);
		set_plane(&p->plane[i], outline_dir(k, side_out(v[i], v[(i + 1) % n]), 0),
		    p->v[i]);
	}
	set_plane(&p->plane[n], outline_dir(k, (pt){ 0, 0 }, -1), p->v[0]);
	set_plane(&p->plane[n + 1], outline_dir(k, (pt){ 0, 0 }, 1), p->v[n]);
	bound_part(p);
	p->box = n == 4 && k->m->turn_deg == 0;
	for (size_t i = 0; i < n; i++)
		p->box &= fabs(v[i].x - v[(i + 1) % n].x) < 1e-9 ||
		    fabs(v[i].y - v[(i + 1) % n].y) < 1e-9;
}

static bool is_convex(const pt *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (turn_at(v[i], v[(i + 1) % n], v[(i + 2) % n]) < 0)
			return false;
	return true;
}

static bool in_triangle(pt a, pt b, pt c, pt p)
{
	return turn_at(a, b, p) >= 0 && turn_at(b, c, p) >= 0 && turn_at(c, a, p) >= 0;
}

/* Whether corner i of the rest can be cut off: nothing of the outline lies in it. */
static bool is_ear(const pt *v, size_t n, size_t i)
{
	pt a = v[(i + n - 1) % n], b = v[i], c = v[(i + 1) % n];

	if (turn_at(a, b, c) <= 0)
		return false;
	for (size_t k = 2; k + 1 < n; k++)
		if (in_triangle(a, b, c, v[(i + k) % n]))
			return false;
	return true;
}

/* Triangles, corner after corner: outlines have few. */
static void add_ears(struct maker *k, const pt *outline, size_t n, double s0, double s1)
{
	pt v[FIG_ISO_CORNERS];

	memcpy(v, outline, n * sizeof *v);
	while (n >= 3) {
		size_t i = 0;

		while (i + 1 < n && !is_ear(v, n, i))
			i++;
		add_part(k, (const pt[]){ v[(i + n - 1) % n], v[i], v[(i + 1) % n] }, 3, s0, s1);
		memmove(v + i, v + i + 1, (n - i - 1) * sizeof *v);
		n--;
	}
}

/* ---- edges ---- */

static void add_edge(struct maker *k, enum solid_edge_kind kind, vec a, vec b, vec left,
    vec right)
{
	struct solid *o = k->out;

	*ARENA_PUSH(k->arena, o->edge, o->nedges, o->edges_cap) =
	    (struct solid_edge){ kind, a, b, left, right };
}

/* All edges of an outline drawn out; smooth: those along are of a round. */
static void add_outline_edges(struct maker *k, const pt *v, size_t n, double s0, double s1,
    bool smooth)
{
	vec low = outline_dir(k, (pt){ 0, 0 }, -1), high = outline_dir(k, (pt){ 0, 0 }, 1);

	for (size_t i = 0; i < n; i++) {
		pt before = v[(i + n - 1) % n], p = v[i], q = v[(i + 1) % n];
		vec out = outline_dir(k, side_out(p, q), 0);
		bool inward = turn_at(before, p, q) < 0;

		add_edge(k, SOLID_SHARP, outline_point(k, p, s0), outline_point(k, q, s0), out,
		    low);
		add_edge(k, SOLID_SHARP, outline_point(k, p, s1), outline_point(k, q, s1), out,
		    high);
		add_edge(k, smooth ? SOLID_SMOOTH : inward ? SOLID_INNER : SOLID_SHARP,
		    outline_point(k, p, s0), outline_point(k, p, s1),
		    outline_dir(k, side_out(before, p), 0), out);
	}
}

/* ---- shapes ---- */

static void make_outline(struct maker *k, const pt *v, size_t n, double thick)
{
	if (is_convex(v, n))
		add_part(k, v, n, 0, thick);
	else
		add_ears(k, v, n, 0, thick);
	add_outline_edges(k, v, n, 0, thick, false);
}

/* The outline of m, counterclockwise; of a box its rectangle. */
static size_t take_outline(const struct fig_member *m, pt *v)
{
	double w = m->size_mm[across[m->along][0]], h = m->size_mm[across[m->along][1]];
	const pt box[4] = { { 0, 0 }, { w, 0 }, { w, h }, { 0, h } };
	bool clockwise = m->noutline > 0 && area_of(m->outline, m->noutline) < 0;

	if (m->noutline == 0) {
		memcpy(v, box, sizeof box);
		return 4;
	}
	for (size_t i = 0; i < m->noutline; i++)
		v[i] = m->outline[clockwise ? m->noutline - 1 - i : i];
	return m->noutline;
}

/* A corner of the bore: on the line from corner a towards b, as far from side a-d as the
 * wall is thick. */
static pt bore_corner(pt a, pt b, pt side, double wall)
{
	pt inward = pt_mul(side, -1), end = pt_sub(b, a);
	double step = end.x * inward.x + end.y * inward.y;

	return pt_add(a, pt_mul(end, wall / step));
}

static void add_bore_edges(struct maker *k, const pt in[4], double s0, double s1)
{
	static const pt none = { 0, 0 };
	vec up = outline_dir(k, none, 1), down = outline_dir(k, none, -1);

	for (size_t i = 0; i < 4; i++) {
		/* in[1] to in[2] and in[3] to in[0] lie in the ends; the others run along. */
		pt p = in[i], q = in[(i + 1) % 4];
		vec wall = outline_dir(k, pt_mul(side_out(p, q), -1), 0);

		add_edge(k, SOLID_INNER, outline_point(k, p, s0), outline_point(k, q, s0), wall,
		    up);
		add_edge(k, SOLID_INNER, outline_point(k, p, s1), outline_point(k, q, s1), wall,
		    down);
		add_edge(k, SOLID_INNER, outline_point(k, p, s0), outline_point(k, p, s1), wall,
		    up);
	}
}

/* Four corners, the first two and the last two at the ends of the long walls. */
static void make_tube(struct maker *k, const pt v[4], double high)
{
	double wall = k->m->wall_mm;
	pt low = side_out(v[0], v[1]), far = side_out(v[2], v[3]);
	const pt in[4] = { bore_corner(v[0], v[3], low, wall), bore_corner(v[1], v[2], low, wall),
		bore_corner(v[2], v[1], far, wall), bore_corner(v[3], v[0], far, wall) };

	add_part(k, v, 4, 0, wall);
	add_part(k, v, 4, high - wall, high);
	add_part(k, (const pt[]){ v[0], v[1], in[1], in[0] }, 4, wall, high - wall);
	add_part(k, (const pt[]){ in[3], in[2], v[2], v[3] }, 4, wall, high - wall);
	add_outline_edges(k, v, 4, 0, high, false);
	add_bore_edges(k, in, wall, high - wall);
}

/* Drawn out along an axis across its length, so that a slanted end is an outline too. */
static void make_box_tube(struct maker *k)
{
	enum fig_axis length = k->m->along;
	double l, w;
	bool first;

	k->along = length == FIG_Z ? FIG_Y : FIG_Z;
	first = across[k->along][0] == length;
	l = k->m->size_mm[length];
	w = k->m->size_mm[across[k->along][first ? 1 : 0]];
	if (first)
		make_tube(k, (const pt[]){ { 0, 0 }, { l, 0 }, { l, w }, { 0, w } },
		    k->m->size_mm[k->along]);
	else
		make_tube(k, (const pt[]){ { w, 0 }, { w, l }, { 0, l }, { 0, 0 } },
		    k->m->size_mm[k->along]);
}

static void make_outline_tube(struct maker *k, const pt *v)
{
	double first = pt_length(pt_sub(v[1], v[0])) + pt_length(pt_sub(v[3], v[2]));
	double second = pt_length(pt_sub(v[2], v[1])) + pt_length(pt_sub(v[0], v[3]));
	size_t from = second > first ? 1 : 0;

	make_tube(k, (const pt[]){ v[from], v[from + 1], v[from + 2], v[(from + 3) % 4] },
	    k->m->size_mm[k->along]);
}

/* An L, turned over where its heel lies at a far side. */
static void make_angle(struct maker *k)
{
	const struct fig_member *m = k->m;
	double w = m->size_mm[across[m->along][0]], h = m->size_mm[across[m->along][1]];
	double t = m->wall_mm;
	pt v[6] = { { 0, 0 }, { w, 0 }, { w, t }, { t, t }, { t, h }, { 0, h } }, r[6];
	bool reversed = m->heel_far[0] != m->heel_far[1];

	for (size_t i = 0; i < 6; i++) {
		r[reversed ? 5 - i : i] = (pt){ m->heel_far[0] ? w - v[i].x : v[i].x,
			m->heel_far[1] ? h - v[i].y : v[i].y };
	}
	make_outline(k, r, 6, m->size_mm[m->along]);
}

static void circle(double radius, pt *v)
{
	for (size_t i = 0; i < SOLID_ROUND; i++)
		v[i] = pt_polar(radius, 360.0 * (double)i / SOLID_ROUND);
}

static void make_round(struct maker *k)
{
	double d = k->m->size_mm[across[k->along][0]], length = k->m->size_mm[k->along];
	bool bored = k->m->shape == FIG_MEMBER_PIPE;
	pt v[SOLID_ROUND], in[SOLID_ROUND];
	vec low = outline_dir(k, (pt){ 0, 0 }, -1), high = outline_dir(k, (pt){ 0, 0 }, 1);

	circle(d / 2, v);
	circle(d / 2 - k->m->wall_mm, in);
	add_outline_edges(k, v, SOLID_ROUND, 0, length, true);
	if (!bored)
		add_part(k, v, SOLID_ROUND, 0, length);
	for (size_t i = 0; i < SOLID_ROUND && bored; i++) {
		size_t n = (i + 1) % SOLID_ROUND;
		vec wall = outline_dir(k, pt_mul(side_out(in[i], in[n]), -1), 0);

		add_part(k, (const pt[]){ v[i], v[n], in[n], in[i] }, 4, 0, length);
		add_edge(k, SOLID_INNER, outline_point(k, in[i], 0), outline_point(k, in[n], 0),
		    wall, low);
		add_edge(k, SOLID_INNER, outline_point(k, in[i], length),
		    outline_point(k, in[n], length), wall, high);
	}
}

static void bound_solid(struct solid *s)
{
	s->lo = s->part[0].lo;
	s->hi = s->part[0].hi;
	for (size_t i = 1; i < s->nparts; i++) {
		const struct solid_part *p = &s->part[i];

		s->lo = (vec){ fmin(s->lo.x, p->lo.x), fmin(s->lo.y, p->lo.y),
			fmin(s->lo.z, p->lo.z) };
		s->hi = (vec){ fmax(s->hi.x, p->hi.x), fmax(s->hi.y, p->hi.y),
			fmax(s->hi.z, p->hi.z) };
	}
}

struct solid solid_of(struct arena *a, const struct fig_member *m)
{
	struct solid out = { 0 };
	struct maker k = { a, &out, m, m->along };
	pt v[FIG_ISO_CORNERS];

	switch (m->shape) {
	case FIG_MEMBER_SOLID:
		make_outline(&k, v, take_outline(m, v), m->size_mm[m->along]);
		break;
	case FIG_MEMBER_TUBE:
		if (m->noutline > 0) {
			take_outline(m, v);
			make_outline_tube(&k, v);
		} else {
			make_box_tube(&k);
		}
		break;
	case FIG_MEMBER_ANGLE: make_angle(&k); break;
	default: make_round(&k); break;
	}
	bound_solid(&out);
	return out;
}
