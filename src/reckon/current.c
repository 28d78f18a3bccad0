#include "reckon/current.h"

#include <math.h>

static const struct current_row rows[] = {
#include "reckon/current.inc"
};

static const size_t nrows = sizeof rows / sizeof *rows;

/* Aluminum wires by the figures of their AWS A5.10 class: 1xxx, 4xxx, 5xxx alloys. */
static bool aluminum_wire(str class)
{
	static const str starts[] = { { "ER1", 3 }, { "ER4", 3 }, { "ER5", 3 } };
	size_t figures = 0;

	/* Four figures tell ER4043 from a stainless such as ER410. */
	for (size_t i = 2; i < class.n && class.p[i] >= '0' && class.p[i] <= '9'; i++)
		figures++;
	for (size_t i = 0; i < sizeof starts / sizeof *starts; i++)
		if (figures == 4 && str_starts_nocase(class, starts[i]))
			return true;
	return false;
}

/* E7018-H4R is an E7018 and ER308L an ER308, but E71T-11 is no E71T-1. */
static bool is_class(str class, str named)
{
	char next;

	if (named.n < 3 || !str_starts_nocase(class, named))
		return false;
	if (class.n == named.n)
		return true;
	next = class.p[named.n];
	return next < '0' || next > '9';
}

static str bare(str word)
{
	while (word.n && (word.p[0] == '(' || word.p[0] == ','))
		word = str_sub(word, 1, word.n);
	while (word.n && (word.p[word.n - 1] == ')' || word.p[word.n - 1] == ','))
		word = str_sub(word, 0, word.n - 1);
	return word;
}

static bool electrode_fits(str class, const char *words)
{
	str rest = str_of(words), word;

	if (str_starts(rest, STR("aluminum")))
		return aluminum_wire(class) || str_eq_nocase(class, STR("aluminum"));
	while (str_word(&rest, &word)) {
		word = bare(word);
		/* A row of stainless spray is headed by the metal, not a class. */
		if (str_eq(word, STR("stainless")) &&
		    str_starts_nocase(class, STR("ER3")))
			return true;
		if (word.n && word.p[0] == 'E' && is_class(class, word))
			return true;
	}
	return false;
}

static bool has_word(str words, str want)
{
	str word;

	while (str_word(&words, &word))
		if (str_eq_nocase(word, want))
			return true;
	return false;
}

static str polarity_word(str s)
{
	if (str_eq_nocase(s, STR("DC+")))
		return STR("DCEP");
	if (str_eq_nocase(s, STR("DC-")))
		return STR("DCEN");
	return s;
}

static bool polarity_fits(str asked, const char *words)
{
	str word;

	while (str_word(&asked, &word))
		if (!has_word(str_of(words), polarity_word(word)))
			return false;
	return true;
}

const struct current_row *current_find(str process, str electrode, double dia_mm,
    str polarity)
{
	process = str_trim(process);
	electrode = str_trim(electrode);
	for (size_t i = 0; i < nrows; i++) {
		const struct current_row *r = &rows[i];

		if (str_eq_nocase(str_of(r->process), process) &&
		    fabs(r->dia_in - dia_mm / 25.4) <= 0.001 &&
		    electrode_fits(electrode, r->electrode) &&
		    polarity_fits(polarity, r->polarity))
			return r;
	}
	return NULL;
}

const struct current_row *current_spray_least(str electrode, double dia_mm)
{
	return current_find(STR("GMAW spray transition"), electrode, dia_mm, (str){ 0 });
}
