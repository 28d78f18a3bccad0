/* Acceptance lines as tests. */
#include "check/rule_test.h"

struct test_name {
	str name;
	enum test_kind kind;
};

static const struct test_name names[] = {
	{ { "face bend", 9 }, TEST_FACE_BEND }, { { "root bend", 9 }, TEST_ROOT_BEND },
	{ { "side bend", 9 }, TEST_SIDE_BEND }, { { "fillet break", 12 }, TEST_FILLET_BREAK },
	{ { "nick-break", 10 }, TEST_NICK_BREAK }, { { "nick break", 10 }, TEST_NICK_BREAK },
	{ { "tensile", 7 }, TEST_TENSILE }, { { "macro", 5 }, TEST_MACRO },
};

static enum test_kind kind_of(str name)
{
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (name.n && !((name.p[0] ^ names[i].name.p[0]) & 0x1F) &&
		    str_starts_nocase(name, names[i].name))
			return names[i].kind;
	return TEST_NONE;
}

static double size_after(str text, const char *word, enum quantity_kind kind)
{
	size_t at = str_find(text, str_of(word), 0), used;
	struct quantity_fault fault;
	struct quantity q;
	str rest;

	if (at >= text.n)
		return 0;
	rest = str_trim_left(str_sub(text, at + str_of(word).n, text.n));
	return quantity_prefix(rest, kind, METAL_NONE, &q, &used, &fault) == QUANTITY_OK
	    ? q.lo : 0;
}

struct test_lines test_lines_of(struct arena *a, const struct assignment *as)
{
	struct test_lines l = { 0 };

	for (size_t i = 0; i < as->ncriteria; i++) {
		const struct criterion *c = &as->criteria[i];
		enum test_kind kind = kind_of(c->name);
		struct test_line *t;

		if (!kind)
			continue;
		t = ARENA_PUSH(a, l.v, l.n, l.cap);
		t->kind = kind;
		t->c = c;
		t->n = test_counts_of(c);
		t->plunger_mm = size_after(c->text, "plunger", QUANTITY_LENGTH);
		t->die_mm = size_after(c->text, "die opening", QUANTITY_LENGTH);
		t->strain = size_after(c->text, "strain", QUANTITY_PERCENT);
	}
	return l;
}

bool test_suits(enum test_kind k, enum joint j)
{
	if (k == TEST_FILLET_BREAK)
		return joint_is_fillet(j);
	if (test_is_bend(k))
		return joint_is_butt(j) || j == JOINT_SURFACING;
	return k == TEST_MACRO || joint_is_butt(j);
}

bool test_covers(const struct test_line *t, const struct assignment *a, size_t i)
{
	char letter = a->welds[i].letter;

	/* One weld has no letter, whatever the line calls it. */
	return !t->n.lettered || !letter || t->n.of[letter - 'A'] > 0;
}

uint32_t test_count(const struct test_line *t, const struct assignment *a, size_t i)
{
	char letter = a->welds[i].letter;
	uint32_t suited = 0;

	if (!test_suits(t->kind, a->welds[i].joint) || !test_covers(t, a, i))
		return 0;
	if (t->n.lettered && letter)
		return t->n.of[letter - 'A'];
	for (size_t k = 0; k < a->nwelds; k++)
		suited += test_suits(t->kind, a->welds[k].joint);
	return t->n.total / suited;
}

bool test_lines_bend(const struct test_lines *l)
{
	for (size_t i = 0; i < l->n; i++)
		if (test_is_bend(l->v[i].kind))
			return true;
	return false;
}
