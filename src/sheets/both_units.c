#include "sheets/both_units.h"

#include "base/buf.h"
#include "sheets/edition.h"
#include "sheets/wording.h"
#include "units/format.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* Whether a word starts at i and could be a number. */
static bool number_starts(str s, size_t i)
{
	if (i && s.p[i - 1] != ' ' && s.p[i - 1] != '(')
		return false;
	return is_digit(s.p[i]) ||
	    ((s.p[i] == '.' || s.p[i] == '+') && i + 1 < s.n && is_digit(s.p[i + 1])) ||
	    str_starts(str_sub(s, i, s.n), STR("\xC2\xB1"));
}

static bool ends_word(str s, size_t i)
{
	return i >= s.n || s.p[i] == ' ' || s.p[i] == ',' || s.p[i] == ';' ||
	    s.p[i] == '.' || s.p[i] == ')';
}

static bool has_bracket(str s, size_t i)
{
	str rest = str_trim_left(str_sub(s, i, s.n));

	return rest.n && (rest.p[0] == '[' || rest.p[0] == '(');
}

/* "1/4 x 1 in": written as it stands, then the millimeters of all. */
static void add_product(struct buf *b, const struct edition *e, str as_written,
    const struct quantity_list *l)
{
	struct buf mm = { .arena = b->arena };
	bool metric = e && e->choice.metric;

	for (size_t i = 0; i < l->n; i++) {
		buf_adds(&mm, i ? " x " : "");
		format_length_mm(&mm, &l->v[i]);
	}
	buf_adds(&mm, " mm");
	buf_add(b, metric ? buf_str(&mm) : as_written);
	buf_adds(b, " [");
	buf_add(b, metric ? as_written : buf_str(&mm));
	buf_addc(b, ']');
}

static bool is_lengths(const struct quantity_list *l)
{
	for (size_t i = 0; i < l->n; i++)
		if (l->v[i].kind != QUANTITY_LENGTH || l->v[i].form == FORM_GAUGE ||
		    l->v[i].form == FORM_METRIC)
			return false;
	return l->n > 1;
}

/* The quantity at the start of s, printed into b; the bytes it took, 0 when none. */
static size_t add_quantity(struct buf *b, const struct edition *e, str s)
{
	struct quantity_fault fault;
	struct quantity_list list;
	struct quantity q;
	struct buf words = { 0 };
	size_t used;

	if (quantity_product_parse(b->arena, s, METAL_NONE, &list, &used,
	    &fault) == QUANTITY_OK && is_lengths(&list) && ends_word(s, used) &&
	    !has_bracket(s, used)) {
		add_product(b, e, str_sub(s, 0, used), &list);
		return used;
	}
	if (quantity_prefix(s, QUANTITY_ANY, METAL_NONE, &q, &used, &fault) !=
	    QUANTITY_OK || !q.kind || q.kind == QUANTITY_COUNT || q.form == FORM_GAUGE ||
	    !ends_word(s, used) || has_bracket(s, used))
		return 0;
	words.arena = b->arena;
	format_words(&words, edition_format(e), &q);
	buf_add(b, quantity_words(b->arena, e, buf_str(&words)));
	return used;
}

/* A bare number's unit may come later, behind a comma, "to", "x", "and", "or". */
static bool stays_bare(str word, bool bare)
{
	static const str joins[] = { STR("to"), STR("x"), STR("and"), STR("or") };

	if (word.n && is_digit(word.p[0]))
		return word.p[word.n - 1] == ',' || is_digit(word.p[word.n - 1]);
	for (size_t i = 0; bare && i < sizeof joins / sizeof *joins; i++)
		if (str_eq(word, joins[i]))
			return true;
	return false;
}

/* Every `from` between two figures becomes `to`. */
static str swap_between_figures(struct arena *a, str s, str from, str to)
{
	struct buf b = { .arena = a };
	size_t at = 0, hit;

	while ((hit = str_find(s, from, at)) < s.n) {
		size_t end = hit + from.n;
		bool swaps = hit && is_digit(s.p[hit - 1]) && end < s.n && is_digit(s.p[end]);

		buf_add(&b, str_sub(s, at, hit));
		buf_add(&b, swaps ? to : from);
		at = end;
	}
	buf_add(&b, str_sub(s, at, s.n));
	return buf_str(&b);
}

static str units_of_words(struct arena *a, const struct edition *e, str text)
{
	struct buf b = { .arena = a };
	bool bare = false;

	for (size_t i = 0; i < text.n;) {
		size_t used = number_starts(text, i) && !bare
		    ? add_quantity(&b, e, str_sub(text, i, text.n)) : 0;
		size_t end = i;

		if (used) {
			i += used;
			continue;
		}
		while (end < text.n && text.p[end] != ' ')
			end++;
		if (end > i)
			bare = stays_bare(str_sub(text, i, end), bare);
		end += end < text.n;
		buf_add(&b, str_sub(text, i, end));
		i = end;
	}
	return buf_str(&b);
}

/* Quantities are read in English: "1 a 12" of a Spanish text is no current. */
str both_units(struct arena *a, const struct edition *e, str text)
{
	str here = word(edition_language(e), " to "), english;

	if (str_eq(here, STR(" to ")) || str_find(text, here, 0) == text.n)
		return units_of_words(a, e, text);
	english = swap_between_figures(a, text, here, STR(" to "));
	return swap_between_figures(a, units_of_words(a, e, english), STR(" to "), here);
}

str value_text(struct arena *a, const struct edition *e, enum quantity_kind kind, double lo,
    double hi)
{
	const struct quantity q = { .kind = kind, .form = FORM_FRACTION, .lo = lo,
		.hi = hi > lo ? hi : lo, .range = hi > lo, .denominator = 1 };

	return quantity_text(a, e, &q);
}
