/* Lines changed on trial: each row is a text, its edits, and what must come of them. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/edit.h"
#include "base/buf.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

enum { EDITS_MOST = 4, LINES_MOST = 8 };

struct row {
	const char *what, *before;
	struct { enum edit_kind kind; uint32_t file, line; const char *text; uint32_t origin; }
	    edits[EDITS_MOST];
	size_t nedits;
	const char *after;
	uint32_t origins[LINES_MOST];
	size_t nlines;
};

static void check_row(const struct row *r)
{
	struct arena *a = arena_new(NULL, NULL);
	struct source s = { STR("one.md"), str_of(r->before) };
	struct edit v[EDITS_MOST];
	struct edited out;

	for (size_t i = 0; i < r->nedits; i++)
		v[i] = (struct edit){ r->edits[i].kind, r->edits[i].file, r->edits[i].line,
			r->edits[i].text ? str_of(r->edits[i].text) : (str){ 0 },
			r->edits[i].origin };
	out = edits_apply(a, &s, 1, v, r->nedits);
	if (!str_eq(out.text, str_of(r->after)))
		fail_msg("%s: \"%.*s\"", r->what, STR_ARG(out.text));
	if (out.file != 1 || out.nlines != r->nlines ||
	    text_count_lines(out.text) != r->nlines)
		fail_msg("%s: file %u, %zu lines", r->what, out.file, out.nlines);
	for (size_t i = 0; i < r->nlines; i++)
		if (out.origin[i] != r->origins[i])
			fail_msg("%s: line %zu was %u", r->what, i + 1, out.origin[i]);
	arena_free(a);
}

static void edits_make_the_text(void **state)
{
	static const struct row rows[] = {
		{ "nothing", "a\nb\n", { { 0 } }, 0, "a\nb\n", { 1, 2 }, 2 },
		{ "another file", "a\nb\n", { { EDIT_DROP, 2, 1, NULL, 0 } }, 1, "a\nb\n",
		  { 1, 2 }, 2 },
		{ "replaced", "a\nb\nc\n", { { EDIT_REPLACE, 1, 2, "x", 0 } }, 1, "a\nx\nc\n",
		  { 1, 2, 3 }, 3 },
		{ "replaced by two", "a\nb\n", { { EDIT_REPLACE, 1, 1, "x\ny", 0 } }, 1,
		  "x\ny\nb\n", { 1, 1, 2 }, 3 },
		{ "replaced by an empty line", "a\nb\n", { { EDIT_REPLACE, 1, 1, "", 0 } }, 1,
		  "\nb\n", { 1, 2 }, 2 },
		{ "dropped", "a\nb\nc\n", { { EDIT_DROP, 1, 1, NULL, 0 },
		  { EDIT_DROP, 1, 3, NULL, 0 } }, 2, "b\n", { 2 }, 1 },
		{ "the only line dropped", "a\n", { { EDIT_DROP, 1, 1, NULL, 0 } }, 1, "", { 0 },
		  0 },
		{ "added before the first", "a\n", { { EDIT_ADD, 1, 0, "x", 0 } }, 1, "x\na\n",
		  { 0, 1 }, 2 },
		{ "added behind the last", "a\nb\n", { { EDIT_ADD, 1, 2, "x", 0 } }, 1,
		  "a\nb\nx\n", { 1, 2, 0 }, 3 },
		{ "behind a last line without its end", "a\nb", { { EDIT_ADD, 1, 2, "x", 0 } },
		  1, "a\nb\nx\n", { 1, 2, 0 }, 3 },
		{ "two lines with an empty one", "a\n", { { EDIT_ADD, 1, 1, "x\n\ny", 0 } }, 1,
		  "a\nx\n\ny\n", { 1, 0, 0, 0 }, 4 },
		{ "several behind one line, in turn", "a\nb\n", { { EDIT_ADD, 1, 1, "x", 0 },
		  { EDIT_ADD, 1, 1, "y", 0 }, { EDIT_ADD, 1, 1, "z", 0 } }, 3, "a\nx\ny\nz\nb\n",
		  { 1, 0, 0, 0, 2 }, 5 },
		{ "behind a dropped line", "a\nb\n", { { EDIT_DROP, 1, 1, NULL, 0 },
		  { EDIT_ADD, 1, 1, "x", 0 } }, 2, "x\nb\n", { 0, 2 }, 2 },
		{ "a line that moves down", "a\nb\nc\n", { { EDIT_DROP, 1, 1, NULL, 0 },
		  { EDIT_ADD, 1, 3, "a, week 2", 1 } }, 2, "b\nc\na, week 2\n", { 2, 3, 1 }, 3 },
		{ "a line that moves up", "a\nb\nc\n", { { EDIT_DROP, 1, 3, NULL, 0 },
		  { EDIT_ADD, 1, 0, "c", 3 } }, 2, "c\na\nb\n", { 3, 1, 2 }, 3 },
		{ "into an empty text", "", { { EDIT_ADD, 1, 0, "x", 0 } }, 1, "x\n", { 0 }, 1 },
		{ "past the last line", "a\n", { { EDIT_ADD, 1, 2, "x", 0 },
		  { EDIT_DROP, 1, 3, NULL, 0 } }, 2, "a\n", { 1 }, 1 },
		{ "line ends of two characters stay", "a\r\nb\r\n",
		  { { EDIT_REPLACE, 1, 1, "x", 0 } }, 1, "x\nb\r\n", { 1, 2 }, 2 },
		{ "empty lines stay", "\n\na\n\n", { { EDIT_DROP, 1, 3, NULL, 0 } }, 1, "\n\n\n",
		  { 1, 2, 4 }, 3 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		check_row(&rows[i]);
}

static void lines_by_number(void **state)
{
	static const struct { const char *text; uint32_t line; const char *want; } rows[] = {
		{ "a\nbc\n", 1, "a" }, { "a\nbc\n", 2, "bc" }, { "a\nbc\n", 3, "" },
		{ "a\nbc", 2, "bc" }, { "a\nbc", 3, "" }, { "a\nbc", 9, "" },
		{ "a\r\nbc\r\n", 1, "a" }, { "a\r\nbc\r\n", 2, "bc" }, { "\r\n\r\nx", 2, "" },
		{ "\n\nx\n", 1, "" }, { "\n\nx\n", 3, "x" }, { "", 1, "" },
		/* A finding about a file as a whole stands at no line. */
		{ "a\nbc\n", 0, "" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++) {
		str line = text_line_at(str_of(rows[i].text), rows[i].line);

		if (!str_eq(line, str_of(rows[i].want)))
			fail_msg("line %u of \"%s\": \"%.*s\"", rows[i].line, rows[i].text,
			    STR_ARG(line));
	}
	assert_int_equal(text_count_lines(STR("")), 0);
	assert_int_equal(text_count_lines(STR("a")), 1);
	assert_int_equal(text_count_lines(STR("a\n")), 1);
	assert_int_equal(text_count_lines(STR("a\n\n")), 2);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(edits_make_the_text), cmocka_unit_test(lines_by_number),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
