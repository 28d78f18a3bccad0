#include "sheets/template.h"

#include "draw/geom.h"
#include "sheets/pattern_sheet.h"
#include "sheets/sheet.h"
#include "sheets/template_tile.h"

/* A margin that a printer can ink. */
#define MARGIN_PT 34.0
#define BAR_MM 100.0
#define BAR_IN 4.0
#define PT_MM (72 / 25.4)

/* Types, and what stands round the window: lines above, two bars and lines below, an
 * upright bar at the right. Large print has all words in 18 pt and gives the longest a
 * line of their own. The pattern is as large as ever: one that needs several sheets may
 * then need more, but one that is whole on a sheet stays whole, with smaller words. */
struct look {
	struct type head, line, bold, mark, right, number;
	double head_pt, pitch_pt, foot_pt, bar_pt, side_pt, mark_width_pt, page_width_pt,
	    note_width_pt;
	bool large;
};

#define TYPE(size, how, side) { .size_pt = (size), .style = (how), .align = ALIGN_##side }

static const struct look looks[] = {
	{ TYPE(14, SPAN_BOLD, LEFT), TYPE(11, 0, LEFT), TYPE(11, SPAN_BOLD, LEFT),
	  TYPE(13, SPAN_BOLD | SPAN_CODE, RIGHT), TYPE(11, 0, RIGHT), TYPE(10, 0, LEFT),
	  .head_pt = 82, .pitch_pt = 14, .foot_pt = 66, .bar_pt = 22, .side_pt = 22,
	  .mark_width_pt = 130, .page_width_pt = 110, .note_width_pt = 235 },
	{ TYPE(18, SPAN_BOLD, LEFT), TYPE(18, 0, LEFT), TYPE(18, SPAN_BOLD, LEFT),
	  TYPE(18, SPAN_BOLD | SPAN_CODE, RIGHT), TYPE(18, 0, RIGHT), TYPE(18, 0, LEFT),
	  .head_pt = 176, .pitch_pt = 22, .foot_pt = 94, .bar_pt = 26, .side_pt = 42,
	  .mark_width_pt = 130, .page_width_pt = 150, .note_width_pt = 380, .large = true },
};

/* One page. */
struct leaf {
	const struct assignment *x;
	const struct look *look;
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

static rect window_of(const struct template_doc *t, const struct look *k)
{
	return (rect){ MARGIN_PT, MARGIN_PT + k->head_pt,
		t->width_pt - 2 * MARGIN_PT - k->side_pt,
		t->height_pt - 2 * MARGIN_PT - k->head_pt - k->foot_pt };
}

static unsigned sheets_of(const struct tiling *g)
{
	return g->columns * g->rows;
}

static void lay_tiles(const struct template_doc *t, struct leaf *leaf, const struct flat *f)
{
	const struct look *large = &looks[1];
	rect w = window_of(t, &looks[0]);

	leaf->look = &looks[0];
	leaf->tiling = tiling_new(f, w.w, w.h);
	if (t->spec.edition.large) {
		rect less = window_of(t, large);
		struct tiling g = tiling_new(f, less.w, less.h);

		if (sheets_of(&g) == 1 || sheets_of(&leaf->tiling) > 1) {
			leaf->look = large;
			leaf->tiling = g;
		}
	}
	leaf->tiling.number_pt = leaf->look->number.size_pt;
}

static void add_flat(struct template_doc *t, struct leaf leaf, const struct flat *f)
{
	lay_tiles(t, &leaf, f);
	if (leaf.tiling.columns > TILE_COLUMNS || leaf.tiling.rows > TILE_COLUMNS ||
	    (f->plain && sheets_of(&leaf.tiling) > 1))
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

	if (sheets_of(g) == 1)
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

/* As many lines as the text takes, at most `most`; returns them. */
static unsigned put_lines(const struct template_doc *t, const struct look *k,
    struct canvas *c, pt at, double width_pt, str text, unsigned most)
{
	const struct type *type = &k->line;
	struct type one = *type;
	const struct lines *l;
	struct pen pen = { .canvas = c };
	unsigned n;

	if (!k->large) {
		put(t, c, type, at, width_pt, text);
		return 1;
	}
	one.lead_pt = k->pitch_pt;
	l = para_break_plain(&t->setter, text, &one, width_pt);
	n = l->n < most ? (unsigned)l->n : most;
	canvas_tag_begin(c, TAG_P, STR(""));
	para_draw_part(l, &pen, (pt){ at.x, at.y - l->rise_pt }, 0, n);
	canvas_tag_end(c);
	return n;
}

/* The rules of printing: one line, or in large print one each. */
static void draw_rules(const struct template_doc *t, const struct look *k,
    struct canvas *c, pt at, double wide)
{
	static const str rules[] = { STR("Print at 100 %, do not fit to page."),
		STR("Lay the ringed crosses of neighbors on each other.") };

	if (!k->large) {
		put(t, c, &k->bold, at, wide, str_format(t->arena, "%.*s %.*s",
		    STR_ARG(rules[0]), STR_ARG(rules[1])));
		return;
	}
	for (int i = 0; i < 2; i++)
		put(t, c, &k->bold, (pt){ at.x, at.y + i * k->pitch_pt }, wide, rules[i]);
}

static void draw_head(const struct template_doc *t, struct canvas *c,
    const struct leaf *l, unsigned page)
{
	const struct look *k = l->look;
	double x = MARGIN_PT, right = t->width_pt - MARGIN_PT, y = MARGIN_PT + k->pitch_pt - 2;
	double wide = right - x;

	canvas_tag_begin(c, TAG_H1, STR(""));
	plain_draw(&t->setter, c, plain_cut(&t->setter, str_format(t->arena, "%.*s%s",
	    STR_ARG(assignment_name(t->arena, l->x)), t->spec.draft ? ", DRAFT" : ""),
	    &k->head, wide - k->mark_width_pt), &k->head, (pt){ x, y });
	canvas_tag_end(c);
	put(t, c, &k->mark, (pt){ right, y }, k->mark_width_pt, l->mark);
	y += k->pitch_pt + 2;
	put(t, c, &k->line, (pt){ x, y }, wide - k->page_width_pt, l->piece);
	canvas_fleeting_begin(c);
	put(t, c, &k->right, (pt){ right, y }, k->page_width_pt,
	    str_format(t->arena, "page %u of %u", page, template_pages(t)));
	canvas_fleeting_end(c);
	y += k->pitch_pt;
	put(t, c, &k->line, (pt){ x, y }, wide, sheet_words(t, l));
	y += k->pitch_pt;
	y += k->pitch_pt * put_lines(t, k, c, (pt){ x, y }, wide,
	    str_format(t->arena, "Taken: %.*s", STR_ARG(l->basis)), 2);
	draw_rules(t, k, c, (pt){ x, y }, wide);
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

/* Beside the bars, and under them in large print: that both are to be measured. */
static void draw_bar_words(const struct template_doc *t, const struct look *k,
    struct canvas *c, pt at, double wide)
{
	double along = at.x + 300;

	put(t, c, &k->line, (pt){ along, at.y }, wide - 300, STR("100 mm"));
	at.y += k->bar_pt;
	put(t, c, &k->line, (pt){ along, at.y }, wide - 300,
	    k->large ? STR("4 in: measure both;") : STR("4 in: measure both; cut mid-line"));
	at.y += k->pitch_pt;
	if (k->large)
		put(t, c, &k->line, (pt){ along, at.y }, wide - 300, STR("cut mid-line"));
}

static void draw_foot(const struct template_doc *t, const struct look *k, struct canvas *c)
{
	double x = MARGIN_PT, y = t->height_pt - MARGIN_PT - k->foot_pt + 18;
	double right = t->width_pt - MARGIN_PT, low = t->height_pt - MARGIN_PT - 4;
	double top = MARGIN_PT + k->head_pt;

	draw_bar(c, (pt){ x, y }, (pt){ 1, 0 }, BAR_MM * PT_MM, 10);
	draw_bar(c, (pt){ x, y + k->bar_pt }, (pt){ 1, 0 }, BAR_IN * 72, 8);
	draw_bar_words(t, k, c, (pt){ x, y }, right - x);
	draw_bar(c, (pt){ right, top }, (pt){ 0, 1 }, BAR_IN * 72, 8);
	put(t, c, &k->right, (pt){ right, top + BAR_IN * 72 + k->pitch_pt }, k->side_pt,
	    STR("4 in"));
	put(t, c, &k->line, (pt){ x, low }, right - x - k->note_width_pt,
	    t->spec.model->title);
	put(t, c, &k->right, (pt){ right, low }, k->note_width_pt,
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
	rect w = window_of(t, l->look);

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
	draw_foot(t, l->look, c);
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
