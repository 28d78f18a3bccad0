#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/dim.h"

#include "base/buf.h"
#include "draw/trace.h"

#include <math.h>

static const struct faces *faces_of(void **state)
{
	return faces_new(*state);
}

static int setup(void **state)
{
	*state = arena_new(NULL, NULL);
	return 0;
}

static int teardown(void **state)
{
	arena_free(*state);
	return 0;
}

static void lines_are(const struct dim_label *l, size_t n, const char *const *want)
{
	assert_int_equal(l->n, n);
	for (size_t i = 0; i < n; i++)
		if (!str_eq(l->line[i], str_of(want[i])))
			fail_msg("line %zu: %.*s", i, STR_ARG(l->line[i]));
}

static void test_label_lines(void **state)
{
	const struct faces *f = faces_of(state);
	str text = STR("overlap 1-1/2 in [38 mm]");
	struct dim_label l;

	assert_true(dim_label_set(&l, f, 10, text, DIM_ONE_LINE));
	lines_are(&l, 1, (const char *const[]){ "overlap 1-1/2 in [38 mm]" });
	assert_true(dim_label_set(&l, f, 10, text, DIM_TWO_LINES));
	lines_are(&l, 2, (const char *const[]){ "overlap 1-1/2 in", "[38 mm]" });
	/* A unit stays with its number however narrow the label. */
	assert_true(dim_label_set(&l, f, 10, text, DIM_NARROW));
	lines_are(&l, 3, (const char *const[]){ "overlap", "1-1/2 in", "[38 mm]" });
	assert_true(dim_label_set(&l, f, 10, STR("backing 1/4 x 1 in"), DIM_NARROW));
	lines_are(&l, 2, (const char *const[]){ "backing", "1/4 x 1 in" });
	assert_true(dim_label_set(&l, f, 10, STR(""), DIM_NARROW));
	assert_int_equal(l.n, 0);
	assert_false(dim_label_set(&l, f, 10,
	    STR("reinforcement penetration reinforcement "
	        "penetration reinforcement penetration"),
	    DIM_NARROW));
}

static void test_label_size(void **state)
{
	const struct faces *f = faces_of(state);
	struct dim_label one, two;

	dim_label_set(&one, f, 10, STR("[38 mm]"), DIM_ONE_LINE);
	dim_label_set(&two, f, 10, STR("overlap 1-1/2 in [38 mm]"), DIM_TWO_LINES);
	assert_true(fabs(one.w - face_width_pt(f, FACE_SANS, 10, STR("[38 mm]"))) < 1e-9);
	assert_true(fabs(one.h - face_ascent_pt(f, FACE_SANS, 10) -
	    face_descent_pt(f, FACE_SANS, 10)) < 1e-9);
	assert_true(two.h > one.h + 10 && two.h < one.h + 13);
}

static str traced(struct buf *out, void (*pen)(struct canvas *))
{
	struct trace t;

	out->n = 0;
	trace_init(&t, out);
	canvas_page_begin(&t.canvas, 100, 100);
	pen(&t.canvas);
	canvas_page_end(&t.canvas);
	return buf_str(out);
}

static void pen_arrow(struct canvas *c)
{
	dim_arrow(c, (pt){ 50, 50 }, (pt){ 1, 0 });
}

static void pen_hatch(struct canvas *c)
{
	const pt v[] = { { 0, 0 }, { 30, 0 }, { 30, 30 }, { 0, 30 } };

	dim_hatch(c, v, 4, 0, 10);
}

static void test_pen(void **state)
{
	struct buf out = { .arena = *state };

	assert_true(str_eq(traced(&out, pen_arrow), STR("page 100.00 100.00\n"
	    "path fill 0.00 M 50.00 50.00 L 42.00 51.70 L 42.00 48.30 Z\nend page\n")));
	/* Level lines every 10 points, the first half a step in. */
	assert_true(str_eq(traced(&out, pen_hatch),
	    STR("page 100.00 100.00\n"
	        "path stroke 1.00 gray 0.00 M 0.00 5.00 L 30.00 5.00 M 0.00 15.00 L "
	        "30.00 15.00 "
	        "M 0.00 25.00 L 30.00 25.00\nend page\n")));
}

static void test_break(void **state)
{
	pt v[DIM_BREAK_POINTS];
	double most = 0;

	(void)state;
	assert_int_equal(dim_break((pt){ 10, 0 }, (pt){ 10, 60 }, v), DIM_BREAK_POINTS);
	assert_true(fabs(v[0].x - 10) < 1e-9 && fabs(v[0].y) < 1e-9);
	assert_true(fabs(v[DIM_BREAK_POINTS - 1].x - 10) < 1e-9);
	assert_true(fabs(v[DIM_BREAK_POINTS - 1].y - 60) < 1e-9);
	for (size_t i = 0; i < DIM_BREAK_POINTS; i++)
		most = fmax(most, fabs(v[i].x - 10));
	assert_true(most > 2 && most <= 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_label_lines), cmocka_unit_test(test_label_size),
		cmocka_unit_test(test_pen), cmocka_unit_test(test_break),
	};

	return cmocka_run_group_tests(tests, setup, teardown);
}
