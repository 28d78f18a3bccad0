/* R5: what a qualification test assesses was taught before; R12: the same process in an
 * easier position came before.
 *
 * Easier follows the ladder of job customs as a partial order: below 3G stand 1G, 2G and
 * fillets to 3F, never 4F. On pipe any plate is easier. The same position with backing
 * is easier than with an open root. Flat welds ask for nothing. */
#include "check/rule_practice.h"

#include "check/waive.h"

static bool teaches_skill(struct trade *t, uint32_t assignment, uint32_t skill)
{
	const struct assignment *a = &t->x.m->assignments[assignment];

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill == skill)
			return true;
	return false;
}

/* A misspelt teaching is reported under its word. */
static bool is_misspelt(struct trade *t, uint32_t skill)
{
	const struct firsts *f = &t->x.view->firsts[cell_of(skill, SKILL_INTRODUCED)];

	return f->assignment[STANDING_MISSPELT][0] != NONE;
}

static void tell_level(struct trade *t, uint32_t asker, const struct skill_at *s,
    struct first first, enum met met)
{
	const struct model *m = t->x.m;
	uint32_t cell = cell_of(s->skill, SKILL_INTRODUCED), later;
	str id = m->assignments[asker].id, skill = m->skills[s->skill].id;
	struct finding *d = rule_report(&t->x, FINDING_ASSESSED_TOO_EARLY, s->pos, asker,
	    "%.*s (%.*s) is a qualification test in %.*s, which %s",
	    STR_ARG(id), STR_ARG(rule_place(&t->x, asker)), STR_ARG(skill),
	    met == MET_OPTIONAL ? "only optional work teaches before"
	    : met == MET_BRANCH ? "only one branch of a choice teaches before"
	    : "nobody is taught before");

	d->skill = skill;
	later = met == MET_OPTIONAL || met == MET_BRANCH ? rule_named(first, met)
	    : view_first(t->x.view, cell, STANDING_COUNTS, t->x.view->units->of[asker]);
	if (later == NONE)
		finding_cause(t->x.f, d, "no other assignment teaches it");
	else
		finding_cause(t->x.f, d, "%.*s teaches it in %.*s",
		    STR_ARG(m->assignments[later].id),
		    STR_ARG(rule_place(&t->x, later)));
	finding_repair(t->x.f, d, "introduce or practice %.*s in work that everyone does "
	    "before %.*s", STR_ARG(skill), STR_ARG(id));
	if (met == MET_OPTIONAL || met == MET_BRANCH)
		d->level = LEVEL_WARNING;
}

static void judge_levels(struct trade *t, uint32_t asker)
{
	const struct assignment *a = &t->x.m->assignments[asker];

	for (size_t i = 0; i < a->nteaches; i++) {
		const struct skill_at *s = &a->teaches[i];
		struct first first;
		enum met met;

		if (s->skill == NONE || s->level != SKILL_ASSESSED ||
		    rule_brought(&t->x, s->skill, SKILL_INTRODUCED))
			continue;
		first = rule_taught(&t->x, s->skill, SKILL_INTRODUCED);
		met = rule_met(&t->x, first, asker);
		if (met != MET && !is_misspelt(t, s->skill) &&
		    !trade_need_tells(t, asker, s->skill, teaches_skill))
			tell_level(t, asker, s, first, met);
	}
}

void rule_practice_level(struct rule_context *x)
{
	const struct work_list *tests = &x->lists.kind[KIND_QUALIFICATION_TEST];
	struct trade t = { .x = *x };

	for (uint32_t i = 0; i < tests->n; i++)
		judge_levels(&t, tests->v[i]);
}

/* R12 */

#define AT(position) (UINT32_C(1) << POSITION_##position)
#define FLAT_FILLETS (AT(1F) | AT(1F_ROLLED) | AT(FLAT))
#define ALL_PLATE (FLAT_FILLETS | AT(2F) | AT(3F) | AT(4F) | AT(1G) | AT(2G) | AT(3G) | \
    AT(4G))

/* What is easier than a position, on plate and on pipe; nothing: nothing is asked. */
static const struct { enum position position; uint32_t plate, pipe; } plate_rows[] = {
	{ POSITION_2F, FLAT_FILLETS, 0 },
	{ POSITION_3F, FLAT_FILLETS | AT(2F), 0 },
	{ POSITION_4F, FLAT_FILLETS | AT(2F), 0 },
	{ POSITION_2G, FLAT_FILLETS | AT(2F) | AT(1G), 0 },
	{ POSITION_3G, FLAT_FILLETS | AT(2F) | AT(3F) | AT(1G) | AT(2G), 0 },
	{ POSITION_4G, FLAT_FILLETS | AT(2F) | AT(4F) | AT(1G) | AT(2G), 0 },
}, piped_rows[] = {
	{ POSITION_1G, ALL_PLATE, 0 }, { POSITION_1G_ROLLED, ALL_PLATE, 0 },
	{ POSITION_2G, ALL_PLATE, AT(1G) | AT(1G_ROLLED) },
	{ POSITION_5G, ALL_PLATE, AT(1G) | AT(1G_ROLLED) | AT(2G) },
	{ POSITION_6G, ALL_PLATE, AT(1G) | AT(1G_ROLLED) | AT(2G) | AT(5G) },
	{ POSITION_5F, ALL_PLATE, AT(1F_ROLLED) | AT(2F) },
};

/* Keys: craft, then plate or pipe, then with backing or not said so, then position. */
enum { FORM_KEYS = POSITION_COUNT * 2, CRAFT_KEYS = FORM_KEYS * 2,
	EASIER_KEYS = CRAFT_KEYS * CRAFT_COUNT };

struct easier {
	struct trade t;          /* first, for gives */
	uint32_t craft, plate, pipe; /* what the weld in question asks for */
	uint32_t backed;         /* key of the same position with backing, NONE */
};

static bool is_on_pipe(const struct weld *w)
{
	return w->joint == JOINT_PIPE_BUTT || w->joint == JOINT_BRANCH;
}

static uint32_t easier_key(uint32_t craft, bool pipe, bool backed, enum position p)
{
	return craft * CRAFT_KEYS + (uint32_t)pipe * FORM_KEYS +
	    (uint32_t)backed * POSITION_COUNT + (uint32_t)p;
}

static uint32_t gives_easier(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = &t->x.m->assignments[assignment];
	bool backed = root_of(a) == ROOT_BACKED;
	uint32_t n = 0;

	for (size_t i = 0; is_shop_work(a) && i < a->nwelds; i++) {
		const struct weld *w = &a->welds[i];
		uint32_t craft = craft_of(w->process);

		if (craft == CRAFT_COUNT || !weld_joins(w) ||
		    w->at.position == POSITION_COUNT)
			continue;
		n = practice_add_key(v, n, easier_key(craft, is_on_pipe(w), false,
		    w->at.position));
		if (backed)
			n = practice_add_key(v, n, easier_key(craft, is_on_pipe(w), true,
			    w->at.position));
	}
	return n;
}

/* What a weld asks for; false when it asks for nothing. */
static bool ask(struct easier *e, const struct assignment *a, const struct weld *w)
{
	size_t n = sizeof plate_rows / sizeof *plate_rows;

	_Static_assert(sizeof plate_rows == sizeof piped_rows, "one loop for both");
	e->craft = craft_of(w->process);
	e->plate = e->pipe = 0;
	for (size_t i = 0; i < n; i++) {
		if (is_on_pipe(w) && piped_rows[i].position == w->at.position) {
			e->plate = piped_rows[i].plate;
			e->pipe = piped_rows[i].pipe;
		} else if (!is_on_pipe(w) && plate_rows[i].position == w->at.position) {
			e->plate = plate_rows[i].plate;
		}
	}
	e->backed = root_of(a) == ROOT_OPEN
	    ? easier_key(e->craft, is_on_pipe(w), true, w->at.position) : NONE;
	return e->craft != CRAFT_COUNT && (e->plate || e->pipe);
}

/* Whether a key is among what the weld in question asks for. */
static bool is_easier(const struct easier *e, uint32_t key)
{
	uint32_t position = key % POSITION_COUNT;
	uint32_t bits = key / FORM_KEYS % 2 ? e->pipe : e->plate;

	return key == e->backed || (key / CRAFT_KEYS == e->craft &&
	    work_has(bits, position));
}

static bool gives_any(struct trade *t, uint32_t assignment, uint32_t key)
{
	(void)key;
	for (uint32_t i = t->gives.at[assignment]; i < t->gives.at[assignment + 1]; i++)
		if (is_easier((const struct easier *)t, t->gives.v[i]))
			return true;
	return false;
}

/* The best standing of all that would do, and who; enum met runs from good to bad. */
static enum met best_met(const struct easier *e, uint32_t asker, uint32_t *who)
{
	uint32_t from = e->craft * CRAFT_KEYS;
	enum met best = MET_NEVER;

	*who = NONE;
	for (uint32_t key = from; key < from + CRAFT_KEYS; key++) {
		enum met met;

		if (!is_easier(e, key))
			continue;
		if (e->t.brought && e->t.brought[key])
			return MET;
		met = rule_met(&e->t.x, e->t.firsts[key], asker);
		if (met < best || (met == best && met != MET_NEVER &&
		    rule_earlier(&e->t.x, rule_named(e->t.firsts[key], met), *who))) {
			best = met;
			*who = rule_named(e->t.firsts[key], met);
		}
	}
	return best;
}

static void tell_easier(struct easier *e, uint32_t asker, const struct weld *w,
    enum met met, uint32_t who)
{
	const struct assignment *all = e->t.x.m->assignments;
	struct findings *f = e->t.x.f;
	struct finding *d = rule_report(&e->t.x, FINDING_NO_EASIER_WORK, w->pos, asker,
	    "%.*s (%.*s) tests %.*s, and nothing easier in %s comes before",
	    STR_ARG(all[asker].id), STR_ARG(rule_place(&e->t.x, asker)),
	    STR_ARG(weld_say(&e->t.x, w)), craft_word(e->craft));

	if (met == MET_NEVER || who == asker)
		finding_cause(f, d, "no assignment welds so in an easier position or "
		    "with backing");
	else
		finding_cause(f, d, "%.*s is the first that is easier, in %.*s%s",
		    STR_ARG(all[who].id), STR_ARG(rule_place(&e->t.x, who)),
		    met == MET_OPTIONAL ? ", which is optional"
		    : met == MET_BRANCH ? ", one branch of a choice" : "");
	finding_repair(f, d, "put a coupon in an easier position before %.*s",
	    STR_ARG(all[asker].id));
	if (met == MET_OPTIONAL || met == MET_BRANCH)
		d->level = LEVEL_WARNING;
}

static void judge_easier(struct easier *e, uint32_t asker)
{
	const struct assignment *a = &e->t.x.m->assignments[asker];

	for (size_t i = 0; i < a->nwelds; i++) {
		uint32_t who;
		enum met met;

		if (!ask(e, a, &a->welds[i]))
			continue;
		met = best_met(e, asker, &who);
		if (met == MET || (met == MET_NEVER && e->t.brought_unknown) ||
		    trade_need_tells(&e->t, asker, 0, gives_any))
			continue;
		tell_easier(e, asker, &a->welds[i], met, who);
		return;
	}
}

void practice_easier(struct rule_context *x, const bool *told)
{
	static const struct trade_rule rule = { .name = FINDING_NO_EASIER_WORK,
		.nkeys = EASIER_KEYS, .gives = gives_easier };
	const struct work_list *tests = &x->lists.kind[KIND_QUALIFICATION_TEST];
	struct easier e = { 0 };

	if (!trade_begin(x, &rule, &e.t))
		return;
	e.t.waivers = waivers_new(x->scratch, x->m);
	e.t.apart = true;
	for (uint32_t i = 0; i < tests->n; i++)
		if (!told[tests->v[i]] &&
		    !trade_brings_own(&e.t, tests->v[i], SKILL_PRACTICED))
			judge_easier(&e, tests->v[i]);
}
