/* Bend tests: plunger and strain, strips of the coupon, what a test qualifies. */
#include "reckon/topic.h"

#include "reckon/bend.h"
#include "reckon/jig.h"
#include "reckon/metal.h"
#include "reckon/pipe.h"
#include "reckon/qualify.h"
#include "reckon/strips.h"

#include <math.h>

#define N(x) answer_number(an, (x))
#define L(mm) answer_bare(an, MEASURE_FINE, (mm))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))

/* The code as the tables spell it, or null after a refusal. */
static const char *code_given(const struct given *g, struct answer *an, bool pipeline)
{
	const char *code = pipeline ? jig_code(given_words(g, "code"))
	                            : qualify_code(given_words(g, "code"));

	if (pipeline && (given_is(g, "code", "1104") || given_is(g, "code", "API 1104")))
		return "API 1104";
	if (!code)
		answer_refuse(an, "code: %.*s has no table here: D1.1, IX%s are known",
		    STR_ARG(given_words(g, "code")), pipeline ? ", D1.2, 1104" : "");
	return code;
}

/* Yield strength for the jig of D1.1, in ksi; 0 after a refusal. */
static double yield_given(const struct given *g, struct answer *an)
{
	const struct metal *m;

	if (given_has(g, "yield"))
		return given_real(g, "yield");
	if (!given_has(g, "material")) {
		answer_refuse(an, "yield: AWS D1.1 chooses the jig by yield strength; "
		    "give it, or material");
		return 0;
	}
	m = metal_find(given_words(g, "material"));
	if (!m || m->yield_ksi <= 0) {
		answer_refuse(an, "material: the yield strength of %.*s is not known "
		    "here", STR_ARG(given_words(g, "material")));
		return 0;
	}
	answer_step(an, "yield strength of %s: %s, least of its specification (from "
	    "memory)", m->name, V(STRENGTH, m->yield_ksi));
	return m->yield_ksi;
}

static void judge_plunger(const struct given *g, struct answer *an, const struct jig *j)
{
	static const char *const words[] = {
		[JIG_AS_ASKED] = "as the edition asks",
		[JIG_HARDER] = "narrower than the edition asks: bends harder",
		[JIG_MILDER] = "wider than the edition asks: bends too mildly to count",
	};
	double t_mm = given_real(g, "thickness"), plunger_mm = given_real(g, "plunger");

	if (!given_has(g, "plunger"))
		return;
	answer_figure(an, "Strain on your plunger", MEASURE_PERCENT,
	    bend_strain_percent(plunger_mm, t_mm), SEEN_PAGE);
	answer_words(an, "Your plunger", j->seen, "%s", words[jig_judge(j, plunger_mm)]);
}

/* Without a code nothing is judged: the strain alone. */
static void bend_plain(const struct given *g, struct answer *an)
{
	double t_mm = given_real(g, "thickness"), plunger_mm = given_real(g, "plunger");
	double percent = bend_strain_percent(plunger_mm, t_mm);

	if (!given_has(g, "plunger")) {
		answer_refuse(an, "give code and edition, or plunger for the strain "
		    "alone");
		return;
	}
	if (given_has(g, "edition")) {
		answer_refuse(an, "code is missing beside edition");
		return;
	}
	an->formula = "strain = 100 t / (A + t)";
	answer_step(an, "100 x %s / (%s + %s) = %s %%", L(t_mm), L(plunger_mm),
	    L(t_mm), N(percent));
	answer_figure(an, "Strain of the outer fiber", MEASURE_PERCENT, percent,
	    SEEN_PAGE);
	answer_note(an, "No code is named: the bend is not judged.");
	answer_source(an, BEND_SOURCE " note b");
}

static void add_jig(const struct given *g, struct answer *an, const struct jig *j,
    const char *code)
{
	double t_mm = given_real(g, "thickness"), edition = given_real(g, "edition");
	double percent = bend_strain_percent(j->plunger_mm, t_mm);
	/* The copies that were read are those of ASME IX 2010. */
	enum seen seen = edition > 2010 || edition < 2010 ? SEEN_MEMORY : j->seen;

	an->formula = "strain = 100 t / (A + t), A the width of the plunger";
	answer_step(an, "row: %s", j->words);
	answer_step(an, "100 x %s / (%s + %s) = %s %%", L(t_mm), L(j->plunger_mm),
	    L(t_mm), N(percent));
	answer_figure(an, "Plunger A", MEASURE_LENGTH, j->plunger_mm, seen);
	answer_figure(an, "Plunger radius B", MEASURE_LENGTH, j->plunger_mm / 2, seen);
	answer_figure(an, "Die opening C", MEASURE_LENGTH, j->die_mm, seen);
	answer_figure(an, "Strain of the outer fiber", MEASURE_PERCENT, percent,
	    SEEN_PAGE);
	answer_note(an, "Judged under %s edition %s only.", code, N(edition));
	answer_source(an, j->source);
}

/* The group given, or that of the alloy; empty after a refusal. */
static str group_given(const struct given *g, struct answer *an, const char *code)
{
	str material = given_words(g, "material");
	bool aluminum = sheet_metal_of(material) == METAL_ALUMINUM;

	if (str_eq(str_of(code), STR("AWS D1.2")) && !aluminum && !given_has(g, "group")) {
		answer_refuse(an, "material: AWS D1.2 is for aluminum and goes by its alloy; "
		    "give it, or group");
		return (str){ 0 };
	}
	if (aluminum)
		answer_note(an, "Aluminum is better bent in a wrap-around fixture with a "
		    "mandrel of that diameter (from memory).");
	return given_has(g, "group") ? given_words(g, "group")
	                             : jig_group(material, given_words(g, "filler"));
}

TOPIC_WORK(bend)
{
	str group;
	struct jig j;
	const char *code;
	double yield_ksi = 0, t_mm = given_real(g, "thickness");

	if (!given_has(g, "code")) {
		bend_plain(g, an);
		return;
	}
	if (!given_has(g, "edition")) {
		answer_refuse(an, "edition is missing: a bend is judged under one "
		    "edition");
		return;
	}
	code = code_given(g, an, true);
	if (code && str_eq(str_of(code), STR("AWS D1.1")))
		yield_ksi = yield_given(g, an);
	group = code ? group_given(g, an, code) : (str){ 0 };
	if (an->fault.n)
		return;
	if (!jig_find(str_of(code), group, yield_ksi, t_mm, &j)) {
		answer_refuse(an, "no jig is known for that code and group");
		return;
	}
	if (t_mm > j.most_thickness_mm + 1e-6) {
		answer_refuse(an, "thickness: the row serves specimens to %s; thicker "
		    "welds are bent on their side, cut to that", V(FINE, j.most_thickness_mm));
		return;
	}
	add_jig(g, an, &j, code);
	judge_plunger(g, an, &j);
}

static void strips_plate(const struct given *g, struct answer *an, size_t n,
    double width_mm)
{
	double length_mm = given_real(g, "length"), discard_mm = given_real(g, "discard");
	double need_mm = strips_length_mm(n, width_mm, discard_mm, given_real(g, "kerf"));

	an->formula = "2 discards + n widths + (n + 1) cuts, along the weld";
	answer_step(an, "2 x %s + %zu x %s + %zu x %s = %s", L(discard_mm), n,
	    L(width_mm), n + 1, L(given_real(g, "kerf")), V(FINE, need_mm));
	answer_figure(an, "Length taken", MEASURE_LENGTH, need_mm, SEEN_PAGE);
	if (need_mm > length_mm + 1e-6) {
		size_t fit = n;

		while (fit && strips_length_mm(fit, width_mm, discard_mm,
		    given_real(g, "kerf")) > length_mm + 1e-6)
			fit--;
		answer_words(an, "Fit", SEEN_PAGE, "no: the coupon is %s short; %zu "
		    "would fit", V(FINE, need_mm - length_mm), fit);
		return;
	}
	answer_words(an, "Fit", SEEN_PAGE, "yes");
	for (size_t i = 0; i < n; i++) {
		struct strip s = strip_on_plate(i, n, length_mm, width_mm, discard_mm);

		answer_range(an, answer_say(an, "Strip %zu from the left end", i + 1),
		    MEASURE_FINE, s.from_mm, s.to_mm, SEEN_PAGE);
	}
}

static void strips_pipe(const struct given *g, struct answer *an, size_t n,
    double width_mm)
{
	double od_mm = given_real(g, "od"), round_mm = pipe_round_mm(od_mm);
	double need_mm = strips_round_mm(n, width_mm, given_real(g, "kerf"));

	an->formula = "n (width + cut), round pi x outside diameter";
	answer_step(an, "%zu x (%s + %s) = %s of pi x %s = %s", n, L(width_mm),
	    L(given_real(g, "kerf")), V(FINE, need_mm), L(od_mm), V(FINE, round_mm));
	answer_figure(an, "Length taken round the pipe", MEASURE_FINE, need_mm,
	    SEEN_PAGE);
	if (need_mm > round_mm + 1e-6) {
		answer_words(an, "Fit", SEEN_PAGE, "no: %s short round the pipe",
		    V(FINE, need_mm - round_mm));
		return;
	}
	answer_words(an, "Fit", SEEN_PAGE, "yes");
	for (size_t i = 0; i < n; i++) {
		struct strip s = strip_on_pipe(i, n, od_mm, width_mm,
		    given_real(g, "first"));

		answer_figure(an, answer_say(an, "Strip %zu, middle from the top", i + 1),
		    MEASURE_ANGLE, s.center_deg, SEEN_MEMORY);
	}
	answer_note(an, "From 45°, root and face alternate round a 5G or 6G coupon (from "
	    "memory): the code edition's figure decides.");
}

TOPIC_WORK(strips)
{
	bool pipe = given_is(g, "form", "pipe"), side = given_is(g, "cut", "side");
	size_t n = (size_t)given_real(g, "count");
	double width_mm = given_has(g, "width") ? given_real(g, "width") :
	    strip_width_mm(side ? STRIP_SIDE : STRIP_FACE_ROOT, given_real(g, "od"));

	if (pipe ? !given_has(g, "od") : !given_has(g, "length")) {
		answer_refuse(an, pipe ? "od is missing for a pipe"
		                       : "length of the weld is missing for a plate");
		return;
	}
	if (pipe ? given_has(g, "length") : given_has(g, "od")) {
		answer_refuse(an, pipe ? "length is for a plate" : "od is for a pipe");
		return;
	}
	if (n > 24) {
		answer_refuse(an, "count: more than 24 strips are not worked out");
		return;
	}
	answer_figure(an, "Strip width", MEASURE_LENGTH, width_mm,
	    given_has(g, "width") ? SEEN_PAGE : SEEN_MEMORY);
	if (pipe)
		strips_pipe(g, an, n, width_mm);
	else
		strips_plate(g, an, n, width_mm);
	answer_note(an, "A strip is about %s long across the weld; cap and backing "
	    "come off flush, corners rounded to %s at most (AWS D1.1 Fig. 6.8 "
	    "(2020), told in a forum).", an->metric ? "150 mm [6 in]" : "6 in",
	    an->metric ? "3.2 mm [1/8 in]" : "1/8 in");
	answer_source(an, "geometry; widths of AWS D1.1 Figs 6.8, 6.9 (2020) as told in "
	    "a code forum; 1 in discards and 1/8 in cuts from memory");
}

struct coupon {
	const char *code;
	enum qualify_form form;
	enum qualify_weld weld;
	double od_mm, thickness_mm;
	bool read_edition;       /* the edition that was read in a copy */
};

/* The pipe by nps and schedule or by od and thickness; false after a refusal. */
static bool take_size(const struct given *g, struct answer *an, struct coupon *c)
{
	const struct pipe_row *p;
	bool named = given_has(g, "nps");

	if (named != given_has(g, "schedule") || (named && given_has(g, "od")) ||
	    (!named && !given_has(g, "thickness"))) {
		answer_refuse(an, "give thickness (and od of a pipe), or nps and "
		    "schedule");
		return false;
	}
	if (named) {
		p = pipe_find(given_words(g, "nps"), given_words(g, "schedule"));
		if (!p) {
			answer_refuse(an, "nps, schedule: no such pipe in ASME B36.10M "
			    "here");
			return false;
		}
		c->od_mm = pipe_od_mm(p);
		c->thickness_mm = pipe_wall_mm(p);
	} else {
		c->od_mm = given_real(g, "od");
	}
	if (given_has(g, "thickness"))
		c->thickness_mm = given_real(g, "thickness");
	if ((c->form == COUPON_PIPE) != (c->od_mm > 0))
		answer_refuse(an, c->form == COUPON_PIPE ? "od is missing for a pipe"
		                                       : "a plate has no od, nps or "
		                                       "schedule");
	else if (c->form == COUPON_PIPE && 2 * c->thickness_mm >= c->od_mm)
		answer_refuse(an, "thickness: the wall does not fit the diameter");
	return !an->fault.n;
}

static bool take_coupon(const struct given *g, struct answer *an, struct coupon *c)
{
	double edition = given_real(g, "edition"), read;

	*c = (struct coupon){ .code = code_given(g, an, false) };
	if (!c->code)
		return false;
	c->form = given_is(g, "form", "pipe") ? COUPON_PIPE : COUPON_PLATE;
	c->weld = given_is(g, "weld", "fillet") ? QUALIFY_FILLET : QUALIFY_GROOVE;
	if (edition < 2000 || edition > 2025) {
		answer_refuse(an, "edition: a year from 2000 to 2025");
		return false;
	}
	read = str_eq(str_of(c->code), STR("ASME IX")) ? 2010 : 2020;
	c->read_edition = fabs(edition - read) < 0.5;
	return take_size(g, an, c);
}

static enum seen seen_in(const struct coupon *c, const char *verified)
{
	return c->read_edition ? seen_of(verified) : SEEN_MEMORY;
}

static void add_positions(struct answer *an, const struct coupon *c,
    const struct qualify_position *p)
{
	enum seen seen = seen_in(c, p->verified);

	if (p->groove_plate[0])
		answer_words(an, "Grooves in plate", seen, "%s", p->groove_plate);
	if (p->groove_pipe[0])
		answer_words(an, "Grooves in pipe", seen, "%s", p->groove_pipe);
	answer_words(an, "Fillets", seen, "%s", p->fillet);
	if (p->note[0])
		answer_note(an, "%s: %s.", p->test, p->note);
	answer_source(an, p->clause);
}

static void add_specimens(struct answer *an, const struct qualify_range *r,
    enum seen seen)
{
	const struct { int n; const char *word; } kinds[] = {
		{ r->face, "face bend" }, { r->root, "root bend" }, { r->side,
		    "side bend" },
		{ r->fracture, "fillet break" }, { r->macro, "macro" },
	};
	struct buf b = { .arena = an->arena };

	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (kinds[i].n)
			buf_addf(&b, "%s%d %s%s", b.n ? " and " : "", kinds[i].n,
			    kinds[i].word, kinds[i].n > 1 ? "s" : "");
	if (r->note[0])
		buf_addf(&b, " (%s)", r->note);
	answer_words(an, "Specimens", seen, "%s", buf_z(&b));
}

static void add_range(const struct given *g, struct answer *an, const struct coupon *c,
    const struct qualify_range *r)
{
	enum seen seen = seen_in(c, r->verified);
	double most_mm = qualify_most_mm(r, c->thickness_mm,
	    (unsigned)given_real(g, "layers"));
	const char *what = str_eq(str_of(c->code), STR("ASME IX")) ?
	    "Weld metal qualified"
	                                                           : "Thickness "
	                                                           "qualified";

	add_specimens(an, r, seen);
	if (r->most_times > 0 && most_mm > 0)
		answer_step(an, "%s x %s = %s", N(r->most_times),
		    V(FINE, c->thickness_mm), V(FINE, most_mm));
	if (most_mm > 0 && r->least_in <= 0)
		answer_figure(an, answer_say(an, "%s, to", what), MEASURE_LENGTH, most_mm,
		    seen);
	else if (most_mm > 0)
		answer_range(an, what, MEASURE_LENGTH, r->least_in * 25.4, most_mm, seen);
	else if (r->least_in > 0)
		answer_words(an, what, seen, "%s and up, no limit", V(FINE, r->least_in * 25.4));
	else
		answer_words(an, what, seen, "the most to be welded");
	answer_source(an, r->clause);
}

static void add_diameter(struct answer *an, const struct coupon *c)
{
	const struct qualify_diameter *d = qualify_diameter_find(str_of(c->code),
	    c->od_mm);
	double least_mm;
	enum seen seen;

	if (!d || c->form != COUPON_PIPE)
		return;
	seen = seen_in(c, d->verified);
	least_mm = d->least_times * c->od_mm;
	if (least_mm < d->least_in * 25.4)
		least_mm = d->least_in * 25.4;
	if (d->most_in > 0)
		answer_range(an, "Diameters qualified", MEASURE_FINE, least_mm,
		    d->most_in * 25.4, seen);
	else
		answer_figure(an, "Diameters qualified, from", MEASURE_FINE, least_mm,
		    seen);
	answer_source(an, d->clause);
}

/* Essential variables of the welder: AWS D1.1 Table 6.12 (2020) and ASME IX QW-402.4,
 * QW-405.3, from memory. */
static void add_backing(const struct given *g, struct answer *an)
{
	if (given_has(g, "backing"))
		answer_words(an, "Backing", SEEN_MEMORY, given_is(g, "backing", "yes") ?
		    "with backing or back-gouging only" : "with and without backing");
	if (given_has(g, "progression"))
		answer_words(an, "Vertical", SEEN_MEMORY, given_is(g, "progression",
		    "up") ?
		    "upward only" : "downward only");
	if (given_has(g, "backing") || given_has(g, "progression"))
		answer_source(an, "AWS D1.1 Table 6.12 (2020), ASME IX QW-402.4, "
		    "QW-405.3, from memory");
}

TOPIC_WORK(qualify)
{
	struct coupon c;
	str test = given_words(g, "test");
	const struct qualify_position *p;
	const struct qualify_range *r;

	if (!take_coupon(g, an, &c))
		return;
	p = qualify_position_find(str_of(c.code), test, c.form, c.weld);
	if (!p) {
		answer_refuse(an, "test: %s has no row here for %.*s as a %s %s; write "
		    "3G+4G for two together", c.code, STR_ARG(test),
		    c.form == COUPON_PIPE ? "pipe" : "plate",
		    c.weld == QUALIFY_FILLET ? "fillet" : "groove");
		return;
	}
	r = qualify_range_find(str_of(c.code), test, c.form, c.weld, c.od_mm,
	    c.thickness_mm);
	an->formula = "by table";
	add_positions(an, &c, p);
	if (r)
		add_range(g, an, &c, r);
	else
		answer_note(an, "The table here has no thickness range for that coupon.");
	add_diameter(an, &c);
	add_backing(g, an);
	if (str_find_char(test, '+', 0) < test.n)
		answer_note(an, "Each of the two coupons is cut for its own position.");
	answer_note(an, "A coupon made in class is a training record, not a "
	    "qualification.");
}
