/* Blanks whose places are told from one to the next. Places and links are worked out here
 * from the numbers written, 1 in being 25.4 mm. */
#include "model_bench.h"

#include "draw/fig.h"
#include "draw/geom.h"
#include "sheets/figure_data.h"

#include "figure_probe.h"

#include <stdio.h>

#define IN 25.4
#define PLATE(lines) "# SF-09: One\n\n- **Kind:** drill\n- **Hours:** 2\n\n## Drawing\n\n" \
	"```plate\n" lines "```\n"
#define ROW "length: 14 in\nwidth: 3 in\nthickness: 1/4 in\ndimensions: chain\n" \
	"hole: 9, 1-1/4, 9/16 in\nhole: 1, 1-1/4, 9/16 in\nhole: 3, 1-1/4, 9/16 in\n" \
	"hole: 11-1/2, 2-1/2, 9/16 in\n"

static const rect area = { 72, 50, 468, 236 };

static const struct plate_block *plate_of(const struct bench *t)
{
	assert_int_equal(t->m->nassignments, 1);
	return &t->m->assignments[0].drawings[0].plate;
}

static struct figure_probe *drawn(struct figure_bench *x, const struct fig_plate *plate,
    rect in)
{
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);

	if (!fig_plate_draw(&p->canvas, x->faces, in, plate))
		fail_msg("no drawing: %s", p->text);
	canvas_page_end(&p->canvas);
	figure_keeps_promises(p, in);
	return p;
}

static void links_are_differences(void **state)
{
	static const struct { double from, to; const char *label; } x[] = {
		{ 0, 1, "1 in [25.4 mm]" }, { 1, 3, "2 in [50.8 mm]" },
		{ 3, 9, "6 in [152.4 mm]" }, { 9, 11.5, "2-1/2 in [63.5 mm]" } };
	struct bench t = bench_one(PLATE(ROW));
	struct fig_plate f = figure_plate(t.arena, NULL, plate_of(&t));
	str words = fig_plate_words(t.arena, &f);

	(void)state;
	expect_none(&t);
	assert_int_equal(f.chain_x.n, 4);
	for (size_t i = 0; i < 4; i++) {
		expect_near(f.chain_x.v[i].from_mm, x[i].from * IN);
		expect_near(f.chain_x.v[i].to_mm, x[i].to * IN);
		expect_str(f.chain_x.v[i].label, x[i].label);
	}
	assert_int_equal(f.chain_y.n, 2);
	expect_str(f.chain_y.v[1].label, "1-1/4 in [31.8 mm]");
	assert_true(str_has(words, "Along the bottom, each from the last: 1 in [25.4 mm], "
	    "2 in [50.8 mm], 6 in [152.4 mm], 2-1/2 in [63.5 mm]."));
	assert_true(str_has(words, "Up the left side, each from the last: "
	    "1-1/4 in [31.8 mm], 1-1/4 in [31.8 mm]."));
	assert_true(str_has(figure_plate_head(t.arena, NULL, plate_of(&t)), "place to place"));
	bench_free(&t);
}

/* Of different writings a link takes the metric one, else decimals. */
static void links_of_mixed_writings(void **state)
{
	struct bench t = bench_one(PLATE("length: 10 in\nwidth: 4 in\ndimensions: chain\n"
	    "hole: 1.125, 2, 1/2 in\nhole: 3, 2, 1/2 in\nbend: 150 mm\n"));
	struct fig_plate f = figure_plate(t.arena, NULL, plate_of(&t));

	(void)state;
	assert_int_equal(f.chain_x.n, 3);
	expect_str(f.chain_x.v[1].label, "1.875 in [47.63 mm]");
	expect_near(f.chain_x.v[2].to_mm - f.chain_x.v[2].from_mm, 150 - 3 * IN);
	assert_true(str_has(f.chain_x.v[2].label, "73.8 mm"));
	bench_free(&t);
}

static rect outline_of(const struct figure_probe *p)
{
	rect r = { 0, 0, 0, 0 };

	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		if (k->ink.fill || k->n < 5 || k->s[1].op != SEG_LINE)
			continue;
		r = rect_at(k->s[0].p[0]);
		for (size_t n = 1; n < k->n && k->s[n].op != SEG_CLOSE; n++)
			r = rect_grow(r, k->s[n].p[0]);
		return r;
	}
	fail_msg("no outline");
	return r;
}

/* Whether an arrow ends there, its tip within 0.01 mm of steel, level or upright. */
static bool has_tip(const struct figure_probe *p, double at, double lane, bool level,
    double tolerance)
{
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];
		pt tip = k->s[0].p[0];

		if (k->ink.fill && fabs((level ? tip.x : tip.y) - at) < tolerance &&
		    fabs((level ? tip.y : tip.x) - lane) < 0.01)
			return true;
	}
	return false;
}

/* The arrows of a chain lie in one line, 12 pt off the blank and its margin of 2.5. */
static void arrows_stand_at_the_places(void **state)
{
	static const double x[] = { 0, 1, 3, 9, 11.5 }, y[] = { 0, 1.25, 2.5 };
	struct bench t = bench_one(PLATE(ROW));
	struct fig_plate f = figure_plate(t.arena, NULL, plate_of(&t));
	struct figure_probe *p = drawn(*state, &f, area);
	double mm = figure_told_scale(p) * PT_MM;
	rect o = outline_of(p);

	expect_near(o.w / mm, 14 * IN);
	for (size_t i = 0; i < 5; i++)
		assert_true(has_tip(p, o.x + x[i] * IN * mm, o.y + o.h + 14.5, true, 0.01 * mm));
	for (size_t i = 0; i < 3; i++)
		assert_true(has_tip(p, o.y + o.h - y[i] * IN * mm, o.x - 14.5, false, 0.01 * mm));
	assert_false(has_tip(p, o.x + o.w, o.y + o.h + 14.5, true, 0.01 * mm));
	assert_false(figure_has_text(p, "11-1/2 in"));
	bench_free(&t);
}

/* Every number of holes, spacing and height of the drawing: nothing lies on anything else,
 * in the end because a table takes over; a chain refuses nothing that edges do not. */
static void nothing_overlaps(void **state)
{
	static const double step[] = { 0.5, 0.75, 1.25, 1.75 };
	size_t clear = 0, tables = 0;

	for (int i = 0; i < 8 * 4 * 3; i++) {
		struct buf b = { .arena = ((struct figure_bench *)*state)->arena };
		rect in = { 72, 50, 468, i % 3 == 0 ? 180 : i % 3 == 1 ? 260 : 400 };
		double s = step[i / 3 % 4];
		struct figure_probe *p;
		struct bench t;
		struct fig_plate f;

		buf_addf(&b, "%s", "# SF-09: One\n\n- **Kind:** drill\n- **Hours:** 2\n\n"
		    "## Drawing\n\n```plate\nlength: 16 in\nwidth: 6 in\ndimensions: chain\n");
		for (int k = 0; k <= i / 12; k++) {
			char line[80];

			snprintf(line, sizeof line, "hole: %.3f, %.3f, 0.2 in\n", 1.5 + s * k,
			    k % 2 ? 1.5 : 3.0);
			buf_adds(&b, line);
		}
		buf_adds(&b, "bend: y at 5 in\n```\n");
		buf_addc(&b, 0);
		t = bench_one(buf_str(&b).p);
		expect_none(&t);
		f = figure_plate(t.arena, NULL, plate_of(&t));
		p = figure_probe_new(b.arena, ((struct figure_bench *)*state)->faces);
		if (!fig_plate_draw(&p->canvas, p->faces, in, &f)) {
			f.chain_x.n = f.chain_y.n = 0;
			assert_false(fig_plate_draw(&p->canvas, p->faces, in, &f));
		} else if (figure_has_text(p, "No.")) {
			tables++;
		} else {
			figure_keeps_promises(p, in);
			clear++;
		}
		canvas_page_end(&p->canvas);
		bench_free(&t);
	}
	assert_true(clear >= 60 && tables > 0);
}

static void many_places_stay_at_the_edge(void **state)
{
	struct bench t = bench_one(PLATE("length: 24 in\nwidth: 6 in\ndimensions: chain\n"
	    "hole: 2, 1, 1/2 in\nhole: 4, 1, 1/2 in\nhole: 6, 1, 1/2 in\nhole: 8, 1, 1/2 in\n"
	    "hole: 10, 1, 1/2 in\nhole: 12, 1, 1/2 in\nhole: 14, 1, 1/2 in\n"
	    "hole: 16, 1, 1/2 in\nhole: 18, 1, 1/2 in\n"));
	struct fig_plate f = figure_plate(t.arena, NULL, plate_of(&t));

	(void)state;
	expect_none(&t);
	assert_int_equal(f.chain_x.n + f.chain_y.n, 0);
	assert_false(str_has(figure_plate_head(t.arena, NULL, plate_of(&t)), "place to place"));
	bench_free(&t);
}

static void dimensions_are_a_known_word(void **state)
{
	struct bench t = bench_one(PLATE("length: 6 in\nwidth: 4 in\ndimensions: foo\n"));

	(void)state;
	expect_one(&t, FINDING_UNKNOWN_WORD, 11, 13, "foo", "edge, chain");
	bench_free(&t);
	t = bench_one(PLATE("length: 6 in\nwidth: 4 in\ndimensions: edge\nhole: 1, 1, 1/2 in\n"));
	expect_none(&t);
	assert_false(plate_of(&t)->chain);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(links_are_differences),
		cmocka_unit_test(links_of_mixed_writings),
		cmocka_unit_test(arrows_stand_at_the_places),
		cmocka_unit_test(nothing_overlaps),
		cmocka_unit_test(many_places_stay_at_the_edge),
		cmocka_unit_test(dimensions_are_a_known_word),
	};

	return cmocka_run_group_tests(tests, figure_bench_begin, figure_bench_end);
}
