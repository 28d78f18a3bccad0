#include "check/words.h"

#include "check/tell.h"

struct word {
	uint32_t meant;          /* skill index, NONE */
	uint32_t finding;        /* index in the list */
};

struct words {
	struct arena *arena;
	const struct model *model;
	struct map *seen;
	str *ids, *idle;         /* of all skills, and of those that nobody teaches: made
	                          * for the first unknown word */
	size_t nidle;
	struct word *v;
	size_t n, cap;
};

/* The ids of all skills, and those that nobody teaches. */
static void list_ids(struct words *w)
{
	const struct model *m = w->model;
	bool *taught = arena_array(w->arena, m->nskills + 1, sizeof *taught);

	w->ids = arena_array(w->arena, m->nskills, sizeof *w->ids);
	w->idle = arena_array(w->arena, m->nskills, sizeof *w->idle);
	for (size_t i = 0; i < m->nassignments; i++)
		for (size_t k = 0; k < m->assignments[i].nteaches; k++)
			if (m->assignments[i].teaches[k].skill != NONE)
				taught[m->assignments[i].teaches[k].skill] = true;
	for (size_t i = 0; i < m->nskills; i++) {
		w->ids[i] = m->skills[i].id;
		if (!taught[i])
			w->idle[w->nidle++] = m->skills[i].id;
	}
}

/* The skill closest to a word, NONE when none is near or enough were worked out. Of two
 * as close, the one that nobody teaches: it waits for just this word. */
static uint32_t likely_skill(struct words *w, str written)
{
	const struct model *m = w->model;
	str hit, idle;

	if (w->n > TELL_MOST)
		return NONE;
	if (!w->ids)
		list_ids(w);
	hit = likely_word(written, w->ids, m->nskills);
	idle = hit.n ? likely_word(written, w->idle, w->nidle) : hit;
	if (idle.n && str_distance(written, idle, written.n) <= str_distance(written, hit,
	    written.n))
		hit = idle;
	for (uint32_t i = 0; hit.n && i < m->nskills; i++)
		if (m->skills[i].id.p == hit.p)
			return i;
	return NONE;
}

/* The finding speaks of the first place in order and names the likely skill. */
static void report(struct words *w, struct findings *f, const struct skill_at *s, str who)
{
	struct word *word;
	struct finding *d;
	uint32_t meant;

	map_add(w->seen, s->written, (uint32_t)w->n);
	word = ARENA_PUSH(w->arena, w->v, w->n, w->cap);
	meant = likely_skill(w, s->written);
	word->meant = meant;
	word->finding = (uint32_t)f->n;
	d = finding_add(f, FINDING_UNKNOWN_SKILL, s->pos,
	    "\"%.*s\" is not a skill that skills.md lists", STR_ARG(s->written));
	d->scope = who.n ? SCOPE_ASSIGNMENTS : SCOPE_PROGRAM;
	d->assignment = who;
	d->skill = s->written;
	finding_slip(f, d, s->pos, s->written, meant != NONE ? w->model->skills[meant].id
	    : (str){ 0 });
	if (meant != NONE)
		finding_repair(f, d, "write %.*s, or list %.*s in skills.md",
		    STR_ARG(w->model->skills[meant].id), STR_ARG(s->written));
	else
		finding_repair(f, d, "list it in skills.md, or write a skill that stands "
		    "there");
}

static void see(struct words *w, struct findings *f, const struct skill_at *s, str who)
{
	uint32_t at;

	if (s->skill != NONE)
		return;
	at = map_find(w->seen, s->written);
	if (at == MAP_NONE)
		report(w, f, s, who);
	else
		tell_relate(f, &f->v[w->v[at].finding], s->pos, who, s->written,
		    STR("the same word"));
}

static void see_assignment(struct words *w, struct findings *f,
    const struct assignment *as)
{
	for (size_t i = 0; i < as->nneeds; i++)
		for (size_t k = 0; k < as->needs[i].n; k++)
			see(w, f, &as->needs[i].v[k], as->id);
	for (size_t i = 0; i < as->nteaches; i++)
		see(w, f, &as->teaches[i], as->id);
}

struct words *words_check(struct arena *a, const struct order *o, struct findings *f)
{
	const struct model *m = o->model;
	struct words *w = arena_alloc(a, sizeof *w);

	w->arena = a;
	w->model = m;
	w->seen = map_new(a, true);
	/* Told as a whole, see model/hollow.c. */
	if (!m->nskills)
		return w;
	for (size_t i = 0; i < m->nentry_skills; i++)
		see(w, f, &m->entry_skills[i], (str){ 0 });
	for (size_t i = 0; i < m->nentries; i++)
		for (size_t k = 0; k < m->entries[i].nwith; k++)
			see(w, f, &m->entries[i].with[k], (str){ 0 });
	for (size_t i = 0; i < o->nwalk; i++)
		see_assignment(w, f, &m->assignments[o->walk[i]]);
	for (size_t i = 0; i < m->nassignments; i++)
		if (o->places[i].slot == NONE)
			see_assignment(w, f, &m->assignments[i]);
	return w;
}

uint32_t words_meant(const struct words *w, str written)
{
	uint32_t at = map_find(w->seen, written);

	return at == MAP_NONE ? NONE : w->v[at].meant;
}

void words_relate(const struct words *w, struct findings *f, str written,
    struct pos pos, str assignment, str skill)
{
	uint32_t at = map_find(w->seen, written);

	if (at != MAP_NONE)
		tell_relate(f, &f->v[w->v[at].finding], pos, assignment, skill,
		    STR("would be met by the misspelt teaching"));
}
