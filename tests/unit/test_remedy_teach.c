/* Teaching that was lost is one finding, and nothing of it goes missing: every finding
 * before stands after, or among the related of one that does. */
#include "remedy_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

/* An assignment of four hours; what it teaches is assessed by Quiz. */
#define WORK(id, title, rest) "# " id ": " title "\n\n- **Kind:** written\n- **Hours:** 4\n\n" \
	rest QUIZ
#define QUIZ "## Acceptance\n\n- **Quiz:** 80 %\n\n"
#define NEED1(a) "## Needs\n\n- " a "\n\n"
#define NEED2(a, b) "## Needs\n\n- " a "\n- " b "\n\n"
#define TEACH1(a) "## Teaches\n\n- " a "\n\n"
#define TEACH2(a, b) "## Teaches\n\n- " a "\n- " b "\n\n"

static const char program[] = "# A: B\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n"
    "### ORW 101: Course\n\n- **Lab hours:** 20\n\n1. AA-01, week 1\n2. BB-02, week 2\n"
    "3. CC-03, week 3\n4. DD-04, week 4\n5. EE-05, week 5\n";
static const char skills[] = "# Skills\n\n## PO1: Measures\n\n"
    "- **meas.rule:** Reads a steel rule\n- **meas.caliper:** Reads a caliper\n\n"
    "## PO2: Plans\n\n- **fab.plan:** Plans cutting and building\n"
    "- **fab.map:** Draws a weld map\n";

/* The five sheets of a program in which nothing is wrong. */
static const char *const sheets[] = {
	WORK("AA-01", "Steel rule and caliper", TEACH2("meas.rule practiced",
	    "meas.caliper practiced")),
	WORK("BB-02", "Plan a cut", NEED1("meas.rule practiced")
	    TEACH2("fab.plan practiced", "meas.rule assessed by Quiz")),
	WORK("CC-03", "Plan a build", NEED2("fab.plan practiced", "meas.caliper practiced")
	    TEACH1("meas.caliper assessed by Quiz")),
	WORK("DD-04", "Map", NEED1("fab.plan practiced")
	    TEACH2("fab.plan assessed by Quiz", "fab.map practiced")),
	WORK("EE-05", "Second map", NEED2("fab.map practiced", "meas.caliper assessed")
	    TEACH1("fab.map assessed by Quiz")),
};

/* The sheets with some of them written otherwise; null: as above. */
static struct bench with(const char *const v[COUNT(sheets)], const char *listed)
{
	struct buf all = { .arena = arena_new(NULL, NULL) };
	struct file_text files[] = {
		{ "assignments/all.md", NULL }, { "program.md", program }, { "skills.md", listed },
	};
	struct bench t;

	for (size_t i = 0; i < COUNT(sheets); i++)
		buf_adds(&all, v[i] ? v[i] : sheets[i]);
	buf_addc(&all, '\0');
	files[0].text = all.p;
	t = remedy_bench(files, COUNT(files));
	arena_free(all.arena);
	return t;
}

static bool still_told(const struct bench *t, str message)
{
	for (size_t i = 0; i < t->f->n; i++) {
		const struct finding *d = &t->f->v[i];

		if (str_eq(d->message, message))
			return true;
		for (size_t k = 0; k < d->nrelated; k++)
			if (str_eq(d->related[k].label, message))
				return true;
	}
	return false;
}

/* Settles, and looks for what was lost on the way. */
static void settle(struct bench *t)
{
	size_t n = t->f->n;
	str *before = arena_array(t->arena, n, sizeof *before);

	for (size_t i = 0; i < n; i++)
		before[i] = t->f->v[i].message;
	remedy_settle(t);
	for (size_t i = 0; i < n; i++)
		if (!still_told(t, before[i]))
			fail_msg("lost: %.*s", STR_ARG(before[i]));
}

struct lost {
	const char *what;
	const char *sheets[COUNT(sheets)];
	const char *skills;      /* null: as above */
	size_t before;
	enum finding_name name;  /* of the one that is left */
	const char *who, *repair;
	const char *other;       /* message of a second one; null: none is left */
};

static void check_lost(const struct lost *l)
{
	struct bench t = with(l->sheets, l->skills ? l->skills : skills);
	size_t n = t.f->n, head = 0;

	settle(&t);
	while (head < t.f->n && !str_has(t.f->v[head].repair, l->repair))
		head++;
	if (n != l->before || t.f->n != (l->other ? 2 : 1) || head == t.f->n ||
	    t.f->v[head].name != l->name ||
	    !str_eq(t.f->v[head].assignment, str_of(l->who)) ||
	    (l->other && !str_has(t.f->v[1 - head].message, l->other))) {
		print_findings(&t);
		fail_msg("%s: %zu before", l->what, n);
	}
	bench_free(&t);
}

static void nothing_is_wrong(void **state)
{
	static const char *const as_above[COUNT(sheets)] = { 0 };
	struct bench t = with(as_above, skills);

	(void)state;
	expect_none(&t);
	bench_free(&t);
}

static void a_section_is_lost(void **state)
{
	static const struct lost rows[] = {
		{ .what = "no heading", .sheets = { WORK("AA-01", "Steel rule and caliper", "") },
		  .before = 2, .name = FINDING_UNTAUGHT_SKILL, .who = "BB-02",
		  .repair = "write under Teaches what AA-01 teaches, such as meas.rule, "
		  "meas.caliper; nothing stands there now" },
		{ .what = "nothing under it", .before = 2, .name = FINDING_UNTAUGHT_SKILL,
		  .sheets = { WORK("AA-01", "Steel rule and caliper", "## Teaches\n\n") },
		  .who = "BB-02", .repair = "what AA-01 teaches, such as meas.rule, meas.caliper" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		check_lost(&rows[i]);
}

/* CC-03 then needs what only DD-04 teaches, and so does DD-04 itself. */
#define BB_BARE WORK("BB-02", "Plan a cut", NEED1("meas.rule practiced") \
	TEACH1("meas.rule assessed by Quiz"))
#define BB_LOW WORK("BB-02", "Plan a cut", NEED1("meas.rule practiced") \
	TEACH2("fab.plan introduced", "meas.rule assessed by Quiz"))
#define DD_MAPS WORK("DD-04", "Map", NEED1("fab.plan practiced") \
	TEACH1("fab.map practiced"))

static void a_line_is_lost(void **state)
{
	static const struct lost rows[] = {
		{ .what = "it is gone", .sheets = { NULL, BB_BARE }, .before = 2,
		  .name = FINDING_UNTAUGHT_SKILL, .who = "DD-04",
		  .repair = "let an assignment before CC-03 teach fab.plan practiced" },
		{ .what = "a level too low", .sheets = { NULL, BB_LOW }, .before = 2,
		  .name = FINDING_UNTAUGHT_SKILL, .who = "DD-04",
		  .repair = "let BB-02 teach fab.plan practiced, or another assignment before "
		  "CC-03" },
		{ .what = "never assessed either", .before = 2, .name = FINDING_UNTAUGHT_SKILL,
		  .sheets = { NULL, BB_LOW, NULL, DD_MAPS }, .who = "CC-03",
		  .repair = "let BB-02 teach fab.plan assessed, or another assignment before "
		  "CC-03" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		check_lost(&rows[i]);
}

#define NEW_SKILL "- **fab.rig:** Slings and rigs a load\n"
static const char with_new[] = "# Skills\n\n## PO1: Measures\n\n"
    "- **meas.rule:** Reads a steel rule\n- **meas.caliper:** Reads a caliper\n\n"
    "## PO2: Plans\n\n- **fab.plan:** Plans cutting and building\n"
    "- **fab.map:** Draws a weld map\n\n## PO3: Rigs\n\n" NEW_SKILL;
#define EE_RIGS WORK("EE-05", "Second map", NEED2("fab.map practiced", \
	"meas.caliper assessed") "- fab.rig practiced\n\n" \
	TEACH1("fab.map assessed by Quiz"))

/* Nobody teaches fab.rig, and nothing that was lost ever did. */
static void two_faults_stay_two(void **state)
{
	static const struct lost rows[] = {
		{ .what = "a section, and what nobody teaches", .before = 4, .skills = with_new,
		  .sheets = { WORK("AA-01", "Steel rule and caliper", ""), NULL, NULL, NULL,
		  EE_RIGS }, .name = FINDING_UNTAUGHT_SKILL, .who = "BB-02",
		  .repair = "what AA-01 teaches, such as meas.rule, meas.caliper;",
		  .other = "EE-05 (quarter 1, week 5) needs fab.rig practiced" },
		/* That it is not assessed either goes with it. */
		{ .what = "a line, and what nobody teaches", .before = 4, .skills = with_new,
		  .sheets = { NULL, BB_BARE, NULL, NULL, EE_RIGS },
		  .name = FINDING_UNTAUGHT_SKILL, .who = "DD-04",
		  .repair = "let an assignment before CC-03 teach fab.plan practiced",
		  .other = "EE-05 (quarter 1, week 5) needs fab.rig practiced" },
		{ .what = "two sections", .before = 4,
		  .sheets = { WORK("AA-01", "Steel rule and caliper", ""), NULL, NULL,
		  WORK("DD-04", "Map", NEED1("fab.plan practiced")) },
		  .name = FINDING_UNTAUGHT_SKILL, .who = "BB-02",
		  .repair = "what AA-01 teaches, such as meas.rule, meas.caliper;",
		  .other = "fab.map" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		check_lost(&rows[i]);
}

/* The sheets but BB-02, of which CC-03 and DD-04 then find nothing. */
static str without_bb(struct arena *a)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < COUNT(sheets); i++)
		if (i != 1)
			buf_adds(&b, sheets[i]);
	buf_addc(&b, '\0');
	return buf_str(&b);
}

static void expect_told(struct bench *t, size_t before, enum finding_name name,
    const char *repair)
{
	size_t n = t->f->n;

	settle(t);
	if (n != before || t->f->n != 1 || t->f->v[0].name != name ||
	    !str_has(t->f->v[0].repair, repair)) {
		print_findings(t);
		fail_msg("%zu before, not one %s", n, finding_info(name)->name);
	}
	bench_free(t);
}

static void a_file_is_lost(void **state)
{
	static const char garbled[] = "Plan a cut\n\n- **Kind:** written\n";
	struct arena *a = arena_new(NULL, NULL);
	struct file_text gone[] = {
		{ "assignments/all.md", without_bb(a).p }, { "program.md", program },
		{ "skills.md", skills },
	};
	struct file_text there[] = {
		{ "assignments/BB-02.md", "" }, gone[0], gone[1], gone[2],
	};
	struct bench t = remedy_bench(gone, COUNT(gone));

	(void)state;
	expect_told(&t, 2, FINDING_UNKNOWN_ASSIGNMENT, "add a file that defines BB-02");
	t = remedy_bench(there, COUNT(there));
	expect_told(&t, 2, FINDING_EMPTY_FILE, "fill it in");
	there[0].text = garbled;
	t = remedy_bench(there, COUNT(there));
	expect_told(&t, 2, FINDING_NO_HEADING, "");
	arena_free(a);
}

/* What a translation says of a lost file is no fault of the file that takes its place,
 * and the picture that only it showed is shown. */
static void what_stands_for_a_lost_file(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct file_text files[] = {
		{ "assignments/all.md", without_bb(a).p },
		{ "assignments/es/BB-02.md", "# BB-02: Corte\n\n## Procedure\n\n1. Mida.\n" },
		{ "program.md", program }, { "skills.md", skills },
	};
	struct bench t = remedy_bench(files, COUNT(files));
	struct picture_file picture = { .path = STR("pictures/vise.png") };
	const struct remedies *all;
	size_t dropped = 0;

	(void)state;
	t.m->pictures = &picture;
	t.m->npictures = 1;
	all = remedy_seek(&t, remedy_at(&t, FINDING_UNKNOWN_ASSIGNMENT), seek_lost);
	assert_int_equal(all->n, 1);
	for (size_t i = 0; i < all->v[0].nedits; i++) {
		const struct edit *e = &all->v[0].edits[i];

		dropped += e->kind == EDIT_DROP && e->file == 1 && e->line > 1;
		if (e->kind != EDIT_ADD)
			continue;
		assert_int_equal(e->file, 0);
		assert_true(str_has(e->text, "# BB-02: As it was\n"));
		assert_true(str_has(e->text, "- fab.plan assessed\n"));
		assert_true(str_has(e->text, "(../pictures/vise.png)\n"));
	}
	assert_int_equal(dropped, 4);
	t.m->npictures = 0;
	expect_told(&t, 2, FINDING_UNKNOWN_ASSIGNMENT, "add a file that defines BB-02");
	arena_free(a);
}

static struct pos place_of(const struct bench *t, const char *line)
{
	str text = t->sources.v[0].text;
	size_t at = str_find(text, str_of(line), 0);

	assert_true(at < text.n);
	return (struct pos){ 0, (uint32_t)text_count_lines(str_sub(text, 0, at)) + 1, 3 };
}

/* A need that something else is found wrong with may be the wrong one: it is left out, and
 * what the finding says of it stands. */
static void a_need_of_another_skill(void **state)
{
	static const char *const wrong[COUNT(sheets)] = {
		[1] = WORK("BB-02", "Plan a cut", NEED1("fab.map practiced")
		    TEACH2("fab.plan practiced", "meas.rule assessed by Quiz")),
	};
	struct bench t = with(wrong, skills);
	uint32_t at = remedy_at(&t, FINDING_NEEDS_LOOP);
	struct pos pos = place_of(&t, "- fab.map practiced\n");
	const struct remedies *all;

	(void)state;
	assert_int_equal(t.f->v[at].pos.line, pos.line);
	assert_int_equal(remedy_seek(&t, at, seek_other_skills)->n, 0);
	finding_add(t.f, FINDING_UNTRANSLATED_WORDS, pos, "no word for it");
	all = remedy_seek(&t, at, seek_other_skills);
	assert_int_equal(all->n, 1);
	assert_int_equal(all->v[0].nedits, 1);
	assert_int_equal(all->v[0].edits[0].kind, EDIT_DROP);
	assert_int_equal(all->v[0].edits[0].line, pos.line);
	assert_int_equal(all->v[0].say.n, 0);
	bench_free(&t);
}

/* EE-05 assesses a skill of nearly that name in place of fab.map. */
static void a_test_of_another_skill(void **state)
{
	static const char listed[] = "# Skills\n\n## PO1: Measures\n\n"
	    "- **meas.rule:** Reads a steel rule\n- **meas.caliper:** Reads a caliper\n\n"
	    "## PO2: Plans\n\n- **fab.plan:** Plans cutting and building\n"
	    "- **fab.map:** Draws a weld map\n- **fab.mat:** Orders material\n";
	static const char *const wrong[COUNT(sheets)] = {
		[4] = WORK("EE-05", "Second map", NEED2("fab.map practiced", "meas.caliper assessed")
		    TEACH1("fab.mat assessed by Quiz")),
	};
	struct bench t = with(wrong, listed);
	const struct remedies *all;
	struct finding *d;

	(void)state;
	assert_true(t.f->v[remedy_at(&t, FINDING_NEVER_ASSESSED)].skill.n);
	d = finding_add(t.f, FINDING_ASSESSED_TOO_EARLY, place_of(&t, "- fab.mat assessed"),
	    "EE-05 is a test");
	d->assignment = STR("EE-05");
	d->skill = STR("fab.mat");
	all = remedy_seek(&t, t.f->n - 1, seek_other_skills);
	assert_int_equal(all->n, 1);
	expect_str(all->v[0].edits[0].text, "- fab.map assessed by Quiz");
	expect_str(all->v[0].say, "write fab.map if that is what EE-05 assesses");
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(nothing_is_wrong),
		cmocka_unit_test(a_section_is_lost),
		cmocka_unit_test(a_line_is_lost),
		cmocka_unit_test(two_faults_stay_two),
		cmocka_unit_test(a_file_is_lost),
		cmocka_unit_test(what_stands_for_a_lost_file),
		cmocka_unit_test(a_need_of_another_skill),
		cmocka_unit_test(a_test_of_another_skill),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
