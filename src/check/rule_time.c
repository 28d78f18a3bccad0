/* Hours of assignments against hours of courses, and these against credits. */
#include "check/rule_time.h"

#include "check/rule_joint.h"
#include "model/credit.h"

/* Share of the lab hours that assignments fill at least (common practice, no source: the
 * rest is demonstrations, clean-up and work done again). */
#define FILL_LEAST 0.85
/* Difference in credits that is still rounding of the catalog. */
#define CREDIT_SLACK 0.05

str say_hours(const struct rule_context *x, double h)
{
	return say_real(x, h, 1);
}

unsigned percent_of(double a, double b)
{
	double p = b > 0 ? a / b * 100 : 0;
	unsigned whole = p < 1e6 ? (unsigned)(p + 0.5) : 1000000;

	if (whole == 100 && is_more_h(a, b))
		return 101;
	return whole == 100 && is_more_h(b, a) ? 99 : whole;
}

static struct finding *report_course(struct rule_context *x, enum finding_name name,
    const struct course *c, str message)
{
	struct finding *d = rule_report(x, name, c->pos, NONE, "%.*s", STR_ARG(message));

	d->scope = SCOPE_QUARTER;
	d->quarter = c->quarter;
	return d;
}

/* Which courses hold a line that no file defines, or work without hours that can be read: how full they
 * are is not known, and the cause is told. */
static bool *find_unknown(const struct rule_context *x)
{
	const struct model *m = x->m;
	bool *unknown = arena_array(x->scratch, m->ncourses, sizeof *unknown);

	for (size_t i = 0; i < m->nslots; i++) {
		const struct assignment *a = m->slots[i].assignment == NONE ? NULL
		    : &m->assignments[m->slots[i].assignment];

		if (!a || a->hours <= 0)
			unknown[m->slots[i].course] = true;
	}
	return unknown;
}

static void judge_fill(struct rule_context *x, uint32_t course,
    const struct course_load *l, bool unknown, struct overfull *o)
{
	const struct course *c = &x->m->courses[course];
	struct finding *d;

	if (c->lab_hours <= 0)
		return;
	if (is_more_h(l->must_h, c->lab_hours)) {
		d = report_course(x, FINDING_HOURS_OVER, c, str_format(x->f->arena,
		    "the assignments of %.*s take %.*s h, and its lab hours are %.*s",
		    STR_ARG(c->id), STR_ARG(say_hours(x, l->must_h)),
		    STR_ARG(say_hours(x, c->lab_hours))));
		finding_repair(x->f, d, "take %.*s h of work out, make some of it "
		    "optional, or raise Lab hours", STR_ARG(say_hours(x, l->must_h -
		    c->lab_hours)));
		overfull_note(x, o, course, l->must_h - c->lab_hours);
	} else if (!unknown && is_more_h(c->lab_hours * FILL_LEAST, l->must_h)) {
		d = report_course(x, FINDING_HOURS_UNDER, c, str_format(x->f->arena,
		    "the assignments of %.*s fill %.*s h of its %.*s lab hours (%u %%)",
		    STR_ARG(c->id), STR_ARG(say_hours(x, l->must_h)),
		    STR_ARG(say_hours(x, c->lab_hours)),
		    /* Rounded down: 84.5 % is under 85 %. */
		    (unsigned)(l->must_h / c->lab_hours * 100)));
		finding_repair(x->f, d, "add %.*s h of work or more, or lower Lab hours",
		    STR_ARG(say_hours(x, c->lab_hours * FILL_LEAST - l->must_h)));
	}
}

/* Hours of a kind for which the rule gives nothing leave the credits unknown. */
static bool judge_credits(struct rule_context *x, const struct course *c,
    const struct credit_rule *r)
{
	double credits;
	struct finding *d;

	if (c->credits <= 0 || (c->lecture_hours <= 0 && c->lab_hours <= 0) ||
	    (c->lecture_hours > 0 && r->lecture_h <= 0) ||
	    (c->lab_hours > 0 && r->lab_h <= 0))
		return false;
	credits = (c->lecture_hours > 0 ? c->lecture_hours / r->lecture_h : 0) +
	    (c->lab_hours > 0 ? c->lab_hours / r->lab_h : 0);
	if (credits <= c->credits + CREDIT_SLACK && credits >= c->credits - CREDIT_SLACK)
		return true;
	d = report_course(x, FINDING_CREDITS_OFF, c, str_format(x->f->arena,
	    "%.*s says %.*s credits, and its hours make %.*s", STR_ARG(c->id),
	    STR_ARG(say_real(x, c->credits, 2)), STR_ARG(say_real(x, credits, 2))));
	finding_cause(x->f, d, "%.*s lecture hours and %.*s lab hours by the rule "
	    "\"%.*s\"",
	    STR_ARG(say_hours(x, c->lecture_hours)), STR_ARG(say_hours(x, c->lab_hours)),
	    STR_ARG(x->m->credit_rule));
	finding_repair(x->f, d, "change Credits, Lecture hours or Lab hours");
	return true;
}

/* Three courses are hardly wrong at once, and most of them at that: then it is the rule.
 * The first speaks for them; from: where their findings begin. */
static void fold_credits(struct rule_context *x, size_t from, size_t judged)
{
	struct finding *d = &x->f->v[from];
	size_t n = x->f->n - from;

	if (n < 3 || n * 2 <= judged)
		return;
	for (size_t i = from + 1; i < x->f->n; i++)
		finding_relate(x->f, d, x->f->v[i].pos)->label = x->f->v[i].message;
	x->f->n = from + 1;
	d->scope = SCOPE_PROGRAM;
	d->message = str_format(x->f->arena, "%.*s; so it is with %u of %u courses",
	    STR_ARG(d->message), (unsigned)n, (unsigned)judged);
	finding_repair(x->f, d, "correct Credit rule in program.md, \"%.*s\"; or else the "
	    "Credits of each", STR_ARG(x->m->credit_rule));
}

static void judge_all_credits(struct rule_context *x)
{
	size_t from = x->f->n, judged = 0;
	struct credit_rule rule;

	if (!credit_rule_parse(x->m->credit_rule, &rule))
		return;
	for (uint32_t i = 0; i < x->m->ncourses; i++)
		judged += judge_credits(x, &x->m->courses[i], &rule);
	for (size_t i = 0; i < x->m->nwaivers; i++)
		if (x->m->waivers[i].name == FINDING_CREDITS_OFF)
			return;
	fold_credits(x, from, judged);
}

/* Credits are compared only where the rule was read. */
void rule_time(struct rule_context *x)
{
	const struct stints *s = stints_new(x->scratch, x->o);
	const struct course_load *l = course_loads(x->scratch, s);
	const bool *unknown = find_unknown(x);
	struct overfull *o = overfull_new(x);

	for (uint32_t i = 0; i < x->m->ncourses; i++)
		judge_fill(x, i, &l[i], unknown[i], o);
	judge_all_credits(x);
	judge_loads(x, s, o);
}
