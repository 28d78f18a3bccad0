/* The table of settings: what to start with, what handbooks give, and a blank for what
 * was used. Handbook ranges are guidance; the maker's label wins. */
#include "sheets/limits.h"
#include "sheets/sheet.h"

#include "reckon/current.h"
#include "units/format.h"

static void setting_row(struct grid *g, str what, str set, str handbook, bool blank)
{
	const struct grid_cell row[] = { { .text = what, .head = true }, { .text = set },
		{ .text = handbook },
		{ .text = blank ? (str){ 0 } : STR("-"), .align = ALIGN_CENTER, .own_align = true } };

	grid_row(g, row, 4);
	if (!blank)
		grid_row_min(g, 0);
}

static str filler_text(struct arena *a, const struct filler *f)
{
	struct buf b = { .arena = a };

	buf_add(&b, f->class);
	if (given(&f->dia)) {
		buf_adds(&b, ", ");
		format_quantity(&b, &f->dia);
	}
	if (f->where.n)
		buf_addf(&b, " (%.*s)", STR_ARG(f->where));
	return buf_str(&b);
}

static str current_text(struct arena *a, const struct current *c)
{
	struct buf b = { .arena = a };

	buf_add(&b, c->polarity);
	if (given(&c->amps)) {
		buf_adds(&b, b.n ? ", " : "");
		format_quantity(&b, &c->amps);
	}
	return buf_str(&b);
}

/* Facts printed in the table of settings, those with a blank first. */
static const struct { str key; bool blank; } setting_facts[] = {
	{ STR("Volts"), true }, { STR("Wire feed"), true }, { STR("Gas"), true },
	{ STR("Purge"), true }, { STR("Tungsten"), true }, { STR("Preheat"), true },
	{ STR("Interpass"), true }, { STR("Oven"), true }, { STR("Transfer"), false },
	{ STR("Backing"), false }, { STR("Coating"), false }, { STR("Stock"), false },
	{ STR("Machines"), false }, { STR("Place"), false }, { STR("Time limit"), false },
	{ STR("Procedure"), false }, { STR("Team"), false }, { STR("Tested by"), false },
	{ STR("Range"), false }, { STR("Witness"), false },
};

static bool has_settings(const struct assignment *x)
{
	bool any = x->nprocesses || x->nfillers || x->ncurrents || x->npasses;

	for (size_t i = 0; i < sizeof setting_facts / sizeof *setting_facts; i++)
		any |= fact_text(x, setting_facts[i].key).n > 0;
	return any;
}

static str process_list(struct arena *a, const struct assignment *x)
{
	struct buf b = { .arena = a };

	for (uint32_t i = 0; i < x->nprocesses; i++) {
		buf_adds(&b, i ? ", " : "");
		buf_add(&b, process_word(x->processes[i]));
	}
	return buf_str(&b);
}

/* The process as the table of currents words it. */
static str table_process(const struct assignment *x, uint32_t i)
{
	enum process p = x->processes[i < x->nprocesses ? i : x->nprocesses - 1];
	str transfer = fact_text(x, STR("Transfer"));

	if (p == PROCESS_GMAW && str_find(transfer, STR("spray"), 0) < transfer.n)
		return STR("GMAW spray");
	return process_word(p);
}

/* "EWLa-2, 3/32 in" of the fact Tungsten. */
static bool read_tungsten(const struct assignment *x, str *class, double *dia_mm)
{
	str rest = fact_text(x, STR("Tungsten")), size;
	struct quantity_fault fault;
	struct quantity q;

	if (!rest.n || !str_next(&rest, ',', class) || !str_next(&rest, ',', &size) ||
	    quantity_parse(str_trim(size), QUANTITY_LENGTH, METAL_NONE, &q, &fault))
		return false;
	*dia_mm = q.lo;
	return true;
}

/* The row of the handbook for the i-th current on the sheet, or null. */
static const struct current_row *handbook_row(const struct assignment *x, uint32_t i)
{
	str process, class = { 0 };
	double dia_mm = 0;

	if (!x->nprocesses)
		return NULL;
	process = table_process(x, i);
	if (str_eq(process, STR("GTAW"))) {
		if (!read_tungsten(x, &class, &dia_mm))
			return NULL;
	} else if (i < x->nfillers && given(&x->fillers[i].dia)) {
		class = x->fillers[i].class;
		dia_mm = x->fillers[i].dia.lo;
	}
	return class.n ? current_find(process, class, dia_mm, x->currents[i].polarity) : NULL;
}

static void add_range(struct buf *b, double lo, double hi, const char *unit)
{
	buf_add_real(b, lo, 1, false);
	if (hi > lo) {
		buf_addc(b, '-');
		buf_add_real(b, hi, 1, false);
	}
	buf_addf(b, " %s", unit);
}

/* "110-160 A, 24-28 V" with a dagger when the row was not read in its source. */
static str handbook_text(struct arena *a, const struct current_row *r)
{
	struct buf b = { .arena = a };

	if (!r)
		return (str){ 0 };
	add_range(&b, r->amps_lo, r->amps_hi, "A");
	if (r->volts_lo > 0) {
		buf_adds(&b, ", ");
		add_range(&b, r->volts_lo, r->volts_hi, "V");
	}
	if (seen_of(r->verified) == SEEN_MEMORY)
		buf_adds(&b, DAGGER);
	return buf_str(&b);
}

/* Each source named once, in the order of the rows. */
static void add_sources(struct sheet *sh, const struct assignment *x)
{
	struct buf b = { .arena = sh->arena };
	bool dagger = false;

	for (uint32_t i = 0; i < x->ncurrents; i++) {
		const struct current_row *r = handbook_row(x, i);

		if (!r || str_find(buf_str(&b), str_of(r->source), 0) < b.n)
			continue;
		dagger |= seen_of(r->verified) == SEEN_MEMORY;
		buf_addf(&b, "%s%s", b.n ? "; " : "", r->source);
	}
	if (b.n)
		sheet_text(sh, str_format(sh->arena, "Handbook: %.*s.", STR_ARG(buf_str(&b))));
	if (dagger)
		sheet_text(sh, dagger_words());
}

/* "Current", with its filler or process when there are several. */
static str current_name(struct arena *a, const struct assignment *x, uint32_t i)
{
	if (x->ncurrents < 2)
		return STR("Current");
	if (x->nfillers > 1 && i < x->nfillers)
		return str_format(a, "Current, %.*s", STR_ARG(x->fillers[i].class));
	if (x->ncurrents == x->nprocesses)
		return str_format(a, "Current, %.*s", STR_ARG(process_word(x->processes[i])));
	return STR("Current");
}

static void add_electric(struct sheet *sh, struct grid *g, const struct assignment *x)
{
	if (x->nprocesses)
		setting_row(g, STR("Process"), process_list(sh->arena, x), (str){ 0 }, false);
	for (uint32_t i = 0; i < x->nfillers; i++)
		setting_row(g, STR("Filler"), filler_text(sh->arena, &x->fillers[i]), (str){ 0 },
		    false);
	for (uint32_t i = 0; i < x->ncurrents; i++)
		setting_row(g, current_name(sh->arena, x, i),
		    current_text(sh->arena, &x->currents[i]),
		    handbook_text(sh->arena, handbook_row(x, i)), true);
	for (size_t i = 0; i < x->npasses; i++)
		setting_row(g, x->passes[i].name, x->passes[i].text, (str){ 0 }, true);
}

void sheet_settings(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = {
		{ COLUMN_NATURAL, 80, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 2, ALIGN_LEFT }, { COLUMN_FIXED, MM_PT(30), ALIGN_LEFT },
	};
	const str head[] = { STR("Setting"), STR("Start with"), STR("Handbook"), STR("Used") };
	struct grid *g;

	if (!has_settings(x))
		return;
	g = sheet_grid(sh, columns, 4, GLOVE_PT, STR("Settings"));
	grid_row_plain(g, head, 4);
	add_electric(sh, g, x);
	for (size_t i = 0; i < sizeof setting_facts / sizeof *setting_facts; i++) {
		str text = fact_text(x, setting_facts[i].key);

		if (text.n)
			setting_row(g, setting_facts[i].key, text, (str){ 0 }, setting_facts[i].blank);
	}
	sheet_grid_end(sh, g);
	add_sources(sh, x);
	if (x->ncurrents)
		sheet_text(sh, STR("Start here; the maker's label wins. Write down what you used."));
}

/* ---- on the grading sheet ---- */

static str used_name(struct arena *a, const struct assignment *x, uint32_t i)
{
	str process = x->nprocesses ? process_word(x->processes[x->ncurrents == x->nprocesses ? i : 0])
	    : STR("Arc");

	if (i >= x->nfillers)
		return process;
	return str_format(a, "%.*s, %.*s", STR_ARG(process), STR_ARG(filler_text(a, &x->fillers[i])));
}

void sheet_used(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 2, ALIGN_LEFT },
		{ COLUMN_SHARE, 2, ALIGN_LEFT } };
	const str head[] = { STR("Process, filler"), STR("Start with"), STR("Amperes used"),
		STR("Volts used") };
	struct grid *g;

	if (!x->ncurrents)
		return;
	g = sheet_grid(sh, columns, 4, GLOVE_PT, (str){ 0 });
	grid_row_plain(g, head, 4);
	for (uint32_t i = 0; i < x->ncurrents; i++) {
		str row[2] = { used_name(sh->arena, x, i), current_text(sh->arena, &x->currents[i]) };

		grid_row_plain(g, row, 2);
	}
	sheet_grid_end(sh, g);
}

/* ---- on a card ---- */

/* What is set at the machine or watched while welding; the rest is on the sheet. */
static const str card_facts[] = {
	STR("Volts"), STR("Wire feed"), STR("Transfer"), STR("Gas"), STR("Purge"),
	STR("Tungsten"), STR("Preheat"), STR("Interpass"), STR("Oven"), STR("Backing"),
	STR("Coating"), STR("Procedure"), STR("Time limit"),
};
/* How many of them the arc itself needs. */
enum { CARD_ARC_FACTS = 6 };

static void card_row(struct grid *g, str what, str set)
{
	const struct grid_cell row[] = { { .text = what, .head = true }, { .text = set } };

	grid_row(g, row, 2);
}

/* Passes name their own filler and current. */
static void card_electric(struct sheet *sh, struct grid *g, const struct assignment *x)
{
	if (x->nprocesses)
		card_row(g, STR("Process"), process_list(sh->arena, x));
	for (uint32_t i = 0; i < x->nfillers && !x->npasses; i++)
		card_row(g, STR("Filler"), filler_text(sh->arena, &x->fillers[i]));
	for (uint32_t i = 0; i < x->ncurrents && !x->npasses; i++)
		card_row(g, current_name(sh->arena, x, i), current_text(sh->arena, &x->currents[i]));
	for (size_t i = 0; i < x->npasses; i++)
		card_row(g, x->passes[i].name, x->passes[i].text);
}

struct block *card_settings(struct sheet *sh, const struct assignment *x, bool facts,
    double width_pt)
{
	const struct grid_column columns[] = { { COLUMN_NATURAL, 60, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT } };
	const struct grid_spec spec = { .columns = columns, .ncolumns = 2, .width_pt = width_pt,
		.type = sh->e->body, .caption = STR("Start with"), .keep_whole = true };
	size_t n = facts ? sizeof card_facts / sizeof *card_facts : CARD_ARC_FACTS;
	bool any = x->nprocesses || x->nfillers || x->ncurrents || x->npasses;
	struct grid *g = grid_begin(&sh->s, &spec);

	card_electric(sh, g, x);
	for (size_t i = 0; i < n; i++) {
		str text = fact_text(x, card_facts[i]);

		if (text.n)
			card_row(g, card_facts[i], text);
		any |= text.n > 0;
	}
	return any ? grid_end(g) : NULL;
}
