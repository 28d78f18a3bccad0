/* From a plate block to the data of its drawing. */
#include "sheets/figure_data.h"

#include "sheets/sheet.h"

static struct fig_feature feature_of(struct arena *a, const struct edition *e,
    const struct plate_mark *k, const struct plate_block *p)
{
	const struct language *l = edition_language(e);
	struct fig_feature f = { .x_mm = k->v[0].lo, .y_mm = k->v[1].lo,
		.label_x = quantity_text(a, e, &k->v[0]), .label_y = quantity_text(a, e, &k->v[1]) };

	switch (k->kind) {
	case MARK_HOLE:
		f.mark = FIG_HOLE;
		f.w_mm = k->v[2].lo;
		f.label_size = word_format(a, l, "%.*s dia", STR_ARG(quantity_text(a, e, &k->v[2])));
		break;
	case MARK_SLOT:
		f.mark = FIG_SLOT;
		f.w_mm = k->v[2].lo;
		f.h_mm = k->v[3].lo;
		f.label_size = word_format(a, l, "%.*s x %.*s slot",
		    STR_ARG(quantity_text(a, e, &k->v[2])),
		    STR_ARG(quantity_text(a, e, &k->v[3])));
		break;
	case MARK_BEND_X:
		f = (struct fig_feature){ .mark = FIG_BEND, .x_mm = k->v[0].lo, .h_mm = p->width.lo,
			.label_x = f.label_x, .label_size = word(l, "bend") };
		break;
	case MARK_BEND_Y:
		f = (struct fig_feature){ .mark = FIG_BEND, .y_mm = k->v[0].lo, .w_mm = p->length.lo,
			.label_y = quantity_text(a, e, &k->v[0]), .label_size = word(l, "bend") };
		break;
	default:
		f.mark = FIG_CUT;
		f.label_far_x = quantity_text(a, e, &k->v[2]);
		f.label_far_y = quantity_text(a, e, &k->v[3]);
		f.label_all = word(l, "cut");
		f.w_mm = k->v[2].lo - k->v[0].lo;
		f.h_mm = k->v[3].lo - k->v[1].lo;
		f.label_size = word_format(a, l, "cut to %.*s, %.*s",
		    STR_ARG(quantity_text(a, e, &k->v[2])),
		    STR_ARG(quantity_text(a, e, &k->v[3])));
		break;
	}
	return f;
}

static void add_kerf(struct fig_feature *f, const struct language *l, uint32_t side)
{
	static const struct { double x, y; str label; } rows[] = {
		[KERF_NONE] = { 0, 0, WORD("kerf in the middle of the line") },
		[KERF_ABOVE] = { 0, 1, WORD("kerf above the line") },
		[KERF_BELOW] = { 0, -1, WORD("kerf below the line") },
		[KERF_LEFT] = { -1, 0, WORD("kerf at the left of the line") },
		[KERF_RIGHT] = { 1, 0, WORD("kerf at the right of the line") },
		[KERF_MIDDLE] = { 0, 0, WORD("kerf in the middle of the line") },
	};

	if (f->mark == FIG_HOLE || f->mark == FIG_SLOT)
		f->label_kerf = word(l, "kerf inside");
	if (f->mark != FIG_CUT)
		return;
	f->kerf_x = rows[side].x;
	f->kerf_y = rows[side].y;
	f->label_kerf = word_str(l, rows[side].label);
}

static bool is_torch_cut(const struct plate_block *p)
{
	for (size_t i = 0; i < p->nmarks; i++)
		if (p->marks[i].kerf != KERF_NONE)
			return true;
	return given(&p->kerf);
}

/* Whether some kerf lies beside its line and not in the middle of it. */
static bool has_ticks(const struct plate_block *p)
{
	for (size_t i = 0; i < p->nmarks; i++)
		if (p->marks[i].kind == MARK_HOLE || p->marks[i].kind == MARK_SLOT ||
		    (p->marks[i].kerf != KERF_NONE && p->marks[i].kerf != KERF_MIDDLE))
			return true;
	return false;
}

static bool has_middle(const struct plate_block *p)
{
	for (size_t i = 0; i < p->nmarks; i++)
		if (p->marks[i].kind == MARK_CUT &&
		    (p->marks[i].kerf == KERF_NONE || p->marks[i].kerf == KERF_MIDDLE))
			return true;
	return false;
}

str figure_plate_signs(struct arena *a, const struct edition *e, const struct plate_block *p)
{
	const struct language *l = edition_language(e);
	struct buf b = { .arena = a };

	if (!is_torch_cut(p))
		return (str){ 0 };
	buf_add(&b, word(l, "Arrows: the way of the torch."));
	if (has_ticks(p))
		buf_add(&b, word(l, " Ticks: the side of the kerf."));
	if (has_middle(p))
		buf_add(&b, word(l, " Lines without ticks: the middle of the kerf."));
	if (given(&p->kerf))
		word_addf(&b, l, " Kerf %.*s.", STR_ARG(quantity_text(a, e, &p->kerf)));
	return buf_str(&b);
}

str figure_plate_head(struct arena *a, const struct edition *e, const struct plate_block *p)
{
	str head = word(edition_language(e), "Blank, from the lower left corner");
	str signs = figure_plate_signs(a, e, p);

	return signs.n ? str_format(a, "%.*s. %.*s", STR_ARG(head), STR_ARG(signs)) : head;
}

static bool features_alike(const struct fig_feature *a, const struct fig_feature *b)
{
	return a->mark == b->mark &&
	    (a->mark == FIG_CUT || str_eq(a->label_size, b->label_size));
}

static bool has_label(const struct fig_feature *v, size_t i)
{
	size_t k = 0;

	while (k < i && !features_alike(&v[k], &v[i]))
		k++;
	return k < i;
}

/* Features of one kind and size share a label, at the one farthest to the right: its
 * leader crosses least. All cut lines are of one size. */
static void share_labels(struct arena *a, const struct language *l, struct fig_feature *v,
    size_t n)
{
	for (size_t i = 0; i < n; i++) {
		size_t best = i, count = 0;

		if (has_label(v, i))
			continue;
		for (size_t k = i; k < n; k++) {
			if (!features_alike(&v[i], &v[k]))
				continue;
			count++;
			if (v[k].x_mm > v[best].x_mm || (v[k].x_mm == v[best].x_mm &&
			    v[k].y_mm > v[best].y_mm))
				best = k;
		}
		for (size_t k = i; k < n && count > 1; k++)
			v[k].like_another |= k != best && features_alike(&v[best], &v[k]);
		if (count > 1)
			v[best].label_all = word_format(a, l, "%.*s, %zu places",
			    STR_ARG(v[best].label_all.n ? v[best].label_all
			                                : v[best].label_size), count);
	}
}

struct fig_plate figure_plate(struct arena *a, const struct edition *e,
    const struct plate_block *p)
{
	struct fig_feature *v = arena_array(a, p->nmarks, sizeof *v);
	struct fig_plate f = { .language = edition_language(e), .length_mm = p->length.lo,
		.width_mm = p->width.lo,
		.label_length = quantity_text(a, e, &p->length),
		.label_width = quantity_text(a, e, &p->width),
		.label_thickness = quantity_text(a, e, &p->thickness),
		.torch = is_torch_cut(p), .features = v, .nfeatures = p->nmarks };

	if (given(&p->kerf))
		f.label_kerf = word_format(a, f.language, "%.*s kerf",
		    STR_ARG(quantity_text(a, e, &p->kerf)));
	for (size_t i = 0; i < p->nmarks; i++) {
		v[i] = feature_of(a, e, &p->marks[i], p);
		if (f.torch)
			add_kerf(&v[i], f.language, p->marks[i].kerf);
	}
	share_labels(a, f.language, v, p->nmarks);
	return f;
}
