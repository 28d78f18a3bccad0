#include "out/pdf_font.h"
#include "out/pdf_text.h"

#include "base/sha256.h"

#include <hpdf_doc.h>
#include <hpdf_info.h>

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* The PDF library numbers, frames and locates the objects; their entries are written by
 * the functions below, called back while it saves. That needs no library object for each
 * entry and lets page streams go out as they were packed. */

struct file;

typedef void object_write(struct file *f, size_t index, struct buf *b);

struct object {
	struct file *file;
	object_write *write;
	size_t index;            /* which one of its kind */
	str stream;              /* as it goes into the file; empty: none */
};

struct file {
	struct pdf *pdf;
	HPDF_Doc doc;
	HPDF_Stream stream;      /* catches the file */
	struct buf out;
	struct buf scratch;      /* entries of one object */
	struct sha256 hash;
	struct pdf_font fonts[FACE_COUNT];
	size_t nfonts;
	struct tag_ids ids;
	uint32_t pages_id, resources_id, parents_id, names_id, outline_id, metadata_id;
};

enum { PAGE_OBJECTS = 2 };       /* a page and its content */

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

/* Called between the "<<" and ">>" of an object. */
static HPDF_STATUS object_entries(HPDF_Dict dict, HPDF_Stream stream)
{
	struct object *o = dict->attr;
	struct buf *b = &o->file->scratch;

	b->n = 0;
	o->write(o->file, o->index, b);
	if (o->stream.n > 0)
		buf_addf(b, "/Length %zu\n", o->stream.n);
	return stream_add(stream, buf_str(b));
}

/* Called after the ">>" of an object. */
static HPDF_STATUS object_stream(HPDF_Dict dict)
{
	struct object *o = dict->attr;
	HPDF_Stream out = o->file->stream;

	if (o->stream.n == 0)
		return HPDF_OK;
	stream_add(out, STR("\nstream\r\n"));
	stream_add(out, o->stream);
	return stream_add(out, STR("\nendstream"));
}

/* Lets `write` fill an object that the library has made. */
static void object_adopt(struct file *f, HPDF_Dict dict, object_write *write, size_t index,
    str stream)
{
	struct object *o = arena_alloc(f->pdf->arena, sizeof *o);

	*o = (struct object){ f, write, index, stream };
	dict->attr = o;
	dict->write_fn = object_entries;
	dict->after_write_fn = object_stream;
}

static uint32_t next_id(const struct file *f)
{
	return f->doc->xref->entries->count + f->doc->xref->start_offset;
}

/* A new object; its number, or 0 after an error. */
static uint32_t object_add(struct file *f, object_write *write, size_t index, str stream)
{
	uint32_t id = next_id(f);
	HPDF_Dict dict;

	if (f->pdf->error)
		return 0;
	dict = HPDF_Dict_New(f->doc->mmgr);
	if (!dict || HPDF_Xref_Add(f->doc->xref, dict) != HPDF_OK)
		return 0;
	object_adopt(f, dict, write, index, stream);
	return id;
}

static void add_numbers(struct buf *b, const long *v, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		if (i > 0)
			buf_addc(b, ' ');
		content_number(b, v[i]);
	}
}

static void add_named(struct buf *b, const char *key, str text)
{
	if (text.n == 0)
		return;
	buf_adds(b, key);
	text_string(b, text);
	buf_addc(b, '\n');
}

static uint32_t page_id(const struct file *f, size_t page)
{
	return f->ids.first_page + (uint32_t)page * PAGE_OBJECTS;
}

static size_t links_end(const struct pdf *p, size_t page)
{
	return page + 1 < p->npages ? p->pages[page + 1].first_link : p->nlinks;
}

static void page_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf_page *page = &f->pdf->pages[index];
	size_t end = links_end(f->pdf, index);

	buf_adds(b, "/Type/Page/Parent ");
	text_ref(b, f->pages_id);
	buf_adds(b, "/MediaBox[0 0 ");
	add_numbers(b, (long[]){ page->width, page->height }, 2);
	buf_adds(b, "]/Resources ");
	text_ref(b, f->resources_id);
	buf_adds(b, "/Contents ");
	text_ref(b, page_id(f, index) + 1);
	if (tags_page_marked(f->pdf->tags, (uint32_t)index)) {
		buf_adds(b, "/StructParents ");
		text_uint(b, (uint32_t)index);
	}
	buf_adds(b, "/Tabs/S");
	if (page->first_link < end) {
		buf_adds(b, "/Annots[");
		for (size_t i = page->first_link; i < end; i++) {
			text_ref(b, f->ids.first_link + (uint32_t)i);
			buf_addc(b, i + 1 < end ? ' ' : ']');
		}
	}
	buf_addc(b, '\n');
}

static void packed_write(struct file *f, size_t index, struct buf *b)
{
	(void)f;
	(void)index;
	buf_adds(b, "/Filter/FlateDecode");
}

static void pages_write(struct file *f, size_t index, struct buf *b)
{
	(void)index;
	buf_addf(b, "/Count %zu/Kids[", f->pdf->npages);
	for (size_t i = 0; i < f->pdf->npages; i++) {
		text_ref(b, page_id(f, i));
		buf_addc(b, i % 8 == 7 ? '\n' : ' ');
	}
	buf_adds(b, "]\n");
}

static void resources_write(struct file *f, size_t index, struct buf *b)
{
	(void)index;
	buf_adds(b, "/Font<<");
	for (size_t i = 0; i < f->nfonts; i++)
		buf_addf(b, "/F%d %u 0 R", (int)f->fonts[i].face, f->fonts[i].first_id);
	buf_adds(b, ">>\n");
}

static void elem_write(struct file *f, size_t index, struct buf *b)
{
	tags_write_elem(f->pdf->tags, (uint32_t)index, &f->ids, b);
}

static void tree_write(struct file *f, size_t index, struct buf *b)
{
	(void)index;
	tags_write_root(f->pdf->tags, &f->ids, b);
	buf_addf(b, "/ParentTree %u 0 R\n", f->parents_id);
}

static void parents_write(struct file *f, size_t index, struct buf *b)
{
	(void)index;
	tags_write_parents(f->pdf->tags, &f->ids, b);
}

static void link_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf_link *l = &f->pdf->links[index];

	buf_adds(b, "/Type/Annot/Subtype/Link/F 4/Border[0 0 0]/Rect[");
	add_numbers(b, l->box, 4);
	buf_adds(b, "]/A<</S/GoTo/D");
	text_bytes(b, l->dest);
	buf_adds(b, ">>");
	if (l->tagged)
		buf_addf(b, "/StructParent %zu", f->pdf->npages + index);
	add_named(b, "/Contents", l->dest);
}

static int dest_cmp(const void *a, const void *b)
{
	const struct pdf_dest *x = a, *y = b;

	return str_cmp(x->name, y->name);
}

static void names_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf *p = f->pdf;

	(void)index;
	buf_adds(b, "/Names[");
	for (size_t i = 0; i < p->ndests; i++) {
		text_bytes(b, p->dests[i].name);
		buf_addc(b, '[');
		text_ref(b, page_id(f, p->dests[i].page));
		buf_adds(b, "/XYZ ");
		add_numbers(b, (long[]){ p->dests[i].x, p->dests[i].y }, 2);
		buf_adds(b, " null]\n");
	}
	buf_adds(b, "]\n");
}

static void outline_ref(const struct file *f, struct buf *b, const char *key, uint32_t i)
{
	if (i == UINT32_MAX)
		return;
	buf_adds(b, key);
	text_ref(b, f->outline_id + 1 + i);
}

static void outline_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf_outline *o = &f->pdf->outlines[index];

	buf_adds(b, "/Title");
	text_string(b, o->title);
	buf_adds(b, "/Parent ");
	text_ref(b, o->parent == UINT32_MAX ? f->outline_id : f->outline_id + 1 + o->parent);
	outline_ref(f, b, "/Prev ", o->prev);
	outline_ref(f, b, "/Next ", o->next);
	outline_ref(f, b, "/First ", o->first);
	outline_ref(f, b, "/Last ", o->last);
	/* Negative: folded. */
	if (o->kids > 0)
		buf_addf(b, "/Count -%u", o->kids);
	if (o->dest.n > 0) {
		buf_adds(b, "/Dest");
		text_bytes(b, o->dest);
	}
	buf_addc(b, '\n');
}

static void outline_root_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf *p = f->pdf;
	uint32_t last = 0, count = 0;

	(void)index;
	for (uint32_t i = 0; i != UINT32_MAX; i = p->outlines[i].next) {
		last = i;
		count++;
	}
	buf_adds(b, "/Type/Outlines");
	outline_ref(f, b, "/First ", 0);
	outline_ref(f, b, "/Last ", last);
	buf_addf(b, "/Count %u\n", count);
}

/* Every line of XMP (ISO 16684-1) that the facts of the document fill. */
static void metadata_build(const struct pdf *p, struct buf *b)
{
	static const struct { const char *open, *close; } lines[] = {
		{ "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">",
		    "</rdf:li></rdf:Alt></dc:title>\n" },
		{ "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">",
		    "</rdf:li></rdf:Alt></dc:description>\n" },
		{ "<dc:creator><rdf:Seq><rdf:li>", "</rdf:li></rdf:Seq></dc:creator>\n" },
		{ "<dc:language><rdf:Bag><rdf:li>", "</rdf:li></rdf:Bag></dc:language>\n" },
	};
	const str texts[] = { p->meta.title, p->meta.subject, p->meta.author,
		p->meta.language };

	buf_adds(b, "<?xpacket begin=\"\xef\xbb\xbf\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
	    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
	    "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
	    "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
	    " xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n"
	    "<dc:format>application/pdf</dc:format>\n"
	    "<pdf:Producer>fitup</pdf:Producer>\n");
	for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
		if (texts[i].n == 0)
			continue;
		buf_adds(b, lines[i].open);
		text_xml(b, texts[i]);
		buf_adds(b, lines[i].close);
	}
	buf_adds(b, "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>");
}

/* Metadata stays readable without unpacking. */
static void metadata_write(struct file *f, size_t index, struct buf *b)
{
	(void)f;
	(void)index;
	buf_adds(b, "/Type/Metadata/Subtype/XML");
}

static void labels_write(const struct pdf *p, struct buf *b)
{
	if (p->nlabels == 0)
		return;
	buf_adds(b, "/PageLabels<</Nums[");
	/* The first page must have a label of its own (ISO 32000-1, 12.4.2). */
	if (p->labels[0].page > 0)
		buf_adds(b, "0<</S/D>>");
	for (size_t i = 0; i < p->nlabels; i++) {
		const struct pdf_label *l = &p->labels[i];

		/* Of two for one page the later one counts. */
		if (i + 1 < p->nlabels && p->labels[i + 1].page == l->page)
			continue;
		buf_addf(b, "%u<</S/%s", l->page, l->style == LABEL_ROMAN ? "r" : "D");
		if (l->prefix.n > 0) {
			buf_adds(b, "/P");
			text_string(b, l->prefix);
		}
		buf_addf(b, "/St %u>>", l->first > 0 ? l->first : 1);
	}
	buf_adds(b, "]>>\n");
}

static void catalog_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf *p = f->pdf;

	(void)index;
	add_named(b, "/Lang", p->meta.language);
	buf_addf(b, "/MarkInfo<</Marked true>>/StructTreeRoot %u 0 R/Metadata %u 0 R\n",
	    f->ids.root, f->metadata_id);
	buf_adds(b, "/ViewerPreferences<</DisplayDocTitle true");
	if (p->meta.actual_size)
		buf_adds(b, "/PrintScaling/None");
	buf_adds(b, ">>\n");
	labels_write(p, b);
	if (p->ndests > 0)
		buf_addf(b, "/Names<</Dests %u 0 R>>", f->names_id);
	if (p->noutlines > 0)
		buf_addf(b, "/Outlines %u 0 R/PageMode/UseOutlines", f->outline_id);
}

static void info_write(struct file *f, size_t index, struct buf *b)
{
	const struct pdf_meta *meta = &f->pdf->meta;

	(void)index;
	add_named(b, "/Title", meta->title);
	add_named(b, "/Subject", meta->subject);
	add_named(b, "/Author", meta->author);
	buf_adds(b, "/Producer(fitup)\n");
}

/* The trailer comes last: its /ID is a digest of all bytes before it. */
static void trailer_write(struct file *f, size_t index, struct buf *b)
{
	uint8_t digest[SHA256_BYTES];
	struct buf hex = { .arena = f->pdf->arena };

	(void)index;
	sha256_init(&f->hash);
	sha256_add(&f->hash, f->out.p, f->out.n);
	sha256_end(&f->hash, digest);
	for (int i = 0; i < 16; i += 2)
		text_hex16(&hex, (unsigned)digest[i] << 8 | digest[i + 1]);
	buf_addf(b, "/ID[<%.*s><%.*s>]\n", (int)hex.n, hex.p, (int)hex.n, hex.p);
}

static void font_object(struct file *f, size_t index, struct buf *b)
{
	font_write(f->pdf, &f->fonts[index / FONT_OBJECTS],
	    (enum font_object)(index % FONT_OBJECTS), b);
}

static void fonts_add(struct file *f)
{
	for (size_t face = 0; face < FACE_COUNT; face++) {
		struct pdf_font *font = &f->fonts[f->nfonts];

		if (f->pdf->content.fonts[face].nglyphs == 0)
			continue;
		*font = (struct pdf_font){ .face = (enum face_id)face,
			.first_id = next_id(f) };
		font_prepare(f->pdf, f->doc->mmgr, font);
		for (size_t k = 0; k < FONT_OBJECTS; k++)
			object_add(f, font_object, f->nfonts * FONT_OBJECTS + k,
			    font_stream(font, (enum font_object)k));
		f->nfonts++;
	}
	f->resources_id = object_add(f, resources_write, 0, (str){ 0 });
}

static void pages_add(struct file *f)
{
	const struct pdf *p = f->pdf;
	HPDF_Dict root = f->doc->root_pages;

	f->pages_id = root->header.obj_id & 0x00ffffff;
	HPDF_Dict_RemoveElement(root, "Kids");
	HPDF_Dict_RemoveElement(root, "Count");
	root->before_write_fn = NULL;
	object_adopt(f, root, pages_write, 0, (str){ 0 });
	f->ids.first_page = next_id(f);
	f->ids.page_step = PAGE_OBJECTS;
	for (size_t i = 0; i < p->npages; i++) {
		object_add(f, page_write, i, (str){ 0 });
		object_add(f, packed_write, i, p->pages[i].packed);
	}
	f->ids.first_link = next_id(f);
	for (size_t i = 0; i < p->nlinks; i++)
		object_add(f, link_write, i, (str){ 0 });
}

static void tree_add(struct file *f)
{
	f->ids.first_elem = next_id(f);
	for (size_t i = 0; i < tags_count(f->pdf->tags); i++)
		object_add(f, elem_write, i, (str){ 0 });
	f->ids.root = object_add(f, tree_write, 0, (str){ 0 });
	f->parents_id = object_add(f, parents_write, 0, (str){ 0 });
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
		f->names_id = object_add(f, names_write, 0, (str){ 0 });
	if (p->noutlines == 0)
		return;
	f->outline_id = object_add(f, outline_root_write, 0, (str){ 0 });
	for (size_t i = 0; i < p->noutlines; i++)
		object_add(f, outline_write, i, (str){ 0 });
}

static void facts_add(struct file *f)
{
	HPDF_Doc doc = f->doc;
	struct buf xml = { .arena = f->pdf->arena };

	metadata_build(f->pdf, &xml);
	f->metadata_id = object_add(f, metadata_write, 0, buf_str(&xml));
	object_adopt(f, doc->catalog, catalog_write, 0, (str){ 0 });
	HPDF_Dict_RemoveElement(doc->info, "Producer");
	object_adopt(f, doc->info, info_write, 0, (str){ 0 });
	object_adopt(f, doc->trailer, trailer_write, 0, (str){ 0 });
	HPDF_Dict_Add(doc->trailer, "Root", doc->catalog);
	HPDF_Dict_Add(doc->trailer, "Info", doc->info);
}

/* Room for the whole file, so that it is not copied about as it grows. */
static size_t size_guess(const struct file *f)
{
	const struct pdf *p = f->pdf;
	size_t n = 65536 + 160 * (size_t)next_id(f);

	for (size_t i = 0; i < p->npages; i++)
		n += p->pages[i].packed.n;
	for (size_t i = 0; i < f->nfonts; i++)
		n += f->fonts[i].file.n + f->fonts[i].unicode.n + 8192;
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
	struct file f = { .pdf = p, .out = { .arena = out }, .scratch = { .arena = p->arena } };

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
