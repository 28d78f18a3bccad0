/* Stations and machines that sheets name and shop.md does not have: one word on many
 * sheets is one slip. */
#include "model/shop_word.h"

#include "base/buf.h"

/* A word of a sort that shop.md does not give to anything. */
struct strange_word {
	size_t finding;          /* in the findings */
	enum shop_sort sort;
	str word;
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

static void relate(struct binder *b, struct finding *d, struct said t)
{
	struct related *r = finding_relate(b->f, d, said_pos(t));

	d->scope = SCOPE_ASSIGNMENTS;
	r->label = STR("the same word");
	if (b->a)
		r->assignment = b->a->id;
}

void shop_word_complain(struct binder *b, struct said t, enum shop_sort sort)
{
	const struct model *m = b->model;
	size_t n = shop_names(m, sort);
	str key = str_format(b->arena, "%d %.*s", (int)sort, STR_ARG(t.s));
	str *names;
	struct finding *d;
	uint32_t at;

	if (!b->strange_at)
		b->strange_at = map_new(b->arena, true);
	at = map_add(b->strange_at, key, (uint32_t)b->nstrange);
	if (at < b->nstrange) {
		relate(b, &b->f->v[b->strange[at].finding], t);
		return;
	}
	d = complain(b, FINDING_UNKNOWN_WORD, said_pos(t),
	    "\"%.*s\" is not a %s of shop.md; it is left out", STR_ARG(t.s),
	    sorts[sort].name);
	*ARENA_PUSH(b->arena, b->strange, b->nstrange, b->strange_cap) =
	    (struct strange_word){ b->f->n - 1, sort, t.s };
	names = arena_array(b->arena, n, sizeof *names);
	for (size_t i = 0; i < n; i++)
		names[i] = shop_name(m, sort, i);
	offer_likely(b, d, t.s, names, n);
	if (!d->repair.n)
		finding_repair(b->f, d, "add \"## %s %.*s\" to shop.md",
		    sorts[sort].heading, STR_ARG(t.s));
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

void shop_words_settle(struct binder *b)
{
	size_t of[SHOP_SORTS] = { 0 };

	for (size_t i = 0; i < b->nstrange; i++)
		of[b->strange[i].sort]++;
	for (size_t i = 0; i < b->nstrange; i++) {
		const struct strange_word *s = &b->strange[i];
		struct finding *d = &b->f->v[s->finding];
		str idle = of[s->sort] == 1 ? only_idle(b->model, s->sort) : (str){ 0 };

		/* One sheet alone is more likely to be wrong than shop.md. */
		if (!idle.n || !d->nrelated)
			continue;
		finding_repair(b->f, d, "write \"## %s %.*s\" in shop.md in place of "
		    "\"%.*s\", or write \"%.*s\" on these sheets", sorts[s->sort].heading,
		    STR_ARG(s->word), STR_ARG(idle), STR_ARG(idle));
	}
}
