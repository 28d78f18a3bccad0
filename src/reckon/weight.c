#include "reckon/weight.h"

static const struct efficiency rows[] = {
#include "reckon/efficiency.inc"
};

static const struct weld_metal weld_metals[] = {
	{ FAMILY_STEEL, "steel", DENSITY_STEEL_WELD_LB_IN3, SEEN_PAGE,
	    "geometry; filler metal data book, consumption chapter" },
	{ FAMILY_STAINLESS, "stainless", 0.290, SEEN_MEMORY,
	    "geometry; density from memory" },
	{ FAMILY_ALUMINUM, "aluminum", 0.097, SEEN_MEMORY,
	    "geometry; density from memory" },
};

const struct weld_metal *weld_metal_of(enum metal_family family)
{
	for (size_t i = 0; i < sizeof weld_metals / sizeof *weld_metals; i++)
		if (weld_metals[i].family == family)
			return &weld_metals[i];
	return NULL;
}

double weight_lb(double volume_mm3, double density_lb_in3)
{
	return volume_mm3 / (25.4 * 25.4 * 25.4) * density_lb_in3;
}

double cap_mm2(double width_mm, double height_mm)
{
	return 2 * width_mm * height_mm / 3;
}

double fillet_mm2(double leg1_mm, double leg2_mm)
{
	return leg1_mm * leg2_mm / 2;
}

/* The start of the condition column that picks the row for an electrode length. */
static str length_condition(double electrode_mm)
{
	if (electrode_mm > 0 && electrode_mm < 13 * 25.4)
		return STR("12 in");
	return electrode_mm > 16 * 25.4 ? STR("18 in") : STR("14 in");
}

/* GMAW-S and "GMAW spray" are GMAW here; FCAW-G stays whole. */
static str row_process(str process)
{
	process = str_trim(process);
	if (str_eq_nocase(process, STR("GMAW metal-cored")))
		return process;
	return str_starts_nocase(process, STR("GMAW")) ? STR("GMAW") : process;
}

const struct efficiency *efficiency_find(str process, str gas, double electrode_mm)
{
	const struct efficiency *least = NULL;
	str condition = gas;

	process = row_process(process);
	if (str_eq_nocase(process, STR("SMAW")))
		condition = length_condition(electrode_mm);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct efficiency *r = &rows[i];

		if (!str_eq_nocase(str_of(r->process), process))
			continue;
		if (r->condition[0] &&
		    !str_starts_nocase(str_of(r->condition), condition))
			continue;
		if (!least || r->percent < least->percent)
			least = r;
	}
	return least;
}

double filler_bought_lb(double deposited_lb, double efficiency_percent)
{
	return deposited_lb * 100 / efficiency_percent;
}
