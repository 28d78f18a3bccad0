/* Which code, edition and loading a text names, and the set that they choose. */
#include "model/standard.h"
#include "model/parts.h"

#include "base/buf.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_word_byte(char c)
{
	return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Where the word stands and begins with this very letter. */
static size_t word_with(str s, str needle, char first)
{
	for (size_t i = str_find_char(s, first, 0); i + needle.n <= s.n;
	    i = str_find_char(s, first, i + 1)) {
		size_t end = i + needle.n;

		if ((i && is_word_byte(s.p[i - 1])) ||
		    (end < s.n && is_word_byte(s.p[end])))
			continue;
		if (str_eq_nocase(str_sub(s, i, end), needle))
			return i;
	}
	return s.n;
}

size_t word_find(str s, str needle)
{
	size_t same, other;

	if (!needle.n || needle.n > s.n)
		return s.n;
	same = word_with(s, needle, needle.p[0]);
	other = is_digit(needle.p[0]) ? s.n : word_with(s, needle, (char)(needle.p[0] ^ 0x20));
	return same < other ? same : other;
}

/* "-2020" or ":2020" right after the code. */
static uint32_t edition_at(str s, size_t at)
{
	uint32_t year;

	if (at >= s.n || (s.p[at] != '-' && s.p[at] != ':'))
		return 0;
	if (at + 5 < s.n && is_digit(s.p[at + 5]))
		return 0;
	return str_to_u32(str_sub(s, at + 1, at + 5), &year) && year > 1900 ? year : 0;
}

static size_t digits_end(str s, size_t at)
{
	while (at < s.n && is_digit(s.p[at]))
		at++;
	return at;
}

/* Bytes of "D1.1" at the start of s, or of "D9.9" with a year behind it; 0 when it does
 * not begin so. Other letters name drawings and forms too, so they need the year. */
static size_t structural_code(str s)
{
	size_t dot = digits_end(s, 1), n;

	if (!s.n || !is_word_byte(s.p[0]) || is_digit(s.p[0]) || dot == 1 || dot >= s.n ||
	    s.p[dot] != '.')
		return 0;
	n = digits_end(s, dot + 1);
	if (n == dot + 1 || (n < s.n && is_word_byte(s.p[n])))
		return 0;
	return str_starts_nocase(s, STR("D1.")) || edition_at(s, n) ? n : 0;
}

/* Past "/D1.1M", the metric half of a title, which names the same code. */
static size_t metric_end(str t, size_t at, size_t n)
{
	size_t end = at + n, m = end + n + 2;

	if (m > t.n || t.p[end] != '/' || (t.p[m - 1] | 32) != 'm' ||
	    !str_eq_nocase(str_sub(t, end + 1, m - 1), str_sub(t, at, end)))
		return end;
	return m;
}

/* "C" of "ISO 5817-2014 C", "ISO 5817 level C": right after the code and its edition. */
static str level_at(str s, size_t at)
{
	static const str skipped[] = { { "quality", 7 }, { "level", 5 } };
	str rest = str_trim_left(str_sub(s, at, s.n));

	for (size_t i = 0; i < sizeof skipped / sizeof *skipped; i++)
		if (str_starts_nocase(rest, skipped[i]))
			rest = str_trim_left(str_sub(rest, skipped[i].n, rest.n));
	if (str_starts(rest, STR("-")))
		rest = str_sub(rest, 1, rest.n);
	if (!rest.n || (rest.n > 1 && is_word_byte(rest.p[1])))
		return (str){ 0 };
	for (size_t i = 0; i < 3; i++) {
		str letter = str_sub(STR("BCD"), i, i + 1);

		if (str_eq_nocase(str_sub(rest, 0, 1), letter))
			return letter;
	}
	return (str){ 0 };
}

static str loading_in(str text)
{
	static const struct { str said, shown; } loadings[] = {
		{ { "welder test", 11 }, { "welder test", 11 } },
		{ { "static", 6 }, { "static", 6 } },
		{ { "statically", 10 }, { "static", 6 } },
		{ { "cyclic", 6 }, { "cyclic", 6 } },
		{ { "cyclically", 10 }, { "cyclic", 6 } },
	};

	for (size_t i = 0; i < sizeof loadings / sizeof *loadings; i++)
		if (word_find(text, loadings[i].said) < text.n)
			return loadings[i].shown;
	return (str){ 0 };
}

/* Codes that are two words. */
static bool find_named(str t, struct code_name *out)
{
	static const str codes[] = {
		{ "ASME IX", 7 }, { "ISO 5817", 8 }, { "API 1104", 8 },
	};

	for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
		size_t at = word_find(t, codes[i]), end = at + codes[i].n;

		if (at == t.n)
			continue;
		*out = (struct code_name){ codes[i], { 0 }, edition_at(t, end), at };
		if (i == 1)
			out->loading = level_at(t, end + (out->edition ? 5 : 0));
		return true;
	}
	return false;
}

struct code_name code_find(str t)
{
	struct code_name out = { .at = t.n };

	if (!find_named(t, &out)) {
		for (size_t i = 0; i < t.n && !out.code.n; i++) {
			size_t n = i && is_word_byte(t.p[i - 1]) ? 0
			    : structural_code(str_sub(t, i, t.n));

			if (n)
				out = (struct code_name){ str_sub(t, i, i + n), { 0 },
				    edition_at(t, metric_end(t, i, n)), i };
		}
	}
	if (!out.loading.n)
		out.loading = loading_in(t);
	return out;
}

/* ---- choosing a set ---- */

static const struct { str word; enum standard_test test; } tests[] = {
	{ { "visual", 6 }, TEST_VISUAL }, { { "bend test", 9 }, TEST_BEND },
	{ { "face bend", 9 }, TEST_BEND }, { { "root bend", 9 }, TEST_BEND },
	{ { "side bend", 9 }, TEST_BEND }, { { "guided bend", 11 }, TEST_BEND },
	{ { "fillet break", 12 }, TEST_FILLET_BREAK },
	{ { "fillet-break", 12 }, TEST_FILLET_BREAK }, { { "macro", 5 }, TEST_MACRO },
	{ { "nick break", 10 }, TEST_NICK_BREAK },
	{ { "nick-break", 10 }, TEST_NICK_BREAK },
	{ { "tensile", 7 }, TEST_TENSILE }, { { "dimensions", 10 }, TEST_DIMENSIONS },
	{ { "measured", 8 }, TEST_DIMENSIONS },
};

bool criterion_test(str name, enum standard_test *out)
{
	for (size_t i = 0; i < sizeof tests / sizeof *tests; i++)
		if (str_starts_nocase(name, tests[i].word)) {
			*out = tests[i].test;
			return true;
		}
	return false;
}

/* A set that the text names by its whole name; the longest name wins, and one of the
 * program's own before a shipped one. Shipped sets of a code are found by their code. */
static const struct standard *find_own(const struct model *m, str text)
{
	const struct standard *best = NULL;

	for (size_t i = 0; i < m->nstandards + m->nshipped; i++) {
		bool own = i < m->nstandards;
		const struct standard *s = own ? &m->standards[i] : &m->shipped[i -
		    m->nstandards];

		if ((own || !s->code.n) && (!best || s->name.n > best->name.n) &&
		    word_find(text, s->name) < text.n)
			best = s;
	}
	return best;
}

/* A level is never guessed: "ISO 5817" alone answers to none. */
static bool answers(const struct standard *s, const struct code_name *n)
{
	if (!n->loading.n && s->loading.n == 1)
		return false;
	return s->code.n && str_eq_nocase(s->code, n->code) &&
	    (!n->edition || s->edition == n->edition) &&
	    (!n->loading.n || str_eq(s->loading, n->loading));
}

static int loading_rank(const struct standard *s)
{
	return str_eq(s->loading, STR("welder test")) ? 2 :
	    str_eq(s->loading, STR("static"));
}

/* The newest edition; in it the welder test, else static; of equals the first. */
static bool is_better(const struct standard *s, const struct standard *than)
{
	if (!than || s->edition != than->edition)
		return !than || s->edition > than->edition;
	return loading_rank(s) > loading_rank(than);
}

static const struct standard *better_of(const struct standard *v, size_t n,
    const struct code_name *c, const struct standard *best)
{
	for (size_t i = 0; i < n; i++)
		if (answers(&v[i], c) && is_better(&v[i], best))
			best = &v[i];
	return best;
}

static str written_name(struct arena *a, const struct code_name *n)
{
	struct buf b = { .arena = a };

	buf_add(&b, n->code);
	if (n->edition)
		buf_addf(&b, "-%u", n->edition);
	if (n->loading.n)
		buf_addf(&b, " %.*s", STR_ARG(n->loading));
	return buf_str(&b);
}

/* The set that was most likely meant: of the same code and edition, else one whose name
 * is nearly the same. */
static str likely_set(struct arena *a, const struct model *m, const struct code_name *n,
    str written)
{
	size_t total = m->nstandards + m->nshipped;
	str *names = arena_array(a, total, sizeof *names);
	struct code_name any = *n;
	const struct standard *near;

	any.loading = (str){ 0 };
	near = better_of(m->standards, m->nstandards, &any, NULL);
	near = better_of(m->shipped, m->nshipped, &any, near);
	if (near)
		return near->name;
	for (size_t i = 0; i < total; i++)
		names[i] = i < m->nstandards ? m->standards[i].name
		    : m->shipped[i - m->nstandards].name;
	return likely_word(written, names, total);
}

/* A code whose limits are of levels, named without one. */
static bool complain_level(struct binder *b, const struct code_name *n,
    const struct block *in)
{
	const struct model *m = b->model;
	const struct standard *first = NULL;

	if (n->loading.n)
		return false;
	for (size_t i = 0; i < m->nshipped; i++) {
		const struct standard *s = &m->shipped[i];

		if (s->loading.n == 1 && str_eq_nocase(s->code, n->code) &&
		    (!n->edition || s->edition == n->edition))
			first = first ? first : s;
	}
	if (!first)
		return false;
	finding_repair(b->f, complain(b, FINDING_UNKNOWN_STANDARD,
	    said_pos(said_sub(said_all(in), n->at, in->text.n)),
	    "\"%.*s\" has levels, and this names none, so the sheet shows only these words",
	    STR_ARG(written_name(b->arena, n))), "write \"%.*s-%u C\", or B (strictest) or "
	    "D (mildest) in place of C", STR_ARG(first->code), first->edition);
	return true;
}

/* Notes the sets of that code and loading: of which year, a trial may show. */
static void offer_sets(struct binder *b, struct finding *d, const struct code_name *n,
    str written)
{
	const struct model *m = b->model;
	size_t total = m->nstandards + m->nshipped, k = 0;
	str *names = arena_array(b->arena, total, sizeof *names);

	for (size_t i = 0; i < total; i++) {
		const struct standard *s = i < m->nstandards ? &m->standards[i]
		    : &m->shipped[i - m->nstandards];

		if (str_eq_nocase(s->code, n->code) && str_eq(s->loading, n->loading))
			names[k++] = s->name;
	}
	offer_guesses(b, d, written, names, k, ANY_DISTANCE);
}

static void complain_unknown(struct binder *b, const struct code_name *n,
    const struct block *in)
{
	str written = written_name(b->arena, n);
	struct finding *d = complain(b, FINDING_UNKNOWN_STANDARD,
	    said_pos(said_sub(said_all(in), n->at, in->text.n)),
	    "there are no limits named \"%.*s\", so the sheet shows only these words",
	    STR_ARG(written));
	str likely = { 0 };

	if (is_worth_a_guess(b, d))
		likely = likely_set(b->arena, b->model, n, written);
	finding_slip(b->f, d, d->pos, written, likely);
	offer_sets(b, d, n, written);
	if (likely.n)
		finding_repair(b->f, d, "write \"%.*s\" if that is what is meant, or add "
		    "these limits in the folder standards", STR_ARG(likely));
	else
		finding_repair(b->f, d, "add a file with these limits in the folder "
		    "standards, headed \"# %.*s\"", STR_ARG(written));
}

void criterion_choose(struct binder *b, struct criterion *c, const struct block *in)
{
	const struct model *m = b->model;
	struct code_name n = code_find(c->text);
	/* Behind a semicolon stand the author's own words, whatever they mention. */
	size_t end = str_find_char(c->text, ';', 0);
	const struct standard *s;
	enum standard_test test;

	c->code = n.code;
	c->edition = n.edition;
	c->loading = n.loading;
	if (!criterion_test(c->name, &test))
		return;
	s = find_own(m, str_sub(c->text, 0, end));
	if (!s && (!n.code.n || n.at >= end))
		return;
	if (!s)
		s = better_of(m->shipped, m->nshipped, &n,
		    better_of(m->standards, m->nstandards, &n, NULL));
	if (!s) {
		if (!complain_level(b, &n, in))
			complain_unknown(b, &n, in);
		return;
	}
	if (s->shipped != NONE)
		b->sets_wanted[s->shipped] = true;
	c->standard = s;
}
