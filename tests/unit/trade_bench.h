/* Shared by the tests of the rules about order: programs as a few lines of Markdown. */
#ifndef TESTS_TRADE_BENCH_H
#define TESTS_TRADE_BENCH_H

#include "model_bench.h"

#include "check/check.h"

#define FACT(key, value) "- **" key ":** " value "\n"
#define WORK(id, kind, rest) "# " id ": Work\n\n" FACT("Kind", kind) FACT("Hours", \
	"1") rest "\n"
#define PLATE(thickness) FACT("Material", "A36 plate") FACT("Thickness", thickness)
#define WELD(process, joint, position) FACT("Process", process) FACT("Joint", joint) \
	FACT("Position", position) PLATE("3/8 in")
#define PIPE(process, position) FACT("Process", process) FACT("Joint", "pipe butt") \
	FACT("Position", position) FACT("Material", "A53 pipe") \
	FACT("Thickness", "NPS 6 schedule 40")
#define NEEDS(what) "\n## Needs\n\n- " what "\n"
#define TEACHES(what) "\n## Teaches\n\n- " what "\n"
#define ACCEPT(name, text) "\n## Acceptance\n\n" FACT(name, text)
#define STUDENT FACT("Tested by", "student")
#define INSTRUCTOR FACT("Tested by", "instructor")

/* A shop card and a card for arcs, so that a case is about something else. */
#define CARDS WORK("AA-01", "safety", TEACHES("saf.shop assessed") \
	ACCEPT("Fire watch", "stood")) WORK("AA-02", "safety", \
	FACT("Process", "SMAW, OFC, PAC, CAC-A"))
#define CARD_LINES "1. AA-01, week 1\n2. AA-02, week 1\n"

static const char trade_skills[] = "# Skills\n\n## PO1: All\n\n- **saf.shop:** Shop\n"
    "- **saf.arc:** Arc\n- **a.one:** One\n- **a.two:** Two\n- **a.three:** Three\n";
static const char trade_shop[] =
    "# Shop\n\n## Machine shear\n\n- **Mild steel:** 1/4 in\n\n"
    "## Machine rod oven\n\n- **Holds:** 200 lb\n\n## Machine plasma table\n\n- "
    "**Pierce:** 1/2 in\n\n"
    "## Machine track torch\n\n- **Carbon steel:** 4 in\n";

/* One program: what is defined, and the lines of each quarter; null: none. */
struct trade_case {
	enum finding_name name;
	const char *why;         /* of the case, for a failure */
	const char *works, *quarters[4];
	size_t n;                /* findings of the name */
	const char *message;     /* part of the first; or null */
	const char *extra;       /* facts of program.md, such as an entry path; or null */
};

static inline str trade_program(struct arena *a, const struct trade_case *c)
{
	struct buf b = { .arena = a };

	buf_addf(&b, "# A: B\n\n- **Weeks in a quarter:** 11\n%s\n", c->extra ? c->extra :
	    "");
	for (unsigned q = 0; q < 4; q++)
		if (c->quarters[q])
			buf_addf(&b,
			    "## Quarter %u\n\n### ORW %u: One\n\n- **Lab hours:** "
			    "44\n\n%s\n",
			    q + 1, 100 + q, c->quarters[q]);
	return buf_str(&b);
}

/* Binds and checks a case with a customs.md; findings are sorted. */
static inline struct bench trade_judge_by(const struct trade_case *c, const char *customs)
{
	struct arena *text = arena_new(NULL, NULL), *scratch = arena_new(NULL, NULL);
	str program = trade_program(text, c);
	struct file_text files[] = { { "assignments/all.md", c->works },
		{ "customs.md", customs }, { "program.md", "" },
		{ "shop.md", trade_shop }, { "skills.md", trade_skills } };
	struct bench t;

	files[2].text = arena_copy(text, program.p, program.n);
	t = bench_bind(files, sizeof files / sizeof *files);
	check_program(scratch, t.m, t.f);
	findings_sort(t.f);
	arena_free(scratch);
	return t;
}

/* off: words of a custom, or null. */
static inline struct bench trade_judge(const struct trade_case *c, const char *off)
{
	char customs[300] = "# Customs\n";

	if (off)
		snprintf(customs, sizeof customs,
		    "# Customs\n\n## Off\n\n- **%s:** we like it so\n", off);
	return trade_judge_by(c, customs);
}

static inline size_t trade_count(const struct bench *t, enum finding_name name,
    const struct finding **first)
{
	size_t n = 0;

	for (size_t i = 0; i < t->f->n; i++)
		if (t->f->v[i].name == name && !n++ && first)
			*first = &t->f->v[i];
	return n;
}

static inline void trade_expect(const struct trade_case *c)
{
	struct bench t = trade_judge(c, NULL);
	const struct finding *d = NULL;
	size_t n = trade_count(&t, c->name, &d);

	if (n != c->n || (n && c->message && !str_has(d->message, c->message) &&
	    !str_has(d->cause, c->message))) {
		print_message("%s: %s: wanted %u, %s\n", finding_info(c->name)->name,
		    c->why,
		    (unsigned)c->n, c->message ? c->message : "");
		print_findings(&t);
		fail();
	}
	if (d)
		assert_true(d->pos.line > 0 && d->cause.n && d->repair.n &&
		    d->assignment.n);
	bench_free(&t);
}

#endif
