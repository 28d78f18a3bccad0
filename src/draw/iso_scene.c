/* What of the members is seen, and where a leader may point. */
#include "draw/iso_plan.h"

#include "draw/geom.h"

#include <math.h>
#include <stdlib.h>

/* The eye of an isometric view stands that far above the horizon: asin(1 / sqrt 3). */
#define ABOVE_DEG 35.26438968275465
#define TRUE_LENGTH 1.224744871391589    /* sqrt(3 / 2) */
/* Samples across a face, and about how many of one part are looked at. */
#define SAMPLES 5
#define SAMPLES_MOST 200
#define SPANS_MOST 64
#define CORNER_SHARE 0.15

static void add_lines(struct iso_scene *s, vec a, vec b, bool thick)
{
	struct solid_span seen[SPANS_MOST];
	size_t n = solids_seen(s->solid, s->f->nmembers, a, b, &s->view, seen, SPANS_MOST);
	pt p = space_point(&s->view, a), q = space_point(&s->view, b);

	for (size_t i = 0; i < n; i++)
		*ARENA_PUSH(s->f->arena, s->line, s->nlines, s->lines_cap) = (struct iso_line){
			pt_between(p, q, seen[i].from), pt_between(p, q, seen[i].to), thick };
}

/* A contour: one of the two faces looks away, so that one sees past the part there. */
static void add_edge(struct iso_scene *s, const struct solid_edge *e)
{
	bool left = vec_dot(e->left, s->view.to_eye) > 1e-9;
	bool right = vec_dot(e->right, s->view.to_eye) > 1e-9;

	if (e->kind == SOLID_INNER)
		add_lines(s, e->a, e->b, false);
	else if (left != right)
		add_lines(s, e->a, e->b, true);
	else if (left && e->kind == SOLID_SHARP)
		add_lines(s, e->a, e->b, false);
}

/* ---- spots for leaders ---- */

static double square(pt d)
{
	return d.x * d.x + d.y * d.y;
}

/* Of the distance, without a root: asked for very often. */
static double line_square(pt p, pt a, pt b)
{
	pt d = pt_sub(b, a), w = pt_sub(p, a);
	double n = square(d), t = n > 0 ? (w.x * d.x + w.y * d.y) / n : 0;

	t = t < 0 ? 0 : t > 1 ? 1 : t;
	return square(pt_sub(w, pt_mul(d, t)));
}

/* On a thin bar every spot is near a line; there the corners tell which is clearest. */
static double clearance(const struct iso_scene *s, pt p)
{
	double line = INFINITY, corner = INFINITY;

	for (size_t i = 0; i < s->nlines; i++) {
		const struct iso_line *l = &s->line[i];
		double d = line_square(p, l->a, l->b);
		double a = square(pt_sub(p, l->a)), b = square(pt_sub(p, l->b));

		line = d < line ? d : line;
		corner = a < corner ? a : corner;
		corner = b < corner ? b : corner;
	}
	return sqrt(line) + CORNER_SHARE * sqrt(corner);
}

static void keep_anchor(struct iso_anchors *k, pt p, double clear)
{
	size_t i = k->n < ISO_ANCHORS ? k->n++ : ISO_ANCHORS - 1;

	if (i == ISO_ANCHORS - 1 && k->n == ISO_ANCHORS && k->clear[i] > clear)
		return;
	for (; i > 0 && k->clear[i - 1] < clear; i--) {
		k->v[i] = k->v[i - 1];
		k->clear[i] = k->clear[i - 1];
	}
	k->v[i] = p;
	k->clear[i] = clear;
}

static void try_anchor(struct iso_scene *s, size_t part, vec v)
{
	pt p = space_point(&s->view, v);

	if (!solids_hide(s->solid, s->f->nmembers, v, &s->view))
		keep_anchor(&s->anchors[part], p, clearance(s, p));
}

/* A point of the face with four corners: u along the first side, w along the second. */
static vec face_point(const vec v[4], double u, double w)
{
	vec a = vec_add(vec_mul(v[0], 1 - u), vec_mul(v[1], u));
	vec b = vec_add(vec_mul(v[3], 1 - u), vec_mul(v[2], u));

	return vec_add(vec_mul(a, 1 - w), vec_mul(b, w));
}

/* Samples of a face, every skip-th of them. */
static void sample_face(struct iso_scene *s, size_t part, const vec v[4], size_t skip)
{
	for (size_t i = skip / 2; i < SAMPLES * SAMPLES; i += skip)
		try_anchor(s, part, face_point(v, ((double)(i % SAMPLES) + 0.5) / SAMPLES,
		    ((double)(i / SAMPLES) + 0.5) / SAMPLES));
}

static bool faces_eye(const struct iso_scene *s, const struct solid_part *p, size_t plane)
{
	return vec_dot(p->plane[plane].normal, s->view.to_eye) > 1e-9;
}

static void sample_part(struct iso_scene *s, size_t part, const struct solid_part *p,
    size_t skip)
{
	size_t n = p->n;

	for (size_t i = 0; i < n; i++) {
		const vec face[4] = { p->v[i], p->v[(i + 1) % n], p->v[n + (i + 1) % n],
			p->v[n + i] };

		if (faces_eye(s, p, i))
			sample_face(s, part, face, skip);
	}
	for (size_t end = 0; end < 2; end++) {
		const vec *v = p->v + end * n;
		const vec cap[4] = { v[0], v[n / 4 > 0 ? n / 4 : 1], v[n / 2], v[n * 3 / 4] };

		if (faces_eye(s, p, n + end))
			sample_face(s, part, cap, skip);
	}
}

static size_t count_faces(const struct iso_scene *s, size_t part)
{
	size_t n = 0;

	for (size_t i = 0; i < s->f->nmembers; i++)
		for (size_t k = 0; k < s->solid[i].nparts && s->f->member[i].part == part; k++)
			for (size_t f = 0; f < s->solid[i].part[k].n + 2; f++)
				n += faces_eye(s, &s->solid[i].part[k], f);
	return n;
}

static void find_anchors(struct iso_scene *s, size_t part)
{
	size_t skip = 1 + count_faces(s, part) * SAMPLES * SAMPLES / SAMPLES_MOST;

	for (size_t i = 0; i < s->f->nmembers; i++)
		for (size_t k = 0; k < s->solid[i].nparts && s->f->member[i].part == part; k++)
			sample_part(s, part, &s->solid[i].part[k],
			    skip < SAMPLES * SAMPLES ? skip : SAMPLES * SAMPLES);
}

/* ---- around all ---- */

static int by_x(const void *x, const void *y)
{
	const pt *a = x, *b = y;
	int c = (a->x > b->x) - (a->x < b->x);

	return c ? c : (a->y > b->y) - (a->y < b->y);
}

static double turn(pt a, pt b, pt c)
{
	return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/* Adds the points of one way, lower or upper, to the ring that begins at `base`. */
static size_t half_hull(const pt *v, size_t n, bool back, pt *hull, size_t base)
{
	size_t m = base;

	for (size_t i = 0; i < n; i++) {
		pt p = v[back ? n - 1 - i : i];

		while (m >= base + 2 && turn(hull[m - 2], hull[m - 1], p) <= 0)
			m--;
		hull[m++] = p;
	}
	return m - 1;            /* the last one begins the other way */
}

static void find_hull(struct iso_scene *s)
{
	size_t n = 2 * s->nlines;
	pt *v = arena_array(s->f->arena, n + 1, sizeof *v);

	s->hull = arena_array(s->f->arena, 2 * n + 2, sizeof *s->hull);
	for (size_t i = 0; i < s->nlines; i++) {
		v[2 * i] = s->line[i].a;
		v[2 * i + 1] = s->line[i].b;
	}
	if (n == 0)
		return;
	qsort(v, n, sizeof *v, by_x);
	s->nhull = half_hull(v, n, false, s->hull, 0);
	s->nhull = half_hull(v, n, true, s->hull, s->nhull);
}

struct iso_scene *iso_scene_new(const struct fig_iso *f)
{
	struct iso_scene *s = arena_alloc(f->arena, sizeof *s);
	struct fig_iso *own = arena_alloc(f->arena, sizeof *own);

	*own = *f;
	s->f = own;
	s->view = space_view_from(f->from_left ? -45 : 45, ABOVE_DEG);
	s->view.scale = TRUE_LENGTH;
	s->solid = arena_array(f->arena, f->nmembers, sizeof *s->solid);
	for (size_t i = 0; i < f->nmembers; i++) {
		s->solid[i] = solid_of(f->arena, &f->member[i]);
		solid_project(&s->solid[i], &s->view);
	}
	fig_iso_extent(f, s->lo, s->hi);
	for (size_t i = 0; i < f->nmembers; i++)
		for (size_t k = 0; k < s->solid[i].nedges; k++)
			add_edge(s, &s->solid[i].edge[k]);
	find_hull(s);
	iso_scene_ways(s);
	for (size_t part = 0; part < f->nparts && part < FIG_ISO_PARTS; part++)
		find_anchors(s, part);
	return s;
}
