/* Beads within a weld, numbered in the order in which they are laid. Layers over an open
 * root are of one thickness; over a closed root, where they begin in a corner, a layer
 * gets room by the number of its beads. Each runs from wall to wall with a light bulge
 * (common practice, no source: how a welder sketches them). */
#include "draw/fig_layout.h"

#include "draw/dim.h"
#include "draw/geom.h"

#include <math.h>

/* What a number of that many figures takes, in points: tabular figures are 0.6 em wide and
 * 0.7 em high, a line of text 1.3 em. */
#define FIGURE_PT (0.62 * DIM_TYPE_PT)
#define CAPITAL_PT (0.72 * DIM_TYPE_PT)
#define LINE_PT (1.32 * DIM_TYPE_PT)
#define CLEAR_PT 1.2
#define BULGE 0.07
#define SHARE_STEPS 16           /* to 1/65,536 of a wall */
#define OUTLINE 16
#define NEAR_PT 1e-6             /* a millimeter's points and back are not exact */

/* A wall measured; step: from the corner before, of each but the first. */
struct wall {
	const pt *v;
	size_t n;
	double step[SECTION_WALL], length;
};

struct walls { const struct section_region *r; struct wall a, b; };

static struct wall wall_measure(const pt *v, size_t n)
{
	struct wall w = { .v = v, .n = n };

	for (size_t i = 1; i < n; i++) {
		w.step[i] = pt_length(pt_sub(v[i], v[i - 1]));
		w.length += w.step[i];
	}
	return w;
}

/* The point at that share of a wall's length. */
static pt wall_at(const struct wall *w, double share)
{
	double left = share * w->length;

	for (size_t i = 1; i < w->n; i++) {
		if (left <= w->step[i] && w->step[i] > 0)
			return pt_between(w->v[i - 1], w->v[i], left / w->step[i]);
		left -= w->step[i];
	}
	return w->v[w->n - 1];
}

static double cross(pt a, pt b)
{
	return a.x * b.y - a.y * b.x;
}

/* Twice the area swept along one wall from its root to that share, seen from `eye`. */
static double swept(const struct wall *w, double share, pt eye)
{
	double left = share * w->length, sum = 0;

	for (size_t i = 1; i < w->n && left > 0; i++) {
		double step = w->step[i];
		pt from = w->v[i - 1];
		pt to = left < step ? pt_between(from, w->v[i], left / step) : w->v[i];

		sum += cross(pt_sub(from, eye), pt_sub(to, eye));
		left -= step;
	}
	return sum;
}

/* Area between the walls up to that share of both. */
static double area_to(const struct walls *w, double share)
{
	pt a = wall_at(&w->a, share), b = wall_at(&w->b, share), eye = w->a.v[0];

	return fabs(swept(&w->a, share, eye) + cross(pt_sub(a, eye), pt_sub(b, eye)) -
	    swept(&w->b, share, eye) - cross(pt_sub(eye, eye), pt_sub(w->b.v[0], eye))) / 2;
}

static double share_of_area(const struct walls *w, double part)
{
	double want = area_to(w, 1) * part, lo = 0, hi = 1;

	for (int i = 0; i < SHARE_STEPS; i++) {
		double mid = (lo + hi) / 2;

		if (area_to(w, mid) < want)
			lo = mid;
		else
			hi = mid;
	}
	return (lo + hi) / 2;
}

/* How far up the walls the first `done` layers of `all` reach, `part` of the beads. */
static double layer_share(const struct walls *w, size_t done, size_t all, double part)
{
	if (done == all)
		return 1;
	if (pt_length(pt_sub(w->a.v[0], w->b.v[0])) > 0)
		return (double)done / (double)all;
	return share_of_area(w, part);
}

/* A line between layers, from wall a to wall b with its bulge away from the root. */
struct layer_line { pt a, b, out; double rise; };

static pt line_at(const struct layer_line *l, double share)
{
	return pt_add(pt_between(l->a, l->b, share),
	    pt_mul(l->out, 4 * l->rise * share * (1 - share)));
}

static struct layer_line layer_line(const struct walls *w, double share, pt root,
    double least)
{
	struct layer_line l = { wall_at(&w->a, share), wall_at(&w->b, share), { 0, 0 }, 0 };
	pt u = pt_unit(pt_sub(l.b, l.a)), middle = pt_between(l.a, l.b, 0.5);
	double wide = pt_length(pt_sub(l.b, l.a));

	l.out = (pt){ -u.y, u.x };
	if (l.out.x * (middle.x - root.x) + l.out.y * (middle.y - root.y) < 0)
		l.out = pt_mul(l.out, -1);
	l.rise = share >= 1 ? w->r->rise : share <= 0 ? 0 : fmin(wide * BULGE, least * 0.3);
	return l;
}

static void ink_line(struct section *s, pt from, pt to, pt out, double rise)
{
	struct section_bead *b = section_bead(s);
	pt u = pt_unit(pt_sub(to, from));

	b->thin = true;
	section_move(b, from);
	section_face(b, from, to, -u.y * out.x + u.x * out.y < 0 ? -rise : rise);
}

/* ---- numbers ---- */

/* Corners of a bead between two lines, the shares of both that it takes. */
static void bead_outline(const struct layer_line *low, const struct layer_line *high,
    double from, double to, pt out[OUTLINE])
{
	for (int i = 0; i < OUTLINE / 2; i++) {
		double share = from + (to - from) * i / (OUTLINE / 2 - 1);

		out[i] = line_at(low, share);
		out[OUTLINE - 1 - i] = line_at(high, share);
	}
}

static pt bead_middle(const struct layer_line *low, const struct layer_line *high, double from,
    double to)
{
	double share = (from + to) / 2, narrow = pt_length(pt_sub(low->a, low->b)) * (to - from);
	double wide = pt_length(pt_sub(high->a, high->b)) * (to - from);
	/* The middle of a wedge lies nearer to its wide end. */
	double up = wide + narrow > 0 ? (wide * 2 + narrow) / (3 * (wide + narrow)) : 0.5;

	return pt_between(line_at(low, share), line_at(high, share), fmax(up, 0.5));
}

static rect number_box(pt at, unsigned number, double high_pt, double mm_pt)
{
	double w = FIGURE_PT * (number > 9 ? 2 : 1) * mm_pt, h = high_pt * mm_pt;

	return (rect){ at.x - w / 2, at.y - h / 2, w, h };
}

static bool number_fits(const pt v[OUTLINE], pt at, unsigned number, double mm_pt)
{
	rect r = rect_inset(number_box(at, number, CAPITAL_PT, mm_pt), -CLEAR_PT * mm_pt);
	bool inside = false;

	for (int i = 0; i < OUTLINE; i++) {
		pt a = v[i], b = v[(i + 1) % OUTLINE];

		if (rect_crossed(r, a, b))
			return false;
		if ((a.y > at.y) != (b.y > at.y) &&
		    at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x))
			inside = !inside;
	}
	return inside;
}

/* Whether all numbers from `first` on stand in their beads and apart from each other. */
static bool numbers_apart(const struct section *s, double mm_pt)
{
	for (size_t i = 0; i < s->nspots; i++)
		for (size_t k = 0; k < i; k++)
			if (!rect_apart(
			        rect_inset(number_box(s->spot[i], s->spot_number[i], LINE_PT,
			            mm_pt), -mm_pt),
			        number_box(s->spot[k], s->spot_number[k], LINE_PT, mm_pt)))
				return false;
	return true;
}

/* Numbers that do not all fit stand beside the part instead, each with a leader. */
static void call_out(struct section *s)
{
	double left = INFINITY, right = -INFINITY;

	for (size_t i = 0; i < s->nspots; i++) {
		left = fmin(left, s->spot[i].x);
		right = fmax(right, s->spot[i].x);
	}
	for (size_t i = 0; i < s->nspots; i++) {
		pt at = s->spot[i];
		bool at_left = at.x < (left + right) / 2 - 1e-9;

		section_pointer(s, at_left ? SECTION_LEFT : SECTION_RIGHT, at, at,
		    fig_number(s->spot_number[i]));
	}
	s->nspots = 0;
}

/* ---- layers ---- */

static unsigned count_beads(const struct fig_joint *j, bool back)
{
	unsigned n = 0;

	for (size_t i = 0; i < j->nlayers; i++)
		n += j->layers[i].back == back ? j->layers[i].beads : 0;
	return n;
}

static size_t count_layers(const struct fig_joint *j, bool back)
{
	size_t n = 0;

	for (size_t i = 0; i < j->nlayers; i++)
		n += j->layers[i].back == back;
	return n;
}

/* The beads of one layer; returns whether their numbers fit. */
static bool add_layer(struct section *s, const struct layer_line *low,
    const struct layer_line *high, unsigned beads, unsigned number, double mm_pt)
{
	bool fits = true;
	pt v[OUTLINE];

	for (unsigned i = 0; i < beads; i++) {
		double from = (double)i / beads, to = (double)(i + 1) / beads;
		pt at = bead_middle(low, high, from, to);

		bead_outline(low, high, from, to, v);
		fits &= number_fits(v, at, number + i, mm_pt);
		s->spot_number[s->nspots] = number + i;
		s->spot[s->nspots++] = at;
		if (i > 0) {
			pt a = line_at(low, from), b = line_at(high, from);

			ink_line(s, a, b, pt_sub(high->b, high->a),
			    pt_length(pt_sub(b, a)) * BULGE);
		}
	}
	return fits;
}

/* The same weld with its walls changed over. */
static struct section_region turn_region(const struct section_region *r)
{
	struct section_region t = *r;

	for (size_t i = 0; i < SECTION_WALL; i++) {
		t.a[i] = r->b[i];
		t.b[i] = r->a[i];
	}
	t.na = r->nb;
	t.nb = r->na;
	return t;
}

/* The layers of one region, root first; false when some number does not fit. */
static bool add_region(struct section *s, const struct fig_joint *j,
    const struct section_region *walls, double mm_pt)
{
	const struct section_region turned = turn_region(walls);
	const struct section_region *r =
	    j->beads_from_right && !fig_beads_from_base(j) ? &turned : walls;
	const struct walls w = { r, wall_measure(r->a, r->na), wall_measure(r->b, r->nb) };
	pt root = pt_between(r->a[0], r->b[0], 0.5), toes = pt_between(
	    r->a[r->na - 1], r->b[r->nb - 1], 0.5);
	unsigned all = count_beads(j, r->back), done = 0, number = 1;
	size_t layers = count_layers(j, r->back), k = 0;
	double deep = pt_length(pt_sub(toes, root)) + r->rise;
	struct layer_line low = layer_line(&w, 0, root, 0);
	bool fits = true;

	/* A bead over a closed root has no walls; its lower line is that from toe to toe. */
	if (r->na == 1)
		root = (pt){ root.x, root.y + (r->back ? 1 : -1) };
	for (size_t i = 0; i < j->nlayers; i++) {
		unsigned beads = j->layers[i].beads;
		struct layer_line high;
		double share;

		if (j->layers[i].back != r->back) {
			number += beads;
			continue;
		}
		done += beads;
		share = layer_share(&w, ++k, layers, (double)done / all);
		high = layer_line(&w, share, root, deep / (double)layers);
		fits &= add_layer(s, &low, &high, beads, number, mm_pt);
		if (done < all)
			ink_line(s, high.a, high.b, high.out, high.rise);
		low = high;
		number += beads;
	}
	return fits;
}

/* Whether the section is too large without any beads, the most of what is tried. */
static bool too_large(const struct section *s, struct section_frame f)
{
	rect body = layout_body(s, 1 / f.mm_pt);

	return body.w > f.room.w + NEAR_PT || body.h > f.room.h + NEAR_PT;
}

void section_beads(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	bool fits = true;

	if (j->nlayers > 0 && too_large(s, f))
		return;
	for (size_t i = 0; i < s->nregions && j->nlayers > 0; i++)
		fits &= count_beads(j, s->region[i].back) == 0 ||
		    add_region(s, j, &s->region[i], f.mm_pt);
	s->spots_bare = s->nspots > 0;
	if (fits && numbers_apart(s, f.mm_pt))
		return;
	s->crowded = j->beads_inside;
	call_out(s);
}
