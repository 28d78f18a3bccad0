/* Parts bent in a brake. */
#include "reckon/pattern_set.h"

#include "base/buf.h"

#include <math.h>

#define WIDTH_DRAWN_MM 100.0

double brake_allowance_mm(double deg, double radius_mm, double k, double thickness_mm)
{
	return deg * PATTERN_PI / 180 * (radius_mm + k * thickness_mm);
}

double brake_setback_mm(double deg, double radius_mm, double thickness_mm)
{
	return deg_tan(deg / 2) * (radius_mm + thickness_mm);
}

static double allowance_mm(const struct pattern_part *p, double deg)
{
	if (p->allowance_mm > 0)
		return p->allowance_mm;
	return brake_allowance_mm(deg, p->radius_mm, p->k, p->thickness_mm);
}

/* To the mold line on the side that the flanges are measured on. */
static double setback_mm(const struct pattern_part *p, double deg)
{
	return brake_setback_mm(deg, p->radius_mm,
	    p->given == LINE_INSIDE ? 0 : p->thickness_mm);
}

/* The straight stretch of a flange between its tangents. */
static double straight_mm(const struct pattern_part *p, size_t i)
{
	double left = i > 0 ? setback_mm(p, p->bend_deg[i - 1]) : 0;
	double right = i + 1 < p->nflanges ? setback_mm(p, p->bend_deg[i]) : 0;

	return p->flange_mm[i] - left - right;
}

str brake_fault(const struct pattern_part *p)
{
	if (p->nflanges < 2)
		return STR("a braked part has at least two flanges");
	if (p->nflanges > PATTERN_FLANGES)
		return STR("a braked part has at most 16 flanges");
	if (!(p->thickness_mm > 0))
		return STR("the thickness is not given");
	if (!(p->k > 0) && !(p->allowance_mm > 0))
		return STR("neither K nor a bend allowance is given");
	if (p->k > 0.5 && !(p->allowance_mm > 0))
		return STR("the neutral line lies at 0.5 of the thickness at most: K is "
		    "too large");
	for (size_t i = 0; i + 1 < p->nflanges; i++)
		if (!(p->bend_deg[i] > 0 && p->bend_deg[i] < 180))
			return STR("a bend turns through more than 0 and less than "
			    "180 deg");
	for (size_t i = 0; i < p->nflanges; i++) {
		if (!(p->flange_mm[i] > 0))
			return STR("a flange has no length");
		if (straight_mm(p, i) < -PATTERN_NOISE_MM)
			return STR("a flange is shorter than its setback");
	}
	return (str){ 0 };
}

static bool bends_alike(const struct pattern_part *p)
{
	for (size_t i = 1; i + 1 < p->nflanges; i++)
		if (fabs(p->bend_deg[i] - p->bend_deg[0]) > 1e-9)
			return false;
	return true;
}

static void add_bend_answers(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	size_t n = bends_alike(p) ? 1 : p->nflanges - 1;

	for (size_t i = 0; i < n; i++) {
		double deg = p->bend_deg[i];
		str of = n == 1 ? (str){ 0 } : str_format(m->arena, ", bend %zu", i + 1);

#define NAME(words) str_format(m->arena, words "%.*s", STR_ARG(of))
		answer_add(m, NAME("Bend allowance"), allowance_mm(p, deg), ANSWER_MM);
		answer_add(m, NAME("Setback"), setback_mm(p, deg), ANSWER_MM);
		answer_add(m, NAME("Bend deduction"),
		    2 * setback_mm(p, deg) - allowance_mm(p, deg), ANSWER_MM);
#undef NAME
	}
}

static double blank_mm(const struct pattern_part *p)
{
	double sum = 0;

	for (size_t i = 0; i < p->nflanges; i++)
		sum += straight_mm(p, i);
	for (size_t i = 0; i + 1 < p->nflanges; i++)
		sum += allowance_mm(p, p->bend_deg[i]);
	return sum;
}

void brake_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	double at = 0, length = blank_mm(p);
	double width = p->width_mm > 0 ? p->width_mm : WIDTH_DRAWN_MM;
	struct flat *f = flat_rectangle(m, STR("blank"), length, width);

	m->out->basis = p->given == LINE_INSIDE
	    ? STR("flanges measured inside, between inside mold lines")
	    : STR("flanges measured outside, between outside mold lines");
	add_bend_answers(m);
	answer_add(m, STR("Blank length"), length, ANSWER_MM);
	for (size_t i = 0; i + 1 < p->nflanges; i++) {
		double half = allowance_mm(p, p->bend_deg[i]) / 2;
		str name = str_format(m->arena, "Bend line %zu from the first edge", i +
		    1);

		at += straight_mm(p, i) + half;
		answer_add(m, name, at, ANSWER_MM);
		flat_stroke(m, f, FLAT_BEND, (struct flat_point){ at, 0 },
		    (struct flat_point){ at, width });
		flat_dim_add(m, f, (struct flat_dim){ FLAT_AT, { at, width }, { at,
		    width },
		    str_format(m->arena, "bend %zu", i + 1), at, ANSWER_MM });
		at += half;
	}
	flat_settle(m, f);
}
