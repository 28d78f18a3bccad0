/* units/scan.h - characters and numbers of a quantity, as typed.
 *
 * Private to units. Dashes, curly quotes, odd blanks, the fraction slash and the
 * multiplication sign count as their plain ASCII kin. */
#ifndef UNITS_SCAN_H
#define UNITS_SCAN_H

#include "base/str.h"

/* Signs without an ASCII kin; every other non-ASCII character is GLYPH_OTHER. */
enum { GLYPH_END = 0, GLYPH_PLUS_MINUS = 256, GLYPH_DEGREE, GLYPH_VULGAR, GLYPH_OTHER };

struct glyph {
	int c;                   /* plain ASCII or one of the above */
	size_t n;                /* bytes; 0 at the end */
	unsigned num, den;       /* of a GLYPH_VULGAR such as ⅜ */
};

/* The end, a blank that is no space, or a character outside ASCII. */
struct glyph scan_odd_glyph(str s, size_t at);

/* Asked of every character, of which nearly all are plain. */
static inline struct glyph scan_glyph(str s, size_t at)
{
	unsigned char c = at < s.n ? (unsigned char)s.p[at] : 0;

	return c >= ' ' && c < 0x80 ? (struct glyph){ c, 1, 0, 0 } : scan_odd_glyph(s, at);
}

static inline bool scan_is_digit(int c)
{
	return c >= '0' && c <= '9';
}

static inline bool scan_is_letter(int c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* First byte at or after `at` that is no blank. */
size_t scan_skip_blanks(str s, size_t at);
/* A figure, a point before one, or a vulgar fraction begins at `at`. */
bool scan_number_starts(str s, size_t at);

/* A number as the exact ratio num/den. */
struct number {
	uint64_t num, den;
	bool fraction;           /* a fraction was written */
	bool decimal;            /* a point was written */
	unsigned denominator;    /* as written; 1 without a fraction */
	int decimals;            /* places written after the point */
};

/* Reads a whole number, decimal, fraction or mixed number at *at and moves *at past
 * it. On failure returns false with the reason and its byte in *at. At most seven
 * figures before the point, six after, four on each side of a slash. */
bool scan_number(str s, size_t *at, struct number *out, const char **reason);

#endif
