#include "sheets/weldment.h"

#include "model/weldment.h"
#include "sheets/band.h"
#include "sheets/wording.h"
#include "units/format.h"

#include <math.h>

enum { FAULTS_MOST = 10, SURE_LINES = 10 };

/* The member and place that each one in the figure was made of. */
struct origin { const struct member *m; const struct member_place *at; };

static size_t count_places(const struct weldment *w)
{
	size_t n = 0;

	for (size_t i = 0; i < w->n; i++)
		n += w->v[i].nat;
	return n;
}

static const pt *outline_of(struct arena *a, const struct member *m)
{
	pt *v = arena_array(a, m->ncorners, sizeof *v);

	for (uint32_t i = 0; i < m->ncorners; i++)
		v[i] = (pt){ m->corners_mm[2 * i], m->corners_mm[2 * i + 1] };
	return v;
}

static struct fig_member member_of(struct arena *a, const struct member *m, size_t part)
{
	static const enum fig_member_shape shapes[] = { [MEMBER_SOLID] = FIG_MEMBER_SOLID,
		[MEMBER_TUBE] = FIG_MEMBER_TUBE, [MEMBER_ANGLE] = FIG_MEMBER_ANGLE,
		[MEMBER_PIPE] = FIG_MEMBER_PIPE, [MEMBER_ROUND] = FIG_MEMBER_ROUND };
	struct fig_member k = { .shape = shapes[m->shape], .part = part,
		.along = (enum fig_axis)m->along, .wall_mm = m->wall_mm,
		.turn_deg = m->turn_deg, .about = (enum fig_axis)m->about,
		.heel_far = { m->heel_far[0], m->heel_far[1] } };

	for (int i = 0; i < 3; i++)
		k.size_mm[i] = m->size_mm[i];
	if (m->ncorners) {
		k.outline = outline_of(a, m);
		k.noutline = m->ncorners;
	}
	return k;
}

/* As the table of pieces has it; a member that is no piece has its own size in the same
 * form, an outline its thickness. */
static str size_of(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct member *m)
{
	struct piece own = { .pipe = m->pipe, .ndims = m->nsize };

	if (m->piece != NONE)
		return piece_size(a, e, &x->pieces[m->piece]);
	if (m->nsize == 1 && !(m->pipe.od_mm > 0))
		return word_format(a, edition_language(e), "%.*s thick",
		    STR_ARG(quantity_text(a, e, &m->size[0])));
	for (uint32_t i = 0; i < m->nsize; i++)
		own.dims[i] = m->size[i];
	return own.ndims ? piece_size(a, e, &own) : (str){ 0 };
}

/* The lowest corner of an outline that is not turned, along each axis. */
static str outline_place(struct arena *a, const struct edition *e, const struct member *m,
    const struct member_place *at)
{
	str s[3];
	int other = 0;

	for (int d = 0; d < 3; d++) {
		struct buf b = { .arena = a };
		double low = 0;

		if (d != (int)m->along) {
			low = m->corners_mm[other];
			for (uint32_t i = 1; i < m->ncorners; i++)
				low = fmin(low, m->corners_mm[2 * i + (uint32_t)other]);
			other++;
		}
		format_computed_as(&b, edition_format(e), at->v[d].lo + low, 0);
		s[d] = buf_str(&b);
	}
	return word_format(a, edition_language(e), "%.*s from the left, %.*s from the front, "
	    "%.*s up", STR_ARG(s[0]), STR_ARG(s[1]), STR_ARG(s[2]));
}

static str place_of(struct arena *a, const struct edition *e, const struct member *m,
    const struct member_place *at)
{
	if (m->ncorners)
		return m->turn_deg != 0 ? (str){ 0 } : outline_place(a, e, m, at);
	if (!given(&at->v[0]))
		return (str){ 0 };
	return word_format(a, edition_language(e), "%.*s from the left, %.*s from the front, "
	    "%.*s up", STR_ARG(quantity_text(a, e, &at->v[0])),
	    STR_ARG(quantity_text(a, e, &at->v[1])), STR_ARG(quantity_text(a, e, &at->v[2])));
}

/* Lines of one name are one part, whose size is told when all agree. */
static size_t part_of(struct fig_iso_part *v, size_t *n, const struct member *m, str size)
{
	for (size_t i = 0; i < *n; i++) {
		if (!str_eq_nocase(v[i].name, m->name))
			continue;
		if (!str_eq(v[i].size, size))
			v[i].size = (str){ 0 };
		return i;
	}
	v[*n] = (struct fig_iso_part){ m->name, size };
	return (*n)++;
}

/* x null: without labels. */
static struct fig_iso figure_of(struct arena *a, const struct edition *e,
    const struct assignment *x, const struct weldment *w, struct origin *from)
{
	size_t most = count_places(w);
	struct fig_member *v = arena_array(a, most + 1, sizeof *v);
	struct fig_iso_part *parts = arena_array(a, w->n + 1, sizeof *parts);
	struct fig_iso f = { .arena = a, .member = v, .part = parts,
		.from_left = w->from_left, .language = edition_language(e) };

	for (size_t i = 0; i < w->n; i++) {
		const struct member *m = &w->v[i];
		size_t part = part_of(parts, &f.nparts, m, x ? size_of(a, e, x, m) : (str){ 0 });

		for (size_t k = 0; k < m->nat; k++) {
			struct fig_member *one = &v[f.nmembers];

			*one = member_of(a, m, part);
			for (int d = 0; d < 3; d++)
				one->at_mm[d] = m->at[k].v[d].lo;
			if (x)
				one->place = place_of(a, e, m, &m->at[k]);
			if (from)
				from[f.nmembers] = (struct origin){ m, &m->at[k] };
			f.nmembers++;
		}
	}
	return f;
}

struct fig_iso weldment_figure(struct arena *a, const struct edition *e,
    const struct assignment *x, const struct weldment *w)
{
	struct fig_iso f = figure_of(a, e, x, w, NULL);
	struct fig_iso_fault fault;
	double lo[3], hi[3];

	if (fig_iso_faults(&f, &fault, 1) > 0) {
		f.fault = fault.why;
		return f;
	}
	fig_iso_extent(&f, lo, hi);
	for (int i = 0; i < 3; i++) {
		struct buf b = { .arena = a };

		format_computed_as(&b, edition_format(e), hi[i] - lo[i], 0);
		f.label[i] = buf_str(&b);
	}
	fig_iso_prepare(&f);
	return f;
}

struct fig_iso sheet_weldment(struct sheet *sh, const struct assignment *x,
    const struct weldment *w)
{
	struct fig_iso f;
	struct weldment_made *made = sh->weldments ? *sh->weldments : NULL;

	for (; made; made = made->next)
		if (made->of == w)
			return made->figure;
	f = weldment_figure(sh->arena, sh->e, x, w);
	if (!sh->weldments)
		return f;
	made = arena_alloc(sh->arena, sizeof *made);
	*made = (struct weldment_made){ w, f, *sh->weldments };
	*sh->weldments = made;
	return f;
}

str weldment_fault(struct arena *a, const struct weldment *w)
{
	struct fig_iso f = figure_of(a, NULL, NULL, w, NULL);
	struct fig_iso_fault fault;

	if (!w->n || !fig_iso_faults(&f, &fault, 1))
		return w->n ? (str){ 0 } : STR("no member was understood");
	return fault.why.n ? fault.why : WORD("the members do not make one weldment");
}

static str say_mm(struct arena *a, double mm)
{
	struct buf b = { .arena = a };

	format_computed(&b, mm, 0);
	return buf_str(&b);
}

static struct finding *report(struct findings *f, const struct assignment *x,
    enum finding_name name, struct pos pos, str message)
{
	struct finding *d = finding_add(f, name, pos, "%.*s", STR_ARG(message));

	d->assignment = x->id;
	return d;
}

static void report_overlap(struct arena *a, struct findings *f, const struct assignment *x,
    const struct origin *p, const struct origin *q, double mm)
{
	struct finding *d = report(f, x, FINDING_PARTS_OVERLAP, q->at->pos,
	    str_format(a, "the %.*s stands %.*s deep in the %.*s", STR_ARG(q->m->name),
	        STR_ARG(say_mm(a, mm)), STR_ARG(p->m->name)));

	finding_relate(f, d, p->at->pos)->label = p->m->name;
	finding_cause(f, d, "two pieces of steel cannot be in one place");
	finding_repair(f, d, "correct the place or the size of one of them");
}

static void report_floating(struct arena *a, struct findings *f, const struct assignment *x,
    const struct origin *p, double mm)
{
	struct finding *d = report(f, x, FINDING_FLOATING_PART, p->at->pos,
	    mm > FIG_ISO_APART_MM
	    ? str_format(a, "the %.*s touches nothing: the next member is %.*s away",
	        STR_ARG(p->m->name), STR_ARG(say_mm(a, mm)))
	    : str_format(a, "the %.*s and what it touches hang on nothing else",
	        STR_ARG(p->m->name)));

	finding_cause(f, d, "what is welded together touches, or stands a root opening apart");
	finding_repair(f, d, "correct its place, or draw each weldment in a block of its own");
}

/* Few members of few kinds always find room and are not tried (tests/unit/test_weldment.c). */
static bool has_room(struct arena *a, const struct faces *faces, const struct assignment *x,
    const struct weldment *w)
{
	static const struct canvas_ops nothing = { NULL };
	const struct edition usual = edition_new(&(struct edition_choice){ .large = false });
	const struct flow_spec s = band_flow_spec(&usual);
	const rect area = { 0, 0, s.page_width_pt - s.inner_pt - s.outer_pt,
		(s.page_height_pt - s.top_pt - s.bottom_pt) / 2 };
	struct canvas c = { .ops = &nothing };
	struct fig_iso iso;

	if (w->n <= SURE_LINES)
		return true;
	iso = weldment_figure(a, NULL, x, w);
	canvas_page_begin(&c, s.page_width_pt, s.page_height_pt);
	return fig_iso_draw(&c, faces, area, &iso);
}

static void report_no_room(struct findings *f, const struct assignment *x,
    const struct weldment *w)
{
	struct finding *d = finding_add(f, FINDING_NOT_DRAWN_YET, w->pos,
	    "this weldment has no room on a sheet with its sizes and letters; it says so in its "
	    "place");

	d->assignment = x->id;
	finding_repair(f, d, "draw it in several blocks, or with fewer kinds of members");
}

void weldment_review(struct arena *a, const struct faces *faces, struct findings *f,
    const struct assignment *x, const struct weldment *w)
{
	struct origin *from = arena_array(a, count_places(w) + 1, sizeof *from);
	struct fig_iso iso = figure_of(a, NULL, NULL, w, from);
	struct fig_iso_fault v[FAULTS_MOST];
	size_t n = w->n ? fig_iso_faults(&iso, v, FAULTS_MOST) : 0;

	if (w->n && !n && !has_room(a, faces, x, w))
		report_no_room(f, x, w);
	for (size_t i = 0; i < n; i++) {
		const struct origin *p = &from[v[i].a];

		if (v[i].wrong == FIG_ISO_OVERLAP)
			report_overlap(a, f, x, p, &from[v[i].b], v[i].mm);
		else if (v[i].wrong == FIG_ISO_FLOATS)
			report_floating(a, f, x, p, v[i].mm);
		else if (v[i].wrong == FIG_ISO_SIZE)
			finding_repair(f, report(f, x, FINDING_BAD_DRAWING, p->m->pos,
			    str_format(a, "the %.*s cannot be drawn: %.*s", STR_ARG(p->m->name),
			        STR_ARG(v[i].why))), "correct the sizes of the member or its piece");
		else
			finding_repair(f, report(f, x, FINDING_BAD_DRAWING, w->pos,
			    str_format(a, "this weldment cannot be drawn: %.*s",
			        STR_ARG(v[i].why))), "draw it in several blocks");
	}
}
