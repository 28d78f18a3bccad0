/* page/flow.h - blocks onto pages.
 *
 * Add blocks one after another; flow_end; then flow_emit draws all pages, as often as
 * wanted. Pages are placed first and drawn later, so that furniture knows the number of
 * pages and texts can name pages that come after them.
 *
 * A page break falls at the last place that is least to be avoided (enum hold): never
 * after a heading, with two lines of a paragraph on each side, not inside what is to be
 * kept whole, if any other place will do.
 *
 * Page numbers are from 1, odd pages are right-hand pages, bound at the left. */
#ifndef PAGE_FLOW_H
#define PAGE_FLOW_H

#include "page/block.h"

#define LETTER_WIDTH_PT 612.0  /* 8-1/2 x 11 in */
#define LETTER_HEIGHT_PT 792.0
#define A4_WIDTH_PT MM_PT(210) /* ISO 216 */
#define A4_HEIGHT_PT MM_PT(297)

#define SECTION_NONE UINT32_MAX

/* Where a page is in its document; for furniture. */
struct page_place {
	unsigned page, pages;
	uint32_t section;        /* that the page's first block belongs to; a blank page
	                          * belongs to the section before it. Or SECTION_NONE */
	str section_id;
	unsigned section_page, section_pages; /* within it; 0 of 0 without a section;
	                          * page 0 on a blank page, which is not counted */
	bool right_hand, blank;
	rect sheet, body;        /* whole page; where blocks stand */
};

struct flow_spec {
	double page_width_pt, page_height_pt;
	double top_pt, bottom_pt; /* margins, furniture included */
	double inner_pt;         /* margin at the bound side, for punching: MM_PT(25) */
	double outer_pt;
	bool one_sided;          /* every page is bound at the left */
	bool thrifty;            /* a last page with little on it, before a break or the end,
	                          * is saved by less space between blocks, or by tables cut
	                          * that were to be kept whole; else it gets some lines more
	                          * from the page before */
	str blank_note;          /* empty: "This page is left blank on purpose" */
	struct type blank_type;  /* size 0: 12 pt */
	/* Draws what stands around the body, once for each page; may be null. It runs
	 * inside an artifact tag, tags nothing itself, and is no part of a section's
	 * content. */
	void (*furniture)(void *user, struct canvas *c, const struct page_place *place);
	void *user;
	/* Asked for places that this flow does not have (another document's pages);
	 * 0: unknown. May be null. */
	unsigned (*page_elsewhere)(const void *user, str place);
};

struct flow;

/* Lives in the arena of the setter, which is copied, as is the spec. */
struct flow *flow_new(const struct setter *s, const struct flow_spec *spec);

/* Size of the body, the same on all pages. */
double flow_width_pt(const struct flow *f);
double flow_height_pt(const struct flow *f);

void flow_add(struct flow *f, struct block *b);
void flow_add_all(struct flow *f, struct block *const *v, size_t n);

enum flow_start {
	START_HERE,              /* no break */
	START_PAGE,              /* on a new page, unless nothing is on this one */
	START_RIGHT              /* on a right-hand page, after a blank one if need be */
};

void flow_break(struct flow *f, enum flow_start start);

/* Starts a section; what follows belongs to it. Returns its number, from 0. The id is
 * also the name of a place. */
uint32_t flow_section(struct flow *f, str id, enum flow_start start);

/* Names the place where the next block starts, for page references and links. A name
 * given twice keeps its first place. outline: entry of the document's outline at that
 * depth (0..), or empty for none. */
void flow_mark(struct flow *f, str place, str outline, int depth);

/* Starts page labels at the next block: "i", "ii"; "SM-04 1". */
void flow_label(struct flow *f, enum label_style style, str prefix, unsigned first);

/* Places what is pending. No block may be added afterwards. */
void flow_end(struct flow *f);

/* All after flow_end. */
unsigned flow_pages(const struct flow *f);
/* The page of a section id or marked place; 0: no such place here. */
unsigned flow_page_of(const struct flow *f, str place);
/* First and last page of a section, a blank page behind it not counted. */
void flow_section_pages(const struct flow *f, uint32_t section, unsigned *first,
    unsigned *last);
/* Parts taller than the body, which stick out at the foot: blocks that cannot be cut. */
unsigned flow_overfull(const struct flow *f);

void flow_emit(const struct flow *f, struct canvas *c);
/* Draws one section's content alone, without furniture, as if it began on page 1; marks,
 * labels and outline left out. For digests. */
void flow_emit_section(const struct flow *f, uint32_t section, struct canvas *c);

#endif
