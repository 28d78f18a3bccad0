/* The model as it is printed in another language. */
#include "model/translation.h"

struct viewer {
	struct arena *arena;
	const struct speech *s;
};

/* ---- names ---- */

/* "Visual, Face bend": names of acceptance lines, each in its turn. */
static void name_evidence(const struct viewer *w, struct assignment *x)
{
	x->teaches = arena_array_of(w->arena, x->teaches, x->nteaches, sizeof *x->teaches);
	for (size_t i = 0; i < x->nteaches; i++) {
		str rest = x->teaches[i].evidence, part;
		struct buf b = { .arena = w->arena };

		while (str_next(&rest, ',', &part))
			buf_addf(&b, "%s%.*s", b.n ? ", " : "",
			    STR_ARG(speech_word(w->s, str_trim(part))));
		x->teaches[i].evidence = buf_str(&b);
	}
}

static void name_lines(const struct viewer *w, struct assignment *x)
{
	x->pieces = arena_array_of(w->arena, x->pieces, x->npieces, sizeof *x->pieces);
	for (size_t i = 0; i < x->npieces; i++) {
		x->pieces[i].shown_name = speech_word(w->s, x->pieces[i].name);
		x->pieces[i].made = speech_word(w->s, x->pieces[i].made);
	}
	x->fillers = arena_array_of(w->arena, x->fillers, x->nfillers, sizeof *x->fillers);
	for (uint32_t i = 0; i < x->nfillers; i++)
		x->fillers[i].where = speech_word(w->s, x->fillers[i].where);
	x->grades = arena_array_of(w->arena, x->grades, x->ngrades, sizeof *x->grades);
	for (size_t i = 0; i < x->ngrades; i++) {
		struct grade *g = &x->grades[i];

		g->english = has_words(g->name) && !speech_has(w->s, g->name);
		g->name = speech_word(w->s, g->name);
	}
	name_evidence(w, x);
	x->drawings = arena_array_of(w->arena, x->drawings, x->ndrawings, sizeof *x->drawings);
	for (size_t i = 0; i < x->ndrawings; i++) {
		str *restart = &x->drawings[i].joint.restart;

		*restart = speech_word(w->s, *restart);
	}
}

/* Judged by the original text, printed by these. */
static void name_judged(const struct viewer *w, struct assignment *x,
    const struct translation *t)
{
	x->criteria = arena_array_of(w->arena, x->criteria, x->ncriteria, sizeof *x->criteria);
	for (size_t i = 0; i < x->ncriteria; i++) {
		struct criterion *c = &x->criteria[i];
		const struct plain_fact *line = t ? said_line(&t->criteria, c->name) : NULL;

		c->shown_name = speech_word(w->s, c->name);
		c->shown_text = line ? line->text : speech_word(w->s, c->text);
	}
	x->facts = arena_array_of(w->arena, x->facts, x->nfacts, sizeof *x->facts);
	for (size_t i = 0; i < x->nfacts; i++) {
		const struct plain_fact *line = t ? said_line(&t->facts, x->facts[i].key) : NULL;

		x->facts[i].shown = line ? line->text : speech_word(w->s, x->facts[i].text);
	}
	x->passes = arena_array_of(w->arena, x->passes, x->npasses, sizeof *x->passes);
	for (size_t i = 0; i < x->npasses; i++) {
		const struct plain_fact *line = t ? said_line(&t->passes, x->passes[i].name) : NULL;

		x->passes[i].text = line ? line->text : x->passes[i].text;
		x->passes[i].name = speech_word(w->s, x->passes[i].name);
	}
}

/* ---- prose ---- */

static void takes(struct assignment *x, struct prose *own, const struct translation *t,
    enum said_part part)
{
	if (!own->n)
		return;
	if (t->parts[part].n)
		*own = t->parts[part];
	else
		x->in_english |= 1u << part;
}

/* Steps that are not as many as those of the original are a finding, and of no use. */
static void take_steps(struct assignment *x, const struct translation *t)
{
	if (t->nsteps == x->nsteps)
		x->steps = t->steps;
	else if (x->nsteps)
		x->in_english |= 1u << SAID_STEPS;
}

static size_t caption_paras(const struct assignment *x)
{
	size_t n = 0;

	for (size_t i = 0; i < x->ndrawings; i++)
		n += x->drawings[i].caption.n;
	return n;
}

/* The paragraphs under Drawing, in order, are those that stand above the blocks. */
static void take_captions(struct assignment *x, const struct translation *t)
{
	const struct prose *said = &t->parts[SAID_DRAWING];
	size_t at = 0, n = caption_paras(x);

	if (said->n != n)
		x->in_english |= 1u << SAID_DRAWING;
	if (!n || said->n != n)
		return;
	for (size_t i = 0; i < x->ndrawings; i++) {
		struct prose *own = &x->drawings[i].caption;

		*own = (struct prose){ said->v + at, own->n };
		at += own->n;
	}
}

static void take_pictures(struct assignment *x, const struct translation *t)
{
	bool legend = false;

	for (size_t i = 0; i < x->ndrawings; i++) {
		struct drawing *d = &x->drawings[i];
		const struct drawing *said = said_picture(t, d);

		if (said) {
			d->words = said->words;
			d->legend = t->legend.v;
			d->nlegend = legend ? 0 : t->legend.n;
			legend = true;
			d->title = said_or(said->title, d->title);
		} else if (d->kind == DRAWING_PICTURE) {
			x->in_english |= 1u << SAID_DRAWING;
		}
	}
}

static bool acceptance_is_said(const struct assignment *x, const struct translation *t)
{
	for (size_t i = 0; i < x->ncriteria; i++)
		if (criterion_has_words(&x->criteria[i]) &&
		    !said_line(&t->criteria, x->criteria[i].name))
			return false;
	return true;
}

static void take_prose(struct assignment *x, const struct translation *t)
{
	if (t->title.n)
		x->title = t->title;
	else
		x->in_english |= 1u << SAID_TITLE;
	take_steps(x, t);
	take_captions(x, t);
	take_pictures(x, t);
	if (!acceptance_is_said(x, t))
		x->in_english |= 1u << SAID_ACCEPTANCE;
	takes(x, &x->bring, t, SAID_BRING);
	takes(x, &x->cautions, t, SAID_CAUTIONS);
	takes(x, &x->if_it_fails, t, SAID_IF_IT_FAILS);
	takes(x, &x->notes, t, SAID_NOTES);
}

static void view_assignment(const struct viewer *w, struct assignment *x, uint32_t i)
{
	const struct translation *t = speech_find(w->s, i);

	name_lines(w, x);
	name_judged(w, x, t);
	if (t)
		take_prose(x, t);
	else
		x->in_english = SAID_NOTHING;
}

struct model model_in(struct arena *a, const struct model *m, const struct language *l)
{
	const struct viewer w = { a, speech_of(m, l) };
	struct model v = *m;

	if (!w.s)
		return v;
	v.assignments = arena_array_of(a, m->assignments, m->nassignments,
	    sizeof *v.assignments);
	for (size_t i = 0; i < m->nassignments; i++)
		view_assignment(&w, &v.assignments[i], (uint32_t)i);
	v.skills = arena_array_of(a, m->skills, m->nskills, sizeof *v.skills);
	for (size_t i = 0; i < m->nskills; i++)
		v.skills[i].title = speech_titled(w.s, m->skills[i].id, m->skills[i].title);
	v.courses = arena_array_of(a, m->courses, m->ncourses, sizeof *v.courses);
	for (size_t i = 0; i < m->ncourses; i++)
		v.courses[i].title = speech_titled(w.s, m->courses[i].id, m->courses[i].title);
	return v;
}
