#include "reckon/fillet.h"

#include <math.h>
#include <stddef.h>

enum fillet_rule {
	FILLET_LEAST_LEG, FILLET_CYCLIC_FLOOR, FILLET_LAP_EDGE, FILLET_UNDERSIZE
};

struct row {
	enum fillet_rule rule;
	double lo_in;
	bool lo_open;
	double hi_in;
	bool hi_open;
	double value_in;
	const char *source, *verified;
};

static const struct row rows[] = {
#include "reckon/fillet.inc"
};

/* The row of a rule that holds at x; the table has one for every x > 0. */
static const struct row *find(enum fillet_rule rule, double x_in)
{
	const struct row *hit = NULL;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct row *r = &rows[i];

		if (r->rule != rule)
			continue;
		if (!hit || band_holds(x_in, r->lo_in, r->lo_open, r->hi_in, r->hi_open))
			hit = r;
	}
	return hit;
}

static struct fillet_limit limit_of(const struct row *r, double mm)
{
	return (struct fillet_limit){ mm, r->source, seen_of(r->verified) };
}

struct fillet_limit fillet_least_leg(double thin_mm, double thick_mm,
    bool low_hydrogen, bool cyclic)
{
	double governing_mm = low_hydrogen ? thin_mm : thick_mm;
	const struct row *r = find(FILLET_LEAST_LEG, governing_mm / 25.4);
	const struct row *floor_row = find(FILLET_CYCLIC_FLOOR, 0);
	double leg_in = r->value_in;

	/* Note b: no leg need be more than the thinner part. Note c, the floor under
	 * cyclic loading, is applied after it, the careful way round. */
	if (leg_in > thin_mm / 25.4)
		leg_in = thin_mm / 25.4;
	if (cyclic && leg_in < floor_row->value_in) {
		leg_in = floor_row->value_in;
		r = floor_row;
	}
	return limit_of(r, leg_in * 25.4);
}

struct fillet_limit fillet_largest_lap_leg(double edge_mm)
{
	const struct row *r = find(FILLET_LAP_EDGE, edge_mm / 25.4);

	return limit_of(r, edge_mm - r->value_in * 25.4);
}

struct fillet_limit fillet_undersize(double leg_mm)
{
	const struct row *r = find(FILLET_UNDERSIZE, leg_mm / 25.4);

	return limit_of(r, r->value_in * 25.4);
}

static double radians(double deg)
{
	return deg * 3.14159265358979323846 / 180;
}

double fillet_throat_mm(double leg_mm)
{
	return leg_mm * sqrt(0.5);
}

double fillet_throat_unequal_mm(double leg1_mm, double leg2_mm, double psi_deg)
{
	/* At 90 degrees exactly, where a cosine by radians leaves a trace. */
	bool square = fabs(psi_deg - 90) < 1e-12;
	double psi = radians(psi_deg);
	double cosine = square ? 0 : cos(psi), sine = square ? 1 : sin(psi);
	double shorter = fmin(leg1_mm, leg2_mm), longer = fmax(leg1_mm, leg2_mm), face_mm;

	if (!(shorter > 0))
		return 0;
	if (shorter < longer * cosine)
		return shorter;
	face_mm = sqrt(shorter * shorter + longer * longer - 2 * shorter * longer * cosine);
	return shorter * longer * sine / face_mm;
}

double fillet_throat_skew_mm(double leg_mm, double psi_deg)
{
	return leg_mm * cos(radians(psi_deg) / 2);
}
