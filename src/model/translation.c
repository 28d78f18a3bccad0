#include "model/assignment.h"
#include "model/drawing.h"
#include "model/parts.h"
#include "model/standard.h"
#include "model/translation.h"

const struct language *translation_folder(str path)
{
	const str folder = STR("assignments/");
	const struct language *l;
	str rest;

	if (!str_starts(path, folder) || !str_ends(path, STR(".md")))
		return NULL;
	rest = str_sub(path, folder.n, path.n);
	for (size_t i = 0; (l = language_at(i)); i++) {
		str code = language_code(l), name = str_sub(rest, code.n + 1, rest.n);

		if (str_starts(rest, code) && rest.n > code.n && rest.p[code.n] == '/' &&
		    name.n > 3 && str_find_char(name, '/', 0) == name.n)
			return l;
	}
	return NULL;
}

/* ---- looking up ---- */

const struct speech *speech_of(const struct model *m, const struct language *l)
{
	for (size_t i = 0; i < m->nspeeches; i++)
		if (m->speeches[i].language == l)
			return &m->speeches[i];
	return NULL;
}

const struct language *speech_language(const struct model *m)
{
	const struct language *l;

	for (size_t i = 0; (l = language_at(i)); i++)
		if (speech_of(m, l))
			return l;
	return NULL;
}

const struct translation *speech_find(const struct speech *s, uint32_t assignment)
{
	return s && s->of[assignment] ? &s->v[s->of[assignment] - 1] : NULL;
}

static const struct plain_fact *own_word(const struct speech *s, str english)
{
	uint32_t i = english.n ? map_find(s->word, english) : MAP_NONE;

	return i == MAP_NONE ? NULL : &s->words.v[i];
}

str speech_word(const struct speech *s, str english)
{
	const struct plain_fact *own = own_word(s, english);

	return own ? own->text : word_str(s->language, english);
}

bool speech_has(const struct speech *s, str english)
{
	return own_word(s, english) || language_has(s->language, english);
}

str speech_titled(const struct speech *s, str id, str title)
{
	const struct plain_fact *own = own_word(s, id);

	return own ? own->text : speech_word(s, title);
}

const struct plain_fact *said_line(const struct said_lines *l, str key)
{
	for (size_t i = 0; i < l->n; i++)
		if (words_same(l->v[i].key, key))
			return &l->v[i];
	return NULL;
}

const struct drawing *said_picture(const struct translation *t, const struct drawing *d)
{
	for (size_t i = 0; i < t->npictures && d->picture; i++)
		if (t->pictures[i].picture == d->picture)
			return &t->pictures[i];
	return NULL;
}

/* ---- words ---- */

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

/* Units that have letters enough to look like words. */
static bool is_unit(str s)
{
	static const str units[] = { STR("deg"), STR("degF"), STR("degC"), STR("psi"),
		STR("psig"), STR("ksi"), STR("kPa"), STR("MPa"), STR("cfh"), STR("min"),
		STR("schedule") };

	for (size_t i = 0; i < sizeof units / sizeof *units; i++)
		if (str_eq(s, units[i]))
			return true;
	return false;
}

bool has_words(str s)
{
	for (size_t i = 0, end; i < s.n; i = end) {
		size_t small = 0;

		for (end = i; end < s.n && is_letter(s.p[end]); end++)
			small += s.p[end] >= 'a';
		if (small >= 2 && end - i >= 3 && !is_unit(str_sub(s, i, end)))
			return true;
		end += end == i;
	}
	return false;
}

bool criterion_has_words(const struct criterion *c)
{
	str set = c->standard ? c->standard->name : (str){ 0 };
	size_t at = set.n ? str_find(c->text, set, 0) : c->text.n;

	return has_words(str_sub(c->text, 0, at)) ||
	    has_words(str_sub(c->text, at + set.n, c->text.n));
}

void names_of(const struct assignment *x, void (*each)(void *user, str name, struct pos pos),
    void *user)
{
	for (size_t i = 0; i < x->npieces; i++) {
		each(user, x->pieces[i].name, x->pieces[i].pos);
		each(user, x->pieces[i].made, x->pieces[i].pos);
	}
	for (uint32_t i = 0; i < x->nfillers; i++)
		each(user, x->fillers[i].where, x->fillers[i].pos);
	for (size_t i = 0; i < x->npasses; i++)
		each(user, x->passes[i].name, x->passes[i].pos);
	for (size_t i = 0; i < x->ndrawings; i++)
		each(user, x->drawings[i].joint.restart, x->drawings[i].pos);
	for (size_t i = 0; i < x->ncriteria; i++)
		each(user, x->criteria[i].name, x->criteria[i].pos);
	for (size_t i = 0; i < x->ngrades; i++)
		each(user, x->grades[i].name, x->grades[i].pos);
}

/* ---- reading ---- */

/* The translation being read. */
struct saying {
	struct binder *b;
	struct speech *speech;
	struct translation *t;
	const struct assignment *x; /* the original */
};

static void push_line(struct saying *k, struct said_lines *l, const struct block *v)
{
	if (said_line(l, v->key))
		complain(k->b, FINDING_DUPLICATE_KEY, block_key_pos(v),
		    "\"%.*s\" stands twice here; this line is left out", STR_ARG(v->key));
	else if (!v->text.n)
		complain(k->b, FINDING_MISSING_FACT, block_key_pos(v),
		    "\"%.*s\" has no words; this line is left out", STR_ARG(v->key));
	else
		*ARENA_PUSH(k->b->arena, l->v, l->n, l->cap) = (struct plain_fact){
			.key = v->key, .text = v->text, .pos = block_pos(v, 0) };
}

/* Notes for trial the names of the original that have no line. */
static void offer_unsaid(struct saying *k, size_t from, const struct block *v, size_t n,
    const str *names, size_t nnames, const struct said_lines *said)
{
	str *unsaid = arena_array(k->b->arena, nnames, sizeof *unsaid);
	size_t nunsaid = 0;

	for (size_t i = 0; i < nnames; i++)
		if (!said_line(said, names[i]))
			unsaid[nunsaid++] = names[i];
	for (size_t i = 0; k->b->f->n > from && i < n; i++)
		if (v[i].kind == BLOCK_FACT)
			offer_missing(k->b, from, block_key_pos(&v[i]), v[i].key, unsaid,
			    nunsaid);
}

/* Lines whose keys are among the n names of the original. */
static void read_lines(struct saying *k, const struct block *v, size_t n, const str *names,
    size_t nnames, struct said_lines *out)
{
	struct finding *d = NULL;
	size_t from = k->b->f->n;

	for (size_t i = 0; i < n; i++) {
		size_t at = 0;

		if (v[i].kind != BLOCK_FACT || v[i].level > 1) {
			complain_block(k->b, &v[i],
			    "write \"- **Key:** words\" with the key in English");
			continue;
		}
		while (at < nnames && !words_same(names[at], v[i].key))
			at++;
		if (at < nnames) {
			push_line(k, out, &v[i]);
			continue;
		}
		if (!nnames && d) {
			finding_relate(k->b->f, d, block_key_pos(&v[i]))->label = v[i].key;
			continue;
		}
		k->t->astray = true;
		d = complain(k->b, FINDING_UNKNOWN_KEY, block_key_pos(&v[i]), nnames
		    ? "the original has no line \"%.*s\" here; this line is left out"
		    : "the original has no lines here, such as \"%.*s\"; they are left out",
		    STR_ARG(v[i].key));
		if (!offer_likely(k->b, d, v[i].key, names, nnames).n)
			finding_repair(k->b->f, d, "delete the line, or add \"%.*s\" to the "
			    "original", STR_ARG(v[i].key));
	}
	offer_unsaid(k, from, v, n, names, nnames, out);
}

/* Keys of plain facts, criteria and passes all stand in structs of their own. */
#define NAMES_OF(k, vector, count, name, out)                                       \
	do {                                                                       \
		(out) = arena_array((k)->b->arena, (k)->x->count, sizeof *(out));  \
		for (size_t nth = 0; nth < (k)->x->count; nth++)                   \
			(out)[nth] = (k)->x->vector[nth].name;                     \
	} while (0)

static void read_fact_lines(struct saying *k, const struct block *v, size_t n)
{
	str *names;

	NAMES_OF(k, facts, nfacts, key, names);
	read_lines(k, v, n, names, k->x->nfacts, &k->t->facts);
}

static void read_acceptance(struct saying *k, const struct block *v, size_t n)
{
	str *names;

	NAMES_OF(k, criteria, ncriteria, name, names);
	read_lines(k, v, n, names, k->x->ncriteria, &k->t->criteria);
	k->t->lost_criteria = n - k->t->criteria.n;
}

static void read_pass_lines(struct saying *k, const struct block *v, size_t n)
{
	str *names;

	NAMES_OF(k, passes, npasses, name, names);
	read_lines(k, v, n, names, k->x->npasses, &k->t->passes);
}

/* Sentences, and pictures with their words, by which pictures are told apart; lines with a
 * key say what a word in a picture means. */
static void read_captions(struct saying *k, const struct block *v, size_t n)
{
	struct translation *t = k->t;
	struct block *text = arena_array(k->b->arena, n, sizeof *text);
	size_t ntext = 0;

	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_PICTURE)
			read_picture_block(k->b, &v[i], ARENA_PUSH(k->b->arena, t->pictures,
			    t->npictures, t->pictures_cap));
		else if (v[i].kind == BLOCK_FACT)
			push_line(k, &t->legend, &v[i]);
		else
			text[ntext++] = v[i];
	prose_read(k->b, text, ntext, &t->parts[SAID_DRAWING]);
}

/* The reader of steps fills an assignment; this one is for that alone. */
static void read_procedure(struct saying *k, const struct block *v, size_t n)
{
	struct assignment steps = { .id = k->x->id }, *kept = k->b->a;

	k->b->a = &steps;
	k->b->language = k->speech->language;
	read_steps(k->b, NULL, v, n);
	k->b->language = NULL;
	k->b->a = kept;
	k->t->steps = steps.steps;
	k->t->nsteps = steps.nsteps;
}

static const struct {
	str name;
	enum said_part part;
	void (*read)(struct saying *k, const struct block *v, size_t n); /* null: prose */
} sections[] = {
	{ STR("Procedure"), SAID_STEPS, read_procedure },
	{ STR("Acceptance"), SAID_ACCEPTANCE, read_acceptance },
	{ STR("Passes"), SAID_PARTS, read_pass_lines },
	{ STR("Bring"), SAID_BRING, NULL },
	{ STR("Cautions"), SAID_CAUTIONS, NULL },
	{ STR("If it fails"), SAID_IF_IT_FAILS, NULL },
	{ STR("Notes"), SAID_NOTES, NULL },
	{ STR("Drawing"), SAID_DRAWING, read_captions },
};
enum { SECTIONS = sizeof sections / sizeof *sections };

static void complain_section(struct saying *k, const struct block *h)
{
	struct finding *d = complain(k->b, FINDING_UNKNOWN_SECTION, h->pos,
	    "\"%.*s\" is not a section of a translation; what stands under it is left out",
	    STR_ARG(h->text));
	str names[SECTIONS];

	for (size_t i = 0; i < SECTIONS; i++)
		names[i] = sections[i].name;
	k->t->astray = true;
	offer_likely(k->b, d, h->text, names, SECTIONS);
	if (!d->repair.n)
		finding_repair(k->b->f, d, "leave it out: it comes from the original, and names "
		    "are translated once for all under # Words");
}

static void offer_sections(struct saying *k, size_t from, const struct block *h,
    const bool *there)
{
	str missing[SECTIONS];
	size_t n = 0;

	for (size_t row = 0; row < SECTIONS; row++)
		if (!there[row])
			missing[n++] = sections[row].name;
	offer_missing(k->b, from, h->pos, h->text, missing, n);
}

static void read_section(struct saying *k, const struct block *v, size_t n, bool *there)
{
	size_t row = 0;

	while (row < SECTIONS && !words_same(sections[row].name, v->text))
		row++;
	if (row == SECTIONS) {
		complain_section(k, v);
	} else if (there[row]) {
		finding_repair(k->b->f, complain(k->b, FINDING_DUPLICATE_SECTION, v->pos,
		    "\"%.*s\" stands twice; what stands under this one is left out",
		    STR_ARG(v->text)), "write these lines under the first, or delete them");
	} else {
		there[row] = true;
		if (sections[row].read)
			sections[row].read(k, v + 1, n - 1);
		else
			prose_read(k->b, v + 1, n - 1, &k->t->parts[sections[row].part]);
	}
}

/* v[0] is the heading of the assignment. */
static void read_one(struct saying *k, const struct block *v, size_t n)
{
	struct assignment held = { .id = k->x->id };
	size_t at = blocks_until(v, n, 1, 2), from = k->b->f->n;
	bool there[SECTIONS] = { false };

	k->b->a = &held; /* Complaints name the assignment. */
	read_fact_lines(k, v + 1, at - 1);
	for (size_t i = at, end; i < n; i = end) {
		end = blocks_until(v, n, i + 1, 2);
		read_section(k, v + i, end - i, there);
	}
	for (; k->b->f->n > from && at < n; at = blocks_until(v, n, at + 1, 2))
		offer_sections(k, from, &v[at], there);
	k->b->a = NULL;
}

static void complain_unknown(struct binder *b, const struct block *v, str id)
{
	const struct model *m = b->model;
	str *ids = arena_array(b->arena, m->nassignments, sizeof *ids);
	struct finding *d = complain(b, FINDING_UNKNOWN_TRANSLATION, v->pos,
	    "%.*s is translated here, but no file defines it; the translation is left out",
	    STR_ARG(id));

	d->scope = SCOPE_ASSIGNMENTS; /* Holds nothing back. */
	d->assignment = id;
	for (size_t i = 0; i < m->nassignments; i++)
		ids[i] = m->assignments[i].id;
	offer_likely(b, d, id, ids, m->nassignments);
	if (!d->repair.n)
		finding_repair(b->f, d, "delete it, or give it the id of its original");
}

static void complain_title(struct binder *b, const struct block *v)
{
	struct finding *d = complain(b, FINDING_BAD_ID, v->pos,
	    "\"%.*s\" is neither Words nor the id of an assignment; what stands under it is left "
	    "out", STR_ARG(v->text));
	str words = STR("Words");

	if (offer_likely(b, d, v->text, &words, 1).n)
		return;
	finding_repair(b->f, d, "write \"# SM-20: title\" or \"# Words\"");
	offer_guesses(b, d, v->text, &words, 1, ANY_DISTANCE);
}

static void read_heading(struct binder *b, struct speech *s, const struct block *v, size_t n)
{
	const struct translation *first;
	struct said title;
	size_t used;
	str id = id_of_assignment(b->arena, v->text, &used);
	uint32_t x;

	if (!id.n || !title_after(said_all(v), used, &title)) {
		complain_title(b, v);
		return;
	}
	x = map_find(b->model->assignment_by_id, id);
	if (x == MAP_NONE) {
		complain_unknown(b, v, id);
		return;
	}
	first = speech_find(s, x);
	if (first) {
		struct finding *d = complain(b, FINDING_DUPLICATE_ID, v->pos,
		    "%.*s is translated twice; this one is left out", STR_ARG(id));

		d->assignment = id;
		finding_relate(b->f, d, first->pos)->label = STR("the first counts");
		finding_repair(b->f, d, "delete one of them");
		return;
	}
	struct saying k = { b, s, ARENA_PUSH(b->arena, s->v, s->n, s->cap),
		&b->model->assignments[x] };

	s->of[x] = (uint32_t)s->n;
	*k.t = (struct translation){ .assignment = x, .title = title.s, .pos = v->pos };
	read_one(&k, v, n);
}

static void read_words(struct binder *b, struct speech *s, const struct block *v, size_t n)
{
	struct saying k = { b, s, NULL, NULL };

	for (size_t i = 1; i < n; i++) {
		size_t before = s->words.n;

		if (v[i].kind == BLOCK_HEADING)
			continue; /* Headings put the words in order for who reads them. */
		if (v[i].kind != BLOCK_FACT || v[i].level > 1) {
			complain_block(b, &v[i], "write \"- **Fit-up:** Ajuste\"");
			continue;
		}
		push_line(&k, &s->words, &v[i]);
		if (s->words.n > before)
			map_add(s->word, v[i].key, (uint32_t)before);
	}
}

static void read_file(struct binder *b, struct speech *s, const struct record_file *file)
{
	size_t end;

	for (size_t i = 0; i < file->n; i = end) {
		end = blocks_until(file->v, file->n, i + 1, 1);
		if (file->v[i].kind == BLOCK_HEADING && words_same(file->v[i].text, STR("Words")))
			read_words(b, s, &file->v[i], end - i);
		else
			read_heading(b, s, &file->v[i], end - i);
	}
}

static struct speech *speech_at(struct binder *b, const struct language *l)
{
	struct model *m = b->model;
	struct speech *s;

	for (size_t i = 0; i < m->nspeeches; i++)
		if (m->speeches[i].language == l)
			return &m->speeches[i];
	s = &m->speeches[m->nspeeches++];
	s->language = l;
	s->of = arena_array(b->arena, m->nassignments + 1, sizeof *s->of);
	s->word = map_new(b->arena, true);
	return s;
}

void translation_read(struct binder *b, const struct record_file *file)
{
	const struct language *l = translation_folder(b->model->sources->v[file->file].path);
	size_t languages = 0;

	while (language_at(languages))
		languages++;
	if (!b->model->speeches)
		b->model->speeches = arena_array(b->arena, languages, sizeof *b->model->speeches);
	read_file(b, speech_at(b, l), file);
}
