#include "order/order.h"

#include "fake_model.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

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

/* The walk as ids with a blank between. */
static const char *walk_of(struct arena *a, const struct order *o)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < o->nwalk; i++)
		buf_addf(&b, "%s%.*s", i ? " " : "",
		    STR_ARG(o->model->assignments[o->walk[i]].id));
	return buf_z(&b);
}

static const struct model *sample(struct arena *a)
{
	struct fake *k = fake_new(a, 3, 11);

	fake_work(k, "SM-01", "", "");
	fake_work(k, "SM-02", "", "");
	fake_work(k, "SM-03", "", "");
	fake_work(k, "SM-04", "", "");
	fake_work(k, "SM-05", "", "");
	fake_work(k, "SM-06", "", "");
	fake_at(k, 1, 4, "SM-06");
	fake_at(k, 1, 2, "SM-05");
	fake_at(k, 2, 1, "SM-03 SM-02");
	fake_at(k, 1, 2, "SM-04");
	fake_at(k, 3, 1, "SM-01");
	return fake_done(k);
}

static void test_sorts_by_quarter_week_line(void **state)
{
	const struct order *o = order_of_program(*state, sample(*state));

	assert_string_equal(walk_of(*state, o), "SM-05 SM-04 SM-06 SM-03 SM-02 SM-01");
	assert_null(o->entry);
}

static void test_branches_share_one_place(void **state)
{
	const struct model *m = sample(*state);
	const struct order *o = order_of_program(*state, m);
	uint32_t a = fake_id(m, "SM-02"), b = fake_id(m, "SM-03");

	assert_int_equal(place_cmp(&o->places[a], &o->places[b]), 0);
	assert_int_not_equal(o->places[a].slot, o->places[b].slot);
}

static void test_unlisted_has_no_place(void **state)
{
	struct fake *k = fake_new(*state, 1, 11);
	const struct order *o;

	fake_work(k, "SM-01", "", "");
	fake_work(k, "SM-02", "", "");
	fake_at(k, 1, 1, "SM-02");
	o = order_of_program(*state, fake_done(k));
	assert_string_equal(walk_of(*state, o), "SM-02");
	assert_int_equal(o->places[0].slot, NONE);
}

static void test_first_listing_counts(void **state)
{
	struct fake *k = fake_new(*state, 2, 11);
	const struct model *m;
	const struct order *o;

	fake_work(k, "SM-01", "", "");
	fake_at(k, 2, 5, "SM-01");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 1, 1, "SM-99");
	m = fake_done(k);
	o = order_of_program(*state, m);
	assert_int_equal(o->nwalk, 1);
	assert_int_equal(o->places[0].quarter, 2);
	assert_int_equal(o->places[0].week, 5);
}

static void test_path_sets_the_turns(void **state)
{
	struct fake *k = fake_new(*state, 3, 11);
	const struct model *m;
	const struct order *o;

	fake_work(k, "SM-01", "", "");
	fake_work(k, "SM-02", "", "");
	fake_work(k, "SM-03", "", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 2, 1, "SM-02");
	fake_at(k, 3, 1, "SM-03");
	fake_path(k, "3 1 9 0 3", "");
	m = fake_done(k);
	o = order_of_entry(*state, m, &m->entries[0]);
	assert_string_equal(walk_of(*state, o), "SM-03 SM-01");
	assert_int_equal(o->places[2].rank_quarter, 1);
	assert_int_equal(o->places[2].quarter, 3);
	assert_int_equal(o->places[0].rank_quarter, 2);
	assert_int_equal(o->places[1].slot, NONE);
	assert_ptr_equal(o->entry, &m->entries[0]);
	assert_int_equal(order_turn(o, 2), 0);
	assert_int_equal(order_turn(o, 3), 1);
}

static void test_moved_goes_last_in_its_week(void **state)
{
	const struct model *m = sample(*state);
	const struct order *o = order_of_program(*state, m), *n, *again;

	n = order_moved(*state, o, fake_id(m, "SM-01"), 1, 2);
	assert_string_equal(walk_of(*state, n), "SM-05 SM-04 SM-01 SM-06 SM-03 SM-02");
	again = order_moved(*state, n, fake_id(m, "SM-05"), 1, 2);
	assert_string_equal(walk_of(*state, again), "SM-04 SM-01 SM-05 SM-06 SM-03 "
	    "SM-02");
	assert_string_equal(walk_of(*state, o), "SM-05 SM-04 SM-06 SM-03 SM-02 SM-01");
	n = order_moved(*state, o, fake_id(m, "SM-05"), 3, 11);
	assert_string_equal(walk_of(*state, n), "SM-04 SM-06 SM-03 SM-02 SM-01 SM-05");
}

static void test_moved_takes_the_whole_line(void **state)
{
	const struct model *m = sample(*state);
	const struct order *o = order_of_program(*state, m), *n;

	n = order_moved(*state, o, fake_id(m, "SM-02"), 1, 3);
	assert_string_equal(walk_of(*state, n), "SM-05 SM-04 SM-03 SM-02 SM-06 SM-01");
	assert_int_equal(place_cmp(&n->places[fake_id(m, "SM-02")],
	    &n->places[fake_id(m, "SM-03")]), 0);
}

static void test_moved_off_and_onto_a_path(void **state)
{
	struct fake *k = fake_new(*state, 3, 11);
	const struct model *m;
	const struct order *o, *n;

	fake_work(k, "SM-01", "", "");
	fake_work(k, "SM-02", "", "");
	fake_work(k, "SM-03", "", "");
	fake_at(k, 1, 1, "SM-01");
	fake_at(k, 2, 1, "SM-02");
	fake_path(k, "2 3", "");
	m = fake_done(k);
	o = order_of_entry(*state, m, &m->entries[0]);
	assert_string_equal(walk_of(*state, o), "SM-02");
	n = order_moved(*state, o, 0, 3, 1);
	assert_string_equal(walk_of(*state, n), "SM-02 SM-01");
	assert_int_equal(n->places[0].rank_quarter, 2);
	n = order_moved(*state, o, 1, 1, 1);
	assert_string_equal(walk_of(*state, n), "");
	assert_int_equal(n->places[1].slot, NONE);
	n = order_moved(*state, o, 2, 2, 1);
	assert_string_equal(walk_of(*state, n), "SM-02");
}

/* Orders made by counting agree with sorting by comparison, over keys wider than one
 * digit of the count. */
static void test_wide_keys_agree_with_comparison(void **state)
{
	uint32_t x = 12345;

	for (int round = 0; round < 200; round++) {
		struct fake *k = fake_new(*state, 3, 11);
		const struct order *o;

		for (uint32_t i = 0; i < 40; i++) {
			char id[16];

			strcpy(id, "SM-00");
			id[3] = (char)('0' + i / 10);
			id[4] = (char)('0' + i % 10);
			fake_work(k, id, "", "");
			x = x * 1664525 + 1013904223;
			fake_at(k, 1 + (x >> 8) % 3, (x >> 10) % (round % 2 ? 4
			    : 5000000), id);
		}
		o = order_of_program(*state, fake_done(k));
		assert_int_equal(o->nwalk, 40);
		for (size_t i = 1; i < o->nwalk; i++)
			assert_true(place_cmp(&o->places[o->walk[i - 1]],
			    &o->places[o->walk[i]]) < 0);
	}
}

static void test_empty_program(void **state)
{
	struct fake *k = fake_new(*state, 0, 11);
	const struct order *o = order_of_program(*state, fake_done(k));

	assert_int_equal(o->nwalk, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_sorts_by_quarter_week_line),
		cmocka_unit_test(test_branches_share_one_place),
		cmocka_unit_test(test_unlisted_has_no_place),
		cmocka_unit_test(test_first_listing_counts),
		cmocka_unit_test(test_path_sets_the_turns),
		cmocka_unit_test(test_moved_goes_last_in_its_week),
		cmocka_unit_test(test_moved_takes_the_whole_line),
		cmocka_unit_test(test_moved_off_and_onto_a_path),
		cmocka_unit_test(test_wide_keys_agree_with_comparison),
		cmocka_unit_test(test_empty_program),
	};

	return cmocka_run_group_tests(tests, set_up, tear_down);
}
