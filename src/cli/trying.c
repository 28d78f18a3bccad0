#include "cli/trying.h"

#include "check/remedy.h"

#include <stdatomic.h>

/* What each thread tries its remedies in: memory that is used again for the next one. */
struct bench {
	struct arena *arena, *scratch;
};

struct trying {
	const struct run *run;   /* the program as it stands */
	const struct options *options;
	const struct findings *listing;
	struct remedies *all;
	struct bench benches[POOL_THREADS];
	atomic_size_t last;      /* the first that mends everything: none behind it counts */
};

/* The texts that a remedy changes. */
struct texts {
	struct edited *v;
	size_t n;
	bool *edited;            /* by source */
};

static struct texts edit_texts(struct arena *a, const struct run *r, const struct remedy *m)
{
	struct texts t = { arena_array(a, m->nedits, sizeof(struct edited)), 0,
		arena_array(a, r->nfiles, sizeof(bool)) };

	for (size_t i = 0; i < m->nedits; i++) {
		uint32_t file = m->edits[i].file;

		if (file >= r->nfiles || t.edited[file])
			continue;
		t.edited[file] = true;
		t.v[t.n++] = edits_apply(a, &r->folder.sources.v[file], file, m->edits,
		    m->nedits);
	}
	return t;
}

/* The folder as if the edits had been made in it. */
static struct folder edited_folder(struct arena *a, const struct run *r,
    const struct texts *t)
{
	struct folder d = r->folder;

	d.sources.n = r->nfiles;
	d.sources.v = arena_array_of(a, r->folder.sources.v, r->nfiles, sizeof *d.sources.v);
	for (size_t i = 0; i < t->n; i++)
		d.sources.v[t->v[i].file].text = t->v[i].text;
	return d;
}

/* On the thread that calls alone, for there is another trial on the other. */
static struct run trial_of(const struct run *r, const struct bench *b,
    const struct texts *t)
{
	struct run trial = { .arena = b->arena, .threads = 1, .dir = r->dir, .before = r,
		.edited = t->edited };

	for (int i = 0; i < POOL_THREADS; i++) {
		trial.own[i] = b->arena;
		trial.scratch[i] = b->scratch;
	}
	trial.folder = edited_folder(b->arena, r, t);
	trial.findings = findings_new(b->arena);
	return trial;
}

static void lower(atomic_size_t *to, size_t i)
{
	size_t now = atomic_load(to);

	while (i < now && !atomic_compare_exchange_weak(to, &now, i))
		;
}

static void try_one(void *user, unsigned thread, size_t i)
{
	struct trying *y = user;
	const struct run *r = y->run;
	const struct bench *b = &y->benches[thread];
	struct remedy *m = y->all->tries[i];
	struct texts t;
	struct run trial;

	if (i > atomic_load(&y->last))
		return;
	t = edit_texts(b->arena, r, m);
	trial = trial_of(r, b, &t);
	findings_join(trial.findings, y->listing);
	run_inspect(&trial, y->options);
	remedy_judge(r->own[thread], m, r->findings, trial.findings, t.v, t.n);
	if (remedy_is_whole(m, r->findings))
		lower(&y->last, i);
	arena_clear(b->scratch);
	arena_clear(b->arena);
}

/* What a thread tried that was ahead of the other is forgotten, so that the threads change
 * nothing. */
static void try_all(struct trying *y)
{
	size_t n = y->all->ntries;

	for (int i = 0; i < POOL_THREADS; i++)
		y->benches[i] = (struct bench){ run_scratch(), run_scratch() };
	atomic_init(&y->last, n);
	pool_run(y->run->threads, n, try_one, y);
	for (size_t i = atomic_load(&y->last) + 1; i < n; i++)
		for (struct remedy *m = y->all->tries[i]; m; m = m->same)
			m->mends = NULL;
	for (int i = 0; i < POOL_THREADS; i++) {
		arena_free(y->benches[i].arena);
		arena_free(y->benches[i].scratch);
	}
}

void trying_run(struct run *r, const struct options *o, const struct findings *listing)
{
	struct trying y = { .run = r, .options = o, .listing = listing };

	y.all = remedies_find(r->arena, r->model, r->findings);
	if (y.all->ntries)
		try_all(&y);
	remedies_settle(y.all, r->findings);
}
