/* A trial goes by what the run before it knows. Whatever is edited, it finds what reading
 * and judging everything anew finds. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/edit.h"
#include "cli/run.h"
#include "random_model.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

enum { FAULTS = 8, SEEDS = 40 };

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

/* Anew on two threads; with what was before, as a trial does, in one arena on one. */
static struct run inspect(struct arena *const *a, const struct folder *d,
    const struct run *before, const bool *edited)
{
	struct run r = { .arena = a[0], .threads = before ? 1 : 2, .before = before,
		.edited = edited };

	for (int i = 0; i < POOL_THREADS; i++) {
		r.own[i] = before ? a[0] : a[1 + 2 * i];
		r.scratch[i] = before ? a[0] : a[2 + 2 * i];
	}
	r.folder = copy_folder(a[0], d, d->sources.n);
	r.findings = findings_new(a[0]);
	run_inspect(&r, &plain);
	return r;
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

static void check_seed(const struct run *demo, uint64_t seed)
{
	struct arena *all[1 + 2 * POOL_THREADS], *a;
	struct folder d;
	bool *edited;
	struct run before, again, anew;
	str one, two;

	for (size_t i = 0; i < COUNT(all); i++)
		all[i] = arena_new(NULL, NULL);
	a = all[0];
	d = copy_folder(a, &demo->folder, demo->nfiles);
	edited = arena_array(a, demo->nfiles, sizeof *edited);
	for (int i = 0; i < FAULTS; i++)
		edit_once(a, &d, &seed);
	before = inspect(all, &d, NULL, NULL);
	for (int i = 0; i < 2; i++)
		edited[edit_once(a, &d, &seed)] = true;
	again = inspect(all, &d, &before, edited);
	anew = inspect(all, &d, NULL, NULL);
	assert_true(before.findings->n > 0);
	one = found(a, &again);
	two = found(a, &anew);
	if (!str_eq(one, two))
		fail_msg("again:\n%.*s\nanew:\n%.*s", STR_ARG(one), STR_ARG(two));
	for (size_t i = 0; i < COUNT(all); i++)
		arena_free(all[i]);
}

/* The demo as it stands, with eight faults, and with two more edits. */
static void again_is_as_anew(void **state)
{
	struct run demo;

	(void)state;
	assert_int_equal(run_begin(&demo, &plain), EXIT_CLEAN);
	for (uint64_t i = 1; i <= SEEDS; i++)
		check_seed(&demo, i * UINT64_C(0x9e3779b97f4a7c15));
	run_end(&demo);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(again_is_as_anew),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
