#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/arena.h"
#include "cli/memory.h"

#include <stdlib.h>
#include <string.h>

static void alignment_and_zeros(void **state)
{
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	for (size_t n = 1; n < 300; n++) {
		unsigned char *p = arena_alloc(a, n);

		assert_int_equal((uintptr_t)p % _Alignof(max_align_t), 0);
		for (size_t i = 0; i < n; i++)
			assert_int_equal(p[i], 0);
		memset(p, 0xA5, n);
	}
	arena_free(a);
}

static void growth_keeps_what_is_there(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	uint32_t *v = NULL;
	size_t n = 0, cap = 0;

	(void)state;
	for (uint32_t i = 0; i < 10000; i++)
		*ARENA_PUSH(a, v, n, cap) = i;
	for (uint32_t i = 0; i < 10000; i++)
		assert_int_equal(v[i], i);
	arena_free(a);
}

/* The last object grows where it stands; one with another behind it moves, and the other
 * stays whole. What is added is zeroed. */
static void the_last_array_grows_in_place(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	size_t cap = 0, byte_cap = 0;
	uint64_t *v = arena_grow(a, NULL, 0, 3, &cap, sizeof *v), *w;
	char *bytes;

	(void)state;
	memset(v, 0xA5, cap * sizeof *v);
	w = arena_grow(a, v, cap, cap + 1, &cap, sizeof *v);
	assert_ptr_equal(v, w);
	for (size_t i = cap / 2; i < cap; i++)
		assert_int_equal(v[i], 0);
	bytes = arena_grow(a, NULL, 0, 3, &byte_cap, 1);
	memset(bytes, 0x5A, byte_cap);
	w = arena_grow(a, v, cap, cap + 1, &cap, sizeof *v);
	assert_ptr_not_equal(v, w);
	assert_memory_equal(v, w, cap / 2 * sizeof *v);
	for (size_t i = cap / 2; i < cap; i++)
		assert_int_equal(w[i], 0);
	for (size_t i = 0; i < byte_cap; i++)
		assert_int_equal(bytes[i], 0x5A);
	arena_free(a);
}

static void a_joined_arena_keeps_what_both_held(void **state)
{
	struct arena *a = arena_new(NULL, NULL), *b = arena_beside(a), *empty = arena_beside(a);
	char *mine = arena_copy(a, "mine", 4), *other = arena_copy(b, "other", 5);
	size_t bytes = arena_bytes(a) + arena_bytes(b);

	(void)state;
	arena_join(a, b);
	arena_join(a, empty);
	assert_int_equal(arena_bytes(a), bytes);
	assert_ptr_equal(arena_copy(a, "more", 4), mine + 16);
	assert_string_equal(mine, "mine");
	assert_string_equal(other, "other");
	arena_free(a);
}

/* A store that counts what it gave out and has not got back, and gives more than it is
 * asked for; it has two blocks. */
struct counting {
	size_t out, taken;
};

static void *count_take(void *user, size_t *bytes)
{
	struct counting *c = user;

	if (c->taken == 2)
		return NULL;
	*bytes += 1 << 20;
	c->out += *bytes;
	c->taken++;
	return calloc(1, *bytes);
}

static void count_give(void *user, void *p, size_t bytes)
{
	struct counting *c = user;

	c->out -= bytes;
	free(p);
}

/* Blocks large enough come from the store as long as it has some, and each goes back to it
 * with the size it had; smaller ones never do. */
static void large_blocks_come_from_the_store(void **state)
{
	struct counting c = { 0 };
	const struct arena_store store = { count_take, count_give, &c, 1 << 20 };
	struct arena *a = arena_new(NULL, NULL), *beside;

	(void)state;
	arena_use(a, &store);
	beside = arena_beside(a);
	arena_alloc(a, 1000);
	assert_int_equal(c.taken, 0);
	arena_alloc(beside, 3 << 20);
	assert_true(c.taken == 1 && c.out > 4 << 20);
	for (int i = 0; i < 100; i++) {
		unsigned char *p = arena_alloc(a, 100000);

		assert_int_equal(p[0] | p[99999], 0);
		memset(p, 0xA5, 100000);
	}
	assert_int_equal(c.taken, 2);
	arena_join(a, beside);
	arena_free(a);
	assert_int_equal(c.out, 0);
}

/* Side by side in one stretch, zeroed, and from elsewhere when that is full. */
static void a_ground_feeds_many_arenas(void **state)
{
	const struct arena_store *g = ground_new();
	struct arena *a[40];
	uintptr_t least = UINTPTR_MAX, most = 0;

	(void)state;
	for (size_t i = 0; i < 40; i++) {
		uintptr_t at;

		a[i] = arena_new(NULL, NULL);
		arena_use(a[i], g);
		at = (uintptr_t)arena_alloc(a[i], 1000);
		least = at < least ? at : least;
		most = at > most ? at : most;
	}
	assert_true(most - least < 40 * (66 << 10));
	for (size_t i = 0; i < 40 * 1000; i++) {
		unsigned char *p = arena_alloc(a[i % 40], 1000);

		assert_int_equal(p[0] | p[999], 0);
		memset(p, 0xA5, 1000);
	}
	for (size_t i = 0; i < 40; i++)
		arena_free(a[i]);
	ground_free(g);
}

/* What is expected fits into one block. */
static void what_is_expected_is_one_block(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	char *first;

	(void)state;
	arena_expect(a, 500000);
	first = arena_alloc(a, 16);
	for (int i = 1; i < 30000; i++)
		assert_ptr_equal(arena_alloc(a, 16), first + 16 * i);
	arena_free(a);
}

/* Cleared, an arena holds in one block what it held in several, and then uses that again:
 * zeroed, however it was left. */
static void a_cleared_arena_uses_its_memory_again(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	unsigned char *first[3] = { NULL };
	size_t bytes[3];

	(void)state;
	arena_clear(a);
	for (int round = 0; round < 3; round++) {
		for (int i = 0; i < 500; i++) {
			unsigned char *p = arena_alloc(a, 1000);

			for (size_t k = 0; k < 1000; k++)
				assert_int_equal(p[k], 0);
			memset(p, 0xA5, 1000);
			first[round] = first[round] ? first[round] : p;
		}
		bytes[round] = arena_bytes(a);
		arena_clear(a);
	}
	assert_true(bytes[1] >= bytes[0] && bytes[2] == bytes[1]);
	assert_ptr_equal(first[1], first[2]);
	arena_free(a);
}

/* The handler must not return, so it leaves by the way it came. */
static void leave(void *user)
{
	longjmp(*(jmp_buf *)user, 1);
}

static void too_much_calls_the_handler(void **state)
{
	jmp_buf back;
	struct arena *a = arena_new(leave, &back), *beside = arena_beside(a);

	(void)state;
	if (!setjmp(back)) {
		arena_array(beside, SIZE_MAX / 4, 8);
		fail_msg("an array larger than memory was made");
	}
	if (!setjmp(back)) {
		arena_alloc(a, SIZE_MAX - 4);
		fail_msg("an object larger than memory was made");
	}
	arena_limit(a, 1 << 20);
	assert_non_null(arena_alloc(a, 1 << 19));
	if (!setjmp(back)) {
		arena_alloc(a, 1 << 20);
		fail_msg("the limit was passed");
	}
	assert_true(arena_bytes(a) <= 1 << 20);
	assert_int_equal(arena_bytes(beside), 0);
	arena_free(beside);
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(alignment_and_zeros),
		cmocka_unit_test(growth_keeps_what_is_there),
		cmocka_unit_test(the_last_array_grows_in_place),
		cmocka_unit_test(a_joined_arena_keeps_what_both_held),
		cmocka_unit_test(large_blocks_come_from_the_store),
		cmocka_unit_test(a_ground_feeds_many_arenas),
		cmocka_unit_test(what_is_expected_is_one_block),
		cmocka_unit_test(a_cleared_arena_uses_its_memory_again),
		cmocka_unit_test(too_much_calls_the_handler),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
