/* Faults of program.md, skills.md and shop.md, at their exact places. */
#include "model_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define SMALL(id, title) "# " id ": " title "\n\n- **Kind:** drill\n- **Hours:** 2\n\n"

static const char work[] = SMALL("GM-06", "Tee") SMALL("GM-07", "Lap")
    SMALL("SM-01", "Pads") SMALL("SM-20", "Fillet, up (first)");

static struct bench bind(const char *program, const char *skills, const char *shop)
{
	struct file_text files[4] = { { "assignments/all.md", work } };
	size_t n = 1;

	if (program)
		files[n++] = (struct file_text){ "program.md", program };
	if (shop)
		files[n++] = (struct file_text){ "shop.md", shop };
	if (skills)
		files[n++] = (struct file_text){ "skills.md", skills };
	return bench_bind(files, n);
}

struct row {
	const char *text;
	enum finding_name name;
	uint32_t line, col;
	const char *message, *repair;
};

/* Lines 1 to 4, then a quarter on 5, a course on 7, and its lines from 9. */
#define PROGRAM "# A: B\n\n- **Weeks in a quarter:** 11\n"
#define COURSE PROGRAM "\n## Quarter 1\n\n### ORW 101: One\n\n"
/* Two lines, so that nothing is left out of the sequence. */
#define REST "1. GM-06\n1. GM-07\n"
#define ALL "1. SM-01, week 1\n1. SM-20\n" REST

static void faults_of_courses(void **state)
{
	static const struct row rows[] = {
		{ COURSE "1. SM-01\n1. SM-30\n1. SM-20\n" REST, FINDING_UNKNOWN_ASSIGNMENT, 10, 4,
		    "SM-30", "add a file" },
		{ COURSE ALL "1. SM-01\n", FINDING_LISTED_TWICE, 13, 4, "SM-01", "delete" },
		{ COURSE "1. SM-01, week 12\n1. SM-20\n" REST, FINDING_WEEK_OUTSIDE, 9, 16,
		    "week 12", "1 to 11" },
		{ COURSE "1. SM-01, week 0\n1. SM-20\n" REST, FINDING_WEEK_OUTSIDE, 9, 16, "week 0",
		    "" },
		{ COURSE "1. SM-01, week one\n1. SM-20\n" REST, FINDING_BAD_QUANTITY, 9, 16, "one",
		    "" },
		{ COURSE "1. SM-01, optionl\n1. SM-20\n" REST, FINDING_UNKNOWN_WORD, 9, 11,
		    "optionl", "\"optional\"" },
		{ COURSE "1. SM-01, weak 3\n1. SM-20\n" REST, FINDING_UNKNOWN_WORD, 9, 11, "weak 3",
		    "\"week\"" },
		{ COURSE ALL "1. SM1\n", FINDING_BAD_ID, 13, 4, "SM1", "SM-20, week 3" },
		{ COURSE "1. SM-01 (Beads)\n1. SM-20\n" REST, FINDING_STALE_TITLE, 9, 11, "Beads",
		    "(Pads)" },
		{ COURSE "1. SM-01, week 2 (Beads)\n1. SM-20\n" REST, FINDING_STALE_TITLE, 9, 19,
		    "SM-01", "(Pads)" },
		{ COURSE ALL "\nWords.\n", FINDING_NOT_UNDERSTOOD, 14, 1, "paragraph",
		    "SM-20, week 3" },
		{ PROGRAM "\n## Quarter 1\n\n### ORW 101: One\n\n" ALL
		    "\n- **Starts:** 2026-09-21\n\n## Quarter 2\n\n### ORW 102: Two\n\n- **Credits:** 1\n",
		    FINDING_NOT_UNDERSTOOD, 14, 3, "fact", "right below \"## Quarter 1\"" },
		{ COURSE "- words\n" ALL, FINDING_NOT_UNDERSTOOD, 9, 3, "bullet", "" },
		{ COURSE "- **Credit:** 3\n\n" ALL, FINDING_UNKNOWN_KEY, 9, 5, "Credit",
		    "\"Credits\"" },
		{ COURSE "- **Credits:** three\n\n" ALL, FINDING_BAD_QUANTITY, 9, 16, "three", "" },
		{ PROGRAM "\n## Quarter 1\n\n### Welding: One\n\n" ALL, FINDING_BAD_ID, 7, 5,
		    "Welding", "ORW 130" },
		{ COURSE ALL "\n### orw-101: Again\n", FINDING_DUPLICATE_ID, 14, 5, "ORW 101", "" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind(rows[i].text, NULL, NULL);
		const struct finding *d = expect_one(&t, rows[i].name, rows[i].line, rows[i].col,
		    rows[i].message, rows[i].repair);

		assert_int_equal(d->scope, SCOPE_QUARTER);
		assert_int_equal(d->quarter, 1);
		assert_int_equal(d->pos.file, 1);
		bench_free(&t);
	}
}

static void faults_of_programs(void **state)
{
	static const struct row rows[] = {
		{ "# A: B\n\n## Quarter 1\n\n### ORW 101: One\n\n" ALL, FINDING_MISSING_FACT, 1, 3,
		    "Weeks", "11" },
		{ "# A: B\n\n- **Weeks in a quarter:** 99\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_BAD_QUANTITY, 3, 27, "99", "" },
		{ PROGRAM "- **Hour:** long\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_BAD_QUANTITY, 4, 13, "long", "" },
		{ PROGRAM "- **Term:** Fall\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_UNKNOWN_KEY, 4, 5, "Term", "\"Terms\"" },
		{ PROGRAM "- **Entry:** quarter 2\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_BAD_ENTRY, 4, 22, "\"2\"", "1 to 1" },
		{ PROGRAM "- **Terms:** Fall\n- **Entry:** quarter 1 in Fal\n\n## Quarter 1\n\n"
		    "### AB 1: C\n\n" ALL, FINDING_BAD_ENTRY, 5, 27, "Fal", "\"Fall\"" },
		{ PROGRAM "- **Terms:** Fall, Wintr, Spring\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_UNKNOWN_WORD, 4, 20, "\"Wintr\"", "\"Winter\"" },
		{ PROGRAM "- **Entry:** quarter 1, then 1\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_BAD_ENTRY, 4, 30, "twice", "" },
		{ PROGRAM "- **Entry:** quarter 1, with a.b\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_MISSING_LEVEL, 4, 30, "a.b", "a.b assessed" },
		{ COURSE ALL "\n## Extra\n\nWords.\n", FINDING_UNKNOWN_SECTION, 14, 4, "Extra",
		    "## Quarter 1" },
		{ COURSE ALL "\n# Second\n\n## Quarter 2\n", FINDING_UNKNOWN_SECTION, 14, 3,
		    "Second", "" },
		{ PROGRAM "\n### ORW 99: Early\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL,
		    FINDING_NOT_UNDERSTOOD, 5, 5, "heading", "## Quarter 1" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind(rows[i].text, NULL, NULL);

		assert_int_equal(expect_one(&t, rows[i].name, rows[i].line, rows[i].col,
		    rows[i].message, rows[i].repair)->scope, SCOPE_FILE);
		bench_free(&t);
	}
}

static void faults_of_quarters(void **state)
{
	struct bench again = bind(COURSE "1. SM-01\n1. SM-20\n\n## Quarter 1\n\n"
	    "### AB 2: D\n\n" REST, NULL, NULL);
	struct bench date = bind(PROGRAM "\n## Quarter 1\n\n- **Starts:** 2026-13-01\n\n"
	    "### AB 1: C\n\n" ALL, NULL, NULL);

	(void)state;
	expect_one(&again, FINDING_DUPLICATE_SECTION, 12, 4, "quarter 1", "");
	assert_int_equal(again.m->nslots, 4);
	assert_int_equal(again.m->courses[1].quarter, 1);
	expect_one(&date, FINDING_BAD_QUANTITY, 7, 15, "2026-13-01", "2026-09-21");
	bench_free(&again);
	bench_free(&date);
}

/* Two courses of two lines, in the quarters given; one heading is wrong or gone. */
#define ONE "1. SM-01, week 1\n1. SM-20, week 2\n"
#define FACTS "- **Credits:** 3\n- **Lab hours:** 44\n\n"
#define STARTS "- **Starts:** 2027-01-04\n\n"

static void a_heading_that_is_lost_is_one_finding(void **state)
{
	static const struct { const char *text; enum finding_name name; uint32_t line, quarter; }
	rows[] = {
		{ COURSE ONE "\n" FACTS REST, FINDING_NO_HEADING, 12, 1 },
		{ COURSE FACTS ONE "\n- **Lab hours:** 22\n\n" REST, FINDING_NO_HEADING, 15, 1 },
		{ COURSE ONE "\n## Quarter 2\n\n" STARTS FACTS REST, FINDING_NO_HEADING, 16, 2 },
		{ COURSE ONE "\n## Quarter 2\n\n" REST, FINDING_NO_HEADING, 14, 2 },
		{ COURSE ONE "\n" STARTS "### AB 2: D\n\n" REST, FINDING_NO_HEADING, 12, 2 },
		{ COURSE ONE "\n## AB 2: D\n\n" FACTS REST, FINDING_NOT_UNDERSTOOD, 12, 1 },
		{ COURSE ONE "\n#### AB 2: D\n\n" FACTS REST, FINDING_NOT_UNDERSTOOD, 12, 1 },
		{ COURSE ONE "\n# AB 2: D\n\n" FACTS REST, FINDING_NOT_UNDERSTOOD, 12, 1 },
		{ COURSE ONE "\n## Quater 2\n\n" STARTS "### AB 2: D\n\n" REST,
		    FINDING_UNKNOWN_SECTION, 12, 2 },
		{ COURSE ONE "\n## Quarter\n\n### AB 2: D\n\n" REST,
		    FINDING_UNKNOWN_SECTION, 12, 2 },
		{ COURSE ONE "\n### Quarter 2\n\n### AB 2: D\n\n" REST,
		    FINDING_UNKNOWN_SECTION, 12, 2 },
		{ COURSE ONE "\n# Quarter 2\n\n### AB 2: D\n\n" REST,
		    FINDING_UNKNOWN_SECTION, 12, 2 },
		{ COURSE ONE "\n## Quarter 1\n\n### AB 2: D\n\n" REST "\n## Quarter 3\n",
		    FINDING_UNKNOWN_SECTION, 12, 2 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind(rows[i].text, NULL, NULL);

		assert_int_equal(t.f->n, 1);
		assert_int_equal(t.f->v[0].name, rows[i].name);
		assert_int_equal(t.f->v[0].pos.line, rows[i].line);
		assert_true(t.f->v[0].repair.n);
		assert_int_equal(t.m->nslots, 4);
		assert_int_equal(t.m->ncourses, 2);
		assert_int_equal(t.m->slots[1].course, 0);
		assert_int_equal(t.m->slots[2].course, 1);
		assert_int_equal(t.m->courses[1].quarter, rows[i].quarter);
		bench_free(&t);
	}
}

/* A quarter is taken for the next only where that is missing and a later one there. */
static void headings_that_stand_are_not_taken_for_others(void **state)
{
	struct bench gap = bind(COURSE ONE "\n## Quarter 3\n\n" STARTS "### AB 2: D\n\n" REST,
	    NULL, NULL);
	struct bench starts = bind(COURSE ONE STARTS REST "\n## Quarter 2\n", NULL, NULL);

	(void)state;
	assert_int_equal(expect_one(&gap, FINDING_MISSING_FACT, 12, 4, "quarter 3 follows quarter 1",
	    "## Quarter 2")->level, LEVEL_WARNING);
	assert_int_equal(gap.m->courses[1].quarter, 3);
	expect_one(&starts, FINDING_NOT_UNDERSTOOD, 11, 3, "this fact", "");
	assert_int_equal(starts.m->ncourses, 1);
	assert_int_equal(starts.m->nslots, 4);
	bench_free(&gap);
	bench_free(&starts);
}

/* Of lines with weeks so many stand beyond the quarter: the fewest that make its length
 * doubtful are three, and a fourth of all. */
static void weeks_of_a_quarter_too_few(void **state)
{
	static const struct { const char *lines; bool doubted; size_t n; } rows[] = {
		{ "1. SM-01, week 12\n2. SM-20, week 13\n3. GM-06, week 14\n4. GM-07, week 1\n",
		    true, 1 },
		{ "1. SM-01, week 11\n2. SM-20, week 13\n3. GM-06, week 14\n4. GM-07, week 1\n",
		    false, 2 },
		{ "1. SM-01, week 11\n2. SM-20\n3. GM-06\n4. GM-07, week 1\n", false, 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char text[400];
		struct bench t;

		snprintf(text, sizeof text, COURSE "%s", rows[i].lines);
		t = bind(text, NULL, NULL);
		assert_int_equal(t.f->n, rows[i].n);
		for (size_t k = 0; k < t.f->n; k++)
			assert_int_equal(t.f->v[k].name, FINDING_WEEK_OUTSIDE);
		assert_int_equal(t.m->weeks, rows[i].doubted ? 0 : 11);
		assert_int_equal(t.m->slots[2].week, rows[i].doubted ? 14 : 11);
		if (rows[i].doubted) {
			assert_int_equal(t.f->v[0].pos.line, 3);
			assert_int_equal(t.f->v[0].nrelated, 3);
			assert_int_equal(t.f->v[0].related[2].pos.line, 11);
			assert_true(str_has(t.f->v[0].repair, "quarter:** 14"));
		}
		bench_free(&t);
	}
}

/* A day between its neighbors, at them, and outside; and quarters that start over. */
static void starts_of_quarters(void **state)
{
	static const struct { const char *a, *b, *c, *d; uint32_t line; } rows[] = {
		{ "2026-09-21", "2027-01-04", "2027-03-29", "2027-09-20", 0 },
		{ "2026-09-21", "2026-01-04", "2027-03-29", "2027-09-20", 20 },
		{ "2026-09-21", "2027-03-29", "2027-03-29", "2027-09-20", 20 },
		{ "2026-09-21", "2026-09-22", "2027-03-29", "2027-09-20", 0 },
		{ "2026-09-21", "2027-01-04", "2028-03-29", "2027-09-20", 24 },
		/* Two years side by side, and the next start of each quarter. */
		{ "2026-09-21", "2027-01-04", "2026-09-21", "2027-01-04", 0 },
		{ "2027-09-20", "2027-01-04", "2027-03-29", "2027-06-21", 0 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char text[600];
		struct bench t;

		snprintf(text, sizeof text, PROGRAM "- **Terms:** Fall, Winter, Spring, Herbst\n"
		    "\n## Quarter 1\n\n- **Starts:** %s\n\n### AB 1: C\n\n" ALL
		    "\n\n## Quarter 2\n\n- **Starts:** %s\n\n## Quarter 3\n\n- **Starts:** %s"
		    "\n\n## Quarter 4\n\n- **Starts:** %s\n", rows[i].a, rows[i].b, rows[i].c,
		    rows[i].d);
		t = bind(text, NULL, NULL);
		if (rows[i].line)
			expect_one(&t, FINDING_STARTS_OUT_OF_ORDER, rows[i].line, 15, "quarters around it",
			    "between the two");
		else
			expect_none(&t);
		bench_free(&t);
	}
}

static void not_listed(void **state)
{
	struct bench t = bind(COURSE "1. SM-01\n1. SM-20\n1. GM-06\n", NULL, NULL);
	const struct finding *d = expect_one(&t, FINDING_NOT_LISTED, 6, 3, "GM-07", "program.md");

	(void)state;
	assert_int_equal(d->pos.file, 0);
	expect_str(d->assignment, "GM-07");
	bench_free(&t);
}

/* GM-06 and the like are defined and listed; SM-20 is listed by another word. */
static void a_mistyped_id_is_taken_for_one_not_listed(void **state)
{
	static const struct { const char *line; bool taken; } rows[] = {
		{ "1. SM-21\n", true }, { "1. SM-21 (fillet, up (first))\n", true },
		{ "1. XX-99 (Fillet, up (first))\n", true },
		/* Another title: it may be an assignment that is still to be written. */
		{ "1. SM-21 (Something else)\n", false }, { "1. XX-99\n", false },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		char text[300];
		struct bench t;
		const struct finding *d;

		snprintf(text, sizeof text, COURSE "1. SM-01\n%s" REST, rows[i].line);
		t = bind(text, NULL, NULL);
		d = &t.f->v[t.f->n - 1];
		assert_int_equal(t.f->n, rows[i].taken ? 1 : 2);
		assert_int_equal(d->name, FINDING_UNKNOWN_ASSIGNMENT);
		assert_true(str_has(d->message, rows[i].taken ? "SM-20 is taken for it"
		    : "gives nothing"));
		assert_int_equal(t.m->slots[1].assignment != NONE, rows[i].taken);
		bench_free(&t);
	}
}

static void listed_twice_names_the_first(void **state)
{
	struct bench t = bind(COURSE ALL "1. SM-01, week 3\n", NULL, NULL);

	(void)state;
	assert_int_equal(t.f->v[0].related[0].pos.line, 9);
	assert_int_equal(t.f->v[0].related[0].pos.col, 4);
	assert_int_equal(t.m->nslots, 4);
	bench_free(&t);
}

static void sound_courses(void **state)
{
	static const char *const texts[] = {
		COURSE ALL,
		COURSE "- SM-01\n- SM-20\n- one of GM-06, GM-07, week 9\n",
		COURSE "5. sm-01, WEEK 3, Optional (pads)\n9. SM-20 (Fillet, up (first))\n"
		    "9. one of GM-06 (Tee) or GM-07 (Lap), week 11\n",
		COURSE "1. SM-01, week 2 (Pads)\n2. SM-20, week 1\n3. one of: GM-06, GM-07 (x)\n",
		PROGRAM "- **Entry:** quarter 1; quarter 2, then 1, with a.b assessed and c.d "
		    "practiced\n- **Hour:** 50 min\n\n## Quarter 1\n\n### AB 1: C\n\n" ALL
		    "\n## Quarter 2\n",
	};

	(void)state;
	for (size_t i = 0; i < COUNT(texts); i++) {
		struct bench t = bind(texts[i], NULL, NULL);

		expect_none(&t);
		assert_int_equal(t.m->nslots, 4);
		bench_free(&t);
	}
}

static void choice_of_one_left(void **state)
{
	struct bench t = bind(COURSE "1. SM-01\n1. SM-20\n1. one of GM-06, GM-09, week 4\n"
	    "1. GM-07\n", NULL, NULL);

	(void)state;
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_UNKNOWN_ASSIGNMENT);
	assert_int_equal(t.f->v[0].pos.col, 18);
	assert_int_equal(t.m->nslots, 5);
	assert_int_equal(t.m->slots[3].assignment, NONE);
	assert_int_equal(t.m->slots[3].group, t.m->slots[2].group);
	assert_int_equal(t.m->slots[4].week, 4);
	bench_free(&t);
}

static void faults_of_skills(void **state)
{
	static const struct row rows[] = {
		{ "# Skills\n\n## PO1 Works\n\n- **a.b:** x\n", FINDING_BAD_ID, 3, 4, "PO1 Works",
		    "## PO4" },
		{ "# Skills\n\n## PO1: Works\n\n- **a b:** x\n", FINDING_BAD_ID, 5, 5, "a b",
		    "smaw.2f" },
		{ "# Skills\n\n## PO1: Works\n\n- **a.b:** x\n- **A.B:** y\n", FINDING_DUPLICATE_ID,
		    6, 5, "a.b", "" },
		{ "# Skills\n\n## PO1: W\n\n- **a.b:** x\n\n## po1: V\n\n- **c:** y\n",
		    FINDING_DUPLICATE_ID, 7, 4, "po1", "" },
		{ "# Skills\n\n## PO1: W\n\n- a.b is what\n", FINDING_NOT_UNDERSTOOD, 5, 3, "bullet",
		    "smaw.2f" },
		{ "# Skills\n\nWords.\n\n## PO1: W\n\n- **a.b:** x\n", FINDING_NOT_UNDERSTOOD, 3, 1,
		    "paragraph", "## PO4" },
		{ "# Skills\n\n## PO1: W\n\n- **a.b:**\n", FINDING_MISSING_FACT, 5, 5, "a.b", "" },
		{ "# Skills\n\n## PO1: W\n\n- **a.b:** x\n\n## Entry skills\n\n- **a.b:** why\n",
		    FINDING_MISSING_LEVEL, 9, 5, "a.b", "a.b introduced" },
		{ "# Skills\n\n## Entry skills\n\n- **a.b practicd:** w\n\n## PO1: W\n\n- **a.b:** "
		    "x\n", FINDING_UNKNOWN_WORD, 5, 9, "practicd", "\"practiced\"" },
		{ "# Skills\n\n# More\n\n## PO1: W\n", FINDING_UNKNOWN_SECTION, 3, 3, "More", "" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind(NULL, rows[i].text, NULL);

		expect_one(&t, rows[i].name, rows[i].line, rows[i].col, rows[i].message,
		    rows[i].repair);
		bench_free(&t);
	}
}

static void faults_of_shops(void **state)
{
	static const struct row rows[] = {
		{ "# Shop\n\n## Sation booth\n\n- **Places:** 1\n", FINDING_UNKNOWN_SECTION, 3, 4,
		    "Sation booth", "\"## Station booth\"" },
		{ "# Shop\n\n## Station\n\n- **Places:** 1\n", FINDING_MISSING_FACT, 3, 4, "name",
		    "booth" },
		{ "# Shop\n\n## Station a\n\n## Station A\n", FINDING_DUPLICATE_ID, 5, 4,
		    "Station A", "" },
		{ "# Shop\n\n## Station a\n\n## Station b\n\n- **Places:** 1\n",
		    FINDING_MISSING_FACT, 3, 4, "a does not say", "Places" },
		{ "# Shop\n\n## Station a\n\n- **Place:** 2\n\n## Station b\n\n- **Places:** 1\n",
		    FINDING_UNKNOWN_KEY, 5, 5, "Place", "\"Places\"" },
		{ "# Shop\n\n## Station booth\n\n- **Place:** 1\n", FINDING_UNKNOWN_KEY, 5, 5,
		    "Place", "\"Places\"" },
		{ "# Shop\n\n## Station booth\n\n- **Places:** few\n", FINDING_BAD_QUANTITY, 5, 15,
		    "few", "" },
		{ "# Shop\n\n## Section day\n\n- **Open:** 16\n", FINDING_MISSING_UNIT, 5, 13, "16",
		    "" },
		{ "# Shop\n\n## Section day\n\n- **Open:** 16 h a month\n", FINDING_UNKNOWN_WORD, 5,
		    18, "a month", "" },
		{ "# Shop\n\n## Station booth\n\n- **Sections:** dya\n\n## Section day\n",
		    FINDING_UNKNOWN_WORD, 5, 17, "dya", "\"day\"" },
		{ "# Shop\n\n## Plungers\n\n- **Diameters:** 1/2, 7/8\n", FINDING_MISSING_UNIT, 5,
		    18, "", "" },
		{ "# Shop\n\n## Machine shear\n\nWide.\n", FINDING_NOT_UNDERSTOOD, 5, 1, "",
		    "Bed" },
		{ "# Shop\n\n- **Open:** 3 h\n", FINDING_NOT_UNDERSTOOD, 3, 3, "fact", "" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct bench t = bind(NULL, NULL, rows[i].text);
		const struct finding *d = expect_one(&t, rows[i].name, rows[i].line, rows[i].col,
		    rows[i].message, rows[i].repair);

		/* No packet prints the shop, so nothing is held back. */
		assert_int_equal(d->scope, SCOPE_ASSIGNMENTS);
		assert_int_equal(d->assignment.n, 0);
		bench_free(&t);
	}
}

static void stations_and_machines_of_the_shop(void **state)
{
	static const char shop[] = "# Shop\n\n## Station Booth\n\n## Machine press brake\n";
	static const struct file_text good[] = {
		{ "assignments/a.md", "# SM-01: P\n\n- **Kind:** drill\n- **Hours:** 1\n"
		    "- **Station:** booth\n- **Machines:** press-brake\n" }, { "shop.md", shop } };
	static const struct file_text station[] = {
		{ "assignments/a.md", "# SM-01: P\n\n- **Kind:** drill\n- **Hours:** 1\n"
		    "- **Station:** boot\n" }, { "shop.md", shop } };
	static const struct file_text machine[] = {
		{ "assignments/a.md", "# SM-01: P\n\n- **Kind:** drill\n- **Hours:** 1\n"
		    "- **Machines:** press brake, roll\n" }, { "shop.md", shop } };
	struct bench a = bench_bind(good, 2), b = bench_bind(station, 2),
	    c = bench_bind(machine, 2);

	(void)state;
	expect_none(&a);
	assert_int_equal(a.m->assignments[0].station, 0);
	expect_one(&b, FINDING_UNKNOWN_WORD, 5, 16, "boot", "\"Booth\"");
	assert_int_equal(b.m->assignments[0].station, NONE);
	expect_one(&c, FINDING_UNKNOWN_WORD, 5, 30, "roll", "## Machine roll");
	bench_free(&a);
	bench_free(&b);
	bench_free(&c);
}

static void unknown_skills_are_kept_for_the_check(void **state)
{
	static const struct file_text files[] = {
		{ "assignments/a.md", "# SM-01: P\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
		    "## Needs\n\n- smaw.9f practiced\n- SMAW.1F practiced\n" },
		{ "skills.md", "# S\n\n## PO1: A\n\n- **smaw.1f:** x\n" } };
	struct bench t = bench_bind(files, 2);
	const struct assignment *a = t.m->assignments;

	(void)state;
	expect_none(&t);
	assert_int_equal(a->needs[0].v[0].skill, NONE);
	expect_str(a->needs[0].v[0].written, "smaw.9f");
	assert_int_equal(a->needs[1].v[0].skill, 0);
	bench_free(&t);
}

static void an_empty_folder_is_usable(void **state)
{
	struct bench t = bench_bind(NULL, 0);

	(void)state;
	expect_none(&t);
	assert_int_equal(t.m->nassignments + t.m->nslots + t.m->nskills, 0);
	assert_int_equal(map_find(t.m->assignment_by_id, STR("SM-01")), MAP_NONE);
	bench_free(&t);
}

/* n assignments with three needs each, in a chain. */
static size_t bytes_for(unsigned n)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf work_text = { .arena = a }, program = { .arena = a };
	struct file_text files[2];
	struct bench t;
	size_t bytes;

	buf_adds(&program, COURSE);
	for (unsigned i = 0; i < n; i++) {
		buf_addf(&work_text, "# A%c-%04u: T\n\n- **Kind:** drill\n- **Hours:** 1\n\n"
		    "## Needs\n\n- s.%u practiced\n- t.%u assessed\n- u practiced\n\n",
		    'A' + (int)(i / 10000), i % 10000, i, i);
		buf_addf(&program, "1. A%c-%04u\n", 'A' + (int)(i / 10000), i % 10000);
	}
	files[0] = (struct file_text){ "assignments/a.md", buf_z(&work_text) };
	files[1] = (struct file_text){ "program.md", buf_z(&program) };
	t = bench_bind(files, 2);
	expect_none(&t);
	assert_int_equal(t.m->nassignments, n);
	assert_int_equal(t.m->nslots, n);
	bytes = arena_bytes(t.arena);
	bench_free(&t);
	arena_free(a);
	return bytes;
}

static void memory_grows_with_the_program(void **state)
{
	size_t one = bytes_for(2000), four = bytes_for(8000);

	(void)state;
	assert_true(four < 5 * one);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(faults_of_courses),
		cmocka_unit_test(faults_of_programs),
		cmocka_unit_test(faults_of_quarters),
		cmocka_unit_test(a_heading_that_is_lost_is_one_finding),
		cmocka_unit_test(headings_that_stand_are_not_taken_for_others),
		cmocka_unit_test(weeks_of_a_quarter_too_few),
		cmocka_unit_test(starts_of_quarters),
		cmocka_unit_test(not_listed),
		cmocka_unit_test(a_mistyped_id_is_taken_for_one_not_listed),
		cmocka_unit_test(listed_twice_names_the_first),
		cmocka_unit_test(sound_courses),
		cmocka_unit_test(choice_of_one_left),
		cmocka_unit_test(faults_of_skills),
		cmocka_unit_test(faults_of_shops),
		cmocka_unit_test(stations_and_machines_of_the_shop),
		cmocka_unit_test(unknown_skills_are_kept_for_the_check),
		cmocka_unit_test(an_empty_folder_is_usable),
		cmocka_unit_test(memory_grows_with_the_program),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
