/* The table of settings: what to start with, what handbooks give, and a blank for what
 * was used. Handbook ranges are guidance; the maker's label wins. */
#include "sheets/both_units.h"
#include "sheets/limits.h"
#include "sheets/sheet.h"
#include "sheets/start.h"

#include "units/format.h"

struct row { str what, set, handbook; unsigned style; bool blank; };

/* One table under way: its rows, and what they owe a source to. */
struct settings {
	struct sheet *sh;
	const struct assignment *x;
	struct row *v;
	size_t n, cap;
	bool blanks;             /* some row has a place to write */
	struct buf sources;
	bool dagger;
	unsigned style;          /* of what the next row says */
};

/* A setting with a place to write what was used. what: looked up already. */
static void setting_row(struct settings *k, str what, str set, str handbook)
{
	*ARENA_PUSH(k->sh->arena, k->v, k->n, k->cap) = (struct row){ what, set, handbook,
		k->style, true };
	k->style = 0;
	k->blanks = true;
}

/* A fact with nothing to write down takes the whole width. */
static void told_row(struct settings *k, str what, str set)
{
	*ARENA_PUSH(k->sh->arena, k->v, k->n, k->cap) = (struct row){ .what = what,
		.set = set, .style = k->style };
	k->style = 0;
}

static void add_rows(struct settings *k, struct grid *g)
{
	for (size_t i = 0; i < k->n; i++) {
		const struct row *r = &k->v[i];
		const struct grid_cell cells[] = { { .text = r->what, .head = true },
			{ .text = r->set, .style = r->style,
			    .columns = r->blank || !k->blanks ? 1 : 3 },
			{ .text = r->handbook } };

		grid_row(g, cells, r->blank ? 3 : 2);
		if (!r->blank)
			grid_row_min(g, 0);
	}
}

/* Columns for the handbook and for what was used stand only where something goes in. */
static void add_table(struct settings *k)
{
	const struct grid_column columns[] = {
		{ COLUMN_NATURAL, 80, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 2, ALIGN_LEFT }, { COLUMN_FIXED, MM_PT(30), ALIGN_LEFT },
	};
	const str head[] = { WORD("Setting"), WORD("Start with"), WORD("Handbook"),
		WORD("Used") };
	size_t n = k->blanks ? 4 : 2;
	struct grid *g = sheet_grid(k->sh, columns, n, GLOVE_PT, sh_word(k->sh, "Settings"));

	sheet_heads(k->sh, g, head, n);
	add_rows(k, g);
	sheet_grid_end(k->sh, g);
}

static void owe(struct settings *k, const char *source, bool dagger)
{
	k->dagger |= dagger;
	if (str_find(buf_str(&k->sources), str_of(source), 0) < k->sources.n)
		return;
	buf_addf(&k->sources, "%s%s", k->sources.n ? "; " : "", source);
}

/* The words of a fact as they are printed; empty when it is not given. */
static str fact_words(struct sheet *sh, const struct assignment *x, str key)
{
	return both_units(sh->arena, sh->e, fact_shown(x, key));
}

static str filler_text(struct arena *a, const struct edition *e, const struct filler *f)
{
	struct buf b = { .arena = a };

	buf_add(&b, f->class);
	if (given(&f->dia)) {
		buf_adds(&b, ", ");
		buf_add(&b, quantity_text(a, e, &f->dia));
	}
	if (f->where.n)
		buf_addf(&b, " (%.*s)", STR_ARG(edition_word(e, f->where)));
	return buf_str(&b);
}

static str current_text(struct arena *a, const struct edition *e, const struct current *c)
{
	struct buf b = { .arena = a };

	buf_add(&b, c->polarity);
	if (given(&c->amps)) {
		buf_adds(&b, b.n ? ", " : "");
		buf_add(&b, quantity_text(a, e, &c->amps));
	}
	return buf_str(&b);
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

/* "Current", with its filler or process when there are several. */
static str current_name(struct sheet *sh, const struct assignment *x, uint32_t i)
{
	if (x->ncurrents > 1 && x->nfillers > 1 && i < x->nfillers)
		return sh_format(sh, "Current, %.*s", STR_ARG(x->fillers[i].class));
	if (x->ncurrents > 1 && x->ncurrents == x->nprocesses)
		return sh_format(sh, "Current, %.*s", STR_ARG(process_word(x->processes[i])));
	return sh_word(sh, "Current");
}

/* The i-th range of a handbook into a cell, its source owed. */
static str handbook_text(struct settings *k, bool found, const struct current_range *r,
    bool volts)
{
	str text;

	if (!found)
		return (str){ 0 };
	text = volts ? start_volts_text(k->sh->arena, k->sh->e, r)
	    : start_amps_text(k->sh->arena, k->sh->e, r);
	if (text.n)
		owe(k, r->source, r->seen == SEEN_MEMORY);
	return text;
}

/* Passes name their own filler and current. */
static void add_electric(struct settings *k)
{
	const struct assignment *x = k->x;
	struct arena *a = k->sh->arena;
	struct current_range r;
	bool found;

	if (x->nprocesses)
		told_row(k, sh_word(k->sh, "Process"), process_list(a, x));
	for (uint32_t i = 0; i < x->nfillers && !x->npasses; i++)
		told_row(k, sh_word(k->sh, "Filler"), filler_text(a, k->sh->e, &x->fillers[i]));
	for (uint32_t i = 0; i < x->ncurrents && !x->npasses; i++) {
		found = start_range(x, i, &r);
		setting_row(k, current_name(k->sh, x, i),
		    current_text(a, k->sh->e, &x->currents[i]),
		    handbook_text(k, found, &r, false));
	}
	for (size_t i = 0; i < x->npasses; i++) {
		found = start_pass_range(x, &x->passes[i], &r);
		setting_row(k, x->passes[i].name, both_units(a, k->sh->e, x->passes[i].text),
		    handbook_text(k, found, &r, false));
	}
}

/* Volts and wire feed: of wire they are owed a place to write even when unsaid. */
static void add_wire(struct settings *k)
{
	str volts = fact_shown(k->x, STR("Volts")), feed = fact_words(k->sh, k->x, STR("Wire feed"));
	struct current_range r;
	bool wire = start_is_wire(k->x) && (k->x->ncurrents || k->x->npasses), found;

	if (volts.n || wire) {
		found = start_range(k->x, 0, &r);
		setting_row(k, sh_word(k->sh, "Volts"), volts, handbook_text(k, found, &r, true));
	}
	k->style = fact_style(k->sh, k->x, STR("Wire feed"));
	if (feed.n || wire)
		setting_row(k, sh_word(k->sh, "Wire feed"), feed.n ? feed
		    : sh_word(k->sh, "as the current asks"), (str){ 0 });
}

static void add_gas(struct settings *k, str key, bool purge)
{
	str text = fact_text(k->x, key), flow;
	const char *source = "";
	bool dagger = false;

	if (!text.n)
		return;
	flow = str_eq_nocase(text, STR("none")) ? (str){ 0 }
	    : start_flow_text(k->sh->arena, k->sh->e, k->x, purge, &dagger, &source);
	if (flow.n)
		owe(k, source, dagger);
	k->style = fact_style(k->sh, k->x, key);
	setting_row(k, edition_word(k->sh->e, key), fact_words(k->sh, k->x, key), flow);
}

/* What the sheet says, else what the tables ask for. */
static void add_heat(struct settings *k)
{
	str preheat = fact_words(k->sh, k->x, STR("Preheat")), name = sh_word(k->sh, "Preheat");
	str interpass = fact_words(k->sh, k->x, STR("Interpass"));
	struct arena *a = k->sh->arena;
	const struct edition *e = k->sh->e;
	struct start_heat least;
	struct start most;

	if (preheat.n) {
		k->style = fact_style(k->sh, k->x, STR("Preheat"));
		setting_row(k, name, preheat, (str){ 0 });
	} else if (start_preheat(k->x, &least)) {
		owe(k, least.source, least.dagger);
		if (least.least_f > 32)
			setting_row(k, name, start_heat_text(a, e, &least), (str){ 0 });
		else
			told_row(k, name, start_heat_text(a, e, &least));
	}
	if (interpass.n) {
		k->style = fact_style(k->sh, k->x, STR("Interpass"));
		setting_row(k, sh_word(k->sh, "Interpass"), interpass, (str){ 0 });
	} else if (start_interpass(a, e, k->x, &most)) {
		k->dagger |= most.dagger;
		setting_row(k, most.name, str_format(a, "%.*s%s", STR_ARG(most.set),
		    most.dagger ? DAGGER : ""), (str){ 0 });
	}
}

static bool add_torch(struct settings *k)
{
	struct start v[STARTS_MOST];
	size_t n = start_torch(k->sh->arena, k->sh->e, k->x, v);

	for (size_t i = 0; i < n; i++)
		setting_row(k, v[i].name, v[i].set, (str){ 0 });
	return n > 0;
}

/* Other facts with a blank, and those without. */
static const str written_facts[] = { WORD("Travel"), WORD("Heat input"), WORD("Tungsten"),
	WORD("Oven") };
static const str told_facts[] = { WORD("Transfer"), WORD("Backing"), WORD("Coating"),
	WORD("Stock"), WORD("Machines"), WORD("Place"), WORD("Time limit"), WORD("Procedure"),
	WORD("Team"), WORD("Tested by"), WORD("Range"), WORD("Witness") };

static void add_facts(struct settings *k, const str *keys, size_t n,
    bool blank)
{
	for (size_t i = 0; i < n; i++) {
		str text = fact_words(k->sh, k->x, keys[i]);
		str name = edition_word(k->sh->e, keys[i]);

		k->style = fact_style(k->sh, k->x, keys[i]);
		if (text.n && blank)
			setting_row(k, name, text, (str){ 0 });
		else if (text.n)
			told_row(k, name, text);
	}
}

static void add_words(struct settings *k, bool torch)
{
	struct buf b = { .arena = k->sh->arena };
	str sources = buf_str(&k->sources);

	if (k->x->ncurrents || k->x->npasses)
		buf_addf(&b, "%.*s ", STR_ARG(sh_word(k->sh,
		    "Start here; the maker's label wins. Write down what you used.")));
	if (k->sources.n)
		buf_add(&b, sh_format(k->sh, "Handbook: %.*s.", STR_ARG(buf_str(&k->sources))));
	if (b.n)
		sheet_text_other(k->sh, buf_str(&b), &sources, edition_language(k->sh->e) != NULL);
	if (torch)
		sheet_text(k->sh, start_torch_words(k->sh->arena, k->sh->e));
	if (k->dagger)
		sheet_text(k->sh, str_format(k->sh->arena, "%s %.*s", DAGGER,
		    STR_ARG(sh_word(k->sh, "not seen in a copy of its source: the maker's label "
		        "or your edition decides."))));
}

void sheet_settings(struct sheet *sh, const struct assignment *x)
{
	struct settings k = { .sh = sh, .x = x, .sources = { .arena = sh->arena } };
	bool torch;

	add_electric(&k);
	add_wire(&k);
	add_gas(&k, WORD("Gas"), false);
	add_gas(&k, WORD("Purge"), true);
	add_heat(&k);
	torch = add_torch(&k);
	add_facts(&k, written_facts, sizeof written_facts / sizeof *written_facts, true);
	add_facts(&k, told_facts, sizeof told_facts / sizeof *told_facts, false);
	if (!k.n)
		return;
	add_table(&k);
	add_words(&k, torch);
}

/* ---- on the grading sheet ---- */

static str used_name(struct sheet *sh, const struct assignment *x, uint32_t i)
{
	str process = x->nprocesses ? process_word(x->processes[x->ncurrents == x->nprocesses ? i : 0])
	    : sh_word(sh, "Arc");

	if (i >= x->nfillers)
		return process;
	return str_format(sh->arena, "%.*s, %.*s", STR_ARG(process),
	    STR_ARG(filler_text(sh->arena, sh->e, &x->fillers[i])));
}

/* The torch as it was set: what the student reads off the maker's chart. */
static void add_torch_used(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 5, ALIGN_LEFT }, { COLUMN_SHARE, 4, ALIGN_LEFT } };
	const str head[] = { WORD("Cutting torch"), WORD("Start with, from memory"),
		WORD("By the maker's chart, used") };
	struct start v[STARTS_MOST];
	size_t n = start_torch(sh->arena, sh->e, x, v);
	struct grid *g;

	if (!n)
		return;
	g = sheet_grid(sh, columns, 3, GLOVE_PT, (str){ 0 });
	sheet_heads(sh, g, head, 3);
	for (size_t i = 0; i < n; i++) {
		str row[2] = { v[i].name, v[i].set };

		grid_row_plain(g, row, 2);
	}
	sheet_grid_end(sh, g);
}

/* Tests record the heat too: 60 V A / (1000 x in/min), by the formula of
 * reckon/arc.h, or with mm/min in kJ/mm; the instructor times the travel. */
void sheet_used(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 2, ALIGN_LEFT },
		{ COLUMN_SHARE, 2, ALIGN_LEFT }, { COLUMN_SHARE, 2, ALIGN_LEFT },
		{ COLUMN_SHARE, 2, ALIGN_LEFT } };
	const str head[] = { WORD("Process, filler"), WORD("Start with"), WORD("Amperes used"),
		WORD("Volts used"),
		sh->e->choice.metric ? WORD("Travel, mm/min") : WORD("Travel, in/min"),
		sh->e->choice.metric ? WORD("Heat, kJ/mm") : WORD("Heat, kJ/in") };
	bool test = x->kind == KIND_PRACTICE_TEST || x->kind == KIND_QUALIFICATION_TEST;
	struct grid *g;

	add_torch_used(sh, x);
	if (!x->ncurrents)
		return;
	g = sheet_grid(sh, columns, test ? 6 : 4, GLOVE_PT, (str){ 0 });
	sheet_heads(sh, g, head, test ? 6 : 4);
	for (uint32_t i = 0; i < x->ncurrents; i++) {
		str row[2] = { used_name(sh, x, i),
			current_text(sh->arena, sh->e, &x->currents[i]) };

		grid_row_plain(g, row, 2);
	}
	sheet_grid_end(sh, g);
	if (test)
		sheet_text(sh, sh_word(sh, "Heat input = 60 x volts x amperes / (1000 x travel), "
		    "for each pass that the record asks for."));
}

/* ---- on a card ---- */

/* What is set at the machine or watched while welding; the rest is on the sheet. */
static const str card_facts[] = {
	WORD("Volts"), WORD("Wire feed"), WORD("Transfer"), WORD("Gas"), WORD("Purge"),
	WORD("Tungsten"), WORD("Preheat"), WORD("Interpass"), WORD("Oven"), WORD("Backing"),
	WORD("Coating"), WORD("Procedure"), WORD("Time limit"),
};
/* How many of them the arc itself needs. */
enum { CARD_ARC_FACTS = 6 };

static void card_row(struct grid *g, str what, str set, unsigned style)
{
	const struct grid_cell row[] = { { .text = what, .head = true },
		{ .text = set, .style = style } };

	grid_row(g, row, 2);
}

/* Passes name their own filler and current. */
static void card_electric(struct sheet *sh, struct grid *g, const struct assignment *x)
{
	if (x->nprocesses)
		card_row(g, sh_word(sh, "Process"), process_list(sh->arena, x), 0);
	for (uint32_t i = 0; i < x->nfillers && !x->npasses; i++)
		card_row(g, sh_word(sh, "Filler"), filler_text(sh->arena, sh->e, &x->fillers[i]), 0);
	for (uint32_t i = 0; i < x->ncurrents && !x->npasses; i++)
		card_row(g, current_name(sh, x, i), current_text(sh->arena, sh->e, &x->currents[i]),
		    0);
	for (size_t i = 0; i < x->npasses; i++)
		card_row(g, x->passes[i].name, both_units(sh->arena, sh->e, x->passes[i].text), 0);
}

/* What only the tables say: the torch, and preheat above a cold shop's. */
static bool card_starts(struct sheet *sh, struct grid *g, const struct assignment *x)
{
	struct start v[STARTS_MOST];
	size_t n = start_torch(sh->arena, sh->e, x, v);
	struct start_heat least;
	bool heat = !fact_text(x, STR("Preheat")).n && start_preheat(x, &least) &&
	    least.least_f > 32;

	for (size_t i = 0; i < n; i++)
		card_row(g, v[i].name, i == 0 ? sh_word(sh, "the maker's chart decides it and "
		    "the figures below") : v[i].set, 0);
	if (heat)
		card_row(g, sh_word(sh, "Preheat"), start_heat_text(sh->arena, sh->e, &least), 0);
	return n > 0 || heat;
}

struct block *card_settings(struct sheet *sh, const struct assignment *x, bool facts,
    double width_pt)
{
	struct start torch[STARTS_MOST];
	/* Names with a thickness behind them would leave the figures no room. */
	bool long_names = start_torch(sh->arena, sh->e, x, torch) > 4;
	const struct grid_column columns[] = {
		{ long_names ? COLUMN_SHARE : COLUMN_NATURAL, long_names ? 1 : 60, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT } };
	const struct grid_spec spec = { .columns = columns, .ncolumns = 2, .width_pt = width_pt,
		.type = sh->e->body, .caption = sh_word(sh, "Start with"), .keep_whole = true };
	size_t n = facts ? sizeof card_facts / sizeof *card_facts : CARD_ARC_FACTS;
	bool any = x->nprocesses || x->nfillers || x->ncurrents || x->npasses;
	struct grid *g = grid_begin(&sh->s, &spec);

	card_electric(sh, g, x);
	for (size_t i = 0; i < n; i++) {
		str text = fact_words(sh, x, card_facts[i]);

		if (text.n)
			card_row(g, edition_word(sh->e, card_facts[i]), text,
			    fact_style(sh, x, card_facts[i]));
		any |= text.n > 0;
	}
	any |= card_starts(sh, g, x);
	return any ? grid_end(g) : NULL;
}
