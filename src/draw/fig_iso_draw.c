/* The isometric figure in ink: edges, dimensions, balloons, the list of letters. */
#include "draw/fig_iso.h"

#include "base/language.h"
#include "draw/fig_section.h"
#include "draw/geom.h"
#include "draw/iso_plan.h"

#include <math.h>

#define EDGE_PT 1.0              /* 0.35 mm */
#define CONTOUR_PT 1.6
#define LETTER_PT DIM_TYPE_PT
#define LIST_PT DIM_TYPE_PT
#define LIST_ROW_PT 16.0
#define LIST_FOOT_PT 3.5         /* of a row below its baseline */
#define LIST_GAP_PT 14.0
#define DOT_PT 1.7
#define SCALE_ROOM_PT 110.0      /* "to scale 1:100" */
#define PT_MM (72 / 25.4)
#define JOINED_PT 0.02           /* ends nearer than this are one corner */
#define SHORTEST_PT 0.15

/* ---- edges: strokes that meet are one path, so that corners close ---- */

struct strokes {
	const struct iso_plan *plan;
	struct seg *seg;
	bool *used;
	bool thick;
};

static bool joins(pt a, pt b)
{
	return fabs(a.x - b.x) < JOINED_PT && fabs(a.y - b.y) < JOINED_PT;
}

/* The other end of an unused stroke that begins or ends at `at`; false: there is none. */
static bool next_end(struct strokes *k, pt at, pt *to)
{
	const struct iso_scene *s = k->plan->scene;

	for (size_t i = 0; i < s->nlines; i++) {
		pt a = iso_point(k->plan, s->line[i].a), b = iso_point(k->plan, s->line[i].b);

		if (k->used[i] || s->line[i].thick != k->thick ||
		    (!joins(a, at) && !joins(b, at)))
			continue;
		k->used[i] = true;
		*to = joins(a, at) ? b : a;
		return true;
	}
	return false;
}

static void ink_from(struct canvas *c, struct strokes *k, size_t i)
{
	const struct iso_line *line = &k->plan->scene->line[i];
	pt a = iso_point(k->plan, line->a), at = iso_point(k->plan, line->b), to;
	size_t n = 0;

	k->used[i] = true;
	if (pt_length(pt_sub(at, a)) < SHORTEST_PT)
		return;
	k->seg[n++] = (struct seg){ SEG_MOVE, { a } };
	k->seg[n++] = (struct seg){ SEG_LINE, { at } };
	while (next_end(k, at, &to)) {
		at = to;
		k->seg[n++] = (struct seg){ SEG_LINE, { at } };
	}
	if (n > 3 && joins(a, at))
		k->seg[n - 1] = (struct seg){ .op = SEG_CLOSE };
	canvas_path(c, k->seg, n, &(struct ink){
	    .stroke_pt = k->thick ? CONTOUR_PT : EDGE_PT });
}

static void ink_edges(struct canvas *c, const struct iso_plan *p)
{
	const struct iso_scene *s = p->scene;
	struct strokes k = { .plan = p };

	k.seg = arena_array(s->f->arena, s->nlines + 2, sizeof *k.seg);
	k.used = arena_array(s->f->arena, s->nlines + 1, sizeof *k.used);
	for (int thick = 0; thick < 2; thick++) {
		k.thick = thick == 1;
		for (size_t i = 0; i < s->nlines; i++)
			if (!k.used[i] && s->line[i].thick == k.thick)
				ink_from(c, &k, i);
	}
}

/* ---- the rest ---- */

static void ink_dimensions(struct canvas *c, const struct iso_plan *p)
{
	for (size_t i = 0; i < p->nthin; i++)
		canvas_line(c, p->thin[i].a, p->thin[i].b, DIM_THIN_PT);
	for (size_t i = 0; i < p->narrows; i++)
		dim_arrow(c, p->arrow[i].tip, p->arrow[i].dir);
	for (size_t i = 0; i < p->nlabels; i++)
		dim_label_draw(c, p->faces, &p->label[i].text, p->label[i].r, DIM_CENTER);
}

static void put_letter(struct canvas *c, const struct faces *f, pt middle, size_t part)
{
	str letter = { &FIG_ISO_LETTERS[part], 1 };
	double w = face_width_pt(f, FACE_SANS_BOLD, LETTER_PT, letter);

	canvas_text(c, (pt){ middle.x - w / 2, middle.y +
	    face_cap_height_pt(f, FACE_SANS_BOLD, LETTER_PT) / 2 }, FACE_SANS_BOLD, LETTER_PT,
	    letter);
}

static void ink_balloons(struct canvas *c, const struct iso_plan *p)
{
	const struct ink ring = { .stroke_pt = EDGE_PT, .fill = true, .fill_gray = 1 };

	for (size_t i = 0; i < p->scene->f->nparts; i++) {
		const struct iso_balloon *b = &p->balloon[i];
		const double r = ISO_BALLOON_PT;

		if (!b->shown)
			continue;
		canvas_line(c, b->edge, b->tip, DIM_THIN_PT);
		canvas_circle(c, b->tip, DOT_PT, &(struct ink){ .fill = true });
		canvas_circle(c, b->at, r - EDGE_PT / 2, &ring);
		canvas_box_begin(c, (rect){ b->at.x - r, b->at.y - r, 2 * r, 2 * r },
		    STR("label"));
		put_letter(c, p->faces, b->at, i);
		canvas_box_end(c);
	}
}

/* ---- the list: letter, name, how many ---- */

static str entry_text(const struct fig_iso *f, size_t part, bool shown)
{
	size_t n = 0;
	struct buf b = { .arena = f->arena };

	for (size_t i = 0; i < f->nmembers; i++)
		n += f->member[i].part == part;
	buf_addf(&b, "  %.*s", STR_ARG(f->part[part].name));
	if (n > 1)
		buf_addf(&b, " (%zu)", n);
	if (!shown) {
		buf_addc(&b, ' ');
		buf_add(&b, word(f->language, "(not seen from here)"));
	}
	return buf_str(&b);
}

/* Row by row from area.y on; without a canvas only measures. Returns the height. */
static double put_list(struct canvas *c, const struct faces *f, rect area,
    const struct fig_iso *iso, const struct iso_scene *s)
{
	pt at = { area.x, area.y + LIST_ROW_PT - LIST_FOOT_PT };
	size_t rows = 1;

	for (size_t i = 0; i < iso->nparts; i++) {
		str letter = { &FIG_ISO_LETTERS[i], 1 };
		str text = entry_text(iso, i, s->anchors[i].n > 0);
		double lw = face_width_pt(f, FACE_SANS_BOLD, LIST_PT, letter);
		double w = lw + face_width_pt(f, FACE_SANS, LIST_PT, text);

		if (at.x > area.x && at.x + w > area.x + area.w) {
			at = (pt){ area.x, at.y + LIST_ROW_PT };
			rows++;
		}
		if (c != NULL) {
			canvas_box_begin(c, (rect){ at.x, at.y - LIST_ROW_PT + LIST_FOOT_PT, w,
			    LIST_ROW_PT }, STR("label"));
			canvas_text(c, at, FACE_SANS_BOLD, LIST_PT, letter);
			canvas_text(c, (pt){ at.x + lw, at.y }, FACE_SANS, LIST_PT, text);
			canvas_box_end(c);
		}
		at.x += w + LIST_GAP_PT;
	}
	return LIST_ROW_PT * (double)rows;
}

/* Whether every entry finds room in a row of its own. */
static bool list_fits(const struct faces *f, double width, const struct fig_iso *iso)
{
	for (size_t i = 0; i < iso->nparts; i++)
		if (face_width_pt(f, FACE_SANS, LIST_PT, entry_text(iso, i, false)) + 12 > width)
			return false;
	return true;
}

static bool try_labels(struct iso_plan *p)
{
	p->size_pt = DIM_TYPE_PT;
	for (int lines = 0; lines < DIM_MEDIUM; lines++) {
		p->lines = (enum dim_lines)lines;
		if (iso_plan_place(p))
			return true;
	}
	return false;
}

/* The largest scale that fits; fig_scales() when none does. */
static size_t find_scale(struct iso_plan *p, double zoom)
{
	for (size_t i = 0; i < fig_scales(); i++) {
		p->pt_mm = fig_scale_factor(i) * PT_MM / zoom;
		if (fig_scale_factor(i) <= 1 && try_labels(p))
			return i;
	}
	return fig_scales();
}

/* The note at the left of the scale, which must have room beside it. */
static str note_text(const struct faces *f, double width, const struct fig_iso *iso)
{
	str note = word(iso->language, "isometric; measure along the axes");

	if (face_width_pt(f, FACE_SANS_BOLD, LIST_PT, note) + SCALE_ROOM_PT > width)
		return word(iso->language, "isometric");
	return note;
}

bool fig_iso_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_iso *iso)
{
	struct fig_fit strip = { .position = note_text(f, area.w, iso),
		.language = iso->language };
	struct iso_plan *p;
	double list;
	size_t scale;

	if (iso->scene == NULL)
		return fig_refuse(c, f, area, iso->language, iso->fault);
	p = arena_alloc(iso->arena, sizeof *p);
	p->scene = iso->scene;
	p->faces = f;
	list = put_list(NULL, f, area, iso, p->scene);
	p->area = (rect){ area.x + 1, area.y + 1, area.w - 2,
		area.h - FIG_STRIP_PT - list - 5 };
	scale = list_fits(f, area.w, iso) && p->area.h > 60 ? find_scale(p, canvas_zoom(c))
	    : fig_scales();
	if (scale == fig_scales())
		return fig_refuse(c, f, area, iso->language, FIG_NO_ROOM);
	ink_edges(c, p);
	ink_dimensions(c, p);
	ink_balloons(c, p);
	put_list(c, f, (rect){ area.x, area.y + area.h - FIG_STRIP_PT - list, area.w, list },
	    iso, p->scene);
	fig_scale_strip(c, f, area, &strip, scale);
	return true;
}
