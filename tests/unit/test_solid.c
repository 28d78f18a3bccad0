/* Solids and what of them is seen. The judge of hidden lines knows neither planes nor
 * polygons: it walks from a point towards the eye and asks at each step whether it stands
 * in steel, by the plain meaning of box, bore, leg and circle. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/solid.h"

#include "draw/geom.h"
#include "draw/iso_plan.h"

#include <math.h>
#include <stdlib.h>

static void expect_near(double x, double want, double slack)
{
	if (!(fabs(x - want) <= slack))
		fail_msg("%.6f is not %.6f", x, want);
}

static struct fig_member box(double x, double y, double z, double w, double d, double h)
{
	return (struct fig_member){ .shape = FIG_MEMBER_SOLID, .along = FIG_Z,
		.size_mm = { w, d, h }, .at_mm = { x, y, z } };
}

/* ---- the projection: each axis at 30 degrees or upright, unit lengths true ---- */

static struct space_view iso_view(bool left)
{
	struct space_view w = space_view_from(left ? -45 : 45,
	    asin(1 / sqrt(3)) * 180 / GEOM_PI);

	w.scale = sqrt(1.5);
	return w;
}

static void axes_stand_at_120_degrees(void **state)
{
	const double c = sqrt(3) / 2;
	const struct { bool left; vec at; pt want; } rows[] = {
		{ false, { 1, 0, 0 }, { c, 0.5 } }, { false, { 0, 1, 0 }, { c, -0.5 } },
		{ false, { 0, 0, 1 }, { 0, -1 } }, { true, { 1, 0, 0 }, { c, -0.5 } },
		{ true, { 0, 1, 0 }, { -c, -0.5 } }, { true, { 0, 0, 1 }, { 0, -1 } },
		{ false, { 3, 5, 2 }, { 8 * c, -3 } },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct space_view w = iso_view(rows[i].left);
		pt p = space_point(&w, rows[i].at);

		expect_near(p.x, rows[i].want.x, 1e-12);
		expect_near(p.y, rows[i].want.y, 1e-12);
	}
}

/* A cube shows six contour edges, three inner ones, and hides three. */
static void a_cube_shows_nine_edges(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct fig_member m = box(0, 0, 0, 10, 10, 10);
	const struct fig_iso_part part = { { "cube", 4 }, { 0 } };
	struct fig_iso f = { .arena = a, .member = &m, .nmembers = 1, .part = &part,
		.nparts = 1 };
	struct iso_scene *s = iso_scene_new(&f);
	size_t thick = 0;

	(void)state;
	assert_int_equal(s->nlines, 9);
	for (size_t i = 0; i < s->nlines; i++) {
		pt d = pt_sub(s->line[i].b, s->line[i].a);

		thick += s->line[i].thick;
		expect_near(pt_length(d), 10, 1e-9);
		/* Upright, or rising or falling by half its length. */
		assert_true(fabs(d.x) < 1e-9 || fabs(fabs(d.y) - 5) < 1e-9);
	}
	assert_int_equal(thick, 6);
	assert_int_equal(s->nhull, 6);
	arena_free(a);
}

/* ---- hidden lines against a walk to the eye ---- */

/* A point in the frame of a member before it was turned and moved. */
static vec own_point(const struct fig_member *m, vec v)
{
	double c = cos(m->turn_deg * GEOM_PI / 180), s = sin(m->turn_deg * GEOM_PI / 180);
	double p[3] = { v.x - m->at_mm[0], v.y - m->at_mm[1], v.z - m->at_mm[2] };
	/* Counterclockwise: x to y, y to z, z to x. */
	int i = ((int)m->about + 1) % 3, k = ((int)m->about + 2) % 3;
	double a = p[i], b = p[k];

	p[i] = c * a + s * b;
	p[k] = -s * a + c * b;
	return (vec){ p[0], p[1], p[2] };
}

static bool in_range(double v, double lo, double hi, double grow)
{
	return v > lo - grow && v < hi + grow;
}

/* Whether a point stands in the steel of m, its surface moved out by `grow`. */
static bool in_steel(const struct fig_member *m, vec world, double grow)
{
	vec o = own_point(m, world);
	const double p[3] = { o.x, o.y, o.z };
	int l = (int)m->along, i = l == 0 ? 1 : 0, k = l == 2 ? 1 : 2;
	double a = p[i], b = p[k], w = m->size_mm[i], h = m->size_mm[k], t = m->wall_mm;
	double r = hypot(a, b);

	if (!in_range(p[l], 0, m->size_mm[l], grow))
		return false;
	switch (m->shape) {
	case FIG_MEMBER_TUBE:
		return in_range(a, 0, w, grow) && in_range(b, 0, h, grow) &&
		    !(in_range(a, t, w - t, -grow) && in_range(b, t, h - t, -grow));
	case FIG_MEMBER_ANGLE:
		a = m->heel_far[0] ? w - a : a;
		b = m->heel_far[1] ? h - b : b;
		return in_range(a, 0, w, grow) && in_range(b, 0, h, grow) &&
		    (a < t + grow || b < t + grow);
	case FIG_MEMBER_PIPE:
		return r < w / 2 + grow && r > w / 2 - t - grow;
	case FIG_MEMBER_ROUND:
		return r < w / 2 + grow;
	default:
		/* Outlines of these tests: the triangle below the line from (w, 0) to (0, h). */
		if (m->noutline > 0)
			return in_range(a, 0, INFINITY, grow) && in_range(b, 0, INFINITY, grow) &&
			    a / m->outline[1].x + b / m->outline[2].y <
			    1 + grow * hypot(1 / m->outline[1].x, 1 / m->outline[2].y);
		return in_range(a, 0, w, grow) && in_range(b, 0, h, grow);
	}
}

/* Millimeters of steel on the way to the eye from `from` on. */
static double steel_ahead(const struct fig_member *m, size_t n, vec at, vec eye, double from,
    double grow)
{
	const double step = 0.25;
	double sum = 0;

	for (double s = from; s < 420; s += step)
		for (size_t i = 0; i < n; i++)
			if (in_steel(&m[i], vec_add(at, vec_mul(eye, s)), grow)) {
				sum += step;
				break;
			}
	return sum;
}

struct dice { uint32_t state; };

static double roll(struct dice *d, double lo, double hi)
{
	d->state = d->state * 1664525u + 1013904223u;
	return lo + (hi - lo) * (double)(d->state >> 8) / (double)(1u << 24);
}

static struct fig_member random_member(struct dice *d, pt *triangle)
{
	static const enum fig_member_shape shapes[] = { FIG_MEMBER_SOLID, FIG_MEMBER_TUBE,
		FIG_MEMBER_ANGLE, FIG_MEMBER_PIPE, FIG_MEMBER_ROUND, FIG_MEMBER_SOLID };
	int kind = (int)roll(d, 0, 5.999), l;
	struct fig_member m = { .shape = shapes[kind], .along = (enum fig_axis)(int)roll(d, 0, 2.999),
		.wall_mm = roll(d, 6, 9), .about = (enum fig_axis)(int)roll(d, 0, 2.999),
		.heel_far = { roll(d, 0, 1) < 0.5, roll(d, 0, 1) < 0.5 } };

	l = (int)m.along;
	for (int i = 0; i < 3; i++) {
		m.size_mm[i] = roll(d, 25, 50);
		m.at_mm[i] = roll(d, 0, 120);
	}
	m.size_mm[l] = roll(d, 40, 140);
	if (m.shape == FIG_MEMBER_PIPE || m.shape == FIG_MEMBER_ROUND)
		m.size_mm[(l + 1) % 3] = m.size_mm[(l + 2) % 3];
	if (roll(d, 0, 1) < 0.4)
		m.turn_deg = roll(d, 0, 360);
	if (kind == 5) {
		m.size_mm[l] = roll(d, 8, 15);
		triangle[0] = (pt){ 0, 0 };
		triangle[1] = (pt){ roll(d, 30, 80), 0 };
		triangle[2] = (pt){ 0, roll(d, 30, 80) };
		m.outline = triangle;
		m.noutline = 3;
	}
	return m;
}

struct tally { size_t seen, hidden, unsure; };

static bool is_seen(const struct solid_span *v, size_t n, double t)
{
	for (size_t i = 0; i < n; i++)
		if (t >= v[i].from && t <= v[i].to)
			return true;
	return false;
}

static bool near_an_end(const struct solid_span *v, size_t n, double t, double slack)
{
	for (size_t i = 0; i < n; i++)
		if (fabs(t - v[i].from) < slack || fabs(t - v[i].to) < slack)
			return true;
	return false;
}

static void judge_point(const struct fig_member *m, size_t n, vec at, vec eye, bool seen,
    struct tally *k)
{
	/* Steel met for sure, or not at all but for the skin of the part itself. */
	if (steel_ahead(m, n, at, eye, 0.5, -0.6) > 1.5) {
		k->hidden++;
		assert_false(seen);
	} else if (steel_ahead(m, n, at, eye, 0.05, 0) < 0.2 &&
	    steel_ahead(m, n, at, eye, 9, 0.6) == 0) {
		k->seen++;
		assert_true(seen);
	} else {
		k->unsure++;
	}
}

static void judge_edge(const struct solid *v, const struct fig_member *m, size_t n,
    const struct solid_edge *e, const struct space_view *w, struct tally *k)
{
	struct solid_span seen[64];
	size_t count = solids_seen(v, n, e->a, e->b, w, seen, 64);
	vec d = vec_add(e->b, vec_mul(e->a, -1));
	double length = sqrt(vec_dot(d, d));

	for (double t = 0.07; t < 1; t += length > 20 ? 0.12 : 0.43)
		if (!near_an_end(seen, count, t, 1.5 / length))
			judge_point(m, n, vec_add(e->a, vec_mul(d, t)), w->to_eye,
			    is_seen(seen, count, t), k);
}

static void hidden_lines_agree_with_a_walk_to_the_eye(void **state)
{
	struct dice d = { 20260921 };
	struct tally k = { 0 };

	(void)state;
	for (int scene = 0; scene < 6; scene++) {
		struct arena *a = arena_new(NULL, NULL);
		struct space_view w = iso_view(scene % 2);
		struct fig_member m[5];
		struct solid v[5];
		pt triangle[5][3];

		for (size_t i = 0; i < 5; i++) {
			m[i] = random_member(&d, triangle[i]);
			v[i] = solid_of(a, &m[i]);
			solid_project(&v[i], &w);
		}
		for (size_t i = 0; i < 5; i++)
			for (size_t e = 0; e < v[i].nedges; e += v[i].nedges > 40 ? 9 : 1)
				judge_edge(v, m, 5, &v[i].edge[e], &w, &k);
		arena_free(a);
	}
	print_message("%zu seen, %zu hidden, %zu unsure\n", k.seen, k.hidden, k.unsure);
	assert_true(k.seen > 400 && k.hidden > 400);
	assert_true(k.unsure < (k.seen + k.hidden) / 2);
}

/* Three bars that lie over each other in a ring: no order of painting shows them right. */
static void bars_may_hide_each_other_in_a_ring(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	/* Along x under the one along y at its far end, and so on round. */
	const struct fig_member m[3] = { box(0, 0, 0, 100, 20, 20), box(80, 0, 20, 20, 100, 20),
		box(0, 0, 20, 20, 20, 100) };
	struct space_view w = iso_view(false);
	struct solid v[3];
	struct tally k = { 0 };

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		v[i] = solid_of(a, &m[i]);
		solid_project(&v[i], &w);
	}
	for (size_t i = 0; i < 3; i++)
		for (size_t e = 0; e < v[i].nedges; e++)
			judge_edge(v, m, 3, &v[i].edge[e], &w, &k);
	assert_true(k.seen > 30 && k.hidden > 30);
	arena_free(a);
}

/* ---- how far apart ---- */

static double gap(struct fig_member a, struct fig_member b)
{
	struct arena *arena = arena_new(NULL, NULL);
	struct solid x = solid_of(arena, &a), y = solid_of(arena, &b);
	double mm = solids_gap_mm(&x, &y);

	expect_near(solids_gap_mm(&y, &x), mm, 1e-9);
	arena_free(arena);
	return mm;
}

static void gaps_and_depths(void **state)
{
	struct fig_member a = box(0, 0, 0, 10, 10, 10), t = box(0, 0, 0, 100, 50, 50), p, q;

	(void)state;
	expect_near(gap(a, box(15, 0, 0, 10, 10, 10)), 5, 1e-9);
	expect_near(gap(a, box(10, 3, 3, 5, 5, 5)), 0, 1e-9);
	expect_near(gap(a, box(8, 5, 1, 10, 10, 10)), -2, 1e-9);
	expect_near(gap(a, box(2, 2, 2, 3, 3, 3)), -5, 1e-9);
	/* Inside a bore there is room: 50 less two walls of 5 and a bar of 20. */
	t.shape = FIG_MEMBER_TUBE;
	t.along = FIG_X;
	t.wall_mm = 5;
	expect_near(gap(t, box(10, 15, 15, 40, 20, 20)), 10, 1e-9);
	expect_near(gap(t, box(10, 3, 15, 40, 20, 20)), -2, 1e-9);
	/* A square bar turned on its corner: half its diagonal reaches to the side. */
	p = box(0, 0, 0, 20, 20, 20);
	p.turn_deg = 45;
	p.about = FIG_Z;
	expect_near(gap(p, box(20 * sqrt(0.5) + 4, 0, 0, 9, 30, 20)), 4, 1e-9);
	/* Two pipes side by side: their middles 60 apart, each 25 in radius. */
	p = (struct fig_member){ .shape = FIG_MEMBER_PIPE, .along = FIG_Z,
		.size_mm = { 50, 50, 80 }, .wall_mm = 4 };
	q = p;
	q.at_mm[0] = 60;
	expect_near(gap(p, q), 10, 0.01);
	q.at_mm[0] = 45;
	assert_true(gap(p, q) < -1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(axes_stand_at_120_degrees),
		cmocka_unit_test(a_cube_shows_nine_edges),
		cmocka_unit_test(hidden_lines_agree_with_a_walk_to_the_eye),
		cmocka_unit_test(bars_may_hide_each_other_in_a_ring),
		cmocka_unit_test(gaps_and_depths),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
