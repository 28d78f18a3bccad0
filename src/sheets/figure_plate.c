/* From a plate block to the data of its drawing. */
#include "sheets/figure_data.h"

#include "sheets/sheet.h"

#include <math.h>

#define SAME_MM 0.01

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

/* Where that end of a mark lies along an axis; null: nowhere of its own. */
static const struct quantity *place_of(const struct plate_mark *k, int end, bool x)
{
	if (k->kind == MARK_BEND_X || k->kind == MARK_BEND_Y)
		return end == 0 && x == (k->kind == MARK_BEND_X) ? &k->v[0] : NULL;
	if (end == 1 && k->kind != MARK_CUT)
		return NULL;
	return &k->v[2 * end + (x ? 0 : 1)];
}

/* b less a, written like the finer of them; metric where either is. */
static struct quantity difference(const struct quantity *a, const struct quantity *b)
{
	struct quantity d = *b;

	d.lo = d.hi = b->lo - a->lo;
	d.plus = d.minus = 0;
	d.range = d.tolerance = false;
	d.denominator = a->denominator > b->denominator ? a->denominator : b->denominator;
	d.decimals = a->decimals > b->decimals ? a->decimals : b->decimals;
	if (a->form == b->form)
		return d;
	if (a->form == FORM_METRIC || b->form == FORM_METRIC)
		d.form = FORM_METRIC;
	else
		d.form = a->form == FORM_DECIMAL || b->form == FORM_DECIMAL ? FORM_DECIMAL
		                                                            : FORM_FRACTION;
	return d;
}

/* Puts a place in its order among n, unless it is there already or on an edge. */
static size_t add_place(const struct quantity **v, size_t n, const struct quantity *q,
    double most_mm)
{
	size_t at = n;

	if (q->lo < SAME_MM || q->lo > most_mm - SAME_MM)
		return n;
	for (size_t i = 0; i < n; i++)
		if (fabs(v[i]->lo - q->lo) < SAME_MM)
			return n;
	for (; at > 0 && v[at - 1]->lo > q->lo; at--)
		v[at] = v[at - 1];
	v[at] = q;
	return n + 1;
}

/* The places along an axis, each from the last; false: more than a chain holds. The link
 * to the far end is left out, since the overall size gives it: common practice, no source. */
static bool add_chain(struct arena *a, const struct edition *e, const struct plate_block *p,
    bool x, struct fig_chain *out)
{
	const struct quantity *v[FIG_LINKS + 1];
	double from = 0;
	size_t n = 0;

	for (size_t i = 0; i < 2 * p->nmarks; i++) {
		const struct quantity *q = place_of(&p->marks[i / 2], (int)(i % 2), x);

		if (q)
			n = add_place(v, n, q, x ? p->length.lo : p->width.lo);
		if (n > FIG_LINKS)
			return false;
	}
	for (size_t i = 0; i < n; i++) {
		struct quantity d = i ? difference(v[i - 1], v[i]) : *v[i];

		out->v[i] = (struct fig_link){ from, v[i]->lo, quantity_text(a, e, &d) };
		from = v[i]->lo;
	}
	out->n = n;
	return true;
}

/* Where one side has too many places both are told from the edges. */
static bool chains_of(struct arena *a, const struct edition *e, const struct plate_block *p,
    struct fig_chain *x, struct fig_chain *y)
{
	x->n = y->n = 0;
	if (p->chain && (!add_chain(a, e, p, true, x) || !add_chain(a, e, p, false, y)))
		x->n = y->n = 0;
	return x->n + y->n > 0;
}

/* Chosen before the drawing knows its room, so it holds for both ways to give distances. */
str figure_plate_head(struct arena *a, const struct edition *e, const struct plate_block *p)
{
	str head = word(edition_language(e), "Blank, from the lower left corner");
	struct fig_chain x, y;
	str signs = figure_plate_signs(a, e, p);

	if (chains_of(a, e, p, &x, &y))
		head = str_format(a, "%.*s. %.*s", STR_ARG(head), STR_ARG(word(edition_language(e),
		    "Between arrows: from place to place")));
	return signs.n ? str_format(a, "%.*s. %.*s", STR_ARG(head), STR_ARG(signs)) : head;
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
	chains_of(a, e, p, &f.chain_x, &f.chain_y);
	return f;
}
