/* What an assignment is, in the terms of the rules about order. */
#include "check/rule_trade.h"

#include "model/pattern_block.h"
#include "model/words.h"

static const struct { enum process process; enum craft craft; } crafts[] = {
	{ PROCESS_SMAW, CRAFT_STICK }, { PROCESS_GMAW, CRAFT_SOLID_WIRE },
	{ PROCESS_GMAW_S, CRAFT_SOLID_WIRE }, { PROCESS_FCAW_G, CRAFT_CORED_WIRE },
	{ PROCESS_FCAW_S, CRAFT_CORED_WIRE }, { PROCESS_GTAW, CRAFT_TUNGSTEN },
	{ PROCESS_OFC, CRAFT_GAS_CUT }, { PROCESS_OFW, CRAFT_GAS_WELD },
	{ PROCESS_PAC, CRAFT_PLASMA_CUT }, { PROCESS_CAC_A, CRAFT_GOUGE },
	{ PROCESS_TB, CRAFT_BRAZE }, { PROCESS_TS, CRAFT_BRAZE },
};
_Static_assert(sizeof crafts / sizeof *crafts == PROCESS_COUNT, "a craft a process");

enum craft craft_of(enum process p)
{
	for (size_t i = 0; i < PROCESS_COUNT; i++)
		if (crafts[i].process == p)
			return crafts[i].craft;
	return CRAFT_COUNT;
}

const char *craft_word(enum craft c)
{
	static const char *const words[] = { "stick welding", "solid wire", "cored wire",
		"tungsten arc", "oxy-fuel welding", "brazing", "oxy-fuel cutting",
		"plasma cutting", "gouging", "welding" };

	_Static_assert(sizeof words / sizeof *words == CRAFT_COUNT + 1, "one a craft");
	return words[c];
}

static bool draws_backing(const struct assignment *a)
{
	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_JOINT &&
		    a->drawings[i].joint.backing_t.kind != QUANTITY_ANY)
			return true;
	return false;
}

/* Drawn, or cut as a piece. */
static bool shows_backing(const struct assignment *a)
{
	for (size_t i = 0; i < a->npieces; i++)
		if (says(a->pieces[i].name, "backing"))
			return true;
	return draws_backing(a);
}

enum root root_of(const struct assignment *a)
{
	static const char *const gouged[] = { "back-gouge", "back gouge", "backgouge",
		NULL };
	const struct plain_fact *f = assignment_fact(a, STR("Backing"));
	bool none = f && words_same(f->text, STR("none"));

	if (f && f->text.n && !none)
		return says_any(f->text, gouged) ? ROOT_GOUGED : ROOT_BACKED;
	/* Said and denied is a finding of its own, and tells nothing. */
	if (none)
		return shows_backing(a) ? ROOT_UNTOLD : ROOT_OPEN;
	return draws_backing(a) ? ROOT_BACKED : ROOT_UNTOLD;
}

static const struct { const char *start; enum shop_test test; } tests[] = {
	{ "fillet break", SHOP_FILLET_BREAK }, { "nick break", SHOP_NICK_BREAK },
	{ "macro", SHOP_MACRO }, { "macroetch", SHOP_MACRO },
	{ "face bend", SHOP_FACE_BEND }, { "root bend", SHOP_ROOT_BEND },
	{ "side bend", SHOP_SIDE_BEND }, { "tensile", SHOP_TENSILE },
};

/* The name up to the letters of welds: "Fillet break A". */
static bool begins(str name, const char *start)
{
	str want = str_of(start);

	return name.n >= want.n && (name.n == want.n || name.p[want.n] == ' ') &&
	    words_same(str_sub(name, 0, want.n), want);
}

uint32_t shop_tests_of(const struct assignment *a)
{
	uint32_t bits = 0;

	for (size_t i = 0; i < a->ncriteria; i++)
		for (size_t k = 0; k < sizeof tests / sizeof *tests; k++)
			if (begins(a->criteria[i].name, tests[k].start))
				bits |= UINT32_C(1) << tests[k].test;
	return bits;
}

const char *shop_test_word(enum shop_test t)
{
	static const char *const words[] = { "fillet break", "nick-break", "macroetch",
		"face bend", "root bend", "side bend", "tensile test" };

	_Static_assert(sizeof words / sizeof *words == SHOP_TESTS, "one a test");
	return words[t];
}

uint32_t layouts_of(const struct assignment *a)
{
	static const uint32_t of[SHAPE_COUNT + 1] = {
		[SHAPE_BRAKE] = UINT32_C(1) << LAYOUT_ALLOWANCE,
		[SHAPE_ELBOW] = UINT32_C(1) << LAYOUT_PARALLEL,
		[SHAPE_SADDLE] = UINT32_C(1) << LAYOUT_PARALLEL,
		[SHAPE_CONE] = UINT32_C(1) << LAYOUT_RADIAL,
		[SHAPE_SQUARE] = UINT32_C(1) << LAYOUT_TRIANGLES,
	};
	uint32_t bits = 0;

	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_PATTERN && a->drawings[i].pattern)
			bits |= of[a->drawings[i].pattern->shape];
	return bits;
}

const char *layout_word(enum layout l)
{
	static const char *const words[] = { "bend allowance", "parallel lines",
		"radial lines", "triangulation" };

	_Static_assert(sizeof words / sizeof *words == LAYOUTS, "one a layout");
	return words[l];
}

bool acceptance_says(const struct assignment *a, const char *const *words)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (says_any(a->criteria[i].name, words) ||
		    says_any(a->criteria[i].text, words))
			return true;
	return false;
}

/* "±1/16 in" or "+1/8 -0 in". */
static bool has_tolerance(str s)
{
	size_t plus = str_find_char(s, '+', 0);

	return str_find(s, STR("\xC2\xB1"), 0) < s.n ||
	    str_find(s, STR("+/-"), 0) < s.n ||
	    (plus + 1 < s.n && s.p[plus + 1] >= '0' && s.p[plus + 1] <= '9');
}

bool acceptance_measures(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (has_tolerance(a->criteria[i].text))
			return true;
	return false;
}

bool fact_is(const struct assignment *a, const char *key, const char *text)
{
	const struct plain_fact *f = assignment_fact(a, str_of(key));

	return f && words_same(f->text, str_of(text));
}

bool is_shop_work(const struct assignment *a)
{
	return a->kind != KIND_WRITTEN && a->kind != KIND_SAFETY;
}

bool is_final_work(const struct assignment *a)
{
	return a->kind == KIND_PRACTICE_TEST || a->kind == KIND_QUALIFICATION_TEST ||
	    a->kind == KIND_PROJECT;
}

bool weld_joins(const struct weld *w)
{
	return w->joint != JOINT_SURFACING && w->joint != JOINT_U_GROOVE &&
	    w->joint < JOINT_COUNT && !joint_is_cut(w->joint);
}

uint32_t put_bits(uint32_t bits, uint32_t *v)
{
	uint32_t n = 0;

	for (uint32_t k = 0; bits; bits >>= 1, k++)
		if (bits & 1)
			v[n++] = k;
	return n;
}
