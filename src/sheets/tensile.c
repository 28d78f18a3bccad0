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
	const str us[] = { WORD("Specimen"), WORD("Width, in"), WORD("Thick, in"),
		WORD("Area, sq in"), WORD("Most load, lbf"), WORD("Stress, psi"),
		WORD("Broke in weld or plate"), WORD("Pass") };
	const str metric[] = { WORD("Specimen"), WORD("Width, mm"), WORD("Thick, mm"),
		WORD("Area, mm²"), WORD("Most load, N"), WORD("Stress, MPa"),
		WORD("Broke in weld or plate"), WORD("Pass") };
	struct grid *g = sheet_grid(sh, columns, 8, GLOVE_PT,
	    sh_word(sh, "Tensile: area = width x thickness, stress = load / area"));

	sheet_heads(sh, g, sh->e->choice.metric ? metric : us, 8);
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

/* width_mm 0: not told; then for an inch of it. */
static str least_load(struct sheet *sh, double psi, double width_mm, double t_mm)
{
	const struct format *f = edition_format(sh->e);
	double width = width_mm > 0 ? width_mm : 25.4;
	struct buf stress = { .arena = sh->arena }, wide = { .arena = sh->arena };
	struct buf thick = { .arena = sh->arena }, load = { .arena = sh->arena };

	format_strength(&stress, f, psi);
	format_computed_as(&wide, f, width, 25.4 / 32);
	format_computed_as(&thick, f, t_mm, 25.4 / 32);
	add_load(&load, sh->e, tensile_load_lbf(psi, width, t_mm));
	return sh_format(sh, "Least load = stress x width x thickness: %.*s on %.*s of width, "
	    "%.*s thick, is %.*s%.*s.", STR_ARG(buf_str(&stress)), STR_ARG(buf_str(&wide)),
	    STR_ARG(buf_str(&thick)), STR_ARG(buf_str(&load)), STR_ARG(width_mm > 0 ? (str){ 0 }
	    : sh_word(sh, "; in proportion for any other width")));
}

void tensile_loads(struct sheet *sh, const struct assignment *x)
{
	double t_mm = thickness_mm(x);

	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct criterion *c = &x->criteria[i];
		enum standard_test test;
		double psi, width_mm;

		if (!criterion_test(c->name, &test) || test != TEST_TENSILE)
			continue;
		psi = least_stress(x, c);
		width_mm = test_strips_of(c, false, 0).width_mm;
		if (!(psi > 0) || !(t_mm > 0))
			continue;
		sheet_text(sh, least_load(sh, psi, width_mm, t_mm));
	}
}
