#include "reckon/pattern_set.h"

#include <math.h>

/* No sheet is longer than a kilometer; beyond it a slip of the pen is likelier. */
#define SIZE_MOST_MM 1e6

void answer_add(struct pattern_maker *m, str name, double value, enum answer_unit unit)
{
	*ARENA_PUSH(m->arena, m->out->answer, m->out->nanswers, m->out->answers_cap) =
	    (struct pattern_answer){ name, value, unit };
}

void answer_sheet(struct pattern_maker *m)
{
	const struct flat *f = &m->out->flat[0];

	answer_add(m, STR("Sheet that holds the pattern, length"), f->width_mm, ANSWER_MM);
	answer_add(m, STR("Sheet that holds the pattern, width"), f->height_mm, ANSWER_MM);
}

struct pattern_table *table_add(struct pattern_maker *m, str name, str at, str head)
{
	struct pattern_table *t = ARENA_PUSH(m->arena, m->out->table, m->out->ntables,
	    m->out->tables_cap);

	t->name = name;
	t->at = at;
	t->head[0] = head;
	return t;
}

void table_row(struct pattern_maker *m, struct pattern_table *t, struct pattern_row r)
{
	*ARENA_PUSH(m->arena, t->v, t->n, t->cap) = r;
}

struct flat *flat_add(struct pattern_maker *m, str name, unsigned count)
{
	struct flat *f = ARENA_PUSH(m->arena, m->out->flat, m->out->nflats,
	    m->out->flats_cap);

	f->name = name;
	f->count = count;
	return f;
}

struct flat_line *flat_line_add(struct pattern_maker *m, struct flat *f,
    enum flat_kind kind)
{
	struct flat_line *l = ARENA_PUSH(m->arena, f->line, f->nlines, f->lines_cap);

	l->kind = kind;
	l->closed = kind == FLAT_CUT;
	return l;
}

void flat_line_to(struct pattern_maker *m, struct flat_line *l, double x, double y)
{
	*ARENA_PUSH(m->arena, l->v, l->n, l->cap) = (struct flat_point){ x, y };
}

void flat_stroke(struct pattern_maker *m, struct flat *f, enum flat_kind kind,
    struct flat_point a, struct flat_point b)
{
	struct flat_line *l = flat_line_add(m, f, kind);

	flat_line_to(m, l, a.x_mm, a.y_mm);
	flat_line_to(m, l, b.x_mm, b.y_mm);
}

void flat_dim_add(struct pattern_maker *m, struct flat *f, struct flat_dim d)
{
	*ARENA_PUSH(m->arena, f->dim, f->ndims, f->dims_cap) = d;
}

static void flat_move(struct flat *f, double x, double y)
{
	for (size_t i = 0; i < f->nlines; i++) {
		for (size_t k = 0; k < f->line[i].n; k++) {
			f->line[i].v[k].x_mm += x;
			f->line[i].v[k].y_mm += y;
		}
	}
	for (size_t i = 0; i < f->ndims; i++) {
		struct flat_dim *d = &f->dim[i];

		d->a.x_mm += x;
		d->b.x_mm += x;
		d->a.y_mm += y;
		d->b.y_mm += y;
	}
}

void flat_settle(struct pattern_maker *m, struct flat *f)
{
	const struct flat_line *edge = &f->line[0];
	double left = INFINITY, right = -INFINITY, low = INFINITY, high = -INFINITY;

	for (size_t i = 0; i < edge->n; i++) {
		left = fmin(left, edge->v[i].x_mm);
		right = fmax(right, edge->v[i].x_mm);
		low = fmin(low, edge->v[i].y_mm);
		high = fmax(high, edge->v[i].y_mm);
	}
	flat_move(f, -left, -low);
	f->width_mm = right - left;
	f->height_mm = high - low;
	flat_dim_add(m, f, (struct flat_dim){ FLAT_ACROSS, { 0, 0 }, { f->width_mm, 0 },
	    { 0 }, f->width_mm, ANSWER_MM });
	flat_dim_add(m, f, (struct flat_dim){ FLAT_UP, { f->width_mm, 0 },
	    { f->width_mm, f->height_mm }, { 0 }, f->height_mm, ANSWER_MM });
}

struct flat *flat_rectangle(struct pattern_maker *m, str name, double w, double h)
{
	struct flat *f = flat_add(m, name, 1);
	struct flat_line *l = flat_line_add(m, f, FLAT_CUT);

	flat_line_to(m, l, 0, 0);
	flat_line_to(m, l, w, 0);
	flat_line_to(m, l, w, h);
	flat_line_to(m, l, 0, h);
	f->plain = true;
	return f;
}

double deg_sin(double deg)
{
	return sin(deg * PATTERN_PI / 180);
}

double deg_cos(double deg)
{
	return cos(deg * PATTERN_PI / 180);
}

double deg_tan(double deg)
{
	return tan(deg * PATTERN_PI / 180);
}

/* Depth of a line below the outside, in thicknesses. */
static double line_depth(enum pattern_line l)
{
	return l == LINE_INSIDE ? 1 : l == LINE_MEAN ? 0.5 : 0;
}

double line_shift_mm(const struct pattern_part *p, enum pattern_line to)
{
	if (to == LINE_AS_GIVEN)
		return 0;
	return (line_depth(p->given) - line_depth(to)) * p->thickness_mm;
}

str line_words(const struct pattern_part *p, enum pattern_line line)
{
	static const str words[] = { { "the sizes as given", 18 }, { "the outside", 11 },
		{ "the middle of the thickness", 27 }, { "the inside", 10 } };

	if (line == LINE_AS_GIVEN && p->given != LINE_AS_GIVEN)
		return words[p->given];
	return words[line];
}

unsigned divisions_or(const struct pattern_part *p, unsigned n)
{
	return p->divisions ? p->divisions : n;
}

unsigned curve_steps(unsigned divisions)
{
	return (PATTERN_DIVISIONS + divisions - 1) / divisions;
}

static bool is_size(double mm)
{
	return mm >= 0 && mm < SIZE_MOST_MM; /* false for NAN too */
}

/* What no shape can have. */
static str common_fault(const struct pattern_part *p)
{
	const double size[] = { p->thickness_mm, p->radius_mm, p->allowance_mm,
		p->width_mm, p->diameter_mm, p->run_mm, p->height_mm, p->base_mm,
		p->base2_mm, p->top_mm, p->angle_deg, fabs(p->offset_x_mm),
		fabs(p->offset_y_mm) };

	for (size_t i = 0; i < sizeof size / sizeof *size; i++)
		if (!is_size(size[i]))
			return STR("a size is below zero or beyond reason");
	if (!(p->k >= 0 && p->k < 1))
		return STR("K lies between 0 and 1");
	if (p->divisions && (p->divisions < 4 || p->divisions > PATTERN_DIVISIONS))
		return STR("the circle is divided into 4 to 360 parts");
	if (p->given == LINE_MEAN)
		return STR("sizes are measured outside or inside");
	if ((line_depth(p->line) != line_depth(p->given) && p->line != LINE_AS_GIVEN &&
	    !(p->thickness_mm > 0)) || (line_depth(p->wrap) != line_depth(p->given) &&
	    p->wrap != LINE_AS_GIVEN && !(p->thickness_mm > 0)))
		return STR("the thickness is not given, so no line inside it is known");
	return (str){ 0 };
}

static const struct {
	str (*fault)(const struct pattern_part *p);
	void (*make)(struct pattern_maker *m);
} shapes[PATTERN_SHAPES] = {
	[PATTERN_BRAKE] = { brake_fault, brake_make },
	[PATTERN_CYLINDER] = { cylinder_fault, cylinder_make },
	[PATTERN_ELBOW] = { elbow_fault, elbow_make },
	[PATTERN_SADDLE] = { saddle_fault, saddle_make },
	[PATTERN_CONE] = { cone_fault, cone_make },
	[PATTERN_BOX] = { box_fault, box_make },
	[PATTERN_SQUARE] = { square_fault, square_make },
};

static bool is_finite(const struct pattern *o)
{
	for (size_t i = 0; i < o->nanswers; i++)
		if (!(fabs(o->answer[i].value) < SIZE_MOST_MM * 100))
			return false;
	for (size_t i = 0; i < o->nflats; i++)
		if (!(o->flat[i].width_mm + o->flat[i].height_mm < SIZE_MOST_MM * 100))
			return false;
	return true;
}

struct pattern *pattern_reckon(struct arena *a, const struct pattern_part *p)
{
	struct pattern *out = arena_alloc(a, sizeof *out);
	struct pattern_maker m = { a, p, out };

	out->fault = common_fault(p);
	if (!out->fault.n)
		out->fault = shapes[p->shape].fault(p);
	if (out->fault.n)
		return out;
	shapes[p->shape].make(&m);
	if (!is_finite(out))
		*out = (struct pattern){ .fault = STR("the pattern would have no end") };
	return out;
}

double pattern_find(const struct pattern *p, str name)
{
	for (size_t i = 0; i < p->nanswers; i++)
		if (str_eq(p->answer[i].name, name))
			return p->answer[i].value;
	return NAN;
}
