#include "cli/binding.h"

#include "cli/pool.h"

/* What one job works with. */
struct desk {
	struct arena *arena;
	struct findings *f;
};

struct work {
	struct binding *binding;
	struct desk *desks;      /* by job */
};

static void do_job(void *user, size_t i)
{
	struct work *w = user;

	binding_do(w->binding, i, w->desks[i].arena, w->desks[i].f);
}

struct model *binding_run(struct arena *a, const struct sources *sources,
    const struct record_file *files, size_t nfiles, struct findings *f)
{
	struct work w = { .binding = binding_begin(a, sources, files, nfiles, f) };
	size_t n = binding_jobs(w.binding);

	w.desks = arena_array(a, n, sizeof *w.desks);
	for (size_t i = 0; i < n; i++) {
		w.desks[i].arena = arena_beside(a);
		w.desks[i].f = findings_new(w.desks[i].arena);
	}
	pool_run(n, do_job, &w);
	for (size_t i = 0; i < n; i++) {
		findings_join(f, w.desks[i].f);
		arena_join(a, w.desks[i].arena);
	}
	return binding_end(w.binding);
}
