#include "page/flow.h"

#include "page/flow_set.h"

#include <assert.h>
#include <string.h>

/* What adding up heights may be off by. */
static const double slack_pt = 0.01;

/* Pages less full than this have a table cut for them, or drawings parted; that is to fill
 * at least so much more of them (common practice, no source). */
#define CUT_BELOW 0.66
#define PART_BELOW 0.5
/* What is lower than this is never cut when it is to be kept whole. */
#define SMALL_SHARE 0.33
#define GAINED_SHARE 0.12

struct flow *flow_new(const struct setter *s, const struct flow_spec *spec)
{
	struct flow *f = arena_alloc(s->arena, sizeof *f);

	f->s = *s;
	f->spec = *spec;
	f->width_pt = spec->page_width_pt - spec->inner_pt - spec->outer_pt;
	f->height_pt = spec->page_height_pt - spec->top_pt - spec->bottom_pt;
	f->places = map_new(s->arena, false);
	f->section = SECTION_NONE;
	if (f->spec.blank_note.n == 0)
		f->spec.blank_note = STR("This page is left blank on purpose");
	if (!(f->spec.blank_type.size_pt > 0))
		f->spec.blank_type = (struct type){ .size_pt = 12 };
	assert(f->width_pt > 0 && f->height_pt > 0);
	return f;
}

double flow_width_pt(const struct flow *f)
{
	return f->width_pt;
}

double flow_height_pt(const struct flow *f)
{
	return f->height_pt;
}

/* ---- walking down a page ---- */

/* Space above a slot: what two blocks want between them, or a repeated head. */
static double space_above_pt(const struct flow *f, const struct walk *w, const struct slot *s)
{
	if (!w->above)
		return s->strip > 0 ? s->b->repeat_pt : 0;
	if (s->strip > 0)
		return 0; /* within a block */
	double after_pt = w->above->after_pt, before_pt = s->b->before_pt;

	return (after_pt > before_pt ? after_pt : before_pt) * (1 - f->fit.tighter);
}

static double strip_pt(const struct flow *f, const struct slot *s)
{
	return f->fit.bare && s->b->fill ? 0 : block_strip_pt(s->b, s->strip);
}

static double walk_end_pt(const struct flow *f, const struct walk *w, const struct slot *s)
{
	return w->y_pt + space_above_pt(f, w, s) + strip_pt(f, s);
}

void walk_over(const struct flow *f, struct walk *w, const struct slot *s)
{
	if (!s->b)
		return;
	w->y_pt = walk_end_pt(f, w, s);
	w->above = s->b;
}

/* ---- where a page ends ---- */

static enum hold slot_hold(const struct flow *f, const struct slot *s)
{
	if (!s->b)
		return HOLD_NEVER;
	enum hold hold = block_strip_hold(s->b, s->strip);
	bool inside = s->strip + 1 < s->b->nstrips;
	bool small = s->b->height_pt < f->height_pt * SMALL_SHARE;

	if (!inside && s->b->keep_soft && hold == HOLD_STRONG)
		return f->fit.part ? HOLD_FREE : HOLD_AVOID;
	if (hold == HOLD_FREE && inside && s->b->keep_whole && (small || !f->fit.cut) &&
	    s->b->height_pt <= f->height_pt + slack_pt)
		return HOLD_AVOID;
	return hold;
}

/* How many pending slots make a page, or 0 when they do not fill one yet; *used_pt: how
 * much of it they take. The break falls after the last slot with the least hold; a slot
 * taller than a page gets one. */
static size_t page_slots(const struct flow *f, double *used_pt)
{
	double early_pt = f->run_page + 1 == f->fit.early_page ? f->fit.early_pt : 0;
	double high_pt = f->height_pt - early_pt + slack_pt;
	struct walk w = { 0 };
	enum hold least = HOLD_NEVER;
	size_t end = f->head;

	for (size_t i = f->head; i < f->nslots; i++) {
		const struct slot *s = &f->slots[i];

		if (s->b && w.above && walk_end_pt(f, &w, s) > high_pt)
			return end - f->head;
		walk_over(f, &w, s);
		enum hold hold = slot_hold(f, s);

		if (hold <= least) {
			least = hold;
			end = i + 1;
			*used_pt = w.y_pt;
		}
	}
	return 0;
}

/* A page that a whole table would leave a third blank takes what it can of it, and one half
 * blank parts drawings that were to stand together. */
size_t flow_page_slots(const struct flow *f)
{
	struct flow cut = *f;
	double used_pt = 0, cut_pt = 0;
	size_t n = page_slots(f, &used_pt), more;

	if (n == 0 || !f->spec.thrifty || used_pt > f->height_pt * CUT_BELOW)
		return n;
	cut.fit.cut = true;
	cut.fit.part = used_pt < f->height_pt * PART_BELOW;
	more = page_slots(&cut, &cut_pt);
	return cut_pt > used_pt + f->height_pt * GAINED_SHARE ? more : n;
}

size_t flow_content_slots(const struct flow *f)
{
	size_t n = f->nslots;

	while (n > f->head && !f->slots[n - 1].b)
		n--;
	return n - f->head;
}

/* ---- placing ---- */

static void place_section(struct flow *f, uint32_t section)
{
	struct flow_section *s = &f->sections[section];

	f->section = section;
	s->first = s->last = (unsigned)f->npages;
	s->first_placed = f->nplaced;
}

/* Called with the page already there, so its number is the count of pages. */
static void place_mark(struct flow *f, uint32_t number, double top_pt)
{
	struct flow_mark *m = &f->marks[number];

	if (m->kind == MARK_SECTION)
		place_section(f, m->section);
	if (m->kind != MARK_LABEL) {
		m->known_before = m->place.n == 0 ||
		    map_find(f->places, m->place) != MAP_NONE;
		if (!m->known_before)
			map_add(f->places, m->place, (uint32_t)f->npages);
	}
	*ARENA_PUSH(f->s.arena, f->placed, f->nplaced, f->placed_cap) =
	    (struct placed){ .from = number, .top_pt = top_pt };
}

/* Adds a strip to the part placed last, or starts a part with it. */
static void place_strip(struct flow *f, const struct walk *w, const struct slot *s,
    bool joined)
{
	double h_pt = strip_pt(f, s);
	double top_pt = walk_end_pt(f, w, s) - h_pt;

	if (joined) {
		f->placed[f->nplaced - 1].to = s->strip + 1;
		f->placed[f->nplaced - 1].height_pt += h_pt;
		return;
	}
	if (!w->above && s->strip > 0) {
		top_pt -= s->b->repeat_pt;
		h_pt += s->b->repeat_pt;
	}
	*ARENA_PUSH(f->s.arena, f->placed, f->nplaced, f->placed_cap) =
	    (struct placed){ s->b, s->strip, s->strip + 1, top_pt, h_pt };
	if (f->section != SECTION_NONE)
		f->sections[f->section].last = (unsigned)f->npages;
}

static struct flow_page *page_push(struct flow *f, bool blank)
{
	struct flow_page *page;

	page = ARENA_PUSH(f->s.arena, f->pages, f->npages, f->pages_cap);
	page->first_placed = f->nplaced;
	page->section = f->section;
	page->blank = blank;
	return page;
}

/* What each filling block among n slots gets of the height that is left. */
static double fill_share_pt(const struct flow *f, size_t n)
{
	struct walk w = { 0 };
	size_t filling = 0;

	for (size_t i = f->head; i < f->head + n; i++) {
		const struct slot *s = &f->slots[i];

		walk_over(f, &w, s);
		filling += s->b && s->b->fill && s->strip + 1 == s->b->nstrips;
	}
	double left_pt = f->height_pt - w.y_pt;

	return filling > 0 && left_pt > 0 ? left_pt / (double)filling : 0;
}

/* The section that a page shows in its furniture: that of its first block. */
static void set_page_section(struct flow *f, size_t first_slot)
{
	struct flow_page *page = &f->pages[f->npages - 1];

	for (size_t i = first_slot; i < f->nslots && !f->slots[i].b; i++) {
		const struct flow_mark *m = &f->marks[f->slots[i].strip];

		if (m->kind == MARK_SECTION)
			page->section = m->section;
	}
}

/* Puts the first n pending slots on a new page. */
static void place_page(struct flow *f, size_t n)
{
	struct walk w = { 0 };
	double share_pt = fill_share_pt(f, n);

	page_push(f, false);
	set_page_section(f, f->head);
	for (size_t i = f->head; i < f->head + n; i++) {
		const struct slot *s = &f->slots[i];

		if (!s->b) {
			place_mark(f, s->strip, w.y_pt);
			continue;
		}
		place_strip(f, &w, s, w.above && s->strip > 0);
		walk_over(f, &w, s);
		if (!s->b->fill || s->strip + 1 < s->b->nstrips)
			continue;
		f->placed[f->nplaced - 1].height_pt += share_pt;
		w.y_pt += share_pt;
	}
	f->overfull += w.y_pt > f->height_pt + slack_pt;
	f->head += n;
	f->run_page++;
}

static void place_full(struct flow *f)
{
	for (size_t n = flow_page_slots(f); n > 0; n = flow_page_slots(f))
		place_page(f, n);
}

/* All that waits since the last break, on pages of its own. */
static void place_pending(struct flow *f)
{
	f->fit = flow_fit_find(f);
	f->run_page = 0;
	place_full(f);
	if (flow_content_slots(f) > 0)
		place_page(f, flow_content_slots(f));
	f->fit = (struct flow_fit){ 0 };
	/* Slots are given back; marks that still wait move to the front. */
	if (f->head)
		memmove(f->slots, f->slots + f->head, (f->nslots - f->head) * sizeof *f->slots);
	f->nslots -= f->head;
	f->head = 0;
}

/* ---- adding ---- */

static void push_slot(struct flow *f, const struct block *b, uint32_t strip)
{
	assert(!f->ended);
	*ARENA_PUSH(f->s.arena, f->slots, f->nslots, f->slots_cap) =
	    (struct slot){ b, strip };
}

void flow_add(struct flow *f, struct block *b)
{
	for (uint32_t i = 0; i < b->nstrips; i++)
		push_slot(f, b, i);
}

void flow_add_all(struct flow *f, struct block *const *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		flow_add(f, v[i]);
}

static void push_mark(struct flow *f, struct flow_mark mark)
{
	push_slot(f, NULL, (uint32_t)f->nmarks);
	*ARENA_PUSH(f->s.arena, f->marks, f->nmarks, f->marks_cap) = mark;
}

void flow_break(struct flow *f, enum flow_start start)
{
	if (start == START_HERE)
		return;
	place_pending(f);
	if (start == START_RIGHT && f->npages % 2 == 1)
		page_push(f, true);
}

uint32_t flow_section(struct flow *f, str id, enum flow_start start)
{
	uint32_t number = (uint32_t)f->nsections;

	flow_break(f, start);
	ARENA_PUSH(f->s.arena, f->sections, f->nsections, f->sections_cap)->id = id;
	push_mark(f, (struct flow_mark){ .kind = MARK_SECTION, .place = id,
	    .section = number });
	return number;
}

void flow_mark(struct flow *f, str place, str outline, int depth)
{
	assert(outline.n == 0 || place.n > 0);
	push_mark(f, (struct flow_mark){ .kind = MARK_PLACE, .place = place,
	    .outline = outline, .depth = depth });
}

void flow_label(struct flow *f, enum label_style style, str prefix, unsigned first)
{
	push_mark(f, (struct flow_mark){ .kind = MARK_LABEL, .place = prefix,
	    .style = style, .first = first });
}

/* Marks after the last block stand at the top of the last page that there is. */
void flow_end(struct flow *f)
{
	if (f->ended)
		return;
	place_pending(f);
	for (; f->head < f->nslots && f->npages > 0; f->head++)
		place_mark(f, f->slots[f->head].strip, 0);
	f->ended = true;
}

/* ---- asking ---- */

unsigned flow_pages(const struct flow *f)
{
	return (unsigned)f->npages;
}

unsigned flow_page_of(const struct flow *f, str place)
{
	uint32_t page = map_find(f->places, place);

	return page == MAP_NONE ? 0 : page;
}

void flow_section_pages(const struct flow *f, uint32_t section, unsigned *first,
    unsigned *last)
{
	*first = *last = 0;
	if (section >= f->nsections)
		return;
	*first = f->sections[section].first;
	*last = f->sections[section].last;
}

unsigned flow_overfull(const struct flow *f)
{
	return f->overfull;
}
