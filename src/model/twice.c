#include "model/twice.h"

#include "base/buf.h"
#include "model/parts.h"

#include <stdlib.h>

/* An id that a line of program.md lists, and what its bracket says. */
struct listed {
	str id, title;
	struct pos pos;
	bool unknown;            /* no file defines it */
};

struct listing {
	struct listed *v;
	size_t n, cap, nunknown;
};

/* By id, then by place, so that the first of each id is the one that counts. */
int compare_found(const void *x, const void *y)
{
	const struct found *a = x, *b = y;
	int c = str_cmp(a->id, b->id);

	return c ? c : pos_cmp(a->pos, b->pos);
}

static bool is_defined(const struct found *v, size_t n, str id)
{
	size_t lo = 0, hi = n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;

		if (str_cmp(v[mid].id, id) < 0)
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo < n && str_eq(v[lo].id, id);
}

static bool is_id_byte(char c)
{
	return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

/* The ids of one line; of a line with one id, its bracket too. */
static void list_line(struct binder *b, struct listing *l, const struct block *v,
    const struct found *all, size_t n)
{
	size_t open = str_find_char(v->text, '(', 0), first = l->n;
	str head = str_sub(v->text, 0, open), bracket;
	size_t close = v->text.n;

	while (close > open && v->text.p[close - 1] != ')')
		close--;
	bracket = str_trim(str_sub(v->text, open + 1, close ? close - 1 : 0));
	for (size_t i = 0; i < head.n; i++) {
		size_t used = 0;
		str id = { 0 };

		if (!i || !is_id_byte(head.p[i - 1]))
			id = id_of_assignment(b->arena, str_sub(head, i, head.n), &used);
		if (!id.n)
			continue;
		*ARENA_PUSH(b->arena, l->v, l->n, l->cap) = (struct listed){ .id = id,
			.pos = block_pos(v, i), .unknown = !is_defined(all, n, id) };
		l->nunknown += l->v[l->n - 1].unknown;
		i += used;
	}
	if (l->n == first + 1)
		l->v[first].title = bracket;
}

static struct listing list_program(struct binder *b, const struct record_file *program,
    const struct found *v, size_t n)
{
	struct listing l = { 0 };

	for (size_t i = 0; program && i < program->n; i++) {
		enum block_kind kind = program->v[i].kind;

		if ((kind == BLOCK_STEP || kind == BLOCK_BULLET) && program->v[i].level < 2)
			list_line(b, &l, &program->v[i], v, n);
	}
	return l;
}

static bool is_title(str bracket, str title)
{
	return bracket.n && same_title(bracket, title);
}

/* The unknown id that is listed beside a title, or null. */
static struct listed *by_title(const struct listing *l, str title)
{
	for (size_t i = 0; i < l->n; i++)
		if (l->v[i].unknown && is_title(l->v[i].title, title))
			return &l->v[i];
	return NULL;
}

/* Whether program.md lists an id beside the title of its second bearer. */
static bool is_second(const struct listing *l, const struct found *first,
    const struct found *again)
{
	for (size_t i = 0; i < l->n; i++)
		if (str_eq(l->v[i].id, again->id))
			return is_title(l->v[i].title, again->title) &&
			    !is_title(l->v[i].title, first->title);
	return false;
}

/* Which of two bearers of an id is another one; *as is what it is listed as. */
static struct found *misnamed(const struct listing *l, struct found *first,
    struct found *again, struct listed **as)
{
	if ((*as = by_title(l, again->title)))
		return again;
	if ((*as = by_title(l, first->title)))
		return first;
	for (size_t i = 0; l->nunknown == 1 && i < l->n; i++)
		if (l->v[i].unknown) {
			*as = &l->v[i];
			return is_second(l, first, again) ? first : again;
		}
	return again;
}

static void complain_twice(struct binder *b, const struct found *first,
    const struct found *again)
{
	struct finding *d = complain(b, FINDING_DUPLICATE_ID, again->pos,
	    "%.*s is defined twice; this one is left out", STR_ARG(again->id));
	struct related *r = finding_relate(b->f, d, first->pos);

	d->assignment = again->id;
	r->assignment = first->id;
	r->label = STR("the first counts");
	finding_repair(b->f, d, "give one of them another id");
}

static void complain_misnamed(struct binder *b, const struct found *wrong,
    const struct found *right, const struct listed *as)
{
	struct finding *d = complain(b, FINDING_DUPLICATE_ID, wrong->pos,
	    "%.*s is defined twice; this one is read as %.*s, which program.md lists "
	    "and no file defines", STR_ARG(wrong->id), STR_ARG(as->id));
	struct related *r = finding_relate(b->f, d, right->pos);

	d->assignment = as->id;
	r->assignment = right->id;
	r->label = str_format(b->arena, "the other %.*s", STR_ARG(right->id));
	finding_relate(b->f, d, as->pos)->label = str_format(b->arena, "lists %.*s",
	    STR_ARG(as->id));
	finding_repair(b->f, d, "write \"# %.*s: %.*s\"", STR_ARG(as->id),
	    STR_ARG(wrong->title));
}

static void settle(struct binder *b, struct listing *l, struct found *first,
    struct found *again)
{
	struct listed *as;
	struct found *wrong = misnamed(l, first, again, &as);

	if (!as) {
		complain_twice(b, first, again);
		again->left_out = true;
		return;
	}
	complain_misnamed(b, wrong, wrong == again ? first : again, as);
	wrong->id = as->id;
	as->unknown = false;
	l->nunknown--;
}

void twice_settle(struct binder *b, struct found *v, size_t n,
    const struct record_file *program)
{
	struct listing l = { 0 };
	bool listed = false;

	for (size_t i = 0, k; i < n; i = k) {
		size_t bearer = i;
		str id = v[i].id;

		for (k = i + 1; k < n && str_eq(v[k].id, id); k++) {
			if (!listed)
				l = list_program(b, program, v, n);
			listed = true;
			settle(b, &l, &v[bearer], &v[k]);
			/* The first may have been given another id. */
			if (!str_eq(v[bearer].id, id))
				bearer = k;
		}
	}
	if (listed)
		qsort(v, n, sizeof *v, compare_found);
}
