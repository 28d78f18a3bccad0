/* Shared by the tests of acceptance sets: all shipped ones read, and one limit found. */
#ifndef TESTS_STANDARD_BENCH_H
#define TESTS_STANDARD_BENCH_H

#include "model_bench.h"

#include "base/standards.h"
#include "cli/shipped.h"
#include "model/standard.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(v) (sizeof(v) / sizeof *(v))

struct wanted { double t_mm, leg_mm, width_mm; bool open_root; };

static inline struct limit_sizes sizes_for(struct wanted w)
{
	struct limit_sizes z = { .v = { [SIZE_T] = w.t_mm, [SIZE_LEG] = w.leg_mm,
	    [SIZE_THROAT] = w.leg_mm / sqrt(2), [SIZE_WIDTH] = w.width_mm ? w.width_mm
	    : w.leg_mm * sqrt(2), [SIZE_ROOT_WIDTH] = w.width_mm,
	    [SIZE_OPEN_ROOT] = w.open_root } };

	for (int i = 0; i < SIZES; i++)
		z.known[i] = z.v[i] > 0 || i == SIZE_OPEN_ROOT;
	return z;
}

/* All sets read, whichever are named. */
static inline struct bench all_sets(void)
{
	struct file_text one = { "skills.md", "# Skills\n" };
	struct bench t = bench_bind(&one, 1);

	for (size_t i = 0; i < t.m->nshipped; i++)
		t.m->shipped[i].wanted = true;
	shipped_read(t.arena, t.m, &t.sources, t.f);
	return t;
}

static inline const struct standard *set_named(const struct model *m, const char *name)
{
	for (size_t i = 0; i < m->nshipped; i++)
		if (str_eq(m->shipped[i].name, str_of(name)))
			return &m->shipped[i];
	print_error("no set %s\n", name);
	return NULL;
}

/* The one limit of that name which holds for the sizes; null when there is none. */
static inline const struct standard_limit *find(const struct standard *s,
    enum standard_test test,
    unsigned welds, const struct limit_sizes *z, const char *name)
{
	const struct standard_limit *found = NULL;

	for (size_t i = 0; i < s->n; i++) {
		const struct standard_limit *l = &s->v[i];
		double holds = 1;

		if (l->test != test || !(l->welds & welds) || !str_eq(l->name,
		    str_of(name)))
			continue;
		if (l->where.v)
			assert_true(limit_expr_value(&l->where, z, &holds));
		if (holds == 0)
			continue;
		if (found)
			print_error("%s twice\n", name);
		assert_null(found);
		found = l;
	}
	return found;
}

#endif
