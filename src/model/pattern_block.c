/* The block that gives the sizes of a part to be laid out flat. */
#include "model/pattern_block.h"

#include "model/drawing.h"

struct reading {
	struct binder *b;
	struct pattern_block *p;
	enum sheet_metal metal;
};

struct pattern_key {
	str key;
	size_t offset;           /* in struct pattern_block; alike: one thing, two keys */
	void (*read)(struct reading *r, const struct pattern_key *row, struct said value);
	unsigned shapes;         /* one bit for each shape that has it */
	uint32_t value;          /* for the reader: a kind, a side, the most of a count */
};

#define W(text, value) { { text, sizeof text - 1 }, value }
#define WORDS(name, what, rows) static const struct words name = { \
	{ what, sizeof what - 1 }, rows, sizeof rows / sizeof *rows }

static const struct word shape_rows[] = {
	W("brake", SHAPE_BRAKE), W("braked part", SHAPE_BRAKE),
	W("cylinder", SHAPE_CYLINDER), W("elbow", SHAPE_ELBOW), W("saddle", SHAPE_SADDLE),
	W("lateral", SHAPE_SADDLE), W("cone", SHAPE_CONE), W("tapered box", SHAPE_BOX),
	W("square to round", SHAPE_SQUARE),
};
WORDS(words_shape, "a shape of a pattern", shape_rows);

static const struct word size_rows[] = {
	W("outside", SIDE_OUTSIDE), W("inside", SIDE_INSIDE),
};
WORDS(words_size, "a side that sizes are measured on", size_rows);

static const struct word line_rows[] = {
	W("outside", SIDE_OUTSIDE), W("mean", SIDE_MEAN), W("inside", SIDE_INSIDE),
	W("mold line", SIDE_MOLD), W("mould line", SIDE_MOLD), W("as given", SIDE_MOLD),
};
WORDS(words_line, "a line of the thickness", line_rows);

static const struct word way_rows[] = { W("up", 0), W("down", 1) };
WORDS(words_way, "a direction of a bend", way_rows);

str flat_shape_word(enum flat_shape s)
{
	return words_show(&words_shape, s);
}

static void *field_of(struct reading *r, const struct pattern_key *row)
{
	return (char *)r->p + row->offset;
}

static void key_shape(struct reading *r, const struct pattern_key *row, struct said value)
{
	(void)r;
	(void)row;
	(void)value; /* Read before all other lines. */
}

static void key_quantity(struct reading *r, const struct pattern_key *row,
    struct said value)
{
	read_quantity(r->b, value, (enum quantity_kind)row->value, r->metal,
	    field_of(r, row));
}

static void key_count(struct reading *r, const struct pattern_key *row, struct said value)
{
	read_count(r->b, value, 1, row->value, field_of(r, row));
}

static void key_number(struct reading *r, const struct pattern_key *row,
    struct said value)
{
	read_number(r->b, value, field_of(r, row));
}

static void read_side(struct reading *r, const struct pattern_key *row, struct said value,
    const struct words *w)
{
	enum flat_side *side = field_of(r, row);
	uint32_t v;

	if (read_word(r->b, value, w, &v))
		*side = (enum flat_side)v;
}

static void key_side(struct reading *r, const struct pattern_key *row, struct said value)
{
	read_side(r, row, value, &words_line);
}

static void key_sizes(struct reading *r, const struct pattern_key *row, struct said value)
{
	read_side(r, row, value, &words_size);
}

/* A length, or a pipe size, whose outside diameter counts. */
static bool read_round(struct reading *r, struct said value, struct quantity *q,
    struct pipe_size *pipe)
{
	struct quantity_fault fault;

	*pipe = (struct pipe_size){ 0 };
	if (quantity_parse(value.s, QUANTITY_PIPE, METAL_NONE, q,
	    &fault) == QUANTITY_OK) {
		*pipe = pipe_size_of(r->b->arena, q);
		return true;
	}
	if (!read_quantity(r->b, value, QUANTITY_LENGTH, METAL_NONE, q))
		return false;
	pipe->od_mm = q->lo;
	pipe->text = value.s;
	return true;
}

static void key_diameter(struct reading *r, const struct pattern_key *row,
    struct said value)
{
	struct pipe_size pipe;

	if (!read_round(r, value, &r->p->diameter, &pipe))
		return;
	r->p->sizes = (enum flat_side)row->value;
	r->p->pipe = r->p->diameter.kind == QUANTITY_PIPE;
	if (pipe.wall_mm > 0)
		r->p->branch = pipe;
}

static void key_run(struct reading *r, const struct pattern_key *row, struct said value)
{
	(void)row;
	read_round(r, value, &r->p->run_size, &r->p->run);
}

static void key_branch(struct reading *r, const struct pattern_key *row,
    struct said value)
{
	(void)row;
	read_round(r, value, &r->p->branch_size, &r->p->branch);
}

/* "14 in", or "14 x 10 in" of an oblong. */
static void key_base(struct reading *r, const struct pattern_key *row, struct said value)
{
	struct quantity_list list;
	struct quantity_fault fault;

	(void)row;
	if (quantity_product_parse(r->b->arena, value.s, r->metal, &list, NULL,
	    &fault) != QUANTITY_OK) {
		complain_fault(r->b, value, &fault);
		return;
	}
	r->p->base = list.v[0];
	if (list.n == 2 && r->p->shape == SHAPE_SQUARE)
		r->p->base2 = list.v[1];
	else if (list.n > 1)
		complain(r->b, FINDING_BAD_DRAWING, said_pos(value),
		    "\"%.*s\" has too many sizes; the first counts", STR_ARG(value.s));
}

/* Fills v with the quantities of a list; more than there is room for is a mistake. */
static uint32_t read_list(struct reading *r, struct said value, enum quantity_kind kind,
    struct quantity *v, uint32_t most)
{
	struct quantity_list list;
	struct quantity_fault fault;

	if (quantity_list_parse(r->b->arena, value.s, kind, r->metal, &list,
	    &fault) != QUANTITY_OK) {
		complain_fault(r->b, value, &fault);
		return 0;
	}
	if (list.n > most)
		complain(r->b, FINDING_BAD_DRAWING, said_pos(value),
		    "\"%.*s\" has more than %u sizes; the rest is left out",
		    STR_ARG(value.s), most);
	for (uint32_t i = 0; i < list.n && i < most; i++)
		v[i] = list.v[i];
	return list.n < most ? (uint32_t)list.n : most;
}

static void key_flanges(struct reading *r, const struct pattern_key *row,
    struct said value)
{
	(void)row;
	r->p->nflanges = read_list(r, value, QUANTITY_LENGTH, r->p->flanges,
	    FLANGES_MOST);
}

static void key_bends(struct reading *r, const struct pattern_key *row, struct said value)
{
	(void)row;
	r->p->nbends = read_list(r, value, QUANTITY_ANGLE, r->p->bends, FLANGES_MOST - 1);
}

static void key_ways(struct reading *r, const struct pattern_key *row, struct said value)
{
	struct said part;
	uint32_t down;

	(void)row;
	while (said_next(&value, ",", &part) && r->p->ndirections < FLANGES_MOST - 1)
		if (read_word(r->b, part, &words_way, &down))
			r->p->down[r->p->ndirections++] = down;
}

/* Along the base, and across it. */
static void key_offset(struct reading *r, const struct pattern_key *row,
    struct said value)
{
	struct quantity v[2] = { { 0 } };

	(void)row;
	read_list(r, value, QUANTITY_LENGTH, v, r->p->shape == SHAPE_SQUARE ? 2 : 1);
	r->p->offset_x = v[0];
	r->p->offset_y = v[1];
}

#define BIT(shape) (1u << SHAPE_##shape)
#define EVERY (~0u)
#define KEY(name, field, reader, shapes, value) \
	{ { name, sizeof name - 1 }, offsetof(struct pattern_block, field), reader, \
	    shapes, value }
#define LENGTH(name, field, shapes) \
	KEY(name, field, key_quantity, shapes, QUANTITY_LENGTH)
#define TAPERED (BIT(CONE) | BIT(BOX) | BIT(SQUARE))
#define ROUND (BIT(CYLINDER) | BIT(ELBOW))

enum { ROW_SHAPE, ROW_THICKNESS, ROW_OTHER };

static const struct pattern_key keys[] = {
	[ROW_SHAPE] = KEY("shape", shape, key_shape, EVERY, 0),
	[ROW_THICKNESS] = LENGTH("thickness", thickness, EVERY),
	[ROW_OTHER] = LENGTH("tolerance", tolerance, EVERY),
	KEY("sizes", sizes, key_sizes, TAPERED | BIT(BRAKE), 0),
	KEY("line", line, key_side, TAPERED | BIT(ELBOW) | BIT(SADDLE), 0),
	KEY("stretch-out", stretch, key_side, ROUND | BIT(SADDLE), 0),
	KEY("flanges", flanges, key_flanges, BIT(BRAKE), 0),
	KEY("bends", bends, key_bends, BIT(BRAKE), 0),
	KEY("directions", down, key_ways, BIT(BRAKE), 0),
	LENGTH("width", width, BIT(BRAKE)),
	KEY("K", k, key_number, BIT(BRAKE) | BIT(BOX), 0),
	LENGTH("allowance", allowance, BIT(BRAKE) | BIT(BOX)),
	LENGTH("radius", radius, BIT(BRAKE) | BIT(BOX) | BIT(ELBOW)),
	KEY("outside diameter", diameter, key_diameter, ROUND, SIDE_OUTSIDE),
	KEY("inside diameter", diameter, key_diameter, ROUND, SIDE_INSIDE),
	LENGTH("height", height, ROUND | TAPERED),
	LENGTH("length", height, BIT(SADDLE)),
	KEY("angle", angle, key_quantity, BIT(ELBOW) | BIT(SADDLE), QUANTITY_ANGLE),
	KEY("pieces", pieces, key_count, BIT(ELBOW) | BIT(BOX) | BIT(SQUARE), 30),
	KEY("run", run, key_run, BIT(SADDLE), 0),
	KEY("branch", branch, key_branch, BIT(SADDLE), 0),
	KEY("offset", offset_x, key_offset, BIT(SADDLE) | BIT(SQUARE), 0),
	KEY("base", base, key_base, TAPERED, 0),
	LENGTH("top", top, TAPERED),
	KEY("sides", sides, key_count, BIT(BOX), 24),
	KEY("divisions", divisions, key_count,
	    ROUND | BIT(SADDLE) | BIT(CONE) | BIT(SQUARE),
	    360),
};
enum { KEYS = sizeof keys / sizeof *keys };

static size_t find_key(str key)
{
	size_t i = 0;

	while (i < KEYS && !words_same(keys[i].key, key))
		i++;
	return i;
}

static void complain_shapeless(struct reading *r, const struct block *v, struct said near)
{
	struct finding *d = complain(r->b, FINDING_BAD_DRAWING, v->pos,
	    "this block does not say which shape it lays out");

	if (near.s.n)
		finding_offer(r->b->f, d, said_pos(near), near.s, keys[ROW_SHAPE].key);
	else
		finding_repair(r->b->f, d, "add a line such as \"shape: cone\"");
}

/* The shape decides which other keys count, so it is read before them. */
static bool read_shape(struct reading *r, const struct block *v)
{
	struct findings *all = r->b->f, *scratch = findings_new(r->b->arena);
	struct said near = { 0 };
	struct drawing_line line;
	uint32_t i = 0, shape;
	bool more = true;

	while (more) {
		r->b->f = scratch; /* The second reading tells of bad lines. */
		more = drawing_next(r->b, v, &i, &line);
		r->b->f = all;
		if (more && likely_word(line.key.s, &keys[ROW_SHAPE].key, 1).n)
			near = line.key;
		if (!more || find_key(line.key.s) != ROW_SHAPE)
			continue;
		if (!read_word(r->b, line.value, &words_shape, &shape))
			return false;
		r->p->shape = (enum flat_shape)shape;
		return true;
	}
	complain_shapeless(r, v, near);
	return false;
}

static void complain_foreign(struct reading *r, struct said key)
{
	str shape = flat_shape_word(r->p->shape);
	bool vowel = shape.p[0] == 'e';

	complain(r->b, FINDING_BAD_DRAWING, said_pos(key),
	    "%s %.*s has no %.*s; this line is left out", vowel ? "an" : "a",
	    STR_ARG(shape), STR_ARG(key.s));
}

static void read_lines(struct reading *r, const struct block *v, bool *seen)
{
	struct drawing_line line;
	str names[KEYS];
	uint32_t i = 0;

	for (size_t k = 0; k < KEYS; k++)
		names[k] = keys[k].key;
	while (drawing_next(r->b, v, &i, &line)) {
		size_t row = find_key(line.key.s);
		bool twice = false;

		for (size_t k = 0; k < KEYS && row < KEYS; k++)
			twice |= seen[k] && keys[k].offset == keys[row].offset;
		if (row == KEYS || twice) {
			drawing_complain(r->b, row == KEYS ? FINDING_UNKNOWN_KEY
			    : FINDING_DUPLICATE_KEY, line.key, "pattern", names, KEYS);
		} else if (!(keys[row].shapes >> r->p->shape & 1)) {
			complain_foreign(r, line.key);
		} else {
			seen[row] = true;
			keys[row].read(r, &keys[row], line.value);
		}
	}
}

/* One bend given stands for all; otherwise there is one between each two flanges. */
static void finish_bends(struct reading *r, const struct block *v)
{
	struct pattern_block *p = r->p;
	uint32_t want = p->nflanges ? p->nflanges - 1 : 0;

	for (; p->nbends == 1 && p->nbends < want; p->nbends = want)
		for (uint32_t i = 1; i < want; i++)
			p->bends[i] = p->bends[0];
	if (p->nbends == want && (!p->ndirections || p->ndirections == want))
		return;
	finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, v->pos,
	    "%u flanges have %u bends between them, not %u", p->nflanges, want,
	    p->nbends == want ? p->ndirections : p->nbends),
	    "write one angle and one direction for each bend");
}

bool read_pattern_block(struct binder *b, const struct block *v,
    struct pattern_block *out)
{
	const struct assignment *a = b->a;
	struct reading r = { b, out, member_metal(a, 0) };
	bool seen[KEYS] = { false };

	*out = (struct pattern_block){ .shape = SHAPE_COUNT, .pos = v->pos };
	out->name = str_trim(str_sub(v->key, sizeof "pattern" - 1, v->key.n));
	if (!read_shape(&r, v))
		return false;
	read_lines(&r, v, seen);
	if (out->branch.wall_mm > 0 && !seen[ROW_THICKNESS])
		out->thickness = (struct quantity){ 0 };
	else if (!seen[ROW_THICKNESS] && a->nthicknesses)
		out->thickness = a->thicknesses[0];
	if (out->shape == SHAPE_BRAKE)
		finish_bends(&r, v);
	return true;
}
