/* Torch cuts: their blocks, sections to scale and signs on the plate. Angles and runs
 * worked out here: a bevel of a degrees over a height h stands back h tan a. */
#include "model_bench.h"

#include "draw/fig.h"
#include "sheets/figure_data.h"

#include "figure_probe.h"

#define IN 25.4
#define S(text) { "" text, sizeof(text) - 1 }
#define HEAD "# TC-02: One\n\n- **Kind:** coupon\n- **Hours:** 2\n- **Process:** OFC\n"
#define FACTS(joint) HEAD "- **Joint:** " joint "\n- **Position:** flat\n" \
	"- **Material:** A36 plate\n- **Thickness:** 3/8 in\n\n## Drawing\n\n"
#define PLATE(lines) FACTS("cut edge") "```plate\nlength: 6 in\nwidth: 4 in\n" lines "```\n"

static const rect area = { 72, 50, 468, 236 };

static struct fig_joint cut_of(double t_in, double deg, double land_in, double kerf_in)
{
	struct fig_joint j = { .shape = deg > 0 ? FIG_BEVEL_CUT : FIG_CUT_EDGE,
		.t1_mm = t_in * IN, .bevel_angle_deg = deg, .land_mm = land_in * IN,
		.kerf_mm = kerf_in * IN, .label_t1 = S("11/16 in [17.5 mm]"),
		.label_bevel = S("37-1/2 ±2-1/2°"), .label_land = S("3/32 in [2.4 mm]"),
		.label_kerf = S("3/32 in [2.4 mm] kerf") };

	if (!(kerf_in > 0))
		j.label_kerf = (str){ 0 };
	return j;
}

static struct figure_probe *drawn(struct figure_bench *x, struct fig_joint j)
{
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);

	if (!fig_joint_draw(&p->canvas, x->faces, area, &j))
		fail_msg("%.3f mm, %.1f deg: %s", j.t1_mm, j.bevel_angle_deg, p->text);
	canvas_page_end(&p->canvas);
	figure_keeps_promises(p, area);
	return p;
}

/* An edge of the outline that stands back `back` over a height `high`, in points. */
static bool has_edge(const struct figure_probe *p, double back, double high)
{
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		for (size_t n = 1; k->ink.stroke_pt > 1.3 && n < k->n; n++) {
			pt a = k->s[n - 1].p[0], b = k->s[n].p[0];

			if (k->s[n].op == SEG_LINE && fabs(fabs(b.x - a.x) - back) < 0.05 &&
			    fabs(fabs(b.y - a.y) - high) < 0.05)
				return true;
		}
	}
	return false;
}

static void sections_are_to_scale(void **state)
{
	static const double t[] = { 0.1196, 0.25, 0.375, 0.75, 2 };
	static const double deg[] = { 0, 15, 22.5, 30, 37.5, 45 };

	for (size_t i = 0; i < sizeof t / sizeof *t; i++)
		for (size_t k = 0; k < sizeof deg / sizeof *deg; k++)
			for (int more = 0; more < 4; more++) {
				double land = deg[k] > 0 && (more & 1) ? t[i] / 4 : 0;
				double kerf = more & 2 ? 0.09375 : 0, pt_in;
				struct figure_probe *p = drawn(*state,
				    cut_of(t[i], deg[k], land, kerf));

				pt_in = 72 * (strstr(p->text, "to scale") &&
				    !strstr(p->text, "1:1") ? figure_told_scale(p) : 1);
				assert_true(has_edge(p, (t[i] - land) *
				    tan(deg[k] * 3.14159265358979 / 180) * pt_in,
				    (t[i] - land) * pt_in));
				assert_true(figure_has_text(p, "torch"));
				assert_int_equal(figure_has_text(p, "kerf"), kerf > 0);
				assert_int_equal(figure_has_text(p, "37-1/2"), deg[k] > 0);
			}
}

static void what_is_no_cut(void **state)
{
	struct fig_joint j = cut_of(0.375, 0, 0, 0.1);

	(void)state;
	assert_int_equal(fig_joint_fault(&j).n, 0);
	j.land_mm = 1;
	assert_true(fig_joint_fault(&j).n > 0);
	j = cut_of(0.375, 30, 0.375, 0);
	assert_true(fig_joint_fault(&j).n > 0);
	j = cut_of(0.375, 30, 0, 0);
	j.leg_mm = 3;
	assert_true(fig_joint_fault(&j).n > 0);
	j = cut_of(0.375, 80, 0, 0);
	assert_true(fig_joint_fault(&j).n > 0);
}

/* ---- blocks ---- */

static const struct assignment *one(const struct bench *t)
{
	assert_int_equal(t->m->nassignments, 1);
	return t->m->assignments;
}

static void a_cut_is_no_weld(void **state)
{
	struct bench t = bench_one(FACTS("bevel cut, tee") "```joint\njoint: bevel cut\n"
	    "angle: 30 deg\n```\n\n```joint\njoint: tee\nleg: 1/4 in\n```\n");
	struct fig_joint f;

	(void)state;
	assert_int_equal(one(&t)->drawings[0].joint.weld, NONE);
	figure_joint(t.arena, NULL, one(&t), &one(&t)->drawings[0].joint, &f);
	assert_int_equal(f.shape, FIG_BEVEL_CUT);
	assert_true(f.bevel_angle_deg == 30);
	expect_near(f.t1_mm, IN * 3 / 8);
	assert_int_equal(f.position.n, 0);
	bench_free(&t);
	t = bench_one(FACTS("bevel cut") "```joint\njoint: cut edge\n```\n");
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_FACTS_DISAGREE);
	bench_free(&t);
}

static void lines_say_the_side_of_the_kerf(void **state)
{
	struct bench t = bench_one(PLATE("kerf: 1/8 in\ncut: 0, 3 to 6, 3 in, kerf above\n"
	    "cut: 2, 0 to 2, 3 in, kerf left\ncut: 4, 0 to 4, 3 in\n"));
	const struct plate_block *p = &one(&t)->drawings[0].plate;

	(void)state;
	expect_none(&t);
	expect_near(p->kerf.lo, IN / 8);
	assert_int_equal(p->nmarks, 3);
	assert_int_equal(p->marks[0].kerf, KERF_ABOVE);
	assert_int_equal(p->marks[1].kerf, KERF_LEFT);
	assert_int_equal(p->marks[2].kerf, KERF_NONE);
	assert_true(str_has(figure_plate_head(t.arena, NULL, p), "Kerf 1/8 in"));
	bench_free(&t);
	t = bench_one(PLATE("cut: 2, 0 to 2, 4 in, kerf above\n"));
	expect_one(&t, FINDING_BAD_DRAWING, 16, 28, "upright line", "left, right or middle");
	bench_free(&t);
	t = bench_one(PLATE("cut: 2, 0 to 2, 4 in, kerf inside\n"));
	expect_one(&t, FINDING_UNKNOWN_WORD, 16, 28, "inside", "above");
	bench_free(&t);
}

static size_t thin_strokes(const struct figure_probe *p)
{
	size_t n = 0;

	for (size_t i = 0; i < p->npaths; i++)
		n += p->path[i].n == 2 && p->path[i].ink.stroke_pt < 1.1 &&
		    p->path[i].ink.dash_on_pt == 0;
	return n;
}

/* Of a hole eight ticks inside, of a long line eight on its side, none of a middle. */
static void signs_on_the_plate(void **state)
{
	struct figure_bench *x = *state;
	struct bench t = bench_one(PLATE("kerf: 1/8 in\nhole: 3, 1-1/2, 2 in\n"
	    "cut: 0, 3 to 6, 3 in, kerf above\ncut: 5, 0 to 5, 3 in\n"));
	struct fig_plate plate = figure_plate(t.arena, NULL, &one(&t)->drawings[0].plate);
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);

	assert_true(fig_plate_draw(&p->canvas, x->faces, area, &plate));
	canvas_page_end(&p->canvas);
	figure_keeps_promises(p, area);
	assert_int_equal(thin_strokes(p), 16);
	assert_true(str_has(fig_plate_words(t.arena, &plate), "kerf above the line"));
	assert_true(str_has(fig_plate_words(t.arena, &plate), "kerf inside"));
	assert_true(str_has(fig_plate_words(t.arena, &plate), "to a point, 6 in [152.4 mm] from "
	    "the left, 3 in [76.2 mm] from the bottom"));
	bench_free(&t);
}

/* Four holes of one size and two of another: each count is told once. */
static void counts_are_told_once(void **state)
{
	struct bench t = bench_one(PLATE("hole: 1, 1, 1/2 in\nhole: 5, 1, 1/2 in\n"
	    "hole: 5, 3, 1/2 in\nhole: 1, 3, 1/2 in\nhole: 2, 2, 1/4 in\nhole: 3, 2, 1/4 in\n"
	    "hole: 4, 2, 1 in\n"));
	struct fig_plate f = figure_plate(t.arena, NULL, &one(&t)->drawings[0].plate);
	size_t labels = 0;

	(void)state;
	for (size_t i = 0; i < f.nfeatures; i++)
		labels += !f.features[i].like_another;
	assert_int_equal(labels, 3);
	expect_str(f.features[2].label_all, "1/2 in [12.7 mm] dia, 4 places");
	expect_str(f.features[5].label_all, "1/4 in [6.4 mm] dia, 2 places");
	assert_int_equal(f.features[6].label_all.n, 0);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(sections_are_to_scale, figure_bench_begin,
		    figure_bench_end),
		cmocka_unit_test(what_is_no_cut), cmocka_unit_test(a_cut_is_no_weld),
		cmocka_unit_test(lines_say_the_side_of_the_kerf),
		cmocka_unit_test_setup_teardown(signs_on_the_plate, figure_bench_begin,
		    figure_bench_end),
		cmocka_unit_test(counts_are_told_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
