#include "cli/binding.h"

#include "cli/reading.h"

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

struct model *binding_run(struct run *r)
{
	struct work w = { .own = r->own };
	size_t n;

	w.binding = binding_begin(r->arena, &r->folder.sources, r->read->v, r->read->n,
	    r->findings);
	n = binding_jobs(w.binding);
	w.found = arena_array(r->arena, n, sizeof(struct findings *));
	pool_run(r->threads, n, do_job, &w);
	for (size_t i = 0; i < n; i++)
		findings_join(r->findings, w.found[i]);
	return binding_end(w.binding);
}
