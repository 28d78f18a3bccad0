#include "check/repair.h"

#include "check/tell.h"

#include <assert.h>
#include <stdlib.h>

/* Spots and teachers tried for one finding; real programs stay far below. */
enum { SPOTS_MOST = 4096, TEACHERS_MOST = 64 };

/* Between what a line may move in one order without breaking anything. */
struct bound {
	uint32_t after;          /* assignment that must stay before it; NONE */
	uint32_t before;         /* assignment that must stay behind it; NONE */
	bool barred;             /* it would find one of its needs taught nowhere */
};

struct repairs {
	struct arena *arena;
	const struct verdict *verdict;
	const struct knots *knots;
	const struct graph *graph;
	struct bound **bounds;   /* by unit of views[0]: one a view; made when asked */
	uint32_t *teacher_at;    /* by skill, one more than there are */
	uint32_t *teachers;      /* assignments, in id order within a skill */
	uint64_t weeks, spots;   /* in a quarter; in the program */
	bool tied;               /* a loop forbade a move of the present finding */
};

/* A line that may move, and what a cure asks of its new place in each order. */
struct mover {
	uint32_t unit;           /* of views[0] */
	struct bound *bound;     /* by view */
	struct bound *cure;      /* by view: after and before only */
	uint32_t paths;          /* the orders that must be cured */
};

struct move {
	uint32_t unit;           /* NONE: no move */
	uint64_t spot, end, distance; /* end: the farthest spot that serves as well */
	bool late;               /* only the end of the week serves */
	bool later;              /* towards the end of the program */
};

static void index_teachers(struct repairs *r)
{
	const struct graph *g = r->graph;
	size_t nskills = g->model->nskills;
	uint32_t n = g->teach_at[g->nassignments];
	uint32_t *at = arena_array(r->arena, nskills + 2, sizeof *at);

	for (uint32_t i = 0; i < n; i++)
		at[cell_skill(g->teach[i]) + 2]++;
	for (size_t s = 0; s < nskills; s++)
		at[s + 2] += at[s + 1];
	r->teachers = arena_array(r->arena, n, sizeof *r->teachers);
	for (uint32_t w = 0; w < g->nassignments; w++)
		for (uint32_t i = g->teach_at[w]; i < g->teach_at[w + 1]; i++)
			r->teachers[at[cell_skill(g->teach[i]) + 1]++] = w;
	r->teacher_at = at;
}

struct repairs *repairs_new(struct arena *a, const struct verdict *d,
    const struct knots *ks)
{
	struct repairs *r = arena_alloc(a, sizeof *r);
	const struct graph *g = d->views[0]->graph;

	assert(g->needer_at);
	r->arena = a;
	r->verdict = d;
	r->knots = ks;
	r->graph = g;
	r->bounds = arena_array(a, d->views[0]->units->n, sizeof *r->bounds);
	r->weeks = g->model->weeks;
	r->spots = r->weeks * g->model->nquarters;
	for (size_t k = 0; k < d->nviews; k++)
		view_detail(a, d->views[k]);
	index_teachers(r);
	return r;
}

static const uint32_t *members(const struct repairs *r, uint32_t unit, uint32_t *n)
{
	const struct view *v = r->verdict->views[0];

	*n = v->units->at[unit + 1] - v->units->at[unit];
	return &v->order->walk[v->units->at[unit]];
}

static const struct place *place_of(const struct view *v, uint32_t assignment)
{
	return &v->order->places[assignment];
}

static uint32_t leader(const struct view *v, uint32_t unit)
{
	return v->order->walk[v->units->at[unit]];
}

/* The later, or with earlier set the earlier, of two assignments; NONE loses. */
static uint32_t outer(const struct view *v, uint32_t a, uint32_t b, bool earlier)
{
	if (a == NONE || b == NONE)
		return a == NONE ? b : a;
	return (v->units->of[a] < v->units->of[b]) == earlier ? a : b;
}

/* What assignment w itself needs: it must stay behind whoever keeps each need that
 * is no error now from being one. */
static void bound_by_needs(const struct view *v, uint32_t w, struct bound *b)
{
	const struct graph *g = v->graph;
	uint32_t unit = v->units->of[w];

	for (uint32_t n = g->need_at[w]; n < g->need_at[w + 1]; n++) {
		uint32_t ease;

		if (!graph_judged(g, n) || view_brings(v, n))
			continue;
		ease = view_easing(v, n, unit);
		if (ease == NONE && unit == NONE)
			b->barred = true;
		else if (ease != NONE && (unit == NONE || ease < unit))
			b->after = outer(v, b->after, leader(v, ease), false);
	}
}

/* Those who need a cell that `unit` teaches and have no one else before them. */
static void bound_by_needers(const struct view *v, uint32_t cell, uint32_t unit,
    struct bound *b)
{
	const struct graph *g = v->graph;

	for (uint32_t i = g->needer_at[cell]; i < g->needer_at[cell + 1]; i++) {
		uint32_t need = g->needers[i], who = v->units->of[g->owner[need]];

		if (who == NONE || who <= unit || !graph_judged(g, need) ||
		    view_brings(v, need) || view_easing(v, need, unit) < who)
			continue;
		b->before = outer(v, b->before, g->owner[need], true);
	}
}

static void bound_by_teaching(const struct view *v, uint32_t w, struct bound *b)
{
	const struct graph *g = v->graph;
	uint32_t unit = v->units->of[w];

	if (unit == NONE)
		return;
	for (uint32_t t = g->teach_at[w]; t < g->teach_at[w + 1]; t++) {
		uint32_t top = g->teach[t] & ~CELL_MISSPELT;

		for (uint32_t c = cell_base(top); c <= top; c++)
			bound_by_needers(v, c, unit, b);
	}
}

static struct bound *bounds_of(struct repairs *r, uint32_t unit)
{
	const struct verdict *d = r->verdict;
	uint32_t n;
	const uint32_t *w = members(r, unit, &n);

	if (r->bounds[unit])
		return r->bounds[unit];
	r->bounds[unit] = arena_array(r->arena, d->nviews, sizeof *r->bounds[unit]);
	for (size_t k = 0; k < d->nviews; k++) {
		struct bound *b = &r->bounds[unit][k];

		b->after = b->before = NONE;
		for (uint32_t i = 0; i < n; i++) {
			bound_by_needs(d->views[k], w[i], b);
			bound_by_teaching(d->views[k], w[i], b);
		}
	}
	return r->bounds[unit];
}

static bool within(const struct view *v, const struct bound *b, const struct place *p)
{
	return (b->after == NONE || place_cmp(place_of(v, b->after), p) < 0) &&
	    (b->before == NONE || place_cmp(p, place_of(v, b->before)) < 0);
}

/* Whether a cell's first teachers, which shape the loops, stay the same when w goes
 * to p. Two are known, so a move past an unknown third is refused. */
static bool firsts_hold(const struct knots *ks, uint32_t cell, uint32_t w,
    const struct place *p)
{
	const uint32_t *two = ks->first[cell];
	bool later = place_cmp(place_of(ks->view, w), p) < 0;
	bool first = two[0] != NONE && ks->unit[two[0]] == ks->unit[w];
	bool second = two[1] != NONE && ks->unit[two[1]] == ks->unit[w];
	const struct place *next;

	if (later) {
		next = two[1] == NONE ? NULL : place_of(ks->view, two[1]);
		return first ? !next || next->slot == NONE || place_cmp(p, next) < 0 : !second;
	}
	if (first || two[0] == NONE)
		return true;
	next = place_of(ks->view, second || two[1] == NONE ? two[0] : two[1]);
	return place_cmp(next, p) < 0;
}

/* Whether the loops stay as they are when the unit goes to p. */
static bool loops_hold(struct repairs *r, uint32_t unit, const struct place *p)
{
	const struct knots *ks = r->knots;
	const struct graph *g = r->graph;
	uint32_t n;
	const uint32_t *w = members(r, unit, &n);

	for (uint32_t i = 0; ks && i < n; i++) {
		for (uint32_t t = g->teach_at[w[i]]; ks->left[w[i]] &&
		    t < g->teach_at[w[i] + 1]; t++) {
			uint32_t c = cell_base(g->teach[t]);

			for (; !(g->teach[t] & CELL_MISSPELT) && c <= g->teach[t]; c++)
				if (ks->live[c] && !firsts_hold(ks, c, w[i], p))
					return false;
		}
	}
	return true;
}

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
	add_around(r, s, d->views[0], leader(d->views[0], m->unit));
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

/* The nearest spot that serves; of two equally near ones the later. */
static struct move least_move(struct repairs *r, const struct mover *m, struct spots *s)
{
	const struct view *v = r->verdict->views[0];
	uint64_t now = spot_of(r, place_of(v, leader(v, m->unit)));
	struct move best = { .unit = NONE };
	size_t at = 0;

	collect_spots(r, m, s);
	for (size_t i = 0; i < s->n; i++) {
		uint64_t far = s->v[i] > now ? s->v[i] - now : now - s->v[i];

		if ((best.unit != NONE && far > best.distance) ||
		    !serves(r, m, s->v[i], UINT32_MAX))
			continue;
		best = (struct move){ m->unit, s->v[i], 0, far, false, s->v[i] >= now };
		at = i;
	}
	if (best.unit == NONE)
		return best;
	best.late = !serves(r, m, best.spot, 0);
	stretch(r, m, s, at, &best);
	return best;
}

static struct mover mover_new(struct repairs *r, uint32_t unit, uint32_t paths)
{
	size_t n = r->verdict->nviews;
	struct mover m = { unit, bounds_of(r, unit),
	    arena_array(r->arena, n, sizeof *m.cure), paths };

	for (size_t k = 0; k < n; k++)
		m.cure[k].after = m.cure[k].before = NONE;
	return m;
}

/* The asking line itself, when no other line asks: it must go behind whoever meets
 * each of its needs. False when nobody does. */
static bool asker_mover(struct repairs *r, const struct merged *g, struct mover *m)
{
	const struct verdict *d = r->verdict;
	uint32_t paths = d->faults.v[g->first].paths;
	uint32_t unit = d->views[0]->units->of[d->faults.v[g->first].assignment];

	for (uint32_t i = g->first; i != NONE; i = d->next[i])
		if (d->views[0]->units->of[d->faults.v[i].assignment] != unit)
			return false;
	*m = mover_new(r, unit, paths);
	for (uint32_t set = paths; set; set = d->sets[set].without) {
		const struct view *v = d->views[d->sets[set].view];
		struct bound *cure = &m->cure[d->sets[set].view];

		for (uint32_t i = g->first; i != NONE; i = d->next[i]) {
			uint32_t asker = v->units->of[d->faults.v[i].assignment];
			uint32_t who = view_meeting(v, d->faults.v[i].need, asker,
			    v->units->optional[asker]);

			if (who == NONE)
				return false;
			cure->after = outer(v, cure->after, leader(v, who), false);
		}
	}
	return true;
}

/* A later teacher, when it meets every need of the finding: it must go before all
 * who ask. */
static bool teacher_mover(struct repairs *r, const struct merged *g, uint32_t unit,
    struct mover *m)
{
	const struct verdict *d = r->verdict;
	const struct units *us = d->views[0]->units;
	uint32_t paths = d->faults.v[g->first].paths;

	for (uint32_t i = g->first; i != NONE; i = d->next[i]) {
		uint32_t asker = us->of[d->faults.v[i].assignment];

		if (asker == unit || (us->optional[unit] && !us->optional[asker]) ||
		    !unit_meets(us, r->graph, unit, d->faults.v[i].need))
			return false;
	}
	*m = mover_new(r, unit, paths);
	for (uint32_t set = paths; set; set = d->sets[set].without) {
		const struct view *v = d->views[d->sets[set].view];
		struct bound *cure = &m->cure[d->sets[set].view];

		for (uint32_t i = g->first; i != NONE; i = d->next[i])
			cure->before = outer(v, cure->before, d->faults.v[i].assignment, true);
	}
	return true;
}

/* Fewest weeks; ties: the later line, which two lines never share. */
static bool is_better(const struct move *a, const struct move *b)
{
	if (a->unit == NONE || b->unit == NONE)
		return b->unit == NONE && a->unit != NONE;
	if (a->distance != b->distance)
		return a->distance < b->distance;
	return a->unit > b->unit;
}

static struct move best_teacher_move(struct repairs *r, const struct merged *g,
    struct spots *s)
{
	const struct graph *gr = r->graph;
	const struct fault *f = &r->verdict->faults.v[g->first];
	struct move best = { .unit = NONE };
	size_t tried = 0;

	for (uint32_t a = gr->alt_at[f->need]; a < gr->alt_at[f->need + 1]; a++) {
		uint32_t skill = gr->alts[a] < gr->ncells ? cell_skill(gr->alts[a]) : NONE;
		uint32_t from = skill == NONE ? 0 : r->teacher_at[skill];
		uint32_t end = skill == NONE ? 0 : r->teacher_at[skill + 1];

		for (uint32_t i = from; i < end && tried < TEACHERS_MOST; i++) {
			uint32_t unit = r->verdict->views[0]->units->of[r->teachers[i]];
			struct mover m;
			struct move move;

			if (unit == NONE || !teacher_mover(r, g, unit, &m))
				continue;
			tried++;
			move = least_move(r, &m, s);
			if (is_better(&move, &best))
				best = move;
		}
	}
	return best;
}

static void say_spot(struct buf *b, const struct repairs *r, uint64_t spot)
{
	buf_addf(b, "quarter %u, week %u", (uint32_t)(spot / r->weeks) + 1,
	    (uint32_t)(spot % r->weeks) + 1);
}

static str unit_id(const struct repairs *r, uint32_t unit)
{
	return r->graph->model->assignments[leader(r->verdict->views[0], unit)].id;
}

/* "move FB-04 to the end of quarter 3, week 1, or later" */
static void say_move(struct buf *b, const struct repairs *r, const struct move *m)
{
	uint64_t edge = m->later ? r->spots - 1 : 0;

	buf_addf(b, "move %.*s to %s", STR_ARG(unit_id(r, m->unit)),
	    m->late ? "the end of " : "");
	say_spot(b, r, m->spot);
	if (m->end == m->spot)
		return;
	if (m->end == edge) {
		buf_addf(b, " or %s", m->later ? "later" : "earlier");
		return;
	}
	buf_addf(b, " (or as far as ");
	say_spot(b, r, m->end);
	buf_addc(b, ')');
}

static void say_fact(struct buf *b, const struct repairs *r, const struct view *v,
    uint32_t mover, const char *side, uint32_t other, const char *why)
{
	const struct model *m = r->graph->model;

	buf_addf(b, "; %.*s must stay %s %.*s (", STR_ARG(m->assignments[mover].id), side,
	    STR_ARG(m->assignments[other].id));
	tell_place(b, v->order, other);
	buf_addf(b, "), %s", why);
}

/* Why neither the first asker nor the first teacher can go. */
static void say_no_move(struct buf *b, struct repairs *r, const struct merged *g)
{
	const struct verdict *d = r->verdict;
	const struct fault *f = &d->faults.v[g->first];
	const struct view *v = d->views[f->view];
	uint32_t asker = d->views[0]->units->of[f->assignment];
	uint32_t teacher = d->views[0]->units->of[f->teacher];
	const struct bound *own = &bounds_of(r, asker)[f->view];

	buf_adds(b, "no single move repairs this");
	if (own->before != NONE)
		say_fact(b, r, v, f->assignment, "before", own->before,
		    "which needs what it teaches");
	if (d->views[0]->units->optional[teacher])
		buf_addf(b, "; %.*s is optional work", STR_ARG(unit_id(r, teacher)));
	else if (bounds_of(r, teacher)[f->view].after != NONE)
		say_fact(b, r, v, f->teacher, "after", bounds_of(r, teacher)[f->view].after,
		    "whose teaching it needs");
	if (r->tied)
		buf_adds(b, "; a move that would help also turns the circle that is reported, "
		    "so undo that first");
}

str repair_words(struct repairs *r, const struct merged *g, struct arena *out)
{
	struct buf b = { .arena = out };
	struct spots *s = arena_alloc(r->arena, sizeof *s);
	struct move asker = { .unit = NONE }, teacher = { .unit = NONE };
	struct mover m;

	r->tied = false;
	if (!r->spots)
		return (str){ 0 };
	if (asker_mover(r, g, &m))
		asker = least_move(r, &m, s);
	teacher = best_teacher_move(r, g, s);
	if (asker.unit == NONE && teacher.unit == NONE) {
		say_no_move(&b, r, g);
		return buf_str(&b);
	}
	if (is_better(&teacher, &asker)) {
		struct move swap = asker;

		asker = teacher;
		teacher = swap;
	}
	say_move(&b, r, &asker);
	if (teacher.unit != NONE) {
		buf_adds(&b, "; or ");
		say_move(&b, r, &teacher);
	}
	return buf_str(&b);
}
