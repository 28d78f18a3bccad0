#include "reckon/topic.h"

#include "units/format.h"
#include "units/unit.h"

#include <assert.h>

struct value {
	str text;
	str shown;               /* in both units; empty: text */
	bool said;               /* a key was written for it */
	bool given;              /* said, or assumed */
	double x;
	double *list;
	size_t nlist;
};

struct given {
	const struct topic *topic;
	struct value v[TOPIC_INPUTS];
	enum sheet_metal metal;  /* for gauges */
};

/* How each kind is read. implied: the unit of a bare number, where that is beyond
 * doubt; a bare length is refused, for it may be inches or millimeters. */
static const struct {
	enum quantity_kind quantity;
	const char *implied, *name;
	double times;            /* base unit of the units room to ours */
} kinds[INPUT_KINDS] = {
	[INPUT_LENGTH] = { QUANTITY_LENGTH, NULL, "length", 1 },
	[INPUT_LENGTHS] = { QUANTITY_LENGTH, NULL, "lengths, by commas", 1 },
	[INPUT_ANGLE] = { QUANTITY_ANGLE, "deg", "angle", 1 },
	[INPUT_AMPS] = { QUANTITY_CURRENT, "A", "amperes", 1 },
	[INPUT_VOLTS] = { QUANTITY_VOLTAGE, "V", "volts", 1 },
	[INPUT_HOURS] = { QUANTITY_TIME, NULL, "time", 1 },
	[INPUT_WEIGHT] = { QUANTITY_MASS, NULL, "weight", 1 },
	[INPUT_TONS] = { QUANTITY_MASS, "ton", "tons of 2000 lb", 1.0 / 2000 },
	[INPUT_FLOW] = { QUANTITY_FLOW, NULL, "gas flow", 1 },
	[INPUT_PRESSURE] = { QUANTITY_PRESSURE, NULL, "pressure", 1 },
	[INPUT_STRENGTH] = { QUANTITY_PRESSURE, NULL, "strength", 1.0 / 1000 },
	[INPUT_SPEED] = { QUANTITY_SPEED, NULL, "speed", 1 },
	[INPUT_PERCENT] = { QUANTITY_PERCENT, "%", "percent", 1 },
	[INPUT_COUNT] = { QUANTITY_COUNT, "", "whole number", 1 },
	[INPUT_NUMBER] = { QUANTITY_COUNT, "", "number", 1 },
	[INPUT_RATE] = { QUANTITY_COUNT, NULL, "rate", 1 },
	[INPUT_VOLUME] = { QUANTITY_COUNT, NULL, "volume", 1 },
	[INPUT_CHOICE] = { QUANTITY_ANY, NULL, "one of", 1 },
	[INPUT_WORDS] = { QUANTITY_ANY, NULL, "words", 1 },
};

/* Units that the units room has no kind for. kg and L by definition (NIST SP 811). */
static const struct {
	enum input_kind kind;
	const char *unit;
	double times;
} own_units[] = {
	{ INPUT_RATE, "lb/h", 1 },
	{ INPUT_RATE, "lb/hr", 1 },
	{ INPUT_RATE, "kg/h", 1 / 0.45359237 },
	{ INPUT_VOLUME, "ft3", 1 },
	{ INPUT_VOLUME, "cu ft", 1 },
	{ INPUT_VOLUME, "L", 1 / 28.316846592 },
	{ INPUT_VOLUME, "m3", 1000 / 28.316846592 },
};

static int find_input(const struct topic *t, str key)
{
	for (int i = 0; i < TOPIC_INPUTS && t->inputs[i].key; i++)
		if (str_eq_nocase(str_of(t->inputs[i].key), key))
			return i;
	return -1;
}

static const struct value *value_of(const struct given *g, const char *key)
{
	int i = find_input(g->topic, str_of(key));

	assert(i >= 0);
	return &g->v[i < 0 ? 0 : i];
}

bool given_has(const struct given *g, const char *key)
{
	return value_of(g, key)->given;
}

double given_real(const struct given *g, const char *key)
{
	return value_of(g, key)->x;
}

str given_words(const struct given *g, const char *key)
{
	return value_of(g, key)->text;
}

bool given_is(const struct given *g, const char *key, const char *word)
{
	return str_eq_nocase(given_words(g, key), str_of(word));
}

const double *given_list(const struct given *g, const char *key, size_t *n)
{
	*n = value_of(g, key)->nlist;
	return value_of(g, key)->list;
}

static void refuse_value(struct answer *an, const struct input *in, str text,
    const char *reason)
{
	answer_refuse(an, "%s: %.*s: %s", in->key, STR_ARG(text), reason);
}

/* Longest value whose text is worth repeating. */
enum { VALUE_MOST = 200 };

/* A bare number takes the kind's own unit, where it has one. */
static bool parse(struct arena *a, const struct input *in, str text,
    enum sheet_metal metal, struct quantity *q, struct quantity_fault *f)
{
	const char *implied = kinds[in->kind].implied;

	if (quantity_parse(text, kinds[in->kind].quantity, metal, q, f) == QUANTITY_OK)
		return true;
	if (f->result != QUANTITY_NO_UNIT || !implied || !implied[0])
		return false;
	return quantity_parse(str_format(a, "%.*s %s", STR_ARG(text), implied),
	    kinds[in->kind].quantity, metal, q, f) == QUANTITY_OK;
}

static void check_bounds(struct answer *an, const struct input *in, str text, double x)
{
	if (!(x >= 0) || (!in->zero_ok && x <= 0))
		refuse_value(an, in, text,
		    in->zero_ok ? "must not be under 0" : "must be more than 0");
	else if (in->kind == INPUT_COUNT && (x > 1e6 || x != (double)(long)x))
		refuse_value(an, in, text, "must be a whole number");
	else if (in->kind == INPUT_PERCENT && x > 100)
		refuse_value(an, in, text, "must not be over 100 %");
}

static void read_quantity(struct answer *an, const struct input *in, struct value *v,
    enum sheet_metal metal)
{
	struct quantity q;
	struct quantity_fault f;
	struct buf b = { .arena = an->arena };

	/* The units room would take the minus for half a tolerance. */
	if (v->text.p[0] == '-') {
		refuse_value(an, in, v->text, "must not be under 0");
		return;
	}
	if (!parse(an->arena, in, v->text, metal, &q, &f)) {
		refuse_value(an, in, v->text, f.reason);
		if (f.likely.n)
			an->fault = str_format(an->arena, "%.*s, perhaps %.*s",
			    STR_ARG(an->fault), STR_ARG(f.likely));
		return;
	}
	if ((q.range && !in->range_ok) || q.tolerance) {
		refuse_value(an, in, v->text, "one value is asked for, no range or "
		    "tolerance");
		return;
	}
	v->x = q.hi * kinds[in->kind].times;
	check_bounds(an, in, v->text, v->x);
	if (q.kind == QUANTITY_COUNT || in->kind == INPUT_TONS)
		return;
	format_quantity_as(&b, &(struct format){ .metric_first = an->metric }, &q);
	v->shown = buf_str(&b);
}

static void read_list(struct answer *an, const struct input *in, struct value *v,
    enum sheet_metal metal)
{
	struct quantity_list list;
	struct quantity_fault f;

	if (quantity_list_parse(an->arena, v->text, QUANTITY_LENGTH, metal, &list, &f) !=
	    QUANTITY_OK) {
		refuse_value(an, in, v->text, f.reason);
		return;
	}
	v->list = arena_array(an->arena, list.n, sizeof *v->list);
	v->nlist = list.n;
	for (size_t i = 0; i < list.n; i++) {
		v->list[i] = list.v[i].lo;
		check_bounds(an, in, v->text, list.v[i].lo);
		if (list.v[i].range || list.v[i].tolerance)
			refuse_value(an, in, v->text, "plain lengths only");
	}
}

/* "10.2 lb/h": a number, then one of our own units. */
static void read_own(struct answer *an, const struct input *in, struct value *v)
{
	struct quantity q;
	struct quantity_fault f;

	for (size_t i = 0; i < sizeof own_units / sizeof *own_units; i++) {
		str unit = str_of(own_units[i].unit);
		size_t n = v->text.n - unit.n;

		if (own_units[i].kind != in->kind || v->text.n <= unit.n ||
		    !str_eq_nocase(str_sub(v->text, n, v->text.n), unit))
			continue;
		if (quantity_parse(str_trim(str_sub(v->text, 0, n)), QUANTITY_COUNT,
		    METAL_NONE, &q, &f) != QUANTITY_OK || q.range || q.tolerance)
			break;
		v->x = q.lo * own_units[i].times;
		check_bounds(an, in, v->text, v->x);
		return;
	}
	refuse_value(an, in, v->text, in->kind == INPUT_RATE ?
	    "a number with lb/h or kg/h is asked for" :
	    "a number with ft3, L or m3 is asked for");
}

static void read_choice(struct answer *an, const struct input *in, struct value *v)
{
	str rest = str_of(in->hint), word;

	while (str_next(&rest, '|', &word)) {
		if (str_eq_nocase(word, v->text)) {
			v->text = word;
			return;
		}
	}
	answer_refuse(an, "%s: %.*s is none of: %s", in->key, STR_ARG(v->text), in->hint);
}

static void read_value(struct answer *an, const struct input *in, struct value *v,
    enum sheet_metal metal)
{
	if (!v->text.n)
		answer_refuse(an, "%s has no value", in->key);
	else if (v->text.n > VALUE_MOST)
		answer_refuse(an, "%s is too long a value", in->key);
	else if (in->kind == INPUT_CHOICE)
		read_choice(an, in, v);
	else if (in->kind == INPUT_LENGTHS)
		read_list(an, in, v, metal);
	else if (in->kind == INPUT_RATE || in->kind == INPUT_VOLUME)
		read_own(an, in, v);
	else if (in->kind != INPUT_WORDS)
		read_quantity(an, in, v, metal);
}

/* "amps 325 amps": the word after a number is its unit, not the key again. */
static bool is_unit_of(const struct value *v, str word)
{
	return v->text.n && unit_find(word);
}

/* Shares the words out to the inputs. */
static void take_words(struct given *g, struct answer *an, str *words, size_t n)
{
	int at = -1;

	for (size_t i = 0; i < n; i++) {
		int next = find_input(g->topic, words[i]);
		struct value *v = at < 0 ? NULL : &g->v[at];

		if (next >= 0 && (next != at || !is_unit_of(v, words[i]))) {
			at = next;
			if (g->v[at].said)
				answer_refuse(an, "%s is given twice",
				    g->topic->inputs[at].key);
			g->v[at].said = g->v[at].given = true;
		} else if (!v) {
			answer_refuse(an, "%s has no input called %.*s", g->topic->word,
			    STR_ARG(str_sub(words[i], 0, VALUE_MOST)));
			return;
		} else {
			v->text = v->text.n ? str_format(an->arena, "%.*s %.*s",
			    STR_ARG(v->text), STR_ARG(words[i])) : words[i];
		}
	}
}

/* A gauge needs its metal: the input called material, else none. */
static enum sheet_metal metal_given(const struct given *g)
{
	int i = find_input(g->topic, STR("material"));

	return i >= 0 ? sheet_metal_of(g->v[i].text) : METAL_NONE;
}

static void assume_rest(struct given *g, struct answer *an)
{
	for (int i = 0; i < TOPIC_INPUTS && g->topic->inputs[i].key; i++) {
		const struct input *in = &g->topic->inputs[i];

		if (g->v[i].said)
			continue;
		if (in->need == NEED_OWED)
			answer_refuse(an, "%s is missing", in->key);
		if (in->otherwise) {
			g->v[i].text = str_of(in->otherwise);
			g->v[i].given = true;
		}
	}
}

static void list_inputs(const struct given *g, struct answer *an)
{
	for (int i = 0; i < TOPIC_INPUTS && g->topic->inputs[i].key; i++) {
		if (!g->v[i].given)
			continue;
		*ARENA_PUSH(an->arena, an->inputs, an->ninputs, an->inputs_cap) =
		    (struct answer_input){ g->topic->inputs[i].key,
			g->v[i].shown.n ? g->v[i].shown : g->v[i].text, !g->v[i].said };
	}
}

struct answer *topic_reckon(struct arena *a, const struct topic *t, str *words, size_t n,
    bool metric)
{
	struct given g = { .topic = t };
	struct answer *an = arena_alloc(a, sizeof *an);

	an->arena = a;
	an->metric = metric;
	take_words(&g, an, words, n);
	assume_rest(&g, an);
	g.metal = metal_given(&g);
	for (int i = 0; i < TOPIC_INPUTS && t->inputs[i].key && !an->fault.n; i++)
		if (g.v[i].given)
			read_value(an, &t->inputs[i], &g.v[i], g.metal);
	if (an->fault.n)
		return an;
	list_inputs(&g, an);
	t->work(&g, an);
	return an;
}

static void add_input_line(struct buf *b, const struct input *in)
{
	size_t from = b->n;

	buf_addf(b, "    %s", in->key);
	do
		buf_addc(b, ' ');
	while (b->n - from < 18);
	if (in->kind == INPUT_CHOICE)
		buf_addf(b, "one of: %s", in->hint);
	else
		buf_addf(b, "%s (%s)", in->hint, kinds[in->kind].name);
	if (in->otherwise)
		buf_addf(b, "; %s unless said", in->otherwise);
	else if (in->need == NEED_MAY)
		buf_adds(b, "; may be left out");
	buf_addc(b, '\n');
}

void topic_usage(struct buf *b, const struct topic *t)
{
	buf_addf(b, "%s: %s\n", t->word, t->does);
	for (int i = 0; i < TOPIC_INPUTS && t->inputs[i].key; i++)
		add_input_line(b, &t->inputs[i]);
	buf_addf(b, "  Example: fitup reckon %s\n", t->example);
}

static str likely_topic(str word, const struct topic *rows, size_t n)
{
	size_t least = 4;
	str likely = { 0 };

	for (size_t i = 0; i < n; i++) {
		size_t far = str_distance(word, str_of(rows[i].word), 3);

		if (far < least && far < word.n) {
			least = far;
			likely = str_of(rows[i].word);
		}
	}
	return likely;
}

const struct topic *topic_find(str word, str *likely)
{
	size_t n;
	const struct topic *rows = topic_rows(&n);

	*likely = (str){ 0 };
	for (size_t i = 0; i < n; i++)
		if (str_eq_nocase(word, str_of(rows[i].word)))
			return &rows[i];
	*likely = likely_topic(word, rows, n);
	return NULL;
}

enum { CALL_WORDS = 64 };

struct answer *topic_call(struct arena *a, str call, bool metric, const struct topic **topic)
{
	str rest = call, word = { 0 }, likely, words[CALL_WORDS];
	struct answer *an;
	size_t n = 0;

	str_word(&rest, &word);
	*topic = topic_find(word, &likely);
	if (*topic) {
		while (n < CALL_WORDS && str_word(&rest, &words[n]))
			n++;
		return topic_reckon(a, *topic, words, n, metric);
	}
	an = arena_alloc(a, sizeof *an);
	an->arena = a;
	answer_refuse(an, "\"%.*s\" is no topic of `fitup reckon`%s%.*s%s", STR_ARG(word),
	    likely.n ? "; is it " : "", STR_ARG(likely), likely.n ? "?" : "");
	return an;
}
