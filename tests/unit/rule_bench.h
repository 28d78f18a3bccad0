/* Shared by the tests of the rules about one sheet: an assignment with a shop, judged. */
#ifndef TESTS_RULE_BENCH_H
#define TESTS_RULE_BENCH_H

#include "model_bench.h"

#include "check/check.h"

/* The facts begin at line 5. */
#define SHEET(kind, facts, rest) \
	"# SM-90: Case\n\n- **Kind:** " kind "\n- **Hours:** 2\n" facts "\n" rest
#define FACT(key, value) "- **" key ":** " value "\n"

static const char rule_shop[] =
    "# Shop\n\n## Machine shear\n\n- **Bed:** 10 ft\n- **Mild steel:** 1/4 in\n"
    "- **Stainless:** 10 ga\n\n"
    "## Machine brake\n\n- **Bed:** 96 in\n- **Force:** 60 ton\n"
    "- **V openings:** 1/2, 1, 1-1/2, 2, 3 in\n\n"
    "## Machine ironworker\n\n- **Force:** 65 ton\n- **Punch:** 1-1/16 in\n"
    "- **Flat bar:** 3/4 x 8 in\n\n"
    "## Machine roll\n\n- **Width:** 4 ft\n- **Mild steel:** 3/16 in\n"
    "- **Least diameter:** 10 in\n\n"
    "## Machine plasma table\n\n- **Table:** 5 x 10 ft\n- **Pierce:** 1/2 in\n"
    "- **Edge start:** 3/4 in\n\n"
    "## Machine track torch\n\n- **Carbon steel:** 4 in\n\n"
    "## Machine saw\n\n- **Round:** 10 in\n- **Rectangle:** 9 x 16 in\n\n"
    "## Machine tensile frame\n\n- **Force:** 60,000 lbf\n- **Grips:** 1-1/2 x 2 in\n\n"
    "## Machine drill press\n\n- **Mild steel:** 3/4 in\n\n"
    "## Plungers\n\n- **Diameters:** 1/2, 7/8, 1-1/8, 1-1/2 in\n";

/* The names that this family of rules reports. */
static const enum finding_name rule_names[] = {
	FINDING_FILLER_OUT_OF_POSITION, FINDING_WRONG_POLARITY,
	FINDING_FILLER_OF_ANOTHER_PROCESS, FINDING_FILLER_OF_WRONG_METAL,
	FINDING_CURRENT_OUTSIDE_RANGE, FINDING_NO_ROD_OVEN, FINDING_NO_SHIELDING_GAS,
	FINDING_GAS_NOT_USED, FINDING_WRONG_GAS, FINDING_SPRAY_OUT_OF_POSITION,
	FINDING_TRANSFER_DISAGREES, FINDING_OXY_FUEL_ON_WRONG_METAL,
	FINDING_NO_FUME_CAUTION, FINDING_NO_AIR_CAUTION, FINDING_SHEAR_TOO_SMALL,
	FINDING_SAW_TOO_SMALL, FINDING_TABLE_TOO_SMALL, FINDING_HOLE_TOO_SMALL_TO_PUNCH,
	FINDING_PUNCH_TOO_SMALL, FINDING_DRILL_TOO_SMALL, FINDING_BRAKE_TOO_SMALL,
	FINDING_FLANGE_TOO_SHORT, FINDING_ROLL_TOO_SMALL, FINDING_FRAME_TOO_SMALL,
	FINDING_POSITION_IMPOSSIBLE, FINDING_LEG_OVER_THINNER, FINDING_LEG_OVER_LAP_EDGE,
	FINDING_LEG_UNDER_LEAST, FINDING_OVERLAP_UNDER_LEG,
	FINDING_CAP_OVER_THICKNESS, FINDING_OPENING_OVER_THICKNESS, FINDING_SIZE_SAID_TWICE, FINDING_PIECES_DISAGREE,
	FINDING_BACKING_DISAGREES, FINDING_TEST_IMPOSSIBLE, FINDING_BREAK_OF_BOTH_SIDES,
	FINDING_NO_RESTART_SHOWN, FINDING_SHORT_CIRCUIT_BENT, FINDING_USED_COUPON_TESTED,
	FINDING_WRONG_SORT_OF_BEND, FINDING_TOO_FEW_BENDS, FINDING_STRIPS_DO_NOT_FIT,
	FINDING_WRONG_PLUNGER, FINDING_PLUNGER_NOT_OWNED, FINDING_DIE_TOO_WIDE,
	FINDING_STRAIN_NOT_JUDGED, FINDING_RECORD_INCOMPLETE, FINDING_LIMITS_NOT_OF_TEST,
	FINDING_RANGE_CLAIMS_MORE, FINDING_TEXT_DISAGREES, FINDING_METRIC_DISAGREES,
	FINDING_VOLTS_OUTSIDE_RANGE, FINDING_GAS_FLOW_FAR_OFF, FINDING_PREHEAT_TOO_LOW,
	FINDING_HEAT_INPUT_OVER, FINDING_ASKED_WITHOUT_ANSWER,
	FINDING_DEPOSITS_DISAGREE, FINDING_UNKNOWN_WORD,
};

/* One sheet: the only finding of the family, at its line, with words of message and
 * repair; name FINDING_COUNT: none of the family speaks. */
struct rule_case {
	const char *what, *sheet;
	enum finding_name name;
	uint32_t line;
	enum finding_level level;
	const char *message, *repair;
};

#define SILENT .name = FINDING_COUNT

static inline struct bench rule_bench(const char *sheet)
{
	struct file_text files[] = {
		{ "assignments/one.md", sheet }, { "shop.md", rule_shop },
	};
	struct bench t = bench_bind(files, 2);

	t.f = findings_new(t.arena);
	check_program(t.arena, t.m, t.f);
	findings_sort(t.f);
	return t;
}

static inline bool is_of_family(enum finding_name name)
{
	for (size_t i = 0; i < sizeof rule_names / sizeof *rule_names; i++)
		if (rule_names[i] == name)
			return true;
	return false;
}

static inline void drop_others(struct bench *t)
{
	size_t kept = 0;

	for (size_t i = 0; i < t->f->n; i++)
		if (is_of_family(t->f->v[i].name))
			t->f->v[kept++] = t->f->v[i];
	t->f->n = kept;
}

static inline void expect_case(const struct rule_case *c)
{
	struct bench t = rule_bench(c->sheet);
	bool fires = c->name != FINDING_COUNT;
	const struct finding *d;

	drop_others(&t);
	d = t.f->v;
	if (t.f->n != fires || (fires && (d->name != c->name || d->pos.line != c->line ||
	    d->level != c->level || !d->cause.n || !str_has(d->message, c->message) ||
	    !str_has(d->repair, c->repair)))) {
		print_findings(&t);
		fail_msg("%s: wanted %s at %u: %s / %s", c->what, fires
		    ? finding_info(c->name)->name : "nothing", c->line,
		    fires ? c->message : "", fires ? c->repair : "");
	}
	bench_free(&t);
}

static inline void expect_cases(const struct rule_case *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		expect_case(&v[i]);
}

#define EXPECT_CASES(v) expect_cases((v), sizeof (v) / sizeof *(v))

#endif
