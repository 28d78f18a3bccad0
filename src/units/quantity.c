#include "units/quantity.h"

#include "units/reading.h"

/* A number takes the unit after it, or the next one written; a tolerance may take
 * that of its value; last comes the unit at the end of a list. */
static void share_units(struct reading *q, const struct unit *serve)
{
	struct amount *in_order[] = { &q->lo, &q->hi, &q->plus, &q->minus };
	const struct unit *later = serve;

	if (q->hi.unit && !q->no_value && !q->plus.unit)
		q->plus.unit = q->hi.unit;
	if (q->hi.unit && !q->no_value && !q->minus.unit)
		q->minus.unit = q->hi.unit;
	for (size_t i = 4; i-- > 0;) {
		if (!in_order[i]->unit)
			in_order[i]->unit = later;
		else
			later = in_order[i]->unit;
	}
	if (!q->minus.unit)
		q->minus.unit = q->plus.unit;
}

static double base_value(const struct amount *a, bool is_difference)
{
	double num = (double)a->n.num * a->unit->mul;
	double den = (double)a->n.den * a->unit->div;

	if (a->negative)
		num = -num;
	if (!is_difference)
		num += a->unit->add * den;
	return num / den;
}

static bool gauge_value(struct reader *r, const struct amount *a, unsigned *gauge,
    double *mm)
{
	double in;

	if (a->n.den != 1 || a->n.decimal)
		return reader_fail(r, QUANTITY_BAD, a->at, "a gauge is a whole number");
	if (r->metal == METAL_NONE)
		return reader_fail(r, QUANTITY_NO_METAL, a->at,
		    "a gauge needs a material");
	*gauge = (unsigned)a->n.num;
	in = gauge_thickness_in(r->metal, *gauge);
	if (in <= 0)
		return reader_fail(r, QUANTITY_BAD, a->at,
		    "the gauge table of this metal has no such gauge");
	/* The table gives ten-thousandths, so this is exact but for the division. */
	*mm = (double)(uint64_t)(in * 1e4 + 0.5) * 254 / 1e5;
	return true;
}

static bool convert(struct reader *r, const struct amount *a, unsigned *gauge,
    double *value)
{
	if (a->unit->form == FORM_GAUGE)
		return gauge_value(r, a, gauge, value);
	if (a->negative && a->unit->kind != QUANTITY_TEMPERATURE)
		return reader_fail(r, QUANTITY_BAD, a->at, "less than nothing");
	*value = base_value(a, false);
	return true;
}

static unsigned common_denominator(unsigned a, unsigned b)
{
	unsigned x = a, y = b;

	while (y) {
		unsigned rest = x % y;

		x = y;
		y = rest;
	}
	return a / x * b <= 10000 ? a / x * b : (a > b ? a : b);
}

static void note_form(const struct amount *a, struct quantity *out)
{
	out->denominator = common_denominator(out->denominator ? out->denominator : 1,
	    a->n.denominator);
	if (a->n.decimals > out->decimals)
		out->decimals = a->n.decimals;
	if (a->n.decimal && out->form == FORM_FRACTION)
		out->form = FORM_DECIMAL;
}

static bool convert_tolerance(struct reader *r, const struct reading *q,
    struct quantity *out)
{
	const struct amount *sides[] = { &q->plus, &q->minus };

	for (size_t i = 0; i < 2; i++) {
		if (sides[i]->unit->form == FORM_GAUGE)
			return reader_fail(r, QUANTITY_BAD, sides[i]->at,
			    "a tolerance has no gauge");
		if (out->form != FORM_GAUGE && out->form != FORM_METRIC)
			note_form(sides[i], out);
	}
	out->tolerance = true;
	out->plus = base_value(&q->plus, true);
	out->minus = base_value(&q->minus, true);
	return true;
}

/* Bare counts carry a unit that is never printed. */
static const struct unit *owed_unit(const struct reader *r, const struct unit *serve)
{
	return serve || r->want != QUANTITY_COUNT ? serve : unit_usual(QUANTITY_COUNT);
}

static bool check_units(struct reader *r, const struct reading *q)
{
	const struct amount *v[] = { &q->lo, &q->hi, &q->plus, &q->minus };
	size_t from = q->no_value ? 2 : 0, to = q->tolerance ? 4 : 2;

	for (size_t i = from; i < to; i++) {
		if (!v[i]->unit)
			return reader_fail_unit(r, QUANTITY_NO_UNIT, v[i]->at,
			    "a number needs its unit", (str){ 0 });
		if (v[i]->unit->kind != v[from]->unit->kind)
			return reader_fail(r, QUANTITY_UNKNOWN_UNIT, v[i]->unit_at,
			    "these units measure different things");
	}
	return true;
}

static void set_range(const struct reading *q, struct quantity *out)
{
	double lo = out->lo;
	unsigned gauge = out->gauge_lo;

	out->range = q->range;
	/* Gauges count down as sheets grow thicker: 11 to 16 ga is lo at 16. */
	if (out->form != FORM_GAUGE || out->lo <= out->hi)
		return;
	out->lo = out->hi;
	out->hi = lo;
	out->gauge_lo = out->gauge_hi;
	out->gauge_hi = gauge;
}

static bool resolve_value(struct reader *r, const struct reading *q,
    struct quantity *out)
{
	if (!convert(r, &q->lo, &out->gauge_lo, &out->lo) ||
	    !convert(r, &q->hi, &out->gauge_hi, &out->hi))
		return false;
	note_form(&q->lo, out);
	note_form(&q->hi, out);
	set_range(q, out);
	if (out->hi < out->lo)
		return reader_fail(r, QUANTITY_BAD, q->hi.at, "the range runs backward");
	if (out->form == FORM_GAUGE)
		out->metal = r->metal;
	return true;
}

static bool resolve_pipe(struct reader *r, const struct reading *q,
    struct quantity *out)
{
	double in = r->want == QUANTITY_LENGTH ? q->pipe->wall_in : q->pipe->od_in;

	out->kind = r->want == QUANTITY_LENGTH ? QUANTITY_LENGTH : QUANTITY_PIPE;
	out->form = FORM_PIPE;
	out->pipe = q->pipe;
	out->scheduled = q->scheduled;
	out->denominator = 1;
	out->unit = "in";
	/* The table gives thousandths, so this is exact but for the division. */
	out->lo = out->hi = (double)(uint64_t)(in * 1e3 + 0.5) * 254 / 1e4;
	return true;
}

static bool resolve(struct reader *r, struct reading q, const struct unit *serve,
    struct quantity *out)
{
	const struct amount *first = q.no_value ? &q.plus : &q.lo;
	bool ok;

	*out = (struct quantity){ 0 };
	if (q.pipe)
		return resolve_pipe(r, &q, out);
	if (r->want == QUANTITY_PIPE)
		return reader_fail(r, QUANTITY_BAD, q.at, "a pipe size begins with NPS");
	share_units(&q, owed_unit(r, serve));
	ok = check_units(r, &q);
	if (ok) {
		out->kind = first->unit->kind;
		out->form = first->unit->form;
		out->unit = first->unit->print;
		out->no_value = q.no_value;
		ok = q.no_value || resolve_value(r, &q, out);
	}
	if (ok && q.tolerance)
		ok = convert_tolerance(r, &q, out);
	if (!ok)
		*out = (struct quantity){ 0 };
	return ok;
}

/* All of the text must be used, but for blanks. */
static bool check_end(struct reader *r)
{
	size_t at = scan_skip_blanks(r->s, r->at);

	return at == r->s.n ||
	    reader_fail(r, QUANTITY_BAD, at, "this does not belong to the quantity");
}

static struct reader begin(str s, enum quantity_kind want, enum sheet_metal metal,
    struct quantity_fault *fault)
{
	*fault = (struct quantity_fault){ .reason = "" };
	return (struct reader){ .s = s, .want = want, .metal = metal, .fault = fault };
}

enum quantity_result quantity_parse(str s, enum quantity_kind want,
    enum sheet_metal metal, struct quantity *out, struct quantity_fault *fault)
{
	struct reader r = begin(s, want, metal, fault);
	struct reading q;

	*out = (struct quantity){ 0 };
	if (reader_read(&r, &q) && check_end(&r))
		(void)resolve(&r, q, NULL, out);
	return fault->result;
}

enum quantity_result quantity_prefix(str s, enum quantity_kind want,
    enum sheet_metal metal, struct quantity *out, size_t *used,
    struct quantity_fault *fault)
{
	struct reader r = begin(s, want, metal, fault);
	struct reading q;

	*out = (struct quantity){ 0 };
	*used = 0;
	if (reader_read(&r, &q) && resolve(&r, q, NULL, out))
		*used = q.end;
	return fault->result;
}

enum { READINGS_FEW = 4 };

/* Most lists are short: those leave nothing in the arena. */
struct readings {
	struct reading *v;
	size_t n, cap;
	struct reading few[READINGS_FEW];
};

/* The joint before the next item of a list or product, or 0 when none follows. */
static size_t item_joint(const struct reader *r)
{
	size_t at = scan_skip_blanks(r->s, r->at);
	struct glyph g = scan_glyph(r->s, at);
	str word = reader_word(r, at);

	if (r->product && (g.c == 'x' || g.c == 'X') && word.n <= 1)
		return at + g.n;
	if (r->product)
		return str_eq_nocase(word, STR("by")) ? at + 2 : 0;
	if (g.c == ',' || g.c == ';')
		at = scan_skip_blanks(r->s, at + 1);
	word = reader_word(r, at);
	if (str_eq_nocase(word, STR("and")) || str_eq_nocase(word, STR("or")))
		at += word.n;
	return at > scan_skip_blanks(r->s, r->at) ? at : 0;
}

/* out is zero. */
static bool read_items(struct reader *r, struct arena *a, struct readings *out)
{
	out->v = out->few;
	out->cap = READINGS_FEW;
	for (;;) {
		struct reading *q = ARENA_PUSH(a, out->v, out->n, out->cap);
		size_t joint;

		if (!reader_read(r, q))
			return false;
		joint = item_joint(r);
		if (!joint)
			return true;
		r->at = joint;
	}
}

/* The unit written last, which serves the items that have none. In a product a gauge
 * serves nobody: 3 x 8 x 11 ga does not mean 3 ga. */
static const struct unit *serving(const struct readings *q, bool product)
{
	const struct reading *last = &q->v[q->n - 1];
	const struct unit *u = last->hi.unit;

	if (last->tolerance && last->minus.unit)
		u = last->minus.unit;
	return product && u && u->form == FORM_GAUGE ? NULL : u;
}

static bool resolve_items(struct reader *r, struct arena *a, const struct readings *q,
    struct quantity_list *out)
{
	const struct unit *serve = serving(q, r->product);

	out->v = arena_array(a, q->n, sizeof *out->v);
	for (size_t i = 0; i < q->n; i++) {
		enum quantity_kind want = r->want;
		bool ok;

		/* A pipe in a product keeps its outside diameter and its wall. */
		if (r->product && q->v[i].pipe)
			r->want = QUANTITY_PIPE;
		ok = resolve(r, q->v[i], serve, &out->v[i]);
		r->want = want;
		if (!ok)
			return false;
	}
	out->n = q->n;
	return true;
}

enum quantity_result quantity_list_parse(struct arena *a, str s,
    enum quantity_kind want, enum sheet_metal metal, struct quantity_list *out,
    struct quantity_fault *fault)
{
	struct reader r = begin(s, want, metal, fault);
	struct readings q = { 0 };

	*out = (struct quantity_list){ 0 };
	if (read_items(&r, a, &q) && check_end(&r))
		(void)resolve_items(&r, a, &q, out);
	return fault->result;
}

enum quantity_result quantity_product_parse(struct arena *a, str s,
    enum sheet_metal metal, struct quantity_list *out, size_t *used,
    struct quantity_fault *fault)
{
	struct reader r = begin(s, QUANTITY_LENGTH, metal, fault);
	struct readings q = { 0 };

	r.product = true;
	*out = (struct quantity_list){ 0 };
	if (used)
		*used = 0;
	if (read_items(&r, a, &q) && (used || check_end(&r)) &&
	    resolve_items(&r, a, &q, out) && used)
		*used = r.at;
	return fault->result;
}
