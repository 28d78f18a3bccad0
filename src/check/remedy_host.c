/* Assignments that teach nothing, and likely did. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Ways tried of one finding, assignments looked at in all, skills named. */
enum { HOSTS_MOST = 4, SOUGHT_MOST = 24, NAMED_MOST = 4 };

struct host {
	const struct slot *slot;
	bool *skills;            /* that are asked of it; null: not looked at yet */
	bool any;
};

struct hosts {
	struct host *v;          /* the earliest first */
	size_t n;
};

static bool is_bare(const struct model *m, const struct slot *k)
{
	return k->assignment != NONE && !k->group && !m->assignments[k->assignment].nteaches;
}

/* Lines of program.md stand mostly in order, so that few are moved. */
static struct hosts *hosts_new(const struct seeker *s)
{
	const struct model *m = s->m;
	struct hosts *h = arena_alloc(s->arena, sizeof *h);

	h->v = arena_array(s->arena, m->nslots, sizeof *h->v);
	for (size_t i = 0; i < m->nslots; i++) {
		size_t at = h->n;

		if (!is_bare(m, &m->slots[i]))
			continue;
		for (; at && seek_before(m, &m->slots[i], h->v[at - 1].slot); at--)
			h->v[at] = h->v[at - 1];
		h->v[at] = (struct host){ &m->slots[i], NULL, false };
		h->n++;
	}
	/* Where many teach nothing, it is no slip that one does. */
	if (h->n > 2 + m->nslots / 10 || h->n > SOUGHT_MOST)
		h->n = 0;
	return h;
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
static bool is_about(str text, str title)
{
	int words = 0, seen = 0;
	str word;

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

/* What is asked of work that teaches nothing: what its sheet is about or needs, and of
 * those outcomes whatever is asked. */
static void look(struct seeker *s, struct host *h)
{
	const struct model *m = s->m;
	const struct asked *asked = seek_asked(s);
	uint32_t who = h->slot->assignment;
	bool *outcomes = arena_array(s->arena, m->noutcomes + 1, sizeof *outcomes);
	str text = seek_sheet(s, &m->assignments[who]);

	h->skills = arena_array(s->arena, m->nskills + 1, sizeof *h->skills);
	/* A second time for what stands before that which tells the outcome. */
	for (size_t i = 0; i < m->nskills * 2; i++) {
		uint32_t at = (uint32_t)(i % m->nskills);
		const struct skill *k = &m->skills[at];
		size_t outcome = k->outcome < m->noutcomes ? k->outcome : m->noutcomes;

		if (h->skills[at] || !asked[at].open ||
		    (asked[at].first && !seek_before(m, h->slot, asked[at].first)) ||
		    (!outcomes[outcome] && (i >= m->nskills || (!has_need(m, who, at) &&
		    !is_about(text, k->title)))))
			continue;
		h->skills[at] = outcomes[outcome] = h->any = true;
	}
}

/* ", such as fit.tack, meas.rule": what others than a circle ask for. */
static str name_skills(struct seeker *s, const bool *skills)
{
	struct buf b = { .arena = s->arena };
	int n = 0;

	for (uint32_t i = 0; i < s->m->nskills && n < NAMED_MOST; i++)
		if (skills[i] && seek_asked(s)[i].named)
			buf_addf(&b, "%s%.*s", n++ ? ", " : ", such as ",
			    STR_ARG(s->m->skills[i].id));
	return buf_str(&b);
}

/* The first line of those that a finding says ask; null: none does. */
static const struct slot *asker_in(struct seeker *s, const struct finding *d)
{
	const struct slot *first = seek_slot(s, d->assignment);

	for (size_t i = 0; i < d->nrelated; i++) {
		const struct slot *k = seek_slot(s, d->related[i].assignment);

		if (k && (!first || seek_before(s->m, k, first)))
			first = k;
	}
	return first;
}

void seek_hosts(struct seeker *s)
{
	const struct slot *asker = asker_in(s, seek_finding(s));
	int n = 0;

	if (!s->hosts)
		s->hosts = hosts_new(s);
	for (size_t i = s->hosts->n; i-- > 0 && n < HOSTS_MOST; ) {
		struct host *h = &s->hosts->v[i];

		if (asker && !seek_before(s->m, h->slot, asker))
			continue;
		if (!h->skills)
			look(s, h);
		if (!h->any)
			continue;
		n++;
		seek_taught(s, h->slot->assignment, h->skills)->say = str_format(s->arena,
		    "write under Teaches what %.*s teaches%.*s; nothing stands there now",
		    STR_ARG(s->m->assignments[h->slot->assignment].id),
		    STR_ARG(name_skills(s, h->skills)));
	}
}
