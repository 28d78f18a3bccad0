#include "out/content.h"

#include <math.h>
#include <string.h>

static const double LIMIT_PT = 32000;

static char *room(struct buf *b, size_t n)
{
	if (b->cap - b->n < n)
		b->p = arena_grow(b->arena, b->p, b->n, b->n + n, &b->cap, 1);
	return b->p + b->n;
}

void content_init(struct content *c, struct arena *a, const struct faces *faces)
{
	*c = (struct content){ .arena = a, .faces = faces, .out = { .arena = a } };
}

void content_page_begin(struct content *c, double height_pt)
{
	c->out.n = 0;
	c->height_pt = height_pt;
	c->face = -1;
	c->size = c->line_width = c->dash_on = c->dash_off = -1;
	c->fill_gray = c->stroke_gray = 0;
	c->in_text = false;
}

long content_hundredths(double x)
{
	if (!(x > -LIMIT_PT))
		return isnan(x) ? 0 : (long)(-LIMIT_PT * 100);
	if (x > LIMIT_PT)
		x = LIMIT_PT;
	return (long)(x < 0 ? x * 100 - 0.5 : x * 100 + 0.5);
}

/* Writes v at p and returns the place after it; at most 12 bytes. */
static char *put_number(char *p, long v)
{
	char digits[20];
	unsigned long u = v < 0 ? 0ul - (unsigned long)v : (unsigned long)v;
	unsigned long whole = u / 100, part = u % 100;
	int n = 0;

	if (v < 0)
		*p++ = '-';
	for (; whole > 0; whole /= 10)
		digits[n++] = (char)('0' + whole % 10);
	if (n == 0 && part == 0)
		*p++ = '0';
	while (n > 0)
		*p++ = digits[--n];
	if (part > 0) {
		*p++ = '.';
		*p++ = (char)('0' + part / 10);
		if (part % 10 > 0)
			*p++ = (char)('0' + part % 10);
	}
	return p;
}

void content_number(struct buf *b, long hundredths)
{
	char *p = room(b, 24);

	b->n += (size_t)(put_number(p, hundredths) - p);
}

static char *put_operands(char *p, const long *v, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		p = put_number(p, v[i]);
		*p++ = ' ';
	}
	return p;
}

static char *put_word(char *p, const char *word)
{
	size_t n = strlen(word);

	memcpy(p, word, n);
	return p + n;
}

/* One operator with numbers before it. */
static void add_op(struct content *c, const long *v, size_t n, const char *op)
{
	char *p = room(&c->out, 24 * n + 24);
	char *end = put_word(put_operands(p, v, n), op);

	c->out.n += (size_t)(end - p);
}

static void glyph_use(struct content *c, struct font_use *f, uint16_t glyph, uint32_t cp)
{
	if (glyph >= f->nglyphs) {
		size_t need = glyph + 1u;

		f->code_point = arena_grow(c->arena, f->code_point, f->nglyphs, need,
		    &f->cap, sizeof *f->code_point);
		memset(f->code_point + f->nglyphs, 0,
		    (need - f->nglyphs) * sizeof *f->code_point);
		f->nglyphs = need;
	}
	if (f->code_point[glyph] == 0)
		f->code_point[glyph] = cp;
}

/* Inside a PDF string a parenthesis, a backslash and a carriage return are escaped. */
static struct glyph_code glyph_encode(uint16_t glyph)
{
	const unsigned char halves[2] = { (unsigned char)(glyph >> 8),
		(unsigned char)(glyph & 255) };
	struct glyph_code code = { 0 };

	for (int i = 0; i < 2; i++) {
		char h = (char)halves[i];

		if (h == '(' || h == ')' || h == '\\' || h == '\r')
			code.bytes[code.n++] = '\\';
		code.bytes[code.n++] = h == '\r' ? 'r' : h;
	}
	return code;
}

static struct glyph_code char_encode(struct content *c, enum face_id face, uint32_t cp)
{
	uint16_t glyph = face_glyph(c->faces, face, cp);
	struct glyph_code code = glyph_encode(glyph);

	glyph_use(c, &c->fonts[face], glyph, cp);
	if (cp < 128)
		c->fonts[face].ascii[cp] = code;
	return code;
}

static char *put_glyphs(struct content *c, char *p, enum face_id face, str s)
{
	const struct glyph_code *ascii = c->fonts[face].ascii;

	while (s.n > 0) {
		unsigned char first = (unsigned char)s.p[0];
		struct glyph_code code;

		if (first < 128 && ascii[first].n > 0) {
			code = ascii[first];
			s.p++;
			s.n--;
		} else {
			code = char_encode(c, face, utf8_next(&s));
		}
		memcpy(p, code.bytes, sizeof code.bytes);
		p += code.n;
	}
	return p;
}

static void gray_set(struct content *c, long *now, double gray, const char *op)
{
	long v = gray > 0 ? content_hundredths(gray > 1 ? 1 : gray) : 0;

	if (*now == v)
		return;
	*now = v;
	add_op(c, &v, 1, op);
}

static void text_open(struct content *c)
{
	if (c->in_text)
		return;
	c->in_text = true;
	c->last = 0;
	c->x = c->y = 0;
	add_op(c, NULL, 0, "BT\n");
}

static void text_close(struct content *c)
{
	if (!c->in_text)
		return;
	c->in_text = false;
	add_op(c, NULL, 0, "ET\n");
}

/* Between two lines of one block of text, so that what reads the marked content aloud does
 * not join the words on either side; a word divided at a hyphen goes on. */
static void space_lines(struct content *c, long y)
{
	char *p, *end;

	if (c->face < 0 || y == c->y || !c->last || c->last == ' ' || c->last == '-' ||
	    c->last == '/')
		return;
	p = end = room(&c->out, 32);
	*end++ = '(';
	end = put_glyphs(c, end, (enum face_id)c->face, STR(" "));
	end = put_word(end, ")Tj\n");
	c->out.n += (size_t)(end - p);
}

void content_text(struct content *c, pt baseline, enum face_id face, double size_pt,
    str utf8)
{
	long x, y, size = content_hundredths(size_pt);
	char *p, *end;

	if (!isfinite(baseline.x) || !isfinite(baseline.y) || !isfinite(size_pt)) {
		c->not_finite = true;
		return;
	}
	x = content_hundredths(baseline.x);
	y = content_hundredths(c->height_pt - baseline.y);
	text_open(c);
	space_lines(c, y);
	gray_set(c, &c->fill_gray, 0, "g\n");
	p = end = room(&c->out, 4 * utf8.n + 96);
	if (c->face != (int)face || c->size != size) {
		c->face = (int)face;
		c->size = size;
		end = put_word(end, "/F");
		*end++ = (char)('0' + face);
		*end++ = ' ';
		end = put_word(put_operands(end, &size, 1), "Tf\n");
	}
	end = put_word(put_operands(end, (long[]){ x - c->x, y - c->y }, 2), "Td(");
	c->x = x;
	c->y = y;
	end = put_glyphs(c, end, face, utf8);
	end = put_word(end, ")Tj\n");
	c->out.n += (size_t)(end - p);
	c->last = utf8.n ? utf8.p[utf8.n - 1] : c->last;
}

static bool path_finite(const struct seg *segs, size_t n, const struct ink *ink)
{
	static const int points[] = {
		[SEG_MOVE] = 1, [SEG_LINE] = 1, [SEG_CURVE] = 3, [SEG_CLOSE] = 0,
	};
	double sum = ink->stroke_pt + ink->dash_on_pt + ink->dash_off_pt +
	    ink->fill_gray + ink->stroke_gray;

	/* A sum of finite lengths is finite here; one bad number spoils it. */
	for (size_t i = 0; i < n; i++)
		for (int k = 0; k < points[segs[i].op]; k++)
			sum += segs[i].p[k].x * 0 + segs[i].p[k].y * 0;
	return isfinite(sum);
}

static void stroke_set(struct content *c, const struct ink *ink)
{
	long width = content_hundredths(ink->stroke_pt);
	long on = content_hundredths(ink->dash_on_pt);
	long off = content_hundredths(ink->dash_off_pt);
	char *p, *end;

	gray_set(c, &c->stroke_gray, ink->stroke_gray, "G\n");
	if (c->line_width != width) {
		c->line_width = width;
		add_op(c, &width, 1, "w\n");
	}
	if (on <= 0 || off < 0)
		on = off = 0;
	if ((c->dash_on == on && c->dash_off == off) || (c->dash_on == -1 && on == 0))
		return;
	c->dash_on = on;
	c->dash_off = off;
	p = end = room(&c->out, 64);
	*end++ = '[';
	if (on > 0)
		end = put_operands(end, (long[]){ on, off }, 2);
	end = put_word(end, "]0 d\n");
	c->out.n += (size_t)(end - p);
}

static void segs_add(struct content *c, const struct seg *segs, size_t n)
{
	static const struct { const char *op; size_t points; } ops[] = {
		[SEG_MOVE] = { "m\n", 1 }, [SEG_LINE] = { "l\n", 1 },
		[SEG_CURVE] = { "c\n", 3 }, [SEG_CLOSE] = { "h\n", 0 },
	};

	for (size_t i = 0; i < n; i++) {
		long v[6];
		size_t points = ops[segs[i].op].points;

		for (size_t k = 0; k < points; k++) {
			v[2 * k] = content_hundredths(segs[i].p[k].x);
			v[2 * k + 1] = content_hundredths(c->height_pt - segs[i].p[k].y);
		}
		add_op(c, v, 2 * points, ops[segs[i].op].op);
	}
}

void content_path(struct content *c, const struct seg *segs, size_t n,
    const struct ink *ink)
{
	bool stroke = ink->stroke_pt > 0;

	if (!path_finite(segs, n, ink)) {
		c->not_finite = true;
		return;
	}
	text_close(c);
	if (ink->fill)
		gray_set(c, &c->fill_gray, ink->fill_gray, "g\n");
	if (stroke)
		stroke_set(c, ink);
	segs_add(c, segs, n);
	add_op(c, NULL, 0, ink->fill && stroke ? "B\n" : ink->fill ? "f\n" : "S\n");
}

void content_image(struct content *c, rect r, uint32_t id)
{
	const double v[4] = { r.w, r.h, r.x, c->height_pt - r.y - r.h };
	long n[6] = { 0 };

	if (!isfinite(r.x + r.y + r.w + r.h)) {
		c->not_finite = true;
		return;
	}
	/* A unit square becomes r: [w 0 0 h x y]. */
	for (int i = 0; i < 4; i++)
		n[i < 1 ? 0 : i + 2] = content_hundredths(v[i]);
	text_close(c);
	add_op(c, NULL, 0, "q ");
	add_op(c, n, 6, "cm");
	buf_addf(&c->out, " /I%u Do Q\n", id);
}

void content_mark(struct content *c, const char *type, unsigned mcid)
{
	text_close(c);
	buf_addf(&c->out, "/%s<</MCID %u>>BDC\n", type, mcid);
}

void content_artifact(struct content *c)
{
	text_close(c);
	add_op(c, NULL, 0, "/Artifact BMC\n");
}

void content_mark_end(struct content *c)
{
	text_close(c);
	add_op(c, NULL, 0, "EMC\n");
}
