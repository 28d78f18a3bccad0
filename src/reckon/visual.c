#include "reckon/visual.h"

#include <math.h>

enum row_weld { ROW_ANY, ROW_FILLET, ROW_GROOVE };
enum row_by { BY_NONE, BY_T, BY_LEG, BY_FACE };

/* Clause of the figure in the editions from 2000, 2010, 2015 and 2020. */
struct clauses { const char *from_2000, *from_2010, *from_2015, *from_2020; };

struct visual_row {
	const char *code;
	int from_year, to_year;
	const char *loading;     /* letters: s static, c cyclic, t welder test */
	enum row_weld weld;
	bool open_root;
	enum row_by by;
	double lo_in;
	bool lo_open;
	double hi_in;
	bool hi_open;
	const char *feature;
	enum accept_form form;
	double limit;
	const char *unit, *metric, *words, *tool;
	const char *clause_2000, *clause_2010, *clause_2015, *clause_2020;
	const char *verified;
};

static const struct visual_row visual_rows[] = {
#include "reckon/visual.inc"
};

struct test_row {
	const char *code;
	int from_year, to_year;
	enum accept_test test;
	const char *feature;
	enum accept_form form;
	double limit;
	const char *unit, *metric, *words, *tool;
	const char *clause_2000, *clause_2010, *clause_2015, *clause_2020;
	const char *verified;
};

static const struct test_row test_rows[] = {
#include "reckon/accept.inc"
};

/* "D1.1" and "AWS D1.1" are one; "ASME IX" stays whole. */
static bool is_code(str asked, const char *row)
{
	str code = str_of(row);

	asked = str_trim(asked);
	if (str_eq_nocase(asked, code))
		return true;
	return str_starts(code, STR("AWS ")) &&
	    str_eq_nocase(asked, str_sub(code, 4, code.n));
}

static bool in_years(int edition, int from, int to)
{
	return edition == 0 || (edition >= from && edition <= to);
}

static const char *clause_of(int edition, struct clauses c)
{
	if (edition >= 2020)
		return c.from_2020;
	if (edition >= 2015)
		return c.from_2015;
	return edition >= 2010 ? c.from_2010 : c.from_2000;
}

static bool is_loading(const char *letters, enum accept_loading loading)
{
	static const char of[] = {
		[LOADING_STATIC] = 's',
		[LOADING_CYCLIC] = 'c',
		[LOADING_WELDER_TEST] = 't',
	};

	return str_find_char(str_of(letters), of[loading], 0) < str_of(letters).n;
}

static bool size_holds(const struct visual_row *r, const struct visual_query *q)
{
	/* An equal-leg fillet with a flat face is 1.414 legs wide. */
	const double size_mm[] = {
		[BY_NONE] = 0, [BY_T] = q->thickness_mm, [BY_LEG] = q->leg_mm,
		[BY_FACE] = q->leg_mm * sqrt(2),
	};
	double mm = size_mm[r->by];

	if (r->by == BY_NONE)
		return true;
	return mm > 0 &&
	    band_holds(mm / 25.4, r->lo_in, r->lo_open, r->hi_in, r->hi_open);
}

static bool row_holds(const struct visual_row *r, const struct visual_query *q)
{
	enum row_weld weld = q->weld == WELD_FILLET ? ROW_FILLET : ROW_GROOVE;

	return is_code(q->code, r->code) &&
	    in_years(q->edition, r->from_year, r->to_year) &&
	    is_loading(r->loading, q->loading) &&
	    (r->weld == ROW_ANY || r->weld == weld) &&
	    (!r->open_root || q->open_root) && size_holds(r, q);
}

/* The newest year of a code, for an asker that names none. */
static int newest(str code)
{
	int year = 0;

	for (size_t i = 0; i < sizeof visual_rows / sizeof *visual_rows; i++)
		if (is_code(code, visual_rows[i].code) && visual_rows[i].to_year > year)
			year = visual_rows[i].to_year;
	return year;
}

static struct accept visual_accept(const struct visual_row *r, int edition)
{
	struct clauses c = { r->clause_2000, r->clause_2010, r->clause_2015,
		r->clause_2020 };

	return (struct accept){ r->feature, r->form, r->limit, r->unit, r->metric,
		r->words, r->tool, r->code, edition, clause_of(edition, c), r->verified,
		seen_of(r->verified) };
}

size_t visual_limits(const struct visual_query *q, struct accept *out, size_t cap)
{
	struct visual_query dated = *q;
	size_t n = 0;

	if (!dated.edition)
		dated.edition = newest(q->code);
	for (size_t i = 0; i < sizeof visual_rows / sizeof *visual_rows; i++) {
		if (!row_holds(&visual_rows[i], &dated))
			continue;
		if (n < cap)
			out[n] = visual_accept(&visual_rows[i], dated.edition);
		n++;
	}
	return n;
}

static struct accept test_accept(const struct test_row *r, int edition)
{
	struct clauses c = { r->clause_2000, r->clause_2010, r->clause_2015,
		r->clause_2020 };

	return (struct accept){ r->feature, r->form, r->limit, r->unit, r->metric,
		r->words, r->tool, r->code, edition, clause_of(edition, c), r->verified,
		seen_of(r->verified) };
}

size_t test_limits(str code, int edition, enum accept_test test, struct accept *out,
    size_t cap)
{
	size_t n = 0;
	int year = edition ? edition : newest(code);

	for (size_t i = 0; i < sizeof test_rows / sizeof *test_rows; i++) {
		const struct test_row *r = &test_rows[i];

		if (r->test != test || !is_code(code, r->code) ||
		    !in_years(year, r->from_year, r->to_year))
			continue;
		if (n < cap)
			out[n] = test_accept(r, year);
		n++;
	}
	return n;
}
