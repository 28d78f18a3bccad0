/* Queues: weeks in which more is asked of a station than it is open. */
#include "check/rule_time.h"

#include "check/rule_joint.h"
#include "check/walk.h"

/* Weeks of waiting that students fill with other work (common practice, no source). */
#define WAIT_MOST 1.0

/* The longest queue of a term: what a week cannot serve waits for the next. */
struct queue {
	uint32_t week;           /* at whose end it is longest; 0: none is too long */
	double weeks;            /* of open hours that wait then */
	double asked_h;          /* in that week */
};

static struct queue find_queue(const struct rule_context *x, const struct load_row *r,
    const double *week_h)
{
	double open_h = r->open_h / x->m->weeks, waiting_h = 0;
	struct queue q = { 0, WAIT_MOST, 0 };

	for (uint32_t w = 1; w <= x->m->weeks; w++) {
		waiting_h += week_h[w] - open_h;
		waiting_h = waiting_h > 0 ? waiting_h : 0;
		if (is_more_h(waiting_h, q.weeks * open_h))
			q = (struct queue){ w, waiting_h / open_h, week_h[w] };
	}
	return q;
}

static size_t count_faults(const struct rule_context *x, const struct order *o)
{
	struct faults fs = { .arena = x->scratch };

	walk_order(view_new(x->scratch, x->view->graph, o), &fs);
	return fs.n;
}

/* Whether no queue is left once an assignment starts in another one, with every need met
 * as before. */
static bool move_helps(struct rule_context *x, const struct load *l,
    const struct load_row *r, uint32_t assignment, uint32_t week)
{
	double *week_h = arena_array(x->scratch, x->m->weeks + 1, sizeof *week_h);
	const struct order *o = order_moved(x->scratch, x->o, assignment,
	    x->o->places[assignment].quarter, week);

	load_weeks(l, r, stints_new(x->scratch, o), week_h);
	return !find_queue(x, r, week_h).week &&
	    count_faults(x, o) <= count_faults(x, x->o);
}

/* The week to which a stint may go, one later or one earlier; 0 when neither helps. */
static uint32_t find_move(struct rule_context *x, const struct load *l,
    const struct load_row *r, const struct stint *p, size_t *budget)
{
	size_t cost = 4 * x->o->nwalk + 1;
	uint32_t week = p->first;

	for (int later = 1; later >= 0 && *budget >= cost; later--) {
		uint32_t to = later ? week + 1 : week - 1;

		if (to < 1 || to > x->m->weeks)
			continue;
		*budget -= cost;
		if (move_helps(x, l, r, p->assignment, to))
			return to;
	}
	return 0;
}

static bool is_at(const struct stint *p, const struct load_row *r, uint32_t week)
{
	return p->station == r->station && !p->optional && p->longest &&
	    p->first <= week && week <= p->last;
}

/* One assignment of that week that may start in the week before or after. */
static void repair_peak(struct rule_context *x, struct finding *d, const struct load *l,
    const struct load_row *r, uint32_t week, size_t *budget)
{
	const struct stints *s = l->stints;

	for (uint32_t i = r->from; i < r->end; i++) {
		uint32_t quarter = l->sittings[i].quarter;

		for (uint32_t k = s->at[quarter]; k < s->at[quarter + 1]; k++) {
			uint32_t to = is_at(&s->v[k], r, week)
			    ? find_move(x, l, r, &s->v[k], budget) : 0;

			if (!to)
				continue;
			finding_repair(x->f, d, "move %.*s to week %u",
			    STR_ARG(x->m->assignments[s->v[k].assignment].id),
			    (unsigned)to);
			return;
		}
	}
	finding_repair(x->f, d, "let groups start in different weeks, or expect a queue");
}

/* How work is spread over weeks is a guess, so a queue is only a note. */
void judge_peak(struct rule_context *x, const struct load *l, const struct load_row *r,
    size_t *budget)
{
	const struct station *st = &x->m->stations[r->station];
	struct queue q = find_queue(x, r, r->week_h);
	struct finding *d;

	if (!q.week || rule_is_off(x, FINDING_STATION_PEAK))
		return;
	d = rule_report(x, FINDING_STATION_PEAK, st->pos, NONE,
	    "the queue for %.*s is %.*s weeks long at the end of week %u of %.*s%.*s",
	    STR_ARG(st->name), STR_ARG(say_real(x, q.weeks, 2)), (unsigned)q.week,
	    STR_ARG(l->terms[r->term]), STR_ARG(name_section(x, r)));
	keep_aside(d);
	finding_cause(x->f, d, "that week asks for %.*s h of %.*s open, spread evenly "
	    "between starts: %.*s", STR_ARG(say_hours(x, q.asked_h)),
	    STR_ARG(say_hours(x, r->open_h / x->m->weeks)),
	    STR_ARG(name_cohorts(x, l, r)));
	repair_peak(x, d, l, r, q.week, budget);
}
