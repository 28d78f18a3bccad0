/* What a sheet starts with against handbooks and the preheat table: volts, gas flow,
 * least preheat, heat input. */
#include "check/rule_metal.h"

#include "model/setting.h"
#include "reckon/arc.h"
#include "reckon/gas.h"
#include "reckon/preheat.h"

#include <math.h>

static bool is_outside(const struct quantity *q, double lo, double hi)
{
	return q->lo < lo - 1e-9 || q->hi > hi + 1e-9;
}

static void judge_volts(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		struct current_range r;
		struct finding *d;
		struct quantity q;

		if (!setting_part(a, STR("Volts"), i, QUANTITY_VOLTAGE, &q) ||
		    !setting_range(a, &l.v[i], &r) || !(r.volts_lo > 0) ||
		    !is_outside(&q, r.volts_lo, r.volts_hi))
			continue;
		d = rule_report(x, FINDING_VOLTS_OUTSIDE_RANGE,
		    assignment_fact_pos(a, STR("Volts")), w,
		    "%.*s is outside what %.*s takes, %.*s-%.*s V",
		    STR_ARG(say_quantity(x, &q)), STR_ARG(l.v[i].class),
		    STR_ARG(say_real(x, r.volts_lo, 1)),
		    STR_ARG(say_real(x, r.volts_hi, 1)));
		if (r.seen == SEEN_MEMORY)
			d->level = LEVEL_NOTE;
		finding_cause(x->f, d, "%s%s", r.source, r.seen == SEEN_PAGE ? ""
		    : " (from memory; confirm against the maker's label)");
		finding_repair(x->f, d, "stay inside it, or say on the sheet that the "
		    "maker's label of your wire gives more");
		return;
	}
}

static const struct gas_flow *flow_row(const struct assignment *a,
    const struct setting *s)
{
	enum metal_family family = FAMILY_OTHER;

	for (size_t i = 0; i < a->nwelds; i++)
		if (weld_has_metal(&a->welds[i], METAL_ALUMINUM))
			family = FAMILY_ALUMINUM;
	return s->process == PROCESS_COUNT ? NULL
	    : gas_flow_find(process_word(s->process), family, s->dia_mm);
}

static void judge_flow(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		const struct gas_flow *r = flow_row(a, &l.v[i]);
		struct finding *d;
		struct quantity q;

		if (!r || !setting_part(a, STR("Gas"), i, QUANTITY_FLOW, &q) ||
		    !is_outside(&q, r->lo_cfh / 2, r->hi_cfh * 2))
			continue;
		d = rule_report(x, FINDING_GAS_FLOW_FAR_OFF,
		    assignment_fact_pos(a, STR("Gas")), w,
		    "%.*s is under half or over twice the usual flow for %.*s, "
		    "%.*s-%.*s cfh", STR_ARG(say_quantity(x, &q)),
		    STR_ARG(process_word(l.v[i].process)),
		    STR_ARG(say_real(x, r->lo_cfh, 0)),
		    STR_ARG(say_real(x, r->hi_cfh, 0)));
		finding_cause(x->f, d, "%s; half and twice are common practice, no source",
		    r->source);
		finding_repair(x->f, d, "look at the flow again; too little lets air in, "
		    "too much draws it in");
		return;
	}
}

/* Whether an acceptance line is judged by D1.1, whose table it is. */
static bool goes_by_d11(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (str_eq_nocase(a->criteria[i].code, STR("D1.1")))
			return true;
	return false;
}

static void judge_preheat(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	enum setting_hydrogen hydrogen = setting_hydrogen(a);
	struct quantity q;

	if (!hydrogen || !goes_by_d11(a) ||
	    !setting_part(a, STR("Preheat"), 0, QUANTITY_TEMPERATURE, &q))
		return;
	for (size_t i = 0; i < a->nwelds; i++) {
		double thick_mm = setting_thickest_mm(a, i);
		struct preheat_wanted p;
		struct finding *d;

		if (!preheat_wanted(a->welds[i].material1, hydrogen == HYDROGEN_LOW,
		    thick_mm, &p) || q.lo >= p.row->least_f - 1e-9)
			continue;
		d = rule_report(x, FINDING_PREHEAT_TOO_LOW,
		    assignment_fact_pos(a, STR("Preheat")), w,
		    "%.*s is under the least for %.*s %.*s thick, %.*s °F [%.*s °C]",
		    STR_ARG(say_quantity(x, &q)), STR_ARG(p.steel),
		    STR_ARG(say_mm(x, thick_mm)),
		    STR_ARG(say_real(x, p.row->least_f, 0)),
		    STR_ARG(say_real(x, p.row->printed_c, 0)));
		if (p.seen == SEEN_MEMORY)
			d->level = LEVEL_NOTE;
		finding_cause(x->f, d, "category %s, %s; with %s filler", p.row->category,
		    PREHEAT_SOURCE, hydrogen == HYDROGEN_LOW ? "low-hydrogen"
		    : "ordinary");
		finding_repair(x->f, d, "write \"- **Preheat:** %.*s degF least\"",
		    STR_ARG(say_real(x, p.row->least_f, 0)));
		return;
	}
}

static void judge_heat(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	double limit, most;

	if (!setting_heat_limit(a, &limit))
		return;
	for (uint32_t i = 0; i < a->ncurrents; i++) {
		struct quantity volts, travel;
		struct finding *d;

		if (a->currents[i].amps.kind != QUANTITY_CURRENT ||
		    !setting_part(a, STR("Volts"), i, QUANTITY_VOLTAGE, &volts) ||
		    !setting_part(a, STR("Travel"), i, QUANTITY_SPEED, &travel) ||
		    !(travel.lo > 0))
			continue;
		most = heat_input_kj_in(volts.hi, a->currents[i].amps.hi, travel.lo, 1);
		if (most <= limit + 1e-9)
			continue;
		d = rule_report(x, FINDING_HEAT_INPUT_OVER,
		    assignment_fact_pos(a, STR("Heat input")), w,
		    "the settings reach %.*s kJ/in, over the %.*s that the sheet allows",
		    STR_ARG(say_real(x, most, 1)), STR_ARG(say_real(x, limit, 1)));
		finding_cause(x->f, d, "60 x %.*s V x %.*s A / (1000 x %.*s in/min), the "
		    "hot end of each", STR_ARG(say_real(x, volts.hi, 1)),
		    STR_ARG(say_real(x, a->currents[i].amps.hi, 0)),
		    STR_ARG(say_real(x, travel.lo, 1)));
		finding_repair(x->f, d, "travel at %.*s in/min or faster, or set less",
		    STR_ARG(say_real(x, ceil(travel.lo * most / limit * 10 - 1e-6) / 10, 1)));
		return;
	}
}

void rule_metal_start(struct rule_context *x, uint32_t w)
{
	judge_volts(x, w);
	judge_flow(x, w);
	judge_preheat(x, w);
	judge_heat(x, w);
}
