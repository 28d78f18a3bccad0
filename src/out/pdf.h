/* out/pdf.h - pages as one PDF 1.7 file in memory: tagged, titled, linked.
 *
 * Draw on pdf_canvas, then call pdf_finish once; the caller writes the bytes. Each
 * page is packed when it ends. The file holds no clock, no random number and no path:
 * same drawing, same bytes (with the same zlib). Documents share nothing but the
 * read-only faces, so several may be built at the same time in several threads, each
 * with its own arena.
 *
 * Content outside every tag, or under TAG_ARTIFACT, is furniture to readers that cannot
 * see the page. A place that a link or outline names must exist by the end, and each
 * name once (assert). A tag may span pages. */
#ifndef OUT_PDF_H
#define OUT_PDF_H

#include "base/arena.h"
#include "base/str.h"
#include "draw/canvas.h"
#include "draw/face.h"

/* All UTF-8, copied. Empty strings are left out of the file. */
struct pdf_meta {
	str title;               /* shown by viewers in place of the file name */
	str language;            /* of the text: "en-US", "es-US" */
	str other;               /* of what canvas_tag_other marks */
	str subject;
	str author;
	bool actual_size;        /* ask viewers to print without scaling */
};

struct pdf;

/* Errors of our own beside those of the PDF library (which are 0x1001 and up). */
enum pdf_error {
	PDF_OK = 0,
	PDF_NOT_FINITE = 0x2001, /* a coordinate was no number: a fault of ours */
	PDF_PACKING = 0x2002     /* the compressor failed */
};

/* An empty document in a; faces are borrowed until pdf_finish. */
struct pdf *pdf_new(struct arena *a, const struct faces *faces,
    const struct pdf_meta *meta);
struct canvas *pdf_canvas(struct pdf *p);

/* Ends the document and puts the whole file into `out`. Returns 0, or the first error,
 * with *bytes empty. Releases everything that is not in an arena; call it even when
 * the document is to be thrown away. */
int pdf_finish(struct pdf *p, struct arena *out, str *bytes);

#endif
