/* Each fault of the facts and sections of one assignment: it is reported once, at its
 * exact place, with the likely word; and the sound form beside it is not. Places are
 * counted by hand in the texts. */
#include "model_bench.h"

#include <string.h>

/* Kind on line 3, Hours 4, Process 5, Joint 6, Material 7, Thickness 8, Position 9. */
static const char *const base[] = {
	"- **Kind:** coupon", "- **Hours:** 16", "- **Process:** SMAW", "- **Joint:** tee",
	"- **Material:** A36 plate", "- **Thickness:** 3/8 in", "- **Position:** 2F",
};
enum { BASE = sizeof base / sizeof *base };

/* The base, with the line of the same key replaced, or `line` added as line 10. An
 * empty value "- **Key:**" followed by '!' leaves the line out. */
static str coupon(struct arena *a, const char *line, const char *tail)
{
	struct buf b = { .arena = a };
	size_t key = strcspn(line, ":") + 1;
	bool placed = !*line;

	buf_adds(&b, "# SM-20: Tee\n\n");
	for (size_t i = 0; i < BASE; i++) {
		bool same = *line && !strncmp(base[i], line, key);

		placed |= same;
		if (same && strstr(line, "!"))
			continue;
		buf_addf(&b, "%s\n", same ? line : base[i]);
	}
	if (!placed)
		buf_addf(&b, "%s\n", line);
	buf_adds(&b, tail);
	return (str){ buf_z(&b), b.n };
}

struct row {
	const char *line, *tail;
	enum finding_name name;
	uint32_t at_line, at_col;
	const char *message, *repair;
};

static void try_rows(const struct row *rows, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct bench t = bench_one(coupon(a, rows[i].line, rows[i].tail).p);
		const struct finding *d = expect_one(&t, rows[i].name, rows[i].at_line,
		    rows[i].at_col, rows[i].message, rows[i].repair);

		expect_str(d->assignment, "SM-20");
		assert_int_equal(d->scope, SCOPE_FILE);
		bench_free(&t);
		arena_free(a);
	}
}

static void try_sound(const char *const *lines, const char *const *tails, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct bench t = bench_one(coupon(a, lines ? lines[i] : "",
		    tails ? tails[i] : "").p);

		if (t.f->n)
			print_message("%s %s\n", lines ? lines[i] : "", tails ? tails[i] : "");
		expect_none(&t);
		bench_free(&t);
		arena_free(a);
	}
}

#define COUNT(v) (sizeof (v) / sizeof *(v))

static void faults_of_facts(void **state)
{
	static const struct row rows[] = {
		{ "- **Kind:** cupon", "", FINDING_UNKNOWN_WORD, 3, 13, "\"cupon\"", "\"coupon\"" },
		{ "- **Kind:** xyzzy", "", FINDING_UNKNOWN_WORD, 3, 13, "", "safety, written" },
		{ "- **Kind:**!", "", FINDING_MISSING_FACT, 1, 3, "Kind", "coupon" },
		{ "- **Hours:**!", "", FINDING_MISSING_FACT, 1, 3, "Hours", "16" },
		{ "- **Hours:** many", "", FINDING_BAD_QUANTITY, 4, 14, "many", "" },
		{ "- **Hours:** 16 A", "", FINDING_BAD_QUANTITY, 4, 17, "16 A", "" },
		{ "- **Hours:** 0", "", FINDING_BAD_QUANTITY, 4, 14, "hours", "" },
		{ "- **Station:**", "", FINDING_MISSING_FACT, 10, 5, "no value", "" },
		{ "- **Procces:** SMAW", "", FINDING_UNKNOWN_KEY, 10, 5, "Procces", "\"Process\"" },
		{ "- **Oven:** a\n- **Oven:** b", "", FINDING_DUPLICATE_KEY, 11, 5, "Oven", "" },
		{ "- **Process:** SMAW, GTWA", "", FINDING_UNKNOWN_WORD, 5, 22, "GTWA", "GTAW" },
		{ "- **Process:**!", "", FINDING_MISSING_FACT, 1, 3, "Process", "SMAW" },
		{ "- **Joint:** tee; laap", "", FINDING_UNKNOWN_WORD, 6, 19, "laap", "\"lap\"" },
		{ "- **Joint:**!", "", FINDING_MISSING_FACT, 1, 3, "Joint", "tee" },
		{ "- **Material:**!", "", FINDING_MISSING_FACT, 1, 3, "Material", "A36 plate" },
		{ "- **Thickness:** 3/8", "", FINDING_MISSING_UNIT, 8, 18, "3/8", "3/8 in" },
		{ "- **Thickness:** 9,5 mm", "", FINDING_BAD_QUANTITY, 8, 18,
		    "\"9,5\" can be one size or two", "a point" },
		{ "- **Thickness:** 0 in", "", FINDING_BAD_QUANTITY, 8, 18,
		    "more than 0", "" },
		{ "- **Thickness:** 1/4 in; 3/8 furlong", "", FINDING_BAD_QUANTITY, 8, 30, "", "" },
		{ "- **Thickness:**!", "", FINDING_MISSING_FACT, 1, 3, "Thickness", "3/8 in" },
		{ "- **Position:** 2Q", "", FINDING_UNKNOWN_WORD, 9, 17, "2Q", "" },
		{ "- **Position:** F3 up", "", FINDING_UNKNOWN_WORD, 9, 17, "\"F3\"", "" },
		{ "- **Position:** 3F", "", FINDING_MISSING_PROGRESSION, 9, 17, "3F", "3F up" },
		{ "- **Position:** 2F; 6G", "", FINDING_MISSING_PROGRESSION, 9, 21, "6G", "" },
		{ "- **Position:** 3F upp", "", FINDING_UNKNOWN_WORD, 9, 20, "upp", "\"up\"" },
		{ "- **Position:**!", "", FINDING_MISSING_FACT, 1, 3, "Position", "2F" },
		{ "- **Filler:** E7018, 1/8", "", FINDING_MISSING_UNIT, 10, 22, "1/8", "1/8 in" },
		{ "- **Current:** DC*, 90 A", "", FINDING_UNKNOWN_WORD, 10, 16, "DC*", "" },
		{ "- **Current:** 45 A", "", FINDING_UNKNOWN_WORD, 10, 16, "\"45 A\"", "DC+, DC-, AC" },
		{ "- **Current:** 125", "", FINDING_UNKNOWN_WORD, 10, 16, "\"125\"", "DC+, DC-, AC" },
		{ "- **Current:** 90-125 A, dc+", "", FINDING_UNKNOWN_WORD, 10, 16, "90-125 A",
		    "write \"DC+, 90-125 A\"" },
		{ "- **Current:** DC+, 90 A; 45 A", "", FINDING_UNKNOWN_WORD, 10, 27, "45 A", "" },
		{ "- **Current:** DC+, 110-140", "", FINDING_MISSING_UNIT, 10, 21, "", "" },
		{ "- **Volts:** 17-19 A", "", FINDING_BAD_QUANTITY, 10, 20, "17-19 A", "" },
		{ "- **Tungsten:** EWCe-2, 3/32", "", FINDING_MISSING_UNIT, 10, 25, "", "" },
		{ "- **Backing:** noen", "", FINDING_UNKNOWN_WORD, 10, 16, "noen", "\"none\"" },
		{ "- **Transfer:** sprey", "", FINDING_UNKNOWN_WORD, 10, 17, "sprey", "\"spray\"" },
		{ "- **Place:** boot", "", FINDING_UNKNOWN_WORD, 10, 14, "boot", "\"booth\"" },
		{ "- **Attempts:** 7", "", FINDING_BAD_QUANTITY, 10, 17, "from 1 to 6", "" },
		{ "- **Was:** 19", "", FINDING_BAD_ID, 10, 12, "\"19\"", "SM-19" },
		{ "- plain words", "", FINDING_NOT_UNDERSTOOD, 10, 3, "bullet", "- **Key:** value" },
		{ "", "\nA sentence.\n", FINDING_NOT_UNDERSTOOD, 11, 1, "paragraph", "" },
	};

	(void)state;
	try_rows(rows, COUNT(rows));
}

static void gauges_need_a_material(void **state)
{
	struct bench t = bench_one("# SM-20: Tee\n\n- **Kind:** coupon\n- **Hours:** 1\n"
	    "- **Process:** SMAW\n- **Joint:** tee\n- **Material:** thin stuff\n"
	    "- **Thickness:** 11 ga\n- **Position:** 2F\n");
	struct bench good = bench_one("# SM-20: Tee\n\n- **Kind:** coupon\n- **Hours:** 1\n"
	    "- **Thickness:** 11 ga; 16 ga\n- **Material:** A1011 sheet; 304L sheet\n"
	    "- **Process:** SMAW\n- **Joint:** tee\n- **Position:** 2F\n");

	(void)state;
	expect_one(&t, FINDING_GAUGE_WITHOUT_MATERIAL, 8, 18, "11 ga", "A1011 sheet");
	expect_none(&good);
	/* 11 ga steel 0.1196 in (Manufacturers Standard Gauge), 16 ga stainless 0.0625 in
	 * (U.S. Standard Gauge). */
	expect_near(good.m->assignments[0].thicknesses[0].lo, 0.1196 * 25.4);
	expect_near(good.m->assignments[0].thicknesses[1].lo, 0.0625 * 25.4);
	bench_free(&t);
	bench_free(&good);
}

static void sound_facts(void **state)
{
	static const char *const lines[] = {
		"- **Kind:** practise-test", "- **Hours:** 1.5 h", "- **Process:** smaw; GMAW-S",
		"- **Joint:** tee joint, flare bevel; U-groove", "- **Thickness:** 1/4, 3/8 in",
		"- **Thickness:** NPS 6 schedule 40", "- **Position:** flat, 3F up; 6g downhill",
		"- **Position:** 1G rolled", "- **Filler:** E7018 1/8 in",
		"- **Filler:** E71T-1, 0.045 in; E7018, 3/32 in, fill and cap",
		"- **Current:** AC", "- **Volts:** 17-19 V", "- **Wire feed:** 250-300 in/min",
		"- **Tungsten:** EWCe-2, 3/32 in", "- **Gas:** 75/25 argon/CO2 25 cfh",
		"- **Transfer:** short-circuit", "- **Attempts:** 6", "- **Was:** SM-19",
		"- **Stock:** bevelled by student", "- **Station:** anything without shop.md",
		"- **Machines:** shear", "- **Tested by:** Student",
		"- **Backing:** None", "- **Backing:** steel strp 1/4 x 1 in",
		"- **Backing:** fiberglass",
	};

	(void)state;
	try_sound(lines, NULL, COUNT(lines));
}

static void lists_pair_in_order(void **state)
{
	struct bench t = bench_one("# SM-20: Tee\n\n- **Kind:** drill\n- **Hours:** 1\n"
	    "- **Material:** A36 plate; A500 tube\n- **Thickness:** 1/4, 3/8, 1/2 in\n");

	(void)state;
	expect_one(&t, FINDING_FACTS_DISAGREE, 6, 18, "3 thicknesses for 2 materials", "");
	assert_int_equal(t.f->v[0].nrelated, 1);
	assert_int_equal(t.f->v[0].related[0].pos.line, 5);
	bench_free(&t);
}

static void owed_only_with_a_weld(void **state)
{
	static const char *const texts[] = {
		"# SF-01: Walk\n\n- **Kind:** safety\n- **Hours:** 2\n",
		"# SF-02: Card\n\n- **Kind:** written\n- **Hours:** 2\n- **Process:** SMAW\n",
		"# TC-03: Bevels\n\n- **Kind:** coupon\n- **Hours:** 12\n- **Process:** OFC\n"
		    "- **Joint:** bevel cut\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(texts); i++) {
		struct bench t = bench_one(texts[i]);

		expect_none(&t);
		assert_int_equal(t.m->assignments[0].nwelds, 0);
		bench_free(&t);
	}
}

/* Tails begin on line 10: an empty line, the heading on 11, the first block on 13. */
static void faults_of_sections(void **state)
{
	static const struct row rows[] = {
		{ "", "\n## Neads\n\n- a.b practiced\n", FINDING_UNKNOWN_SECTION, 11, 4, "Neads",
		    "\"Needs\"" },
		{ "", "\n## Notes\n\nA.\n\n## Notes\n\nB.\n", FINDING_DUPLICATE_SECTION, 15, 4,
		    "Notes", "" },
		{ "", "\n## Needs\n\n- smaw.1f\n", FINDING_MISSING_LEVEL, 13, 3, "smaw.1f",
		    "\"smaw.1f introduced\", \"smaw.1f practiced\" or \"smaw.1f assessed\"" },
		{ "", "\n## Needs\n\n- smaw.1f practicd\n", FINDING_UNKNOWN_WORD, 13, 11,
		    "practicd", "\"practiced\"" },
		{ "", "\n## Needs\n\n- one of: a.b practiced, c.d\n", FINDING_MISSING_LEVEL, 13, 26,
		    "c.d", "c.d introduced" },
		{ "", "\n## Needs\n\n- a.b practiced, c.d assessed\n", FINDING_NOT_UNDERSTOOD, 13, 16,
		    "c.d assessed", "one of:" },
		{ "", "\n## Needs\n\nWords.\n", FINDING_NOT_UNDERSTOOD, 13, 1, "paragraph", "" },
		{ "", "\n## Teaches\n\n- a.b by Visual\n", FINDING_MISSING_LEVEL, 13, 3, "a.b", "" },
		{ "", "\n## Teaches\n\n- a.b assessed for Visual\n", FINDING_NOT_UNDERSTOOD, 13, 16,
		    "for Visual", "" },
		{ "", "\n## Passes\n\n- Root, GTAW\n", FINDING_NOT_UNDERSTOOD, 13, 3, "bullet", "" },
		{ "", "\n## Pieces\n\n- web: 1 of 3/8 x 0 x 8 in A36 plate\n",
		    FINDING_BAD_QUANTITY, 13, 13, "more than 0", "" },
		{ "", "\n## Pieces\n\n- web: 3/8 x 3 x 8 in A36 plate\n", FINDING_BAD_QUANTITY, 13,
		    8, "how many", "1 of 3/8" },
		{ "", "\n## Pieces\n\n- web: 1 of 3/8 x 3 x 8 A36 plate\n", FINDING_MISSING_UNIT, 13,
		    13, "3/8 x 3 x 8\"", "3/8 x 3 x 8 in" },
		{ "", "\n## Pieces\n\n- just words\n", FINDING_NOT_UNDERSTOOD, 13, 3, "", "web: 1" },
		{ "", "\n## Procedure\n\n- a bullet\n", FINDING_NOT_UNDERSTOOD, 13, 3, "bullet",
		    "number" },
		{ "", "\n## Acceptance\n\n- Visual D1.1\n", FINDING_NOT_UNDERSTOOD, 13, 3, "", "" },
		{ "", "\n## Acceptance\n\n- **Visual:** a\n- **visual:** b\n", FINDING_DUPLICATE_KEY,
		    14, 5, "visual", "" },
		{ "", "\n## Grading\n\n- **Visual:** 90\n", FINDING_WEIGHTS_NOT_100, 11, 4, "90",
		    "add 10" },
		{ "", "\n## Grading\n\n- **Visual:** 60\n- **Fit-up:** 60\n", FINDING_WEIGHTS_NOT_100,
		    11, 4, "120", "take away 20" },
		{ "", "\n## Grading\n\n- **Visual:** 100, must pas\n", FINDING_UNKNOWN_WORD, 13, 20,
		    "must pas", "\"must pass\"" },
		{ "", "\n## Grading\n\n- **A:** 100\n- **Pass mark:** high\n", FINDING_BAD_QUANTITY,
		    14, 18, "high", "" },
		{ "", "\n## Notes\n\n### Low\n\nText.\n", FINDING_NOT_UNDERSTOOD, 13, 5, "heading",
		    "bold" },
		{ "", "\n## Notes\n\n```joint\nleg: 1 in\n```\n", FINDING_NOT_UNDERSTOOD, 13, 1, "",
		    "sentences" },
	};

	(void)state;
	try_rows(rows, COUNT(rows));
}

static void sound_sections(void **state)
{
	static const char *const tails[] = {
		"\n## Needs\n\n- smaw.1f practised\n- one of a.b practiced or c.d assessed\n",
		"\n## Teaches\n\n- a.b introduced\n- c.d assessed by Visual\n",
		"\n## Passes\n\n- **Root:** GTAW, ER70S-2 3/32 in\n",
		"\n## Pieces\n\n- ring: 2 of NPS 6 schedule 40 x 3 in A53 pipe, beveled\n",
		"\n## Pieces\n\n- rail: 1 of 2 x 2 x 3/16 x 48 in A500 tube\n",
		"\n## Grading\n\n- **A:** 40 %\n- **B:** 60 points, must pass\n",
		"\n## Notes\n\nText.\n\n- a bullet\n- **Bold:** bullet\n\n1. step\n",
		"\n## Bring\n\n- hood\n\n## Cautions\n\nHot.\n\n## If it fails\n\nAgain.\n",
	};

	(void)state;
	try_sound(NULL, tails, COUNT(tails));
}

static void prose_keeps_its_shape(void **state)
{
	struct bench t = bench_one("# SF-01: Walk\n\n- **Kind:** safety\n- **Hours:** 2\n\n"
	    "## Notes\n\nText.\n\n- a bullet\n- **Bold:** words\n\n1. step\n");
	const struct prose *p = &t.m->assignments[0].notes;

	(void)state;
	expect_none(&t);
	assert_int_equal(p->n, 4);
	assert_int_equal(p->v[0].kind, PARA_TEXT);
	assert_int_equal(p->v[1].kind, PARA_BULLET);
	assert_int_equal(p->v[2].kind, PARA_BULLET);
	assert_true(p->v[2].spans[0].style & SPAN_BOLD);
	assert_int_equal(p->v[3].kind, PARA_STEP);
	assert_int_equal(p->v[3].number, 1);
	bench_free(&t);
}

static void hold_points(void **state)
{
	struct bench t = bench_one("# SF-01: Walk\n\n- **Kind:** safety\n- **Hours:** 2\n\n"
	    "## Procedure\n\n1. **Stop**: look.\n2. **Stopwatch:** start it.\n"
	    "3. Stop, no bold.\n4. **STOP, root.** Call the instructor.\n");
	const struct assignment *a = &t.m->assignments[0];

	(void)state;
	expect_none(&t);
	expect_str(a->steps[0].hold, "Stop");
	expect_str(a->steps[0].para.spans[0].text, "look.");
	expect_str(a->steps[1].hold, "");
	expect_str(a->steps[2].hold, "");
	expect_str(a->steps[3].hold, "STOP, root");
	bench_free(&t);
}

static void codes_in_criteria(void **state)
{
	static const struct { const char *text, *code; uint32_t edition; const char *loading; }
	rows[] = {
		{ "D1.1-2020 welder test", "D1.1", 2020, "welder test" },
		{ "to D1.6-2017, static", "D1.6", 2017, "static" },
		{ "2, ASME IX, plunger 1-1/2 in", "ASME IX", 0, "" },
		{ "asme ix-2021", "ASME IX", 2021, "" },
		{ "d1.2-2014 cyclically loaded", "d1.2", 2014, "cyclic" },
		{ "AD1.1-2020 is no code", "", 0, "" }, { "D1. nothing", "", 0, "" },
		{ "free words, statics", "", 0, "" }, { "D1.1-20201", "D1.1", 0, "" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct arena *a = arena_new(NULL, NULL);
		str text = str_format(a, "# SF-01: W\n\n- **Kind:** drill\n- **Hours:** 2\n\n"
		    "## Acceptance\n\n- **Visual:** %s\n", rows[i].text);
		struct bench t = bench_one(arena_copy(a, text.p, text.n));
		const struct criterion *c = t.m->assignments[0].criteria;

		expect_str(c->code, rows[i].code);
		assert_int_equal(c->edition, rows[i].edition);
		expect_str(c->loading, rows[i].loading);
		bench_free(&t);
		arena_free(a);
	}
}

static void ids_and_titles(void **state)
{
	struct bench bad = bench_one("# SM20: Tee\n\n- **Kind:** cupon\n");
	struct bench word = bench_one("# SM-20 tee\n\n- **Kind:** cupon\n");
	struct bench bare = bench_one("# SM-20\n\n- **Kind:** drill\n- **Hours:** 1\n");
	struct bench dash = bench_one("# gt-06B \xE2\x80\x93 Title: with colon\n\n"
	    "- **Kind:** drill\n- **Hours:** 1\n");

	(void)state;
	expect_one(&bad, FINDING_BAD_ID, 1, 3, "SM20", "SM-20");
	assert_int_equal(bad.m->nassignments, 0);
	expect_one(&word, FINDING_BAD_ID, 1, 3, "SM-20 tee", "");
	expect_one(&bare, FINDING_MISSING_FACT, 1, 3, "no title", "# SM-20: title");
	expect_none(&dash);
	expect_str(dash.m->assignments[0].id, "GT-06b");
	expect_str(dash.m->assignments[0].title, "Title: with colon");
	bench_free(&bad);
	bench_free(&word);
	bench_free(&bare);
	bench_free(&dash);
}

static void duplicate_ids(void **state)
{
	static const struct file_text files[] = {
		{ "assignments/a.md", "# SM-20: Second in id, first in path\n\n"
		    "- **Kind:** drill\n- **Hours:** 1\n" },
		{ "assignments/b.md", "# SM-19: Other\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
		    "# sm-20: Again\n\n- **Kind:** nonsense\n" },
	};
	struct bench t = bench_bind(files, 2);
	const struct finding *d = expect_one(&t, FINDING_DUPLICATE_ID, 6, 3, "SM-20", "");

	(void)state;
	assert_int_equal(d->pos.file, 1);
	assert_int_equal(d->related[0].pos.file, 0);
	assert_int_equal(d->related[0].pos.line, 1);
	assert_int_equal(t.m->nassignments, 2);
	expect_str(t.m->assignments[1].title, "Second in id, first in path");
	bench_free(&t);
}

/* A misspelt key is told as that, and the fact that it means is not missing too. */
static void a_misspelt_fact_is_not_missing_too(void **state)
{
	static const char *const sheets[] = {
		"# SM-20: A\n\n- **Kind:** drill\n- **Hourz:** 4\n",
		"# SM-20: A\n\n- **Kind:** drill\n- **Hours:** 4\n- **Process:** SMAW\n"
		"- **Joint:** tee\n- **Material:** A36 plate\n- **Position:** 2F\n"
		"- **Thicknes:** 3/8 in\n",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(sheets); i++) {
		struct bench t = bench_one(sheets[i]);

		expect_one(&t, FINDING_UNKNOWN_KEY, i ? 9 : 4, 5, "", "if that is what is meant");
		bench_free(&t);
	}
}

/* Of two bearers of one id, program.md tells by titles which is another one. */
static void a_misnamed_bearer_is_read_as_what_is_listed(void **state)
{
#define DRILL "\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
#define LISTED "# P: Q\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n### ORW 101: A\n\n"
	static const struct { const char *sheets, *program; uint32_t line; const char *id; }
	    rows[] = {
		{ "# SM-20: One" DRILL "# SM-20: Two" DRILL,
		    LISTED "1. SM-20 (One)\n2. SM-21 (Two)\n", 6, "SM-21" },
		{ "# SM-20: Two" DRILL "# SM-20: One" DRILL,
		    LISTED "1. SM-20 (One)\n2. SM-21 (Two)\n", 1, "SM-21" },
		{ "# SM-20: One" DRILL "# SM-20: Two" DRILL,
		    LISTED "1. SM-20\n2. SM-21\n", 6, "SM-21" },
		{ "# SM-20: Two" DRILL "# SM-20: One" DRILL,
		    LISTED "1. SM-20 (One)\n2. SM-21\n", 1, "SM-21" },
		/* Nothing is missing, so nothing else can be meant. */
		{ "# SM-20: One" DRILL "# SM-20: Two" DRILL, LISTED "1. SM-20 (One)\n", 6,
		    "left out" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct file_text files[] = {
			{ "assignments/a.md", rows[i].sheets },
			{ "program.md", rows[i].program },
		};
		struct bench t = bench_bind(files, 2);

		expect_one(&t, FINDING_DUPLICATE_ID, rows[i].line, 3, rows[i].id, "");
		bench_free(&t);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(faults_of_facts),
		cmocka_unit_test(gauges_need_a_material),
		cmocka_unit_test(sound_facts),
		cmocka_unit_test(lists_pair_in_order),
		cmocka_unit_test(owed_only_with_a_weld),
		cmocka_unit_test(faults_of_sections),
		cmocka_unit_test(sound_sections),
		cmocka_unit_test(prose_keeps_its_shape),
		cmocka_unit_test(hold_points),
		cmocka_unit_test(codes_in_criteria),
		cmocka_unit_test(ids_and_titles),
		cmocka_unit_test(duplicate_ids),
		cmocka_unit_test(a_misspelt_fact_is_not_missing_too),
		cmocka_unit_test(a_misnamed_bearer_is_read_as_what_is_listed),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
