#include "sheets/drawn.h"

#define HEIGHT_STEP 1.1
#define KEYED_SHARE 0.7          /* of the height: the key stands under the drawing */

static bool ink_room(struct canvas *c, rect area)
{
	const struct ink border = { .stroke_pt = RULE_PT };

	canvas_rect(c, area, &border);
	return true;
}

static bool ink_drawn(const struct drawn *p, struct canvas *c, rect area)
{
	switch (p->kind) {
	case DRAWN_SECTION:
		return fig_joint_draw(c, p->faces, area, &p->joint);
	case DRAWN_PLAN:
		return fig_plan_draw(c, p->faces, area, &p->joint);
	case DRAWN_PLATE:
		return fig_plate_draw(c, p->faces, area, &p->plate);
	case DRAWN_VIEW:
		return fig_view_draw(c, p->faces, area, &p->view);
	case DRAWN_SYMBOL:
		return fig_symbol_draw(c, p->faces, area, &p->symbol);
	case DRAWN_POSITION:
		return fig_position_draw(c, p->faces, area, &p->position);
	case DRAWN_CUT:
		return fig_cut_draw(c, p->faces, area, &p->cut);
	case DRAWN_WELDMENT:
		return fig_iso_draw(c, p->faces, area, &p->iso);
	default:
		return ink_room(c, area);
	}
}

static void draw_tried(void *user, struct canvas *c, rect area)
{
	struct drawn *p = user;

	p->fits = ink_drawn(p, c, area);
}

static void draw_recorded(void *user, struct canvas *c, rect area)
{
	list_replay_content(((struct drawn *)user)->drawn, 0, c, area.x, area.y);
}

/* Whether the drawing finds room at that zoom; it is recorded, be it only with its "no
 * drawing". */
static bool record_zoomed(const struct sheet *sh, struct drawn *p, double width,
    double height, double zoom)
{
	struct edition e = *sh->e;
	struct sheet zoomed = *sh;
	struct canvas *c;

	p->drawn = list_new(sh->arena);
	c = list_canvas(p->drawn);
	canvas_page_begin(c, width, height);
	e.figure_zoom = zoom;
	zoomed.e = &e;
	sheet_figure_draw(&zoomed, draw_tried, p, c, (rect){ 0, 0, width, height });
	canvas_page_end(c);
	return p->fits;
}

bool drawn_record(const struct sheet *sh, struct drawn *p, double width,
    double height)
{
	return record_zoomed(sh, p, width, height, sh->e->figure_zoom);
}

/* Letters for the labels, where they are what takes the room. */
static bool key_labels(struct sheet *sh, struct drawn *p)
{
	p->key.arena = sh->arena;
	switch (p->kind) {
	case DRAWN_SECTION:
	case DRAWN_PLAN:
		figure_key_joint(&p->key, &p->joint);
		break;
	case DRAWN_PLATE:
		figure_key_plate(&p->key, &p->plate);
		break;
	case DRAWN_VIEW:
		figure_key_view(&p->key, &p->view);
		break;
	case DRAWN_CUT:
		figure_key_cut(&p->key, &p->cut);
		break;
	default:
		break;
	}
	return p->key.n > 0;
}

/* "a: 3/8 in [9.5 mm]", a line each, kept with the drawing. */
static void add_key(struct sheet *sh, const struct figure_key *k)
{
	struct span *v = arena_array(sh->arena, 2 * k->n, sizeof *v);
	struct block *b;

	if (!k->n)
		return;
	for (size_t i = 0; i < k->n; i++) {
		v[2 * i] = (struct span){ str_format(sh->arena, "%c: ", 'a' + (int)i),
			SPAN_BOLD | (i ? SPAN_BREAK : 0) };
		v[2 * i + 1] = (struct span){ k->v[i], 0 };
	}
	b = block_text(&sh->s, v, 2 * k->n, &sh->e->body, TAG_P, sh->width_pt);
	b->keep_whole = true;
	sheet_add(sh, b, 2, 6);
}

/* The least height, in steps up from `least`, at which the drawing finds room; 0: none. */
static double first_height(struct sheet *sh, struct drawn *p, double width, double least,
    double most)
{
	struct fig_tries tries = { 0 };
	double h = least;

	p->joint.tries = &tries;
	while (h <= most && !drawn_record(sh, p, width, h))
		h *= HEIGHT_STEP;
	p->joint.tries = NULL;
	return h <= most ? h : 0;
}

/* The least height at which the drawing finds room. A crowded
 * drawing of large print that has none up to `most` gets letters for its labels; and where
 * even that does not help, type less large. */
double drawn_find_height(struct sheet *sh, struct drawn *p, double width, double least,
    double most)
{
	double found = first_height(sh, p, width, least, most);

	if (found > 0)
		return found;
	if (sh->e->choice.large && key_labels(sh, p))
		found = first_height(sh, p, width, least * KEYED_SHARE, most);
	if (found > 0)
		return found;
	for (double zoom = sh->e->figure_zoom - 0.1; zoom > 0.95; zoom -= 0.1)
		if (record_zoomed(sh, p, width, most, zoom))
			return most;
	drawn_record(sh, p, width, least);
	return least;
}

struct drawn *drawn_new(struct sheet *sh, int kind)
{
	struct drawn *p = arena_alloc(sh->arena, sizeof *p);

	*p = (struct drawn){ .faces = sh->s.faces };
	p->kind = kind;
	return p;
}

/* A third of the body: no drawing is smaller than that (job of the sheet). With large
 * labels it takes more, and so does a weldment with all its members. */
double drawn_height(const struct sheet *sh, const struct drawn *p)
{
	double share = p->kind == DRAWN_WELDMENT ? 0.5 : 1.0 / 3;

	return flow_height_pt(sh->flow) * (sh->e->choice.large ? 0.6 : share) + 12;
}

double drawn_most(const struct sheet *sh)
{
	return flow_height_pt(sh->flow) * (sh->e->choice.large ? 0.85 : 0.6);
}

void drawn_add_bold(struct sheet *sh, str text)
{
	struct block *h = block_plain(&sh->s, text, &sh->e->bold, TAG_P, sh->width_pt);

	h->keep_next = true;
	sheet_add(sh, h, 6, 2);
}

struct block *drawn_block(struct sheet *sh, struct drawn *p, str alt, double width_pt,
    double height_pt)
{
	return block_picture(&sh->s, draw_recorded, p, alt, height_pt, width_pt);
}

void drawn_add_block(struct sheet *sh, struct block *b, const struct drawn *p)
{
	b->keep_next |= p->key.n > 0;
	sheet_add(sh, b, 2, 6);
	add_key(sh, &p->key);
}

void drawn_add_high(struct sheet *sh, struct drawn *p, str alt, str head, bool keep,
    double high)
{
	struct block *b = drawn_block(sh, p, alt, sh->width_pt, high);

	b->keep_next = keep;
	b->keep_soft = p->key.n == 0;
	drawn_add_bold(sh, head);
	drawn_add_block(sh, b, p);
}

void drawn_add_kept(struct sheet *sh, struct drawn *p, str alt, str head, bool keep)
{
	double high = drawn_find_height(sh, p, sh->width_pt, drawn_height(sh, p),
	    drawn_most(sh));

	drawn_add_high(sh, p, alt, head, keep, high);
}

void drawn_add(struct sheet *sh, struct drawn *p, str alt, str head)
{
	drawn_add_kept(sh, p, alt, head, false);
}
