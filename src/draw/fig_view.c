#include "draw/fig_view.h"

#include "draw/fig_section.h"
#include "draw/geom.h"

#include <math.h>

/* A turn of more than this is a corner, which thinning out must keep. */
#define CORNER_COS 0.97

static bool is_corner(const struct fig_path *p, size_t i)
{
	pt before = p->v[(i + p->n - 1) % p->n], after = p->v[(i + 1) % p->n];
	pt u = pt_unit(pt_sub(p->v[i], before)), v = pt_unit(pt_sub(after, p->v[i]));

	if (!p->closed && (i == 0 || i + 1 == p->n))
		return true;
	return u.x * v.x + u.y * v.y < CORNER_COS;
}

/* All corners, and of the points between them as many as there is room for, evenly. */
static void add_outline(struct section *s, const struct fig_path *p)
{
	struct section_member *m = section_plate(s, NAN);
	size_t corners = 0, room, step, since = 0;

	for (size_t i = 0; i < p->n; i++)
		corners += is_corner(p, i);
	room = SECTION_POINTS > corners ? SECTION_POINTS - corners : 1;
	step = p->n > SECTION_POINTS ? (p->n - corners) / room + 1 : 1;
	for (size_t i = 0; i < p->n && m->n < SECTION_POINTS; i++) {
		since++;
		if (!is_corner(p, i) && since < step)
			continue;
		since = 0;
		section_corner(m, p->v[i].x, p->v[i].y);
	}
	m->open = !p->closed;
}

static void add_stroke(struct section *s, const struct fig_path *p)
{
	section_rule(s, p->v[0], p->v[1], p->stroke == FIG_FOLD_LINE ||
	    p->stroke == FIG_AXIS_LINE);
	s->rule[s->nrules - 1].thin = p->stroke == FIG_THIN_LINE ||
	    p->stroke == FIG_AXIS_LINE;
}

static bool is_outline(const struct fig_path *p)
{
	return p->n > 2;
}

static void add_size(struct section *s, const struct fig_size *d)
{
	switch (d->kind) {
	case FIG_SIZE_ABOVE:
		section_level(s, SECTION_TOP, d->a, d->b, d->label);
		break;
	case FIG_SIZE_BELOW:
		section_level(s, SECTION_BOTTOM, d->a, d->b, d->label);
		break;
	case FIG_SIZE_LEFT:
		section_upright(s, SECTION_LEFT, d->a, d->b, SECTION_UP, d->label);
		break;
	case FIG_SIZE_RIGHT:
		section_upright(s, SECTION_RIGHT, d->a, d->b, SECTION_UP, d->label);
		break;
	case FIG_SIZE_AT_LEFT:
		section_pointer(s, SECTION_LEFT, d->a, d->a, d->label);
		break;
	default:
		section_pointer(s, SECTION_RIGHT, d->a, d->a, d->label);
		break;
	}
}

static void build_view(struct section *s, const void *data, struct section_frame f)
{
	const struct fig_view *v = data;
	size_t strokes = 0, at = 0, step;

	(void)f;
	for (size_t i = 0; i < v->npaths; i++)
		strokes += !is_outline(&v->path[i]);
	step = strokes / FIG_VIEW_STROKES + 1;
	for (size_t i = 0; i < v->npaths; i++) {
		if (is_outline(&v->path[i]) && s->nmembers < FIG_VIEW_OUTLINES)
			add_outline(s, &v->path[i]);
		else if (!is_outline(&v->path[i]) && at++ % step == 0)
			add_stroke(s, &v->path[i]);
	}
	for (size_t i = 0; i < v->nsizes && i < FIG_VIEW_SIZES; i++)
		add_size(s, &v->size[i]);
}

static bool is_finite(const struct fig_view *v)
{
	bool outline = false;

	for (size_t i = 0; i < v->npaths; i++) {
		outline |= is_outline(&v->path[i]);
		for (size_t k = 0; k < v->path[i].n; k++)
			if (!isfinite(v->path[i].v[k].x + v->path[i].v[k].y))
				return false;
	}
	return outline;
}

bool fig_view_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_view *v)
{
	struct fig_fit fit = { .build = build_view, .data = v, .position = v->note,
		.language = v->language, .small = true };

	if (!is_finite(v))
		return fig_refuse(c, f, area, v->language, WORD("a size is missing"));
	if (fig_fit_draw(c, f, area, &fit))
		return true;
	return fig_refuse(c, f, area, v->language, FIG_NO_ROOM);
}
