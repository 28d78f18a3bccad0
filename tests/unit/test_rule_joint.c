/* Position, leg, and what drawing, Acceptance and pieces say of one thing. */
#include "rule_bench.h"

#include "check/rule_joint.h"

/* Lines: 5 process, 6 joint, 7 material, 8 thickness, 9 position, 10 filler, 11 gas. */
#define WIRE(joint, material, thickness, position, rest) SHEET("drill", \
	FACT("Process", "FCAW-G") FACT("Joint", joint) FACT("Material", material) \
	FACT("Thickness", thickness) FACT("Position", position) \
	FACT("Filler", "E71T-1, 0.045 in") FACT("Gas", "75/25 argon/CO2 35 cfh"), rest)
#define PLATE_WELD(joint, position) WIRE(joint, "A36 plate", "3/8 in", position, "")

static void position(void **state)
{
	static const struct rule_case cases[] = {
		{ "lap in a rolled position", WIRE("lap", "A53 pipe",
		    "NPS 6 schedule 40", "1G rolled", ""), FINDING_POSITION_IMPOSSIBLE, 9,
		    LEVEL_ERROR, "a fillet, and the G positions", "2F" },
		{ "groove in 1F", PLATE_WELD("single-V", "1F"), FINDING_POSITION_IMPOSSIBLE,
		    9, LEVEL_ERROR, "a groove, and the F positions", "1G" },
		{ "plate in 6G", PLATE_WELD("single-V", "6G up"),
		    FINDING_POSITION_IMPOSSIBLE, 9, LEVEL_ERROR, "is for pipe", "3G up" },
		{ "pipe in 4G", WIRE("pipe butt", "A53 pipe", "NPS 6 schedule 40", "4G",
		    ""), FINDING_POSITION_IMPOSSIBLE, 9, LEVEL_ERROR, "is for plate",
		    "6G up" },
		/* Its drawing says otherwise, and that is told. */
		{ "a tee drawn as a groove", WIRE("tee", "A36 plate", "3/8 in", "1G",
		    "## Drawing\n\n```joint\njoint: single-V\ngap: 1/8 in\nbevel: 30 deg\n"
		    "```\n\n## Acceptance\n\n- **Root bend:** 2, shop limits\n"), SILENT },
		/* AWS A3.0: a tee with a beveled edge is a groove weld. */
		{ "a tee with a bevel", WIRE("tee", "A36 plate", "3/8 in", "2G",
		    "## Drawing\n\n```joint\npreparation: bevel\ngap: 1/8 in\nangle: 45 deg\n"
		    "```\n"), SILENT },
		{ "a tee without one", WIRE("tee", "A36 plate", "3/8 in", "2G",
		    "## Drawing\n\n```joint\nleg: 1/4 in\n```\n"), FINDING_POSITION_IMPOSSIBLE,
		    9, LEVEL_ERROR, "a fillet, and the G positions", "2F" },
		{ "open corner as a groove", PLATE_WELD("open corner", "1G"), SILENT },
		{ "open corner as a fillet", PLATE_WELD("open corner", "1F"), SILENT },
		{ "tube rolled", WIRE("square butt", "A500 tube", "0.120 in", "1G rolled",
		    ""), SILENT },
		{ "groove flat", PLATE_WELD("U-groove", "flat"), SILENT },
		{ "two joints in two positions: one finding", PLATE_WELD("tee, single-V",
		    "2F, 1G"), FINDING_POSITION_IMPOSSIBLE, 9, LEVEL_ERROR, "weld B",
		    "## Welds" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* The weld stands at line 15. */
#define LEG(weld, material, thickness) WIRE("tee, lap", material, thickness, "2F", \
	"## Welds\n\n- **A:** " weld ", 8 in long\n")

static void leg(void **state)
{
	static const struct rule_case cases[] = {
		{ "leg as thick as the thinner part", LEG("tee, 2F, leg 1/4 in, "
		    "A36 plate 1/4 in, A36 plate 3/8 in", "A36 plate", "1/4 in"), SILENT },
		{ "leg over the thinner part", LEG("tee, 2F, leg 5/16 in, "
		    "A36 plate 1/4 in, A36 plate 3/8 in", "A36 plate", "1/4 in"),
		    FINDING_LEG_OVER_THINNER, 15, LEVEL_WARNING, "5/16 in [7.9 mm], more "
		    "than the thinner part, 1/4 in", "1/4 in" },
		{ "11 ga counts as 1/8 in", LEG("tee, 2F, leg 1/8 in", "A1011 sheet",
		    "11 ga"), SILENT },
		{ "11 ga is not 5/32 in", LEG("tee, 2F, leg 5/32 in", "A1011 sheet",
		    "11 ga"), FINDING_LEG_OVER_THINNER, 15, LEVEL_WARNING, "5/32 in",
		    "1/8 in [3.2 mm] or smaller" },
		/* 3/8 in edge: 5/16 in at the most. */
		{ "lap leg 1/16 in under the edge", LEG("lap, 2F, leg 5/16 in",
		    "A36 plate", "3/8 in"), SILENT },
		{ "lap leg as the edge", LEG("lap, 2F, leg 3/8 in", "A36 plate", "3/8 in"),
		    FINDING_LEG_OVER_LAP_EDGE, 15, LEVEL_WARNING, "5/16 in", "5/16 in" },
		{ "lap of 3/16 in may take all its edge", LEG("lap, 2F, leg 3/16 in",
		    "A36 plate", "3/16 in"), SILENT },
		/* Table 7.7: over 1/4 to 1/2 in, 3/16 in. */
		{ "least leg of 3/8 in plate", LEG("tee, 2F, leg 3/16 in", "A36 plate",
		    "3/8 in"), SILENT },
		{ "below it", LEG("tee, 2F, leg 1/8 in", "A36 plate", "3/8 in"),
		    FINDING_LEG_UNDER_LEAST, 15, LEVEL_WARNING, "less than the customary "
		    "3/16 in", "3/16 in [4.8 mm] or larger" },
		/* The leg at the edge goes by the edge, the shorter one by the least leg, the
		 * longer one by the thinner part. */
		{ "two legs, the long one off the edge", LEG("lap, 2F, leg 5/16 x 3/8 in",
		    "A36 plate", "3/8 in"), SILENT },
		{ "two legs, the long one at the edge", LEG("lap, 2F, leg 3/8 x 5/16 in",
		    "A36 plate", "3/8 in"), FINDING_LEG_OVER_LAP_EDGE, 15, LEVEL_WARNING,
		    "5/16 in", "5/16 in" },
		{ "two legs, one below the least", LEG("tee, 2F, leg 1/4 x 1/8 in",
		    "A36 plate", "3/8 in"), FINDING_LEG_UNDER_LEAST, 15, LEVEL_WARNING,
		    "1/8 in", "3/16 in" },
		{ "two legs, one over the thinner part", LEG("tee, 2F, leg 3/16 x 5/16 in, "
		    "A36 plate 1/4 in, A36 plate 3/8 in", "A36 plate", "1/4 in"),
		    FINDING_LEG_OVER_THINNER, 15, LEVEL_WARNING, "5/16 in", "1/4 in" },
		{ "1/4 in is in the band of 1/8 in", LEG("tee, 2F, leg 1/8 in",
		    "A36 plate", "1/4 in"), SILENT },
		{ "the thinner part governs cored wire", LEG("tee, 2F, leg 1/8 in, "
		    "A36 plate 1/4 in, A36 plate 3/4 in", "A36 plate", "1/4 in"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* Rods that are not low-hydrogen go by the thicker part: 3/4 in asks 1/4 in. */
static void leg_of_other_rods(void **state)
{
	static const struct rule_case cases[] = {
		{ "E6010", SHEET("drill", FACT("Process", "SMAW") FACT("Joint", "tee")
		    FACT("Material", "A36 plate") FACT("Thickness", "1/4 in")
		    FACT("Position", "2F") FACT("Filler", "E6010, 1/8 in"),
		    "## Welds\n\n- **A:** tee, 2F, leg 3/16 in, A36 plate 1/4 in, "
		    "A36 plate 3/4 in\n"), FINDING_LEG_UNDER_LEAST, 14, LEVEL_WARNING,
		    "1/4 in", "larger" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* The block opens at line 15, Acceptance's line stands at 23 or so. */
#define DRAWN(block, acceptance) WIRE("tee", "A36 plate", "3/8 in", "2F", \
	"## Drawing\n\n```joint\njoint: tee\n" block "```\n\n## Acceptance\n\n" acceptance)

static void said_twice(void **state)
{
	static const struct rule_case cases[] = {
		{ "leg twice, alike", DRAWN("leg: 5/16 in\n",
		    "- **Leg size:** 5/16 in, +1/16 -0 in\n"), SILENT },
		{ "leg twice, different", DRAWN("leg: 5/16 in\n",
		    "- **Leg size:** 1/4 in, +1/16 -0 in\n"), FINDING_SIZE_SAID_TWICE, 22,
		    LEVEL_ERROR, "1/4 in [6.4 mm], and the drawing says 5/16 in", "same" },
		{ "the weld's line and Acceptance agree: told of the drawing elsewhere",
		    DRAWN("leg: 5/16 in\n", "- **Leg size:** 1/4 in\n")
		    "\n## Welds\n\n- **A:** tee, 2F, leg 1/4 in, A36 plate 3/8 in\n",
		    SILENT },
		{ "two legs twice, alike", DRAWN("leg: 1/4 x 5/16 in\n",
		    "- **Leg size:** 1/4 x 5/16 in, +1/16 -0 in\n"), SILENT },
		{ "two legs, changed over", DRAWN("leg: 1/4 x 5/16 in\n",
		    "- **Leg size:** 5/16 x 1/4 in\n"), FINDING_SIZE_SAID_TWICE, 22, LEVEL_ERROR,
		    "drawing says 1/4 in [6.4 mm] x 5/16 in", "same" },
		{ "no leg in the drawing", DRAWN("gap: 0 in\n",
		    "- **Leg size:** 1/4 in\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* The piece stands at line 15. */
#define PIECES(piece) WIRE("tee", "A36 plate", "3/8 in", "2F", "## Pieces\n\n" piece)

static void pieces(void **state)
{
	static const struct rule_case cases[] = {
		{ "no piece has the thickness", PIECES("- web: 1 of 1/4 x 3 x 8 in A36 "
		    "plate, stock\n"), FINDING_PIECES_DISAGREE, 15, LEVEL_ERROR,
		    "3/8 in [9.5 mm], but no piece", "same" },
		{ "one has it", PIECES("- web: 1 of 1/4 x 3 x 8 in A36 plate, stock\n"
		    "- base: 1 of 3/8 x 3 x 8 in A36 plate, stock\n"), SILENT },
		{ "pieces of another grade", PIECES("- web: 1 of 3/8 x 3 x 8 in A572 plate, "
		    "stock\n"), FINDING_PIECES_DISAGREE, 15, LEVEL_WARNING,
		    "A36 plate, but no piece is: web is A572 plate", "same" },
		{ "one piece of the grade", PIECES("- web: 1 of 3/8 x 3 x 8 in A572 plate, "
		    "stock\n- base: 1 of 3/8 x 3 x 8 in A36 flat bar, stock\n"), SILENT },
		{ "a piece of steel may be of the grade", PIECES("- web: 1 of 3/8 x 3 x 8 in "
		    "steel plate, stock\n"), SILENT },
		{ "pieces of another metal", PIECES("- web: 1 of 3/8 x 3 x 8 in 304L plate, "
		    "stock\n"), FINDING_PIECES_DISAGREE, 15, LEVEL_ERROR,
		    "A36 plate, but no piece is: web is 304L plate", "same" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define BLANK(pieces, t) SHEET("drill", FACT("Material", "A36 plate") \
	FACT("Thickness", "1/4 in"), "## Pieces\n\n" pieces "\n## Drawing\n\n```plate\n" \
	"length: 8 in\nwidth: 6 in\nthickness: " t "\n```\n")

static void blanks(void **state)
{
	static const struct rule_case cases[] = {
		{ "as thick as the fact", BLANK("- blank: 1 of 3/8 x 6 x 8 in A36 plate, "
		    "stock\n", "1/4 in"), SILENT },
		{ "as thick as a piece", BLANK("- blank: 1 of 3/8 x 6 x 8 in A36 plate, "
		    "stock\n", "3/8 in"), SILENT },
		{ "as neither", BLANK("- blank: 1 of 3/8 x 6 x 8 in A36 plate, stock\n",
		    "5/8 in"), FINDING_PIECES_DISAGREE, 14, LEVEL_WARNING,
		    "5/8 in [15.9 mm], but no piece", "same" },
		{ "without pieces nothing is said", BLANK("", "5/8 in"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define COUPON(length) SHEET("coupon", FACT("Process", "FCAW-G") FACT("Joint", "tee") \
	FACT("Material", "A36 plate") FACT("Thickness", "3/8 in") FACT("Position", "2F") \
	FACT("Filler", "E71T-1, 0.045 in") FACT("Gas", "75/25 argon/CO2 35 cfh"), \
	"## Welds\n\n- **A:** tee, 2F, leg 5/16 in, A36 plate 3/8 in, " length " long\n\n" \
	"## Pieces\n\n- web: 2 of 3/8 x 3 x 8 in A36 plate, stock\n")

static void length(void **state)
{
	static const struct rule_case cases[] = {
		/* The strip runs out 1/2 in at both ends. */
		{ "a strip is longer than the weld", COUPON("9 in") "- backing strip: 1 of 1/4 x "
		    "1 x 9 in A36 plate, sawn\n", FINDING_PIECES_DISAGREE, 15, LEVEL_ERROR,
		    "9 in", "same" },
		{ "as long as the piece", COUPON("8 in"), SILENT },
		{ "longer", COUPON("8-1/4 in"), FINDING_PIECES_DISAGREE, 15, LEVEL_ERROR,
		    "8-1/4 in", "same" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define GROOVE(title, backing, drawing, piece) "# SM-90: " title "\n\n" \
	FACT("Kind", "drill") FACT("Hours", "2") FACT("Process", "FCAW-G") \
	FACT("Joint", "single-V") FACT("Material", "A36 plate") \
	FACT("Thickness", "3/8 in") FACT("Position", "1G") \
	FACT("Filler", "E71T-1, 0.045 in") FACT("Gas", "75/25 argon/CO2 35 cfh") \
	FACT("Backing", backing) "\n## Drawing\n\n```joint\njoint: single-V\n" drawing \
	"```\n\n## Pieces\n\n- plate: 2 of 3/8 x 3 x 8 in A36 plate, stock\n" piece

static void backing(void **state)
{
	static const struct rule_case cases[] = {
		{ "open root on a strip", GROOVE("Open root", "steel strip 1/4 x 1 in", "",
		    ""), FINDING_BACKING_DISAGREES, 12, LEVEL_ERROR, "title", "same" },
		{ "a keyhole over a strip", GROOVE("V groove", "steel strip 1/4 x 1 in", "",
		    "\n## Procedure\n\n1. Keep the keyhole open.\n"),
		    FINDING_BACKING_DISAGREES, 12, LEVEL_ERROR, "keyhole", "same" },
		{ "a keyhole in an open root", GROOVE("V groove", "none", "",
		    "\n## Procedure\n\n1. Keep the keyhole open.\n"), SILENT },
		{ "none, but drawn", GROOVE("V groove", "none", "backing: 1/4 x 1 in\n",
		    ""), FINDING_BACKING_DISAGREES, 12, LEVEL_ERROR, "drawing", "same" },
		{ "none, but cut", GROOVE("V groove", "none", "",
		    "- backing strip: 1 of 1/4 x 1 x 9 in A36 plate, stock\n"),
		    FINDING_BACKING_DISAGREES, 12, LEVEL_ERROR, "strip is cut", "same" },
		{ "open root, none", GROOVE("Open root", "none", "", ""), SILENT },
		{ "strip", GROOVE("V groove", "steel strip 1/4 x 1 in",
		    "backing: 1/4 x 1 in\n", ""), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define BUTT(t, block) WIRE("single-V", "A36 plate", t, "1G", \
	"## Drawing\n\n```joint\nangle: 60 deg\n" block "```\n")
#define LAPPED(block) WIRE("lap", "A36 plate", "3/8 in", "2F", \
	"## Drawing\n\n```joint\n" block "```\n")

/* Sizes that cannot be meant, and the last ones that may be. */
static void drawn(void **state)
{
	static const struct rule_case cases[] = {
		{ "cap of 3/4 in on 1/4 in", BUTT("1/4 in", "reinforcement: 3/4 in\n"),
		    FINDING_CAP_OVER_THICKNESS, 15, LEVEL_WARNING, "3/4 in [19.1 mm], more than "
		    "the thickness, 1/4 in", "slip" },
		{ "cap as high as the plate", BUTT("1/4 in", "reinforcement: 1/4 in\n"), SILENT },
		{ "1/8 in is never too high", BUTT("1/16 in", "reinforcement: 1/8 in\n"), SILENT },
		{ "opening of 9/16 in between 1/4 in", BUTT("1/4 in", "gap: 9/16 in\n"),
		    FINDING_OPENING_OVER_THICKNESS, 15, LEVEL_WARNING, "9/16 in [14.3 mm], more "
		    "than twice the thickness, 1/4 in", "slip" },
		{ "opening of twice the thickness", BUTT("1/4 in", "gap: 1/2 in\n"), SILENT },
		{ "1/4 in is never too wide", BUTT("1/16 in", "gap: 1/4 in\n"), SILENT },
		{ "1/2 in over a backing", BUTT("3/16 in", "gap: 1/2 in\n"
		    "backing: 1/4 x 1-1/2 in\n"), SILENT },
		{ "more over a backing", BUTT("3/16 in", "gap: 5/8 in\n"
		    "backing: 1/4 x 1-1/2 in\n"), FINDING_OPENING_OVER_THICKNESS, 15,
		    LEVEL_WARNING, "5/8 in", "slip" },
		{ "overlap under the leg", LAPPED("leg: 1/4 in\noverlap: 3/16 in\n"),
		    FINDING_OVERLAP_UNDER_LEG, 15, LEVEL_WARNING, "3/16 in [4.8 mm], less than "
		    "the leg, 1/4 in", "slip" },
		{ "overlap as the leg", LAPPED("leg: 1/4 in\noverlap: 1/4 in\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void words(void **state)
{
	(void)state;
	assert_true(says(STR("Local ventilation on"), "ventilat"));
	assert_true(says(STR("FUME"), "fume"));
	assert_false(says(STR("perfumed"), "fume"));
	assert_false(says(STR(""), "fume"));
}

/* A member that is no piece is one finding, on however many lines it stands. */
static void members_without_a_piece(void **state)
{
	struct bench t = rule_bench(SHEET("project", FACT("Material", "A36 plate"),
	    "## Pieces\n\n- base: 1 of 1 x 10 x 10 in A36 plate, stock\n"
	    "- gusse: 2 of 1 x 1 x 1 in A36 plate, stock\n\n## Drawing\n\n```plate\n"
	    "member: base; 10 x 10 x 1 in; at 0, 0, 0 in\n"
	    "member: gusset; 1 x 1 x 1 in; at 0, 0, 1 in\n"
	    "member: gusset; 1 x 1 x 1 in; at 5, 0, 1 in\n"
	    "member: rib; 1 x 1 x 1 in; at 5, 5, 1 in\n```\n"));
	size_t n = 0, listed = 0;

	(void)state;
	for (size_t i = 0; i < t.f->n; i++)
		if (t.f->v[i].name == FINDING_WELDMENT_DISAGREES) {
			n++;
			listed += t.f->v[i].nrelated;
			assert_true(str_has(t.f->v[i].message, listed && n == 1 ? "gusset" : "rib"));
		}
	assert_int_equal(n, 2);
	assert_int_equal(listed, 1);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(members_without_a_piece),
		cmocka_unit_test(position), cmocka_unit_test(leg),
		cmocka_unit_test(leg_of_other_rods), cmocka_unit_test(said_twice),
		cmocka_unit_test(pieces), cmocka_unit_test(blanks),
		cmocka_unit_test(length),
		cmocka_unit_test(backing), cmocka_unit_test(drawn), cmocka_unit_test(words),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
