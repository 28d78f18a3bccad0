/* R7 to R11, R13 to R18: what work expects of earlier work.
 *
 * R7 tests: a test that students make was shown before, by whomever; a bench where
 * nothing is welded may teach it. R8: work judged by measured sizes comes after the
 * first measuring, without process, and without machine unless it says that it is one of
 * measuring; gauges are shown before students gauge
 * their own welds. R9: an assignment with a beveled cut. R10: a drill whose acceptance
 * speaks of fit-up or tacks; without one, any work that does; without any, whatever is
 * neither test nor project. R11: a drill, a pad or a "set-up" line in the same process.
 * R13: a layout of that method that is no project. R14: any drawing. R16: plate grooves
 * without backing in the same process; a drill or a beveled cut on pipe. R17: work that
 * cites a procedure or asks about one. R18: any gouging.
 *
 * R15: the purge alone, the rest stands with the rules about metal. Of R14, welding
 * symbols are left out: no fact
 * tells which print has them. */
#include "check/rule_trade.h"

static const struct assignment *work_of(const struct trade *t, uint32_t assignment)
{
	return &t->x.m->assignments[assignment];
}

static bool always_owed(const struct trade *t, uint32_t asker, uint32_t key)
{
	(void)t;
	(void)asker;
	(void)key;
	return true;
}

/* A coupon may teach on its own sheet what a test or a project only uses. */
static bool final_owed(const struct trade *t, uint32_t asker, uint32_t key)
{
	(void)key;
	return is_final_work(work_of(t, asker));
}

static bool is_student_tested(const struct trade *t, uint32_t assignment)
{
	const struct assignment *a = work_of(t, assignment);

	return is_shop_work(a) && t->x.work[assignment].processes &&
	    fact_is(a, "Tested by", "student");
}

/* R7: bends are one skill, whichever side is stretched. */

static uint32_t tests_taught(const struct trade *t, uint32_t assignment)
{
	uint32_t bits = shop_tests_of(work_of(t, assignment));
	uint32_t bends = UINT32_C(1) << SHOP_ROOT_BEND | UINT32_C(1) << SHOP_SIDE_BEND;

	return bits & bends ? (bits & ~bends) | UINT32_C(1) << SHOP_FACE_BEND : bits;
}

static uint32_t gives_tests(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(tests_taught(t, assignment), v);
}

static uint32_t asks_tests(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return is_student_tested(t, assignment)
	    ? put_bits(tests_taught(t, assignment), v) : 0;
}

static const char *test_word(const struct trade *t, uint32_t key)
{
	(void)t;
	return key == SHOP_FACE_BEND ? "bend test" : shop_test_word(key);
}

/* Whether the title says a word, or that of a skill which the work teaches. */
static bool teaches_words(const struct trade *t, uint32_t assignment,
    const char *const *words)
{
	const struct assignment *a = work_of(t, assignment);

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill != NONE &&
		    says_any(t->x.m->skills[a->teaches[i].skill].title, words))
			return true;
	return says_any(a->title, words);
}

/* R8: an exercise at a machine, such as a saw, is one of measuring when it says so. */

static const char *const measuring[] = { "measure", "measures", "measured", "measuring",
	NULL };

static uint32_t gives_measuring(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(a->kind != KIND_SAFETY && !t->x.work[assignment].processes &&
	    (!t->x.work[assignment].nmachines || teaches_words(t, assignment, measuring)) &&
	    !a->nwelds && acceptance_measures(a), v);
}

static uint32_t asks_measuring(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(is_shop_work(a) && t->x.work[assignment].processes &&
	    acceptance_measures(a), v);
}

static const char *const gauge_words[] = { "gauge", NULL };
static const char *const leg_words[] = { "leg size", "fillet gauge", NULL };

static uint32_t gives_gauge(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(acceptance_says(a, gauge_words) ||
	    acceptance_says(a, leg_words), v);
}

static uint32_t asks_gauge(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(is_student_tested(t, assignment) &&
	    acceptance_says(work_of(t, assignment), leg_words), v);
}

/* R9 */

static uint32_t gives_bevel(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(work_has(t->x.work[assignment].joints, JOINT_BEVEL_CUT), v);
}

static uint32_t asks_bevel(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	uint32_t joints = t->x.work[assignment].joints;
	bool beveled = work_has(joints, JOINT_SINGLE_V) ||
	    work_has(joints, JOINT_SINGLE_BEVEL) || work_has(joints, JOINT_PIPE_BUTT);

	return put_bits(beveled && !work_has(joints, JOINT_BEVEL_CUT) &&
	    fact_is(work_of(t, assignment), "Stock", "beveled by student"), v);
}

/* R10 */

static const char *const fit_words[] = { "fit-up", "fit up", "tack", NULL };

static bool joins_pieces(const struct assignment *a)
{
	uint32_t pieces = 0;
	bool joins = false;

	for (size_t i = 0; i < a->nwelds; i++)
		joins |= weld_joins(&a->welds[i]);
	for (size_t i = 0; i < a->npieces; i++)
		pieces += a->pieces[i].count;
	return joins && (!a->npieces || pieces > 1);
}

/* Whether w may teach fit-up; the first sort that a program has is the one that counts:
 * drills that speak of it, any work that does, drills and coupons that join pieces. */
static bool teaches_fit(const struct trade *t, uint32_t w, unsigned sort)
{
	const struct assignment *a = work_of(t, w);

	if (sort == 2)
		return is_shop_work(a) && !is_final_work(a) && joins_pieces(a);
	return (sort == 1 || a->kind == KIND_DRILL) && acceptance_says(a, fit_words);
}

static void prepare_fit(struct trade *t)
{
	bool found = false;

	for (unsigned sort = 0; sort < 3 && !found; sort++)
		for (uint32_t w = 0; w < t->x.m->nassignments; w++) {
			t->marks[w] = teaches_fit(t, w, sort);
			found |= t->marks[w];
		}
}

static uint32_t gives_marks(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(t->marks[assignment], v);
}

static uint32_t asks_fit(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(is_shop_work(a) && !t->marks[assignment] && joins_pieces(a), v);
}

/* R11 */

static uint32_t crafts_of(const struct trade *t, uint32_t assignment)
{
	uint32_t bits = 0;

	for (uint32_t p = 0; p < PROCESS_COUNT; p++)
		if (work_has(t->x.work[assignment].processes, p))
			bits |= UINT32_C(1) << craft_of(p);
	return bits;
}

static uint32_t gives_set_up(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	static const char *const words[] = { "set-up", "set up", "setup", NULL };
	const struct assignment *a = work_of(t, assignment);
	bool sets = a->kind == KIND_DRILL || !is_shop_work(a) ||
	    work_has(t->x.work[assignment].joints, JOINT_SURFACING) ||
	    acceptance_says(a, words);

	return put_bits(sets ? crafts_of(t, assignment) : 0, v);
}

/* The crafts whose welds hold pieces together here. */
static uint32_t joining_crafts(const struct assignment *a)
{
	uint32_t bits = 0;

	for (size_t i = 0; i < a->nwelds; i++)
		if (weld_joins(&a->welds[i]) && a->welds[i].process < PROCESS_COUNT)
			bits |= UINT32_C(1) << craft_of(a->welds[i].process);
	return bits;
}

static uint32_t asks_set_up(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return is_shop_work(a) && !gives_set_up(t, assignment, v)
	    ? put_bits(joining_crafts(a), v) : 0;
}

static const char *key_craft(const struct trade *t, uint32_t key)
{
	(void)t;
	return craft_word(key);
}

/* R13: a project may introduce its own way of laying out, but not before the exercise. */

static uint32_t gives_layout(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return a->kind == KIND_PROJECT ? 0 : put_bits(layouts_of(a), v);
}

static uint32_t asks_layout(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return a->kind == KIND_PROJECT ? put_bits(layouts_of(a), v) : 0;
}

static const char *key_layout(const struct trade *t, uint32_t key)
{
	(void)t;
	return layout_word(key);
}

/* R14: a project without a procedure is built from its print alone. */

static uint32_t gives_drawing(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(work_of(t, assignment)->ndrawings > 0, v);
}

static uint32_t asks_drawing(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(a->kind == KIND_PROJECT && a->ndrawings && !a->nsteps, v);
}

/* R16 */

/* A groove in plate that may be without backing: said, or square and nothing said. */
static bool is_open_plate(const struct weld *w, enum root root)
{
	bool square = w->joint == JOINT_SQUARE_BUTT || w->joint == JOINT_OPEN_CORNER;

	return (joint_is_butt(w->joint) || w->joint == JOINT_OPEN_CORNER) &&
	    w->joint != JOINT_PIPE_BUTT && !w->run.od_mm &&
	    (root == ROOT_OPEN || (root == ROOT_UNTOLD && square));
}

static uint32_t gives_open(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);
	enum root root = root_of(a);
	uint32_t bits = 0;

	for (size_t i = 0; i < a->nwelds; i++)
		if (is_open_plate(&a->welds[i], root))
			bits |= UINT32_C(1) << craft_of(a->welds[i].process);
	return put_bits(bits & ~(UINT32_C(1) << CRAFT_COUNT), v);
}

static uint32_t asks_open(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);
	uint32_t bits = 0;

	if (!is_shop_work(a) || root_of(a) != ROOT_OPEN)
		return 0;
	for (size_t i = 0; i < a->nwelds; i++)
		if (a->welds[i].joint == JOINT_PIPE_BUTT)
			bits |= UINT32_C(1) << craft_of(a->welds[i].process);
	return put_bits(bits & ~(UINT32_C(1) << CRAFT_COUNT), v);
}

static bool is_on_pipe(const struct trade *t, uint32_t assignment)
{
	const struct assignment *a = work_of(t, assignment);
	uint32_t joints = t->x.work[assignment].joints;

	if (work_has(joints, JOINT_PIPE_BUTT) || work_has(joints, JOINT_BRANCH))
		return true;
	for (uint32_t i = 0; i < a->nmaterials; i++)
		if (says(a->materials[i].text, "pipe"))
			return true;
	return false;
}

static uint32_t gives_pipe(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(is_on_pipe(t, assignment) &&
	    (work_of(t, assignment)->kind == KIND_DRILL ||
	    work_has(t->x.work[assignment].joints, JOINT_BEVEL_CUT)), v);
}

static uint32_t asks_pipe(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	uint32_t joints = t->x.work[assignment].joints;

	if (!is_shop_work(work_of(t, assignment)) || gives_pipe(t, assignment, v))
		return 0;
	return put_bits(work_has(joints, JOINT_PIPE_BUTT) ||
	    work_has(joints, JOINT_BRANCH), v);
}

/* R17 */

static uint32_t gives_procedure(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	static const char *const words[] = { "procedure", "WPS", NULL };
	const struct assignment *a = work_of(t, assignment);

	return put_bits(is_stated(fact_said(a, "Procedure")) ||
	    acceptance_says(a, words), v);
}

static uint32_t asks_procedure(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(a->kind == KIND_QUALIFICATION_TEST &&
	    is_stated(fact_said(a, "Procedure")), v);
}

/* R18: gouged and welded on one sheet is a repair, or a back-gouged joint. */

static uint32_t gives_gouging(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	return put_bits(is_shop_work(work_of(t, assignment)) &&
	    work_has(t->x.work[assignment].processes, PROCESS_CAC_A), v);
}

static uint32_t asks_gouging(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	uint32_t arcs = UINT32_C(1) << CRAFT_STICK | UINT32_C(1) << CRAFT_SOLID_WIRE |
	    UINT32_C(1) << CRAFT_CORED_WIRE | UINT32_C(1) << CRAFT_TUNGSTEN;

	return is_shop_work(work_of(t, assignment)) && crafts_of(t, assignment) & arcs
	    ? gives_gouging(t, assignment, v) : 0;
}

/* R15, back purge: a drill or a coupon may be the first. */

static uint32_t gives_purge(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(!is_final_work(a) && is_stated(fact_said(a, "Purge")), v);
}

static uint32_t asks_purge(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	const struct assignment *a = work_of(t, assignment);

	return put_bits(is_final_work(a) && is_stated(fact_said(a, "Purge")), v);
}

static const struct trade_rule rules[] = {
	{ .name = FINDING_TEST_NOT_SHOWN, .fact = "Tested by", .nkeys = SHOP_TESTS,
	    .gives = gives_tests, .asks = asks_tests, .owed = always_owed,
	    .word = test_word, .does = "lets students make the @ themselves",
	    .late = " before it is shown", .never = ", which no earlier work shows",
	    .gives_words = "shows the @", .never_cause = "no assignment before it has "
	    "this test", .never_repair = "let the instructor test here, or put work that "
	    "shows the @ before it" },
	{ .name = FINDING_MEASURED_TOO_EARLY, .fact = "Process", .nkeys = 1,
	    .gives = gives_measuring, .asks = asks_measuring,
	    .does = "is judged by measured sizes",
	    .late = " before measuring is taught", .never = "",
	    .gives_words = "teaches measuring", .never_cause = "", .never_repair = "" },
	{ .name = FINDING_GAUGE_NOT_SHOWN, .fact = "Tested by", .nkeys = 1,
	    .gives = gives_gauge, .asks = asks_gauge, .owed = always_owed,
	    .does = "lets students gauge their own fillets",
	    .late = " before a gauge is shown",
	    .never = ", and no earlier work shows a gauge",
	    .gives_words = "shows a gauge", .never_cause = "no assignment before it has "
	    "a gauge or a leg size in its acceptance",
	    .never_repair = "let the instructor gauge here, or put work with gauges "
	    "before it" },
	{ .name = FINDING_BEVELED_TOO_EARLY, .fact = "Stock", .nkeys = 1,
	    .gives = gives_bevel, .asks = asks_bevel, .owed = always_owed,
	    .does = "lets students bevel the stock",
	    .late = " before bevel cutting is taught",
	    .never = ", and no earlier work teaches bevel cutting",
	    .gives_words = "teaches bevel cutting",
	    .never_cause = "no assignment has \"bevel cut\" under Joint",
	    .never_repair = "write \"Stock: beveled by aide\", or teach a bevel cut "
	    "before it" },
	{ .name = FINDING_WELDED_BEFORE_FIT_UP, .fact = "Joint", .nkeys = 1,
	    .prepare = prepare_fit, .gives = gives_marks, .asks = asks_fit,
	    .owed = final_owed, .does = "joins pieces",
	    .late = " before fit-up and tacking are taught",
	    .never = ", and no earlier work teaches fit-up and tacking",
	    .gives_words = "teaches fit-up",
	    .never_cause = "no acceptance line before it speaks of fit-up or tacks",
	    .never_repair = "put a fit-up drill before it" },
	{ .name = FINDING_WELDED_BEFORE_SET_UP, .fact = "Process", .nkeys = CRAFT_COUNT,
	    .gives = gives_set_up, .asks = asks_set_up, .owed = final_owed,
	    .word = key_craft, .does = "welds a joint with @",
	    .late = " before its set-up is taught",
	    .never = ", and no earlier work teaches its set-up",
	    .gives_words = "teaches the set-up of @",
	    .never_cause = "no drill, pad or set-up line with @ stands before it",
	    .never_repair = "put a set-up drill or a pad with @ before it" },
	{ .name = FINDING_PATTERN_NOT_TAUGHT, .fact = "", .nkeys = LAYOUTS,
	    .gives = gives_layout, .asks = asks_layout, .word = key_layout,
	    .does = "is a project laid out by @", .late = " before that is taught",
	    .never = "", .gives_words = "teaches @", .never_cause = "",
	    .never_repair = "" },
	{ .name = FINDING_PRINT_NOT_TAUGHT, .fact = "", .nkeys = 1,
	    .gives = gives_drawing, .asks = asks_drawing, .owed = always_owed,
	    .does = "is built from its print alone",
	    .late = " before any other drawing",
	    .never = ", and no earlier work has a drawing",
	    .gives_words = "has a drawing", .never_cause = "no assignment before it has "
	    "a drawing", .never_repair = "write its Procedure, or put work with a "
	    "drawing before it" },
	{ .name = FINDING_OPEN_PIPE_BEFORE_PLATE, .fact = "Backing",
	    .nkeys = CRAFT_COUNT, .gives = gives_open, .asks = asks_open,
	    .owed = always_owed, .word = key_craft,
	    .does = "welds pipe with an open root in @",
	    .late = " before an open root on plate",
	    .never = ", and no open root on plate comes before it",
	    .gives_words = "has an open root on plate in @",
	    .never_cause = "no plate groove without backing is welded so before it",
	    .never_repair = "put an open-root plate coupon in @ before it" },
	{ .name = FINDING_PIPE_NOT_PREPARED, .fact = "Joint", .nkeys = 1,
	    .gives = gives_pipe, .asks = asks_pipe, .owed = final_owed,
	    .does = "joins pipe", .late = " before pipe preparation is taught",
	    .never = ", and no earlier work teaches pipe preparation",
	    .gives_words = "teaches pipe preparation",
	    .never_cause = "no drill and no bevel cut on pipe stands before it",
	    .never_repair = "put a drill on pipe preparation before it" },
	{ .name = FINDING_PROCEDURE_NOT_READ, .fact = "Procedure", .nkeys = 1,
	    .gives = gives_procedure, .asks = asks_procedure, .owed = always_owed,
	    .does = "cites a procedure", .late = " before any other work does",
	    .never = ", and no earlier work has students read one",
	    .gives_words = "has a procedure to read",
	    .never_cause = "no assignment before it names a procedure",
	    .never_repair = "name a procedure on the practice test, or put work that "
	    "reads one before it" },
	{ .name = FINDING_REPAIR_BEFORE_GOUGING, .fact = "Process", .nkeys = 1,
	    .gives = gives_gouging, .asks = asks_gouging, .owed = always_owed,
	    .does = "gouges and welds again", .late = " before gouging is taught",
	    .never = ", and no earlier work teaches gouging",
	    .gives_words = "teaches gouging",
	    .never_cause = "no assignment before it gouges",
	    .never_repair = "put a gouging drill before it" },
	{ .name = FINDING_PURGE_NOT_SHOWN, .fact = "Purge", .nkeys = 1,
	    .gives = gives_purge, .asks = asks_purge, .owed = always_owed,
	    .does = "is purged from behind", .late = " before that is taught",
	    .never = ", and no earlier work sets up a purge",
	    .gives_words = "sets up a purge",
	    .never_cause = "no drill or coupon before it has a Purge line",
	    .never_repair = "put a purged drill or coupon before it" },
};

void rule_trade(struct rule_context *x)
{
	for (size_t i = 0; i < sizeof rules / sizeof *rules; i++)
		trade_run(x, &rules[i], NULL);
}
