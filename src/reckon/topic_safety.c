/* Torch, filter shade, acetylene, and the hours behind a credit. */
#include "reckon/topic.h"

#include "reckon/credit.h"
#include "reckon/shade.h"
#include "reckon/torch.h"

#define N(x) answer_number(an, (x))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))

TOPIC_WORK(torch)
{
	const struct torch_setting *s = torch_find(given_real(g, "thickness"));

	if (!s) {
		answer_refuse(an, "thickness: the table ends at 4 in");
		return;
	}
	an->formula = "by table: a starting setting";
	answer_words(an, "Tip", SEEN_MEMORY, "size %s in one maker's series", s->tip);
	answer_range(an, "Oxygen", MEASURE_PRESSURE, s->oxygen_lo_psig, s->oxygen_hi_psig,
	    SEEN_MEMORY);
	answer_range(an, "Acetylene", MEASURE_PRESSURE, s->fuel_lo_psig, s->fuel_hi_psig,
	    SEEN_MEMORY);
	answer_range(an, "Speed", MEASURE_SPEED, s->speed_lo_ipm, s->speed_hi_ipm,
	    SEEN_MEMORY);
	answer_note(an, "Carbon steel only. The chart of the torch's maker decides: tip "
	    "sizes are not standard. Acetylene never over %s (29 CFR "
	    "1910.253(a)(2)).", an->metric ? "103 kPa [15 psig]" : "15 psig");
	answer_source(an, "from memory");
}

/* The last number of "4-5". */
static unsigned last_number(const char *words)
{
	str rest = str_of(words), part;
	uint32_t v, n = 0;

	while (str_next(&rest, '-', &part))
		if (str_to_u32(str_trim(part), &v))
			n = v;
	return n;
}

static const struct shade *shade_given(const struct given *g, struct answer *an)
{
	str process = given_words(g, "process");
	bool plate = shade_is_by_thickness(process);
	const struct shade *s = plate ? shade_by_thickness(process,
	    given_real(g, "thickness"))
	                              : shade_by_current(process, given_real(g, "amps"));

	if (!s)
		answer_refuse(an, "process: %.*s is not in the regulation's table; SMAW, "
		    "GMAW, FCAW, GTAW, CAC-A, PAW, PAC, CAW, OFW, OFC, TB or TS",
		    STR_ARG(process));
	else if (plate && (!given_has(g, "thickness") || given_has(g, "amps")))
		answer_refuse(an, "this process goes by thickness of plate, not by amps");
	else if (s->unit[0] == 'A' && (!given_has(g, "amps") ||
	    given_has(g, "thickness")))
		answer_refuse(an, "this process goes by amps, not by thickness");
	else if (!s->unit[0] && (given_has(g, "amps") || given_has(g, "thickness")))
		answer_refuse(an, "this process has one shade: leave out amps and "
		    "thickness");
	return s;
}

TOPIC_WORK(shade)
{
	const struct shade *s = shade_given(g, an);
	double x = s && s->unit[0] == 'A' ? given_real(g, "amps") :
	    given_real(g, "thickness") / 25.4;
	unsigned start;

	if (an->fault.n)
		return;
	start = last_number(s->suggested);
	if (start < (unsigned)s->least)
		start = (unsigned)s->least + 2;
	an->formula = "by table; on a shared boundary the darker row";
	if (s->unit[0] && s->hi > 0)
		answer_step(an, "%s %s: the row %s to %s %s", N(x), s->unit, N(s->lo),
		    N(s->hi), s->unit);
	else if (s->unit[0])
		answer_step(an, "%s %s: the row from %s %s", N(x), s->unit, N(s->lo),
		    s->unit);
	answer_figure(an, "Least shade", MEASURE_COUNT, s->least, SEEN_PAGE);
	answer_figure(an, "Start at", MEASURE_COUNT, start, SEEN_MEMORY);
	answer_note(an, "Never lighter than %d (29 CFR 1910.133); start at %u or darker "
	    "and lighten only until the weld is clear.", s->least, start);
	if (s->hi > 0 && x > s->hi + 1e-9)
		answer_note(an, "The table ends at %s %s: this is its darkest row.",
		    N(s->hi), s->unit);
	answer_source(an, SHADE_SOURCE "; start from ANSI Z49.1, from memory");
}

TOPIC_WORK(acetylene)
{
	double capacity = given_real(g, "capacity"), flow = given_real(g, "flow");
	bool continuous = given_is(g, "use", "continuous");
	double most = acetylene_most_cfh(capacity, continuous);

	an->formula = continuous ? "most flow = capacity / 15 an hour"
	                         : "most flow = capacity / 10 an hour";
	answer_step(an, an->metric ? "%s / %d / 60 = %s" : "%s / %d = %s",
	    V(VOLUME, capacity), continuous ? 15 : 10, V(FLOW, most));
	answer_figure(an, "Most flow", MEASURE_FLOW, most, SEEN_MEMORY);
	answer_figure(an, "By older handbooks, 1/7", MEASURE_FLOW,
	    acetylene_older_cfh(capacity), SEEN_MEMORY);
	if (given_has(g, "flow")) {
		if (flow / most > 1000) {
			answer_refuse(an, "flow: far more than cylinders can give");
			return;
		}
		answer_figure(an, "Cylinders on a manifold", MEASURE_COUNT,
		    acetylene_cylinders(flow, most), SEEN_MEMORY);
	}
	answer_figure(an, "Highest pressure", MEASURE_PRESSURE, ACETYLENE_MOST_PSIG,
	    SEEN_PAGE);
	answer_note(an, "Drawn faster, acetone leaves with the gas. A cylinder that lay "
	    "down stands upright before use; the supplier's word decides.");
	answer_source(an, "29 CFR 1910.253(a)(2) for 15 psig; CGA G-1 (2003 on) for the "
	    "flow, from memory");
}

TOPIC_WORK(credit_hours)
{
	bool quarter = given_is(g, "calendar", "quarter");
	double weeks = given_real(g, "weeks"), credits = given_real(g, "credits");
	double taught = (given_real(g, "lecture") + given_real(g, "lab")) * weeks;
	double work = taught + given_real(g, "outside") * weeks;
	double asked = credit_work_h(credits, quarter ? 10 : 15);

	if (given_real(g, "lecture") + given_real(g, "lab") +
	    given_real(g, "outside") > 168) {
		answer_refuse(an, "lecture, lab and outside are hours a week: a week has "
		    "168");
		return;
	}
	if (taught <= 0 || weeks <= 0) {
		answer_refuse(an, "give lecture or lab, and weeks");
		return;
	}
	an->formula = "work asked for = credits x 3 h a week x 15 weeks (semester) or 10 "
	    "(quarter)";
	answer_step(an, "taught: (%s + %s) x %s = %s h", N(given_real(g, "lecture")),
	    N(given_real(g, "lab")), N(weeks), N(taught));
	answer_step(an, "asked for: %s x 3 x %s = %s h", N(credits), quarter ?
	    "10" : "15", N(asked));
	answer_figure(an, "Hours taught", MEASURE_NUMBER, taught, SEEN_PAGE);
	answer_figure(an, "Hours of work in all", MEASURE_NUMBER, work, SEEN_PAGE);
	answer_figure(an, "Least work for the credits", MEASURE_NUMBER, asked, SEEN_PAGE);
	answer_figure(an, "Outside hours owed", MEASURE_NUMBER, taught < asked ?
	    asked - taught : 0, SEEN_PAGE);
	answer_figure(an, "Credits by clock hours", MEASURE_NUMBER,
	    credit_of_clock_hours(taught, quarter), SEEN_MEMORY);
	answer_words(an, "Verdict", SEEN_PAGE, work + 1e-9 < asked ?
	    "too little work for the credits" : "the work carries the credits");
	answer_note(an, "34 CFR 600.2 says about 15 weeks, or 10 to 12; the college's "
	    "own rule and its accreditor decide. The clock-hour rule is for programs "
	    "that must convert.");
	answer_source(an, "34 CFR 600.2; 34 CFR 668.8(l) since 2021: 30 clock hours a "
	    "semester credit, 20 a quarter credit");
}
