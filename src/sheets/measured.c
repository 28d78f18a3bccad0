/* What is measured against two ends: a nominal, a low and a high. */
#include "sheets/limits.h"

#include "base/buf.h"
#include "model/weld_sizes.h"
#include "sheets/pattern_sheet.h"
#include "sheets/sheet.h"
#include "sheets/tolerance.h"
#include "units/format.h"

#include <math.h>

static str mm_text(struct arena *a, const struct edition *e, double mm, double tolerance_mm)
{
	struct buf b = { .arena = a };

	format_computed_as(&b, edition_format(e), mm, tolerance_mm);
	return buf_str(&b);
}

static struct measure *add_measure(struct arena *a, struct measures *out, str feature, str tool)
{
	struct measure *m = ARENA_PUSH(a, out->v, out->n, out->cap);

	m->feature = feature;
	m->tool = tool;
	return m;
}

static str end_text(struct arena *a, const struct edition *e, enum quantity_kind kind, double x,
    double step)
{
	struct buf b = { .arena = a };

	if (kind == QUANTITY_LENGTH)
		return mm_text(a, e, x, step);
	format_angle(&b, x);
	return buf_str(&b);
}

/* One end of a range as it was written, 1/64 in and not its decimals. */
static str range_end(struct arena *a, const struct edition *e, const struct quantity *q, double x)
{
	struct quantity end = *q;

	end.lo = end.hi = x;
	end.gauge_lo = end.gauge_hi = x > q->lo ? q->gauge_hi : q->gauge_lo;
	end.range = false;
	return quantity_text(a, e, &end);
}

/* A size whose own text gives its ends: a range or a tolerance. */
static void add_sized(struct arena *a, const struct edition *e, struct measures *out,
    str feature, str tool, const struct quantity *q)
{
	struct measure *m;

	if (!given(q))
		return;
	m = add_measure(a, out, feature, tool);
	m->nominal = quantity_text(a, e, q);
	if (q->range && !q->tolerance) {
		m->low = range_end(a, e, q, q->lo);
		m->high = range_end(a, e, q, q->hi);
		return;
	}
	if ((q->kind == QUANTITY_LENGTH || q->kind == QUANTITY_ANGLE) && q->tolerance) {
		double step = q->tolerance ? fmin(q->plus, q->minus) : 0;

		step = step > 0 ? step : 25.4 / 32;
		m->low = end_text(a, e, q->kind, q->lo - q->minus, step);
		m->high = end_text(a, e, q->kind, q->hi + q->plus, step);
	}
}

/* The leg: it may fall short as far as the set of the sheet allows, else not at all,
 * and never to nothing; no code gives an upper end. */
static void add_leg(struct arena *a, const struct edition *e, struct measures *out,
    str feature, const struct quantity *leg, const struct assignment *x,
    struct limit_sizes z)
{
	const struct standard_limit *l;
	struct measure *m;
	double short_mm = 0;

	if (!given(leg))
		return;
	m = add_measure(a, out, feature, word(edition_language(e), "fillet gauge"));
	m->nominal = quantity_text(a, e, leg);
	if (leg->tolerance) {
		m->low = mm_text(a, e, leg->lo - leg->minus, 25.4 / 32);
		m->high = mm_text(a, e, leg->hi + leg->plus, 25.4 / 32);
		return;
	}
	limit_size_set(&z, SIZE_LEG, leg->lo);
	l = limit_leg_short(x, &z, &short_mm);
	m->low = mm_text(a, e, leg->lo, 25.4 / 32);
	if (l && short_mm > 0 && short_mm < leg->lo)
		m->low = str_format(a, "%.*s%s%.*s",
		    STR_ARG(mm_text(a, e, leg->lo - short_mm, 25.4 / 32)),
		    l->more.n ? ", " : "", STR_ARG(edition_word(e, l->more)));
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

bool has_measured(const struct assignment *x, str word)
{
	for (size_t i = 0; i < x->ncriteria; i++)
		if (str_starts_nocase(x->criteria[i].name, word) && is_measured(&x->criteria[i]))
			return true;
	return false;
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

static void add_criterion(struct arena *a, const struct edition *e, struct measures *out,
    const struct criterion *c)
{
	struct sized s = read_sized(c->text);
	double step = fmin(s.tolerance.plus, s.tolerance.minus);
	struct measure *m = add_measure(a, out, said_or(c->shown_name, c->name),
	    read_sized(said_or(c->shown_text, c->text)).tool);

	m->english = stays_english(e, m->feature, c->name);
	m->nominal = quantity_text(a, e, &s.value);
	if (s.value.tolerance) {
		struct quantity bare = s.value;

		bare.tolerance = false;
		m->nominal = quantity_text(a, e, &bare);
	}
	m->low = end_text(a, e, s.value.kind, s.value.lo - s.tolerance.minus, step > 0 ? step : 25.4 / 32);
	m->high = end_text(a, e, s.value.kind, s.value.hi + s.tolerance.plus, step > 0 ? step : 25.4 / 32);
}

static void add_toleranced(struct arena *a, const struct edition *e, struct measures *out,
    str feature, const struct quantity *q, const struct quantity *tol)
{
	struct measure *m;
	double step = fmin(tol->plus, tol->minus);

	if (q->kind != QUANTITY_LENGTH)
		return;
	m = add_measure(a, out, feature, word(edition_language(e), "rule, square"));
	m->nominal = quantity_text(a, e, q);
	m->low = mm_text(a, e, q->lo - tol->minus, step);
	m->high = mm_text(a, e, q->hi + tol->plus, step);
}

/* The row of one drawn size by the set of dimensional tolerances; its ends stay blank
 * when the set has none for it. */
static void add_by_set(struct arena *a, const struct edition *e, struct measures *out,
    const struct assignment *x, str word, str feature, const struct quantity *q,
    struct limit_sizes z)
{
	struct tolerance t;
	struct measure *m;

	if (!given(q) || !tolerance_of(x, word, &z, &t) || t.q.kind != q->kind)
		return;
	m = add_measure(a, out, feature, edition_word(e, t.limit->tool));
	m->nominal = quantity_text(a, e, q);
	m->low = end_text(a, e, q->kind, q->lo - t.q.minus, t.q.minus);
	m->high = end_text(a, e, q->kind, q->hi + t.q.plus, t.q.plus);
	m->sign = limit_sign_of(t.set, t.limit);
}

/* A row by the first of the words that the set has a limit for. */
static void add_by_words(struct arena *a, const struct edition *e, struct measures *out,
    const struct assignment *x, const str words[2], str feature,
    const struct quantity *q, struct limit_sizes z)
{
	size_t before = out->n;

	add_by_set(a, e, out, x, words[0], feature, q, z);
	if (out->n == before)
		add_by_set(a, e, out, x, words[1], feature, q, z);
}

enum { SLOT_SIZES = 4 };

/* What is measured of a slot, in the order of its line. */
static str slot_feature(struct arena *a, const struct edition *e, unsigned slot, size_t i)
{
	static const str what[SLOT_SIZES] = { WORD("middle from left"),
		WORD("middle from bottom"), WORD("length"), WORD("width") };

	return word_format(a, edition_language(e), "Slot %u %.*s", slot,
	    STR_ARG(edition_word(e, what[i])));
}

/* Limits for slots, else those of holes as wide as the slot. */
static void add_slot_by_set(struct arena *a, const struct edition *e,
    struct measures *out, const struct assignment *x, const struct plate_mark *k,
    unsigned slot, struct limit_sizes z)
{
	static const str place[2] = { STR("slot place"), STR("hole place") };
	static const str size[2] = { STR("slot size"), STR("hole size") };

	limit_size_set(&z, SIZE_DIAMETER, fmin(k->v[2].lo, k->v[3].lo));
	for (size_t i = 0; i < SLOT_SIZES; i++)
		add_by_words(a, e, out, x, i < 2 ? place : size, slot_feature(a, e, slot, i),
		    &k->v[i], z);
}

/* Whether one row serves the diameters of all holes. */
static bool holes_alike(const struct plate_block *p)
{
	double first_mm = 0;

	for (size_t i = 0; i < p->nmarks; i++) {
		if (p->marks[i].kind != MARK_HOLE)
			continue;
		if (first_mm > 0 && p->marks[i].v[2].lo != first_mm)
			return false;
		first_mm = p->marks[i].v[2].lo;
	}
	return true;
}

static void add_plate_by_set(struct arena *a, const struct edition *e,
    struct measures *out, const struct assignment *x, const struct plate_block *p)
{
	const struct language *l = edition_language(e);
	struct limit_sizes z = part_sizes(x);
	unsigned holes = 0, slots = 0;

	if (given(&p->thickness))
		limit_size_set(&z, SIZE_T, p->thickness.lo);
	limit_size_set(&z, SIZE_LENGTH, p->length.lo);
	add_by_set(a, e, out, x, STR("cut length"), word(l, "Length"), &p->length, z);
	limit_size_set(&z, SIZE_LENGTH, p->width.lo);
	add_by_set(a, e, out, x, STR("cut length"), word(l, "Width"), &p->width, z);
	for (size_t i = 0; i < p->nmarks; i++) {
		const struct plate_mark *k = &p->marks[i];

		if (k->kind == MARK_SLOT)
			add_slot_by_set(a, e, out, x, k, ++slots, z);
		if (k->kind != MARK_HOLE)
			continue;
		holes++;
		limit_size_set(&z, SIZE_DIAMETER, k->v[2].lo);
		add_by_set(a, e, out, x, STR("hole place"),
		    word_format(a, l, "Hole %u from left", holes), &k->v[0], z);
		add_by_set(a, e, out, x, STR("hole place"),
		    word_format(a, l, "Hole %u from bottom", holes), &k->v[1], z);
		if (!holes_alike(p) || holes == 1)
			add_by_set(a, e, out, x, STR("hole size"), holes_alike(p) ?
			    word(l, "Diameter of each hole") : word_format(a, l,
			    "Hole %u diameter", holes), &k->v[2], z);
	}
}

/* Flanges and angles of a braked part, finished sizes of any other. */
static void add_pattern_by_set(struct arena *a, const struct edition *e,
    struct measures *out, const struct assignment *x, const struct pattern_block *p)
{
	struct limit_sizes z = part_sizes(x);
	const struct language *l = edition_language(e);
	bool brake = p->shape == SHAPE_BRAKE;
	struct tolerance t;

	if (given(&p->tolerance)) {
		pattern_measures(a, e, p, NULL, out);
		return;
	}
	if (given(&p->thickness))
		limit_size_set(&z, SIZE_T, p->thickness.lo);
	if (tolerance_of(x, brake ? STR("flange") : STR("finished size"), &z, &t))
		pattern_measures(a, e, p, &t.q, out);
	for (uint32_t i = 0; brake && i < p->nbends; i++)
		add_by_set(a, e, out, x, STR("bend angle"), p->nbends == 1 ?
		    word(l, "Bend angle, each bend") : word_format(a, l, "Bend %u", i + 1),
		    &p->bends[i], z);
}

static void add_plate_measures(struct arena *a, const struct edition *e,
    struct measures *out, const struct plate_block *p, const struct quantity *tol)
{
	const struct language *l = edition_language(e);
	unsigned holes = 0, slots = 0;

	add_toleranced(a, e, out, word(l, "Length"), &p->length, tol);
	add_toleranced(a, e, out, word(l, "Width"), &p->width, tol);
	for (size_t i = 0; i < p->nmarks; i++) {
		const struct plate_mark *k = &p->marks[i];

		slots += k->kind == MARK_SLOT;
		for (size_t n = 0; k->kind == MARK_SLOT && n < SLOT_SIZES; n++)
			add_toleranced(a, e, out, slot_feature(a, e, slots, n), &k->v[n], tol);
		if (k->kind != MARK_HOLE)
			continue;
		holes++;
		add_toleranced(a, e, out, word_format(a, l, "Hole %u from left", holes), &k->v[0], tol);
		add_toleranced(a, e, out, word_format(a, l, "Hole %u from bottom", holes), &k->v[1], tol);
	}
}

/* The tolerance of a line such as "Leg size: 1/4 x 3/8 in, +1/16 -0 in". */
static bool find_leg_tolerance(const struct assignment *x, struct quantity *tol)
{
	for (size_t i = 0; i < x->ncriteria; i++) {
		struct sized s = read_sized(x->criteria[i].text);

		if (!str_starts_nocase(x->criteria[i].name, STR("leg")) || given(&s.value) ||
		    !given(&s.tolerance) || s.tolerance.kind != QUANTITY_LENGTH)
			continue;
		*tol = s.tolerance;
		return true;
	}
	return false;
}

/* One row for both legs, or one each by where they lie. */
static void add_legs(struct arena *a, const struct edition *e, struct measures *out,
    const struct assignment *x, const struct joint_block *j, str tail, struct limit_sizes z)
{
	static const str where[JOINT_COUNT][2] = {
		[JOINT_TEE] = { WORD("up the web"), WORD("along the base") },
		[JOINT_LAP] = { WORD("at the edge"), WORD("on the other plate") },
	};
	static const str other[2] = { WORD("on the first member"), WORD("on the second member") };
	const struct quantity *legs[] = { &j->leg, &j->leg2 };
	const struct language *l = edition_language(e);
	struct quantity tol;
	bool own = find_leg_tolerance(x, &tol);

	if (!given(&j->leg2)) {
		add_leg(a, e, out, str_format(a, "%.*s%.*s", STR_ARG(word(l, "Fillet leg")),
		    STR_ARG(tail)), &j->leg, x, z);
		return;
	}
	for (size_t i = 0; i < 2; i++) {
		str at = j->joint < JOINT_COUNT && where[j->joint][i].n ? where[j->joint][i]
		                                                        : other[i];

		add_leg(a, e, out, word_format(a, l, "Fillet leg %.*s%.*s",
		    STR_ARG(word_str(l, at)), STR_ARG(tail)), legs[i], x, z);
		if (!own)
			continue;
		out->v[out->n - 1].low = mm_text(a, e, legs[i]->lo - tol.minus, 25.4 / 32);
		out->v[out->n - 1].high = mm_text(a, e, legs[i]->hi + tol.plus, 25.4 / 32);
	}
}

/* A size of a joint: by its own ends, else by the set, else with blank ends. */
static void add_drawn(struct arena *a, const struct edition *e, struct measures *out,
    const struct assignment *x, str word, str feature, str tool,
    const struct quantity *q, struct limit_sizes z)
{
	struct tolerance t;

	if (given(q) && !q->range && !q->tolerance && tolerance_of(x, word, &z, &t) &&
	    t.q.kind == q->kind)
		add_by_set(a, e, out, x, word, feature, q, z);
	else
		add_sized(a, e, out, feature, tool, q);
}

static void add_joint_measures(struct arena *a, const struct edition *e,
    struct measures *out, const struct assignment *x, const struct joint_block *j)
{
	bool groove = !weld_is_fillet(j->joint) || j->joint == JOINT_BRANCH;
	const struct { str feature, criterion, tool; const struct quantity *q; } rows[] = {
		{ groove ? WORD("Root opening") : WORD("Fit-up gap"),
		    groove ? STR("root") : STR("gap"), WORD("taper gauge"), &j->gap },
		{ WORD("Land"), STR("land"), WORD("rule"), &j->land },
		{ WORD("Included angle"), STR("angle"), WORD("bevel gauge"), &j->angle },
		{ WORD("Bevel"), STR("bevel"), WORD("bevel gauge"), &j->bevel },
	};
	size_t weld = j->weld == NONE ? 0 : j->weld;
	char letter = j->weld == NONE ? 0 : x->welds[j->weld].letter;
	const struct language *l = edition_language(e);
	str tail = letter ? word_format(a, l, ", weld %c", letter) : (str){ 0 };
	struct limit_sizes z = { 0 };

	if (weld < x->nwelds)
		z = weld_sizes(x, weld);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (!has_measured(x, rows[i].criterion))
			add_drawn(a, e, out, x, rows[i].feature, str_format(a, "%.*s%.*s",
			    STR_ARG(word_str(l, rows[i].feature)), STR_ARG(tail)),
			    word_str(l, rows[i].tool), rows[i].q, z);
	if (!has_measured(x, STR("leg")))
		add_legs(a, e, out, x, j, tail, z);
	if (j->joint == JOINT_LAP && !has_measured(x, STR("overlap")))
		add_drawn(a, e, out, x, STR("overlap"), str_format(a, "%.*s%.*s",
		    STR_ARG(word(l, "Overlap")), STR_ARG(tail)), word(l, "rule"), &j->overlap, z);
}

struct measures measures_of(struct arena *a, const struct edition *e,
    const struct assignment *x)
{
	struct measures out = { 0 };
	struct quantity tol;
	bool dimensional = find_tolerance(x, &tol);

	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct drawing *d = &x->drawings[i];

		if (d->kind == DRAWING_JOINT)
			add_joint_measures(a, e, &out, x, &d->joint);
		else if (d->kind == DRAWING_PATTERN && dimensional)
			pattern_measures(a, e, d->pattern, &tol, &out);
		else if (d->kind == DRAWING_PATTERN)
			add_pattern_by_set(a, e, &out, x, d->pattern);
		else if (dimensional)
			add_plate_measures(a, e, &out, &d->plate, &tol);
		else
			add_plate_by_set(a, e, &out, x, &d->plate);
	}
	for (size_t i = 0; i < x->ncriteria; i++)
		if (is_measured(&x->criteria[i]))
			add_criterion(a, e, &out, &x->criteria[i]);
	return out;
}
