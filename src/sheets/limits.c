#include "sheets/limits.h"

#include "base/buf.h"
#include "model/standard.h"
#include "reckon/fillet.h"
#include "sheets/pattern_sheet.h"
#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

/* How every set begins the name of its limit on short fillet legs. */
#define LEG_SHORT STR("leg short")

str dagger_words(void)
{
	return STR(DAGGER " not seen in a copy of the code: confirm against your edition.");
}

bool is_destructive(str name)
{
	enum standard_test test;

	return criterion_test(name, &test) && test != TEST_VISUAL;
}

/* ---- sizes that limits go by ---- */

static bool is_fillet(enum joint j)
{
	return j == JOINT_TEE || j == JOINT_LAP || j == JOINT_CORNER || j == JOINT_BRANCH;
}

static bool has_root(enum joint j)
{
	return j == JOINT_SQUARE_BUTT || j == JOINT_SINGLE_V || j == JOINT_SINGLE_BEVEL ||
	    j == JOINT_U_GROOVE || j == JOINT_PIPE_BUTT || j == JOINT_BUTT ||
	    j == JOINT_OPEN_CORNER;
}

/* The drawing that shows a weld, or null. */
static const struct joint_block *drawing_of(const struct assignment *x, size_t weld)
{
	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct joint_block *j = &x->drawings[i].joint;

		if (x->drawings[i].kind == DRAWING_JOINT &&
		    (j->weld == weld || (j->weld == NONE && x->nwelds == 1)))
			return j;
	}
	return NULL;
}

/* "none" and something else in one fact: it depends on the weld, so it is not known. */
static void set_open_root(struct limit_sizes *z, const struct assignment *x, enum joint joint,
    const struct joint_block *j)
{
	str backing = fact_text(x, STR("Backing"));
	bool none = str_eq_nocase(backing, STR("none"));
	bool backed = (backing.n && !none) || (j && (j->both_sides || given(&j->backing_t)));

	z->known[SIZE_OPEN_ROOT] = !has_root(joint) || none ||
	    str_find(backing, STR("none"), 0) == backing.n;
	z->v[SIZE_OPEN_ROOT] = has_root(joint) && !backed;
}

static void set_size(struct limit_sizes *z, enum limit_name name, double mm)
{
	z->v[name] = mm;
	z->known[name] = mm > 0;
}

/* An equal-leg fillet with a flat face: throat leg / sqrt 2, face leg x sqrt 2. */
static struct limit_sizes sizes_of(const struct assignment *x, size_t i)
{
	const struct weld *w = &x->welds[i];
	const struct joint_block *j = drawing_of(x, i);
	double leg_mm = w->leg_mm;
	struct limit_sizes z = { 0 };

	if (!(leg_mm > 0) && j && given(&j->leg))
		leg_mm = j->leg.lo;
	set_size(&z, SIZE_T, w->t2_mm > 0 && w->t2_mm < w->t1_mm ? w->t2_mm : w->t1_mm);
	if (is_fillet(w->joint)) {
		set_size(&z, SIZE_LEG, leg_mm);
		set_size(&z, SIZE_THROAT, fillet_throat_mm(leg_mm));
		set_size(&z, SIZE_WIDTH, leg_mm * sqrt(2));
	}
	if (j && given(&j->gap))
		set_size(&z, SIZE_ROOT_OPENING, j->gap.hi);
	set_open_root(&z, x, w->joint, j);
	return z;
}

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

/* Whether an acceptance line gives the ends of what a drawing shows too: then one row
 * is enough. "Leg size" is the fillet leg, "Root opening" the gap. */
static bool has_criterion(const struct assignment *x, str word)
{
	for (size_t i = 0; i < x->ncriteria; i++)
		if (str_starts_nocase(x->criteria[i].name, word) && is_measured(&x->criteria[i]))
			return true;
	return false;
}

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
		struct limit_sizes z = sizes_of(x, i);

		if (!(named >> i & 1))
			continue;
		gather(g, is_fillet(x->welds[i].joint) ? WELD_FILLET : WELD_GROOVE, &z,
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
		.own_leg = has_criterion(x, STR("leg")), .text = c->text };

	if (c->standard && criterion_test(c->name, &g.test))
		gather_welds(&g, x);
	if (!g.out.n)
		add_limit(a, &g.out, (struct limit){ .feature = c->name, .rule = c->text });
	return g.out;
}

/* ---- measured ---- */

static str mm_text(struct arena *a, double mm, double tolerance_mm)
{
	struct buf b = { .arena = a };

	format_computed(&b, mm, tolerance_mm);
	return buf_str(&b);
}

static struct measure *add_measure(struct arena *a, struct measures *out, str feature, str tool)
{
	struct measure *m = ARENA_PUSH(a, out->v, out->n, out->cap);

	m->feature = feature;
	m->tool = tool;
	return m;
}

static str end_text(struct arena *a, enum quantity_kind kind, double x, double step)
{
	struct buf b = { .arena = a };

	if (kind == QUANTITY_LENGTH)
		return mm_text(a, x, step);
	format_angle(&b, x);
	return buf_str(&b);
}

/* A size whose own text gives its ends: a range or a tolerance. */
static void add_sized(struct arena *a, struct measures *out, str feature, str tool,
    const struct quantity *q)
{
	struct measure *m;

	if (!given(q))
		return;
	m = add_measure(a, out, feature, tool);
	m->nominal = quantity_text(a, q);
	if ((q->kind == QUANTITY_LENGTH || q->kind == QUANTITY_ANGLE) && (q->range || q->tolerance)) {
		double step = q->tolerance ? fmin(q->plus, q->minus) : 0;

		step = step > 0 ? step : 25.4 / 32;
		m->low = end_text(a, q->kind, q->lo - q->minus, step);
		m->high = end_text(a, q->kind, q->hi + q->plus, step);
	}
}

/* The limit on short legs in the set that the welds of x are looked at by, with its
 * figure for sizes z; null when the sheet names no such set or no figure comes out. */
static const struct standard_limit *leg_short_of(const struct assignment *x,
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

/* The leg: it may fall short as far as the set of the sheet allows, else not at all,
 * and never to nothing; no code gives an upper end. */
static void add_leg(struct arena *a, struct measures *out, str feature,
    const struct quantity *leg, const struct assignment *x, struct limit_sizes z)
{
	const struct standard_limit *l;
	struct measure *m;
	double short_mm = 0;

	if (!given(leg))
		return;
	m = add_measure(a, out, feature, STR("fillet gauge"));
	m->nominal = quantity_text(a, leg);
	if (leg->tolerance) {
		m->low = mm_text(a, leg->lo - leg->minus, 25.4 / 32);
		m->high = mm_text(a, leg->hi + leg->plus, 25.4 / 32);
		return;
	}
	set_size(&z, SIZE_LEG, leg->lo);
	l = leg_short_of(x, &z, &short_mm);
	m->low = mm_text(a, leg->lo, 25.4 / 32);
	if (l && short_mm > 0 && short_mm < leg->lo)
		m->low = str_format(a, "%.*s%s%.*s",
		    STR_ARG(mm_text(a, leg->lo - short_mm, 25.4 / 32)),
		    l->more.n ? ", " : "", STR_ARG(l->more));
}

/* A size and a tolerance among the comma-separated parts of an acceptance line:
 * "5/16 in, +1/16 -0 in, fillet gauge", "±1/32 in, rule and square". */
struct sized {
	struct quantity value, tolerance;
	str tool;                /* what is neither: how it is measured */
};

static struct sized read_sized(str text)
{
	struct sized s = { 0 };
	str part;

	while (str_next(&text, ',', &part)) {
		struct quantity_fault fault;
		struct quantity q;

		part = str_trim(part);
		if (quantity_parse(part, QUANTITY_ANY, METAL_NONE, &q, &fault)) {
			s.tool = s.tool.n ? (str){ s.tool.p, (size_t)(part.p + part.n - s.tool.p) } : part;
			continue;
		}
		if (q.kind != QUANTITY_LENGTH && q.kind != QUANTITY_ANGLE)
			continue;
		if (q.tolerance)
			s.tolerance = q;
		if (!q.no_value)
			s.value = q;
	}
	return s;
}

bool is_measured(const struct criterion *c)
{
	struct sized s = read_sized(c->text);

	return given(&s.value) && given(&s.tolerance) && s.value.kind == s.tolerance.kind;
}

/* The tolerance of a line about dimensions, for blanks and pieces. */
static bool find_tolerance(const struct assignment *x, struct quantity *out)
{
	for (size_t i = 0; i < x->ncriteria; i++) {
		if (!str_starts_nocase(x->criteria[i].name, STR("dimension")))
			continue;
		*out = read_sized(x->criteria[i].text).tolerance;
		if (given(out) && out->kind == QUANTITY_LENGTH)
			return true;
	}
	return false;
}

static void add_criterion(struct arena *a, struct measures *out, const struct criterion *c)
{
	struct sized s = read_sized(c->text);
	double step = fmin(s.tolerance.plus, s.tolerance.minus);
	struct measure *m = add_measure(a, out, c->name, s.tool);

	m->nominal = quantity_text(a, &s.value);
	if (s.value.tolerance) {
		struct quantity bare = s.value;

		bare.tolerance = false;
		m->nominal = quantity_text(a, &bare);
	}
	m->low = end_text(a, s.value.kind, s.value.lo - s.tolerance.minus, step > 0 ? step : 25.4 / 32);
	m->high = end_text(a, s.value.kind, s.value.hi + s.tolerance.plus, step > 0 ? step : 25.4 / 32);
}

static void add_toleranced(struct arena *a, struct measures *out, str feature,
    const struct quantity *q, const struct quantity *tol)
{
	struct measure *m;
	double step = fmin(tol->plus, tol->minus);

	if (q->kind != QUANTITY_LENGTH)
		return;
	m = add_measure(a, out, feature, STR("rule, square"));
	m->nominal = quantity_text(a, q);
	m->low = mm_text(a, q->lo - tol->minus, step);
	m->high = mm_text(a, q->hi + tol->plus, step);
}

static void add_plate_measures(struct arena *a, struct measures *out, const struct plate_block *p,
    const struct quantity *tol)
{
	unsigned holes = 0;

	add_toleranced(a, out, STR("Length"), &p->length, tol);
	add_toleranced(a, out, STR("Width"), &p->width, tol);
	for (size_t i = 0; i < p->nmarks; i++) {
		const struct plate_mark *k = &p->marks[i];

		if (k->kind != MARK_HOLE)
			continue;
		holes++;
		add_toleranced(a, out, str_format(a, "Hole %u from left", holes), &k->v[0], tol);
		add_toleranced(a, out, str_format(a, "Hole %u from bottom", holes), &k->v[1], tol);
	}
}

static void add_joint_measures(struct arena *a, struct measures *out, const struct assignment *x,
    const struct joint_block *j)
{
	bool groove = !is_fillet(j->joint) || j->joint == JOINT_BRANCH;
	const struct { str feature, criterion, tool; const struct quantity *q; } rows[] = {
		{ groove ? STR("Root opening") : STR("Fit-up gap"), groove ? STR("root") : STR("gap"),
		    STR("taper gauge"), &j->gap },
		{ STR("Land"), STR("land"), STR("rule"), &j->land },
		{ STR("Included angle"), STR("angle"), STR("bevel gauge"), &j->angle },
		{ STR("Bevel"), STR("bevel"), STR("bevel gauge"), &j->bevel },
	};
	size_t weld = j->weld == NONE ? 0 : j->weld;
	char letter = j->weld == NONE ? 0 : x->welds[j->weld].letter;
	str tail = letter ? str_format(a, ", weld %c", letter) : (str){ 0 };

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (!has_criterion(x, rows[i].criterion))
			add_sized(a, out, str_format(a, "%.*s%.*s", STR_ARG(rows[i].feature), STR_ARG(tail)),
			    rows[i].tool, rows[i].q);
	if (!has_criterion(x, STR("leg")))
		add_leg(a, out, str_format(a, "Fillet leg%.*s", STR_ARG(tail)), &j->leg, x,
		    weld < x->nwelds ? sizes_of(x, weld) : (struct limit_sizes){ 0 });
	if (j->joint == JOINT_LAP && !has_criterion(x, STR("overlap")))
		add_sized(a, out, str_format(a, "Overlap%.*s", STR_ARG(tail)), STR("rule"), &j->overlap);
}

struct measures measures_of(struct arena *a, const struct assignment *x)
{
	struct measures out = { 0 };
	struct quantity tol;
	bool dimensional = find_tolerance(x, &tol);

	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct drawing *d = &x->drawings[i];

		if (d->kind == DRAWING_JOINT)
			add_joint_measures(a, &out, x, &d->joint);
		else if (d->kind == DRAWING_PATTERN)
			pattern_measures(a, d->pattern, dimensional ? &tol : NULL, &out);
		else if (dimensional)
			add_plate_measures(a, &out, &d->plate, &tol);
	}
	for (size_t i = 0; i < x->ncriteria; i++)
		if (is_measured(&x->criteria[i]))
			add_criterion(a, &out, &x->criteria[i]);
	return out;
}
