/* Facts, figures and weeks that are valid and not what is meant: each case is a small
 * program without a fault, in which one or two words are changed. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "remedy_bench.h"

static const char program[] =
	"# College: Welding\n\n- **Weeks in a quarter:** 10\n"
	"- **Credit rule:** 1 credit = 10 lecture hours or 20 lab hours\n\n"
	"## Quarter 1\n\n### ORW 101: Work\n\n- **Credits:** 2\n- **Lecture hours:** 10\n"
	"- **Lab hours:** 20\n\n1. SF-01, week 1\n2. SM-01, week 2\n3. SM-02, week 5\n";

static const char skills[] =
	"# Skills\n\n## PO1: Welds\n\n- **smaw.pad:** Pads\n- **smaw.2f:** Fillet 2F\n";

static const char shop[] =
	"# Shop\n\n## Section day\n\n- **Open:** 4 h a week\n\n"
	"## Station booth\n\n- **Places:** 10\n";

static const char cohorts[] =
	"# Cohorts\n\n## Day\n\n- **Entered:** fall-2026, quarter 1\n- **Finished:** none\n"
	"- **Students:** 10\n- **Section:** day\n";

static const char card[] =
	"# SF-01: Shop and arc safety card\n\n- **Kind:** safety\n- **Hours:** 2\n"
	"- **Station:** booth\n- **Process:** SMAW\n- **Machines:** shear\n\n"
	"## Acceptance\n\n- **Written check:** 80 %\n";

static const char pads[] =
	"# SM-01: Pads of beads\n\n- **Kind:** coupon\n- **Hours:** 9\n- **Station:** booth\n"
	"- **Process:** SMAW\n- **Joint:** surfacing\n- **Material:** A36 plate\n"
	"- **Thickness:** 3/8 in\n- **Position:** flat\n- **Filler:** E7028, 1/8 in\n"
	"- **Current:** DC+, 115-140 A\n- **Oven:** 250-300 degF, 4 h out\n\n"
	"## Teaches\n\n- smaw.pad assessed by Visual\n\n"
	"## Pieces\n\n- plate: 1 of 3/8 x 6 x 8 in A36 plate, sheared\n\n"
	"## Drawing\n\n```joint\njoint: surfacing\nlength: 8 in\n```\n\n"
	"## Procedure\n\n1. Lay beads side by side.\n\n"
	"## Acceptance\n\n- **Visual:** D1.1-2020 welder test\n\n"
	"## Grading\n\n- **Visual:** 100\n- **Pass mark:** 70\n";

static const char tee[] =
	"# SM-02: Tee fillet 2F\n\n- **Kind:** coupon\n- **Hours:** 9\n- **Station:** booth\n"
	"- **Process:** SMAW\n- **Joint:** tee\n- **Material:** A36 plate\n"
	"- **Thickness:** 3/8 in\n- **Position:** 2F\n- **Filler:** E7028, 1/8 in\n"
	"- **Current:** DC+, 115-140 A\n- **Oven:** 250-300 degF, 4 h out\n\n"
	"## Teaches\n\n- smaw.2f assessed by Visual\n\n"
	"## Pieces\n\n- web: 1 of 3/8 x 3 x 8 in A36 plate, sheared\n"
	"- base: 1 of 3/8 x 4 x 8 in A36 plate, sheared\n\n"
	"## Drawing\n\n```joint\njoint: tee\nleg: 5/16 in\nlength: 8 in\nsides: one\n"
	"passes: 3\n```\n\n"
	"## Procedure\n\n1. Weld three passes, fit-up with tacks first.\n\n"
	"## Acceptance\n\n- **Visual:** D1.1-2020 welder test\n- **Fit-up:** square\n\n"
	"## Grading\n\n- **Visual:** 80\n- **Fit-up:** 20\n- **Pass mark:** 70\n";

/* The files, in byte order of their paths, and what of them is changed. */
static const struct file_text files[] = {
	{ "assignments/SF-01.md", card }, { "assignments/SM-01.md", pads }, { "assignments/SM-02.md", tee }, { "cohorts.md", cohorts }, { "program.md", program }, { "shop.md", shop },
	{ "skills.md", skills },
};

enum { FILES = sizeof files / sizeof *files, CARD = 0, PADS, TEE, COHORTS, PROGRAM, SHOP };

struct change {
	size_t file;
	const char *old, *new;
};

static struct bench changed(const struct change *v, size_t n)
{
	struct arena *a = arena_new(NULL, NULL);
	struct file_text now[FILES];
	struct bench t;

	memcpy(now, files, sizeof now);
	for (size_t i = 0; i < n && v[i].old; i++) {
		str text = str_of(now[v[i].file].text), old = str_of(v[i].old);
		size_t at = str_find(text, old, 0);
		str with;

		if (at >= text.n)
			fail_msg("no \"%s\"", v[i].old);
		with = str_format(a, "%.*s%s%.*s", STR_ARG(str_sub(text, 0, at)), v[i].new,
		    STR_ARG(str_sub(text, at + old.n, text.n)));
		now[v[i].file].text = arena_copy(a, with.p, with.n);
	}
	t = remedy_bench(now, FILES);
	arena_free(a);
	return t;
}

/* One case: what is left of the changes once remedies were tried. */
struct fact_case {
	const char *what;
	struct change v[3];
	size_t before, after;
	enum finding_name name;  /* of the one that is told with the repair */
	const char *repair;
};

static void expect_facts(const struct fact_case *c, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		struct bench t = changed(c[i].v, 3);
		size_t before = t.f->n, hit = 0;

		remedy_settle(&t);
		while (hit < t.f->n && !(t.f->v[hit].name == c[i].name &&
		    str_has(t.f->v[hit].repair, c[i].repair)))
			hit++;
		if (before != c[i].before || t.f->n != c[i].after || hit == t.f->n) {
			print_findings(&t);
			fail_msg("%s: %zu before and %zu after, wanted %zu and %zu, and %s: %s",
			    c[i].what, before, t.f->n, c[i].before, c[i].after,
			    finding_info(c[i].name)->name, c[i].repair);
		}
		bench_free(&t);
	}
}

#define EXPECT(rows) expect_facts(rows, sizeof rows / sizeof *rows)

static void nothing_is_wrong_without_a_change(void **state)
{
	struct bench t = changed(NULL, 0);

	(void)state;
	if (t.f->n) {
		print_findings(&t);
		fail_msg("the program has findings of its own");
	}
	bench_free(&t);
}

static void the_sheet_shows_another_fact(void **state)
{
	static const struct fact_case rows[] = {
		{ "position", {{ TEE, "Position:** 2F", "Position:** 4F" }}, 2, 1,
		    FINDING_TEXT_DISAGREES, "write 2F at Position, as the title says" },
		{ "process", {{ TEE, "Process:** SMAW", "Process:** FCAW-G" }}, 2, 1,
		    FINDING_FILLER_OF_ANOTHER_PROCESS,
		    "write SMAW at Process, which E7028 is for" },
		{ "material", {{ TEE, "Material:** A36 plate", "Material:** 304L sheet" }}, 3, 1,
		    FINDING_PIECES_DISAGREE, "write A36 plate at Material, as the pieces say" },
		{ "kind", {{ TEE, "Kind:** coupon", "Kind:** qualification test" }}, 3, 1,
		    FINDING_RECORD_INCOMPLETE, "write coupon at Kind" },
		{ "filler", {{ TEE, "E7028, 1/8 in", "ER308L, 1/8 in" }}, 2, 1,
		    FINDING_FILLER_OF_ANOTHER_PROCESS,
		    "write E7028 at Filler, as other sheets with SMAW do" },
	};

	(void)state;
	EXPECT(rows);
}

static void two_places_of_one_sheet(void **state)
{
	static const struct fact_case rows[] = {
		{ "joint of a weld", {{ TEE, "## Drawing", "## Welds\n\n- **A:** lap, 2F, leg "
		    "5/16 in, A36 plate 3/8 in\n\n## Drawing" }}, 2, 1, FINDING_FACTS_DISAGREE,
		    "write tee at weld A" },
		{ "a weight", {{ TEE, "Visual:** 80", "Visual:** 800" }}, 3, 1,
		    FINDING_BAD_QUANTITY, "write 80 there, so that the weights total 100" },
		{ "weights", {{ TEE, "Visual:** 80", "Visual:** 8" }}, 2, 1,
		    FINDING_WEIGHTS_NOT_100, "" },
		{ "title", {{ TEE, "Tee fillet 2F", "Tee fillet 3F" },
		    { PROGRAM, "SM-02, week 5", "SM-02, week 5 (Tee fillet 2F)" }}, 2, 1,
		    FINDING_TEXT_DISAGREES, "write " },
	};

	(void)state;
	EXPECT(rows);
}

static void two_faults_stay_two(void **state)
{
	static const struct fact_case rows[] = {
		{ "process, weights", {{ TEE, "Process:** SMAW", "Process:** FCAW-G" },
		    { TEE, "Visual:** 80", "Visual:** 70" }}, 3, 2,
		    FINDING_FILLER_OF_ANOTHER_PROCESS, "write SMAW at Process" },
		{ "two sheets", {{ TEE, "Position:** 2F", "Position:** 4F" },
		    { PADS, "Process:** SMAW", "Process:** FCAW-G" }}, 5, 2,
		    FINDING_TEXT_DISAGREES, "write 2F at Position" },
		/* What a real test lacks is one thing, and the wrong position another. */
		{ "a test", {{ TEE, "Tee fillet 2F", "Tee fillet 2F, qualification test" },
		    { TEE, "Kind:** coupon", "Kind:** qualification test" }}, 3, 3,
		    FINDING_RECORD_INCOMPLETE, "" },
	};

	(void)state;
	EXPECT(rows);
}

static void figures_of_program_and_shop(void **state)
{
	static const struct fact_case rows[] = {
		{ "weeks", {{ PROGRAM, "quarter:** 10", "quarter:** 4" }}, 2, 1,
		    FINDING_WEEK_OUTSIDE, "write 10 at Weeks in a quarter in program.md" },
		{ "places", {{ SHOP, "Places:** 10", "Places:** 5" }}, 2, 1,
		    FINDING_STATION_TIGHT, "give station booth 6 places" },
	};

	(void)state;
	EXPECT(rows);
}

/* Lines of a course come in the order of their weeks: SM-01 is too late or SM-02 too
 * early, and either mends the need. */
static void weeks_that_are_out_of_order(void **state)
{
	static const struct change late[] = {
		{ PROGRAM, "SM-01, week 2", "SM-01, week 8" },
		{ TEE, "## Teaches", "## Needs\n\n- smaw.pad practiced\n\n## Teaches" },
	};
	struct bench t = changed(late, 2);
	struct remedies *rs = remedy_seek(&t, remedy_at(&t, FINDING_UNTAUGHT_SKILL),
	    seek_figures);
	bool later = false, earlier = false;

	(void)state;
	for (size_t i = 0; i < rs->n; i++) {
		struct remedy *r = &rs->v[i];

		remedy_try(&t, r);
		later |= r->nmended == 1 && str_has(r->say, "write week 9 at SM-02");
		earlier |= r->nmended == 1 && str_has(r->say, "write week 4 at SM-01");
		/* Only these two lines, and a week that mends nothing is none. */
		assert_true(str_has(r->say, "SM-01") || str_has(r->say, "SM-02"));
		assert_false(r->nmended && str_has(r->say, "write week 7 at SM-01"));
	}
	assert_true(later && earlier);
	bench_free(&t);
}

/* The title may be what is wrong, but then program.md would be too: a valid word hides
 * nothing, so that even a note speaks against it. */
static void a_note_speaks_against_a_valid_word(void **state)
{
	static const struct change both[] = {
		{ TEE, "Position:** 2F", "Position:** 4F" },
		{ PROGRAM, "SM-02, week 5", "SM-02, week 5 (Tee fillet 2F)" },
	};
	struct bench t = changed(both, 2);
	struct remedies *rs = remedy_seek(&t, remedy_at(&t, FINDING_TEXT_DISAGREES),
	    seek_slips);
	size_t fact = 0, title = 0;

	(void)state;
	for (size_t i = 0; i < rs->n; i++) {
		remedy_try(&t, &rs->v[i]);
		if (str_has(rs->v[i].say, "write 2F at Position"))
			fact += rs->v[i].nmended;
		else if (str_has(rs->v[i].say, "write 4F in the title"))
			title += 1 + 10 * rs->v[i].nmended;
	}
	assert_int_equal(fact, 2);
	assert_true(title >= 1 && title < 10);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(nothing_is_wrong_without_a_change),
		cmocka_unit_test(the_sheet_shows_another_fact),
		cmocka_unit_test(two_places_of_one_sheet),
		cmocka_unit_test(two_faults_stay_two),
		cmocka_unit_test(figures_of_program_and_shop),
		cmocka_unit_test(weeks_that_are_out_of_order),
		cmocka_unit_test(a_note_speaks_against_a_valid_word),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
