#include "cli/run.h"

#include "check/check.h"
#include "check/waive.h"
#include "cli/shipped.h"
#include "read/md.h"
#include "sheets/review.h"

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
	return arena_new(out_of_memory, NULL);
}

static struct record_file *read_files(struct run *r)
{
	const struct folder *d = &r->folder;
	struct record_file *v = arena_array(r->arena, d->sources.n, sizeof *v);

	for (size_t i = 0; i < d->sources.n; i++) {
		v[i].file = (uint32_t)i;
		if (d->readable[i])
			v[i] = md_read(r->arena, &d->sources.v[i], (uint32_t)i, r->findings);
	}
	return v;
}

int run_begin(struct run *r, const struct options *o)
{
	struct record_file *files;
	struct arena *scratch;

	*r = (struct run){ .arena = run_scratch() };
	r->dir = o->folder ? o->folder : folder_default();
	if (!r->dir) {
		fputs("fitup: no program.md here and none in ./curriculum; name the program "
		      "folder with -C DIR\n", stderr);
		return EXIT_USAGE;
	}
	r->findings = findings_new(r->arena);
	if (!folder_read(r->arena, r->dir, &r->folder, r->findings)) {
		fprintf(stderr, "fitup: cannot read the folder %s: %s\n", r->dir, strerror(errno));
		return EXIT_USAGE;
	}
	files = read_files(r);
	r->model = model_bind(r->arena, &r->folder.sources, files, r->folder.sources.n,
	    r->findings);
	shipped_read(r->arena, r->model, &r->folder.sources, r->findings);
	scratch = run_scratch();
	check_program(scratch, r->model, r->findings);
	r->faces = faces_new(r->arena);
	sheets_review(r->arena, r->model, r->faces, r->findings);
	waive_apply(scratch, r->model, o->dated ? &o->date : NULL, r->findings);
	arena_free(scratch);
	findings_sort(r->findings);
	return EXIT_CLEAN;
}

void run_end(struct run *r)
{
	arena_free(r->arena);
}
