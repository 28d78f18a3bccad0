/* The overall dimensions of an isometric figure, each along its axis: two below along the
 * front and the side and one upright at the right, unless another way is clearer. */
#include "draw/iso_plan.h"

#include "draw/geom.h"

#include <math.h>

#define OFFSET_PT 17.0           /* from the box of the weldment to a dimension line */
#define OVER_PT 4.0              /* what an extension line goes on beyond it */
#define CLEAR_PT 2.5             /* between the part and its extension line */
#define LABEL_PT 3.0
#define INSIDE_PT 24.0           /* arrows stand inside from this length on */
#define STEM_PT 12.0

pt iso_point(const struct iso_plan *p, pt mm)
{
	return pt_add(pt_mul(mm, p->pt_mm), p->shift);
}

static pt project(const struct iso_plan *p, const double mm[3])
{
	return pt_mul(space_point(&p->scene->view, (vec){ mm[0], mm[1], mm[2] }), p->pt_mm);
}

static void thin(struct iso_plan *p, pt a, pt b)
{
	if (p->nthin == ISO_THIN || pt_length(pt_sub(b, a)) < 0.05)
		return;
	p->thin[p->nthin].a = a;
	p->thin[p->nthin++].b = b;
}

static void arrow(struct iso_plan *p, pt tip, pt dir)
{
	p->arrow[p->narrows].tip = tip;
	p->arrow[p->narrows++].dir = dir;
}

static int third_of(const struct iso_way *m)
{
	return 3 - (int)m->axis - (int)m->off;
}

/* From the corner of the weldment along the third axis to the plane of the dimension, then
 * along `off` past the dimension line. Returns where the dimension line ends. */
static pt extension(struct iso_plan *p, const struct iso_way *m, double v[3])
{
	int third = third_of(m);
	pt from = project(p, v), to, last;

	v[third] = m->base[third];
	to = project(p, v);
	if (pt_length(pt_sub(to, from)) > CLEAR_PT) {
		thin(p, pt_add(from, pt_mul(pt_unit(pt_sub(to, from)), CLEAR_PT)), to);
		from = to;
	} else {
		v[m->off] += m->way * CLEAR_PT / p->pt_mm;
		from = project(p, v);
	}
	v[m->off] = m->base[m->off] + m->way * OFFSET_PT / p->pt_mm;
	last = project(p, v);
	v[m->off] += m->way * OVER_PT / p->pt_mm;
	thin(p, from, project(p, v));
	return last;
}

/* Beside the middle of a dimension line; a short one has its extension lines there, which
 * the label stands clear of. */
static bool add_label(struct iso_plan *p, pt mid, pt out, double length, str text)
{
	struct dim_label l;
	double off = LABEL_PT;
	pt at;

	if (!dim_label_set(&l, p->faces, p->size_pt, text, p->lines))
		return false;
	if (length < 2 * l.h)
		off += OVER_PT;
	at = pt_add(mid, pt_mul(out, off + fabs(out.x) * l.w / 2 + fabs(out.y) * l.h / 2));
	p->label[p->nlabels].text = l;
	p->label[p->nlabels++].r = (rect){ at.x - l.w / 2, at.y - l.h / 2, l.w, l.h };
	return true;
}

static void add_arrows(struct iso_plan *p, pt a, pt b, pt u)
{
	thin(p, a, b);
	if (pt_length(pt_sub(b, a)) >= INSIDE_PT) {
		arrow(p, a, pt_mul(u, -1));
		arrow(p, b, u);
		return;
	}
	arrow(p, a, u);
	arrow(p, b, pt_mul(u, -1));
	thin(p, a, pt_sub(a, pt_mul(u, STEM_PT)));
	thin(p, b, pt_add(b, pt_mul(u, STEM_PT)));
}

static bool add_measure(struct iso_plan *p, const struct iso_way *m)
{
	double lo[3] = { m->lo[0], m->lo[1], m->lo[2] };
	double hi[3] = { m->hi[0], m->hi[1], m->hi[2] };
	double base[3] = { m->base[0], m->base[1], m->base[2] };
	pt a = extension(p, m, lo), b = extension(p, m, hi);
	pt u = pt_unit(pt_sub(b, a)), out = { -u.y, u.x }, off = project(p, base);

	add_arrows(p, a, b, u);
	base[m->off] += m->way;
	off = pt_sub(project(p, base), off);
	if (out.x * off.x + out.y * off.y < 0)
		out = pt_mul(out, -1);
	return add_label(p, pt_between(a, b, 0.5), out, pt_length(pt_sub(b, a)),
	    p->scene->f->label[m->axis]);
}

/* ---- which way ---- */

#define CROSSED_COST 40.0

static double side(pt a, pt b, pt p)
{
	return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

static bool cross(pt a, pt b, pt c, pt d)
{
	return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/* Long extension lines, and any line or label over the drawing, cost. */
static double cost_of(struct iso_plan *p, const struct iso_way *m)
{
	const struct iso_scene *s = p->scene;
	double cost = 0;

	p->nthin = p->narrows = p->nlabels = 0;
	if (!add_measure(p, m))
		return INFINITY;
	for (size_t i = 0; i < p->nthin; i++) {
		cost += 0.3 * pt_length(pt_sub(p->thin[i].b, p->thin[i].a));
		for (size_t k = 0; k < s->nlines; k++)
			cost += cross(p->thin[i].a, p->thin[i].b,
			    pt_mul(s->line[k].a, p->pt_mm), pt_mul(s->line[k].b, p->pt_mm))
			    ? CROSSED_COST : 0;
	}
	for (size_t k = 0; k < s->nlines; k++)
		cost += rect_crossed(p->label[0].r, pt_mul(s->line[k].a, p->pt_mm),
		    pt_mul(s->line[k].b, p->pt_mm)) ? 10 * CROSSED_COST : 0;
	return cost;
}

/* The ways of each axis with the cheapest first. */
static void rank_ways(struct iso_plan *p, struct iso_way m[3][ISO_WAYS])
{
	for (int i = 0; i < 3; i++)
		for (int k = 0; k < ISO_WAYS; k++) {
			struct iso_way one = p->scene->way[i][k];
			int at = k;

			one.cost = cost_of(p, &one) + k;
			for (; at > 0 && m[i][at - 1].cost > one.cost; at--)
				m[i][at] = m[i][at - 1];
			m[i][at] = one;
		}
}

static bool labels_apart(const struct iso_plan *p)
{
	for (size_t i = 0; i < p->nlabels; i++) {
		rect r = rect_inset(p->label[i].r, -1);

		for (size_t k = 0; k < i; k++)
			if (!rect_apart(r, p->label[k].r))
				return false;
		for (size_t k = 0; k < p->nthin; k++)
			if (rect_crossed(p->label[i].r, p->thin[k].a, p->thin[k].b))
				return false;
	}
	return true;
}

/* The three dimensions, each as cheap as the others allow. */
static bool add_measures(struct iso_plan *p)
{
	struct iso_way m[3][ISO_WAYS];

	rank_ways(p, m);
	for (int i = 0; i < ISO_WAYS * ISO_WAYS * ISO_WAYS; i++) {
		const int pick[3] = { i % ISO_WAYS, i / ISO_WAYS % ISO_WAYS,
			i / ISO_WAYS / ISO_WAYS };
		bool fits = true;

		p->nthin = p->narrows = p->nlabels = 0;
		for (int k = 0; k < 3 && fits; k++)
			fits = !p->scene->f->label[k].n || add_measure(p, &m[k][pick[k]]);
		if (fits && labels_apart(p))
			return true;
	}
	return false;
}

static rect bounds_of(const struct iso_plan *p)
{
	const struct iso_scene *s = p->scene;
	rect all = rect_at(pt_mul(s->hull[0], p->pt_mm));

	for (size_t i = 1; i < s->nhull; i++)
		all = rect_grow(all, pt_mul(s->hull[i], p->pt_mm));
	for (size_t i = 0; i < p->nthin; i++)
		all = rect_grow(rect_grow(all, p->thin[i].a), p->thin[i].b);
	for (size_t i = 0; i < p->nlabels; i++)
		all = rect_join(all, p->label[i].r);
	return all;
}

static void move_all(struct iso_plan *p, pt by)
{
	for (size_t i = 0; i < p->nthin; i++) {
		p->thin[i].a = pt_add(p->thin[i].a, by);
		p->thin[i].b = pt_add(p->thin[i].b, by);
	}
	for (size_t i = 0; i < p->narrows; i++)
		p->arrow[i].tip = pt_add(p->arrow[i].tip, by);
	for (size_t i = 0; i < p->nlabels; i++) {
		p->label[i].r.x += by.x;
		p->label[i].r.y += by.y;
	}
	p->shift = by;
}

bool iso_plan_place(struct iso_plan *p)
{
	rect all;

	p->nthin = p->narrows = p->nlabels = 0;
	p->shift = (pt){ 0, 0 };
	if (p->scene->nhull < 2)
		return false;
	/* Most scales are far too large: that is seen before anything is laid. */
	all = bounds_of(p);
	if (all.w > p->area.w || all.h > p->area.h || !add_measures(p))
		return false;
	all = rect_inset(bounds_of(p), -1);
	if (all.w > p->area.w || all.h > p->area.h)
		return false;
	move_all(p, (pt){ p->area.x + (p->area.w - all.w) / 2 - all.x,
	    p->area.y + (p->area.h - all.h) / 2 - all.y });
	return iso_place_balloons(p);
}
