/* Weldments from the words of a plate block to the picture: what is read, what is told to
 * be wrong, and what every such figure promises. */
#include "model_bench.h"

#include "draw/dim.h"
#include "draw/geom.h"
#include "draw/iso_plan.h"
#include "figure_probe.h"
#include "model/weldment.h"
#include "sheets/review.h"

struct edition;
struct fig_iso weldment_figure(struct arena *a, const struct edition *e,
    const struct assignment *x, const struct weldment *w);

#define HEAD "# SM-01: Work\n\n- **Kind:** drill\n- **Hours:** 4\n" \
	"- **Material:** A500 tube, A36 plate\n- **Thickness:** 1/8 in, 1/4 in\n\n"
#define PIECES "## Pieces\n\n- rail: 2 of 2 x 2 x 30 in A500 tube, sawn\n" \
	"- pad: 4 of 1/4 x 4 x 4 in A36 plate, sheared\n" \
	"- post: 2 of NPS 2 schedule 40 x 20 in A53 pipe, sawn\n" \
	"- brace: 2 of 2 x 2 x 3/16 x 10 in A36 angle, sawn\n\n"
#define BLOCK(lines) "## Drawing\n\n```plate\n" lines "```\n"

static const struct weldment *only(const struct bench *t)
{
	const struct assignment *x = t->m->assignments;

	assert_int_equal(x->ndrawings, 1);
	assert_int_equal(x->drawings[0].kind, DRAWING_WELDMENT);
	return x->drawings[0].weldment;
}

static void members_are_read(void **state)
{
	struct bench t = bench_one(HEAD PIECES BLOCK("seen from: left\n"
	    "member: rail; 30 x 2 x 2 in; at 0, 1, 20-1/4 in; at 0, 9 , 20-1/4 in\n"
	    "member: Post; along z; at 3, 2, 1/4 in\n"
	    "member: brace; 2 x 2 x 10 in; heel right back; at 5, 5, 0 in; turned 25-1/2 deg\n"
	    "member: pad; 1/4 in along y; corners 0, 0 to 4, 0 to 1/2, 4 in\n"
	    "member: cap; round bar along x; 25.4 x 50.8 x 50.8 mm; turned 10 deg about y\n"
	    "member: sleeve; NPS 1 schedule 40 x 6 in along x\n"));
	const struct weldment *w = only(&t);
	const struct member *m = w->v;

	(void)state;
	expect_none(&t);
	assert_int_equal(w->n, 6);
	assert_true(w->from_left);
	assert_int_equal(m[0].shape, MEMBER_TUBE);
	assert_int_equal(m[0].along, AXIS_X);
	assert_int_equal(m[0].nat, 2);
	expect_near(m[0].at[1].v[1].lo, 228.6);
	expect_near(m[0].wall_mm, 3.175);
	/* NPS 2 schedule 40: 2.375 in outside, wall 0.154 in (ASME B36.10M). */
	assert_int_equal(m[1].shape, MEMBER_PIPE);
	expect_near(m[1].size_mm[0], 60.325);
	expect_near(m[1].size_mm[2], 508);
	expect_near(m[1].wall_mm, 3.9116);
	assert_int_equal(m[2].shape, MEMBER_ANGLE);
	expect_near(m[2].wall_mm, 4.7625);
	assert_true(m[2].heel_far[0] && m[2].heel_far[1]);
	expect_near(m[2].turn_deg, 25.5);
	assert_int_equal(m[2].about, AXIS_Z);
	assert_int_equal(m[3].ncorners, 3);
	assert_int_equal(m[3].along, AXIS_Y);
	expect_near(m[3].size_mm[1], 6.35);
	expect_near(m[3].corners_mm[4], 12.7);
	assert_int_equal(m[4].shape, MEMBER_ROUND);
	assert_int_equal(m[4].about, AXIS_Y);
	expect_near(m[5].size_mm[0], 152.4);
	assert_int_equal(m[5].piece, NONE);
	bench_free(&t);
}

static void what_is_not_understood_is_told(void **state)
{
	static const struct { const char *line; uint32_t col; const char *say, *repair; } rows[] = {
		{ "member: rail; 30 x 2 in; at 0, 0, 0 in", 15, "\"30 x 2 in\"", "left to right" },
		{ "member: rail; 30 x 2 x 2 in; at 0, 0 in", 33, "\"0, 0 in\"", "how far" },
		{ "member: rail; 30 x 2 x 2 in along w", 15, "not understood", "semicolons" },
		{ "member: pad; corners 0, 0 to 4, 0 to 0, 4 in", 9, "", "thickness" },
		{ "member: pad; 1/4 in along x; corners 0, 0 to 4, 0 in", 38, "0, 0 to 4", "3 to 16" },
		{ "member: rail; 30 x 2 x 2 in; turned 5 deg round x", 37, "", "about x" },
		{ "member: rail; 30 x 2 x 2 in; heel inside", 35, "\"inside\"", "two of left" },
		{ "member: rail", 9, "\"rail\"", "left to right" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char text[1200];
		struct bench t;

		snprintf(text, sizeof text, "%s## Drawing\n\n```plate\n%s\n```\n", HEAD PIECES,
		    rows[i].line);
		t = bench_one(text);
		expect_one(&t, FINDING_BAD_DRAWING, 18, rows[i].col, rows[i].say, rows[i].repair);
		assert_int_equal(only(&t)->n, 0);
		bench_free(&t);
	}
}

static struct bench review(const char *lines)
{
	char text[2400];
	struct bench t;

	snprintf(text, sizeof text, "%s## Drawing\n\n```plate\n%s```\n", HEAD, lines);
	t = bench_one(text);
	sheets_review(t.arena, t.m, faces_new(t.arena), sheets_told(t.arena, t.m, t.f), t.f);
	findings_sort(t.f);
	return t;
}

#define PAD "member: pad; 4 x 4 x 1/4 in; at 0, 0, 0 in\n"

static void impossible_members_are_told_at_their_place(void **state)
{
	static const struct { const char *line; int name; uint32_t col; const char *say; } rows[] = {
		/* Standing on the pad; a root opening above it; just too far. */
		{ "member: a; 1 x 1 x 9 in; at 1, 1, 1/4 in\n", -1, 0, "" },
		{ "member: a; 1 x 1 x 9 in; at 1, 1, 1/2 in\n", -1, 0, "" },
		{ "member: a; 1 x 1 x 9 in; at 1, 1, 9/16 in\n", FINDING_FLOATING_PART, 29,
		    "touches nothing: the next member is 5/16 in [7.9 mm] away" },
		/* 1/64 in deep is rounding, 1/32 in is not. */
		{ "member: a; 1 x 1 x 9 in; at 1, 1, 15/64 in\n", -1, 0, "" },
		{ "member: a; 1 x 1 x 9 in; at 1, 1, 7/32 in\n", FINDING_PARTS_OVERLAP, 29,
		    "the a stands 0.031 in [0.79 mm] deep in the pad" },
		{ "member: a; 1 x 0 x 9 in; at 1, 1, 1/4 in\n", FINDING_BAD_DRAWING, 9,
		    "a size is missing or nothing" },
		{ "member: a; tube; 1 x 1 x 9 in; wall 1/2 in; at 1, 1, 1/4 in\n", FINDING_BAD_DRAWING,
		    9, "its wall is missing or fills it" },
		{ "member: a; 1/4 in along x; corners 0, 0 to 4, 4 to 4, 0 to 0, 4 in; at 0, 0, 1/4 in\n",
		    FINDING_BAD_DRAWING, 9, "crosses itself" },
		/* Two that touch each other and nothing else. */
		{ "member: a; 1 x 1 x 9 in; at 40, 1, 1/4 in; at 41, 1, 1/4 in\n"
		  "member: pad; 4 x 4 x 1/4 in; at 4, 0, 0 in; at 8, 0, 0 in\n", FINDING_FLOATING_PART,
		    29, "hang on nothing else" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char lines[600];
		struct bench t;

		snprintf(lines, sizeof lines, PAD "%s", rows[i].line);
		t = review(lines);
		if (rows[i].name < 0)
			expect_none(&t);
		else
			expect_one(&t, (enum finding_name)rows[i].name, 12, rows[i].col, rows[i].say,
			    "correct");
		bench_free(&t);
	}
}

/* ---- the figure ---- */

#define HORSE "member: rail; tube; 36 x 2-1/2 x 2-1/2 in; wall 1/8 in; at 0, 8-3/4, 26-1/2 in\n" \
	"member: post; tube; 1-1/2 x 1-1/2 x 24 in; wall 1/8 in; at 3-1/4, 9-1/4, 2-1/2 in; " \
	"at 31-1/4, 9-1/4, 2-1/2 in\n" \
	"member: foot; tube; 2-1/2 x 20 x 2-1/2 in; wall 1/8 in; at 2-3/4, 0, 0 in; " \
	"at 30-3/4, 0, 0 in\n" \
	"member: gusset; 1/4 in along x; corners 0, 0 to 4, 0 to 0, 4 in; at 3-7/8, 10-3/4, 2-1/2 in\n"
#define STAND "member: base; 8 x 8 x 3/8 in\nmember: post; NPS 2 schedule 40 x 24 in along z; " \
	"at 4, 4, 3/8 in\nmember: head; 8 x 4 x 3/8 in; at 0, 2, 24-3/8 in\n"
#define FRAME "member: side; angle; 60 x 2 x 2 in; wall 1/4 in; at 0, 0, 0 in\n" \
	"member: side; angle; 60 x 2 x 2 in; wall 1/4 in; heel back bottom; at 0, 28, 0 in\n" \
	"member: end; 2 x 26 x 1/4 in; at 0, 2, 0 in; at 58, 2, 0 in\n"

struct figure { struct bench t; struct fig_iso iso; const struct faces *faces; };

static struct figure make(const char *lines)
{
	struct figure k = { .t = review(lines) };

	expect_none(&k.t);
	k.faces = faces_new(k.t.arena);
	k.iso = weldment_figure(k.t.arena, NULL, k.t.m->assignments, only(&k.t));
	return k;
}

static struct figure_probe *draw(const struct figure *k, rect area, bool *ok)
{
	struct figure_probe *p = figure_probe_new(k->t.arena, k->faces);

	*ok = fig_iso_draw(&p->canvas, k->faces, area, &k->iso);
	canvas_page_end(&p->canvas);
	return p;
}

/* A dimension line: thin, of that length, along that axis on paper. */
static bool has_dimension(const struct figure_probe *p, double length, pt axis)
{
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *q = &p->path[i];
		pt d;

		if (q->n != 2 || q->ink.stroke_pt != DIM_THIN_PT)
			continue;
		d = pt_sub(q->s[1].p[0], q->s[0].p[0]);
		if (fabs(fabs(d.x) - length * axis.x) < 0.01 &&
		    fabs(fabs(d.y) - length * axis.y) < 0.01)
			return true;
	}
	return false;
}

/* Leaders and extension lines pass through no label but the balloon they begin at. */
static void lines_cross_no_label(const struct figure_probe *p)
{
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *q = &p->path[i];

		if (q->n != 2 || q->ink.stroke_pt != DIM_THIN_PT)
			continue;
		for (size_t k = 0; k < p->nboxes; k++) {
			rect r = rect_inset(p->box[k], 0.5);
			pt middle = { r.x + r.w / 2, r.y + r.h / 2 };
			pt a = q->s[0].p[0], b = q->s[1].p[0];

			if (pt_length(pt_sub(a, middle)) > ISO_BALLOON_PT + 0.1 &&
			    rect_crossed(r, a, b))
				fail_msg("a line crosses label %zu of:\n%s", k, p->text);
		}
	}
}

static void figures_keep_their_promises(void **state)
{
	static const struct { const char *lines; double in[3]; const char *labels[3]; } rows[] = {
		{ HORSE, { 36, 20, 29 }, { "36 in", "20 in", "29 in" } },
		{ STAND, { 8, 8, 24.75 }, { "8 in", "8 in", "24-3/4 in" } },
		{ FRAME, { 60, 30, 2 }, { "60 in", "30 in", "2 in" } },
	};
	static const rect areas[] = { { 40, 60, 460, 300 }, { 40, 60, 460, 380 },
		{ 40, 60, 230, 330 } };
	const pt axes[3] = { { sqrt(3) / 2, 0.5 }, { sqrt(3) / 2, 0.5 }, { 0, 1 } };

	(void)state;
	for (size_t i = 0; i < 6; i++) {
		char lines[1200];
		struct figure k;

		snprintf(lines, sizeof lines, "%s%s", i < 3 ? "" : "seen from: left\n",
		    rows[i % 3].lines);
		k = make(lines);
		for (size_t j = 0; j < 3; j++) {
			bool ok;
			struct figure_probe *p = draw(&k, areas[j], &ok);

			assert_true(ok);
			figure_keeps_promises(p, areas[j]);
			lines_cross_no_label(p);
			for (int d = 0; d < 3; d++) {
				assert_true(figure_has_text(p, rows[i % 3].labels[d]));
				assert_true(has_dimension(p, rows[i % 3].in[d] * 72 *
				    figure_told_scale(p), axes[d]));
			}
			for (size_t part = 0; part < k.iso.nparts; part++) {
				const char letter[3] = { FIG_ISO_LETTERS[part], '\n', 0 };

				assert_true(figure_has_text(p, letter));
			}
		}
		bench_free(&k.t);
	}
}

static void no_room_is_said(void **state)
{
	static const rect small = { 40, 60, 110, 70 };
	struct figure k = make(HORSE);
	bool ok;
	struct figure_probe *p = draw(&k, small, &ok);

	(void)state;
	assert_false(ok);
	assert_true(figure_has_text(p, "no drawing:"));
	bench_free(&k.t);
}

static void words_say_what_is_drawn(void **state)
{
	struct figure k = make(STAND);
	str w = fig_iso_words(k.t.arena, &k.iso);

	(void)state;
	assert_true(str_has(w, "from the front, the right and above: 8 in [203.2 mm] from left to "
	    "right, 8 in [203.2 mm] from front to back, 24-3/4 in [628.7 mm] high."));
	assert_true(str_has(w, " P: 1 base, 8 x 8 x 3/8 in [203.2 x 203.2 x 9.5 mm]."));
	assert_true(str_has(w, " Q: 1 post, NPS 2 schedule 40 x 24 in [609.6 mm]: 4 in [101.6 mm] "
	    "from the left, 4 in [101.6 mm] from the front, 3/8 in [9.5 mm] up."));
	bench_free(&k.t);
	/* Its lowest corner lies 2 + 1, 3 and 3 + 0 in from the zero of the block. */
	k = make("member: floor; 9 x 9 x 3 in\nmember: rib; 1/4 in along y; "
	    "corners 1, 0 to 4, 0 to 1, 3 in; at 2, 3, 3 in\n");
	assert_true(str_has(fig_iso_words(k.t.arena, &k.iso), "rib, 1/4 in [6.4 mm] thick: 3 in "
	    "[76.2 mm] from the left, 3 in [76.2 mm] from the front, 3 in [76.2 mm] up."));
	bench_free(&k.t);
}

/* What stands behind is in the list, without a balloon. */
static void a_part_out_of_sight_is_named(void **state)
{
	struct figure k = make("member: wall; 9 x 1 x 9 in\nmember: rib; 1 x 1/2 x 1 in; at 4, 1, 4 in\n"
	    "member: back; 9 x 1/4 x 9 in; at 0, 1-1/2, 0 in\n");
	static const rect area = { 40, 60, 460, 300 };
	bool ok;
	struct figure_probe *p = draw(&k, area, &ok);

	(void)state;
	assert_true(ok);
	assert_true(figure_has_text(p, "  rib (not seen from here)"));
	assert_false(figure_has_text(p, "wall (not"));
	bench_free(&k.t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(members_are_read),
		cmocka_unit_test(what_is_not_understood_is_told),
		cmocka_unit_test(impossible_members_are_told_at_their_place),
		cmocka_unit_test(figures_keep_their_promises),
		cmocka_unit_test(no_room_is_said),
		cmocka_unit_test(words_say_what_is_drawn),
		cmocka_unit_test(a_part_out_of_sight_is_named),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
