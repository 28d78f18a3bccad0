#include "cli/binding.h"

#include "cli/reading.h"

struct work {
	struct run *run;
	struct binding *binding;
	size_t n;                /* its jobs; one more reads the faces for the sheets */
	struct findings **found; /* by job */
};

static void do_job(void *user, unsigned thread, size_t i)
{
	struct work *w = user;
	struct arena *own = w->run->own[thread];

	if (i == w->n) {
		w->run->faces = w->run->before ? w->run->before->faces : faces_new(own);
		return;
	}
	w->found[i] = findings_new(own);
	binding_do(w->binding, i, own, w->found[i]);
}

struct model *binding_run(struct run *r)
{
	struct work w = { .run = r };

	w.binding = binding_begin(r->arena, &r->folder.sources, r->read->v, r->read->n,
	    r->findings);
	w.n = binding_jobs(w.binding);
	w.found = arena_array(r->arena, w.n, sizeof(struct findings *));
	pool_run(r->threads, w.n + 1, do_job, &w);
	for (size_t i = 0; i < w.n; i++)
		findings_join(r->findings, w.found[i]);
	return binding_end(w.binding);
}
