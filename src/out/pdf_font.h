/* out/pdf_font.h - one face of a document as five PDF objects.
 *
 * Text is coded by glyph id (Type0, Identity-H), so that any glyph can be shown and what
 * is extracted rests on our own ToUnicode map. The subset is made by the PDF library.
 * Objects of a face are numbered from ids in the order of enum font_object. */
#ifndef OUT_PDF_FONT_H
#define OUT_PDF_FONT_H

#include "out/pdf_parts.h"

#include <hpdf.h>

enum font_object { FONT_TYPE0, FONT_CID, FONT_DESCRIPTOR, FONT_FILE, FONT_UNICODE,
	FONT_OBJECTS };

struct pdf_font {
	enum face_id face;
	uint32_t first_id;       /* number of its FONT_TYPE0 object */
	str file;                /* the subset, packed */
	size_t file_bytes;       /* before packing */
	str unicode;             /* the ToUnicode map, packed */
	HPDF_Box box;            /* thousandths of the size */
};

/* Makes subset and map of a face that was used. Errors go to p. */
void font_prepare(struct pdf *p, HPDF_MMgr mmgr, struct pdf_font *f);
/* The entries of object `which` but for those of its stream. */
void font_write(const struct pdf *p, const struct pdf_font *f, enum font_object which,
    struct buf *b);
/* The packed stream of object `which`, or an empty one. */
str font_stream(const struct pdf_font *f, enum font_object which);

#endif
