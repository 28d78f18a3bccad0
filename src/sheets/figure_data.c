/* From the facts of an assignment to the data of its drawings. */
#include "sheets/figure_data.h"

#include "draw/fig.h"
#include "model/words.h"
#include "reckon/pipe.h"
#include "sheets/band.h"
#include "sheets/both_units.h"
#include "sheets/pattern_sheet.h"
#include "sheets/weldment.h"

#include <math.h>

static const enum fig_shape shapes[JOINT_COUNT] = {
	[JOINT_TEE] = FIG_TEE, [JOINT_LAP] = FIG_LAP, [JOINT_CORNER] = FIG_CORNER_CLOSED,
	[JOINT_OPEN_CORNER] = FIG_CORNER_OPEN, [JOINT_EDGE] = FIG_EDGE,
	[JOINT_SQUARE_BUTT] = FIG_SQUARE_BUTT, [JOINT_SINGLE_V] = FIG_SINGLE_V,
	[JOINT_SINGLE_BEVEL] = FIG_SINGLE_BEVEL, [JOINT_FLARE_BEVEL] = FIG_FLARE_BEVEL,
	[JOINT_U_GROOVE] = FIG_U_GROOVE, [JOINT_PIPE_BUTT] = FIG_PIPE_BUTT,
	[JOINT_CUT_EDGE] = FIG_CUT_EDGE, [JOINT_BEVEL_CUT] = FIG_BEVEL_CUT,
	[JOINT_BRANCH] = FIG_BRANCH, [JOINT_SURFACING] = FIG_PAD, [JOINT_BUTT] = FIG_BUTT_TEST,
};

/* The same joints with edges that the block prepares; others stay what they are, and the
 * drawing says why they take no preparation. */
static const enum fig_shape prepared[JOINT_COUNT] = {
	[JOINT_TEE] = FIG_TEE_GROOVE, [JOINT_CORNER] = FIG_CORNER_GROOVE,
	[JOINT_EDGE] = FIG_EDGE_GROOVE, [JOINT_BUTT] = FIG_BUTT_GROOVE,
};

_Static_assert((int)PREPARATION_COUNT == (int)FIG_PREP_COUNT &&
    (int)PREPARATION_FLARE_V == (int)FIG_PREP_FLARE_V, "the same preparations");

static double middle(const struct quantity *q)
{
	return given(q) ? (q->lo + q->hi) / 2 : NAN;
}

static void fill_sizes(const struct joint_block *j, struct fig_joint *f)
{
	f->t1_mm = middle(&j->t1);
	f->t2_mm = middle(&j->t2);
	f->leg_mm = middle(&j->leg);
	f->leg2_mm = middle(&j->leg2);
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
	f->depth_back_mm = middle(&j->depth_back);
	f->angle_back_deg = middle(&j->angle_back);
	f->bevel_back_deg = middle(&j->bevel_back);
	f->radius_back_mm = middle(&j->radius_back);
	f->groove_width_mm = middle(&j->width);
	f->radius_mm = middle(&j->radius);
	f->kerf_mm = middle(&j->kerf);
}

static str backing_text(struct arena *a, const struct edition *e, const struct joint_block *j)
{
	if (!given(&j->backing_t))
		return (str){ 0 };
	if (j->ring)
		return word_format(a, edition_language(e), "backing ring %.*s x %.*s",
		    STR_ARG(quantity_text(a, e, &j->backing_t)),
		    STR_ARG(quantity_text(a, e, &j->backing_w)));
	return word_format(a, edition_language(e), "backing %.*s x %.*s",
	    STR_ARG(quantity_text(a, e, &j->backing_t)),
	    STR_ARG(quantity_text(a, e, &j->backing_w)));
}

/* What is other at the back of a double preparation. */
static void label_back(struct arena *a, const struct edition *e, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct language *l = edition_language(e);
	const struct quantity *q = given(&j->angle_back) ? &j->angle_back : &j->bevel_back;

	if (given(q) && q == &j->bevel_back && fig_prepares_both(f))
		f->label_angle_back = word_format(a, l, "%.*s each at the back",
		    STR_ARG(quantity_text(a, e, q)));
	else if (given(q))
		f->label_angle_back = word_format(a, l, "%.*s at the back",
		    STR_ARG(quantity_text(a, e, q)));
	if (given(&j->radius_back))
		f->label_radius_back = word_format(a, l, "%.*s radius at the back",
		    STR_ARG(quantity_text(a, e, &j->radius_back)));
}

static void fill_labels(struct arena *a, const struct edition *e, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct { const struct quantity *q; str *label; } rows[] = {
		{ &j->t1, &f->label_t1 }, { &j->t2, &f->label_t2 }, { &j->leg, &f->label_leg },
		{ &j->leg2, &f->label_leg2 },
		{ &j->gap, &f->label_gap }, { &j->land, &f->label_land },
		{ &j->angle, &f->label_angle }, { &j->bevel, &f->label_bevel },
		{ &j->overlap, &f->label_overlap }, { &j->length, &f->label_length },
		{ &j->reinforcement, &f->label_reinforcement }, { &j->depth, &f->label_depth },
		{ &j->width, &f->label_groove_width }, { &j->radius, &f->label_radius },
		{ &j->depth_back, &f->label_depth_back },
	};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		*rows[i].label = quantity_text(a, e, rows[i].q);
	if (j->t2.lo == j->t1.lo && j->t2.hi == j->t1.hi)
		f->label_t2 = (str){ 0 }; /* One dimension serves members that are alike. */
	f->label_backing = backing_text(a, e, j);
	label_back(a, e, j, f);
	if (f->label_radius.n)
		f->label_radius = word_format(a, edition_language(e), "%.*s radius",
		    STR_ARG(f->label_radius));
}

static void fill_pipe(struct arena *a, const struct edition *e, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct pipe_size *p = j->branch.od_mm > 0 ? &j->branch : &j->pipe;

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
	f->label_od = pipe_text(a, e, p->text);
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

static void fill_pad(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_joint *f)
{
	const struct piece *p = pad_piece(x);

	f->passes = j->beads;
	f->width1_mm = middle(&j->width);
	f->label_width1 = quantity_text(a, e, &j->width);
	if (given(&j->width) || !p)
		return;
	f->width1_mm = p->dims[1].lo;
	f->label_width1 = quantity_text(a, e, &p->dims[1]);
}

static void fill_weld(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_joint *f)
{
	const struct weld *w = j->weld == NONE ? NULL : &x->welds[j->weld];

	if (!w && x->nwelds == 1 && !joint_is_cut(j->joint))
		w = &x->welds[0];
	if (!w)
		return;
	if (w->letter)
		f->letter = str_copy(a, (str){ &w->letter, 1 });
	f->position = position_text(a, e, &w->at);
}

/* What the shape is called after the edges that the block prepares. */
static enum fig_shape shape_of(const struct joint_block *j)
{
	if (j->joint >= JOINT_COUNT)
		return FIG_NONE;
	if (j->joint == JOINT_SINGLE_V && j->pipe.od_mm > 0)
		return FIG_PIPE_BUTT;
	if (j->joint == JOINT_LAP && j->marks.hole)
		return j->marks.hole == HOLE_SPOT ? FIG_SPOT : FIG_PLUG;
	if (j->joint == JOINT_TEE && j->preparation == PREPARATION_FLARE_BEVEL)
		return FIG_FLARE_BEVEL;
	if (j->preparation && prepared[j->joint] != FIG_NONE)
		return prepared[j->joint];
	return shapes[j->joint];
}

/* A plug or slot across its width; the length of a slot stands in its label. */
static void fill_hole(struct arena *a, const struct edition *e, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct symbol_marks *k = &j->marks;

	if (f->shape != FIG_PLUG && f->shape != FIG_SPOT)
		return;
	f->groove_width_mm = middle(&k->hole_width);
	f->depth_mm = middle(&k->fill);
	f->label_groove_width = quantity_text(a, e, &k->hole_width);
	if (k->hole == HOLE_SLOT && given(&k->hole_length))
		f->label_groove_width = word_format(a, edition_language(e), "%.*s x %.*s slot",
		    STR_ARG(f->label_groove_width), STR_ARG(quantity_text(a, e, &k->hole_length)));
	f->label_depth = quantity_text(a, e, &k->fill);
	f->hole_length_mm = middle(&k->hole_length);
	f->slots_across = k->slots_across;
	f->spacing_mm = middle(&k->spacing);
	f->label_spacing = quantity_text(a, e, &k->spacing);
	f->holes = k->count;
	f->label_places = f->label_groove_width;
	if (k->count > 1)
		f->label_places = word_format(a, edition_language(e), "%.*s, %zu places",
		    STR_ARG(f->label_groove_width), (size_t)k->count);
}

/* A cut has one angle, called angle or bevel; its kerf's label names it. */
static void fill_cut(struct arena *a, const struct edition *e, const struct joint_block *j,
    struct fig_joint *f)
{
	if (!joint_is_cut(j->joint))
		return;
	if (!given(&j->bevel)) {
		f->bevel_angle_deg = f->angle_deg;
		f->label_bevel = f->label_angle;
	}
	f->angle_deg = NAN;
	f->label_angle = f->label_gap = (str){ 0 };
	if (given(&j->kerf))
		f->label_kerf = word_format(a, edition_language(e), "%.*s kerf",
		    STR_ARG(quantity_text(a, e, &j->kerf)));
}

/* Twice the bevel, or half the included angle, when only one of them is given and exact:
 * tolerances do not double. */
static void fill_angles(struct arena *a, const struct edition *e, const struct joint_block *j,
    struct fig_joint *f)
{
	const struct quantity *q = given(&j->angle) ? &j->angle : &j->bevel;
	struct buf b = { .arena = a };

	if (!given(q) || q->lo != q->hi || q->tolerance ||
	    (given(&j->angle) && given(&j->bevel)) || !fig_prepares_both(f))
		return;
	format_angle(&b, given(&j->angle) ? q->lo / 2 : q->lo * 2);
	if (given(&j->angle))
		f->label_bevel = word_format(a, edition_language(e), "%.*s each",
		    STR_ARG(buf_str(&b)));
	else
		f->label_angle = buf_str(&b);
}

/* Of a bevel or J in 2G the upper plate is prepared (common practice, no source): beads
 * lie from the square one up. */
static bool is_one_edge(const struct joint_block *j)
{
	return j->joint == JOINT_SINGLE_BEVEL || j->preparation == PREPARATION_BEVEL ||
	    j->preparation == PREPARATION_J || j->preparation == PREPARATION_DOUBLE_BEVEL ||
	    j->preparation == PREPARATION_DOUBLE_J;
}

static bool is_2g(const struct assignment *x, const struct joint_block *j)
{
	const struct weld *w = j->weld != NONE ? &x->welds[j->weld]
	    : x->nwelds == 1 ? &x->welds[0] : NULL;

	return w && w->at.position == POSITION_2G;
}

str figure_bead_note(const struct edition *e, const struct assignment *x,
    const struct joint_block *j, const struct fig_joint *f)
{
	const struct language *l = edition_language(e);
	uint32_t widest = 0;

	for (size_t i = 0; i < j->nlayers; i++)
		widest = j->layers[i].beads > widest ? j->layers[i].beads : widest;
	if (!widest)
		return (str){ 0 };
	if (widest == 1)
		return word(l, "Beads are numbered as they are laid.");
	if (fig_beads_from_base(f))
		return word(l, "Beads are numbered as they are laid, each layer from the base member out.");
	if (is_2g(x, j))
		return f->beads_from_right
		    ? word(l, "Beads are numbered as they are laid, each layer from the lower "
		              "member up; it is the right one here.")
		    : word(l, "Beads are numbered as they are laid, each layer from the lower "
		              "member up; it is the left one here.");
	return word(l, "Beads are numbered as they are laid, each layer from the left.");
}

static void fill_layers(struct arena *a, const struct assignment *x,
    const struct joint_block *j, struct fig_joint *f)
{
	struct fig_layer *v = arena_array(a, j->nlayers + 1, sizeof *v);

	for (size_t i = 0; i < j->nlayers; i++)
		v[i] = (struct fig_layer){ j->layers[i].beads, j->layers[i].back };
	f->layers = v;
	f->beads_from_right = is_2g(x, j) && is_one_edge(j);
	f->nlayers = j->nlayers;
}

bool figure_restart(const struct joint_block *j, double *right_mm)
{
	double end = middle(&j->length) / 2;

	*right_mm = 0;
	if (j->restart_place == RESTART_FROM_LEFT)
		*right_mm = j->restart_mm - end;
	else if (j->restart_place == RESTART_FROM_RIGHT)
		*right_mm = end - j->restart_mm;
	return j->restart_place != RESTART_UNTOLD;
}

void figure_joint(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_joint *out)
{
	*out = (struct fig_joint){ .language = edition_language(e),
		.shape = shape_of(j), .prep = (enum fig_prep)j->preparation };
	fill_sizes(j, out);
	fill_labels(a, e, j, out);
	fill_pipe(a, e, j, out);
	fill_weld(a, e, x, j, out);
	fill_hole(a, e, j, out);
	fill_cut(a, e, j, out);
	fill_angles(a, e, j, out);
	/* Without layers no beads are drawn: how many passes there are does not say how
	 * they lie, and a guess would contradict the steps. */
	fill_layers(a, x, j, out);
	out->both_sides = j->both_sides;
	out->ring = j->ring;
	if (j->joint == JOINT_SURFACING)
		fill_pad(a, e, x, j, out);
	out->restart = figure_restart(j, &out->restart_mm);
	out->label_restart = both_units(a, e, j->restart);
}

/* Between these sizes every shape has been seen to fit (tests/unit/test_fig.c). */
static bool sizes_lie_far_apart(const struct fig_joint *f)
{
	const double sizes[] = { f->t1_mm, f->t2_mm, f->leg_mm, f->leg2_mm, f->gap_hi_mm,
		f->kerf_mm, f->overlap_mm / 4,
		f->groove_width_mm / 4, f->depth_mm };
	double least = INFINITY, most = 0;

	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		most = fmax(most, sizes[i] > 0 ? sizes[i] : 0);
		least = fmin(least, i < 2 && sizes[i] > 0 ? sizes[i] : INFINITY);
	}
	return most > 6 * least || least < 1;
}

bool figure_has_room(const struct faces *faces, const struct fig_joint *f)
{
	static const struct canvas_ops nothing = { NULL };
	const struct edition usual = edition_new(&(struct edition_choice){ .large = false });
	const struct flow_spec s = band_flow_spec(&usual);
	const rect area = { 0, 0, s.page_width_pt - s.inner_pt - s.outer_pt,
		(s.page_height_pt - s.top_pt - s.bottom_pt) / 3 + 12 };
	struct canvas c = { .ops = &nothing };

	if (!sizes_lie_far_apart(f))
		return true;
	canvas_page_begin(&c, s.page_width_pt, s.page_height_pt);
	return fig_joint_draw(&c, faces, area, f);
}

/* A pipe is seen from its end, a plate along a weld that stops and restarts, a row of
 * plugs from above; how long it is has to be known. */
bool figure_has_plan(const struct fig_joint *f, const struct joint_block *j)
{
	if (f->shape == FIG_PIPE_BUTT)
		return true;
	if (f->shape == FIG_PLUG || f->shape == FIG_SPOT)
		return f->length_mm > 0 && (f->holes <= 1 || f->spacing_mm > 0);
	return j->restart.n && (f->shape == FIG_BRANCH || f->length_mm > 0);
}

str figure_fault(struct arena *a, const struct assignment *x, const struct drawing *d)
{
	struct fig_joint j;
	struct fig_plate p;

	if (d->kind == DRAWING_PICTURE)
		return (str){ 0 };
	if (d->kind == DRAWING_WELDMENT)
		return weldment_fault(a, d->weldment);
	if (d->kind == DRAWING_PATTERN)
		return pattern_of(a, d->pattern)->fault;
	if (d->kind == DRAWING_PLATE) {
		p = figure_plate(a, NULL, &d->plate);
		return p.nfeatures > FIG_FEATURES ? WORD("more marks than one drawing holds (40)")
		                                  : fig_plate_fault(&p);
	}
	figure_joint(a, NULL, x, &d->joint, &j);
	return fig_can_draw(j.shape) ? fig_joint_fault(&j) : (str){ 0 };
}

