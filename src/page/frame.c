#include "page/block.h"

#include "draw/list.h"
#include "page/part.h"

struct picture_block {
	struct block b;
	draw_picture *draw;
	void *user;
	str alt;
	struct arena *arena;
	struct list **drawn;     /* null until it is drawn for the first time */
};

struct frame_block {
	struct block b;
	struct stack stack;
	double pad_pt, stroke_pt;
};

struct placed_column {
	struct stack stack;
	double left_pt;
};

struct columns_block {
	struct block b;
	struct placed_column *v;
	size_t n;
};

/* ---- stacks ---- */

double stack_gap_pt(const struct stack *k, size_t i)
{
	if (i == 0)
		return 0;
	double above_pt = k->v[i - 1]->after_pt, below_pt = k->v[i]->before_pt;

	return above_pt > below_pt ? above_pt : below_pt;
}

double stack_height_pt(const struct stack *k)
{
	double h_pt = k->top_pt + k->bottom_pt;

	for (size_t i = 0; i < k->n; i++)
		h_pt += stack_gap_pt(k, i) + k->v[i]->height_pt;
	return h_pt;
}

double block_stack_height_pt(struct block *const *v, size_t n)
{
	return stack_height_pt(&(struct stack){ .v = v, .n = n });
}

static double strips_height_pt(const struct block *b, size_t from, size_t to)
{
	double h_pt = from > 0 ? b->repeat_pt : 0;

	if (from == 0 && to == b->nstrips)
		return b->height_pt;
	for (size_t i = from; i < to; i++)
		h_pt += block_strip_pt(b, i);
	return h_pt;
}

/* Clips `x` to [0, most] after taking `base` off. */
static size_t within(size_t x, size_t base, size_t most)
{
	if (x <= base)
		return 0;
	return x - base < most ? x - base : most;
}

void stack_draw(const struct stack *k, const struct pen *pen, pt at, size_t from,
    size_t to)
{
	bool list_open = false;
	size_t base = 0;

	at.y += from == 0 ? k->top_pt : 0;
	for (size_t i = 0; i < k->n && base < to; i++) {
		const struct block *b = k->v[i];
		size_t lo = within(from, base, b->nstrips);
		size_t hi = within(to, base, b->nstrips);

		base += b->nstrips;
		if (lo >= hi)
			continue;
		double h_pt = strips_height_pt(b, lo, hi);

		at.y += lo == 0 ? stack_gap_pt(k, i) : 0;
		block_draw_part(b, pen, (pt){ at.x + b->indent_pt, at.y },
		    (struct part){ lo, hi, h_pt }, &list_open);
		at.y += h_pt;
	}
	list_close(pen, &list_open);
}

/* ---- frame ---- */

/* Closed where the frame begins and ends, open where it goes on to another page. */
static void draw_border(const struct frame_block *f, struct canvas *c, rect r,
    struct part part)
{
	double in_pt = f->stroke_pt / 2, left = r.x + in_pt, right = r.x + r.w - in_pt;
	double top = r.y + in_pt, bottom = r.y + r.h - in_pt, end = r.y + r.h;

	if (f->stroke_pt <= 0)
		return;
	canvas_tag_begin(c, TAG_ARTIFACT, STR(""));
	if (part_is_first(part) && part_is_last(&f->b, part)) {
		canvas_rect(c, (rect){ left, top, right - left, bottom - top },
		    &(struct ink){ .stroke_pt = f->stroke_pt });
	} else {
		canvas_line(c, (pt){ left, r.y }, (pt){ left, end }, f->stroke_pt);
		canvas_line(c, (pt){ right, r.y }, (pt){ right, end }, f->stroke_pt);
		if (part_is_first(part))
			canvas_line(c, (pt){ left, top }, (pt){ right, top },
			    f->stroke_pt);
		if (part_is_last(&f->b, part))
			canvas_line(c, (pt){ left, bottom }, (pt){ right, bottom },
			    f->stroke_pt);
	}
	canvas_tag_end(c);
}

static void draw_frame(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	const struct frame_block *f = (const struct frame_block *)b;
	pt inner = { at.x + f->pad_pt + f->stroke_pt, at.y };
	rect border = { at.x, at.y, b->width_pt, part.height_pt };

	draw_border(f, pen->canvas, border, part);
	stack_draw(&f->stack, pen, inner, part.from, part.to);
}

static size_t stack_strips(const struct stack *k)
{
	size_t n = 0;

	for (size_t i = 0; i < k->n; i++)
		n += k->v[i]->nstrips;
	return n;
}

/* The strips of a frame are those of its blocks. A head that a block repeats on its later
 * parts is not foreseen here, so such a block is not cut. */
static void set_frame_strips(const struct setter *s, struct frame_block *f)
{
	const struct stack *k = &f->stack;
	size_t n = stack_strips(k), at = 0;
	struct strip *v = arena_array(s->arena, n, sizeof *v);

	for (size_t i = 0; i < k->n; i++) {
		const struct block *b = k->v[i];

		for (size_t j = 0; j < b->nstrips; j++, at++) {
			enum hold hold = block_strip_hold(b, j);
			double gap_pt = j == 0 ? stack_gap_pt(k, i) : 0;

			if (b->repeat_pt > 0 && j + 1 < b->nstrips)
				hold = HOLD_NEVER;
			gap_pt += at == 0 ? k->top_pt : 0;
			gap_pt += at + 1 == n ? k->bottom_pt : 0;
			v[at].hold = (uint8_t)hold;
			v[at].height_pt = (float)(gap_pt + block_strip_pt(b, j));
		}
	}
	f->b.strips = v;
	f->b.nstrips = (uint32_t)n;
}

double block_frame_inner_pt(double pad_pt, double stroke_pt, double width_pt)
{
	return width_pt - 2 * (pad_pt + stroke_pt);
}

static struct block **copy_blocks(const struct setter *s, struct block *const *v,
    size_t n)
{
	struct block **copy = arena_array(s->arena, n, sizeof *copy);

	for (size_t i = 0; i < n; i++)
		copy[i] = v[i];
	return copy;
}

struct block *block_frame(const struct setter *s, struct block *const *v, size_t n,
    double pad_pt, double stroke_pt, double width_pt)
{
	struct frame_block *f = block_make(s, sizeof *f, draw_frame, width_pt, 0);
	double edge_pt = pad_pt + stroke_pt;

	f->stack = (struct stack){ copy_blocks(s, v, n), n, edge_pt, edge_pt };
	f->pad_pt = pad_pt;
	f->stroke_pt = stroke_pt;
	f->b.height_pt = stack_height_pt(&f->stack);
	f->b.keep_whole = true;
	set_frame_strips(s, f);
	return &f->b;
}

/* ---- columns ---- */

static void draw_columns(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	const struct columns_block *t = (const struct columns_block *)b;

	(void)part;
	for (size_t i = 0; i < t->n; i++) {
		const struct stack *k = &t->v[i].stack;
		pt top = { at.x + t->v[i].left_pt, at.y };

		stack_draw(k, pen, top, 0, stack_strips(k));
	}
}

struct block *block_columns(const struct setter *s, const struct block_column *v,
    size_t n, double gap_pt)
{
	struct columns_block *t = block_make(s, sizeof *t, draw_columns, 0, 0);
	double left_pt = 0;

	t->v = arena_array(s->arena, n, sizeof *t->v);
	t->n = n;
	for (size_t i = 0; i < n; i++) {
		struct stack k = { .v = copy_blocks(s, v[i].v, v[i].n), .n = v[i].n };
		double h_pt = stack_height_pt(&k);

		t->v[i] = (struct placed_column){ k, left_pt };
		left_pt += v[i].width_pt + gap_pt;
		t->b.height_pt = h_pt > t->b.height_pt ? h_pt : t->b.height_pt;
	}
	t->b.width_pt = n ? left_pt - gap_pt : 0;
	return &t->b;
}

/* ---- picture, space, bar ---- */

/* A picture is worked out once, with its corner at the origin: digests and pages draw
 * it from the same recording. */
static const struct list *record_picture(const struct picture_block *t)
{
	struct canvas *c;

	if (*t->drawn)
		return *t->drawn;
	*t->drawn = list_new(t->arena);
	c = list_canvas(*t->drawn);
	canvas_page_begin(c, t->b.width_pt, t->b.height_pt);
	t->draw(t->user, c, (rect){ 0, 0, t->b.width_pt, t->b.height_pt });
	canvas_page_end(c);
	return *t->drawn;
}

static void draw_picture_block(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	const struct picture_block *t = (const struct picture_block *)b;
	rect area = { at.x, at.y, b->width_pt, b->height_pt };

	(void)part;
	canvas_tag_begin(pen->canvas, TAG_FIGURE, t->alt);
	if (b->other)
		canvas_tag_other(pen->canvas);
	canvas_box_begin(pen->canvas, area, STR("picture"));
	list_replay_content(record_picture(t), 0, pen->canvas, at.x, at.y);
	canvas_box_end(pen->canvas);
	canvas_tag_end(pen->canvas);
}

struct block *block_picture(const struct setter *s, draw_picture *draw, void *user,
    str alt, double height_pt, double width_pt)
{
	struct picture_block *t = block_make(s, sizeof *t, draw_picture_block, width_pt,
	    height_pt);

	t->draw = draw;
	t->user = user;
	t->alt = alt;
	t->arena = s->arena;
	t->drawn = arena_alloc(s->arena, sizeof *t->drawn);
	return &t->b;
}

static void draw_nothing(const struct block *b, const struct pen *pen, pt at,
    struct part part)
{
	(void)b, (void)pen, (void)at, (void)part;
}

struct block *block_space(const struct setter *s, double height_pt, bool fill)
{
	struct block *b = block_make(s, sizeof *b, draw_nothing, 0, height_pt);

	b->fill = fill;
	return b;
}
