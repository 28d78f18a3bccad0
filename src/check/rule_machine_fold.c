/* One limit of a machine that several sheets do not fit is one finding: they are more
 * likely right than the one line of shop.md. */
#include "check/rule_machine.h"

#include "check/waive.h"

/* A finding and the line of shop.md that it goes by. */
struct limit_fault {
	const struct plain_fact *limit;
	const struct machine *machine;
	uint32_t next;           /* the next of the same limit, NONE */
};

struct limit_faults {
	struct findings found;   /* what the judges report */
	struct limit_fault *v;   /* by finding */
	size_t n, cap;
};

/* The findings of one limit, linked through next. */
struct limit_group {
	uint32_t first, last, n, sheets;
};

/* What is reported without a limit stands alone. */
static struct limit_fault *fault_at(struct rule_context *x, size_t i)
{
	struct limit_faults *s = x->limits;

	while (s->n <= i)
		*ARENA_PUSH(x->scratch, s->v, s->n, s->cap) =
		    (struct limit_fault){ NULL, NULL, NONE };
	return &s->v[i];
}

void limit_note(struct rule_context *x, const struct finding *d, const struct machine *m,
    const struct plain_fact *limit)
{
	if (x->f->n && d == &x->f->v[x->f->n - 1])
		*fault_at(x, x->f->n - 1) = (struct limit_fault){ limit, m, NONE };
}

/* A waiver of a sheet covers just that sheet, so its finding stays apart. */
static bool may_fold(const struct waivers *ws, const struct finding *d,
    const struct limit_fault *f)
{
	return f->limit && waivers_find(ws, d->name, d->pos, d->assignment,
	    d->skill) == NONE;
}

/* Files a finding under its limit, name and level. */
static void file_fault(struct rule_context *x, struct map *known,
    struct limit_group **groups, size_t *n, size_t *cap, uint32_t i)
{
	struct limit_faults *s = x->limits;
	const struct finding *d = &s->found.v[i];
	str key = str_format(x->scratch, "%u %u %u %u", s->v[i].limit->pos.file,
	    s->v[i].limit->pos.line, (unsigned)d->name, (unsigned)d->level);
	uint32_t at = map_add(known, key, (uint32_t)*n);
	struct limit_group *g;

	if (at == *n) {
		*ARENA_PUSH(x->scratch, *groups, *n, *cap) =
		    (struct limit_group){ i, i, 1, 1 };
		return;
	}
	g = &(*groups)[at];
	g->sheets += !str_eq(d->assignment, s->found.v[g->last].assignment);
	s->v[g->last].next = i;
	g->last = i;
	g->n++;
}

/* Of one sheet the first speaks; of several the line of shop.md. */
static void tell_group(struct rule_context *x, const struct limit_group *g)
{
	struct limit_faults *s = x->limits;
	const struct finding *first = &s->found.v[g->first];
	const struct limit_fault *f = &s->v[g->first];
	struct finding *d;

	if (g->sheets < 2) {
		d = ARENA_PUSH(x->f->arena, x->f->v, x->f->n, x->f->cap);
		*d = *first;
		for (uint32_t i = f->next; i != NONE; i = s->v[i].next)
			finding_list(x->f, d, &s->found.v[i]);
		return;
	}
	d = finding_add(x->f, first->name, f->limit->pos, "%u sheets ask for what the %.*s "
	    "does not take (%.*s: %.*s)", g->sheets, STR_ARG(f->machine->name),
	    STR_ARG(f->limit->key), STR_ARG(f->limit->text));
	d->level = first->level;
	d->scope = SCOPE_ASSIGNMENTS;
	finding_cause(x->f, d, "%.*s; %.*s", STR_ARG(first->message),
	    STR_ARG(first->cause));
	finding_repair(x->f, d, "correct this line if the machine takes it; else on each "
	    "sheet: %.*s", STR_ARG(first->repair));
	for (uint32_t i = g->first; i != NONE; i = s->v[i].next)
		finding_list(x->f, d, &s->found.v[i]);
}

static void fold(struct rule_context *x)
{
	struct limit_faults *s = x->limits;
	const struct waivers *ws = waivers_new(x->scratch, x->m);
	struct map *known = map_new(x->scratch, false);
	struct limit_group *groups = NULL;
	size_t n = 0, cap = 0;

	for (uint32_t i = 0; i < s->found.n; i++) {
		if (may_fold(ws, &s->found.v[i], &s->v[i]))
			file_fault(x, known, &groups, &n, &cap, i);
		else
			*ARENA_PUSH(x->f->arena, x->f->v, x->f->n, x->f->cap) =
			    s->found.v[i];
	}
	for (size_t i = 0; i < n; i++)
		tell_group(x, &groups[i]);
}

static void judge_each(struct rule_context *x, rule_judge *const *judges, size_t n)
{
	for (uint32_t w = 0; w < x->m->nassignments; w++)
		for (size_t k = 0; k < n && !assignment_is_bare(&x->m->assignments[w]); k++)
			judges[k](x, w);
}

void limits_judge(struct rule_context *x, rule_judge *const *judges, size_t n)
{
	struct limit_faults faults = { .found = { .arena = x->f->arena } };
	struct findings *out = x->f;

	if (!x->m->nmachines)
		return;
	x->limits = &faults;
	x->f = &faults.found;
	judge_each(x, judges, n);
	fault_at(x, faults.found.n);
	x->f = out;
	fold(x);
	x->limits = NULL;
}
