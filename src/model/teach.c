/* What an assignment asks for and what it gives. */
#include "model/assignment.h"

static void complain_rest(struct binder *b, struct said rest)
{
	finding_repair(b->f, complain(b, FINDING_NOT_UNDERSTOOD, said_pos(rest),
	    "\"%.*s\" has no meaning here; it is left out", STR_ARG(rest.s)),
	    "write one skill and its level a bullet, or begin with \"one of:\"");
}

static bool take_one_of(struct said *t)
{
	struct said rest = *t;

	if (!said_skip(&rest, STR("one")))
		return false;
	if (!said_skip(&rest, STR("of:")) && !said_skip(&rest, STR("of")))
		return false;
	if (str_starts(rest.s, STR(":")))
		rest = said_trim(said_sub(rest, 1, rest.s.n));
	*t = rest;
	return true;
}

/* At least as many as there are alternatives. */
static size_t count_separators(str s)
{
	size_t n = 0;

	for (size_t i = 0; i < s.n; i++)
		n += s.p[i] == ',' || s.p[i] == ';' ||
		    (s.p[i] == ' ' && str_starts(str_sub(s, i, s.n), STR(" or ")));
	return n;
}

/* The part of t before " or ", which is taken off; all of it when there is none. */
static bool next_alternative(struct said *t, struct said *out)
{
	size_t at = str_find(t->s, STR(" or "), 0);

	*out = said_trim(said_sub(*t, 0, at));
	*t = said_sub(*t, at + 3, t->s.n);
	return out->s.n > 0;
}

/* One skill with its level and nothing after it; false when t is empty. */
static bool read_alone(struct binder *b, struct said t, struct skill_at *out)
{
	if (!read_skill_at(b, &t, out))
		return false;
	t = said_trim(t);
	if (t.s.n)
		complain_rest(b, t);
	return true;
}

/* Appends the skills of one part of a choice to v and returns how many there were. */
static size_t read_alternatives(struct binder *b, struct said part, struct skill_at *v)
{
	struct said one;
	size_t n = 0;

	said_skip(&part, STR("or"));
	while (next_alternative(&part, &one) && read_alone(b, one, &v[n]))
		n++;
	return n;
}

static void read_need(struct binder *b, const struct block *in, struct skill_at *v)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;
	bool choice = take_one_of(&rest);
	size_t n = 0;

	if (!choice)
		n = read_alone(b, rest, v);
	while (choice && said_next(&rest, ",;", &part))
		n += read_alternatives(b, part, v + n);
	if (n)
		a->needs[a->nneeds++] = (struct need){ block_pos(in, 0), v, n };
	else
		complain_block(b, in, "name the skills that stand for choice");
}

/* Exact arrays: a large program holds tens of thousands of these sections, and
 * growing each by halves would cost more than all the rest. */
void read_needs(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	struct assignment *a = b->a;
	struct skill_at *all;
	size_t most = n;

	(void)h;
	for (size_t i = 0; i < n; i++)
		if (str_starts_nocase(v[i].text, STR("one")))
			most += count_separators(v[i].text);
	all = arena_array(b->arena, most, sizeof *all);
	a->needs = arena_array(b->arena, n, sizeof *a->needs);
	a->needs_cap = n;
	for (size_t i = 0; i < n; i++) {
		if (v[i].kind != BLOCK_BULLET || v[i].level > 1) {
			complain_block(b, &v[i],
			    "write a need as \"- smaw.2f practiced\"");
			continue;
		}
		read_need(b, &v[i], all);
		if (a->nneeds && a->needs[a->nneeds - 1].v == all)
			all += a->needs[a->nneeds - 1].n;
	}
}

static void read_teach(struct binder *b, const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), by;
	struct skill_at at;

	if (!read_skill_at(b, &rest, &at))
		return;
	rest = said_trim(rest);
	by = rest;
	if (said_skip(&by, STR("by")))
		at.evidence = by.s;
	else if (rest.s.n)
		complain_rest(b, rest);
	a->teaches[a->nteaches++] = at;
}

void read_teaches(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	(void)h;
	b->a->teaches = arena_array(b->arena, n, sizeof *b->a->teaches);
	b->a->teaches_cap = n;
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_BULLET && v[i].level == 1)
			read_teach(b, &v[i]);
		else
			complain_block(b, &v[i],
			    "write \"- smaw.2f assessed by Visual\"");
}
