/* The sheets of the real demo, walked as drawn: nothing leaves its box or page, packet,
 * grading sheet and card show one mark, and what must not change a mark does not. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "cli/run.h"
#include "page/flow.h"
#include "base/buf.h"
#include "page_probe.h"
#include "sheets/bundle.h"

#include <string.h>

struct demo {
	struct run run;
	const struct order *order;
};

static int begin(void **state)
{
	static struct demo d;
	const struct options o = { .folder = "curriculum" };

	if (run_begin(&d.run, &o))
		return -1;
	d.order = order_of_program(d.run.arena, d.run.model);
	*state = &d;
	return 0;
}

static int end(void **state)
{
	run_end(&((struct demo *)*state)->run);
	return 0;
}

static size_t quarter_ids(const struct order *o, uint32_t quarter, uint32_t *v)
{
	size_t n = 0;

	for (size_t i = 0; i < o->nwalk; i++)
		if (o->places[o->walk[i]].quarter == quarter)
			v[n++] = o->walk[i];
	return n;
}

static const struct edition_choice letter = { .a4 = false };

static struct bundle *make(const struct demo *d, struct arena *a, const struct model *m,
    const struct order *o, uint32_t quarter, struct edition_choice e)
{
	uint32_t *v = arena_array(a, m->nassignments, sizeof *v);
	const struct bundle_spec spec = { .model = m, .order = o, .faces = d->run.faces,
		.assignments = v, .n = quarter_ids(o, quarter, v), .name = STR("Quarter"),
		.quarter = quarter, .front = true, .edition = e };

	assert_true(spec.n > 0);
	return bundle_new(a, &spec);
}

static struct probe *walk(const struct demo *d, struct arena *a, const struct bundle *b,
    enum bundle_part part, struct edition_choice e)
{
	struct probe *p = probe_new(a, d->run.faces);

	p->sheet = (rect){ 0, 0, e.a4 ? A4_WIDTH_PT : LETTER_WIDTH_PT,
		e.a4 ? A4_HEIGHT_PT : LETTER_HEIGHT_PT };
	bundle_emit(b, part, &p->canvas);
	return p;
}

/* Nothing leaves its box or its page, nothing lies over anything else, every character
 * has its glyph, and large print is large. */
static void check_part(const struct demo *d, struct arena *a, const struct bundle *b,
    enum bundle_part part, struct edition_choice e)
{
	struct probe *p = walk(d, a, b, part, e);

	assert_true(p->ntexts > (part < BUNDLE_CHART ? 100 : 15));
	assert_int_equal(p->outside_box, 0);
	assert_int_equal(p->outside_sheet, 0);
	assert_int_equal(p->missing, 0);
	assert_int_equal(probe_overlaps(p), 0);
	assert_true(p->least_pt >= (e.large ? 18 : 9));
	assert_int_equal(bundle_overfull(b, part), 0);
}

/* The n-th of all editions in a language: paper, size of type and units freely combined. */
enum { EDITIONS = 8 };
static struct edition_choice edition_at(unsigned n, const struct language *l)
{
	return (struct edition_choice){ .a4 = n & 1, .large = n >> 1 & 1, .metric = n >> 2 & 1,
		.language = l };
}

static void check_quarter(const struct demo *d, uint32_t quarter, struct edition_choice e)
{
	struct arena *a = arena_new(NULL, NULL);
	struct bundle *b = make(d, a, d->run.model, d->order, quarter, e);

	for (int part = 0; part < BUNDLE_PARTS; part++)
		if (bundle_has(&e, (enum bundle_part)part))
			check_part(d, a, b, (enum bundle_part)part, e);
	arena_free(a);
}

static void every_edition_is_sound(void **state)
{
	const struct demo *d = *state;

	for (unsigned n = 0; n < EDITIONS; n++)
		for (uint32_t q = 1; q <= d->run.model->nquarters; q++)
			check_quarter(d, q, edition_at(n, NULL));
}

/* Quarter 1 is the one with translations. */
static void every_spanish_edition_is_sound(void **state)
{
	const struct language *es = language_find(STR("es"));

	assert_non_null(es);
	for (unsigned n = 0; n < EDITIONS; n++)
		check_quarter(*state, 1, edition_at(n, es));
}

static bool leads(str text, const struct language *l)
{
	static const str heads[] = { { "Before you start", 16 }, { "What you make", 13 },
		{ "Steps", 5 }, { "If it fails", 11 }, { "Bring", 5 }, { "Settings", 8 },
		{ "What this paper is evidence for", 31 }, { "Hold points", 11 },
		{ "Measured", 8 }, { "Judged", 6 }, { "Pieces for one attempt", 22 },
		{ "Sizes", 5 }, { "Along the weld", 14 }, { "Seen from the end", 17 } };

	for (size_t i = 0; i < sizeof heads / sizeof *heads; i++)
		if (str_eq(word_str(l, heads[i]), text))
			return true;
	return !l && (str_starts_nocase(text, STR("Beads are numbered")) ||
	    str_starts_nocase(text, STR("Cut map")));
}

/* The lowest text of each page's body leads nothing: it was kept with what follows. Returns
 * how many headings were seen. */
static unsigned check_headings(const struct demo *d, uint32_t quarter, struct edition_choice e)
{
	struct arena *a = arena_new(NULL, NULL);
	struct bundle *b = make(d, a, d->run.model, d->order, quarter, e);
	unsigned seen = 0;

	for (int part = 0; part < BUNDLE_PARTS; part++) {
		struct probe *p;
		unsigned pages = bundle_pages(b, (enum bundle_part)part);
		const struct seen_text **low = arena_array(a, pages + 1, sizeof *low);

		if (!bundle_has(&e, (enum bundle_part)part))
			continue;
		p = walk(d, a, b, (enum bundle_part)part, e);

		for (size_t i = 0; i < p->ntexts; i++) {
			const struct seen_text *t = &p->texts[i];

			seen += leads(t->text, e.language);
			if (!t->artifact && (!low[t->page] || t->y > low[t->page]->y))
				low[t->page] = t;
		}
		for (unsigned page = 1; page <= pages; page++)
			if (low[page] && leads(low[page]->text, e.language))
				fail_msg("quarter %u part %d page %u ends in %.*s", quarter, part,
				    page, STR_ARG(low[page]->text));
	}
	arena_free(a);
	return seen;
}

static void no_heading_ends_a_page(void **state)
{
	const struct demo *d = *state;

	for (unsigned n = 0; n < EDITIONS; n++) {
		unsigned seen = 0;

		for (uint32_t q = 1; q <= d->run.model->nquarters; q++)
			seen += check_headings(d, q, edition_at(n, NULL));
		assert_true(seen > 500);
		seen = check_headings(d, 1, edition_at(n, language_find(STR("es"))));
		assert_true(seen > 50);
	}
}

/* Height that a page's body takes, text and lines to write on; 0: a blank page. */
static double body_pt(const struct probe *p, unsigned page)
{
	double top = 1e9, low = 0;

	for (size_t i = 0; i < p->ntexts; i++)
		if (p->texts[i].page == page && !p->texts[i].artifact) {
			top = p->texts[i].y < top ? p->texts[i].y : top;
			low = p->texts[i].y > low ? p->texts[i].y : low;
		}
	if (low > 0 && page < PROBE_PAGES && p->low_pt[page] > low)
		low = p->low_pt[page];
	return low > 0 ? low - top + 12 : 0;
}

/* Six lines of text, 12 pt at 1.35: no page of any document holds less, on either paper. */
static void no_page_is_nearly_empty(void **state)
{
	const struct demo *d = *state;
	unsigned pages = 0;

	for (uint32_t q = 1; q <= d->run.model->nquarters; q++)
		for (int a4 = 0; a4 < 2; a4++) {
			const struct edition_choice e = { .a4 = a4 };
			struct arena *a = arena_new(NULL, NULL);
			struct bundle *b = make(d, a, d->run.model, d->order, q, e);

			for (int part = 0; part < BUNDLE_PARTS; part++) {
				struct probe *p = walk(d, a, b, (enum bundle_part)part, e);

				for (unsigned page = 1; page <= p->page; page++) {
					double high = body_pt(p, page);

					if (high > 0 && high < 6 * 12 * 1.35)
						print_error("quarter %u part %d page %u: %.0f pt\n",
						    q, part, page, high);
					assert_false(high > 0 && high < 6 * 12 * 1.35);
					pages += high > 0;
				}
			}
			arena_free(a);
		}
	assert_true(pages > 1000);
}

static bool shows(const struct probe *p, unsigned page, str text)
{
	for (size_t i = 0; i < p->ntexts; i++)
		if (p->texts[i].page == page && str_eq(p->texts[i].text, text))
			return true;
	return false;
}

/* Each page of an assignment carries its id and its mark, in packet, grading and cards. */
static void three_documents_show_one_mark(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
	size_t n = quarter_ids(d->order, 1, v);
	struct bundle *b = make(d, a, d->run.model, d->order, 1, letter);

	for (int part = 0; part < BUNDLE_MARKED; part++) {
		struct probe *p = walk(d, a, b, (enum bundle_part)part, letter);

		for (size_t i = 0; i < n; i++) {
			str id = d->run.model->assignments[v[i]].id;
			unsigned pages = 0;

			for (unsigned page = 1; page <= bundle_pages(b, (enum bundle_part)part); page++)
				if (shows(p, page, id) && shows(p, page, bundle_mark(b, i)))
					pages++;
			assert_true(pages > 0);
			assert_int_equal(bundle_mark(b, i).n, 10);
		}
	}
	arena_free(a);
}

/* Assignments start on odd pages: the first page that names each one. */
static void assignments_start_on_right_hand_pages(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
	size_t n = quarter_ids(d->order, 1, v);
	struct bundle *b = make(d, a, d->run.model, d->order, 1, letter);
	struct probe *p = walk(d, a, b, BUNDLE_PACKET, letter);

	for (size_t i = 0; i < n; i++) {
		unsigned first = 0;

		for (unsigned page = 1; !first && page <= bundle_pages(b, BUNDLE_PACKET); page++)
			if (shows(p, page, bundle_mark(b, i)))
				first = page;
		assert_int_equal(first % 2, 1);
	}
	arena_free(a);
}

/* A week later, or in another quarter, the same paper serves: the marks stay. */
static void moving_an_assignment_keeps_its_mark(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t x = map_find(d->run.model->assignment_by_id, STR("SM-20"));
	struct order *moved = order_moved(a, d->order, x, 3, 9);
	struct bundle *before = make(d, a, d->run.model, d->order, 2, letter);
	struct bundle *after = make(d, a, d->run.model, moved, 3, letter);
	uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
	size_t n = quarter_ids(d->order, 2, v), i = 0, k = 0;

	while (i < n && v[i] != x)
		i++;
	assert_true(i < n);
	n = quarter_ids(moved, 3, v);
	while (k < n && v[k] != x)
		k++;
	assert_true(k < n);
	assert_string_equal(bundle_mark(before, i).p, bundle_mark(after, k).p);
	arena_free(a);
}

/* In both papers: one card a page, each with a drawing when the sheet has one. */
static void a_card_is_one_page(void **state)
{
	const struct demo *d = *state;

	for (uint32_t q = 1; q <= d->run.model->nquarters; q++)
		for (int a4 = 0; a4 < 2; a4++) {
			struct arena *a = arena_new(NULL, NULL);
			uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
			size_t n = quarter_ids(d->order, q, v), drawn = 0;
			struct bundle *b = make(d, a, d->run.model, d->order, q, (struct edition_choice){ .a4 = a4 });
			struct probe *p = walk(d, a, b, BUNDLE_CARDS, (struct edition_choice){ .a4 = a4 });

			assert_int_equal(bundle_pages(b, BUNDLE_CARDS), n);
			for (size_t i = 0; i < n; i++) {
				drawn += d->run.model->assignments[v[i]].ndrawings > 0;
				assert_true(shows(p, (unsigned)i + 1, d->run.model->assignments[v[i]].id));
				assert_true(shows(p, (unsigned)i + 1, bundle_mark(b, i)));
			}
			assert_true(p->tag_count[TAG_FIGURE] >= drawn);
			arena_free(a);
		}
}

/* One page of the packet has each id of the quarter, and links to each. */
static void the_map_names_every_assignment(void **state)
{
	const struct demo *d = *state;

	for (uint32_t q = 1; q <= d->run.model->nquarters; q++) {
		struct arena *a = arena_new(NULL, NULL);
		uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
		size_t n = quarter_ids(d->order, q, v);
		struct bundle *b = make(d, a, d->run.model, d->order, q, letter);
		struct probe *p = walk(d, a, b, BUNDLE_PACKET, letter);
		size_t head = probe_find(p, "Quarter, what leads to what", 0);

		assert_true(head < p->ntexts);
		for (size_t i = 0; i < n; i++)
			assert_true(shows(p, p->texts[head].page, d->run.model->assignments[v[i]].id));
		assert_true(p->nlinks >= 2 * n); /* In the list and in the map. */
		arena_free(a);
	}
}

/* In large print the map goes over pages of its own: all ids between its heading and the
 * sheets, each with a link there beside the one in the list. */
static void the_large_map_names_them_too(void **state)
{
	const struct edition_choice large = { .large = true };
	const struct demo *d = *state;

	for (uint32_t q = 1; q <= d->run.model->nquarters; q++) {
		struct arena *a = arena_new(NULL, NULL);
		uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
		size_t n = quarter_ids(d->order, q, v);
		struct bundle *b = make(d, a, d->run.model, d->order, q, large);
		struct probe *p = walk(d, a, b, BUNDLE_PACKET, large);
		unsigned from = 0;

		for (size_t i = 0; i < p->ntexts && !from; i++)
			if (str_ends(p->texts[i].text, STR("to what")))
				from = p->texts[i].page;
		assert_true(from > 0);
		for (size_t i = 0; i < n; i++) {
			str id = d->run.model->assignments[v[i]].id;

			assert_true(shows(p, from, id) || shows(p, from + 1, id) ||
			    shows(p, from + 2, id));
		}
		assert_true(p->nlinks >= 2 * n);
		arena_free(a);
	}
}

/* What each grading sheet asks for over the common rows, by its id. */
static void grading_sheets_ask_for_what_the_work_needs(void **state)
{
	static const struct { const char *id, *asks; bool yes; } rows[] = {
		{ "IT-03", "Stress, psi", true }, { "PP-04", "Stress, psi", false },
		{ "PP-04", "O'clock, how much", true }, { "GP-04", "O'clock, how much", false },
		{ "FC-04", "FCAW-G last used, date", true }, { "FC-04", "Stamp on the coupon", true },
		{ "FC-02", "FCAW-G last used, date", false }, { "PP-24", "SMAW last used, date", true },
		{ "PP-23", "Retest: at once or after", true },
		{ "SM-04", "Heat or lot of the metal", true }, { "PR-01", "Rod or wire lot", false },
		{ "SM-04", "Amperes used", true }, { "PR-01", "Amperes used", false },
		{ "SM-04", "Volts used", true }, { "SM-04", "High 1 a 1 b 2 a 2 b", true },
		{ "SM-04", "Score, by attempt Weight 1 2 3", true },
		{ "SM-04", "Practice after it: hours, date, initials", true },
		{ "SM-04", "undercut, overlap, porosity, slag", true },
	};
	const struct demo *d = *state;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct arena *a = arena_new(NULL, NULL);
		uint32_t x = map_find(d->run.model->assignment_by_id, str_of(rows[i].id));
		const struct bundle_spec spec = { .model = d->run.model, .order = d->order,
			.faces = d->run.faces, .assignments = &x, .n = 1, .name = STR("One") };
		struct probe *p = walk(d, a, bundle_new(a, &spec), BUNDLE_GRADING, letter);
		struct buf b = { .arena = a };

		for (size_t k = 0; k < p->ntexts; k++)
			buf_addf(&b, "%.*s ", STR_ARG(p->texts[k].text));
		if ((str_find(buf_str(&b), str_of(rows[i].asks), 0) < b.n) != rows[i].yes)
			fail_msg("%s: %s", rows[i].id, rows[i].asks);
		arena_free(a);
	}
}

/* Far too much for a card: fourteen stops of 120 words each. */
static void a_crowded_card_is_one_page(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	struct model m = *d->run.model;
	uint32_t x = map_find(m.assignment_by_id, STR("SM-04"));
	struct step *steps = arena_array(a, 14, sizeof *steps);
	struct buf words = { .arena = a };
	struct span span;
	const struct bundle_spec spec = { .model = &m, .order = d->order, .faces = d->run.faces,
		.assignments = &x, .n = 1, .name = STR("SM-04") };
	struct bundle *b;
	struct probe *p;

	for (int i = 0; i < 60; i++)
		buf_adds(&words, "look twice ");
	span = (struct span){ buf_str(&words), 0 };
	for (int i = 0; i < 14; i++)
		steps[i] = (struct step){ .para = { .spans = &span, .nspans = 1 }, .hold = STR("Stop") };
	m.assignments = arena_array(a, m.nassignments, sizeof *m.assignments);
	memcpy(m.assignments, d->run.model->assignments, m.nassignments * sizeof *m.assignments);
	m.assignments[x].steps = steps;
	m.assignments[x].nsteps = 14;
	b = bundle_new(a, &spec);
	p = walk(d, a, b, BUNDLE_CARDS, letter);
	assert_int_equal(bundle_pages(b, BUNDLE_CARDS), 1);
	assert_int_equal(bundle_overfull(b, BUNDLE_CARDS), 0);
	assert_int_equal(p->outside_box + p->outside_sheet, 0);
	assert_true(probe_find(p, "Stop", 0) < p->ntexts);
	arena_free(a);
}

static unsigned count(const struct probe *p, str text)
{
	unsigned n = 0;

	for (size_t i = 0; i < p->ntexts; i++)
		n += str_eq(p->texts[i].text, text) ? 1 : 0;
	return n;
}

/* Quarter 1 has two safety cards; a section of 18 needs as many lines on chart and
 * sign-off sheet. */
static void the_chart_has_room_for_a_section(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t *v = arena_array(a, d->run.model->nassignments, sizeof *v);
	size_t n = quarter_ids(d->order, 1, v), cards = 0;

	for (int a4 = 0; a4 < 2; a4++) {
		struct bundle *b = make(d, a, d->run.model, d->order, 1, (struct edition_choice){ .a4 = a4 });
		struct probe *p = walk(d, a, b, BUNDLE_CHART, (struct edition_choice){ .a4 = a4 });
		unsigned rows = 0;

		cards = 0;
		for (size_t i = 0; i < n; i++) {
			if (d->run.model->assignments[v[i]].kind != KIND_SAFETY)
				continue;
			cards++;
			assert_true(count(p, bundle_mark(b, i)) >= 18 + 1);
			assert_true(count(p, d->run.model->assignments[v[i]].title) <= 1);
		}
		rows = p->tag_count[TAG_ROW];
		assert_int_equal(bundle_pages(b, BUNDLE_CHART), 1 + cards);
		assert_true(rows >= 19 * (1 + cards));
	}
	assert_true(cards >= 2);
	arena_free(a);
}

static struct model changed(struct arena *a, const struct model *m)
{
	struct model v = *m;

	v.assignments = arena_array(a, m->nassignments, sizeof *v.assignments);
	memcpy(v.assignments, m->assignments, m->nassignments * sizeof *v.assignments);
	return v;
}

static void other_words_for_the_instructor_change_nothing(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t x = map_find(d->run.model->assignment_by_id, STR("SM-04"));
	struct model m = changed(a, d->run.model);
	static const struct span secret = { { "SECRET ANSWER", 13 }, 0 };
	const struct para para = { .kind = PARA_TEXT, .spans = &secret, .nspans = 1 };
	struct bundle *before = make(d, a, d->run.model, d->order, 1, letter), *after;
	struct probe *p;

	assert_true(m.assignments[x].instructor.n > 0);
	for (size_t i = 0; i < m.nassignments; i++)
		m.assignments[i].instructor = (struct prose){ &para, 1 };
	after = make(d, a, &m, d->order, 1, letter);
	for (size_t i = 0; i < 10; i++)
		assert_string_equal(bundle_mark(before, i).p, bundle_mark(after, i).p);
	for (int part = 0; part < BUNDLE_PARTS; part++) {
		p = walk(d, a, after, (enum bundle_part)part, letter);
		for (size_t i = 0; i < p->ntexts; i++)
			assert_true(str_find(p->texts[i].text, STR("SECRET"), 0) == p->texts[i].text.n);
	}
	arena_free(a);
}

static void a_changed_step_changes_one_mark(void **state)
{
	const struct demo *d = *state;
	struct arena *a = arena_new(NULL, NULL);
	uint32_t x = map_find(d->run.model->assignment_by_id, STR("SM-04"));
	struct model m = changed(a, d->run.model);
	struct bundle *before = make(d, a, d->run.model, d->order, 1, letter), *after;
	uint32_t *v = arena_array(a, m.nassignments, sizeof *v);
	size_t n = quarter_ids(d->order, 1, v);

	m.assignments[x].nsteps--;
	after = make(d, a, &m, d->order, 1, letter);
	for (size_t i = 0; i < n; i++)
		assert_int_equal(str_eq(bundle_mark(before, i), bundle_mark(after, i)), v[i] != x);
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_heading_ends_a_page),
		cmocka_unit_test(no_page_is_nearly_empty),
		cmocka_unit_test(every_edition_is_sound),
		cmocka_unit_test(every_spanish_edition_is_sound),
		cmocka_unit_test(three_documents_show_one_mark),
		cmocka_unit_test(assignments_start_on_right_hand_pages),
		cmocka_unit_test(a_card_is_one_page),
		cmocka_unit_test(the_map_names_every_assignment),
		cmocka_unit_test(the_large_map_names_them_too),
		cmocka_unit_test(grading_sheets_ask_for_what_the_work_needs),
		cmocka_unit_test(a_crowded_card_is_one_page),
		cmocka_unit_test(the_chart_has_room_for_a_section),
		cmocka_unit_test(moving_an_assignment_keeps_its_mark),
		cmocka_unit_test(other_words_for_the_instructor_change_nothing),
		cmocka_unit_test(a_changed_step_changes_one_mark),
	};

	return cmocka_run_group_tests(tests, begin, end);
}
