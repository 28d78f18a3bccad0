#include "check/translation.h"

#include "base/buf.h"
#include "check/figures.h"
#include "model/words.h"

/* One translation beside its original. */
struct pair {
	struct arena *scratch;
	struct findings *f;
	const struct speech *s;
	const struct translation *t;
	const struct assignment *x;
};

static struct finding *differs(struct pair *p, struct pos here, struct pos there,
    const char *format, ...) __attribute__((format(printf, 4, 5)));

static struct finding *differs(struct pair *p, struct pos here, struct pos there,
    const char *format, ...)
{
	struct finding *d;
	va_list ap;

	va_start(ap, format);
	d = finding_addv(p->f, FINDING_TRANSLATION_DIFFERS, here, format, &ap);
	va_end(ap);
	d->assignment = p->x->id;
	finding_relate(p->f, d, there)->label = STR("the original");
	return d;
}

/* One figure in place of another: the original may be the one that is wrong. */
static void note_figures(struct pair *p, struct finding *d, const struct figures *here,
    const struct figures *original, str what)
{
	struct slip *slip;
	str own, other;

	if (here->n != 1 || original->n != 1)
		return;
	own = here->v[0].text;
	other = original->v[0].text;
	slip = finding_slip(p->f, d, d->pos, own, other);
	slip->read = true;
	slip->say = str_format(p->f->arena, "write %.*s in the translation of %.*s",
	    STR_ARG(other), STR_ARG(what));
	slip = finding_slip(p->f, d, d->related[0].pos, other, own);
	slip->read = true;
	slip->say = str_format(p->f->arena, "write %.*s at %.*s of %.*s, as its translation "
	    "says", STR_ARG(own), STR_ARG(what), STR_ARG(p->x->id));
}

/* Tells what only one of two texts has. what: "step 4", "the title". */
static void compare(struct pair *p, struct figures *here, struct figures *original,
    struct pos pos, struct pos there, str what)
{
	struct figures more = { 0 }, less = { 0 };
	struct finding *d;

	if (!figures_differ(p->scratch, here, original, &more, &less))
		return;
	if (more.n && less.n)
		d = differs(p, pos, there, "%.*s of %.*s says %.*s where the original says %.*s",
		    STR_ARG(what), STR_ARG(p->x->id), STR_ARG(figures_list(p->scratch, &more)),
		    STR_ARG(figures_list(p->scratch, &less)));
	else if (less.n)
		d = differs(p, pos, there, "%.*s of %.*s does not say %.*s, which the original does",
		    STR_ARG(what), STR_ARG(p->x->id), STR_ARG(figures_list(p->scratch, &less)));
	else
		d = differs(p, pos, there, "%.*s of %.*s says %.*s, which the original does not",
		    STR_ARG(what), STR_ARG(p->x->id), STR_ARG(figures_list(p->scratch, &more)));
	finding_repair(p->f, d, "write the figures of the original, in digits and with its units");
	if (more.n && less.n)
		note_figures(p, d, &more, &less, what);
}

static void compare_text(struct pair *p, str here, str original, struct pos pos,
    struct pos there, str what)
{
	struct figures a = { 0 }, b = { 0 };

	figures_add(p->scratch, &a, here);
	figures_add(p->scratch, &b, original);
	compare(p, &a, &b, pos, there, what);
}

static void compare_para(struct pair *p, const struct para *here, const struct para *original,
    str what)
{
	struct figures a = { 0 }, b = { 0 };

	figures_add_para(p->scratch, &a, here);
	figures_add_para(p->scratch, &b, original);
	compare(p, &a, &b, here->pos, original->pos, what);
}

/* Paragraph by paragraph where both have as many, else all at once. */
static void compare_prose(struct pair *p, const struct prose *here,
    const struct prose *original, const char *what)
{
	struct figures a = { 0 }, b = { 0 };

	if (!here->n || !original->n)
		return;
	for (size_t i = 0; i < here->n && here->n == original->n; i++)
		compare_para(p, &here->v[i], &original->v[i], str_of(what));
	if (here->n == original->n)
		return;
	figures_add_prose(p->scratch, &a, here);
	figures_add_prose(p->scratch, &b, original);
	compare(p, &a, &b, here->v[0].pos, original->v[0].pos, str_of(what));
}

/* What keeps a student safe is said in as many entries: figures alone do not show that a
 * caution is missing, and where one is, they differ for that. */
static void compare_entries(struct pair *p, const struct prose *here,
    const struct prose *original, const char *what)
{
	struct finding *d;

	if (!here->n || here->n == original->n) {
		compare_prose(p, here, original, what);
		return;
	}
	d = differs(p, here->v[0].pos, original->n ? original->v[0].pos : p->x->pos, "%s of "
	    "%.*s has %zu %s here and %zu in the original", what, STR_ARG(p->x->id), here->n,
	    here->n == 1 ? "entry" : "entries", original->n);
	finding_repair(p->f, d, "give it the entries of the original, one for one");
}

static void compare_step(struct pair *p, size_t i)
{
	const struct step *here = &p->t->steps[i], *there = &p->x->steps[i];
	str stop = word(p->s->language, "Stop");
	struct finding *d;

	if (here->hold.n && !there->hold.n) {
		d = differs(p, here->pos, there->pos, "step %zu of %.*s is a hold point here and "
		    "none in the original", i + 1, STR_ARG(p->x->id));
		finding_repair(p->f, d, "take the bold \"%.*s\" off it", STR_ARG(here->hold));
	} else if (!here->hold.n && there->hold.n) {
		d = differs(p, here->pos, there->pos, "step %zu of %.*s is a hold point in the "
		    "original and none here", i + 1, STR_ARG(p->x->id));
		finding_repair(p->f, d, "begin it with \"**%.*s, ...:**\"", STR_ARG(stop));
	}
	compare_para(p, &here->para, &there->para,
	    str_format(p->scratch, "step %zu", i + 1));
}

static void compare_steps(struct pair *p)
{
	struct finding *d;

	if (!p->t->nsteps || !p->x->nsteps)
		return;
	if (p->t->nsteps != p->x->nsteps) {
		d = differs(p, p->t->steps[0].pos, p->x->steps[0].pos, "%.*s has %zu step%s here and "
		    "%zu in the original", STR_ARG(p->x->id), p->t->nsteps,
		    p->t->nsteps == 1 ? "" : "s", p->x->nsteps);
		finding_repair(p->f, d, "give it the steps of the original, one for one");
		return;
	}
	for (size_t i = 0; i < p->x->nsteps; i++)
		compare_step(p, i);
}

static void compare_lines(struct pair *p)
{
	for (size_t i = 0; i < p->x->ncriteria; i++) {
		const struct criterion *c = &p->x->criteria[i];
		const struct plain_fact *line = said_line(&p->t->criteria, c->name);

		if (line)
			compare_text(p, line->text, c->text, line->pos, c->pos, c->name);
	}
	for (size_t i = 0; i < p->x->nfacts; i++) {
		const struct plain_fact *own = &p->x->facts[i];
		const struct plain_fact *line = said_line(&p->t->facts, own->key);

		if (line)
			compare_text(p, line->text, own->text, line->pos, own->pos, own->key);
	}
	for (size_t i = 0; i < p->x->npasses; i++) {
		const struct pass *own = &p->x->passes[i];
		const struct plain_fact *line = said_line(&p->t->passes, own->name);

		if (line)
			compare_text(p, line->text, own->text, line->pos, own->pos, own->name);
	}
}

/* All captions as one text: blocks that have one stand in the same order. */
static void compare_captions(struct pair *p)
{
	const struct prose *here = &p->t->parts[SAID_DRAWING];
	size_t at = 0, n = 0;

	for (size_t i = 0; i < p->x->ndrawings; i++)
		n += p->x->drawings[i].caption.n;
	if (here->n != n && here->n) {
		struct finding *d = differs(p, here->v[0].pos, p->x->pos, "Drawing of %.*s has %zu "
		    "paragraphs here and %zu in the original", STR_ARG(p->x->id), here->n, n);

		finding_repair(p->f, d, "translate the sentences above the blocks, one for one");
		return;
	}
	for (size_t i = 0; i < p->x->ndrawings && here->n; i++)
		for (size_t k = 0; k < p->x->drawings[i].caption.n; k++)
			compare_para(p, &here->v[at++], &p->x->drawings[i].caption.v[k],
			    STR("Drawing"));
}

static void compare_pictures(struct pair *p)
{
	for (size_t i = 0; i < p->x->ndrawings; i++) {
		const struct drawing *own = &p->x->drawings[i], *said = said_picture(p->t, own);

		if (!said)
			continue;
		compare_text(p, said->words, own->words, said->pos, own->pos,
		    STR("the picture"));
		compare_text(p, said->title, own->title, said->pos, own->pos,
		    STR("the picture's title"));
	}
}

/* ---- what is missing ---- */

struct missing { const char *name; bool yes; };

/* Several lines that were told may be those that are missing; of one alone a trial shows
 * it. */
static bool acceptance_is_missing(const struct pair *p)
{
	size_t n = 0, lost = p->t->lost_criteria;

	for (size_t i = 0; i < p->x->ncriteria; i++)
		n += criterion_has_words(&p->x->criteria[i]) &&
		    !said_line(&p->t->criteria, p->x->criteria[i].name) &&
		    !speech_has(p->s, p->x->criteria[i].text);
	return n > (lost > 1 ? lost : 0);
}

/* A picture whose file is not there was told, and may be the one that is looked for. */
static size_t lost_pictures(const struct translation *t)
{
	size_t n = 0;

	for (size_t i = 0; i < t->npictures; i++)
		n += !t->pictures[i].picture;
	return n;
}

static bool captions_are_missing(const struct pair *p)
{
	size_t unsaid = 0;

	for (size_t i = 0; i < p->x->ndrawings; i++) {
		const struct drawing *d = &p->x->drawings[i];

		if (d->caption.n && !p->t->parts[SAID_DRAWING].n)
			return true;
		unsaid += d->picture && has_words(d->words) && !said_picture(p->t, d);
	}
	return unsaid > lost_pictures(p->t);
}

static void tell_parts(struct pair *p, enum finding_name name, str parts)
{
	struct finding *d = finding_add(p->f, name, p->t->pos, "%.*s has no %.*s for: %.*s",
	    STR_ARG(p->x->id), STR_ARG(language_name(p->s->language)), STR_ARG(parts));

	d->assignment = p->x->id;
	finding_relate(p->f, d, p->x->pos)->label = STR("the original");
	finding_repair(p->f, d, "translate it; until then it prints in English, with a mark");
}

/* Each by itself where a line or heading was not understood: one of them may be that. */
static void tell_missing(struct pair *p, enum finding_name name, const struct missing *v,
    size_t n)
{
	struct buf b = { .arena = p->scratch };

	for (size_t i = 0; i < n; i++) {
		if (!v[i].yes)
			continue;
		if (p->t->astray)
			tell_parts(p, name, str_of(v[i].name));
		else
			buf_addf(&b, "%s%s", b.n ? ", " : "", v[i].name);
	}
	if (b.n)
		tell_parts(p, name, buf_str(&b));
}

/* On a safety card every section guards somebody; elsewhere the cautions do. */
static void check_missing(struct pair *p)
{
	const struct translation *t = p->t;
	const struct assignment *x = p->x;
	const struct missing v[] = {
		{ "Cautions", x->cautions.n && !t->parts[SAID_CAUTIONS].n },
		{ "the title", !t->title.n },
		{ "Procedure", x->nsteps && !t->nsteps },
		{ "Acceptance", acceptance_is_missing(p) },
		{ "Drawing", captions_are_missing(p) },
		{ "Bring", x->bring.n && !t->parts[SAID_BRING].n },
		{ "If it fails", x->if_it_fails.n && !t->parts[SAID_IF_IT_FAILS].n },
		{ "Notes", x->notes.n && !t->parts[SAID_NOTES].n },
	};
	size_t n = sizeof v / sizeof *v, safety = x->kind == KIND_SAFETY ? n : 1;

	tell_missing(p, FINDING_UNTRANSLATED_SAFETY, v, safety);
	tell_missing(p, FINDING_UNTRANSLATED_SECTION, v + safety, n - safety);
}

/* ---- names ---- */

/* Names without a word, each once, at the first place that prints it. */
struct nameless {
	struct arena *scratch;
	const struct speech *s;
	struct map *seen;
	str *v;
	size_t n, cap;
	struct pos first;
	str first_in;
	const struct assignment *x;
};

static void look_up(void *user, str name, struct pos pos)
{
	struct nameless *k = user;

	if (!name.n || !has_words(name) || speech_has(k->s, name) ||
	    map_find(k->seen, name) != MAP_NONE)
		return;
	map_add(k->seen, name, (uint32_t)k->n);
	if (!k->n) {
		k->first = pos;
		k->first_in = k->x->id;
	}
	*ARENA_PUSH(k->scratch, k->v, k->n, k->cap) = name;
}

static void look_up_skills(struct nameless *k, const struct model *m)
{
	for (size_t i = 0; i < k->x->nneeds; i++)
		for (size_t j = 0; j < k->x->needs[i].n; j++) {
			const struct skill_at *at = &k->x->needs[i].v[j];
			const struct skill *skill = at->skill == NONE ? NULL : &m->skills[at->skill];

			if (skill && str_eq(speech_titled(k->s, skill->id, skill->title),
			    skill->title))
				look_up(k, skill->id.n ? skill->title : (str){ 0 }, at->pos);
		}
}

static void tell_names(struct nameless *k, struct findings *f)
{
	enum { SHOWN = 5 };
	struct buf b = { .arena = k->scratch };
	struct finding *d;

	for (size_t i = 0; i < k->n && i < SHOWN; i++)
		buf_addf(&b, "%s\"%.*s\"", i ? ", " : "", STR_ARG(k->v[i]));
	if (k->n > SHOWN)
		buf_addf(&b, " and %zu more", k->n - SHOWN);
	d = finding_add(f, FINDING_UNTRANSLATED_WORDS, k->first,
	    "translated sheets print names without a word in %.*s: %.*s",
	    STR_ARG(language_name(k->s->language)), (int)b.n, b.p);
	d->assignment = k->first_in;
	finding_repair(f, d, "add lines such as \"- **%.*s:** ...\" under \"# Words\" in a file of "
	    "assignments/%.*s", STR_ARG(k->v[0]), STR_ARG(language_code(k->s->language)));
}

/* A machine that shop.md does not have is told, and needs no word before it has one. */
static bool machines_are_known(const struct model *m, const struct plain_fact *f)
{
	str rest = f->text, part;

	while (m->nmachines && str_eq(f->key, STR("Machines")) && str_next(&rest, ',', &part)) {
		size_t i = 0;

		while (i < m->nmachines && !words_same(m->machines[i].name, str_trim(part)))
			i++;
		if (i == m->nmachines)
			return false;
	}
	return true;
}

static void check_names(struct arena *scratch, const struct model *m, const struct speech *s,
    struct findings *f)
{
	struct nameless k = { .scratch = scratch, .s = s, .seen = map_new(scratch, true) };

	for (size_t i = 0; i < m->nassignments; i++) {
		const struct translation *t = speech_find(s, (uint32_t)i);

		if (!t)
			continue;
		k.x = &m->assignments[i];
		names_of(k.x, look_up, &k);
		for (size_t j = 0; j < k.x->nfacts; j++)
			/* A station is kept as a fact only where shop.md has none. */
			if (!said_line(&t->facts, k.x->facts[j].key) &&
			    !str_eq(k.x->facts[j].key, STR("Station")) &&
			    machines_are_known(m, &k.x->facts[j]))
				look_up(&k, k.x->facts[j].text, k.x->facts[j].pos);
		look_up_skills(&k, m);
	}
	if (k.n)
		tell_names(&k, f);
}

void translations_check(struct arena *scratch, const struct model *m, struct findings *f)
{
	for (size_t i = 0; i < m->nspeeches; i++) {
		const struct speech *s = &m->speeches[i];

		for (size_t k = 0; k < s->n; k++) {
			struct pair p = { scratch, f, s, &s->v[k], &m->assignments[s->v[k].assignment] };

			compare_text(&p, p.t->title, p.x->title, p.t->pos, p.x->pos, STR("the title"));
			compare_steps(&p);
			compare_lines(&p);
			compare_captions(&p);
			compare_pictures(&p);
			compare_entries(&p, &p.t->parts[SAID_BRING], &p.x->bring, "Bring");
			compare_entries(&p, &p.t->parts[SAID_CAUTIONS], &p.x->cautions,
			    "Cautions");
			compare_prose(&p, &p.t->parts[SAID_IF_IT_FAILS], &p.x->if_it_fails,
			    "If it fails");
			compare_prose(&p, &p.t->parts[SAID_NOTES], &p.x->notes, "Notes");
			check_missing(&p);
		}
		check_names(scratch, m, s, f);
	}
}
