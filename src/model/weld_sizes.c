#include "model/weld_sizes.h"

#include "model/said.h"

bool weld_is_fillet(enum joint j)
{
	return j == JOINT_TEE || j == JOINT_LAP || j == JOINT_CORNER || j == JOINT_BRANCH;
}

static bool has_root(enum joint j)
{
	return j == JOINT_SQUARE_BUTT || j == JOINT_SINGLE_V || j == JOINT_SINGLE_BEVEL ||
	    j == JOINT_U_GROOVE || j == JOINT_PIPE_BUTT || j == JOINT_BUTT ||
	    j == JOINT_OPEN_CORNER;
}

/* The drawing that shows a weld, or null. */
static const struct joint_block *drawing_of(const struct assignment *x, size_t weld)
{
	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct joint_block *j = &x->drawings[i].joint;

		if (x->drawings[i].kind == DRAWING_JOINT &&
		    (j->weld == weld || (j->weld == NONE && x->nwelds == 1 &&
		    !joint_is_cut(j->joint))))
			return j;
	}
	return NULL;
}

static str backing_of(const struct assignment *x)
{
	for (size_t i = 0; i < x->nfacts; i++)
		if (str_eq_nocase(x->facts[i].key, STR("Backing")))
			return x->facts[i].text;
	return (str){ 0 };
}

/* "none" and something else in one fact: it depends on the weld, so it is not known. */
static void set_open_root(struct limit_sizes *z, const struct assignment *x,
    enum joint joint, const struct joint_block *j)
{
	str backing = backing_of(x);
	bool none = str_eq_nocase(backing, STR("none"));
	bool backed = (backing.n && !none) ||
	    (j && (j->both_sides || quantity_given(&j->backing_t)));

	z->known[SIZE_OPEN_ROOT] = !has_root(joint) || none ||
	    str_find(backing, STR("none"), 0) == backing.n;
	z->v[SIZE_OPEN_ROOT] = has_root(joint) && !backed;
}

struct limit_sizes weld_sizes(const struct assignment *x, size_t i)
{
	const struct weld *w = &x->welds[i];
	const struct joint_block *j = drawing_of(x, i);
	double leg_mm = w->leg_mm, leg2_mm = w->leg2_mm;
	struct limit_sizes z = { 0 };

	if (!(leg_mm > 0) && j && quantity_given(&j->leg)) {
		leg_mm = j->leg.lo;
		leg2_mm = quantity_given(&j->leg2) ? j->leg2.lo : 0;
	}
	limit_size_set(&z, SIZE_T, w->t2_mm > 0 && w->t2_mm < w->t1_mm ? w->t2_mm
	    : w->t1_mm);
	if (weld_is_fillet(w->joint))
		limit_sizes_fillet(&z, leg_mm, leg2_mm);
	if (j && quantity_given(&j->gap))
		limit_size_set(&z, SIZE_ROOT_OPENING, j->gap.hi);
	set_open_root(&z, x, w->joint, j);
	return z;
}

static bool is_flame(enum process p)
{
	return p == PROCESS_OFC || p == PROCESS_PAC || p == PROCESS_CAC_A;
}

static bool is_flame_cut(const struct assignment *x)
{
	for (uint32_t i = 0; i < x->nprocesses; i++)
		if (is_flame(x->processes[i]))
			return true;
	for (size_t i = 0; i < x->npieces; i++)
		if (str_find(x->pieces[i].made, STR("flame"), 0) < x->pieces[i].made.n ||
		    str_find(x->pieces[i].made, STR("plasma"), 0) < x->pieces[i].made.n)
			return true;
	return false;
}

static void set_longest(struct limit_sizes *z, const struct quantity *q)
{
	if (q->kind == QUANTITY_LENGTH && q->lo > z->v[SIZE_LENGTH])
		limit_size_set(z, SIZE_LENGTH, q->lo);
}

struct limit_sizes part_sizes(const struct assignment *x)
{
	struct limit_sizes z = { 0 };

	if (x->nthicknesses)
		limit_size_set(&z, SIZE_T, x->thicknesses[0].lo);
	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct drawing *d = &x->drawings[i];

		if (d->kind != DRAWING_PLATE)
			continue;
		set_longest(&z, &d->plate.length);
		set_longest(&z, &d->plate.width);
		if (!z.known[SIZE_T] && quantity_given(&d->plate.thickness))
			limit_size_set(&z, SIZE_T, d->plate.thickness.lo);
	}
	for (size_t i = 0; i < x->npieces && !z.known[SIZE_LENGTH]; i++)
		for (uint32_t k = 0; k < x->pieces[i].ndims; k++)
			set_longest(&z, &x->pieces[i].dims[k]);
	z.known[SIZE_FLAME_CUT] = z.known[SIZE_COLD_CUT] = true;
	z.v[SIZE_FLAME_CUT] = is_flame_cut(x);
	z.v[SIZE_COLD_CUT] = !is_flame_cut(x);
	return z;
}
