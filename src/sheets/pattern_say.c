/* Pattern blocks in words, and as rows of the grading sheet. */
#include "sheets/pattern_sheet.h"

#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

static const str heads[SHAPE_COUNT] = {
	[SHAPE_BRAKE] = WORD("Braked part"), [SHAPE_CYLINDER] = WORD("Cylinder"),
	[SHAPE_ELBOW] = WORD("Round elbow"), [SHAPE_SADDLE] = WORD("Branch on a run"),
	[SHAPE_CONE] = WORD("Cone"), [SHAPE_BOX] = WORD("Tapered box"),
	[SHAPE_SQUARE] = WORD("Square to round"),
};

str pattern_head(struct arena *a, const struct edition *e, const struct pattern_block *b)
{
	str head = edition_word(e, heads[b->shape]);

	if (!b->name.n)
		return head;
	return str_format(a, "%.*s: %.*s", STR_ARG(head), STR_ARG(b->name));
}

str pattern_angle(struct arena *a, const struct edition *e, const struct pattern_block *b)
{
	str angle = given(&b->angle) ? quantity_text(a, e, &b->angle) : STR("90\xC2\xB0");

	return word_format(a, edition_language(e), "%.*s between center lines", STR_ARG(angle));
}

/* A sentence of parts joined by semicolons. */
struct parts {
	struct buf b;
	const struct edition *e;
};

static void add_part(struct parts *t, str words)
{
	buf_addf(&t->b, "%s%.*s", t->b.n ? "; " : "", STR_ARG(words));
}

/* what: looked up, as are the names below. */
static void add_count(struct parts *t, uint32_t n, str what)
{
	if (n)
		add_part(t, str_format(t->b.arena, "%u %.*s", n,
		    STR_ARG(edition_word(t->e, what))));
}

static void add_named(struct parts *t, str name, const struct quantity *q)
{
	if (given(q))
		add_part(t, str_format(t->b.arena, "%.*s %.*s", STR_ARG(edition_word(t->e, name)),
		    STR_ARG(quantity_text(t->b.arena, t->e, q))));
}

static str ways_of(struct parts *t, const struct pattern_block *b)
{
	struct buf ways = { .arena = t->b.arena };

	for (uint32_t i = 0; i < b->nbends; i++)
		buf_addf(&ways, "%s%.*s", i ? ", " : "",
		    STR_ARG(edition_word(t->e, b->down[i] ? WORD("down") : WORD("up"))));
	return word_format(t->b.arena, edition_language(t->e), "bends go %.*s",
	    STR_ARG(buf_str(&ways)));
}

static void add_bends(struct parts *t, const struct pattern_block *b)
{
	const struct language *l = edition_language(t->e);
	bool alike = true;

	for (uint32_t i = 1; i < b->nbends; i++)
		alike &= b->bends[i].lo == b->bends[0].lo;
	if (b->nbends && alike)
		add_part(t, word_format(t->b.arena, l, "every bend turns %.*s",
		    STR_ARG(quantity_text(t->b.arena, t->e, &b->bends[0]))));
	if (b->nbends && b->ndirections > 0)
		add_part(t, ways_of(t, b));
	add_part(t, b->sizes == SIDE_INSIDE ? word(l, "flanges measured inside")
	                                    : word(l, "flanges measured outside"));
	if (b->k > 0) {
		buf_adds(&t->b, "; K ");
		buf_add_real(&t->b, b->k, 4, false);
	}
}

str pattern_given(struct arena *a, const struct edition *e, const struct pattern_block *b)
{
	struct parts t = { { .arena = a }, e };

	add_named(&t, WORD("thickness"), &b->thickness);
	if (b->shape == SHAPE_ELBOW) {
		add_count(&t, b->pieces ? b->pieces : 2, WORD("pieces"));
		add_named(&t, WORD("radius of the center line"), &b->radius);
	} else {
		add_named(&t, WORD("inside radius"), &b->radius);
		add_count(&t, b->pieces, WORD("pieces"));
	}
	if (b->shape == SHAPE_BRAKE)
		add_bends(&t, b);
	add_named(&t, WORD("bend allowance"), &b->allowance);
	add_named(&t, WORD("width"), &b->width);
	if (b->shape == SHAPE_SADDLE)
		add_named(&t, WORD("branch beside the center line by"), &b->offset_x);
	if (b->shape == SHAPE_SADDLE)
		add_named(&t, WORD("branch, from the center line of the run, length"),
		    &b->height);
	add_count(&t, b->sides, WORD("equal sides"));
	add_count(&t, b->divisions, WORD("divisions"));
	return buf_str(&t.b);
}

/* The sizes of a shape by name: those that the finished part shows. */
struct named { str name; const struct quantity *q; };

/* What base and top are called. */
struct ends { str base, top; };

static struct ends ends_of(const struct pattern_block *b)
{
	if (b->shape == SHAPE_SQUARE)
		return (struct ends){ WORD("Square end"), WORD("Round end") };
	if (b->shape != SHAPE_BOX)
		return (struct ends){ WORD("Base diameter"), WORD("Top diameter") };
	if (b->sides % 2)
		return (struct ends){ WORD("Base, twice from middle to flat"),
			WORD("Top, twice from middle to flat") };
	return (struct ends){ WORD("Base across flats"), WORD("Top across flats") };
}

static size_t finished_sizes(const struct pattern_block *b, struct named *v)
{
	bool round = b->shape == SHAPE_CYLINDER || b->shape == SHAPE_ELBOW;
	bool elbow = b->shape == SHAPE_ELBOW;
	struct ends ends = ends_of(b);
	const struct named all[] = {
		{ b->sizes == SIDE_INSIDE ? WORD("Inside diameter") : WORD("Outside diameter"),
		    round ? &b->diameter : NULL },
		{ ends.base, &b->base },
		{ WORD("Square end, other way"), &b->base2 },
		{ ends.top, &b->top },
		{ elbow ? WORD("Center line, end to miter") : WORD("Height"),
		    b->shape == SHAPE_SADDLE ? NULL : &b->height },
		{ WORD("Angle"), elbow ? &b->angle : NULL },
	};
	size_t n = 0;

	for (size_t i = 0; i < sizeof all / sizeof *all; i++)
		if (all[i].q && given(all[i].q))
			v[n++] = all[i];
	return n;
}

static void add_flanges(struct buf *t, const struct edition *e, const struct pattern_block *b)
{
	struct buf v = { .arena = t->arena };

	for (uint32_t i = 0; i < b->nflanges; i++)
		buf_addf(&v, "%s%.*s", i ? ", " : "",
		    STR_ARG(quantity_text(v.arena, e, &b->flanges[i])));
	if (v.n)
		word_addf(t, edition_language(e), " Flanges %.*s.", STR_ARG(buf_str(&v)));
}

str pattern_view_words(struct arena *a, const struct edition *e, const struct pattern_block *b)
{
	const struct language *l = edition_language(e);
	struct buf t = { .arena = a };
	struct named v[8];
	size_t n = finished_sizes(b, v);
	str more = pattern_given(a, e, b);

	word_addf(&t, l, "%.*s, drawn from its given sizes.",
	    STR_ARG(edition_word(e, heads[b->shape])));
	for (size_t i = 0; i < n; i++)
		buf_addf(&t, " %.*s %.*s.", STR_ARG(edition_word(e, v[i].name)),
		    STR_ARG(quantity_text(a, e, v[i].q)));
	add_flanges(&t, e, b);
	if (b->shape == SHAPE_SADDLE)
		word_addf(&t, l, " Branch %.*s on run %.*s, %.*s.", STR_ARG(b->branch.text),
		    STR_ARG(b->run.text), STR_ARG(pattern_angle(a, e, b)));
	if (more.n)
		word_addf(&t, l, " Also given: %.*s.", STR_ARG(more));
	return buf_str(&t);
}

/* ---- measured ---- */

static void add_measure(struct arena *a, const struct edition *e, struct measures *out,
    str name, str tool, const struct quantity *q, const struct quantity *tol)
{
	struct measure *m;
	struct buf low = { .arena = a }, high = { .arena = a };
	double step = fmin(tol->plus, tol->minus);

	if (q->kind != QUANTITY_LENGTH)
		return;
	m = ARENA_PUSH(a, out->v, out->n, out->cap);
	m->feature = name;
	m->tool = tool;
	m->nominal = quantity_text(a, e, q);
	format_computed_as(&low, edition_format(e), q->lo - tol->minus, step);
	format_computed_as(&high, edition_format(e), q->hi + tol->plus, step);
	m->low = buf_str(&low);
	m->high = buf_str(&high);
}

void pattern_measures(struct arena *a, const struct edition *e, const struct pattern_block *b,
    const struct quantity *tol, struct measures *out)
{
	const struct language *l = edition_language(e);
	struct named v[8];
	size_t n = finished_sizes(b, v);
	const char *of = b->name.n ? ", " : "";

	if (given(&b->tolerance) && b->tolerance.tolerance)
		tol = &b->tolerance;
	if (!tol)
		return;
	for (size_t i = 0; i < n; i++)
		add_measure(a, e, out, str_format(a, "%.*s%s%.*s",
		    STR_ARG(edition_word(e, v[i].name)), of, STR_ARG(b->name)),
		    word(l, "tape and square"), v[i].q, tol);
	for (uint32_t i = 0; i < b->nflanges; i++)
		add_measure(a, e, out, word_format(a, l, "Flange %u%s%.*s", i + 1, of,
		    STR_ARG(b->name)), word(l, "caliper"), &b->flanges[i], tol);
}
