#include "cli/run.h"

#include "check/settle.h"
#include "check/waive.h"
#include "cli/binding.h"
#include "cli/judging.h"
#include "cli/memory.h"
#include "cli/reading.h"
#include "cli/shipped.h"
#include "cli/trying.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static void out_of_memory(void *user)
{
	(void)user;
	static const char words[] = "fitup: out of memory\n";

	if (write(2, words, sizeof words - 1) < 0)
		_exit(EXIT_SYSTEM);
	_exit(EXIT_SYSTEM);
}

struct arena *run_scratch(void)
{
	struct arena *a = arena_new(out_of_memory, NULL);

	arena_use(a, &memory_store);
	return a;
}

static void make_arenas(struct run *r)
{
	*r = (struct run){ .arena = run_scratch(), .ground = ground_new(),
		.threads = POOL_THREADS };
	arena_use(r->arena, r->ground);
	for (int i = 0; i < POOL_THREADS; i++) {
		r->own[i] = arena_beside(r->arena);
		r->scratch[i] = arena_beside(r->arena);
	}
}

static void free_scratch(struct run *r)
{
	for (int i = 0; i < POOL_THREADS; i++) {
		arena_free(r->scratch[i]);
		r->scratch[i] = NULL;
	}
}

void run_inspect(struct run *r, const struct options *o)
{
	r->nfiles = r->folder.sources.n;
	r->read = r->before
	    ? reading_again(r->arena, &r->folder, r->before->read, r->edited)
	    : reading_run(r->arena, r->own, &r->folder);
	findings_join(r->findings, r->read->f);
	r->model = binding_run(r);
	shipped_read(r->arena, r->model, &r->folder.sources, r->findings);
	judging_run(r);
	findings_settle(r->scratch[0], r->model, r->findings);
	waive_apply(r->scratch[0], r->model, o->dated ? &o->date : NULL, r->findings);
	findings_sort(r->findings);
}

int run_begin(struct run *r, const struct options *o)
{
	struct findings *listing;

	make_arenas(r);
	r->dir = o->folder ? o->folder : folder_default();
	if (!r->dir) {
		fputs("fitup: no program.md here and none in ./curriculum; name the program "
		      "folder with -C DIR\n", stderr);
		return EXIT_USAGE;
	}
	listing = findings_new(r->arena);
	if (!folder_read(r->arena, r->own, r->dir, &r->folder, listing)) {
		fprintf(stderr, "fitup: cannot read the folder %s: %s\n", r->dir, strerror(errno));
		return EXIT_USAGE;
	}
	r->findings = findings_new(r->arena);
	findings_join(r->findings, listing);
	run_inspect(r, o);
	free_scratch(r);
	trying_run(r, o, listing);
	return EXIT_CLEAN;
}

void run_end(struct run *r)
{
	free_scratch(r);
	for (int i = 0; i < POOL_THREADS; i++)
		arena_free(r->own[i]);
	arena_free(r->arena);
	ground_free(r->ground);
}
