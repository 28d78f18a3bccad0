#include "reckon/qualify.h"

static const struct qualify_position positions[] = {
#include "reckon/qualify_position.inc"
};

static const struct qualify_range ranges[] = {
#include "reckon/qualify_range.inc"
};

static const struct qualify_diameter diameters[] = {
#include "reckon/qualify_diameter.inc"
};

const char *qualify_code(str words)
{
	static const struct { const char *said, *code; } names[] = {
		{ "AWS D1.1", "AWS D1.1" }, { "D1.1", "AWS D1.1" },
		{ "ASME IX", "ASME IX" }, { "IX", "ASME IX" }, { "ASME", "ASME IX" },
	};

	words = str_trim(words);
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (str_eq_nocase(words, str_of(names[i].said)))
			return names[i].code;
	return NULL;
}

const struct qualify_position *qualify_position_find(str code, str test,
    enum qualify_form form, enum qualify_weld weld)
{
	for (size_t i = 0; i < sizeof positions / sizeof *positions; i++) {
		const struct qualify_position *r = &positions[i];

		if (r->form == form && r->weld == weld && str_eq(str_of(r->code), code) &&
		    str_eq_nocase(str_of(r->test), test))
			return r;
	}
	return NULL;
}

/* Whether a list of positions has the test, or any part of "2G+5G". */
static bool lists(const char *list, str test)
{
	str part, rest = test, word, words;

	if (!list[0])
		return true;
	while (str_next(&rest, '+', &part)) {
		words = str_of(list);
		while (str_word(&words, &word))
			if (str_eq_nocase(word, part))
				return true;
	}
	return false;
}

static bool range_holds(const struct qualify_range *r, double od_in, double t_in)
{
	return band_holds(t_in, r->t_lo_in, r->t_lo_open, r->t_hi_in, r->t_hi_open) &&
	    band_holds(od_in, r->od_lo_in, r->od_lo_open, r->od_hi_in, false);
}

const struct qualify_range *qualify_range_find(str code, str test,
    enum qualify_form form, enum qualify_weld weld, double od_mm, double thickness_mm)
{
	for (size_t i = 0; i < sizeof ranges / sizeof *ranges; i++) {
		const struct qualify_range *r = &ranges[i];

		if (r->weld != weld || (r->form != form && r->form != COUPON_ANY))
			continue;
		if (str_eq(str_of(r->code), code) && lists(r->positions, test) &&
		    range_holds(r, od_mm / 25.4, thickness_mm / 25.4))
			return r;
	}
	return NULL;
}

const struct qualify_diameter *qualify_diameter_find(str code, double od_mm)
{
	for (size_t i = 0; i < sizeof diameters / sizeof *diameters; i++) {
		const struct qualify_diameter *r = &diameters[i];

		if (str_eq(str_of(r->code), code) && band_holds(od_mm / 25.4, r->od_lo_in,
		    r->od_lo_open, r->od_hi_in, r->od_hi_open))
			return r;
	}
	return NULL;
}

double qualify_most_mm(const struct qualify_range *r, double thickness_mm,
    unsigned layers)
{
	bool asme = str_eq(str_of(r->code), STR("ASME IX"));

	if (asme && layers >= 3 && thickness_mm >= 12.7 - 1e-6)
		return 0;
	return r->most_times > 0 ? r->most_times * thickness_mm : r->most_in * 25.4;
}
