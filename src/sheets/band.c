#include "sheets/band.h"

#include "sheets/sheet.h"

/* The band on top holds the id with mark and page beside it and a line under them, in
 * large print up to two lines; the foot one. Points of normal print, but for TOP_PT and
 * FOOT_PT, which keep the ink on the paper. RIGHT_PT: more than a mark or
 * "page 1234 of 5678" takes. */
#define TOP_PT 30.0
#define FOOT_PT 25.0
#define ID_PT 24.0
#define ID_DOWN_PT 22.0
#define LINE_DOWN_PT 40.0
#define RULE_DOWN_PT 46.0
#define FOOT_HIGH_PT 15.0
#define RIGHT_PT 125.0
#define CLEAR_TOP_PT 12.0
#define CLEAR_FOOT_PT 22.0

static double id_pt(const struct edition *e, double big_pt)
{
	double usual = ID_PT * e->zoom;

	return big_pt > usual ? big_pt : usual;
}

double band_drop_pt(const struct edition *e, double big_pt)
{
	return id_pt(e, big_pt) - ID_PT * e->zoom;
}

/* What a second line under the id takes. */
static double more_lines_pt(const struct edition *e)
{
	return e->choice.large ? e->body.size_pt * 1.25 : 0;
}

static double rule_down_pt(const struct edition *e)
{
	return TOP_PT + RULE_DOWN_PT * e->zoom + more_lines_pt(e);
}

struct flow_spec band_flow_spec(const struct edition *e)
{
	return (struct flow_spec){
		.page_width_pt = e->choice.a4 ? A4_WIDTH_PT : LETTER_WIDTH_PT,
		.page_height_pt = e->choice.a4 ? A4_HEIGHT_PT : LETTER_HEIGHT_PT,
		.top_pt = rule_down_pt(e) + CLEAR_TOP_PT,
		.bottom_pt = FOOT_PT + FOOT_HIGH_PT * e->zoom + CLEAR_FOOT_PT,
		.inner_pt = MM_PT(25), .outer_pt = MM_PT(13), .blank_type = e->body,
		.thrifty = true,
	};
}

/* Where things stand on one page. */
struct band_place {
	const struct setter *s;
	const struct edition *e;
	const struct page_place *page;
	double y, right_pt;      /* y: top of the band, moved down for a big id */
};

static void draw_line(const struct band_place *k, struct canvas *c, str line)
{
	const struct type *type = &k->e->body;
	const struct pen pen = { .canvas = c };
	double x = k->page->body.x, y = k->y + LINE_DOWN_PT * k->e->zoom;
	const struct lines *l;

	if (!k->e->choice.large) {
		plain_draw(k->s, c, plain_cut(k->s, line, type, k->page->body.w - k->right_pt),
		    type, (pt){ x, y });
		return;
	}
	l = para_break_plain(k->s, line, type, k->page->body.w);
	para_draw_part(l, &pen, (pt){ x, y - l->rise_pt }, 0, l->n < 2 ? l->n : 2);
}

static void draw_left(const struct band_place *k, struct canvas *c, const struct band *b)
{
	const struct type id = { .size_pt = id_pt(k->e, b->big_pt), .style = SPAN_BOLD };

	plain_draw(k->s, c, plain_cut(k->s, b->big, &id, k->page->body.w - k->right_pt), &id,
	    (pt){ k->page->body.x, k->y + ID_DOWN_PT * k->e->zoom });
	draw_line(k, c, b->line);
}

/* In normal print the page stands beside the line, in large print, where that takes the
 * whole width, under the mark. */
static void draw_right(const struct band_place *k, struct canvas *c, const struct band *b)
{
	const struct edition *e = k->e;
	const struct type right = edition_type(e, 12, 0, ALIGN_RIGHT);
	const struct type mono = edition_type(e, 13, SPAN_BOLD | SPAN_CODE, ALIGN_RIGHT);
	double x = k->page->body.x + k->page->body.w;
	bool beside = band_drop_pt(e, b->big_pt) > 0 && !e->choice.large;

	/* Beside a large id the mark stands on its line. */
	if (b->mark.n)
		plain_draw(k->s, c, b->mark, &mono, (pt){ x, k->y + (beside ? 22 : 12) * e->zoom });
	plain_draw(k->s, c, word_format(k->s->arena, edition_language(e), "page %u of %u",
	    k->page->page, k->page->pages), &right,
	    (pt){ x, k->y + (e->choice.large ? 27 : LINE_DOWN_PT) * e->zoom });
}

/* The program, and at the right the mark of a translation. */
static void draw_foot(const struct band_place *k, struct canvas *c, const struct band *b,
    double y)
{
	const struct edition *e = k->e;
	const struct type mono = edition_type(e, 12, SPAN_CODE, ALIGN_RIGHT);
	double wide = k->page->body.w, left = k->page->body.x;
	double right_pt = b->said_mark.n ? plain_width_pt(k->s, b->said_mark, &mono) + 12 : 0;

	plain_draw(k->s, c, plain_cut(k->s, b->foot, &e->body, wide - right_pt), &e->body,
	    (pt){ left, y });
	if (b->said_mark.n)
		plain_draw(k->s, c, b->said_mark, &mono, (pt){ left + wide, y });
}

void band_draw(const struct setter *s, const struct edition *e, struct canvas *c,
    const struct page_place *p, const struct band *b)
{
	const struct type draft = edition_type(e, ID_PT, SPAN_BOLD, ALIGN_CENTER);
	const struct band_place k = { s, e, p, p->sheet.y + TOP_PT + band_drop_pt(e, b->big_pt),
		RIGHT_PT * e->zoom };
	double left = p->body.x, right = p->body.x + p->body.w;
	double rule_y = p->sheet.y + rule_down_pt(e) + band_drop_pt(e, b->big_pt);
	double foot_y = p->sheet.y + p->sheet.h - FOOT_PT - FOOT_HIGH_PT * e->zoom;

	draw_left(&k, c, b);
	draw_right(&k, c, b);
	canvas_line(c, (pt){ left, rule_y }, (pt){ right, rule_y }, 1.5);
	if (b->draft)
		plain_draw(s, c, word(edition_language(e), "DRAFT"), &draft,
		    (pt){ left + p->body.w / 2, p->sheet.y + TOP_PT + ID_DOWN_PT * e->zoom });
	canvas_line(c, (pt){ left, foot_y }, (pt){ right, foot_y }, RULE_PT);
	draw_foot(&k, c, b, foot_y + FOOT_HIGH_PT * e->zoom);
}

str band_facts(struct arena *a, const struct edition *e, const struct model *m,
    const struct order *o, uint32_t assignment)
{
	const struct assignment *x = &m->assignments[assignment];
	uint32_t slot = o->places[assignment].slot;
	struct buf t = { .arena = a };

	if (slot != NONE)
		buf_addf(&t, "%.*s, ", STR_ARG(m->courses[m->slots[slot].course].id));
	buf_add(&t, place_text(a, e, o, assignment));
	if (x->kind < KIND_COUNT)
		buf_addf(&t, "; %.*s", STR_ARG(edition_word(e, kind_word(x->kind))));
	buf_addf(&t, "; %.*s", STR_ARG(hours_text(a, e, x->hours)));
	if (slot != NONE && m->slots[slot].optional)
		buf_add(&t, word(edition_language(e), "; optional"));
	return buf_str(&t);
}
