#include "draw/face.h"

#include "base/fonts.h"

#include <assert.h>

/* OpenType 1.9, chapters "cmap", "head", "hhea", "hmtx", "maxp", "OS/2": offsets and
 * field sizes used below. */

#define PLANES_END 0x110000u

_Static_assert(FONT_COUNT == FACE_COUNT, "one font file a face");

struct face {
	/* Glyphs by code point: page[cp >> 8] is a row of 256 in rows; row 0 is empty. */
	uint16_t page[PLANES_END >> 8];
	uint16_t *rows;
	size_t nrows, rows_cap;
	uint16_t *advance;       /* thousandths of the size, by glyph */
	unsigned nglyphs;
	double ascent, descent, cap_height; /* parts of the size */
};

struct faces {
	struct face v[FACE_COUNT];
};

/* A table of the font, or an empty one when it is missing or sticks out. */
struct table {
	const unsigned char *p;
	size_t n;
};

static unsigned be16(struct table t, size_t at)
{
	return at + 2 <= t.n ? (unsigned)t.p[at] << 8 | t.p[at + 1] : 0;
}

static int be16_signed(struct table t, size_t at)
{
	unsigned v = be16(t, at);

	return v < 0x8000 ? (int)v : (int)v - 0x10000;
}

static uint32_t be32(struct table t, size_t at)
{
	return (uint32_t)be16(t, at) << 16 | be16(t, at + 2);
}

static struct table table_part(struct table t, size_t at)
{
	return at < t.n ? (struct table){ t.p + at, t.n - at } : (struct table){ t.p, 0 };
}

static struct table table_find(struct table font, uint32_t tag)
{
	for (size_t i = 0; i < be16(font, 4); i++) {
		size_t at = 12 + 16 * i, offset, n;

		if (be32(font, at) != tag)
			continue;
		offset = be32(font, at + 8);
		n = be32(font, at + 12);
		if (offset <= font.n && n <= font.n - offset)
			return (struct table){ font.p + offset, n };
	}
	return (struct table){ font.p, 0 };
}

#define TAG(a, b, c, d) \
	((uint32_t)(a) << 24 | (uint32_t)(b) << 16 | (uint32_t)(c) << 8 | (uint32_t)(d))

static void glyph_store(struct arena *a, struct face *f, uint32_t cp, unsigned glyph)
{
	uint16_t *page;

	if (cp >= PLANES_END || glyph == 0 || glyph >= f->nglyphs)
		return;
	page = &f->page[cp >> 8];
	if (*page == 0) {
		f->rows = arena_grow(a, f->rows, f->nrows, f->nrows + 1, &f->rows_cap,
		    256 * sizeof *f->rows);
		*page = (uint16_t)f->nrows++;
	}
	f->rows[*page * 256u + (cp & 255)] = (uint16_t)glyph;
}

/* Format 4: segments of the basic plane, in four arrays. */
static void cmap4_read(struct arena *a, struct face *f, struct table t)
{
	size_t twice = be16(t, 6) & ~1u, ends = 14, starts = ends + twice + 2;
	size_t deltas = starts + twice, offsets = deltas + twice;

	for (size_t s = 0; s < twice; s += 2) {
		unsigned first = be16(t, starts + s), last = be16(t, ends + s);
		unsigned delta = be16(t, deltas + s), offset = be16(t, offsets + s);

		for (unsigned c = first; c <= last && c != 0xffff; c++) {
			unsigned g = c;

			if (offset != 0)
				g = be16(t, offsets + s + offset + 2 * (c - first));
			if (offset == 0 || g != 0)
				g = (g + delta) & 0xffff;
			glyph_store(a, f, c, g);
		}
	}
}

/* Format 12: groups of consecutive code points, all planes. */
static void cmap12_read(struct arena *a, struct face *f, struct table t)
{
	size_t ngroups = be32(t, 12);

	for (size_t i = 0; i < ngroups && 16 + 12 * i + 12 <= t.n; i++) {
		uint32_t first = be32(t, 16 + 12 * i), last = be32(t, 20 + 12 * i);
		uint32_t glyph = be32(t, 24 + 12 * i);

		if (last >= PLANES_END)
			last = PLANES_END - 1;
		for (uint32_t c = first; c <= last && glyph < f->nglyphs; c++)
			glyph_store(a, f, c, glyph++);
	}
}

static void cmap_read(struct arena *a, struct face *f, struct table cmap)
{
	struct table best = { cmap.p, 0 };
	unsigned best_format = 0;

	for (size_t i = 0; i < be16(cmap, 2); i++) {
		unsigned platform = be16(cmap, 4 + 8 * i);
		struct table sub = table_part(cmap, be32(cmap, 8 + 8 * i));
		unsigned format = be16(sub, 0);

		if (platform != 0 && platform != 3)
			continue;
		if ((format == 4 || format == 12) && format > best_format) {
			best = sub;
			best_format = format;
		}
	}
	if (best_format == 12)
		cmap12_read(a, f, best);
	else if (best_format == 4)
		cmap4_read(a, f, best);
}

static void advances_read(struct arena *a, struct face *f, struct table hmtx,
    unsigned nmetrics, unsigned per_em)
{
	unsigned advance = 0;

	f->advance = arena_array(a, f->nglyphs + 1u, sizeof *f->advance);
	for (unsigned g = 0; g < f->nglyphs; g++) {
		if (g < nmetrics)
			advance = be16(hmtx, 4 * (size_t)g) * 1000u / per_em;
		f->advance[g] = (uint16_t)advance;
	}
}

static void face_read(struct arena *a, struct face *f, struct font_bytes bytes)
{
	struct table font = { bytes.p, bytes.n };
	struct table head = table_find(font, TAG('h', 'e', 'a', 'd'));
	struct table hhea = table_find(font, TAG('h', 'h', 'e', 'a'));
	struct table os2 = table_find(font, TAG('O', 'S', '/', '2'));
	unsigned per_em = be16(head, 18);

	assert(per_em != 0);
	f->nglyphs = be16(table_find(font, TAG('m', 'a', 'x', 'p')), 4);
	f->rows = arena_grow(a, NULL, 0, 24, &f->rows_cap, 256 * sizeof *f->rows);
	f->nrows = 1;
	cmap_read(a, f, table_find(font, TAG('c', 'm', 'a', 'p')));
	advances_read(a, f, table_find(font, TAG('h', 'm', 't', 'x')), be16(hhea, 34),
	    per_em);
	f->ascent = be16_signed(hhea, 4) / (double)per_em;
	f->descent = -be16_signed(hhea, 6) / (double)per_em;
	f->cap_height = be16_signed(os2, 88) / (double)per_em;
}

static uint16_t glyph_find(const struct face *f, uint32_t cp)
{
	return cp < PLANES_END ? f->rows[f->page[cp >> 8] * 256u + (cp & 255)] : 0;
}

const struct faces *faces_new(struct arena *a)
{
	struct faces *f = arena_alloc(a, sizeof *f);

	for (size_t i = 0; i < FACE_COUNT; i++) {
		face_read(a, &f->v[i], font_bytes(i));
		/* A no-break space looks like a space in every face. */
		if (glyph_find(&f->v[i], 0xa0) == 0)
			glyph_store(a, &f->v[i], 0xa0, glyph_find(&f->v[i], ' '));
	}
	return f;
}

uint16_t face_glyph(const struct faces *f, enum face_id face, uint32_t code_point)
{
	return glyph_find(&f->v[face], code_point);
}

unsigned face_advance(const struct faces *f, enum face_id face, uint16_t glyph)
{
	return glyph < f->v[face].nglyphs ? f->v[face].advance[glyph] : 0;
}

double face_width_pt(const struct faces *f, enum face_id face, double size_pt, str utf8)
{
	const struct face *v = &f->v[face];
	uint64_t sum = 0;

	while (utf8.n > 0)
		sum += v->advance[glyph_find(v, utf8_next(&utf8))];
	return (double)sum * size_pt / 1000.0;
}

double face_ascent_pt(const struct faces *f, enum face_id face, double size_pt)
{
	return f->v[face].ascent * size_pt;
}

double face_descent_pt(const struct faces *f, enum face_id face, double size_pt)
{
	return f->v[face].descent * size_pt;
}

double face_cap_height_pt(const struct faces *f, enum face_id face, double size_pt)
{
	return f->v[face].cap_height * size_pt;
}

/* How many of the next bytes are seen at once to be printing ASCII: 8, 1 or 0. A byte
 * outside gets its highest bit by one of the three: DEL by adding one, what is below a
 * space by taking it away. */
static size_t plain_bytes(str s)
{
	const uint64_t ones = 0x0101010101010101u;
	uint64_t v;

	if (s.n >= sizeof v) {
		memcpy(&v, s.p, sizeof v);
		if (!((v | (v + ones) | (v - ' ' * ones)) & ones << 7))
			return sizeof v;
	}
	return s.p[0] >= ' ' && s.p[0] <= '~';
}

size_t face_missing(const struct faces *f, enum face_id face, str s)
{
	str rest = s;

	while (rest.n > 0) {
		size_t at = s.n - rest.n, plain = plain_bytes(rest);

		/* Every face has all of printing ASCII; a test looks. */
		if (plain)
			rest = (str){ rest.p + plain, rest.n - plain };
		else if (glyph_find(&f->v[face], utf8_next(&rest)) == 0)
			return at;
	}
	return s.n;
}

uint32_t utf8_next(str *s)
{
	static const unsigned char lead_mask[5] = { 0, 0x7f, 0x1f, 0x0f, 0x07 };
	unsigned char lead;
	size_t n;
	uint32_t cp;

	if (s->n == 0)
		return 0;
	lead = (unsigned char)s->p[0];
	n = lead < 0xc0 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
	/* Text was validated when it was read; a cut sequence must still not overrun. */
	if (n > s->n)
		n = s->n;
	cp = lead & lead_mask[n];
	for (size_t i = 1; i < n; i++)
		cp = cp << 6 | ((unsigned char)s->p[i] & 0x3f);
	s->p += n;
	s->n -= n;
	return cp;
}
