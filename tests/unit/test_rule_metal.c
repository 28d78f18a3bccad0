/* Filler, current, gas, transfer, flame and fume: each rule fires, is silent, and lets
 * what is exactly at the limit pass. */
#include "rule_bench.h"

#include "check/rule_metal.h"

/* Lines: 5 process, 6 joint, 7 material, 8 thickness, 9 position, 10 filler,
 * 11 current, 12 oven. */
#define STICK(joint, position, filler, current) SHEET("drill", FACT("Process", "SMAW") \
	FACT("Joint", joint) FACT("Material", "A36 plate") FACT("Thickness", "3/8 in") \
	FACT("Position", position) FACT("Filler", filler) FACT("Current", current) \
	FACT("Oven", "4 h out"), "")

static void position_of_covered(void **state)
{
	static const struct rule_case cases[] = {
		{ "E7024 vertical", STICK("tee", "3F up", "E7024, 1/8 in", "AC, 130-180 A"),
		    FINDING_FILLER_OUT_OF_POSITION, 10, LEVEL_ERROR,
		    "E7024 is an electrode for flat and horizontal welds, but the tee in 3F "
		    "up", "E7018" },
		{ "its current is not told too", STICK("tee", "3F up", "E7024, 1/8 in",
		    "AC, 110-125 A"), FINDING_FILLER_OUT_OF_POSITION, 10, LEVEL_ERROR,
		    "E7024", "E7018" },
		{ "E6027 in a horizontal groove", STICK("single-V", "2G", "E6027, 5/32 in",
		    "AC, 155-245 A"), FINDING_FILLER_OUT_OF_POSITION, 10, LEVEL_ERROR,
		    "E6027", "all-position" },
		{ "E7024 in 2F, the last it may", STICK("tee", "2F", "E7024, 1/8 in",
		    "AC, 130-180 A"), SILENT },
		{ "E7018 overhead", STICK("tee", "4F", "E7018, 1/8 in", "DC+, 110-160 A"),
		    SILENT },
		{ "E10018 vertical", STICK("tee", "3F up", "E10018-D2, 1/8 in",
		    "DC+, 110-140 A"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define WIRE(process, position, filler, current, gas, transfer) SHEET("drill", \
	FACT("Process", process) FACT("Joint", "tee") FACT("Material", "A36 plate") \
	FACT("Thickness", "3/8 in") FACT("Position", position) FACT("Filler", filler) \
	FACT("Current", current) gas transfer, "")
#define C25 FACT("Gas", "75/25 argon/CO2 35 cfh")

static void position_of_cored(void **state)
{
	static const struct rule_case cases[] = {
		{ "E70T-1 overhead", WIRE("FCAW-G", "4F", "E70T-1, 0.045 in",
		    "DC+, 160-190 A", C25, ""), FINDING_FILLER_OUT_OF_POSITION, 10,
		    LEVEL_ERROR, "E70T-1", "E71T-1" },
		{ "E70T-1 horizontal", WIRE("FCAW-G", "2F", "E70T-1, 0.045 in",
		    "DC+, 160-190 A", C25, ""), SILENT },
		{ "E71T-1 overhead", WIRE("FCAW-G", "4F", "E71T-1C, 0.045 in",
		    "DC+, 160-190 A", C25, ""), SILENT },
		{ "E71T-1 1/16 in, the thickest", WIRE("FCAW-G", "3F up", "E71T-1, 1/16 in",
		    "DC+, 225-300 A", C25, ""), SILENT },
		{ "E71T-1 5/64 in", WIRE("FCAW-G", "3F up", "E71T-1, 5/64 in",
		    "DC+, 275-300 A", C25, ""), FINDING_FILLER_OUT_OF_POSITION, 10,
		    LEVEL_ERROR, "over 1/16 in", "1/16 in" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define TUNGSTEN(material, filler, current, gas) SHEET("drill", FACT("Process", "GTAW") \
	FACT("Joint", "tee") FACT("Material", material) FACT("Thickness", "1/8 in") \
	FACT("Position", "2F") FACT("Filler", filler) FACT("Current", current) \
	FACT("Tungsten", "EWCe-2, 1/16 in") gas, "## Cautions\n\nExtraction on.\n")
#define ARGON FACT("Gas", "argon 15 cfh")

static void polarity(void **state)
{
	static const struct rule_case cases[] = {
		{ "E6010 on DC-", STICK("tee", "2F", "E6010, 1/8 in", "DC-, 80-100 A"),
		    FINDING_WRONG_POLARITY, 11, LEVEL_ERROR, "E6010 does not run on DC-",
		    "DC+" },
		{ "E6010 on AC", STICK("tee", "2F", "E6010, 1/8 in", "AC, 80-100 A"),
		    FINDING_WRONG_POLARITY, 11, LEVEL_ERROR, "AC", "DC+" },
		{ "E6011 on AC", STICK("tee", "2F", "E6011, 1/8 in", "AC, 80-100 A"),
		    SILENT },
		{ "E7018 on AC", STICK("tee", "2F", "E7018, 1/8 in", "AC, 115-140 A"),
		    SILENT },
		{ "solid wire on DC-", WIRE("GMAW-S", "2F", "ER70S-6, 0.035 in",
		    "DC-, 115-145 A", C25, ""), FINDING_WRONG_POLARITY, 11, LEVEL_ERROR,
		    "ER70S-6", "DC+" },
		{ "self-shielded on DC+, from memory", WIRE("FCAW-S", "2F",
		    "E71T-11, 0.045 in", "DC+, 100-150 A", "", ""),
		    FINDING_WRONG_POLARITY, 11, LEVEL_WARNING, "E71T-11", "DC-" },
		{ "self-shielded on DC-", WIRE("FCAW-S", "2F", "E71T-11, 0.045 in",
		    "DC-, 100-150 A", "", ""), SILENT },
		{ "tungsten on DC+", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC+, 80-100 A", ARGON), FINDING_WRONG_POLARITY, 11, LEVEL_ERROR,
		    "ER70S-2", "DC-" },
		{ "aluminum on DC-", TUNGSTEN("5052-H32 sheet", "ER5356, 3/32 in",
		    "DC-, 80-100 A", ARGON), FINDING_WRONG_POLARITY, 11, LEVEL_ERROR,
		    "ER5356", "AC" },
		/* The table's range is for a polarity: the wrong one is told alone. */
		{ "aluminum on DC-, far over the range", TUNGSTEN("5052-H32 sheet",
		    "ER5356, 3/32 in", "DC-, 180-300 A", ARGON), FINDING_WRONG_POLARITY, 11,
		    LEVEL_ERROR, "ER5356", "AC" },
		{ "aluminum on AC", TUNGSTEN("5052-H32 sheet", "ER5356, 3/32 in",
		    "AC, 80-100 A", ARGON), SILENT },
		{ "aluminum on DC- under helium", TUNGSTEN("5052-H32 sheet",
		    "ER5356, 3/32 in", "DC-, 80-100 A", FACT("Gas", "helium 20 cfh")),
		    SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void filler_of_process_and_metal(void **state)
{
	static const struct rule_case cases[] = {
		{ "self-shielded wire as FCAW-G", WIRE("FCAW-G", "2F", "E71T-8, 0.068 in",
		    "DC-, 200-250 A", C25, ""), FINDING_FILLER_OF_ANOTHER_PROCESS, 10,
		    LEVEL_ERROR, "self-shielded", "FCAW-S" },
		/* One slip, one finding: DC+ is right for the process that is named. */
		{ "and on the polarity of the other sort", WIRE("FCAW-G", "2F",
		    "E71T-11, 0.045 in", "DC+, 160-190 A", C25, ""),
		    FINDING_FILLER_OF_ANOTHER_PROCESS, 10, LEVEL_ERROR, "self-shielded",
		    "FCAW-S" },
		{ "covered electrode as GMAW-S", WIRE("GMAW-S", "2F", "E7018, 1/8 in",
		    "DC+, 115-140 A", C25, FACT("Oven", "4 h out")),
		    FINDING_FILLER_OF_ANOTHER_PROCESS, 10, LEVEL_ERROR,
		    "covered electrode, which GMAW-S", "solid wire" },
		{ "steel rod on stainless", TUNGSTEN("304L sheet", "ER70S-2, 3/32 in",
		    "DC-, 80-100 A", ARGON), FINDING_FILLER_OF_WRONG_METAL, 10,
		    LEVEL_ERROR, "is in stainless", "ER308L" },
		{ "stainless rod on stainless", TUNGSTEN("304L sheet", "ER308L, 3/32 in",
		    "DC-, 80-100 A", ARGON), SILENT },
		{ "steel rod on aluminum", TUNGSTEN("5052-H32 sheet", "ER70S-2, 3/32 in",
		    "AC, 80-100 A", ARGON), FINDING_FILLER_OF_WRONG_METAL, 10, LEVEL_ERROR,
		    "is in aluminum", "ER4043" },
		{ "309L between stainless and steel", TUNGSTEN("A36 plate, 304L plate",
		    "ER309L, 3/32 in", "DC-, 80-100 A", ARGON), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void current_and_oven(void **state)
{
	static const struct rule_case cases[] = {
		{ "E7018 3/32 too hot", STICK("tee", "2F", "E7018, 3/32 in",
		    "DC+, 80-106 A"), FINDING_CURRENT_OUTSIDE_RANGE, 11, LEVEL_WARNING,
		    "80-106 A is outside what E7018, 3/32 in [2.4 mm] takes, 70-105 A",
		    "label" },
		{ "E7018 3/32 at both ends of the table", STICK("tee", "2F",
		    "E7018, 3/32 in", "DC+, 70-105 A"), SILENT },
		{ "a row from memory only notes", WIRE("FCAW-S", "2F", "E71T-11, 0.045 in",
		    "DC-, 100-210 A", "", ""), FINDING_CURRENT_OUTSIDE_RANGE, 11,
		    LEVEL_NOTE, "90-200 A", "label" },
		{ "a diameter that no table has", STICK("tee", "2F", "E7018, 0.2 in",
		    "DC+, 500 A"), SILENT },
		{ "tungsten too hot", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC-, 80-161 A", ARGON), FINDING_CURRENT_OUTSIDE_RANGE, 11,
		    LEVEL_WARNING, "50-160 A", "tungsten" },
		{ "a pedal goes below the table", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC-, 20-25 A", ARGON), SILENT },
		{ "tungsten that never warms up", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC-, 15-24 A", ARGON), FINDING_CURRENT_OUTSIDE_RANGE, 11,
		    LEVEL_NOTE, "50-160 A", "tungsten" },
		{ "spray below its transition", WIRE("GMAW", "2F", "ER70S-6, 0.052 in",
		    "DC+, 230-260 A", FACT("Gas", "98/2 argon/O2 30 cfh"),
		    FACT("Transfer", "spray")), FINDING_CURRENT_OUTSIDE_RANGE, 11,
		    LEVEL_WARNING, "at least 240 A", "label" },
		{ "spray at its transition", WIRE("GMAW", "2F", "ER70S-6, 0.052 in",
		    "DC+, 240-260 A", FACT("Gas", "98/2 argon/O2 30 cfh"),
		    FACT("Transfer", "spray")), SILENT },
		{ "a pass too hot", STICK("tee", "2F", "E7018, 1/8 in", "DC+, 110-140 A")
		    "## Passes\n\n- **Cap:** SMAW, E7018 1/8 in, DC+ 110-161 A, up\n",
		    FINDING_CURRENT_OUTSIDE_RANGE, 16, LEVEL_WARNING, "110-161 A",
		    "label" },
		{ "no oven", SHEET("drill", FACT("Process", "SMAW") FACT("Joint", "tee")
		    FACT("Material", "A36 plate") FACT("Thickness", "3/8 in")
		    FACT("Position", "2F") FACT("Filler", "E7018-H4R, 1/8 in")
		    FACT("Current", "DC+, 110-140 A"), ""), FINDING_NO_ROD_OVEN, 10,
		    LEVEL_WARNING, "E7018-H4R is low-hydrogen", "Oven" },
		{ "cellulose rods want none", SHEET("drill", FACT("Process", "SMAW")
		    FACT("Joint", "tee") FACT("Material", "A36 plate")
		    FACT("Thickness", "3/8 in") FACT("Position", "2F")
		    FACT("Filler", "E6010, 1/8 in") FACT("Current", "DC+, 80-100 A"), ""),
		    SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void gas(void **state)
{
	static const struct rule_case cases[] = {
		{ "GTAW without gas", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC-, 80-100 A", ""), FINDING_NO_SHIELDING_GAS, 5, LEVEL_ERROR, "GTAW",
		    "argon" },
		{ "self-shielded with gas", WIRE("FCAW-S", "2F", "E71T-11, 0.045 in",
		    "DC-, 100-150 A", C25, ""), FINDING_GAS_NOT_USED, 12, LEVEL_ERROR,
		    "FCAW-S uses no shielding gas", "line Gas" },
		{ "spray in 75/25", WIRE("GMAW", "2F", "ER70S-6, 0.045 in",
		    "DC+, 235-275 A", C25, FACT("Transfer", "spray")), FINDING_WRONG_GAS,
		    12, LEVEL_ERROR, "spray needs 80 % argon", "98/2" },
		{ "spray in exactly 80 %", WIRE("GMAW", "2F", "ER70S-6, 0.045 in",
		    "DC+, 235-275 A", FACT("Gas", "80/20 argon/CO2 30 cfh"),
		    FACT("Transfer", "spray")), SILENT },
		{ "short circuit in 98/2", WIRE("GMAW-S", "2F", "ER70S-6, 0.035 in",
		    "DC+, 115-145 A", FACT("Gas", "98/2 argon/O2 30 cfh"), ""),
		    FINDING_WRONG_GAS, 12, LEVEL_ERROR, "needs CO2", "75/25" },
		{ "short circuit in CO2", WIRE("GMAW-S", "2F", "ER70S-6, 0.035 in",
		    "DC+, 115-145 A", FACT("Gas", "CO2 25 cfh"), ""), SILENT },
		{ "tungsten in 75/25", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC-, 80-100 A", C25), FINDING_WRONG_GAS, 13, LEVEL_ERROR,
		    "burns the tungsten", "argon" },
		{ "cored wire in argon", WIRE("FCAW-G", "2F", "E71T-1, 0.045 in",
		    "DC+, 190-225 A", FACT("Gas", "argon 35 cfh"), ""), FINDING_WRONG_GAS, 12, LEVEL_WARNING,
		    "classed for", "75/25" },
		{ "words that are no gas are not judged", WIRE("GMAW-S", "2F",
		    "ER70S-6, 0.035 in", "DC+, 115-145 A", FACT("Gas", "mix C25 30 cfh"),
		    ""), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void gas_is_read(void **state)
{
	struct gas g = gas_read(STR("90He-7.5Ar-2.5CO2 30 cfh"));

	(void)state;
	assert_true(g.known);
	expect_near(g.helium, 90);
	expect_near(g.argon, 7.5);
	expect_near(g.co2, 2.5);
	assert_true(gas_read(STR("100 % argon 20 cfh")).argon > 99.9);
	assert_false(gas_read(STR("75/25")).known);
	assert_false(gas_read(STR("argon/CO2")).known);
}

static void transfer(void **state)
{
	static const struct rule_case cases[] = {
		{ "spray vertical", WIRE("GMAW", "3F up", "ER70S-6, 0.045 in",
		    "DC+, 235-275 A", FACT("Gas", "98/2 argon/O2 30 cfh"),
		    FACT("Transfer", "spray")), FINDING_SPRAY_OUT_OF_POSITION, 13,
		    LEVEL_ERROR, "3F up", "pulsed" },
		{ "spray horizontal", WIRE("GMAW", "2F", "ER70S-6, 0.045 in",
		    "DC+, 235-275 A", FACT("Gas", "98/2 argon/O2 30 cfh"),
		    FACT("Transfer", "spray")), SILENT },
		{ "pulsed spray overhead", WIRE("GMAW", "4F", "ER70S-6, 0.045 in",
		    "DC+, 135-275 A", FACT("Gas", "98/2 argon/O2 30 cfh"),
		    FACT("Transfer", "pulsed spray")), SILENT },
		{ "GMAW-S said to spray", WIRE("GMAW-S", "2F", "ER70S-6, 0.035 in",
		    "DC+, 115-145 A", C25, FACT("Transfer", "spray")),
		    FINDING_TRANSFER_DISAGREES, 13, LEVEL_ERROR, "spray", "GMAW" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define CUT(process, material, piece) SHEET("coupon", FACT("Process", process) \
	FACT("Joint", "cut edge") FACT("Material", material) FACT("Thickness", "1/4 in"), \
	"## Pieces\n\n- strip: 1 of 1/4 x 3 x 8 in " piece "\n\n" \
	"## Cautions\n\nFume: hood on.\n")

static void flame(void **state)
{
	static const struct rule_case cases[] = {
		{ "stainless torch cut", CUT("OFC", "304L plate", "304L plate, torch cut"),
		    FINDING_OXY_FUEL_ON_WRONG_METAL, 12, LEVEL_ERROR,
		    "does not cut stainless", "plasma on the shop's table" },
		{ "aluminum on the sheet of OFC", CUT("OFC", "5052-H32 plate",
		    "5052-H32 plate, sawn"), FINDING_OXY_FUEL_ON_WRONG_METAL, 7,
		    LEVEL_ERROR, "aluminum", "plasma" },
		{ "stainless by plasma", CUT("PAC", "304L plate", "304L plate, plasma cut"),
		    SILENT },
		{ "carbon steel", CUT("OFC", "A36 plate", "A36 plate, torch cut"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define STAINLESS(more, cautions) SHEET("coupon", FACT("Process", "GTAW") \
	FACT("Joint", "tee") FACT("Material", "304L sheet") FACT("Thickness", "1/8 in") \
	FACT("Position", "2F") FACT("Filler", "ER308L, 1/16 in") \
	FACT("Current", "DC-, 50-75 A") ARGON more, cautions)
#define PURGED FACT("Purge", "argon 10 cfh") FACT("Place", "confined")

static void fume_and_air(void **state)
{
	static const struct rule_case cases[] = {
		{ "stainless, no word of fume", STAINLESS("",
		    "## Cautions\n\nHot metal.\n"), FINDING_NO_FUME_CAUTION, 7, LEVEL_ERROR,
		    "fume", "extraction" },
		{ "stainless, hood named", STAINLESS("",
		    "## Cautions\n\nExtraction at the weld.\n"), SILENT },
		{ "galvanized, no Cautions", SHEET("drill", FACT("Process", "SMAW")
		    FACT("Joint", "lap") FACT("Material", "galvanized sheet")
		    FACT("Thickness", "11 ga") FACT("Position", "2F")
		    FACT("Filler", "E6010, 1/8 in") FACT("Current", "DC+, 75-90 A"), ""),
		    FINDING_NO_FUME_CAUTION, 7, LEVEL_ERROR, "fume", "extraction" },
		{ "coated steel", STICK("tee", "2F", "E6010, 1/8 in", "DC+, 80-100 A"),
		    SILENT },
		{ "purge in a tank", STAINLESS(PURGED, "## Cautions\n\nFume hood on.\n"),
		    FINDING_NO_AIR_CAUTION, 13, LEVEL_ERROR, "confined", "oxygen" },
		{ "purge in a tank, air measured", STAINLESS(PURGED,
		    "## Cautions\n\nFume hood on; oxygen meter at the hatch.\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void classes(void **state)
{
	struct rod r = rod_read(STR("E308LT1-4"));

	(void)state;
	assert_int_equal(r.metal, ROD_STAINLESS);
	assert_int_equal(r.position, 1);
	assert_int_equal(r.shield, SHIELD_GAS);
	r = rod_read(STR("E71T1-C1A2-CS1"));
	assert_int_equal(r.sort, ROD_CORED);
	assert_int_equal(r.usability, 1);
	r = rod_read(STR("E309L-16"));
	assert_int_equal(r.sort, ROD_COVERED);
	assert_int_equal(r.metal, ROD_STAINLESS);
	assert_int_equal(rod_read(STR("ER4043")).metal, ROD_ALUMINUM);
	assert_int_equal(rod_read(STR("ER2209")).metal, ROD_STAINLESS);
	assert_int_equal(rod_read(STR("ER100S-1")).metal, ROD_STEEL);
	assert_int_equal(rod_read(STR("EFeCr-A1")).sort, ROD_UNKNOWN);
	assert_int_equal(rod_read(STR("")).sort, ROD_UNKNOWN);
}

/* A pass in a process of its own is told once, and for nothing else. */
static void passes_in_other_processes(void **state)
{
	static const struct { const char *process, *pass; size_t told; } rows[] = {
		{ "SMAW", "GTAW, ER70S-2 3/32 in, DC+ 80-105 A, argon 15 cfh", 1 },
		{ "SMAW", "GTAW, E6010 1/8 in, DC+ 75-95 A", 1 },
		{ "GTAW, SMAW", "GTAW, ER70S-2 3/32 in, DC- 80-105 A, argon 15 cfh", 0 },
		{ "GMAW", "GMAW-S, ER70S-6 0.035 in, DC+ 100-130 A", 0 },
		{ "SMAW", "E7018 1/8 in, DC+ 110-130 A", 0 },
	};
	char sheet[500];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct bench t;
		size_t n = 0, other = 0;

		snprintf(sheet, sizeof sheet, SHEET("drill", FACT("Process", "%s")
		    FACT("Joint", "tee") FACT("Material", "A36 plate")
		    FACT("Thickness", "3/8 in") FACT("Position", "2F"),
		    "## Passes\n\n- **Root:** %s\n"), rows[i].process, rows[i].pass);
		t = rule_bench(sheet);
		for (size_t k = 0; k < t.f->n; k++) {
			n += t.f->v[k].name == FINDING_FACTS_DISAGREE;
			other += t.f->v[k].name == FINDING_WRONG_POLARITY ||
			    t.f->v[k].name == FINDING_FILLER_OF_ANOTHER_PROCESS;
		}
		assert_int_equal(n, rows[i].told);
		assert_int_equal(other, 0);
		bench_free(&t);
	}
}

#define STARTS(process, filler, current, gas, rest) SHEET("drill", \
	FACT("Process", process) FACT("Joint", "tee") FACT("Material", "A36 plate") \
	FACT("Thickness", "3/8 in") FACT("Position", "2F") FACT("Filler", filler) \
	FACT("Current", current) FACT("Gas", gas) rest, "")

static void volts_and_flow(void **state)
{
	static const struct rule_case cases[] = {
		{ "short circuit too hot", STARTS("GMAW-S", "ER70S-6, 0.035 in",
		    "DC+, 115-145 A", "75/25 argon/CO2 25 cfh", FACT("Volts", "18-23 V")),
		    FINDING_VOLTS_OUTSIDE_RANGE, 13, LEVEL_WARNING,
		    "18-23 V is outside what ER70S-6 takes, 16-22 V", "label" },
		{ "both ends of the table", STARTS("GMAW-S", "ER70S-6, 0.035 in",
		    "DC+, 115-145 A", "75/25 argon/CO2 25 cfh", FACT("Volts", "16-22 V")),
		    SILENT },
		{ "self-shielded, from memory", SHEET("drill", FACT("Process", "FCAW-S")
		    FACT("Joint", "tee") FACT("Material", "A36 plate")
		    FACT("Thickness", "3/8 in") FACT("Position", "2F")
		    FACT("Filler", "E71T-11, 0.045 in") FACT("Current", "DC-, 100-150 A")
		    FACT("Volts", "19 V"), ""), FINDING_VOLTS_OUTSIDE_RANGE, 12, LEVEL_NOTE,
		    "15-18 V", "label" },
		{ "volts pair with currents", STARTS("GMAW-S, FCAW-G",
		    "ER70S-6, 0.035 in; E71T-1, 0.045 in", "DC+, 115-145 A; DC+, 160-190 A",
		    "75/25 argon/CO2 30 cfh", FACT("Volts", "18-20 V; 24-28 V")), SILENT },
		{ "and so does the one that is off", STARTS("GMAW-S, FCAW-G",
		    "ER70S-6, 0.035 in; E71T-1, 0.045 in", "DC+, 115-145 A; DC+, 160-190 A",
		    "75/25 argon/CO2 30 cfh", FACT("Volts", "18-20 V; 18-20 V")),
		    FINDING_VOLTS_OUTSIDE_RANGE, 13, LEVEL_WARNING, "24-28 V", "label" },
		{ "under half of 35 cfh", STARTS("FCAW-G", "E71T-1, 0.045 in",
		    "DC+, 160-190 A", "75/25 argon/CO2 17 cfh", ""),
		    FINDING_GAS_FLOW_FAR_OFF, 12, LEVEL_WARNING, "35-35 cfh", "flow" },
		{ "half of 25 and twice 30", STARTS("GMAW-S", "ER70S-6, 0.035 in",
		    "DC+, 115-145 A", "75/25 argon/CO2 12.5-60 cfh", ""), SILENT },
		{ "tungsten like a hose", TUNGSTEN("A36 plate", "ER70S-2, 3/32 in",
		    "DC-, 80-100 A", FACT("Gas", "argon 41 cfh")), FINDING_GAS_FLOW_FAR_OFF,
		    13, LEVEL_WARNING, "10-20 cfh", "flow" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define WARMED(thickness, filler, preheat, visual) SHEET("drill", \
	FACT("Process", "SMAW") FACT("Joint", "tee") FACT("Material", "A36 plate") \
	FACT("Thickness", thickness) FACT("Position", "2F") FACT("Filler", filler) \
	FACT("Oven", "4 h out") FACT("Preheat", preheat), \
	"## Acceptance\n\n- **Visual:** " visual "\n")

/* AWS D1.1 preheat table, A36: with low-hydrogen rods 32 F to 3/4 in, 50 F to 1-1/2;
 * with others 32 F to 3/4 in, 150 F to 1-1/2. */
static void preheat(void **state)
{
	static const struct rule_case cases[] = {
		{ "1 in at 32", WARMED("1 in", "E7018, 1/8 in", "32 degF least", "D1.1-2020"),
		    FINDING_PREHEAT_TOO_LOW, 12, LEVEL_WARNING,
		    "under the least for A36 1 in", "50 degF least" },
		{ "1 in at 50", WARMED("1 in", "E7018, 1/8 in", "50 degF least", "D1.1-2020"),
		    SILENT },
		{ "1 in at 50 with E6010", WARMED("1 in", "E6010, 1/8 in", "50 degF least",
		    "D1.1-2020"), FINDING_PREHEAT_TOO_LOW, 12, LEVEL_WARNING, "150", "150" },
		{ "3/4 in at 32", WARMED("3/4 in", "E7018, 1/8 in",
		    "none above 32 degF, colder plate warmed to 70 degF", "D1.1-2020"),
		    SILENT },
		{ "words only", WARMED("1 in", "E7018, 1/8 in", "by the procedure",
		    "D1.1-2020"), SILENT },
		{ "not judged by D1.1", WARMED("1 in", "E7018, 1/8 in", "32 degF least",
		    "no cracks"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* 60 x 26 x 150 / (1000 x 5) = 46.8 kJ/in; at 5.2 in/min 45.0. */
static void heat(void **state)
{
#define HEATED(travel, limit) STARTS("FCAW-G", "E71T-1, 0.045 in", "DC+, 150 A", \
	"75/25 argon/CO2 35 cfh", FACT("Volts", "25-26 V") FACT("Travel", travel) \
	FACT("Heat input", limit))
	static const struct rule_case cases[] = {
		{ "over", HEATED("5-7 in/min", "45 kJ/in at most"), FINDING_HEAT_INPUT_OVER,
		    15, LEVEL_WARNING, "46.8 kJ/in, over the 45", "5.2 in/min" },
		{ "at the limit", HEATED("5.2-7 in/min", "45 kJ/in at most"), SILENT },
		{ "a limit with a point", HEATED("5-7 in/min", "46.9 kJ/in"), SILENT },
		{ "no figure", HEATED("5-7 in/min", "by the procedure"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define ASKED(line) SHEET("written", "", "## Instructor only\n\nWords.\n\n" line "\n")

static void asked(void **state)
{
	static const struct rule_case cases[] = {
		{ "an input that is not one", ASKED("- **Reckon:** punch hole 13/16 in"),
		    FINDING_ASKED_WITHOUT_ANSWER, 10, LEVEL_WARNING, "no input called hole",
		    "punch diameter" },
		{ "a topic that is not one", ASKED("**Reckon:** punsh diameter 13/16 in"),
		    FINDING_ASKED_WITHOUT_ANSWER, 10, LEVEL_WARNING, "is it punch?",
		    "throat leg" },
		{ "an answer", ASKED("- **Reckon:** throat leg 5/16 in"), SILENT },
		{ "bold words of another sort", ASKED("- **Reckoning:** is for the class"),
		    SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define ROD(filler) STICK("tee", "2F", filler ", 1/8 in", "DC+, 110-140 A")
#define GASES(gas) WIRE("GMAW", "2F", "ER70S-6, 0.035 in", "DC+, 180-200 A", \
	FACT("Gas", gas), FACT("Transfer", "spray"))
#define SLIP(what, sheet, line, wrong, meant) { what, sheet, FINDING_UNKNOWN_WORD, line, \
	LEVEL_WARNING, "\"" wrong "\" is not", "write \"" meant "\"" }

#define PLATES(fact, first, second) SHEET("drill", FACT("Process", "SMAW") \
	FACT("Material", fact) FACT("Filler", "E6010, 1/8 in"), \
	"## Pieces\n\n- web: 1 of 1/4 x 3 x 8 in " first "\n- base: 1 of 1/4 x 4 x 8 in " second "\n")
#define MADE_OF(what, fact, first, second, line, wrong, meant) { what, \
	PLATES(fact, first, second), FINDING_UNKNOWN_WORD, line, LEVEL_WARNING, \
	"\"" wrong "\" stands here", "write \"" meant "\"" }

/* What no list has is told only where it is one slip from one usual word. */
static void words_one_slip_off(void **state)
{
	static const struct rule_case cases[] = {
		SLIP("figures that changed places", ROD("E7081"), 10, "E7081", "E7018"),
		SLIP("a letter for a figure", ROD("E7O18"), 10, "E7O18", "E7018"),
		SLIP("without its E", ROD("7018"), 10, "7018", "E7018"),
		SLIP("a wire", WIRE("GMAW", "2F", "ER705-6, 0.035 in", "DC+, 160-180 A",
		    FACT("Gas", "90/10 argon/CO2 35 cfh"), FACT("Transfer", "spray")), 10,
		    "ER705-6", "ER70S-6"),
		SLIP("a gas", GASES("90/10 agron/CO2 35 cfh"), 12, "agron", "argon"),
		SLIP("another", GASES("90/10 argon/carbon dioxyde 35 cfh"), 12, "dioxyde",
		    "dioxide"),
		MADE_OF("a figure of the pieces that changed places", "A36 plate", "A63 plate",
		    "A36 plate", 11, "A63 plate", "A36 plate"),
		MADE_OF("a fact that is no metal", "x36 plate", "A36 plate", "A36 plate", 6,
		    "x36 plate", "A36 plate"),
		MADE_OF("a fact of another form", "A36 plaet", "A36 plate", "A36 plate", 6,
		    "A36 plaet", "A36 plate"),
		{ "two grades", PLATES("A500 tube", "A501 tube", "A500 tube"), SILENT },
		{ "more than one", PLATES("A36 plate", "A36 plates", "A36 plate"), SILENT },
		{ "another material", PLATES("A36 plate", "A53 pipe", "A36 plate"), SILENT },
		{ "a class of the list", ROD("E7018"), SILENT },
		{ "with what may follow a class", ROD("E7018-1H4R"), SILENT },
		{ "classes that are not in the list", ROD("E7048"), SILENT },
		{ "of the other specification", ROD("E8045-P2"), SILENT },
		{ "far from all", ROD("ENiFe-CI"), SILENT },
		/* E7081 with a figure less is as near to E7018 as to others. */
		{ "near several", ROD("E701"), SILENT },
		{ "gases by their signs", GASES("90/10 Ar/CO2 35 cfh"), SILENT },
		{ "words that are not gases", GASES("as the maker of the wire says"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(asked), cmocka_unit_test(words_one_slip_off),
		cmocka_unit_test(volts_and_flow), cmocka_unit_test(preheat),
		cmocka_unit_test(heat),
		cmocka_unit_test(position_of_covered), cmocka_unit_test(position_of_cored),
		cmocka_unit_test(polarity), cmocka_unit_test(filler_of_process_and_metal),
		cmocka_unit_test(current_and_oven), cmocka_unit_test(gas),
		cmocka_unit_test(gas_is_read), cmocka_unit_test(transfer),
		cmocka_unit_test(flame), cmocka_unit_test(fume_and_air),
		cmocka_unit_test(classes), cmocka_unit_test(passes_in_other_processes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
