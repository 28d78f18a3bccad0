/* Remedies judged and settled: findings made by hand, then whole programs. */
#include "remedy_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

/* A finding in one letter of its message, so that lists of them can be written in a row. */
struct hand {
	enum finding_name name;
	uint32_t file, line;
	const char *who, *skill, *message;
	bool waived;
	uint32_t related;        /* line of the same file that it lists; 0: none */
};

static struct findings *by_hand(struct arena *a, const struct hand *v, size_t n)
{
	static const struct waived reason = { 0 };
	struct findings *f = findings_new(a);

	for (size_t i = 0; i < n && v[i].message; i++) {
		struct finding *d = finding_add(f, v[i].name,
		    (struct pos){ v[i].file, v[i].line, 1 }, "%s", v[i].message);

		d->assignment = v[i].who ? str_of(v[i].who) : (str){ 0 };
		d->skill = v[i].skill ? str_of(v[i].skill) : (str){ 0 };
		d->waived = v[i].waived ? &reason : NULL;
		if (v[i].related)
			finding_relate(f, d, (struct pos){ v[i].file, v[i].related, 1 });
	}
	return f;
}

#define NEED FINDING_UNTAUGHT_SKILL
#define OVER FINDING_HOURS_OVER
#define UNDER FINDING_HOURS_UNDER

enum { HANDS = 4 };

/* Line 2 of file 0 is dropped and comes again behind line 4; a new line stands before it:
 * 1, 3, 4, new, 2, 5 of what was 1..5. */
static const struct edit move[] = {
	{ EDIT_DROP, 0, 2, { 0 }, 0 }, { EDIT_ADD, 0, 4, { "new", 3 }, 0 },
	{ EDIT_ADD, 0, 4, { "b", 1 }, 2 },
};

struct judged {
	const char *what;
	struct hand before[HANDS], after[HANDS];
	uint32_t finding;
	const char *mends;       /* the messages of what it mends; "": it is no good */
};

static void check_judged(const struct judged *j)
{
	static const struct source one = { { "program.md", 10 }, { "a\nb\nc\nd\ne\n", 10 } };
	struct arena *a = arena_new(NULL, NULL);
	struct findings *before = by_hand(a, j->before, HANDS);
	struct edited text = edits_apply(a, &one, 0, move, COUNT(move));
	struct remedy r = { .finding = j->finding };
	struct buf said = { .arena = a };

	remedy_judge(a, &r, before, by_hand(a, j->after, HANDS), &text, 1);
	for (size_t i = 0; r.mends && i < before->n; i++)
		if (r.mends[i])
			buf_add(&said, before->v[i].message);
	if (!str_eq(buf_str(&said), str_of(j->mends)) || r.nmended != strlen(j->mends))
		fail_msg("%s: mends \"%.*s\"", j->what, STR_ARG(buf_str(&said)));
	arena_free(a);
}

static void what_a_trial_mends(void **state)
{
	static const struct judged rows[] = {
		{ "all gone", { { NEED, 0, 1, "A", "s", "a", 0, 0 }, { OVER, 0, 3, 0, 0, "b", 0, 0 } },
		  { { 0 } }, 0, "ab" },
		{ "the other one stays where it was", { { NEED, 0, 1, "A", "s", "a", 0, 0 },
		  { OVER, 0, 3, 0, 0, "b", 0, 0 } }, { { OVER, 0, 2, 0, 0, "b", 0, 0 } }, 0, "a" },
		{ "in other words it is the same", { { NEED, 0, 1, "A", "s", "a", 0, 0 },
		  { OVER, 0, 5, 0, 0, "b", 0, 0 } }, { { OVER, 0, 6, 0, 0, "c", 0, 0 } }, 0, "a" },
		{ "its own stays", { { NEED, 0, 1, "A", "s", "a", 0, 0 }, { OVER, 0, 3, 0, 0, "b", 0, 0 } },
		  { { NEED, 0, 1, "A", "s", "a", 0, 0 } }, 0, "" },
		{ "its own moves along with its line", { { NEED, 0, 2, "A", "s", "a", 0, 0 },
		  { OVER, 0, 3, 0, 0, "b", 0, 0 } }, { { NEED, 0, 5, "A", "s", "a", 0, 0 } }, 0, "" },
		{ "something new", { { NEED, 0, 1, "A", "s", "a", 0, 0 }, { OVER, 0, 3, 0, 0, "b", 0, 0 } },
		  { { UNDER, 0, 3, 0, 0, "c", 0, 0 } }, 0, "" },
		{ "the same of another skill is new", { { NEED, 0, 1, "A", "s", "a", 0, 0 } },
		  { { NEED, 0, 1, "A", "t", "a", 0, 0 } }, 0, "" },
		{ "the same of another assignment is new", { { NEED, 0, 1, "A", "s", "a", 0, 0 } },
		  { { NEED, 0, 1, "B", "s", "a", 0, 0 } }, 0, "" },
		{ "the same in another file is new", { { NEED, 0, 1, "A", "s", "a", 0, 0 } },
		  { { NEED, 1, 1, "A", "s", "a", 0, 0 } }, 0, "" },
		{ "a second one of the same is new", { { NEED, 0, 1, "A", "s", "a", 0, 0 },
		  { OVER, 0, 3, 0, 0, "b", 0, 0 } }, { { OVER, 0, 2, 0, 0, "b", 0, 0 },
		  { OVER, 0, 2, 0, 0, "c", 0, 0 } }, 0, "" },
		{ "what a new line brings is no harm", { { NEED, 0, 1, "A", "s", "a", 0, 0 } },
		  { { UNDER, 0, 4, 0, 0, "c", 0, 0 } }, 0, "a" },
		{ "what is waived is no harm, and is not mended", { { NEED, 0, 1, "A", "s", "a", 0, 0 },
		  { OVER, 0, 3, 0, 0, "b", 1, 0 } }, { { UNDER, 0, 3, 0, 0, "c", 1, 0 } }, 0, "a" },
		{ "nor is a waiver that covers nothing now", { { NEED, 0, 1, "A", "s", "a", 0, 0 } },
		  { { FINDING_IDLE_WAIVER, 1, 7, 0, 0, "c", 0, 0 } }, 0, "a" },
		{ "listed under another it is there still", { { NEED, 0, 1, "A", "s", "a", 0, 0 },
		  { OVER, 0, 3, 0, 0, "b", 0, 0 }, { UNDER, 0, 5, 0, 0, "c", 0, 0 } },
		  { { UNDER, 0, 6, 0, 0, "c", 0, 2 } }, 0, "a" },
		{ "and its own so is not mended", { { NEED, 0, 3, "A", "s", "a", 0, 0 },
		  { UNDER, 0, 5, 0, 0, "b", 0, 0 } }, { { UNDER, 0, 6, 0, 0, "b", 0, 2 } }, 0, "" },
		{ "the second of two", { { NEED, 0, 1, "A", "s", "a", 0, 0 }, { NEED, 0, 1, "A", "t",
		  "b", 0, 0 } }, { { NEED, 0, 1, "A", "s", "a", 0, 0 } }, 1, "b" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		check_judged(&rows[i]);
}

#define WORK(id, hours, rest) "# " id ": Work " id "\n\n- **Kind:** written\n- **Hours:** " \
	hours "\n\n" rest "\n"
#define NEEDS "## Needs\n\n- fab.plan practiced\n\n"
#define TEACHES "## Teaches\n\n- fab.plan assessed by Quiz\n\n## Acceptance\n\n- **Quiz:** 80 %\n\n"
#define COURSE(number, lab) "### ORW " number ": Course " number "\n\n- **Lab hours:** " lab \
	"\n\n"
#define PROGRAM "# A: B\n\n- **Weeks in a quarter:** 11\n\n"

static const char skills[] = "# Skills\n\n## PO1: Plans\n\n- **fab.plan:** Plan a job\n";

/* Exactly these, by name, and then what the first lists. */
static void expect_names(const struct bench *t, const enum finding_name *v, size_t n,
    size_t related)
{
	bool same = t->f->n == n && (!n || t->f->v[0].nrelated == related);

	for (size_t i = 0; same && i < n; i++)
		same = t->f->v[i].name == v[i];
	if (!same) {
		print_findings(t);
		fail_msg("not these %zu, or not with %zu related", n, related);
	}
}

/* The line of PR-02 is lost. Two courses are short of its 20 h, of which one lost it; the
 * other is a fault of its own. */
static void a_lost_line_and_another_fault(void **state)
{
	static const struct file_text files[] = {
		{ "assignments/all.md", WORK("AA-01", "20", "") WORK("AA-02", "20", "")
		  WORK("PR-02", "20", TEACHES) WORK("SM-24", "40", NEEDS) },
		{ "program.md", PROGRAM "## Quarter 1\n\n" COURSE("101", "40")
		  "1. AA-01, week 1\n\n" COURSE("102", "40") "1. AA-02, week 2\n\n## Quarter 2\n\n"
		  COURSE("103", "40") "1. SM-24, week 5\n" },
		{ "skills.md", skills },
	};
	static const enum finding_name before[] = { FINDING_NOT_LISTED, FINDING_HOURS_UNDER,
		FINDING_HOURS_UNDER, FINDING_OUTCOME_UNASSESSED };
	static const enum finding_name after[] = { FINDING_NOT_LISTED, FINDING_HOURS_UNDER };
	struct bench t = remedy_bench(files, COUNT(files));
	bool one;

	(void)state;
	expect_names(&t, before, COUNT(before), 1);
	remedy_settle(&t);
	/* The need, hours of one course, the outcome and its skill. */
	expect_names(&t, after, COUNT(after), 4);
	/* Either course may be it, and the other is told. */
	one = str_has(t.f->v[0].repair, "in ORW 101");
	assert_true(one || str_has(t.f->v[0].repair, "in ORW 102"));
	assert_true(str_has(t.f->v[1].message, one ? "ORW 102" : "ORW 101"));
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(what_a_trial_mends),
		cmocka_unit_test(a_lost_line_and_another_fault),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
