/* What is cut for one attempt. */
#include "model/assignment.h"

/* "1 of" before the size. */
static bool read_piece_count(struct binder *b, struct said *t, struct piece *p)
{
	struct said rest = *t, number;
	bool of = said_word(&rest, &number) && said_skip(&rest, STR("of"));

	if (of && str_to_u32(number.s, &p->count) && p->count && p->count < 1000) {
		*t = rest;
		return true;
	}
	p->count = 1;
	if (of) {
		*t = rest;
		finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(number),
		    "\"%.*s\" is not a number of pieces from 1 to 999; one is taken",
		    STR_ARG(number.s)), "write it in figures: \"2 of\"");
		return false;
	}
	finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(*t),
	    "\"%.*s\" does not say how many; one is taken", STR_ARG(t->s)),
	    "write \"1 of %.*s\"", STR_ARG(t->s));
	return false;
}

static void take_dims(struct binder *b, struct piece *p, const struct quantity_list *list)
{
	size_t i = 0;

	if (list->n && list->v[0].kind == QUANTITY_PIPE) {
		p->pipe = pipe_size_of(b->arena, &list->v[0]);
		i = 1;
	}
	for (; i < list->n && p->ndims < PIECE_DIMS; i++)
		p->dims[p->ndims++] = list->v[i];
}

/* "3/8 x 3 x 8 A36 plate": the first word of a material is no wrong unit, the unit
 * before it is missing. */
static void complain_size(struct binder *b, struct said t, struct quantity_fault *fault)
{
	bool material = fault->result == QUANTITY_UNKNOWN_UNIT &&
	    sheet_metal_of(str_sub(t.s, fault->offset, t.s.n)) != METAL_NONE;

	if (material) {
		t = said_trim(said_sub(t, 0, fault->offset));
		*fault = (struct quantity_fault){ .result = QUANTITY_NO_UNIT,
			.reason = "a unit is owed", .likely = STR("in") };
	}
	complain_fault(b, t, fault);
}

static void read_size(struct binder *b, struct said t, struct piece *p)
{
	struct quantity_list list = { 0 };
	struct quantity_fault fault;
	size_t used = 0, comma;

	if (quantity_product_parse(b->arena, t.s, sheet_metal_of(t.s), &list, &used,
	    &fault) != QUANTITY_OK) {
		complain_size(b, t, &fault);
		used = 0;
	}
	for (size_t i = 0; i < list.n; i++)
		if (!keep_size(b, said_sub(t, 0, used), &list.v[i]))
			list.n = 0;
	p->size = str_trim(str_sub(t.s, 0, used));
	take_dims(b, p, &list);
	t = said_trim(said_sub(t, used, t.s.n));
	comma = str_find_char(t.s, ',', 0);
	p->material = str_trim(str_sub(t.s, 0, comma));
	p->made = str_trim(str_sub(t.s, comma + 1, t.s.n));
}

static void read_piece(struct binder *b, const struct block *v)
{
	struct assignment *a = b->a;
	struct said t = said_all(v);
	struct piece p = { .pos = v->kind == BLOCK_FACT ? block_key_pos(v) : block_pos(v, 0) };
	size_t colon = str_find_char(t.s, ':', 0);

	if (v->kind == BLOCK_FACT) {
		p.name = v->key;
	} else if (colon < t.s.n) {
		p.name = str_trim(str_sub(t.s, 0, colon));
		t = said_trim(said_sub(t, colon + 1, t.s.n));
	}
	if (!p.name.n || !t.s.n) {
		complain_block(b, v,
		    "write \"- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\"");
		return;
	}
	read_piece_count(b, &t, &p);
	read_size(b, t, &p);
	*ARENA_PUSH(b->arena, a->pieces, a->npieces, a->pieces_cap) = p;
}

void read_pieces(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	(void)h;
	for (size_t i = 0; i < n; i++)
		if ((v[i].kind == BLOCK_BULLET || v[i].kind == BLOCK_FACT) &&
		    v[i].level == 1)
			read_piece(b, &v[i]);
		else
			complain_block(b, &v[i],
			    "write \"- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\"");
}

double piece_wall_mm(const struct assignment *a, const struct piece *p)
{
	double least = p->ndims == 4 ? p->dims[0].lo : 0;

	if (p->pipe.wall_mm > 0)
		return p->pipe.wall_mm;
	for (uint32_t i = 1; i < p->ndims && least > 0; i++)
		if (p->dims[i].lo < least)
			least = p->dims[i].lo;
	for (uint32_t i = 0; i < a->nmaterials && !(least > 0) && a->nthicknesses; i++)
		if (words_same(a->materials[i].text, p->material))
			least = a->thicknesses[i < a->nthicknesses ? i : a->nthicknesses - 1].lo;
	return least;
}
