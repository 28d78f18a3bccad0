#include "sheets/review.h"

#include "draw/fig.h"
#include "model/pattern_block.h"
#include "model/standard.h"
#include "model/translation.h"
#include "sheets/figure.h"
#include "sheets/picture.h"
#include "sheets/weld_symbol.h"
#include "sheets/weldment.h"

struct review {
	struct arena *arena;
	const struct faces *faces;
	struct findings *f;
	const struct assignment *x; /* null outside assignments */
	bool told;               /* why a drawing of it cannot be made */
};

/* One finding a text, at its first character that cannot be printed. */
static void review_in(struct review *r, enum face_id face, str s, struct pos pos)
{
	size_t at = face_missing(r->faces, face, s);
	struct finding *d;
	str rest, one;

	if (at == s.n)
		return;
	rest = one = str_sub(s, at, s.n);
	utf8_next(&rest);
	one.n -= rest.n;
	pos.col += (uint32_t)str_chars(str_sub(s, 0, at));
	d = finding_add(r->f, FINDING_NO_GLYPH, pos, "the character \"%.*s\" is not in the fonts and "
	    "would print as a box", STR_ARG(one));
	finding_repair(r->f, d, "write it in words");
	if (r->x)
		d->assignment = r->x->id;
}

static void review_text(struct review *r, str s, struct pos pos)
{
	review_in(r, FACE_SANS, s, pos);
}

/* Text behind a key, whose own place is not kept: the finding points to the key. */
static void review_value(struct review *r, str s, struct pos pos)
{
	size_t at = face_missing(r->faces, FACE_SANS, s);

	review_text(r, str_sub(s, at, s.n), pos);
}

static void review_para(struct review *r, const struct para *p)
{
	for (size_t i = 0; i < p->nspans; i++)
		review_in(r, p->spans[i].style & SPAN_CODE ? FACE_MONO : FACE_SANS,
		    p->spans[i].text, p->pos);
}

static void review_prose(struct review *r, const struct prose *p)
{
	for (size_t i = 0; i < p->n; i++)
		review_para(r, &p->v[i]);
}

/* Never a wrong picture: the sheet leaves room for a sketch instead. */
static void report_no_room(struct review *r, const struct drawing *d)
{
	struct finding *n = finding_add(r->f, FINDING_NOT_DRAWN_YET, d->pos,
	    "the sizes of this joint lie too far apart for one true drawing on a sheet; it says so "
	    "in its place");

	finding_repair(r->f, n, "check the sizes, or sketch it on the sheet");
	n->assignment = r->x->id;
}

const bool *sheets_told(struct arena *a, const struct model *m, const struct findings *f)
{
	static const enum finding_name causes[] = {
		FINDING_MISSING_FACT, FINDING_BAD_QUANTITY, FINDING_MISSING_UNIT,
		FINDING_GAUGE_WITHOUT_MATERIAL, FINDING_BAD_DRAWING, FINDING_UNKNOWN_KEY,
		FINDING_FACTS_DISAGREE,
	};
	bool *told = arena_array(a, m->nassignments + 1, sizeof *told);

	for (size_t i = 0; i < f->n; i++)
		for (size_t k = 0; k < sizeof causes / sizeof *causes; k++) {
			uint32_t x = f->v[i].name == causes[k] ? map_find(
			    m->assignment_by_id, f->v[i].assignment) : MAP_NONE;

			if (x != MAP_NONE)
				told[x] = true;
		}
	return told;
}

static void report_symbol(struct review *r, const struct drawing *d)
{
	str why = weld_symbol_fault(r->arena, r->x, &d->joint);
	struct finding *n;

	if (!why.n)
		return;
	n = finding_add(r->f, FINDING_BAD_DRAWING, d->pos,
	    "the welding symbol that this block asks for cannot be made: %.*s", STR_ARG(why));
	finding_repair(r->f, n, "correct the lines about the symbol, or leave them out");
	n->assignment = r->x->id;
}

static void report_fault(struct review *r, const struct drawing *d, str why)
{
	struct finding *n;

	if (!why.n || (r->told && str_find(why, STR("not given"), 0) < why.n))
		return;
	n = finding_add(r->f, FINDING_BAD_DRAWING, d->pos, "this drawing cannot be made: %.*s",
	    STR_ARG(why));
	n->assignment = r->x->id;
	finding_repair(r->f, n, "correct the sizes in the block or the facts it takes them from");
}

static void review_joint(struct review *r, const struct drawing *d)
{
	struct fig_joint j;
	str why = { 0 };

	figure_joint(r->arena, NULL, r->x, &d->joint, &j);
	/* A joint that was not understood is told where it is written. */
	if (fig_can_draw(j.shape))
		why = fig_joint_fault(&j);
	if (fig_can_draw(j.shape) && !why.n && !figure_has_room(r->faces, &j))
		report_no_room(r, d);
	if (!why.n)
		report_symbol(r, d);
	report_fault(r, d, why);
}

static void review_drawing(struct review *r, const struct drawing *d)
{
	switch (d->kind) {
	case DRAWING_WELDMENT:
		weldment_review(r->arena, r->faces, r->f, r->x, d->weldment);
		return;
	case DRAWING_PICTURE:
		review_text(r, d->title, d->pos);
		return;
	case DRAWING_JOINT:
		review_joint(r, d);
		return;
	default:
		report_fault(r, d, figure_fault(r->arena, r->x, d));
	}
}

static void review_lines(struct review *r)
{
	const struct assignment *x = r->x;

	for (size_t i = 0; i < x->nfacts; i++)
		review_text(r, x->facts[i].text, x->facts[i].pos);
	for (size_t i = 0; i < x->npieces; i++) {
		review_text(r, x->pieces[i].name, x->pieces[i].pos);
		review_value(r, x->pieces[i].made, x->pieces[i].pos);
	}
	for (size_t i = 0; i < x->npasses; i++) {
		review_text(r, x->passes[i].name, x->passes[i].pos);
		review_value(r, x->passes[i].text, x->passes[i].pos);
	}
	for (size_t i = 0; i < x->nsteps; i++) {
		review_value(r, x->steps[i].hold, x->steps[i].pos);
		review_para(r, &x->steps[i].para);
	}
	for (size_t i = 0; i < x->ncriteria; i++) {
		review_text(r, x->criteria[i].name, x->criteria[i].pos);
		review_value(r, x->criteria[i].text, x->criteria[i].pos);
	}
	for (size_t i = 0; i < x->ngrades; i++)
		review_text(r, x->grades[i].name, x->grades[i].pos);
}

/* What stands in the facts of metal and filler, and in the blocks. */
static void review_words(struct review *r)
{
	const struct assignment *x = r->x;

	for (size_t i = 0; i < x->nmaterials; i++)
		review_value(r, x->materials[i].text, x->materials[i].pos);
	for (size_t i = 0; i < x->nfillers; i++) {
		review_value(r, x->fillers[i].class, x->fillers[i].pos);
		review_value(r, x->fillers[i].where, x->fillers[i].pos);
	}
	for (size_t i = 0; i < x->npieces; i++)
		review_value(r, x->pieces[i].material, x->pieces[i].pos);
	for (size_t i = 0; i < x->nteaches; i++)
		review_value(r, x->teaches[i].evidence, x->teaches[i].pos);
	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct drawing *d = &x->drawings[i];

		review_prose(r, &d->caption);
		review_value(r, d->joint.restart, d->joint.pos);
		if (d->kind == DRAWING_PATTERN)
			review_value(r, d->pattern->name, d->pattern->pos);
	}
}

static void review_assignment(struct review *r)
{
	const struct assignment *x = r->x;

	review_text(r, x->title, x->pos);
	review_lines(r);
	review_words(r);
	review_prose(r, &x->bring);
	review_prose(r, &x->cautions);
	review_prose(r, &x->if_it_fails);
	review_prose(r, &x->notes);
	review_prose(r, &x->instructor);
	for (size_t i = 0; i < x->ndrawings; i++)
		review_drawing(r, &x->drawings[i]);
}

/* Of the program's own sets; the shipped ones are tested. */
static void review_standard(struct review *r, const struct standard *s)
{
	review_text(r, s->name, s->pos);
	review_value(r, s->source, s->pos);
	review_value(r, s->checked, s->pos);
	for (size_t i = 0; i < s->n; i++) {
		const struct standard_limit *l = &s->v[i];
		const str v[] = { l->words, l->more, l->tool, l->metric, l->clause };

		review_text(r, l->name, l->pos);
		for (size_t k = 0; k < sizeof v / sizeof *v; k++)
			review_value(r, v[k], l->pos);
	}
}

/* What stands on covers, charts and lists. */
static void review_lists(struct review *r, const struct model *m)
{
	for (size_t i = 0; i < m->noutcomes; i++)
		review_text(r, m->outcomes[i].title, m->outcomes[i].pos);
	for (size_t i = 0; i < m->nskills; i++)
		review_text(r, m->skills[i].title, m->skills[i].pos);
	for (size_t i = 0; i < m->ncourses; i++)
		review_text(r, m->courses[i].title, m->courses[i].pos);
	for (size_t i = 0; i < m->ncohorts; i++)
		review_text(r, m->cohorts[i].name, m->cohorts[i].pos);
	for (size_t i = 0; i < m->nstandards; i++)
		review_standard(r, &m->standards[i]);
}

static void review_said(struct review *r, const struct said_lines *l)
{
	for (size_t i = 0; i < l->n; i++)
		review_text(r, l->v[i].text, l->v[i].pos);
}

static void review_translation(struct review *r, const struct translation *t)
{
	review_text(r, t->title, t->pos);
	for (size_t i = 0; i < t->nsteps; i++) {
		review_text(r, t->steps[i].hold, t->steps[i].pos);
		review_para(r, &t->steps[i].para);
	}
	for (int i = 0; i < SAID_PARTS; i++)
		review_prose(r, &t->parts[i]);
	for (size_t i = 0; i < t->npictures; i++)
		review_text(r, t->pictures[i].title, t->pictures[i].pos);
	review_said(r, &t->facts);
	review_said(r, &t->criteria);
	review_said(r, &t->passes);
}

static void review_speech(struct review *r, const struct model *m, const struct speech *s)
{
	r->x = NULL;
	review_said(r, &s->words);
	for (size_t i = 0; i < s->n; i++) {
		r->x = &m->assignments[s->v[i].assignment];
		review_translation(r, &s->v[i]);
	}
}

void program_review(struct arena *a, const struct model *m, const struct faces *faces,
    struct findings *f)
{
	struct review r = { a, faces, f, NULL, false };

	review_lists(&r, m);
	for (size_t i = 0; i < m->nspeeches; i++)
		review_speech(&r, m, &m->speeches[i]);
}

void sheet_review(struct arena *a, const struct model *m, const struct faces *faces,
    const bool *told, uint32_t assignment, struct findings *f)
{
	struct review r = { a, faces, f, &m->assignments[assignment], told[assignment] };

	review_assignment(&r);
}

void sheets_review(struct arena *a, const struct model *m, const struct faces *faces,
    const bool *told, struct findings *f)
{
	program_review(a, m, faces, f);
	for (uint32_t i = 0; i < m->nassignments; i++)
		sheet_review(a, m, faces, told, i, f);
}

void sheet_pictures_review(const struct model *m, uint32_t assignment, struct findings *f)
{
	const struct assignment *x = &m->assignments[assignment];

	for (size_t i = 0; i < x->ndrawings; i++)
		if (x->drawings[i].kind == DRAWING_PICTURE)
			picture_review(f, x, &x->drawings[i]);
}

void pictures_review(const struct model *m, struct findings *f)
{
	for (uint32_t i = 0; m->npictures && i < m->nassignments; i++)
		sheet_pictures_review(m, i, f);
}
