/* How fast a program goes: C17 the first project, C18 new things at once, C19 skills
 * that lie unused.
 *
 * Positions count as hands feel them: 1F, 1G and rolled pipe are flat, 2F and 2G
 * horizontal. Optional work and choices count as done, so that these hints speak only
 * where nobody has met the thing before. */
#include "check/rule_practice.h"

enum stance {
	STANCE_FLAT, STANCE_HORIZONTAL, STANCE_VERTICAL, STANCE_OVERHEAD, STANCE_FIXED,
	STANCE_INCLINED, STANCE_COUNT
};

static const enum stance stances[POSITION_COUNT] = {
	[POSITION_FLAT] = STANCE_FLAT, [POSITION_1F] = STANCE_FLAT,
	[POSITION_1G] = STANCE_FLAT, [POSITION_1F_ROLLED] = STANCE_FLAT,
	[POSITION_1G_ROLLED] = STANCE_FLAT, [POSITION_2F] = STANCE_HORIZONTAL,
	[POSITION_2G] = STANCE_HORIZONTAL, [POSITION_3F] = STANCE_VERTICAL,
	[POSITION_3G] = STANCE_VERTICAL, [POSITION_4F] = STANCE_OVERHEAD,
	[POSITION_4G] = STANCE_OVERHEAD, [POSITION_5F] = STANCE_FIXED,
	[POSITION_5G] = STANCE_FIXED, [POSITION_6G] = STANCE_INCLINED,
};

static const char *const stance_words[] = { "flat", "horizontal", "vertical", "overhead",
	"fixed pipe", "inclined pipe" };
_Static_assert(sizeof stance_words / sizeof *stance_words == STANCE_COUNT, "one each");

/* Crafts, and stances in each. */
struct known {
	uint32_t crafts, stances[CRAFT_COUNT];
};

static void learn(struct known *k, const struct assignment *a)
{
	for (uint32_t i = 0; i < a->nprocesses; i++)
		if (a->processes[i] < PROCESS_COUNT)
			k->crafts |= UINT32_C(1) << craft_of(a->processes[i]);
	for (size_t i = 0; i < a->nwelds; i++) {
		enum craft craft = craft_of(a->welds[i].process);

		if (craft == CRAFT_COUNT)
			continue;
		k->crafts |= UINT32_C(1) << craft;
		if (a->welds[i].at.position < POSITION_COUNT)
			k->stances[craft] |=
			    UINT32_C(1) << stances[a->welds[i].at.position];
	}
}

static void learn_all(struct known *k, const struct known *more)
{
	k->crafts |= more->crafts;
	for (size_t c = 0; c < CRAFT_COUNT; c++)
		k->stances[c] |= more->stances[c];
}

/* What students bring counts as met, by the work that would have assessed it. */
static void learn_brought(struct known *k, const struct trade *t)
{
	const struct model *m = t->x.m;
	bool any = false;

	for (uint32_t s = 0; s < m->nskills; s++)
		any |= rule_brought(&t->x, s, SKILL_INTRODUCED);
	for (uint32_t w = 0; any && w < m->nassignments; w++)
		if (trade_brings_own(t, w, SKILL_INTRODUCED))
			learn(k, &m->assignments[w]);
}

static uint32_t count_bits(uint32_t bits)
{
	uint32_t n = 0;

	for (; bits; bits &= bits - 1)
		n++;
	return n;
}

static void say_list(struct buf *b, uint32_t bits, bool crafts)
{
	uint32_t v[32], n = put_bits(bits, v);

	for (uint32_t i = 0; i < n; i++)
		buf_addf(b, "%s%s", !i ? "" : i + 1 == n ? " and " : ", ",
		    crafts ? craft_word(v[i]) : stance_words[v[i]]);
}

/* C18 */

static void tell_step(struct rule_context *x, uint32_t asker, str what)
{
	const struct assignment *a = &x->m->assignments[asker];
	struct finding *d = rule_report(x, FINDING_TOO_MUCH_NEW, assignment_fact_pos(a,
	    STR("Position")), asker, "%.*s (%.*s) brings more than one new thing at once"
	    ": %.*s", STR_ARG(a->id), STR_ARG(rule_place(x, asker)), STR_ARG(what));

	finding_cause(x->f, d, "no earlier work has any of them");
	finding_repair(x->f, d, "split %.*s, or list \"%s\" under Off in customs.md with "
	    "the reason", STR_ARG(a->id), finding_info(FINDING_TOO_MUCH_NEW)->custom);
}

static void judge_step(struct rule_context *x, const struct known *known, uint32_t asker)
{
	struct buf b = { .arena = x->scratch };
	struct known now = { 0 };
	uint32_t crafts;

	if (!is_shop_work(&x->m->assignments[asker]))
		return;
	learn(&now, &x->m->assignments[asker]);
	crafts = now.crafts & ~known->crafts;
	if (count_bits(crafts) > 1)
		say_list(&b, crafts, true);
	for (uint32_t c = 0; c < CRAFT_COUNT; c++) {
		uint32_t fresh = now.stances[c] & ~known->stances[c];

		if (count_bits(fresh) < 2)
			continue;
		buf_adds(&b, b.n ? "; " : "");
		say_list(&b, fresh, false);
		buf_addf(&b, " in %s", craft_word(c));
	}
	if (b.n)
		tell_step(x, asker, buf_str(&b));
}

static void judge_steps(struct trade *t)
{
	const struct units *us = t->x.view->units;
	struct known known = { 0 };

	if (rule_is_off(&t->x, FINDING_TOO_MUCH_NEW))
		return;
	learn_brought(&known, t);
	for (uint32_t u = 0; u < us->n; u++) {
		struct known more = { 0 };

		for (uint32_t i = us->at[u]; i < us->at[u + 1]; i++) {
			judge_step(&t->x, &known, t->x.o->walk[i]);
			learn(&more, &t->x.m->assignments[t->x.o->walk[i]]);
		}
		learn_all(&known, &more);
	}
}

/* C17 */

enum { JOINTS_BEFORE_PROJECT = 2 };      /* common practice, no source */

/* Joints welded where something is assessed. */
static uint32_t assessed_joints(const struct assignment *a)
{
	uint32_t n = 0;
	bool assesses = false;

	for (size_t i = 0; i < a->nteaches; i++)
		assesses |= a->teaches[i].level == SKILL_ASSESSED;
	for (size_t i = 0; assesses && is_shop_work(a) && i < a->nwelds; i++)
		n += weld_joins(&a->welds[i]);
	return n;
}

static bool assesses_joint(struct trade *t, uint32_t assignment, uint32_t key)
{
	(void)key;
	return assessed_joints(&t->x.m->assignments[assignment]) > 0;
}

static bool joins(const struct assignment *a)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (weld_joins(&a->welds[i]))
			return true;
	return false;
}

static void tell_project(struct rule_context *x, uint32_t asker, uint32_t before)
{
	static const char *const counts[] = { "no", "one" };
	const struct assignment *a = &x->m->assignments[asker];
	struct finding *d = rule_report(x, FINDING_PROJECT_TOO_EARLY, a->pos, asker,
	    "%.*s (%.*s) is a project after %s assessed joint", STR_ARG(a->id),
	    STR_ARG(rule_place(x, asker)), counts[before]);

	finding_cause(x->f, d, "two joints are commonly assessed before the first build");
	finding_repair(x->f, d, "move %.*s after the first assessed joints, or list "
	    "\"%s\" under Off in customs.md with the reason", STR_ARG(a->id),
	    finding_info(FINDING_PROJECT_TOO_EARLY)->custom);
}

/* Only the order is judged: a program that assesses fewer joints leaves them out. */
static void judge_project(struct trade *t)
{
	const struct order *o = t->x.o;
	const struct assignment *all = t->x.m->assignments;
	uint32_t before = 0, total = 0, asker = NONE;

	for (size_t i = 0; i < o->nwalk; i++) {
		const struct assignment *a = &all[o->walk[i]];

		if (asker == NONE && a->kind == KIND_PROJECT && joins(a)) {
			asker = o->walk[i];
			before = total;
		} else if (a->kind != KIND_PROJECT) {
			total += assessed_joints(a);
		}
	}
	if (asker == NONE || before >= JOINTS_BEFORE_PROJECT ||
	    total < JOINTS_BEFORE_PROJECT || trade_brings_own(t, asker, SKILL_INTRODUCED))
		return;
	for (uint32_t s = 0; s < t->x.m->nskills; s++)
		if (rule_brought(&t->x, s, SKILL_ASSESSED))
			return;
	if (!trade_need_tells(t, asker, 0, assesses_joint))
		tell_project(&t->x, asker, before);
}

/* C19 */

/* A skill may lie for one whole quarter and, from one quarter into the next but one, a
 * little longer; two whole quarters are about the six months after which
 * qualification lapses (AWS D1.1 clause 6, ASME IX QW-322, from memory). */
enum { QUARTERS_UNUSED = 2 };

static void tell_cold(struct rule_context *x, uint32_t asker, const struct skill_at *s,
    uint32_t last)
{
	const struct assignment *a = &x->m->assignments[asker];
	str skill = x->m->skills[s->skill].id;
	struct finding *d = rule_report(x, FINDING_SKILL_GONE_COLD, s->pos, asker,
	    "%.*s (%.*s) assesses %.*s, unused since %.*s", STR_ARG(a->id),
	    STR_ARG(rule_place(x, asker)), STR_ARG(skill), STR_ARG(rule_place(x, last)));

	d->skill = skill;
	finding_cause(x->f, d, "%.*s is the last before it to need or teach it",
	    STR_ARG(x->m->assignments[last].id));
	finding_repair(x->f, d, "put a refresher before %.*s, or list \"%s\" under Off "
	    "in customs.md with the reason", STR_ARG(a->id),
	    finding_info(FINDING_SKILL_GONE_COLD)->custom);
}

static void use_skills(const struct assignment *a, uint32_t assignment, uint32_t *last)
{
	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill != NONE)
			last[a->teaches[i].skill] = assignment;
	for (size_t i = 0; i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n; k++)
			if (a->needs[i].v[k].skill != NONE)
				last[a->needs[i].v[k].skill] = assignment;
}

static void judge_cold(struct trade *t)
{
	const struct order *o = t->x.o;
	uint32_t *last = arena_array(t->x.scratch, t->x.m->nskills, sizeof *last);

	for (size_t s = 0; s < t->x.m->nskills; s++)
		last[s] = NONE;
	for (size_t i = 0; i < o->nwalk; i++) {
		const struct assignment *a = &t->x.m->assignments[o->walk[i]];
		uint32_t turn = o->places[o->walk[i]].rank_quarter;

		for (size_t k = 0; a->kind != KIND_SAFETY && k < a->nteaches; k++) {
			const struct skill_at *s = &a->teaches[k];
			uint32_t before = s->skill == NONE ? NONE : last[s->skill];

			if (before != NONE && s->level == SKILL_ASSESSED &&
			    turn > o->places[before].rank_quarter + QUARTERS_UNUSED)
				tell_cold(&t->x, o->walk[i], s, before);
		}
		use_skills(a, o->walk[i], last);
	}
}

void rule_practice_pace(struct rule_context *x)
{
	struct trade t = { .x = *x };

	if (!trade_is_shop_order(x))
		return;
	judge_steps(&t);
	judge_project(&t);
	if (!rule_is_off(x, FINDING_SKILL_GONE_COLD))
		judge_cold(&t);
}
