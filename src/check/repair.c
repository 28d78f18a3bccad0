#include "check/repair.h"

#include "check/move.h"
#include "check/tell.h"
#include "check/trial.h"

#include <assert.h>

/* Teachers tried for one finding, and needs times lines of Teaches looked at for one of
 * them; real programs stay far below. */
enum { TEACHERS_MOST = 64, LOOKED_AT_MOST = 200000 };

/* Teachers by skill, laid out like the needers of the graph. */
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
	r->knots = ks && ks->n ? ks : NULL;
	r->graph = g;
	r->bounds = arena_array(a, d->views[0]->units->n, sizeof *r->bounds);
	r->weeks = g->model->weeks;
	r->spots = r->weeks * g->model->nquarters;
	for (size_t k = 0; k < d->nviews; k++)
		view_detail(a, d->views[k]);
	index_teachers(r);
	r->trial = trial_new(a, d->views, d->nviews);
	if (r->knots)
		loops_mark(r);
	return r;
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
			cure->after = outer_of(v, cure->after, unit_leader(v, who),
			    false);
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
	uint32_t paths = d->faults.v[g->first].paths, leader = unit_leader(d->views[0], unit);
	uint32_t lines = r->graph->teach_at[leader + 1] - r->graph->teach_at[leader];

	if ((uint64_t)g->n * lines > LOOKED_AT_MOST)
		return false;
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
			cure->before = outer_of(v, cure->before,
			    d->faults.v[i].assignment, true);
	}
	return true;
}

/* Weeks past the least that are tried for one where the order rules find nothing new. */
enum { FURTHER_MOST = 4 };

/* Puts the move off to the next week that serves as well and brings no finding of an
 * order rule; when none of the first does, the least stands and says what it brings. */
static void avoid_new(struct repairs *r, const struct mover *m, struct move *v)
{
	uint32_t who;

	if (v->unit == NONE)
		return;
	who = unit_leader(r->verdict->views[0], v->unit);
	for (uint64_t k = 0; k <= FURTHER_MOST; k++) {
		uint64_t spot = v->later ? v->spot + k : v->spot - k;
		const char *brings;

		if (k && (v->later ? spot > v->end : v->spot < v->end + k))
			return;
		if (k && !move_serves(r, m, spot))
			return;
		brings = trial_brings(r->trial, who, (uint32_t)(spot / r->weeks) + 1,
		    (uint32_t)(spot % r->weeks) + 1);
		if (!k)
			v->brings = brings;
		if (!brings && !k)
			return;
		if (!brings) {
			v->brings = NULL;
			v->distance += k;
			v->spot = spot;
			v->late = true;
			return;
		}
	}
}

/* One that brings nothing new; then fewest weeks; ties: the later line, which two lines
 * never share. */
static bool is_better(const struct move *a, const struct move *b)
{
	if (a->unit == NONE || b->unit == NONE)
		return b->unit == NONE && a->unit != NONE;
	if (!a->brings != !b->brings)
		return !a->brings;
	if (a->distance != b->distance)
		return a->distance < b->distance;
	return a->unit > b->unit;
}

/* Any teacher may be the one to move, not only the first: it may be tied down while
 * another is free. */
static struct move best_teacher_move(struct repairs *r, const struct merged *g)
{
	const struct graph *gr = r->graph;
	const struct fault *f = &r->verdict->faults.v[g->first];
	struct move best = { .unit = NONE };
	struct mover way = { 0 };
	size_t tried = 0;

	for (uint32_t a = gr->alt_at[f->need]; a < gr->alt_at[f->need + 1]; a++) {
		uint32_t cell = gr->alts[a], i, end;

		if (cell >= gr->ncells)
			continue;
		i = r->teacher_at[cell_skill(cell)];
		end = r->teacher_at[cell_skill(cell) + 1];
		for (; i < end && tried < TEACHERS_MOST; i++, tried++) {
			uint32_t unit = r->verdict->views[0]->units->of[r->teachers[i]];
			struct mover m;
			struct move move;

			if (unit == NONE || !teacher_mover(r, g, unit, &m))
				continue;
			move = move_least(r, &m);
			if (is_better(&move, &best)) {
				best = move;
				way = m;
			}
		}
	}
	if (best.unit != NONE)
		avoid_new(r, &way, &best);
	return best;
}

static void say_spot(struct buf *b, const struct repairs *r, uint64_t spot)
{
	buf_addf(b, "quarter %u, week %u", (uint32_t)(spot / r->weeks) + 1,
	    (uint32_t)(spot % r->weeks) + 1);
}

static str unit_id(const struct repairs *r, uint32_t unit)
{
	return r->graph->model->assignments[unit_leader(r->verdict->views[0], unit)].id;
}

/* "move FB-04 to the end of quarter 3, week 1, or later" */
static void say_move(struct buf *b, const struct repairs *r, const struct move *m)
{
	uint64_t edge = m->later ? r->spots - 1 : 0;

	buf_addf(b, "move %.*s to %s", STR_ARG(unit_id(r, m->unit)),
	    m->late ? "the end of " : "");
	say_spot(b, r, m->spot);
	if (m->end == edge && m->end != m->spot) {
		buf_addf(b, " or %s", m->later ? "later" : "earlier");
	} else if (m->end != m->spot) {
		buf_addf(b, " (or as far as ");
		say_spot(b, r, m->end);
		buf_addc(b, ')');
	}
	if (m->brings)
		buf_addf(b, ", which brings %s", m->brings);
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

/* The earliest of those who ask, when the first teacher may stand right above it: the
 * end of a week, where moves go, comes too late only because it asks in the first. With
 * circles or entry paths that is not looked into. NONE. */
static uint32_t stands_above(const struct repairs *r, const struct merged *g,
    uint32_t teacher)
{
	const struct verdict *d = r->verdict;
	const struct view *v = d->views[0];
	const struct bound *b = &r->bounds[teacher][0];
	uint32_t first = NONE;

	if (r->knots || d->nviews > 1 || v->units->optional[teacher] || b->barred)
		return NONE;
	for (uint32_t i = g->first; i != NONE; i = d->next[i]) {
		if (!unit_meets(v->units, r->graph, teacher, d->faults.v[i].need))
			return NONE;
		first = outer_of(v, first, d->faults.v[i].assignment, true);
	}
	return b->after == NONE || v->units->of[b->after] < v->units->of[first]
	    ? first : NONE;
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
	const struct bound *their = &bounds_of(r, teacher)[f->view];

	uint32_t above = stands_above(r, g, teacher);

	if (above != NONE) {
		buf_addf(b, "no single move to the end of a week repairs this; put the line "
		    "of %.*s above that of %.*s", STR_ARG(unit_id(r, teacher)),
		    STR_ARG(r->graph->model->assignments[above].id));
		return;
	}
	buf_adds(b, "no single move repairs this");
	if (own->before != NONE)
		say_fact(b, r, v, f->assignment, "before", own->before,
		    "which needs what it teaches");
	if (d->views[0]->units->optional[teacher])
		buf_addf(b, "; %.*s is optional work", STR_ARG(unit_id(r, teacher)));
	else if (their->after != NONE)
		say_fact(b, r, v, f->teacher, "after", their->after,
		    "whose teaching it needs");
	if (r->tied)
		buf_adds(b, "; a move that would help also turns the circle that is "
		    "reported, so undo that first");
}

/* The better move first; the other side follows when it can move at all. Notes both in
 * *w, which may be null. */
static void say_moves(struct buf *b, const struct repairs *r, struct move one,
    struct move other, struct standing_wrong *w)
{
	bool swap = is_better(&other, &one);
	const struct move *v[] = { swap ? &other : &one, swap ? &one : &other };

	for (uint32_t i = 0; i < 2; i++) {
		if (i && (v[1]->unit == NONE || (v[1]->brings && !v[0]->brings)))
			return;
		buf_adds(b, i ? "; or " : "");
		say_move(b, r, v[i]);
		if (!w)
			continue;
		w->told[i].mover = unit_leader(r->verdict->views[0], v[i]->unit);
		w->told[i].week = v[i]->spot;
		w->ntold = i + 1;
	}
}

static uint64_t week_of(const struct repairs *r, uint32_t assignment)
{
	const struct place *p = &r->verdict->views[0]->order->places[assignment];

	return (p->quarter - 1) * r->weeks + p->week - 1;
}

struct standing_wrong *repair_pair(struct repairs *r, uint32_t first, uint32_t second,
    struct arena *out)
{
	const uint32_t *of = r->verdict->views[0]->units->of;
	struct standing_wrong *w;

	if (!r->spots || of[first] == NONE || of[second] == NONE)
		return NULL;
	w = arena_alloc(out, sizeof *w);
	*w = (struct standing_wrong){ .first = first, .second = second,
		.first_week = week_of(r, first), .second_week = week_of(r, second),
		.mover = NONE };
	return w;
}

str repair_pair_words(struct repairs *r, uint32_t view, struct standing_wrong *w,
    enum movable which, struct arena *out)
{
	const uint32_t *of = r->verdict->views[0]->units->of;
	struct move earlier = { .unit = NONE }, later = { .unit = NONE };
	struct buf b = { .arena = out };
	struct mover m;

	if (of[w->first] == of[w->second])
		return (str){ 0 };
	if (which & MOVABLE_FIRST) {
		m = mover_new(r, of[w->first], 0);
		m.cure[view].before = w->second;
		earlier = move_least(r, &m);
		avoid_new(r, &m, &earlier);
	}
	if (which & MOVABLE_SECOND) {
		m = mover_new(r, of[w->second], 0);
		m.cure[view].after = w->first;
		later = move_least(r, &m);
		avoid_new(r, &m, &later);
	}
	if (earlier.unit != NONE || later.unit != NONE)
		say_moves(&b, r, earlier, later, w);
	return buf_str(&b);
}

uint32_t repair_week(struct repairs *r, uint32_t assignment, uint32_t lo, uint32_t hi)
{
	const struct view *v = r->verdict->views[0];
	uint32_t unit = v->units->of[assignment], week = v->order->places[assignment].week;
	uint64_t base;
	struct mover m;

	if (!r->spots || unit == NONE)
		return 0;
	base = (v->order->places[assignment].quarter - 1) * r->weeks;
	m = mover_new(r, unit, 0);
	for (uint32_t far = 1; far <= r->weeks; far++) {
		uint32_t on = week + far, back = week > far ? week - far : 0;

		if (on >= lo && on <= hi && on <= r->weeks &&
		    move_serves(r, &m, base + on - 1))
			return on;
		if (back && back >= lo && back <= hi && move_serves(r, &m, base + back - 1))
			return back;
	}
	return 0;
}

static const struct standing_wrong *note_move(const struct repairs *r,
    const struct move *m, struct arena *out)
{
	struct standing_wrong *w = arena_alloc(out, sizeof *w);

	*w = (struct standing_wrong){ .mover = unit_leader(r->verdict->views[0], m->unit),
		.week = m->spot, .end = m->end };
	return w;
}

str repair_words(struct repairs *r, const struct merged *g, struct arena *out,
    const struct standing_wrong **wrong)
{
	struct buf b = { .arena = out };
	struct move asker = { .unit = NONE }, teacher = { .unit = NONE };
	struct mover m;

	r->tied = false;
	if (!r->spots)
		return (str){ 0 };
	if (asker_mover(r, g, &m)) {
		asker = move_least(r, &m);
		avoid_new(r, &m, &asker);
	}
	teacher = best_teacher_move(r, g);
	if (asker.unit == NONE && teacher.unit == NONE) {
		say_no_move(&b, r, g);
		return buf_str(&b);
	}
	*wrong = note_move(r, is_better(&teacher, &asker) ? &teacher : &asker, out);
	say_moves(&b, r, asker, teacher, NULL);
	return buf_str(&b);
}
