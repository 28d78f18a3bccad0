/* What only the sheets can see: joints without a drawing, characters without a glyph. */
#include "model_bench.h"

#include "sheets/review.h"

#include <stdio.h>

#define HEAD "# SM-01: Work\n\n- **Kind:** drill\n- **Hours:** 4\n"
#define JOINT(lines) "\n## Drawing\n\n```joint\n" lines "thickness: 3/8 in\n```\n"

static struct bench review(const char *text)
{
	struct bench t = bench_one(text);

	sheets_review(t.arena, t.m, faces_new(t.arena), sheets_told(t.arena, t.m, t.f), t.f);
	return t;
}

static void joints_that_are_told(void **state)
{
	struct bench t = review(HEAD JOINT("joint: bevel cut\nbevel: 30 deg\n"));

	(void)state;
	expect_none(&t);
	bench_free(&t);
	t = review(HEAD JOINT("joint: cut edge\nbevel: 30 deg\n"));
	expect_one(&t, FINDING_BAD_DRAWING, 8, 1, "a square cut has neither bevel nor land",
	    "correct the sizes");
	bench_free(&t);
	t = review(HEAD JOINT("joint: tee\nleg: 1/4 in\nkerf: 1/8 in\n"));
	expect_one(&t, FINDING_BAD_DRAWING, 8, 1, "a kerf goes with a cut", "correct the sizes");
	bench_free(&t);
	/* A word that is no joint is told once, where it stands. */
	t = review(HEAD JOINT("joint: scarf\n"));
	expect_one(&t, FINDING_UNKNOWN_WORD, 9, 8, "\"scarf\"", "choose one of");
	bench_free(&t);
}

/* U+4E2D is in none of the faces. Behind a key the finding points to the key. */
static void characters_without_a_glyph(void **state)
{
	static const struct { const char *text; uint32_t line, col; } rows[] = {
		{ HEAD "\n## Notes\n\nAsk \xE4\xB8\xAD.\n", 8, 5 },
		{ HEAD "\n## Instructor only\n\n\xE4\xB8\xAD fails.\n", 8, 1 },
		{ HEAD "\n## Passes\n\n- **Root:** GTAW \xE4\xB8\xAD\n", 8, 5 },
		{ HEAD "\n## Procedure\n\n1. Weld \xE4\xB8\xAD.\n", 8, 9 },
		{ HEAD "\n## Grading\n\n- **Fit-up \xE4\xB8\xAD:** 100\n", 8, 12 },
		{ HEAD "\n## Drawing\n\nSee \xE4\xB8\xAD:\n\n```joint\njoint: tee\nleg: 1/4 in\nthickness: 3/8 in\n"
		       "```\n", 8, 5 },
		{ HEAD "- **Material:** \xE4\xB8\xAD plate\n", 5, 17 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct bench t = review(rows[i].text);

		expect_one(&t, FINDING_NO_GLYPH, rows[i].line, rows[i].col,
		    "\xE4\xB8\xAD", "in words");
		bench_free(&t);
	}
}

static size_t count_of(const struct bench *t, enum finding_name name)
{
	size_t n = 0;

	for (size_t i = 0; i < t->f->n; i++)
		n += t->f->v[i].name == name;
	return n;
}

/* The faces of text have Spanish and Greek letters but no box characters and no emoji; the
 * typewriter face has boxes but no Greek (looked up in the fonts' character maps). */
static void each_face_by_itself(void **state)
{
	static const struct { const char *step; bool told; } rows[] = {
		{ "Ma\xC3\xB1" "ana, \xC2\xBF" "est\xC3\xA1?", false },
		{ "turn by \xCE\xB1", false },
		{ "set `\xCE\xB1` to 3", true },
		{ "a \xE2\x94\x80 line", true },
		{ "type `\xE2\x94\x80` here", false },
		{ "light it \xF0\x9F\x94\xA5 now", true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char text[200];
		struct bench t;

		snprintf(text, sizeof text, HEAD "\n## Procedure\n\n1. Do %s.\n", rows[i].step);
		t = review(text);
		assert_int_equal(count_of(&t, FINDING_NO_GLYPH), rows[i].told);
		bench_free(&t);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(joints_that_are_told),
		cmocka_unit_test(characters_without_a_glyph),
		cmocka_unit_test(each_face_by_itself),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
