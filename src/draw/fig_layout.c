#include "draw/fig_layout.h"

#include "draw/geom.h"

#include <assert.h>
#include <math.h>


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

struct layout_label *layout_label(struct layout *l, str text, enum dim_align align,
    enum dim_lines lines)
{
	assert(l->nlabels < LAYOUT_LABELS);
	struct layout_known *known = &l->known[lines][l->nlabels];
	struct layout_label *b = &l->label[l->nlabels++];

	if (known->text.p != text.p || known->text.n != text.n ||
	    known->label.size_pt != l->size_pt) {
		known->text = text;
		known->breaks = dim_label_set(&known->label, l->faces, l->size_pt, text, lines);
	}
	b->text = known->label;
	l->failed |= !known->breaks;
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

static void place_text(struct layout *l)
{
	struct layout_label *t;
	pt at = layout_point(l, l->s->text.at);

	if (l->s->text.text.n == 0)
		return;
	t = layout_label(l, l->s->text.text, DIM_LEFT, DIM_ONE_LINE);
	t->r.x = at.x;
	t->r.y = at.y;
	l->bottom = fmax(l->bottom, t->r.y + t->r.h);
}

static void place_clock(struct layout *l)
{
	static const char *const hour[] = { "3", "12", "9", "6" };
	double r = l->s->clock_mm * l->pt_mm;

	for (int i = 0; i < 4 && r > 0; i++) {
		pt u = pt_polar(1, -90 * i);
		struct layout_label *t;

		if ((i == 0 && l->s->no_3) || (i == 2 && l->s->no_9))
			continue;
		t = layout_label(l, str_of(hour[i]), DIM_CENTER, DIM_ONE_LINE);
		pt at =
		    pt_mul(u, r + 2 + fabs(u.x) * t->r.w / 2 + fabs(u.y) * t->r.h / 2);

		t->r.x = at.x - t->r.w / 2;
		t->r.y = at.y - t->r.h / 2;
		l->body = rect_join(l->body, t->r);
	}
	l->top = fmin(l->top, l->body.y);
	l->bottom = fmax(l->bottom, l->body.y + l->body.h);
}

/* Numbers within beads: the middle of their capitals where the bead has its own. */
static void place_numbers(struct layout *l)
{
	double up = face_ascent_pt(l->faces, FACE_SANS, l->size_pt) -
	    face_cap_height_pt(l->faces, FACE_SANS, l->size_pt) / 2;

	for (size_t i = 0; l->s->spots_bare && i < l->s->nspots; i++) {
		pt at = layout_point(l, l->s->spot[i]);
		struct layout_label *t = layout_label(l, fig_number(l->s->spot_number[i]),
		    DIM_CENTER, DIM_ONE_LINE);

		t->r.x = at.x - t->r.w / 2;
		t->r.y = at.y - up;
	}
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

static rect bead_box(const struct layout *l, const struct section_bead *b)
{
	rect r = rect_at(layout_point(l, b->s[0].p[0]));

	for (size_t i = 1; i < b->n; i++) {
		if (b->s[i].op != SEG_CLOSE)
			r = rect_grow(r,
			    layout_point(l, b->s[i].p[b->s[i].op == SEG_CURVE ? 2 : 0]));
	}
	return r;
}

static bool spots_clear(const struct layout *l)
{
	for (size_t i = 0; l->s->spots_apart && i < l->s->nspots; i++) {
		pt at = layout_point(l, l->s->spot[i]);
		rect ring = rect_inset(rect_at(at), -SECTION_SPOT_PT);

		for (size_t k = 0; k < i; k++)
			if (pt_length(pt_sub(at, layout_point(l, l->s->spot[k]))) <
			    2 * SECTION_SPOT_PT)
				return false;
		for (size_t k = 0; k < l->s->nbeads; k++)
			if (!rect_apart(ring, bead_box(l, &l->s->bead[k])))
				return false;
		for (size_t k = 0; k < l->nlabels; k++)
			if (!rect_apart(ring, l->label[k].r))
				return false;
	}
	return true;
}

static void join_labels(struct layout *l)
{
	for (size_t i = 0; i < l->nlabels; i++)
		l->ink = rect_join(l->ink, l->label[i].r);
}

static bool too_large(struct layout *l, double w, double h)
{
	if (!l->failed && l->ink.w <= w && l->ink.h > h)
		l->needs = fmin(l->needs, l->ink.h);
	return l->failed || l->ink.w > w || l->ink.h > h;
}

bool layout_place(struct layout *l, rect body, double w, double h)
{
	l->nthin = l->narrows = l->nlabels = l->narcs = 0;
	l->failed = false;
	l->body = l->ink = body;
	l->top = l->body.y;
	l->bottom = l->body.y + l->body.h;
	place_text(l);
	place_clock(l);
	place_numbers(l);
	layout_rows(l);
	join_labels(l);
	/* Arcs and columns only add. */
	if (too_large(l, w, h))
		return false;
	layout_arcs(l);
	layout_columns(l);
	join_labels(l);
	for (size_t i = 0; !l->s->spots_bare && i < l->s->nspots; i++)
		l->ink = rect_join(l->ink,
		    rect_inset(
		        rect_at(layout_point(l, l->s->spot[i])), -SECTION_SPOT_PT));
	if (too_large(l, w, h))
		return false;
	for (size_t i = 0; i < l->nlabels; i++)
		if (!label_clear(l, i))
			return false;
	return spots_clear(l);
}
