#include "reckon/shade.h"

static const struct shade rows[] = {
#include "reckon/shade.inc"
};

static const size_t nrows = sizeof rows / sizeof *rows;

/* Letters on a sheet, and the regulation's name of the operation. The longest comes
 * first where one begins another. */
static const struct { const char *letters, *process; } names[] = {
	{ "SMAW", "SMAW" },
	{ "GMAW", "GMAW/FCAW" },
	{ "FCAW", "GMAW/FCAW" },
	{ "GTAW", "GTAW" },
	{ "CAC-A", "CAC-A" },
	{ "CAC", "CAC-A" },
	{ "PAW", "PAW" },
	{ "PAC", "PAC" },
	{ "CAW", "CAW" },
	{ "OFW", "OFW" },
	{ "OFC", "OFC" },
	{ "TB", "Torch brazing" },
	{ "TS", "Torch soldering" },
};

/* GMAW-S and "GMAW spray" are GMAW; TBX is nothing. */
static bool names_process(str process, str letters)
{
	char next;

	if (!str_starts_nocase(process, letters))
		return false;
	if (process.n == letters.n)
		return true;
	next = process.p[letters.n];
	return next == '-' || next == ' ' || next == '/';
}

static str regulation_name(str process)
{
	process = str_trim(process);
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (names_process(process, str_of(names[i].letters)))
			return str_of(names[i].process);
	return process;
}

static bool by_thickness(const struct shade *row)
{
	return str_eq(str_of(row->unit), STR("in"));
}

/* The last row that begins at or below x: on a shared boundary that is the darker
 * one, and past the end it is the darkest. */
static const struct shade *find(str process, double x, bool thickness)
{
	const struct shade *hit = NULL;

	process = regulation_name(process);
	for (size_t i = 0; i < nrows; i++) {
		if (!str_eq_nocase(str_of(rows[i].process), process) ||
		    by_thickness(&rows[i]) != thickness)
			continue;
		if (!hit || band_holds(x, rows[i].lo, false, 0, false))
			hit = &rows[i];
	}
	return hit;
}

const struct shade *shade_by_current(str process, double highest_amps)
{
	return find(process, highest_amps, false);
}

const struct shade *shade_by_thickness(str process, double thickness_mm)
{
	return find(process, thickness_mm / 25.4, true);
}

bool shade_is_by_thickness(str process)
{
	return find(process, 0, true) != NULL;
}
