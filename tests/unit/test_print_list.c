/* Copies, sheets of paper and the list itself. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "page/flow.h"
#include "page_probe.h"
#include "sheets/print_list.h"

/* Five per cent more, rounded up to a whole copy: 13 x 1.05 = 13.65, 20 x 1.05 = 21. */
static void spares_round_up(void **state)
{
	static const unsigned rows[][2] = { { 0, 0 }, { 1, 2 }, { 10, 11 }, { 13, 14 },
		{ 19, 20 }, { 20, 21 }, { 21, 23 }, { 40, 42 }, { 100, 105 } };

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		assert_int_equal(print_list_copies(rows[i][0]), rows[i][1]);
}

static void paper_has_two_sides(void **state)
{
	const struct print_item packet = { .pages = 77, .copies = 14 };
	const struct print_item card = { .pages = 13, .copies = 14, .one_sided = true };
	const struct print_item held = { .pages = 13, .copies = 14, .held = true };
	const struct print_item blank = { .pages = 13 };

	(void)state;
	assert_int_equal(print_list_sheets(&packet), 39 * 14);
	assert_int_equal(print_list_sheets(&card), 13 * 14);
	assert_int_equal(print_list_sheets(&held), 0);
	assert_int_equal(print_list_sheets(&blank), 0);
}

/* Four quarters; a path that begins with the third: 3, 4, 1, 2. */
static void cohorts_go_to_their_next_quarter(void **state)
{
	uint32_t turn[] = { 3, 4, 1, 2 };
	struct entry path = { .quarters = turn, .nquarters = 4 };
	struct cohort cohorts[] = { { .entry_quarter = 1, .students = 13 },
		{ .entry_quarter = 1, .finished = 1, .students = 10 },
		{ .entry_quarter = 3, .finished = 4, .students = 5 },
		{ .entry_quarter = 3, .finished = 2, .students = 7 },
		{ .entry_quarter = 1, .finished = 4, .students = 9 },
		{ .entry_quarter = 3, .students = 2 } };
	const struct model m = { .nquarters = 4,
		.entries = &path,
		.nentries = 1,
		.cohorts = cohorts,
		.ncohorts = sizeof cohorts / sizeof *cohorts };

	(void)state;
	assert_int_equal(print_list_students(&m, 1), 13 + 5);
	assert_int_equal(print_list_students(&m, 2), 10);
	assert_int_equal(print_list_students(&m, 3), 2);
	assert_int_equal(print_list_students(&m, 4), 0);
}

static unsigned count(const struct probe *p, const char *text)
{
	unsigned n = 0;

	for (size_t i = 0; i < p->ntexts; i++)
		n += str_find(p->texts[i].text, str_of(text), 0) < p->texts[i].text.n;
	return n;
}

/* 39 x 14 + 13 x 1 sheets are 559; what waits counts for nothing, and so does a blank. */
static void the_list_adds_up(void **state)
{
	static const struct print_item items[] = {
		{ .file = STR("q1/packet.pdf"), .pages = 77, .copies = 14,
		    .binding = STR("punch and bind"), .paper = STR("plain") },
		{ .file = STR("q1/cards.pdf"), .pages = 13, .copies = 1, .one_sided = true,
		    .binding = STR("none"), .paper = STR("card") },
		{ .file = STR("q2/packet.pdf"), .pages = 70, .copies = 14, .held = true },
		{ .file = STR("q3/packet.pdf"), .pages = 70 },
	};
	const struct model m = { .title = STR("A College: Welding") };
	struct arena *a = arena_new(NULL, NULL);
	const struct print_list_spec spec = { .model = &m, .faces = faces_new(a),
		.items = items, .n = 4 };
	struct print_list *l = print_list_new(a, &spec);
	struct probe *p = probe_new(a, spec.faces);

	(void)state;
	p->sheet = (rect){ 0, 0, LETTER_WIDTH_PT, LETTER_HEIGHT_PT };
	print_list_emit(l, &p->canvas);
	assert_int_equal(print_list_pages(l), 1);
	assert_int_equal(print_list_overfull(l) + p->outside_box + p->outside_sheet, 0);
	assert_int_equal(count(p, "559"), 1);
	assert_int_equal(count(p, "546"), 1);
	assert_int_equal(count(p, "35 each"), 1);
	assert_true(count(p, "held back") == 1);
	assert_true(count(p, "no cohorts.md") == 1);
	arena_free(a);
}

/* In large print, and where a name is wider than its column, the name has a row of its own
 * and stays in one piece. */
static void long_names_stay_whole(void **state)
{
	static const struct print_item items[] = {
		{ .file = STR("q1/packet.es.large.metric.pdf"), .pages = 77,
		  .binding = STR("punch and bind"), .paper = STR("plain") } };
	const struct model m = { .title = STR("A College: Welding") };

	(void)state;
	for (int large = 0; large < 2; large++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct print_list_spec spec = { .model = &m, .faces = faces_new(a),
			.items = items, .n = 1, .edition = { .large = large } };
		struct print_list *l = print_list_new(a, &spec);
		struct probe *p = probe_new(a, spec.faces);

		p->sheet = (rect){ 0, 0, LETTER_WIDTH_PT, LETTER_HEIGHT_PT };
		print_list_emit(l, &p->canvas);
		assert_int_equal(print_list_overfull(l) + p->outside_box + p->outside_sheet, 0);
		assert_int_equal(count(p, "q1/packet.es.large.metric.pdf"), 1);
		assert_int_equal(count(p, "39 each"), 1);
		assert_true(p->least_pt >= (large ? 18 : 12));
		arena_free(a);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(spares_round_up),
		cmocka_unit_test(paper_has_two_sides),
		cmocka_unit_test(cohorts_go_to_their_next_quarter),
		cmocka_unit_test(the_list_adds_up),
		cmocka_unit_test(long_names_stay_whole),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
