/* Square or oblong to round by triangulation.
 *
 * At each corner of the base a fan of lines runs to a quarter of the round; between
 * fans lies a flat triangle. A fan is part of an oblique cone with its point at the
 * corner, so that it is laid out exactly: each line keeps its true length, and the
 * round end its true arc. */
#include "reckon/pattern_set.h"

#include "base/buf.h"

#include <math.h>

struct space { double x, y, z; };

/* Round at the top, base below it; sizes on the line of the layout. */
struct square {
	double a, b, r, h, ox, oy;
	unsigned n;              /* divisions of the round, a multiple of four */
};

static struct square square_of(const struct pattern_part *p)
{
	double shift = 2 * line_shift_mm(p, p->line);
	double b = p->base2_mm > 0 ? p->base2_mm : p->base_mm;

	return (struct square){ p->base_mm + shift, b + shift, (p->top_mm + shift) / 2,
		p->height_mm, p->offset_x_mm, p->offset_y_mm, divisions_or(p, 16) };
}

str square_fault(const struct pattern_part *p)
{
	struct square s = square_of(p);

	if (!(p->base_mm > 0))
		return STR("the base is not given");
	if (!(p->top_mm > 0))
		return STR("the diameter of the round end is not given");
	if (!(p->height_mm > 0))
		return STR("the height is not given");
	if (s.n % 4)
		return STR("the round is divided into a multiple of four parts");
	if (p->pieces > 2)
		return STR("a square to round is made of one piece or two halves");
	if (s.a < PATTERN_NOISE_MM || s.b < PATTERN_NOISE_MM || s.r < PATTERN_NOISE_MM)
		return STR("the thickness fills an opening");
	if (fabs(s.ox) - s.a / 2 > -PATTERN_NOISE_MM ||
	    fabs(s.oy) - s.b / 2 > -PATTERN_NOISE_MM)
		return STR("the round is off center by half the base or more");
	return (str){ 0 };
}

/* Corner q lies in the quarter from 90 q to 90 (q + 1) deg. */
static struct space corner(const struct square *s, unsigned q)
{
	double x = q == 0 || q == 3 ? 1 : -1, y = q < 2 ? 1 : -1;

	return (struct space){ x * s->a / 2, y * s->b / 2, 0 };
}

static struct space rim(const struct square *s, double deg)
{
	return (struct space){ s->ox + s->r * deg_cos(deg), s->oy + s->r * deg_sin(deg),
		s->h };
}

static double apart(struct space a, struct space b)
{
	return hypot(hypot(a.x - b.x, a.y - b.y), a.z - b.z);
}

static double line_mm(const struct square *s, unsigned q, double deg)
{
	return apart(corner(s, q), rim(s, deg));
}

/* Turned about the corner by the line that runs along the rim, for each degree: the
 * part of the step that does not lengthen the line, over its length. */
static double fan_rate(const struct square *s, unsigned q, double deg)
{
	double x = deg_cos(deg), y = deg_sin(deg);
	struct space c = corner(s, q), e = { s->ox + s->r * x, s->oy + s->r * y, s->h };
	double step = s->r * PATTERN_PI / 180, l = apart(c, e);
	double out = step * ((e.x - c.x) * -y + (e.y - c.y) * x) / l;

	return sqrt(fmax(0, step * step - out * out)) / l;
}

/* The angle of a fan from one degree to another: five-point Gauss, exact to the last
 * figures on steps of a degree or so. */
static double fan_turn(const struct square *s, unsigned q, double from, double to)
{
	static const double at[5] = { -0.90617984593866399, -0.53846931010568309, 0,
		0.53846931010568309, 0.90617984593866399 };
	static const double weight[5] = { 0.23692688505618909, 0.47862867049936647,
		0.56888888888888889, 0.47862867049936647, 0.23692688505618909 };
	double middle = (from + to) / 2, half = (to - from) / 2, sum = 0;

	for (int i = 0; i < 5; i++)
		sum += weight[i] * fan_rate(s, q, middle + half * at[i]);
	return sum * half;
}

/* ---- answers ---- */

/* A corner's table says the same as another's when it mirrors or repeats it. */
static bool is_told(const struct square *s, unsigned q)
{
	for (unsigned k = 0; k < q; k++) {
		bool same = true, mirror = true;

		for (unsigned i = 0; i <= s->n / 4; i++) {
			double step = 360.0 / s->n, mine = line_mm(s, q, 90 * q +
			    step * i);

			same &= fabs(mine - line_mm(s, k, 90 * k + step * i)) <
			    PATTERN_NOISE_MM;
			mirror &= fabs(mine - line_mm(s, k, 90 * (k + 1) - step * i)) <
			    PATTERN_NOISE_MM;
		}
		if (same || mirror)
			return true;
	}
	return false;
}

static void add_corner_table(struct pattern_maker *m, const struct square *s, unsigned q,
    bool only)
{
	static const char *const where[] = { "right rear", "left rear", "left front",
		"right front" };
	struct pattern_table *t = table_add(m, only ? STR("Every corner")
	    : str_format(m->arena, "Corner at the %s, and those that mirror it",
	    where[q]),
	    STR("Round the circle"), STR("True length"));

	t->head[1] = STR("Plan length");
	for (unsigned i = 0; i <= s->n / 4; i++) {
		double deg = 90.0 * q + 360.0 * i / s->n;
		struct space c = corner(s, q), e = rim(s, deg);

		table_row(m, t, (struct pattern_row){ deg, deg * PATTERN_PI / 180 * s->r,
		    { apart(c, e), hypot(c.x - e.x, c.y - e.y) } });
	}
}

/* Height of the flat triangle on side k, whose middle looks to 90 k deg. */
static double flat_mm(const struct square *s, unsigned k)
{
	const double out[4] = { s->a / 2 - s->ox - s->r, s->b / 2 - s->oy - s->r,
		s->a / 2 + s->ox - s->r, s->b / 2 + s->oy - s->r };

	return hypot(s->h, out[k]);
}

static void add_flat_answers(struct pattern_maker *m, const struct square *s)
{
	static const char *const side[] = { "right", "rear", "left", "front" };

	for (unsigned k = 0; k < 4; k++) {
		bool told = false;

		for (unsigned i = 0; i < k; i++)
			told |= fabs(flat_mm(s, i) - flat_mm(s, k)) < PATTERN_NOISE_MM;
		if (!told)
			answer_add(m, str_format(m->arena,
			    "Round to the flat side, square to it, %s", side[k]),
			    flat_mm(s, k), ANSWER_MM);
	}
}

/* ---- the pattern laid flat ---- */

struct walk {
	struct pattern_maker *m;
	const struct square *s;
	struct flat *f;
	struct flat_line round;  /* rim points, gathered from first to last */
};

/* From corner c, where the fan's first line lies at `turn` radians, through the fan.
 * Returns the direction of its last line. */
static double walk_fan(struct walk *w, unsigned q, struct flat_point c, double turn)
{
	const struct square *s = w->s;
	unsigned per = curve_steps(s->n), steps = s->n / 4 * per;

	for (unsigned i = 0; i <= steps; i++) {
		double deg = 90.0 * q + 90.0 * i / steps, l = line_mm(s, q, deg);
		struct flat_point e;

		if (i > 0)
			turn -= fan_turn(s, q, 90.0 * q + 90.0 * (i - 1) / steps, deg);
		e = (struct flat_point){ c.x_mm + l * cos(turn), c.y_mm + l * sin(turn) };
		if (i > 0 || w->round.n == 0)
			flat_line_to(w->m, &w->round, e.x_mm, e.y_mm);
		if (i % per == 0)
			flat_stroke(w->m, w->f, FLAT_BEND, c, e);
	}
	return turn;
}

/* Between the lines from corner c to the rim and from c along the base. */
static double angle_at(struct space c, struct space rim_at, struct space along)
{
	struct space u = { rim_at.x - c.x, rim_at.y - c.y, rim_at.z - c.z };
	struct space v = { along.x - c.x, along.y - c.y, along.z - c.z };
	double cx = u.y * v.z - u.z * v.y, cy = u.z * v.x - u.x * v.z;
	double cz = u.x * v.y - u.y * v.x;

	return atan2(sqrt(cx * cx + cy * cy + cz * cz),
	    u.x * v.x + u.y * v.y + u.z * v.z);
}

/* The foot of the seam: on side k, square below the quarter point of the rim, so that
 * the seam is the shortest line that closes the flat. */
static struct space seam_foot(const struct square *s, unsigned k)
{
	struct space e = rim(s, 90.0 * k), c = corner(s, k);

	return k % 2 ? (struct space){ e.x, c.y, 0 } : (struct space){ c.x, e.y, 0 };
}

/* Turns everything so that the two ends of the base lie level with each other. */
static void level_ends(struct flat *f, struct flat_point from, struct flat_point to)
{
	double d = hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
	double c = d > 0 ? (to.x_mm - from.x_mm) / d : 1;
	double s = d > 0 ? (to.y_mm - from.y_mm) / d : 0;

	for (size_t i = 0; i < f->nlines; i++) {
		for (size_t k = 0; k < f->line[i].n; k++) {
			struct flat_point *p = &f->line[i].v[k];

			*p = (struct flat_point){ p->x_mm * c + p->y_mm * s,
				p->y_mm * c - p->x_mm * s };
		}
	}
}

/* Half of the part, or all of it: from the seam on side `first` over n corners. The
 * base runs along the bottom from left to right, seen from outside turned over. */
static void add_unrolled(struct pattern_maker *m, const struct square *s, str name,
    unsigned count, unsigned first, unsigned n)
{
	struct walk w = { m, s, flat_add(m, name, count), { 0 } };
	struct flat_point base[6] = { { 0, 0 } };
	double heading = 0; /* of the base edge that leaves the latest corner */
	unsigned edge = (unsigned)w.f->nlines;
	struct flat_line *l;

	flat_line_add(m, w.f, FLAT_CUT);
	for (unsigned i = 0; i < n; i++) {
		unsigned q = (first + i) % 4, end = (q + 1) % 4;
		struct space c = corner(s, q), from = i ? corner(s, (q + 3) % 4)
		    : seam_foot(s, first);
		struct space to = i + 1 < n ? corner(s, end) : seam_foot(s, end);
		double turn, length = apart(from, c);

		base[i + 1] = (struct flat_point){ base[i].x_mm + length * cos(heading),
			base[i].y_mm + length * sin(heading) };
		turn = heading + PATTERN_PI - angle_at(c, rim(s, 90.0 * q), from);
		turn = walk_fan(&w, q, base[i + 1], turn);
		heading = turn - angle_at(c, rim(s, 90.0 * (q + 1)), to);
		length = apart(c, to);
		if (i + 1 == n)
			base[n + 1] = (struct flat_point){ base[n].x_mm + length *
			    cos(heading), base[n].y_mm + length * sin(heading) };
	}
	l = &w.f->line[edge];
	for (unsigned i = 0; i <= n + 1; i++)
		flat_line_to(m, l, base[i].x_mm, base[i].y_mm);
	for (size_t i = w.round.n; i-- > 0;)
		flat_line_to(m, l, w.round.v[i].x_mm, w.round.v[i].y_mm);
	level_ends(w.f, base[0], base[n + 1]);
	flat_settle(m, w.f);
}

static void add_flats(struct pattern_maker *m, const struct square *s)
{
	bool even = s->oy == 0;

	if (m->p->pieces != 2) {
		add_unrolled(m, s, STR("whole pattern"), 1, 0, 4);
	} else if (even) {
		add_unrolled(m, s, s->ox == 0 ? STR("half pattern")
		    : STR("half pattern, one turned over"), 2, 0, 2);
	} else {
		add_unrolled(m, s, STR("rear half"), 1, 0, 2);
		add_unrolled(m, s, STR("front half"), 1, 2, 2);
	}
}

void square_make(struct pattern_maker *m)
{
	const struct pattern_part *p = m->p;
	struct square s = square_of(p);
	unsigned told = 0;
	str note = p->line == LINE_AS_GIVEN ? (str){ 0 }
	    : STR(", both ends moved by the same amount");

	m->out->basis = str_format(m->arena, "true lengths on %.*s%.*s",
	    STR_ARG(line_words(p, p->line)), STR_ARG(note));
	for (unsigned q = 0; q < 4; q++)
		told += !is_told(&s, q);
	for (unsigned q = 0; q < 4; q++)
		if (!is_told(&s, q))
			add_corner_table(m, &s, q, told == 1);
	answer_add(m, STR("One division along the round"), 2 * PATTERN_PI * s.r / s.n,
	    ANSWER_MM);
	answer_add(m, STR("One division, straight across"),
	    2 * s.r * deg_sin(180.0 / s.n),
	    ANSWER_MM);
	answer_add(m, STR("Round all the way"), 2 * PATTERN_PI * s.r, ANSWER_MM);
	add_flat_answers(m, &s);
	add_flats(m, &s);
	answer_sheet(m);
}
