/* Headings, names and ids by what is missed elsewhere under another name. */
#include "check/remedy_seek.h"

#include "base/buf.h"
#include "model/translation.h"
#include "model/weldment.h"

/* Words tried for one: more of them are seldom the one. */
enum { WORDS_MOST = 6 };

struct word_list { str v[WORDS_MOST]; size_t n; };

static void list_add(struct word_list *l, str word)
{
	for (size_t i = 0; i < l->n; i++)
		if (str_eq_nocase(l->v[i], word))
			return;
	if (word.n && l->n < WORDS_MOST)
		l->v[l->n++] = word;
}

/* What findings of a name say is known nowhere. */
static struct word_list unknown_words(const struct seeker *s, enum finding_name name)
{
	struct word_list l = { .n = 0 };

	for (size_t i = 0; i < s->f->n; i++)
		if (s->f->v[i].name == name && !s->f->v[i].waived && s->f->v[i].slips)
			list_add(&l, s->f->v[i].slips->wrong);
	return l;
}

static void meant(const struct seeker *s, struct remedy *r, str word)
{
	r->say = str_format(s->arena, "write \"%.*s\" if that is what is meant", STR_ARG(word));
}

static void replace_word(struct seeker *s, struct pos pos, str wrong, str right)
{
	struct remedy *r = seek_replace(s, pos, wrong, right);

	if (!r)
		return;
	r->near = likely_word(wrong, &right, 1).n;
	meant(s, r, right);
}

static void replace_heading(struct seeker *s, struct pos pos, str line)
{
	struct edit e = { EDIT_REPLACE, pos.file, pos.line, line, 0 };
	struct remedy *r = seek_add(s, &e, 1);

	r->names_cause = true;
	meant(s, r, line);
}

/* ---- skills ---- */

/* The skills that are missed: nobody teaches or assesses them as far as they are needed. */
static struct word_list missed_skills(const struct seeker *s)
{
	struct word_list l = { .n = 0 };

	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (d->waived || d->name == FINDING_UNKNOWN_SKILL)
			continue;
		if (d->name == FINDING_UNTAUGHT_SKILL || d->name == FINDING_NEVER_TAUGHT ||
		    d->name == FINDING_NEVER_ASSESSED)
			list_add(&l, d->skill);
		for (size_t k = 0; d->name == FINDING_NEEDS_LOOP && k < d->nrelated; k++)
			list_add(&l, d->related[k].skill);
	}
	return l;
}

/* On one sheet the word is wrong; what several sheets say is rather wrong in skills.md. */
static void skill_on_sheet(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	struct word_list l = missed_skills(s);

	for (size_t i = 0; i < d->nrelated; i++)
		if (str_eq(d->related[i].label, STR("the same word")))
			return;
	for (size_t i = 0; d->slips && i < l.n; i++)
		replace_word(s, d->pos, d->slips->wrong, l.v[i]);
}

/* The key of a fact as it is written. */
static str key_at(const struct seeker *s, struct pos pos)
{
	str line = seek_line(s, pos);
	size_t from = seek_byte(line, pos.col);

	return str_sub(line, from, str_find_char(line, ':', from));
}

static void skill_in_list(struct seeker *s)
{
	struct pos pos = seek_finding(s)->pos;
	struct word_list l = unknown_words(s, FINDING_UNKNOWN_SKILL);

	for (size_t i = 0; i < l.n; i++)
		replace_word(s, pos, key_at(s, pos), l.v[i]);
}

/* ---- headings ---- */

/* A heading of shop.md for a name that sheets use. */
static void shop_heading(struct seeker *s, struct pos pos)
{
	static const char *const kinds[] = { "Machine", "Station", "Section" };
	struct word_list l = unknown_words(s, FINDING_UNKNOWN_WORD);

	for (size_t i = 0; i < l.n; i++)
		for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++)
			replace_heading(s, pos, str_format(s->arena, "## %s %.*s", kinds[k],
			    STR_ARG(l.v[i])));
}

static void unknown_heading(struct seeker *s)
{
	if (seek_is_in(s, seek_finding(s)->pos, "shop.md"))
		shop_heading(s, seek_finding(s)->pos);
}

/* Of two with one name the second is the one that was forgotten, or the first. */
static void same_name(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	struct pos pos[2] = { d->pos, d->nrelated ? d->related[0].pos : d->pos };
	struct word_list l = unknown_words(s, FINDING_UNKNOWN_SKILL);

	for (size_t k = 0; k < 2; k++) {
		if (seek_is_in(s, d->pos, "shop.md"))
			shop_heading(s, pos[k]);
		for (size_t i = 0; seek_is_in(s, d->pos, "skills.md") && i < l.n; i++)
			replace_word(s, pos[k], key_at(s, pos[k]), l.v[i]);
	}
}

/* The title of a sheet for which program.md has a line, and a heading of skills.md for an
 * outcome that a credential names. */
static void lost_id(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	bool outcome = seek_is_in(s, d->pos, "skills.md");
	struct word_list l = outcome ? unknown_words(s, FINDING_BAD_CREDENTIAL)
	    : (struct word_list){ .n = 0 };
	str line = seek_line(s, d->pos), text = str_sub(line, seek_byte(line, d->pos.col), line.n);

	for (size_t i = 0; i < d->nrelated; i++)
		if (d->related[i].listed && d->related[i].name == FINDING_UNKNOWN_ASSIGNMENT)
			list_add(&l, d->related[i].assignment);
	for (size_t i = 0; !outcome && i < s->f->n; i++)
		if (s->f->v[i].name == FINDING_UNKNOWN_ASSIGNMENT)
			list_add(&l, s->f->v[i].assignment);
	for (size_t i = 0; i < l.n; i++)
		replace_heading(s, d->pos, str_format(s->arena, "%s %.*s: %.*s",
		    outcome ? "##" : "#", STR_ARG(l.v[i]), STR_ARG(text)));
}

/* ---- customs ---- */

/* Words of customs.md that are no custom, and names that are none of a finding: habits and
 * findings that stand, the latter where the waiver names the sheet. */
static void custom_name(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	str line = seek_line(s, d->pos);
	struct word_list l = { .n = 0 };

	if (!d->slips || d->slips->right.n || !seek_is_in(s, d->pos, "customs.md"))
		return;
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *e = &s->f->v[i];

		if (e->waived)
			continue;
		list_add(&l, str_of(finding_info(e->name)->custom));
		if (e->assignment.n && str_find(line, e->assignment, 0) < line.n)
			list_add(&l, str_of(finding_info(e->name)->name));
	}
	for (size_t i = 0; i < l.n; i++)
		replace_word(s, d->pos, d->slips->wrong, l.v[i]);
}

/* ---- translations ---- */

/* What stands at a line of the original stands for the slip that is made there. */
static void name_original(struct seeker *s, struct remedy *r, struct pos pos)
{
	for (uint32_t i = 0; i < s->f->n; i++)
		if (s->f->v[i].pos.file == pos.file && s->f->v[i].pos.line == pos.line &&
		    !s->f->v[i].waived) {
			r->finding = i;
			return;
		}
}

static void rename_criterion(struct seeker *s, const struct assignment *x,
    const struct criterion *c, str key)
{
	struct remedy *r = seek_replace(s, c->pos, c->name, key);

	if (!r)
		return;
	r->say = str_format(s->arena, "write \"%.*s\" in place of \"%.*s\" in Acceptance of "
	    "%.*s, if that is what is meant", STR_ARG(key), STR_ARG(c->name), STR_ARG(x->id));
	name_original(s, r, c->pos);
}

/* A line of a translation for which the original has none: the original may have another
 * name there that the translation does not have. */
static void lost_original(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct speech *speech = NULL;
	const struct translation *t;
	uint32_t x = map_find(s->m->assignment_by_id, d->assignment);

	for (size_t i = 0; i < s->m->nspeeches && !speech; i++)
		if (s->m->sources && d->pos.file < s->m->sources->n && translation_folder(
		    s->m->sources->v[d->pos.file].path) == s->m->speeches[i].language)
			speech = &s->m->speeches[i];
	t = x == MAP_NONE ? NULL : speech_find(speech, x);
	if (!t || !d->slips)
		return;
	for (size_t i = 0; i < s->m->assignments[x].ncriteria; i++) {
		const struct criterion *c = &s->m->assignments[x].criteria[i];

		if (!said_line(&t->criteria, c->name))
			rename_criterion(s, &s->m->assignments[x], c, d->slips->wrong);
	}
}

/* ---- sheets ---- */

/* The repair of a name that stands elsewhere than the finding. */
static void replace_name(struct seeker *s, struct pos pos, str wrong, str right,
    const char *section)
{
	struct remedy *r = seek_replace(s, pos, wrong, right);

	if (r)
		r->say = str_format(s->arena, "write \"%.*s\" under %s in place of \"%.*s\"",
		    STR_ARG(right), section, STR_ARG(wrong));
}

/* A bend that the code asks for and that Acceptance seems to misspell. */
static void lost_bend(struct seeker *s)
{
	static const str bends[] = { STR("Face bend"), STR("Root bend"), STR("Side bend") };
	enum { BENDS = sizeof bends / sizeof *bends };
	const struct assignment *a = seek_assignment(s);

	for (size_t i = 0; a && i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];
		str likely = likely_word(c->name, bends, BENDS);

		if (likely.n && str_distance(c->name, likely, 1))
			replace_name(s, c->pos, c->name, likely, "Acceptance");
	}
}

static bool is_drawn(const struct assignment *a, uint32_t piece)
{
	for (size_t i = 0; i < a->ndrawings; i++)
		for (size_t k = 0; a->drawings[i].kind == DRAWING_WELDMENT &&
		    k < a->drawings[i].weldment->n; k++)
			if (a->drawings[i].weldment->v[k].piece == piece)
				return true;
	return false;
}

/* A member without its piece, where a piece without a member stands under another name. */
static void lost_piece(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct assignment *a = seek_assignment(s);
	str line = seek_line(s, d->pos), name;
	size_t from = STR("member:").n;

	if (!a || !str_starts_nocase(line, STR("member:")))
		return;
	name = str_trim(str_sub(line, from, str_find_char(line, ';', from)));
	for (size_t i = 0; i < a->npieces; i++)
		if (str_eq_nocase(a->pieces[i].name, name))
			return;
	for (uint32_t i = 0; i < a->npieces && s->turn < WORDS_MOST; i++)
		if (!is_drawn(a, i))
			replace_name(s, a->pieces[i].pos, a->pieces[i].name, name, "Pieces");
}

void seek_names(struct seeker *s)
{
	static const struct { enum finding_name name; void (*seek)(struct seeker *); } rows[] = {
		{ FINDING_UNKNOWN_SKILL, skill_on_sheet },
		{ FINDING_NEVER_TAUGHT, skill_in_list },
		{ FINDING_UNKNOWN_SECTION, unknown_heading },
		{ FINDING_DUPLICATE_ID, same_name },
		{ FINDING_BAD_ID, lost_id },
		{ FINDING_UNKNOWN_WORD, custom_name },
		{ FINDING_UNKNOWN_KEY, lost_original },
		{ FINDING_TOO_FEW_BENDS, lost_bend },
		{ FINDING_WELDMENT_DISAGREES, lost_piece },
		{ FINDING_BAD_DRAWING, lost_piece },
	};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (rows[i].name == seek_finding(s)->name)
			rows[i].seek(s);
}
