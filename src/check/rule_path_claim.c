/* What outcomes and credentials claim, against what is assessed and when. */
#include "check/rule_path.h"

#include "base/buf.h"

#include <string.h>

/* The first quarter in which each outcome is assessed, by outcome; NONE: never. Skills
 * that every student brings assessed count from quarter 0. */
static uint32_t *first_assessed(const struct rule_context *x)
{
	const struct model *m = x->m;
	uint32_t *v = arena_array(x->scratch, m->noutcomes, sizeof *v);

	for (size_t i = 0; i < m->noutcomes; i++)
		v[i] = NONE;
	for (uint32_t s = 0; s < m->nskills; s++)
		if (m->skills[s].outcome < m->noutcomes &&
		    rule_brought(x, s, SKILL_ASSESSED))
			v[m->skills[s].outcome] = 0;
	for (size_t i = 0; i < x->o->nwalk; i++) {
		const struct assignment *a = &m->assignments[x->o->walk[i]];
		uint32_t quarter = x->o->places[x->o->walk[i]].quarter;

		for (size_t k = 0; k < a->nteaches; k++) {
			const struct skill_at *t = &a->teaches[k];
			uint32_t o = t->skill < m->nskills ? m->skills[t->skill].outcome
			    : NONE;

			if (t->level == SKILL_ASSESSED && o < m->noutcomes &&
			    v[o] == NONE)
				v[o] = quarter;
		}
	}
	return v;
}

/* By skill, whether any assignment teaches it. */
static const bool *find_taught(struct rule_context *x)
{
	const struct model *m = x->m;
	bool *taught = arena_array(x->scratch, m->nskills + 1, sizeof *taught);

	for (size_t i = 0; i < m->nassignments; i++)
		for (size_t k = 0; k < m->assignments[i].nteaches; k++)
			if (m->assignments[i].teaches[k].skill < m->nskills)
				taught[m->assignments[i].teaches[k].skill] = true;
	return taught;
}

/* The skills of an outcome are told here, not each for itself. */
static void relate_skills(struct rule_context *x, struct finding *d, uint32_t outcome,
    const bool *taught)
{
	for (size_t i = 0; i < x->m->nskills; i++) {
		const struct skill *s = &x->m->skills[i];
		struct related *r;

		if (s->outcome != outcome)
			continue;
		r = finding_relate(x->f, d, s->pos);
		r->skill = s->id;
		r->label = str_format(x->f->arena, taught[i] ? "%.*s is taught, never "
		    "assessed" : "no assignment teaches %.*s", STR_ARG(s->id));
	}
}

static void judge_outcomes(struct rule_context *x, const uint32_t *first)
{
	const bool *taught = NULL;

	for (size_t i = 0; i < x->m->noutcomes; i++) {
		const struct outcome *o = &x->m->outcomes[i];
		struct finding *d;

		if (first[i] != NONE)
			continue;
		taught = taught ? taught : find_taught(x);
		d = rule_report(x, FINDING_OUTCOME_UNASSESSED, o->pos, NONE,
		    "no assignment of the program assesses a skill of %.*s",
		    STR_ARG(o->id));
		relate_skills(x, d, (uint32_t)i, taught);
		finding_repair(x->f, d, "let an assignment in a course teach one of its "
		    "skills \"assessed by\" an Acceptance or Grading line");
	}
}

/* Outcomes listed in a repair. */
enum { NAMED_MOST = 20 };

/* A credential as read: quarters [from, to] and outcomes one by one, or all. */
struct claim {
	uint32_t from, to;
	const struct plain_fact *fact;
	str name;
	bool *outcomes;
};

static struct finding *report_bad(struct rule_context *x, const struct claim *c, str part,
    const char *what)
{
	struct finding *d = rule_report(x, FINDING_BAD_CREDENTIAL, c->fact->pos, NONE,
	    "the credential %.*s names %s \"%.*s\", which the program does not have",
	    STR_ARG(c->name), what, STR_ARG(part));

	finding_slip(x->f, d, d->pos, part, (str){ 0 });
	return d;
}

static void claim_outcome(struct rule_context *x, struct claim *c, str part)
{
	const struct model *m = x->m;
	struct buf known = { .arena = x->f->arena };

	for (size_t i = 0; i < m->noutcomes; i++) {
		if (i < NAMED_MOST)
			buf_addf(&known, "%s%.*s", i ? ", " : "",
			    STR_ARG(m->outcomes[i].id));
		if (!str_eq_nocase(m->outcomes[i].id, part))
			continue;
		c->outcomes[i] = true;
		return;
	}
	finding_repair(x->f, report_bad(x, c, part, "outcome"), "name one of %.*s%s",
	    STR_ARG(buf_str(&known)), m->noutcomes > NAMED_MOST ? " ..." : "");
}

/* "1-3", "1 to 3", "4"; a dash of any length. */
static void claim_quarters(struct rule_context *x, struct claim *c, str part)
{
	uint32_t found[2] = { 0, 0 };
	size_t n = 0, i = 0;

	while (i < part.n && n < 2) {
		size_t from = i;

		while (i < part.n && part.p[i] >= '0' && part.p[i] <= '9')
			i++;
		if (i == from)
			i++;
		else
			n += str_to_u32(str_sub(part, from, i), &found[n]);
	}
	if (n == 1)
		found[1] = found[0];
	if (n && found[0] >= 1 && found[0] <= found[1] && found[1] <= x->m->nquarters) {
		c->from = found[0];
		c->to = found[1];
		return;
	}
	finding_repair(x->f, report_bad(x, c, part, "the quarters"),
	    "write \"quarters 1-%u\"", (unsigned)x->m->nquarters);
}

/* Takes a leading word, in the singular or the plural, off *s. */
static bool take_word(str *s, str word)
{
	if (!str_starts_nocase(*s, word))
		return false;
	*s = str_sub(*s, word.n, s->n);
	if (s->n && (s->p[0] | 0x20) == 's')
		*s = str_sub(*s, 1, s->n);
	*s = str_trim(*s);
	return true;
}

/* A part that begins with a slip of its word, as it is meant. */
static str part_meant(struct rule_context *x, const struct claim *c, str part)
{
	static const str known[] = { STR("quarters"), STR("outcomes"), STR("all") };
	str rest = part, first, likely;
	struct finding *d;

	if (!str_word(&rest, &first) || str_starts_nocase(part, STR("quarter")) ||
	    str_starts_nocase(part, STR("outcome")) || str_starts_nocase(part, known[2]))
		return part;
	likely = likely_word(first, known, sizeof known / sizeof *known);
	if (!likely.n)
		return part;
	d = rule_report(x, FINDING_BAD_CREDENTIAL, c->fact->pos, NONE,
	    "the credential %.*s says \"%.*s\"; it is read as \"%.*s\"", STR_ARG(c->name),
	    STR_ARG(first), STR_ARG(likely));
	finding_offer(x->f, d, d->pos, first, likely);
	return str_format(x->scratch, "%.*s %.*s", STR_ARG(likely), STR_ARG(str_trim(rest)));
}

/* "Certificate, quarters 1-3, outcomes PO1, PO2" or "Associate, quarters 1-6, all": the
 * name first, each list until the next word. */
static struct claim claim_read(struct rule_context *x, const struct plain_fact *fact)
{
	struct claim c = { 1, (uint32_t)x->m->nquarters, fact, { 0 },
		arena_array(x->scratch, x->m->noutcomes, sizeof *c.outcomes) };
	str rest = fact->text, part;
	bool list = false;

	if (!str_next(&rest, ',', &c.name))
		return c;
	while (str_next(&rest, ',', &part)) {
		part = list ? str_trim(part) : part_meant(x, &c, str_trim(part));
		if (take_word(&part, STR("quarter"))) {
			list = false;
			claim_quarters(x, &c, part);
			continue;
		}
		if (take_word(&part, STR("outcome")))
			list = true;
		if (str_starts_nocase(part, STR("all")))
			memset(c.outcomes, true, x->m->noutcomes);
		else if (list && part.n)
			claim_outcome(x, &c, part);
	}
	return c;
}

/* What is never assessed anywhere was told for its outcome already. */
static void judge_claim(struct rule_context *x, const struct claim *c,
    const uint32_t *first)
{
	for (size_t i = 0; i < x->m->noutcomes; i++) {
		const struct outcome *o = &x->m->outcomes[i];
		struct finding *d;

		if (!c->outcomes[i] || first[i] == NONE || first[i] <= c->to)
			continue;
		d = rule_report(x, FINDING_CREDENTIAL_UNASSESSED, c->fact->pos, NONE,
		    "the credential %.*s claims %.*s by quarter %u, and it is first "
		    "assessed in quarter %u", STR_ARG(c->name), STR_ARG(o->id),
		    (unsigned)c->to, (unsigned)first[i]);
		finding_relate(x->f, d, o->pos)->label = o->id;
		finding_repair(x->f, d, "take %.*s out of the credential, or let work of "
		    "an earlier quarter assess it", STR_ARG(o->id));
	}
}

void rule_path_claim(struct rule_context *x)
{
	const uint32_t *first = first_assessed(x);

	if (x->o->nwalk)
		judge_outcomes(x, first);
	for (size_t i = 0; x->m->noutcomes && x->m->nquarters &&
	    i < x->m->ncredentials; i++) {
		struct claim c = claim_read(x, &x->m->credentials[i]);

		judge_claim(x, &c, first);
	}
}
