/* The work of one student: what, where, from which week to which. */
#include "check/load.h"

#include "check/rule_joint.h"

/* Students who share one place; more than any bench holds. */
enum { TEAM_MOST = 100, BENDS_MOST = 1000 };

/* The digits that s begins with, taken off it. */
static str take_digits(str *s)
{
	str digits = *s;
	size_t i = 0;

	while (i < s->n && s->p[i] >= '0' && s->p[i] <= '9')
		i++;
	digits.n = i;
	*s = str_sub(*s, i, s->n);
	return digits;
}

uint32_t team_size(const struct assignment *a)
{
	const struct plain_fact *fact = assignment_fact(a, STR("Team"));
	str rest = fact ? str_trim(fact->text) : (str){ 0 };
	uint32_t n;

	if (!str_to_u32(take_digits(&rest), &n) || n < 1 || n > TEAM_MOST)
		return 1;
	return n;
}

/* "2", "2 of C at 2G" and "2 at 5G" count; "2 in long" and a code do not. */
static uint32_t count_part(str part)
{
	str word;
	uint32_t n;

	part = str_trim(part);
	if (!str_to_u32(take_digits(&part), &n) || n > BENDS_MOST)
		return 0;
	if (part.n && part.p[0] != ' ')
		return 0;
	if (!str_word(&part, &word) || str_eq(word, STR("of")) || str_eq(word, STR("at")))
		return n;
	return 0;
}

uint32_t bends_asked(str text)
{
	uint32_t n = 0;
	str part;

	while (str_next(&text, ',', &part))
		n += count_part(part);
	return n > BENDS_MOST ? BENDS_MOST : n;
}

static uint32_t bends_of(const struct assignment *a)
{
	uint32_t n = 0;

	for (size_t i = 0; i < a->ncriteria; i++)
		if (says(a->criteria[i].name, "bend"))
			n += bends_asked(a->criteria[i].text);
	return n;
}

static void fill_stint(struct stint *s, const struct order *o, uint32_t w)
{
	const struct model *m = o->model;
	const struct place *p = &o->places[w];
	const struct assignment *a = &m->assignments[w];
	uint32_t week = p->week < 1 ? 1 : p->week;

	*s = (struct stint){ .assignment = w, .course = m->slots[p->slot].course,
		.station = a->station < m->nstations ? a->station : NONE,
		.first = week > m->weeks ? m->weeks : week,
		.hours = a->hours > 0 ? a->hours : 0,
		.team = a->kind == KIND_PROJECT ? team_size(a) : 1,
		.bends = bends_of(a), .optional = m->slots[p->slot].optional,
		.longest = true, .longest_of_all = true };
}

/* Branches of one choice lie side by side. Each is set against all others; a choice
 * has a handful. */
enum { BRANCHES_MOST = 100 };

static void mark_longest(struct stint *v, size_t n)
{
	if (n > BRANCHES_MOST)
		n = BRANCHES_MOST;
	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; k < n; k++) {
			bool beaten = v[k].hours > v[i].hours ||
			    (v[k].hours >= v[i].hours && k < i);

			v[i].longest_of_all &= !beaten;
			if (v[k].station == v[i].station)
				v[i].longest &= !beaten;
		}
}

static uint32_t group_of(const struct order *o, const struct stint *s)
{
	return o->model->slots[o->places[s->assignment].slot].group;
}

static void mark_choices(const struct order *o, struct stints *s)
{
	for (size_t i = 0, end; i < o->nwalk; i = end) {
		uint32_t group = group_of(o, &s->v[i]);

		for (end = i + 1; group && end < o->nwalk &&
		    group_of(o, &s->v[end]) == group; end++)
			continue;
		if (end - i > 1)
			mark_longest(&s->v[i], end - i);
	}
}

/* The starts met in one course when it is read from its end. */
struct starts {
	uint32_t week, next;     /* the present start, and the one after it */
};

/* Read backwards, each course knows its next start. */
static void find_ends(struct arena *a, const struct order *o, struct stints *s)
{
	const struct model *m = o->model;
	struct starts *of = arena_array(a, m->ncourses, sizeof *of);

	for (size_t i = 0; i < m->ncourses; i++)
		of[i] = (struct starts){ m->weeks + 1, m->weeks + 1 };
	for (size_t i = o->nwalk; i-- > 0;) {
		struct starts *c = &of[s->v[i].course];

		if (s->v[i].first < c->week)
			*c = (struct starts){ s->v[i].first, c->week };
		s->v[i].last = c->next - 1;
	}
}

struct stints *stints_new(struct arena *a, const struct order *o)
{
	const struct model *m = o->model;
	struct stints *s = arena_alloc(a, sizeof *s);
	uint32_t quarter = 0;

	s->m = m;
	s->v = arena_array(a, o->nwalk, sizeof *s->v);
	s->at = arena_array(a, m->nquarters + 2, sizeof *s->at);
	for (size_t i = 0; i < o->nwalk; i++) {
		fill_stint(&s->v[i], o, o->walk[i]);
		while (quarter < o->places[o->walk[i]].quarter)
			s->at[++quarter] = (uint32_t)i;
	}
	while (quarter <= m->nquarters)
		s->at[++quarter] = (uint32_t)o->nwalk;
	mark_choices(o, s);
	find_ends(a, o, s);
	return s;
}

struct course_load *course_loads(struct arena *a, const struct stints *s)
{
	struct course_load *v = arena_array(a, s->m->ncourses, sizeof *v);

	for (uint32_t i = 0; i < s->at[s->m->nquarters + 1]; i++) {
		const struct stint *p = &s->v[i];
		struct course_load *c = &v[p->course];

		c->lines++;
		if (p->longest_of_all)
			*(p->optional ? &c->optional_h : &c->must_h) += p->hours;
	}
	return v;
}

double quarter_hours(const struct stints *s, uint32_t quarter)
{
	double h = 0;

	for (uint32_t i = s->at[quarter]; i < s->at[quarter + 1]; i++)
		if (s->v[i].longest_of_all && !s->v[i].optional)
			h += s->v[i].hours;
	return h;
}

double place_hours(const struct stints *s, uint32_t quarter, uint32_t station, uint32_t n,
    bool optional)
{
	double h = 0;

	for (uint32_t i = s->at[quarter]; i < s->at[quarter + 1]; i++) {
		const struct stint *p = &s->v[i];

		if (p->station == station && p->longest && p->optional == optional)
			h += p->hours * ((n + p->team - 1) / p->team);
	}
	return h;
}
