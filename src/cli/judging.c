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

/* The long ones first: whichever thread is free takes the next. From JUDGE_RUNS on, a
 * run of sheets each. */
enum {
	JUDGE_NEEDS, JUDGE_RULES, JUDGE_SHEETS, JUDGE_PICTURES, JUDGE_TRANSLATIONS, JUDGE_RUNS
};

struct judging {
	struct run *run;
	struct check *check;
	const bool *told;        /* see sheets/review.h */
	struct arena *scratch[POOL_THREADS];
	struct findings **found; /* by job; null: with those of the run */
};

static void judge_needs(struct judging *j, struct judge *w)
{
	check_needs(w->scratch, j->check, w->f);
}

static void judge_rules(struct judging *j, struct judge *w)
{
	check_rules(w->scratch, j->check, w->f);
}

static void judge_translations(struct judging *j, struct judge *w)
{
	translations_check(w->scratch, j->run->model, w->f);
}

/* Of the others, none looks at pixels. */
static void judge_pictures(struct judging *j, struct judge *w)
{
	pictures_read(w->arena, j->run->model, &j->run->folder);
	pictures_review(j->run->model, w->f);
}

static void judge_sheets(struct judging *j, struct judge *w)
{
	j->run->faces = faces_new(w->arena);
	sheets_review(w->arena, j->run->model, j->run->faces, j->told, w->f);
}

/* Needs go on with the findings of the run, to which some of theirs refer. */
static void judge_one(void *user, unsigned thread, size_t i)
{
	static void (*const jobs[JUDGE_RUNS])(struct judging *, struct judge *) = {
		[JUDGE_NEEDS] = judge_needs, [JUDGE_RULES] = judge_rules,
		[JUDGE_SHEETS] = judge_sheets, [JUDGE_PICTURES] = judge_pictures,
		[JUDGE_TRANSLATIONS] = judge_translations,
	};
	struct judging *j = user;
	struct judge w = { j->run->own[thread], j->scratch[thread], j->run->findings };

	if (i != JUDGE_NEEDS)
		w.f = j->found[i] = findings_new(w.arena);
	if (i < JUDGE_RUNS)
		jobs[i](j, &w);
	else
		check_sheets(w.scratch, j->check, i - JUDGE_RUNS, w.f);
}

void judging_run(struct run *r)
{
	struct judging j = { .run = r };
	struct arena *scratch = arena_beside(r->arena);
	size_t n;

	j.check = check_begin_program(scratch, r->model, r->findings);
	j.told = sheets_told(scratch, r->model, r->findings);
	n = JUDGE_RUNS + check_runs(j.check);
	j.found = arena_array(scratch, n, sizeof(struct findings *));
	for (int i = 0; i < POOL_THREADS; i++)
		j.scratch[i] = arena_beside(r->arena);
	pool_run(n, judge_one, &j);
	for (size_t i = 0; i < n; i++)
		if (j.found[i])
			findings_join(r->findings, j.found[i]);
	for (int i = 0; i < POOL_THREADS; i++)
		arena_free(j.scratch[i]);
	arena_free(scratch);
}
