/* Acceptance lines as tests. */
#include "check/rule_test.h"

struct test_name {
	const char *name;
	enum test_kind kind;
};

static const struct test_name names[] = {
	{ "face bend", TEST_FACE_BEND }, { "root bend", TEST_ROOT_BEND },
	{ "side bend", TEST_SIDE_BEND }, { "fillet break", TEST_FILLET_BREAK },
	{ "nick-break", TEST_NICK_BREAK }, { "nick break", TEST_NICK_BREAK },
	{ "tensile", TEST_TENSILE }, { "macro", TEST_MACRO },
};

static enum test_kind kind_of(str name)
{
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (str_starts_nocase(name, str_of(names[i].name)))
			return names[i].kind;
	return TEST_NONE;
}

/* "2", "two"; 0 when the word is no small number. */
static uint32_t number_of(str word)
{
	static const char *const words[] = { "one", "two", "three", "four", "five", "six",
		"seven", "eight" };
	uint32_t n;

	if (str_to_u32(word, &n))
		return n < 100 ? n : 0;
	for (uint32_t i = 0; i < sizeof words / sizeof *words; i++)
		if (str_eq_nocase(word, str_of(words[i])))
			return i + 1;
	return 0;
}

static str bare(str word)
{
	while (word.n && (word.p[word.n - 1] == ',' || word.p[word.n - 1] == '.'))
		word.n--;
	return word;
}

/* Counts stand before the first semicolon and before code, plunger or die. */
static str counted_part(str text)
{
	static const char *const ends[] = { "D1.", "ASME", "plunger", "die", "at least",
		"strain" };
	size_t n = str_find_char(text, ';', 0);

	for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
		size_t at = str_find(text, str_of(ends[i]), 0);

		if (at < n)
			n = at;
	}
	return str_sub(text, 0, n);
}

/* "2 of A, 1 of B", "3, one of A and two of B", "2 of C at 2G, 2 at 5G", "4". */
static void read_counts(struct test_line *t)
{
	str rest = counted_part(t->c->text), word;
	uint32_t n = 0, last = TEST_LETTERS, lettered = 0, loose = 0;

	while (str_word(&rest, &word)) {
		uint32_t number = number_of(bare(word));
		char c = bare(word).n == 1 ? bare(word).p[0] : 0;

		if (number) {
			loose += n;
			n = number;
		} else if (n && c >= 'A' && c <= 'Z') {
			last = (uint32_t)(c - 'A');
			t->of[last] += n;
			lettered += n;
			n = 0;
		} else if (n && str_eq(word, STR("at")) && last < TEST_LETTERS) {
			t->of[last] += n;
			lettered += n;
			n = 0;
		}
	}
	t->lettered = lettered > 0;
	t->total = lettered ? lettered : loose + n;
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
		read_counts(t);
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
	return !t->lettered || !letter || t->of[letter - 'A'] > 0;
}

uint32_t test_count(const struct test_line *t, const struct assignment *a, size_t i)
{
	char letter = a->welds[i].letter;
	uint32_t suited = 0;

	if (!test_suits(t->kind, a->welds[i].joint) || !test_covers(t, a, i))
		return 0;
	if (t->lettered && letter)
		return t->of[letter - 'A'];
	for (size_t k = 0; k < a->nwelds; k++)
		suited += test_suits(t->kind, a->welds[k].joint);
	return t->total / suited;
}

bool test_lines_bend(const struct test_lines *l)
{
	for (size_t i = 0; i < l->n; i++)
		if (test_is_bend(l->v[i].kind))
			return true;
	return false;
}
