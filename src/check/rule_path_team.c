/* A team grade does not assess a welding skill: each student's own weld does. */
#include "check/rule_path.h"

#include "check/load.h"
#include "check/rule_joint.h"
#include "check/rule_paper.h"
#include "model/words.h"

/* Words that say a result is one student's. */
static const char *const own_words[] = { "own", "individual", "each", "every student",
	"stamp", "alone", "personal", NULL };

/* The lines that "Visual, Leg size" names, and what they say. */
static bool line_says_own(const struct assignment *a, str name)
{
	if (says_any(name, own_words))
		return true;
	for (size_t i = 0; i < a->ncriteria; i++)
		if (str_eq_nocase(a->criteria[i].name, name))
			return says_any(a->criteria[i].text, own_words);
	return false;
}

static bool evidence_is_own(const struct assignment *a, str evidence)
{
	str rest = evidence, name;

	while (str_next(&rest, ',', &name))
		if (line_says_own(a, str_trim(name)))
			return true;
	return false;
}

static bool evidence_is_weld(str evidence)
{
	str rest = evidence, name;

	while (str_next(&rest, ',', &name))
		if (is_weld_test(str_trim(name)))
			return true;
	return false;
}

/* Whether a skill's word begins with the letters of a welding process of the sheet:
 * gmaw.short beside GMAW-S. */
static bool names_process(const struct work *w, str skill)
{
	str head = str_sub(skill, 0, str_find_char(skill, '.', 0));

	for (uint32_t p = 0; p < PROCESS_COUNT; p++) {
		str word = process_word(p);

		if (work_has(w->processes, p) && !process_is_cut(p) && str_eq_nocase(head,
		    str_sub(word, 0, str_find_char(word, '-', 0))))
			return true;
	}
	return false;
}

void rule_path_team(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct plain_fact *team = assignment_fact(a, STR("Team"));
	struct work work;

	if (!team || team_size(a) < 2 || says_any(team->text, own_words))
		return;
	work = work_bits(a);
	for (size_t i = 0; i < a->nteaches; i++) {
		const struct skill_at *t = &a->teaches[i];
		struct finding *d;

		if (t->level != SKILL_ASSESSED || evidence_is_own(a, t->evidence) ||
		    (!evidence_is_weld(t->evidence) &&
		    !names_process(&work, t->written)))
			continue;
		d = rule_report(x, FINDING_TEAM_ASSESSES, t->pos, w,
		    "%.*s assesses %.*s by the work of a team", STR_ARG(a->id),
		    STR_ARG(t->written));
		d->skill = t->written;
		finding_cause(x->f, d, "Team: %.*s", STR_ARG(team->text));
		finding_repair(x->f, d, "let each student stamp own welds and say so in "
		    "Team or in the Acceptance line, or teach it as practiced");
	}
}
