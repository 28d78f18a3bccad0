#include "check/rule_practice.h"

/* Least plate thickness of each class: sheet, thin plate, the 3/8 in coupon for limited
 * thickness, between, and 1 in for unlimited (AWS D1.1 Table 6.11, 2020, from memory;
 * sheet under 1/8 in belongs to another code). Class k starts at row k - 1. */
static const double plate_from_mm[] = { 0, 3.175, 9.525, 9.525 + 2 * LIMIT_SLACK_MM,
	25.4 };
/* Wall to 3/8 in and over, AWS D1.1 Table 10.13 (2020), as in reckon/qualify_range. */
static const double wall_from_mm[] = { 0, 9.525 + 2 * LIMIT_SLACK_MM };
/* Outside diameter under 1 in, to under 2-7/8 in, and from there: ASME IX QW-452.3
 * (2010), as in reckon/qualify_diameter. */
static const double od_from_mm[] = { 0, 25.4, 73.025 };

static uint32_t class_of(double mm, const double *from_mm, size_t n)
{
	uint32_t class = 0;

	if (mm <= 0)
		return 0;
	for (size_t i = 0; i < n; i++)
		if (mm > from_mm[i] - LIMIT_SLACK_MM)
			class = (uint32_t)i + 1;
	return class;
}

/* The arcs of a weld: its own, or all of the sheet where root and fill are made in more
 * than one and no weld says that it is made in another. Bit k is enum process k. */
static uint32_t arcs_of(const struct assignment *a, const struct weld *w)
{
	uint32_t bits = UINT32_C(1) << w->process;

	for (size_t i = 0; i < a->nwelds; i++)
		if (a->welds[i].process != w->process)
			return bits;
	for (uint32_t i = 0; i < a->nprocesses; i++)
		if (craft_of(a->processes[i]) <= CRAFT_TUNGSTEN)
			bits |= UINT32_C(1) << a->processes[i];
	return bits;
}

/* The first of them, whatever the order in which the sheet lists them. */
static enum process first_arc(uint32_t arcs)
{
	uint32_t v[RULE_KEYS_MOST];

	return put_bits(arcs, v) ? (enum process)v[0] : PROCESS_COUNT;
}

struct coupon coupon_of(const struct assignment *a, const struct weld *w)
{
	uint32_t arcs = arcs_of(a, w);
	double od = w->branch.od_mm > 0 ? w->branch.od_mm : w->run.od_mm;
	double mm = weld_thin_mm(w);
	/* A position that cannot be is told, and nobody knows which one is meant. */
	enum position at = weld_is_possible(a, (size_t)(w - a->welds)) ? w->at.position
	    : POSITION_COUNT;
	struct coupon c = { first_arc(arcs), arcs, w->joint, at, w->at.progression,
		joint_is_fillet(w->joint) ? ROOT_UNTOLD : root_of(a), 0, 0,
		sheet_metal_of(w->material1), shop_tests_of(a) };

	c.size = class_of(od, od_from_mm, sizeof od_from_mm / sizeof *od_from_mm);
	c.thickness = c.size
	    ? class_of(mm, wall_from_mm, sizeof wall_from_mm / sizeof *wall_from_mm)
	    : class_of(mm, plate_from_mm, sizeof plate_from_mm / sizeof *plate_from_mm);
	return c;
}

static bool disagree(uint32_t a, uint32_t b)
{
	return a && b && a != b;
}

uint32_t coupon_differs(const struct coupon *p, const struct coupon *q)
{
	bool pipe = p->size && q->size, plate = !p->size && !q->size;

	return (uint32_t)(p->process != q->process || (q->arcs & ~p->arcs))
	    << FIELD_PROCESS |
	    (uint32_t)(p->joint != q->joint) << FIELD_JOINT |
	    (uint32_t)disagree(p->root, q->root) << FIELD_ROOT |
	    (uint32_t)(p->position != q->position && p->position != POSITION_COUNT &&
	    q->position != POSITION_COUNT) << FIELD_POSITION |
	    (uint32_t)disagree(p->progression, q->progression) << FIELD_PROGRESSION |
	    (uint32_t)((pipe || plate) && disagree(p->thickness, q->thickness))
	    << FIELD_THICKNESS |
	    (uint32_t)disagree(p->size, q->size) << FIELD_SIZE |
	    (uint32_t)disagree(p->metal, q->metal) << FIELD_METAL |
	    (uint32_t)((q->tests & ~p->tests) != 0) << FIELD_TESTS;
}

static const char *thickness_word(const struct coupon *c)
{
	static const char *const plate[] = { "", "under 1/8 in", "1/8 to under 3/8 in",
		"3/8 in", "over 3/8 to under 1 in", "1 in or more" };
	static const char *const wall[] = { "", "wall to 3/8 in", "wall over 3/8 in" };

	return c->size ? wall[c->thickness] : plate[c->thickness];
}

static const char *size_word(const struct coupon *c)
{
	static const char *const words[] = { "plate", "pipe under 1 in", "pipe of 1 to "
		"under 2-7/8 in", "pipe of 2-7/8 in or more" };

	return words[c->size];
}

static void say_arcs(struct buf *b, uint32_t arcs)
{
	uint32_t v[RULE_KEYS_MOST], n = put_bits(arcs, v);

	for (uint32_t i = 0; i < n; i++)
		buf_addf(b, "%s%.*s", i ? " and " : "",
		    STR_ARG(process_word((enum process)v[i])));
}

static void say_value(struct buf *b, const struct coupon *c, enum coupon_field field)
{
	static const char *const roots[] = { "", "open root", "backing", "back-gouged" };
	static const char *const ways[] = { "", "up", "down" };

	switch (field) {
	case FIELD_PROCESS: say_arcs(b, c->arcs); return;
	case FIELD_JOINT: buf_add(b, joint_word(c->joint)); return;
	case FIELD_ROOT: buf_adds(b, roots[c->root]); return;
	case FIELD_POSITION: buf_add(b, position_word(c->position)); return;
	case FIELD_PROGRESSION: buf_adds(b, ways[c->progression]); return;
	case FIELD_THICKNESS: buf_adds(b, thickness_word(c)); return;
	case FIELD_SIZE: buf_adds(b, size_word(c)); return;
	case FIELD_METAL: buf_adds(b, sheet_metal_word(c->metal)); return;
	default: return;
	}
}

static void say_tests(struct buf *b, uint32_t missing)
{
	uint32_t v[SHOP_TESTS], n = put_bits(missing, v);

	for (uint32_t i = 0; i < n; i++)
		buf_addf(b, "%s%s", i ? ", no " : " (no ", shop_test_word(v[i]));
	buf_adds(b, " there)");
}

str coupon_say_differences(struct arena *a, const struct coupon *practice,
    const struct coupon *test, uint32_t fields)
{
	static const char *const words[] = { "process", "joint", "root", "position",
		"direction", "thickness", "pipe size", "metal", "tests" };
	struct buf b = { .arena = a };

	_Static_assert(sizeof words / sizeof *words == FIELD_COUNT, "one a field");
	for (uint32_t k = 0; k < FIELD_COUNT; k++) {
		if (!work_has(fields, k))
			continue;
		buf_addf(&b, "%s%s", b.n ? ", " : "", words[k]);
		if (k == FIELD_TESTS) {
			say_tests(&b, test->tests & ~practice->tests);
			continue;
		}
		buf_adds(&b, " (");
		say_value(&b, practice, k);
		buf_adds(&b, " there, ");
		say_value(&b, test, k);
		buf_adds(&b, " here)");
	}
	return buf_str(&b);
}
