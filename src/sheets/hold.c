#include "sheets/hold.h"

#include "model/translation.h"

struct printed {
	const struct model *m;
	const uint32_t *v;
	size_t n;
	uint32_t quarter;
};

static bool prints(const struct printed *p, str id)
{
	uint32_t x = id.n ? map_find(p->m->assignment_by_id, id) : MAP_NONE;

	for (size_t i = 0; x != MAP_NONE && i < p->n; i++)
		if (p->v[i] == x)
			return true;
	return false;
}

/* Whether a document has something of a quarter in it. */
static bool prints_quarter(const struct printed *p, uint32_t quarter)
{
	if (p->quarter)
		return p->quarter == quarter;
	for (size_t s = 0; s < p->m->nslots; s++) {
		const struct slot *k = &p->m->slots[s];

		if (k->assignment != NONE && p->m->courses[k->course].quarter == quarter &&
		    prints(p, p->m->assignments[k->assignment].id))
			return true;
	}
	return false;
}

static bool prints_related(const struct printed *p, const struct finding *d)
{
	for (size_t i = 0; i < d->nrelated; i++)
		if (prints(p, d->related[i].assignment))
			return true;
	return false;
}

static bool concerns(const struct finding *d, const struct printed *p)
{
	if (prints(p, d->assignment))
		return true;
	switch (d->scope) {
	case SCOPE_ASSIGNMENTS:
		return prints_related(p, d);
	case SCOPE_QUARTER:
		return prints_quarter(p, d->quarter) || prints_related(p, d);
	case SCOPE_PROGRAM:
		return true;
	default: /* A fault that names an assignment stays with it. */
		return !d->assignment.n;
	}
}

static bool is_place_in(const struct model *m, struct pos pos, const struct language *l)
{
	const struct language *of = pos.file == POS_NOWHERE
	    ? NULL : translation_folder(m->sources->v[pos.file].path);

	return !of || of == l;
}

/* Whether what is wrong, or what it explains, is wrong on papers in that language too. */
static bool is_in(const struct model *m, const struct finding *d, const struct language *l)
{
	bool in = is_place_in(m, d->pos, l);

	for (size_t i = 0; i < d->nrelated && !in; i++)
		in = d->related[i].listed && is_place_in(m, d->related[i].pos, l);
	return in;
}

const struct finding *hold_find(const struct model *m, const struct findings *f,
    const uint32_t *assignments, size_t n, uint32_t quarter,
    const struct language *language)
{
	const struct printed p = { m, assignments, n, quarter };

	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].level == LEVEL_ERROR && !f->v[i].waived &&
		    is_in(m, &f->v[i], language) && concerns(&f->v[i], &p))
			return &f->v[i];
	return NULL;
}
