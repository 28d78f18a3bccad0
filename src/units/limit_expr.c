#include "units/limit_op.h"

#include "base/buf.h"
#include "base/finding.h"
#include "units/scan.h"
#include "units/unit.h"

enum { PENDING_MOST = 32 };

/* Higher binds tighter. */
static const int ranks[] = {
	[OP_TIMES] = 5, [OP_OVER] = 5, [OP_PLUS] = 4, [OP_MINUS] = 4, [OP_LESS] = 3,
	[OP_AT_MOST] = 3, [OP_MORE] = 3, [OP_AT_LEAST] = 3, [OP_EQUAL] = 3, [OP_AND] = 2,
	[OP_OR] = 1, [OP_OPEN] = 0,
};

static const struct { str first, second; enum limit_kind kind; } names[SIZES] = {
	[SIZE_T] = { { "t", 1 }, { 0 }, LIMIT_LENGTH },
	[SIZE_LEG] = { { "leg", 3 }, { 0 }, LIMIT_LENGTH },
	[SIZE_THROAT] = { { "throat", 6 }, { 0 }, LIMIT_LENGTH },
	[SIZE_WIDTH] = { { "width", 5 }, { 0 }, LIMIT_LENGTH },
	[SIZE_ROOT_OPENING] = { { "root", 4 }, { "opening", 7 }, LIMIT_LENGTH },
	[SIZE_ROOT_WIDTH] = { { "root", 4 }, { "width", 5 }, LIMIT_LENGTH },
	[SIZE_LENGTH] = { { "length", 6 }, { 0 }, LIMIT_LENGTH },
	[SIZE_DIAMETER] = { { "diameter", 8 }, { 0 }, LIMIT_LENGTH },
	[SIZE_BASE_STRENGTH] = { { "base", 4 }, { "strength", 8 }, LIMIT_STRENGTH },
	[SIZE_OPEN_ROOT] = { { "open", 4 }, { "root", 4 }, LIMIT_TRUTH },
	[SIZE_FLAME_CUT] = { { "flame", 5 }, { "cut", 3 }, LIMIT_TRUTH },
	[SIZE_COLD_CUT] = { { "cold", 4 }, { "cut", 3 }, LIMIT_TRUTH },
};

static const str whole_names[SIZES] = {
	{ "t", 1 }, { "leg", 3 }, { "throat", 6 }, { "width", 5 }, { "root opening", 12 },
	{ "root width", 10 }, { "length", 6 }, { "diameter", 8 }, { "base strength", 13 },
	{ "open root", 9 }, { "flame cut", 9 }, { "cold cut", 8 },
};

/* What a welder may write for them, by the words whose place they take. */
static const struct { str said; enum limit_name meant; } others[] = {
	{ { "thickness", 9 }, SIZE_T }, { { "size", 4 }, SIZE_LEG },
	{ { "a", 1 }, SIZE_THROAT }, { { "z", 1 }, SIZE_LEG }, { { "b", 1 }, SIZE_WIDTH },
	{ { "s", 1 }, SIZE_T }, { { "d", 1 }, SIZE_DIAMETER }, { { "gap", 3 },
	SIZE_ROOT_OPENING }, { { "root", 4 }, SIZE_ROOT_OPENING }, { { "dia", 3 },
	SIZE_DIAMETER }, { { "tensile", 7 }, SIZE_BASE_STRENGTH }, { { "uts", 3 },
	SIZE_BASE_STRENGTH },
};

static const char *const kind_words[LIMIT_KINDS] = {
	"a bare number", "a length", "an angle", "a percentage", "a strength",
	"a condition",
};

str limit_name_word(enum limit_name n)
{
	return whole_names[n];
}

enum limit_kind limit_name_kind(enum limit_name n)
{
	return names[n].kind;
}

/* An operator that waits for its right side, or an open bracket. */
struct pending {
	enum op op;
	enum op call;            /* OP_OPEN: OP_MIN, OP_MAX, or OP_OPEN for a plain one */
	unsigned count;          /* values of a call so far */
	bool chained;            /* the comparison before it left its right side */
	size_t at;
};

struct operand { enum limit_kind kind; size_t at; };

struct parser {
	struct arena *arena;
	str s;
	size_t at;
	struct limit_fault *fault;
	struct limit_op ops[OPS_MOST];
	size_t nops;
	struct operand stack[OPS_MOST]; /* kinds of what has been worked out so far */
	size_t nstack;
	struct pending pending[PENDING_MOST];
	size_t npending;
	bool bare;               /* the operand before is a number without a unit */
	unsigned names;
	const char *unit;
};

static bool fail(struct parser *p, size_t at, const char *reason)
{
	*p->fault = (struct limit_fault){ at < p->s.n ? at : p->s.n, reason, { 0 } };
	return false;
}

/* ---- giving out ---- */

static bool add_op(struct parser *p, struct limit_op op, size_t at)
{
	if (p->nops == OPS_MOST)
		return fail(p, at, "this is too long for a limit");
	p->ops[p->nops++] = op;
	return true;
}

static bool add_operand(struct parser *p, struct limit_op op, enum limit_kind kind,
    size_t at)
{
	if (!add_op(p, op, at))
		return false;
	p->stack[p->nstack++] = (struct operand){ kind, at };
	return true;
}

static bool refuse_pair(struct parser *p, size_t at, struct operand x, struct operand y,
    const char *verb)
{
	struct buf b = { .arena = p->arena };

	buf_addf(&b, "%s and %s cannot be %s", kind_words[x.kind], kind_words[y.kind],
	    verb);
	return fail(p, at, buf_z(&b));
}

static bool is_size(struct operand x)
{
	return x.kind != LIMIT_TRUTH;
}

/* The kind of `x op y`, or a fault at the operator. */
static bool kind_of_pair(struct parser *p, const struct pending *o, struct operand x,
    struct operand y, enum limit_kind *out)
{
	bool alike = x.kind == y.kind, sizes = is_size(x) && is_size(y);

	*out = x.kind;
	switch (o->op) {
	case OP_TIMES:
		*out = x.kind == LIMIT_NUMBER ? y.kind : x.kind;
		return (sizes && (x.kind == LIMIT_NUMBER || y.kind == LIMIT_NUMBER)) ||
		    refuse_pair(p, o->at, x, y, "multiplied");
	case OP_OVER:
		*out = y.kind == LIMIT_NUMBER ? x.kind : LIMIT_NUMBER;
		return (sizes && (alike || y.kind == LIMIT_NUMBER)) ||
		    refuse_pair(p, o->at, x, y, "divided");
	case OP_PLUS:
		return (sizes && alike) || refuse_pair(p, o->at, x, y, "added");
	case OP_MINUS:
		return (sizes && alike) || refuse_pair(p, o->at, x, y, "subtracted");
	case OP_AND:
	case OP_OR:
		return (alike && !is_size(x)) ||
		    refuse_pair(p, o->at, x, y, "joined by and, or");
	default:
		*out = LIMIT_TRUTH;
		return (sizes && alike) || refuse_pair(p, o->at, x, y, "compared");
	}
}

/* Gives out the operator that waits last. keep: its right side is compared again. */
static bool settle(struct parser *p, bool keep)
{
	struct pending o = p->pending[--p->npending];
	struct operand y = p->stack[p->nstack - 1], x = p->stack[p->nstack - 2];
	enum limit_kind kind;

	if (!kind_of_pair(p, &o, x, y, &kind) ||
	    !add_op(p, (struct limit_op){ .op = o.op, .keep = keep, .at = o.at }, o.at))
		return false;
	p->nstack -= 2;
	p->stack[p->nstack++] = (struct operand){ kind, x.at };
	if (o.chained) {
		if (!add_op(p, (struct limit_op){ .op = OP_AND }, o.at))
			return false;
		p->nstack--;
	}
	if (keep)
		p->stack[p->nstack++] = y;
	return true;
}

static bool settle_down_to(struct parser *p, int rank)
{
	while (p->npending && ranks[p->pending[p->npending - 1].op] >= rank)
		if (!settle(p, false))
			return false;
	return true;
}

static bool push_pending(struct parser *p, struct pending o)
{
	if (p->npending == PENDING_MOST)
		return fail(p, o.at, "brackets are nested too deeply");
	p->pending[p->npending++] = o;
	return true;
}

/* A comparison right after another one shares the value between them: a < b <= c. */
static bool push_operator(struct parser *p, enum op op, size_t at)
{
	int rank = ranks[op];
	bool chained = false;

	if (!settle_down_to(p, rank + 1))
		return false;
	if (rank == ranks[OP_LESS] && p->npending &&
	    ranks[p->pending[p->npending - 1].op] == rank) {
		if (p->pending[p->npending - 1].chained)
			return fail(p, at, "a value is compared on two sides at most");
		chained = true;
		if (!settle(p, true))
			return false;
	} else if (!settle_down_to(p, rank)) {
		return false;
	}
	return push_pending(p, (struct pending){ .op = op, .chained = chained,
	    .at = at });
}

/* ---- operands ---- */

static size_t word_end(str s, size_t at)
{
	while (at < s.n && scan_is_letter((unsigned char)s.p[at]))
		at++;
	return at;
}

static enum limit_kind kind_of_unit(const struct unit *u)
{
	switch (u->kind) {
	case QUANTITY_LENGTH:
		return LIMIT_LENGTH;
	case QUANTITY_ANGLE:
		return LIMIT_ANGLE;
	case QUANTITY_PERCENT:
		return LIMIT_PERCENT;
	case QUANTITY_PRESSURE:
		return LIMIT_STRENGTH;
	default:
		return LIMIT_TRUTH; /* None that a limit has. */
	}
}

/* The unit after a number, or null. "0.5 min(" is no minutes. */
static const struct unit *read_unit(const struct parser *p, size_t *end)
{
	size_t start;
	const struct unit *u = unit_read(p->s, p->at, &start, end);

	if (!u || scan_glyph(p->s, scan_skip_blanks(p->s, *end)).c == '(')
		return NULL;
	return scan_glyph(p->s, p->at).c == '-' ? NULL : u;
}

static bool read_number_operand(struct parser *p)
{
	size_t at = p->at, end;
	struct number n;
	const char *reason;
	const struct unit *u;
	enum limit_kind kind = LIMIT_NUMBER;
	double value;

	if (!scan_number(p->s, &p->at, &n, &reason))
		return fail(p, p->at, reason);
	u = read_unit(p, &end);
	value = (double)n.num / (double)n.den;
	if (u) {
		kind = kind_of_unit(u);
		if (kind == LIMIT_TRUTH || u->form == FORM_GAUGE)
			return fail(p, scan_skip_blanks(p->s, p->at),
			    "a limit is a length, an angle, a percentage, a strength or "
			    "a number");
		value = (double)n.num * u->mul / ((double)n.den * u->div);
		p->unit = p->unit ? p->unit : u->print;
		p->at = end;
	}
	p->bare = !u;
	return add_operand(p, (struct limit_op){ .op = OP_NUMBER, .value = value },
	    kind, at);
}

static bool open_bracket(struct parser *p, enum op call, size_t at)
{
	p->at = scan_skip_blanks(p->s, p->at);
	p->at += scan_glyph(p->s, p->at).n;
	return push_pending(p, (struct pending){ .op = OP_OPEN, .call = call, .count = 1,
	    .at = at });
}

/* A word that is no name: tells the names and the one most likely meant. */
static bool fail_name(struct parser *p, size_t at, size_t end)
{
	struct buf b = { .arena = p->arena };
	str word = str_sub(p->s, at, end);

	buf_addf(&b, "\"%.*s\" is no size; one is t, leg, throat, width, root opening, "
	    "root width, length, diameter or base strength, and a condition may say open "
	    "root, flame cut or cold cut", STR_ARG(word));
	fail(p, at, buf_z(&b));
	for (size_t i = 0; i < sizeof others / sizeof *others; i++)
		if (str_eq_nocase(word, others[i].said)) {
			p->fault->likely = whole_names[others[i].meant];
			return false;
		}
	p->fault->likely = likely_word(word, whole_names, SIZES);
	return false;
}

static bool read_name(struct parser *p)
{
	size_t at = p->at, end = word_end(p->s, at), next = scan_skip_blanks(p->s, end);
	str first = str_sub(p->s, at, end), second;

	p->at = end;
	if (scan_glyph(p->s, next).c == '(' && str_eq_nocase(first, STR("min")))
		return open_bracket(p, OP_MIN, at);
	if (scan_glyph(p->s, next).c == '(' && str_eq_nocase(first, STR("max")))
		return open_bracket(p, OP_MAX, at);
	second = str_sub(p->s, next, word_end(p->s, next));
	for (unsigned i = 0; i < SIZES; i++) {
		if (!str_eq_nocase(first, names[i].first) ||
		    (names[i].second.n && !str_eq_nocase(second, names[i].second)))
			continue;
		p->at = names[i].second.n ? next + second.n : end;
		p->names |= 1u << i;
		return add_operand(p, (struct limit_op){ .op = OP_NAME, .n = i },
		    names[i].kind, at);
	}
	return fail_name(p, at, end);
}

/* *more: an operand is still owed, since a bracket was opened. */
static bool read_operand(struct parser *p, bool *more)
{
	size_t open = p->npending;
	int c;

	p->at = scan_skip_blanks(p->s, p->at);
	c = scan_glyph(p->s, p->at).c;
	p->bare = false;
	if (scan_number_starts(p->s, p->at)) {
		if (!read_number_operand(p))
			return false;
	} else if (scan_is_letter(c)) {
		if (!read_name(p))
			return false;
	} else if (c == '(') {
		if (!open_bracket(p, OP_OPEN, p->at))
			return false;
	} else {
		return fail(p, p->at, c == GLYPH_END ? "something is missing at the end" :
		    "a number, a size or a bracket is owed here");
	}
	*more = p->npending > open;
	return true;
}

/* ---- operators ---- */

static bool close_bracket(struct parser *p, size_t at)
{
	struct pending o;

	if (!settle_down_to(p, 1))
		return false;
	if (!p->npending)
		return fail(p, at, "this bracket was not opened");
	o = p->pending[--p->npending];
	if (o.call == OP_OPEN)
		return true;
	if (o.count < 2)
		return fail(p, o.at, "min and max compare two values or more");
	for (size_t i = p->nstack - o.count; i < p->nstack; i++)
		if (p->stack[i].kind != p->stack[p->nstack - o.count].kind ||
		    !is_size(p->stack[i]))
			return refuse_pair(p, p->stack[i].at,
			    p->stack[p->nstack - o.count],
			    p->stack[i], "compared");
	p->nstack -= o.count - 1;
	return add_op(p, (struct limit_op){ .op = o.call, .n = o.count }, o.at);
}

static bool next_value(struct parser *p, size_t at)
{
	if (!settle_down_to(p, 1))
		return false;
	if (!p->npending || p->pending[p->npending - 1].call == OP_OPEN)
		return fail(p, at, "a comma has no meaning outside min( ) and max( )");
	p->pending[p->npending - 1].count++;
	return true;
}

static const struct sign { const char *text; enum op op; } signs[] = {
	{ "<=", OP_AT_MOST }, { ">=", OP_AT_LEAST }, { "<", OP_LESS }, { ">", OP_MORE },
	{ "\xE2\x89\xA4", OP_AT_MOST }, { "\xE2\x89\xA5", OP_AT_LEAST },
	{ "=", OP_EQUAL },
	{ "*", OP_TIMES }, { "\xC3\x97", OP_TIMES }, { "+", OP_PLUS }, { NULL, OP_OPEN },
};
static const struct sign word_signs[] = {
	{ "x", OP_TIMES }, { "and", OP_AND }, { "or", OP_OR }, { NULL, OP_OPEN },
};

/* Signs that look like ours; what is meant, or null. */
static const struct { const char *text, *meant; } strangers[] = {
	{ "==", "=" }, { "=>", ">=" }, { "=<", "<=" }, { "<>", NULL }, { "!=", NULL },
	{ "&&", "and" }, { "||", "or" }, { "\xC2\xB7", "x" }, { "\xC3\xB7", "/" },
	{ "**", NULL }, { "^", NULL },
};

static bool is_strange(struct parser *p)
{
	str rest = str_sub(p->s, p->at, p->s.n);

	for (size_t i = 0; i < sizeof strangers / sizeof *strangers; i++) {
		if (!str_starts(rest, str_of(strangers[i].text)))
			continue;
		fail(p, p->at, "this sign has no meaning here; signs are + - x / < <= > >= = "
		    "and or");
		if (strangers[i].meant)
			p->fault->likely = str_of(strangers[i].meant);
		return true;
	}
	return false;
}

/* The operator at p->at, which moves past it; OP_OPEN when there is none. */
static enum op read_sign(struct parser *p)
{
	str rest = str_sub(p->s, p->at, p->s.n);
	struct glyph g = scan_glyph(p->s, p->at);
	str word = str_sub(p->s, p->at, word_end(p->s, p->at));

	for (const struct sign *i = signs; i->text; i++)
		if (str_starts(rest, str_of(i->text))) {
			p->at += str_of(i->text).n;
			return i->op;
		}
	for (const struct sign *i = word_signs; i->text; i++)
		if (str_eq_nocase(word, str_of(i->text))) {
			p->at += word.n;
			return i->op;
		}
	if (g.c != '-' && g.c != '/')
		return OP_OPEN;
	p->at += g.n;
	return g.c == '-' ? OP_MINUS : OP_OVER;
}

/* What follows an operand. *more: an operand is owed after it. */
static bool read_operator(struct parser *p, bool *more)
{
	size_t at = p->at = scan_skip_blanks(p->s, p->at);
	struct glyph g = scan_glyph(p->s, at);
	enum op op;

	*more = false;
	if (g.c == ')') {
		p->at += g.n;
		p->bare = false;
		return close_bracket(p, at);
	}
	*more = true;
	if (g.c == ',') {
		p->at += g.n;
		return next_value(p, at);
	}
	if (is_strange(p))
		return false;
	op = read_sign(p);
	if (op == OP_OPEN && p->bare && (scan_is_letter(g.c) || g.c == '('))
		op = OP_TIMES;
	if (op == OP_OPEN)
		return fail(p, at, "an operator is owed here: + - x / < <= > >= = and "
		    "or");
	return push_operator(p, op, at);
}

static bool parse(struct parser *p)
{
	bool more = true;

	for (;;) {
		while (more)
			if (!read_operand(p, &more))
				return false;
		if (scan_skip_blanks(p->s, p->at) >= p->s.n)
			break;
		if (!read_operator(p, &more))
			return false;
	}
	if (!settle_down_to(p, 1))
		return false;
	return !p->npending || fail(p, p->pending[p->npending - 1].at,
	    "this bracket is not closed");
}

static bool parse_kind(struct arena *a, str s, struct limit_expr *out,
    struct limit_fault *fault, bool truth)
{
	struct parser whole, *p = &whole;
	struct limit_op *ops;

	/* The arrays are filled as they are used. */
	p->arena = a;
	p->s = s;
	p->at = p->nops = p->nstack = p->npending = 0;
	p->fault = fault;
	p->bare = false;
	p->names = 0;
	p->unit = NULL;
	*out = (struct limit_expr){ 0 };
	*fault = (struct limit_fault){ 0 };
	if (!parse(p))
		return false;
	if ((p->stack[0].kind == LIMIT_TRUTH) != truth)
		return fail(p, scan_skip_blanks(s, 0), truth ?
		    "a condition is owed here, such as t < 1 in" :
		    "a size is owed here, not a condition");
	ops = arena_array(a, p->nops, sizeof *ops);
	*out = (struct limit_expr){ ops, p->nops, p->stack[0].kind, p->names, p->unit,
		false };
	for (size_t i = 0; i < p->nops; i++) {
		ops[i] = p->ops[i];
		out->may_fail |= ops[i].op == OP_MINUS || ops[i].op == OP_OVER;
	}
	return true;
}

bool limit_expr_size(struct arena *a, str s, struct limit_expr *out,
    struct limit_fault *fault)
{
	return parse_kind(a, s, out, fault, false);
}

bool limit_expr_condition(struct arena *a, str s, struct limit_expr *out,
    struct limit_fault *fault)
{
	return parse_kind(a, s, out, fault, true);
}
