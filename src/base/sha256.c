#include "base/sha256.h"

#include <string.h>

/* FIPS 180-4 section 4.2.2. */
static const uint32_t round_constants[64] = {
	0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5,
	0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
	0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3,
	0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
	0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc,
	0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
	0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7,
	0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
	0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13,
	0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
	0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3,
	0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
	0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5,
	0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
	0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208,
	0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
};

static uint32_t rotate(uint32_t x, unsigned n)
{
	return x >> n | x << (32 - n);
}

static void schedule(uint32_t w[64], const uint8_t *p)
{
	for (int t = 0; t < 16; t++, p += 4)
		w[t] = (uint32_t)p[0] << 24 | (uint32_t)p[1] << 16 |
		    (uint32_t)p[2] << 8 | p[3];
	for (int t = 16; t < 64; t++) {
		uint32_t x = w[t - 15], y = w[t - 2];

		w[t] = w[t - 16] + w[t - 7] + (rotate(x, 7) ^ rotate(x, 18) ^ x >> 3) +
		    (rotate(y, 17) ^ rotate(y, 19) ^ y >> 10);
	}
}

/* One round of section 6.2.2, step 3. Instead of moving eight words along, each round
 * names them one place further: a is v[i], b v[i + 1] and so on, modulo 8. */
#define V(k) v[((k) + 8 - t % 8) % 8]

static inline void round_do(uint32_t v[8], int t, uint32_t w)
{
	uint32_t e = V(4), a = V(0);
	uint32_t t1 = V(7) + (rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25)) +
	    ((e & V(5)) ^ (~e & V(6))) + round_constants[t] + w;
	uint32_t t2 = (rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22)) +
	    ((a & V(1)) ^ (a & V(2)) ^ (V(1) & V(2)));

	V(3) += t1;
	V(7) = t1 + t2;
}

/* Section 6.2.2, steps 1 to 4; eight rounds at a time, so that places are constant. */
static void compress(uint32_t h[8], const uint8_t *block)
{
	uint32_t w[64], v[8];

	schedule(w, block);
	memcpy(v, h, sizeof v);
	for (int t = 0; t < 64; t += 8) {
		round_do(v, t, w[t]);
		round_do(v, t + 1, w[t + 1]);
		round_do(v, t + 2, w[t + 2]);
		round_do(v, t + 3, w[t + 3]);
		round_do(v, t + 4, w[t + 4]);
		round_do(v, t + 5, w[t + 5]);
		round_do(v, t + 6, w[t + 6]);
		round_do(v, t + 7, w[t + 7]);
	}
	for (int i = 0; i < 8; i++)
		h[i] += v[i];
}

void sha256_init(struct sha256 *s)
{
	/* Section 5.3.3. */
	static const uint32_t start[8] = {
		0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
		0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
	};

	*s = (struct sha256){ .bytes = 0 };
	memcpy(s->h, start, sizeof start);
}

void sha256_add(struct sha256 *s, const void *p, size_t n)
{
	const uint8_t *v = p;
	size_t held = s->bytes % 64, part;

	if (n == 0)
		return;
	s->bytes += n;
	if (held > 0) {
		part = n < 64 - held ? n : 64 - held;
		memcpy(s->block + held, v, part);
		v += part;
		n -= part;
		if (held + part < 64)
			return;
		compress(s->h, s->block);
	}
	for (; n >= 64; v += 64, n -= 64)
		compress(s->h, v);
	memcpy(s->block, v, n);
}

void sha256_end(struct sha256 *s, uint8_t digest[SHA256_BYTES])
{
	uint64_t bits = s->bytes * 8;
	uint8_t pad[72] = { 0x80 };
	size_t held = s->bytes % 64, n = held < 56 ? 56 - held : 120 - held;

	for (int i = 0; i < 8; i++)
		pad[n + (size_t)i] = (uint8_t)(bits >> (56 - 8 * i));
	sha256_add(s, pad, n + 8);
	for (int i = 0; i < SHA256_BYTES; i++)
		digest[i] = (uint8_t)(s->h[i / 4] >> (24 - 8 * (i % 4)));
}
