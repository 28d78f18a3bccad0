#include "cli/binding.h"

struct work {
	struct binding *binding;
	struct arena *const *own;
	struct findings **found; /* by job */
};

static void do_job(void *user, unsigned thread, size_t i)
{
	struct work *w = user;

	w->found[i] = findings_new(w->own[thread]);
	binding_do(w->binding, i, w->own[thread], w->found[i]);
}

struct model *binding_run(struct arena *a, struct arena *const own[POOL_THREADS],
    const struct sources *sources, const struct record_file *files, size_t nfiles,
    struct findings *f)
{
	struct work w = { binding_begin(a, sources, files, nfiles, f), own, NULL };
	size_t n = binding_jobs(w.binding);

	w.found = arena_array(a, n, sizeof(struct findings *));
	pool_run(n, do_job, &w);
	for (size_t i = 0; i < n; i++)
		findings_join(f, w.found[i]);
	return binding_end(w.binding);
}
