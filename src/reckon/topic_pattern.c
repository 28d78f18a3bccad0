/* Flat patterns by number: what reckon/pattern.h works out, as figures. */
#include "reckon/topic.h"

#include "reckon/fold.h"
#include "reckon/pattern.h"

#include <math.h>

#define N(x) answer_number(an, (x))
#define L(mm) answer_bare(an, MEASURE_FINE, (mm))
#define V(measure, x) answer_value(an, MEASURE_##measure, (x))

static void add_table(struct answer *an, const struct pattern_table *t)
{
	for (size_t i = 0; i < t->n; i++) {
		const struct pattern_row *r = &t->v[i];

		answer_figure(an, answer_say(an, "%.*s, at %s°", STR_ARG(t->name),
		    N(r->at_deg)), MEASURE_FINE, r->v_mm[0], SEEN_PAGE);
		answer_remark(an, "%s along the edge", V(FINE, r->along_mm));
	}
	answer_note(an, "%.*s: %.*s. Degrees: %.*s.", STR_ARG(t->name),
	    STR_ARG(t->head[0]), STR_ARG(t->at));
}

/* The value of a figure that was laid out, for the steps; 0 after a refusal. */
static double laid(const struct answer *an, const char *name)
{
	for (size_t i = 0; i < an->nfigures; i++)
		if (str_eq(str_of(an->figures[i].name), str_of(name)))
			return an->figures[i].value;
	return 0;
}

static void lay_out(struct answer *an, const struct pattern_part *part,
    const char *formula)
{
	const struct pattern *p = pattern_reckon(an->arena, part);

	if (p->fault.n) {
		answer_refuse(an, "%.*s", STR_ARG(p->fault));
		return;
	}
	an->formula = formula;
	for (size_t i = 0; i < p->nanswers; i++)
		answer_figure(an, answer_say(an, "%.*s", STR_ARG(p->answer[i].name)),
		    p->answer[i].unit == ANSWER_DEG ? MEASURE_ANGLE : MEASURE_FINE,
		    p->answer[i].value, SEEN_PAGE);
	for (size_t i = 0; i < p->ntables; i++)
		add_table(an, &p->table[i]);
	if (p->basis.n)
		answer_note(an, "Basis: %.*s.", STR_ARG(p->basis));
	answer_source(an, "plane and solid geometry");
}

/* With a thickness the sizes are outside ones and the sheet lies on its mean line. */
static struct pattern_part part_of(const struct given *g, enum pattern_shape shape)
{
	struct pattern_part p = { .shape = shape };

	if (shape == PATTERN_BRAKE || !given_has(g, "thickness"))
		return p;
	p.thickness_mm = given_real(g, "thickness");
	p.given = LINE_OUTSIDE;
	p.line = p.wrap = LINE_MEAN;
	return p;
}

TOPIC_WORK(blank)
{
	struct pattern_part p = part_of(g, PATTERN_BRAKE);
	size_t n;
	const double *flange = given_list(g, "flanges", &n);

	if (n < 2 || n > PATTERN_FLANGES) {
		answer_refuse(an, "flanges: from 2 to 16 of them");
		return;
	}
	p.nflanges = n;
	p.thickness_mm = given_real(g, "thickness");
	p.radius_mm = given_real(g, "radius");
	p.given = given_is(g, "measured", "inside") ? LINE_INSIDE : LINE_OUTSIDE;
	p.k = given_has(g, "k") ? given_real(g, "k") : fold_k(p.radius_mm,
	    p.thickness_mm);
	answer_step(an, given_has(g, "k") ? "K = %s" : "K by radius over thickness, from "
	    "memory: %s", N(p.k));
	for (size_t i = 0; i < n; i++) {
		p.flange_mm[i] = flange[i];
		p.bend_deg[i] = given_real(g, "angle");
	}
	lay_out(an, &p, "blank = flanges - (bends) x (2 setback - allowance); allowance "
	    "= "
	    "pi/180 A (R + K t)");
	for (size_t i = 0; i < an->nfigures && !given_has(g, "k"); i++)
		an->figures[i].seen = SEEN_MEMORY;
	answer_note(an, "Bend a test strip of the same sheet and die before the batch.");
}

TOPIC_WORK(cylinder)
{
	struct pattern_part p = part_of(g, PATTERN_CYLINDER);

	p.diameter_mm = given_real(g, "diameter");
	p.height_mm = given_real(g, "height");
	lay_out(an, &p, "stretch-out = pi x diameter, on the mean line of a plate");
	if (p.thickness_mm > 0)
		answer_step(an, "mean diameter = %s - %s = %s", L(p.diameter_mm),
		    L(p.thickness_mm), V(FINE, laid(an, "Diameter of the stretch-out")));
	answer_step(an, "pi x %s = %s", L(laid(an, "Diameter of the stretch-out")),
	    V(FINE, laid(an, "Stretch-out")));
}

TOPIC_WORK(elbow)
{
	struct pattern_part p = { .shape = PATTERN_ELBOW };

	p.diameter_mm = given_real(g, "diameter");
	p.angle_deg = given_real(g, "angle");
	p.pieces = (unsigned)given_real(g, "pieces");
	p.radius_mm = given_real(g, "radius");
	p.height_mm = given_real(g, "height");
	p.divisions = (unsigned)given_real(g, "divisions");
	lay_out(an, &p, "ordinate = end on the center line - r tan(miter) cos(angle from "
	    "the "
	    "throat); miter = turn / (2 (pieces - 1))");
	answer_step(an, "miter = %s / (2 x (%u - 1)) = %s°", N(p.angle_deg), p.pieces,
	    N(laid(an, "Miter angle of each joint")));
	answer_step(an, "throat: %s - %s tan(%s°) = %s",
	    L(laid(an, "End piece on the center line")), L(p.diameter_mm / 2),
	    N(laid(an, "Miter angle of each joint")),
	    V(FINE, laid(an, "End piece at the throat")));
}

TOPIC_WORK(saddle)
{
	struct pattern_part p = { .shape = PATTERN_SADDLE };

	p.diameter_mm = given_real(g, "branch");
	p.run_mm = given_real(g, "run");
	p.angle_deg = given_real(g, "angle");
	p.height_mm = given_real(g, "height");
	p.divisions = (unsigned)given_real(g, "divisions");
	if (fabs(p.angle_deg - 90) < 1e-9)
		lay_out(an, &p, "reach = R - sqrt(R^2 - (r sin u)^2), u round the branch "
		    "from the line of the run");
	else
		lay_out(an, &p, "reach = the greatest d - d; d = sqrt(R^2 - (r sin u)^2) "
		    "/ sin A - r cos u / tan A, u round the branch from its long side");
	answer_step(an, "wrap: pi x %s = %s", L(p.diameter_mm),
	    V(FINE, laid(an, "Wrap length")));
	answer_step(an, "r = %s, R = %s, A = %s°: the cut is %s deep",
	    V(FINE, p.diameter_mm / 2), V(FINE, p.run_mm / 2), N(p.angle_deg),
	    V(FINE, laid(an, "Depth of the cut")));
}

TOPIC_WORK(cone)
{
	struct pattern_part p = part_of(g, PATTERN_CONE);

	p.base_mm = given_real(g, "base");
	p.top_mm = given_real(g, "top");
	p.height_mm = given_real(g, "height");
	lay_out(an, &p, "slant = sqrt(height^2 + ((base - top) / 2)^2); sector = 180° "
	    "base / outer radius");
	answer_step(an, "slant = sqrt(%s^2 + ((%s - %s) / 2)^2) = %s%s",
	    L(p.height_mm), L(p.base_mm), L(p.top_mm), V(FINE, laid(an, "Slant height")),
	    p.thickness_mm > 0 ? " on the mean line" : "");
	answer_step(an, "sector = %s°", N(laid(an, "Sector angle")));
}

TOPIC_WORK(box)
{
	struct pattern_part p = part_of(g, PATTERN_BOX);

	p.base_mm = given_real(g, "base");
	p.top_mm = given_real(g, "top");
	p.height_mm = given_real(g, "height");
	p.sides = (unsigned)given_real(g, "sides");
	lay_out(an, &p, "slant = sqrt(height^2 + ((base - top) / 2)^2), across flats");
	answer_step(an, "slant = sqrt(%s^2 + ((%s - %s) / 2)^2) = %s%s",
	    L(p.height_mm), L(p.base_mm), L(p.top_mm), V(FINE, laid(an, "Slant height of a face")),
	    p.thickness_mm > 0 ? " on the mean line" : "");
}

TOPIC_WORK(square_round)
{
	struct pattern_part p = part_of(g, PATTERN_SQUARE);

	p.base_mm = given_real(g, "base");
	p.base2_mm = given_has(g, "base2") ? given_real(g, "base2") : p.base_mm;
	p.top_mm = given_real(g, "round");
	p.height_mm = given_real(g, "height");
	lay_out(an, &p, "true length = sqrt(plan length^2 + height^2)");
	answer_step(an, "corner to the round: plan from half the sides to the points of "
	    "the circle, upright %s", V(FINE, p.height_mm));
}
