#include "reckon/jig.h"

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
	const struct row *r = find(code, group, yield_ksi);

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

enum jig_verdict jig_judge(const struct jig *j, double plunger_mm)
{
	/* A thousandth of an inch is nothing on a plunger. */
	if (plunger_mm > j->plunger_mm + 0.0254)
		return JIG_MILDER;
	return plunger_mm < j->plunger_mm - 0.0254 ? JIG_HARDER : JIG_AS_ASKED;
}
