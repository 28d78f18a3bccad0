/* Shared by the tests of src/model: files given as text, bound to a model. */
#ifndef TESTS_MODEL_BENCH_H
#define TESTS_MODEL_BENCH_H

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <setjmp.h>
#include <cmocka.h>

#include "base/buf.h"
#include "model/model.h"
#include "read/md.h"

#include <stdio.h>

struct bench {
	struct arena *arena;
	struct findings *f;
	struct sources sources;
	struct record_file files[8];
	struct model *m;
};

/* Pairs of path and text, in byte order of the paths; the model has copies of the texts. */
struct file_text { const char *path, *text; };

static inline struct bench bench_bind(const struct file_text *files, size_t n)
{
	struct bench t = { .arena = arena_new(NULL, NULL) };
	struct sources *sources = arena_alloc(t.arena, sizeof *sources);

	t.f = findings_new(t.arena);
	t.sources.v = arena_array(t.arena, n, sizeof *t.sources.v);
	t.sources.n = n;
	for (size_t i = 0; i < n; i++) {
		t.sources.v[i] = (struct source){ str_of(files[i].path),
			str_copy(t.arena, str_of(files[i].text)) };
		t.files[i] = md_read(t.arena, &t.sources.v[i], (uint32_t)i, t.f);
	}
	*sources = t.sources;
	t.m = model_bind(t.arena, sources, t.files, n, t.f);
	findings_sort(t.f);
	return t;
}

static inline struct bench bench_one(const char *text)
{
	struct file_text one = { "assignments/one.md", text };

	return bench_bind(&one, 1);
}

static inline void bench_free(struct bench *t)
{
	arena_free(t->arena);
}

static inline bool str_has(str s, const char *part)
{
	return !*part || str_find(s, str_of(part), 0) < s.n;
}

static inline void print_findings(const struct bench *t)
{
	for (size_t i = 0; i < t->f->n; i++) {
		const struct finding *d = &t->f->v[i];

		print_message("  %u:%u:%u %s: %.*s / %.*s\n", d->pos.file, d->pos.line,
		    d->pos.col, finding_info(d->name)->name, STR_ARG(d->message),
		    STR_ARG(d->repair));
	}
}

/* Exactly one finding, of that name, at that place, with words of its message and of
 * its repair. */
static inline const struct finding *expect_one(const struct bench *t,
    enum finding_name name, uint32_t line, uint32_t col, const char *message,
    const char *repair)
{
	const struct finding *d = t->f->v;

	if (t->f->n != 1 || d->name != name || d->pos.line != line || d->pos.col != col ||
	    !str_has(d->message, message) || !str_has(d->repair, repair)) {
		print_message("wanted %u:%u %s: %s / %s; there is\n", line, col,
		    finding_info(name)->name, message, repair);
		print_findings(t);
		fail();
	}
	return d;
}

static inline void expect_none(const struct bench *t)
{
	if (t->f->n)
		print_findings(t);
	assert_int_equal(t->f->n, 0);
}

static inline void expect_str(str s, const char *want)
{
	if (!str_eq(s, str_of(want)))
		fail_msg("\"%.*s\" is not \"%s\"", STR_ARG(s), want);
}

/* Within a millionth of a unit. */
static inline void expect_near(double x, double want)
{
	if (!(x - want < 1e-6 && want - x < 1e-6))
		fail_msg("%.9f is not %.9f", x, want);
}

/* Everything of an assignment but its places, as text: equal texts are equal models. */
static inline str dump_assignment(struct arena *a, const struct assignment *s)
{
	struct buf b = { .arena = a };

	buf_addf(&b, "%.*s|%.*s|%d|", STR_ARG(s->id), STR_ARG(s->title), (int)s->kind);
	buf_add_real(&b, s->hours, 6, false);
	buf_addf(&b, "|%u|%u", s->station, s->attempts);
	for (uint32_t i = 0; i < s->nprocesses; i++)
		buf_addf(&b, " p%d", (int)s->processes[i]);
	for (uint32_t i = 0; i < s->njoints; i++)
		buf_addf(&b, " j%d", (int)s->joints[i]);
	for (uint32_t i = 0; i < s->npositions; i++)
		buf_addf(&b, " @%d.%d", (int)s->positions[i].position,
		    (int)s->positions[i].progression);
	for (uint32_t i = 0; i < s->nmaterials; i++)
		buf_addf(&b, " m%.*s", STR_ARG(s->materials[i].text));
	for (uint32_t i = 0; i < s->nthicknesses; i++) {
		buf_adds(&b, " t");
		buf_add_real(&b, s->thicknesses[i].lo, 6, false);
	}
	for (uint32_t i = 0; i < s->nfillers; i++) {
		buf_addf(&b, " f%.*s.%.*s.", STR_ARG(s->fillers[i].class),
		    STR_ARG(s->fillers[i].where));
		buf_add_real(&b, s->fillers[i].dia.lo, 6, false);
	}
	for (uint32_t i = 0; i < s->ncurrents; i++) {
		buf_addf(&b, " c%.*s.", STR_ARG(s->currents[i].polarity));
		buf_add_real(&b, s->currents[i].amps.lo, 3, false);
		buf_addc(&b, '-');
		buf_add_real(&b, s->currents[i].amps.hi, 3, false);
	}
	for (size_t i = 0; i < s->nfacts; i++)
		buf_addf(&b, " %.*s=%.*s", STR_ARG(s->facts[i].key), STR_ARG(s->facts[i].text));
	for (size_t i = 0; i < s->nneeds; i++)
		for (size_t k = 0; k < s->needs[i].n; k++)
			buf_addf(&b, " n%u.%.*s.%d", (unsigned)i,
			    STR_ARG(s->needs[i].v[k].written), (int)s->needs[i].v[k].level);
	for (size_t i = 0; i < s->nteaches; i++)
		buf_addf(&b, " g%.*s.%d.%.*s", STR_ARG(s->teaches[i].written),
		    (int)s->teaches[i].level, STR_ARG(s->teaches[i].evidence));
	for (size_t i = 0; i < s->nwelds; i++) {
		buf_addf(&b, " w%d.%d.%d.%d.%d.", s->welds[i].letter, (int)s->welds[i].joint,
		    (int)s->welds[i].at.position, (int)s->welds[i].at.progression,
		    (int)s->welds[i].process);
		buf_add_real(&b, s->welds[i].t1_mm, 6, false);
		buf_addc(&b, '.');
		buf_add_real(&b, s->welds[i].leg_mm, 6, false);
	}
	for (size_t i = 0; i < s->npieces; i++)
		buf_addf(&b, " q%.*s.%u.%u.%.*s.%.*s", STR_ARG(s->pieces[i].name),
		    s->pieces[i].count, s->pieces[i].ndims, STR_ARG(s->pieces[i].material),
		    STR_ARG(s->pieces[i].made));
	for (size_t i = 0; i < s->ngrades; i++)
		buf_addf(&b, " r%.*s.%u.%d", STR_ARG(s->grades[i].name), s->grades[i].weight,
		    s->grades[i].must_pass);
	buf_addf(&b, " pass%u", s->pass_mark);
	return buf_str(&b);
}

#endif
