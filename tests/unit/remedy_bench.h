/* Shared by the tests of remedies: a program given as text, judged as `fitup inspect` does
 * but for what only sheets show, and remedies of its findings tried. */
#ifndef TESTS_REMEDY_BENCH_H
#define TESTS_REMEDY_BENCH_H

#include "model_bench.h"

#include "check/check.h"
#include "check/remedy_seek.h"
#include "check/settle.h"
#include "check/waive.h"

/* At most these files, which is what struct bench has room for. */
enum { REMEDY_FILES = 8 };

/* All findings of files already in memory, sorted, as they are before any remedy. */
static inline struct findings *remedy_findings(struct arena *a, const struct sources *s,
    struct model **m)
{
	struct record_file *files = arena_array(a, s->n, sizeof *files);
	struct arena *scratch = arena_new(NULL, NULL);
	struct findings *f = findings_new(a);

	for (size_t i = 0; i < s->n; i++)
		files[i] = md_read(a, &s->v[i], (uint32_t)i, f);
	*m = model_bind(a, s, files, s->n, f);
	check_program(scratch, *m, f);
	findings_settle(scratch, *m, f);
	waive_apply(scratch, *m, NULL, f);
	arena_free(scratch);
	findings_sort(f);
	return f;
}

/* Pairs of path and text, in byte order of the paths. Freed by bench_free. */
static inline struct bench remedy_bench(const struct file_text *files, size_t n)
{
	struct bench t = { .arena = arena_new(NULL, NULL) };
	struct sources *s = arena_alloc(t.arena, sizeof *s);

	assert_true(n <= REMEDY_FILES);
	s->v = arena_array(t.arena, n, sizeof *s->v);
	for (; s->n < n; s->n++)
		s->v[s->n] = (struct source){ str_of(files[s->n].path),
			str_copy(t.arena, str_of(files[s->n].text)) };
	t.sources = *s;
	t.f = remedy_findings(t.arena, s, &t.m);
	return t;
}

/* Reads and judges the program with the edits of one remedy, and notes what it mends. */
static inline void remedy_try(const struct bench *t, struct remedy *r)
{
	struct sources *s = arena_alloc(t->arena, sizeof *s);
	struct edited texts[REMEDY_FILES];
	struct model *m;

	s->v = arena_array_of(t->arena, t->sources.v, t->sources.n, sizeof *s->v);
	s->n = t->sources.n;
	for (uint32_t i = 0; i < s->n; i++) {
		texts[i] = edits_apply(t->arena, &t->sources.v[i], i, r->edits, r->nedits);
		s->v[i].text = texts[i].text;
	}
	remedy_judge(t->arena, r, t->f, remedy_findings(t->arena, s, &m), texts, s->n);
}

/* The remedies that one way of seeking makes for finding i. */
static inline struct remedies *remedy_seek(const struct bench *t, size_t i,
    void (*seek)(struct seeker *))
{
	struct seeker s = { .arena = t->arena, .m = t->m, .f = t->f,
		.out = arena_alloc(t->arena, sizeof(struct remedies)), .finding = (uint32_t)i };

	seek(&s);
	return s.out;
}

/* Tries all that fitup would try, and makes one finding of those that one mends. */
static inline void remedy_settle(struct bench *t)
{
	struct remedies *all = remedies_find(t->arena, t->m, t->f);

	for (size_t i = 0; i < all->ntries; i++) {
		remedy_try(t, all->tries[i]);
		if (remedy_is_whole(all->tries[i], t->f))
			break;
	}
	remedies_settle(all, t->f);
}

/* The first finding of a name, by index; fails when there is none. */
static inline uint32_t remedy_at(const struct bench *t, enum finding_name name)
{
	for (uint32_t i = 0; i < t->f->n; i++)
		if (t->f->v[i].name == name)
			return i;
	print_findings(t);
	fail_msg("no %s", finding_info(name)->name);
	return NONE;
}

#endif
