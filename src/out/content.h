/* out/content.h - the operators of one PDF page, written as text and paths come.
 *
 * Knows the graphics state that a viewer has at each point, so that nothing is said
 * twice. Lengths are rounded to a hundredth of a point (0.0035 mm) and clamped to
 * +-32,000 pt. Which glyphs were drawn is kept over all pages, for the subsets. */
#ifndef OUT_CONTENT_H
#define OUT_CONTENT_H

#include "base/buf.h"
#include "draw/canvas.h"
#include "draw/face.h"

/* The bytes that show one ASCII character inside a string: its two-byte glyph id with
 * each byte escaped if need be. n 0: not drawn yet. */
struct glyph_code {
	unsigned char n;
	char bytes[4];
};

/* What was drawn in one face. */
struct font_use {
	uint32_t *code_point;    /* by glyph id: the first character it stood for, or 0 */
	size_t nglyphs, cap;     /* nglyphs 0: face not used */
	struct glyph_code ascii[128];
};

struct content {
	struct arena *arena;
	const struct faces *faces;
	struct buf out;          /* operators of the page so far */
	struct font_use fonts[FACE_COUNT];
	bool not_finite;         /* an operation was left out for a number that is none */
	double height_pt;
	/* As the viewer has it, in hundredths; -1: not set on this page. */
	long size, line_width, dash_on, dash_off, fill_gray, stroke_gray;
	long x, y;               /* start of the last text in this text object */
	int face;
	bool in_text;
	char last;               /* byte of the text before in this block; 0: none */
};

void content_init(struct content *c, struct arena *a, const struct faces *faces);
/* Starts a page: out is empty again, its memory is kept. */
void content_page_begin(struct content *c, double height_pt);
void content_text(struct content *c, pt baseline, enum face_id face, double size_pt,
    str utf8);
void content_path(struct content *c, const struct seg *segs, size_t n,
    const struct ink *ink);
/* Picture number `id` of the document, filling r. */
void content_image(struct content *c, rect r, uint32_t id);
/* Marked content: a piece of the structure tree, or furniture. */
void content_mark(struct content *c, const char *type, unsigned mcid);
void content_artifact(struct content *c);
void content_mark_end(struct content *c);

/* x in hundredths, rounded and clamped; 0 when x is no number. */
long content_hundredths(double x);
/* Appends hundredths as a PDF number: 1250 gives 12.5. */
void content_number(struct buf *b, long hundredths);

#endif
