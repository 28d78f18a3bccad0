#include "draw/bounds.h"

static void bounds_add(struct bounds *b, double x, double y, double margin)
{
	if (!b->any) {
		b->left = b->right = x;
		b->top = b->bottom = y;
		b->any = true;
	}
	if (x - margin < b->left)
		b->left = x - margin;
	if (x + margin > b->right)
		b->right = x + margin;
	if (y - margin < b->top)
		b->top = y - margin;
	if (y + margin > b->bottom)
		b->bottom = y + margin;
}

static void bounds_text(void *self, pt at, enum face_id face, double size_pt, str utf8)
{
	struct bounds *b = self;
	double width = face_width_pt(b->faces, face, size_pt, utf8);

	bounds_add(b, at.x, at.y - face_ascent_pt(b->faces, face, size_pt), 0);
	bounds_add(b, at.x + width, at.y + face_descent_pt(b->faces, face, size_pt), 0);
}

static void bounds_path(void *self, const struct seg *segs, size_t n,
    const struct ink *ink)
{
	static const int points[] = {
		[SEG_MOVE] = 1, [SEG_LINE] = 1, [SEG_CURVE] = 3, [SEG_CLOSE] = 0,
	};
	double margin = ink->stroke_pt > 0 ? ink->stroke_pt / 2 : 0;

	for (size_t i = 0; i < n; i++)
		for (int k = 0; k < points[segs[i].op]; k++)
			bounds_add(self, segs[i].p[k].x, segs[i].p[k].y, margin);
}

static void bounds_image(void *self, rect r, const struct pixels *p)
{
	(void)p;
	bounds_add(self, r.x, r.y, 0);
	bounds_add(self, r.x + r.w, r.y + r.h, 0);
}

static const struct canvas_ops bounds_ops = { .text = bounds_text, .path = bounds_path,
	.image = bounds_image };

void bounds_init(struct bounds *b, const struct faces *faces)
{
	*b = (struct bounds){ .canvas = { .ops = &bounds_ops, .self = b },
	    .faces = faces };
}

rect bounds_rect(const struct bounds *b)
{
	if (!b->any)
		return (rect){ 0, 0, 0, 0 };
	return (rect){ b->left, b->top, b->right - b->left, b->bottom - b->top };
}
