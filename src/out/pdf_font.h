/* out/pdf_font.h - one face of a document as five PDF objects.
 *
 * Text is coded by glyph id (Type0, Identity-H), so that any glyph can be shown and what
 * is extracted rests on our own ToUnicode map. The subset is made by the PDF library. */
#ifndef OUT_PDF_FONT_H
#define OUT_PDF_FONT_H

#include "out/pdf_plan.h"

#include <hpdf_types.h>
#include <hpdf_mmgr.h>

/* Makes subset and map of a face that was used. Errors go to p. */
void font_prepare(struct pdf *p, HPDF_MMgr mmgr, struct pdf_font *f);
/* The entries of object `which` but for the length of its stream. */
void font_write(const struct pdf *p, const struct pdf_font *f, enum font_object which,
    struct buf *b);
/* The packed stream of object `which`, or an empty one. */
str font_stream(const struct pdf_font *f, enum font_object which);

#endif
