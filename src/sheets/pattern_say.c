/* Pattern blocks in words, and as rows of the grading sheet. */
#include "sheets/pattern_sheet.h"

#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

static const str heads[SHAPE_COUNT] = {
	[SHAPE_BRAKE] = { "Braked part", 11 }, [SHAPE_CYLINDER] = { "Cylinder", 8 },
	[SHAPE_ELBOW] = { "Round elbow", 11 }, [SHAPE_SADDLE] = { "Branch on a run", 15 },
	[SHAPE_CONE] = { "Cone", 4 }, [SHAPE_BOX] = { "Tapered box", 11 },
	[SHAPE_SQUARE] = { "Square to round", 15 },
};

str pattern_head(struct arena *a, const struct pattern_block *b)
{
	if (!b->name.n)
		return heads[b->shape];
	return str_format(a, "%.*s: %.*s", STR_ARG(heads[b->shape]), STR_ARG(b->name));
}

str pattern_angle(struct arena *a, const struct pattern_block *b)
{
	str angle = given(&b->angle) ? quantity_text(a, &b->angle) : STR("90\xC2\xB0");

	return str_format(a, "%.*s between center lines", STR_ARG(angle));
}

/* Parts of a sentence joined by semicolons. */
static void add_part(struct buf *b, str words, const char *after)
{
	if (words.n)
		buf_addf(b, "%s%.*s%s", b->n ? "; " : "", STR_ARG(words), after);
}

static void add_count(struct buf *b, uint32_t n, const char *what)
{
	if (n)
		buf_addf(b, "%s%u %s", b->n ? "; " : "", n, what);
}

static void add_named(struct arena *a, struct buf *b, const char *name,
    const struct quantity *q)
{
	if (given(q))
		buf_addf(b, "%s%s %.*s", b->n ? "; " : "", name,
		    STR_ARG(quantity_text(a, q)));
}

static void add_bends(struct arena *a, struct buf *t, const struct pattern_block *b)
{
	bool alike = true, ways = b->ndirections > 0;

	for (uint32_t i = 1; i < b->nbends; i++)
		alike &= b->bends[i].lo == b->bends[0].lo;
	if (b->nbends && alike)
		buf_addf(t, "%severy bend turns %.*s", t->n ? "; " : "",
		    STR_ARG(quantity_text(a, &b->bends[0])));
	for (uint32_t i = 0; i < b->nbends && ways; i++)
		buf_addf(t, "%s%s", i ? ", " : t->n ? "; bends go " : "bends go ",
		    b->down[i] ? "down" : "up");
	if (b->sizes == SIDE_INSIDE)
		add_part(t, STR("flanges measured inside"), "");
	else
		add_part(t, STR("flanges measured outside"), "");
	if (b->k > 0) {
		buf_adds(t, "; K ");
		buf_add_real(t, b->k, 4, false);
	}
}

str pattern_given(struct arena *a, const struct pattern_block *b)
{
	struct buf t = { .arena = a };

	add_named(a, &t, "thickness", &b->thickness);
	if (b->shape == SHAPE_ELBOW) {
		add_count(&t, b->pieces ? b->pieces : 2, "pieces");
		add_named(a, &t, "radius of the center line", &b->radius);
	} else {
		add_named(a, &t, "inside radius", &b->radius);
		add_count(&t, b->pieces, "pieces");
	}
	if (b->shape == SHAPE_BRAKE)
		add_bends(a, &t, b);
	add_named(a, &t, "bend allowance", &b->allowance);
	add_named(a, &t, "width", &b->width);
	if (b->shape == SHAPE_SADDLE)
		add_named(a, &t, "branch beside the center line by", &b->offset_x);
	if (b->shape == SHAPE_SADDLE)
		add_named(a, &t, "branch, from the center line of the run, length",
		    &b->height);
	add_count(&t, b->sides, "equal sides");
	add_count(&t, b->divisions, "divisions");
	return buf_str(&t);
}

/* The sizes of a shape by name: those that the finished part shows. */
struct named { const char *name; const struct quantity *q; };

/* What base and top are called. */
struct ends { const char *base, *top; };

static struct ends ends_of(const struct pattern_block *b)
{
	if (b->shape == SHAPE_SQUARE)
		return (struct ends){ "Square end", "Round end" };
	if (b->shape != SHAPE_BOX)
		return (struct ends){ "Base diameter", "Top diameter" };
	if (b->sides % 2)
		return (struct ends){ "Base, twice from middle to flat",
			"Top, twice from middle to flat" };
	return (struct ends){ "Base across flats", "Top across flats" };
}

static size_t finished_sizes(const struct pattern_block *b, struct named *v)
{
	bool round = b->shape == SHAPE_CYLINDER || b->shape == SHAPE_ELBOW;
	bool elbow = b->shape == SHAPE_ELBOW;
	struct ends ends = ends_of(b);
	const struct named all[] = {
		{ b->sizes == SIDE_INSIDE ? "Inside diameter" : "Outside diameter",
		    round ? &b->diameter : NULL },
		{ ends.base, &b->base },
		{ "Square end, other way", &b->base2 },
		{ ends.top, &b->top },
		{ elbow ? "Center line, end to miter" : "Height",
		    b->shape == SHAPE_SADDLE ? NULL : &b->height },
		{ "Angle", elbow ? &b->angle : NULL },
	};
	size_t n = 0;

	for (size_t i = 0; i < sizeof all / sizeof *all; i++)
		if (all[i].q && given(all[i].q))
			v[n++] = all[i];
	return n;
}

str pattern_view_words(struct arena *a, const struct pattern_block *b)
{
	struct buf t = { .arena = a };
	struct named v[8];
	size_t n = finished_sizes(b, v);
	str more = pattern_given(a, b);

	buf_addf(&t, "%.*s, drawn from its given sizes.", STR_ARG(heads[b->shape]));
	for (size_t i = 0; i < n; i++)
		buf_addf(&t, " %s %.*s.", v[i].name, STR_ARG(quantity_text(a, v[i].q)));
	for (uint32_t i = 0; i < b->nflanges; i++)
		buf_addf(&t, "%s%.*s%s", i ? ", " : " Flanges ",
		    STR_ARG(quantity_text(a, &b->flanges[i])),
		    i + 1 == b->nflanges ? "." : "");
	if (b->shape == SHAPE_SADDLE)
		buf_addf(&t, " Branch %.*s on run %.*s, %.*s.", STR_ARG(b->branch.text),
		    STR_ARG(b->run.text), STR_ARG(pattern_angle(a, b)));
	if (more.n)
		buf_addf(&t, " Also given: %.*s.", STR_ARG(more));
	return buf_str(&t);
}

/* ---- measured ---- */

static void add_measure(struct arena *a, struct measures *out, str name, const char *tool,
    const struct quantity *q, const struct quantity *tol)
{
	struct measure *m;
	struct buf low = { .arena = a }, high = { .arena = a };
	double step = fmin(tol->plus, tol->minus);

	if (q->kind != QUANTITY_LENGTH)
		return;
	m = ARENA_PUSH(a, out->v, out->n, out->cap);
	m->feature = name;
	m->tool = str_of(tool);
	m->nominal = quantity_text(a, q);
	format_computed(&low, q->lo - tol->minus, step);
	format_computed(&high, q->hi + tol->plus, step);
	m->low = buf_str(&low);
	m->high = buf_str(&high);
}

void pattern_measures(struct arena *a, const struct pattern_block *b,
    const struct quantity *tol, struct measures *out)
{
	struct named v[8];
	size_t n = finished_sizes(b, v);
	const char *of = b->name.n ? ", " : "";

	if (given(&b->tolerance) && b->tolerance.tolerance)
		tol = &b->tolerance;
	if (!tol)
		return;
	for (size_t i = 0; i < n; i++)
		add_measure(a, out, str_format(a, "%s%s%.*s", v[i].name, of,
		    STR_ARG(b->name)), "tape and square", v[i].q, tol);
	for (uint32_t i = 0; i < b->nflanges; i++)
		add_measure(a, out, str_format(a, "Flange %u%s%.*s", i + 1, of,
		    STR_ARG(b->name)), "caliper", &b->flanges[i], tol);
}
