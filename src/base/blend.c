#include "base/blend.h"

#include <string.h>

void blend_bytes(struct blend *d, const void *p, size_t n)
{
	const uint8_t *v = p;
	uint8_t last[8] = { 0 };
	size_t whole = n - n % 8;

	blend_word(d, n);
	for (size_t i = 0; i < whole; i += 8)
		blend_word(d, blend_word_at(v + i));
	if (whole == n)
		return;
	memcpy(last, v + whole, n - whole);
	blend_word(d, blend_word_at(last));
}

void blend_end(const struct blend *d, struct sha256 *h)
{
	uint8_t ends[16];

	for (int i = 0; i < 16; i++)
		ends[i] = (uint8_t)((i < 8 ? d->a : d->b) >> 8 * (i % 8));
	sha256_add(h, ends, sizeof ends);
}
