/* Coupon tags of the real demo: one for each planned attempt, under the right mark, whole
 * within their cut lines on both papers. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/buf.h"
#include "cli/run.h"
#include "page/flow.h"
#include "page_probe.h"
#include "sheets/label.h"

struct demo {
	struct run run;
	const struct order *order;
	str *marks;
};

static int begin(void **state)
{
	static struct demo d;
	const struct options o = { .folder = "curriculum" };

	if (run_begin(&d.run, &o))
		return -1;
	d.order = order_of_program(d.run.arena, d.run.model);
	d.marks = arena_array(d.run.arena, d.run.model->nassignments, sizeof *d.marks);
	for (size_t i = 0; i < d.run.model->nassignments; i++)
		d.marks[i] = str_format(d.run.arena, "MARK%06zu", i);
	*state = &d;
	return 0;
}

static int end(void **state)
{
	run_end(&((struct demo *)*state)->run);
	return 0;
}

static struct labels *make_in(const struct demo *d, struct arena *a, bool a4, bool large,
    const struct language *language)
{
	const struct label_spec spec = { .model = d->run.model,
		.order = d->order,
		.faces = d->run.faces,
		.marks = d->marks,
		.edition = { .a4 = a4, .large = large, .language = language } };

	return labels_new(a, &spec);
}

static struct labels *make(const struct demo *d, struct arena *a, bool a4, bool large)
{
	return make_in(d, a, a4, large, NULL);
}

static struct probe *walk(
    const struct demo *d, struct arena *a, const struct labels *l, bool a4)
{
	struct probe *p = probe_new(a, d->run.faces);

	p->sheet = (rect){ 0, 0, a4 ? A4_WIDTH_PT : LETTER_WIDTH_PT,
		a4 ? A4_HEIGHT_PT : LETTER_HEIGHT_PT };
	labels_emit(l, &p->canvas);
	return p;
}

static unsigned count(const struct probe *p, str text)
{
	unsigned n = 0;

	for (size_t i = 0; i < p->ntexts; i++)
		n += str_eq(p->texts[i].text, text) ? 1 : 0;
	return n;
}

/* Attempts of what is welded, and one bench label where there are pieces. */
static void each_attempt_has_its_tag(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct probe *p = walk(d, a, make(d, a, false, false), false);
	unsigned tags = 0;

	for (size_t i = 0; i < d->order->nwalk; i++) {
		uint32_t id = d->order->walk[i];
		const struct assignment *x = &d->run.model->assignments[id];
		unsigned n = (x->nwelds ? x->attempts : 0) + (x->npieces ? 1 : 0);

		assert_int_equal(count(p, d->marks[id]), n);
		assert_int_equal(count(p, x->id), n);
		tags += n;
	}
	assert_true(tags > 150);
	assert_int_equal(count(p, STR("Kit for one attempt")) + count(p, STR("TOP")), tags);
	assert_int_equal(count(p, STR("TOP")), count(p, STR("Shop number")));
	arena_free(a);
}

static void no_text_leaves_its_tag(void **state)
{
	const struct demo *d = *state;

	for (int bits = 0; bits < 8; bits++) {
		struct arena *a = arena_new(NULL, NULL);
		struct labels *l = make_in(d, a, bits & 1, bits & 2,
		    bits & 4 ? language_find(STR("es")) : NULL);
		struct probe *p = walk(d, a, l, bits & 1);

		assert_int_equal(p->outside_box, 0);
		assert_int_equal(p->outside_sheet, 0);
		assert_int_equal(probe_overlaps(p), 0);
		assert_true(p->least_pt >= (bits & 2 ? 18 : 12));
		assert_int_equal(labels_overfull(l), 0);
		arena_free(a);
	}
}

/* A kit label that stops short sends a student back to the crib. */
static void every_piece_stands_on_its_kit(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct probe *p = walk(d, a, make(d, a, false, false), false);
	struct buf all = { .arena = a };
	unsigned pieces = 0;

	for (size_t i = 0; i < p->ntexts; i++)
		buf_addf(&all, "%.*s\n", STR_ARG(p->texts[i].text));
	for (size_t i = 0; i < d->order->nwalk; i++) {
		const struct assignment *x = &d->run.model->assignments[d->order->walk[i]];

		for (size_t k = 0; k < x->npieces; k++) {
			str part = str_format(a, "%u %.*s", x->pieces[k].count,
			    STR_ARG(x->pieces[k].name));

			assert_true(str_find(buf_str(&all), part, 0) < all.n);
			pieces++;
		}
	}
	assert_true(pieces > 100);
	arena_free(a);
}

/* Ten on a page, a new page for each quarter. */
static void quarters_have_pages_of_their_own(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct labels *l = make(d, a, false, false);
	unsigned after = 0;

	for (uint32_t q = 1; q <= d->run.model->nquarters; q++) {
		unsigned first, last, tags = 0;

		for (size_t i = 0; i < d->order->nwalk; i++) {
			const struct assignment *x = &d->run.model->assignments[d->order->walk[i]];

			if (d->order->places[d->order->walk[i]].quarter == q)
				tags += (x->nwelds ? x->attempts : 0) + (x->npieces ? 1 : 0);
		}
		labels_quarter_pages(l, q, &first, &last);
		assert_int_equal(first, after + 1);
		assert_int_equal(last - first + 1, (tags + 9) / 10);
		after = last;
	}
	assert_int_equal(labels_pages(l), after);
	arena_free(a);
}

/* The ten translations of the demo are of quarter 1; its tags stand under the marks of the
 * English ones. */
static void another_language_has_its_quarters(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct labels *l = make_in(d, a, false, false, language_find(STR("es")));
	struct probe *p = walk(d, a, l, false);
	unsigned first, last, tags = 0;

	for (size_t i = 0; i < d->order->nwalk; i++) {
		uint32_t id = d->order->walk[i];
		const struct assignment *x = &d->run.model->assignments[id];
		bool here = d->order->places[id].quarter == 1;
		unsigned n = here ? (x->nwelds ? x->attempts : 0) + (x->npieces ? 1 : 0) : 0;

		assert_int_equal(count(p, d->marks[id]), n);
		tags += n;
	}
	assert_int_equal(count(p, STR("Juego para un intento")) + count(p, STR("ARRIBA")), tags);
	assert_int_equal(count(p, STR("TOP")) + count(p, STR("Shop number")), 0);
	for (uint32_t q = 2; q <= d->run.model->nquarters; q++) {
		labels_quarter_pages(l, q, &first, &last);
		assert_int_equal(first, 0);
	}
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_attempt_has_its_tag),
		cmocka_unit_test(no_text_leaves_its_tag),
		cmocka_unit_test(every_piece_stands_on_its_kit),
		cmocka_unit_test(quarters_have_pages_of_their_own),
		cmocka_unit_test(another_language_has_its_quarters),
	};

	return cmocka_run_group_tests(tests, begin, end);
}
