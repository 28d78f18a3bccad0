#include "reckon/jig.h"

#include "reckon/qualify.h"
#include "units/trade.h"

#include <math.h>

struct row {
	const char *code, *group;
	double yield_lo_ksi;
	bool lo_open;
	double yield_hi_ksi;
	bool hi_open;
	double most_t_in;
	double a_in, a_times;    /* plunger: fixed, or times the thickness */
	double c_in, c_times, c_plus_in;
	const char *words, *source, *verified;
};

static const struct row rows[] = {
#include "reckon/bend_jig.inc"
};

const char *jig_code(str words)
{
	words = str_trim(words);
	if (str_eq_nocase(words, STR("D1.2")) || str_eq_nocase(words, STR("AWS D1.2")))
		return "AWS D1.2";
	return qualify_code(words);
}

/* A word of four figures, as 6061 of "6061-T6 plate"; empty when there is none. */
static str alloy_of(str words)
{
	for (size_t i = 0, run = 0; i <= words.n; i++) {
		bool digit = i < words.n && words.p[i] >= '0' && words.p[i] <= '9';

		if (!digit && run == 4)
			return str_sub(words, i - 4, i);
		run = digit ? run + 1 : 0;
	}
	return (str){ 0 };
}

str jig_group(str material, str filler)
{
	static const char *const high_magnesium[] = { "5083", "5086", "5456" };
	str alloy = alloy_of(material);

	if (sheet_metal_of(material) != METAL_ALUMINUM)
		return STR("others");
	if (str_starts(alloy, STR("6")) || str_starts_nocase(filler, STR("ER4")))
		return STR("P23");
	for (size_t i = 0; i < sizeof high_magnesium / sizeof *high_magnesium; i++)
		if (str_eq(alloy, str_of(high_magnesium[i])))
			return STR("P11");
	return STR("others");
}

/* D1.1 prints 345 MPa beside 50 ksi and 620 beside 90: a steel whose yield is told so
 * belongs to the row of the round figure. */
static double on_edge(double yield_ksi)
{
	static const struct { double ksi, mpa; } printed[] = { { 50, 345 }, { 90, 620 } };
	const double mpa_per_ksi = 6.894757293168362;

	for (size_t i = 0; i < sizeof printed / sizeof *printed; i++)
		if (fabs(yield_ksi * mpa_per_ksi - printed[i].mpa) < 0.01)
			return printed[i].ksi;
	return yield_ksi;
}

static const struct row *find(str code, str group, double yield_ksi)
{
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct row *r = &rows[i];

		if (str_eq_nocase(str_of(r->code), code) &&
		    (!r->group[0] || str_eq_nocase(str_of(r->group), group)) &&
		    band_holds(yield_ksi, r->yield_lo_ksi, r->lo_open, r->yield_hi_ksi,
		        r->hi_open))
			return r;
	}
	return NULL;
}

bool jig_find(str code, str group, double yield_ksi, double thickness_mm,
    struct jig *out)
{
	const struct row *r = find(code, group, on_edge(yield_ksi));

	if (!r)
		return false;
	*out = (struct jig){
		.plunger_mm = r->a_in > 0 ? r->a_in * 25.4 : r->a_times * thickness_mm,
		.die_mm = r->c_in > 0 ? r->c_in * 25.4
		                      : r->c_times * thickness_mm + r->c_plus_in * 25.4,
		.most_thickness_mm = r->most_t_in * 25.4,
		.words = r->words,
		.source = r->source,
		.seen = seen_of(r->verified),
	};
	return true;
}

bool jig_of_metal(const char *code, str material, double yield_ksi, str filler,
    double *thickness_mm, struct jig *out)
{
	enum sheet_metal metal = sheet_metal_of(material);
	str group = jig_group(material, filler), c = str_of(code ? code : "");

	if (!code || !(*thickness_mm > 0) ||
	    (str_eq(c, STR("AWS D1.1")) && metal != METAL_STEEL) ||
	    (str_eq(c, STR("AWS D1.2")) && metal != METAL_ALUMINUM) ||
	    !jig_find(c, group, yield_ksi, *thickness_mm, out))
		return false;
	*thickness_mm = fmin(*thickness_mm, out->most_thickness_mm);
	return jig_find(c, group, yield_ksi, *thickness_mm, out);
}

enum jig_verdict jig_judge(const struct jig *j, double plunger_mm)
{
	/* A thousandth of an inch is nothing on a plunger. */
	if (plunger_mm > j->plunger_mm + 0.0254)
		return JIG_MILDER;
	return plunger_mm < j->plunger_mm - 0.0254 ? JIG_HARDER : JIG_AS_ASKED;
}
