/* The rungs of C1 to C16, C21 and C22, as partial orders in each process. */
#include "trade_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define SMAW(id, joint, position) WORK(id, "coupon", WELD("SMAW", joint, position))
#define ONE_TWO { "1. AA-11, week 1\n2. AA-12, week 2\n" }
#define TWO_ONE { "1. AA-12, week 1\n2. AA-11, week 2\n" }
#define STRIP FACT("Backing", "steel strip 1/4 x 1 in")
#define OPEN FACT("Backing", "none")
#define METAL(id, metal) WORK(id, "coupon", FACT("Process", "GTAW") FACT("Joint", "tee") \
	FACT("Position", "2F") FACT("Material", metal) FACT("Thickness", "1/8 in"))
#define THICK(id, thickness) WORK(id, "coupon", FACT("Process", "SMAW") \
	FACT("Joint", "single-V") FACT("Position", "3G up") PLATE(thickness))
#define CUT(id, process, joint, more) WORK(id, "coupon", FACT("Process", process) \
	FACT("Joint", joint) FACT("Position", "flat") PLATE("3/8 in") more)
#define BLOCK(word, body) "\n## Drawing\n\n```" word "\n" body "```\n"
#define ELBOW BLOCK("pattern", \
	"shape: elbow\noutside diameter: 6 in\nheight: 6 in\npieces: 2\n")
#define SHELL BLOCK("pattern", "shape: cylinder\ninside diameter: 36 in\nheight: 12 in\n")
#define CONE BLOCK("pattern", "shape: cone\nbase: 12 in\ntop: 6 in\nheight: 8 in\n")
#define SQUARE BLOCK("pattern", \
	"shape: square to round\nbase: 14 in\ntop: 10 in\nheight: 10 in\n")
#define HOLES BLOCK("plate", \
	"length: 8 in\nwidth: 6 in\nthickness: 1/4 in\nhole: 1, 1, 1/2 in\n")
#define SOME CUT("ZZ-01", "OFC", "cut edge", "")
#define DO(id, process) WORK(id, "drill", WELD(process, "surfacing", "flat"))
#define BREAK ACCEPT("Fillet break", "1")

/* The lower rung is AA-11, the higher AA-12: wrong round, then right. */
#define RUNG(name, lower, higher, message) \
	{ FINDING_##name, "higher first", lower higher, TWO_ONE, 1, message, NULL }, \
	{ FINDING_##name, "lower first", lower higher, ONE_TWO, 0, NULL, NULL }

static const struct trade_case rungs[] = {
	RUNG(HORIZONTAL_BEFORE_FLAT, SMAW("AA-11", "tee", "1F"), SMAW("AA-12", "tee",
	    "2F"),
	    "AA-12 (quarter 1, week 1) comes to horizontal fillets in stick welding "
	    "before flat ones"),
	RUNG(VERTICAL_BEFORE_HORIZONTAL, SMAW("AA-11", "tee", "2F"), SMAW("AA-12", "lap",
	    "3F down"),
	    "vertical fillets"),
	RUNG(OVERHEAD_BEFORE_HORIZONTAL, SMAW("AA-11", "tee", "2F"), SMAW("AA-12", "tee",
	    "4F"), "overhead"),
	RUNG(OVERHEAD_BEFORE_VERTICAL, SMAW("AA-11", "tee", "3F up"), SMAW("AA-12", "tee",
	    "4F"),
	    "vertical ones"),
	RUNG(GROOVE_BEFORE_FLAT_GROOVE, SMAW("AA-11", "single-V", "1G"), SMAW("AA-12",
	    "single-V", "4G"),
	    "out of the flat position"),
	RUNG(GROOVE_BEFORE_ITS_FILLET, SMAW("AA-11", "tee", "3F up"), SMAW("AA-12",
	    "single-V", "3G up"),
	    "vertical grooves uphill"),
	RUNG(GROOVE_BEFORE_ITS_FILLET, SMAW("AA-11", "tee", "4F"), SMAW("AA-12",
	    "single-V", "4G"),
	    "overhead grooves"),
	RUNG(GROOVE_BEFORE_FILLET, SMAW("AA-11", "tee", "1F"), SMAW("AA-12", "single-V",
	    "1G"), "grooves"),
	RUNG(PIPE_BEFORE_PLATE, SMAW("AA-11", "single-V", "1G"), WORK("AA-12", "coupon",
	    PIPE("SMAW", "2G")), "pipe in stick welding before plate"),
	RUNG(PIPE_5G_TOO_EARLY, WORK("AA-11", "coupon", PIPE("SMAW", "1G rolled")),
	    WORK("AA-12",
	    "coupon", PIPE("SMAW", "5G up")), "pipe in 5G"),
	RUNG(PIPE_6G_TOO_EARLY, WORK("AA-11", "coupon", PIPE("SMAW", "5G up")),
	    WORK("AA-12", "coupon",
	    PIPE("SMAW", "6G up")), "pipe in 6G up"),
	RUNG(TUNGSTEN_BEFORE_OXY_FUEL, DO("AA-11", "OFW"), DO("AA-12", "GTAW"),
	    "tungsten arc before"),
	RUNG(WIRE_BEFORE_STICK, DO("AA-11", "SMAW"), DO("AA-12", "FCAW-G"),
	    "wire-feed before stick"),
	RUNG(CORED_BEFORE_SOLID_WIRE, DO("AA-11", "GMAW-S"), DO("AA-12", "FCAW-S"),
	    "cored wire"),
	RUNG(STAINLESS_BEFORE_STEEL, METAL("AA-11", "A36 plate"), METAL("AA-12",
	    "304L sheet"), "stainless"),
	RUNG(ALUMINUM_BEFORE_STAINLESS, METAL("AA-11", "304L sheet"), METAL("AA-12",
	    "5052-H32 sheet"),
	    "aluminum"),
	RUNG(BEVEL_BEFORE_SQUARE_CUT, CUT("AA-11", "OFC", "cut edge", ""), CUT("AA-12",
	    "OFC", "bevel cut",
	    ""), "bevel cuts in oxy-fuel cutting"),
	RUNG(MACHINE_BEFORE_HAND_CUTTING, CUT("AA-11", "OFC", "cut edge", ""),
	    CUT("AA-12", "OFC",
	    "bevel cut", FACT("Machines", "track torch")),
	    "machine cutting before cutting by hand"),
	RUNG(DOWNHILL_BEFORE_UPHILL, SMAW("AA-11", "tee", "3F up"), SMAW("AA-12", "tee",
	    "3F down"),
	    "3F downhill"),
	RUNG(OPEN_ROOT_BEFORE_BACKING, WORK("AA-11", "coupon", WELD("SMAW", "single-V",
	    "1G") STRIP),
	    WORK("AA-12", "coupon", WELD("SMAW", "single-V", "1G") OPEN), "an open root"),
	RUNG(OPEN_ROOT_BEFORE_BACKING, WORK("AA-11", "coupon", WELD("SMAW", "single-V",
	    "1G") STRIP),
	    SMAW("AA-12", "square butt", "1G"), "an open root"),
	RUNG(THICK_BEFORE_THIN, THICK("AA-11", "0.999 in"), THICK("AA-12", "1 in"),
	    "plate of 1 in or more"),
	RUNG(TABLE_BEFORE_LAYOUT, SOME WORK("AA-11", "coupon", HOLES), CUT("AA-12", "PAC",
	    "cut edge",
	    FACT("Machines", "plasma table")), "table cutting before layout by hand"),
	RUNG(RADIAL_BEFORE_PARALLEL, SOME WORK("AA-11", "coupon", ELBOW), WORK("AA-12",
	    "coupon", CONE),
	    "radial lines"),
	RUNG(TRIANGLES_BEFORE_RADIAL, SOME WORK("AA-11", "coupon", CONE), WORK("AA-12",
	    "coupon", SQUARE),
	    "triangulation"),
	RUNG(GROOVE_BEFORE_FILLET_BREAK, WORK("AA-11", "coupon", WELD("SMAW", "tee", "2F")
	    BREAK),
	    SMAW("AA-12", "single-V", "1G"), "grooves in steel"),
	RUNG(MACHINE_BEFORE_WRITTEN_TEST, WORK("AA-11", "written", ""), WORK("AA-12",
	    "drill",
	    FACT("Machines", "shear")), "machines before a written test"),
};

/* A case for a rung on layout has its cutting work in no course; a line for it here. */
static void test_rungs(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(rungs); i++) {
		struct trade_case c = rungs[i];

		c.quarters[1] = str_has(str_of(c.works), "ZZ-01") ? "1. ZZ-01, week 1\n" :
		    NULL;
		trade_expect(&c);
	}
}

#define BROUGHT_2F SMAW("AA-11", "tee", "1F") WORK("AA-12", "coupon", \
	WELD("SMAW", "tee", "2F") TEACHES("a.one assessed"))

/* What no rung may say. */
static const struct trade_case silent[] = {
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "a program without 1F", SMAW("AA-12", "tee",
	    "2F"),
	    { "1. AA-12, week 1\n" }, 0, NULL, NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "both on one sheet", SMAW("AA-12", "tee",
	    "2F, 1F"),
	    { "1. AA-12, week 1\n" }, 0, NULL, NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "another process says nothing", SMAW("AA-11",
	    "tee", "1F")
	    WORK("AA-12", "coupon", WELD("FCAW-G", "tee", "2F")), TWO_ONE, 0, NULL, NULL
	    },
	{ FINDING_OVERHEAD_BEFORE_HORIZONTAL,
	    "overhead before vertical is no other fault",
	    SMAW("AA-10", "tee", "2F") SMAW("AA-11", "tee", "3F up") SMAW("AA-12", "tee",
	    "4F"),
	    { "1. AA-10, week 1\n2. AA-12, week 2\n3. AA-11, week 3\n" }, 0, NULL, NULL },
	{ FINDING_GROOVE_BEFORE_FLAT_GROOVE, "3G and 4G in either order", SMAW("AA-10",
	    "single-V", "1G")
	    SMAW("AA-11", "single-V", "3G up") SMAW("AA-12", "single-V", "4G"),
	    { "1. AA-10\n2. AA-12, week 2\n3. AA-11, week 3\n" }, 0, NULL, NULL },
	{ FINDING_GROOVE_BEFORE_ITS_FILLET, "up and down are separate lines",
	    SMAW("AA-11", "tee", "3F up")
	    SMAW("AA-12", "single-V", "3G down"), TWO_ONE, 0, NULL, NULL },
	{ FINDING_PIPE_6G_TOO_EARLY, "5G down says nothing of 6G up", WORK("AA-11",
	    "coupon",
	    PIPE("SMAW", "5G down")) WORK("AA-12", "coupon", PIPE("SMAW", "6G up")),
	    TWO_ONE, 0, NULL, NULL },
	{ FINDING_GROOVE_BEFORE_FILLET_BREAK, "another metal says nothing", WORK("AA-11",
	    "coupon",
	    FACT("Process", "GTAW") FACT("Joint", "tee") FACT("Position", "2F")
	    FACT("Material", "5052-H32 sheet") FACT("Thickness", "1/8 in") BREAK)
	    WORK("AA-12", "coupon",
	    WELD("GTAW", "square butt", "1G")), TWO_ONE, 0, NULL, NULL },
	{ FINDING_GROOVE_BEFORE_FILLET, "a flat tack drill is no groove", SMAW("AA-11",
	    "tee", "1F")
	    WORK("AA-12", "drill", WELD("SMAW", "square butt", "flat")), TWO_ONE, 0, NULL,
	    NULL },
	{ FINDING_RADIAL_BEFORE_PARALLEL, "a rolled shell is a rectangle", SOME
	    WORK("AA-11", "coupon",
	    SHELL) WORK("AA-12", "coupon", CONE), {
	    "1. AA-12\n2. AA-11, week 2\n3. ZZ-01\n" }, 0, NULL, NULL },
	{ FINDING_PIPE_BEFORE_PLATE, "one finding a process", SMAW("AA-11", "single-V",
	    "2G, 4G")
	    WORK("AA-12", "coupon", PIPE("SMAW", "2G, 5G up")), TWO_ONE, 1,
	    "before plate", NULL },
	{ FINDING_WIRE_BEFORE_STICK, "written work uses nothing", DO("AA-11", "SMAW")
	    WORK("AA-12",
	    "written", FACT("Process", "GMAW")), TWO_ONE, 0, NULL, NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "the unmet need tells it", WORK("AA-11",
	    "coupon",
	    WELD("SMAW", "tee", "1F") TEACHES("a.one assessed")) WORK("AA-12", "coupon",
	    WELD("SMAW", "tee", "2F") NEEDS("a.one practiced")), TWO_ONE, 0, NULL, NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "only optional work below", SMAW("AA-11", "tee",
	    "1F")
	    SMAW("AA-12", "tee", "2F"), { "1. AA-11, week 1, optional\n2. AA-12, week 2\n"
	    }, 1,
	    "which is optional", NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "the lower on the same sheet, whatever is optional",
	    SMAW("AA-11", "tee", "1F") SMAW("AA-12", "tee", "1F, 2F"),
	    { "1. AA-11, week 1, optional\n2. AA-12, week 2\n" }, 0, NULL, NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "optional above optional is met", SMAW("AA-11",
	    "tee", "1F")
	    SMAW("AA-12", "tee", "2F"), {
	    "1. AA-11, week 1, optional\n2. AA-12, week 2, optional\n" }, 0,
	    NULL, NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "one branch below", SMAW("AA-11", "tee", "1F")
	    SMAW("AA-12", "tee", "2F") SMAW("AA-13", "tee", "3F up"),
	    { "1. one of AA-11, AA-13, week 1\n2. AA-12, week 2\n" }, 1,
	    "one branch of a choice", NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "two branches of one choice", SMAW("AA-11",
	    "tee", "1F")
	    SMAW("AA-12", "tee", "2F"), { "1. one of AA-11, AA-12, week 1\n" }, 0, NULL,
	    NULL },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "brought 2F, so nothing is asked", BROUGHT_2F,
	    { "1. AA-11, week 1\n", "1. AA-12, week 1\n" }, 0, NULL,
	    "- **Entry:** quarter 2, then 1, with a.one assessed\n" },
	{ FINDING_HORIZONTAL_BEFORE_FLAT, "brought something else", BROUGHT_2F,
	    { "1. AA-11, week 1\n", "1. AA-12, week 1\n" }, 1, "for those who come by",
	    "- **Entry:** quarter 2, then 1, with a.two assessed\n" },
};

static void test_silent(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(silent); i++)
		trade_expect(&silent[i]);
}

/* Each custom goes off by its own words and by no other. */
static void test_off(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(rungs); i += 2) {
		struct trade_case c = rungs[i];
		struct bench t;

		c.quarters[1] = str_has(str_of(c.works), "ZZ-01") ? "1. ZZ-01, week 1\n" :
		    NULL;
		t = trade_judge(&c, finding_info(c.name)->custom);
		assert_int_equal(t.m->ncustoms_off, 1);
		assert_int_equal(trade_count(&t, c.name, NULL), 0);
		bench_free(&t);
		t = trade_judge(&c, finding_info(FINDING_SKILL_GONE_COLD)->custom);
		assert_int_equal(trade_count(&t, c.name, NULL), 1);
		bench_free(&t);
	}
}

/* A path that meets the quarters the other way round is told of, by name. */
static void test_path(void **state)
{
	static const struct trade_case c = { FINDING_WIRE_BEFORE_STICK, "path",
	    DO("AA-11", "SMAW")
	    DO("AA-12", "GMAW-S"), { "1. AA-11, week 1\n", "1. AA-12, week 1\n" }, 1,
	    "for those who come by \"quarter 2, then 1\"",
	    "- **Entry:** quarter 2, then 1\n" };

	(void)state;
	trade_expect(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_rungs),
		cmocka_unit_test(test_silent),
		cmocka_unit_test(test_off),
		cmocka_unit_test(test_path),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
