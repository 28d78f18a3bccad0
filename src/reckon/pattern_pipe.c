/* Round parts by parallel lines: cylinder, mitered elbow, saddle and lateral. */
#include "reckon/pattern_set.h"

#include "base/buf.h"

#include <math.h>

/* Straight end of a wrap-around template when no length of branch is given: 2 in. */
#define CARD_MM 50.8
#define SEARCH_PARTS 720
#define SEARCH_ROUNDS 100

static double diameter_at(const struct pattern_part *p, enum pattern_line line)
{
	return p->diameter_mm + 2 * line_shift_mm(p, line);
}

static double stretch_mm(const struct pattern_part *p)
{
	return PATTERN_PI * diameter_at(p, p->wrap);
}

static str round_fault(const struct pattern_part *p)
{
	if (!(p->diameter_mm > 0))
		return STR("the diameter is not given");
	if (diameter_at(p, LINE_INSIDE) < PATTERN_NOISE_MM)
		return STR("the wall fills the whole round");
	return (str){ 0 };
}

str cylinder_fault(const struct pattern_part *p)
{
	if (!(p->height_mm > 0))
		return STR("the height is not given");
	return round_fault(p);
}

static void add_wrap(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;

	answer_add(m, STR("Stretch-out"), stretch_mm(p), ANSWER_MM);
}

void cylinder_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	double length = stretch_mm(p);
	struct flat *f = flat_rectangle(m, STR("blank"), length, p->height_mm);

	m->out->basis = str_format(m->arena, "stretch-out on %.*s",
	    STR_ARG(line_words(p, p->wrap)));
	answer_add(m, STR("Diameter of the stretch-out"), diameter_at(p, p->wrap),
	    ANSWER_MM);
	add_wrap(m);
	if (p->divisions)
		answer_add(m, STR("One division"), length / p->divisions, ANSWER_MM);
	for (unsigned i = 1; i < p->divisions; i++) {
		double x = length * i / p->divisions;

		flat_stroke(m, f, FLAT_MARK, (struct flat_point){ x, 0 },
		    (struct flat_point){ x, p->height_mm });
	}
	flat_settle(m, f);
}

/* ---- elbow ---- */

/* Each joint is cut at this angle from square. */
static double miter_deg(const struct pattern_part *p)
{
	return p->angle_deg / (2 * (p->pieces - 1));
}

static double end_mm(const struct pattern_part *p)
{
	return p->height_mm > 0 ? p->height_mm : p->radius_mm * deg_tan(miter_deg(p));
}

str elbow_fault(const struct pattern_part *p)
{
	double outer, t;

	if (p->pieces < 2 || p->pieces > 30)
		return STR("an elbow has 2 to 30 pieces");
	if (!(p->angle_deg > 0 && p->angle_deg < 180))
		return STR("an elbow turns through more than 0 and less than 180 deg");
	if (round_fault(p).n)
		return round_fault(p);
	if (p->pieces > 2 && !(p->radius_mm > 0))
		return STR("the radius of the center line is not given");
	if (!(p->radius_mm > 0) && !(p->height_mm > 0))
		return STR("neither the height of an end piece nor the radius of the "
		    "center line is given");
	outer = diameter_at(p, LINE_OUTSIDE) / 2;
	t = deg_tan(miter_deg(p));
	if ((p->pieces > 2 && p->radius_mm - outer < PATTERN_NOISE_MM) ||
	    end_mm(p) - outer * t < PATTERN_NOISE_MM)
		return STR("the throat has no length left: the elbow is too tight");
	return (str){ 0 };
}

/* A gore whose ordinate round the pipe is center - swing x cos, from the throat; it
 * is cut square at the bottom, or on a slant at both ends. */
static void add_gore(struct pattern_maker *m, str name, unsigned count, double center,
    double swing, bool both)
{
	const struct pattern_part *p = m->p;
	unsigned n = divisions_or(p, 12), steps = n * curve_steps(n);
	double wrap = stretch_mm(p);
	struct pattern_table *t = table_add(m, name, STR("From the throat"),
	    both ? STR("Whole length") : STR("Ordinate"));
	struct flat *f = flat_add(m, name, count);
	struct flat_line *l = flat_line_add(m, f, FLAT_CUT);

	t->head[1] = both ? STR("Half length") : STR("Longer than the throat");
	for (unsigned i = 0; i <= n; i++) {
		double y = center - swing * deg_cos(360.0 * i / n);

		table_row(m, t, (struct pattern_row){ 360.0 * i / n, wrap * i / n,
		    { y, both ? y / 2 : y - (center - swing) } });
	}
	for (unsigned i = 0; both && i <= steps; i++)
		flat_line_to(m, l, wrap * i / steps,
		    -(center - swing * deg_cos(360.0 * i / steps)) / 2);
	if (!both) {
		flat_line_to(m, l, 0, 0);
		flat_line_to(m, l, wrap, 0);
	}
	for (unsigned i = steps + 1; i-- > 0;)
		flat_line_to(m, l, wrap * i / steps,
		    (center - swing * deg_cos(360.0 * i / steps)) / (both ? 2 : 1));
	for (unsigned i = 1; i < n; i++) {
		double y = t->v[i].v_mm[both ? 1 : 0], x = t->v[i].along_mm;

		flat_stroke(m, f, FLAT_MARK, (struct flat_point){ x, both ? -y : 0 },
		    (struct flat_point){ x, y });
	}
	flat_settle(m, f);
}

void elbow_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	double r = diameter_at(p, p->line) / 2, t = deg_tan(miter_deg(p));
	double middle = 2 * p->radius_mm * t;
	unsigned n = divisions_or(p, 12);

	m->out->basis = str_format(m->arena,
	    "ordinates on %.*s, stretch-out on %.*s; the seam lies at the throat",
	    STR_ARG(line_words(p, p->line)), STR_ARG(line_words(p, p->wrap)));
	answer_add(m, STR("Miter angle of each joint"), miter_deg(p), ANSWER_DEG);
	add_wrap(m);
	answer_add(m, STR("One division"), stretch_mm(p) / n, ANSWER_MM);
	answer_add(m, STR("End piece on the center line"), end_mm(p), ANSWER_MM);
	answer_add(m, STR("End piece at the throat"), end_mm(p) - r * t, ANSWER_MM);
	answer_add(m, STR("End piece at the heel"), end_mm(p) + r * t, ANSWER_MM);
	add_gore(m, STR("end piece"), 2, end_mm(p), r * t, false);
	if (p->pieces > 2) {
		answer_add(m, STR("Middle piece on the center line"), middle, ANSWER_MM);
		answer_add(m, STR("Middle piece at the throat"), middle - 2 * r * t,
		    ANSWER_MM);
		answer_add(m, STR("Middle piece at the heel"), middle + 2 * r * t,
		    ANSWER_MM);
		add_gore(m, STR("middle piece"), p->pieces - 2, middle, 2 * r * t, true);
	}
	answer_add(m,
	    STR("One sheet for all pieces, seams at throat and heel in turn, is "
	    "as high as"), 2 * end_mm(p) + (p->pieces - 2) * middle, ANSWER_MM);
}

/* ---- saddle ---- */

/* From the center line of the run along the branch to the cut, at deg round the branch
 * from its long side. The branch leans over the short side. */
static double saddle_mm(const struct pattern_part *p, double deg)
{
	double r = diameter_at(p, p->line) / 2, run = p->run_mm / 2;
	double side = p->offset_x_mm + r * deg_sin(deg);
	double rise = sqrt(fmax(0, run * run - side * side));
	double lean = p->angle_deg == 90 ? 0 : deg_cos(p->angle_deg);

	return (rise - r * deg_cos(deg) * lean) / deg_sin(p->angle_deg);
}

/* The least (sign 1) or greatest (sign -1) of saddle_mm: a search over the circle, then
 * by thirds about the best place. */
static double saddle_extreme(const struct pattern_part *p, double sign)
{
	double best = 0, step = 360.0 / SEARCH_PARTS, low, high;
	double best_mm = saddle_mm(p, best);

	for (unsigned i = 1; i < SEARCH_PARTS; i++) {
		double mm = saddle_mm(p, step * i);

		if (sign * mm < sign * best_mm) {
			best = step * i;
			best_mm = mm;
		}
	}
	low = best - step;
	high = best + step;
	for (unsigned i = 0; i < SEARCH_ROUNDS; i++) {
		double a = low + (high - low) / 3, b = high - (high - low) / 3;

		if (sign * saddle_mm(p, a) < sign * saddle_mm(p, b))
			high = b;
		else
			low = a;
	}
	low = saddle_mm(p, (low + high) / 2);
	return sign * low < sign * best_mm ? low : best_mm;
}

str saddle_fault(const struct pattern_part *p)
{
	double reach = diameter_at(p, LINE_OUTSIDE) / 2 + fabs(p->offset_x_mm);

	if (round_fault(p).n)
		return round_fault(p);
	if (!(p->run_mm > 0))
		return STR("the diameter of the run is not given");
	if (!(p->angle_deg > 0 && p->angle_deg <= 90))
		return STR("center lines meet at more than 0 and at most 90 deg");
	if (reach - p->run_mm / 2 > PATTERN_NOISE_MM)
		return p->offset_x_mm != 0
		    ? STR("the branch stands out beside the run")
		    : STR("the branch is larger than its run");
	if (p->height_mm > 0 && p->height_mm - saddle_extreme(p, -1) < PATTERN_NOISE_MM)
		return STR("the branch is too short to reach out of the run");
	return (str){ 0 };
}

static void add_saddle_flat(struct pattern_maker *m, double nearest)
{
	const struct pattern_part *p = m->p;
	unsigned n = divisions_or(p, 12), steps = n * curve_steps(n);
	double wrap = stretch_mm(p);
	double length = p->height_mm > 0 ? p->height_mm : nearest + CARD_MM;
	struct flat *f = flat_add(m, STR("branch, wrapped round"), 1);
	struct flat_line *l = flat_line_add(m, f, FLAT_CUT);

	flat_line_to(m, l, 0, 0);
	flat_line_to(m, l, wrap, 0);
	for (unsigned i = steps + 1; i-- > 0;)
		flat_line_to(m, l, wrap * i / steps,
		    length - saddle_mm(p, 360.0 * i / steps));
	for (unsigned i = 1; i < n; i++)
		flat_stroke(m, f, FLAT_MARK, (struct flat_point){ wrap * i / n, 0 },
		    (struct flat_point){ wrap * i / n, length - saddle_mm(p,
		    360.0 * i / n) });
	flat_settle(m, f);
}

void saddle_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	double far = saddle_extreme(p, -1), near = saddle_extreme(p, 1);
	double wrap = stretch_mm(p);
	unsigned n = divisions_or(p, 12);
	bool square = p->angle_deg == 90;
	struct pattern_table *t;

	m->out->basis = str_format(m->arena,
	    "%.*s of the branch on the outside of the run, wrap on %.*s",
	    STR_ARG(line_words(p, p->line)), STR_ARG(line_words(p, p->wrap)));
	answer_add(m, STR("Wrap length"), wrap, ANSWER_MM);
	answer_add(m, STR("One division"), wrap / n, ANSWER_MM);
	answer_add(m, STR("Depth of the cut"), far - near, ANSWER_MM);
	if (p->height_mm > 0) {
		answer_add(m, STR("Longest line of the branch"), p->height_mm - near,
		    ANSWER_MM);
		answer_add(m, STR("Shortest line of the branch"), p->height_mm - far,
		    ANSWER_MM);
	}
	t = table_add(m, square ? STR("Saddle") : STR("Lateral"), square
	    ? STR("From the plane of the run's center line") : STR("From the long side"),
	    STR("Reach below the highest point"));
	t->head[1] = STR("Cut back from the longest line");
	for (unsigned i = 0; i <= n; i++) {
		double s = saddle_mm(p, 360.0 * i / n);

		table_row(m, t, (struct pattern_row){ 360.0 * i / n, wrap * i / n,
		    { far - s, s - near } });
	}
	add_saddle_flat(m, far);
}
