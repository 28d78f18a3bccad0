/* Entry paths: "quarter 1 in Fall", "quarter 3, then 4, 5, 6, 1, 2, with smaw.2f
 * assessed". */
#include "model/parts.h"

#define PATH_FORM "write a path such as \"quarter 3, then 4, 5, 6, 1, 2, with smaw.2f " \
    "assessed\""

struct path {
	struct binder *b;
	struct entry *e;
	bool written;            /* the quarters after the first are listed */
	bool with;               /* skills follow */
	size_t quarters_cap, with_cap;
};

static void add_quarter(struct path *p, struct said t, str number)
{
	struct binder *b = p->b;
	uint32_t n;

	if (!str_to_u32(number, &n) || !n || n > b->model->nquarters) {
		finding_repair(b->f, complain(b, FINDING_BAD_ENTRY, said_pos(t),
		    "\"%.*s\" is not a quarter of this program; it is left out",
		    STR_ARG(t.s)),
		    "name a quarter from 1 to %u", (unsigned)b->model->nquarters);
		return;
	}
	for (size_t i = 0; i < p->e->nquarters; i++)
		if (p->e->quarters[i] == n) {
			finding_repair(b->f, complain(b, FINDING_BAD_ENTRY, said_pos(t),
			    "quarter %u stands twice in this path; the first counts",
			    (unsigned)n), "delete the second");
			return;
		}
	*ARENA_PUSH(b->arena, p->e->quarters, p->e->nquarters, p->quarters_cap) = n;
}

static void check_term(struct path *p, struct said t)
{
	const struct model *m = p->b->model;
	struct finding *d;

	for (size_t i = 0; i < m->nterms; i++)
		if (words_same(m->terms[i], t.s))
			return;
	d = complain(p->b, FINDING_BAD_ENTRY, said_pos(t),
	    "\"%.*s\" is not a term of this program; it is left out", STR_ARG(t.s));
	if (!offer_likely(p->b, d, t.s, m->terms, m->nterms).n)
		finding_repair(p->b->f, d, "name one of Terms, or add it there");
}

/* "3", or "3 in Spring". */
static void read_quarter(struct path *p, struct said t)
{
	struct said rest = t, number;

	if (!said_word(&rest, &number)) {
		finding_repair(p->b->f, complain(p->b, FINDING_BAD_ENTRY, said_pos(t),
		    "a quarter without a number; it is left out"), "write \"quarter 1\"");
		return;
	}
	add_quarter(p, number, number.s);
	rest = said_trim(rest);
	if (said_skip(&rest, STR("in")))
		check_term(p, rest);
	else if (rest.s.n)
		finding_repair(p->b->f, complain(p->b, FINDING_BAD_ENTRY, said_pos(rest),
		    "\"%.*s\" is not known in an entry path; it is left out",
		    STR_ARG(rest.s)), PATH_FORM);
}

/* "smaw.2f assessed and smaw.3f practiced" */
static void read_with(struct path *p, struct said t)
{
	struct skill_at at;

	do {
		if (!read_skill_at(p->b, &t, &at))
			return;
		*ARENA_PUSH(p->b->arena, p->e->with, p->e->nwith, p->with_cap) = at;
		t = said_trim(t);
	} while (said_skip(&t, STR("and")));
	if (t.s.n)
		finding_repair(p->b->f, complain(p->b, FINDING_BAD_ENTRY, said_pos(t),
		    "\"%.*s\" is not known in an entry path; it is left out",
		    STR_ARG(t.s)), PATH_FORM);
}

/* A word in the place of "quarter" is told and passed over. */
static void skip_strange(struct path *p, struct said *t)
{
	struct said rest = *t, word;
	struct finding *d;
	str next;

	if (!said_word(&rest, &word) || (word.s.p[0] >= '0' && word.s.p[0] <= '9'))
		return;
	next = str_trim(rest.s);
	if (!next.n || next.p[0] < '0' || next.p[0] > '9')
		return;
	d = complain(p->b, FINDING_BAD_ENTRY, said_pos(word), "\"%.*s\" is not known in an "
	    "entry path; it is read as \"quarter\"", STR_ARG(word.s));
	finding_offer(p->b->f, d, d->pos, word.s, STR("quarter"));
	*t = said_trim(rest);
}

static void read_part(struct path *p, struct said t)
{
	said_skip(&t, STR("and"));
	if (said_skip(&t, STR("with")))
		p->with = true;
	if (p->with) {
		read_with(p, t);
		return;
	}
	if (said_skip(&t, STR("then")))
		p->written = true;
	else if (p->e->nquarters && !str_starts_nocase(t.s, STR("quarter")))
		p->written = true;
	if (!said_skip(&t, STR("quarter")))
		skip_strange(p, &t);
	read_quarter(p, t);
}

/* Without a written path: all quarters in turn from the first one named. */
static void follow_on(struct path *p)
{
	struct entry *e = p->e;
	uint32_t next = e->nquarters ? e->quarters[0] + 1 : 0;

	if (p->written || e->nquarters != 1)
		return;
	for (; next <= p->b->model->nquarters; next++)
		*ARENA_PUSH(p->b->arena, e->quarters, e->nquarters,
		    p->quarters_cap) = next;
}

void entries_read(struct binder *b, const struct block *fact)
{
	struct model *m = b->model;
	struct said rest = said_all(fact), text, part;

	while (said_next(&rest, ";", &text)) {
		struct entry e = { .text = text.s, .pos = said_pos(text) };
		struct path p = { .b = b, .e = &e };

		while (said_next(&text, ",", &part))
			read_part(&p, part);
		follow_on(&p);
		if (e.nquarters)
			*ARENA_PUSH(b->arena, m->entries, m->nentries,
			    m->entries_cap) = e;
	}
}
