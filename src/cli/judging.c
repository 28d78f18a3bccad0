#include "cli/judging.h"

#include "check/check.h"
#include "check/translation.h"
#include "cli/pictures.h"
#include "sheets/review.h"

/* What one of the jobs works with: the arenas of its thread. All but the needs have
 * findings of their own, which join the others when all is done. */
struct judge {
	struct arena *arena, *scratch;
	struct findings *f;
};

/* The long ones first: whichever thread is free takes the next. From JUDGE_PICTURES on
 * each judges sheets by themselves, from JUDGE_RUNS on a run of them. */
enum {
	JUDGE_NEEDS, JUDGE_RULES, JUDGE_PROGRAM, JUDGE_TRANSLATIONS, JUDGE_PICTURES, JUDGE_RUNS
};

struct judging {
	struct run *run;
	struct check *check;
	uint32_t run_size;       /* sheets */
	const bool *known;       /* by assignment: its sheet is judged as before; null: none */
	struct findings **found; /* by job; null: with those of the run */
};

static bool is_judged(const struct judging *j, uint32_t assignment)
{
	return !j->known || !j->known[assignment];
}

static void judge_needs(struct judging *j, struct judge *w)
{
	check_needs(w->scratch, j->check, w->f);
}

static void judge_rules(struct judging *j, struct judge *w)
{
	check_rules(w->scratch, j->check, j->run->before ? MOVES_PLACED : MOVES_TOLD, w->f);
}

/* What covers, charts, lists and translations say. */
static void judge_program(struct judging *j, struct judge *w)
{
	program_review(w->arena, j->run->model, j->run->faces, w->f);
}

static void judge_translations(struct judging *j, struct judge *w)
{
	translations_check(w->scratch, j->run->model, w->f);
}

/* Of the others, none looks at pixels. */
static void judge_pictures(struct judging *j, struct judge *w)
{
	const struct run *r = j->run;

	pictures_read(w->arena, r->model, r->before ? r->before->model : NULL, &r->folder);
	for (uint32_t i = 0; r->model->npictures && i < r->model->nassignments; i++)
		if (is_judged(j, i))
			sheet_pictures_review(r->model, i, w->f);
}

/* Those of a run that stand together are judged together. */
static void judge_run(struct judging *j, struct judge *w, size_t run)
{
	const struct run *r = j->run;
	uint32_t n = (uint32_t)r->model->nassignments, from = (uint32_t)run * j->run_size;
	uint32_t end = n - from < j->run_size ? n : from + j->run_size;

	for (uint32_t to; from < end; from = to + 1) {
		for (to = from; to < end && is_judged(j, to); to++)
			sheet_review(w->arena, r->model, r->faces, r->told, to, w->f);
		if (to > from)
			check_sheets(w->scratch, j->check, from, to, w->f);
	}
}

/* Needs go on with the findings of the run, to which some of theirs refer. */
static void judge_one(void *user, unsigned thread, size_t i)
{
	static void (*const jobs[JUDGE_RUNS])(struct judging *, struct judge *) = {
		[JUDGE_NEEDS] = judge_needs, [JUDGE_RULES] = judge_rules,
		[JUDGE_PROGRAM] = judge_program, [JUDGE_PICTURES] = judge_pictures,
		[JUDGE_TRANSLATIONS] = judge_translations,
	};
	struct judging *j = user;
	struct judge w = { j->run->own[thread], j->run->scratch[thread],
		j->run->findings };

	if (i != JUDGE_NEEDS)
		w.f = j->found[i] = findings_new(w.arena);
	if (i < JUDGE_RUNS)
		jobs[i](j, &w);
	else
		judge_run(j, &w, i - JUDGE_RUNS);
}

/* About so many runs, so that two threads end together; but none so small that handing
 * it out costs more than judging it. */
enum { RUNS_MOST = 16, RUN_LEAST = 8 };

static uint32_t run_size(const struct model *m)
{
	uint32_t n = (uint32_t)m->nassignments / RUNS_MOST + 1;

	return n > RUN_LEAST ? n : RUN_LEAST;
}

/* Whether what other files say of sheets is what it was before. */
static bool may_know(const struct run *r)
{
	for (size_t i = 0; i < r->nfiles; i++)
		if (r->edited[i] && r->folder.roles[i] != ROLE_ASSIGNMENTS &&
		    r->folder.roles[i] != ROLE_PROGRAM && r->folder.roles[i] != ROLE_TRANSLATION)
			return false;
	return true;
}

/* Sheets that stand in the same lines of files that nobody edited. */
static const bool *find_known(struct arena *a, const struct run *r)
{
	const struct model *m = r->model, *old = r->before->model;
	bool *known = arena_array(a, m->nassignments, sizeof *known);

	for (uint32_t i = 0; may_know(r) && i < m->nassignments; i++) {
		const struct assignment *x = &m->assignments[i];
		uint32_t was = map_find(old->assignment_by_id, x->id);

		known[i] = !r->edited[x->pos.file] && was != MAP_NONE &&
		    !pos_cmp(old->assignments[was].pos, x->pos) &&
		    r->told[i] == r->before->told[was];
	}
	return known;
}

static void join_known(const struct judging *j)
{
	const struct run *r = j->run;

	for (size_t i = 0; i < r->before->sheets->n; i++) {
		const struct finding *d = &r->before->sheets->v[i];
		uint32_t who = map_find(r->model->assignment_by_id, d->assignment);

		if (who != MAP_NONE && j->known[who])
			finding_copy(r->findings, d);
	}
}

static void join_all(const struct judging *j, size_t n)
{
	struct run *r = j->run;
	struct findings *sheets = findings_new(r->arena);

	for (size_t i = 0; i < n; i++) {
		if (j->found[i])
			findings_join(r->findings, j->found[i]);
		if (i >= JUDGE_PICTURES)
			findings_join(sheets, j->found[i]);
	}
	r->sheets = sheets;
	if (j->known)
		join_known(j);
}

void judging_run(struct run *r)
{
	struct judging j = { .run = r, .run_size = run_size(r->model) };
	struct arena *scratch = r->scratch[0];
	size_t n;

	r->told = sheets_told(r->arena, r->model, r->findings);
	j.check = check_begin_program(scratch, r->model, r->findings);
	j.known = r->before ? find_known(scratch, r) : NULL;
	n = JUDGE_RUNS + (r->model->nassignments + j.run_size - 1) / j.run_size;
	j.found = arena_array(scratch, n, sizeof(struct findings *));
	pool_run(r->threads, n, judge_one, &j);
	join_all(&j, n);
}
