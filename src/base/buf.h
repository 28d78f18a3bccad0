/* base/buf.h - a growing text in an arena.
 *
 * struct buf b = { .arena = a }; then add; the bytes are b.p[0..b.n). The buffer
 * is not zero-ended unless buf_z is called. Nothing can fail (see arena.h). */
#ifndef BASE_BUF_H
#define BASE_BUF_H

#include "base/arena.h"
#include "base/str.h"

#include <stdarg.h>

struct buf {
	struct arena *arena;
	char *p;
	size_t n, cap;
};

void buf_add(struct buf *b, str s);
void buf_adds(struct buf *b, const char *zero_ended);
void buf_addc(struct buf *b, char c);
/* Understands %s %.*s %c %d %u %zu %02d-style zero padding of %d/%u, and %%.
 * Locale plays no part. Anything else is our bug. */
void buf_addf(struct buf *b, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* The same for a list of arguments already begun. */
void buf_addv(struct buf *b, const char *format, va_list *ap);
/* x with at most `decimals` places (0..9), rounded half away from zero on the
 * decimal value (a 1e-9 relative allowance absorbs binary noise: 3.175 gives
 * 3.18). keep_zeros: 1.500 rather than 1.5. Non-finite prints "?". */
void buf_add_real(struct buf *b, double x, int decimals, bool keep_zeros);
/* The text so far as a str; stays valid as the buffer grows no further. */
str buf_str(const struct buf *b);
/* The text so far, zero-ended. */
const char *buf_z(struct buf *b);
/* Formats into the arena: str s = str_format(a, "%s-%d", "SM", 4); */
str str_format(struct arena *a, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
str str_copy(struct arena *a, str s);

#endif
