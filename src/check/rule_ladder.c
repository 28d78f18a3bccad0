/* The rungs, and who takes a higher one before a lower one. */
#include "check/rule_ladder.h"

struct rung {
	enum finding_name name;
	enum climb low, high;
	const char *low_words, *high_words;
	const char *fact;        /* where the finding points */
};

/* Rungs of one name stand together, the widest first: of those that fail in one craft
 * only the first is told. job.md keeps 3F before 4F a habit, never a rule. */
static const struct rung rungs[] = {
	{ FINDING_HORIZONTAL_BEFORE_FLAT, STEP_1F, STEP_2F, "flat ones",
	    "horizontal fillets", "Position" },
	{ FINDING_VERTICAL_BEFORE_HORIZONTAL, STEP_2F, STEP_3F, "horizontal ones",
	    "vertical fillets", "Position" },
	{ FINDING_OVERHEAD_BEFORE_HORIZONTAL, STEP_2F, STEP_4F, "horizontal ones",
	    "overhead fillets", "Position" },
	{ FINDING_OVERHEAD_BEFORE_VERTICAL, STEP_3F, STEP_4F, "vertical ones",
	    "overhead fillets", "Position" },
	{ FINDING_GROOVE_BEFORE_FLAT_GROOVE, STEP_1G, STEP_GROOVE_RAISED, "flat ones",
	    "grooves out of the flat position", "Position" },
	{ FINDING_GROOVE_BEFORE_ITS_FILLET, STEP_3F_UP, STEP_3G_UP,
	    "vertical fillets uphill", "vertical grooves uphill", "Position" },
	{ FINDING_GROOVE_BEFORE_ITS_FILLET, STEP_3F_DOWN, STEP_3G_DOWN,
	    "vertical fillets downhill", "vertical grooves downhill", "Position" },
	{ FINDING_GROOVE_BEFORE_ITS_FILLET, STEP_4F, STEP_4G, "overhead fillets",
	    "overhead grooves", "Position" },
	{ FINDING_GROOVE_BEFORE_FILLET, STEP_FILLET, STEP_GROOVE, "fillets", "grooves",
	    "Joint" },
	{ FINDING_PIPE_BEFORE_PLATE, STEP_PLATE, STEP_PIPE, "plate", "pipe", "Joint" },
	{ FINDING_PIPE_BEFORE_PLATE, STEP_2G, STEP_PIPE_2, "plate in 2G", "pipe in 2G",
	    "Position" },
	{ FINDING_PIPE_BEFORE_PLATE, STEP_3G_UP, STEP_PIPE_5_UP, "plate in 3G up",
	    "pipe in 5G up", "Position" },
	{ FINDING_PIPE_BEFORE_PLATE, STEP_3G_DOWN, STEP_PIPE_5_DOWN, "plate in 3G down",
	    "pipe in 5G down", "Position" },
	{ FINDING_PIPE_BEFORE_PLATE, STEP_4G, STEP_PIPE_5, "plate in 4G", "pipe in 5G",
	    "Position" },
	{ FINDING_PIPE_5G_TOO_EARLY, STEP_PIPE_1_OR_2, STEP_PIPE_5, "1G or 2G",
	    "pipe in 5G", "Position" },
	{ FINDING_PIPE_6G_TOO_EARLY, STEP_PIPE_2, STEP_PIPE_6, "2G", "pipe in 6G",
	    "Position" },
	{ FINDING_PIPE_6G_TOO_EARLY, STEP_PIPE_5_UP, STEP_PIPE_6_UP, "5G up",
	    "pipe in 6G up", "Position" },
	{ FINDING_PIPE_6G_TOO_EARLY, STEP_PIPE_5_DOWN, STEP_PIPE_6_DOWN, "5G down",
	    "pipe in 6G down", "Position" },
	{ FINDING_TUNGSTEN_BEFORE_OXY_FUEL, STEP_USES_GAS_WELD, STEP_USES_TUNGSTEN,
	    "oxy-fuel welding", "tungsten arc", "Process" },
	{ FINDING_WIRE_BEFORE_STICK, STEP_USES_STICK, STEP_USES_WIRE, "stick",
	    "wire-feed", "Process" },
	{ FINDING_CORED_BEFORE_SOLID_WIRE, STEP_USES_SOLID, STEP_USES_CORED,
	    "solid wire", "cored wire", "Process" },
	{ FINDING_STAINLESS_BEFORE_STEEL, STEP_STEEL, STEP_STAINLESS, "carbon steel",
	    "stainless", "Material" },
	{ FINDING_ALUMINUM_BEFORE_STAINLESS, STEP_STAINLESS, STEP_ALUMINUM, "stainless",
	    "aluminum", "Material" },
	{ FINDING_BEVEL_BEFORE_SQUARE_CUT, STEP_SQUARE_CUT, STEP_BEVEL_CUT,
	    "square cuts", "bevel cuts", "Joint" },
	{ FINDING_MACHINE_BEFORE_HAND_CUTTING, STEP_HAND_CUT, STEP_MACHINE_CUT,
	    "cutting by hand", "machine cutting", "Machines" },
	{ FINDING_DOWNHILL_BEFORE_UPHILL, STEP_3F_UP, STEP_3F_DOWN, "3F uphill",
	    "3F downhill", "Position" },
	{ FINDING_DOWNHILL_BEFORE_UPHILL, STEP_3G_UP, STEP_3G_DOWN, "3G uphill",
	    "3G downhill", "Position" },
	{ FINDING_DOWNHILL_BEFORE_UPHILL, STEP_PIPE_5_UP, STEP_PIPE_5_DOWN, "5G uphill",
	    "5G downhill", "Position" },
	{ FINDING_DOWNHILL_BEFORE_UPHILL, STEP_PIPE_6_UP, STEP_PIPE_6_DOWN, "6G uphill",
	    "6G downhill", "Position" },
	{ FINDING_OPEN_ROOT_BEFORE_BACKING, STEP_BACKED, STEP_OPEN,
	    "a groove with backing", "an open root", "Joint" },
	{ FINDING_THICK_BEFORE_THIN, STEP_THIN, STEP_THICK, "thinner plate",
	    "plate of 1 in or more", "Thickness" },
	{ FINDING_TABLE_BEFORE_LAYOUT, STEP_HAND_LAYOUT, STEP_TABLE,
	    "layout by hand", "table cutting", "Machines" },
	{ FINDING_RADIAL_BEFORE_PARALLEL, STEP_PARALLEL, STEP_RADIAL,
	    "parallel lines", "radial lines", "" },
	{ FINDING_TRIANGLES_BEFORE_RADIAL, STEP_RADIAL, STEP_TRIANGLES,
	    "radial lines", "triangulation", "" },
	{ FINDING_GROOVE_BEFORE_FILLET_BREAK, STEP_STEEL_BREAK, STEP_STEEL_GROOVE,
	    "a fillet break", "grooves in steel", "Joint" },
	{ FINDING_GROOVE_BEFORE_FILLET_BREAK, STEP_STAINLESS_BREAK,
	    STEP_STAINLESS_GROOVE, "a fillet break", "grooves in stainless", "Joint" },
	{ FINDING_GROOVE_BEFORE_FILLET_BREAK, STEP_ALUMINUM_BREAK, STEP_ALUMINUM_GROOVE,
	    "a fillet break", "grooves in aluminum", "Joint" },
	{ FINDING_MACHINE_BEFORE_WRITTEN_TEST, STEP_WRITTEN, STEP_MACHINE,
	    "a written test", "machines", "Machines" },
};

/* How a lower step stands before one who takes the higher. What both take on one sheet,
 * or in two branches of one choice, comes in its proper turn. */
static enum met how_low(struct trade *t, uint32_t low, uint32_t asker)
{
	struct first f = t->firsts[low];
	enum met met = rule_met(&t->x, f, asker);
	const uint32_t *unit = t->x.view->units->of;

	if (met == MET_NEVER || trade_gives(t, asker, low))
		return MET;
	return met == MET_LATER && unit[rule_named(f, met)] == unit[asker] ? MET : met;
}

/* The earliest of those who take a step that faults. Who takes it first for certain,
 * as optional work and in one branch differ, and each may lack another lower step. */
static uint32_t first_fault(struct trade *t, uint32_t low, uint32_t high, enum met *met)
{
	const uint32_t *unit = t->x.view->units->of;
	struct first f = t->firsts[high];
	uint32_t askers[] = { f.sure, f.optional, f.branch }, best = NONE;

	for (size_t i = 0; i < sizeof askers / sizeof *askers; i++) {
		enum met how = askers[i] == NONE ? MET : how_low(t, low, askers[i]);

		if (how == MET || (best != NONE && unit[best] <= unit[askers[i]]))
			continue;
		best = askers[i];
		*met = how;
	}
	return best;
}

/* Of all steps that the same custom wants before asker's, the one taken last: asker has
 * to come behind that. */
static uint32_t last_lower(struct trade *t, const struct rung *r, uint32_t craft,
    uint32_t asker, uint32_t low)
{
	const uint32_t *unit = t->x.view->units->of;

	for (size_t i = 0; i < sizeof rungs / sizeof *rungs; i++) {
		uint32_t key = step_key(craft, rungs[i].low), who;
		enum met met = MET;

		if (rungs[i].name != r->name || (t->brought && t->brought[key]) ||
		    first_fault(t, key, step_key(craft, rungs[i].high), &met) != asker ||
		    met != MET_LATER)
			continue;
		who = rule_named(t->firsts[key], met);
		if (unit[who] != NONE && unit[who] > unit[low])
			low = who;
	}
	return low;
}

static void tell_rung(struct trade *t, const struct rung *r, uint32_t craft,
    uint32_t asker, enum met met)
{
	static const char *const ways[] = { [MET_OPTIONAL] = ", which is optional",
		[MET_BRANCH] = ", one branch of a choice", [MET_LATER] = "" };
	const struct assignment *all = t->x.m->assignments;
	uint32_t low = rule_named(t->firsts[step_key(craft, r->low)], met);
	uint32_t last = last_lower(t, r, craft, asker, low);
	str words;
	const char *of = craft == CRAFT_COUNT ? "" : " in ";
	const char *word = craft == CRAFT_COUNT ? "" : craft_word(craft);
	struct finding *d = rule_report(&t->x, r->name, assignment_fact_pos(&all[asker],
	    str_of(r->fact)), asker, "%.*s (%.*s) comes to %s%s%s before %s",
	    STR_ARG(all[asker].id), STR_ARG(rule_place(&t->x, asker)), r->high_words, of,
	    word, r->low_words);

	finding_cause(t->x.f, d, "the first with %s is %.*s, %.*s%s", r->low_words,
	    STR_ARG(all[low].id), STR_ARG(rule_place(&t->x, low)), ways[met]);
	words = met == MET_LATER ? rule_move_before(&t->x, d, last, asker, last == low
	    ? MOVABLE_EITHER : MOVABLE_SECOND) : str_format(t->x.f->arena,
	    "let everyone do %.*s before %.*s", STR_ARG(all[low].id),
	    STR_ARG(all[asker].id));
	finding_repair(t->x.f, d, "%.*s; or list \"%s\" under Off in customs.md with the "
	    "reason", STR_ARG(words), finding_info(r->name)->custom);
}

static bool judge_rung(struct trade *t, const struct rung *r, uint32_t craft)
{
	uint32_t low = step_key(craft, r->low), high = step_key(craft, r->high), asker;
	enum met met = MET;

	if (t->brought && (t->brought[low] || t->brought[high]))
		return false;
	asker = first_fault(t, low, high, &met);
	if (asker == NONE || trade_need_tells(t, asker, low, trade_gives))
		return false;
	tell_rung(t, r, craft, asker, met);
	return true;
}

void rule_ladder(struct rule_context *x)
{
	static const struct trade_rule steps = { .name = FINDING_HORIZONTAL_BEFORE_FLAT,
		.nkeys = STEP_KEYS, .gives = steps_of };
	size_t n = sizeof rungs / sizeof *rungs;
	struct trade t;

	if (!trade_begin(x, &steps, &t))
		return;
	for (uint32_t craft = 0; craft <= CRAFT_COUNT; craft++)
		for (size_t i = 0, told = n; i < n; i++) {
			bool again = told < n && rungs[told].name == rungs[i].name;

			if (!rule_is_off(x, rungs[i].name) && !again &&
			    judge_rung(&t, &rungs[i], craft))
				told = i;
		}
}
