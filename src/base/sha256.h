/* base/sha256.h - SHA-256 as FIPS 180-4 section 6.2 defines it.
 *
 * struct sha256 h; sha256_init(&h); sha256_add(...) any number of times; sha256_end.
 * Cannot fail. Nothing is allocated. */
#ifndef BASE_SHA256_H
#define BASE_SHA256_H

#include <stddef.h>
#include <stdint.h>

#define SHA256_BYTES 32

struct sha256 {
	uint32_t h[8];
	uint64_t bytes;          /* fed so far */
	uint8_t block[64];       /* the last, incomplete block */
};

void sha256_init(struct sha256 *s);
void sha256_add(struct sha256 *s, const void *p, size_t n);
/* Writes the digest; s must be started anew before further use. */
void sha256_end(struct sha256 *s, uint8_t digest[SHA256_BYTES]);

#endif
