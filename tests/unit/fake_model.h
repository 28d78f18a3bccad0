/* A model made by hand for the order and check tests, without reading files.
 *
 * Skills are written as word and level digit: "a1" is skill a introduced, "a3"
 * assessed, "a0" has no level. Alternatives of "one of" stand apart by '|'. Need i of
 * assignment number w stands at file w, line 10 + i; teaching i at line 40 + i. */
#ifndef TESTS_FAKE_MODEL_H
#define TESTS_FAKE_MODEL_H

#include "base/buf.h"
#include "model/model.h"

#include <string.h>

enum { FAKE_NEED_LINE = 10, FAKE_TEACH_LINE = 40, FAKE_MOST = 64 };

struct fake_line {
	uint32_t quarter, week;
	str ids;                 /* several: a "one of" line */
	bool optional;
};

struct fake {
	struct arena *a;
	struct model *m;
	struct { str id, needs, teaches; } works[FAKE_MOST];
	struct fake_line lines[FAKE_MOST];
	struct { str quarters, with; } paths[8];
	size_t nworks, nlines, npaths;
	str brought;
};

static inline struct fake *fake_new(struct arena *a, uint32_t quarters, uint32_t weeks)
{
	struct fake *k = arena_alloc(a, sizeof *k);

	k->a = a;
	k->m = arena_alloc(a, sizeof *k->m);
	k->m->arena = a;
	k->m->weeks = weeks;
	k->m->nquarters = quarters;
	k->m->quarters = arena_array(a, quarters, sizeof *k->m->quarters);
	k->m->courses = arena_array(a, quarters, sizeof *k->m->courses);
	k->m->ncourses = quarters;
	for (uint32_t q = 0; q < quarters; q++)
		k->m->courses[q] = (struct course){ .id = str_format(a, "ORW %u",
		    100 + q),
		    .quarter = q + 1 };
	return k;
}

static inline str fake_text(struct fake *k, const char *s)
{
	return str_copy(k->a, str_of(s));
}

/* The skills of skills.md, blank between. */
static inline void fake_skills(struct fake *k, const char *words)
{
	str rest = fake_text(k, words), word;

	k->m->skill_by_id = map_new(k->a, true);
	while (str_word(&rest, &word)) {
		struct skill *s = ARENA_PUSH(k->a, k->m->skills, k->m->nskills,
		    k->m->skills_cap);

		s->id = word;
		s->pos = (struct pos){ 1000, (uint32_t)k->m->nskills, 3 };
		map_add(k->m->skill_by_id, word, (uint32_t)k->m->nskills - 1);
	}
}

static inline void fake_brought(struct fake *k, const char *skills)
{
	k->brought = fake_text(k, skills);
}

/* Assignments may be given in any order; the model has them by id. */
static inline void fake_work(struct fake *k, const char *id, const char *needs,
    const char *teaches)
{
	k->works[k->nworks].id = fake_text(k, id);
	k->works[k->nworks].needs = fake_text(k, needs);
	k->works[k->nworks++].teaches = fake_text(k, teaches);
}

static inline void fake_at(struct fake *k, uint32_t quarter, uint32_t week,
    const char *ids)
{
	k->lines[k->nlines++] = (struct fake_line){ quarter, week, fake_text(k, ids),
	    false };
}

static inline void fake_optional(struct fake *k, uint32_t quarter, uint32_t week,
    const char *ids)
{
	k->lines[k->nlines++] = (struct fake_line){ quarter, week, fake_text(k, ids),
	    true };
}

/* An entry path: "3 1 2", and what such students bring. */
static inline void fake_path(struct fake *k, const char *quarters, const char *with)
{
	k->paths[k->npaths].quarters = fake_text(k, quarters);
	k->paths[k->npaths++].with = fake_text(k, with);
}

static inline struct skill_at fake_skill_at(struct fake *k, str word, struct pos pos)
{
	struct skill_at s = { .written = str_sub(word, 0, word.n - 1), .pos = pos };

	s.level = (enum skill_level)(word.p[word.n - 1] - '0');
	s.skill = map_find(k->m->skill_by_id, s.written);
	return s;
}

static inline struct skill_at *fake_list(struct fake *k, str words, struct pos pos,
    size_t *n)
{
	struct skill_at *v = NULL;
	size_t cap = 0;
	str word;

	*n = 0;
	while (str_word(&words, &word)) {
		*ARENA_PUSH(k->a, v, *n, cap) = fake_skill_at(k, word, pos);
		pos.line++;
	}
	return v;
}

static inline void fake_needs(struct fake *k, struct assignment *as, str words,
    uint32_t file)
{
	struct pos pos = { file, FAKE_NEED_LINE, 3 };
	str word, alt;

	while (str_word(&words, &word)) {
		struct need *n = ARENA_PUSH(k->a, as->needs, as->nneeds, as->needs_cap);
		struct skill_at *v = NULL;
		size_t cap = 0;

		while (str_next(&word, '|', &alt))
			*ARENA_PUSH(k->a, v, n->n, cap) = fake_skill_at(k, alt, pos);
		n->v = v;
		n->pos = pos;
		pos.line++;
	}
}

static inline void fake_assignments(struct fake *k)
{
	struct model *m = k->m;
	struct source *v = arena_array(k->a, k->nworks, sizeof *v);
	struct sources *s = arena_alloc(k->a, sizeof *s);
	bool done[FAKE_MOST] = { false };

	m->assignment_by_id = map_new(k->a, true);
	for (size_t i = 0; i < k->nworks; i++) {
		struct assignment *as = ARENA_PUSH(k->a, m->assignments, m->nassignments,
		    m->assignments_cap);
		size_t least = FAKE_MOST;

		for (size_t j = 0; j < k->nworks; j++)
			if (!done[j] && (least == FAKE_MOST ||
			    str_cmp(k->works[j].id, k->works[least].id) < 0))
				least = j;
		done[least] = true;
		as->id = k->works[least].id;
		/* Works whose id begins with SF are safety cards. */
		as->kind = str_starts_nocase(as->id, STR("SF-")) ? KIND_SAFETY : KIND_COUPON;
		as->pos = (struct pos){ (uint32_t)i, 1, 3 };
		fake_needs(k, as, k->works[least].needs, (uint32_t)i);
		as->teaches = fake_list(k, k->works[least].teaches,
		    (struct pos){ (uint32_t)i, FAKE_TEACH_LINE, 3 }, &as->nteaches);
		v[i].path = str_format(k->a, "assignments/%.*s.md", STR_ARG(as->id));
		map_add(m->assignment_by_id, as->id, (uint32_t)i);
	}
	s->v = v;
	s->n = k->nworks;
	m->sources = s;
}

static inline void fake_slots(struct fake *k)
{
	struct model *m = k->m;
	uint32_t group = 0;

	for (size_t i = 0; i < k->nlines; i++) {
		str ids = k->lines[i].ids, id;
		size_t from = m->nslots;

		while (str_word(&ids, &id)) {
			struct slot *t = ARENA_PUSH(k->a, m->slots, m->nslots,
			    m->slots_cap);

			t->assignment = map_find(m->assignment_by_id, id);
			t->course = k->lines[i].quarter - 1;
			t->week = k->lines[i].week;
			t->line = (uint32_t)i + 1;
			t->optional = k->lines[i].optional;
		}
		if (m->nslots - from < 2)
			continue;
		group++;
		for (size_t j = from; j < m->nslots; j++)
			m->slots[j].group = group;
	}
}

static inline void fake_entries(struct fake *k)
{
	for (size_t i = 0; i < k->npaths; i++) {
		struct entry *e = ARENA_PUSH(k->a, k->m->entries, k->m->nentries,
		    k->m->entries_cap);
		str rest = k->paths[i].quarters, word;
		size_t cap = 0;

		e->text = k->paths[i].quarters;
		while (str_word(&rest, &word))
			str_to_u32(word, ARENA_PUSH(k->a, e->quarters, e->nquarters,
			    cap));
		e->with = fake_list(k, k->paths[i].with, (struct pos){ 999, 5, 3 },
		    &e->nwith);
	}
}

static inline const struct model *fake_done(struct fake *k)
{
	if (!k->m->skill_by_id)
		fake_skills(k, "");
	fake_assignments(k);
	fake_slots(k);
	fake_entries(k);
	k->m->entry_skills = fake_list(k, k->brought, (struct pos){ 1000, 500, 3 },
	    &k->m->nentry_skills);
	return k->m;
}

/* Index of an assignment by its id. */
static inline uint32_t fake_id(const struct model *m, const char *id)
{
	return map_find(m->assignment_by_id, str_of(id));
}

#endif
