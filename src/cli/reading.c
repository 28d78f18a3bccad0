#include "cli/reading.h"

#include "cli/pool.h"
#include "read/md.h"

/* About so many jobs, so that two threads end together; but none so small that handing it
 * out costs more than reading it. */
enum { JOBS = 16, JOB_LEAST = 32 << 10 };

/* Blocks take about so many times the room of their text. */
enum { BLOCKS_TO_TEXT = 4 };

/* One file or one part of a file: what a thread reads without a pause. */
struct stretch {
	uint32_t file;
	size_t part, bytes;
};

/* A run of stretches, and what was made of it. */
struct job {
	size_t first, end;
	struct arena *arena;
	struct findings *f;
};

struct reading {
	const struct folder *folder;
	size_t job_bytes;
	struct md_text **texts;  /* by source; null: not readable */
	struct stretch *v; size_t n, cap;
	struct record_file *out; /* by stretch of the second round */
	struct job *jobs; size_t njobs, jobs_cap;
};

static void add_stretch(struct arena *a, struct reading *r, uint32_t file, size_t part, size_t bytes)
{
	*ARENA_PUSH(a, r->v, r->n, r->cap) = (struct stretch){ file, part, bytes };
}

static void add_job(struct arena *a, struct reading *r, size_t first)
{
	struct job *j = ARENA_PUSH(a, r->jobs, r->njobs, r->jobs_cap);

	j->first = first;
	j->arena = arena_beside(a);
	arena_expect(j->arena, BLOCKS_TO_TEXT * r->job_bytes);
	j->f = findings_new(j->arena);
}

static void cut_jobs(struct arena *a, struct reading *r)
{
	size_t bytes = r->job_bytes;

	r->njobs = 0;
	for (size_t i = 0; i < r->n; i++) {
		if (bytes >= r->job_bytes) {
			add_job(a, r, i);
			bytes = 0;
		}
		bytes += r->v[i].bytes;
		r->jobs[r->njobs - 1].end = i + 1;
	}
}

/* Lets two threads do all jobs; what they made lives on in a, findings in the order of the
 * jobs. */
static void do_jobs(struct arena *a, struct reading *r, void (*work)(void *, size_t),
    struct findings *f)
{
	cut_jobs(a, r);
	pool_run(r->njobs, work, r);
	for (size_t i = 0; i < r->njobs; i++) {
		findings_join(f, r->jobs[i].f);
		arena_join(a, r->jobs[i].arena);
	}
}

static void open_texts(void *user, size_t i)
{
	struct reading *r = user;
	const struct job *j = &r->jobs[i];

	for (size_t k = j->first; k < j->end; k++) {
		uint32_t file = r->v[k].file;
		bool cut = r->folder->roles[file] == ROLE_ASSIGNMENTS;

		r->texts[file] = md_open(j->arena, &r->folder->sources.v[file], file,
		    cut ? r->job_bytes : 0, j->f);
	}
}

static void read_parts(void *user, size_t i)
{
	struct reading *r = user;
	const struct job *j = &r->jobs[i];

	for (size_t k = j->first; k < j->end; k++) {
		const struct stretch *p = &r->v[k];

		r->out[k] = md_read_part(j->arena, r->texts[p->file], p->part, j->f);
	}
}

static void list_files(struct arena *a, struct reading *r)
{
	const struct folder *d = r->folder;
	size_t total = 0;

	for (size_t i = 0; i < d->sources.n; i++) {
		if (!d->readable[i] || d->roles[i] == ROLE_PICTURE)
			continue;
		total += d->sources.v[i].text.n;
		add_stretch(a, r, (uint32_t)i, 0, d->sources.v[i].text.n);
	}
	r->job_bytes = total / JOBS > JOB_LEAST ? total / JOBS : JOB_LEAST;
}

/* The parts of a file that was cut are a job each. */
static void list_parts(struct arena *a, struct reading *r)
{
	r->n = 0;
	for (size_t i = 0; i < r->folder->sources.n; i++) {
		size_t n = r->texts[i] ? md_parts(r->texts[i]) : 0;

		for (size_t k = 0; k < n; k++)
			add_stretch(a, r, (uint32_t)i, k,
			    n > 1 ? r->job_bytes : r->folder->sources.v[i].text.n);
	}
}

struct record_file *reading_run(struct arena *a, const struct folder *folder, size_t *n,
    struct findings *f)
{
	struct reading r = { .folder = folder };

	r.texts = arena_array(a, folder->sources.n, sizeof *r.texts);
	list_files(a, &r);
	do_jobs(a, &r, open_texts, f);
	list_parts(a, &r);
	r.out = arena_array(a, r.n, sizeof *r.out);
	do_jobs(a, &r, read_parts, f);
	*n = r.n;
	return r.out;
}
