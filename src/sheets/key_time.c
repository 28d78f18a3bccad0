/* Arc time, gas and heat of a drawn weld, where the sheet says how fast: by travel, or by
 * the feed of a solid wire. */
#include "sheets/key_set.h"

#include "model/setting.h"
#include "reckon/arc.h"
#include "sheets/both_units.h"
#include "sheets/sheet.h"

/* Which of the parts of Volts, Travel and Gas count for a weld. */
static size_t part_of(const struct key *k, const struct joint_block *j)
{
	for (uint32_t i = 0; i < k->x->nprocesses; i++)
		if (k->x->processes[i] == key_process(k, j))
			return i;
	return 0;
}

/* In millimeters a minute: then length over travel is minutes in either system. */
static str travel_text(const struct key *k, double ipm)
{
	return k->metric ? key_real(k->arena, ipm * 25.4, 0, "mm/min")
	                 : key_real(k->arena, ipm, 1, "in/min");
}

static double hours_by_travel(struct key *k, const struct joint_block *j, size_t part,
    str *steps)
{
	double length = key_length_mm(j), speed;
	unsigned passes = j->passes ? j->passes : 1;
	struct quantity q;

	if (!(length > 0) || !setting_part(k->x, STR("Travel"), part, QUANTITY_SPEED, &q))
		return 0;
	speed = (q.lo + q.hi) / 2;
	*steps = str_format(k->arena, "%.*s x %u passes / %.*s", STR_ARG(key_length(k, length)),
	    passes, STR_ARG(travel_text(k, speed)));
	return arc_hours_by_length(length, speed, passes);
}

static bool is_solid_wire(enum process p)
{
	return p == PROCESS_GMAW || p == PROCESS_GMAW_S;
}

static double hours_by_feed(struct key *k, const struct joint_block *j, size_t part,
    str *steps)
{
	const struct weld_metal *metal = key_metal(k, j);
	const struct efficiency *e = key_efficiency(k, j);
	double mm3 = key_section_mm2(j) * key_length_mm(j), feed, rate, dia;
	struct quantity q;

	if (!metal || !e || !(mm3 > 0) || part >= k->x->nfillers ||
	    !is_solid_wire(key_process(k, j)) || !given(&k->x->fillers[part].dia) ||
	    !setting_part(k->x, STR("Wire feed"), part, QUANTITY_SPEED, &q))
		return 0;
	feed = (q.lo + q.hi) / 2;
	dia = k->x->fillers[part].dia.lo;
	rate = wire_deposit_lb_h(dia, feed, metal->density_lb_in3, e->percent);
	*steps = str_format(k->arena, "weld metal / %.*s that %.*s of wire at %.*s gives",
	    STR_ARG(k->metric ? key_real(k->arena, rate * 0.45359237, 2, "kg/h")
	        : key_real(k->arena, rate, 2, "lb/h")), STR_ARG(key_length(k, dia)),
	    STR_ARG(k->metric ? key_real(k->arena, feed * 0.0254, 2, "m/min")
	        : key_real(k->arena, feed, 0, "in/min")));
	return arc_hours_by_weight(weight_lb(mm3, metal->density_lb_in3), rate);
}

/* 1 ft3 is 28.316846592 L (NIST SP 811). */
static str volume_text(const struct key *k, double ft3)
{
	return key_both(k, key_real(k->arena, ft3, 2, "ft3"),
	    key_real(k->arena, ft3 * 28.316846592, 0, "L"));
}

static void add_gas(struct key *k, const struct joint_block *j, size_t part, double hours)
{
	struct quantity q;
	struct worked *w;

	if (!setting_part(k->x, STR("Gas"), part, QUANTITY_FLOW, &q))
		return;
	w = key_add(k, key_weld_name(k, j, "Shielding gas"));
	w->steps = str_format(k->arena, "%.*s x %.*s%s; purge, leaks and postflow come on top",
	    STR_ARG(value_text(k->arena, k->e, QUANTITY_FLOW, q.lo, q.hi)),
	    STR_ARG(key_real(k->arena, hours * 60, 1, "min")), k->metric ? "" : " / 60");
	w->result = volume_text(k, gas_ft3((q.lo + q.hi) / 2, hours));
	w->source = STR("definition");
}

/* "46.1 to 74.1 kJ/in [1.81 to 2.92 kJ/mm]", or the other way round. */
static str heat_text(const struct key *k, double lo_kj_in, double hi_kj_in)
{
	str us = str_format(k->arena, "%.*s to %.*s", STR_ARG(key_real(k->arena, lo_kj_in, 1, "")),
	    STR_ARG(key_real(k->arena, hi_kj_in, 1, "kJ/in")));
	str metric = str_format(k->arena, "%.*s to %.*s",
	    STR_ARG(key_real(k->arena, lo_kj_in / 25.4, 2, "")),
	    STR_ARG(key_real(k->arena, hi_kj_in / 25.4, 2, "kJ/mm")));

	return key_both(k, us, metric);
}

/* From the cool end of every setting to the hot one. */
static void add_heat(struct key *k, const struct joint_block *j, size_t part)
{
	const struct current *c = part < k->x->ncurrents ? &k->x->currents[part] : NULL;
	struct quantity volts, travel;
	struct worked *w;
	double lo, hi;

	if (!c || !given(&c->amps) ||
	    !setting_part(k->x, STR("Volts"), part, QUANTITY_VOLTAGE, &volts) ||
	    !setting_part(k->x, STR("Travel"), part, QUANTITY_SPEED, &travel))
		return;
	lo = heat_input_kj_in(volts.lo, c->amps.lo, travel.hi, 1);
	hi = heat_input_kj_in(volts.hi, c->amps.hi, travel.lo, 1);
	w = key_add(k, key_weld_name(k, j, "Heat input"));
	w->steps = str_format(k->arena, "%s: %.*s, %.*s, %.*s",
	    k->metric ? "V x A / (1000 x mm/s)" : "60 x V x A / (1000 x in/min)",
	    STR_ARG(quantity_text(k->arena, k->e, &volts)),
	    STR_ARG(quantity_text(k->arena, k->e, &c->amps)),
	    STR_ARG(quantity_text(k->arena, k->e, &travel)));
	w->result = heat_text(k, lo, hi);
	w->source = STR("published worked examples; ASME IX QW-409.1(a), from memory");
}

void key_time_lines(struct key *k, const struct joint_block *j)
{
	size_t part = part_of(k, j);
	str steps = { 0 };
	double hours = hours_by_travel(k, j, part, &steps);
	struct worked *w;

	if (!(hours > 0))
		hours = hours_by_feed(k, j, part, &steps);
	if (hours > 0) {
		w = key_add(k, key_weld_name(k, j, "Arc time"));
		w->steps = steps;
		w->result = key_real(k->arena, hours * 60, 1, "min");
		w->source = STR("definition");
		add_gas(k, j, part, hours);
	}
	add_heat(k, j, part);
}
