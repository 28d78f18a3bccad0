#include "sheets/limits.h"

#include "base/buf.h"
#include "reckon/fillet.h"
#include "reckon/visual.h"
#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

enum { LIMITS_MOST = 32 };

str dagger_words(void)
{
	return STR(DAGGER " not seen in a copy of the code: confirm against your edition.");
}

/* Tests by the words of an acceptance line; a row matches the start of the name. */
static const struct {
	str word;
	bool destructive;
	int test;                /* enum accept_test, -1: none in the tables */
} tests[] = {
	{ STR("face bend"), true, TEST_BEND }, { STR("root bend"), true, TEST_BEND },
	{ STR("side bend"), true, TEST_BEND }, { STR("bend"), true, TEST_BEND },
	{ STR("guided bend"), true, TEST_BEND },
	{ STR("fillet break"), true, TEST_FILLET_BREAK },
	{ STR("fillet-break"), true, TEST_FILLET_BREAK },
	{ STR("macro"), true, TEST_MACRO },
	{ STR("nick break"), true, -1 }, { STR("nick-break"), true, -1 },
	{ STR("tensile"), true, -1 },
};

static int find_test(str name)
{
	for (size_t i = 0; i < sizeof tests / sizeof *tests; i++)
		if (str_starts_nocase(name, tests[i].word))
			return (int)i;
	return -1;
}

bool is_destructive(str name)
{
	return find_test(name) >= 0;
}

/* "1/32 in [1 mm]": fractions where the figure is one, the code's own metric. */
static void add_amount(struct buf *b, const struct accept *l)
{
	if (str_starts(str_of(l->unit), STR("in"))) {
		format_computed_in(b, l->limit * 25.4, 25.4 / 32);
		buf_addf(b, " %s", l->unit);
	} else {
		buf_add_real(b, l->limit, 4, false);
		buf_addf(b, "%s%s", *l->unit == '%' ? "" : " ", l->unit);
	}
	if (*l->metric)
		buf_addf(b, " [%s]", l->metric);
}

static str limit_rule(struct arena *a, const struct accept *l)
{
	struct buf b = { .arena = a };

	if (l->form == ACCEPT_NONE)
		buf_adds(&b, "none");
	if (l->form == ACCEPT_AT_MOST) {
		buf_adds(&b, "at most ");
		add_amount(&b, l);
	}
	if (*l->words)
		buf_addf(&b, "%s%s", b.n ? "; " : "", l->words);
	return buf_str(&b);
}

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

static struct limit limit_of(struct arena *a, const struct accept *k)
{
	return (struct limit){ .feature = str_of(k->feature), .rule = limit_rule(a, k),
		.tool = str_of(k->tool), .dagger = k->seen == SEEN_MEMORY };
}

static void add_accepts(struct arena *a, struct limits *out, const struct accept *v, size_t n)
{
	for (size_t i = 0; i < n && i < LIMITS_MOST; i++)
		add_limit(a, out, limit_of(a, &v[i]));
}

static bool is_fillet(enum joint j)
{
	return j == JOINT_TEE || j == JOINT_LAP || j == JOINT_CORNER || j == JOINT_BRANCH;
}

static enum accept_loading loading_of(const struct criterion *c)
{
	if (str_eq_nocase(c->loading, STR("static")))
		return LOADING_STATIC;
	return str_eq_nocase(c->loading, STR("cyclic")) ? LOADING_CYCLIC : LOADING_WELDER_TEST;
}

/* The leg of a weld: its own, or that of the drawing that shows it. */
static double leg_of(const struct assignment *x, size_t weld)
{
	for (size_t i = 0; i < x->ndrawings && !(x->welds[weld].leg_mm > 0); i++) {
		const struct joint_block *j = &x->drawings[i].joint;

		if (x->drawings[i].kind == DRAWING_JOINT && given(&j->leg) &&
		    (j->weld == weld || (j->weld == NONE && x->nwelds == 1)))
			return j->leg.lo;
	}
	return x->welds[weld].leg_mm;
}

static size_t weld_limits(const struct assignment *x, size_t i, const struct criterion *c,
    struct accept *v)
{
	const struct weld *w = &x->welds[i];
	const struct visual_query q = {
		.code = c->code, .edition = (int)c->edition, .loading = loading_of(c),
		.weld = is_fillet(w->joint) ? WELD_FILLET : WELD_GROOVE,
		.thickness_mm = w->t2_mm > 0 && w->t2_mm < w->t1_mm ? w->t2_mm : w->t1_mm,
		.leg_mm = leg_of(x, i),
	};

	return visual_limits(&q, v, LIMITS_MOST);
}

/* "Leg short of size, weld A": letters only where the welds differ. */
static void name_welds(struct arena *a, const struct assignment *x, struct limit *l, uint32_t bits)
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

/* Each limit once, with the welds that it holds for. */
static void add_visual(struct arena *a, struct limits *out, const struct assignment *x,
    const struct criterion *c)
{
	uint32_t *bits = NULL;
	size_t cap = 0;
	struct accept v[LIMITS_MOST];

	for (size_t i = 0; i < x->nwelds && i < 32; i++) {
		size_t n = weld_limits(x, i, c, v);

		for (size_t k = 0; k < n && k < LIMITS_MOST; k++) {
			size_t at = add_limit(a, out, limit_of(a, &v[k]));

			bits = arena_grow(a, bits, cap, at + 1, &cap, sizeof *bits);
			bits[at] |= 1u << i;
		}
	}
	for (size_t i = 0; i < out->n; i++)
		name_welds(a, x, &out->v[i], bits[i]);
}

struct limits limits_of(struct arena *a, const struct assignment *x, const struct criterion *c)
{
	struct limits out = { 0 };
	struct accept v[LIMITS_MOST];
	int test = find_test(c->name);

	if (c->code.n && str_starts_nocase(c->name, STR("visual")))
		add_visual(a, &out, x, c);
	else if (c->code.n && test >= 0 && tests[test].test >= 0)
		add_accepts(a, &out, v, test_limits(c->code, (int)c->edition,
		    (enum accept_test)tests[test].test, v, LIMITS_MOST));
	if (!out.n)
		add_limit(a, &out, (struct limit){ .feature = c->name, .rule = c->text });
	return out;
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

/* A size whose own text gives its ends: a range or a tolerance. */
static void add_sized(struct arena *a, struct measures *out, str feature, str tool,
    const struct quantity *q)
{
	struct measure *m;

	if (!given(q))
		return;
	m = add_measure(a, out, feature, tool);
	m->nominal = quantity_text(a, q);
	if (q->kind != QUANTITY_LENGTH)
		return;
	if (q->range || q->tolerance) {
		double step = q->tolerance ? fmin(q->plus, q->minus) : 0;

		m->low = mm_text(a, q->lo - q->minus, step > 0 ? step : 25.4 / 32);
		m->high = mm_text(a, q->hi + q->plus, step > 0 ? step : 25.4 / 32);
	}
}

/* The leg: least by the undersize allowance of D1.1 Table 8.1 item 6, which counts
 * for at most a tenth of the length; there is no upper end in the code. */
static void add_leg(struct arena *a, struct measures *out, str feature, const struct quantity *leg)
{
	struct measure *m;

	if (!given(leg))
		return;
	m = add_measure(a, out, feature, STR("fillet gauge"));
	m->nominal = quantity_text(a, leg);
	if (leg->tolerance) {
		m->low = mm_text(a, leg->lo - leg->minus, 25.4 / 32);
		m->high = mm_text(a, leg->hi + leg->plus, 25.4 / 32);
		return;
	}
	m->low = str_format(a, "%.*s for a tenth of the length",
	    STR_ARG(mm_text(a, leg->lo - fillet_undersize(leg->lo).mm, 25.4 / 32)));
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

static str end_text(struct arena *a, enum quantity_kind kind, double x, double step)
{
	struct buf b = { .arena = a };

	if (kind == QUANTITY_LENGTH)
		return mm_text(a, x, step);
	format_angle(&b, x);
	return buf_str(&b);
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

/* Whether an acceptance line gives the ends of what a drawing shows too: then one row
 * is enough. "Leg size" is the fillet leg, "Root opening" the gap. */
static bool has_criterion(const struct assignment *x, str word)
{
	for (size_t i = 0; i < x->ncriteria; i++)
		if (str_starts_nocase(x->criteria[i].name, word) && is_measured(&x->criteria[i]))
			return true;
	return false;
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
	char letter = j->weld == NONE ? 0 : x->welds[j->weld].letter;
	str tail = letter ? str_format(a, ", weld %c", letter) : (str){ 0 };

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (!has_criterion(x, rows[i].criterion))
			add_sized(a, out, str_format(a, "%.*s%.*s", STR_ARG(rows[i].feature), STR_ARG(tail)),
			    rows[i].tool, rows[i].q);
	if (!has_criterion(x, STR("leg")))
		add_leg(a, out, str_format(a, "Fillet leg%.*s", STR_ARG(tail)), &j->leg);
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
		else if (dimensional)
			add_plate_measures(a, &out, &d->plate, &tol);
	}
	for (size_t i = 0; i < x->ncriteria; i++)
		if (is_measured(&x->criteria[i]))
			add_criterion(a, &out, &x->criteria[i]);
	return out;
}
