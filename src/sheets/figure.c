#include "sheets/figure.h"

#include "sheets/band.h"
#include "sheets/cut_map.h"
#include "sheets/drawn.h"
#include "sheets/pattern_sheet.h"
#include "sheets/picture.h"
#include "sheets/weld_position.h"
#include "sheets/weld_symbol.h"
#include "sheets/weldment.h"

#define SAME_MOST 8              /* welds that one section serves */

/* ---- symbol and position, in pairs under the section ---- */

#define PAIR_PT MM_PT(41)        /* a position reads at 40 mm */
#define PAIR_GAP_PT 10.0
#define PAIRS_MOST 8

struct pair_part { struct drawn *p; str alt; };

/* The symbol, then one sketch a position. */
static size_t parts_of(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j, struct pair_part *out)
{
	struct drawn *p = drawn_new(sh, DRAWN_SYMBOL);
	uint32_t *welds = arena_array(sh->arena, x->nwelds + 1, sizeof *welds);
	size_t n = 0, nwelds;

	welds_of_block(x, j, welds, &nwelds);
	if (weld_symbol(sh->arena, sh->e, x, j, &p->symbol))
		out[n++] = (struct pair_part){ p, fig_symbol_words(sh->arena, &p->symbol) };
	for (size_t i = 0; i < nwelds && n < PAIRS_MOST; i++) {
		p = drawn_new(sh, DRAWN_POSITION);
		if (weld_position(sh->arena, sh->e, x, j, welds[i], &p->position))
			out[n++] = (struct pair_part){ p,
				fig_position_words(sh->arena, &p->position) };
	}
	return n;
}

/* Whether a drawing before this one shows the same symbol and positions. */
static bool shown_before(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j, const struct pair_part *v, size_t n)
{
	struct pair_part before[PAIRS_MOST];

	for (size_t i = 0; i < x->ndrawings && &x->drawings[i].joint != j; i++) {
		size_t same = 0;

		if (x->drawings[i].kind != DRAWING_JOINT ||
		    parts_of(sh, x, &x->drawings[i].joint, before) != n)
			continue;
		while (same < n && str_eq(before[same].alt, v[same].alt))
			same++;
		if (same == n)
			return true;
	}
	return false;
}

static void add_columns(struct sheet *sh, struct block *left, struct block *right,
    double width)
{
	const struct block_column columns[2] = { { &left, 1, width }, { &right, 1, width } };

	sheet_add(sh, block_columns(&sh->s, columns, right ? 2 : 1, PAIR_GAP_PT), 2, 4);
}

/* Two beside one another; one over the whole width when it needs that, or is large. */
static void add_pairs(struct sheet *sh, const struct pair_part *v, size_t n)
{
	double width = (sh->width_pt - PAIR_GAP_PT) / 2, high = PAIR_PT * sh->e->figure_zoom;
	struct block *left = NULL;

	for (size_t i = 0; i < n; i++) {
		bool narrow = !sh->e->choice.large && drawn_record(sh, v[i].p, width, high);
		struct block *b;

		if (!narrow) {
			double tall = drawn_find_height(sh, v[i].p, sh->width_pt, high, 2 * high);

			sheet_add(sh, drawn_block(sh, v[i].p, v[i].alt, sh->width_pt, tall), 2, 4);
			continue;
		}
		b = drawn_block(sh, v[i].p, v[i].alt, width, high);
		if (!left) {
			left = b;
			continue;
		}
		add_columns(sh, left, b, width);
		left = NULL;
	}
	if (left)
		add_columns(sh, left, NULL, width);
}

/* ---- cut maps ---- */

#define CUT_PT MM_PT(66)

static void add_cut(struct sheet *sh, const struct fig_cut *k)
{
	struct drawn *p = drawn_new(sh, DRAWN_CUT);
	double high;
	str head = k->od_mm > 0
	    ? sh_word(sh, "Cut map, round the outside from 12: one way that fits; the code "
	        "decides")
	    : sh_word(sh, "Cut map, from the left end: one way that fits; the code decides");

	p->cut = *k;
	drawn_add_bold(sh, head);
	/* The strip under the drawing has no room for it. */
	if (sh->e->choice.large && k->note.n) {
		drawn_add_bold(sh, k->note);
		p->cut.note = (str){ 0 };
	}
	high = drawn_find_height(sh, p, sh->width_pt, CUT_PT * sh->e->figure_zoom,
	    drawn_most(sh));
	drawn_add_block(sh, drawn_block(sh, p, fig_cut_words(sh->arena, k), sh->width_pt, high),
	    p);
}

/* One map for each weld of the block; one for all that are cut alike. Returns whether
 * there is any. */
static bool add_cuts(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j)
{
	uint32_t *welds = arena_array(sh->arena, x->nwelds + 1, sizeof *welds);
	struct fig_cut *v = arena_array(sh->arena, x->nwelds + 1, sizeof *v);
	size_t n, maps = 0;
	bool alike = true;

	welds_of_block(x, j, welds, &n);
	if (!x->nwelds)
		welds[n++] = NONE;
	for (size_t i = 0; i < n; i++) {
		if (!cut_map(sh->arena, sh->e, x, j, welds[i], &v[maps]))
			continue;
		alike &= cut_maps_alike(&v[0], &v[maps++]);
	}
	alike &= maps == n;
	if (alike && maps > 1)
		v[0].note = sh_word(sh, "each weld alike");
	for (size_t i = 0; i < (alike && maps ? 1 : maps); i++)
		add_cut(sh, &v[i]);
	return maps > 0;
}

static str joint_head(struct sheet *sh, const struct fig_joint *j, const struct joint_block *b)
{
	const struct language *l = edition_language(sh->e);
	struct buf t = { .arena = sh->arena };

	if (j->letter.n)
		word_addf(&t, l, "Weld %.*s: ", STR_ARG(j->letter));
	buf_add(&t, edition_word(sh->e, joint_word(b->joint)));
	if (!j->letter.n && t.n && t.p[0] >= 'a' && t.p[0] <= 'z')
		t.p[0] = (char)(t.p[0] - 32);
	if (j->position.n)
		word_addf(&t, l, ", position %.*s", STR_ARG(j->position));
	if (b->passes == 1)
		buf_add(&t, sh_word(sh, "; 1 pass"));
	else if (b->passes)
		word_addf(&t, l, "; %u passes", b->passes);
	if (b->restart.n)
		word_addf(&t, l, "; stop and restart: %.*s", STR_ARG(j->label_restart));
	return buf_str(&t);
}

/* What the drawing of a block shows, whichever weld it is and wherever it is made. */
static str shown_words(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j)
{
	struct fig_joint f;

	figure_joint(sh->arena, sh->e, x, j, &f);
	f.letter = f.position = (str){ 0 };
	return str_format(sh->arena, "%.*s %.*s %.*s", STR_ARG(fig_joint_words(sh->arena, &f)),
	    STR_ARG(f.label_length), STR_ARG(j->restart));
}

/* The drawings that one section serves, the first and later ones that show the same. */
struct same_joints {
	const struct joint_block *v[SAME_MOST];
	size_t n;
};

static bool in_same(const struct same_joints *g, const struct joint_block *j)
{
	for (size_t i = 0; i < g->n; i++)
		if (g->v[i] == j)
			return true;
	return false;
}

/* Drawings with words of the author above them stay where they are. */
static struct same_joints same_as(struct sheet *sh, const struct assignment *x, size_t at)
{
	struct same_joints g = { .v = { &x->drawings[at].joint }, .n = 1 };
	str words = shown_words(sh, x, g.v[0]);

	for (size_t i = at + 1; i < x->ndrawings && g.n < SAME_MOST; i++) {
		const struct drawing *d = &x->drawings[i];

		if (d->kind == DRAWING_JOINT && d->caption.n == 0 &&
		    d->joint.joint == g.v[0]->joint &&
		    str_eq(words, shown_words(sh, x, &d->joint)))
			g.v[g.n++] = &d->joint;
	}
	return g;
}

static bool drawn_before(struct sheet *sh, const struct assignment *x, size_t at)
{
	for (size_t i = 0; i < at; i++) {
		struct same_joints g;

		if (x->drawings[i].kind != DRAWING_JOINT)
			continue;
		g = same_as(sh, x, i);
		if (in_same(&g, &x->drawings[at].joint))
			return true;
	}
	return false;
}

/* One line for each weld of the group but the last, whose line leads the picture. */
static str group_heads(struct sheet *sh, const struct assignment *x,
    const struct same_joints *g, struct drawn *p)
{
	struct buf letters = { .arena = sh->arena };
	str head = { 0 };

	for (size_t i = 0; i < g->n; i++) {
		figure_joint(sh->arena, sh->e, x, g->v[i], &p->joint);
		buf_addf(&letters, "%s%.*s", i && letters.n ? ", " : "",
		    STR_ARG(p->joint.letter));
		if (i)
			drawn_add_bold(sh, head);
		head = joint_head(sh, &p->joint, g->v[i]);
	}
	if (g->n > 1) {
		p->joint.letter = buf_str(&letters);
		p->joint.position = (str){ 0 };
	}
	return head;
}

/* Symbols and positions of the group, each told once. */
static size_t group_pairs(struct sheet *sh, const struct assignment *x,
    const struct same_joints *g, struct pair_part *all)
{
	struct pair_part v[PAIRS_MOST];
	size_t n = 0;

	for (size_t i = 0; i < g->n; i++) {
		size_t parts = parts_of(sh, x, g->v[i], v);

		if (g->n == 1 && shown_before(sh, x, g->v[i], v, parts))
			parts = 0;
		for (size_t k = 0; k < parts; k++) {
			size_t m = 0;

			while (m < n && !str_eq(all[m].alt, v[k].alt))
				m++;
			if (m == n)
				all[n++] = v[k];
		}
	}
	return n;
}

/* The section with its beads; when their numbers find no room among the sizes, two
 * drawings: one with the sizes, one with the beads. */
static void add_section(struct sheet *sh, struct drawn *p, str note, str head, bool keep)
{
	struct drawn *beads = drawn_new(sh, DRAWN_SECTION);
	double least = drawn_height(sh, p);

	if (note.n)
		drawn_add_bold(sh, head);
	head = note.n ? note : head;
	p->joint.beads_inside = true;
	if (!note.n) {
		drawn_add_kept(sh, p, fig_joint_words(sh->arena, &p->joint), head, keep);
		return;
	}
	if (drawn_record(sh, p, sh->width_pt, least)) {
		drawn_add_high(sh, p, fig_joint_words(sh->arena, &p->joint), head, keep, least);
		return;
	}
	beads->joint = p->joint;
	beads->joint.beads_only = true;
	drawn_find_height(sh, beads, sh->width_pt, least, drawn_most(sh) * 0.75);
	beads->joint.beads_inside = beads->fits;
	p->joint.nlayers = 0;
	drawn_add_kept(sh, p, fig_joint_words(sh->arena, &p->joint), sh_word(sh, "Sizes"), true);
	drawn_add_kept(sh, beads, fig_joint_words(sh->arena, &beads->joint), note, keep);
}

static void add_joint(struct sheet *sh, const struct assignment *x, size_t at)
{
	struct same_joints g = same_as(sh, x, at);
	struct drawn *p = drawn_new(sh, DRAWN_SECTION);
	struct pair_part *parts = arena_array(sh->arena, SAME_MOST * PAIRS_MOST, sizeof *parts);
	bool cut = false;
	size_t n;
	str head = group_heads(sh, x, &g, p);

	if (!fig_can_draw(p->joint.shape)) {
		p->kind = DRAWN_ROOM;
		drawn_add(sh, p, sh_word(sh, "Room for a sketch"),
		    sh_format(sh, "%.*s: not drawn; sketch it here from the print",
		        STR_ARG(head)));
		return;
	}
	n = group_pairs(sh, x, &g, parts);
	add_section(sh, p, figure_bead_note(sh->e, x, g.v[0], &p->joint), head, n > 0);
	add_pairs(sh, parts, n);
	if (weld_symbol_note(sh->e, g.v[0]).n)
		sheet_text(sh, weld_symbol_note(sh->e, g.v[0]));
	for (size_t i = 0; i < g.n; i++) {
		add_position_notes(sh, x, g.v[i]);
		cut |= add_cuts(sh, x, g.v[i]);
	}
	/* A cut map shows the coupon from above or from its end as well. */
	if (cut || !figure_has_plan(&p->joint, g.v[0]))
		return;
	struct drawn *plan = drawn_new(sh, DRAWN_PLAN);
	plan->joint = p->joint;
	drawn_add(sh, plan, fig_plan_words(sh->arena, &p->joint),
	    p->joint.od_mm > 0 ? sh_word(sh, "Seen from the end")
	    : p->joint.groove_width_mm > 0 ? sh_word(sh, "From above")
	    : sh_word(sh, "Along the weld"));
}

/* The part from its given sizes; a part that cannot be leaves room for a sketch. */
static void add_pattern(struct sheet *sh, const struct pattern_block *b)
{
	bool sound = !pattern_of(sh->arena, b)->fault.n;
	struct drawn *p = drawn_new(sh, sound ? DRAWN_VIEW : DRAWN_ROOM);
	str more = pattern_given(sh->arena, sh->e, b);

	if (sound)
		p->view = pattern_view(sh->arena, sh->e, b);
	drawn_add(sh, p, sound ? pattern_view_words(sh->arena, sh->e, b)
	    : sh_word(sh, "Room for a sketch"), pattern_head(sh->arena, sh->e, b));
	if (more.n)
		sheet_text(sh, sh_format(sh, "Given: %.*s.", STR_ARG(more)));
}

/* The author's words above a drawing stay with it. */
static void add_caption(struct sheet *sh, const struct assignment *x, const struct prose *p)
{
	const struct type type = styled(sh->e->body, part_style(x, SAID_DRAWING));
	struct block **v = block_prose(&sh->s, p, &type, 4, sh->width_pt);

	for (size_t i = 0; i < p->n; i++) {
		v[i]->keep_next = true;
		flow_add(sh->flow, v[i]);
	}
}

static void add_plate(struct sheet *sh, const struct plate_block *b)
{
	struct drawn *p = drawn_new(sh, DRAWN_PLATE);

	p->plate = figure_plate(sh->arena, sh->e, b);
	drawn_add(sh, p, fig_plate_words(sh->arena, &p->plate),
	    figure_plate_head(sh->arena, sh->e, b));
}

static void add_weldment(struct sheet *sh, const struct assignment *x,
    const struct weldment *w)
{
	bool sound = !weldment_fault(sh->arena, w).n;
	struct drawn *p = drawn_new(sh, sound ? DRAWN_WELDMENT : DRAWN_ROOM);

	if (sound)
		p->iso = sheet_weldment(sh, x, w);
	drawn_add(sh, p, sound ? fig_iso_words(sh->arena, &p->iso)
	    : sh_word(sh, "Room for a sketch"), sh_word(sh, "Put together"));
}

void sheet_figures(struct sheet *sh, const struct assignment *x)
{
	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct drawing *d = &x->drawings[i];

		add_caption(sh, x, &d->caption);
		if (d->kind == DRAWING_PATTERN)
			add_pattern(sh, d->pattern);
		else if (d->kind == DRAWING_PLATE)
			add_plate(sh, &d->plate);
		else if (d->kind == DRAWING_WELDMENT)
			add_weldment(sh, x, d->weldment);
		else if (d->kind == DRAWING_PICTURE)
			sheet_picture(sh, d, part_style(x, SAID_DRAWING));
		else if (!drawn_before(sh, x, i))
			add_joint(sh, x, i);
	}
}
