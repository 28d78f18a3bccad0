/* What is accepted, and how it is graded. */
#include "model/assignment.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_word_byte(char c)
{
	return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Offset of needle, a word of its own, without regard to case; s.n when absent. */
static size_t find_word(str s, str needle)
{
	for (size_t i = 0; i + needle.n <= s.n; i++) {
		size_t end = i + needle.n;

		if ((s.p[i] ^ needle.p[0]) & 0x1F)
			continue;
		if ((i && is_word_byte(s.p[i - 1])) ||
		    (end < s.n && is_word_byte(s.p[end])))
			continue;
		if (str_eq_nocase(str_sub(s, i, end), needle))
			return i;
	}
	return s.n;
}

/* "-2020" or ":2020" right after the code. */
static uint32_t edition_at(str s, size_t at)
{
	uint32_t year;

	if (at >= s.n || (s.p[at] != '-' && s.p[at] != ':'))
		return 0;
	if (at + 5 < s.n && is_digit(s.p[at + 5]))
		return 0;
	return str_to_u32(str_sub(s, at + 1, at + 5), &year) && year > 1900 ? year : 0;
}

/* Bytes of "D1.1" or "D1.1M" at the start of s, 0 when it does not begin so. */
static size_t structural_code(str s)
{
	size_t n = 3;

	if (!str_starts_nocase(s, STR("D1.")))
		return 0;
	while (n < s.n && is_digit(s.p[n]))
		n++;
	return n > 3 && (n == s.n || !is_word_byte(s.p[n])) ? n : 0;
}

static void find_code(struct criterion *c)
{
	str t = c->text;
	size_t at = find_word(t, STR("ASME IX"));

	if (at < t.n) {
		c->code = STR("ASME IX");
		c->edition = edition_at(t, at + 7);
		return;
	}
	for (size_t i = 0; i < t.n; i++) {
		size_t n = i && is_word_byte(t.p[i - 1]) ? 0
		    : structural_code(str_sub(t, i, t.n));

		if (!n)
			continue;
		c->code = str_sub(t, i, i + n);
		c->edition = edition_at(t, i + n);
		return;
	}
}

static void find_loading(struct criterion *c)
{
	static const struct { str said, shown; } loadings[] = {
		{ { "welder test", 11 }, { "welder test", 11 } },
		{ { "static", 6 }, { "static", 6 } },
		{ { "statically", 10 }, { "static", 6 } },
		{ { "cyclic", 6 }, { "cyclic", 6 } },
		{ { "cyclically", 10 }, { "cyclic", 6 } },
	};

	for (size_t i = 0; i < sizeof loadings / sizeof *loadings; i++)
		if (find_word(c->text, loadings[i].said) < c->text.n) {
			c->loading = loadings[i].shown;
			return;
		}
}

static void complain_repeat(struct binder *b, const struct block *v, struct pos first)
{
	finding_relate(b->f, complain(b, FINDING_DUPLICATE_KEY, v->key_pos,
	    "\"%.*s\" stands twice here; this line is left out", STR_ARG(v->key)),
	    first)->label = STR("the first counts");
}

static void read_criterion(struct binder *b, const struct block *v)
{
	struct assignment *a = b->a;
	struct criterion *c;

	for (size_t i = 0; i < a->ncriteria; i++)
		if (words_same(a->criteria[i].name, v->key)) {
			complain_repeat(b, v, a->criteria[i].pos);
			return;
		}
	c = ARENA_PUSH(b->arena, a->criteria, a->ncriteria, a->criteria_cap);
	c->name = v->key;
	c->text = v->text;
	c->pos = v->key_pos;
	find_code(c);
	find_loading(c);
}

/* More lines than any sheet has room for; a longer list is refused, not slow. */
enum { LINES_MOST = 200 };

static bool is_fact(struct binder *b, const struct block *v, size_t have,
    const char *wanted)
{
	if (v->kind != BLOCK_FACT || v->level > 1) {
		complain_block(b, v, wanted);
		return false;
	}
	if (have < LINES_MOST)
		return true;
	complain(b, FINDING_OVER_LIMIT, v->key_pos,
	    "there are more than %d lines here; this line is left out", LINES_MOST);
	return false;
}

void read_criteria(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	(void)h;
	for (size_t i = 0; i < n; i++)
		if (is_fact(b, &v[i], b->a->ncriteria,
		    "write \"- **Visual:** D1.1-2020\""))
			read_criterion(b, &v[i]);
}

/* "50", "50 %" or "50 points". */
static bool read_weight(struct binder *b, struct said t, uint32_t *out)
{
	static const str ends[] = { { "%", 1 }, { "points", 6 }, { "percent", 7 } };

	for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
		if (str_ends(t.s, ends[i]))
			t = said_trim(said_sub(t, 0, t.s.n - ends[i].n));
	return read_count(b, t, 1, 100, out);
}

static const struct word must_rows[] = {
	{ { "must pass", 9 }, 1 }, { { "must be passed", 14 }, 1 },
};
static const struct words must_words = { { "known beside a weight", 21 }, must_rows, 2 };

static void read_grade(struct binder *b, const struct block *v)
{
	struct assignment *a = b->a;
	struct said rest = said_all(v), part;
	struct grade g = { .name = v->key, .pos = v->key_pos };
	uint32_t must;

	for (size_t i = 0; i < a->ngrades; i++)
		if (words_same(a->grades[i].name, v->key)) {
			complain_repeat(b, v, a->grades[i].pos);
			return;
		}
	if (!said_next(&rest, ",;", &part)) {
		complain(b, FINDING_MISSING_FACT, v->key_pos,
		    "\"%.*s\" has no weight; this line is left out", STR_ARG(v->key));
		return;
	}
	if (!read_weight(b, part, &g.weight))
		return;
	while (said_next(&rest, ",;", &part))
		g.must_pass |= read_word(b, part, &must_words, &must);
	*ARENA_PUSH(b->arena, a->grades, a->ngrades, a->grades_cap) = g;
}

static void check_total(struct binder *b, const struct block *h)
{
	uint32_t total = 0;

	for (size_t i = 0; i < b->a->ngrades; i++)
		total += b->a->grades[i].weight;
	if (total == 100 || !b->a->ngrades)
		return;
	finding_repair(b->f, complain(b, FINDING_WEIGHTS_NOT_100, h->pos,
	    "the weights total %u, not 100", (unsigned)total),
	    total < 100 ? "add %u" : "take away %u",
	    (unsigned)(total < 100 ? 100 - total : total - 100));
}

void read_grades(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		if (!is_fact(b, &v[i], b->a->ngrades,
		    "write \"- **Visual:** 50, must pass\""))
			continue;
		if (!words_same(v[i].key, STR("Pass mark")))
			read_grade(b, &v[i]);
		else if (b->a->pass_mark)
			complain_repeat(b, &v[i], h->pos);
		else
			read_weight(b, said_all(&v[i]), &b->a->pass_mark);
	}
	check_total(b, h);
}
