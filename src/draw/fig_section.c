#include "draw/fig_section.h"

#include "draw/geom.h"

#include <assert.h>
#include <math.h>

/* A center line longer than this many strokes runs far off any paper. */
#define AXIS_STROKES 40

void section_clear(struct section *s)
{
	s->nmembers = s->nbeads = s->ndims = s->nspots = s->nrules = 0;
	s->text = (struct section_text){ { 0, 0 }, STR("") };
	s->clock_mm = 0;
	s->spots_apart = false;
}

struct section_member *section_plate(struct section *s, double hatch_deg)
{
	assert(s->nmembers < SECTION_MEMBERS);
	struct section_member *m = &s->member[s->nmembers++];

	m->n = 0;
	m->open = false;
	m->hatch_deg = hatch_deg;
	m->broken[0] = m->broken[1] = SECTION_EDGE_NONE;
	return m;
}

void section_corner(struct section_member *m, double x, double y)
{
	assert(m->n < SECTION_POINTS);
	m->v[m->n++] = (pt){ x, y };
}

void section_break(struct section_member *m)
{
	size_t slot = m->broken[0] == SECTION_EDGE_NONE ? 0 : 1;

	assert(m->n > 0);
	m->broken[slot] = m->n - 1;
}

struct section_bead *section_bead(struct section *s)
{
	assert(s->nbeads < SECTION_BEADS);
	s->bead[s->nbeads].n = 0;
	return &s->bead[s->nbeads++];
}

static struct seg *add_seg(struct section_bead *b, enum seg_op op, pt p)
{
	assert(b->n < SECTION_SEGS);
	b->s[b->n] = (struct seg){ op, { p, p, p } };
	return &b->s[b->n++];
}

void section_move(struct section_bead *b, pt p)
{
	add_seg(b, SEG_MOVE, p);
}

void section_line(struct section_bead *b, pt p)
{
	add_seg(b, SEG_LINE, p);
}

void section_face(struct section_bead *b, pt from, pt to, double rise)
{
	pt u = pt_unit(pt_sub(to, from)), side = { -u.y, u.x };
	/* A cubic rises three quarters of the way to its controls. */
	pt lift = pt_mul(side, rise * 4 / 3);
	struct seg *g = add_seg(b, SEG_CURVE, to);

	g->p[0] = pt_add(pt_between(from, to, 0.25), lift);
	g->p[1] = pt_add(pt_between(from, to, 0.75), lift);
}

void section_close(struct section_bead *b)
{
	add_seg(b, SEG_CLOSE, (pt){ 0, 0 });
}

void section_rule(struct section *s, pt a, pt b, bool dashed)
{
	assert(s->nrules < SECTION_RULES);
	s->rule[s->nrules++] = (struct section_rule){ a, b, dashed, false };
}

void section_axis(struct section *s, pt a, pt b, double mm_pt)
{
	static const double stroke_pt[] = { 16, 3 };
	double length = pt_length(pt_sub(b, a)), gap = 3 * mm_pt, at = 0;
	pt u = pt_unit(pt_sub(b, a));

	for (int i = 0; at < length && i < AXIS_STROKES; i++) {
		double end = fmin(at + stroke_pt[i % 2] * mm_pt, length);

		section_rule(
		    s, pt_add(a, pt_mul(u, at)), pt_add(a, pt_mul(u, end)), false);
		at = end + gap;
	}
}

void section_dim(struct section *s, struct section_dim d)
{
	if (d.label.n == 0)
		return;
	assert(s->ndims < SECTION_DIMS);
	s->dim[s->ndims++] = d;
}

void section_upright(struct section *s, enum section_side side, pt a, pt b,
    enum section_exit exit, str label)
{
	section_dim(s,
	    (struct section_dim){ .kind = SECTION_UPRIGHT,
	        .side = side,
	        .a = a,
	        .b = b,
	        .exit = exit,
	        .label = label });
}

void section_level(struct section *s, enum section_side side, pt a, pt b, str label)
{
	section_dim(s, (struct section_dim){ .kind = SECTION_LEVEL, .side = side, .a = a,
	    .b = b, .label = label });
}

void section_beside(struct section *s, enum section_side end, pt a, pt b, str label)
{
	section_dim(s, (struct section_dim){ .kind = SECTION_LEVEL_BESIDE,
	    .side = SECTION_BOTTOM, .end = end, .a = a, .b = b, .label = label });
}

void section_pointer(struct section *s, enum section_side side, pt to, pt want, str label)
{
	section_dim(s,
	    (struct section_dim){ .kind = SECTION_POINTER,
	        .side = side,
	        .a = to,
	        .b = want,
	        .label = label });
}

double section_reach(double width_mm, double used_mm, double arm_mm, bool *broken)
{
	*broken = !fig_given(width_mm) || width_mm > used_mm + arm_mm;
	return *broken ? used_mm + arm_mm : width_mm;
}

/* Layers of a fillet: one pass, then two, then three; the inner ones give way when the
 * count does not come out even. Returns the number of layers. */
static unsigned fillet_layers(unsigned n, unsigned count[SECTION_SPOTS])
{
	unsigned layers = 1, surplus;

	while (layers * (layers + 1) / 2 < n)
		layers++;
	surplus = layers * (layers + 1) / 2 - n;
	for (unsigned i = 0; i < layers; i++)
		count[i] = i + 1;
	while (surplus > 0) {
		for (unsigned i = layers; i-- > 1 && surplus > 0;) {
			if (count[i] > 1) {
				count[i]--;
				surplus--;
			}
		}
	}
	return layers;
}

void section_number_fillet(struct section *s, pt root, pt u, pt v, double leg, unsigned n,
    double ring)
{
	unsigned count[SECTION_SPOTS], layers;
	double depth = leg / sqrt(2), first, step;
	pt in = pt_unit(pt_add(u, v)), along = pt_unit(pt_sub(v, u));

	if (n == 0 || n > SECTION_SPOTS)
		return;
	layers = fillet_layers(n, count);
	first = layers > 1 ? fmax(ring * 1.65, depth * 0.8 / layers) : depth * 0.55;
	step = layers > 1 ? (depth - ring * 1.1 - first) / (layers - 1) : 0;
	if (first < ring * 1.41 || first > depth - ring ||
	    (layers > 1 && step < ring * 1.6))
		return;
	for (unsigned i = 0; i < layers; i++) {
		double d = first + step * i, half = d - ring * 1.45;

		if (half * 2 < (count[i] - 1) * ring * 2.05)
			return;
	}
	for (unsigned i = 0; i < layers; i++) {
		double d = first + step * i, half = d - ring * 1.45;
		double apart = count[i] > 1 ? half * 2 / (count[i] - 1) : 0;

		apart = fmin(apart, d * 2 / (count[i] + 0.6));
		apart = fmax(apart, count[i] > 1 ? ring * 2.05 : 0);
		for (unsigned k = 0; k < count[i]; k++) {
			double side = (k - (count[i] - 1) / 2.0) * apart;

			s->spot[s->nspots++] = pt_add(root,
			    pt_add(pt_mul(in, d), pt_mul(along, side)));
		}
	}
}

/* Shares n passes among layers so that the widest layers take the extra ones. Returns
 * the least width that a pass has. */
static double share_passes(unsigned n, unsigned layers, const double *width,
    unsigned *count)
{
	double least = INFINITY;

	for (unsigned i = 0; i < layers; i++)
		count[i] = 1;
	for (unsigned k = layers; k < n; k++) {
		unsigned best = layers - 1;

		for (unsigned i = layers; i-- > 0;)
			if (width[i] / count[i] > width[best] / count[best] * 1.0001)
				best = i;
		count[best]++;
	}
	for (unsigned i = 0; i < layers; i++)
		least = fmin(least, width[i] / count[i]);
	return least;
}

/* A groove for placing rings: how far their centers stay off its sides. */
struct ring_groove {
	double height, x0, lean, bottom, flare, ring;
};

/* Room for centers at height y; negative when not even one ring fits. */
static double ring_room(const struct ring_groove *g, double y, double *left)
{
	double right_lean = g->flare - g->lean;
	double off = g->ring * 1.1 * sqrt(1 + g->lean * g->lean);

	*left = g->x0 - g->lean * y + off;
	return g->bottom + g->flare * y - off -
	    g->ring * 1.1 * sqrt(1 + right_lean * right_lean);
}

/* How well n passes lie in that many layers: the least distance between centers, or
 * 0 when rings would touch. Fills count. */
static double judge_layers(const struct ring_groove *g, unsigned n, unsigned layers,
    unsigned *count)
{
	double width[SECTION_SPOTS], step = g->height / layers, left, least = step;

	for (unsigned i = 0; i < layers; i++)
		width[i] = g->bottom + g->flare * step * (i + 0.5);
	least = fmin(least, share_passes(n, layers, width, count));
	if (step < g->ring * 2.1)
		return 0;
	for (unsigned i = 0; i < layers; i++) {
		double room = ring_room(g, step * (i + 0.5), &left);

		if (room < 0 || room < (count[i] - 1) * g->ring * 2.1)
			return 0;
	}
	return least;
}

void section_number_groove(struct section *s, double height, double x0, double lean,
    double bottom, double flare, unsigned n, double ring)
{
	struct ring_groove g = { height, x0, lean, bottom, flare, ring };
	unsigned count[SECTION_SPOTS], layers = 0;
	double best = 0, left;

	if (n == 0 || n > SECTION_SPOTS)
		return;
	for (unsigned i = 1; i <= n; i++) {
		double good = judge_layers(&g, n, i, count);

		if (good > best) {
			best = good;
			layers = i;
		}
	}
	if (layers == 0)
		return;
	judge_layers(&g, n, layers, count);
	for (unsigned i = 0; i < layers; i++) {
		double y = height / layers * (i + 0.5), room = ring_room(&g, y, &left);
		double apart = room / count[i]; /* half a share of room at either side */

		apart = count[i] > 1 ? fmax(apart, ring * 2.1) : 0;
		left += (room - apart * (count[i] - 1)) / 2;
		for (unsigned k = 0; k < count[i]; k++)
			s->spot[s->nspots++] = (pt){ left + apart * k, y };
	}
}
