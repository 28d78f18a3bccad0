/* The block that draws a joint, and what the facts add to it. */
#include "model/joint_key.h"

#include "units/format.h"

static void *field_of(struct joint_block *j, size_t offset)
{
	return (char *)j + offset;
}

static void key_quantity(struct joint_reading *r, const struct joint_key *row,
    struct said value)
{
	read_quantity(r->b, value, row->kind, member_metal(r->b->a, row->member),
	    field_of(r->j, row->offset));
}

/* Of what cannot be without a size; a gap or a land may be 0. */
static void key_size(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	key_quantity(r, row, value);
	keep_size(r->b, value, field_of(r->j, row->offset));
}

static void key_legs(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	read_legs(r->b, value, member_metal(r->b->a, row->member), &r->j->leg, &r->j->leg2);
}

static void key_joint(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	enum joint j = joint_find(value.s);

	(void)row;
	r->j->joint = j < JOINT_COUNT ? j : joint_meant(r->b, value);
}

static void key_pipe(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	read_pipe(r->b, value, field_of(r->j, row->offset));
}

static void key_count(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	read_count(r->b, value, 1, 60, field_of(r->j, row->offset));
}

static void key_sides(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	uint32_t sides;

	(void)row;
	r->j->both_sides = read_word(r->b, value, &words_sides, &sides) && sides;
}

static void key_text(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	*(str *)field_of(r->j, row->offset) = value.s;
}

/* A length of a lap, or the percentage by which beads of a pad lie on each other. */
static void key_overlap(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	struct quantity q;
	struct quantity_fault fault;

	if (quantity_parse(value.s, QUANTITY_PERCENT, METAL_NONE, &q,
	    &fault) == QUANTITY_OK)
		r->j->overlap_percent = (q.lo + q.hi) / 2;
	else
		key_quantity(r, row, value);
}

/* "1/4 x 1 in", "steel strip 1/4 x 1 in", "ring 1/8 x 1 in": the size begins at the first
 * digit. */
static bool find_backing(struct binder *b, struct said t, struct quantity_list *list,
    struct quantity_fault *fault)
{
	size_t used, i = 0;

	while (i < t.s.n && !(t.s.p[i] >= '0' && t.s.p[i] <= '9'))
		i++;
	return quantity_product_parse(b->arena, str_sub(t.s, i, t.s.n), METAL_NONE, list,
	    &used, fault) == QUANTITY_OK && list->n == 2;
}

static bool says_ring(str s)
{
	return str_find(s, STR("ring"), 0) < s.n;
}

static void key_backing(struct joint_reading *r, const struct joint_key *row, struct said value)
{
	struct quantity_list list = { 0 };
	struct quantity_fault fault;

	(void)row;
	r->j->ring = says_ring(value.s);
	if (find_backing(r->b, value, &list, &fault)) {
		r->j->backing_t = list.v[0];
		r->j->backing_w = list.v[1];
	} else {
		finding_repair(r->b->f, complain(r->b, FINDING_BAD_QUANTITY,
		    said_pos(value),
		    "\"%.*s\" is not the size of a strip; it is left out",
		    STR_ARG(value.s)),
		    "write a thickness and a width, such as \"1/4 x 1 in\"");
	}
}

#define KEY(name, field, reader, kind, member) \
	{ { name, sizeof name - 1 }, offsetof(struct joint_block, field), kind, reader, \
	    member, NULL }
#define CHOICE(name, field, table) \
	{ { name, sizeof name - 1 }, offsetof(struct joint_block, field), QUANTITY_ANY, \
	    key_word, 0, &table }
#define LENGTH(name, field) KEY(name, field, key_quantity, QUANTITY_LENGTH, 0)
#define SIZE(name, field) KEY(name, field, key_size, QUANTITY_LENGTH, 0)

enum { ROW_JOINT, ROW_T1, ROW_T2, ROW_LEG, ROW_BACKING, ROW_LENGTH, ROW_SIZE, ROW_BRANCH,
	ROW_ANGLE, ROW_BEVEL, ROW_PREPARATION, ROW_LAYERS, ROW_OTHER };

static const struct joint_key keys[] = {
	[ROW_JOINT] = KEY("joint", joint, key_joint, QUANTITY_ANY, 0),
	[ROW_T1] = SIZE("thickness", t1),
	[ROW_T2] = KEY("thickness 2", t2, key_size, QUANTITY_LENGTH, 1),
	[ROW_LEG] = KEY("leg", leg, key_legs, QUANTITY_LENGTH, 0),
	[ROW_BACKING] = KEY("backing", backing_t, key_backing, QUANTITY_LENGTH, 0),
	[ROW_LENGTH] = SIZE("length", length),
	[ROW_SIZE] = KEY("size", pipe, key_pipe, QUANTITY_PIPE, 0),
	[ROW_BRANCH] = KEY("branch", branch, key_pipe, QUANTITY_PIPE, 0),
	[ROW_ANGLE] = KEY("angle", angle, key_quantity, QUANTITY_ANGLE, 0),
	[ROW_BEVEL] = KEY("bevel", bevel, key_quantity, QUANTITY_ANGLE, 0),
	[ROW_PREPARATION] = CHOICE("preparation", preparation, words_preparation),
	[ROW_LAYERS] = KEY("layers", layers, key_layers, QUANTITY_ANY, 0),
	[ROW_OTHER] = LENGTH("gap", gap),
	LENGTH("root opening", gap), LENGTH("land", land),
	KEY("overlap", overlap, key_overlap, QUANTITY_LENGTH, 0),
	LENGTH("reinforcement", reinforcement), LENGTH("depth", depth),
	LENGTH("width", width), LENGTH("radius", radius),
	KEY("sides", both_sides, key_sides, QUANTITY_ANY, 0),
	KEY("passes", passes, key_count, QUANTITY_COUNT, 0),
	KEY("beads", beads, key_count, QUANTITY_COUNT, 0),
	KEY("restart", restart, key_restart, QUANTITY_ANY, 0),
	SIZE("depth back", depth_back), SIZE("kerf", kerf),
	KEY("angle back", angle_back, key_quantity, QUANTITY_ANGLE, 0),
	KEY("bevel back", bevel_back, key_quantity, QUANTITY_ANGLE, 0),
	SIZE("radius back", radius_back),
	KEY("increments", marks.increment, key_increments, QUANTITY_LENGTH, 0),
	KEY("plug weld", marks.hole, key_hole, QUANTITY_LENGTH, HOLE_PLUG),
	KEY("slot weld", marks.hole, key_hole, QUANTITY_LENGTH, HOLE_SLOT),
	KEY("spot weld", marks.hole, key_hole, QUANTITY_LENGTH, HOLE_SPOT),
	SIZE("spacing", marks.spacing), SIZE("fill", marks.fill),
	KEY("count", marks.count, key_count, QUANTITY_COUNT, 0),
	KEY("melt-through", marks.melt, key_melt, QUANTITY_LENGTH, 0),
	CHOICE("back", marks.back, words_back),
	CHOICE("contour", marks.contour, words_contour),
	CHOICE("contour back", marks.contour_back, words_contour),
	CHOICE("finish", marks.finish, words_finish),
	CHOICE("finish back", marks.finish_back, words_finish),
	CHOICE("field", marks.field, words_answer),
	CHOICE("all around", marks.all_around, words_answer),
	CHOICE("symbol", marks.standard, words_symbol),
	KEY("tail", marks.tail, key_text, QUANTITY_ANY, 0),
};
enum { KEYS = sizeof keys / sizeof *keys };

static size_t find_key(str key)
{
	size_t i = 0;

	while (i < KEYS && !words_same(keys[i].key, key))
		i++;
	return i;
}

static bool is_there(const struct joint_reading *r, size_t row)
{
	for (size_t i = 0; i < KEYS; i++)
		if (keys[i].offset == keys[row].offset && r->at[i].line)
			return true;
	return false;
}

static void read_lines(struct joint_reading *r, const struct block *v)
{
	struct drawing_line line;
	str names[KEYS];
	uint32_t i = 0;

	for (size_t k = 0; k < KEYS; k++)
		names[k] = keys[k].key;
	while (drawing_next(r->b, v, &i, &line)) {
		size_t row = find_key(line.key.s);

		if (row == KEYS || is_there(r, row)) {
			drawing_complain(r->b, row == KEYS ? FINDING_UNKNOWN_KEY
			    : FINDING_DUPLICATE_KEY, line.key, "joint", names, KEYS);
			continue;
		}
		r->at[row] = said_pos(line.value);
		keys[row].read(r, &keys[row], line.value);
	}
}

/* "joint B". A single weld is meant whatever letter is used. */
static uint32_t weld_named(struct joint_reading *r, const struct block *v)
{
	struct binder *b = r->b;
	const struct assignment *a = b->a;
	str letter = v->key, word;

	if (a->nwelds == 1)
		return 0;
	str_word(&letter, &word);
	letter = str_trim(letter);
	if (!letter.n)
		return NONE;
	for (size_t i = 0; i < a->nwelds && letter.n == 1; i++)
		if ((a->welds[i].letter | 32) == (*letter.p | 32))
			return (uint32_t)i;
	drawing_lost_weld(b, v, letter);
	r->lost = true;
	return NONE;
}

static void disagree(struct joint_reading *r, size_t row, struct pos other, str mine,
    str theirs)
{
	struct binder *b = r->b;
	struct finding *d;
	struct slip *slip;

	/* What the facts say of other welds is no measure. */
	if (r->lost)
		return;
	d = complain(b, FINDING_FACTS_DISAGREE, r->at[row],
	    "the joint block says %.*s %.*s, the facts say %.*s", STR_ARG(keys[row].key),
	    STR_ARG(mine), STR_ARG(theirs));
	finding_relate(b->f, d, other)->label = STR("the fact");
	finding_repair(b->f, d, "make both say the same, or delete this line");
	mine = str_sub(mine, 0, str_find(mine, STR(" ["), 0));
	theirs = str_sub(theirs, 0, str_find(theirs, STR(" ["), 0));
	slip = finding_slip(b->f, d, r->at[row], mine, theirs);
	slip->read = true;
	slip->say = str_format(b->f->arena, "write %.*s at %.*s in the drawing, as the facts "
	    "say", STR_ARG(theirs), STR_ARG(keys[row].key));
}

static str quantity_text(struct binder *b, const struct quantity *q)
{
	struct buf text = { .arena = b->arena };

	format_quantity(&text, q);
	return buf_str(&text);
}

/* Fills *mine from the facts when it is not given, else compares. */
static void agree(struct joint_reading *r, size_t row, struct quantity *mine,
    const struct quantity *theirs, struct pos other)
{
	if (!quantity_given(theirs))
		return;
	if (!quantity_given(mine)) {
		if (!r->at[row].line)
			*mine = *theirs;
	} else if (r->at[row].line && !quantity_same(mine, theirs)) {
		disagree(r, row, other, quantity_text(r->b, mine), quantity_text(r->b,
		    theirs));
	}
}

static str legs_text(struct binder *b, const struct quantity *leg, const struct quantity *leg2)
{
	if (!quantity_given(leg2))
		return quantity_text(b, leg);
	return str_format(b->arena, "%.*s x %.*s", STR_ARG(quantity_text(b, leg)),
	    STR_ARG(quantity_text(b, leg2)));
}

/* Both legs at once: one of them alone says less than is meant. */
static void agree_legs(struct joint_reading *r, const struct weld *w)
{
	struct joint_block *j = r->j;
	bool other = quantity_given(&j->leg2) != quantity_given(&w->leg2) ||
	    (quantity_given(&w->leg2) && !quantity_same(&j->leg2, &w->leg2));

	if (quantity_given(&j->leg) && quantity_given(&w->leg) && r->at[ROW_LEG].line &&
	    other)
		disagree(r, ROW_LEG, w->pos, legs_text(r->b, &j->leg, &j->leg2),
		    legs_text(r->b, &w->leg, &w->leg2));
	else
		agree(r, ROW_LEG, &j->leg, &w->leg, w->pos);
	if (!r->at[ROW_LEG].line)
		j->leg2 = w->leg2;
}

static void agree_pipe(struct joint_reading *r, size_t row, struct pipe_size *mine,
    const struct pipe_size *theirs, struct pos other)
{
	double od = mine->od_mm - theirs->od_mm, wall = mine->wall_mm - theirs->wall_mm;

	if (theirs->od_mm <= 0)
		return;
	if (mine->od_mm <= 0) {
		if (!r->at[row].line)
			*mine = *theirs;
	} else if (od * od > 1e-6 || (mine->wall_mm > 0 && wall * wall > 1e-6)) {
		disagree(r, row, other, mine->text, theirs->text);
	}
}

static bool is_butt(enum joint j)
{
	return j == JOINT_SQUARE_BUTT || j == JOINT_SINGLE_V || j == JOINT_SINGLE_BEVEL ||
	    j == JOINT_U_GROOVE || j == JOINT_PIPE_BUTT || j == JOINT_BUTT;
}

/* "butt" alone says nothing of the edges, so any butt agrees with it. */
static bool joints_agree(enum joint a, enum joint b)
{
	return a == b || ((a == JOINT_BUTT || b == JOINT_BUTT) && is_butt(a) &&
	    is_butt(b));
}

/* A cut is no weld; where the facts list cuts it is one of those. */
static void agree_cut(struct joint_reading *r)
{
	const struct assignment *a = r->b->a;
	enum joint other = JOINT_COUNT;

	r->j->weld = NONE;
	for (uint32_t i = 0; i < a->njoints; i++) {
		if (a->joints[i] == r->j->joint)
			return;
		other = joint_is_cut(a->joints[i]) ? a->joints[i] : other;
	}
	if (other != JOINT_COUNT)
		disagree(r, ROW_JOINT, assignment_fact_pos(a, STR("Joint")),
		    joint_word(r->j->joint), joint_word(other));
}

/* The one other weld that a block speaks of: its joint, and its leg where both say one.
 * NONE when the block agrees with its own weld, or with none or several others. */
static uint32_t weld_meant(const struct joint_reading *r)
{
	const struct assignment *a = r->b->a;
	const struct joint_block *j = r->j;
	uint32_t hit = NONE;

	if (j->weld == NONE || j->joint == JOINT_COUNT || a->welds[j->weld].joint ==
	    JOINT_COUNT || joints_agree(j->joint, a->welds[j->weld].joint))
		return NONE;
	for (uint32_t i = 0; i < a->nwelds; i++) {
		const struct weld *w = &a->welds[i];

		if (w->joint == JOINT_COUNT || !joints_agree(j->joint, w->joint) ||
		    (quantity_given(&j->leg) && quantity_given(&w->leg) &&
		    !quantity_same(&j->leg, &w->leg)))
			continue;
		if (hit != NONE)
			return NONE;
		hit = i;
	}
	return hit;
}

/* A block under the letter of another weld is read as that one's; two that changed places
 * are one finding. */
static void take_other_weld(struct joint_reading *r)
{
	struct binder *b = r->b;
	uint32_t own = r->j->weld, meant = weld_meant(r);
	const struct weld *v = b->a->welds;
	struct finding *d = b->f->n ? &b->f->v[b->f->n - 1] : NULL;

	if (meant == NONE)
		return;
	r->j->weld = meant;
	if (d && d->name == FINDING_FACTS_DISAGREE && d->nrelated &&
	    !pos_cmp(d->related[0].pos, v[meant].pos)) {
		finding_relate(b->f, d, r->at[ROW_JOINT])->label = str_format(b->f->arena,
		    "and the block of %c is that of %c", v[own].letter, v[meant].letter);
		return;
	}
	d = complain(b, FINDING_FACTS_DISAGREE, r->at[ROW_JOINT], "the joint block of %c says "
	    "joint %.*s, the facts say %.*s; it is read as that of %c", v[own].letter,
	    STR_ARG(joint_word(r->j->joint)), STR_ARG(joint_word(v[own].joint)),
	    v[meant].letter);
	finding_relate(b->f, d, v[own].pos)->label = STR("the fact");
	finding_repair(b->f, d, "write \"joint %c\" over it, or make both say the same",
	    v[meant].letter);
}

static void agree_joint(struct joint_reading *r)
{
	const struct assignment *a = r->b->a;
	enum joint said = r->j->joint, only = JOINT_COUNT;
	uint32_t weld;
	bool several = false, match = false;

	if (joint_is_cut(said)) {
		agree_cut(r);
		return;
	}
	take_other_weld(r);
	weld = r->j->weld;
	for (size_t i = 0; i < a->nwelds; i++) {
		enum joint j = a->welds[i].joint;

		if (j == JOINT_COUNT || (weld != NONE && i != weld))
			continue;
		several |= only != JOINT_COUNT && only != j;
		match |= joints_agree(said, j);
		only = only == JOINT_COUNT ? j : only;
	}
	if (!a->nwelds && a->njoints == 1) {
		only = a->joints[0];
		match = said == only;
	}
	if (said != JOINT_COUNT && only != JOINT_COUNT && !match) {
		disagree(r, ROW_JOINT, weld != NONE ? a->welds[weld].pos
		    : assignment_fact_pos(a, STR("Joint")), joint_word(said),
		    joint_word(only));
		r->lost = true;
	}
	if (said == JOINT_COUNT && !r->at[ROW_JOINT].line && !several)
		r->j->joint = only;
}

/* The weld whose sizes the block may borrow: its own, or the first of its shape. */
static const struct weld *lender(const struct joint_reading *r)
{
	const struct assignment *a = r->b->a;

	if (joint_is_cut(r->j->joint))
		return NULL;
	if (r->j->weld != NONE)
		return &a->welds[r->j->weld];
	for (size_t i = 0; i < a->nwelds; i++)
		if (joints_agree(a->welds[i].joint, r->j->joint))
			return &a->welds[i];
	return NULL;
}

/* Thickness lists describe pieces: a block that names one of them agrees. */
static bool is_listed(const struct assignment *a, const struct quantity *q)
{
	for (uint32_t i = 0; i < a->nthicknesses; i++)
		if (quantity_same(q, &a->thicknesses[i]))
			return true;
	return false;
}

/* The walls of a branch and its run, each from its own pipe: the list of thicknesses has
 * no order that tells them apart. */
static void take_walls(struct joint_reading *r)
{
	struct joint_block *j = r->j;
	struct quantity_fault fault;
	const struct { size_t row; const struct pipe_size *pipe; struct quantity *wall; } v[] = {
		{ ROW_T1, &j->branch, &j->t1 }, { ROW_T2, &j->pipe, &j->t2 } };

	for (size_t i = 0; i < 2; i++)
		if (!r->at[v[i].row].line && v[i].pipe->wall_mm > 0)
			quantity_parse(v[i].pipe->text, QUANTITY_LENGTH, METAL_NONE, v[i].wall,
			    &fault);
	if (j->pipe.od_mm > 0 && j->branch.od_mm > j->pipe.od_mm * 1.001)
		finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING,
		    r->at[ROW_BRANCH].line ? r->at[ROW_BRANCH] : j->pos,
		    "a branch of %.*s does not stand on a run of %.*s",
		    STR_ARG(j->branch.text), STR_ARG(j->pipe.text)),
		    "make the run as large as the branch or larger");
}

static void agree_members(struct joint_reading *r, const struct weld *w)
{
	const struct assignment *a = r->b->a;
	struct pos fact = assignment_fact_pos(a, STR("Thickness"));
	struct quantity none = { 0 };
	const struct quantity *t1 = a->nthicknesses ? &a->thicknesses[0] : &none;
	const struct quantity *t2 = &none;
	struct pos other = fact;

	if (w) {
		t1 = &w->t1;
		t2 = &w->t2;
		other = a->nthicknesses && is_listed(a, t1) ? fact : w->pos;
	}
	if (!quantity_given(&r->j->t1) || !is_listed(a, &r->j->t1) ||
	    a->nthicknesses == 1)
		agree(r, ROW_T1, &r->j->t1, t1, other);
	if (!quantity_given(&r->j->t2) || !is_listed(a, &r->j->t2) ||
	    a->nthicknesses == 1)
		agree(r, ROW_T2, &r->j->t2, t2, other);
}

static void agree_backing(struct joint_reading *r)
{
	const struct plain_fact *fact = assignment_fact(r->b->a, STR("Backing"));
	struct quantity_list list = { 0 };
	struct quantity_fault fault;

	if (!fact || !find_backing(r->b, (struct said){ .s = fact->text }, &list, &fault))
		return;
	r->j->ring |= says_ring(fact->text);
	agree(r, ROW_BACKING, &r->j->backing_t, &list.v[0], fact->pos);
	agree(r, ROW_BACKING, &r->j->backing_w, &list.v[1], fact->pos);
}

/* For a groove beveled on both members the included angle is twice the bevel. */
static void agree_angles(struct joint_reading *r)
{
	struct joint_block *j = r->j;
	struct quantity twice = j->bevel;
	uint32_t p = j->preparation;
	bool both = p ? p == PREPARATION_V || p == PREPARATION_U ||
	        p == PREPARATION_DOUBLE_V || p == PREPARATION_DOUBLE_U
	    : j->joint == JOINT_SINGLE_V || j->joint == JOINT_PIPE_BUTT;

	if (!both || !quantity_given(&j->bevel) || !quantity_given(&j->angle))
		return;
	twice.lo *= 2;
	twice.hi *= 2;
	if (!quantity_same(&twice, &j->angle))
		finding_relate(r->b->f, complain(r->b, FINDING_FACTS_DISAGREE,
		    r->at[ROW_ANGLE],
		    "the angle of %.*s is not twice the bevel of %.*s",
		    STR_ARG(quantity_text(r->b, &j->angle)),
		    STR_ARG(quantity_text(r->b, &j->bevel))), r->at[ROW_BEVEL])->label =
		    STR("the bevel");
}

/* A fact that names the edges says them for the block too. */
static void agree_preparation(struct joint_reading *r, const struct weld *w)
{
	static const uint32_t edges[JOINT_COUNT] = {
		[JOINT_SINGLE_V] = PREPARATION_V, [JOINT_SINGLE_BEVEL] = PREPARATION_BEVEL,
		[JOINT_SQUARE_BUTT] = PREPARATION_SQUARE,
	};
	uint32_t mine = r->j->preparation;

	if (mine && w && w->joint < JOINT_COUNT && edges[w->joint] &&
	    edges[w->joint] != mine)
		disagree(r, ROW_PREPARATION, w->pos, words_show(&words_preparation, mine),
		    joint_word(w->joint));
}

/* Layers count the passes too. */
static void agree_layers(struct joint_reading *r)
{
	struct joint_block *j = r->j;

	if (!j->nlayers)
		return;
	if (!j->passes) {
		j->passes = j->layer_beads;
		return;
	}
	if (j->passes != j->layer_beads)
		finding_repair(r->b->f, complain(r->b, FINDING_FACTS_DISAGREE,
		    r->at[ROW_LAYERS], "the layers have %u beads, \"passes\" says %u",
		    j->layer_beads, j->passes),
		    "make both the same, or leave out \"passes\"");
}

static void complete(struct joint_reading *r, const struct block *v)
{
	const struct weld *w;

	agree_joint(r);
	w = lender(r);
	if (w) {
		agree_pipe(r, ROW_SIZE, &r->j->pipe, &w->run,
		    assignment_fact_pos(r->b->a, STR("Thickness")));
		agree_pipe(r, ROW_BRANCH, &r->j->branch, &w->branch, w->pos);
	}
	if (r->j->joint == JOINT_BRANCH)
		take_walls(r);
	agree_members(r, w);
	if (!joint_is_cut(r->j->joint))
		agree_backing(r);
	agree_angles(r);
	agree_preparation(r, w);
	agree_layers(r);
	if (w) {
		/* A plug beside a fillet is a weld of its own. */
		if (!r->j->marks.hole)
			agree_legs(r, w);
		agree(r, ROW_LENGTH, &r->j->length, &w->length, w->pos);
	}
	if (r->j->joint == JOINT_COUNT && !r->at[ROW_JOINT].line)
		finding_repair(r->b->f, complain(r->b, FINDING_BAD_DRAWING, v->pos,
		    "this block does not say which joint it draws"),
		    "add a line such as \"joint: tee\"");
}

void read_joint_block(struct binder *b, const struct block *v, struct joint_block *out)
{
	struct pos at[KEYS] = { { 0 } };
	struct joint_reading r = { .b = b, .j = out, .at = at };

	*out = (struct joint_block){ .joint = JOINT_COUNT, .pos = v->pos };
	out->weld = weld_named(&r, v);
	read_lines(&r, v);
	complete(&r, v);
}
