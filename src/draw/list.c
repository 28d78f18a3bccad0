#include "draw/list.h"

#include "base/buf.h"

#include <string.h>

enum op {
	OP_PAGE_BEGIN, OP_PAGE_END, OP_TEXT, OP_PATH, OP_BOX_BEGIN, OP_BOX_END,
	OP_TAG_BEGIN, OP_TAG_END, OP_TAG_OTHER, OP_FLEETING_BEGIN, OP_FLEETING_END, OP_DEST, OP_LINK,
	OP_OUTLINE, OP_LABEL, OP_IMAGE
};

struct path {
	struct ink ink;
	size_t n;
	struct seg segs[];
};

struct image {
	rect r;
	const struct pixels *picture;
};

struct item {
	enum op op;
	unsigned number;         /* face, tag, depth, label style */
	str text;                /* text, alt, name, title, prefix */
	union {
		rect r;          /* page size, box, link; text and dest: x, y, size */
		str dest;        /* of an outline */
		unsigned first;  /* of a label */
		const struct path *path;
		const struct image *image;
	} u;
};

/* Items come in blocks, so that growing copies nothing. Most recordings are small: each
 * drawing is one. */
enum { BLOCK_ITEMS = 32 };

struct block {
	struct block *next;
	struct item v[BLOCK_ITEMS];
};

/* Where a stretch of the recording starts. */
struct spot {
	const struct block *block;
	size_t index;            /* in the whole recording */
};

struct page {
	rect size;
	struct spot begin;       /* first item that belongs to the page */
};

struct list {
	struct canvas canvas;
	struct arena *arena;
	struct block *first, *last;
	size_t n;
	struct page *pages;
	size_t npages, pages_cap;
	struct spot page_begin;  /* where the next page's stretch starts */
};

static struct item *item_add(struct list *l, enum op op)
{
	struct item *item;

	if (l->n % BLOCK_ITEMS == 0) {
		struct block *b = arena_alloc(l->arena, sizeof *b);

		if (l->last)
			l->last->next = b;
		else
			l->first = b;
		l->last = b;
	}
	item = &l->last->v[l->n++ % BLOCK_ITEMS];
	item->op = op;
	return item;
}

static struct item *item_add_text(struct list *l, enum op op, unsigned number, str text)
{
	struct item *item = item_add(l, op);

	item->number = number;
	if (text.n > 0)
		item->text = str_copy(l->arena, text);
	return item;
}

static void list_page_begin(void *self, double width_pt, double height_pt)
{
	struct list *l = self;
	rect size = { 0, 0, width_pt, height_pt };
	struct page *page;

	item_add(l, OP_PAGE_BEGIN)->u.r = size;
	page = ARENA_PUSH(l->arena, l->pages, l->npages, l->pages_cap);
	page->size = size;
	page->begin = l->page_begin;
	if (!page->begin.block)
		page->begin.block = l->first;
}

static void list_page_end(void *self)
{
	struct list *l = self;

	item_add(l, OP_PAGE_END);
	/* A full block has no successor yet; the walk steps over its end. */
	l->page_begin = (struct spot){ l->last, l->n };
}

static void list_text(void *self, pt at, enum face_id face, double size_pt, str utf8)
{
	item_add_text(self, OP_TEXT, face, utf8)->u.r = (rect){ at.x, at.y, size_pt, 0 };
}

static void list_path(void *self, const struct seg *segs, size_t n, const struct ink *ink)
{
	struct list *l = self;
	struct path *path = arena_alloc(l->arena, sizeof *path + n * sizeof *segs);

	path->ink = *ink;
	path->n = n;
	memcpy(path->segs, segs, n * sizeof *segs);
	item_add(l, OP_PATH)->u.path = path;
}

static void list_image(void *self, rect r, const struct pixels *p)
{
	struct list *l = self;
	struct image *image = arena_alloc(l->arena, sizeof *image);

	*image = (struct image){ r, p };
	item_add(l, OP_IMAGE)->u.image = image;
}

static void list_box_begin(void *self, rect r, str name)
{
	item_add_text(self, OP_BOX_BEGIN, 0, name)->u.r = r;
}

static void list_box_end(void *self)
{
	item_add(self, OP_BOX_END);
}

static void list_tag_begin(void *self, enum tag tag, str alt)
{
	item_add_text(self, OP_TAG_BEGIN, tag, alt);
}

static void list_tag_end(void *self)
{
	item_add(self, OP_TAG_END);
}

static void list_tag_other(void *self)
{
	item_add(self, OP_TAG_OTHER);
}

static void list_fleeting_begin(void *self)
{
	item_add(self, OP_FLEETING_BEGIN);
}

static void list_fleeting_end(void *self)
{
	item_add(self, OP_FLEETING_END);
}

static void list_dest(void *self, str name, pt at)
{
	item_add_text(self, OP_DEST, 0, name)->u.r = (rect){ at.x, at.y, 0, 0 };
}

static void list_link(void *self, rect r, str dest_name)
{
	item_add_text(self, OP_LINK, 0, dest_name)->u.r = r;
}

static void list_outline(void *self, int depth, str title, str dest_name)
{
	struct list *l = self;
	struct item *item = item_add_text(l, OP_OUTLINE, (unsigned)depth, title);

	item->u.dest = str_copy(l->arena, dest_name);
}

static void list_label(void *self, enum label_style style, str prefix, unsigned first)
{
	item_add_text(self, OP_LABEL, style, prefix)->u.first = first;
}

static const struct canvas_ops list_ops = {
	.page_begin = list_page_begin, .page_end = list_page_end,
	.text = list_text, .path = list_path, .image = list_image,
	.box_begin = list_box_begin, .box_end = list_box_end,
	.tag_begin = list_tag_begin, .tag_end = list_tag_end,
	.tag_other = list_tag_other,
	.fleeting_begin = list_fleeting_begin, .fleeting_end = list_fleeting_end,
	.dest = list_dest, .link = list_link,
	.outline = list_outline, .label = list_label,
};

struct list *list_new(struct arena *a)
{
	struct list *l = arena_alloc(a, sizeof *l);

	l->arena = a;
	l->canvas = (struct canvas){ .ops = &list_ops, .self = l };
	return l;
}

struct canvas *list_canvas(struct list *l)
{
	return &l->canvas;
}

size_t list_pages(const struct list *l)
{
	return l->npages;
}

rect list_page_size(const struct list *l, size_t page)
{
	return l->pages[page].size;
}

static pt shift_pt(pt p, pt by)
{
	return (pt){ p.x + by.x, p.y + by.y };
}

static rect shift_rect(rect r, pt by)
{
	return (rect){ r.x + by.x, r.y + by.y, r.w, r.h };
}

static void path_replay(const struct path *path, const struct arena *a, struct canvas *to,
    pt by)
{
	struct seg small[64], *segs = small;
	struct arena *scratch = NULL;

	if (by.x == 0 && by.y == 0) {
		canvas_path(to, path->segs, path->n, &path->ink);
		return;
	}
	if (path->n > sizeof small / sizeof small[0]) {
		scratch = arena_beside(a);
		segs = arena_array(scratch, path->n, sizeof *segs);
	}
	for (size_t i = 0; i < path->n; i++) {
		segs[i].op = path->segs[i].op;
		for (int k = 0; k < 3; k++)
			segs[i].p[k] = shift_pt(path->segs[i].p[k], by);
	}
	canvas_path(to, segs, path->n, &path->ink);
	arena_free(scratch);
}

static void item_replay(const struct item *item, const struct arena *a, struct canvas *to,
    pt by)
{
	rect r = item->u.r;

	switch (item->op) {
	case OP_PAGE_BEGIN: canvas_page_begin(to, r.w, r.h); break;
	case OP_PAGE_END: canvas_page_end(to); break;
	case OP_TEXT:
		canvas_text(to, shift_pt((pt){ r.x, r.y }, by),
		    (enum face_id)item->number, r.w, item->text);
		break;
	case OP_PATH: path_replay(item->u.path, a, to, by); break;
	case OP_IMAGE:
		canvas_image(to, shift_rect(item->u.image->r, by), item->u.image->picture);
		break;
	case OP_BOX_BEGIN: canvas_box_begin(to, shift_rect(r, by), item->text); break;
	case OP_BOX_END: canvas_box_end(to); break;
	case OP_TAG_BEGIN:
		canvas_tag_begin(to, (enum tag)item->number, item->text);
		break;
	case OP_TAG_END: canvas_tag_end(to); break;
	case OP_TAG_OTHER: canvas_tag_other(to); break;
	case OP_FLEETING_BEGIN: canvas_fleeting_begin(to); break;
	case OP_FLEETING_END: canvas_fleeting_end(to); break;
	case OP_DEST: canvas_dest(to, item->text, shift_pt((pt){ r.x, r.y }, by)); break;
	case OP_LINK: canvas_link(to, shift_rect(r, by), item->text); break;
	case OP_OUTLINE:
		canvas_outline(to, (int)item->number, item->text, item->u.dest);
		break;
	case OP_LABEL:
		canvas_label(to, (enum label_style)item->number, item->text,
		    item->u.first);
		break;
	}
}

/* Replays items [m.index, end); framed: with page_begin and page_end. */
static void replay(const struct list *l, struct spot m, size_t end, struct canvas *to, pt by,
    bool framed)
{
	const struct block *b = m.block;

	/* m.block holds the item before m.index, or the very first item. */
	if (m.index > 0 && m.index % BLOCK_ITEMS == 0 && b)
		b = b->next;
	for (size_t i = m.index; i < end; i++) {
		const struct item *item = &b->v[i % BLOCK_ITEMS];

		if (framed || (item->op != OP_PAGE_BEGIN && item->op != OP_PAGE_END))
			item_replay(item, l->arena, to, by);
		if (i % BLOCK_ITEMS == BLOCK_ITEMS - 1)
			b = b->next;
	}
}

void list_replay(const struct list *l, struct canvas *to, double dx_pt, double dy_pt)
{
	replay(l, (struct spot){ l->first, 0 }, l->n, to, (pt){ dx_pt, dy_pt }, true);
}

static size_t page_end_index(const struct list *l, size_t page)
{
	return page + 1 < l->npages ? l->pages[page + 1].begin.index : l->n;
}

void list_replay_page(const struct list *l, size_t page, struct canvas *to,
    double dx_pt, double dy_pt)
{
	replay(l, l->pages[page].begin, page_end_index(l, page), to, (pt){ dx_pt, dy_pt },
	    true);
}

void list_replay_content(const struct list *l, size_t page, struct canvas *to,
    double dx_pt, double dy_pt)
{
	replay(l, l->pages[page].begin, page_end_index(l, page), to, (pt){ dx_pt, dy_pt },
	    false);
}
