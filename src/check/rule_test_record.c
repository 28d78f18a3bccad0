/* What a qualification test must name, and what its range may claim. */
#include "check/rule_test.h"

#include "check/rule_metal.h"
#include "reckon/qualify.h"

static bool names_code(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (a->criteria[i].code.n && a->criteria[i].edition)
			return true;
	return false;
}

/* The first line that names a code without its edition, else the heading. */
static struct pos code_place(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (a->criteria[i].code.n)
			return a->criteria[i].pos;
	return a->pos;
}

static void judge_record(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	bool procedure = is_stated(fact_said(a, "Procedure"));
	bool witness = is_stated(fact_said(a, "Witness")), code = names_code(a);
	struct finding *d;

	if (a->kind != KIND_QUALIFICATION_TEST || (procedure && witness && code))
		return;
	d = rule_report(x, FINDING_RECORD_INCOMPLETE, procedure && witness
	    ? code_place(a) : a->pos, w,
	    "%.*s is a qualification test and names no%s%s%s", STR_ARG(a->id),
	    procedure ? "" : " procedure", witness ? "" : procedure ? " witness"
	    : ", no witness", code ? "" : procedure && witness ? " code with its edition"
	    : ", no code with its edition");
	finding_cause(x->f, d, "it counts only when the witness signs the record that "
	    "the code edition asks for, made to a written procedure (AWS D1.1, ASME IX)");
	finding_repair(x->f, d, "add%s%s%s", procedure ? "" : " \"- **Procedure:** \"",
	    witness ? "" : " \"- **Witness:** certified welding inspector\"",
	    code ? "" : " a code and edition under Acceptance, such as \"D1.1-2020 "
	    "welder test\"");
}

static void judge_limits(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; a->kind == KIND_QUALIFICATION_TEST && i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];
		struct finding *d;

		if (!says(c->name, "visual") || !c->code.n ||
		    str_eq(c->loading, STR("welder test")))
			continue;
		d = rule_report(x, FINDING_LIMITS_NOT_OF_TEST, c->pos, w,
		    "a qualification test is looked at by the limits of a welder test, "
		    "and the line says %.*s", STR_ARG(c->loading.n ? c->loading
		    : STR("none")));
		finding_cause(x->f, d, "limits for production welds differ from those of "
		    "a test weld (AWS D1.1, welder qualification; confirm against your "
		    "edition)");
		finding_repair(x->f, d, "write \"%.*s welder test\"", STR_ARG(c->code));
		return;
	}
}

/* The code of the tests, as the tables of ranges call it; null: none that is judged. */
static const char *code_of(const struct assignment *a)
{
	for (size_t i = 0; i < a->ncriteria; i++)
		if (qualify_code(a->criteria[i].code))
			return qualify_code(a->criteria[i].code);
	return NULL;
}

/* The position of a weld as the tables name it: "1G" of "1G rolled". */
static str test_of(const struct weld *w)
{
	str p = position_word(w->at.position);

	return str_sub(p, 0, str_find_char(p, ' ', 0));
}

static enum qualify_form form_of(const struct weld *w)
{
	return joint_is_pipe(w) ? COUPON_PIPE : COUPON_PLATE;
}

static enum qualify_weld weld_of(const struct weld *w)
{
	return joint_is_butt(w->joint) ? QUALIFY_GROOVE : QUALIFY_FILLET;
}

/* The thickest that any weld of the coupon gives. *no_limit: there is none. Null when
 * the tables do not know one of the welds. */
static const struct qualify_range *best_range(const struct assignment *a,
    const char *code, double *most_mm, bool *no_limit)
{
	const struct qualify_range *best = NULL;
	bool groove = false;

	*most_mm = 0;
	*no_limit = false;
	for (size_t i = 0; i < a->nwelds; i++)
		groove |= joint_is_butt(a->welds[i].joint);
	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *w = &a->welds[i];
		const struct joint_block *j = weld_block(a, i);
		const struct qualify_range *r = qualify_range_find(str_of(code),
		    test_of(w), form_of(w), weld_of(w), w->run.od_mm, weld_thin_mm(w));
		double most;

		/* Beside a groove the fillet says nothing of plate thickness. */
		if (groove && !joint_is_butt(w->joint))
			continue;
		if (!r)
			return NULL;
		/* Where layers are not told they are no more than the passes. */
		most = qualify_most_mm(r, weld_thin_mm(w), j && j->nlayers ? (uint32_t)j->nlayers
		    : j && j->passes ? j->passes : 3);
		*no_limit |= most <= 0;
		if (!best || most > *most_mm) {
			best = r;
			*most_mm = most;
		}
	}
	return best;
}

bool find_length(str text, size_t *at, size_t *from, struct quantity *q)
{
	for (; *at < text.n; ++*at) {
		struct quantity_fault fault;
		size_t used;
		bool begins = text.p[*at] >= '0' && text.p[*at] <= '9' &&
		    (!*at || text.p[*at - 1] == ' ');

		if (!begins || quantity_prefix(str_sub(text, *at, text.n), QUANTITY_LENGTH,
		    METAL_NONE, q, &used, &fault) != QUANTITY_OK)
			continue;
		*from = *at;
		*at += used;
		return true;
	}
	return false;
}

static bool starts_any(str s, const char *const *words)
{
	for (; *words; words++)
		if (str_starts_nocase(s, str_of(*words)))
			return true;
	return false;
}

static bool is_diameter(str after)
{
	static const char *const words[] = { "outside diameter", "diameter", "OD", NULL };

	return starts_any(after, words);
}

struct thickness_claim claimed_thickness(str text)
{
	static const char *const over[] = { "and over", "and up", "and more", "or more",
		"and thicker", "and above", NULL };
	struct thickness_claim c = { .no_limit = says(text, "unlimited") ||
		says(text, "no limit") || says(text, "any thickness") };
	struct quantity q;
	size_t from;

	for (size_t i = 0; find_length(text, &i, &from, &q);) {
		str after = str_trim(str_sub(text, i, text.n));
		str before = str_trim(str_sub(text, 0, from));
		bool to = str_ends(before, STR(" to")) || str_eq(before, STR("to"));

		if (is_diameter(after))
			continue;
		c.no_limit |= starts_any(after, over);
		if ((q.range || starts_any(after, over) || starts_any(after,
		    (const char *const[]){ "to unlimited", NULL })) && (!c.least_mm ||
		    q.lo < c.least_mm))
			c.least_mm = q.lo;
		if ((q.range || to) && q.hi > c.most_mm)
			c.most_mm = q.hi;
	}
	return c;
}

/* The clause that a claim is held against; a failure only where it was seen. */
static void say_clause(struct rule_context *x, struct finding *d, const char *clause,
    const char *verified)
{
	bool seen = seen_of(verified) == SEEN_PAGE;

	if (!seen)
		d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "%s%s", clause, seen ? ""
	    : ", from memory; confirm against your edition");
}

static void say_thickness(struct rule_context *x, uint32_t w,
    const struct qualify_range *r, str claimed, double most_mm)
{
	const struct assignment *a = &x->m->assignments[w];
	struct finding *d = rule_report(x, FINDING_RANGE_CLAIMS_MORE,
	    assignment_fact_pos(a, STR("Range")), w,
	    "Range claims %.*s, and this coupon gives %.*s at the most", STR_ARG(claimed),
	    STR_ARG(say_mm(x, most_mm)));

	say_clause(x, d, r->clause, r->verified);
	finding_repair(x->f, d, "claim less, or weld a thicker coupon");
}

static void say_thinner(struct rule_context *x, uint32_t w,
    const struct qualify_range *r, double claim_mm)
{
	struct finding *d = rule_report(x, FINDING_RANGE_CLAIMS_MORE,
	    assignment_fact_pos(&x->m->assignments[w], STR("Range")), w,
	    "Range claims %.*s, and this coupon gives %.*s at the least",
	    STR_ARG(say_mm(x, claim_mm)), STR_ARG(say_mm(x, r->least_in * 25.4)));

	say_clause(x, d, r->clause, r->verified);
	finding_repair(x->f, d, "claim no thinner metal than that");
}

static void judge_thickness(struct rule_context *x, uint32_t w, const char *code,
    str text)
{
	const struct assignment *a = &x->m->assignments[w];
	struct thickness_claim claim = claimed_thickness(text);
	bool no_limit;
	double most;
	const struct qualify_range *r = best_range(a, code, &most, &no_limit);

	if (!r)
		return;
	if (claim.no_limit && !no_limit)
		say_thickness(x, w, r, STR("no limit"), most);
	else if (is_over(claim.most_mm, most) && !no_limit)
		say_thickness(x, w, r, say_mm(x, claim.most_mm), most);
	else if (claim.least_mm > 0 && is_over(r->least_in * 25.4, claim.least_mm))
		say_thinner(x, w, r, claim.least_mm);
}

enum { CLAIM_F = 1, CLAIM_H = 2, CLAIM_V = 4, CLAIM_O = 8, CLAIM_ALL = 15 };

static const char *const claim_words[] = { "flat", "horizontal", "vertical", "overhead" };

/* Positions that a piece of the line claims. */
static unsigned claims(str text)
{
	static const char *const all[] = { "all positions", "every position", NULL };
	unsigned bits = says_any(text, all) ? CLAIM_ALL : 0;

	for (unsigned i = 0; i < 4; i++)
		if (says(text, claim_words[i]))
			bits |= 1u << i;
	return bits;
}

/* "F H V", "F OH", "All". */
static unsigned granted(const char *words)
{
	unsigned bits = 0;
	str rest = str_of(words), word;

	while (str_word(&rest, &word)) {
		if (str_eq_nocase(word, STR("All")))
			return CLAIM_ALL;
		bits |= word.p[0] == 'F' ? CLAIM_F : word.p[0] == 'H' ? CLAIM_H
		    : word.p[0] == 'V' ? CLAIM_V : CLAIM_O;
	}
	return bits;
}

/* What the welds give together: each alone, and two or three in the order tested. */
static void give(const struct assignment *a, struct rule_context *x, const char *code,
    unsigned *groove, unsigned *fillet, const char **clause)
{
	struct buf all = { .arena = x->scratch };
	const struct weld *first = &a->welds[0];

	for (size_t i = 0; i <= a->nwelds; i++) {
		const struct weld *w = i < a->nwelds ? &a->welds[i] : first;
		const struct qualify_position *p;

		if (i < a->nwelds) {
			buf_adds(&all, i ? "+" : "");
			buf_add(&all, test_of(w));
		}
		p = qualify_position_find(str_of(code), i < a->nwelds ? test_of(w)
		    : buf_str(&all), form_of(w), weld_of(w));
		if (!p)
			continue;
		*groove |= granted(form_of(w) == COUPON_PIPE ? p->groove_pipe
		    : p->groove_plate);
		*fillet |= granted(p->fillet);
		*clause = p->clause;
	}
}

static void say_positions(struct rule_context *x, uint32_t w, unsigned more,
    const char *what, const char *clause)
{
	const struct assignment *a = &x->m->assignments[w];
	struct buf b = { .arena = x->f->arena };
	struct finding *d;

	for (unsigned i = 0; i < 4; i++)
		if (more & 1u << i)
			buf_addf(&b, "%s%s", b.n ? " and " : "", claim_words[i]);
	d = rule_report(x, FINDING_RANGE_CLAIMS_MORE,
	    assignment_fact_pos(a, STR("Range")), w,
	    "Range claims %ss %.*s, which the positions welded do not give", what,
	    STR_ARG(buf_str(&b)));
	finding_cause(x->f, d, "%s", clause);
	finding_repair(x->f, d, "claim less, or weld the position that gives it");
}

static void judge_claimed(struct rule_context *x, uint32_t w, const char *code, str text)
{
	const struct assignment *a = &x->m->assignments[w];
	size_t at = str_find(text, STR("fillet"), 0);
	unsigned groove_claim = claims(str_sub(text, 0, at));
	unsigned fillet_claim = claims(str_sub(text, at, text.n));
	unsigned groove = 0, fillet = 0;
	const char *clause = NULL;

	/* "grooves and fillets in all positions" claims both. */
	if (at < text.n && !groove_claim && says(text, "groove"))
		groove_claim = fillet_claim;
	give(a, x, code, &groove, &fillet, &clause);
	if (!clause)
		return;
	if (groove_claim & ~groove && says(text, "groove"))
		say_positions(x, w, groove_claim & ~groove, "groove", clause);
	else if (fillet_claim & ~fillet)
		say_positions(x, w, fillet_claim & ~fillet, "fillet", clause);
}

static void judge_open(struct rule_context *x, uint32_t w, str text)
{
	static const char *const open[] = { "without backing", "open root", "open-root",
		NULL };
	const struct assignment *a = &x->m->assignments[w];
	str backing = fact_said(a, "Backing");
	struct finding *d;

	if (!is_stated(backing) || !says_any(text, open))
		return;
	d = rule_report(x, FINDING_RANGE_CLAIMS_MORE,
	    assignment_fact_pos(a, STR("Range")), w,
	    "Range claims grooves without backing, and the coupon has one");
	d->level = LEVEL_WARNING;
	finding_relate(x->f, d, assignment_fact_pos(a, STR("Backing")))->label = backing;
	finding_cause(x->f, d, "a backed test does not qualify an open root (from "
	    "memory; confirm against your edition)");
	finding_repair(x->f, d, "claim grooves with backing, or weld an open root");
}

/* "pipe of 2-7/8 in outside diameter and over": the smallest claimed, or 0. */
static double claimed_least_mm(str text)
{
	struct quantity q;

	for (size_t i = 0, from; find_length(text, &i, &from, &q);)
		if (q.lo > 0 && is_diameter(str_trim(str_sub(text, i, text.n))))
			return q.lo;
	return 0;
}

/* The smallest pipe that any weld of the coupon gives. Null: no weld is on pipe. */
static const struct qualify_diameter *best_diameter(const struct assignment *a,
    const char *code, double *least_mm)
{
	const struct qualify_diameter *best = NULL;

	for (size_t i = 0; i < a->nwelds; i++) {
		double od_mm = a->welds[i].run.od_mm, least;
		const struct qualify_diameter *d = od_mm > 0
		    ? qualify_diameter_find(str_of(code), od_mm) : NULL;

		if (!d)
			continue;
		least = d->least_times * od_mm;
		if (least < d->least_in * 25.4)
			least = d->least_in * 25.4;
		if (!best || least < *least_mm) {
			best = d;
			*least_mm = least;
		}
	}
	return best;
}

static void judge_diameter(struct rule_context *x, uint32_t w, const char *code, str text)
{
	static const char *const every[] = { "all diameters", "any diameter",
		"every diameter", "all pipe sizes", "all sizes of pipe", "any pipe size", NULL };
	const struct assignment *a = &x->m->assignments[w];
	bool all = says_any(text, every);
	double claim = all ? 0 : claimed_least_mm(text), least = 0;
	const struct qualify_diameter *r = all || claim > 0
	    ? best_diameter(a, code, &least) : NULL;
	struct finding *d;

	if (!r || !is_over(least, claim))
		return;
	d = rule_report(x, FINDING_RANGE_CLAIMS_MORE,
	    assignment_fact_pos(a, STR("Range")), w, "Range claims pipe %s%.*s, and "
	    "this coupon gives pipe from %.*s on", all ? "of every diameter" : "from ",
	    STR_ARG(all ? (str){ 0 } : say_mm(x, claim)), STR_ARG(say_mm(x, least)));
	say_clause(x, d, r->clause, r->verified);
	finding_repair(x->f, d, "claim less, or weld a smaller pipe");
}

static void judge_range(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	str text = fact_said(a, "Range");
	const char *code = code_of(a);

	if (!is_stated(text) || !code || !a->nwelds)
		return;
	if (!range_of_deposits(x, w, code, text))
		judge_thickness(x, w, code, text);
	judge_claimed(x, w, code, text);
	judge_open(x, w, text);
	judge_diameter(x, w, code, text);
}

void rule_test_record(struct rule_context *x, uint32_t w)
{
	judge_record(x, w);
	judge_limits(x, w);
	judge_range(x, w);
}
