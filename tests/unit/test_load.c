/* Loads: the demo against its published table, and the conventions on small programs.
 * The figures of the demo were worked out by hand, apart from this code. */
#include "check/load.h"

#include "cli/run.h"
#include "fake_model.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static int set_up(void **state)
{
	*state = arena_new(NULL, NULL);
	return 0;
}

static int tear_down(void **state)
{
	arena_free(*state);
	return 0;
}

static void assert_h(double have, double want)
{
	if (have < want - 1e-6 || have > want + 1e-6)
		print_message("%g instead of %g\n", have, want);
	assert_true(have >= want - 1e-6 && have <= want + 1e-6);
}

static uint32_t station(const struct model *m, const char *name)
{
	for (uint32_t i = 0; i < m->nstations; i++)
		if (str_eq(m->stations[i].name, str_of(name)))
			return i;
	fail_msg("no station %s", name);
	return NONE;
}

/* The demo with cohorts of the day section in the quarters and numbers given. */
struct demo_load {
	struct run run;
	struct stints *stints;
	struct load *load;
};

struct group {
	const char *entered;
	uint32_t finished, students;
};

static struct demo_load demo_begin(const struct group *g, size_t n)
{
	const struct options o = { .folder = "curriculum" };
	struct demo_load d;
	struct model *m;

	assert_int_equal(run_begin(&d.run, &o), 0);
	m = d.run.model;
	m->cohorts = arena_array(d.run.arena, n, sizeof *m->cohorts);
	m->ncohorts = n;
	for (size_t i = 0; i < n; i++)
		m->cohorts[i] = (struct cohort){ .name = STR("Day"),
			.entered = str_of(g[i].entered), .entry_quarter = 1,
			.finished = g[i].finished, .students = g[i].students };
	d.stints = stints_new(d.run.arena, order_of_program(d.run.arena, m));
	d.load = load_new(d.run.arena, d.stints);
	return d;
}

static const struct load_row *row(const struct demo_load *d, const char *term,
    const char *name)
{
	for (size_t i = 0; i < d->load->n; i++) {
		const struct load_row *r = &d->load->v[i];

		if (str_eq(d->load->terms[r->term], str_of(term)) &&
		    r->station == station(d->run.model, name))
			return r;
	}
	fail_msg("no row of %s in %s", name, term);
	return NULL;
}

static void assert_row(const struct demo_load *d, const char *term, const char *name,
    double must_h, double open_h)
{
	const struct load_row *r = row(d, term, name);

	assert_h(r->must_h, must_h);
	assert_h(r->open_h, open_h);
	assert_false(r->closed);
}

static void demo_hours_of_one_student(void **state)
{
	static const struct { const char *station; double h[6]; } rows[] = {
		{ "booth", { 73, 71, 120, 104, 0, 30 } },
		{ "gtaw", { 0, 0, 0, 0, 82, 0 } },
		{ "pipe", { 0, 0, 0, 0, 82, 82 } },
		{ "cutting", { 40, 0, 0, 0, 0, 0 } },
		{ "floor", { 14, 72, 22, 54, 0, 38 } },
		{ "bench", { 30, 0, 6, 8, 0, 0 } },
		{ "test-bench", { 0, 0, 14, 0, 0, 0 } },
		{ "classroom", { 5, 20, 0, 0, 0, 12 } },
	};
	struct demo_load d = demo_begin(NULL, 0);

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		for (uint32_t q = 1; q <= 6; q++)
			assert_h(place_hours(d.stints, q,
			    station(d.run.model, rows[i].station), 1, false),
			    rows[i].h[q - 1]);
	assert_int_equal(d.load->n, 0);
	run_end(&d.run);
}

/* 18 students in quarter 1 and 13 in quarter 4, all in section day. */
static void demo_fall_and_after(void **state)
{
	static const struct group g[] = { { "fall-2026", 0, 18 },
		{ "fall-2025", 3, 13 } };
	struct demo_load d = demo_begin(g, 2);

	(void)state;
	assert_row(&d, "Fall 2026", "booth", 18 * 73 + 13 * 104, 18 * 176);
	assert_h(row(&d, "Fall 2026", "booth")->must_h, 2666);
	assert_h(row(&d, "Fall 2026", "booth")->open_h, 3168);
	assert_row(&d, "Fall 2026", "cutting", 720, 880);
	assert_row(&d, "Winter 2027", "gtaw", 13 * 82, 1056);
	assert_row(&d, "Fall 2026", "bench", 18 * 30 + 13 * 8, 1760);
	/* On the floor nine teams of quarter 1 build for 14 h, and seven teams of quarter
	 * 4 for 16 h; what else quarter 4 does there, each student does alone. */
	assert_row(&d, "Fall 2026", "floor", 9 * 14 + 13 * (12 + 10 + 16) + 7 * 16,
	    1408);
	run_end(&d.run);
}

static void demo_winter_and_spring(void **state)
{
	static const struct group twelve[] = { { "fall-2025", 4, 12 } };
	static const struct group fourteen[] = { { "fall-2025", 4, 14 } };
	static const struct group spring[] = { { "fall-2026", 2, 16 },
		{ "fall-2025", 5, 11 } };
	struct demo_load d = demo_begin(twelve, 1);

	(void)state;
	assert_int_equal(d.run.model->cohorts[0].section, 0);
	assert_row(&d, "Winter 2027", "gtaw", 984, 1056);
	assert_row(&d, "Winter 2027", "pipe", 984, 1056);
	run_end(&d.run);
	d = demo_begin(fourteen, 1);
	assert_row(&d, "Winter 2027", "gtaw", 1148, 1056);
	run_end(&d.run);
	d = demo_begin(spring, 2);
	assert_row(&d, "Spring 2027", "booth", 2250, 3168);
	assert_row(&d, "Spring 2027", "test-bench", 224, 352);
	run_end(&d.run);
}

/* Cutting with 18 students: 5 h in week 2, 16 h over 3 to 5, 12 h over 6 and 7, 7 h over
 * 8 to 11. */
static void demo_weeks(void **state)
{
	static const struct group g[] = { { "fall-2026", 0, 18 } };
	static const double want[] = { 0, 0, 90, 96, 96, 96, 108, 108, 31.5, 31.5, 31.5,
		31.5 };
	struct demo_load d = demo_begin(g, 1);
	double again[12];

	(void)state;
	for (uint32_t w = 1; w <= 11; w++)
		assert_h(row(&d, "Fall 2026", "cutting")->week_h[w], want[w]);
	load_weeks(d.load, row(&d, "Fall 2026", "cutting"), d.stints, again);
	for (uint32_t w = 1; w <= 11; w++)
		assert_h(again[w], want[w]);
	run_end(&d.run);
}

/* A course of quarter 1 with one station, every assignment on it. */
static struct fake *small(struct arena *a)
{
	struct fake *k = fake_new(a, 2, 10);

	k->m->stations = arena_array(a, 2, sizeof *k->m->stations);
	k->m->nstations = 2;
	k->m->stations[0] = (struct station){ .name = STR("booth"),
	    .places = 4 };
	k->m->stations[1] = (struct station){ .name = STR("pipe"), .places = 2,
	    .sections = STR("day") };
	k->m->sections = arena_array(a, 2, sizeof *k->m->sections);
	k->m->nsections = 2;
	k->m->sections[0] = (struct section){ STR("day"), 16, { 0, 0, 0 } };
	k->m->sections[1] = (struct section){ STR("evening"), 12, { 0, 0, 0 } };
	return k;
}

static struct assignment *work(struct fake *k, const char *id)
{
	return &k->m->assignments[fake_id(k->m, id)];
}

static void give(struct fake *k, const char *id, double hours, uint32_t at)
{
	work(k, id)->hours = hours;
	work(k, id)->station = at;
}

static const struct stint *stint(const struct stints *s, const char *id)
{
	for (uint32_t i = 0; i < s->at[s->m->nquarters + 1]; i++)
		if (s->v[i].assignment == fake_id(s->m, id))
			return &s->v[i];
	fail_msg("no %s", id);
	return NULL;
}

static void work_lasts_to_the_next_start(void **state)
{
	struct fake *k = small(*state);
	struct stints *s;

	fake_work(k, "AA-1", "", "");
	fake_work(k, "AA-2", "", "");
	fake_work(k, "AA-3", "", "");
	fake_work(k, "BB-1", "", "");
	fake_at(k, 1, 2, "AA-1");
	fake_at(k, 1, 2, "AA-2");
	fake_at(k, 1, 7, "AA-3");
	fake_at(k, 2, 4, "BB-1");
	s = stints_new(*state, order_of_program(*state, fake_done(k)));
	assert_int_equal(stint(s, "AA-1")->first, 2);
	assert_int_equal(stint(s, "AA-1")->last, 6);
	assert_int_equal(stint(s, "AA-2")->last, 6);
	assert_int_equal(stint(s, "AA-3")->last, 10);
	assert_int_equal(stint(s, "BB-1")->last, 10);
	assert_int_equal(s->at[2], 3);
	assert_int_equal(s->at[3], 4);
}

/* 10 h or 14 h at the booth or 12 h at the pipe stand, then 5 h optional. */
static void choices_and_optional_work(void **state)
{
	struct fake *k = small(*state);
	struct course_load *c;
	struct stints *s;

	fake_work(k, "AA-1", "", "");
	fake_work(k, "AA-2", "", "");
	fake_work(k, "AA-3", "", "");
	fake_work(k, "AA-4", "", "");
	fake_at(k, 1, 1, "AA-1 AA-2 AA-3");
	fake_optional(k, 1, 3, "AA-4");
	fake_done(k);
	give(k, "AA-1", 10, 0);
	give(k, "AA-2", 14, 0);
	give(k, "AA-3", 12, 1);
	give(k, "AA-4", 5, 0);
	s = stints_new(*state, order_of_program(*state, k->m));
	c = course_loads(*state, s);
	assert_h(c[0].must_h, 14);
	assert_h(c[0].optional_h, 5);
	assert_int_equal(c[0].lines, 4);
	assert_h(quarter_hours(s, 1), 14);
	assert_h(place_hours(s, 1, 0, 3, false), 42);
	assert_h(place_hours(s, 1, 1, 3, false), 36);
	assert_h(place_hours(s, 1, 0, 3, true), 15);
}

/* Equal branches count once. */
static void equal_branches(void **state)
{
	struct fake *k = small(*state);
	struct stints *s;

	fake_work(k, "AA-1", "", "");
	fake_work(k, "AA-2", "", "");
	fake_at(k, 1, 1, "AA-1 AA-2");
	fake_done(k);
	give(k, "AA-1", 8, 0);
	give(k, "AA-2", 8, 0);
	s = stints_new(*state, order_of_program(*state, k->m));
	assert_h(place_hours(s, 1, 0, 1, false), 8);
	assert_h(quarter_hours(s, 1), 8);
}

static void add_team(struct fake *k, const char *id, const char *team)
{
	struct assignment *a = work(k, id);

	*ARENA_PUSH(k->a, a->facts, a->nfacts, a->facts_cap) =
	    (struct plain_fact){ .key = STR("Team"), .text = str_of(team) };
}

/* Seven students in teams of two ask for four places, on projects only. */
static void teams_share_a_place(void **state)
{
	struct fake *k = small(*state);
	struct stints *s;

	fake_work(k, "AA-1", "", "");
	fake_work(k, "AA-2", "", "");
	fake_at(k, 1, 1, "AA-1");
	fake_at(k, 1, 5, "AA-2");
	fake_done(k);
	give(k, "AA-1", 10, 0);
	give(k, "AA-2", 10, 1);
	add_team(k, "AA-1", "2 students, each welds one horse");
	add_team(k, "AA-2", "2 students");
	work(k, "AA-1")->kind = KIND_PROJECT;
	work(k, "AA-2")->kind = KIND_COUPON;
	s = stints_new(*state, order_of_program(*state, k->m));
	assert_h(place_hours(s, 1, 0, 7, false), 40);
	assert_h(place_hours(s, 1, 1, 7, false), 70);
	add_team(k, "AA-2", "pairs");
	assert_int_equal(team_size(work(k, "AA-2")), 2);
}

static void counts_that_are_written(void **state)
{
	(void)state;
	assert_int_equal(bends_asked(STR("2 of C at 2G, 2 at 5G, D1.1-2020")), 4);
	assert_int_equal(bends_asked(STR("1, D1.1-2020, plunger 1-1/2 in")), 1);
	assert_int_equal(bends_asked(STR("D1.1-2020")), 0);
	assert_int_equal(bends_asked(STR("no crack, 2 in long")), 0);
	assert_int_equal(bends_asked(STR("1/8 in at most")), 0);
	assert_int_equal(bends_asked(STR("")), 0);
}

static void sections_and_stations(void **state)
{
	struct fake *k = small(*state);

	assert_true(station_serves(k->m, 0, 1));
	assert_true(station_serves(k->m, 1, 0));
	assert_false(station_serves(k->m, 1, 1));
	assert_true(station_serves(k->m, 1, NONE));
	assert_h(station_week_h(k->m, 0, NONE), 28);
	assert_h(station_week_h(k->m, 1, NONE), 16);
	assert_h(station_week_h(k->m, 1, 0), 16);
}

static const struct load_row *small_row(const struct load *l, uint32_t section,
    uint32_t at)
{
	for (size_t i = 0; i < l->n; i++)
		if (l->v[i].section == section && l->v[i].station == at)
			return &l->v[i];
	fail_msg("no row");
	return NULL;
}

/* Three students by day and two who may come at any hour, in quarter 1 of 10 weeks. */
static void rows_of_small_cohorts(void **state)
{
	struct fake *k = small(*state);
	struct cohort c[] = {
		{ .entry_quarter = 1, .students = 3, .section = 0 },
		{ .entry_quarter = 1, .students = 2, .section = NONE },
	};
	const struct load_row *r;
	struct load *l;

	fake_work(k, "AA-1", "", "");
	fake_work(k, "AA-2", "", "");
	fake_work(k, "AA-3", "", "");
	fake_at(k, 1, 6, "AA-1 AA-2");
	fake_optional(k, 1, 8, "AA-3");
	fake_done(k);
	give(k, "AA-1", 10, 0);
	give(k, "AA-2", 14, 0);
	give(k, "AA-3", 5, 0);
	k->m->cohorts = c;
	k->m->ncohorts = 2;
	l = load_new(*state, stints_new(*state, order_of_program(*state, k->m)));
	r = small_row(l, 0, 0);
	assert_h(r->must_h, 3 * 14);
	assert_h(r->optional_h, 3 * 5);
	assert_h(r->open_h, 4 * 16 * 10);
	assert_h(r->week_h[5], 0);
	assert_h(r->week_h[6], 21);
	assert_h(r->week_h[7], 21);
	assert_h(r->week_h[8], 0);
	r = small_row(l, NONE, 0);
	assert_h(r->must_h, 5 * 14);
	assert_h(r->optional_h, 5 * 5);
	assert_h(r->open_h, 4 * 28 * 10);
	assert_int_equal(l->n, 2);
}

/* Who sits where, as term/cohort/quarter. */
static void assert_sittings(struct fake *k, const struct cohort *c, size_t n,
    const char *want)
{
	struct buf b = { .arena = k->a };
	struct load *l;

	k->m->cohorts = arena_array(k->a, n, sizeof *c);
	memcpy(k->m->cohorts, c, n * sizeof *c);
	k->m->ncohorts = n;
	l = load_new(k->a, stints_new(k->a, order_of_program(k->a, k->m)));
	for (size_t i = 0; i < l->nsittings; i++)
		buf_addf(&b, "%s%.*s/%u/%u", i ? ", " : "",
		    STR_ARG(l->terms[l->sittings[i].term]),
		    (unsigned)l->sittings[i].cohort, (unsigned)l->sittings[i].quarter);
	assert_string_equal(buf_z(&b), want);
}

static struct fake *calendar(struct arena *a, bool terms)
{
	static str names[] = { { "Fall", 4 }, { "Winter", 6 }, { "Spring", 6 },
		{ "Fall", 4 }, { "Winter", 6 }, { "Spring", 6 } };
	struct fake *k = fake_new(a, 4, 10);

	k->m->terms = names;
	k->m->nterms = terms ? 6 : 0;
	fake_done(k);
	return k;
}

static void cohorts_in_their_terms(void **state)
{
	/* One pauses: it began in fall 2025 and has finished one quarter where the other
	 * has finished two. Both go on in the same term. */
	static const struct cohort paused[] = {
		{ .entered = { "fall-2025", 9 }, .entry_quarter = 1, .finished = 2,
		    .students = 5 },
		{ .entered = { "fall-2025", 9 }, .entry_quarter = 1, .finished = 1,
		    .students = 5 },
	};
	/* One has not begun yet. */
	static const struct cohort later[] = {
		{ .entered = { "fall-2025", 9 }, .entry_quarter = 1, .finished = 1,
		    .students = 5 },
		{ .entered = { "fall-2026", 9 }, .entry_quarter = 1, .students = 5 },
	};
	static const struct cohort done[] = {
		{ .entered = { "fall-2025", 9 }, .entry_quarter = 1, .finished = 4,
		    .students = 5 },
	};

	assert_sittings(calendar(*state, true), paused, 2, "Spring 2026/0/3, "
	    "Spring 2026/1/2, Fall 2026/0/4, Fall 2026/1/3, Winter 2027/1/4");
	assert_sittings(calendar(*state, true), later, 2, "Winter 2026/0/2, "
	    "Spring 2026/0/3, Fall 2026/0/4, Fall 2026/1/1, Winter 2027/1/2, "
	    "Spring 2027/1/3, Fall 2027/1/4");
	assert_sittings(calendar(*state, true), done, 1, "");
	assert_sittings(calendar(*state, false), paused, 2, "term 1 from now/0/3, "
	    "term 1 from now/1/2, term 2 from now/0/4, term 2 from now/1/3, "
	    "term 3 from now/1/4");
}

/* Those who came in at quarter 3 by a written path, and where none is written. */
static void cohorts_on_a_path(void **state)
{
	static const struct cohort c[] = {
		{ .entered = { "spring-2026", 11 }, .entry_quarter = 3, .finished = 4,
		    .students = 5 },
	};
	struct fake *k = calendar(*state, true);

	assert_sittings(k, c, 1, "Winter 2027/0/1, Spring 2027/0/2");
	k = fake_new(*state, 4, 10);
	fake_path(k, "3 4 2 1", "");
	fake_done(k);
	assert_sittings(k, c, 1, "term 1 from now/0/2, term 2 from now/0/1");
}

#define WITH(test) cmocka_unit_test_setup_teardown(test, set_up, tear_down)

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(demo_hours_of_one_student),
		cmocka_unit_test(demo_fall_and_after),
		cmocka_unit_test(demo_winter_and_spring),
		cmocka_unit_test(demo_weeks),
		WITH(work_lasts_to_the_next_start),
		WITH(choices_and_optional_work),
		WITH(equal_branches),
		WITH(teams_share_a_place),
		WITH(counts_that_are_written),
		WITH(sections_and_stations),
		WITH(rows_of_small_cohorts),
		WITH(cohorts_in_their_terms),
		WITH(cohorts_on_a_path),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
