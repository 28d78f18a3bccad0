/* R1 to R4: sign-offs before the work that can hurt.
 *
 * The shop sign-off is any safety card that names no process and needs no skill of such
 * a card; a program without one is served by any safety card. The card of a process is a safety card that names it or
 * one of its sort by fact or title, or that assesses a skill which work in it needs; only when there is
 * none, one from which such a skill is reached through the needs of others. The card
 * for hot work is known by its words (title, acceptance, the titles of what it
 * assesses); without the words, it is any card whose skill cutting work needs. A
 * machine is signed off by a safety card that lists it. */
#include "check/rule_trade.h"

#include "model/words.h"

/* What a card is for: arcs, fuel gas, plasma, gouging. */
enum hazard { HAZARD_ARC, HAZARD_GAS, HAZARD_PLASMA, HAZARD_GOUGE, HAZARDS };

static enum hazard hazard_of(enum process p)
{
	static const enum hazard of[] = { HAZARD_ARC, HAZARD_ARC, HAZARD_ARC, HAZARD_ARC,
		HAZARD_GAS, HAZARD_GAS, HAZARD_GAS, HAZARD_PLASMA, HAZARD_GOUGE };

	_Static_assert(sizeof of / sizeof *of == CRAFT_COUNT, "one a craft");
	return of[craft_of(p)];
}

static uint32_t hazards_of(const struct trade *t, uint32_t assignment)
{
	uint32_t bits = 0;

	for (uint32_t p = 0; p < PROCESS_COUNT; p++)
		if (work_has(t->x.work[assignment].processes, p))
			bits |= UINT32_C(1) << hazard_of(p);
	return bits;
}

static uint32_t gives_marks(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(t->marks[assignment], v);
}

/* R1 */

static bool needs_marked(const struct assignment *a, const bool *taught)
{
	for (size_t i = 0; i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n; k++)
			if (a->needs[i].v[k].skill != NONE && taught[a->needs[i].v[k].skill])
				return true;
	return false;
}

/* A card that needs what another one teaches comes after it and is none for the shop,
 * unless that is said of all of them. */
static void drop_later_cards(struct trade *t)
{
	const struct model *m = t->x.m;
	bool *taught = arena_array(t->x.scratch, m->nskills, sizeof *taught);
	bool any = false;

	for (uint32_t w = 0; w < m->nassignments; w++)
		for (size_t i = 0; t->marks[w] && i < m->assignments[w].nteaches; i++)
			if (m->assignments[w].teaches[i].skill != NONE)
				taught[m->assignments[w].teaches[i].skill] = true;
	for (uint32_t w = 0; w < m->nassignments; w++)
		any |= t->marks[w] && !needs_marked(&m->assignments[w], taught);
	for (uint32_t w = 0; any && w < m->nassignments; w++)
		if (needs_marked(&m->assignments[w], taught))
			t->marks[w] = 0;
}

static void prepare_shop(struct trade *t)
{
	const struct model *m = t->x.m;
	bool general = false;

	for (uint32_t w = 0; w < m->nassignments; w++)
		general |= m->assignments[w].kind == KIND_SAFETY &&
		    !t->x.work[w].processes;
	for (uint32_t w = 0; w < m->nassignments; w++)
		t->marks[w] = m->assignments[w].kind == KIND_SAFETY &&
		    (!general || !t->x.work[w].processes);
	drop_later_cards(t);
}

static uint32_t asks_shop(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct work *w = &t->x.work[assignment];
	const struct assignment *a = &t->x.m->assignments[assignment];
	bool works = is_shop_work(a) ? w->processes || w->nmachines
	    : a->kind == KIND_SAFETY && w->processes;

	return put_bits(works && !t->marks[assignment], v);
}

static bool always_owed(const struct trade *t, uint32_t asker, uint32_t key)
{
	(void)t;
	(void)asker;
	(void)key;
	return true;
}

/* R2 */

/* Notes in by_skill which hazards the work has that needs each skill. */
static void note_needs(const struct assignment *a, uint32_t bits, uint32_t *by_skill)
{
	for (size_t i = 0; i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n; k++)
			if (a->needs[i].v[k].skill != NONE)
				by_skill[a->needs[i].v[k].skill] |= bits;
}

/* Marks the cards that assess a skill noted in by_skill, those that sign off machines only
 * if `machines`; returns what is marked. */
static uint32_t mark_cards(struct trade *t, const uint32_t *by_skill, bool machines)
{
	const struct model *m = t->x.m;
	uint32_t all = 0;

	for (uint32_t w = 0; w < m->nassignments; w++) {
		const struct assignment *a = &m->assignments[w];

		for (size_t i = 0; a->kind == KIND_SAFETY && i < a->nteaches &&
		    (machines || !t->x.work[w].nmachines); i++)
			if (a->teaches[i].skill != NONE &&
			    a->teaches[i].level == SKILL_ASSESSED)
				t->marks[w] |= by_skill[a->teaches[i].skill];
		all |= t->marks[w];
	}
	return all;
}

/* Spreads the bits of work in `missing` hazards from needs to what their teachers need
 * in turn: a list of skills to look at, each at most once a bit. */
struct spread {
	uint32_t *by_skill, *waiting;
	size_t n, cap;
	uint32_t *at, *teachers; /* by skill, as in struct trade */
};

static void push_needs(struct trade *t, struct spread *s, uint32_t assignment,
    uint32_t bits)
{
	const struct assignment *a = &t->x.m->assignments[assignment];

	for (size_t i = 0; i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n; k++) {
			uint32_t skill = a->needs[i].v[k].skill;

			if (skill == NONE || !(bits & ~s->by_skill[skill]))
				continue;
			s->by_skill[skill] |= bits;
			*ARENA_PUSH(t->x.scratch, s->waiting, s->n, s->cap) = skill;
		}
}

static void spread_needs(struct trade *t, uint32_t *by_skill, uint32_t missing)
{
	struct spread s = { .by_skill = by_skill };

	trade_index_teachers(t);
	for (uint32_t w = 0; w < t->x.m->nassignments; w++)
		if (is_shop_work(&t->x.m->assignments[w]))
			push_needs(t, &s, w, hazards_of(t, w) & missing);
	while (s.n) {
		uint32_t skill = s.waiting[--s.n];

		for (uint32_t i = t->teacher_at[skill]; i < t->teacher_at[skill + 1]; i++)
			push_needs(t, &s, t->teachers[i], by_skill[skill]);
	}
}

/* The same for some hazards alone, cards for machines among them. */
static uint32_t mark_missing(struct trade *t, const uint32_t *by_skill, uint32_t missing)
{
	uint32_t nskills = (uint32_t)t->x.m->nskills;
	uint32_t *only = arena_array(t->x.scratch, nskills, sizeof *only);

	for (uint32_t s = 0; s < nskills; s++)
		only[s] = by_skill[s] & missing;
	return mark_cards(t, only, true);
}

/* What the title of a card, or of a skill that it assesses, says that it is for. */
static uint32_t hazards_said(str title)
{
	static const char *const words[HAZARDS][6] = {
		[HAZARD_ARC] = { "arc", "arcs" },
		[HAZARD_GAS] = { "oxy-fuel", "oxyfuel", "fuel gas", "acetylene", "torch" },
		[HAZARD_PLASMA] = { "plasma" },
		[HAZARD_GOUGE] = { "gouging" },
	};
	static const char *const other_arcs[] = { "plasma arc", "carbon arc", "carbon-arc",
		"air arc", NULL };
	uint32_t bits = 0;

	for (uint32_t k = 0; k < HAZARDS; k++)
		if (says_any(title, words[k]) &&
		    (k != HAZARD_ARC || !says_any(title, other_arcs)))
			bits |= UINT32_C(1) << k;
	return bits;
}

/* What a card is for by its facts and by its words. */
static uint32_t card_hazards(const struct trade *t, uint32_t assignment)
{
	const struct model *m = t->x.m;
	const struct assignment *a = &m->assignments[assignment];
	uint32_t bits = hazards_of(t, assignment) | hazards_said(a->title);

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill != NONE && a->teaches[i].level == SKILL_ASSESSED)
			bits |= hazards_said(m->skills[a->teaches[i].skill].title);
	return bits;
}

static void prepare_process(struct trade *t)
{
	const struct model *m = t->x.m;
	uint32_t *by_skill = arena_array(t->x.scratch, m->nskills, sizeof *by_skill);
	uint32_t all = 0, missing;

	for (uint32_t w = 0; w < m->nassignments; w++)
		if (m->assignments[w].kind == KIND_SAFETY) {
			t->marks[w] = card_hazards(t, w);
		} else if (is_shop_work(&m->assignments[w])) {
			all |= hazards_of(t, w);
			note_needs(&m->assignments[w], hazards_of(t, w), by_skill);
		}
	/* A card for machines counts where there is no other: what needs the shear as well
	 * as an arc needs its skill too. */
	missing = all & ~mark_cards(t, by_skill, false);
	if (missing)
		missing = all & ~mark_missing(t, by_skill, missing);
	if (!missing)
		return;
	by_skill = arena_array(t->x.scratch, m->nskills, sizeof *by_skill);
	spread_needs(t, by_skill, missing);
	mark_cards(t, by_skill, true);
}

static uint32_t asks_process(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return is_shop_work(&t->x.m->assignments[assignment])
	    ? put_bits(hazards_of(t, assignment), v) : 0;
}

static const char *hazard_word(const struct trade *t, uint32_t key)
{
	static const char *const words[] = { "an arc", "fuel gas", "plasma", "gouging" };

	(void)t;
	_Static_assert(sizeof words / sizeof *words == HAZARDS, "one a hazard");
	return words[key];
}

/* R3 */

static uint32_t put_machines(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct work *w = &t->x.work[assignment];
	uint32_t n = 0;

	for (; n < w->nmachines && n < RULE_KEYS_MOST; n++)
		v[n] = w->machines[n];
	return n;
}

static uint32_t gives_machines(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return t->x.m->assignments[assignment].kind == KIND_SAFETY
	    ? put_machines(t, assignment, v) : 0;
}

static uint32_t asks_machines(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return is_shop_work(&t->x.m->assignments[assignment])
	    ? put_machines(t, assignment, v) : 0;
}

/* Machines that always want a sign-off: those whose point of operation is guarded by
 * 29 CFR 1910.212(a)(3)(iv) and wheels under 1910.215 (from memory), with the drill and
 * the ironworker by common practice, no source. Others are asked for in the right order
 * only where some card lists them. */
static bool machine_owed(const struct trade *t, uint32_t asker, uint32_t key)
{
	static const char *const guarded[] = { "grinder", "shear", "brake", "press brake",
		"punch", "ironworker", "iron worker", "notcher", "roll", "saw",
		"bandsaw", "drill", "lathe", "mill", NULL };

	(void)asker;
	return says_any(t->x.m->machines[key].name, guarded);
}

static const char *machine_word(const struct trade *t, uint32_t key)
{
	str name = t->x.m->machines[key].name;

	return arena_copy(t->x.scratch, name.p, name.n);
}

/* R4 */

static const char *const hot_words[] = { "hot work", "hot-work", "fire watch",
	"fire-watch", NULL };

static bool is_hot_card(const struct model *m, const struct assignment *a)
{
	if (says_any(a->title, hot_words) || acceptance_says(a, hot_words))
		return true;
	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill != NONE &&
		    a->teaches[i].level == SKILL_ASSESSED &&
		    says_any(m->skills[a->teaches[i].skill].title, hot_words))
			return true;
	return false;
}

/* Cutting and gouging anywhere; any flame or arc outside the booths. */
static bool is_hot_work(const struct trade *t, uint32_t assignment)
{
	const struct assignment *a = &t->x.m->assignments[assignment];
	uint32_t processes = t->x.work[assignment].processes;

	return is_shop_work(a) && (work_has(processes, PROCESS_OFC) ||
	    work_has(processes, PROCESS_PAC) || work_has(processes, PROCESS_CAC_A) ||
	    (processes && (fact_is(a, "Place", "open floor") ||
	    fact_is(a, "Place", "confined"))));
}

static void prepare_hot(struct trade *t)
{
	const struct model *m = t->x.m;
	uint32_t *by_skill;
	bool found = false;

	for (uint32_t w = 0; w < m->nassignments; w++) {
		t->marks[w] = m->assignments[w].kind == KIND_SAFETY &&
		    is_hot_card(m, &m->assignments[w]);
		found |= t->marks[w];
	}
	if (found)
		return;
	by_skill = arena_array(t->x.scratch, m->nskills, sizeof *by_skill);
	for (uint32_t w = 0; w < m->nassignments; w++)
		if (is_hot_work(t, w))
			note_needs(&m->assignments[w], 1, by_skill);
	mark_cards(t, by_skill, true);
}

static uint32_t asks_hot(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(is_hot_work(t, assignment), v);
}

static const struct trade_rule rules[] = {
	{ .name = FINDING_WORK_BEFORE_SHOP_SAFETY, .fact = "Process", .nkeys = 1,
	    .prepare = prepare_shop, .gives = gives_marks, .asks = asks_shop,
	    .owed = always_owed, .does = "works in the shop",
	    .late = " before the shop's safety sign-off",
	    .never = ", and no safety work comes before it",
	    .gives_words = "signs off safety in the shop",
	    .never_cause = "no assignment of kind safety gives it before",
	    .never_repair = "put a safety assignment first in program.md" },
	{ .name = FINDING_PROCESS_BEFORE_CARD, .fact = "Process", .nkeys = HAZARDS,
	    .prepare = prepare_process, .gives = gives_marks, .asks = asks_process,
	    .owed = always_owed, .word = hazard_word, .does = "works with @",
	    .late = " before the safety card for it",
	    .never = ", and no safety card for it comes before",
	    .gives_words = "signs off safety with @",
	    .never_cause = "no safety assignment names such a process among its facts "
	    "or in its title, or assesses a skill that such work needs",
	    .never_repair = "name the process on the safety assignment that covers it" },
	{ .name = FINDING_MACHINE_BEFORE_SIGN_OFF, .fact = "Machines", .nkeys = 0,
	    .gives = gives_machines, .asks = asks_machines, .owed = machine_owed,
	    .word = machine_word, .does = "uses the @", .late = " before its sign-off",
	    .never = ", which no safety card signs off",
	    .gives_words = "signs off the @",
	    .never_cause = "no assignment of kind safety lists it under Machines",
	    .never_repair = "list it under Machines of the safety assignment that signs "
	    "it off" },
	{ .name = FINDING_HOT_WORK_BEFORE_CARD, .fact = "Process", .nkeys = 1,
	    .prepare = prepare_hot, .gives = gives_marks, .asks = asks_hot,
	    .owed = always_owed, .does = "does hot work",
	    .late = " before the hot-work card",
	    .never = ", and no hot-work card comes before it",
	    .gives_words = "gives the hot-work card",
	    .never_cause = "no safety assignment speaks of hot work or a fire watch in "
	    "its title or acceptance",
	    .never_repair = "say hot work or fire watch in the acceptance of the safety "
	    "assignment that covers it" },
};

void rule_trade_safety(struct rule_context *x)
{
	uint32_t *told = arena_array(x->scratch, x->m->nassignments, sizeof *told);

	/* Where skills.md lists nothing, that is told, and which card is for what is not
	 * known. */
	for (size_t i = 0; x->m->nskills && i < sizeof rules / sizeof *rules; i++)
		trade_run(x, &rules[i], told);
}
