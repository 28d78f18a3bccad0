/* What is accepted, and how it is graded. */
#include "model/assignment.h"
#include "model/parts.h"

static void complain_repeat(struct binder *b, const struct block *v, struct pos first)
{
	finding_relate(b->f, complain(b, FINDING_DUPLICATE_KEY, block_key_pos(v),
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
	c = &a->criteria[a->ncriteria++];
	c->name = v->key;
	c->text = v->text;
	c->pos = block_key_pos(v);
	criterion_choose(b, c, v);
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
	complain(b, FINDING_OVER_LIMIT, block_key_pos(v),
	    "there are more than %d lines here; this line is left out", LINES_MOST);
	return false;
}

void read_criteria(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	struct assignment *a = b->a;

	(void)h;
	a->criteria = arena_array(b->arena, n < LINES_MOST ? n : LINES_MOST,
	    sizeof *a->criteria);
	for (size_t i = 0; i < n; i++)
		if (is_fact(b, &v[i], a->ncriteria,
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

/* False when the line is left out, so that its weight is not missed again. */
static bool read_grade(struct binder *b, const struct block *v)
{
	struct assignment *a = b->a;
	struct said rest = said_all(v), part;
	struct grade g = { .name = v->key, .pos = block_key_pos(v) };
	uint32_t must;

	for (size_t i = 0; i < a->ngrades; i++)
		if (words_same(a->grades[i].name, v->key)) {
			complain_repeat(b, v, a->grades[i].pos);
			return false;
		}
	if (!said_next(&rest, ",;", &part)) {
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, block_key_pos(v),
		    "\"%.*s\" has no weight; this line is left out", STR_ARG(v->key)),
		    "write \"- **%.*s:** 20\", and \"must pass\" where it must be",
		    STR_ARG(v->key));
		return false;
	}
	if (!read_weight(b, part, &g.weight))
		return false;
	while (said_next(&rest, ",;", &part))
		g.must_pass |= read_word(b, part, &must_words, &must);
	*ARENA_PUSH(b->arena, a->grades, a->ngrades, a->grades_cap) = g;
	return true;
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

static void read_pass_mark(struct binder *b, const struct block *v)
{
	b->a->pass_mark_said = true;
	read_weight(b, said_all(v), &b->a->pass_mark);
}

void read_grades(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	bool whole = true;

	for (size_t i = 0; i < n; i++) {
		if (!is_fact(b, &v[i], b->a->ngrades,
		    "write \"- **Visual:** 50, must pass\"")) {
			whole = false;
			continue;
		}
		if (!words_same(v[i].key, STR("Pass mark")))
			whole &= read_grade(b, &v[i]);
		else if (b->a->pass_mark_said)
			complain_repeat(b, &v[i], h->pos);
		else
			read_pass_mark(b, &v[i]);
	}
	if (whole)
		check_total(b, h);
}
