/* Tests of welds: what they are taken from, how many, over which plunger, and what a
 * qualification test names and claims. */
#include "rule_bench.h"

#include "check/rule_test.h"

/* Lines: 5 process, 6 joint, 7 material, 8 thickness, 9 position, 10 filler, 11 gas,
 * 12 blank, 13 heading, 15 the first line under Acceptance. */
#define CORED(kind, joint, material, thickness, position, more, rest) SHEET(kind, \
	FACT("Process", "FCAW-G") FACT("Joint", joint) FACT("Material", material) \
	FACT("Thickness", thickness) FACT("Position", position) \
	FACT("Filler", "E71T-1, 0.045 in") FACT("Gas", "75/25 argon/CO2 35 cfh") more, rest)
#define TESTED(joint, thickness, position, lines) CORED("coupon", joint, "A36 plate", \
	thickness, position, "", "## Acceptance\n\n" lines)
#define PIPE(kind, nps, position, lines) CORED(kind, "pipe butt", "A53 pipe", nps, \
	position, "", "## Acceptance\n\n" lines)
#define RING "NPS 6 schedule 40"

static void possible(void **state)
{
	static const struct rule_case cases[] = {
		{ "bend of a tee", TESTED("tee", "3/8 in", "2F",
		    "- **Root bend:** 2, D1.1-2020\n"), FINDING_TEST_IMPOSSIBLE, 15,
		    LEVEL_ERROR, "Root bend is taken from a groove weld, and the tee in 2F "
		    "is none", "fillet break" },
		{ "fillet break of a groove", TESTED("single-V", "3/8 in", "1G",
		    "- **Fillet break:** 1\n"), FINDING_TEST_IMPOSSIBLE, 15, LEVEL_ERROR,
		    "a fillet", "bend" },
		{ "tensile of a lap", TESTED("lap", "3/8 in", "2F", "- **Tensile:** 1\n"),
		    FINDING_TEST_IMPOSSIBLE, 15, LEVEL_ERROR, "Tensile", "shear test" },
		{ "nick-break of a butt", TESTED("square butt", "3/8 in", "1G",
		    "- **Nick-break:** 2\n"), SILENT },
		{ "macro of anything", TESTED("tee", "3/8 in", "2F",
		    "- **Macroetch:** 1\n"), SILENT },
		{ "the letter decides", TESTED("tee, single-V", "3/8 in", "flat",
		    "- **Root bend:** 2 of A, D1.1-2020\n"), FINDING_TEST_IMPOSSIBLE, 15,
		    LEVEL_ERROR, "weld A", "name the weld" },
		{ "a letter that no weld has", TESTED("tee, lap", "3/8 in", "2F",
		    "- **Macro:** 1 of A, 1 of C\n"), FINDING_TEST_IMPOSSIBLE, 15, LEVEL_ERROR,
		    "weld C, and there is none", "from A to B" },
		{ "the last letter", TESTED("tee, lap", "3/8 in", "2F",
		    "- **Macro:** 1 of A, 1 of B\n"), SILENT },
		{ "without a letter any weld that suits", TESTED("tee, single-V", "3/8 in",
		    "flat", "- **Root bend:** 2, D1.1-2020\n"), SILENT },
		{ "a pad alone can be bent", TESTED("surfacing", "3/4 in", "flat",
		    "- **Side bend:** 2, shop limits\n"), SILENT },
		{ "beside a tee nobody means the pad", TESTED("surfacing, tee", "3/4 in",
		    "flat", "- **Side bend:** 2, shop limits\n"),
		    FINDING_TEST_IMPOSSIBLE, 15, LEVEL_ERROR, "weld B", "name the weld" },
		{ "unless it is named", TESTED("surfacing, tee", "3/4 in", "flat",
		    "- **Side bend:** 2 of A, shop limits\n"), SILENT },
		{ "a coupon from the shelf", SHEET("coupon", FACT("Material", "A36 plate"),
		    "## Drawing\n\n```joint\njoint: tee\n```\n\n## Acceptance\n\n"
		    "- **Face bend:** 1\n"), FINDING_TEST_IMPOSSIBLE, 15, LEVEL_ERROR,
		    "the tee", "fillet break" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* The joint block opens at line 18. */
#define BROKEN(block) TESTED("tee", "3/8 in", "2F", \
	"- **Fillet break:** 1, D1.1-2020\n\n## Drawing\n\n```joint\njoint: tee\n" \
	"leg: 5/16 in\n" block "```\n")

static void fillet_break(void **state)
{
	static const struct rule_case cases[] = {
		{ "one side with a restart", BROKEN("sides: one\nrestart: near the middle\n"),
		    SILENT },
		{ "both sides", BROKEN("sides: both\nrestart: near the middle\n"),
		    FINDING_BREAK_OF_BOTH_SIDES, 15, LEVEL_ERROR, "one side", "sides: one" },
		{ "no restart", BROKEN("sides: one\n"), FINDING_NO_RESTART_SHOWN, 19,
		    LEVEL_WARNING, "stop and restart", "restart:" },
		{ "no code asks for one", TESTED("tee", "3/8 in", "2F",
		    "- **Fillet break:** 1\n\n## Drawing\n\n```joint\njoint: tee\n"
		    "leg: 5/16 in\n```\n"), SILENT },
		{ "a line speaks of a restart", TESTED("tee", "3/8 in", "2F",
		    "- **Restart:** no hump\n\n## Drawing\n\n```joint\njoint: tee\n"
		    "leg: 5/16 in\n```\n"), FINDING_NO_RESTART_SHOWN, 19, LEVEL_WARNING,
		    "Restart", "restart:" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define SHORT(thickness, test) SHEET("coupon", FACT("Process", "GMAW-S") \
	FACT("Joint", "single-V") FACT("Material", "A36 plate") \
	FACT("Thickness", thickness) FACT("Position", "1G") \
	FACT("Filler", "ER70S-6, 0.035 in") FACT("Gas", "75/25 argon/CO2 25 cfh"), \
	"## Acceptance\n\n" test)

static void short_circuit(void **state)
{
	static const struct rule_case cases[] = {
		{ "5/16 in bent", SHORT("5/16 in", "- **Root bend:** 1\n"),
		    FINDING_SHORT_CIRCUIT_BENT, 15, LEVEL_WARNING, "5/16 in", "1/4 in" },
		{ "1/4 in bent", SHORT("1/4 in", "- **Root bend:** 1\n"), SILENT },
		{ "3/8 in nicked", SHORT("3/8 in", "- **Nick-break:** 1\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void used_coupon(void **state)
{
	static const struct rule_case cases[] = {
		{ "second use bent", TESTED("single-V", "3/8 in", "1G",
		    "- **Root bend:** 1\n\n## Pieces\n\n- plate: 2 of 3/8 x 3 x 8 in A36 "
		    "plate, second use\n"), FINDING_USED_COUPON_TESTED, 19, LEVEL_WARNING,
		    "Root bend", "fresh" },
		{ "second use of a drill", TESTED("single-V", "3/8 in", "1G",
		    "- **Visual:** shop limits\n\n## Pieces\n\n- plate: 2 of 3/8 x 3 x 8 in "
		    "A36 plate, second use\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void sort_of_bend(void **state)
{
	static const struct rule_case cases[] = {
		{ "side bend of 5/16 in wall", PIPE("coupon", "0.312 in", "2G",
		    "- **Side bend:** 2, ASME IX-2023\n"), FINDING_WRONG_SORT_OF_BEND, 15,
		    LEVEL_ERROR, "5/16 in", "face and a root" },
		{ "side bend at 3/8 in", TESTED("single-V", "3/8 in", "1G",
		    "- **Side bend:** 2, D1.1-2020\n"), SILENT },
		{ "face and root at 3/8 in", TESTED("single-V", "3/8 in", "1G",
		    "- **Face bend:** 1, D1.1-2020\n- **Root bend:** 1, D1.1-2020\n"),
		    SILENT },
		{ "face and root of 1/2 in, structural: one finding", TESTED("single-V",
		    "1/2 in", "1G", "- **Face bend:** 1, D1.1-2020\n"
		    "- **Root bend:** 1, D1.1-2020\n"), FINDING_WRONG_SORT_OF_BEND, 15,
		    LEVEL_ERROR, "1/2 in", "side bends" },
		{ "face and root of 1/2 in, pressure", TESTED("single-V", "1/2 in", "1G",
		    "- **Face bend:** 1, ASME IX-2023\n"), SILENT },
		{ "face and root of 3/4 in, pressure", TESTED("single-V", "3/4 in", "1G",
		    "- **Face bend:** 1, ASME IX-2023\n"), FINDING_WRONG_SORT_OF_BEND, 15,
		    LEVEL_ERROR, "3/4 in", "side bends" },
		{ "1 in, structural, from memory", TESTED("single-V", "1 in", "1G",
		    "- **Face bend:** 1, D1.1-2020\n"), FINDING_WRONG_SORT_OF_BEND, 15,
		    LEVEL_WARNING, "1 in", "side bends" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define ASME "ASME IX-2023, plunger 1-1/8 in, die opening 1-13/16 in\n"

static void count(void **state)
{
	static const struct rule_case cases[] = {
		{ "5G with two and two", PIPE("practice test", RING, "5G up",
		    "- **Face bend:** 2, " ASME "- **Root bend:** 2, " ASME), SILENT },
		{ "5G with one and one", PIPE("practice test", RING, "5G up",
		    "- **Face bend:** 1, " ASME "- **Root bend:** 1, " ASME),
		    FINDING_TOO_FEW_BENDS, 15, LEVEL_ERROR, "1 face, 1 root and 0 side",
		    "2 face and 2 root bends" },
		{ "2G with one and one", PIPE("practice test", RING, "2G",
		    "- **Face bend:** 1, " ASME "- **Root bend:** 1, " ASME), SILENT },
		{ "the wrong sort is told once", PIPE("practice test",
		    "NPS 6 schedule 80", "6G up", "- **Face bend:** 2, D1.1-2020\n"
		    "- **Root bend:** 2, D1.1-2020\n"), FINDING_WRONG_SORT_OF_BEND, 15,
		    LEVEL_ERROR, "0.432 in", "side bends" },
		{ "a coupon may take fewer", PIPE("coupon", RING, "5G up",
		    "- **Root bend:** 2, " ASME), SILENT },
		{ "counts left out come from the table", PIPE("practice test", RING,
		    "5G up", "- **Root bend:** ASME IX-2023\n"), SILENT },
		{ "letters share a count out", PIPE("practice test", RING, "2G, 5G up",
		    "- **Face bend:** 3, one of A and two of B, " ASME
		    "- **Root bend:** 3, one of A and two of B, " ASME), SILENT },
		{ "letters the wrong way round", PIPE("practice test", RING, "2G, 5G up",
		    "- **Face bend:** 3, two of A and one of B, " ASME
		    "- **Root bend:** 3, two of A and one of B, " ASME),
		    FINDING_TOO_FEW_BENDS, 15, LEVEL_ERROR, "weld B", "2 face" },
		{ "6G wall over 3/8 in with four side bends", PIPE("practice test",
		    "NPS 6 schedule 80", "6G up", "- **Side bend:** 4, ASME IX-2023, plunger "
		    "1-1/2 in\n"), SILENT },
		{ "and with three", PIPE("practice test", "NPS 6 schedule 80", "6G up",
		    "- **Side bend:** 3, ASME IX-2023, plunger 1-1/2 in\n"),
		    FINDING_TOO_FEW_BENDS, 15, LEVEL_ERROR, "3 side", "4 side bends" },
		{ "plate, from memory", CORED("practice test", "single-V", "A36 plate",
		    "3/8 in", "1G", "", "## Acceptance\n\n- **Root bend:** 1, D1.1-2020\n"),
		    FINDING_TOO_FEW_BENDS, 15, LEVEL_WARNING, "0 face", "1 face" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* Two bends of 1-1/2 in, three cuts of 1/8 in, two discards of 1 in: 5-3/8 in. */
#define LONG(length) TESTED("single-V", "3/8 in", "1G", \
	"- **Face bend:** 1, D1.1-2020\n- **Root bend:** 1, D1.1-2020\n\n" \
	"## Drawing\n\n```joint\njoint: single-V\nlength: " length "\n```\n")

static void strips(void **state)
{
	static const struct rule_case cases[] = {
		{ "as long as it takes", LONG("5-3/8 in"), SILENT },
		{ "shorter", LONG("5-1/4 in"), FINDING_STRIPS_DO_NOT_FIT, 6, LEVEL_ERROR,
		    "2 specimens of the single-V in 1G: 5-3/8 in", "longer" },
		/* NPS 1: 1.315 in, 4.13 in round; four strips of 1 in take 4-1/2 in. */
		{ "round a small pipe", PIPE("coupon", "NPS 1 schedule 80", "5G up",
		    "- **Face bend:** 2\n- **Root bend:** 2\n"), FINDING_STRIPS_DO_NOT_FIT,
		    6, LEVEL_ERROR, "4-1/2 in", "second joint" },
		{ "round NPS 2, 7.46 in", PIPE("coupon", "NPS 2 schedule 80", "5G up",
		    "- **Face bend:** 2\n- **Root bend:** 2\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define BENT(thickness, rest) TESTED("single-V", thickness, "1G", \
	"- **Root bend:** 1, " rest "\n")

static void plunger(void **state)
{
	static const struct rule_case cases[] = {
		/* 4 x 0.280 = 1.12 in: 100 x 0.280 / 1.780 = 15.7 percent. */
		{ "1-1/2 in for 0.280 in", PIPE("coupon", RING, "2G",
		    "- **Root bend:** 2, ASME IX-2023, plunger 1-1/2 in\n"),
		    FINDING_WRONG_PLUNGER, 15, LEVEL_ERROR, "0.280 in [7.11 mm] specimen 15.7 %, less than the 20 %",
		    "1-1/8 in" },
		{ "1-1/8 in for 0.280 in", PIPE("coupon", RING, "2G",
		    "- **Root bend:** 2, ASME IX-2023, plunger 1-1/8 in\n"), SILENT },
		{ "the structural code bends 1/4 in over 1-1/2 in", BENT("1/4 in",
		    "D1.1-2020, plunger 1-1/2 in"), SILENT },
		{ "and not over 1-1/8 in", BENT("3/8 in", "D1.1-2020, plunger 1-1/8 in"),
		    FINDING_WRONG_PLUNGER, 15, LEVEL_ERROR, "25 %, more", "1-1/2 in" },
		{ "side bend of 1 in plate over 1-1/2 in", TESTED("single-V", "1 in", "1G",
		    "- **Side bend:** 2, D1.1-2020, plunger 1-1/2 in\n"), SILENT },
		{ "under the pressure code too", TESTED("single-V", "1 in", "1G",
		    "- **Side bend:** 2, ASME IX-2023, plunger 1-1/2 in\n"), SILENT },
		/* 1.5 in and 1/32 in beyond it are the same plunger, 1/16 in is not. */
		{ "1/32 in beyond 4 t", BENT("3/8 in", "ASME IX-2023, plunger 1-17/32 in"),
		    FINDING_PLUNGER_NOT_OWNED, 15, LEVEL_ERROR, "1-17/32 in",
		    "write plunger 1-1/2 in [38.1 mm], which the shop owns" },
		{ "1/16 in beyond 4 t", BENT("3/8 in", "ASME IX-2023, plunger 1-9/16 in"),
		    FINDING_WRONG_PLUNGER, 15, LEVEL_ERROR, "less than the 20 %",
		    "1-1/2 in" },
		{ "one cause for face and root", TESTED("single-V", "3/8 in", "1G",
		    "- **Face bend:** 1, D1.1-2020, plunger 1/2 in\n"
		    "- **Root bend:** 1, D1.1-2020, plunger 1/2 in\n"),
		    FINDING_WRONG_PLUNGER, 15, LEVEL_ERROR, "more", "1-1/2 in" },
		{ "no code: only the strain", BENT("1/4 in", "plunger 1-1/2 in"),
		    FINDING_STRAIN_NOT_JUDGED, 15, LEVEL_NOTE, "14.3 %", "strain 14.3 %" },
		{ "the line gives the strain", BENT("1/4 in",
		    "plunger 1-1/2 in, strain 14.3 %"), SILENT },
		{ "the line gives another", BENT("1/4 in",
		    "plunger 1-1/2 in, strain 20 %"), FINDING_STRAIN_NOT_JUDGED, 15,
		    LEVEL_NOTE, "not what the line says", "14.3 %" },
		{ "die as the code gives", BENT("3/8 in",
		    "ASME IX-2023, plunger 1-1/2 in, die opening 2-7/16 in"), SILENT },
		{ "die too wide", BENT("3/8 in",
		    "ASME IX-2023, plunger 1-1/2 in, die opening 2-1/2 in"),
		    FINDING_DIE_TOO_WIDE, 15, LEVEL_WARNING, "2-1/2 in", "2-3/8 in" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define BEND_SHEET(id, plunger) "# " id ": Bent\n\n- **Kind:** coupon\n- **Hours:** 2\n" \
	"- **Process:** FCAW-G\n- **Joint:** single-V\n- **Material:** A36 plate\n" \
	"- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Acceptance\n\n" \
	"- **Face bend:** 1, ASME IX-2023, plunger " plunger " in\n\n"

/* Many bends may want it: one order, one finding. */
static void one_plunger_is_one_finding(void **state)
{
	static const char sheets[] = "# SM-91: First\n\n- **Kind:** coupon\n- **Hours:** 2\n"
	    "- **Process:** FCAW-G\n- **Joint:** single-V\n- **Material:** A36 plate\n"
	    "- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Acceptance\n\n"
	    "- **Face bend:** 1, ASME IX-2023, plunger 1-17/32 in\n"
	    "- **Root bend:** 1, ASME IX-2023, plunger 1-17/32 in\n\n"
	    "# SM-92: Second\n\n- **Kind:** coupon\n- **Hours:** 2\n"
	    "- **Process:** FCAW-G\n- **Joint:** single-V\n- **Material:** A36 plate\n"
	    "- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Acceptance\n\n"
	    "- **Face bend:** 1, ASME IX-2023, plunger 1-17/32 in\n";
	struct bench t = rule_bench(sheets);
	size_t n = 0;

	(void)state;
	for (size_t i = 0; i < t.f->n; i++)
		if (t.f->v[i].name == FINDING_PLUNGER_NOT_OWNED) {
			n++;
			expect_str(t.f->v[i].assignment, "SM-91");
			assert_int_equal(t.f->v[i].nrelated, 1);
			expect_str(t.f->v[i].related[0].assignment, "SM-92");
			assert_int_equal(t.f->v[i].scope, SCOPE_ASSIGNMENTS);
		}
	if (n != 1)
		print_findings(&t);
	assert_int_equal(n, 1);
	bench_free(&t);
}

/* Two sheets want 1-1/2 in, the third 1-17/32 in. */
static void plungers_in_a_wrong_unit_are_one_finding(void **state)
{
	static const struct { const char *diameters; size_t n, at_shop, related; } rows[] = {
		{ "1/2, 7/8, 1-1/8, 1-1/2 mm", 1, 1, 3 },
		{ "1/2 in", 1, 1, 3 },
		{ "1/2, 7/8, 1-17/32 in", 1, 0, 1 },
		{ "1/2, 7/8, 1-1/2 in", 1, 0, 0 },
		{ "1-1/2, 1-17/32 in", 0, 0, 0 },
	};
	static const char sheets[] =
	    BEND_SHEET("SM-91", "1-1/2") BEND_SHEET("SM-92", "1-1/2")
	    BEND_SHEET("SM-93", "1-17/32");

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char shop[200];
		struct file_text files[] = { { "assignments/one.md", sheets },
			{ "shop.md", shop } };
		struct bench t;
		size_t n = 0;

		snprintf(shop, sizeof shop, "# Shop\n\n## Plungers\n\n- **Diameters:** %s\n",
		    rows[i].diameters);
		t = bench_bind(files, 2);
		t.f = findings_new(t.arena);
		check_program(t.arena, t.m, t.f);
		for (size_t k = 0; k < t.f->n; k++) {
			const struct finding *d = &t.f->v[k];

			if (d->name != FINDING_PLUNGER_NOT_OWNED)
				continue;
			n++;
			assert_int_equal(d->pos.file, rows[i].at_shop);
			assert_int_equal(d->nrelated, rows[i].related);
			if (d->nrelated)
				expect_str(d->related[d->nrelated - 1].assignment,
				    rows[i].at_shop ? "SM-93" : "SM-92");
		}
		if (n != rows[i].n)
			print_findings(&t);
		assert_int_equal(n, rows[i].n);
		bench_free(&t);
	}
}

#define ALUMINUM(alloy, filler, rest) SHEET("coupon", FACT("Process", "GTAW") \
	FACT("Joint", "square butt") FACT("Material", alloy) FACT("Thickness", "1/8 in") \
	FACT("Position", "1G") FACT("Filler", filler) FACT("Gas", "argon 20 cfh"), \
	"## Acceptance\n\n- **Root bend:** 2, ASME IX-2023, plunger 1/2 in" rest "\n")

static void plunger_of_aluminum(void **state)
{
	static const struct rule_case cases[] = {
		/* 16.5 x 1/8 = 2-1/16 in, 5.7 percent. */
		{ "6061 cracks over 4 t", ALUMINUM("6061-T6 plate", "ER5356, 3/32 in", ""),
		    FINDING_WRONG_PLUNGER, 15, LEVEL_ERROR, "20 %, more than the 5.7 %",
		    "wrap-around" },
		{ "so does 4043 filler", ALUMINUM("5052-H32 plate", "ER4043, 3/32 in", ""),
		    FINDING_WRONG_PLUNGER, 15, LEVEL_ERROR, "5.7 %", "2-1/16 in" },
		{ "5052 with 5356 takes 4 t", ALUMINUM("5052-H32 plate", "ER5356, 3/32 in",
		    ""), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* Lines: 12 procedure, 13 witness, 14 range; Acceptance's first line 18. */
#define QUALIFIED(thickness, position, procedure, witness, range, visual) \
	CORED("qualification test", "single-V", "A36 plate", thickness, position, \
	procedure witness range, "## Acceptance\n\n" visual \
	"- **Side bend:** 4, D1.1-2020, plunger 1-1/2 in\n")
#define WPS FACT("Procedure", "OVC-9")
#define WITNESS FACT("Witness", "inspector")
#define VISUAL "- **Visual:** D1.1-2020 welder test\n"
#define RANGE(text) QUALIFIED("1/2 in", "3G up", WPS, WITNESS, FACT("Range", text), VISUAL)

static void record(void **state)
{
	static const struct rule_case cases[] = {
		{ "all there", RANGE("none"), SILENT },
		{ "no witness", QUALIFIED("1/2 in", "3G up", WPS, "", "", VISUAL),
		    FINDING_RECORD_INCOMPLETE, 1, LEVEL_ERROR, "names no witness",
		    "Witness" },
		{ "no procedure and no witness", QUALIFIED("1/2 in", "3G up", "", "", "",
		    VISUAL), FINDING_RECORD_INCOMPLETE, 1, LEVEL_ERROR,
		    "no procedure, no witness", "Procedure" },
		{ "no edition", CORED("qualification test", "single-V", "A36 plate",
		    "1/2 in", "3G up", WPS WITNESS, "## Acceptance\n\n"
		    "- **Side bend:** 2, D1.1\n"), FINDING_RECORD_INCOMPLETE, 17,
		    LEVEL_ERROR, "code with its edition", "D1.1-2020" },
		{ "limits of production", QUALIFIED("1/2 in", "3G up", WPS, WITNESS,
		    FACT("Range", "none"), "- **Visual:** D1.1-2020 static\n"),
		    FINDING_LIMITS_NOT_OF_TEST, 18, LEVEL_ERROR, "static", "welder test" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void range(void **state)
{
	static const struct rule_case cases[] = {
		{ "1/2 in gives 1 in", RANGE("plate 1/8 to 1 in"), SILENT },
		{ "1/2 in does not give 1-1/8 in", RANGE("plate 1/8 to 1-1/8 in"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "1-1/8 in [28.6 mm], and "
		    "this coupon gives 1 in", "thicker" },
		{ "nor no limit", RANGE("plate 1/8 in to unlimited"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "no limit", "thicker" },
		{ "in other words", RANGE("plate 1/8 in and over"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "no limit", "thicker" },
		{ "nor thinner than 1/8 in", RANGE("plate 1/16 to 1 in"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "1/16 in [1.6 mm], and this "
		    "coupon gives 1/8 in", "no thinner" },
		{ "to 1 in", RANGE("plate to 1 in"), SILENT },
		{ "to 1-1/16 in", RANGE("plate to 1-1/16 in"), FINDING_RANGE_CLAIMS_MORE,
		    14, LEVEL_ERROR, "1-1/16 in", "thicker" },
		{ "1 in gives no limit", QUALIFIED("1 in", "3G up", WPS, WITNESS,
		    FACT("Range", "plate 1/8 in to unlimited"), VISUAL), SILENT },
		{ "3G gives flat, horizontal, vertical", RANGE("1/8 to 1 in, grooves flat, "
		    "horizontal and vertical, fillets flat, horizontal and vertical"),
		    SILENT },
		{ "3G does not give overhead", RANGE("1/8 to 1 in, grooves flat and "
		    "overhead"), FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR,
		    "grooves overhead", "position" },
		{ "3G with 4G gives all", QUALIFIED("1/2 in", "3G up, 4G", WPS, WITNESS,
		    FACT("Range", "grooves and fillets in all positions"), VISUAL), SILENT },
		{ "backing gives no open root", CORED("qualification test", "single-V",
		    "A36 plate", "1/2 in", "3G up", WPS WITNESS FACT("Range",
		    "grooves without backing") FACT("Backing", "steel strip 1/4 x 1 in"),
		    "## Acceptance\n\n" VISUAL "- **Side bend:** 2, D1.1-2020\n"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_WARNING, "without backing",
		    "open root" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define PIPE_RANGE(nps, claim) CORED("qualification test", "pipe butt", "A106 pipe", nps, \
	"6G up", WPS WITNESS FACT("Range", claim), \
	"## Acceptance\n\n- **Visual:** ASME IX-2023 welder test\n")

/* QW-452.3 (2010): 2-7/8 in and over gives 2-7/8 in and over, 1 in to under 2-7/8 in
 * gives 1 in and over. */
static void range_of_diameters(void **state)
{
	static const struct rule_case cases[] = {
		{ "NPS 6 gives 2-7/8 in", PIPE_RANGE("NPS 6 schedule 80",
		    "pipe of 2-7/8 in outside diameter and over"), SILENT },
		{ "and no less", PIPE_RANGE("NPS 6 schedule 80",
		    "pipe of 2-3/4 in outside diameter and over"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "2-3/4 in", "smaller pipe" },
		{ "every diameter", PIPE_RANGE("NPS 6 schedule 80",
		    "pipe of all diameters"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "pipe of every diameter", "smaller pipe" },
		{ "NPS 2 gives 1 in", PIPE_RANGE("NPS 2 schedule 80",
		    "pipe of 1 in outside diameter and over"), SILENT },
		{ "and no less than 1 in", PIPE_RANGE("NPS 2 schedule 80",
		    "pipe of 3/4 in OD and over"), FINDING_RANGE_CLAIMS_MORE, 14,
		    LEVEL_ERROR, "pipe from 1 in", "smaller pipe" },
		{ "a size that is no diameter", PIPE_RANGE("NPS 6 schedule 80",
		    "wall from 1/16 in, pipe"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* NPS 6 schedule 80 has a wall of 0.432 in. Lines: 14 range, 18 and 19 the passes. */
#define PASSES(claim, root, fill) CORED("qualification test", "pipe butt", "A106 pipe", \
	"NPS 6 schedule 80", "6G up", WPS WITNESS FACT("Range", claim), "## Passes\n\n" \
	"- **Root:** GTAW, ER70S-2 3/32 in, DC- 90-130 A, argon 20 cfh" root "\n" \
	"- **Fill:** FCAW-G, E71T-1 0.045 in" fill "\n\n## Acceptance\n\n" \
	"- **Visual:** ASME IX-2023 welder test\n")

static void deposits(void **state)
{
	static const struct rule_case cases[] = {
		{ "0.125 and 0.307 in fill 0.432 in", PASSES("none", ", deposit 0.125 in",
		    ", deposit 0.307 in"), SILENT },
		{ "1/32 in under", PASSES("none", ", deposit 0.125 in",
		    ", deposit 0.276 in"), SILENT },
		{ "and more than that", PASSES("none", ", deposit 0.125 in",
		    ", deposit 0.275 in"), FINDING_DEPOSITS_DISAGREE, 18, LEVEL_WARNING,
		    "0.400 in [10.16 mm] of weld metal together", "correct a deposit" },
		{ "over the wall", PASSES("none", ", deposit 0.125 in",
		    ", deposit 0.339 in"), FINDING_DEPOSITS_DISAGREE, 18, LEVEL_WARNING,
		    "0.464 in", "correct a deposit" },
		{ "a pass that does not say", PASSES("none", ", deposit 0.125 in", ""),
		    SILENT },
		{ "one pass alone over the wall", PASSES("none", ", deposit 0.5 in", ""),
		    FINDING_DEPOSITS_DISAGREE, 18, LEVEL_WARNING, "1/2 in", "thickness" },
		/* QW-452.1(b): twice what each process leaves. */
		{ "twice the root", PASSES("GTAW to 1/4 in, FCAW-G to 0.614 in",
		    ", deposit 0.125 in", ", deposit 0.307 in"), SILENT },
		{ "more than twice the root", PASSES("GTAW to 9/32 in", ", deposit 0.125 in",
		    ", deposit 0.307 in"), FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR,
		    "9/32 in [7.1 mm] of GTAW, and its passes leave 1/8 in [3.2 mm], which "
		    "gives 1/4 in", "deposit more" },
		{ "by the filler, without limit", PASSES("E71T-1 unlimited",
		    ", deposit 0.125 in", ", deposit 0.307 in"),
		    FINDING_RANGE_CLAIMS_MORE, 14, LEVEL_ERROR, "no limit of E71T-1",
		    "claim less" },
		{ "untold deposit", PASSES("FCAW-G to 3/4 in", ", deposit 0.125 in", ""),
		    SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void counts_are_read(void **state)
{
	struct bench t = rule_bench(PIPE("coupon", RING, "2G, 5G up",
	    "- **Root bend:** 2 of B at 2G, 2 at 5G, D1.1-2020, plunger 1-1/2 in\n"
	    "- **Face bend:** four; 1/32 in deep\n"));
	struct test_lines l = test_lines_of(t.arena, &t.m->assignments[0]);

	(void)state;
	assert_int_equal(l.n, 2);
	assert_int_equal(l.v[0].n.of[1], 4);
	assert_true(l.v[0].n.lettered);
	expect_near(l.v[0].plunger_mm, 38.1);
	assert_int_equal(l.v[1].n.total, 4);
	assert_false(l.v[1].n.lettered);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(possible), cmocka_unit_test(fillet_break),
		cmocka_unit_test(short_circuit), cmocka_unit_test(used_coupon),
		cmocka_unit_test(sort_of_bend), cmocka_unit_test(count),
		cmocka_unit_test(strips), cmocka_unit_test(plunger),
		cmocka_unit_test(one_plunger_is_one_finding),
		cmocka_unit_test(plungers_in_a_wrong_unit_are_one_finding),
		cmocka_unit_test(plunger_of_aluminum), cmocka_unit_test(record),
		cmocka_unit_test(range), cmocka_unit_test(range_of_diameters),
		cmocka_unit_test(deposits),
		cmocka_unit_test(counts_are_read),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
