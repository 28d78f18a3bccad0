#include "read/picture.h"

#include "base/blend.h"

#include <png.h>
#include <setjmp.h>
#include <string.h>

/* Bytes before the pixels' own: signature, length and name of the first chunk, then width
 * and height (ISO/IEC 15948, 5.2 and 11.2.2). */
enum { SIGNATURE = 8, WIDTH_AT = 16, HEIGHT_AT = 20, HEAD = 33 };

struct decoding {
	struct arena *scratch;   /* all that the library asks for */
	png_structp png;
	png_infop info;
	str bytes;
	size_t at;
	bool ran_out;
	struct pixels *out;
	uint8_t *gray;
	uint8_t spread[256][8];  /* the shades of eight pixels of one bit */
};

static void give_bytes(png_structp png, png_bytep to, size_t n)
{
	struct decoding *d = png_get_io_ptr(png);

	if (n > d->bytes.n - d->at) {
		d->ran_out = true;
		png_error(png, "ran out");
	}
	memcpy(to, d->bytes.p + d->at, n);
	d->at += n;
}

static png_voidp give_memory(png_structp png, png_alloc_size_t n)
{
	return arena_alloc(png_get_mem_ptr(png), n);
}

/* Freed with the arena, also when the library leaves by its long jump. */
static void take_memory(png_structp png, png_voidp p)
{
	(void)png;
	(void)p;
}

static void stay_silent(png_structp png, png_const_charp text)
{
	(void)png;
	(void)text;
}

static void leave(png_structp png, png_const_charp text)
{
	(void)text;
	png_longjmp(png, 1);
}

static void fill_spread(struct decoding *d)
{
	for (unsigned bits = 0; bits < 256; bits++)
		for (unsigned k = 0; k < 8; k++)
			d->spread[bits][k] = bits >> (7 - k) & 1 ? 255 : 0;
}

/* One row in place, from its end: the library's rows have room for whole bytes. */
static void spread_row(const struct decoding *d, size_t width, png_bytep v)
{
	for (size_t i = (width + 7) / 8; i-- > 0;)
		memcpy(v + 8 * i, d->spread[v[i]], 8);
}

/* One row in place: of one bit, or after the library has made it 8 bits a sample, gray or
 * color, each with alpha or without. */
static void row_to_gray(png_structp png, png_row_infop row, png_bytep v)
{
	unsigned channels = row->channels;
	bool color = channels > 2, clear = channels % 2 == 0;

	if (row->bit_depth == 1)
		spread_row(png_get_user_transform_ptr(png), row->width, v);
	for (size_t x = 0; x < row->width && channels > 1; x++) {
		const png_byte *p = v + x * channels;
		unsigned g = color ? (2126u * p[0] + 7152u * p[1] + 722u * p[2] + 5000) / 10000
		    : p[0];
		unsigned alpha = clear ? p[channels - 1] : 255u;

		v[x] = (png_byte)((g * alpha + 255u * (255 - alpha) + 127) / 255);
	}
}

/* Drawings in black and white have one bit a pixel; the library takes those apart one by
 * one, which costs more than all the rest. */
static bool is_of_bits(const struct decoding *d)
{
	return png_get_color_type(d->png, d->info) == PNG_COLOR_TYPE_GRAY &&
	    png_get_bit_depth(d->png, d->info) == 1 &&
	    !png_get_valid(d->png, d->info, PNG_INFO_tRNS);
}

/* False once the library has found a fault. Nothing of this frame is used after a jump but
 * what d points at. */
static bool decode(struct decoding *d)
{
	int passes;

	if (setjmp(png_jmpbuf(d->png)))
		return false;
	png_set_read_fn(d->png, d, give_bytes);
	png_set_user_limits(d->png, PICTURE_SIDE_MOST, PICTURE_SIDE_MOST);
	/* Only what the pixels need: no profile, text or date is unpacked. */
	png_set_keep_unknown_chunks(d->png, PNG_HANDLE_CHUNK_NEVER, NULL, -1);
	png_read_info(d->png, d->info);
	if (is_of_bits(d))
		fill_spread(d);
	else
		png_set_expand(d->png);
	png_set_scale_16(d->png);
	png_set_read_user_transform_fn(d->png, row_to_gray);
	png_set_user_transform_info(d->png, d, 8, 1);
	passes = png_set_interlace_handling(d->png);
	png_read_update_info(d->png, d->info);
	while (passes-- > 0)
		for (uint32_t y = 0; y < d->out->height; y++)
			png_read_row(d->png, d->gray + (size_t)y * d->out->width, NULL);
	png_read_end(d->png, NULL);
	return true;
}

static uint32_t number_at(str bytes, size_t at)
{
	const unsigned char *p = (const unsigned char *)bytes.p + at;

	return (uint32_t)p[0] << 24 | (uint32_t)p[1] << 16 | (uint32_t)p[2] << 8 | p[3];
}

/* What can be told before anything is unpacked. */
static str head_fault(str bytes)
{
	static const char signature[SIGNATURE + 1] = "\x89PNG\r\n\x1a\n";
	uint32_t width, height;

	if (!bytes.n)
		return STR("the file is empty");
	if (str_starts(bytes, STR("\xff\xd8\xff")))
		return STR("it is a JPEG photograph, whatever its name says");
	if (str_starts(bytes, STR("\x89PNG")) && bytes.n < HEAD)
		return STR("it is cut short");
	if (!str_starts(bytes, (str){ signature, SIGNATURE }))
		return STR("it is no PNG, whatever its name says");
	if (bytes.n > PICTURE_FILE_MOST)
		return STR("it is larger than 64 MiB");
	width = number_at(bytes, WIDTH_AT);
	height = number_at(bytes, HEIGHT_AT);
	if (!width || !height)
		return STR("it is damaged: it has no width or no height");
	if (width > PICTURE_SIDE_MOST || height > PICTURE_SIDE_MOST ||
	    (uint64_t)width * height > PICTURE_PIXELS_MOST)
		return STR("it has more than 8,000 pixels one way or 25 million in all");
	return (str){ 0 };
}

/* Of eight pixels, how many have their highest bit set. */
static size_t count_high(uint64_t word)
{
	const uint64_t ones = 0x0101010101010101u;

	return (size_t)(((word >> 7 & ones) * ones) >> 56);
}

/* Dark is below 128. What is tinted, 64 to 191, differs in its two highest bits. */
static void count_shades(struct pixels *p)
{
	size_t dark = 0, tint = 0, n = (size_t)p->width * p->height;

	for (size_t i = 0; i < n; i += 8) {
		uint64_t word = blend_word_at(p->gray + i);

		dark += count_high(~word);
		tint += count_high(word ^ word << 1);
	}
	p->dark = (double)dark / (double)n;
	p->tint = (double)tint / (double)n;
}

/* Millions of pixels would keep SHA-256 longer than all the rest of an inspection. */
static void digest_picture(struct pixels *p)
{
	struct blend d = { p->width, p->height };
	struct sha256 h;

	blend_bytes(&d, p->gray, (size_t)p->width * p->height);
	sha256_init(&h);
	blend_end(&d, &h);
	sha256_end(&h, p->digest);
}

static bool unpack(struct decoding *d)
{
	d->png = png_create_read_struct_2(PNG_LIBPNG_VER_STRING, NULL, leave, stay_silent,
	    d->scratch, give_memory, take_memory);
	d->info = d->png ? png_create_info_struct(d->png) : NULL;
	return d->info && decode(d);
}

/* Behind the last row stand seven pixels of white, so that words end where they may. */
static uint8_t *new_rows(struct arena *a, size_t n)
{
	uint8_t *v = arena_alloc(a, n + 7);

	memset(v + n, 255, 7);
	return v;
}

const struct pixels *picture_read(struct arena *a, str bytes)
{
	struct pixels *p = arena_alloc(a, sizeof *p);
	struct decoding d = { .bytes = bytes, .out = p };

	p->fault = head_fault(bytes);
	if (p->fault.n)
		return p;
	p->width = number_at(bytes, WIDTH_AT);
	p->height = number_at(bytes, HEIGHT_AT);
	p->gray = d.gray = new_rows(a, (size_t)p->width * p->height);
	d.scratch = arena_beside(a);
	if (!unpack(&d)) {
		p->width = p->height = 0;
		p->fault = d.ran_out ? STR("it is cut short") : STR("it is damaged");
	} else {
		count_shades(p);
		digest_picture(p);
	}
	arena_free(d.scratch);
	return p;
}
