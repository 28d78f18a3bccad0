#include "out/pdf.h"

#include "out/pdf_parts.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* zlib's own measure of effort, 1 to 9. Measured on 240 pages of text, whole files: level
 * 2 is 3 % larger than level 6 and written in 39 ms instead of 62. */
enum { PACK_LEVEL = 2 };

void pdf_fail(struct pdf *p, int error)
{
	if (p->error == PDF_OK)
		p->error = error;
}

static bool packer_start(struct pdf *p)
{
	if (p->packer_ready)
		return deflateReset(&p->packer) == Z_OK;
	p->packer_ready = deflateInit(&p->packer, PACK_LEVEL) == Z_OK;
	return p->packer_ready;
}

str pdf_pack(struct pdf *p, const void *bytes, size_t n)
{
	size_t most;

	if (n > UINT32_MAX / 2 || !packer_start(p)) {
		pdf_fail(p, PDF_PACKING);
		return (str){ 0 };
	}
	most = deflateBound(&p->packer, (uLong)n);
	p->packing.p = arena_grow(p->arena, p->packing.p, 0, most, &p->packing.cap, 1);
	p->packer.next_in = (z_const Bytef *)(uintptr_t)bytes;
	p->packer.avail_in = (uInt)n;
	p->packer.next_out = (Bytef *)p->packing.p;
	p->packer.avail_out = (uInt)most;
	if (deflate(&p->packer, Z_FINISH) != Z_STREAM_END) {
		pdf_fail(p, PDF_PACKING);
		return (str){ 0 };
	}
	return str_copy(p->arena, (str){ p->packing.p, most - p->packer.avail_out });
}

static void mark_close(struct pdf *p)
{
	if (p->mark_open)
		content_mark_end(&p->content);
	p->mark_open = false;
}

/* Before ink: opens the piece of the structure tree that the ink belongs to. */
static void mark_open(struct pdf *p)
{
	uint32_t elem = tags_current(p->tags);

	if (p->mark_open && p->marked == elem)
		return;
	mark_close(p);
	p->mark_open = true;
	p->marked = elem;
	if (elem == TAGS_NONE)
		content_artifact(&p->content);
	else
		content_mark(&p->content, tags_type(p->tags, elem),
		    tags_mark(p->tags, elem));
}

static double finite_or_zero(struct pdf *p, double x)
{
	if (isfinite(x))
		return x;
	pdf_fail(p, PDF_NOT_FINITE);
	return 0;
}

static void pdf_page_begin(void *self, double width_pt, double height_pt)
{
	struct pdf *p = self;
	struct pdf_page *page = ARENA_PUSH(p->arena, p->pages, p->npages, p->pages_cap);

	page->width = content_hundredths(finite_or_zero(p, width_pt));
	page->height = content_hundredths(finite_or_zero(p, height_pt));
	page->first_link = (uint32_t)p->nlinks;
	content_page_begin(&p->content, (double)page->height / 100.0);
	tags_page_begin(p->tags);
	p->mark_open = false;
}

static void pdf_page_end(void *self)
{
	struct pdf *p = self;

	mark_close(p);
	if (p->content.not_finite)
		pdf_fail(p, PDF_NOT_FINITE);
	p->pages[p->npages - 1].packed = pdf_pack(p, p->content.out.p, p->content.out.n);
}

static void pdf_text(void *self, pt baseline, enum face_id face, double size_pt, str utf8)
{
	struct pdf *p = self;

	mark_open(p);
	content_text(&p->content, baseline, face, size_pt, utf8);
}

static void pdf_path(void *self, const struct seg *segs, size_t n, const struct ink *ink)
{
	struct pdf *p = self;

	mark_open(p);
	content_path(&p->content, segs, n, ink);
}

static uint32_t image_id(struct pdf *p, const struct pixels *picture)
{
	struct pdf_image *image;

	for (size_t i = 0; i < p->nimages; i++)
		if (!memcmp(p->images[i].picture->digest, picture->digest, SHA256_BYTES))
			return (uint32_t)i;
	image = ARENA_PUSH(p->arena, p->images, p->nimages, p->images_cap);
	image->picture = picture;
	image->packed = pdf_pack(p, picture->gray,
	    (size_t)picture->width * picture->height);
	return (uint32_t)(p->nimages - 1);
}

static void pdf_image(void *self, rect r, const struct pixels *picture)
{
	struct pdf *p = self;

	mark_open(p);
	content_image(&p->content, r, image_id(p, picture));
}

static void pdf_tag_begin(void *self, enum tag tag, str alt)
{
	tags_begin(((struct pdf *)self)->tags, tag, alt);
}

static void pdf_tag_end(void *self)
{
	tags_end(((struct pdf *)self)->tags);
}

static void pdf_tag_other(void *self)
{
	tags_other(((struct pdf *)self)->tags);
}

static void pdf_dest(void *self, str name, pt at)
{
	struct pdf *p = self;
	struct pdf_dest *d = ARENA_PUSH(p->arena, p->dests, p->ndests, p->dests_cap);

	d->name = str_copy(p->arena, name);
	d->page = (uint32_t)(p->npages - 1);
	d->x = content_hundredths(finite_or_zero(p, at.x));
	d->y = content_hundredths(p->content.height_pt - finite_or_zero(p, at.y));
}

static void pdf_link(void *self, rect r, str dest_name)
{
	struct pdf *p = self;
	uint32_t id = (uint32_t)p->nlinks;
	struct pdf_link *l = ARENA_PUSH(p->arena, p->links, p->nlinks, p->links_cap);
	double height = p->content.height_pt;

	l->dest = str_copy(p->arena, dest_name);
	l->box[0] = content_hundredths(finite_or_zero(p, r.x));
	l->box[1] = content_hundredths(height - finite_or_zero(p, r.y + r.h));
	l->box[2] = content_hundredths(finite_or_zero(p, r.x + r.w));
	l->box[3] = content_hundredths(height - finite_or_zero(p, r.y));
	l->tagged = tags_link(p->tags, id);
}

static void pdf_outline(void *self, int depth, str title, str dest_name)
{
	struct pdf *p = self;
	struct pdf_outline *o;

	o = ARENA_PUSH(p->arena, p->outlines, p->noutlines, p->outlines_cap);
	o->depth = depth;
	o->title = str_copy(p->arena, title);
	o->dest = str_copy(p->arena, dest_name);
}

/* For the page that is open, or else the next one. */
static void pdf_label(void *self, enum label_style style, str prefix, unsigned first)
{
	struct pdf *p = self;
	struct pdf_label *l = ARENA_PUSH(p->arena, p->labels, p->nlabels, p->labels_cap);

	l->style = style;
	l->prefix = str_copy(p->arena, prefix);
	l->first = first;
	l->page = (uint32_t)(p->npages - (p->canvas.pages > 0 ? 1 : 0));
}

static const struct canvas_ops pdf_ops = {
	.page_begin = pdf_page_begin, .page_end = pdf_page_end,
	.text = pdf_text, .path = pdf_path, .image = pdf_image,
	.tag_begin = pdf_tag_begin, .tag_end = pdf_tag_end,
	.tag_other = pdf_tag_other,
	.dest = pdf_dest, .link = pdf_link,
	.outline = pdf_outline, .label = pdf_label,
};

struct pdf *pdf_new(struct arena *a, const struct faces *faces,
    const struct pdf_meta *meta)
{
	struct pdf *p = arena_alloc(a, sizeof *p);

	p->arena = a;
	p->canvas = (struct canvas){ .ops = &pdf_ops, .self = p };
	p->meta = (struct pdf_meta){
		.title = str_copy(a, meta->title),
		.language = str_copy(a, meta->language),
		.subject = str_copy(a, meta->subject),
		.author = str_copy(a, meta->author),
		.actual_size = meta->actual_size,
	};
	content_init(&p->content, a, faces);
	p->packing.arena = a;
	p->tags = tags_new(a, meta->other);
	return p;
}

struct canvas *pdf_canvas(struct pdf *p)
{
	return &p->canvas;
}
