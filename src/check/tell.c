#include "check/tell.h"

#include "check/repair.h"

struct teller {
	const struct graph *graph;
	const struct verdict *verdict;
	const struct words *words;
	struct findings *findings;
	struct arena *scratch;
	struct buf line;         /* for one sentence at a time, kept to be reused */
	struct repairs *repairs;
	size_t nrepairs;
	uint32_t *unlisted;      /* by skill: who teaches it but stands in no course */
};

void tell_relate(struct findings *f, struct finding *d, struct pos pos, str assignment,
    str skill, str label)
{
	struct related *r = finding_relate(f, d, pos);

	r->assignment = assignment;
	r->skill = skill;
	r->label = label;
}

void tell_place(struct buf *b, const struct order *o, uint32_t assignment)
{
	const struct place *p = &o->places[assignment];

	if (p->slot == NONE)
		buf_adds(b, "in no course");
	else
		buf_addf(b, "quarter %u, week %u", p->quarter, p->week);
}

void tell_cell(struct buf *b, const struct model *m, uint32_t cell)
{
	buf_addf(b, "%.*s %.*s", STR_ARG(m->skills[cell_skill(cell)].id),
	    STR_ARG(skill_level_word(cell_level(cell))));
}

/* The line of Teaches that reaches the cell; null when there is none. */
static const struct skill_at *teaching(const struct graph *g, uint32_t assignment,
    uint32_t cell)
{
	const struct assignment *as = &g->model->assignments[assignment];

	for (size_t i = 0; i < as->nteaches; i++)
		if (as->teaches[i].skill == cell_skill(cell) &&
		    (!as->teaches[i].level || as->teaches[i].level >= cell_level(cell)))
			return &as->teaches[i];
	return NULL;
}

void tell_teaching(struct buf *b, const struct graph *g, uint32_t assignment,
    uint32_t cell)
{
	const struct sources *s = g->model->sources;
	const struct skill_at *t = teaching(g, assignment, cell);
	struct pos pos = t ? t->pos : g->model->assignments[assignment].pos;

	if (s && pos.file < s->n)
		buf_addf(b, " (%.*s:%u:%u)", STR_ARG(s->v[pos.file].path), pos.line,
		    pos.col);
}

static str id_of(const struct teller *t, uint32_t assignment)
{
	return t->graph->model->assignments[assignment].id;
}

/* How each nature ends the sentence: of one need, and of a "one of". */
static const struct { const char *one, *several; } natures[] = {
	[NATURE_OPTIONAL] = { ", which only optional work teaches by then",
	    ", and by then only optional work teaches any of them" },
	[NATURE_BRANCH] = { ", which only one branch of a choice teaches by then",
	    ", and by then only one branch of a choice teaches any of them" },
	[NATURE_LATER] = { ", which is taught later",
	    ", none of which is taught by then" },
	[NATURE_SIBLING] = { ", which only another branch of the same choice teaches",
	    ", which only another branch of the same choice teaches" },
	[NATURE_TOO_LOW] = { ", which is never taught that far",
	    ", none of which is taught that far" },
	[NATURE_ITSELF] = { ", which nothing else teaches",
	    ", none of which anything else teaches" },
	[NATURE_NEVER] = { ", which no assignment teaches",
	    ", none of which any assignment teaches" },
};

/* As the author wrote it, unknown alternatives included. */
static void say_need(struct buf *b, const struct teller *t, const struct fault *f)
{
	const struct need *n = graph_need(t->graph, f->assignment, f->need);

	if (n->n > 1)
		buf_adds(b, "one of ");
	for (size_t i = 0; i < n->n; i++)
		buf_addf(b, "%s%.*s %.*s", i ? ", " : "", STR_ARG(n->v[i].written),
		    STR_ARG(skill_level_word(n->v[i].level)));
}

/* One more is named; several are counted, for they are listed as related. */
static void say_others(struct buf *b, const struct teller *t, const struct merged *g)
{
	uint32_t second = t->verdict->next[g->first];

	if (g->n == 2)
		buf_addf(b, "; %.*s needs it too",
		    STR_ARG(id_of(t, t->verdict->faults.v[second].assignment)));
	else if (g->n > 2)
		buf_addf(b, "; %u more needs wait for it too", g->n - 1);
}

/* Names the entry paths of a set, the first order last seen first. */
static void say_paths(struct buf *b, const struct verdict *d, uint32_t set)
{
	uint32_t views[8], n = 0, more = 0;

	for (; set; set = d->sets[set].without) {
		if (!d->views[d->sets[set].view]->order->entry)
			continue;
		if (n < 8)
			views[n++] = d->sets[set].view;
		else
			more++;
	}
	for (uint32_t i = n; i-- > 0;)
		buf_addf(b, "%s\"%.*s\"", i + 1 == n ? "" : ", ",
		    STR_ARG(d->views[views[i]]->order->entry->text));
	if (more)
		buf_addf(b, " and %u more", more);
}

/* Who, where, what, and how it is not met; on an entry path, for whom. */
static void say_message(struct buf *b, const struct teller *t, const struct merged *g)
{
	const struct fault *f = &t->verdict->faults.v[g->first];
	const struct order *o = t->verdict->views[f->view]->order;
	bool one = graph_need(t->graph, f->assignment, f->need)->n == 1;

	buf_addf(b, "%.*s (", STR_ARG(id_of(t, f->assignment)));
	tell_place(b, o, f->assignment);
	buf_adds(b, ") needs ");
	say_need(b, t, f);
	buf_adds(b, one ? natures[f->nature].one : natures[f->nature].several);
	say_others(b, t, g);
	if (o->entry) {
		buf_adds(b, ", for those who come by ");
		say_paths(b, t->verdict, f->paths);
	}
}

/* Who teaches each skill without standing in a course; made when first asked. */
static uint32_t unlisted_teacher(struct teller *t, uint32_t skill)
{
	const struct graph *g = t->graph;
	const struct order *o = t->verdict->views[0]->order;

	if (!t->unlisted) {
		t->unlisted = arena_array(t->scratch, g->model->nskills,
		    sizeof *t->unlisted);
		for (uint32_t w = g->nassignments; w-- > 0;)
			for (uint32_t i = g->teach_at[w]; i < g->teach_at[w + 1]; i++)
				if (o->places[w].slot == NONE)
					t->unlisted[cell_skill(g->teach[i])] = w + 1;
	}
	return t->unlisted[skill] - 1;
}

/* A teacher that stands in no course explains more than that there is none. */
static void say_never(struct buf *b, struct teller *t, const struct fault *f)
{
	uint32_t who = unlisted_teacher(t, cell_skill(t->graph->alts[f->alt]));
	const struct order *o = t->verdict->views[f->view]->order;
	str self = id_of(t, f->assignment);

	if (who != NONE)
		buf_addf(b, "%.*s teaches it but stands in no course",
		    STR_ARG(id_of(t, who)));
	else if (f->nature == NATURE_ITSELF)
		buf_addf(b, "only %.*s itself teaches it", STR_ARG(self));
	else if (o->entry)
		buf_adds(b, "no assignment on this path teaches it");
	else
		buf_adds(b, "no assignment teaches it");
}

/* Who does teach it, where that stands, and why it does not count. */
static void say_teacher(struct buf *b, const struct teller *t, const struct fault *f)
{
	static const char *const opening[] = {
		[NATURE_OPTIONAL] = "taught", [NATURE_BRANCH] = "taught",
		[NATURE_LATER] = "first taught", [NATURE_SIBLING] = "taught",
		[NATURE_TOO_LOW] = "taught less far",
	};
	static const char *const close[] = {
		[NATURE_OPTIONAL] = ", which is optional",
		[NATURE_BRANCH] = ", one branch of a choice", [NATURE_LATER] = "",
		[NATURE_SIBLING] = ", which those who choose the other never do",
		[NATURE_TOO_LOW] = "",
	};
	const struct view *v = t->verdict->views[f->view];

	buf_addf(b, "%s by %.*s in ", opening[f->nature], STR_ARG(id_of(t, f->teacher)));
	tell_place(b, v->order, f->teacher);
	tell_teaching(b, t->graph, f->teacher, f->nature == NATURE_TOO_LOW
	    ? cell_base(t->graph->alts[f->alt]) : t->graph->alts[f->alt]);
	buf_adds(b, close[f->nature]);
}

static void say_cause(struct buf *b, struct teller *t, const struct fault *f)
{
	const struct verdict *d = t->verdict;

	if (f->teacher == NONE)
		say_never(b, t, f);
	else
		say_teacher(b, t, f);
	if (!d->views[f->view]->order->entry && d->sets[f->paths].without) {
		buf_adds(b, "; the same for those who come by ");
		say_paths(b, d, f->paths);
	}
}

/* Repairs that are no move. */
static void say_repair(struct buf *b, struct teller *t, const struct fault *f)
{
	const struct model *m = t->graph->model;
	uint32_t who;
	uint32_t cell = t->graph->alts[f->alt];
	str skill = m->skills[cell_skill(cell)].id, self = id_of(t, f->assignment);

	switch (f->nature) {
	case NATURE_OPTIONAL:
		buf_addf(b, "take \"optional\" off the line of %.*s in program.md, or "
		    "let work that everyone does teach %.*s before %.*s",
		    STR_ARG(id_of(t, f->teacher)), STR_ARG(skill), STR_ARG(self));
		return;
	case NATURE_BRANCH:
		buf_addf(b, "let every branch of that choice teach %.*s, or teach it to "
		    "everyone before %.*s", STR_ARG(skill), STR_ARG(self));
		return;
	case NATURE_TOO_LOW:
		buf_addf(b, "let an assignment before %.*s teach ", STR_ARG(self));
		tell_cell(b, m, cell);
		buf_adds(b, ", or ask for a lower level");
		return;
	default:
		who = unlisted_teacher(t, cell_skill(cell));
		if (who != NONE)
			buf_addf(b, "give %.*s a line in program.md before %.*s, or ",
			    STR_ARG(id_of(t, who)), STR_ARG(self));
		buf_adds(b, "add a line to Teaches of an earlier assignment, or list it "
		    "under Entry skills in skills.md");
	}
}

/* Words are cheap; only moves are limited to the first findings. */
static str repair_for(struct teller *t, const struct merged *g)
{
	const struct fault *f = &t->verdict->faults.v[g->first];
	struct buf b = { .arena = t->findings->arena };

	if (f->nature != NATURE_LATER)
		say_repair(&b, t, f);
	else if (t->nrepairs++ < TELL_MOST)
		return repair_words(t->repairs, g, t->findings->arena);
	return buf_str(&b);
}

static void relate_rest(struct teller *t, struct finding *d, const struct merged *g)
{
	const struct verdict *v = t->verdict;

	d->related_cap = g->n - 1;
	d->related = arena_array(t->findings->arena, d->related_cap, sizeof *d->related);
	for (uint32_t i = v->next[g->first]; i != NONE; i = v->next[i]) {
		const struct fault *f = &v->faults.v[i];
		str who = id_of(t, f->assignment);

		t->line.n = 0;
		buf_addf(&t->line, "%.*s needs ", STR_ARG(who));
		say_need(&t->line, t, f);
		tell_relate(t->findings, d,
		    graph_need(t->graph, f->assignment, f->need)->pos, who, d->skill,
		    str_copy(t->findings->arena, buf_str(&t->line)));
	}
}

static void tell_merged(struct teller *t, const struct merged *g)
{
	const struct fault *f = &t->verdict->faults.v[g->first];
	struct finding *d;

	t->line.n = 0;
	say_message(&t->line, t, g);
	d = finding_add(t->findings, nature_finding(f->nature),
	    graph_need(t->graph, f->assignment, f->need)->pos, "%.*s",
	    STR_ARG(buf_str(&t->line)));
	d->scope = SCOPE_ASSIGNMENTS;
	d->assignment = id_of(t, f->assignment);
	d->skill = t->graph->model->skills[cell_skill(t->graph->alts[f->alt])].id;
	t->line.n = 0;
	say_cause(&t->line, t, f);
	d->cause = str_copy(t->findings->arena, buf_str(&t->line));
	d->repair = repair_for(t, g);
	relate_rest(t, d, g);
}

/* The misspelt word under which `teacher` means to teach the cell. */
static str misspelt_word(const struct teller *t, uint32_t teacher, uint32_t cell)
{
	const struct assignment *as = &t->graph->model->assignments[teacher];

	for (size_t i = 0; i < as->nteaches; i++)
		if (as->teaches[i].skill == NONE &&
		    words_meant(t->words, as->teaches[i].written) == cell_skill(cell))
			return as->teaches[i].written;
	return (str){ 0 };
}

/* Needs that stand explained by a misspelt word go under its finding. */
static void relate_misspelt(struct teller *t)
{
	const struct verdict *v = t->verdict;

	for (size_t i = 0; i < v->faults.n; i++) {
		const struct fault *f = &v->faults.v[i];
		uint32_t cell = t->graph->alts[f->alt];

		if (f->nature != NATURE_MISSPELT)
			continue;
		words_relate(t->words, t->findings, misspelt_word(t, f->teacher, cell),
		    graph_need(t->graph, f->assignment, f->need)->pos,
		    id_of(t, f->assignment),
		    t->graph->model->skills[cell_skill(cell)].id);
	}
}

void tell_verdict(struct arena *scratch, const struct verdict *d,
    const struct knots *ks, const struct words *w, struct findings *f)
{
	struct teller t = { .graph = d->views[0]->graph, .verdict = d, .words = w,
	    .findings = f, .scratch = scratch, .line = { .arena = scratch } };

	if (d->nmerged)
		t.repairs = repairs_new(scratch, d, ks);
	relate_misspelt(&t);
	for (size_t i = 0; i < d->nmerged; i++)
		tell_merged(&t, &d->merged[i]);
}
