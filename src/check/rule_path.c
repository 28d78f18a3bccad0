/* Entry paths whose students would have to bring a great deal. */
#include "check/rule_path.h"

#include "check/tell.h"

#include <string.h>

/* Skills named in one finding. */
enum { NAMED_MOST = 40 };

/* Unmet needs that only this path has: those of the program itself are told anyway. */
struct lacks {
	struct fault *v;
	size_t n;
};

static struct faults walk(struct arena *a, struct view *v)
{
	struct faults fs = { .arena = a };

	walk_order(v, &fs);
	return fs;
}

/* Keeps the faults of v that are errors and that `known` (by need) does not mark. */
static struct lacks lacks_of(struct arena *a, struct view *v, struct faults fs,
    const bool *known)
{
	struct lacks l = { fs.v, 0 };

	view_detail(a, v);
	for (size_t i = 0; i < fs.n; i++) {
		struct fault d = fs.v[i];

		fault_judge(v, &d);
		if (!known[d.need] && nature_is_error(d.nature))
			l.v[l.n++] = d;
	}
	return l;
}

/* What a path would have to bring, by skill; 0 nothing. */
struct bundle {
	uint8_t *level;
	uint32_t *order, n;      /* skills as they were first wanted */
};

static void bring_cell(struct view *v, struct bundle *b, uint32_t cell)
{
	uint32_t skill = cell_skill(cell);
	uint8_t level = (uint8_t)cell_level(cell);

	if (v->brought[skill] >= level)
		return;
	if (!b->level[skill])
		b->order[b->n++] = skill;
	b->level[skill] = v->brought[skill] = level;
}

/* The alternative that is least above what is brought; of equals the first. */
static uint32_t least_cell(const struct view *v, uint32_t need)
{
	const struct graph *g = v->graph;
	uint32_t best = NONE, least = UINT32_MAX;

	for (uint32_t i = g->alt_at[need]; i < g->alt_at[need + 1]; i++) {
		uint32_t cell = g->alts[i], above;

		if (cell >= g->ncells)
			continue;
		above = cell_level(cell) - v->brought[cell_skill(cell)];
		if (above < least) {
			best = cell;
			least = above;
		}
	}
	return best;
}

/* Needs without a choice force what they name; what is left of the others then takes
 * the least. For needs without a choice the list is the smallest there is. */
static struct bundle bundle_of(struct arena *a, struct view *v, const struct lacks *l)
{
	const struct graph *g = v->graph;
	size_t nskills = g->model->nskills;
	struct bundle b = { arena_array(a, nskills, 1),
		arena_array(a, nskills, sizeof *b.order), 0 };

	for (int choices = 0; choices < 2; choices++)
		for (size_t i = 0; i < l->n; i++) {
			uint32_t need = l->v[i].need;
			bool choice = g->alt_at[need + 1] - g->alt_at[need] > 1;
			uint32_t cell = choice == choices && view_asks(v, need)
			    ? least_cell(v, need) : NONE;

			if (cell != NONE)
				bring_cell(v, &b, cell);
		}
	return b;
}

static void report(const struct view *v, const struct lacks *l, const struct bundle *b,
    struct findings *f)
{
	const struct model *m = v->graph->model;
	const struct entry *e = v->order->entry;
	const struct fault *first = &l->v[0];
	struct buf list = { .arena = f->arena }, place = { .arena = f->arena };
	struct finding *d;

	for (uint32_t i = 0; i < b->n && i < NAMED_MOST; i++) {
		buf_adds(&list, i ? ", " : "");
		tell_cell(&list, m, cell_of(b->order[i], b->level[b->order[i]]));
	}
	if (b->n > NAMED_MOST)
		buf_addf(&list, " and %u more", (unsigned)(b->n - NAMED_MOST));
	d = finding_add(f, FINDING_PATH_NEEDS_ENTRY, e->pos,
	    "those who come by \"%.*s\" are asked %u times for what they have not been "
	    "taught", STR_ARG(e->text), (unsigned)l->n);
	/* No sheet is wrong: the path is. */
	d->scope = SCOPE_ASSIGNMENTS;
	tell_place(&place, v->order, first->assignment);
	finding_cause(f, d, "first at %.*s (%.*s)",
	    STR_ARG(m->assignments[first->assignment].id), STR_ARG(buf_str(&place)));
	finding_repair(f, d, "let them bring %u skill%s: add to the path \"with %.*s\"",
	    (unsigned)b->n, b->n == 1 ? "" : "s", STR_ARG(buf_str(&list)));
}

static bool *mark_needs(struct arena *a, struct view *v)
{
	struct faults fs = walk(a, v);
	bool *known = arena_array(a, v->graph->nneeds, sizeof *known);

	for (size_t i = 0; i < fs.n; i++)
		known[fs.v[i].need] = true;
	return known;
}

void paths_widen(struct arena *scratch, struct view **views, size_t n,
    struct findings *f)
{
	const bool *known = NULL;

	for (size_t i = 1; i < n; i++) {
		struct faults fs = walk(scratch, views[i]);
		struct lacks l;
		struct bundle b;

		if (fs.n <= PATH_NEEDS_MOST)
			continue;
		if (!known)
			known = mark_needs(scratch, views[0]);
		l = lacks_of(scratch, views[i], fs, known);
		if (l.n <= PATH_NEEDS_MOST)
			continue;
		b = bundle_of(scratch, views[i], &l);
		report(views[i], &l, &b, f);
	}
}
