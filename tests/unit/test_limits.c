/* Limits as the sheets print them, worked out for one assignment. Figures worked by
 * hand from the sets: 3/8 in is 9.525 mm; a 5/16 in leg, 7.9375 mm, has a throat of
 * 5.6127 mm and a face of 11.2253 mm. */
#include "model_bench.h"

#include "cli/shipped.h"
#include "reckon/tensile.h"
#include "sheets/limits.h"

#include <math.h>
#include <stdlib.h>

#define TEE "# SM-01: Tee\n\n- **Kind:** coupon\n- **Hours:** 2\n- **Process:** SMAW\n" \
	"- **Joint:** tee\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n" \
	"- **Position:** 2F\n"
#define LEG "\n## Drawing\n\n```joint\njoint: tee\nleg: 5/16 in\n```\n"
#define VEE "# SM-01: Vee\n\n- **Kind:** coupon\n- **Hours:** 2\n- **Process:** SMAW\n" \
	"- **Joint:** single-V\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n" \
	"- **Position:** 1G\n"
#define ACCEPT "\n## Acceptance\n\n"

struct asked { struct bench t; struct limits l; };

static struct asked ask_of(const char *assignment, const char *set, size_t findings)
{
	struct file_text files[] = { { "assignments/a.md", assignment },
		{ "standards/a.md", set } };
	struct asked q = { .t = bench_bind(files, set ? 2 : 1) };
	const struct assignment *x = q.t.m->assignments;

	shipped_read(q.t.arena, q.t.m, &q.t.sources, q.t.f);
	if (q.t.f->n != findings)
		print_findings(&q.t);
	assert_int_equal(q.t.f->n, findings);
	q.l = limits_of(q.t.arena, NULL, x, &x->criteria[0]);
	return q;
}

static struct asked ask(const char *assignment, const char *set)
{
	return ask_of(assignment, set, 0);
}

static const struct limit *find(const struct asked *q, const char *feature)
{
	for (size_t i = 0; i < q->l.n; i++)
		if (str_eq(q->l.v[i].feature, str_of(feature)))
			return &q->l.v[i];
	return NULL;
}

static void expect_rule(const struct asked *q, const char *feature, const char *rule)
{
	const struct limit *l = find(q, feature);

	if (!l)
		fail_msg("no %s", feature);
	expect_str(l->rule, rule);
}

static void a_fillet_by_the_welder_test(void **state)
{
	struct asked q = ask(TEE LEG ACCEPT "- **Visual:** D1.1-2020 welder test\n",
	    NULL);

	(void)state;
	assert_int_equal(q.l.n, 7);
	expect_rule(&q, "Cracks", "none (Table 8.1 item 1)");
	expect_rule(&q, "Fusion", "full, between beads and to both members; no overlap "
	    "(Table 8.1 item 2)");
	expect_rule(&q, "Leg short of size", "none; legs no less than the size asked "
	    "for (6.10.1.2(3))");
	expect_rule(&q, "Undercut", "at most 1/32 in [1 mm] (6.10.1.2(5))");
	assert_true(find(&q, "Convexity")->sign == SIGN_CONFIRM);
	assert_false(find(&q, "Undercut")->sign == SIGN_CONFIRM);
	assert_false(find(&q, "Cracks")->sign == SIGN_CONFIRM);
	expect_str(find(&q, "Undercut")->tool, "undercut gauge");
	bench_free(&q.t);
}

static void a_fillet_by_a_level(void **state)
{
	struct asked q = ask(TEE LEG ACCEPT "- **Visual:** ISO 5817 C\n", NULL);

	(void)state;
	expect_rule(&q, "Undercut", "at most 0.5 mm [0.020 in] (the smaller of 0.1 t "
	    "and 0.5 mm; "
	    "no. 5011)");
	/* 1 + 0.15 x 11.2253 = 2.6838 mm = 0.10566 in; 0.2 x 5.6127 = 1.1225 mm. */
	expect_rule(&q, "Convexity", "at most 2.68 mm [0.106 in] (the smaller of 1 mm "
	    "+ 0.15 "
	    "width and 4 mm; no. 503)");
	expect_rule(&q, "Surface pore", "at most 1.12 mm [0.044 in] (the smaller of "
	    "0.2 throat "
	    "and 2 mm; no. 2017)");
	expect_rule(&q, "Toe angle", "at least 100\xC2\xB0 (no. 505)");
	assert_null(find(&q, "Hollow root"));
	bench_free(&q.t);
}

static void a_groove_whose_face_is_not_known(void **state)
{
	struct asked q = ask(VEE ACCEPT "- **Visual:** ISO 5817-2014 C\n", NULL);

	(void)state;
	expect_rule(&q, "Reinforcement", "at most the smaller of 1 mm + 0.15 width and "
	    "7 mm "
	    "(no. 502)");
	/* 0.1 x 9.525 = 0.9525 mm = 0.0375 in. */
	expect_rule(&q, "Hollow root", "at most 0.95 mm [0.038 in]; in short lengths "
	    "only, 25 mm "
	    "or less in any 100 mm (the smaller of 0.1 t and 1 mm; no. 515)");
	bench_free(&q.t);
}

static void a_leg_that_is_not_known(void **state)
{
	struct asked q = ask(TEE ACCEPT "- **Visual:** D1.1-2020 static\n", NULL);
	size_t rows = 0;

	(void)state;
	expect_rule(&q, "Leg short of size", "at most 1/16 in [2 mm] where leg < 1/4 "
	    "in; for at "
	    "most 10 % of the length of the weld (Table 8.1 item 6)");
	for (size_t i = 0; i < q.l.n; i++)
		rows += str_eq(q.l.v[i].feature, STR("Leg short of size"));
	assert_int_equal(rows, 3);
	bench_free(&q.t);
}

static void roots_are_judged_when_open(void **state)
{
	static const struct { const char *text; bool shown; } rows[] = {
		{ VEE ACCEPT "- **Visual:** D1.1-2020 welder test\n", true },
		{ VEE "- **Backing:** none\n" ACCEPT "- **Visual:** D1.1-2020 welder "
		    "test\n", true },
		{ VEE "- **Backing:** steel strip 1/4 x 1 in\n" ACCEPT
		    "- **Visual:** D1.1-2020 welder test\n", false },
		{ VEE "- **Backing:** back-gouged\n" ACCEPT
		    "- **Visual:** D1.1-2020 welder test\n", false },
		{ TEE LEG ACCEPT "- **Visual:** D1.1-2020 welder test\n", false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct asked q = ask(rows[i].text, NULL);

		assert_int_equal(find(&q, "Hollow root") != NULL, rows[i].shown);
		assert_int_equal(find(&q, "Melt-through") != NULL, rows[i].shown);
		bench_free(&q.t);
	}
}

static void an_own_set_in_the_unit_of_its_gauge(void **state)
{
	static const char set[] = "# Shop limits\n\n- **Source:** shop\n\n## Visual\n\n"
	    "- **Undercut:** at most min(1/16 in, 0.1 t); undercut gauge; page 1; seen\n"
	    "- **Dip:** at most min(1/16 in, 0.1 t); dial gauge, mm; page 1; memory\n"
	    "- **Throat:** at least max(throat, 3/16 in); fillet gauge; page 2; seen\n"
	    "- **Pores:** at most 2 per 12 in; rule; page 3; seen\n"
	    "- **Short leg:** at most 10 %; rule; page 4; seen\n"
	    "- **Never:** none where t < 3/8 in; rule; page 5; seen\n"
	    "- **Always:** none where t <= 3/8 in; rule; page 5; seen\n";
	struct asked q = ask(TEE LEG ACCEPT "- **Visual:** shop limits\n", set);

	(void)state;
	expect_rule(&q, "Undercut", "at most 0.038 in [1 mm] (the smaller of 1/16 in "
	    "and 0.1 t; "
	    "page 1)");
	expect_rule(&q, "Dip", "at most 0.95 mm [0.038 in] (the smaller of 1/16 in and "
	    "0.1 t; "
	    "page 1)");
	expect_str(find(&q, "Dip")->tool, "dial gauge");
	assert_true(find(&q, "Dip")->sign == SIGN_CONFIRM);
	/* 5.6127 mm is 0.22097 in, 0.0022 above 7/32. */
	expect_rule(&q, "Throat", "at least 0.221 in [5.6 mm] (the larger of throat "
	    "and 3/16 in; "
	    "page 2)");
	expect_rule(&q, "Pores", "at most 2 per 12 in (page 3)");
	expect_rule(&q, "Short leg", "at most 10 % (page 4)");
	assert_null(find(&q, "Never"));
	expect_rule(&q, "Always", "none (page 5)");
	bench_free(&q.t);
}

static void welds_that_differ_are_named(void **state)
{
	struct asked q = ask("# SM-01: Two\n\n- **Kind:** coupon\n- **Hours:** 2\n"
	    "- **Process:** SMAW\n\n## Welds\n\n"
	    "- **A:** tee, 2F, leg 1/4 in, A36 plate 3/8 in\n"
	    "- **B:** tee, 2F, leg 5/16 in, A36 plate 1 in\n" ACCEPT
	    "- **Visual:** D1.1-2020 static\n", NULL);

	(void)state;
	expect_rule(&q, "Cracks", "none (Table 8.1 item 1)");
	expect_rule(&q, "Undercut, weld A", "at most 1/32 in [1 mm] (Table 8.1 item 7A)");
	expect_rule(&q, "Undercut, weld B", "at most 1/16 in [2 mm]; any length "
	    "(Table 8.1 item 7A)");
	expect_rule(&q, "Leg short of size, weld A",
	    "at most 3/32 in [2.5 mm]; for at most 10 % "
	    "of the length of the weld (Table 8.1 item 6)");
	bench_free(&q.t);
}

static void specimens_and_lines_without_a_set(void **state)
{
	struct asked bend = ask(VEE ACCEPT "- **Root bend:** 2, D1.1-2020\n", NULL);
	struct asked loose = ask(VEE ACCEPT "- **Root bend:** 2, folds without a "
	    "crack\n", NULL);
	struct asked nothing = ask(VEE ACCEPT "- **Fillet break:** 1, D1.2-2014 static; "
	    "folds\n", NULL);

	(void)state;
	assert_int_equal(bend.l.n, 3);
	expect_rule(&bend, "Sum of openings", "at most 3/8 in [10 mm]; those over 1/32 in "
	    "[0.8 mm] and to 1/8 in [3.2 mm] (6.10.3.3)");
	assert_int_equal(loose.l.n, 1);
	expect_rule(&loose, "Root bend", "2, folds without a crack");
	assert_int_equal(nothing.l.n, 1);
	expect_rule(&nothing, "Fillet break", "1, D1.2-2014 static; folds");
	bench_free(&bend.t);
	bench_free(&loose.t);
	bench_free(&nothing.t);
}

/* The least leg of the drawn fillet on the grading sheet. */
static void expect_least_leg(const char *assignment, const char *set, const char *low)
{
	struct asked q = ask(assignment, set);
	struct measures m = measures_of(q.t.arena, NULL, q.t.m->assignments);

	assert_int_equal(m.n, 1);
	expect_str(m.v[0].feature, "Fillet leg");
	expect_str(m.v[0].low, low);
	bench_free(&q.t);
}

#define THIN_LEG "\n## Drawing\n\n```joint\njoint: tee\nleg: 1/16 in\n```\n"
#define SHORT_SET "# Shop limits\n\n- **Source:** shop\n\n## Visual fillet\n\n" \
	"- **Leg short of size:** at most 1/32 in where leg > 1/4 in; fillet gauge; " \
	"page 1; seen\n"

/* 5/16 - 1/8 = 3/16 and 5/16 - 1/32 = 9/32. Where nothing is allowed, or as much as
 * the whole leg, the leg is owed in full. */
static void least_legs_follow_the_set(void **state)
{
	(void)state;
	expect_least_leg(TEE LEG ACCEPT "- **Visual:** D1.1-2020 welder test\n", NULL,
	    "5/16 in [7.9 mm]");
	expect_least_leg(TEE LEG ACCEPT "- **Visual:** D1.1-2020 static\n", NULL,
	    "3/16 in [4.8 mm], for at most 10 % of the length of the weld");
	expect_least_leg(TEE LEG ACCEPT "- **Visual:** shop limits\n", SHORT_SET,
	    "9/32 in [7.1 mm]");
	expect_least_leg(TEE LEG ACCEPT "- **Visual:** no crack\n", NULL,
	    "5/16 in [7.9 mm]");
	expect_least_leg(TEE THIN_LEG ACCEPT "- **Visual:** D1.1-2020 welder test\n", NULL,
	    "1/16 in [1.6 mm]");
	expect_least_leg(TEE THIN_LEG ACCEPT "- **Visual:** shop limits\n", SHORT_SET,
	    "1/16 in [1.6 mm]");
}

static void a_size_below_nothing_prints_no_figure(void **state)
{
	static const char set[] = "# Shop limits\n\n- **Source:** shop\n\n## Visual\n\n"
	    "- **Cap:** at most t - 1/2 in; cam gauge; page 1; seen\n"
	    "- **Step:** at most t - 3/8 in; cam gauge; page 1; seen\n";
	/* Both are told over the sizes of the trade, and the first at this very size. */
	struct asked q = ask_of(TEE LEG ACCEPT "- **Visual:** shop limits\n", set, 3);

	(void)state;
	expect_rule(&q, "Cap", "at most t - 1/2 in (page 1)");
	expect_rule(&q, "Step", "at most 0 in [0 mm] (t - 3/8 in; page 1)");
	bench_free(&q.t);
}

/* A sheet's own line about the leg stands alone, and an allowance as large as the leg
 * is none. */
static void short_legs_where_they_mean_nothing(void **state)
{
	struct asked q = ask(TEE LEG ACCEPT "- **Visual:** D1.1-2020 static\n"
	    "- **Leg size:** 5/16 in, +1/16 -0 in, fillet gauge\n", NULL);

	(void)state;
	assert_null(find(&q, "Leg short of size"));
	assert_non_null(find(&q, "Cracks"));
	bench_free(&q.t);
	q = ask(TEE THIN_LEG ACCEPT "- **Visual:** D1.1-2020 static\n", NULL);
	assert_null(find(&q, "Leg short of size"));
	assert_non_null(find(&q, "Cracks"));
	bench_free(&q.t);
}

static const struct measure *measure(const struct measures *m, const char *feature)
{
	for (size_t i = 0; i < m->n; i++)
		if (str_eq(m->v[i].feature, str_of(feature)))
			return &m->v[i];
	print_error("no row %s\n", feature);
	return NULL;
}

static void expect_ends(const struct measures *m, const char *feature, const char *low,
    const char *high)
{
	const struct measure *k = measure(m, feature);

	assert_non_null(k);
	expect_str(k->low, low);
	expect_str(k->high, high);
	assert_int_equal(k->sign, SIGN_CUSTOM);
}

/* A range ends as it was written: 1/64 in, not 0.016. */
static void ends_of_a_range_keep_their_fraction(void **state)
{
	struct asked q = ask(VEE "\n## Drawing\n\n```joint\njoint: single-V\n"
	    "gap: 1/64 to 3/32 in\nangle: 55 to 65 deg\n```\n" ACCEPT
	    "- **Visual:** D1.1-2020 static\n", NULL);
	struct measures m = measures_of(q.t.arena, NULL, q.t.m->assignments);
	const struct measure *gap = measure(&m, "Root opening"), *v = measure(&m,
	    "Included angle");

	(void)state;
	assert_true(gap && v);
	expect_str(gap->low, "1/64 in [0.4 mm]");
	expect_str(gap->high, "3/32 in [2.4 mm]");
	expect_str(v->low, "55°");
	expect_str(v->high, "65°");
	bench_free(&q.t);
}

#define PLATE "# FB-01: Plate\n\n- **Kind:** drill\n- **Hours:** 2\n" \
	"- **Material:** A36 plate\n- **Thickness:** 3/8 in\n"
#define DRAWN "\n## Drawing\n\n```plate\nlength: 24 in\nwidth: 8 in\nthickness: 3/8 in\n" \
	"hole: 1, 2, 13/16 in\nhole: 7, 2, 13/16 in\nslot: 12, 4, 3, 1/2 in\n```\n"

/* Sawn: 1/32 in to 12 in, 1/16 beyond; holes 1/32. Out of square 0.003 x 24 = 0.072 in,
 * flat 0.005 x 24 = 0.12 in. */
static void shop_tolerances_of_a_plate(void **state)
{
	struct asked q = ask(PLATE DRAWN ACCEPT "- **Dimensions:** Shop tolerances; slot by "
	    "eye\n", NULL);
	struct measures m = measures_of(q.t.arena, NULL, q.t.m->assignments);

	(void)state;
	assert_int_equal(m.n, 11);
	expect_ends(&m, "Length", "23-15/16 in [608 mm]", "24-1/16 in [611.2 mm]");
	expect_ends(&m, "Width", "7-31/32 in [202.4 mm]", "8-1/32 in [204 mm]");
	expect_ends(&m, "Hole 2 from left", "6-31/32 in [177 mm]", "7-1/32 in [178.6 mm]");
	expect_ends(&m, "Diameter of each hole", "25/32 in [19.8 mm]", "27/32 in [21.4 mm]");
	/* A slot 1/2 in wide is sized as a hole of 1/2 in, to 1/64. */
	expect_ends(&m, "Slot 1 middle from left", "11-31/32 in [304 mm]",
	    "12-1/32 in [305.6 mm]");
	expect_ends(&m, "Slot 1 length", "2.984 in [75.80 mm]", "3.016 in [76.60 mm]");
	expect_ends(&m, "Slot 1 width", "0.484 in [12.30 mm]", "0.516 in [13.10 mm]");
	expect_rule(&q, "Squareness", "at most 0.072 in [1.8 mm]; corner to corner or by "
	    "the square (the larger of 1/32 in and 0.003 length; common practice)");
	expect_rule(&q, "Flatness", "at most 0.120 in [3 mm]; under a straightedge (the "
	    "larger of 1/16 in and 0.005 length; common practice)");
	assert_int_equal(find(&q, "Flatness")->sign, SIGN_CUSTOM);
	assert_null(find(&q, "Cut length"));
	assert_null(find(&q, "Members out of line"));
	assert_null(find(&q, "Face of the cut out of square"));
	expect_rule(&q, "Dimensions", "slot by eye");
	bench_free(&q.t);
	q = ask(PLATE "- **Process:** OFC\n- **Joint:** cut edge\n- **Position:** flat\n" DRAWN
	    ACCEPT "- **Dimensions:** Shop tolerances\n", NULL);
	m = measures_of(q.t.arena, NULL, q.t.m->assignments);
	expect_ends(&m, "Width", "7-15/16 in [201.6 mm]", "8-1/16 in [204.8 mm]");
	assert_non_null(find(&q, "Face of the cut out of square"));
	bench_free(&q.t);
}

/* 11 ga is under 1/8 in: flanges 1/32 in, bends 1 deg; 1/4 in plate 1/16 in and 2 deg. */
static void shop_tolerances_of_a_bend(void **state)
{
	static const char thin[] = "# FB-02: Bends\n\n- **Kind:** drill\n- **Hours:** 2\n"
	    "- **Material:** A1011 sheet\n- **Thickness:** 11 ga\n\n## Drawing\n\n```pattern\n"
	    "shape: brake\nflanges: 1, 2 in\nbends: 90 deg\ndirections: up\nradius: 1/8 in\n"
	    "K: 0.42\nwidth: 4 in\n```\n" ACCEPT "- **Dimensions:** Shop tolerances\n";
	struct asked q = ask(thin, NULL);
	struct measures m = measures_of(q.t.arena, NULL, q.t.m->assignments);

	(void)state;
	expect_str(measure(&m, "Flange 1")->low, "31/32 in [24.6 mm]");
	expect_ends(&m, "Bend angle, each bend", "89\xC2\xB0", "91\xC2\xB0");
	bench_free(&q.t);
}

/* A program's own copy that somebody checked prints without the mark. */
static void a_checked_copy_has_no_mark(void **state)
{
	static const char set[] = "# Shop tolerances\n\n- **Source:** committee\n"
	    "- **Checked against:** drawing rules, by lead instructor, 2026-08-14\n\n"
	    "## Dimensions\n\n- **Cut length:** within 1/8 in; tape; rules; custom\n"
	    "- **Edges:** no burr; glove; rules; custom\n";
	struct asked q = ask(PLATE DRAWN ACCEPT "- **Dimensions:** Shop tolerances\n", set);
	struct measures m = measures_of(q.t.arena, NULL, q.t.m->assignments);

	(void)state;
	assert_int_equal(m.n, 2);
	expect_str(m.v[0].low, "23-7/8 in [606.4 mm]");
	assert_int_equal(m.v[0].sign, SIGN_NONE);
	assert_int_equal(find(&q, "Edges")->sign, SIGN_NONE);
	bench_free(&q.t);
}

/* What stands behind the set has a row of its own, but for how strips are cut; a code
 * that those words mention is not the set of the line. */
static void own_words_have_a_row(void **state)
{
	struct asked q = ask(TEE LEG ACCEPT "- **Visual:** D1.1-2020 static; no gray face; "
	    "toes within 1/32 in\n", NULL);
	struct asked strips = ask(VEE ACCEPT "- **Root bend:** 2, D1.1-2020; strips 1 in "
	    "wide\n", NULL);
	struct asked other = ask(VEE ACCEPT "- **Nick break:** 2; shop limits, see D1.1\n",
	    NULL);

	(void)state;
	expect_rule(&q, "Visual", "no gray face; toes within 1/32 in [0.8 mm]");
	assert_null(find(&strips, "Root bend"));
	assert_int_equal(other.l.n, 1);
	assert_null(other.t.m->assignments[0].criteria[0].standard);
	bench_free(&q.t);
	bench_free(&strips.t);
	bench_free(&other.t);
}

/* A36: 58 ksi at least (ASTM A36, from memory, hence the mark); 95 % of it 55.1. */
static void tensile_goes_by_the_metal(void **state)
{
	struct asked q = ask(VEE ACCEPT "- **Tensile:** 2, ASME IX-2023\n", NULL);

	(void)state;
	expect_rule(&q, "Strength", "at least 58 ksi [400 MPa]; of the weaker metal; asked "
	    "of procedures, not of welders (base strength; QW-153.1)");
	expect_rule(&q, "Strength, broken beside the weld", "at least 55.1 ksi [380 MPa]; "
	    "break in the plate, clear of weld and fusion line (0.95 base strength; "
	    "QW-153.1(d))");
	assert_int_equal(find(&q, "Strength")->sign, SIGN_CONFIRM);
	assert_true(fabs(tensile_load_lbf(58000, 25.4, 9.525) - 21750) < 1e-6);
	bench_free(&q.t);
}

/* "weld B only" judges B; a line that names none judges all. */
static void a_line_may_name_its_welds(void **state)
{
	static const char two[] = "# SM-01: Two\n\n- **Kind:** coupon\n- **Hours:** 2\n"
	    "- **Process:** SMAW\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n"
	    "- **Joint:** tee, single-V\n- **Position:** 2F, 1G\n\n## Welds\n\n"
	    "- **A:** tee, 2F, leg 5/16 in, A36 plate 3/8 in\n"
	    "- **B:** single-V, 1G, A36 plate 3/8 in\n" ACCEPT
	    "- **Visual:** D1.1-2020 static, weld B only\n";
	struct asked q = ask(two, NULL);

	(void)state;
	assert_non_null(find(&q, "Cracks, weld B"));
	assert_null(find(&q, "Cracks"));
	assert_null(find(&q, "Leg short of size, weld A"));
	bench_free(&q.t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_fillet_by_the_welder_test),
		cmocka_unit_test(a_fillet_by_a_level),
		cmocka_unit_test(a_groove_whose_face_is_not_known),
		cmocka_unit_test(a_leg_that_is_not_known),
		cmocka_unit_test(roots_are_judged_when_open),
		cmocka_unit_test(an_own_set_in_the_unit_of_its_gauge),
		cmocka_unit_test(welds_that_differ_are_named),
		cmocka_unit_test(specimens_and_lines_without_a_set),
		cmocka_unit_test(least_legs_follow_the_set),
		cmocka_unit_test(a_size_below_nothing_prints_no_figure),
		cmocka_unit_test(short_legs_where_they_mean_nothing),
		cmocka_unit_test(ends_of_a_range_keep_their_fraction),
		cmocka_unit_test(shop_tolerances_of_a_plate),
		cmocka_unit_test(shop_tolerances_of_a_bend),
		cmocka_unit_test(a_checked_copy_has_no_mark),
		cmocka_unit_test(own_words_have_a_row),
		cmocka_unit_test(tensile_goes_by_the_metal),
		cmocka_unit_test(a_line_may_name_its_welds),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
