/* Whether members make one weldment, and what it is in words. */
#include "draw/fig_iso.h"

#include "base/buf.h"
#include "base/language.h"
#include "draw/geom.h"
#include "draw/iso_plan.h"

#include <math.h>

/* ---- sizes ---- */

static const enum fig_axis across[3][2] = { { FIG_Y, FIG_Z }, { FIG_X, FIG_Z },
	{ FIG_X, FIG_Y } };

static bool is_size(double mm)
{
	return isfinite(mm) && mm > 0;
}

static bool cross_at(pt a, pt b, pt c, pt d)
{
	pt u = pt_sub(b, a), v = pt_sub(d, c), w = pt_sub(c, a);
	double den = u.x * v.y - u.y * v.x, s, t;

	if (fabs(den) < 1e-12)
		return false;
	s = (w.x * v.y - w.y * v.x) / den;
	t = (w.x * u.y - w.y * u.x) / den;
	return s >= 0 && s <= 1 && t >= 0 && t <= 1;
}

/* A ring of corners that encloses a surface and nowhere meets itself. */
static bool is_simple(const pt *v, size_t n)
{
	double sum = 0;

	for (size_t i = 0; i < n; i++) {
		pt a = v[i], b = v[(i + 1) % n];

		sum += a.x * b.y - b.x * a.y;
		if (!(pt_length(pt_sub(b, a)) > 1e-6))
			return false;
		for (size_t k = i + 2; k < n && k + (i == 0) < n; k++)
			if (cross_at(a, b, v[k], v[(k + 1) % n]))
				return false;
	}
	return isfinite(sum) && fabs(sum) > 1e-6;
}

static str outline_fault(const struct fig_member *m)
{
	if (!is_size(m->size_mm[m->along]))
		return WORD("it has no thickness");
	if (m->noutline < 3 || m->noutline > FIG_ISO_CORNERS)
		return WORD("an outline has 3 to 16 corners");
	if (!is_simple(m->outline, m->noutline))
		return WORD("its outline crosses itself or encloses nothing");
	return (str){ 0 };
}

/* The least size across a bore, or INFINITY when there is none. */
static double bored_mm(const struct fig_member *m)
{
	double w = m->size_mm[across[m->along][0]], h = m->size_mm[across[m->along][1]];

	if (m->shape == FIG_MEMBER_SOLID || m->shape == FIG_MEMBER_ROUND)
		return INFINITY;
	return m->shape == FIG_MEMBER_ANGLE ? 2 * fmin(w, h) : fmin(w, h);
}

/* A tube with slanted ends: four corners, two long sides that run side by side. */
static str slanted_fault(const struct fig_member *m)
{
	const pt *v = m->outline;
	double first, wide;
	size_t i;
	pt u, w;

	if (m->noutline != 4)
		return WORD("the outline of a tube has four corners");
	first = pt_length(pt_sub(v[1], v[0])) + pt_length(pt_sub(v[3], v[2]));
	i = pt_length(pt_sub(v[2], v[1])) + pt_length(pt_sub(v[0], v[3])) > first;
	u = pt_unit(pt_sub(v[i + 1], v[i]));
	w = pt_unit(pt_sub(v[(i + 3) % 4], v[i + 2]));
	if (fabs(u.x * w.y - u.y * w.x) > 0.01)
		return WORD("the long sides of a tube run side by side");
	wide = fabs(u.x * (v[i + 2].y - v[i].y) - u.y * (v[i + 2].x - v[i].x));
	if (!is_size(m->wall_mm) || 2 * m->wall_mm >= fmin(wide, m->size_mm[m->along]))
		return WORD("its wall is missing or fills it");
	return (str){ 0 };
}

static str member_fault(const struct fig_member *m)
{
	if (!isfinite(m->at_mm[0] + m->at_mm[1] + m->at_mm[2] + m->turn_deg))
		return WORD("its place is not given");
	if (m->noutline > 0) {
		str why = outline_fault(m);

		return why.n || m->shape != FIG_MEMBER_TUBE ? why : slanted_fault(m);
	}
	for (int i = 0; i < 3; i++)
		if (!is_size(m->size_mm[i]))
			return WORD("a size is missing or nothing");
	if (isfinite(bored_mm(m)) &&
	    (!is_size(m->wall_mm) || 2 * m->wall_mm >= bored_mm(m)))
		return WORD("its wall is missing or fills it");
	return (str){ 0 };
}

/* ---- together ---- */

struct faults {
	const struct fig_iso *f;
	struct solid *solid;
	struct fig_iso_fault *out;
	size_t n, cap;
};

static void tell(struct faults *k, struct fig_iso_fault one)
{
	if (k->n < k->cap)
		k->out[k->n++] = one;
}

static void find_sizes(struct faults *k)
{
	const struct fig_iso *f = k->f;

	if (f->nmembers == 0 || f->nmembers > FIG_ISO_MEMBERS)
		tell(k, (struct fig_iso_fault){ .wrong = FIG_ISO_COUNT,
		    .why = WORD("a drawing holds 1 to 60 members") });
	if (f->nparts > FIG_ISO_PARTS)
		tell(k, (struct fig_iso_fault){ .wrong = FIG_ISO_COUNT,
		    .why = WORD("a drawing has letters for 11 kinds of members") });
	for (size_t i = 0; i < f->nmembers && !k->n; i++) {
		str why = member_fault(&f->member[i]);

		if (why.n)
			tell(k, (struct fig_iso_fault){ .wrong = FIG_ISO_SIZE, .a = i, .why = why });
	}
}

static uint32_t group_of(uint32_t *up, uint32_t i)
{
	while (up[i] != i)
		i = up[i] = up[up[i]];
	return i;
}

/* Every pair once: those too deep in each other are told, those near each other join one
 * group; near[i] is how far member i is from the next one. */
static void meet_pairs(struct faults *k, uint32_t *up, double *near)
{
	for (size_t i = 0; i < k->f->nmembers; i++)
		for (size_t j = i + 1; j < k->f->nmembers; j++) {
			double gap = solids_gap_mm(&k->solid[i], &k->solid[j]);

			near[i] = fmin(near[i], gap);
			near[j] = fmin(near[j], gap);
			if (gap < -FIG_ISO_DEEP_MM)
				tell(k, (struct fig_iso_fault){ FIG_ISO_OVERLAP, i, j, -gap, { 0 } });
			if (gap <= FIG_ISO_APART_MM)
				up[group_of(up, (uint32_t)j)] = group_of(up, (uint32_t)i);
		}
}

/* The first member of each group but the largest. */
static void find_floating(struct faults *k, uint32_t *up, const double *near)
{
	size_t size[FIG_ISO_MEMBERS] = { 0 };
	uint32_t largest = 0;
	bool told[FIG_ISO_MEMBERS] = { false };

	for (uint32_t i = 0; i < k->f->nmembers; i++)
		size[group_of(up, i)]++;
	for (uint32_t i = 0; i < k->f->nmembers; i++)
		if (size[group_of(up, i)] > size[group_of(up, largest)])
			largest = i;
	for (uint32_t i = 0; i < k->f->nmembers; i++) {
		uint32_t g = group_of(up, i);

		if (g != group_of(up, largest) && !told[g])
			tell(k, (struct fig_iso_fault){ FIG_ISO_FLOATS, i, i, near[i], { 0 } });
		told[g] = true;
	}
}

size_t fig_iso_faults(const struct fig_iso *f, struct fig_iso_fault *out, size_t cap)
{
	struct faults k = { .f = f, .out = out, .cap = cap };
	uint32_t up[FIG_ISO_MEMBERS];
	double near[FIG_ISO_MEMBERS];
	struct arena *scratch;

	find_sizes(&k);
	if (k.n > 0)
		return k.n;
	scratch = arena_beside(f->arena);
	k.solid = arena_array(scratch, f->nmembers, sizeof *k.solid);
	for (size_t i = 0; i < f->nmembers; i++) {
		k.solid[i] = solid_of(scratch, &f->member[i]);
		up[i] = (uint32_t)i;
		near[i] = INFINITY;
	}
	meet_pairs(&k, up, near);
	find_floating(&k, up, near);
	arena_free(scratch);
	return k.n;
}

void fig_iso_extent(const struct fig_iso *f, double lo_mm[3], double hi_mm[3])
{
	struct arena *scratch = arena_beside(f->arena);

	for (int i = 0; i < 3; i++) {
		lo_mm[i] = INFINITY;
		hi_mm[i] = -INFINITY;
	}
	for (size_t i = 0; i < f->nmembers; i++) {
		struct solid s = solid_of(scratch, &f->member[i]);
		const double lo[3] = { s.lo.x, s.lo.y, s.lo.z };
		const double hi[3] = { s.hi.x, s.hi.y, s.hi.z };

		for (int d = 0; d < 3; d++) {
			lo_mm[d] = fmin(lo_mm[d], lo[d]);
			hi_mm[d] = fmax(hi_mm[d], hi[d]);
		}
	}
	arena_free(scratch);
}

/* ---- words ---- */

static size_t count_part(const struct fig_iso *f, size_t part)
{
	size_t n = 0;

	for (size_t i = 0; i < f->nmembers; i++)
		n += f->member[i].part == part;
	return n;
}

static void add_part_words(struct buf *b, const struct fig_iso *f, size_t part)
{
	const struct fig_iso_part *p = &f->part[part];
	const char *between = ": ";

	buf_addf(b, " %c: %zu %.*s", FIG_ISO_LETTERS[part], count_part(f, part),
	    STR_ARG(p->name));
	if (p->size.n > 0)
		buf_addf(b, ", %.*s", STR_ARG(p->size));
	for (size_t i = 0; i < f->nmembers; i++) {
		if (f->member[i].part != part || f->member[i].place.n == 0)
			continue;
		buf_addf(b, "%s%.*s", between, STR_ARG(f->member[i].place));
		between = "; ";
	}
	buf_addc(b, '.');
}

/* ---- made once ---- */

static str fault_words(const struct fig_iso *f)
{
	struct fig_iso_fault one;

	if (fig_iso_faults(f, &one, 1) == 0)
		return (str){ 0 };
	if (one.wrong == FIG_ISO_OVERLAP)
		return WORD("two members stand in each other");
	if (one.wrong == FIG_ISO_FLOATS)
		return WORD("a member touches no other");
	return one.why;
}

void fig_iso_prepare(struct fig_iso *f)
{
	f->fault = fault_words(f);
	f->scene = f->fault.n > 0 ? NULL : iso_scene_new(f);
}

str fig_iso_words(struct arena *a, const struct fig_iso *f)
{
	struct buf b = { .arena = a };

	buf_add(&b, f->from_left
	    ? word(f->language, "Weldment seen from the front, the left and above")
	    : word(f->language, "Weldment seen from the front, the right and above"));
	word_addf(&b, f->language, ": %.*s from left to right, %.*s from front to back, "
	    "%.*s high.", STR_ARG(f->label[0]), STR_ARG(f->label[1]), STR_ARG(f->label[2]));
	for (size_t i = 0; i < f->nparts && i < FIG_ISO_PARTS; i++)
		add_part_words(&b, f, i);
	return buf_str(&b);
}
