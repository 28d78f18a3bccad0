/* Layers of a joint block, and what its welding symbol shows beside the joint. */
#include "model/joint_key.h"

/* More beads than any drawing holds (draw/fig_section.h). */
#define BEADS_MOST 40

void key_word(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	uint32_t *out = (uint32_t *)(void *)((char *)r->j + row->offset);

	if (!read_word(r->b, value, row->words, out))
		*out = 0;
}

/* ---- layers ---- */

static void complain_layers(struct joint_reading *r, struct said at)
{
	finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, said_pos(at),
	    "\"%.*s\" is not a list of beads by layers; the layers are left out",
	    STR_ARG(at.s)), "write the beads of each layer, root first: \"1, 2, 3\"; of both "
	    "sides \"1, 2 / back 1, 1\"");
}

/* The layers of one side; false: one of them is not a number of beads. */
static bool read_side(struct joint_reading *r, struct said side, struct bead_layer *v, size_t *n,
    uint32_t *beads)
{
	struct said part, whole = side;
	bool back = said_skip(&side, STR("back"));
	uint32_t count;

	if (!back)
		said_skip(&side, STR("front"));
	if (!side.s.n) {
		complain_layers(r, whole);
		return false;
	}
	while (said_next(&side, ",", &part)) {
		if (!str_to_u32(part.s, &count) || !count || *beads + count > BEADS_MOST) {
			complain_layers(r, part);
			return false;
		}
		*beads += count;
		v[(*n)++] = (struct bead_layer){ count, back };
	}
	return true;
}

void key_layers(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	struct bead_layer *v = arena_array(r->b->arena, BEADS_MOST, sizeof *v);
	struct said rest = value, side;
	uint32_t beads = 0;
	size_t n = 0;

	(void)row;
	while (said_next(&rest, "/", &side))
		if (!read_side(r, side, v, &n, &beads))
			return;
	if (!n) {
		complain_layers(r, value);
		return;
	}
	r->j->layers = v;
	r->j->nlayers = n;
	r->j->layer_beads = beads;
}

/* ---- stop and restart ---- */

/* Words that say it otherwise than these stand beside the drawing and mark no place in it. */
void key_restart(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	static const str middles[] = { { "mid-", 4 }, { "middle", 6 }, { "center", 6 } };
	struct joint_block *j = r->j;
	struct quantity q;
	struct quantity_fault fault;
	str at = value.s;
	size_t used;

	(void)row;
	j->restart = value.s;
	for (size_t i = 0; i < sizeof middles / sizeof *middles; i++)
		if (str_find(at, middles[i], 0) < at.n)
			j->restart_place = RESTART_MIDDLE;
	while (at.n && (*at.p < '0' || *at.p > '9'))
		at = str_sub(at, 1, at.n);
	if (!at.n || quantity_prefix(at, QUANTITY_LENGTH, METAL_NONE, &q, &used, &fault) !=
	        QUANTITY_OK)
		return;
	at = str_sub(at, used, at.n);
	j->restart_place = str_find(at, STR("left"), 0) < at.n ? RESTART_FROM_LEFT
	    : str_find(at, STR("right"), 0) < at.n ? RESTART_FROM_RIGHT : RESTART_UNTOLD;
	j->restart_mm = q.lo;
}

/* ---- marks of the symbol ---- */

static bool read_length(struct joint_reading *r, struct said value, struct quantity *out)
{
	return read_quantity(r->b, value, QUANTITY_LENGTH, METAL_NONE, out) &&
	    keep_size(r->b, value, out);
}

void key_increments(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	struct symbol_marks *m = &r->j->marks;
	struct said rest = value, part, pitch, more;
	size_t at;

	(void)row;
	if (!said_next(&rest, ",", &part))
		return;
	at = str_find(part.s, STR(" at "), 0);
	pitch = said_trim(said_sub(part, at + 4, part.s.n));
	if (at == part.s.n) {
		finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, said_pos(value),
		    "\"%.*s\" does not say how long the increments are and how far apart; it "
		    "is left out", STR_ARG(value.s)),
		    "write length and pitch, such as \"2 in at 6 in\"");
		return;
	}
	if (!read_length(r, said_trim(said_sub(part, 0, at)), &m->increment) ||
	    !read_length(r, pitch, &m->pitch))
		m->increment = m->pitch = (struct quantity){ 0 };
	if (!said_next(&rest, ",", &more))
		return;
	m->staggered = words_same(more.s, STR("staggered"));
	if (!m->staggered)
		finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, said_pos(more),
		    "\"%.*s\" is not understood here and left out", STR_ARG(more.s)),
		    "increments on two sides may be \"staggered\"");
}

void key_hole(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	struct symbol_marks *m = &r->j->marks;
	struct quantity_list list;
	struct quantity_fault fault;
	size_t used, owed = row->member == HOLE_SLOT ? 2 : 1;
	bool across = owed == 2 && str_ends(value.s, STR(", across"));

	if (across)
		value = said_trim(said_sub(value, 0, value.s.n - 8));

	if (quantity_product_parse(r->b->arena, value.s, METAL_NONE, &list, &used, &fault) !=
	        QUANTITY_OK || list.n != owed || used != value.s.n || !(list.v[0].lo > 0)) {
		finding_repair(r->b->f, complain(r->b, FINDING_BAD_QUANTITY, said_pos(value),
		    "\"%.*s\" is not the size of a %.*s; it is left out", STR_ARG(value.s),
		    STR_ARG(row->key)), "write a size such as \"%s\"",
		    owed == 2 ? "3/4 x 1-1/2 in" : "3/4 in");
		return;
	}
	m->hole = row->member;
	m->hole_width = list.v[0];
	m->slots_across = across;
	if (owed == 2)
		m->hole_length = list.v[1];
}

void key_melt(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	(void)row;
	if (read_length(r, value, &r->j->marks.melt))
		r->j->marks.back = BACK_MELT_THROUGH;
}
