/* The words beside the sketch of a position. */
#include "draw/fig_position_side.h"

#include "draw/dim.h"

#include <math.h>

#define LABEL_PT 14.0

static void ink_label(struct canvas *c, const struct faces *f, rect r, enum face_id face,
    double size_pt, str text)
{
	canvas_box_begin(c, r, STR("label"));
	canvas_text(c, (pt){ r.x, r.y + face_ascent_pt(f, face, size_pt) }, face, size_pt, text);
	canvas_box_end(c);
}

#define ISO_NAME STR("ISO 6947: ")
#define SMALL_PT DIM_TYPE_PT

/* What stands beside the sketch: label, plain words, letters of ISO 6947. */
struct side_text {
	struct dim_label plain;
	str iso;
	double label_h, iso_h, name_w, h;
	bool iso_below;          /* the letters under their name, not beside it */
};

/* False: wider than that, or higher. */
static bool set_texts(struct side_text *t, const struct faces *f, rect r,
    const struct fig_position *p, enum dim_lines lines)
{
	double iso_w;

	t->iso = fig_position_iso(p);
	t->label_h = face_ascent_pt(f, FACE_SANS_BOLD, LABEL_PT) +
	    face_descent_pt(f, FACE_SANS_BOLD, LABEL_PT);
	t->iso_h = face_ascent_pt(f, FACE_SANS_BOLD, SMALL_PT) +
	    face_descent_pt(f, FACE_SANS_BOLD, SMALL_PT);
	t->name_w = face_width_pt(f, FACE_SANS, SMALL_PT, ISO_NAME);
	iso_w = face_width_pt(f, FACE_SANS_BOLD, SMALL_PT, t->iso);
	t->iso_below = t->name_w + iso_w > r.w;
	if (!dim_label_set(&t->plain, f, SMALL_PT, fig_position_plain(p), lines))
		return false;
	t->h = t->label_h + 2 + t->plain.h +
	    (t->iso.n ? 3 + t->iso_h * (t->iso_below ? 2 : 1) : 0);
	return face_width_pt(f, FACE_SANS_BOLD, LABEL_PT, p->label) <= r.w &&
	    t->plain.w <= r.w && (!t->iso.n || fmax(t->name_w, iso_w) <= r.w) &&
	    t->h <= r.h;
}

bool position_texts(struct canvas *c, const struct faces *f, rect r,
    const struct fig_position *p)
{
	struct side_text t;
	double y, x;

	if (!set_texts(&t, f, r, p, DIM_MEDIUM) && !set_texts(&t, f, r, p, DIM_NARROW))
		return false;
	y = r.y + (r.h - t.h) / 2;
	ink_label(c, f, (rect){ r.x, y, r.w, t.label_h }, FACE_SANS_BOLD, LABEL_PT, p->label);
	y += t.label_h + 2;
	dim_label_draw(c, f, &t.plain, (rect){ r.x, y, t.plain.w, t.plain.h }, DIM_LEFT);
	y += t.plain.h + 3;
	if (!t.iso.n)
		return true;
	ink_label(c, f, (rect){ r.x, y, t.name_w, t.iso_h }, FACE_SANS, SMALL_PT, ISO_NAME);
	x = t.iso_below ? r.x : r.x + t.name_w;
	y += t.iso_below ? t.iso_h : 0;
	ink_label(c, f, (rect){ x, y, r.x + r.w - x, t.iso_h }, FACE_SANS_BOLD, SMALL_PT, t.iso);
	return true;
}
