/* R1 to R4 and R7 to R18: each fires, keeps silent, and is tried at its limit. */
#include "trade_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define STICK_PAD(id) WORK(id, "drill", WELD("SMAW", "surfacing", "flat"))
#define STICK_TEE(id) WORK(id, "coupon", WELD("SMAW", "tee", "2F") ACCEPT("Fit-up", \
	"tight"))
#define SHOP_CARD(id) WORK(id, "safety", TEACHES("saf.shop assessed"))
#define CUT(id) WORK(id, "coupon", FACT("Process", "OFC") FACT("Joint", "cut edge") \
	FACT("Position", "flat") PLATE("3/8 in"))
#define SHEAR(id) WORK(id, "drill", FACT("Machines", "shear"))

static const struct trade_case safety[] = {
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "card a week late", STICK_PAD("SM-01")
	    SHOP_CARD("SF-01"),
	    { "1. SM-01, week 1\n2. SF-01, week 2\n" }, 1,
	    "SM-01 (quarter 1, week 1) works in the shop "
	    "before the shop's safety sign-off", NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "same week, line after", STICK_PAD("SM-01")
	    SHOP_CARD("SF-01"),
	    { "1. SM-01, week 1\n2. SF-01, week 1\n" }, 1, "SF-01 signs off safety", NULL
	    },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "same week, line before", STICK_PAD("SM-01")
	    SHOP_CARD("SF-01"),
	    { "1. SF-01, week 1\n2. SM-01, week 1\n" }, 0, NULL, NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "no card at all, two askers are one finding",
	    STICK_PAD("SM-01") STICK_PAD("SM-02"), {
	    "1. SM-01, week 1\n2. SM-02, week 2\n" }, 1,
	    "and no safety work comes before it", NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "only a card that names a process serves",
	    WORK("SF-01", "safety", FACT("Process", "SMAW")) STICK_PAD("SM-01"),
	    { "1. SF-01, week 1\n2. SM-01, week 1\n" }, 0, NULL, NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY,
	    "a card with a process is no shop card where there is one",
	    WORK("SF-02", "safety", FACT("Process", "SMAW")) STICK_PAD("SM-01")
	    SHOP_CARD("SF-01"),
	    { "1. SF-02, week 1\n2. SM-01, week 2\n3. SF-01, week 3\n" }, 1, "SF-02", NULL
	    },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "written work needs no card",
	    WORK("PR-01", "written", FACT("Process", "SMAW")), { "1. PR-01, week 1\n" },
	    0, NULL, NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "the unmet need tells it",
	    WORK("SM-01", "drill", WELD("SMAW", "surfacing", "flat")
	    NEEDS("saf.shop assessed"))
	    SHOP_CARD("SF-01"), { "1. SM-01, week 1\n2. SF-01, week 2\n" }, 0, NULL, NULL
	    },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "optional card", STICK_PAD("SM-01")
	    SHOP_CARD("SF-01"),
	    { "1. SF-01, week 1, optional\n2. SM-01, week 2\n" }, 1,
	    "only optional work signs off", NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "card in one branch",
	    STICK_PAD("SM-01") SHOP_CARD("SF-01") WORK("SF-03", "written", ""),
	    { "1. one of SF-01, SF-03, week 1\n2. SM-01, week 2\n" }, 1,
	    "only one branch of a choice", NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "every branch a card",
	    STICK_PAD("SM-01") SHOP_CARD("SF-01") SHOP_CARD("SF-03"),
	    { "1. one of SF-01, SF-03, week 1\n2. SM-01, week 2\n" }, 0, NULL, NULL },

	{ FINDING_PROCESS_BEFORE_CARD, "arc card late", SHOP_CARD("SF-01")
	    STICK_PAD("SM-01")
	    WORK("SF-02", "safety", FACT("Process", "SMAW")),
	    { "1. SF-01, week 1\n2. SM-01, week 1\n3. SF-02, week 2\n" }, 1,
	    "works with an arc before the safety card for it", NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "one arc card serves every arc", SHOP_CARD("SF-01")
	    WORK("SF-02", "safety", FACT("Process", "SMAW")) WORK("GM-01", "drill",
	    WELD("GMAW-S", "surfacing", "flat")), {
	    "1. SF-01\n2. SF-02\n3. GM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "but not fuel gas", SHOP_CARD("SF-01")
	    WORK("SF-02", "safety", FACT("Process", "SMAW")) CUT("TC-01"),
	    { "1. SF-01\n2. SF-02\n3. TC-01, week 2\n" }, 1,
	    "works with fuel gas, and no safety card", NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "a card by its assessed skill", SHOP_CARD("SF-01")
	    WORK("SF-02", "safety", TEACHES("saf.arc assessed")) WORK("SM-01", "drill",
	    WELD("SMAW", "surfacing", "flat") NEEDS("saf.arc assessed")),
	    { "1. SF-01\n2. SF-02\n3. SM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "reached through the needs of others",
	    SHOP_CARD("SF-01")
	    WORK("SF-02", "safety", TEACHES("saf.arc assessed")) WORK("PR-01", "written",
	    NEEDS("saf.arc assessed") TEACHES("a.one practiced")) WORK("SM-01", "drill",
	    WELD("SMAW", "surfacing", "flat") NEEDS("a.one practiced")),
	    { "1. SF-01\n2. SF-02\n3. PR-01\n4. SM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "a card by its title", SHOP_CARD("SF-01")
	    "# SF-02: Arc and torch card\n\n" FACT("Kind", "safety") FACT("Hours", "2")
	    "\n" STICK_PAD("SM-01") CUT("TC-01"),
	    { "1. SF-01\n2. SF-02\n3. SM-01, week 2\n4. TC-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "a plasma arc is no welding arc", SHOP_CARD("SF-01")
	    "# SF-02: Plasma arc card\n\n" FACT("Kind", "safety") FACT("Hours", "2")
	    "\n" STICK_PAD("SM-01"),
	    { "1. SF-01\n2. SF-02\n3. SM-01, week 2\n" }, 1, "no safety card", NULL },
	{ FINDING_PROCESS_BEFORE_CARD, "introduced is no card", SHOP_CARD("SF-01")
	    WORK("SF-02", "safety", TEACHES("saf.arc introduced")) WORK("SM-01", "drill",
	    WELD("SMAW", "surfacing", "flat") NEEDS("saf.arc introduced")),
	    { "1. SF-01\n2. SF-02\n3. SM-01, week 2\n" }, 1, "no safety card", NULL },

	/* The card for the arc needs that of the shop and does not stand for it. */
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "a card that needs the shop's card first",
	    WORK("SF-01", "safety", TEACHES("saf.shop assessed"))
	    WORK("SF-02", "safety", NEEDS("saf.shop assessed") TEACHES("saf.arc assessed"))
	    STICK_PAD("SM-01"), { "1. SF-02, week 1\n2. SM-01, week 1\n3. SF-01, week 2\n" },
	    1, "SF-01", NULL },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "in order",
	    WORK("SF-01", "safety", TEACHES("saf.shop assessed"))
	    WORK("SF-02", "safety", NEEDS("saf.shop assessed") TEACHES("saf.arc assessed"))
	    STICK_PAD("SM-01"), { "1. SF-01, week 1\n2. SF-02, week 1\n3. SM-01, week 2\n" },
	    0, NULL, NULL },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "sign-off late", SHOP_CARD("SF-01")
	    SHEAR("FB-01")
	    WORK("SF-02", "safety", FACT("Machines", "shear")),
	    { "1. SF-01\n2. FB-01, week 1\n3. SF-02, week 2\n" }, 1,
	    "FB-01 (quarter 1, week 1) uses the "
	    "shear before its sign-off", NULL },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "signed off", SHEAR("FB-01") WORK("SF-02",
	    "safety",
	    FACT("Machines", "shear")), { "1. SF-02\n2. FB-01, week 1\n" }, 0, NULL, NULL
	    },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "a shear that no card lists",
	    SHOP_CARD("SF-01") SHEAR("FB-01"),
	    { "1. SF-01\n2. FB-01, week 2\n" }, 1, "which no safety card signs off", NULL
	    },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "an oven that no card lists",
	    SHOP_CARD("SF-01")
	    WORK("FB-01", "drill", FACT("Machines", "rod oven")), {
	    "1. SF-01\n2. FB-01, week 2\n" }, 0,
	    NULL, NULL },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "an oven that a later card lists",
	    SHOP_CARD("SF-01")
	    WORK("FB-01", "drill", FACT("Machines", "rod oven")) WORK("SF-02", "safety",
	    FACT("Machines", "rod oven")), {
	    "1. SF-01\n2. FB-01, week 2\n3. SF-02, week 3\n" }, 1,
	    "rod oven", NULL },

	{ FINDING_HOT_WORK_BEFORE_CARD, "cutting before the fire watch",
	    SHOP_CARD("SF-01")
	    WORK("SF-02", "safety", FACT("Process", "OFC")) CUT("TC-01") WORK("SF-03",
	    "safety",
	    ACCEPT("Fire watch", "stood for an hour")),
	    { "1. SF-01\n2. SF-02\n3. TC-01, week 2\n4. SF-03, week 3\n" }, 1,
	    "does hot work before the hot-work card", NULL },
	{ FINDING_HOT_WORK_BEFORE_CARD, "cutting after it", CARDS CUT("TC-01"),
	    { CARD_LINES "3. TC-01, week 1\n" }, 0, NULL, NULL },
	{ FINDING_HOT_WORK_BEFORE_CARD, "an arc in the booth is not asked",
	    SHOP_CARD("SF-01")
	    STICK_PAD("SM-01"), { "1. SF-01\n2. SM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_HOT_WORK_BEFORE_CARD, "an arc on the open floor is", SHOP_CARD("SF-01")
	    WORK("SF-02",
	    "safety", FACT("Process", "SMAW")) WORK("SM-01", "drill", WELD("SMAW",
	    "surfacing", "flat")
	    FACT("Place", "open floor")), { "1. SF-01\n2. SF-02\n3. SM-01, week 2\n" }, 1,
	    "and no hot-work card", NULL },
	{ FINDING_HOT_WORK_BEFORE_CARD, "without the words, a card that cutting needs",
	    SHOP_CARD("SF-01")
	    WORK("TC-01", "coupon", FACT("Process", "OFC") FACT("Joint", "cut edge")
	    FACT("Position", "flat") PLATE("3/8 in") NEEDS("saf.shop assessed")),
	    { "1. SF-01\n2. TC-01, week 2\n" }, 0, NULL, NULL },
};

static void test_safety(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(safety); i++)
		trade_expect(&safety[i]);
}

/* One missing card is one finding of one name. */
static void test_one_card_is_one_finding(void **state)
{
	static const struct trade_case c = { FINDING_WORK_BEFORE_SHOP_SAFETY, "",
	    SHOP_CARD("SF-01")
	    CUT("TC-01") SHEAR("FB-01"), { "1. TC-01, week 1\n2. SF-01, week 2\n" }, 1,
	    NULL, NULL };
	static const struct trade_case none = { FINDING_WORK_BEFORE_SHOP_SAFETY, "",
	    CUT("TC-01"),
	    { "1. TC-01, week 1\n" }, 1, NULL, NULL };
	struct bench t = trade_judge(&none, NULL);

	(void)state;
	trade_expect(&c);
	assert_int_equal(trade_count(&t, FINDING_WORK_BEFORE_SHOP_SAFETY, NULL), 1);
	assert_int_equal(trade_count(&t, FINDING_PROCESS_BEFORE_CARD, NULL), 0);
	assert_int_equal(trade_count(&t, FINDING_HOT_WORK_BEFORE_CARD, NULL), 0);
	bench_free(&t);
}

#define BROKEN(id, by) WORK(id, "coupon", WELD("SMAW", "tee", "2F") by \
	ACCEPT("Fillet break", "1"))
#define MEASURED(id) WORK(id, "coupon", WELD("SMAW", "tee", "2F") ACCEPT("Size", \
	"8 in, \302\2611/16 in"))
#define RULED(id) WORK(id, "drill", PLATE("1/4 in") ACCEPT("Size", \
	"6 in, \302\2611/32 in"))
#define GAUGED(id, by) WORK(id, "coupon", WELD("SMAW", "tee", "2F") by \
	ACCEPT("Leg size", "5/16 in, fillet gauge"))
#define BEVELED(id, by) WORK(id, "coupon", WELD("SMAW", "single-V", "1G") \
	FACT("Stock", by))
#define BEVEL_CUT(id) WORK(id, "coupon", FACT("Process", "OFC") FACT("Joint", \
	"bevel cut") \
	FACT("Position", "flat") PLATE("3/8 in"))
#define TEE(id, kind) WORK(id, kind, WELD("SMAW", "tee", "2F"))
#define FIT(id) WORK(id, "drill", WELD("SMAW", "tee", "flat") ACCEPT("Tacks", "sound"))

#define PLAIN_CARDS SHOP_CARD("AA-01") WORK("AA-02", "safety", \
	TEACHES("saf.arc assessed"))

static const struct trade_case taught[] = {
	{ FINDING_TEST_NOT_SHOWN, "students break what nobody broke", CARDS
	    BROKEN("SM-01", STUDENT),
	    { CARD_LINES "3. SM-01, week 2\n" }, 1,
	    "lets students make the fillet break themselves, which no "
	    "earlier work shows", NULL },
	{ FINDING_TEST_NOT_SHOWN, "seen with the instructor, then made", CARDS
	    BROKEN("SM-01", INSTRUCTOR)
	    BROKEN("SM-02", STUDENT), { CARD_LINES "3. SM-01, week 2\n4. SM-02, week 2\n"
	    }, 0, NULL, NULL },
	{ FINDING_TEST_NOT_SHOWN, "the instructor's alone is no fault", CARDS
	    BROKEN("SM-01", INSTRUCTOR),
	    { CARD_LINES "3. SM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_TEST_NOT_SHOWN, "a bench that welds nothing teaches it", CARDS
	    WORK("IT-01", "coupon",
	    PLATE("3/8 in") STUDENT ACCEPT("Tensile", "1")), { CARD_LINES
	    "3. IT-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_TEST_NOT_SHOWN, "a face bend shows a root bend", CARDS WORK("SM-01",
	    "coupon",
	    WELD("SMAW", "single-V", "1G") INSTRUCTOR ACCEPT("Face bend", "1"))
	    WORK("SM-02", "coupon",
	    WELD("SMAW", "single-V", "1G") STUDENT ACCEPT("Root bend", "1")),
	    { CARD_LINES "3. SM-01, week 2\n4. SM-02, week 2\n" }, 0, NULL, NULL },

	{ FINDING_MEASURED_TOO_EARLY, "measured before measuring", CARDS MEASURED("SM-01")
	    RULED("SF-01"),
	    { CARD_LINES "3. SM-01, week 2\n4. SF-01, week 3\n" }, 1,
	    "is judged by measured sizes before", NULL },
	{ FINDING_MEASURED_TOO_EARLY, "after it", CARDS MEASURED("SM-01") RULED("SF-01"),
	    { CARD_LINES "3. SF-01, week 2\n4. SM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_MEASURED_TOO_EARLY, "an exercise at the saw that says so", CARDS
	    MEASURED("SM-01") "# SF-01: Measured blanks\n\n" FACT("Kind", "drill")
	    FACT("Hours", "2") FACT("Machines", "shear")
	    ACCEPT("Length", "3 in, \xC2\xB1" "1/16 in") "\n",
	    { CARD_LINES "3. SM-01, week 2\n4. SF-01, week 3\n" }, 1,
	    "is judged by measured sizes before", NULL },
	{ FINDING_MEASURED_TOO_EARLY, "one that does not is a job at a machine", CARDS
	    MEASURED("SM-01") "# SF-01: Bent strips\n\n" FACT("Kind", "drill")
	    FACT("Hours", "2") FACT("Machines", "shear")
	    ACCEPT("Length", "3 in, \xC2\xB1" "1/16 in") "\n",
	    { CARD_LINES "3. SM-01, week 2\n4. SF-01, week 3\n" }, 0, NULL, NULL },
	{ FINDING_MEASURED_TOO_EARLY, "no exercise anywhere: not known", CARDS
	    MEASURED("SM-01"),
	    { CARD_LINES "3. SM-01, week 2\n" }, 0, NULL, NULL },

	{ FINDING_GAUGE_NOT_SHOWN, "students gauge first", CARDS GAUGED("SM-01", STUDENT),
	    { CARD_LINES "3. SM-01, week 2\n" }, 1, "lets students gauge", NULL },
	{ FINDING_GAUGE_NOT_SHOWN, "the instructor gauges first", CARDS GAUGED("SM-01",
	    INSTRUCTOR)
	    GAUGED("SM-02", STUDENT), { CARD_LINES "3. SM-01, week 2\n4. SM-02, week 2\n"
	    }, 0, NULL, NULL },

	{ FINDING_BEVELED_TOO_EARLY, "bevel cut later", CARDS BEVELED("SM-01",
	    "beveled by student")
	    BEVEL_CUT("TC-01"), { CARD_LINES "3. SM-01, week 2\n4. TC-01, week 3\n" }, 1,
	    "before bevel cutting "
	    "is taught", NULL },
	{ FINDING_BEVELED_TOO_EARLY, "bevel cut never", CARDS BEVELED("SM-01",
	    "beveled by student"),
	    { CARD_LINES "3. SM-01, week 2\n" }, 1,
	    "no earlier work teaches bevel cutting", NULL },
	{ FINDING_BEVELED_TOO_EARLY, "by the aide", CARDS BEVELED("SM-01",
	    "beveled by aide"),
	    { CARD_LINES "3. SM-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_BEVELED_TOO_EARLY, "cut earlier the same week", CARDS BEVEL_CUT("TC-01")
	    BEVELED("SM-01", "beveled by student"), { CARD_LINES
	    "3. TC-01, week 2\n4. SM-01, week 2\n" }, 0,
	    NULL, NULL },

	{ FINDING_WELDED_BEFORE_FIT_UP, "fit-up later", CARDS TEE("SM-02", "coupon")
	    FIT("SM-01"),
	    { CARD_LINES "3. SM-02, week 2\n4. SM-01, week 3\n" }, 1,
	    "joins pieces before fit-up", NULL },
	{ FINDING_WELDED_BEFORE_FIT_UP, "fit-up first", CARDS TEE("SM-02", "coupon")
	    FIT("SM-01"),
	    { CARD_LINES "3. SM-01, week 2\n4. SM-02, week 2\n" }, 0, NULL, NULL },
	{ FINDING_WELDED_BEFORE_FIT_UP, "a pad joins nothing", CARDS STICK_PAD("SM-02")
	    FIT("SM-01"),
	    { CARD_LINES "3. SM-02, week 2\n4. SM-01, week 3\n" }, 0, NULL, NULL },
	{ FINDING_WELDED_BEFORE_FIT_UP, "one piece joins nothing", CARDS WORK("SM-02",
	    "coupon",
	    WELD("SMAW", "tee", "2F")
	    "\n## Pieces\n\n- plate: 1 of 3/8 x 3 x 8 in A36 plate, sawn\n")
	    FIT("SM-01"), { CARD_LINES "3. SM-02, week 2\n4. SM-01, week 3\n" }, 0, NULL,
	    NULL },
	{ FINDING_WELDED_BEFORE_FIT_UP, "a project is never the first", CARDS TEE("SM-02",
	    "project"),
	    { CARD_LINES "3. SM-02, week 2\n" }, 1, "no earlier work teaches fit-up", NULL
	    },
	{ FINDING_WELDED_BEFORE_FIT_UP,
	    "a coupon before it is enough where no sheet says fit-up",
	    CARDS TEE("SM-02", "project") TEE("SM-01", "coupon"),
	    { CARD_LINES "3. SM-01, week 2\n4. SM-02, week 3\n" }, 0, NULL, NULL },
	{ FINDING_WELDED_BEFORE_FIT_UP, "a coupon may be", CARDS TEE("SM-02", "coupon"),
	    { CARD_LINES "3. SM-02, week 2\n" }, 0, NULL, NULL },

	{ FINDING_WELDED_BEFORE_SET_UP, "pad later", PLAIN_CARDS TEE("SM-02", "coupon")
	    STICK_PAD("SM-01"),
	    { CARD_LINES "3. SM-02, week 2\n4. SM-01, week 3\n" }, 1,
	    "welds a joint with stick welding before "
	    "its set-up is taught", NULL },
	{ FINDING_WELDED_BEFORE_SET_UP, "no, the card names the process", CARDS
	    TEE("SM-02", "coupon"),
	    { CARD_LINES "3. SM-02, week 2\n" }, 0, NULL, NULL },
	{ FINDING_WELDED_BEFORE_SET_UP, "another process does not count", CARDS
	    STICK_PAD("SM-01")
	    WORK("FC-01", "project", WELD("FCAW-G", "tee", "2F")),
	    { CARD_LINES "3. SM-01, week 2\n4. FC-01, week 3\n" }, 1, "cored wire", NULL
	    },
	{ FINDING_WELDED_BEFORE_SET_UP, "short circuit counts for spray", CARDS
	    WORK("GM-01", "drill",
	    WELD("GMAW-S", "surfacing", "flat")) WORK("GM-02", "project", WELD("GMAW",
	    "tee", "2F")),
	    { CARD_LINES "3. GM-01, week 2\n4. GM-02, week 3\n" }, 0, NULL, NULL },
	{ FINDING_WELDED_BEFORE_SET_UP, "a set-up line on the sheet itself", CARDS
	    WORK("FC-01", "project",
	    WELD("FCAW-G", "tee", "2F") ACCEPT("Set-up", "right")), { CARD_LINES
	    "3. FC-01, week 3\n" }, 0,
	    NULL, NULL },
};

static void test_taught(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(taught); i++)
		trade_expect(&taught[i]);
}

#define BLOCK(word, body) "\n## Drawing\n\n```" word "\n" body "```\n"
#define CONE BLOCK("pattern", "shape: cone\nbase: 12 in\ntop: 6 in\nheight: 8 in\n")
#define BLANK BLOCK("plate", "length: 8 in\nwidth: 6 in\nthickness: 1/4 in\n")
#define STEPS "\n## Procedure\n\n1. Build it.\n"
#define OPEN FACT("Backing", "none")
#define TEST "qualification test"

static const struct trade_case later[] = {
	{ FINDING_PATTERN_NOT_TAUGHT, "exercise after the project", WORK("PD-01",
	    "project", CONE)
	    WORK("PD-02", "coupon", CONE) CUT("TC-01"), {
	    "1. PD-01, week 1\n2. PD-02, week 2\n3. TC-01\n" }, 1,
	    "radial lines", NULL },
	{ FINDING_PATTERN_NOT_TAUGHT, "a project may introduce it", WORK("PD-01",
	    "project", CONE)
	    CUT("TC-01"), { "1. PD-01, week 1\n2. TC-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PATTERN_NOT_TAUGHT, "exercise first", WORK("PD-01", "project", CONE)
	    WORK("PD-02", "coupon", CONE) CUT("TC-01"), {
	    "1. PD-02, week 1\n2. PD-01, week 1\n3. TC-01\n" }, 0,
	    NULL, NULL },

	{ FINDING_PRINT_NOT_TAUGHT, "first drawing is a build", CUT("TC-01") WORK("FB-01",
	    "project", BLANK),
	    { "1. TC-01, week 1\n2. FB-01, week 2\n" }, 1,
	    "is built from its print alone", NULL },
	{ FINDING_PRINT_NOT_TAUGHT, "with a procedure", CUT("TC-01") WORK("FB-01",
	    "project", BLANK STEPS),
	    { "1. TC-01, week 1\n2. FB-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PRINT_NOT_TAUGHT, "after another drawing", CUT("TC-01") WORK("FB-01",
	    "project", BLANK)
	    WORK("SF-03", "drill", BLANK), {
	    "1. TC-01, week 1\n2. SF-03, week 2\n3. FB-01, week 2\n" }, 0,
	    NULL, NULL },

	{ FINDING_OPEN_PIPE_BEFORE_PLATE, "plate later", WORK("PP-01", "coupon",
	    PIPE("SMAW", "5G up") OPEN)
	    WORK("GP-01", "coupon", WELD("SMAW", "single-V", "1G") OPEN),
	    { "1. PP-01, week 1\n2. GP-01, week 2\n" }, 1, "before an open root on plate",
	    NULL },
	{ FINDING_OPEN_PIPE_BEFORE_PLATE, "plate first", WORK("PP-01", "coupon",
	    PIPE("SMAW", "5G up") OPEN)
	    WORK("GP-01", "coupon", WELD("SMAW", "single-V", "1G") OPEN),
	    { "1. GP-01, week 1\n2. PP-01, week 2\n" }, 0, NULL, NULL },
	{ FINDING_OPEN_PIPE_BEFORE_PLATE, "backing does not count", WORK("PP-01",
	    "coupon",
	    PIPE("SMAW", "5G up") OPEN) WORK("GP-01", "coupon", WELD("SMAW", "single-V",
	    "1G")
	    FACT("Backing", "steel strip 1/4 x 1 in")), {
	    "1. GP-01, week 1\n2. PP-01, week 2\n" }, 1,
	    "and no open root on plate", NULL },
	{ FINDING_OPEN_PIPE_BEFORE_PLATE, "another process does not count", WORK("PP-01",
	    "coupon",
	    PIPE("GTAW", "5G up") OPEN) WORK("GP-01", "coupon", WELD("SMAW", "single-V",
	    "1G") OPEN),
	    { "1. GP-01, week 1\n2. PP-01, week 2\n" }, 1, "tungsten arc", NULL },
	{ FINDING_OPEN_PIPE_BEFORE_PLATE, "pipe with a ring is not asked", WORK("PP-01",
	    "coupon",
	    PIPE("SMAW", "5G up") FACT("Backing", "ring")), { "1. PP-01, week 1\n" }, 0,
	    NULL, NULL },

	{ FINDING_PIPE_NOT_PREPARED, "drill later", WORK("PP-02", "coupon", PIPE("SMAW",
	    "2G"))
	    WORK("PP-01", "drill", PIPE("SMAW", "1G rolled")), {
	    "1. PP-02, week 1\n2. PP-01, week 2\n" }, 1,
	    "joins pipe before pipe preparation", NULL },
	{ FINDING_PIPE_NOT_PREPARED, "drill first", WORK("PP-02", "coupon", PIPE("SMAW",
	    "2G"))
	    WORK("PP-01", "drill", PIPE("SMAW", "1G rolled")), {
	    "1. PP-01, week 1\n2. PP-02, week 1\n" }, 0,
	    NULL, NULL },
	{ FINDING_PIPE_NOT_PREPARED, "a test is never the first", WORK("PP-02", TEST,
	    PIPE("SMAW", "2G")),
	    { "1. PP-02, week 2\n" }, 1, "no earlier work teaches pipe preparation", NULL
	    },

	{ FINDING_PROCEDURE_NOT_READ, "the first procedure is the test's", WORK("GP-08",
	    TEST,
	    WELD("SMAW", "single-V", "3G up") FACT("Procedure", "P-1")), {
	    "1. GP-08, week 2\n" }, 1,
	    "cites a procedure, and no earlier work", NULL },
	{ FINDING_PROCEDURE_NOT_READ, "a written sheet asks about one", WORK("GP-08",
	    TEST,
	    WELD("SMAW", "single-V", "3G up") FACT("Procedure", "P-1")) WORK("IT-01",
	    "written",
	    ACCEPT("Procedure sheet", "nine of ten facts")), {
	    "1. IT-01, week 1\n2. GP-08, week 1\n" }, 0,
	    NULL, NULL },

	{ FINDING_PURGE_NOT_SHOWN, "the first purge is the test's", WORK("PP-09", TEST,
	    WELD("GTAW", "single-V", "3G up") FACT("Purge", "argon 10 cfh")), {
	    "1. PP-09, week 2\n" }, 1, "no earlier work sets up a purge", NULL },
	{ FINDING_PURGE_NOT_SHOWN, "a coupon before it", WORK("PP-09", TEST,
	    WELD("GTAW", "single-V", "3G up") FACT("Purge", "argon 10 cfh"))
	    WORK("GT-04", "coupon",
	    WELD("GTAW", "single-V", "3G up") FACT("Purge", "argon 10 cfh")), {
	    "1. GT-04, week 2\n2. PP-09, week 2\n" }, 0, NULL, NULL },
	{ FINDING_PURGE_NOT_SHOWN, "none is none", WORK("PP-09", TEST,
	    WELD("GTAW", "single-V", "3G up") FACT("Purge", "none")), {
	    "1. PP-09, week 2\n" }, 0, NULL, NULL },
	{ FINDING_REPAIR_BEFORE_GOUGING, "first gouge is the repair", WORK("CP-02",
	    "coupon",
	    WELD("CAC-A, SMAW", "U-groove", "flat")), { "1. CP-02, week 1\n" }, 1,
	    "no earlier work teaches "
	    "gouging", NULL },
	{ FINDING_REPAIR_BEFORE_GOUGING, "gouged before", WORK("CP-02", "coupon",
	    WELD("CAC-A, SMAW", "U-groove", "flat")) WORK("TC-04", "coupon",
	    WELD("CAC-A", "U-groove", "flat")), { "1. TC-04, week 1\n2. CP-02, week 1\n"
	    }, 0, NULL, NULL },
	{ FINDING_REPAIR_BEFORE_GOUGING, "gouging alone is no repair", WORK("TC-04",
	    "coupon",
	    WELD("CAC-A", "U-groove", "flat")), { "1. TC-04, week 1\n" }, 0, NULL, NULL },
};

static void test_later(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(later); i++)
		trade_expect(&later[i]);
}

/* Level of the finding, and related places of all others. */
static void test_levels_and_places(void **state)
{
	static const struct trade_case c = { FINDING_BEVELED_TOO_EARLY, "", CARDS
	    BEVEL_CUT("TC-01")
	    BEVELED("SM-01", "beveled by student") BEVELED("SM-02", "beveled by student"),
	    { CARD_LINES
	    "3. TC-01, week 2, optional\n4. SM-01, week 3\n5. SM-02, week 4\n" }, 1, NULL,
	    NULL };
	struct bench t = trade_judge(&c, NULL);
	const struct finding *d = NULL;

	(void)state;
	assert_int_equal(trade_count(&t, c.name, &d), 1);
	assert_int_equal(d->level, LEVEL_WARNING);
	expect_str(d->assignment, "SM-01");
	expect_str(d->cause, "TC-01 teaches bevel cutting in quarter 1, week 2");
	assert_int_equal(d->nrelated, 1);
	expect_str(d->related[0].assignment, "SM-02");
	bench_free(&t);
}

/* Students who bring what the card assesses have had it; introduced is no card. */
#define TWO_MACHINES WORK("AA-01", "safety", TEACHES("saf.shop assessed")) \
	WORK("AA-02", "safety", FACT("Machines", "shear, rod oven") \
	TEACHES("a.one assessed")) SHEAR("FB-01") \
	WORK("FB-02", "drill", FACT("Machines", "rod oven"))
#define TWO_CARDS "1. AA-01, week 1\n2. AA-02, week 1\n"
#define LATE_CARD SHOP_CARD("SF-01") STICK_PAD("SM-01")
#define PATH(with) "- **Entry:** quarter 2, then 1, with " with "\n"

static const struct trade_case brought[] = {
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "brought assessed", LATE_CARD,
	    { "1. SF-01, week 1\n", "1. SM-01, week 1\n" }, 0, NULL,
	    PATH("saf.shop assessed") },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "brought introduced", LATE_CARD,
	    { "1. SF-01, week 1\n", "1. SM-01, week 1\n" }, 1, "for those who come by",
	    PATH("saf.shop introduced") },
	{ FINDING_BEVELED_TOO_EARLY, "brought what the bevel sheet assesses", CARDS
	    BEVELED("SM-01", "beveled by student") WORK("TC-01", "coupon", FACT("Process",
	    "OFC")
	    FACT("Joint", "bevel cut") FACT("Position", "flat") PLATE("3/8 in")
	    TEACHES("a.one assessed")),
	    { CARD_LINES "3. TC-01, week 2\n", "1. SM-01, week 1\n" }, 0, NULL,
	    PATH("saf.shop assessed, a.one practiced") },
	{ FINDING_BEVELED_TOO_EARLY, "brought something else", CARDS BEVELED("SM-01",
	    "beveled by student")
	    WORK("TC-01", "coupon", FACT("Process", "OFC") FACT("Joint", "bevel cut")
	    FACT("Position", "flat") PLATE("3/8 in") TEACHES("a.one practiced")),
	    { CARD_LINES "3. TC-01, week 2\n", "1. SM-01, week 1\n" }, 1, NULL,
	    PATH("a.two practiced") },
	{ FINDING_BEVELED_TOO_EARLY, "brought all that the bevel sheet teaches", CARDS
	    BEVELED("SM-01", "beveled by student")
	    WORK("TC-01", "coupon", FACT("Process", "OFC") FACT("Joint", "bevel cut")
	    FACT("Position", "flat") PLATE("3/8 in") TEACHES("a.one practiced")),
	    { CARD_LINES "3. TC-01, week 2\n", "1. SM-01, week 1\n" }, 0, NULL,
	    PATH("saf.shop assessed, a.one practiced") },
	{ FINDING_BEVELED_TOO_EARLY, "brought less than it teaches", CARDS
	    BEVELED("SM-01", "beveled by student")
	    WORK("TC-01", "coupon", FACT("Process", "OFC") FACT("Joint", "bevel cut")
	    FACT("Position", "flat") PLATE("3/8 in") TEACHES("a.one practiced\n- a.two "
	    "practiced")),
	    { CARD_LINES "3. TC-01, week 2\n", "1. SM-01, week 1\n" }, 1, NULL,
	    PATH("saf.shop assessed, a.one practiced") },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "one card for two machines, left out by the path",
	    TWO_MACHINES, { TWO_CARDS, "1. FB-01, week 1\n2. FB-02, week 2\n" }, 1,
	    "AA-02 signs off the shear, and this path leaves it out",
	    "- **Entry:** quarter 2, with saf.shop assessed\n" },
	{ FINDING_MACHINE_BEFORE_SIGN_OFF, "and its skill is brought", TWO_MACHINES,
	    { TWO_CARDS, "1. FB-01, week 1\n2. FB-02, week 2\n" }, 0, NULL,
	    "- **Entry:** quarter 2, with saf.shop assessed, a.one assessed\n" },
	{ FINDING_WORK_BEFORE_SHOP_SAFETY, "which is no safety card", STICK_PAD("SM-01"),
	    { NULL, "1. SM-01, week 1\n" }, 1, "no safety work",
	    "- **Entry:** quarter 2, with a.three practiced\n" },
};

static void test_brought(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(brought); i++)
		trade_expect(&brought[i]);
}

/* A skill that no sheet here assesses may stand for what is missing: of its path nothing
 * is said, unless it is only introduced. */
static void test_brought_unknown(void **state)
{
	static const char *const with[] = { "a.three practiced", "a.three introduced" };

	(void)state;
	for (size_t i = 0; i < COUNT(with); i++) {
		char entry[100];
		struct trade_case c = { FINDING_BEVELED_TOO_EARLY, "", CARDS
		    BEVELED("SM-01", "beveled by student"),
		    { CARD_LINES, "1. SM-01, week 1\n" }, 1, NULL, entry };
		const struct finding *d = NULL;
		struct bench t;

		snprintf(entry, sizeof entry, "- **Entry:** quarter 2, with saf.shop assessed, "
		    "%s\n", with[i]);
		t = trade_judge(&c, NULL);
		assert_int_equal(trade_count(&t, c.name, &d), 1);
		assert_int_equal(str_has(d->cause, "come by"), i == 1);
		bench_free(&t);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_safety),
		cmocka_unit_test(test_one_card_is_one_finding),
		cmocka_unit_test(test_taught),
		cmocka_unit_test(test_later),
		cmocka_unit_test(test_levels_and_places),
		cmocka_unit_test(test_brought),
		cmocka_unit_test(test_brought_unknown),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
