#include "out/pdf_plan.h"

#include "base/blend.h"
#include "out/pdf_font.h"
#include "out/pdf_text.h"

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

static uint32_t page_id(const struct plan *plan, size_t page)
{
	return plan->ids.first_page + (uint32_t)page * PAGE_OBJECTS;
}

static size_t links_end(const struct pdf *p, size_t page)
{
	return page + 1 < p->npages ? p->pages[page + 1].first_link : p->nlinks;
}

void plan_page(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf_page *page = &plan->pdf->pages[index];
	size_t end = links_end(plan->pdf, index);

	buf_adds(b, "/Type/Page/Parent ");
	text_ref(b, plan->pages_id);
	buf_adds(b, "/MediaBox[0 0 ");
	add_numbers(b, (long[]){ page->width, page->height }, 2);
	buf_adds(b, "]/Resources ");
	text_ref(b, plan->resources_id);
	buf_adds(b, "/Contents ");
	text_ref(b, page_id(plan, index) + 1);
	if (tags_page_marked(plan->pdf->tags, (uint32_t)index)) {
		buf_adds(b, "/StructParents ");
		text_uint(b, (uint32_t)index);
	}
	buf_adds(b, "/Tabs/S");
	if (page->first_link < end) {
		buf_adds(b, "/Annots[");
		for (size_t i = page->first_link; i < end; i++) {
			text_ref(b, plan->ids.first_link + (uint32_t)i);
			buf_addc(b, i + 1 < end ? ' ' : ']');
		}
	}
	buf_addc(b, '\n');
}

void plan_content(const struct plan *plan, size_t index, struct buf *b)
{
	(void)plan;
	(void)index;
	buf_adds(b, "/Filter/FlateDecode");
}

str plan_content_stream(const struct plan *plan, size_t index)
{
	return plan->pdf->pages[index].packed;
}

void plan_pages(const struct plan *plan, size_t index, struct buf *b)
{
	(void)index;
	buf_addf(b, "/Count %zu/Kids[", plan->pdf->npages);
	for (size_t i = 0; i < plan->pdf->npages; i++) {
		text_ref(b, page_id(plan, i));
		buf_addc(b, i % 8 == 7 ? '\n' : ' ');
	}
	buf_adds(b, "]\n");
}

void plan_resources(const struct plan *plan, size_t index, struct buf *b)
{
	(void)index;
	buf_adds(b, "/Font<<");
	for (size_t i = 0; i < plan->nfonts; i++)
		buf_addf(b, "/F%d %u 0 R", (int)plan->fonts[i].face,
		    plan->fonts[i].first_id);
	buf_adds(b, ">>\n");
	if (plan->pdf->nimages == 0)
		return;
	buf_adds(b, "/XObject<<");
	for (size_t i = 0; i < plan->pdf->nimages; i++)
		buf_addf(b, "/I%zu %u 0 R", i, plan->first_image + (uint32_t)i);
	buf_adds(b, ">>\n");
}

void plan_image(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pixels *p = plan->pdf->images[index].picture;

	buf_addf(b, "/Type/XObject/Subtype/Image/Width %u/Height %u/ColorSpace/DeviceGray"
	    "/BitsPerComponent 8/Filter/FlateDecode", p->width, p->height);
}

str plan_image_stream(const struct plan *plan, size_t index)
{
	return plan->pdf->images[index].packed;
}

void plan_elem(const struct plan *plan, size_t index, struct buf *b)
{
	tags_write_elem(plan->pdf->tags, (uint32_t)index, &plan->ids, b);
}

void plan_tree(const struct plan *plan, size_t index, struct buf *b)
{
	(void)index;
	tags_write_root(plan->pdf->tags, &plan->ids, b);
	buf_addf(b, "/ParentTree %u 0 R\n", plan->parents_id);
}

void plan_parents(const struct plan *plan, size_t index, struct buf *b)
{
	(void)index;
	tags_write_parents(plan->pdf->tags, &plan->ids, b);
}

void plan_link(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf_link *l = &plan->pdf->links[index];

	buf_adds(b, "/Type/Annot/Subtype/Link/F 4/Border[0 0 0]/Rect[");
	add_numbers(b, l->box, 4);
	buf_adds(b, "]/A<</S/GoTo/D");
	text_bytes(b, l->dest);
	buf_adds(b, ">>");
	if (l->tagged)
		buf_addf(b, "/StructParent %zu", plan->pdf->npages + index);
	add_named(b, "/Contents", l->dest);
}

void plan_names(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf *p = plan->pdf;

	(void)index;
	buf_adds(b, "/Names[");
	for (size_t i = 0; i < p->ndests; i++) {
		text_bytes(b, p->dests[i].name);
		buf_addc(b, '[');
		text_ref(b, page_id(plan, p->dests[i].page));
		buf_adds(b, "/XYZ ");
		add_numbers(b, (long[]){ p->dests[i].x, p->dests[i].y }, 2);
		buf_adds(b, " null]\n");
	}
	buf_adds(b, "]\n");
}

static void outline_ref(const struct plan *plan, struct buf *b, const char *key,
    uint32_t i)
{
	if (i == UINT32_MAX)
		return;
	buf_adds(b, key);
	text_ref(b, plan->outline_id + 1 + i);
}

void plan_outline(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf_outline *o = &plan->pdf->outlines[index];

	buf_adds(b, "/Title");
	text_string(b, o->title);
	buf_adds(b, "/Parent ");
	text_ref(b, plan->outline_id + (o->parent == UINT32_MAX ? 0 : 1 + o->parent));
	outline_ref(plan, b, "/Prev ", o->prev);
	outline_ref(plan, b, "/Next ", o->next);
	outline_ref(plan, b, "/First ", o->first);
	outline_ref(plan, b, "/Last ", o->last);
	/* Negative: folded. */
	if (o->kids > 0)
		buf_addf(b, "/Count -%u", o->kids);
	if (o->dest.n > 0) {
		buf_adds(b, "/Dest");
		text_bytes(b, o->dest);
	}
	buf_addc(b, '\n');
}

void plan_outline_root(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf *p = plan->pdf;
	uint32_t last = 0, count = 0;

	(void)index;
	for (uint32_t i = 0; i != UINT32_MAX; i = p->outlines[i].next) {
		last = i;
		count++;
	}
	buf_adds(b, "/Type/Outlines");
	outline_ref(plan, b, "/First ", 0);
	outline_ref(plan, b, "/Last ", last);
	buf_addf(b, "/Count %u\n", count);
}

void plan_metadata_build(const struct pdf *p, struct buf *b)
{
	static const struct { const char *open, *close; } lines[] = {
		{ "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">",
		    "</rdf:li></rdf:Alt></dc:title>\n" },
		{ "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">",
		    "</rdf:li></rdf:Alt></dc:description>\n" },
		{ "<dc:creator><rdf:Seq><rdf:li>", "</rdf:li></rdf:Seq></dc:creator>\n" },
		{ "<dc:language><rdf:Bag><rdf:li>",
		    "</rdf:li></rdf:Bag></dc:language>\n" },
	};
	const str texts[] = { p->meta.title, p->meta.subject, p->meta.author,
		p->meta.language };

	buf_adds(b, "<?xpacket begin=\"\xef\xbb\xbf\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
	    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
	    "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
	    "<rdf:Description rdf:about=\"\""
	    " xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
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
	buf_adds(b,
	    "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>");
}

/* Metadata stays readable without unpacking. */
void plan_metadata(const struct plan *plan, size_t index, struct buf *b)
{
	(void)plan;
	(void)index;
	buf_adds(b, "/Type/Metadata/Subtype/XML");
}

str plan_metadata_stream(const struct plan *plan, size_t index)
{
	(void)index;
	return plan->metadata;
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

void plan_catalog(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf *p = plan->pdf;

	(void)index;
	add_named(b, "/Lang", p->meta.language);
	buf_addf(b, "/MarkInfo<</Marked true>>/StructTreeRoot %u 0 R/Metadata %u 0 R\n",
	    plan->ids.root, plan->metadata_id);
	buf_adds(b, "/ViewerPreferences<</DisplayDocTitle true");
	if (p->meta.actual_size)
		buf_adds(b, "/PrintScaling/None");
	buf_adds(b, ">>\n");
	labels_write(p, b);
	if (p->ndests > 0)
		buf_addf(b, "/Names<</Dests %u 0 R>>", plan->names_id);
	if (p->noutlines > 0)
		buf_addf(b, "/Outlines %u 0 R/PageMode/UseOutlines", plan->outline_id);
}

void plan_info(const struct plan *plan, size_t index, struct buf *b)
{
	const struct pdf_meta *meta = &plan->pdf->meta;

	(void)index;
	add_named(b, "/Title", meta->title);
	add_named(b, "/Subject", meta->subject);
	add_named(b, "/Author", meta->author);
	buf_adds(b, "/Producer(fitup)\n");
}

/* The trailer comes last: its /ID is a digest of all bytes before it. */
void plan_trailer(const struct plan *plan, size_t index, struct buf *b)
{
	uint8_t digest[SHA256_BYTES];
	struct blend d = BLEND_START;
	struct sha256 h;

	(void)index;
	blend_bytes(&d, plan->out->p, plan->out->n);
	sha256_init(&h);
	blend_end(&d, &h);
	sha256_end(&h, digest);
	buf_adds(b, "/ID[");
	for (int twice = 0; twice < 2; twice++) {
		buf_addc(b, '<');
		for (int i = 0; i < 16; i += 2)
			text_hex16(b, (unsigned)digest[i] << 8 | digest[i + 1]);
		buf_addc(b, '>');
	}
	buf_adds(b, "]\n");
}

void plan_font(const struct plan *plan, size_t index, struct buf *b)
{
	font_write(plan->pdf, &plan->fonts[index / FONT_OBJECTS],
	    (enum font_object)(index % FONT_OBJECTS), b);
}

str plan_font_stream(const struct plan *plan, size_t index)
{
	return font_stream(&plan->fonts[index / FONT_OBJECTS],
	    (enum font_object)(index % FONT_OBJECTS));
}
