/* Sections of running text, and the steps of the procedure. */
#include "model/assignment.h"

#include "base/buf.h"

static enum para_kind para_kind_of(const struct block *v)
{
	if (v->kind == BLOCK_PARA)
		return PARA_TEXT;
	if (v->kind == BLOCK_STEP)
		return PARA_STEP;
	return v->level > 1 ? PARA_SUBBULLET : PARA_BULLET;
}

static struct para para_of(struct binder *b, const struct block *v, enum para_kind kind,
    uint32_t number)
{
	struct spans s = block_spans(b->arena, v);

	return (struct para){ kind, number, v->pos, s.v, s.n };
}

void prose_read(struct binder *b, const struct block *v, size_t n, struct prose *out)
{
	struct para *paras = arena_array(b->arena, n, sizeof *paras);
	size_t kept = 0;

	for (size_t i = 0; i < n; i++) {
		if (v[i].kind == BLOCK_FENCE || v[i].kind == BLOCK_HEADING ||
		    v[i].kind == BLOCK_PICTURE) {
			complain_block(b, &v[i], v[i].kind == BLOCK_PICTURE
			    ? "put it under ## Drawing" : "write sentences or bullets here");
			continue;
		}
		paras[kept++] = para_of(b, &v[i], para_kind_of(&v[i]), v[i].number);
	}
	*out = (struct prose){ paras, kept };
}

void read_bring(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	(void)h;
	prose_read(b, v, n, &b->a->bring);
}

void read_cautions(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	(void)h;
	prose_read(b, v, n, &b->a->cautions);
}

void read_if_it_fails(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	(void)h;
	prose_read(b, v, n, &b->a->if_it_fails);
}

void read_notes(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	(void)h;
	prose_read(b, v, n, &b->a->notes);
}

/* "**Reckon:** punch diameter 13/16 in thickness 1/4 in" */
static bool is_ask(const struct para *p)
{
	str lead = p->nspans ? str_trim(p->spans[0].text) : (str){ 0 };

	return p->nspans > 1 && p->spans[0].style & SPAN_BOLD &&
	    (str_eq_nocase(lead, STR("Reckon:")) || (str_eq_nocase(lead, STR("Reckon")) &&
	    str_starts(str_trim_left(p->spans[1].text), STR(":"))));
}

static void take_ask(struct binder *b, const struct para *p)
{
	struct ask *ask = ARENA_PUSH(b->arena, b->a->asks, b->a->nasks, b->a->asks_cap);
	struct buf words = { .arena = b->arena };

	for (size_t i = 1; i < p->nspans; i++)
		buf_add(&words, p->spans[i].text);
	ask->words = str_trim(buf_str(&words));
	if (ask->words.n && ask->words.p[0] == ':')
		ask->words = str_trim_left(str_sub(ask->words, 1, ask->words.n));
	ask->pos = p->pos;
}

/* What is asked for leaves the prose: its answer has a place of its own on the key. */
static void take_asks(struct binder *b)
{
	struct prose *prose = &b->a->instructor;
	struct para *kept = arena_array(b->arena, prose->n, sizeof *kept);
	size_t n = 0;

	for (size_t i = 0; i < prose->n; i++) {
		if (is_ask(&prose->v[i]))
			take_ask(b, &prose->v[i]);
		else
			kept[n++] = prose->v[i];
	}
	*prose = (struct prose){ kept, n };
}

void read_instructor(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	(void)h;
	prose_read(b, v, n, &b->a->instructor);
	take_asks(b);
}

/* A word of its own at the start: not "Stopwatch". */
static bool begins(str s, str word)
{
	return str_starts_nocase(s, word) &&
	    (s.n == word.n || !((s.p[word.n] >= 'a' && s.p[word.n] <= 'z') ||
	    (s.p[word.n] >= 'A' && s.p[word.n] <= 'Z') || (unsigned char)s.p[word.n] >= 0x80));
}

/* In a translation the word may be in either language. */
static bool is_stop(const struct language *l, str s)
{
	return begins(s, STR("Stop")) || begins(s, word(l, "Stop"));
}

/* Takes the bold opening of a hold point off the step's text. */
static void take_hold(struct binder *b, struct step *s)
{
	struct para *p = &s->para;
	struct span *rest;
	str hold;

	if (!p->nspans || !(p->spans[0].style & SPAN_BOLD))
		return;
	hold = str_trim(p->spans[0].text);
	if (!is_stop(b->language, hold))
		return;
	while (hold.n && (str_ends(hold, STR(":")) || str_ends(hold, STR("."))))
		hold = str_trim(str_sub(hold, 0, hold.n - 1));
	s->hold = hold;
	rest = arena_array(b->arena, p->nspans - 1, sizeof *rest);
	for (size_t i = 1; i < p->nspans; i++)
		rest[i - 1] = p->spans[i];
	if (p->nspans > 1) {
		str t = str_trim_left(rest[0].text);

		if (str_starts(t, STR(":")))
			t = str_trim_left(str_sub(t, 1, t.n));
		rest[0].text = t;
	}
	p->spans = rest;
	p->nspans--;
}

void read_steps(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	struct assignment *a = b->a;

	(void)h;
	for (size_t i = 0; i < n; i++) {
		struct step *s;

		if (v[i].kind != BLOCK_STEP || v[i].level > 1) {
			complain_block(b, &v[i], "number the steps, one action a step");
			continue;
		}
		s = ARENA_PUSH(b->arena, a->steps, a->nsteps, a->steps_cap);
		s->pos = v[i].pos;
		s->para = para_of(b, &v[i], PARA_STEP, (uint32_t)a->nsteps);
		take_hold(b, s);
	}
}
