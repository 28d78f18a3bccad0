/* The rules about time, place, paper and entry paths: each at its limit, on programs
 * given as text. What each says is in tests/cases/time. */
#include "model_bench.h"

#include "check/check.h"
#include "model/credit.h"

#define PROGRAM_HEAD "# A: B\n\n- **Weeks in a quarter:** 10\n" \
	"- **Terms:** Fall, Winter, Spring\n"
#define SKILLS "# Skills\n\n## PO1: One\n\n- **smaw.2f:** Two\n- **fit.tack:** Tack\n"
#define DAY "# Shop\n\n## Section day\n\n- **Open:** 16 h a week\n\n" \
	"## Section evening\n\n- **Open:** 12 h a week\n\n"

/* The files of one program; an empty one is left out. */
struct texts {
	const char *work, *program, *skills, *shop, *cohorts;
};

static struct bench judge(struct texts x)
{
	struct file_text v[5];
	size_t n = 0;
	struct bench t;

	v[n++] = (struct file_text){ "assignments/a.md", x.work };
	if (x.cohorts)
		v[n++] = (struct file_text){ "cohorts.md", x.cohorts };
	v[n++] = (struct file_text){ "program.md", x.program };
	if (x.shop)
		v[n++] = (struct file_text){ "shop.md", x.shop };
	v[n++] = (struct file_text){ "skills.md", x.skills ? x.skills : SKILLS };
	t = bench_bind(v, n);
	check_program(t.arena, t.m, t.f);
	return t;
}

static void expect(struct texts x, enum finding_name name, size_t want)
{
	struct bench t = judge(x);
	size_t n = 0;

	for (size_t i = 0; i < t.f->n; i++)
		n += t.f->v[i].name == name;
	if (n != want) {
		print_message("wanted %zu of %s\n", want, finding_info(name)->name);
		print_findings(&t);
	}
	assert_int_equal(n, want);
	bench_free(&t);
}

/* One assignment of so many hours in a course of 40 lab hours. */
static void hours_of_a_course(void **state)
{
	static const struct { const char *hours, *line; size_t over, under; } rows[] = {
		{ "40", "", 0, 0 }, { "40.1", "", 1, 0 }, { "34", "", 0, 0 },
		{ "33.9", "", 0, 1 }, { "90", ", optional", 0, 1 }, { "0", "", 0, 0 },
	};
	char work[200], program[400];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, program, NULL, NULL, NULL };

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n"
		    "- **Hours:** %s\n", rows[i].hours);
		snprintf(program, sizeof program, PROGRAM_HEAD "\n## Quarter 1\n\n"
		    "### ORW 101: One\n\n- **Lab hours:** 40\n\n1. AA-01, week 1%s\n",
		    rows[i].line);
		expect(x, FINDING_HOURS_OVER, rows[i].over);
		expect(x, FINDING_HOURS_UNDER, rows[i].under);
	}
}

/* The missing file or fact is told; that the course looks empty without it is not. */
static void hours_that_are_not_known(void **state)
{
	static const struct { const char *hours, *line; size_t under; } rows[] = {
		{ "- **Hours:** 10\n", "", 1 }, { "- **Hours:** 10\n", "2. AA-02\n", 0 },
		{ "", "", 0 }, { "- **Hours:** -18\n", "", 0 },
	};
	char work[200], program[300];
	struct texts x = { .work = work, .program = program };

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n%s",
		    rows[i].hours);
		snprintf(program, sizeof program, PROGRAM_HEAD "\n## Quarter 1\n\n"
		    "### ORW 101: One\n\n- **Lab hours:** 40\n\n1. AA-01, week 1\n%s",
		    rows[i].line);
		expect(x, FINDING_HOURS_UNDER, rows[i].under);
	}
}

#define ONE "# AA-01: One\n\n- **Kind:** written\n- **Hours:** 40\n"

static void a_course_without_lab_hours_is_not_judged(void **state)
{
	struct texts x = { ONE, PROGRAM_HEAD "\n## Quarter 1\n\n### ORW 101: One\n\n"
	    "1. AA-01, week 1\n", NULL, NULL, NULL };

	(void)state;
	expect(x, FINDING_HOURS_OVER, 0);
	expect(x, FINDING_HOURS_UNDER, 0);
}

/* Where most courses are off, and three at least, the rule is: one finding. */
static void credits_of_many_courses(void **state)
{
	static const struct { const char *third; size_t off; } rows[] = {
		{ "3", 1 }, { "2", 2 },
	};
	char program[600];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { ONE, program, NULL, NULL, NULL };

		snprintf(program, sizeof program, PROGRAM_HEAD "- **Credit rule:** 1 credit = 20 "
		    "lab hours\n\n## Quarter 1\n\n### ORW 101: One\n\n- **Credits:** 3\n"
		    "- **Lab hours:** 40\n\n1. AA-01, week 1\n\n### ORW 102: Two\n\n"
		    "- **Credits:** 3\n- **Lab hours:** 40\n\n### ORW 103: Three\n\n"
		    "- **Credits:** %s\n- **Lab hours:** 40\n", rows[i].third);
		expect(x, FINDING_CREDITS_OFF, rows[i].off);
	}
}

static void credits_of_a_course(void **state)
{
	static const struct { const char *rule, *facts; size_t off; } rows[] = {
		{ "1 credit = 10 lecture hours or 20 lab hours", "- **Credits:** 3\n"
		    "- **Lecture hours:** 10\n- **Lab hours:** 40\n", 0 },
		{ "1 credit = 10 lecture hours or 20 lab hours", "- **Credits:** 2\n"
		    "- **Lecture hours:** 10\n- **Lab hours:** 40\n", 1 },
		{ "1 credit = 10 lecture hours or 20 lab hours", "- **Credits:** 2.04\n"
		    "- **Lab hours:** 40\n", 0 },
		{ "1 credit = 10 lecture hours or 20 lab hours", "- **Credits:** 2.06\n"
		    "- **Lab hours:** 40\n", 1 },
		{ "1 credit = 20 lab hours", "- **Credits:** 9\n"
		    "- **Lecture hours:** 10\n- **Lab hours:** 40\n", 0 },
		{ "1 credit = 20 lab hours", "- **Credits:** 9\n"
		    "- **Lab hours:** 40\n", 1 },
		{ "1 credit = 20 lab hours", "- **Lab hours:** 40\n", 0 },
		{ "as the dean says", "- **Credits:** 9\n- **Lab hours:** 40\n", 0 },
	};
	char program[400];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { ONE, program, NULL, NULL, NULL };

		snprintf(program, sizeof program, PROGRAM_HEAD "- **Credit rule:** %s\n"
		    "\n## Quarter 1\n\n### ORW 101: One\n\n%s\n1. AA-01, week 1\n",
		    rows[i].rule, rows[i].facts);
		expect(x, FINDING_CREDITS_OFF, rows[i].off);
		expect(x, FINDING_NOT_UNDERSTOOD, i == 7);
	}
}

static void credit_rules_that_are_read(void **state)
{
	static const struct { const char *text; bool read; double lecture_h, lab_h; }
	rows[] = {
		{ "1 credit = 11 lecture hours or 22 lab hours", true, 11, 22 },
		{ "1 credit = 33 lab hours", true, 0, 33 },
		{ "2 credits = 22 h lab, 11 lecture", true, 5.5, 11 },
		{ "2 Credits = 45 lab hours and 15 Lecture h", true, 7.5, 22.5 },
		{ "1 credit = 11.5 lecture", true, 11.5, 0 },
		{ "1 credit = 11 lecture or 12 lecture", false, 0, 0 },
		{ "1 credit = 11", false, 0, 0 }, { "1 credit = lab hours", false, 0, 0 },
		{ "1 credit", false, 0, 0 }, { "= 11 lab", false, 0, 0 },
		{ "0 credits = 11 lab hours", false, 0, 0 },
		{ "1 credit = 11 studio hours", false, 0, 0 }, { "", false, 0, 0 },
		{ "1 credit = 0 lab hours", false, 0, 0 },
		{ "1 credit = 99999999999999999999999999 lab", false, 0, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct credit_rule r;

		if (credit_rule_parse(str_of(rows[i].text), &r) != rows[i].read)
			fail_msg("%s", rows[i].text);
		assert_true(r.lecture_h > rows[i].lecture_h - 1e-9 &&
		    r.lecture_h < rows[i].lecture_h + 1e-9);
		assert_true(r.lab_h > rows[i].lab_h - 1e-9 &&
		    r.lab_h < rows[i].lab_h + 1e-9);
	}
}

#define PLAIN_PROGRAM PROGRAM_HEAD "\n## Quarter 1\n\n### ORW 101: One\n\n" \
	"1. AA-01, week 1\n"
#define COHORT "# Cohorts\n\n## Day\n\n- **Entered:** fall-2026, quarter 1\n" \
	"- **Finished:** none\n- **Section:** day\n- **Students:** "

/* Students at 4 places that are open 160 h each: 640 h. */
static void station_against_its_hours(void **state)
{
	static const struct { const char *hours, *students; size_t over, tight; }
	rows[] = {
		{ "64", "10", 0, 1 }, { "64.1", "10", 1, 0 }, { "57.6", "10", 0, 0 },
		{ "57.7", "10", 0, 1 }, { "160", "4", 0, 1 }, { "160", "5", 1, 0 },
	};
	char work[200], cohorts[300];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PLAIN_PROGRAM, NULL, DAY "## Station booth\n\n"
		    "- **Places:** 4\n", cohorts };

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n"
		    "- **Station:** booth\n- **Hours:** %s\n", rows[i].hours);
		snprintf(cohorts, sizeof cohorts, COHORT "%s\n", rows[i].students);
		expect(x, FINDING_STATION_OVER, rows[i].over);
		expect(x, FINDING_STATION_TIGHT, rows[i].tight);
		x.cohorts = NULL;
		expect(x, FINDING_STATION_OVER, 0);
		expect(x, FINDING_STATION_TIGHT, 0);
	}
}

/* What the finding of the whole quarter says: the hours short, and the least repair. */
static void the_smallest_fix(void **state)
{
	struct texts x = { "# AA-01: One\n\n- **Kind:** written\n- **Hours:** 64.1\n"
	    "- **Station:** booth\n", PLAIN_PROGRAM, NULL, DAY
	    "## Station booth\n\n- **Places:** 4\n", COHORT "12\n" };
	struct bench t = judge(x);

	(void)state;
	for (size_t i = 0; i < t.f->n; i++)
		if (t.f->v[i].name == FINDING_STATION_OVER) {
			/* 12 x 64.1 = 769.2; 640 is 129.2 less; 9 students ask 576.9; a
			 * place gives 160. */
			assert_true(str_has(t.f->v[i].cause, "129.2 h short"));
			assert_true(str_has(t.f->v[i].repair, "add 1 place, or take 9 "
			    "students instead of 12"));
			bench_free(&t);
			return;
		}
	fail();
}

static const struct finding *only(const struct bench *t, enum finding_name name)
{
	const struct finding *hit = NULL;

	for (size_t i = 0; i < t->f->n; i++) {
		if (t->f->v[i].name != name)
			continue;
		assert_null(hit);
		hit = &t->f->v[i];
	}
	assert_non_null(hit);
	return hit;
}

/* Ten students at 4 places that are open 160 h each: 641 h in fall want a place more or
 * 9 students, the hours of winter what is said here. The worst of both is proposed. */
static void one_station_in_several_terms(void **state)
{
	static const struct { const char *hours, *repair; size_t related; } rows[] = {
		{ "60", "add 1 place, or take 9 students instead of 10", 0 },
		{ "64", "add 1 place, or take 9 students instead of 10", 0 },
		{ "80", "add 1 place, or take 8 students instead of 10", 1 },
		{ "90", "add 2 places, or take 7 students instead of 10", 1 },
	};
	char work[300];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PLAIN_PROGRAM "\n## Quarter 2\n\n"
		    "### ORW 102: Two\n\n1. AA-02, week 1\n", NULL, DAY
		    "## Station booth\n\n- **Places:** 4\n", COHORT "10\n" };
		struct bench t;
		const struct finding *d;

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n"
		    "- **Station:** booth\n- **Hours:** 64.1\n\n# AA-02: Two\n\n"
		    "- **Kind:** written\n- **Station:** booth\n- **Hours:** %s\n",
		    rows[i].hours);
		t = judge(x);
		d = only(&t, FINDING_STATION_OVER);
		assert_true(str_has(d->message, "Fall 2026"));
		assert_true(str_has(d->repair, rows[i].repair));
		assert_int_equal(d->nrelated, rows[i].related);
		assert_true(!d->nrelated || str_has(d->related[0].label, "Winter 2027"));
		bench_free(&t);
	}
}

#define AT(id, station) "# " id ": Work\n\n- **Kind:** written\n- **Hours:** 20\n" \
	"- **Station:** " station "\n\n"
#define PLACE(station) "## Station " station "\n\n- **Places:** 1\n\n"

/* One place is open 160 h: 8 students of 20 h fill it. */
static void a_cohort_too_large_is_one_finding(void **state)
{
	static const struct { const char *third, *students; size_t over, related; } rows[] = {
		{ "c", "9", 1, 3 }, { "c", "8", 0, 0 }, { "b", "9", 2, 0 },
	};
	char work[600], cohorts[300];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PROGRAM_HEAD "\n## Quarter 1\n\n### ORW 101: One\n\n"
		    "1. AA-01, week 1\n2. AA-02, week 2\n3. AA-03, week 3\n", NULL,
		    DAY PLACE("a") PLACE("b") PLACE("c"), cohorts };
		struct bench t;

		snprintf(work, sizeof work, AT("AA-01", "a") AT("AA-02", "b")
		    AT("AA-03", "%s"), rows[i].third);
		snprintf(cohorts, sizeof cohorts, COHORT "%s\n", rows[i].students);
		expect(x, FINDING_STATION_OVER, rows[i].over);
		t = judge(x);
		if (rows[i].related) {
			const struct finding *d = only(&t, FINDING_STATION_OVER);

			assert_int_equal(d->nrelated, rows[i].related);
			assert_int_equal(d->pos.file, 1);
			assert_true(str_has(d->repair, "take 8 students"));
			assert_true(str_has(d->related[2].label, "1 place more would do"));
			expect(x, FINDING_STATION_TIGHT, 0);
			expect(x, FINDING_STATION_PEAK, 0);
		}
		bench_free(&t);
	}
}

/* One student of the day section has 160 h in the quarter. */
static void quarter_of_one_student(void **state)
{
	static const struct { const char *hours, *section; size_t want; } rows[] = {
		{ "160", NULL, 0 }, { "160.1", NULL, 1 }, { "160", "day", 0 },
		{ "160.1", "day", 1 }, { "120", "evening", 0 }, { "120.1", "evening", 1 },
	};
	char work[200], cohorts[300];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PLAIN_PROGRAM, NULL, DAY,
			rows[i].section ? cohorts : NULL };

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n"
		    "- **Hours:** %s\n", rows[i].hours);
		snprintf(cohorts, sizeof cohorts, "# Cohorts\n\n## Day\n\n"
		    "- **Entered:** fall-2026, quarter 1\n- **Finished:** none\n"
		    "- **Section:** %s\n- **Students:** 1\n",
		    rows[i].section ? rows[i].section : "day");
		expect(x, FINDING_QUARTER_OVER, rows[i].want);
	}
}

/* Three quarters of so many hours, each in a course of so many lab hours, and a day
 * section of 160 h: how many findings, and what repair is proposed. */
static void quarters_told_together(void **state)
{
	static const struct {
		const char *hours[3], *lab, *waiver;
		size_t over, courses;
		const char *repair;
	} rows[] = {
		{ { "165", "100", "155" }, "200", "", 1, 0, "move 5 h of work to quarters 2 and 3" },
		{ { "165", "160", "155" }, "200", "", 1, 0, "move 5 h of work to quarter 3, or" },
		/* 5 h free, 6 h too many. */
		{ { "166", "160", "155" }, "200", "", 1, 0, "no other quarter has room for 6 h" },
		{ { "165", "170", "165" }, "200", "", 1, 0, "open section day 17 h a week" },
		/* One that is waived by name is told for itself. */
		{ { "165", "170", "165" }, "200", "quarter 2", 2, 0, "" },
		/* The course is too full by as much as the quarter: one cause. */
		{ { "165", "100", "100" }, "160", "", 0, 1, "" },
		{ { "165", "100", "100" }, "161", "", 1, 1, "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char work[400], program[500], customs[200];
		struct file_text v[] = { { "assignments/a.md", work }, { "customs.md", customs },
			{ "program.md", program }, { "shop.md", DAY }, { "skills.md", SKILLS } };
		size_t over = 0, courses = 0;
		struct bench t;

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n- **Hours:** %s"
		    "\n\n# AA-02: Two\n\n- **Kind:** written\n- **Hours:** %s\n\n# AA-03: Three"
		    "\n\n- **Kind:** written\n- **Hours:** %s\n", rows[i].hours[0],
		    rows[i].hours[1], rows[i].hours[2]);
		snprintf(program, sizeof program, PROGRAM_HEAD "\n## Quarter 1\n\n### AB 1: A\n\n"
		    "- **Lab hours:** %s\n\n1. AA-01\n\n## Quarter 2\n\n### AB 2: B\n\n"
		    "- **Lab hours:** %s\n\n1. AA-02\n\n## Quarter 3\n\n### AB 3: C\n\n"
		    "- **Lab hours:** %s\n\n1. AA-03\n", rows[i].lab, rows[i].lab, rows[i].lab);
		snprintf(customs, sizeof customs, rows[i].waiver[0] ? "# Customs\n\n## Waivers\n\n"
		    "- **quarter-over, %s:** long; chair; until fall-2027\n" : "# Customs\n%s",
		    rows[i].waiver);
		t = bench_bind(v, 5);
		check_program(t.arena, t.m, t.f);
		for (size_t k = 0; k < t.f->n; k++) {
			const struct finding *d = &t.f->v[k];

			courses += d->name == FINDING_HOURS_OVER;
			over += d->name == FINDING_QUARTER_OVER;
			if (d->name == FINDING_QUARTER_OVER)
				assert_true(str_has(d->repair, rows[i].repair));
			if (d->name == FINDING_HOURS_OVER && !rows[i].over)
				assert_int_equal(d->nrelated, 1);
		}
		if (over != rows[i].over || courses != rows[i].courses)
			print_findings(&t);
		assert_int_equal(over, rows[i].over);
		assert_int_equal(courses, rows[i].courses);
		bench_free(&t);
	}
}

/* Ten students at one place that is open 16 h a week: 1.6 h each fill the first week,
 * 3.2 h each leave 16 h waiting, which is one week and no more. */
static void queue_of_a_week(void **state)
{
	static const struct { const char *hours; size_t want; } rows[] = { { "1.6", 0 },
		{ "3.2", 0 }, { "3.3", 1 } };
	char work[300];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PROGRAM_HEAD "\n## Quarter 1\n\n"
		    "### ORW 101: One\n\n1. AA-01, week 1\n2. AA-02, week 2\n", NULL, DAY
		    "## Station bench\n\n- **Places:** 1\n\n## Station booth\n\n"
		    "- **Places:** 90\n", COHORT "10\n" };

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n"
		    "- **Station:** bench\n- **Hours:** %s\n\n# AA-02: Two\n\n"
		    "- **Kind:** written\n- **Station:** booth\n- **Hours:** 9\n",
		    rows[i].hours);
		expect(x, FINDING_STATION_PEAK, rows[i].want);
		expect(x, FINDING_STATION_OVER, 0);
	}
}

/* Idle weeks before a rush do not shorten its queue. */
static void a_rush_after_idle_weeks(void **state)
{
	struct texts x = { "# AA-01: One\n\n- **Kind:** written\n- **Station:** bench\n"
	    "- **Hours:** 3.3\n\n# AA-02: Two\n\n- **Kind:** written\n"
	    "- **Hours:** 9\n", PROGRAM_HEAD "\n## Quarter 1\n\n"
	    "### ORW 101: One\n\n1. AA-01, week 5\n2. AA-02, week 6\n", NULL, DAY
	    "## Station bench\n\n- **Places:** 1\n", COHORT "10\n" };

	(void)state;
	expect(x, FINDING_STATION_PEAK, 1);
}

/* A move that cures the queue is offered only when no need is broken by it. */
static void expect_peak_repair(const char *need, const char *want)
{
	char work[600];
	struct texts x = { work, PROGRAM_HEAD "\n## Quarter 1\n\n### ORW 101: One\n\n"
	    "1. AA-01, week 1\n2. AA-02, week 2\n", NULL, DAY
	    "## Station bench\n\n- **Places:** 1\n", COHORT "10\n" };
	struct bench t;
	size_t n = 0;

	snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** written\n"
	    "- **Station:** bench\n- **Hours:** 3.3\n\n## Teaches\n\n"
	    "- fit.tack practiced\n\n# AA-02: Two\n\n- **Kind:** written\n"
	    "- **Hours:** 9\n\n%s", need);
	t = judge(x);
	for (size_t i = 0; i < t.f->n; i++)
		if (t.f->v[i].name == FINDING_STATION_PEAK) {
			n++;
			expect_str(t.f->v[i].repair, want);
		}
	assert_int_equal(n, 1);
	bench_free(&t);
}

static void moves_against_a_queue(void **state)
{
	(void)state;
	expect_peak_repair("", "move AA-01 to week 2");
	expect_peak_repair("## Needs\n\n- fit.tack practiced\n",
	    "let groups start in different weeks, or expect a queue");
}

static void station_of_another_section(void **state)
{
	struct texts x = { "# AA-01: One\n\n- **Kind:** written\n- **Hours:** 4\n"
	    "- **Station:** booth\n", PLAIN_PROGRAM, NULL, DAY
	    "## Station booth\n\n- **Places:** 4\n- **Sections:** evening\n",
	    COHORT "3\n" };

	(void)state;
	expect(x, FINDING_STATION_CLOSED, 1);
	/* One door is one finding, in two terms. */
	x.work = "# AA-01: One\n\n- **Kind:** written\n- **Hours:** 4\n- **Station:** booth\n\n"
	    "# AA-02: Two\n\n- **Kind:** written\n- **Hours:** 4\n- **Station:** booth\n";
	x.program = PLAIN_PROGRAM "\n## Quarter 2\n\n### ORW 102: Two\n\n1. AA-02, week 1\n";
	expect(x, FINDING_STATION_CLOSED, 1);
	x.shop = DAY "## Station booth\n\n- **Places:** 4\n"
	    "- **Sections:** evening, day\n";
	expect(x, FINDING_STATION_CLOSED, 0);
	x.shop = DAY "## Station booth\n\n- **Places:** 4\n";
	expect(x, FINDING_STATION_CLOSED, 0);
}

/* What lies more than a year ahead is not judged: quarter 4 comes a year later. */
static void next_year_is_a_guess(void **state)
{
	struct texts x = { "# AA-01: One\n\n- **Kind:** written\n- **Hours:** 90\n"
	    "- **Station:** booth\n", PROGRAM_HEAD "\n## Quarter 3\n\n"
	    "### ORW 101: One\n\n1. AA-01, week 1\n\n## Quarter 4\n", NULL, DAY
	    "## Station booth\n\n- **Places:** 1\n", COHORT "3\n" };

	(void)state;
	expect(x, FINDING_STATION_OVER, 1);
	x.program = PROGRAM_HEAD "\n## Quarter 1\n\n## Quarter 2\n\n## Quarter 3\n\n"
	    "## Quarter 4\n\n### ORW 101: One\n\n1. AA-01, week 1\n";
	expect(x, FINDING_STATION_OVER, 0);
}

#define SHEET "# AA-01: One\n\n- **Kind:** written\n- **Hours:** 4\n\n"

/* Ten students with three specimens each. */
static void bender_in_one_week(void **state)
{
	static const struct { const char *limit; size_t want; } rows[] = {
		{ "- **Specimens a week:** 30\n", 0 },
		{ "- **Specimens a week:** 29\n", 1 },
		{ "- **Force:** 20 ton\n", 0 }, { "- **Specimens a week:** few\n", 0 } };
	char shop[500];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { SHEET "## Acceptance\n\n"
		    "- **Face bend:** 2 of A, 1 of B, D1.1-2020\n",
		    PLAIN_PROGRAM, NULL, shop, COHORT "10\n" };

		snprintf(shop, sizeof shop, DAY "## Machine bender\n\n%s", rows[i].limit);
		expect(x, FINDING_BENDER_OVER, rows[i].want);
	}
}

#define TWINS(criterion, grade) "## Acceptance\n\n- **" criterion ":** 1 in\n\n" \
	"## Grading\n\n- **" grade ":** 100\n"

static void tests_and_grades(void **state)
{
	static const struct { const char *lines; size_t ungraded, unjudged; } rows[] = {
		{ "## Acceptance\n\n- **Visual:** flat\n- **Face bend:** 1\n\n"
		    "## Grading\n\n- **Visual:** 60\n- **Face bend:** 40\n", 0, 0 },
		{ "## Acceptance\n\n- **Visual:** flat\n- **Face bend:** 1\n\n"
		    "## Grading\n\n- **Visual:** 100\n", 1, 0 },
		{ "## Acceptance\n\n- **Visual:** flat\n- **Face bend:** 1\n\n"
		    "## Grading\n\n- **Visual:** 60\n- **Bends:** 40\n", 0, 0 },
		{ "## Acceptance\n\n- **Visual:** flat\n- **Macroetch:** 1\n\n"
		    "## Grading\n\n- **Destructive tests:** 40\n- **Visual:** 60\n", 0,
		    0 },
		{ "## Acceptance\n\n- **Fillet-break:** 1\n\n"
		    "## Grading\n\n- **Fillet break:** 100\n", 0, 0 },
		{ "## Acceptance\n\n- **Visual of A:** flat\n\n"
		    "## Grading\n\n- **Visual:** 80\n- **Macro:** 20\n", 0, 1 },
		{ "## Acceptance\n\n- **Visual:** flat\n", 0, 0 },
		{ "## Grading\n\n- **Plan:** 100\n", 0, 0 },
		{ "## Acceptance\n\n- **Bend angle:** 90 deg\n\n## Grading\n\n"
		    "- **Plan:** 100\n", 0, 0 },
		/* One letter of a word between two names, which no other line has. */
		{ TWINS("Spread", "Sperad"), 1, 0 }, { TWINS("Spread", "Sprea of it"), 0, 0 },
		{ TWINS("Hole pattern", "Hole patern"), 1, 0 },
		{ TWINS("Hole pattern", "Holl patternn"), 0, 0 },
		/* Another name: a figure, a letter of its own, an ending. */
		{ TWINS("Leg size 1", "Leg size 2"), 0, 0 },
		{ TWINS("Leg size A", "Leg size B"), 0, 0 },
		{ TWINS("A leg size", "B leg size"), 0, 0 },
		{ TWINS("Leg size", "Leg sizes"), 0, 0 }, { TWINS("Gap", "Cap"), 0, 0 },
		{ "## Acceptance\n\n- **Spread:** 1 in\n- **Sperad:** 1 in\n\n## Grading\n\n"
		    "- **Spread:** 100\n", 0, 0 },
	};
	char work[600];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PLAIN_PROGRAM, NULL, NULL, NULL };

		snprintf(work, sizeof work, SHEET "%s", rows[i].lines);
		expect(x, FINDING_TEST_WITHOUT_GRADE, rows[i].ungraded);
		expect(x, FINDING_GRADE_WITHOUT_TEST, rows[i].unjudged);
	}
}

static void pass_marks(void **state)
{
	static const struct { const char *lines; size_t over, none; } rows[] = {
		{ "- **Plan:** 100\n- **Pass mark:** 100\n", 0, 0 },
		{ "- **Plan:** 90\n- **Pass mark:** 91\n", 1, 0 },
		{ "- **Plan:** 90\n- **Pass mark:** 90\n", 0, 0 },
		{ "- **Plan:** 60\n- **Work:** 40, must pass\n", 0, 1 },
		{ "- **Plan:** 60, must pass\n- **Work:** 40, must pass\n", 0, 0 },
		/* Told as not understood, not as missing. */
		{ "- **Plan:** 100\n- **Pass mark:** 110\n", 0, 0 },
		{ "- **Plan:** 100\n- **Pass mark:** seventy\n", 0, 0 },
	};
	char work[400];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PLAIN_PROGRAM, NULL, NULL, NULL };

		snprintf(work, sizeof work, SHEET "## Grading\n\n%s", rows[i].lines);
		expect(x, FINDING_PASS_MARK_OVER, rows[i].over);
		expect(x, FINDING_NO_PASS_MARK, rows[i].none);
	}
}

static void empty_criteria(void **state)
{
	struct texts x = { SHEET "## Acceptance\n\n- **Fit:**\n- **Gap:** none\n",
		PLAIN_PROGRAM, NULL, NULL, NULL };

	(void)state;
	expect(x, FINDING_NO_CRITERION, 1);
}

#define WELD(id, title, kind, position, filler) "# " id ": " title "\n\n- **Kind:** " \
	kind "\n- **Hours:** 4\n- **Process:** SMAW\n- **Joint:** tee\n" \
	"- **Material:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** " \
	position "\n- **Filler:** " \
	filler ", 1/8 in\n- **Current:** DC+, 110-140 A\n\n## Acceptance\n\n" \
	"- **Visual:** D1.1-2020 welder test\n\n"
#define DRAWN "## Drawing\n\n```joint\nleg: 5/16 in\n```\n\n"
#define TWO_LINES PROGRAM_HEAD "\n## Quarter 1\n\n### ORW 101: One\n\n" \
	"1. AA-01, week 1\n2. AA-02, week 2\n"

static void coupons_that_test_the_same(void **state)
{
	static const struct { const char *second; size_t twice; } rows[] = {
		{ WELD("AA-02", "Two", "coupon", "2F", "E7018"), 1 },
		{ WELD("AA-02", "Two", "coupon", "1F", "E7018"), 0 },
		{ WELD("AA-02", "Two", "coupon", "2F", "E6010"), 0 },
		{ WELD("AA-02", "Two", "practice test", "2F", "E7018"), 0 },
		{ WELD("AA-02", "Two", "coupon", "2F", "E7018")
		    "- **Fillet break:** 1, D1.1-2020\n", 0 },
		{ WELD("AA-02", "Two", "coupon", "2F", "E7018") "## Drawing\n\n```joint\n"
		    "preparation: bevel\ngap: 1/8 in\nangle: 45 deg\n```\n", 0 },
	};
	char work[2000];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, TWO_LINES, NULL, NULL, NULL };

		snprintf(work, sizeof work, "%s%s",
		    WELD("AA-01", "One", "coupon", "2F", "E7018"), rows[i].second);
		expect(x, FINDING_TESTS_TWICE, rows[i].twice);
		x.program = PROGRAM_HEAD "\n## Quarter 1\n\n### ORW 101: One\n\n"
		    "1. one of AA-01, AA-02, week 1\n";
		expect(x, FINDING_TESTS_TWICE, 0);
	}
}

static void titles(void **state)
{
	struct texts x = { WELD("AA-01", "Tee, 2F", "drill", "2F", "E7018")
	    WELD("AA-02", "Tee 2f", "drill", "2F", "E7018"), TWO_LINES, NULL, NULL,
		NULL };

	(void)state;
	expect(x, FINDING_SAME_TITLE, 1);
	expect(x, FINDING_TESTS_TWICE, 0);
	x.work = WELD("AA-01", "Tee, 2F", "drill", "2F", "E7018")
	    WELD("AA-02", "Tee 3F", "drill", "2F", "E7018");
	expect(x, FINDING_SAME_TITLE, 0);
}

static void drawings(void **state)
{
	struct texts x = { WELD("AA-01", "One", "coupon", "2F", "E7018"), PLAIN_PROGRAM,
		NULL, NULL, NULL };

	(void)state;
	expect(x, FINDING_DRAWING_MISSING, 1);
	x.work = WELD("AA-01", "One", "coupon", "2F", "E7018") DRAWN;
	expect(x, FINDING_DRAWING_MISSING, 0);
	x.work = SHEET;
	expect(x, FINDING_DRAWING_MISSING, 0);
}

static void team_grades(void **state)
{
	static const struct { const char *team, *line; size_t want; } rows[] = {
		{ "2 students", "smaw.2f assessed by Visual", 1 },
		{ "2 students", "fit.tack assessed by Visual", 1 },
		{ "2 students", "smaw.2f assessed by Gap", 1 },
		{ "2 students", "fit.tack assessed by Gap", 0 },
		{ "2 students", "smaw.2f practiced", 0 },
		{ "2 students; each stamps own welds", "smaw.2f assessed by Visual", 0 },
		{ "2 students", "smaw.2f assessed by Stamped welds", 0 },
		{ "2 students", "smaw.2f assessed by Weld", 0 },
		{ "1 student", "smaw.2f assessed by Visual", 0 },
	};
	char work[1000];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, PLAIN_PROGRAM, NULL, NULL, NULL };

		snprintf(work, sizeof work, "# AA-01: One\n\n- **Kind:** project\n"
		    "- **Hours:** 4\n- **Process:** SMAW\n- **Team:** %s\n\n"
		    "## Acceptance\n\n- **Visual:** flat\n- **Gap:** 0\n"
		    "- **Stamped welds:** sound\n- **Weld:** sound, of every student\n\n"
		    "## Teaches\n\n- %s\n", rows[i].team, rows[i].line);
		expect(x, FINDING_TEAM_ASSESSES, rows[i].want);
	}
}

#define TWO_OUTCOMES "# Skills\n\n## PO1: One\n\n- **smaw.2f:** Two\n\n" \
	"## PO2: Two\n\n- **fit.tack:** Tack\n"

static void claims(void **state)
{
	static const struct { const char *credential; size_t bad, late; } rows[] = {
		{ "Certificate, quarters 1-2, outcomes PO1, PO2", 0, 0 },
		{ "Certificate, quarters 1 to 2, all", 0, 0 },
		{ "Certificate, quarter 1, outcomes PO1", 0, 0 },
		{ "Certificate, quarters 1-1, outcomes PO1, PO2", 0, 1 },
		{ "Certificate, quarter 1, all", 0, 1 },
		{ "Certificate, quarters 1-3, outcomes PO1", 1, 0 },
		{ "Certificate, quarters 2-1, outcomes PO1", 1, 0 },
		{ "Certificate, quarters, outcomes PO1", 1, 0 },
		{ "Certificate, outcomes PO1, PO7, quarters 1-2", 1, 0 },
		{ "Certificate", 0, 0 },
	};
	static const char work[] = SHEET "## Teaches\n\n- smaw.2f assessed by Gap\n\n"
	    "## Acceptance\n\n- **Gap:** 0\n\n# AA-02: Two\n\n- **Kind:** written\n"
	    "- **Hours:** 4\n\n## Teaches\n\n- fit.tack assessed by Gap\n\n"
	    "## Acceptance\n\n- **Gap:** 0\n";
	char program[500];

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct texts x = { work, program, TWO_OUTCOMES, NULL, NULL };

		snprintf(program, sizeof program, PROGRAM_HEAD "- **Credential:** %s\n"
		    "\n## Quarter 1\n\n### ORW 101: One\n\n1. AA-01, week 1\n\n"
		    "## Quarter 2\n\n### ORW 102: Two\n\n1. AA-02, week 1\n",
		    rows[i].credential);
		expect(x, FINDING_BAD_CREDENTIAL, rows[i].bad);
		expect(x, FINDING_CREDENTIAL_UNASSESSED, rows[i].late);
		expect(x, FINDING_OUTCOME_UNASSESSED, 0);
	}
}

static void outcomes(void **state)
{
	struct texts x = { SHEET "## Teaches\n\n- smaw.2f practiced\n", PLAIN_PROGRAM,
		NULL, NULL, NULL };

	(void)state;
	expect(x, FINDING_OUTCOME_UNASSESSED, 1);
	/* Its skills are told with it, not each for itself. */
	expect(x, FINDING_NEVER_TAUGHT, 0);
	expect(x, FINDING_NEVER_ASSESSED, 0);
	x.skills = SKILLS "\n## Entry skills\n\n- **fit.tack assessed:** all do\n";
	expect(x, FINDING_OUTCOME_UNASSESSED, 0);
}

/* Skills of which findings of unmet needs speak, in their own words or in the list of those
 * affected; each just once. */
static size_t skills_told(struct texts x)
{
	struct bench t = judge(x);
	struct map *seen = map_new(t.arena, false);
	uint32_t n = 0;

	for (size_t i = 0; i < t.f->n; i++) {
		const struct finding *d = &t.f->v[i];

		if (d->name != FINDING_UNTAUGHT_SKILL)
			continue;
		assert_int_equal(map_add(seen, d->skill, n), n);
		n++;
		for (size_t k = 0; k < d->nrelated; k++, n++) {
			expect_str(d->related[k].assignment, "AA-02");
			assert_int_equal(map_add(seen, d->related[k].skill, n), n);
		}
	}
	bench_free(&t);
	return n;
}

/* Quarter 1 teaches eleven skills, quarter 2 needs as many of them as `needs` lists. */
static void expect_path(const char *needs, const char *with, size_t wide, size_t alone,
    size_t told)
{
	char work[2000], program[400];
	struct texts x = { work, program, "# Skills\n\n## PO1: One\n\n- **a.1:** A\n"
	    "- **a.2:** A\n- **a.3:** A\n- **a.4:** A\n- **a.5:** A\n- **a.6:** A\n"
	    "- **a.7:** A\n- **a.8:** A\n- **a.9:** A\n- **a.10:** A\n- **a.11:** A\n",
	    NULL, NULL };

	snprintf(work, sizeof work, SHEET "## Teaches\n\n- a.1 practiced\n"
	    "- a.2 practiced\n- a.3 practiced\n- a.4 practiced\n- a.5 practiced\n"
	    "- a.6 practiced\n"
	    "- a.7 practiced\n- a.8 practiced\n- a.9 practiced\n- a.10 practiced\n"
	    "- a.11 practiced\n\n# AA-02: Two\n\n- **Kind:** written\n- **Hours:** 4\n\n"
	    "## Needs\n\n%s", needs);
	snprintf(program, sizeof program, PROGRAM_HEAD
	    "- **Entry:** quarter 1 in Fall; quarter 2, then 1%s\n\n## Quarter 1\n\n"
	    "### ORW 101: One\n\n1. AA-01, week 1\n\n## Quarter 2\n\n"
	    "### ORW 102: Two\n\n1. AA-02, week 1\n", with);
	expect(x, FINDING_PATH_NEEDS_ENTRY, wide);
	expect(x, FINDING_UNTAUGHT_SKILL, alone);
	assert_int_equal(skills_told(x), told);
}

#define TEN_NEEDS "- a.1 practiced\n- a.2 practiced\n- a.3 practiced\n- a.4 practiced\n" \
	"- a.5 practiced\n- a.6 practiced\n- a.7 practiced\n- a.8 practiced\n" \
	"- a.9 practiced\n- a.10 introduced\n"

static void paths_that_fail_widely(void **state)
{
	(void)state;
	/* One line that comes before what it needs is one finding. */
	expect_path(TEN_NEEDS, "", 0, 1, 10);
	expect_path(TEN_NEEDS "- a.11 practiced\n", "", 1, 0, 0);
	expect_path(TEN_NEEDS "- a.11 practiced\n", ", with a.1 practiced", 0, 1, 10);
	/* What the program itself does not meet is told on its own. */
	expect_path(TEN_NEEDS "- a.11 assessed\n", "", 0, 2, 11);
}

/* Of a choice the alternative is listed that asks least; what is brought anyway is not
 * listed again. */
static void expect_least(const char *choice, const char *want)
{
	char work[1000];
	struct texts x = { work, PROGRAM_HEAD
	    "- **Entry:** quarter 1 in Fall; quarter 2, then 1\n\n## Quarter 1\n\n"
	    "### ORW 101: One\n\n1. AA-01, week 1\n\n## Quarter 2\n\n"
	    "### ORW 102: Two\n\n1. AA-02, week 1\n", NULL, NULL, NULL };
	struct bench t;
	size_t n = 0;

	snprintf(work, sizeof work, SHEET "## Teaches\n\n- smaw.2f assessed\n"
	    "- fit.tack practiced\n\n# AA-02: Two\n\n- **Kind:** written\n"
	    "- **Hours:** 4\n\n## Needs\n\n- one of: %s\n"
	    "- smaw.2f introduced\n- smaw.2f introduced\n- smaw.2f introduced\n"
	    "- smaw.2f introduced\n- smaw.2f introduced\n- smaw.2f introduced\n"
	    "- smaw.2f introduced\n- smaw.2f introduced\n- smaw.2f introduced\n"
	    "- smaw.2f introduced\n", choice);
	t = judge(x);
	for (size_t i = 0; i < t.f->n; i++)
		if (t.f->v[i].name == FINDING_PATH_NEEDS_ENTRY) {
			n++;
			expect_str(t.f->v[i].repair, want);
		}
	assert_int_equal(n, 1);
	bench_free(&t);
}

static void least_to_bring(void **state)
{
	(void)state;
	expect_least("smaw.2f assessed, fit.tack introduced", "let them bring 2 skills: "
	    "add to the path \"with smaw.2f introduced, fit.tack introduced\"");
	expect_least("fit.tack practiced, smaw.2f practiced", "let them bring 1 skill: "
	    "add to the path \"with smaw.2f practiced\"");
	/* Equally near: the one written first. */
	expect_least("fit.tack introduced, smaw.2f practiced", "let them bring 2 skills: "
	    "add to the path \"with smaw.2f introduced, fit.tack introduced\"");
	expect_least("fit.tack practiced, smaw.2f introduced", "let them bring 1 skill: "
	    "add to the path \"with smaw.2f introduced\"");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hours_of_a_course),
		cmocka_unit_test(hours_that_are_not_known),
		cmocka_unit_test(a_course_without_lab_hours_is_not_judged),
		cmocka_unit_test(credits_of_a_course),
		cmocka_unit_test(credits_of_many_courses),
		cmocka_unit_test(credit_rules_that_are_read),
		cmocka_unit_test(station_against_its_hours),
		cmocka_unit_test(the_smallest_fix),
		cmocka_unit_test(one_station_in_several_terms),
		cmocka_unit_test(a_cohort_too_large_is_one_finding),
		cmocka_unit_test(quarter_of_one_student),
		cmocka_unit_test(quarters_told_together),
		cmocka_unit_test(queue_of_a_week),
		cmocka_unit_test(a_rush_after_idle_weeks),
		cmocka_unit_test(moves_against_a_queue),
		cmocka_unit_test(station_of_another_section),
		cmocka_unit_test(next_year_is_a_guess),
		cmocka_unit_test(bender_in_one_week),
		cmocka_unit_test(tests_and_grades),
		cmocka_unit_test(pass_marks),
		cmocka_unit_test(empty_criteria),
		cmocka_unit_test(coupons_that_test_the_same),
		cmocka_unit_test(titles),
		cmocka_unit_test(drawings),
		cmocka_unit_test(team_grades),
		cmocka_unit_test(claims),
		cmocka_unit_test(outcomes),
		cmocka_unit_test(paths_that_fail_widely),
		cmocka_unit_test(least_to_bring),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
