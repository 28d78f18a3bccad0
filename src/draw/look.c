#include "draw/look.h"

#include <math.h>

/* Told apart in the digest. */
enum kind { KIND_PAGE = 1, KIND_TEXT, KIND_PATH, KIND_IMAGE, KIND_ALT };

/* Hundredths of a point: what differs by less looks the same. Unsound ones are alike. */
static uint32_t hundredths(double x)
{
	bool sound = isfinite(x) && fabs(x) < 1e7;

	return sound ? (uint32_t)lrint(x * 100) : UINT32_MAX;
}

static void add_pair(struct look *l, double x, double y)
{
	blend_word(&l->sum, (uint64_t)hundredths(x) << 32 | hundredths(y));
}

/* False: what follows is not part of the digest. */
static bool begin(struct look *l, enum kind kind)
{
	if (l->canvas.fleeting > 0)
		return false;
	blend_word(&l->sum, kind);
	return true;
}

static void look_page_begin(void *self, double width_pt, double height_pt)
{
	if (begin(self, KIND_PAGE))
		add_pair(self, width_pt, height_pt);
}

static void look_text(void *self, pt at, enum face_id face, double size_pt, str utf8)
{
	struct look *l = self;

	if (!begin(l, KIND_TEXT))
		return;
	add_pair(l, at.x, at.y);
	add_pair(l, size_pt, face);
	blend_bytes(&l->sum, utf8.p, utf8.n);
}

static void look_path(void *self, const struct seg *segs, size_t n, const struct ink *ink)
{
	static const int points[] = {
		[SEG_MOVE] = 1, [SEG_LINE] = 1, [SEG_CURVE] = 3, [SEG_CLOSE] = 0,
	};
	struct look *l = self;

	if (!begin(l, KIND_PATH))
		return;
	add_pair(l, ink->stroke_pt, ink->dash_on_pt);
	add_pair(l, ink->dash_off_pt, ink->fill_gray);
	add_pair(l, ink->stroke_gray, ink->fill);
	blend_word(&l->sum, n);
	for (size_t i = 0; i < n; i++) {
		blend_word(&l->sum, segs[i].op);
		for (int k = 0; k < points[segs[i].op]; k++)
			add_pair(l, segs[i].p[k].x, segs[i].p[k].y);
	}
}

static void look_image(void *self, rect r, const struct pixels *p)
{
	struct look *l = self;

	if (!begin(l, KIND_IMAGE))
		return;
	add_pair(l, r.x, r.y);
	add_pair(l, r.w, r.h);
	blend_bytes(&l->sum, p->digest, SHA256_BYTES);
}

static void look_tag_begin(void *self, enum tag tag, str alt)
{
	struct look *l = self;

	(void)tag;
	if (alt.n > 0 && begin(l, KIND_ALT))
		blend_bytes(&l->sum, alt.p, alt.n);
}

static const struct canvas_ops look_ops = {
	.page_begin = look_page_begin, .text = look_text, .path = look_path,
	.image = look_image, .tag_begin = look_tag_begin,
};

void look_begin(struct look *l)
{
	*l = (struct look){ .canvas = { .ops = &look_ops, .self = l }, .sum = BLEND_START };
}

void look_end(const struct look *l, struct sha256 *h)
{
	blend_end(&l->sum, h);
}
