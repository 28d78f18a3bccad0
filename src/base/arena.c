#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Blocks of BLOCK_ZEROED and more come zeroed from the system, at no cost; smaller ones
 * are cleared by stretches as they are used, so that no page is touched for nothing. */
enum {
	BLOCK_LEAST = 64 * 1024, BLOCK_ZEROED = 128 * 1024, BLOCK_MOST = 4096 * 1024,
	STRETCH = 4096, ALIGN = _Alignof(max_align_t)
};

struct block {
	struct block *next;
	const struct arena_store *store; /* where it came from; null: the C library */
	size_t used, clean, size; /* zero from used to clean */
	max_align_t data[];
};

struct arena {
	struct block *head;
	size_t next;             /* whole size of the block to come */
	size_t bytes, limit;
	const struct arena_store *store; /* null: none but the C library */
	arena_oom *oom;
	void *user;
};

static void out_of_memory(struct arena *a)
{
	if (a && a->oom)
		a->oom(a->user);
	__builtin_trap();
}

struct arena *arena_new(arena_oom *oom, void *user)
{
	struct arena *a = calloc(1, sizeof *a);

	if (!a) {
		if (oom)
			oom(user);
		__builtin_trap();
	}
	a->next = BLOCK_LEAST;
	a->oom = oom;
	a->user = user;
	return a;
}

struct arena *arena_beside(const struct arena *a)
{
	struct arena *b = arena_new(a->oom, a->user);

	b->store = a->store;
	return b;
}

void arena_use(struct arena *a, const struct arena_store *s)
{
	a->store = s;
}

void arena_expect(struct arena *a, size_t bytes)
{
	if (bytes > a->next)
		a->next = bytes;
}

static void block_free(struct block *b)
{
	if (b->store)
		b->store->give(b->store->user, b, sizeof *b + b->size);
	else
		free(b);
}

void arena_free(struct arena *a)
{
	if (!a)
		return;
	for (struct block *b = a->head, *next; b; b = next) {
		next = b->next;
		block_free(b);
	}
	free(a);
}

/* What came in several blocks comes in one the next time. */
void arena_clear(struct arena *a)
{
	if (a->head && !a->head->next) {
		a->head->used = a->head->clean = 0;
		return;
	}
	for (struct block *b = a->head, *next; b; b = next) {
		next = b->next;
		block_free(b);
	}
	a->head = NULL;
	a->next = a->bytes > BLOCK_LEAST ? a->bytes : BLOCK_LEAST;
	a->bytes = 0;
}

/* The head of a stays the one that is filled. */
void arena_join(struct arena *a, struct arena *b)
{
	struct block **end = &a->head;

	while (*end)
		end = &(*end)->next;
	*end = b->head;
	a->bytes += b->bytes;
	free(b);
}

void arena_limit(struct arena *a, size_t bytes)
{
	a->limit = bytes;
}

size_t arena_bytes(const struct arena *a)
{
	return a->bytes;
}

/* One of `whole` bytes with its head, or of more. */
static struct block *block_take(struct arena *a, size_t whole)
{
	const struct arena_store *store = a->store && whole >= a->store->least ? a->store : NULL;
	struct block *b = store ? store->take(store->user, &whole) : NULL;
	bool zeroed = b || whole >= BLOCK_ZEROED;

	if (!b) {
		store = NULL;
		b = zeroed ? calloc(1, whole) : malloc(whole);
	}
	if (!b)
		out_of_memory(a);
	b->store = store;
	b->used = 0;
	b->size = whole - sizeof *b;
	b->clean = zeroed ? b->size : 0;
	return b;
}

/* A block with room for size bytes. Blocks double up to BLOCK_MOST so that a large
 * program costs few of them and a small one little memory. */
static struct block *block_new(struct arena *a, size_t size)
{
	size_t least, whole;
	struct block *b;

	if (size > SIZE_MAX - sizeof *b)
		out_of_memory(a);
	least = size + sizeof *b;
	whole = a->next > least ? a->next : least;
	if (a->limit && a->bytes + whole > a->limit)
		whole = least;
	if (a->limit && a->bytes + whole > a->limit)
		out_of_memory(a);
	b = block_take(a, whole);
	if (whole == a->next)
		a->next = whole < BLOCK_MOST / 2 ? whole * 2 : BLOCK_MOST;
	a->bytes += sizeof *b + b->size;
	return b;
}

static void block_use(struct block *b, size_t used)
{
	size_t to;

	b->used = used;
	if (used <= b->clean)
		return;
	to = b->size - used > STRETCH ? used + STRETCH : b->size;
	memset((char *)b->data + b->clean, 0, to - b->clean);
	b->clean = to;
}

static size_t round_up(size_t size)
{
	return (size + ALIGN - 1) / ALIGN * ALIGN;
}

void *arena_alloc(struct arena *a, size_t size)
{
	struct block *b = a->head;
	void *p;

	if (size > SIZE_MAX - ALIGN)
		out_of_memory(a);
	size = round_up(size);
	if (!b || b->size - b->used < size) {
		bool oversized = size >= a->next;
		struct block *fresh = block_new(a, size);

		/* An oversized object must not waste the room left in the head. */
		if (b && oversized && b->size - b->used > size / 4) {
			fresh->next = b->next;
			b->next = fresh;
		} else {
			fresh->next = b;
			a->head = fresh;
		}
		b = fresh;
	}
	p = (char *)b->data + b->used;
	block_use(b, b->used + size);
	return p;
}

void *arena_array(struct arena *a, size_t count, size_t size)
{
	if (size && count > SIZE_MAX / size)
		out_of_memory(a);
	return arena_alloc(a, count * size);
}

void *arena_array_of(struct arena *a, const void *v, size_t count, size_t size)
{
	void *copy = arena_array(a, count, size);

	if (count)
		memcpy(copy, v, count * size);
	return copy;
}

char *arena_copy(struct arena *a, const char *p, size_t n)
{
	char *s = arena_alloc(a, n + 1);

	if (n)
		memcpy(s, p, n);
	return s;
}

/* Makes the object of `bytes` bytes at p longer where it stands; false when something
 * stands behind it or the block is full. */
static bool extend(struct arena *a, const void *p, size_t bytes, size_t want)
{
	struct block *b = a->head;
	size_t at;

	if (!b || !p || (const char *)p + round_up(bytes) != (char *)b->data + b->used)
		return false;
	at = b->used - round_up(bytes);
	if (want > b->size - at)
		return false;
	block_use(b, at + round_up(want) < b->size ? at + round_up(want) : b->size);
	return true;
}

/* Room for eight elements at first, for fewer when they are large. */
static size_t first_cap(size_t size)
{
	size_t n = 8;

	while (n > 1 && n * size > 1024)
		n /= 2;
	return n;
}

void *arena_grow(struct arena *a, void *v, size_t used, size_t need, size_t *cap,
    size_t size)
{
	size_t fresh = *cap ? *cap : first_cap(size);
	void *w;

	if (need <= *cap)
		return v;
	while (fresh < need)
		fresh *= 2;
	if (size && fresh <= SIZE_MAX / 2 / size && extend(a, v, *cap * size, fresh * size)) {
		*cap = fresh;
		return v;
	}
	w = arena_array(a, fresh, size);
	if (used)
		memcpy(w, v, used * size);
	*cap = fresh;
	return w;
}
