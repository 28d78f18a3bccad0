#include "cli/trying.h"

#include "check/remedy.h"

/* The texts that a remedy changes. */
struct texts {
	struct edited *v;
	size_t n;
};

static bool is_edited(const struct texts *t, uint32_t file)
{
	for (size_t i = 0; i < t->n; i++)
		if (t->v[i].file == file)
			return true;
	return false;
}

static struct texts edit_texts(struct arena *a, const struct run *r, const struct remedy *m)
{
	struct texts t = { arena_array(a, m->nedits, sizeof(struct edited)), 0 };

	for (size_t i = 0; i < m->nedits; i++) {
		uint32_t file = m->edits[i].file;

		if (file < r->nfiles && !is_edited(&t, file))
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

static void try_one(const struct run *r, const struct options *o,
    const struct findings *listing, struct remedy *m)
{
	struct run trial;
	struct texts t;

	run_arenas(&trial);
	t = edit_texts(trial.arena, r, m);
	trial.dir = r->dir;
	trial.folder = edited_folder(trial.arena, r, &t);
	trial.findings = findings_new(trial.arena);
	findings_join(trial.findings, listing);
	run_inspect(&trial, o);
	remedy_judge(r->arena, m, r->findings, trial.findings, t.v, t.n);
	run_end(&trial);
}

void trying_run(struct run *r, const struct options *o, const struct findings *listing)
{
	struct remedies *all = remedies_find(r->arena, r->model, r->findings);
	size_t most = remedies_most(r->model);

	for (size_t i = 0; i < all->n && i < most; i++) {
		try_one(r, o, listing, &all->v[i]);
		if (remedy_is_whole(&all->v[i], r->findings))
			break;
	}
	remedies_settle(all, r->findings);
}
