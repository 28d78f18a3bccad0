#include "sheets/tolerance.h"

/* How the names of limits on drawn sizes begin. */
static const str features[] = {
	{ "cut length", 10 }, { "hole place", 10 }, { "hole size", 9 },
	{ "slot place", 10 }, { "slot size", 9 },
	{ "bend angle", 10 }, { "flange", 6 }, { "finished size", 13 }, { "bevel", 5 },
	{ "included angle", 14 }, { "land", 4 }, { "root opening", 12 },
	{ "fit-up gap", 10 }, { "overlap", 7 },
};

bool is_toleranced(str name)
{
	for (size_t i = 0; i < sizeof features / sizeof *features; i++)
		if (str_starts_nocase(name, features[i]))
			return true;
	return false;
}

static bool find_limit(const struct standard *set, str feature,
    const struct limit_sizes *z, struct tolerance *out)
{
	for (size_t i = 0; i < set->n; i++) {
		const struct standard_limit *l = &set->v[i];
		double holds = 1, value;

		if (l->test != TEST_DIMENSIONS || l->form != LIMIT_WITHIN ||
		    !str_starts_nocase(l->name, feature) ||
		    (l->where.v && (!limit_expr_value(&l->where, z, &holds) || !holds)) ||
		    !limit_expr_value(&l->most, z, &value) || !(value > 0) ||
		    (l->most.kind != LIMIT_LENGTH && l->most.kind != LIMIT_ANGLE))
			continue;
		*out = (struct tolerance){ set, l, { .kind = l->most.kind == LIMIT_LENGTH
		    ? QUANTITY_LENGTH : QUANTITY_ANGLE, .no_value = true,
		    .tolerance = true, .plus = value, .minus = value } };
		return true;
	}
	return false;
}

bool tolerance_of(const struct assignment *x, str feature, const struct limit_sizes *z,
    struct tolerance *out)
{
	enum standard_test test;

	for (size_t i = 0; i < x->ncriteria; i++)
		if (x->criteria[i].standard && criterion_test(x->criteria[i].name, &test) &&
		    test == TEST_DIMENSIONS &&
		    find_limit(x->criteria[i].standard, feature, z, out))
			return true;
	return false;
}
