/* draw/face.h - the six faces that everything is set in, and their metrics.
 *
 * Read from the TrueType bytes inside the binary (base/fonts.h). Widths follow the
 * rule that PDF viewers use here: the sum of floor(advance * 1000 / unitsPerEm)
 * per glyph, times size / 1000. No kerning, no ligatures. */
#ifndef DRAW_FACE_H
#define DRAW_FACE_H

#include "base/arena.h"
#include "draw/canvas.h"

struct faces;

/* Reads all faces into a. Cannot fail: the bytes are ours and a test checks them. */
const struct faces *faces_new(struct arena *a);

/* The glyph for a code point, 0 when the face has none. */
uint16_t face_glyph(const struct faces *f, enum face_id face, uint32_t code_point);
/* Advance of a glyph in thousandths of the size. */
unsigned face_advance(const struct faces *f, enum face_id face, uint16_t glyph);
/* Width of a text in points. */
double face_width_pt(const struct faces *f, enum face_id face, double size_pt, str utf8);
/* Heights above and below the baseline, positive, in points. */
double face_ascent_pt(const struct faces *f, enum face_id face, double size_pt);
double face_descent_pt(const struct faces *f, enum face_id face, double size_pt);
double face_cap_height_pt(const struct faces *f, enum face_id face, double size_pt);
/* Offset of the first character that the face lacks, or s.n. Space, no-break space and
 * the vulgar fractions that the face has count as present. */
size_t face_missing(const struct faces *f, enum face_id face, str s);
/* Takes one code point off valid UTF-8; 0 at the end. */
uint32_t utf8_next(str *s);

#endif
