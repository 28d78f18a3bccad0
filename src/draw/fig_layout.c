#include "draw/fig_layout.h"

#include "draw/geom.h"

#include <assert.h>
#include <math.h>

#define ROW_FIRST_PT 12.0
#define ROW_BESIDE_PT 11.0
#define STEM_PT 13.0
#define INSIDE_PT 22.0
#define EXTENSION_GAP_PT 2.0
#define EXTENSION_PAST_PT 3.0
#define LABEL_GAP_PT 3.0
#define ARC_STEPS 16

pt layout_point(const struct layout *l, pt mm)
{
	return (pt){ mm.x * l->pt_mm, -mm.y * l->pt_mm };
}

rect layout_body(const struct section *s, double pt_mm)
{
	rect r = rect_at(pt_mul(s->member[0].v[0], pt_mm));

	for (size_t i = 0; i < s->nmembers; i++)
		for (size_t k = 0; k < s->member[i].n; k++)
			r = rect_grow(r, pt_mul(s->member[i].v[k], pt_mm));
	for (size_t i = 0; i < s->nbeads; i++) {
		for (size_t k = 0; k < s->bead[i].n; k++) {
			const struct seg *g = &s->bead[i].s[k];

			if (g->op == SEG_CLOSE)
				continue;
			for (int q = 0; q < (g->op == SEG_CURVE ? 3 : 1); q++)
				r = rect_grow(r, pt_mul(g->p[q], pt_mm));
		}
	}
	for (size_t i = 0; i < s->nrules; i++)
		r = rect_grow(rect_grow(r, pt_mul(s->rule[i].a, pt_mm)),
		    pt_mul(s->rule[i].b, pt_mm));
	/* Turned over, and room for the swing of break lines. */
	return rect_inset((rect){ r.x, -r.y - r.h, r.w, r.h }, -2.5);
}

void layout_thin(struct layout *l, pt a, pt b)
{
	assert(l->nthin + 2 <= LAYOUT_THIN);
	l->thin[l->nthin++] = (struct seg){ SEG_MOVE, { a } };
	l->thin[l->nthin++] = (struct seg){ SEG_LINE, { b } };
	l->ink = rect_grow(rect_grow(l->ink, a), b);
}

void layout_arrow(struct layout *l, pt tip, pt dir)
{
	assert(l->narrows < LAYOUT_ARROWS);
	l->arrow[l->narrows].tip = tip;
	l->arrow[l->narrows++].dir = dir;
	l->ink = rect_grow(l->ink, pt_sub(tip, pt_mul(dir, DIM_ARROW_PT)));
}

struct layout_label *layout_label(struct layout *l, str text, enum dim_align align)
{
	assert(l->nlabels < LAYOUT_LABELS);
	struct layout_label *b = &l->label[l->nlabels++];

	if (!dim_label_set(&b->text, l->faces, l->size_pt, text, l->lines))
		l->failed = true;
	b->align = align;
	b->r = (rect){ 0, 0, b->text.w, b->text.h };
	return b;
}

bool layout_arrows(struct layout *l, pt a, pt b)
{
	pt u = pt_unit(pt_sub(b, a)), back = pt_mul(u, -1);
	bool inside = pt_length(pt_sub(b, a)) >= INSIDE_PT;

	layout_arrow(l, a, inside ? back : u);
	layout_arrow(l, b, inside ? u : back);
	if (inside) {
		layout_thin(l, a, b);
	} else {
		layout_thin(l, pt_sub(a, pt_mul(u, STEM_PT)), a);
		layout_thin(l, b, pt_add(b, pt_mul(u, STEM_PT)));
	}
	return inside;
}

/* The line from a point of the part, with a small gap, to just past the dimension. */
static void add_extension(struct layout *l, pt from, pt to)
{
	pt u = pt_unit(pt_sub(to, from));

	layout_thin(l, pt_add(from, pt_mul(u, EXTENSION_GAP_PT)),
	    pt_add(to, pt_mul(u, EXTENSION_PAST_PT)));
}

static void place_level(struct layout *l, const struct section_dim *d)
{
	bool above = d->side == SECTION_TOP;
	double y = above ? l->top - ROW_FIRST_PT : l->bottom + ROW_FIRST_PT;
	pt a = layout_point(l, d->a), b = layout_point(l, d->b);
	struct layout_label *t = layout_label(l, d->label, DIM_CENTER);

	add_extension(l, a, (pt){ a.x, y });
	add_extension(l, b, (pt){ b.x, y });
	layout_arrows(l, (pt){ a.x, y }, (pt){ b.x, y });
	t->r.x = (a.x + b.x - t->r.w) / 2;
	if (above) {
		t->r.y = y - LABEL_GAP_PT - t->r.h;
		l->top = t->r.y;
	} else {
		t->r.y = y + LABEL_GAP_PT;
		l->bottom = t->r.y + t->r.h;
	}
}

/* Always with arrows from outside, the label at the end of one stem. */
static void place_beside(struct layout *l, const struct section_dim *d)
{
	bool above = d->side == SECTION_TOP;
	double y = above ? l->top - ROW_BESIDE_PT : l->bottom + ROW_BESIDE_PT;
	pt a = layout_point(l, d->a), b = layout_point(l, d->b);
	pt from = { fmin(a.x, b.x), y }, to = { fmax(a.x, b.x), y };
	struct layout_label *t = layout_label(l, d->label,
	    d->end == SECTION_LEFT ? DIM_RIGHT : DIM_LEFT);

	add_extension(l, a, (pt){ a.x, y });
	add_extension(l, b, (pt){ b.x, y });
	layout_arrow(l, from, (pt){ 1, 0 });
	layout_arrow(l, to, (pt){ -1, 0 });
	layout_thin(l, (pt){ from.x - STEM_PT, y }, from);
	layout_thin(l, to, (pt){ to.x + STEM_PT, y });
	t->r.y = y - t->r.h / 2;
	t->r.x = d->end == SECTION_LEFT ? from.x - STEM_PT - LABEL_GAP_PT - t->r.w
	    : to.x + STEM_PT + LABEL_GAP_PT;
	l->top = above ? y : l->top;
	l->bottom = above ? l->bottom : y;
}

/* Arrowheads at the ends of an arc lie along chords of their own length. */
static void arc_arrows(struct layout *l, pt apex, double r, double from, double to)
{
	double turn = DIM_ARROW_PT / r * 180 / GEOM_PI;
	bool inside = (to - from) * GEOM_PI / 180 * r >= INSIDE_PT;
	const double end[2] = { from, to };

	for (int i = 0; i < 2; i++) {
		double way = (i == 0) == inside ? 1 : -1;
		pt tip = pt_add(apex, pt_polar(r, -end[i]));
		pt back = pt_add(apex, pt_polar(r, -end[i] - way * turn));

		layout_arrow(l, tip, pt_unit(pt_sub(tip, back)));
		if (!inside)
			layout_thin(l, tip, pt_add(apex,
			    pt_polar(r, -end[i] - way * turn * 1.7)));
	}
}

static void place_angle(struct layout *l, const struct section_dim *d)
{
	pt apex = layout_point(l, d->apex), a = layout_point(l, d->a);
	pt b = layout_point(l, d->b);
	double from = atan2(apex.y - a.y, a.x - apex.x) * 180 / GEOM_PI;
	double to = atan2(apex.y - b.y, b.x - apex.x) * 180 / GEOM_PI;
	double low = fmin(geom_sin(from), geom_sin(to));
	double r = (apex.y - l->top + 7) / low;
	struct layout_label *t = layout_label(l, d->label, DIM_CENTER);
	pt mid = pt_add(apex, pt_polar(r, -(from + to) / 2));
	double high = apex.y - r * (from < 90 && to > 90 ? 1
	    : fmax(geom_sin(from), geom_sin(to)));

	add_extension(l, a, pt_add(apex, pt_polar(r, -from)));
	add_extension(l, b, pt_add(apex, pt_polar(r, -to)));
	arc_arrows(l, apex, r, from, to);
	for (int i = 0; i < ARC_STEPS; i++)
		layout_thin(l, pt_add(apex, pt_polar(r, -from - (to - from) * i / ARC_STEPS)),
		    pt_add(apex, pt_polar(r, -from - (to - from) * (i + 1) / ARC_STEPS)));
	t->r.x = mid.x - t->r.w / 2;
	t->r.y = high - LABEL_GAP_PT - EXTENSION_PAST_PT - t->r.h;
	l->top = t->r.y;
}

static void place_text(struct layout *l)
{
	struct layout_label *t;
	pt at = layout_point(l, l->s->text.at);

	if (l->s->text.text.n == 0)
		return;
	t = layout_label(l, l->s->text.text, DIM_LEFT);
	t->r.x = at.x;
	t->r.y = at.y;
	l->bottom = fmax(l->bottom, t->r.y + t->r.h);
}

/* Whether the outline of the part runs through a label. */
static bool meets_part(const struct layout *l, rect r)
{
	for (size_t i = 0; i < l->s->nmembers; i++) {
		const struct section_member *m = &l->s->member[i];

		for (size_t k = 0; k < m->n; k++)
			if (rect_crossed(r, layout_point(l, m->v[k]),
			    layout_point(l, m->v[(k + 1) % m->n])))
				return true;
	}
	for (size_t i = 0; i < l->s->nrules; i++)
		if (rect_crossed(r, layout_point(l, l->s->rule[i].a),
		    layout_point(l, l->s->rule[i].b)))
			return true;
	return false;
}

static bool label_clear(const struct layout *l, size_t which)
{
	rect r = rect_inset(l->label[which].r, 0.4);

	for (size_t i = 0; i < which; i++)
		if (!rect_apart(rect_inset(r, -1), l->label[i].r))
			return false;
	for (size_t i = 0; i + 1 < l->nthin; i += 2)
		if (rect_crossed(r, l->thin[i].p[0], l->thin[i + 1].p[0]))
			return false;
	for (size_t i = 0; i < l->narrows; i++)
		if (!rect_apart(r, rect_inset(rect_grow(rect_at(l->arrow[i].tip),
		    pt_sub(l->arrow[i].tip, pt_mul(l->arrow[i].dir, DIM_ARROW_PT))),
		    -DIM_ARROW_HALF_PT)))
			return false;
	return !meets_part(l, r);
}

bool layout_place(struct layout *l, double w, double h)
{
	l->nthin = l->narrows = l->nlabels = 0;
	l->failed = false;
	l->ink = l->body;
	l->top = l->body.y;
	l->bottom = l->body.y + l->body.h;
	place_text(l);
	for (size_t i = 0; i < l->s->ndims; i++) {
		const struct section_dim *d = &l->s->dim[i];

		if (d->kind == SECTION_ANGLE)
			place_angle(l, d);
		else if (d->kind == SECTION_LEVEL)
			place_level(l, d);
		else if (d->kind == SECTION_LEVEL_BESIDE)
			place_beside(l, d);
	}
	layout_columns(l);
	for (size_t i = 0; i < l->nlabels; i++)
		l->ink = rect_join(l->ink, l->label[i].r);
	if (l->failed || l->ink.w > w || l->ink.h > h)
		return false;
	for (size_t i = 0; i < l->nlabels; i++)
		if (!label_clear(l, i))
			return false;
	return true;
}
