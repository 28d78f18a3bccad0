#include "reckon/preheat.h"

static const struct preheat rows[] = {
#include "reckon/preheat.inc"
};

static const struct { const char *steel, *ordinary, *low, *verified; } steels[] = {
#include "reckon/preheat_steel.inc"
};

static const struct interpass passes[] = {
#include "reckon/interpass.inc"
};

const struct preheat *preheat_find(str category, double thickest_mm)
{
	double t_in = thickest_mm / 25.4;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct preheat *r = &rows[i];
		/* The first row of a category holds from 1/8 in, the others above. */
		bool lo_open = r->lo_in > 0.125;

		if (str_eq_nocase(str_of(r->category), str_trim(category)) &&
		    band_holds(t_in, r->lo_in, lo_open, r->hi_in, false))
			return r;
	}
	return NULL;
}

const char *preheat_category(str steel, bool low_hydrogen, const char **verified)
{
	steel = str_trim(steel);
	for (size_t i = 0; i < sizeof steels / sizeof *steels; i++) {
		if (!str_eq_nocase(str_of(steels[i].steel), steel))
			continue;
		*verified = steels[i].verified;
		return low_hydrogen ? steels[i].low : steels[i].ordinary;
	}
	return NULL;
}

bool preheat_wanted(str material, bool low_hydrogen, double thickest_mm,
    struct preheat_wanted *out)
{
	const char *verified = "", *category = NULL;
	str name = str_trim(material);

	while (name.n && !category) {
		category = preheat_category(name, low_hydrogen, &verified);
		if (category)
			break;
		while (name.n && name.p[name.n - 1] != ' ')
			name.n--;
		name = str_trim(name);
	}
	if (!category || !*category)
		return false;
	out->row = preheat_find(str_of(category), thickest_mm);
	if (!out->row)
		return false;
	out->steel = name;
	out->seen = seen_of(verified) == SEEN_MEMORY ? SEEN_MEMORY
	    : seen_of(out->row->verified);
	return true;
}

double carbon_equivalent(double c, double mn, double cr, double mo, double v, double ni,
    double cu)
{
	return c + mn / 6 + (cr + mo + v) / 5 + (ni + cu) / 15;
}

const struct interpass *interpass_find(enum metal_family family)
{
	for (size_t i = 0; i < sizeof passes / sizeof *passes; i++)
		if (passes[i].family == family)
			return &passes[i];
	return NULL;
}
