#include "base/str.h"

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c + 32) : c;
}

int str_cmp(str a, str b)
{
	size_t n = a.n < b.n ? a.n : b.n;
	int c = n ? memcmp(a.p, b.p, n) : 0;

	return c ? c : (a.n > b.n) - (a.n < b.n);
}

bool str_starts_nocase(str s, str prefix)
{
	if (s.n < prefix.n)
		return false;
	for (size_t i = 0; i < prefix.n; i++)
		if (s.p[i] != prefix.p[i] && lower(s.p[i]) != lower(prefix.p[i]))
			return false;
	return true;
}

size_t str_find(str s, str needle, size_t from)
{
	if (!needle.n)
		return from < s.n ? from : s.n;
	for (size_t i = from; i + needle.n <= s.n; i++) {
		i = str_find_char(s, needle.p[0], i);
		if (i + needle.n <= s.n && !memcmp(s.p + i, needle.p, needle.n))
			return i;
	}
	return s.n;
}

bool str_next(str *rest, char sep, str *part)
{
	size_t at;

	if (!rest->p)
		return false;
	at = str_find_char(*rest, sep, 0);
	*part = str_sub(*rest, 0, at);
	*rest = at < rest->n ? str_sub(*rest, at + 1, rest->n) : (str){ 0 };
	return true;
}

bool str_word(str *rest, str *word)
{
	const char *p = rest->p, *end, *from;

	*word = *rest;
	if (!rest->n)
		return false; /* p may be null. */
	end = p + rest->n;
	while (p < end && str_is_blank(*p))
		p++;
	for (from = p; p < end && !str_is_blank(*p);)
		p++;
	*word = (str){ from, (size_t)(p - from) };
	*rest = (str){ p, (size_t)(end - p) };
	return p > from;
}

bool str_to_u32(str s, uint32_t *out)
{
	uint64_t v = 0;

	if (!s.n || s.n > 10)
		return false;
	for (size_t i = 0; i < s.n; i++) {
		if (s.p[i] < '0' || s.p[i] > '9')
			return false;
		v = v * 10 + (uint64_t)(s.p[i] - '0');
	}
	*out = (uint32_t)v;
	return v <= UINT32_MAX;
}

/* Eight bytes at a time while none of them is beyond ASCII. */
size_t str_chars(str s)
{
	size_t n, i = 0;
	uint64_t x;

	for (; i + sizeof x <= s.n; i += sizeof x) {
		memcpy(&x, s.p + i, sizeof x);
		if (x & 0x8080808080808080u)
			break;
	}
	for (n = i; i < s.n; i++)
		n += ((unsigned char)s.p[i] & 0xC0) != 0x80;
	return n;
}

static size_t least(size_t a, size_t b)
{
	return a < b ? a : b;
}

size_t str_distance(str a, str b, size_t limit)
{
	size_t rows[3][65], *before = rows[0], *prev = rows[1], *now = rows[2];
	size_t gap = a.n > b.n ? a.n - b.n : b.n - a.n, fewest = 0;

	if (gap > limit || a.n > 64 || b.n > 64)
		return limit + 1;
	for (size_t j = 0; j <= b.n; j++)
		prev[j] = j;
	for (size_t i = 1; i <= a.n; i++) {
		size_t *spare = before, fewest_before = fewest;

		fewest = now[0] = i;
		for (size_t j = 1; j <= b.n; j++) {
			char x = lower(a.p[i - 1]), y = lower(b.p[j - 1]);

			now[j] = least(least(prev[j], now[j - 1]) + 1, prev[j - 1] + (x != y));
			if (i > 1 && j > 1 && x == lower(b.p[j - 2]) && y == lower(a.p[i - 2]))
				now[j] = least(now[j], before[j - 2] + 1);
			fewest = least(fewest, now[j]);
		}
		/* No later row has fewer edits than the two before it allow. */
		if (fewest > limit && fewest_before + 1 > limit)
			return limit + 1;
		before = prev;
		prev = now;
		now = spare;
	}
	return least(prev[b.n], limit + 1);
}
