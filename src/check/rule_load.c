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

const struct sitting *heaviest_sitting(const struct load *l, const struct load_row *r)
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

uint32_t students_that_fit(const struct load *l, const struct load_row *r,
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

uint32_t places_to_add(const struct load_row *r, uint32_t places, double share)
{
	double place_h = r->open_h / places * share;
	uint32_t n = 0;

	while (n < 100000 && is_more_h(r->must_h, place_h * (places + n)))
		n++;
	return n;
}

/* What is told of one station and section: its finding, and what its repair must do. */
struct tale {
	size_t finding;          /* index + 1; 0: nothing yet */
	uint32_t add;            /* places */
	uint32_t cohort, fit;    /* or so many students of one cohort; NONE: no such way */
};

/* What serves all terms told serves each of them. */
static void grow_tale(const struct rule_context *x, struct tale *k, const struct load *l,
    const struct load_row *r, double share)
{
	uint32_t add = places_to_add(r, x->m->stations[r->station].places, share);
	const struct sitting *t = heaviest_sitting(l, r);
	uint32_t fit = students_that_fit(l, r, t, r->open_h * share);
	bool first = !k->finding;

	if (add > k->add)
		k->add = add;
	if (fit == NONE || fit == 0 || (!first && t->cohort != k->cohort))
		k->cohort = k->fit = NONE;
	else if (first || fit < k->fit)
		k->fit = fit;
	if (first && k->fit != NONE)
		k->cohort = t->cohort;
}

static void repair_tale(struct rule_context *x, const struct tale *k)
{
	struct finding *d = &x->f->v[k->finding - 1];
	const char *many = k->add == 1 ? "" : "s";

	if (k->fit == NONE)
		finding_repair(x->f, d, "add %u place%s, or move a course to another "
		    "quarter", (unsigned)k->add, many);
	else
		finding_repair(x->f, d, "add %u place%s, or take %u students instead of "
		    "%u in %.*s", (unsigned)k->add, many, (unsigned)k->fit,
		    (unsigned)x->m->cohorts[k->cohort].students,
		    STR_ARG(x->m->cohorts[k->cohort].name));
}

static str say_row(struct rule_context *x, const struct load *l, const struct load_row *r)
{
	return str_format(x->f->arena, "%.*s is asked for %.*s h of %.*s open in "
	    "%.*s%.*s (%u %%)", STR_ARG(x->m->stations[r->station].name),
	    STR_ARG(say_hours(x, r->must_h)), STR_ARG(say_hours(x, r->open_h)),
	    STR_ARG(l->terms[r->term]), STR_ARG(name_section(x, r)),
	    percent_of(r->must_h, r->open_h));
}

static str say_why(struct rule_context *x, const struct load *l, const struct load_row *r,
    bool over)
{
	if (!over)
		return str_format(x->f->arena, "no room for work done again: %.*s",
		    STR_ARG(name_cohorts(x, l, r)));
	return str_format(x->f->arena, "%.*s h short: %.*s",
	    STR_ARG(say_hours(x, r->must_h - r->open_h)), STR_ARG(name_cohorts(x, l, r)));
}

/* One station that is too small is one finding, in however many terms it shows. */
static void report_row(struct rule_context *x, const struct load *l,
    const struct load_row *r, struct tale *k)
{
	const struct station *st = &x->m->stations[r->station];
	bool over = is_more_h(r->must_h, r->open_h);
	str said = say_row(x, l, r), why = say_why(x, l, r, over);
	struct finding *d;

	grow_tale(x, k, l, r, over ? 1 : TIGHT_ABOVE);
	if (k->finding) {
		finding_relate(x->f, &x->f->v[k->finding - 1], st->pos)->label =
		    str_format(x->f->arena, "%.*s; %.*s", STR_ARG(said), STR_ARG(why));
	} else {
		d = rule_report(x, over ? FINDING_STATION_OVER : FINDING_STATION_TIGHT,
		    st->pos, NONE, "%.*s", STR_ARG(said));
		keep_aside(d);
		finding_cause(x->f, d, "%.*s", STR_ARG(why));
		k->finding = x->f->n;
	}
	repair_tale(x, k);
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

/* Where a row is told: rows of one station and section in which hours lack share one
 * place, those that only have no room another. */
static struct tale *tale_of(const struct rule_context *x, const struct load_row *r,
    struct tale *tales)
{
	size_t section = r->section == NONE ? x->m->nsections : r->section;

	return &tales[2 * (r->station * (x->m->nsections + 1) + section) +
	    !is_more_h(r->must_h, r->open_h)];
}

static void judge_row(struct rule_context *x, const struct load *l,
    const struct load_row *r, const struct overfull *o, struct tale *tales, size_t *budget)
{
	if (r->closed) {
		report_closed(x, l, r);
		return;
	}
	if (r->open_h <= 0 || r->must_h <= 0)
		return;
	if (overfull_explains(x, o, l, r) || crowd_explains(o, l, r))
		return;
	if (is_more_h(r->must_h, r->open_h * TIGHT_ABOVE))
		report_row(x, l, r, tale_of(x, r, tales));
	if (!is_more_h(r->must_h, r->open_h))
		judge_peak(x, l, r, budget);
}

/* Cohorts shrink: what lies more than a year ahead is reckoned but not judged. */
void judge_loads(struct rule_context *x, const struct stints *s, struct overfull *o)
{
	size_t budget = TRIED_MOST;
	struct tale *tales;
	const struct load *l;

	if (!x->m->weeks)
		return;
	if (!x->m->ncohorts) {
		judge_quarters(x, s, o);
		return;
	}
	l = load_new(x->scratch, s);
	judge_sittings(x, l, o);
	crowd_find(x, l, o);
	tales = arena_array(x->scratch, 2 * x->m->nstations * (x->m->nsections + 1),
	    sizeof *tales);
	for (size_t i = 0; i < l->n && l->v[i].term < l->near; i++)
		judge_row(x, l, &l->v[i], o, tales, &budget);
	judge_bender(x, l);
}
