#include "check/figures.h"

#include "base/buf.h"

#include <stdlib.h>

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Bytes that a figure may hold within: 1-1/2, 1910.133, 12:30, 7/8. */
static bool joins(char c)
{
	return c == '-' || c == '/' || c == '.' || c == ':' || c == ',';
}

/* Where the word at s[i] ends: letters, digits, and what joins them. */
static size_t word_end(str s, size_t i)
{
	while (i < s.n && (is_digit(s.p[i]) || is_letter(s.p[i]) ||
	    (joins(s.p[i]) && i + 1 < s.n && (is_digit(s.p[i + 1]) ||
	    (s.p[i] == '-' && is_letter(s.p[i + 1]))))))
		i++;
	return i;
}

static bool has_digit(str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (is_digit(s.p[i]))
			return true;
	return false;
}

/* "10-foot" is a 10 to be compared; "SM-04" and "E7018" are whole. */
static str without_tail(str s)
{
	size_t n = s.n;

	if (!is_digit(s.p[0]))
		return s;
	while (n && is_letter(s.p[n - 1]))
		n--;
	return n > 1 && n < s.n && s.p[n - 1] == '-' ? str_sub(s, 0, n - 1) : s;
}

/* The unit that s begins with, and nothing of a longer word. */
static str unit_of(str s)
{
	static const str units[] = { STR("in/min"), STR("in"), STR("mm/s"), STR("mm"),
		STR("cm"), STR("m"), STR("ft"), STR("ga"), STR("deg"), STR("degF"),
		STR("degC"), STR("°F"), STR("°C"), STR("°"), STR("A"), STR("V"), STR("lb"),
		STR("kg"), STR("oz"), STR("psig"), STR("psi"), STR("ksi"), STR("kPa"),
		STR("MPa"), STR("cfh"), STR("L/min"), STR("h"), STR("%"), STR("x") };

	for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
		size_t n = units[i].n;

		if (str_starts(s, units[i]) && (s.n == n || !(is_letter(s.p[n]) ||
		    (unsigned char)s.p[n] >= 0x80 || is_digit(s.p[n]))))
			return units[i];
	}
	return (str){ 0 };
}

static bool is_number(str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (is_letter(s.p[i]))
			return false;
	return true;
}

/* What is behind "in" and not behind an inch: a word that says no extent. */
static bool is_preposition(str number, str behind)
{
	static const str extents[] = { STR("long"), STR("wide"), STR("high"), STR("deep"),
		STR("thick"), STR("back"), STR("apart"), STR("up"), STR("across"), STR("from"),
		STR("of"), STR("x"), STR("by"), STR("and"), STR("or"), STR("to"), STR("at") };
	str next;
	uint32_t whole;

	if (!str_to_u32(number, &whole) || !str_word(&behind, &next) ||
	    !(next.p[0] >= 'a' && next.p[0] <= 'z'))
		return false;
	for (size_t i = 0; i < sizeof extents / sizeof *extents; i++)
		if (str_starts(next, extents[i]) && (next.n == extents[i].n ||
		    !is_letter(next.p[extents[i].n])))
			return false;
	return true;
}

static struct figure figure_of(struct arena *a, str word, str behind)
{
	str unit = is_number(word) ? unit_of(behind) : (str){ 0 };

	if (!unit.n)
		return (struct figure){ without_tail(word), false };
	return (struct figure){
		str_format(a, "%.*s %.*s", STR_ARG(word), STR_ARG(unit)),
		str_eq(unit, STR("in")) && is_preposition(word, str_sub(behind, 2, behind.n))
	};
}

void figures_add(struct arena *a, struct figures *f, str text)
{
	for (size_t i = 0, end; i < text.n; i = end) {
		str word;

		end = word_end(text, i);
		word = str_sub(text, i, end);
		end += end == i;
		if (has_digit(word))
			*ARENA_PUSH(a, f->v, f->n, f->cap) = figure_of(a, word,
			    str_trim_left(str_sub(text, end, text.n)));
	}
}

void figures_add_para(struct arena *a, struct figures *f, const struct para *p)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < p->nspans; i++)
		buf_add(&b, p->spans[i].text);
	figures_add(a, f, buf_str(&b));
}

void figures_add_prose(struct arena *a, struct figures *f, const struct prose *p)
{
	for (size_t i = 0; i < p->n; i++)
		figures_add_para(a, f, &p->v[i]);
}

static int compare(const void *x, const void *y)
{
	const struct figure *a = x, *b = y;

	return str_cmp(a->text, b->text);
}

static void sort(struct figures *f)
{
	if (f->n)
		qsort(f->v, f->n, sizeof *f->v, compare);
}

/* Takes "12 in" that may be "12" off v, and that "12" off the other list. */
static void forgive(struct figures *v, struct figures *other)
{
	for (size_t i = v->n; i-- > 0;) {
		str number = str_sub(v->v[i].text, 0, v->v[i].text.n - 3);

		for (size_t k = 0; v->v[i].soft && k < other->n; k++) {
			if (!str_eq(other->v[k].text, number))
				continue;
			for (size_t m = k + 1; m < other->n; m++)
				other->v[m - 1] = other->v[m];
			other->n--;
			for (size_t m = i + 1; m < v->n; m++)
				v->v[m - 1] = v->v[m];
			v->n--;
			break;
		}
	}
}

bool figures_differ(struct arena *a, struct figures *x, struct figures *y,
    struct figures *only_x, struct figures *only_y)
{
	size_t i = 0, j = 0;

	sort(x);
	sort(y);
	while (i < x->n || j < y->n) {
		int c = i == x->n ? 1 : j == y->n ? -1 : str_cmp(x->v[i].text, y->v[j].text);

		if (c < 0)
			*ARENA_PUSH(a, only_x->v, only_x->n, only_x->cap) = x->v[i];
		if (c > 0)
			*ARENA_PUSH(a, only_y->v, only_y->n, only_y->cap) = y->v[j];
		i += c <= 0;
		j += c >= 0;
	}
	forgive(only_x, only_y);
	forgive(only_y, only_x);
	return only_x->n || only_y->n;
}

str figures_list(struct arena *a, const struct figures *f)
{
	enum { MOST = 6 };
	struct buf b = { .arena = a };

	for (size_t i = 0; i < f->n && i < MOST; i++)
		buf_addf(&b, "%s%.*s", i ? ", " : "", STR_ARG(f->v[i].text));
	if (f->n > MOST)
		buf_addf(&b, " and %zu more", f->n - MOST);
	return buf_str(&b);
}
