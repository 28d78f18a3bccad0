/* Lines of a key worked by hand: arc time, gas and heat where the sheet says how fast, and
 * weights of pieces. Densities 490 lb/ft3 for steel, 0.290 lb/in3 for stainless; pipe
 * 10.69 (D - t) t lb/ft (ASME B36.10M). */
#include "model_bench.h"

#include "sheets/key.h"
#include "sheets/piece_weight.h"

#include <math.h>

#define TEE(facts) "# SM-01: One\n\n- **Kind:** coupon\n- **Hours:** 2\n" \
	"- **Process:** GMAW-S\n- **Joint:** tee\n- **Position:** 2F\n" \
	"- **Material:** A36 plate\n- **Thickness:** 3/8 in\n" \
	"- **Filler:** ER70S-6, 0.035 in\n- **Current:** DC+, 100-130 A\n" facts \
	"\n## Drawing\n\n```joint\njoint: tee\nleg: 1/4 in\nlength: 8 in\npasses: 2\n```\n"
#define GAS "- **Gas:** 75/25 argon/CO2 25 cfh\n"

static struct bench read_one(const char *sheet)
{
	struct file_text files[] = { { "assignments/a.md", sheet } };
	struct bench t = bench_bind(files, 1);

	assert_int_equal(t.m->nassignments, 1);
	return t;
}

static str result_of(const struct workings *w, const char *name)
{
	for (size_t i = 0; i < w->n; i++)
		if (str_eq(w->v[i].name, str_of(name)))
			return w->v[i].result;
	return (str){ 0 };
}

/* 8 in x 2 / 10 in/min = 1.6 min; x 25 / 60 = 0.667 ft3; 60 x 17 x 100 / 12000 = 8.5 and
 * 60 x 19 x 130 / 8000 = 18.5 kJ/in. */
static void travel_tells_time_gas_and_heat(void **state)
{
	struct bench t = read_one(TEE(GAS "- **Volts:** 17-19 V\n- **Travel:** 8-12 in/min\n"));
	struct workings w = workings_of(t.arena, t.m->assignments, NULL);

	(void)state;
	expect_str(result_of(&w, "Arc time"), "1.6 min");
	expect_str(result_of(&w, "Shielding gas"), "0.67 ft3 [19 L]");
	expect_str(result_of(&w, "Heat input"), "8.5 to 18.5 kJ/in [0.33 to 0.73 kJ/mm]");
	bench_free(&t);
}

/* 0.5 x 0.25^2 x 8 x 0.283 = 0.07075 lb at 4.705 lb/h (96 % of 0.035 in wire at 300
 * in/min) is 0.902 min. */
static void feed_of_solid_wire_tells_time(void **state)
{
	struct bench t = read_one(TEE(GAS "- **Wire feed:** 300 in/min\n"));
	struct workings w = workings_of(t.arena, t.m->assignments, NULL);

	(void)state;
	expect_str(result_of(&w, "Arc time"), "0.9 min");
	assert_int_equal(result_of(&w, "Heat input").n, 0);
	bench_free(&t);
	t = read_one(TEE(GAS));
	w = workings_of(t.arena, t.m->assignments, NULL);
	assert_int_equal(result_of(&w, "Arc time").n, 0);
	assert_int_equal(result_of(&w, "Shielding gas").n, 0);
	assert_true(result_of(&w, "Weld metal").n > 0);
	bench_free(&t);
}

#define BLOCK(body) "# SM-01: One\n\n- **Kind:** coupon\n- **Hours:** 2\n" \
	"- **Process:** SMAW\n- **Material:** A36 plate\n- **Thickness:** 1 in\n" \
	"- **Filler:** E7018, 1/8 in\n- **Current:** DC+, 110-140 A\n\n## Drawing\n\n" \
	"```joint\n" body "length: 1 in\n```\n"

/* Sections integrated in steps of a thousandth of the depth, apart from the formulas:
 * width(y) = gap + 2 (r - sqrt(r^2 - (r - y)^2)) mirrored to the root, then the slope.
 * U: gap 1/8, land 1/8, r 1/4, 20 deg on 1 in: 0.6095 in2; J of 30 deg, r 1/2: 0.5852.
 * Double V 1 in, 60 deg, gap 1/8, land 1/8, depths 1/2 and 3/8: 0.125 + (0.25 + 0.140625)
 * tan 30 = 0.3505; with caps of 1/16: 2/3 / 16 (0.7024 + 0.5580) = 0.0525, so 0.4030 x
 * 0.283 = 0.114 lb an inch. Bevel on a tee, 45 deg by the word angle, gap 1/8: 0.625. */
static void prepared_edges_have_their_own_section(void **state)
{
	static const struct { const char *sheet, *area, *metal; } cases[] = {
		{ BLOCK("joint: butt\npreparation: U\ngap: 1/8 in\nland: 1/8 in\n"
		    "radius: 1/4 in\nangle: 20 deg\n"), "0.6095 in2 [393.2 mm2]", "0.17 lb [78 g]" },
		{ BLOCK("joint: butt\npreparation: J\ngap: 1/8 in\nland: 1/8 in\n"
		    "radius: 1/2 in\nangle: 30 deg\n"), "0.5852 in2 [377.5 mm2]", "0.17 lb [75 g]" },
		{ BLOCK("joint: butt\npreparation: double V\ngap: 1/8 in\ndepth: 1/2 in\n"
		    "depth back: 3/8 in\nangle: 60 deg\nreinforcement: 1/16 in\n"),
		    "0.3505 in2 [226.1 mm2]", "0.11 lb [52 g]" },
		{ BLOCK("joint: tee\npreparation: bevel\ngap: 1/8 in\nangle: 45 deg\n"),
		    "0.6250 in2 [403.2 mm2]", "0.18 lb [80 g]" },
		{ BLOCK("joint: butt\npreparation: V\ndepth: 1/2 in\nangle: 60 deg\n"),
		    "0.1443 in2 [93.1 mm2]", "0.041 lb [19 g]" },
		{ BLOCK("joint: butt\npreparation: flare V\nradius: 1 in\n"), "", "" },
		{ BLOCK("joint: tee\npreparation: bevel\ngap: 1/8 in\nangle: 45 deg\n"
		    "leg: 5/16 in\n"), "0.6250 in2 [403.2 mm2]", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct bench t = read_one(cases[i].sheet);
		struct workings w = workings_of(t.arena, t.m->assignments, NULL);

		expect_str(result_of(&w, "Groove area without cap"), cases[i].area);
		expect_str(result_of(&w, "Weld metal"), cases[i].metal);
		assert_int_equal(result_of(&w, "Least throat").n, 0);
		bench_free(&t);
	}
}

/* A pipe butt takes the edges that its block names: square ones have no slope. 0.125 x
 * 0.280 in2 = 0.0350. */
static void pipe_takes_named_edges(void **state)
{
	struct bench t = read_one("# PW-01: One\n\n- **Kind:** coupon\n- **Hours:** 2\n"
	    "- **Process:** GTAW\n- **Material:** A53 pipe\n"
	    "- **Thickness:** NPS 6 schedule 40\n\n## Drawing\n\n```joint\n"
	    "joint: pipe butt\nsize: NPS 6 schedule 40\npreparation: square\n"
	    "gap: 1/8 in\n```\n");
	struct workings w = workings_of(t.arena, t.m->assignments, NULL);

	(void)state;
	expect_str(result_of(&w, "Groove area without cap"), "0.0350 in2 [22.6 mm2]");
	bench_free(&t);
}

static void pieces_are_weighed(void **state)
{
	static const struct { const char *piece; double lb; } cases[] = {
		{ "3/8 x 3 x 8 in A36 plate", 2.5521 },
		{ "11 ga x 12 x 23-1/2 in A1011 sheet", 9.5638 },
		{ "NPS 6 schedule 40 x 3 in A53 pipe", 4.7480 },
		{ "2 x 0.065 x 3 in 304L tube", 0.34377 },
		{ "2 x 2 x 3/16 x 48 in A500 tube", 18.5026 },
		{ "2 x 2 x 3/16 x 48 in A36 angle", 9.7298 },
		{ "3 x 3 x 54 in 304 tube", 0 },
		{ "3/8 x 3 x 8 in oak", 0 },
		/* The facts pair 3/16 in with it: 4 x 3/16 (2 - 3/16) x 24 x 490/1728. */
		{ "2 x 2 x 24 in A500 tube", 9.2513 },
		/* 1/4 in, the same: 1/4 (2 + 3 - 1/4) x 12 x 490/1728. */
		{ "2 x 3 x 12 in A36 angle", 4.0408 },
		/* Walls that fill the tube: no weight. */
		{ "3/8 x 3/8 x 24 in A500 tube", 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char sheet[400];
		struct piece_weight w = { 0 };
		struct bench t;

		snprintf(sheet, sizeof sheet, "# SM-01: One\n\n- **Kind:** drill\n"
		    "- **Hours:** 1\n- **Material:** A500 tube, A36 angle\n"
		    "- **Thickness:** 3/16 in, 1/4 in\n\n## Pieces\n\n- part: 2 of %s, sawn\n", cases[i].piece);
		t = read_one(sheet);
		assert_int_equal(t.m->assignments->npieces, 1);
		assert_int_equal(piece_weigh(t.arena, t.m->assignments, t.m->assignments->pieces, false,
		    &w),
		    cases[i].lb > 0);
		if (fabs(w.lb - cases[i].lb) > 0.0005)
			fail_msg("%s weighs %g", cases[i].piece, w.lb);
		bench_free(&t);
	}
}

/* Least flange of the brake comes from memory, its force does not: the dagger stands at
 * the figure itself. */
static void asked_figures_carry_their_dagger(void **state)
{
	struct bench t = read_one("# SM-01: One\n\n- **Kind:** written\n- **Hours:** 1\n\n"
	    "## Instructor only\n\n"
	    "- **Reckon:** brake thickness 1/8 in length 4 ft opening 1 in\n");
	struct workings w = workings_of(t.arena, t.m->assignments, NULL);
	str r = w.v[0].result;

	(void)state;
	assert_true(w.v[0].dagger);
	assert_true(str_find(r, STR("Force: 35.9 tons [320 kN]\n"), 0) < r.n);
	assert_true(str_find(r, STR("Least flange: 0.700 in [17.8 mm]\xE2\x80\xA0"), 0) < r.n);
	bench_free(&t);
}

/* 6 x 15.3125 + 3 x 4.9978 lb = 106.9; nothing is summed where no line counts. */
static void counted_weights_are_summed(void **state)
{
#define SHEET "# SM-01: One\n\n- **Kind:** written\n- **Hours:** 1\n\n## Instructor only\n\n"
	struct bench t = read_one(SHEET
	    "- **Reckon:** plate thickness 1/4 in width 12 in length 18 in count 6\n"
	    "- **Reckon:** weld-metal leg 1/4 in length 20 ft efficiency 60 %\n"
	    "- **Reckon:** plate thickness 1/2 in width 1-1/2 in length 23-1/2 in count 3\n");
	struct workings w = workings_of(t.arena, t.m->assignments, NULL);

	(void)state;
	assert_int_equal(w.n, 4);
	expect_str(result_of(&w, "all pieces asked for above"),
	    "Weight of all: 106.9 lb [48.5 kg]");
	/* 20 ft of 1/4 in: 2.1225 lb; / 60 % = 3.5375. */
	assert_true(str_find(w.v[1].result, STR("Filler to buy: 3.54 lb"), 0) < w.v[1].result.n);
	bench_free(&t);
	t = read_one(SHEET "- **Reckon:** plate thickness 1/4 in width 12 in length 18 in\n"
	    "- **Reckon:** plate thickness 1/2 in width 1 in length 12 in\n");
	w = workings_of(t.arena, t.m->assignments, NULL);
	assert_int_equal(w.n, 2);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(travel_tells_time_gas_and_heat),
		cmocka_unit_test(feed_of_solid_wire_tells_time),
		cmocka_unit_test(prepared_edges_have_their_own_section),
		cmocka_unit_test(pipe_takes_named_edges),
		cmocka_unit_test(pieces_are_weighed),
		cmocka_unit_test(asked_figures_carry_their_dagger),
		cmocka_unit_test(counted_weights_are_summed),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
