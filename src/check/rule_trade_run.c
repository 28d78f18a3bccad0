/* One rule over one order: who asks in vain, put together by cause, then told. */
#include "check/rule_trade.h"

#include "check/waive.h"

#include <assert.h>

/* One assignment that asks for one key in vain. */
struct vain {
	uint32_t asker, key, next; /* next of the same cause, NONE */
};

/* All that ask in vain for what one assignment gives too late or not to all, or for one
 * key that nobody gives. */
struct cause {
	enum met met;
	uint32_t first, last;    /* in vains */
	bool told;               /* as an unmet need, or by another rule */
};

struct vains {
	struct vain *v;
	size_t n, cap;
	struct cause *causes;    /* in the order of their first askers */
	size_t ncauses, causes_cap;
	uint32_t *by_giver;      /* by assignment and way: index in causes + 1; lazily */
	uint32_t *by_key;        /* by key, for those that no assignment gives; the same */
};

enum { WAYS = MET_NEVER + 1 };   /* of enum met */
/* In struct trade.told: no safety work at all, or this plus the card's assignment. */
enum { TOLD_ALL = 1, TOLD_CARD = 2 };

static uint32_t keys_given(const struct rule_context *x, uint32_t assignment, uint32_t *v,
    uint32_t most)
{
	const struct trade *t = (const struct trade *)x;
	uint32_t from = t->gives.at[assignment], n = t->gives.at[assignment + 1] - from;

	assert(n <= most);
	for (uint32_t i = 0; i < n; i++)
		v[i] = t->gives.v[from + i];
	return n;
}

bool trade_gives(struct trade *t, uint32_t assignment, uint32_t key)
{
	for (uint32_t i = t->gives.at[assignment]; i < t->gives.at[assignment + 1]; i++)
		if (t->gives.v[i] == key)
			return true;
	return false;
}

/* Others borrow this state without a rule. */
static bool is_safety(const struct trade *t)
{
	return t->rule && finding_info(t->rule->name)->class == CLASS_SAFETY;
}

/* Safety cards are passed as assessed or not at all; for the rest, whatever level
 * students bring of what is assessed is theirs to build on. */
static bool brings(const struct trade *t, const struct skill_at *s)
{
	return s->skill != NONE && s->level == SKILL_ASSESSED &&
	    rule_brought(&t->x, s->skill, is_safety(t) ? SKILL_ASSESSED
	    : SKILL_INTRODUCED);
}

/* Students who bring all that an assignment teaches need not have done it. */
static bool brings_all(const struct trade *t, const struct assignment *a)
{
	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill == NONE ||
		    !rule_brought(&t->x, a->teaches[i].skill, a->teaches[i].level))
			return false;
	return a->nteaches && !is_safety(t);
}

static bool brings_anything(const struct trade *t)
{
	for (uint32_t s = 0; s < t->x.m->nskills; s++)
		if (rule_brought(&t->x, s, SKILL_INTRODUCED))
			return true;
	return false;
}

/* Which keys brought skills stand for, and whether some stand for nothing here. */
static void find_brought(struct trade *t)
{
	const struct model *m = t->x.m;
	bool *assessed;

	if (!brings_anything(t))
		return;
	t->brought = arena_array(t->x.scratch, t->nkeys, sizeof *t->brought);
	assessed = arena_array(t->x.scratch, m->nskills, sizeof *assessed);
	for (uint32_t w = 0; w < m->nassignments; w++) {
		const struct assignment *a = &m->assignments[w];
		bool had = brings_all(t, a);

		for (size_t i = 0; i < a->nteaches; i++) {
			had |= brings(t, &a->teaches[i]);
			if (a->teaches[i].skill != NONE &&
			    a->teaches[i].level == SKILL_ASSESSED)
				assessed[a->teaches[i].skill] = true;
		}
		for (uint32_t k = t->gives.at[w]; had && k < t->gives.at[w + 1]; k++)
			t->brought[t->gives.v[k]] = true;
	}
	for (uint32_t s = 0; s < m->nskills; s++)
		t->brought_unknown |= !assessed[s] &&
		    rule_brought(&t->x, s, SKILL_PRACTICED);
}

/* How a key stands before an asker who is himself the first to give it: not at all. */
static enum met how_met(const struct trade *t, uint32_t asker, uint32_t key)
{
	enum met met = rule_met(&t->x, t->firsts[key], asker);

	return met == MET_LATER && rule_named(t->firsts[key], met) == asker ? MET_NEVER
	    : met;
}

/* When students bring skills that no sheet here explains, nobody can say that a thing
 * was never done; safety is asked for all the same. */
static bool is_owed(const struct trade *t, uint32_t asker, uint32_t key)
{
	if (t->brought_unknown && !is_safety(t))
		return false;
	return t->rule->owed && t->rule->owed(t, asker, key);
}

/* By key, the first card of program.md that gives it and that the entry path under
 * judgement leaves out, plus 1. */
static void find_left_out(struct trade *t)
{
	const struct model *m = t->x.m;

	t->left_out = arena_array(t->x.scratch, t->nkeys, sizeof *t->left_out);
	for (size_t i = 0; t->x.o->entry && is_safety(t) && i < m->nslots; i++) {
		uint32_t w = m->slots[i].assignment;

		if (w == NONE || rule_is_placed(&t->x, w))
			continue;
		for (uint32_t k = t->gives.at[w]; k < t->gives.at[w + 1]; k++)
			if (!t->left_out[t->gives.v[k]])
				t->left_out[t->gives.v[k]] = w + 1;
	}
}

/* The card of a key that nobody gives on this path, or NONE. */
static uint32_t left_out(const struct trade *t, uint32_t key)
{
	return t->left_out[key] ? t->left_out[key] - 1 : NONE;
}

static struct cause *cause_of(const struct trade *t, struct vains *vs, uint32_t key,
    enum met met)
{
	struct arena *a = t->x.scratch;
	uint32_t *slot, giver;

	if (!vs->by_key) {
		vs->by_key = arena_array(a, t->nkeys, sizeof *vs->by_key);
		vs->by_giver = arena_array(a, t->x.m->nassignments * WAYS,
		    sizeof *vs->by_giver);
	}
	giver = met == MET_NEVER ? left_out(t, key) : rule_named(t->firsts[key], met);
	slot = giver == NONE ? &vs->by_key[key]
	    : &vs->by_giver[(size_t)giver * WAYS + met];
	if (!*slot) {
		*ARENA_PUSH(a, vs->causes, vs->ncauses, vs->causes_cap) =
		    (struct cause){ met, NONE, NONE, false };
		*slot = (uint32_t)vs->ncauses;
	}
	return &vs->causes[*slot - 1];
}

/* What a waiver accepts stands apart, so that it covers what it names and no more. */
static bool is_waived(const struct trade *t, uint32_t asker)
{
	const struct assignment *a = &t->x.m->assignments[asker];

	return !is_safety(t) &&
	    waivers_find(t->waivers, t->rule->name, a->pos, a->id, STR("")) != NONE;
}

static struct cause *cause_apart(const struct trade *t, struct vains *vs, uint32_t asker,
    enum met met)
{
	struct cause *last = vs->ncauses ? &vs->causes[vs->ncauses - 1] : NULL;

	if (last && last->met == met && vs->v[last->first].asker == asker)
		return last;
	*ARENA_PUSH(t->x.scratch, vs->causes, vs->ncauses, vs->causes_cap) =
	    (struct cause){ met, NONE, NONE, false };
	return &vs->causes[vs->ncauses - 1];
}

static void note_vain(const struct trade *t, struct vains *vs, struct vain v,
    enum met met)
{
	struct cause *c = is_waived(t, v.asker) ? cause_apart(t, vs, v.asker, met)
	    : cause_of(t, vs, v.key, met);
	uint32_t at = (uint32_t)vs->n;

	/* One assignment is listed once for a card, however many keys it asks of it. */
	if (c->last != NONE && vs->v[c->last].asker == v.asker)
		return;
	*ARENA_PUSH(t->x.scratch, vs->v, vs->n, vs->cap) = v;
	if (c->first == NONE)
		c->first = at;
	else
		vs->v[c->last].next = at;
	c->last = at;
}

static void find_vains(struct trade *t, struct vains *vs)
{
	for (size_t i = 0; i < t->x.o->nwalk; i++) {
		uint32_t asker = t->x.o->walk[i];

		for (uint32_t k = t->asks.at[asker]; k < t->asks.at[asker + 1]; k++) {
			uint32_t key = t->asks.v[k];
			enum met met = how_met(t, asker, key);

			if (met == MET || (t->brought && t->brought[key]) ||
			    (met == MET_NEVER && !is_owed(t, asker, key)))
				continue;
			note_vain(t, vs, (struct vain){ asker, key, NONE }, met);
		}
	}
}

void trade_index_teachers(struct trade *t)
{
	const struct graph *g = t->x.view->graph;
	uint32_t nskills = (uint32_t)t->x.m->nskills, n = g->teach_at[g->nassignments];
	uint32_t *at;

	if (t->teacher_at)
		return;
	at = arena_array(t->x.scratch, nskills + 2, sizeof *at);
	for (uint32_t i = 0; i < n; i++)
		at[cell_skill(g->teach[i]) + 2]++;
	for (uint32_t s = 0; s < nskills; s++)
		at[s + 2] += at[s + 1];
	t->teachers = arena_array(t->x.scratch, n, sizeof *t->teachers);
	for (uint32_t w = 0; w < g->nassignments; w++)
		for (uint32_t i = g->teach_at[w]; i < g->teach_at[w + 1]; i++)
			t->teachers[at[cell_skill(g->teach[i]) + 1]++] = w;
	t->teacher_at = at;
}

/* A skill has a handful of teachers; the bound keeps a hostile program linear. */
enum { TEACHERS_MOST = 64 };

/* Whether an assignment teaches the skill of a cell as far as the cell says. */
static bool teaches_cell(const struct graph *g, uint32_t assignment, uint32_t cell)
{
	for (uint32_t i = g->teach_at[assignment]; i < g->teach_at[assignment + 1]; i++)
		if (cell_skill(g->teach[i]) == cell_skill(cell) &&
		    cell_level(g->teach[i]) >= cell_level(cell))
			return true;
	return false;
}

/* Work that teaches a skill less far than it is needed would not meet the need wherever
 * it stood, so the need does not tell of it. */
static bool is_taught_by(struct trade *t, uint32_t cell, uint32_t key,
    bool (*giver)(struct trade *, uint32_t, uint32_t))
{
	uint32_t skill = cell_skill(cell), from, end;

	trade_index_teachers(t);
	from = t->teacher_at[skill];
	end = t->teacher_at[skill + 1];
	for (uint32_t i = from; i < end && i - from < TEACHERS_MOST; i++)
		if (teaches_cell(t->x.view->graph, t->teachers[i], cell) &&
		    giver(t, t->teachers[i], key))
			return true;
	return false;
}

bool trade_is_unmet(struct trade *t, uint32_t asker, uint32_t need)
{
	struct view *v = t->x.view;
	uint32_t unit = v->units->of[asker], met;

	if (!view_asks(v, need))
		return false;
	view_detail(t->x.scratch, v);
	met = view_meeting(v, need, unit, v->units->optional[unit]);
	return met == NONE || met > unit;
}

/* Whether a waiver of the unmet need covers it, so that nobody is told of it. */
static bool is_need_waived(const struct trade *t, uint32_t asker, uint32_t skill)
{
	static const enum finding_name needs[] = { FINDING_UNTAUGHT_SKILL,
		FINDING_OPTIONAL_TEACHER, FINDING_ONE_BRANCH_TEACHER };
	const struct model *m = t->x.m;

	for (size_t i = 0; (t->apart || is_safety(t)) && i < sizeof needs / sizeof *needs; i++)
		if (waivers_find(t->waivers, needs[i], m->assignments[asker].pos,
		    m->assignments[asker].id, m->skills[skill].id) != NONE)
			return true;
	return false;
}

bool trade_need_tells(struct trade *t, uint32_t asker, uint32_t key,
    bool (*giver)(struct trade *, uint32_t, uint32_t))
{
	const struct graph *g = t->x.view->graph;

	for (uint32_t n = g->need_at[asker]; n < g->need_at[asker + 1]; n++) {
		if (!trade_is_unmet(t, asker, n))
			continue;
		for (uint32_t i = g->alt_at[n]; i < g->alt_at[n + 1]; i++)
			if (g->alts[i] < g->ncells &&
			    !is_need_waived(t, asker, cell_skill(g->alts[i])) &&
			    is_taught_by(t, g->alts[i], key, giver))
				return true;
	}
	return false;
}

bool trade_brings_own(const struct trade *t, uint32_t asker, enum skill_level level)
{
	const struct assignment *a = &t->x.m->assignments[asker];

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill != NONE &&
		    a->teaches[i].level == SKILL_ASSESSED &&
		    rule_brought(&t->x, a->teaches[i].skill, level))
			return true;
	return false;
}

static void silence_told(struct trade *t, struct vains *vs)
{
	for (size_t c = 0; c < vs->ncauses; c++)
		for (uint32_t i = vs->causes[c].first; i != NONE && !vs->causes[c].told;
		    i = vs->v[i].next)
			vs->causes[c].told = trade_need_tells(t, vs->v[i].asker,
			    vs->v[i].key, trade_gives);
}

/* The words of the rule, with the word of the key in the place of @. */
static void say(struct buf *b, const struct trade *t, const char *words, uint32_t key)
{
	for (; *words; words++)
		if (*words == '@')
			buf_adds(b, t->rule->word(t, key));
		else
			buf_addc(b, *words);
}

static str id_of(const struct trade *t, uint32_t assignment)
{
	return t->x.m->assignments[assignment].id;
}

static str say_message(const struct trade *t, uint32_t key, enum met met)
{
	struct buf b = { .arena = t->x.scratch };

	say(&b, t, t->rule->does, key);
	if (met == MET_NEVER && left_out(t, key) != NONE) {
		say(&b, t, t->rule->late, key);
	} else if (met == MET_NEVER) {
		say(&b, t, t->rule->never, key);
	} else if (met == MET_LATER) {
		say(&b, t, t->rule->late, key);
	} else {
		buf_adds(&b, met == MET_OPTIONAL ? ", but before it only optional work "
		    : ", but before it only one branch of a choice ");
		say(&b, t, t->rule->gives_words, key);
	}
	return buf_str(&b);
}

/* Those who come later do the card, or bring what it assesses. */
static void repair_path(struct trade *t, struct finding *d, uint32_t giver)
{
	const struct assignment *a = &t->x.m->assignments[giver];
	struct buf with = { .arena = t->x.f->arena };

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].level == SKILL_ASSESSED)
			buf_addf(&with, "%s%.*s assessed", with.n ? ", " : "",
			    STR_ARG(a->teaches[i].written));
	finding_repair(t->x.f, d, "let them do %.*s before they start%s%.*s%s",
	    STR_ARG(a->id), with.n ? "; those who were signed off elsewhere bring it: add "
	    "to the path \"with " : "", STR_ARG(buf_str(&with)), with.n ? "\"" : "");
}

static void explain_left_out(struct trade *t, struct finding *d, uint32_t giver,
    uint32_t key)
{
	struct buf b = { .arena = t->x.f->arena };

	buf_addf(&b, "%.*s ", STR_ARG(id_of(t, giver)));
	say(&b, t, t->rule->gives_words, key);
	buf_adds(&b, ", and this path leaves it out");
	d->cause = buf_str(&b);
	repair_path(t, d, giver);
}

static void explain(struct trade *t, struct finding *d, uint32_t asker, uint32_t key,
    enum met met, bool alone)
{
	uint32_t giver = rule_named(t->firsts[key], met);
	struct buf b = { .arena = t->x.f->arena };

	if (met == MET_NEVER) {
		say(&b, t, t->rule->never_cause, key);
		d->cause = buf_str(&b);
		b = (struct buf){ .arena = t->x.f->arena };
		say(&b, t, t->rule->never_repair, key);
		d->repair = buf_str(&b);
		return;
	}
	buf_addf(&b, "%.*s ", STR_ARG(id_of(t, giver)));
	say(&b, t, t->rule->gives_words, key);
	buf_addf(&b, " in %.*s", STR_ARG(rule_place(&t->x, giver)));
	d->cause = buf_str(&b);
	if (met == MET_OPTIONAL)
		finding_repair(t->x.f, d, "take \"optional\" off the line of %.*s in "
		    "program.md", STR_ARG(id_of(t, giver)));
	else if (met == MET_BRANCH)
		finding_repair(t->x.f, d, "give it in every branch of that choice, or to "
		    "everyone before %.*s", STR_ARG(id_of(t, asker)));
	else if (t->x.o->entry && is_safety(t))
		repair_path(t, d, giver);
	else
		d->repair = rule_move_before(&t->x, d, giver, asker, alone ? MOVABLE_EITHER
		    : MOVABLE_FIRST);
}

static struct pos place_of(const struct trade *t, uint32_t asker)
{
	return assignment_fact_pos(&t->x.m->assignments[asker], str_of(t->rule->fact));
}

static void relate_rest(struct trade *t, struct finding *d, const struct vains *vs,
    const struct cause *c)
{
	for (uint32_t i = vs->v[c->first].next; i != NONE; i = vs->v[i].next) {
		uint32_t who = vs->v[i].asker;
		struct related *r = finding_relate(t->x.f, d, place_of(t, who));
		struct buf b = { .arena = t->x.f->arena };

		buf_addf(&b, "%.*s ", STR_ARG(id_of(t, who)));
		say(&b, t, t->rule->does, vs->v[i].key);
		buf_adds(&b, " too");
		r->assignment = id_of(t, who);
		r->label = buf_str(&b);
	}
}

/* Among the rules of safety: one who lacks all safety work, or is told of this very card
 * already, is not told again. The first rule is that of the shop sign-off. */
static bool is_told(const struct trade *t, uint32_t asker, uint32_t giver)
{
	uint32_t told = t->told ? t->told[asker] : 0;

	return told == TOLD_ALL || (giver != NONE && told == giver + TOLD_CARD);
}

static void note_told(struct trade *t, const struct vains *vs, const struct cause *c,
    uint32_t giver)
{
	bool shop = t->rule->name == FINDING_WORK_BEFORE_SHOP_SAFETY;
	bool all = shop && c->met == MET_NEVER;

	if (!t->told || (giver == NONE && !shop))
		return;
	for (uint32_t i = c->first; i != NONE; i = vs->v[i].next)
		t->told[vs->v[i].asker] = all ? TOLD_ALL : giver + TOLD_CARD;
}

/* Work in no course that gives what nothing else gives, NONE. */
static uint32_t unlisted_giver(struct trade *t, uint32_t key)
{
	for (uint32_t w = 0; !t->x.o->entry && w < t->x.m->nassignments; w++)
		if (!rule_is_placed(&t->x, w) && trade_gives(t, w, key))
			return w;
	return NONE;
}

/* So that settling lists the finding with the work in no course. */
static void note_unlisted(struct trade *t, struct finding *d, uint32_t asker,
    uint32_t key)
{
	uint32_t giver = is_safety(t) || is_waived(t, asker) ? NONE : unlisted_giver(t, key);
	struct standing_wrong *w;

	if (giver == NONE)
		return;
	w = arena_alloc(t->x.f->arena, sizeof *w);
	*w = (struct standing_wrong){ .mover = giver };
	d->wrong = w;
}

static void tell(struct trade *t, const struct vains *vs, const struct cause *c)
{
	uint32_t asker = vs->v[c->first].asker, key = vs->v[c->first].key;
	uint32_t giver = c->met == MET_NEVER ? left_out(t, key)
	    : rule_named(t->firsts[key], c->met);
	struct finding *d;

	if (is_told(t, asker, giver))
		return;
	note_told(t, vs, c, giver);
	d = rule_report(&t->x, t->rule->name, place_of(t, asker), asker,
	    "%.*s (%.*s) %.*s", STR_ARG(id_of(t, asker)),
	    STR_ARG(rule_place(&t->x, asker)), STR_ARG(say_message(t, key, c->met)));
	if (c->met == MET_NEVER && giver != NONE)
		explain_left_out(t, d, giver, key);
	else
		explain(t, d, asker, key, c->met, vs->v[c->first].next == NONE);
	if (c->met == MET_NEVER && giver == NONE)
		note_unlisted(t, d, asker, key);
	relate_rest(t, d, vs, c);
	if ((c->met == MET_OPTIONAL || c->met == MET_BRANCH) &&
	    d->level == LEVEL_ERROR && !is_safety(t))
		d->level = LEVEL_WARNING;
}

bool trade_is_shop_order(const struct rule_context *x)
{
	uint32_t n = 0;

	for (uint32_t k = 0; k < PROCESS_COUNT; k++)
		n += x->lists.process[k].n;
	for (uint32_t k = 0; k < JOINT_COUNT; k++)
		n += x->lists.joint[k].n;
	for (size_t k = 0; k < x->m->nmachines; k++)
		n += x->lists.machine[k].n;
	return n > 0;
}

bool trade_begin(const struct rule_context *x, const struct trade_rule *rule,
    struct trade *t)
{
	*t = (struct trade){ .x = *x, .rule = rule };
	t->nkeys = rule->nkeys ? rule->nkeys : (uint32_t)x->m->nmachines;
	if (!t->nkeys || !trade_is_shop_order(x))
		return false;
	trade_read_sheets(t);
	find_brought(t);
	find_left_out(t);
	t->firsts = rule_firsts(&t->x, t->nkeys, keys_given);
	return true;
}

void trade_run(struct rule_context *x, const struct trade_rule *rule, uint32_t *told)
{
	struct trade t;
	struct vains vs = { 0 };

	if (!trade_begin(x, rule, &t))
		return;
	t.told = told;
	t.waivers = waivers_new(x->scratch, x->m);
	find_vains(&t, &vs);
	silence_told(&t, &vs);
	for (size_t i = 0; i < vs.ncauses; i++)
		if (!vs.causes[i].told)
			tell(&t, &vs, &vs.causes[i]);
}
