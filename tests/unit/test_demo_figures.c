/* Every figure that the demo prints for students, in packets and on cards, walked as drawn:
 * labels apart, no line through one, nothing too thin or too small for a third copy, and
 * none that says it is no drawing. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "cli/run.h"
#include "draw/fig.h"
#include "figure_probe.h"
#include "sheets/bundle.h"
#include "sheets/figure.h"

/* What stands between the tags of one figure goes to a probe of its own. */
struct walk {
	struct canvas canvas;
	struct arena *arena;
	const struct faces *faces;
	struct figure_probe *now; /* null outside figures */
	size_t figures, labels;
	double least_pt;
};

static void on_tag(void *self, enum tag tag, str alt)
{
	struct walk *w = self;

	if (tag != TAG_FIGURE)
		return;
	assert_true(alt.n > 0);
	w->now = figure_probe_new(w->arena, w->faces);
}

static void check_figure(struct walk *w)
{
	struct figure_probe *p = w->now;

	if (p->nboxes > 0 && p->npaths == 0)
		fail_msg("no ink under:\n%s", p->text);
	/* Room for a sketch and a map of courses have no labels. */
	if (p->nboxes > 0)
		figure_keeps_promises(p, (rect){ 0, 0, 612, 792 });
	assert_false(figure_has_text(p, "no drawing:"));
	assert_true(p->ntext == 0 || p->smallest_pt >= w->least_pt);
	w->labels += p->nboxes;
	w->figures++;
	canvas_page_end(&p->canvas);
	w->now = NULL;
}

static void on_tag_end(void *self)
{
	struct walk *w = self;

	if (w->now)
		check_figure(w);
}

static void on_path(void *self, const struct seg *s, size_t n, const struct ink *ink)
{
	struct walk *w = self;

	if (w->now)
		canvas_path(&w->now->canvas, s, n, ink);
}

static void on_text(void *self, pt at, enum face_id face, double size_pt, str s)
{
	struct walk *w = self;

	if (w->now)
		canvas_text(&w->now->canvas, at, face, size_pt, s);
}

static void on_box(void *self, rect r, str name)
{
	struct walk *w = self;

	if (w->now)
		canvas_box_begin(&w->now->canvas, r, name);
}

static void on_box_end(void *self)
{
	struct walk *w = self;

	if (w->now)
		canvas_box_end(&w->now->canvas);
}

static const struct canvas_ops walk_ops = {
	.path = on_path, .text = on_text, .box_begin = on_box, .box_end = on_box_end,
	.tag_begin = on_tag, .tag_end = on_tag_end,
};

static int begin(void **state)
{
	static struct run run;
	const struct options o = { .folder = "curriculum" };

	*state = &run;
	return run_begin(&run, &o) ? -1 : 0;
}

static int end(void **state)
{
	run_end(*state);
	return 0;
}

/* Packets and cards of one quarter. Returns how many figures they have. */
static size_t walk_quarter(const struct run *r, const struct order *o, uint32_t quarter,
    struct edition_choice e)
{
	struct arena *a = arena_new(NULL, NULL);
	uint32_t *v = arena_array(a, r->model->nassignments, sizeof *v);
	struct bundle_spec spec = { .model = r->model, .order = o, .faces = r->faces,
		.assignments = v, .name = STR("Quarter"), .quarter = quarter, .edition = e };
	struct walk w = { .canvas = { .ops = &walk_ops, .self = &w }, .arena = a,
		.faces = r->faces, .least_pt = 12 };
	struct bundle *b;

	for (size_t i = 0; i < o->nwalk; i++)
		if (o->places[o->walk[i]].quarter == quarter)
			v[spec.n++] = o->walk[i];
	b = bundle_new(a, &spec);
	bundle_emit(b, BUNDLE_PACKET, &w.canvas);
	bundle_emit(b, BUNDLE_CARDS, &w.canvas);
	assert_true(w.labels > w.figures);
	arena_free(a);
	return w.figures;
}

static void every_figure_of_the_demo(void **state)
{
	const struct run *r = *state;
	const struct edition_choice editions[] = { { .a4 = false }, { .metric = true },
		{ .language = language_find(STR("es")) } };
	const struct order *o = order_of_program(r->arena, r->model);

	for (size_t e = 0; e < sizeof editions / sizeof *editions; e++) {
		size_t figures = 0;

		for (uint32_t q = 1; q <= r->model->nquarters; q++)
			figures += walk_quarter(r, o, q, editions[e]);
		assert_true(figures > 250);
	}
}

/* The section across a slot weld tells its length too: 3/4 and 1-1/2 in. */
static void a_slot_tells_its_length(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct joint_block j = { .weld = NONE, .joint = JOINT_LAP };
	struct assignment x = { .nwelds = 0 };
	struct quantity_fault fault;
	struct fig_joint f;

	(void)state;
	j.marks.hole = HOLE_SLOT;
	quantity_parse(STR("3/4 in"), QUANTITY_LENGTH, METAL_NONE, &j.marks.hole_width, &fault);
	quantity_parse(STR("1-1/2 in"), QUANTITY_LENGTH, METAL_NONE, &j.marks.hole_length,
	    &fault);
	figure_joint(a, NULL, &x, &j, &f);
	assert_true(str_find(f.label_groove_width, STR("3/4"), 0) < f.label_groove_width.n);
	assert_true(str_find(f.label_groove_width, STR("1-1/2"), 0) < f.label_groove_width.n);
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_figure_of_the_demo),
		cmocka_unit_test(a_slot_tells_its_length),
	};

	return cmocka_run_group_tests(tests, begin, end);
}
