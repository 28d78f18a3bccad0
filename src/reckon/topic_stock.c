/* Weights of stock, and gauges. */
#include "reckon/topic.h"

#include "reckon/gauge.h"
#include "reckon/metal.h"
#include "reckon/pipe.h"
#include "reckon/stock.h"
#include "reckon/weight.h"

#include <math.h>

#define N(x) answer_number(an, (x))
#define L(mm) answer_bare(an, MEASURE_FINE, (mm))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))
#define B(measure, x) answer_bare(an, MEASURE_##measure, (x))

static const struct metal *metal_given(const struct given *g, struct answer *an)
{
	const struct metal *m = metal_find(given_words(g, "material"));

	if (!m)
		answer_refuse(an, "material: %.*s is not known here; mild steel, A36, "
		    "304, aluminum, 6061-T6 and some more are",
		    STR_ARG(given_words(g, "material")));
	return m;
}

static const char *weight_word(const struct answer *an)
{
	return an->metric ? "Weight a meter" : "Weight a foot";
}

/* One piece of the length given, and all of them. False when pieces have no length. */
static bool add_pieces(const struct given *g, struct answer *an, double lb_ft, enum seen seen)
{
	double feet = given_real(g, "length") / 304.8, n = given_real(g, "count");

	if (!given_has(g, "length")) {
		if (given_has(g, "count"))
			answer_refuse(an, "length: pieces have one; give it beside count");
		return !given_has(g, "count");
	}
	answer_step(an, "%s x %s = %s", V(PER_FOOT, lb_ft), V(RUN, feet * 304.8),
	    V(WEIGHT, lb_ft * feet));
	answer_figure(an, WEIGHT_OF_ONE, MEASURE_WEIGHT, lb_ft * feet, seen);
	if (!given_has(g, "count"))
		return true;
	answer_step(an, "%s x %s = %s", N(n), V(WEIGHT, lb_ft * feet),
	    V(WEIGHT, n * lb_ft * feet));
	answer_figure(an, WEIGHT_OF_ALL, MEASURE_WEIGHT, n * lb_ft * feet, seen);
	return true;
}

/* Weight a foot, and of the length if one is given, for a section. */
static void add_weights(const struct given *g, struct answer *an, double mm2)
{
	const struct metal *m = metal_given(g, an);
	double lb_ft;
	enum seen seen;

	if (!m)
		return;
	seen = seen_of(m->density_verified);
	lb_ft = stock_lb_ft(mm2, m->density_lb_in3);
	answer_step(an, an->metric ? "%s x %s / 10^6 = %s" : "%s x 12 x %s = %s",
	    V(AREA, mm2), V(DENSITY, m->density_lb_in3), V(PER_FOOT, lb_ft));
	answer_figure(an, "Section", MEASURE_AREA, mm2, SEEN_PAGE);
	answer_figure(an, weight_word(an), MEASURE_PER_FOOT, lb_ft, seen);
	if (!add_pieces(g, an, lb_ft, seen))
		return;
	answer_source(an, "geometry; steel 490 lb/ft3 (Iowa DOT IM 569); other densities "
	    "from memory");
}

TOPIC_WORK(pipe)
{
	const struct pipe_row *p = pipe_find(given_words(g, "nps"),
	    given_words(g, "schedule"));
	double od_mm, wall_mm, lb_ft;

	if (!p) {
		answer_refuse(an, "nps, schedule: no NPS %.*s schedule %.*s in the table",
		    STR_ARG(given_words(g, "nps")), STR_ARG(given_words(g, "schedule")));
		return;
	}
	od_mm = pipe_od_mm(p);
	wall_mm = pipe_wall_mm(p);
	lb_ft = pipe_weight_lb_ft(od_mm, wall_mm);
	/* 10.69 lb/ft a square inch is 0.024658 kg/m a square millimeter. */
	an->formula = an->metric
	    ? "kg/m = 0.024658 (D - t) t; older tables 0.024635 (D - t) t; area pi (D - t) t"
	    : "lb/ft = 10.69 (D - t) t; older tables 10.68 (D - t) t; area pi (D - t) t";
	answer_step(an, "%s x (%s - %s) x %s = %s", an->metric ? "0.024658" : "10.69",
	    L(od_mm), L(wall_mm), L(wall_mm), V(PER_FOOT, lb_ft));
	answer_figure(an, "Outside diameter", MEASURE_FINE, od_mm, SEEN_PAGE);
	answer_figure(an, "Wall", MEASURE_FINE, wall_mm, SEEN_PAGE);
	answer_figure(an, "Inside diameter", MEASURE_FINE, od_mm - 2 * wall_mm,
	    SEEN_PAGE);
	answer_figure(an, "Metal area", MEASURE_AREA, stock_round_tube_mm2(od_mm,
	    wall_mm), SEEN_PAGE);
	/* The rule's 10.69 was recalled; the weights of 10.68 were seen in charts. */
	answer_figure(an, weight_word(an), MEASURE_PER_FOOT, lb_ft, SEEN_MEMORY);
	answer_figure(an, "By older tables", MEASURE_PER_FOOT,
	    stock_pipe_old_lb_ft(od_mm, wall_mm), SEEN_PAGE);
	if (!add_pieces(g, an, lb_ft, SEEN_MEMORY))
		return;
	answer_source(an, "ASME B36.10M (sizes); 10.69 rule since 2000, from memory; "
	    "10.68 rule of shop charts");
}

TOPIC_WORK(plate)
{
	double mm2 = stock_rectangle_mm2(given_real(g, "width"),
	    given_real(g, "thickness"));

	an->formula = "weight = thickness x width x length x density";
	answer_step(an, "%s x %s = %s", L(given_real(g, "thickness")),
	    L(given_real(g, "width")), V(AREA, mm2));
	add_weights(g, an, mm2);
}

TOPIC_WORK(bar)
{
	double size_mm = given_real(g, "size"), thick_mm = given_real(g, "thickness"),
	    mm2;

	if (given_is(g, "shape", "flat") != given_has(g, "thickness")) {
		answer_refuse(an, "thickness goes with a flat bar, and only with it");
		return;
	}
	if (given_is(g, "shape", "round")) {
		an->formula = "area = pi/4 d^2; weight = area x length x density";
		mm2 = stock_round_mm2(size_mm);
	} else if (given_is(g, "shape", "hex")) {
		an->formula = "area = sqrt(3)/2 s^2, s across flats; weight = area x "
		    "length x density";
		mm2 = stock_hexagon_mm2(size_mm);
	} else {
		an->formula = "area = width x thickness; weight = area x length x "
		    "density";
		mm2 = stock_rectangle_mm2(size_mm, given_has(g, "thickness") ?
		    thick_mm : size_mm);
	}
	add_weights(g, an, mm2);
}

TOPIC_WORK(tube)
{
	double a_mm = given_real(g, "side"), wall_mm = given_real(g, "wall");
	double b_mm = given_has(g, "side2") ? given_real(g, "side2") : a_mm;
	bool round = given_is(g, "shape", "round");

	if (2 * wall_mm >= fmin(a_mm, b_mm)) {
		answer_refuse(an, "wall: twice the wall fills the tube");
		return;
	}
	if (given_has(g, "side2") != given_is(g, "shape", "rectangle")) {
		answer_refuse(an, "side2 is owed for a rectangle, and for nothing else");
		return;
	}
	an->formula = round ? "area = pi (D - t) t" : "area = 2 t (a + b - 2 t), sharp "
	    "corners";
	if (!round)
		answer_note(an, "Rounded corners make a tube a little lighter.");
	add_weights(g, an, round ? stock_round_tube_mm2(a_mm, wall_mm)
	                         : stock_square_tube_mm2(a_mm, b_mm, wall_mm));
}

TOPIC_WORK(angle)
{
	double a_mm = given_real(g, "leg"), t_mm = given_real(g, "thickness");
	double b_mm = given_has(g, "leg2") ? given_real(g, "leg2") : a_mm;

	if (t_mm >= fmin(a_mm, b_mm)) {
		answer_refuse(an, "thickness: as thick as a leg");
		return;
	}
	an->formula = "area = t (a + b - t), without the rolled fillet";
	answer_step(an, "%s x (%s + %s - %s)", L(t_mm), L(a_mm), L(b_mm), L(t_mm));
	answer_note(an, "The mill's table says a little more: the fillet of the corner.");
	add_weights(g, an, stock_angle_mm2(a_mm, b_mm, t_mm));
}

TOPIC_WORK(gauge)
{
	enum sheet_metal metal = sheet_metal_of(given_words(g, "material"));
	const struct metal *m = metal_given(g, an);
	unsigned number = (unsigned)given_real(g, "number");
	double mm;

	if (!m)
		return;
	if (metal == METAL_NONE)
		metal = METAL_STEEL;
	mm = gauge_thickness_mm(metal, number);
	if (mm <= 0) {
		answer_refuse(an, "number: no %u gauge in the table of %s", number,
		    sheet_metal_word(metal));
		return;
	}
	an->formula = "by table; weight = thickness x area x density";
	answer_figure(an, "Thickness", MEASURE_FINE, mm, SEEN_PAGE);
	/* Manufacturers Standard Gauge is a weight: 41.82 lb/ft2 for an inch of steel. */
	if (metal == METAL_STEEL) {
		answer_step(an, "%s x %s", V(FINE, mm), an->metric ? "8.0387 kg/m2 for a mm"
		    : "41.82 lb/ft2 for an inch");
		answer_figure(an, "Weight", MEASURE_PER_AREA, mm / 25.4 * 41.82,
		    SEEN_PAGE);
	} else {
		answer_figure(an, "Weight", MEASURE_PER_AREA,
		    weight_lb(mm * 304.8 * 304.8,
		    m->density_lb_in3), seen_of(m->density_verified));
	}
	answer_note(an, "Some mills sell stainless on the steel gauge: measure the "
	    "sheet.");
	answer_source(an, gauge_source(metal));
}
