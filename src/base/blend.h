/* base/blend.h - a running digest of much: fast, told apart by 128 bits.
 *
 * Two running products take a word of eight bytes at a time; SHA-256 takes only their
 * ends. A change of a picture, a sheet or a file is told; an adversary is not withstood.
 * The same on every machine. Constants: 2^64 over the golden ratio, and a large prime.
 *
 * struct blend d = BLEND_START; blend_word, blend_bytes any number of times; blend_end. */
#ifndef BASE_BLEND_H
#define BASE_BLEND_H

#include "base/sha256.h"

struct blend { uint64_t a, b; };

/* Not zero, which words of zero leave as it is. */
#define BLEND_START { 1, 1 }

static inline void blend_word(struct blend *d, uint64_t word)
{
	d->a = ((d->a ^ word) * 0x9E3779B97F4A7C15u) ^ (d->a >> 29);
	d->b = ((d->b + word) * 0xC2B2AE3D27D4EB4Fu) ^ (d->b >> 31);
}

/* Eight bytes as one number, the first the least. */
static inline uint64_t blend_word_at(const uint8_t *p)
{
	return (uint64_t)p[0] | (uint64_t)p[1] << 8 | (uint64_t)p[2] << 16 |
	    (uint64_t)p[3] << 24 | (uint64_t)p[4] << 32 | (uint64_t)p[5] << 40 |
	    (uint64_t)p[6] << 48 | (uint64_t)p[7] << 56;
}

/* n first, so that runs of bytes after one another are told from one run. */
void blend_bytes(struct blend *d, const void *p, size_t n);
void blend_end(const struct blend *d, struct sha256 *h);

#endif
