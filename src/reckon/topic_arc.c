/* Time, gas and heat of the arc; preheat and interpass. */
#include "reckon/topic.h"

#include "reckon/arc.h"
#include "reckon/preheat.h"

#include <math.h>

#define N(x) answer_number(an, (x))
#define L(mm) answer_bare(an, MEASURE_FINE, (mm))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))
#define B(measure, x) answer_bare(an, MEASURE_##measure, (x))

/* Arc hours from weight and rate, or from length and speed; 0 after a refusal. */
static double arc_hours(const struct given *g, struct answer *an)
{
	bool weight = given_has(g, "weight") && given_has(g, "rate");
	bool length = given_has(g, "length") && given_has(g, "speed");
	double h;

	if (weight == length) {
		answer_refuse(an, "give weight and rate, or length and speed");
		return 0;
	}
	if (weight) {
		h = arc_hours_by_weight(given_real(g, "weight"), given_real(g, "rate"));
		answer_step(an, "%s / %s = %s h", V(WEIGHT, given_real(g, "weight")),
		    V(RATE, given_real(g, "rate")), N(h));
		return h;
	}
	h = arc_hours_by_length(given_real(g, "length"), given_real(g, "speed"),
	    given_real(g, "passes"));
	answer_step(an, an->metric ? "%s x %s passes / %s / 3600 = %s h"
	    : "%s x %s passes / %s / 60 = %s h", V(FINE, given_real(g, "length")),
	    N(given_real(g, "passes")), V(SPEED, given_real(g, "speed")), N(h));
	return h;
}

TOPIC_WORK(arc_time)
{
	double h = arc_hours(g, an), percent = given_real(g, "operating");

	if (an->fault.n)
		return;
	an->formula = "arc time = weld metal / rate, or length x passes / speed; clock "
	    "time = arc time / operating factor";
	answer_figure(an, "Arc time", MEASURE_HOURS, h, SEEN_PAGE);
	if (given_has(g, "operating")) {
		answer_step(an, "%s h / %s %% = %s h", N(h), N(percent),
		    N(clock_hours(h, percent)));
		answer_figure(an, "Clock time", MEASURE_HOURS, clock_hours(h, percent),
		    SEEN_PAGE);
	}
	answer_source(an, "definition");
}

TOPIC_WORK(gas)
{
	double flow = given_real(g, "flow"), h = given_real(g, "arc");

	an->formula = "gas = flow x arc time";
	answer_step(an, an->metric ? "%s x 60 x %s h = %s" : "%s x %s h = %s", V(FLOW, flow), N(h),
	    V(VOLUME, gas_ft3(flow, h)));
	answer_figure(an, "Gas", MEASURE_VOLUME, gas_ft3(flow, h), SEEN_PAGE);
	if (given_has(g, "cylinder")) {
		double n = gas_ft3(flow, h) / given_real(g, "cylinder");

		answer_step(an, "%s / %s = %s", V(VOLUME, gas_ft3(flow, h)),
		    V(VOLUME, given_real(g, "cylinder")), N(n));
		answer_figure(an, "Cylinders", MEASURE_NUMBER, n, SEEN_PAGE);
	}
	answer_note(an, "Leaks, preflow and postflow come on top.");
	answer_source(an, "definition");
}

TOPIC_WORK(purge)
{
	double min = purge_minutes(given_real(g, "bore"), given_real(g, "length"),
	    given_real(g, "changes"), given_real(g, "flow"));

	an->formula = "time = changes x pi/4 bore^2 length / flow";
	answer_step(an, an->metric ? "%s x pi/4 x %s^2 x %s / 10^6 L / %s = %s min"
	    : "%s x pi/4 x %s^2 x %s / 1728 ft3 / %s x 60 = %s min",
	    N(given_real(g, "changes")), L(given_real(g, "bore")),
	    L(given_real(g, "length")), V(FLOW, given_real(g, "flow")), N(min));
	answer_figure(an, "Purge before the root", MEASURE_MINUTES, min, SEEN_PAGE);
	answer_note(an, "Argon drives out air to breathe: ventilate, and never enter a "
	    "purged pipe or vessel. Where oxygen is measured, the reading decides.");
	answer_source(an, "geometry; the number of changes is common practice, no "
	    "source");
}

TOPIC_WORK(heat_input)
{
	double v = given_real(g, "volts"), i = given_real(g, "amps");
	double s = given_real(g, "speed");
	double percent = given_real(g, "efficiency");
	double kj_in = heat_input_kj_in(v, i, s, percent / 100);

	an->formula = an->metric
	    ? "heat input = V I / (1000 S) kJ/mm, S in mm/s, x arc efficiency where a code "
	      "asks for it"
	    : "heat input = 60 V I / (1000 S) kJ/in, x arc efficiency where a code asks for "
	      "it";
	answer_step(an, an->metric ? "%s x %s / (1000 x %s)%s%s%s = %s"
	    : "60 x %s x %s / (1000 x %s)%s%s%s = %s", N(v), N(i), B(SPEED, s),
	    percent < 100 ? " x " : "", percent < 100 ? N(percent) : "",
	    percent < 100 ? " %" : "", V(HEAT, kj_in));
	answer_figure(an, "Heat input", MEASURE_HEAT, kj_in, SEEN_PAGE);
	answer_source(an, "published worked examples; ASME IX QW-409.1(a), from memory");
}

/* The category word, or null after a refusal. */
static const char *category_given(const struct given *g, struct answer *an,
    enum seen *seen)
{
	bool low = given_is(g, "hydrogen", "low");
	const char *category, *verified = "";

	if (given_has(g, "category") == given_has(g, "steel")) {
		answer_refuse(an, "give steel (and hydrogen), or category");
		return NULL;
	}
	*seen = SEEN_PAGE;
	if (given_has(g, "category"))
		return given_words(g, "category").p;
	category = preheat_category(given_words(g, "steel"), low, &verified);
	if (!category)
		answer_refuse(an, "steel: %.*s is not one of A36, A53 B, A106 B, "
		    "A572-50, A572-60, A572-65; give category",
		    STR_ARG(given_words(g, "steel")));
	else if (!category[0])
		answer_refuse(an, "steel: %.*s is not listed with ordinary-hydrogen "
		    "filler", STR_ARG(given_words(g, "steel")));
	else
		*seen = seen_of(verified);
	return category && category[0] ? category : NULL;
}

TOPIC_WORK(preheat)
{
	enum seen seen;
	const char *category = category_given(g, an, &seen);
	double t_mm = given_real(g, "thickness");
	const struct preheat *row;

	if (!category)
		return;
	row = preheat_find(str_sub(str_of(category), 0, 1), t_mm);
	if (!row) {
		answer_refuse(an, "thickness: the table begins at 1/8 in");
		return;
	}
	if (seen_of(row->verified) != SEEN_PAGE)
		seen = SEEN_MEMORY;
	an->formula = "by category and the thickest part at the weld";
	answer_step(an, "category %s, %s: the row %s %s%s", row->category, V(FINE, t_mm),
	    row->lo_in > 0.125 ? "over" : "from", V(FINE, row->lo_in * 25.4),
	    row->hi_in > 0 ? answer_say(an, " to %s", V(FINE, row->hi_in * 25.4)) : "");
	answer_figure(an, "Least preheat", MEASURE_TEMPERATURE, row->least_f, seen);
	if (fabs(measure_metric(MEASURE_TEMPERATURE,
	    row->least_f) - row->printed_c) > 0.5)
		answer_remark(an, "the code prints %s °C", N(row->printed_c));
	answer_figure(an, "Least interpass", MEASURE_TEMPERATURE, row->least_f, seen);
	answer_note(an, "Metal colder than %s is first heated to %s at least. Highly "
	    "restrained joints may need more.",
	    an->metric ? "0 °C [32 °F]" : "32 °F [0 °C]",
	    an->metric ? "20 °C [70 °F]" : "70 °F [20 °C]");
	answer_source(an, PREHEAT_SOURCE);
}

TOPIC_WORK(interpass)
{
	const struct metal *m = metal_find(given_words(g, "material"));
	const struct interpass *row = m ? interpass_find(m->family) : NULL;

	if (!row) {
		answer_refuse(an, "material: no interpass figure for %.*s here",
		    STR_ARG(given_words(g, "material")));
		return;
	}
	an->formula = "by kind of metal";
	if (row->most_f > 0)
		answer_figure(an, "Highest interpass", MEASURE_TEMPERATURE, row->most_f,
		    seen_of(row->verified));
	else
		answer_words(an, "Interpass", seen_of(row->verified), "%s", row->words);
	if (row->most_f > 0)
		answer_remark(an, "%s", row->words);
	answer_note(an, "The written procedure decides.");
	answer_source(an, row->source);
}

TOPIC_WORK(carbon)
{
	double c = given_real(g, "c"), mn = given_real(g, "mn"), cr = given_real(g, "cr");
	double mo = given_real(g, "mo"), v = given_real(g, "v"), ni = given_real(g, "ni");
	double cu = given_real(g, "cu"), ce = carbon_equivalent(c, mn, cr, mo, v, ni, cu);

	if (c + mn + cr + mo + v + ni + cu > 100) {
		answer_refuse(an, "the parts add up to more than 100 %%");
		return;
	}
	an->formula = "C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15, percent by weight";
	answer_step(an, "%s + %s/6 + (%s + %s + %s)/5 + (%s + %s)/15 = %s", N(c), N(mn),
	    N(cr), N(mo), N(v), N(ni), N(cu), N(ce));
	answer_figure(an, "Carbon equivalent", MEASURE_NUMBER, ce, SEEN_PAGE);
	answer_source(an, "IIW formula, published pages on weldability");
}
