#include "page/block.h"

#include "base/buf.h"
#include "page/part.h"

struct text_block {
	struct block b;
	const struct lines *lines;
	enum tag tag;
};

struct item_block {
	struct block b;
	const struct lines *lines;
	enum item_mark mark;
	str number;              /* with its full stop */
	struct type type;
	const struct setter *setter;
	double hang_pt;
	const struct side_box *boxes;
	const struct lines **captions;
	size_t nboxes;
};

/* Between a caption and its box, and between boxes. */
static const double box_gap_pt = 6;

/* An item taller than this may be cut although it has boxes, if nothing else will do. */
static const double item_cut_pt = 240;

/* ---- shared ---- */

void *block_make(const struct setter *s, size_t size, draw_part *draw, double width_pt,
    double height_pt)
{
	struct block *b = arena_alloc(s->arena, size);

	b->draw = draw;
	b->width_pt = width_pt;
	b->height_pt = height_pt;
	b->nstrips = 1;
	return b;
}

void block_set_lines(const struct setter *s, struct block *b, const struct lines *l,
    bool whole)
{
	struct strip *v = arena_array(s->arena, l->n, sizeof *v);

	for (size_t i = 0; i < l->n; i++) {
		bool near_end = i == 0 || i + 2 == l->n;

		v[i].height_pt = (float)l->lead_pt;
		v[i].hold = whole || near_end ? HOLD_STRONG : HOLD_FREE;
	}
	b->strips = v;
	b->nstrips = (uint32_t)l->n;
	b->height_pt = para_height_pt(l);
}

double block_strip_pt(const struct block *b, size_t i)
{
	return b->strips ? (double)b->strips[i].height_pt : b->height_pt;
}

enum hold block_strip_hold(const struct block *b, size_t i)
{
	if (i + 1 == b->nstrips)
		return b->keep_next ? HOLD_STRONG : HOLD_FREE;
	return (enum hold)b->strips[i].hold;
}

void list_close(const struct pen *pen, bool *list_open)
{
	if (*list_open)
		canvas_tag_end(pen->canvas);
	*list_open = false;
}

void block_draw_part(const struct block *b, const struct pen *pen, pt at,
    struct part part, bool *list_open)
{
	if (!b->list_item)
		list_close(pen, list_open);
	if (b->list_item && !*list_open) {
		canvas_tag_begin(pen->canvas, TAG_LIST, STR(""));
		*list_open = true;
	}
	if (b->fleeting)
		canvas_fleeting_begin(pen->canvas);
	b->draw(b, pen, at, part);
	if (b->fleeting)
		canvas_fleeting_end(pen->canvas);
}

void block_draw(const struct block *b, const struct pen *pen, pt at)
{
	bool list_open = false;

	if (b->nstrips == 0)
		return;
	block_draw_part(b, pen, at, (struct part){ 0, b->nstrips, b->height_pt },
	    &list_open);
	list_close(pen, &list_open);
}

/* ---- text ---- */

static void draw_text(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	const struct text_block *t = (const struct text_block *)b;

	struct pen in = para_tag_begin(t->lines, pen, t->tag, part_is_first(part));

	para_draw_part(t->lines, &in, at, part.from, part.to);
	if (part_is_last(b, part))
		canvas_tag_end(pen->canvas);
}

struct block *block_text(const struct setter *s, const struct span *spans, size_t n,
    const struct type *type, enum tag tag, double width_pt)
{
	struct text_block *t = block_make(s, sizeof *t, draw_text, width_pt, 0);
	bool heading = tag == TAG_H1 || tag == TAG_H2 || tag == TAG_H3;

	t->tag = tag;
	t->lines = para_break(s, spans, n, type, width_pt);
	block_set_lines(s, &t->b, t->lines, heading);
	t->b.keep_next = heading;
	return &t->b;
}

struct block *block_plain(const struct setter *s, str text, const struct type *type,
    enum tag tag, double width_pt)
{
	struct span span = { .text = text };

	return block_text(s, &span, 1, type, tag, width_pt);
}

/* ---- items ---- */

/* The disc stands at half the height of small letters, clear of the text. */
static void draw_bullet(const struct item_block *t, const struct pen *pen, pt at)
{
	double radius_pt = t->type.size_pt * 0.14;
	pt center = { at.x + t->hang_pt - t->type.size_pt * 0.75,
	    at.y + t->lines->rise_pt - t->type.size_pt * 0.26 };

	canvas_circle(pen->canvas, center, radius_pt, &(struct ink){ .fill = true });
}

static void draw_square(const struct pen *pen, pt at, double w_pt, double h_pt)
{
	rect r = { at.x + RULE_PT / 2, at.y + RULE_PT / 2, w_pt - RULE_PT,
		h_pt - RULE_PT };

	canvas_tag_begin(pen->canvas, TAG_ARTIFACT, STR(""));
	canvas_rect(pen->canvas, r, &(struct ink){ .stroke_pt = RULE_PT });
	canvas_tag_end(pen->canvas);
}

static void draw_mark(const struct item_block *t, const struct pen *pen, pt top, pt text)
{
	pt baseline = { text.x, text.y + t->lines->rise_pt };

	switch (t->mark) {
	case MARK_BULLET:
		draw_bullet(t, pen, text);
		return;
	case MARK_NUMBER:
		plain_draw(t->setter, pen->canvas, t->number, &t->type, baseline);
		return;
	case MARK_CHECK:
		top.y += t->b.strips ? 0 : (t->b.height_pt - GLOVE_PT) / 2;
		draw_square(pen, top, GLOVE_PT, GLOVE_PT);
		return;
	case MARK_NONE:
		return;
	}
}

/* From right to left, so that the boxes of all items end at the same edge; in the middle
 * of h_pt. */
static void draw_side_boxes(const struct item_block *t, const struct pen *pen, pt at,
    double h_pt)
{
	double x = at.x + t->b.width_pt;

	for (size_t i = t->nboxes; i > 0; i--) {
		const struct side_box *box = &t->boxes[i - 1];
		const struct lines *caption = t->captions[i - 1];

		x -= box->width_pt;
		draw_square(pen, (pt){ x, at.y + (h_pt - box->height_pt) / 2 },
		    box->width_pt, box->height_pt);
		x -= box_gap_pt + caption->width_pt;
		para_draw(caption, pen,
		    (pt){ x, at.y + (h_pt - para_height_pt(caption)) / 2 });
		x -= box_gap_pt;
	}
}

/* An item without strips is whole: its text stands in the middle of its height, beside
 * the boxes. One that is cut has them beside its first part. */
static void draw_item(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	const struct item_block *t = (const struct item_block *)b;
	enum tag tag = b->list_item ? TAG_ITEM : TAG_P;
	struct pen in = *pen;
	pt text = at;

	if (!b->strips)
		text.y += (b->height_pt - para_height_pt(t->lines)) / 2;
	if (t->nboxes && part_is_first(part)) /* Captions are in the document's language. */
		canvas_tag_begin(pen->canvas, tag, STR(""));
	if (!t->nboxes)
		in = para_tag_begin(t->lines, pen, tag, part_is_first(part));
	if (part_is_first(part) && b->height_pt > 0)
		draw_mark(t, pen, at, text);
	text.x += t->hang_pt;
	if (b->strips)
		para_draw_part(t->lines, &in, text, part.from, part.to);
	else
		para_draw(t->lines, &in, text);
	if (part_is_first(part))
		draw_side_boxes(t, pen, at, part.height_pt);
	if (part_is_last(b, part))
		canvas_tag_end(pen->canvas);
}

/* Numbers below 100 share one hang, so that the texts of a list line up. */
static double mark_hang_pt(const struct setter *s, const struct item_block *t)
{
	double size_pt = t->type.size_pt, number_pt;

	switch (t->mark) {
	case MARK_BULLET:
		return 1.5 * size_pt;
	case MARK_NUMBER:
		number_pt = plain_width_pt(s, t->number, &t->type) + 0.5 * size_pt;
		return number_pt > 2 * size_pt ? number_pt : 2 * size_pt;
	case MARK_CHECK:
		return GLOVE_PT + 0.6 * size_pt;
	case MARK_NONE:
		break;
	}
	return 0;
}

/* Copies the boxes and lays out their captions; returns the width they take. */
static double set_boxes(const struct setter *s, struct item_block *t,
    const struct item_spec *spec)
{
	struct side_box *boxes = arena_array(s->arena, spec->nboxes, sizeof *boxes);
	struct type type = t->type;
	double total_pt = 0;

	type.style &= ~(unsigned)SPAN_OTHER;
	t->captions = arena_array(s->arena, spec->nboxes, sizeof *t->captions);
	for (size_t i = 0; i < spec->nboxes; i++) {
		double most_pt = t->b.width_pt * 0.3;
		double caption_pt = plain_width_pt(s, spec->boxes[i].caption, &type);

		caption_pt = caption_pt < most_pt ? caption_pt : most_pt;
		boxes[i] = spec->boxes[i];
		t->captions[i] =
		    para_break_plain(s, boxes[i].caption, &type, caption_pt);
		total_pt += boxes[i].width_pt + caption_pt + 2 * box_gap_pt;
	}
	t->boxes = boxes;
	t->nboxes = spec->nboxes;
	return total_pt;
}

static double item_height_pt(const struct item_block *t)
{
	double h_pt = para_height_pt(t->lines);

	if (t->mark == MARK_CHECK && h_pt < GLOVE_PT)
		h_pt = GLOVE_PT;
	for (size_t i = 0; i < t->nboxes; i++) {
		double caption_pt = para_height_pt(t->captions[i]);

		h_pt = t->boxes[i].height_pt > h_pt ? t->boxes[i].height_pt : h_pt;
		h_pt = caption_pt > h_pt ? caption_pt : h_pt;
	}
	return h_pt;
}

static double at_least(double x, double least)
{
	return x > least ? x : least;
}

struct block *block_item(const struct setter *s, const struct item_spec *spec,
    const struct span *spans, size_t n, const struct type *type, double width_pt)
{
	struct item_block *t = block_make(s, sizeof *t, draw_item, width_pt, 0);
	struct setter *setter = arena_alloc(s->arena, sizeof *setter);

	*setter = *s;
	t->setter = setter;
	t->mark = spec->mark;
	t->type = *type;
	t->type.align = ALIGN_LEFT;
	if (spec->mark == MARK_NUMBER)
		t->number = str_format(s->arena, "%u.", (unsigned)spec->number);
	t->hang_pt = spec->hang_pt > 0 ? spec->hang_pt : mark_hang_pt(s, t);
	double boxes_pt = set_boxes(s, t, spec);

	t->lines = para_break(s, spans, n, type,
	    at_least(width_pt - t->hang_pt - boxes_pt, 0));
	t->b.list_item = true;
	bool boxed = spec->nboxes > 0 || spec->mark == MARK_CHECK;

	if (boxed && item_height_pt(t) <= item_cut_pt)
		t->b.height_pt = item_height_pt(t);
	else
		block_set_lines(s, &t->b, t->lines, boxed);
	return &t->b;
}

struct block *block_check(const struct setter *s, str label, const struct type *type,
    double width_pt)
{
	struct span span = { .text = label };
	struct item_spec spec = { .mark = MARK_CHECK };
	struct block *b = block_item(s, &spec, &span, 1, type, width_pt);

	b->list_item = false;
	return b;
}

/* ---- prose ---- */

static struct block *prose_block(const struct setter *s, const struct para *p,
    const struct type *type, double width_pt)
{
	struct item_spec spec = { .mark = MARK_BULLET };
	double indent_pt = p->kind == PARA_SUBBULLET ? 2 * type->size_pt : 0;

	if (p->kind == PARA_TEXT)
		return block_text(s, p->spans, p->nspans, type, TAG_P, width_pt);
	if (p->kind == PARA_STEP)
		spec = (struct item_spec){ .mark = MARK_NUMBER, .number = p->number };
	struct block *b = block_item(s, &spec, p->spans, p->nspans, type,
	    at_least(width_pt - indent_pt, 0));

	b->indent_pt = indent_pt;
	return b;
}

struct block **block_prose(const struct setter *s, const struct prose *p,
    const struct type *type, double gap_pt, double width_pt)
{
	struct block **v = arena_array(s->arena, p->n, sizeof *v);

	for (size_t i = 0; i < p->n; i++) {
		v[i] = prose_block(s, &p->v[i], type, width_pt);
		v[i]->before_pt = v[i]->after_pt = gap_pt;
	}
	return v;
}
