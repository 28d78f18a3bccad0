/* base/arena.h - memory that dies together.
 *
 * One arena serves one run, or one piece of scratch work. Objects are never
 * freed singly: whoever made the arena frees it whole. Allocation never returns
 * null: when memory runs out, or the limit set by a test is passed, the handler
 * is called; it must not return. Blocks are aligned to max_align_t and zeroed. */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include <stddef.h>

struct arena;

/* Called when no memory is left. Must not return. */
typedef void arena_oom(void *user);

/* Makes an empty arena. oom may be null: then a failed allocation traps. */
struct arena *arena_new(arena_oom *oom, void *user);
/* An empty arena with the handler of a, for scratch work; freed apart from it. */
struct arena *arena_beside(const struct arena *a);
void arena_free(struct arena *a);
/* Drops all objects and keeps the memory, in one block, for as much again. */
void arena_clear(struct arena *a);

/* Gives all that b holds to a, with which it then lives; b itself is gone. */
void arena_join(struct arena *a, struct arena *b);

/* A place where blocks of `least` bytes and more come from in place of the C library. take
 * returns zeroed memory of *bytes or more and says how many, or null when it has none; give
 * takes it back. Arenas of several threads call both at the same time. */
struct arena_store {
	void *(*take)(void *user, size_t *bytes);
	void (*give)(void *user, void *p, size_t bytes);
	void *user;
	size_t least;
};

/* From now on a takes its blocks from s, and so do arenas made beside it. s outlives
 * them. */
void arena_use(struct arena *a, const struct arena_store *s);

/* About so many bytes are coming: the first block is made large enough for them. */
void arena_expect(struct arena *a, size_t bytes);

/* Most bytes that this arena may hold from the system; 0 means no limit. */
void arena_limit(struct arena *a, size_t bytes);

/* size zeroed bytes, living as long as the arena. */
void *arena_alloc(struct arena *a, size_t size);

/* count objects of size bytes; an overflowing product counts as out of memory. */
void *arena_array(struct arena *a, size_t count, size_t size);

/* The same with what v holds, which may be null when count is 0. */
void *arena_array_of(struct arena *a, const void *v, size_t count, size_t size);

/* Copies n bytes and adds a zero byte after them. */
char *arena_copy(struct arena *a, const char *p, size_t n);

/* Bytes taken from the system so far. */
size_t arena_bytes(const struct arena *a);

/* Grows an array that a owns: returns one with room for at least need elements of
 * size bytes, the first `used` copied; the same one when there is room behind it. *cap is
 * the capacity before and after. */
void *arena_grow(struct arena *a, void *v, size_t used, size_t need, size_t *cap,
    size_t size);

/* Appends one zeroed element to a vector held as pointer, count and capacity,
 * and yields its address: struct x *p = ARENA_PUSH(a, v, n, cap); */
#define ARENA_PUSH(a, v, n, cap)                                                  \
	((v) = (size_t)(n) < (cap) ? (v)                                           \
	     : arena_grow((a), (v), (n), (size_t)(n) + 1, &(cap), sizeof *(v)),    \
	    &(v)[(n)++])

#endif
