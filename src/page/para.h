/* page/para.h - text broken into lines.
 *
 * para_break decides where lines end and returns them; para_draw puts them on a
 * canvas. Nothing here knows a page. Lines break at blanks, and after '-' or '/'
 * with three letters on each side; a word wider than the line is broken between
 * characters. No-break spaces never break. Trailing blanks never count.
 *
 * Texts are borrowed: the bytes of the spans must live as long as the lines.
 * Lengths are points; widths inside lines are thousandths of the size ("mils"),
 * whole numbers, so that breaks are the same on every machine. */
#ifndef PAGE_PARA_H
#define PAGE_PARA_H

#include "base/arena.h"
#include "base/text.h"
#include "draw/canvas.h"
#include "draw/face.h"

/* Further span styles, known to this room only.
 * SPAN_PAGE_REF: the span's text is the name of a place (see flow_mark), and the
 * number of its page is set instead, known only when pages are emitted. Room for
 * PAGE_REF_DIGITS digits is kept when lines are broken; a shorter number closes up.
 * The number is fleeting (not part of a revision mark) and links to the place.
 * SPAN_FLEETING: drawn as fleeting content, otherwise plain text.
 * SPAN_OTHER: in the other language of the document; looks like any text. */
enum { SPAN_PAGE_REF = 16, SPAN_FLEETING = 32, SPAN_OTHER = 64, PAGE_REF_DIGITS = 4 };

enum align { ALIGN_LEFT, ALIGN_CENTER, ALIGN_RIGHT };

/* How a text is set. Zero is a valid value for all but the size. */
struct type {
	double size_pt;
	double lead_pt;          /* baseline to baseline; 0: 1.25 x size. Ascent + descent
	                          * of the tallest face if that is more */
	unsigned style;          /* span_style bits added to every span: SPAN_BOLD */
	enum align align;
};

struct advances;

/* What every maker of lines and blocks needs: where results live, and metrics.
 * Cheap to copy; a copy with another arena serves scratch work. */
struct setter {
	struct arena *arena;
	const struct faces *faces;
	const struct advances *advances; /* common advances at hand; shared by copies */
};

struct setter setter_new(struct arena *a, const struct faces *faces);

/* What drawing needs: the canvas, and who knows pages. A pen with only a canvas is
 * valid: page references then print "?". */
struct pen {
	struct canvas *canvas;
	/* The printed number of the page where a place is; 0: unknown. */
	unsigned (*page_of)(const void *user, str place);
	/* Whether the place is in this document, to be linked to; null: no links. */
	bool (*is_here)(const void *user, str place);
	const void *user;
	bool other;              /* what is drawn stands in an element of the other language */
};

/* One call of canvas_text. For a page reference, text is the name of the place. */
struct text_run {
	str text;
	uint32_t width_mils;
	uint8_t face;            /* enum face_id */
	bool page_ref, fleeting, other;
};

struct text_line {
	uint32_t first_run;      /* runs [first_run, first_run of the next line) */
	uint32_t width_mils;
};

/* A broken paragraph. v has n + 1 lines; the last only ends the runs. */
struct lines {
	const struct text_line *v;
	size_t n;
	const struct text_run *runs;
	const struct advances *advances;
	bool other;              /* all of it in the other language */
	double width_pt;         /* as given to para_break */
	double size_pt, lead_pt;
	double rise_pt;          /* from the top of a line to its baseline */
	enum align align;
};

/* Breaks spans for a width. No text gives no lines. A width too small for one
 * character gives one character a line. */
const struct lines *para_break(const struct setter *s, const struct span *spans, size_t n,
    const struct type *type, double width_pt);
/* The same for one plain text; newlines count as blanks. */
const struct lines *para_break_plain(const struct setter *s, str text,
    const struct type *type, double width_pt);

/* The distance of baselines that a type comes to. */
double para_lead_pt(const struct setter *s, const struct type *type);

double para_height_pt(const struct lines *l);
/* Width of the widest line. */
double para_width_pt(const struct lines *l);
/* Begins the element that all of l stands in, or goes on with it on another page, and
 * returns the pen for what is in it. */
struct pen para_tag_begin(const struct lines *l, const struct pen *pen, enum tag tag,
    bool first);
/* Draws all lines, or lines [from, to), with the top left corner of the first at `at`,
 * inside a canvas box of the paragraph's width. No tag but for words of the other
 * language among those of the document's. */
void para_draw(const struct lines *l, const struct pen *pen, pt at);
void para_draw_part(const struct lines *l, const struct pen *pen, pt at, size_t from,
    size_t to);

/* Widths of a text if it is never broken (but for SPAN_BREAK), and of its widest
 * piece that only an emergency would break. */
struct text_widths { double natural_pt, least_pt; };
struct text_widths para_widths(const struct setter *s, const struct span *spans, size_t n,
    const struct type *type);

/* One line of plain text, never broken, e.g. in furniture: width, and drawing with the
 * baseline at `at`. ALIGN_RIGHT ends at `at`, ALIGN_CENTER is centered on it. */
double plain_width_pt(const struct setter *s, str text, const struct type *type);
/* text when it is at most width_pt wide; else as much of its beginning as fits with
 * three dots after it, in the setter's arena. */
str plain_cut(const struct setter *s, str text, const struct type *type, double width_pt);
void plain_draw(const struct setter *s, struct canvas *c, str text,
    const struct type *type, pt at);

#endif
