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

static size_t count_commas(str s)
{
	size_t n = 0;

	for (size_t i = 0; i < s.n; i++)
		n += s.p[i] == ',' || s.p[i] == ';';
	return n;
}

static void read_need(struct binder *b, const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;
	bool choice = take_one_of(&rest);
	struct skill_at *v = arena_array(b->arena, choice ? count_commas(rest.s) + 1 : 1,
	    sizeof *v);
	size_t n = 0;

	while (said_next(&rest, choice ? ",;" : "", &part)) {
		said_skip(&part, STR("or"));
		if (!read_skill_at(b, &part, &v[n]))
			continue;
		n++;
		part = said_trim(part);
		if (part.s.n)
			complain_rest(b, part);
	}
	if (n)
		*ARENA_PUSH(b->arena, a->needs, a->nneeds, a->needs_cap) =
		    (struct need){ block_pos(in, 0), v, n };
	else
		complain_block(b, in, "name the skills that stand for choice");
}

void read_needs(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	(void)h;
	b->a->needs = arena_grow(b->arena, b->a->needs, b->a->nneeds, b->a->nneeds + n,
	    &b->a->needs_cap, sizeof *b->a->needs);
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_BULLET && v[i].level == 1)
			read_need(b, &v[i]);
		else
			complain_block(b, &v[i], "write a need as \"- smaw.2f practiced\"");
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
	*ARENA_PUSH(b->arena, a->teaches, a->nteaches, a->teaches_cap) = at;
}

void read_teaches(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	(void)h;
	b->a->teaches = arena_grow(b->arena, b->a->teaches, b->a->nteaches,
	    b->a->nteaches + n, &b->a->teaches_cap, sizeof *b->a->teaches);
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_BULLET && v[i].level == 1)
			read_teach(b, &v[i]);
		else
			complain_block(b, &v[i], "write \"- smaw.2f assessed by Visual\"");
}
