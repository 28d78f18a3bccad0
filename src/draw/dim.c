#include "draw/dim.h"

#include "draw/geom.h"

#include <math.h>

#define MEDIUM_EM 9.5
#define NARROW_EM 6.5
#define LEAD_EM 1.12
#define HATCH_MAX 200
#define HATCH_CUTS 16

void dim_arrow(struct canvas *c, pt tip, pt dir)
{
	pt back = pt_sub(tip, pt_mul(dir, DIM_ARROW_PT));
	pt side = pt_mul((pt){ -dir.y, dir.x }, DIM_ARROW_HALF_PT);
	const pt v[3] = { tip, pt_add(back, side), pt_sub(back, side) };

	canvas_polygon(c, v, 3, &(struct ink){ .fill = true });
}

/* Lowest and highest distance of the corners from the origin along unit vector u. */
static void spread_along(const pt *v, size_t n, pt u, double *lo, double *hi)
{
	*lo = INFINITY;
	*hi = -INFINITY;
	for (size_t i = 0; i < n; i++) {
		double d = v[i].x * u.x + v[i].y * u.y;

		*lo = fmin(*lo, d);
		*hi = fmax(*hi, d);
	}
}

void dim_hatch(struct canvas *c, const pt *v, size_t n, double deg, double apart_pt)
{
	pt dir = pt_polar(1, -deg), across = { -dir.y, dir.x };
	struct seg segs[HATCH_MAX * 2];
	size_t nsegs = 0;
	double lo, hi, cut[HATCH_CUTS];

	spread_along(v, n, across, &lo, &hi);
	for (double d = lo + apart_pt * 0.5; d < hi; d += apart_pt) {
		pt at = pt_mul(across, d);
		size_t cuts = geom_cut(v, n, at, dir, cut, HATCH_CUTS);

		for (size_t i = 0; i + 1 < cuts && nsegs + 2 <= HATCH_MAX * 2; i += 2) {
			segs[nsegs++] = (struct seg){ SEG_MOVE,
			    { pt_add(at, pt_mul(dir, cut[i])) } };
			segs[nsegs++] = (struct seg){ SEG_LINE,
			    { pt_add(at, pt_mul(dir, cut[i + 1])) } };
		}
	}
	if (nsegs > 0)
		canvas_path(c, segs, nsegs, &(struct ink){ .stroke_pt = DIM_THIN_PT });
}

size_t dim_break(pt a, pt b, pt *out)
{
	pt along = pt_sub(b, a);
	double length = pt_length(along), swing = fmin(3, length * 0.2);
	pt u = pt_unit(along), side = { -u.y, u.x };

	for (size_t i = 0; i < DIM_BREAK_POINTS; i++) {
		double s = (double)i / (DIM_BREAK_POINTS - 1);

		out[i] = pt_add(pt_between(a, b, s),
		    pt_mul(side, swing * sin(2 * GEOM_PI * s)));
	}
	return DIM_BREAK_POINTS;
}

/* Whether s begins with a blank and then that word. */
static bool word_follows(str s, const char *zero_ended)
{
	str word = str_of(zero_ended);

	return str_starts(str_sub(s, 1, s.n), word) &&
	    (s.n == word.n + 1 || s.p[word.n + 1] == ' ');
}

/* Whether the blank at `at` parts a number from its unit, or either from "x". */
static bool gap_glued(str s, size_t at)
{
	static const char *const word[] = { "in", "mm", "in]", "mm]", "ga", "deg", "x" };

	for (size_t i = 0; i < sizeof word / sizeof word[0]; i++)
		if (word_follows(str_sub(s, at, s.n), word[i]))
			return true;
	return at >= 2 && s.p[at - 1] == 'x' && s.p[at - 2] == ' ';
}

/* The next blank from `at` on where a line may end, or s.n. */
static size_t next_gap(str s, size_t at)
{
	size_t end = str_find_char(s, ' ', at);

	while (end < s.n && gap_glued(s, end))
		end = str_find_char(s, ' ', end + 1);
	return end;
}

/* Takes from *rest the words that fit w_pt, at least one. */
static str take_line(const struct faces *f, double size_pt, double w_pt, str *rest)
{
	size_t end = next_gap(*rest, 0);
	str line;

	while (end < rest->n) {
		size_t next = next_gap(*rest, end + 1);

		line = str_sub(*rest, 0, next);
		if (face_width_pt(f, FACE_SANS, size_pt, line) > w_pt)
			break;
		end = next;
	}
	line = str_sub(*rest, 0, end);
	*rest = str_trim_left(str_sub(*rest, end, rest->n));
	return line;
}

static bool add_part(struct dim_label *l, const struct faces *f, str part, double w_pt)
{
	part = str_trim(part);
	while (part.n > 0) {
		if (l->n == DIM_LABEL_LINES)
			return false;
		str line = take_line(f, l->size_pt, w_pt, &part);
		l->w = fmax(l->w, face_width_pt(f, FACE_SANS, l->size_pt, line));
		l->line[l->n++] = line;
	}
	return true;
}

bool dim_label_set(struct dim_label *l, const struct faces *f, double size_pt, str text,
    enum dim_lines lines)
{
	double w_pt = lines == DIM_NARROW ? NARROW_EM * size_pt
	    : lines == DIM_MEDIUM ? MEDIUM_EM * size_pt : INFINITY;
	size_t bracket = lines == DIM_ONE_LINE ? text.n : str_find_char(text, '[', 0);

	*l = (struct dim_label){ .size_pt = size_pt };
	if (!add_part(l, f, str_sub(text, 0, bracket), w_pt) ||
	    !add_part(l, f, str_sub(text, bracket, text.n), w_pt))
		return false;
	l->h = face_ascent_pt(f, FACE_SANS, size_pt) +
	    face_descent_pt(f, FACE_SANS, size_pt) +
	    (l->n > 0 ? (double)(l->n - 1) : 0) * LEAD_EM * size_pt;
	return true;
}

void dim_label_draw(struct canvas *c, const struct faces *f, const struct dim_label *l,
    rect r, enum dim_align align)
{
	static const double share[] = { 0, 0.5, 1 };
	pt at = { r.x, r.y + face_ascent_pt(f, FACE_SANS, l->size_pt) };

	canvas_box_begin(c, r, STR("label"));
	for (size_t i = 0; i < l->n; i++) {
		double w = face_width_pt(f, FACE_SANS, l->size_pt, l->line[i]);

		at.x = r.x + (r.w - w) * share[align];
		canvas_text(c, at, FACE_SANS, l->size_pt, l->line[i]);
		at.y += LEAD_EM * l->size_pt;
	}
	canvas_box_end(c);
}
