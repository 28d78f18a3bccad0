#include "order/order.h"

#include <string.h>

enum { DIGIT_BITS = 11, DIGITS = 1 << DIGIT_BITS };

int place_cmp(const struct place *a, const struct place *b)
{
	if (a->rank_quarter != b->rank_quarter)
		return a->rank_quarter < b->rank_quarter ? -1 : 1;
	if (a->week != b->week)
		return a->week < b->week ? -1 : 1;
	return (a->line > b->line) - (a->line < b->line);
}

/* The line that gives each assignment its place: the first, when it is listed
 * twice. Lines outside every course give none. */
static uint32_t *first_slots(struct arena *a, const struct model *m)
{
	uint32_t *first = arena_array(a, m->nassignments, sizeof *first);

	for (size_t i = 0; i < m->nassignments; i++)
		first[i] = NONE;
	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *s = &m->slots[i];

		if (s->assignment < m->nassignments && s->course < m->ncourses &&
		    first[s->assignment] == NONE)
			first[s->assignment] = (uint32_t)i;
	}
	return first;
}

/* A quarter that a path names twice is met the first time. */
uint32_t order_turn(const struct order *o, uint32_t quarter)
{
	const struct entry *e = o->entry;

	if (!e)
		return quarter;
	for (size_t i = 0; i < e->nquarters; i++)
		if (e->quarters[i] == quarter)
			return (uint32_t)i + 1;
	return 0;
}

/* order_turn for every quarter at once; null for the order of program.md. */
static uint32_t *turns_new(struct arena *a, const struct model *m, const struct entry *e)
{
	uint32_t *turns;

	if (!e)
		return NULL;
	turns = arena_array(a, m->nquarters + 1, sizeof *turns);
	for (size_t i = e->nquarters; i-- > 0;)
		if (e->quarters[i] <= m->nquarters)
			turns[e->quarters[i]] = (uint32_t)i + 1;
	return turns;
}

/* The two keys of the walk; the third, the line, is the order it starts out in. */
static uint32_t key_of(const struct place *p, bool by_quarter)
{
	return by_quarter ? p->rank_quarter : p->week;
}

/* One stable counting sort of the walk by one digit of week or quarter. */
static void sort_digit(const struct order *o, const uint32_t *from, uint32_t *to,
    bool by_quarter, unsigned shift)
{
	uint32_t starts[DIGITS] = { 0 };
	uint32_t sum = 0;

	for (size_t i = 0; i < o->nwalk; i++)
		starts[key_of(&o->places[from[i]], by_quarter) >> shift & (DIGITS - 1)]++;
	for (size_t d = 0; d < DIGITS; d++) {
		uint32_t count = starts[d];

		starts[d] = sum;
		sum += count;
	}
	for (size_t i = 0; i < o->nwalk; i++) {
		uint32_t key = key_of(&o->places[from[i]], by_quarter);

		to[starts[key >> shift & (DIGITS - 1)]++] = from[i];
	}
}

/* Sorts by week or quarter with as many digits as the largest key has. */
static void sort_walk(struct order *o, uint32_t *spare, bool by_quarter)
{
	uint32_t most = 0;

	for (size_t i = 0; i < o->nwalk; i++) {
		uint32_t key = key_of(&o->places[o->walk[i]], by_quarter);

		most = key > most ? key : most;
	}
	for (unsigned shift = 0; shift < 32 && most >> shift; shift += DIGIT_BITS) {
		sort_digit(o, o->walk, spare, by_quarter, shift);
		memcpy(o->walk, spare, o->nwalk * sizeof *spare);
	}
}

/* Places every assignment whose first line lies on the path. The walk starts out
 * in line order; stable sorts by week, then by quarter, make it the order. */
static struct order *order_new(struct arena *a, const struct model *m,
    const struct entry *e)
{
	struct order *o = arena_alloc(a, sizeof *o);
	uint32_t *turns = turns_new(a, m, e), *first = first_slots(a, m);

	o->model = m;
	o->entry = e;
	o->places = arena_array(a, m->nassignments, sizeof *o->places);
	o->walk = arena_array(a, m->nassignments, sizeof *o->walk);
	for (size_t i = 0; i < m->nassignments; i++)
		o->places[i].slot = NONE;
	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *s = &m->slots[i];
		uint32_t quarter, turn;

		if (s->assignment >= m->nassignments || first[s->assignment] != i)
			continue;
		quarter = m->courses[s->course].quarter;
		turn = !turns ? quarter : quarter <= m->nquarters ? turns[quarter] : 0;
		if (!turn)
			continue;
		o->places[s->assignment] = (struct place){ turn, quarter, s->week,
		    s->line,
		    (uint32_t)i };
		o->walk[o->nwalk++] = s->assignment;
	}
	sort_walk(o, first, false);
	sort_walk(o, first, true);
	return o;
}

struct order *order_of_program(struct arena *a, const struct model *m)
{
	return order_new(a, m, NULL);
}

struct order *order_of_entry(struct arena *a, const struct model *m,
    const struct entry *e)
{
	return order_new(a, m, e);
}

/* Gives the new place to every assignment of the moved line. */
static void move_line(struct order *o, const uint32_t *first, uint32_t slot,
    struct place to)
{
	const struct model *m = o->model;
	uint32_t group = m->slots[slot].group;
	size_t from = group ? 0 : slot, end = group ? m->nslots : (size_t)slot + 1;

	for (size_t i = from; i < end; i++) {
		const struct slot *s = &m->slots[i];

		if (s->group != group || s->assignment >= m->nassignments ||
		    first[s->assignment] != i)
			continue;
		to.slot = to.rank_quarter ? (uint32_t)i : NONE;
		o->places[s->assignment] = to;
		if (to.slot != NONE)
			o->walk[o->nwalk++] = s->assignment;
	}
}

/* A line number after every one in use, so that a later move goes last again. */
static uint32_t next_line(const struct order *o)
{
	uint32_t line = 0;

	for (size_t i = 0; i < o->nwalk; i++)
		if (o->places[o->walk[i]].line > line)
			line = o->places[o->walk[i]].line;
	return line < UINT32_MAX ? line + 1 : line;
}

/* The walk is copied without the moved line, which goes in before the first that
 * stands later; nothing is sorted again. */
struct order *order_moved(struct arena *a, const struct order *o, uint32_t assignment,
    uint32_t quarter, uint32_t week)
{
	const struct model *m = o->model;
	struct order *n = arena_alloc(a, sizeof *n);
	uint32_t *first = first_slots(a, m), slot = first[assignment];
	uint32_t group = slot == NONE ? 0 : m->slots[slot].group;
	struct place to = { order_turn(o, quarter), quarter, week, next_line(o), NONE };
	size_t at = 0;
	bool moved = slot == NONE;

	*n = *o;
	n->places = arena_array(a, m->nassignments, sizeof *n->places);
	n->walk = arena_array(a, m->nassignments, sizeof *n->walk);
	if (m->nassignments)
		memcpy(n->places, o->places, m->nassignments * sizeof *n->places);
	for (n->nwalk = 0; at < o->nwalk; at++) {
		uint32_t w = o->walk[at];

		if (!moved && place_cmp(&o->places[w], &to) > 0) {
			move_line(n, first, slot, to);
			moved = true;
		}
		if (slot == NONE || (w != assignment &&
		    (!group || m->slots[o->places[w].slot].group != group)))
			n->walk[n->nwalk++] = w;
	}
	if (!moved)
		move_line(n, first, slot, to);
	return n;
}
