/* A model made by jobs in whatever order is the model made in one go. */
#include "model_bench.h"

#include "model/standard.h"

/* More than one part of assignments; every third names a machine and a station that the
 * shop does not have, uses a skill that nobody lists, shows the picture and is judged by a
 * shipped set. */
enum { SHEETS = 100 };

static str many_sheets(struct arena *a)
{
	struct buf b = { .arena = a };

	for (int i = SHEETS; i > 0; i--) {
		buf_addf(&b, "# WE-%d: Sheet %d\n\n- **Kind:** drill\n- **Hours:** %d\n", i, i,
		    i % 7 + 1);
		if (i % 3 == 0)
			buf_adds(&b, "- **Station:** cave\n- **Machines:** shear, loom\n");
		buf_addf(&b, "\n## Needs\n\n- w.%d practiced\n", i % 3 ? 1 : 9);
		if (i % 3 == 0)
			buf_adds(&b, "\n## Acceptance\n\n- **Visual:** D1.1-2020\n\n## Drawing\n\n"
			    "![a vise on a bench](../pictures/vise.png)\n");
		buf_adds(&b, "\n");
	}
	return buf_str(&b);
}

static str program_of(struct arena *a)
{
	struct buf b = { .arena = a };

	buf_adds(&b, "# College: Program\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n"
	    "### WE 1: Course\n\n- **Credits:** 5\n- **Lecture hours:** 11\n"
	    "- **Lab hours:** 900\n\n");
	for (int i = 1; i <= SHEETS + 1; i++)
		buf_addf(&b, "1. WE-%d, week 1\n", i);
	return buf_str(&b);
}

struct program {
	struct bench t;
	size_t njobs;
};

/* Of program, skills, shop, sheets and a picture, which the reader does not see; order is
 * a job for each of those that there are, or null for model_bind. */
static struct program bind(size_t (*order)(size_t i, size_t n))
{
	struct program p = { .t.arena = arena_new(NULL, NULL) };
	struct bench *t = &p.t;
	struct source files[] = {
		{ STR("assignments/all.md"), many_sheets(t->arena) },
		{ STR("pictures/vise.png"), STR("") },
		{ STR("program.md"), program_of(t->arena) },
		{ STR("shop.md"), STR("# Shop\n\n## Station booth\n\n- **Places:** 4\n\n"
		    "## Machine shear\n\n- **Cuts:** 1/4 in\n") },
		{ STR("skills.md"), STR("# Skills\n\n## PO1: Works\n\n- **w.1:** Cuts\n") },
	};
	static const uint32_t read[] = { 0, 2, 3, 4 };
	struct binding *x;

	t->f = findings_new(t->arena);
	t->sources.v = arena_array(t->arena, 5, sizeof *t->sources.v);
	t->sources.n = 5;
	for (size_t i = 0; i < 5; i++)
		t->sources.v[i] = files[i];
	for (size_t i = 0; i < 4; i++)
		t->files[i] = md_read(t->arena, &t->sources.v[read[i]], read[i], t->f);
	if (!order) {
		t->m = model_bind(t->arena, &t->sources, t->files, 4, t->f);
		return p;
	}
	x = binding_begin(t->arena, &t->sources, t->files, 4, t->f);
	p.njobs = binding_jobs(x);
	struct findings **own = arena_array(t->arena, p.njobs, sizeof *own);
	for (size_t i = 0; i < p.njobs; i++) {
		size_t job = order(i, p.njobs);
		struct arena *beside = arena_beside(t->arena);

		own[job] = findings_new(beside);
		binding_do(x, job, beside, own[job]);
		arena_join(t->arena, beside);
	}
	for (size_t i = 0; i < p.njobs; i++)
		findings_join(t->f, own[i]);
	t->m = binding_end(x);
	return p;
}

static size_t backwards(size_t i, size_t n)
{
	return n - 1 - i;
}

static size_t from_the_middle(size_t i, size_t n)
{
	return (i + n / 2) % n;
}

static void expect_same(const struct program *p, const struct program *q)
{
	const struct bench *t = &p->t, *u = &q->t;

	assert_int_equal(t->m->nassignments, SHEETS);
	assert_int_equal(u->m->nassignments, SHEETS);
	for (size_t i = 0; i < SHEETS; i++)
		assert_true(str_eq(dump_assignment(t->arena, &t->m->assignments[i]),
		    dump_assignment(u->arena, &u->m->assignments[i])));
	assert_int_equal(t->m->nslots, u->m->nslots);
	for (size_t i = 0; i < t->m->nslots; i++)
		assert_int_equal(t->m->slots[i].assignment, u->m->slots[i].assignment);
	assert_int_equal(t->m->pictures[0].uses, u->m->pictures[0].uses);
	for (size_t i = 0; i < t->m->nshipped; i++)
		assert_int_equal(t->m->shipped[i].wanted, u->m->shipped[i].wanted);
	assert_int_equal(t->f->n, u->f->n);
	for (size_t i = 0; i < t->f->n; i++) {
		const struct finding *d = &t->f->v[i], *e = &u->f->v[i];

		assert_int_equal(d->name, e->name);
		assert_int_equal(pos_cmp(d->pos, e->pos), 0);
		assert_true(str_eq(d->message, e->message) && str_eq(d->repair, e->repair));
		assert_int_equal(d->nrelated, e->nrelated);
	}
}

static void jobs_in_any_order(void **state)
{
	struct program once = bind(NULL), back = bind(backwards), mid = bind(from_the_middle);

	(void)state;
	assert_true(back.njobs > 3);
	expect_same(&once, &back);
	expect_same(&once, &mid);
	bench_free(&once.t);
	bench_free(&back.t);
	bench_free(&mid.t);
}

static const struct finding *find(const struct bench *t, enum finding_name name,
    const char *words)
{
	const struct finding *hit = NULL;

	for (size_t i = 0; i < t->f->n; i++)
		if (t->f->v[i].name == name && str_has(t->f->v[i].message, words)) {
			assert_null(hit);
			hit = &t->f->v[i];
		}
	assert_non_null(hit);
	return hit;
}

/* What all parts have in common is told once, and counts from all of them: 33 of 100
 * sheets are the third of something. */
static void what_parts_share(void **state)
{
	struct program p = bind(NULL);
	const struct model *m = p.t.m;
	size_t wanted = 0;

	(void)state;
	assert_int_equal(find(&p.t, FINDING_UNKNOWN_WORD, "\"cave\"")->nrelated, 32);
	assert_int_equal(find(&p.t, FINDING_UNKNOWN_WORD, "\"loom\"")->nrelated, 32);
	assert_true(str_eq(find(&p.t, FINDING_UNKNOWN_WORD, "\"cave\"")->assignment,
	    STR("WE-12")));
	find(&p.t, FINDING_UNKNOWN_ASSIGNMENT, "WE-101");
	assert_int_equal(m->pictures[0].uses, 33);
	for (size_t i = 0; i < m->nshipped; i++)
		wanted += m->shipped[i].wanted;
	assert_int_equal(wanted, 1);
	bench_free(&p.t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(jobs_in_any_order),
		cmocka_unit_test(what_parts_share),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
