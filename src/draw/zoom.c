#include "draw/zoom.h"

enum { SHORT_PATH = 64 };

static pt larger(const struct zoom *z, pt p)
{
	return (pt){ p.x * z->factor, p.y * z->factor };
}

static rect larger_rect(const struct zoom *z, rect r)
{
	return (rect){ r.x * z->factor, r.y * z->factor, r.w * z->factor, r.h * z->factor };
}

static void zoom_text(void *self, pt at, enum face_id face, double size_pt, str utf8)
{
	const struct zoom *z = self;

	canvas_text(z->to, larger(z, at), face, size_pt * z->factor, utf8);
}

static void zoom_path(void *self, const struct seg *segs, size_t n, const struct ink *ink)
{
	const struct zoom *z = self;
	struct seg some[SHORT_PATH];
	struct seg *v = n <= SHORT_PATH ? some : arena_array(z->arena, n, sizeof *v);
	struct ink more = *ink;

	for (size_t i = 0; i < n; i++) {
		v[i].op = segs[i].op;
		for (int k = 0; k < 3; k++)
			v[i].p[k] = larger(z, segs[i].p[k]);
	}
	more.stroke_pt *= z->factor;
	more.dash_on_pt *= z->factor;
	more.dash_off_pt *= z->factor;
	canvas_path(z->to, v, n, &more);
}

static void zoom_image(void *self, rect r, const struct pixels *p)
{
	const struct zoom *z = self;

	canvas_image(z->to, larger_rect(z, r), p);
}

static void zoom_box_begin(void *self, rect r, str name)
{
	const struct zoom *z = self;

	canvas_box_begin(z->to, larger_rect(z, r), name);
}

static void zoom_box_end(void *self)
{
	canvas_box_end(((const struct zoom *)self)->to);
}

static void zoom_tag_begin(void *self, enum tag tag, str alt)
{
	canvas_tag_begin(((const struct zoom *)self)->to, tag, alt);
}

static void zoom_tag_end(void *self)
{
	canvas_tag_end(((const struct zoom *)self)->to);
}

static void zoom_tag_other(void *self)
{
	canvas_tag_other(((const struct zoom *)self)->to);
}

static void zoom_fleeting_begin(void *self)
{
	canvas_fleeting_begin(((const struct zoom *)self)->to);
}

static void zoom_fleeting_end(void *self)
{
	canvas_fleeting_end(((const struct zoom *)self)->to);
}

static void zoom_dest(void *self, str name, pt at)
{
	const struct zoom *z = self;

	canvas_dest(z->to, name, larger(z, at));
}

static void zoom_link(void *self, rect r, str dest_name)
{
	const struct zoom *z = self;

	canvas_link(z->to, larger_rect(z, r), dest_name);
}

static const struct canvas_ops zoom_ops = {
	.text = zoom_text, .path = zoom_path, .image = zoom_image,
	.box_begin = zoom_box_begin, .box_end = zoom_box_end,
	.tag_begin = zoom_tag_begin, .tag_end = zoom_tag_end,
	.tag_other = zoom_tag_other,
	.fleeting_begin = zoom_fleeting_begin, .fleeting_end = zoom_fleeting_end,
	.dest = zoom_dest, .link = zoom_link,
};

void zoom_init(struct zoom *z, struct canvas *to, double factor, struct arena *a)
{
	*z = (struct zoom){ .canvas = { .ops = &zoom_ops, .self = z, .pages = 1,
		.zoom = factor * canvas_zoom(to) }, .to = to, .arena = a, .factor = factor };
}
