/* Reads a graph, one line a name and then the names it needs, and runs the order
 * check on it as a program: each name is an assignment that teaches one skill of its
 * own. Prints the knots, one a line: the numbers of the members in rising order, by
 * line of the graph from 0, sorted by the first. With a second file, the names in it give
 * the order of the program; else the lines of the graph do.
 *
 * graph_check [-t] [-u] GRAPH [ORDER]     -t: only times; -u: only counts of findings */
#include "check/check.h"
#include "check/knot.h"
#include "check/walk.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { QUARTERS = 6, WEEKS = 11 };

static str slurp(struct arena *a, const char *path)
{
	FILE *f = fopen(path, "rb");
	struct buf { char *p; size_t n, cap; } b = { 0 };

	if (!f) {
		perror(path);
		exit(3);
	}
	for (int c; (c = getc(f)) != EOF;)
		*ARENA_PUSH(a, b.p, b.n, b.cap) = (char)c;
	fclose(f);
	return (str){ b.p, b.n };
}

static void name_all(struct model *m, struct arena *a, str text)
{
	str line, name;

	m->assignment_by_id = map_new(a, false);
	while (str_next(&text, '\n', &line)) {
		struct assignment *as;

		if (!str_word(&line, &name))
			continue;
		as = ARENA_PUSH(a, m->assignments, m->nassignments, m->assignments_cap);
		as->id = name;
		as->pos = (struct pos){ (uint32_t)m->nassignments - 1, 1, 3 };
		map_add(m->assignment_by_id, name, (uint32_t)m->nassignments - 1);
	}
	for (size_t i = 0; i < m->nassignments; i++) {
		m->assignments[i].criteria = arena_alloc(a,
		    sizeof *m->assignments[i].criteria);
		m->assignments[i].criteria->name = STR("Visual");
		m->assignments[i].ncriteria = 1;
	}
	m->nskills = m->nassignments;
	m->skills = arena_array(a, m->nskills, sizeof *m->skills);
	for (size_t i = 0; i < m->nskills; i++)
		m->skills[i].id = m->assignments[i].id;
}

static struct skill_at *skill_new(struct arena *a, uint32_t skill, str name,
    struct pos pos)
{
	struct skill_at *s = arena_alloc(a, sizeof *s);

	s->skill = skill;
	s->written = name;
	s->level = SKILL_ASSESSED;
	s->pos = pos;
	s->evidence = STR("Visual");
	return s;
}

static void link_all(struct model *m, struct arena *a, str text)
{
	str line, name;

	for (uint32_t w = 0; str_next(&text, '\n', &line);) {
		struct assignment *as = &m->assignments[w];
		uint32_t row = 10;

		if (!str_word(&line, &name))
			continue;
		as->teaches = skill_new(a, w, name, (struct pos){ w, 5, 3 });
		as->nteaches = 1;
		while (str_word(&line, &name)) {
			struct pos pos = { w, row++, 3 };
			struct need *n = ARENA_PUSH(a, as->needs, as->nneeds,
			    as->needs_cap);

			n->pos = pos;
			n->n = 1;
			n->v = skill_new(a, map_find(m->assignment_by_id, name), name,
			    pos);
		}
		w++;
	}
}

/* Spreads the assignments over the weeks of six quarters in the order given. */
static void place_all(struct model *m, struct arena *a, const uint32_t *sequence)
{
	size_t n = m->nassignments;

	m->weeks = WEEKS;
	m->nquarters = m->ncourses = QUARTERS;
	m->quarters = arena_array(a, QUARTERS, sizeof *m->quarters);
	m->courses = arena_array(a, QUARTERS, sizeof *m->courses);
	for (uint32_t q = 0; q < QUARTERS; q++)
		m->courses[q].quarter = q + 1;
	m->slots = arena_array(a, n, sizeof *m->slots);
	m->nslots = n;
	for (size_t i = 0; i < n; i++) {
		uint32_t spot = (uint32_t)(i * QUARTERS * WEEKS / n);

		m->slots[i] = (struct slot){ .assignment = sequence[i],
		    .course = spot / WEEKS,
		    .week = spot % WEEKS + 1, .line = (uint32_t)i + 1 };
	}
}

static uint32_t *sequence_of(const struct model *m, struct arena *a, const char *path)
{
	uint32_t *sequence = arena_array(a, m->nassignments, sizeof *sequence);
	str text = path ? slurp(a, path) : (str){ 0 }, line;

	for (uint32_t i = 0; i < m->nassignments; i++)
		sequence[i] = i;
	for (uint32_t i = 0; path && str_next(&text, '\n', &line) && i < m->nassignments;)
		if (map_find(m->assignment_by_id, str_trim(line)) != MAP_NONE)
			sequence[i++] = map_find(m->assignment_by_id, str_trim(line));
	return sequence;
}

static int by_number(const void *a, const void *b)
{
	uint32_t x = *(const uint32_t *)a, y = *(const uint32_t *)b;

	return (x > y) - (x < y);
}

static int by_first(const void *a, const void *b)
{
	const struct knot *x = a, *y = b;

	return by_number(x->members, y->members);
}

static void print_knots(struct arena *a, const struct model *m)
{
	struct graph *g = graph_new(a, m, NULL);
	struct knots *ks = knots_find(a, view_new(a, g, order_of_program(a, m)), g);

	for (size_t k = 0; k < ks->n; k++)
		qsort(ks->v[k].members, ks->v[k].n, sizeof *ks->v[k].members, by_number);
	if (ks->n)
		qsort(ks->v, ks->n, sizeof *ks->v, by_first);
	for (size_t k = 0; k < ks->n; k++)
		for (size_t i = 0; i < ks->v[k].n; i++)
			printf("%u%c", ks->v[k].members[i], i + 1 < ks->v[k].n ? ' '
			    : '\n');
}

static double now_ms(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

/* The least of several runs: order, needs and knots alone; then the whole check. */
static void print_times(const struct model *m)
{
	double bare = 1e9, whole = 1e9;
	size_t bytes = 0, needs = 0, findings = 0, knots = 0, unmet = 0;

	for (size_t i = 0; i < m->nassignments; i++)
		needs += m->assignments[i].nneeds;
	for (int run = 0; run < 9; run++) {
		struct arena *a = arena_new(NULL, NULL), *out = arena_new(NULL, NULL);
		struct findings *f = findings_new(out);
		double start = now_ms(), end;
		struct order *o = order_of_program(a, m);
		struct graph *g = graph_new(a, m, NULL);
		struct view *v = view_new(a, g, o);
		struct faults fs = { .arena = a };
		struct knots *ks;

		walk_order(v, &fs);
		ks = knots_find(a, v, g);
		end = now_ms();
		bare = end - start < bare ? end - start : bare;
		knots = ks->n;
		unmet = fs.n;
		bytes = arena_bytes(a);
		arena_free(a);
		a = arena_new(NULL, NULL);
		start = now_ms();
		check_program(a, m, f);
		end = now_ms();
		whole = end - start < whole ? end - start : whole;
		findings = f->n;
		arena_free(a);
		arena_free(out);
	}
	printf("%zu assignments, %zu needs, %zu unmet, %zu knots, %zu findings\n",
	    m->nassignments, needs, unmet, knots, findings);
	printf("order, needs and loops %.1f ms (%.1f MiB), whole check %.1f ms\n", bare,
	    (double)bytes / 1048576, whole);
}

static void print_counts(struct arena *a, const struct model *m)
{
	struct findings *f = findings_new(a);
	size_t loops = 0, untaught = 0;

	check_program(a, m, f);
	for (size_t i = 0; i < f->n; i++) {
		loops += f->v[i].name == FINDING_NEEDS_LOOP;
		untaught += f->v[i].name == FINDING_UNTAUGHT_SKILL;
	}
	printf("%zu loops %zu untaught\n", loops, untaught);
}

int main(int argc, char **argv)
{
	struct arena *a = arena_new(NULL, NULL);
	struct model *m = arena_alloc(a, sizeof *m);
	char mode = argc > 1 && argv[1][0] == '-' ? argv[1][1] : 'k';
	int at = mode == 'k' ? 1 : 2;
	str text;

	if (argc <= at)
		return 2;
	text = slurp(a, argv[at]);
	name_all(m, a, text);
	link_all(m, a, text);
	place_all(m, a, sequence_of(m, a, argv[at + 1]));
	if (mode == 't')
		print_times(m);
	else if (mode == 'u')
		print_counts(a, m);
	else
		print_knots(a, m);
	arena_free(a);
	return 0;
}
