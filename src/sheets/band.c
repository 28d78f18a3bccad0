#include "sheets/band.h"

#include "sheets/sheet.h"

/* The band on top holds two lines, the foot one. What stands at the right of the band,
 * a mark or "page 1234 of 5678", is less than RIGHT_PT wide. */
enum { BAND_PT = 74, FOOT_PT = 54, TOP_PT = 30, RIGHT_PT = 125, BIG_PT = 24 };

double band_drop_pt(double big_pt)
{
	return big_pt > BIG_PT ? big_pt - BIG_PT : 0;
}

struct flow_spec band_flow_spec(bool a4)
{
	return (struct flow_spec){
		.page_width_pt = a4 ? A4_WIDTH_PT : LETTER_WIDTH_PT,
		.page_height_pt = a4 ? A4_HEIGHT_PT : LETTER_HEIGHT_PT,
		.top_pt = TOP_PT + BAND_PT - 16, .bottom_pt = FOOT_PT + 8,
		.inner_pt = MM_PT(25), .outer_pt = MM_PT(13),
	};
}

static void draw_left(const struct setter *s, struct canvas *c, const struct page_place *p,
    const struct band *b)
{
	const struct type id = { .size_pt = b->big_pt > BIG_PT ? b->big_pt : BIG_PT,
		.style = SPAN_BOLD };
	double y = p->sheet.y + TOP_PT + band_drop_pt(b->big_pt), width_pt = p->body.w - RIGHT_PT;

	plain_draw(s, c, plain_cut(s, b->big, &id, width_pt), &id, (pt){ p->body.x, y + 22 });
	plain_draw(s, c, plain_cut(s, b->line, &TYPE_BODY, width_pt), &TYPE_BODY,
	    (pt){ p->body.x, y + 40 });
}

static void draw_right(const struct setter *s, struct canvas *c, const struct page_place *p,
    const struct band *b)
{
	const struct type right = { .size_pt = 12, .align = ALIGN_RIGHT };
	const struct type mono = { .size_pt = 13, .style = SPAN_BOLD | SPAN_CODE,
		.align = ALIGN_RIGHT };
	double x = p->body.x + p->body.w, y = p->sheet.y + TOP_PT + band_drop_pt(b->big_pt);

	/* Beside a large id the mark stands on its line. */
	if (b->mark.n)
		plain_draw(s, c, b->mark, &mono, (pt){ x, y + (b->big_pt > BIG_PT ? 22 : 12) });
	plain_draw(s, c, str_format(s->arena, "page %u of %u", p->page, p->pages), &right,
	    (pt){ x, y + 40 });
}

void band_draw(const struct setter *s, struct canvas *c, const struct page_place *p,
    const struct band *b)
{
	const struct type draft = { .size_pt = 24, .style = SPAN_BOLD, .align = ALIGN_CENTER };
	double left = p->body.x, right = p->body.x + p->body.w;
	double rule_y = p->sheet.y + TOP_PT + BAND_PT - 28 + band_drop_pt(b->big_pt);
	double foot_y = p->sheet.y + p->sheet.h - FOOT_PT + 14;

	draw_left(s, c, p, b);
	draw_right(s, c, p, b);
	canvas_line(c, (pt){ left, rule_y }, (pt){ right, rule_y }, 1.5);
	if (b->draft)
		plain_draw(s, c, STR("DRAFT"), &draft,
		    (pt){ left + p->body.w / 2, p->sheet.y + TOP_PT + 22 });
	canvas_line(c, (pt){ left, foot_y }, (pt){ right, foot_y }, 0.75);
	plain_draw(s, c, plain_cut(s, b->foot, &TYPE_BODY, p->body.w), &TYPE_BODY,
	    (pt){ left, foot_y + 15 });
}

str band_facts(struct arena *a, const struct model *m, const struct order *o,
    uint32_t assignment)
{
	const struct assignment *x = &m->assignments[assignment];
	uint32_t slot = o->places[assignment].slot;
	struct buf t = { .arena = a };

	if (slot != NONE)
		buf_addf(&t, "%.*s, ", STR_ARG(m->courses[m->slots[slot].course].id));
	buf_add(&t, place_text(a, o, assignment));
	if (x->kind < KIND_COUNT)
		buf_addf(&t, "; %.*s", STR_ARG(kind_word(x->kind)));
	buf_addf(&t, "; %.*s", STR_ARG(hours_text(a, x->hours)));
	if (slot != NONE && m->slots[slot].optional)
		buf_adds(&t, "; optional");
	return buf_str(&t);
}
