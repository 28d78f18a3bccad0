/* A placed section as ink: hatching, outlines, welds, dimensions, numbers, labels.
 */
#include "draw/fig_layout.h"

#include "draw/geom.h"

#include <math.h>

#define HATCH_APART_PT 10.0
#define OUTLINE_POINTS (SECTION_POINTS + 2 * DIM_BREAK_POINTS)

static pt moved(const struct layout *l, pt mm, pt by)
{
	return pt_add(layout_point(l, mm), by);
}

/* The outline on paper, break lines drawn out. */
static size_t trace_member(const struct layout *l, const struct section_member *m, pt by,
    pt *out)
{
	size_t n = 0;

	for (size_t i = 0; i < m->n; i++) {
		pt a = moved(l, m->v[i], by), b = moved(l, m->v[(i + 1) % m->n], by);

		if (m->broken[0] == i || m->broken[1] == i)
			n += dim_break(a, b, out + n) - 1; /* b comes with its own edge */
		else
			out[n++] = a;
	}
	return n;
}

static void stroke_member(struct canvas *c, const pt *v, size_t n, bool open)
{
	struct ink ink = { .stroke_pt = DIM_OUTLINE_PT };
	struct seg g[OUTLINE_POINTS];

	if (!open) {
		canvas_polygon(c, v, n, &ink);
		return;
	}
	for (size_t i = 0; i < n; i++)
		g[i] = (struct seg){ i == 0 ? SEG_MOVE : SEG_LINE, { v[i] } };
	canvas_path(c, g, n, &ink);
}

static void ink_members(const struct layout *l, struct canvas *c, pt by)
{
	pt v[OUTLINE_POINTS];

	for (size_t i = 0; i < l->s->nmembers; i++) {
		const struct section_member *m = &l->s->member[i];
		size_t n = trace_member(l, m, by, v);

		if (isfinite(m->hatch_deg))
			dim_hatch(c, v, n, m->hatch_deg, HATCH_APART_PT);
		stroke_member(c, v, n, m->open);
	}
}

static void ink_beads(const struct layout *l, struct canvas *c, pt by)
{
	for (size_t i = 0; i < l->s->nbeads; i++) {
		struct section_bead b = l->s->bead[i];

		for (size_t k = 0; k < b.n; k++)
			for (int q = 0; q < 3; q++)
				b.s[k].p[q] = moved(l, b.s[k].p[q], by);
		canvas_path(c, b.s, b.n, &(struct ink){ .stroke_pt =
		    b.thin ? DIM_THIN_PT : DIM_WELD_PT });
	}
}

static void ink_rules(const struct layout *l, struct canvas *c, pt by)
{
	for (size_t i = 0; i < l->s->nrules; i++) {
		const struct section_rule *r = &l->s->rule[i];
		struct seg g[2] = { { SEG_MOVE, { moved(l, r->a, by) } },
		    { SEG_LINE, { moved(l, r->b, by) } } };
		struct ink ink = { .stroke_pt = r->thin ? DIM_THIN_PT : 1.25 };

		if (r->dashed)
			ink.dash_on_pt = 5, ink.dash_off_pt = 3;
		canvas_path(c, g, 2, &ink);
	}
}

static void ink_dimensions(const struct layout *l, struct canvas *c, pt by)
{
	struct seg thin[LAYOUT_THIN];

	for (size_t i = 0; i < l->nthin; i++)
		thin[i] = (struct seg){ l->thin[i].op, { pt_add(l->thin[i].p[0], by) } };
	if (l->nthin > 0)
		canvas_path(c, thin, l->nthin, &(struct ink){ .stroke_pt = DIM_THIN_PT });
	for (size_t i = 0; i < l->narrows; i++)
		dim_arrow(c, pt_add(l->arrow[i].tip, by), l->arrow[i].dir);
}

static void ink_rings(const struct layout *l, struct canvas *c, pt by)
{
	for (size_t i = 0; !l->s->spots_bare && i < l->s->nspots; i++) {
		pt at = moved(l, l->s->spot[i], by);
		str text = fig_number(l->s->spot_number[i]);
		double w = face_width_pt(l->faces, FACE_SANS, DIM_TYPE_PT, text);
		double h = face_cap_height_pt(l->faces, FACE_SANS, DIM_TYPE_PT);

		canvas_circle(
		    c, at, SECTION_SPOT_PT - 0.5, &(struct ink){ .stroke_pt = DIM_THIN_PT });
		canvas_text(
		    c, (pt){ at.x - w / 2, at.y + h / 2 }, FACE_SANS, DIM_TYPE_PT, text);
	}
}

void layout_emit(const struct layout *l, struct canvas *c, rect area)
{
	pt by = { area.x + (area.w - l->ink.w) / 2 - l->ink.x,
	    area.y + (area.h - l->ink.h) / 2 - l->ink.y };

	ink_members(l, c, by);
	ink_beads(l, c, by);
	ink_rules(l, c, by);
	ink_dimensions(l, c, by);
	ink_rings(l, c, by);
	for (size_t i = 0; i < l->nlabels; i++) {
		rect r = l->label[i].r;

		r.x += by.x;
		r.y += by.y;
		dim_label_draw(c, l->faces, &l->label[i].text, r, l->label[i].align);
	}
}
