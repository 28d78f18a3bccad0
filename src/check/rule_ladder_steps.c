#include "check/rule_ladder.h"

#include "check/rule_joint.h"
#include "model/words.h"

/* Step bits by craft; the last set is of no craft. */
struct steps {
	uint64_t v[CRAFT_COUNT + 1];
};

static void take(struct steps *s, uint32_t craft, enum climb step)
{
	s->v[craft] |= UINT64_C(1) << step;
}

static bool is_rolled(enum position p)
{
	return p == POSITION_1G_ROLLED || p == POSITION_1F_ROLLED;
}

static bool is_pipe_weld(const struct weld *w)
{
	enum position p = w->at.position;

	return w->joint == JOINT_PIPE_BUTT || w->joint == JOINT_BRANCH || is_rolled(p) ||
	    p == POSITION_5F || p == POSITION_5G || p == POSITION_6G;
}

/* What a position of plate is a step of, and with its direction. */
static const struct { enum position position; enum climb all, up, down; } plate[] = {
	{ POSITION_1F, STEP_1F, STEP_1F, STEP_1F },
	{ POSITION_2F, STEP_2F, STEP_2F, STEP_2F },
	{ POSITION_3F, STEP_3F, STEP_3F_UP, STEP_3F_DOWN },
	{ POSITION_4F, STEP_4F, STEP_4F, STEP_4F },
	{ POSITION_1G, STEP_1G, STEP_1G, STEP_1G },
	{ POSITION_2G, STEP_GROOVE_RAISED, STEP_2G, STEP_2G },
	{ POSITION_3G, STEP_GROOVE_RAISED, STEP_3G_UP, STEP_3G_DOWN },
	{ POSITION_4G, STEP_GROOVE_RAISED, STEP_4G, STEP_4G },
};

static const struct { enum position position; enum climb all, up, down; } pipe[] = {
	{ POSITION_1G, STEP_PIPE_1_OR_2, STEP_PIPE_1_OR_2, STEP_PIPE_1_OR_2 },
	{ POSITION_1G_ROLLED, STEP_PIPE_1_OR_2, STEP_PIPE_1_OR_2, STEP_PIPE_1_OR_2 },
	{ POSITION_2G, STEP_PIPE_1_OR_2, STEP_PIPE_2, STEP_PIPE_2 },
	{ POSITION_5G, STEP_PIPE_5, STEP_PIPE_5_UP, STEP_PIPE_5_DOWN },
	{ POSITION_6G, STEP_PIPE_6, STEP_PIPE_6_UP, STEP_PIPE_6_DOWN },
};

static bool is_fillet_position(enum position p)
{
	return p >= POSITION_1F && p <= POSITION_5F;
}

static bool is_groove_position(enum position p)
{
	return p >= POSITION_1G && p <= POSITION_6G;
}

/* Positions count where they are named as fillet or groove positions: a weld made
 * "flat" is a pad or a tack. */
static void take_position(struct steps *s, uint32_t craft, const struct weld *w)
{
	bool down = w->at.progression == PROGRESS_DOWN, is_pipe = is_pipe_weld(w);

	for (size_t i = 0; is_pipe && i < sizeof pipe / sizeof *pipe; i++)
		if (pipe[i].position == w->at.position) {
			take(s, craft, pipe[i].all);
			take(s, craft, down ? pipe[i].down : pipe[i].up);
		}
	for (size_t i = 0; !is_pipe && i < sizeof plate / sizeof *plate; i++)
		if (plate[i].position == w->at.position) {
			take(s, craft, plate[i].all);
			take(s, craft, down ? plate[i].down : plate[i].up);
		}
	if (is_pipe)
		take(s, craft, STEP_PIPE);
	else if (is_fillet_position(w->at.position) || is_groove_position(w->at.position))
		take(s, craft, STEP_PLATE);
	if (is_fillet_position(w->at.position) && !is_pipe)
		take(s, craft, STEP_FILLET);
	if (is_groove_position(w->at.position) || w->joint == JOINT_PIPE_BUTT)
		take(s, craft, STEP_GROOVE);
}

/* A square joint in a groove position without a word on backing has an open root. */
static void take_root(struct steps *s, uint32_t craft, const struct weld *w,
    enum root root)
{
	bool square = w->joint == JOINT_SQUARE_BUTT || w->joint == JOINT_OPEN_CORNER;

	if (!is_groove_position(w->at.position) && w->joint != JOINT_PIPE_BUTT)
		return;
	if (root == ROOT_BACKED)
		take(s, craft, STEP_BACKED);
	else if (root == ROOT_OPEN || (root == ROOT_UNTOLD && square))
		take(s, craft, STEP_OPEN);
}

static void take_metal(struct steps *s, uint32_t craft, const struct weld *w,
    uint32_t tests)
{
	static const uint32_t of[METAL_COUNT] = { [METAL_NONE] = NONE, [METAL_STEEL] = 0,
		[METAL_GALVANIZED] = 0, [METAL_STAINLESS] = 1, [METAL_ALUMINUM] = 2 };
	uint32_t metal = of[sheet_metal_of(w->material1)];

	if (metal == NONE)
		return;
	take(s, craft, STEP_STEEL + metal);
	if (is_groove_position(w->at.position) && !is_pipe_weld(w))
		take(s, craft, STEP_STEEL_GROOVE + metal);
	if (work_has(tests, SHOP_FILLET_BREAK))
		take(s, craft, STEP_STEEL_BREAK + metal);
}

/* "3/8 before 1 in": from 1 in a coupon leads to any thickness (AWS D1.1 Table 6.11,
 * 2020, from memory), so that is where thick begins. */
static void take_thickness(struct steps *s, uint32_t craft, const struct weld *w)
{
	double mm = weld_thick_mm(w);

	if (mm <= 0 || is_pipe_weld(w) || !weld_joins(w))
		return;
	take(s, craft, is_over(25.4, mm) ? STEP_THIN : STEP_THICK);
}

static void take_welds(struct steps *s, const struct assignment *a)
{
	enum root root = root_of(a);
	uint32_t tests = shop_tests_of(a);

	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *w = &a->welds[i];
		enum craft craft = craft_of(w->process);

		if (craft == CRAFT_COUNT || process_is_cut(w->process))
			continue;
		/* A slip in the position is told as that, and is no step of a ladder. */
		if (weld_is_possible(a, i)) {
			take_position(s, craft, w);
			take_root(s, craft, w, root);
		}
		take_metal(s, craft, w, tests);
		take_thickness(s, craft, w);
	}
}

/* Cut edges belong to the first cutting process of the sheet. */
static void take_cuts(struct steps *s, const struct assignment *a, const struct work *w)
{
	for (uint32_t i = 0; i < a->nprocesses; i++) {
		if (!process_is_cut(a->processes[i]))
			continue;
		if (work_has(w->joints, JOINT_CUT_EDGE))
			take(s, craft_of(a->processes[i]), STEP_SQUARE_CUT);
		if (work_has(w->joints, JOINT_BEVEL_CUT))
			take(s, craft_of(a->processes[i]), STEP_BEVEL_CUT);
		return;
	}
}

static const struct { enum craft craft; enum climb step; } uses[] = {
	{ CRAFT_STICK, STEP_USES_STICK }, { CRAFT_SOLID_WIRE, STEP_USES_WIRE },
	{ CRAFT_CORED_WIRE, STEP_USES_WIRE }, { CRAFT_SOLID_WIRE, STEP_USES_SOLID },
	{ CRAFT_CORED_WIRE, STEP_USES_CORED }, { CRAFT_GAS_WELD, STEP_USES_GAS_WELD },
	{ CRAFT_TUNGSTEN, STEP_USES_TUNGSTEN },
};

static void take_uses(struct steps *s, const struct work *w)
{
	for (uint32_t p = 0; p < PROCESS_COUNT; p++)
		for (size_t i = 0; i < sizeof uses / sizeof *uses; i++)
			if (work_has(w->processes, p) && craft_of(p) == uses[i].craft)
				take(s, CRAFT_COUNT, uses[i].step);
}

/* Machines that carry the torch, and those that also follow a file, by name; common
 * practice, no source. */
static bool lists_machine(const struct trade *t, const struct work *w,
    const char *const *words)
{
	for (uint32_t i = 0; i < w->nmachines; i++)
		if (says_any(t->x.m->machines[w->machines[i]].name, words))
			return true;
	return false;
}

static bool lays_out(const struct assignment *a)
{
	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_PLATE && a->drawings[i].plate.nmarks)
			return true;
	return false;
}

static void take_machines(struct steps *s, const struct trade *t,
    const struct assignment *a, const struct work *w)
{
	static const char *const tables[] = { "table", "cnc", "computer", NULL };
	static const char *const carried[] = { "table", "cnc", "computer", "track",
		"carriage", NULL };
	bool table = lists_machine(t, w, tables), machine = lists_machine(t, w, carried);

	if (table)
		take(s, CRAFT_COUNT, STEP_TABLE);
	else if (lays_out(a))
		take(s, CRAFT_COUNT, STEP_HAND_LAYOUT);
	if (machine)
		take(s, CRAFT_COUNT, STEP_MACHINE_CUT);
	else if ((work_has(w->processes, PROCESS_OFC) ||
	    work_has(w->processes, PROCESS_PAC)) && work_has(w->joints, JOINT_CUT_EDGE))
		take(s, CRAFT_COUNT, STEP_HAND_CUT);
	if (w->nmachines)
		take(s, CRAFT_COUNT, STEP_MACHINE);
}

static const struct { enum layout layout; enum climb step; } layouts[] = {
	{ LAYOUT_PARALLEL, STEP_PARALLEL }, { LAYOUT_RADIAL, STEP_RADIAL },
	{ LAYOUT_TRIANGLES, STEP_TRIANGLES },
};

static void take_layouts(struct steps *s, const struct assignment *a)
{
	uint32_t bits = layouts_of(a);

	for (size_t i = 0; i < sizeof layouts / sizeof *layouts; i++)
		if (work_has(bits, layouts[i].layout))
			take(s, CRAFT_COUNT, layouts[i].step);
}

/* By the names of its lines alone: a permit that is "written down" is no test. */
static bool has_written_check(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (says(a->criteria[i].name, "written"))
			return true;
	return false;
}

static struct steps steps_read(const struct trade *t, uint32_t assignment)
{
	const struct assignment *a = &t->x.m->assignments[assignment];
	const struct work *w = &t->x.work[assignment];
	struct steps s = { 0 };

	if (a->kind == KIND_WRITTEN ||
	    (a->kind == KIND_SAFETY && has_written_check(a)))
		take(&s, CRAFT_COUNT, STEP_WRITTEN);
	if (!is_shop_work(a))
		return s;
	take_welds(&s, a);
	take_cuts(&s, a, w);
	take_uses(&s, w);
	take_machines(&s, t, a, w);
	take_layouts(&s, a);
	return s;
}

uint32_t steps_of(const struct trade *t, uint32_t assignment, uint32_t *v)
{
	struct steps s = steps_read(t, assignment);
	uint32_t n = 0;

	for (uint32_t c = 0; c <= CRAFT_COUNT; c++)
		for (uint64_t bits = s.v[c], k = 0; bits && n < RULE_KEYS_MOST;
		    bits >>= 1, k++)
			if (bits & 1)
				v[n++] = step_key(c, (enum climb)k);
	return n;
}
