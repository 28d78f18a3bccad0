#include "page/grid_set.h"

static double sum_of(const struct grid_spec *spec, const double *v, enum column_width how)
{
	double sum = 0;

	for (size_t i = 0; i < spec->ncolumns; i++)
		sum += spec->columns[i].how == how ? v[i] : 0;
	return sum;
}

static void scale(const struct grid_spec *spec, double *v, enum column_width how,
    double factor)
{
	for (size_t i = 0; i < spec->ncolumns; i++)
		if (spec->columns[i].how == how)
			v[i] *= factor;
}

/* Fixed columns as asked, or all of them narrowed when they are too wide together. */
static double solve_fixed(const struct grid_spec *spec, double *width_pt)
{
	for (size_t i = 0; i < spec->ncolumns; i++)
		if (spec->columns[i].how == COLUMN_FIXED)
			width_pt[i] = spec->columns[i].size;
	double sum = sum_of(spec, width_pt, COLUMN_FIXED);

	if (sum <= spec->width_pt)
		return sum;
	scale(spec, width_pt, COLUMN_FIXED, spec->width_pt / sum);
	return spec->width_pt;
}

/* Natural widths if they fit in room_pt; else each gives up the same part of what it can
 * spare above its least; else all least widths are narrowed alike. */
static double solve_natural(const struct grid_spec *spec, const struct column_wish *wish,
    double room_pt, double *width_pt)
{
	double natural = 0, least = 0;

	for (size_t i = 0; i < spec->ncolumns; i++) {
		bool counts = spec->columns[i].how == COLUMN_NATURAL;

		natural += counts ? wish[i].natural_pt : 0;
		least += counts ? wish[i].least_pt : 0;
	}
	double part = natural <= room_pt ? 1 : (room_pt - least) / (natural - least);

	part = part > 0 && natural > least ? part : natural <= room_pt;
	for (size_t i = 0; i < spec->ncolumns; i++)
		if (spec->columns[i].how == COLUMN_NATURAL)
			width_pt[i] = wish[i].least_pt +
			    part * (wish[i].natural_pt - wish[i].least_pt);
	double sum = sum_of(spec, width_pt, COLUMN_NATURAL);

	if (sum <= room_pt || sum <= 0)
		return sum;
	scale(spec, width_pt, COLUMN_NATURAL, room_pt / sum);
	return room_pt;
}

static double share_of(const struct grid_column *c)
{
	return c->size > 0 ? c->size : 1;
}

/* One round: columns not yet settled get their share of room_pt; those that get less than
 * their least are settled at it. False when none was. */
static bool share_round(const struct grid_spec *spec, const struct column_wish *wish,
    double room_pt, bool *settled, double *width_pt)
{
	double shares = 0;
	bool any = false;

	for (size_t i = 0; i < spec->ncolumns; i++)
		shares += settled[i] ? 0 : share_of(&spec->columns[i]);
	for (size_t i = 0; i < spec->ncolumns; i++)
		if (!settled[i])
			width_pt[i] = room_pt * share_of(&spec->columns[i]) / shares;
	for (size_t i = 0; i < spec->ncolumns; i++) {
		if (settled[i] || width_pt[i] >= wish[i].least_pt)
			continue;
		width_pt[i] = wish[i].least_pt;
		settled[i] = any = true;
	}
	return any;
}

static void solve_shares(const struct grid_spec *spec, const struct column_wish *wish,
    double room_pt, double *width_pt)
{
	bool settled[GRID_COLUMNS] = { false };
	double left_pt = room_pt;
	bool least_fits = true;
	double least = 0;

	for (size_t i = 0; i < spec->ncolumns; i++) {
		settled[i] = spec->columns[i].how != COLUMN_SHARE;
		least += settled[i] ? 0 : wish[i].least_pt;
	}
	least_fits = least <= room_pt;
	while (share_round(spec, wish, left_pt, settled, width_pt) && least_fits) {
		left_pt = room_pt;
		for (size_t i = 0; i < spec->ncolumns; i++)
			if (settled[i] && spec->columns[i].how == COLUMN_SHARE)
				left_pt -= width_pt[i];
	}
	if (!least_fits && least > 0)
		for (size_t i = 0; i < spec->ncolumns; i++)
			if (spec->columns[i].how == COLUMN_SHARE)
				width_pt[i] = wish[i].least_pt * room_pt / least;
}

void grid_solve_widths(const struct grid_spec *spec, const struct column_wish *wish,
    double *width_pt)
{
	double room_pt = spec->width_pt - solve_fixed(spec, width_pt);
	double reserved_pt = 0;

	for (size_t i = 0; i < spec->ncolumns; i++)
		if (spec->columns[i].how == COLUMN_SHARE)
			reserved_pt += wish[i].least_pt;
	if (reserved_pt > room_pt / 2)
		reserved_pt = room_pt / 2;
	room_pt -= solve_natural(spec, wish, room_pt - reserved_pt, width_pt);
	solve_shares(spec, wish, room_pt, width_pt);
}
