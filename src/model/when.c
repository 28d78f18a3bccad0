#include "model/when.h"

static bool is_year(uint32_t year)
{
	return year >= 1900 && year <= 2999;
}

static uint32_t days_in(uint32_t year, uint32_t month)
{
	static const uint32_t days[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
	bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);

	return days[month - 1] + (month == 2 && leap);
}

static bool parse_day(str s, struct when *out)
{
	uint32_t year, month, day;

	if (s.n != 10 || s.p[4] != '-' || s.p[7] != '-' ||
	    !str_to_u32(str_sub(s, 0, 4), &year) || !str_to_u32(str_sub(s, 5, 7), &month) ||
	    !str_to_u32(str_sub(s, 8, 10), &day))
		return false;
	if (!is_year(year) || month < 1 || month > 12 || day < 1 ||
	    day > days_in(year, month))
		return false;
	out->first = out->last = year * 10000 + month * 100 + day;
	return true;
}

static bool parse_term(str s, struct when *out)
{
	static const struct { str word; uint32_t first, last; } terms[] = {
		{ { "winter", 6 }, 101, 331 }, { { "spring", 6 }, 401, 630 },
		{ { "summer", 6 }, 701, 831 }, { { "fall", 4 }, 901, 1231 },
		{ { "autumn", 6 }, 901, 1231 },
	};
	uint32_t year;

	for (size_t i = 0; i < sizeof terms / sizeof *terms; i++) {
		size_t n = terms[i].word.n;

		if (!str_starts_nocase(s, terms[i].word) || s.n != n + 5 ||
		    (s.p[n] != '-' && s.p[n] != ' '))
			continue;
		if (!str_to_u32(str_sub(s, n + 1, s.n), &year) || !is_year(year))
			return false;
		out->first = year * 10000 + terms[i].first;
		out->last = year * 10000 + terms[i].last;
		return true;
	}
	return false;
}

bool when_parse(str s, struct when *out)
{
	*out = (struct when){ 0, 0 };
	return parse_day(s, out) || parse_term(s, out);
}

bool when_over(struct when until, struct when date)
{
	return until.last < date.first;
}
