/* base/str.h - a borrowed run of bytes, usually a slice of a source text.
 *
 * A str owns nothing and carries no zero byte; whoever made the bytes keeps them
 * alive. Text is UTF-8 that was validated when the file was read. */
#ifndef BASE_STR_H
#define BASE_STR_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct { const char *p; size_t n; } str;

/* For literals, and for printf-like formats: buf_addf(b, "%.*s", STR_ARG(s)). */
#define STR(literal) ((str){ "" literal, sizeof(literal) - 1 })
#define STR_ARG(s) (int)(s).n, (s).p

str str_of(const char *zero_ended);
bool str_eq(str a, str b);
/* Equal but for the case of ASCII letters. */
bool str_eq_nocase(str a, str b);
/* Byte order, shorter first on a tie: <0, 0, >0. */
int str_cmp(str a, str b);
bool str_starts(str s, str prefix);
bool str_starts_nocase(str s, str prefix);
bool str_ends(str s, str suffix);
/* s without blanks (space, tab, CR, LF) at both ends, or at one. */
str str_trim(str s);
str str_trim_left(str s);
/* Bytes [from, to) of s, clamped. */
str str_sub(str s, size_t from, size_t to);
/* Offset of the first c or needle at or after from; s.n when there is none. */
size_t str_find_char(str s, char c, size_t from);
size_t str_find(str s, str needle, size_t from);
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

#endif
