#include "draw/fig_section.h"

#include "draw/geom.h"

#include <assert.h>
#include <math.h>

/* A center line longer than this many strokes runs far off any paper. */
#define AXIS_STROKES 40

void section_clear(struct section *s)
{
	s->nmembers = s->nbeads = s->ndims = s->nspots = s->nrules = s->nregions = 0;
	s->text = (struct section_text){ { 0, 0 }, STR("") };
	s->clock_mm = 0;
	s->no_3 = s->no_9 = false;
	s->spots_apart = s->spots_bare = s->crowded = false;
}

bool section_full(struct section *s, struct section_frame f)
{
	s->sheds = true;
	return f.full;
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

void section_box(struct section_member *m, double x0, double y0, double x1, double y1,
    bool left_broken, bool right_broken)
{
	section_corner(m, x0, y0);
	section_corner(m, x1, y0);
	if (right_broken)
		section_break(m);
	section_corner(m, x1, y1);
	section_corner(m, x0, y1);
	if (left_broken)
		section_break(m);
}

struct section_bead *section_bead(struct section *s)
{
	assert(s->nbeads < SECTION_BEADS);
	s->bead[s->nbeads].n = 0;
	s->bead[s->nbeads].thin = false;
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

struct section_region *section_region(struct section *s, bool back)
{
	assert(s->nregions < SECTION_REGIONS);
	struct section_region *r = &s->region[s->nregions++];

	r->na = r->nb = 0;
	r->rise = 0;
	r->back = back;
	return r;
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
	for (size_t i = 0; i < s->ndims; i++)
		d.repeated |= d.kind == SECTION_LEVEL_BESIDE && s->dim[i].kind == d.kind &&
		    s->dim[i].end == d.end;
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
