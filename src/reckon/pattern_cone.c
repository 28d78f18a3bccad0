/* Tapered parts whose sides run to one point: cones by radial lines, and boxes of n
 * equal sides. */
#include "reckon/pattern_set.h"

#include "base/buf.h"

#include <math.h>

static str taper_fault(const struct pattern_part *p)
{
	if (!(p->base_mm > 0))
		return STR("the base is not given");
	if (!(p->height_mm > 0))
		return STR("the height is not given");
	return (str){ 0 };
}

/* An opening moved to the line of the layout: sideways, both ends cut level, a line
 * lies farther off than through the thickness. A point stays a point. */
static double opening_at(const struct pattern_part *p, double mm)
{
	double half = (p->base_mm - p->top_mm) / 2;
	double secant = hypot(p->height_mm, half) / p->height_mm;

	return mm > 0 ? mm + 2 * line_shift_mm(p, p->line) * secant : 0;
}

static str opening_fault(const struct pattern_part *p)
{
	if (opening_at(p, p->base_mm) < PATTERN_NOISE_MM ||
	    (p->top_mm > 0 && opening_at(p, p->top_mm) < PATTERN_NOISE_MM))
		return STR("the thickness fills an opening");
	return (str){ 0 };
}

/* ---- cone ---- */

str cone_fault(const struct pattern_part *p)
{
	if (taper_fault(p).n)
		return taper_fault(p);
	if (fabs(p->base_mm - p->top_mm) < PATTERN_NOISE_MM)
		return STR("a cone with two equal ends is a cylinder");
	return opening_fault(p);
}

/* A cone laid flat: both radii and the angle between its edges. */
struct sector { double outer, inner, deg; };

static struct sector sector_of(const struct pattern_part *p)
{
	double a = opening_at(p, p->base_mm) / 2, b = opening_at(p, p->top_mm) / 2;
	double half = fabs(p->base_mm - p->top_mm) / 2;
	double sine = half / hypot(p->height_mm, half);

	return (struct sector){ fmax(a, b) / sine, fmin(a, b) / sine, 360 * sine };
}

/* From the point of the cone, which stands above the middle of the sector. */
static struct flat_point sector_point(const struct sector *s, double r, double share)
{
	double deg = s->deg * (share - 0.5);

	return (struct flat_point){ r * deg_sin(deg), -r * deg_cos(deg) };
}

static void add_sector(struct pattern_maker *m, const struct sector *s, unsigned n)
{
	unsigned steps = n * curve_steps(n);
	struct flat *f = flat_add(m, STR("whole pattern"), 1);
	struct flat_line *l = flat_line_add(m, f, FLAT_CUT);
	struct flat_point a, b;

	for (unsigned i = 0; i <= steps; i++) {
		a = sector_point(s, s->outer, (double)i / steps);
		flat_line_to(m, l, a.x_mm, a.y_mm);
	}
	for (unsigned i = s->inner > 0 ? steps + 1 : 1; i-- > 0;) {
		a = sector_point(s, s->inner, (double)i / steps);
		flat_line_to(m, l, a.x_mm, a.y_mm);
	}
	for (unsigned i = 1; i < n; i++) {
		a = sector_point(s, s->inner, (double)i / n);
		b = sector_point(s, s->outer, (double)i / n);
		flat_stroke(m, f, FLAT_BEND, a, b);
	}
	a = sector_point(s, s->outer, 0.8);
	b = sector_point(s, s->inner, 0.8);
	flat_dim_add(m, f, (struct flat_dim){ FLAT_AT, a, a, STR("radius"), s->outer,
	    ANSWER_MM });
	if (s->inner > 0)
		flat_dim_add(m, f, (struct flat_dim){ FLAT_AT, b, b, STR("radius"),
		    s->inner, ANSWER_MM });
	a = sector_point(s, s->outer, 0);
	flat_dim_add(m, f, (struct flat_dim){ FLAT_AT, a, a, STR("sector"), s->deg,
	    ANSWER_DEG });
	flat_settle(m, f);
}

void cone_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	struct sector s = sector_of(p);
	unsigned n = divisions_or(p, 12);
	double arc = s.outer * s.deg * PATTERN_PI / 180;

	m->out->basis = str_format(m->arena, "radii worked out on %.*s",
	    STR_ARG(line_words(p, p->line)));
	answer_add(m, STR("Slant height"), s.outer - s.inner, ANSWER_MM);
	answer_add(m, STR("Outer radius"), s.outer, ANSWER_MM);
	answer_add(m, STR("Inner radius"), s.inner, ANSWER_MM);
	answer_add(m, STR("Sector angle"), s.deg, ANSWER_DEG);
	answer_add(m, STR("Chord across the outer ends"),
	    2 * s.outer * deg_sin(s.deg / 2), ANSWER_MM);
	answer_add(m, STR("Outer arc"), arc, ANSWER_MM);
	answer_add(m, STR("Inner arc"), s.inner * s.deg * PATTERN_PI / 180, ANSWER_MM);
	answer_add(m, STR("One division along the outer arc"), arc / n, ANSWER_MM);
	answer_add(m, STR("One division, straight across the outer arc"),
	    2 * s.outer * deg_sin(s.deg / n / 2), ANSWER_MM);
	add_sector(m, &s, n);
	answer_sheet(m);
}

/* ---- box ---- */

static double corner_tan(const struct pattern_part *p)
{
	return deg_tan(180.0 / p->sides);
}

/* A face laid flat: its two level edges and the height between them. */
struct face { double low, high, slant; };

static struct face face_of(const struct pattern_part *p)
{
	return (struct face){ opening_at(p, p->base_mm) * corner_tan(p),
		opening_at(p, p->top_mm) * corner_tan(p),
		hypot(p->height_mm, (p->base_mm - p->top_mm) / 2) };
}

/* Turned through at each seam, from the normals of two faces. */
static double face_turn_deg(const struct pattern_part *p)
{
	double half = fabs(p->base_mm - p->top_mm) / 2, slant = hypot(p->height_mm, half);
	double level = p->height_mm / slant;
	/* sin(turn / 2) = level part of the normal x sin(half the corner): keeps its
	 * figures where the cosine does not. */
	return 2 * asin(level * deg_sin(180.0 / p->sides)) * 180 / PATTERN_PI;
}

static unsigned sheets(const struct pattern_part *p)
{
	return p->pieces ? p->pieces : 1;
}

/* Bends of a box use K and radius when both are given. */
static bool has_bends(const struct pattern_part *p)
{
	return p->thickness_mm > 0 && p->radius_mm > 0 &&
	    (p->k > 0 || p->allowance_mm > 0);
}

str box_fault(const struct pattern_part *p)
{
	if (taper_fault(p).n)
		return taper_fault(p);
	if (p->sides < 3)
		return STR("a box has at least three sides");
	if (p->sides > PATTERN_SIDES)
		return STR("a box has at most 24 sides; more is a cone");
	if (p->sides % sheets(p))
		return STR("the sides do not share out evenly among the pieces");
	return opening_fault(p);
}

struct frame { struct flat_point at, u, v; }; /* u along the low edge, v up the face */

static struct flat_point frame_point(const struct frame *f, double x, double y)
{
	return (struct flat_point){ f->at.x_mm + f->u.x_mm * x + f->v.x_mm * y,
		f->at.y_mm + f->u.y_mm * x + f->v.y_mm * y };
}

/* Frames of k faces side by side, the first lower left corner at 0, 0. Each is turned
 * from the one before by twice the slope of a seam. */
static void lay_faces(const struct face *g, unsigned k, struct frame *out)
{
	double turn = 2 * atan2(g->low - g->high, 2 * g->slant);
	struct flat_point at = { 0, 0 };

	for (unsigned i = 0; i < k; i++) {
		double t = turn * (i - (k - 1) / 2.0), c = cos(t), s = sin(t);

		out[i] = (struct frame){ at, { c, s }, { -s, c } };
		at = frame_point(&out[i], g->low, 0);
	}
}

static void add_faces(struct pattern_maker *m, const struct face *g)
{
	const struct pattern_part *p = m->p;
	unsigned k = p->sides / sheets(p);
	struct frame frame[PATTERN_SIDES] = { 0 };
	struct flat *f = flat_add(m, str_format(m->arena, "%u of %u faces", k, p->sides),
	    sheets(p));
	struct flat_line *l = flat_line_add(m, f, FLAT_CUT);
	double inset = (g->low - g->high) / 2;
	struct flat_point a, b;

	lay_faces(g, k, frame);
	for (unsigned i = 0; i < k; i++)
		flat_line_to(m, l, frame[i].at.x_mm, frame[i].at.y_mm);
	a = frame_point(&frame[k - 1], g->low, 0);
	flat_line_to(m, l, a.x_mm, a.y_mm);
	for (unsigned i = k; i-- > 0;) {
		a = frame_point(&frame[i], g->low - inset, g->slant);
		if (g->high > 0 || i == k - 1)
			flat_line_to(m, l, a.x_mm, a.y_mm);
	}
	a = frame_point(&frame[0], inset, g->slant);
	if (g->high > 0)
		flat_line_to(m, l, a.x_mm, a.y_mm);
	for (unsigned i = 1; i < k; i++) {
		b = frame_point(&frame[i], inset, g->slant);
		flat_stroke(m, f, FLAT_BEND, frame[i].at, b);
	}
	flat_settle(m, f);
}

void box_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	struct face g = face_of(p);
	double turn = face_turn_deg(p);

	m->out->basis = str_format(m->arena, "worked out on %.*s",
	    STR_ARG(line_words(p, p->line)));
	answer_add(m, STR("Slant height of a face"), g.slant, ANSWER_MM);
	answer_add(m, STR("Edge of a face at the base"), g.low, ANSWER_MM);
	answer_add(m, STR("Edge of a face at the top"), g.high, ANSWER_MM);
	answer_add(m, STR("Corner seam"), hypot(g.slant, (g.low - g.high) / 2),
	    ANSWER_MM);
	answer_add(m, STR("Slope of a face"),
	    atan2(p->height_mm, fabs(p->base_mm - p->top_mm) / 2) * 180 / PATTERN_PI,
	    ANSWER_DEG);
	answer_add(m, STR("Angle between faces"), 180 - turn, ANSWER_DEG);
	answer_add(m, STR("Brake through"), turn, ANSWER_DEG);
	if (has_bends(p)) {
		double allow = p->allowance_mm > 0 ? p->allowance_mm
		    : brake_allowance_mm(turn, p->radius_mm, p->k, p->thickness_mm);

		answer_add(m, STR("Bend allowance"), allow, ANSWER_MM);
		answer_add(m, STR("Bend deduction"), 2 * brake_setback_mm(turn,
		    p->radius_mm, p->thickness_mm) - allow, ANSWER_MM);
	}
	add_faces(m, &g);
	answer_sheet(m);
}
