#include "sheets/figure.h"

#include "draw/fig.h"
#include "reckon/pipe.h"
#include "sheets/band.h"
#include "sheets/cut_map.h"
#include "sheets/pattern_sheet.h"
#include "sheets/weld_symbol.h"

#include <math.h>

static const enum fig_shape shapes[JOINT_COUNT] = {
	[JOINT_TEE] = FIG_TEE, [JOINT_LAP] = FIG_LAP, [JOINT_CORNER] = FIG_CORNER_CLOSED,
	[JOINT_OPEN_CORNER] = FIG_CORNER_OPEN, [JOINT_EDGE] = FIG_EDGE,
	[JOINT_SQUARE_BUTT] = FIG_SQUARE_BUTT, [JOINT_SINGLE_V] = FIG_SINGLE_V,
	[JOINT_SINGLE_BEVEL] = FIG_SINGLE_BEVEL, [JOINT_FLARE_BEVEL] = FIG_FLARE_BEVEL,
	[JOINT_U_GROOVE] = FIG_U_GROOVE, [JOINT_PIPE_BUTT] = FIG_PIPE_BUTT,
	[JOINT_BRANCH] = FIG_BRANCH, [JOINT_SURFACING] = FIG_PAD, [JOINT_BUTT] = FIG_BUTT_TEST,
};

static double middle(const struct quantity *q)
{
	return given(q) ? (q->lo + q->hi) / 2 : NAN;
}

static void fill_sizes(const struct joint_block *j, struct fig_joint *f)
{
	f->t1_mm = middle(&j->t1);
	f->t2_mm = middle(&j->t2);
	f->leg_mm = middle(&j->leg);
	f->gap_lo_mm = given(&j->gap) ? j->gap.lo : NAN;
	f->gap_hi_mm = given(&j->gap) ? j->gap.hi : NAN;
	f->land_mm = middle(&j->land);
	f->angle_deg = middle(&j->angle);
	f->bevel_angle_deg = middle(&j->bevel);
	f->backing_t_mm = middle(&j->backing_t);
	f->backing_width_mm = middle(&j->backing_w);
	f->overlap_mm = middle(&j->overlap);
	f->length_mm = middle(&j->length);
	f->reinforcement_mm = middle(&j->reinforcement);
	f->depth_mm = middle(&j->depth);
	f->groove_width_mm = middle(&j->width);
	f->radius_mm = middle(&j->radius);
}

static str backing_text(struct arena *a, const struct joint_block *j)
{
	if (!given(&j->backing_t))
		return (str){ 0 };
	return str_format(a, "backing %.*s x %.*s", STR_ARG(quantity_text(a, &j->backing_t)),
	    STR_ARG(quantity_text(a, &j->backing_w)));
}

static void fill_labels(struct arena *a, const struct joint_block *j, struct fig_joint *f)
{
	const struct { const struct quantity *q; str *label; } rows[] = {
		{ &j->t1, &f->label_t1 }, { &j->t2, &f->label_t2 }, { &j->leg, &f->label_leg },
		{ &j->gap, &f->label_gap }, { &j->land, &f->label_land },
		{ &j->angle, &f->label_angle }, { &j->bevel, &f->label_bevel },
		{ &j->overlap, &f->label_overlap }, { &j->length, &f->label_length },
		{ &j->reinforcement, &f->label_reinforcement }, { &j->depth, &f->label_depth },
		{ &j->width, &f->label_groove_width }, { &j->radius, &f->label_radius },
	};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		*rows[i].label = quantity_text(a, rows[i].q);
	if (j->t2.lo == j->t1.lo && j->t2.hi == j->t1.hi)
		f->label_t2 = (str){ 0 }; /* One dimension serves members that are alike. */
	f->label_backing = backing_text(a, j);
}

static void fill_pipe(struct arena *a, const struct joint_block *j, struct fig_joint *f)
{
	const struct pipe_size *p = j->branch.od_mm > 0 ? &j->branch : &j->pipe;
	struct buf b = { .arena = a };

	/* A tube corner is drawn as the round that it is at the weld. */
	if (f->shape == FIG_FLARE_BEVEL && !(p->od_mm > 0)) {
		f->od_mm = 2 * f->radius_mm;
		f->label_od = f->label_radius;
	}
	if (!(p->od_mm > 0))
		return;
	f->od_mm = p->od_mm;
	if (!(f->t1_mm > 0))
		f->t1_mm = p->wall_mm;
	buf_add(&b, p->text);
	f->label_od = buf_str(&b);
	if (j->branch.od_mm > 0 && j->pipe.od_mm > 0 && !(f->t2_mm > 0))
		f->t2_mm = j->pipe.wall_mm;
}

/* The plate that a pad of beads is laid on: the piece called pad, else the first. */
static const struct piece *pad_piece(const struct assignment *x)
{
	const struct piece *hit = NULL;

	for (size_t i = 0; i < x->npieces; i++)
		if (x->pieces[i].ndims == 3 && (!hit || str_starts_nocase(x->pieces[i].name, STR("pad"))))
			hit = &x->pieces[i];
	return hit;
}

static void fill_pad(struct arena *a, const struct assignment *x, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct piece *p = pad_piece(x);

	f->passes = j->beads;
	f->width1_mm = middle(&j->width);
	f->label_width1 = quantity_text(a, &j->width);
	if (given(&j->width) || !p)
		return;
	f->width1_mm = p->dims[1].lo;
	f->label_width1 = quantity_text(a, &p->dims[1]);
}

static str position_text(struct arena *a, const struct position_at *at)
{
	static const char *const ways[] = { "", " up", " down" };

	return str_format(a, "%.*s%s", STR_ARG(position_word(at->position)), ways[at->progression]);
}

static void fill_weld(struct arena *a, const struct assignment *x, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct weld *w = j->weld == NONE ? NULL : &x->welds[j->weld];

	if (!w && x->nwelds == 1)
		w = &x->welds[0];
	if (!w)
		return;
	if (w->letter)
		f->letter = str_copy(a, (str){ &w->letter, 1 });
	f->position = position_text(a, &w->at);
}

void figure_joint(struct arena *a, const struct assignment *x, const struct joint_block *j,
    struct fig_joint *out)
{
	*out = (struct fig_joint){ .shape = j->joint < JOINT_COUNT ? shapes[j->joint] : FIG_NONE };
	if (j->joint == JOINT_SINGLE_V && j->pipe.od_mm > 0)
		out->shape = FIG_PIPE_BUTT;
	fill_sizes(j, out);
	fill_labels(a, j, out);
	fill_pipe(a, j, out);
	fill_weld(a, x, j, out);
	out->both_sides = j->both_sides;
	/* Beads are not numbered: the block says how many passes there are, not how they
	 * lie, and a guess would contradict the steps. */
	out->passes = 0;
	if (j->joint == JOINT_SURFACING)
		fill_pad(a, x, j, out);
	out->restart = j->restart.n > 0;
}

static struct fig_feature feature_of(struct arena *a, const struct plate_mark *k,
    const struct plate_block *p)
{
	struct fig_feature f = { .x_mm = k->v[0].lo, .y_mm = k->v[1].lo,
		.label_x = quantity_text(a, &k->v[0]), .label_y = quantity_text(a, &k->v[1]) };

	switch (k->kind) {
	case MARK_HOLE:
		f.mark = FIG_HOLE;
		f.w_mm = k->v[2].lo;
		f.label_size = str_format(a, "%.*s dia", STR_ARG(quantity_text(a, &k->v[2])));
		break;
	case MARK_SLOT:
		f.mark = FIG_SLOT;
		f.w_mm = k->v[2].lo;
		f.h_mm = k->v[3].lo;
		f.label_size = str_format(a, "%.*s x %.*s slot", STR_ARG(quantity_text(a, &k->v[2])),
		    STR_ARG(quantity_text(a, &k->v[3])));
		break;
	case MARK_BEND_X:
		f = (struct fig_feature){ .mark = FIG_BEND, .x_mm = k->v[0].lo, .h_mm = p->width.lo,
			.label_x = f.label_x, .label_size = STR("bend") };
		break;
	case MARK_BEND_Y:
		f = (struct fig_feature){ .mark = FIG_BEND, .y_mm = k->v[0].lo, .w_mm = p->length.lo,
			.label_y = quantity_text(a, &k->v[0]), .label_size = STR("bend") };
		break;
	default:
		f.mark = FIG_CUT;
		f.w_mm = k->v[2].lo - k->v[0].lo;
		f.h_mm = k->v[3].lo - k->v[1].lo;
		f.label_size = str_format(a, "cut to %.*s, %.*s", STR_ARG(quantity_text(a, &k->v[2])),
		    STR_ARG(quantity_text(a, &k->v[3])));
		break;
	}
	return f;
}

struct fig_plate figure_plate(struct arena *a, const struct plate_block *p)
{
	struct fig_feature *v = arena_array(a, p->nmarks, sizeof *v);
	struct fig_plate f = { .length_mm = p->length.lo, .width_mm = p->width.lo,
		.label_length = quantity_text(a, &p->length),
		.label_width = quantity_text(a, &p->width),
		.label_thickness = quantity_text(a, &p->thickness),
		.features = v, .nfeatures = p->nmarks };

	for (size_t i = 0; i < p->nmarks; i++)
		v[i] = feature_of(a, &p->marks[i], p);
	return f;
}

bool figure_can_draw(struct arena *a, const struct assignment *x, const struct joint_block *j)
{
	struct fig_joint f;

	figure_joint(a, x, j, &f);
	return fig_can_draw(f.shape);
}

/* Between these sizes every shape has been seen to fit (tests/unit/test_fig.c). */
static bool sizes_lie_far_apart(const struct fig_joint *f)
{
	const double sizes[] = { f->t1_mm, f->t2_mm, f->leg_mm, f->gap_hi_mm, f->overlap_mm / 4,
		f->groove_width_mm / 4, f->depth_mm };
	double least = INFINITY, most = 0;

	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		most = fmax(most, sizes[i] > 0 ? sizes[i] : 0);
		least = fmin(least, i < 2 && sizes[i] > 0 ? sizes[i] : INFINITY);
	}
	return most > 6 * least || least < 1;
}

bool figure_has_room(struct arena *a, const struct faces *faces, const struct assignment *x,
    const struct joint_block *j)
{
	static const struct canvas_ops nothing = { NULL };
	const struct edition usual = edition_new(&(struct edition_choice){ .large = false });
	const struct flow_spec s = band_flow_spec(&usual);
	const rect area = { 0, 0, s.page_width_pt - s.inner_pt - s.outer_pt,
		(s.page_height_pt - s.top_pt - s.bottom_pt) / 3 + 12 };
	struct canvas c = { .ops = &nothing };
	struct fig_joint f;

	figure_joint(a, x, j, &f);
	if (!sizes_lie_far_apart(&f))
		return true;
	canvas_page_begin(&c, s.page_width_pt, s.page_height_pt);
	return fig_joint_draw(&c, faces, area, &f);
}

str figure_fault(struct arena *a, const struct assignment *x, const struct drawing *d)
{
	struct fig_joint j;
	struct fig_plate p;

	if (d->kind == DRAWING_PATTERN)
		return pattern_of(a, d->pattern)->fault;
	if (d->kind == DRAWING_PLATE) {
		p = figure_plate(a, &d->plate);
		return p.nfeatures > FIG_FEATURES ? STR("more marks than one drawing holds (40)")
		                                  : fig_plate_fault(&p);
	}
	figure_joint(a, x, &d->joint, &j);
	return fig_can_draw(j.shape) ? fig_joint_fault(&j) : (str){ 0 };
}

/* ---- onto the page ---- */

struct picture {
	const struct faces *faces;
	struct fig_joint joint;
	struct fig_plate plate;
	struct fig_view view;
	struct fig_symbol symbol;
	struct fig_position position;
	struct fig_cut cut;
};

static void draw_section(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_joint_draw(c, p->faces, area, &p->joint);
}

static void draw_plan(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_plan_draw(c, p->faces, area, &p->joint);
}

static void draw_plate(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_plate_draw(c, p->faces, area, &p->plate);
}

static void draw_view(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_view_draw(c, p->faces, area, &p->view);
}

static void draw_symbol(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_symbol_draw(c, p->faces, area, &p->symbol);
}

static void draw_position(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_position_draw(c, p->faces, area, &p->position);
}

static void draw_cut(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_cut_draw(c, p->faces, area, &p->cut);
}

static void draw_sketch_room(void *user, struct canvas *c, rect area)
{
	const struct ink border = { .stroke_pt = RULE_PT };

	(void)user;
	canvas_rect(c, area, &border);
}

/* A third of the body: no drawing is smaller than that (job of the sheet). With large
 * labels it takes more. */
static double picture_height(const struct sheet *sh)
{
	return flow_height_pt(sh->flow) * (sh->e->choice.large ? 0.6 : 1.0 / 3) + 12;
}

/* keep: the picture stands on one page with what follows it. */
static void add_kept(struct sheet *sh, draw_picture *draw, struct picture *p, str alt,
    str head, bool keep)
{
	struct block *h = block_plain(&sh->s, head, &sh->e->bold, TAG_P, sh->width_pt);
	struct block *b = sheet_figure(sh, draw, p, alt, picture_height(sh), sh->width_pt);

	h->keep_next = true;
	b->keep_next = keep;
	sheet_add(sh, h, 6, 2);
	sheet_add(sh, b, 2, 6);
}

static void add_picture(struct sheet *sh, draw_picture *draw, struct picture *p, str alt, str head)
{
	add_kept(sh, draw, p, alt, head, false);
}

/* ---- symbol and position, in pairs under the section ---- */

#define PAIR_PT MM_PT(41)        /* a position reads at 40 mm */
#define PAIR_GAP_PT 10.0
#define PAIRS_MOST 8

struct pair_part { draw_picture *draw; struct picture *p; str alt; };

static struct picture *keep_picture(struct sheet *sh, const struct picture *p)
{
	struct picture *kept = arena_alloc(sh->arena, sizeof *kept);

	*kept = *p;
	return kept;
}

/* The symbol, then one sketch a position. */
static size_t parts_of(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j, struct pair_part *out)
{
	struct picture p = { .faces = sh->s.faces };
	uint32_t *welds = arena_array(sh->arena, x->nwelds + 1, sizeof *welds);
	size_t n = 0, nwelds;

	welds_of_block(x, j, welds, &nwelds);
	if (weld_symbol(sh->arena, x, j, &p.symbol))
		out[n++] = (struct pair_part){ draw_symbol, keep_picture(sh, &p),
			fig_symbol_words(sh->arena, &p.symbol) };
	for (size_t i = 0; i < nwelds && n < PAIRS_MOST; i++)
		if (weld_position(sh->arena, x, j, welds[i], &p.position))
			out[n++] = (struct pair_part){ draw_position,
				keep_picture(sh, &p),
				fig_position_words(sh->arena, &p.position) };
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

static void add_pairs(struct sheet *sh, const struct pair_part *v, size_t n)
{
	size_t in_row = sh->e->choice.large ? 1 : 2;
	double width = (sh->width_pt - PAIR_GAP_PT * (double)(in_row - 1)) / (double)in_row;

	for (size_t i = 0; i < n; i += in_row) {
		struct block *pair[2];
		struct block_column columns[2];
		size_t k = 0;

		for (; k < in_row && i + k < n; k++) {
			pair[k] = sheet_figure(sh, v[i + k].draw, v[i + k].p, v[i + k].alt,
			    PAIR_PT * sh->e->figure_zoom, width);
			columns[k] = (struct block_column){ &pair[k], 1, width };
		}
		sheet_add(sh, block_columns(&sh->s, columns, k, PAIR_GAP_PT), 2, 4);
	}
}

/* ---- cut maps ---- */

#define CUT_PT MM_PT(66)

static void add_cut(struct sheet *sh, const struct fig_cut *k)
{
	struct picture p = { .faces = sh->s.faces, .cut = *k };
	struct block *h = block_plain(&sh->s, k->od_mm > 0
	    ? STR("Cut map, round the outside from 12: one way that fits; the code decides")
	    : STR("Cut map, from the left end: one way that fits; the code decides"),
	    &sh->e->bold, TAG_P, sh->width_pt);

	h->keep_next = true;
	sheet_add(sh, h, 6, 2);
	sheet_add(sh, sheet_figure(sh, draw_cut, keep_picture(sh, &p),
	    fig_cut_words(sh->arena, k), CUT_PT * sh->e->figure_zoom, sh->width_pt), 2, 6);
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
		if (!cut_map(sh->arena, x, j, welds[i], &v[maps]))
			continue;
		alike &= cut_maps_alike(&v[0], &v[maps++]);
	}
	alike &= maps == n;
	if (alike && maps > 1)
		v[0].note = STR("each weld alike");
	for (size_t i = 0; i < (alike && maps ? 1 : maps); i++)
		add_cut(sh, &v[i]);
	return maps > 0;
}

static str joint_head(struct arena *a, const struct fig_joint *j, const struct joint_block *b)
{
	struct buf t = { .arena = a };

	if (j->letter.n)
		buf_addf(&t, "Weld %.*s: ", STR_ARG(j->letter));
	buf_add(&t, joint_word(b->joint));
	if (!j->letter.n && t.n && t.p[0] >= 'a' && t.p[0] <= 'z')
		t.p[0] = (char)(t.p[0] - 32);
	if (j->position.n)
		buf_addf(&t, ", position %.*s", STR_ARG(j->position));
	if (b->passes)
		buf_addf(&t, "; %u %s", b->passes, b->passes == 1 ? "pass" : "passes");
	if (b->restart.n)
		buf_addf(&t, "; stop and restart: %.*s", STR_ARG(b->restart));
	return buf_str(&t);
}

static void add_joint(struct sheet *sh, const struct assignment *x, const struct joint_block *j)
{
	struct picture *p = arena_alloc(sh->arena, sizeof *p);
	struct pair_part v[PAIRS_MOST];
	size_t n;
	str head;

	p->faces = sh->s.faces;
	figure_joint(sh->arena, x, j, &p->joint);
	head = joint_head(sh->arena, &p->joint, j);
	if (!fig_can_draw(p->joint.shape)) {
		add_picture(sh, draw_sketch_room, p, STR("Room for a sketch"),
		    str_format(sh->arena, "%.*s: not drawn; sketch it here from the print",
		        STR_ARG(head)));
		return;
	}
	n = parts_of(sh, x, j, v);
	if (shown_before(sh, x, j, v, n))
		n = 0;
	add_kept(sh, draw_section, p, fig_joint_words(sh->arena, &p->joint), head, n > 0);
	add_pairs(sh, v, n);
	/* A cut map shows the coupon from above or from its end as well. */
	if (add_cuts(sh, x, j))
		return;
	if (j->restart.n || p->joint.shape == FIG_PIPE_BUTT)
		add_picture(sh, draw_plan, p, STR("The coupon along its weld or from its end"),
		    p->joint.od_mm > 0 ? STR("Seen from the end") : STR("Along the weld"));
}

/* The part from its given sizes; a part that cannot be leaves room for a sketch. */
static void add_pattern(struct sheet *sh, const struct pattern_block *b)
{
	struct picture *p = arena_alloc(sh->arena, sizeof *p);
	bool sound = !pattern_of(sh->arena, b)->fault.n;
	str more = pattern_given(sh->arena, b);

	p->faces = sh->s.faces;
	if (sound)
		p->view = pattern_view(sh->arena, b);
	add_picture(sh, sound ? draw_view : draw_sketch_room, p,
	    sound ? pattern_view_words(sh->arena, b) : STR("Room for a sketch"),
	    pattern_head(sh->arena, b));
	if (more.n)
		sheet_text(sh, str_format(sh->arena, "Given: %.*s.", STR_ARG(more)));
}

/* The author's words above a drawing stay with it. */
static void add_caption(struct sheet *sh, const struct prose *p)
{
	struct block **v = block_prose(&sh->s, p, &sh->e->body, 4, sh->width_pt);

	for (size_t i = 0; i < p->n; i++) {
		v[i]->keep_next = true;
		flow_add(sh->flow, v[i]);
	}
}

void sheet_figures(struct sheet *sh, const struct assignment *x)
{
	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct drawing *d = &x->drawings[i];
		struct picture *p;

		add_caption(sh, &d->caption);
		if (d->kind == DRAWING_JOINT) {
			add_joint(sh, x, &d->joint);
			continue;
		}
		if (d->kind == DRAWING_PATTERN) {
			add_pattern(sh, d->pattern);
			continue;
		}
		p = arena_alloc(sh->arena, sizeof *p);
		p->faces = sh->s.faces;
		p->plate = figure_plate(sh->arena, &d->plate);
		add_picture(sh, draw_plate, p, fig_plate_words(sh->arena, &p->plate),
		    STR("Blank, from the lower left corner"));
	}
}
