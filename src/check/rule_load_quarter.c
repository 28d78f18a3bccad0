/* Quarters against the hours of a section, and what courses that are too full explain. */
#include "check/rule_time.h"

#include "base/buf.h"

#include <math.h>

/* One section, or the program without cohorts: the quarters judged by its hours. */
struct span_of_work {
	const struct section *section;
	double open_h;           /* in a quarter */
	const struct sitting **met; /* by quarter from 1: who meets it first; null: nobody */
	bool *over;              /* by quarter: to be told here */
};

/* A waiver of its own keeps a quarter apart, so that it covers just that. */
static bool is_named(const struct rule_context *x, enum finding_name name, struct pos pos)
{
	for (size_t i = 0; i < x->m->nwaivers; i++)
		if (x->m->waivers[i].name == name && x->m->waivers[i].about.n &&
		    !pos_cmp(x->m->waivers[i].place, pos))
			return true;
	return false;
}

void overfull_note(struct rule_context *x, struct overfull *o, uint32_t course,
    double over_h)
{
	if (is_named(x, FINDING_HOURS_OVER, x->m->courses[course].pos))
		return;
	o->any = true;
	o->over_h[course] = over_h;
	o->finding[course] = x->f->n - 1;
}

struct overfull *overfull_new(struct rule_context *x)
{
	struct overfull *o = arena_alloc(x->scratch, sizeof *o);

	o->over_h = arena_array(x->scratch, x->m->ncourses, sizeof *o->over_h);
	o->finding = arena_array(x->scratch, x->m->ncourses, sizeof *o->finding);
	o->week_h = arena_array(x->scratch, x->m->nsections, sizeof *o->week_h);
	o->long_finding = arena_array(x->scratch, x->m->nsections,
	    sizeof *o->long_finding);
	o->too_long = arena_array(x->scratch, x->m->nsections, sizeof *o->too_long);
	return o;
}

/* The fullest of the courses of a quarter that are too full, and by how much they all
 * are; NONE when none is. */
static uint32_t fullest_of(const struct rule_context *x, const struct overfull *o,
    uint32_t quarter, double *over_h)
{
	uint32_t best = NONE;

	*over_h = 0;
	for (uint32_t i = 0; o->any && i < x->m->ncourses; i++) {
		if (x->m->courses[i].quarter != quarter || o->over_h[i] <= 0)
			continue;
		*over_h += o->over_h[i];
		if (best == NONE || o->over_h[i] > o->over_h[best])
			best = i;
	}
	return best;
}

/* A quarter that fits once its courses do is told with the fullest of them. */
static bool fold_quarter(struct rule_context *x, const struct stints *s,
    const struct overfull *o, uint32_t quarter, const struct span_of_work *w)
{
	double h = quarter_hours(s, quarter), over_h;
	uint32_t course = fullest_of(x, o, quarter, &over_h);

	if (course == NONE || is_more_h(h - w->open_h, over_h))
		return false;
	finding_relate(x->f, &x->f->v[o->finding[course]],
	    x->m->quarters[quarter - 1].pos)->label = str_format(x->f->arena,
	    "quarter %u then takes %.*s h, and section %.*s is open %.*s h",
	    (unsigned)quarter, STR_ARG(say_hours(x, h)), STR_ARG(w->section->name),
	    STR_ARG(say_hours(x, w->open_h)));
	return true;
}

/* The station hours of a sitting that its courses ask beyond what they have. */
static double excess_of(struct rule_context *x, const struct overfull *o,
    const struct load *l, const struct load_row *r, const struct sitting *t, uint32_t *best)
{
	double *at_h = arena_array(x->scratch, x->m->ncourses, sizeof *at_h), sum_h = 0;

	for (uint32_t k = l->stints->at[t->quarter]; k < l->stints->at[t->quarter + 1];
	    k++)
		if (l->stints->v[k].station == r->station)
			at_h[l->stints->v[k].course] += l->stints->v[k].hours;
	for (uint32_t c = 0; c < x->m->ncourses; c++) {
		if (o->over_h[c] <= 0 || at_h[c] <= 0)
			continue;
		sum_h += at_h[c] < o->over_h[c] ? at_h[c] : o->over_h[c];
		*best = c;
	}
	return sum_h * x->m->cohorts[t->cohort].students;
}

/* Lists a row that is over with the finding that explains it; one that fits is not. */
static void fold_row(struct rule_context *x, size_t finding, const struct load *l,
    const struct load_row *r)
{
	const struct station *st = &x->m->stations[r->station];

	if (is_more_h(r->must_h, r->open_h))
		finding_relate(x->f, &x->f->v[finding], st->pos)->label = str_format(
		    x->f->arena, "%.*s is then asked for %.*s h of %.*s open in %.*s",
		    STR_ARG(st->name), STR_ARG(say_hours(x, r->must_h)),
		    STR_ARG(say_hours(x, r->open_h)), STR_ARG(l->terms[r->term]));
}

/* Once the section is open as long as its quarters want, the row has its hours. */
static bool explained_by_section(struct rule_context *x, const struct overfull *o,
    const struct load *l, const struct load_row *r)
{
	const struct section *s = r->section == NONE ? NULL : &x->m->sections[r->section];

	if (!s || o->week_h[r->section] <= 0 || is_more_h(r->must_h, r->open_h *
	    o->week_h[r->section] / s->open_hours_week))
		return false;
	for (uint32_t i = r->from; i < r->end; i++)
		if (o->too_long[r->section][l->sittings[i].quarter]) {
			fold_row(x, o->long_finding[r->section], l, r);
			return true;
		}
	return false;
}

bool overfull_explains(struct rule_context *x, const struct overfull *o,
    const struct load *l, const struct load_row *r)
{
	double excess_h = 0;
	uint32_t best = NONE;

	if (explained_by_section(x, o, l, r))
		return true;
	for (uint32_t i = r->from; o->any && i < r->end; i++)
		excess_h += excess_of(x, o, l, r, &l->sittings[i], &best);
	if (best == NONE || is_more_h(r->must_h - r->open_h, excess_h))
		return false;
	fold_row(x, o->finding[best], l, r);
	return true;
}

/* Hours free in the quarters that fit, and which of them. */
static double free_hours(const struct rule_context *x, const struct stints *s,
    const struct span_of_work *w, struct buf *names)
{
	double sum_h = 0;

	for (uint32_t q = 1; q <= x->m->nquarters; q++) {
		double free_h = w->open_h - quarter_hours(s, q);

		if (!w->met[q] || free_h <= 1e-6)
			continue;
		buf_addf(names, "%s%u", names->n ? " and " : "", (unsigned)q);
		sum_h += free_h;
	}
	return sum_h;
}

/* What is proposed must do: work moves only where there is room for all of it. */
static void repair_quarters(struct rule_context *x, struct finding *d,
    const struct stints *s, const struct span_of_work *w, uint32_t n, double sum_h,
    double most_h)
{
	struct buf names = { .arena = x->f->arena };
	double free_h = free_hours(x, s, w, &names);
	bool one = str_find_char(buf_str(&names), ' ', 0) == names.n;
	str weekly = say_hours(x, ceil(most_h / x->m->weeks * 2) / 2);

	if (is_more_h(sum_h, free_h))
		finding_repair(x->f, d, "open section %.*s %.*s h a week; no other quarter "
		    "has room for %.*s h, so else that much work is made optional or "
		    "taken out", STR_ARG(w->section->name), STR_ARG(weekly),
		    STR_ARG(say_hours(x, sum_h)));
	else
		finding_repair(x->f, d, "move %.*s h of work%s to quarter%s %.*s, or open "
		    "section %.*s %.*s h a week", STR_ARG(say_hours(x, sum_h)),
		    n > 1 ? " in all" : "", one ? "" : "s", STR_ARG(buf_str(&names)),
		    STR_ARG(w->section->name), STR_ARG(weekly));
}

static void relate_quarter(struct rule_context *x, struct finding *d,
    const struct stints *s, const struct span_of_work *w, const struct load *l,
    uint32_t quarter)
{
	const struct sitting *t = w->met[quarter];
	struct buf b = { .arena = x->f->arena };

	buf_addf(&b, "quarter %u takes %.*s h", (unsigned)quarter,
	    STR_ARG(say_hours(x, quarter_hours(s, quarter))));
	if (l)
		buf_addf(&b, "; %.*s meets it in %.*s",
		    STR_ARG(x->m->cohorts[t->cohort].name), STR_ARG(l->terms[t->term]));
	finding_relate(x->f, d, x->m->quarters[quarter - 1].pos)->label = buf_str(&b);
}

/* One finding for the quarters [from, to] that are over and not told yet; the hours of
 * the longest. */
static double report_quarters(struct rule_context *x, const struct stints *s,
    const struct span_of_work *w, const struct load *l, uint32_t from, uint32_t to)
{
	uint32_t n = 0;
	double sum_h = 0, most_h = 0, h = quarter_hours(s, from);
	const struct sitting *t = w->met[from];
	struct finding *d;

	for (uint32_t q = from; q <= to; q++) {
		double here_h = quarter_hours(s, q);

		if (!w->over[q])
			continue;
		n++;
		sum_h += here_h - w->open_h;
		most_h = here_h > most_h ? here_h : most_h;
	}
	d = rule_report(x, FINDING_QUARTER_OVER, x->m->quarters[from - 1].pos, NONE,
	    n > 1 ? "quarter %u takes %.*s h of one student, and section %.*s is open "
	    "%.*s h; %u more %s too" : "quarter %u takes %.*s h of one "
	    "student, and section %.*s is open %.*s h", (unsigned)from,
	    STR_ARG(say_hours(x, h)), STR_ARG(w->section->name),
	    STR_ARG(say_hours(x, w->open_h)), (unsigned)(n - 1), n == 2
	    ? "quarter is too long" : "quarters are too long");
	keep_aside(d);
	if (l) {
		finding_cause(x->f, d, "%.*s meets it in %.*s",
		    STR_ARG(x->m->cohorts[t->cohort].name), STR_ARG(l->terms[t->term]));
		finding_relate(x->f, d, x->m->cohorts[t->cohort].pos)->label =
		    STR("that cohort");
	}
	for (uint32_t q = from + 1; q <= to; q++)
		if (w->over[q])
			relate_quarter(x, d, s, w, l, q);
	repair_quarters(x, d, s, w, n, sum_h, most_h);
	return most_h;
}

static void note_long(struct rule_context *x, struct overfull *o,
    const struct span_of_work *w, double most_h)
{
	size_t section = (size_t)(w->section - x->m->sections);

	o->week_h[section] = most_h / x->m->weeks;
	o->long_finding[section] = x->f->n - 1;
	o->too_long[section] = w->over;
}

static void judge_span(struct rule_context *x, const struct stints *s,
    struct overfull *o, struct span_of_work *w, const struct load *l)
{
	uint32_t first = 0;

	w->over = arena_array(x->scratch, x->m->nquarters + 1, sizeof *w->over);
	for (uint32_t q = 1; q <= x->m->nquarters; q++) {
		w->over[q] = w->met[q] && is_more_h(quarter_hours(s, q), w->open_h) &&
		    !fold_quarter(x, s, o, q, w);
		if (w->over[q] && is_named(x, FINDING_QUARTER_OVER,
		    x->m->quarters[q - 1].pos)) {
			report_quarters(x, s, w, l, q, q);
			w->over[q] = false;
		}
		if (w->over[q] && !first)
			first = q;
	}
	if (first)
		note_long(x, o, w, report_quarters(x, s, w, l, first,
		    (uint32_t)x->m->nquarters));
}

/* Without cohorts nobody says who studies in which section, so a quarter is too long
 * only when it fits in none of them. */
void judge_quarters(struct rule_context *x, const struct stints *s, struct overfull *o)
{
	static const struct sitting anyone;
	struct span_of_work w = { 0 };

	for (size_t i = 0; i < x->m->nsections; i++)
		if (!w.section || x->m->sections[i].open_hours_week >
		    w.section->open_hours_week)
			w.section = &x->m->sections[i];
	w.open_h = w.section ? w.section->open_hours_week * x->m->weeks : 0;
	w.met = arena_array(x->scratch, x->m->nquarters + 1, sizeof *w.met);
	for (uint32_t q = 1; q <= x->m->nquarters; q++)
		w.met[q] = &anyone;
	if (w.open_h > 0)
		judge_span(x, s, o, &w, NULL);
}

/* With cohorts, each quarter that they still meet must fit in the hours of theirs. */
void judge_sittings(struct rule_context *x, const struct load *l, struct overfull *o)
{
	const struct model *m = x->m;

	for (uint32_t k = 0; k < m->nsections; k++) {
		struct span_of_work w = { .section = &m->sections[k],
			.open_h = m->sections[k].open_hours_week * m->weeks };

		if (w.open_h <= 0)
			continue;
		w.met = arena_array(x->scratch, m->nquarters + 1, sizeof *w.met);
		for (size_t i = 0; i < l->nsittings; i++) {
			const struct sitting *t = &l->sittings[i];

			if (t->section == k && m->cohorts[t->cohort].students &&
			    !w.met[t->quarter])
				w.met[t->quarter] = t;
		}
		judge_span(x, l->stints, o, &w, l);
	}
}
