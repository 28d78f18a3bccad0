#include "sheets/limits.h"

#include "base/buf.h"
#include "model/weld_sizes.h"
#include "reckon/metal.h"
#include "reckon/source.h"
#include "sheets/both_units.h"
#include "sheets/metric_words.h"
#include "sheets/sheet.h"
#include "sheets/tolerance.h"
#include "units/format.h"

str dagger_words(struct arena *a, const struct edition *e)
{
	return str_format(a, "%s %.*s", DAGGER, STR_ARG(word(edition_language(e),
	    "not seen in a copy of the code: confirm against your edition.")));
}

enum limit_sign limit_sign_of(const struct standard *s, const struct standard_limit *l)
{
	return limit_is_doubtful(s, l) ? SIGN_CONFIRM : limit_is_custom(s, l) ? SIGN_CUSTOM
	    : SIGN_NONE;
}

const char *sign_text(enum limit_sign sign)
{
	static const char *const signs[] = { "", DAGGER, DOUBLE_DAGGER };

	return signs[sign];
}

void sheet_signs(struct sheet *sh, unsigned signs)
{
	if (signs & SIGN_CONFIRM)
		sheet_text(sh, dagger_words(sh->arena, sh->e));
	if (signs & SIGN_CUSTOM)
		sheet_text(sh, str_format(sh->arena, "%s %.*s", DOUBLE_DAGGER,
		    STR_ARG(sh_word(sh, "common practice, no source: your shop's own limits "
		    "come first."))));
}

bool is_destructive(str name)
{
	enum standard_test test;

	return criterion_test(name, &test) && test != TEST_VISUAL &&
	    test != TEST_DIMENSIONS;
}

/* How every set begins the name of its limit on short fillet legs. */
#define LEG_SHORT STR("leg short")

/* ---- one limit in words ---- */

/* The names of sizes in an expression or a condition. */
static str size_words(struct arena *a, const struct edition *e, str s)
{
	static const str words[] = { WORD("root width"), WORD("open root"), WORD("throat"),
		WORD("width"), WORD("leg"), WORD("length"), WORD("diameter"), WORD("cold cut"),
		WORD("flame cut"), WORD(" and "), WORD(" per ") };

	return words_within(a, e, s, words, sizeof words / sizeof *words);
}

/* "Table 8.1 item 7A". */
static str clause_words(struct arena *a, const struct edition *e, str s)
{
	static const str words[] = { WORD("Tables "), WORD("Table "), WORD(" item "),
		WORD("clause "), WORD(" part "), WORD(" profile"), WORD(" and "),
		WORD("visual"), WORD("drawing rules") };

	return words_within(a, e, s, words, sizeof words / sizeof *words);
}

static void add_per(struct buf *b, const struct edition *e, const struct standard_limit *l)
{
	if (l->per.n)
		word_addf(b, edition_language(e), " per %.*s", STR_ARG(l->per));
}

/* The other way round: the code's own metric where it has one. "3/8 in per 12 in" is
 * converted as a whole. */
static void add_metric_length(struct buf *b, const struct edition *e,
    const struct standard_limit *l, double mm)
{
	struct quantity_fault fault;
	struct quantity per;
	bool rate = l->per.n && quantity_parse(l->per, QUANTITY_LENGTH, METAL_NONE, &per,
	    &fault) == QUANTITY_OK;
	str code = size_words(b->arena, e, l->metric);

	if (code.n)
		buf_add(b, code);
	else
		format_mm(b, mm, 1);
	buf_adds(b, code.n ? "" : " mm");
	if (rate && !code.n) {
		struct buf length = { .arena = b->arena };

		format_mm(&length, per.lo, 0);
		buf_adds(&length, " mm");
		word_addf(b, edition_language(e), " per %.*s", STR_ARG(buf_str(&length)));
	}
	buf_adds(b, " [");
	format_computed_in(b, mm, 25.4 / 32);
	buf_adds(b, " in");
	add_per(b, e, l);
	buf_addc(b, ']');
}

static void add_length(struct buf *b, const struct edition *e, const struct standard_limit *l,
    double mm)
{
	bool metric = str_eq(l->unit, STR("mm"));

	if (e && e->choice.metric && !metric) {
		add_metric_length(b, e, l, mm);
		return;
	}
	if (metric) {
		format_mm(b, mm, 2);
		buf_adds(b, " mm");
	} else {
		format_computed_in(b, mm, 25.4 / 32);
		buf_adds(b, " in");
	}
	add_per(b, e, l);
	if (l->metric.n || l->per.n)
		return;
	buf_adds(b, " [");
	if (metric)
		format_computed_in(b, mm, 25.4 / 32);
	else
		format_mm(b, mm, 1);
	buf_adds(b, metric ? " in]" : " mm]");
}

/* The code's own metric figure stands in place of ours behind the US one. */
static void add_strength(struct buf *b, const struct edition *e,
    const struct standard_limit *l, double psi)
{
	struct buf both = { .arena = b->arena };
	bool own = l->metric.n && !(e && e->choice.metric);
	str s;

	format_strength(&both, edition_format(e), psi);
	s = buf_str(&both);
	buf_add(b, own ? str_trim(str_sub(s, 0, str_find_char(s, '[', 0))) : s);
}

/* "1/32 in [1 mm]": fractions where the figure is one, the code's own metric. */
static void add_amount(struct buf *b, const struct edition *e, const struct standard_limit *l,
    double value)
{
	switch (l->most.kind) {
	case LIMIT_LENGTH:
		add_length(b, e, l, value);
		break;
	case LIMIT_ANGLE:
		format_angle(b, value);
		break;
	case LIMIT_STRENGTH:
		add_strength(b, e, l, value);
		break;
	default:
		buf_add_real(b, value, 4, false);
		buf_adds(b, l->most.kind == LIMIT_PERCENT ? " %" : "");
		add_per(b, e, l);
		break;
	}
	if (l->metric.n && !(l->most.kind == LIMIT_LENGTH && e && e->choice.metric))
		buf_addf(b, " [%.*s]", STR_ARG(size_words(b->arena, e, l->metric)));
}

/* The comma of "min(a, b)" when that is all of s and there is one comma in it. */
static size_t pair_comma(str s)
{
	size_t comma = s.n, depth = 0;

	if (!str_starts_nocase(s, STR("min(")) && !str_starts_nocase(s, STR("max(")))
		return s.n;
	for (size_t i = 3; i < s.n; i++) {
		depth += s.p[i] == '(';
		depth -= s.p[i] == ')';
		if (!depth && i + 1 < s.n)
			return s.n;
		if (s.p[i] != ',' || depth != 1)
			continue;
		if (comma < s.n)
			return s.n;
		comma = i;
	}
	return comma;
}

/* An expression in words: "the smaller of 0.1 t and 1 mm". */
static void add_expression(struct buf *b, const struct edition *e, str s)
{
	const struct language *l = edition_language(e);
	size_t comma = pair_comma(s);
	str first, second;

	if (comma == s.n) {
		buf_add(b, size_words(b->arena, e, s));
		return;
	}
	first = units_text(b->arena, e, size_words(b->arena, e, str_trim(str_sub(s, 4, comma))));
	second = units_text(b->arena, e,
	    size_words(b->arena, e, str_trim(str_sub(s, comma + 1, s.n - 1))));
	if (str_starts_nocase(s, STR("min")))
		word_addf(b, l, "the smaller of %.*s and %.*s", STR_ARG(first), STR_ARG(second));
	else
		word_addf(b, l, "the larger of %.*s and %.*s", STR_ARG(first), STR_ARG(second));
}

/* Where a figure comes from: how it goes by the size, then the clause. */
static void add_origin(struct buf *b, const struct edition *e, const struct standard_limit *l,
    bool worked_out)
{
	buf_adds(b, " (");
	if (worked_out) {
		add_expression(b, e, l->most_text);
		buf_adds(b, "; ");
	}
	buf_addf(b, "%.*s)", STR_ARG(clause_words(b->arena, e, l->clause)));
}

/* The figure where one comes out, else how it is worked out. A size can lie outside what
 * an expression is for; then there is no figure. Returns whether it was worked out. */
static bool add_end(struct buf *b, const struct edition *e, const struct standard_limit *l,
    const struct limit_sizes *z)
{
	double value;

	if (!limit_expr_value(&l->most, z, &value) || value < 0) {
		add_expression(b, e, l->most_text);
		return false;
	}
	add_amount(b, e, l, value);
	return l->most.names != 0;
}

/* Words of a set, in both units like all that stands beside them; those of a set in
 * millimeters keep its round figures. */
static str limit_words(struct arena *a, const struct edition *e, str s)
{
	bool metric = str_find(s, STR(" mm"), 0) < s.n;

	return metric ? edition_word(e, s) : both_units(a, e, edition_word(e, s));
}

static str limit_rule(struct arena *a, const struct edition *e, const struct standard_limit *l,
    const struct limit_sizes *z, bool settled)
{
	const struct language *words = edition_language(e);
	struct buf b = { .arena = a }, end = { .arena = a };
	bool worked_out = false;

	if (l->most.v)
		worked_out = add_end(&end, e, l, z);
	if (l->form == LIMIT_AT_MOST)
		word_addf(&b, words, "at most %.*s", STR_ARG(buf_str(&end)));
	else if (l->form == LIMIT_AT_LEAST)
		word_addf(&b, words, "at least %.*s", STR_ARG(buf_str(&end)));
	else if (l->form == LIMIT_WITHIN)
		word_addf(&b, words, "within %.*s", STR_ARG(buf_str(&end)));
	else
		buf_add(&b, l->form == LIMIT_NONE ? word(words, "none") : limit_words(a, e, l->words));
	if (!settled)
		word_addf(&b, words, " where %.*s",
		    STR_ARG(units_text(a, e, size_words(a, e, l->where_text))));
	if (l->more.n)
		buf_addf(&b, "; %.*s", STR_ARG(limit_words(a, e, l->more)));
	add_origin(&b, e, l, worked_out);
	return buf_str(&b);
}

/* ---- the limits of a line ---- */

struct gathering {
	struct arena *arena;
	const struct edition *e;
	const struct standard *set;
	enum standard_test test;
	const struct metal *metal; /* of the weld in hand; null: not known */
	bool own_leg;            /* a line of the sheet itself judges the leg */
	str text;                /* of the acceptance line */
	struct limits out;
	uint32_t *bits;          /* by limit, the welds it holds for */
	size_t cap;
};

static bool same_limit(const struct limit *x, const struct limit *y)
{
	return str_eq(x->feature, y->feature) && str_eq(x->rule, y->rule);
}

/* Adds a limit unless it stands there already. Returns its index. */
static size_t add_limit(struct arena *a, struct limits *out, struct limit l)
{
	for (size_t i = 0; i < out->n; i++)
		if (same_limit(&out->v[i], &l))
			return i;
	*ARENA_PUSH(a, out->v, out->n, out->cap) = l;
	return out->n - 1;
}

/* Two limits for one leg would be read as a choice, and a shortfall as large as the leg
 * would pass no weld at all. */
static bool drops_short_leg(const struct gathering *g, const struct standard_limit *l,
    const struct limit_sizes *z)
{
	double most;

	if (!str_starts_nocase(l->name, LEG_SHORT))
		return false;
	return g->own_leg || (l->form == LIMIT_AT_MOST && z->known[SIZE_LEG] &&
	    limit_expr_value(&l->most, z, &most) && most >= z->v[SIZE_LEG]);
}

/* "welds D and E only": the letters that stand behind the word, as bits; all when the
 * line names none. */
static uint32_t named_welds(const struct assignment *x, str text)
{
	size_t at = str_find(text, STR("weld"), 0);
	uint32_t bits = 0;
	str rest = str_sub(text, at + 4, text.n), word;

	while (at < text.n && str_word(&rest, &word)) {
		str bare = str_ends(word, STR(",")) ? str_sub(word, 0, word.n - 1) : word;
		bool letter = bare.n == 1 && bare.p[0] >= 'A' && bare.p[0] < 'A' + (int)x->nwelds;

		if (letter)
			bits |= (uint32_t)1 << (bare.p[0] - 'A');
		else if (bits && !str_eq(bare, STR("and")))
			break;
	}
	return bits ? bits : UINT32_MAX;
}

/* Base metals keep how far their strength was verified. */
static enum limit_sign sign_of(const struct gathering *g, const struct standard_limit *l)
{
	bool strength = l->most.names >> SIZE_BASE_STRENGTH & 1;

	if (strength && g->metal && !g->set->checked.n &&
	    seen_of(g->metal->verified) == SEEN_MEMORY)
		return SIGN_CONFIRM;
	return limit_sign_of(g->set, l);
}

static const struct metal *weaker(const struct metal *a, const struct metal *b)
{
	return !a || (b && b->uts_ksi < a->uts_ksi) ? b : a;
}

/* The weaker metal of weld i, or of the assignment; null when its name is not known. */
static const struct metal *metal_at_weld(const struct assignment *x, size_t i)
{
	const struct weld *w = i < x->nwelds ? &x->welds[i] : NULL;

	if (!w)
		return x->nmaterials ? metal_find(x->materials[0].text) : NULL;
	return w->material2.n ? weaker(metal_find(w->material1), metal_find(w->material2))
	    : metal_find(w->material1);
}

struct limit_sizes limit_sizes_of(const struct assignment *x, size_t i)
{
	struct limit_sizes z = i < x->nwelds ? weld_sizes(x, i) : (struct limit_sizes){ 0 };
	const struct metal *metal = metal_at_weld(x, i);

	if (metal)
		limit_size_set(&z, SIZE_BASE_STRENGTH, metal->uts_ksi * 1000);
	return z;
}

static struct limit_sizes sizes_with_metal(struct gathering *g, const struct assignment *x,
    size_t i)
{
	g->metal = metal_at_weld(x, i);
	return limit_sizes_of(x, i);
}

/* The limits for one weld; a condition whose size is not known is printed with it. */
static void gather(struct gathering *g, unsigned welds, const struct limit_sizes *z,
    uint32_t bit)
{
	for (size_t i = 0; i < g->set->n; i++) {
		const struct standard_limit *l = &g->set->v[i];
		double holds = 1;
		bool settled = !l->where.v || limit_expr_value(&l->where, z, &holds);
		size_t at;

		if (l->test != g->test || !(l->welds & welds) || (settled && holds == 0))
			continue;
		if (drops_short_leg(g, l, z) ||
		    (g->test == TEST_DIMENSIONS && is_toleranced(l->name)))
			continue;
		at = add_limit(g->arena, &g->out, (struct limit){
		    .feature = edition_word(g->e, l->name),
		    .rule = limit_rule(g->arena, g->e, l, z, settled),
		    .tool = edition_word(g->e, l->tool),
		    .sign = sign_of(g, l) });
		g->bits = arena_grow(g->arena, g->bits, g->cap, at + 1, &g->cap,
		    sizeof *g->bits);
		g->bits[at] |= bit;
	}
}

/* "Leg short of size, weld A": letters only where the welds differ. */
static void name_welds(const struct gathering *g, const struct assignment *x, struct limit *l,
    uint32_t bits)
{
	struct buf b = { .arena = g->arena };
	uint32_t all = x->nwelds < 32 ? (1u << x->nwelds) - 1 : UINT32_MAX;

	if (bits == all)
		return;
	for (size_t i = 0; i < x->nwelds && i < 32; i++)
		if (bits >> i & 1)
			buf_addf(&b, "%s%c", b.n ? ", " : "", x->welds[i].letter);
	l->feature = word_format(g->arena, edition_language(g->e), "%.*s, weld %.*s",
	    STR_ARG(l->feature), STR_ARG(buf_str(&b)));
}

/* Each limit once, with the welds that it holds for. A specimen of no weld that is
 * described here goes by the limits of any. */
static void gather_welds(struct gathering *g, const struct assignment *x)
{
	struct limit_sizes unknown = sizes_with_metal(g, x, SIZE_MAX);
	uint32_t named = x->nwelds > 1 ? named_welds(x, g->text) : UINT32_MAX;

	for (size_t i = 0; i < x->nwelds && i < 32; i++) {
		struct limit_sizes z = sizes_with_metal(g, x, i);

		if (!(named >> i & 1))
			continue;
		gather(g, weld_is_fillet(x->welds[i].joint) ? WELD_FILLET : WELD_GROOVE, &z,
		    (uint32_t)1 << i);
	}
	if (!x->nwelds && g->test != TEST_VISUAL)
		gather(g, WELD_ANY, &unknown, 0);
	for (size_t i = 0; i < g->out.n && x->nwelds; i++)
		name_welds(g, x, &g->out.v[i], g->bits[i]);
}

/* What is welded on the part: where every process cuts, nothing. */
static unsigned kinds_of_weld(const struct assignment *x)
{
	unsigned kinds = WELD_PART;
	bool cuts = x->nprocesses > 0;

	for (uint32_t i = 0; i < x->nprocesses; i++)
		cuts &= x->processes[i] == PROCESS_OFC || x->processes[i] == PROCESS_PAC ||
		    x->processes[i] == PROCESS_CAC_A;
	for (size_t i = 0; i < x->nwelds && !cuts; i++)
		kinds |= weld_is_fillet(x->welds[i].joint) ? WELD_FILLET : WELD_GROOVE;
	return kinds;
}

/* Limits on the part as a whole, which no weld divides. */
static void gather_part(struct gathering *g, const struct assignment *x)
{
	struct limit_sizes z = part_sizes(x);

	gather(g, kinds_of_weld(x), &z, 0);
}

/* A row in the words of the line itself. */
static struct limit own_limit(struct arena *a, const struct edition *e,
    const struct criterion *c, str words)
{
	str name = said_or(c->shown_name, c->name), text = said_or(c->shown_text, c->text);

	return (struct limit){ .feature = name, .rule = both_units(a, e, words),
		.english_feature = stays_english(e, name, c->name),
		.english_rule = stays_english(e, text, c->text) };
}

/* What a line says behind its set, after a semicolon, in its own row; how strips are cut
 * stands on the cut map. */
static void gather_own_words(struct gathering *g, const struct criterion *c)
{
	str shown = said_or(c->shown_text, c->text), part;
	str rest = str_sub(shown, str_find_char(shown, ';', 0), shown.n);
	struct buf own = { .arena = g->arena };

	while (str_next(&rest, ';', &part)) {
		part = str_trim(part);
		if (part.n && !str_starts_nocase(part, STR("strips ")))
			buf_addf(&own, "%s%.*s", own.n ? "; " : "", STR_ARG(part));
	}
	if (own.n)
		add_limit(g->arena, &g->out, own_limit(g->arena, g->e, c, buf_str(&own)));
}

str limits_head(struct arena *a, const struct edition *e, const struct criterion *c)
{
	str shown = said_or(c->shown_text, c->text);

	return both_units(a, e, str_trim(str_sub(shown, 0, str_find_char(shown, ';', 0))));
}

struct limits limits_of(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct criterion *c)
{
	struct gathering g = { .arena = a, .e = e, .set = c->standard,
		.own_leg = has_measured(x, STR("leg")), .text = c->text };
	str shown = said_or(c->shown_text, c->text);

	if (c->standard && criterion_test(c->name, &g.test)) {
		if (g.test == TEST_DIMENSIONS)
			gather_part(&g, x);
		else
			gather_welds(&g, x);
	}
	if (g.out.n)
		gather_own_words(&g, c);
	else
		add_limit(a, &g.out, own_limit(a, e, c, shown));
	return g.out;
}

const struct standard_limit *limit_leg_short(const struct assignment *x,
    const struct limit_sizes *z, double *short_mm)
{
	enum standard_test test;

	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct standard *set = x->criteria[i].standard;

		if (!set || !criterion_test(x->criteria[i].name, &test) ||
		    test != TEST_VISUAL)
			continue;
		for (size_t k = 0; k < set->n; k++) {
			const struct standard_limit *l = &set->v[k];
			double holds = 1;

			if (l->test == TEST_VISUAL && l->form == LIMIT_AT_MOST &&
			    str_starts_nocase(l->name, LEG_SHORT) &&
			    (!l->where.v || limit_expr_value(&l->where, z, &holds)) &&
			    holds != 0 && limit_expr_value(&l->most, z, short_mm))
				return l;
		}
	}
	return NULL;
}

void sheet_limit_row(struct sheet *sh, struct grid *g, const struct limit *k, size_t columns)
{
	bool named = sh->e->choice.large;
	const struct grid_cell row[2] = {
		{ .text = k->feature, .style = k->english_feature ? SPAN_OTHER : 0,
		    .columns = named ? (uint32_t)columns : 1, .head = named },
		{ .text = str_format(sh->arena, "%.*s%s%s%.*s", STR_ARG(k->rule),
		    sign_text(k->sign), k->tool.n ? "; " : "", STR_ARG(k->tool)),
		    .style = k->english_rule ? SPAN_OTHER : 0 } };

	if (named) {
		grid_row(g, row, 1);
		grid_row_min(g, 0);
	}
	grid_row(g, &row[named], 2u - named);
}
