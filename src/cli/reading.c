#include "cli/reading.h"

#include "read/md.h"

/* About so many jobs, so that two threads end together; but none so small that handing it
 * out costs more than reading it. */
enum { JOBS = 16, JOB_LEAST = 16 << 10 };

/* Blocks take about so many times the room of their text. */
enum { BLOCKS_TO_TEXT = 4 };

/* One file or one part of a file: what a thread reads without a pause. */
struct stretch {
	uint32_t file;
	size_t part, bytes;
	struct record_file read;
};

struct stretches {
	struct stretch *v;
	size_t n, cap;
};

/* A run of stretches, and what was found in it. */
struct job {
	size_t first, end;
	struct findings *f;
};

struct readers {
	const struct folder *folder;
	struct arena *const *own;
	size_t job_bytes;
	struct md_text **texts;  /* by source; null: not readable */
	struct stretches files, parts, *now; /* whole files; parts of those that were cut */
	struct job *jobs; size_t njobs, jobs_cap;
};

static void add_stretch(struct arena *a, struct stretches *s, uint32_t file, size_t part,
    size_t bytes)
{
	*ARENA_PUSH(a, s->v, s->n, s->cap) = (struct stretch){ file, part, bytes, { 0 } };
}

static void cut_jobs(struct arena *a, struct readers *r)
{
	size_t bytes = r->job_bytes;

	r->njobs = 0;
	for (size_t i = 0; i < r->now->n; i++) {
		if (bytes >= r->job_bytes) {
			ARENA_PUSH(a, r->jobs, r->njobs, r->jobs_cap)->first = i;
			bytes = 0;
		}
		bytes += r->now->v[i].bytes;
		r->jobs[r->njobs - 1].end = i + 1;
	}
}

/* Lets two threads do all jobs; findings come in the order of the jobs. */
static void do_jobs(struct arena *a, struct readers *r, struct stretches *s,
    void (*work)(void *, unsigned, size_t), struct findings *f)
{
	r->now = s;
	cut_jobs(a, r);
	pool_run(POOL_THREADS, r->njobs, work, r);
	for (size_t i = 0; i < r->njobs; i++)
		findings_join(f, r->jobs[i].f);
}

/* Reads a text at once unless it is cut. */
static void open_text(struct readers *r, struct arena *a, struct stretch *s, struct findings *f)
{
	bool cut = r->folder->roles[s->file] == ROLE_ASSIGNMENTS;
	struct md_text *t = md_open(a, &r->folder->sources.v[s->file], s->file,
	    cut ? r->job_bytes : 0, f);

	r->texts[s->file] = t;
	if (md_parts(t) == 1)
		s->read = md_read_part(a, t, 0, f);
}

static void open_texts(void *user, unsigned thread, size_t i)
{
	struct readers *r = user;
	struct job *j = &r->jobs[i];

	j->f = findings_new(r->own[thread]);
	for (size_t k = j->first; k < j->end; k++)
		open_text(r, r->own[thread], &r->now->v[k], j->f);
}

static void read_parts(void *user, unsigned thread, size_t i)
{
	struct readers *r = user;
	struct job *j = &r->jobs[i];

	j->f = findings_new(r->own[thread]);
	for (size_t k = j->first; k < j->end; k++) {
		struct stretch *s = &r->now->v[k];

		s->read = md_read_part(r->own[thread], r->texts[s->file], s->part, j->f);
	}
}

static void list_files(struct arena *a, struct readers *r)
{
	const struct folder *d = r->folder;
	size_t total = 0;

	for (size_t i = 0; i < d->sources.n; i++) {
		if (!d->readable[i] || d->roles[i] == ROLE_PICTURE)
			continue;
		total += d->sources.v[i].text.n;
		add_stretch(a, &r->files, (uint32_t)i, 0, d->sources.v[i].text.n);
	}
	r->job_bytes = total / JOBS > JOB_LEAST ? total / JOBS : JOB_LEAST;
	for (int i = 0; i < POOL_THREADS; i++)
		arena_expect(r->own[i], BLOCKS_TO_TEXT * total / POOL_THREADS);
}

/* The parts of a file that was cut are a job each. */
static void list_parts(struct arena *a, struct readers *r)
{
	for (size_t i = 0; i < r->files.n; i++) {
		uint32_t file = r->files.v[i].file;
		size_t n = md_parts(r->texts[file]);

		for (size_t k = 0; n > 1 && k < n; k++)
			add_stretch(a, &r->parts, file, k, r->job_bytes);
	}
}

static const struct reading *new_reading(struct arena *a, const struct record_file *v,
    size_t n, const struct findings *f)
{
	struct reading *r = arena_alloc(a, sizeof *r);

	*r = (struct reading){ v, n, f };
	return r;
}

static const struct reading *gather(struct arena *a, const struct readers *r,
    const struct findings *f)
{
	struct record_file *v = arena_array(a, r->files.n + r->parts.n, sizeof *v);
	const struct stretch *part = r->parts.v;
	size_t n = 0;

	for (size_t i = 0; i < r->files.n; i++) {
		const struct stretch *s = &r->files.v[i];
		size_t parts = md_parts(r->texts[s->file]);

		if (parts == 1)
			v[n++] = s->read;
		for (size_t k = 0; parts > 1 && k < parts; k++)
			v[n++] = (part++)->read;
	}
	return new_reading(a, v, n, f);
}

const struct reading *reading_run(struct arena *a, struct arena *const own[POOL_THREADS],
    const struct folder *folder)
{
	struct readers r = { .folder = folder, .own = own };
	struct findings *f = findings_new(a);

	r.texts = arena_array(a, folder->sources.n, sizeof *r.texts);
	list_files(a, &r);
	do_jobs(a, &r, &r.files, open_texts, f);
	list_parts(a, &r);
	do_jobs(a, &r, &r.parts, read_parts, f);
	return gather(a, &r, f);
}

const struct reading *reading_again(struct arena *a, const struct folder *folder,
    const struct reading *before, const bool *edited)
{
	size_t nfiles = folder->sources.n, n = 0, at = 0;
	struct record_file *v = arena_array(a, before->n + nfiles, sizeof *v);
	struct findings *f = findings_new(a);

	/* An empty file had no blocks before, and may have some now. */
	for (uint32_t i = 0; i < nfiles; i++) {
		if (edited[i] && folder->readable[i] && folder->roles[i] != ROLE_PICTURE)
			v[n++] = md_read(a, &folder->sources.v[i], i, f);
		for (; at < before->n && before->v[at].file == i; at++)
			if (!edited[i])
				v[n++] = before->v[at];
	}
	for (size_t i = 0; i < before->f->n; i++)
		if (!edited[before->f->v[i].pos.file])
			finding_copy(f, &before->f->v[i]);
	return new_reading(a, v, n, f);
}
