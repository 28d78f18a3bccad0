/* Lists of findings: copies, and what one lists of another. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/finding.h"

static struct finding *add(struct findings *f, uint32_t line)
{
	return finding_add(f, FINDING_UNTAUGHT_SKILL, (struct pos){ 0, line, 1 }, "%u", line);
}

/* Two lists have copies of one finding with room for more places: what one adds, neither
 * the other nor the first sees. */
static void copies_grow_apart(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct findings *first = findings_new(a), *one = findings_new(a), *two = findings_new(a);
	struct finding *d = add(first, 1);

	(void)state;
	finding_relate(first, d, (struct pos){ 0, 2, 1 });
	assert_true(d->related_cap > d->nrelated);
	finding_copy(one, d);
	findings_join(two, first);
	finding_relate(one, &one->v[0], (struct pos){ 0, 3, 1 });
	finding_relate(two, &two->v[0], (struct pos){ 0, 4, 1 });
	finding_relate(first, d, (struct pos){ 0, 5, 1 });
	for (uint32_t i = 0; i < 3; i++) {
		const struct finding *x = &(struct findings *[]){ one, two, first }[i]->v[0];

		assert_int_equal(x->nrelated, 2);
		assert_int_equal(x->related[0].pos.line, 2);
		assert_int_equal(x->related[1].pos.line, 3 + i);
	}
	arena_free(a);
}

/* One taken brings its own places along, and goes when the list is swept; the others keep
 * their order. */
static void one_taken_is_listed_with_its_places(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	struct findings *f = findings_new(a);

	(void)state;
	for (uint32_t i = 1; i <= 4; i++)
		add(f, i);
	finding_relate(f, &f->v[1], (struct pos){ 0, 7, 1 });
	finding_take(f, &f->v[3], &f->v[1]);
	assert_int_equal(f->n, 4);
	findings_sweep(f);
	assert_int_equal(f->n, 3);
	for (uint32_t i = 0; i < 3; i++)
		assert_int_equal(f->v[i].pos.line, i ? i + 2 : 1);
	assert_int_equal(f->v[2].nrelated, 2);
	assert_true(f->v[2].related[0].listed && !f->v[2].related[1].listed);
	assert_int_equal(f->v[2].related[0].pos.line, 2);
	assert_int_equal(f->v[2].related[1].pos.line, 7);
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(copies_grow_apart),
		cmocka_unit_test(one_taken_is_listed_with_its_places),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
