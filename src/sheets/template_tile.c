#include "sheets/template_tile.h"

#include "base/buf.h"
#include "draw/geom.h"

#include <math.h>

#define PT_MM (72 / 25.4)
#define CROSS_PT 10.0
#define RING_PT 5.0
#define NUMBER_PT 10.0

static unsigned count_along(double size, double window)
{
	double step = window - TILE_OVERLAP_PT;

	if (size <= window)
		return 1;
	return (unsigned)ceil((size - TILE_OVERLAP_PT) / step - 1e-9);
}

struct tiling tiling_new(const struct flat *f, double window_w, double window_h)
{
	double w = f->width_mm * PT_MM, h = f->height_mm * PT_MM, size;
	unsigned flat = count_along(w, window_w) * count_along(h, window_h);
	unsigned turned = count_along(h, window_w) * count_along(w, window_h);
	struct tiling t = { .flat = f, .turned = turned < flat, .w = window_w,
		.h = window_h };

	if (t.turned) {
		size = w;
		w = h;
		h = size;
	}
	t.columns = count_along(w, t.w);
	t.rows = count_along(h, t.h);
	t.left = (t.w + (t.columns - 1) * (t.w - TILE_OVERLAP_PT) - w) / 2;
	t.top = (t.h + (t.rows - 1) * (t.h - TILE_OVERLAP_PT) - h) / 2;
	return t;
}

pt tiling_point(const struct tiling *t, struct flat_point p)
{
	double x = p.x_mm, y = t->flat->height_mm - p.y_mm;

	/* Turned clockwise: what was on the left comes to the top. */
	if (t->turned)
		return (pt){ t->left + (t->flat->height_mm - y) * PT_MM,
			t->top + x * PT_MM };
	return (pt){ t->left + x * PT_MM, t->top + y * PT_MM };
}

static pt corner(const struct tiling *t, unsigned column, unsigned row)
{
	return (pt){ column * (t->w - TILE_OVERLAP_PT), row * (t->h - TILE_OVERLAP_PT) };
}

/* Cuts a stretch to r; false when it lies outside. */
static bool clip(rect r, pt *a, pt *b)
{
	const double d[4] = { a->x - b->x, b->x - a->x, a->y - b->y, b->y - a->y };
	const double q[4] = { a->x - r.x, r.x + r.w - a->x, a->y - r.y, r.y +
	    r.h - a->y };
	double from = 0, to = 1;
	pt start = *a, way = pt_sub(*b, *a);

	for (int i = 0; i < 4; i++) {
		if (d[i] == 0 && q[i] < 0)
			return false;
		if (d[i] < 0)
			from = fmax(from, q[i] / d[i]);
		if (d[i] > 0)
			to = fmin(to, q[i] / d[i]);
	}
	if (from > to)
		return false;
	*a = pt_add(start, pt_mul(way, from));
	*b = pt_add(start, pt_mul(way, to));
	return true;
}

/* A run of stretches that touch, drawn as one path so that dashes go on. */
struct runner {
	const struct tiling *t;
	struct canvas *c;        /* null: only asks whether anything shows */
	rect view;               /* what is looked at, in the window */
	struct seg seg[256];
	size_t n;
	pt last;
	struct ink ink;
	bool shown;
};

static void flush(struct runner *r)
{
	if (r->n > 1 && r->c)
		canvas_path(r->c, r->seg, r->n, &r->ink);
	r->n = 0;
}

static void run_to(struct runner *r, pt a, pt b)
{
	bool joined = r->n > 0 && a.x == r->last.x && a.y == r->last.y;

	r->shown = true;
	if (!joined || r->n == sizeof r->seg / sizeof *r->seg) {
		flush(r);
		r->seg[r->n++] = (struct seg){ SEG_MOVE, { a } };
	}
	r->seg[r->n++] = (struct seg){ SEG_LINE, { b } };
	r->last = b;
}

/* None under 0.35 mm (0.992 pt): they are copied. The middle of a line is where it lies. */
static const struct ink inks[] = {
	[FLAT_CUT] = { .stroke_pt = 1.25 },
	[FLAT_BEND] = { .stroke_pt = 1.1, .dash_on_pt = 8, .dash_off_pt = 4 },
	[FLAT_MARK] = { .stroke_pt = 1 },
};

static void run_line(struct runner *r, const struct flat_line *l, pt at, pt window)
{
	size_t n = l->n + (l->closed ? 1 : 0);

	r->ink = inks[l->kind];
	for (size_t i = 1; i < n; i++) {
		pt a = pt_sub(tiling_point(r->t, l->v[i - 1]), window);
		pt b = pt_sub(tiling_point(r->t, l->v[i % l->n]), window);

		if (clip(r->view, &a, &b))
			run_to(r, pt_add(a, at), pt_add(b, at));
	}
	flush(r);
}

bool tiling_shows(const struct tiling *t, unsigned column, unsigned row)
{
	/* Of a shared strip, the nearer half: the other one shows on the neighbor. */
	double half = TILE_OVERLAP_PT / 2;
	double left = column > 0 ? half : 0, top = row > 0 ? half : 0;
	double right = t->w - (column + 1 < t->columns ? half : 0);
	double bottom = t->h - (row + 1 < t->rows ? half : 0);
	struct runner r = { .t = t, .view = { left, top, right - left, bottom - top } };

	for (size_t i = 0; i < t->flat->nlines && !r.shown; i++)
		run_line(&r, &t->flat->line[i], (pt){ 0, 0 }, corner(t, column, row));
	return r.shown;
}

static void draw_cross(struct canvas *c, pt p)
{
	canvas_line(c, (pt){ p.x - CROSS_PT, p.y }, (pt){ p.x + CROSS_PT, p.y }, 1);
	canvas_line(c, (pt){ p.x, p.y - CROSS_PT }, (pt){ p.x, p.y + CROSS_PT }, 1);
	canvas_circle(c, p, RING_PT, &(struct ink){ .stroke_pt = 1 });
}

/* Three crosses in the middle of each shared strip. */
static void draw_joins(const struct tiling *t, struct canvas *c, pt at, unsigned column,
    unsigned row)
{
	static const double share[] = { 0.12, 0.5, 0.88 };
	double edge = TILE_OVERLAP_PT / 2;

	for (int i = 0; i < 3; i++) {
		double x = at.x + t->w * share[i], y = at.y + t->h * share[i];

		if (column > 0)
			draw_cross(c, (pt){ at.x + edge, y });
		if (column + 1 < t->columns)
			draw_cross(c, (pt){ at.x + t->w - edge, y });
		if (row > 0)
			draw_cross(c, (pt){ x, at.y + edge });
		if (row + 1 < t->rows)
			draw_cross(c, (pt){ x, at.y + t->h - edge });
	}
}

/* The least step between neighboring division lines on paper; large without any. */
static double least_step(const struct tiling *t)
{
	double least = 1e9;
	pt last = { -1e9, -1e9 };

	for (size_t i = 0; i < t->flat->nlines; i++) {
		const struct flat_line *l = &t->flat->line[i];
		pt p;

		if (l->kind != FLAT_MARK)
			continue;
		p = tiling_point(t, l->v[0]);
		least = fmin(least, fmax(fabs(p.x - last.x), fabs(p.y - last.y)));
		last = p;
	}
	return least;
}

/* Two figures and a little air have to go between two lines. */
static double number_size(const struct tiling *t)
{
	if (!(t->number_pt > NUMBER_PT))
		return NUMBER_PT;
	return fmax(NUMBER_PT, fmin(t->number_pt, (least_step(t) - 6) / 1.2));
}

/* Division lines are numbered from the seam, beside their lower ends. */
static void number_marks(const struct tiling *t, struct arena *a, struct canvas *c, pt at,
    pt window)
{
	const double size_pt = number_size(t);
	const rect inner = { 0, size_pt, t->w - 2 * size_pt, t->h - size_pt };
	unsigned n = 0;

	for (size_t i = 0; i < t->flat->nlines; i++) {
		const struct flat_line *l = &t->flat->line[i];
		pt p;

		if (l->kind != FLAT_MARK)
			continue;
		n++;
		p = pt_sub(tiling_point(t, l->v[0]), window);
		if (rect_holds(inner, rect_at(p)))
			canvas_text(c, (pt){ at.x + p.x + 2, at.y + p.y - 4 }, FACE_SANS,
			    size_pt, str_format(a, "%u", n));
	}
}

void tiling_draw(const struct tiling *t, struct arena *a, struct canvas *c, pt at,
    unsigned column, unsigned row)
{
	pt window = corner(t, column, row);
	struct runner r = { .t = t, .c = c, .view = { 0, 0, t->w, t->h } };

	for (size_t i = 0; i < t->flat->nlines; i++)
		run_line(&r, &t->flat->line[i], at, window);
	number_marks(t, a, c, at, window);
	draw_joins(t, c, at, column, row);
}
