/* Shielding gas, transfer, cutting by flame, and the cautions that fume and purge ask. */
#include "check/rule_metal.h"

#include "model/words.h"

static bool wants_gas(enum process p)
{
	return p == PROCESS_GMAW || p == PROCESS_GMAW_S || p == PROCESS_FCAW_G ||
	    p == PROCESS_GTAW;
}

/* Flame and plasma processes name gases of their own. */
static bool brings_gas(enum process p)
{
	return wants_gas(p) || p == PROCESS_OFC || p == PROCESS_OFW || p == PROCESS_PAC ||
	    p == PROCESS_TB || p == PROCESS_TS;
}

static bool passes_name_gas(const struct assignment *a)
{
	static const char *const gases[] = { "argon", "co2", "helium", NULL };

	for (size_t i = 0; i < a->npasses; i++)
		if (says_any(a->passes[i].text, gases))
			return true;
	return false;
}

static void judge_presence(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	bool named = is_stated(fact_said(a, "Gas"));
	struct finding *d;
	uint32_t i = 0;

	if (!a->nprocesses || !a->nwelds)
		return;
	while (i < a->nprocesses && !wants_gas(a->processes[i]))
		i++;
	if (i < a->nprocesses && !named && !passes_name_gas(a)) {
		d = rule_report(x, FINDING_NO_SHIELDING_GAS,
		    assignment_fact_pos(a, STR("Process")), w,
		    "%.*s needs a shielding gas, and the sheet names none",
		    STR_ARG(process_word(a->processes[i])));
		finding_cause(x->f, d, "the process is gas-shielded by definition "
		    "(AWS A3.0)");
		finding_repair(x->f, d, "add \"- **Gas:** %s\" or what your procedure "
		    "says", a->processes[i] == PROCESS_GTAW ? "argon 15 cfh"
		    : "75/25 argon/CO2 30 cfh");
		return;
	}
	for (i = 0; i < a->nprocesses && !brings_gas(a->processes[i]); i++)
		;
	if (i < a->nprocesses || !named)
		return;
	d = rule_report(x, FINDING_GAS_NOT_USED, assignment_fact_pos(a, STR("Gas")), w,
	    "%.*s uses no shielding gas, but the sheet names one",
	    STR_ARG(process_word(a->processes[0])));
	finding_cause(x->f, d, "its coating or core makes the gas (AWS A3.0)");
	finding_repair(x->f, d, "take the line Gas out, or write the gas-shielded "
	    "process");
}

struct gas_fault {
	const char *wrong;       /* null: the gas serves */
	const char *wanted;
	const char *source;
	bool doubtful;           /* practice differs: a warning */
};

#define SPRAY_SOURCE "AWS C5.6 (1994) table 3 as restated in a textbook: spray " \
	"starts at about 80 % argon"
#define PRACTICE "common practice, no source"

static struct gas_fault judge_short(const struct gas *g, bool stainless, bool aluminum)
{
	if (aluminum)
		return (struct gas_fault){ "aluminum is not welded in short circuit",
			"spray with argon", PRACTICE, true };
	if (stainless && g->helium < 50 && g->argon < 95)
		return (struct gas_fault){ "short circuit on stainless takes a tri-mix "
			"of mostly helium", "90/7.5/2.5 helium/argon/CO2", "a textbook's "
			"table of stainless short circuit (2020)", true };
	if (!stainless && g->co2 < 5)
		return (struct gas_fault){ "short circuit on steel needs CO2 in the gas",
			"75/25 argon/CO2, or CO2", "a wire feeder's data chart: CO2 or "
			"argon/CO2", false };
	if (!stainless && g->co2 < 15)
		return (struct gas_fault){ "this gas is lean in CO2 for short circuit",
			"75/25 argon/CO2, or CO2", PRACTICE, true };
	return (struct gas_fault){ 0 };
}

static struct gas_fault judge_spray(const struct gas *g, bool aluminum)
{
	if (aluminum && (g->co2 > 0 || g->oxygen > 0))
		return (struct gas_fault){ "aluminum takes no CO2 or oxygen in the gas",
			"argon", "a textbook's table of aluminum spray (2020)", false };
	if (!aluminum && g->argon < 80 - 1e-9)
		return (struct gas_fault){ "spray needs 80 % argon or more",
			"98/2 argon/O2 or 90/10 argon/CO2", SPRAY_SOURCE, false };
	return (struct gas_fault){ 0 };
}

static struct gas_fault judge_tungsten(const struct gas *g)
{
	if (g->co2 > 0 || g->oxygen > 0)
		return (struct gas_fault){ "CO2 or oxygen burns the tungsten",
			"argon", PRACTICE, false };
	return (struct gas_fault){ 0 };
}

static struct gas_fault judge_cored(const struct gas *g)
{
	if (g->oxygen > 0 || g->helium > 0 || g->co2 < 15)
		return (struct gas_fault){ "a gas-shielded cored wire is classed for CO2 "
			"or 75-80 % argon with CO2", "75/25 argon/CO2, or CO2, as the "
			"class says", "AWS A5.20, M and C of the class, as restated; "
			"confirm against your edition", true };
	return (struct gas_fault){ 0 };
}

static struct gas_fault judge_one(const struct assignment *a, enum process p,
    const struct gas *g)
{
	str transfer = transfer_of(a, p);
	uint32_t metals = 0;
	bool stainless, aluminum;

	for (size_t i = 0; i < a->nwelds; i++)
		metals |= weld_metals(&a->welds[i]);
	stainless = work_has(metals, METAL_STAINLESS);
	aluminum = work_has(metals, METAL_ALUMINUM);
	if (p == PROCESS_GTAW)
		return judge_tungsten(g);
	if (p == PROCESS_FCAW_G)
		return judge_cored(g);
	if (str_eq(transfer, STR("short circuit")))
		return judge_short(g, stainless, aluminum);
	if (str_eq(transfer, STR("spray")) || str_eq(transfer, STR("pulsed spray")))
		return judge_spray(g, aluminum);
	return (struct gas_fault){ 0 };
}

/* Several gases stand apart by semicolons; one that serves is enough, and one that is
 * not understood is not judged. */
static bool any_serves(const struct assignment *a, enum process p, str text,
    struct gas_fault *fault)
{
	str rest = text, part;

	while (str_next(&rest, ';', &part)) {
		struct gas g = gas_read(part);
		struct gas_fault one = { 0 };

		if (g.known)
			one = judge_one(a, p, &g);
		if (!one.wrong)
			return true;
		*fault = one;
	}
	return !fault->wrong;
}

static void judge_kind(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	str text = fact_said(a, "Gas");

	for (uint32_t i = 0; is_stated(text) && a->nwelds && i < a->nprocesses; i++) {
		enum process p = a->processes[i];
		struct gas_fault fault = { 0 };
		struct finding *d;

		if (!wants_gas(p) || any_serves(a, p, text, &fault))
			continue;
		d = rule_report(x, FINDING_WRONG_GAS, assignment_fact_pos(a, STR("Gas")),
		    w, "%s, and the sheet names %.*s", fault.wrong, STR_ARG(text));
		if (fault.doubtful)
			d->level = LEVEL_WARNING;
		finding_cause(x->f, d, "%s", fault.source);
		finding_repair(x->f, d, "write %s", fault.wanted);
	}
}

/* Spray is fluid: handbook rows of steel and stainless spray are flat and horizontal,
 * those of aluminum all positions. */
static void judge_transfer(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d;

	if (!assignment_has_process(a, PROCESS_GMAW) ||
	    !str_eq(fact_said(a, "Transfer"), STR("spray")))
		return;
	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *k = &a->welds[i];

		if (k->process != PROCESS_GMAW || weld_has_metal(k, METAL_ALUMINUM) ||
		    !is_out_of_position(k->at.position))
			continue;
		d = rule_report(x, FINDING_SPRAY_OUT_OF_POSITION,
		    assignment_fact_pos(a, STR("Transfer")), w,
		    "spray is for flat and horizontal welds, but %.*s is welded with it",
		    STR_ARG(weld_say(x, k)));
		finding_cause(x->f, d, "the puddle is large and runs out (a wire "
		    "feeder's data chart; a textbook's tables, 2020)");
		finding_repair(x->f, d, "write pulsed spray or short circuit, or weld it "
		    "flat or horizontal");
		return;
	}
}

static void judge_short_name(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	str transfer = fact_said(a, "Transfer");
	struct finding *d;

	if (!transfer.n || str_eq(transfer, STR("short circuit")) ||
	    !assignment_has_process(a, PROCESS_GMAW_S) ||
	    assignment_has_process(a, PROCESS_GMAW))
		return;
	d = rule_report(x, FINDING_TRANSFER_DISAGREES,
	    assignment_fact_pos(a, STR("Transfer")), w,
	    "GMAW-S is short circuit, but Transfer says %.*s", STR_ARG(transfer));
	finding_cause(x->f, d, "the S of the letters stands for it (AWS A3.0)");
	finding_repair(x->f, d, "write the process as GMAW, or Transfer as short "
	    "circuit");
}

/* Metal that a flame does not cut: its oxide melts after the metal does. */
static bool resists_flame(enum sheet_metal metal)
{
	return metal == METAL_STAINLESS || metal == METAL_ALUMINUM;
}

static void say_flame(struct rule_context *x, uint32_t w, struct pos pos, str what,
    enum sheet_metal metal)
{
	struct finding *d = rule_report(x, FINDING_OXY_FUEL_ON_WRONG_METAL, pos, w,
	    "oxy-fuel does not cut %s, and %.*s is %s", sheet_metal_word(metal),
	    STR_ARG(what), sheet_metal_word(metal));
	bool table = false;

	for (size_t i = 0; i < x->m->nmachines; i++)
		table |= says(x->m->machines[i].name, "plasma");
	finding_cause(x->f, d, "the oxide melts at a higher heat than the metal, so that "
	    "only carbon steel burns away cleanly (common practice, no source)");
	finding_repair(x->f, d, "cut it with plasma%s, or saw it",
	    table ? " on the shop's table" : "");
}

static bool machines_name(const struct assignment *a, const char *word)
{
	return says(fact_said(a, "Machines"), word);
}

static void judge_flame(struct rule_context *x, uint32_t w)
{
	static const char *const made[] = { "torch", "flame", "oxy", NULL };
	const struct assignment *a = &x->m->assignments[w];
	bool flame = assignment_has_process(a, PROCESS_OFC) || machines_name(a, "track");

	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		enum sheet_metal metal = sheet_metal_of(p->material);

		if (!says_any(p->made, made) || !resists_flame(metal))
			continue;
		say_flame(x, w, p->pos, p->name, metal);
		return;
	}
	/* A sheet with carbon steel beside it may cut only that. */
	for (uint32_t i = 0; flame && i < a->nmaterials; i++)
		if (!resists_flame(a->materials[i].metal))
			return;
	if (flame && a->nmaterials && !assignment_has_process(a, PROCESS_PAC))
		say_flame(x, w, a->materials[0].pos, a->materials[0].text,
		    a->materials[0].metal);
}

static bool is_fuming(enum process p)
{
	return p != PROCESS_TB && p != PROCESS_TS;
}

/* Why the fume of this sheet is worse than that of bare steel; "" when it is not. */
static const char *fume_cause(const struct assignment *a, struct pos *pos)
{
	for (uint32_t i = 0; i < a->nmaterials; i++) {
		*pos = a->materials[i].pos;
		if (a->materials[i].metal == METAL_STAINLESS)
			return "stainless fume carries hexavalent chromium "
			    "(29 CFR 1910.1026)";
		if (a->materials[i].metal == METAL_GALVANIZED)
			return "a zinc coating burns off as fume (29 CFR 1910.252(c))";
	}
	for (uint32_t i = 0; i < a->nfillers; i++) {
		*pos = a->fillers[i].pos;
		if (rod_read(a->fillers[i].class).metal == ROD_STAINLESS)
			return "the fume of stainless filler carries hexavalent chromium "
			    "(29 CFR 1910.1026)";
	}
	*pos = assignment_fact_pos(a, STR("Coating"));
	return is_stated(fact_said(a, "Coating"))
	    ? "coatings burn off as fume (29 CFR 1910.252(c))" : "";
}

static void judge_fume(struct rule_context *x, uint32_t w)
{
	static const char *const words[] = { "fume", "chromium", "extract", "exhaust",
		"ventilat", "respirator", NULL };
	const struct assignment *a = &x->m->assignments[w];
	const char *cause;
	struct finding *d;
	struct pos pos;
	uint32_t i = 0;

	while (i < a->nprocesses && !is_fuming(a->processes[i]))
		i++;
	if (i == a->nprocesses)
		return;
	cause = fume_cause(a, &pos);
	if (!*cause || prose_says_any(&a->cautions, words))
		return;
	d = rule_report(x, FINDING_NO_FUME_CAUTION, pos, w,
	    "stainless or coated metal is welded or cut, and Cautions says nothing of "
	    "fume");
	finding_cause(x->f, d, "%s", cause);
	finding_repair(x->f, d, "say under \"## Cautions\" where the extraction stands "
	    "and that it runs for every arc");
}

static void judge_purge(struct rule_context *x, uint32_t w)
{
	static const char *const words[] = { "oxygen", "air monitor", "monitor", "meter",
		NULL };
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d;

	if (!is_stated(fact_said(a, "Purge")) ||
	    !str_eq(fact_said(a, "Place"), STR("confined")) ||
	    prose_says_any(&a->cautions, words))
		return;
	d = rule_report(x, FINDING_NO_AIR_CAUTION, assignment_fact_pos(a, STR("Purge")),
	    w, "purge gas is used in a confined place, and Cautions says nothing of "
	    "measuring the air");
	finding_cause(x->f, d, "argon displaces the air without a smell "
	    "(29 CFR 1910.252(c)(4), 1910.146)");
	finding_repair(x->f, d, "say under \"## Cautions\" who measures the oxygen, how "
	    "often, and who stands outside; or purge in the open");
}

void rule_metal_gas(struct rule_context *x, uint32_t w)
{
	judge_presence(x, w);
	judge_kind(x, w);
	judge_transfer(x, w);
	judge_short_name(x, w);
	judge_flame(x, w);
	judge_fume(x, w);
	judge_purge(x, w);
}
