#include "page/para.h"

#include "base/buf.h"
#include "page/para_set.h"

/* A page number as digits; "?" when it is not known. */
static str page_digits(const struct pen *pen, str place, char digits[12])
{
	unsigned page = pen->page_of ? pen->page_of(pen->user, place) : 0;
	size_t i = 12;

	if (page == 0)
		return STR("?");
	for (; page > 0; page /= 10)
		digits[--i] = (char)('0' + page % 10);
	return (str){ digits + i, 12 - i };
}

/* Width of a run as it is drawn: a page number may be shorter than its room. */
static uint32_t run_mils(const struct lines *l, const struct pen *pen,
    const struct text_run *r)
{
	char digits[12];

	if (!r->page_ref)
		return r->width_mils;
	return measure_mils(l->advances, r->face, page_digits(pen, r->text, digits));
}

static void draw_run(const struct lines *l, const struct pen *pen, pt at,
    const struct text_run *r)
{
	struct canvas *c = pen->canvas;
	char digits[12];
	str text = r->page_ref ? page_digits(pen, r->text, digits) : r->text;

	if (r->page_ref || r->fleeting)
		canvas_fleeting_begin(c);
	canvas_text(c, at, (enum face_id)r->face, l->size_pt, text);
	if (r->page_ref && pen->is_here && pen->is_here(pen->user, r->text)) {
		double w = run_mils(l, pen, r) * l->size_pt / 1000;

		canvas_link(c, (rect){ at.x, at.y - l->rise_pt, w, l->lead_pt }, r->text);
	}
	if (r->page_ref || r->fleeting)
		canvas_fleeting_end(c);
}

static double line_left_pt(const struct lines *l, uint32_t mils)
{
	double slack_pt = l->width_pt - mils * l->size_pt / 1000;

	if (slack_pt < 0 || l->align == ALIGN_LEFT)
		return 0;
	return l->align == ALIGN_RIGHT ? slack_pt : slack_pt / 2;
}

/* Opens or closes the element of words in the other language as run r asks. */
static void turn_span(const struct pen *pen, bool other, bool *open)
{
	other &= !pen->other;
	if (*open && !other)
		canvas_tag_end(pen->canvas);
	if (other && !*open) {
		canvas_tag_begin(pen->canvas, TAG_SPAN, STR(""));
		canvas_tag_other(pen->canvas);
	}
	*open = other;
}

static void draw_line(const struct lines *l, const struct pen *pen, pt left, size_t i,
    bool *open)
{
	uint32_t mils = 0;

	for (uint32_t r = l->v[i].first_run; r < l->v[i + 1].first_run; r++)
		mils += run_mils(l, pen, &l->runs[r]);
	double x = left.x + line_left_pt(l, mils);

	mils = 0;
	for (uint32_t r = l->v[i].first_run; r < l->v[i + 1].first_run; r++) {
		pt at = { x + mils * l->size_pt / 1000, left.y };

		turn_span(pen, l->runs[r].other, open);
		draw_run(l, pen, at, &l->runs[r]);
		mils += run_mils(l, pen, &l->runs[r]);
	}
}

struct pen para_tag_begin(const struct lines *l, const struct pen *pen, enum tag tag,
    bool first)
{
	struct pen in = *pen;

	in.other = pen->other || l->other;
	if (first)
		canvas_tag_begin(pen->canvas, tag, STR(""));
	if (first && in.other && !pen->other)
		canvas_tag_other(pen->canvas);
	return in;
}

void para_draw_part(const struct lines *l, const struct pen *pen, pt at, size_t from,
    size_t to)
{
	double height_pt = (double)(to - from) * l->lead_pt;
	bool open = false;

	if (from >= to)
		return;
	canvas_box_begin(pen->canvas, (rect){ at.x, at.y, l->width_pt, height_pt },
	    STR("text"));
	for (size_t i = from; i < to; i++) {
		double y = at.y + (double)(i - from) * l->lead_pt + l->rise_pt;

		draw_line(l, pen, (pt){ at.x, y }, i, &open);
	}
	turn_span(pen, false, &open);
	canvas_box_end(pen->canvas);
}

void para_draw(const struct lines *l, const struct pen *pen, pt at)
{
	para_draw_part(l, pen, at, 0, l->n);
}

double plain_width_pt(const struct setter *s, str text, const struct type *type)
{
	uint32_t mils = measure_mils(s->advances, style_face(type->style), text);

	return mils * type->size_pt / 1000;
}

str plain_cut(const struct setter *s, str text, const struct type *type, double width_pt)
{
	const str dots = STR("...");
	double used_pt = plain_width_pt(s, dots, type);
	size_t n = 0;

	if (plain_width_pt(s, text, type) <= width_pt)
		return text;
	while (n < text.n) {
		str rest = str_sub(text, n, text.n);

		utf8_next(&rest);
		used_pt += plain_width_pt(s, str_sub(text, n, text.n - rest.n), type);
		if (used_pt > width_pt)
			break;
		n = text.n - rest.n;
	}
	return str_format(s->arena, "%.*s%.*s", (int)n, text.p, STR_ARG(dots));
}

void plain_draw(const struct setter *s, struct canvas *c, str text,
    const struct type *type, pt at)
{
	double width_pt = plain_width_pt(s, text, type);

	if (type->align == ALIGN_RIGHT)
		at.x -= width_pt;
	if (type->align == ALIGN_CENTER)
		at.x -= width_pt / 2;
	canvas_text(c, at, (enum face_id)style_face(type->style), type->size_pt, text);
}
