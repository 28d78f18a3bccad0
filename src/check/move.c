#include "check/move.h"

#include <stdlib.h>

/* Weeks tried for one line; real programs stay far below. */
enum { SPOTS_MOST = 4096 };

static const struct place *place_of(const struct view *v, uint32_t assignment)
{
	return &v->order->places[assignment];
}

/* Bounds are strict: two lines never share a place. */
static bool within(const struct view *v, const struct bound *b, const struct place *p)
{
	return (b->after == NONE || place_cmp(place_of(v, b->after), p) < 0) &&
	    (b->before == NONE || place_cmp(p, place_of(v, b->before)) < 0);
}

/* The place on the given line of a week; its turn is 0 off the path of v. */
static struct place spot_place(const struct repairs *r, const struct view *v,
    uint64_t spot, uint32_t line)
{
	uint32_t quarter = (uint32_t)(spot / r->weeks) + 1;

	return (struct place){ order_turn(v->order, quarter), quarter,
	    (uint32_t)(spot % r->weeks) + 1, line, 0 };
}

static bool in_set(const struct verdict *d, uint32_t set, uint32_t view)
{
	for (; set; set = d->sets[set].without)
		if (d->sets[set].view == view)
			return true;
	return false;
}

/* Whether the mover, put on this line of this week, cures and breaks nothing. */
static bool serves(struct repairs *r, const struct mover *m, uint64_t spot, uint32_t line)
{
	const struct verdict *d = r->verdict;

	for (uint32_t k = 0; k < d->nviews; k++) {
		const struct view *v = d->views[k];
		struct place p = spot_place(r, v, spot, line);

		if (!p.rank_quarter) {
			if (m->bound[k].before != NONE || in_set(d, m->paths, k))
				return false;
			continue;
		}
		if (m->bound[k].barred || !within(v, &m->bound[k], &p) ||
		    !within(v, &m->cure[k], &p))
			return false;
		if (!k && !loops_hold(r, m->unit, &p)) {
			r->tied = true;
			return false;
		}
	}
	return true;
}

bool move_serves(struct repairs *r, const struct mover *m, uint64_t spot)
{
	return serves(r, m, spot, UINT32_MAX);
}

/* The spot of a place, a week past the last one counted as the last. */
static uint64_t spot_of(const struct repairs *r, const struct place *p)
{
	uint64_t week = p->week < 1 ? 1 : p->week > r->weeks ? r->weeks : p->week;

	return (p->quarter - 1) * r->weeks + week - 1;
}

struct spots {
	uint64_t v[SPOTS_MOST];
	size_t n;
};

static void add_spot(const struct repairs *r, struct spots *s, uint64_t spot)
{
	if (spot < r->spots && s->n < SPOTS_MOST)
		s->v[s->n++] = spot;
}

/* A bound tells at its own week, at the one before and at the one after. */
static void add_around(const struct repairs *r, struct spots *s, const struct view *v,
    uint32_t w)
{
	uint64_t spot;

	if (w == NONE || place_of(v, w)->slot == NONE)
		return;
	spot = spot_of(r, place_of(v, w));
	add_spot(r, s, spot);
	add_spot(r, s, spot + 1);
	add_spot(r, s, spot - 1);
}

static int compare_spots(const void *a, const void *b)
{
	uint64_t x, y;

	x = *(const uint64_t *)a;
	y = *(const uint64_t *)b;
	return (x > y) - (x < y);
}

/* The weeks where serving may begin or end: those of the bounds, and the ends of the
 * quarters, where a path may jump. Between two neighbors nothing changes. */
static void collect_spots(const struct repairs *r, const struct mover *m, struct spots *s)
{
	const struct verdict *d = r->verdict;

	s->n = 0;
	add_around(r, s, d->views[0], unit_leader(d->views[0], m->unit));
	add_spot(r, s, 0);
	add_spot(r, s, r->spots - 1);
	for (size_t k = 0; k < d->nviews; k++) {
		add_around(r, s, d->views[k], m->bound[k].after);
		add_around(r, s, d->views[k], m->bound[k].before);
		add_around(r, s, d->views[k], m->cure[k].after);
		add_around(r, s, d->views[k], m->cure[k].before);
	}
	for (uint64_t q = 0; d->nviews > 1 && q < r->graph->model->nquarters; q++) {
		add_spot(r, s, q * r->weeks);
		add_spot(r, s, (q + 1) * r->weeks - 1);
	}
	qsort(s->v, s->n, sizeof *s->v, compare_spots);
}

/* Stretches the move away from where the line stands now, as far as every spot serves. */
static void stretch(struct repairs *r, const struct mover *m, const struct spots *s,
    size_t at, struct move *best)
{
	size_t i = at;

	best->end = best->spot;
	while (best->later ? ++i < s->n : i-- > 0) {
		if (!serves(r, m, s->v[i], UINT32_MAX))
			return;
		best->end = s->v[i];
	}
}

struct move move_least(struct repairs *r, const struct mover *m)
{
	const struct view *v = r->verdict->views[0];
	uint64_t now = spot_of(r, place_of(v, unit_leader(v, m->unit)));
	struct move best = { .unit = NONE };
	struct spots *s = arena_alloc(r->arena, sizeof *s);
	size_t at = 0;

	collect_spots(r, m, s);
	for (size_t i = 0; i < s->n; i++) {
		uint64_t far = s->v[i] > now ? s->v[i] - now : now - s->v[i];

		if ((best.unit != NONE && far > best.distance) ||
		    !serves(r, m, s->v[i], UINT32_MAX))
			continue;
		best = (struct move){ m->unit, s->v[i], 0, far, false, s->v[i] >= now, NULL };
		at = i;
	}
	if (best.unit == NONE)
		return best;
	best.late = !serves(r, m, best.spot, 0);
	stretch(r, m, s, at, &best);
	return best;
}
