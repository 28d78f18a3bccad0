#include "check/tell.h"

#include "check/cause.h"
#include "check/waive.h"

/* Where a run of merged needs is told. */
struct told {
	size_t finding;          /* index in the findings */
	bool first;              /* it lists the first of them too */
};

struct teller {
	const struct graph *graph;
	const struct verdict *verdict;
	const struct words *words;
	struct findings *findings;
	struct arena *scratch;
	struct buf line;         /* for one sentence at a time, kept to be reused */
	struct repairs *repairs;
	size_t nrepairs;
	struct told *told;       /* by merged */
	size_t lost;             /* the finding of the line that no file defines + 1 */
	uint32_t *not_listed;    /* by assignment: its finding not-listed + 1, 0 none */
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
	for (size_t i = 0; i < n->n; i++) {
		buf_adds(b, i ? ", " : "");
		buf_add(b, n->v[i].written);
		buf_addc(b, ' ');
		buf_add(b, skill_level_word(n->v[i].level));
	}
}

static uint32_t skill_of(const struct teller *t, uint32_t fault)
{
	const struct fault *f = &t->verdict->faults.v[fault];

	return cell_skill(t->graph->alts[f->alt]);
}

enum { SKILLS_NAMED = 4 };

/* The skills of a finding beside that of its first need; their number, at most as many
 * as are named and one. */
static uint32_t other_skills(const struct teller *t, const struct merged *g, uint32_t *v)
{
	uint32_t n = 0, own = skill_of(t, g->first);

	for (uint32_t i = t->verdict->next[g->first]; i != NONE && n <= SKILLS_NAMED;
	    i = t->verdict->next[i]) {
		uint32_t skill = skill_of(t, i);
		bool seen = skill == own;

		for (uint32_t k = 0; k < n; k++)
			seen |= v[k] == skill;
		if (!seen)
			v[n++] = skill;
	}
	return n;
}

/* "; the same for form.punch and saf.machine (3 more needs)" */
static void say_skills(struct buf *b, const struct teller *t, const struct merged *g,
    const uint32_t *v, uint32_t n)
{
	const struct skill *all = t->graph->model->skills;
	uint32_t named = n > SKILLS_NAMED ? SKILLS_NAMED : n;

	buf_adds(b, "; the same for ");
	for (uint32_t i = 0; i < named; i++)
		buf_addf(b, "%s%.*s", !i ? "" : i + 1 == n ? " and " : ", ",
		    STR_ARG(all[v[i]].id));
	if (n > named)
		buf_adds(b, " and others");
	if (n > named || g->n - 1 != n)
		buf_addf(b, " (%u more needs)", g->n - 1);
}

/* One more is named; several are counted, for they are listed as related. */
static void say_others(struct buf *b, const struct teller *t, const struct merged *g)
{
	uint32_t second = t->verdict->next[g->first], v[SKILLS_NAMED + 1];
	uint32_t n = other_skills(t, g, v);

	if (n)
		say_skills(b, t, g, v, n);
	else if (g->n == 2)
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

static void say_never(struct buf *b, const struct teller *t, const struct fault *f)
{
	const struct order *o = t->verdict->views[f->view]->order;
	str self = id_of(t, f->assignment);

	if (f->nature == NATURE_ITSELF)
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

/* Of needs with several first teachers: the one that stands last, or the one whose
 * moving cures them all. NONE when the first teacher says enough. */
static uint32_t second_teacher(const struct teller *t, const struct merged *g)
{
	const struct verdict *d = t->verdict;
	const struct cause *c = &d->causes[g->first];
	const struct fault *f = &d->faults.v[g->first];
	const uint32_t *of = d->views[f->view]->units->of;
	uint32_t last = f->teacher;

	if (f->nature != NATURE_LATER ||
	    (c->kind != CAUSE_TEACHER && c->kind != CAUSE_ASKER))
		return NONE;
	if (c->kind == CAUSE_TEACHER)
		return of[c->who] == of[f->teacher] ? NONE : c->who;
	for (uint32_t i = d->next[g->first]; i != NONE; i = d->next[i])
		if (of[d->faults.v[i].teacher] > of[last])
			last = d->faults.v[i].teacher;
	return last == f->teacher ? NONE : last;
}

/* A teacher that stands in no course explains more than one that teaches less. */
static void say_who(struct buf *b, const struct teller *t, const struct merged *g)
{
	const struct verdict *d = t->verdict;
	const struct fault *f = &d->faults.v[g->first];
	const struct cause *c = &d->causes[g->first];
	uint32_t second = second_teacher(t, g);

	if (c->kind == CAUSE_UNLISTED)
		buf_addf(b, "%.*s teaches it but stands in no course",
		    STR_ARG(id_of(t, c->who)));
	else if (f->teacher == NONE)
		say_never(b, t, f);
	else
		say_teacher(b, t, f);
	if (second == NONE)
		return;
	buf_addf(b, c->kind == CAUSE_ASKER ? ", the last of them by %.*s in "
	    : ", and by %.*s in ", STR_ARG(id_of(t, second)));
	tell_place(b, d->views[f->view]->order, second);
}

static void say_cause(struct buf *b, const struct teller *t, const struct merged *g)
{
	const struct verdict *d = t->verdict;
	const struct fault *f = &d->faults.v[g->first];

	say_who(b, t, g);
	if (!d->views[f->view]->order->entry && d->sets[f->paths].without) {
		buf_adds(b, "; the same for those who come by ");
		say_paths(b, d, f->paths);
	}
}

/* Repairs that are no move. */
static void say_repair(struct buf *b, const struct teller *t, const struct fault *f)
{
	const struct model *m = t->graph->model;
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
		buf_adds(b, "add a line to Teaches of an earlier assignment, or list it "
		    "under Entry skills in skills.md");
	}
}

/* Words are cheap; only moves are limited to the first findings. */
static str repair_for(struct teller *t, const struct merged *g,
    const struct standing_wrong **wrong)
{
	const struct fault *f = &t->verdict->faults.v[g->first];
	const struct cause *c = &t->verdict->causes[g->first];
	struct buf b = { .arena = t->findings->arena };

	if (c->kind == CAUSE_UNLISTED)
		buf_addf(&b, "give %.*s a line in program.md before %.*s",
		    STR_ARG(id_of(t, c->who)), STR_ARG(id_of(t, f->assignment)));
	else if (f->nature != NATURE_LATER)
		say_repair(&b, t, f);
	else if (t->nrepairs++ < TELL_MOST)
		return repair_words(t->repairs, g, t->findings->arena, wrong);
	return buf_str(&b);
}

/* Notes where the needs of g are told, n of which the finding has yet to list. */
static void note_told(struct teller *t, const struct merged *g, struct finding *d, uint32_t n)
{
	t->told[g - t->verdict->merged] =
	    (struct told){ (size_t)(d - t->findings->v), n == g->n };
	if (d->nrelated || !n)
		return;
	d->related_cap = n;
	d->related = arena_array(t->findings->arena, n, sizeof *d->related);
}

static void relate_need(struct teller *t, struct finding *d, uint32_t fault)
{
	const struct fault *f = &t->verdict->faults.v[fault];
	str who = id_of(t, f->assignment);

	t->line.n = 0;
	buf_add(&t->line, who);
	buf_adds(&t->line, " needs ");
	say_need(&t->line, t, f);
	tell_relate(t->findings, d, graph_need(t->graph, f->assignment, f->need)->pos, who,
	    t->graph->model->skills[skill_of(t, fault)].id,
	    str_copy(t->findings->arena, buf_str(&t->line)));
}

/* Lists the needs of all findings. They are gone through in walk order, in which a large
 * program is read from memory far faster than finding by finding. */
static void relate_needs(struct teller *t)
{
	const struct verdict *v = t->verdict;

	for (uint32_t i = 0; i < v->faults.n; i++) {
		uint32_t in = v->in ? v->in[i] : NONE;

		if (in != NONE && (v->merged[in].first != i || t->told[in].first))
			relate_need(t, &t->findings->v[t->told[in].finding], i);
	}
}

/* By assignment, the finding that says it stands in no course. */
static void index_not_listed(struct teller *t)
{
	const struct model *m = t->graph->model;

	t->not_listed = arena_array(t->scratch, m->nassignments, sizeof *t->not_listed);
	for (size_t i = 0; i < t->findings->n; i++) {
		const struct finding *d = &t->findings->v[i];
		uint32_t who = d->name == FINDING_NOT_LISTED && d->assignment.n
		    ? map_find(m->assignment_by_id, d->assignment) : MAP_NONE;

		if (who != MAP_NONE)
			t->not_listed[who] = (uint32_t)i + 1;
	}
}

/* What an assignment in no course leaves untaught is told with it, as one error; false
 * when that is accepted or not told. */
static bool tell_unlisted(struct teller *t, const struct merged *g)
{
	const struct model *m = t->graph->model;
	const struct fault *f = &t->verdict->faults.v[g->first];
	const struct cause *c = &t->verdict->causes[g->first];
	const struct assignment *as = &m->assignments[c->who];
	struct finding *d;

	if (c->kind != CAUSE_UNLISTED || g->waiver != NONE || waivers_find(
	    t->verdict->waivers, FINDING_NOT_LISTED, as->pos, as->id, (str){ 0 }) != NONE)
		return false;
	if (!t->not_listed)
		index_not_listed(t);
	if (!t->not_listed[c->who])
		return false;
	d = &t->findings->v[t->not_listed[c->who] - 1];
	d->level = LEVEL_ERROR;
	d->scope = SCOPE_ASSIGNMENTS;
	d->message = str_format(t->findings->arena, "%.*s; %.*s needs what it teaches%s",
	    STR_ARG(d->message), STR_ARG(id_of(t, f->assignment)),
	    g->n > 1 ? ", and others" : "");
	finding_repair(t->findings, d, "give %.*s a line in program.md before %.*s",
	    STR_ARG(as->id), STR_ARG(id_of(t, f->assignment)));
	note_told(t, g, d, g->n);
	return true;
}

/* The finding of a line that no file defines, null when it is not among them. */
static struct finding *lost_line(struct teller *t, struct pos pos)
{
	if (t->lost)
		return &t->findings->v[t->lost - 1];
	for (size_t i = 0; i < t->findings->n && !t->lost; i++)
		if (t->findings->v[i].name == FINDING_UNKNOWN_ASSIGNMENT &&
		    !pos_cmp(t->findings->v[i].pos, pos))
			t->lost = i + 1;
	return t->lost ? &t->findings->v[t->lost - 1] : NULL;
}

/* What nobody teaches may stand in the file that is not there: told with its line. */
static bool tell_lost(struct teller *t, const struct merged *g)
{
	const struct cause *c = &t->verdict->causes[g->first];
	struct finding *d;

	if (c->kind != CAUSE_LOST || g->waiver != NONE)
		return false;
	d = lost_line(t, t->graph->model->slots[c->who].pos);
	if (!d)
		return false;
	if (!d->cause.n)
		finding_cause(t->findings, d, "what the needs listed here ask for is likely "
		    "taught in it");
	note_told(t, g, d, g->n);
	return true;
}

/* So that settling finds the course of the optional work. */
static const struct standing_wrong *note_optional(const struct teller *t, uint32_t teacher)
{
	struct standing_wrong *w = arena_alloc(t->findings->arena, sizeof *w);

	*w = (struct standing_wrong){ .mover = teacher };
	return w;
}

static void tell_merged(struct teller *t, const struct merged *g)
{
	const struct fault *f = &t->verdict->faults.v[g->first];
	struct finding *d;

	if (tell_unlisted(t, g) || tell_lost(t, g))
		return;
	t->line.n = 0;
	say_message(&t->line, t, g);
	d = finding_add(t->findings, nature_finding(f->nature),
	    graph_need(t->graph, f->assignment, f->need)->pos, "%.*s",
	    STR_ARG(buf_str(&t->line)));
	/* Who skips a safety card works without it. */
	if (!nature_is_error(f->nature) && f->teacher != NONE &&
	    t->graph->model->assignments[f->teacher].kind == KIND_SAFETY)
		d->level = LEVEL_ERROR;
	d->scope = SCOPE_ASSIGNMENTS;
	d->assignment = id_of(t, f->assignment);
	d->skill = t->graph->model->skills[cell_skill(t->graph->alts[f->alt])].id;
	t->line.n = 0;
	say_cause(&t->line, t, g);
	d->cause = str_copy(t->findings->arena, buf_str(&t->line));
	d->repair = repair_for(t, g, &d->wrong);
	if (f->nature == NATURE_OPTIONAL)
		d->wrong = note_optional(t, f->teacher);
	note_told(t, g, d, g->n - 1);
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
    struct repairs *r, const struct words *w, struct findings *f)
{
	struct teller t = { .graph = d->views[0]->graph, .verdict = d, .words = w,
	    .findings = f, .scratch = scratch, .line = { .arena = scratch },
	    .repairs = r };

	t.told = arena_array(scratch, d->nmerged, sizeof *t.told);
	relate_misspelt(&t);
	for (size_t i = 0; i < d->nmerged; i++)
		tell_merged(&t, &d->merged[i]);
	relate_needs(&t);
}
