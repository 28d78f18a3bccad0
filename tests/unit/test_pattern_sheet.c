/* Pattern blocks on paper: what students see, what the key says, and templates whose
 * lines are measured as drawn. */
#include "model_bench.h"

#include "page_probe.h"
#include "sheets/bundle.h"
#include "sheets/pattern_sheet.h"
#include "sheets/review.h"
#include "sheets/template.h"
#include "sheets/template_tile.h"

#include "cli/run.h"

#include <math.h>

#define IN 25.4

#define BLOCK(id, lines) "# " id ": Laid out\n\n- **Kind:** drill\n- **Hours:** 4\n" \
	"- **Material:** A1011 sheet\n- **Thickness:** 16 ga\n\n## Drawing\n\n" \
	"```pattern\n" lines "```\n"

/* One of each shape, sizes of the workshop; the same id is never used twice. */
static const char *const parts[] = {
	BLOCK("PD-20", "shape: brake\nflanges: 1, 2, 2, 1 in\nbends: 90 deg\n"
	    "directions: up, down, up\nradius: 1/8 in\nK: 0.42\n"),
	BLOCK("PD-21",
	    "shape: brake\nflanges: 1, 3, 2, 3, 1 in\nbends: 90, 60, 120, 45 deg\n"
	    "radius: 1/8 in\nK: 0.42\n"),
	BLOCK("PD-22", "shape: cylinder\ninside diameter: 36 in\nheight: 12 in\n"),
	BLOCK("PD-23",
	    "shape: elbow\noutside diameter: 6 in\nradius: 9 in\nangle: 90 deg\n"
	    "pieces: 5\n"),
	BLOCK("PD-24",
	    "shape: saddle\nrun: NPS 6 schedule 40\nbranch: NPS 4 schedule 40\n"),
	BLOCK("PD-25", "shape: lateral\nrun: 8 in\nbranch: 4 in\nangle: 60 deg\n"
	    "offset: 1/2 in\nlength: 14 in\n"),
	BLOCK("PD-26", "shape: cone\nbase: 12 in\nheight: 8 in\n"),
	BLOCK("PD-27",
	    "shape: cone\nbase: 12 in\ntop: 20 in\nheight: 8 in\nsizes: inside\n"),
	BLOCK("PD-28",
	    "shape: tapered box\nsides: 8\nbase: 24 in\ntop: 8 in\nheight: 14 in\n"),
	BLOCK("PD-29",
	    "shape: tapered box\nsides: 3\nbase: 12 in\ntop: 8 in\nheight: 9 in\n"
	    "radius: 1/8 in\nK: 0.42\n"),
	BLOCK("PD-30",
	    "shape: square to round\nbase: 14 x 20 in\ntop: 10 in\nheight: 9 in\n"
	    "offset: 2, 3 in\n"),
};
enum { PARTS = sizeof parts / sizeof *parts };

static const struct pattern_block *block_of(const struct bench *t)
{
	expect_none(t);
	assert_int_equal(t->m->assignments[0].ndrawings, 1);
	return t->m->assignments[0].drawings[0].pattern;
}

/* ---- views ---- */

static bool said(const struct probe *p, const char *text)
{
	for (size_t i = 0; i < p->ntexts; i++)
		if (str_has(p->texts[i].text, text))
			return true;
	return false;
}

/* Draws on a page of its own. */
static bool draw_view(struct probe *p, const struct faces *f, rect area,
    const struct fig_view *v)
{
	bool drawn;

	canvas_page_begin(&p->canvas, 612, 792);
	drawn = fig_view_draw(&p->canvas, f, area, v);
	canvas_page_end(&p->canvas);
	return drawn;
}

static void views_fit(void **state)
{
	const rect area = { 72, 100, 450, 210 };

	(void)state;
	for (size_t i = 0; i < PARTS; i++) {
		struct bench t = bench_one(parts[i]);
		const struct faces *f = faces_new(t.arena);
		struct probe *p = probe_new(t.arena, f);
		struct fig_view v = pattern_view(t.arena, NULL, block_of(&t));

		p->sheet = area;
		if (!draw_view(p, f, area, &v))
			fail_msg("part %u is not drawn", (unsigned)i);
		assert_true(p->ntexts >= 3);
		assert_int_equal(p->outside_box, 0);
		assert_int_equal(p->outside_sheet, 0);
		assert_true(said(p, "to scale"));
		bench_free(&t);
	}
}

static void no_room_is_said(void **state)
{
	struct bench t = bench_one(parts[0]);
	const struct faces *f = faces_new(t.arena);
	struct probe *p = probe_new(t.arena, f);
	struct fig_view v = pattern_view(t.arena, NULL, block_of(&t));

	(void)state;
	assert_false(draw_view(p, f, (rect){ 0, 0, 60, 60 }, &v));
	assert_true(said(p, "no drawing:"));
	bench_free(&t);
}

static void outlines_fit_the_key(void **state)
{
	const rect area = { 72, 100, 450, 210 };

	(void)state;
	for (size_t i = 0; i < PARTS; i++) {
		struct bench t = bench_one(parts[i]);
		const struct faces *f = faces_new(t.arena);
		const struct pattern *o = pattern_of(t.arena, block_of(&t));

		expect_str(o->fault, "");
		assert_true(o->nanswers >= 2);
		assert_true(o->nflats >= 1);
		for (size_t k = 0; k < o->nflats; k++) {
			struct probe *p = probe_new(t.arena, f);
			struct fig_view v = key_flat_view(t.arena, NULL, &o->flat[k]);

			p->sheet = area;
			if (!draw_view(p, f, area, &v))
				fail_msg("outline %u of part %u is not drawn",
				    (unsigned)k,
				    (unsigned)i);
			assert_int_equal(p->outside_sheet, 0);
		}
		bench_free(&t);
	}
}

/* ---- words ---- */

static void given_in_words(void **state)
{
	struct bench t = bench_one(parts[0]);
	const struct pattern_block *b = block_of(&t);

	(void)state;
	expect_str(pattern_head(t.arena, NULL, b), "Braked part");
	expect_str(pattern_given(t.arena, NULL, b),
	    "thickness 16 ga (0.0598 in) [1.52 mm]; inside "
	    "radius 1/8 in [3.2 mm]; every bend turns 90\xC2\xB0; bends go up, down, up; "
	    "flanges measured outside; K 0.42");
	assert_true(str_has(pattern_view_words(t.arena, NULL, b),
	    "Flanges 1 in [25.4 mm], 2 in "));
	bench_free(&t);
}

static void answers_in_both_units(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct pattern_answer turn = { STR("Brake through"), 51.4567, ANSWER_DEG };
	struct pattern_answer slant = { STR("Slant height"), 8.5440037 * IN, ANSWER_MM };

	(void)state;
	/* 8.544 x 64 = 546.8, and 547/64 = 8-35/64. */
	expect_str(key_answer_text(a, NULL, &slant),
	    "Slant height: 8.544 (8-35/64) in [217.02 mm]");
	expect_str(key_answer_text(a, NULL, &turn), "Brake through: 51.46\xC2\xB0");
	expect_str(key_length_text(a, NULL, 6.5 * IN), "6-1/2 in [165.1 mm]");
	expect_str(key_length_text(a, NULL, 0), "0 in [0 mm]");
	/* Within half a thousandth of 1/64 the fraction is the size; beyond it is not. */
	expect_str(key_length_text(a, NULL, (0.5 + 0.00049) * IN), "1/2 in [12.71 mm]");
	expect_str(key_length_text(a, NULL, (0.5 + 0.00051) * IN), "0.501 (1/2) in [12.71 mm]");
	arena_free(a);
}

static void finished_sizes_are_measured(void **state)
{
	struct bench t = bench_one(BLOCK("PD-31", "shape: cone\nbase: 12 in\ntop: 6 in\n"
	    "height: 8 in\ntolerance: ±1/16 in\n"));
	struct measures out = { 0 };

	(void)state;
	pattern_measures(t.arena, NULL, block_of(&t), NULL, &out);
	assert_int_equal(out.n, 3);
	expect_str(out.v[0].feature, "Base diameter");
	expect_str(out.v[0].low, "11-15/16 in [303.2 mm]");
	expect_str(out.v[2].feature, "Height");
	expect_str(out.v[2].high, "8-1/16 in [204.8 mm]");
	bench_free(&t);
	t = bench_one(parts[6]);
	out = (struct measures){ 0 };
	pattern_measures(t.arena, NULL, block_of(&t), NULL, &out);
	assert_int_equal(out.n, 0);
	bench_free(&t);
}

static void impossible_part_is_a_finding(void **state)
{
	struct bench t = bench_one(BLOCK("PD-32", "shape: cone\nbase: 12 in\ntop: 12 in\n"
	    "height: 8 in\n"));

	(void)state;
	expect_none(&t);
	sheets_review(t.arena, t.m, faces_new(t.arena), sheets_told(t.arena, t.m, t.f), t.f);
	expect_one(&t, FINDING_BAD_DRAWING, 10, 1,
	    "cannot be made: a cone with two equal ends is a cylinder",
	    "correct the sizes");
	bench_free(&t);
}

/* ---- the demo, as students get it ---- */

/* "8.544", when the answer is no plain fraction that a given size could be. */
static bool is_telling(struct arena *a, double mm, str *text)
{
	double in = mm / IN, part = in * 64;
	struct buf b = { .arena = a };

	buf_add_real(&b, in, 3, true);
	*text = buf_str(&b);
	return in > 0.1 && fabs(part - floor(part + 0.5)) > 0.01;
}

static unsigned count_leaks(struct arena *a, const struct probe *p,
    const struct pattern *o,
    unsigned *asked)
{
	unsigned leaks = 0;
	str text;

	for (size_t i = 0; i < o->nanswers; i++) {
		if (o->answer[i].unit != ANSWER_MM || !is_telling(a, o->answer[i].value,
		    &text))
			continue;
		++*asked;
		for (size_t k = 0; k < p->ntexts; k++)
			leaks += str_find(p->texts[k].text, text, 0) < p->texts[k].text.n;
	}
	return leaks;
}

static void students_see_no_answer(void **state)
{
	const struct options options = { .folder = "curriculum" };
	struct run run;
	unsigned asked = 0, patterns = 0;

	(void)state;
	assert_int_equal(run_begin(&run, &options), 0);
	for (uint32_t i = 0; i < run.model->nassignments; i++) {
		const struct assignment *x = &run.model->assignments[i];
		const struct bundle_spec spec = { .model = run.model,
			.order = order_of_program(run.arena, run.model),
			    .faces = run.faces,
			.assignments = &i, .n = 1, .name = x->id };
		struct probe *p = probe_new(run.arena, run.faces);
		struct bundle *b = NULL;

		for (size_t k = 0; k < x->ndrawings; k++) {
			if (x->drawings[k].kind != DRAWING_PATTERN)
				continue;
			if (!b) {
				b = bundle_new(run.arena, &spec);
				for (int part = 0; part < BUNDLE_PARTS; part++)
					bundle_emit(b, (enum bundle_part)part,
					    &p->canvas);
			}
			patterns++;
			assert_int_equal(count_leaks(run.arena, p, pattern_of(run.arena,
			    x->drawings[k].pattern), &asked), 0);
		}
	}
	assert_true(patterns >= 8);
	assert_true(asked >= 25);
	run_end(&run);
}

/* ---- templates ---- */

struct stroke { unsigned page; double width_pt; pt a, b; };

/* A canvas that keeps every straight stretch. */
struct ruler {
	struct canvas canvas;
	struct arena *arena;
	unsigned page;
	struct stroke *v;
	size_t n, cap;
};

static void ruler_page(void *self, double w, double h)
{
	(void)w, (void)h;
	((struct ruler *)self)->page++;
}

static void ruler_path(void *self, const struct seg *s, size_t n, const struct ink *ink)
{
	struct ruler *r = self;

	for (size_t i = 1; i < n; i++)
		if (s[i].op == SEG_LINE)
			*ARENA_PUSH(r->arena, r->v, r->n,
			    r->cap) = (struct stroke){ r->page,
				ink->stroke_pt, s[i - 1].p[0], s[i].p[0] };
}

static const struct canvas_ops ruler_ops = { .page_begin = ruler_page,
    .path = ruler_path };

static struct ruler *ruler_new(struct arena *a)
{
	struct ruler *r = arena_alloc(a, sizeof *r);

	r->arena = a;
	r->canvas = (struct canvas){ .ops = &ruler_ops, .self = r };
	return r;
}

static struct template_doc *templates_in(const struct bench *t, struct edition_choice e)
{
	uint32_t *v = arena_array(t->arena, t->m->nassignments, sizeof *v);
	struct template_spec spec = { .model = t->m, .faces = faces_new(t->arena),
		.assignments = v, .n = t->m->nassignments, .edition = e };

	for (uint32_t i = 0; i < spec.n; i++)
		v[i] = i;
	return template_new(t->arena, &spec);
}

static struct template_doc *templates_of(const struct bench *t)
{
	return templates_in(t, (struct edition_choice){ .a4 = false });
}

/* How far the cut line of a page reaches along both axes. */
static pt cut_size(const struct ruler *r, unsigned page)
{
	double left = INFINITY, right = -INFINITY, top = INFINITY, bottom = -INFINITY;

	for (size_t i = 0; i < r->n; i++) {
		if (r->v[i].page != page || r->v[i].width_pt != 1.25)
			continue;
		left = fmin(left, fmin(r->v[i].a.x, r->v[i].b.x));
		right = fmax(right, fmax(r->v[i].a.x, r->v[i].b.x));
		top = fmin(top, fmin(r->v[i].a.y, r->v[i].b.y));
		bottom = fmax(bottom, fmax(r->v[i].a.y, r->v[i].b.y));
	}
	return (pt){ right - left, bottom - top };
}

/* Strokes one point wide of just that length: the scale bars. */
static unsigned bars_of(const struct ruler *r, unsigned page, double length_pt)
{
	unsigned n = 0;

	for (size_t i = 0; i < r->n; i++)
		n += r->v[i].page == page && r->v[i].width_pt == 1 &&
		    fabs(hypot(r->v[i].b.x - r->v[i].a.x, r->v[i].b.y - r->v[i].a.y) -
		    length_pt) < 1e-9;
	return n;
}

/* Saddle on NPS 4 of NPS 2: 7.461 long, and 2 in and 0.339 high, turned upright. */
static void saddle_at_full_size(void **state)
{
	struct bench t = bench_one(BLOCK("PD-33",
	    "shape: saddle\nrun: NPS 4 schedule 40\n"
	    "branch: NPS 2 schedule 40\n"));
	struct ruler *r = ruler_new(t.arena);
	struct template_doc *d = templates_of(&t);
	pt size;

	(void)state;
	assert_int_equal(template_pages(d), 1);
	template_emit(d, &r->canvas);
	size = cut_size(r, 1);
	assert_true(fabs(size.y / 72 - 7.461) < 5e-4);
	assert_true(fabs(size.x / 72 - 2.339) < 5e-4);
	assert_int_equal(bars_of(r, 1, 100 / IN * 72), 1);
	assert_int_equal(bars_of(r, 1, 4 * 72), 2);
	/* Beside 18 pt words it would need a second sheet, so it keeps the usual ones. */
	d = templates_in(&t, (struct edition_choice){ .large = true });
	assert_int_equal(template_pages(d), 1);
	bench_free(&t);
}

/* Both papers, both sizes of type: bars, words and full size stay; large words are 18 pt
 * but for numbers of lines that stand close. */
static void check_templates(const char *part, struct edition_choice e)
{
	struct bench t = bench_one(part);
	struct template_doc *d = templates_in(&t, e);
	struct probe *p = probe_new(t.arena, faces_new(t.arena));
	struct ruler *r = ruler_new(t.arena);

	p->sheet = (rect){ 18, 18, (e.a4 ? 595.27 : 612) - 36, (e.a4 ? 841.88 : 792) - 36 };
	template_emit(d, &p->canvas);
	template_emit(d, &r->canvas);
	assert_int_equal(p->page, template_pages(d));
	assert_int_equal(p->outside_sheet, 0);
	for (size_t i = 0; i < p->ntexts && e.large; i++)
		assert_true(p->texts[i].size_pt >= 18 || (p->texts[i].text.n <= 2 &&
		    p->texts[i].size_pt >= 10));
	for (unsigned page = 1; page <= p->page; page++) {
		assert_int_equal(bars_of(r, page, 100 / IN * 72), 1);
		assert_int_equal(bars_of(r, page, 4 * 72), 2);
	}
	if (p->page)
		assert_true(said(p, "do not fit to page") && said(p, "measure both"));
	bench_free(&t);
}

static void every_page_has_its_words(void **state)
{
	(void)state;
	for (size_t i = 0; i < PARTS; i++)
		for (int n = 0; n < 4; n++)
			check_templates(parts[i], (struct edition_choice){ .a4 = n & 1,
			    .large = n >> 1 });
}

/* A long rectangle needs no template; one that a page holds gets it. */
static void plain_blanks(void **state)
{
	struct bench t = bench_one(parts[2]);

	(void)state;
	assert_int_equal(template_pages(templates_of(&t)), 0);
	bench_free(&t);
	t = bench_one(parts[0]);
	assert_int_equal(template_pages(templates_of(&t)), 1);
	bench_free(&t);
}

/* Ends of strokes that lie within the strip from x0 to x1, moved to x0. */
static size_t strip_ends(const struct ruler *r, unsigned page, double x0, double x1,
    pt *out, size_t most)
{
	size_t n = 0;

	for (size_t i = 0; i < r->n; i++) {
		if (r->v[i].page != page || r->v[i].width_pt != 1.25)
			continue;
		if (r->v[i].b.x > x0 + 1e-6 && r->v[i].b.x < x1 - 1e-6 && n < most)
			out[n++] = (pt){ r->v[i].b.x - x0, r->v[i].b.y };
	}
	return n;
}

/* What one page shows in the shared strip, its neighbor shows in the same place. */
static void neighbors_agree(void **state)
{
	struct bench t = bench_one(parts[6]);
	const struct pattern *o = pattern_of(t.arena, block_of(&t));
	struct tiling g = tiling_new(&o->flat[0], 150, 170);
	pt one[400], two[400];
	size_t compared = 0;

	(void)state;
	assert_true(g.columns > 1);
	for (unsigned i = 0; i < (g.columns - 1) * g.rows; i++) {
		unsigned column = i % (g.columns - 1), row = i / (g.columns - 1);
		struct ruler *r = ruler_new(t.arena);
		size_t n;

		canvas_page_begin(&r->canvas, 612, 792);
		tiling_draw(&g, t.arena, &r->canvas, (pt){ 0, 0 }, column, row);
		canvas_page_end(&r->canvas);
		canvas_page_begin(&r->canvas, 612, 792);
		tiling_draw(&g, t.arena, &r->canvas, (pt){ 0, 0 }, column + 1, row);
		canvas_page_end(&r->canvas);
		n = strip_ends(r, 1, 150 - TILE_OVERLAP_PT, 150, one, 400);
		assert_int_equal(n, strip_ends(r, 2, 0, TILE_OVERLAP_PT, two, 400));
		for (size_t k = 0; k < n; k++)
			assert_true(hypot(one[k].x - two[k].x,
			    one[k].y - two[k].y) < 1e-9);
		compared += n;
	}
	assert_true(compared > 40);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(views_fit), cmocka_unit_test(no_room_is_said),
		cmocka_unit_test(outlines_fit_the_key), cmocka_unit_test(given_in_words),
		cmocka_unit_test(answers_in_both_units),
		cmocka_unit_test(finished_sizes_are_measured),
		cmocka_unit_test(impossible_part_is_a_finding),
		cmocka_unit_test(students_see_no_answer),
		cmocka_unit_test(saddle_at_full_size),
		cmocka_unit_test(every_page_has_its_words),
		    cmocka_unit_test(plain_blanks),
		cmocka_unit_test(neighbors_agree),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
