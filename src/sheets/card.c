/* The booth card of one assignment: one side, read from where the student stands; in large
 * print two, with drawings and settings on the front.
 *
 * Title, drawing, settings, least shade, cautions in short, hold points. Type stays at
 * 12 points or more: the drawing takes the height that is left, and where that is too
 * little, words are left out that the packet has. */
#include "draw/fig.h"
#include "draw/list.h"
#include "sheets/figure.h"
#include "sheets/pattern_sheet.h"
#include "sheets/picture.h"
#include "sheets/safety.h"
#include "sheets/sheet.h"
#include "sheets/weldment.h"

#define GAP_PT 8.0
#define COLUMN_GAP_PT 12.0
#define SETTINGS_SHARE 0.45 /* of the width beside the cautions */
/* Least height of a row of drawings, and the height beyond which words are not spared. */
#define LEAST_PT 150.0
#define ENOUGH_PT 225.0

enum { PICTURES_MOST = 4 };

/* How much is said, most first. */
enum detail {
	DETAIL_ALL,
	DETAIL_SHORT_CAUTIONS,
	DETAIL_NO_CAUTIONS,
	DETAIL_STOP_NAMES,
	DETAIL_ARC,
	DETAIL_STACKED, /* nothing side by side, so that what is too much can be cut */
	DETAIL_COUNT
};

struct card {
	struct sheet *sh;
	const struct assignment *x;
	struct block **v;
	size_t n, cap;
};

static void push(struct card *k, struct block *b)
{
	if (!b)
		return;
	b->before_pt = k->n ? GAP_PT : 0;
	*ARENA_PUSH(k->sh->arena, k->v, k->n, k->cap) = b;
}

/* ---- drawings ---- */

struct card_picture {
	const struct faces *faces;
	const struct drawing *drawing;
	struct fig_joint joint;
	struct fig_plate plate;
	struct fig_view view;
	struct fig_iso iso;
	str words;
	struct list *drawn; /* with its corner at (0, 0) */
	bool fits;
};

static bool draw_one(const struct card_picture *p, struct canvas *c, rect area)
{
	switch (p->drawing->kind) {
	case DRAWING_PLATE:
		return fig_plate_draw(c, p->faces, area, &p->plate);
	case DRAWING_PATTERN:
		return fig_view_draw(c, p->faces, area, &p->view);
	case DRAWING_WELDMENT:
		return fig_iso_draw(c, p->faces, area, &p->iso);
	case DRAWING_PICTURE:
		picture_draw(c, picture_of(p->drawing), area);
		return true;
	default:
		return fig_joint_draw(c, p->faces, area, &p->joint);
	}
}

static void try_one(void *user, struct canvas *c, rect area)
{
	struct card_picture *p = user;

	p->fits = draw_one(p, c, area);
}

static void draw_card_picture(void *user, struct canvas *c, rect area)
{
	const struct card_picture *p = user;

	list_replay_content(p->drawn, 0, c, area.x, area.y);
}

/* False: fitup has no picture of that. */
static bool take_picture(struct card *k, const struct drawing *d, struct card_picture *p)
{
	struct arena *a = k->sh->arena;

	*p = (struct card_picture){ .faces = k->sh->s.faces, .drawing = d };
	if (figure_fault(a, k->x, d).n)
		return false;
	switch (d->kind) {
	case DRAWING_PLATE:
		p->plate = figure_plate(a, k->sh->e, &d->plate);
		p->words = fig_plate_words(a, &p->plate);
		return true;
	case DRAWING_PATTERN:
		p->view = pattern_view(a, k->sh->e, d->pattern);
		p->words = pattern_view_words(a, k->sh->e, d->pattern);
		return true;
	case DRAWING_WELDMENT:
		p->iso = sheet_weldment(k->sh, k->x, d->weldment);
		p->words = fig_iso_words(a, &p->iso);
		return true;
	case DRAWING_PICTURE:
		p->words = d->words;
		return picture_of(d) != NULL;
	default:
		figure_joint(a, k->sh->e, k->x, &d->joint, &p->joint);
		p->words = fig_joint_words(a, &p->joint);
		p->joint.beads_inside = true;
		return fig_can_draw(p->joint.shape);
	}
}

static size_t take_pictures(struct card *k, struct card_picture **out)
{
	struct card_picture *v = arena_array(k->sh->arena, PICTURES_MOST, sizeof *v);
	size_t n = 0;

	for (size_t i = 0; i < k->x->ndrawings && n < PICTURES_MOST; i++)
		n += take_picture(k, &k->x->drawings[i], &v[n]);
	*out = v;
	return n;
}

/* Pictures stand two in a row, in large print one. */
struct shelf { size_t in_row; double w, h; };

static struct shelf shelf_of(const struct sheet *sh, size_t n, double height_pt)
{
	size_t in_row = n > 1 && !sh->e->choice.large ? 2 : 1, rows = (n + in_row - 1) / in_row;
	double gaps = (double)(in_row - 1) * COLUMN_GAP_PT;

	return (struct shelf){ in_row, (sh->width_pt - gaps) / (double)in_row,
		(height_pt - (double)(rows - 1) * GAP_PT) / (double)rows };
}

static bool record(const struct sheet *sh, struct card_picture *p, struct shelf s)
{
	struct canvas *c;

	p->drawn = list_new(sh->arena);
	c = list_canvas(p->drawn);
	canvas_page_begin(c, s.w, s.h);
	sheet_figure_draw(sh, try_one, p, c, (rect){ 0, 0, s.w, s.h });
	canvas_page_end(c);
	return p->fits;
}

/* On a card beads are shown where they have room among the sizes. */
static bool record_picture(const struct sheet *sh, struct card_picture *p, struct shelf s)
{
	size_t layers = p->joint.nlayers;

	if (record(sh, p, s))
		return true;
	p->joint.nlayers = 0;
	if (layers > 0)
		record(sh, p, s);
	p->joint.nlayers = layers;
	return p->fits;
}

/* A drawing is worked out once, here, and drawn again from its recording. False: one of
 * them has too little room. */
static bool record_pictures(
    struct card *k, struct card_picture *v, size_t n, double height_pt)
{
	struct shelf s = shelf_of(k->sh, n, height_pt);
	bool fit = s.h >= LEAST_PT;

	for (size_t i = 0; i < n && fit; i++)
		fit = record_picture(k->sh, &v[i], s);
	return fit;
}

static struct block *pictures_row(
    struct card *k, struct card_picture *v, size_t n, double w, double h)
{
	struct block **one = arena_array(k->sh->arena, n, sizeof *one);
	struct block_column columns[2];

	for (size_t i = 0; i < n; i++) {
		one[i] = block_picture(
		    &k->sh->s, draw_card_picture, &v[i], v[i].words, h, w);
		one[i]->other = v[i].drawing->kind == DRAWING_PICTURE &&
		    part_style(k->x, SAID_DRAWING);
		columns[i] = (struct block_column){ &one[i], 1, w };
	}
	return n == 1 ? one[0] : block_columns(&k->sh->s, columns, n, COLUMN_GAP_PT);
}

static void add_pictures(
    struct sheet *sh, struct card *k, struct card_picture *v, size_t n, double height_pt)
{
	struct shelf s = shelf_of(sh, n, height_pt);

	for (size_t i = 0; i < n; i += s.in_row)
		sheet_add(sh, pictures_row(k, &v[i], n - i < s.in_row ? n - i : s.in_row, s.w, s.h),
		    GAP_PT, GAP_PT);
}

/* ---- words ---- */

static struct block *bullet(struct card *k, str text, unsigned style, double width_pt)
{
	const struct type type = styled(k->sh->e->body, style);
	const struct item_spec spec = { .mark = MARK_BULLET };
	struct span *one = arena_alloc(k->sh->arena, sizeof *one);
	struct block *b;

	one->text = text;
	b = block_item(&k->sh->s, &spec, one, 1, &type, width_pt);
	b->before_pt = 2;
	return b;
}

/* A caution's own words up to the end of its first sentence. */
static str first_sentence(struct arena *a, const struct para *p)
{
	struct buf b = { .arena = a };
	str s;

	for (size_t i = 0; i < p->nspans; i++)
		buf_add(&b, p->spans[i].text);
	s = buf_str(&b);
	for (size_t i = 0; i + 1 < s.n; i++)
		if (s.p[i] == '.' && s.p[i + 1] == ' ')
			return str_sub(s, 0, i + 1);
	return s;
}

/* Safety in one frame: shade first, then the usual cautions, then the sheet's own. */
static struct block *safety_block(struct card *k, enum detail detail, double width_pt)
{
	enum { OWN_MOST = 12 };
	struct block *v[SAFETY_LINES_MOST + OWN_MOST + 3];
	str lines[SAFETY_LINES_MOST];
	size_t n = safety_card_lines(k->sh->arena, k->sh->e, k->x,
		   lines), m = 0;
	double inner = block_frame_inner_pt(5, 1.5, width_pt);
	const struct prose *own = &k->x->cautions;

	if (!n && !own->n)
		return NULL;
	v[m++] = block_plain(&k->sh->s, sh_word(k->sh, "Safety"), &k->sh->e->bold, TAG_P, inner);
	for (size_t i = 0; i < n; i++)
		v[m++] = bullet(k, lines[i], 0, inner);
	for (size_t i = 0; i < own->n && i < OWN_MOST && detail < DETAIL_NO_CAUTIONS; i++)
		v[m++] = bullet(k, first_sentence(k->sh->arena, &own->v[i]),
		    part_style(k->x, SAID_CAUTIONS), inner);
	v[m++] = block_plain(
	    &k->sh->s, sh_word(k->sh, "The packet has every caution."), &k->sh->e->body,
	    TAG_P, inner);
	return block_frame(&k->sh->s, v, m, 5, 1.5, width_pt);
}

static struct block *stops_block(struct card *k, enum detail detail)
{
	const struct grid_column columns[] = { { COLUMN_FIXED, 40 * k->sh->e->zoom, ALIGN_CENTER },
		{ COLUMN_SHARE, 1, ALIGN_LEFT } };
	const struct grid_spec spec = { .columns = columns,
		.ncolumns = 2,
		.width_pt = k->sh->width_pt,
		.type = k->sh->e->body,
		.keep_whole = true,
		.caption = sh_word(k->sh, "Stop at these steps and call the instructor") };
	struct grid *g = grid_begin(&k->sh->s, &spec);
	bool any = false;

	for (size_t i = 0; i < k->x->nsteps; i++) {
		const struct step *step = &k->x->steps[i];
		struct span *v = arena_array(
		    k->sh->arena, step->para.nspans + 1, sizeof *v);
		size_t n = 0;

		if (!step->hold.n)
			continue;
		v[n++] = (struct span){
			str_format(k->sh->arena, "%.*s%s", STR_ARG(step->hold),
			    detail < DETAIL_STOP_NAMES && step->para.nspans ? ": " : ""),
			SPAN_BOLD
		};
		for (size_t j = 0; j < step->para.nspans && detail < DETAIL_STOP_NAMES;
		     j++)
			v[n++] = step->para.spans[j];
		const struct grid_cell row[] = { { .text = str_format(
						       k->sh->arena, "%zu", i + 1),
						     .style = SPAN_BOLD },
			{ .spans = v, .nspans = n, .style = part_style(k->x, SAID_STEPS) } };
		grid_row(g, row, 2);
		any = true;
	}
	return any ? grid_end(g) : NULL;
}

/* Settings and safety side by side; alone over the whole width. */
static void push_middle(struct card *k, enum detail detail)
{
	double left = (k->sh->width_pt - COLUMN_GAP_PT) * SETTINGS_SHARE;
	double right = k->sh->width_pt - COLUMN_GAP_PT - left;
	struct block **v = arena_array(k->sh->arena, 2, sizeof *v);
	struct block_column columns[2];

	if (detail == DETAIL_STACKED) {
		push(k, card_settings(k->sh, k->x, false, k->sh->width_pt));
		push(k, safety_block(k, detail, k->sh->width_pt));
		return;
	}
	v[0] = card_settings(k->sh, k->x, detail < DETAIL_ARC, left);
	v[1] = safety_block(k, detail, v[0] ? right : k->sh->width_pt);
	if (!v[0] || !v[1]) {
		push(k, v[0] ? v[0] : v[1]);
		return;
	}
	columns[0] = (struct block_column){ &v[0], 1, left };
	columns[1] = (struct block_column){ &v[1], 1, right };
	push(k, block_columns(&k->sh->s, columns, 2, COLUMN_GAP_PT));
}

static str foot_words(struct sheet *sh, const struct assignment *x, size_t pictures)
{
	struct buf b = { .arena = sh->arena };

	if (pictures < x->ndrawings)
		buf_addf(&b, "%.*s ", STR_ARG(sh_word(sh, "The packet has more drawings.")));
	if (x->in_english)
		buf_addf(&b, "%.*s ", STR_ARG(sh_word(sh, "What is in English is not translated "
		    "yet: ask the instructor.")));
	buf_add(&b, safety_deference(sh->e));
	if (x->nwelds)
		buf_addf(&b, " %.*s", STR_ARG(safety_record_line(sh->e, x)));
	return buf_str(&b);
}

/* What the signs of torch cuts mean, under the first drawing that has them. */
static void push_signs(struct card *k, size_t pictures)
{
	for (size_t i = 0; i < k->x->ndrawings && i < pictures; i++) {
		const struct drawing *d = &k->x->drawings[i];
		str signs = d->kind != DRAWING_PLATE ? (str){ 0 }
		    : figure_plate_signs(k->sh->arena, k->sh->e, &d->plate);

		if (!signs.n)
			continue;
		push(k, block_plain(&k->sh->s, signs, &k->sh->e->body, TAG_P, k->sh->width_pt));
		return;
	}
}

/* All but title and drawings. */
static struct card words_of(
    struct sheet *sh, const struct assignment *x, enum detail detail, size_t pictures)
{
	struct card k = { .sh = sh, .x = x };

	push_signs(&k, pictures);
	push_middle(&k, detail);
	push(&k, stops_block(&k, detail));
	push(&k,
	    block_plain(&sh->s, foot_words(sh, x, pictures), &sh->e->body, TAG_P,
		sh->width_pt));
	return k;
}

static struct block *title_block(struct sheet *sh, const struct assignment *x)
{
	const struct type type = styled(sh->e->h1, part_style(x, SAID_TITLE));
	struct block *b = block_plain(&sh->s, x->title, &type, TAG_H1, sh->width_pt);

	b->after_pt = GAP_PT;
	return b;
}

/* ---- the whole ---- */

/* The most said that leaves the drawings enough room, and as many of them as will go. */
static size_t settle(struct sheet *sh, const struct assignment *x, struct card_picture *v,
    size_t most, double room_pt, struct card *k, double *height_pt)
{
	for (size_t n = most; n > 0; n = n > 1 ? 1 : 0) {
		double enough = ENOUGH_PT > LEAST_PT * (double)((n + 1) / 2)
		    ? ENOUGH_PT
		    : LEAST_PT * (double)((n + 1) / 2) + GAP_PT;

		for (int d = 0; d < DETAIL_STACKED; d++) {
			*k = words_of(sh, x, (enum detail)d, n);
			*height_pt = room_pt - block_stack_height_pt(k->v, k->n) - GAP_PT;
			if (*height_pt >= enough)
				break;
		}
		if (record_pictures(k, v, n, *height_pt))
			return n;
	}
	return 0;
}

/* Without drawings: the most said that fits. */
static void settle_words(
    struct sheet *sh, const struct assignment *x, double room_pt, struct card *k)
{
	for (int d = 0; d < DETAIL_COUNT; d++) {
		*k = words_of(sh, x, (enum detail)d, 0);
		if (block_stack_height_pt(k->v, k->n) <= room_pt)
			return;
	}
}

/* ---- in large print ---- */

/* All that is not on the front. */
static struct card back_of(
    struct sheet *sh, const struct assignment *x, enum detail detail, size_t pictures)
{
	struct card k = { .sh = sh, .x = x };

	push(&k, safety_block(&k, detail, sh->width_pt));
	push(&k, stops_block(&k, detail));
	push(&k,
	    block_plain(&sh->s, foot_words(sh, x, pictures), &sh->e->body, TAG_P,
		sh->width_pt));
	return k;
}

/* As many drawings as go beside the settings; their height is what is left. */
static size_t settle_front(struct card *front, struct card_picture *v, size_t most,
    double room_pt, double *height_pt)
{
	struct sheet *sh = front->sh;

	for (size_t n = most; n > 0; n--)
		for (int facts = 1; facts >= 0; facts--) {
			front->n = 0;
			push_signs(front, n);
			push(front, card_settings(sh, front->x, facts, sh->width_pt));
			*height_pt = room_pt - block_stack_height_pt(front->v, front->n) - GAP_PT;
			if (record_pictures(front, v, n, *height_pt))
				return n;
		}
	front->n = 0;
	push(front, card_settings(sh, front->x, true, sh->width_pt));
	return 0;
}

static void large_card(struct sheet *sh, const struct assignment *x)
{
	struct block *title = title_block(sh, x);
	double side_pt = flow_height_pt(sh->flow), height_pt = 0;
	struct card front = { .sh = sh, .x = x }, back;
	struct card_picture *v;
	size_t most = take_pictures(&front, &v);
	size_t n = settle_front(&front, v, most, side_pt - title->height_pt - GAP_PT,
	    &height_pt);

	for (int d = 0; d < DETAIL_ARC; d++) {
		back = back_of(sh, x, (enum detail)d, n);
		if (block_stack_height_pt(back.v, back.n) <= side_pt)
			break;
	}
	flow_add(sh->flow, title);
	if (n)
		add_pictures(sh, &front, v, n, height_pt);
	flow_add_all(sh->flow, front.v, front.n);
	if (n || title->height_pt + 2 * GAP_PT + block_stack_height_pt(front.v, front.n) +
	    block_stack_height_pt(back.v, back.n) > side_pt)
		flow_break(sh->flow, START_PAGE);
	else if (back.n)
		back.v[0]->before_pt = GAP_PT;
	flow_add_all(sh->flow, back.v, back.n);
}

void sheet_card(struct sheet *sh, uint32_t assignment)
{
	const struct assignment *x = &sh->m->assignments[assignment];
	struct block *title = title_block(sh, x);
	double room_pt = flow_height_pt(sh->flow) - title->height_pt - GAP_PT,
	       height_pt = 0;
	struct card k = { .sh = sh, .x = x };
	struct card_picture *v;
	size_t most = take_pictures(&k, &v), n;

	if (sh->e->choice.large) {
		large_card(sh, x);
		return;
	}
	n = settle(sh, x, v, most, room_pt, &k, &height_pt);
	if (!n)
		settle_words(sh, x, room_pt, &k);
	flow_add(sh->flow, title);
	if (n)
		add_pictures(sh, &k, v, n, height_pt);
	flow_add_all(sh->flow, k.v, k.n);
}
