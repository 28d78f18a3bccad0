#include "check/cause.h"

#include "check/move.h"

/* Teachers looked at for one need, lines that one of them teaches, and lines of
 * program.md whose bounds are worked out; past these the first teacher alone is taken
 * for the cause. */
enum { TEACHERS_TRIED = 16, TAUGHT_MOST = 256, BOUNDS_MOST = 1000 };

struct blame {
	const struct verdict *verdict;
	const struct graph *graph;
	struct repairs *repairs;
	const bool *told;
	uint32_t *first;         /* by unit: needs of which it is the first teacher */
	uint32_t *late, *early;  /* by unit: needs that its moving may cure, as teacher
	                          * and as asker */
	uint32_t *missing;       /* by assignment in no course: needs it alone explains */
	uint32_t bounds;         /* lines whose bounds were asked for */
	uint32_t lost, lost_slot; /* see units_behind_lost */
};

/* Needs that a loop tells, or a misspelt word, are put down to that. */
static bool is_open(const struct blame *b, const struct fault *f)
{
	return !(b->told && b->told[f->need] && nature_is_error(f->nature)) &&
	    f->nature != NATURE_MISSPELT;
}

static uint32_t unit_of(const struct blame *b, uint32_t assignment)
{
	return b->verdict->views[0]->units->of[assignment];
}

static bool is_long(const struct blame *b, uint32_t who)
{
	return b->graph->teach_at[who + 1] - b->graph->teach_at[who] > TAUGHT_MOST;
}

static const struct bound *bound_of(struct blame *b, uint32_t unit, uint32_t view)
{
	if (!b->repairs->bounds[unit] && b->bounds++ >= BOUNDS_MOST)
		return NULL;
	return &bounds_of(b->repairs, unit)[view];
}

/* Whether the line of a later teacher may stand before who asks. */
static bool may_go_early(struct blame *b, const struct fault *f, uint32_t teacher)
{
	const struct view *v = b->verdict->views[f->view];
	uint32_t unit = unit_of(b, teacher), asker = v->units->of[f->assignment];
	const struct bound *k;

	if (v->units->of[teacher] == NONE || v->units->of[teacher] <= asker ||
	    is_long(b, teacher) || (v->units->optional[v->units->of[teacher]] &&
	    !v->units->optional[asker]) ||
	    !unit_meets(v->units, b->graph, v->units->of[teacher], f->need))
		return false;
	k = bound_of(b, unit, f->view);
	return k && !k->barred && (k->after == NONE || v->units->of[k->after] < asker);
}

/* Whether the asking line may stand behind its first teacher. */
static bool may_go_late(struct blame *b, const struct fault *f)
{
	const struct view *v = b->verdict->views[f->view];
	const struct bound *k = bound_of(b, unit_of(b, f->assignment), f->view);

	return k && (k->before == NONE ||
	    v->units->of[k->before] > v->units->of[f->teacher]);
}

/* The teachers of what a fault speaks of; their number, at most as many as are tried. */
static uint32_t teachers_of(const struct blame *b, const struct fault *f,
    const uint32_t **who)
{
	uint32_t skill = cell_skill(b->graph->alts[f->alt]);
	uint32_t n = b->repairs->teacher_at[skill + 1] - b->repairs->teacher_at[skill];

	*who = b->repairs->teachers + b->repairs->teacher_at[skill];
	return n < TEACHERS_TRIED ? n : TEACHERS_TRIED;
}

/* Counted first without bounds, so that these are worked out only for lines that more
 * than one need points at. */
static void count_first(struct blame *b)
{
	const struct faults *fs = &b->verdict->faults;

	for (size_t i = 0; i < fs->n; i++)
		if (is_open(b, &fs->v[i]) && fs->v[i].nature == NATURE_LATER) {
			b->first[unit_of(b, fs->v[i].teacher)]++;
			b->early[unit_of(b, fs->v[i].assignment)]++;
		}
}

static void count_movable(struct blame *b, const uint32_t *asks)
{
	const struct faults *fs = &b->verdict->faults;

	for (size_t i = 0; i < fs->n; i++) {
		const struct fault *f = &fs->v[i];
		uint32_t asker = unit_of(b, f->assignment);
		const uint32_t *who;
		uint32_t n = teachers_of(b, f, &who);

		if (!is_open(b, f) || f->nature != NATURE_LATER)
			continue;
		if (asks[asker] > 1 && may_go_late(b, f))
			b->early[asker]++;
		for (uint32_t k = 0; k < n; k++)
			if (unit_of(b, who[k]) != NONE && b->first[unit_of(b, who[k])] &&
			    may_go_early(b, f, who[k]))
				b->late[unit_of(b, who[k])]++;
	}
}

static bool is_unlisted(const struct blame *b, const struct fault *f, uint32_t who)
{
	return unit_of(b, who) == NONE && !is_long(b, who) &&
	    graph_teaches(b->graph, who, b->graph->alts[f->alt]);
}

/* A skill that is taught later stands in the program; only one that is not makes an
 * assignment in no course the cause. */
static void count_missing(struct blame *b)
{
	const struct faults *fs = &b->verdict->faults;

	for (size_t i = 0; i < fs->n; i++) {
		const struct fault *f = &fs->v[i];
		const uint32_t *who;
		uint32_t n = teachers_of(b, f, &who);

		for (uint32_t k = 0; k < n; k++)
			if (is_open(b, f) && f->nature >= NATURE_TOO_LOW &&
			    is_unlisted(b, f, who[k]))
				b->missing[who[k]]++;
	}
}

/* Of several in no course the one that explains most; NONE. */
static uint32_t unlisted_of(const struct blame *b, const struct fault *f)
{
	const uint32_t *who;
	uint32_t n = teachers_of(b, f, &who), best = NONE;

	for (uint32_t k = 0; k < n; k++)
		if (b->missing[who[k]] && is_unlisted(b, f, who[k]) &&
		    (best == NONE || b->missing[who[k]] > b->missing[best]))
			best = who[k];
	return best;
}

/* What explains most wins; of several as much, the first teacher, then another one. */
static struct cause cause_of_later(struct blame *b, const struct fault *f)
{
	struct cause c = { CAUSE_TEACHER, f->teacher };
	uint32_t unit = unit_of(b, f->teacher), asker = unit_of(b, f->assignment);
	uint32_t most = b->first[unit] > b->late[unit] ? b->first[unit] : b->late[unit];
	const uint32_t *who;
	uint32_t n = teachers_of(b, f, &who);

	for (uint32_t k = 0; k < n; k++) {
		uint32_t other = unit_of(b, who[k]);

		if (other != NONE && b->late[other] > most &&
		    may_go_early(b, f, who[k])) {
			c.who = unit_leader(b->verdict->views[0], other);
			most = b->late[other];
		}
	}
	if (b->early[asker] > most && may_go_late(b, f))
		c = (struct cause){ CAUSE_ASKER,
			unit_leader(b->verdict->views[0], asker) };
	return c;
}

static struct cause cause_of(struct blame *b, const struct fault *f)
{
	uint32_t missing = f->nature >= NATURE_LATER && f->nature != NATURE_SIBLING
	    ? unlisted_of(b, f) : NONE;

	if (missing != NONE)
		return (struct cause){ CAUSE_UNLISTED, missing };
	if (f->nature >= NATURE_TOO_LOW && b->lost != NONE && unit_of(b,
	    f->assignment) >= b->lost)
		return (struct cause){ CAUSE_LOST, b->lost_slot };
	if (f->nature == NATURE_OPTIONAL || f->nature == NATURE_BRANCH)
		return (struct cause){ CAUSE_TEACHER, f->teacher };
	if (f->nature == NATURE_LATER)
		return cause_of_later(b, f);
	return (struct cause){ CAUSE_NEED, NONE };
}

struct cause *causes_find(struct arena *a, const struct verdict *d,
    struct repairs *r, const bool *told)
{
	uint32_t n = d->views[0]->units->n;
	struct blame b = { .verdict = d, .graph = d->views[0]->graph, .repairs = r,
		.told = told };
	struct cause *v = arena_array(a, d->faults.n, sizeof *v);
	uint32_t *asks;

	b.first = arena_array(a, n, sizeof *b.first);
	b.late = arena_array(a, n, sizeof *b.late);
	b.early = asks = arena_array(a, n, sizeof *asks);
	b.missing = arena_array(a, b.graph->nassignments, sizeof *b.missing);
	b.lost = units_behind_lost(d->views[0]->units, &b.lost_slot);
	count_first(&b);
	b.early = arena_array(a, n, sizeof *b.early);
	count_movable(&b, asks);
	count_missing(&b);
	for (size_t i = 0; i < d->faults.n; i++)
		if (is_open(&b, &d->faults.v[i]))
			v[i] = cause_of(&b, &d->faults.v[i]);
	return v;
}
