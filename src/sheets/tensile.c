#include "sheets/tensile.h"

#include "model/standard.h"
#include "model/test_line.h"
#include "model/weld_sizes.h"
#include "reckon/tensile.h"
#include "sheets/limits.h"
#include "units/format.h"

#include <math.h>

struct grid *tensile_begin(struct sheet *sh)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_SHARE, 4, ALIGN_LEFT }, { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 4, ALIGN_LEFT }, { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_SHARE, 5, ALIGN_LEFT }, { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_FIXED, 44 * sh->e->zoom, ALIGN_LEFT } };
	const str us[] = { STR("Specimen"), STR("Width, in"), STR("Thick, in"),
		STR("Area, sq in"), STR("Most load, lbf"), STR("Stress, psi"),
		STR("Broke in weld or plate"), STR("Pass") };
	const str metric[] = { STR("Specimen"), STR("Width, mm"), STR("Thick, mm"),
		STR("Area, mm\xC2\xB2"), STR("Most load, N"), STR("Stress, MPa"),
		STR("Broke in weld or plate"), STR("Pass") };
	struct grid *g = sheet_grid(sh, columns, 8, GLOVE_PT,
	    STR("Tensile: area = width x thickness, stress = load / area"));

	grid_row_plain(g, sh->e->choice.metric ? metric : us, 8);
	return g;
}

/* The stress that stands in the words of a line: "2, at 60,000 psi or more". */
static double stress_in_words(str text)
{
	str rest = text, word;

	while (str_word(&rest, &word)) {
		struct quantity_fault fault;
		struct quantity q;
		size_t used;

		if (quantity_prefix(str_sub(text, (size_t)(word.p - text.p), text.n),
		    QUANTITY_PRESSURE, METAL_NONE, &q, &used, &fault) == QUANTITY_OK)
			return q.lo;
	}
	return 0;
}

/* The least stress of a line in psi: its own words, else its set; 0 when neither tells. */
static double least_stress(const struct assignment *x, const struct criterion *c)
{
	double least = stress_in_words(c->text);
	struct limit_sizes z = limit_sizes_of(x, 0);

	for (size_t i = 0; c->standard && !(least > 0) && i < c->standard->n; i++) {
		const struct standard_limit *l = &c->standard->v[i];
		double psi;

		if (l->test == TEST_TENSILE && l->form == LIMIT_AT_LEAST &&
		    l->most.names && l->most.kind == LIMIT_STRENGTH &&
		    limit_expr_value(&l->most, &z, &psi))
			least = psi;
	}
	return least;
}

static void add_lbf(struct buf *b, double lbf)
{
	double whole = floor(lbf + 0.5), thousands = floor(whole / 1000);

	if (thousands > 0)
		buf_addf(b, "%zu,%03zu lbf", (size_t)thousands,
		    (size_t)(whole - 1000 * thousands));
	else
		buf_addf(b, "%zu lbf", (size_t)whole);
}

/* "21,750 lbf [96.7 kN]": 1 lbf is 4.4482216152605 N (NIST SP 811). */
static void add_load(struct buf *b, const struct edition *e, double lbf)
{
	bool metric = e->choice.metric;

	if (!metric) {
		add_lbf(b, lbf);
		buf_adds(b, " [");
	}
	buf_add_real(b, lbf * 4.4482216152605 / 1000, 1, false);
	buf_adds(b, metric ? " kN [" : " kN]");
	if (metric) {
		add_lbf(b, lbf);
		buf_adds(b, "]");
	}
}

static double thickness_mm(const struct assignment *x)
{
	struct limit_sizes z = x->nwelds ? weld_sizes(x, 0) : part_sizes(x);

	return z.known[SIZE_T] ? z.v[SIZE_T] : 0;
}

void tensile_loads(struct sheet *sh, const struct assignment *x)
{
	const struct format *f = edition_format(sh->e);
	double t_mm = thickness_mm(x);

	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct criterion *c = &x->criteria[i];
		struct buf b = { .arena = sh->arena };
		enum standard_test test;
		double psi, width_mm;

		if (!criterion_test(c->name, &test) || test != TEST_TENSILE)
			continue;
		psi = least_stress(x, c);
		width_mm = test_strips_of(c, false, 0).width_mm;
		if (!(psi > 0) || !(t_mm > 0))
			continue;
		buf_adds(&b, "Least load = stress x width x thickness: ");
		format_strength(&b, f, psi);
		buf_adds(&b, " on ");
		format_computed_as(&b, f, width_mm > 0 ? width_mm : 25.4, 25.4 / 32);
		buf_adds(&b, " of width, ");
		format_computed_as(&b, f, t_mm, 25.4 / 32);
		buf_adds(&b, " thick, is ");
		add_load(&b, sh->e, tensile_load_lbf(psi, width_mm > 0 ? width_mm : 25.4, t_mm));
		buf_adds(&b, width_mm > 0 ? "." : "; in proportion for any other width.");
		sheet_text(sh, buf_str(&b));
	}
}
