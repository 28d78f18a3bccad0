#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/blend.h"

#include <string.h>

/* Worked out with whole numbers of any length, cut to 64 bits. */
static void as_worked_out_apart(void **state)
{
	static const uint64_t a = 0xD5A6FE8B5528637Au, b = 0xFA61128A4AC03A53u;
	struct blend d = BLEND_START;
	uint8_t got[SHA256_BYTES], want[SHA256_BYTES], ends[16];
	struct sha256 h;

	(void)state;
	blend_bytes(&d, "plate and pipe", 14);
	assert_true(d.a == a && d.b == b);
	for (int i = 0; i < 8; i++) {
		ends[i] = (uint8_t)(a >> 8 * i);
		ends[8 + i] = (uint8_t)(b >> 8 * i);
	}
	sha256_init(&h);
	blend_end(&d, &h);
	sha256_end(&h, got);
	sha256_init(&h);
	sha256_add(&h, ends, 16);
	sha256_end(&h, want);
	assert_memory_equal(got, want, SHA256_BYTES);
}

static struct blend of(const uint8_t *v, size_t n)
{
	struct blend d = BLEND_START;

	blend_bytes(&d, v, n);
	return d;
}

/* Every bit of three words and a rest changes both halves. */
static void every_bit_tells(void **state)
{
	uint8_t v[27] = { 0 };
	const struct blend before = of(v, sizeof v);

	(void)state;
	for (size_t i = 0; i < 8 * sizeof v; i++) {
		struct blend now;

		v[i / 8] ^= (uint8_t)(1u << i % 8);
		now = of(v, sizeof v);
		assert_true(now.a != before.a && now.b != before.b);
		v[i / 8] ^= (uint8_t)(1u << i % 8);
	}
}

/* Zeros at the end and at the start are counted, and so are runs. */
static void lengths_tell(void **state)
{
	static const uint8_t none[17] = { 0 };
	struct blend seen[18], cut = of(none, 5);

	(void)state;
	for (size_t n = 0; n <= 17; n++) {
		seen[n] = of(none, n);
		for (size_t k = 0; k < n; k++)
			assert_true(seen[k].a != seen[n].a && seen[k].b != seen[n].b);
	}
	blend_bytes(&cut, none, 12);
	assert_true(cut.a != seen[17].a && cut.b != seen[17].b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(as_worked_out_apart),
		cmocka_unit_test(every_bit_tells),
		cmocka_unit_test(lengths_tell),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
