#include "model/said.h"

#include <stdarg.h>

struct finding *complain(struct binder *b, enum finding_name name, struct pos pos,
    const char *format, ...)
{
	struct finding *d;
	va_list ap;

	va_start(ap, format);
	d = finding_addv(b->f, name, pos, format, &ap);
	va_end(ap);
	d->scope = SCOPE_FILE;
	if (b->a) {
		d->assignment = b->a->id;
	} else if (b->quarter) {
		d->scope = SCOPE_QUARTER;
		d->quarter = b->quarter;
	} else if (b->aside) {
		/* Names no assignment, so it holds no document back. */
		d->scope = SCOPE_ASSIGNMENTS;
	}
	return d;
}

/* Likely words are worked out for the first findings of a part only: a file of nothing
 * but faults must not take minutes. */
enum { LIKELY_FINDINGS = 200, GUESSES_MOST = 12 };

bool is_worth_a_guess(const struct binder *b, const struct finding *d)
{
	return b->told + (size_t)(d - b->f->v) < LIKELY_FINDINGS;
}

static bool is_noted(const struct finding *d, str right)
{
	for (const struct slip *s = d->slips; s; s = s->next)
		if (str_eq_nocase(s->right, right))
			return true;
	return false;
}

void offer_guesses(struct binder *b, struct finding *d, str wrong, const str *v, size_t n,
    size_t most)
{
	size_t told = 0;

	for (size_t i = 0; is_worth_a_guess(b, d) && i < n && told < GUESSES_MOST; i++) {
		if (is_noted(d, v[i]) || (most < ANY_DISTANCE &&
		    str_distance(wrong, v[i], most) > most))
			continue;
		finding_guess(b->f, d, d->pos, wrong, v[i]);
		told++;
	}
}

void offer_missing(struct binder *b, size_t from, struct pos pos, str wrong, const str *v,
    size_t n)
{
	for (size_t i = from; i < b->f->n && is_worth_a_guess(b, &b->f->v[i]); i++) {
		struct finding *d = &b->f->v[i];

		if ((d->name == FINDING_UNKNOWN_KEY || d->name == FINDING_UNKNOWN_SECTION) &&
		    !pos_cmp(d->pos, pos) && !d->slips)
			offer_guesses(b, d, wrong, v, n, ANY_DISTANCE);
	}
}

str offer_likely(struct binder *b, struct finding *d, str wrong, const str *v, size_t n)
{
	str likely = { 0 };

	if (is_worth_a_guess(b, d))
		likely = likely_word(wrong, v, n);
	if (!likely.n)
		return likely;
	finding_offer(b->f, d, d->pos, wrong, likely);
	offer_guesses(b, d, wrong, v, n, str_distance(wrong, likely, wrong.n));
	return likely;
}

/* The other words of a list that are as near as the likely one; where none is, those of a
 * short list and the nearest of a long one. */
static void offer_words(struct binder *b, struct finding *d, str wrong,
    const struct words *w, str likely)
{
	size_t n = 0, near = likely.n ? str_distance(wrong, likely, wrong.n) : ANY_DISTANCE;
	str *v = arena_array(b->arena, w->n, sizeof *v);

	for (size_t i = 0; i < w->n; i++)
		if (likely.n || words_show(w, w->v[i].value).p == w->v[i].word.p)
			v[n++] = w->v[i].word;
	/* Of a long list only what is one letter off. */
	if (!likely.n && n > GUESSES_MOST)
		near = 1;
	offer_guesses(b, d, wrong, v, n, near);
}

uint32_t complain_word(struct binder *b, struct said t, const struct words *w)
{
	struct finding *d = complain(b, FINDING_UNKNOWN_WORD, said_pos(t),
	    "\"%.*s\" is not %.*s; it is left out", STR_ARG(t.s), STR_ARG(w->what));
	uint32_t value;
	str likely;

	if (!is_worth_a_guess(b, d))
		return NONE;
	value = words_guess(b->arena, w, t.s, &likely);
	if (likely.n)
		finding_offer(b->f, d, d->pos, t.s, likely);
	offer_words(b, d, t.s, w, likely);
	if (!likely.n) {
		finding_repair(b->f, d, "choose one of: %.*s",
		    STR_ARG(words_list(b->arena, w)));
		return NONE;
	}
	if (value != NONE)
		d->message = str_format(b->f->arena, "\"%.*s\" is not %.*s; it is read as "
		    "\"%.*s\"", STR_ARG(t.s), STR_ARG(w->what), STR_ARG(likely));
	return value;
}

void complain_block(struct binder *b, const struct block *v, const char *wanted)
{
	static const char *const names[] = {
		[BLOCK_HEADING] = "this heading", [BLOCK_FACT] = "this fact",
		[BLOCK_BULLET] = "this bullet", [BLOCK_STEP] = "this numbered line",
		[BLOCK_PARA] = "this paragraph", [BLOCK_FENCE] = "this block of lines",
		[BLOCK_PICTURE] = "a picture",
	};
	struct finding *d = complain(b, FINDING_NOT_UNDERSTOOD, v->pos,
	    "%s has no meaning here; it is left out", names[v->kind]);

	finding_repair(b->f, d, "%s", wanted);
}

void complain_same_name(struct binder *b, const struct block *h, struct pos first)
{
	struct finding *d = complain(b, FINDING_DUPLICATE_ID, h->pos,
	    "\"%.*s\" stands twice; what stands under this one is left out",
	    STR_ARG(h->text));

	finding_relate(b->f, d, first)->label = STR("the first counts");
	finding_repair(b->f, d, "delete one of them, or give it a name of its own");
}

/* A quantity of each kind as it is written. */
static const char *const forms[QUANTITY_KINDS] = {
	[QUANTITY_ANY] = "\"3/8 in\"", [QUANTITY_LENGTH] = "\"3/8 in\", \"1-1/2 in\" or "
	    "\"9.5 mm\"", [QUANTITY_ANGLE] = "\"30 deg\"",
	[QUANTITY_CURRENT] = "\"110-140 A\"", [QUANTITY_VOLTAGE] = "\"18-20 V\"",
	[QUANTITY_TIME] = "\"4 h\" or \"90 min\"", [QUANTITY_MASS] = "\"12 lb\"",
	[QUANTITY_FLOW] = "\"20 cfh\"", [QUANTITY_TEMPERATURE] = "\"250 degF\"",
	[QUANTITY_PRESSURE] = "\"5 psi\"", [QUANTITY_SPEED] = "\"8 in/min\"",
	[QUANTITY_PERCENT] = "\"50 %\"", [QUANTITY_COUNT] = "\"3\"",
	[QUANTITY_PIPE] = "\"NPS 6 schedule 40\"",
};

/* A gauge without a metal is one slip, however many sizes of the assignment are given by
 * gauge: they are listed with the first. True when it is told already. */
static bool is_told_of_gauge(struct binder *b, struct said at, str text)
{
	struct finding *d;

	if (!b->a)
		return false;
	if (b->gauge_of != b->a || b->gauge >= b->f->n ||
	    b->f->v[b->gauge].name != FINDING_GAUGE_WITHOUT_MATERIAL) {
		b->gauge_of = b->a;
		b->gauge = b->f->n;
		return false;
	}
	d = &b->f->v[b->gauge];
	finding_relate(b->f, d, said_pos(at))->label = text;
	return true;
}

static str first_word(str s)
{
	str word;

	return str_word(&s, &word) ? word : s;
}

void complain_fault(struct binder *b, struct said t, const struct quantity_fault *fault)
{
	static const enum finding_name names[] = {
		[QUANTITY_OK] = FINDING_BAD_QUANTITY,
		[QUANTITY_BAD] = FINDING_BAD_QUANTITY,
		[QUANTITY_NO_UNIT] = FINDING_MISSING_UNIT,
		[QUANTITY_NO_METAL] = FINDING_GAUGE_WITHOUT_MATERIAL,
		[QUANTITY_UNKNOWN_UNIT] = FINDING_BAD_QUANTITY,
	};
	struct said at = said_sub(t, fault->offset, t.s.n);
	struct finding *d;

	if (fault->result == QUANTITY_NO_METAL && is_told_of_gauge(b, at, t.s))
		return;
	d = complain(b, names[fault->result], said_pos(at), "\"%.*s\": %s; it is left out",
	    STR_ARG(t.s), fault->reason);
	if (fault->result == QUANTITY_NO_METAL)
		finding_repair(b->f, d, "name a material that has sheet gauges, such as "
		    "\"A1011 sheet\"");
	else if (fault->result == QUANTITY_NO_UNIT && fault->likely.n)
		finding_offer(b->f, d, said_pos(t), t.s, str_format(b->f->arena,
		    "%.*s %.*s", STR_ARG(t.s), STR_ARG(fault->likely)));
	else if (fault->likely.n)
		finding_offer(b->f, d, d->pos, first_word(at.s), fault->likely);
	else
		finding_repair(b->f, d, "write it as %s", forms[str_starts_nocase(t.s,
		    STR("NPS ")) ? QUANTITY_PIPE : fault->want]);
}

bool read_word(struct binder *b, struct said t, const struct words *w, uint32_t *value)
{
	*value = words_find(w, t.s);
	if (*value == NONE)
		*value = complain_word(b, t, w);
	return *value != NONE;
}

bool read_count(struct binder *b, struct said t, uint32_t lo, uint32_t hi, uint32_t *out)
{
	if (str_to_u32(t.s, out) && *out >= lo && *out <= hi)
		return true;
	finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(t),
	    "\"%.*s\" is not a whole number from %u to %u; it is left out", STR_ARG(t.s),
	    (unsigned)lo, (unsigned)hi), "write %u, %u or a whole number between",
	    (unsigned)lo, (unsigned)hi);
	*out = 0;
	return false;
}

bool read_number(struct binder *b, struct said t, double *out)
{
	struct quantity_fault fault;
	struct quantity q;

	*out = 0;
	if (quantity_parse(t.s, QUANTITY_COUNT, METAL_NONE, &q, &fault) == QUANTITY_OK &&
	    !q.range && !q.no_value && q.lo >= 0 && q.lo < 100000) {
		*out = q.lo;
		return true;
	}
	finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(t),
	    "\"%.*s\" is not a number; it is left out", STR_ARG(t.s)),
	    "write it in figures: 3, 4.5");
	return false;
}

bool read_quantity(struct binder *b, struct said t, enum quantity_kind kind,
    enum sheet_metal metal, struct quantity *out)
{
	struct quantity_fault fault;

	if (quantity_parse(t.s, kind, metal, out, &fault) == QUANTITY_OK)
		return true;
	complain_fault(b, t, &fault);
	return false;
}

bool keep_size(struct binder *b, struct said t, struct quantity *q)
{
	if (!quantity_given(q) || q->kind != QUANTITY_LENGTH || q->lo > 0)
		return true;
	finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(t),
	    "\"%.*s\": a size is more than 0; it is left out", STR_ARG(t.s)),
	    "write the size, or take the line out");
	*q = (struct quantity){ 0 };
	return false;
}

bool read_legs(struct binder *b, struct said t, enum sheet_metal metal, struct quantity *first,
    struct quantity *second)
{
	struct quantity_fault fault;
	struct quantity_list list;

	*first = *second = (struct quantity){ 0 };
	if (quantity_product_parse(b->arena, t.s, metal, &list, NULL, &fault) != QUANTITY_OK ||
	    list.n != 2)
		return read_quantity(b, t, QUANTITY_LENGTH, metal, first) &&
		    keep_size(b, t, first);
	if (!keep_size(b, t, &list.v[0]) || !keep_size(b, t, &list.v[1]))
		return false;
	*first = list.v[0];
	if (!quantity_same(&list.v[0], &list.v[1]))
		*second = list.v[1];
	return true;
}

bool read_pipe(struct binder *b, struct said t, struct pipe_size *out)
{
	struct quantity q;

	*out = (struct pipe_size){ 0 };
	if (!read_quantity(b, t, QUANTITY_PIPE, METAL_NONE, &q))
		return false;
	*out = pipe_size_of(b->arena, &q);
	return true;
}

bool read_hours(struct binder *b, struct said t, double *out)
{
	struct quantity_fault fault;
	struct quantity q;
	uint32_t whole;

	/* By far the most common form, and cheap. */
	if (str_to_u32(t.s, &whole) && whole > 0 && whole < 100000) {
		*out = whole;
		return true;
	}
	*out = 0;
	if (quantity_parse(t.s, QUANTITY_TIME, METAL_NONE, &q,
	    &fault) == QUANTITY_NO_UNIT)
		fault.result = quantity_parse(t.s, QUANTITY_COUNT, METAL_NONE, &q,
		    &fault);
	if (fault.result != QUANTITY_OK) {
		complain_fault(b, t, &fault);
		return false;
	}
	if (q.range || q.no_value || q.lo <= 0 || q.lo >= 100000) {
		finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(t),
		    "\"%.*s\" is not a number of hours; it is left out", STR_ARG(t.s)),
		    "write one number over 0: 4, 1.5");
		return false;
	}
	*out = q.lo;
	return true;
}

static void complain_level(struct binder *b, struct skill_at *s, struct said wrong)
{
	str id = s->written;
	struct finding *d = complain(b, FINDING_MISSING_LEVEL, s->pos,
	    "\"%.*s\" does not say how far; it is left out", STR_ARG(id));

	d->skill = id;
	if (wrong.s.n)
		finding_cause(b->f, d, "\"%.*s\" is not a level", STR_ARG(wrong.s));
	finding_repair(b->f, d, "write \"%.*s introduced\", \"%.*s practiced\" or "
	    "\"%.*s assessed\"", STR_ARG(id), STR_ARG(id), STR_ARG(id));
}

bool read_skill_at(struct binder *b, struct said *t, struct skill_at *out)
{
	struct said id, rest, word = { 0 };
	uint32_t level;
	size_t comma;

	*out = (struct skill_at){ .skill = NONE };
	if (!said_word(t, &id))
		return false;
	out->written = id.s;
	out->pos = said_pos(id);
	out->skill = map_find(b->model->skill_by_id, id.s);
	rest = *t;
	if (!said_word(&rest, &word)) {
		complain_level(b, out, word);
		return true;
	}
	comma = str_find_char(word.s, ',', 0);
	if (comma < word.s.n)
		rest.s = str_trim_left(str_sub(t->s, (size_t)(word.s.p - t->s.p) + comma,
		    t->s.n));
	word.s.n = comma;
	level = words_find(&words_level, word.s);
	if (level != NONE) {
		out->level = (enum skill_level)level;
		*t = rest;
		return true;
	}
	if (str_eq_nocase(word.s, STR("by"))) {
		word.s.n = 0;
	} else if (words_likely(b->arena, &words_level, word.s).n) {
		level = complain_word(b, word, &words_level);
		out->level = level == NONE ? 0 : (enum skill_level)level;
		*t = rest;
		return true;
	} else {
		*t = rest;
	}
	complain_level(b, out, word);
	return true;
}
