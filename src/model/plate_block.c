/* The block that draws a blank with its holes, slots, bends and cuts. */
#include "model/drawing.h"

#include <string.h>

struct reading {
	struct binder *b;
	struct plate_block *p;
	struct plate_mark *marks;
	size_t cap;
	enum sheet_metal metal;
};

enum { MARKS_MOST = 200 };

static struct plate_mark *add_mark(struct reading *r, enum plate_mark_kind kind,
    struct said value, const struct quantity *v, size_t n)
{
	struct plate_mark *m = ARENA_PUSH(r->b->arena, r->marks, r->p->nmarks, r->cap);

	m->kind = kind;
	m->pos = said_pos(value);
	for (size_t i = 0; i < n; i++)
		m->v[i] = v[i];
	return m;
}

/* n lengths; one unit at the end serves all. */
static void read_mark(struct reading *r, enum plate_mark_kind kind, struct said value,
    str text, size_t n)
{
	struct quantity_list list;
	struct quantity_fault fault;

	if (quantity_list_parse(r->b->arena, text, QUANTITY_LENGTH, r->metal, &list,
	    &fault) != QUANTITY_OK) {
		complain_fault(r->b, value, &fault);
		return;
	}
	if (list.n == n) {
		add_mark(r, kind, value, list.v, n);
		return;
	}
	finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, said_pos(value),
	    "\"%.*s\" has %u sizes; this line is left out", STR_ARG(value.s),
	    (unsigned)list.n), "write %u sizes", (unsigned)n);
}

static void key_hole(struct reading *r, struct said value)
{
	read_mark(r, MARK_HOLE, value, value.s, 3);
}

static void key_slot(struct reading *r, struct said value)
{
	read_mark(r, MARK_SLOT, value, value.s, 4);
}

/* "y at 2 in", "x at 2 in", "x 2 in" or "2 in", which is along x. */
static void key_bend(struct reading *r, struct said value)
{
	enum plate_mark_kind kind = MARK_BEND_X;
	struct said t = value;

	if (said_skip(&t, STR("y")))
		kind = MARK_BEND_Y;
	else
		said_skip(&t, STR("x"));
	said_skip(&t, STR("at"));
	read_mark(r, kind, t, t.s, 1);
}

/* "x1, y1 to x2, y2": the word becomes a comma of the same length, so that places
 * inside the value stay true. */
static void key_cut(struct reading *r, struct said value)
{
	size_t at = str_find(value.s, STR(" to "), 0);
	char *list = arena_copy(r->b->arena, value.s.p, value.s.n);

	if (at < value.s.n)
		memcpy(list + at, " ,  ", 4);
	read_mark(r, MARK_CUT, value, (str){ list, value.s.n }, 4);
}

static void key_length(struct reading *r, struct said value)
{
	read_quantity(r->b, value, QUANTITY_LENGTH, r->metal, &r->p->length);
}

static void key_width(struct reading *r, struct said value)
{
	read_quantity(r->b, value, QUANTITY_LENGTH, r->metal, &r->p->width);
}

static void key_thickness(struct reading *r, struct said value)
{
	read_quantity(r->b, value, QUANTITY_LENGTH, r->metal, &r->p->thickness);
}

static const struct plate_key {
	str key;
	void (*read)(struct reading *r, struct said value);
	bool many;
} keys[] = {
	{ { "length", 6 }, key_length, false }, { { "width", 5 }, key_width, false },
	{ { "thickness", 9 }, key_thickness, false }, { { "hole", 4 }, key_hole, true },
	{ { "slot", 4 }, key_slot, true }, { { "bend", 4 }, key_bend, true },
	{ { "cut", 3 }, key_cut, true },
};
enum { KEYS = sizeof keys / sizeof *keys };

static void read_line(struct reading *r, const struct drawing_line *line, bool *seen)
{
	str names[KEYS];
	size_t row = KEYS;

	for (size_t i = 0; i < KEYS; i++) {
		names[i] = keys[i].key;
		if (words_same(names[i], line->key.s))
			row = i;
	}
	if (row == KEYS) {
		drawing_complain(r->b, FINDING_UNKNOWN_KEY, line->key, "plate", names,
		    KEYS);
	} else if (seen[row] && !keys[row].many) {
		drawing_complain(r->b, FINDING_DUPLICATE_KEY, line->key, "plate", names,
		    KEYS);
	} else if (r->p->nmarks == MARKS_MOST) {
		complain(r->b, FINDING_OVER_LIMIT, said_pos(line->key),
		    "there are more than %d marks; this line is left out", MARKS_MOST);
	} else {
		seen[row] = true;
		keys[row].read(r, line->value);
	}
}

void read_plate_block(struct binder *b, const struct block *v, struct plate_block *out)
{
	const struct assignment *a = b->a;
	struct reading r = { .b = b, .p = out, .metal = member_metal(a, 0) };
	struct drawing_line line;
	bool seen[KEYS] = { false };
	uint32_t i = 0;

	*out = (struct plate_block){ .pos = v->pos };
	while (drawing_next(b, v, &i, &line))
		read_line(&r, &line, seen);
	if (!seen[2] && a->nthicknesses)
		out->thickness = a->thicknesses[0];
	if (!seen[0] || !seen[1])
		finding_repair(b->f, complain(b, FINDING_BAD_DRAWING, v->pos,
		    "this plate block says no %s", seen[0] ? "width" : "length"),
		    "add a line such as \"%s\"", seen[0] ? "width: 4 in"
		    : "length: 6 in");
	out->marks = r.marks;
}
