/* Stations against the hours that cohorts ask of them. */
#include "check/rule_time.h"

#include "base/buf.h"

/* Above this share of its hours a station leaves no room for work done again (common
 * practice, no source). */
#define TIGHT_ABOVE 0.90

str name_cohorts(const struct rule_context *x, const struct load *l,
    const struct load_row *r)
{
	struct buf b = { .arena = x->f->arena };
	uint32_t n = 0;

	for (uint32_t i = r->from; i < r->end; i++) {
		const struct sitting *t = &l->sittings[i];
		const struct cohort *c = &x->m->cohorts[t->cohort];

		if (place_hours(l->stints, t->quarter, r->station, c->students, false) <=
		    0)
			continue;
		if (n++ < 8)
			buf_addf(&b, "%s%.*s (%u in quarter %u)", n > 1 ? ", " : "",
			    STR_ARG(c->name), (unsigned)c->students,
			    (unsigned)t->quarter);
	}
	if (n > 8)
		buf_addf(&b, " and %u more", (unsigned)(n - 8));
	return buf_str(&b);
}

str name_section(const struct rule_context *x, const struct load_row *r)
{
	if (r->section == NONE || x->m->nsections < 2)
		return (str){ 0 };
	return str_format(x->f->arena, ", section %.*s",
	    STR_ARG(x->m->sections[r->section].name));
}

/* The sitting that asks most of the station. */
static const struct sitting *heaviest(const struct load *l, const struct load_row *r)
{
	const struct sitting *best = NULL;
	double most = 0;

	for (uint32_t i = r->from; i < r->end; i++) {
		const struct sitting *t = &l->sittings[i];
		double h = place_hours(l->stints, t->quarter, r->station,
		    l->stints->m->cohorts[t->cohort].students, false);

		if (h > most) {
			best = t;
			most = h;
		}
	}
	return best;
}

/* How many students of the heaviest sitting leave the row within `limit_h`; NONE when
 * not even their absence does. */
static uint32_t students_that_fit(const struct load *l, const struct load_row *r,
    const struct sitting *t, double limit_h)
{
	uint32_t all = l->stints->m->cohorts[t->cohort].students, low = 0, high = all;
	double others_h = r->must_h - place_hours(l->stints, t->quarter, r->station, all,
	    false);

	if (is_more_h(others_h, limit_h))
		return NONE;
	while (low < high) {
		uint32_t middle = high - (high - low) / 2;
		double h = place_hours(l->stints, t->quarter, r->station, middle, false);

		if (is_more_h(others_h + h, limit_h))
			high = middle - 1;
		else
			low = middle;
	}
	return low;
}

/* Places that bring the row within `share` of what is open, beyond those there are. */
static uint32_t places_to_add(const struct load_row *r, uint32_t places, double share)
{
	double place_h = r->open_h / places * share;
	uint32_t n = 0;

	while (n < 100000 && is_more_h(r->must_h, place_h * (places + n)))
		n++;
	return n;
}

static void repair_row(struct rule_context *x, struct finding *d, const struct load *l,
    const struct load_row *r, double share)
{
	uint32_t add = places_to_add(r, x->m->stations[r->station].places, share);
	const struct sitting *t = heaviest(l, r);
	uint32_t fit = students_that_fit(l, r, t, r->open_h * share);

	if (fit == NONE || fit == 0)
		finding_repair(x->f, d, "add %u place%s, or move a course to another "
		    "quarter", (unsigned)add, add == 1 ? "" : "s");
	else
		finding_repair(x->f, d, "add %u place%s, or take %u students instead of "
		    "%u in %.*s", (unsigned)add, add == 1 ? "" : "s", (unsigned)fit,
		    (unsigned)x->m->cohorts[t->cohort].students,
		    STR_ARG(x->m->cohorts[t->cohort].name));
}

static void report_row(struct rule_context *x, const struct load *l,
    const struct load_row *r, bool over)
{
	const struct station *st = &x->m->stations[r->station];
	struct finding *d = rule_report(x, over ? FINDING_STATION_OVER
	    : FINDING_STATION_TIGHT, st->pos, NONE,
	    "%.*s is asked for %.*s h of %.*s open in %.*s%.*s (%u %%)",
	    STR_ARG(st->name), STR_ARG(say_hours(x, r->must_h)),
	    STR_ARG(say_hours(x, r->open_h)), STR_ARG(l->terms[r->term]),
	    STR_ARG(name_section(x, r)), percent_of(r->must_h, r->open_h));
	str short_h = say_hours(x, r->must_h - r->open_h);

	keep_aside(d);
	if (over)
		finding_cause(x->f, d, "%.*s h short: %.*s", STR_ARG(short_h),
		    STR_ARG(name_cohorts(x, l, r)));
	else
		finding_cause(x->f, d, "no room for work done again: %.*s",
		    STR_ARG(name_cohorts(x, l, r)));
	repair_row(x, d, l, r, over ? 1 : TIGHT_ABOVE);
}

static bool is_same_door(const struct load_row *a, const struct load_row *b)
{
	return a->closed && a->station == b->station && a->section == b->section;
}

/* One door is one finding, in however many terms it is found shut. */
static void report_closed(struct rule_context *x, const struct load *l,
    const struct load_row *r)
{
	const struct station *st = &x->m->stations[r->station];
	struct buf b = { .arena = x->f->arena };
	struct finding *d;

	for (const struct load_row *k = l->v; k < r; k++)
		if (is_same_door(k, r))
			return;
	d = rule_report(x, FINDING_STATION_CLOSED, st->pos, NONE,
	    "%.*s is not open to section %.*s, whose students need it in %.*s",
	    STR_ARG(st->name), STR_ARG(x->m->sections[r->section].name),
	    STR_ARG(l->terms[r->term]));
	keep_aside(d);
	buf_add(&b, name_cohorts(x, l, r));
	for (const struct load_row *k = r + 1; k < l->v + l->n && k->term < l->near; k++)
		if (is_same_door(k, r))
			buf_addf(&b, "; in %.*s %.*s", STR_ARG(l->terms[k->term]),
			    STR_ARG(name_cohorts(x, l, k)));
	finding_cause(x->f, d, "%.*s", STR_ARG(buf_str(&b)));
	finding_repair(x->f, d, "add %.*s to its Sections in shop.md",
	    STR_ARG(x->m->sections[r->section].name));
}

static void judge_row(struct rule_context *x, const struct load *l,
    const struct load_row *r, const struct overfull *o, size_t *budget)
{
	if (r->closed) {
		report_closed(x, l, r);
		return;
	}
	if (r->open_h <= 0 || r->must_h <= 0)
		return;
	if (overfull_explains(x, o, l, r))
		return;
	if (is_more_h(r->must_h, r->open_h))
		report_row(x, l, r, true);
	else if (is_more_h(r->must_h, r->open_h * TIGHT_ABOVE))
		report_row(x, l, r, false);
	if (!is_more_h(r->must_h, r->open_h))
		judge_peak(x, l, r, budget);
}

/* Cohorts shrink: what lies more than a year ahead is reckoned but not judged. */
void judge_loads(struct rule_context *x, const struct stints *s, struct overfull *o)
{
	size_t budget = TRIED_MOST;
	const struct load *l;

	if (!x->m->weeks)
		return;
	if (!x->m->ncohorts) {
		judge_quarters(x, s, o);
		return;
	}
	l = load_new(x->scratch, s);
	judge_sittings(x, l, o);
	for (size_t i = 0; i < l->n && l->v[i].term < l->near; i++)
		judge_row(x, l, &l->v[i], o, &budget);
	judge_bender(x, l);
}
