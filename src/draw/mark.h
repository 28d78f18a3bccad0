/* draw/mark.h - the revision mark: ten characters that change when a sheet does.
 *
 * The characters are 2-9 and A-Z without I, L and O, so that a mark can be read aloud and
 * copied by hand. 31^10 marks: about 8e14. */
#ifndef DRAW_MARK_H
#define DRAW_MARK_H

#include "base/sha256.h"

#define MARK_CHARS 10

/* Writes the mark of a digest: its first eight bytes as one big-endian number in
 * base 31, least digit first, and a zero byte. */
void mark_write(const uint8_t digest[SHA256_BYTES], char mark[MARK_CHARS + 1]);

#endif
