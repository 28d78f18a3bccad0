#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/fig.h"

#include "base/buf.h"
#include "draw/dim.h"

#include "figure_probe.h"

#define IN 25.4
#define S(text) { "" text, sizeof(text) - 1 }

/* As wide as the body of a sheet, a third of it high. */
static const rect area = { 72, 50, 468, 236 };

static const enum fig_shape prepared[] = { FIG_BUTT_GROOVE, FIG_PIPE_BUTT, FIG_CORNER_GROOVE,
	FIG_TEE_GROOVE, FIG_EDGE_GROOVE };

/* Preparations that each of these takes (AWS A3.0, joint types; from memory). */
static const char *const takes[] = {
	"square V bevel U J double-V double-bevel double-U double-J flare-V flare-bevel",
	"square V bevel U J",
	"square V bevel U J double-bevel double-J flare-bevel",
	"bevel J double-bevel double-J",
	"square V bevel U J flare-V flare-bevel",
};

static const char *const names[FIG_PREP_COUNT] = { "", "square", "V", "bevel", "U", "J",
	"double-V", "double-bevel", "double-U", "double-J", "flare-V", "flare-bevel" };

static bool is_taken(size_t shape, enum fig_prep p)
{
	size_t n = strlen(names[p]);

	for (const char *s = strstr(takes[shape], names[p]); s; s = strstr(s + 1, names[p]))
		if ((s == takes[shape] || s[-1] == ' ') && (s[n] == ' ' || s[n] == 0))
			return true;
	return false;
}

static bool is_double(enum fig_prep p)
{
	return p >= FIG_PREP_DOUBLE_V && p <= FIG_PREP_DOUBLE_J;
}

static bool is_round(enum fig_prep p)
{
	return p == FIG_PREP_U || p == FIG_PREP_J || p == FIG_PREP_DOUBLE_U ||
	    p == FIG_PREP_DOUBLE_J;
}

static bool is_of_both(enum fig_prep p)
{
	return p == FIG_PREP_V || p == FIG_PREP_U || p == FIG_PREP_DOUBLE_V ||
	    p == FIG_PREP_DOUBLE_U;
}

static void add_angles(struct fig_joint *j)
{
	double deg = is_round(j->prep) ? 20 : is_of_both(j->prep) ? 30 : 45;

	j->bevel_angle_deg = deg;
	j->label_bevel = (str)S("22-1/2° each");
	if (is_of_both(j->prep)) {
		j->angle_deg = 2 * deg;
		j->label_angle = (str)S("45°");
	}
	if (!is_round(j->prep))
		return;
	j->radius_mm = j->t1_mm / 6;
	j->label_radius = (str)S("1/4 in [6.4 mm] radius");
}

/* A joint of that kind in proportion to its thickness, every size labeled. */
static struct fig_joint joint_of(enum fig_shape shape, enum fig_prep p, double t)
{
	struct fig_joint j = { .shape = shape, .prep = p, .t1_mm = t,
		.label_t1 = S("11/16 in [17.5 mm]"), .gap_lo_mm = t / 8,
		.label_gap = S("3/32 ±1/32 in [2.4 ±0.8 mm]"), .reinforcement_mm = t / 8,
		.label_reinforcement = S("1/16 in [1.6 mm]"), .letter = S("A"),
		.position = S("3G up"), .length_mm = 203, .label_length = S("8 in [203.2 mm]") };

	if (p >= FIG_PREP_FLARE_V) {
		j.radius_mm = 1.5 * t;
		j.label_radius = (str)S("1/4 in [6.4 mm] radius");
		j.t2_mm = j.prep == FIG_PREP_FLARE_BEVEL ? 2 * t : t;
		return j;
	}
	if (p > FIG_PREP_SQUARE)
		add_angles(&j);
	if (p > FIG_PREP_SQUARE && shape != FIG_EDGE_GROOVE) {
		j.land_mm = t / 8;
		j.label_land = (str)S("1/16 in [1.6 mm]");
	}
	if (is_double(p)) {
		j.depth_mm = t / 2;
		j.depth_back_mm = t * 3 / 8;
		j.label_depth = (str)S("1/2 in [12.7 mm]");
		j.label_depth_back = (str)S("3/8 in [9.5 mm]");
	}
	if (shape == FIG_EDGE_GROOVE && p > FIG_PREP_SQUARE) {
		j.depth_mm = t * 0.75;
		j.label_depth = (str)S("3/8 in [9.5 mm]");
	}
	if (shape == FIG_PIPE_BUTT) {
		j.od_mm = 12 * t;
		j.label_od = (str)S("NPS 6 schedule 80");
	}
	if (shape == FIG_TEE_GROOVE) {
		j.leg_mm = t / 3;
		j.label_leg = (str)S("1/4 in [6.4 mm]");
	}
	return j;
}

static struct figure_probe *draw(struct figure_bench *x, const struct fig_joint *j,
    bool *ok)
{
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);

	*ok = fig_joint_draw(&p->canvas, x->faces, area, j);
	canvas_page_end(&p->canvas);
	return p;
}

static struct figure_probe *drawn(struct figure_bench *x, const struct fig_joint *j)
{
	bool ok;
	struct figure_probe *p = draw(x, j, &ok);

	if (!ok)
		fail_msg("shape %d, %s, %.2f mm: %s", j->shape, names[j->prep], j->t1_mm,
		    p->text);
	figure_keeps_promises(p, area);
	return p;
}

static const double sizes_mm[] = { 0.1196 * IN, 0.25 * IN, 0.375 * IN, 0.6875 * IN, 1.25 * IN };

/* Every joint type with every preparation in every size: drawn with all its sizes, or
 * refused in words. */
static void every_joint_and_preparation(void **state)
{
	size_t seen = 0, refused = 0;

	for (size_t s = 0; s < sizeof prepared / sizeof *prepared; s++)
		for (enum fig_prep p = FIG_PREP_SQUARE; p < FIG_PREP_COUNT; p++)
			for (size_t t = 0; t < sizeof sizes_mm / sizeof *sizes_mm; t++) {
				struct fig_joint j = joint_of(prepared[s], p, sizes_mm[t]);

				assert_int_equal(fig_joint_fault(&j).n == 0, is_taken(s, p));
				if (!is_taken(s, p)) {
					refused++;
					continue;
				}
				assert_true(figure_has_text(drawn(*state, &j), "3/32"));
				seen++;
			}
	/* 11 + 5 + 8 + 4 + 7 of 55, in five sizes. */
	assert_int_equal(seen, 5 * 35);
	assert_int_equal(refused, 5 * 20);
}

static void backing_under_single_grooves(void **state)
{
	for (size_t s = 0; s < 4; s++)
		for (enum fig_prep p = FIG_PREP_SQUARE; p <= FIG_PREP_J; p++) {
			struct fig_joint j = joint_of(prepared[s], p, 0.375 * IN);

			if (!is_taken(s, p))
				continue;
			j.backing_t_mm = 0.25 * IN;
			j.backing_width_mm = IN;
			j.label_backing = (str)S("backing 1/4 in [6.4 mm] x 1 in [25.4 mm]");
			assert_true(figure_has_text(drawn(*state, &j), "backing"));
			j.both_sides = s == 0;
			assert_int_equal(fig_joint_fault(&j).n > 0, s == 0);
		}
}

/* ---- beads ---- */

static const struct fig_layer one_side[] = { { 1, false }, { 2, false }, { 3, false } };
static const struct fig_layer two_sides[] = { { 1, false }, { 1, true }, { 2, false },
	{ 2, true } };

/* Six labels, the numbers from 1 to 6; the scale may say "2" as well. */
static void has_six(const struct figure_probe *p)
{
	static const char *const n[] = { "1\n", "2\n", "3\n", "4\n", "5\n", "6\n" };

	assert_int_equal(p->nboxes, 6);
	for (size_t i = 0; i < 6; i++) {
		size_t hits = 0;

		for (const char *s = strstr(p->text, n[i]); s; s = strstr(s + 1, n[i]))
			hits += s == p->text || s[-1] == '\n';
		assert_true(hits >= 1);
	}
}

static void beads_are_numbered_once(void **state)
{
	size_t inside = 0;

	for (size_t s = 0; s < sizeof prepared / sizeof *prepared; s++)
		for (enum fig_prep p = FIG_PREP_V; p <= FIG_PREP_DOUBLE_J; p++)
			for (size_t t = 1; t < sizeof sizes_mm / sizeof *sizes_mm; t++) {
				struct fig_joint j = joint_of(prepared[s], p, sizes_mm[t]);
				bool ok;

				if (!is_taken(s, p))
					continue;
				j.layers = is_double(p) ? two_sides : one_side;
				j.nlayers = is_double(p) ? 4 : 3;
				j.beads_only = true;
				has_six(drawn(*state, &j));
				j.beads_inside = true;
				draw(*state, &j, &ok);
				inside += ok;
			}
	/* A narrow J or a double one may want leaders in a drawing of this height. */
	assert_true(inside > 60);
}

/* Thin strokes that end on the outline of the weld: five beads of 1, 1, 1, 2 have three
 * lines between layers and one between the beads of the last. */
static void beads_lie_in_layers(void **state)
{
	static const struct fig_layer layers[] = { { 1, false }, { 1, false }, { 1, false },
		{ 2, false } };
	struct fig_joint j = joint_of(FIG_BUTT_GROOVE, FIG_PREP_V, 0.75 * IN);
	struct figure_probe *p;
	size_t thin = 0;

	j.layers = layers;
	j.nlayers = 4;
	j.beads_only = true;
	p = drawn(*state, &j);
	for (size_t i = 0; i < p->npaths; i++)
		thin += p->path[i].ink.stroke_pt == DIM_THIN_PT && p->path[i].n == 2 &&
		    p->path[i].s[1].op == SEG_CURVE;
	assert_int_equal(thin, 4);
}

/* ---- shapes ---- */

static const struct figure_path *member(const struct figure_probe *p, size_t which)
{
	for (size_t i = 0; i < p->npaths; i++)
		if (p->path[i].ink.stroke_pt == DIM_OUTLINE_PT && !p->path[i].ink.fill &&
		    which-- == 0)
			return &p->path[i];
	fail_msg("no such outline");
	return NULL;
}

static void near_mm(double got_pt, double scale, double want_mm)
{
	if (!(fabs(got_pt / PT_MM / scale - want_mm) < 0.01))
		fail_msg("drawn %.4f mm, want %.4f mm", got_pt / PT_MM / scale, want_mm);
}

/* Double V, 1 in, 60 deg, 5/8 deep in front, 1/4 at the back, land 1/8, opening 1/8: runs
 * are 0.625 tan 30 deg = 0.36084 in and 0.25 tan 30 deg = 0.14434 in. */
static void double_v_from_its_depths(void **state)
{
	struct fig_joint j = { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_DOUBLE_V, .t1_mm = IN,
		.angle_deg = 60, .depth_mm = 0.625 * IN, .depth_back_mm = 0.25 * IN,
		.land_mm = 0.125 * IN, .gap_lo_mm = 0.125 * IN };
	struct figure_probe *p = drawn(*state, &j);
	const struct seg *left = member(p, 0)->s, *right = member(p, 1)->s;
	double scale = figure_told_scale(p);

	/* From the back surface: edge, root face below, above, edge of the front. */
	near_mm(left[1].p[0].x - left[0].p[0].x, scale, 0.14434 * IN);
	near_mm(left[0].p[0].y - left[1].p[0].y, scale, 0.25 * IN);
	near_mm(left[1].p[0].y - left[2].p[0].y, scale, 0.125 * IN);
	near_mm(left[2].p[0].x - left[3].p[0].x, scale, 0.36084 * IN);
	near_mm(left[2].p[0].y - left[3].p[0].y, scale, 0.625 * IN);
	near_mm(right[1].p[0].x - left[1].p[0].x, scale, 0.125 * IN);
	/* Without depths the preparation is shared out; with one the other follows. */
	j.depth_mm = j.depth_back_mm = 0;
	p = drawn(*state, &j);
	left = member(p, 0)->s;
	near_mm(left[0].p[0].y - left[1].p[0].y, figure_told_scale(p), 0.4375 * IN);
	j.depth_mm = 0.5 * IN;
	p = drawn(*state, &j);
	left = member(p, 0)->s;
	near_mm(left[0].p[0].y - left[1].p[0].y, figure_told_scale(p), 0.375 * IN);
}

/* Other angles and radii at the back: 0.25 tan 45 deg = 0.25 in; a U half of 0.4375 in with
 * 15 deg and 3/16 in: 0.1875 cos 15 + (0.4375 - 0.1875 (1 - sin 15)) tan 15 = 0.26109. */
static void backs_of_their_own(void **state)
{
	struct fig_joint j = { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_DOUBLE_V, .t1_mm = IN,
		.angle_deg = 60, .angle_back_deg = 90, .depth_mm = 0.625 * IN,
		.depth_back_mm = 0.25 * IN, .land_mm = 0.125 * IN, .gap_lo_mm = 0.125 * IN,
		.label_angle = S("60°"), .label_angle_back = S("90° at the back") };
	struct figure_probe *p = drawn(*state, &j);
	const struct seg *left = member(p, 0)->s;
	size_t n;

	near_mm(left[1].p[0].x - left[0].p[0].x, figure_told_scale(p), 0.25 * IN);
	near_mm(left[2].p[0].x - left[3].p[0].x, figure_told_scale(p), 0.36084 * IN);
	assert_true(figure_has_text(p, "at the back"));
	j.angle_back_deg = 160;
	assert_true(fig_joint_fault(&j).n > 0);
	j.angle_back_deg = 90;
	j.prep = FIG_PREP_V;
	j.depth_back_mm = 0;
	assert_true(fig_joint_fault(&j).n > 0);
	j = (struct fig_joint){ .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_DOUBLE_U, .t1_mm = IN,
		.angle_deg = 20, .bevel_back_deg = 15, .radius_mm = 0.25 * IN,
		.radius_back_mm = 0.1875 * IN, .land_mm = 0.125 * IN,
		.label_radius_back = S("3/16 in [4.8 mm] radius at the back") };
	p = drawn(*state, &j);
	left = member(p, 0)->s;
	/* Up to the root face, which is nearest to the other plate. */
	for (n = 0; left[n + 1].p[0].x > left[n].p[0].x + 1e-6; n++)
		;
	near_mm(left[n].p[0].x - left[0].p[0].x, figure_told_scale(p), 0.26109 * IN);
}

/* A U of 20 deg with a root radius of 1/4 in, 3/4 deep: at each side it is
 * 0.25 cos 10 deg + (0.75 - 0.25 (1 - sin 10 deg)) tan 10 deg = 0.34202 in wide. */
static void u_from_its_radius(void **state)
{
	struct fig_joint j = { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_U, .t1_mm = IN,
		.angle_deg = 20, .radius_mm = 0.25 * IN, .land_mm = 0.25 * IN };
	struct figure_probe *p = drawn(*state, &j);
	const struct figure_path *left = member(p, 0);
	double scale = figure_told_scale(p), top = INFINITY, edge = -INFINITY;

	for (size_t i = 0; i < left->n; i++)
		if (left->s[i].op != SEG_CLOSE)
			top = fmin(top, left->s[i].p[0].y);
	for (size_t i = 0; i < left->n; i++)
		if (left->s[i].op != SEG_CLOSE && fabs(left->s[i].p[0].y - top) < 1e-6)
			edge = fmax(edge, left->s[i].p[0].x);
	near_mm(left->s[0].p[0].x - edge, scale, 0.34202 * IN);
	/* The root arc leaves the root face level. */
	near_mm(left->s[0].p[0].y - left->s[1].p[0].y, scale, 0.25 * IN);
	assert_true(fabs(left->s[2].p[0].y - left->s[1].p[0].y) <
	    fabs(left->s[2].p[0].x - left->s[1].p[0].x) * 0.2);
}

/* The prepared foot of the web stands the root opening over the base, 45 deg from a land
 * of 1/16 in up over the rest of 3/4 in. */
static void tee_foot(void **state)
{
	struct fig_joint j = { .shape = FIG_TEE_GROOVE, .prep = FIG_PREP_BEVEL,
		.t1_mm = 0.75 * IN, .bevel_angle_deg = 45, .land_mm = 0.0625 * IN,
		.gap_lo_mm = 0.125 * IN };
	struct figure_probe *p = drawn(*state, &j);
	const struct seg *web = member(p, 1)->s, *base = member(p, 0)->s;
	double scale = figure_told_scale(p);

	near_mm(web[1].p[0].x - web[0].p[0].x, scale, 0.0625 * IN);
	near_mm(web[2].p[0].x - web[1].p[0].x, scale, 0.6875 * IN);
	near_mm(web[1].p[0].y - web[2].p[0].y, scale, 0.6875 * IN);
	/* The top of the base is half its height of 3/4 in over the break's end. */
	near_mm(base[0].p[0].y - web[0].p[0].y, scale, 0.75 * IN + 0.125 * IN);
}

/* ---- faults ---- */

static const struct { struct fig_joint j; const char *why; } impossible[] = {
	{ { .shape = FIG_BUTT_GROOVE, .t1_mm = 9 }, "the preparation is not given" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_DOUBLE_V, .t1_mm = 9,
	      .angle_deg = 60, .depth_mm = 5, .depth_back_mm = 5 },
	    "the preparations are deeper than the member is thick" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_DOUBLE_V, .t1_mm = 9,
	      .angle_deg = 60, .depth_mm = 9 },
	    "the preparations are deeper than the member is thick" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60,
	      .depth_mm = 10 }, "the preparation is deeper than the member is thick" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60,
	      .depth_mm = 6, .land_mm = 2 },
	    "depth and land do not make up the thickness" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60,
	      .depth_back_mm = 2 },
	    "a depth at the back goes with a double preparation" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60,
	      .radius_mm = 2 }, "a root radius goes with a U or J" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_U, .t1_mm = 9, .angle_deg = 20 },
	    "the root radius is not given" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_U, .t1_mm = 9, .angle_deg = 20,
	      .radius_mm = 12 }, "the root radius is larger than the groove is deep" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_J, .t1_mm = 9, .radius_mm = 3 },
	    "the bevel angle is not given" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_BEVEL, .t1_mm = 9,
	      .angle_deg = 45, .bevel_angle_deg = 30 },
	    "the angle is not the bevel angle of the one member" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_DOUBLE_V, .t1_mm = 9, .t2_mm = 12,
	      .angle_deg = 60 },
	    "a double preparation wants both members of one thickness" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_FLARE_V, .t1_mm = 9 },
	    "the outside radius of the bend is not given" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_FLARE_V, .t1_mm = 9,
	      .radius_mm = 5 },
	    "the outside radius of the bend is smaller than the member is thick" },
	{ { .shape = FIG_SINGLE_V, .prep = FIG_PREP_DOUBLE_V, .t1_mm = 9,
	      .angle_deg = 60 },
	    "a single-V is not prepared otherwise; write butt" },
	{ { .shape = FIG_LAP, .prep = FIG_PREP_V, .t1_mm = 9, .leg_mm = 5 },
	    "a lap takes fillets, plugs, slots or spots: its plates lie flat on each other and "
	    "leave no groove; few shops bevel its edge, and a picture shows that" },
	{ { .shape = FIG_EDGE_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60 },
	    "the depth of the groove is not given" },
	{ { .shape = FIG_EDGE_GROOVE, .prep = FIG_PREP_V, .t1_mm = 3, .angle_deg = 60,
	      .depth_mm = 9 }, "the groove is wider than the plates are thick" },
	{ { .shape = FIG_CORNER_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .t2_mm = 3,
	      .angle_deg = 60 }, "the groove is wider than the standing plate is thick" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60,
	      .ring = true, .backing_t_mm = 3, .backing_width_mm = 25 },
	    "a backing ring goes into a pipe" },
	{ { .shape = FIG_BUTT_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9, .angle_deg = 60,
	      .layers = two_sides, .nlayers = 4 },
	    "beads on the back of a joint that is welded from one side" },
	{ { .shape = FIG_BUTT_TEST, .t1_mm = 9, .layers = one_side, .nlayers = 3 },
	    "beads of layers are not shown in this drawing" },
};

static void impossible_is_told(void **state)
{
	for (size_t i = 0; i < sizeof impossible / sizeof *impossible; i++) {
		str why = fig_joint_fault(&impossible[i].j);
		bool ok;

		if (!str_eq(why, str_of(impossible[i].why)))
			fail_msg("case %zu: %.*s", i, STR_ARG(why));
		assert_int_equal(draw(*state, &impossible[i].j, &ok)->npaths, 0);
		assert_false(ok);
	}
}

static void words_tell_all_sizes(void **state)
{
	struct figure_bench *x = *state;
	struct fig_joint j = joint_of(FIG_TEE_GROOVE, FIG_PREP_DOUBLE_J, IN);
	str s;

	j.layers = two_sides;
	j.nlayers = 4;
	s = fig_joint_words(x->arena, &j);
	if (!str_eq(s, STR("Tee joint, double-J groove, in section, position 3G up, thickness "
	    "11/16 in [17.5 mm], fillet leg 1/4 in [6.4 mm], bevel 22-1/2° each, land "
	    "1/16 in [1.6 mm], root opening 3/32 ±1/32 in [2.4 ±0.8 mm], depth of "
	    "preparation in front 1/2 in [12.7 mm], depth of preparation at the back 3/8 in [9.5 mm], "
	    "1/4 in [6.4 mm] radius, reinforcement 1/16 in [1.6 mm]. Beads by layers, in "
	    "order: 1; from the back 2; from the front 3, 4; from the back 5, 6. Welded from "
	    "both sides.")))
		fail_msg("%.*s", STR_ARG(s));
	j.beads_only = true;
	assert_true(str_eq(fig_joint_words(x->arena, &j), STR("Tee joint, double-J groove, in "
	    "section. Beads by layers, in order: 1; from the back 2; from the front 3, 4; from "
	    "the back 5, 6. Welded from both sides.")));
	j = joint_of(FIG_PIPE_BUTT, FIG_PREP_U, IN);
	assert_true(str_find(fig_joint_words(x->arena, &j), STR("Open root."), 0) <
	    fig_joint_words(x->arena, &j).n);
}

/* From above: a standing plate shows its edge of 12 mm, and the weld is as wide as the
 * groove, 9 tan 30 deg = 5.196 mm at either side. */
static void corner_from_above(void **state)
{
	struct figure_bench *x = *state;
	struct fig_joint j = { .shape = FIG_CORNER_GROOVE, .prep = FIG_PREP_V, .t1_mm = 9,
		.t2_mm = 12, .angle_deg = 60, .length_mm = 100 };
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);
	const struct seg *edge;

	assert_true(fig_plan_draw(&p->canvas, x->faces, area, &j));
	canvas_page_end(&p->canvas);
	edge = member(p, 0)->s;
	near_mm(fabs(edge[0].p[0].y - edge[2].p[0].y), figure_told_scale(p), 12 - 5.196);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_joint_and_preparation),
		cmocka_unit_test(backing_under_single_grooves),
		cmocka_unit_test(beads_are_numbered_once),
		cmocka_unit_test(beads_lie_in_layers),
		cmocka_unit_test(double_v_from_its_depths),
		cmocka_unit_test(backs_of_their_own), cmocka_unit_test(u_from_its_radius),
		cmocka_unit_test(tee_foot),
		cmocka_unit_test(impossible_is_told),
		cmocka_unit_test(words_tell_all_sizes),
		cmocka_unit_test(corner_from_above),
	};

	return cmocka_run_group_tests(tests, figure_bench_begin, figure_bench_end);
}
