/* Pictures: what the reader refuses, how drawings name them, what printing makes of them.
 * Pixels of every kind of PNG are judged in tests/outside/picture.sh. */
#include "model_bench.h"

#include "read/picture.h"
#include "sheets/review.h"

#include <string.h>
#include <zlib.h>

/* ---- a small PNG by hand (ISO/IEC 15948): gray, 8 bits, every row unfiltered ---- */

static void add_number(struct buf *b, uint32_t v)
{
	for (int shift = 24; shift >= 0; shift -= 8)
		buf_addc(b, (char)(v >> shift & 255));
}

static void add_chunk(struct buf *b, const char *name, str data)
{
	struct buf body = { .arena = b->arena };

	buf_adds(&body, name);
	buf_add(&body, data);
	add_number(b, (uint32_t)data.n);
	buf_add(b, buf_str(&body));
	add_number(b, (uint32_t)crc32(0, (const unsigned char *)body.p, (uInt)body.n));
}

static str png_of(struct arena *a, uint32_t width, uint32_t height, const uint8_t *gray,
    size_t n)
{
	struct buf b = { .arena = a }, head = { .arena = a }, rows = { .arena = a };
	uLongf packed = compressBound((uLong)(n + height));
	char *p = arena_alloc(a, packed);

	for (size_t i = 0; i < n; i++) {
		if (i % width == 0)
			buf_addc(&rows, 0);
		buf_addc(&rows, (char)gray[i]);
	}
	add_number(&head, width);
	add_number(&head, height);
	buf_add(&head, (str){ "\x08\0\0\0\0", 5 });
	assert_int_equal(compress((unsigned char *)p, &packed,
	    (const unsigned char *)(rows.p ? rows.p : ""), (uLong)rows.n), Z_OK);
	buf_add(&b, (str){ "\x89PNG\r\n\x1a\n", 8 });
	add_chunk(&b, "IHDR", buf_str(&head));
	add_chunk(&b, "IDAT", (str){ p, packed });
	add_chunk(&b, "IEND", (str){ 0 });
	return buf_str(&b);
}

static const uint8_t six[6] = { 0, 64, 127, 128, 191, 255 };

static void shades_are_read_and_counted(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	const struct pixels *p = picture_read(a, png_of(a, 3, 2, six, 6));
	const struct pixels *q = picture_read(a, png_of(a, 2, 3, six, 6));

	(void)state;
	assert_int_equal(p->fault.n, 0);
	assert_true(p->width == 3 && p->height == 2);
	assert_memory_equal(p->gray, six, 6);
	expect_near(p->dark, 3.0 / 6);
	expect_near(p->tint, 4.0 / 6);
	/* The same pixels in another shape are another picture. */
	assert_memory_not_equal(p->digest, q->digest, SHA256_BYTES);
	arena_free(a);
}

/* Each pixel counts, also the last ones that fill no word of eight; and equal pixels agree. */
static void digests_tell_every_pixel(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	uint8_t v[21 * 5], seen[21 * 5 + 1][SHA256_BYTES];

	(void)state;
	for (size_t k = 0; k <= sizeof v; k++) {
		memset(v, 255, sizeof v);
		if (k < sizeof v)
			v[k] = 254;
		memcpy(seen[k], picture_read(a, png_of(a, 21, 5, v, sizeof v))->digest,
		    SHA256_BYTES);
		assert_memory_equal(seen[k], picture_read(a, png_of(a, 21, 5, v,
		    sizeof v))->digest, SHA256_BYTES);
		for (size_t i = 0; i < k; i++)
			assert_memory_not_equal(seen[i], seen[k], SHA256_BYTES);
	}
	arena_free(a);
}

static void expect_fault(str bytes, const char *want)
{
	struct arena *a = arena_new(NULL, NULL);
	const struct pixels *p = picture_read(a, bytes);

	if (!str_has(p->fault, want) || !p->fault.n)
		fail_msg("\"%.*s\" is not \"%s\"", STR_ARG(p->fault), want);
	assert_true(p->width == 0 && p->height == 0);
	arena_free(a);
}

static void what_is_no_picture_is_told(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	str good = png_of(a, 3, 2, six, 6);

	(void)state;
	expect_fault(STR(""), "is empty");
	expect_fault(STR("\xff\xd8\xff\xe0 JFIF"), "JPEG");
	expect_fault(STR("GIF89a and so on, long enough for a head of a PNG"), "no PNG");
	expect_fault(str_sub(good, 0, 20), "cut short");
	for (size_t n = 33; n < good.n; n++)
		expect_fault(str_sub(good, 0, n), "cut short");
	for (size_t i = 0; i < good.n; i++) {
		char *copy = arena_copy(a, good.p, good.n);

		copy[i] = (char)(copy[i] ^ 4);
		expect_fault((str){ copy, good.n }, "i");
	}
	arena_free(a);
}

/* A side of 8,000 and 25 million in all are the most; nothing is unpacked above. */
static void sizes_have_limits(void **state)
{
	struct arena *a = arena_new(NULL, NULL);

	(void)state;
	expect_fault(png_of(a, 8001, 1, six, 0), "8,000 pixels");
	expect_fault(png_of(a, 1, 8001, six, 0), "8,000 pixels");
	expect_fault(png_of(a, 5001, 5000, six, 0), "25 million");
	expect_fault(png_of(a, 1000000, 1000000, six, 0), "8,000 pixels");
	expect_fault(png_of(a, 0, 4, six, 0), "no width");
	/* At the limits it is the missing pixels that are told. */
	expect_fault(png_of(a, 8000, 3125, six, 0), "damaged");
	expect_fault(png_of(a, 5000, 5000, six, 0), "damaged");
	arena_free(a);
}

/* ---- named by an assignment ---- */

#define HEAD "# SM-01: Work\n\n- **Kind:** drill\n- **Hours:** 4\n\n## Drawing\n\n"

static struct bench bind(const char *text)
{
	const struct file_text files[] = { { "assignments/one.md", text },
		{ "pictures/bench vise.png", "# x\n" }, { "pictures/bench.png", "# x\n" } };

	return bench_bind(files, 3);
}

#define BOTH HEAD "The bench:\n\n![The bench from the front](../pictures/bench.png \"Bench\")\n\n" \
	"![The vise from above](../pictures/bench%20vise.png)\n"

static void drawings_show_pictures(void **state)
{
	struct bench t = bind(BOTH);
	const struct drawing *d = t.m->assignments[0].drawings;

	(void)state;
	expect_none(&t);
	assert_int_equal(t.m->assignments[0].ndrawings, 2);
	assert_int_equal(d[0].kind, DRAWING_PICTURE);
	expect_str(d[0].words, "The bench from the front");
	expect_str(d[0].title, "Bench");
	expect_str(d[0].caption.v[0].spans[0].text, "The bench:");
	expect_str(d[0].picture->path, "pictures/bench.png");
	expect_str(d[1].picture->path, "pictures/bench vise.png");
	assert_int_equal(d[1].picture->uses, 1);
	bench_free(&t);
}

static void addresses_stay_in_the_folder(void **state)
{
	static const struct { const char *address; enum finding_name name; const char *say; }
	rows[] = {
		{ "../../bench.png", FINDING_LINK_OUT, "leads out" },
		{ "/pictures/bench.png", FINDING_LINK_OUT, "leads out" },
		{ "https://bench.example/bench.png", FINDING_LINK_OUT, "leads out" },
		{ "file:///bench.png", FINDING_LINK_OUT, "leads out" },
		{ "../pictures/../../pictures/bench.png", FINDING_LINK_OUT, "leads out" },
		{ "../pictures/%2e%2e/%2e%2e/bench.png", FINDING_LINK_OUT, "leads out" },
		{ "pictures/bench.png", FINDING_MISSING_PICTURE, "assignments/pictures/bench.png" },
		{ "../pictures/bench.jpg", FINDING_MISSING_PICTURE, "pictures/bench.jpg" },
		{ "../pictures", FINDING_MISSING_PICTURE, "no picture pictures " },
		{ "..", FINDING_MISSING_PICTURE, "no picture" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char text[600];
		struct bench t;
		const struct drawing *d;

		snprintf(text, sizeof text, "%s\n![One more bench](%s)\n", BOTH, rows[i].address);
		t = bind(text);
		expect_one(&t, rows[i].name, 14, 1, rows[i].say, "");
		d = t.m->assignments[0].drawings;
		assert_true(t.m->assignments[0].ndrawings == 3 && !d[2].picture);
		bench_free(&t);
	}
}

static void roundabout_ways_inside_are_fine(void **state)
{
	struct bench t = bind(HEAD "![A bench](.././pictures//../pictures/bench.png)\n\n"
	    "![A vise](<../pictures/bench vise.png>)\n");

	(void)state;
	expect_none(&t);
	bench_free(&t);
}

static void pictures_have_words_and_uses(void **state)
{
	static const char *const bad[] = { "", "bench.png", "  bench  " };

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		char text[600];
		struct bench t;

		snprintf(text, sizeof text, "%s\n![%s](../pictures/bench.png)\n", BOTH, bad[i]);
		t = bind(text);
		expect_one(&t, FINDING_PICTURE_WITHOUT_WORDS, 14, 1, "does not say in words", "![");
		bench_free(&t);
	}
	struct bench t = bind(HEAD "![The bench from the front](../pictures/bench.png)\n");
	const struct finding *d = expect_one(&t, FINDING_UNUSED_PICTURE, 0, 0, "no assignment", "");

	expect_str(t.sources.v[d->pos.file].path, "pictures/bench vise.png");
	bench_free(&t);
	t = bind(BOTH "\n## Notes\n\n![The bench once more](../pictures/bench.png)\n");
	expect_one(&t, FINDING_NOT_UNDERSTOOD, 16, 1, "a picture has no meaning here",
	    "under ## Drawing");
	bench_free(&t);
	t = bind(BOTH "\n## Notes\n\nSee ![the bench](../pictures/bench.png) here.\n");
	expect_one(&t, FINDING_NOT_UNDERSTOOD, 16, 1, "a picture inside a sentence",
	    "## Drawing");
	bench_free(&t);
}

/* ---- seen before printing ---- */

/* The body is 6.5 in wide or less and prints the picture at most that wide. */
static void coarse_and_dark_are_notes(void **state)
{
	static const struct { uint32_t width; double dark, tint; int name; const char *say; }
	rows[] = {
		{ 2000, 0.1, 0.1, -1, "" },
		{ 2000, 0.5, 0.5, -1, "" },
		{ 2000, 0.51, 0.1, FINDING_DARK_PICTURE, "is dark over 51 %" },
		{ 2000, 0.1, 0.6, FINDING_DARK_PICTURE, "is gray over 60 %" },
		{ 400, 0.1, 0.1, FINDING_COARSE_PICTURE, "dots an inch" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct bench t = bind(BOTH);
		struct pixels p = { .width = rows[i].width, .height = rows[i].width / 2,
			.dark = rows[i].dark, .tint = rows[i].tint };

		t.m->pictures[1].pixels = &p;
		pictures_review(t.m, t.f);
		if (rows[i].name < 0)
			expect_none(&t);
		else
			expect_one(&t, (enum finding_name)rows[i].name, 10, 1, rows[i].say, "");
		bench_free(&t);
	}
}

static void faults_hold_their_sheet(void **state)
{
	struct bench t = bind(BOTH);
	struct pixels p = { .fault = STR("it is damaged") };
	const struct finding *d;

	(void)state;
	t.m->pictures[0].pixels = &p;
	pictures_review(t.m, t.f);
	d = expect_one(&t, FINDING_BAD_PICTURE, 12, 1, "pictures/bench vise.png cannot be shown: "
	    "it is damaged", "save");
	assert_int_equal(d->level, LEVEL_ERROR);
	expect_str(d->assignment, "SM-01");
	assert_int_equal(d->related[0].pos.file, 1);
	bench_free(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(shades_are_read_and_counted),
		cmocka_unit_test(digests_tell_every_pixel),
		cmocka_unit_test(what_is_no_picture_is_told),
		cmocka_unit_test(sizes_have_limits),
		cmocka_unit_test(drawings_show_pictures),
		cmocka_unit_test(addresses_stay_in_the_folder),
		cmocka_unit_test(roundabout_ways_inside_are_fine),
		cmocka_unit_test(pictures_have_words_and_uses),
		cmocka_unit_test(coarse_and_dark_are_notes),
		cmocka_unit_test(faults_hold_their_sheet),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
