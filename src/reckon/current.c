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

static void widen(struct current_range *r, const struct current_row *row)
{
	r->amps_lo = fmin(r->amps_lo, row->amps_lo);
	r->amps_hi = fmax(r->amps_hi, row->amps_hi);
}

bool current_range_find(str process, str electrode, double dia_mm, str polarity,
    struct current_range *out)
{
	const struct current_row *row = current_find(process, electrode, dia_mm, polarity);
	const struct current_row *alt = NULL;

	if (!row && str_eq_nocase(process, STR("GMAW spray")))
		row = current_spray_least(electrode, dia_mm);
	if (!row)
		return false;
	*out = (struct current_range){ row->amps_lo, row->amps_hi, row->volts_lo,
		row->volts_hi, row->source, seen_of(row->verified) };
	if (str_eq_nocase(process, STR("GTAW")) &&
	    str_eq(polarity_word(polarity), STR("DCEN")))
		alt = current_find(STR("GTAW alt"), STR("EWTh-2"), dia_mm, polarity);
	if (alt)
		widen(out, alt);
	return true;
}
