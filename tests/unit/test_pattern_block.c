/* Pattern blocks as they are read, and what is said about those that cannot be. */
#include "model_bench.h"

#include "model/pattern_block.h"

#define IN 25.4

/* The fence opens on line 10 and its first line is line 11. */
#define PATTERN(name, lines) "# PD-20: Laid out\n\n- **Kind:** drill\n- **Hours:** 4\n" \
	"- **Material:** A1011 sheet\n- **Thickness:** 16 ga\n\n## Drawing\n\n" \
	"```pattern" name "\n" lines "```\n"

static const struct pattern_block *first(const struct bench *t)
{
	assert_int_equal(t->m->nassignments, 1);
	assert_int_equal(t->m->assignments[0].ndrawings, 1);
	assert_int_equal(t->m->assignments[0].drawings[0].kind, DRAWING_PATTERN);
	return t->m->assignments[0].drawings[0].pattern;
}

static void braked_part(void **state)
{
	struct bench t = bench_one(PATTERN("", "shape: brake\nflanges: 1, 2, 2, 1 in\n"
	    "bends: 90, 45, 90 deg\ndirections: up, down, up\nradius: 1/8 in\nK: 0.42\n"
	    "sizes: inside\nwidth: 4 in\n"));
	const struct pattern_block *p = first(&t);

	(void)state;
	expect_none(&t);
	assert_int_equal(p->shape, SHAPE_BRAKE);
	assert_int_equal(p->nflanges, 4);
	expect_near(p->flanges[2].lo, 2 * IN);
	assert_int_equal(p->nbends, 3);
	expect_near(p->bends[1].lo, 45);
	assert_false(p->down[0]);
	assert_true(p->down[1]);
	assert_int_equal(p->sizes, SIDE_INSIDE);
	expect_near(p->k, 0.42);
	/* The fact's gauge, for the fact's metal: Manufacturers Standard 16 ga. */
	expect_near(p->thickness.lo, 0.0598 * IN);
	bench_free(&t);
}

static void one_bend_for_all(void **state)
{
	struct bench t = bench_one(PATTERN("", "shape: brake\nflanges: 1, 2, 2, 1 in\n"
	    "bends: 60 deg\nradius: 1/8 in\nK: 0.42\n"));

	(void)state;
	expect_none(&t);
	assert_int_equal(first(&t)->nbends, 3);
	expect_near(first(&t)->bends[2].lo, 60);
	bench_free(&t);
}

/* The shape may stand last; the name is what follows the word. */
static void lateral(void **state)
{
	struct bench t = bench_one(PATTERN(" low branch", "run: NPS 4 schedule 40\n"
	    "branch: NPS 2 schedule 40\nangle: 45 deg\nlength: 9 in\nshape: lateral\n"));
	const struct pattern_block *p = first(&t);

	(void)state;
	expect_none(&t);
	expect_str(p->name, "low branch");
	assert_int_equal(p->shape, SHAPE_SADDLE);
	expect_near(p->run.od_mm, 4.5 * IN);    /* ASME B36.10M */
	expect_near(p->branch.od_mm, 2.375 * IN);
	expect_near(p->branch.wall_mm, 0.154 * IN);
	expect_near(p->height.lo, 9 * IN);
	/* The wall of the branch counts, not the thickness of the facts. */
	assert_int_equal(p->thickness.kind, QUANTITY_ANY);
	bench_free(&t);
}

static void oblong_off_center(void **state)
{
	struct bench t = bench_one(PATTERN("",
	    "shape: square to round\nbase: 14 x 10 in\n"
	    "top: 8 in\nheight: 12 in\noffset: 2, 1 in\ndivisions: 24\npieces: 2\n"
	    "line: mean\ntolerance: ±1/16 in\n"));
	const struct pattern_block *p = first(&t);

	(void)state;
	expect_none(&t);
	expect_near(p->base.lo, 14 * IN);
	expect_near(p->base2.lo, 10 * IN);
	expect_near(p->offset_x.lo, 2 * IN);
	expect_near(p->offset_y.lo, IN);
	assert_int_equal(p->line, SIDE_MEAN);
	assert_true(p->tolerance.tolerance);
	bench_free(&t);
}

static void elbow_by_pipe(void **state)
{
	struct bench t = bench_one(PATTERN("", "shape: elbow\noutside diameter: NPS 6 "
	    "schedule 40\nradius: 9 in\nangle: 90 deg\npieces: 4\n"
	    "stretch-out: outside\n"));
	const struct pattern_block *p = first(&t);

	(void)state;
	expect_none(&t);
	assert_true(p->pipe);
	expect_near(p->diameter.lo, 6.625 * IN);
	assert_int_equal(p->stretch, SIDE_OUTSIDE);
	assert_int_equal(p->sizes, SIDE_OUTSIDE);
	bench_free(&t);
}

/* ---- faults, with their places ---- */

static void one_fault(const char *text, enum finding_name name, uint32_t line,
    uint32_t col,
    const char *message, const char *repair)
{
	struct bench t = bench_one(text);

	expect_one(&t, name, line, col, message, repair);
	bench_free(&t);
}

static void faults(void **state)
{
	(void)state;
	one_fault(PATTERN("", "base: 12 in\n"), FINDING_BAD_DRAWING, 10, 1,
	    "does not say which shape", "shape: cone");
	one_fault(PATTERN("", "shape: cones\nbase: 12 in\n"), FINDING_UNKNOWN_WORD, 11, 8,
	    "cones", "cone");
	one_fault(PATTERN("", "shape: cone\nbase: 12 in\nhieght: 8 in\n"),
	    FINDING_UNKNOWN_KEY, 13, 1, "\"hieght\" is not known in a pattern block",
	    "height");
	one_fault(PATTERN("", "shape: cone\nbase: 12 in\nbase: 8 in\n"),
	    FINDING_DUPLICATE_KEY, 13, 1, "base", "");
	one_fault(PATTERN("", "shape: cylinder\noutside diameter: 8 in\n"
	    "inside diameter: 7 in\n"), FINDING_DUPLICATE_KEY, 13, 1, "inside diameter",
	    "");
	one_fault(PATTERN("", "shape: elbow\noutside diameter: 6 in\nsides: 6\n"),
	    FINDING_BAD_DRAWING, 13, 1, "an elbow has no sides", "");
	one_fault(PATTERN("", "shape: cone\nbase: 12\n"), FINDING_MISSING_UNIT, 12, 7,
	    "12",
	    "");
	one_fault(PATTERN("", "shape: cone\nbase: 12 x 10 in\n"), FINDING_BAD_DRAWING, 12,
	    7,
	    "too many sizes", "");
	one_fault(PATTERN("",
	    "shape: brake\nflanges: 1, 2, 1 in\nbends: 90, 90, 90 deg\n"),
	    FINDING_BAD_DRAWING, 10, 1, "3 flanges have 2 bends between them, not 3",
	    "one angle");
	one_fault(PATTERN("", "shape: tapered box\nsides: 25\nbase: 9 in\n"),
	    FINDING_BAD_QUANTITY, 12, 8, "25", "");
	one_fault(PATTERN("", "shape: cone\njust words\n"), FINDING_BAD_DRAWING, 12, 1,
	    "is not a key with a value", "");
}

/* A block that names no shape is left out; those around it stay. */
static void rest_is_kept(void **state)
{
	struct bench t = bench_one(PATTERN("",
	    "shape: egg\n") "\n```pattern\nshape: cone\n"
	    "base: 9 in\nheight: 4 in\n```\n");

	(void)state;
	assert_int_equal(t.f->n, 1);
	assert_int_equal(first(&t)->shape, SHAPE_CONE);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(braked_part), cmocka_unit_test(one_bend_for_all),
		cmocka_unit_test(lateral), cmocka_unit_test(oblong_off_center),
		cmocka_unit_test(elbow_by_pipe), cmocka_unit_test(faults),
		cmocka_unit_test(rest_is_kept),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
