#include "out/pdf_font.h"
#include "out/pdf_plan.h"

#include <hpdf.h>
#include <hpdf_doc.h>
#include <hpdf_info.h>

#include <assert.h>
#include <stdlib.h>

/* The PDF library numbers, frames and locates the objects; their entries come from
 * pdf_plan.c, called back while it saves. That needs no library object for each
 * entry and lets page streams go out as they were packed. */

enum { ID_MASK = 0x00ffffff };   /* the number in the library's object header */

struct file {
	struct pdf *pdf;
	struct plan plan;
	HPDF_Doc doc;
	HPDF_Stream stream;      /* catches the file */
	struct buf out;
	struct buf scratch;      /* entries of one object */
};

/* Objects of one kind. Kinds whose numbers alternate have a step over 1. */
struct kind {
	struct file *file;
	plan_write *write;
	plan_stream *stream;     /* null: objects without one */
	uint32_t first_id, step;
};

static void file_error(HPDF_STATUS code, HPDF_STATUS detail, void *user)
{
	(void)detail;
	pdf_fail(user, (int)code);
}

static HPDF_STATUS file_write(HPDF_Stream stream, const HPDF_BYTE *p, HPDF_UINT n)
{
	struct file *f = stream->attr;

	buf_add(&f->out, (str){ (const char *)p, n });
	return HPDF_OK;
}

static HPDF_STATUS stream_add(HPDF_Stream stream, str s)
{
	return HPDF_Stream_Write(stream, (const HPDF_BYTE *)s.p, (HPDF_UINT)s.n);
}

static size_t object_index(HPDF_Dict dict)
{
	const struct kind *k = dict->attr;

	return ((dict->header.obj_id & ID_MASK) - k->first_id) / k->step;
}

static str object_stream(HPDF_Dict dict)
{
	const struct kind *k = dict->attr;

	return k->stream ? k->stream(&k->file->plan, object_index(dict)) : (str){ 0 };
}

/* Called between the "<<" and ">>" of an object. */
static HPDF_STATUS entries_add(HPDF_Dict dict, HPDF_Stream stream)
{
	const struct kind *k = dict->attr;
	struct buf *b = &k->file->scratch;
	size_t bytes = object_stream(dict).n;

	b->n = 0;
	k->write(&k->file->plan, object_index(dict), b);
	if (bytes > 0)
		buf_addf(b, "/Length %zu\n", bytes);
	return stream_add(stream, buf_str(b));
}

/* Called after the ">>" of an object. */
static HPDF_STATUS body_add(HPDF_Dict dict)
{
	const struct kind *k = dict->attr;
	HPDF_Stream out = k->file->stream;
	str body = object_stream(dict);

	if (body.n == 0)
		return HPDF_OK;
	stream_add(out, STR("\nstream\r\n"));
	stream_add(out, body);
	return stream_add(out, STR("\nendstream"));
}

static uint32_t next_id(const struct file *f)
{
	return f->doc->xref->entries->count + f->doc->xref->start_offset;
}

/* A kind whose first object comes next. */
static struct kind *kind_new(struct file *f, plan_write *write, plan_stream *stream)
{
	struct kind *k = arena_alloc(f->pdf->arena, sizeof *k);

	*k = (struct kind){ f, write, stream, next_id(f), 1 };
	return k;
}

static void object_bind(HPDF_Dict dict, struct kind *k)
{
	dict->attr = k;
	dict->write_fn = entries_add;
	dict->after_write_fn = body_add;
}

/* A new object of a kind. After an error nothing is added any more. */
static void object_add(struct file *f, struct kind *k)
{
	HPDF_Dict dict;

	if (f->pdf->error)
		return;
	dict = HPDF_Dict_New(f->doc->mmgr);
	if (dict && HPDF_Xref_Add(f->doc->xref, dict) == HPDF_OK)
		object_bind(dict, k);
}

/* n objects of a kind in a row; returns the number of the first. */
static uint32_t objects_add(struct file *f, size_t n, plan_write *write,
    plan_stream *stream)
{
	struct kind *k = kind_new(f, write, stream);

	for (size_t i = 0; i < n; i++)
		object_add(f, k);
	return k->first_id;
}

/* Lets `write` fill an object that the library has made. */
static void object_adopt(struct file *f, HPDF_Dict dict, plan_write *write)
{
	struct kind *k = kind_new(f, write, NULL);

	k->first_id = dict->header.obj_id & ID_MASK;
	object_bind(dict, k);
}

static void fonts_add(struct file *f)
{
	uint32_t first;

	for (size_t face = 0; face < FACE_COUNT; face++) {
		if (f->pdf->content.fonts[face].nglyphs == 0)
			continue;
		f->plan.fonts[f->plan.nfonts].face = (enum face_id)face;
		font_prepare(f->pdf, f->doc->mmgr, &f->plan.fonts[f->plan.nfonts++]);
	}
	first = objects_add(f, f->plan.nfonts * FONT_OBJECTS, plan_font,
	    plan_font_stream);
	for (size_t i = 0; i < f->plan.nfonts; i++)
		f->plan.fonts[i].first_id = first + (uint32_t)(i * FONT_OBJECTS);
	f->plan.first_image = objects_add(f, f->pdf->nimages, plan_image, plan_image_stream);
	f->plan.resources_id = objects_add(f, 1, plan_resources, NULL);
}

static void pages_add(struct file *f)
{
	HPDF_Dict root = f->doc->root_pages;
	struct kind *pages = kind_new(f, plan_page, NULL);
	struct kind *contents = kind_new(f, plan_content, plan_content_stream);

	f->plan.pages_id = root->header.obj_id & ID_MASK;
	HPDF_Dict_RemoveElement(root, "Kids");
	HPDF_Dict_RemoveElement(root, "Count");
	root->before_write_fn = NULL;
	object_adopt(f, root, plan_pages);
	f->plan.ids.first_page = pages->first_id;
	f->plan.ids.page_step = pages->step = contents->step = PAGE_OBJECTS;
	contents->first_id++;
	for (size_t i = 0; i < f->pdf->npages; i++) {
		object_add(f, pages);
		object_add(f, contents);
	}
	f->plan.ids.first_link = objects_add(f, f->pdf->nlinks, plan_link, NULL);
}

static void tree_add(struct file *f)
{
	f->plan.ids.first_elem = objects_add(f, tags_count(f->pdf->tags), plan_elem,
	    NULL);
	f->plan.ids.root = objects_add(f, 1, plan_tree, NULL);
	f->plan.parents_id = objects_add(f, 1, plan_parents, NULL);
}

/* Ties the entries of the outline together by their depths. */
static void outlines_bind(struct pdf *p)
{
	for (uint32_t i = 0; i < p->noutlines; i++) {
		struct pdf_outline *o = &p->outlines[i];
		uint32_t up = i - 1;     /* UINT32_MAX before the first */

		o->first = o->last = o->next = UINT32_MAX;
		while (up != UINT32_MAX && p->outlines[up].depth >= o->depth)
			up = p->outlines[up].parent;
		o->parent = up;
		o->prev = UINT32_MAX;
		if (up != UINT32_MAX) {
			o->prev = p->outlines[up].last;
			p->outlines[up].last = i;
			p->outlines[up].kids++;
			if (o->prev == UINT32_MAX)
				p->outlines[up].first = i;
		} else if (i > 0) {
			/* The last entry of the root is the top of the one before. */
			o->prev = i - 1;
			while (p->outlines[o->prev].parent != UINT32_MAX)
				o->prev = p->outlines[o->prev].parent;
		}
		if (o->prev != UINT32_MAX)
			p->outlines[o->prev].next = i;
	}
}

static int dest_cmp(const void *a, const void *b)
{
	const struct pdf_dest *x = a, *y = b;

	return str_cmp(x->name, y->name);
}

static bool dest_known(const struct pdf *p, str name)
{
	struct pdf_dest key = { .name = name };

	return p->ndests > 0 &&
	    bsearch(&key, p->dests, p->ndests, sizeof *p->dests, dest_cmp) != NULL;
}

/* Places are sorted, each name once; whoever names a place names a known one. */
static void dests_bind(struct pdf *p)
{
	if (p->ndests > 0)
		qsort(p->dests, p->ndests, sizeof *p->dests, dest_cmp);
	for (size_t i = 1; i < p->ndests; i++)
		assert(!str_eq(p->dests[i - 1].name, p->dests[i].name));
	for (size_t i = 0; i < p->nlinks; i++)
		assert(dest_known(p, p->links[i].dest));
	for (size_t i = 0; i < p->noutlines; i++)
		assert(p->outlines[i].dest.n == 0 || dest_known(p, p->outlines[i].dest));
}

static void places_add(struct file *f)
{
	struct pdf *p = f->pdf;

	dests_bind(p);
	outlines_bind(p);
	if (p->ndests > 0)
		f->plan.names_id = objects_add(f, 1, plan_names, NULL);
	if (p->noutlines == 0)
		return;
	f->plan.outline_id = objects_add(f, 1, plan_outline_root, NULL);
	objects_add(f, p->noutlines, plan_outline, NULL);
}

static void facts_add(struct file *f)
{
	HPDF_Doc doc = f->doc;
	struct buf xml = { .arena = f->pdf->arena };

	plan_metadata_build(f->pdf, &xml);
	f->plan.metadata = buf_str(&xml);
	f->plan.metadata_id = objects_add(f, 1, plan_metadata, plan_metadata_stream);
	object_adopt(f, doc->catalog, plan_catalog);
	HPDF_Dict_RemoveElement(doc->info, "Producer");
	object_adopt(f, doc->info, plan_info);
	object_adopt(f, doc->trailer, plan_trailer);
	HPDF_Dict_Add(doc->trailer, "Root", doc->catalog);
	HPDF_Dict_Add(doc->trailer, "Info", doc->info);
}

/* Room for the whole file, so that it is not copied about as it grows. */
static size_t size_guess(const struct file *f)
{
	const struct pdf *p = f->pdf;
	size_t n = 65536 + 120 * (size_t)next_id(f);

	for (size_t i = 0; i < p->npages; i++)
		n += p->pages[i].packed.n;
	for (size_t i = 0; i < p->nimages; i++)
		n += p->images[i].packed.n;
	for (size_t i = 0; i < f->plan.nfonts; i++)
		n += f->plan.fonts[i].file.n + f->plan.fonts[i].unicode.n + 8192;
	return n;
}

static void file_save(struct file *f)
{
	f->stream = HPDF_CallbackWriter_New(f->doc->mmgr, file_write, f);
	if (!f->stream)
		return;
	f->out.cap = size_guess(f);
	f->out.p = arena_alloc(f->out.arena, f->out.cap);
	/* Four bytes above 127 tell transfer programs that the file is binary. */
	stream_add(f->stream, STR("%PDF-1.7\n%\xb5\xb6\xb7\xb8\n"));
	HPDF_Xref_WriteToStream(f->doc->xref, f->stream, NULL);
	HPDF_Stream_Free(f->stream);
}

static void file_build(struct file *f)
{
	f->doc = HPDF_NewEx(file_error, NULL, NULL, 0, f->pdf);
	if (!f->doc || !f->doc->info || !f->doc->root_pages) {
		pdf_fail(f->pdf, HPDF_FAILD_TO_ALLOC_MEM);
		return;
	}
	fonts_add(f);
	pages_add(f);
	tree_add(f);
	places_add(f);
	facts_add(f);
	if (f->pdf->error == PDF_OK)
		file_save(f);
}

int pdf_finish(struct pdf *p, struct arena *out, str *bytes)
{
	struct file f = { .pdf = p, .out = { .arena = out },
	    .scratch = { .arena = p->arena } };

	f.plan.pdf = p;
	f.plan.out = &f.out;
	assert(p->canvas.pages == 0 && p->canvas.tags == 0);
	file_build(&f);
	if (f.doc)
		HPDF_Free(f.doc);
	if (p->packer_ready)
		deflateEnd(&p->packer);
	p->packer_ready = false;
	*bytes = p->error == PDF_OK ? buf_str(&f.out) : (str){ 0 };
	return p->error;
}
