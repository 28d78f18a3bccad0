/* Press brake, shear, punch, roll, and the flat length of bent parts. */
#include "reckon/topic.h"

#include "reckon/brake.h"
#include "reckon/fold.h"
#include "reckon/machine.h"
#include "reckon/pattern.h"

#include <math.h>

#define N(x) answer_number(an, (x))
#define L(mm) answer_bare(an, MEASURE_FINE, (mm))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))
#define B(measure, x) answer_bare(an, MEASURE_##measure, (x))

static const char plate_wins[] =
	"The maker's plate on the machine and the tool maker's limit always win.";

static const struct metal *metal_by(const struct given *g, struct answer *an,
    const char *key)
{
	str words = given_words(g, key);
	const struct metal *m = metal_find(words);

	if (!m)
		answer_refuse(an, "%s: %.*s is not known here; mild steel, A36, 304, "
		    "aluminum, 6061-T6 and some more are", key, STR_ARG(words));
	return m;
}

/* Both values in the base unit of the measure. */
static void add_verdict(struct answer *an, enum measure m, double have, double most,
    enum seen seen)
{
	struct figure a = { .measure = m, .value = have, .high = have };
	struct figure b = { .measure = m, .value = most, .high = most };
	struct buf have_text = { .arena = an->arena }, most_text = { .arena = an->arena };

	figure_text(&have_text, &a, an->metric);
	figure_text(&most_text, &b, an->metric);
	answer_words(an, "Verdict", seen, "%s: %s, and it takes %s",
	    have <= most + 1e-9 ? "within it" : "too much", buf_z(&have_text),
	    buf_z(&most_text));
}

/* The opening named, or chosen among those owned, or the one to look for; 0 after a
 * refusal. */
static double opening_given(const struct given *g, struct answer *an)
{
	double t_mm = given_real(g, "thickness"), wanted_mm = brake_opening_mm(t_mm);
	size_t n, i;
	const double *owned = given_list(g, "owned", &n);

	if (given_has(g, "opening") && given_has(g, "owned")) {
		answer_refuse(an, "give opening or owned, not both");
		return 0;
	}
	if (given_has(g, "opening"))
		return given_real(g, "opening");
	answer_step(an, "opening to look for: %s t = %s", t_mm > 12.7 + 1e-6 ?
	    "10" : "8", V(FINE, wanted_mm));
	if (!given_has(g, "owned"))
		return wanted_mm;
	i = brake_choose(owned, n, t_mm);
	if (i == n) {
		answer_refuse(an, "owned: no opening from 6 t to 12 t (%s to %s) "
		    "among them", L(6 * t_mm), V(FINE, 12 * t_mm));
		return 0;
	}
	return owned[i];
}

static void add_brake_fit(const struct given *g, struct answer *an, double tons_ft,
    enum seen seen)
{
	double feet = given_real(g, "length") / 304.8, tons = given_real(g, "tons");

	if (given_has(g, "bed") && given_real(g, "length") > given_real(g, "bed") + 1e-6)
		answer_words(an, "Bed", SEEN_PAGE, "too short by %s",
		    V(FINE, given_real(g, "length") - given_real(g, "bed")));
	if (!given_has(g, "tons"))
		return;
	add_verdict(an, MEASURE_TONS, tons_ft * feet, tons, seen);
	answer_figure(an, "Longest such bend", MEASURE_FINE, tons / tons_ft * 304.8,
	    seen);
}

TOPIC_WORK(brake)
{
	const struct metal *m = metal_by(g, an, "material");
	double t_mm = given_real(g, "thickness"), v_mm, factor, tons_ft;
	enum seen seen;

	if (!m || (v_mm = opening_given(g, an)) <= 0)
		return;
	factor = brake_factor(m);
	if (factor <= 0 || m->radius_per_v <= 0) {
		answer_refuse(an, "material: no press-brake figures for %s here",
		    m->name);
		return;
	}
	seen = seen_of(m->brake_verified);
	tons_ft = brake_tons_ft(t_mm, v_mm) * factor;
	/* 575 tons/ft an inch is 660.75 kN/m a millimeter. */
	an->formula = an->metric
	    ? "kN/m = 660.75 t^2 / V x factor of the metal (air bend, 414 MPa steel 1)"
	    : "tons/ft = 575 t^2 / V x factor of the metal (air bend, 60 ksi steel 1)";
	answer_step(an, "%s x %s^2 / %s x %s = %s", an->metric ? "660.75" : "575", L(t_mm),
	    L(v_mm), N(factor), V(TONS_PER_FOOT, tons_ft));
	answer_figure(an, "Die opening V", MEASURE_LENGTH, v_mm, SEEN_PAGE);
	answer_figure(an, an->metric ? "Force a meter" : "Force a foot", MEASURE_TONS_PER_FOOT, tons_ft, seen);
	answer_figure(an, "Force", MEASURE_TONS, tons_ft *
	    given_real(g, "length") / 304.8, seen);
	answer_figure(an, "Inside radius, about", MEASURE_FINE, m->radius_per_v * v_mm,
	    seen_of(m->radius_verified));
	answer_figure(an, "Least flange", MEASURE_LENGTH, brake_flange_mm(v_mm),
	    SEEN_MEMORY);
	add_brake_fit(g, an, tons_ft, seen);
	answer_note(an, "An air bend; bottoming takes 3 to 5 times as much (from "
	    "memory).");
	answer_note(an, "%s", plate_wins);
	answer_source(an, "press-brake tooling articles (four pages)");
}

TOPIC_WORK(shear)
{
	const struct metal *m = metal_by(g, an, "material"), *rated = metal_by(g, an,
	    "rated-for");
	double factor, most_mm;
	bool own;

	if (!m || !rated)
		return;
	own = m == rated || (m->family == FAMILY_STEEL && shear_factor(m) >= 1 &&
	    shear_factor(rated) >= 1 && rated->family == FAMILY_STEEL);
	if (shear_factor(m) <= 0 || shear_factor(rated) <= 0) {
		answer_refuse(an, "material: no shear figures for %s here",
		    shear_factor(m) > 0 ? rated->name : m->name);
		return;
	}
	factor = own ? 1 : shear_factor(m) / shear_factor(rated);
	most_mm = given_real(g, "rated") * factor;
	an->formula = "thickness = rated thickness x factor of the metal";
	answer_step(an, "%s x %s = %s", V(FINE, given_real(g, "rated")), N(factor),
	    V(FINE, most_mm));
	answer_figure(an, "Thickest to cut", MEASURE_FINE, most_mm, own ?
	    SEEN_PAGE : SEEN_MEMORY);
	if (!own)
		answer_remark(an, "an estimate");
	if (given_has(g, "thickness"))
		add_verdict(an, MEASURE_FINE, given_real(g, "thickness"), most_mm,
		    own ? SEEN_PAGE : SEEN_MEMORY);
	if (given_has(g, "length") && given_has(g, "bed") &&
	    given_real(g, "length") > given_real(g, "bed") + 1e-6)
		answer_words(an, "Bed", SEEN_PAGE, "too short by %s",
		    V(FINE, given_real(g, "length") - given_real(g, "bed")));
	answer_note(an, "%s", plate_wins);
	answer_source(an, own ? "the rating given" : "shear factors from memory: "
	    "stainless 0.67, aluminum 1.25, else 60 ksi over the strength");
}

TOPIC_WORK(punch)
{
	const struct metal *m = metal_by(g, an, "material");
	double t_mm = given_real(g, "thickness"), d_mm = given_real(g, "diameter");
	double edge_mm, tons, ksi;

	if (!m)
		return;
	ksi = given_has(g, "strength") ? given_real(g, "strength") : m->punch_ksi;
	if (ksi <= 0) {
		answer_refuse(an, "material: no shear strength for %s here; give "
		    "strength", m->name);
		return;
	}
	if (given_has(g, "diameter") == given_has(g, "edge")) {
		answer_refuse(an, "give diameter of a round hole, or edge (the length "
		    "cut)");
		return;
	}
	edge_mm = given_has(g, "edge") ?
	    given_real(g, "edge") : 3.14159265358979323846 * d_mm;
	tons = punch_tons(edge_mm, t_mm, ksi);
	an->formula = an->metric
	    ? "kN = cut edge x t x shear strength in MPa / 1000; round edge = pi d"
	    : "tons = cut edge x t x shear strength / 2000; round edge = pi d";
	answer_step(an, "%s x %s x %s / %s = %s", L(edge_mm), L(t_mm),
	    an->metric ? B(STRENGTH, ksi) : N(ksi * 1000), an->metric ? "1000" : "2000",
	    V(TONS, tons));
	answer_figure(an, "Force", MEASURE_TONS, tons,
	    given_has(g, "strength") ? SEEN_PAGE : SEEN_MEMORY);
	answer_remark(an, "an estimate");
	if (given_has(g, "tons")) {
		add_verdict(an, MEASURE_TONS, tons, given_real(g, "tons"), SEEN_MEMORY);
		answer_figure(an, "Largest round hole", MEASURE_FINE,
		    punch_most_mm(given_real(g, "tons"), t_mm, ksi), SEEN_MEMORY);
	}
	if (given_has(g, "diameter") && d_mm < t_mm - 1e-9)
		answer_note(an, "A punch thinner than the plate breaks: drill the hole.");
	answer_note(an, "%s", plate_wins);
	answer_source(an, "definition of shear stress; shear strengths from memory, the "
	    "high end");
}

TOPIC_WORK(roll)
{
	const struct metal *m = metal_by(g, an, "material");
	double width_mm = given_has(g, "width") ? given_real(g, "width") :
	    given_real(g, "bed");
	double most_mm;

	if (!m)
		return;
	if (m->uts_ksi <= 0) {
		answer_refuse(an, "material: name the alloy; its strength is needed");
		return;
	}
	if (width_mm > given_real(g, "bed") + 1e-6) {
		answer_refuse(an, "width: wider than the bed");
		return;
	}
	most_mm = roll_most_mm(given_real(g, "rated"), given_real(g, "bed"), width_mm,
	    m->uts_ksi);
	an->formula = an->metric
	    ? "thickness = rated sqrt(bed / width x 413.7 / strength), never over rated"
	    : "thickness = rated sqrt(bed / width x 60 / strength), never over rated";
	answer_step(an, "%s x sqrt(%s / %s x %s / %s) = %s", L(given_real(g, "rated")),
	    L(given_real(g, "bed")), L(width_mm), B(STRENGTH, 60), B(STRENGTH, m->uts_ksi),
	    V(FINE, most_mm));
	answer_figure(an, "Thickest to roll", MEASURE_FINE, most_mm, SEEN_MEMORY);
	answer_remark(an, "an estimate");
	if (given_has(g, "thickness"))
		add_verdict(an, MEASURE_FINE, given_real(g, "thickness"), most_mm,
		    SEEN_MEMORY);
	if (given_has(g, "top-roll"))
		answer_figure(an, "Least diameter, about", MEASURE_LENGTH,
		    roll_least_diameter_mm(given_real(g, "top-roll")), SEEN_MEMORY);
	answer_note(an, "%s", plate_wins);
	answer_source(an, "bending moment of a flat plate; strengths and 1.5 x top roll "
	    "from memory");
}

/* K given, or by the ratio of radius to thickness. */
static double k_given(const struct given *g, struct answer *an, enum seen *seen)
{
	double r_mm = given_real(g, "radius"), t_mm = given_real(g, "thickness");

	*seen = given_has(g, "k") ? SEEN_PAGE : SEEN_MEMORY;
	if (given_has(g, "k")) {
		if (given_real(g, "k") > 0.5)
			answer_refuse(an, "k: the neutral line lies at 0.5 t at most");
		return given_real(g, "k");
	}
	answer_step(an, "K by radius over thickness (from memory): %s",
	    N(fold_k(r_mm, t_mm)));
	return fold_k(r_mm, t_mm);
}

static bool bend_is_sound(const struct given *g, struct answer *an)
{
	if (given_real(g, "angle") < 180)
		return true;
	answer_refuse(an, "angle: the angle bent through must be under 180°");
	return false;
}

TOPIC_WORK(allowance)
{
	double r_mm = given_real(g, "radius"), t_mm = given_real(g, "thickness"),
	    a = given_real(g, "angle");
	enum seen seen = SEEN_PAGE;
	double k, mm;

	if (!bend_is_sound(g, an))
		return;
	if (!given_is(g, "rule", "exact") && given_has(g, "k")) {
		answer_refuse(an, "k goes with the exact rule only");
		return;
	}
	if (given_is(g, "rule", "navy")) {
		an->formula = "(0.0173 R + 0.0078 t) A";
		mm = fold_allowance_navy_mm(r_mm, t_mm, a);
		answer_source(an, "NAVEDTRA, aviation structural mechanic, bend "
		    "allowance");
	} else if (given_is(g, "rule", "faa")) {
		an->formula = "(0.01743 R + 0.0078 t) A";
		mm = fold_allowance_faa_mm(r_mm, t_mm, a);
		seen = SEEN_MEMORY;
		answer_source(an, "FAA-H-8083-31 (constants from memory)");
	} else {
		an->formula = "pi/180 A (R + K t)";
		k = k_given(g, an, &seen);
		mm = brake_allowance_mm(a, r_mm, k, t_mm);
		answer_step(an, "pi/180 x %s x (%s + %s x %s) = %s", N(a), L(r_mm),
		    N(k), L(t_mm), V(FINE, mm));
		answer_source(an, "geometry; general bend-allowance formula (four "
		    "pages)");
	}
	answer_figure(an, "Bend allowance", MEASURE_FINE, mm, seen);
}

TOPIC_WORK(setback)
{
	double r_mm = given_real(g, "radius"), t_mm = given_real(g, "thickness"),
	    a = given_real(g, "angle");
	double mm;

	if (!bend_is_sound(g, an))
		return;
	mm = brake_setback_mm(a, r_mm, t_mm);
	an->formula = "tan(A / 2) (R + t); R + t at 90°";
	answer_step(an, "tan(%s / 2) x (%s + %s) = %s", N(a), L(r_mm), L(t_mm),
	    V(FINE, mm));
	answer_figure(an, "Setback", MEASURE_FINE, mm, SEEN_PAGE);
	answer_source(an, "FAA-H-8083-31, chapter 4");
}
