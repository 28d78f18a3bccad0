/* What the steps, the title and the Acceptance of a sheet say in running words against
 * what its facts and its drawing state. */
#include "check/rule_text.h"

#include "check/rule_text_scan.h"

#include "model/words.h"

/* What a sheet states of one datum, wherever it does. */
struct stated {
	const struct quantity *q; /* of a size */
	struct quantity made;    /* where q points when no quantity is written */
	str word;                /* of the rest */
	enum progression way;
	struct pos pos;
	const char *where;
};

struct stated_list {
	struct arena *arena;
	struct stated *v; size_t n, cap;
};

static void state(struct stated_list *l, const struct quantity *q, struct pos pos,
    const char *where)
{
	if (q->kind != QUANTITY_ANY && q->kind != QUANTITY_PIPE && !q->no_value)
		*ARENA_PUSH(l->arena, l->v, l->n, l->cap) =
		    (struct stated){ .q = q, .pos = pos, .where = where };
}

static void state_made(struct stated_list *l, enum quantity_kind kind, double v,
    struct pos pos, const char *where)
{
	struct quantity *q;

	if (v <= 0)
		return;
	q = arena_alloc(l->arena, sizeof *q);
	*q = (struct quantity){ .kind = kind, .lo = v, .hi = v, .decimals = 3,
		.form = FORM_DECIMAL, .unit = kind == QUANTITY_ANGLE ? "deg" : "in" };
	state(l, q, pos, where);
}

static void state_word(struct stated_list *l, str word, enum progression way,
    struct pos pos, const char *where)
{
	if (word.n)
		*ARENA_PUSH(l->arena, l->v, l->n, l->cap) = (struct stated){ .word = word,
			.way = way, .pos = pos, .where = where };
}

/* The leading size of an Acceptance line of a name: "Leg size: 5/16 in, +1/16 -0 in". */
static void state_line(struct stated_list *l, const struct assignment *a,
    const char *name, enum quantity_kind kind)
{
	for (size_t i = 0; i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];
		struct quantity *q = arena_alloc(l->arena, sizeof *q);
		struct quantity_fault fault;
		size_t used;

		if (str_starts_nocase(c->name, str_of(name)) && quantity_prefix(c->text,
		    kind, METAL_NONE, q, &used, &fault) == QUANTITY_OK)
			state(l, q, c->pos, "Acceptance");
	}
}

static void state_angles(struct stated_list *l, const struct joint_block *j,
    enum claim_kind kind)
{
	bool included = kind == CLAIM_INCLUDED;

	state(l, included ? &j->angle : &j->bevel, j->pos, "the drawing");
	/* A single bevel has one prepared member: its bevel is the whole angle. */
	if (j->joint == JOINT_SINGLE_BEVEL || j->joint == JOINT_FLARE_BEVEL)
		state(l, included ? &j->bevel : &j->angle, j->pos, "the drawing");
	else if (included)
		state_made(l, QUANTITY_ANGLE, 2 * j->bevel.lo, j->pos, "the drawing");
	else
		state_made(l, QUANTITY_ANGLE, j->angle.lo / 2, j->pos, "the drawing");
}

static void state_thicknesses(struct stated_list *l, const struct assignment *a)
{
	struct pos fact = assignment_fact_pos(a, STR("Thickness"));

	for (uint32_t i = 0; i < a->nthicknesses; i++) {
		state(l, &a->thicknesses[i], fact, "Thickness");
		state_made(l, QUANTITY_LENGTH, a->thicknesses[i].hi, fact, "Thickness");
	}
	for (size_t i = 0; i < a->nwelds; i++) {
		state_made(l, QUANTITY_LENGTH, a->welds[i].t1_mm, a->welds[i].pos,
		    "the weld");
		state_made(l, QUANTITY_LENGTH, a->welds[i].t2_mm, a->welds[i].pos,
		    "the weld");
	}
	/* "8 in plates" may name any size of a piece. */
	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];

		for (uint32_t k = 0; k < p->ndims; k++)
			state_made(l, QUANTITY_LENGTH, p->dims[k].hi, p->pos, "a piece");
		state_made(l, QUANTITY_LENGTH, p->pipe.wall_mm, p->pos, "a piece");
		state_made(l, QUANTITY_LENGTH, p->pipe.od_mm, p->pos, "a piece");
	}
	for (size_t i = 0; i < a->ndrawings; i++)
		state(l, &a->drawings[i].plate.thickness, a->drawings[i].pos,
		    "the drawing");
}

static void state_settings(struct stated_list *l, const struct assignment *a,
    const struct claim *c)
{
	struct settings s = settings_of(l->arena, a);

	for (size_t i = 0; i < s.n; i++) {
		const struct setting *k = &s.v[i];

		if (c->kind == CLAIM_AMPS)
			state(l, &k->amps, k->current_pos, "the current");
		else if (c->kind == CLAIM_FILLER)
			state_word(l, k->class, PROGRESS_NONE, k->filler_pos,
			    "the filler");
		else if (!c->word.n || str_eq_nocase(c->word, k->class))
			state_made(l, QUANTITY_LENGTH, k->dia_mm, k->filler_pos,
			    "the filler");
	}
}

static void state_joint(struct stated_list *l, const struct assignment *a,
    const struct joint_block *j, enum claim_kind kind)
{
	(void)a;
	if (kind == CLAIM_LEG) {
		state(l, &j->leg, j->pos, "the drawing");
		state(l, &j->leg2, j->pos, "the drawing");
	} else if (kind == CLAIM_OPENING)
		state(l, &j->gap, j->pos, "the drawing");
	else if (kind == CLAIM_LAND)
		state(l, &j->land, j->pos, "the drawing");
	else if (kind == CLAIM_THICKNESS)
		state(l, &j->backing_t, j->pos, "the drawing");
	else
		state_angles(l, j, kind);
}

static void state_sizes(struct stated_list *l, const struct assignment *a,
    enum claim_kind kind)
{
	static const struct { const char *name; enum quantity_kind size; } lines[] = {
		[CLAIM_LEG] = { "Leg size", QUANTITY_LENGTH },
		[CLAIM_OPENING] = { "Root opening", QUANTITY_LENGTH },
		[CLAIM_LAND] = { "Land", QUANTITY_LENGTH },
		[CLAIM_BEVEL] = { "Bevel", QUANTITY_ANGLE },
		[CLAIM_INCLUDED] = { "Groove angle", QUANTITY_ANGLE },
		[CLAIM_THICKNESS] = { "Thickness", QUANTITY_LENGTH },
	};

	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_JOINT)
			state_joint(l, a, &a->drawings[i].joint, kind);
	for (size_t i = 0; kind == CLAIM_LEG && i < a->nwelds; i++) {
		state(l, &a->welds[i].leg, a->welds[i].pos, "the weld");
		state(l, &a->welds[i].leg2, a->welds[i].pos, "the weld");
	}
	if (kind == CLAIM_THICKNESS)
		state_thicknesses(l, a);
	state_line(l, a, lines[kind].name, lines[kind].size);
}

/* A position that its joint cannot have is told as that. */
static bool has_impossible(const struct assignment *a)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (!weld_is_possible(a, i))
			return true;
	return false;
}

static void state_words(struct stated_list *l, const struct assignment *a,
    enum claim_kind kind)
{
	if (kind == CLAIM_POSITION && has_impossible(a))
		return;
	for (uint32_t i = 0; kind == CLAIM_POSITION && i < a->npositions; i++)
		state_word(l, position_word(a->positions[i].position),
		    a->positions[i].progression, a->positions[i].pos, "Position");
	for (size_t i = 0; kind == CLAIM_POSITION && i < a->nwelds; i++)
		state_word(l, position_word(a->welds[i].at.position),
		    a->welds[i].at.progression, a->welds[i].pos, "the weld");
	for (uint32_t i = 0; kind == CLAIM_PROCESS && i < a->nprocesses; i++)
		state_word(l, process_word(a->processes[i]), PROGRESS_NONE,
		    assignment_fact_pos(a, STR("Process")), "Process");
}

/* Everything that the sheet states of what c speaks of. A step may also say what the
 * words of Acceptance do: where those are wrong, they are told. */
static struct stated_list stated_of(struct arena *arena, const struct assignment *a,
    const struct claims *all, const struct claim *c)
{
	struct stated_list l = { .arena = arena };

	if (c->kind == CLAIM_AMPS || c->kind == CLAIM_ROD || c->kind == CLAIM_FILLER)
		state_settings(&l, a, c);
	else if (c->kind < CLAIM_SIZES)
		state_sizes(&l, a, c->kind);
	else
		state_words(&l, a, c->kind);
	for (size_t i = 0; l.n && c->place == CLAIM_IN_STEP && i < all->n; i++)
		if (all->v[i].place == CLAIM_IN_ACCEPTANCE && all->v[i].kind == c->kind &&
		    c->kind < CLAIM_SIZES)
			state(&l, &all->v[i].q, all->v[i].pos, "Acceptance");
	return l;
}

/* Half a thousandth, or a tenth of a degree or ampere. */
static double slack_of(enum quantity_kind kind)
{
	return kind == QUANTITY_LENGTH ? LIMIT_SLACK_MM : 0.1;
}

/* Whether a size in words can be that of the sheet: the two overlap, tolerances
 * counted; a bound only has to leave room; one pass may be smaller than the weld. */
static bool size_agrees(const struct claim *c, const struct quantity *s)
{
	double slack = slack_of(c->q.kind);
	double lo = c->q.lo - c->q.minus - slack, hi = c->q.hi + c->q.plus + slack;
	double least = s->lo - s->minus, most = s->hi + s->plus;

	if (c->bound == BOUND_MOST)
		return hi >= least;
	if (c->bound == BOUND_LEAST)
		return lo <= most;
	return hi >= least && (lo <= most ||
	    (c->kind == CLAIM_AMPS && c->q.range && c->q.lo <= most)) ? true
	    : c->partial && c->kind == CLAIM_LEG && lo <= most;
}

static bool starts_or_is(str a, str b)
{
	return str_starts_nocase(a, b) || str_starts_nocase(b, a);
}

static bool word_agrees(const struct claim *c, const struct stated *s)
{
	if (c->kind != CLAIM_POSITION)
		/* GMAW of GMAW-S, E71T-1 of E71T-1C. */
		return starts_or_is(c->word, s->word);
	/* "1G" of "1G rolled"; "flat" is 1F or 1G. */
	if (!str_starts_nocase(s->word, c->word) && !(c->word.p[0] == '1' &&
	    str_eq(s->word, STR("flat"))))
		return false;
	return !c->way || !s->way || c->way == s->way;
}

static bool agrees(const struct claim *c, const struct stated_list *l)
{
	for (size_t i = 0; i < l->n; i++)
		if (c->kind < CLAIM_SIZES ? size_agrees(c, l->v[i].q)
		    : word_agrees(c, &l->v[i]))
			return true;
	return !l->n;
}

static str claim_say(const struct rule_context *x, const struct claim *c)
{
	static const char *const what[] = {
		[CLAIM_LEG] = "a leg of", [CLAIM_OPENING] = "an opening of",
		[CLAIM_LAND] = "a land of", [CLAIM_BEVEL] = "a bevel of",
		[CLAIM_INCLUDED] = "an included angle of",
		[CLAIM_THICKNESS] = "a thickness of", [CLAIM_ROD] = "an electrode of",
		[CLAIM_AMPS] = "",
	};
	static const char *const bounds[] = { "", " at most", " at least" };
	static const char *const ways[] = { "", " up", " down" };

	if (c->kind == CLAIM_LAND && c->q.hi <= 0)
		return STR("no land");
	if (c->kind >= CLAIM_SIZES)
		return str_format(x->f->arena, "%.*s%s", STR_ARG(c->said.n ? c->said
		    : c->word), ways[c->way]);
	return str_format(x->f->arena, "%s%s%s %.*s", what[c->kind], bounds[c->bound],
	    *what[c->kind] ? "" : "a current of", STR_ARG(say_quantity(x, &c->q)));
}

static str place_say(const struct rule_context *x, const struct claim *c)
{
	static const char *const where[] = { "the title", "Bring", "Acceptance" };

	if (c->place == CLAIM_IN_STEP)
		return str_format(x->f->arena, "step %u", c->number);
	return str_of(where[c->place]);
}

static str stated_say(const struct rule_context *x, const struct stated *s)
{
	static const char *const ways[] = { "", " up", " down" };

	if (s->q && s->q->form == FORM_DECIMAL && s->q->kind == QUANTITY_LENGTH)
		return say_mm(x, s->q->lo);
	if (s->q)
		return say_quantity(x, s->q);
	return str_format(x->f->arena, "%.*s%s", STR_ARG(s->word), ways[s->way]);
}

static bool same_claim(const struct claim *a, const struct claim *b)
{
	return a->kind == b->kind && (a->kind < CLAIM_SIZES
	    ? a->q.lo == b->q.lo && a->q.hi == b->q.hi && a->bound == b->bound
	    : str_eq_nocase(a->word, b->word) && a->way == b->way);
}

/* Values said of one place. */
enum { SAID_MOST = 4 };

/* All that the first place states, each value once: "1F, 3F up". */
static str stated_all(const struct rule_context *x, const struct stated_list *l)
{
	struct buf b = { .arena = x->f->arena };
	str said[SAID_MOST];
	size_t n = 0;

	for (size_t i = 0; i < l->n && n < SAID_MOST; i++) {
		str one = stated_say(x, &l->v[i]);
		bool again = !str_eq(str_of(l->v[i].where), str_of(l->v[0].where));

		for (size_t k = 0; k < n; k++)
			again |= str_eq(said[k], one);
		if (again)
			continue;
		said[n++] = one;
		buf_addf(&b, "%s%.*s", n > 1 ? ", " : "", STR_ARG(one));
	}
	return buf_str(&b);
}

/* Whether any words speak of what a fact states. */
static bool is_said(const struct claims *all, enum claim_kind kind, const struct stated *s)
{
	for (size_t i = 0; i < all->n; i++)
		if (all->v[i].kind == kind && word_agrees(&all->v[i], s))
			return true;
	return false;
}

static bool has_pipe(const struct assignment *a)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (joint_is_pipe(&a->welds[i]))
			return true;
	return false;
}

/* A position with its direction, which one owes that is welded either way. */
static str word_way(const struct rule_context *x, uint32_t w, str word,
    enum progression way)
{
	static const char *const ways[] = { "", " up", " down" };
	uint32_t at = words_find(&words_position, word);

	if (at == POSITION_1G && has_pipe(&x->m->assignments[w]))
		return position_word(POSITION_1G_ROLLED);
	if (!way && at != NONE && position_wants_progression((enum position)at))
		way = PROGRESS_UP;
	return str_format(x->f->arena, "%.*s%s", STR_ARG(word), ways[way]);
}

static struct slip *note_slip(const struct rule_context *x, struct finding *d,
    struct pos pos, str wrong, str right)
{
	struct slip *slip = finding_slip(x->f, d, pos, wrong, right);

	slip->read = true;
	return slip;
}

/* One current that all words of the sheet leave room for. */
static void note_amps(const struct rule_context *x, struct finding *d,
    const struct claims *all, const struct stated *s)
{
	struct quantity q = { 0 };
	str right;

	for (size_t i = 0; i < all->n; i++) {
		const struct claim *c = &all->v[i];

		if (c->kind != CLAIM_AMPS)
			continue;
		q.lo = q.hi <= 0 || c->q.lo < q.lo ? c->q.lo : q.lo;
		q.hi = c->q.hi > q.hi ? c->q.hi : q.hi;
	}
	right = q.lo < q.hi ? str_format(x->f->arena, "%u-%u A", (unsigned)q.lo,
	    (unsigned)q.hi) : str_format(x->f->arena, "%u A", (unsigned)q.hi);
	note_slip(x, d, s->pos, stated_say(x, s), right)->say = str_format(x->f->arena,
	    "write %.*s at Current, as the steps say", STR_ARG(right));
}

/* A size as sheets write it: "5/16 in" of "5/16 in [8 mm]", "30 deg". */
static str plain_say(const struct rule_context *x, str said, const struct quantity *q)
{
	if (q && q->kind == QUANTITY_ANGLE && q->lo == q->hi)
		return str_format(x->f->arena, "%.*s deg", STR_ARG(say_real(x, q->lo, 1)));
	return str_sub(said, 0, str_find(said, STR(" ["), 0));
}

/* Notes what the sheet states as what the text says, unless other words of the sheet say
 * it too, and what the text says as what the sheet states. */
static void note_slips(const struct rule_context *x, uint32_t w, struct finding *d,
    const struct claims *all, const struct claim *c, const struct stated_list *l)
{
	str place = place_say(x, c), text = c->said.n ? c->said : c->word, right = c->word;

	if (c->kind < CLAIM_SIZES)
		right = plain_say(x, c->said, &c->q);
	else if (c->kind == CLAIM_POSITION)
		right = word_way(x, w, c->word, c->way);
	if (c->kind == CLAIM_AMPS && l->n == 1)
		note_amps(x, d, all, l->v);
	for (size_t i = 0; c->kind != CLAIM_AMPS && i < l->n; i++) {
		const struct stated *s = &l->v[i];
		str fact = plain_say(x, stated_say(x, s), s->q);

		if ((l->n == 1 || c->kind < CLAIM_SIZES || !is_said(all, c->kind, s)) &&
		    (c->kind != CLAIM_PROCESS || words_find(&words_process, right) != NONE))
			note_slip(x, d, s->pos, fact, right)->say = str_format(x->f->arena,
			    "write %.*s at %s, as %.*s says", STR_ARG(right), s->where,
			    STR_ARG(place));
		if (c->kind >= CLAIM_SIZES)
			fact = s->word;
		note_slip(x, d, c->pos, text, fact)->say = str_format(x->f->arena,
		    "write %.*s in %.*s, as %s says", STR_ARG(fact), STR_ARG(place), s->where);
	}
}

static void say_claim(struct rule_context *x, uint32_t w, const struct claims *all,
    size_t i, const struct stated_list *l)
{
	const struct claim *c = &all->v[i];
	const struct stated *s = &l->v[0];
	struct finding *d = rule_report(x, FINDING_TEXT_DISAGREES, c->pos, w,
	    "%.*s says %.*s, and %s says %.*s", STR_ARG(place_say(x, c)),
	    STR_ARG(claim_say(x, c)), s->where, STR_ARG(stated_all(x, l)));

	finding_relate(x->f, d, s->pos)->label = str_of(s->where);
	for (size_t k = i + 1; k < all->n; k++)
		if (same_claim(&all->v[k], c) && all->v[k].pos.line != c->pos.line)
			finding_relate(x->f, d, all->v[k].pos)->label = str_format(
			    x->f->arena, "%.*s says the same", STR_ARG(place_say(x,
			    &all->v[k])));
	finding_cause(x->f, d, "students do what the words say and are graded by the "
	    "rest of the sheet");
	finding_repair(x->f, d, "make both say the same");
	note_slips(x, w, d, all, c, l);
}

/* A slip is told where it stands first. */
static bool is_repeat(const struct claims *all, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (same_claim(&all->v[k], &all->v[i]))
			return true;
	return false;
}

static void judge_claims(struct rule_context *x, uint32_t w, struct claims *all)
{
	for (size_t i = 0; i < all->n; i++) {
		struct stated_list l = stated_of(x->scratch, &x->m->assignments[w], all,
		    &all->v[i]);

		all->v[i].wrong = !agrees(&all->v[i], &l);
		if (all->v[i].wrong && !is_repeat(all, i))
			say_claim(x, w, all, i, &l);
	}
}

/* A size that is told as wrong already. */
static bool is_told(const struct claims *all, str said)
{
	for (size_t i = 0; i < all->n; i++)
		if (all->v[i].wrong && all->v[i].said.p == said.p)
			return true;
	return false;
}

static void judge_metric(struct rule_context *x, uint32_t w, const struct claims *all)
{
	for (size_t i = 0; i < all->nunlike; i++) {
		const struct unlike *u = &all->unlike[i];
		struct finding *d;

		if (is_told(all, u->inch))
			continue;
		d = rule_report(x, FINDING_METRIC_DISAGREES, u->pos, w,
		    "%.*s is not %.*s", STR_ARG(u->inch), STR_ARG(u->metric));

		finding_cause(x->f, d, "1 in is 25.4 mm exactly; rounding alone does not "
		    "make the difference");
		finding_repair(x->f, d, "correct the one that is wrong");
	}
}

/* One list of claims serves every sheet in turn. */
static struct claims *claims_new(struct arena *a)
{
	struct claims *all = arena_alloc(a, sizeof *all);
	struct tokens *tokens = arena_alloc(a, sizeof *tokens);

	tokens->arena = all->arena = a;
	all->tokens = tokens;
	return all;
}

void rule_text(struct rule_context *x, uint32_t w)
{
	if (!x->claims)
		x->claims = claims_new(x->scratch);
	claims_find(x->claims, &x->m->assignments[w]);
	judge_claims(x, w, x->claims);
	judge_metric(x, w, x->claims);
}
