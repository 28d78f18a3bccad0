/* Position and leg of each weld. */
#include "check/rule_joint.h"

#include "check/rule_metal.h"
#include "model/words.h"
#include "reckon/fillet.h"

#include <math.h>

static bool is_groove_position(enum position p)
{
	return p == POSITION_1G || p == POSITION_2G || p == POSITION_3G ||
	    p == POSITION_4G || p == POSITION_5G || p == POSITION_6G ||
	    p == POSITION_1G_ROLLED;
}

static bool is_fillet_position(enum position p)
{
	return p == POSITION_1F || p == POSITION_2F || p == POSITION_3F ||
	    p == POSITION_4F || p == POSITION_5F || p == POSITION_1F_ROLLED;
}

static bool is_pipe_position(enum position p)
{
	return p == POSITION_5F || p == POSITION_5G || p == POSITION_6G ||
	    p == POSITION_1G_ROLLED || p == POSITION_1F_ROLLED;
}

/* Whether the drawing prepares an edge of weld i, so that a tee is a groove too. */
static bool has_groove(const struct assignment *a, size_t i)
{
	const struct joint_block *j = weld_block(a, i);

	return j && j->preparation != PREPARATION_NONE;
}

/* Why weld i cannot be made in its position, or "". AWS A3.0: F stands for a fillet,
 * G for a groove; 5 and 6 and rolled are pipe, 3G and 4G plate. */
static const char *why_impossible(const struct assignment *a, size_t i)
{
	const struct weld *w = &a->welds[i];
	enum position p = w->at.position;
	bool butt = joint_is_butt(w->joint) || w->joint == JOINT_FLARE_BEVEL;

	if ((w->joint == JOINT_TEE || w->joint == JOINT_LAP) && is_groove_position(p) &&
	    !has_groove(a, i))
		return "a fillet, and the G positions are for grooves";
	if (butt && is_fillet_position(p))
		return "a groove, and the F positions are for fillets";
	if (is_pipe_position(p) && !joint_is_pipe(w) && (says(w->material1, "plate") ||
	    says(w->material1, "sheet")))
		return "plate or sheet, and this position is for pipe";
	if (w->joint == JOINT_PIPE_BUTT && (p == POSITION_3G || p == POSITION_4G))
		return "pipe, and this position is for plate";
	return "";
}

bool weld_is_possible(const struct assignment *a, size_t i)
{
	return a->welds[i].at.position == POSITION_COUNT || !*why_impossible(a, i);
}

static const char *right_position(const struct weld *w)
{
	if (w->joint == JOINT_TEE || w->joint == JOINT_LAP)
		return "1F, 2F, 3F up or 4F";
	if (w->joint == JOINT_PIPE_BUTT)
		return "1G rolled, 2G, 5G up or 6G up";
	return "1G, 2G, 3G up or 4G";
}

static void judge_position(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d = NULL;

	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *k = &a->welds[i];
		const char *why = why_impossible(a, i);

		if (k->at.position == POSITION_COUNT || !*why ||
		    weld_is_drawn_otherwise(a, i))
			continue;
		if (d) {
			finding_relate(x->f, d, k->at.pos)->label = weld_say(x, k);
			continue;
		}
		d = rule_report(x, FINDING_POSITION_IMPOSSIBLE, k->at.pos, w,
		    "%.*s cannot be: it is %s", STR_ARG(weld_say(x, k)), why);
		finding_cause(x->f, d, "AWS A3.0, test positions");
		finding_repair(x->f, d, "write %s%s", right_position(k),
		    a->npositions > 1 && a->njoints > 1 ? "; when not every joint is "
		    "welded in every position, list the welds under \"## Welds\"" : "");
	}
}

/* Legs are gauged in 32nds: a sheet between two of them takes the next one up. */
static double next_32nd_mm(double mm)
{
	double n = (mm - LIMIT_SLACK_MM) / (25.4 / 32);
	long whole = (long)n;

	return (double)(whole + (n > (double)whole)) * 25.4 / 32;
}

/* A way out below a limit stays below it, but for sheet, whose gauges lie between 32nds:
 * 1/8 in is what the trade lays on 11 ga. */
static double last_32nd_mm(double mm)
{
	double n = floor((mm + LIMIT_SLACK_MM) / (25.4 / 32) + (mm < 3 * 25.4 / 16 ? 0.5 : 0));

	return n >= 1 ? n * 25.4 / 32 : mm;
}

static void say_leg(struct rule_context *x, enum finding_name name, uint32_t w,
    const struct weld *k, double leg_mm, const char *what, double limit_mm,
    const char *source)
{
	struct finding *d = rule_report(x, name, k->pos, w, "the leg of %.*s is %.*s, %s "
	    "%.*s", STR_ARG(weld_say(x, k)), STR_ARG(say_mm(x, leg_mm)), what,
	    STR_ARG(say_mm(x, limit_mm)));

	finding_cause(x->f, d, "%s", source);
	if (name == FINDING_LEG_UNDER_LEAST)
		finding_repair(x->f, d, "make it %.*s or larger",
		    STR_ARG(say_mm(x, next_32nd_mm(limit_mm))));
	else
		finding_repair(x->f, d, "make it %.*s or smaller",
		    STR_ARG(say_mm(x, last_32nd_mm(limit_mm))));
}

/* Low-hydrogen in the sense of the table: every process but stick with other rods. */
static bool is_low_hydrogen(const struct rule_context *x)
{
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		const struct rod *r = &l.v[i].rod;
		int last = r->coating % 10;

		if (r->sort == ROD_COVERED && r->metal == ROD_STEEL && last != 5 &&
		    last != 6 && last != 8)
			return false;
	}
	return true;
}

static bool names_cyclic(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (str_eq(a->criteria[i].loading, STR("cyclic")))
			return true;
	return false;
}

/* The structural table begins with parts of 1/8 in and is for carbon steel. */
static void judge_least(struct rule_context *x, uint32_t w, const struct weld *k,
    double leg_mm)
{
	const struct assignment *a = &x->m->assignments[w];
	struct fillet_limit least;

	if (is_over(3.175, weld_thin_mm(k)) || !weld_has_metal(k, METAL_STEEL) ||
	    weld_has_metal(k, METAL_STAINLESS) || weld_has_metal(k, METAL_ALUMINUM))
		return;
	least = fillet_least_leg(weld_thin_mm(k), weld_thick_mm(k),
	    is_low_hydrogen(x), names_cyclic(a));
	if (is_over(least.mm, next_32nd_mm(leg_mm)))
		say_leg(x, FINDING_LEG_UNDER_LEAST, w, k, leg_mm,
		    "less than the customary",
		    least.mm, least.source);
}

static void judge_leg(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *k = &a->welds[i];
		double leg_mm = weld_leg_mm(a, i), leg2_mm = weld_leg2_mm(a, i);
		double thin = weld_thin_mm(k);

		if (!joint_is_fillet(k->joint) || leg_mm <= 0 || thin <= 0 ||
		    weld_is_disputed(a, k))
			continue;
		if (is_over(fmax(leg_mm, leg2_mm), next_32nd_mm(thin))) {
			say_leg(x, FINDING_LEG_OVER_THINNER, w, k, fmax(leg_mm, leg2_mm),
			    "more than the thinner part,", thin,
			    "a leg larger than the thinner part burns it through "
			    "(common practice, no source)");
			continue;
		}
		/* The first member of a lap is the upper one, whose edge is welded; the first
		 * leg is the one at that edge. */
		if (k->joint == JOINT_LAP) {
			struct fillet_limit most = fillet_largest_lap_leg(k->t1_mm);

			if (is_over(leg_mm, next_32nd_mm(most.mm))) {
				say_leg(x, FINDING_LEG_OVER_LAP_EDGE, w, k, leg_mm,
				    "more than the edge of the lap leaves,", most.mm,
				    most.source);
				continue;
			}
		}
		judge_least(x, w, k, fmin(leg_mm, leg2_mm));
	}
}

/* ---- sizes of a drawing against one another ---- */

static void say_drawn(struct rule_context *x, enum finding_name name, uint32_t w,
    const struct joint_block *j, const char *what, const struct quantity *q,
    const char *than, double limit_mm)
{
	struct finding *d = rule_report(x, name, j->pos, w, "the drawing shows %s of %.*s, %s "
	    "%.*s", what, STR_ARG(say_quantity(x, q)), than, STR_ARG(say_mm(x, limit_mm)));

	finding_cause(x->f, d, "common practice, no source: nobody welds that");
	finding_repair(x->f, d, "correct whichever of the two is a slip of the pen");
}

static void judge_drawn_butt(struct rule_context *x, uint32_t w, const struct joint_block *j)
{
	bool two = j->t2.lo > 0 && j->t2.lo < j->t1.lo;
	double thin = two ? j->t2.lo : j->t1.lo;
	double opening = 2 * thin, least = j->backing_t.lo > 0 ? 25.4 / 2 : 25.4 / 4;

	if (!(thin > 0))
		return;
	if (is_over(j->reinforcement.lo, fmax(thin, 25.4 / 8)))
		say_drawn(x, FINDING_CAP_OVER_THICKNESS, w, j, "a reinforcement",
		    &j->reinforcement, "more than the thickness,", thin);
	if (is_over(j->gap.lo, fmax(opening, least)))
		say_drawn(x, FINDING_OPENING_OVER_THICKNESS, w, j, "a root opening", &j->gap,
		    "more than twice the thickness,", thin);
}

static void judge_drawn(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct joint_block *j = &a->drawings[i].joint;

		if (a->drawings[i].kind != DRAWING_JOINT)
			continue;
		if (joint_is_butt(j->joint))
			judge_drawn_butt(x, w, j);
		if (j->joint == JOINT_LAP && j->overlap.lo > 0 &&
		    is_over(j->leg.lo, j->overlap.hi))
			say_drawn(x, FINDING_OVERLAP_UNDER_LEG, w, j, "an overlap", &j->overlap,
			    "less than the leg,", j->leg.lo);
	}
}

void rule_joint(struct rule_context *x, uint32_t w)
{
	judge_position(x, w);
	judge_leg(x, w);
	judge_drawn(x, w);
}
