#include "model/credit.h"

/* More hours than any quarter has; keeps a long run of digits finite. */
#define NUMBER_MOST 10000.0

/* A decimal number at the start of *s, taken off it; 0 when none stands there. */
static double take_number(str *s)
{
	double value = 0, unit = 1;
	bool point = false;
	size_t i = 0;

	for (; i < s->n && value < NUMBER_MOST; i++) {
		if (s->p[i] == '.' && !point) {
			point = true;
			continue;
		}
		if (s->p[i] < '0' || s->p[i] > '9')
			break;
		unit = point ? unit / 10 : unit;
		value = point ? value + unit * (s->p[i] - '0')
		    : value * 10 + (s->p[i] - '0');
	}
	*s = str_trim(str_sub(*s, i, s->n));
	return value < NUMBER_MOST ? value : 0;
}

/* "1 credit" */
static double credits_of(str s)
{
	double n = take_number(&s);

	if (str_eq_nocase(s, STR("credit")) || str_eq_nocase(s, STR("credits")))
		return n;
	return 0;
}

/* The next blank-separated word, without a comma or semicolon after it. */
static bool next_word(str *rest, str *word)
{
	if (!str_word(rest, word))
		return false;
	while (word->n && (word->p[word->n - 1] == ',' || word->p[word->n - 1] == ';'))
		word->n--;
	return true;
}

/* What the words after a number say of it: which of the two it is. */
static double *kind_of(str word, struct credit_rule *r)
{
	if (str_eq_nocase(word, STR("lecture")))
		return &r->lecture_h;
	return str_eq_nocase(word, STR("lab")) ? &r->lab_h : NULL;
}

static bool is_filler(str word)
{
	static const str fillers[] = { { "hours", 5 }, { "hour", 4 }, { "h", 1 },
		{ "or", 2 }, { "and", 3 }, { "", 0 } };

	for (size_t i = 0; i < sizeof fillers / sizeof *fillers; i++)
		if (str_eq_nocase(word, fillers[i]))
			return true;
	return false;
}

/* Each number is followed by its kind; no kind stands twice or without a number. */
static bool read_hours(str s, struct credit_rule *r)
{
	double number = 0;
	str word;

	while (next_word(&s, &word)) {
		str rest = word;
		double n = take_number(&rest);
		double *kind = kind_of(word, r);

		if (n > 0 && !rest.n && number == 0) {
			number = n;
		} else if (kind && number > 0 && *kind == 0) {
			*kind = number;
			number = 0;
		} else if (!is_filler(word)) {
			return false;
		}
	}
	return number == 0 && (r->lecture_h > 0 || r->lab_h > 0);
}

bool credit_rule_parse(str s, struct credit_rule *out)
{
	struct credit_rule r = { 0 };
	size_t equals = str_find_char(s, '=', 0);
	double n = credits_of(str_trim(str_sub(s, 0, equals)));

	*out = (struct credit_rule){ 0 };
	if (equals == s.n || n <= 0 || !read_hours(str_sub(s, equals + 1, s.n), &r))
		return false;
	*out = (struct credit_rule){ r.lecture_h / n, r.lab_h / n };
	return true;
}
