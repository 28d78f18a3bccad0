/* What Acceptance, pieces and facts say of one thing against the drawing and welds. */
#include "check/rule_joint.h"

#include "check/rule_metal.h"
#include "model/words.h"

/* An Acceptance line that gives a size which a joint block gives too. */
struct twice_said {
	str name;
	size_t offset;           /* in struct joint_block */
	enum quantity_kind kind;
};

#define TWICE(name, field, kind) \
	{ { name, sizeof name - 1 }, offsetof(struct joint_block, field), kind }

static const struct twice_said twice_rows[] = {
	TWICE("Leg size", leg, QUANTITY_LENGTH),
	TWICE("Root opening", gap, QUANTITY_LENGTH),
	TWICE("Land", land, QUANTITY_LENGTH),
	TWICE("Overlap", overlap, QUANTITY_LENGTH),
	TWICE("Groove angle", angle, QUANTITY_ANGLE),
	TWICE("Bevel", bevel, QUANTITY_ANGLE),
};

/* "Leg size B" names its weld; 0 when no letter follows. False for another name. */
static bool name_matches(str name, str wanted, char *letter)
{
	str rest;

	*letter = 0;
	if (!str_starts_nocase(name, wanted))
		return false;
	rest = str_trim(str_sub(name, wanted.n, name.n));
	if (rest.n == 1 && rest.p[0] >= 'A' && rest.p[0] <= 'Z')
		*letter = rest.p[0];
	return !rest.n || *letter;
}

static bool within(const struct quantity *q, double v)
{
	double slack = q->kind == QUANTITY_ANGLE ? 1e-6 : LIMIT_SLACK_MM;

	return v >= q->lo - slack && v <= q->hi + slack;
}

static const struct quantity *block_value(const struct joint_block *j, size_t offset)
{
	return (const struct quantity *)(const void *)((const char *)j + offset);
}

/* The drawings that a line may speak of; the first that says otherwise when none says
 * the same. Null when one agrees or none gives the size. */
static const struct joint_block *first_other(const struct assignment *a,
    const struct twice_said *row, char letter, double v)
{
	const struct joint_block *other = NULL;

	/* A line under "## Welds" that says the same: the drawing disagrees with that,
	 * which is told already. */
	for (size_t i = 0; i < a->nwelds; i++)
		if (row->offset == offsetof(struct joint_block, leg) &&
		    is_same_mm(a->welds[i].leg_mm, v))
			return NULL;
	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct joint_block *j = &a->drawings[i].joint;
		const struct quantity *q = block_value(j, row->offset);

		if (a->drawings[i].kind != DRAWING_JOINT || q->kind != row->kind)
			continue;
		if (letter && j->weld != NONE && a->nwelds > 1 &&
		    a->welds[j->weld].letter != letter)
			continue;
		if (within(q, v))
			return NULL;
		other = other ? other : j;
	}
	return other;
}

static void say_twice(struct rule_context *x, uint32_t w, const struct criterion *c,
    str said, const struct joint_block *j, str drawn)
{
	struct finding *d = rule_report(x, FINDING_SIZE_SAID_TWICE, c->pos, w,
	    "Acceptance says %.*s %.*s, and the drawing says %.*s", STR_ARG(c->name),
	    STR_ARG(said), STR_ARG(drawn));

	finding_relate(x->f, d, j->pos)->label = STR("the drawing");
	finding_cause(x->f, d, "the student measures against one and is graded by the "
	    "other");
	finding_repair(x->f, d, "make both say the same");
}

static void judge_twice(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->ncriteria; i++)
		for (size_t k = 0; k < sizeof twice_rows / sizeof *twice_rows; k++) {
			const struct twice_said *row = &twice_rows[k];
			const struct criterion *c = &a->criteria[i];
			const struct joint_block *j;
			struct quantity_fault fault;
			struct quantity q;
			size_t used;
			char letter;

			if (!name_matches(c->name, row->name, &letter) ||
			    quantity_prefix(c->text, row->kind, METAL_NONE, &q, &used,
			    &fault) != QUANTITY_OK || q.no_value || q.range)
				continue;
			j = first_other(a, row, letter, q.lo);
			if (j)
				say_twice(x, w, c, say_quantity(x, &q), j,
				    say_quantity(x, block_value(j, row->offset)));
		}
}

/* "1/4 x 3/8 in" at the beginning of a line. */
static bool read_two_legs(const struct rule_context *x, str text, struct quantity v[2])
{
	struct quantity_list list;
	struct quantity_fault fault;
	size_t used;

	if (quantity_product_parse(x->f->arena, text, METAL_NONE, &list, &used, &fault) !=
	        QUANTITY_OK || list.n != 2)
		return false;
	v[0] = list.v[0];
	v[1] = list.v[1];
	return true;
}

static bool legs_differ(const struct joint_block *j, const struct quantity v[2])
{
	const struct quantity *second = j->leg2.lo > 0 ? &j->leg2 : &j->leg;

	return !is_same_mm(j->leg.lo, v[0].lo) || !is_same_mm(second->lo, v[1].lo);
}

static str say_legs(const struct rule_context *x, const struct quantity *a,
    const struct quantity *b)
{
	if (!(b->lo > 0))
		return say_quantity(x, a);
	return str_format(x->f->arena, "%.*s x %.*s", STR_ARG(say_quantity(x, a)),
	    STR_ARG(say_quantity(x, b)));
}

/* A leg size of two figures against the drawings that it may speak of; one figure against
 * a drawing of two is judged as any size, by the first of them. */
static void judge_legs(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->ncriteria; i++) {
		const struct criterion *c = &a->criteria[i];
		const struct joint_block *other = NULL;
		struct quantity v[2];
		bool same = false;
		char letter;

		if (!name_matches(c->name, STR("Leg size"), &letter) ||
		    !read_two_legs(x, c->text, v))
			continue;
		for (size_t k = 0; k < a->ndrawings; k++) {
			const struct joint_block *j = &a->drawings[k].joint;

			if (a->drawings[k].kind != DRAWING_JOINT || !(j->leg.lo > 0) ||
			    (letter && j->weld != NONE && a->nwelds > 1 &&
			    a->welds[j->weld].letter != letter))
				continue;
			same |= !legs_differ(j, v);
			other = other ? other : j;
		}
		if (same || !other)
			continue;
		say_twice(x, w, c, say_legs(x, &v[0], &v[1]), other,
		    say_legs(x, &other->leg, &other->leg2));
	}
}

static bool same_first_word(str a, str b)
{
	str x, y;

	return str_word(&a, &x) && str_word(&b, &y) && str_eq_nocase(x, y);
}

static double piece_t_mm(const struct piece *p)
{
	return p->pipe.od_mm > 0 ? p->pipe.wall_mm : p->dims[0].hi;
}

/* Whether the pieces show that a member is cut from another thickness: some are of its
 * material, all of those have a thickness, and none has this one. */
static const struct piece *piece_that_differs(const struct assignment *a, str material,
    double t_mm)
{
	const struct piece *other = NULL;

	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		double t = piece_t_mm(p);

		if (!same_first_word(p->material, material))
			continue;
		if (says(p->material, "tube") || says(p->material, "angle") || t <= 0 ||
		    is_same_mm(t, t_mm))
			return NULL;
		/* Backing is of its own thickness. */
		if (!says(p->name, "backing") && !other)
			other = p;
	}
	return other;
}

bool piece_is_disputed(const struct assignment *a, const struct piece *p)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (a->welds[i].t1_mm > 0 && piece_that_differs(a, a->welds[i].material1,
		    a->welds[i].t1_mm) == p)
			return true;
	return false;
}

/* Where the drawing says what the pieces say, it differs from the facts too, and that is
 * told. */
static bool is_drawn_so(const struct assignment *a, size_t weld, double t_mm)
{
	const struct joint_block *j = weld_block(a, weld);

	return j && is_same_mm(j->pipe.od_mm > 0 ? j->pipe.wall_mm : j->t1.hi, t_mm);
}

bool weld_is_disputed(const struct assignment *a, const struct weld *k)
{
	const struct joint_block *j = weld_block(a, (size_t)(k - a->welds));
	double drawn = !j ? 0 : j->pipe.od_mm > 0 ? j->pipe.wall_mm : j->t1.hi;

	return (k->t1_mm > 0 && piece_that_differs(a, k->material1, k->t1_mm)) ||
	    (drawn > 0 && k->t1_mm > 0 && k->t2_mm <= 0 && !is_same_mm(drawn, k->t1_mm));
}

static void judge_pieces(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *k = &a->welds[i];
		const struct piece *p = piece_that_differs(a, k->material1, k->t1_mm);
		double t = p ? piece_t_mm(p) : 0;
		struct finding *d;

		if (!p || k->t1_mm <= 0 || is_drawn_so(a, i, t))
			continue;
		d = rule_report(x, FINDING_PIECES_DISAGREE, p->pos, w,
		    "%.*s is in %.*s, but no piece has that thickness: %.*s is %.*s",
		    STR_ARG(weld_say(x, k)), STR_ARG(say_mm(x, k->t1_mm)),
		    STR_ARG(p->name), STR_ARG(say_mm(x, t)));
		finding_relate(x->f, d, assignment_fact_pos(a, STR("Thickness")))->label =
		    STR("the thickness");
		finding_cause(x->f, d, "the aide cuts by the pieces, the limits go by "
		    "the thickness");
		finding_repair(x->f, d, "make both say the same");
		return;
	}
}

/* Galvanized sheet is steel. */
static enum sheet_metal metal_under(str material)
{
	enum sheet_metal m = sheet_metal_of(material);

	return m == METAL_GALVANIZED ? METAL_STEEL : m;
}

/* "A572" of "A572-50 plate", "304L" of "304L sheet"; empty when the first word has no
 * figure. */
static str grade_of(str material)
{
	bool figure = false;
	size_t n = 0;
	str word;

	if (!str_word(&material, &word))
		return (str){ 0 };
	for (; n < word.n && word.p[n] != '-'; n++)
		figure |= word.p[n] >= '0' && word.p[n] <= '9';
	return figure ? str_sub(word, 0, n) : (str){ 0 };
}

/* "304L" and "304" are one grade here; what names none is any. */
static bool is_other_grade(str a, str b)
{
	str x = grade_of(a), y = grade_of(b);

	return x.n && y.n && !str_starts_nocase(x, y) && !str_starts_nocase(y, x);
}

/* The first piece when none is of the metal, or of the grade, that a weld is in; null when
 * one is, or one may be. */
static const struct piece *piece_of_other(const struct assignment *a, str material,
    bool by_grade)
{
	const struct piece *first = NULL;

	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		enum sheet_metal m = metal_under(p->material);

		if (says(p->name, "backing"))
			continue;
		if (m == METAL_NONE || (by_grade ? !is_other_grade(p->material, material)
		    : m == metal_under(material)))
			return NULL;
		first = first ? first : p;
	}
	return metal_under(material) == METAL_NONE ? NULL : first;
}

static void say_metal(struct rule_context *x, uint32_t w, const struct weld *k,
    const struct piece *p, bool by_grade)
{
	struct finding *d = rule_report(x, FINDING_PIECES_DISAGREE, p->pos, w,
	    "%.*s is in %.*s, but no piece is: %.*s is %.*s", STR_ARG(weld_say(x, k)),
	    STR_ARG(k->material1), STR_ARG(p->name), STR_ARG(p->material));

	/* Another grade may lie on the rack; another metal is another weld. */
	if (by_grade)
		d->level = LEVEL_WARNING;
	finding_relate(x->f, d, assignment_fact_pos(x->m->assignments + w,
	    STR("Material")))->label = STR("the material");
	finding_cause(x->f, d, "the aide cuts by the pieces, filler, gas and limits go by "
	    "the material");
	finding_repair(x->f, d, "make both say the same");
}

static void judge_material(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->nwelds; i++)
		for (int by_grade = 0; by_grade < 2; by_grade++) {
			const struct piece *p = piece_of_other(a, a->welds[i].material1,
			    by_grade);

			if (!p)
				continue;
			say_metal(x, w, &a->welds[i], p, by_grade);
			return;
		}
}

/* A blank is drawn as thick as one of the pieces, or as the fact Thickness says. */
static bool has_thickness(const struct assignment *a, double t_mm)
{
	bool any = false;

	for (uint32_t i = 0; i < a->nthicknesses; i++)
		if (is_same_mm(a->thicknesses[i].hi, t_mm))
			return true;
	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];

		any |= p->ndims > 0;
		for (uint32_t k = 0; k < p->ndims; k++)
			if (is_same_mm(p->dims[k].hi, t_mm))
				return true;
	}
	return !any;
}

static void judge_blanks(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct plate_block *p = &a->drawings[i].plate;
		struct finding *d;

		if (a->drawings[i].kind != DRAWING_PLATE || p->thickness.hi <= 0 ||
		    has_thickness(a, p->thickness.hi))
			continue;
		d = rule_report(x, FINDING_PIECES_DISAGREE, p->pos, w,
		    "the drawing is of %.*s, but no piece has that thickness",
		    STR_ARG(say_quantity(x, &p->thickness)));
		/* It may show a part that is not cut for this sheet. */
		d->level = LEVEL_WARNING;
		finding_relate(x->f, d, a->pieces[0].pos)->label = a->pieces[0].name;
		finding_cause(x->f, d, "the aide cuts by the pieces, students lay out by "
		    "the drawing");
		finding_repair(x->f, d, "make both say the same");
		return;
	}
}

static bool is_test_kind(const struct assignment *a)
{
	return a->kind == KIND_COUPON || a->kind == KIND_PRACTICE_TEST ||
	    a->kind == KIND_QUALIFICATION_TEST;
}

static double longest_mm(const struct assignment *a)
{
	static const char *const beside[] = { "backing", "strip", "tab", "ring", NULL };
	double longest = 0;

	for (size_t i = 0; i < a->npieces; i++)
		/* Backing and tabs run out beyond the weld. */
		for (uint32_t k = 1; k < a->pieces[i].ndims &&
		    !says_any(a->pieces[i].name, beside); k++)
			if (a->pieces[i].dims[k].hi > longest)
				longest = a->pieces[i].dims[k].hi;
	return longest;
}

/* Where line and drawing of a weld give two lengths, that is told. */
static bool has_two_lengths(const struct assignment *a, size_t i)
{
	const struct joint_block *j = weld_block(a, i);

	return j && j->length.lo > 0 && a->welds[i].length_mm > 0 &&
	    !is_same_mm(j->length.lo, a->welds[i].length_mm);
}

/* A straight weld on plate coupons is no longer than the longest piece. */
static void judge_length(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	double longest = longest_mm(a);

	for (size_t i = 0; is_test_kind(a) && longest > 0 && i < a->nwelds; i++) {
		const struct weld *k = &a->welds[i];
		double length = weld_length_mm(a, i);
		struct finding *d;

		if (!says(k->material1, "plate") || joint_is_pipe(k) ||
		    !is_over(length, longest) || has_two_lengths(a, i))
			continue;
		d = rule_report(x, FINDING_PIECES_DISAGREE, k->pos, w,
		    "%.*s is %.*s long, and the longest piece %.*s",
		    STR_ARG(weld_say(x, k)), STR_ARG(say_mm(x, length)),
		    STR_ARG(say_mm(x, longest)));
		finding_cause(x->f, d, "the aide cuts by the pieces");
		finding_repair(x->f, d, "make both say the same");
		return;
	}
}

/* Backing said to be there and not to be there. */
static void say_backing(struct rule_context *x, uint32_t w, struct pos pos,
    const char *one, const char *other, struct pos there)
{
	struct finding *d = rule_report(x, FINDING_BACKING_DISAGREES, pos, w,
	    "%s, but %s", one, other);

	finding_relate(x->f, d, there)->label = STR("the other");
	finding_cause(x->f, d, "an open root and a backed one are different tests: "
	    "backing does not qualify an open root (AWS D1.1 and ASME IX, from memory; "
	    "confirm against your edition)");
	finding_repair(x->f, d, "make both say the same");
}

static void judge_backing(struct rule_context *x, uint32_t w)
{
	static const char *const open[] = { "open root", "open-root", NULL };
	/* Only an open root has one. */
	static const char *const keyhole[] = { "keyhole", NULL };
	const struct assignment *a = &x->m->assignments[w];
	str text = fact_said(a, "Backing");
	struct pos fact = assignment_fact_pos(a, STR("Backing"));
	bool none = says(text, "none");

	for (size_t i = 0; text.n && !none && !says(text, "back-gouged") &&
	    i < a->nsteps; i++)
		if (para_says_any(&a->steps[i].para, keyhole)) {
			say_backing(x, w, fact, "the sheet names a backing",
			    "a step speaks of a keyhole", a->steps[i].pos);
			return;
		}
	if (text.n && !none && !says(text, "back-gouged") && says_any(a->title, open)) {
		say_backing(x, w, fact, "the sheet names a backing",
		    "its title says open root", a->pos);
		return;
	}
	for (size_t i = 0; none && i < a->ndrawings; i++) {
		const struct joint_block *j = &a->drawings[i].joint;

		if (a->drawings[i].kind != DRAWING_JOINT ||
		    j->backing_t.kind != QUANTITY_LENGTH)
			continue;
		say_backing(x, w, fact, "Backing says none", "the drawing shows one",
		    j->pos);
		return;
	}
	for (size_t i = 0; none && i < a->npieces; i++) {
		if (!says(a->pieces[i].name, "backing"))
			continue;
		say_backing(x, w, fact, "Backing says none", "a backing strip is cut",
		    a->pieces[i].pos);
		return;
	}
}

void rule_joint_agree(struct rule_context *x, uint32_t w)
{
	judge_twice(x, w);
	judge_legs(x, w);
	judge_pieces(x, w);
	judge_material(x, w);
	judge_blanks(x, w);
	judge_length(x, w);
	judge_backing(x, w);
}
