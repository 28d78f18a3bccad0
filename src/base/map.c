#include "base/map.h"

#include <string.h>

struct slot { str key; uint32_t value; uint32_t hash; };

struct map {
	struct arena *arena;
	struct slot *slots;
	size_t cap, n;
	bool nocase;
};

/* Fewer than eight bytes as one number; four and more by two halves that overlap. */
static uint64_t last_bytes(const char *p, size_t n)
{
	uint64_t x = 0;
	uint32_t a, b;

	if (n >= sizeof a) {
		memcpy(&a, p, sizeof a);
		memcpy(&b, p + n - sizeof b, sizeof b);
		return (uint64_t)a << 32 | b;
	}
	for (size_t i = 0; i < n; i++)
		x = x << 8 | (unsigned char)p[i];
	return x;
}

/* Eight bytes at a time. Where case does not count, setting the bit that tells the cases
 * of letters apart makes some other bytes alike too, which only costs a comparison. */
static uint32_t hash_of(const struct map *m, str key)
{
	const uint64_t fold = m->nocase ? 0x2020202020202020u : 0;
	uint64_t h = key.n, x;
	size_t i = 0;

	for (; i + sizeof x <= key.n; i += sizeof x) {
		memcpy(&x, key.p + i, sizeof x);
		h = (h ^ (x | fold)) * 0x9E3779B97F4A7C15u;
		h ^= h >> 32;
	}
	x = i < key.n ? last_bytes(key.p + i, key.n - i) : 0; /* key.p may be null. */
	h = (h ^ (x | fold)) * 0x9E3779B97F4A7C15u;
	return (uint32_t)(h >> 32);
}

/* The slot that holds key, or the free one where it belongs. */
static struct slot *probe(const struct map *m, str key, uint32_t h)
{
	for (size_t i = h & (m->cap - 1);; i = (i + 1) & (m->cap - 1)) {
		struct slot *s = &m->slots[i];

		if (!s->key.p)
			return s;
		if (s->hash == h && (str_eq(s->key, key) ||
		    (m->nocase && str_eq_nocase(s->key, key))))
			return s;
	}
}

static void resize(struct map *m, size_t cap)
{
	struct slot *old = m->slots;
	size_t n = m->cap;

	m->slots = arena_array(m->arena, cap, sizeof *m->slots);
	m->cap = cap;
	for (size_t i = 0; i < n; i++)
		if (old[i].key.p)
			*probe(m, old[i].key, old[i].hash) = old[i];
}

struct map *map_new(struct arena *a, bool nocase)
{
	struct map *m = arena_alloc(a, sizeof *m);

	m->arena = a;
	m->nocase = nocase;
	resize(m, 16);
	return m;
}

void map_reserve(struct map *m, size_t n)
{
	size_t cap = m->cap;

	while (n * 10 > cap * 7)
		cap *= 2;
	if (cap > m->cap)
		resize(m, cap);
}

uint32_t map_find(const struct map *m, str key)
{
	const struct slot *s = probe(m, key, hash_of(m, key));

	return s->key.p ? s->value : MAP_NONE;
}

uint32_t map_add(struct map *m, str key, uint32_t value)
{
	uint32_t h = hash_of(m, key);
	struct slot *s;

	if (m->n * 10 >= m->cap * 7)
		resize(m, m->cap * 2);
	s = probe(m, key, h);
	if (s->key.p)
		return s->value;
	*s = (struct slot){ key.p ? key : STR(""), value, h };
	m->n++;
	return value;
}
