/* A member of a weldment: parts between semicolons, the name first. */
#include "model/member_line.h"

#include "model/drawing.h"

#include <string.h>

struct member_line {
	struct binder *b;
	struct member *m;
	const struct piece *piece;
	enum sheet_metal metal;
	struct member_place *at;
	size_t at_cap;
	bool shaped, failed;
	bool heel[3];            /* at the far side along x, y, z */
};

static void fail_part(struct member_line *r, struct said t, const char *wanted)
{
	finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, said_pos(t),
	    "\"%.*s\" is not understood in a member; this line is left out", STR_ARG(t.s)),
	    "%s", wanted);
	r->failed = true;
}

static void fail_quantity(struct member_line *r, struct said t,
    const struct quantity_fault *fault)
{
	complain_fault(r->b, t, fault);
	r->failed = true;
}

static bool take_axis(struct said *t, enum member_axis *out)
{
	static const str names[] = { { "x", 1 }, { "y", 1 }, { "z", 1 } };

	for (size_t i = 0; i < 3; i++)
		if (said_skip(t, names[i])) {
			*out = (enum member_axis)i;
			return true;
		}
	return false;
}

/* ---- the parts ---- */

/* "along x". */
static void read_along(struct member_line *r, struct said t)
{
	struct said rest = t;

	if (!take_axis(&rest, &r->m->along) || rest.s.n)
		fail_part(r, t, "write \"along x\", \"along y\" or \"along z\"");
}

/* n lengths, or any number when n is 0; " to " parts them like a comma. */
static bool read_list(struct member_line *r, struct said t, size_t n,
    struct quantity_list *list)
{
	struct quantity_fault fault;
	char *copy = arena_copy(r->b->arena, t.s.p, t.s.n);
	str text = { copy, t.s.n };

	for (size_t at = 0; (at = str_find(text, STR(" to "), at)) < text.n; at += 4)
		memcpy(copy + at, " ,  ", 4);
	if (quantity_list_parse(r->b->arena, text, QUANTITY_LENGTH, r->metal, list,
	    &fault) != QUANTITY_OK) {
		fail_quantity(r, t, &fault);
		return false;
	}
	return !n || list->n == n;
}

/* "at 0, 8-3/4, 26-1/2 in". */
static void read_at(struct member_line *r, struct said t)
{
	struct quantity_list list;
	struct member_place *p;

	if (!read_list(r, t, 3, &list)) {
		if (!r->failed)
			fail_part(r, t, "write how far from the left, from the front and up: "
			    "\"at 4, 0, 2-1/2 in\"");
		return;
	}
	p = ARENA_PUSH(r->b->arena, r->at, r->m->nat, r->at_cap);
	p->pos = said_pos(t);
	for (size_t i = 0; i < 3; i++)
		p->v[i] = list.v[i];
}

/* "corners 0, 0 to 4, 0 to 0, 4 in". */
static void read_corners(struct member_line *r, struct said t)
{
	struct quantity_list list;

	if (!read_list(r, t, 0, &list))
		return;
	if (list.n % 2 || list.n < 6 || list.n > 2 * CORNERS_MOST) {
		fail_part(r, t, "write 3 to 16 corners: \"corners 0, 0 to 4, 0 to 0, 4 in\"");
		return;
	}
	r->m->ncorners = (uint32_t)list.n / 2;
	for (size_t i = 0; i < list.n; i++)
		r->m->corners_mm[i] = list.v[i].lo;
}

/* "turned 25 deg", "turned 25 deg about x". */
static void read_turned(struct member_line *r, struct said t)
{
	struct quantity q;
	struct quantity_fault fault;
	struct said rest;
	size_t used;

	if (quantity_prefix(t.s, QUANTITY_ANGLE, METAL_NONE, &q, &used, &fault) != QUANTITY_OK) {
		fail_quantity(r, t, &fault);
		return;
	}
	r->m->turn_deg = q.lo;
	rest = said_trim(said_sub(t, used, t.s.n));
	if (rest.s.n && (!said_skip(&rest, STR("about")) || !take_axis(&rest, &r->m->about) ||
	    rest.s.n))
		fail_part(r, t, "write \"turned 25 deg\" or \"turned 25 deg about x\"");
}

static void read_wall(struct member_line *r, struct said t)
{
	struct quantity q;

	r->failed |= !read_quantity(r->b, t, QUANTITY_LENGTH, r->metal, &q);
	r->m->wall_mm = q.lo;
}

/* "heel back top": on which sides of its box the corner of an angle lies. */
static void read_heel(struct member_line *r, struct said t)
{
	static const struct { str word; enum member_axis axis; bool far; } sides[] = {
		{ { "left", 4 }, AXIS_X, false }, { { "right", 5 }, AXIS_X, true },
		{ { "front", 5 }, AXIS_Y, false }, { { "back", 4 }, AXIS_Y, true },
		{ { "bottom", 6 }, AXIS_Z, false }, { { "top", 3 }, AXIS_Z, true },
	};
	struct said rest = t, word;

	while (said_word(&rest, &word)) {
		size_t i = 0;

		while (i < 6 && !str_eq_nocase(word.s, sides[i].word))
			i++;
		if (i == 6) {
			fail_part(r, t, "write two of left or right, front or back, bottom or "
			    "top: \"heel back bottom\"");
			return;
		}
		r->heel[sides[i].axis] = sides[i].far;
	}
}

/* A shape, with the way its length runs if one is named. */
static bool read_shape(struct member_line *r, struct said t)
{
	static const struct { str word; enum member_shape shape; } shapes[] = {
		{ { "flat bar", 8 }, MEMBER_SOLID }, { { "plate", 5 }, MEMBER_SOLID },
		{ { "bar", 3 }, MEMBER_SOLID }, { { "tube", 4 }, MEMBER_TUBE },
		{ { "angle", 5 }, MEMBER_ANGLE }, { { "pipe", 4 }, MEMBER_PIPE },
		{ { "round bar", 9 }, MEMBER_ROUND }, { { "round", 5 }, MEMBER_ROUND },
	};

	for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++) {
		struct said rest = t;

		if (!said_skip(&rest, shapes[i].word))
			continue;
		r->m->shape = shapes[i].shape;
		r->shaped = true;
		rest = said_trim(rest);
		if (!rest.s.n)
			return true;
		if (said_skip(&rest, STR("along")))
			read_along(r, rest);
		else
			fail_part(r, t, "part what follows the shape by a semicolon");
		return true;
	}
	return false;
}

/* "36 x 2-1/2 x 2-1/2 in", "1/4 in along y", "NPS 2 schedule 40 x 24 in along z". */
static void read_size(struct member_line *r, struct said t)
{
	struct quantity_list list;
	struct quantity_fault fault;
	struct said rest;
	size_t used = 0;

	if (quantity_product_parse(r->b->arena, t.s, r->metal, &list, &used, &fault) !=
	    QUANTITY_OK) {
		fail_quantity(r, t, &fault);
		return;
	}
	rest = said_trim(said_sub(t, used, t.s.n));
	if (rest.s.n && (!said_skip(&rest, STR("along")) || !take_axis(&rest, &r->m->along) ||
	    rest.s.n)) {
		fail_part(r, t, "part sizes and words by semicolons");
		return;
	}
	if (list.n == 2 && list.v[0].kind == QUANTITY_PIPE) {
		r->m->pipe = pipe_size_of(r->b->arena, &list.v[0]);
		r->m->size[0] = list.v[1];
		r->m->nsize = 1;
		return;
	} else if (list.n != 1 && list.n != 3) {
		fail_part(r, t, "write the size from left to right, from front to back and up: "
		    "\"36 x 2-1/2 x 2-1/2 in\"");
		return;
	}
	r->m->nsize = (uint32_t)list.n;
	for (size_t i = 0; i < list.n; i++) {
		r->m->size[i] = list.v[i];
		if (list.n == 3)
			r->m->size_mm[i] = list.v[i].lo;
	}
}

static void read_part(struct member_line *r, struct said t)
{
	static const struct { str word; void (*read)(struct member_line *, struct said); }
	rows[] = { { { "at", 2 }, read_at }, { { "along", 5 }, read_along },
		{ { "corners", 7 }, read_corners }, { { "turned", 6 }, read_turned },
		{ { "wall", 4 }, read_wall }, { { "heel", 4 }, read_heel } };

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct said rest = t;

		if (said_skip(&rest, rows[i].word)) {
			rows[i].read(r, said_trim(rest));
			return;
		}
	}
	if (!read_shape(r, t))
		read_size(r, t);
}

/* ---- what the piece of that name tells ---- */

static uint32_t find_piece(const struct assignment *a, str name)
{
	for (uint32_t i = 0; i < a->npieces; i++)
		if (words_same(a->pieces[i].name, name))
			return i;
	return NONE;
}

static bool mentions(str s, str needle)
{
	for (str word; str_word(&s, &word);)
		if (str_eq_nocase(word, needle))
			return true;
	return false;
}

static enum member_shape shape_of_piece(const struct piece *p)
{
	if (p->pipe.od_mm > 0 || mentions(p->material, STR("pipe")))
		return MEMBER_PIPE;
	if (mentions(p->material, STR("tube")))
		return MEMBER_TUBE;
	if (mentions(p->material, STR("angle")))
		return MEMBER_ANGLE;
	return mentions(p->material, STR("round")) ? MEMBER_ROUND : MEMBER_SOLID;
}

static void complete_from_piece(struct member_line *r)
{
	struct member *m = r->m;
	const struct piece *p = r->piece;

	if (!p)
		return;
	if (!r->shaped)
		m->shape = shape_of_piece(p);
	if (!m->nsize && p->pipe.od_mm > 0 && p->ndims) {
		m->pipe = p->pipe;
		m->nsize = 1;
		m->size[0] = p->dims[0];
	}
	if (!(m->wall_mm > 0))
		m->wall_mm = piece_wall_mm(r->b->a, p);
}

/* A pipe has one size, its length. */
static void complete_pipe(struct member *m)
{
	if (!(m->pipe.od_mm > 0) || m->nsize != 1)
		return;
	m->shape = MEMBER_PIPE;
	if (m->pipe.wall_mm > 0)
		m->wall_mm = m->pipe.wall_mm;
	if (m->along == AXIS_NONE)
		m->along = AXIS_Z;
	for (int i = 0; i < 3; i++)
		m->size_mm[i] = m->pipe.od_mm;
	m->size_mm[m->along] = m->size[0].lo;
}

/* A length runs along the longest side; an outline is as thick as its one size. */
static void complete_along(struct member_line *r, struct said value)
{
	struct member *m = r->m;

	if (m->ncorners && m->nsize == 1 && m->along != AXIS_NONE)
		m->size_mm[m->along] = m->size[0].lo;
	else if (m->ncorners)
		fail_part(r, value, "an outline needs its thickness and the way that runs: "
		    "\"1/4 in along y\"");
	else if (m->nsize != 3 && !(m->pipe.od_mm > 0))
		fail_part(r, value, "write the size from left to right, from front to back and up: "
		    "\"36 x 2-1/2 x 2-1/2 in\"");
	if (m->along != AXIS_NONE)
		return;
	m->along = AXIS_X;
	for (int i = 1; i < 3; i++)
		if (m->size_mm[i] > m->size_mm[m->along])
			m->along = (enum member_axis)i;
}

static void complete_heel(struct member_line *r)
{
	enum member_axis first = r->m->along == AXIS_X ? AXIS_Y : AXIS_X;
	enum member_axis second = r->m->along == AXIS_Z ? AXIS_Y : AXIS_Z;

	r->m->heel_far[0] = r->heel[first];
	r->m->heel_far[1] = r->heel[second];
}

bool member_read(struct binder *b, struct said value, struct member *out)
{
	struct member_line r = { .b = b, .m = out };
	struct said rest = value, part;

	*out = (struct member){ .pos = said_pos(value), .piece = NONE, .along = AXIS_NONE,
		.about = AXIS_Z };
	if (!said_next(&rest, ";", &part))
		return false;
	out->name = part.s;
	out->piece = find_piece(b->a, part.s);
	r.piece = out->piece == NONE ? NULL : &b->a->pieces[out->piece];
	r.metal = r.piece ? sheet_metal_of(r.piece->material) : member_metal(b->a, 0);
	while (said_next(&rest, ";", &part) && !r.failed)
		read_part(&r, part);
	if (r.failed)
		return false;
	complete_from_piece(&r);
	complete_pipe(out);
	complete_along(&r, value);
	complete_heel(&r);
	if (!out->nat) {
		*ARENA_PUSH(b->arena, r.at, out->nat, r.at_cap) =
		    (struct member_place){ .pos = out->pos };
	}
	out->at = r.at;
	return !r.failed;
}
