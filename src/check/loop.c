#include "check/knot.h"

#include "check/tell.h"

/* At most this many steps stand in the sentence; all are in related. */
enum { LOOP_NAMED = 4 };

struct loop_step {
	uint32_t assignment, need, teacher;
};

struct trail {
	struct knots *ks;
	uint32_t *part;          /* by assignment: its knot, from 1 */
	bool *seen;              /* by assignment */
	struct loop_step *via;   /* by assignment: the step that led to it */
	uint32_t *queue;
	struct loop_step *steps; /* the loop found, first step at the start */
	size_t nsteps;
};

/* Writes out the loop that `last` closes, walking back to the start. */
static void unroll(struct trail *t, uint32_t start, struct loop_step last)
{
	size_t n = 1;

	for (uint32_t w = last.assignment; w != start; w = t->via[w].assignment)
		n++;
	t->nsteps = n;
	t->steps[--n] = last;
	for (uint32_t w = last.assignment; w != start; w = t->via[w].assignment)
		t->steps[--n] = t->via[w];
}

/* The shortest loop through start, breadth first; every member of a knot is on one. */
static void find_loop(struct trail *t, uint32_t start)
{
	const struct graph *g = t->ks->view->graph;
	size_t head = 0, tail = 0;

	t->queue[tail++] = start;
	while (head < tail) {
		uint32_t w = t->queue[head++];

		for (uint32_t n = g->need_at[w]; n < g->need_at[w + 1]; n++) {
			struct loop_step s = { w, n, t->ks->lead[n] };

			if (s.teacher == start) {
				unroll(t, start, s);
				return;
			}
			if (s.teacher == NONE || t->seen[s.teacher] ||
			    t->part[s.teacher] != t->part[start])
				continue;
			t->seen[s.teacher] = true;
			t->via[s.teacher] = s;
			t->queue[tail++] = s.teacher;
		}
	}
}

static str id_of(const struct knots *ks, uint32_t assignment)
{
	return ks->view->graph->model->assignments[assignment].id;
}

/* "SM-20, SM-21 and SM-22", or with a count when they are many. */
static void name_steps(struct buf *b, const struct trail *t)
{
	size_t named = t->nsteps > LOOP_NAMED ? LOOP_NAMED - 1 : t->nsteps;

	for (size_t i = 0; i < named; i++) {
		bool last = i + 1 == named && named == t->nsteps;

		if (i)
			buf_adds(b, last ? " and " : ", ");
		buf_add(b, id_of(t->ks, t->steps[i].assignment));
	}
	if (named < t->nsteps)
		buf_addf(b, " and %zu more", t->nsteps - named);
}

/* "SM-20 needs fit.tack practiced, which SM-21 teaches" */
static void say_step(struct buf *b, const struct knots *ks, const struct loop_step *s)
{
	const struct graph *g = ks->view->graph;

	buf_addf(b, "%.*s needs ", STR_ARG(id_of(ks, s->assignment)));
	tell_cell(b, g->model, g->alts[knots_alt(ks, s->assignment, s->need)]);
	buf_addf(b, ", which %.*s teaches", STR_ARG(id_of(ks, s->teacher)));
}

static str skill_of(const struct knots *ks, const struct loop_step *s)
{
	const struct graph *g = ks->view->graph;
	uint32_t cell = g->alts[knots_alt(ks, s->assignment, s->need)];

	return g->model->skills[cell_skill(cell)].id;
}

/* The steps in words, as many as fit a sentence, and what else hangs in the knot. */
static void say_cause(struct buf *b, const struct trail *t, size_t rest)
{
	for (size_t i = 0; i < t->nsteps && i < LOOP_NAMED; i++) {
		buf_adds(b, i ? "; " : "");
		say_step(b, t->ks, &t->steps[i]);
	}
	if (t->nsteps > LOOP_NAMED)
		buf_addf(b, "; and so on through %zu more", t->nsteps - LOOP_NAMED);
	if (rest)
		buf_addf(b, "; %zu more %s caught in the same knot", rest,
		    rest > 1 ? "assignments are" : "assignment is");
}

/* Every step is listed with its place, the first one too: a circle has no outside. */
static void report_loop(struct trail *t, size_t rest, struct findings *f)
{
	const struct graph *g = t->ks->view->graph;
	struct buf names = { .arena = f->arena }, cause = { .arena = f->arena };
	const struct loop_step *first = &t->steps[0];
	struct finding *d;

	name_steps(&names, t);
	say_cause(&cause, t, rest);
	d = finding_add(f, FINDING_NEEDS_LOOP,
	    graph_need(g, first->assignment, first->need)->pos,
	    "%.*s need each other in a circle, so none of them can come first",
	    STR_ARG(buf_str(&names)));
	d->scope = SCOPE_ASSIGNMENTS;
	d->assignment = id_of(t->ks, first->assignment);
	d->skill = skill_of(t->ks, first);
	d->cause = buf_str(&cause);
	finding_repair(f, d, "take one of these needs out, or let work outside the circle"
	    " teach one of these skills first");
	for (size_t i = 0; i < t->nsteps; i++) {
		const struct loop_step *s = &t->steps[i];
		struct buf label = { .arena = f->arena };

		say_step(&label, t->ks, s);
		t->ks->on_loop[s->need] = true;
		tell_relate(f, d, graph_need(g, s->assignment, s->need)->pos,
		    id_of(t->ks, s->assignment), skill_of(t->ks, s), buf_str(&label));
	}
}

void knots_report(struct arena *scratch, struct knots *ks, struct findings *f)
{
	uint32_t n = ks->view->graph->nassignments;
	struct trail t = { .ks = ks };

	if (!ks->n)
		return;
	t.part = arena_array(scratch, n, sizeof *t.part);
	t.seen = arena_array(scratch, n, sizeof *t.seen);
	t.via = arena_array(scratch, n, sizeof *t.via);
	t.queue = arena_array(scratch, n, sizeof *t.queue);
	t.steps = arena_array(scratch, n, sizeof *t.steps);
	for (size_t k = 0; k < ks->n; k++) {
		uint32_t least = ks->v[k].members[0];

		for (size_t i = 0; i < ks->v[k].n; i++) {
			t.part[ks->v[k].members[i]] = (uint32_t)k + 1;
			if (ks->v[k].members[i] < least)
				least = ks->v[k].members[i];
		}
		find_loop(&t, least);
		report_loop(&t, ks->v[k].n - t.nsteps, f);
		f->v[f->n - 1].depth = ks->v[k].depth;
	}
}
