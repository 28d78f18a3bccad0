#include "sheets/template.h"

#include "draw/geom.h"
#include "sheets/pattern_sheet.h"
#include "sheets/sheet.h"
#include "sheets/template_tile.h"

/* Margins that a printer can ink, and what stands round the window: five lines above,
 * two bars and a line below, an upright bar at the right. */
#define MARGIN_PT 34.0
#define HEAD_PT 82.0
#define FOOT_PT 66.0
#define SIDE_PT 22.0
#define NOT_FOR_PT 235.0
#define BAR_MM 100.0
#define BAR_IN 4.0
#define PT_MM (72 / 25.4)

static const struct type type_head = { .size_pt = 14, .style = SPAN_BOLD };
static const struct type type_line = { .size_pt = 11 };
static const struct type type_bold = { .size_pt = 11, .style = SPAN_BOLD };
static const struct type type_mark = { .size_pt = 13, .style = SPAN_BOLD | SPAN_CODE,
	.align = ALIGN_RIGHT };
static const struct type type_right = { .size_pt = 11, .align = ALIGN_RIGHT };

/* One page. */
struct leaf {
	const struct assignment *x;
	str mark, piece, basis;
	struct tiling tiling;
	unsigned column, row;
};

struct template_doc {
	struct arena *arena;
	struct template_spec spec;
	struct setter setter;
	double width_pt, height_pt;
	struct leaf *leaf;
	size_t nleaves, leaves_cap;
};

static rect window_of(const struct template_doc *t)
{
	return (rect){ MARGIN_PT, MARGIN_PT + HEAD_PT,
		t->width_pt - 2 * MARGIN_PT - SIDE_PT,
		t->height_pt - 2 * MARGIN_PT - HEAD_PT - FOOT_PT };
}

static void add_flat(struct template_doc *t, struct leaf leaf, const struct flat *f)
{
	rect w = window_of(t);

	leaf.tiling = tiling_new(f, w.w, w.h);
	if (leaf.tiling.columns > TILE_COLUMNS || leaf.tiling.rows > TILE_COLUMNS ||
	    (f->plain && leaf.tiling.columns * leaf.tiling.rows > 1))
		return;
	for (unsigned row = 0; row < leaf.tiling.rows; row++) {
		for (unsigned column = 0; column < leaf.tiling.columns; column++) {
			leaf.row = row;
			leaf.column = column;
			if (!tiling_shows(&leaf.tiling, column, row))
				continue;
			*ARENA_PUSH(t->arena, t->leaf, t->nleaves, t->leaves_cap) = leaf;
		}
	}
}

static void add_assignment(struct template_doc *t, size_t i)
{
	struct leaf leaf = { .x = &t->spec.model->assignments[t->spec.assignments[i]] };

	if (t->spec.marks)
		leaf.mark = t->spec.marks[i];
	for (size_t k = 0; k < leaf.x->ndrawings; k++) {
		const struct drawing *d = &leaf.x->drawings[k];
		const struct pattern *p;

		if (d->kind != DRAWING_PATTERN)
			continue;
		p = pattern_of(t->arena, d->pattern);
		leaf.basis = p->basis;
		for (size_t f = 0; f < p->nflats; f++) {
			leaf.piece = str_format(t->arena, "%.*s; %.*s, cut %u",
			    STR_ARG(pattern_head(t->arena, NULL, d->pattern)),
			    STR_ARG(p->flat[f].name), p->flat[f].count);
			add_flat(t, leaf, &p->flat[f]);
		}
	}
}

struct template_doc *template_new(struct arena *a, const struct template_spec *spec)
{
	struct template_doc *t = arena_alloc(a, sizeof *t);

	t->arena = a;
	t->spec = *spec;
	t->setter = setter_new(a, spec->faces);
	t->width_pt = spec->edition.a4 ? MM_PT(210) : 612;
	t->height_pt = spec->edition.a4 ? MM_PT(297) : 792;
	for (size_t i = 0; i < spec->n; i++)
		add_assignment(t, i);
	return t;
}

unsigned template_pages(const struct template_doc *t)
{
	return (unsigned)t->nleaves;
}

/* ---- one page ---- */

/* "B2": rows are lettered, columns numbered; after Z comes AA. */
static str place_name(struct arena *a, unsigned column, unsigned row)
{
	char letter = (char)('A' + row % 26);

	if (row >= 26)
		return str_format(a, "A%c%u", letter, column + 1);
	return str_format(a, "%c%u", letter, column + 1);
}

static str sheet_words(const struct template_doc *t, const struct leaf *l)
{
	const struct tiling *g = &l->tiling;
	struct buf b = { .arena = t->arena };

	if (g->columns * g->rows == 1)
		return STR("Whole on this sheet");
	buf_addf(&b, "Sheet %.*s of A1 to %.*s",
	    STR_ARG(place_name(t->arena, l->column, l->row)),
	    STR_ARG(place_name(t->arena, g->columns - 1, g->rows - 1)));
	if (l->column + 1 < g->columns)
		buf_addf(&b, ", right of it %.*s",
		    STR_ARG(place_name(t->arena, l->column + 1, l->row)));
	if (l->row + 1 < g->rows)
		buf_addf(&b, ", below it %.*s",
		    STR_ARG(place_name(t->arena, l->column, l->row + 1)));
	return buf_str(&b);
}

static void put(const struct template_doc *t, struct canvas *c, const struct type *type,
    pt at, double width_pt, str text)
{
	canvas_tag_begin(c, TAG_P, STR(""));
	plain_draw(&t->setter, c, plain_cut(&t->setter, text, type, width_pt), type, at);
	canvas_tag_end(c);
}

static void draw_head(const struct template_doc *t, struct canvas *c,
    const struct leaf *l, unsigned page)
{
	double x = MARGIN_PT, right = t->width_pt - MARGIN_PT, y = MARGIN_PT;
	double wide = right - x;

	canvas_tag_begin(c, TAG_H1, STR(""));
	plain_draw(&t->setter, c, plain_cut(&t->setter, str_format(t->arena, "%.*s%s",
	    STR_ARG(assignment_name(t->arena, l->x)), t->spec.draft ? ", DRAFT" : ""),
	    &type_head, wide - 130), &type_head, (pt){ x, y + 12 });
	canvas_tag_end(c);
	put(t, c, &type_mark, (pt){ right, y + 12 }, 130, l->mark);
	put(t, c, &type_line, (pt){ x, y + 28 }, wide - 110, l->piece);
	canvas_fleeting_begin(c);
	put(t, c, &type_right, (pt){ right, y + 28 }, 110,
	    str_format(t->arena, "page %u of %u", page, template_pages(t)));
	canvas_fleeting_end(c);
	put(t, c, &type_line, (pt){ x, y + 42 }, wide, sheet_words(t, l));
	put(t, c, &type_line, (pt){ x, y + 56 }, wide,
	    str_format(t->arena, "Taken: %.*s", STR_ARG(l->basis)));
	put(t, c, &type_bold, (pt){ x, y + 70 }, wide,
	    STR("Print at 100 %, do not fit to page. Lay the ringed crosses of neighbors "
	    "on each other."));
}

/* A bar with a tick at each part, from `at` along unit vector u. */
static void draw_bar(struct canvas *c, pt at, pt u, double length_pt, int parts)
{
	pt side = { -u.y, u.x };

	canvas_line(c, at, pt_add(at, pt_mul(u, length_pt)), 1);
	for (int i = 0; i <= parts; i++) {
		pt p = pt_add(at, pt_mul(u, length_pt * i / parts));
		double tick = i == 0 || i == parts ? 9 : 5;

		canvas_line(c, p, pt_sub(p, pt_mul(side, tick)), 1);
	}
}

static void draw_foot(const struct template_doc *t, struct canvas *c)
{
	double x = MARGIN_PT, y = t->height_pt - MARGIN_PT - FOOT_PT;
	double right = t->width_pt - MARGIN_PT, along = x + 300;

	draw_bar(c, (pt){ x, y + 18 }, (pt){ 1, 0 }, BAR_MM * PT_MM, 10);
	put(t, c, &type_line, (pt){ along, y + 18 }, right - along, STR("100 mm"));
	draw_bar(c, (pt){ x, y + 40 }, (pt){ 1, 0 }, BAR_IN * 72, 8);
	put(t, c, &type_line, (pt){ along, y + 40 }, right - along,
	    STR("4 in: measure both; cut mid-line"));
	draw_bar(c, (pt){ right, MARGIN_PT + HEAD_PT }, (pt){ 0, 1 }, BAR_IN * 72, 8);
	put(t, c, &type_right, (pt){ right, MARGIN_PT + HEAD_PT + BAR_IN * 72 + 14 },
	    SIDE_PT, STR("4 in"));
	put(t, c, &type_line, (pt){ x, y + 62 }, right - x - NOT_FOR_PT,
	    t->spec.model->title);
	put(t, c, &type_right, (pt){ right, y + 62 }, NOT_FOR_PT,
	    STR("an answer: for the bench, not for packets"));
}

/* A place on the first page of each assignment, for the outline of the document. */
static void mark_first(const struct template_doc *t, struct canvas *c, size_t i)
{
	const struct assignment *x = t->leaf[i].x;

	if (i > 0 && t->leaf[i - 1].x == x)
		return;
	canvas_dest(c, x->id, (pt){ MARGIN_PT, MARGIN_PT });
	canvas_outline(c, 0, assignment_name(t->arena, x), x->id);
}

static void draw_leaf(const struct template_doc *t, struct canvas *c, size_t i)
{
	const struct leaf *l = &t->leaf[i];
	rect w = window_of(t);

	canvas_page_begin(c, t->width_pt, t->height_pt);
	mark_first(t, c, i);
	draw_head(t, c, l, (unsigned)i + 1);
	canvas_tag_begin(c, TAG_FIGURE, str_format(t->arena,
	    "Full-size pattern for the bench: %.*s, %.*s", STR_ARG(l->piece),
	    STR_ARG(sheet_words(t, l))));
	canvas_box_begin(c, w, STR("template"));
	tiling_draw(&l->tiling, t->arena, c, (pt){ w.x, w.y }, l->column, l->row);
	canvas_box_end(c);
	canvas_tag_end(c);
	draw_foot(t, c);
	canvas_page_end(c);
}

void template_emit(const struct template_doc *t, struct canvas *c)
{
	canvas_tag_begin(c, TAG_DOCUMENT, STR(""));
	canvas_label(c, LABEL_DECIMAL, STR(""), 1);
	for (size_t i = 0; i < t->nleaves; i++)
		draw_leaf(t, c, i);
	canvas_tag_end(c);
}
