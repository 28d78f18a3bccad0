/* Weld metal that the passes leave: against the groove that they fill, and against the
 * range that a test claims for one process. */
#include "check/rule_test.h"

#include "check/rule_metal.h"
#include "model/words.h"
#include "reckon/qualify.h"

/* One line of "## Passes" as far as its weld metal goes. */
struct layer {
	enum process process;    /* PROCESS_COUNT: not told */
	str class;               /* of the filler; may be empty */
	double deposit_mm;       /* 0: not told */
	struct pos pos;
};

struct layers {
	struct layer *v;
	size_t n, cap;
	size_t told;             /* those with a deposit */
	double total_mm;
};

static double deposit_of(str part)
{
	struct quantity_fault fault;
	struct quantity q;

	if (!str_starts_nocase(part, STR("deposit ")) || quantity_parse(str_trim(str_sub(
	    part, 8, part.n)), QUANTITY_LENGTH, METAL_NONE, &q, &fault) != QUANTITY_OK)
		return 0;
	return q.hi;
}

static struct layer layer_of(const struct assignment *a, const struct pass *p)
{
	struct layer l = { .process = a->nprocesses == 1 ? a->processes[0]
		: PROCESS_COUNT, .pos = p->pos };
	str rest = p->text, part, word;

	while (str_next(&rest, ',', &part)) {
		str words = part = str_trim(part);
		uint32_t process = words_find(&words_process, part);

		if (process != NONE)
			l.process = (enum process)process;
		else if (!l.class.n && str_word(&words, &word) &&
		    rod_read(word).sort != ROD_UNKNOWN)
			l.class = word;
		else if (!(l.deposit_mm > 0))
			l.deposit_mm = deposit_of(part);
	}
	return l;
}

static struct layers layers_of(struct arena *arena, const struct assignment *a)
{
	struct layers l = { 0 };

	for (size_t i = 0; i < a->npasses; i++) {
		struct layer *k = ARENA_PUSH(arena, l.v, l.n, l.cap);

		*k = layer_of(a, &a->passes[i]);
		l.told += k->deposit_mm > 0;
		l.total_mm += k->deposit_mm;
	}
	return l;
}

/* The groove that all passes fill: its thickness, or 0 when there is none or several. */
static double groove_mm(const struct assignment *a, const struct weld **groove)
{
	double t_mm = 0;

	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *w = &a->welds[i];

		if (!joint_is_butt(w->joint) || (t_mm > 0 && !is_same_mm(t_mm,
		    weld_thin_mm(w))))
			return 0;
		t_mm = weld_thin_mm(w);
		*groove = *groove ? *groove : w;
	}
	return t_mm;
}

/* The cap that a drawing allows on top. */
static double cap_mm(const struct assignment *a)
{
	double most = 0;

	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct quantity *q = &a->drawings[i].joint.reinforcement;

		if (a->drawings[i].kind == DRAWING_JOINT && q->hi + q->plus > most)
			most = q->hi + q->plus;
	}
	return most;
}

#define DEPOSIT_SLACK_MM (25.4 / 32)

static void judge_sum(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct layers l = a->npasses ? layers_of(x->scratch, a) : (struct layers){ 0 };
	const struct weld *groove = NULL;
	double t_mm = l.told ? groove_mm(a, &groove) : 0, cap = cap_mm(a);
	bool gouged = says(fact_said(a, "Backing"), "back-gouged");
	bool under = l.told == l.n && is_over(t_mm - DEPOSIT_SLACK_MM, l.total_mm);
	bool over = !gouged && is_over(l.total_mm, t_mm + (cap > DEPOSIT_SLACK_MM ? cap
	    : DEPOSIT_SLACK_MM));
	struct finding *d;

	if (t_mm <= 0 || (!under && !over))
		return;
	d = rule_report(x, FINDING_DEPOSITS_DISAGREE, l.v[0].pos, w,
	    "the passes leave %.*s of weld metal together, and %.*s is in %.*s",
	    STR_ARG(say_mm(x, l.total_mm)), STR_ARG(weld_say(x, groove)),
	    STR_ARG(say_mm(x, t_mm)));
	finding_relate(x->f, d, groove->pos)->label = STR("the thickness");
	finding_cause(x->f, d, "a groove is filled from side to side, so what its passes "
	    "deposit adds up to the thickness");
	finding_repair(x->f, d, "correct a deposit, or the thickness");
}

/* What the passes that a part of the Range names leave. *named: it names some; NONE of
 * them when none is on the sheet. */
static double deposit_named(const struct assignment *a, const struct layers *l, str part,
    str *named, bool *told)
{
	double sum = 0;
	str rest = part, word;

	*named = (str){ 0 };
	*told = true;
	while (!named->n && str_word(&rest, &word)) {
		uint32_t process = word.n > 2 && word.p[1] <= 'Z'
		    ? words_find(&words_process, word) : NONE;

		if (process == NONE && rod_read(word).sort == ROD_UNKNOWN)
			continue;
		*named = word;
		for (size_t i = 0; i < l->n; i++) {
			bool is = process != NONE ? l->v[i].process == process
			    : str_eq_nocase(l->v[i].class, word);

			sum += is ? l->v[i].deposit_mm : 0;
			*told &= !is || l->v[i].deposit_mm > 0;
		}
	}
	(void)a;
	return sum;
}

/* Passes are at least as many as layers. */
static unsigned layers_most(const struct assignment *a)
{
	unsigned most = 0;

	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_JOINT &&
		    a->drawings[i].joint.passes > most)
			most = a->drawings[i].joint.passes;
	return most ? most : 3;
}

static bool judge_part(struct rule_context *x, uint32_t w, const char *code,
    const struct layers *l, str part)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct weld *k = &a->welds[0];
	struct thickness_claim claim = claimed_thickness(part);
	const struct qualify_range *r;
	str named, position = position_word(k->at.position);
	bool told;
	double sum = deposit_named(a, l, part, &named, &told), most;
	struct finding *d;

	if (!named.n || !told || sum <= 0 || (claim.most_mm <= 0 && !claim.no_limit))
		return false;
	r = qualify_range_find(str_of(code), str_sub(position, 0, str_find_char(position,
	    ' ', 0)), joint_is_pipe(k) ? COUPON_PIPE : COUPON_PLATE, QUALIFY_GROOVE,
	    k->run.od_mm, sum);
	most = r ? qualify_most_mm(r, sum, layers_most(a)) : 0;
	if (most <= 0 || !(claim.no_limit || is_over(claim.most_mm, most)))
		return false;
	d = rule_report(x, FINDING_RANGE_CLAIMS_MORE,
	    assignment_fact_pos(a, STR("Range")), w,
	    "Range claims %.*s of %.*s, and its passes leave %.*s, which gives %.*s",
	    STR_ARG(claim.no_limit ? STR("no limit") : say_mm(x, claim.most_mm)),
	    STR_ARG(named), STR_ARG(say_mm(x, sum)), STR_ARG(say_mm(x, most)));
	finding_relate(x->f, d, l->v[0].pos)->label = STR("the passes");
	finding_cause(x->f, d, "%s", r->clause);
	finding_repair(x->f, d, "claim less, or deposit more with it");
	return true;
}

/* Only that code goes by the weld metal of each process. */
bool range_of_deposits(struct rule_context *x, uint32_t w, const char *code, str text)
{
	const struct assignment *a = &x->m->assignments[w];
	struct layers l = layers_of(x->scratch, a);
	const struct weld *groove = NULL;
	str rest = text, part;
	bool any = false;

	if (!str_eq(str_of(code), STR("ASME IX")) || !l.told || groove_mm(a, &groove) <= 0)
		return false;
	while (str_next(&rest, ';', &part)) {
		str inner = part, piece;

		while (str_next(&inner, ',', &piece))
			any |= judge_part(x, w, code, &l, piece);
	}
	return any;
}

void rule_deposit(struct rule_context *x, uint32_t w)
{
	judge_sum(x, w);
}
