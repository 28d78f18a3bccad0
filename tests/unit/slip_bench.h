/* Shared by tests that make slips in a program without a finding and see what is told. */
#ifndef TESTS_SLIP_BENCH_H
#define TESTS_SLIP_BENCH_H

#include "remedy_bench.h"

/* The heading and facts of a coupon in stick; what follows are its sections. */
#define COUPON(id, title, joint, position, machines) \
	"# " id ": " title "\n\n" \
	"- **Kind:** coupon\n- **Hours:** 10\n- **Station:** booth\n- **Process:** SMAW\n" \
	"- **Joint:** " joint "\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n" \
	"- **Position:** " position "\n- **Filler:** E7018, 1/8 in\n" \
	"- **Current:** DC+, 110-140 A\n- **Oven:** 250-300 degF, 4 h out\n" \
	"- **Machines:** " machines "\n\n"

/* A shop and skills that such coupons do with. */
#define SHOP_TEXT \
	"# Shop\n\n## Station booth\n\n- **Places:** 4\n\n## Machine saw\n\n" \
	"- **Round:** 10 in\n\n## Machine grinder\n\n- **Wheel:** 8 in\n"
#define SKILLS_TEXT \
	"# Skills\n\n## PO1: Welds\n\n- **saf.shop:** Work safely in the shop\n" \
	"- **smaw.1f:** Weld a flat fillet\n- **smaw.2f:** Weld a horizontal fillet\n"

/* A place in one of the files, by index, and what is written there in its place; the first
 * place counts. right null: no slip. */
struct slip_made {
	size_t file;
	const char *right, *wrong;
};

static inline const char *slip_text(struct arena *a, const char *text,
    const struct slip_made *s)
{
	str t = str_of(text), right = str_of(s->right);
	size_t at = str_find(t, right, 0);
	struct buf b = { .arena = a };

	if (at >= t.n)
		fail_msg("no \"%s\"", s->right);
	buf_add(&b, str_sub(t, 0, at));
	buf_adds(&b, s->wrong);
	buf_add(&b, str_sub(t, at + right.n, t.n));
	return buf_z(&b);
}

/* What is told of a program with these slips once all remedies were tried; *before is how
 * much it was without. */
static inline struct bench slip_bench(const struct file_text *program, size_t nfiles,
    const struct slip_made *v, size_t n, size_t *before)
{
	struct arena *a = arena_new(NULL, NULL);
	struct file_text files[REMEDY_FILES];
	struct bench t;

	for (size_t i = 0; i < nfiles; i++) {
		files[i] = program[i];
		for (size_t k = 0; k < n; k++)
			if (v[k].file == i && v[k].right)
				files[i].text = slip_text(a, files[i].text, &v[k]);
	}
	t = remedy_bench(files, nfiles);
	*before = t.f->n;
	remedy_settle(&t);
	arena_free(a);
	return t;
}

static inline void slip_check_clean(const struct file_text *program, size_t nfiles)
{
	size_t before;
	struct bench t = slip_bench(program, nfiles, NULL, 0, &before);

	expect_none(&t);
	assert_int_equal(before, 0);
	bench_free(&t);
}

/* How much is found before trials, and the one finding that is told after. */
struct slip_told {
	struct slip_made slip;
	size_t before;
	enum finding_name name;
	const char *repair;      /* part of it */
};

static inline void slip_check(const struct file_text *program, size_t nfiles,
    const struct slip_told *row)
{
	size_t before;
	struct bench t = slip_bench(program, nfiles, &row->slip, 1, &before);

	if (before != row->before || t.f->n != 1 || t.f->v[0].name != row->name ||
	    !str_has(t.f->v[0].repair, row->repair)) {
		print_findings(&t);
		fail_msg("\"%s\": %zu before", row->slip.wrong, before);
	}
	bench_free(&t);
}

/* Two slips that have nothing to do with one another stay two findings. */
static inline void slip_check_pairs(const struct file_text *program, size_t nfiles,
    const struct slip_made (*pairs)[2], size_t n)
{
	for (size_t i = 0; i < n; i++) {
		size_t before;
		struct bench t = slip_bench(program, nfiles, pairs[i], 2, &before);

		if (t.f->n != 2) {
			print_findings(&t);
			fail_msg("pair %zu: %zu before", i, before);
		}
		bench_free(&t);
	}
}

#endif
