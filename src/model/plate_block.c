/* The block that draws a blank with its holes, slots, bends and cuts, or the members of a
 * weldment. */
#include "model/drawing.h"

#include "model/member_line.h"

#include <string.h>

struct reading {
	struct binder *b;
	struct plate_block *p;
	struct plate_mark *marks;
	size_t cap;
	enum sheet_metal metal;
	struct weldment *w;      /* its members, when there are any */
	struct member *members;
	size_t members_cap;
};

enum { MARKS_MOST = 200 };

static struct plate_mark *add_mark(struct reading *r, enum plate_mark_kind kind,
    struct said value, const struct quantity *v, size_t n)
{
	struct plate_mark *m = ARENA_PUSH(r->b->arena, r->marks, r->p->nmarks, r->cap);

	m->kind = kind;
	m->kerf = KERF_NONE;
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

/* Above or below of an upright line says nothing, nor does left or right of a level one. */
static void read_kerf_side(struct reading *r, struct said side, struct plate_mark *m)
{
	static const struct word rows[] = { { WORD("above"), KERF_ABOVE },
		{ WORD("below"), KERF_BELOW }, { WORD("left"), KERF_LEFT },
		{ WORD("right"), KERF_RIGHT }, { WORD("middle"), KERF_MIDDLE } };
	static const struct words sides = { WORD("a side"), rows, 5 };
	bool level = m->v[1].lo == m->v[3].lo, upright = m->v[0].lo == m->v[2].lo;

	if (!read_word(r->b, side, &sides, &m->kerf)) {
		m->kerf = KERF_NONE;
		return;
	}
	if (!(upright && (m->kerf == KERF_ABOVE || m->kerf == KERF_BELOW)) &&
	    !(level && (m->kerf == KERF_LEFT || m->kerf == KERF_RIGHT)))
		return;
	finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, said_pos(side),
	    "\"%.*s\" says no side of %s line", STR_ARG(side.s),
	    level ? "a level" : "an upright"), level ? "write above, below or middle"
	                                             : "write left, right or middle");
	m->kerf = KERF_NONE;
}

/* "x1, y1 to x2, y2": the word becomes a comma of the same length, so that places
 * inside the value stay true. */
static void key_cut(struct reading *r, struct said value)
{
	size_t before = r->p->nmarks, at;
	struct said side = { 0 };
	char *list;

	at = str_find(value.s, STR(", kerf "), 0);
	if (at < value.s.n) {
		side = said_trim(said_sub(value, at + 7, value.s.n));
		value = said_trim(said_sub(value, 0, at));
	}
	list = arena_copy(r->b->arena, value.s.p, value.s.n);
	at = str_find(value.s, STR(" to "), 0);
	if (at < value.s.n)
		memcpy(list + at, " ,  ", 4);
	read_mark(r, MARK_CUT, value, (str){ list, value.s.n }, 4);
	if (side.s.n && r->p->nmarks > before)
		read_kerf_side(r, side, &r->marks[before]);
}

static void key_kerf(struct reading *r, struct said value)
{
	if (read_quantity(r->b, value, QUANTITY_LENGTH, METAL_NONE, &r->p->kerf))
		keep_size(r->b, value, &r->p->kerf);
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

static void key_member(struct reading *r, struct said value)
{
	struct member m;

	if (member_read(r->b, value, &m))
		*ARENA_PUSH(r->b->arena, r->members, r->w->n, r->members_cap) = m;
}

static void key_seen_from(struct reading *r, struct said value)
{
	static const struct word rows[] = { { { "right", 5 }, 0 }, { { "left", 4 }, 1 } };
	static const struct words sides = { { "a side", 6 }, rows, 2 };
	uint32_t side;

	if (read_word(r->b, value, &sides, &side))
		r->w->from_left = side == 1;
}

static void key_dimensions(struct reading *r, struct said value)
{
	static const struct word rows[] = { { WORD("edge"), 0 }, { WORD("chain"), 1 } };
	static const struct words ways = { WORD("a way to give distances"), rows, 2 };
	uint32_t way;

	if (read_word(r->b, value, &ways, &way))
		r->p->chain = way == 1;
}

static const struct plate_key {
	str key;
	void (*read)(struct reading *r, struct said value);
	bool many;
} keys[] = {
	{ { "length", 6 }, key_length, false }, { { "width", 5 }, key_width, false },
	{ { "thickness", 9 }, key_thickness, false }, { { "hole", 4 }, key_hole, true },
	{ { "slot", 4 }, key_slot, true }, { { "bend", 4 }, key_bend, true },
	{ { "cut", 3 }, key_cut, true }, { { "member", 6 }, key_member, true },
	{ { "seen from", 9 }, key_seen_from, false }, { { "kerf", 4 }, key_kerf, false },
	{ { "dimensions", 10 }, key_dimensions, false },
};
enum { KEYS = sizeof keys / sizeof *keys, KEY_MEMBER = 7, KEY_DIMENSIONS = 10 };

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
	} else if (r->p->nmarks + r->w->n == MARKS_MOST) {
		complain(r->b, FINDING_OVER_LIMIT, said_pos(line->key),
		    "there are more than %d marks; this line is left out", MARKS_MOST);
	} else {
		seen[row] = true;
		keys[row].read(r, line->value);
	}
}

static void complain_both(struct binder *b, const struct block *v)
{
	finding_repair(b->f, complain(b, FINDING_BAD_DRAWING, v->pos,
	    "this plate block has members and sizes of a blank; only the members are drawn"),
	    "put the blank into a plate block of its own");
}

static void complain_no_size(struct binder *b, const struct block *v, bool length)
{
	finding_repair(b->f, complain(b, FINDING_BAD_DRAWING, v->pos,
	    "this plate block says no %s", length ? "length" : "width"),
	    "add a line such as \"%s\"", length ? "length: 6 in" : "width: 4 in");
}

/* A block with members is a weldment, any other a blank. */
void read_plate_block(struct binder *b, const struct block *v, struct drawing *out)
{
	const struct assignment *a = b->a;
	struct plate_block *p = &out->plate;
	struct weldment *w = arena_alloc(b->arena, sizeof *w);
	struct reading r = { .b = b, .p = p, .metal = member_metal(a, 0), .w = w };
	struct drawing_line line;
	bool seen[KEYS] = { false };
	uint32_t i = 0;

	out->kind = DRAWING_PLATE;
	*p = (struct plate_block){ .pos = v->pos };
	w->pos = v->pos;
	while (drawing_next(b, v, &i, &line))
		read_line(&r, &line, seen);
	if (seen[KEY_MEMBER]) {
		out->kind = DRAWING_WELDMENT;
		out->weldment = w;
		w->v = r.members;
		if (seen[0] || seen[1] || seen[2] || seen[KEY_DIMENSIONS] ||
		    p->nmarks)
			complain_both(b, v);
		*p = (struct plate_block){ .pos = v->pos };
		return;
	}
	if (!seen[2] && a->nthicknesses)
		p->thickness = a->thicknesses[0];
	if (!seen[0] || !seen[1])
		complain_no_size(b, v, !seen[0]);
	p->marks = r.marks;
}
