#include "check/works.h"

static void note_welds(struct work *w, const struct assignment *as)
{
	for (size_t i = 0; i < as->nwelds; i++) {
		const struct weld *d = &as->welds[i];

		if (d->process < PROCESS_COUNT)
			w->processes |= UINT32_C(1) << d->process;
		if (d->joint < JOINT_COUNT)
			w->joints |= UINT32_C(1) << d->joint;
		if (d->at.position < POSITION_COUNT)
			w->positions |= UINT32_C(1) << d->at.position;
	}
}

static void note_facts(struct work *w, const struct assignment *as)
{
	for (uint32_t i = 0; i < as->nprocesses; i++)
		if (as->processes[i] < PROCESS_COUNT)
			w->processes |= UINT32_C(1) << as->processes[i];
	for (uint32_t i = 0; i < as->njoints; i++)
		if (as->joints[i] < JOINT_COUNT)
			w->joints |= UINT32_C(1) << as->joints[i];
	for (uint32_t i = 0; i < as->npositions; i++)
		if (as->positions[i].position < POSITION_COUNT)
			w->positions |= UINT32_C(1) << as->positions[i].position;
}

/* The shop's machines among the words of the fact Machines, each once. */
static void note_machines(struct arena *a, struct work *w, const struct assignment *as,
    const struct map *names, size_t nmachines)
{
	const struct plain_fact *fact = assignment_fact(as, STR("Machines"));
	str rest = fact ? fact->text : (str){ 0 }, part;
	uint32_t *v = NULL;
	size_t n = 0, cap = 0;

	while (n < nmachines && str_next(&rest, ',', &part)) {
		uint32_t machine = map_find(names, str_trim(part));
		bool twice = machine == MAP_NONE;

		for (size_t i = 0; !twice && i < n; i++)
			twice = v[i] == machine;
		if (!twice)
			*ARENA_PUSH(a, v, n, cap) = machine;
	}
	w->machines = v;
	w->nmachines = (uint32_t)n;
}

struct work work_bits(const struct assignment *as)
{
	struct work w = { 0 };

	note_welds(&w, as);
	note_facts(&w, as);
	return w;
}

struct work *works_new(struct arena *a, const struct model *m)
{
	struct work *w = arena_array(a, m->nassignments, sizeof *w);
	struct map *names = map_new(a, true);

	for (size_t i = 0; i < m->nmachines; i++)
		map_add(names, m->machines[i].name, (uint32_t)i);
	for (uint32_t i = 0; i < m->nassignments; i++) {
		w[i] = work_bits(&m->assignments[i]);
		if (m->nmachines)
			note_machines(a, &w[i], &m->assignments[i], names, m->nmachines);
	}
	return w;
}

static uint32_t bits_of(const struct work *w, size_t field)
{
	return field == 0 ? w->processes : field == 1 ? w->joints : w->positions;
}

/* The lists of one kind of bit: counted, laid out in one array, then filled. */
static void fill_bits(struct arena *a, struct work_list *l, uint32_t nlists,
    size_t field, const struct work *w, const struct order *o)
{
	uint32_t at[32] = { 0 }, total = 0, *v;

	for (size_t i = 0; i < o->nwalk; i++)
		for (uint32_t bits = bits_of(&w[o->walk[i]], field), k = 0; bits;
		    bits >>= 1, k++)
			at[k] += bits & 1;
	for (uint32_t k = 0; k < nlists; k++)
		total += at[k];
	v = arena_array(a, total, sizeof *v);
	for (uint32_t k = 0, from = 0; k < nlists; k++) {
		l[k] = (struct work_list){ v + from, at[k] };
		from += at[k];
		at[k] = from - at[k];
	}
	for (size_t i = 0; i < o->nwalk; i++)
		for (uint32_t bits = bits_of(&w[o->walk[i]], field), k = 0; bits;
		    bits >>= 1, k++)
			if (bits & 1)
				v[at[k]++] = o->walk[i];
}

static void fill_kinds(struct arena *a, struct work_list *l, const struct order *o)
{
	uint32_t at[KIND_COUNT + 1] = { 0 };
	uint32_t *v = arena_array(a, o->nwalk, sizeof *v);

	for (size_t i = 0; i < o->nwalk; i++)
		at[o->model->assignments[o->walk[i]].kind]++;
	for (uint32_t k = 0, from = 0; k <= KIND_COUNT; k++) {
		if (k < KIND_COUNT)
			l[k] = (struct work_list){ v + from, at[k] };
		from += at[k];
		at[k] = from - at[k];
	}
	for (size_t i = 0; i < o->nwalk; i++)
		v[at[o->model->assignments[o->walk[i]].kind]++] = o->walk[i];
}

static void fill_machines(struct arena *a, struct work_lists *l, const struct work *w,
    const struct order *o)
{
	size_t n = o->model->nmachines;
	uint32_t *at = arena_array(a, n + 1, sizeof *at), total = 0, *v;

	l->machine = arena_array(a, n, sizeof *l->machine);
	for (size_t i = 0; i < o->nwalk; i++)
		for (uint32_t k = 0; k < w[o->walk[i]].nmachines; k++, total++)
			at[w[o->walk[i]].machines[k]]++;
	v = arena_array(a, total, sizeof *v);
	for (size_t k = 0, from = 0; k < n; k++) {
		uint32_t count = at[k];

		l->machine[k] = (struct work_list){ v + from, count };
		at[k] = (uint32_t)from;
		from += count;
	}
	for (size_t i = 0; i < o->nwalk; i++)
		for (uint32_t k = 0; k < w[o->walk[i]].nmachines; k++)
			v[at[w[o->walk[i]].machines[k]]++] = o->walk[i];
}

void work_lists_fill(struct arena *a, struct work_lists *l, const struct work *w,
    const struct order *o)
{
	fill_bits(a, l->process, PROCESS_COUNT, 0, w, o);
	fill_bits(a, l->joint, JOINT_COUNT, 1, w, o);
	fill_bits(a, l->position, POSITION_COUNT, 2, w, o);
	fill_kinds(a, l->kind, o);
	fill_machines(a, l, w, o);
}
