/* page/flow_set.h - a flow from the inside; for this room only. */
#ifndef PAGE_FLOW_SET_H
#define PAGE_FLOW_SET_H

#include "base/map.h"
#include "page/flow.h"
#include "page/part.h"

enum mark_kind { MARK_PLACE, MARK_SECTION, MARK_LABEL };

/* Something without ink that stands before the next block. */
struct flow_mark {
	enum mark_kind kind;
	bool known_before;       /* the name was given to an earlier place */
	str place;               /* name; of a label, the prefix */
	str outline;
	int depth;
	uint32_t section;
	enum label_style style;
	unsigned first;
};

/* One strip of a block, or a mark, waiting for a page. */
struct slot {
	const struct block *b;   /* null: a mark */
	uint32_t strip;          /* or number of the mark */
};

/* A part of a block, or a mark, on a page. */
struct placed {
	const struct block *b;   /* null: a mark */
	uint32_t from, to;       /* strips; from: number of the mark */
	double top_pt, height_pt; /* from the top of the body */
};

struct flow_page {
	size_t first_placed;
	uint32_t section;
	bool blank;
};

struct flow_section {
	str id;
	unsigned first, last;    /* pages; 0: not placed */
	size_t first_placed;
};

/* How a run of pages, from one break to the next, is laid out so that its last page is
 * worth its paper. All zero: as the blocks say. */
struct flow_fit {
	double tighter;          /* share taken off the space between blocks */
	bool cut;                /* what is to be kept whole is cut like the rest */
	bool part;               /* what is softly kept together parts */
	bool bare;               /* what fills pages has no height of its own */
	unsigned early_page;     /* this page, from 1, ends early... */
	double early_pt;         /* ...by so much; what follows has company then */
};

struct flow {
	struct setter s;
	struct flow_spec spec;
	double width_pt, height_pt; /* of the body */
	struct slot *slots;      /* pending from head on */
	size_t nslots, slots_cap, head;
	struct flow_mark *marks;
	size_t nmarks, marks_cap;
	struct placed *placed;
	size_t nplaced, placed_cap;
	struct flow_page *pages;
	size_t npages, pages_cap;
	struct flow_section *sections;
	size_t nsections, sections_cap;
	struct map *places;      /* name to page number */
	uint32_t section;        /* that the next thing placed belongs to */
	unsigned overfull;
	bool ended;
	struct flow_fit fit;     /* of the pages being placed */
	unsigned run_page;       /* pages placed since the last break */
};

/* Where adding up heights leaves off. */
struct walk {
	double y_pt;
	const struct block *above; /* null at the top */
};

void walk_over(const struct flow *f, struct walk *w, const struct slot *s);
/* How many pending slots make the next page, or 0 when they do not fill one. */
size_t flow_page_slots(const struct flow *f);
/* Pending slots up to the last that is no mark: marks belong to the block after them. */
size_t flow_content_slots(const struct flow *f);
/* The fit for all that is pending; f itself is not changed. */
struct flow_fit flow_fit_find(const struct flow *f);

#endif
