/* From the lines of a joint block to its welding symbol. Places and letters: AWS A2.4 and
 * ISO 2553, from memory but for the rule of sides. */
#include "model_bench.h"

#include "sheets/weld_symbol.h"

#define HEAD "# SM-20: Test\n\n- **Kind:** coupon\n- **Hours:** 16\n- **Process:** SMAW\n"
#define PLATE "- **Material:** A36 plate\n- **Thickness:** 1 in\n- **Position:** flat\n\n"
#define BLOCK(joint, lines) HEAD "- **Joint:** " joint "\n" PLATE "## Drawing\n\n```joint\n" \
	lines "```\n"

static struct bench t;

/* The symbol of a sound block. */
static struct fig_symbol symbol_of(const char *text)
{
	struct fig_symbol s;
	const struct assignment *x;
	str why;

	t = bench_one(text);
	expect_none(&t);
	x = t.m->assignments;
	why = weld_symbol_fault(t.arena, x, &x->drawings[0].joint);
	if (why.n)
		fail_msg("%.*s", STR_ARG(why));
	assert_true(weld_symbol(t.arena, NULL, x, &x->drawings[0].joint, &s));
	return s;
}

static void both_sides_of_a_double_v(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("butt", "joint: butt\npreparation: double V\n"
	    "angle: 60 deg\ngap: 1/8 in\ndepth: 5/8 in\nland: 1/8 in\n"));

	(void)state;
	assert_int_equal(s.arrow.weld, FIG_WELD_V);
	assert_int_equal(s.other.weld, FIG_WELD_V);
	expect_str(s.arrow.size, "5/8");
	/* 1 - 5/8 - 1/8 in. */
	expect_str(s.other.size, "1/4");
	expect_str(s.arrow.angle, "60°");
	expect_str(s.other.angle, "60°");
	/* The root opening is told once. */
	expect_str(s.arrow.root_opening, "1/8");
	assert_int_equal(s.other.root_opening.n, 0);
	bench_free(&t);
	/* Through the thickness, alike from both sides: no sizes, so complete penetration. */
	s = symbol_of(BLOCK("butt", "joint: butt\npreparation: double U\nangle: 20 deg\n"
	    "radius: 1/4 in\n"));
	assert_int_equal(s.arrow.weld, FIG_WELD_U);
	assert_int_equal(s.arrow.size.n + s.other.size.n, 0);
	expect_str(s.tail[1], "root radius 1/4");
	bench_free(&t);
}

static void what_the_back_gets(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("butt", "joint: butt\npreparation: V\n"
	    "angle: 60 deg\nmelt-through: 1/16 in\n"));

	(void)state;
	assert_int_equal(s.other.weld, FIG_WELD_MELT_THROUGH);
	expect_str(s.other.size, "1/16");
	bench_free(&t);
	s = symbol_of(BLOCK("butt", "joint: butt\npreparation: J\nbevel: 20 deg\n"
	    "radius: 1/4 in\nback: backing weld\ncontour back: flush\nfinish back: grinding\n"));
	assert_int_equal(s.arrow.weld, FIG_WELD_J);
	assert_int_equal(s.other.weld, FIG_WELD_BACK);
	expect_str(s.tail[1], "backing weld");
	assert_int_equal(s.other.contour, FIG_FLUSH);
	expect_str(s.other.finish, "G");
	bench_free(&t);
}

static void fillet_over_a_prepared_tee(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("tee", "joint: tee\npreparation: double bevel\n"
	    "bevel: 45 deg\nleg: 3/8 in\n"));

	(void)state;
	assert_int_equal(s.arrow.weld, FIG_WELD_BEVEL);
	expect_str(s.arrow.fillet_over, "3/8");
	expect_str(s.other.fillet_over, "3/8");
	expect_str(s.tail[1], "45° bevel");
	bench_free(&t);
	/* Without the preparation it is a fillet as before. */
	s = symbol_of(BLOCK("tee", "leg: 3/8 in\nsides: both\n"));
	assert_int_equal(s.arrow.weld, FIG_WELD_FILLET);
	expect_str(s.other.size, "3/8");
	bench_free(&t);
}

static void intermittent_fillets(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("tee", "leg: 5/16 in\nsides: both\n"
	    "increments: 2 in at 6 in, staggered\ncontour: convex\nfield: yes\n"
	    "all around: yes\ntail: typical\n"));

	(void)state;
	expect_str(s.arrow.length, "2");
	expect_str(s.arrow.pitch, "6");
	expect_str(s.other.pitch, "6");
	assert_true(s.staggered && s.field && s.all_around);
	assert_int_equal(s.arrow.contour, FIG_CONVEX);
	expect_str(s.tail[0], "SMAW");
	expect_str(s.tail[1], "typical");
	bench_free(&t);
}

/* z before a leg; n x l (e) with e the gap between: 6 - 2 in is 101.6 mm. */
static void iso_2553(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("tee", "leg: 8 mm\nincrements: 2 in at 6 in\n"
	    "count: 3\nsymbol: ISO 2553\n"));

	(void)state;
	assert_true(s.iso);
	expect_str(s.arrow.size, "z8");
	expect_str(s.arrow.length, "3 x 50.8 (101.6)");
	assert_int_equal(s.arrow.pitch.n, 0);
	expect_str(s.tail[0], "111");
	expect_str(s.note, "ISO 2553 system A; sizes in mm");
	bench_free(&t);
}

/* 4 in from middle to middle leave 4 - 1-1/2 in, 63.5 mm, between slots along their row. */
static void iso_2553_rows(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("lap", "plug weld: 3/4 in\nspacing: 4 in\n"
	    "count: 5\nsymbol: ISO 2553\n"));

	(void)state;
	expect_str(s.arrow.pitch, "5 (101.6)");
	assert_int_equal(s.arrow.count.n, 0);
	bench_free(&t);
	s = symbol_of(BLOCK("lap", "slot weld: 3/4 x 1-1/2 in\nspacing: 4 in\ncount: 3\n"
	    "symbol: ISO 2553\n"));
	expect_str(s.arrow.length, "3 x 38.1 (63.5)");
	assert_int_equal(s.arrow.pitch.n, 0);
	bench_free(&t);
	s = symbol_of(BLOCK("butt", "preparation: double bevel\nbevel: 45 deg\nbevel back: 60 deg\n"
	    "root opening: 1/8 in\nsymbol: ISO 2553\n"));
	assert_true(s.uneven);
	bench_free(&t);
}

static void holes_of_a_lap(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("lap", "plug weld: 3/4 in\nfill: 1/2 in\n"
	    "spacing: 4 in\ncount: 5\n"));

	(void)state;
	assert_int_equal(s.arrow.weld, FIG_WELD_PLUG);
	expect_str(s.arrow.size, "3/4");
	expect_str(s.arrow.root_opening, "1/2");
	expect_str(s.arrow.pitch, "4");
	expect_str(s.arrow.count, "(5)");
	bench_free(&t);
	s = symbol_of(BLOCK("lap", "slot weld: 3/4 x 1-1/2 in\nspacing: 4 in\n"));
	expect_str(s.arrow.size, "3/4");
	expect_str(s.arrow.length, "1-1/2");
	bench_free(&t);
	s = symbol_of(BLOCK("lap", "spot weld: 1/4 in\n"));
	assert_int_equal(s.arrow.weld, FIG_WELD_SPOT);
	bench_free(&t);
}

static void what_cannot_be_is_said(void **state)
{
	static const struct { const char *text, *why; } rows[] = {
		{ BLOCK("tee", "leg: 1/4 in\nplug weld: 3/4 in\n"),
		    "plugs, slots and spots are welds of a lap" },
		{ BLOCK("tee", "leg: 1/4 in\nspacing: 4 in\n"),
		    "spacing and filling are told of plugs, slots and spots" },
		{ BLOCK("tee", "leg: 1/4 in\nincrements: 6 in at 2 in\n"),
		    "the increments are as long as their pitch or longer" },
		{ BLOCK("tee", "leg: 1/4 in\nincrements: 2 in at 6 in\nsymbol: ISO 2553\n"),
		    "ISO 2553 tells how many increments there are: give \"count\"" },
		{ BLOCK("tee", "leg: 1/4 in\nlength: 4 in\nincrements: 5 in at 6 in\n"),
		    "an increment is longer than the weld" },
		{ BLOCK("tee", "leg: 1/4 in\nlength: 5 in\nincrements: 5 in at 6 in\n"), "" },
		{ BLOCK("lap", "plug weld: 3/4 in\nspacing: 3/4 in\n"),
		    "plugs, slots or spots that run into one another" },
		{ BLOCK("lap", "plug weld: 3/4 in\nspacing: 7/8 in\n"), "" },
		{ BLOCK("butt", "preparation: V\nangle: 45 deg\ngap: 1/4 in\n"
		    "backing: 1/4 x 1 in\nback: melt-through\n"),
		    "a backing strip covers the root: no melt-through or weld there" },
		{ BLOCK("butt", "preparation: double V\nangle: 60 deg\nback: back weld\n"),
		    "a double preparation has a groove at its back already" },
		{ BLOCK("tee", "leg: 1/4 in\nfinish: G\n"), "a finish without a contour" },
		{ BLOCK("tee", "leg: 1/4 in\ncontour back: flush\n"),
		    "sizes on a side without a weld" },
		{ BLOCK("tee", "leg: 1/4 in\nincrements: 2 in at 6 in, staggered\n"),
		    "only intermittent fillets on both sides are staggered" },
		{ BLOCK("edge", "field: yes\n"),
		    "the joint has none, or a size that it shows is not a single one" },
		{ BLOCK("tee", "preparation: bevel\nbevel: 45 deg\nleg: 3/8 in\ncontour: flush\n"),
		    "a fillet over a groove leaves no room for angle or contour" },
		{ BLOCK("edge", "symbol: none\nfield: yes\n"), "" },
		{ BLOCK("edge", "gap: 0 in\n"), "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct assignment *x;

		t = bench_one(rows[i].text);
		x = t.m->assignments;
		expect_str(weld_symbol_fault(t.arena, x, &x->drawings[0].joint), rows[i].why);
		bench_free(&t);
	}
}

/* What is in doubt is left out, and the sheet says so; sound symbols have no note. */
static void doubt_is_told(void **state)
{
	static const struct { const char *block, *note; } rows[] = {
		{ BLOCK("edge", "joint: edge\n"), "edge weld" },
		{ BLOCK("edge", "joint: edge\nsymbol: none\n"), "" },
		{ BLOCK("square butt", "joint: square butt\nthickness: 1 in\n"), "square groove" },
		{ BLOCK("square butt", "joint: square butt\nsides: both\n"), "" },
		{ BLOCK("tee", "joint: tee\nleg: 1/4 in\n"), "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct fig_symbol s;
		const struct assignment *x;
		str note;

		t = bench_one(rows[i].block);
		x = t.m->assignments;
		note = weld_symbol_note(NULL, &x->drawings[0].joint);
		assert_int_equal(note.n > 0, *rows[i].note != 0);
		assert_true(str_has(note, rows[i].note));
		if (note.n)
			assert_false(weld_symbol(t.arena, NULL, x, &x->drawings[0].joint, &s));
		bench_free(&t);
	}
}

/* Angles and radii of their own at the back stand on the other side and in the tail. */
static void backs_of_their_own(void **state)
{
	struct fig_symbol s = symbol_of(BLOCK("butt", "joint: butt\npreparation: double U\n"
	    "angle: 20 deg\nbevel back: 15 deg\nradius: 1/4 in\nradius back: 3/16 in\n"));

	(void)state;
	expect_str(s.arrow.angle, "20°");
	expect_str(s.other.angle, "30°");
	expect_str(s.tail[1], "root radius 1/4, other side 3/16");
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(doubt_is_told), cmocka_unit_test(backs_of_their_own),
		cmocka_unit_test(both_sides_of_a_double_v),
		cmocka_unit_test(what_the_back_gets),
		cmocka_unit_test(fillet_over_a_prepared_tee),
		cmocka_unit_test(intermittent_fillets),
		cmocka_unit_test(iso_2553),
		cmocka_unit_test(iso_2553_rows),
		cmocka_unit_test(holes_of_a_lap),
		cmocka_unit_test(what_cannot_be_is_said),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
