/* Which settings an assignment welds with. */
#include "check/rule_metal.h"

#include "model/words.h"

/* A process for a filler whose sheet lists none that pairs: a covered electrode is run
 * as stick, whatever the list says. */
static enum process process_of(const enum process *v, uint32_t n, uint32_t i,
    uint32_t nfillers, const struct rod *rod)
{
	if (n == 1)
		return v[0];
	if (n == nfillers && n)
		return v[i];
	return rod->sort == ROD_COVERED ? PROCESS_SMAW : PROCESS_COUNT;
}

static uint32_t welding_processes(const struct assignment *as, enum process *v)
{
	uint32_t n = 0;

	for (uint32_t i = 0; i < as->nprocesses && n < PROCESS_COUNT; i++)
		if (!process_is_cut(as->processes[i]))
			v[n++] = as->processes[i];
	return n;
}

static void take_current(struct setting *s, const struct assignment *as, uint32_t i,
    uint32_t n)
{
	const struct current *c = NULL;

	if (as->ncurrents == 1)
		c = &as->currents[0];
	else if (as->ncurrents == n)
		c = &as->currents[i];
	if (!c)
		return;
	s->polarity = c->polarity;
	s->amps = c->amps;
	s->current_pos = c->pos;
}

static void add_facts(struct arena *a, const struct assignment *as, struct settings *l)
{
	enum process v[PROCESS_COUNT];
	uint32_t np = welding_processes(as, v), n = as->nfillers ? as->nfillers : np;

	for (uint32_t i = 0; np && i < n; i++) {
		const struct filler *f = as->nfillers ? &as->fillers[i] : NULL;
		struct setting *s = ARENA_PUSH(a, l->v, l->n, l->cap);

		s->rod = rod_read(f ? f->class : (str){ 0 });
		s->process = process_of(v, np, i, n, &s->rod);
		s->filler_pos = f ? f->pos : assignment_fact_pos(as, STR("Process"));
		s->current_pos = assignment_fact_pos(as, STR("Current"));
		if (f) {
			s->class = f->class;
			s->dia_mm = f->dia.kind == QUANTITY_LENGTH ? f->dia.lo : 0;
		}
		take_current(s, as, i, n);
	}
}

/* "E7018 3/32 in" */
static bool take_rod(struct setting *s, str part)
{
	struct quantity_fault fault;
	struct quantity q;
	str rest = part, word;
	struct rod r;

	if (!str_word(&rest, &word))
		return false;
	r = rod_read(word);
	if (r.sort == ROD_UNKNOWN)
		return false;
	s->rod = r;
	s->class = word;
	if (quantity_parse(str_trim(rest), QUANTITY_LENGTH, METAL_NONE, &q,
	    &fault) == QUANTITY_OK)
		s->dia_mm = q.lo;
	return true;
}

/* "DC+ 80-100 A" */
static bool take_amps(struct setting *s, str part)
{
	struct quantity_fault fault;
	str rest = part, word;
	uint32_t value;

	if (!str_word(&rest, &word))
		return false;
	value = words_find(&words_polarity, word);
	if (value == NONE)
		return false;
	s->polarity = words_show(&words_polarity, value);
	quantity_parse(str_trim(rest), QUANTITY_CURRENT, METAL_NONE, &s->amps, &fault);
	return true;
}

static void add_pass(struct arena *a, const struct pass *p, struct settings *l)
{
	struct setting s = { .process = PROCESS_COUNT, .filler_pos = p->pos,
		.current_pos = p->pos };
	str rest = p->text, part;

	s.rod = rod_read((str){ 0 });
	while (str_next(&rest, ',', &part)) {
		uint32_t process = words_find(&words_process, str_trim(part));

		if (process != NONE)
			s.process = (enum process)process;
		else if (!take_rod(&s, part))
			take_amps(&s, part);
	}
	if (s.class.n || s.polarity.n)
		*ARENA_PUSH(a, l->v, l->n, l->cap) = s;
}

struct settings settings_of(struct arena *a, const struct assignment *as)
{
	struct settings l = { 0 };

	add_facts(a, as, &l);
	for (size_t i = 0; i < as->npasses; i++)
		add_pass(a, &as->passes[i], &l);
	return l;
}

bool setting_makes(const struct assignment *a, const struct setting *s,
    const struct weld *w)
{
	if (s->process == w->process || s->process == PROCESS_COUNT ||
	    w->process == PROCESS_COUNT)
		return true;
	/* Several processes on one joint, root and fill: its weld names the first. */
	for (size_t i = 1; i < a->nwelds; i++)
		if (a->welds[i].process != a->welds[0].process)
			return false;
	return true;
}
