#include "check/skills.h"

#include "check/tell.h"

enum { TAUGHT = 1, ASSESSED = 2, BROUGHT = 4 };

static void report_skill(struct findings *f, const struct skill *s, bool taught)
{
	struct finding *d = taught
	    ? finding_add(f, FINDING_NEVER_ASSESSED, s->pos,
	    "%.*s is taught but no assignment assesses it", STR_ARG(s->id))
	    : finding_add(f, FINDING_NEVER_TAUGHT, s->pos, "no assignment teaches %.*s",
	    STR_ARG(s->id));

	d->scope = SCOPE_PROGRAM;
	d->skill = s->id;
	if (taught)
		finding_repair(f, d, "let an assignment teach %.*s assessed by one of "
		    "its Acceptance or Grading lines", STR_ARG(s->id));
	else
		finding_repair(f, d, "add it to Teaches of an assignment, list it under "
		    "Entry skills, or take it out of skills.md");
}

/* Outcomes none of whose skills is assessed or brought: they are told as a whole (see
 * rule_path_claim.c), with their skills listed. */
static bool *find_bare(struct arena *scratch, const struct model *m, const uint8_t *marks)
{
	bool *bare = arena_array(scratch, m->noutcomes + 1, sizeof *bare);

	for (size_t i = 0; i < m->noutcomes; i++)
		bare[i] = true;
	for (size_t i = 0; i < m->nskills; i++)
		if (m->skills[i].outcome < m->noutcomes && marks[i] & (ASSESSED | BROUGHT))
			bare[m->skills[i].outcome] = false;
	return bare;
}

/* Misspelt teachings count here for what they mean: the word itself is reported. What an
 * unmet need says already is not said again. */
void skills_check(struct arena *scratch, const struct verdict *d, struct findings *f)
{
	const struct graph *g = d->views[0]->graph;
	const struct model *m = g->model;
	uint8_t *marks = arena_array(scratch, m->nskills, 1);
	uint32_t lost;
	bool *never = arena_array(scratch, m->nskills, sizeof *never);
	bool *low = arena_array(scratch, m->nskills, sizeof *low);
	bool *bare;

	for (size_t i = 0; i < m->nentry_skills; i++)
		if (m->entry_skills[i].skill != NONE)
			marks[m->entry_skills[i].skill] |= BROUGHT;
	for (uint32_t i = 0; i < g->teach_at[g->nassignments]; i++)
		marks[cell_skill(g->teach[i])] |= (uint8_t)(TAUGHT |
		    (cell_level(g->teach[i]) == SKILL_ASSESSED ? ASSESSED : 0));
	/* What no file defines may teach it. */
	if (units_behind_lost(d->views[0]->units, &lost) != NONE)
		return;
	bare = find_bare(scratch, m, marks);
	verdict_mark_skills(d, never, low);
	for (size_t i = 0; i < m->nskills; i++)
		if (!(marks[i] & ASSESSED) && (marks[i] & (TAUGHT | BROUGHT)) != BROUGHT &&
		    !(m->skills[i].outcome < m->noutcomes && bare[m->skills[i].outcome]) &&
		    !(marks[i] & TAUGHT ? low[i] : never[i]))
			report_skill(f, &m->skills[i], marks[i] & TAUGHT);
}

/* The names that evidence may use, first Acceptance, then Grading. */
static void list_names(const struct assignment *as, str *names)
{
	size_t n = 0;

	for (size_t i = 0; i < as->ncriteria; i++)
		names[n++] = as->criteria[i].name;
	for (size_t i = 0; i < as->ngrades; i++)
		names[n++] = as->grades[i].name;
}

static bool is_listed(str word, const str *names, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (str_eq_nocase(word, names[i]))
			return true;
	return false;
}

static struct finding *report(struct findings *f, const struct assignment *as,
    const struct skill_at *t, str message)
{
	struct finding *d = finding_add(f, FINDING_NO_EVIDENCE, t->pos, "%.*s",
	    STR_ARG(message));

	d->scope = SCOPE_ASSIGNMENTS;
	d->assignment = as->id;
	d->skill = t->written;
	return d;
}

/* One teaching: each name after "by", set apart by commas. */
static void check_names(const struct assignment *as, const struct skill_at *t,
    const str *names, size_t n, struct findings *f, size_t *told)
{
	str rest = t->evidence, word;

	while (str_next(&rest, ',', &word)) {
		struct finding *d;
		str near;

		word = str_trim(word);
		if (!word.n || is_listed(word, names, n))
			continue;
		d = report(f, as, t, str_format(f->arena, "%.*s names \"%.*s\" as "
		    "evidence of %.*s, but has no such Acceptance or Grading line",
		    STR_ARG(as->id), STR_ARG(word), STR_ARG(t->written)));
		near = (*told)++ < TELL_MOST ? likely_word(word, names, n) : (str){ 0 };
		finding_slip(f, d, t->pos, word, near);
		if (near.n)
			finding_repair(f, d, "write %.*s", STR_ARG(near));
		else
			finding_repair(f, d, "name one of its Acceptance or Grading "
			    "lines, or add %.*s", STR_ARG(word));
	}
}

/* An assessment without evidence leaves the reviewer nothing to look at. */
static void report_unnamed(struct findings *f, const struct assignment *as,
    const struct skill_at *t)
{
	struct finding *d = report(f, as, t, str_format(f->arena,
	    "%.*s assesses %.*s without naming its evidence", STR_ARG(as->id),
	    STR_ARG(t->written)));

	finding_repair(f, d, "write \"assessed by\" and an Acceptance or Grading line");
}

void evidence_check(struct arena *scratch, const struct model *m, uint32_t from,
    uint32_t to, struct findings *f)
{
	size_t told = 0, cap = 0;
	str *names = NULL;

	for (uint32_t i = from; i < to; i++) {
		const struct assignment *as = &m->assignments[i];
		size_t n = as->ncriteria + as->ngrades;

		names = arena_grow(scratch, names, 0, n, &cap, sizeof *names);
		list_names(as, names);
		for (size_t k = 0; k < as->nteaches; k++) {
			const struct skill_at *t = &as->teaches[k];

			if (t->evidence.n)
				check_names(as, t, names, n, f, &told);
			else if (t->level == SKILL_ASSESSED)
				report_unnamed(f, as, t);
		}
	}
}
