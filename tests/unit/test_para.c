#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdlib.h>
#include <string.h>

#include "page/block.h"
#include "page_probe.h"

/* Widths are checked with face_width_pt, which para does not use. */

struct bench {
	struct arena *arena;
	const struct faces *faces;
	struct setter s;
};

static const struct type plain12 = { .size_pt = 12 };

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

static double width(const struct bench *b, const char *text)
{
	return face_width_pt(b->faces, FACE_SANS, 12, str_of(text));
}

/* All lines as text, '|' between lines. */
static const char *joined(struct bench *b, const struct lines *l)
{
	struct buf out = { .arena = b->arena };

	for (size_t i = 0; i < l->n; i++) {
		if (i)
			buf_addc(&out, '|');
		for (uint32_t r = l->v[i].first_run; r < l->v[i + 1].first_run; r++)
			buf_add(&out, l->runs[r].text);
	}
	return buf_z(&out);
}

static const char *broken(struct bench *b, const char *text, double width_pt)
{
	return joined(b, para_break_plain(&b->s, str_of(text), &plain12, width_pt));
}

static void test_breaks_at_blanks(void **state)
{
	struct bench *b = *state;
	const char *text = "Grind the mill scale back from the joint";
	double w = width(b, "scale back from");

	assert_string_equal(broken(b, text, w), "Grind the mill|scale back from|the joint");
	assert_string_equal(broken(b, text, w - 0.02),
	    "Grind the mill|scale back|from the joint");
	assert_string_equal(broken(b, text, 1000), text);
}

static void test_trailing_blanks_do_not_count(void **state)
{
	struct bench *b = *state;
	const struct lines *l =
	    para_break_plain(&b->s, STR("  two words \n\t "), &plain12, width(b, "two words"));

	assert_int_equal(l->n, 1);
	assert_string_equal(joined(b, l), "two words");
	assert_true(para_width_pt(l) - width(b, "two words") < 1e-9);
	assert_string_equal(broken(b, "one  two", width(b, "two")), "one|two");
}

static void test_signs_inside_long_words(void **state)
{
	struct bench *b = *state;

	assert_string_equal(broken(b, "use a low-hydrogen rod", width(b, "use a low-")),
	    "use a low-|hydrogen|rod");
	assert_string_equal(broken(b, "set to carbon/manganese", width(b, "set to carbon/")),
	    "set to carbon/|manganese");
	assert_string_equal(broken(b, "gap fit-up", width(b, "gap fit-")), "gap|fit-up");
	assert_string_equal(broken(b, "leg 11-1/2", width(b, "leg 11-1/")), "leg|11-1/2");
	assert_string_equal(broken(b, "see SM-20", width(b, "see SM-")), "see|SM-20");
}

static void test_no_break_space_holds(void **state)
{
	struct bench *b = *state;

	assert_string_equal(broken(b, "gap 3/8\xc2\xa0in", width(b, "gap 3/8\xc2\xa0")),
	    "gap|3/8\xc2\xa0in");
}

static void test_huge_word_and_no_width(void **state)
{
	struct bench *b = *state;

	assert_string_equal(broken(b, "aaaaaaaa", width(b, "aaa")), "aaa|aaa|aa");
	assert_string_equal(broken(b, "x aaaaaaaa", width(b, "aaa")), "x|aaa|aaa|aa");
	assert_string_equal(broken(b, "ab\xc3\xb1", 0), "a|b|\xc3\xb1");
	assert_string_equal(broken(b, "ab c", -5), "a|b|c");
}

static void test_no_text_no_lines(void **state)
{
	struct bench *b = *state;
	struct span empty[2] = { { STR(""), 0 }, { STR("  "), SPAN_BOLD } };

	assert_int_equal(para_break(&b->s, NULL, 0, &plain12, 100)->n, 0);
	assert_int_equal(para_break_plain(&b->s, STR(" \n "), &plain12, 100)->n, 0);
	assert_int_equal(para_break(&b->s, empty, 1, &plain12, 100)->n, 0);
	assert_true(para_height_pt(para_break(&b->s, empty, 1, &plain12, 100)) < 1e-9);
}

static void test_short_last_word_gets_company(void **state)
{
	struct bench *b = *state;
	double w = width(b, "check the gap with care");

	/* Greedy would leave "now" alone. */
	assert_string_equal(broken(b, "check the gap with care now", w),
	    "check the gap with|care now");
	/* A long word may stand alone, and two words above are not torn apart. */
	assert_string_equal(broken(b, "check the gap with care tonight", w),
	    "check the gap with care|tonight");
	assert_string_equal(broken(b, "check now it", width(b, "check now")), "check now|it");
}

static void test_forced_breaks(void **state)
{
	struct bench *b = *state;
	struct span v[4] = { { STR("one "), SPAN_BREAK }, { STR(" two"), SPAN_BREAK },
		{ STR(""), SPAN_BREAK }, { STR("three"), SPAN_BREAK | SPAN_BOLD } };
	const struct lines *l = para_break(&b->s, v, 4, &plain12, 500);

	assert_string_equal(joined(b, l), "one|two||three");
	assert_true(l->v[0].width_mils * 12 / 1000.0 - width(b, "one") < 0.013);
}

static void test_styles_and_runs(void **state)
{
	struct bench *b = *state;
	struct span v[5] = { { STR("Stop, "), SPAN_BOLD }, { STR("fit-up: "), SPAN_BOLD },
		{ STR("gap "), 0 }, { STR("and"), SPAN_CODE | SPAN_BOLD },
		{ STR(" leg"), SPAN_ITALIC } };
	const struct lines *l = para_break(&b->s, v, 5, &plain12, 500);

	assert_int_equal(l->n, 1);
	assert_int_equal(l->v[1].first_run, 4);
	assert_string_equal(joined(b, l), "Stop, fit-up: gap and leg");
	assert_int_equal(l->runs[0].face, FACE_SANS_BOLD);
	assert_int_equal(l->runs[1].face, FACE_SANS);
	assert_int_equal(l->runs[2].face, FACE_MONO_BOLD);
	assert_int_equal(l->runs[3].face, FACE_SANS_ITALIC);

	double sum = face_width_pt(b->faces, FACE_SANS_BOLD, 12, STR("Stop, fit-up: ")) +
	    face_width_pt(b->faces, FACE_SANS, 12, STR("gap ")) +
	    face_width_pt(b->faces, FACE_MONO_BOLD, 12, STR("and")) +
	    face_width_pt(b->faces, FACE_SANS_ITALIC, 12, STR(" leg"));
	assert_true(para_width_pt(l) - sum < 1e-9 && sum - para_width_pt(l) < 1e-9);
}

/* A word that changes its look halfway breaks nowhere. */
static void test_word_across_spans(void **state)
{
	struct bench *b = *state;
	struct span v[3] = { { STR("run be"), 0 }, { STR("ve"), SPAN_BOLD }, { STR("l now"), 0 } };
	double w = width(b, "run beve");

	assert_string_equal(joined(b, para_break(&b->s, v, 3, &plain12, w)),
	    "run|bevel|now");
}

static void test_widths(void **state)
{
	struct bench *b = *state;
	struct span v[2] = { { STR("low-hydrogen rod "), 0 }, { STR("dry"), SPAN_BREAK } };
	struct text_widths w = para_widths(&b->s, v, 2, &plain12);

	assert_true(w.natural_pt - width(b, "low-hydrogen rod") < 1e-9);
	assert_true(width(b, "low-hydrogen rod") - w.natural_pt < 1e-9);
	assert_true(w.least_pt - width(b, "hydrogen") < 1e-9);
	assert_true(width(b, "hydrogen") - w.least_pt < 1e-9);
	assert_string_equal(joined(b, para_break(&b->s, v, 2, &plain12, w.natural_pt)),
	    "low-hydrogen rod|dry");
}

static unsigned page_seven(const void *user, str place)
{
	(void)user;
	return str_eq(place, STR("SM-04")) ? 7 : 0;
}

static bool always(const void *user, str place)
{
	(void)user, (void)place;
	return true;
}

/* Words of the other language are one element, however many lines they take; a paragraph
 * that is all of them is told on its own element. */
static void test_other_language(void **state)
{
	struct bench *b = *state;
	struct span v[3] = { { STR("ancho de"), 0 },
		{ STR(" the pattern plate and the gouging plate"), SPAN_OTHER }, { STR(" aquí"), 0 } };
	const struct lines *mixed = para_break(&b->s, v, 3, &plain12, 90);
	const struct lines *whole = para_break(&b->s, &v[1], 1, &plain12, 90);
	struct probe *p = probe_new(b->arena, b->faces);
	struct pen pen = { .canvas = &p->canvas }, in;

	assert_true(mixed->n > 2 && !mixed->other && whole->other);
	canvas_page_begin(&p->canvas, 612, 792);
	para_draw(mixed, &pen, (pt){ 10, 10 });
	assert_int_equal(p->tag_count[TAG_SPAN], 1);
	in = para_tag_begin(whole, &pen, TAG_P, true);
	para_draw(whole, &in, (pt){ 10, 100 });
	canvas_tag_end(&p->canvas);
	canvas_page_end(&p->canvas);
	assert_int_equal(p->tag_count[TAG_SPAN], 1);
	assert_int_equal(p->canvas.tags, 0);
}

static void test_page_reference_closes_up(void **state)
{
	struct bench *b = *state;
	struct span v[3] = { { STR("see page "), 0 }, { STR("SM-04"), SPAN_PAGE_REF },
		{ STR(", then"), 0 } };
	const struct lines *l = para_break(&b->s, v, 3, &plain12, 300);
	struct probe *p = probe_new(b->arena, b->faces);
	struct pen pen = { .canvas = &p->canvas, .page_of = page_seven, .is_here = always };

	canvas_page_begin(&p->canvas, 612, 792);
	para_draw(l, &pen, (pt){ 10, 10 });
	canvas_page_end(&p->canvas);
	assert_int_equal(p->ntexts, 3);
	assert_true(str_eq(p->texts[1].text, STR("7")));
	assert_true(p->texts[1].fleeting && !p->texts[2].fleeting);
	double after = 10 + width(b, "see page ") + width(b, "7");
	assert_true(p->texts[2].x - after < 1e-9 && after - p->texts[2].x < 1e-9);
	assert_int_equal(p->nlinks, 1);
	assert_true(para_width_pt(l) > width(b, "see page 777, then"));
}

static void test_alignment(void **state)
{
	struct bench *b = *state;
	struct type t = plain12;
	double w = width(b, "leg"), x[3];

	for (int i = 0; i < 3; i++) {
		struct probe *p = probe_new(b->arena, b->faces);

		t.align = (enum align)i;
		canvas_page_begin(&p->canvas, 612, 792);
		para_draw(para_break_plain(&b->s, STR("leg"), &t, 100),
		    &(struct pen){ .canvas = &p->canvas }, (pt){ 50, 0 });
		canvas_page_end(&p->canvas);
		x[i] = p->texts[0].x;
	}
	assert_true(x[ALIGN_LEFT] > 49.999 && x[ALIGN_LEFT] < 50.001);
	assert_true(x[ALIGN_CENTER] > 99.999 - w / 2 && x[ALIGN_CENTER] < 100.001 - w / 2);
	assert_true(x[ALIGN_RIGHT] > 149.999 - w && x[ALIGN_RIGHT] < 150.001 - w);
}

/* ---- thousands of paragraphs ---- */

static str line_text(const struct lines *l, size_t i, struct arena *a)
{
	struct buf b = { .arena = a };

	for (uint32_t r = l->v[i].first_run; r < l->v[i + 1].first_run; r++)
		buf_add(&b, l->runs[r].text);
	return buf_str(&b);
}

/* A line that ends inside a word ends after a sign between letters, or is part of a word
 * that is wider than a line. */
static void check_line_end(str line, str text, size_t next)
{
	char last = line.p[line.n - 1];

	if (next == text.n || text.p[next] == ' ')
		return;
	if (str_find_char(line, ' ', 0) == line.n)
		return;
	assert_true(last == '-' || last == '/');
	assert_true(strchr("0123456789-/ ", text.p[next]) == NULL);
	assert_true(strchr("0123456789-/ ", line.p[line.n - 2]) == NULL);
}

/* Each line is a stretch of the text in order, only blanks are lost between lines, and
 * no line could have taken the next word as well (but for the last two). */
static void check_lines(struct bench *b, struct arena *a, const struct lines *l, str text,
    double w)
{
	size_t at = 0;

	for (size_t i = 0; i < l->n; i++) {
		str line = line_text(l, i, a);
		double wide = face_width_pt(b->faces, FACE_SANS, 12, line);

		while (at < text.n && text.p[at] == ' ')
			at++;
		assert_true(line.n > 0 && at + line.n <= text.n);
		assert_memory_equal(line.p, text.p + at, line.n);
		assert_true(wide <= w + 1e-6 || str_chars(line) == 1);
		assert_true(line.p[line.n - 1] != ' ');
		assert_int_equal(l->v[i].width_mils, (uint32_t)(wide * 1000 / 12 + 0.5));
		size_t next = at + line.n;

		check_line_end(line, text, next);
		if (i + 2 < l->n && next < text.n) {
			size_t word = text.p[next] == ' ' ? next + 1 : next;
			str more = { text.p + at, str_find_char(text, ' ', word) - at };

			assert_true(face_width_pt(b->faces, FACE_SANS, 12, more) > w);
		}
		at = next;
	}
	assert_int_equal(at, text.n);
}

static void test_random_paragraphs(void **state)
{
	struct bench *b = *state;
	struct dice d = { 2463534242u };

	for (int i = 0; i < 4000; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct setter s = b->s;
		double w = (double)dice_roll(&d, 400);
		str text = dice_text(&d, a, 1 + dice_roll(&d, 60));

		s.arena = a;
		const struct lines *l = para_break_plain(&s, text, &plain12, w);

		check_lines(b, a, l, text, w);
		struct probe *p = probe_new(a, b->faces);

		canvas_page_begin(&p->canvas, 612, 792);
		para_draw(l, &(struct pen){ .canvas = &p->canvas }, (pt){ 3, 5 });
		canvas_page_end(&p->canvas);
		assert_int_equal(p->ntexts, l->n);
		if (w >= 60)
			assert_int_equal(p->outside_box, 0);
		arena_free(a);
	}
}

/* A line of furniture keeps to its width, whole characters only, as many as fit. */
static void test_cut_to_width(void **state)
{
	struct bench *b = *state;
	const char *text = "Fillet \xC3\xA9\xC3\xA9 weld";
	str all = str_of(text);

	assert_string_equal(plain_cut(&b->s, all, &plain12, width(b, text) + 0.01).p, text);
	for (double w = 0; w < width(b, text) - 0.01; w += 0.5) {
		str cut = plain_cut(&b->s, all, &plain12, w);
		str kept = str_sub(cut, 0, cut.n - 3), rest = str_sub(all, kept.n, all.n), next;

		assert_true(str_ends(cut, STR("...")));
		assert_true(str_starts(all, kept));
		assert_int_not_equal((unsigned char)rest.p[0] & 0xC0, 0x80);
		if (kept.n)
			assert_true(face_width_pt(b->faces, FACE_SANS, 12, cut) <= w + 1e-6);
		next = rest;
		utf8_next(&next);
		next = str_format(b->arena, "%.*s...", (int)(all.n - next.n), text);
		assert_true(face_width_pt(b->faces, FACE_SANS, 12, next) > w - 1e-6);
	}
}

/* One text cut into spans at random, all of one face, breaks as the whole text does. */
static void test_spans_do_not_matter(void **state)
{
	struct bench *b = *state;
	struct dice d = { 88172645u };

	for (int i = 0; i < 1000; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct setter s = b->s;
		double w = 40 + (double)dice_roll(&d, 300);
		str text = dice_text(&d, a, 1 + dice_roll(&d, 30));
		struct span v[8];
		size_t n = 0, at = 0;

		s.arena = a;
		while (at < text.n && n < 7) {
			size_t to = at + 1 + dice_roll(&d, 20);

			while (to < text.n && ((unsigned char)text.p[to] & 0xc0) == 0x80)
				to++;
			v[n] = (struct span){ str_sub(text, at, to),
				n % 2 ? SPAN_FLEETING : 0 };
			at += v[n++].text.n;
		}
		v[n++] = (struct span){ str_sub(text, at, text.n), 0 };
		const struct lines *one = para_break_plain(&s, text, &plain12, w);
		const struct lines *many = para_break(&s, v, n, &plain12, w);

		assert_int_equal(one->n, many->n);
		for (size_t k = 0; k < one->n; k++) {
			assert_true(str_eq(line_text(one, k, a), line_text(many, k, a)));
			assert_int_equal(one->v[k].width_mils, many->v[k].width_mils);
		}
		arena_free(a);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_breaks_at_blanks),
		cmocka_unit_test(test_trailing_blanks_do_not_count),
		cmocka_unit_test(test_signs_inside_long_words),
		cmocka_unit_test(test_no_break_space_holds),
		cmocka_unit_test(test_huge_word_and_no_width),
		cmocka_unit_test(test_no_text_no_lines),
		cmocka_unit_test(test_short_last_word_gets_company),
		cmocka_unit_test(test_forced_breaks),
		cmocka_unit_test(test_styles_and_runs),
		cmocka_unit_test(test_word_across_spans),
		cmocka_unit_test(test_widths),
		cmocka_unit_test(test_other_language),
		cmocka_unit_test(test_page_reference_closes_up),
		cmocka_unit_test(test_alignment),
		cmocka_unit_test(test_random_paragraphs),
		cmocka_unit_test(test_spans_do_not_matter),
		cmocka_unit_test(test_cut_to_width),
	};

	return cmocka_run_group_tests(tests, set_up, tear_down);
}
