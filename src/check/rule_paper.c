/* Acceptance, Grading and drawings of one assignment. */
#include "check/rule_paper.h"

#include "check/rule_joint.h"
#include "model/words.h"

/* Tests of welds as Acceptance and Grading lines begin: a line counts as the test whose
 * word it has. */
static const char *const tests[] = {
	"visual", "face bend", "root bend", "side bend", "fillet break", "nick", "macro",
	"tensile",
};
enum { TESTS = sizeof tests / sizeof *tests };

/* Other ways to write them: a hyphen for the blank, an ending, a shorter word. */
static bool names_test(str name, size_t test)
{
	const char *dashed[TESTS] = { [1] = "face-bend", [2] = "root-bend",
		[3] = "side-bend", [4] = "fillet-break" };

	return says(name, tests[test]) || (dashed[test] && says(name, dashed[test]));
}

/* "Bend tests" and "Visual and bends" stand for every kind of bend. */
static bool names_bends(str name)
{
	return says(name, "bend") && !says(name, "face") && !says(name, "root") &&
	    !says(name, "side") && !says(name, "angle");
}

bool is_weld_test(str name)
{
	for (size_t t = 0; t < TESTS; t++)
		if (names_test(name, t))
			return true;
	return names_bends(name);
}

static bool is_bend(size_t test)
{
	return test >= 1 && test <= 3;
}

static bool is_graded(const struct assignment *a, size_t test)
{
	for (size_t i = 0; i < a->ngrades; i++)
		if (names_test(a->grades[i].name, test) ||
		    says(a->grades[i].name, "tests") ||
		    says(a->grades[i].name, "destructive") ||
		    (is_bend(test) && names_bends(a->grades[i].name)))
			return true;
	return false;
}

static bool is_accepted(const struct assignment *a, size_t test)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (names_test(a->criteria[i].name, test) ||
		    (is_bend(test) && names_bends(a->criteria[i].name)))
			return true;
	return false;
}

static bool is_criterion(const struct assignment *a, str name)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (words_same(a->criteria[i].name, name))
			return true;
	return false;
}

static bool is_grade(const struct assignment *a, str name)
{
	for (size_t i = 0; i < a->ngrades; i++)
		if (words_same(a->grades[i].name, name))
			return true;
	return false;
}

/* A grade without a test of the weld or a criterion of its own, by a name near to one that
 * is; empty. */
static str grade_meant(struct rule_context *x, const struct assignment *a, str name)
{
	str *v = arena_array(x->scratch, a->ngrades, sizeof *v);
	size_t n = 0;

	for (size_t i = 0; i < a->ngrades; i++)
		if (!is_weld_test(a->grades[i].name) && !is_criterion(a, a->grades[i].name))
			v[n++] = a->grades[i].name;
	return likely_word(name, v, n);
}

static str criterion_meant(struct rule_context *x, const struct assignment *a, str name)
{
	str *v = arena_array(x->scratch, a->ncriteria, sizeof *v);
	size_t n = 0;

	for (size_t i = 0; i < a->ncriteria; i++)
		if (!is_weld_test(a->criteria[i].name) && !is_grade(a, a->criteria[i].name))
			v[n++] = a->criteria[i].name;
	return likely_word(name, v, n);
}

static void note_other(struct rule_context *x, struct finding *d, struct pos pos, str wrong,
    str right, const char *section)
{
	finding_slip(x->f, d, pos, wrong, right)->say = str_format(x->f->arena,
	    "write \"%.*s\" under %s in place of \"%.*s\"", STR_ARG(right), section,
	    STR_ARG(wrong));
}

/* Notes the criteria that nothing grades: one of them may be what g means. */
static void note_criteria(struct rule_context *x, const struct assignment *a,
    struct finding *d, const struct grade *g, str meant)
{
	for (size_t i = 0; i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];

		if (meant.n && c->name.p == meant.p)
			finding_slip(x->f, d, c->pos, c->name, g->name);
		else if (!is_weld_test(c->name) && !is_grade(a, c->name))
			note_other(x, d, c->pos, c->name, g->name, "Acceptance");
	}
}

/* The same for the lines of Grading that have no criterion. */
static void note_grades(struct rule_context *x, const struct assignment *a,
    struct finding *d, const struct criterion *c, str meant)
{
	for (size_t i = 0; i < a->ngrades; i++) {
		const struct grade *g = &a->grades[i];

		if (meant.n && g->name.p == meant.p)
			finding_slip(x->f, d, g->pos, g->name, c->name);
		else if (!is_weld_test(g->name) && !is_criterion(a, g->name))
			note_other(x, d, g->pos, g->name, c->name, "Grading");
	}
}

static void tell_grade(struct rule_context *x, uint32_t w, const struct grade *g)
{
	const struct assignment *a = &x->m->assignments[w];
	str meant = criterion_meant(x, a, g->name);
	struct finding *d = rule_report(x, FINDING_GRADE_WITHOUT_TEST, g->pos, w,
	    "%.*s grades %.*s, and no Acceptance line says when it is good", STR_ARG(a->id),
	    STR_ARG(g->name));

	if (meant.n)
		finding_repair(x->f, d, "write \"%.*s\" under Acceptance in place of \"%.*s\"",
		    STR_ARG(g->name), STR_ARG(meant));
	else
		finding_repair(x->f, d, "add an Acceptance line \"%.*s\" with its limits",
		    STR_ARG(g->name));
	note_criteria(x, a, d, g, meant);
}

static void tell_test(struct rule_context *x, uint32_t w, const struct criterion *c)
{
	const struct assignment *a = &x->m->assignments[w];
	str meant = grade_meant(x, a, c->name);
	struct finding *d = rule_report(x, FINDING_TEST_WITHOUT_GRADE, c->pos, w,
	    "the result of %.*s counts nowhere in %.*s", STR_ARG(c->name), STR_ARG(a->id));

	if (meant.n)
		finding_repair(x->f, d, "write \"%.*s\" under Grading in place of \"%.*s\"",
		    STR_ARG(c->name), STR_ARG(meant));
	else
		finding_repair(x->f, d, "add a Grading line \"%.*s\" with a weight, or take "
		    "it out of Acceptance", STR_ARG(c->name));
	note_grades(x, a, d, c, meant);
}

/* A sheet that has lost its Acceptance is told once, with what is graded as a list. */
static void judge_grades(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d = NULL;

	for (size_t i = 0; i < a->ngrades; i++)
		for (size_t t = 0; t < TESTS; t++) {
			const struct grade *g = &a->grades[i];

			if (!names_test(g->name, t) || is_accepted(a, t))
				continue;
			if (a->ncriteria) {
				tell_grade(x, w, g);
			} else if (d) {
				finding_relate(x->f, d, g->pos)->label = g->name;
			} else {
				d = rule_report(x, FINDING_GRADE_WITHOUT_TEST, g->pos, w,
				    "%.*s grades %.*s, and has no Acceptance to say when it "
				    "is good", STR_ARG(a->id), STR_ARG(g->name));
				finding_repair(x->f, d, "write \"## Acceptance\" with a line for "
				    "each test that is graded, such as \"%.*s\"",
				    STR_ARG(g->name));
			}
		}
}

static bool is_letters(str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (!((s.p[i] | 0x20) >= 'a' && (s.p[i] | 0x20) <= 'z'))
			return false;
	return true;
}

/* One letter of a word is wrong, or two have changed places; a figure, a letter of its own
 * ("Leg size A") or an ending more is another name. */
static bool is_slip_of(str a, str b)
{
	size_t from = 0, end = 0, most = a.n < b.n ? a.n : b.n;

	if (most < 5 || str_distance(a, b, 1) != 1 || str_starts_nocase(a, b) ||
	    str_starts_nocase(b, a))
		return false;
	while (from < most && a.p[from] == b.p[from])
		from++;
	while (end < most - from && a.p[a.n - 1 - end] == b.p[b.n - 1 - end])
		end++;
	/* A word of one letter. */
	if (a.n == b.n && from + 1 + end == a.n && (!from || a.p[from - 1] == ' ') &&
	    (!end || a.p[a.n - end] == ' '))
		return false;
	return is_letters(str_sub(a, from, a.n - end)) && is_letters(str_sub(b, from, b.n - end));
}

static void tell_twin(struct rule_context *x, uint32_t w, const struct criterion *c,
    const struct grade *g)
{
	struct finding *d = rule_report(x, FINDING_TEST_WITHOUT_GRADE, c->pos, w,
	    "Acceptance says \"%.*s\", and Grading \"%.*s\"", STR_ARG(c->name),
	    STR_ARG(g->name));

	finding_relate(x->f, d, g->pos)->label = STR("the line of Grading");
	finding_repair(x->f, d, "write one of them in both places");
	note_other(x, d, g->pos, g->name, c->name, "Grading");
	note_other(x, d, c->pos, c->name, g->name, "Acceptance");
}

/* Lines that go by the author's own words need not be the same in both places, but are
 * when one slip is between them. */
static void judge_twins(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];

		for (size_t k = 0; k < a->ngrades && !is_grade(a, c->name); k++)
			if (!is_weld_test(c->name) && !is_weld_test(a->grades[k].name) &&
			    !is_criterion(a, a->grades[k].name) &&
			    is_slip_of(c->name, a->grades[k].name))
				tell_twin(x, w, c, &a->grades[k]);
	}
}

/* Only tests of welds are looked at. */
static void judge_tests(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; a->ngrades && i < a->ncriteria; i++)
		for (size_t t = 0; t < TESTS; t++)
			if (names_test(a->criteria[i].name, t) && !is_graded(a, t))
				tell_test(x, w, &a->criteria[i]);
	judge_grades(x, w);
}

static void judge_limits(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->ncriteria; i++)
		if (!str_trim(a->criteria[i].text).n)
			finding_repair(x->f, rule_report(x, FINDING_NO_CRITERION,
			    a->criteria[i].pos, w, "%.*s does not say when %.*s is good",
			    STR_ARG(a->id), STR_ARG(a->criteria[i].name)),
			    "write a code as \"D1.1-2020 welder test\", a size with its "
			    "tolerance, or plain words");
}

/* What the weights have too much may be the mark under another name. */
static void tell_no_mark(struct rule_context *x, uint32_t w, uint32_t total)
{
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d = rule_report(x, FINDING_NO_PASS_MARK, a->grades[0].pos, w,
	    "the Grading of %.*s has no Pass mark, so nobody can tell a pass from a fail",
	    STR_ARG(a->id));
	str mark = STR("Pass mark");

	finding_repair(x->f, d, "add \"- **Pass mark:** 70\", or mark every line must pass");
	for (size_t i = 0; i < a->ngrades; i++) {
		const struct grade *g = &a->grades[i];

		if (total != 100 + g->weight)
			continue;
		note_other(x, d, g->pos, g->name, mark, "Grading");
		if (likely_word(g->name, &mark, 1).n)
			d->repair = d->slips->say;
	}
}

/* Weights that miss 100 were reported; whether the mark can be reached is another
 * question, for a total of 110 makes a mark of 105 possible. */
static void judge_pass_mark(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	uint32_t total = 0, gates = 0;

	for (size_t i = 0; i < a->ngrades; i++) {
		total += a->grades[i].weight;
		gates += a->grades[i].must_pass;
	}
	if (!a->ngrades)
		return;
	if (!a->pass_mark_said && gates < a->ngrades)
		tell_no_mark(x, w, total);
	else if (a->pass_mark > total)
		finding_repair(x->f, rule_report(x, FINDING_PASS_MARK_OVER,
		    a->grades[0].pos, w, "the Pass mark of %.*s is %u, and all its lines "
		    "together give %u", STR_ARG(a->id), (unsigned)a->pass_mark,
		    (unsigned)total), "lower the Pass mark to %u, or raise the weights",
		    (unsigned)total);
}

/* Two members that meet are drawn; so is a pad of beads. */
static void judge_drawing(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	if (!a->nwelds || a->ndrawings)
		return;
	finding_repair(x->f, rule_report(x, FINDING_DRAWING_MISSING, a->pos, w,
	    "%.*s asks for %s and shows no drawing", STR_ARG(a->id),
	    a->nwelds == 1 ? "a weld" : "welds"),
	    "add \"## Drawing\" with a joint block: the facts fill in what it leaves "
	    "out");
}

void rule_paper(struct rule_context *x, uint32_t w)
{
	judge_tests(x, w);
	judge_twins(x, w);
	judge_limits(x, w);
	judge_pass_mark(x, w);
	judge_drawing(x, w);
}
