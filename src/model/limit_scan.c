#include "model/limit_scan.h"

#include "units/format.h"

/* A size that is tried over its range. Throat and face of a fillet go with its leg. */
struct axis {
	enum limit_name name;
	double from, step;       /* in, psi for the strength */
	unsigned n;              /* how many steps when it is the only axis */
};

static const struct axis axes[] = {
	{ SIZE_T, 1.0 / 32, 1.0 / 32, 64 }, { SIZE_LEG, 1.0 / 16, 1.0 / 16, 16 },
	{ SIZE_WIDTH, 1.0 / 16, 1.0 / 16, 24 }, { SIZE_ROOT_OPENING, 1.0 / 32, 1.0 / 32,
	16 }, { SIZE_ROOT_WIDTH, 1.0 / 16, 1.0 / 16, 16 }, { SIZE_LENGTH, 1, 4, 60 },
	{ SIZE_DIAMETER, 1.0 / 16, 1.0 / 16, 32 }, { SIZE_BASE_STRENGTH, 10000, 10000, 12 },
};
enum { AXES = sizeof axes / sizeof *axes };

/* Steps of each axis by how many there are: at most 256 tries in all, so that a folder
 * full of long limits is read in seconds. */
static const unsigned steps_of[AXES + 1] = { 1, 64, 16, 6, 4, 3, 2, 2, 2 };

struct limit_failure limit_try(const struct standard_limit *l,
    const struct limit_sizes *sizes)
{
	const double noise = 1e-9;
	struct limit_failure f = { .in_condition = true, .sizes = *sizes };

	if (l->where.v) {
		f.o = limit_expr_work(&l->where, sizes);
		f.fails = f.o.state > LIMIT_UNKNOWN;
		if (f.fails || (f.o.state == LIMIT_KNOWN && f.o.value == 0))
			return f;
	}
	f.in_condition = false;
	if (!l->most.v)
		return f;
	f.o = limit_expr_work(&l->most, sizes);
	f.fails = f.o.state > LIMIT_UNKNOWN ||
	    (f.o.state == LIMIT_KNOWN && f.o.value < -noise);
	return f;
}

static bool goes_by(unsigned names, enum limit_name n)
{
	unsigned leg = 1u << SIZE_LEG | 1u << SIZE_THROAT;

	if (n == SIZE_LEG)
		return names & leg;
	/* The face of a fillet follows from its leg; that of a groove stands alone. */
	return (names >> n & 1) && !(n == SIZE_WIDTH && (names & leg));
}

static void set_axis(struct limit_sizes *z, const struct axis *x, unsigned i, unsigned n)
{
	/* Fewer steps over the same range. */
	unsigned at = n < x->n ? i * (x->n - 1) / (n - 1) : i;
	double v = x->from + x->step * at;

	if (x->name == SIZE_LEG)
		limit_sizes_fillet(z, v * 25.4, 0);
	else
		limit_size_set(z, x->name, x->name == SIZE_BASE_STRENGTH ? v : v * 25.4);
}

struct limit_failure limit_scan(const struct standard_limit *l)
{
	unsigned names = l->most.names | l->where.names, turn[AXES] = { 0 }, steps[AXES];
	const struct axis *used[AXES];
	struct limit_failure f = { 0 };
	size_t n = 0, at = 0;

	if (!l->most.may_fail && !l->where.may_fail)
		return limit_try(l, &f.sizes);
	for (size_t i = 0; i < AXES; i++)
		if (goes_by(names, axes[i].name))
			used[n++] = &axes[i];
	for (size_t i = 0; i < n; i++)
		steps[i] = steps_of[n] < used[i]->n ? steps_of[n] : used[i]->n;
	do {
		struct limit_sizes z = { 0 };

		for (size_t i = 0; i < n; i++)
			set_axis(&z, used[i], turn[i], steps[i]);
		f = limit_try(l, &z);
		if (f.fails)
			return f;
		for (at = 0; at < n && ++turn[at] == steps[at]; at++)
			turn[at] = 0;
	} while (at < n);
	return f;
}

static void add_size(struct buf *b, enum limit_name n, double v)
{
	buf_addf(b, "%.*s is ", STR_ARG(limit_name_word(n)));
	if (limit_name_kind(n) == LIMIT_LENGTH) {
		format_computed(b, v, 25.4 / 32);
	} else {
		buf_add_real(b, v / 1000, 2, false);
		buf_adds(b, " ksi");
	}
}

void limit_say_failure(struct buf *b, const struct standard_limit *l,
    const struct limit_failure *f)
{
	static const char *const words[] = {
		[LIMIT_KNOWN] = "comes out below zero",
		[LIMIT_BY_ZERO] = "divides by zero", [LIMIT_ENDLESS] = "comes out endless",
	};
	unsigned names = f->in_condition ? l->where.names : l->most.names, told = 0;

	buf_adds(b, words[f->o.state]);
	for (unsigned i = 0; i < SIZES; i++) {
		if (!(names >> i & 1) || !f->sizes.known[i] ||
		    limit_name_kind((enum limit_name)i) == LIMIT_TRUTH)
			continue;
		buf_adds(b, told++ ? " and " : " where ");
		add_size(b, (enum limit_name)i, f->sizes.v[i]);
	}
}
