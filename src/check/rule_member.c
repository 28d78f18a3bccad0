/* The drawing of a weldment against the pieces: names, sizes, how many. */
#include "check/rule_joint.h"

#include "model/weldment.h"
#include "model/words.h"

#include <math.h>

/* Sizes are written in fractions and corners in decimals: 1/64 in. */
#define SAME_SIZE_MM 0.4

static bool fits(double mm, double room_mm)
{
	return mm <= room_mm + SAME_SIZE_MM;
}

static bool equals(double a_mm, double b_mm)
{
	return fits(a_mm, b_mm) && fits(b_mm, a_mm);
}

/* Three sizes, the least first. */
struct sizes { double v[3]; };

static struct sizes sorted(double a, double b, double c)
{
	struct sizes s = { { a, b, c } };

	for (int i = 0; i < 3; i++)
		for (int k = 1; k < 3; k++)
			if (s.v[k - 1] > s.v[k]) {
				double t = s.v[k];

				s.v[k] = s.v[k - 1];
				s.v[k - 1] = t;
			}
	return s;
}

/* False when the piece does not say three; of four the least is the wall of a tube or an
 * angle. */
static bool sizes_of_piece(const struct piece *p, struct sizes *out)
{
	uint32_t wall = 0, n = 0;
	double v[3];

	if (p->pipe.od_mm > 0 && p->ndims == 1) {
		*out = sorted(p->pipe.od_mm, p->pipe.od_mm, p->dims[0].lo);
		return true;
	}
	if (p->ndims < 3 || p->pipe.od_mm > 0)
		return false;
	for (uint32_t i = 1; i < p->ndims; i++)
		if (p->dims[i].lo < p->dims[wall].lo)
			wall = i;
	for (uint32_t i = 0; i < p->ndims && n < 3; i++)
		if (p->ndims == 3 || i != wall)
			v[n++] = p->dims[i].lo;
	*out = sorted(v[0], v[1], v[2]);
	return true;
}

/* The reach of an outline along one direction. */
static double reach_mm(const struct member *m, double ux, double uy)
{
	double lo = INFINITY, hi = -INFINITY;

	for (uint32_t i = 0; i < m->ncorners; i++) {
		double d = m->corners_mm[2 * i] * ux + m->corners_mm[2 * i + 1] * uy;

		lo = fmin(lo, d);
		hi = fmax(hi, d);
	}
	return hi - lo;
}

/* Whether it can be cut from a plate or tube of two sizes, along one of its edges. */
static bool outline_fits(const struct member *m, double small_mm, double large_mm)
{
	for (uint32_t i = 0; i < m->ncorners; i++) {
		const double *a = &m->corners_mm[2 * i];
		const double *b = &m->corners_mm[2 * ((i + 1) % m->ncorners)];
		double x = b[0] - a[0], y = b[1] - a[1], n = hypot(x, y), along, wide;

		if (!(n > 0))
			continue;
		along = reach_mm(m, x / n, y / n);
		wide = reach_mm(m, -y / n, x / n);
		if (fits(fmin(along, wide), small_mm) && fits(fmax(along, wide), large_mm))
			return true;
	}
	return false;
}

/* A box has the sizes of its piece; an outline its thickness, and is cut from the rest. */
static bool size_agrees(const struct member *m, const struct sizes *piece)
{
	struct sizes s = sorted(m->size_mm[0], m->size_mm[1], m->size_mm[2]);
	double thick = m->size_mm[m->along];

	if (!m->ncorners)
		return equals(s.v[0], piece->v[0]) && equals(s.v[1], piece->v[1]) &&
		    equals(s.v[2], piece->v[2]);
	for (int i = 0; i < 3; i++)
		if (equals(thick, piece->v[i]) &&
		    outline_fits(m, piece->v[i == 0 ? 1 : 0], piece->v[i == 2 ? 1 : 2]))
			return true;
	return false;
}

/* The finding of the same member on an earlier line; null: none is told. */
static struct finding *told_unknown(struct rule_context *x, const struct assignment *a,
    str message)
{
	for (size_t i = x->f->n; i-- > 0; ) {
		struct finding *d = &x->f->v[i];

		if (!str_eq(d->assignment, a->id))
			return NULL;
		if (d->name == FINDING_WELDMENT_DISAGREES && str_eq(d->message, message))
			return d;
	}
	return NULL;
}

static void say_unknown(struct rule_context *x, uint32_t w, const struct member *m)
{
	const struct assignment *a = &x->m->assignments[w];
	str *names = arena_array(x->scratch, a->npieces, sizeof *names);
	str likely, message = str_format(x->f->arena, "the drawing has a %.*s, which is not "
	    "among the pieces", STR_ARG(m->name));
	struct finding *d = told_unknown(x, a, message);

	if (d) {
		finding_relate(x->f, d, m->pos)->label = m->name;
		return;
	}
	d = rule_report(x, FINDING_WELDMENT_DISAGREES, m->pos, w, "%.*s", STR_ARG(message));
	for (size_t i = 0; i < a->npieces; i++)
		names[i] = a->pieces[i].name;
	likely = likely_word(m->name, names, a->npieces);
	finding_cause(x->f, d, "the aide cuts by the pieces, students build by the drawing");
	if (likely.n)
		finding_offer(x->f, d, m->pos, m->name, likely);
	else
		finding_repair(x->f, d, "add it to Pieces, or leave it out of the drawing");
}

/* The finding of another member of this piece, in any drawing of the sheet. */
static struct finding *told_of(struct rule_context *x, uint32_t w, const struct piece *p)
{
	for (size_t i = x->f->n; i; i--) {
		struct finding *d = &x->f->v[i - 1];

		if (d->name == FINDING_WELDMENT_DISAGREES && d->nrelated &&
		    !pos_cmp(d->related[0].pos, p->pos) &&
		    str_eq(d->assignment, x->m->assignments[w].id))
			return d;
	}
	return NULL;
}

static void judge_member(struct rule_context *x, uint32_t w, const struct member *m)
{
	const struct piece *p;
	struct finding *d;
	struct sizes s;

	if (m->piece == NONE) {
		say_unknown(x, w, m);
		return;
	}
	p = &x->m->assignments[w].pieces[m->piece];
	if (!sizes_of_piece(p, &s) || size_agrees(m, &s))
		return;
	/* All members of one piece are one finding. */
	d = told_of(x, w, p);
	if (d) {
		finding_relate(x->f, d, m->pos)->label = m->name;
		return;
	}
	d = rule_report(x, FINDING_WELDMENT_DISAGREES, m->pos, w, m->ncorners
	    ? "the %.*s of the drawing cannot be cut from its piece, %.*s"
	    : "the %.*s of the drawing has another size than its piece, %.*s",
	    STR_ARG(m->name), STR_ARG(p->size));
	finding_relate(x->f, d, p->pos)->label = p->name;
	finding_cause(x->f, d, "the aide cuts by the pieces, students build by the drawing");
	finding_repair(x->f, d, "make both say the same");
}

/* How often each piece is drawn, in all weldments of the assignment. */
static uint32_t *count_drawn(struct rule_context *x, const struct assignment *a)
{
	uint32_t *drawn = arena_array(x->scratch, a->npieces + 1, sizeof *drawn);

	for (size_t i = 0; i < a->ndrawings; i++)
		for (size_t k = 0; a->drawings[i].kind == DRAWING_WELDMENT &&
		    k < a->drawings[i].weldment->n; k++) {
			const struct member *m = &a->drawings[i].weldment->v[k];

			if (m->piece != NONE)
				drawn[m->piece] += (uint32_t)m->nat;
		}
	return drawn;
}

/* How many such weldments most of the pieces make: a pair of stands is drawn once. */
static uint32_t times_made(const struct assignment *a, const uint32_t *drawn)
{
	uint32_t best = 1;
	size_t most = 0;

	for (size_t i = 0; i < a->npieces; i++) {
		uint32_t times = drawn[i] ? a->pieces[i].count / drawn[i] : 0;
		size_t agree = 0;

		for (size_t k = 0; k < a->npieces; k++)
			agree += drawn[k] && a->pieces[k].count == times * drawn[k];
		if (times && agree > most) {
			most = agree;
			best = times;
		}
	}
	return best;
}

static void judge_counts(struct rule_context *x, uint32_t w, const struct weldment *at)
{
	const struct assignment *a = &x->m->assignments[w];
	const uint32_t *drawn = count_drawn(x, a);
	uint32_t times = times_made(a, drawn);

	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		struct finding *d;

		if (!drawn[i] || p->count == times * drawn[i])
			continue;
		d = rule_report(x, FINDING_WELDMENT_DISAGREES, at->pos, w,
		    "the drawing shows %u of the piece %.*s, and %u are cut for %u",
		    drawn[i], STR_ARG(p->name), p->count, times);
		finding_relate(x->f, d, p->pos)->label = p->name;
		finding_cause(x->f, d, "the other members are drawn as often as they are cut");
		finding_repair(x->f, d, "correct the count, or draw the missing ones");
	}
}

static void judge_weldments(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct weldment *first = NULL;

	for (size_t i = 0; a->npieces && i < a->ndrawings; i++) {
		const struct weldment *v = a->drawings[i].weldment;

		if (a->drawings[i].kind != DRAWING_WELDMENT)
			continue;
		first = first ? first : v;
		for (size_t k = 0; k < v->n; k++)
			judge_member(x, w, &v->v[k]);
	}
	if (first)
		judge_counts(x, w, first);
}

void rule_member(struct rule_context *x, uint32_t w)
{
	judge_weldments(x, w);
}
