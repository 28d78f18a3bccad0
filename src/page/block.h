/* page/block.h - what pages are filled with: text, list items, boxes, pictures.
 *
 * A block is laid out for its width when it is made and then has a height; it has no
 * place. It is cut, if at all, between strips (lines, rows). A flow places blocks on
 * pages (page/flow.h); frames and columns hold blocks of their own.
 * Makers never fail; results live in the arena of the setter; texts are borrowed.
 * Until a block is added to a flow, frame or column its maker may change the fields
 * marked "free". */
#ifndef PAGE_BLOCK_H
#define PAGE_BLOCK_H

#include "page/para.h"

#define MM_PT(mm) ((mm) * 72.0 / 25.4)
#define GLOVE_PT MM_PT(10) /* least box and line pitch for pencils in gloves (10 mm;
                            * common practice, no source) */
#define RULE_PT 1.0        /* 0.35 mm: survives a second photocopy (common practice,
                            * no source) */

/* How much a page break after a strip is to be avoided. */
enum hold { HOLD_FREE, HOLD_AVOID, HOLD_STRONG, HOLD_NEVER };

struct strip {
	float height_pt;
	uint8_t hold;            /* enum hold; not used for the last strip of a block */
};

struct block;

/* The part of a block that stands on one page. height_pt: the strips' heights, the
 * repeated head when from > 0, and what a filling block was given. */
struct part {
	size_t from, to;
	double height_pt;
};

struct block {
	void (*draw)(const struct block *b, const struct pen *pen, pt at,
	    struct part part);
	double width_pt, height_pt;
	const struct strip *strips; /* null: one strip of height_pt */
	uint32_t nstrips;
	double repeat_pt;        /* height of a head repeated on top of later parts */
	bool list_item;          /* neighbors that have it share one LIST tag */
	/* free */
	double before_pt, after_pt; /* blank space; the larger of two meeting counts, and
	                          * none at the top of a page */
	double indent_pt;        /* from the left edge of the body; width_pt is the
	                          * block's own */
	bool keep_next;          /* never last on a page */
	bool keep_soft;          /* keep_next gives way before that of others, and where it would
	                          * leave a page of a thrifty flow half blank */
	bool keep_whole;         /* not cut when it fits on one page */
	bool fleeting;           /* not part of a revision mark */
	bool other;              /* the words of a picture are in the other language */
	bool fill;               /* takes the height left over on its page */
};

/* Draws a whole block, tags and all, for use outside a flow. */
void block_draw(const struct block *b, const struct pen *pen, pt at);

/* ---- text ---- */

/* tag: TAG_P or TAG_H1..TAG_H3. A heading keeps with the next block. At least two lines
 * stand on each side of a page break. */
struct block *block_text(const struct setter *s, const struct span *spans, size_t n,
    const struct type *type, enum tag tag, double width_pt);
struct block *block_plain(const struct setter *s, str text, const struct type *type,
    enum tag tag, double width_pt);

/* A box at the right of an item, its caption on its left: initials, checks. */
struct side_box {
	double width_pt, height_pt;
	str caption;             /* in the document's language; may be empty */
};

enum item_mark {
	MARK_NONE, MARK_BULLET,
	MARK_NUMBER,             /* `number` and a full stop */
	MARK_CHECK               /* an empty square of GLOVE_PT */
};

struct item_spec {
	enum item_mark mark;
	uint32_t number;
	double hang_pt;          /* from the left edge to the text; 0: fits the mark */
	const struct side_box *boxes; /* from left to right; an item with boxes is whole,
	                               * but for one of a third of a page and more */
	size_t nboxes;
};

struct block *block_item(const struct setter *s, const struct item_spec *spec,
    const struct span *spans, size_t n, const struct type *type, double width_pt);

/* Blocks for a whole prose, one for each paragraph, in order, with `type`, bullets and
 * steps hanging, and gap_pt between them. Returns p.n blocks. */
struct block **block_prose(const struct setter *s, const struct prose *p,
    const struct type *type, double gap_pt, double width_pt);

/* ---- places to write ---- */

/* A label, a line to write on, and a unit after it. */
struct blank {
	str label, unit;         /* either may be empty */
	double width_pt;         /* of the line; 0: an equal share of what is left */
};

/* Labelled blanks side by side; those that do not fit go to further rows. Each row is
 * row_pt high (0: GLOVE_PT). */
struct block *block_blanks(const struct setter *s, const struct blank *v, size_t n,
    const struct type *type, double row_pt, double width_pt);

/* An empty square, GLOVE_PT wide, and a short text at its right on one line or more. */
struct block *block_check(const struct setter *s, str label, const struct type *type,
    double width_pt);

/* Ruled lines GLOVE_PT apart over height_pt; with fill, over the rest of the page but at
 * least height_pt. */
struct block *block_ruled(const struct setter *s, double height_pt, bool fill,
    double width_pt);

/* ---- the rest ---- */

/* Nothing, height_pt high; with fill it pushes what follows to the foot of the page. */
struct block *block_space(const struct setter *s, double height_pt, bool fill);

/* area: where the picture has to stay. */
typedef void draw_picture(void *user, struct canvas *c, rect area);

/* A picture of given size, tagged as a figure; alt says in words what it shows. draw is
 * called once, with the corner of area at the origin; what it drew is then drawn at each
 * place from its recording. */
struct block *block_picture(const struct setter *s, draw_picture *draw, void *user,
    str alt, double height_pt, double width_pt);

/* Blocks under one another in a border. Their width must be block_frame_inner_pt.
 * stroke_pt 0: no border. Cut between its blocks' strips when it must be. */
struct block *block_frame(const struct setter *s, struct block *const *v, size_t n,
    double pad_pt, double stroke_pt, double width_pt);
double block_frame_inner_pt(double pad_pt, double stroke_pt, double width_pt);

/* Columns of blocks side by side, gap_pt apart, kept whole. */
struct block_column {
	struct block *const *v;
	size_t n;
	double width_pt;
};
struct block *block_columns(const struct setter *s, const struct block_column *v,
    size_t n, double gap_pt);

/* Height of blocks under one another, spaces between them counted. */
double block_stack_height_pt(struct block *const *v, size_t n);

#endif
