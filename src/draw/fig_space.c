#include "draw/fig_space.h"

#include "draw/geom.h"

#include <math.h>

#define OUTLINE_PT 1.0
#define RIPPLES 15

vec vec_add(vec a, vec b)
{
	return (vec){ a.x + b.x, a.y + b.y, a.z + b.z };
}

vec vec_mul(vec a, double k)
{
	return (vec){ a.x * k, a.y * k, a.z * k };
}

double vec_dot(vec a, vec b)
{
	return a.x * b.x + a.y * b.y + a.z * b.z;
}

vec vec_cross(vec a, vec b)
{
	return (vec){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

vec space_turn(const struct space_frame *f, vec v)
{
	return vec_add(vec_add(vec_mul(f->x, v.x), vec_mul(f->y, v.y)), vec_mul(f->z, v.z));
}

struct space_view space_view_from(double right_deg, double above_deg)
{
	struct space_view w = { .scale = 1 };

	w.right = (vec){ geom_cos(right_deg), geom_sin(right_deg), 0 };
	w.to_eye = (vec){ geom_sin(right_deg) * geom_cos(above_deg),
		-geom_cos(right_deg) * geom_cos(above_deg), geom_sin(above_deg) };
	w.up = vec_cross(w.to_eye, w.right);
	return w;
}

pt space_point(const struct space_view *w, vec v)
{
	return (pt){ w->at.x + w->scale * vec_dot(v, w->right),
		w->at.y - w->scale * vec_dot(v, w->up) };
}

vec space_corner(const struct space_frame *f, const struct space_prism *p, size_t i,
    bool far)
{
	return space_turn(f, (vec){ far ? p->x1 : p->x0, p->v[i % p->n].x, p->v[i % p->n].y });
}

/* Outward normal of the side from corner i to the next, in y and z. */
static pt side_normal(const struct space_prism *p, size_t i)
{
	pt a = p->v[i], b = p->v[(i + 1) % p->n], inside = { 0, 0 };
	pt n = pt_unit((pt){ b.y - a.y, a.x - b.x });

	for (size_t k = 0; k < p->n; k++)
		inside = pt_add(inside, pt_mul(p->v[k], 1 / (double)p->n));
	inside = pt_sub(inside, a);
	return n.x * inside.x + n.y * inside.y > 0 ? pt_mul(n, -1) : n;
}

/* Whether all of b lies outside side i of a. */
static bool side_parts(const struct space_prism *a, size_t i, const struct space_prism *b)
{
	pt n = side_normal(a, i);

	for (size_t k = 0; k < b->n; k++) {
		pt d = pt_sub(b->v[k], a->v[i]);

		if (n.x * d.x + n.y * d.y < -1e-9)
			return false;
	}
	return true;
}

static double normal_to_eye(const struct space_view *w, const struct space_frame *f, pt n)
{
	return vec_dot(space_turn(f, (vec){ 0, n.x, n.y }), w->to_eye);
}

bool space_in_front(const struct space_view *w, const struct space_frame *f,
    const struct space_prism *a, const struct space_prism *b)
{
	for (size_t i = 0; i < b->n; i++)
		if (side_parts(b, i, a))
			return normal_to_eye(w, f, side_normal(b, i)) > 0;
	for (size_t i = 0; i < a->n; i++)
		if (side_parts(a, i, b))
			return normal_to_eye(w, f, side_normal(a, i)) < 0;
	return true;
}

static void ink_face(struct canvas *c, const pt *v, size_t n)
{
	canvas_polygon(c, v, n, &(struct ink){ .stroke_pt = OUTLINE_PT, .fill = true,
	    .fill_gray = 1 });
}

/* Ripples from edge to edge of a face: v[0] to v[1] and v[3] to v[2] run along the weld. */
static void ink_ripples(struct canvas *c, const pt *v)
{
	struct seg g[2 * RIPPLES];
	size_t n = 0;

	for (int i = 1; i <= RIPPLES; i++) {
		double share = (double)i / (RIPPLES + 1);

		g[n++] = (struct seg){ SEG_MOVE, { pt_between(v[0], v[1], share) } };
		g[n++] = (struct seg){ SEG_LINE, { pt_between(v[3], v[2], share) } };
	}
	canvas_path(c, g, n, &(struct ink){ .stroke_pt = OUTLINE_PT });
}

static bool side_shows(const struct space_view *w, const struct space_frame *f,
    const struct space_prism *p, size_t i)
{
	return normal_to_eye(w, f, side_normal(p, i % p->n)) > 1e-6;
}

/* The sides that show as one outline: those of a convex solid lie beside one another. */
static void ink_round_sides(struct canvas *c, const struct space_view *w,
    const struct space_frame *f, const struct space_prism *p)
{
	pt v[2 * (SPACE_CORNERS + 1)];
	size_t from = 0, run = 0, n = 0;

	while (from < p->n && (!side_shows(w, f, p, from) ||
	    side_shows(w, f, p, from + p->n - 1)))
		from++;
	while (run < p->n && side_shows(w, f, p, from + run))
		run++;
	for (size_t i = 0; i <= run; i++)
		v[n++] = space_point(w, space_corner(f, p, from + i, false));
	for (size_t i = run + 1; i-- > 0;)
		v[n++] = space_point(w, space_corner(f, p, from + i, true));
	ink_face(c, v, n);
}

static void ink_flat_sides(struct canvas *c, const struct space_view *w,
    const struct space_frame *f, const struct space_prism *p)
{
	for (size_t i = p->covered; i < p->n; i++) {
		const pt side[4] = { space_point(w, space_corner(f, p, i, false)),
			space_point(w, space_corner(f, p, i, true)),
			space_point(w, space_corner(f, p, i + 1, true)),
			space_point(w, space_corner(f, p, i + 1, false)) };

		if (!side_shows(w, f, p, i))
			continue;
		ink_face(c, side, 4);
		if (p->weld)
			ink_ripples(c, side);
	}
}

/* The bore of a tube: its outline, smaller about the middle. */
static void ink_bore(struct canvas *c, const pt *v, size_t n)
{
	pt middle = { 0, 0 }, in[SPACE_CORNERS];

	for (size_t i = 0; i < n; i++)
		middle = pt_add(middle, pt_mul(v[i], 1 / (double)n));
	for (size_t i = 0; i < n; i++)
		in[i] = pt_between(middle, v[i], 0.72);
	ink_face(c, in, n);
}

void space_prism_ink(struct canvas *c, const struct space_view *w,
    const struct space_frame *f, const struct space_prism *p)
{
	double end = vec_dot(f->x, w->to_eye);
	pt v[SPACE_CORNERS];

	if (p->round)
		ink_round_sides(c, w, f, p);
	else
		ink_flat_sides(c, w, f, p);
	if (fabs(end) < 1e-6)
		return;
	for (size_t i = 0; i < p->n; i++)
		v[i] = space_point(w, space_corner(f, p, i, end > 0));
	ink_face(c, v, p->n);
	if (p->round)
		ink_bore(c, v, p->n);
}

size_t space_arc(const struct space_view *w, const struct space_frame *f, double x,
    double r, double from_deg, double to_deg, pt *out)
{
	for (size_t i = 0; i <= SPACE_STEPS; i++) {
		pt u = pt_polar(r, from_deg + (to_deg - from_deg) * (double)i / SPACE_STEPS);

		out[i] = space_point(w, space_turn(f, (vec){ x, u.x, u.y }));
	}
	return SPACE_STEPS + 1;
}

double space_facing_deg(const struct space_view *w, const struct space_frame *f)
{
	return atan2(vec_dot(f->z, w->to_eye), vec_dot(f->y, w->to_eye)) * 180 / GEOM_PI;
}
