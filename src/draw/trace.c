#include "draw/trace.h"

static const char *const face_names[FACE_COUNT] = {
	[FACE_SANS] = "sans", [FACE_SANS_BOLD] = "sans-bold",
	[FACE_SANS_ITALIC] = "sans-italic", [FACE_SANS_BOLD_ITALIC] = "sans-bold-italic",
	[FACE_MONO] = "mono", [FACE_MONO_BOLD] = "mono-bold",
};

static const char *const tag_names[] = {
	[TAG_DOCUMENT] = "document", [TAG_SECTION] = "section", [TAG_H1] = "h1",
	[TAG_H2] = "h2", [TAG_H3] = "h3", [TAG_P] = "p", [TAG_LIST] = "list",
	[TAG_ITEM] = "item", [TAG_TABLE] = "table", [TAG_ROW] = "row",
	[TAG_HEAD_CELL] = "head-cell", [TAG_CELL] = "cell", [TAG_FIGURE] = "figure",
	[TAG_SPAN] = "span", [TAG_ARTIFACT] = "artifact",
};

_Static_assert(sizeof tag_names / sizeof tag_names[0] == TAG_ARTIFACT + 1,
    "one name a tag");

str face_name(enum face_id face)
{
	return str_of(face_names[face]);
}

str tag_name(enum tag tag)
{
	return str_of(tag_names[tag]);
}

static struct buf *out_of(void *self)
{
	return ((struct trace *)self)->out;
}

static void add_number(struct buf *b, double x)
{
	buf_addc(b, ' ');
	buf_add_real(b, x, 2, true);
}

static void add_pt(struct buf *b, pt p)
{
	add_number(b, p.x);
	add_number(b, p.y);
}

static void add_rect(struct buf *b, rect r)
{
	add_number(b, r.x);
	add_number(b, r.y);
	add_number(b, r.w);
	add_number(b, r.h);
}

/* One line a string: what would break the line is spelled out. */
static void add_string(struct buf *b, str s)
{
	static const char hex[] = "0123456789abcdef";

	for (size_t i = 0; i < s.n; i++) {
		unsigned char c = (unsigned char)s.p[i];

		if (c == '\n') {
			buf_adds(b, "\\n");
		} else if (c < 0x20 || c == 0x7f || c == '\\') {
			buf_adds(b, "\\x");
			buf_addc(b, hex[c >> 4]);
			buf_addc(b, hex[c & 15]);
		} else {
			buf_addc(b, (char)c);
		}
	}
}

static void end_line(struct buf *b, str s)
{
	if (s.n > 0) {
		buf_addc(b, ' ');
		add_string(b, s);
	}
	buf_addc(b, '\n');
}

static void trace_page_begin(void *self, double width_pt, double height_pt)
{
	struct buf *b = out_of(self);

	buf_adds(b, "page");
	add_number(b, width_pt);
	add_number(b, height_pt);
	buf_addc(b, '\n');
}

static void trace_page_end(void *self)
{
	buf_adds(out_of(self), "end page\n");
}

static void trace_text(void *self, pt baseline, enum face_id face, double size_pt,
    str utf8)
{
	struct buf *b = out_of(self);

	buf_adds(b, "text");
	add_pt(b, baseline);
	buf_addf(b, " %s", face_names[face]);
	add_number(b, size_pt);
	end_line(b, utf8);
}

static void add_ink(struct buf *b, const struct ink *ink)
{
	if (ink->fill) {
		buf_adds(b, " fill");
		add_number(b, ink->fill_gray);
	}
	if (ink->stroke_pt <= 0)
		return;
	buf_adds(b, " stroke");
	add_number(b, ink->stroke_pt);
	buf_adds(b, " gray");
	add_number(b, ink->stroke_gray);
	if (ink->dash_on_pt > 0 || ink->dash_off_pt > 0) {
		buf_adds(b, " dash");
		add_number(b, ink->dash_on_pt);
		add_number(b, ink->dash_off_pt);
	}
}

static void trace_path(void *self, const struct seg *segs, size_t n,
    const struct ink *ink)
{
	static const struct { char letter; int points; } ops[] = {
		[SEG_MOVE] = { 'M', 1 }, [SEG_LINE] = { 'L', 1 },
		[SEG_CURVE] = { 'C', 3 }, [SEG_CLOSE] = { 'Z', 0 },
	};
	struct buf *b = out_of(self);

	buf_adds(b, "path");
	add_ink(b, ink);
	for (size_t i = 0; i < n; i++) {
		buf_addf(b, " %c", ops[segs[i].op].letter);
		for (int k = 0; k < ops[segs[i].op].points; k++)
			add_pt(b, segs[i].p[k]);
	}
	buf_addc(b, '\n');
}

/* Of the pixels the first digits of their digest. */
static void trace_image(void *self, rect r, const struct pixels *p)
{
	static const char hex[] = "0123456789abcdef";
	struct buf *b = out_of(self);

	buf_adds(b, "image");
	add_rect(b, r);
	buf_addf(b, " %ux%u ", p->width, p->height);
	for (int i = 0; i < 4; i++)
		buf_addf(b, "%c%c", hex[p->digest[i] >> 4], hex[p->digest[i] & 15]);
	buf_addc(b, '\n');
}

static void trace_box_begin(void *self, rect r, str name)
{
	buf_adds(out_of(self), "box");
	add_rect(out_of(self), r);
	end_line(out_of(self), name);
}

static void trace_box_end(void *self)
{
	buf_adds(out_of(self), "end box\n");
}

static void trace_tag_begin(void *self, enum tag tag, str alt)
{
	buf_addf(out_of(self), "tag %s", tag_names[tag]);
	end_line(out_of(self), alt);
}

static void trace_tag_end(void *self)
{
	buf_adds(out_of(self), "end tag\n");
}

static void trace_tag_other(void *self)
{
	buf_adds(out_of(self), "other language\n");
}

static void trace_fleeting_begin(void *self)
{
	buf_adds(out_of(self), "fleeting\n");
}

static void trace_fleeting_end(void *self)
{
	buf_adds(out_of(self), "end fleeting\n");
}

static void trace_dest(void *self, str name, pt at)
{
	buf_adds(out_of(self), "dest");
	add_pt(out_of(self), at);
	end_line(out_of(self), name);
}

static void trace_link(void *self, rect r, str dest_name)
{
	buf_adds(out_of(self), "link");
	add_rect(out_of(self), r);
	end_line(out_of(self), dest_name);
}

static void trace_outline(void *self, int depth, str title, str dest_name)
{
	struct buf *b = out_of(self);

	buf_addf(b, "outline %d ", depth);
	add_string(b, title);
	buf_adds(b, " ->");
	end_line(b, dest_name);
}

static void trace_label(void *self, enum label_style style, str prefix, unsigned first)
{
	buf_addf(out_of(self), "label %s %u", style == LABEL_ROMAN ? "roman" : "decimal",
	    first);
	end_line(out_of(self), prefix);
}

static const struct canvas_ops trace_ops = {
	.page_begin = trace_page_begin, .page_end = trace_page_end,
	.text = trace_text, .path = trace_path, .image = trace_image,
	.box_begin = trace_box_begin, .box_end = trace_box_end,
	.tag_begin = trace_tag_begin, .tag_end = trace_tag_end,
	.tag_other = trace_tag_other,
	.fleeting_begin = trace_fleeting_begin, .fleeting_end = trace_fleeting_end,
	.dest = trace_dest, .link = trace_link,
	.outline = trace_outline, .label = trace_label,
};

void trace_init(struct trace *t, struct buf *out)
{
	*t = (struct trace){ .canvas = { .ops = &trace_ops, .self = t }, .out = out };
}
