/* A trial goes by what the run before it knows. Whatever is edited, it finds what reading
 * and judging everything anew finds. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/edit.h"
#include "check/settle.h"
#include "check/waive.h"
#include "cli/binding.h"
#include "cli/judging.h"
#include "cli/reading.h"
#include "cli/shipped.h"
#include "cli/trying.h"
#include "sheets/hold.h"
#include "random_model.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

enum { FAULTS = 8, SEEDS = 40, TRIED = 12, HELD = 40 };

static const struct options plain = { .folder = "curriculum" };

/* A folder with the texts of another and edits of its own. */
static struct folder copy_folder(struct arena *a, const struct folder *from, size_t nfiles)
{
	struct folder d = *from;

	d.sources.n = nfiles;
	d.sources.v = arena_array_of(a, from->sources.v, nfiles, sizeof *d.sources.v);
	return d;
}

/* One line of one file that is no picture, dropped, doubled or with a letter changed;
 * returns the file. */
static uint32_t edit_once(struct arena *a, struct folder *d, uint64_t *x)
{
	struct edit e = { EDIT_DROP, 0, 0, { 0 }, 0 };
	struct source *s;
	str line;

	do {
		e.file = random_below(x, (uint32_t)d->sources.n);
		s = &d->sources.v[e.file];
	} while (d->roles[e.file] == ROLE_PICTURE || !s->text.n);
	e.line = 1 + random_below(x, (uint32_t)text_count_lines(s->text));
	line = text_line_at(s->text, e.line);
	e.kind = (enum edit_kind)random_below(x, 3);
	e.text = str_copy(a, line);
	if (e.kind == EDIT_REPLACE && line.n)
		((char *)(uintptr_t)e.text.p)[random_below(x, (uint32_t)line.n)] =
		    (char)('a' + (char)random_below(x, 26));
	s->text = edits_apply(a, s, e.file, &e, 1).text;
	return e.file;
}

/* A run and arenas of its own for each thread. */
struct bench {
	struct arena *all[1 + 2 * POOL_THREADS];
	struct run run;
};

static void bench_open(struct bench *b, const struct folder *d, size_t nfiles,
    unsigned threads)
{
	for (size_t i = 0; i < COUNT(b->all); i++)
		b->all[i] = arena_new(NULL, NULL);
	b->run = (struct run){ .arena = b->all[0], .threads = threads };
	for (int i = 0; i < POOL_THREADS; i++) {
		b->run.own[i] = b->all[1 + 2 * i];
		b->run.scratch[i] = b->all[2 + 2 * i];
	}
	b->run.folder = copy_folder(b->all[0], d, nfiles);
	b->run.findings = findings_new(b->all[0]);
}

static void bench_close(struct bench *b)
{
	for (size_t i = 0; i < COUNT(b->all); i++)
		arena_free(b->all[i]);
}

static void add_place(struct buf *b, struct pos pos, str who, str skill)
{
	buf_addf(b, "%u:%u:%u %.*s %.*s ", pos.file, pos.line, pos.col, STR_ARG(who),
	    STR_ARG(skill));
}

/* All but the repairs, which a trial need not put in words. */
static str found(struct arena *a, const struct run *r)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < r->findings->n; i++) {
		const struct finding *d = &r->findings->v[i];

		buf_addf(&b, "%s %u %u %u ", finding_info(d->name)->name, (unsigned)d->level,
		    (unsigned)d->scope, d->waived != NULL);
		add_place(&b, d->pos, d->assignment, d->skill);
		buf_addf(&b, "%.*s (%.*s)\n", STR_ARG(d->message), STR_ARG(d->cause));
		for (size_t k = 0; k < d->nrelated; k++) {
			buf_adds(&b, "  ");
			add_place(&b, d->related[k].pos, d->related[k].assignment,
			    d->related[k].skill);
			buf_addf(&b, "%.*s\n", STR_ARG(d->related[k].label));
		}
	}
	return buf_str(&b);
}

static void expect_same(str one, str two)
{
	if (!str_eq(one, two))
		fail_msg("one:\n%.*s\nother:\n%.*s", STR_ARG(one), STR_ARG(two));
}

static uint64_t seed_of(uint64_t i)
{
	return i * UINT64_C(0x9e3779b97f4a7c15);
}

/* The demo with eight faults, then with two more edits: in one arena, with what was before,
 * as a trial does, and anew on two threads. */
static void check_again(const struct run *demo, uint64_t seed)
{
	struct arena *a = arena_new(NULL, NULL);
	struct folder d = copy_folder(a, &demo->folder, demo->nfiles);
	bool *edited = arena_array(a, demo->nfiles, sizeof *edited);
	struct bench before, again, anew;

	for (int i = 0; i < FAULTS; i++)
		edit_once(a, &d, &seed);
	bench_open(&before, &d, demo->nfiles, 2);
	run_inspect(&before.run, &plain);
	assert_true(before.run.findings->n > 0);
	for (int i = 0; i < 2; i++)
		edited[edit_once(a, &d, &seed)] = true;
	bench_open(&anew, &d, demo->nfiles, 2);
	run_inspect(&anew.run, &plain);
	bench_open(&again, &d, demo->nfiles, 1);
	for (int i = 0; i < POOL_THREADS; i++)
		again.run.own[i] = again.run.scratch[i] = again.all[0];
	again.run.before = &before.run;
	again.run.edited = edited;
	run_inspect(&again.run, &plain);
	expect_same(found(a, &again.run), found(a, &anew.run));
	bench_close(&before);
	bench_close(&again);
	bench_close(&anew);
	arena_free(a);
}

static void again_is_as_anew(void **state)
{
	struct run demo;

	(void)state;
	assert_int_equal(run_begin(&demo, &plain), EXIT_CLEAN);
	for (uint64_t i = 1; i <= SEEDS; i++)
		check_again(&demo, seed_of(i));
	run_end(&demo);
}

/* What is told once remedies were tried, by one thread or two. */
static str told_by(struct arena *a, const struct folder *d, size_t nfiles, unsigned threads)
{
	struct bench b;
	str told;

	bench_open(&b, d, nfiles, threads);
	run_inspect(&b.run, &plain);
	trying_run(&b.run, &plain, findings_new(b.all[0]));
	told = found(a, &b.run);
	bench_close(&b);
	return told;
}

static void threads_tell_the_same(void **state)
{
	struct run demo;

	(void)state;
	assert_int_equal(run_begin(&demo, &plain), EXIT_CLEAN);
	for (uint64_t i = 1; i <= TRIED; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct folder d = copy_folder(a, &demo.folder, demo.nfiles);
		uint64_t seed = seed_of(i);

		for (int k = 0; k < 3; k++)
			edit_once(a, &d, &seed);
		expect_same(told_by(a, &d, demo.nfiles, 1), told_by(a, &d, demo.nfiles, 2));
		arena_free(a);
	}
	run_end(&demo);
}

/* One finding may explain others; nothing that they hold back is printed for that. */
static void expect_held(const struct model *m, const struct findings *all,
    const struct findings *told, const uint32_t *v, size_t n, uint32_t quarter,
    const struct language *l)
{
	const struct finding *why = hold_find(m, all, v, n, quarter, l);

	if (why && !hold_find(m, told, v, n, quarter, l))
		fail_msg("%.*s of quarter %u is printed (%.*s) in spite of %.*s",
		    STR_ARG(m->assignments[*v].id), quarter, STR_ARG(language_code(l)),
		    STR_ARG(why->message));
}

/* Each assignment by itself, and each as if it were all of a quarter. */
static void expect_all_held(const struct model *m, const struct findings *all,
    const struct findings *told)
{
	for (uint32_t i = 0; i < m->nassignments; i++) {
		expect_held(m, all, told, &i, 1, 0, NULL);
		for (size_t k = 0; language_at(k); k++)
			expect_held(m, all, told, &i, 1, 0, language_at(k));
	}
	for (uint32_t q = 1, any = 0; m->nassignments && q <= m->nquarters; q++) {
		expect_held(m, all, told, &any, 1, q, NULL);
		for (size_t k = 0; language_at(k); k++)
			expect_held(m, all, told, &any, 1, q, language_at(k));
	}
}

static struct findings *copy_findings(struct arena *a, const struct findings *f)
{
	struct findings *copy = findings_new(a);

	findings_join(copy, f);
	return copy;
}

static bool is_of_work(str line)
{
	return line.n && line.p[0] >= '0' && line.p[0] <= '9';
}

/* A line of program.md that gives work, elsewhere among the others; that may be another
 * quarter, as its week is kept. */
static void move_once(struct arena *a, struct folder *d, uint64_t *x)
{
	struct edit v[2] = { { EDIT_DROP, 0, 0, { 0 }, 0 }, { EDIT_ADD, 0, 0, { 0 }, 0 } };
	uint32_t file = 0;
	struct source *s;

	while (d->roles[file] != ROLE_PROGRAM)
		file++;
	s = &d->sources.v[file];
	for (int i = 0; i < 2; i++) {
		v[i].file = file;
		do
			v[i].line = 1 + random_below(x, (uint32_t)text_count_lines(s->text));
		while (!is_of_work(text_line_at(s->text, v[i].line)));
	}
	v[1].text = text_line_at(s->text, v[0].line);
	s->text = edits_apply(a, s, file, v, 2).text;
}

/* Faults, and what is told of them: as they are found, once what explains others took
 * them, and once remedies were tried. */
static void check_held(const struct run *demo, uint64_t seed)
{
	struct arena *a = arena_new(NULL, NULL);
	struct folder d = copy_folder(a, &demo->folder, demo->nfiles);
	struct bench b;
	struct run *r = &b.run;
	struct findings *found, *settled;

	for (uint32_t i = 0, n = 1 + random_below(&seed, 3); i < n; i++)
		if (random_below(&seed, 2))
			move_once(a, &d, &seed);
		else
			edit_once(a, &d, &seed);
	bench_open(&b, &d, demo->nfiles, 1);
	r->nfiles = r->folder.sources.n;
	r->read = reading_run(r->arena, r->own, &r->folder);
	findings_join(r->findings, r->read->f);
	r->model = binding_run(r);
	shipped_read(r->arena, r->model, &r->folder.sources, r->findings);
	judging_run(r);
	found = copy_findings(a, r->findings);
	waive_apply(r->scratch[0], r->model, NULL, found);
	findings_settle(r->scratch[0], r->model, r->findings);
	waive_apply(r->scratch[0], r->model, NULL, r->findings);
	findings_sort(r->findings);
	settled = copy_findings(a, r->findings);
	trying_run(r, &plain, findings_new(b.all[0]));
	expect_all_held(r->model, found, settled);
	expect_all_held(r->model, settled, r->findings);
	bench_close(&b);
	arena_free(a);
}

static void what_was_held_is_held(void **state)
{
	struct run demo;

	(void)state;
	assert_int_equal(run_begin(&demo, &plain), EXIT_CLEAN);
	for (uint64_t i = 1; i <= HELD; i++)
		check_held(&demo, seed_of(i));
	run_end(&demo);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(again_is_as_anew), cmocka_unit_test(threads_tell_the_same),
		cmocka_unit_test(what_was_held_is_held),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
