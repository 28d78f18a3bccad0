/* Assignments in no course, and what unknown ids of program.md mean among them. */
#include "model/parts.h"

void unlisted_report(struct binder *b, const uint32_t *seen)
{
	const struct model *m = b->model;

	for (size_t i = 0; m->nslots && i < m->nassignments; i++) {
		const struct assignment *a = &m->assignments[i];
		struct finding *d;

		if (seen[i])
			continue;
		d = complain(b, FINDING_NOT_LISTED, a->pos,
		    "%.*s stands in no course, so nobody is given it", STR_ARG(a->id));
		d->assignment = a->id;
		finding_repair(b->f, d, "add a line for it to a course in program.md");
	}
}

/* Comparisons spent on likely ids; past this many the findings go without. */
enum { LIKELY_MOST = 2000000 };

/* The assignment in no course that an unknown id means by its bracket, or NONE. */
static uint32_t by_title(const struct model *m, const uint32_t *seen, str title)
{
	for (uint32_t i = 0; title.n && i < m->nassignments; i++)
		if (!seen[i] && same_title(title, m->assignments[i].title))
			return i;
	return NONE;
}

/* The one that it means by its spelling. A bracket that says otherwise makes it doubtful. */
static uint32_t by_spelling(struct binder *b, const struct unknown_id *u, const str *ids,
    size_t n)
{
	str likely = u->title.n ? (str){ 0 } : likely_word(b->f->v[u->finding].assignment,
	    ids, n);

	return likely.n ? map_find(b->model->assignment_by_id, likely) : NONE;
}

/* Goes on with the assignment that is meant, so that one slip is one finding. */
static void take_for(struct binder *b, const struct unknown_id *u, uint32_t meant,
    uint32_t *seen)
{
	struct model *m = b->model;
	struct finding *d = &b->f->v[u->finding];

	m->slots[u->slot].assignment = meant;
	seen[meant] = (uint32_t)u->slot + 1;
	d->message = str_format(b->f->arena, "no file defines %.*s; %.*s is taken for it",
	    STR_ARG(d->assignment), STR_ARG(m->assignments[meant].id));
	finding_repair(b->f, d, "write \"%.*s\", or add a file that defines %.*s",
	    STR_ARG(m->assignments[meant].id), STR_ARG(d->assignment));
	finding_slip(b->f, d, d->pos, d->assignment, m->assignments[meant].id);
}

/* What each unknown id means, or NONE, into meant; ids are those in no course. */
static void find_meant(struct binder *b, const uint32_t *seen, const str *ids, size_t n,
    uint32_t *meant)
{
	for (size_t i = 0; i < b->nunknown; i++) {
		const struct unknown_id *u = &b->unknown[i];

		meant[i] = NONE;
		if (n * i < LIKELY_MOST)
			meant[i] = by_title(b->model, seen, u->title);
		if (meant[i] == NONE && n * i < LIKELY_MOST)
			meant[i] = by_spelling(b, u, ids, n);
	}
}

/* Only an assignment that stands in no course can be the one that is meant, and only by
 * one line: what two lines could mean is offered to both. */
void unlisted_offer(struct binder *b, uint32_t *seen)
{
	const struct model *m = b->model;
	str *ids = arena_array(b->arena, m->nassignments, sizeof *ids);
	uint32_t *meant = arena_array(b->arena, b->nunknown, sizeof *meant);
	uint32_t *lines = arena_array(b->arena, m->nassignments, sizeof *lines);
	size_t n = 0;

	for (size_t i = 0; i < m->nassignments; i++)
		if (!seen[i])
			ids[n++] = m->assignments[i].id;
	find_meant(b, seen, ids, n, meant);
	for (size_t i = 0; i < b->nunknown; i++)
		if (meant[i] != NONE)
			lines[meant[i]]++;
	for (size_t i = 0; i < b->nunknown; i++) {
		struct finding *d = &b->f->v[b->unknown[i].finding];

		if (meant[i] != NONE && lines[meant[i]] == 1) {
			take_for(b, &b->unknown[i], meant[i], seen);
			continue;
		}
		if (n * i < LIKELY_MOST)
			offer_likely(b, d, d->assignment, ids, n);
		if (!d->repair.n)
			finding_repair(b->f, d,
			    "add a file that defines %.*s, or delete this line",
			    STR_ARG(d->assignment));
	}
}
