/* The proof that keys stay with the instructor: with every instructor-only text and
 * every reckoned answer replaced, packets, grading sheets, cards and charts are drawn
 * the same to the last stroke, with the same marks, while the keys change. The linker
 * puts the two functions below in front of the real ones (see the Makefile). */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "cli/run.h"
#include "draw/trace.h"
#include "page/flow.h"
#include "page_probe.h"
#include "sheets/bundle.h"
#include "sheets/edition.h"
#include "sheets/key.h"
#include "sheets/keybook.h"
#include "sheets/pattern_sheet.h"
#include "sheets/template.h"

#include <string.h>

struct pattern *__wrap_pattern_of(struct arena *a, const struct pattern_block *b);
struct pattern *__real_pattern_of(struct arena *a, const struct pattern_block *b);
struct workings __wrap_workings_of(struct arena *a, const struct assignment *x,
    const struct edition *e);
struct workings __real_workings_of(struct arena *a, const struct assignment *x,
    const struct edition *e);

/* Whether answers are replaced, and how many were; the test's own state. */
static bool replace;
static unsigned replaced;

struct pattern *__wrap_pattern_of(struct arena *a, const struct pattern_block *b)
{
	struct pattern *p = __real_pattern_of(a, b);

	for (size_t i = 0; replace && i < p->nanswers; i++) {
		p->answer[i].value += 7;
		replaced++;
	}
	for (size_t i = 0; replace && i < p->nflats; i++)
		for (size_t k = 0; k < p->flat[i].nlines; k++)
			for (size_t v = 0; v < p->flat[i].line[k].n; v++)
				p->flat[i].line[k].v[v].x_mm *= 1.01;
	return p;
}

struct workings __wrap_workings_of(struct arena *a, const struct assignment *x,
    const struct edition *e)
{
	struct workings w = __real_workings_of(a, x, e);

	for (size_t i = 0; replace && i < w.n; i++) {
		w.v[i].result = STR("REPLACED");
		w.v[i].steps = STR("REPLACED");
		replaced++;
	}
	return w;
}

struct demo {
	struct run run;
	const struct order *order;
	struct model other;      /* with every instructor-only text replaced */
};

static int begin(void **state)
{
	static struct demo d;
	static const struct span secret = { { "REPLACED", 8 }, 0 };
	static const struct para para = { .kind = PARA_TEXT, .spans = &secret, .nspans = 1 };
	static struct ask ask = { .words = { "gas flow 21 cfh arc 1 h", 23 } };
	const struct options o = { .folder = "curriculum" };
	const struct model *m;

	if (run_begin(&d.run, &o))
		return -1;
	m = d.run.model;
	d.order = order_of_program(d.run.arena, m);
	d.other = *m;
	d.other.assignments = arena_array(d.run.arena, m->nassignments, sizeof *m->assignments);
	memcpy(d.other.assignments, m->assignments, m->nassignments * sizeof *m->assignments);
	for (size_t i = 0; i < m->nassignments; i++) {
		d.other.assignments[i].instructor = (struct prose){ &para, 1 };
		d.other.assignments[i].asks = &ask;
		d.other.assignments[i].nasks = 1;
	}
	*state = &d;
	return 0;
}

static int end(void **state)
{
	run_end(&((struct demo *)*state)->run);
	return 0;
}

/* Everything that students and graders get of the whole program, as a trace. */
static str draw_sheets(const struct demo *d, struct arena *a, const struct model *m)
{
	const struct bundle_spec spec = { .model = m, .order = d->order, .faces = d->run.faces,
		.assignments = d->order->walk, .n = d->order->nwalk, .name = STR("All"),
		.front = true };
	struct bundle *b = bundle_new(a, &spec);
	struct buf text = { .arena = a };
	struct trace t;

	trace_init(&t, &text);
	for (int part = 0; part < BUNDLE_PARTS; part++)
		bundle_emit(b, (enum bundle_part)part, &t.canvas);
	return buf_str(&text);
}

static str draw_keys(const struct demo *d, struct arena *a, const struct model *m)
{
	str *marks = arena_array(a, m->nassignments, sizeof *marks);
	const struct keybook_spec spec = { .model = m, .order = d->order, .faces = d->run.faces,
		.marks = marks };
	struct keybook *k = keybook_new(a, &spec);
	struct buf text = { .arena = a };
	struct trace t;

	trace_init(&t, &text);
	keybook_emit(k, &t.canvas);
	assert_int_equal(keybook_overfull(k), 0);
	return buf_str(&text);
}

/* Nothing of a key leaves its box or page or lies over anything else in any edition. */
static void keys_hold_in_every_edition(void **state)
{
	const struct demo *d = *state;

	for (unsigned n = 0; n < 8; n++) {
		const struct edition_choice e = { .a4 = n & 1, .large = n >> 1 & 1,
			.metric = n >> 2 & 1 };
		struct arena *a = arena_new(NULL, NULL);
		str *marks = arena_array(a, d->run.model->nassignments, sizeof *marks);
		const struct keybook_spec spec = { .model = d->run.model, .order = d->order,
			.faces = d->run.faces, .marks = marks, .edition = e };
		struct keybook *k = keybook_new(a, &spec);
		struct probe *p = probe_new(a, d->run.faces);

		p->sheet = (rect){ 0, 0, e.a4 ? A4_WIDTH_PT : LETTER_WIDTH_PT,
			e.a4 ? A4_HEIGHT_PT : LETTER_HEIGHT_PT };
		keybook_emit(k, &p->canvas);
		assert_int_equal(keybook_overfull(k) + p->outside_box + p->outside_sheet, 0);
		assert_int_equal(p->missing, 0);
		assert_int_equal(probe_overlaps(p), 0);
		assert_true(p->least_pt >= (e.large ? 18 : 9));
		arena_free(a);
	}
}

static void students_never_see_an_answer(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	str before, after;

	replace = false;
	before = draw_sheets(d, a, d->run.model);
	replace = true;
	replaced = 0;
	after = draw_sheets(d, a, &d->other);
	replace = false;
	assert_true(before.n > 1000000);
	assert_true(str_eq(before, after));
	arena_free(a);
}

static void keys_follow_every_answer(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	str before, after;

	replace = false;
	before = draw_keys(d, a, d->run.model);
	replace = true;
	replaced = 0;
	after = draw_keys(d, a, &d->other);
	replace = false;
	assert_true(replaced > 100);
	assert_false(str_eq(before, after));
	assert_true(str_find(before, STR("REPLACED"), 0) == before.n);
	assert_true(str_find(after, STR("REPLACED"), 0) < after.n);
	assert_true(str_find(before, STR("Reckoned: punch diameter"), 0) < before.n);
	assert_true(str_find(after, STR("Reckoned: gas flow 21"), 0) < after.n);
	arena_free(a);
}

/* The line named so in the key of a demo assignment. */
static const struct worked *line_of(const struct workings *w, const char *name)
{
	for (size_t i = 0; i < w->n; i++)
		if (str_eq(w->v[i].name, str_of(name)))
			return &w->v[i];
	fail_msg("no line %s", name);
	return NULL;
}

/* Plain arithmetic: a 5/16 in tee fillet 8 in long is 0.5 x 0.3125^2 x 8 x 0.283 = 0.1105
 * lb, its throat 0.221 in; bought at 62 % with a twentieth over 0.187 lb. Pieces 3/8 x 3 x
 * 8 and 3/8 x 4 x 8 in at 490 lb/ft3 are 2.552 and 3.403 lb. D1.1 Table 7.7 (2020): 3/16
 * in least leg for 3/8 in; the thinner part is the most that practice lays on one side. */
static void worked_figures_are_right(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t x = map_find(d->run.model->assignment_by_id, STR("SM-04"));
	struct workings w = workings_of(a, &d->run.model->assignments[x], NULL);

	static const struct { const char *name, *result; } lines[] = {
		{ "Least throat", "0.221 in [5.61 mm]" }, { "Weld metal", "0.11 lb [50 g]" },
		{ "Filler to buy", "0.19 lb [85 g] for one weld" },
		{ "Least leg of the code", "3/16 in [4.76 mm]" },
		{ "Largest leg", "3/8 in [9.53 mm]" }, { "Weight: web", "2.55 lb [1.16 kg]" },
		{ "Weight: base", "3.40 lb [1.54 kg]" }, { "Weight: all pieces", "6.0 lb [2.7 kg]" },
	};

	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		str result = line_of(&w, lines[i].name)->result;

		if (!str_eq(result, str_of(lines[i].result)))
			fail_msg("%s is %.*s", lines[i].name, STR_ARG(result));
	}
	arena_free(a);
}

/* The same in metric first: 0.7071 x 7.9375 = 5.61 mm; 0.5 x 7.9375^2 x 203.2 mm of 7833
 * kg/m3 are 50 g, / 0.62 x 1.05 = 85; 9.525 x 76.2 x 203.2 mm of 7849 are 1.16 kg. */
static void metric_keys_are_worked_in_metric(void **state)
{
	static const struct { const char *name, *steps, *result; } lines[] = {
		{ "Least throat", "0.7071 x leg 7.94 mm [5/16 in]", "5.61 mm [0.221 in]" },
		{ "Weld metal", "section 31.50 mm2 x length 203.20 mm [8.000 in] x 7833 kg/m3 "
		  "(steel) / 10^9", "50 g [0.11 lb]" },
		{ "Filler to buy", "weld metal / 62 % = 81 g [0.18 lb]; with 5 % over x 1.05",
		  "85 g [0.19 lb] for one weld" },
		{ "Weight: web", "725.8 mm2 x 203.2 mm x 7849 kg/m3 / 10^9", "1.16 kg [2.55 lb]" },
	};
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	const struct edition e = edition_new(&(struct edition_choice){ .metric = true });
	uint32_t x = map_find(d->run.model->assignment_by_id, STR("SM-04"));
	struct workings w = workings_of(a, &d->run.model->assignments[x], &e);

	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		const struct worked *k = line_of(&w, lines[i].name);

		if (!str_eq(k->result, str_of(lines[i].result)) ||
		    !str_eq(k->steps, str_of(lines[i].steps)))
			fail_msg("%s: %.*s is %.*s", lines[i].name, STR_ARG(k->steps),
			    STR_ARG(k->result));
	}
	arena_free(a);
}

static struct workings key_of(const struct demo *d, struct arena *a, const char *id)
{
	const struct model *m = d->run.model;

	return workings_of(a, &m->assignments[map_find(m->assignment_by_id, str_of(id))],
	    NULL);
}

/* A 1/8 in leg 8 in long: 0.5 x 0.125^2 x 8 = 0.0625 in3, in aluminum (0.097) 0.00606 lb,
 * in steel it would be 0.0177. A 1/16 in leg 6 in long in stainless (0.290) 0.0034 lb. */
static void weld_metal_is_weighed_as_its_own(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct workings aluminum = key_of(d, a, "GT-06"), stainless = key_of(d, a, "GT-04");

	assert_true(str_eq(line_of(&aluminum, "Weld metal, weld B")->result,
	    STR("0.006 lb [2.7 g]")));
	assert_true(line_of(&aluminum, "Weld metal, weld B")->dagger);
	assert_true(str_eq(line_of(&stainless, "Weld metal, weld A")->result,
	    STR("0.003 lb [1.5 g]")));
	arena_free(a);
}

/* FB-01 asks for a 13/16 in hole in 1/4 in plate at 50 ksi: pi x 0.8125 x 0.25 x 50 / 2 =
 * 15.95 tons. */
static void the_author_asks_and_gets(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct workings w = key_of(d, a, "FB-01");
	const struct worked *k = line_of(&w,
	    "punch diameter 13/16 in thickness 1/4 in strength 50 ksi tons 65");

	assert_true(k->asked);
	assert_true(str_starts(k->result, STR("Force: 16 tons [142 kN]")));
	arena_free(a);
}

/* PP-03 names 1-1/8 in and 1-13/16 in: what the sheet says is what the key says. */
static void bends_go_by_the_jig_of_the_sheet(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct workings w = key_of(d, a, "PP-03");
	str steps = line_of(&w, "Face bend: strain of the outer fiber")->steps;

	assert_true(str_find(steps, STR("die opening 1.813 in [46.04 mm]"), 0) < steps.n);
	assert_true(str_find(steps, STR("plunger A 1.125 in"), 0) < steps.n);
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(students_never_see_an_answer),
		cmocka_unit_test(keys_hold_in_every_edition),
		cmocka_unit_test(keys_follow_every_answer),
		cmocka_unit_test(worked_figures_are_right),
		cmocka_unit_test(metric_keys_are_worked_in_metric),
		cmocka_unit_test(weld_metal_is_weighed_as_its_own),
		cmocka_unit_test(bends_go_by_the_jig_of_the_sheet),
		cmocka_unit_test(the_author_asks_and_gets),
	};

	return cmocka_run_group_tests(tests, begin, end);
}
