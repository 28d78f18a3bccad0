/* Teaching that was lost: a line of Teaches, the whole section, or the file. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Ways tried of one finding: more of them are seldom the one. */
enum { HOSTS_MOST = 4, SKILLS_MOST = 6 };
enum { NAMED_MOST = 4 };

/* Findings that hang on what is taught. */
static bool is_of_teaching(const struct finding *d)
{
	return !d->waived && (d->name == FINDING_UNTAUGHT_SKILL ||
	    d->name == FINDING_NEEDS_LOOP || d->name == FINDING_NEVER_TAUGHT ||
	    d->name == FINDING_NEVER_ASSESSED || d->name == FINDING_OUTCOME_UNASSESSED ||
	    d->name == FINDING_OPTIONAL_TEACHER || d->name == FINDING_ONE_BRANCH_TEACHER ||
	    d->name == FINDING_ASSESSED_TOO_EARLY);
}

uint32_t seek_skill(const struct seeker *s, str id)
{
	return id.n ? map_find(s->m->skill_by_id, id) : MAP_NONE;
}

const struct slot *seek_slot(const struct seeker *s, str id)
{
	const struct model *m = s->m;

	for (size_t i = 0; id.n && i < m->nslots; i++)
		if (m->slots[i].assignment != NONE &&
		    str_eq(m->assignments[m->slots[i].assignment].id, id))
			return &m->slots[i];
	return NULL;
}

bool seek_asks(const struct seeker *s, const struct finding *d)
{
	const struct standing_wrong *w = d->wrong;
	const struct slot *k = w && w->mover != NONE && d->name == FINDING_UNTAUGHT_SKILL
	    ? seek_slot(s, s->m->assignments[w->mover].id) : NULL;
	uint32_t quarter = k ? s->m->courses[k->course].quarter : 0;

	return is_of_teaching(d) && !(k && s->m->weeks &&
	    (w->week / s->m->weeks + 1 == quarter || w->end / s->m->weeks + 1 == quarter));
}

/* Whether students come to a line of program.md before another. */
static bool is_before(const struct model *m, const struct slot *a, const struct slot *b)
{
	uint32_t qa = m->courses[a->course].quarter, qb = m->courses[b->course].quarter;

	if (qa != qb)
		return qa < qb;
	return a->week != b->week ? a->week < b->week : a < b;
}

/* Of two lines the one that comes first; either may be null. */
static const struct slot *earlier(const struct model *m, const struct slot *a,
    const struct slot *b)
{
	return !a || (b && is_before(m, b, a)) ? b : a;
}

/* The first line of those that a finding says ask for a skill; NONE: for any. */
static const struct slot *asker_in(const struct seeker *s, const struct finding *d,
    uint32_t skill)
{
	const struct slot *first = NULL;

	if (skill == NONE || seek_skill(s, d->skill) == skill)
		first = seek_slot(s, d->assignment);
	for (size_t i = 0; i < d->nrelated; i++)
		if (skill == NONE || seek_skill(s, d->related[i].skill) == skill)
			first = earlier(s->m, first, seek_slot(s, d->related[i].assignment));
	return first;
}

/* The same in all findings of teaching that stand. */
static const struct slot *first_asker(const struct seeker *s, uint32_t skill)
{
	const struct slot *first = NULL;

	for (size_t i = 0; i < s->f->n; i++)
		if (is_of_teaching(&s->f->v[i]))
			first = earlier(s->m, first, asker_in(s, &s->f->v[i], skill));
	return first;
}

static uint32_t line_below(const struct seeker *s, uint32_t who)
{
	const struct model *m = s->m;
	struct pos own = m->assignments[who].pos;
	uint32_t end = (uint32_t)text_count_lines(m->sources->v[own.file].text);

	for (size_t i = 0; i < m->nassignments; i++) {
		struct pos p = m->assignments[i].pos;

		if (p.file == own.file && p.line > own.line && p.line <= end)
			end = p.line - 1;
	}
	return end;
}

/* The heading Teaches with nothing under it; 0: there is none. */
static uint32_t empty_heading(const struct seeker *s, uint32_t who, uint32_t end)
{
	struct pos p = s->m->assignments[who].pos;

	for (; p.line <= end; p.line++) {
		str line = seek_line(s, p);

		if (str_starts(line, STR("## ")) &&
		    str_eq_nocase(str_trim(str_sub(line, 3, line.n)), STR("Teaches")))
			return p.line;
	}
	return 0;
}

str seek_teaches(const struct seeker *s, const bool *skills)
{
	struct buf b = { .arena = s->arena };

	for (size_t i = 0; i < s->m->nskills; i++)
		if (skills[i])
			buf_addf(&b, "%s- %.*s assessed", b.n ? "\n" : "",
			    STR_ARG(s->m->skills[i].id));
	return buf_str(&b);
}

/* Lets an assignment teach some more. */
static struct remedy *let_teach(struct seeker *s, uint32_t who, const bool *skills)
{
	const struct assignment *a = &s->m->assignments[who];
	struct edit e = { EDIT_ADD, a->pos.file, 0, seek_teaches(s, skills), 0 };
	uint32_t end;

	if (a->nteaches) {
		e.line = a->teaches[0].pos.line - 1;
		return seek_add(s, &e, 1);
	}
	end = line_below(s, who);
	e.line = empty_heading(s, who, end);
	e.text = str_format(s->arena, "\n%s%.*s", e.line ? "" : "## Teaches\n\n",
	    STR_ARG(e.text));
	if (!e.line)
		e.line = end;
	return seek_add(s, &e, 1);
}

static bool is_bare(const struct model *m, const struct slot *k)
{
	return k->assignment != NONE && !k->group && !m->assignments[k->assignment].nteaches;
}

/* Where many assignments teach nothing, it is no slip that one does. */
static bool may_be_lost(const struct model *m)
{
	size_t bare = 0;

	for (size_t i = 0; i < m->nslots; i++)
		bare += is_bare(m, &m->slots[i]);
	return bare && bare <= 2 + m->nslots / 10;
}

static bool is_word_char(char c)
{
	return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

/* Takes the next word of letters and digits off *rest. */
static bool next_word(str *rest, str *word)
{
	size_t from = 0, to;

	while (from < rest->n && !is_word_char(rest->p[from]))
		from++;
	for (to = from; to < rest->n && is_word_char(rest->p[to]); to++)
		;
	*word = str_sub(*rest, from, to);
	*rest = str_sub(*rest, to, rest->n);
	return word->n > 0;
}

/* Words are alike that begin alike: "measures", "measured". */
static bool has_word_like(str text, str word)
{
	str stem = str_sub(word, 0, 5), other;

	while (next_word(&text, &other))
		if (str_starts_nocase(other, stem))
			return true;
	return false;
}

/* Whether a sheet is about a skill: it has two in five of the words of its title at least,
 * small ones aside. In the demo that finds nine in ten of what sheets teach, and takes one
 * in four for what they do not. */
static bool is_about(const struct seeker *s, uint32_t who, uint32_t skill)
{
	struct pos p = s->m->assignments[who].pos;
	str title = s->m->skills[skill].title, word;
	str text = text_lines(s->m->sources->v[p.file].text, p.line, line_below(s, who));
	int words = 0, seen = 0;

	while (next_word(&title, &word)) {
		if (word.n < 4 && !(word.p[0] >= '0' && word.p[0] <= '9'))
			continue;
		words++;
		seen += has_word_like(text, word);
	}
	return seen * 5 >= words * 2;
}

/* Whether a sheet needs a skill, which it then often teaches further. */
static bool has_need(const struct model *m, uint32_t who, uint32_t skill)
{
	const struct assignment *a = &m->assignments[who];

	for (size_t i = 0; i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n; k++)
			if (a->needs[i].v[k].skill == skill)
				return true;
	return false;
}

/* Marks what a finding asks of work that teaches nothing: what its sheet is about, and of
 * those outcomes whatever is asked. */
static void mark(const struct seeker *s, const struct finding *d, const struct slot *k,
    bool *skills, bool *outcomes)
{
	for (size_t i = 0; i <= d->nrelated; i++) {
		uint32_t skill = seek_skill(s, i ? d->related[i - 1].skill : d->skill), outcome;
		const struct slot *asker;

		if (skill == MAP_NONE || skills[skill])
			continue;
		outcome = s->m->skills[skill].outcome;
		outcome = outcome < s->m->noutcomes ? outcome : (uint32_t)s->m->noutcomes;
		asker = asker_in(s, d, skill);
		if ((asker && !is_before(s->m, k, asker)) || (!outcomes[outcome] &&
		    !has_need(s->m, k->assignment, skill) &&
		    !is_about(s, k->assignment, skill)))
			continue;
		skills[skill] = outcomes[outcome] = true;
	}
}

/* Whether others than a circle ask for a skill. */
static bool is_named(const struct seeker *s, uint32_t skill)
{
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (is_of_teaching(d) &&
		    d->name != FINDING_NEEDS_LOOP && seek_skill(s, d->skill) == skill)
			return true;
	}
	return false;
}

/* ", such as fit.tack, meas.rule" */
static str name_skills(const struct seeker *s, const bool *skills)
{
	struct buf b = { .arena = s->arena };
	int n = 0;

	for (uint32_t i = 0; i < s->m->nskills && n < NAMED_MOST; i++)
		if (skills[i] && is_named(s, i))
			buf_addf(&b, "%s%.*s", n++ ? ", " : ", such as ",
			    STR_ARG(s->m->skills[i].id));
	return buf_str(&b);
}

static bool any(const bool *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (v[i])
			return true;
	return false;
}

static void seek_host(struct seeker *s, const struct slot *k)
{
	bool *skills = arena_array(s->arena, s->m->nskills, sizeof *skills);
	bool *outcomes = arena_array(s->arena, s->m->noutcomes + 1, sizeof *outcomes);

	/* A second time for what stands before that which tells the outcome. */
	for (size_t i = 0; i < s->f->n * 2; i++) {
		const struct finding *d = &s->f->v[i % s->f->n];

		if (seek_asks(s, d))
			mark(s, d, k, skills, outcomes);
	}
	if (any(skills, s->m->nskills))
		let_teach(s, k->assignment, skills)->say = str_format(s->arena,
		    "write under Teaches what %.*s teaches%.*s; nothing stands there now",
		    STR_ARG(s->m->assignments[k->assignment].id),
		    STR_ARG(name_skills(s, skills)));
}

/* Assignments that teach nothing, before whoever asks, the last of them first. */
static void seek_hosts(struct seeker *s)
{
	const struct model *m = s->m;
	const struct slot *asker = asker_in(s, seek_finding(s), NONE), *last = NULL;

	if (!may_be_lost(m))
		return;
	for (int n = 0; n < HOSTS_MOST; n++) {
		const struct slot *best = NULL;

		for (size_t i = 0; i < m->nslots; i++) {
			const struct slot *k = &m->slots[i];

			if (is_bare(m, k) && (!asker || is_before(m, k, asker)) &&
			    (!last || is_before(m, k, last)) &&
			    (!best || is_before(m, best, k)))
				best = k;
		}
		if (!best)
			return;
		seek_host(s, best);
		last = best;
	}
}

/* How far the needs that a finding lists ask for a skill; 0: none does. */
static uint32_t level_at(const struct seeker *s, str who, struct pos pos, uint32_t skill)
{
	uint32_t at = map_find(s->m->assignment_by_id, who), most = 0;
	const struct assignment *a = at == MAP_NONE ? NULL : &s->m->assignments[at];

	for (size_t i = 0; a && i < a->nneeds; i++)
		for (size_t k = 0; k < a->needs[i].n && !pos_cmp(a->needs[i].pos, pos); k++)
			if (a->needs[i].v[k].skill == skill && a->needs[i].v[k].level > most)
				most = a->needs[i].v[k].level;
	return most;
}

/* The same of all findings of teaching that stand. */
static enum skill_level level_asked(const struct seeker *s, uint32_t skill)
{
	uint32_t most = SKILL_INTRODUCED, level;

	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (!is_of_teaching(d))
			continue;
		for (size_t k = 0; k <= d->nrelated; k++) {
			const struct related *r = k ? &d->related[k - 1] : NULL;

			if (seek_skill(s, r ? r->skill : d->skill) != skill)
				continue;
			if (d->name == FINDING_NEVER_ASSESSED ||
			    d->name == FINDING_OUTCOME_UNASSESSED)
				return SKILL_ASSESSED;
			level = r ? level_at(s, r->assignment, r->pos, skill)
			    : level_at(s, d->assignment, d->pos, skill);
			most = level > most ? level : most;
		}
	}
	return (enum skill_level)most;
}

static const struct skill_at *teaches(const struct model *m, const struct slot *k,
    uint32_t skill)
{
	const struct assignment *a = &m->assignments[k->assignment];

	for (size_t i = 0; i < a->nteaches; i++)
		if (a->teaches[i].skill == skill)
			return &a->teaches[i];
	return NULL;
}

/* The last line of program.md before one that asks, in its course (NONE: in any), that
 * teaches the skill (NONE: any). Neither optional work nor a choice will do. */
static const struct slot *line_before(const struct model *m, const struct slot *asker,
    uint32_t course, uint32_t skill)
{
	const struct slot *best = NULL;

	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *k = &m->slots[i];

		if (k->assignment == NONE || k->group || k->optional ||
		    (course != NONE && k->course != course) ||
		    (asker && !is_before(m, k, asker)) ||
		    (skill != NONE && !teaches(m, k, skill)))
			continue;
		if (!best || is_before(m, best, k))
			best = k;
	}
	return best;
}

static str say_teach(const struct seeker *s, const struct slot *asker,
    const struct slot *low, uint32_t skill)
{
	struct buf b = { .arena = s->arena };
	str level = skill_level_word(level_asked(s, skill));

	if (low)
		buf_addf(&b, "let %.*s teach ",
		    STR_ARG(s->m->assignments[low->assignment].id));
	else
		buf_addf(&b, "let an assignment before %.*s teach ",
		    STR_ARG(s->m->assignments[asker->assignment].id));
	buf_addf(&b, "%.*s %.*s", STR_ARG(s->m->skills[skill].id), STR_ARG(level));
	if (low && asker)
		buf_addf(&b, ", or another assignment before %.*s",
		    STR_ARG(s->m->assignments[asker->assignment].id));
	return buf_str(&b);
}

/* One skill taught before whoever asks for it first: where it is taught less far, in the
 * course of that work, or right before it. */
static void try_skill(struct seeker *s, uint32_t skill)
{
	const struct slot *asker = first_asker(s, skill);
	const struct slot *low = line_before(s->m, asker, NONE, skill);
	const struct slot *tried[3] = { low };
	bool *skills = arena_array(s->arena, s->m->nskills, sizeof *skills);

	skills[skill] = true;
	if (asker) {
		tried[1] = line_before(s->m, asker, asker->course, NONE);
		tried[2] = line_before(s->m, asker, NONE, NONE);
	}
	for (int i = 0; i < 3; i++)
		if (tried[i] && (!i || (tried[i] != tried[i - 1] && tried[i] != low)))
			let_teach(s, tried[i]->assignment, skills)->say =
			    say_teach(s, asker, low, skill);
}

/* Each skill that the finding is about. */
static void seek_skills(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	uint32_t seen[SKILLS_MOST], n = 0;

	for (size_t i = 0; i <= d->nrelated && n < SKILLS_MOST; i++) {
		uint32_t skill = seek_skill(s, i ? d->related[i - 1].skill : d->skill), k = 0;

		while (k < n && seen[k] != skill)
			k++;
		if (skill == MAP_NONE || k < n)
			continue;
		seen[n++] = skill;
		try_skill(s, skill);
	}
}

void seek_teaching(struct seeker *s)
{
	if (!is_of_teaching(seek_finding(s)) || !s->m->sources)
		return;
	seek_hosts(s);
	seek_skills(s);
}
