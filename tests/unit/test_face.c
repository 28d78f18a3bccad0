#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/arena.h"
#include "draw/face.h"

#include <hpdf.h>

#include <math.h>


static const char *const files[FACE_COUNT] = {
	"templates/fonts/IBMPlexSans_400Regular.ttf",
	"templates/fonts/IBMPlexSans_700Bold.ttf",
	"templates/fonts/IBMPlexSans_400Regular_Italic.ttf",
	"templates/fonts/IBMPlexSans_700Bold_Italic.ttf",
	"templates/fonts/IBMPlexMono_400Regular.ttf",
	"templates/fonts/IBMPlexMono_700Bold.ttf",
};

static int setup(void **state)
{
	*state = arena_new(NULL, NULL);
	return 0;
}

static int teardown(void **state)
{
	arena_free(*state);
	return 0;
}

/* The PDF library reads the same files on its own. */
static void widths_agree_with_the_library(void **state)
{
	static const char *const samples[] = {
		"Tee fillet 2F, three passes", "110-140 A, 1/8 in E7018",
		"\xc2\xbd \xe2\x85\x9c \xc2\xb0 \xc2\xb1 \xc3\x97 \xc3\x98",
		"\xe2\x89\xa4 \xe2\x89\xa5",
		"ma\xc3\xb1""ana caf\xc3\xa9 \xe2\x80\x93 \xe2\x80\x94 \xe2\x80\x99",
		"!\"#$%&'()*+,-./0123456789:;<=>?@[\\]^_`{|}~", "AVAWATo fi fl ffi",
	};
	const struct faces *f = faces_new(*state);
	HPDF_Doc doc = HPDF_New(NULL, NULL);

	HPDF_UseUTFEncodings(doc);
	for (int face = 0; face < FACE_COUNT; face++) {
		HPDF_Font font = HPDF_GetFont(doc,
		    HPDF_LoadTTFontFromFile(doc, files[face], HPDF_TRUE), "UTF-8");

		assert_non_null(font);
		for (size_t i = 0; i < sizeof samples / sizeof samples[0]; i++) {
			str s = str_of(samples[i]);
			HPDF_TextWidth w = HPDF_Font_TextWidth(font,
			    (const HPDF_BYTE *)s.p, (HPDF_UINT)s.n);
			double ours = face_width_pt(f, (enum face_id)face, 1000, s);

			assert_true(w.width > 0);
			assert_int_equal((long)(ours + 0.5), w.width);
		}
	}
	HPDF_Free(doc);
}

static void characters_that_sheets_need(void **state)
{
	static const uint32_t needed[] = { 0xbd, 0x215c, 0xb0, 0xb1, 0xd7, 0xd8, 0x2264,
		0x2265,
		0x2013, 0x2014, 0x2019, 0xf1, 0xe9, ' ', 0xa0 };
	const struct faces *f = faces_new(*state);

	for (int face = 0; face < FACE_COUNT; face++) {
		for (size_t i = 0; i < sizeof needed / sizeof needed[0]; i++)
			assert_true(face_glyph(f, (enum face_id)face, needed[i]) != 0);
		assert_int_equal(face_glyph(f, (enum face_id)face, 0x2610), 0);
		assert_int_equal(face_glyph(f, (enum face_id)face, 0x1f600), 0);
		assert_int_equal(face_glyph(f, (enum face_id)face, 0xffffffff), 0);
	}
}

static void first_missing_character(void **state)
{
	const struct faces *f = faces_new(*state);

	assert_int_equal(face_missing(f, FACE_SANS, STR("leg \xc2\xbd in")), 9);
	assert_int_equal(face_missing(f, FACE_SANS, STR("\xc2\xbd \xe2\x98\x90 x")), 3);
	assert_int_equal(face_missing(f, FACE_MONO, STR("")), 0);
}

/* Ascent 1025, descent 275, cap height 698 of 1000 units in every file: read with another
 * program from hhea and OS/2. All Mono characters are 600 wide, digits of Sans 600. */
static void heights_and_set_widths(void **state)
{
	const struct faces *f = faces_new(*state);

	for (enum face_id face = FACE_SANS; face < FACE_COUNT; face++) {
		assert_int_equal(lround(face_ascent_pt(f, face, 1000)), 1025);
		assert_int_equal(lround(face_descent_pt(f, face, 1000)), 275);
		assert_int_equal(lround(face_cap_height_pt(f, face, 1000)), 698);
		for (uint32_t c = '0'; c <= '9'; c++)
			assert_int_equal(face_advance(f, face, face_glyph(f, face, c)),
			    600);
	}
	assert_int_equal(face_advance(f, FACE_SANS, 65535), 0);
}

static void taking_characters_off(void **state)
{
	str s = STR("a\xc2\xbd\xe2\x85\x9c\xf0\x9f\x98\x80"), cut = STR("\xe2\x85");

	(void)state;
	assert_int_equal(utf8_next(&s), 'a');
	assert_int_equal(utf8_next(&s), 0xbd);
	assert_int_equal(utf8_next(&s), 0x215c);
	assert_int_equal(utf8_next(&s), 0x1f600);
	assert_int_equal(utf8_next(&s), 0);
	utf8_next(&cut);
	assert_int_equal(cut.n, 0);
}

/* face_missing passes over ASCII without a look. */
static void every_face_has_printing_ascii(void **state)
{
	const struct faces *f = faces_new(*state);

	for (int face = 0; face < FACE_COUNT; face++)
		for (uint32_t c = ' '; c <= '~'; c++)
			assert_int_not_equal(face_glyph(f, (enum face_id)face, c), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(widths_agree_with_the_library,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(characters_that_sheets_need,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(first_missing_character,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(every_face_has_printing_ascii,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(heights_and_set_widths,
		    setup, teardown),
		cmocka_unit_test(taking_characters_off),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
