#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/fonts.h"
#include "base/sha256.h"
#include "base/str.h"
#include "draw/mark.h"

#include <stdio.h>
#include <string.h>

static void hex(struct sha256 *s, char out[65])
{
	uint8_t digest[SHA256_BYTES];

	sha256_end(s, digest);
	for (size_t i = 0; i < sizeof digest; i++)
		snprintf(out + 2 * i, 3, "%02x", digest[i]);
}

/* The examples published with FIPS 180: one block, two blocks, a million bytes. */
static void published_examples(void **state)
{
	static const struct {
		const char *text;
		int times;
		const char *digest;
	} examples[] = {
		{ "abc", 1,
		    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" },
		{ "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 1,
		    "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1" },
		{ "aaaaaaaaaa", 100000,
		    "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0" },
	};
	struct sha256 s;
	char out[65];

	(void)state;
	for (size_t i = 0; i < sizeof examples / sizeof examples[0]; i++) {
		sha256_init(&s);
		for (int k = 0; k < examples[i].times; k++)
			sha256_add(&s, examples[i].text, strlen(examples[i].text));
		hex(&s, out);
		assert_string_equal(out, examples[i].digest);
	}
}

/* However a message is cut, the digest is that of the whole. */
static void cuts_do_not_matter(void **state)
{
	unsigned char bytes[200];
	char whole[65], cut[65];
	struct sha256 s;

	(void)state;
	for (size_t i = 0; i < sizeof bytes; i++)
		bytes[i] = (unsigned char)(i * 7);
	for (size_t n = 0; n <= sizeof bytes; n++) {
		sha256_init(&s);
		sha256_add(&s, bytes, n);
		hex(&s, whole);
		sha256_init(&s);
		sha256_add(&s, bytes, n / 3);
		sha256_add(&s, bytes + n / 3, n - n / 3);
		hex(&s, cut);
		assert_string_equal(whole, cut);
	}
}

static void file_digest(const char *name, char out[65])
{
	char path[256], block[4096];
	struct sha256 s;
	size_t n;
	FILE *f;

	snprintf(path, sizeof path, "templates/fonts/%s", name);
	f = fopen(path, "rb");
	assert_non_null(f);
	sha256_init(&s);
	while ((n = fread(block, 1, sizeof block, f)) > 0)
		sha256_add(&s, block, n);
	fclose(f);
	hex(&s, out);
}

static int embedded(const char *digest)
{
	for (size_t i = 0; i < FONT_COUNT; i++) {
		struct font_bytes font = font_bytes(i);
		struct sha256 s;
		char out[65];

		sha256_init(&s);
		sha256_add(&s, font.p, font.n);
		hex(&s, out);
		if (strcmp(out, digest) == 0)
			return 1;
	}
	return 0;
}

/* The vendored files are the ones whose digests were noted, and so are the bytes inside
 * the program. Runs from the project root. */
static void fonts_are_unmodified(void **state)
{
	FILE *f = fopen("templates/fonts/SHA256SUMS", "r");
	char want[65], name[128], out[65];
	int files = 0, fonts = 0;

	(void)state;
	assert_non_null(f);
	while (fscanf(f, "%64s %127s", want, name) == 2) {
		file_digest(name, out);
		assert_string_equal(out, want);
		fonts += embedded(want);
		files++;
	}
	fclose(f);
	assert_int_equal(files, FONT_COUNT + 1);
	assert_int_equal(fonts, FONT_COUNT);
}

/* 31 is 10 in base 31, least digit first; the alphabet starts with 2, ends with Z. */
static void marks(void **state)
{
	uint8_t digest[SHA256_BYTES] = { 0 };
	char mark[MARK_CHARS + 1];

	(void)state;
	mark_write(digest, mark);
	assert_string_equal(mark, "2222222222");
	digest[7] = 1;
	mark_write(digest, mark);
	assert_string_equal(mark, "3222222222");
	digest[7] = 30;
	mark_write(digest, mark);
	assert_string_equal(mark, "Z222222222");
	digest[7] = 31;
	mark_write(digest, mark);
	assert_string_equal(mark, "2322222222");
	memset(digest, 0xa5, sizeof digest);
	mark_write(digest, mark);
	assert_int_equal(strlen(mark), MARK_CHARS);
	assert_null(strpbrk(mark, "01ILO"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(published_examples),
		cmocka_unit_test(cuts_do_not_matter),
		cmocka_unit_test(fonts_are_unmodified),
		cmocka_unit_test(marks),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
