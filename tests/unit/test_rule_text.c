/* Running words against facts and drawing: only fixed wordings, and never a value that
 * some weld, pass or piece of the sheet has. */
#include "rule_bench.h"

/* Lines: 5 process, 6 joint, 7 material, 8 thickness, 9 position, 10 filler, 11 current,
 * 12 oven; the steps begin at line 28, Acceptance follows. */
#define TEXT(title, steps, rest) "# SM-90: " title "\n\n- **Kind:** coupon\n" \
	"- **Hours:** 2\n" FACT("Process", "SMAW") FACT("Joint", "tee, single-V") \
	FACT("Material", "A36 plate") FACT("Thickness", "3/8 in") \
	FACT("Position", "2F, 1G") FACT("Filler", "E6010, 1/8 in; E7018, 3/32 in") \
	FACT("Current", "DC+, 75-100 A; DC+, 75-105 A") FACT("Oven", "4 h out") \
	"\n## Welds\n\n- **A:** tee, 2F, leg 5/16 in, A36 plate 3/8 in, 8 in long\n" \
	"- **B:** single-V, 1G, A36 plate 3/8 in, 8 in long\n\n" \
	"## Drawing\n\n```joint B\njoint: single-V\ngap: 1/8 in ±1/32 in\n" \
	"land: 3/32 in\nbevel: 30 deg\n```\n\n## Procedure\n\n" steps "\n" rest
#define STEP(words) TEXT("Case", "1. " words "\n", "")
#define SAYS(words, what, message) { what, STEP(words), FINDING_TEXT_DISAGREES, 30, \
	LEVEL_WARNING, message, "make both say the same" }
#define QUIET(words, what) { what, STEP(words), SILENT }

static void sizes(void **state)
{
	static const struct rule_case cases[] = {
		QUIET("Make the leg 5/16 in [8 mm].", "the leg of the weld"),
		SAYS("Make the leg 3/8 in.", "another leg", "step 1 says a leg of 3/8 in "
		    "[9.5 mm], and the weld says 5/16 in"),
		SAYS("Lay a 1/4 in fillet.", "size before its noun", "a leg of 1/4 in"),
		QUIET("The first pass has a leg of 3/16 in.", "one pass is smaller"),
		SAYS("The first pass has a leg of 3/8 in.", "no pass is larger", "a leg"),
		QUIET("Measure both legs at 2, 4 and 6 in.", "places, not sizes"),
		QUIET("Cut the gussets with legs 2-3/4 in.", "legs of a part"),
		QUIET("If the leg is 1/4 in, add a pass.", "a condition"),
		QUIET("The leg is not 1/4 in.", "a denial"),
		QUIET("Read it with the 1/4 in fillet gauge.", "a gauge"),
		/* The drawing gives 1/8 +-1/32 in. */
		QUIET("Set a gap of 5/32 in.", "at the end of the tolerance"),
		SAYS("Set a gap of 11/64 in.", "past it", "an opening of 11/64 in"),
		SAYS("Set a 1/4 in root opening.", "before its noun", "an opening of 1/4"),
		QUIET("Bend it over the 1/2 in opening.", "of the V"),
		QUIET("Gap 1/8 in at most.", "a bound that leaves room"),
		SAYS("Gap 1/16 in at most.", "a bound that leaves none", "at most 1/16"),
		QUIET("Strip gap 1/16 in at most.", "of the backing"),
		QUIET("File the land to 3/32 in.", "the land"),
		SAYS("File the land to 1/16 in.", "another land", "a land of 1/16 in"),
		SAYS("Leave a root face of 1/8 in.", "by its other name", "a land of 1/8"),
		SAYS("Leave no land.", "none at all", "says no land"),
		QUIET("Leave the face 1/16 in low.", "a face is no root face"),
		QUIET("Cut both bevels at 30 deg.", "the bevel"),
		SAYS("Cut both bevels at 22-1/2 deg.", "another bevel", "a bevel of 22-1/2"),
		QUIET("The included angle is 60 deg.", "twice the bevel"),
		SAYS("The included angle is 45 deg.", "another angle", "of 45"),
		QUIET("Hold the rod at 45 deg.", "the angle of a rod"),
		QUIET("Take two pieces of 3/8 in plate.", "the thickness"),
		SAYS("Take two pieces of 1/2 in plate.", "another", "a thickness of 1/2"),
		QUIET("Run a bead on 1/2 in scrap plate.", "scrap"),
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void settings(void **state)
{
	static const struct rule_case cases[] = {
		QUIET("Set 105 A on scrap.", "at the end of a range"),
		SAYS("Set 106 A on scrap.", "past it", "a current of 106 A, and the "
		    "current says 75-100 A"),
		SAYS("Weld the root at 110 to 120 A.", "all of a range", "110-120 A"),
		QUIET("Weld the root at 90 to 120 A.", "a range that reaches in"),
		QUIET("Run one bead each at 60, 100 and 150 A.", "a comparison"),
		QUIET("Cap with the top bead 5 A lower.", "a step"),
		QUIET("Tack it, set at 130 A.", "a tack is run hotter, in its own words"),
		QUIET("Take 3/32 in E7018.", "a diameter"),
		SAYS("Take 1/8 in E7018.", "of the other class", "an electrode of 1/8 in"),
		QUIET("Root with E6010.", "a class"),
		SAYS("Root with E6011.", "another class", "E6011"),
		QUIET("E6011 is not for this joint, which is not E6011 work.", "denied"),
		QUIET("Weld A in 2F.", "a position"),
		SAYS("Weld A in 3F up.", "another position", "3F up, and Position says 2F"),
		QUIET("Tack it as in 3F.", "said in passing"),
		QUIET("Weld it by SMAW.", "a process"),
		SAYS("Weld it by GTAW.", "another process", "GTAW, and Process says SMAW"),
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void elsewhere(void **state)
{
	static const struct rule_case cases[] = {
		{ "title: position", TEXT("Tee fillet 4F", "1. Weld.\n", ""),
		    FINDING_TEXT_DISAGREES, 1, LEVEL_WARNING, "the title says 4F", "both" },
		{ "title: process in the words of the shop", TEXT("Cored-wire tee 2F",
		    "1. Weld.\n", ""), FINDING_TEXT_DISAGREES, 1, LEVEL_WARNING,
		    "the title says Cored-wire", "both" },
		{ "title agrees", TEXT("Stick tee 2F, 5/16 in leg", "1. Weld.\n", ""),
		    SILENT },
		{ "fillet gauge", TEXT("Case", "1. Weld.\n", "## Bring\n\n"
		    "- Fillet gauge 1/4 in, square\n"), FINDING_TEXT_DISAGREES, 34,
		    LEVEL_WARNING, "Bring says a leg of 1/4 in", "both" },
		{ "fillet gauge of the leg", TEXT("Case", "1. Weld.\n", "## Bring\n\n"
		    "- Fillet gauge 5/16 in, square\n"), SILENT },
		{ "Acceptance in free words", TEXT("Case", "1. Weld.\n", "## Acceptance\n\n"
		    "- **Fit-up:** opening 1/4 in, square\n"), FINDING_TEXT_DISAGREES, 34,
		    LEVEL_WARNING, "Acceptance says an opening of 1/4 in", "both" },
		{ "a step may say what Acceptance says wrongly: one finding", TEXT("Case",
		    "1. Set a gap of 1/4 in.\n", "## Acceptance\n\n"
		    "- **Fit-up:** opening 1/4 in, square\n"), FINDING_TEXT_DISAGREES, 34,
		    LEVEL_WARNING, "Acceptance says", "both" },
		{ "one slip in two steps is one finding", TEXT("Case",
		    "1. Make the leg 3/8 in.\n2. Read the leg: 3/8 in.\n", ""),
		    FINDING_TEXT_DISAGREES, 30, LEVEL_WARNING, "step 1", "both" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* 1/4 in is 6.35 mm, 350 degF 176.7 degC, 50 lb 22.7 kg. */
#define METRIC(words, what, message) { what, STEP(words), FINDING_METRIC_DISAGREES, 30, \
	LEVEL_WARNING, message, "correct the one that is wrong" }

static void metric(void **state)
{
	static const struct rule_case cases[] = {
		QUIET("Trim 1/4 in [6.4 mm] off.", "rounded up"),
		QUIET("Trim 1/4 in [6 mm] off.", "rounded to a whole"),
		METRIC("Trim 1/4 in [8 mm] off.", "more than rounding", "1/4 in is not 8 mm"),
		METRIC("Trim 1/4 in [9.5 mm] off.", "another size", "not 9.5 mm"),
		QUIET("Cut at 2, 4 and 6 in [51, 102 and 152 mm].", "a list"),
		QUIET("A sheet of 14 x 14 in [356 x 356 mm].", "a product"),
		QUIET("Open to 1/16 to 3/32 in [1.6 to 2.4 mm].", "a range"),
		METRIC("Open to 1/16 to 3/32 in [1.6 to 3.2 mm].", "its other end", "3.2"),
		QUIET("Heat it to 350 degF [177 degC].", "temperature"),
		METRIC("Heat it to 350 degF [150 degC].", "another", "150"),
		QUIET("It weighs 50 lb [23 kg].", "weight"),
		METRIC("It weighs 50 lb [33 kg].", "another weight", "33 kg"),
	};

	(void)state;
	EXPECT_CASES(cases);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(sizes), cmocka_unit_test(settings),
		cmocka_unit_test(elsewhere), cmocka_unit_test(metric),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
