/* Filler against position, current, metal and process. */
#include "check/rule_metal.h"

#include "model/setting.h"
#include "model/words.h"

#define HANDBOOK "Machinery's Handbook 31st ed., electrode tables 13 and 14"
#define CLASSES "AWS A5.1, A5.4 and A5.20, designation of the class; confirm against " \
	"your edition"

struct polarity_row {
	enum rod_sort sort;
	int figure;              /* coating or usability */
	const char *runs_on;
	const char *source;
	bool seen;
};

/* Covered: last two figures. Cored: the number after T. Rows without a source seen are
 * from memory of AWS A5.1 and A5.20. */
static const struct polarity_row polarity_rows[] = {
	{ ROD_COVERED, 10, "DC+", HANDBOOK, true },
	{ ROD_COVERED, 11, "AC DC+", HANDBOOK, true },
	{ ROD_COVERED, 12, "AC DC-", HANDBOOK, true },
	{ ROD_COVERED, 15, "DC+", CLASSES, false },
	{ ROD_COVERED, 16, "AC DC+", CLASSES, false },
	{ ROD_COVERED, 17, "AC DC+", CLASSES, false },
	{ ROD_COVERED, 18, "AC DC+", HANDBOOK, true },
	{ ROD_COVERED, 28, "AC DC+", CLASSES, false },
	{ ROD_COVERED, 48, "AC DC+", CLASSES, false },
	{ ROD_CORED, 1, "DC+", "a textbook's table of cored wires (2020)", true },
	{ ROD_CORED, 2, "DC+", CLASSES, false },
	{ ROD_CORED, 3, "DC+", CLASSES, false },
	{ ROD_CORED, 4, "DC+", CLASSES, false },
	{ ROD_CORED, 6, "DC+", CLASSES, false },
	{ ROD_CORED, 7, "DC-", CLASSES, false },
	{ ROD_CORED, 8, "DC-", CLASSES, false },
	{ ROD_CORED, 9, "DC+", CLASSES, false },
	{ ROD_CORED, 10, "DC-", CLASSES, false },
	{ ROD_CORED, 11, "DC-", CLASSES, false },
	{ ROD_CORED, 12, "DC+", CLASSES, false },
	{ ROD_CORED, 13, "DC-", CLASSES, false },
	{ ROD_CORED, 14, "DC-", CLASSES, false },
};

const char *rod_polarity(const struct rod *r, const char **source, bool *seen)
{
	int figure = r->sort == ROD_CORED ? r->usability : r->coating;

	for (size_t i = 0; i < sizeof polarity_rows / sizeof *polarity_rows; i++) {
		const struct polarity_row *p = &polarity_rows[i];

		if (p->sort != r->sort || p->figure != figure)
			continue;
		if (r->metal == ROD_STAINLESS && r->sort == ROD_CORED)
			break;
		*source = p->source;
		*seen = p->seen;
		return p->runs_on;
	}
	*source = "";
	*seen = false;
	return "";
}

/* Whether a position is beyond flat and horizontal fillets. Rolled pipe is flat. */
static bool beyond_flat_and_fillet(enum position p)
{
	return is_out_of_position(p) || p == POSITION_2G;
}

/* Third figure of a covered electrode (2: flat, horizontal fillets), figure before the
 * T of a cored wire (0: flat and horizontal). */
static bool class_forbids(const struct setting *s, enum position p)
{
	if (s->rod.sort == ROD_COVERED && s->rod.position == 2)
		return beyond_flat_and_fillet(p);
	if (s->rod.sort != ROD_CORED)
		return false;
	/* A textbook's table of cored wires (2020): E71T-1 all positions to 1/16 in,
	 * flat and horizontal above. */
	return is_out_of_position(p) && (s->rod.position == 0 ||
	    (s->rod.position == 1 && s->rod.usability == 1 &&
	    is_over(s->dia_mm, 25.4 / 16)));
}

/* The first weld that a setting makes and that `is` is true of; a->nwelds if none. */
static size_t first_weld(const struct assignment *a, const struct setting *s,
    bool (*is)(const struct setting *s, const struct weld *w))
{
	size_t i = 0;

	while (i < a->nwelds && !(setting_makes(a, s, &a->welds[i]) &&
	    is(s, &a->welds[i])))
		i++;
	return i;
}

/* Whether an earlier setting names the same filler: its finding speaks for both. */
static bool is_repeat(const struct settings *l, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (str_eq_nocase(l->v[k].class, l->v[i].class) &&
		    l->v[k].process == l->v[i].process)
			return true;
	/* A pass seldom names its process: the facts did for this class. */
	for (size_t k = 0; k < i; k++)
		if (l->v[i].process == PROCESS_COUNT && l->v[i].class.n &&
		    str_eq_nocase(l->v[k].class, l->v[i].class))
			return true;
	return false;
}

static bool is_beyond_class(const struct setting *s, const struct weld *w)
{
	return class_forbids(s, w->at.position);
}

static void say_beyond_class(struct rule_context *x, uint32_t w,
    const struct setting *s, const struct weld *weld)
{
	bool covered = s->rod.sort == ROD_COVERED, figure = s->rod.position != 1;
	struct finding *d = rule_report(x, FINDING_FILLER_OUT_OF_POSITION, s->filler_pos,
	    w, "%.*s is an electrode for flat and horizontal welds%s, but %.*s is welded "
	    "with it", STR_ARG(s->class), figure ? "" : " over 1/16 in [1.6 mm]",
	    STR_ARG(weld_say(x, weld)));

	if (!figure)
		finding_cause(x->f, d, "this wire is %.*s; a textbook's table (2020) "
		    "gives it all positions to 1/16 in [1.6 mm] only",
		    STR_ARG(say_mm(x, s->dia_mm)));
	else
		finding_cause(x->f, d, "the %s of the class is %d (%s)",
		    covered ? "figure before the last" : "figure before the T",
		    s->rod.position, covered ? HANDBOOK "; AWS A5.1" : CLASSES);
	finding_repair(x->f, d, "%s", covered
	    ? "take an all-position class such as E7018, or weld it flat or 2F"
	    : figure ? "take an all-position wire such as E71T-1, or weld it flat or 2F"
	    : "take a wire of 1/16 in [1.6 mm] or less");
}

static void judge_position(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		size_t k = first_weld(a, &l.v[i], is_beyond_class);

		if (k < a->nwelds && !is_repeat(&l, i))
			say_beyond_class(x, w, &l.v[i], &a->welds[k]);
	}
}

/* What a process or electrode runs on, and who says so; "" when anything goes. */
static const char *wanted_polarity(const struct assignment *a, const struct setting *s,
    const char **source, bool *seen)
{
	bool aluminum = false, other = false;

	if (s->process == PROCESS_SMAW || s->process == PROCESS_FCAW_G ||
	    s->process == PROCESS_FCAW_S || s->process == PROCESS_COUNT)
		return rod_polarity(&s->rod, source, seen);
	*seen = true;
	*source = "a wire feeder's data chart: solid wire runs on DC+";
	if (s->process == PROCESS_GMAW || s->process == PROCESS_GMAW_S)
		return "DC+";
	if (s->process != PROCESS_GTAW)
		return "";
	for (size_t i = 0; i < a->nwelds; i++) {
		uint32_t metals = weld_metals(&a->welds[i]);
		bool one = work_has(metals, METAL_ALUMINUM);

		aluminum |= one;
		other |= !one && !work_has(metals, METAL_NONE);
	}
	*source = aluminum ? "AC breaks the oxide of aluminum (trade pages)"
	    : "DC- keeps the heat in the work and the tungsten cool (trade pages)";
	if (aluminum == other)
		return "";
	/* Aluminum on DC- under helium is a practice of its own. */
	if (aluminum && says(fact_said(a, "Gas"), "he"))
		return "";
	return aluminum ? "AC" : "DC-";
}

static bool has_word(const char *words, str want)
{
	str rest = str_of(words), word;

	while (str_word(&rest, &word))
		if (str_eq_nocase(word, want))
			return true;
	return false;
}

static const char *const sort_words[] = {
	"filler", "covered electrode", "cored wire", "solid wire or rod"
};

/* The sort of filler that a process takes, ROD_UNKNOWN for those not judged. */
static enum rod_sort sort_of_process(enum process p)
{
	if (p == PROCESS_SMAW)
		return ROD_COVERED;
	if (p == PROCESS_FCAW_G || p == PROCESS_FCAW_S)
		return ROD_CORED;
	if (p == PROCESS_GMAW || p == PROCESS_GMAW_S || p == PROCESS_GTAW)
		return ROD_SOLID;
	return ROD_UNKNOWN;
}

/* Whether the class of the filler belongs to another process than the sheet names. */
static bool is_of_another(const struct setting *s)
{
	enum rod_sort wanted = sort_of_process(s->process);

	if (!wanted || s->rod.sort == ROD_UNKNOWN)
		return false;
	return wanted != s->rod.sort ||
	    (s->process == PROCESS_FCAW_G && s->rod.shield == SHIELD_SELF) ||
	    (s->process == PROCESS_FCAW_S && s->rod.shield == SHIELD_GAS);
}

/* Whether a pass names a process that the fact Process leaves out. Short circuit is solid
 * wire by either word. */
static bool is_unlisted(const struct assignment *a, const struct setting *s)
{
	bool solid = s->process == PROCESS_GMAW || s->process == PROCESS_GMAW_S;

	for (uint32_t i = 0; i < a->nprocesses; i++)
		if (a->processes[i] == s->process || (solid &&
		    (a->processes[i] == PROCESS_GMAW ||
		    a->processes[i] == PROCESS_GMAW_S)))
			return false;
	return a->nprocesses && s->process < PROCESS_COUNT;
}

static void say_unlisted(struct rule_context *x, uint32_t w, const struct setting *s)
{
	struct finding *d = rule_report(x, FINDING_FACTS_DISAGREE, s->filler_pos, w,
	    "a pass is in %.*s, which the fact Process does not list",
	    STR_ARG(process_word(s->process)));

	finding_relate(x->f, d, assignment_fact_pos(&x->m->assignments[w],
	    STR("Process")))->label = STR("the fact Process");
	finding_repair(x->f, d, "make both say the same");
}

static bool has_wrong_polarity(const struct assignment *a, const struct setting *s,
    const char **wanted, const char **source, bool *seen)
{
	*wanted = wanted_polarity(a, s, source, seen);
	return **wanted && s->polarity.n && !has_word(*wanted, s->polarity);
}

static void judge_polarity(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		const struct setting *s = &l.v[i];
		const char *source, *wanted;
		struct finding *d;
		bool seen;

		/* Which of the two is meant, the filler or the process, is told first. */
		if (is_unlisted(a, s) || is_of_another(s) ||
		    !has_wrong_polarity(a, s, &wanted, &source, &seen))
			continue;
		d = rule_report(x, FINDING_WRONG_POLARITY, s->current_pos, w,
		    "%.*s does not run on %.*s", STR_ARG(s->class.n ? s->class
		    : process_word(s->process)), STR_ARG(s->polarity));
		if (!seen)
			d->level = LEVEL_WARNING;
		finding_cause(x->f, d, "%s", source);
		finding_repair(x->f, d, "write %s", str_eq(str_of(wanted), STR("AC DC+"))
		    ? "DC+, or AC" : str_eq(str_of(wanted), STR("AC DC-"))
		    ? "DC-, or AC" : wanted);
		return;
	}
}

static void say_other_shield(struct rule_context *x, uint32_t w, const struct setting *s)
{
	bool self = s->rod.shield == SHIELD_SELF;
	struct finding *d = rule_report(x, FINDING_FILLER_OF_ANOTHER_PROCESS,
	    s->filler_pos, w, "%.*s is a %s wire, but the process is %.*s",
	    STR_ARG(s->class), self ? "self-shielded" : "gas-shielded",
	    STR_ARG(process_word(s->process)));

	finding_cause(x->f, d, "the number after the T of the class tells it (%s)",
	    CLASSES);
	finding_repair(x->f, d, "write the process as %s, or take a wire such as %s",
	    self ? "FCAW-S" : "FCAW-G", self ? "E71T-1" : "E71T-11");
}

static void judge_process(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		const struct setting *s = &l.v[i];
		enum rod_sort wanted = sort_of_process(s->process);
		struct finding *d;

		if (is_unlisted(a, s)) {
			say_unlisted(x, w, s);
			return;
		}
		if (!is_of_another(s) || is_repeat(&l, i))
			continue;
		if (wanted == s->rod.sort) {
			say_other_shield(x, w, s);
			continue;
		}
		d = rule_report(x, FINDING_FILLER_OF_ANOTHER_PROCESS, s->filler_pos, w,
		    "%.*s is a %s, which %.*s does not use", STR_ARG(s->class),
		    sort_words[s->rod.sort], STR_ARG(process_word(s->process)));
		finding_cause(x->f, d, "the letters of the class tell it (%s)", CLASSES);
		finding_repair(x->f, d, "name a %s, or another process",
		    sort_words[wanted]);
	}
}

/* An electrode of a metal that does not make a sound weld on a weld's members. */
static bool is_foreign(const struct setting *s, const struct weld *w)
{
	uint32_t metals = s->rod.sort == ROD_UNKNOWN ? 0 : weld_metals(w);
	bool aluminum = work_has(metals, METAL_ALUMINUM);
	bool stainless = work_has(metals, METAL_STAINLESS);

	if (!metals || (work_has(metals, METAL_NONE) && !aluminum && !stainless))
		return false;
	if (s->rod.metal == ROD_ALUMINUM || aluminum)
		return s->rod.metal != ROD_ALUMINUM || !aluminum;
	return stainless && s->rod.metal != ROD_STAINLESS && w->joint != JOINT_SURFACING;
}

static void judge_metal(struct rule_context *x, uint32_t w)
{
	static const char *const metals[] = { "steel", "stainless", "aluminum" };
	static const char *const takes[] = { "E7018 or ER70S-6", "ER308L for 304L",
		"ER4043 or ER5356" };
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		const struct setting *s = &l.v[i];
		size_t k = first_weld(a, s, is_foreign);
		enum rod_metal base = ROD_STEEL;
		struct finding *d;

		if (k == a->nwelds || is_repeat(&l, i))
			continue;
		if (weld_has_metal(&a->welds[k], METAL_ALUMINUM))
			base = ROD_ALUMINUM;
		else if (weld_has_metal(&a->welds[k], METAL_STAINLESS))
			base = ROD_STAINLESS;
		d = rule_report(x, FINDING_FILLER_OF_WRONG_METAL, s->filler_pos, w,
		    "%.*s is a filler for %s, but %.*s is in %s", STR_ARG(s->class),
		    metals[s->rod.metal], STR_ARG(weld_say(x, &a->welds[k])),
		    metals[base]);
		finding_cause(x->f, d, "stainless and aluminum want filler of their own "
		    "sort; another cracks, rusts or does not fuse (common practice, no "
		    "source)");
		finding_repair(x->f, d, "take %s or the like", takes[base]);
	}
}

bool setting_range(const struct assignment *a, const struct setting *s,
    struct current_range *out)
{
	enum process p = s->process == PROCESS_COUNT && s->rod.sort == ROD_COVERED
	    ? PROCESS_SMAW : s->process;
	str class = s->class;
	double dia_mm = s->dia_mm;

	if (p == PROCESS_COUNT || (p == PROCESS_GTAW &&
	    !setting_tungsten(a, &class, &dia_mm)))
		return false;
	return dia_mm > 0 && current_range_find(setting_table_process(a, p), class, dia_mm,
	    s->polarity, out);
}

static void say_current(struct rule_context *x, uint32_t w, const struct setting *s,
    const struct current_range *r)
{
	bool seen = r->seen == SEEN_PAGE;
	str electrode = s->process == PROCESS_GTAW ? STR("this tungsten") : s->class;
	str size = s->process == PROCESS_GTAW || s->dia_mm <= 0 ? (str){ 0 }
	    : str_format(x->f->arena, ", %.*s", STR_ARG(say_mm(x, s->dia_mm)));
	str lo = say_real(x, r->amps_lo, 0), hi = say_real(x, r->amps_hi, 0);
	struct finding *d = rule_report(x, FINDING_CURRENT_OUTSIDE_RANGE, s->current_pos,
	    w, "%.*s is outside what %.*s%.*s takes, %s%.*s%s%.*s A",
	    STR_ARG(say_quantity(x, &s->amps)), STR_ARG(electrode), STR_ARG(size),
	    r->amps_hi > 0 ? "" : "at least ", STR_ARG(lo), r->amps_hi > 0 ? "-" : "",
	    r->amps_hi > 0 ? (int)hi.n : 0, hi.p);

	/* The arc of a tungsten that is too thick wanders, and welds all the same. */
	if (!seen || (s->process == PROCESS_GTAW && s->amps.hi < r->amps_lo))
		d->level = LEVEL_NOTE;
	finding_cause(x->f, d, "%s%s", r->source, seen ? ""
	    : " (from memory; confirm against the maker's label)");
	finding_repair(x->f, d, "stay inside it, or say on the sheet that the maker's "
	    "label of your %s gives more", s->process == PROCESS_GTAW ? "tungsten"
	    : "electrode");
}

/* Whether a setting is under the table. A tungsten is welded with far below what it
 * carries best, by the pedal and with one size for all; it is too thick only where it is
 * never half filled (common practice, no source). */
static bool is_under(const struct setting *s, double least)
{
	if (s->process == PROCESS_GTAW)
		return s->amps.hi < least / 2 - 1e-9;
	return s->amps.lo < least - 1e-9;
}

static void judge_current(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n; i++) {
		const struct setting *s = &l.v[i];
		const char *source, *wanted;
		struct current_range r;
		bool seen;

		/* An electrode or a polarity that is wrong is told as such. */
		if (s->amps.kind != QUANTITY_CURRENT || is_unlisted(a, s) ||
		    is_of_another(s) ||
		    first_weld(a, s, is_beyond_class) < a->nwelds ||
		    has_wrong_polarity(a, s, &wanted, &source, &seen))
			continue;
		if (!setting_range(a, s, &r) || (!is_under(s, r.amps_lo) &&
		    (r.amps_hi <= 0 || s->amps.hi <= r.amps_hi + 1e-9)))
			continue;
		say_current(x, w, s, &r);
		return;
	}
}

static void judge_oven(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct settings l = *x->settings;

	for (size_t i = 0; i < l.n && !fact_said(a, "Oven").n; i++) {
		const struct rod *r = &l.v[i].rod;
		struct finding *d;

		/* Coatings that end in 5, 6 or 8 are the low-hydrogen ones; one that is
		 * named for a wire process is a slip of another kind. */
		if ((l.v[i].process != PROCESS_SMAW &&
		    l.v[i].process != PROCESS_COUNT) || r->sort != ROD_COVERED || r->metal != ROD_STEEL ||
		    (r->coating % 10 != 5 && r->coating % 10 != 6 &&
		    r->coating % 10 != 8))
			continue;
		d = rule_report(x, FINDING_NO_ROD_OVEN, l.v[i].filler_pos, w,
		    "%.*s is low-hydrogen, but the sheet has no Oven line",
		    STR_ARG(l.v[i].class));
		finding_cause(x->f, d, "a low-hydrogen coating takes up damp and is held "
		    "hot until use, commonly out no longer than 4 h (AWS D1.1, from "
		    "memory; confirm against your edition)");
		finding_repair(x->f, d, "add \"- **Oven:** 250-300 degF, 4 h out\"");
		return;
	}
}

void rule_metal(struct rule_context *x, uint32_t w)
{
	judge_position(x, w);
	judge_polarity(x, w);
	judge_process(x, w);
	judge_metal(x, w);
	judge_current(x, w);
	judge_oven(x, w);
}
