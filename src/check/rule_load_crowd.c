/* A cohort too large for several stations at once is the one cause of all of them. */
#include "check/rule_time.h"

#include "base/buf.h"

/* Stations that one cohort fills over before it, and not they, is told. */
enum { CROWDED_LEAST = 3 };

/* The cohort whose size makes a row lack hours, NONE; *fit: how many of them it holds. */
static uint32_t crowd_of(const struct load *l, const struct load_row *r, uint32_t *fit)
{
	const struct sitting *t;

	if (r->closed || r->open_h <= 0 || !is_more_h(r->must_h, r->open_h))
		return NONE;
	t = heaviest_sitting(l, r);
	*fit = students_that_fit(l, r, t, r->open_h);
	return *fit == NONE || *fit == 0 ? NONE : t->cohort;
}

/* The cohort that most stations lack hours for, when they are several; NONE. */
static uint32_t find_crowd(const struct rule_context *x, const struct load *l)
{
	size_t nstations = x->m->nstations;
	bool *seen = arena_array(x->scratch, x->m->ncohorts * nstations, sizeof *seen);
	uint32_t *n = arena_array(x->scratch, x->m->ncohorts, sizeof *n), best = 0, fit;

	if (!l->n)
		return NONE; /* There may be no cohorts either. */
	for (const struct load_row *r = l->v; r < l->v + l->n && r->term < l->near; r++) {
		uint32_t c = crowd_of(l, r, &fit);

		if (c == NONE || seen[c * nstations + r->station])
			continue;
		seen[c * nstations + r->station] = true;
		n[c]++;
		best = n[c] > n[best] ? c : best;
	}
	return n[best] >= CROWDED_LEAST ? best : NONE;
}

/* Lists the rows of a crowd; the fewest students that all of them hold. */
static uint32_t list_rows(struct rule_context *x, const struct load *l, uint32_t crowd,
    struct finding *d)
{
	uint32_t least = NONE, fit;

	for (const struct load_row *r = l->v; r < l->v + l->n && r->term < l->near; r++) {
		const struct station *st = &x->m->stations[r->station];
		uint32_t add;

		if (crowd_of(l, r, &fit) != crowd)
			continue;
		least = fit < least ? fit : least;
		add = places_to_add(r, st->places, 1);
		finding_relate(x->f, d, st->pos)->label = str_format(x->f->arena,
		    "%.*s is asked for %.*s h of %.*s open in %.*s%.*s; %u place%s more would do",
		    STR_ARG(st->name), STR_ARG(say_hours(x, r->must_h)),
		    STR_ARG(say_hours(x, r->open_h)), STR_ARG(l->terms[r->term]),
		    STR_ARG(name_section(x, r)), (unsigned)add, add == 1 ? "" : "s");
	}
	return least;
}

/* Courses and sections told already may be what fills the stations. */
void crowd_find(struct rule_context *x, const struct load *l, struct overfull *o)
{
	uint32_t crowd = NONE, fit;
	const struct cohort *c;
	struct finding *d;
	bool fuller = o->any;

	o->crowd = NONE;
	for (size_t i = 0; i < x->m->nsections && !fuller; i++)
		fuller = o->week_h[i] > 0;
	for (size_t i = 0; i < x->m->nwaivers; i++)
		if (x->m->waivers[i].name == FINDING_STATION_OVER ||
		    x->m->waivers[i].name == FINDING_STATION_TIGHT)
			return;
	if (!fuller && x->m->nstations)
		crowd = find_crowd(x, l);
	if (crowd == NONE)
		return;
	c = &x->m->cohorts[crowd];
	d = rule_report(x, FINDING_STATION_OVER, c->pos, NONE,
	    "%.*s has %u students, for whom several stations are too small",
	    STR_ARG(c->name), (unsigned)c->students);
	keep_aside(d);
	fit = list_rows(x, l, crowd, d);
	finding_repair(x->f, d, "take %u students, if the number is right, or add the places "
	    "that are listed", (unsigned)fit);
	o->crowd = crowd;
}

/* Rows that fit are as full as they are because of it. */
bool crowd_explains(const struct overfull *o, const struct load *l,
    const struct load_row *r)
{
	uint32_t fit;

	if (o->crowd == NONE || r->open_h <= 0)
		return false;
	return is_more_h(r->must_h, r->open_h) ? crowd_of(l, r, &fit) == o->crowd
	    : heaviest_sitting(l, r) && heaviest_sitting(l, r)->cohort == o->crowd;
}
