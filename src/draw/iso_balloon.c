/* Balloons: each in the free paper around the weldment, at the end of a short leader that
 * crosses neither text nor another leader. */
#include "draw/iso_plan.h"

#include "draw/geom.h"

#include <math.h>

#define STEP_PT 8.0              /* of the places tried */
#define CLEAR_PT 3.0             /* between a balloon and anything else */
#define NEAR_COST_PT 90.0        /* a dot half a point from a line, twice that on it */
#define EDGE_COST_PT 7.0         /* a leader over an edge of the weldment */
#define CROSSING_COST_PT 60.0    /* a leader over a dimension line */
#define SLACK_PT 1e-6            /* far over what rounding takes from a length */

struct search {
	struct iso_plan *p;
	size_t part;             /* balloons before it lie */
	/* Of its spots: on paper, and what a dot there costs. */
	pt tip[ISO_ANCHORS];
	double near_cost[ISO_ANCHORS];
};

/* Whether p is nearer than r to the stretch from a to b. */
static bool is_near(pt p, pt a, pt b, double r)
{
	pt d = pt_sub(b, a), w = pt_sub(p, a), off;
	double n = d.x * d.x + d.y * d.y;
	double t = n > 0 ? (w.x * d.x + w.y * d.y) / n : 0;

	t = t < 0 ? 0 : t > 1 ? 1 : t;
	off = pt_sub(w, pt_mul(d, t));
	return off.x * off.x + off.y * off.y < r * r;
}

static double side(pt a, pt b, pt p)
{
	return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

static bool cross(pt a, pt b, pt c, pt d)
{
	return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/* The hull runs one way round; outside it some side has the point at its other hand. */
static bool off_hull(const struct iso_plan *p, pt at)
{
	const struct iso_scene *s = p->scene;
	bool outside = false;

	for (size_t i = 0; i < s->nhull; i++) {
		pt a = p->hull[i], b = p->hull[(i + 1) % s->nhull];

		outside |= side(a, b, at) < 0;
		if (is_near(at, a, b, ISO_BALLOON_PT + CLEAR_PT))
			return false;
	}
	return outside;
}

/* Whether the paper there is free of the weldment and its dimensions. */
static bool is_blank(const struct iso_plan *p, pt at)
{
	double r = ISO_BALLOON_PT + CLEAR_PT;
	rect box = { at.x - r, at.y - r, 2 * r, 2 * r };

	if (!rect_holds(p->area, rect_inset(box, CLEAR_PT - 0.5)))
		return false;
	for (size_t i = 0; i < p->nlabels; i++)
		if (!rect_apart(box, p->label[i].r))
			return false;
	for (size_t i = 0; i < p->nthin; i++)
		if (is_near(at, p->thin[i].a, p->thin[i].b, r))
			return false;
	return off_hull(p, at);
}

static void place_scene(struct iso_plan *p)
{
	const struct iso_scene *s = p->scene;

	p->hull = arena_array(s->f->arena, s->nhull, sizeof *p->hull);
	p->line = arena_array(s->f->arena, 2 * s->nlines, sizeof *p->line);
	for (size_t i = 0; i < s->nhull; i++)
		p->hull[i] = iso_point(p, s->hull[i]);
	for (size_t i = 0; i < s->nlines; i++) {
		p->line[2 * i] = iso_point(p, s->line[i].a);
		p->line[2 * i + 1] = iso_point(p, s->line[i].b);
	}
}

static void find_spots(struct iso_plan *p)
{
	size_t wide = (size_t)(p->area.w / STEP_PT) + 1;
	size_t high = (size_t)(p->area.h / STEP_PT) + 1;

	p->nspots = 0;
	p->spot = arena_array(p->scene->f->arena, wide * high, sizeof *p->spot);
	for (size_t i = 0; i < wide * high; i++) {
		pt at = { p->area.x + STEP_PT * (double)(i % wide),
			p->area.y + STEP_PT * (double)(i / wide) };

		if (is_blank(p, at))
			p->spot[p->nspots++] = at;
	}
}

/* Whether no balloon or leader is near. */
static bool is_free(const struct search *k, pt at)
{
	double r = ISO_BALLOON_PT + CLEAR_PT;

	for (size_t i = 0; i < k->part; i++) {
		const struct iso_balloon *b = &k->p->balloon[i];

		if (b->shown && (is_near(at, b->at, b->at, r + ISO_BALLOON_PT) ||
		    is_near(at, b->edge, b->tip, r)))
			return false;
	}
	return true;
}

/* What a leader meets, INFINITY when it may not lie so. */
static double leader_cost(const struct search *k, pt edge, pt tip)
{
	const struct iso_plan *p = k->p;
	double cost = 0;

	for (size_t i = 0; i < p->nlabels; i++)
		if (rect_crossed(rect_inset(p->label[i].r, -1.5), edge, tip))
			return INFINITY;
	for (size_t i = 0; i < k->part; i++) {
		const struct iso_balloon *b = &p->balloon[i];

		if (b->shown && (is_near(b->at, edge, tip, ISO_BALLOON_PT + CLEAR_PT) ||
		    cross(edge, tip, b->edge, b->tip)))
			return INFINITY;
	}
	for (size_t i = 0; i < p->nthin; i++)
		cost += cross(edge, tip, p->thin[i].a, p->thin[i].b) ? CROSSING_COST_PT : 0;
	return cost;
}

/* Every edge that a leader passes over. */
static double edges_cost(const struct iso_plan *p, pt edge, pt tip)
{
	const struct iso_scene *s = p->scene;
	double cost = 0;

	for (size_t i = 0; i < s->nlines; i++)
		cost += cross(edge, tip, p->line[2 * i], p->line[2 * i + 1]) ? EDGE_COST_PT : 0;
	return cost;
}

/* The best leader to a spot of the part from a balloon at `at`. A spot near a line is
 * worth less: the dot would lie on it. Returns what it costs, or `best` when none costs
 * less. */
static double best_tip(const struct search *k, pt at, double best, struct iso_balloon *out)
{
	const struct iso_anchors *v = &k->p->scene->anchors[k->part];

	for (size_t i = 0; i < v->n; i++) {
		pt tip = k->tip[i], way = pt_sub(tip, at), edge;
		double longest = best - k->near_cost[i] + ISO_BALLOON_PT + SLACK_PT, cost;

		/* The cheap parts first: most leaders are too long already. */
		if (longest < 0 || way.x * way.x + way.y * way.y > longest * longest)
			continue;
		edge = pt_add(at, pt_mul(pt_unit(way), ISO_BALLOON_PT));
		cost = pt_length(pt_sub(tip, edge)) + k->near_cost[i];
		if (cost >= best || (cost += leader_cost(k, edge, tip)) >= best ||
		    (cost += edges_cost(k->p, edge, tip)) >= best)
			continue;
		best = cost;
		*out = (struct iso_balloon){ true, at, edge, tip };
	}
	return best;
}

static bool place_one(struct search *k)
{
	struct iso_plan *p = k->p;
	struct iso_balloon *b = &p->balloon[k->part];
	const struct iso_anchors *v = &p->scene->anchors[k->part];
	double best = INFINITY;

	*b = (struct iso_balloon){ .shown = false };
	if (v->n == 0)
		return true;
	for (size_t i = 0; i < v->n; i++) {
		k->tip[i] = iso_point(p, v->v[i]);
		k->near_cost[i] = NEAR_COST_PT / (0.5 + v->clear[i] * p->pt_mm);
	}
	for (size_t i = 0; i < p->nspots; i++)
		if (is_free(k, p->spot[i]))
			best = best_tip(k, p->spot[i], best, b);
	return best < INFINITY;
}

bool iso_place_balloons(struct iso_plan *p)
{
	struct search k = { .p = p };

	place_scene(p);
	find_spots(p);
	for (; k.part < p->scene->f->nparts && k.part < FIG_ISO_PARTS; k.part++)
		if (!place_one(&k))
			return false;
	return true;
}
