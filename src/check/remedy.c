#include "check/remedy.h"

#include "check/remedy_seek.h"

#include <stdlib.h>

/* With more findings than these a program is being written, not slipped in. */
enum { STANDING_MOST = 120, TRIALS_MOST = 48, WALKED_MOST = 6000 };

size_t remedies_most(const struct model *m)
{
	size_t n = WALKED_MOST / (m->nassignments + 1);

	return n < TRIALS_MOST ? n : TRIALS_MOST;
}

static size_t count_standing(const struct findings *f)
{
	size_t n = 0;

	for (size_t i = 0; i < f->n; i++)
		n += !f->v[i].waived;
	return n;
}

static int compare_u32(uint32_t a, uint32_t b)
{
	return a < b ? -1 : a > b;
}

static uint32_t line_in_program(struct seeker *s, str id)
{
	const struct slot *k = seek_slot(s, id);

	return k ? (uint32_t)(k - s->m->slots) : NONE;
}

/* The graver, then by name, then as students meet them. */
int seek_compare(struct seeker *s, const struct finding *a, const struct finding *b)
{
	int c = compare_u32(b->level, a->level);

	if (!c)
		c = compare_u32(a->name, b->name);
	if (!c)
		c = compare_u32(line_in_program(s, a->assignment),
		    line_in_program(s, b->assignment));
	return c ? c : str_cmp(a->message, b->message);
}

struct ranked {
	uint32_t index, turn, rank;
};

static int compare_ranked(const void *a, const void *b)
{
	const struct ranked *x = a, *y = b;
	int c = compare_u32(x->turn, y->turn);

	if (!c)
		c = compare_u32(x->rank, y->rank);
	return c ? c : compare_u32(x->index, y->index);
}

/* By finding, how many come before it. */
static uint32_t *rank_findings(struct seeker *s)
{
	const struct findings *f = s->f;
	uint32_t *rank = arena_array(s->arena, f->n, sizeof *rank);

	for (size_t i = 0; i < f->n; i++)
		for (size_t k = 0; k < f->n; k++)
			rank[i] += seek_compare(s, &f->v[k], &f->v[i]) < 0;
	return rank;
}

static const uint32_t *order_findings(struct arena *a, const uint32_t *rank, size_t n)
{
	struct ranked *v = arena_array(a, n, sizeof *v);
	uint32_t *order = arena_array(a, n, sizeof *order);

	for (uint32_t i = 0; i < n; i++)
		v[i] = (struct ranked){ i, 0, rank[i] };
	if (n)
		qsort(v, n, sizeof *v, compare_ranked);
	for (size_t i = 0; i < n; i++)
		order[i] = v[i].index;
	return order;
}

/* By turn, then by the rank of the finding. */
static void order_remedies(struct arena *a, const uint32_t *rank, struct remedies *rs)
{
	struct ranked *v = arena_array(a, rs->n, sizeof *v);
	const struct remedy *was = arena_array_of(a, rs->v, rs->n, sizeof *was);

	for (uint32_t i = 0; i < rs->n; i++)
		v[i] = (struct ranked){ i, was[i].turn, rank[was[i].finding] };
	if (rs->n)
		qsort(v, rs->n, sizeof *v, compare_ranked);
	for (size_t i = 0; i < rs->n; i++)
		rs->v[i] = was[v[i].index];
}

static bool is_same_edit(const struct edit *a, const struct edit *b)
{
	return a->file == b->file && a->line == b->line && a->kind == b->kind &&
	    str_eq(a->text, b->text);
}

static bool has_same_edits(const struct remedy *a, const struct remedy *b)
{
	bool same = a->nedits == b->nedits;

	for (size_t i = 0; same && i < a->nedits; i++)
		same = is_same_edit(&a->edits[i], &b->edits[i]);
	return same;
}

/* Several findings often propose the same; it is tried once. */
static void list_tries(struct arena *a, const struct model *m, struct remedies *rs)
{
	size_t most = remedies_most(m);

	rs->tries = arena_array(a, most, sizeof(struct remedy *));
	for (size_t i = 0; i < rs->n; i++) {
		struct remedy **at = NULL;

		for (size_t k = 0; k < rs->ntries && !at; k++)
			if (has_same_edits(rs->tries[k], &rs->v[i]))
				at = &rs->tries[k]->same;
		while (at && *at)
			at = &(*at)->same;
		if (at)
			*at = &rs->v[i];
		else if (rs->ntries < most)
			rs->tries[rs->ntries++] = &rs->v[i];
	}
}

struct remedies *remedies_find(struct arena *a, const struct model *m,
    const struct findings *f)
{
	struct seeker s = { .arena = a, .m = m, .f = f,
		.out = arena_alloc(a, sizeof(struct remedies)) };
	size_t standing = count_standing(f);
	uint32_t *rank;

	if (standing < 2 || standing > STANDING_MOST || !remedies_most(m))
		return s.out;
	for (; s.finding < f->n; s.finding++) {
		s.turn = 0;
		if (f->v[s.finding].waived)
			continue;
		seek_slips(&s);
		seek_facts(&s);
		seek_figures(&s);
		seek_names(&s);
		seek_headings(&s);
		seek_owed(&s);
		seek_paths(&s);
		seek_moves(&s);
		seek_lines(&s);
		seek_teaching(&s);
		seek_lost(&s);
	}
	rank = rank_findings(&s);
	s.out->order = order_findings(a, rank, f->n);
	order_remedies(a, rank, s.out);
	list_tries(a, m, s.out);
	return s.out;
}
