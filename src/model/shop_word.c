/* Stations and machines that sheets name and shop.md does not have: one word on many
 * sheets is one slip. */
#include "model/shop_word.h"

#include "base/buf.h"

/* A word of a sort that shop.md does not give to anything, where a sheet names it. */
struct strange_word {
	struct said at;
	enum shop_sort sort;
	struct assignment *a;
};

/* What is told of one such word, wherever it stands. */
struct strange {
	size_t finding;          /* in the findings */
	enum shop_sort sort;
	str word;
};

struct strange_list {
	struct map *by_word;     /* its sort and letters -> index in v */
	struct strange *v;
	size_t n, cap;
};

static const struct { const char *name, *heading; } sorts[] = {
	[SHOP_STATION] = { "station", "Station" },
	[SHOP_MACHINE] = { "machine", "Machine" },
};

static size_t shop_names(const struct model *m, enum shop_sort sort)
{
	return sort == SHOP_STATION ? m->nstations : m->nmachines;
}

static str shop_name(const struct model *m, enum shop_sort sort, size_t i)
{
	return sort == SHOP_STATION ? m->stations[i].name : m->machines[i].name;
}

/* Where shop.md gives a name, of which the slice is that of the list. */
static struct pos shop_pos(const struct model *m, enum shop_sort sort, str name)
{
	size_t i = 0;

	while (shop_name(m, sort, i).p != name.p)
		i++;
	return sort == SHOP_STATION ? m->stations[i].pos : m->machines[i].pos;
}

static void relate(struct binder *b, struct finding *d, struct said t)
{
	struct related *r = finding_relate(b->f, d, said_pos(t));

	d->scope = SCOPE_ASSIGNMENTS;
	r->label = STR("the same word");
	if (b->a)
		r->assignment = b->a->id;
}

void shop_word_note(struct binder *b, struct said t, enum shop_sort sort)
{
	*ARENA_PUSH(b->arena, b->strange, b->nstrange, b->strange_cap) =
	    (struct strange_word){ t, sort, b->a };
}

static void complain_strange(struct binder *b, struct said t, enum shop_sort sort)
{
	const struct model *m = b->model;
	size_t n = shop_names(m, sort);
	str *names = arena_array(b->arena, n, sizeof *names);
	struct finding *d = complain(b, FINDING_UNKNOWN_WORD, said_pos(t),
	    "\"%.*s\" is not a %s of shop.md; it is left out", STR_ARG(t.s),
	    sorts[sort].name);

	for (size_t i = 0; i < n; i++)
		names[i] = shop_name(m, sort, i);
	offer_likely(b, d, t.s, names, n);
	if (d->repair.n)
		return;
	finding_repair(b->f, d, "add \"## %s %.*s\" to shop.md", sorts[sort].heading,
	    STR_ARG(t.s));
	finding_slip(b->f, d, d->pos, t.s, (str){ 0 });
}

static bool fact_names(const struct assignment *a, str name)
{
	const struct plain_fact *f = assignment_fact(a, STR("Machines"));
	str rest = f ? f->text : (str){ 0 }, part;

	while (str_next(&rest, ',', &part))
		if (words_same(str_trim(part), name))
			return true;
	return false;
}

static bool is_used(const struct model *m, enum shop_sort sort, size_t i)
{
	for (size_t k = 0; k < m->nassignments; k++) {
		const struct assignment *a = &m->assignments[k];

		if (sort == SHOP_STATION ? a->station == i
		    : fact_names(a, m->machines[i].name))
			return true;
	}
	return false;
}

/* The only name of a sort that no sheet uses, or an empty one. */
static str only_idle(const struct model *m, enum shop_sort sort)
{
	str idle = { 0 };

	for (size_t i = 0; i < shop_names(m, sort); i++) {
		if (is_used(m, sort, i))
			continue;
		if (idle.n)
			return (str){ 0 };
		idle = shop_name(m, sort, i);
	}
	return idle;
}

/* The same word on further sheets is added to the finding of the first. */
static void tell_word(struct binder *b, struct strange_list *l, const struct strange_word *w)
{
	str key = str_format(b->arena, "%d %.*s", (int)w->sort, STR_ARG(w->at.s));
	uint32_t fresh = (uint32_t)l->n, at = map_add(l->by_word, key, fresh);

	b->a = w->a;
	if (at < fresh) {
		relate(b, &b->f->v[l->v[at].finding], w->at);
	} else {
		complain_strange(b, w->at, w->sort);
		*ARENA_PUSH(b->arena, l->v, l->n, l->cap) =
		    (struct strange){ b->f->n - 1, w->sort, w->at.s };
	}
	b->a = NULL;
}

/* Where shop.md has just one thing that no sheet names, that is offered as what was
 * renamed. */
static void offer_idle(struct binder *b, const struct strange_list *l)
{
	size_t of[SHOP_SORTS] = { 0 };

	for (size_t i = 0; i < l->n; i++)
		of[l->v[i].sort]++;
	for (size_t i = 0; i < l->n; i++) {
		const struct strange *s = &l->v[i];
		struct finding *d = &b->f->v[s->finding];
		str idle = of[s->sort] == 1 ? only_idle(b->model, s->sort) : (str){ 0 };

		/* One sheet alone is more likely to be wrong than shop.md. */
		if (!idle.n || !d->nrelated)
			continue;
		finding_repair(b->f, d, "write \"## %s %.*s\" in shop.md in place of "
		    "\"%.*s\", or write \"%.*s\" on these sheets", sorts[s->sort].heading,
		    STR_ARG(s->word), STR_ARG(idle), STR_ARG(idle));
		finding_slip(b->f, d, shop_pos(b->model, s->sort, idle), idle, s->word);
	}
}

void shop_words_settle(struct binder *b, const struct binder *const *parts, size_t n)
{
	struct strange_list l = { .by_word = map_new(b->arena, true) };

	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; k < parts[i]->nstrange; k++)
			tell_word(b, &l, &parts[i]->strange[k]);
	offer_idle(b, &l);
}
