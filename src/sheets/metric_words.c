#include "sheets/metric_words.h"

#include "base/buf.h"
#include "sheets/edition.h"
#include "units/format.h"
#include "units/quantity.h"

#include <string.h>

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_one_of(str s, const str *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (str_eq(s, v[i]))
			return true;
	return false;
}

#define ONE_OF(s, v) is_one_of((s), (v), sizeof(v) / sizeof *(v))

static const str joins[] = { STR("to"), STR("x"), STR("by"), STR("and"), STR("or"),
	STR("a"), STR("por"), STR("y"), STR("o") };
static const str signs[] = { STR("="), STR("+"), STR("-"), STR("/"), STR("*"),
	STR("\xC3\x97") };
static const str us_units[] = { STR("in"), STR("ft"), STR("lb"), STR("psi"), STR("psig"),
	STR("ksi"), STR("\xC2\xB0" "F"), STR("cfh"), STR("in/min"), STR("in\xC2\xB2"),
	STR("oz"), STR("tons"), STR("kJ/in") };
static const str metric_units[] = { STR("mm"), STR("m"), STR("cm"), STR("kPa"), STR("MPa"),
	STR("bar"), STR("kg"), STR("g"), STR("\xC2\xB0" "C"), STR("L/min"), STR("mm/s"),
	STR("m/min"), STR("mm/min"), STR("kN"), STR("mm\xC2\xB2"), STR("kJ/mm"), STR("L") };

/* The word that ends before `end`, which is moved to its start. */
static str word_before(str s, size_t *end)
{
	size_t to = *end, from;

	while (to && s.p[to - 1] == ' ')
		to--;
	from = to;
	while (from && s.p[from - 1] != ' ')
		from--;
	*end = from;
	return str_sub(s, from, to);
}

/* A bracket or sign in front of a figure is no part of it. */
static size_t figure_at(str word)
{
	size_t i = 0;

	while (i < word.n && (word.p[i] == '(' || word.p[i] == '+' || word.p[i] == '-'))
		i++;
	if (str_starts(str_sub(word, i, word.n), STR("\xC2\xB1")))
		i += 2;
	return i < word.n && (is_digit(word.p[i]) || word.p[i] == '.') ? i : word.n;
}

static bool is_figure(str word)
{
	return figure_at(word) < word.n;
}

static size_t count_figures(str s)
{
	str word;
	size_t n = 0;

	while (str_word(&s, &word))
		n += is_figure(word);
	return n;
}

static bool is_metric(str bracket)
{
	size_t end = bracket.n;

	return ONE_OF(word_before(bracket, &end), metric_units);
}

/* Where the figures begin that a metric bracket at `at` repeats; `at` when it is not
 * told: nothing is turned round then. */
static size_t pair_start(str s, size_t at, size_t figures)
{
	size_t from = at, before;
	str word = word_before(s, &from);

	if (!figures || !ONE_OF(word, us_units))
		return at;
	while (figures && from) {
		word = word_before(s, &from);
		if (is_figure(word))
			figures--;
		else if (!ONE_OF(word, joins) && !ONE_OF(word, us_units))
			return at;
	}
	before = from;
	/* "6 ft 4 in" is one size. */
	if (!figures && str_eq(word_before(s, &before), STR("ft"))) {
		word = word_before(s, &before);
		from = is_figure(word) ? before : from;
	}
	before = from;
	word = word_before(s, &before);
	if (figures || ONE_OF(word, signs))
		return at;
	if (ONE_OF(word, joins) && is_figure(word_before(s, &before)))
		return at;
	return from + (s.p[from] == '(');
}

/* Pairs that somebody wrote US customary first, the other way round. */
static str turn_pairs(struct arena *a, str s)
{
	struct buf b = { .arena = a };
	size_t done = 0;

	for (size_t at = str_find(s, STR(" ["), 0); at < s.n; at = str_find(s, STR(" ["), at + 1)) {
		size_t end = str_find_char(s, ']', at), from;
		str bracket = str_sub(s, at + 2, end);

		if (end == s.n || !is_metric(bracket))
			continue;
		from = pair_start(s, at, count_figures(bracket));
		if (from == at || from < done)
			continue;
		buf_add(&b, str_sub(s, done, from));
		buf_addf(&b, "%.*s [%.*s]", STR_ARG(bracket), STR_ARG(str_sub(s, from, at)));
		done = end + 1;
	}
	buf_add(&b, str_sub(s, done, s.n));
	return buf_str(&b);
}

/* Lighter is a weight of metal, which is reckoned, and not a load. */
#define LOAD_LEAST_LB 5.0
/* Higher is no pressure of a gas but a strength. */
#define STRENGTH_LEAST_PSI 10000.0

/* "3 in" may be a number and a word: it is a length before a stop or a word of lengths. */
static bool ends_a_length(str rest)
{
	static const str words[] = { STR("long"), STR("wide"), STR("high"), STR("deep"),
		STR("thick"), STR("tall"), STR("apart"), STR("diameter"), STR("square") };
	str word;

	if (!rest.n || strchr(",.;:)", rest.p[0]))
		return true;
	return str_word(&rest, &word) &&
	    ONE_OF(str_sub(word, 0, word.n - (word.n && strchr(",.;:)", word.p[word.n - 1]))), words);
}

/* "1F" is a position and "8 oz" a hammer. */
static bool is_sure(const struct quantity *q, str us, str rest)
{
	switch (q->kind) {
	case QUANTITY_TEMPERATURE:
		return str_find(us, STR("\xC2\xB0" "F"), 0) < us.n && !q->tolerance;
	case QUANTITY_MASS:
		return str_ends(us, STR("lb")) && !q->tolerance && q->lo >= LOAD_LEAST_LB &&
		    q->form == FORM_FRACTION && q->denominator <= 1;
	case QUANTITY_PRESSURE:
	case QUANTITY_FLOW:
		return q->form != FORM_METRIC && !q->tolerance;
	case QUANTITY_LENGTH:
		return q->form == FORM_FEET || q->form == FORM_DECIMAL ||
		    (q->form == FORM_FRACTION && (q->denominator > 1 || ends_a_length(rest)));
	default:
		return false;
	}
}

/* "(103 kPa)" */
static bool says_metric(str rest)
{
	return rest.n && rest.p[0] == '(' &&
	    is_metric(str_sub(rest, 1, str_find_char(rest, ')', 0)));
}

/* Whether what stands around s[from, to) lets a figure be turned: it is no part of a list,
 * a sum, a bracket or of what follows it. */
static bool stands_alone(str s, size_t from, size_t to)
{
	static const str articles[] = { STR("the"), STR("a"), STR("an"), STR("each"),
		STR("one"), STR("it"), STR("this"), STR("that") };
	str rest = str_sub(s, to, s.n), next = { 0 };
	size_t before = from;
	str word = word_before(s, &before);

	if (rest.n && !strchr(" ,.;:)", rest.p[0]))
		return false;
	rest = str_trim_left(rest);
	next = str_sub(rest, 0, str_find_char(rest, ' ', 0));
	if (next.n && (strchr("[/=+", next.p[0]) || ONE_OF(next, articles) || says_metric(rest)))
		return false;
	if (ONE_OF(word, signs) || (word.n && is_figure(word)))
		return false;
	return !ONE_OF(word, joins) || !is_figure(word_before(s, &before));
}

static void add_metric(struct buf *b, const struct quantity *q)
{
	const struct format metric = { .metric_first = true };
	struct buf both = { .arena = b->arena };

	if (q->kind == QUANTITY_MASS && !q->range) {
		/* A load told in whole pounds is known to a pound or so. */
		buf_add_real(b, q->lo * 0.45359237, q->lo < 20 ? 1 : 0, false);
		buf_adds(b, " kg");
	} else if (q->kind == QUANTITY_PRESSURE && q->lo >= STRENGTH_LEAST_PSI && !q->range) {
		format_strength(&both, &metric, q->lo);
	} else {
		format_words(&both, &metric, q);
	}
	buf_add(b, str_sub(buf_str(&both), 0, str_find(buf_str(&both), STR(" ["), 0)));
}

/* The sure figure at the start of s[at...), turned into b; the bytes it took, or 0. */
static size_t turn_figure(struct buf *b, str s, size_t at)
{
	struct quantity_fault fault;
	struct quantity q;
	size_t used;

	if (quantity_prefix(str_sub(s, at, s.n), QUANTITY_ANY, METAL_NONE, &q, &used,
	    &fault) != QUANTITY_OK)
		return 0;
	used -= s.p[at + used - 1] == '.'; /* Of the sentence, not of the unit. */
	if (!is_sure(&q, str_sub(s, at, at + used), str_sub(s, at + used, s.n)) ||
	    !stands_alone(s, at, at + used))
		return 0;
	add_metric(b, &q);
	buf_addf(b, " [%.*s]", STR_ARG(str_sub(s, at, at + used)));
	return used;
}

/* Figures that stand without their metric; brackets are passed over whole. */
static str turn_figures(struct arena *a, str s)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < s.n;) {
		size_t used = 0, end = i;
		bool starts = !i || s.p[i - 1] == ' ' || s.p[i - 1] == '(';

		if (s.p[i] == '[')
			end = str_find_char(s, ']', i);
		else if (starts && is_digit(s.p[i]))
			used = turn_figure(&b, s, i);
		end = used ? i + used : end < s.n ? end + 1 : s.n;
		if (!used)
			buf_add(&b, str_sub(s, i, end));
		i = end;
	}
	return buf_str(&b);
}

str units_text(struct arena *a, const struct edition *e, str text)
{
	if (!e || !e->choice.metric)
		return text;
	return turn_figures(a, turn_pairs(a, text));
}

/* ---- the whole program ---- */

struct viewer {
	struct arena *arena;
	const struct edition *e;
};

static struct para view_para(const struct viewer *w, const struct para *p)
{
	struct span *spans = arena_array_of(w->arena, p->spans, p->nspans, sizeof *spans);
	struct para out = *p;

	for (size_t i = 0; i < p->nspans; i++)
		spans[i].text = units_text(w->arena, w->e, spans[i].text);
	out.spans = spans;
	return out;
}

static struct prose view_prose(const struct viewer *w, struct prose p)
{
	struct para *v = arena_array(w->arena, p.n, sizeof *v);

	for (size_t i = 0; i < p.n; i++)
		v[i] = view_para(w, &p.v[i]);
	return (struct prose){ v, p.n };
}

static void view_lines(const struct viewer *w, struct assignment *x)
{
	x->steps = arena_array_of(w->arena, x->steps, x->nsteps, sizeof *x->steps);
	for (size_t i = 0; i < x->nsteps; i++)
		x->steps[i].para = view_para(w, &x->steps[i].para);
	x->drawings = arena_array_of(w->arena, x->drawings, x->ndrawings, sizeof *x->drawings);
	for (size_t i = 0; i < x->ndrawings; i++) {
		struct drawing *d = &x->drawings[i];

		d->caption = view_prose(w, d->caption);
		d->words = units_text(w->arena, w->e, d->words);
	}
}

static void view_assignment(const struct viewer *w, struct assignment *x)
{
	struct prose *parts[] = { &x->bring, &x->cautions, &x->if_it_fails, &x->notes,
		&x->instructor };

	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
		*parts[i] = view_prose(w, *parts[i]);
	view_lines(w, x);
}

struct model units_view(struct arena *a, const struct edition *e, const struct model *m)
{
	const struct viewer w = { a, e };
	struct model v = *m;

	if (!e || !e->choice.metric)
		return v;
	v.assignments = arena_array_of(a, m->assignments, m->nassignments,
	    sizeof *v.assignments);
	for (size_t i = 0; i < m->nassignments; i++)
		view_assignment(&w, &v.assignments[i]);
	return v;
}
