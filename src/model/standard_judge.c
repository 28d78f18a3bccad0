/* Whether the sets that lines of Acceptance name can say what they are asked. */
#include "model/limit_scan.h"
#include "model/parts.h"
#include "model/weld_sizes.h"

static bool has_limits(const struct standard *s, enum standard_test test)
{
	for (size_t i = 0; i < s->n; i++)
		if (s->v[i].test == test)
			return true;
	return false;
}

/* What stands behind a semicolon says in the program's own words what passes. */
static bool says_itself(const struct criterion *c)
{
	return str_find_char(c->text, ';', 0) < c->text.n;
}

static void judge_criterion(struct binder *b, const struct criterion *c)
{
	enum standard_test test;
	struct finding *d;

	if (!c->standard || says_itself(c) || !criterion_test(c->name, &test) ||
	    has_limits(c->standard, test))
		return;
	d = complain(b, FINDING_UNKNOWN_STANDARD, c->pos,
	    "\"%.*s\" has no limits for %.*s, so the sheet shows only these words",
	    STR_ARG(c->standard->name), STR_ARG(c->name));
	finding_repair(b->f, d, "name a set that has them, or say what passes at the "
	    "end of this line, after a semicolon");
}

/* A limit that fails at the size of weld i, told at the limit with its reader beside. */
static void judge_limit(struct binder *b, const struct criterion *c,
    const struct standard_limit *l, const struct limit_sizes *sizes)
{
	struct limit_failure f = limit_try(l, sizes);
	struct buf words = { .arena = b->arena };
	struct finding *d;
	str text = f.in_condition ? l->where_text : l->most_text;

	if (!f.fails)
		return;
	limit_say_failure(&words, l, &f);
	d = complain(b, FINDING_LIMIT_FAILS_HERE, f.in_condition ? l->where_pos
	    : l->most_pos, "\"%.*s\" %.*s, as in %.*s", STR_ARG(text),
	    STR_ARG(buf_str(&words)), STR_ARG(b->a->id));
	finding_relate(b->f, d, c->pos)->label = STR("judged by it");
	finding_repair(b->f, d, "say behind \"where\" for which sizes it holds, or set an "
	    "end with min( ) or max( )");
}

static bool may_fail(const struct standard_limit *l)
{
	return l->most.may_fail || l->where.may_fail;
}

/* Whether an earlier line of the assignment has the same limits. */
static bool judged_before(const struct assignment *a, size_t of, enum standard_test test)
{
	enum standard_test other;

	for (size_t i = 0; i < of; i++)
		if (a->criteria[i].standard == a->criteria[of].standard &&
		    criterion_test(a->criteria[i].name, &other) && other == test)
			return true;
	return false;
}

static void judge_sizes(struct binder *b, size_t at)
{
	const struct criterion *c = &b->a->criteria[at];
	enum standard_test test;

	if (!c->standard || !criterion_test(c->name, &test) ||
	    judged_before(b->a, at, test))
		return;
	for (size_t i = 0; i < b->a->nwelds; i++) {
		struct limit_sizes z = weld_sizes(b->a, i);
		unsigned welds = weld_is_fillet(b->a->welds[i].joint) ? WELD_FILLET
		    : WELD_GROOVE;

		for (size_t k = 0; k < c->standard->n; k++)
			if (c->standard->v[k].test == test &&
			    (c->standard->v[k].welds & welds) &&
			    may_fail(&c->standard->v[k]))
				judge_limit(b, c, &c->standard->v[k], &z);
	}
}

void standard_judge(struct arena *a, struct model *m, struct findings *f)
{
	struct binder b = { .arena = a, .model = m, .f = f };

	for (size_t i = 0; i < m->nassignments; i++) {
		b.a = &m->assignments[i];
		for (size_t k = 0; k < b.a->ncriteria; k++) {
			judge_criterion(&b, &b.a->criteria[k]);
			judge_sizes(&b, k);
		}
	}
}
