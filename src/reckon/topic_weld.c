/* Fillets, grooves, weld metal and filler. */
#include "reckon/topic.h"

#include "reckon/arc.h"
#include "reckon/fillet.h"
#include "reckon/groove.h"
#include "reckon/metal.h"
#include "reckon/stock.h"

#include <math.h>

#define N(x) answer_number(an, (x))
#define L(mm) answer_bare(an, MEASURE_FINE, (mm))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))
#define B(measure, x) answer_bare(an, MEASURE_##measure, (x))

TOPIC_WORK(fillet)
{
	double thin_mm = given_real(g, "thinner"), thick_mm = given_real(g, "thicker");
	bool low = given_is(g, "hydrogen", "low");
	struct fillet_limit leg;

	if (!given_has(g, "thicker"))
		thick_mm = thin_mm;
	if (thick_mm < thin_mm - 1e-9) {
		answer_refuse(an, "thicker: thinner than the part called thinner");
		return;
	}
	leg = fillet_least_leg(thin_mm, thick_mm, low, given_is(g, "loading", "cyclic"));
	an->formula = "least leg by the thickness band; never more than the thinner part";
	answer_step(an, "the band is that of the %s part, %s",
	    low ? "thinner" : "thicker", V(FINE, low ? thin_mm : thick_mm));
	if (!low)
		answer_note(an, "Ordinary-hydrogen filler: the weld is made in a single "
		    "pass.");
	answer_figure(an, "Least leg", MEASURE_LENGTH, leg.mm, leg.seen);
	answer_figure(an, "Its throat", MEASURE_FINE, fillet_throat_mm(leg.mm), leg.seen);
	answer_figure(an, "May fall short", MEASURE_LENGTH, fillet_undersize(leg.mm).mm,
	    fillet_undersize(leg.mm).seen);
	answer_remark(an, "for up to 10 %% of the weld");
	answer_source(an, leg.source);
	answer_source(an, fillet_undersize(leg.mm).source);
}

TOPIC_WORK(lap_edge)
{
	double edge_mm = given_real(g, "edge");
	struct fillet_limit leg = fillet_largest_lap_leg(edge_mm);

	an->formula = an->metric
	    ? "edge under 6.35 mm: leg = edge; from 6.35 mm: leg = edge - 1.588 mm"
	    : "edge under 1/4 in: leg = edge; from 1/4 in: leg = edge - 1/16 in";
	answer_step(an, "%s edge: leg = %s", V(FINE, edge_mm), V(FINE, leg.mm));
	answer_figure(an, "Largest leg", MEASURE_LENGTH, leg.mm, leg.seen);
	answer_note(an, "A drawing may ask for the edge to be built out to the full "
	    "throat.");
	answer_source(an, leg.source);
}

static void note_skew(struct answer *an, double psi_deg)
{
	if (psi_deg < 60 || psi_deg > 135)
		answer_note(an, "A fillet between parts at %s° is outside 60 to 135°: "
		    "the code treats it otherwise (AWS D1.1 4.4.3 (2020), from memory).",
		    N(psi_deg));
}

static bool skew_is_sound(const struct given *g, struct answer *an)
{
	if (given_real(g, "angle") < 180)
		return true;
	answer_refuse(an, "angle: the parts must meet at less than 180°");
	return false;
}

TOPIC_WORK(throat)
{
	double leg_mm = given_real(g, "leg"), leg2_mm = given_real(g, "leg2");
	double psi_deg = given_real(g, "angle"), mm;

	if (!skew_is_sound(g, an))
		return;
	if (given_has(g, "leg2")) {
		an->formula = "throat = a b sin A / sqrt(a^2 + b^2 - 2 a b cos A), flat face, "
		    "A between the parts; the shorter leg when the face leans beyond it";
		mm = fillet_throat_unequal_mm(leg_mm, leg2_mm, psi_deg);
		if (mm < fmin(leg_mm, leg2_mm))
			answer_step(an, "%s x %s x sin %s° / sqrt(%s^2 + %s^2 - 2 x %s x %s "
			    "x cos %s°) = %s", L(leg_mm), L(leg2_mm), N(psi_deg),
			    L(leg_mm), L(leg2_mm), L(leg_mm), L(leg2_mm), N(psi_deg),
			    V(FINE, mm));
		else
			answer_step(an, "the face leans beyond the shorter leg, %s", V(FINE, mm));
		note_skew(an, psi_deg);
	} else {
		an->formula = "throat = leg cos(angle / 2), flat face; 0.7071 leg at 90°";
		mm = fillet_throat_skew_mm(leg_mm, psi_deg);
		answer_step(an, "%s x cos(%s / 2) = %s", L(leg_mm), N(psi_deg),
		    V(FINE, mm));
		note_skew(an, psi_deg);
	}
	answer_figure(an, "Throat", MEASURE_FINE, mm, SEEN_PAGE);
	answer_source(an, "geometry");
}

TOPIC_WORK(leg)
{
	double throat_mm = given_real(g, "throat"), psi_deg = given_real(g, "angle"), mm;

	if (!skew_is_sound(g, an))
		return;
	mm = throat_mm / fillet_throat_skew_mm(1, psi_deg);
	an->formula = "leg = throat / cos(angle / 2), flat face, legs equal along the "
	    "plates";
	answer_step(an, "%s / cos(%s / 2) = %s", L(throat_mm), N(psi_deg), V(FINE, mm));
	note_skew(an, psi_deg);
	answer_figure(an, "Leg", MEASURE_FINE, mm, SEEN_PAGE);
	answer_source(an, "geometry");
}

static struct groove groove_given(const struct given *g)
{
	static const struct {
		const char *word;
		enum groove_shape shape;
		bool both;
	} rows[] = {
		{ "square", GROOVE_SQUARE, false },
		{ "v", GROOVE_V, false }, { "double-v", GROOVE_V, true },
		{ "bevel", GROOVE_BEVEL, false }, { "double-bevel", GROOVE_BEVEL, true },
		{ "u", GROOVE_U, false }, { "double-u", GROOVE_U, true },
		{ "j", GROOVE_J, false }, { "double-j", GROOVE_J, true },
	};
	struct groove v = {
		.thickness_mm = given_real(g, "thickness"), .gap_mm =
		    given_real(g, "gap"),
		.land_mm = given_real(g, "land"), .angle_deg = given_real(g, "included"),
		.radius_mm = given_real(g, "radius"), .front_mm = given_real(g, "front"),
	};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		if (!given_is(g, "shape", rows[i].word))
			continue;
		v.shape = rows[i].shape;
		v.both = rows[i].both;
	}
	return v;
}

/* Inputs that a shape needs or cannot have. */
static const char *groove_misfit(const struct given *g, const struct groove *v)
{
	bool arc = v->shape == GROOVE_U || v->shape == GROOVE_J;

	if (v->shape == GROOVE_SQUARE && (given_has(g, "included") ||
	    given_real(g, "land") > 0))
		return "a square groove has no angle and no land";
	if (v->shape != GROOVE_SQUARE && !given_has(g, "included"))
		return "included: the angle of the groove is missing";
	if (arc && !given_has(g, "radius"))
		return "radius: a U or J groove has one";
	if (!arc && given_has(g, "radius"))
		return "radius: only a U or J groove has one";
	if (!v->both && given_has(g, "front"))
		return "front: only a double groove has a front depth";
	if (given_is(g, "backing", "yes") && given_has(g, "root-height"))
		return "root-height: a weld on backing has no root reinforcement";
	if (given_has(g, "root-height") != given_has(g, "root-width"))
		return "root-height and root-width go together";
	return groove_fault(v);
}

/* One face; its own width unless one is given. */
static double add_cap(const struct given *g, struct answer *an, const char *face,
    double own_mm)
{
	double width_mm = given_has(g, "cap-width") ? given_real(g, "cap-width") : own_mm;
	double mm2 = cap_mm2(width_mm, given_real(g, "cap-height"));

	answer_step(an, "%s: 2/3 x %s x %s = %s", face, L(width_mm),
	    L(given_real(g, "cap-height")), V(AREA, mm2));
	return mm2;
}

static double add_caps(const struct given *g, struct answer *an, const struct groove *v)
{
	double cap = 0, root = 0;

	if (given_has(g, "cap-height")) {
		cap = add_cap(g, an, "cap", groove_width_mm(v));
		if (v->both)
			cap += add_cap(g, an, "cap at the back", groove_back_width_mm(v));
		answer_figure(an, "Reinforcement", MEASURE_AREA, cap, SEEN_PAGE);
	}
	if (given_has(g, "root-height")) {
		root = cap_mm2(given_real(g, "root-width"), given_real(g, "root-height"));
		answer_step(an, "root: 2/3 x %s x %s = %s",
		    L(given_real(g, "root-width")),
		    L(given_real(g, "root-height")), V(AREA, root));
	}
	return cap + root;
}

TOPIC_WORK(groove)
{
	struct groove v = groove_given(g);
	const char *misfit = groove_misfit(g, &v);
	double area, all;

	if (misfit) {
		answer_refuse(an, "%s", misfit);
		return;
	}
	an->formula = "area = gap x thickness + sides + 2/3 cap width x cap height; a "
	    "slope adds depth^2 tan(side angle) / 2, an arc r^2 ((90° - b)/2 - "
	    "sin(2b)/4) below it";
	area = groove_mm2(&v);
	answer_step(an, "gap x thickness = %s x %s = %s", L(v.gap_mm),
	    L(v.thickness_mm), V(AREA, v.gap_mm * v.thickness_mm));
	answer_step(an, "prepared sides = %s",
	    V(AREA, area - v.gap_mm * v.thickness_mm));
	answer_figure(an, "Groove area", MEASURE_AREA, area, SEEN_PAGE);
	answer_figure(an, "Width at the face", MEASURE_FINE, groove_width_mm(&v),
	    SEEN_PAGE);
	all = area + add_caps(g, an, &v);
	answer_figure(an, "Weld area", MEASURE_AREA, all, SEEN_PAGE);
	answer_figure(an, "Steel weld metal", MEASURE_DEPOSIT,
	    stock_lb_ft(all, DENSITY_STEEL_WELD_LB_IN3), SEEN_PAGE);
	if (given_is(g, "backing", "yes"))
		answer_note(an, "On backing the root is filled to the back face and has "
		    "no reinforcement; metal fused into the backing is not counted.");
	answer_source(an, "geometry; cap as a parabola and 0.283 lb/in3 from a filler "
	    "metal data book, consumption chapter");
}

static const struct weld_metal *weld_metal_given(const struct given *g)
{
	if (given_is(g, "metal", "stainless"))
		return weld_metal_of(FAMILY_STAINLESS);
	return weld_metal_of(given_is(g, "metal", "aluminum") ? FAMILY_ALUMINUM
	    : FAMILY_STEEL);
}

TOPIC_WORK(weld_metal)
{
	double leg_mm = given_real(g, "leg");
	double leg2_mm = given_has(g, "leg2") ? given_real(g, "leg2") : leg_mm;
	const struct weld_metal *metal = weld_metal_given(g);
	double mm2 = fillet_mm2(leg_mm, leg2_mm) * given_real(g, "overweld");
	double lb_ft = stock_lb_ft(mm2, metal->density_lb_in3);
	double feet = given_real(g, "length") / 304.8;

	an->formula = an->metric
	    ? "kg/m = leg x leg2 / 2 x overweld x density / 10^6; kg = kg/m x m"
	    : "lb/ft = leg x leg2 / 2 x overweld x 12 x density; lb = lb/ft x ft";
	answer_step(an, an->metric ? "%s x %s / 2 x %s x %s / 10^6 = %s"
	    : "%s x %s / 2 x %s x 12 x %s = %s", L(leg_mm), L(leg2_mm),
	    N(given_real(g, "overweld")), B(DENSITY, metal->density_lb_in3),
	    V(DEPOSIT, lb_ft));
	answer_step(an, "%s x %s = %s", V(DEPOSIT, lb_ft), V(RUN, feet * 304.8),
	    V(WEIGHT, lb_ft * feet));
	answer_figure(an, an->metric ? "Weld metal a meter" : "Weld metal a foot",
	    MEASURE_DEPOSIT, lb_ft, metal->seen);
	answer_figure(an, "Weld metal", MEASURE_WEIGHT, lb_ft * feet, metal->seen);
	if (given_has(g, "efficiency")) {
		double percent = given_real(g, "efficiency");
		double bought_lb = filler_bought_lb(lb_ft * feet, percent);

		answer_step(an, "%s / %s %% = %s", V(WEIGHT, lb_ft * feet), N(percent),
		    V(WEIGHT, bought_lb));
		answer_figure(an, "Filler to buy", MEASURE_WEIGHT, bought_lb, metal->seen);
	}
	answer_note(an, "For a groove take its weld metal a foot from `fitup reckon "
	    "groove`.");
	answer_source(an, metal->source);
}

/* The efficiency given, or the table's with its stub; 0 after a refusal. */
static double efficiency_given(const struct given *g, struct answer *an, enum seen *seen)
{
	double electrode_mm = given_real(g, "electrode"), stub_mm = given_real(g, "stub");
	bool stick = given_is(g, "process", "SMAW");
	const struct efficiency *row;

	*seen = SEEN_PAGE;
	if (given_has(g, "efficiency"))
		return given_real(g, "efficiency");
	row = efficiency_find(given_words(g, "process"), given_words(g, "gas"),
	    electrode_mm);
	if (!row) {
		answer_refuse(an, "process, gas: no efficiency is known for them; SMAW, "
		    "GMAW, FCAW-G, FCAW-S, SAW, GTAW, or give efficiency");
		return 0;
	}
	*seen = seen_of(row->verified);
	answer_source(an, row->source);
	answer_step(an, "%s%s%s: %s %%", row->process, row->condition[0] ? ", " : "",
	    row->condition, N(row->percent));
	if (!stick && (given_has(g, "stub") || given_has(g, "electrode")))
		answer_refuse(an, "electrode and stub are for SMAW only");
	if (!stick || !given_has(g, "stub"))
		return row->percent;
	if (electrode_mm <= 0)
		electrode_mm = 14 * 25.4;
	if (stub_mm >= electrode_mm)
		answer_refuse(an, "stub: longer than the electrode");
	if (electrode_mm <= 2 * 25.4)
		answer_refuse(an, "electrode: shorter than a stub");
	if (fabs(stub_mm - 2 * 25.4) < 1e-6)
		return row->percent;
	answer_step(an, "stub of %s, not %s: x (%s - %s) / (%s - %s)", V(FINE, stub_mm),
	    L(2 * 25.4), L(electrode_mm), L(stub_mm), L(electrode_mm), L(2 * 25.4));
	return efficiency_at_stub(row->percent, electrode_mm, stub_mm);
}

TOPIC_WORK(filler)
{
	double deposit_lb = given_real(g, "weight"), spatter = given_real(g, "spatter"),
	    percent;
	enum seen seen;

	an->formula = "filler bought = weld metal / efficiency";
	percent = efficiency_given(g, an, &seen);
	if (an->fault.n)
		return;
	if (percent > 100 || spatter >= 100) {
		answer_refuse(an, "an efficiency must lie between 0 and 100 %%");
		return;
	}
	if (spatter > 0)
		answer_step(an, "further spatter: x (100 - %s) / 100", N(spatter));
	percent = efficiency_after_spatter(percent, spatter);
	answer_step(an, "%s / %s %% = %s", V(WEIGHT, deposit_lb), N(percent),
	    V(WEIGHT, filler_bought_lb(deposit_lb, percent)));
	answer_figure(an, "Efficiency", MEASURE_PERCENT, percent, seen);
	answer_figure(an, "Filler to buy", MEASURE_WEIGHT, filler_bought_lb(deposit_lb,
	    percent), seen);
	answer_note(an, "The efficiencies of the table already hold spatter and slag, "
	    "and a stub of %s for sticks.", an->metric ? "51 mm [2 in]" : "2 in");
	answer_source(an, "definition of deposition efficiency");
}
