/* Small random programs for the tests that compare with brute.h: a fixed generator,
 * so that every run sees the same ones. */
#ifndef TESTS_RANDOM_MODEL_H
#define TESTS_RANDOM_MODEL_H

#include "fake_model.h"

/* A plain 64-bit linear congruential step; the high bits are used. */
static inline uint32_t random_below(uint64_t *x, uint32_t n)
{
	*x = *x * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return (uint32_t)(*x >> 33) % n;
}

/* A few skill words: mostly of skills.md, sometimes unknown or a misspelling. */
static inline void random_words(struct buf *b, uint64_t *x, uint32_t nskills,
    char between,
    uint32_t n)
{
	for (uint32_t i = 0; i < n; i++) {
		uint32_t odd = random_below(x, 40);

		buf_adds(b, i ? (const char[]){ between, 0 } : "");
		buf_addf(b, "%s%c%s%u", odd == 1 ? "q" : "", 'a' + (char)random_below(x,
		    nskills),
		    odd == 0 ? "zzzzzzz" : odd == 1 ? "weldng" : "welding",
		    odd == 2 ? 0 : 1 + random_below(x, 3));
	}
}

static inline const char *random_list(struct arena *a, uint64_t *x, uint32_t nskills,
    uint32_t most, bool choices)
{
	struct buf b = { .arena = a };
	uint32_t n = random_below(x, most + 1);

	for (uint32_t i = 0; i < n; i++) {
		uint32_t alts = choices && !random_below(x, 4) ? 2 + random_below(x, 2)
		    : 1;

		buf_adds(&b, i ? " " : "");
		random_words(&b, x, nskills, '|', alts);
	}
	return buf_z(&b);
}

/* Lines of one to three assignments; now and then one is left out of every course. */
static inline void random_lines(struct fake *k, uint64_t *x, uint32_t quarters,
    uint32_t weeks, uint32_t nworks)
{
	uint32_t w[FAKE_MOST];

	for (uint32_t i = 0; i < nworks; i++)
		w[i] = i;
	for (uint32_t i = nworks; i > 1; i--) {
		uint32_t j = random_below(x, i), swap = w[i - 1];

		w[i - 1] = w[j];
		w[j] = swap;
	}
	for (uint32_t i = 0; i < nworks;) {
		uint32_t n = random_below(x, 6) ? 1 : 2 + random_below(x, 2);
		uint32_t quarter = 1 + random_below(x, quarters),
		    week = 1 + random_below(x, weeks);
		struct buf ids = { .arena = k->a };

		for (uint32_t j = 0; j < n && i < nworks; j++, i++)
			buf_addf(&ids, "%sSM-%02u", j ? " " : "", w[i]);
		if (!random_below(x, 12))
			continue;
		if (random_below(x, 5))
			fake_at(k, quarter, week, buf_z(&ids));
		else
			fake_optional(k, quarter, week, buf_z(&ids));
	}
}

static inline const struct model *random_model(struct arena *a, uint64_t *x)
{
	uint32_t quarters = 1 + random_below(x, 3), weeks = 1 + random_below(x, 3);
	uint32_t nskills = 2 + random_below(x, 6), nworks = 2 + random_below(x, 8);
	struct fake *k = fake_new(a, quarters, weeks);
	struct buf skills = { .arena = a };

	for (uint32_t i = 0; i < nskills; i++)
		buf_addf(&skills, "%c%s ", 'a' + (char)i, "welding");
	fake_skills(k, buf_z(&skills));
	fake_brought(k, random_below(x, 3) ? "" : random_list(a, x, nskills, 1, false));
	for (uint32_t i = 0; i < nworks; i++)
		fake_work(k, str_format(a, "SM-%02u%c", i, 0).p,
		    random_list(a, x, nskills, 3, true), random_list(a, x, nskills, 2,
		    false));
	random_lines(k, x, quarters, weeks, nworks);
	for (uint32_t i = random_below(x, 3); i > 0; i--) {
		struct buf path = { .arena = a };
		uint32_t from = random_below(x, quarters), n = 1 + random_below(x,
		    quarters);

		for (uint32_t q = 0; q < n; q++)
			buf_addf(&path, "%u ", 1 + (from + q) % quarters);
		fake_path(k, buf_z(&path), random_list(a, x, nskills, 1, false));
	}
	return fake_done(k);
}

#endif
