/* out/pdf_text.h - small pieces of PDF syntax. */
#ifndef OUT_PDF_TEXT_H
#define OUT_PDF_TEXT_H

#include "base/buf.h"

void text_uint(struct buf *b, uint32_t v);
/* "12 0 R" */
void text_ref(struct buf *b, uint32_t object);
/* A text that people read: plain where it is ASCII, else UTF-16 (ISO 32000-1,
 * 7.9.2.2). */
void text_string(struct buf *b, str utf8);
/* A run of bytes that is only compared, as names of places. */
void text_bytes(struct buf *b, str s);
/* UTF-16BE in hexadecimal digits, as a ToUnicode map wants it. */
void text_utf16(struct buf *b, uint32_t code_point);
void text_hex16(struct buf *b, unsigned v);
/* XML character data. */
void text_xml(struct buf *b, str utf8);

#endif
