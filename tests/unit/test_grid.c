#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <math.h>
#include <stdlib.h>

#include "page/flow.h"
#include "page/grid.h"
#include "page_probe.h"

struct bench {
	struct arena *arena;
	const struct faces *faces;
	struct setter s;
};

static const struct type plain12 = { .size_pt = 12, .lead_pt = 16 };

static int set_up(void **state)
{
	struct bench *b = malloc(sizeof *b);

	b->arena = arena_new(NULL, NULL);
	b->faces = faces_new(b->arena);
	b->s = setter_new(b->arena, b->faces);
	*state = b;
	return 0;
}

static int tear_down(void **state)
{
	struct bench *b = *state;

	arena_free(b->arena);
	free(b);
	return 0;
}

static void assert_near(double a, double b)
{
	if (fabs(a - b) > 0.001)
		print_error("%.4f is not %.4f\n", a, b);
	assert_true(fabs(a - b) <= 0.001);
}

static double width(const struct bench *b, enum face_id face, const char *text)
{
	return face_width_pt(b->faces, face, 12, str_of(text));
}

static struct probe *draw(struct bench *b, const struct block *block)
{
	struct probe *p = probe_new(b->arena, b->faces);

	canvas_page_begin(&p->canvas, 612, 792);
	block_draw(block, &(struct pen){ .canvas = &p->canvas }, (pt){ 100, 50 });
	canvas_page_end(&p->canvas);
	assert_int_equal(p->ntags, 0);
	return p;
}

static struct block *two_rows(struct bench *b, struct grid_column *columns, size_t n,
    double width_pt)
{
	struct grid_spec spec = { .columns = columns, .ncolumns = n, .width_pt = width_pt,
		.type = plain12, .heads = 1 };
	struct grid *g = grid_begin(&b->s, &spec);
	str head[3] = { STR("Piece"), STR("Size"), STR("OK") };
	str body[3] = { STR("web plate"), STR("3/8 in"), STR("") };

	grid_row_plain(g, head, 3);
	grid_row_plain(g, body, 3);
	return grid_end(g);
}

static void test_natural_fixed_and_shared_columns(void **state)
{
	struct bench *b = *state;
	struct grid_column c[3] = { { COLUMN_NATURAL, 0, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT }, { COLUMN_FIXED, 40, ALIGN_LEFT } };
	struct block *t = two_rows(b, c, 3, 300);
	struct probe *p = draw(b, t);
	double natural = width(b, FACE_SANS, "web plate") + 8;

	assert_near(t->width_pt, 300);
	assert_int_equal(p->ntexts, 5);
	assert_near(p->texts[0].x, 104);
	assert_near(p->texts[1].x, 100 + natural + 4);
	assert_near(p->texts[2].x, 100 + 300 - 40 + 4);
	assert_int_equal(p->texts[0].face, FACE_SANS_BOLD);
	assert_int_equal(p->texts[3].face, FACE_SANS);
}

static void test_without_a_share_the_table_is_as_wide_as_its_words(void **state)
{
	struct bench *b = *state;
	struct grid_column c[3] = { { COLUMN_NATURAL, 0, ALIGN_LEFT },
		{ COLUMN_NATURAL, 70, ALIGN_LEFT }, { COLUMN_NATURAL, 0, ALIGN_LEFT } };
	struct block *t = two_rows(b, c, 3, 300);

	assert_near(t->width_pt, width(b, FACE_SANS, "web plate") + 8 + 70 +
	    width(b, FACE_SANS_BOLD, "OK") + 8);
}

/* Two columns of 200 and 100 points of text in 240: what can be spared is the blank
 * between words, and each column gives up the same part of it. */
static void test_narrow_tables_wrap_evenly(void **state)
{
	struct bench *b = *state;
	struct grid_column c[2] = { { COLUMN_NATURAL, 0, ALIGN_LEFT },
		{ COLUMN_NATURAL, 0, ALIGN_LEFT } };
	struct grid_spec spec = { .columns = c, .ncolumns = 2, .type = plain12 };
	const char *left = "gap squareness leg", *right = "toe root";
	double n1 = width(b, FACE_SANS, left) + 8, n2 = width(b, FACE_SANS, right) + 8;
	double l1 = width(b, FACE_SANS, "squareness") + 8;
	double l2 = width(b, FACE_SANS, "root") + 8;
	double part = 0.5;

	spec.width_pt = l1 + l2 + part * (n1 - l1 + n2 - l2);
	struct grid *g = grid_begin(&b->s, &spec);

	grid_row_plain(g, (str[]){ str_of(left), str_of(right) }, 2);
	struct block *t = grid_end(g);
	struct probe *p = draw(b, t);

	assert_near(t->width_pt, spec.width_pt);
	size_t toe = probe_find(p, "toe", 0);
	assert_true(toe < p->ntexts);
	assert_near(p->texts[toe].x, 100 + l1 + part * (n1 - l1) + 4);
}

static void test_row_heights(void **state)
{
	struct bench *b = *state;
	struct grid_column c[2] = { { COLUMN_FIXED, 60, ALIGN_LEFT },
		{ COLUMN_FIXED, 60, ALIGN_RIGHT } };
	struct grid_spec spec = { .columns = c, .ncolumns = 2, .width_pt = 120,
		.type = plain12, .heads = 1, .row_min_pt = GLOVE_PT };
	struct grid *g = grid_begin(&b->s, &spec);
	struct grid_cell middle[2] = { { .text = STR("leg"), .middle = true },
		{ .text = STR("a b"), .style = SPAN_BOLD } };
	struct lines *l = (struct lines *)(uintptr_t)para_break_plain(&b->s, STR("x"),
	    &plain12, 50);

	grid_row_plain(g, (str[]){ STR("Part"), STR("OK") }, 2);
	grid_row(g, middle, 2);
	grid_row(g, NULL, 0);
	grid_row_min(g, 50);
	struct block *t = grid_end(g);
	struct probe *p = draw(b, t);

	/* Head: a line of 16 and the padding of 4; then 10 mm; then 50. */
	assert_near(t->strips[0].height_pt, 20);
	assert_near(t->strips[1].height_pt, 72.0 / 2.54);
	assert_near(t->height_pt, 20 + 72.0 / 2.54 + 50);
	/* In the middle of its row, and right-aligned at the top of it. */
	assert_near(p->texts[2].y, 50 + 20 + (72.0 / 2.54 - 16) / 2 + l->rise_pt);
	assert_near(p->texts[3].y, 50 + 20 + 2 + l->rise_pt);
	assert_near(p->texts[3].x + p->texts[3].w, 100 + 120 - 4);
	assert_int_equal(p->tag_count[TAG_HEAD_CELL], 2);
	assert_int_equal(p->tag_count[TAG_CELL], 4);
	assert_int_equal(p->tag_count[TAG_ROW], 3);
}

static void test_cells_over_columns_and_blocks(void **state)
{
	struct bench *b = *state;
	struct grid_column c[3] = { { COLUMN_FIXED, 60, ALIGN_LEFT },
		{ COLUMN_FIXED, 60, ALIGN_LEFT }, { COLUMN_NATURAL, 0, ALIGN_CENTER } };
	struct grid_spec spec = { .columns = c, .ncolumns = 3, .width_pt = 300,
		.type = plain12, .caption = STR("Visual") };
	struct grid *g = grid_begin(&b->s, &spec);
	struct block *check = block_check(&b->s, STR("yes"), &plain12, 80);
	struct grid_cell top[2] = { { .text = STR("over two columns"), .columns = 2 },
		{ .block = check } };

	grid_row(g, top, 2);
	grid_row(g, (struct grid_cell[]){ { .text = STR("all"), .columns = 9 } }, 1);
	struct block *t = grid_end(g);
	struct probe *p = draw(b, t);

	assert_near(t->width_pt, 60 + 60 + 88);
	assert_true(str_eq(p->texts[0].text, STR("Visual")));
	assert_int_equal(p->texts[0].face, FACE_SANS_BOLD);
	assert_true(probe_find(p, "over two columns", 0) < p->ntexts);
	assert_near(p->texts[probe_find(p, "yes", 0)].x, 100 + 120 + 4 + GLOVE_PT + 7.2);
	assert_near(t->strips[1].height_pt, GLOVE_PT + 4);
	assert_int_equal(p->tag_count[TAG_CELL], 3);
	assert_int_equal(p->outside_box, 0);
}

static void test_no_rows_and_no_rules(void **state)
{
	struct bench *b = *state;
	struct grid_column c[1] = { { COLUMN_SHARE, 1, ALIGN_LEFT } };
	struct grid_spec spec = { .columns = c, .ncolumns = 1, .width_pt = 100,
		.type = plain12, .caption = STR("Empty"), .heads = 3 };

	assert_int_equal(grid_end(grid_begin(&b->s, &spec))->nstrips, 0);
	spec.rule_pt = -1;
	struct grid *g = grid_begin(&b->s, &spec);

	grid_row_plain(g, (str[]){ STR("one"), STR("dropped") }, 2);
	struct probe *p = draw(b, grid_end(g));

	assert_int_equal(p->ntexts, 2);
	assert_int_equal(p->npaths, 0);
}

/* ---- over pages ---- */

static struct flow *small_pages(struct bench *b)
{
	/* Body of 200 x 200 points. */
	return flow_new(&b->s, &(struct flow_spec){ .page_width_pt = 300,
	    .page_height_pt = 300, .top_pt = 50, .bottom_pt = 50, .inner_pt = 60,
	    .outer_pt = 40 });
}

static struct grid *numbered_rows(struct bench *b, size_t n, size_t heads, bool whole)
{
	static const struct grid_column c[2] = { { COLUMN_FIXED, 50, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT } };
	struct grid *g = grid_begin(&b->s, &(struct grid_spec){ .columns = c, .ncolumns = 2,
	    .width_pt = 200, .type = plain12, .heads = heads, .caption = STR("Table"),
	    .keep_whole = whole });

	for (size_t i = 0; i < n; i++)
		grid_row_plain(g, (str[]){ i < heads ? STR("Head") :
		    str_format(b->arena, "row %zu", i), STR("x") }, 2);
	return g;
}

static struct probe *emit(struct bench *b, struct flow *f)
{
	struct probe *p = probe_new(b->arena, b->faces);

	flow_end(f);
	flow_emit(f, &p->canvas);
	assert_int_equal(p->ntags, 0);
	assert_int_equal(p->outside_box, 0);
	assert_int_equal(flow_pages(f), p->page);
	return p;
}

/* Rows are 20 points, the caption 16 + 4. Page 1: caption, head and 8 rows make 200 of
 * 200; later pages: head and 9 rows. */
static void test_head_is_repeated(void **state)
{
	struct bench *b = *state;
	struct flow *f = small_pages(b);

	flow_add(f, grid_end(numbered_rows(b, 25, 1, true)));
	struct probe *p = emit(b, f);

	assert_int_equal(flow_pages(f), 3);
	assert_int_equal(p->texts[probe_find(p, "row 8", 0)].page, 1);
	size_t head = probe_find(p, "Head", probe_find(p, "row 8", 0));
	assert_int_equal(p->texts[head].page, 2);
	assert_true(p->texts[head].artifact);
	assert_near(p->texts[head].y - 50, p->texts[0].y - 50 + 2);
	assert_int_equal(p->texts[probe_find(p, "row 9", 0)].page, 2);
	assert_near(p->texts[probe_find(p, "row 9", 0)].y, p->texts[head].y + 20);
	assert_int_equal(p->texts[probe_find(p, "row 17", 0)].page, 2);
	assert_int_equal(p->texts[probe_find(p, "row 18", 0)].page, 3);
	assert_int_equal(p->tag_count[TAG_TABLE], 1);
	assert_int_equal(p->tag_count[TAG_HEAD_CELL], 2);
	assert_int_equal(probe_find(p, "Table", 1), p->ntexts);
	assert_int_equal(flow_overfull(f), 0);
}

static void test_whole_table_moves_on(void **state)
{
	struct bench *b = *state;

	for (int whole = 0; whole < 2; whole++) {
		struct flow *f = small_pages(b);

		flow_add(f, block_space(&b->s, 100, false));
		flow_add(f, grid_end(numbered_rows(b, 8, 1, whole)));
		struct probe *p = emit(b, f);

		assert_int_equal(flow_pages(f), 2);
		assert_int_equal(p->texts[0].page, whole ? 2 : 1);
		assert_int_equal(p->texts[probe_find(p, "row 3", 0)].page, whole ? 2 : 1);
		assert_int_equal(p->texts[probe_find(p, "row 4", 0)].page, 2);
	}
}

/* Room for caption and head only: neither stays behind. */
static void test_caption_and_head_keep_with_first_row(void **state)
{
	struct bench *b = *state;
	struct flow *f = small_pages(b);

	flow_add(f, block_space(&b->s, 200 - 2 * 20 - 18, false));
	flow_add(f, grid_end(numbered_rows(b, 4, 1, false)));
	struct probe *p = emit(b, f);

	assert_int_equal(p->texts[0].page, 2);
	f = small_pages(b);
	flow_add(f, block_space(&b->s, 200 - 3 * 20, false));
	flow_add(f, grid_end(numbered_rows(b, 3, 1, false)));
	p = emit(b, f);
	assert_int_equal(p->texts[0].page, 1);
	assert_int_equal(p->texts[probe_find(p, "row 2", 0)].page, 2);
}

/* Three rows and more: one alone under its head goes over with the rest. */
static void test_a_long_table_starts_with_two_rows(void **state)
{
	struct bench *b = *state;
	struct flow *f = small_pages(b);
	struct probe *p;

	flow_add(f, block_space(&b->s, 200 - 3 * 20, false));
	flow_add(f, grid_end(numbered_rows(b, 4, 1, false)));
	p = emit(b, f);
	assert_int_equal(p->texts[0].page, 2);
	f = small_pages(b);
	flow_add(f, block_space(&b->s, 200 - 4 * 20, false));
	flow_add(f, grid_end(numbered_rows(b, 4, 1, false)));
	p = emit(b, f);
	assert_int_equal(p->texts[0].page, 1);
	assert_int_equal(p->texts[probe_find(p, "row 2", 0)].page, 1);
	assert_int_equal(p->texts[probe_find(p, "row 3", 0)].page, 2);
}

/* Four rows and more: the last one takes the one before it along. */
static void test_a_long_table_ends_with_two_rows(void **state)
{
	struct bench *b = *state;
	struct flow *f = small_pages(b);
	struct probe *p;

	flow_add(f, block_space(&b->s, 200 - 5 * 20, false));
	flow_add(f, grid_end(numbered_rows(b, 5, 1, false)));
	p = emit(b, f);
	assert_int_equal(p->texts[probe_find(p, "row 2", 0)].page, 1);
	assert_int_equal(p->texts[probe_find(p, "row 3", 0)].page, 2);
	assert_int_equal(p->texts[probe_find(p, "row 4", 0)].page, 2);
}

static void test_only_a_row_taller_than_a_page_is_cut(void **state)
{
	struct bench *b = *state;
	struct grid_column c[2] = { { COLUMN_FIXED, 30, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT } };
	struct span lines[30];

	for (size_t i = 0; i < 30; i++)
		lines[i] = (struct span){ str_format(b->arena, "line %zu", i), SPAN_BREAK };
	struct grid *g = grid_begin(&b->s, &(struct grid_spec){ .columns = c, .ncolumns = 2,
	    .width_pt = 200, .type = plain12, .heads = 1 });

	grid_row_plain(g, (str[]){ STR("H"), STR("Text") }, 2);
	grid_row(g, (struct grid_cell[]){ { .text = STR("k") },
	    { .spans = lines, .nspans = 30 } }, 2);
	struct flow *f = small_pages(b);

	flow_add(f, grid_end(g));
	struct probe *p = emit(b, f);

	/* 30 lines of 16 points: under a head of 20 there is room for 11 of them, also with
	 * the padding of 2 above the first and below the last. */
	assert_int_equal(p->texts[probe_find(p, "line 10", 0)].page, 1);
	assert_int_equal(p->texts[probe_find(p, "line 11", 0)].page, 2);
	assert_int_equal(p->texts[probe_find(p, "line 21", 0)].page, 2);
	assert_int_equal(p->texts[probe_find(p, "line 22", 0)].page, 3);
	assert_int_equal(flow_pages(f), 3);
	assert_int_equal(flow_overfull(f), 0);
}

/* A row of 20 lines, tall enough to be cut, moves to the next page whole. */
static void test_tall_row_that_fits_is_whole(void **state)
{
	struct bench *b = *state;
	struct grid_column c[1] = { { COLUMN_FIXED, 100, ALIGN_LEFT } };
	struct span lines[20];
	struct flow *f = flow_new(&b->s, &(struct flow_spec){ .page_width_pt = 300,
	    .page_height_pt = 600, .top_pt = 50, .bottom_pt = 50, .inner_pt = 60,
	    .outer_pt = 40 });
	struct grid *g = grid_begin(&b->s, &(struct grid_spec){ .columns = c, .ncolumns = 1,
	    .width_pt = 100, .type = plain12 });

	for (size_t i = 0; i < 20; i++)
		lines[i] = (struct span){ str_format(b->arena, "l%zu", i), SPAN_BREAK };
	grid_row_plain(g, (str[]){ STR("above") }, 1);
	grid_row(g, &(struct grid_cell){ .spans = lines, .nspans = 20 }, 1);
	flow_add(f, block_space(&b->s, 300, false));
	flow_add(f, grid_end(g));
	struct probe *p = emit(b, f);

	assert_int_equal(p->texts[probe_find(p, "above", 0)].page, 1);
	assert_int_equal(p->texts[probe_find(p, "l0", 0)].page, 2);
	assert_int_equal(flow_pages(f), 2);
}

/* ---- thousands of tables ---- */

static struct block *random_table(struct dice *d, struct setter *s, double width_pt)
{
	struct grid_column c[6];
	struct grid_cell cells[6];
	size_t n = 1 + dice_roll(d, 6), rows = dice_roll(d, 30);

	for (size_t i = 0; i < n; i++)
		c[i] = (struct grid_column){ (enum column_width)dice_roll(d, 3),
			30 + dice_roll(d, 90), (enum align)dice_roll(d, 3) };
	struct grid *g = grid_begin(s, &(struct grid_spec){ .columns = c, .ncolumns = n,
	    .width_pt = width_pt, .type = plain12, .heads = dice_roll(d, 3),
	    .row_min_pt = dice_roll(d, 2) ? GLOVE_PT : 0, .keep_whole = dice_roll(d, 2) });

	for (size_t r = 0; r < rows; r++) {
		for (size_t i = 0; i < n; i++)
			cells[i] = (struct grid_cell){
				.text = dice_text(d, s->arena, dice_roll(d, 8)),
				.columns = dice_roll(d, 10) ? 1 : 2,
				.middle = dice_roll(d, 2),
				.style = dice_roll(d, 4) ? 0 : SPAN_BOLD,
			};
		grid_row(g, cells, n);
	}
	return grid_end(g);
}

static void test_random_tables(void **state)
{
	struct bench *b = *state;
	struct dice d = { 521288629u };

	for (int i = 0; i < 2000; i++) {
		struct bench scratch = { arena_new(NULL, NULL), b->faces, b->s };
		struct flow_spec spec = { .page_width_pt = 612, .page_height_pt = 792,
			.top_pt = 60, .bottom_pt = 50, .inner_pt = 71, .outer_pt = 71 };

		scratch.s.arena = scratch.arena;
		struct flow *f = flow_new(&scratch.s, &spec);
		double w = 280 + dice_roll(&d, 190);

		struct block *t = random_table(&d, &scratch.s, w);

		assert_true(t->width_pt < w + 0.01);
		flow_add(f, block_space(&scratch.s, dice_roll(&d, 600), false));
		flow_add(f, t);
		flow_end(f);
		struct probe *p = probe_new(scratch.arena, b->faces);

		p->sheet = (rect){ 71, 60, 612 - 142, 792 - 110 };
		flow_emit(f, &p->canvas);
		assert_int_equal(p->ntags, 0);
		assert_int_equal(flow_overfull(f), 0);
		assert_int_equal(p->outside_sheet, 0);
		arena_free(scratch.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_natural_fixed_and_shared_columns),
		cmocka_unit_test(test_without_a_share_the_table_is_as_wide_as_its_words),
		cmocka_unit_test(test_narrow_tables_wrap_evenly),
		cmocka_unit_test(test_row_heights),
		cmocka_unit_test(test_cells_over_columns_and_blocks),
		cmocka_unit_test(test_no_rows_and_no_rules),
		cmocka_unit_test(test_head_is_repeated),
		cmocka_unit_test(test_whole_table_moves_on),
		cmocka_unit_test(test_caption_and_head_keep_with_first_row),
		cmocka_unit_test(test_a_long_table_starts_with_two_rows),
		cmocka_unit_test(test_a_long_table_ends_with_two_rows),
		cmocka_unit_test(test_only_a_row_taller_than_a_page_is_cut),
		cmocka_unit_test(test_tall_row_that_fits_is_whole),
		cmocka_unit_test(test_random_tables),
	};

	return cmocka_run_group_tests(tests, set_up, tear_down);
}
