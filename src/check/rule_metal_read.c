/* Classes of filler, gases and settings as the sheet words them. */
#include "check/rule_metal.h"

#include "model/words.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* The byte at i in capitals, 0 past the end. */
static char at(str s, size_t i)
{
	char c = i < s.n ? s.p[i] : 0;

	return c >= 'a' && c <= 'z' ? (char)(c - 32) : c;
}

static int number_at(str s, size_t from, size_t n)
{
	int v = 0;

	for (size_t i = from; i < from + n; i++)
		v = v * 10 + (s.p[i] - '0');
	return v;
}

static size_t digits_at(str s, size_t from)
{
	size_t n = 0;

	while (from + n < s.n && is_digit(s.p[from + n]) && n < 6)
		n++;
	return n;
}

/* ER70S-6, ER308L, ER4043: three figures of a stainless begin with 2, 3, 4 or 5, four
 * figures are aluminum unless they are a duplex stainless (ER2209). */
static void read_bare(str s, size_t from, struct rod *r)
{
	size_t n = digits_at(s, from);

	if (n == 4) {
		int v = number_at(s, from, 4);

		r->metal = v >= 2200 && v < 2600 && v != 2319 ? ROD_STAINLESS
		    : ROD_ALUMINUM;
		r->sort = ROD_SOLID;
	} else if (n == 3 && at(s, from + n) != 'S' && at(s, from) < '6') {
		r->metal = ROD_STAINLESS;
		r->sort = ROD_SOLID;
	} else if ((n == 2 || n == 3) && (at(s, from + n) == 'S' ||
	    at(s, from + n) == 'C')) {
		r->sort = ROD_SOLID;
	}
}

/* Self-shielded usabilities of AWS A5.20; the rest but G want a gas. */
static enum rod_shield shield_of(int usability)
{
	static const int self[] = { 3, 4, 6, 7, 8, 10, 11, 13, 14 };

	if (usability < 0)
		return SHIELD_UNTOLD;
	for (size_t i = 0; i < sizeof self / sizeof *self; i++)
		if (self[i] == usability)
			return SHIELD_SELF;
	return SHIELD_GAS;
}

/* E71T-1C, E71T1-C1A2, E70T-4, E71T-GS: t is the place of the T. */
static void read_cored_steel(str s, size_t t, struct rod *r)
{
	size_t from = at(s, t + 1) == '-' ? t + 2 : t + 1, n = digits_at(s, from);

	r->sort = ROD_CORED;
	r->position = s.p[t - 1] - '0';
	if (n)
		r->usability = number_at(s, from, n);
	r->shield = shield_of(r->usability);
	if (at(s, from) == 'G' && at(s, from + 1) == 'S')
		r->shield = SHIELD_SELF;
}

/* E308LT1-4, E316LT0-3: position after the T, then 3 self-shielded, else a gas. */
static void read_cored_stainless(str s, size_t t, struct rod *r)
{
	r->sort = ROD_CORED;
	r->metal = ROD_STAINLESS;
	if (is_digit(at(s, t + 1)))
		r->position = s.p[t + 1] - '0';
	if (at(s, t + 2) == '-' && is_digit(at(s, t + 3)))
		r->shield = at(s, t + 3) == '3' ? SHIELD_SELF : SHIELD_GAS;
}

/* E308L-16: -15, -16, -17 all positions, -25 and -26 flat and horizontal. */
static void read_covered_stainless(str s, struct rod *r)
{
	size_t dash = str_find_char(s, '-', 0);

	r->sort = ROD_COVERED;
	r->metal = ROD_STAINLESS;
	if (digits_at(s, dash + 1) != 2)
		return;
	r->coating = number_at(s, dash + 1, 2);
	r->position = r->coating / 10;
}

/* E7018, E8018-B2, E10018: the last two figures are the coating. */
static void read_covered_steel(str s, size_t n, struct rod *r)
{
	r->sort = ROD_COVERED;
	r->coating = number_at(s, n - 1, 2);
	r->position = r->coating / 10;
}

static void read_electrode(str s, struct rod *r)
{
	size_t n = digits_at(s, 1), t = 1 + n;
	bool steel_figures = at(s, 1) >= '6' || n == 5 || (n == 3 && at(s, 1) == '1');

	if ((n == 2 || n == 3) && at(s, t) == 'T' && (steel_figures || n == 2)) {
		read_cored_steel(s, t, r);
		return;
	}
	if (n == 3 && !steel_figures) {
		while (t < s.n && !(at(s, t) == 'T' && (is_digit(at(s, t + 1)) ||
		    at(s, t + 1) == '-')))
			t++;
		if (t < s.n)
			read_cored_stainless(s, t, r);
		else
			read_covered_stainless(s, r);
		return;
	}
	if ((n == 4 || n == 5) && steel_figures)
		read_covered_steel(s, n, r);
	else if (n == 4)
		*r = (struct rod){ ROD_COVERED, ROD_ALUMINUM, -1, -1, -1, SHIELD_UNTOLD };
	else if ((n == 2 || n == 3) && at(s, t) == 'C')
		r->sort = ROD_SOLID;
}

struct rod rod_read(str class)
{
	struct rod r = { ROD_UNKNOWN, ROD_STEEL, -1, -1, -1, SHIELD_UNTOLD };

	class = str_trim(class);
	if (at(class, 0) == 'E' && at(class, 1) == 'R')
		read_bare(class, 2, &r);
	else if (at(class, 0) == 'R')
		read_bare(class, 1, &r);
	else if (at(class, 0) == 'E' && is_digit(at(class, 1)))
		read_electrode(class, &r);
	return r;
}

struct gas_name {
	const char *word;
	size_t offset;           /* of its share in struct gas */
};

static const struct gas_name gas_names[] = {
	{ "argon", offsetof(struct gas, argon) }, { "ar", offsetof(struct gas, argon) },
	{ "co2", offsetof(struct gas, co2) },
	{ "carbon dioxide", offsetof(struct gas, co2) },
	{ "oxygen", offsetof(struct gas, oxygen) },
	{ "o2", offsetof(struct gas, oxygen) },
	{ "helium", offsetof(struct gas, helium) },
	{ "he", offsetof(struct gas, helium) },
};

enum { GAS_PARTS = 4 };

/* The gas that begins at s, its length in *n; null when none does. */
static const struct gas_name *gas_name_at(str s, size_t *n)
{
	for (size_t i = 0; i < sizeof gas_names / sizeof *gas_names; i++) {
		str word = str_of(gas_names[i].word);
		char next = word.n < s.n ? at(s, word.n) : 0;

		if (!str_starts_nocase(s, word) || (next >= 'A' && next <= 'Z'))
			continue;
		*n = word.n;
		return &gas_names[i];
	}
	return NULL;
}

/* What a number at s is followed by is a flow, not a share: "25 cfh". */
static bool is_flow(str s, size_t n)
{
	str rest = str_trim_left(str_sub(s, n, s.n));

	return str_starts_nocase(rest, STR("cfh")) ||
	    str_starts_nocase(rest, STR("l/min")) ||
	    str_starts_nocase(rest, STR("lpm")) || str_starts_nocase(rest, STR("scfh"));
}

static size_t real_at(str s, double *v)
{
	size_t n = digits_at(s, 0);
	double place = 0.1;

	*v = number_at(s, 0, n);
	if (n < s.n && s.p[n] == '.')
		for (n++; n < s.n && is_digit(s.p[n]); n++, place /= 10)
			*v += place * (s.p[n] - '0');
	return n;
}

/* Shares and names in the order written: "75/25 argon/CO2", "90He-7.5Ar-2.5CO2". */
static void scan_gas(str s, double *share, size_t *nshares,
    const struct gas_name **name, size_t *nnames)
{
	size_t n = 0;

	for (size_t i = 0; i < s.n; i += n ? n : 1) {
		str rest = str_sub(s, i, s.n);
		const struct gas_name *g = NULL;
		double v;

		n = 0;
		if (i == 0 || !(at(s, i - 1) >= 'A' && at(s, i - 1) <= 'Z'))
			g = gas_name_at(rest, &n);
		if (g && *nnames < GAS_PARTS) {
			name[(*nnames)++] = g;
		} else if (is_digit(s.p[i])) {
			n = real_at(rest, &v);
			if (!is_flow(rest, n) && *nshares < GAS_PARTS)
				share[(*nshares)++] = v;
		}
	}
}

struct gas gas_read(str text)
{
	const struct gas_name *name[GAS_PARTS] = { NULL };
	double share[GAS_PARTS] = { 0 }, left = 100;
	size_t nshares = 0, nnames = 0;
	struct gas g = { 0 };

	scan_gas(text, share, &nshares, name, &nnames);
	/* The tri-mix of the trade, 90 helium, 7.5 argon, 2.5 CO2 (a textbook's table
	 * of gases for stainless short circuit). */
	if (!nnames && (says(text, "tri-mix") || says(text, "trimix")))
		return (struct gas){ true, 7.5, 2.5, 0, 90 };
	if (!nnames || (nshares && nshares != nnames && nshares + 1 != nnames) ||
	    (!nshares && nnames > 1))
		return g;
	for (size_t i = 0; i < nnames; i++) {
		double v = i < nshares ? share[i] : left;

		*(double *)((char *)&g + name[i]->offset) += v;
		left -= v;
	}
	g.known = left > -0.5 && left < 0.5;
	return g;
}

str fact_said(const struct assignment *a, const char *key)
{
	const struct plain_fact *f = assignment_fact(a, str_of(key));

	return f ? str_trim(f->text) : (str){ 0 };
}

bool is_stated(str text)
{
	return text.n && !says(text, "none") && !str_eq_nocase(text, STR("no"));
}

bool assignment_has_process(const struct assignment *a, enum process p)
{
	for (uint32_t i = 0; i < a->nprocesses; i++)
		if (a->processes[i] == p)
			return true;
	return false;
}

str transfer_of(const struct assignment *a, enum process p)
{
	if (p == PROCESS_GMAW_S)
		return STR("short circuit");
	return p == PROCESS_GMAW ? fact_said(a, "Transfer") : (str){ 0 };
}
