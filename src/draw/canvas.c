#include "draw/canvas.h"

#include <assert.h>

/* A device leaves an operation null when it does not care. */
#define CALL(c, op, ...)                                      \
	do {                                                  \
		if ((c)->ops->op)                             \
			(c)->ops->op((c)->self, __VA_ARGS__); \
	} while (0)

#define CALL_BARE(c, op)                         \
	do {                                     \
		if ((c)->ops->op)                \
			(c)->ops->op((c)->self); \
	} while (0)

double canvas_zoom(const struct canvas *c)
{
	return c->zoom > 0 ? c->zoom : 1;
}

void canvas_page_begin(struct canvas *c, double width_pt, double height_pt)
{
	assert(c->pages == 0);
	c->pages = 1;
	CALL(c, page_begin, width_pt, height_pt);
}

void canvas_page_end(struct canvas *c)
{
	assert(c->pages == 1 && c->boxes == 0 && c->fleeting == 0);
	CALL_BARE(c, page_end);
	c->pages = 0;
}

void canvas_text(struct canvas *c, pt baseline, enum face_id face, double size_pt,
    str utf8)
{
	assert(c->pages == 1);
	if (utf8.n > 0)
		CALL(c, text, baseline, face, size_pt, utf8);
}

void canvas_path(struct canvas *c, const struct seg *segs, size_t n,
    const struct ink *ink)
{
	assert(c->pages == 1);
	if (n > 0 && (ink->fill || ink->stroke_pt > 0))
		CALL(c, path, segs, n, ink);
}

void canvas_image(struct canvas *c, rect r, const struct pixels *p)
{
	assert(c->pages == 1);
	if (p->width > 0 && p->height > 0)
		CALL(c, image, r, p);
}

void canvas_box_begin(struct canvas *c, rect r, str name)
{
	assert(c->pages == 1);
	c->boxes++;
	CALL(c, box_begin, r, name);
}

void canvas_box_end(struct canvas *c)
{
	assert(c->boxes > 0);
	c->boxes--;
	CALL_BARE(c, box_end);
}

void canvas_tag_begin(struct canvas *c, enum tag tag, str alt)
{
	c->tags++;
	CALL(c, tag_begin, tag, alt);
}

void canvas_tag_end(struct canvas *c)
{
	assert(c->tags > 0);
	c->tags--;
	CALL_BARE(c, tag_end);
}

void canvas_tag_other(struct canvas *c)
{
	assert(c->tags > 0);
	CALL_BARE(c, tag_other);
}

void canvas_fleeting_begin(struct canvas *c)
{
	c->fleeting++;
	CALL_BARE(c, fleeting_begin);
}

void canvas_fleeting_end(struct canvas *c)
{
	assert(c->fleeting > 0);
	c->fleeting--;
	CALL_BARE(c, fleeting_end);
}

void canvas_dest(struct canvas *c, str name, pt at)
{
	assert(c->pages == 1);
	CALL(c, dest, name, at);
}

void canvas_link(struct canvas *c, rect r, str dest_name)
{
	assert(c->pages == 1);
	CALL(c, link, r, dest_name);
}

void canvas_outline(struct canvas *c, int depth, str title, str dest_name)
{
	assert(depth >= 0);
	CALL(c, outline, depth, title, dest_name);
}

void canvas_label(struct canvas *c, enum label_style style, str prefix, unsigned first)
{
	CALL(c, label, style, prefix, first);
}

void canvas_line(struct canvas *c, pt a, pt b, double stroke_pt)
{
	struct seg segs[2] = { { SEG_MOVE, { a } }, { SEG_LINE, { b } } };

	canvas_path(c, segs, 2, &(struct ink){ .stroke_pt = stroke_pt });
}

void canvas_rect(struct canvas *c, rect r, const struct ink *ink)
{
	pt v[4] = { { r.x, r.y }, { r.x + r.w, r.y }, { r.x + r.w, r.y + r.h },
		{ r.x, r.y + r.h } };

	canvas_polygon(c, v, 4, ink);
}

/* Corners that a polygon may have; longer outlines are paths of their own. */
enum { POLYGON_MOST = 720 };

void canvas_polygon(struct canvas *c, const pt *v, size_t n, const struct ink *ink)
{
	struct seg segs[POLYGON_MOST + 1];

	assert(n <= POLYGON_MOST);
	if (n == 0 || n > POLYGON_MOST)
		return;
	for (size_t i = 0; i < n; i++)
		segs[i] = (struct seg){ i == 0 ? SEG_MOVE : SEG_LINE, { v[i] } };
	segs[n] = (struct seg){ .op = SEG_CLOSE };
	canvas_path(c, segs, n + 1, ink);
}

void canvas_circle(struct canvas *c, pt center, double radius_pt, const struct ink *ink)
{
	/* 4/3 tan(pi/8): a cubic with these arms stays within 0.03 % of the circle. */
	double x = center.x, y = center.y, r = radius_pt, k = r * 0.55228474983079340;
	struct seg segs[6] = {
		{ SEG_MOVE, { { x + r, y } } },
		{ SEG_CURVE, { { x + r, y + k }, { x + k, y + r }, { x, y + r } } },
		{ SEG_CURVE, { { x - k, y + r }, { x - r, y + k }, { x - r, y } } },
		{ SEG_CURVE, { { x - r, y - k }, { x - k, y - r }, { x, y - r } } },
		{ SEG_CURVE, { { x + k, y - r }, { x + r, y - k }, { x + r, y } } },
		{ .op = SEG_CLOSE },
	};

	canvas_path(c, segs, 6, ink);
}
