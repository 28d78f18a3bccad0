/* Coupons from above. Plugs, slots and spots in a row: sizes and spacing on paper are those
 * asked for, times the scale that the note tells. Stops and restarts. */
#include "model_bench.h"

#include "draw/fig.h"
#include "sheets/figure_data.h"
#include "sheets/weld_position.h"
#include "sheets/weld_symbol.h"

#include "figure_probe.h"

#define IN 25.4
#define LAP(lines) "# SM-01: One\n\n- **Kind:** coupon\n- **Hours:** 2\n" \
	"- **Process:** SMAW\n- **Joint:** lap\n- **Position:** flat\n" \
	"- **Material:** A36 plate\n- **Thickness:** 3/8 in\n\n## Drawing\n\n" \
	"```joint\njoint: lap\n" lines "```\n"

static const rect area = { 72, 50, 468, 236 };

/* The closed curves of the heavy line: the openings, in the order drawn. */
static size_t openings(const struct figure_probe *p, rect *out, size_t room)
{
	size_t n = 0;

	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];
		rect r = { k->s[0].p[0].x, k->s[0].p[0].y, 0, 0 };
		bool round = false;

		for (size_t q = 0; q < k->n && k->s[q].op != SEG_CLOSE; q++) {
			pt at = k->s[q].p[k->s[q].op == SEG_CURVE ? 2 : 0];

			round |= k->s[q].op == SEG_CURVE;
			r = (rect){ fmin(r.x, at.x), fmin(r.y, at.y),
				fmax(r.x + r.w, at.x) - fmin(r.x, at.x),
				fmax(r.y + r.h, at.y) - fmin(r.y, at.y) };
		}
		if (round && k->ink.stroke_pt > 1.8 && n < room)
			out[n++] = r;
	}
	return n;
}

static const struct assignment *one(const struct bench *t)
{
	expect_none(t);
	assert_int_equal(t->m->nassignments, 1);
	return t->m->assignments;
}

/* Draws the row of a block and checks number, size along and across it, and spacing. */
static void expect_row(struct figure_bench *x, const char *text, size_t n, double along_in,
    double across_in, double spacing_in)
{
	struct bench t = bench_one(text);
	const struct joint_block *j = &one(&t)->drawings[0].joint;
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);
	struct fig_joint f;
	rect v[40];
	double scale;

	assert_int_equal(weld_symbol_fault(t.arena, one(&t), j).n, 0);
	figure_joint(t.arena, NULL, one(&t), j, &f);
	assert_true(figure_has_plan(&f, j));
	if (!fig_plan_draw(&p->canvas, x->faces, area, &f))
		fail_msg("%s", p->text);
	canvas_page_end(&p->canvas);
	figure_keeps_promises(p, area);
	scale = 72 * figure_told_scale(p);
	/* A foot of plate lies within its 6-1/2 in of paper at 1:3, with room for labels. */
	assert_true(scale >= 72.0 / 4);
	assert_int_equal(openings(p, v, 40), n);
	for (size_t i = 0; i < n; i++) {
		assert_true(fabs(v[i].w - along_in * scale) < 0.02);
		assert_true(fabs(v[i].h - across_in * scale) < 0.02);
		if (i > 0)
			assert_true(fabs(v[i].x - v[i - 1].x - spacing_in * scale) < 0.02);
	}
	bench_free(&t);
}

static void rows_are_to_scale(void **state)
{
	expect_row(*state, LAP("plug weld: 3/4 in\nspacing: 3 in\ncount: 3\nlength: 10 in\n"
	    "overlap: 2 in\n"), 3, 0.75, 0.75, 3);
	expect_row(*state, LAP("slot weld: 3/4 x 1-1/2 in\nspacing: 3 in\ncount: 4\n"
	    "length: 12 in\n"), 4, 1.5, 0.75, 3);
	expect_row(*state, LAP("slot weld: 3/4 x 1-1/2 in, across\nspacing: 1-1/2 in\ncount: 6\n"
	    "length: 10 in\noverlap: 3 in\n"), 6, 0.75, 1.5, 1.5);
	expect_row(*state, LAP("spot weld: 1/4 in\nspacing: 1 in\ncount: 10\nlength: 12 in\n"
	    "overlap: 1 in\n"), 10, 0.25, 0.25, 1);
	expect_row(*state, LAP("plug weld: 1 in\nlength: 6 in\noverlap: 3 in\n"), 1, 1, 1, 0);
}

static void rows_that_cannot_be(void **state)
{
	static const char *const rows[] = {
		LAP("slot weld: 3/4 x 1-1/2 in\nspacing: 1-1/2 in\ncount: 3\nlength: 10 in\n"),
		LAP("plug weld: 3/4 in\nspacing: 3 in\ncount: 4\nlength: 9-1/2 in\n"),
	};
	struct fig_joint f;
	struct bench t;

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		t = bench_one(rows[i]);
		assert_true(weld_symbol_fault(t.arena, one(&t),
		    &one(&t)->drawings[0].joint).n > 0);
		bench_free(&t);
	}
	/* Three spaces of 3 in and a plug of 3/4 are 9-3/4 in. */
	t = bench_one(LAP("plug weld: 3/4 in\nspacing: 3 in\ncount: 4\nlength: 9-3/4 in\n"));
	assert_int_equal(weld_symbol_fault(t.arena, one(&t),
	    &one(&t)->drawings[0].joint).n, 0);
	bench_free(&t);
	t = bench_one(LAP("plug weld: 1 in\nlength: 6 in\noverlap: 1 in\n"));
	figure_joint(t.arena, NULL, one(&t), &one(&t)->drawings[0].joint, &f);
	assert_true(fig_joint_fault(&f).n > 0);
	bench_free(&t);
}

/* The sketch of a lap shows a fillet and is none of plugs. */
static void rows_borrow_no_sketch(void **state)
{
	struct bench t = bench_one(LAP("leg: 1/4 in\nlength: 6 in\n"));
	struct fig_position p;

	(void)state;
	assert_true(weld_position(t.arena, NULL, one(&t), &one(&t)->drawings[0].joint, 0, &p));
	bench_free(&t);
	t = bench_one(LAP("plug weld: 3/4 in\nlength: 6 in\n"));
	assert_false(weld_position(t.arena, NULL, one(&t), &one(&t)->drawings[0].joint, 0, &p));
	assert_true(weld_position_fault(one(&t), &one(&t)->drawings[0].joint, 0).n > 0);
	bench_free(&t);
}

/* Of a weld of 8 in, where the mark stands, in inches to the right of its middle. */
static void restarts_stand_where_they_are_told(void **state)
{
	static const struct { const char *text; bool marked; double right_in; } rows[] = {
		{ LAP("leg: 1/4 in\nlength: 8 in\nrestart: near mid-length\n"), true, 0 },
		{ LAP("leg: 1/4 in\nlength: 8 in\nrestart: 3 in from the left end\n"), true, -1 },
		{ LAP("leg: 1/4 in\nlength: 8 in\nrestart: at 2-1/2 in from the right end\n"),
		    true, 1.5 },
		{ LAP("leg: 1/4 in\nlength: 8 in\nrestart: in each layer elsewhere\n"), false, 0 },
	};
	struct figure_bench *x = *state;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct bench t = bench_one(rows[i].text);
		struct figure_probe *p = figure_probe_new(x->arena, x->faces);
		struct fig_joint f;

		figure_joint(t.arena, NULL, one(&t), &one(&t)->drawings[0].joint, &f);
		assert_int_equal(f.restart, rows[i].marked);
		assert_true(fabs(f.restart_mm - rows[i].right_in * IN) < 0.01);
		assert_true(fig_plan_draw(&p->canvas, x->faces, area, &f));
		canvas_page_end(&p->canvas);
		assert_int_equal(figure_has_text(p, "stop and restart here\n"), rows[i].marked);
		bench_free(&t);
	}
}

static void restart_beyond_the_weld(void **state)
{
	struct bench t = bench_one(LAP("leg: 1/4 in\nlength: 4 in\nrestart: 5 in from the left "
	    "end\n"));
	struct fig_joint f;

	(void)state;
	figure_joint(t.arena, NULL, one(&t), &one(&t)->drawings[0].joint, &f);
	assert_string_equal(fig_joint_fault(&f).p, "the stop and restart lies beyond the weld");
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(rows_are_to_scale, figure_bench_begin,
		    figure_bench_end),
		cmocka_unit_test(rows_that_cannot_be),
		cmocka_unit_test_setup_teardown(restarts_stand_where_they_are_told,
		    figure_bench_begin, figure_bench_end),
		cmocka_unit_test(restart_beyond_the_weld),
		cmocka_unit_test(rows_borrow_no_sketch),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
