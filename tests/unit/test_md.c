#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/buf.h"
#include "read/md.h"

#include <string.h>

/* Reads text as file 0 and dumps blocks, one a line, then findings. */
static const char *dump(struct arena *a, str text)
{
	static const char *const kinds[] = { "heading", "fact", "bullet", "step", "para", "fence",
		"picture" };
	struct findings *f = findings_new(a);
	struct source src = { STR("x.md"), text };
	struct record_file r = md_read(a, &src, 0, f);
	struct buf b = { .arena = a };

	for (size_t i = 0; i < r.n; i++) {
		const struct block *k = &r.v[i];

		buf_addf(&b, "%s%u %u:%u", kinds[k->kind], k->level, k->pos.line, k->pos.col);
		if (k->kind == BLOCK_STEP)
			buf_addf(&b, " #%u", k->number);
		if (k->key.n)
			buf_addf(&b, " [%.*s %u:%u]", STR_ARG(k->key), block_key_pos(k).line,
			    block_key_pos(k).col);
		buf_addf(&b, " <%.*s>", STR_ARG(k->text));
		if (!k->more)
			buf_addf(&b, " 0@%u:%u", block_pos(k, 0).line, block_pos(k, 0).col);
		for (uint32_t j = 0; k->more && j < k->more->nlines; j++)
			buf_addf(&b, " %u@%u:%u", k->more->lines[j].offset,
			    k->more->lines[j].pos.line, k->more->lines[j].pos.col);
		buf_addc(&b, '\n');
	}
	findings_sort(f);
	for (size_t i = 0; i < f->n; i++)
		buf_addf(&b, "%u:%u %s\n", f->v[i].pos.line, f->v[i].pos.col,
		    finding_info(f->v[i].name)->name);
	return buf_z(&b);
}

#define DUMP(text, expected)                                                      \
	do {                                                                       \
		struct arena *a_ = arena_new(NULL, NULL);                          \
		assert_string_equal(dump(a_, STR(text)), expected);                \
		arena_free(a_);                                                    \
	} while (0)

static void facts_keep_their_places(void **state)
{
	(void)state;
	DUMP("# SM-04: Tee\n\n- **Kind:** coupon\n* **Hours**: 16\n+ **Station:**  booth \n",
	    "heading1 1:3 <SM-04: Tee> 0@1:3\n"
	    "fact1 3:3 [Kind 3:5] <coupon> 0@3:13\n"
	    "fact1 4:3 [Hours 4:5] <16> 0@4:14\n"
	    "fact1 5:3 [Station 5:5] <booth> 0@5:17\n");
}

static void columns_count_characters(void **state)
{
	(void)state;
	DUMP("# É\n- **Größe:** ½ in\n", "heading1 1:3 <É> 0@1:3\n"
	    "fact1 2:3 [Größe 2:5] <½ in> 0@2:14\n");
}

static void continuation_lines_belong_to_their_bullet(void **state)
{
	(void)state;
	DUMP("# A\n- one of: fit.tack practiced,\n  fit.square introduced\n",
	    "heading1 1:3 <A> 0@1:3\n"
	    "bullet1 2:3 <one of: fit.tack practiced, fit.square introduced> 0@2:3 28@3:3\n");
	DUMP("# A\n- **Gas:**\n  argon\n- **Range:** a\nlazy\n",
	    "heading1 1:3 <A> 0@1:3\n"
	    "fact1 2:3 [Gas 2:5] <argon> 0@3:3\n"
	    "fact1 4:3 [Range 4:5] <a lazy> 0@4:14 2@5:1\n");
}

static void line_ends_of_every_system_read_alike(void **state)
{
	const char *expected = "heading1 1:3 <A> 0@1:3\nfact1 3:3 [Kind 3:5] <drill> 0@3:13\n";

	(void)state;
	DUMP("# A\n\n- **Kind:** drill\n", expected);
	DUMP("# A\r\n\r\n- **Kind:** drill\r\n", expected);
	DUMP("# A\r\r- **Kind:** drill\r", expected);
}

static void steps_are_numbered_and_nested_lists_have_depth(void **state)
{
	(void)state;
	DUMP("# A\n3. grind\n4. tack\n   - both ends\n5. weld\n",
	    "heading1 1:3 <A> 0@1:3\n"
	    "step1 2:4 #3 <grind> 0@2:4\n"
	    "step1 3:4 #4 <tack> 0@3:4\n"
	    "bullet2 4:6 <both ends> 0@4:6\n"
	    "step1 5:4 #5 <weld> 0@5:4\n");
}

static void fences_keep_each_line(void **state)
{
	(void)state;
	DUMP("# A\n```joint B\njoint: tee\n\n  leg: 5/16 in\n```\n",
	    "heading1 1:3 <A> 0@1:3\n"
	    "fence0 2:1 [joint B 2:1] <joint: tee\n\n  leg: 5/16 in> 0@3:1 11@4:1 12@5:1\n");
}

static void underlined_headings_are_headings(void **state)
{
	(void)state;
	DUMP("SM-20 - Title\n=============\n\nNeeds\n-----\n",
	    "heading1 1:1 <SM-20 - Title> 0@1:1\nheading2 4:1 <Needs> 0@4:1\n");
}

static void a_picture_alone_is_a_block(void **state)
{
	(void)state;
	DUMP("# A\n\n![Bench, *front*\nview](../pictures/a%20b.png \"T\")\n\n- ![x y](z.png)\n",
	    "heading1 1:3 <A> 0@1:3\n"
	    "picture0 3:1 [../pictures/a%20b.png 3:1] <Bench, front view> 0@3:1\n"
	    "bullet1 6:3 <![x y](z.png)> 0@6:3\n"
	    "6:3 not-understood\n");
}

static void what_has_no_meaning_is_reported(void **state)
{
	(void)state;
	DUMP("# A\n\n<div>x</div>\n\n| a | b |\n|---|---|\n\n> quoted\n\n- \n\n[x]: y\n",
	    "heading1 1:3 <A> 0@1:3\n3:1 raw-html\n5:1 not-understood\n8:1 not-understood\n"
	    "10:1 not-understood\n12:1 not-understood\n");
	DUMP("# A\n\ntext <b>bold</b> and ![p](q.png)\n",
	    "heading1 1:3 <A> 0@1:3\npara0 3:1 <text <b>bold</b> and ![p](q.png)> 0@3:1\n"
	    "3:1 raw-html\n3:1 not-understood\n");
}

static void a_file_without_heading_is_one_finding(void **state)
{
	(void)state;
	DUMP("\n- **Kind:** drill\n\ntext\n\n# A\n",
	    "heading1 6:3 <A> 0@6:3\n2:3 no-heading\n");
	DUMP("## Needs\n", "1:1 no-heading\n");
	DUMP(" \n\n", "1:1 empty-file\n");
	DUMP("", "1:1 empty-file\n");
}

static void bad_bytes_are_placed(void **state)
{
	(void)state;
	DUMP("# A\n- ab\xC3(\n", "2:5 not-utf8\n");
	DUMP("# \xED\xA0\x80\n", "1:3 not-utf8\n");
	DUMP("# A\n- a\x01" "b\n", "heading1 1:3 <A> 0@1:3\nbullet1 2:3 <a b> 0@2:3\n"
	    "2:4 control-character\n");
	DUMP("# A\n- a\xC2\x9F" "b\xC2\xA0" "c\xC2\x80\n", "heading1 1:3 <A> 0@1:3\n"
	    "bullet1 2:3 <a\xC2\xA0" "b\xC2\xA0" "c\xC2\xA0> 0@2:3\n"
	    "2:4 control-character\n2:8 control-character\n");
}

static void a_long_line_is_left_out(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct buf b = { .arena = a };

	(void)state;
	buf_adds(&b, "# A\n- x\n- ");
	for (int i = 0; i < MD_LINE_MOST; i++)
		buf_addc(&b, 'y');
	buf_adds(&b, "\n- z\n");
	assert_string_equal(dump(a, buf_str(&b)), "heading1 1:3 <A> 0@1:3\nbullet1 2:3 <x> 0@2:3\n"
	    "bullet1 4:3 <z> 0@4:3\n3:1 over-limit\n");
	arena_free(a);
}

static const char *times(struct arena *a, const char *head, int n, const char *text,
    const char *tail)
{
	struct buf b = { .arena = a };

	buf_adds(&b, head);
	while (n--)
		buf_adds(&b, text);
	buf_adds(&b, tail);
	return buf_z(&b);
}

/* At most 100 characters of blanks and signs: 50 times "- ", and one more. */
static void a_deep_line_is_left_out(void **state)
{
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	assert_null(strstr(dump(a, str_of(times(a, "# A\n", 50, "- ", "x\n"))), "over-limit"));
	assert_string_equal(dump(a, str_of(times(a, "# A\n", 51, "- ", "x\n"))),
	    "heading1 1:3 <A> 0@1:3\n2:1 over-limit\n");
	assert_string_equal(dump(a, str_of(times(a, "# A\n", 101, ">", "x\n"))),
	    "heading1 1:3 <A> 0@1:3\n2:1 over-limit\n");
	assert_string_equal(dump(a, str_of(times(a, "# A\n", 40, "1. ", "x\n"))),
	    "heading1 1:3 <A> 0@1:3\n2:1 over-limit\n");
	assert_null(strstr(dump(a, str_of(times(a, "# A\n\n", 200, "-", "\n"))), "over-limit"));
	assert_null(strstr(dump(a, str_of(times(a, "# A\nx", 200, " ", "\n"))), "over-limit"));
	arena_free(a);
}

/* More than 1,000 brackets may not stand in what can be one paragraph, however it is
 * cut into lines. */
static void a_passage_of_brackets_is_left_out(void **state)
{
	static const char *const goes_on[] = { "[\n", "[\n> ", "[\n     - x", "[\n2. ", "[\n+\n",
		"[\n#x", "[\n```` `" };
	static const char *const begins[] = { "[\n\n", "[\n- ", "[\n# ", "[\n  * x" };
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	assert_null(strstr(dump(a, str_of(times(a, "# A\n\n", 1000, "[", "\n"))), "over-limit"));
	assert_string_equal(dump(a, str_of(times(a, "# A\n\n", 1001, "[", "\n\ny\n"))),
	    "heading1 1:3 <A> 0@1:3\npara0 5:1 <y> 0@5:1\n3:1 over-limit\n");
	for (size_t i = 0; i < sizeof goes_on / sizeof *goes_on; i++)
		assert_non_null(strstr(dump(a, str_of(times(a, "# A\n\nx ", 1001, goes_on[i], "\n"))),
		    "3:1 over-limit"));
	for (size_t i = 0; i < sizeof begins / sizeof *begins; i++)
		assert_null(strstr(dump(a, str_of(times(a, "# A\n\n", 1100, begins[i], "\n"))),
		    "over-limit"));
	arena_free(a);
}

static void emphasis_becomes_spans(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct findings *f = findings_new(a);
	struct source src = { STR("x.md"), STR("# A\n1. **Stop:** gap *and* `E7018`&amp;\n   more\n") };
	struct record_file r = md_read(a, &src, 0, f);
	struct spans b = block_spans(a, &r.v[1]);

	(void)state;
	assert_int_equal(b.n, 6);
	assert_int_equal(b.v[0].style, SPAN_BOLD);
	assert_true(str_eq(b.v[0].text, STR("Stop:")));
	assert_true(str_eq(b.v[2].text, STR("and")));
	assert_int_equal(b.v[2].style, SPAN_ITALIC);
	assert_true(str_eq(b.v[4].text, STR("E7018")));
	assert_int_equal(b.v[4].style, SPAN_CODE);
	assert_true(str_eq(b.v[5].text, STR("& more")));
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(facts_keep_their_places),
		cmocka_unit_test(columns_count_characters),
		cmocka_unit_test(continuation_lines_belong_to_their_bullet),
		cmocka_unit_test(line_ends_of_every_system_read_alike),
		cmocka_unit_test(steps_are_numbered_and_nested_lists_have_depth),
		cmocka_unit_test(fences_keep_each_line),
		cmocka_unit_test(underlined_headings_are_headings),
		cmocka_unit_test(a_picture_alone_is_a_block),
		cmocka_unit_test(what_has_no_meaning_is_reported),
		cmocka_unit_test(a_file_without_heading_is_one_finding),
		cmocka_unit_test(bad_bytes_are_placed),
		cmocka_unit_test(a_long_line_is_left_out),
		cmocka_unit_test(a_deep_line_is_left_out),
		cmocka_unit_test(a_passage_of_brackets_is_left_out),
		cmocka_unit_test(emphasis_becomes_spans),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
