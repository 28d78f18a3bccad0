/* A canvas for the tests of single figures: every path, label and text as drawn, with
 * what all figures promise about them. */
#ifndef FIGURE_PROBE_H
#define FIGURE_PROBE_H

#include "base/arena.h"
#include "draw/canvas.h"
#include "draw/face.h"

#include <math.h>
#include <string.h>

#define FIGURE_PATHS 500
#define FIGURE_BOXES 60
#define PT_MM (72 / 25.4)

/* What a test of figures stands on; begin and end are its setup and teardown. */
struct figure_bench {
	struct arena *arena;
	const struct faces *faces;
};

static inline int figure_bench_begin(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct figure_bench *x = arena_alloc(a, sizeof *x);

	*x = (struct figure_bench){ a, faces_new(a) };
	*state = x;
	return 0;
}

static inline int figure_bench_end(void **state)
{
	arena_free(((struct figure_bench *)*state)->arena);
	return 0;
}

struct figure_path { struct seg *s; size_t n; struct ink ink; };

struct figure_probe {
	struct canvas canvas;
	struct arena *arena;
	const struct faces *faces;
	struct figure_path path[FIGURE_PATHS];
	rect box[FIGURE_BOXES];  /* of labels, not of the note */
	rect caps[FIGURE_BOXES]; /* what is printed in them: capitals of the texts */
	size_t npaths, nboxes;
	rect open;
	bool in_box, in_label, strayed; /* strayed: a text left its box */
	double left, top, right, bottom, smallest_pt;
	char text[6000];         /* all texts, one a line */
	size_t ntext;
};

static inline void figure_ink_at(struct figure_probe *p, double x, double y, double half)
{
	p->left = fmin(p->left, x - half);
	p->right = fmax(p->right, x + half);
	p->top = fmin(p->top, y - half);
	p->bottom = fmax(p->bottom, y + half);
}

static inline void figure_on_path(void *self, const struct seg *s, size_t n,
    const struct ink *ink)
{
	struct figure_probe *p = self;
	struct figure_path *k = &p->path[p->npaths++];

	assert_true(p->npaths <= FIGURE_PATHS);
	k->s = arena_array(p->arena, n, sizeof *s);
	memcpy(k->s, s, n * sizeof *s);
	k->n = n;
	k->ink = *ink;
	for (size_t i = 0; i < n; i++)
		for (int q = 0; s[i].op != SEG_CLOSE && q < (s[i].op == SEG_CURVE ? 3 : 1); q++)
			figure_ink_at(p, s[i].p[q].x, s[i].p[q].y, ink->stroke_pt / 2);
}

static inline void figure_on_text(void *self, pt at, enum face_id face, double size_pt,
    str s)
{
	struct figure_probe *p = self;
	double w = face_width_pt(p->faces, face, size_pt, s);
	double cap = face_cap_height_pt(p->faces, face, size_pt);
	double top = at.y - face_ascent_pt(p->faces, face, size_pt);
	double bottom = at.y + face_descent_pt(p->faces, face, size_pt);

	figure_ink_at(p, at.x, top, 0);
	figure_ink_at(p, at.x + w, bottom, 0);
	p->smallest_pt = fmin(p->smallest_pt, size_pt);
	p->strayed |= !p->in_box || at.x < p->open.x - 0.01 || top < p->open.y - 0.01 ||
	    at.x + w > p->open.x + p->open.w + 0.01 ||
	    bottom > p->open.y + p->open.h + 0.01;
	if (p->in_label) {
		rect *r = &p->caps[p->nboxes - 1];

		/* A label of several lines or parts grows. */
		if (r->w == 0)
			*r = (rect){ at.x, at.y - cap, w, cap };
		else
			*r = (rect){ fmin(r->x, at.x), r->y, fmax(r->x + r->w, at.x + w) -
			    fmin(r->x, at.x), at.y - r->y };
	}
	assert_true(p->ntext + s.n + 1 < sizeof p->text);
	memcpy(p->text + p->ntext, s.p, s.n);
	p->ntext += s.n;
	p->text[p->ntext++] = '\n';
	p->text[p->ntext] = 0;
}

static inline void figure_on_box(void *self, rect r, str name)
{
	struct figure_probe *p = self;

	p->open = r;
	p->in_box = true;
	p->in_label = str_eq(name, STR("label"));
	if (!p->in_label)
		return;
	assert_true(p->nboxes < FIGURE_BOXES);
	p->caps[p->nboxes] = (rect){ 0, 0, 0, 0 };
	p->box[p->nboxes++] = r;
}

static inline void figure_on_box_end(void *self)
{
	struct figure_probe *p = self;

	p->in_box = p->in_label = false;
}

static const struct canvas_ops figure_ops = {
	.path = figure_on_path, .text = figure_on_text, .box_begin = figure_on_box,
	.box_end = figure_on_box_end,
};

/* Ready for one figure; call canvas_page_end on its canvas after. */
static inline struct figure_probe *figure_probe_new(struct arena *a,
    const struct faces *f)
{
	struct figure_probe *p = arena_alloc(a, sizeof *p);

	memset(p, 0, sizeof *p);
	p->arena = a;
	p->faces = f;
	p->left = p->top = p->smallest_pt = INFINITY;
	p->right = p->bottom = -INFINITY;
	p->canvas = (struct canvas){ .ops = &figure_ops, .self = p };
	canvas_page_begin(&p->canvas, 612, 792);
	return p;
}

static inline bool figure_apart(rect a, rect b)
{
	return a.x + a.w <= b.x + 0.01 || b.x + b.w <= a.x + 0.01 ||
	    a.y + a.h <= b.y + 0.01 || b.y + b.h <= a.y + 0.01;
}

/* Whether a straight stretch passes through a rectangle, tried at points close by. */
static inline bool figure_crosses(pt a, pt b, rect r)
{
	for (int i = 0; i <= 60; i++) {
		double x = a.x + (b.x - a.x) * i / 60, y = a.y + (b.y - a.y) * i / 60;

		if (x > r.x + 0.3 && x < r.x + r.w - 0.3 && y > r.y + 0.3 &&
		    y < r.y + r.h - 0.3)
			return true;
	}
	return false;
}

static inline pt figure_on_curve(pt a, const pt *c, double t)
{
	double u = 1 - t;

	return (pt){ u * u * u * a.x + 3 * u * u * t * c[0].x + 3 * u * t * t * c[1].x +
		t * t * t * c[2].x, u * u * u * a.y + 3 * u * u * t * c[0].y +
		3 * u * t * t * c[1].y + t * t * t * c[2].y };
}

static inline bool figure_path_crosses(const struct figure_path *k, rect r)
{
	pt at = { 0, 0 }, start = { 0, 0 };

	for (size_t i = 0; i < k->n; i++) {
		pt from = at;

		if (k->s[i].op == SEG_CURVE) {
			for (int q = 1; q <= 12; q++) {
				pt next = figure_on_curve(from, k->s[i].p, q / 12.0);

				if (figure_crosses(at, next, r))
					return true;
				at = next;
			}
			continue;
		}
		at = k->s[i].op == SEG_CLOSE ? start : k->s[i].p[0];
		if (k->s[i].op == SEG_MOVE)
			start = at;
		else if (figure_crosses(from, at, r))
			return true;
	}
	return false;
}

/* Ink inside the area; labels apart, in their boxes, no line through one; type of 12 pt
 * and lines of 0.35 mm (0.992 pt) or more. */
static inline void figure_keeps_promises(const struct figure_probe *p, rect area)
{
	assert_true(p->npaths > 0);
	assert_true(p->left >= area.x - 0.51 && p->right <= area.x + area.w + 0.51);
	assert_true(p->top >= area.y - 0.51 && p->bottom <= area.y + area.h + 0.51);
	assert_true(p->smallest_pt >= 12);
	assert_false(p->strayed);
	for (size_t k = 0; k < p->npaths; k++) {
		const struct figure_path *line = &p->path[k];

		assert_true(line->ink.stroke_pt > 0 || line->ink.fill);
		assert_true(line->ink.stroke_pt == 0 || line->ink.stroke_pt >= 0.35 * PT_MM);
		for (size_t i = 0; i < p->nboxes; i++)
			if (p->caps[i].w > 0 && figure_path_crosses(line, p->caps[i]))
				fail_msg("a line through label %zu of:\n%s", i, p->text);
	}
	for (size_t i = 0; i < p->nboxes; i++)
		for (size_t k = 0; k < i; k++)
			if (!figure_apart(p->box[i], p->box[k]))
				fail_msg("labels %zu and %zu meet in:\n%s", k, i, p->text);
}

static inline bool figure_has_text(const struct figure_probe *p, const char *want)
{
	return strstr(p->text, want) != NULL;
}

/* The path that is a single straight stretch or polyline of n points, from `which` on. */
static inline const struct figure_path *figure_lines(const struct figure_probe *p, size_t n,
    double stroke_pt, size_t which)
{
	for (size_t i = 0; i < p->npaths; i++) {
		bool lines = p->path[i].n == n && p->path[i].ink.stroke_pt == stroke_pt;

		for (size_t k = 0; lines && k < n; k++)
			lines = p->path[i].s[k].op == (k ? SEG_LINE : SEG_MOVE);
		if (lines && which-- == 0)
			return &p->path[i];
	}
	return NULL;
}

/* The scale that the note claims, from its "N:M". */
static inline double figure_told_scale(const struct figure_probe *p)
{
	const char *colon = p->text;
	double over, under = 0, tens = 1;

	do
		colon = strchr(colon + 1, ':');
	while (colon != NULL && !(colon[1] >= '0' && colon[1] <= '9' && colon[-1] >= '0' &&
	    colon[-1] <= '9' && strstr(p->text, "to scale") < colon));
	assert_non_null(colon);
	over = 0;
	for (const char *c = colon - 1; *c >= '0' && *c <= '9'; c--, tens *= 10)
		over += (*c - '0') * tens;
	for (const char *c = colon + 1; *c >= '0' && *c <= '9'; c++)
		under = under * 10 + (*c - '0');
	return over / under;
}

#endif
