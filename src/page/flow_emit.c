#include "page/flow_set.h"

#include <assert.h>

/* One drawing of a flow, or of a section of it. */
struct emission {
	const struct flow *f;
	struct pen pen;
	bool list_open, section_open;
	bool marks;              /* places, labels and outline are drawn too */
};

static unsigned emit_page_of(const void *user, str place)
{
	const struct flow *f = user;
	unsigned page = flow_page_of(f, place);

	if (page == 0 && f->spec.page_elsewhere)
		return f->spec.page_elsewhere(f->spec.user, place);
	return page;
}

static bool emit_is_here(const void *user, str place)
{
	return flow_page_of(user, place) != 0;
}

static rect page_body(const struct flow *f, unsigned page)
{
	bool right_hand = page % 2 == 1 || f->spec.one_sided;
	double left = right_hand ? f->spec.inner_pt : f->spec.outer_pt;

	return (rect){ left, f->spec.top_pt, f->width_pt, f->height_pt };
}

static struct page_place page_place(const struct flow *f, unsigned page)
{
	const struct flow_page *p = &f->pages[page - 1];
	struct page_place place = {
		.page = page,
		.pages = (unsigned)f->npages,
		.section = p->section,
		.right_hand = page % 2 == 1 || f->spec.one_sided,
		.blank = p->blank,
		.sheet = { 0, 0, f->spec.page_width_pt, f->spec.page_height_pt },
		.body = page_body(f, page),
	};

	if (p->section == SECTION_NONE)
		return place;
	const struct flow_section *s = &f->sections[p->section];

	place.section_id = s->id;
	place.section_page = p->blank ? 0 : page - s->first + 1;
	place.section_pages = s->last - s->first + 1;
	return place;
}

static void emit_blank_note(const struct emission *e, rect body)
{
	struct type type = e->f->spec.blank_type;
	pt center = { body.x + body.w / 2, body.y + body.h / 2 };

	type.align = ALIGN_CENTER;
	plain_draw(&e->f->s, e->pen.canvas, e->f->spec.blank_note, &type, center);
}

static void emit_furniture(const struct emission *e, unsigned page)
{
	struct page_place place = page_place(e->f, page);

	if (!e->f->spec.furniture && !place.blank)
		return;
	canvas_tag_begin(e->pen.canvas, TAG_ARTIFACT, STR(""));
	if (e->f->spec.furniture)
		e->f->spec.furniture(e->f->spec.user, e->pen.canvas, &place);
	if (place.blank)
		emit_blank_note(e, place.body);
	canvas_tag_end(e->pen.canvas);
}

static void close_section(struct emission *e)
{
	list_close(&e->pen, &e->list_open);
	if (e->section_open)
		canvas_tag_end(e->pen.canvas);
	e->section_open = false;
}

static void emit_mark(struct emission *e, const struct flow_mark *m, pt at)
{
	struct canvas *c = e->pen.canvas;

	if (m->kind == MARK_SECTION) {
		close_section(e);
		canvas_tag_begin(c, TAG_SECTION, STR(""));
		e->section_open = true;
	}
	if (!e->marks)
		return;
	if (m->kind == MARK_LABEL) {
		canvas_label(c, m->style, m->place, m->first);
		return;
	}
	if (!m->known_before)
		canvas_dest(c, m->place, at);
	if (m->outline.n > 0)
		canvas_outline(c, m->depth, m->outline, m->place);
}

/* Draws placed things [from, to), which stand on one page. */
static void emit_placed(struct emission *e, size_t from, size_t to, rect body)
{
	for (size_t i = from; i < to; i++) {
		const struct placed *p = &e->f->placed[i];
		pt at = { body.x, body.y + p->top_pt };

		if (!p->b) {
			emit_mark(e, &e->f->marks[p->from], at);
			continue;
		}
		at.x += p->b->indent_pt;
		block_draw_part(p->b, &e->pen, at,
		    (struct part){ p->from, p->to, p->height_pt }, &e->list_open);
	}
}

/* End of what is placed on a page, or up to a section. */
static size_t placed_end(const struct flow *f, size_t page)
{
	return page < f->npages ? f->pages[page].first_placed : f->nplaced;
}

void flow_emit(const struct flow *f, struct canvas *c)
{
	struct emission e = {
		.f = f,
		.pen = { c, emit_page_of, emit_is_here, f },
		.marks = true,
	};

	assert(f->ended);
	for (size_t i = 0; i < f->npages; i++) {
		unsigned page = (unsigned)i + 1;

		canvas_page_begin(c, f->spec.page_width_pt, f->spec.page_height_pt);
		emit_furniture(&e, page);
		emit_placed(&e, f->pages[i].first_placed, placed_end(f, i + 1),
		    page_body(f, page));
		if (page == f->npages)
			close_section(&e);
		canvas_page_end(c);
	}
}

static size_t section_end(const struct flow *f, uint32_t section)
{
	for (size_t i = (size_t)section + 1; i < f->nsections; i++)
		if (f->sections[i].first > 0)
			return f->sections[i].first_placed;
	return f->nplaced;
}

void flow_emit_section(const struct flow *f, uint32_t section, struct canvas *c)
{
	struct emission e = { .f = f, .pen = { .canvas = c } };

	assert(f->ended && section < f->nsections);
	const struct flow_section *s = &f->sections[section];
	size_t end = section_end(f, section);

	for (unsigned page = s->first; page > 0 && page <= s->last; page++) {
		size_t from = f->pages[page - 1].first_placed, to = placed_end(f, page);

		from = from > s->first_placed ? from : s->first_placed;
		to = to < end ? to : end;
		canvas_page_begin(c, f->spec.page_width_pt, f->spec.page_height_pt);
		emit_placed(&e, from, to, page_body(f, page - s->first + 1));
		if (page == s->last)
			close_section(&e);
		canvas_page_end(c);
	}
}
