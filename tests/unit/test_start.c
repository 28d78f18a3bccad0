/* What the tables give where a sheet is silent. Published rows: AWS D1.1 preheat table
 * (A36, low hydrogen: 32 F to 3/4 in, 50 F to 1-1/2; otherwise 150 F), Machinery's
 * Handbook (E7018 1/8 in 110-160 A), a wire feeder's chart (0.035 in 80-190 A, 16-22 V);
 * torch and tungsten flow from memory. */
#include "model_bench.h"

#include "sheets/limits.h"
#include "sheets/start.h"

#define SHEET(process, material, thickness, facts) \
	"# SM-01: One\n\n- **Kind:** coupon\n- **Hours:** 2\n- **Process:** " process "\n" \
	"- **Joint:** tee\n- **Position:** 2F\n- **Material:** " material "\n" \
	"- **Thickness:** " thickness "\n" facts
#define STICK "- **Filler:** E7018, 1/8 in\n- **Current:** DC+, 115-140 A\n"
#define WIRE "- **Filler:** ER70S-6, 0.035 in\n- **Current:** DC+, 115-145 A\n"

static struct bench read_one(const char *sheet)
{
	struct file_text files[] = { { "assignments/a.md", sheet } };
	struct bench t = bench_bind(files, 1);

	assert_int_equal(t.m->nassignments, 1);
	return t;
}

static void preheat_is_the_highest_that_a_weld_asks(void **state)
{
	static const struct { const char *sheet; double least_f; const char *text; } cases[] = {
		{ SHEET("SMAW", "A36 plate", "1 in", STICK), 50,
		    "50 \xC2\xB0" "F [10 \xC2\xB0" "C] at least" },
		{ SHEET("SMAW", "A36 plate", "3/4 in", STICK), 32,
		    "32 \xC2\xB0" "F [0 \xC2\xB0" "C] at least; colder metal is warmed to "
		    "70 \xC2\xB0" "F [20 \xC2\xB0" "C]" },
		{ SHEET("SMAW", "A36 plate", "1 in", "- **Filler:** E6010, 1/8 in; E7018, "
		    "1/8 in\n"), 150, NULL },
		{ SHEET("SMAW", "A36 plate, A36 plate", "3/8 in, 1 in", STICK), 50, NULL },
		{ SHEET("GTAW", "A36 plate", "1 in", ""), 0, NULL },
		{ SHEET("SMAW", "304L plate", "1 in", STICK), 0, NULL },
		{ SHEET("SMAW", "A36 plate", "1 in", ""), 0, NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct bench t = read_one(cases[i].sheet);
		struct start_heat h = { 0 };
		bool any = start_preheat(t.m->assignments, &h);

		assert_int_equal(any, cases[i].least_f > 0);
		assert_true(h.least_f == cases[i].least_f);
		if (cases[i].text)
			expect_str(start_heat_text(t.arena, NULL, &h), cases[i].text);
		bench_free(&t);
	}
}

static void torches_are_for_carbon_steel(void **state)
{
	static const struct { const char *sheet; size_t n; const char *oxygen; } cases[] = {
		{ SHEET("OFC", "A36 plate", "3/8 in", ""), 4, "25-30 psi [172-207 kPa]" },
		{ SHEET("OFC", "A36 plate", "1 in", ""), 4, "35-40 psi [241-276 kPa]" },
		/* Both lie in one row, the third in another. */
		{ SHEET("OFC", "A36 plate", "0.3 in, 3/8 in, 2 in", ""), 8, NULL },
		{ SHEET("OFC", "304L plate", "3/8 in", ""), 0, NULL },
		{ SHEET("PAC", "A36 plate", "3/8 in", ""), 0, NULL },
		{ SHEET("OFC", "A36 plate", "5 in", ""), 0, NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct bench t = read_one(cases[i].sheet);
		struct start v[STARTS_MOST];

		assert_int_equal(start_torch(t.arena, NULL, t.m->assignments, v), cases[i].n);
		if (cases[i].oxygen)
			expect_str(v[1].set, cases[i].oxygen);
		if (cases[i].n)
			assert_true(v[1].dagger);
		bench_free(&t);
	}
}

static void ranges_pair_with_currents_and_passes(void **state)
{
	struct bench t = read_one(SHEET("GMAW-S", "A36 plate", "1/4 in", WIRE));
	struct current_range r;
	bool dagger;
	const char *source;

	(void)state;
	assert_true(start_range(t.m->assignments, 0, &r));
	expect_str(start_amps_text(t.arena, NULL, &r), "80-190 A");
	expect_str(start_volts_text(t.arena, NULL, &r), "16-22 V");
	expect_str(start_flow_text(t.arena, NULL, t.m->assignments, false, &dagger, &source),
	    "25-30 cfh [11.8-14.2 L/min]");
	assert_false(dagger);
	assert_true(start_is_wire(t.m->assignments));
	bench_free(&t);
	t = read_one(SHEET("SMAW", "A36 plate", "1/4 in", "- **Filler:** E6010, 1/8 in; "
	    "E7018, 1/8 in\n\n## Passes\n\n- **Root:** E6010 1/8 in, DC+ 75-95 A\n"
	    "- **Cap:** E7018 1/8 in, DC+ 110-130 A\n"));
	assert_true(start_pass_range(t.m->assignments, &t.m->assignments->passes[1], &r));
	expect_str(start_amps_text(t.arena, NULL, &r), "110-160 A");
	assert_true(start_pass_range(t.m->assignments, &t.m->assignments->passes[0], &r));
	expect_str(start_amps_text(t.arena, NULL, &r), "75-130 A");
	assert_int_equal(start_volts_text(t.arena, NULL, &r).n, 0);
	assert_int_equal(start_flow_text(t.arena, NULL, t.m->assignments, false, &dagger,
	    &source).n, 0);
	assert_false(start_is_wire(t.m->assignments));
	bench_free(&t);
}

static void memory_has_its_dagger(void **state)
{
	struct bench t = read_one(SHEET("GTAW", "304L sheet", "1/8 in", "- **Filler:** "
	    "ER308L, 1/16 in\n- **Current:** DC-, 60-90 A\n- **Tungsten:** EWLa-2, 1/16 in\n"));
	struct start most;
	const char *source;
	bool dagger;

	(void)state;
	expect_str(start_flow_text(t.arena, NULL, t.m->assignments, true, &dagger, &source),
	    "10-20 cfh [4.7-9.4 L/min]" DAGGER);
	assert_true(dagger);
	assert_true(start_interpass(t.arena, NULL, t.m->assignments, &most));
	expect_str(most.set, "350 \xC2\xB0" "F [177 \xC2\xB0" "C] at most");
	assert_true(most.dagger);
	bench_free(&t);
	t = read_one(SHEET("SMAW", "A36 plate", "1 in", STICK));
	assert_false(start_interpass(t.arena, NULL, t.m->assignments, &most));
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(preheat_is_the_highest_that_a_weld_asks),
		cmocka_unit_test(torches_are_for_carbon_steel),
		cmocka_unit_test(ranges_pair_with_currents_and_passes),
		cmocka_unit_test(memory_has_its_dagger),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
