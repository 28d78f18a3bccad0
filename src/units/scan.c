#include "units/scan.h"

#include <string.h>

/* How a character in UTF-8 reads. */
static const struct kin { const char *utf8; int c; unsigned num, den; } kin[] = {
	{ "\xC2\xA0", ' ', 0, 0 },              /* no-break space */
	{ "\xE2\x80\x87", ' ', 0, 0 },          /* figure space */
	{ "\xE2\x80\x89", ' ', 0, 0 },          /* thin space */
	{ "\xE2\x80\x8A", ' ', 0, 0 },          /* hair space */
	{ "\xE2\x80\xAF", ' ', 0, 0 },          /* narrow no-break space */
	{ "\xE2\x80\x90", '-', 0, 0 },          /* hyphen */
	{ "\xE2\x80\x91", '-', 0, 0 },          /* no-break hyphen */
	{ "\xE2\x80\x92", '-', 0, 0 },          /* figure dash */
	{ "\xE2\x80\x93", '-', 0, 0 },          /* en dash */
	{ "\xE2\x80\x94", '-', 0, 0 },          /* em dash */
	{ "\xE2\x88\x92", '-', 0, 0 },          /* minus */
	{ "\xE2\x80\x98", '\'', 0, 0 },         /* curly quotes */
	{ "\xE2\x80\x99", '\'', 0, 0 },
	{ "\xE2\x80\xB2", '\'', 0, 0 },         /* prime */
	{ "\xE2\x80\x9C", '"', 0, 0 },
	{ "\xE2\x80\x9D", '"', 0, 0 },
	{ "\xE2\x80\xB3", '"', 0, 0 },          /* double prime */
	{ "\xE2\x81\x84", '/', 0, 0 },          /* fraction slash */
	{ "\xE2\x88\x95", '/', 0, 0 },          /* division slash */
	{ "\xC3\x97", 'x', 0, 0 },              /* multiplication sign */
	{ "\xC2\xB1", GLYPH_PLUS_MINUS, 0, 0 },
	{ "\xC2\xB0", GLYPH_DEGREE, 0, 0 },
	{ "\xC2\xBA", GLYPH_DEGREE, 0, 0 },     /* the ordinal sign some keyboards give */
	{ "\xC2\xBC", GLYPH_VULGAR, 1, 4 },
	{ "\xC2\xBD", GLYPH_VULGAR, 1, 2 },
	{ "\xC2\xBE", GLYPH_VULGAR, 3, 4 },
	{ "\xE2\x85\x93", GLYPH_VULGAR, 1, 3 },
	{ "\xE2\x85\x94", GLYPH_VULGAR, 2, 3 },
	{ "\xE2\x85\x9B", GLYPH_VULGAR, 1, 8 },
	{ "\xE2\x85\x9C", GLYPH_VULGAR, 3, 8 },
	{ "\xE2\x85\x9D", GLYPH_VULGAR, 5, 8 },
	{ "\xE2\x85\x9E", GLYPH_VULGAR, 7, 8 },
};

static size_t sequence_length(unsigned char lead)
{
	if (lead < 0xC0)
		return 1;
	if (lead < 0xE0)
		return 2;
	return lead < 0xF0 ? 3 : 4;
}

struct glyph scan_odd_glyph(str s, size_t at)
{
	str rest = str_sub(s, at, s.n);
	unsigned char lead;
	size_t n;

	if (!rest.n)
		return (struct glyph){ GLYPH_END, 0, 0, 0 };
	lead = (unsigned char)rest.p[0];
	if (lead == '\t' || lead == '\n' || lead == '\r')
		return (struct glyph){ ' ', 1, 0, 0 };
	if (lead < 0x80)
		return (struct glyph){ lead ? lead : GLYPH_OTHER, 1, 0, 0 };
	for (size_t i = 0; i < sizeof kin / sizeof *kin; i++) {
		if (kin[i].utf8[0] == rest.p[0] && str_starts(rest, str_of(kin[i].utf8)))
			return (struct glyph){ kin[i].c, strlen(kin[i].utf8), kin[i].num,
				kin[i].den };
	}
	n = sequence_length(lead);
	return (struct glyph){ GLYPH_OTHER, n < rest.n ? n : rest.n, 0, 0 };
}

size_t scan_skip_blanks(str s, size_t at)
{
	for (;;) {
		struct glyph g = scan_glyph(s, at);

		if (g.c != ' ')
			return at;
		at += g.n;
	}
}

bool scan_number_starts(str s, size_t at)
{
	struct glyph g = scan_glyph(s, at);

	if (g.c == '.')
		return scan_is_digit(scan_glyph(s, at + 1).c);
	return scan_is_digit(g.c) || g.c == GLYPH_VULGAR;
}

/* Reads figures at *at; false when there are more than `most` that count. */
static bool read_figures(str s, size_t *at, int most, uint64_t *value)
{
	int count = 0;

	*value = 0;
	for (; *at < s.n && scan_is_digit(s.p[*at]); ++*at) {
		if (*value || s.p[*at] != '0')
			count++;
		if (count > most)
			return false;
		*value = *value * 10 + (uint64_t)(s.p[*at] - '0');
	}
	return true;
}

/* Past the second end of a range that begins at `at`: "-80,000", " to 80,000". */
static size_t past_range(str s, size_t at)
{
	size_t dash = scan_skip_blanks(s, at);
	struct glyph g = scan_glyph(s, dash);

	if (g.c == '-')
		dash += g.n;
	else if (str_starts_nocase(str_sub(s, dash, s.n), STR("to ")))
		dash += 3;
	else
		return at;
	dash = scan_skip_blanks(s, dash);
	while (dash < s.n && (scan_is_digit(s.p[dash]) || s.p[dash] == ','))
		dash++;
	return dash;
}

/* Whether psi or pounds follow a number or a range that begins with it. */
static bool is_weighty(str s, size_t at)
{
	str rest = str_sub(s, scan_skip_blanks(s, past_range(s, at)), s.n);

	return str_starts_nocase(rest, STR("psi")) || str_starts_nocase(rest, STR("lb")) ||
	    str_starts_nocase(rest, STR("pound"));
}

/* The end of ",000" groups after a whole number of one to three figures, or 0. They are
 * read before psi and pounds only: "100,120 A" is a list. */
static size_t thousands_end(str s, size_t start, size_t at)
{
	if (at == start || at - start > 3)
		return 0;
	start = at;
	while (at + 4 <= s.n && s.p[at] == ',' && scan_is_digit(s.p[at + 1]) &&
	    scan_is_digit(s.p[at + 2]) && scan_is_digit(s.p[at + 3]))
		at += 4;
	return at > start && is_weighty(s, at) ? at : 0;
}

/* The figures of a whole number, with commas between thousands or without. */
static bool read_whole(str s, size_t *at, uint64_t *value)
{
	size_t start = *at, end;

	if (!read_figures(s, at, 7, value))
		return false;
	end = thousands_end(s, start, *at);
	if (!end)
		return true;
	if (end - start > 9)
		return false;
	for (; *at < end; *at += 4)
		*value = *value * 1000 + (uint64_t)(s.p[*at + 1] - '0') * 100 +
		    (uint64_t)(s.p[*at + 2] - '0') * 10 + (uint64_t)(s.p[*at + 3] - '0');
	return true;
}

/* "/8" after a numerator that was read. */
static bool read_denominator(str s, size_t *at, uint64_t *den, const char **reason)
{
	size_t slash = *at;

	*at += scan_glyph(s, *at).n;
	if (!scan_is_digit(scan_glyph(s, *at).c)) {
		*at = slash;
		*reason = "a number is missing after the slash";
		return false;
	}
	if (!read_figures(s, at, 4, den)) {
		*reason = "too many figures in the fraction";
		return false;
	}
	if (*den == 0) {
		*at = slash;
		*reason = "nothing can be divided by zero";
		return false;
	}
	if (scan_glyph(s, *at).c == '/' || scan_glyph(s, *at).c == GLYPH_VULGAR) {
		*reason = "a fraction has one slash";
		return false;
	}
	return true;
}

static void set_fraction(struct number *out, uint64_t whole, uint64_t num, uint64_t den)
{
	out->num = whole * den + num;
	out->den = den;
	out->denominator = (unsigned)den;
	out->fraction = true;
}

/* Where the fraction of a mixed number begins after a whole number: after one hyphen
 * or after blanks; s.n when what follows is no fraction. A hyphen with a blank beside
 * it makes no mixed number, since "1 - 1/2" may as well be meant as a range. */
static size_t mixed_part(str s, size_t at)
{
	struct glyph g = scan_glyph(s, at);
	size_t start, end;

	if (g.c == GLYPH_VULGAR)
		return at;
	if (g.c != '-' && g.c != ' ')
		return s.n;
	start = g.c == '-' ? at + g.n : scan_skip_blanks(s, at);
	if (scan_glyph(s, start).c == GLYPH_VULGAR)
		return start;
	end = start;
	while (scan_is_digit(scan_glyph(s, end).c))
		end++;
	return end > start && scan_glyph(s, end).c == '/' ? start : s.n;
}

/* Adds the fraction at `part` to a whole number. */
static bool read_mixed(str s, size_t *at, size_t part, struct number *out,
    const char **reason)
{
	struct glyph g = scan_glyph(s, part);
	bool hyphen = scan_glyph(s, *at).c == '-';
	uint64_t num, den;

	if (g.c == GLYPH_VULGAR) {
		set_fraction(out, out->num, g.num, g.den);
		*at = part + g.n;
		return true;
	}
	*at = part;
	if (!read_figures(s, at, 4, &num)) {
		*reason = "too many figures in the fraction";
		return false;
	}
	if (!read_denominator(s, at, &den, reason))
		return false;
	if (num >= den) {
		*at = part;
		*reason = hyphen ? "ranges of fractions use \"to\"" :
		    "the fraction after a whole number must be less than one";
		return false;
	}
	set_fraction(out, out->num, num, den);
	return true;
}

static bool read_decimal(str s, size_t *at, struct number *out, const char **reason)
{
	size_t point = *at;
	uint64_t part;

	*at = point + 1;
	for (size_t i = *at; i < s.n && scan_is_digit(s.p[i]); i++) {
		out->den *= 10;
		if (++out->decimals > 6) {
			*at = i;
			*reason = "too many figures after the point";
			return false;
		}
	}
	(void)read_figures(s, at, 6, &part);
	out->num = out->num * out->den + part;
	out->decimal = true;
	if (scan_glyph(s, *at).c == '/' || scan_number_starts(s, *at)) {
		*reason = "a number has one point and no slash after it";
		return false;
	}
	return true;
}

bool scan_number(str s, size_t *at, struct number *out, const char **reason)
{
	struct glyph g = scan_glyph(s, *at);
	uint64_t den;
	size_t part;

	*out = (struct number){ .den = 1, .denominator = 1 };
	if (g.c == GLYPH_VULGAR) {
		set_fraction(out, 0, g.num, g.den);
		*at += g.n;
		return true;
	}
	if (!scan_number_starts(s, *at)) {
		*reason = "a number is missing";
		return false;
	}
	if (!read_whole(s, at, &out->num)) {
		*reason = "too many figures";
		return false;
	}
	g = scan_glyph(s, *at);
	if (g.c == '.' && scan_is_digit(scan_glyph(s, *at + 1).c))
		return read_decimal(s, at, out, reason);
	if (g.c == '/') {
		if (!read_denominator(s, at, &den, reason))
			return false;
		set_fraction(out, 0, out->num, den);
		return true;
	}
	part = mixed_part(s, *at);
	return part == s.n || read_mixed(s, at, part, out, reason);
}
