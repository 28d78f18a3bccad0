#include "sheets/figure_key.h"

#include "base/buf.h"

#define EDGE_MM 0.01

enum { SHORT_LABEL = 4 };        /* characters: "45°", "1/8" */

static void key_label(struct figure_key *k, str *label)
{
	size_t at = 0;

	if (str_chars(*label) <= SHORT_LABEL)
		return;
	while (at < k->n && !str_eq(k->v[at], *label))
		at++;
	if (at == FIGURE_KEYS)
		return;
	if (at == k->n)
		k->v[k->n++] = *label;
	*label = str_format(k->arena, "%c", 'a' + (int)at);
}

void figure_key_joint(struct figure_key *k, struct fig_joint *f)
{
	str *const v[] = { &f->label_t1, &f->label_t2, &f->label_leg, &f->label_leg2, &f->label_gap,
		&f->label_land, &f->label_angle, &f->label_bevel, &f->label_backing,
		&f->label_overlap, &f->label_length, &f->label_reinforcement, &f->label_depth,
		&f->label_groove_width, &f->label_radius, &f->label_od, &f->label_width1,
		&f->label_width2, &f->label_kerf,
		&f->label_spacing, &f->label_places, &f->label_angle_back,
		&f->label_radius_back, &f->label_depth_back };

	/* Beads alone have numbers and no labels. */
	for (size_t i = 0; i < sizeof v / sizeof *v && !f->beads_only; i++)
		key_label(k, v[i]);
}

/* What lies on an edge of the blank has no label in the drawing. */
static void key_place(struct figure_key *k, double mm, double most_mm, str *label)
{
	if (mm > EDGE_MM && mm < most_mm - EDGE_MM)
		key_label(k, label);
}

static void key_places(struct figure_key *k, const struct fig_plate *f,
    struct fig_feature *v)
{
	key_place(k, v->x_mm, f->length_mm, &v->label_x);
	key_place(k, v->y_mm, f->width_mm, &v->label_y);
	key_place(k, v->x_mm + v->w_mm, f->length_mm, &v->label_far_x);
	key_place(k, v->y_mm + v->h_mm, f->width_mm, &v->label_far_y);
}

void figure_key_plate(struct figure_key *k, struct fig_plate *f)
{
	struct fig_feature *v = arena_array(k->arena, f->nfeatures, sizeof *v);
	bool chain = f->chain_x.n + f->chain_y.n > 0;

	key_label(k, &f->label_length);
	key_label(k, &f->label_width);
	for (size_t i = 0; i < f->nfeatures; i++) {
		v[i] = f->features[i];
		if (!chain)
			key_places(k, f, &v[i]);
		/* The drawing shows one of them, of features alike at one. */
		if (!v[i].like_another)
			key_label(k, v[i].label_all.n ? &v[i].label_all : &v[i].label_size);
	}
	f->features = v;
	for (size_t i = 0; i < f->chain_x.n; i++)
		key_label(k, &f->chain_x.v[i].label);
	for (size_t i = 0; i < f->chain_y.n; i++)
		key_label(k, &f->chain_y.v[i].label);
}

void figure_key_cut(struct figure_key *k, struct fig_cut *f)
{
	struct fig_strip *v = arena_array(k->arena, f->nstrips, sizeof *v);

	key_label(k, &f->label_length);
	key_label(k, &f->label_discard);
	for (size_t i = 0; i < f->nstrips; i++) {
		v[i] = f->strips[i];
		key_label(k, &v[i].label);
		key_label(k, &v[i].label_width);
	}
	key_label(k, &f->label_ends);
	f->strips = v;
}

void figure_key_view(struct figure_key *k, struct fig_view *f)
{
	struct fig_size *v = arena_array(k->arena, f->nsizes, sizeof *v);

	for (size_t i = 0; i < f->nsizes; i++) {
		v[i] = f->size[i];
		key_label(k, &v[i].label);
	}
	f->size = v;
}
