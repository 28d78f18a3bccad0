/* The scale of a figure, and the strip under it that tells it. */
#include "draw/fig_layout.h"

#include "draw/geom.h"

#include <math.h>

#define NOTE_PT DIM_TYPE_PT
#define STRIP_PT FIG_STRIP_PT
/* A member thinner than this on paper does not read as one; a thicker one than that
 * says no more for it. */
#define LEAST_MEMBER_PT (2.2 / 25.4 * 72)
#define MOST_MEMBER_PT 112.0
#define PT_MM (72 / 25.4)

/* Paper to steel. Smaller scales than 1:10 would hide a joint; whole parts and their
 * patterns go on. */
static const struct scale {
	double factor;
	str ratio, times;        /* times: "2", "1/2"; empty at full size */
} scales[] = {
	{ 10, { "10:1", 4 }, { "10", 2 } }, { 8, { "8:1", 3 }, { "8", 1 } },
	{ 6, { "6:1", 3 }, { "6", 1 } }, { 5, { "5:1", 3 }, { "5", 1 } },
	{ 4, { "4:1", 3 }, { "4", 1 } }, { 3, { "3:1", 3 }, { "3", 1 } },
	{ 2, { "2:1", 3 }, { "2", 1 } }, { 1.5, { "3:2", 3 }, { "1-1/2", 5 } },
	{ 1, { "1:1", 3 }, { NULL, 0 } }, { 0.75, { "3:4", 3 }, { "3/4", 3 } },
	{ 0.5, { "1:2", 3 }, { "1/2", 3 } }, { 1.0 / 3, { "1:3", 3 }, { "1/3", 3 } },
	{ 0.25, { "1:4", 3 }, { "1/4", 3 } },
	{ 0.2, { "1:5", 3 }, { "1/5", 3 } }, { 0.125, { "1:8", 3 }, { "1/8", 3 } },
	{ 0.1, { "1:10", 4 }, { "1/10", 4 } },
	{ 1.0 / 12, { "1:12", 4 }, { "1/12", 4 } },
	{ 1.0 / 16, { "1:16", 4 }, { "1/16", 4 } },
	{ 0.05, { "1:20", 4 }, { "1/20", 4 } }, { 0.04, { "1:25", 4 }, { "1/25", 4 } },
	{ 0.025, { "1:40", 4 }, { "1/40", 4 } }, { 0.02, { "1:50", 4 }, { "1/50", 4 } },
	{ 0.01, { "1:100", 5 }, { "1/100", 5 } },
	{ 0.005, { "1:200", 5 }, { "1/200", 5 } },
};

#define SCALES (sizeof scales / sizeof scales[0])
_Static_assert(SCALES == FIG_SCALES, "struct fig_tries has a row for each");
#define SCALES_SMALL 8           /* the last of them */

/* Whether the members come out too thin to read, or thicker than is of use. */
static bool members_off(const struct fig_fit *fit, const struct layout *l)
{
	return (fit->thin_mm > 0 && fit->thin_mm * l->pt_mm * l->zoom < LEAST_MEMBER_PT) ||
	    (fit->thick_mm > 0 && fit->thick_mm * l->pt_mm > MOST_MEMBER_PT);
}

static bool has_kind(const struct section *s, enum section_dim_kind kind)
{
	for (size_t i = 0; i < s->ndims; i++)
		if (s->dim[i].kind == kind)
			return true;
	return false;
}

/* Tries all ways to break labels, or those that differ when the alike found no room. */
static bool try_mixed(struct layout *l, rect body, rect area, bool alike)
{
	for (int both = 0; both < DIM_LINES_COUNT * DIM_LINES_COUNT; both++) {
		l->lines = (enum dim_lines)(both / DIM_LINES_COUNT);
		l->column_lines = (enum dim_lines)(both % DIM_LINES_COUNT);
		if ((alike || l->lines != l->column_lines) &&
		    layout_place(l, body, area.w, area.h))
			return true;
	}
	return false;
}

/* Tries ways to break labels for one built section. Ordinates need narrow labels below
 * and low ones at the side; chains take labels at both sides as they fit. */
static bool try_labels(struct layout *l, rect body, rect area)
{
	bool ordinates = has_kind(l->s, SECTION_ORDINATE_X);
	bool chain = has_kind(l->s, SECTION_CHAIN_X);

	l->size_pt = DIM_TYPE_PT;
	if (l->mixed || chain)
		return try_mixed(l, body, area, chain);
	for (int lines = 0; lines < DIM_LINES_COUNT; lines++) {
		l->lines = l->column_lines = (enum dim_lines)lines;
		if (layout_place(l, body, area.w, area.h))
			return true;
		l->column_lines = DIM_ONE_LINE;
		if (ordinates && lines > 0 && layout_place(l, body, area.w, area.h))
			return true;
	}
	return false;
}

/* Builds the section for one frame and places it; else l->needs tells what it needs. */
static bool try_frame(struct layout *l, struct section *s, const struct fig_fit *fit,
    rect area, struct section_frame f)
{
	rect body;

	l->needs = INFINITY;
	section_clear(s);
	fit->build(s, fit->data, f);
	if (s->crowded)
		return false;
	body = layout_body(s, l->pt_mm);
	if (body.w > area.w)
		return false;
	if (body.h <= area.h)
		return try_labels(l, body, area);
	l->needs = body.h;
	return false;
}

/* One scale, with long arms first; those known to need more height are passed over. */
static bool try_scale(struct layout *l, struct section *s, const struct fig_fit *fit,
    rect area, bool full, size_t scale)
{
	static const double arm_pt[FIG_ARMS] = { 72, 50, 34, 24, 15 };
	double *needs = fit->tries ? fit->tries->needs[l->mixed][full][scale] : NULL;

	for (size_t i = 0; i < (fit->small && !fit->arms ? 1 : FIG_ARMS); i++) {
		struct section_frame f = { .mm_pt = 1 / l->pt_mm, .room = area,
		    .arm_mm = arm_pt[i] / l->pt_mm, .full = full };

		if (needs && needs[i] > area.h)
			continue;
		if (try_frame(l, s, fit, area, f))
			return true;
		if (needs)
			needs[i] = l->needs;
	}
	return false;
}

/* Which scales are tried: from scales[from] on, while their factor is over `above`. */
struct search { bool full; size_t from; double above; };

/* The largest scale that fits; SCALES when none does. */
static size_t find_scale(struct layout *l, struct section *s, const struct fig_fit *fit,
    rect area, struct search q)
{
	size_t end = fit->small ? SCALES : SCALES - SCALES_SMALL;

	for (size_t i = q.from; i < end && scales[i].factor > q.above; i++) {
		l->pt_mm = scales[i].factor * PT_MM / l->zoom;
		if (!members_off(fit, l) && try_scale(l, s, fit, area, q.full, i))
			return i;
	}
	return SCALES;
}

/* With everything, unless leaving out what may go gives much more size. */
static const struct scale *fit_scale(struct layout *l, struct section *s,
    const struct fig_fit *fit, rect area)
{
	size_t full = find_scale(l, s, fit, area, (struct search){ .full = true }), bare;
	double above = full < SCALES ? scales[full].factor * 1.6 : 0;

	if (full < SCALES && (scales[full].factor >= 1 || fit->small || !s->sheds))
		return &scales[full];
	if (fit->small || !s->sheds)
		return NULL;
	bare = find_scale(l, s, fit, area, (struct search){ .above = above });
	if (bare < SCALES)
		return &scales[bare];
	if (full == SCALES)
		return NULL;
	find_scale(l, s, fit, area, (struct search){ .full = true, .from = full });
	return &scales[full];
}

/* Writes s and returns where the next word starts; without a canvas only measures. */
static double put(
    struct canvas *c, const struct faces *f, pt at, enum face_id face, str s)
{
	if (c != NULL)
		canvas_text(c, at, face, NOTE_PT, s);
	return at.x + face_width_pt(f, face, NOTE_PT, s) +
	    face_width_pt(f, face, NOTE_PT, STR(" "));
}

/* "to scale 2:1, 2 times full size" from at.x on; returns where it ends. */
static double put_scale(struct canvas *c, const struct faces *f, pt at,
    const struct language *l, const struct scale *scale, bool words)
{
	at.x = put(c, f, at, FACE_SANS, word(l, "to scale"));
	at.x = put(c, f, at, FACE_SANS, scale->ratio);
	if (!words)
		return at.x;
	at.x -= face_width_pt(f, FACE_SANS, NOTE_PT, STR(" "));
	at.x = put(c, f, at, FACE_SANS, STR(","));
	if (scale->factor == 1)
		return put(c, f, at, FACE_SANS, word(l, "full size"));
	at.x = put(c, f, at, FACE_SANS, scale->times);
	return put(c, f, at, FACE_SANS, scale->factor > 1
	    ? word(l, "times full size") : word(l, "of full size"));
}

/* The strip under the figure: weld and position at the left, scale at the right. */
static void put_strip(struct canvas *c, const struct faces *f, rect area,
    const struct fig_fit *fit, const struct scale *scale)
{
	const struct language *l = fit->language;
	double y = area.y + area.h - face_descent_pt(f, FACE_SANS, NOTE_PT), wide, left;
	rect box = { area.x, area.y + area.h - STRIP_PT, area.w, STRIP_PT };
	pt at = { area.x, y };
	bool words = true;

	canvas_box_begin(c, box, STR("note"));
	if (fit->letter.n > 0) {
		at.x = put(c, f, at, FACE_SANS_BOLD, word(l, "Weld"));
		at.x = put(c, f, at, FACE_SANS_BOLD, fit->letter) + NOTE_PT / 2;
	}
	if (fit->position.n > 0)
		at.x = put(c, f, at, FACE_SANS_BOLD, fit->position);
	left = at.x;
	wide = put_scale(NULL, f, (pt){ 0, 0 }, l, scale, words);
	if (left + wide > area.x + area.w) {
		words = false;
		wide = put_scale(NULL, f, (pt){ 0, 0 }, l, scale, words);
	}
	at.x = area.x + area.w - wide + face_width_pt(f, FACE_SANS, NOTE_PT, STR(" "));
	if (left + wide <= area.x + area.w)
		put_scale(c, f, at, l, scale, words);
	canvas_box_end(c);
}

size_t fig_scales(void)
{
	return SCALES;
}

double fig_scale_factor(size_t i)
{
	return scales[i].factor;
}

void fig_scale_strip(struct canvas *c, const struct faces *f, rect area,
    const struct fig_fit *fit, size_t i)
{
	put_strip(c, f, area, fit, &scales[i]);
}

/* Labels broken alike above, below and at the sides look best; when that fits nowhere,
 * each may break its own way. */
static const struct scale *fit_labels(struct layout *l, struct section *s,
    const struct fig_fit *fit, rect area)
{
	const struct scale *found = fit_scale(l, s, fit, area);

	if (found)
		return found;
	l->mixed = true;
	return fit_scale(l, s, fit, area);
}

bool fig_fit_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_fit *fit)
{
	struct section s;
	struct layout l = { .s = &s, .faces = f, .zoom = canvas_zoom(c) };
	rect inner = { area.x + 1, area.y + 1, area.w - 2, area.h - STRIP_PT - 3 };
	struct fig_tries *t = fit->tries;
	const struct scale *scale;

	if (t && (t->wide != inner.w || t->zoom != l.zoom))
		*t = (struct fig_tries){ .wide = inner.w, .zoom = l.zoom };
	s.sheds = t && t->sheds;
	scale = fit_labels(&l, &s, fit, inner);
	if (t)
		t->sheds = s.sheds;
	if (scale == NULL)
		return false;
	layout_emit(&l, c, inner);
	put_strip(c, f, area, fit, scale);
	return true;
}
