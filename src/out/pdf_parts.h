/* out/pdf_parts.h - what pdf.c collects and pdf_file.c writes. Only out/pdf*.c and
 * its tests include this. */
#ifndef OUT_PDF_PARTS_H
#define OUT_PDF_PARTS_H

#include "out/content.h"
#include "out/pdf.h"
#include "out/tags.h"

#include <zlib.h>

struct pdf_page {
	long width, height;      /* hundredths of a point */
	str packed;              /* its operators, deflated */
	uint32_t first_link;     /* in links; up to that of the next page */
};

struct pdf_dest {
	str name;
	uint32_t page;
	long x, y;               /* hundredths from the lower left corner */
};

struct pdf_link {
	str dest;
	long box[4];             /* left, bottom, right, top in hundredths */
	bool tagged;
};

struct pdf_outline {
	str title, dest;
	int depth;
	/* Positions in outlines; UINT32_MAX: none (for parent: the root). */
	uint32_t parent, prev, next, first, last, kids;
};

struct pdf_label {
	enum label_style style;
	str prefix;
	unsigned first;
	uint32_t page;
};

/* A picture that pages show, packed once however often they do. */
struct pdf_image {
	const struct pixels *picture;
	str packed;
};

struct pdf {
	struct canvas canvas;
	struct arena *arena;
	struct pdf_meta meta;
	struct content content;
	struct tags *tags;
	uint32_t marked;         /* element whose piece is open on this page */
	bool mark_open;          /* marked content is open; furniture if TAGS_NONE */
	z_stream packer;
	bool packer_ready;
	struct buf packing;      /* room for one packed page */
	int error;               /* the first one */

	struct pdf_page *pages;
	size_t npages, pages_cap;
	struct pdf_dest *dests;
	size_t ndests, dests_cap;
	struct pdf_link *links;
	size_t nlinks, links_cap;
	struct pdf_outline *outlines;
	size_t noutlines, outlines_cap;
	struct pdf_image *images;
	size_t nimages, images_cap;
	struct pdf_label *labels;
	size_t nlabels, labels_cap;
};

/* Records the first error only. */
void pdf_fail(struct pdf *p, int error);
/* Deflates n bytes into p's arena; empty when the compressor fails. */
str pdf_pack(struct pdf *p, const void *bytes, size_t n);

#endif
