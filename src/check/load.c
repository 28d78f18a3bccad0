/* What the cohorts ask of the stations, term by term. */
#include "check/load.h"

#include "base/buf.h"
#include "model/when.h"
#include "model/words.h"

#include <stdlib.h>
#include <string.h>

bool station_serves(const struct model *m, uint32_t station, uint32_t section)
{
	str rest = m->stations[station].sections, part;

	if (!str_trim(rest).n || section == NONE)
		return true;
	while (str_next(&rest, ',', &part))
		if (words_same(m->sections[section].name, str_trim(part)))
			return true;
	return false;
}

double station_week_h(const struct model *m, uint32_t station, uint32_t section)
{
	double h = 0;

	if (section != NONE)
		return m->sections[section].open_hours_week;
	for (uint32_t i = 0; i < m->nsections; i++)
		if (station_serves(m, station, i))
			h += m->sections[i].open_hours_week;
	return h;
}

/* The seasons of the fact Terms, each once. */
struct calendar {
	str *season;             /* as written, in the order of a calendar year */
	uint32_t *first;         /* month and day on which each begins */
	uint32_t n;              /* 0: Terms names none, or something else */
};

static void add_season(struct calendar *c, str name, uint32_t first)
{
	uint32_t i = c->n;

	for (uint32_t k = 0; k < c->n; k++)
		if (c->first[k] == first)
			return;
	for (; i > 0 && c->first[i - 1] > first; i--) {
		c->first[i] = c->first[i - 1];
		c->season[i] = c->season[i - 1];
	}
	c->first[i] = first;
	c->season[i] = name;
	c->n++;
}

static struct calendar calendar_of(struct arena *a, const struct model *m)
{
	struct calendar c = { arena_array(a, m->nterms, sizeof *c.season),
		arena_array(a, m->nterms, sizeof *c.first), 0 };
	struct when w;

	for (size_t i = 0; i < m->nterms; i++) {
		if (!when_parse(str_format(a, "%.*s-2000", STR_ARG(m->terms[i])), &w)) {
			c.n = 0;
			return c;
		}
		add_season(&c, m->terms[i], w.first % 10000);
	}
	return c;
}

/* The number of the term in which a cohort began, counted in seasons of this calendar;
 * 0 when that is not known. */
static uint32_t term_entered(struct arena *a, const struct calendar *c, str entered)
{
	struct when in, season;

	if (!when_parse(entered, &in))
		return 0;
	for (uint32_t k = 0; k < c->n; k++)
		if (when_parse(str_format(a, "%.*s-%u", STR_ARG(c->season[k]),
		    in.first / 10000), &season) &&
		    season.first <= in.first && in.first <= season.last)
			return in.first / 10000 * c->n + k;
	return 0;
}

/* The quarters that a cohort meets, in turn: those of the first entry path that begins
 * with the same quarter, else all from there on and then the others. */
struct route {
	uint32_t *v;
	uint32_t n, done;        /* quarters finished are v[0 .. done) */
};

static const struct entry *path_of(const struct model *m, uint32_t quarter)
{
	for (size_t i = 0; i < m->nentries; i++)
		if (m->entries[i].nquarters && m->entries[i].quarters[0] == quarter)
			return &m->entries[i];
	return NULL;
}

static struct route route_of(struct arena *a, const struct model *m,
    const struct cohort *c)
{
	uint32_t nquarters = (uint32_t)m->nquarters;
	uint32_t first = c->entry_quarter ? c->entry_quarter : 1;
	const struct entry *e = path_of(m, first);
	struct route r = { NULL, e ? (uint32_t)e->nquarters : nquarters, 0 };

	r.v = arena_array(a, r.n, sizeof *r.v);
	for (uint32_t i = 0; i < r.n; i++) {
		/* A path never names a quarter that the program lacks. */
		r.v[i] = e ? e->quarters[i] : (first - 1 + i) % nquarters + 1;
		if (r.v[i] == c->finished)
			r.done = i + 1;
	}
	return r;
}

/* The term of the next quarter of each cohort. Cohorts that have finished something are
 * all seen at one moment, so none of them goes on before the last term that another of
 * them has behind it; one that paused goes on with the others. One whose beginning says
 * nothing goes with the first. */
static uint32_t *next_terms(struct arena *a, const struct model *m,
    const struct route *routes)
{
	const struct calendar c = calendar_of(a, m);
	uint32_t *v = arena_array(a, m->ncohorts, sizeof *v), now = 0, soon = 0;

	for (size_t i = 0; i < m->ncohorts; i++) {
		v[i] = term_entered(a, &c, m->cohorts[i].entered);
		v[i] += v[i] ? routes[i].done : 0;
		if (routes[i].done && v[i] > now)
			now = v[i];
	}
	for (size_t i = 0; i < m->ncohorts && !now; i++)
		soon = v[i] && (!soon || v[i] < soon) ? v[i] : soon;
	for (size_t i = 0; i < m->ncohorts; i++) {
		if (v[i] < now)
			v[i] = now;
		else if (!v[i])
			v[i] = soon;
	}
	return v;
}

static int compare_sittings(const void *a, const void *b)
{
	const struct sitting *x = a, *y = b;

	if (x->term != y->term)
		return x->term < y->term ? -1 : 1;
	if (x->section != y->section)
		return x->section < y->section ? -1 : 1;
	return (x->cohort > y->cohort) - (x->cohort < y->cohort);
}

/* Terms in a year when Terms names no seasons: a year of quarters without summer. */
enum { TERMS_A_YEAR = 3 };

/* Terms are renumbered from 0 as they occur. */
static void name_terms(struct arena *a, struct load *l)
{
	const struct calendar c = calendar_of(a, l->stints->m);
	uint32_t from = l->nsittings ? l->sittings[0].term : 0;

	l->terms = arena_array(a, l->nsittings, sizeof *l->terms);
	for (size_t i = 0, was = 0; i < l->nsittings; i++) {
		size_t term = l->sittings[i].term;

		if (!i || term != was)
			l->terms[l->nterms++] = c.n && term >= c.n
			    ? str_format(a, "%.*s %zu",
			    STR_ARG(c.season[term % c.n]), term / c.n)
			    : str_format(a, "term %zu from now", term - from + 1);
		was = term;
		if (term - from < (c.n ? c.n : TERMS_A_YEAR))
			l->near = l->nterms;
		l->sittings[i].term = (uint32_t)l->nterms - 1;
	}
}

static void add_sittings(struct arena *a, struct load *l)
{
	const struct model *m = l->stints->m;
	struct route *routes = arena_array(a, m->ncohorts, sizeof *routes);
	uint32_t *terms;

	for (size_t i = 0; i < m->ncohorts; i++)
		routes[i] = route_of(a, m, &m->cohorts[i]);
	terms = next_terms(a, m, routes);
	for (uint32_t i = 0; i < m->ncohorts; i++) {
		uint32_t section = m->cohorts[i].section;

		if (section == NONE && m->nsections == 1)
			section = 0;
		/* A cohort whose section is open asks for hours nobody knows where. */
		for (uint32_t k = routes[i].done; k < routes[i].n &&
		    !m->cohorts[i].astray; k++)
			*ARENA_PUSH(a, l->sittings, l->nsittings, l->sittings_cap) =
			    (struct sitting){ terms[i] + k - routes[i].done, section, i,
			    routes[i].v[k] };
	}
	if (l->nsittings)
		qsort(l->sittings, l->nsittings, sizeof *l->sittings, compare_sittings);
	name_terms(a, l);
}

static double weekly_h(const struct stint *p, uint32_t students)
{
	return p->hours * ((students + p->team - 1) / p->team) / (p->last - p->first + 1);
}

void load_weeks(const struct load *l, const struct load_row *r, const struct stints *s,
    double *week_h)
{
	memset(week_h, 0, (s->m->weeks + 1) * sizeof *week_h);
	for (uint32_t i = r->from; i < r->end; i++) {
		const struct sitting *t = &l->sittings[i];

		for (uint32_t k = s->at[t->quarter]; k < s->at[t->quarter + 1]; k++) {
			const struct stint *p = &s->v[k];

			if (p->station != r->station || p->optional || !p->longest)
				continue;
			for (uint32_t w = p->first; w <= p->last; w++)
				week_h[w] += weekly_h(p,
				    s->m->cohorts[t->cohort].students);
		}
	}
}

/* What one cohort asks for in one quarter, into the rows of its stations. */
static void add_demand(const struct stints *s, const struct sitting *t,
    struct load_row *rows)
{
	uint32_t students = s->m->cohorts[t->cohort].students;

	for (uint32_t i = s->at[t->quarter]; i < s->at[t->quarter + 1]; i++) {
		const struct stint *p = &s->v[i];
		double h = p->hours * ((students + p->team - 1) / p->team);

		if (p->station == NONE || !p->longest)
			continue;
		if (p->optional) {
			rows[p->station].optional_h += h;
			continue;
		}
		rows[p->station].must_h += h;
		for (uint32_t w = p->first; w <= p->last; w++)
			rows[p->station].week_h[w] += weekly_h(p, students);
	}
}

/* The rows of the sittings [from, end), which share term and section. */
static void add_rows(struct arena *a, struct load *l, uint32_t from, uint32_t end)
{
	const struct model *m = l->stints->m;
	struct load_row *rows = arena_array(a, m->nstations, sizeof *rows);
	const struct sitting *t = &l->sittings[end - 1];

	for (uint32_t i = 0; i < m->nstations; i++)
		rows[i] = (struct load_row){ t->term, t->section, i, from, end, 0, 0,
			m->stations[i].places * station_week_h(m, i, t->section) *
			    m->weeks, !station_serves(m, i, t->section),
			arena_array(a, m->weeks + 1, sizeof(double)) };
	for (uint32_t i = from; i < end; i++)
		add_demand(l->stints, &l->sittings[i], rows);
	for (uint32_t i = 0; i < m->nstations; i++)
		if (rows[i].must_h > 0 || rows[i].optional_h > 0)
			*ARENA_PUSH(a, l->v, l->n, l->cap) = rows[i];
}

/* Those who work in no named section may come at any hour: they are set, with all
 * others of their term, against what all sections offer together. They sort last. */
struct load *load_new(struct arena *a, const struct stints *s)
{
	struct load *l = arena_alloc(a, sizeof *l);
	uint32_t term = 0, end;

	l->stints = s;
	if (!s->m->weeks || !s->m->nquarters)
		return l;
	add_sittings(a, l);
	for (uint32_t i = 0; i < l->nsittings; i = end) {
		const struct sitting *t = &l->sittings[i];

		if (l->sittings[term].term != t->term)
			term = i;
		end = i + 1;
		while (end < l->nsittings && l->sittings[end].term == t->term &&
		    l->sittings[end].section == t->section)
			end++;
		add_rows(a, l, t->section == NONE ? term : i, end);
	}
	return l;
}
