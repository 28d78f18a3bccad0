#include "sheets/start.h"

#include "model/setting.h"
#include "reckon/gas.h"
#include "reckon/preheat.h"
#include "reckon/torch.h"
#include "sheets/both_units.h"
#include "sheets/metric_words.h"
#include "sheets/limits.h"
#include "sheets/sheet.h"

/* ---- torch ---- */

static bool has_process(const struct assignment *x, enum process p)
{
	for (uint32_t i = 0; i < x->nprocesses; i++)
		if (x->processes[i] == p)
			return true;
	return false;
}

static bool is_carbon_steel(const struct assignment *x)
{
	for (uint32_t i = 0; i < x->nmaterials; i++)
		if (x->materials[i].metal == METAL_STAINLESS ||
		    x->materials[i].metal == METAL_ALUMINUM)
			return false;
	return x->nmaterials > 0;
}

/* The row of thickness i, or null when an earlier thickness has it already. */
static const struct torch_setting *torch_row(const struct assignment *x, uint32_t i)
{
	const struct torch_setting *row = torch_find(x->thicknesses[i].lo);

	for (uint32_t k = 0; k < i; k++)
		if (row == torch_find(x->thicknesses[k].lo))
			return NULL;
	return row;
}

/* of: which thickness, ", 3/8 in [9.5 mm]", or empty. */
static size_t add_torch(struct arena *a, const struct edition *e, const struct torch_setting *t,
    str of, struct start *v)
{
	const bool seen = seen_of(t->verified) != SEEN_MEMORY;
	const struct { str what; enum quantity_kind kind; double lo, hi; } rows[] = {
		{ WORD("Oxygen"), QUANTITY_PRESSURE, t->oxygen_lo_psig, t->oxygen_hi_psig },
		{ WORD("Acetylene"), QUANTITY_PRESSURE, t->fuel_lo_psig, t->fuel_hi_psig },
		{ WORD("Cutting speed"), QUANTITY_SPEED, t->speed_lo_ipm, t->speed_hi_ipm },
	};
	size_t n = sizeof rows / sizeof *rows;

	v[0] = (struct start){ str_format(a, "%.*s%.*s",
		    STR_ARG(word(edition_language(e), "Tip")), STR_ARG(of)),
		word_format(a, edition_language(e),
		    "size %s in one maker's series; numbers differ", t->tip), !seen };
	for (size_t i = 0; i < n; i++)
		v[i + 1] = (struct start){ str_format(a, "%.*s%.*s",
			    STR_ARG(edition_word(e, rows[i].what)), STR_ARG(of)),
			value_text(a, e, rows[i].kind, rows[i].lo, rows[i].hi), !seen };
	return n + 1;
}

/* Whether thicknesses ask for different settings, so that each names its own. */
static bool torch_differs(const struct assignment *x)
{
	unsigned n = 0;

	for (uint32_t i = 0; i < x->nthicknesses; i++)
		n += torch_row(x, i) != NULL;
	return n > 1;
}

size_t start_torch(struct arena *a, const struct edition *e, const struct assignment *x,
    struct start *v)
{
	size_t n = 0;

	if (!has_process(x, PROCESS_OFC) || !is_carbon_steel(x))
		return 0;
	for (uint32_t i = 0; i < x->nthicknesses && n + 4 <= STARTS_MOST; i++) {
		const struct torch_setting *row = torch_row(x, i);
		str of = torch_differs(x) ? str_format(a, ", %.*s",
		    STR_ARG(quantity_text(a, e, &x->thicknesses[i]))) : (str){ 0 };

		if (row)
			n += add_torch(a, e, row, of, &v[n]);
	}
	return n;
}

str start_torch_words(struct arena *a, const struct edition *e)
{
	return units_text(a, e, word(edition_language(e), "The torch figures are from memory and only a start: the tip maker's chart "
	    "decides. Acetylene is never used above 15 psi [103 kPa] (29 CFR 1910.253)."));
}

/* ---- preheat ---- */

bool start_preheat(const struct assignment *x, struct start_heat *out)
{
	enum setting_hydrogen hydrogen = setting_hydrogen(x);
	bool any = false;

	for (size_t i = 0; hydrogen && i < x->nwelds; i++) {
		struct preheat_wanted p;

		if (!preheat_wanted(x->welds[i].material1, hydrogen == HYDROGEN_LOW,
		    setting_thickest_mm(x, i), &p))
			continue;
		if (!any || p.row->least_f > out->least_f)
			*out = (struct start_heat){ p.row->least_f, p.row->printed_c,
				PREHEAT_SOURCE, p.seen == SEEN_MEMORY };
		any = true;
	}
	return any;
}

/* Metal colder than 32 F is warmed to 70 F (the same table). */
str start_heat_text(struct arena *a, const struct edition *e, const struct start_heat *h)
{
	const struct language *l = edition_language(e);
	struct buf f = { .arena = a }, c = { .arena = a }, b = { .arena = a };

	buf_add_real(&f, h->least_f, 0, false);
	buf_add_real(&c, h->printed_c, 0, false);
	if (e && e->choice.metric)
		word_addf(&b, l, "%.*s °C [%.*s °F] at least", STR_ARG(buf_str(&c)),
		    STR_ARG(buf_str(&f)));
	else
		word_addf(&b, l, "%.*s °F [%.*s °C] at least", STR_ARG(buf_str(&f)),
		    STR_ARG(buf_str(&c)));
	buf_adds(&b, h->dagger ? DAGGER : "");
	if (!(h->least_f > 32))
		buf_add(&b, e && e->choice.metric
		    ? word(l, "; colder metal is warmed to 20 °C [70 °F]")
		    : word(l, "; colder metal is warmed to 70 °F [20 °C]"));
	return buf_str(&b);
}

bool start_interpass(struct arena *a, const struct edition *e, const struct assignment *x,
    struct start *out)
{
	const struct interpass *row = interpass_find(FAMILY_STAINLESS);
	bool stainless = false;

	for (size_t i = 0; i < x->nwelds; i++)
		stainless |= sheet_metal_of(x->welds[i].material1) == METAL_STAINLESS;
	if (!stainless || !row || !(row->most_f > 0))
		return false;
	*out = (struct start){ word(edition_language(e), "Interpass"),
		word_format(a, edition_language(e), "%.*s at most",
	    STR_ARG(value_text(a, e, QUANTITY_TEMPERATURE, row->most_f, row->most_f))),
		seen_of(row->verified) == SEEN_MEMORY };
	return true;
}

/* ---- handbook ranges ---- */

static bool range_of(const struct assignment *x, size_t process, const struct filler *f,
    str polarity, struct current_range *out)
{
	enum process p;
	str class = f ? f->class : (str){ 0 };
	double dia_mm = f && given(&f->dia) ? f->dia.lo : 0;

	if (!x->nprocesses)
		return false;
	p = x->processes[process < x->nprocesses ? process : x->nprocesses - 1];
	if (p == PROCESS_GTAW && !setting_tungsten(x, &class, &dia_mm))
		return false;
	return class.n && dia_mm > 0 && current_range_find(setting_table_process(x, p), class,
	    dia_mm, polarity, out);
}

bool start_range(const struct assignment *x, size_t i, struct current_range *out)
{
	return range_of(x, i, i < x->nfillers ? &x->fillers[i] : NULL,
	    i < x->ncurrents ? x->currents[i].polarity : (str){ 0 }, out);
}

bool start_pass_range(const struct assignment *x, const struct pass *p,
    struct current_range *out)
{
	static const str polarities[] = { STR("DC+"), STR("DC-"), STR("AC") };
	str polarity = { 0 };

	for (size_t k = 0; k < sizeof polarities / sizeof *polarities && !polarity.n; k++)
		if (str_find(p->text, polarities[k], 0) < p->text.n)
			polarity = polarities[k];
	for (uint32_t i = 0; i < x->nfillers; i++)
		if (str_find(p->text, x->fillers[i].class, 0) < p->text.n)
			return range_of(x, i, &x->fillers[i], polarity, out);
	return false;
}

static str ends_text(struct arena *a, const struct edition *e, double lo, double hi,
    const char *unit)
{
	struct buf b = { .arena = a };

	buf_add_real(&b, lo, 1, false);
	if (hi > lo) {
		buf_addc(&b, '-');
		buf_add_real(&b, hi, 1, false);
	}
	buf_addf(&b, " %s", unit);
	if (hi > 0)
		return buf_str(&b);
	return word_format(a, edition_language(e), "%.*s and more", STR_ARG(buf_str(&b)));
}

str start_amps_text(struct arena *a, const struct edition *e, const struct current_range *r)
{
	return str_format(a, "%.*s%s", STR_ARG(ends_text(a, e, r->amps_lo, r->amps_hi, "A")),
	    r->seen == SEEN_MEMORY ? DAGGER : "");
}

str start_volts_text(struct arena *a, const struct edition *e, const struct current_range *r)
{
	if (!(r->volts_lo > 0))
		return (str){ 0 };
	return str_format(a, "%.*s%s", STR_ARG(ends_text(a, e, r->volts_lo, r->volts_hi, "V")),
	    r->seen == SEEN_MEMORY ? DAGGER : "");
}

/* ---- gas ---- */

static const struct gas_flow *flow_of(const struct assignment *x, bool purge)
{
	enum metal_family family = FAMILY_OTHER;

	for (size_t i = 0; i < x->nwelds; i++)
		if (sheet_metal_of(x->welds[i].material1) == METAL_ALUMINUM)
			family = FAMILY_ALUMINUM;
	if (purge)
		return gas_flow_find(STR("GTAW purge"), family, 0);
	for (uint32_t i = 0; i < x->nprocesses; i++) {
		const struct filler *f = i < x->nfillers ? &x->fillers[i] : NULL;
		const struct gas_flow *row = gas_flow_find(process_word(x->processes[i]),
		    family, f && given(&f->dia) ? f->dia.lo : 0);

		if (row)
			return row;
	}
	return NULL;
}

str start_flow_text(struct arena *a, const struct edition *e, const struct assignment *x,
    bool purge, bool *dagger, const char **source)
{
	const struct gas_flow *row = flow_of(x, purge);

	if (!row)
		return (str){ 0 };
	*dagger = seen_of(row->verified) == SEEN_MEMORY;
	*source = row->source;
	return str_format(a, "%.*s%s", STR_ARG(value_text(a, e, QUANTITY_FLOW, row->lo_cfh,
	    row->hi_cfh)), *dagger ? DAGGER : "");
}

bool start_is_wire(const struct assignment *x)
{
	return has_process(x, PROCESS_GMAW) || has_process(x, PROCESS_GMAW_S) ||
	    has_process(x, PROCESS_FCAW_G) || has_process(x, PROCESS_FCAW_S);
}
