#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <math.h>
#include <stdlib.h>

#include "page/flow.h"
#include "page_probe.h"

struct bench {
	struct arena *arena;
	const struct faces *faces;
	struct setter s;
};

/* Lines of 20 points on a body of 200 x 200: ten lines a page. */
static const struct type plain = { .size_pt = 12, .lead_pt = 20 };
static const struct flow_spec small = { .page_width_pt = 300, .page_height_pt = 300,
	.top_pt = 50, .bottom_pt = 50, .inner_pt = 60, .outer_pt = 40 };

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

/* A paragraph of n lines: "NAME 0", "NAME 1" and so on. */
static struct block *named(const struct setter *s, const char *name, size_t n, enum tag tag)
{
	struct span *v = arena_array(s->arena, n, sizeof *v);

	for (size_t i = 0; i < n; i++)
		v[i] = (struct span){ str_format(s->arena, "%s %zu", name, i), SPAN_BREAK };
	return block_text(s, v, n, &plain, tag, 200);
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

static unsigned page_of(const struct probe *p, const char *text)
{
	size_t i = probe_find(p, text, 0);

	assert_true(i < p->ntexts);
	assert_int_equal(probe_find(p, text, i + 1), p->ntexts);
	return p->texts[i].page;
}

static void test_nothing(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);

	flow_add(f, block_plain(&b->s, STR(""), &plain, TAG_P, 200));
	flow_mark(f, STR("lost"), STR(""), 0);
	struct probe *p = emit(b, f);

	assert_int_equal(flow_pages(f), 0);
	assert_int_equal(p->ntexts, 0);
	assert_int_equal(flow_page_of(f, STR("lost")), 0);
}

static void test_ten_lines_a_page(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);

	flow_add(f, named(&b->s, "a", 25, TAG_P));
	struct probe *p = emit(b, f);

	assert_int_equal(flow_pages(f), 3);
	assert_int_equal(page_of(p, "a 9"), 1);
	assert_int_equal(page_of(p, "a 10"), 2);
	assert_int_equal(page_of(p, "a 20"), 3);
	/* One paragraph to those who hear it, though it stands on three pages. */
	assert_int_equal(p->tag_count[TAG_P], 1);
	/* Bound at the left on page 1, at the right on page 2. */
	assert_near(p->texts[0].x, 60);
	assert_near(p->texts[10].x, 40);
}

/* 11 lines: the last does not stand alone on page 2. */
static void test_no_widow(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);

	flow_add(f, named(&b->s, "a", 11, TAG_P));
	struct probe *p = emit(b, f);

	assert_int_equal(page_of(p, "a 8"), 1);
	assert_int_equal(page_of(p, "a 9"), 2);
}

/* 9 lines, then a paragraph: its first line does not stand alone on page 1. With 8 lines
 * two of it may stay. Three lines are never torn. */
static void test_no_orphan(void **state)
{
	struct bench *b = *state;

	for (size_t n = 8; n <= 9; n++) {
		struct flow *f = flow_new(&b->s, &small);

		flow_add(f, named(&b->s, "a", n, TAG_P));
		flow_add(f, named(&b->s, "b", 5, TAG_P));
		assert_int_equal(page_of(emit(b, f), "b 1"), n == 8 ? 1 : 2);
		f = flow_new(&b->s, &small);
		flow_add(f, named(&b->s, "a", n, TAG_P));
		flow_add(f, named(&b->s, "b", 3, TAG_P));
		assert_int_equal(page_of(emit(b, f), "b 0"), 2);
	}
}

static void test_heading_keeps_with_two_lines(void **state)
{
	struct bench *b = *state;

	for (size_t n = 7; n <= 9; n++) {
		struct flow *f = flow_new(&b->s, &small);

		flow_add(f, named(&b->s, "a", n, TAG_P));
		flow_add(f, named(&b->s, "h", 1, TAG_H2));
		flow_add(f, named(&b->s, "b", 5, TAG_P));
		struct probe *p = emit(b, f);

		assert_int_equal(page_of(p, "h 0"), n == 7 ? 1 : 2);
		assert_int_equal(page_of(p, "b 1"), n == 7 ? 1 : 2);
		assert_int_equal(p->tag_count[TAG_H2], 1);
	}
}

/* Headings all the way: a page must end somewhere. */
static void test_too_much_to_keep(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);

	for (int i = 0; i < 15; i++)
		flow_add(f, named(&b->s, "h", 1, TAG_H1));
	assert_int_equal(emit(b, f)->page, 2);
	f = flow_new(&b->s, &small);
	flow_add(f, block_space(&b->s, 150, false));
	flow_add(f, block_space(&b->s, 500, false));
	flow_add(f, named(&b->s, "a", 1, TAG_P));
	assert_int_equal(page_of(emit(b, f), "a 0"), 3);
	assert_int_equal(flow_overfull(f), 1);
}

static void test_space_between_and_at_top(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);
	struct block *v[3] = { named(&b->s, "a", 1, TAG_P), named(&b->s, "b", 1, TAG_P),
		named(&b->s, "c", 2, TAG_P) };

	v[0]->before_pt = 30;
	v[0]->after_pt = 10;
	v[1]->before_pt = 25;
	v[1]->after_pt = 5;
	v[2]->before_pt = 100;
	flow_add_all(f, v, 3);
	struct probe *p = emit(b, f);
	double rise = p->texts[0].y - 50;

	assert_true(rise > 0 && rise < 20);
	assert_near(p->texts[1].y, 50 + 20 + 25 + rise);
	/* 65 + 100 + 40 is more than 200: page 2, and no space there. */
	assert_int_equal(p->texts[2].page, 2);
	assert_near(p->texts[2].y, 50 + rise);
}

static void note_page(void *user, struct canvas *c, const struct page_place *place)
{
	struct bench *b = user;

	canvas_text(c, (pt){ 10, 20 }, FACE_SANS, 12, str_format(b->arena,
	    "%.*s %u/%u %u/%u %s%s", STR_ARG(place->section_id), place->section_page,
	    place->section_pages, place->page, place->pages,
	    place->right_hand ? "right" : "left", place->blank ? " blank" : ""));
}

static struct flow *two_sections(struct bench *b)
{
	struct flow_spec spec = small;

	spec.furniture = note_page;
	spec.user = b;
	struct flow *f = flow_new(&b->s, &spec);

	flow_section(f, STR("SM-04"), START_RIGHT);
	flow_add(f, named(&b->s, "a", 25, TAG_P));
	flow_section(f, STR("SM-05"), START_RIGHT);
	flow_mark(f, STR("steps"), STR("Steps"), 1);
	flow_add(f, named(&b->s, "b", 2, TAG_P));
	flow_break(f, START_PAGE);
	flow_add(f, named(&b->s, "c", 2, TAG_P));
	return f;
}

static void test_sections_start_on_the_right(void **state)
{
	struct bench *b = *state;
	struct flow *f = two_sections(b);
	struct probe *p = emit(b, f);
	unsigned first, last;

	assert_int_equal(flow_pages(f), 6);
	assert_int_equal(page_of(p, "SM-04 1/3 1/6 right"), 1);
	assert_int_equal(page_of(p, "SM-04 3/3 3/6 right"), 3);
	assert_int_equal(page_of(p, "SM-04 0/3 4/6 left blank"), 4);
	assert_int_equal(page_of(p, "This page is left blank on purpose"), 4);
	assert_int_equal(page_of(p, "SM-05 1/2 5/6 right"), 5);
	assert_int_equal(page_of(p, "SM-05 2/2 6/6 left"), 6);
	assert_int_equal(page_of(p, "b 0"), 5);
	assert_int_equal(page_of(p, "c 0"), 6);
	flow_section_pages(f, 0, &first, &last);
	assert_int_equal(first * 10 + last, 13);
	flow_section_pages(f, 1, &first, &last);
	assert_int_equal(first * 10 + last, 56);
	assert_int_equal(flow_page_of(f, STR("SM-05")), 5);
	assert_int_equal(flow_page_of(f, STR("steps")), 5);
	assert_int_equal(flow_page_of(f, STR("SM-06")), 0);
	assert_int_equal(p->ndests, 3);
	assert_int_equal(p->dest_pages[2], 5);
	assert_int_equal(p->tag_count[TAG_SECTION], 2);
}

static void test_break_to_the_right_at_the_end(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);

	flow_break(f, START_RIGHT);
	flow_break(f, START_PAGE);
	flow_add(f, named(&b->s, "a", 1, TAG_P));
	flow_break(f, START_PAGE);
	flow_break(f, START_PAGE);
	flow_break(f, START_RIGHT);
	flow_break(f, START_RIGHT);
	emit(b, f);
	assert_int_equal(flow_pages(f), 2);
}

/* The same section drawn alone shows the same texts at the same places, wherever it
 * stands, without furniture. */
static void test_section_alone(void **state)
{
	struct bench *b = *state;
	struct flow *f = two_sections(b), *g = flow_new(&b->s, &small);
	struct probe *p = probe_new(b->arena, b->faces), *q = probe_new(b->arena, b->faces);

	flow_section(g, STR("SM-05"), START_RIGHT);
	flow_add(g, named(&b->s, "b", 2, TAG_P));
	flow_break(g, START_PAGE);
	flow_add(g, named(&b->s, "c", 2, TAG_P));
	flow_end(f);
	flow_end(g);
	flow_emit_section(f, 1, &p->canvas);
	flow_emit(g, &q->canvas);
	assert_int_equal(p->ntexts, 4);
	assert_int_equal(q->ntexts, 4);
	assert_int_equal(p->page, 2);
	assert_int_equal(p->ndests, 0);
	assert_int_equal(p->ntags, 0);
	for (size_t i = 0; i < 4; i++) {
		assert_true(str_eq(p->texts[i].text, q->texts[i].text));
		assert_int_equal(p->texts[i].page, q->texts[i].page);
		assert_near(p->texts[i].x, q->texts[i].x);
		assert_near(p->texts[i].y, q->texts[i].y);
	}
	p = probe_new(b->arena, b->faces);
	flow_emit_section(f, 0, &p->canvas);
	assert_int_equal(p->ntexts, 25);
	assert_int_equal(p->page, 3);
}

/* A section that starts on a left-hand page is shown as if it began on page 1. */
static void test_section_from_the_left(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);
	struct probe *p = probe_new(b->arena, b->faces);

	flow_add(f, named(&b->s, "a", 1, TAG_P));
	flow_section(f, STR("s"), START_PAGE);
	flow_add(f, named(&b->s, "b", 12, TAG_P));
	flow_end(f);
	flow_emit(f, &p->canvas);
	assert_near(p->texts[1].x, 40);
	p = probe_new(b->arena, b->faces);
	flow_emit_section(f, 0, &p->canvas);
	assert_near(p->texts[0].x, 60);
	assert_near(p->texts[11].x, 40);
}

/* A section that starts in the middle of a page is shown without what is above it. */
static void test_section_within_a_page(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);
	struct probe *p = probe_new(b->arena, b->faces);

	for (int i = 0; i < 3; i++) {
		flow_section(f, str_format(b->arena, "s%d", i), START_HERE);
		flow_add(f, named(&b->s, "x", (size_t)i + 2, TAG_P));
	}
	flow_end(f);
	flow_emit_section(f, 1, &p->canvas);
	assert_int_equal(p->ntexts, 3);
	assert_int_equal(p->page, 1);
}

static unsigned elsewhere(const void *user, str place)
{
	(void)user;
	return str_eq(place, STR("packet SM-04")) ? 12 : 0;
}

static void test_page_references(void **state)
{
	struct bench *b = *state;
	struct flow_spec spec = small;

	spec.page_elsewhere = elsewhere;
	struct flow *f = flow_new(&b->s, &spec);
	struct span refs[3] = { { STR("last"), SPAN_PAGE_REF },
		{ STR("packet SM-04"), SPAN_PAGE_REF }, { STR("nowhere"), SPAN_PAGE_REF } };

	flow_add(f, block_text(&b->s, refs, 3, &plain, TAG_P, 200));
	flow_add(f, named(&b->s, "a", 30, TAG_P));
	flow_break(f, START_PAGE);
	flow_mark(f, STR("last"), STR(""), 0);
	flow_add(f, named(&b->s, "z", 1, TAG_P));
	flow_mark(f, STR("last"), STR(""), 0);
	struct probe *p = emit(b, f);

	assert_int_equal(page_of(p, "z 0"), 5);
	assert_true(str_eq(p->texts[0].text, STR("5")));
	assert_true(str_eq(p->texts[1].text, STR("12")));
	assert_true(str_eq(p->texts[2].text, STR("?")));
	assert_true(p->texts[0].fleeting);
	/* Only what is in this document is linked; a name has one place. */
	assert_int_equal(p->nlinks, 1);
	assert_int_equal(p->ndests, 1);
	/* Alone, a section knows no pages, so that its content does not depend on them. */
	assert_int_equal(flow_page_of(f, STR("last")), 5);
}

static void test_filling(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);

	flow_add(f, named(&b->s, "a", 2, TAG_P));
	flow_add(f, block_ruled(&b->s, GLOVE_PT, true, 200));
	flow_add(f, named(&b->s, "foot", 1, TAG_P));
	struct probe *p = emit(b, f);

	assert_int_equal(flow_pages(f), 1);
	assert_near(p->texts[2].y - p->texts[0].y, 180);
	/* 140 points hold four lines 10 mm (28.35 pt) apart. */
	assert_int_equal(p->npaths, 4);
	f = flow_new(&b->s, &small);
	flow_add(f, named(&b->s, "a", 9, TAG_P));
	flow_add(f, block_ruled(&b->s, GLOVE_PT, true, 200));
	p = emit(b, f);
	assert_int_equal(flow_pages(f), 2);
	assert_int_equal(p->npaths, 7);
}

static void draw_cross(void *user, struct canvas *c, rect area)
{
	(*(unsigned *)user)++;
	canvas_line(c, (pt){ area.x, area.y }, (pt){ area.x + area.w, area.y + area.h }, 1);
	canvas_text(c, (pt){ area.x + 10, area.y + 20 }, FACE_SANS, 10, STR("+"));
}

static void test_columns_are_whole_and_independent(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);
	unsigned worked_out = 0;
	struct block *left = block_picture(&b->s, draw_cross, &worked_out, STR("a cross"), 100, 90);
	struct block *right[2] = { block_plain(&b->s, STR("one"), &plain, TAG_P, 100),
		block_plain(&b->s, STR("two"), &plain, TAG_P, 100) };
	struct block_column v[2] = { { &left, 1, 90 }, { right, 2, 100 } };

	right[1]->before_pt = 7;
	flow_add(f, named(&b->s, "a", 6, TAG_P));
	flow_add(f, block_columns(&b->s, v, 2, 10));
	flow_add(f, named(&b->s, "z", 1, TAG_P));
	struct probe *p = emit(b, f);

	p = emit(b, f);
	assert_int_equal(worked_out, 1); /* And drawn twice. */
	assert_int_equal(page_of(p, "one"), 2);
	assert_near(p->texts[6].x, 40 + 10);
	assert_near(p->texts[6].y, 50 + 20);
	assert_near(p->texts[7].x, 140);
	assert_near(p->texts[8].y - p->texts[7].y, 27);
	assert_near(p->texts[9].y - p->texts[7].y, 100);
	assert_int_equal(p->tag_count[TAG_FIGURE], 1);
}

static void test_frame_is_cut_only_when_taller_than_a_page(void **state)
{
	struct bench *b = *state;

	for (size_t n = 9; n <= 10; n++) {
		struct flow *f = flow_new(&b->s, &small);
		struct block *in = named(&b->s, "a", n, TAG_P);

		flow_add(f, named(&b->s, "top", 2, TAG_P));
		flow_add(f, block_frame(&b->s, &in, 1, 4, 1, 210));
		struct probe *p = emit(b, f);

		/* Nine lines and 10 points fit on page 2; ten do not fit on any page. */
		assert_int_equal(flow_pages(f), 2);
		assert_int_equal(page_of(p, "a 0"), n == 9 ? 2 : 1);
		assert_near(p->texts[2].x, n == 9 ? 45 : 65);
		assert_int_equal(flow_overfull(f), 0);
		assert_int_equal(p->tag_count[TAG_P], 2);
	}
}

static void test_items_share_a_list(void **state)
{
	struct bench *b = *state;
	struct flow *f = flow_new(&b->s, &small);
	struct span text = { .text = STR("Grind the scale back one inch, both pieces") };
	struct side_box box = { MM_PT(20), GLOVE_PT, STR("Init.") };
	struct item_spec spec[3] = { { .mark = MARK_NUMBER, .number = 1 },
		{ .mark = MARK_NUMBER, .number = 12, .boxes = &box, .nboxes = 1 },
		{ .mark = MARK_BULLET } };

	for (int i = 0; i < 3; i++)
		flow_add(f, block_item(&b->s, &spec[i], &text, 1, &plain, 200));
	flow_add(f, named(&b->s, "a", 1, TAG_P));
	flow_add(f, block_item(&b->s, &spec[2], &text, 1, &plain, 200));
	struct probe *p = emit(b, f);

	assert_int_equal(p->tag_count[TAG_LIST], 2);
	assert_int_equal(p->tag_count[TAG_ITEM], 4);
	assert_true(str_eq(p->texts[0].text, STR("1.")));
	assert_near(p->texts[1].x, 60 + 24);
	assert_near(p->texts[2].x, 60 + 24);
	assert_int_equal(page_of(p, "12."), 1);
	size_t caption = probe_find(p, "Init.", 0);
	assert_near(p->texts[caption].x + p->texts[caption].w, 60 + 200 - MM_PT(20) - 6);
}

static void test_prose(void **state)
{
	struct bench *b = *state;
	struct span text = { .text = STR("words") };
	struct para v[4] = { { .kind = PARA_TEXT, .spans = &text, .nspans = 1 },
		{ .kind = PARA_STEP, .number = 3, .spans = &text, .nspans = 1 },
		{ .kind = PARA_SUBBULLET, .spans = &text, .nspans = 1 },
		{ .kind = PARA_BULLET, .spans = &text, .nspans = 1 } };
	struct prose prose = { v, 4 };
	struct flow *f = flow_new(&b->s, &small);

	flow_add_all(f, block_prose(&b->s, &prose, &plain, 5, 200), 4);
	struct probe *p = emit(b, f);

	assert_int_equal(p->ntexts, 5);
	assert_true(str_eq(p->texts[1].text, STR("3.")));
	assert_near(p->texts[2].y - p->texts[0].y, 25);
	assert_near(p->texts[3].x, 60 + 24 + 18);
	assert_near(p->texts[4].x, 60 + 18);
	assert_int_equal(p->npaths, 2);
}

static void test_blanks(void **state)
{
	struct bench *b = *state;
	struct blank v[3] = { { STR("Booth"), STR(""), 50 }, { STR("Amps"), STR("A"), 0 },
		{ STR("A label that is much too long for the row it is meant for"), STR(""), 0 } };
	struct block *t = block_blanks(&b->s, v, 3, &plain, 0, 250);
	struct flow *f = flow_new(&b->s, &small);

	flow_add(f, t);
	struct probe *p = emit(b, f);

	assert_int_equal(page_of(p, "Booth"), 1);
	/* The blank without a width of its own takes the rest of its row. */
	size_t unit = probe_find(p, "A", 0);
	assert_near(p->texts[unit].x + p->texts[unit].w, 60 + 250);
	assert_true(t->height_pt > 2 * GLOVE_PT);
	assert_int_equal(p->npaths, 3);
	assert_int_equal(block_blanks(&b->s, v, 0, &plain, 0, 250)->height_pt, 0);
}

/* ---- thousands of blocks ---- */

static struct block *random_block(struct dice *d, struct setter *s, double w)
{
	struct span v[3];
	struct side_box box = { 60, GLOVE_PT, STR("Initials") };
	struct item_spec spec = { .number = dice_roll(d, 200), .boxes = &box };
	struct block *in[2];
	enum tag tag = dice_roll(d, 4) ? TAG_P : TAG_H2;

	for (int i = 0; i < 3; i++)
		v[i] = (struct span){ dice_text(d, s->arena, dice_roll(d, 40)),
			dice_roll(d, 16) };
	switch (dice_roll(d, 5)) {
	case 0:
		spec.mark = (enum item_mark)dice_roll(d, 4);
		spec.nboxes = dice_roll(d, 2);
		return block_item(s, &spec, v, 3, &plain, w);
	case 1:
		in[0] = block_text(s, v, 1 + dice_roll(d, 3), &plain, tag, w - 10);
		in[1] = block_text(s, v, 1, &plain, TAG_P, w - 10);
		return block_frame(s, in, 2, 4, 1, w);
	case 2:
		return block_check(s, v[0].text, &plain, w);
	default:
		return block_text(s, v, 1 + dice_roll(d, 3), &plain, tag, w);
	}
}

static void random_flow(struct bench *b, struct dice *d, struct setter *s)
{
	struct flow_spec spec = { .page_width_pt = A4_WIDTH_PT,
		.page_height_pt = A4_HEIGHT_PT, .top_pt = 60, .bottom_pt = 60,
		.inner_pt = MM_PT(25), .outer_pt = MM_PT(25) };
	struct flow *f = flow_new(s, &spec);
	struct probe *p = probe_new(s->arena, b->faces);
	size_t lines = 0;

	for (int i = 0; i < 25; i++) {
		struct block *block = random_block(d, s, flow_width_pt(f));

		block->before_pt = dice_roll(d, 20);
		block->after_pt = dice_roll(d, 20);
		lines += block->nstrips;
		if (dice_roll(d, 12) == 0)
			flow_section(f, STR("s"), (enum flow_start)dice_roll(d, 3));
		flow_add(f, block);
	}
	flow_end(f);
	p->sheet = (rect){ MM_PT(25), 60, MM_PT(160), A4_HEIGHT_PT - 120 };
	flow_emit(f, &p->canvas);
	assert_int_equal(p->ntags, 0);
	assert_int_equal(p->outside_box, 0);
	if (flow_overfull(f) == 0)
		assert_int_equal(p->outside_sheet, 0);
	assert_true(flow_pages(f) > 0 && flow_pages(f) <= lines * 2 + 12);
	for (size_t i = 1; i < p->ntexts; i++)
		assert_true(p->texts[i].page >= p->texts[i - 1].page);
}

static void test_random_flows(void **state)
{
	struct bench *b = *state;
	struct dice d = { 362436069u };

	for (int i = 0; i < 1000; i++) {
		struct setter s = b->s;

		s.arena = arena_new(NULL, NULL);
		random_flow(b, &d, &s);
		arena_free(s.arena);
	}
}

/* Paragraphs and headings of random height: no heading last on a page, two lines of a
 * paragraph at least on each page that has some of it, nothing lost, nothing twice. */
static void check_random_breaks(struct bench *b, struct dice *d, struct setter *s)
{
	struct flow *f = flow_new(s, &small);
	struct probe *p = probe_new(s->arena, b->faces);
	size_t heights[40], at = 0;
	bool heading[40];

	for (size_t i = 0; i < 40; i++) {
		heading[i] = i < 39 && (i == 0 || !heading[i - 1]) && dice_roll(d, 3) == 0;
		heights[i] = 1 + (heading[i] ? 0 : dice_roll(d, 14));
		flow_add(f, named(s, "x", heights[i], heading[i] ? TAG_H2 : TAG_P));
	}
	flow_end(f);
	flow_emit(f, &p->canvas);
	for (size_t i = 0; i < 40; at += heights[i++]) {
		size_t end = at + heights[i];

		assert_true(end <= p->ntexts);
		if (heading[i])
			assert_int_equal(p->texts[at].page, p->texts[end].page);
		for (size_t k = at; k < end; k++) {
			unsigned page = p->texts[k].page;

			assert_true(heights[i] == 1 ||
			    (k > at && p->texts[k - 1].page == page) ||
			    (k + 1 < end && p->texts[k + 1].page == page));
		}
	}
	assert_int_equal(at, p->ntexts);
}

static void test_random_breaks(void **state)
{
	struct bench *b = *state;
	struct dice d = { 123456789u };

	for (int i = 0; i < 500; i++) {
		struct setter s = b->s;

		s.arena = arena_new(NULL, NULL);
		check_random_breaks(b, &d, &s);
		arena_free(s.arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_nothing),
		cmocka_unit_test(test_ten_lines_a_page),
		cmocka_unit_test(test_no_widow),
		cmocka_unit_test(test_no_orphan),
		cmocka_unit_test(test_heading_keeps_with_two_lines),
		cmocka_unit_test(test_too_much_to_keep),
		cmocka_unit_test(test_space_between_and_at_top),
		cmocka_unit_test(test_sections_start_on_the_right),
		cmocka_unit_test(test_break_to_the_right_at_the_end),
		cmocka_unit_test(test_section_alone),
		cmocka_unit_test(test_section_from_the_left),
		cmocka_unit_test(test_section_within_a_page),
		cmocka_unit_test(test_page_references),
		cmocka_unit_test(test_filling),
		cmocka_unit_test(test_columns_are_whole_and_independent),
		cmocka_unit_test(test_frame_is_cut_only_when_taller_than_a_page),
		cmocka_unit_test(test_items_share_a_list),
		cmocka_unit_test(test_prose),
		cmocka_unit_test(test_blanks),
		cmocka_unit_test(test_random_flows),
		cmocka_unit_test(test_random_breaks),
	};

	return cmocka_run_group_tests(tests, set_up, tear_down);
}
