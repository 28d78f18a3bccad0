/* Welding symbols. What stands where: the rule of sides and the vertical leg at the left
 * are in every textbook of AWS A2.4; system A of ISO 2553 likewise for its dashed line. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/fig_symbol.h"

#include "draw/dim.h"
#include "figure_probe.h"

#define S(text) { "" text, sizeof(text) - 1 }

static const rect wide = { 40, 50, 400, 260 };

static struct figure_probe *draw(struct figure_bench *x, rect area,
    const struct fig_symbol *s,
    bool *ok)
{
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);

	*ok = fig_symbol_draw(&p->canvas, x->faces, area, s);
	canvas_page_end(&p->canvas);
	return p;
}

static struct figure_probe *drawn(struct figure_bench *x, const struct fig_symbol *s)
{
	bool ok;
	struct figure_probe *p = draw(x, wide, s, &ok);

	assert_true(ok);
	figure_keeps_promises(p, wide);
	return p;
}

/* The reference line: the longest level stretch that is not dashed. */
static void line_of(const struct figure_probe *p, pt *from, pt *to)
{
	double best = 0;

	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		if (k->n != 2 || k->ink.dash_on_pt > 0 || k->s[0].p[0].y != k->s[1].p[0].y ||
		    k->s[1].p[0].x - k->s[0].p[0].x <= best)
			continue;
		best = k->s[1].p[0].x - k->s[0].p[0].x;
		*from = k->s[0].p[0];
		*to = k->s[1].p[0];
	}
	assert_true(best > 0);
}

static void near(double got, double want)
{
	if (!(fabs(got - want) < 0.01))
		fail_msg("%.4f, not %.4f", got, want);
}

static void fillet_below_is_arrow_side(void **state)
{
	struct fig_symbol s = { .arrow = { .weld = FIG_WELD_FILLET, .size = S("5/16") } };
	struct figure_probe *p = drawn(*state, &s);
	const struct figure_path *f = figure_lines(p, 3, DIM_OUTLINE_PT, 0);
	pt from, to;

	line_of(p, &from, &to);
	assert_non_null(f);
	/* From the line down the leg, then along the slope back to the line at the right. */
	near(f->s[0].p[0].y, from.y);
	near(f->s[1].p[0].x, f->s[0].p[0].x);
	assert_true(f->s[1].p[0].y > from.y + 5);
	near(f->s[2].p[0].y, from.y);
	assert_true(f->s[2].p[0].x > f->s[0].p[0].x + 5);
	/* The size stands left of the figure, below the line. */
	assert_true(p->box[0].x + p->box[0].w <= f->s[0].p[0].x);
	assert_true(p->box[0].y >= from.y);
	assert_true(figure_has_text(p, "5/16\n"));
}

static void fillet_above_is_other_side(void **state)
{
	struct fig_symbol s = { .other = { .weld = FIG_WELD_FILLET, .size = S("1/4"),
		.length = S("2"), .pitch = S("6") } };
	struct figure_probe *p = drawn(*state, &s);
	const struct figure_path *f = figure_lines(p, 3, DIM_OUTLINE_PT, 0);
	pt from, to;

	line_of(p, &from, &to);
	near(f->s[1].p[0].x, f->s[0].p[0].x);
	assert_true(f->s[1].p[0].y < from.y - 5);
	assert_true(f->s[2].p[0].x > f->s[0].p[0].x);
	/* Length and pitch at the right, joined by a hyphen. */
	assert_true(p->box[1].x >= f->s[2].p[0].x);
	assert_true(figure_has_text(p, "2\n-\n6\n"));
}

static void vertical_legs_stay_left(void **state)
{
	static const enum fig_weld legs[] = { FIG_WELD_BEVEL, FIG_WELD_J,
		FIG_WELD_FLARE_BEVEL };

	for (size_t i = 0; i < 3; i++)
		for (int above = 0; above < 2; above++) {
			struct fig_symbol s = { 0 };
			struct figure_probe *p;
			const struct figure_path *leg;

			*(above ? &s.other : &s.arrow) = (struct fig_weld_side){ .weld = legs[i] };
			p = drawn(*state, &s);
			leg = figure_lines(p, 2, DIM_OUTLINE_PT, 0);
			near(leg->s[0].p[0].x, leg->s[1].p[0].x);
			for (size_t k = 0; k < p->npaths; k++)
				if (p->path[k].ink.stroke_pt == DIM_OUTLINE_PT)
					assert_true(p->path[k].s[p->path[k].n - 1].p[
					    p->path[k].n == 2 && p->path[k].s[1].op == SEG_CURVE ? 2 :
					    0].x >= leg->s[0].p[0].x - 0.01);
		}
}

static void v_is_drawn_square(void **state)
{
	struct fig_symbol s = { .arrow = { .weld = FIG_WELD_V, .root_opening = S("1/8"),
		.angle = S("60°") } };
	struct figure_probe *p = drawn(*state, &s);
	const struct figure_path *v = figure_lines(p, 3, DIM_OUTLINE_PT, 0);
	pt from, to, tip = v->s[1].p[0];

	line_of(p, &from, &to);
	near(tip.y, from.y);
	near(tip.x - v->s[0].p[0].x, v->s[0].p[0].y - tip.y);
	near(v->s[2].p[0].x - tip.x, v->s[2].p[0].y - tip.y);
	/* The root opening is inside, the angle beyond it. */
	assert_true(p->caps[0].x > v->s[0].p[0].x && p->caps[0].x + p->caps[0].w <
	    v->s[2].p[0].x);
	assert_true(p->caps[0].y + p->caps[0].h <= v->s[0].p[0].y + 0.01);
	assert_true(p->box[1].y >= v->s[0].p[0].y);
	/* Capitals clear of both flanks, which run away from the tip by 45 degrees. */
	assert_true(p->caps[0].y - tip.y >= p->caps[0].w / 2);
}

static void circle_and_flag_at_the_junction(void **state)
{
	struct fig_symbol s = { .arrow = { .weld = FIG_WELD_FILLET, .size = S("1/4") },
		.all_around = true, .field = true };
	struct figure_probe *p = drawn(*state, &s);
	const struct figure_path *circle = NULL, *flag = NULL;
	double lo = INFINITY, hi = -INFINITY;
	pt from, to;

	line_of(p, &from, &to);
	for (size_t i = 0; i < p->npaths; i++) {
		if (p->path[i].n == 6 && p->path[i].s[1].op == SEG_CURVE)
			circle = &p->path[i];
		if (p->path[i].ink.fill && p->path[i].n == 4 && !flag)
			flag = &p->path[i];
	}
	assert_non_null(circle);
	for (size_t i = 0; i < 5; i++) {
		pt q = circle->s[i].p[circle->s[i].op == SEG_CURVE ? 2 : 0];

		lo = fmin(lo, q.x);
		hi = fmax(hi, q.x);
		near(hypot(q.x - from.x, q.y - from.y), (hi - from.x));
	}
	near((lo + hi) / 2, from.x);
	assert_non_null(flag);
	near(flag->s[0].p[0].x, from.x);
	assert_true(flag->s[0].p[0].y < from.y);
}

static void tail_is_opposite_the_arrow(void **state)
{
	struct fig_symbol s = { .arrow = { .weld = FIG_WELD_FILLET, .size = S("1/4") },
		.tail = { S("SMAW"), S("WPS 4") }, .joint = FIG_TEE };
	struct figure_probe *p = drawn(*state, &s);
	size_t forks = 0;
	pt from, to;

	line_of(p, &from, &to);
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		if (k->n != 2 || fabs(k->s[0].p[0].x - to.x) > 0.01)
			continue;
		near(k->s[1].p[0].x - to.x, fabs(k->s[1].p[0].y - to.y));
		forks++;
	}
	assert_int_equal(forks, 2);
	assert_true(p->left < from.x - 10);
	for (size_t i = 1; i < p->nboxes; i++)
		assert_true(p->box[i].x > to.x);
	s.tail[0] = s.tail[1] = (str){ 0 };
	p = drawn(*state, &s);
	line_of(p, &from, &to);
	near(p->right, to.x + 0.5);
}

/* Length of the leader in points: two, or three with a kink. */
static size_t leader_points(struct figure_probe *p)
{
	pt from, to;

	line_of(p, &from, &to);
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		if (fabs(k->s[0].p[0].x - from.x) < 0.01 &&
		    fabs(k->s[0].p[0].y - from.y) < 0.01 &&
		    k->s[k->n - 1].p[0].x < from.x - 5)
			return k->n;
	}
	return 0;
}

static void arrow_breaks_for_one_prepared_member(void **state)
{
	for (enum fig_weld w = FIG_WELD_FILLET; w <= FIG_WELD_SURFACING; w++) {
		struct fig_symbol s = { .arrow = { .weld = w } };
		bool broken = w == FIG_WELD_BEVEL || w == FIG_WELD_J || w == FIG_WELD_FLARE_BEVEL;

		assert_int_equal(leader_points(drawn(*state, &s)), broken ? 3 : 2);
	}
}

static size_t dashed_lines(const struct figure_probe *p, double *y)
{
	size_t n = 0;

	for (size_t i = 0; i < p->npaths; i++)
		if (p->path[i].ink.dash_on_pt > 0) {
			*y = p->path[i].s[0].p[0].y;
			n++;
		}
	return n;
}

static void system_a_has_a_dashed_line(void **state)
{
	struct fig_symbol s = { .iso = true, .arrow = { .weld = FIG_WELD_FILLET,
		.size = S("a5"), .length = S("3 x 50"), .pitch = S("(100)") } };
	struct figure_probe *p = drawn(*state, &s);
	const struct figure_path *f = figure_lines(p, 3, DIM_OUTLINE_PT, 0);
	double y = 0;
	pt from, to;

	line_of(p, &from, &to);
	assert_int_equal(dashed_lines(p, &y), 1);
	/* The arrow side stands on the outer face of the solid line, away from the dashed. */
	near(f->s[0].p[0].y, from.y);
	assert_true((f->s[1].p[0].y - from.y) * (y - from.y) < 0);
	near(f->s[1].p[0].x, f->s[0].p[0].x);
	assert_true(figure_has_text(p, "3 x 50\n \n(100)\n"));
	s.other = s.arrow;
	s.arrow = (struct fig_weld_side){ 0 };
	p = drawn(*state, &s);
	assert_int_equal(dashed_lines(p, &y), 1);
	near(figure_lines(p, 3, DIM_OUTLINE_PT, 0)->s[0].p[0].y, y);
	/* Alike on both sides: without it. */
	s.arrow = s.other;
	assert_int_equal(dashed_lines(drawn(*state, &s), &y), 0);
	/* Alike in the figure, other in the tail: with it. */
	s.uneven = true;
	assert_int_equal(dashed_lines(drawn(*state, &s), &y), 1);
}

static struct fig_weld_side side_of(enum fig_weld w, bool full)
{
	bool groove = w >= FIG_WELD_SQUARE && w <= FIG_WELD_FLARE_BEVEL;
	struct fig_weld_side k = { .weld = w };

	if (!full || w == FIG_WELD_NONE)
		return k;
	k.size = (str)S("15/16");
	k.contour = (enum fig_contour)(1 + w % 3);
	k.finish = (str)S("M");
	k.length = (str)S("2-1/2");
	k.pitch = (str)S("5");
	if (w == FIG_WELD_PLUG)
		k.root_opening = (str)S("3/8");
	if (w == FIG_WELD_PLUG || w == FIG_WELD_SPOT)
		k.count = (str)S("(12)");
	if (groove) {
		k.groove_size = (str)S("11/16");
		k.root_opening = (str)S("3/32");
		k.angle = (str)S("37-1/2°");
	}
	return k;
}

/* Every pair of figures, bare and with all that can stand beside them, in both systems. */
static void nothing_overlaps(void **state)
{
	size_t seen = 0;

	for (int mode = 0; mode < 16; mode++)
		for (enum fig_weld w = 0; w < FIG_WELD_COUNT; w++)
			for (enum fig_weld v = 0; v < FIG_WELD_COUNT; v++) {
				struct fig_symbol s = { .arrow = side_of(w, mode & 1),
					.other = side_of(v, mode & 2), .iso = mode & 4,
					.all_around = mode & 8, .field = mode & 8, .joint = FIG_TEE,
					.note = S("sizes in inches") };

				if (mode & 8)
					s.tail[0] = s.tail[1] = s.tail[2] = (str)S("GMAW-S");
				if (fig_symbol_fault(&s).n)
					continue;
				drawn(*state, &s);
				seen++;
			}
	assert_true(seen > 16 * 80);
}

/* Fillets over grooves on one side or both, beside every joint that can be outlined. */
static void fillets_over_grooves(void **state)
{
	for (enum fig_shape joint = FIG_NONE; joint < FIG_SHAPE_COUNT; joint++)
		for (enum fig_weld w = FIG_WELD_SQUARE; w <= FIG_WELD_FLARE_BEVEL; w++)
			for (int mode = 0; mode < 4; mode++) {
				struct fig_symbol s = { .arrow = side_of(w, true), .iso = mode & 2,
					.joint = fig_symbol_outlines(joint) ? joint : FIG_NONE };
				struct figure_probe *p;

				s.arrow.angle = s.arrow.finish = (str){ 0 };
				s.arrow.contour = FIG_CONTOUR_NONE;
				s.arrow.fillet_over = (str)S("5/16");
				if (mode & 1)
					s.other = s.arrow;
				p = drawn(*state, &s);
				assert_true(figure_has_text(p, "5/16\n"));
				s.arrow.angle = (str)S("45°");
				assert_true(fig_symbol_fault(&s).n > 0);
			}
}

/* A spot is a circle on its side of the line: AWS A2.4, from memory. */
static void spot_hangs_from_the_line(void **state)
{
	struct fig_symbol s = { .arrow = { .weld = FIG_WELD_SPOT, .size = S("1/4"),
		.pitch = S("2"), .count = S("(4)") } };
	struct figure_probe *p = drawn(*state, &s);
	double top = INFINITY;
	pt from, to;

	line_of(p, &from, &to);
	for (size_t i = 0; i < p->npaths; i++)
		for (size_t k = 0; k < p->path[i].n && p->path[i].ink.stroke_pt == DIM_OUTLINE_PT;
		     k++)
			if (p->path[i].s[k].op == SEG_CURVE)
				top = fmin(top, p->path[i].s[k].p[2].y);
	near(top, from.y);
	assert_true(figure_has_text(p, "(4)\n"));
	s.arrow.weld = FIG_WELD_FILLET;
	assert_true(fig_symbol_fault(&s).n > 0);
}

static void staggered_figures_are_set_off(void **state)
{
	struct fig_symbol s = { .staggered = true };
	struct figure_probe *p;

	s.arrow = s.other = (struct fig_weld_side){ .weld = FIG_WELD_FILLET, .size = S("1/4"),
		.length = S("2"), .pitch = S("6") };
	p = drawn(*state, &s);
	assert_true(figure_lines(p, 3, DIM_OUTLINE_PT, 1)->s[0].p[0].x >
	    figure_lines(p, 3, DIM_OUTLINE_PT, 0)->s[2].p[0].x);
	s.other.pitch = (str){ 0 };
	assert_true(fig_symbol_fault(&s).n > 0);
}

static void contradictions_are_refused(void **state)
{
	const struct fig_symbol bad[] = {
		{ .note = S("no weld") },
		{ .arrow = { .weld = FIG_WELD_FILLET, .angle = S("45°") } },
		{ .arrow = { .weld = FIG_WELD_FILLET, .pitch = S("6") } },
		{ .arrow = { .weld = FIG_WELD_FILLET }, .other = { .weld = FIG_WELD_BACK } },
		{ .arrow = { .weld = FIG_WELD_STRIP } },
		{ .other = { .weld = FIG_WELD_SURFACING } },
		{ .arrow = { .weld = FIG_WELD_V, .finish = S("G") } },
		{ .arrow = { .weld = FIG_WELD_FILLET }, .joint = FIG_EDGE },
	};
	struct fig_symbol good = { .arrow = { .weld = FIG_WELD_FILLET, .size = S("1/4") } };
	bool ok;

	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct figure_probe *p = draw(*state, wide, &bad[i], &ok);

		assert_false(ok);
		assert_int_equal(p->npaths, 0);
		assert_true(figure_has_text(p, "no drawing:"));
	}
	draw(*state, (rect){ 0, 0, 60, 40 }, &good, &ok);
	assert_false(ok);
}

static void words_tell_the_same(void **state)
{
	struct figure_bench *x = *state;
	struct fig_symbol s = { .arrow = { .weld = FIG_WELD_BEVEL, .root_opening = S("1/4"),
		.angle = S("45°") }, .other = { .weld = FIG_WELD_STRIP }, .tail = { S("SMAW") } };
	str words = fig_symbol_words(x->arena, &s);

	assert_true(str_eq(words, STR("Welding symbol: bevel groove on the arrow side, root "
	    "opening 1/4, angle 45°; backing strip on the other side; the arrow breaks towards "
	    "the prepared member; in the tail: SMAW.")));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(fillet_below_is_arrow_side),
		cmocka_unit_test(fillet_above_is_other_side),
		cmocka_unit_test(vertical_legs_stay_left),
		cmocka_unit_test(v_is_drawn_square),
		cmocka_unit_test(circle_and_flag_at_the_junction),
		cmocka_unit_test(tail_is_opposite_the_arrow),
		cmocka_unit_test(arrow_breaks_for_one_prepared_member),
		cmocka_unit_test(system_a_has_a_dashed_line),
		cmocka_unit_test(nothing_overlaps),
		cmocka_unit_test(fillets_over_grooves),
		cmocka_unit_test(spot_hangs_from_the_line),
		cmocka_unit_test(staggered_figures_are_set_off),
		cmocka_unit_test(contradictions_are_refused),
		cmocka_unit_test(words_tell_the_same),
	};

	return cmocka_run_group_tests(tests, figure_bench_begin, figure_bench_end);
}
