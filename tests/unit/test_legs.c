/* Fillets with legs of two sizes, from the line of a block to drawing, symbol, throat and
 * grading rows. Legs of 3 and 4 have a face of 5 and a throat of 12 / 5 (3-4-5 triangle). */
#include "model_bench.h"

#include "draw/fig.h"
#include "sheets/key.h"
#include "sheets/limits.h"
#include "sheets/weld_symbol.h"

#include "figure_probe.h"

#define IN 25.4
#define S(text) { "" text, sizeof(text) - 1 }
#define SHEET(joint, block, more) "# SM-01: One\n\n- **Kind:** coupon\n- **Hours:** 2\n" \
	"- **Process:** SMAW\n- **Joint:** " joint "\n- **Position:** 2F\n" \
	"- **Material:** A36 plate\n- **Thickness:** 1/2 in\n- **Filler:** E7018, 1/8 in\n" \
	more "\n## Drawing\n\n```joint\njoint: " joint "\n" block "```\n"

static const rect area = { 72, 50, 468, 236 };

static const struct assignment *first(const struct bench *t)
{
	assert_int_equal(t->m->nassignments, 1);
	return t->m->assignments;
}

static void blocks_and_welds_say_two_legs(void **state)
{
	struct bench t = bench_one(SHEET("tee", "leg: 1/4 x 3/8 in\n", ""));
	const struct joint_block *j = &first(&t)->drawings[0].joint;

	(void)state;
	expect_none(&t);
	expect_near(j->leg.lo, IN / 4);
	expect_near(j->leg2.lo, IN * 3 / 8);
	bench_free(&t);
	/* Two alike are one. */
	t = bench_one(SHEET("tee", "leg: 6 x 6 mm\n", ""));
	expect_none(&t);
	expect_near(first(&t)->drawings[0].joint.leg.lo, 6);
	assert_false(first(&t)->drawings[0].joint.leg2.kind == QUANTITY_LENGTH);
	bench_free(&t);
	/* The weld lends both. */
	t = bench_one(SHEET("tee", "", "\n## Welds\n\n- **A:** tee, 2F, leg 1/4 x 3/8 in\n"));
	expect_none(&t);
	expect_near(first(&t)->drawings[0].joint.leg2.lo, IN * 3 / 8);
	expect_near(first(&t)->welds[0].leg2_mm, IN * 3 / 8);
	bench_free(&t);
	t = bench_one(SHEET("tee", "leg: 1/4 x 5/16 in\n",
	    "\n## Welds\n\n- **A:** tee, 2F, leg 1/4 x 3/8 in\n"));
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_FACTS_DISAGREE);
	bench_free(&t);
	t = bench_one(SHEET("tee", "leg: 1/4 x 0 in\n", ""));
	assert_int_equal(t.f->v[0].name, FINDING_BAD_QUANTITY);
	bench_free(&t);
}

static str result_of(const struct workings *w, const char *name)
{
	for (size_t i = 0; i < w->n; i++)
		if (str_eq(w->v[i].name, str_of(name)))
			return w->v[i].result;
	return (str){ 0 };
}

/* 0.3 x 0.4 / 0.5 = 0.24 in; 0.5 x 0.3 x 0.4 x 10 in3 x 0.283 lb/in3 = 0.170 lb. */
static void key_works_with_both(void **state)
{
	struct bench t = bench_one(SHEET("tee", "leg: 0.3 x 0.4 in\nlength: 10 in\n", ""));
	struct workings w = workings_of(t.arena, first(&t), NULL);

	(void)state;
	expect_str(result_of(&w, "Least throat"), "0.240 in [6.10 mm]");
	assert_true(str_has(result_of(&w, "Weld metal"), "0.17 lb"));
	bench_free(&t);
}

static const struct measure *row_of(const struct measures *m, const char *feature)
{
	for (size_t i = 0; i < m->n; i++)
		if (str_eq(m->v[i].feature, str_of(feature)))
			return &m->v[i];
	fail_msg("no row %s", feature);
	return NULL;
}

static void one_row_a_leg(void **state)
{
	struct bench t = bench_one(SHEET("lap", "leg: 1/4 x 3/8 in\n",
	    "\n## Acceptance\n\n- **Leg size:** 1/4 x 3/8 in, +1/16 -0 in, fillet gauge\n"));
	struct measures m = measures_of(t.arena, NULL, first(&t));

	(void)state;
	expect_str(row_of(&m, "Fillet leg at the edge")->low, "1/4 in [6.4 mm]");
	expect_str(row_of(&m, "Fillet leg at the edge")->high, "5/16 in [7.9 mm]");
	expect_str(row_of(&m, "Fillet leg on the other plate")->low, "3/8 in [9.5 mm]");
	expect_str(row_of(&m, "Fillet leg on the other plate")->high, "7/16 in [11.1 mm]");
	bench_free(&t);
}

static void symbol_has_both(void **state)
{
	struct bench t = bench_one(SHEET("tee", "leg: 1/4 x 3/8 in\n", ""));
	struct fig_symbol s;

	(void)state;
	assert_true(weld_symbol(t.arena, NULL, first(&t), &first(&t)->drawings[0].joint, &s));
	expect_str(s.arrow.size, "1/4 x 3/8");
	assert_true(str_has(s.note, "see the section"));
	bench_free(&t);
	t = bench_one(SHEET("tee", "leg: 6 x 10 mm\nsymbol: ISO 2553\n", ""));
	assert_true(weld_symbol(t.arena, NULL, first(&t), &first(&t)->drawings[0].joint, &s));
	expect_str(s.arrow.size, "z6 x z10");
	assert_true(str_has(s.note, "from memory"));
	bench_free(&t);
}

/* ---- drawings ---- */

static const enum fig_shape shapes[] = { FIG_TEE, FIG_LAP, FIG_CORNER_CLOSED };
static const struct { double leg, leg2; } pairs[] = { { 0.25, 0.375 }, { 0.375, 0.25 },
	{ 0.125, 0.1875 }, { 0.5, 0.3125 }, { 0.3125, 0.9375 } };

static struct fig_joint fillet(enum fig_shape shape, double leg, double leg2, bool both)
{
	return (struct fig_joint){ .shape = shape, .t1_mm = 0.5 * IN, .leg_mm = leg * IN,
		.leg2_mm = leg2 * IN, .both_sides = both, .gap_lo_mm = 1,
		.overlap_mm = shape == FIG_LAP ? 1.5 * IN : 0, .label_t1 = S("1/2 in [12.7 mm]"),
		.label_leg = S("11/32 in [8.7 mm]"), .label_leg2 = S("13/32 in [10.3 mm]"),
		.label_gap = S("0 to 1/16 in [0 to 1.6 mm]"),
		.label_overlap = S("1-1/2 in [38.1 mm]"), .letter = S("A") };
}

/* A straight stretch of the heavy outline of the weld, that long on paper. */
static bool has_stretch(const struct figure_probe *p, double pt_long, bool upright)
{
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		for (size_t n = 1; k->ink.stroke_pt > 1.8 && n < k->n; n++) {
			pt a = k->s[n - 1].p[k->s[n - 1].op == SEG_CURVE ? 2 : 0], b = k->s[n].p[0];

			if (k->s[n].op == SEG_CLOSE)
				b = k->s[0].p[0];
			if (k->s[n].op != SEG_CURVE && k->s[n].op != SEG_MOVE &&
			    fabs(fabs(upright ? b.y - a.y : b.x - a.x) - pt_long) < 0.05 &&
			    fabs(upright ? b.x - a.x : b.y - a.y) < 0.01)
				return true;
		}
	}
	return false;
}

static void legs_are_drawn_to_scale(void **state)
{
	struct figure_bench *x = *state;

	for (size_t s = 0; s < 3; s++)
		for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
			for (int both = 0; both < (shapes[s] == FIG_CORNER_CLOSED ? 1 : 2); both++) {
				struct fig_joint j = fillet(shapes[s], pairs[i].leg,
				    pairs[i].leg2, both);
				struct figure_probe *p = figure_probe_new(x->arena, x->faces);
				bool level_is_first = shapes[s] == FIG_CORNER_CLOSED;
				double scale;

				if (!fig_joint_draw(&p->canvas, x->faces, area, &j))
					fail_msg("shape %zu, pair %zu: %s", s, i, p->text);
				canvas_page_end(&p->canvas);
				figure_keeps_promises(p, area);
				assert_true(figure_has_text(p, "11/32"));
				assert_true(figure_has_text(p, "13/32"));
				scale = strstr(p->text, "to scale") ? figure_told_scale(p) : 1;
				scale *= PT_MM;
				assert_true(has_stretch(p, j.leg_mm * scale, !level_is_first));
				assert_true(has_stretch(p, j.leg2_mm * scale, level_is_first));
			}
}

static void only_plain_fillets_take_two(void **state)
{
	struct fig_joint j = fillet(FIG_TEE, 0.25, 0.375, false);

	(void)state;
	assert_int_equal(fig_joint_fault(&j).n, 0);
	j.shape = FIG_TEE_GROOVE;
	j.prep = FIG_PREP_BEVEL;
	j.bevel_angle_deg = 45;
	assert_true(fig_joint_fault(&j).n > 0);
	j = fillet(FIG_TEE, 0.25, 0.03, false);
	/* A gap of 1 mm hides a leg of 0.8. */
	assert_true(fig_joint_fault(&j).n > 0);
}

static void words_say_which_lies_where(void **state)
{
	struct figure_bench *x = *state;
	struct fig_joint j = fillet(FIG_TEE, 0.25, 0.375, false);
	str w = fig_joint_words(x->arena, &j);

	assert_true(str_has(w, "leg up the web 11/32 in"));
	assert_true(str_has(w, "leg along the base 13/32 in"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(blocks_and_welds_say_two_legs),
		cmocka_unit_test(key_works_with_both), cmocka_unit_test(one_row_a_leg),
		cmocka_unit_test(symbol_has_both),
		cmocka_unit_test_setup_teardown(legs_are_drawn_to_scale, figure_bench_begin,
		    figure_bench_end),
		cmocka_unit_test(only_plain_fillets_take_two),
		cmocka_unit_test_setup_teardown(words_say_which_lies_where,
		    figure_bench_begin, figure_bench_end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
