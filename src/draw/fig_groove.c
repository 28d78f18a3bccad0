/* What sections with prepared edges share: edges, welds and their dimensions. */
#include "draw/fig_groove.h"

#include "draw/geom.h"

#include <math.h>

static double way_of(int side)
{
	return side == 0 ? -1 : 1;
}

static double root_x(const struct groove *g, int side)
{
	return way_of(side) * g->gap / 2;
}

pt groove_toe(const struct groove *g, int side)
{
	const struct prep_edge *e = &g->edge[side];

	return (pt){ root_x(g, side) + way_of(side) * e->front.run_mm, e->thick_mm };
}

pt groove_root(const struct groove *g, int side)
{
	return (pt){ root_x(g, side), g->edge[side].back.depth_mm };
}

void groove_edge(struct section_member *m, const struct prep_edge *e, pt root, double way)
{
	pt line[PREP_POINTS];
	double back = e->back.depth_mm, face = back + e->land_mm;
	size_t n = prep_line(&e->back, line);

	for (size_t i = n; i-- > 1 && back > 0;)
		section_corner(m, root.x + way * line[i].x, root.y + back - line[i].y);
	section_corner(m, root.x, root.y + back);
	if (e->land_mm > 0)
		section_corner(m, root.x, root.y + face);
	if (!(e->front.depth_mm > 0)) {
		section_corner(m, root.x, root.y + e->thick_mm);
		return;
	}
	n = prep_line(&e->front, line);
	for (size_t i = 1; i + 1 < n; i++)
		section_corner(m, root.x + way * line[i].x, root.y + face + line[i].y);
	section_corner(m, root.x + way * e->front.run_mm, root.y + e->thick_mm);
}

/* ---- welds ---- */

double groove_lap(double half_width, double rise)
{
	/* At least four times as wide as high (common practice, no source). */
	return fmax(0, 2 * rise - half_width);
}

void groove_cap(struct section_bead *b, pt right, pt left, double rise, double up)
{
	double lap = groove_lap((right.x - left.x) / 2, rise);
	pt from = { right.x + lap, right.y }, to = { left.x - lap, left.y };
	bool alone = b->n == 0;

	if (alone)
		section_move(b, from);
	else if (lap > 0)
		section_line(b, from);
	section_face(b, from, to, -rise * up);
	if (lap > 0 && !alone)
		section_line(b, left);
}

/* One wall of the weld from its root to the surface. */
static size_t wall_points(const struct groove *g, int side, bool back, pt *out)
{
	const struct prep_edge *e = &g->edge[side];
	double x = root_x(g, side), way = way_of(side), face = e->back.depth_mm + e->land_mm;
	double middle = e->back.depth_mm + e->land_mm / 2, up = back ? -1 : 1, from;
	const struct prep_face *f = back ? &e->back : &e->front;
	bool doubled = g->edge[0].back.depth_mm > 0;
	pt line[PREP_POINTS];
	size_t n = 0, points = prep_line(f, line);

	/* The unprepared edge of a bevel has its root where the other one has it. */
	if (!(f->depth_mm > 0) && doubled) {
		const struct prep_edge *o = &g->edge[1 - side];

		face = o->back.depth_mm + o->land_mm;
		middle = o->back.depth_mm + o->land_mm / 2;
	} else if (!(f->depth_mm > 0) && !(g->gap > 0)) {
		face = g->edge[1 - side].land_mm;
	}
	from = !(g->gap > 0) ? back ? g->edge[0].back.depth_mm : face : doubled ? middle : 0;
	out[n++] = (pt){ x, from };
	if (!(f->depth_mm > 0)) {
		out[n++] = (pt){ x, back ? 0 : e->thick_mm };
		return n;
	}
	face = back ? e->back.depth_mm : face;
	if (fabs(face - from) > 1e-9)
		out[n++] = (pt){ x, face };
	for (size_t i = 1; i + 1 < points; i++)
		out[n++] = (pt){ x + way * line[i].x, face + up * line[i].y };
	out[n++] = (pt){ x + way * f->run_mm, back ? 0 : e->thick_mm };
	return n;
}

void groove_weld(struct section *s, const struct groove *g, bool back, double crown)
{
	struct section_bead *b = section_bead(s);
	struct section_region *r = section_region(s, back);

	r->na = wall_points(g, 0, back, r->a);
	r->nb = wall_points(g, 1, back, r->b);
	r->rise = crown;
	section_move(b, r->b[0]);
	for (size_t i = 1; i < r->nb; i++)
		section_line(b, r->b[i]);
	groove_cap(b, r->b[r->nb - 1], r->a[r->na - 1], crown, back ? -1 : 1);
	for (size_t i = r->na - 1; i-- > 0;)
		section_line(b, r->a[i]);
	section_close(b);
}

void groove_back_weld(struct section *s, pt right, pt left, double crown)
{
	struct section_region *r = section_region(s, true);

	groove_cap(section_bead(s), right, left, crown, -1);
	r->a[0] = left;
	r->b[0] = right;
	r->na = r->nb = 1;
	r->rise = crown;
}

/* ---- dimensions ---- */

bool groove_has_heights(const struct groove *g, int side, const struct fig_joint *j)
{
	return g->edge[side].land_mm > 0 ||
	    (j->label_depth.n > 0 && g->edge[side].front.depth_mm > 0);
}

void groove_height_dims(struct section *s, const struct fig_joint *j, const struct groove *g,
    int side)
{
	const struct prep_edge *e = &g->edge[side];
	enum section_side at = side == 1 ? SECTION_RIGHT : SECTION_LEFT;
	double x = root_x(g, side), back = e->back.depth_mm, face = back + e->land_mm;

	if (e->land_mm > 0)
		section_upright(s, at, (pt){ x, back }, (pt){ x, face }, SECTION_UP,
		    j->label_land);
	if (e->front.depth_mm > 0)
		section_upright(s, at, (pt){ x, face }, groove_toe(g, side), SECTION_UP,
		    j->label_depth);
	if (back > 0)
		section_upright(s, at, (pt){ x + way_of(side) * e->back.run_mm, 0 },
		    (pt){ x, back }, SECTION_DOWN, j->label_depth_back);
}

static void radius_dim(struct section *s, const struct fig_joint *j, const struct groove *g)
{
	const struct prep_face *f = &g->edge[0].front;
	double face = g->edge[0].back.depth_mm + g->edge[0].land_mm;
	pt arc = pt_polar(f->radius_mm, -45);

	if (!(f->radius_mm > 0))
		return;
	arc = (pt){ root_x(g, 0) - arc.x, face + f->radius_mm + arc.y };
	section_pointer(s, SECTION_LEFT, arc, (pt){ arc.x, arc.y - f->depth_mm }, j->label_radius);
}

/* What is other at the back than in front. */
static void back_dims(struct section *s, const struct fig_joint *j, const struct groove *g)
{
	const struct prep_face *f = &g->edge[0].back;
	double x = root_x(g, 0), r = f->radius_mm;
	pt toe = { x - f->run_mm, 0 }, arc = pt_polar(r, -45);

	if (!(f->depth_mm > 0))
		return;
	section_pointer(s, SECTION_LEFT,
	    (pt){ toe.x + f->depth_mm * 0.15 * geom_tan(f->deg), f->depth_mm * 0.15 },
	    (pt){ toe.x, -f->depth_mm }, j->label_angle_back);
	if (r > 0)
		section_pointer(s, SECTION_LEFT, (pt){ x - arc.x, f->depth_mm - r - arc.y },
		    (pt){ x - arc.x, f->depth_mm / 2 }, j->label_radius_back);
}

void groove_angle_dims(struct section *s, const struct fig_joint *j, const struct groove *g)
{
	const struct prep_face *f = &g->edge[0].front;
	bool both = g->edge[1].front.depth_mm > 0;
	struct section_dim d = { .kind = SECTION_ANGLE, .side = SECTION_TOP,
	    .label = j->label_angle };
	pt u = pt_polar(1, 90 + f->deg), v = pt_polar(1, 90 - (both ? f->deg : 0));

	if (!(f->depth_mm > 0))
		return;
	if (!both && d.label.n == 0)
		d.label = j->label_bevel;
	d.a = groove_toe(g, 1);
	d.b = groove_toe(g, 0);
	if (geom_meet(d.b, u, d.a, v, &d.apex))
		section_dim(s, d);
	if (both)
		section_pointer(s, SECTION_LEFT,
		    pt_between(d.b, (pt){ d.b.x + f->depth_mm * 0.15 * geom_tan(f->deg),
		        d.b.y - f->depth_mm * 0.15 }, 1),
		    (pt){ d.b.x, g->edge[0].thick_mm * 2 }, j->label_bevel);
	radius_dim(s, j, g);
	back_dims(s, j, g);
}
