/* What each test needs of the weld that it is taken from. */
#include "check/rule_test.h"

#include "check/rule_metal.h"
#include "model/words.h"

/* What a kind of test is taken from, for messages. */
static const char *wants(enum test_kind k)
{
	if (k == TEST_FILLET_BREAK)
		return "a fillet";
	return test_is_bend(k) ? "a groove weld" : "a butt joint";
}

static const char *instead(enum test_kind k, enum joint j)
{
	if (k == TEST_FILLET_BREAK)
		return "ask for a bend or a nick-break";
	if (k == TEST_TENSILE && j == JOINT_LAP)
		return "a lap pulled apart is a shear test and needs a criterion of its "
		    "own; ask for a fillet break";
	return joint_is_fillet(j) ? "ask for a fillet break or a macroetch"
	    : "ask for a macroetch";
}

static void say_impossible(struct rule_context *x, uint32_t w, const struct test_line *t,
    str what, enum joint j, struct pos pos)
{
	struct finding *d = rule_report(x, FINDING_TEST_IMPOSSIBLE, t->c->pos, w,
	    "%.*s is taken from %s, and %.*s is none", STR_ARG(t->c->name),
	    wants(t->kind), STR_ARG(what));

	finding_relate(x->f, d, pos)->label = what;
	finding_cause(x->f, d, "bends, nick-breaks and tensiles go through a butt, a "
	    "break folds a fillet over its root (common practice, no source)");
	finding_repair(x->f, d, "%s, or name the weld that it is taken from",
	    instead(t->kind, j));
}

/* A line without letters may mean any weld: one that suits is enough. A pad can be bent
 * (an overlay test), but among other joints nobody means the pad. */
static void judge_welds(struct rule_context *x, uint32_t w, const struct test_line *t)
{
	const struct assignment *a = &x->m->assignments[w];
	size_t wrong = a->nwelds;

	for (size_t i = 0; i < a->nwelds; i++) {
		bool suits = test_suits(t->kind, a->welds[i].joint) ||
		    a->welds[i].joint == JOINT_COUNT || weld_is_drawn_otherwise(a, i);

		if (!test_covers(t, a, i))
			continue;
		if (suits && !t->n.lettered && a->welds[i].joint != JOINT_SURFACING)
			return;
		if (!suits && wrong == a->nwelds)
			wrong = i;
	}
	if (wrong < a->nwelds)
		say_impossible(x, w, t, weld_say(x, &a->welds[wrong]),
		    a->welds[wrong].joint, a->welds[wrong].pos);
}

/* A coupon from the shelf is only drawn. */
static void judge_drawn(struct rule_context *x, uint32_t w, const struct test_line *t)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct joint_block *wrong = NULL;

	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct joint_block *j = &a->drawings[i].joint;

		if (a->drawings[i].kind != DRAWING_JOINT)
			continue;
		if (test_suits(t->kind, j->joint) || j->joint == JOINT_COUNT)
			return;
		wrong = wrong ? wrong : j;
	}
	if (wrong)
		say_impossible(x, w, t, str_format(x->f->arena, "the %.*s",
		    STR_ARG(joint_word(wrong->joint))), wrong->joint, wrong->pos);
}

/* A letter that no weld has. Where there is one weld it goes by any letter. */
static bool judge_letters(struct rule_context *x, uint32_t w, const struct test_line *t)
{
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d;

	for (uint32_t i = 0; a->nwelds > 1 && i < TEST_LETTERS; i++) {
		if (!t->n.of[i] || i < a->nwelds)
			continue;
		d = rule_report(x, FINDING_TEST_IMPOSSIBLE, t->c->pos, w,
		    "%.*s is taken from weld %c, and there is none", STR_ARG(t->c->name),
		    (int)('A' + i));
		finding_cause(x->f, d, "the welds of this sheet are A to %c",
		    a->welds[a->nwelds - 1].letter);
		finding_repair(x->f, d, "name a weld from A to %c",
		    a->welds[a->nwelds - 1].letter);
		return true;
	}
	return false;
}

static void judge_possible(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;

	for (size_t i = 0; i < l.n; i++) {
		if (judge_letters(x, w, &l.v[i]) || l.v[i].kind == TEST_MACRO)
			continue;
		if (a->nwelds)
			judge_welds(x, w, &l.v[i]);
		else
			judge_drawn(x, w, &l.v[i]);
	}
}

static void judge_sides(struct rule_context *x, uint32_t w, const struct test_line *t)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct joint_block *both = NULL;
	struct finding *d;

	for (size_t i = 0; i < a->nwelds; i++) {
		const struct joint_block *j = weld_block(a, i);

		if (!test_covers(t, a, i) || !joint_is_fillet(a->welds[i].joint))
			continue;
		if (!j || !j->both_sides) {
			if (!t->n.lettered)
				return;
			continue;
		}
		both = both ? both : j;
	}
	if (!both)
		return;
	d = rule_report(x, FINDING_BREAK_OF_BOTH_SIDES, t->c->pos, w,
	    "%.*s needs a fillet on one side, and the drawing shows both",
	    STR_ARG(t->c->name));
	finding_relate(x->f, d, both->pos)->label = STR("the drawing");
	finding_cause(x->f, d, "the weld on the far side holds the joint, so that it "
	    "does not fold over the root (common practice, no source)");
	finding_repair(x->f, d, "write \"sides: one\", or test by macroetch");
}

/* Restarts of a pad are on the pad, not in a joint drawing. */
static bool shows_restart(const struct assignment *a, const struct test_line *t,
    const struct joint_block **without)
{
	*without = NULL;
	for (size_t i = 0; i < a->nwelds; i++) {
		const struct joint_block *j = weld_block(a, i);

		if (a->welds[i].joint == JOINT_SURFACING || !j ||
		    (t && (!test_covers(t, a, i) || !test_suits(t->kind,
		    a->welds[i].joint))))
			continue;
		if (j->restart.n) {
			if (!t || !t->n.lettered)
				return true;
			continue;
		}
		*without = *without ? *without : j;
	}
	return !*without;
}

static void say_restart(struct rule_context *x, uint32_t w, const struct criterion *c,
    const struct joint_block *j, bool code)
{
	struct finding *d = rule_report(x, FINDING_NO_RESTART_SHOWN, j->pos, w,
	    "%.*s asks for a stop and restart, and the drawing shows none",
	    STR_ARG(c->name));

	finding_relate(x->f, d, c->pos)->label = STR("what asks for it");
	finding_cause(x->f, d, "%s", code ? "the break test of a welder's fillet has a "
	    "stop and restart near mid-length (AWS D1.1, from memory; confirm against "
	    "your edition)" : "the line speaks of a restart");
	finding_repair(x->f, d, "add \"restart: near mid-length\" to the drawing");
}

static void judge_restart(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;
	const struct joint_block *without;

	for (size_t i = 0; i < l.n; i++) {
		const struct test_line *t = &l.v[i];

		if (t->kind == TEST_FILLET_BREAK)
			judge_sides(x, w, t);
		if (t->kind == TEST_FILLET_BREAK && str_eq(t->c->code, STR("D1.1")) &&
		    !shows_restart(a, t, &without)) {
			say_restart(x, w, t->c, without, true);
			return;
		}
	}
	for (size_t i = 0; i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];

		if ((!says(c->name, "restart") && !says(c->text, "restart")) ||
		    shows_restart(a, NULL, &without))
			continue;
		say_restart(x, w, c, without, false);
		return;
	}
}

static bool is_short_circuit(const struct assignment *a, const struct weld *k)
{
	return str_eq(transfer_of(a, k->process), STR("short circuit"));
}

static void judge_short(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;

	for (size_t i = 0; i < l.n; i++)
		for (size_t k = 0; test_is_bend(l.v[i].kind) && k < a->nwelds; k++) {
			const struct weld *weld = &a->welds[k];
			struct finding *d;

			if (!is_short_circuit(a, weld) || !test_covers(&l.v[i], a, k) ||
			    !is_over(weld_thick_mm(weld), 6.35))
				continue;
			d = rule_report(x, FINDING_SHORT_CIRCUIT_BENT, l.v[i].c->pos, w,
			    "%.*s is made in short circuit in %.*s and then bent",
			    STR_ARG(weld_say(x, weld)),
			    STR_ARG(say_mm(x, weld_thick_mm(weld))));
			finding_cause(x->f, d, "short circuit over 1/4 in [6.4 mm] laps "
			    "cold and the bend opens it; structural codes do not take it "
			    "as proven for grooves (common practice, no source)");
			finding_repair(x->f, d, "weld it in spray, pulsed spray or with "
			    "cored wire, or take plate to 1/4 in");
			return;
		}
}

static void judge_used(struct rule_context *x, uint32_t w)
{
	static const char *const used[] = { "second use", "used", "re-used", "reused",
		"back of", "backs of", NULL };
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;
	size_t t = 0;

	while (t < l.n && l.v[t].kind == TEST_MACRO)
		t++;
	for (size_t i = 0; t < l.n && i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		struct finding *d;

		if (!says_any(p->made, used) && !says_any(p->name, used))
			continue;
		d = rule_report(x, FINDING_USED_COUPON_TESTED, p->pos, w,
		    "%.*s is used a second time, and %.*s is taken from it",
		    STR_ARG(p->name), STR_ARG(l.v[t].c->name));
		finding_cause(x->f, d, "a specimen through the old weld or its heat "
		    "tells nothing of the new one (common practice, no source)");
		finding_repair(x->f, d, "cut fresh stock for tested coupons, and keep "
		    "used plate for drills");
		return;
	}
}

void rule_test(struct rule_context *x, uint32_t w)
{
	judge_possible(x, w);
	judge_restart(x, w);
	judge_short(x, w);
	judge_used(x, w);
}
