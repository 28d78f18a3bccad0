#include "draw/mark.h"

void mark_write(const uint8_t digest[SHA256_BYTES], char mark[MARK_CHARS + 1])
{
	static const char alphabet[] = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
	const uint64_t base = sizeof alphabet - 1;
	uint64_t v = 0;

	for (int i = 0; i < 8; i++)
		v = v << 8 | digest[i];
	for (int i = 0; i < MARK_CHARS; i++) {
		mark[i] = alphabet[v % base];
		v /= base;
	}
	mark[MARK_CHARS] = 0;
}
