#include "sheets/limits.h"

#include "base/buf.h"
#include "model/weld_sizes.h"
#include "sheets/sheet.h"
#include "units/format.h"

str dagger_words(void)
{
	return STR(DAGGER " not seen in a copy of the code: confirm against your edition.");
}

bool is_destructive(str name)
{
	enum standard_test test;

	return criterion_test(name, &test) && test != TEST_VISUAL;
}

/* How every set begins the name of its limit on short fillet legs. */
#define LEG_SHORT STR("leg short")

/* ---- one limit in words ---- */

static void add_length(struct buf *b, const struct standard_limit *l, double mm)
{
	bool metric = str_eq(l->unit, STR("mm"));

	if (metric) {
		format_mm(b, mm, 2);
		buf_adds(b, " mm");
	} else {
		format_computed_in(b, mm, 25.4 / 32);
		buf_adds(b, " in");
	}
	if (l->per.n)
		buf_addf(b, " per %.*s", STR_ARG(l->per));
	if (l->metric.n || l->per.n)
		return;
	buf_adds(b, " [");
	if (metric)
		format_computed_in(b, mm, 25.4 / 32);
	else
		format_mm(b, mm, 1);
	buf_adds(b, metric ? " in]" : " mm]");
}

/* "1/32 in [1 mm]": fractions where the figure is one, the code's own metric. */
static void add_amount(struct buf *b, const struct standard_limit *l, double value)
{
	switch (l->most.kind) {
	case LIMIT_LENGTH:
		add_length(b, l, value);
		break;
	case LIMIT_ANGLE:
		format_angle(b, value);
		break;
	default:
		buf_add_real(b, value, 4, false);
		buf_adds(b, l->most.kind == LIMIT_PERCENT ? " %" : "");
		if (l->per.n)
			buf_addf(b, " per %.*s", STR_ARG(l->per));
		break;
	}
	if (l->metric.n)
		buf_addf(b, " [%.*s]", STR_ARG(l->metric));
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
static void add_expression(struct buf *b, str s)
{
	size_t comma = pair_comma(s);

	if (comma == s.n) {
		buf_add(b, s);
		return;
	}
	buf_adds(b, str_starts_nocase(s, STR("min")) ? "the smaller of " : "the larger of ");
	buf_add(b, str_trim(str_sub(s, 4, comma)));
	buf_adds(b, " and ");
	buf_add(b, str_trim(str_sub(s, comma + 1, s.n - 1)));
}

/* Where a figure comes from: how it goes by the size, then the clause. */
static void add_origin(struct buf *b, const struct standard_limit *l, bool worked_out)
{
	buf_adds(b, " (");
	if (worked_out) {
		add_expression(b, l->most_text);
		buf_adds(b, "; ");
	}
	buf_addf(b, "%.*s)", STR_ARG(l->clause));
}

static str limit_rule(struct arena *a, const struct standard_limit *l,
    const struct limit_sizes *z, bool settled)
{
	struct buf b = { .arena = a };
	bool ends = l->form == LIMIT_AT_MOST || l->form == LIMIT_AT_LEAST, worked_out = false;
	double value;

	if (ends) {
		buf_adds(&b, l->form == LIMIT_AT_MOST ? "at most " : "at least ");
		/* A size can lie outside what an expression is for; then no figure. */
		if (limit_expr_value(&l->most, z, &value) && value >= 0) {
			worked_out = l->most.names != 0;
			add_amount(&b, l, value);
		} else {
			add_expression(&b, l->most_text);
		}
	} else {
		buf_add(&b, l->form == LIMIT_NONE ? STR("none") : l->words);
	}
	if (!settled)
		buf_addf(&b, " where %.*s", STR_ARG(l->where_text));
	if (l->more.n)
		buf_addf(&b, "; %.*s", STR_ARG(l->more));
	add_origin(&b, l, worked_out);
	return buf_str(&b);
}

/* ---- the limits of a line ---- */

struct gathering {
	struct arena *arena;
	const struct standard *set;
	enum standard_test test;
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
		if (drops_short_leg(g, l, z))
			continue;
		at = add_limit(g->arena, &g->out, (struct limit){ .feature = l->name,
		    .rule = limit_rule(g->arena, l, z, settled), .tool = l->tool,
		    .dagger = limit_is_doubtful(g->set, l) });
		g->bits = arena_grow(g->arena, g->bits, g->cap, at + 1, &g->cap,
		    sizeof *g->bits);
		g->bits[at] |= bit;
	}
}

/* "Leg short of size, weld A": letters only where the welds differ. */
static void name_welds(struct arena *a, const struct assignment *x, struct limit *l,
    uint32_t bits)
{
	struct buf b = { .arena = a };
	uint32_t all = x->nwelds < 32 ? (1u << x->nwelds) - 1 : UINT32_MAX;
	unsigned told = 0;

	if (bits == all)
		return;
	buf_add(&b, l->feature);
	for (size_t i = 0; i < x->nwelds && i < 32; i++)
		if (bits >> i & 1)
			buf_addf(&b, "%s%c", told++ ? ", " : ", weld ", x->welds[i].letter);
	l->feature = buf_str(&b);
}

/* Each limit once, with the welds that it holds for. A specimen of no weld that is
 * described here goes by the limits of any. */
static void gather_welds(struct gathering *g, const struct assignment *x)
{
	const struct limit_sizes unknown = { 0 };
	uint32_t named = x->nwelds > 1 ? named_welds(x, g->text) : UINT32_MAX;

	for (size_t i = 0; i < x->nwelds && i < 32; i++) {
		struct limit_sizes z = weld_sizes(x, i);

		if (!(named >> i & 1))
			continue;
		gather(g, weld_is_fillet(x->welds[i].joint) ? WELD_FILLET : WELD_GROOVE, &z,
		    (uint32_t)1 << i);
	}
	if (!x->nwelds && g->test != TEST_VISUAL)
		gather(g, WELD_ANY, &unknown, 0);
	for (size_t i = 0; i < g->out.n && x->nwelds; i++)
		name_welds(g->arena, x, &g->out.v[i], g->bits[i]);
}

struct limits limits_of(struct arena *a, const struct assignment *x, const struct criterion *c)
{
	struct gathering g = { .arena = a, .set = c->standard,
		.own_leg = has_measured(x, STR("leg")), .text = c->text };

	if (c->standard && criterion_test(c->name, &g.test))
		gather_welds(&g, x);
	if (!g.out.n)
		add_limit(a, &g.out, (struct limit){ .feature = c->name, .rule = c->text });
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
