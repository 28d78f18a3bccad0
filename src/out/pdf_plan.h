/* out/pdf_plan.h - the objects of a file: their numbers, and what each of them says.
 *
 * pdf_file.c deals out the numbers; the functions here write the entries of object
 * `index` of a kind, without the "<<" and ">>" around them, or yield its stream. Only
 * out/pdf*.c includes this. */
#ifndef OUT_PDF_PLAN_H
#define OUT_PDF_PLAN_H

#include "out/pdf_parts.h"

enum { PAGE_OBJECTS = 2 };       /* a page and its content, in turns */

/* What one face of a document is made of, numbered in this order. */
enum font_object { FONT_TYPE0, FONT_CID, FONT_DESCRIPTOR, FONT_FILE, FONT_UNICODE,
	FONT_OBJECTS };

struct pdf_font {
	enum face_id face;
	uint32_t first_id;       /* number of its FONT_TYPE0 object */
	str file;                /* the subset, packed */
	size_t file_bytes;       /* before packing */
	str unicode;             /* the ToUnicode map, packed */
	int box[4];              /* left, bottom, right, top; thousandths of the size */
};

struct plan {
	const struct pdf *pdf;
	const struct buf *out;   /* the file so far */
	struct pdf_font fonts[FACE_COUNT];
	size_t nfonts;
	str metadata;
	struct tag_ids ids;      /* pages, annotations, structure elements */
	uint32_t first_image;    /* image i is object first_image + i */
	uint32_t pages_id, resources_id, parents_id, names_id, outline_id, metadata_id;
};

typedef void plan_write(const struct plan *plan, size_t index, struct buf *b);
typedef str plan_stream(const struct plan *plan, size_t index);

plan_write plan_catalog, plan_info, plan_trailer, plan_metadata;
plan_write plan_pages, plan_page, plan_content, plan_resources, plan_font, plan_link;
plan_write plan_image;
plan_write plan_names, plan_outline_root, plan_outline;
plan_write plan_tree, plan_parents, plan_elem;
plan_stream plan_image_stream;
plan_stream plan_content_stream, plan_font_stream, plan_metadata_stream;

/* The XMP packet (ISO 16684-1) with the facts of the document. */
void plan_metadata_build(const struct pdf *p, struct buf *b);

#endif
