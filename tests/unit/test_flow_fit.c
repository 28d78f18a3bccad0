/* Last pages with little on them: saved where that can be, else given company. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "page/flow.h"
#include "page/grid.h"
#include "page_probe.h"

struct bench {
	struct arena *arena;
	const struct faces *faces;
	struct setter s;
};

/* Lines of 20 points on a body of 200 x 400: twenty lines a page. A last page should hold
 * nine lines of 12 pt at 1.35: 146 pt, so eight of these. */
static const struct type plain = { .size_pt = 12, .lead_pt = 20 };
static const struct flow_spec spec = { .page_width_pt = 300, .page_height_pt = 500,
	.top_pt = 50, .bottom_pt = 50, .inner_pt = 60, .outer_pt = 40, .thrifty = true };

static int set_up(void **state)
{
	static struct bench b;

	b.arena = arena_new(NULL, NULL);
	b.faces = faces_new(b.arena);
	b.s = setter_new(b.arena, b.faces);
	*state = &b;
	return 0;
}

static int tear_down(void **state)
{
	arena_free(((struct bench *)*state)->arena);
	return 0;
}

/* n paragraphs of one line with that much space between them. */
static void add_lines(const struct bench *b, struct flow *f, size_t n, double space_pt)
{
	for (size_t i = 0; i < n; i++) {
		struct block *p = block_plain(&b->s, str_format(b->arena, "line %zu", i), &plain,
		    TAG_P, 200);

		p->before_pt = p->after_pt = space_pt;
		flow_add(f, p);
	}
}

static struct block *table(const struct bench *b, size_t rows)
{
	static const struct grid_column columns[] = { { COLUMN_SHARE, 1, ALIGN_LEFT } };
	struct grid *g = grid_begin(&b->s, &(struct grid_spec){ .columns = columns,
		.ncolumns = 1, .width_pt = 200, .type = plain, .row_min_pt = 20, .heads = 1,
		.keep_whole = true });

	for (size_t i = 0; i <= rows; i++) {
		str text = i ? str_format(b->arena, "row %zu", i) : STR("head");

		grid_row_plain(g, &text, 1);
	}
	return grid_end(g);
}

static struct probe *emit(const struct bench *b, struct flow *f)
{
	struct probe *p = probe_new(b->arena, b->faces);

	flow_end(f);
	flow_emit(f, &p->canvas);
	return p;
}

static unsigned count_on(const struct probe *p, unsigned page)
{
	unsigned n = 0;

	for (size_t i = 0; i < p->ntexts; i++)
		n += p->texts[i].page == page;
	return n;
}

/* Fifteen lines with 8 pt between them are 412 pt; space of 60 percent leaves 367. */
static void less_space_saves_a_page(void **state)
{
	const struct bench *b = *state;
	struct flow_spec usual = spec;
	struct flow *f = flow_new(&b->s, &spec), *g;

	add_lines(b, f, 15, 8);
	assert_int_equal(emit(b, f)->page, 1);
	usual.thrifty = false;
	g = flow_new(&b->s, &usual);
	add_lines(b, g, 15, 8);
	assert_int_equal(emit(b, g)->page, 2);
}

/* Thirty-five lines a page and no space to save: the last line gets company. */
static void a_lonely_line_gets_company(void **state)
{
	const struct bench *b = *state;
	struct flow_spec tall = spec;
	struct flow *f;
	struct probe *p;

	tall.page_height_pt = 800;
	f = flow_new(&b->s, &tall);
	add_lines(b, f, 36, 0);
	p = emit(b, f);
	assert_int_equal(p->page, 2);
	assert_int_equal(count_on(p, 1) + count_on(p, 2), 36);
	assert_true(count_on(p, 2) * 20 >= 9 * 12 * 1.35);
	assert_true((count_on(p, 2) - 2) * 20 < 9 * 12 * 1.35);
}

/* Six lines, then a table of fourteen rows and its head, 360 pt: together more than a page,
 * and two thirds of the first one would be blank. */
static void a_half_blank_page_takes_part_of_a_table(void **state)
{
	const struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &spec);
	struct probe *p;

	add_lines(b, f, 6, 0);
	flow_add(f, table(b, 14));
	p = emit(b, f);
	assert_int_equal(p->page, 2);
	assert_true(count_on(p, 1) > 10);
	/* The head stands on both. */
	assert_int_equal(count_on(p, 1) + count_on(p, 2), 6 + 14 + 2);
}

static void a_table_behind_a_full_page_stays_whole(void **state)
{
	const struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &spec);
	struct probe *p;

	add_lines(b, f, 14, 0);
	flow_add(f, table(b, 9));
	p = emit(b, f);
	assert_int_equal(p->page, 2);
	assert_int_equal(count_on(p, 1), 14);
	assert_int_equal(count_on(p, 2), 10);
}

static void write_name(void *user, struct canvas *c, rect area)
{
	canvas_text(c, (pt){ area.x, area.y + 12 }, FACE_SANS, 12, str_of(user));
}

/* A picture softly kept with the next, and that next one: 150 and 250 pt. */
static void add_pictures(const struct bench *b, struct flow *f)
{
	struct block *first = block_picture(&b->s, write_name, (void *)(uintptr_t) "first",
	    STR("one"), 150, 200);

	first->keep_next = first->keep_soft = true;
	flow_add(f, first);
	flow_add(f, block_picture(&b->s, write_name, (void *)(uintptr_t) "second", STR("two"),
	    250, 200));
}

/* Under two lines they part, else the page would be blank; under ten they stay together. */
static void pictures_part_only_for_a_blank_page(void **state)
{
	const struct bench *b = *state;

	for (int lines = 2; lines <= 10; lines += 8) {
		struct flow *f = flow_new(&b->s, &spec);
		struct probe *p;

		add_lines(b, f, (size_t)lines, 0);
		add_pictures(b, f);
		p = emit(b, f);
		assert_int_equal(p->page, 2);
		assert_int_equal(p->texts[probe_find(p, "first", 0)].page, lines == 2 ? 1 : 2);
		assert_int_equal(p->texts[probe_find(p, "second", 0)].page, 2);
	}
}

/* Pages of n lines and some lines to write on, on leaves printed on one or both sides. */
static unsigned pages_with_lines(const struct bench *b, bool one_sided, size_t n, double space_pt)
{
	struct flow_spec s = spec;
	struct flow *f;

	s.one_sided = one_sided;
	f = flow_new(&b->s, &s);
	add_lines(b, f, n, space_pt);
	flow_add(f, block_ruled(&b->s, GLOVE_PT, true, 200));
	return emit(b, f)->page;
}

/* On leaves printed on both sides the second page is there anyway: with lines to write on
 * it stays; on single sides it is saved. */
static void a_page_to_write_on_stays_where_it_costs_no_leaf(void **state)
{
	assert_int_equal(pages_with_lines(*state, false, 14, 8), 2);
	assert_int_equal(pages_with_lines(*state, true, 14, 8), 1);
}

/* Lines to write on alone are no reason for another leaf: they have what is left, even if
 * that is nothing; where the other side is there anyway, they stand on it. */
static void lines_alone_take_no_leaf(void **state)
{
	assert_int_equal(pages_with_lines(*state, false, 20, 0), 2);
	assert_int_equal(pages_with_lines(*state, true, 20, 0), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(less_space_saves_a_page),
		cmocka_unit_test(a_lonely_line_gets_company),
		cmocka_unit_test(a_half_blank_page_takes_part_of_a_table),
		cmocka_unit_test(a_table_behind_a_full_page_stays_whole),
		cmocka_unit_test(pictures_part_only_for_a_blank_page),
		cmocka_unit_test(lines_alone_take_no_leaf),
		cmocka_unit_test(a_page_to_write_on_stays_where_it_costs_no_leaf),
	};

	return cmocka_run_group_tests(tests, set_up, tear_down);
}
