/* Welds and drawings of one assignment: what is expanded, filled in and compared. */
#include "model_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))
#define IN 25.4

/* Lines 1 to 4; what follows begins on line 5. */
#define HEAD "# SM-20: Tee\n\n- **Kind:** coupon\n- **Hours:** 16\n"
/* Lines 5 to 9. */
#define FACTS "- **Process:** SMAW\n- **Joint:** tee\n- **Material:** A36 plate\n" \
	"- **Thickness:** 3/8 in\n- **Position:** 2F\n"
/* Lines 5 to 7: no joint, no position. */
#define METAL "- **Process:** SMAW\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n"

static void each_joint_in_each_position(void **state)
{
	static const struct { char letter; enum joint joint; enum position position;
	    enum progression way; const char *text; } want[] = {
		{ 'A', JOINT_TEE, POSITION_2F, PROGRESS_NONE, "tee, 2F" },
		{ 'B', JOINT_TEE, POSITION_3F, PROGRESS_UP, "tee, 3F up" },
		{ 'C', JOINT_LAP, POSITION_2F, PROGRESS_NONE, "lap, 2F" },
		{ 'D', JOINT_LAP, POSITION_3F, PROGRESS_UP, "lap, 3F up" },
	};
	struct bench t = bench_one(HEAD "- **Process:** OFC, SMAW\n"
	    "- **Joint:** tee; lap; cut edge\n- **Material:** A500 tube; A36 plate\n"
	    "- **Thickness:** 3/16, 3/8 in\n- **Position:** 2F, 3F up\n");
	const struct assignment *a = t.m->assignments;

	(void)state;
	expect_none(&t);
	assert_int_equal(a->nwelds, 4);
	for (size_t i = 0; i < 4; i++) {
		assert_int_equal(a->welds[i].letter, want[i].letter);
		assert_int_equal(a->welds[i].joint, want[i].joint);
		assert_int_equal(a->welds[i].at.position, want[i].position);
		assert_int_equal(a->welds[i].at.progression, want[i].way);
		assert_int_equal(a->welds[i].process, PROCESS_SMAW);
		expect_str(a->welds[i].text, want[i].text);
		expect_near(a->welds[i].t1_mm, 3.0 / 16 * IN);
		expect_near(a->welds[i].t2_mm, 3.0 / 8 * IN);
		expect_str(a->welds[i].material1, "A500 tube");
		expect_str(a->welds[i].material2, "A36 plate");
	}
	bench_free(&t);
}

static void more_welds_than_letters(void **state)
{
	struct bench t = bench_one(HEAD METAL "- **Joint:** tee, lap, corner, edge, butt, pad\n"
	    "- **Position:** 1F, 2F, 4F, 1G, 2G\n");

	(void)state;
	expect_one(&t, FINDING_OVER_LIMIT, 8, 14, "26", "## Welds");
	assert_int_equal(t.m->assignments[0].nwelds, 26);
	assert_int_equal(t.m->assignments[0].welds[25].letter, 'Z');
	bench_free(&t);
}

static void welds_one_by_one(void **state)
{
	struct bench t = bench_one(HEAD METAL "\n## Welds\n\n"
	    "- **A:** tee, 3F up, leg 5/16 in, A36 plate 3/8 in, A500 tube 3/16 in, 8 in long\n"
	    "- **Weld b:** branch set-on 90 deg, run NPS 4 schedule 40, branch NPS 2 schedule 40, "
	    "2F, GTAW\n"
	    "- **C:** pipe butt, 5G down, run NPS 6 schedule 80\n");
	const struct assignment *a = t.m->assignments;

	(void)state;
	expect_none(&t);
	assert_int_equal(a->nwelds, 3);
	assert_int_equal(a->welds[0].letter, 'A');
	assert_int_equal(a->welds[0].at.progression, PROGRESS_UP);
	expect_near(a->welds[0].leg_mm, 5.0 / 16 * IN);
	expect_near(a->welds[0].length_mm, 8 * IN);
	expect_near(a->welds[0].t1_mm, 3.0 / 8 * IN);
	expect_near(a->welds[0].t2_mm, 3.0 / 16 * IN);
	expect_str(a->welds[0].material2, "A500 tube");
	assert_int_equal(a->welds[0].process, PROCESS_SMAW);
	assert_int_equal(a->welds[0].pos.line, 11);
	/* ASME B36.10M: NPS 4 is 4.500 in outside, schedule 40 wall 0.237 in; NPS 2 is
	 * 2.375 in, 0.154 in; NPS 6 schedule 80 wall 0.432 in. */
	assert_int_equal(a->welds[1].letter, 'B');
	assert_int_equal(a->welds[1].joint, JOINT_BRANCH);
	assert_int_equal(a->welds[1].process, PROCESS_GTAW);
	expect_near(a->welds[1].run.od_mm, 4.5 * IN);
	expect_near(a->welds[1].branch.od_mm, 2.375 * IN);
	expect_near(a->welds[1].t1_mm, 0.154 * IN);
	expect_near(a->welds[1].t2_mm, 0.237 * IN);
	expect_str(a->welds[1].branch.text, "NPS 2 schedule 40");
	expect_near(a->welds[2].t1_mm, 0.432 * IN);
	expect_near(a->welds[2].run.od_mm, 6.625 * IN);
	bench_free(&t);
}

static void pipe_from_the_thickness(void **state)
{
	struct bench t = bench_one(HEAD "- **Process:** SMAW\n- **Joint:** pipe butt\n"
	    "- **Material:** A53 pipe\n- **Thickness:** NPS 6 sch 40\n- **Position:** 1G rolled\n"
	    "\n## Drawing\n\n```joint\nbevel: 37-1/2 deg\nland: 3/32 in\ngap: 1/8 in\n```\n");
	const struct assignment *a = t.m->assignments;

	(void)state;
	expect_none(&t);
	expect_near(a->welds[0].t1_mm, 0.280 * IN);
	expect_near(a->welds[0].run.od_mm, 6.625 * IN);
	expect_str(a->welds[0].run.text, "NPS 6 schedule 40");
	assert_int_equal(a->drawings[0].joint.joint, JOINT_PIPE_BUTT);
	expect_near(a->drawings[0].joint.pipe.od_mm, 6.625 * IN);
	expect_near(a->drawings[0].joint.t1.lo, 0.280 * IN);
	expect_near(a->drawings[0].joint.bevel.lo, 37.5);
	bench_free(&t);
}

struct row {
	const char *text;
	enum finding_name name;
	uint32_t line, col;
	const char *message, *repair;
};

static void try_rows(const struct row *rows, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		struct bench t = bench_one(rows[i].text);

		expect_str(expect_one(&t, rows[i].name, rows[i].line, rows[i].col,
		    rows[i].message, rows[i].repair)->assignment, "SM-20");
		bench_free(&t);
	}
}

/* The heading stands on line 9 and the first weld on line 11. */
#define WELDS(lines) HEAD METAL "\n## Welds\n\n" lines

static void faults_of_welds(void **state)
{
	static const struct row rows[] = {
		{ WELDS("- **A:** tee\n"), FINDING_MISSING_FACT, 11, 5, "no position", "2F" },
		{ WELDS("- **A:** tee, 3F\n"), FINDING_MISSING_PROGRESSION, 11, 15, "3F", "3F up" },
		{ WELDS("- **A:** tee, 2F, leg 5/16\n"), FINDING_MISSING_UNIT, 11, 23, "5/16",
		    "5/16 in" },
		{ WELDS("- **A:** tee, 2F, A36 plate 3/8\n"), FINDING_MISSING_UNIT, 11, 29, "3/8",
		    "" },
		{ WELDS("- **A:** tee, 2F, 8 long\n"), FINDING_MISSING_UNIT, 11, 19, "8", "" },
		{ WELDS("- **A:** tee, 2F, run NPS 99\n"), FINDING_BAD_QUANTITY, 11, 27, "NPS 99",
		    "" },
		{ WELDS("- **A:** tee, 2F\n- **a:** lap, 2F\n"), FINDING_DUPLICATE_KEY, 12, 5,
		    "two welds A", "" },
		{ WELDS("- **First:** tee, 2F\n- **B:** tee, 2F\n"), FINDING_UNKNOWN_KEY, 11, 5,
		    "First", "A, B, C" },
		{ WELDS("- A tee in 2F\n- **B:** tee, 2F\n"), FINDING_NOT_UNDERSTOOD, 11, 3, "",
		    "" },
		{ HEAD FACTS "\n## Welds\n\n- **A:** lap, 2F\n", FINDING_FACTS_DISAGREE, 13, 5,
		    "lap", "" },
		{ HEAD FACTS "\n## Welds\n\n- **A:** tee, 4F\n", FINDING_FACTS_DISAGREE, 13, 5,
		    "4F", "" },
	};

	(void)state;
	try_rows(rows, COUNT(rows));
}

/* One slip is one finding: a joint that is nearly a word is taken for it, and one that is
 * not is not owed a second time. */
static void a_joint_that_is_no_word_is_one_finding(void **state)
{
	static const struct { const char *word; enum joint joint; bool unread; } rows[] = {
		{ "teee", JOINT_TEE, false }, { "xyzzy", JOINT_COUNT, true },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char text[1000];
		struct bench t;

		snprintf(text, sizeof text, WELDS("- **A:** %s, 2F\n"), rows[i].word);
		t = bench_one(text);
		assert_int_equal(t.f->n, 1);
		assert_int_equal(t.f->v[0].name, FINDING_UNKNOWN_WORD);
		assert_int_equal(t.f->v[0].pos.col, 10);
		assert_int_equal(t.m->assignments[0].welds[0].joint, rows[i].joint);
		assert_int_equal(t.m->assignments[0].unread, rows[i].unread);
		bench_free(&t);
	}
}

/* The second block stands inside the first when that is not closed. */
static void a_block_that_is_not_closed(void **state)
{
	struct bench t = bench_one(HEAD FACTS "\n## Drawing\n\n```joint\njoint: tee\n"
	    "leg: 1/4 in\n\n```joint\njoint: tee\nleg: 1/4 in\n```\n");

	(void)state;
	expect_one(&t, FINDING_BAD_DRAWING, 17, 1, "not closed", "```");
	bench_free(&t);
}

/* A misspelt heading is read as the section it means, unless that is there too. */
static void a_misspelt_heading_is_read(void **state)
{
	struct bench one = bench_one("# SM-20: Case\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
	    "## Proceduer\n\n1. Step\n");
	struct bench two = bench_one("# SM-20: Case\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
	    "## Proceduer\n\n1. Step\n\n## Procedure\n\n1. One\n2. Two\n");
	struct bench far = bench_one("# SM-20: Case\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
	    "## Steps of the work\n\n1. Step\n");

	(void)state;
	assert_int_equal(one.f->n, 1);
	assert_int_equal(one.f->v[0].name, FINDING_UNKNOWN_SECTION);
	assert_int_equal(one.m->assignments[0].nsteps, 1);
	assert_int_equal(two.f->n, 1);
	assert_int_equal(two.m->assignments[0].nsteps, 2);
	assert_int_equal(far.f->n, 1);
	assert_int_equal(far.m->assignments[0].nsteps, 0);
	bench_free(&one);
	bench_free(&two);
	bench_free(&far);
}

/* A misspelt process is taken for the likely one, another leaves it open what is meant. */
static void a_misspelt_process_is_read(void **state)
{
	struct bench near = bench_one("# SM-20: Case\n\n- **Kind:** drill\n- **Hours:** 1\n"
	    "- **Process:** SMAV\n");
	struct bench far = bench_one("# SM-20: Case\n\n- **Kind:** drill\n- **Hours:** 1\n"
	    "- **Process:** electric\n");
	/* As near to FCAW-G as to FCAW-S: nothing says which. */
	struct bench two = bench_one("# SM-20: Case\n\n- **Kind:** drill\n- **Hours:** 1\n"
	    "- **Process:** FCAW-X\n");

	(void)state;
	assert_int_equal(near.m->assignments[0].nprocesses, 1);
	assert_int_equal(near.m->assignments[0].processes[0], PROCESS_SMAW);
	assert_false(near.m->assignments[0].unread);
	assert_int_equal(far.m->assignments[0].nprocesses, 0);
	assert_true(far.m->assignments[0].unread);
	assert_int_equal(two.m->assignments[0].nprocesses, 0);
	assert_true(two.m->assignments[0].unread);
	bench_free(&near);
	bench_free(&far);
	bench_free(&two);
}

/* The fence opens on line 13 and its first line is line 14. */
#define JOINT(lines) HEAD FACTS "\n## Drawing\n\n```joint\n" lines "```\n"

#define TWO_WELDS HEAD METAL "\n## Welds\n\n- **A:** tee, 2F, leg 5/16 in\n" \
	"- **B:** lap, 2F, leg 1/4 in\n\n## Drawing\n\n"
#define BLOCK_OF(letter, joint, leg) "```joint " letter "\njoint: " joint "\nleg: " leg \
	" in\n```\n\n"

/* A block is read as that of another weld only where it is that weld's in all it says. */
static void blocks_that_changed_places(void **state)
{
	static const struct { const char *text; size_t n, related; uint32_t first, second; }
	rows[] = {
		{ TWO_WELDS BLOCK_OF("A", "tee", "5/16") BLOCK_OF("B", "lap", "1/4"), 0, 0, 0, 1 },
		{ TWO_WELDS BLOCK_OF("B", "tee", "5/16") BLOCK_OF("A", "lap", "1/4"), 1, 2, 0, 1 },
		{ TWO_WELDS BLOCK_OF("A", "lap", "1/4") BLOCK_OF("B", "lap", "1/4"), 1, 1, 1, 1 },
		{ TWO_WELDS BLOCK_OF("A", "lap", "5/16") BLOCK_OF("B", "lap", "1/4"), 1, 1, 0, 1 },
		{ TWO_WELDS BLOCK_OF("A", "corner", "5/16") BLOCK_OF("B", "lap", "1/4"), 1, 1, 0,
		    1 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bench_one(rows[i].text);
		const struct assignment *a = t.m->assignments;

		if (t.f->n != rows[i].n)
			print_findings(&t);
		assert_int_equal(t.f->n, rows[i].n);
		assert_true(!rows[i].n || t.f->v[0].name == FINDING_FACTS_DISAGREE);
		assert_true(!rows[i].n || t.f->v[0].nrelated == rows[i].related);
		assert_int_equal(a->drawings[0].joint.weld, rows[i].first);
		assert_int_equal(a->drawings[1].joint.weld, rows[i].second);
		bench_free(&t);
	}
}

static void faults_of_joint_blocks(void **state)
{
	static const struct row rows[] = {
		{ JOINT("legg: 1/4 in\n"), FINDING_UNKNOWN_KEY, 14, 1, "legg", "\"leg\"" },
		{ JOINT("leg: 1/4 in\nleg: 1/4 in\n"), FINDING_DUPLICATE_KEY, 15, 1, "leg", "" },
		{ JOINT("gap: 1/8 in\nroot opening: 1/8 in\n"), FINDING_DUPLICATE_KEY, 15, 1, "",
		    "" },
		{ JOINT("leg 1/4 in\n"), FINDING_BAD_DRAWING, 14, 1, "leg 1/4 in", "leg: 5/16 in" },
		{ JOINT("leg:\n"), FINDING_BAD_DRAWING, 14, 1, "leg:", "" },
		{ JOINT("\n  leg: 1/4\n"), FINDING_MISSING_UNIT, 15, 8, "1/4", "1/4 in" },
		{ JOINT("leg: 1/4 in\ngap: wide\n"), FINDING_BAD_QUANTITY, 15, 6, "wide", "" },
		{ JOINT("sides: bth\n"), FINDING_UNKNOWN_WORD, 14, 8, "bth", "\"both\"" },
		{ JOINT("joint: teee\n"), FINDING_UNKNOWN_WORD, 14, 8, "teee", "\"tee\"" },
		{ JOINT("passes: some\n"), FINDING_BAD_QUANTITY, 14, 9, "some", "" },
		{ JOINT("backing: thick\n"), FINDING_BAD_QUANTITY, 14, 10, "strip", "1/4 x 1 in" },
		{ JOINT("joint: lap\n"), FINDING_FACTS_DISAGREE, 14, 8, "lap", "" },
		{ JOINT("thickness: 1/2 in\n"), FINDING_FACTS_DISAGREE, 14, 12, "1/2 in", "" },
		{ JOINT("thickness: 9.5 mm\n"), FINDING_FACTS_DISAGREE, 14, 12, "9.5 mm", "" },
		{ HEAD FACTS "\n## Drawing\n\n```jiont\nleg: 1/4 in\n```\n", FINDING_BAD_DRAWING, 13,
		    1, "jiont", "```joint" },
		{ HEAD FACTS "\n## Drawing\n\n```jiont\nlength: 4 in\n```\n",
		    FINDING_BAD_DRAWING, 13, 1, "left out", "\"joint\"" },
		{ HEAD FACTS "\n## Drawing\n\n```plate\njoint: tee\nleg: 1/4 in\nsides: one\n"
		    "```\n", FINDING_BAD_DRAWING, 13, 1, "read as a joint", "```joint" },
		{ HEAD FACTS "\n## Drawing\n\n```joint\nlength: 4 in\nwidth: 2 in\n"
		    "hole: 1, 1, 1/2 in\n```\n", FINDING_BAD_DRAWING, 13, 1,
		    "read as a plate", "```plate" },
		{ HEAD FACTS "\n## Drawing\n\n```joint\nshape: cylinder\n"
		    "inside diameter: 6 in\nheight: 4 in\n```\n", FINDING_BAD_DRAWING, 13,
		    1, "read as a pattern", "```pattern" },
		{ HEAD FACTS "\n## Welds\n\n- **A:** tee, 4F\n- **B:** tee, 4F\n",
		    FINDING_FACTS_DISAGREE, 13, 5, "4F", "" },
		{ HEAD FACTS "\n## Drawing\n\n- a bullet\n", FINDING_NOT_UNDERSTOOD, 13, 3, "", "" },
		{ HEAD FACTS "\n## Drawing\n\nA caption of nothing.\n", FINDING_NOT_UNDERSTOOD, 13,
		    1, "", "above its block" },
		{ HEAD METAL "\n## Welds\n\n- **A:** tee, 2F, leg 1/4 in\n\n## Drawing\n\n"
		    "```joint\nleg: 5/16 in\n```\n", FINDING_FACTS_DISAGREE, 16, 6, "5/16 in", "" },
		{ HEAD METAL "\n## Welds\n\n- **A:** tee, 2F\n- **B:** lap, 2F\n\n## Drawing\n\n"
		    "```joint C\njoint: tee\n```\n", FINDING_BAD_DRAWING, 16, 1, "no weld C",
		    "A to B" },
		{ HEAD METAL "\n## Welds\n\n- **A:** tee, 2F, leg 1/4 in\n- **B:** tee, 2F, leg "
		    "1/4 in\n\n## Drawing\n\n```joint C\njoint: lap\nleg: 1/8 in\n```\n",
		    FINDING_BAD_DRAWING, 16, 1, "no weld C", "A to B" },
		{ HEAD METAL "\n## Welds\n\n- **A:** tee, 2F\n- **B:** lap, 2F\n\n## Drawing\n\n"
		    "```joint\nleg: 1/4 in\n```\n", FINDING_BAD_DRAWING, 16, 1, "which joint",
		    "joint: tee" },
		{ HEAD "- **Process:** SMAW\n- **Joint:** single-V\n- **Material:** A36 plate\n"
		    "- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Drawing\n\n```joint\n"
		    "bevel: 30 deg\nangle: 45 deg\n```\n", FINDING_FACTS_DISAGREE, 15, 8, "twice",
		    "" },
		{ HEAD "- **Process:** SMAW\n- **Joint:** single-V\n- **Material:** A36 plate\n"
		    "- **Thickness:** 3/8 in\n- **Position:** 1G\n- **Backing:** strip 1/4 x 1 in\n\n"
		    "## Drawing\n\n```joint\nbacking: 1/4 x 1-1/2 in\n```\n",
		    FINDING_FACTS_DISAGREE, 15, 10, "1-1/2 in", "" },
	};

	(void)state;
	try_rows(rows, COUNT(rows));
}

/* Walls of schedule 40 in ASME B36.10M: 0.154 in of NPS 2, 0.237 in of NPS 4. */
static void a_branch_has_its_own_wall(void **state)
{
	struct bench t = bench_one(HEAD "- **Process:** SMAW\n- **Joint:** branch set-on\n"
	    "- **Material:** A53 pipe\n- **Thickness:** NPS 4 schedule 40\n"
	    "- **Position:** 2F\n\n## Drawing\n\n```joint\nsize: NPS 4 schedule 40\n"
	    "branch: NPS 2 schedule 40\nbevel: 45 deg\n```\n");
	const struct joint_block *j = &t.m->assignments[0].drawings[0].joint;

	(void)state;
	assert_true(j->t1.lo > 0.154 * IN - 0.01 && j->t1.lo < 0.154 * IN + 0.01);
	assert_true(j->t2.lo > 0.237 * IN - 0.01 && j->t2.lo < 0.237 * IN + 0.01);
	assert_int_equal(t.f->n, 0);
	bench_free(&t);
	t = bench_one(HEAD "- **Process:** SMAW\n- **Joint:** branch set-on\n"
	    "- **Material:** A53 pipe\n- **Thickness:** NPS 4 schedule 40\n"
	    "- **Position:** 2F\n\n## Drawing\n\n```joint\nsize: NPS 4 schedule 40\n"
	    "branch: NPS 6 schedule 40\nbevel: 45 deg\n```\n");
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_BAD_DRAWING);
	bench_free(&t);
}

static void faults_of_edges_layers_and_marks(void **state)
{
	static const struct row rows[] = {
		{ JOINT("preparation: W\n"), FINDING_UNKNOWN_WORD, 14, 14, "W", "" },
		{ JOINT("layers: 1, 2\npasses: 4\n"), FINDING_FACTS_DISAGREE, 14, 9, "3 beads",
		    "leave out" },
		{ JOINT("layers: 1, two\n"), FINDING_BAD_DRAWING, 14, 12, "two", "1, 2, 3" },
		{ JOINT("layers: 1, 0\n"), FINDING_BAD_DRAWING, 14, 12, "\"0\"", "" },
		{ JOINT("layers: 1, 2 / back\n"), FINDING_BAD_DRAWING, 14, 16, "back", "back 1, 1" },
		{ JOINT("layers: 1, 40\n"), FINDING_BAD_DRAWING, 14, 12, "40", "" },
		{ JOINT("increments: 2 in\n"), FINDING_BAD_DRAWING, 14, 13, "2 in", "2 in at 6 in" },
		{ JOINT("increments: 2 in at 6 in, loose\n"), FINDING_BAD_DRAWING, 14, 27, "loose",
		    "staggered" },
		{ JOINT("slot weld: 3/4 in\n"), FINDING_BAD_QUANTITY, 14, 12, "slot", "3/4 x 1-1/2 in" },
		{ JOINT("plug weld: 3/4 in\nspot weld: 1/4 in\n"), FINDING_DUPLICATE_KEY, 15, 1, "spot", "" },
		{ JOINT("finish: polishing\n"), FINDING_UNKNOWN_WORD, 14, 9, "polishing", "" },
		{ JOINT("field: perhaps\n"), FINDING_UNKNOWN_WORD, 14, 8, "perhaps", "" },
		{ HEAD "- **Process:** SMAW\n- **Joint:** single-V\n- **Material:** A36 plate\n"
		    "- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Drawing\n\n```joint\n"
		    "joint: butt\npreparation: double-V\nangle: 60 deg\n```\n",
		    FINDING_FACTS_DISAGREE, 15, 14, "double V", "" },
		{ HEAD "- **Process:** SMAW\n- **Joint:** butt\n- **Material:** A36 plate\n"
		    "- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Drawing\n\n```joint\n"
		    "preparation: U\nbevel: 10 deg\nangle: 45 deg\n```\n",
		    FINDING_FACTS_DISAGREE, 16, 8, "twice", "" },
	};

	(void)state;
	try_rows(rows, COUNT(rows));
}

static void both_places_are_named(void **state)
{
	struct bench t = bench_one(JOINT("thickness: 1/2 in\n"));

	(void)state;
	assert_int_equal(t.f->v[0].nrelated, 1);
	assert_int_equal(t.f->v[0].related[0].pos.line, 8);
	assert_int_equal(t.f->v[0].related[0].pos.col, 18);
	bench_free(&t);
}

static void sound_joint_blocks(void **state)
{
	static const char *const texts[] = {
		JOINT("joint: T\nthickness: 3/8 in\nthickness 2: 1/2 in\nsides: both\n"),
		JOINT("thickness: 0.375 in\nlength: 8 in\nreinforcement: 1/16 in\n"),
		HEAD METAL "\n## Welds\n\n- **A:** tee, 2F\n- **B:** lap, 2F\n\n## Drawing\n\n"
		    "The tee.\n\n```joint A\nleg: 1/4 in\n```\n\n```joint b\noverlap: 1-1/2 in\n```\n",
		HEAD "- **Process:** SMAW\n- **Joint:** butt\n- **Material:** A36 plate\n"
		    "- **Thickness:** 3/8 in\n- **Position:** 1G\n\n## Drawing\n\n```joint\n"
		    "joint: single-V\nbevel: 30 deg\nangle: 60 deg\n```\n",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(texts); i++) {
		struct bench t = bench_one(texts[i]);

		expect_none(&t);
		bench_free(&t);
	}
}

static void captions_and_letters(void **state)
{
	struct bench t = bench_one(HEAD METAL "\n## Welds\n\n- **A:** tee, 2F, leg 1/4 in\n"
	    "- **B:** lap, 2F, A36 plate 1/2 in\n\n## Drawing\n\nThe tee.\n\n```joint A\n"
	    "gap: 0 in\n```\n\n```joint b\noverlap: 1-1/2 in\n```\n");
	const struct assignment *a = t.m->assignments;

	(void)state;
	expect_none(&t);
	assert_int_equal(a->ndrawings, 2);
	assert_int_equal(a->drawings[0].joint.weld, 0);
	assert_int_equal(a->drawings[1].joint.weld, 1);
	assert_int_equal(a->drawings[0].joint.joint, JOINT_TEE);
	assert_int_equal(a->drawings[1].joint.joint, JOINT_LAP);
	expect_near(a->drawings[0].joint.leg.lo, IN / 4);
	expect_near(a->drawings[0].joint.t1.lo, 3.0 / 8 * IN);
	expect_near(a->drawings[1].joint.t1.lo, IN / 2);
	assert_int_equal(a->drawings[0].caption.n, 1);
	expect_str(a->drawings[0].caption.v[0].spans[0].text, "The tee.");
	assert_int_equal(a->drawings[1].caption.n, 0);
	bench_free(&t);
}

static void preparations_and_layers(void **state)
{
	struct bench t = bench_one(HEAD "- **Process:** SMAW\n- **Joint:** butt\n"
	    "- **Material:** A36 plate\n- **Thickness:** 1 in\n- **Position:** 1G\n"
	    "\n## Drawing\n\n```joint\njoint: butt\npreparation: double-V\nangle: 60 deg\n"
	    "depth: 1/2 in\ndepth back: 3/8 in\nland: 1/8 in\nlayers: 1, 2 / back 1, 3 / 4\n"
	    "```\n");
	const struct joint_block *j = &t.m->assignments->drawings[0].joint;
	static const struct bead_layer want[] = { { 1, false }, { 2, false }, { 1, true },
		{ 3, true }, { 4, false } };

	(void)state;
	expect_none(&t);
	assert_int_equal(j->preparation, PREPARATION_DOUBLE_V);
	expect_near(j->depth_back.lo, 3.0 / 8 * IN);
	assert_int_equal(j->nlayers, COUNT(want));
	for (size_t i = 0; i < COUNT(want); i++) {
		assert_int_equal(j->layers[i].beads, want[i].beads);
		assert_int_equal(j->layers[i].back, want[i].back);
	}
	/* Without passes the layers count them. */
	assert_int_equal(j->layer_beads, 11);
	assert_int_equal(j->passes, 11);
	bench_free(&t);
}

static void marks_of_the_symbol(void **state)
{
	struct bench t = bench_one(JOINT("leg: 1/4 in\nsides: both\n"
	    "increments: 2 in at 6 in, staggered\ncontour: flat\nfinish: grinding\n"
	    "contour back: convex\nfield: yes\nall around: yes\ntail: typical\ncount: 3\n"
	    "symbol: ISO 2553\n"));
	const struct symbol_marks *m = &t.m->assignments->drawings[0].joint.marks;

	(void)state;
	expect_none(&t);
	expect_near(m->increment.lo, 2 * IN);
	expect_near(m->pitch.lo, 6 * IN);
	assert_true(m->staggered && m->field && m->all_around);
	assert_int_equal(m->contour, CONTOUR_FLUSH);
	assert_int_equal(m->contour_back, CONTOUR_CONVEX);
	assert_int_equal(m->finish, 'G');
	assert_int_equal(m->standard, SYMBOL_ISO);
	assert_int_equal(m->count, 3);
	expect_str(m->tail, "typical");
	bench_free(&t);
}

static void backing_and_beads(void **state)
{
	struct bench t = bench_one(HEAD "- **Process:** SMAW\n- **Joint:** single-V, surfacing\n"
	    "- **Material:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** flat\n"
	    "- **Backing:** steel strip 1/4 x 1 in\n\n## Drawing\n\n"
	    "```joint A\nroot opening: 1/4 in\nangle: 45 deg\n```\n\n"
	    "```joint B\nbeads: 8\noverlap: 40 %\n```\n");
	const struct assignment *a = t.m->assignments;

	(void)state;
	expect_none(&t);
	expect_near(a->drawings[0].joint.gap.lo, IN / 4);
	expect_near(a->drawings[0].joint.backing_t.lo, IN / 4);
	expect_near(a->drawings[0].joint.backing_w.lo, IN);
	assert_int_equal(a->drawings[1].joint.beads, 8);
	expect_near(a->drawings[1].joint.overlap_percent, 40);
	assert_int_equal(a->drawings[1].joint.overlap.kind, QUANTITY_ANY);
	bench_free(&t);
}

/* The fence opens on line 8 and its first line is line 9. */
#define PLATE(lines) "# SM-20: Blank\n\n- **Kind:** drill\n- **Hours:** 4\n\n## Drawing\n\n" \
	"```plate\n" lines "```\n"

static void plates(void **state)
{
	struct bench t = bench_one(PLATE("length: 6 in\nwidth: 4 in\nthickness: 1/4 in\n"
	    "hole: 1, 3/4, 13/16 in\nslot: 2, 2, 1, 1/2 in\nbend: y at 2 in\nbend: 3 in\n"
	    "cut: 0, 1/2 to 1/2, 0 in\n"));
	const struct plate_block *p = &t.m->assignments[0].drawings[0].plate;

	(void)state;
	expect_none(&t);
	assert_int_equal(t.m->assignments[0].drawings[0].kind, DRAWING_PLATE);
	expect_near(p->length.lo, 6 * IN);
	expect_near(p->thickness.lo, IN / 4);
	assert_int_equal(p->nmarks, 5);
	assert_int_equal(p->marks[0].kind, MARK_HOLE);
	expect_near(p->marks[0].v[0].lo, IN);
	expect_near(p->marks[0].v[2].lo, 13.0 / 16 * IN);
	assert_int_equal(p->marks[0].pos.line, 12);
	assert_int_equal(p->marks[1].kind, MARK_SLOT);
	expect_near(p->marks[1].v[3].lo, IN / 2);
	assert_int_equal(p->marks[2].kind, MARK_BEND_Y);
	assert_int_equal(p->marks[3].kind, MARK_BEND_X);
	expect_near(p->marks[3].v[0].lo, 3 * IN);
	assert_int_equal(p->marks[4].kind, MARK_CUT);
	expect_near(p->marks[4].v[1].lo, IN / 2);
	expect_near(p->marks[4].v[3].lo, 0);
	bench_free(&t);
}

static void faults_of_plates(void **state)
{
	static const struct row rows[] = {
		{ PLATE("length: 6 in\n"), FINDING_BAD_DRAWING, 8, 1, "no width", "width: 4 in" },
		{ PLATE("length: 6 in\nwidth: 4 in\nhole: 1, 2 in\n"), FINDING_BAD_DRAWING, 11, 7,
		    "2 sizes", "3 sizes" },
		{ PLATE("length: 6 in\nwidth: 4 in\nhole: 1, 2, 3\n"), FINDING_MISSING_UNIT, 11, 7,
		    "", "" },
		{ PLATE("length: 6 in\nwidth: 4 in\nhoel: 1, 2, 1 in\n"), FINDING_UNKNOWN_KEY, 11,
		    1, "hoel", "\"hole\"" },
		{ PLATE("length: 6 in\nwidth: 4 in\nwidth: 5 in\n"), FINDING_DUPLICATE_KEY, 11, 1,
		    "width", "" },
	};

	(void)state;
	try_rows(rows, COUNT(rows));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_joint_in_each_position),
		cmocka_unit_test(more_welds_than_letters),
		cmocka_unit_test(welds_one_by_one),
		cmocka_unit_test(pipe_from_the_thickness),
		cmocka_unit_test(faults_of_welds),
		cmocka_unit_test(a_joint_that_is_no_word_is_one_finding),
		cmocka_unit_test(a_block_that_is_not_closed),
		cmocka_unit_test(a_misspelt_heading_is_read),
		cmocka_unit_test(a_misspelt_process_is_read),
		cmocka_unit_test(blocks_that_changed_places),
		cmocka_unit_test(faults_of_joint_blocks),
		cmocka_unit_test(a_branch_has_its_own_wall),
		cmocka_unit_test(faults_of_edges_layers_and_marks),
		cmocka_unit_test(both_places_are_named),
		cmocka_unit_test(sound_joint_blocks),
		cmocka_unit_test(captions_and_letters),
		cmocka_unit_test(preparations_and_layers),
		cmocka_unit_test(marks_of_the_symbol),
		cmocka_unit_test(backing_and_beads),
		cmocka_unit_test(plates),
		cmocka_unit_test(faults_of_plates),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
