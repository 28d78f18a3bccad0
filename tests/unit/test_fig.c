#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/fig.h"

#include "base/buf.h"
#include "draw/dim.h"
#include "draw/geom.h"
#include "draw/trace.h"
#include "draw/zoom.h"

#include <math.h>
#include <string.h>

#define IN 25.4
#define PT_MM (72 / 25.4)
#define PATHS 400
#define BOXES 200
#define LABEL(text) { "" text, sizeof(text) - 1 }

/* What a figure drew. */
struct record {
	struct arena *arena;
	const struct faces *faces;
	struct path { struct seg *s; size_t n; struct ink ink; } path[PATHS];
	struct box { rect r; str name; } box[BOXES];
	size_t npaths, nboxes, ntexts;
	rect open_box;
	bool in_box, strayed;    /* a text outside its box */
	double left, top, right, bottom;
	double smallest_pt;      /* type */
	char text[4000];         /* all texts, one a line */
	size_t ntext;
};

static void ink_at(struct record *r, double x, double y, double half)
{
	r->left = fmin(r->left, x - half);
	r->right = fmax(r->right, x + half);
	r->top = fmin(r->top, y - half);
	r->bottom = fmax(r->bottom, y + half);
}

static void record_path(void *self, const struct seg *s, size_t n, const struct ink *ink)
{
	struct record *r = self;
	struct path *p = &r->path[r->npaths++];

	assert_true(r->npaths <= PATHS);
	p->s = arena_array(r->arena, n, sizeof *s);
	memcpy(p->s, s, n * sizeof *s);
	p->n = n;
	p->ink = *ink;
	for (size_t i = 0; i < n; i++)
		for (int k = 0;
		     s[i].op != SEG_CLOSE && k < (s[i].op == SEG_CURVE ? 3 : 1); k++)
			ink_at(r, s[i].p[k].x, s[i].p[k].y, ink->stroke_pt / 2);
}

static void record_text(void *self, pt at, enum face_id face, double size_pt, str s)
{
	struct record *r = self;
	rect box = { at.x, at.y - face_cap_height_pt(r->faces, face, size_pt),
	    face_width_pt(r->faces, face, size_pt, s),
	    face_cap_height_pt(r->faces, face, size_pt) };

	ink_at(r, box.x, at.y + face_descent_pt(r->faces, face, size_pt), 0);
	ink_at(r, box.x + box.w, box.y, 0);
	if (r->in_box)
		r->strayed = r->strayed || box.x < r->open_box.x - 0.01 ||
		    box.x + box.w > r->open_box.x + r->open_box.w + 0.01 ||
		    box.y < r->open_box.y - 0.01 ||
		    at.y > r->open_box.y + r->open_box.h + 0.01;
	assert_true(r->ntext + s.n + 1 < sizeof r->text);
	memcpy(r->text + r->ntext, s.p, s.n);
	r->ntext += s.n;
	r->text[r->ntext++] = '\n';
	r->smallest_pt = fmin(r->smallest_pt, size_pt);
	r->ntexts++;
}

static void record_box(void *self, rect box, str name)
{
	struct record *r = self;

	assert_true(r->nboxes < BOXES);
	r->box[r->nboxes++] = (struct box){ box, name };
	r->open_box = box;
	r->in_box = true;
}

static void record_box_end(void *self)
{
	((struct record *)self)->in_box = false;
}

static const struct canvas_ops record_ops = {
	.path = record_path, .text = record_text, .box_begin = record_box,
	.box_end = record_box_end,
};

static void record_begin(struct record *r, struct canvas *c, struct arena *a,
    const struct faces *f)
{
	memset(r, 0, sizeof *r);
	r->arena = a;
	r->faces = f;
	r->text[r->ntext++] = '\n';
	r->left = r->top = r->smallest_pt = INFINITY;
	r->right = r->bottom = -INFINITY;
	*c = (struct canvas){ .ops = &record_ops, .self = r };
	canvas_page_begin(c, 612, 792);
}

struct fixture {
	struct arena *arena;
	const struct faces *faces;
	struct record *r;
};

static int setup(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct fixture *x = arena_alloc(a, sizeof *x);

	x->arena = a;
	x->faces = faces_new(a);
	x->r = arena_alloc(a, sizeof *x->r);
	*state = x;
	return 0;
}

static int teardown(void **state)
{
	arena_free(((struct fixture *)*state)->arena);
	return 0;
}

static bool draw(struct fixture *x, rect area, const struct fig_joint *j)
{
	struct canvas c;
	bool ok;

	record_begin(x->r, &c, x->arena, x->faces);
	ok = fig_joint_draw(&c, x->faces, area, j);
	canvas_page_end(&c);
	return ok;
}

/* The scale that the note claims, read from its "N:M". */
static double told_scale(const struct record *r)
{
	unsigned n = 0, m = 0;

	for (size_t i = 0; i < r->ntext; i++) {
		if (r->text[i] != ':' || i == 0 || r->text[i + 1] < '0' ||
		    r->text[i + 1] > '9')
			continue;
		for (size_t k = i; k-- > 0 && r->text[k] != '\n';)
			n = n + (unsigned)(r->text[k] - '0') * (k + 1 == i ? 1 : 10);
		for (size_t k = i + 1; r->text[k] != '\n' && r->text[k] != ','; k++)
			m = m * 10 + (unsigned)(r->text[k] - '0');
	}
	assert_true(n > 0 && m > 0);
	return (double)n / m;
}

static bool has_text(const struct record *r, const char *want)
{
	size_t n = strlen(want);

	for (size_t i = 0; i + n <= r->ntext; i++)
		if (memcmp(r->text + i, want, n) == 0)
			return true;
	return false;
}

/* Outlines in the order drawn, told from hatching and dimensions by their width. */
static const struct path *stroked(const struct record *r, double stroke_pt, size_t which)
{
	for (size_t i = 0; i < r->npaths; i++)
		if (r->path[i].ink.stroke_pt == stroke_pt && !r->path[i].ink.fill &&
		    which-- == 0)
			return &r->path[i];
	fail_msg("no outline of that kind");
	return NULL;
}

static const struct path *member(const struct record *r, size_t which)
{
	return stroked(r, DIM_OUTLINE_PT, which);
}

static const struct path *weld(const struct record *r, size_t which)
{
	return stroked(r, DIM_WELD_PT, which);
}

static rect extent(const struct path *p)
{
	double l = INFINITY, t = INFINITY, rt = -INFINITY, b = -INFINITY;

	for (size_t i = 0; i < p->n; i++) {
		if (p->s[i].op == SEG_CLOSE)
			continue;
		pt q = p->s[i].p[p->s[i].op == SEG_CURVE ? 2 : 0];

		l = fmin(l, q.x);
		rt = fmax(rt, q.x);
		t = fmin(t, q.y);
		b = fmax(b, q.y);
	}
	return (rect){ l, t, rt - l, b - t };
}

/* Furthest x of an outline at one height; way -1 leftmost, 1 rightmost. */
static double edge_at(const struct path *p, double y, double way)
{
	double best = -INFINITY;

	for (size_t i = 0; i < p->n; i++)
		if (p->s[i].op != SEG_CLOSE && fabs(p->s[i].p[0].y - y) < 1e-6)
			best = fmax(best, way * p->s[i].p[0].x);
	return way * best;
}

static void near_mm(double got_pt, double scale, double want_mm)
{
	double got = got_pt / PT_MM / scale;

	if (!(fabs(got - want_mm) < 1e-6))
		fail_msg("drawn %.6f mm, want %.6f mm", got, want_mm);
}

static const struct fig_layer three_layers[] = { { 1, false }, { 2, false },
	{ 3, false } };

static const struct fig_joint v_backed = {
	.shape = FIG_SINGLE_V,
	.t1_mm = 0.375 * IN,
	.gap_lo_mm = 0.25 * IN,
	.angle_deg = 45,
	.backing_t_mm = 0.25 * IN,
	.backing_width_mm = IN,
	.layers = three_layers,
	.nlayers = 3,
	.label_t1 = LABEL("3/8 in [9.5 mm]"),
	.label_gap = LABEL("1/4 in [6.4 mm]"),
	.label_angle = LABEL("45 deg"),
	.label_backing = LABEL("backing 1/4 x 1 in"),
	.letter = LABEL("B"),
	.position = LABEL("3G up"),
};

/* The top width is worked in the demo catalogue of this program: 0.250 + 2 x 0.375 x
 * tan 22.5 deg = 0.561 in. */
static void test_v_groove(void **state)
{
	struct fixture *x = *state;
	rect left, right, back;
	double scale, top, bottom;

	assert_true(draw(x, (rect){ 20, 30, 468, 300 }, &v_backed));
	scale = told_scale(x->r);
	left = extent(member(x->r, 0));
	right = extent(member(x->r, 1));
	back = extent(member(x->r, 2));
	near_mm(left.h, scale, 0.375 * IN);
	near_mm(right.h, scale, 0.375 * IN);
	bottom = edge_at(member(x->r, 1), right.y + right.h, -1) -
	    edge_at(member(x->r, 0), left.y + left.h, 1);
	near_mm(bottom, scale, 0.25 * IN);
	top = edge_at(member(x->r, 1), right.y, -1) - edge_at(member(x->r, 0), left.y, 1);
	assert_true(fabs(top / 72 / scale - 0.561) < 0.0005);
	near_mm(back.w, scale, IN);
	near_mm(back.h, scale, 0.25 * IN);
	near_mm(back.y - (left.y + left.h), scale, 0);
	/* Under both edges alike. */
	near_mm(edge_at(member(x->r, 0), left.y + left.h, 1) - back.x, scale,
	    (IN - 0.25 * IN) / 2);
	assert_true(has_text(x->r, "Weld\nB\n3G up\n"));
	for (char n = '1'; n <= '6'; n++)
		assert_true(has_text(x->r, (const char[]){ '\n', n, '\n', 0 }));
}

static void test_land(void **state)
{
	struct fixture *x = *state;
	struct fig_joint j = { .shape = FIG_SINGLE_V, .t1_mm = 0.375 * IN,
		.gap_lo_mm = 0.125 * IN, .land_mm = 0.09375 * IN, .angle_deg = 60 };
	const struct path *p;
	double scale;

	assert_true(draw(x, (rect){ 0, 0, 300, 250 }, &j));
	scale = told_scale(x->r);
	p = member(x->r, 0);
	/* Root corner, top of the land, top of the bevel. */
	near_mm(p->s[0].p[0].x - p->s[1].p[0].x, scale, 0);
	near_mm(p->s[0].p[0].y - p->s[1].p[0].y, scale, 0.09375 * IN);
	near_mm(p->s[1].p[0].x - p->s[2].p[0].x, scale,
	    (0.375 - 0.09375) * IN * 0.57735026919); /* tan 30 deg */
}

static void test_bevel_on_one_side(void **state)
{
	struct fixture *x = *state;
	struct fig_joint j = { .shape = FIG_SINGLE_BEVEL, .t1_mm = 10, .gap_lo_mm = 3,
		.gap_hi_mm = 5, .bevel_angle_deg = 45 };
	rect left, right;
	double scale;

	assert_true(draw(x, (rect){ 0, 0, 300, 250 }, &j));
	scale = told_scale(x->r);
	left = extent(member(x->r, 0));
	right = extent(member(x->r, 1));
	/* The opening is drawn at the middle of its range. */
	near_mm(right.x - edge_at(member(x->r, 0), left.y + left.h, 1), scale, 4);
	near_mm(
	    edge_at(member(x->r, 1), right.y, -1) - edge_at(member(x->r, 0), left.y, 1),
	    scale, 14);
}

static const struct fig_joint tee = {
	.shape = FIG_TEE,
	.t1_mm = 0.375 * IN,
	.t2_mm = 0.25 * IN,
	.leg_mm = 0.3125 * IN,
	.passes = 3,
	.label_t1 = LABEL("3/8 in [9.5 mm]"),
	.label_t2 = LABEL("1/4 in [6.4 mm]"),
	.label_leg = LABEL("5/16 in [7.9 mm]"),
	.label_gap = LABEL("gap 0 to 1/16 in"),
	.gap_hi_mm = 1.5,
};

static void test_fillet(void **state)
{
	struct fixture *x = *state;
	rect base, web;
	const struct path *w;
	double scale;

	assert_true(draw(x, (rect){ 20, 30, 468, 300 }, &tee));
	scale = told_scale(x->r);
	base = extent(member(x->r, 0));
	web = extent(member(x->r, 1));
	w = weld(x->r, 0);
	near_mm(base.h, scale, 0.25 * IN);
	near_mm(web.w, scale, 0.375 * IN);
	assert_int_equal(w->n, 4);
	/* Root where web meets base; one toe along each. */
	near_mm(w->s[0].p[0].x - (web.x + web.w), scale, 0);
	near_mm(w->s[0].p[0].y - base.y, scale, 0);
	near_mm(w->s[1].p[0].x - w->s[0].p[0].x, scale, 0.3125 * IN);
	near_mm(w->s[1].p[0].y - base.y, scale, 0);
	near_mm(w->s[2].p[2].x - (web.x + web.w), scale, 0);
	near_mm(base.y - w->s[2].p[2].y, scale, 0.3125 * IN);
}

static void test_lap(void **state)
{
	struct fixture *x = *state;
	struct fig_joint j = { .shape = FIG_LAP, .t1_mm = 9, .t2_mm = 6, .leg_mm = 6,
		.overlap_mm = 38, .both_sides = true };
	rect up, low;
	const struct path *w;
	double scale;

	assert_true(draw(x, (rect){ 20, 30, 468, 300 }, &j));
	scale = told_scale(x->r);
	up = extent(member(x->r, 0));
	low = extent(member(x->r, 1));
	near_mm(up.h, scale, 9);
	near_mm(low.h, scale, 6);
	near_mm(low.x + low.w - up.x, scale, 38);
	w = weld(x->r, 1);
	near_mm(w->s[0].p[0].x - (low.x + low.w), scale, 0);
	near_mm(w->s[2].p[2].y - low.y, scale, 6);
}

static void test_pipe_wall(void **state)
{
	struct fixture *x = *state;
	struct fig_joint j = { .shape = FIG_PIPE_BUTT,
		.t1_mm = 0.28 * IN,
		.od_mm = 6.625 * IN,
		.gap_lo_mm = 0.125 * IN,
		.land_mm = 0.09375 * IN,
		.angle_deg = 75 };
	rect left, half;
	double scale;
	const struct path *dash = NULL;

	assert_true(draw(x, (rect){ 20, 30, 468, 300 }, &j));
	scale = told_scale(x->r);
	left = extent(member(x->r, 0));
	half = extent(member(x->r, 2));
	near_mm(left.h, scale, 0.28 * IN);
	for (size_t i = 0; i < x->r->npaths; i++)
		if (x->r->path[i].ink.dash_on_pt > 0)
			dash = &x->r->path[i];
	/* The dashed bore lies a wall above the lowest line of the pipe. */
	assert_non_null(dash);
	near_mm(half.y + half.h - dash->s[0].p[0].y, scale, 0.28 * IN);
	assert_true(has_text(x->r, "inside of pipe\n"));
}

/* Width of a groove with root radius r and half angle a cut d deep, by plane geometry:
 * 2 (r cos a + (d - r + r sin a) tan a). r 3/16, a 10 deg, d 1/4: 0.4028 in. */
static void test_gouge(void **state)
{
	struct fixture *x = *state;
	struct fig_joint j = { .shape = FIG_U_GROOVE,
		.t1_mm = 0.5 * IN,
		.depth_mm = 0.25 * IN,
		.radius_mm = 0.1875 * IN,
		.angle_deg = 20 };
	const struct path *p;
	double scale, deepest = -INFINITY, wide = 0;
	rect box;

	assert_true(draw(x, (rect){ 0, 0, 400, 250 }, &j));
	scale = told_scale(x->r);
	p = member(x->r, 0);
	box = extent(p);
	near_mm(box.h, scale, 0.5 * IN);
	for (size_t i = 0; i + 1 < p->n; i++) {
		pt q = p->s[i].p[0];

		if (fabs(q.x - (box.x + box.w / 2)) < 1e-3)
			deepest = fmax(deepest, q.y);
		if (fabs(q.y - box.y) < 1e-6 &&
		    fabs(q.x - box.x - box.w / 2) < box.w / 2 - 4)
			wide = fmax(wide, 2 * (q.x - box.x - box.w / 2));
	}
	near_mm(deepest - box.y, scale, 0.25 * IN);
	assert_true(fabs(wide / 72 / scale - 0.4028) < 0.0001);
}

/* A joint of each shape in proportion to t. */
static struct fig_joint any_joint(enum fig_shape shape, double t)
{
	struct fig_joint j = { .shape = shape,
		.t1_mm = t,
		.gap_lo_mm = t / 8,
		.width1_mm = 250,
		.width2_mm = 250,
		.length_mm = 203,
		.label_t1 = LABEL("1-1/8 in [28.6 mm]"),
		.label_t2 = LABEL("11 ga [3.04 mm]"),
		.label_gap = LABEL("1/16 in [1.6 mm]"),
		.letter = LABEL("A"),
		.label_length = LABEL("8 in [203 mm]"),
		.position = LABEL("4F"),
		.passes = 3 };

	j.label_reinforcement = (str)LABEL("3/32 in [2.4 mm] most");
	j.leg_mm = t * 0.8;
	j.label_leg = (str)LABEL("5/16 in [7.9 mm]");
	j.label_angle = j.label_bevel = (str)LABEL("60 deg");
	j.label_land = (str)LABEL("3/32 in [2.4 mm]");
	j.label_od = (str)LABEL("NPS 6 schedule 40");
	j.label_width1 = (str)LABEL("10 in [254 mm]");
	j.reinforcement_mm = t / 6;
	if (shape == FIG_SINGLE_V || shape == FIG_PIPE_BUTT)
		j.angle_deg = 60, j.label_bevel = (str)LABEL(""), j.land_mm = t / 6;
	if (shape == FIG_PLUG || shape == FIG_SPOT)
		j.leg_mm = 0, j.label_leg = (str)LABEL(""), j.groove_width_mm = 2 * t,
		j.label_groove_width = (str)LABEL("3/4 in [19.1 mm]");
	if (shape == FIG_CUT_EDGE || shape == FIG_BEVEL_CUT)
		j.leg_mm = j.gap_lo_mm = j.reinforcement_mm = 0, j.kerf_mm = t / 4,
		j.bevel_angle_deg = shape == FIG_BEVEL_CUT ? 30 : 0,
		j.label_leg = j.label_gap = j.label_reinforcement = (str)LABEL("");
	if (shape >= FIG_BUTT_GROOVE)
		j.prep = FIG_PREP_BEVEL, j.bevel_angle_deg = 30, j.width1_mm = j.width2_mm = NAN;
	if (shape == FIG_EDGE_GROOVE)
		j.depth_mm = t;
	if (shape == FIG_SINGLE_BEVEL || shape == FIG_BRANCH)
		j.bevel_angle_deg = 45, j.land_mm = t / 6;
	if (shape == FIG_PIPE_BUTT || shape == FIG_FLARE_BEVEL || shape == FIG_BRANCH)
		j.od_mm = 10 * t;
	if (shape == FIG_LAP)
		j.overlap_mm = 4 * t,
		j.label_overlap = (str)LABEL("overlap 1-1/2 in [38 mm]");
	if (shape == FIG_U_GROOVE)
		j.depth_mm = t / 2, j.groove_width_mm = t, j.label_depth = j.label_leg;
	if (shape == FIG_PAD)
		j.passes = 8, j.width1_mm = 76;
	return j;
}

static const rect areas[] = { { 36, 36, 240, 160 }, { 36, 36, 320, 200 },
	{ 72, 50, 468, 230 }, { 72, 50, 500, 300 } };
static const double sheet_mm[] = { 0.0598 * IN, 0.1196 * IN, 0.1875 * IN, 0.25 * IN,
	0.375 * IN, 0.5 * IN, IN };

/* Whether a path runs through what is printed in a box. */
static bool path_meets(const struct path *p, rect box)
{
	rect r = rect_inset(box, 2.5);
	pt at = { 0, 0 };

	for (size_t i = 0; i < p->n; i++) {
		const struct seg *s = &p->s[i];
		pt from = at;

		if (s->op == SEG_CLOSE)
			continue;
		at = s->p[s->op == SEG_CURVE ? 2 : 0];
		if (s->op == SEG_LINE && rect_crossed(r, from, at))
			return true;
		for (int k = 0; s->op == SEG_CURVE && k < 16; k++) {
			double t = (k + 0.5) / 16, u = 1 - t;
			pt q = { u * u * u * from.x + 3 * u * u * t * s->p[0].x +
				3 * u * t * t * s->p[1].x + t * t * t * s->p[2].x,
				u * u * u * from.y + 3 * u * u * t * s->p[0].y +
				3 * u * t * t * s->p[1].y + t * t * t * s->p[2].y };

			if (rect_holds(r, (rect){ q.x, q.y, 0, 0 }))
				return true;
		}
	}
	return false;
}

/* No line thinner than 0.35 mm, none through a label. */
static void check_lines(const struct record *r)
{
	for (size_t k = 0; k < r->npaths; k++) {
		const struct path *p = &r->path[k];

		assert_true(p->ink.stroke_pt == 0 || p->ink.stroke_pt >= 0.35 * PT_MM);
		for (size_t i = 0; i < r->nboxes; i++)
			if (str_eq(r->box[i].name, STR("label")) && r->box[i].r.w > 6 &&
			    path_meets(p, r->box[i].r))
				fail_msg("a line through box %zu of%s", i, r->text);
	}
}

static void check_page(const struct record *r, rect area)
{
	check_lines(r);
	assert_true(r->left >= area.x - 0.01 && r->top >= area.y - 0.01);
	assert_true(r->right <= area.x + area.w + 0.01);
	assert_true(r->bottom <= area.y + area.h + 0.01);
	assert_false(r->strayed);
	assert_true(r->smallest_pt >= 12);
	for (size_t i = 0; i < r->nboxes; i++) {
		for (size_t k = 0; k < i; k++) {
			rect a = r->box[i].r, b = r->box[k].r;

			if (a.x + a.w > b.x + 1e-6 && b.x + b.w > a.x + 1e-6 &&
			    a.y + a.h > b.y + 1e-6 && b.y + b.h > a.y + 1e-6)
				fail_msg("boxes %zu and %zu overlap", i, k);
		}
	}
}

/* Thickness of the first member, whichever way it lies; 0 where it is curved. */
static double first_thickness(const struct record *r, enum fig_shape shape)
{
	switch (shape) {
	case FIG_TEE:
	case FIG_BRANCH:
		return extent(member(r, 1)).w;
	case FIG_EDGE:
		return extent(member(r, 0)).w;
	case FIG_FLARE_BEVEL:
	case FIG_EDGE_GROOVE:
		return 0;
	case FIG_TEE_GROOVE:
		return extent(member(r, 1)).w;
	default:
		return extent(member(r, 0)).h;
	}
}

static void test_every_shape_every_size(void **state)
{
	struct fixture *x = *state;
	unsigned drawn = 0, tried = 0;

	for (int shape = FIG_NONE + 1; shape < FIG_SHAPE_COUNT; shape++) {
		assert_true(fig_can_draw((enum fig_shape)shape));
		for (size_t t = 0; t < sizeof sheet_mm / sizeof sheet_mm[0]; t++) {
			struct fig_joint j =
			    any_joint((enum fig_shape)shape, sheet_mm[t]);

			for (size_t a = 0; a < sizeof areas / sizeof areas[0]; a++) {
				bool ok = draw(x, areas[a], &j);

				tried++;
				check_page(x->r, areas[a]);
				if (!ok) {
					assert_true(has_text(
					    x->r, "no drawing:\ntoo little room"));
					assert_int_equal(x->r->npaths, 0);
					/* A sheet gives a drawing at least this much. */
					if (a >= 2)
						fail_msg("shape %d, %.2f mm, area %zu",
						    shape, sheet_mm[t], a);
					continue;
				}
				drawn++;
				double seen = first_thickness(x->r, j.shape),
				       scale = told_scale(x->r);
				if (seen > 0)
					near_mm(seen, scale, sheet_mm[t]);
				assert_true(sheet_mm[t] * scale >= 2.2 - 1e-9);
			}
		}
	}
	print_message("%u of %u drawn\n", drawn, tried);
	assert_true(drawn * 10 >= tried * 9);
}

static void test_plans(void **state)
{
	struct fixture *x = *state;

	for (int shape = FIG_NONE + 1; shape < FIG_SHAPE_COUNT; shape++) {
		struct fig_joint j = any_joint((enum fig_shape)shape, 0.25 * IN);
		struct canvas c;

		j.restart = j.shape != FIG_PIPE_BUTT;
		j.tacks = 3;
		if (shape == FIG_CUT_EDGE || shape == FIG_BEVEL_CUT || shape == FIG_PLUG ||
		    shape == FIG_SPOT)
			continue; /* no view from above, or one without a restart */
		record_begin(x->r, &c, x->arena, x->faces);
		if (!fig_plan_draw(&c, x->faces, areas[2], &j))
			fail_msg("plan of shape %d", shape);
		canvas_page_end(&c);
		check_page(x->r, areas[2]);
		if (j.shape == FIG_PIPE_BUTT || j.shape == FIG_BRANCH) {
			assert_true(has_text(x->r, "3\n12\n9\n6\n"));
			near_mm(extent(member(x->r, 0)).w, told_scale(x->r), j.od_mm);
			near_mm(extent(member(x->r, 1)).w, told_scale(x->r),
			    j.od_mm - 2 * j.t1_mm);
		} else {
			near_mm(extent(member(x->r, 0)).w, told_scale(x->r), 203);
			assert_true(has_text(x->r, "stop and restart here\n"));
			assert_true(has_text(x->r, "tack\n"));
		}
	}
}

static void test_plan_needs_length(void **state)
{
	struct fixture *x = *state;
	struct canvas c;

	record_begin(x->r, &c, x->arena, x->faces);
	assert_false(fig_plan_draw(&c, x->faces, areas[2], &v_backed));
	assert_true(has_text(x->r, "the length is not given\n"));
}

struct fault { struct fig_joint j; const char *why; };

static const struct fault faults[] = {
	{ { .shape = FIG_NONE, .t1_mm = 9 }, "no section for this joint" },
	{ { .shape = FIG_TEE, .leg_mm = 5 }, "the thickness is not given" },
	{ { .shape = FIG_TEE, .t1_mm = NAN, .leg_mm = 5 }, "the thickness is not given" },
	{ { .shape = FIG_TEE, .t1_mm = 9, .leg_mm = -5 },
	    "a size is negative or without end" },
	{ { .shape = FIG_TEE, .t1_mm = 9 }, "the size of the fillet is not given" },
	{ { .shape = FIG_TEE, .t1_mm = 9, .leg_mm = 3, .gap_lo_mm = 3 },
	    "the gap is as wide as the leg or wider" },
	/* 5/32 in is 3.97 mm and the next 32nd above 4 mm is 4.76 mm, less than 5 mm. */
	{ { .shape = FIG_LAP, .t1_mm = 4, .leg_mm = 5.1 },
	    "the leg is larger than the edge of the plate" },
	/* 14 ga lies between 2/32 and 3/32 in, 3/32 in is 2.38 mm. */
	{ { .shape = FIG_LAP, .t1_mm = 1.897, .leg_mm = 2.39 },
	    "the leg is larger than the edge of the plate" },
	{ { .shape = FIG_SINGLE_V, .t1_mm = 9 }, "the included angle is not given" },
	{ { .shape = FIG_SINGLE_V, .t1_mm = 9, .angle_deg = 160 },
	    "the included angle is 160 degrees or more" },
	{ { .shape = FIG_SINGLE_V, .t1_mm = 9, .angle_deg = 60, .bevel_angle_deg = 22.5 },
	    "the included angle is not twice the bevel angle" },
	{ { .shape = FIG_SINGLE_V, .t1_mm = 9, .angle_deg = 60, .land_mm = 9 },
	    "the land is as thick as the member or thicker" },
	{ { .shape = FIG_SINGLE_BEVEL, .t1_mm = 9, .bevel_angle_deg = 90 },
	    "the bevel angle is 80 degrees or more" },
	{ { .shape = FIG_SINGLE_V, .t1_mm = 9, .angle_deg = 60, .backing_t_mm = 6 },
	    "the backing needs a thickness and a width" },
	{ { .shape = FIG_SINGLE_V,
	      .t1_mm = 9,
	      .angle_deg = 60,
	      .backing_t_mm = 6,
	      .backing_width_mm = 6,
	      .gap_lo_mm = 6 },
	    "the backing is narrower than the root opening" },
	{ { .shape = FIG_TEE,
	      .t1_mm = 9,
	      .leg_mm = 5,
	      .backing_t_mm = 6,
	      .backing_width_mm = 25 },
	    "a backing does not go with this joint" },
	{ { .shape = FIG_SQUARE_BUTT, .t1_mm = 3, .gap_lo_mm = 2, .gap_hi_mm = 1 },
	    "the gap ends below its beginning" },
	{ { .shape = FIG_SQUARE_BUTT, .t1_mm = 3, .land_mm = 1 },
	    "a land does not go with this joint" },
	{ { .shape = FIG_PIPE_BUTT, .t1_mm = 9, .od_mm = 18, .angle_deg = 60 },
	    "the wall is thicker than the pipe" },
	{ { .shape = FIG_PIPE_BUTT, .t1_mm = 9, .angle_deg = 60 },
	    "the outside diameter is not given" },
	{ { .shape = FIG_U_GROOVE, .t1_mm = 9, .depth_mm = 9, .groove_width_mm = 8 },
	    "the groove is as deep as the plate or deeper" },
	{ { .shape = FIG_PAD, .t1_mm = 9, .width1_mm = 100 },
	    "the number of beads is not given" },
	{ { .shape = FIG_LAP,
	      .t1_mm = 9,
	      .leg_mm = 6,
	      .overlap_mm = 80,
	      .width1_mm = 76 },
	    "a member is too narrow for the joint" },
	{ { .shape = FIG_TEE, .t1_mm = 9, .leg_mm = 6, .width2_mm = 21 },
	    "a member is too narrow for the joint" },
	{ { .shape = FIG_SINGLE_V, .t1_mm = 20, .angle_deg = 90, .width1_mm = 19 },
	    "a member is too narrow for the joint" },
	{ { .shape = FIG_EDGE, .t1_mm = 3, .both_sides = true },
	    "this joint is not drawn from both sides" },
};

static void test_no_nonsense(void **state)
{
	struct fixture *x = *state;

	for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
		str why = fig_joint_fault(&faults[i].j);

		if (!str_eq(why, str_of(faults[i].why)))
			fail_msg("case %zu: %.*s", i, STR_ARG(why));
		assert_false(draw(x, areas[3], &faults[i].j));
		assert_int_equal(x->r->npaths, 0);
		assert_true(has_text(x->r, "no drawing:\n"));
		check_page(x->r, areas[3]);
	}
	/* A double preparation is welded from both sides whatever its joint. */
	assert_true(draw(x, areas[3], &(struct fig_joint){ .shape = FIG_TEE_GROOVE,
	    .prep = FIG_PREP_DOUBLE_BEVEL, .t1_mm = 25.4, .land_mm = 3.2, .angle_deg = 45,
	    .both_sides = true }));
	assert_true(draw(x, areas[3], &(struct fig_joint){ .shape = FIG_CORNER_GROOVE,
	    .prep = FIG_PREP_DOUBLE_J, .t1_mm = 25.4, .land_mm = 3.2, .angle_deg = 35,
	    .radius_mm = 4.8, .both_sides = true }));
	/* Just inside the limits there is a drawing: 1/8 in on 11 ga is common. */
	assert_true(draw(x, areas[3], &(struct fig_joint){ .shape = FIG_LAP,
	    .t1_mm = 0.1196 * IN, .leg_mm = 0.125 * IN }));
	assert_true(draw(x, areas[3],
	    &(struct fig_joint){
	        .shape = FIG_SINGLE_V, .t1_mm = 9, .angle_deg = 60, .land_mm = 8.9 }));
}

static void test_words(void **state)
{
	struct fixture *x = *state;
	str s = fig_joint_words(x->arena, &v_backed);

	assert_true(str_eq(s,
	    STR("Single-V butt joint, in section, position 3G up, thickness "
	        "3/8 in [9.5 mm], included angle 45 deg, root opening 1/4 in [6.4 mm], "
	        "backing "
	        "1/4 x 1 in. Beads by layers, in order: 1; 2, 3; 4, 5, 6.")));
	s = fig_joint_words(x->arena, &faults[11].j);
	assert_true(str_eq(s, STR("No drawing: the land is as thick as the member or "
	    "thicker.")));
}

static void test_same_bytes(void **state)
{
	struct fixture *x = *state;
	struct buf out[2] = { { .arena = x->arena }, { .arena = x->arena } };

	for (int i = 0; i < 2; i++) {
		struct trace t;

		trace_init(&t, &out[i]);
		canvas_page_begin(&t.canvas, 612, 792);
		fig_joint_draw(&t.canvas, x->faces, areas[3], &v_backed);
		canvas_page_end(&t.canvas);
	}
	assert_true(out[0].n > 1000);
	assert_true(str_eq(buf_str(&out[0]), buf_str(&out[1])));
}

/* What is kept from lower areas passes nothing over that finds room in a higher one. */
static void test_tries(void **state)
{
	static const struct fig_joint *const joints[] = { &v_backed, &tee };
	struct fixture *x = *state;
	size_t fitted = 0, refused = 0;

	for (int i = 0; i < 4; i++) {
		struct fig_tries tries = { 0 };
		struct fig_joint kept = *joints[i % 2];
		double w = i < 2 ? 300 : 420;

		kept.tries = &tries;
		for (double h = 60; h < 500; h *= 1.1) {
			struct buf out[2] = { { .arena = x->arena }, { .arena = x->arena } };
			const struct fig_joint *both[] = { joints[i % 2], &kept };
			bool ok[2];

			for (int k = 0; k < 2; k++) {
				struct trace t;

				trace_init(&t, &out[k]);
				canvas_page_begin(&t.canvas, 612, 792);
				ok[k] = fig_joint_draw(&t.canvas, x->faces, (rect){ 20, 20, w, h },
				    both[k]);
				canvas_page_end(&t.canvas);
			}
			assert_int_equal(ok[0], ok[1]);
			assert_true(str_eq(buf_str(&out[0]), buf_str(&out[1])));
			fitted += ok[0];
			refused += !ok[0];
		}
	}
	assert_true(fitted > 20 && refused > 8);
}

static struct fig_feature features[] = {
	{ .mark = FIG_HOLE, .x_mm = 25, .y_mm = 20, .w_mm = 14, .label_x = LABEL("1 in"),
	    .label_y = LABEL("3/4 in"), .label_size = LABEL("9/16 in dia") },
	{ .mark = FIG_NOTCH, .x_mm = 0, .y_mm = 75, .w_mm = 30, .h_mm = 25,
	    .label_y = LABEL("3 in"), .label_size = LABEL("1 x 1-1/8 in") },
	{ .mark = FIG_SLOT, .x_mm = 100, .y_mm = 50, .w_mm = 40, .h_mm = 12,
	    .label_x = LABEL("4 in"), .label_y = LABEL("2 in"), .label_size = LABEL("slot") },
	{ .mark = FIG_NOTCH, .x_mm = 150, .y_mm = 0, .w_mm = 20, .h_mm = 10,
	    .label_x = LABEL("6 in"), .label_size = LABEL("3/8 x 3/4 in") },
	{ .mark = FIG_BEND, .x_mm = 0, .y_mm = 60, .w_mm = 200,
	    .label_y = LABEL("2-3/8 in"), .label_size = LABEL("bend 90 deg up") },
};

static bool draw_plate(struct fixture *x, rect area, const struct fig_plate *p)
{
	struct canvas c;
	bool ok;

	record_begin(x->r, &c, x->arena, x->faces);
	ok = fig_plate_draw(&c, x->faces, area, p);
	canvas_page_end(&c);
	return ok;
}

static void test_plate(void **state)
{
	struct fixture *x = *state;
	struct fig_plate p = { .length_mm = 200, .width_mm = 100,
		.label_length = LABEL("8 in"), .label_width = LABEL("4 in"),
		.features = features, .nfeatures = 4 };
	const struct path *o;
	rect hole, blank;
	double scale;

	assert_true(draw_plate(x, areas[2], &p));
	check_page(x->r, areas[2]);
	scale = told_scale(x->r);
	o = member(x->r, 0);
	blank = extent(o);
	near_mm(blank.w, scale, 200);
	near_mm(blank.h, scale, 100);
	/* Four corners; a notch at a corner adds two points, one in an edge four. */
	assert_int_equal(o->n, 4 + 2 + 4 + 1);
	near_mm(edge_at(o, blank.y, -1) - blank.x, scale, 30);
	near_mm(edge_at(o, blank.y + 25 * scale * PT_MM, -1) - blank.x, scale, 0);
	hole = extent(weld(x->r, 0));
	/* The ring of the hole is drawn from its lowest point. */
	near_mm(blank.y + blank.h - weld(x->r, 0)->s[0].p[0].y, scale, 20 - 7);
	near_mm(weld(x->r, 0)->s[0].p[0].x - blank.x, scale, 25);
	near_mm(blank.y + blank.h - hole.y - hole.h / 2, scale, 20);
	assert_true(has_text(x->r, "9/16 in dia\n"));
	assert_false(has_text(x->r, "No.\n"));
}

/* Through a zoom type is twice as large, and the note still tells the truth. */
static void test_zoomed(void **state)
{
	struct fixture *x = *state;
	struct fig_plate p = { .length_mm = 200, .width_mm = 100,
		.label_length = LABEL("8 in"), .label_width = LABEL("4 in"),
		.features = features, .nfeatures = 1 };
	struct canvas c;
	struct zoom z;
	rect blank;

	record_begin(x->r, &c, x->arena, x->faces);
	zoom_init(&z, &c, 2, x->arena);
	assert_true(fig_plate_draw(&z.canvas, x->faces, (rect){ 10, 10, 250, 200 }, &p));
	canvas_page_end(&c);
	assert_true(x->r->smallest_pt >= 18);
	assert_true(x->r->left >= 20 && x->r->right <= 520 && x->r->bottom <= 420);
	blank = extent(stroked(x->r, 2 * DIM_OUTLINE_PT, 0));
	near_mm(blank.w, told_scale(x->r), 200);
	near_mm(blank.h, told_scale(x->r), 100);
}

static void test_plate_table(void **state)
{
	const rect tall = { 72, 50, 500, 400 };
	struct fixture *x = *state;
	struct fig_plate p = { .length_mm = 200, .width_mm = 100,
		.label_length = LABEL("8 in"), .label_width = LABEL("4 in"),
		.features = features, .nfeatures = 5 };

	assert_true(draw_plate(x, tall, &p));
	check_page(x->r, tall);
	assert_true(has_text(x->r, "No.\nSize\nFrom left\nFrom bottom\n1\n9/16 in dia\n"
	    "1 in\n3/4 in\n2\n"));
}

/* Fifteen holes a quarter inch apart in a long blank: their numbers would lie on each
 * other at any scale that fits, so there is no drawing. */
static void test_plate_crowded(void **state)
{
	struct fixture *x = *state;
	struct fig_feature row[15];
	struct fig_plate p = { .length_mm = 900, .width_mm = 100, .features = row,
		.nfeatures = 15 };

	for (int i = 0; i < 15; i++)
		row[i] = (struct fig_feature){ .mark = FIG_HOLE, .x_mm = 20 + i * 6, .y_mm = 50,
			.w_mm = 5, .label_x = LABEL("1 in"), .label_y = LABEL("2 in"),
			.label_size = LABEL("3/16 in") };
	assert_false(draw_plate(x, areas[3], &p));
	assert_true(has_text(x->r, "too little room for it\n"));
	p.nfeatures = 12;
	for (int i = 0; i < 12; i++)
		row[i].x_mm = 30 + i * 75;
	assert_true(draw_plate(x, areas[3], &p));
	check_page(x->r, areas[3]);
}

static void test_plate_faults(void **state)
{
	static const struct { struct fig_feature f; const char *why; } cases[] = {
		{ { .mark = FIG_HOLE, .x_mm = 5, .y_mm = 50, .w_mm = 14 },
		    "a hole, slot, notch or line runs over the edge" },
		{ { .mark = FIG_HOLE, .x_mm = 50, .y_mm = 50 },
		    "a hole, slot, notch or line has no size" },
		{ { .mark = FIG_NOTCH, .x_mm = 50, .y_mm = 50, .w_mm = 9, .h_mm = 9 },
		    "a notch opens to no edge" },
		{ { .mark = FIG_NOTCH, .x_mm = 50, .w_mm = 9, .h_mm = 100 },
		    "a notch cuts the blank in two" },
		{ { .mark = FIG_BEND, .x_mm = 0, .y_mm = 50, .w_mm = 201 },
		    "a hole, slot, notch or line runs over the edge" },
	};
	struct fixture *x = *state;

	for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
		struct fig_plate p = { .length_mm = 200, .width_mm = 100,
			.features = &cases[i].f, .nfeatures = 1 };
		str why = fig_plate_fault(&p);

		if (!str_eq(why, str_of(cases[i].why)))
			fail_msg("case %zu: %.*s", i, STR_ARG(why));
		assert_false(draw_plate(x, areas[3], &p));
		assert_int_equal(x->r->npaths, 0);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_v_groove),
		cmocka_unit_test(test_land),
		cmocka_unit_test(test_bevel_on_one_side),
		cmocka_unit_test(test_fillet),
		cmocka_unit_test(test_lap),
		cmocka_unit_test(test_pipe_wall),
		cmocka_unit_test(test_gouge),
		cmocka_unit_test(test_every_shape_every_size),
		cmocka_unit_test(test_plans),
		cmocka_unit_test(test_plan_needs_length),
		cmocka_unit_test(test_no_nonsense),
		cmocka_unit_test(test_words),
		cmocka_unit_test(test_same_bytes),
		cmocka_unit_test(test_tries),
		cmocka_unit_test(test_plate),
		cmocka_unit_test(test_zoomed),
		cmocka_unit_test(test_plate_table),
		cmocka_unit_test(test_plate_crowded),
		cmocka_unit_test(test_plate_faults),
	};

	return cmocka_run_group_tests(tests, setup, teardown);
}
