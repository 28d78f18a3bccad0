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
		    (j->weld == weld || (j->weld == NONE && x->nwelds == 1)))
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
	double leg_mm = w->leg_mm;
	struct limit_sizes z = { 0 };

	if (!(leg_mm > 0) && j && quantity_given(&j->leg))
		leg_mm = j->leg.lo;
	limit_size_set(&z, SIZE_T, w->t2_mm > 0 && w->t2_mm < w->t1_mm ? w->t2_mm
	    : w->t1_mm);
	if (weld_is_fillet(w->joint))
		limit_sizes_fillet(&z, leg_mm);
	if (j && quantity_given(&j->gap))
		limit_size_set(&z, SIZE_ROOT_OPENING, j->gap.hi);
	set_open_root(&z, x, w->joint, j);
	return z;
}
