/* base/str.h - a borrowed run of bytes, usually a slice of a source text.
 *
 * A str owns nothing and carries no zero byte; whoever made the bytes keeps them
 * alive. Text is UTF-8 that was validated when the file was read. */
#ifndef BASE_STR_H
#define BASE_STR_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

typedef struct { const char *p; size_t n; } str;

/* For literals, and for printf-like formats: buf_addf(b, "%.*s", STR_ARG(s)). */
#define STR(literal) ((str){ "" literal, sizeof(literal) - 1 })
#define STR_ARG(s) (int)(s).n, (s).p

/* Offset of the first needle at or after from; s.n when there is none. */
size_t str_find(str s, str needle, size_t from);
/* Byte order, shorter first on a tie: <0, 0, >0. */
int str_cmp(str a, str b);
/* Without regard to the case of ASCII letters. */
bool str_starts_nocase(str s, str prefix);
/* Takes the part before the next sep off *rest, which moves past it. False once
 * nothing is left. str_next(&rest, ',', &part) */
bool str_next(str *rest, char sep, str *part);
/* Takes the next run of non-blank bytes off *rest. False once nothing is left. */
bool str_word(str *rest, str *word);
/* A whole number in decimal digits and nothing else. */
bool str_to_u32(str s, uint32_t *out);
/* Code points in s, counting each non-continuation byte. */
size_t str_chars(str s);
/* Edits (insert, delete, change, swap neighbours) from a to b without regard to
 * case, or limit + 1 if more than limit. Inputs over 64 bytes count as far. */
size_t str_distance(str a, str b, size_t limit);

/* What follows is asked millions of times of a large program, mostly of a few bytes. */

static inline str str_of(const char *zero_ended)
{
	return (str){ zero_ended, strlen(zero_ended) };
}

/* Bytes [from, to) of s, clamped. */
static inline str str_sub(str s, size_t from, size_t to)
{
	if (to > s.n)
		to = s.n;
	if (from > to)
		from = to;
	return (str){ s.p ? s.p + from : NULL, to - from };
}

static inline bool str_eq(str a, str b)
{
	return a.n == b.n && (!a.n || !memcmp(a.p, b.p, a.n));
}

/* Equal but for the case of ASCII letters. */
static inline bool str_eq_nocase(str a, str b)
{
	return a.n == b.n && str_starts_nocase(a, b);
}

static inline bool str_starts(str s, str prefix)
{
	return s.n >= prefix.n && (!prefix.n || !memcmp(s.p, prefix.p, prefix.n));
}

static inline bool str_ends(str s, str suffix)
{
	return s.n >= suffix.n &&
	    (!suffix.n || !memcmp(s.p + s.n - suffix.n, suffix.p, suffix.n));
}

/* Offset of the first c at or after from; s.n when there is none. */
static inline size_t str_find_char(str s, char c, size_t from)
{
	const char *hit = from < s.n ? memchr(s.p + from, c, s.n - from) : NULL;

	return hit ? (size_t)(hit - s.p) : s.n;
}

/* Space, tab, CR or LF. */
static inline bool str_is_blank(char c)
{
	return c <= ' ' && (c == ' ' || c == '\t' || c == '\r' || c == '\n');
}

/* s without blanks at its left end, or at both. */
static inline str str_trim_left(str s)
{
	while (s.n && str_is_blank(*s.p)) {
		s.p++;
		s.n--;
	}
	return s;
}

static inline str str_trim(str s)
{
	s = str_trim_left(s);
	while (s.n && str_is_blank(s.p[s.n - 1]))
		s.n--;
	return s;
}

#endif
