/* What a move would bring: an order rule that finds fault only then. Nothing that stands
 * already, that a waiver accepts or that lies past the budget of trials. */
#include "model_bench.h"

#include "check/trial.h"
#include "order/order.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define WELD(id, position) "# " id ": Weld " id "\n\n- **Kind:** coupon\n- **Hours:** 2\n" \
	"- **Process:** SMAW\n- **Joint:** tee\n- **Material:** A36 plate\n" \
	"- **Thickness:** 3/8 in\n- **Position:** " position "\n\n"

/* Flat in week 2, horizontal in week 4, overhead in week 6. */
static const char work[] = WELD("SM-01", "1F") WELD("SM-02", "2F") WELD("SM-04", "4F");

struct fixture {
	struct bench bench;
	struct trial *trial;
};

static struct fixture begin(const char *text, const char *lines, const char *customs)
{
	static char program[20000];
	struct file_text files[] = { { "assignments/all.md", text }, { "customs.md", customs },
		{ "program.md", program } };
	struct fixture x;
	struct view **views;

	snprintf(program, sizeof program, "# A: B\n\n- **Weeks in a quarter:** 11\n\n"
	    "## Quarter 1\n\n### ORW 101: One\n\n%s\n## Quarter 2\n\n### ORW 102: Two\n", lines);
	x.bench = bench_bind(files, COUNT(files));
	views = arena_array(x.bench.arena, 1, sizeof *views);
	views[0] = view_new(x.bench.arena, graph_new(x.bench.arena, x.bench.m, NULL),
	    order_of_program(x.bench.arena, x.bench.m));
	view_detail(x.bench.arena, views[0]);
	x.trial = trial_new(x.bench.arena, views, 1);
	return x;
}

static const char *brings(struct fixture *x, const char *id, uint32_t quarter, uint32_t week)
{
	return trial_brings(x->trial, map_find(x->bench.m->assignment_by_id, str_of(id)), quarter,
	    week);
}

#define LINES "1. SM-01, week 2\n2. SM-02, week 4\n3. SM-04, week 6\n"
#define NO_CUSTOMS "# Customs\n\n## Off\n"

static void expect(const char *said, const char *want)
{
	if (!want)
		assert_null(said);
	else
		assert_string_equal(said, want);
}

/* A line goes to the end of its week: behind what stands in that week already. */
static void a_move_brings_the_first_rule_it_breaks(void **state)
{
	static const struct { const char *id; uint32_t quarter, week; const char *want; } rows[] = {
		{ "SM-01", 1, 3, NULL }, { "SM-01", 1, 4, "horizontal-before-flat" },
		{ "SM-01", 2, 1, "horizontal-before-flat" }, { "SM-02", 1, 2, NULL },
		{ "SM-02", 1, 1, "horizontal-before-flat" }, { "SM-02", 1, 5, NULL },
		{ "SM-02", 1, 6, "overhead-before-horizontal" }, { "SM-02", 2, 11,
		"overhead-before-horizontal" }, { "SM-04", 1, 4, NULL }, { "SM-04", 2, 1, NULL },
	};
	struct fixture x = begin(work, LINES, NO_CUSTOMS);

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		expect(brings(&x, rows[i].id, rows[i].quarter, rows[i].week), rows[i].want);
	bench_free(&x.bench);
}

/* Horizontal stands before flat already: moving it on brings nothing new, and moving
 * overhead does. */
static void what_stands_is_not_brought(void **state)
{
	struct fixture x = begin(work, "1. SM-02, week 2\n2. SM-01, week 4\n3. SM-04, week 6\n",
	    NO_CUSTOMS);

	(void)state;
	expect(brings(&x, "SM-01", 1, 5), NULL);
	expect(brings(&x, "SM-04", 1, 1), "overhead-before-horizontal");
	bench_free(&x.bench);
}

static void what_is_accepted_is_not_brought(void **state)
{
	static const struct { const char *customs, *want; } rows[] = {
		{ "# Customs\n\n## Waivers\n\n- **horizontal-before-flat, SM-02:** why; dean; "
		    "until fall-2027\n", NULL },
		{ "# Customs\n\n## Waivers\n\n- **horizontal-before-flat, SM-04:** why; dean; "
		    "until fall-2027\n", "horizontal-before-flat" },
		{ "# Customs\n\n## Off\n\n- **flat before horizontal:** why\n", NULL },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct fixture x = begin(work, LINES, rows[i].customs);

		assert_int_equal(x.bench.m->nwaivers + x.bench.m->ncustoms_off, 1);
		expect(brings(&x, "SM-01", 1, 5), rows[i].want);
		bench_free(&x.bench);
	}
}

/* 200 lines are walked in each trial; past some hundred trials nothing is said. */
static void trials_end(void **state)
{
	static char text[30000], lines[8000];
	struct fixture x;
	size_t at = 0, line = 0, n = 0;

	(void)state;
	at += (size_t)snprintf(text, sizeof text, "%s", work);
	line += (size_t)snprintf(lines, sizeof lines, LINES);
	for (unsigned i = 1; i <= 197; i++) {
		at += (size_t)snprintf(text + at, sizeof text - at, "# WR-%u: Talk %u\n\n"
		    "- **Kind:** written\n- **Hours:** 1\n\n", i, i);
		line += (size_t)snprintf(lines + line, sizeof lines - line, "1. WR-%u\n", i);
	}
	assert_true(at < sizeof text && line < sizeof lines);
	x = begin(text, lines, NO_CUSTOMS);
	while (n < 1000 && brings(&x, "SM-01", 1, 5))
		n++;
	assert_int_equal(n, 20000 / 200);
	bench_free(&x.bench);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_move_brings_the_first_rule_it_breaks),
		cmocka_unit_test(what_stands_is_not_brought),
		cmocka_unit_test(what_is_accepted_is_not_brought),
		cmocka_unit_test(trials_end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
